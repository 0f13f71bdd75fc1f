# Fieller intervals and lines with both variables uncertain, by plain numerical search: no formula shared with the code.
# Run in this folder: Rscript r_lines.R   (R 4.2, Debian r-base-core). Writes r_lines.csv.
out <- c(paste0("# Source: ", R.version.string, ", made by r_lines.R in this folder"), "case,what,value")
say <- function(case, what, value) out <<- c(out, sprintf("%s,%s,%.15g", case, what, value))
# Inverse of a calibration line: where the t test of (y0 - line) just rejects.
x <- c(4, 8, 12, 16, 20, 20, 16, 12, 8, 4); y <- c(4.02, 7.93, 12.11, 16.05, 19.9, 20.08, 15.97, 12.2, 8.03, 3.91)
m <- lm(y ~ x); s <- summary(m)$sigma; t <- qt(0.975, 8)
for (k in c(1, 3)) for (y0 in c(6, 12, 21)) {
  edge <- function(v) { p <- predict(m, data.frame(x = v), se.fit = TRUE)
    (y0 - p$fit)^2 - t^2 * (s^2 / k + p$se.fit^2) }
  mid <- (y0 - coef(m)[1]) / coef(m)[2]
  lo <- uniroot(edge, c(mid - 30, mid), tol = 1e-14)$root; hi <- uniroot(edge, c(mid, mid + 30), tol = 1e-14)$root
  case <- sprintf("fieller y=%g k=%g", y0, k)
  say(case, "x", mid); say(case, "lower", lo); say(case, "upper", hi)
}
# Both variables uncertain: the slope with the least weighted chi squared.
york <- function(case, x, y, ux, uy) {
  chi <- function(b) { w <- 1 / (uy^2 + b^2 * ux^2); a <- sum(w * (y - b * x)) / sum(w); sum(w * (y - a - b * x)^2) }
  b0 <- coef(lm(y ~ x))[2]
  # a root of the derivative is found to more digits than a minimum
  slope <- function(b) { h <- 1e-4 * max(1, abs(b)); (chi(b - 2*h) - 8*chi(b - h) + 8*chi(b + h) - chi(b + 2*h)) / (12*h) }
  b <- uniroot(slope, b0 + c(-0.2, 0.2) * abs(b0), tol = 1e-15)$root
  w <- 1 / (uy^2 + b^2 * ux^2); a <- sum(w * (y - b * x)) / sum(w)
  say(case, "slope", b); say(case, "intercept", a); say(case, "chi2_by_dof", chi(b) / (length(x) - 2))
}
# Pearson's data with York's weights (from memory: slope -0.4805, intercept 5.4799)
px <- c(0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4); py <- c(5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5)
wx <- c(1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1); wy <- c(1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500)
york("pearson-york", px, py, 1 / sqrt(wx), 1 / sqrt(wy))
york("loop", x, y, rep(0.02, 10), rep(0.05, 10))
york("loop equal", x, y, rep(0.05, 10), rep(0.05, 10))
# Orthogonal regression by the principal axis, for the case of equal uncertainties
v <- eigen(cov(cbind(x, y)))$vectors[, 1]; say("loop equal", "principal_axis", v[2] / v[1])
writeLines(out, "r_lines.csv")
