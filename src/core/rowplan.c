/* The rows of a piece one after the other: kind, sides, dial, card, feeders, needles.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowplan.h"

#include <assert.h>

#include "core/num.h"
#include "core/rowframe.h"

/* Where a row lies. */
typedef struct {
    int number;
    int main_row; /* from 0 above the hem; below 0 in the hem */
    int band;     /* of a band's row and of its set-up row; else -1 */
    int band_row; /* from 1; 0 in the set-up row */
} spot;

static spot find_spot(const hw_row_frame *f, int number)
{
    spot at = { .number = number, .main_row = number - f->task->hem->total_rows - 1, .band = -1 };
    for (int b = 0; b <= f->task->band_count; b++) {
        int row = number - hw_row_frame_band_first(f, b) + 1;
        if (row > -hw_row_frame_lead(f, b) && row <= hw_row_frame_band_rows(f, b)) {
            at.band = b;
            at.band_row = row;
        }
    }
    return at;
}

static hw_row_kind kind_of(const hw_row_frame *f, const spot *at)
{
    if (at->band >= 0) {
        return at->band_row == 0 ? HW_ROW_SETUP : HW_ROW_BAND;
    }
    int behind = 0; /* rows up to the end of a stretch */
    for (int i = 0; i < HW_ROW_STRETCHES; i++) {
        behind += f->hem[i].rows;
        if (at->number <= behind) {
            return f->hem[i].kind;
        }
    }
    return at->main_row == 0 && hw_row_frame_joins(f) ? HW_ROW_JOINING : HW_ROW_MAIN;
}

static void set_dial(const hw_row_frame *f, hw_row *row)
{
    static const hw_fabric fabrics[] = {
        [HW_ROW_FACING] = HW_FACING,
        [HW_ROW_FOLD] = HW_MAIN,
        [HW_ROW_FACE] = HW_MAIN,
        [HW_ROW_BELOW] = HW_MAIN,
        [HW_ROW_SETUP] = HW_MAIN,
        [HW_ROW_BAND] = HW_BAND,
        [HW_ROW_ABOVE] = HW_MAIN,
        [HW_ROW_JOINING] = HW_MAIN,
        [HW_ROW_MAIN] = HW_MAIN,
    };
    _Static_assert(sizeof fabrics / sizeof fabrics[0] == HW_ROW_KIND_COUNT, "for each kind");
    const hw_hem *hem = f->task->hem;
    const hw_gauge *main = &f->task->gauge[HW_MAIN];
    row->fabric = fabrics[row->kind];
    row->loosest = row->kind == HW_ROW_FOLD && hem->fold == HW_FOLD_LOOSE;
    if (f->work == HW_WORK_HAND || row->loosest) {
        return;
    }
    bool of_hem = row->fabric != HW_MAIN || row->kind == HW_ROW_JOINING;
    row->has_dial = of_hem ? hem->has_dials : main->has_dial;
    double dials[HW_FABRIC_COUNT] = {
        [HW_MAIN] = row->kind == HW_ROW_JOINING ? hem->joining_dial : main->dial,
        [HW_BAND] = hem->band_dial,
        [HW_FACING] = hem->facing_dial,
    };
    row->dial = row->has_dial ? dials[row->fabric] : 0;
}

static const hw_motif *motif_of(const hw_row_frame *f, int band)
{
    return band == 0 ? f->task->motif : f->task->bands[band - 1].motif;
}

static hw_row_setting setting_of(const hw_row_frame *f, const spot *at, hw_row_kind kind)
{
    static const hw_row_setting in_band[] = {
        [HW_WORK_HAND] = HW_SET_NONE,
        [HW_WORK_PICKED] = HW_SET_TWO_PICKED,
        [HW_WORK_DIRECT] = HW_SET_TWO_DIRECT,
        [HW_WORK_PRESELECT] = HW_SET_TWO_SELECT,
    };
    _Static_assert(sizeof in_band / sizeof in_band[0] == HW_WORK_COUNT, "for each way");
    if (f->work == HW_WORK_HAND) {
        return HW_SET_NONE;
    }
    if (kind == HW_ROW_SETUP) {
        return HW_SET_SELECT;
    }
    if (kind != HW_ROW_BAND) {
        return HW_SET_PLAIN;
    }
    hw_row_work work = hw_row_frame_work(f, at->band);
    bool last = at->band_row == hw_row_frame_band_rows(f, at->band);
    return last && work == HW_WORK_PRESELECT ? HW_SET_TWO_LAST : in_band[work];
}

/* A row of the card, from 1; a joined card runs round. */
static int card_row(const hw_rowplan_task *task, int row)
{
    return task->card_rows > 0 ? hw_num_mod(row - 1, task->card_rows) + 1 : row;
}

