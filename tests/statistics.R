# Works out again in R what the core made of the rows that tests/statistics_cases prints.
# SPDX-License-Identifier: GPL-3.0-or-later
# Given: the file of rows. Prints `N passed, N failed`; ends with 1 where one failed.

# Both sides calculate with sixteen digits by other ways (QR here, sums of products there); lengths
# lie near each other, so that a few digits cancel.
exact <- 1e-9
# Robust fits end where a round changes a number by less than 1.5e-8 of it.
rounds <- 1e-6

passed <- 0
failed <- 0
most <- list() # the greatest difference of each kind
check <- function(what, got, want, within, scale = pmax(abs(want), 1e-3)) {
    off <- max(abs(got - want) / scale)
    if (!is.finite(off) || off > within) {
        failed <<- failed + 1
        cat(sprintf("FAILED: %s: %s, in R %s\n", what, paste(format(got, digits = 12),
            collapse = " "), paste(format(want, digits = 12), collapse = " ")))
    } else {
        passed <<- passed + 1
    }
    kind <- sub("^set [0-9]+ ", "", what)
    most[[kind]] <<- max(c(most[[kind]], off))
}

# A row of ours: slope, intercept, their errors, residual deviation, interval, outlier, its size.
names_of <- c("slope", "intercept", "slope_error", "intercept_error", "sd", "low", "high",
    "outlier", "size")

# The farthest point by R's externally studentised residuals, and whether it is past the bound.
check_outlier <- function(what, ours, fit) {
    far <- abs(rstudent(fit))
    n <- length(far)
    bound <- qt(1 - 0.05 / (2 * n), fit$df.residual - 1)
    which_one <- if (max(far) > bound) which.max(far) else 0
    check(paste(what, "outlier"), ours$outlier, which_one, 1e-9)
    if (which_one > 0) {
        check(paste(what, "outlier size"), ours$size, max(far), exact)
    }
}

check_line <- function(what, ours, fit) {
    table <- coef(summary(fit))
    slope <- nrow(table) # an intercept stands before it
    check(paste(what, "slope"), ours$slope, table[slope, 1], exact)
    check(paste(what, "slope error"), ours$slope_error, table[slope, 2], exact)
    check(paste(what, "deviation"), ours$sd, summary(fit)$sigma, exact)
    check(paste(what, "interval"), c(ours$low, ours$high), confint(fit)[slope, ], exact)
    if (slope == 2) {
        check(paste(what, "intercept"), ours$intercept, table[1, 1], exact)
        check(paste(what, "intercept error"), ours$intercept_error, table[1, 2], exact)
    }
    check_outlier(what, ours, fit)
}

# Tukey's bisquare by reweighted least squares, from its description: residuals enlarged by their
# leverage, the scale from the median of all but the smallest, 4.685 of it as the reach.
reach <- 4.685
bisquare <- function(u) ifelse(abs(u) < 1, (1 - u^2)^2, 0)
median_scale <- function(r) median(sort(abs(r))[-1]) / 0.6745 # two unknowns: one left out
robust_fit <- function(x, y) {
    design <- cbind(1, x)
    lever <- pmin(hat(design, intercept = FALSE), 0.9999)
    c <- lm.fit(design, y)$coefficients
    for (round in 1:100) {
        r <- drop(y - design %*% c) / sqrt(1 - lever)
        before <- c
        c <- lm.wfit(design, y, bisquare(r / (median_scale(r) * reach)))$coefficients
        if (all(abs(c - before) <= 1e-10 * pmax(abs(c), 1e-3))) {
            return(list(c = c, rests = TRUE))
        }
    }
    list(c = c, rests = FALSE)
}

# The deviation that goes with it, from its description (Street, Carroll and Ruppert), mixed with
# that of least squares where there are few points.
robust_deviation <- function(x, y, c) {
    design <- cbind(1, x)
    n <- length(x)
    p <- 2
    lever <- pmin(hat(design, intercept = FALSE), 0.9999)
    r <- drop(y - design %*% c)
    s <- median_scale(r) # of residuals as they are
    u <- r / sqrt(1 - lever) / (s * reach)
    slope_of <- ifelse(abs(u) < 1, (1 - u^2) * (1 - 5 * u^2), 0) # of u times bisquare(u)
    a <- mean(slope_of)
    b <- sum((1 - lever) * (u * bisquare(u))^2) / (n - p)
    own <- (1 + p / n * (1 - a) / a) * sqrt(b) * s * reach / a
    plain <- summary(lm(y ~ x))$sigma
    max(own, sqrt((plain^2 * p^2 + own^2 * n) / (p^2 + n)))
}

