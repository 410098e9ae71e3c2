/* Yarn: how much of each a piece and a garment take, from what was weighed or unravelled.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_YARN_H
#define HW_CORE_YARN_H

#include "core/motif.h"

enum {
    HW_MAX_YARNS = 8,
    HW_MAX_YARN_FABRICS = HW_FABRIC_COUNT + HW_MAX_TRIMS,
    HW_YARN_STITCH_WIDTHS = 4,   /* yarn in a stitch, in its widths, where not measured: [Y4] */
    HW_YARN_RESERVE_PERCENT = 10 /* usual reserve: [Y3] */
};

/* A yarn as its ball band says it; 0 where that is not known. */
typedef struct {
    const char *name;
    double ball_g, ball_m;
} hw_yarn;

/* Stitches of each colour, and stitches that its strand passes behind. */
typedef struct {
    int sts[HW_COLOUR_COUNT];
    int passed[HW_COLOUR_COUNT];
} hw_yarn_counts;

/* A fabric and what was measured of it. */
typedef struct {
    int yarn[HW_COLOUR_COUNT]; /* which of the task's yarns; the second only in two colours */
    double sts_per_10cm, rows_per_10cm;
    double g_per_m2;       /* of a washed swatch; 0: not weighed */
    int unravelled_sts;    /* stitches that were unravelled; 0: none */
    double unravelled_m;   /* the yarn of them, all colours together */
    hw_yarn_counts swatch; /* in what proportions it was weighed or unravelled: those of one
                              repeat will do; all 0: one colour */
} hw_yarn_fabric;

typedef struct {
    const hw_yarn *yarns;          /* the first is the main one */
    int yarn_count;                /* [1, HW_MAX_YARNS] */
    const hw_yarn_fabric *fabrics; /* the first is the main one */
    int fabric_count;              /* [1, HW_MAX_YARN_FABRICS] */
    double reserve_percent;
} hw_yarn_task;

/* What one fabric of one piece is made of: counts, or an area where nobody counted. */
typedef struct {
    int fabric;
    hw_yarn_counts counts;
    double area_cm2; /* used where the counts are 0: in the swatch's proportions */
} hw_yarn_part;

/* Lengths of yarn in a fabric. */
typedef struct {
    double stitch_cm;    /* one stitch */
    double float_cm;     /* a strand that passes one stitch: the stitch's width */
    hw_mark stitch_mark; /* measured, derived from mass and metres, or assumed */
    bool has_length;     /* stitch_cm is better than so many widths */
    double scale;        /* what the swatch weighed over what the lengths would weigh */
    hw_mark mark;        /* of the masses in this fabric */
    bool doubtful;       /* mass and metres of the ball give a stitch that cannot be: not used */
} hw_yarn_fabric_rate;

typedef struct {
    hw_yarn_fabric_rate fabrics[HW_MAX_YARN_FABRICS];
    double g_per_m[HW_MAX_YARNS];
    hw_mark g_per_m_marks[HW_MAX_YARNS]; /* given (ball), derived or assumed */
    bool has_g; /* false: neither ball nor swatch tells a mass, only metres are known */
} hw_yarn_rates;

typedef struct {
    double g, m;
    bool has_g, has_m;
    hw_mark mark; /* the weakest of its parts */
} hw_yarn_amount;

typedef struct {
    hw_yarn_amount of[HW_MAX_YARNS];
} hw_yarn_amounts;

typedef struct {
    hw_yarn_amount used;   /* in the fabric */
    hw_yarn_amount to_buy; /* with the reserve */
    int balls;             /* whole balls of to_buy; 0: the ball is not known, or none is used */
} hw_yarn_total;

typedef struct {
    hw_yarn_total of[HW_MAX_YARNS];
} hw_yarn_totals;

/* A width in the motif: plain stitches, whole motifs with gaps between them, plain stitches. */
typedef struct {
    int before_sts, motifs, after_sts;
} hw_yarn_width;

/* Stitches and strands of a band of so many rows as the motif has. Both yarns run from edge to edge
 * in a row that has both, and each passes behind the other's stitches; a row in one colour has no
 * strands. A ring, or one repeat, has its last gap in after_sts. */
hw_yarn_counts hw_yarn_band(const hw_motif *motif, hw_yarn_width width);

/* The same of one repeat, gap included. */
hw_yarn_counts hw_yarn_repeat(const hw_motif *motif);

/*
 * Lengths and masses of the yarn in each fabric.
 *
 * Given:     task
 * Note:      yarn of n stitches and p stitches passed: n x stitch_cm + p x float_cm. A stitch's
 *            length: unravelled; else from the swatch's mass and the metres of the ball; else that
 *            of the main fabric, in proportion to the widths; else HW_YARN_STITCH_WIDTHS widths.
 *            Grams in a metre: the ball's; else the first other yarn's whose ball is known; else
 *            from the first fabric that was weighed and its stitch's length. Where a fabric was
 *            weighed, masses are scaled to it [Y1]
 */
hw_yarn_rates hw_yarn_measure(const hw_yarn_task *task);

/* The yarn in one part. A yarn that is not in it has 0. */
hw_yarn_amounts hw_yarn_of_part(
    const hw_yarn_task *task, const hw_yarn_rates *rates, const hw_yarn_part *part);

/* The yarn of many parts, such as all pieces of one size, with the reserve, in whole balls over all
 * of them. A sum of which a part is not known is not known. */
hw_yarn_totals hw_yarn_of_parts(
    const hw_yarn_task *task, const hw_yarn_rates *rates, const hw_yarn_part *parts, int count);

#endif