static void set_card(const hw_row_frame *f, const spot *at, hw_row *row)
{
    static const hw_row_card cards[] = {
        [HW_SET_NONE] = HW_CARD_UNREAD,
        [HW_SET_PLAIN] = HW_CARD_UNREAD,
        [HW_SET_SELECT] = HW_CARD_HELD,
        [HW_SET_TWO_SELECT] = HW_CARD_MOVING,
        [HW_SET_TWO_LAST] = HW_CARD_UNREAD,
        [HW_SET_TWO_DIRECT] = HW_CARD_MOVING,
        [HW_SET_TWO_PICKED] = HW_CARD_UNREAD,
    };
    _Static_assert(sizeof cards / sizeof cards[0] == HW_SET_COUNT, "for each setting");
    const hw_rowplan_task *task = f->task;
    row->card = cards[row->setting];
    if (row->card == HW_CARD_UNREAD) {
        return;
    }
    int ahead = at->band_row - 1 + hw_row_frame_lead(f, at->band); /* rows above the band's first */
    int start = at->band == 0 ? task->card_row : task->bands[at->band - 1].card_row;
    int read = (start > 0 ? start : 1) + ahead;
    int offset = task->machine->reader_offset;
    row->card_read = card_row(task, read);
    row->card_view = offset < 0 ? 0 : card_row(task, read + offset);
}

static void set_band(const hw_row_frame *f, const spot *at, hw_row *row)
{
    row->band = -1;
    row->feeders[HW_FEEDER_FIRST] = HW_YARN_MAIN;
    if (row->kind != HW_ROW_BAND) {
        return;
    }
    const hw_motif *motif = motif_of(f, at->band);
    row->band = at->band;
    row->chart_row = at->band_row;
    /* By hand a row without a contrast stitch leaves that yarn lying; a carriage takes it along. */
    bool both =
        f->work != HW_WORK_HAND || motif->rows[motif->chart.rows - at->band_row].contrast_sts > 0;
    row->feeders[HW_FEEDER_SECOND] = both ? HW_YARN_CONTRAST : HW_YARN_NONE;
}

/* What shaping takes of an edge it takes of the stitches outside the figures. */
static void set_figures(const hw_row_frame *f, const spot *at, hw_row *row)
{
    const hw_rowplan_task *task = f->task;
    const hw_fit *fit = task->fit;
    if (row->kind != HW_ROW_BAND || row->part != HW_PART_WHOLE) {
        return;
    }
    hw_row_figures *figures = &row->figures;
    const hw_row_band *further = at->band > 0 ? &task->bands[at->band - 1] : NULL;
    figures->motifs = further != NULL ? further->motifs : fit->motifs;
    figures->gap = motif_of(f, at->band)->gap;
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        bool shaped = further != NULL && task->shape != NULL;
        int taken = shaped ? task->shape->inset_sts[side][at->main_row] : 0;
        figures->edge_sts[side] = fit->edge_sts[side];
        figures->plain_sts[side] =
            further != NULL ? further->plain_sts[side] - taken : fit->margin[side];
    }
}

static int half_down(int halves)
{
    return (halves - hw_num_mod(halves, 2)) / 2;
}

/* The needles, counted as on a bed with the piece's left edge at its right, for hand work too. */
static void set_needles(const hw_row_frame *f, const spot *at, hw_row *row)
{
    const hw_fit *fit = f->task->fit;
    const hw_shape *shape = at->main_row < 0 ? NULL : f->task->shape;
    bool placed = f->work != HW_WORK_HAND && f->task->place != NULL;
    bool below = at->number < hw_row_frame_band_first(f, 0) + f->task->hem->band_rows;
    int edges = fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT];
    int sts = below ? fit->cast_on_sts : fit->main_sts + edges;
    hw_place_on_bed nowhere = { .first = 0 };
    int first = hw_bed_rehung_first(
        placed ? f->task->place : &nowhere, fit->cast_on_sts - sts, f->task->mirrored);
    first += placed ? hw_row_frame_aside(f, at->number) : 0;
    int last = first + sts - 1;
    if (shape != NULL) {
        int middle_halves = first + fit->edge_sts[HW_RIGHT] + last + 1 - fit->edge_sts[HW_LEFT];
        int drawn_row = at->main_row < shape->rows ? at->main_row : shape->rows - 1;
        first += hw_shape_inset(shape, at->main_row, HW_RIGHT);
        last -= hw_shape_inset(shape, at->main_row, HW_LEFT);
        if (row->part == HW_PART_LEFT) {
            int halves = middle_halves + shape->neck_halves[HW_LEFT][drawn_row];
            first = half_down(halves + 1);
        } else if (row->part == HW_PART_RIGHT) {
            int halves = middle_halves - shape->neck_halves[HW_RIGHT][drawn_row];
            last = half_down(halves) - 1;
        }
    }
    row->sts = last - first + 1;
    row->first = placed ? first : 0;
    row->last = placed ? last : 0;
}

