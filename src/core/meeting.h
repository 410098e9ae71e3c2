/* Notes on what has to meet: sewn edges, bands higher up with what is there, trims with the bed.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_MEETING_H
#define HW_CORE_MEETING_H

#include "core/note.h"
#include "core/plan.h"

/*
 * Add the notes that concern the garment as a whole, each only where it applies.
 *
 * Given:     whole     its plans, joins and trims are made
 *            notes     initialised
 */
void hw_meeting_add(const hw_whole *whole, hw_notes *notes);

#endif
