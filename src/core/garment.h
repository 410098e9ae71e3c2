/* A garment as data: rules from body to finished measurements, pieces, seams.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_GARMENT_H
#define HW_CORE_GARMENT_H

#include "core/piece.h"
#include "core/sizes.h"

/* Room added to what a rule gives; one of the two is 0. */
typedef struct {
    double cm;
    double percent; /* of what the rule gives */
} hw_ease;

/* A finished measurement and how it follows from the body. */
typedef struct {
    const char *name;
    hw_rule rule;
    hw_ease ease;
} hw_finished;

/* A project's ease for one finished measurement, in place of the garment's. */
typedef struct {
    const char *name;
    hw_ease ease;
    int line;
} hw_ease_change;

typedef struct {
    const char *title;
    const hw_finished *finished; /* in the order of the file; a rule may use those before it */
    int finished_count;
    const hw_piece *pieces;
    int piece_count;
    const hw_seam *seams; /* at the hem */
    int seam_count;
    const hw_joint_edges *joins; /* along drawn edges */
    int join_count;
    const hw_trim *trims;
    int trim_count;
} hw_garment;

/*
 * Finished measurements of every size: those given stay, the others follow from the rules.
 *
 * Given:     garment   checked by its reader
 *            body      complete measurements of the same sizes, those that the rules use
 *            changes, change_count  ease that the project sets itself
 *            finished  the given ones, complete; its sizes are the same
 * Returned:  finished  with a measurement added for each rule that was not given; untouched on
 *            failure; ease on a measurement that was given has nothing to act on
 * Result:    HW_OK; HW_ERR_MISSING (a measurement that a rule needs); HW_ERR_RANGE (a result that
 *            is not in (0, HW_MAX_CM]); HW_ERR_UNKNOWN (ease on what the garment does not have);
 *            HW_ERR_LIMIT (more than HW_MAX_MEASURES); HW_ERR_NOMEM
 * Note:      a value has the weakest mark of what it rests on, at best "derived"; but a bare
 *            measurement (one term, factor 1, no constant, no ease) keeps its mark and source
 */
typedef struct {
    const hw_garment *garment;
    const hw_sizes *body, *table; /* a whole table, for names in messages; NULL: none */
    const hw_ease_change *changes;
    int change_count;
} hw_garment_task;
hw_status hw_garment_finish(
    const hw_garment_task *task, hw_sizes *finished, hw_arena *arena, hw_err *err) HW_MUST_USE;

/*
 * The value of a rule in one size.
 *
 * Given:     rule      its terms all name measurements of `finished` (or `body`)
 *            body, finished  measurements; body may be NULL where no term uses it
 *            size      [0, finished->count)
 * Returned:  out_cm    the sum; mark, when not NULL, the weakest mark among its terms
 *            (HW_MARK_GIVEN without terms); both untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (a name that nothing gives)
 */
typedef struct {
    const hw_sizes *body, *finished;
    int size;
} hw_rule_place;
hw_status hw_rule_value(const hw_rule *rule, const hw_rule_place *place, double *out_cm,
    hw_mark *mark, hw_err *err) HW_MUST_USE;

/* The ease of a finished measurement: the project's own, or else the garment's. */
hw_ease hw_garment_ease(const hw_garment_task *task, const hw_finished *what);

/* Which seam holds an edge, or -1 for a free edge. */
int hw_garment_seam_at(const hw_garment *garment, int piece, hw_side side);

#endif
