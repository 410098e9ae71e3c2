/* Steps back into rows, as a knitter follows them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "follow.h"

enum { EDGES = 4 }; /* left, right, and the neck's two */

/* Adds a step's change to the rows in which it happens. */
static void add_step(const hw_shape_step *step, int change, int *rows)
{
    for (int i = 0; i < step->times; i++) {
        rows[step->row + i * step->every] += change;
    }
}

/* Which edges a step is about, [left, right]. */
static void apply(const hw_shape_step *step, hw_shape *made)
{
    static const bool at[HW_AT_COUNT][EDGES] = {
        [HW_AT_LEFT] = { true, false, false, false },
        [HW_AT_RIGHT] = { false, true, false, false },
        [HW_AT_BOTH] = { true, true, false, false },
        [HW_AT_NECK_LEFT] = { false, false, true, false },
        [HW_AT_NECK_RIGHT] = { false, false, false, true },
        [HW_AT_NECK_BOTH] = { false, false, true, true },
        [HW_AT_MIDDLE] = { false, false, true, true },
    };
    static const int signs[HW_STEP_COUNT] = { [HW_STEP_DECREASE] = 2,
        [HW_STEP_INCREASE] = -2,
        [HW_STEP_BIND_OFF] = 2,
        [HW_STEP_CAST_ON] = -2,
        [HW_STEP_HOLD] = 2,
        [HW_STEP_BACK] = -2,
        [HW_STEP_DIVIDE] = 1,
        [HW_STEP_END] = 0 };
    int change = signs[step->kind] * step->sts;
    for (int edge = 0; edge < EDGES && change != 0; edge++) {
        int *rows = edge < 2 ? made->inset_sts[edge] : made->neck_halves[edge - 2];
        if (at[step->place][edge] && rows != NULL) {
            add_step(step, edge < 2 ? change / 2 : change, rows);
        }
    }
    made->neck_row = step->kind == HW_STEP_DIVIDE ? step->row : made->neck_row;
    bool higher = step->kind == HW_STEP_END && step->row > made->rows;
    made->rows = higher ? step->row : made->rows;
}

/* From changes to what has changed so far. */
static void add_up(hw_shape *made)
{
    for (int edge = 0; edge < EDGES; edge++) {
        int *rows = edge < 2 ? made->inset_sts[edge] : made->neck_halves[edge - 2];
        for (int row = 1; row < made->rows && rows != NULL; row++) {
            rows[row] += rows[row - 1];
        }
        for (int row = 0; row < made->neck_row && rows != NULL && edge >= 2; row++) {
            rows[row] = -1;
        }
    }
}

hw_status follow_steps(
    const hw_shape_task *task, const hw_shape_steps *steps, hw_arena *arena, hw_shape *out)
{
    hw_shape made = {
        .visible_sts = task->visible_sts, .neck_row = task->rows, .first_start = task->first_start
    };
    bool neck = task->outline->edges[HW_EDGE_NECK_RIGHT].count > 0;
    for (int edge = 0; edge < (neck ? EDGES : 2); edge++) {
        int *rows = hw_arena_get(arena, (size_t)task->rows + FOLLOW_MORE, sizeof *rows);
        if (rows == NULL) {
            return HW_ERR_NOMEM;
        }
        if (edge < 2) {
            made.inset_sts[edge] = rows;
        } else {
            made.neck_halves[edge - 2] = rows;
        }
    }
    for (int i = 0; i < steps->count; i++) {
        apply(&steps->list[i], &made);
    }
    add_up(&made);
    *out = made;
    return HW_OK;
}
