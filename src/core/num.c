/* All reading of numbers and all rounding in the project.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/num.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_DIGITS = 30, MAX_COUNT = 1000000000 };

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

static size_t digits(const char *text, size_t len, size_t at)
{
    size_t n = 0;
    while (at + n < len && digit(text[at + n])) {
        n++;
    }
    return n;
}

static size_t blanks(const char *text, size_t len, size_t at)
{
    size_t n = 0;
    while (at + n < len && text[at + n] == ' ') {
        n++;
    }
    return n;
}

/* Digits with at most one point, which needs a digit on both sides. */
static hw_status decimal(const char *text, size_t len, size_t *at, double *out)
{
    size_t n = digits(text, len, *at);
    if (n == 0) {
        return HW_ERR_SYNTAX;
    }
    if (*at + n + 1 < len && text[*at + n] == '.' && digit(text[*at + n + 1])) {
        n += 1 + digits(text, len, *at + n + 1);
    }
    if (n > MAX_DIGITS) {
        return HW_ERR_RANGE;
    }
    char room[MAX_DIGITS + 1] = { 0 };
    memcpy(room, text + *at, n);
    *out = strtod(room, NULL); /* shape checked above; the locale is always "C" */
    *at += n;
    return HW_OK;
}

/* `/8` after a whole number: divides it. */
static hw_status over(const char *text, size_t len, size_t *at, double *value)
{
    double below = 0;
    size_t after = *at + 1;
    size_t n = digits(text, len, after);
    if (n == 0 || n > 6) {
        return HW_ERR_SYNTAX;
    }
    hw_status status = decimal(text, len, &after, &below);
    if (status == HW_OK && !(below > 0)) {
        status = HW_ERR_SYNTAX;
    }
    if (status == HW_OK) {
        *value /= below;
        *at = after;
    }
    return status;
}

/* ` 3/8` after the whole part of a mixed number; anything else is left alone. */
static hw_status mixed(const char *text, size_t len, size_t *at, double *value)
{
    size_t start = *at + blanks(text, len, *at);
    size_t n = digits(text, len, start);
    if (start == *at || n == 0 || start + n >= len || text[start + n] != '/') {
        return HW_OK;
    }
    double part = 0;
    size_t after = start;
    hw_status status = decimal(text, len, &after, &part);
    if (status == HW_OK) {
        status = over(text, len, &after, &part);
    }
    if (status == HW_OK) {
        *value += part;
        *at = after;
    }
    return status;
}

hw_status hw_num_parse(const char *text, size_t len, double *out, size_t *used)
{
    size_t at = blanks(text, len, 0);
    double sign = 1;
    if (at < len && (text[at] == '-' || text[at] == '+')) {
        sign = text[at] == '-' ? -1 : 1;
        at++;
    }
    size_t start = at;
    double value = 0;
    hw_status status = decimal(text, len, &at, &value);
    bool whole = status == HW_OK && memchr(text + start, '.', at - start) == NULL;
    if (whole && at < len && text[at] == '/') {
        status = over(text, len, &at, &value);
    } else if (whole) {
        status = mixed(text, len, &at, &value);
    }
    if (status == HW_OK && used == NULL && at + blanks(text, len, at) != len) {
        status = HW_ERR_SYNTAX;
    }
    if (status == HW_OK && !(value < MAX_COUNT)) {
        status = HW_ERR_RANGE;
    }
    if (status != HW_OK) {
        return status;
    }
    *out = sign * value;
    if (used != NULL) {
        *used = at;
    }
    return HW_OK;
}

hw_status hw_num_parse_count(const char *text, size_t len, int *out, size_t *used)
{
    size_t n = digits(text, len, 0);
    if (n == 0 || n > 9) {
        return HW_ERR_SYNTAX;
    }
    int value = 0;
    for (size_t i = 0; i < n; i++) {
        value = value * 10 + (text[i] - '0');
    }
    *out = value;
    *used = n;
    return HW_OK;
}

/* x, or the whole number that it is meant to be. */
static double settled(double x)
{
    assert(fabs(x) < MAX_COUNT);
    double whole = nearbyint(x);
    return fabs(x - whole) <= 1e-9 * fmax(1.0, fabs(x)) ? whole : x;
}

int hw_num_nearest(double x)
{
    return (int)floor(settled(x + 0.5));
}

long long hw_num_nearest_long(double x)
{
    assert(fabs(x) <= 9e18);
    return llround(x);
}

int hw_num_down(double x)
{
    return (int)floor(settled(x));
}

int hw_num_up(double x)
{
    return (int)ceil(settled(x));
}

int hw_num_nearest_even(double x)
{
    return hw_num_nearest_multiple(x, 2);
}

int hw_num_nearest_multiple(double x, int step)
{
    assert(step > 0);
    return step * hw_num_nearest(x / step);
}

int hw_num_mod(int a, int n)
{
    assert(n > 0);
    return (a % n + n) % n;
}

int hw_num_gcd(int a, int b)
{
    while (b != 0) {
        int rest = a % b;
        a = b;
        b = rest;
    }
    return a == 0 ? 1 : abs(a);
}

double hw_num_round(double x, int decimals)
{
    assert(decimals >= 0 && decimals <= 6 && fabs(x) < MAX_COUNT);
    char room[32];
    /* A hair outward first, so that 2.675 shows as 2.68 whichever way the double leans. */
    double outward = x + copysign(fabs(x) * 1e-12, x);
    (void)snprintf(room, sizeof room, "%.*f", decimals, outward);
    double value = strtod(room, NULL);
    return value > 0 || value < 0 ? value : 0.0;
}

void hw_num_show(hw_buf *buf, double x, int decimals)
{
    char room[32];
    (void)snprintf(room, sizeof room, "%.*f", decimals, hw_num_round(x, decimals));
    size_t len = strlen(room);
    if (strchr(room, '.') != NULL) {
        while (room[len - 1] == '0') {
            len--;
        }
        len -= room[len - 1] == '.';
    }
    hw_buf_bytes(buf, room, len);
}
