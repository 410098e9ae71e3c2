/* Changed tasks through the same exact choice, and a ranking of what they come to.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/alternative.h"

#include <math.h>
#include <stdlib.h>

#include "core/num.h"

#define EASE_STEP_CM 0.5

typedef struct {
    const hw_alternatives_task *task;
    hw_arena *arena;
    hw_alternative *list;
    int count, room;
    hw_err *err;
} finding;

static hw_status no_memory(const finding *f)
{
    return hw_err_set(f->err, HW_ERR_NOMEM, "%s", "there is not enough memory for alternatives");
}

static double larger(double a, double b)
{
    return fabs(a) > fabs(b) ? a : b;
}

/* What a choice of counts comes to, over all sizes. */
static void sum_up(const hw_counts_task *counts, const hw_grading *grading, hw_alternative *a)
{
    a->possible = true;
    a->total_cost = grading->total_cost;
    for (int i = 0; i < counts->sizes * counts->pieces; i++) {
        const hw_fit *fit = &grading->fits[i];
        int size = i / counts->pieces;
        a->off_cm[size] = larger(larger(a->off_cm[size], fit->band_off_cm), fit->main_off_cm);
        a->worst_cm = fabs(larger(a->worst_cm, a->off_cm[size]));
        a->inside += fit->inside;
        int halves = abs(fit->margin[HW_LEFT] - fit->margin[HW_RIGHT]);
        a->most_off_centre_halves =
            halves > a->most_off_centre_halves ? halves : a->most_off_centre_halves;
    }
    for (int i = 0; i < counts->sizes * counts->garment->seam_count; i++) {
        int broken = abs(grading->seam_breaks[i]);
        a->most_break_sts = broken > a->most_break_sts ? broken : a->most_break_sts;
    }
}

static hw_alternative *add(
    finding *f, hw_alter_kind kind, const char *what, const hw_counts_task *counts)
{
    if (what == NULL || f->count == f->room) {
        return NULL;
    }
    hw_alternative *a = &f->list[f->count++];
    a->kind = kind;
    a->what = what;
    a->repeat = counts->repeat;
    a->gap = counts->gap;
    a->fits_card =
        f->task->motif->card_columns == 0 || f->task->motif->card_columns % counts->repeat == 0;
    a->longest_float = hw_motif_longest(f->task->motif);
    a->off_cm = hw_arena_get(f->arena, (size_t)counts->sizes, sizeof *a->off_cm);
    return a->off_cm == NULL ? NULL : a;
}

/* The exact choice for a changed task; no fit is an answer too. */
static hw_status work_out(finding *f, const hw_counts_task *counts, hw_alternative *a)
{
    hw_arena room;
    hw_grading grading;
    hw_arena_init(&room, &f->arena->mem, f->arena->block_size);
    hw_status status = hw_grade_choose(counts, &room, &grading, NULL);
    if (status == HW_OK) {
        sum_up(counts, &grading, a);
    }
    hw_arena_release(&room);
    return status == HW_ERR_NOMEM ? no_memory(f) : HW_OK;
}

/* The longest float of a figure at a gap. */
static hw_status find_float(finding *f, const hw_chart *chart, int gap, hw_alternative *a)
{
    hw_arena room;
    hw_motif motif;
    hw_arena_init(&room, &f->arena->mem, f->arena->block_size);
    hw_status status = hw_motif_analyse(chart, gap, 0, &room, &motif);
    if (status == HW_OK) {
        a->longest_float = hw_motif_longest(&motif);
    }
    hw_arena_release(&room);
    return status == HW_OK ? HW_OK : no_memory(f);
}

static hw_status add_gap(finding *f, int gap)
{
    hw_counts_task counts = *f->task->counts;
    counts.repeat += gap - counts.gap;
    counts.gap = gap;
    hw_alternative *a = add(f, HW_ALTER_GAP, hw_arena_format(f->arena, "gap %d", gap), &counts);
    hw_status status = a == NULL ? no_memory(f) : find_float(f, &f->task->motif->chart, gap, a);
    return status == HW_OK ? work_out(f, &counts, a) : status;
}

enum { NEAR_GAPS = 3 }; /* without a card: so much narrower and wider */

static hw_status add_gaps(finding *f)
{
    const hw_motif *motif = f->task->motif;
    hw_status status = HW_OK;
    for (int i = 0; i < motif->card_gap_count && status == HW_OK; i++) {
        if (motif->card_gaps[i] != motif->gap) {
            status = add_gap(f, motif->card_gaps[i]);
        }
    }
    int widest = HW_MAX_CHART_COLUMNS - motif->chart.width;
    for (int gap = motif->gap - NEAR_GAPS;
         gap <= motif->gap + NEAR_GAPS && motif->card_columns == 0 && status == HW_OK; gap++) {
        if (gap >= 0 && gap != motif->gap && gap <= widest) {
            status = add_gap(f, gap);
        }
    }
    return status;
}

