/* The calculation in its order: gauge, motif, measurements, counts, bed, hem, notes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/calculate.h"

#include <stdlib.h>

#include "core/above.h"
#include "core/aside.h"
#include "core/basis.h"
#include "core/caution.h"
#include "core/learn.h"
#include "core/measuring.h"
#include "core/meeting.h"
#include "core/num.h"
#include "core/rounds.h"
#include "core/rowing.h"
#include "core/trimming.h"
#include "core/yarnuse.h"

/* The plan of one part under construction; what all parts share is made first, in the first. */
typedef struct {
    const hw_project *project;
    hw_arena *arena;
    hw_plan plan;
    hw_err *err;
} making;

static hw_status no_memory(const making *m)
{
    return hw_err_set(m->err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

static hw_status make_gauges(making *m)
{
    hw_gauge_input *joined = hw_arena_get(m->arena, HW_FABRIC_COUNT, sizeof *joined);
    if (joined == NULL) {
        return no_memory(m);
    }
    hw_status status =
        hw_learn_join(m->project->gauge, &m->project->knitted, m->arena, joined, m->err);
    if (status == HW_OK) {
        status = hw_gauge_all(joined, m->arena, m->plan.gauge, m->err);
    }
    m->plan.places_measured = joined;
    return status;
}

static hw_status make_motif(making *m)
{
    const hw_motif_input *own = &m->project->motif;
    const hw_motif_input *from = m->project->has_chart ? own : &m->project->drawn;
    int gap = own->has_gap ? own->gap : from->gap;
    if (from->chart.width + gap > HW_MAX_CHART_COLUMNS) {
        return hw_err_set(m->err, HW_ERR_LIMIT,
            "figure and gap are %d columns together; at most %d can repeat: choose a smaller gap",
            from->chart.width + gap, HW_MAX_CHART_COLUMNS);
    }
    hw_status status = hw_motif_analyse(
        &from->chart, gap, m->project->machine.card_columns, m->arena, &m->plan.motif);
    return status == HW_OK ? HW_OK : no_memory(m);
}

static hw_status make_measures(making *m)
{
    return hw_measuring_make(m->project, m->arena, &m->plan.body, &m->plan.finished, m->err);
}

static hw_status make_target(making *m, int size, int piece)
{
    const hw_garment *garment = &m->project->garment;
    int at = size * garment->piece_count + piece;
    hw_rule_place place = { .finished = &m->plan.finished, .size = size };
    hw_target *target = &m->plan.targets[at];
    hw_mark marks[2] = { HW_MARK_GIVEN, HW_MARK_GIVEN };
    hw_status status = hw_rule_value(
        &garment->pieces[piece].band_width, &place, &target->band_cm, &marks[0], m->err);
    if (status == HW_OK) {
        status = hw_rule_value(
            &garment->pieces[piece].main_width, &place, &target->main_cm, &marks[1], m->err);
    }
    const hw_rule *band = &garment->pieces[piece].band_width;
    if (status != HW_OK) {
        return hw_err_place_in_garment(m->err, status, band->line, 0);
    }
    target->line = hw_measuring_line(
        m->project, &m->plan.body, &m->plan.finished, &garment->pieces[piece].band_width);
    bool band_sound = target->band_cm > 0 && target->band_cm <= HW_MAX_CM;
    bool main_sound = target->main_cm > 0 && target->main_cm <= HW_MAX_CM;
    if (!band_sound || !main_sound) {
        status = hw_err_set(m->err, HW_ERR_RANGE,
            "size %s, %s: the width comes out at %.1f cm, which no piece can have; look at the "
            "measurements and the ease",
            m->plan.finished.names[size], garment->pieces[piece].name,
            band_sound ? target->main_cm : target->band_cm);
        if (target->line > 0) {
            return hw_err_place(m->err, status, target->line, 0);
        }
        return hw_err_place_in_garment(
            m->err, status, band_sound ? garment->pieces[piece].main_width.line : band->line, 0);
    }
    m->plan.target_marks[at] = hw_mark_weaker(marks[0], marks[1]);
    return HW_OK;
}

static hw_status make_targets(making *m)
{
    int pieces = m->project->garment.piece_count;
    size_t cells = (size_t)m->plan.finished.count * (size_t)pieces;
    m->plan.targets = hw_arena_get(m->arena, cells, sizeof *m->plan.targets);
    m->plan.target_marks = hw_arena_get(m->arena, cells, sizeof *m->plan.target_marks);
    if (m->plan.targets == NULL || m->plan.target_marks == NULL) {
        return no_memory(m);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < m->plan.finished.count * pieces && status == HW_OK; i++) {
        status = make_target(m, i / pieces, i % pieces);
    }
    return status;
}

/* One measured row: the piece it is of keeps its count, and so does the piece that mirrors it. */
static hw_status fix(making *m, const hw_knitted *row)
{
    const hw_garment *garment = &m->project->garment;
    int mirrored = garment->pieces[row->piece].mirror_of;
    int piece = mirrored >= 0 ? mirrored : row->piece;
    int *fixed = &m->plan.fixed_sts[row->size * garment->piece_count + piece];
    int sts = hw_num_nearest(row->sts);
    if (*fixed != 0 && *fixed != sts) {
        return hw_err_set(m->err, HW_ERR_RANGE,
            "the measured pieces disagree: in size %s, %s was knitted with %d stitches by one row "
            "and %d by row %d; a piece%s has one count: correct a row or leave it out",
            m->plan.finished.names[row->size], garment->pieces[row->piece].name, *fixed, sts,
            row->row, mirrored >= 0 ? " and its mirror" : "");
    }
    *fixed = sts;
    m->plan.has_free = true;
    return HW_OK;
}

/* Pieces that test knitters have knitted keep their counts. */
static hw_status make_fixed(making *m)
{
    int pieces = m->project->garment.piece_count;
    size_t cells = (size_t)m->plan.finished.count * (size_t)pieces;
    m->plan.fixed_sts = hw_arena_get(m->arena, cells, sizeof *m->plan.fixed_sts);
    if (m->plan.fixed_sts == NULL) {
        return no_memory(m);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < m->project->knitted.count && status == HW_OK; i++) {
        const hw_knitted *row = &m->project->knitted.list[i];
        /* Plain fabric tells the band's count where pieces are not re-hung. */
        bool tells = row->fabric == HW_BAND || !m->project->choices.rehang;
        status = tells && row->sts > 0 ? fix(m, row) : HW_OK;
    }
    for (int i = 0; i < m->plan.finished.count * pieces; i++) {
        int other = m->project->garment.pieces[i % pieces].mirror_of;
        if (other >= 0) {
            m->plan.fixed_sts[i] = m->plan.fixed_sts[i / pieces * pieces + other];
        }
    }
    return status;
}

static hw_status make_counts(making *m)
{
    hw_status status = make_fixed(m);
    hw_counts_task task = hw_plan_counts(&m->plan);
    if (status == HW_OK) {
        status = hw_grade_choose(&task, m->arena, &m->plan.grading, m->err);
    }
    if (status == HW_OK && m->plan.has_free) {
        task.fixed_sts = NULL;
        status = hw_grade_choose(&task, m->arena, &m->plan.free_grading, m->err);
    }
    return status;
}

/* Where a piece is re-hung: its decreases or increases, spread over the stitches of the band. */
static hw_status make_changes(making *m)
{
    int count = m->plan.finished.count * m->project->garment.piece_count;
    m->plan.changes = hw_arena_get(m->arena, (size_t)count, sizeof *m->plan.changes);
    if (m->plan.changes == NULL) {
        return no_memory(m);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < count && status == HW_OK; i++) {
        const hw_fit *fit = &m->plan.grading.fits[i];
        int changes = abs(fit->visible_sts - fit->main_sts);
        /* Past one change in every stitch there is no even spread; widths so far apart are refused
         * by the tolerance long before. */
        if (changes > 0 && changes <= fit->visible_sts) {
            status = hw_spread_steps(changes, fit->visible_sts, &m->plan.changes[i], m->err);
        }
    }
    return status;
}

/* The window of gauges for each width of each piece. */
static hw_status make_tolerances(making *m)
{
    int pieces = m->project->garment.piece_count;
    size_t cells = (size_t)m->plan.finished.count * (size_t)pieces;
    m->plan.tolerances = hw_arena_get(m->arena, cells, sizeof *m->plan.tolerances);
    if (m->plan.tolerances == NULL) {
        return no_memory(m);
    }
    for (int i = 0; i < m->plan.finished.count * pieces; i++) {
        const hw_fit *fit = &m->plan.grading.fits[i];
        hw_tolerance_task band = { fit->visible_sts, m->plan.targets[i].band_cm,
            m->project->choices.tolerance_cm };
        hw_tolerance_task main = { fit->main_sts, m->plan.targets[i].main_cm,
            m->project->choices.tolerance_cm };
        m->plan.tolerances[i][HW_BAND] = hw_tolerance_find(&band, &m->plan.gauge[HW_BAND]);
        m->plan.tolerances[i][HW_MAIN] = hw_tolerance_find(&main, &m->plan.gauge[HW_MAIN]);
    }
    return HW_OK;
}

/* The centred counts beside each choice, for a knitter who has to change something. */
static hw_status make_near(making *m)
{
    hw_counts_task task = hw_plan_counts(&m->plan);
    size_t cells = (size_t)task.sizes * (size_t)task.pieces;
    m->plan.near = hw_arena_get(m->arena, cells, sizeof *m->plan.near);
    if (m->plan.near == NULL) {
        return no_memory(m);
    }
    for (int i = 0; i < task.sizes * task.pieces; i++) {
        hw_fit_rules rules = { .repeat = task.repeat,
            .gap = task.gap,
            .most_margin = hw_counts_most_margin(&task),
            .most_sts = hw_counts_most_visible(&task, i % task.pieces) };
        double sts = hw_gauge_sts(&m->plan.gauge[HW_BAND], m->plan.targets[i].band_cm);
        hw_status status = hw_fit_nearest(&rules, sts, &m->plan.near[i], m->err);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

static hw_bed_task bed_task(const making *m, int i)
{
    const hw_machine *machine = &m->project->machine;
    const hw_fit *fit = &m->plan.grading.fits[i];
    return (hw_bed_task){ .needles = machine->needles,
        /* A repeat that the card cannot hold leaves the needles to the hand: no card then. */
        .card_columns = m->plan.motif.fits_card ? machine->card_columns : 0,
        .repeat = m->plan.motif.repeat,
        .card_start = m->plan.has_punch ? m->plan.punch.column : m->project->card_start - 1,
        .cast_on_sts = fit->cast_on_sts,
        /* The purl side faces the knitter: the right edge stands on the left of the bed. */
        .before_motif = fit->edge_sts[HW_RIGHT] + fit->margin[HW_RIGHT],
        .motifs = fit->motifs };
}

/* Where to punch, when the card is not punched yet: one column for every piece and size. */
static hw_status make_punch(making *m)
{
    int count = m->plan.finished.count * m->project->garment.piece_count;
    hw_bed_task *tasks = hw_arena_get(m->arena, (size_t)count, sizeof *tasks);
    if (tasks == NULL) {
        return no_memory(m);
    }
    for (int i = 0; i < count; i++) {
        tasks[i] = bed_task(m, i);
    }
    m->plan.punch = hw_bed_best_start(tasks, count);
    m->plan.has_punch = m->plan.punch.possible;
    return HW_OK;
}

/* Which piece in which size it is that has no place. */
static hw_status place_one(making *m, int i, const hw_bed_task *task)
{
    hw_err found = { 0 };
    hw_status status = hw_bed_place(task, &m->plan.places[i], &found);
    int pieces = m->project->garment.piece_count;
    return status == HW_OK ? HW_OK
                           : hw_err_set(m->err, status, "size %s: `%.60s`: %s",
                                 m->plan.finished.names[i / pieces],
                                 m->project->garment.pieces[i % pieces].name, found.text);
}

static hw_status make_places(making *m)
{
    int count = m->plan.finished.count * m->project->garment.piece_count;
    m->plan.places = hw_arena_get(m->arena, (size_t)count, sizeof *m->plan.places);
    if (m->plan.places == NULL) {
        return no_memory(m);
    }
    bool unpunched = m->project->card_start == 0 && m->project->machine.card_columns > 0 &&
                     m->plan.motif.fits_card;
    hw_status status = unpunched ? make_punch(m) : HW_OK;
    for (int i = 0; i < count && status == HW_OK; i++) {
        hw_bed_task task = bed_task(m, i);
        task.free_start = unpunched && !m->plan.has_punch;
        status = place_one(m, i, &task);
    }
    return status;
}

static hw_status make_card(making *m)
{
    hw_card_task task = hw_plan_card(&m->plan);
    return hw_card_make(&task, m->arena, &m->plan.card) == HW_OK ? HW_OK : no_memory(m);
}

#define USUAL_EASE_CM 2.0 /* alternatives are tried so far on both sides: own choice */

static hw_status make_alternatives(making *m)
{
    hw_counts_task counts = hw_plan_counts(&m->plan);
    hw_alternatives_task task = { .counts = &counts,
        .chosen = &m->plan.grading,
        .motif = &m->plan.motif,
        .motifs = m->project->others,
        .motif_count = m->project->other_count,
        .ease_cm = m->project->ease_range_cm > 0 ? m->project->ease_range_cm : USUAL_EASE_CM };
    return hw_alternatives_find(&task, m->arena, &m->plan.alternatives, m->err);
}

static hw_status make_hem(making *m)
{
    return hw_hem_plan(
        &m->project->hem, m->plan.motif.chart.rows, m->plan.gauge, &m->plan.hem, m->err);
}

static hw_status make_drafts(making *m)
{
    int pieces = m->project->garment.piece_count;
    size_t cells = (size_t)m->plan.finished.count * (size_t)pieces;
    m->plan.drafts = hw_arena_get(m->arena, cells, sizeof *m->plan.drafts);
    if (m->plan.drafts == NULL) {
        return no_memory(m);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < m->plan.finished.count * pieces && status == HW_OK; i++) {
        status = hw_above_draft(&m->plan, i, m->arena, &m->plan.drafts[i], m->err);
    }
    return status == HW_OK ? hw_rounds_find(&m->plan, m->arena, m->err) : status;
}

static hw_status make_rows(making *m)
{
    int pieces = m->project->garment.piece_count;
    size_t cells = (size_t)m->plan.finished.count * (size_t)pieces;
    m->plan.rows = hw_arena_get(m->arena, cells, sizeof *m->plan.rows);
    if (m->plan.rows == NULL) {
        return no_memory(m);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < m->plan.finished.count * pieces && status == HW_OK; i++) {
        hw_aside_find(&m->plan, i);
        status = hw_rowing_make(&m->plan, i, m->arena, &m->plan.rows[i], m->err);
    }
    int tubes = m->plan.tubes.count;
    for (int i = 0; i < m->plan.finished.count * tubes && status == HW_OK; i++) {
        const hw_tube *tube = &m->plan.tubes.list[i % tubes];
        status = hw_rowing_tube(&m->plan, i / tubes, tube, m->arena);
        status = status == HW_OK ? HW_OK : no_memory(m);
    }
    return status;
}

static hw_status make_notes(making *m)
{
    hw_notes notes;
    if (hw_notes_init(&notes, m->arena) != HW_OK) {
        return no_memory(m);
    }
    for (int k = 0; k < m->plan.whole->parts.count; k++) {
        notes.about = k == 0 ? NULL : m->plan.whole->parts.list[k].name;
        hw_caution_add(&m->plan.whole->plans[k], &notes);
    }
    notes.about = NULL;
    hw_meeting_add(m->plan.whole, &notes);
    hw_notes_sort(&notes);
    hw_basis_add(&m->plan, &notes);
    if (notes.refused) {
        return no_memory(m);
    }
    m->plan.notes = notes.notes;
    m->plan.note_count = notes.note_count;
    m->plan.basis = notes.basis;
    m->plan.basis_count = notes.basis_count;
    return HW_OK;
}

typedef hw_status making_step(making *m);

static hw_status run(making_step *const *steps, size_t count, making *m)
{
    hw_status status = HW_OK;
    for (size_t i = 0; i < count && status == HW_OK; i++) {
        status = steps[i](m);
    }
    return status;
}

/* What the parts share: fabrics and measurements. */
static hw_status make_shared(making *m)
{
    static making_step *const steps[] = { make_gauges, make_measures };
    return run(steps, sizeof steps / sizeof steps[0], m);
}

static hw_status make_part(const making *shared, int number, hw_whole *whole)
{
    static making_step *const steps[] = { make_motif, make_targets, make_counts, make_changes,
        make_tolerances, make_near, make_places, make_card, make_alternatives, make_hem,
        make_drafts };
    making m = *shared;
    m.project = m.plan.project = whole->parts.list[number].project;
    m.plan.part = number;
    if (hw_tubes_wanted(m.project)) {
        m.plan.tubes = hw_tubes_of(&m.project->garment);
    }
    hw_status status = run(steps, sizeof steps / sizeof steps[0], &m);
    whole->plans[number] = m.plan;
    return status;
}

/* Once all cards are known, those of bands higher up too. */
static hw_status make_all_rows(const making *shared, hw_whole *whole)
{
    hw_status status = HW_OK;
    for (int k = 0; k < whole->parts.count && status == HW_OK; k++) {
        making m = *shared;
        m.project = whole->parts.list[k].project;
        m.plan = whole->plans[k];
        status = make_rows(&m);
        whole->plans[k] = m.plan;
    }
    return status;
}

hw_status hw_calculate_plan(const hw_project *project, hw_arena *arena, hw_plan *out, hw_err *err)
{
    making m = { .project = project, .arena = arena, .plan = { .project = project }, .err = err };
    hw_whole *whole = hw_arena_get(arena, 1, sizeof *whole);
    hw_plan *plans = hw_arena_get(arena, HW_MAX_BANDS, sizeof *plans);
    if (whole == NULL || plans == NULL) {
        return no_memory(&m);
    }
    hw_status status = hw_tubes_prepare(project, arena, &project, err);
    whole->project = m.project = m.plan.project = project;
    whole->plans = plans;
    m.plan.whole = whole;
    status = status == HW_OK ? hw_layout_parts(project, arena, &whole->parts, err) : status;
    status = status == HW_OK ? make_shared(&m) : status;
    status = status == HW_OK ? hw_above_uppers(whole, arena, err) : status;
    for (int k = 0; k < whole->parts.count && status == HW_OK; k++) {
        status = make_part(&m, k, whole);
    }
    status = status == HW_OK ? hw_above_cards(whole, arena, err) : status;
    status = status == HW_OK ? make_all_rows(&m, whole) : status;
    status = status == HW_OK ? hw_above_joins(whole, arena, err) : status;
    status = status == HW_OK ? hw_trimming_make(whole, arena, err) : status;
    status = status == HW_OK ? hw_yarnuse_make(whole, arena, err) : status;
    if (status != HW_OK) {
        return status;
    }
    m.plan = whole->plans[0];
    status = make_notes(&m);
    if (status == HW_OK) {
        *out = whole->plans[0] = m.plan;
    }
    return status;
}
