# An independent judge: R, and the packages epiR (concordance) and stats. Run with
#   Rscript tests/study/judge.R > tests/study/judge.json
# The data are invented, made here without a random generator so that nothing hangs on R's seeds.
suppressMessages(library(epiR))
n <- 60
i <- seq_len(n)
wave <- function(a) (i * a) %% 1
girth <- round(42 + 24 * wave(0.6180339887), 1)
systolic <- round(104 + 40 * wave(0.4142135623))
diastolic <- round(60 + 25 * wave(0.7320508075))
age <- round(19 + 40 * wave(0.2360679774))
sex <- ifelse(wave(0.6457513110) < 0.5, "male", "female")
value <- round(20 + 1.9 * girth + 0.4 * systolic - 0.3 * diastolic + 0.2 * age -
  6 * (sex == "female") + 22 * (wave(0.3166247903) - 0.5), 1)
estimate <- round(25 + 2.0 * girth + 0.25 * systolic, 1)

show <- function(x) paste(format(x, digits = 17, trim = TRUE), collapse = ", ")
text <- function(x) paste0('"', x, '"', collapse = ", ")

d <- estimate - value
m <- (estimate + value) / 2
slope <- summary(lm(d ~ m))$coefficients["m", ]
bias <- t.test(d)
s <- sd(d)
half <- qt(0.975, n - 1) * s * sqrt(1 / n + qnorm(0.975)^2 / (2 * (n - 1)))
ccc <- epi.ccc(value, estimate, ci = "z-transform", conf.level = 0.95)$rho.c
within <- sum(abs(d) <= 15)
wilson <- prop.test(within, n, correct = FALSE)$conf.int

sexcode <- ifelse(sex == "male", 1, 2)
fit <- lm(value ~ girth + systolic + diastolic + age + sexcode)
co <- summary(fit)$coefficients
press <- sqrt(mean((residuals(fit) / (1 - hatvalues(fit)))^2))
x <- cbind(girth, systolic, diastolic, age, sexcode)
vif <- diag(solve(cor(x)))

long <- lm(Employed ~ GNP.deflator + GNP + Unemployed + Armed.Forces + Population + Year, longley)
df <- c(1:30, 40, 60, 99, 100, 500, 999, 1000, 1001, 5000, 100000)

cat('{\n  "title": "What R', paste0(R.version$major, ".", R.version$minor), 'gives for invented people",\n')
cat('  "made": "tests/study/judge.R",\n  "people": {\n')
cat('    "valueMmHg": [', show(value), '],\n    "estimate": [', show(estimate), '],\n')
cat('    "circumferenceCm": [', show(girth), '],\n    "systolicMmHg": [', show(systolic), '],\n')
cat('    "diastolicMmHg": [', show(diastolic), '],\n    "ageYears": [', show(age), '],\n')
cat('    "sex": [', text(sex), ']\n  },\n  "agreement": {\n')
cat('    "bias": [', show(c(bias$estimate, bias$conf.int)), '],\n    "standardDeviation": ', show(s), ',\n')
cat('    "limitLower": [', show(bias$estimate - qnorm(0.975) * s + c(0, -half, half)), '],\n')
cat('    "limitUpper": [', show(bias$estimate + qnorm(0.975) * s + c(0, -half, half)), '],\n')
cat('    "slope": [', show(slope[1:2]), '],\n    "slopeInterval": [', show(confint(lm(d ~ m))["m", ]), '],\n')
cat('    "rootMeanSquare": ', show(sqrt(mean(d^2))), ',\n    "meanAbsolute": ', show(mean(abs(d))), ',\n')
cat('    "concordance": [', show(unlist(ccc)), '],\n')
cat('    "within": ', within, ',\n    "withinInterval": [', show(wilson), ']\n  },\n  "fit": {\n')
cat('    "coefficients": [', show(co[, 1]), '],\n    "standardErrors": [', show(co[, 2]), '],\n')
cat('    "lower": [', show(confint(fit)[, 1]), '],\n    "upper": [', show(confint(fit)[, 2]), '],\n')
cat('    "residual": ', show(summary(fit)$sigma), ',\n    "rSquared": ', show(summary(fit)$r.squared), ',\n')
cat('    "leaveOneOut": ', show(press), ',\n    "inflation": [', show(vif), ']\n  },\n  "longley": {\n')
cat('    "y": [', show(longley$Employed), '],\n')
cat('    "x": [[', paste(sapply(longley[, 1:6], show), collapse = "],\n      ["), ']],\n')
cat('    "coefficients": [', show(summary(long)$coefficients[, 1]), '],\n')
cat('    "standardErrors": [', show(summary(long)$coefficients[, 2]), ']\n  },\n')
cat('  "studentT95": [\n    ', paste0("[", df, ", ", sapply(qt(0.975, df), show), "]", collapse = ",\n    "), '\n  ],\n')
q <- c(3.1, -2, 8.25, 7, 0, 19, 4.5)
cat('  "quantile": { "values": [', show(q), '], "at": [0.025, 0.5, 0.975], "expected": [', show(quantile(q, c(0.025, 0.5, 0.975))), '] }\n}\n')
