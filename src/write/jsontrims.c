/* The parts of the JSON document beside the pieces: trims that are picked up, and the yarn of all.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimming.h"
#include "core/yarnuse.h"
#include "write/jsonparts.h"

static json_t *text(const char *words)
{
    return words == NULL ? NULL : json_string(words);
}

/* Over how many rows or stitches; both are null where that is not known. */
static void put_over(hw_json_writer *w, json_t *object, const hw_pickup_share *s)
{
    bool known = s != NULL && s->has_ratio;
    hw_json_put(w, object, "over", known ? json_integer(s->count) : json_null());
    hw_json_put(
        w, object, "over_what", known ? json_string(s->of_sts ? "stitches" : "rows") : json_null());
}

static json_t *part(hw_json_writer *w, const hw_pickup_share *s)
{
    static const char *const ways[HW_PICKUP_WAY_COUNT] = { [HW_PICKUP_PLAIN] = "plain",
        [HW_PICKUP_STRAIGHT] = "straight",
        [HW_PICKUP_SLOPE] = "slope",
        [HW_PICKUP_CURVE] = "curve",
        [HW_PICKUP_BOUND_OFF] = "bound off",
        [HW_PICKUP_CAST_ON] = "cast on",
        [HW_PICKUP_MIDDLE] = "half of the middle" };
    json_t *object = json_object();
    hw_json_put(w, object, "way", json_string(ways[s->way]));
    hw_json_put(w, object, "sts", json_integer(s->sts));
    put_over(w, object, s);
    return object;
}

/* What one edge gets, and each part of it; the words are null where nothing is known. */
static json_t *share(hw_json_writer *w, int trim, int edge, const hw_trimmed *t)
{
    const hw_pickup_share *s = hw_trimming_share(t, edge);
    const char *words = hw_trimming_words(t, edge, w->arena);
    json_t *object = json_object();
    hw_json_put(w, object, "edge", text(hw_trimming_edge(w->plan->whole, trim, edge, w->arena)));
    hw_json_put(w, object, "sts", json_integer(s != NULL ? s->sts : 0));
    hw_json_put(w, object, "ratio", words != NULL && words[0] == '\0' ? json_null() : text(words));
    put_over(w, object, s);
    json_t *parts = json_array();
    for (int k = 0; s != NULL && k < t->pickup.part_count[t->share_of[edge]]; k++) {
        hw_json_add(w, parts, part(w, &t->pickup.parts[t->share_of[edge]][k]));
    }
    hw_json_put(w, object, "parts", parts);
    return object;
}

static json_t *shares(hw_json_writer *w, int trim, const hw_trimmed *t)
{
    const hw_edge_run *along = &w->plan->whole->trims->kinds[trim].trim->along;
    json_t *array = json_array();
    for (int p = 0; p < along->count; p++) {
        hw_json_add(w, array, share(w, trim, p, t));
    }
    return array;
}

static json_t *hem(hw_json_writer *w, const hw_hem *h)
{
    json_t *object = json_object();
    hw_json_put(w, object, "fold", json_string(hw_fold_name(h->fold)));
    hw_json_put(w, object, "face_rows", json_integer(h->face_rows));
    hw_json_put(w, object, "above_rows", json_integer(h->above_rows));
    hw_json_put(w, object, "band_rows", json_integer(h->band_rows));
    hw_json_put(w, object, "below_rows", json_integer(h->below_rows));
    hw_json_put(w, object, "fold_rows", json_integer(h->fold_rows));
    hw_json_put(w, object, "facing_rows", json_integer(h->facing_rows));
    hw_json_put(w, object, "face_cm", json_real(h->face_cm));
    return object;
}

