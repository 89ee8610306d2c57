# Recomputes the statistical cases with R: censored fits by survreg, survival by survfit, complete fits by fitdistr, tolerance
# factors by the noncentral t, outliers by Student's t, ranges by the studentised range.
library(survival)
library(MASS, warn.conflicts = FALSE)

folder <- file.path(dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE))),
                    "..", "WeldTrace.Engineering.Tests", "Checks")
rows <- function(name) read.csv(file.path(folder, name), comment.char = "#", stringsAsFactors = FALSE)

agree <- 0
differ <- 0
compare <- function(what, expected, got, relative, absolute) {
  if (length(got) == 1 && !is.na(got) && abs(got - expected) <= max(relative * abs(expected), absolute)) {
    agree <<- agree + 1
  } else {
    differ <<- differ + 1
    cat("differs: ", what, ": the table says ", format(expected, digits = 12), ", recomputed ",
        format(got, digits = 12), "\n", sep = "")
  }
}

data <- rows("dataset_c_weibull.csv")
fits <- list()
fit <- function(name) {
  if (is.null(fits[[name]])) {
    life <- survreg(Surv(time, event) ~ 1, data = data[data$dataset == name, ], dist = "weibull",
                    control = survreg.control(rel.tolerance = 1e-13, maxiter = 200))
    fits[[name]] <<- list(eta = exp(unname(coef(life))), beta = 1 / life$scale, v = vcov(life), l = life$loglik[1])
  }
  fits[[name]]
}

# survreg works in ln eta and the logarithm of its scale, which is -ln beta.
of_fit <- function(name, quantity) {
  f <- fit(name)
  se <- sqrt(diag(f$v))
  z <- qnorm(0.975)
  switch(sub(", published$", "", sub(" \\(log-normal approx\\.\\)$", "", quantity)),
    "beta (shape)" = f$beta, "beta" = f$beta, "eta (scale)" = f$eta, "eta" = f$eta, "log-likelihood" = f$l,
    "standard error of eta" = f$eta * se[1], "se(eta)" = f$eta * se[1],
    "standard error of beta" = f$beta * se[2], "se(beta)" = f$beta * se[2],
    "covariance of ln(eta) and ln(beta)" = -f$v[1, 2],
    "eta lower 95 %" = f$eta * exp(-z * se[1]), "eta upper 95 %" = f$eta * exp(z * se[1]),
    "beta lower 95 %" = f$beta * exp(-z * se[2]), "beta upper 95 %" = f$beta * exp(z * se[2]), NULL)
}

tools <- rows("c_tool_life.csv")
for (i in grep("^C[12]\\.", tools$case_id)) {
  got <- of_fit(sub("dataset=", "", tools$inputs[i]), tools$quantity[i])
  if (!is.null(got)) {
    compare(paste(tools$case_id[i], tools$quantity[i]), tools$expected[i], got, tools$tol_rel[i], tools$tol_abs[i])
  }
}
for (i in grep("^C9\\.", tools$case_id)) {
  parts <- regmatches(tools$inputs[i], regexec("dataset=(.*);t=(.*)", tools$inputs[i]))[[1]]
  curve <- survfit(Surv(time, event) ~ 1, data = data[data$dataset == parts[2], ])
  got <- summary(curve, times = as.numeric(parts[3]))$surv
  compare(paste(tools$case_id[i], tools$quantity[i]), tools$expected[i], got, tools$tol_rel[i], tools$tol_abs[i])
}

statistics <- rows("g_statistics.csv")
univariate <- rows("dataset_g_univariate.csv")
strength <- univariate$x[univariate$dataset == "STRENGTH18"]
complete <- fitdistr(strength, "weibull", control = list(reltol = 1e-15, maxit = 5000), start = list(shape = 20, scale = 140))
for (pair in list(c("beta (shape)", "shape"), c("alpha (scale)", "scale"))) {
  row <- statistics[statistics$case_id == "G3.2" & statistics$quantity == pair[1], ]
  # fitdistr searches without derivatives; six digits are what it gives.
  compare(paste("G3.2", pair[1], "by fitdistr"), row$expected, unname(complete$estimate[pair[2]]), 1e-6, 0)
}

k <- rows("g_k_factors.csv")
for (kind in list(c("k_90_95", 0.90, 0.95), c("k_99_95", 0.99, 0.95), c("k_90_90", 0.90, 0.90),
                  c("k_95_95", 0.95, 0.95), c("k_99_99", 0.99, 0.99))) {
  for (i in seq_len(nrow(k))) {
    n <- k$n[i]
    got <- suppressWarnings(qt(as.numeric(kind[3]), n - 1, qnorm(as.numeric(kind[2])) * sqrt(n))) / sqrt(n)
    # The noncentral t of R keeps about six digits where the noncentrality is large.
    compare(paste("k factors, n =", n, kind[1]), k[[kind[1]]][i], got, 2e-6, 0)
  }
}

grubbs <- rows("g_grubbs.csv")
critical <- function(n, tail) {
  t <- qt(tail, n - 2, lower.tail = FALSE)
  (n - 1) / sqrt(n) * sqrt(t^2 / (n - 2 + t^2))
}
for (i in seq_len(nrow(grubbs))) {
  n <- grubbs$n[i]
  compare(paste("Grubbs, n =", n, "one-sided"), grubbs$one_sided_5pct[i], critical(n, 0.05 / n), 0, 1e-6)
  compare(paste("Grubbs, n =", n, "two-sided"), grubbs$two_sided_5pct[i], critical(n, 0.05 / (2 * n)), 0, 1e-6)
}

constants <- rows("g_control_constants.csv")
for (i in seq_len(nrow(constants))) {
  n <- constants$n[i]
  beyond <- function(x) ptukey(x, n, Inf, lower.tail = FALSE)
  d2 <- integrate(beyond, 0, 12, rel.tol = 1e-9)$value
  square <- integrate(function(x) 2 * x * beyond(x), 0, 12, rel.tol = 1e-9)$value
  compare(paste("control constants, n =", n, "d2"), constants$d2[i], d2, 0, 1e-5)
  compare(paste("control constants, n =", n, "d3"), constants$d3[i], sqrt(square - d2^2), 0, 1e-5)
}

cat(agree, "agree,", differ, "differ\n")
quit(status = if (differ > 0 || agree == 0) 1 else 0)
