# Independent judge of the bootstrap: R. Run with
#   Rscript tests/study/resample.R > tests/study/resample.json
# R's own Mersenne Twister is set to the state that the initialisation of 2002 makes of a seed, so the draws are the same.
show <- function(x) paste(format(x, digits = 17, trim = TRUE), collapse = ", ")
line <- function(name, x, end = ",") cat('  "', name, '": [', show(x), "]", end, "\n", sep = "")
times <- function(a, b) (((a %/% 65536 * b) %% 65536) * 65536 + (a %% 65536) * b) %% 2^32
start <- function(seed) {
  s <- numeric(624); s[1] <- seed
  for (i in 2:624) {
    top <- s[i - 1] %/% 2^30
    mixed <- bitwXor(as.integer(s[i - 1] %% 2^16), as.integer(top)) + s[i - 1] %/% 2^16 * 2^16
    s[i] <- (times(1812433253, mixed) + i - 1) %% 2^32
  }
  RNGkind("Mersenne-Twister")
  assign(".Random.seed", c(10403L, 624L, as.integer(ifelse(s >= 2^31, s - 2^32, s))), envir = globalenv())
}
word <- function() round(runif(1) * 2^32)
uniform <- function() { high <- word() %/% 32; low <- word() %/% 64; (high * 2^26 + low + 0.5) / 2^53 }
bca <- function(data, groups, statistic, draws, seed) {
  start(seed)
  n <- length(groups)
  t0 <- statistic(data)
  t <- sapply(seq_len(draws), function(d) statistic(data[unlist(lapply(seq_len(n), function(i) groups[[floor(uniform() * n) + 1]])), , drop = FALSE]))
  out <- sapply(seq_len(n), function(i) statistic(data[unlist(groups[-i]), , drop = FALSE]))
  l <- mean(out) - out
  a <- sum(l^3) / (6 * sum(l^2)^1.5)
  z0 <- qnorm(mean(t < t0) + mean(t == t0) / 2)
  z <- qnorm(c(0.025, 0.975))
  c(t0, sd(t), mean(t) - t0, quantile(t, pnorm(z0 + (z0 + z) / (1 - a * (z0 + z)))), quantile(t, c(0.025, 0.975)))
}
cat('{\n  "made": "tests/study/resample.R",\n')
start(5489); for (i in 1:9999) word()
line("word10000", word())
x <- c(151, 148, 170, 166, 158, 149, 181, 163, 172, 155, 160, 190, 147, 168, 159)
y <- c(140, 150, 165, 170, 150, 152, 170, 160, 180, 150, 166, 180, 140, 161, 166)
d <- data.frame(x, y)
line("mean", bca(d, as.list(1:15), function(d) mean(d$x), 1000, 7))
line("correlation", bca(d, as.list(1:15), function(d) cor(d$x, d$y), 500, 1))
line("person", bca(d, split(1:15, rep(1:5, each = 3)), function(d) mean(d$x - d$y), 400, 3))
# The package boot, with draws of its own, comes near.
set.seed(1)
b <- boot::boot(d, function(d, i) mean(d$x[i]), 20000)
line("bootPackage", boot::boot.ci(b, type = "bca")$bca[4:5], "\n}")