static json_t *holes(hw_json_writer *w, const hw_trimmed *t)
{
    if (t->holes.count == 0) {
        return json_null();
    }
    json_t *object = json_object();
    json_t *below = json_array();
    for (int h = 0; h < t->holes.count; h++) {
        hw_json_add(w, below, json_integer(t->holes.holes[h].below_sts));
    }
    hw_json_put(w, object, "sts_before", below);
    hw_json_put(w, object, "sts_of_each", json_integer(t->holes.hole_sts));
    hw_json_put(w, object, "face_row", json_integer(t->hole_rows.face_row));
    hw_json_put(w, object, "facing_row", json_integer(t->hole_rows.facing_row));
    hw_json_put(w, object, "cut_sts", json_integer(t->holes.cut_sts));
    return object;
}

static json_t *place(hw_json_writer *w, const hw_trim_kind *kind, const hw_trimmed *t)
{
    if (!t->rows.has_needles) {
        return json_null();
    }
    bool card = kind->card.possible;
    json_t *object = json_object();
    hw_json_put(w, object, "first_needle", hw_json_needle(w, t->place.first));
    hw_json_put(w, object, "last_needle", hw_json_needle(w, t->place.last));
    hw_json_put(
        w, object, "card_start_column", card ? json_integer(t->place.card_start + 1) : json_null());
    return object;
}

