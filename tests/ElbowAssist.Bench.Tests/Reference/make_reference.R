# Reference values that R and its package psych have. Debian 12: apt-get install r-cran-psych.
suppressMessages(library(psych))
ratings <- as.matrix(read.csv("ratings.csv", header = FALSE))
zones <- as.matrix(read.csv("zones.csv", header = FALSE))
out <- file("reference-r.txt", "w")
say <- function(name, value) writeLines(sprintf("%s %.15g", name, value), out)
writeLines(sprintf("# R %s, psych %s", getRversion(), packageVersion("psych")), out)
icc <- ICC(ratings, lmer = FALSE)$results
for (row in c(2, 3)) {
  say(sprintf("icc%d", row), icc$ICC[row])
  say(sprintf("icc%d.low", row), icc$`lower bound`[row])
  say(sprintf("icc%d.high", row), icc$`upper bound`[row])
}
kappa <- cohen.kappa(zones)
say("kappa", kappa$weighted.kappa)
for (name in c("few", "exact", "tied", "many")) {
  d <- scan(sprintf("differences-%s.csv", name), quiet = TRUE)
  say(sprintf("wilcoxon.%s.p", name), suppressWarnings(wilcox.test(d, correct = FALSE))$p.value)
}
p <- scan("probabilities.csv", quiet = TRUE)
for (i in seq_along(p)) say(sprintf("holm.%d", i - 1), p.adjust(p, "holm")[i])
first <- ratings[, 1]
second <- ratings[, 2]
d <- first - second
n <- length(d)
say("bland.bias", mean(d))
say("bland.sd", sd(d))
say("bland.bias.margin", diff(t.test(first, second, paired = TRUE)$conf.int) / 2)
say("bland.limit.margin", qt(0.975, n - 1) * sd(d) * sqrt(1 / n + 1.96^2 / (2 * (n - 1))))
close(out)
