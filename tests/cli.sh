#!/bin/sh
# The command line as a knitter meets it: commands, options, exit codes, and what is said of mistakes.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source: own choice, but for the counts in the calculators, which are worked out by hand beside
# them. The program is ./hemwright, or the one that $HEMWRIGHT_PROGRAM names.
set -u
srcdir=${srcdir:-$(cd "$(dirname "$0")/.." && pwd)}
top=$(cd "$srcdir" && pwd)
program=${HEMWRIGHT_PROGRAM:-./hemwright}
[ -x "$program" ] || { echo 'skipped: the program is not built'; exit 77; }
program=$(cd "$(dirname "$program")" && pwd)/$(basename "$program")
HEMWRIGHT_DATA=$top/data
LC_ALL=C
export HEMWRIGHT_DATA LC_ALL
unset SOURCE_DATE_EPOCH HW_FAULT
work=$(mktemp -d)
trap 'chmod -R u+rwx "$work" 2>/dev/null; rm -rf "$work"' EXIT
cd "$work" || exit 1
starter=$top/data/demo/starter.yaml
passed=0
failed=0

good()
{
    passed=$((passed + 1))
}

bad()
{
    failed=$((failed + 1))
    echo "FAILED: $what"
    [ $# -eq 0 ] || echo "    $*"
    sed 's/^/    stderr: /' err | head -n 3
}

# run WORDS: the program, its exit code in $code, what it prints in out and err.
run()
{
    code=0
    timeout 60 "$program" "$@" >out 2>err </dev/null || code=$?
}

# check WHAT EXIT WORDS: the exit code alone, and that messages go to standard error.
check()
{
    what=$1
    wanted=$2
    shift 2
    run "$@"
    if [ "$code" -ne "$wanted" ]; then
        bad "ended with $code, not $wanted"
    elif [ "$wanted" -ne 0 ] && { [ -s out ] || [ "$(wc -l <err)" -ne 1 ] ||
        ! grep -q '^hemwright: ' err; }; then
        bad 'one line on standard error, and nothing else, was wanted'
    elif [ "$wanted" -eq 0 ] && [ -s err ]; then
        bad 'nothing was wanted on standard error'
    else
        good
    fi
}

# says WHAT WORDS...: each stands in what the last run printed, on either side.
says()
{
    what=$1
    shift
    for words in "$@"; do
        if grep -qF -e "$words" out err; then
            good
        else
            bad "not said: $words"
        fi
    done
}

# refused WHAT EXIT PLACE WORDS: plan bad.yaml ends so, with this place and these words.
refused()
{
    what=$1
    wanted=$2
    place=$3
    words=$4
    run plan bad.yaml
    if [ "$code" -ne "$wanted" ]; then
        bad "ended with $code, not $wanted"
    elif ! grep -q "^hemwright: bad.yaml:$place " err || ! grep -qF -e "$words" err; then
        bad "wanted: hemwright: bad.yaml:$place ... $words"
    elif [ -s out ] || [ "$(wc -l <err)" -ne 1 ] || [ -e bad.xlsx ] || [ -e bad.csv ] ||
        [ -e bad.json ]; then
        bad 'one line on standard error, and no file, was wanted'
    else
        good
    fi
}

# edited SED WHAT EXIT PLACE WORDS: the starter project, changed, is refused.
edited()
{
    sed "$1" "$starter" >bad.yaml
    if cmp -s "$starter" bad.yaml; then
        what=$2
        bad 'the change changes nothing'
        return
    fi
    shift
    refused "$@"
}

# same WHAT FILE FILE
same()
{
    what=$1
    if cmp -s "$2" "$3"; then
        good
    else
        bad "$2 and $3 differ"
    fi
}

# ---- Help and version ----
check 'no words give the help page' 0
says 'help names commands and options' 'plan FILE' '--into FOLDER' 'Ends with 0 when done'
cp out help
for words in help --help -h 'plan --help' 'hem -h'; do
    # shellcheck disable=SC2086
    check "help: $words" 0 $words
    same "help: $words gives the same page" help out
done
for words in version --version -V; do
    check "version: $words" 0 $words
    says "version: $words" 'hemwright 0.'
done

# ---- Slips in the command ----
check 'an unknown command' 2 plna x.yaml
says 'an unknown command gives the nearest' 'did you mean `hemwright plan`?'
check 'a command like no other' 2 xyzzyxyzzy
says 'a command like no other points to help' '`hemwright help` lists them'
check 'an unknown option' 2 plan x.yaml --itno y
says 'an unknown option gives the nearest' '`--itno`' 'did you mean `--into`?'
check "another command's option" 2 keys --into y
says "another command's option" 'is not an option of `hemwright keys`'
check 'an option twice' 2 plan x.yaml --into a --into b
says 'an option twice' '`--into` stands here twice; keep one'
check 'an option without its value' 2 plan x.yaml --into
says 'an option without its value' 'needs a value behind it: --into FOLDER'
check 'an option where a value belongs' 2 plan x.yaml --into --replace
says 'an option where a value belongs' '`--into` needs a value'
check 'a value for an option that takes none' 2 plan x.yaml --replace=yes
says 'a value for an option that takes none' '`--replace` takes no value'
check 'a word too few' 2 plan
says 'a word too few' 'write `hemwright plan FILE`'
check 'a word too many' 2 plan my dress.yaml
says 'a word too many' '`dress.yaml` is one word too many' 'between quotes'
check 'an unknown kind of document' 2 plan "$starter" --only xslx
says 'an unknown kind of document' 'did you mean `xlsx`?'
check 'an unknown table' 2 plan "$starter" --show sizes,hen
says 'an unknown table' 'did you mean `hem`?'
check 'a blank behind a comma' 2 plan "$starter" --only 'csv, json'
says 'a blank behind a comma' ' json` is not known'

# ---- The calculators ----
# 40 x 2.8 = 112; 18 repeats of 6 less a gap and 1 + 1 are 109, 19 are 113.
check 'stitches for a width' 0 stitches --width 40cm --gauge 28 --repeat 6 --gap 1
says 'stitches for a width' '112 stitches' 'Narrower: 18 motifs' '109 stitches' '113 stitches'
check 'stitches without a repeat' 0 stitches --width 40 --gauge 28 --edge 1
says 'stitches without a repeat' 'the nearest whole number is 112, cast on 114'
# 4 in are 10.16 cm: 28 x 40 / 10.16 = 110.24.
check 'a gauge over inches' 0 stitches --width 40 --gauge 28 --per '4 in'
says 'a gauge over inches' '110.24 stitches'
check 'a width in inches' 0 stitches --width '15 3/4 in' --gauge 28
says 'a width in inches' '(15 3/4 in)'
check 'one motif wider than the bed' 1 stitches --width 40 --gauge 28 --repeat 30 --bed 20
says 'one motif wider than the bed' 'does not fit on 20 needles' 'choose'
check 'no needle free' 1 stitches --width 40 --gauge 28 --repeat 3 --bed 2 --edge 10
says 'no needle free' 'leave no needle free' '--bed'
check 'no width' 2 stitches --gauge 28
says 'no width' 'needs --width too'
check 'no gauge' 2 stitches --width 40
says 'no gauge' 'needs --gauge too'
check 'a decimal comma in a width' 2 stitches --width 40,5 --gauge 28
says 'a decimal comma in a width' '`--width 40,5`' 'give a length'
for number in nan inf 0 -1 1e3 2001 x; do
    check "a gauge of $number" 2 stitches --width 40 --gauge "$number"
    says "a gauge of $number" "\`--gauge $number\`: give a number from 1 to 2000"
done
check 'a gap without a repeat' 2 stitches --width 40 --gauge 28 --gap 1
says 'a gap without a repeat' 'means nothing without `--repeat`'
check 'a gap as wide as the repeat' 2 stitches --width 40 --gauge 28 --repeat 6 --gap 6
says 'a gap as wide as the repeat' 'whole number from 0 to 5'
check 'no stitch at all' 2 stitches --width 1mm --gauge 28
says 'no stitch at all' 'that is 0.3 stitches'
check 'a gauge that no fabric has' 2 stitches --width 40 --gauge 2000 --per 1mm
says 'a gauge that no fabric has' 'fabric has 1 to 200'
# Common practice, no source: 6 band rows on a 10-row face is 2 + 6 + 2, facing 10, 20 in all. At
# 40 rows 10 rows are 2.5 cm.
check 'a hem' 0 hem --depth 2.5cm --rows 40 --band 6 --fold none
says 'a hem' 'Facing 10' 'plain 2, band 6, plain 2: 10 rows of face, 20 in all'
for fold in none loose purl picot; do
    check "a fold: $fold" 0 hem --depth 4 --rows 40 --band 6 --fold "$fold"
done
check 'an unknown fold' 2 hem --depth 4 --rows 40 --band 6 --fold pikot
says 'an unknown fold' 'write none, loose, purl or picot'
check 'a hem in inches' 0 hem --depth '1 1/2 in' --rows 30 --band-rows 28 --per '4 in' --band 8
says 'a hem in inches' ' in) deep'
check 'a hem without a band' 2 hem --depth 4 --rows 40
says 'a hem without a band' 'needs --band too'
check 'a hem deeper than a piece' 2 hem --depth 1000 --rows 2000 --band 8
check 'a hem of a gauge that no fabric has' 2 hem --depth 1000 --rows 2000 --per 0.000001 --band 8
says 'a hem of a gauge that no fabric has' 'look at the count'
# 7 over 100: 14 each and 2 over, so 5 gaps of 14 and 2 of 15.
check 'changes spread evenly' 0 spread 7 100
says 'changes spread evenly' 'Every 14th 5 times, every 15th 2 times'
check 'more changes than stitches' 2 spread 3 2
says 'more changes than stitches' '3 changes cannot be spread over 2'
check 'no changes' 2 spread 0 100
says 'no changes' 'whole number from 1 to'
# 50 / 16 x 10 = 31.25; 31.25 x 1.016 = 31.75.
check 'a gauge' 0 gauge 50 16cm
says 'a gauge' '31.25 in 10 cm, 31.75 in 4 in'
check 'a gauge from two places' 0 gauge 50 16cm 50 160mm
says 'a gauge from two places' '2 places'
check 'a gauge with a length too few' 2 gauge 50 16cm 50
says 'a gauge with a length too few' 'a count and a length'
check 'a gauge of no length' 2 gauge 50 0cm
says 'a gauge of no length' 'give a length'
check 'a motif' 0 motif tulip
says 'a motif' 'repeat 8; 10 rows' 'holds 3 whole repeats'
check 'a motif with another gap, on no card' 0 motif tulip --gap 2 --card 0
says 'a motif with another gap' 'gap 2, repeat 9'
check 'a motif with a gap too wide' 2 motif tulip --gap 194
says 'a motif with a gap too wide' '`--gap 194`: give a whole number of columns, 0 to 193'
check 'a misspelt motif' 2 motif tullip
says 'a misspelt motif' 'did you mean `tulip`?'

# ---- Motifs changed and saved; the charts are drawn by hand ----
# draws WHAT ROWS...: the drawing begins with these rows.
draws()
{
    what=$1
    shift
    printf '%s\n' "$@" >wanted
    head -n $# out >found
    if cmp -s wanted found; then
        good
    else
        bad "drawn: $(tr '\n' ' ' <found)"
    fi
}
printf 'P1\n# a hook\n3 2\n110\n100\n' >hook.pbm # oo. over o..
printf 'P4\n8 1\n\200' >dot.pbm                 # o.......
check 'a bitmap' 0 motif hook.pbm
draws 'a bitmap' 'oo.oo.oo.' 'o..o..o..'
says 'a bitmap' 'hook: figure 3 columns, gap 0, repeat 3; 2 rows'
check 'mirrored, its gap at the right' 0 motif hook.pbm --gap 1 --mirror
draws 'mirrored, its gap at the right' '.oo..oo..oo.' '..o...o...o.'
check 'upside down' 0 motif --upside-down ./hook.pbm
draws 'upside down' 'o..o..o..' 'oo.oo.oo.'
check 'shifted with its gap' 0 motif hook.pbm --gap 1 --shift 1
draws 'shifted with its gap' '.oo..oo..oo.' '.o...o...o..'
check 'shifted to the left' 0 motif hook.pbm --gap 1 --shift -1
draws 'shifted to the left' 'o..oo..oo..o' '...o...o...o'
check 'mirrored first, whatever the order' 0 motif hook.pbm --shift -1 --mirror --gap 1
draws 'mirrored first, whatever the order' 'oo..oo..oo..' '.o...o...o..'
check 'raised' 0 motif hook.pbm --raise 1
draws 'raised' 'o..o..o..' 'oo.oo.oo.'
check 'beside another' 0 motif hook.pbm --gap 1 --beside dot.pbm
draws 'beside another' 'oo..........oo..........oo..........' 'o...o.......o...o.......o...o.......'
check 'below another' 0 motif hook.pbm --gap 1 --above dot.pbm --plain-rows 1
draws 'below another' 'o.......o.......o.......' '........................' \
    'oo..oo..oo..oo..oo..oo..' 'o...o...o...o...o...o...'
check 'above another' 0 motif hook.pbm --gap 1 --below dot.pbm
draws 'above another' 'oo..oo..oo..oo..oo..oo..' 'o...o...o...o...o...o...' \
    'o.......o.......o.......'
check 'caught' 0 motif dot.pbm --catch 5
draws 'caught' 'o...o...o...o...o...o...'
says 'caught' 'Longest float: background yarn 1 stitches' 'added to each repeat: 1'
check 'saved' 0 motif hook.pbm --gap 1 --mirror --save turned.yaml
says 'saved' 'Written: turned.yaml'
check 'what was saved' 0 motif turned.yaml
draws 'what was saved' '.oo..oo..oo.' '..o...o...o.'
says 'what was saved' 'hook: figure 3 columns, gap 1'
check 'saved as a picture' 0 motif turned.yaml --save turned.pbm
check 'the picture' 0 motif turned.pbm
draws 'the picture' '.oo.oo.oo' '..o..o..o'
cp turned.yaml before
check 'not written over' 3 motif tulip --save turned.yaml
says 'not written over' 'turned.yaml: ' '`--replace`'
cmp -s before turned.yaml && good || bad 'the file changed'
check 'written over' 0 motif tulip --save turned.yaml --replace
check 'what was written over' 0 motif turned.yaml
says 'what was written over' 'Tulip: figure 7 columns, gap 1'
check 'another ending' 2 motif tulip --save turned.png
says 'another ending' '`--save turned.png`: ' '.yaml' '.pbm'
check 'a folder that is not there' 3 motif tulip --save no/such.yaml
check 'plain rows beside nothing' 2 motif tulip --plain-rows 2
says 'plain rows beside nothing' '`--above`'
check 'a float that cannot be' 2 motif tulip --catch 1
says 'a float that cannot be' '`--catch 1`: give a whole number of stitches, 2 to 200'
check 'no number' 2 motif tulip --shift far
says 'no number' '`--shift far`: ' '-200 to 200'
check 'another that is not there' 2 motif tulip --beside tullip
says 'another that is not there' 'did you mean `tulip`?'
check 'too wide together' 2 motif hook.pbm --gap 196 --beside dot.pbm
says 'too wide together' '207 columns'
printf 'P1\n3 2\n110\n1o0\n' >bad.pbm
check 'a fault in a bitmap' 2 motif bad.pbm
says 'a fault in a bitmap' 'bad.pbm:4:2: '

# ---- One size, drawings, garment files ----
# Source: arithmetic by hand on the two pieces of flag.yaml, whose edges run straight up.
cat >flag.yaml <<'END'
title: Flag
finished:
  width: { is: chest }
pieces:
  front:
    band width: 0.5 x width
    outline:
      right:
        - { stretch: side, across: 0.25 x width, up: 20 cm }
  back:
    band width: 0.5 x width
    outline:
      right:
        - { stretch: side, across: 0.25 x width, up: 23 cm }
joins:
  - front right side to back left side, within 2 cm
END
cat >sizes.yaml <<'END'
title: Two widths
names: [narrow, wide]
sources: { here: { mark: own choice, what: for this test } }
body:
  chest: { values: [40 cm, 60 cm], source: here }
END
check 'a garment file' 0 garment flag.yaml --table sizes.yaml
says 'a garment file' 'Flag, in Two widths' 'width: 40, 60 cm' 'within 2 cm: does not close' \
    'furthest off 3 cm, in size narrow' 'Some edges do not close'
sed 's/within 2 cm/within 3 cm/' flag.yaml >ample.yaml
check 'a garment file that closes' 0 garment ample.yaml --table sizes.yaml
says 'a garment file that closes' 'within 3 cm: closes' 'close in every size'
{
    cat flag.yaml
    printf 'trims:\n  rim: { along: front right }\n  edging: { along: [front left, rim end] }\n'
} >stray.yaml
check 'an end that lies elsewhere' 2 garment stray.yaml --table sizes.yaml
says 'an end that lies elsewhere' 'stray.yaml:19:33: `rim end` does not lie at an end of the edge'
check 'a garment of the data folder' 0 garment set-in-cardigan --table women
says 'a garment of the data folder' 'close in every size'
check 'no such garment' 2 garment set-in-cardigann
says 'no such garment' 'did you mean `set-in-cardigan`?'
check 'no such table' 2 garment ample.yaml --table women.yml
says 'no such table' 'women.yml' '`hemwright list sizes`'
check 'a table that lacks what it needs' 2 garment ample.yaml --table european-heights
says 'a table that lacks what it needs' '`chest`'
check 'a fault in a garment file' 2 garment sizes.yaml
says 'a fault in a garment file' 'sizes.yaml:2:1: ' 'garment file'
check 'a garment without a name' 2 garment
check 'a garment is drawn' 0 garment ample.yaml --table sizes.yaml --size wide --save flag.svg
says 'a garment is drawn' 'Written: flag.svg'
what='a garment is drawn'
grep -q '<svg ' flag.svg && grep -qF 'Flag, size wide' flag.svg && grep -qF '30 cm' flag.svg &&
    good || bad 'no drawing of a piece of 30 cm'
cp flag.svg before.svg
check 'a drawing that is there' 3 garment ample.yaml --table sizes.yaml --save flag.svg
says 'a drawing that is there' 'flag.svg: ' '`--replace`'
same 'a drawing that is there stays' before.svg flag.svg
check 'a drawing is replaced' 0 garment ample.yaml --table sizes.yaml --size narrow \
    --save flag.svg --replace
what='a drawing is replaced'
grep -qF 'Flag, size narrow' flag.svg && grep -qF '20 cm' flag.svg && good || bad
check 'a drawing under another ending' 2 garment ample.yaml --table sizes.yaml --save flag.png
says 'a drawing under another ending' '`--save flag.png`' '.svg'
check 'no such size of a garment' 2 garment ample.yaml --table sizes.yaml --size wied
says 'no such size of a garment' 'did you mean `wide`?'

cat >flag-project.yaml <<'END'
title: Bunting
machine: standard
garment: ample.yaml
gauge: { main: { stitches: 30, rows: 40 } }
motif: { use: arrowheads, gap: 1 }
hem: { face rows: 8 }
sizes: { names: [narrow, wide], table: sizes.yaml }
bands:
  upper:
    on: [front]
    motif: { use: reeds, gap: 1 }
    above fold: 10 cm
END
check 'a project is drawn' 0 draw flag-project.yaml --into pictures
says 'a project is drawn' 'Written: pictures/flag-project-pieces.svg' \
    'Written: pictures/flag-project-fabric.svg' 'Written: pictures/flag-project-chart.svg' \
    'Written: pictures/flag-project-fabric-upper.svg' \
    'Written: pictures/flag-project-chart-upper.svg'
what='a project is drawn'
grep -qF 'Bunting, size narrow' pictures/flag-project-pieces.svg && good || bad 'not the first size'
grep -qF -- '-card-' out && bad 'a card whose measures are not known' || good
check 'drawings that are there' 3 draw flag-project.yaml --into pictures
says 'drawings that are there' '`--replace`'
check 'the other size is drawn' 0 draw flag-project.yaml --into pictures --replace --size wide
what='the other size is drawn'
grep -qF 'Bunting, size wide' pictures/flag-project-pieces.svg && good || bad
check 'no such size to draw' 2 draw flag-project.yaml --into pictures --replace --size wode
says 'no such size to draw' 'flag-project.yaml: ' 'did you mean `wide`?'
check 'nothing to draw' 2 draw
check 'a project that is not there is drawn' 3 draw no.yaml
cp "$top/data/machines/standard.yaml" measured.yaml
printf 'hole pitch: 5 mm\nrow pitch: 5 mm\ncard width: 140 mm\n' >>measured.yaml
sed 's/^machine: .*/machine: measured.yaml/' flag-project.yaml >with-card.yaml
check 'a card is drawn' 0 draw with-card.yaml --into pictures
says 'a card is drawn' 'Written: pictures/with-card-card-1.svg' \
    'Written: pictures/with-card-card-upper-1.svg'

# Names that differ by a blank alone, or by capitals, have files of their own; motifs without a name
# are called after their bands.
cp flag-project.yaml alike.yaml
up=2
for name in 'low band' low-band 'Low band'; do
    up=$((up + 4))
    printf '  %s:\n    on: [back]\n    motif:\n      chart: |\n        oo\n        o.\n      gap: 1\n' "$name"
    printf '    above fold: %d cm\n' "$up"
done >>alike.yaml
check 'names alike' 0 draw alike.yaml --into alike
says 'names alike' 'Written: alike/alike-fabric-low-band.svg' \
    'Written: alike/alike-chart-low-band-2.svg' 'Written: alike/alike-fabric-Low-band-3.svg'
what='names alike'
grep -qF 'Bunting: motif of low band<' alike/alike-chart-low-band.svg &&
    grep -qF 'Bunting: motif of low-band<' alike/alike-chart-low-band-2.svg && good || bad 'titles'

# What the paper has no room for does not keep the rest from being drawn. By hand: of twelve pieces
# with names of 40 letters two stand in a row; what stands above and below each, four lines of trims
# with it, is more than 40 mm high, so six rows are more than a page at any scale.
number=0
{
    printf 'title: Panels\nfinished:\n  width: { is: chest }\npieces:\n'
    for letter in a b c d e f g h i j k l; do
        printf '  panel %s of a coat that has twelve parts:\n' "$letter"
        printf '    band width: 0.5 x width\n    outline:\n      right:\n'
        printf '        - { across: 0.25 x width, up: 20 cm }\n'
    done
    printf 'trims:\n'
    for edge in left right top 'left '; do
        for letters in 'a b c d e f' 'g h i j k l'; do
            along=
            for letter in $letters; do
                along="$along${along:+, }panel $letter of a coat that has twelve parts ${edge% }"
            done
            printf '  trim %d:\n    depth: 1 cm\n    along: [%s]\n' "$((number += 1))" "$along"
        done
    done
} >panels.yaml
sed -e '/^bands:/,$d' -e 's/^garment: .*/garment: panels.yaml/' flag-project.yaml >coat.yaml
check 'a picture without room' 0 draw coat.yaml --into coat
says 'a picture without room' \
    'Not drawn: coat/coat-pieces.svg: the 12 pieces do not fit one page at 1 to 100: draw some' \
    'Written: coat/coat-fabric.svg' 'Written: coat/coat-chart.svg'

check 'bands that share a card' 0 plan "$top/data/demo/orchard-cardigan.yaml" --only table \
    --show chart,rows
says 'bands that share a card' 'left front band, right front band: the band as knitted' \
    'Put the card of the'
check 'every size' 0 plan flag-project.yaml --only table --show rows
says 'every size' 'front, all sizes' 'back, all sizes' 'size narrow' 'size wide'
check 'one size alone' 0 plan flag-project.yaml --only table --show rows --size wide
says 'one size alone' 'front, size wide' 'back, size wide'
grep -qF 'size narrow' out && bad 'the other size' || good
check 'no such size' 2 plan flag-project.yaml --only table --size wode
says 'no such size' 'flag-project.yaml: ' '`--size wode`' 'did you mean `wide`?'
check 'a band higher up' 0 plan flag-project.yaml --only table --show bands,chart
says 'a band higher up' 'upper: Reeds, repeat 2' 'first row' 'Bunting, upper: the band as knitted'
for change in 's/on: .*/on: [frnot]/:no piece called `frnot`' \
    's/above fold: .*/above fold: 22 cm/:reach above the top' \
    's/above fold: .*/below underarm: 1 cm\n    above fold: 1 cm/:keep one of them' \
    's/^    above fold: .*//:where this band lies is missing'; do
    sed "${change%:*}" flag-project.yaml >flawed.yaml
    check "a band that cannot be: ${change##*:}" 2 plan flawed.yaml --only table
    says "a band that cannot be: ${change##*:}" 'flawed.yaml:' "${change##*:}"
done

check 'all lists' 0 list
says 'all lists' 'machines:' 'garments:' 'sizes:' 'motifs:' '  tulip' '  standard'
check 'one list' 0 list machines
says 'one list' '  hand'
check 'no such list' 2 list motiffs
says 'no such list' 'did you mean `motifs`?'
check 'the keys' 0 keys
says 'the keys' 'In the project:' '  machine: words (needed)' '  depth: length, 0.5 to 100 cm'

# ---- From a new project to its documents ----
check 'a new project' 0 new first
says 'a new project says what comes next' 'Written: first.yaml' 'hemwright plan first.yaml'
check 'the new project is worked out' 0 plan first.yaml
says 'tables are printed and files named' 'first: sizes and stitches' 'Written: first.xlsx' \
    'Written: first.csv' 'Written: first.json'
mkdir again
cp first.yaml again/first.yaml
check 'a second run' 0 plan again/first.yaml --into again
for kind in xlsx csv json; do
    same "two runs give the same $kind" "first.$kind" "again/first.$kind"
done
check 'a new project with its ending' 0 new second.yaml
what='a new project with its ending has it once'
[ -f second.yaml ] && good || bad
check 'a name with blanks' 0 new 'Änne und Ö'
says 'a name with blanks is quoted' "hemwright plan 'Änne und Ö.yaml'"
check 'a name with blanks is worked out' 0 plan 'Änne und Ö.yaml' --into 'my ßheets'
says 'a name with blanks is worked out' 'Änne und Ö: sizes' 'Written: my ßheets/Änne und Ö.xlsx'
for name in a/b .hidden ' ' '' "$(printf 'a\001b')" "$(printf 'a\351')" -x; do
    check "no file's name: $name" 2 new "$name"
    says "no file's name: $name" 'a plain name such as meadow-dress'
done
check 'a quotation mark in a name' 0 new 'the "best" hem'
check 'a quotation mark in a name is worked out' 0 plan 'the "best" hem.yaml' --only table
check 'a new project in a folder' 0 new third --into fresh
what='a new project in a folder'
[ -f fresh/third.yaml ] && good || bad
check 'demonstration in centimetres' 0 plan "$top/data/demo/meadow-dress.yaml" --into demo
check 'demonstration in inches' 0 plan "$top/data/demo/harbour-purse.yaml" --into demo
says 'demonstration in inches' ', in '
# A blanket's edges are sewn to nothing: the message stands at the choice's own line.
sed -e 's/^garment: .*/garment: blanket-edge/' -e 's/^    depth: /    length: /' \
    "$top/data/demo/harbour-purse.yaml" >round.yaml
line=$(grep -n 'in rounds' round.yaml | cut -d: -f1)
check 'rounds that nothing closes' 2 plan round.yaml --only table
says 'rounds that nothing closes' "round.yaml:$line: no pieces of this garment close to a round" \
    'take `in rounds` out'
sed 's/^units: cm/units: both/' "$starter" >both.yaml
check 'both units' 0 plan both.yaml --only table
says 'both units' ', cm' ', in'
check 'one table' 0 plan first.yaml --only table --show chart
says 'one table' 'first'
what='one table, and no other'
grep -q 'the folded hem' out && bad || good
check 'all tables' 0 plan first.yaml --only table --show all
check 'one document' 0 plan first.yaml --only csv --into one
what='one document, and no other, and nothing but its name printed'
[ "$(ls one)" = first.csv ] && [ "$(cat out)" = 'Written: one/first.csv' ] && good || bad
check 'no document needs no folder' 0 plan first.yaml --only table --into none
what='no document needs no folder'
[ -e none ] && bad || good

# ---- Other gaps, ease and motifs ----
check 'alternatives' 0 compare first.yaml --ease 1cm --most 3 --motifs "$top/data/motifs"
check 'alternatives to a project that is not there' 3 compare nothing.yaml
check 'alternatives with a word for ease' 2 compare first.yaml --ease much
says 'alternatives with a word for ease' '`--ease much`: give a length'
check 'no alternatives wanted' 2 compare first.yaml --most 0
says 'no alternatives wanted' '`--most 0`: give a whole number'
check 'alternatives from a folder that is not there' 3 compare first.yaml --motifs no/such
says 'alternatives from a folder that is not there' 'hemwright: no/such: '

# ---- Data files of one's own, beside the project ----
mkdir own own/parts
cp "$top/data/garments/flared-dress.yaml" own/dress.yaml
cp "$top/data/machines/standard.yaml" own/parts/machine.yaml
cp "$top/data/sizes/children.yaml" own/table.yaml
cp "$top/data/motifs/tulip.yaml" own/parts/flower.yaml
sed -e 's|^machine: .*|machine: parts/machine.yaml|' -e 's|^garment: .*|garment: dress.yaml|' \
    -e 's|  table: children|  table: ./table.yaml|' -e 's/^motif:/motif:\n  use: parts\/flower.yaml/' \
    -e '/^  chart:/d' -e '/^    [.o]*$/d' "$starter" >own/own.yaml
check 'machine, garment, table and motif of my own' 0 plan own/own.yaml --only table
check 'the same from within the folder' 0 plan ./own/own.yaml --only table
sed 's|parts/flower.yaml|parts/hook.pbm|' own/own.yaml >own/pictured.yaml
cp hook.pbm own/parts/hook.pbm
check 'a bitmap in a project' 0 plan own/pictured.yaml --only table --show chart
says 'a bitmap in a project' 'hook'
printf 'P4 3 2 ' >own/parts/hook.pbm
check 'a bad bitmap in a project' 2 plan own/pictured.yaml
says 'a bad bitmap in a project' 'hook.pbm: from byte 8'
check 'a motif file of my own' 0 motif ./own/parts/flower.yaml
says 'a motif file of my own' 'Tulip'
sed '/^  oo/,$s/  \.\.ooo\.\./  ..oXo../' own/parts/flower.yaml >own/parts/blot.yaml
sed 's/flower/blot/' own/own.yaml >own/blot-use.yaml
check 'a fault in a data file of my own' 2 plan own/blot-use.yaml
says 'a fault in a data file names that file' 'own/parts/blot.yaml:15:6: row 10 of the chart: `X`'
sed 's/flower/flwer/' own/own.yaml >own/lost.yaml
check 'a data file of my own that is not there' 3 plan own/lost.yaml
says 'a data file of my own that is not there' 'own/lost.yaml:' \
    'there is no file `parts/flwer.yaml` beside the project'

# ---- Mistakes in a project ----
edited 's/^hem:/hemm:/' 'an unknown key' 2 40:1: 'did you mean `hem`?'
edited 's/^  depth:/  zzzzz:/' 'a key like no other' 2 41:3: '`hemwright keys` lists'
edited 's/^units: cm/title: x/' 'a key twice' 2 6:1: 'the first is in line 5: keep one'
edited '/^machine:/d' 'a key that is missing' 2 5:1: '`machine` is missing in the project'
edited '/^  depth:/d' 'no depth and no rows' 2 41:3: 'write `depth`'
edited 's/^title: .*/title: [a, b]/' 'a list where words belong' 2 5:8: 'a list stands here'
edited 's/^title: .*/title: {a: b}/' 'a group where words belong' 2 5:8: 'a group stands here'
edited 's/^hem:/hem: 5\nease:/' 'a value where a group belongs' 2 40:6: 'lines below it, indented'
edited 's/names: .*/names: [2 years, [3]]/' 'a list in a list' 2 47:20: 'write one value'
for number in nan NaN .nan inf .inf -.inf 0 -28 1e9 10000000000 twenty; do
    edited "s/stitches: 28\$/stitches: $number/" "stitches: $number" 2 20:15: \
        "\`stitches\`: \`$number\` does not fit here; write a number, 1 to 2000"
done
edited 's/stitches: 28$/stitches: 28,5/' 'a decimal comma' 2 20:15: 'with a point'
edited 's/depth: 4 cm/depth: 4,5 cm/' 'a decimal comma in a length' 2 41:10: 'with a point'
edited 's/depth: 4 cm/depth: 1e9 cm/' 'an absurd length' 2 41:10: 'write a length, 0.5 to 100 cm'
edited 's/depth: 4 cm/depth: 10000000000/' 'an absurd depth' 2 41:10: '0.5 to 100 cm'
edited 's/depth: 4 cm/depth: -4 cm/' 'a negative length' 2 41:10: '0.5 to 100 cm'
edited 's/depth: 4 cm/depth: 4 ft/' 'an unknown unit' 2 41:10: 'use cm, mm, in, m or yd'
edited 's/gap: 1 /gap: 199 /' 'a gap too wide' 2 38:8: 'write a smaller gap'
edited 's/    oo\.oo/    oo.o/' 'a ragged chart' 2 34:9: 'row 3 of the chart has 4 columns'
edited 's/    oo\.oo/    ooXoo/' 'another letter in a chart' 2 34:7: '`X` stands here'
edited 's/    oo\.oo/    oo.oo /' 'a blank behind a row' 2 34:10: 'a blank stands here'
edited 's/    oo\.oo//' 'an empty line in a chart' 2 34:5: 'is an empty line'
edited '/^    [o.]*$/d' 'an empty chart' 2 31:10: 'the chart is empty'
edited '/^    [o.]*$/s/o/./g' 'a chart without contrast' 2 32:5: 'no contrast stitch'
edited 's/chart: |/chart: >/' 'a folded chart' 2 31:10: 'write `chart: |`'
edited 's/names: .*/names: [2 years, 2 years]/' 'a size twice' 2 47:20: 'rename one'
edited 's/names: .*/names: []/' 'no sizes' 2 47:10: 'is an empty list'
edited 's/^title: .*/title: #12345/' 'a colour for a title' 2 5:7: 'a # begins a remark'
edited 's/^  main:/\tmain:/' 'a tab to indent' 2 18:1: 'indent with blanks'
edited 's/^title: .*/title: \&a x/' 'an anchor' 2 5:8: 'must not begin with &'
edited 's/^title: .*/title: *a/' 'an alias' 2 5:8: 'must not begin with *'
edited 's/^title: .*/title: !!str x/' 'a tag' 2 5:8: 'put it between quotes'
# shellcheck disable=SC2016
edited '$a ---\na: b' 'a second document' 2 52:1: 'take the `---` out'
edited 's/^title: .*/title: "abc/' 'an open quotation mark' 2 52:1: 'began in line 5'
edited 's/^title: .*/title: a: b/' 'a second colon' 2 5:9: 'between quotes'
edited 's/names: .*/names: [2 years/' 'an open bracket' 2 '48:[0-9]*:' 'is not closed'
edited 's/^title: .*/title: "a\\0b"/' 'a hidden sign from a backslash' 2 5:8: 'backslash'
edited 's/^machine: .*/machine: standrad/' 'a misspelt machine' 2 7:10: 'did you mean `standard`?'
edited 's/^garment: .*/garment: flared-drss/' 'a misspelt garment' 2 8:10: '`flared-dress`?'
edited 's/table: children/table: childern/' 'a misspelt table' 2 48:10: '`children`?'
edited 's/chart: |/use: tullip/;/^    [o.]*$/d' 'a misspelt motif' 2 31:8: '`tulip`?'
edited 's/^machine: .*/machine: my own/' 'a machine like no other' 2 7:10: '`hemwright list machines`'
edited 's/^choices:/ease:\n  hem: 500 %\nchoices:/' 'too much ease' 2 51:8: 'to 200 %'

# Signs that are no text; printf writes them in octal.
{ cat "$starter"; printf '# \351\n'; } >bad.yaml
refused 'not UTF-8' 2 52:3: 'plain text in UTF-8'
{ cat "$starter"; printf '# \000\n'; } >bad.yaml
refused 'a NUL' 2 52:3: 'plain text in UTF-8'
printf '\377\376t\000i\000' >bad.yaml
refused 'UTF-16' 2 1:1: 'plain text in UTF-8'
: >bad.yaml
refused 'an empty file' 2 1:1: '`hemwright new`'
printf '# nothing but a remark\n' >bad.yaml
refused 'a file of remarks' 2 1:1: '`hemwright new`'
awk 'BEGIN { for (i = 0; i < 450000; i++) print "[" }' >bad.yaml
refused 'brackets in brackets' 2 9:1: 'deeper'
awk 'BEGIN { for (i = 0; i < 900000; i++) printf "[" }' >bad.yaml
refused 'brackets in one line' 2 1:2002: 'this line is too long'
awk 'BEGIN { print "a: &a [x, x, x, x, x, x, x, x, x]"
    for (i = 98; i < 106; i++) printf "%c: &%c [*%c, *%c, *%c]\n", i, i, i - 1, i - 1, i - 1 }' >bad.yaml
