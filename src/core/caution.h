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

#endif
