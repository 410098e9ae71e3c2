# Steps that prepare and build a checkout, shared by tests/run and data/demo/run; sourced, not run.
# SPDX-License-Identifier: GPL-3.0-or-later
# Needs: top, the checkout's directory, absolute.
# shellcheck shell=sh disable=SC2154

# shellcheck disable=SC2034 # used by those that source this
build_packages='gcc libc6-dev make autoconf automake pkg-config libgsl-dev libxlsxwriter-dev
    libyaml-dev libexpat1-dev libjansson-dev libminizip-dev zlib1g-dev'
step_name='finding out where things are'

# Say which step begins; a failure is told with its name.
step()
{
    step_name=$*
    printf '\n== %s\n' "$*"
}

# What is to be said at the end, whichever end it is; a script may put its own in place of it.
last_words()
{
    :
}

# Runs on any exit that is not by step_done.
step_failed()
{
    code=$?
    trap - EXIT
    printf '\nThis step failed: %s\n' "$step_name"
    last_words
    [ "$code" -ne 0 ] || code=1
    exit "$code"
}
trap step_failed EXIT
trap 'exit 130' INT TERM

step_done()
{
    trap - EXIT
    last_words
    exit 0
}

# As root, by sudo where needed.
as_root()
{
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null 2>&1; then
        sudo "$@"
    else
        echo "Installing packages needs root or sudo. As root, run: $*"
        return 1
    fi
}

missing_packages()
{
    for package; do
        state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) || state=none
        [ "$state" = installed ] || printf '%s ' "$package"
    done
}

# need PACKAGE...: install what is missing, and nothing else.
need()
{
    if ! command -v dpkg-query >/dev/null 2>&1; then
        echo "This is not Debian: please see to these yourself, under the names they have here:"
        echo "$*"
        return 0
    fi
    missing=$(missing_packages "$@")
    if [ -z "$missing" ]; then
        echo "All packages that are needed are installed."
        return 0
    fi
    echo "Installing: $missing"
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q update
    # shellcheck disable=SC2086 # a list of words
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y --no-install-recommends \
        install $missing
}

# True where configure, or what it writes the Makefile from, is older than its sources.
configure_is_old()
{
    for made in configure Makefile.in config.h.in build-aux/test-driver; do
        [ -e "$top/$made" ] || return 0
    done
    for made in configure Makefile.in; do
        for source in configure.ac Makefile.am; do
            [ -z "$(find "$top/$source" -newer "$top/$made")" ] || return 0
        done
    done
    return 1
}

# build_in FOLDER SWITCH...: configure (only where needed) and make, outside the source folders.
build_in()
{
    folder=$1
    shift
    if [ -e "$top/config.status" ]; then
        echo "This folder was configured itself. Run \`make distclean\` in it, then start again."
        return 1
    fi
    if configure_is_old; then
        echo "Making configure."
        (cd "$top" && autoreconf --install)
    fi
    mkdir -p "$folder"
    if [ ! -e "$folder/Makefile" ] || [ "$(cat "$folder/switches" 2>/dev/null)" != "$*" ] ||
        [ -n "$(find "$top/configure" -newer "$folder/config.status")" ]; then
        echo "Configuring in $folder."
        (cd "$folder" && "$top/configure" --quiet "$@")
        printf '%s' "$*" >"$folder/switches"
    fi
    echo "Building in $folder."
    make -C "$folder" --no-print-directory -s -j "$(nproc)"
}