refused 'names for names for names' 2 1:4: 'leave them out'
awk '/^  names:/ { print "  names:"; for (i = 0; i < 10000; i++) print "    - size " i; next }
    { print }' "$starter" >bad.yaml
refused '10000 sizes' 2 48:5: '10000 sizes are more'
awk 'BEGIN { for (i = 0; i < 50000; i++) print "# forty letters of remark, fifty thousand" }' \
    >bad.yaml
refused 'a file of two million bytes' 2 '' 'too large'

# What an editor may do to a file changes nothing.
"$program" plan "$starter" --only table >plain.txt
awk '{ printf "%s\r\n", $0 }' "$starter" >crlf.yaml
check 'lines that end with CR LF' 0 plan crlf.yaml --only table
same 'lines that end with CR LF' plain.txt out
{ printf '\357\273\277'; cat "$starter"; } >marked.yaml
check 'a mark of the encoding' 0 plan marked.yaml --only table
same 'a mark of the encoding' plain.txt out
{ printf -- '---\n'; cat "$starter"; printf '...\n'; } >framed.yaml
check 'one document between marks' 0 plan framed.yaml --only table
same 'one document between marks' plain.txt out

# ---- What cannot be knitted ----
sed 's/^choices:/ease:\n  hem: 200 %\nchoices:/' "$starter" >wide.yaml
check 'wider than the bed' 1 plan wide.yaml
says 'wider than the bed' 'the bed has 200 needles' 'knit it in two widths' 'wide.yaml'
sed 's/^  tolerance: .*/  tolerance: 1 mm\n  within tolerance: yes/' "$starter" >strict.yaml
check 'within a tolerance that cannot be kept' 1 plan strict.yaml
says 'within a tolerance that cannot be kept' 'make the tolerance larger'
sed 's/^  tolerance: .*/  tolerance: 1 mm/' "$starter" >loose.yaml
check 'outside the tolerance, without the rule' 0 plan loose.yaml --only table
says 'outside the tolerance, without the rule' 'warning' 'tolerance'
# Floats of 5 stitches in a hem: of a child of 6 months, and no longer of one of 4 years.
for size in '6 months' '4 years'; do
    check "a drawing, size $size" 0 \
        draw "$top/data/demo/meadow-dress.yaml" --into "alone" --replace --size "$size"
    case $size in
    6*) wanted=2 ;;
    *) wanted=0 ;;
    esac
    what="cautions on a drawing, size $size"
    if [ "$(grep -o '>In [0-9a-z ]*: ' alone/meadow-dress-pieces.svg | wc -l)" -eq $wanted ]; then
        good
    else
        bad
    fi
