/* The parts of the JSON document above the hems: drafts, bands higher up, edges that are sewn.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/jsonparts.h"
#include "write/jsonrows.h"
#include "write/rowblocks.h"

static json_t *point(hw_json_writer *w, const hw_outline_point *p)
{
    static const char *const curves[] = {
        [HW_CURVE_STRAIGHT] = "straight",
        [HW_CURVE_MONOTONE] = "monotone",
        [HW_CURVE_NATURAL] = "natural",
    };
    _Static_assert(sizeof curves / sizeof curves[0] == HW_CURVE_COUNT, "a word for each curve");
    json_t *object = json_object();
    hw_json_put(w, object, "across_cm", json_real(p->across_cm));
    hw_json_put(w, object, "up_cm", json_real(p->up_cm));
    hw_json_put(w, object, "curve", json_string(curves[p->curve]));
    hw_json_put(w, object, "stretch", json_string(p->stretch));
    return object;
}

static json_t *edges(hw_json_writer *w, const hw_outline *outline)
{
    json_t *object = json_object();
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        json_t *array = json_array();
        for (int k = 0; k < outline->edges[e].count; k++) {
            hw_json_add(w, array, point(w, &outline->edges[e].points[k]));
        }
        hw_json_put(w, object, hw_edge_name((hw_edge)e), array);
    }
    return object;
}

static json_t *per_row(hw_json_writer *w, const int *values, int count)
{
    if (values == NULL) {
        return json_null();
    }
    json_t *array = json_array();
    for (int i = 0; i < count; i++) {
        hw_json_add(w, array, json_integer(values[i]));
    }
    return array;
}

static json_t *heights(hw_json_writer *w, const double *cm, int count)
{
    json_t *array = json_array();
    for (int i = 0; i < count; i++) {
        hw_json_add(w, array, json_real(cm[i]));
    }
    return array;
}

static json_t *steps(hw_json_writer *w, const hw_shape_steps *list)
{
    json_t *array = json_array();
    for (int k = 0; k < list->count; k++) {
        const hw_shape_step *step = &list->list[k];
        json_t *object = json_object();
        hw_json_put(w, object, "kind", json_string(hw_rowwords_step(step->kind)));
        hw_json_put(w, object, "place", json_string(hw_rowwords_place(step->place)));
        hw_json_put(w, object, "row", json_integer(step->row));
        hw_json_put(w, object, "every", json_integer(step->every));
        hw_json_put(w, object, "times", json_integer(step->times));
        hw_json_put(w, object, "sts", json_integer(step->sts));
        hw_json_put(w, object, "left_sts", json_integer(step->left_sts));
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *draft(hw_json_writer *w, int size, int piece)
{
    const hw_whole *whole = w->plan->whole;
    const hw_draft *d = hw_plan_draft(whole, size, piece);
    const hw_plan *part = hw_plan_find(whole, piece).plan;
    json_t *object = json_object();
    int rows = d->shape.rows;
    hw_json_put(w, object, "size", json_string(w->plan->finished.names[size]));
    hw_json_put(w, object, "piece", json_string(whole->project->garment.pieces[piece].name));
    hw_json_put(w, object, "hem_rows", json_integer(part->hem.total_rows));
    hw_json_put(w, object, "face_cm", json_real(part->hem.face_cm));
    hw_json_put(w, object, "rows", json_integer(rows));
    hw_json_put(w, object, "visible_sts", json_integer(d->shape.visible_sts));
    hw_json_put(w, object, "sts_per_cm", json_real(d->task.sts_per_cm));
    hw_json_put(w, object, "round_rows", json_integer(d->round_rows));
    hw_json_put(w, object, "first_start", json_string(hw_side_name(d->shape.first_start)));
    hw_json_put(w, object, "top_cm", json_real(d->outline.top_cm));
    hw_json_put(w, object, "slit_cm", json_real(d->outline.slit_cm));
    hw_json_put(w, object, "area_cm2", json_real(d->area_cm2));
    hw_json_put(w, object, "edges", edges(w, &d->outline));
    hw_json_put(w, object, "low_cm", heights(w, d->low_cm, rows + 1));
    hw_json_put(w, object, "inset_left_sts", per_row(w, d->shape.inset_sts[HW_LEFT], rows));
    hw_json_put(w, object, "inset_right_sts", per_row(w, d->shape.inset_sts[HW_RIGHT], rows));
    hw_json_put(w, object, "neck_row",
        d->shape.neck_row < rows ? json_integer(d->shape.neck_row) : json_null());
    hw_json_put(w, object, "neck_left_halves", per_row(w, d->shape.neck_halves[HW_LEFT], rows));
    hw_json_put(w, object, "neck_right_halves", per_row(w, d->shape.neck_halves[HW_RIGHT], rows));
    hw_json_put(w, object, "steps", steps(w, &d->steps));
    return object;
}

void hw_json_drafts(hw_json_writer *w)
{
    const hw_whole *whole = w->plan->whole;
    int pieces = whole != NULL ? whole->project->garment.piece_count : 0;
    for (int i = 0; i < w->plan->finished.count * pieces; i++) {
        if (hw_plan_draft(whole, i / pieces, i % pieces)->drawn) {
            hw_json_item(w, draft(w, i / pieces, i % pieces));
        }
    }
}

void hw_json_rowplans(hw_json_writer *w)
{
    int count = 0;
    const hw_row_block *blocks = hw_row_blocks(w->plan, w->arena, &count);
    if (blocks == NULL) {
        w->status = HW_ERR_NOMEM;
        return;
    }
    hw_json_rows(w, blocks, count);
}

json_t *hw_json_joins(hw_json_writer *w)
{
    json_t *array = json_array();
    const hw_whole *whole = w->plan->whole;
    int joins = whole != NULL ? whole->project->garment.join_count : 0;
    for (int i = 0; i < w->plan->finished.count * joins; i++) {
        const hw_joint_edges *join = &whole->project->garment.joins[i % joins];
        json_t *object = json_object();
        hw_json_put(w, object, "size", json_string(w->plan->finished.names[i / joins]));
        hw_json_put(w, object, "edges", json_string(join->text));
        hw_json_put(w, object, "first_cm", json_real(whole->joins[i].cm[0]));
        hw_json_put(w, object, "other_cm", json_real(whole->joins[i].cm[1]));
        hw_json_put(w, object, "within_cm", json_real(join->within_cm));
        hw_json_put(w, object, "closes", json_boolean(whole->joins[i].closes));
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *upper(hw_json_writer *w, int band, int size, int piece)
{
    const hw_whole *whole = w->plan->whole;
    hw_plan_piece at = hw_plan_find(whole, piece);
    int cell = size * at.plan->project->garment.piece_count + at.piece;
    const hw_upper *u = &at.plan->drafts[cell].uppers[band];
    json_t *object = json_object();
    hw_json_put(w, object, "band", json_string(whole->uppers[band].input->name));
    hw_json_put(w, object, "size", json_string(w->plan->finished.names[size]));
    hw_json_put(w, object, "piece", json_string(whole->project->garment.pieces[piece].name));
    hw_json_put(w, object, "first_row", json_integer(u->first_row));
    hw_json_put(w, object, "rows", json_integer(u->rows));
    hw_json_put(w, object, "underarm_rows",
        u->underarm_rows < 0 ? json_null() : json_integer(u->underarm_rows));
    hw_json_put(w, object, "visible_sts", json_integer(u->sts));
    hw_json_put(w, object, "shaped", json_boolean(u->shaped));
    hw_json_put(w, object, "card_column",
        u->card_column < 0 ? json_null() : json_integer(u->card_column + 1));
    bool bed = whole->project->machine.pitch_cm > 0;
    hw_json_put(w, object, "needles_right", bed ? json_integer(u->aside) : json_null());
    hw_json_put(w, object, "own_card", json_boolean(u->own_card));
    hw_json_put(w, object, "motifs", json_integer(u->motifs));
    hw_json_put(w, object, "left_margin_sts", json_integer(u->margin[HW_LEFT]));
    hw_json_put(w, object, "right_margin_sts", json_integer(u->margin[HW_RIGHT]));
    return object;
}

json_t *hw_json_uppers(hw_json_writer *w)
{
    json_t *array = json_array();
    const hw_whole *whole = w->plan->whole;
    int pieces = whole != NULL ? whole->project->garment.piece_count : 1;
    int sizes = w->plan->finished.count;
    for (int i = 0; whole != NULL && i < whole->upper_count * sizes * pieces; i++) {
        int band = i / (sizes * pieces);
        int piece = i % pieces;
        if (whole->uppers[band].on[piece]) {
            hw_json_add(w, array, upper(w, band, i / pieces % sizes, piece));
        }
    }
    return array;
}
