#!/bin/sh
# The caps and layers of the C sources, their licence lines and their formatting.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source of the rules: this project's own choice. With --self-test alone, plants a violation of
# each rule in a copy and fails unless each is found; make check does both.
set -eu
srcdir=${srcdir:-$(cd "$(dirname "$0")/.." && pwd)}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
LC_ALL=C
export LC_ALL

# c_rules FOLDER: the violations in its C sources.
c_rules()
{
    find "$1/src" "$1/tests" -name '*.[ch]' 2>/dev/null | sort >"$work/list"
    [ -s "$work/list" ] || { echo "$1: no sources found"; return; }
    xargs awk -v top="$1/" -f "$srcdir/tests/lint.awk" <"$work/list"
}

# script_rules FOLDER: the licence line of everything else that is written by hand.
script_rules()
{
    for file in "$1"/tests/*.sh "$1"/tests/*.py "$1"/tests/*.awk "$1"/tests/bench/*.sh \
        "$1"/tests/cases/*.case "$1"/tests/run "$1"/data/demo/run "$1"/data/*/*.yaml \
        "$1"/data/completion/* "$1"/man/*.[15] "$1"/configure.ac "$1"/Makefile.am; do
        [ -f "$file" ] || continue
        head -n 5 "$file" | grep -q 'SPDX-License-Identifier: GPL-3.0-or-later' ||
            echo "${file#"$1"/}:1: top comment: the licence stands in the first lines"
    done
}

# unlisted FOLDER: files that the Makefile does not name are missing from a release.
unlisted()
{
    [ -f "$1/Makefile.am" ] || return 0
    (cd "$1" && find src tests data man -type f 2>/dev/null | sort) |
        grep -E '[.]([chsy15]|case|yaml|json|md|sh|py|awk|bash|txt|csv)$' |
        while read -r file; do
            grep -qF "$file" "$1/Makefile.am" ||
                echo "$file:1: unlisted: Makefile.am does not name it"
        done
}

# plant RULE FILE TEXT: the rule's word must come up once TEXT stands at the end of FILE.
plant()
{
    rm -rf "$work/copy"
    mkdir -p "$work/copy/src/core" "$work/copy/src/read" "$work/copy/src/write" \
        "$work/copy/src/shell" "$work/copy/tests"
    for file in src/core/clean.c src/core/clean.h src/core/units.c src/read/clean.c \
        src/write/clean.c src/shell/clean.c tests/clean.c; do
        printf '%s\n' '/* A clean file. It says "// http://x" and sprintf( in a comment.' \
            ' * SPDX-License-Identifier: GPL-3.0-or-later */' '#include <string.h>' '' \
            'static const char *const words[] = { "// (int)1.5", "sprintf(" };' '' \
            'int five(int a, int (*b)(int, int), int c, int d, int e)' '{' '    return a;' '}' \
            >"$work/copy/$file"
    done
    rules "$work/copy" >"$work/clean"
    if [ -s "$work/clean" ]; then
        echo "a clean file is taken for a bad one:"
        cat "$work/clean"
        exit 1
    fi
    printf '%b\n' "$3" >>"$work/copy/$2"
    rules "$work/copy" >"$work/planted"
    grep -q ": $1: " "$work/planted" || { echo "not found: $1, planted in $2: $3"; exit 1; }
    planted=$((planted + 1))
}

rules()
{
    c_rules "$1"
    script_rules "$1"
    unlisted "$1"
}

lines()
{
    awk -v count="$1" 'BEGIN { for (i = 0; i < count; i++) printf "    a = %d;\\n", i }'
}

self_test()
{
    planted=0
    plant 'tab' src/core/clean.c 'int\ta;'
    plant 'long line' src/core/clean.c "$(printf '/* %0100d */' 0)"
    plant 'line comment' src/core/clean.c 'int a; // b'
    plant 'banned call' src/shell/clean.c 'int b = atoi("1");'
    plant 'banned call' tests/clean.c 'int b = sprintf(a, "b");'
    plant 'function length' src/core/clean.c "int f(int a)\n{\n$(lines 59)}"
    plant 'parameters' src/core/clean.c 'int f(int a, int b, int c,\n    int d, int e, int f)\n{\n}'
    plant 'parameters' src/core/clean.h 'int f(int a, int b, int c, int d, int e, int f);'
    plant 'file length' src/core/clean.c "/*\n$(lines 600)*/"
    plant 'header length' src/core/clean.h "/*\n$(lines 150)*/"
    plant 'top comment' src/core/other.c '/* A file. */\nint a;\nint b;'
    plant 'top comment' tests/other.sh 'echo'
    plant 'unlisted' Makefile.am 'src/core/clean.c'
    plant 'layer' src/core/clean.c '#include "read/keys.h"'
    plant 'layer' src/core/units.c '#include "core/gauge.h"'
    plant 'layer' src/core/clean.c '#include <stdio.h>'
    plant 'layer' src/core/clean.c '#include <unistd.h>'
    plant 'layer' src/read/clean.c '#include "write/cells.h"'
    plant 'layer' src/write/clean.c '#include "read/keys.h"'
    plant 'layer' src/write/clean.c '#include "shell/io.h"'
    plant 'layer' src/shell/clean.c '#include <xlsxwriter.h>'
    plant 'layer' src/write/clean.c '#include <yaml.h>'
    plant 'rounding' src/write/clean.c 'double d(double x)\n{\n    return floor(x);\n}'
    plant 'double cast' src/write/clean.c 'int d(double x_cm)\n{\n    return (int)(x_cm * 2);\n}'
    echo "$planted planted violations found"
}

self_test
[ "${1-}" != --self-test ] || exit 0

rules "$srcdir" >"$work/found"
if command -v clang-format >/dev/null 2>&1; then
    find "$srcdir/src" "$srcdir/tests" -name '*.[ch]' | sort |
        xargs clang-format --dry-run -Werror --style=file >"$work/format" 2>&1 ||
        sed -n "s|^$srcdir/||; s/: error: code should be clang-formatted.*/: format: make format mends it/p" \
            "$work/format" | sort -u -t : -k 1,1 >>"$work/found"
    formatting='formatting looked at'
else
    formatting='formatting not looked at: clang-format is not installed'
fi
if [ -s "$work/found" ]; then
    cat "$work/found"
    echo "$(wc -l <"$work/found") violations"
    exit 1
fi
echo "$(find "$srcdir/src" "$srcdir/tests" -name '*.[ch]' | wc -l) C files keep the rules;" \
    "$formatting"
