/* The yarn of a garment: stitches and strands of every piece and trim, added up for each size.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_YARNUSE_H
#define HW_CORE_YARNUSE_H

#include "core/plan.h"
#include "core/yarn.h"

enum { HW_USE_MAIN, HW_USE_CONTRAST, HW_USE_YARNS }; /* yarns of a project */

struct hw_yarnuse {
    hw_yarn yarns[HW_USE_YARNS];
    hw_yarn_fabric fabrics[HW_MAX_YARN_FABRICS]; /* the project's, then trims' own */
    int of_trim[HW_MAX_TRIMS]; /* the fabric that a trim gives a gauge for; 0: none */
    hw_yarn_task task;
    hw_yarn_rates rates;
    int pieces, trims;
    hw_yarn_amounts *of_pieces; /* [sizes * pieces], of the whole garment, without the reserve */
    hw_yarn_amounts *of_trims;  /* [sizes * trims] */
    hw_yarn_totals *totals;     /* [sizes] */
};

/*
 * Reckon the yarn of every size.
 *
 * Given:     whole     plans, drafts and trims are made
 *            arena     owner of the result
 * Returned:  whole     yarn; NULL where the project says nothing of yarn and no swatch was weighed
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      a piece without an outline is reckoned to the top of its hem. Stitches are those of
 *            every row, edge stitches included. Bands other than the hem's are taken to be knitted
 *            as the band's swatch was, but a trim with a gauge of its own as that says; their own
 *            charts say how the two yarns share them
 */
hw_status hw_yarnuse_make(hw_whole *whole, hw_arena *arena, hw_err *err) HW_MUST_USE;

#endif
