# What the tables and charts of fits and statistics state, by R's own functions: lm, predict, anova, pchisq, qt, qf.
# Run in this folder: Rscript r_statistics.R   (R 4.2, Debian r-base-core)
# Writes r_run_data.csv (errors of an invented run, % of span) and r_statistics.csv (what R found).
out <- c(paste0("# Source: ", R.version.string, ", made by r_statistics.R in this folder"), "case,what,value")
say <- function(case, what, value) out <<- c(out, sprintf("%s,%s,%.15g", case, what, value))
strd <- function(name) read.csv(file.path("nist-strd", paste0(name, ".csv")), comment.char = "#")
inside <- function(m, y, ...) { p <- suppressWarnings(predict(m, interval = "prediction", level = 0.95, ...))
  sum(y >= p[, 2] & y <= p[, 3]) }
worst <- function(m) { r <- unname(resid(m)); r[which.max(abs(r))] }
# Readings within the 95 % prediction band, and the largest residual
d <- strd("Norris"); m <- lm(y ~ x, d)
say("norris", "within", inside(m, d$y)); say("norris", "worst", worst(m))
d <- strd("Pontius"); m <- lm(y ~ x + I(x^2), d)
say("pontius", "within", inside(m, d$y)); say("pontius", "worst", worst(m))
a <- anova(lm(y ~ x, d), lm(y ~ factor(x), d)); g <- aggregate(y ~ x, d, mean)
say("pontius line", "replicates_sd", sqrt(a$RSS[2] / a$Res.Df[2])); say("pontius line", "p", a$`Pr(>F)`[2])
off <- g$y - predict(lm(y ~ x, d), g); say("pontius line", "departure", max(abs(off)))
say("pontius line", "departure_at", g$x[which.max(abs(off))])
h <- read.csv("gum_h3.csv", comment.char = "#"); m <- lm(h$b_degC ~ I(h$t_degC - 20))
say("gum h3", "within", inside(m, h$b_degC)); say("gum h3", "worst", worst(m))
# Fieller by search, of one more reading of -0.163 degC on the line of GUM H.3
f <- data.frame(x = h$t_degC - 20, y = h$b_degC); m <- lm(y ~ x, f); s <- summary(m)$sigma; t <- qt(0.975, 9)
edge <- function(v) { p <- predict(m, data.frame(x = v), se.fit = TRUE)
  (-0.163 - p$fit)^2 - t^2 * (s^2 + p$se.fit^2) }
mid <- (-0.163 - coef(m)[1]) / coef(m)[2]; say("gum h3", "x", mid)
say("gum h3", "lower", uniroot(edge, c(mid - 20, mid), tol = 1e-14)$root)
say("gum h3", "upper", uniroot(edge, c(mid, mid + 20), tol = 1e-14)$root)
l <- strd("Longley"); m <- lm(y ~ ., l)
say("longley", "worst", worst(m)); say("longley", "worst_number", which.max(abs(resid(m))))
ci <- confint(m, level = 0.95); p <- summary(m)$coefficients[, 4]
for (k in 1:7) { say("longley", paste0("lower", k - 1), ci[k, 1]); say("longley", paste0("upper", k - 1), ci[k, 2]) }
# Weighted: the first weighted design of r_designs_data.csv
d <- read.csv("r_designs_data.csv", comment.char = "#"); d <- d[d$design == d$design[d$kind == "weighted"][1], ]
m <- lm(y ~ x1, d, weights = d$w); say("weighted", "within", inside(m, d$y, weights = d$w))
# York: probability of chi squared (the value itself is in r_lines.csv), and the band about the line: qnorm
q <- read.csv("r_lines.csv", comment.char = "#"); chi <- q$value[q$case == "pearson-york" & q$what == "chi2_by_dof"]
say("pearson-york", "p", pchisq(8 * chi, 8, lower.tail = FALSE))
# Variance components of NIST SiRstv, one way
d <- strd("SiRstv"); a <- anova(lm(resistance ~ factor(instrument), d))
say("sirstv", "between_sd", sqrt((a$`Mean Sq`[1] - a$`Mean Sq`[2]) / 5)); say("sirstv", "within_sd", sqrt(a$`Mean Sq`[2]))
say("sirstv", "within_percent", 100 * a$`Mean Sq`[2] / (a$`Mean Sq`[2] + (a$`Mean Sq`[1] - a$`Mean Sq`[2]) / 5))
# Limits of suspicion: mean and critical value in standard deviations
v <- c(10.1, 10.0, 10.2, 9.9, 10.1, 12.0, 9.0); n <- 7
crit <- function(p) { t <- qt(1 - p, n - 2); (n - 1) / sqrt(n) * sqrt(t^2 / (n - 2 + t^2)) }
say("grubbs", "lower", mean(v) - crit(0.05 / (2 * n)) * sd(v)); say("grubbs", "upper", mean(v) + crit(0.05 / (2 * n)) * sd(v))
say("grubbs", "one_sided_upper", mean(v) + crit(0.05 / n) * sd(v))
# A run of three cycles up and down: errors in % of span, invented, with a reading that stands out
set.seed(20260812)
r <- expand.grid(point = c(0, 25, 50, 75, 100), direction = c("up", "down"), cycle = 1:3, stringsAsFactors = FALSE)
r$error <- round(0.04 + 0.0008 * r$point - 0.000008 * r$point^2 + ifelse(r$direction == "down", 0.012, 0) +
  rnorm(nrow(r), 0, 0.003), 4)
