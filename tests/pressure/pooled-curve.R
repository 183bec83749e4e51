# An independent judge of the pooled curve: R and its package nlme (mixed models, restricted maximum likelihood). Run with
#   Rscript tests/pressure/pooled-curve.R > tests/pressure/pooled-curve.json
# The means are those of src/checks/group-means.json that are not from memory and whose width is known or assumed.
suppressMessages(library(nlme))
rows <- jsonlite::fromJSON("src/checks/group-means.json")$rows
assumed <- with(rows, ifelse(source == "posture-widths-2018" & cuff == "narrow", 5,
  ifelse(source == "posture-widths-2018" & cuff == "wide", 13.5, ifelse(source == "posture-2018", 12, NA))))
rows$width <- ifelse(is.na(rows$cuffWidthCm), assumed, rows$cuffWidthCm)
d <- subset(rows, grade != "unconfirmed" & !is.na(width))
d$y <- log(d$mean - 70)
d$leg <- as.numeric(d$limb == "leg")
d$arm <- 1 - d$leg
d$ratio <- ifelse(d$limb == "leg", 55, 32) / d$width
d$seated <- as.numeric(d$posture == "seated")
d$standing <- as.numeric(d$posture == "standing")
d$laboratory <- factor(d$source)
d$cuffs <- factor(paste(d$limb, d$width))

# ln(a * 50 + b * C / W) + ln h, linear at the coefficients so far; lme fits the rest, until nothing moves.
iterate <- function(free) {
  th <- c(leg = 18, arm = 11, seated = 0.2, standing = 0.4, a = 0.5)
  names <- c("leg", "arm", "seated", "standing", if (free) "a")
  for (i in 1:100) {
    above <- th["a"] * 50 + (th["leg"] * d$leg + th["arm"] * d$arm) * d$ratio
    x <- cbind(leg = d$leg * d$ratio / above, arm = d$arm * d$ratio / above, seated = d$seated,
      standing = d$standing, a = 50 / above)[, names]
    d$z <- d$y - (log(above) + th["seated"] * d$seated + th["standing"] * d$standing) + as.vector(x %*% th[names])
    for (n in names) d[[paste0("x.", n)]] <- x[, n]
    form <- as.formula(paste("z ~ -1 +", paste0("x.", names, collapse = " + ")))
    model <- lme(form, data = d, random = ~ 1 | laboratory / cuffs, method = "REML",
      control = lmeControl(opt = "optim", msMaxIter = 500, reltol = 1e-14, returnObject = TRUE))
    new <- fixef(model)
    if (max(abs(new - th[names])) < 1e-9) break
    th[names] <- new
  }
  list(coefficients = as.numeric(new), errors = as.numeric(sqrt(diag(vcov(model)))), names = names,
    deviations = as.numeric(VarCorr(model)[c(2, 4, 5), 2]))
}
held <- iterate(FALSE)
freed <- iterate(TRUE)
show <- function(x) paste(format(x, digits = 10, trim = TRUE), collapse = ", ")
part <- function(r) paste0('{\n    "names": [', paste0('"', r$names, '"', collapse = ", "),
  '],\n    "coefficients": [', show(r$coefficients), '],\n    "standardErrors": [', show(r$errors),
  '],\n    "deviations": [', show(r$deviations), "]\n  }")
cat('{\n  "title": "What R', paste0(R.version$major, ".", R.version$minor), 'and nlme make of the group means",\n')
cat('  "made": "tests/pressure/pooled-curve.R",\n  "means":', nrow(d), ",\n")
cat('  "held":', part(held), ',\n  "freed":', part(freed), "\n}\n")
