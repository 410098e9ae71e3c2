/* The task for row plans that several suites use.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "example_rows.h"

#include "support.h"

static void set_motif(rows_example *e, int rows)
{
    for (int i = 0; i < ROWS_MOST_BAND; i++) {
        e->cells[i] = HW_CONTRAST;
        e->motif_rows[i] = (hw_motif_row){ .contrast_sts = 1 };
    }
    e->motif = (hw_motif){
        .chart = { .name = "dots", .width = 1, .rows = rows, .cells = e->cells },
        .gap = 1,
        .repeat = 2,
        .rows = e->motif_rows,
        .fits_card = true,
        .card_columns = 24,
    };
}

void example_rows_hem(rows_example *e, const hw_hem *hem)
{
    e->hem = *hem;
    e->hem.face_rows = hem->below_rows + hem->band_rows + hem->above_rows;
    e->hem.total_rows = e->hem.facing_rows + e->hem.fold_rows + e->hem.face_rows;
    e->hem.odd_band = hem->band_rows % 2 != 0;
    set_motif(e, hem->band_rows);
}

void example_rows(rows_example *e)
{
    *e = (rows_example){ 0 };
    e->machine = (hw_machine){ .title = "A machine",
        .pitch_cm = 0.45,
        .needles = 200,
        .card_columns = 24,
        .reader_offset = 7,
        .carriage = HW_CARRIAGE_PRESELECTING };
    e->gauge[HW_MAIN] = (hw_gauge){ .has_dial = true, .dial = 5 };
    hw_hem hem = { .facing_rows = 10,
        .below_rows = 2,
        .band_rows = 6,
        .above_rows = 2,
        .has_dials = true,
        .facing_dial = 4,
        .band_dial = 6.5,
        .joining_dial = 6 };
    example_rows_hem(e, &hem);
    e->fit = (hw_fit){ .edge_sts = { 1, 1 }, .visible_sts = 20, .cast_on_sts = 22, .main_sts = 20 };
    e->place = (hw_place_on_bed){ .first = -11, .last = 10 };
    e->task = (hw_rowplan_task){ .machine = &e->machine,
        .gauge = e->gauge,
        .hem = &e->hem,
        .motif = &e->motif,
        .fit = &e->fit,
        .place = &e->place,
        .plain_rows = 2,
        .start = HW_RIGHT,
        .cast_on = HW_CAST_ON_OPEN,
        .closing = HW_CLOSING_HUNG };
}

void example_rows_shape(rows_example *e)
{
    for (int i = 0; i < ROWS_MAIN; i++) {
        e->inset[HW_LEFT][i] = i >= 2 ? 3 : 0;
        e->inset[HW_RIGHT][i] = i >= 3 ? 3 : 0;
        for (int side = 0; side < HW_SIDE_COUNT; side++) {
            int halves = i >= 8 ? 6 : 4;
            e->neck[side][i] = i >= 6 ? halves : -1;
        }
    }
    e->shape = (hw_shape){ .rows = ROWS_MAIN,
        .visible_sts = 20,
        .inset_sts = { e->inset[HW_LEFT], e->inset[HW_RIGHT] },
        .neck_halves = { e->neck[HW_LEFT], e->neck[HW_RIGHT] },
        .neck_row = 6,
        .first_start = HW_LEFT };
    const hw_shape_step list[] = {
        { HW_STEP_BIND_OFF, HW_AT_LEFT, .row = 2, .times = 1, .sts = 3 },
        { HW_STEP_BIND_OFF, HW_AT_RIGHT, .row = 3, .times = 1, .sts = 3 },
        { HW_STEP_DIVIDE, HW_AT_MIDDLE, .row = 6, .times = 1, .sts = 4 },
        { HW_STEP_DECREASE, HW_AT_NECK_BOTH, .row = 8, .times = 1, .sts = 1 },
        { HW_STEP_END, HW_AT_BOTH, .row = 10, .times = 1, .sts = 5 },
    };
    e->steps = (hw_shape_steps){ e->list, (int)(sizeof list / sizeof list[0]) };
    for (int i = 0; i < e->steps.count; i++) {
        e->list[i] = list[i];
    }
    e->task.shape = &e->shape;
    e->task.steps = &e->steps;
}

hw_hem example_rows_chance(unsigned *state)
{
    hw_hem hem = { .facing_rows = 1 + hw_check_random(state, 30),
        .fold_rows = hw_check_random(state, 2),
        .below_rows = 2 + hw_check_random(state, 9),
        .band_rows = 1 + hw_check_random(state, ROWS_MOST_BAND),
        .above_rows = 2 + hw_check_random(state, 9) };
    hem.fold = hem.fold_rows == 0 ? HW_FOLD_NONE : HW_FOLD_LOOSE;
    return hem;
}

hw_rowplan example_rows_plan(const rows_example *e, hw_arena *arena)
{
    hw_rowplan plan = { 0 };
    ck_assert_int_eq(hw_rowplan_make(&e->task, arena, &plan, NULL), HW_OK);
    return plan;
}

hw_rowplan example_rows_round(rows_example *e, hw_arena *arena)
{
    static const char *const names[] = { "front", "back" };
    static const int cast_on_sts[] = { 22, 30 };
    static int sts[22];
    static const hw_row_tube tube = { names, cast_on_sts, 2, sts };
    for (int i = 0; i < 22; i++) {
        sts[i] = i < 21 ? 52 : 48;
    }
    example_rows_shape(e);
    e->machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    e->list[0] = (hw_shape_step){ HW_STEP_BIND_OFF, HW_AT_RIGHT, .row = 2, .times = 1, .sts = 3 };
    e->list[1] = (hw_shape_step){ HW_STEP_DECREASE, HW_AT_BOTH, .row = 1, .times = 1, .sts = 1 };
    e->shape.first_start = HW_RIGHT;
    e->task.round_rows = 22;
    hw_rowplan plan = example_rows_plan(e, arena);
    plan.tube = &tube;
    return plan;
}
