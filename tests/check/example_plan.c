/* The plan that the tests of all documents share. Every number in it is invented or, where it
 * follows from the others, worked out below by the arithmetic of the design.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "example_plan.h"

#include <stdlib.h>
#include <string.h>

enum { REPEAT = 6, GAP = 1, CARD = 24, EDGE = 1, ROWS = 6, FIGURE = 5 };

static const double band_sts_per_cm = 2.8;
static const double main_sts_per_cm = 2.7;
static const double tolerance_cm = 1.0;
static const double weight = 0.5;

/* clang-format off */
static const unsigned char cells[ROWS * FIGURE] = {
    0, 1, 0, 1, 0,
    1, 1, 1, 1, 1,
    1, 1, 1, 1, 1,
    0, 1, 1, 1, 0,
    0, 0, 1, 0, 0,
    0, 0, 1, 0, 0,
};
/* clang-format on */

/* Counted by hand on the figure above with one empty column behind it. */
static hw_motif_row motif_rows[ROWS] = {
    { 2, { 1, 3 } },
    { 5, { 5, 1 } },
    { 5, { 5, 1 } },
    { 3, { 3, 3 } },
    { 1, { 1, 5 } },
    { 1, { 1, 5 } },
};
static int axes[] = { 5, 11 };
static int card_gaps[] = { 1, 3, 7, 19 };

static const char *names[EXAMPLE_SIZES] = { "86", "92", "98", "104/110" };
static int ages[EXAMPLE_SIZES] = { 18, 24, 36, 54 };
static const char *sources[EXAMPLE_SIZES] = { "", "", "", "" };
static bool missing[EXAMPLE_SIZES];

static double chest_cm[EXAMPLE_SIZES] = { 60.0, 63.0, 66.5, 70.0 };
static hw_mark chest_marks[EXAMPLE_SIZES] = { HW_MARK_GIVEN, HW_MARK_INTERPOLATED, HW_MARK_GIVEN,
    HW_MARK_MEMORY };
static double length_cm[EXAMPLE_SIZES] = { 24.0, 26.0, 28.5, 31.0 };
static hw_mark length_marks[EXAMPLE_SIZES] = { HW_MARK_DERIVED, HW_MARK_DERIVED, HW_MARK_PRACTICE,
    HW_MARK_DERIVED };

static const int motif_counts[EXAMPLE_SIZES] = { 14, 15, 16, 17 };

static const hw_piece pieces[EXAMPLE_PIECES] = {
    { .name = "front", .mirror_of = -1, .edge_sts = { -1, -1 } },
    { .name = "back", .mirror_of = -1, .edge_sts = { -1, -1 } },
};
static const hw_seam seams[EXAMPLE_SEAMS] = {
    { { 0, 1 }, { HW_RIGHT, HW_LEFT } },
    { { 1, 0 }, { HW_RIGHT, HW_LEFT } },
};

static const hw_note notes[EXAMPLE_NOTES] = {
    { HW_NOTE_REMARK, "The facing has as many rows as the face; its tighter dial makes it a little "
                      "shorter, so that the hem turns in." },
    { HW_NOTE_WARNING, "Floats of 5 stitches are longer than some fingers like: catch them, or "
                       "line the hem." },
    { HW_NOTE_SAFETY, "Long floats inside a hem for an infant can catch fingers and toes. Keep "
                      "them short or line the hem, and follow the rules where you live." },
    { HW_NOTE_REMARK, "Größe 104/110 \"tall\": measure twice, knit once." },
};

static const hw_basis basis[] = {
    { "band gauge", "28 sts and 40 rows in 10 cm", "mean of two places", HW_MARK_MEASURED, "" },
    { "main gauge", "27 sts and 38 rows in 10 cm", "", HW_MARK_GIVEN, "" },
    { "facing gauge", "27 sts and 38 rows in 10 cm",
        "as the plain fabric, one dial number tighter, because no swatch was measured",
        HW_MARK_ASSUMED, "H1" },
    { "tolerance", "1 cm", "", HW_MARK_PRACTICE, "" },
};

/* Room, or an end to the test program: it is used outside Check's own tests as well. */
static void *need(void *room)
{
    if (room == NULL) {
        abort();
    }
    return room;
}

static double square(double x)
{
    return x * x;
}