done

# The slit's button: to a child of 2 years, and no longer to one of 4.
for size in '2 years' '4 years'; do
    check "a garment drawn in $size" 0 \
        garment flared-dress --size "$size" --save slit.svg --replace
    what="the caution on a garment drawn in $size"
    case $size in
    2*) wanted=1 ;;
    *) wanted=0 ;;
    esac
    if [ "$(grep -c '>In 2 years: a button' slit.svg)" -eq $wanted ] &&
        [ "$(grep -c 'can be swallowed' slit.svg)" -eq $wanted ]; then
        good
    else
        bad
    fi
done

cat >wide.yaml <<'END'
title: Wide purse
machine: standard
garment: pouch
gauge:
  main: { stitches: 28, rows: 40 }
  band: { stitches: 28, rows: 38 }
motif: { use: tulip, gap: 1, card start: 5 }
hem: { depth: 4 cm }
sizes: { names: [small, large], finished: { width: [20, 70.5], depth: [15, 18] } }
choices: { edge stitches: 0 }
END
check 'a piece that has no place for its card' 2 plan wide.yaml
says 'a piece that has no place for its card' \
    'wide.yaml: size large: `front`: a piece of 199 stitches cannot stand on 200 needles'

what='a plan that fails leaves no file'
ls wide.xlsx wide.csv strict.json >/dev/null 2>&1 && bad || good

