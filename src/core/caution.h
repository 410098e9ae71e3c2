/* What a knitter must be told about a plan: what does not fit, what is guessed, what is not safe.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_CAUTION_H
#define HW_CORE_CAUTION_H

#include "core/plan.h"

/*
 * Add the notes that apply to a plan; none that does not.
 *
 * Given:     plan      all results are in it but the notes
 *            notes     initialised
 */
void hw_caution_add(const hw_plan *plan, hw_notes *notes);

/*
 * Add the notes on safety that apply in one size, for a sheet of that size alone.
 *
 * Given:     plan      of the garment's first part
 *            size      index
 *            notes     initialised
 */
void hw_caution_of_size(const hw_plan *plan, int size, hw_notes *notes);

#endif