static hw_row make_row(const hw_row_frame *f, int number, hw_row_part part)
{
    spot at = find_spot(f, number);
    hw_row row = { .number = number, .kind = kind_of(f, &at), .part = part };
    row.before = hw_row_frame_before(f, number);
    row.after = hw_row_frame_before(f, number + 1);
    row.right_side = f->work == HW_WORK_HAND && row.before == HW_RIGHT;
    row.setting = setting_of(f, &at, row.kind);
    set_dial(f, &row);
    set_card(f, &at, &row);
    set_band(f, &at, &row);
    set_figures(f, &at, &row);
    set_needles(f, &at, &row);
    return row;
}

/* The part of the i-th row, and its number: the half where the parting row begins goes first. */
static hw_row row_at(const hw_row_frame *f, int i)
{
    int whole = f->task->hem->total_rows + f->rows[HW_PART_WHOLE];
    if (i < whole) {
        return make_row(f, i + 1, HW_PART_WHOLE);
    }
    hw_side edge = hw_row_frame_edge(f, hw_row_frame_before(f, whole + 1));
    hw_row_part first = hw_row_frame_half(edge);
    int before = f->rows[first] - f->neck; /* rows of the half that goes first */
    if (i < whole + before) {
        return make_row(f, i + 1, first);
    }
    return make_row(f, i + 1 - before, hw_row_frame_half(hw_row_frame_other(edge)));
}

/* A whole piece has no rows of halves. */
static int count_rows(const hw_row_frame *f)
{
    int count = f->task->hem->total_rows + f->rows[HW_PART_WHOLE];
    for (int part = HW_PART_LEFT; part < HW_PART_COUNT && f->neck < f->main_rows; part++) {
        count += f->rows[part] - f->neck;
    }
    return count;
}

static hw_status check_band(const hw_row_frame *f, int band, hw_err *err)
{
    int rows = hw_row_frame_band_rows(f, band);
    int row = f->task->bands[band - 1].row;
    int least = hw_row_frame_band_least(f, band);
    int most = f->main_rows - rows;
    if (row >= least && row <= most) {
        return HW_OK;
    }
    if (least > most) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a further band of %d rows has no room in the %d rows above the hem: leave it out, or "
            "make the piece longer",
            rows, f->main_rows);
    }
    return hw_err_set(err, HW_ERR_RANGE,
        "a further band of %d rows cannot begin in row %d above the hem: begin it in one of the "
        "rows %d to %d",
        rows, row + 1, least + 1, most + 1);
}

static hw_status check(const hw_row_frame *f, hw_err *err)
{
    const hw_rowplan_task *task = f->task;
    assert(task->hem->below_rows > 0);
    assert((task->motif == NULL ? 0 : task->motif->chart.rows) == task->hem->band_rows);
    assert(task->shape == NULL || task->shape->visible_sts == task->fit->main_sts);
    assert(f->main_rows > 0 || !hw_row_frame_joins(f));
    assert(task->round_rows == 0 || task->round_rows >= task->hem->total_rows);
    assert(task->round_rows <= task->hem->total_rows + f->neck);
    hw_status status = HW_OK;
    for (int b = 1; b <= task->band_count && status == HW_OK; b++) {
        status = check_band(f, b, err);
    }
    return status;
}

hw_status hw_rowplan_make(
    const hw_rowplan_task *task, hw_arena *arena, hw_rowplan *out, hw_err *err)
{
    hw_row_frame frame = hw_row_frame_of(task);
    hw_status status = check(&frame, err);
    if (status != HW_OK) {
        return status;
    }
    int count = count_rows(&frame);
    hw_row *rows = hw_arena_get(arena, (size_t)count, sizeof *rows);
    hw_row_hands hands = { .frame = &frame, .arena = arena, .refused = rows == NULL };
    for (int i = 0; i < count && !hands.refused; i++) {
        rows[i] = row_at(&frame, i);
        hw_row_hands_add(&hands, &rows[i], i == count - 1);
    }
    hw_rowplan plan = {
        .work = frame.work,
        .start = frame.home,
        .cast_on = task->cast_on,
        .closing = task->closing,
        .round_rows = hw_row_frame_rounds(&frame),
        .has_needles = task->place != NULL && frame.work != HW_WORK_HAND,
        .trim = task->trim,
        .hem_rows = task->hem->total_rows,
        .rows = rows,
        .count = count,
        .hands = hands.list,
        .hand_count = hands.count,
    };
    status = hands.refused ? HW_ERR_NOMEM : hw_row_findings(&frame, arena, &plan);
    if (status != HW_OK) {
        return hw_err_set(err, status, "%s", "there is not enough memory for the rows of a piece");
    }
    *out = plan;
    return HW_OK;
}
