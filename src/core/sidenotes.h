/* Notes on what does not come out in the sides of rows: once for a band, with its pieces and sizes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_SIDENOTES_H
#define HW_CORE_SIDENOTES_H

#include "core/note.h"
#include "core/plan.h"

/*
 * Add what was found in the rows of pieces and of trims, the same of all pieces in one note.
 *
 * Given:     whole     the rows of its plans and trims are made
 *            notes     initialised
 * Note:      an odd number of rows in a hem's band is told with its card, for every machine
 */
void hw_sidenotes_add(const hw_whole *whole, hw_notes *notes);

#endif
