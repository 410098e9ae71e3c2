#!/bin/sh
# Runs the README's examples as they stand there and compares what comes out with what it shows.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source: the README itself. An example is a line `$ hemwright ...` in a block fenced as sh; the
# lines below it, up to the next `$` or the end of the block, are what it prints; a line `...`
# stands for any number of lines. A block fenced as yaml or csv behind a line "`NAME.yaml`:" or
# "`NAME.csv`:" is that file; data/demo lies beside them as in a checkout. An example ends with 0,
# or, where it shows a message that begins with `hemwright: `, with another code.
set -eu
srcdir=${srcdir:-$(cd "$(dirname "$0")/.." && pwd)}
readme=${1:-$srcdir/README.md}
[ -x ./hemwright ] || { echo 'skipped: the program is not built'; exit 77; }
unset HEMWRIGHT_DATA
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/place" "$work/place/data"
cp -R "$srcdir/data/demo" "$work/place/data/demo"
PATH=$PWD:$PATH
export PATH

awk -v work="$work" '
    /^```/ {
        if (fence != "") {
            if (file != "")
                close(file)
            fence = file = shown = ""
            last = ""
            next
        }
        fence = substr($0, 4)
        if (fence == "")
            fence = "text"
        commanded = 0
        if ((fence == "yaml" || fence == "csv") && last ~ ("^`[A-Za-z0-9-]+[.]" fence "`:$")) {
            name = substr(last, 2, length(last) - 3)
            file = work "/place/" name
            print name >(work "/files")
            printf "" >file
        }
        next
    }
    fence == "" { if ($0 != "") last = $0; next }
    file != "" { print >file; next }
    fence != "sh" { next }
    /^\$ / {
        shown = ""
        commanded = 1
        if ($0 ~ /^\$ hemwright( |$)/) {
            count++
            print substr($0, 3) >(work "/" count ".command")
            print FNR >(work "/" count ".line")
            shown = work "/" count ".shown"
            printf "" >shown
        }
        next
    }
    shown != "" { print >shown }
    !commanded { print "line " FNR ": output without a command above it" >(work "/fault") }
    END {
        print count + 0 >(work "/count")
        if (fence != "")
            print "a block is not closed" >(work "/fault")
    }' "$readme"

if [ -s "$work/fault" ]; then
    cat "$work/fault"
    exit 1
fi
count=$(cat "$work/count")
if [ "$count" -eq 0 ]; then
    echo 'README.md holds no example: a line in a block fenced as sh that begins with $ hemwright'
    exit 1
fi

# as_shown SHOWN REAL: the lines are the same, `...` standing for any number of them.
as_shown()
{
    awk '
        NR == FNR { shown[++rows] = $0; next }
        { real[FNR] = $0; last = FNR }
        # Whether the shown lines from s on match the real ones from r on.
        function match_from(s, r,    i)
        {
            for (; s <= rows; s++) {
                if (shown[s] == "...") {
                    for (i = r; i <= last + 1; i++)
                        if (match_from(s + 1, i))
                            return 1
                    return 0
                }
                if (r > last || shown[s] != real[r])
                    return 0
                r++
            }
            return r > last
        }
        END { exit !match_from(1, 1) }' "$1" "$2"
}

passed=0
failed=0
number=0
while [ "$number" -lt "$count" ]; do
    number=$((number + 1))
    shown=$work/$number.shown
    real=$work/$number.real
    code=0
    (cd "$work/place" && sh "$work/$number.command") >"$real" 2>&1 </dev/null || code=$?
    if grep -q '^hemwright: ' "$shown"; then
        [ "$code" -ne 0 ] && ends=well || ends=badly
    else
        [ "$code" -eq 0 ] && ends=well || ends=badly
    fi
    if [ ! -s "$shown" ]; then
        echo "README.md line $(cat "$work/$number.line"): the example shows no output"
    elif [ "$ends" = well ] && as_shown "$shown" "$real"; then
        passed=$((passed + 1))
        continue
    else
        echo "README.md line $(cat "$work/$number.line"): this ends with $code and prints:"
        sed 's/^/    /' "$real"
        echo "and not what is shown:"
        sed 's/^/    /' "$shown"
    fi
    failed=$((failed + 1))
done

# Every file that is shown is used by an example, or nobody would see that it is wrong.
if [ -s "$work/files" ]; then
    while read -r name; do
        if cat "$work"/*.command "$work"/place/*.yaml | grep -qF "$name"; then
            passed=$((passed + 1))
        else
            failed=$((failed + 1))
            echo "README.md: no example uses $name"
        fi
    done <"$work/files"
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
