/* Widths from gauges and gauges from widths: both are one division.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/tolerance.h"

hw_tolerance hw_tolerance_find(const hw_tolerance_task *task, const hw_gauge *gauge)
{
    const hw_gauge_side *side = &gauge->sides[HW_ACROSS];
    double low_cm = task->wanted_cm - task->tolerance_cm;
    double high_cm = task->wanted_cm + task->tolerance_cm;
    double sts = task->sts;
    hw_tolerance t = { .has_interval = side->has_interval, .bounded = low_cm > 0 };
    t.sts_per_10cm.low = 10 * sts / high_cm;
    t.fifty_cm.high = HW_TOLERANCE_STS * high_cm / sts;
    if (t.bounded) {
        t.sts_per_10cm.high = 10 * sts / low_cm;
        t.fifty_cm.low = HW_TOLERANCE_STS * low_cm / sts;
    }
    if (t.has_interval) {
        t.width_cm = (hw_interval){ 10 * sts / side->high, 10 * sts / side->low };
        t.always_inside = t.width_cm.low >= low_cm && t.width_cm.high <= high_cm;
    }
    return t;
}
