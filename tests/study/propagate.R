# Independent judge of the distributions that propagate draws from: R. Run with
#   Rscript tests/study/propagate.R > tests/study/propagate.json
# Mean, standard deviation, 2.5 % and 97.5 % quantile. Of the triangle they come from its density, by integration.
show <- function(x) paste(format(x, digits = 12, trim = TRUE), collapse = ", ")
line <- function(name, x, end = ",") cat('    "', name, '": [', show(x), "]", end, "\n", sep = "")
cat('{\n  "made": "tests/study/propagate.R",\n  "distributions": {\n')
line("uniform", c(50, sqrt(1 / 12), qunif(c(0.025, 0.975), 49.5, 50.5)))
f <- function(x) ifelse(x < 55, 2 * (x - 40) / (20 * 15), 2 * (60 - x) / (20 * 5))
part <- function(g) integrate(function(x) g(x) * f(x), 40, 55, rel.tol = 1e-10)$value + integrate(function(x) g(x) * f(x), 55, 60, rel.tol = 1e-10)$value
m <- part(identity)
q <- function(p) uniroot(function(x) integrate(f, 40, min(x, 55))$value + (if (x > 55) integrate(f, 55, x)$value else 0) - p, c(40, 60), tol = 1e-10)$root
line("triangular", c(m, sqrt(part(function(x) (x - m)^2)), q(0.025), q(0.975)))
line("t", c(160, 4 * sqrt(5 / 3), 160 + 4 * qt(c(0.025, 0.975), 5)))
line("logNormal", c(160 * exp(0.02), sqrt(exp(0.04) - 1) * exp(0.02) * 160, qlnorm(c(0.025, 0.975), log(160), 0.2)), "\n  }\n}")