static void fill_fit(hw_fit *fit, const hw_target *target, int size, int piece)
{
    int margin = piece == 0 ? 0 : 1;
    fit->motifs = motif_counts[size];
    fit->margin[HW_LEFT] = fit->margin[HW_RIGHT] = margin;
    fit->visible_sts = fit->motifs * REPEAT - GAP + 2 * margin;
    fit->main_sts = fit->visible_sts;
    fit->edge_sts[HW_LEFT] = fit->edge_sts[HW_RIGHT] = EDGE;
    fit->cast_on_sts = fit->visible_sts + 2 * EDGE;
    fit->band_cm = fit->visible_sts / band_sts_per_cm;
    fit->main_cm = fit->main_sts / main_sts_per_cm;
    fit->band_off_cm = fit->band_cm - target->band_cm;
    fit->main_off_cm = fit->main_cm - target->main_cm;
    fit->inside = fit->main_off_cm < tolerance_cm;
    fit->cost.band = square(fit->band_off_cm / tolerance_cm);
    fit->cost.main = square(fit->main_off_cm / tolerance_cm);
}

static void fill_fits(hw_plan *plan)
{
    for (int at = 0; at < EXAMPLE_SIZES * EXAMPLE_PIECES; at++) {
        int size = at / EXAMPLE_PIECES;
        plan->targets[at].band_cm = plan->targets[at].main_cm = chest_cm[size] / 2;
        plan->target_marks[at] = chest_marks[size];
        hw_fit *fit = &plan->grading.fits[at];
        fill_fit(fit, &plan->targets[at], size, at % EXAMPLE_PIECES);
        if (size > 0) {
            const hw_fit *before = fit - EXAMPLE_PIECES;
            fit->cost.grade = weight * square((fit->band_cm - before->band_cm -
                                                  (chest_cm[size] - chest_cm[size - 1]) / 2) /
                                              tolerance_cm);
        }
        plan->grading.total_cost += fit->cost.band + fit->cost.main + fit->cost.grade;
        int first = -(fit->cast_on_sts / 2);
        plan->places[at] = (hw_place_on_bed){ .first = first,
            .last = first + fit->cast_on_sts - 1,
            .off_centre_halves = at == 0 ? -3 : 1,
            .first_motif = first + EDGE + fit->margin[HW_LEFT],
            .centre_motif = -1,
            .card_start = 3,
            .wanted_card_start = 4 };
    }
}

static void fill_project(hw_project *project)
{
    *project = (hw_project){ .title = "Skirt with hearts", .show = HW_SHOW_CM };
    project->choices = (hw_choices){ .tolerance_cm = tolerance_cm,
        .centre_weight = weight,
        .seam_weight = weight,
        .grade_weight = weight,
        .edge_sts = EDGE };
    project->machine = (hw_machine){ .title = "a bed of 200 needles",
        .pitch_cm = 0.45,
        .needles = 200,
        .card_columns = CARD,
        .reader_offset = -1,
        .longest_float = 5,
        .carriage = HW_CARRIAGE_PRESELECTING,
        .blank = { .rows = 60, .least_loop_rows = 36, .joining_rows = 2 },
        .source = "" };
    project->garment = (hw_garment){ .title = "skirt",
        .pieces = pieces,
        .piece_count = EXAMPLE_PIECES,
        .seams = seams,
        .seam_count = EXAMPLE_SEAMS };
}

static void fill_fabric(hw_plan *plan)
{
    plan->gauge[HW_MAIN] = (hw_gauge){ .sts_per_10cm = 27,
        .rows_per_10cm = 38,
        .sides = { { .per_10cm = 27, .places = 1, .outlier = -1 },
            { .per_10cm = 38, .places = 1, .outlier = -1 } },
        .mark = HW_MARK_GIVEN,
        .has_dial = true,
        .dial = 7 };
    plan->gauge[HW_BAND] = (hw_gauge){ .sts_per_10cm = 28,
        .rows_per_10cm = 40,
        .sides = { { .per_10cm = 28, .places = 2, .outlier = -1 },
            { .per_10cm = 40, .places = 2, .outlier = -1 } },
        .mark = HW_MARK_MEASURED,
        .has_dial = true,
        .dial = 8 };
    plan->gauge[HW_FACING] = plan->gauge[HW_MAIN];
    plan->gauge[HW_FACING].mark = HW_MARK_ASSUMED;
    plan->gauge[HW_FACING].dial = 6;
    plan->gauge[HW_FACING].dial_assumed = true;
    plan->motif = (hw_motif){ .chart = { "heart", FIGURE, ROWS, cells },
        .gap = GAP,
        .repeat = REPEAT,
        .rows = motif_rows,
        .longest_float = { 5, 5 },
        .contrast_sts = 17,
        .contrast_share = 17 / 36.0,
        .symmetrical = true,
        .axes = axes,
        .axis_count = 2,
        .fits_card = true,
        .card_columns = CARD,
        .repeats_on_card = CARD / REPEAT,
        .card_gaps = card_gaps,
        .card_gap_count = 4 };
    plan->hem = (hw_hem){ .facing_rows = 10,
        .fold_rows = 1,
        .below_rows = 2,
        .band_rows = ROWS,
        .above_rows = 2,
        .face_rows = 10,
        .total_rows = 21,
        .wanted_cm = 2.5,
        .face_cm = 6 / 4.0 + 4 / 3.8,
        .facing_cm = 10 / 3.8,
        .fold = HW_FOLD_LOOSE,
        .facing_deep = true,
        .has_dials = true,
        .facing_dial = 6,
        .band_dial = 8,
        .joining_dial = 8 };
}

