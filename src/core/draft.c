/* Rows counted from the hem to the top, bands between them, then the outline cut into stitches.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/draft.h"

#include <string.h>

#include "core/num.h"

typedef struct {
    const hw_draft_task *task;
    hw_arena *arena;
    hw_draft draft;
    hw_upper *uppers;
    int room;          /* rows for which low_cm has room */
    bool side_settled; /* a band below the underarm has fixed how high that is */
    hw_err *err;
} drafting;

static hw_status no_memory(const drafting *d)
{
    return hw_err_set(d->err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

static const char *piece_name(const drafting *d)
{
    return d->task->outline.piece->name;
}

static const char *size_name(const drafting *d)
{
    return d->task->outline.finished->names[d->task->outline.size];
}

static double row_cm(const drafting *d, hw_fabric fabric)
{
    return hw_gauge_length_cm(&d->task->gauge[fabric], 1);
}

/* The height at which a band's first row would begin. */
static hw_status wished_height(
    const drafting *d, const hw_upper_wish *wish, hw_upper *upper, double *out_cm)
{
    upper->rows = wish->motif->chart.rows;
    upper->underarm_rows = -1;
    if (wish->above_fold_cm > 0) {
        *out_cm = wish->above_fold_cm;
        return HW_OK;
    }
    double underarm_cm = hw_outline_height(&d->draft.outline, "side");
    if (underarm_cm < 0) {
        hw_status status = hw_err_set(d->err, HW_ERR_MISSING,
            "the band `%.40s` lies below the underarm, but the outline of `%.60s` has no stretch "
            "called `side`, which ends there; write `above fold` instead",
            wish->name, piece_name(d));
        return hw_err_place(d->err, status, wish->line, 0);
    }
    upper->underarm_rows =
        hw_num_nearest(hw_gauge_rows(&d->task->gauge[HW_MAIN], wish->below_underarm_cm));
    *out_cm =
        underarm_cm - upper->underarm_rows * row_cm(d, HW_MAIN) - upper->rows * row_cm(d, HW_BAND);
    return HW_OK;
}

static hw_status no_room(const drafting *d, const hw_upper_wish *wish, const char *why)
{
    hw_status status = hw_err_set(d->err, HW_ERR_RANGE,
        "size %s: the band `%.40s` has no room on `%.60s`: it would %s; put it %s, or take the "
        "piece out of `on`",
        size_name(d), wish->name, piece_name(d), why, why[0] == 's' ? "higher" : "lower");
    return hw_err_place(d->err, status, wish->line, 0);
}

/* Which of the wishes not placed yet comes next from below; -1 when all are. */
static hw_status next_band(const drafting *d, const bool *placed, int *next, double *at_cm)
{
    *next = -1;
    for (int i = 0; i < d->task->wish_count; i++) {
        double cm = 0;
        if (placed[i] || d->task->wishes[i].motif == NULL) {
            continue;
        }
        hw_status status = wished_height(d, &d->task->wishes[i], &d->uppers[i], &cm);
        if (status != HW_OK) {
            return status;
        }
        if (*next < 0 || cm < *at_cm) {
            *next = i;
            *at_cm = cm;
        }
    }
    return HW_OK;
}

/* Rows as they are stacked: where the next begins, and how many there are. */
typedef struct {
    double at_cm;
    int rows;
} stack;

static hw_status pile(drafting *d, stack *s, int rows, double each_cm)
{
    if (rows > d->room - s->rows) {
        return hw_err_set(d->err, HW_ERR_RANGE,
            "size %s: `%.60s` would have more than %d rows; look at its length and at the gauge",
            size_name(d), piece_name(d), HW_MAX_ROWS);
    }
    for (int i = 0; i < rows; i++) {
        s->at_cm += each_cm;
        d->draft.low_cm[++s->rows] = s->at_cm;
    }
    return HW_OK;
}

/* Plain rows up to a height, so that an even number of rows lie below the band. */
static int rows_to(const drafting *d, const stack *s, double height_cm)
{
    int odd = (d->task->hem_rows + s->rows) % 2;
    double rows = hw_gauge_rows(&d->task->gauge[HW_MAIN], height_cm - s->at_cm);
    return hw_num_nearest_even(rows + odd) - odd;
}

/* The underarm goes where a band below it has it, so that as many rows lie between on every piece,
 * and bands of sewn pieces meet; a second such band is only counted from there. */
static hw_status settle_side(drafting *d, hw_upper *upper)
{
    double by_cm = upper->moved_cm;
    if (upper->underarm_rows < 0) {
        return HW_OK;
    }
    if (d->side_settled) {
        upper->underarm_rows -= hw_num_nearest(hw_gauge_rows(&d->task->gauge[HW_MAIN], by_cm));
        return HW_OK;
    }
    d->side_settled = true;
    upper->moved_cm = 0;
    upper->side_cm = by_cm;
    double underarm_cm = hw_outline_height(&d->draft.outline, "side");
    return hw_outline_raise(&d->draft.outline, underarm_cm, by_cm, d->arena);
}

/* The plain rows below a band that would begin at a height, and the band. */
static hw_status pile_band(drafting *d, stack *s, int band, double at_cm)
{
    const hw_upper_wish *wish = &d->task->wishes[band];
    double top_cm = d->draft.outline.top_cm;
    int before = rows_to(d, s, at_cm);
    if (before < 0) {
        return no_room(d, wish, "start below the top of the hem or of another band");
    }
    if (at_cm > top_cm) {
        return no_room(d, wish, "reach above the top");
    }
    hw_upper *upper = &d->uppers[band];
    hw_status status = pile(d, s, before, row_cm(d, HW_MAIN));
    upper->first_row = s->rows;
    upper->moved_cm = s->at_cm - at_cm;
    status = status == HW_OK ? pile(d, s, upper->rows, row_cm(d, HW_BAND)) : status;
    status = status == HW_OK ? settle_side(d, upper) : status;
    bool above = s->at_cm > d->draft.outline.top_cm;
    return status == HW_OK && above ? no_room(d, wish, "reach above the top") : status;
}

static hw_status stack_rows(drafting *d)
{
    bool placed[HW_MAX_BANDS] = { false };
    stack s = { .at_cm = d->task->outline.face_cm };
    d->draft.low_cm[0] = s.at_cm;
    int next = 0;
    double at_cm = 0;
    hw_status status = next_band(d, placed, &next, &at_cm);
    while (status == HW_OK && next >= 0) {
        status = pile_band(d, &s, next, at_cm);
        placed[next] = true;
        status = status == HW_OK ? next_band(d, placed, &next, &at_cm) : status;
    }
    if (status != HW_OK) {
        return status;
    }
    double rest_cm = d->draft.outline.top_cm - s.at_cm;
    int rest = hw_num_nearest(hw_gauge_rows(&d->task->gauge[HW_MAIN], rest_cm));
    rest = rest < 0 ? 0 : rest;
    if (s.rows + rest < 1) {
        return hw_err_set(d->err, HW_ERR_RANGE,
            "size %s: `%.60s` is no longer than its hem; look at its length and at the hem's depth",
            size_name(d), piece_name(d));
    }
    status = pile(d, &s, rest, row_cm(d, HW_MAIN));
    d->draft.task.rows = s.rows;
    return status;
}

/* As many rows as could lie between hem and top, and the rows of bands that reach above it. */
static int most_rows(const drafting *d)
{
    double shortest_cm = row_cm(d, HW_BAND);
    shortest_cm = row_cm(d, HW_MAIN) < shortest_cm ? row_cm(d, HW_MAIN) : shortest_cm;
    double rows = (d->draft.outline.top_cm - d->task->outline.face_cm) / shortest_cm;
    int most = 2 + (rows > 0 ? hw_num_up(rows) : 0);
    for (int i = 0; i < d->task->wish_count; i++) {
        const hw_motif *motif = d->task->wishes[i].motif;
        most += motif != NULL ? motif->chart.rows + 2 : 0;
    }
    return most < HW_MAX_ROWS ? most : HW_MAX_ROWS;
}

static int most(int a, int b)
{
    return a > b ? a : b;
}

/* The whole motifs of a band higher up, centred on what its narrowest row has. */
static hw_status fit_upper(const drafting *d, const hw_upper_wish *wish, hw_upper *upper)
{
    const hw_motif *motif = wish->motif;
    if (wish->motif == NULL) {
        return HW_OK;
    }
    int last = upper->first_row + upper->rows - 1;
    if (d->draft.shape.neck_row <= last) {
        return no_room(
            d, wish, d->draft.outline.slit_cm > 0 ? "reach into the slit" : "reach into the neck");
    }
    if (d->draft.shape.rows <= last) {
        return no_room(d, wish, "reach into the point at the top");
    }
    upper->sts = d->task->main_sts;
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        const int *inset_sts = d->draft.shape.inset_sts[side];
        upper->taken_sts[side] = inset_sts[upper->first_row];
        for (int r = upper->first_row; r <= last; r++) {
            upper->shaped = upper->shaped || inset_sts[r] != inset_sts[upper->first_row];
            upper->taken_sts[side] = most(upper->taken_sts[side], inset_sts[r]);
        }
        upper->sts -= upper->taken_sts[side];
    }
    if (upper->sts < 1) {
        return no_room(d, wish, "lie where its edges lean past each other");
    }
    upper->motifs = (upper->sts + motif->gap) / motif->repeat;
    int plain = upper->sts;
    if (upper->motifs > 0) {
        plain -= upper->motifs * motif->repeat - motif->gap;
    }
    /* Where they differ, those of a mirrored piece are mirrored. */
    bool mirrored = d->task->outline.piece->outline->mirrored;
    hw_side narrow = mirrored ? HW_RIGHT : HW_LEFT;
    upper->margin[narrow] = plain / 2;
    upper->margin[mirrored ? HW_LEFT : HW_RIGHT] = plain - plain / 2;
    upper->width_cm = hw_gauge_width_cm(&d->task->gauge[HW_BAND], upper->sts);
    return HW_OK;
}

static hw_status make_shape(drafting *d)
{
    const hw_draft_task *task = d->task;
    d->draft.task.outline = &d->draft.outline;
    d->draft.task.piece = piece_name(d);
    d->draft.task.size = size_name(d);
    d->draft.task.sts_per_cm = hw_gauge_sts(&task->gauge[HW_MAIN], 1);
    d->draft.task.low_cm = d->draft.low_cm;
    d->draft.task.visible_sts = task->main_sts;
    d->draft.task.first_start = task->first_start;
    d->draft.task.right_side_rows = task->hand;
    d->draft.task.first_is_right_side = task->first_is_right_side;
    d->draft.task.short_rows = task->short_rows;
    d->draft.task.round_rows = task->round_rows;
    d->draft.round_rows = task->round_rows;
    hw_status status = hw_shape_make(&d->draft.task, d->arena, &d->draft.shape, d->err);
    if (status != HW_OK) {
        return status;
    }
    status = hw_shape_steps_of(&d->draft.task, &d->draft.shape, d->arena, &d->draft.steps);
    return status == HW_OK ? hw_outline_area(&d->draft.outline, &d->draft.area_cm2) : status;
}

/* Each stretch once, where an edge first comes to it; the top as a whole. */
static hw_status measure_edge(drafting *d, hw_edge which)
{
    const hw_edge_line *edge = &d->draft.outline.edges[which];
    const char *before = NULL;
    hw_status status = HW_OK;
    for (int i = 1; i < edge->count && status == HW_OK; i++) {
        const char *stretch = which == HW_EDGE_TOP ? NULL : edge->points[i].stretch;
        bool same = i > 1 && (stretch == NULL || strcmp(stretch, before) == 0);
        before = stretch;
        if (!same) {
            hw_draft_length *length = &d->draft.lengths[d->draft.length_count++];
            *length = (hw_draft_length){ .edge = which, .stretch = stretch };
            status = hw_edge_length(edge, stretch, &length->cm);
        }
    }
    return status;
}

static hw_status measure_edges(drafting *d)
{
    static const hw_edge edges[] = { HW_EDGE_LEFT, HW_EDGE_RIGHT, HW_EDGE_NECK_RIGHT, HW_EDGE_TOP };
    int most = 0;
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        most += d->draft.outline.edges[e].count;
    }
    d->draft.lengths = hw_arena_get(d->arena, (size_t)most, sizeof *d->draft.lengths);
    hw_status status = d->draft.lengths == NULL ? HW_ERR_NOMEM : HW_OK;
    for (size_t e = 0; e < sizeof edges / sizeof edges[0] && status == HW_OK; e++) {
        status = measure_edge(d, edges[e]);
    }
    return status;
}

