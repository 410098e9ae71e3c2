/* Rows as JSON; the format is told in the header.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/jsonrows.h"

static json_t *integer_or_null(bool known, int number)
{
    return known ? json_integer(number) : json_null();
}

static json_t *text_or_null(bool known, const char *text)
{
    return known ? json_string(text) : json_null();
}

static hw_side other(hw_side side)
{
    return side == HW_LEFT ? HW_RIGHT : HW_LEFT;
}

static json_t *step(hw_json_writer *w, const hw_shape_step *s)
{
    if (s == NULL) {
        return json_null();
    }
    json_t *object = json_object();
    hw_json_put(w, object, "kind", json_string(hw_rowwords_step(s->kind)));
    hw_json_put(w, object, "place", json_string(hw_rowwords_place(s->place)));
    return object;
}

static json_t *hand(hw_json_writer *w, const hw_handwork *h)
{
    bool numbered = h->kind == HW_HAND_COUNTER || h->kind == HW_HAND_HOLE || h->number != 0;
    bool counted = h->kind == HW_HAND_SHAPE || h->sts > 0;
    json_t *object = json_object();
    hw_json_put(w, object, "what", json_string(hw_rowwords_hand(h->kind)));
    hw_json_put(w, object, "when", json_string(h->after ? "after" : "before"));
    hw_json_put(w, object, "stitches", integer_or_null(counted, h->sts));
    hw_json_put(w, object, "number", integer_or_null(numbered, h->number));
    hw_json_put(w, object, "step", step(w, h->step));
    return object;
}

static json_t *hands(hw_json_writer *w, const hw_rowplan *plan, const hw_row *row)
{
    json_t *array = json_array();
    for (int i = 0; i < row->hand_count; i++) {
        hw_json_add(w, array, hand(w, &plan->hands[row->first_hand + i]));
    }
    return array;
}

static json_t *dial(const hw_row *row)
{
    if (row->loosest) {
        return json_string("loosest");
    }
    return row->has_dial ? json_real(row->dial) : json_null();
}

static json_t *feeders(hw_json_writer *w, const hw_row *row)
{
    json_t *array = json_array();
    for (int i = 0; i < HW_FEEDER_COUNT; i++) {
        hw_json_add(w, array, json_string(hw_rowwords_yarn(row->feeders[i])));
    }
    return array;
}

static void card(hw_json_writer *w, json_t *object, const hw_row *row)
{
    hw_json_put(w, object, "card", json_string(hw_rowwords_card(row->card)));
    hw_json_put(w, object, "card_row", integer_or_null(row->card_read > 0, row->card_read));
    hw_json_put(w, object, "card_row_in_view", integer_or_null(row->card_view > 0, row->card_view));
    hw_json_put(w, object, "band", integer_or_null(row->chart_row > 0, row->band));
    hw_json_put(w, object, "chart_row", integer_or_null(row->chart_row > 0, row->chart_row));
}

static void sides(hw_json_writer *w, json_t *object, const hw_row *row, bool bed)
{
    hw_json_put(w, object, "carriage_before", text_or_null(bed, hw_side_name(row->before)));
    hw_json_put(w, object, "carriage_after", text_or_null(bed, hw_side_name(row->after)));
    hw_json_put(
        w, object, "begins_at", json_string(hw_side_name(bed ? other(row->before) : row->before)));
    hw_json_put(w, object, "right_side", bed ? json_null() : json_boolean(row->right_side));
}

/* A trim that closes to a ring is a whole round by itself. */
static json_t *round_sts(const hw_rowplan *plan, const hw_row *row)
{
    if (row->number > plan->round_rows) {
        return json_null();
    }
    return json_integer(plan->tube != NULL ? plan->tube->sts[row->number - 1] : row->sts);
}

static json_t *round_pieces(hw_json_writer *w, const hw_rowplan *plan)
{
    json_t *array = json_array();
    for (int k = 0; plan->tube != NULL && k < plan->tube->count; k++) {
        hw_json_add(w, array, json_string(plan->tube->names[k]));
    }
    return array;
}

