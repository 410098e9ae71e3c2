/* Picking up along edges: how many stitches, shared how over the edges, in which ratio.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_PICKUP_H
#define HW_CORE_PICKUP_H

#include "core/err.h"
#include "core/mem.h"
#include "core/piece.h"

enum {
    HW_PICKUP_LARGEST_GROUP = 12, /* rows of a simple ratio at most; own choice */
    HW_PICKUP_SMALL_GROUP = 5 /* rows that are counted off at a glance: own choice, after [P5] */
};

enum { HW_PICKUP_MOST_PARTS = 6 }; /* of one edge */

/* How a part of an edge lies, and so how it is told. */
typedef enum {
    HW_PICKUP_PLAIN,     /* an edge of one kind */
    HW_PICKUP_STRAIGHT,  /* up, or nearly so */
    HW_PICKUP_SLOPE,     /* straight, but leaning */
    HW_PICKUP_CURVE,     /* stitches to a row change along it: evenly by length */
    HW_PICKUP_BOUND_OFF, /* level */
    HW_PICKUP_CAST_ON,   /* level */
    HW_PICKUP_MIDDLE,    /* half of what a neck binds off in its middle; the count is of all */
    HW_PICKUP_WAY_COUNT
} hw_pickup_way;

/* An edge, or a part of one, along which stitches are picked up. */
typedef struct hw_pickup_edge {
    double length_cm; /* (0, HW_MAX_CM] */
    int count;        /* rows along it, [1, HW_MAX_ROWS]; 0: not known, then no ratio is made */
    bool of_sts;      /* the count is of stitches: the part lies along a bound-off edge */
    hw_pickup_way way;
    bool
        other_half; /* of the neck of which the edge before it is one half, in a ring of the last */
    const struct hw_pickup_edge *parts; /* [part_count], of which the edge consists */
    int part_count;                     /* 0: it is all of one kind */
} hw_pickup_edge;

typedef struct {
    const hw_pickup_edge *edges; /* [edge_count], in the order of picking up */
    int edge_count;              /* [1, HW_MAX_PARTS] */
    double sts_per_10cm;         /* of the trim's own fabric [P3] */
    int repeat, gap;             /* of the trim's motif; repeat 0: none */
    int edge_sts[HW_SIDE_COUNT]; /* swallowed by seams at the trim's ends; 0 each in a ring */
    int multiple, multiple_plus; /* without a motif: a multiple of so many, and so many more;
                                    multiple 0 or 1: any count. 2 and 1 for a picot [H2] */
    bool round;                  /* a ring: whole repeats, the last gap behind all */
    double tolerance_cm;         /* above 0 */
} hw_pickup_task;

/* One count that can be knitted. */
typedef struct {
    int sts;                   /* to pick up, edge stitches included */
    int visible_sts;           /* without them */
    int motifs;                /* 0 without a motif */
    int margin[HW_SIDE_COUNT]; /* plain stitches beside the first and the last motif */
    double off_cm;             /* the trim's width less the edges' length */
} hw_pickup_count;

/* So many stitches out of so many rows, so many times. */
typedef struct {
    int sts, rows, times; /* times 0: not used */
} hw_pickup_group;

/* Two ways of saying the same number of stitches over the same rows; both come out exactly.
 * In short: `simple` throughout; rows_left are then left over, and extra_sts are wanted beside
 * (below 0: fewer). Evenly: the two of `even`, mixed. */
typedef struct {
    int sts, rows;
    hw_pickup_group simple;
    int rows_left;
    int extra_sts;
    hw_pickup_group even[2]; /* the shorter group first */
} hw_pickup_ratio;

/* What an edge gets, or a part of one. */
typedef struct {
    int sts;               /* edge stitches at the trim's ends included */
    bool has_ratio;        /* its rows were known, and it is all of one kind */
    hw_pickup_ratio ratio; /* over its rows, or stitches where of_sts */
    int count;             /* of those; 0: not known */
    bool of_sts;
    hw_pickup_way way;
} hw_pickup_share;

typedef struct {
    double length_cm;
    double wanted_sts; /* visible ones, not rounded */
    bool has_below, has_above;
    hw_pickup_count below, above; /* the same where it comes out exactly */
    hw_pickup_count chosen;       /* the nearer; of two as near the one with fewer stitches */
    bool inside;                  /* chosen is within the tolerance */
    int share_count;
    hw_pickup_share shares[HW_MAX_PARTS];
    int part_count[HW_MAX_PARTS]; /* of each edge, 1 where it is all of one kind */
    hw_pickup_share parts[HW_MAX_PARTS][HW_PICKUP_MOST_PARTS]; /* which add up to its share */
    bool level; /* edges of the same length have the same number of stitches */
} hw_pickup;

/*
 * The stitches of a trim along its edges.
 *
 * Given:     task
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (a motif that cannot be, too many stitches for HW_MAX_STS);
 *            HW_ERR_NOFIT (edges too short for one motif or multiple, and no longer count either)
 * Note:      wanted = length x the trim's own gauge [P3]. With a motif: whole motifs between plain
 *            margins of 0 to the gap (hw_fit_nearest), in a ring whole repeats. Shares: see
 *            hw_pickup_divide; seams' stitches are added to the first and the last edge. What an
 *            edge gets is shared over its parts in the same way; but where both halves of a neck
 *            follow each other, what they get along its middle is as many as it is wide, and of an
 *            odd number the first half has one more
 */
hw_status hw_pickup_plan(const hw_pickup_task *task, hw_pickup *out, hw_err *err) HW_MUST_USE;

/*
 * Share stitches over edges by their lengths.
 *
 * Given:     edges     [count], count in [1, HW_MAX_PARTS]
 *            sts       [0, HW_MAX_STS]
 * Returned:  shares    [count], each 0 or more; their sum is sts
 *            true when edges of the same length have the same share
 * Note:      least squared distance from the exact proportion: the method of the largest remainder,
 *            among the ways that give equal lengths (within 0.01 cm) equal shares no further than
 *            two stitches from the proportion where there is one, else among all. Ties to the
 *            earlier edge
 */
bool hw_pickup_divide(const hw_pickup_edge *edges, int count, int sts, int *shares);

/*
 * Stitches over rows as ratios.
 *
 * Given:     sts, rows  [1, HW_MAX_STS], [1, HW_MAX_ROWS]
 * Note:      simple: the nearest a / b with b up to HW_PICKUP_LARGEST_GROUP, the smallest b of
 *            equally near ones, used rows / b times. Even: with fewer stitches than rows but more
 *            than half as many, each group leaves one row out; with more stitches than rows, up to
 *            twice as many, each group has one stitch more; else one stitch, or one row, to a
 *            group. Groups' lengths differ by one at most [P2]
 */
hw_pickup_ratio hw_pickup_ratio_of(int sts, int rows);

#endif
