# Independent judge of the distributions: R. Run with
#   Rscript tests/statistics/distributions.R > tests/statistics/distributions.json
show <- function(x) paste(format(x, digits = 17, trim = TRUE), collapse = ", ")
rows <- function(name, d, of, end = ",") cat('  "', name, '": [', paste(apply(d, 1, function(r)
  paste0("[", paste(c(show(r), show(of(r))), collapse = ", "), "]")), collapse = ", "), "]", end, "\n", sep = "")
cat('{\n  "made": "tests/statistics/distributions.R",\n')
rows("normal", data.frame(x = c(-7.9, -7.5, -6, -5, -4, -3, -2.5, -2, -1.5, -1.001, -1, -0.1, 0, 0.5, 1.96, 4, 7)), function(r) pnorm(r[1]))
rows("normalQuantile", data.frame(p = c(1e-12, 1e-9, 0.001, 0.025, 0.3, 0.5, 0.8, 0.975, 0.9999)), function(r) qnorm(r[1]))
nct <- expand.grid(p = c(0.025, 0.975), n = c(3, 4, 5, 10, 20, 50, 100, 300))
nct <- data.frame(p = nct$p, df = nct$n - 1, ncp = qnorm(0.975) * sqrt(nct$n))
rows("noncentralT", nct, function(r) qt(r[1], r[2], r[3]))
rows("chiSquare", expand.grid(p = c(0.025, 0.975), df = c(1, 2, 5, 9, 40, 199, 5000)), function(r) qchisq(r[1], r[2]))
rows("chiSquareTail", expand.grid(x = c(0.1, 1, 3.84, 9, 20, 120), df = c(1, 2, 3, 4, 7, 20, 99)),
  function(r) pchisq(r[1], r[2], lower.tail = FALSE))
rows("f", data.frame(p = c(0.975, 0.975, 0.025, 0.975, 0.975), a = c(5, 3.7, 4, 999, 19), b = c(15, 4.786, 11.25, 2000, 1.3)),
  function(r) qf(r[1], r[2], r[3]))
rows("student", expand.grid(p = c(0.6, 0.9, 0.95, 0.975, 0.995, 0.9999), df = c(1, 2, 3, 9, 9.4, 40, 333, 1000, 1001, 1e5)),
  function(r) qt(r[1], r[2]))
rows("binomial", data.frame(k = c(0, 3, 3, 90, 140), n = c(10, 10, 200, 100, 145), p = c(0.1, 0.5, 0.025, 0.9, 0.975)),
  function(r) pbinom(r[1], r[2], r[3]))
rows("studentTail", data.frame(t = c(0.5, 2.1, -1.3, 6), df = c(3, 9.4, 12, 40)), function(r) pt(r[1], r[2], lower.tail = FALSE), "\n}")