# ---- Files that are there, or are not ----
check 'no such project' 3 plan nothing.yaml
says 'no such project' 'hemwright: nothing.yaml: ' 'no such file'
check 'a folder for a project' 3 plan own
says 'a folder for a project' 'hemwright: own: ' 'folder'
for kind in xlsx csv json; do
    cp "first.$kind" "kept.$kind"
done
check 'files that are there already' 3 plan first.yaml
says 'files that are there already' 'first.xlsx: ' '--replace' 'into another folder'
printf 'filled in by a test knitter\n' >first.json
check 'the last file is there already' 3 plan first.yaml --only json,table
same 'the file that was there stays' first.xlsx kept.xlsx
what='the file that was there stays, filled in'
[ "$(cat first.json)" = 'filled in by a test knitter' ] && good || bad
check 'written over when asked' 0 plan first.yaml --replace
same 'written over when asked' first.json kept.json
check 'a project that is there already' 3 new first
says 'a project that is there already' 'first.yaml: ' '--replace'
printf 'title: mine\n' >mine.yaml
check 'a project written over when asked' 0 new mine --replace
cp "$starter" odd.csv
check 'the project itself is never written over' 3 plan odd.csv --only csv --replace
says 'the project itself is never written over' 'this is the project itself'
same 'the project itself stays' odd.csv "$starter"
check 'a folder in a folder that is missing' 3 plan first.yaml --into no/such
says 'a folder in a folder that is missing' 'hemwright: no/such: '
check 'a file for a folder' 3 plan first.yaml --into kept.csv
says 'a file for a folder' 'kept.csv/first.xlsx: '
mkdir hole
mkdir hole/first.csv
check 'a folder in a file'"'"'s place' 3 plan first.yaml --into hole --only csv --replace
says 'a folder in a file'"'"'s place' 'hole/first.csv: '

