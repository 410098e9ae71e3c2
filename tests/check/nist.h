/* The data sets under tests/nist: certified values, raw data, tables of Student's t.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CHECK_NIST_H
#define HW_CHECK_NIST_H

#include <stdbool.h>
#include <stdio.h>

enum { NIST_NUMBERS = 80 };

/* A row of a file: its words and its numbers, each in their order. */
typedef struct {
    char words[2][24];
    double numbers[NIST_NUMBERS];
    int count; /* of numbers */
} nist_row;

/* Room for a set. */
typedef struct {
    double *x, *y; /* [size] */
    int size;
} nist_room;

/* A file of $srcdir/tests/nist, which must be there; the caller closes it. */
FILE *nist_open(const char *name);

/* The next row that is no remark; false at the end. */
bool nist_next(FILE *file, nist_row *out);

/* The certified value of a quantity, which must be there: nist_certified("Norris", "B1"). */
double nist_certified(const char *set, const char *quantity);

/*
 * Read one set of a file with many.
 *
 * Given:     room      filled
 *            width     2: y and x by turns; 1: y alone, x is 1
 * Returned:  the number of points, which is the certified one
 */
int nist_set(const nist_room *room, const char *name, const char *set, int width);

#endif