odd <- r$point == 75 & r$direction == "up" & r$cycle == 3; r$error[odd] <- r$error[odd] + 0.03
writeLines(c(out[1], "point_percent,direction,cycle,error_percent_of_span",
  sprintf("%g,%s,%d,%.4f", r$point, r$direction, r$cycle, r$error)), "r_run_data.csv")
cell <- factor(paste(r$point, r$direction)); m <- lm(r$error ~ cell)
say("run", "pooled_sd", summary(m)$sigma); say("run", "pooled_df", m$df.residual)
spread <- aggregate(error ~ point + direction, r, function(e) max(e) - min(e))
say("run", "spread", max(spread$error)); say("run", "spread_at", spread$point[which.max(spread$error)])
up <- aggregate(error ~ point, r[r$direction == "up", ], mean); dn <- aggregate(error ~ point, r[r$direction == "down", ], mean)
say("run", "hysteresis", max(abs(up$error - dn$error))); say("run", "hysteresis_at", up$point[which.max(abs(up$error - dn$error))])
a <- anova(lm(error ~ factor(point) / factor(direction), r))
for (k in 1:3) { say("run", paste0("ss", k), a$`Sum Sq`[k]); say("run", paste0("df", k), a$Df[k]) }
say("run", "p_direction", a$`Pr(>F)`[2])
ms <- a$`Mean Sq`; say("run", "sd_direction", sqrt((ms[2] - ms[3]) / 3)); say("run", "sd_point", sqrt((ms[1] - ms[2]) / 6))
a <- anova(m, lm(r$error ~ cell + factor(r$cycle))); say("run", "cycle_ss", a$`Sum of Sq`[2]); say("run", "cycle_p", a$`Pr(>F)`[2])
a <- anova(lm(error ~ point, r), lm(error ~ factor(point), r))
say("run", "lack_ss", a$`Sum of Sq`[2]); say("run", "lack_pure_ss", a$RSS[2]); say("run", "lack_p", a$`Pr(>F)`[2])
n <- 3; g <- aggregate(error ~ point + direction, r, function(e) max(abs(e - mean(e))) / sd(e))
say("run", "grubbs", max(g$error)); say("run", "grubbs_critical", crit(0.05 / 6))
s2 <- aggregate(error ~ point + direction, r, var); say("run", "cochran", max(s2$error) / sum(s2$error))
say("run", "cochran_at", s2$point[which.max(s2$error)])
q <- qf(1 - 0.05 / 10, 2, 18); say("run", "cochran_critical", 1 / (1 + 9 / q))
e <- lm(error ~ point, r); say("run", "line_slope", coef(e)[2]); say("run", "line_slope_u", summary(e)$coefficients[2, 2])
writeLines(out, "r_statistics.csv")
