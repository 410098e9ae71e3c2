/* Numbers: reading them strictly, rounding them by one named rule each, writing them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_NUM_H
#define HW_CORE_NUM_H

#include "core/buf.h"

/*
 * Read a number: `31`, `31.5`, `3/8`, `12 3/8`, with an optional sign.
 *
 * Given:     text      len bytes, UTF-8, without NUL
 * Returned:  out       the number, finite; untouched on failure
 *            used      bytes read, with no trailing blanks; may be NULL: then the whole text must
 *                      be the number
 * Result:    HW_OK; HW_ERR_SYNTAX; HW_ERR_RANGE (too large to hold)
 * Note:      a decimal comma, an exponent, hex, `nan` and `inf` are refused
 */
hw_status hw_num_parse(const char *text, size_t len, double *out, size_t *used) HW_MUST_USE;

/* A whole number at the start of text, [0, 1e9]; *used bytes. HW_OK or HW_ERR_SYNTAX. */
hw_status hw_num_parse_count(const char *text, size_t len, int *out, size_t *used) HW_MUST_USE;

/* Rounding. Given x with |x| below 1e9; a result within one billionth (relative) of a whole
 * number counts as that number, so that 38.999999999999 goes down to 39. */

/* To the nearest whole number, ties up (2.5 -> 3, -2.5 -> -2). */
int hw_num_nearest(double x);

/* To the nearest whole number, ties away from zero, for |x| up to 9e18. */
long long hw_num_nearest_long(double x);

/* Down to a whole number. */
int hw_num_down(double x);

/* Up to a whole number. */
int hw_num_up(double x);

/* To the nearest even number, ties up (3 -> 4). */
int hw_num_nearest_even(double x);

/* To the nearest multiple of step above 0, ties up. */
int hw_num_nearest_multiple(double x, int step);

/* a modulo n, always in [0, n), n above 0. */
int hw_num_mod(int a, int n);

/* Greatest common divisor of two counts, at least 1. */
int hw_num_gcd(int a, int b);

/*
 * x rounded to a number of decimals, ties away from zero as printf rounds what a double holds.
 *
 * Given:     x         |x| below 1e9
 *            decimals  0 to 6
 * Returned:  the rounded value: what a document shows, as a number
 */
double hw_num_round(double x, int decimals);

/*
 * Append a number with at most `decimals` decimals, trailing zeros left off; never "-0".
 *
 * Given:     buf       initialised
 *            x         finite, |x| below 1e9
 *            decimals  0 to 6
 */
void hw_num_show(hw_buf *buf, double x, int decimals);

#endif
