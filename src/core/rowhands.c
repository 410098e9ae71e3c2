/* What is done by hand between the rows of a row plan.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>
#include <string.h>

#include "core/rowframe.h"

enum { FIRST_ROOM = 32 };

static void add(hw_row_hands *hands, hw_row *row, hw_handwork work)
{
    if (hands->refused) {
        return;
    }
    if (hands->count == hands->room) {
        int room = hands->room == 0 ? FIRST_ROOM : 2 * hands->room;
        hw_handwork *list = hw_arena_get(hands->arena, (size_t)room, sizeof *list);
        if (list == NULL) {
            hands->refused = true;
            return;
        }
        if (hands->count > 0) {
            memcpy(list, hands->list, (size_t)hands->count * sizeof *list);
        }
        hands->list = list;
        hands->room = room;
    }
    hands->list[hands->count++] = work;
    row->hand_count++;
}

static bool on_bed(const hw_row_hands *hands)
{
    return hands->frame->work != HW_WORK_HAND;
}

static void begin_piece(hw_row_hands *hands, hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    bool trim = f->task->trim != NULL;
    bool waste = on_bed(hands) && !trim && f->task->cast_on == HW_CAST_ON_OPEN;
    add(hands, row,
        (hw_handwork){ .kind = trim ? HW_HAND_PICK_UP : HW_HAND_CAST_ON,
            .sts = row->sts,
            .number = waste ? HW_WASTE_ROWS : 0,
            .side = row->before });
    if (on_bed(hands)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_WEIGHTS });
        add(hands, row, (hw_handwork){ .kind = HW_HAND_COUNTER });
    }
}

/* Whose card a row is the first to read. */
static hw_row_band card_band(const hw_row_hands *hands, const hw_row *row)
{
    const hw_rowplan_task *task = hands->frame->task;
    hw_row_band band = { .name = task->name };
    for (int b = 1; b <= task->band_count; b++) {
        int first = hw_row_frame_band_first(hands->frame, b);
        bool begins = first - hw_row_frame_lead(hands->frame, b) == row->number;
        band = begins ? task->bands[b - 1] : band;
    }
    return band;
}

static bool has_card(const hw_row_hands *hands, const hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    hw_row_work work = row->band >= 0 ? hw_row_frame_work(f, row->band) : f->work;
    return work == HW_WORK_DIRECT || work == HW_WORK_PRESELECT;
}

static bool reads_first(const hw_row_hands *hands, const hw_row *row)
{
    bool first = row->chart_row == 1 && hands->frame->work == HW_WORK_DIRECT;
    return has_card(hands, row) && (row->kind == HW_ROW_SETUP || first);
}

/* A piece is moved before the row that reads a band's card first, and perhaps back after it. */
static void move_piece(hw_row_hands *hands, hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    int by = hw_row_frame_aside(f, row->number) - hw_row_frame_aside(f, row->number - 1);
    if (by != 0) {
        add(hands, row,
            (hw_handwork){ .kind = HW_HAND_MOVE,
                .number = by,
                .band = reads_first(hands, row) ? card_band(hands, row).name : NULL });
    }
}

/* The card is locked before the row that first reads it, and let go before the first band row. */
static void begin_band(hw_row_hands *hands, hw_row *row)
{
    if (reads_first(hands, row)) {
        hw_row_band band = card_band(hands, row);
        add(hands, row,
            (hw_handwork){ .kind = HW_HAND_CARD_IN,
                .number = row->card_read,
                .band = band.name,
                .column = band.own_column });
    }
    if (!on_bed(hands) || row->chart_row != 1) {
        return;
    }
    add(hands, row, (hw_handwork){ .kind = HW_HAND_SECOND_IN, .side = row->before });
    if (has_card(hands, row)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_CARD_GO });
    }
}

/* What the hem asks for before one of its rows. */
static void hem_before(hw_row_hands *hands, hw_row *row)
{
    const hw_rowplan_task *task = hands->frame->task;
    const hw_hem *hem = task->hem;
    if (row->number == 1) {
        begin_piece(hands, row);
    }
    if (hem->fold == HW_FOLD_PICOT && row->number == hw_row_frame_folded(hands->frame)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_PICOT });
    }
    bool purl = hem->fold == HW_FOLD_PURL && row->kind == HW_ROW_FOLD;
    if (purl && !on_bed(hands)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_PURL });
    }
    int fewer = task->fit->visible_sts - task->fit->main_sts;
    bool above_band = row->number == hw_row_frame_band_first(hands->frame, 0) + hem->band_rows;
    if (above_band && fewer != 0) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_REHANG, .sts = row->sts, .number = fewer });
    }
}