static json_t *figures(hw_json_writer *w, const hw_row_figures *f)
{
    if (f->motifs == 0) {
        return json_null();
    }
    json_t *object = json_object();
    hw_json_put(w, object, "motifs", json_integer(f->motifs));
    hw_json_put(w, object, "gap", json_integer(f->gap));
    hw_json_put(w, object, "left_sts", json_integer(f->edge_sts[HW_LEFT] + f->plain_sts[HW_LEFT]));
    hw_json_put(
        w, object, "right_sts", json_integer(f->edge_sts[HW_RIGHT] + f->plain_sts[HW_RIGHT]));
    return object;
}

static json_t *one_row(hw_json_writer *w, const hw_rowplan *plan, const hw_row *row)
{
    bool bed = plan->work != HW_WORK_HAND;
    json_t *object = json_object();
    hw_json_put(w, object, "number", json_integer(row->number));
    hw_json_put(w, object, "part", json_string(hw_rowwords_part(row->part)));
    hw_json_put(w, object, "kind", json_string(hw_rowwords_kind(row->kind)));
    hw_json_put(w, object, "fabric", json_string(hw_fabric_name(row->fabric)));
    sides(w, object, row, bed);
    hw_json_put(w, object, "dial", dial(row));
    hw_json_put(w, object, "setting", json_string(hw_rowwords_setting(row->setting)));
    card(w, object, row);
    hw_json_put(w, object, "figures", figures(w, &row->figures));
    hw_json_put(w, object, "feeders", feeders(w, row));
    hw_json_put(w, object, "first_needle", integer_or_null(plan->has_needles, row->first));
    hw_json_put(w, object, "last_needle", integer_or_null(plan->has_needles, row->last));
    hw_json_put(w, object, "stitches", json_integer(row->sts));
    hw_json_put(w, object, "round_stitches", round_sts(plan, row));
    hw_json_put(w, object, "hand", hands(w, plan, row));
    return object;
}

static json_t *rows(hw_json_writer *w, const hw_rowplan *plan)
{
    json_t *array = json_array();
    for (int i = 0; i < plan->count; i++) {
        hw_json_add(w, array, one_row(w, plan, &plan->rows[i]));
    }
    return array;
}

static json_t *findings(hw_json_writer *w, const hw_rowplan *plan)
{
    json_t *array = json_array();
    for (int i = 0; i < plan->finding_count; i++) {
        const hw_row_finding *f = &plan->findings[i];
        const char *text = hw_row_finding_text(f, w->arena);
        json_t *object = json_object();
        hw_json_put(w, object, "kind", json_string(hw_rowwords_finding(f->kind)));
        hw_json_put(w, object, "row", json_integer(f->number));
        hw_json_put(w, object, "text", text == NULL ? NULL : json_string(text));
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *block(hw_json_writer *w, const hw_row_block *b)
{
    const hw_rowplan *plan = b->plan;
    json_t *object = json_object();
    hw_json_put(w, object, "piece", json_string(b->piece));
    hw_json_put(w, object, "size", json_string(b->size));
    hw_json_put(w, object, "trim", json_boolean(plan->trim != NULL));
    hw_json_put(w, object, "work", json_string(hw_rowwords_work(plan->work)));
    hw_json_put(w, object, "start_side", json_string(hw_side_name(plan->start)));
    hw_json_put(
        w, object, "cast_on", json_string(plan->cast_on == HW_CAST_ON_OPEN ? "open" : "wrapped"));
    hw_json_put(
        w, object, "closing", json_string(plan->closing == HW_CLOSING_HUNG ? "hung" : "sewn"));
    hw_json_put(w, object, "in_rounds", json_boolean(plan->round_rows > 0));
    hw_json_put(w, object, "round_rows", json_integer(plan->round_rows));
    hw_json_put(w, object, "round_pieces", round_pieces(w, plan));
    hw_json_put(w, object, "hem_rows", json_integer(plan->hem_rows));
    hw_json_put(w, object, "rows", rows(w, plan));
    hw_json_put(w, object, "findings", findings(w, plan));
    return object;
}

void hw_json_rows(hw_json_writer *w, const hw_row_block *blocks, int count)
{
    for (int i = 0; i < count; i++) {
        hw_json_item(w, block(w, &blocks[i]));
    }
}
