# Independent judge of your own equation: R, lm() and predict(). Run with
#   Rscript tests/study/own-equation.R > tests/study/own-equation.json
# The people are those of tests/study/judge.json, invented. HC3 is written out from its definition.
show <- function(x) paste(format(x, digits = 17, trim = TRUE), collapse = ", ")
line <- function(name, x, end = ",") cat('  "', name, '": [', show(x), "]", end, "\n", sep = "")
p <- jsonlite::fromJSON("tests/study/judge.json")$people
d <- data.frame(y = p$valueMmHg, girth = p$circumferenceCm, systolic = p$systolicMmHg, diastolic = p$diastolicMmHg,
  age = p$ageYears, sex = ifelse(p$sex == "male", 1, 2))
fit <- lm(y ~ girth + systolic + diastolic + age + sex, d)
cat('{\n  "made": "tests/study/own-equation.R",\n')
line("residuals", residuals(fit))
line("leverages", hatvalues(fit))
line("studentized", rstudent(fit))
line("cooksDistances", cooks.distance(fit))
line("covariance", c(vcov(fit)))
line("adjustedRSquared", summary(fit)$adj.r.squared)
x <- model.matrix(fit)
a <- solve(crossprod(x)) %*% t(x)
hc3 <- a %*% diag((residuals(fit) / (1 - hatvalues(fit)))^2) %*% t(a)
se <- sqrt(diag(hc3)); t <- qt(0.975, df.residual(fit))
line("robustErrors", se)
line("robustLower", coef(fit) - t * se)
line("robustUpper", coef(fit) + t * se)
new <- data.frame(girth = c(55, 44, 70), systolic = c(120, 104, 160), diastolic = c(72, 62, 88), age = c(30, 20, 65), sex = c(2, 1, 2))
pi <- predict(fit, new, interval = "prediction")
line("predicted", pi[, 1]); line("lower", pi[, 2]); line("upper", pi[, 3])

# Recalibration of the published thigh equation of 2019 on the first 20 people.
r <- d[1:20, ]
r$e <- 65.290 + 1.110 * r$girth + 0.178 * r$systolic + 1.153 * r$age - 7.984 * r$sex
shrink <- function(r) {
  l <- lm(y ~ e, r)
  co <- summary(l)$coefficients
  test <- lm(I(y - e) ~ 1, r) # the mean difference
  s <- summary(l)$sigma; n <- nrow(r)
  f0 <- n * coef(test)[[1]]^2 / s^2
  f1 <- ((co[2, 1] - 1) / co[2, 2])^2
  k <- pmax(0, 1 - 1 / c(f0, f1))
  b <- 1 + k[2] * (co[2, 1] - 1)
  c(k, mean(r$e) + k[1] * coef(test)[[1]] - b * mean(r$e), b)
}
l <- lm(y ~ e, r)
line("recalibrated", shrink(r))
line("recalibratedLeastSquares", c(rbind(coef(l), summary(l)$coefficients[, 2], t(confint(l)))))
loo <- sapply(1:20, function(i) { k <- shrink(r[-i, ]); r$y[i] - k[3] - k[4] * r$e[i] })
line("recalibratedLeaveOneOut", sqrt(mean(loo^2)))
line("published", c(mean(r$e - r$y), sqrt(mean((r$e - r$y)^2))))
who <- data.frame(e = c(65.290 + 1.110 * 55 + 0.178 * 120 + 1.153 * 30 - 7.984 * 2, 65.290 + 1.110 * 70 + 0.178 * 160 + 1.153 * 65 - 7.984))
half <- (predict(l, who, interval = "prediction")[, 3] - predict(l, who))
line("recalibratedHalf", half, "\n}")
