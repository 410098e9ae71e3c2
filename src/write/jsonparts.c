/* The parts of the JSON document that tell how sure things are and what else could be done.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/jsonparts.h"

void hw_json_put(hw_json_writer *w, json_t *object, const char *key, json_t *value)
{
    if (json_object_set_new(object, key, value) != 0) {
        w->status = HW_ERR_NOMEM;
    }
}

void hw_json_add(hw_json_writer *w, json_t *array, json_t *value)
{
    if (json_array_append_new(array, value) != 0) {
        w->status = HW_ERR_NOMEM;
    }
}

/* [low, high], or null where it is not known. */
static json_t *interval(hw_json_writer *w, bool known, hw_interval i)
{
    if (!known) {
        return json_null();
    }
    json_t *array = json_array();
    hw_json_add(w, array, json_real(i.low));
    hw_json_add(w, array, json_real(i.high));
    return array;
}

static json_t *real_or_null(bool known, double value)
{
    return known ? json_real(value) : json_null();
}

static const char *const methods[] = {
    [HW_LINE_RATIOS] = "ratios",
    [HW_LINE_FREE] = "line",
    [HW_LINE_ZERO] = "line through zero",
    [HW_LINE_ROBUST] = "robust",
};
_Static_assert(sizeof methods / sizeof methods[0] == HW_LINE_COUNT, "a word for each method");

static json_t *side(hw_json_writer *w, const hw_gauge_side *s)
{
    json_t *object = json_object();
    hw_json_put(w, object, "per_10cm", json_real(s->per_10cm));
    hw_json_put(
        w, object, "interval_95", interval(w, s->has_interval, (hw_interval){ s->low, s->high }));
    hw_json_put(w, object, "error", real_or_null(s->has_interval, s->error));
    hw_json_put(w, object, "freedom", json_integer(s->freedom));
    hw_json_put(w, object, "places", json_integer(s->places));
    hw_json_put(w, object, "method", json_string(s->from_dials ? "dials" : methods[s->kind]));
    hw_json_put(w, object, "edge_cm", json_real(s->edge_cm));
    hw_json_put(w, object, "wash_percent", real_or_null(s->has_wash, s->wash_percent));
    hw_json_put(w, object, "outlier", s->outlier >= 0 ? json_integer(s->outlier + 1) : json_null());
    return object;
}

static json_t *gauge(hw_json_writer *w, const hw_gauge *g)
{
    json_t *object = json_object();
    hw_json_put(w, object, "sts_per_10cm", json_real(g->sts_per_10cm));
    hw_json_put(w, object, "rows_per_10cm", json_real(g->rows_per_10cm));
    hw_json_put(w, object, "mark", json_string(hw_mark_name(g->mark)));
    hw_json_put(w, object, "stitches", side(w, &g->sides[HW_ACROSS]));
    hw_json_put(w, object, "rows", side(w, &g->sides[HW_UP]));
    hw_json_put(w, object, "dial", real_or_null(g->has_dial, g->dial));
    hw_json_put(w, object, "dial_assumed", json_boolean(g->dial_assumed));
    hw_json_put(w, object, "g_per_m2", real_or_null(g->g_per_m2 > 0, g->g_per_m2));
    return object;
}

json_t *hw_json_gauges(hw_json_writer *w)
{
    json_t *object = json_object();
    for (int i = 0; i < HW_FABRIC_COUNT; i++) {
        hw_json_put(w, object, hw_fabric_name((hw_fabric)i), gauge(w, &w->plan->gauge[i]));
    }
    return object;
}

static json_t *window(hw_json_writer *w, const hw_tolerance *t)
{
    json_t *object = json_object();
    hw_json_put(w, object, "width_95_cm", interval(w, t->has_interval, t->width_cm));
    hw_json_put(w, object, "sts_per_10cm_from", json_real(t->sts_per_10cm.low));
    hw_json_put(w, object, "sts_per_10cm_to", real_or_null(t->bounded, t->sts_per_10cm.high));
    hw_json_put(w, object, "fifty_sts_from_cm", real_or_null(t->bounded, t->fifty_cm.low));
    hw_json_put(w, object, "fifty_sts_to_cm", json_real(t->fifty_cm.high));
    return object;
}

json_t *hw_json_tolerances(hw_json_writer *w)
{
    const hw_plan *plan = w->plan;
    int pieces = plan->project->garment.piece_count;
    json_t *array = json_array();
    for (int i = 0; i < plan->finished.count * pieces; i++) {
        json_t *object = json_object();
        hw_json_put(w, object, "size", json_string(plan->finished.names[i / pieces]));
        hw_json_put(
            w, object, "piece", json_string(plan->project->garment.pieces[i % pieces].name));
        hw_json_put(w, object, "band", window(w, &plan->tolerances[i][HW_BAND]));
        hw_json_put(w, object, "main", window(w, &plan->tolerances[i][HW_MAIN]));
        hw_json_add(w, array, object);
    }
    return array;
}

json_t *hw_json_punch(hw_json_writer *w)
{
    const hw_bed_punch *punch = &w->plan->punch;
    if (!w->plan->has_punch) {
        return json_null();
    }
    json_t *object = json_object();
    hw_json_put(w, object, "column", json_integer(punch->column + 1));
    hw_json_put(w, object, "centres_all", json_boolean(punch->centres_all));
    hw_json_put(w, object, "worst_off_centre_needles", json_real(punch->worst_halves / 2.0));
    return object;
}

static const char *const kinds[] = {
    [HW_ALTER_NOTHING] = "as planned",
    [HW_ALTER_GAP] = "gap",
    [HW_ALTER_EASE] = "ease",
    [HW_ALTER_COUNT] = "count",
    [HW_ALTER_MOTIF] = "motif",
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_ALTER_KIND_COUNT, "a word for each kind");

static json_t *alternative(hw_json_writer *w, const hw_alternative *a)
{
    json_t *object = json_object();
    hw_json_put(w, object, "kind", json_string(kinds[a->kind]));
    hw_json_put(w, object, "what", json_string(a->what));
    hw_json_put(w, object, "repeat", json_integer(a->repeat));
    hw_json_put(w, object, "gap", json_integer(a->gap));
    hw_json_put(w, object, "fits_card", json_boolean(a->fits_card));
    hw_json_put(w, object, "longest_float_sts", json_integer(a->longest_float));
    hw_json_put(w, object, "total_cost", real_or_null(a->possible, a->total_cost));
    hw_json_put(w, object, "inside", json_integer(a->inside));
    hw_json_put(w, object, "worst_cm", real_or_null(a->possible, a->worst_cm));
    hw_json_put(w, object, "most_break_sts", json_integer(a->most_break_sts));
    hw_json_put(w, object, "most_off_centre_sts", json_real(a->most_off_centre_halves / 2.0));
    json_t *off = json_array();
    for (int i = 0; i < w->plan->finished.count; i++) {
        hw_json_add(w, off, real_or_null(a->possible, a->off_cm[i]));
    }
    hw_json_put(w, object, "off_cm", off);
    return object;
}

json_t *hw_json_alternatives(hw_json_writer *w)
{
    json_t *array = json_array();
    for (int i = 0; i < w->plan->alternatives.count; i++) {
        hw_json_add(w, array, alternative(w, &w->plan->alternatives.list[i]));
    }
    return array;
}
