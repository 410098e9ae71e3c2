/* Tolerance: how sure a finished width is, and between which gauges it stays in bounds.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TOLERANCE_H
#define HW_CORE_TOLERANCE_H

#include "core/gauge.h"

enum { HW_TOLERANCE_STS = 50 }; /* stitches that a test knitter lays the rule along */

typedef struct {
    int sts;
    double wanted_cm, tolerance_cm; /* above 0 */
} hw_tolerance_task;

typedef struct {
    bool has_interval;
    hw_interval width_cm;     /* 95 % interval of the finished width, from the gauge's own */
    bool always_inside;       /* and all of it lies within the tolerance */
    hw_interval sts_per_10cm; /* gauges with which the width stays within the tolerance */
    hw_interval fifty_cm;     /* what HW_TOLERANCE_STS stitches then measure */
    bool bounded;             /* false: so narrow that any finer gauge will do; high is 0 */
} hw_tolerance;

/*
 * The window around one width of one piece.
 *
 * Given:     task      sts above 0
 *            gauge     of the fabric that is so wide
 * Returned:  windows and interval; lengths in cm, gauges in stitches per 10 cm
 * Note:      a width is sts over gauge, so the gauges between sts / (wanted + tolerance) and
 *            sts / (wanted - tolerance) keep it within
 */
hw_tolerance hw_tolerance_find(const hw_tolerance_task *task, const hw_gauge *gauge);

#endif
