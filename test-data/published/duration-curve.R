# Makes duration-curve.csv. Run: Rscript duration-curve.R > duration-curve.csv
# A made-up year of hours, T(h) = 10 - 12 cos(2 pi h / 8760) - 6 cos(2 pi (h mod 24) / 24), h = 0..8759, and a module that
# is 8 K warmer than the air and was calibrated at 23 degC: what R makes of the excursions |T + 8 - 23|.
# The quantile is the smallest value that at least the share of the hours does not exceed: quantile(type = 1).
h <- 0:8759
T <- 10 - 12 * cos(2 * pi * h / 8760) - 6 * cos(2 * pi * (h %% 24) / 24)
x <- abs(T + 8 - 23)
cat("# what: excursions of a module over a made-up year of hours, kelvin\n")
cat("# source: computed by R", as.character(getRversion()), "with duration-curve.R; not a publication\n")
cat("largest,p95,p50,rms,hours_beyond_20\n")
cat(paste(formatC(c(max(x), quantile(x, c(0.95, 0.5), type = 1), sqrt(mean(x^2))), digits = 15, format = "g", width = 1),
  collapse = ","), ",", sum(x > 20), "\n", sep = "")
