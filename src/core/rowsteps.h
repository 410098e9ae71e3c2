/* A row plan in steps: runs of rows that are knitted alike, to be read line by line.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ROWSTEPS_H
#define HW_CORE_ROWSTEPS_H

#include "core/rowplan.h"

/* The workings of one step of the shaping that fall into a run of rows. */
typedef struct {
    const hw_shape_step *step;
    int number; /* of the first row before which it is done (HW_STEP_END: after which) */
    int times;  /* in this run, then every step->every rows */
} hw_run_shaping;

typedef struct {
    int first, count; /* rows of the plan */
    const hw_run_shaping *shaping;
    int shaping_count;
} hw_row_run;

typedef struct {
    const hw_row_run *list;
    int count;
} hw_row_runs;

/*
 * Compress a plan into runs.
 *
 * Given:     plan      from hw_rowplan_make
 *            arena     owner of the list
 * Returned:  out       runs that follow each other and hold each row once; untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 * Note:      rows of a run agree in kind, part, dial, setting, card (held, moving), feeders, and
 *            their numbers follow each other. Hand work stands before a run's first row and after
 *            its last alone, but for shaping; each step of the shaping begins a run,
 *            unless it is told together with one of the run (steptogether.h).
 */
hw_status hw_rowplan_runs(const hw_rowplan *plan, hw_arena *arena, hw_row_runs *out) HW_MUST_USE;

#endif