/* On the bed holes are counted from its left, where the trim's right end hangs. */
static void make_holes(hw_row_hands *hands, hw_row *row)
{
    const hw_row_trim *trim = hands->frame->task->trim;
    bool due = trim != NULL && (row->number == trim->hole_rows[HW_LAYER_FACE] ||
                                   row->number == trim->hole_rows[HW_LAYER_FACING]);
    bool from_right = on_bed(hands) || row->before == HW_RIGHT;
    for (int i = 0; due && i < trim->hole_count; i++) {
        int right_sts = trim->holes[from_right ? i : trim->hole_count - 1 - i];
        add(hands, row,
            (hw_handwork){ .kind = HW_HAND_HOLE,
                .sts = trim->hole_sts,
                .number = from_right ? right_sts : row->sts - right_sts - trim->hole_sts });
    }
}

/* The loops hang on what the face has; shaping in that row comes after. */
static void join_hem(hw_row_hands *hands, hw_row *row)
{
    const hw_fit *fit = hands->frame->task->fit;
    if (row->kind != HW_ROW_JOINING) {
        return;
    }
    int sts = fit->main_sts + fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT];
    add(hands, row, (hw_handwork){ .kind = HW_HAND_HANG_HEM, .sts = sts });
    if (on_bed(hands)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_WEIGHTS });
    }
}

/* The half that is knitted first: where the parting row begins. */
static hw_side first_half(const hw_row_frame *f)
{
    int parting = f->task->hem->total_rows + f->neck + 1;
    return hw_row_frame_edge(f, hw_row_frame_before(f, parting));
}

/* The first row above the rounds. */
static void leave_rounds(hw_row_hands *hands, hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    const hw_fit *fit = f->task->fit;
    int rounds = hw_row_frame_rounds(f);
    bool again = row->part == hw_row_frame_half(hw_row_frame_other(first_half(f)));
    if (rounds == 0 || row->number != rounds + 1 || again) {
        return;
    }
    int last = rounds - f->task->hem->total_rows - 1; /* above the hem */
    int sts = fit->main_sts + fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT];
    for (int side = 0; side < HW_SIDE_COUNT && last >= 0 && f->task->shape != NULL; side++) {
        sts -= f->task->shape->inset_sts[side][last];
    }
    add(hands, row, (hw_handwork){ .kind = HW_HAND_INTO_ROWS, .sts = sts, .side = row->before });
}

static bool parts(const hw_row_hands *hands, const hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    return row->part != HW_PART_WHOLE && row->number == f->task->hem->total_rows + f->neck + 1;
}

/* Stitches of the half that waits, as it is left: from its edge to the neck, before its shaping. */
static int held_sts(const hw_row_hands *hands, hw_side half)
{
    const hw_row_frame *f = hands->frame;
    const hw_fit *fit = f->task->fit;
    const hw_shape *shape = f->task->shape;
    int taken_sts = f->neck > 0 ? shape->inset_sts[half][f->neck - 1] : 0;
    int to_neck_sts = (fit->main_sts - shape->neck_halves[half][f->neck]) / 2;
    return to_neck_sts - taken_sts + fit->edge_sts[half];
}

static void part_halves(hw_row_hands *hands, hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    if (!parts(hands, row)) {
        return;
    }
    hw_side second = first_half(f) == HW_LEFT ? HW_RIGHT : HW_LEFT;
    int sts = held_sts(hands, second);
    if (row->part != hw_row_frame_half(second)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_HOLD_HALF, .sts = sts });
        return;
    }
    add(hands, row, (hw_handwork){ .kind = HW_HAND_BACK_HALF, .sts = sts, .side = row->before });
    if (on_bed(hands)) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_COUNTER, .number = row->number - 1 });
    }
}

/* Whether a step is done where the part is knitted. */
static bool concerns(const hw_shape_step *step, hw_row_part part)
{
    static const bool places[HW_AT_COUNT][HW_PART_COUNT] = {
        [HW_AT_LEFT] = { [HW_PART_WHOLE] = true, [HW_PART_LEFT] = true },
        [HW_AT_RIGHT] = { [HW_PART_WHOLE] = true, [HW_PART_RIGHT] = true },
        [HW_AT_BOTH] = { true, true, true },
        [HW_AT_NECK_LEFT] = { [HW_PART_WHOLE] = true, [HW_PART_LEFT] = true },
        [HW_AT_NECK_RIGHT] = { [HW_PART_WHOLE] = true, [HW_PART_RIGHT] = true },
        [HW_AT_NECK_BOTH] = { true, true, true },
        [HW_AT_MIDDLE] = { true, true, true },
    };
    return places[step->place][part];
}

