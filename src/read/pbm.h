/* Portable bitmaps: pictures of two colours, black the contrast, as many drawing programs write.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_PBM_H
#define HW_READ_PBM_H

#include "core/motif.h"

typedef struct {
    const char *bytes;
    size_t len;
    const char *name; /* what the motif is called; lives as long as the chart */
} hw_pbm_file;

/*
 * Read a plain (P1) or packed (P4) portable bitmap [V2].
 *
 * Given:     file      one picture; `#` begins a remark up to the line's end, before the picture
 *                      of a packed one, anywhere in a plain one
 *            arena     owner of the cells
 * Returned:  out       black pixels are contrast; the top row first; untouched on failure
 * Result:    HW_OK; HW_ERR_SYNTAX (no such picture, cut short, no black at all), HW_ERR_LIMIT
 *            (larger than a chart may be), with line and column but for what is packed;
 *            HW_ERR_NOMEM
 */
hw_status hw_pbm_read(
    const hw_pbm_file *file, hw_arena *arena, hw_chart *out, hw_err *err) HW_MUST_USE;

#endif