# ---- Disks ----
if [ -w /dev/full ]; then
    what='a full disk behind standard output'
    code=0
    "$program" keys >/dev/full 2>err || code=$?
    : >out
    [ "$code" -eq 3 ] && grep -q '^hemwright: ' err && good || bad "ended with $code, not 3"
    code=0
    "$program" plan first.yaml --only table >/dev/full 2>err || code=$?
    [ "$code" -eq 3 ] && good || bad "ended with $code, not 3"
fi
what='standard output is closed'
code=0
"$program" keys >&- 2>err || code=$?
[ "$code" -eq 3 ] && good || bad "ended with $code, not 3"
# A limit on the size of files stands for a full disk: one block of 512 bytes or of a thousand.
for kind in xlsx csv json; do
    what="a $kind larger than the disk"
    code=0
    (trap '' XFSZ; ulimit -f 1; exec "$program" plan first.yaml --replace --only "$kind") \
        >out 2>err || code=$?
    [ "$code" -eq 3 ] && grep -q "^hemwright: first.$kind: " err && good ||
        bad "ended with $code, not 3"
    same "a $kind larger than the disk: the old file stays" "first.$kind" "kept.$kind"
    what="a $kind larger than the disk: nothing is left over"
    set -- "first.$kind".*
    [ "$1" = "first.$kind.*" ] && good || bad "$*"
