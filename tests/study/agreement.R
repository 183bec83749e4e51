# Independent judge of agreement and reliability: R with stats, nlme, lme4, epiR. Run with
#   Rscript tests/study/agreement.R > tests/study/agreement.json
# The data are invented, made here without a random generator so that nothing hangs on R's seeds.
show <- function(x) paste(format(x, digits = 17, trim = TRUE), collapse = ", ")
line <- function(name, x, end = ",") cat('  "', name, '": [', show(x), "]", end, "\n", sep = "")
wave <- function(i, a) (i * a) %% 1

cat('{\n  "made": "tests/study/agreement.R",\n')

# Rows of different people.
n <- 24
i <- seq_len(n)
measured <- round(130 + 60 * wave(i, 0.6180339887), 1)
estimated <- round(30 + 0.82 * measured + 24 * (wave(i, 0.3166247903) - 0.45), 1)
limits <- function(d) {
  n <- length(d); k <- qnorm(0.975) * sqrt(n)
  q <- qt(c(0.025, 0.975), n - 1, k) / sqrt(n)
  z <- qnorm(0.975)
  c(mean(d) - z * sd(d), mean(d) - rev(q) * sd(d), mean(d) + z * sd(d), mean(d) + q * sd(d))
}
# The published example of 1986, 17 people; the data are those of src/checks/agreement.json.
flow <- jsonlite::fromJSON("src/checks/agreement.json")$rows
line("peakFlow", limits(flow$large[[1]] - flow$mini[[1]]))
d <- estimated - measured
line("measured", measured); line("estimated", estimated)
line("limits", limits(d))
line("predictionLimits", predict(lm(d ~ 1), data.frame(x = 0), interval = "prediction")[1, 2:3])
l <- log(estimated) - log(measured)
line("logBias", exp(c(mean(l), t.test(l)$conf.int)))
line("logLimits", exp(limits(l)))
cal <- lm(measured ~ estimated)
line("calibration", c(rbind(coef(cal), t(confint(cal)))))
size <- lm(d ~ estimated)
line("slope", c(coef(size)[2], confint(size)[2, ]))
spread <- lm(I(abs(residuals(size)) * sqrt(pi / 2)) ~ estimated)
line("spread", c(coef(spread), confint(spread)[2, ]))
tost <- max(t.test(d, mu = -8, alternative = "greater")$p.value, t.test(d, mu = 8, alternative = "less")$p.value)
line("equivalence", c(t.test(d, conf.level = 0.9)$conf.int, tost))
line("quantile", quantile(d, c(0.025, 0.975)))

# Several observations of each person: 12 people, 1 to 4 rows.
people <- 12
m <- c(2, 3, 1, 4, 2, 2, 3, 2, 1, 4, 3, 2)
person <- rep(seq_len(people), m)
j <- seq_along(person)
pm <- round(130 + 60 * wave(person, 0.6180339887) + 10 * wave(j, 0.4142135623), 1)
pe <- round(20 + 0.88 * pm + 30 * (wave(person, 0.3166247903) - 0.5) + 12 * (wave(j, 0.7320508075) - 0.5), 1)
pd <- pe - pm
means <- tapply(pd, person, mean)
h <- people / sum(1 / m)
within <- anova(lm(pd ~ factor(person)))["Residuals", "Mean Sq"]
total <- var(means) + (1 - 1 / h) * within
z <- qnorm(0.975)
g <- people - 1; r <- length(pd) - people
low <- sqrt((var(means) * (1 - g / qchisq(0.975, g)))^2 + ((1 - 1 / h) * within * (1 - r / qchisq(0.975, r)))^2)
high <- sqrt((var(means) * (g / qchisq(0.025, g) - 1))^2 + ((1 - 1 / h) * within * (r / qchisq(0.025, r) - 1))^2)
se <- sd(means) / sqrt(people); t <- qt(0.975, g); s <- sqrt(total); b <- mean(means)
wide <- sqrt((t * se)^2 + z^2 * (sqrt(total + high) - s)^2)
near <- sqrt((t * se)^2 + z^2 * (s - sqrt(max(0, total - low)))^2)
line("person", person); line("personMeasured", pm); line("personEstimated", pe)
line("personBias", c(b, t.test(means)$conf.int))
line("personDeviations", c(s, sqrt(within), sqrt(var(means) - within / h)))
line("personLimits", c(b - z * s, b - z * s - wide, b - z * s + near, b + z * s, b + z * s - near, b + z * s + wide))
jack <- sapply(seq_len(people), function(out) coef(lm(pm ~ pe, subset = person != out)))
full <- coef(lm(pm ~ pe))
line("personCalibration", c(full, sqrt(g / people * rowSums((jack - full)^2))))
# Two observations each: the one-way components of lme (REML) are those of the analysis of variance.
two <- rep(1:12, each = 2)
td <- round(5 + 30 * (wave(two, 0.3166247903) - 0.5) + 12 * (wave(1:24, 0.7320508075) - 0.5), 1)
mixed <- nlme::lme(td ~ 1, random = ~ 1 | two, control = nlme::lmeControl(tolerance = 1e-12, msTol = 1e-14))
line("balanced", td)
line("balancedMixed", c(nlme::fixef(mixed), sqrt(diag(vcov(mixed))), as.numeric(nlme::VarCorr(mixed)[, "StdDev"])))

