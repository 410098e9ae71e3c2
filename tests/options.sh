#!/bin/sh
# The program's own tables against its words: manuals, completion, limits and exit codes.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source: `hemwright help` and `hemwright keys`, which print the program's tables; for limits the
# headers under src. What the manuals say beyond them is read by people.
set -eu
srcdir=${srcdir:-$(cd "$(dirname "$0")/.." && pwd)}
LC_ALL=C
export LC_ALL
unset HEMWRIGHT_DATA
options_page=$srcdir/man/hemwright.1
keys_page=$srcdir/man/hemwright-project.5
completion=$srcdir/data/completion/hemwright.bash
[ -x ./hemwright ] || { echo 'skipped: the program is not built'; exit 77; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

pass()
{
    passed=$((passed + 1))
}

# fail WORDS: what is wrong, with the details of $work/details below it, if any.
fail()
{
    failed=$((failed + 1))
    echo "FAILED: $1"
    [ ! -s "$work/details" ] || sed 's/^/    /' "$work/details"
    : >"$work/details"
}

# same WORDS WANTED FOUND: two lists, line by line; a list without lines is a fault as well.
same()
{
    if [ ! -s "$2" ]; then
        : >"$work/details"
        fail "$1: nothing to compare with"
    elif diff "$2" "$3" >"$work/details"; then
        pass
    else
        fail "$1 (< the program, > the words)"
    fi
}

# has WORDS TEXT FILE: a fixed text stands in a file of one long line.
has()
{
    if grep -qF -e "$2" "$3"; then
        pass
    else
        : >"$work/details"
        fail "$1 does not say: $2"
    fi
}

# plain PAGE: the lines of a manual's source without its marks: `.It Fl -into Ar FOLDER` becomes
# `=It --into FOLDER`. Only what these two pages use is known here.
plain()
{
    awk '
        function clean(text)
        {
            gsub(/\\&/, "", text)
            gsub(/\\-/, "-", text)
            return text
        }
        /^\.\\"/ { next }
        !/^\./ { print clean($0); next }
        {
            line = clean($0)
            count = split(line, words, / +/)
            head = words[1]
            made = ""
            if (head ~ /^\.(It|Sh|Ss)$/)
                made = "=" substr(head, 2)
            glue = 0
            for (i = made == "" ? 1 : 2; i <= count; i++) {
                word = words[i]
                if (i == 1)
                    sub(/^\./, "", word)
                if (word == "Fl") {
                    i++
                    word = "-" words[i]
                } else if (word == "Nm" && head != ".Nm") {
                    word = "hemwright"
                } else if (word == "Ns") {
                    glue = 1
                    continue
                } else if (word == "Op") {
                    word = "[" (words[i + 1] == "Fl" ? "-" words[i + 2] " " words[i + 4] \
                        : words[i + 2]) "]"
                    sub(/ +\]/, "]", word)
                    i = count
                } else if (word ~ /^(Ar|Cm|Ic|No|Li|Ql|Pa|Ev|Sx|Em|Sy|Dl|Dq|Pq)$/) {
                    continue
                }
                if (word ~ /^[:,.;]$/)
                    glue = 1
                made = made (made == "" || glue ? "" : " ") word
                glue = 0
            }
            gsub(/"/, "", made)
            print made
        }' "$1"
}

: >"$work/details"
./hemwright help >"$work/help"
./hemwright keys >"$work/keys"
plain "$options_page" >"$work/page1"
plain "$keys_page" >"$work/page5"
tr '\n' ' ' <"$work/page1" | tr -s ' ' >"$work/flat1"
tr '\n' ' ' <"$work/page5" | tr -s ' ' >"$work/flat5"

# ---- Commands and options: the help against the first manual, both ways.

# Help: two blanks before a command, six before one of its options.
awk '
    /^  [a-z]/ {
        line = substr($0, 3)
        sub(/   *.*/, "", line)
        print line ":"
        split(line, word, " ")
        command = word[1]
    }
    /^      --/ {
        line = substr($0, 7)
        sub(/   *.*/, "", line)
        print command ": " line
    }' "$work/help" | sort >"$work/options"
sed -n 's/^\([a-z]*\).*:$/\1/p' "$work/options" | sort >"$work/commands"
sed -n 's/^[a-z]*: \(--[a-z-]*\).*/\1/p' "$work/options" | sort -u >"$work/option_names"

awk '
    /^=Sh / { inside = $2 == "COMMANDS" }
    inside && /^=It hemwright / {
        sub(/^=It hemwright /, "")
        print $0 ":"
        command = $1
    }
    inside && /^=It --/ { sub(/^=It /, ""); print command ": " $0 }' "$work/page1" |
    sort >"$work/described"
same 'commands and options in man/hemwright.1' "$work/options" "$work/described"

# The synopsis, a command in lines of its own; its options in any order.
awk '
    /^=Sh / { inside = $2 == "SYNOPSIS" }
    !inside || /^=Sh / { next }
    /^Nm$/ { wants = 1; next }
    wants { command = $1; wants = 0; print command ":"; next }
    /^\[?--/ { gsub(/[][]/, ""); print command ": " $0 }' "$work/page1" |
    sort >"$work/synopsis"
sed 's/^\([a-z]*\) .*:$/\1:/' "$work/options" | sort >"$work/brief"
same 'commands and options in the synopsis' "$work/brief" "$work/synopsis"

# Nothing anywhere that the program does not take.
{
    cat "$work/option_names"
    printf '%s\n' --help --version
} | sort -u >"$work/known"
for file in "$work/flat1" "$work/flat5" "$completion" "$srcdir/README.md"; do
    # Options of configure are no options of the program.
    grep -oE -e '(^|[^a-z-])--[a-z][a-z-]*' "$file" | sed 's/^[^-]*//' |
        grep -vE -e '^--(enable|prefix)' | sort -u >"$work/used" || true
    if comm -13 "$work/known" "$work/used" >"$work/details" && [ ! -s "$work/details" ]; then
        pass
    else
        fail "options that the program does not take stand in ${file##*/}"
    fi
done

# Words that an option takes, as the help lists them.

# words_of OPTION: `some of a,b (the usual), c, or all; ...` or `a, b, c or d; ...`, which may go on
# in further lines.
words_of()
{
    awk -v option="$1" '
        /^  [a-z]/ || /^      --/ { inside = $1 == option }
        inside { text = text " " $0 }
        END {
            sub(/^ *--[a-z-]+ [A-Z]+ +/, "", text)
            sub(/.*some of /, "", text)
            sub(/;.*/, "", text)
            gsub(/\([^)]*\)/, "", text)
            gsub(/ or /, " ", text)
            gsub(/,/, " ", text)
            count = split(text, words, " ")
            for (i = 1; i <= count; i++)
                print words[i]
        }' "$work/help" | sort
}
for option in --only --show --fold --fabric; do
    words_of "$option" >"$work/words$option"
    [ "$(wc -l <"$work/words$option")" -ge 3 ] || fail "the help names no words for $option"
    while read -r word; do
        if grep -qE "(^| )${word}[ ,.;]" "$work/flat1"; then
            pass
        else
            fail "man/hemwright.1 does not name $word, which $option takes"
        fi
    done <"$work/words$option"
done

# ---- Keys: the same groups, keys, kinds and ranges in the same order.

awk '
    /^In / { sub(/:$/, ""); print; next }
    /^  [^ ]/ { print "    " substr($0, 3) }' "$work/keys" >"$work/key_list"
awk '
    /^=Sh / { inside = 0 }
    /^=Ss / { inside = /^=Ss In /; if (inside) print substr($0, 5); next }
    inside && /^=It / {
        line = substr($0, 5)
        sub(/ needed$/, " (needed)", line)
        print "    " line
    }' "$work/page5" >"$work/key_page"
same 'keys in man/hemwright-project.5' "$work/key_list" "$work/key_page"

# ---- Limits, as the headers have them.

# limit NAME HEADER BEFORE AFTER: the manual says the value of NAME between these words.
limit()
{
    value=$(sed -n "s/^.*$1 *=* *\([0-9][0-9 <]*\).*/\1/p" "$srcdir/src/$2" | head -n 1)
    # shellcheck disable=SC2004 # the value may be a sum, such as 1 << 20
    has man/hemwright-project.5 "$3$(($value))$4" "$work/flat5"
}
limit HW_MAX_SIZES core/hw.h '' ' sizes in a project'
limit HW_MAX_PIECES core/hw.h '' ' pieces and'
limit HW_MAX_SEAMS core/hw.h 'pieces and ' ' seams'
limit HW_MAX_MEASURES core/hw.h '' ' measurements of the body'
limit HW_MAX_SWATCHES core/hw.h '' ' measured places'
limit HW_MAX_TERMS core/hw.h 'up to ' ' measurements'
limit HW_MAX_STS core/hw.h '' ' stitches across a piece'
limit HW_MAX_ROWS core/hw.h 'piece, ' ' rows'
limit HW_MAX_CHART_COLUMNS core/hw.h '' ' columns in a figure'
limit HW_MAX_CHART_ROWS core/hw.h 'together, ' ' rows'
limit HW_MAX_TEXT core/hw.h 'at most ' ' letters'
limit HW_WORDS_MAX_NAME core/words.h 'at most ' ' letters in a key'
limit HW_MAX_CM core/hw.h '' ' cm for a length'
limit HW_YAML_MAX_BYTES read/yaml.h '' ' bytes'
limit HW_YAML_MAX_NODES read/yaml.h '' ' values'
limit HW_YAML_MAX_DEPTH read/yaml.h '' ' groups one inside'
limit HW_YAML_MAX_LINE read/yaml.h '' ' letters in a line'

# ---- The environment: what the program asks for, but for the tests' own HW_FAULT.

grep -rhoE 'getenv\("[A-Z_]+"\)' "$srcdir/src" | sed 's/.*"\(.*\)".*/\1/' | grep -vx HW_FAULT |
    sort -u >"$work/asked"
sed -n 's/^=It \([A-Z][A-Z_]*\)$/\1/p' "$work/page1" | sort -u >"$work/told"
same 'the environment in man/hemwright.1' "$work/asked" "$work/told"

# ---- Exit codes: `0 when done, 1 when no stitch count fits` in the help.

sed -n '/^Ends with/,$p' "$work/help" | tr '\n' ' ' | sed 's/\. .*//' | grep -oE '[0-9] [^0-9]*' |
    sed 's/, *$//; s/ *$//; s/^\([0-9]\) \(when\|for\) /\1 /' >"$work/codes"
[ "$(cut -c 1 "$work/codes" | tr -d '\n')" = 01234 ] || fail 'the help does not tell codes 0 to 4'
while read -r code words; do
    has man/hemwright.1 "=It $code $words" "$work/flat1"
    has README.md "| $code | $words" "$srcdir/README.md"
done <"$work/codes"

# ends CODE ARGUMENT...: the program ends so.
ends()
{
    wanted=$1
    shift
    code=0
    ./hemwright "$@" >"$work/out" 2>&1 </dev/null || code=$?
    if [ "$code" -eq "$wanted" ]; then
        pass
    else
        cp "$work/out" "$work/details"
        fail "hemwright $* ends with $code, not $wanted"
    fi
}
ends 0 --help
ends 0 -h
ends 0 --version
ends 0 -V
ends 0 plan --help
ends 1 stitches --width 40cm --gauge 28 --repeat 24 --bed 20
ends 2 nonsense
ends 2 stitches --width
ends 3 plan "$work/no/such.yaml"

# ---- The completion, run in bash.

# offers WORDS...: what completion offers for a command line whose last word may be empty, in a
# folder with two files.
mkdir "$work/files"
: >"$work/files/dress.yaml"
: >"$work/files/dress.xlsx"
program=$PWD/hemwright
completion=$(cd "$(dirname "$completion")" && pwd)/${completion##*/}
offers()
{
    # shellcheck disable=SC2016 # for bash to expand
    (cd "$work/files" && bash --norc -c '
        . "$1"
        shift
        COMP_WORDS=("$@")
        COMP_CWORD=$(($# - 1))
        _hemwright
        [ ${#COMPREPLY[@]} -eq 0 ] || printf "%s\n" "${COMPREPLY[@]}"
        ' bash "$completion" "$program" "$@" 2>&1) | sort
}

if command -v bash >/dev/null 2>&1; then
    {
        cat "$work/commands"
        printf '%s\n' --help --version
    } | sort >"$work/wanted"
    offers '' >"$work/offered"
    same 'commands in the completion' "$work/wanted" "$work/offered"
    while read -r command; do
        {
            sed -n "s/^$command: \(--[a-z-]*\).*/\1/p" "$work/options"
            echo --help
        } | sort >"$work/wanted"
        offers "$command" -- >"$work/offered"
        same "options of $command in the completion" "$work/wanted" "$work/offered"
    done <"$work/commands"
    # No option with a value may be taken for one without.
    sed -n 's/^\([a-z]*\): \(--[a-z-]*\) [A-Z].*/\1 \2/p' "$work/options" >"$work/valued"
    while read -r command option; do
        offers "$command" "$option" -- >"$work/offered"
        if grep -q -e '^--' "$work/offered"; then
            cp "$work/offered" "$work/details"
            fail "completion offers options where the value of $option belongs"
        else
            pass
        fi
    done <"$work/valued"

    for option in --only --show --fold --fabric; do
        command=plan
        [ "$option" != --fold ] || command=hem
        [ "$option" != --fabric ] || command=dial
        offers "$command" "$option" '' >"$work/offered"
        same "values of $option in the completion" "$work/words$option" "$work/offered"
    done
    while read -r fold; do
        ends 0 hem --depth 4cm --rows 40 --band 10 --fold "$fold"
    done <"$work/words--fold"
    while read -r table; do
        ends 0 plan "$srcdir/data/demo/harbour-purse.yaml" --only table --show "$table"
    done <"$work/words--show"
    offers hem --fold = pi >"$work/offered"
    echo picot >"$work/wanted"
    same 'a value behind = in the completion' "$work/wanted" "$work/offered"

    offers plan --show sizes,he >"$work/offered"
    echo sizes,hem >"$work/wanted"
    same 'a second value of --show in the completion' "$work/wanted" "$work/offered"

    ./hemwright list | sed -n 's/:$//p' | sort >"$work/wanted"
    offers list '' >"$work/offered"
    same 'kinds in the completion' "$work/wanted" "$work/offered"
    ./hemwright list motifs | sed -n 's/^  //p' | grep '^t' | sort >"$work/wanted"
    offers motif t >"$work/offered"
    same 'motifs in the completion' "$work/wanted" "$work/offered"
    echo dress.yaml >"$work/wanted"
    offers plan d >"$work/offered"
    same 'project files in the completion' "$work/wanted" "$work/offered"
    printf '%s\n' dress.xlsx dress.yaml >"$work/wanted"
    offers learn d >"$work/offered"
    same 'measured files in the completion' "$work/wanted" "$work/offered"
else
    echo 'not looked at: the completion, because bash is not installed'
fi

# ---- The manuals by themselves.

if command -v mandoc >/dev/null 2>&1; then
    for page in "$options_page" "$keys_page"; do
        if mandoc -T lint -W all "$page" >"$work/details" 2>&1 && [ ! -s "$work/details" ]; then
            pass
        else
            fail "mandoc finds fault with ${page##*/}"
        fi
    done
else
    echo 'not looked at: the form of the manuals, because mandoc is not installed'
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
