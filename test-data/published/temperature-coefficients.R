# Makes temperature-coefficients.csv. Run: Rscript temperature-coefficients.R > temperature-coefficients.csv
# Two chamber tests in the usual order (20 40 55 20 0 -10 -25 20 degC), errors in % of span: one that drifts with
# temperature, one that bends (a parabola, where the end-point coefficient is small). The inputs are made up; the
# coefficients are what R makes of them, from the definitions and from lm().
T <- c(20, 40, 55, 20, 0, -10, -25, 20)
sets <- list(drift = c(0.010, 0.093, 0.148, 0.016, -0.081, -0.118, -0.187, 0.004),
             bend  = c(0.000, 0.061, 0.170, 0.004, 0.055, 0.130, 0.281, 0.002))
cat("# what: temperature coefficients of two chamber tests by five methods, % of span per K\n")
cat("# source: computed by R", as.character(getRversion()), "with temperature-coefficients.R; not a publication\n")
cat("set,box,end_point,slope,bow_tie,least_squares,u_least_squares,non_return\n")
for (name in names(sets)) {
  y <- sets[[name]]
  m <- tapply(y, T, mean); t <- as.numeric(names(m)); m <- as.numeric(m)
  y0 <- m[t == 20]
  other <- t != 20
  fit <- summary(lm(I(m[other] - y0) ~ 0 + I(t[other] - 20)))$coefficients
  v <- c((max(m) - min(m)) / (max(t) - min(t)),
         (m[length(m)] - m[1]) / (max(t) - min(t)),
         max(abs(diff(m) / diff(t))),
         max(abs((m[other] - y0) / (t[other] - 20))),
         fit[1, 1], fit[1, 2], max(y[T == 20]) - min(y[T == 20]))
  cat(name, ",", paste(formatC(v, digits = 15, format = "g"), collapse = ","), "\n", sep = "")
}
