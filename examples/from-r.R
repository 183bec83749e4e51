# cuffwork from R: estimates in a data frame, agreement, a mixed model (lme4), censored pressures (survival), a plot.
# Needs Node.js and the packages jsonlite, lme4 and survival. Run in the folder of the package, after `npm run build`:
#   Rscript examples/from-r.R
# All people are invented.
suppressPackageStartupMessages({
  library(jsonlite)
  library(lme4)
  library(survival)
})

# One call of a function, arguments as JSON; a missing value (NA) is null.
cuffwork <- function(name, ..., entry = "study") {
  call <- list(entry = entry, "function" = name, arguments = list(...))
  text <- system2("node", "examples/from-json.mjs",
    input = toJSON(call, auto_unbox = TRUE, na = "null", digits = NA), stdout = TRUE
  )
  if (!is.null(attr(text, "status"))) stop("cuffwork refused the call; its message is above")
  fromJSON(paste(text, collapse = "\n"))
}

legs <- read.csv("examples/legs.csv")
lop <- cuffwork("columns", list(
  answer = "occlusion-pressure", equation = "pooled-curve-thigh-2026",
  limb = "leg", posture = "supine", cuffWidthCm = 8,
  circumferenceCm = legs$circumferenceCm,
  systolicMmHg = legs$systolicMmHg, diastolicMmHg = legs$diastolicMmHg
))
legs <- cbind(legs, as.data.frame(lop[c("value", "lower", "upper", "flag")]))
print(head(legs[c("person", "side", "measuredMmHg", "value", "lower", "upper")], 3), digits = 4)

# Legs that did not occlude at 250 mmHg have no measured LOP: they are left out of the agreement, and counted.
measured <- legs$occluded == "yes"
cat(sprintf("\n%d legs, %d without occlusion at 250 mmHg\n", nrow(legs), sum(!measured)))
found <- cuffwork(
  "agreement", ifelse(measured, legs$measuredMmHg, NA), legs$value,
  list(person = legs$person)
)
cat(sprintf(
  "agreement: bias %.1f (%.1f to %.1f) mmHg, limits %.1f to %.1f mmHg; between people %.1f, within one person %.1f\n",
  found$bias$value, found$bias$lower, found$bias$upper, found$limits$lower$value, found$limits$upper$value,
  found$components$betweenPeople, found$components$withinPerson
))

# A mixed model of the same differences: people are a random effect.
mixed <- lmer(I(value - measuredMmHg) ~ 1 + (1 | person), data = legs[measured, ])
spread <- as.data.frame(VarCorr(mixed))$sdcor
cat(sprintf("lme4: bias %.1f mmHg; between people %.1f, within one person %.1f\n", fixef(mixed), spread[1], spread[2]))

# With the legs left out the bias is too large: only high pressures are missing. A censored model keeps them as
# “above 250 mmHg”. The standard error is robust to two legs of a person.
censored <- survreg(Surv(measuredMmHg - value, measured) ~ 1,
  data = legs, dist = "gaussian", cluster = person
)
cat(sprintf(
  "survival: bias %.1f mmHg (standard error %.1f) with the censored legs\n",
  -coef(censored), sqrt(vcov(censored)[1, 1])
))

# Differences against estimates, with the limits.
file <- file.path(tempdir(), "agreement.pdf")
pdf(file, width = 6, height = 4)
plot(legs$value, legs$value - legs$measuredMmHg,
  pch = ifelse(measured, 19, 2), xlab = "estimated [mmHg]", ylab = "estimated - measured [mmHg]"
)
abline(h = c(found$limits$lower$value, found$bias$value, found$limits$upper$value), lty = c(2, 1, 2))
invisible(dev.off())
cat(sprintf("plot: %s\n", basename(file)))