static hw_measure *fill_measures(hw_arena *arena)
{
    hw_measure *measures = need(hw_arena_get(arena, 2, sizeof *measures));
    measures[0] = (hw_measure){ "finished chest", chest_cm, missing, chest_marks, sources, 0 };
    measures[1] = (hw_measure){ "length", length_cm, missing, length_marks, sources, 0 };
    return measures;
}

/* No swatch is shown: the gauges above are said, not measured. */
static const hw_gauge_input no_places[HW_FABRIC_COUNT];

static void fill_tolerances(hw_plan *plan)
{
    for (int i = 0; i < EXAMPLE_SIZES * EXAMPLE_PIECES; i++) {
        int sts = plan->grading.fits[i].visible_sts;
        hw_tolerance_task band = { sts, plan->targets[i].band_cm, tolerance_cm };
        hw_tolerance_task main = { sts, plan->targets[i].main_cm, tolerance_cm };
        plan->tolerances[i][HW_BAND] = hw_tolerance_find(&band, &plan->gauge[HW_BAND]);
        plan->tolerances[i][HW_MAIN] = hw_tolerance_find(&main, &plan->gauge[HW_MAIN]);
    }
}

void example_card(example *e, hw_arena *arena)
{
    hw_card_task task = hw_plan_card(&e->plan);
    if (hw_card_make(&task, arena, &e->plan.card) != HW_OK) {
        abort();
    }
}

void example_plan(example *e, hw_arena *arena)
{
    *e = (example){ 0 };
    hw_plan *plan = &e->plan;
    fill_project(&e->project);
    plan->project = &e->project;
    fill_fabric(plan);
    plan->finished = (hw_sizes){ .title = "",
        .count = EXAMPLE_SIZES,
        .names = names,
        .ages_months = ages,
        .measures = fill_measures(arena),
        .measure_count = 2 };
    plan->body =
        (hw_sizes){ .title = "", .count = EXAMPLE_SIZES, .names = names, .ages_months = ages };
    const size_t count = (size_t)EXAMPLE_SIZES * EXAMPLE_PIECES;
    plan->targets = need(hw_arena_get(arena, count, sizeof *plan->targets));
    plan->target_marks = need(hw_arena_get(arena, count, sizeof *plan->target_marks));
    plan->places = need(hw_arena_get(arena, count, sizeof *plan->places));
    plan->grading.fits = need(hw_arena_get(arena, count, sizeof *plan->grading.fits));
    plan->grading.seam_costs = need(hw_arena_get(arena, count, sizeof *plan->grading.seam_costs));
    plan->grading.seam_breaks = need(hw_arena_get(arena, count, sizeof *plan->grading.seam_breaks));
    plan->grading.passes = 1;
    plan->changes = need(hw_arena_get(arena, count, sizeof *plan->changes));
    plan->fixed_sts = need(hw_arena_get(arena, count, sizeof *plan->fixed_sts));
    plan->tolerances = need(hw_arena_get(arena, count, sizeof *plan->tolerances));
    plan->places_measured = no_places;
    fill_fits(plan);
    fill_tolerances(plan);
    example_card(e, arena);
    memcpy(e->notes, notes, sizeof notes);
    plan->notes = e->notes;
    plan->note_count = EXAMPLE_NOTES;
    plan->basis = basis;
    plan->basis_count = sizeof basis / sizeof basis[0];
}

void example_sizes(example *e, int sizes)
{
    e->plan.finished.count = sizes;
    e->plan.body.count = sizes;
}

void example_no_card_fit(example *e)
{
    e->plan.motif.gap = 2;
    e->plan.motif.repeat = FIGURE + 2;
    e->plan.motif.fits_card = false;
    e->plan.motif.repeats_on_card = 0;
}

hw_tables example_tables(const example *e, hw_arena *arena)
{
    hw_tables tables = { 0 };
    if (hw_cells_plan(&e->plan, arena, &tables) != HW_OK) {
        abort();
    }
    return tables;
}
