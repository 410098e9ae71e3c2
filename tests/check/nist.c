/* Reading the data sets under tests/nist.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "nist.h"

#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { LINE_BYTES = 400 };

FILE *nist_open(const char *name)
{
    const char *top = getenv("srcdir");
    char path[1024];
    int len = snprintf(path, sizeof path, "%s/tests/nist/%s", top != NULL ? top : ".", name);
    ck_assert(len > 0 && (size_t)len < sizeof path);
    FILE *file = fopen(path, "r");
    ck_assert_msg(file != NULL, "%s cannot be opened", path);
    return file;
}

static void read_fields(char *text, nist_row *out)
{
    int words = 0;
    for (char *field = text; field != NULL;) {
        char *comma = strchr(field, ',');
        char *end = NULL;
        double number = strtod(field, &end);
        if (end != field && *end == (comma != NULL ? ',' : '\0')) {
            ck_assert_int_lt(out->count, NIST_NUMBERS);
            out->numbers[out->count++] = number;
        } else {
            size_t len = comma != NULL ? (size_t)(comma - field) : strlen(field);
            ck_assert(words < 2 && len < sizeof out->words[0]);
            memcpy(out->words[words], field, len);
            out->words[words++][len] = '\0';
        }
        field = comma != NULL ? comma + 1 : NULL;
    }
}

bool nist_next(FILE *file, nist_row *out)
{
    char text[LINE_BYTES];
    *out = (nist_row){ .count = 0 };
    while (fgets(text, sizeof text, file) != NULL) {
        size_t len = strcspn(text, "\n");
        ck_assert_int_eq(text[len], '\n');
        text[len] = '\0';
        if (text[0] != '#') {
            read_fields(text, out);
            return true;
        }
    }
    return false;
}

double nist_certified(const char *set, const char *quantity)
{
    FILE *file = nist_open("certified.csv");
    nist_row found;
    double value = NAN;
    while (nist_next(file, &found)) {
        if (strcmp(found.words[0], set) == 0 && strcmp(found.words[1], quantity) == 0) {
            ck_assert_int_eq(found.count, 1);
            value = found.numbers[0];
        }
    }
    ck_assert_int_eq(fclose(file), 0);
    ck_assert_msg(isfinite(value), "%s has no certified %s", set, quantity);
    return value;
}

int nist_set(const nist_room *room, const char *name, const char *set, int width)
{
    FILE *file = nist_open(name);
    int count = 0;
    for (nist_row found; nist_next(file, &found);) {
        if (strcmp(found.words[0], set) != 0) {
            continue;
        }
        for (int i = 0; i < found.count; i += width) {
            ck_assert_int_lt(count, room->size);
            room->y[count] = found.numbers[i];
            room->x[count++] = width > 1 ? found.numbers[i + 1] : 1;
        }
    }
    ck_assert_int_eq(fclose(file), 0);
    ck_assert_double_eq_tol(count, nist_certified(set, "n"), 1e-9);
    return count;
}
