/* A folder for a test's files.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "room.h"

#include <check.h>
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static char folder[ROOM_PATH];

void room_open(void)
{
    const char *base = getenv("TMPDIR");
    int len = snprintf(folder, sizeof folder, "%s/hemwright.XXXXXX", base != NULL ? base : "/tmp");
    ck_assert(len > 0 && (size_t)len < sizeof folder);
    ck_assert_ptr_nonnull(mkdtemp(folder));
}

void room_data(void)
{
    char data[ROOM_PATH];
    const char *srcdir = getenv("srcdir");
    int len = snprintf(data, sizeof data, "%s/data", srcdir != NULL ? srcdir : ".");
    ck_assert(len > 0 && (size_t)len < sizeof data);
    ck_assert_int_eq(setenv("HEMWRIGHT_DATA", data, 1), 0);
    room_open();
}

const char *room_path(const char *name, char *path)
{
    int len = snprintf(path, ROOM_PATH, "%s/%s", folder, name);
    ck_assert(len > 0 && len < ROOM_PATH);
    return path;
}

static int each(bool away)
{
    char path[ROOM_PATH];
    int count = 0;
    DIR *list = opendir(folder);
    ck_assert_ptr_nonnull(list);
    for (struct dirent *entry = readdir(list); entry != NULL; entry = readdir(list)) {
        if (strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0) {
            count++;
            if (away) {
                ck_assert_int_eq(remove(room_path(entry->d_name, path)), 0);
            }
        }
    }
    ck_assert_int_eq(closedir(list), 0);
    return count;
}

int room_count(void)
{
    return each(false);
}

void room_close(void)
{
    (void)each(true);
    ck_assert_int_eq(rmdir(folder), 0);
}

void room_put_bytes(const char *name, const char *bytes, size_t len)
{
    char path[ROOM_PATH];
    FILE *file = fopen(room_path(name, path), "wb");
    ck_assert_ptr_nonnull(file);
    ck_assert_uint_eq(fwrite(bytes, 1, len, file), len);
    ck_assert_int_eq(fclose(file), 0);
}

void room_put(const char *name, const char *text)
{
    room_put_bytes(name, text, strlen(text));
}

bool room_holds(const char *name, const char *text)
{
    char path[ROOM_PATH];
    char found[4096];
    FILE *file = fopen(room_path(name, path), "rb");
    ck_assert_ptr_nonnull(file);
    size_t len = fread(found, 1, sizeof found, file);
    ck_assert_int_eq(fclose(file), 0);
    return len == strlen(text) && memcmp(found, text, len) == 0;
}
