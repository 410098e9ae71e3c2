/* Edges measured, stitches picked up along them, a hem's rows, buttonholes in the motif's gaps.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimming.h"

#include <math.h>
#include <string.h>

#include "core/above.h"
#include "core/edge.h"
#include "core/edgeparts.h"
#include "core/trimrows.h"

enum { PLAIN_CORE = 2 }; /* rows of a plain trim that stand for a band while its hem is planned */

typedef struct {
    hw_whole *whole;
    hw_arena *arena;
    hw_err *err;
} trimming;

static hw_status no_memory(const trimming *t)
{
    return hw_err_set(t->err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

/* What was found wrong, with the trim, the size and the line that it is about. */
static hw_status in_trim(
    const trimming *t, const hw_trim_kind *kind, const char *size, const hw_err *found)
{
    hw_status status = hw_err_set(t->err, found->code, "trim `%.60s`%s%.60s: %s", kind->trim->name,
        size != NULL ? ", size " : "", size != NULL ? size : "", found->text);
    if (found->of_garment) {
        return hw_err_place_in_garment(t->err, status, found->line, found->column);
    }
    if (found->line > 0 || kind->input != NULL) {
        return hw_err_place(t->err, status, found->line > 0 ? found->line : kind->input->line, 0);
    }
    return hw_err_place_in_garment(t->err, status, kind->trim->line, 0);
}

/* Its own gauge in place of the project's for such a fabric. */
static hw_status make_gauge(const trimming *t, hw_trim_kind *kind)
{
    const hw_plan *plan = &t->whole->plans[0];
    memcpy(kind->gauge, plan->gauge, sizeof kind->gauge);
    hw_status status = HW_OK;
    if (kind->input != NULL && kind->input->gauge.count > 0) {
        hw_gauge_input in[HW_FABRIC_COUNT] = { { 0 } };
        if (kind->has_motif) {
            memcpy(in, plan->places_measured, sizeof in);
        }
        in[kind->has_motif ? HW_BAND : HW_MAIN] = kind->input->gauge;
        /* By itself first: what is wrong with it is no fault of the garment's fabrics. */
        status = hw_gauge_measure(&kind->input->gauge, t->arena, &kind->gauge[HW_BAND], t->err);
        status = status == HW_OK ? hw_gauge_all(in, t->arena, kind->gauge, t->err) : status;
    }
    if (!kind->has_motif) {
        kind->gauge[HW_BAND] = kind->gauge[HW_MAIN];
    }
    return status;
}

static hw_status make_kind(const trimming *t, int number)
{
    hw_trim_kind *kind = &t->whole->trims->kinds[number];
    kind->trim = &t->whole->trims->way.trims[number];
    kind->input = hw_layout_trim(t->whole->project, kind->trim->name);
    kind->has_motif = kind->input != NULL && kind->input->has_motif;
    kind->first = t->whole->trims->way.first[number];
    kind->from_below = hw_trimway_from_below(&t->whole->trims->way, number);
    hw_status status = hw_trimway_check(&t->whole->trims->way, number, t->err);
    if (status == HW_OK && kind->has_motif) {
        status = hw_above_motif(&kind->input->motif, t->whole->project->machine.card_columns,
            t->arena, &kind->motif, t->err);
    }
    return status == HW_OK ? make_gauge(t, kind) : status;
}

/* The hem of a trim: a plain one is planned around two of its own rows, then told as plain. */
static hw_status make_hem(const trimming *t, const hw_trim_kind *kind, int size, hw_trimmed *out)
{
    hw_hem_input in = { .fold = HW_FOLD_LOOSE, .facing = HW_FACING_ROWS };
    if (kind->input != NULL && kind->input->has_hem) {
        in = kind->input->hem;
    }
    if (in.face_rows == 0 && !(in.depth_cm > 0)) {
        const hw_sizes *finished = &t->whole->plans[0].finished;
        hw_rule_place place = { .finished = finished, .size = size };
        hw_status status = hw_rule_value(&kind->trim->depth, &place, &in.depth_cm, NULL, t->err);
        if (status == HW_OK && !(in.depth_cm > 0 && in.depth_cm <= HW_MAX_CM)) {
            status = hw_err_set(t->err, HW_ERR_RANGE,
                "its depth comes to %.1f cm; give one under its `hem`", in.depth_cm);
        }
        if (status != HW_OK) {
            return status;
        }
    }
    int band_rows = kind->has_motif ? kind->motif.chart.rows : PLAIN_CORE;
    in.picked_up = true;
    hw_status status = hw_hem_plan(&in, band_rows, kind->gauge, &out->hem, t->err);
    if (status == HW_OK && !kind->has_motif) {
        out->hem.below_rows += out->hem.band_rows;
        out->hem.band_rows = 0;
    }
    return status;
}

/* One edge to pick up along; of the end of a trim the rows are those of its face. */
static hw_status make_edge(const trimming *t, const hw_edge_part *part, int size,
    hw_pickup_edge parts[HW_PICKUP_MOST_PARTS], hw_pickup_edge *out)
{
    if (part->piece < 0) {
        const hw_hem *hem = &hw_trimming_at(t->whole, size, part->trim)->hem;
        *out = (hw_pickup_edge){ .length_cm = hem->face_cm, .count = hem->face_rows };
        return HW_OK;
    }
    hw_edgeparts_task task = { .draft = hw_plan_draft(t->whole, size, part->piece),
        .main = &t->whole->plans[0].gauge[HW_MAIN],
        .face_rows = hw_plan_find(t->whole, part->piece).plan->hem.face_rows };
    return hw_edgeparts_find(&task, part, parts, out);
}

static bool of_neck(const hw_edge_part *part)
{
    return part->piece >= 0 &&
           (part->edge == HW_EDGE_NECK_LEFT || part->edge == HW_EDGE_NECK_RIGHT);
}

/* Whether an edge is the other half of the neck along which the one before it was picked up; in a
 * ring the last is before the first, but of two edges only the second comes behind the other. */
static bool other_half(const hw_trim *trim, int at, const int *share_of)
{
    const hw_edge_run *along = &trim->along;
    int before = at > 0 ? at - 1 : trim->round && along->count > 2 ? along->count - 1 : at;
    const hw_edge_part *a = &along->parts[before];
    const hw_edge_part *b = &along->parts[at];
    return of_neck(a) && of_neck(b) && a->piece == b->piece && a->edge != b->edge &&
           share_of[before] >= 0 && share_of[at] >= 0;
}

static hw_status make_pickup(const trimming *t, const hw_trim_kind *kind, int size, hw_trimmed *out)
{
    const hw_edge_run *along = &kind->trim->along;
    hw_pickup_edge edges[HW_MAX_PARTS] = { { 0 } };
    hw_pickup_edge parts[HW_MAX_PARTS][HW_PICKUP_MOST_PARTS] = { { { 0 } } };
    int count = 0;
    for (int i = 0; i < along->count; i++) {
        hw_status status = make_edge(t, &along->parts[i], size, parts[i], &edges[count]);
        if (status != HW_OK) {
            return hw_edge_fault(status, t->err);
        }
        out->length_cm += edges[count].length_cm;
        bool there = edges[count].length_cm > 0;
        out->share_of[i] = there ? count++ : -1;
    }
    if (count == 0) {
        return hw_err_set(t->err, HW_ERR_RANGE, "%s",
            "the edges along which it is picked up have no length: look at the outline");
    }
    for (int i = 0; i < along->count; i++) {
        if (other_half(kind->trim, i, out->share_of)) {
            edges[out->share_of[i]].other_half = true;
        }
    }
    const hw_hem *hem = &out->hem;
    hw_pickup_task task = { .edges = edges,
        .edge_count = count,
        .sts_per_10cm = kind->gauge[HW_BAND].sts_per_10cm,
        .repeat = kind->has_motif ? kind->motif.repeat : 0,
        .gap = kind->has_motif ? kind->motif.gap : 0,
        /* A picot wants an odd number [H2]; margins take care of it where there is a motif. */
        .multiple = hem->fold == HW_FOLD_PICOT && !kind->has_motif && !kind->trim->round ? 2 : 0,
        .multiple_plus = 1,
        .round = kind->trim->round,
        .tolerance_cm = t->whole->project->choices.tolerance_cm };
    return hw_pickup_plan(&task, &out->pickup, t->err);
}

/* An elastic draws its edges in, or else it has no use. */
static hw_status make_elastic(
    const trimming *t, const hw_trim_kind *kind, int size, hw_trimmed *out)
{
    if (!kind->trim->casing) {
        return HW_OK;
    }
    hw_rule_place place = { .finished = &t->whole->plans[0].finished, .size = size };
    double cm = 0;
    hw_status status = hw_rule_value(&kind->trim->elastic, &place, &cm, NULL, t->err);
    if (status == HW_OK && !(cm > 0 && cm < out->length_cm)) {
        (void)hw_err_set(t->err, HW_ERR_RANGE,
            "its elastic comes to %.1f cm and its edges to %.1f cm; an elastic draws them in, so "
            "make it shorter than they are, and longer than 0 cm",
            cm, out->length_cm);
        return hw_err_place_in_garment(t->err, HW_ERR_RANGE, kind->trim->elastic.line, 0);
    }
    out->elastic_cm = cm;
    return status;
}

/* Which numbers near the one wanted would lie evenly between the figures. */
static hw_status try_holes(const trimming *t, const hw_holes_task *wanted, hw_trimmed *out)
{
    hw_status status = HW_OK;
    for (int off = -HW_TRIMMING_NEAR_HOLES; off <= HW_TRIMMING_NEAR_HOLES; off++) {
        hw_holes_task task = *wanted;
        hw_holes tried = { 0 };
        task.holes += off;
        if (task.holes > 1 && task.holes <= HW_MAX_HOLES) {
            status = hw_holes_plan(&task, t->arena, &tried, NULL);
        }
        if (status == HW_ERR_NOMEM) {
            return status;
        }
        out->holes_even[off + HW_TRIMMING_NEAR_HOLES] = tried.count > 0 && tried.even;
    }
    return HW_OK;
}

static hw_status make_holes(const trimming *t, const hw_trim_kind *kind, hw_trimmed *out)
{
    out->holes_wanted = kind->input != NULL ? kind->input->buttonholes : 0;
    if (out->holes_wanted == 0) {
        return HW_OK;
    }
    const hw_pickup_count *chosen = &out->pickup.chosen;
    hw_holes_task task = { .sts = chosen->sts,
        .holes = out->holes_wanted,
        .hole_sts = kind->input->buttonhole_sts,
        .end_sts = -1,
        .end_cm = HW_HOLES_END_CM,
        .sts_per_10cm = kind->gauge[HW_BAND].sts_per_10cm,
        .repeat = kind->has_motif ? kind->motif.repeat : 0,
        .gap = kind->has_motif ? kind->motif.gap : 0,
        .motifs = chosen->motifs,
        .first_sts = chosen->margin[HW_LEFT] };
    out->hole_rows = hw_holes_rows(&out->hem, kind->gauge);
    hw_status status = hw_holes_plan(&task, t->arena, &out->holes, t->err);
    return status == HW_OK && kind->has_motif ? try_holes(t, &task, out) : status;
}

/* Lengths of a trim that the bed does not hold; where its edges meet there are seams. */
static hw_status make_lengths(const trimming *t, const hw_trim_kind *kind, hw_trimmed *out)
{
    const hw_pickup *pickup = &out->pickup;
    int seams[HW_MAX_PARTS] = { 0 };
    for (int i = 0; i < pickup->share_count; i++) {
        seams[i] = (i > 0 ? seams[i - 1] : 0) + pickup->shares[i].sts;
    }
    /* Wherever its figures lie, a length with so many needles to spare can be hung by the card. */
    int spare = kind->has_motif && kind->motif.fits_card ? kind->motif.repeat - 1 : 0;
    const hw_lengths_task task = { .sts = pickup->chosen.sts,
        .needles = t->whole->project->machine.needles - spare,
        .repeat = kind->has_motif ? kind->motif.repeat : 0,
        .gap = kind->has_motif ? kind->motif.gap : 0,
        .motifs = pickup->chosen.motifs,
        .first_sts = pickup->chosen.margin[HW_LEFT],
        .seams = seams,
        .seam_count = pickup->share_count - 1,
        .holes = &out->holes };
    hw_status status = hw_lengths_find(&task, t->arena, &out->lengths);
    for (int i = 0, k = out->lengths.count - 1; i < k && kind->first == HW_LEFT; i++, k--) {
        int sts = out->lengths.sts[i];
        out->lengths.sts[i] = out->lengths.sts[k];
        out->lengths.sts[k] = sts;
    }
    return status;
}

/* Stitches, rows of the hem and buttonholes in one size. */
static hw_status make_size(const trimming *t, int at)
{
    const struct hw_trimmings *trims = t->whole->trims;
    const hw_machine *machine = &t->whole->project->machine;
    const hw_trim_kind *kind = &trims->kinds[at % trims->count];
    hw_trimmed *out = &trims->sizes[at];
    hw_status status = make_hem(t, kind, at / trims->count, out);
    status = status == HW_OK ? make_pickup(t, kind, at / trims->count, out) : status;
    status = status == HW_OK ? make_elastic(t, kind, at / trims->count, out) : status;
    status = status == HW_OK ? make_holes(t, kind, out) : status;
    out->too_long = machine->pitch_cm > 0 && out->pickup.chosen.sts > machine->needles;
    return status == HW_OK && out->too_long ? make_lengths(t, kind, out) : status;
}

/* Stitches and hem of one size, or its rows. */
typedef hw_status making_size(const trimming *t, int at);

/* What all sizes share, then one size after the other. */
typedef struct {
    hw_status (*shared)(const trimming *t, int trim);
    making_size *each;
} stage;

/* One trim in all sizes, with what is wrong named after it. */
static hw_status make_trim(const trimming *outer, int number, const stage *what)
{
    hw_err found = { 0 };
    const trimming t = { outer->whole, outer->arena, &found };
    const struct hw_trimmings *trims = t.whole->trims;
    const hw_sizes *finished = &t.whole->plans[0].finished;
    const char *size = NULL;
    hw_status status = what->shared(&t, number);
    for (int i = 0; i < finished->count && status == HW_OK; i++) {
        size = finished->names[i];
        status = what->each(&t, i * trims->count + number);
    }
    if (status == HW_ERR_NOMEM) {
        return no_memory(outer);
    }
    return status == HW_OK ? HW_OK : in_trim(outer, &trims->kinds[number], size, &found);
}

static hw_status make_card(const trimming *t, int trim)
{
    return hw_trimrows_card(t->whole, trim, t->arena, t->err);
}

static hw_status make_rows(const trimming *t, int at)
{
    return hw_trimrows_make(t->whole, at, t->arena, t->err);
}

/* Which way all trims run, and which of them have ends that others are picked up over. */
static void find_ways(hw_whole *whole)
{
    const hw_garment *garment = &whole->project->garment;
    struct hw_trimmings *trims = whole->trims;
    trims->way.garment = garment;
    for (int p = 0; p < garment->piece_count; p++) {
        trims->way.outlines[p] = &hw_plan_draft(whole, 0, p)->outline;
    }
    hw_trimway_find(&trims->way);
    for (int t = 0; t < garment->trim_count; t++) {
        const hw_edge_run *along = &trims->way.trims[t].along;
        for (int i = 0; i < along->count; i++) {
            if (along->parts[i].piece < 0) {
                trims->kinds[along->parts[i].trim].covered++;
            }
        }
    }
}

hw_status hw_trimming_make(hw_whole *whole, hw_arena *arena, hw_err *err)
{
    const trimming t = { .whole = whole, .arena = arena, .err = err };
    int count = whole->project->garment.trim_count;
    int sizes = whole->plans[0].finished.count;
    struct hw_trimmings *trims = hw_arena_get(arena, 1, sizeof *trims);
    if (trims == NULL) {
        return no_memory(&t);
    }
    trims->count = count;
    trims->kinds = hw_arena_get(arena, (size_t)count, sizeof *trims->kinds);
    trims->sizes = hw_arena_get(arena, (size_t)count * (size_t)sizes, sizeof *trims->sizes);
    if (trims->kinds == NULL || trims->sizes == NULL) {
        return no_memory(&t);
    }
    whole->trims = trims;
    find_ways(whole);
    hw_status status = HW_OK;
    static const stage stitches = { make_kind, make_size };
    static const stage rows = { make_card, make_rows };
    for (int k = 0; k < count && status == HW_OK; k++) {
        status = make_trim(&t, k, &stitches);
    }
    for (int k = 0; k < count && status == HW_OK; k++) {
        hw_trimrows_stitches(whole, k);
    }
    for (int k = 0; k < count && status == HW_OK; k++) {
        status = make_trim(&t, k, &rows);
    }
    return status;
}

const hw_trimmed *hw_trimming_at(const hw_whole *whole, int size, int trim)
{
    return &whole->trims->sizes[size * whole->trims->count + trim];
}

const hw_pickup_share *hw_trimming_share(const hw_trimmed *trimmed, int edge)
{
    int at = trimmed->share_of[edge];
    return at < 0 ? NULL : &trimmed->pickup.shares[at];
}

char *hw_trimming_edge(const hw_whole *whole, int trim, int edge, hw_arena *arena)
{
    const hw_edge_part *part = &whole->trims->kinds[trim].trim->along.parts[edge];
    if (part->piece < 0) {
        return hw_arena_format(arena, "%s end", whole->project->garment.trims[part->trim].name);
    }
    const char *stretch = part->stretch != NULL ? part->stretch : "";
    return hw_arena_format(arena, "%s %s%s%s", whole->project->garment.pieces[part->piece].name,
        hw_edge_name(part->edge), stretch[0] != '\0' ? " " : "", stretch);
}

const char *hw_trimming_words(const hw_trimmed *trimmed, int edge, hw_arena *arena)
{
    int at = trimmed->share_of[edge];
    return at < 0 ? "" : hw_pickup_edge_words(&trimmed->pickup, at, arena);
}
