#!/bin/sh
# The demonstration projects' workbooks against their JSON, cell by cell.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source: own choice; tests/book.py says what has to agree.
set -eu
srcdir=${srcdir:-$(cd "$(dirname "$0")/.." && pwd)}
[ -x ./hemwright ] || { echo 'skipped: the program is not built'; exit 77; }
unset HEMWRIGHT_DATA
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
code=0
for project in meadow-dress harbour-purse orchard-cardigan; do
    ./hemwright plan "$srcdir/data/demo/$project.yaml" --into "$work" >"$work/words" 2>&1 ||
        { cat "$work/words"; exit 1; }
    "${PYTHON:-python3}" "$srcdir/tests/book.py" "$work/$project.xlsx" "$work/$project.json" \
        "$srcdir/data/plan.schema.json" || code=$?
    [ "$code" -eq 0 ] || exit "$code"
done