# Reliability: 6 people, 4 tests, invented; components by lme4.
score <- matrix(c(9, 6, 8, 7, 10, 6, 2, 1, 4, 1, 5, 2, 5, 3, 6, 2, 6, 4, 8, 2, 8, 6, 9, 7), 6)
suppressMessages(library(lme4))
long <- data.frame(y = c(score), who = factor(row(score)), test = factor(col(score)))
fit <- lmer(y ~ 1 + (1 | who) + (1 | test), long, control = lmerControl(optCtrl = list(xtol_abs = 1e-12, ftol_abs = 1e-14)))
v <- as.data.frame(VarCorr(fit)); vc <- setNames(v$vcov, v$grp)
line("shroutMixed", c(vc["who"] / sum(vc), vc["who"] / (vc["who"] + vc["Residual"]),
  vc["who"] / (vc["who"] + (vc["test"] + vc["Residual"]) / 4), vc["who"] / (vc["who"] + vc["Residual"] / 4)))
# Typical error with interval, and changes between tests.
mse <- anova(lm(y ~ who + test, long))["Residuals", "Mean Sq"]
line("typicalError", sqrt(mse * c(1, 15 / qchisq(c(0.975, 0.025), 15))))
ch <- t.test(score[, 2], score[, 1], paired = TRUE)
line("change", c(ch$estimate, ch$conf.int))
# Intervals of the coefficients: the formulas of Psychol Bull 1979, written again here.
a <- anova(lm(y ~ who + test, long))$"Mean Sq"; bms <- a[1]; jms <- a[2]; ems <- a[3]; n <- 6; k <- 4
f0 <- bms / ems; fl <- f0 / qf(0.975, n - 1, (n - 1) * (k - 1)); fu <- f0 * qf(0.975, (n - 1) * (k - 1), n - 1)
r2 <- (bms - ems) / (bms + (k - 1) * ems + k * (jms - ems) / n); fj <- jms / ems
nu <- (k - 1) * (n - 1) * (k * r2 * fj + n * (1 + (k - 1) * r2) - k * r2)^2 /
  ((n - 1) * k^2 * r2^2 * fj^2 + (n * (1 + (k - 1) * r2) - k * r2)^2)
f1 <- qf(0.975, n - 1, nu); f2 <- qf(0.975, nu, n - 1)
lo <- n * (bms - f1 * ems) / (f1 * (k * jms + (k * n - k - n) * ems) + n * bms)
up <- n * (f2 * bms - ems) / (k * jms + (k * n - k - n) * ems + n * f2 * bms)
mean4 <- function(x) k * x / (1 + (k - 1) * x)
line("iccIntervals", c(lo, up, (fl - 1) / (fl + k - 1), (fu - 1) / (fu + k - 1), mean4(c(lo, up)), 1 - 1 / c(fl, fu)), "\n}")
