#!/bin/sh
# The pure library asks nothing of the world: no file, clock, environment, print or exit.
# SPDX-License-Identifier: GPL-3.0-or-later
# Source of the rule: this project's own choice; `nm -u` lists what an archive needs from outside.
set -eu
library=${CORE:-libhemwright.a}
nm=${NM:-nm}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

[ -f "$library" ] || { echo "there is no $library"; exit 1; }

# Each line: object, needed name. nm -A prints "archive:object:  U name".
"$nm" -A -u "$library" 2>/dev/null |
    sed -n 's/^[^:]*:\([^:]*\):.* [Uw] \([A-Za-z0-9_]*\).*/\1 \2/p' |
    sed 's/@.*//' | sort -u >"$work/needed"
"$nm" -A "$library" 2>/dev/null | grep -c ' T ' >"$work/given" || true
if [ ! -s "$work/needed" ] || [ "$(cat "$work/given")" -eq 0 ]; then
    echo "$library lists no symbols"
    exit 1
fi

# forbidden OBJECTS NAMES: no object but those whose name ends so may need one of the names, with
# or without the checking form that the C library puts in its place (__printf_chk).
forbidden()
{
    awk -v allowed="$1" -v names="$2" '
        BEGIN { count = split(names, list, " "); for (i = 1; i <= count; i++) bad[list[i]] = 1 }
        {
            plain = $2
            if (plain ~ /^__.*_chk$/) { sub(/^__/, "", plain); sub(/_chk$/, "", plain) }
            sub(/^__isoc99_/, "", plain)
            if ((plain in bad) && !(allowed != "" && $1 ~ ("(^|-)(" allowed ")[.]o$")))
                print $1 " needs " $2
        }' "$work/needed"
}
{
    forbidden '' 'fopen fdopen freopen fclose fread fwrite fgets fgetc getc getchar fseek ftell
        fflush open openat creat close read write stat lstat fstat unlink rename remove mkstemp
        tmpfile tmpnam opendir readdir mmap'
    forbidden '' 'printf fprintf vprintf vfprintf dprintf vdprintf sprintf vsprintf puts fputs
        putchar fputc putc perror stdin stdout stderr scanf sscanf fscanf'
    forbidden '' 'exit _exit _Exit quick_exit atexit abort raise signal sigaction kill system
        popen fork execve longjmp siglongjmp'
    forbidden '' 'getenv secure_getenv setenv putenv environ setlocale newlocale uselocale
        localeconv nl_langinfo'
    forbidden '' 'time clock clock_gettime gettimeofday localtime gmtime localtime_r gmtime_r mktime
        strftime ctime asctime sleep nanosleep'
    forbidden '' 'rand srand random srandom rand_r drand48 getrandom arc4random'
    forbidden '' 'strcpy strcat strtok gets atoi atol atof alloca'
    forbidden mem 'malloc calloc realloc free aligned_alloc posix_memalign strdup strndup'
    forbidden 'buf|num' 'snprintf vsnprintf'
} >"$work/found"

# Nothing that a run could leave behind for the next: no data that can be written. Instruments
# keep their own counters there, so instrumented archives are passed over.
if ! grep -q ' __\(asan\|gcov\|sanitizer\|sancov\)' "$work/needed" &&
    command -v objdump >/dev/null 2>&1; then
    objdump -t "$library" |
        awk '/^[^ ]+: +file format/ { object = $1 }
            / O (\.data|\.bss|\.tdata|\.tbss|\.data\.rel|\.data\.rel\.local|\*COM\*)[ \t]/ {
                print object " keeps a value that can change: " $NF }' >>"$work/found"
fi

if [ -s "$work/found" ]; then
    cat "$work/found"
    exit 1
fi
echo "$(wc -l <"$work/needed") needs of $(cut -d ' ' -f 1 "$work/needed" | sort -u | wc -l)" \
    "objects looked at: none reaches the outside world"
