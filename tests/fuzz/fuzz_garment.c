/* Any text as a garment file: what is read is measured and drawn in sizes that are fixed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source of what must hold: own choice; outlines are finite and never turn down, edges have a
 * length and pieces an area. */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/outline.h"
#include "fuzz.h"
#include "read/garmentfile.h"
#include "read/yaml.h"

const char hw_fuzz_corpus[] = "garment";

static void must_hold(bool held, const char *what)
{
    if (!held) {
        (void)fprintf(stderr, "does not hold: %s\n", what);
        abort();
    }
}

static void check_edge(const hw_edge_line *edge)
{
    must_hold(edge->count != 1, "an edge has two points, or is not there");
    for (int i = 0; i < edge->count; i++) {
        const hw_outline_point *point = &edge->points[i];
        must_hold(isfinite(point->across_cm) && isfinite(point->up_cm) && point->up_cm >= 0,
            "points are finite, and none lies below the fold");
        must_hold(point->stretch != NULL, "every way has a name, if an empty one");
        must_hold(i == 0 || point->up_cm >= edge->points[i - 1].up_cm, "up never falls");
    }
    double cm = 0;
    double all_cm = -1;
    for (int i = 1; i < edge->count; i++) {
        must_hold(hw_edge_length(edge, edge->points[i].stretch, &cm) == HW_OK, "a length");
        must_hold(isfinite(cm) && cm >= 0, "lengths are no less than nothing");
    }
    if (edge->count > 0) {
        must_hold(hw_edge_length(edge, NULL, &all_cm) == HW_OK, "the whole length");
        must_hold(isfinite(all_cm) && all_cm >= cm - 1e-6, "the whole is no shorter than a part");
    }
}

static void check_outline(const hw_outline *outline)
{
    double area_cm2 = -1;
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        check_edge(&outline->edges[e]);
    }
    must_hold(outline->edges[HW_EDGE_LEFT].count >= 2 && outline->edges[HW_EDGE_RIGHT].count >= 2,
        "left and right are always there");
    must_hold(
        outline->top_cm > 0 && outline->neck_cm < outline->top_cm, "the neck is below the top");
    must_hold(hw_outline_area(outline, &area_cm2) == HW_OK && isfinite(area_cm2), "an area");
}

/* Edges that joins and trims name are edges of pieces that draw them; of trims also ends of so many
 * trims above them. */
static void check_run(const hw_garment *garment, const hw_edge_run *run, int above)
{
    must_hold(run->count >= 1 && run->count <= HW_MAX_PARTS, "edges are named");
    for (int i = 0; i < run->count; i++) {
        const hw_edge_part *part = &run->parts[i];
        if (part->piece == -1) {
            must_hold(part->trim >= 0 && part->trim < above && !garment->trims[part->trim].round,
                "named ends are knitted");
            continue;
        }
        must_hold(part->piece >= 0 && part->piece < garment->piece_count &&
                      garment->pieces[part->piece].outline != NULL && part->edge >= 0 &&
                      part->edge < HW_EDGE_COUNT,
            "named edges are drawn");
    }
}

/* Body measurements of a grown person, from memory; any others are 50 cm. */
static double body_cm(const char *name)
{
    static const struct {
        const char *name;
        double cm;
    } known[] = { { "chest", 100 }, { "cross back", 40 }, { "upper arm", 32 }, { "arm length", 45 },
        { "armhole depth", 20 }, { "back waist length", 42 }, { "waist", 80 }, { "hips", 104 },
        { "height", 170 } };
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++) {
        if (strcmp(known[i].name, name) == 0) {
            return known[i].cm;
        }
    }
    return 50;
}

/* Finished measurements in that size, and in one of half of it all. */
static hw_status measure(
    const hw_garment *garment, hw_arena *arena, hw_sizes *finished, hw_err *err)
{
    static const char *names[] = { "a", "b" };
    hw_sizes body = { .title = "", .count = 2, .names = names };
    *finished = body;
    body.measures = hw_arena_get(arena, HW_MAX_MEASURES, sizeof *body.measures);
    finished->measures = hw_arena_get(arena, HW_MAX_MEASURES, sizeof *finished->measures);
    must_hold(body.measures != NULL && finished->measures != NULL, "there is memory");
    for (int k = 0; k < garment->finished_count; k++) {
        const hw_rule *rule = &garment->finished[k].rule;
        for (int t = 0; t < rule->count; t++) {
            bool there = rule->terms[t].finished ||
                         hw_sizes_find(&body, rule->terms[t].name) >= 0 ||
                         body.measure_count == HW_MAX_MEASURES;
            hw_measure *added = there ? NULL : hw_sizes_add(&body, rule->terms[t].name, arena);
            if (added != NULL) {
                added->values_cm[0] = body_cm(rule->terms[t].name);
                added->values_cm[1] = added->values_cm[0] / 2;
                added->missing[0] = added->missing[1] = false;
            }
        }
    }
    hw_garment_task task = { .garment = garment, .body = &body };
    return hw_garment_finish(&task, finished, arena, err);
}

static hw_status draw(
    const hw_garment *garment, const hw_sizes *finished, int number, hw_arena *arena, hw_err *err)
{
    const hw_piece *piece = &garment->pieces[number / finished->count];
    hw_outline_task task = {
        .piece = piece, .finished = finished, .size = number % finished->count, .face_cm = 3
    };
    hw_rule_place place = { .finished = finished, .size = task.size };
    hw_status status = hw_rule_value(&piece->band_width, &place, &task.band_cm, NULL, err);
    if (status == HW_OK) {
        status = hw_rule_value(&piece->main_width, &place, &task.main_cm, NULL, err);
    }
    if (status != HW_OK || piece->outline == NULL || !(task.main_cm > 0) ||
        task.main_cm > HW_MAX_CM) {
        return status;
    }
    task.width_cm = task.main_cm;
    hw_outline outline;
    status = hw_outline_make(&task, arena, &outline, err);
    if (status == HW_OK) {
        check_outline(&outline);
    }
    return status;
}

static hw_status draw_all(const hw_garment *garment, hw_arena *arena, hw_err *err)
{
    hw_sizes finished;
    hw_status status = measure(garment, arena, &finished, err);
    for (int i = 0; i < finished.count * garment->piece_count && status == HW_OK; i++) {
        status = draw(garment, &finished, i, arena, err);
    }
    for (int k = 0; k < garment->join_count; k++) {
        check_run(garment, &garment->joins[k].ends[0], 0);
        check_run(garment, &garment->joins[k].ends[1], 0);
        must_hold(isfinite(garment->joins[k].within_cm) && garment->joins[k].within_cm >= 0,
            "what can be eased in is no less than nothing");
    }
    for (int k = 0; k < garment->trim_count; k++) {
        check_run(garment, &garment->trims[k].along, k);
    }
    return status;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    gsl_set_error_handler_off();
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_garment garment;
    hw_err err = { 0 };
    hw_arena_init(&arena, &mem, 0);
    hw_status status = hw_garment_read((const char *)data, size, &arena, &garment, &err);
    if (status == HW_OK) {
        status = draw_all(&garment, &arena, &err);
    }
    if (status != HW_OK) {
        size_t len = strlen(err.text);
        must_hold(err.code == status, "a failure is told");
        must_hold(len > 0 && len < sizeof err.text - 1, "a message is whole");
        must_hold(hw_yaml_is_text(err.text, len), "a message is text");
        must_hold(strpbrk(err.text, "\r\n") == NULL, "a message is one line");
    }
    hw_arena_release(&arena);
    return 0;
}
