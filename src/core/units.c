/* Units of length: one table of exact factors.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "core/num.h"

static const struct {
    const char *name;
    double cm;
} units[] = {
    [HW_UNIT_CM] = { "cm", 1.0 },
    [HW_UNIT_MM] = { "mm", 0.1 },
    [HW_UNIT_IN] = { "in", HW_CM_PER_INCH },
    [HW_UNIT_M] = { "m", 100.0 },
    [HW_UNIT_YD] = { "yd", 36 * HW_CM_PER_INCH },
};
_Static_assert(sizeof units / sizeof units[0] == HW_UNIT_COUNT, "a row for each unit");

static const struct {
    const char *word;
    hw_unit unit;
} words[] = {
    { "cm", HW_UNIT_CM },
    { "mm", HW_UNIT_MM },
    { "in", HW_UNIT_IN },
    { "inch", HW_UNIT_IN },
    { "inches", HW_UNIT_IN },
    { "\"", HW_UNIT_IN },
    { "m", HW_UNIT_M },
    { "yd", HW_UNIT_YD },
};

double hw_unit_cm(hw_unit unit)
{
    assert(unit < HW_UNIT_COUNT);
    return units[unit].cm;
}

const char *hw_unit_name(hw_unit unit)
{
    assert(unit < HW_UNIT_COUNT);
    return units[unit].name;
}

hw_status hw_unit_parse(const char *text, size_t len, hw_unit *out)
{
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (strlen(words[i].word) == len && memcmp(words[i].word, text, len) == 0) {
            *out = words[i].unit;
            return HW_OK;
        }
    }
    return HW_ERR_UNKNOWN;
}

hw_status hw_length_parse(const char *text, size_t len, hw_unit usual, double *out_cm)
{
    double value = 0;
    size_t at = 0;
    hw_status status = hw_num_parse(text, len, &value, &at);
    if (status != HW_OK) {
        return status;
    }
    while (at < len && text[at] == ' ') {
        at++;
    }
    while (len > at && text[len - 1] == ' ') {
        len--;
    }
    hw_unit unit = usual;
    if (at < len) {
        status = hw_unit_parse(text + at, len - at, &unit);
    }
    if (status == HW_OK) {
        *out_cm = value * hw_unit_cm(unit);
    }
    return status;
}

const char *hw_show_per(hw_show show)
{
    return show == HW_SHOW_IN ? "in 4 in" : "in 10 cm";
}

double hw_show_per_factor(hw_show show)
{
    return show == HW_SHOW_IN ? 0.4 * HW_CM_PER_INCH : 1;
}

double hw_inches_round(double inches)
{
    return hw_num_nearest(inches * 8) / 8.0;
}

static void format(char *room, const char *how, ...) HW_FORMAT(2, 3);
static void format(char *room, const char *how, ...)
{
    va_list args;
    va_start(args, how);
    hw_buf_fixed(room, HW_INCHES_ROOM, how, args);
    va_end(args);
}

void hw_inches_text(double inches, char *room)
{
    int eighths = hw_num_nearest(inches * 8);
    const char *sign = eighths < 0 ? "-" : "";
    int whole = abs(eighths) / 8;
    int part = abs(eighths) % 8;
    int shared = part > 0 ? hw_num_gcd(part, 8) : 1;
    if (part == 0) {
        format(room, "%s%d", sign, whole);
    } else if (whole == 0) {
        format(room, "%s%d/%d", sign, part / shared, 8 / shared);
    } else {
        format(room, "%s%d %d/%d", sign, whole, part / shared, 8 / shared);
    }
}

void hw_inches_show(hw_buf *buf, double inches)
{
    char room[HW_INCHES_ROOM];
    hw_inches_text(inches, room);
    hw_buf_text(buf, room);
}

void hw_length_show(hw_buf *buf, double cm, hw_show show)
{
    if (show != HW_SHOW_IN) {
        hw_num_show(buf, cm, 1);
        hw_buf_text(buf, " cm");
    }
    if (show == HW_SHOW_BOTH) {
        hw_buf_text(buf, " (");
    }
    if (show != HW_SHOW_CM) {
        hw_inches_show(buf, cm / HW_CM_PER_INCH);
        hw_buf_text(buf, " in");
    }
    if (show == HW_SHOW_BOTH) {
        hw_buf_text(buf, ")");
    }
}