done

# The last of three files does not fit: the first two are as they were, or not there at all. The
# limit lies between the sizes of the second and the third.
blocks=$(($(wc -c <first.json) / 2048))
[ "$(wc -c <first.csv)" -lt $((blocks * 512)) ] && [ "$(wc -c <first.xlsx)" -lt $((blocks * 512)) ] ||
    blocks=1
sed 's/^title: .*/title: Changed/' first.yaml >first.changed
cp first.yaml first.keep
cp first.changed first.yaml
for into in . unmade; do
    what="the third of three files is larger than the disk, into $into"
    code=0
    (trap '' XFSZ; ulimit -f "$blocks"; exec "$program" plan first.yaml --replace --into "$into") \
        >out 2>err || code=$?
    [ "$code" -eq 3 ] && grep -q '^hemwright: .*first.json: ' err && good ||
        bad "ended with $code, not 3"
    for kind in xlsx csv json; do
        same "$what: the old $kind stays" "first.$kind" "kept.$kind"
    done
    set -- first.*.*
    [ "$1" = 'first.*.*' ] && [ ! -e unmade ] && good || bad "$*"
done
mv first.keep first.yaml

# As somebody who may not do all: tests may run as root, to whom nothing is forbidden.
run_as_other=
if [ "$(id -u)" -ne 0 ]; then
    run_as_other=env
