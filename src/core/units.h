/* Lengths: how knitters write them, with units and fractions, to and from plain centimetres.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_UNITS_H
#define HW_CORE_UNITS_H

#include "core/buf.h"

typedef enum { HW_UNIT_CM, HW_UNIT_MM, HW_UNIT_IN, HW_UNIT_M, HW_UNIT_YD, HW_UNIT_COUNT } hw_unit;

/* What the documents show. */
typedef enum { HW_SHOW_CM, HW_SHOW_IN, HW_SHOW_BOTH, HW_SHOW_COUNT } hw_show;

/* Centimetres in one unit: exact, [U1] in data/SOURCES.md. */
double hw_unit_cm(hw_unit unit);

/* The unit's sign: "cm", "mm", "in", "m", "yd". */
const char *hw_unit_name(hw_unit unit);

/*
 * Read a unit's sign or word: `cm`, `mm`, `in`, `inch`, `inches`, `"`, `m`, `yd`.
 *
 * Given:     text      len bytes
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_UNKNOWN
 */
hw_status hw_unit_parse(const char *text, size_t len, hw_unit *out) HW_MUST_USE;

/*
 * Read a length such as `31.5 cm`, `315 mm`, `12 3/8 in` or a bare number in the usual unit.
 *
 * Given:     text      len bytes
 *            usual     the unit of a bare number
 * Returned:  out_cm    the length in cm, any sign; untouched on failure
 * Result:    HW_OK; HW_ERR_SYNTAX; HW_ERR_UNKNOWN (the unit); HW_ERR_RANGE
 */
hw_status hw_length_parse(const char *text, size_t len, hw_unit usual, double *out_cm) HW_MUST_USE;

/*
 * Append a length as it is shown: `31.5 cm`, `12 3/8 in`, or `31.5 cm (12 3/8 in)`.
 *
 * Given:     buf       initialised
 *            cm        the length, cm, |cm| below 1e6
 *            show      cm to a tenth; inches to the nearest eighth
 */
void hw_length_show(hw_buf *buf, double cm, hw_show show);

/* The length that a gauge is shown for, "in 10 cm", or "in 4 in" where inches alone are; and the
 * factor from a gauge in 10 cm to that. */
const char *hw_show_per(hw_show show);
double hw_show_per_factor(hw_show show);

/* Inches to the nearest eighth, ties up: a number that eight divides. */
double hw_inches_round(double inches);

enum { HW_INCHES_ROOM = 24 }; /* bytes: any inches to the eighth, and a NUL */

/* Inches to the nearest eighth as a mixed number, "12 3/8"; room as above; |inches| below 1e8. */
void hw_inches_text(double inches, char *room);

/* Append inches in the same way, without a sign for the unit. */
void hw_inches_show(hw_buf *buf, double inches);

#endif
