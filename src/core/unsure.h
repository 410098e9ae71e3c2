/* What is said of gauges and measurements that nobody can be sure of.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_UNSURE_H
#define HW_CORE_UNSURE_H

#include "core/plan.h"

/*
 * Add the notes on what the numbers rest on and cannot promise; none that does not apply.
 *
 * Given:     plan      all results are in it but the notes
 *            notes     initialised
 */
void hw_unsure_add(const hw_plan *plan, hw_notes *notes);

#endif
