# 200 random designs: least squares by lm, analysis by anova, intervals by predict.
# Run in this folder: Rscript r_designs.R   (R 4.2, Debian r-base-core)
# Writes r_designs_data.csv (what was fitted) and r_designs_results.csv (what R found).
set.seed(20260504)
data <- list(); results <- list()
d17 <- function(v) sprintf("%.17g", v)
d15 <- function(v) sprintf("%.15g", v)
keep <- function(design, kind, frame) {
  frame$x2 <- if (is.null(frame$x2)) 0 else frame$x2
  frame$x3 <- if (is.null(frame$x3)) 0 else frame$x3
  frame$w <- if (is.null(frame$w)) 1 else frame$w
  data[[length(data) + 1]] <<- sprintf("%d,%s,%s,%s,%s,%s,%s", design, kind,
    d15(frame$x), d15(frame$x2), d15(frame$x3), d15(frame$w), d15(frame$y))
}
say <- function(design, what, value)
  results[[length(results) + 1]] <<- sprintf("%d,%s,%s", design, what, d17(value))
fitted.line <- function(design, m, at) {
  s <- summary(m)
  for (k in seq_len(nrow(s$coefficients))) {
    say(design, paste0("b", k - 1), s$coefficients[k, 1]); say(design, paste0("u", k - 1), s$coefficients[k, 2])
  }
  say(design, "sigma", s$sigma); say(design, "r2", s$r.squared); say(design, "df", m$df.residual)
  p <- predict(m, at, se.fit = TRUE, interval = "confidence", level = 0.95)
  say(design, "at", p$fit[1]); say(design, "se", p$se.fit)
  say(design, "conf_lower", p$fit[2]); say(design, "conf_upper", p$fit[3])
  q <- suppressWarnings(predict(m, at, interval = "prediction", level = 0.95))
  say(design, "pred_lower", q[2]); say(design, "pred_upper", q[3])
}
for (design in 1:200) {
  n <- sample(6:14, 1)
  x <- round(runif(n, 4, 20), 3)
  noise <- rnorm(n, 0, 10^runif(1, -3, 0))
  if (design <= 60) {
    f <- data.frame(x = x, y = round(runif(1, -5, 5) + runif(1, 0.2, 5) * x + noise, 4))
    keep(design, "line", f); fitted.line(design, lm(y ~ x, f), data.frame(x = 11.5))
  } else if (design <= 100) {
    f <- data.frame(x = x, y = round(2 + 1.5 * x + noise, 4), w = round(runif(n, 0.1, 9), 2))
    keep(design, "weighted", f); fitted.line(design, lm(y ~ x, f, weights = w), data.frame(x = 11.5))
  } else if (design <= 120) {
    f <- data.frame(x = x, y = round(1.5 * x + noise, 4))
    keep(design, "origin", f); fitted.line(design, lm(y ~ x - 1, f), data.frame(x = 11.5))
  } else if (design <= 140) {
    f <- data.frame(x = x, y = round(3 + 0.8 * x - 0.02 * x^2 + noise, 4))
    keep(design, "quadratic", f); fitted.line(design, lm(y ~ x + I(x^2), f), data.frame(x = 11.5))
  } else if (design <= 150) {
    f <- data.frame(x = x, y = round(3 + 0.8 * x - 0.02 * x^2 + 0.001 * x^3 + noise, 4))
    keep(design, "cubic", f); fitted.line(design, lm(y ~ x + I(x^2) + I(x^3), f), data.frame(x = 11.5))
  } else if (design <= 175) {
    f <- data.frame(x = x, x2 = round(runif(n, 15, 35), 1), x3 = round(runif(n, 200, 300), 0))
    f$y <- round(1 + 1.2 * f$x - 0.05 * f$x2 + 0.01 * f$x3 + noise, 4)
    keep(design, "three", f)
    fitted.line(design, lm(y ~ x + x2 + x3, f), data.frame(x = 11.5, x2 = 23, x3 = 250))
  } else if (design <= 185) {
    f <- data.frame(x = rep(c(4, 8, 12, 16, 20), each = sample(2:4, 1)))
    f$y <- round(f$x + 0.01 * (f$x - 12)^2 + rnorm(nrow(f), 0, 0.2), 4)
    keep(design, "replicates", f)
    a <- anova(lm(y ~ x, f), lm(y ~ factor(x), f))
    say(design, "lack_ss", a$`Sum of Sq`[2]); say(design, "lack_df", a$Df[2]); say(design, "pure_ss", a$RSS[2])
    say(design, "pure_df", a$Res.Df[2]); say(design, "f", a$F[2]); say(design, "p", a$`Pr(>F)`[2])
  } else if (design <= 193) {
    f <- data.frame(x = rep(1:4, times = sample(2:5, 4, TRUE)))
    f$y <- round(10 + 0.1 * f$x + rnorm(nrow(f), 0, 0.1), 4)
    keep(design, "oneway", f)
    a <- anova(lm(y ~ factor(x), f))
    say(design, "between_ss", a$`Sum Sq`[1]); say(design, "between_df", a$Df[1])
    say(design, "within_ss", a$`Sum Sq`[2]); say(design, "within_df", a$Df[2])
    say(design, "f", a$`F value`[1]); say(design, "p", a$`Pr(>F)`[1])
  } else {
    # day (x), direction within day (x2), readings within direction; each tested against the next inner one
    f <- expand.grid(r = 1:3, x2 = 1:2, x = 1:4)
    f$y <- round(10 + rnorm(4, 0, 0.1)[f$x] + rnorm(8, 0, 0.05)[2 * f$x + f$x2 - 2] + rnorm(24, 0, 0.03), 4)
    keep(design, "nested", f)
    a <- anova(lm(y ~ factor(x) / factor(x2), f))
    for (k in 1:3) { say(design, paste0("ss", k), a$`Sum Sq`[k]); say(design, paste0("df", k), a$Df[k]) }
    f1 <- a$`Mean Sq`[1] / a$`Mean Sq`[2]; f2 <- a$`Mean Sq`[2] / a$`Mean Sq`[3]
    say(design, "f1", f1); say(design, "p1", pf(f1, a$Df[1], a$Df[2], lower.tail = FALSE))
    say(design, "f2", f2); say(design, "p2", pf(f2, a$Df[2], a$Df[3], lower.tail = FALSE))
  }
}
head <- paste0("# Source: ", R.version.string, ", lm, anova and predict; made by r_designs.R in this folder")
writeLines(c(head, "design,kind,x1,x2,x3,w,y", unlist(data)), "r_designs_data.csv")
writeLines(c(head, "design,what,value", unlist(results)), "r_designs_results.csv")