check_robust <- function(what, ours, x, y) {
    theirs <- robust_fit(x, y)
    error <- ours$slope_error
    if (theirs$rests) {
        check(paste(what, "slope"), ours$slope, theirs$c[[2]], rounds)
        check(paste(what, "intercept"), ours$intercept, theirs$c[[1]], rounds, abs(theirs$c[[1]]) + 1)
        check(paste(what, "deviation"), ours$sd, robust_deviation(x, y, theirs$c), 1e-4)
    } else {
        # It swings between two lines for ever; which one is last may differ.
        check(paste(what, "slope without rest"), ours$slope, theirs$c[[2]], 0.5, error)
    }
    check(paste(what, "slope error"), error, ours$sd / sqrt(sum((x - mean(x))^2)), exact)
    t <- qt(0.975, length(x) - 2)
    check(paste(what, "interval"), c(ours$low, ours$high), ours$slope + c(-t, t) * error, exact)
    if (requireNamespace("MASS", quietly = TRUE)) {
        # rlm does not look at leverage and takes another scale: much the same line, not the same
        # digits. Within a standard error of the slope, which is what either knows of it.
        other <- suppressWarnings(MASS::rlm(y ~ x, psi = MASS::psi.bisquare, maxit = 200))
        check(paste(what, "slope by rlm"), ours$slope, coef(other)[[2]], 1, error)
    }
}

check_dials <- function(what, told, dials, gauges) {
    different <- length(unique(dials))
    order <- if (different > 3) 2 else 1
    check(paste(what, "order"), told[1], order, 1e-9)
    fit <- if (order == 2) lm(gauges ~ dials + I(dials^2)) else lm(gauges ~ dials)
    known <- fit$df.residual > 0
    check(paste(what, "deviation"), told[2], if (known) summary(fit)$sigma else -1, exact)
    at <- seq(min(dials) - 1, max(dials) + 1, by = 0.5)
    check(paste(what, "gauges"), told[-(1:2)], predict(fit, data.frame(dials = at)), exact)
    centred <- lm(gauges ~ poly(dials, order))
    check(paste(what, "gauges by poly"), told[-(1:2)], predict(centred, data.frame(dials = at)),
        exact)
}

rows <- strsplit(readLines(commandArgs(trailingOnly = TRUE)[1]), ",")
sets <- split(rows, as.integer(vapply(rows, `[`, "", 1)))
for (name in names(sets)) {
    set <- lapply(sets[[name]], function(row) as.numeric(row[-(1:2)]))
    names(set) <- vapply(sets[[name]], `[`, "", 2)
    ours <- function(kind) setNames(as.list(set[[kind]]), names_of)
    x <- set$x
    y <- set$y
    what <- function(kind) paste("set", name, kind)
    check_line(what("free"), ours("free"), lm(y ~ x))
    check_line(what("zero"), ours("zero"), lm(y ~ 0 + x))
    check_line(what("ratios"), ours("ratios"), lm(y / x ~ 1))
    check_line(what("weighed"), ours("weighed"), lm(y / x ~ 1, weights = x))
    check_robust(what("robust"), ours("robust"), x, y)
    check_dials(what("dials"), set$told, set$dials, set$gauges)
}

for (kind in names(most)) {
    cat(sprintf("%-26s differs by %.0e of it at most\n", kind, most[[kind]]))
}
cat("(slope by rlm, slope without rest: of its standard error)\n")
if (!requireNamespace("MASS", quietly = TRUE)) {
    cat("not looked at: rlm, because MASS is not installed (r-cran-mass)\n")
}
cat(sprintf("%d passed, %d failed\n", passed, failed))
quit(status = if (failed > 0 || passed == 0) 1 else 0)
