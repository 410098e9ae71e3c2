#!/bin/sh
# Lines, means, outliers, robust fits and dials against R, a general statistics program.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source of the wanted numbers: R's lm, confint, rstudent and, where it is installed, MASS's rlm;
# the data is made by chance from a fixed seed. Ends with 77 where R is missing.
set -eu
srcdir=${srcdir:-$(cd "$(dirname "$0")/.." && pwd)}
cases=${STATISTICS_CASES:-tests/statistics_cases}
LC_ALL=C
export LC_ALL
command -v Rscript >/dev/null 2>&1 || { echo 'skipped: R is not installed (r-base-core)'; exit 77; }
[ -x "$cases" ] || { echo "there is no $cases"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$cases" >"$work/cases"
Rscript --vanilla "$srcdir/tests/statistics.R" "$work/cases"
