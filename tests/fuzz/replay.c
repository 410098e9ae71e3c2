/* Runs a fuzz target over its corpus, one file after the other, where there is no fuzzer.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"

enum { PATH_ROOM = 4096, FILE_ROOM = 1 << 21 };

/* One file; false where it cannot be read. */
static int replay(const char *path)
{
    FILE *file = fopen(path, "rb");
    uint8_t *room = malloc(FILE_ROOM);
    size_t size = file != NULL && room != NULL ? fread(room, 1, FILE_ROOM, file) : 0;
    int good = file != NULL && room != NULL && !ferror(file) && size < FILE_ROOM;
    /* A block of just its size, so that a sanitizer sees a step beyond it. */
    uint8_t *data = good ? malloc(size > 0 ? size : 1) : NULL;
    if (data != NULL) {
        memcpy(data, room, size);
        (void)LLVMFuzzerTestOneInput(data, size); /* always 0 */
    }
    good = data != NULL;
    if (file != NULL) {
        (void)fclose(file); /* it was only read */
    }
    free(data);
    free(room);
    return good;
}

/* All files of a folder, or -1. */
static int replay_folder(const char *folder)
{
    int count = 0;
    DIR *dir = opendir(folder);
    if (dir == NULL) {
        printf("%s cannot be read\n", folder);
        return -1;
    }
    for (struct dirent *entry = readdir(dir); entry != NULL; entry = readdir(dir)) {
        char path[PATH_ROOM];
        if (entry->d_name[0] == '.') {
            continue;
        }
        int len = snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
        if (len < 0 || (size_t)len >= sizeof path || !replay(path)) {
            printf("%s cannot be read\n", path);
            count = -1;
            break;
        }
        count++;
    }
    (void)closedir(dir); /* it was only read */
    return count;
}

int main(int argc, char **argv)
{
    char folder[PATH_ROOM];
    const char *srcdir = getenv("srcdir");
    int len = snprintf(folder, sizeof folder, "%s/tests/fuzz/corpus/%s",
        srcdir != NULL ? srcdir : ".", hw_fuzz_corpus);
    if (len < 0 || (size_t)len >= sizeof folder) {
        return 1;
    }
    int count = replay_folder(argc > 1 ? argv[1] : folder);
    printf("%d inputs of %s ran\n", count, hw_fuzz_corpus);
    return count > 0 ? 0 : 1;
}