elif command -v setpriv >/dev/null && id nobody >/dev/null 2>&1; then
    run_as_other="setpriv --reuid nobody --clear-groups --regid $(id -g nobody)"
fi
cp first.yaml secret.yaml
mkdir shut
chmod 755 "$work"
chmod 555 shut
chmod 000 secret.yaml
chmod 644 first.yaml
if [ -n "$run_as_other" ] && $run_as_other "$program" plan first.yaml --only table >/dev/null 2>&1; then
    what='a project that may not be read'
    code=0
    $run_as_other "$program" plan secret.yaml >out 2>err || code=$?
    [ "$code" -eq 3 ] && grep -q 'secret.yaml: .*may not' err && good || bad "ended with $code"
    what='a folder that may not be written to'
    code=0
    $run_as_other "$program" plan first.yaml --into shut >out 2>err || code=$?
    [ "$code" -eq 3 ] && grep -q 'shut/first.xlsx: .*may not' err && good || bad "ended with $code"
else
    echo 'not checked: files that may not be read or written (no user to try it with)'
fi

# ---- Faults in a garment of my own ----
cat >strip.yaml <<'GARMENT'
title: Strip
finished:
  width:
    is: 30 cm
pieces:
  back:
    band width: width
    outline:
      right:
        - { across: 0.5 x width, up: 20 cm }
        - { curve: natural, across: 0.5 x width, up: 20.00000001 cm }
        - { curve: natural, across: 0.4 x width, up: 40 cm }
  strip:
    band width: 0.5 x width
