/* What is said of pieces whose widths lie outside the tolerance.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_OUTSIDE_H
#define HW_CORE_OUTSIDE_H

#include "core/plan.h"

/*
 * Add a warning for each piece that is outside the tolerance in some size.
 *
 * Given:     plan      all results are in it but the notes
 *            notes     initialised
 */
void hw_outside_add(const hw_plan *plan, hw_notes *notes);

#endif
