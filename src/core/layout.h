/* A garment in parts: the pieces whose hems carry one band each, as projects of their own.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_LAYOUT_H
#define HW_CORE_LAYOUT_H

#include "core/project.h"

/* The pieces that share a band in their hems. Counts, hem, chart and card are each part's own. */
typedef struct {
    const char *name;          /* of the band; "" for the garment's own hem */
    const hw_project *project; /* its garment holds these pieces and the seams between them */
    int pieces[HW_MAX_PIECES]; /* of each of its pieces: the index in the whole garment */
} hw_part;

typedef struct {
    hw_part list[HW_MAX_BANDS]; /* the garment's own hem first */
    int count;
} hw_parts;

/*
 * Part a project by the bands in its hems.
 *
 * Given:     project   read, its references filled in; must outlive the parts
 *            arena     owner of the parts' projects
 * Returned:  out       one part, which is the project itself, where no band has a hem; untouched
 *                      on failure
 * Result:    HW_OK; HW_ERR_UNKNOWN (a piece or trim that the garment does not have);
 *            HW_ERR_REPEATED (a piece with two hems); HW_ERR_MISSING (no piece is left for the
 *            garment's own hem); HW_ERR_RANGE (a seam between different bands); HW_ERR_NOMEM
 * Note:      a piece that mirrors one of a band's pieces goes with it, and the other way round
 */
hw_status hw_layout_parts(
    const hw_project *project, hw_arena *arena, hw_parts *out, hw_err *err) HW_MUST_USE;

/* Which pieces of the whole garment a band is on, mirrors included; HW_ERR_UNKNOWN with the
 * nearest name where one is not there. */
hw_status hw_layout_on(const hw_garment *garment, const hw_band_input *band, bool on[HW_MAX_PIECES],
    hw_err *err) HW_MUST_USE;

/* What a project says of a trim, or NULL. */
const hw_trim_input *hw_layout_trim(const hw_project *project, const char *name);

#endif