GARMENT
cat >stripes.yaml <<'PROJECT'
title: Stripes
machine: standard
garment: strip.yaml
gauge: { main: { stitches: 30, rows: 40 }, band: { stitches: 30, rows: 40 } }
motif: { use: sand }
hem: { depth: 4 cm, fold: none }
sizes: { names: [one] }
bands:
  stripe: { on: back, motif: { use: sand }, above fold: 10 cm }
PROJECT
sed 's/curve: natural, //' strip.yaml >straight.yaml
sed 's/garment: strip/garment: straight/' stripes.yaml >plain.yaml
check 'a band higher up beside a piece without an outline' 0 plan plain.yaml --only table
sed 's/natural, across: 0.5 x width, up: 20.00000001/natural, across: 0.5 x width, up: 15/' \
    strip.yaml >down.yaml
sed 's/garment: strip/garment: down/' stripes.yaml >falls.yaml
check 'an edge that turns down' 2 plan falls.yaml --only table
says 'an edge that turns down names the garment, not the project' 'down.yaml:11: `back`'
for word in chset lenght; do
    sed "s/names: \[one\]/names: [one], finished: { ${word}: [20] }/; s/garment: strip/garment: x/" \
        stripes.yaml >misspelt.yaml
    sed 's/^  width:/  length: { is: 9 cm }\n  chest: { is: 9 cm }\n  width:/' straight.yaml >x.yaml
    sed -i 's/garment: x/garment: x.yaml/; s/x.yaml.yaml/x.yaml/' misspelt.yaml
    check "a misspelt measurement: $word" 2 plan misspelt.yaml --only table
    says "a misspelt measurement gives the nearest: $word" "\`$word\` is used by nothing" 'did you mean'
done

# ---- The data folder ----
HEMWRIGHT_DATA=$work/nowhere
for words in 'plan first.yaml' list 'motif tulip' 'new fourth'; do
    # shellcheck disable=SC2086
    check "no data folder: $words" 3 $words
    says "no data folder: $words" 'set HEMWRIGHT_DATA'
done
check 'no data folder is needed for a file of my own' 0 motif own/parts/flower.yaml
HEMWRIGHT_DATA=$top/data

# ---- Other languages ----
if locale -a 2>/dev/null | grep -qix 'de_DE.utf-\{0,1\}8'; then
    LC_ALL=de_DE.UTF-8
    mkdir german
    check 'a German locale' 0 plan first.yaml --into german
    LC_ALL=C
    for kind in xlsx csv json; do
        same "a German locale gives the same $kind" "german/first.$kind" "kept.$kind"
    done
else
    echo 'not checked: a German locale (de_DE.UTF-8 is not installed)'
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
