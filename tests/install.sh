#!/bin/sh
# Installs into an empty place, runs the installed program on the installed demo, takes all away.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source: own choice of what an installation has to do.
set -eu
[ -x ./hemwright ] || { echo 'skipped: the program is not built'; exit 77; }
unset HEMWRIGHT_DATA MAKEFLAGS MFLAGS MAKELEVEL DESTDIR
make=${MAKE:-make}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

quietly()
{
    "$@" >"$work/words" 2>&1 || { cat "$work/words"; echo "failed: $*"; exit 1; }
}

quietly "$make" install DESTDIR="$work/root"
program=$(find "$work/root" -type f -name hemwright -perm -u+x)
demo=$(find "$work/root" -type f -path '*/hemwright/demo/meadow-dress.yaml')
[ -n "$program" ] || { echo 'no program was installed'; exit 1; }
[ -n "$demo" ] || { echo 'no demonstration project was installed'; exit 1; }
for kind in sizes motifs machines garments; do
    [ "$(find "$work/root" -path "*/hemwright/$kind/*.yaml" | wc -l)" -gt 0 ] ||
        { echo "no $kind were installed"; exit 1; }
done

mkdir "$work/place"
cd "$work/place"
quietly "$program" --version
quietly "$program" plan "$demo" --into "$work/place/out"
written=$(find "$work/place/out" -type f -size +0 | wc -l)
[ "$written" -gt 0 ] || { echo 'the installed program wrote nothing'; exit 1; }
cd "$OLDPWD"

quietly "$make" uninstall DESTDIR="$work/root"
find "$work/root" ! -type d >"$work/left"
find "$work/root" -type d -path '*/share/hemwright' >>"$work/left"
if [ -s "$work/left" ]; then
    echo 'left behind by make uninstall:'
    cat "$work/left"
    exit 1
fi
echo "installed, ran ($written files written), uninstalled: nothing left behind"
