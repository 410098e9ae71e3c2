/* Notes on what is knitted in rounds, and what is not.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_TUBENOTES_H
#define HW_CORE_TUBENOTES_H

#include "core/plan.h"

/*
 * Add the notes on rounds of one part.
 *
 * Given:     plan      a part's, calculated up to its rows
 *            notes     made ready
 * Returned:  notes     with more notes, or refused
 */
void hw_tubenotes_add(const hw_plan *plan, hw_notes *notes);

#endif