static json_t *lengths(hw_json_writer *w, const hw_trim_kind *kind, const hw_lengths *of)
{
    if (of->count == 0) {
        return json_null();
    }
    json_t *array = json_array();
    for (int i = 0; i < of->count; i++) {
        bool card = kind->card.possible;
        json_t *object = json_object();
        hw_json_put(w, object, "sts", json_integer(of->sts[i]));
        hw_json_put(w, object, "first_needle", hw_json_needle(w, of->first[i]));
        hw_json_put(w, object, "card_start_column",
            card ? json_integer(kind->card_start + 1) : json_null());
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *trim(hw_json_writer *w, int size, int number)
{
    const hw_trim_kind *kind = &w->plan->whole->trims->kinds[number];
    const hw_trimmed *t = hw_trimming_at(w->plan->whole, size, number);
    const hw_pickup_count *chosen = &t->pickup.chosen;
    json_t *object = json_object();
    hw_json_put(w, object, "trim", json_string(kind->trim->name));
    hw_json_put(w, object, "size", json_string(w->plan->finished.names[size]));
    hw_json_put(
        w, object, "motif", kind->has_motif ? json_string(kind->motif.chart.name) : json_null());
    hw_json_put(
        w, object, "chart", kind->has_motif ? hw_json_figure(w, &kind->motif.chart) : json_null());
    hw_json_put(w, object, "gap", kind->has_motif ? json_integer(kind->motif.gap) : json_null());
    hw_json_put(w, object, "counted_from", json_string(hw_side_name(kind->first)));
    hw_json_put(w, object, "place", place(w, kind, t));
    hw_json_put(w, object, "round", json_boolean(kind->trim->round));
    hw_json_put(w, object, "length_cm", json_real(t->length_cm));
    hw_json_put(
        w, object, "elastic_cm", t->elastic_cm > 0 ? json_real(t->elastic_cm) : json_null());
    hw_json_put(w, object, "sts", json_integer(chosen->sts));
    hw_json_put(w, object, "off_cm", json_real(chosen->off_cm));
    hw_json_put(w, object, "inside_tolerance", json_boolean(t->pickup.inside));
    hw_json_put(w, object, "longer_than_bed", json_boolean(t->too_long));
    hw_json_put(w, object, "lengths", lengths(w, kind, &t->lengths));
    hw_json_put(w, object, "motifs", json_integer(chosen->motifs));
    hw_json_put(w, object, "sts_before_first_motif", json_integer(chosen->margin[HW_LEFT]));
    hw_json_put(w, object, "sts_behind_last_motif", json_integer(chosen->margin[HW_RIGHT]));
    hw_json_put(w, object, "shares", shares(w, number, t));
    hw_json_put(w, object, "hem", hem(w, &t->hem));
    hw_json_put(w, object, "buttonholes", holes(w, t));
    return object;
}

void hw_json_trims(hw_json_writer *w)
{
    const hw_whole *whole = w->plan->whole;
    int count = whole != NULL ? whole->trims->count : 0;
    for (int i = 0; i < w->plan->finished.count * count; i++) {
        hw_json_item(w, trim(w, i / count, i % count));
    }
}

/* ---- Yarn ---- */

static void amount(
    hw_json_writer *w, json_t *object, const char *const keys[2], const hw_yarn_amount *a)
{
    hw_json_put(w, object, keys[0], a->has_g ? json_real(a->g) : json_null());
    hw_json_put(w, object, keys[1], a->has_m ? json_real(a->m) : json_null());
}

static json_t *total(hw_json_writer *w, int size, int yarn)
{
    static const char *const used[] = { "used_g", "used_m" };
    static const char *const to_buy[] = { "to_buy_g", "to_buy_m" };
    const struct hw_yarnuse *use = w->plan->whole->yarn;
    const hw_yarn_total *t = &use->totals[size].of[yarn];
    json_t *object = json_object();
    hw_json_put(w, object, "size", json_string(w->plan->finished.names[size]));
    hw_json_put(w, object, "yarn", json_string(use->yarns[yarn].name));
    amount(w, object, used, &t->used);
    amount(w, object, to_buy, &t->to_buy);
    hw_json_put(w, object, "balls", t->balls > 0 ? json_integer(t->balls) : json_null());
    hw_json_put(w, object, "mark", json_string(hw_mark_name(t->used.mark)));
    return object;
}

static json_t *totals(hw_json_writer *w)
{
    json_t *array = json_array();
    for (int i = 0; i < w->plan->finished.count * HW_USE_YARNS; i++) {
        hw_json_add(w, array, total(w, i / HW_USE_YARNS, i % HW_USE_YARNS));
    }
    return array;
}

/* Pieces, or trims, of which each size has so many. */
typedef struct {
    const char *key;
    const char *const *names; /* [count] */
    int count;
    const hw_yarn_amounts *amounts; /* [sizes * count] */
} owners;

static json_t *owned(hw_json_writer *w, const owners *list, int at, int yarn)
{
    static const char *const keys[] = { "g", "m" };
    const hw_yarn_amount *a = &list->amounts[at].of[yarn];
    json_t *object = json_object();
    hw_json_put(w, object, "size", json_string(w->plan->finished.names[at / list->count]));
    hw_json_put(w, object, list->key, json_string(list->names[at % list->count]));
    hw_json_put(w, object, "yarn", json_string(w->plan->whole->yarn->yarns[yarn].name));
    amount(w, object, keys, a);
    hw_json_put(w, object, "mark", json_string(hw_mark_name(a->mark)));
    return object;
}

static json_t *all_owned(hw_json_writer *w, const owners *list)
{
    json_t *array = json_array();
    int cells = w->plan->finished.count * list->count;
    for (int i = 0; i < cells * HW_USE_YARNS; i++) {
        hw_json_add(w, array, owned(w, list, i / HW_USE_YARNS, i % HW_USE_YARNS));
    }
    return array;
}

json_t *hw_json_yarn(hw_json_writer *w)
{
    const hw_whole *whole = w->plan->whole;
    if (whole == NULL || whole->yarn == NULL) {
        return json_null();
    }
    const struct hw_yarnuse *use = whole->yarn;
    const hw_garment *garment = &whole->project->garment;
    const char *pieces[HW_MAX_PIECES] = { NULL };
    const char *trims[HW_MAX_TRIMS] = { NULL };
    for (int p = 0; p < use->pieces; p++) {
        pieces[p] = garment->pieces[p].name;
    }
    for (int t = 0; t < use->trims; t++) {
        trims[t] = garment->trims[t].name;
    }
    json_t *object = json_object();
    hw_json_put(w, object, "reserve_percent", json_real(use->task.reserve_percent));
    hw_json_put(w, object, "totals", totals(w));
    hw_json_put(w, object, "pieces",
        all_owned(w, &(owners){ "piece", pieces, use->pieces, use->of_pieces }));
    hw_json_put(
        w, object, "trims", all_owned(w, &(owners){ "trim", trims, use->trims, use->of_trims }));
    return object;
}