static double factors(const hw_rule *rule)
{
    double sum = 0;
    for (int t = 0; t < rule->count; t++) {
        sum += rule->terms[t].factor;
    }
    return sum;
}

/* The measurement that the first piece's band hangs on. */
static const char *width_name(const hw_garment *garment)
{
    const hw_rule *rule = &garment->pieces[0].band_width;
    return rule->count > 0 ? rule->terms[0].name : "width";
}

static hw_status add_ease(finding *f, double cm)
{
    const hw_counts_task *from = f->task->counts;
    hw_counts_task counts = *from;
    size_t cells = (size_t)counts.sizes * (size_t)counts.pieces;
    hw_target *targets = hw_arena_get(f->arena, cells, sizeof *targets);
    hw_buf text;
    hw_buf_init(&text, &f->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&text, "finished %s %s", width_name(counts.garment), cm > 0 ? "+" : "");
    hw_length_show(&text, cm, counts.show);
    char *what = hw_buf_keep(&text, f->arena);
    hw_buf_release(&text);
    hw_alternative *a = add(f, HW_ALTER_EASE, what, &counts);
    if (targets == NULL || a == NULL) {
        return no_memory(f);
    }
    bool sound = true;
    for (int i = 0; i < counts.sizes * counts.pieces; i++) {
        const hw_piece *piece = &counts.garment->pieces[i % counts.pieces];
        targets[i].band_cm = from->targets[i].band_cm + factors(&piece->band_width) * cm;
        targets[i].main_cm = from->targets[i].main_cm + factors(&piece->main_width) * cm;
        sound = sound && targets[i].band_cm > 0 && targets[i].main_cm > 0 &&
                targets[i].band_cm <= HW_MAX_CM && targets[i].main_cm <= HW_MAX_CM;
    }
    counts.targets = targets;
    return sound ? work_out(f, &counts, a) : HW_OK;
}

static hw_status add_eases(finding *f)
{
    hw_status status = HW_OK;
    int steps = hw_num_down(f->task->ease_cm / EASE_STEP_CM);
    for (int k = -steps; k <= steps && status == HW_OK; k++) {
        if (k != 0) {
            status = add_ease(f, k * EASE_STEP_CM);
        }
    }
    return status;
}

/* A motif more or fewer in one piece and its mirrors, in every size, all else kept. */
static hw_status add_count(finding *f, int piece, int change)
{
    const hw_counts_task *counts = f->task->counts;
    hw_alternative *a = add(f, HW_ALTER_COUNT,
        hw_arena_format(f->arena, "%s: one motif %s", counts->garment->pieces[piece].name,
            change > 0 ? "more" : "fewer"),
        counts);
    if (a == NULL) {
        return no_memory(f);
    }
    hw_grading changed = { 0 };
    hw_status status = hw_grade_change(
        &(hw_grade_changing){ counts, f->task->chosen, piece, change }, f->arena, &changed);
    if (status == HW_OK) {
        sum_up(counts, &changed, a);
    }
    return status == HW_ERR_NOMEM ? no_memory(f) : HW_OK;
}

static hw_status add_counts(finding *f)
{
    const hw_garment *garment = f->task->counts->garment;
    hw_status status = HW_OK;
    for (int p = 0; p < garment->piece_count && status == HW_OK; p++) {
        if (garment->pieces[p].mirror_of < 0) {
            status = add_count(f, p, -1);
            status = status == HW_OK ? add_count(f, p, 1) : status;
        }
    }
    return status;
}

/* Another motif of the same repeat and gap comes to the same counts. */
static const hw_alternative *same_counts(const finding *f, const hw_alternative *a)
{
    for (int i = 0; i < f->count - 1; i++) {
        const hw_alternative *other = &f->list[i];
        bool whole = other->kind == HW_ALTER_NOTHING || other->kind == HW_ALTER_GAP ||
                     other->kind == HW_ALTER_MOTIF;
        if (whole && other->repeat == a->repeat && other->gap == a->gap) {
            return other;
        }
    }
    return NULL;
}