static bool works_in(const hw_shape_step *step, int main_row)
{
    int since = main_row - step->row;
    if (step->times == 1 || since == 0) {
        return since == 0;
    }
    return since > 0 && since % step->every == 0 && since / step->every < step->times;
}

/* Parting the piece is done once, with the first half; ends come after the part's last row. */
static bool due(const hw_row_hands *hands, const hw_shape_step *step, const hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    if (!concerns(step, row->part)) {
        return false;
    }
    if (step->kind == HW_STEP_DIVIDE) {
        return parts(hands, row) && row->part == hw_row_frame_half(first_half(f));
    }
    return works_in(step, row->number - f->task->hem->total_rows - 1);
}

static void shape_before(hw_row_hands *hands, hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    const hw_shape_steps *steps = f->task->steps;
    if (steps == NULL || row->number <= f->task->hem->total_rows) {
        return;
    }
    for (int i = 0; i < steps->count; i++) {
        const hw_shape_step *step = &steps->list[i];
        if (step->kind != HW_STEP_END && due(hands, step, row)) {
            add(hands, row,
                (hw_handwork){
                    .kind = HW_HAND_SHAPE, .sts = step->sts, .side = row->before, .step = step });
        }
    }
}

static void end_part(hw_row_hands *hands, hw_row *row)
{
    const hw_row_frame *f = hands->frame;
    const hw_shape_steps *steps = f->task->steps;
    int rows = f->rows[row->part];
    bool top = row->number == f->task->hem->total_rows + rows && rows >= f->main_rows;
    for (int i = 0; steps != NULL && top && i < steps->count; i++) {
        const hw_shape_step *step = &steps->list[i];
        if (step->kind == HW_STEP_END && concerns(step, row->part)) {
            add(hands, row,
                (hw_handwork){ .kind = HW_HAND_SHAPE,
                    .after = true,
                    .sts = step->sts,
                    .side = row->after,
                    .step = step });
        }
    }
}

static void mark(hw_row_hands *hands, hw_row *row)
{
    const hw_rowplan_task *task = hands->frame->task;
    for (int i = 0; i < task->mark_count; i++) {
        if (row->number == task->hem->total_rows + task->marks[i] + 1) {
            add(hands, row, (hw_handwork){ .kind = HW_HAND_MARK });
        }
    }
}

/* A piece's cast-on edge is sewn down, or has been joined; a trim has stitches left. */
static void end_work(hw_row_hands *hands, hw_row *row)
{
    const hw_rowplan_task *task = hands->frame->task;
    bool sewn = !hw_row_frame_joins(hands->frame);
    if (task->trim != NULL) {
        bool open = sewn && task->cast_on == HW_CAST_ON_OPEN;
        add(hands, row,
            (hw_handwork){ .kind = open ? HW_HAND_TAKE_OFF : HW_HAND_BIND_OFF,
                .after = true,
                .sts = row->sts });
    }
    if (sewn) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_SEW_HEM, .after = true });
    }
}

static void add_after(hw_row_hands *hands, hw_row *row, bool last)
{
    const hw_row_frame *f = hands->frame;
    if (on_bed(hands) && row->kind == HW_ROW_FOLD && f->task->hem->fold == HW_FOLD_PURL) {
        add(hands, row, (hw_handwork){ .kind = HW_HAND_PURL, .after = true });
    }
    bool band_ends =
        row->kind == HW_ROW_BAND && row->chart_row == hw_row_frame_band_rows(f, row->band);
    if (on_bed(hands) && band_ends) {
        add(hands, row,
            (hw_handwork){ .kind = HW_HAND_SECOND_OUT, .after = true, .side = row->after });
    }
    end_part(hands, row);
    if (last) {
        end_work(hands, row);
    }
}

void hw_row_hands_add(hw_row_hands *hands, hw_row *row, bool last)
{
    row->first_hand = hands->count;
    hem_before(hands, row);
    leave_rounds(hands, row);
    join_hem(hands, row);
    part_halves(hands, row);
    mark(hands, row);
    shape_before(hands, row);
    make_holes(hands, row);
    move_piece(hands, row);
    begin_band(hands, row);
    add_after(hands, row, last);
}