hw_status hw_draft_make(const hw_draft_task *task, hw_arena *arena, hw_draft *out, hw_err *err)
{
    drafting d = { .task = task, .arena = arena, .err = err, .draft = { .drawn = true } };
    hw_status status = hw_outline_make(&task->outline, arena, &d.draft.outline, err);
    if (status != HW_OK) {
        return status;
    }
    d.room = most_rows(&d);
    d.draft.low_cm = hw_arena_get(arena, (size_t)d.room + 1, sizeof *d.draft.low_cm);
    d.uppers = hw_arena_get(arena, HW_MAX_BANDS, sizeof *d.uppers);
    if (d.draft.low_cm == NULL || d.uppers == NULL) {
        return no_memory(&d);
    }
    status = stack_rows(&d);
    status = status == HW_OK ? make_shape(&d) : status;
    status = status == HW_OK ? measure_edges(&d) : status;
    for (int i = 0; i < task->wish_count && status == HW_OK; i++) {
        status = fit_upper(&d, &task->wishes[i], &d.uppers[i]);
    }
    if (status != HW_OK) {
        return hw_err_set(err, status, "%s",
            status == HW_ERR_NOMEM ? "there is not enough memory for this plan"
                                   : "an outline could not be followed; look at its curves, or "
                                     "draw them with straight ways");
    }
    d.draft.uppers = d.uppers;
    *out = d.draft;
    out->task.outline = &out->outline;
    return HW_OK;
}

int hw_upper_needle(
    const hw_upper *upper, const hw_place_on_bed *place, const hw_fit *fit, bool mirrored)
{
    int first = hw_bed_rehung_first(place, fit->visible_sts - fit->main_sts, mirrored);
    return first + fit->edge_sts[HW_RIGHT] + upper->taken_sts[HW_RIGHT] + upper->margin[HW_RIGHT] +
           upper->aside;
}
