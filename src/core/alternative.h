/* What else could be done: other gaps, other motifs, other ease, a motif more or fewer, ranked.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ALTERNATIVE_H
#define HW_CORE_ALTERNATIVE_H

#include "core/grade.h"
#include "core/motif.h"
#include "core/project.h"

typedef enum {
    HW_ALTER_NOTHING, /* the plan as it is, for comparison */
    HW_ALTER_GAP,
    HW_ALTER_EASE,
    HW_ALTER_COUNT, /* a motif more or fewer in one piece, in every size */
    HW_ALTER_MOTIF,
    HW_ALTER_KIND_COUNT
} hw_alter_kind;

typedef struct {
    hw_alter_kind kind;
    const char *what; /* "gap 3", "finished width +1 cm", "back: one motif fewer" */
    int order;        /* in which it was thought of: breaks ties */
    int repeat, gap;
    bool possible;     /* else what follows is 0 */
    bool fits_card;    /* the repeat divides the card, or there is no card */
    int longest_float; /* of either yarn, in stitches */
    double total_cost;
    int inside;                 /* pieces, over all sizes, whose widths lie within the tolerance */
    double worst_cm;            /* width furthest off, without its sign */
    int most_break_sts;         /* at a seam, without its sign */
    int most_off_centre_halves; /* half stitches */
    double *off_cm; /* [sizes]: the width that is furthest off in that size, with its sign */
} hw_alternative;

typedef struct {
    const hw_alternative *list; /* best first: possible, card fits, then least cost */
    int count;
} hw_alternatives;

typedef struct {
    const hw_counts_task *counts; /* as the plan was made */
    const hw_grading *chosen;     /* what it came to */
    const hw_motif *motif;
    const hw_motif_input *motifs; /* others to try; may be NULL */
    int motif_count;
    double ease_cm; /* finished widths are tried from so much less to so much more, by 0.5 cm */
} hw_alternatives_task;

/*
 * Work out every alternative and rank them.
 *
 * Given:     task      counts and chosen belong together; ease_cm in [0, 20]
 *            arena     owner of the result
 * Returned:  out       the plan itself is among them; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      each is the exact choice for the changed task, as hw_grade_choose makes it, but a
 *            motif more or fewer, which keeps all else. Motifs of one repeat and gap are worked
 *            out once. Ties keep the order: plan, gaps, ease, counts, motifs.
 */
hw_status hw_alternatives_find(const hw_alternatives_task *task, hw_arena *arena,
    hw_alternatives *out, hw_err *err) HW_MUST_USE;

/* The smallest changes that bring a count of a piece inside the tolerance. */
typedef struct {
    bool by_width;   /* a change of the finished width helps */
    double width_cm; /* to add to the piece's wanted widths, with its sign */
    bool by_gauge;
    double band_sts_per_10cm; /* gauge at which the count would measure right */
} hw_mend;

/*
 * What would bring a number of visible stitches inside the tolerance.
 *
 * Given:     task      as for hw_grade_choose
 *            size, piece  in range
 *            visible_sts  above 0
 * Returned:  the smallest change of the wanted widths, and of the gauge of both fabrics together
 */
hw_mend hw_alternative_mend(const hw_counts_task *task, int size, int piece, int visible_sts);

#endif