static hw_status add_motif(finding *f, const hw_motif_input *motif)
{
    hw_counts_task counts = *f->task->counts;
    counts.repeat = motif->chart.width + motif->gap;
    counts.gap = motif->gap;
    hw_alternative *a = add(f, HW_ALTER_MOTIF, motif->chart.name, &counts);
    if (a == NULL) {
        return no_memory(f);
    }
    if (counts.repeat > HW_MAX_CHART_COLUMNS) {
        return HW_OK; /* wider than a repeat may be: not possible */
    }
    hw_status status = find_float(f, &motif->chart, motif->gap, a);
    if (status != HW_OK) {
        return status;
    }
    const hw_alternative *same = same_counts(f, a);
    if (same == NULL) {
        return work_out(f, &counts, a);
    }
    hw_alternative copy = *same;
    copy.kind = a->kind;
    copy.what = a->what;
    copy.longest_float = a->longest_float;
    *a = copy;
    return HW_OK;
}

static int rank(const void *x, const void *y)
{
    const hw_alternative *a = x;
    const hw_alternative *b = y;
    if (a->possible != b->possible) {
        return a->possible ? -1 : 1;
    }
    if (a->fits_card != b->fits_card) {
        return a->fits_card ? -1 : 1;
    }
    hw_cost_units costs[] = { hw_cost_whole(a->total_cost), hw_cost_whole(b->total_cost) };
    if (costs[0] != costs[1]) {
        return costs[0] < costs[1] ? -1 : 1;
    }
    return (a->order > b->order) - (a->order < b->order);
}

hw_status hw_alternatives_find(
    const hw_alternatives_task *task, hw_arena *arena, hw_alternatives *out, hw_err *err)
{
    finding f = { .task = task, .arena = arena, .err = err };
    f.room = 1 + task->motif->card_gap_count + 2 * NEAR_GAPS + task->motif_count +
             2 * HW_MAX_PIECES + 2 * hw_num_up(task->ease_cm / EASE_STEP_CM);
    f.list = hw_arena_get(arena, (size_t)f.room, sizeof *f.list);
    hw_alternative *plan =
        f.list == NULL ? NULL : add(&f, HW_ALTER_NOTHING, "as planned", task->counts);
    if (plan == NULL) {
        return no_memory(&f);
    }
    sum_up(task->counts, task->chosen, plan);
    hw_status status = add_gaps(&f);
    status = status == HW_OK ? add_eases(&f) : status;
    status = status == HW_OK ? add_counts(&f) : status;
    for (int i = 0; i < task->motif_count && status == HW_OK; i++) {
        status = add_motif(&f, &task->motifs[i]);
    }
    if (status != HW_OK) {
        return status;
    }
    for (int i = 0; i < f.count; i++) {
        f.list[i].order = i;
    }
    qsort(f.list, (size_t)f.count, sizeof *f.list, rank);
    *out = (hw_alternatives){ .list = f.list, .count = f.count };
    return HW_OK;
}

/* A range of changes; empty where low is above high. */
typedef struct {
    double low, high;
} range;

static range both(range a, range b)
{
    return (range){ fmax(a.low, b.low), fmin(a.high, b.high) };
}

/* The member of a range that is nearest to a value. */
static double nearest(range r, double value)
{
    return fmin(fmax(value, r.low), r.high);
}

hw_mend hw_alternative_mend(const hw_counts_task *task, int size, int piece, int visible_sts)
{
    const hw_target *target = hw_counts_target(task, size, piece);
    double tol_cm = task->choices.tolerance_cm;
    double band_cm = hw_gauge_width_cm(&task->gauge[HW_BAND], visible_sts);
    double main_cm = hw_gauge_width_cm(&task->gauge[HW_MAIN], visible_sts);
    double band_off_cm = band_cm - target->band_cm;
    double main_off_cm = main_cm - target->main_cm;
    range widths = both((range){ band_off_cm - tol_cm, band_off_cm + tol_cm },
        (range){ main_off_cm - tol_cm, main_off_cm + tol_cm });
    hw_mend mend = { .by_width = widths.low <= widths.high };
    mend.width_cm = mend.by_width ? nearest(widths, 0) : 0;
    bool narrow = target->band_cm <= tol_cm || target->main_cm <= tol_cm;
    if (narrow) {
        return mend;
    }
    /* A gauge k times as fine makes every width 1/k. */
    range finer =
        both((range){ band_cm / (target->band_cm + tol_cm), band_cm / (target->band_cm - tol_cm) },
            (range){ main_cm / (target->main_cm + tol_cm), main_cm / (target->main_cm - tol_cm) });
    mend.by_gauge = finer.low <= finer.high;
    mend.band_sts_per_10cm =
        mend.by_gauge ? task->gauge[HW_BAND].sts_per_10cm * nearest(finer, 1) : 0;
    return mend;
}
