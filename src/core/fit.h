/* Whole motifs in one width: the counts that a repeat, a gap and two margins can make.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_FIT_H
#define HW_CORE_FIT_H

#include "core/err.h"

/* The nearest counts on both sides of a wanted number of stitches; equal where it fits exactly. */
typedef struct {
    int motifs, visible_sts;
    int margin[HW_SIDE_COUNT];
} hw_fit_count;

typedef struct {
    hw_fit_count below, above;
    bool has_below, has_above;
} hw_fit_near;

typedef struct {
    int repeat, gap;  /* columns; gap in [0, repeat) */
    int least_margin; /* usually 0; at most HW_MAX_STS */
    int most_margin;  /* usually the gap; from least_margin to HW_MAX_STS */
    int most_sts;     /* visible stitches that the bed leaves room for */
} hw_fit_rules;

/* visible = motifs * repeat - gap + both margins. */
int hw_fit_visible(const hw_fit_rules *rules, int motifs, int left, int right);

/*
 * The nearest counts with equal margins, or margins that differ by one where they must.
 *
 * Given:     rules     repeat in [1, HW_MAX_CHART_COLUMNS]
 *            wanted_sts  not rounded, (0, HW_MAX_STS]
 * Returned:  out       the largest count that is not above, and the smallest that is not below;
 *                      has_below is false when one motif is too wide already, has_above when the
 *                      bed is too short
 *            untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE
 * Note:      an odd margin stitch goes to the right; a count that can be made in two ways takes
 *            the one with more motifs
 */
hw_status hw_fit_nearest(
    const hw_fit_rules *rules, double wanted_sts, hw_fit_near *out, hw_err *err) HW_MUST_USE;

#endif
