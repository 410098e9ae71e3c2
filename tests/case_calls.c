/* The table of calls: what a worked example may ask of the core.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "case_calls.h"

#include <string.h>

#include "core/fit.h"
#include "core/garment.h"
#include "core/gauge.h"
#include "core/hem.h"
#include "core/motif.h"
#include "core/num.h"
#include "core/spread.h"
#include "core/units.h"

static const char *text_of(hw_case *example, const char *key)
{
    for (int i = 0; i < example->given_count; i++) {
        if (strcmp(example->given[i].key, key) == 0) {
            example->given[i].used = true;
            return example->given[i].value;
        }
    }
    return NULL;
}

static const char *must(hw_case *example, const char *key)
{
    const char *text = text_of(example, key);
    if (text == NULL) {
        example->broken = key;
    }
    return text == NULL ? "" : text;
}

/* The three kinds of value; `otherwise` where the example leaves the key out. */
static double number_of(hw_case *example, const char *key, double otherwise)
{
    const char *text = text_of(example, key);
    double value = otherwise;
    if (text != NULL && hw_num_parse(text, strlen(text), &value, NULL) != HW_OK) {
        example->broken = key;
    }
    return value;
}

static int count_of(hw_case *example, const char *key, int otherwise)
{
    const char *text = text_of(example, key);
    int value = otherwise;
    size_t used = 0;
    if (text != NULL &&
        (hw_num_parse_count(text, strlen(text), &value, &used) != HW_OK || used != strlen(text))) {
        example->broken = key;
    }
    return value;
}

static double cm_of(hw_case *example, const char *key, double otherwise_cm)
{
    const char *text = text_of(example, key);
    double value_cm = otherwise_cm;
    if (text != NULL && hw_length_parse(text, strlen(text), HW_UNIT_CM, &value_cm) != HW_OK) {
        example->broken = key;
    }
    return value_cm;
}

static void result(hw_case *example, const char *name, double value)
{
    if (example->result_count < HW_CASE_LINES) {
        example->results[example->result_count++] = (hw_case_result){ name, value };
    }
}

/* text, usual -> cm, in */
static hw_status call_length(hw_case *example)
{
    const char *text = must(example, "text");
    const char *usual = text_of(example, "usual");
    hw_unit unit = HW_UNIT_CM;
    if (usual != NULL && hw_unit_parse(usual, strlen(usual), &unit) != HW_OK) {
        example->broken = "usual";
    }
    double length_cm = 0;
    hw_status status = hw_length_parse(text, strlen(text), unit, &length_cm);
    result(example, "cm", length_cm);
    result(example, "in", length_cm / hw_unit_cm(HW_UNIT_IN));
    result(example, "yd", length_cm / hw_unit_cm(HW_UNIT_YD));
    return status;
}

/* The swatch of an example. One that says nothing of rows gets as many as stitches, and the other
 * way round: a gauge needs both, and nothing is expected of the one that was left out. */
static hw_swatch swatch_of(hw_case *example)
{
    hw_swatch swatch = {
        .sts = count_of(example, "stitches", 0),
        .width_cm = cm_of(example, "width", 0),
        .rows = count_of(example, "rows", 0),
        .length_cm = cm_of(example, "length", 0),
    };
    if (swatch.rows == 0) {
        swatch.rows = swatch.sts;
        swatch.length_cm = swatch.width_cm;
    } else if (swatch.sts == 0) {
        swatch.sts = swatch.rows;
        swatch.width_cm = swatch.length_cm;
    }
    return swatch;
}

static void result_sts(hw_case *example, const hw_gauge *gauge, double wide_cm)
{
    double sts = hw_gauge_sts(gauge, wide_cm);
    result(example, "sts", sts);
    result(example, "nearest_sts", hw_num_nearest(sts));
    result(example, "even_sts", hw_num_nearest_even(sts));
}

/* stitches, width, rows, length, wide, long -> the gauge; stitches and rows of the lengths */
static hw_status call_gauge(hw_case *example)
{
    const double inch_cm = hw_unit_cm(HW_UNIT_IN);
    hw_swatch swatch = swatch_of(example);
    hw_gauge_input in = { .swatches = &swatch, .count = 1 };
    hw_gauge gauge = { 0 };
    double wide_cm = cm_of(example, "wide", 0);
    double long_cm = cm_of(example, "long", 0);
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_status status = hw_gauge_measure(&in, &arena, &gauge, NULL);
    hw_arena_release(&arena);
    if (status != HW_OK) {
        return status;
    }
    result(example, "sts_per_10cm", gauge.sts_per_10cm);
    result(example, "rows_per_10cm", gauge.rows_per_10cm);
    result(example, "sts_per_cm", hw_gauge_sts(&gauge, 1));
    result(example, "rows_per_cm", hw_gauge_rows(&gauge, 1));
    result(example, "sts_per_in", hw_gauge_sts(&gauge, inch_cm));
    result(example, "rows_per_in", hw_gauge_rows(&gauge, inch_cm));
    result_sts(example, &gauge, wide_cm);
    double rows = hw_gauge_rows(&gauge, long_cm);
    result(example, "rows", rows);
    result(example, "nearest_rows", hw_num_nearest(rows));
    result(example, "width_in", hw_gauge_width_cm(&gauge, swatch.sts) / inch_cm);
    return status;
}

static void result_fit(
    hw_case *example, bool has, const hw_fit_count *count, const char *const names[4])
{
    if (has) {
        result(example, names[0], count->motifs);
        result(example, names[1], count->visible_sts);
        result(example, names[2], count->margin[HW_LEFT]);
        result(example, names[3], count->margin[HW_RIGHT]);
    }
}

static hw_fit_rules rules_of(hw_case *example)
{
    hw_fit_rules rules = {
        .repeat = count_of(example, "repeat", 0),
        .gap = count_of(example, "gap", 0),
        .least_margin = count_of(example, "least_margin", 0),
        .most_sts = count_of(example, "bed", HW_MAX_STS),
    };
    rules.most_margin = count_of(example, "most_margin", rules.gap);
    return rules;
}

/* repeat, gap, margins, bed, wanted -> the nearest counts below and above */
static hw_status call_near(hw_case *example)
{
    static const char *const below[] = { "below_motifs", "below_sts", "below_left", "below_right" };
    static const char *const above[] = { "above_motifs", "above_sts", "above_left", "above_right" };
    hw_fit_rules rules = rules_of(example);
    hw_fit_near near = { 0 };
    hw_status status = hw_fit_nearest(&rules, number_of(example, "wanted", 0), &near, NULL);
    if (status == HW_OK) {
        result_fit(example, near.has_below, &near.below, below);
        result_fit(example, near.has_above, &near.above, above);
    }
    return status;
}

/* repeat, gap, motifs, left, right -> sts */
static hw_status call_visible(hw_case *example)
{
    hw_fit_rules rules = rules_of(example);
    int motifs = count_of(example, "motifs", 0);
    int left = count_of(example, "left", 0);
    int right = count_of(example, "right", 0);
    result(example, "sts", hw_fit_visible(&rules, motifs, left, right));
    return HW_OK;
}

/* changes, over -> every, times, more_times, the mean step, the first position in a flat row */
static hw_status call_spread(hw_case *example)
{
    hw_spread spread = { 0 };
    hw_status status = hw_spread_steps(
        count_of(example, "changes", 0), count_of(example, "over", 0), &spread, NULL);
    if (status != HW_OK) {
        return status;
    }
    result(example, "every", spread.every);
    result(example, "times", spread.times);
    result(example, "more_times", spread.more_times);
    int total = spread.times * spread.every + spread.more_times * (spread.every + 1);
    result(example, "mean_step", (double)total / (spread.times + spread.more_times));
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    int *positions = NULL;
    status = hw_spread_positions(&spread, &arena, &positions);
    if (status == HW_OK) {
        result(example, "first", positions[0]);
        result(example, "last", positions[spread.count - 1]);
    }
    hw_arena_release(&arena);
    return status;
}

static hw_hem_input hem_of(hw_case *example)
{
    hw_hem_input in = {
        .depth_cm = cm_of(example, "depth", 0),
        .face_rows = count_of(example, "face_rows", 0),
    };
    const char *fold = text_of(example, "fold");
    const char *facing = text_of(example, "facing");
    for (int i = 0; fold != NULL && i < HW_FOLD_COUNT; i++) {
        in.fold = strcmp(hw_fold_name((hw_fold)i), fold) == 0 ? (hw_fold)i : in.fold;
    }
    for (int i = 0; facing != NULL && i < HW_FACING_COUNT; i++) {
        in.facing = strcmp(hw_facing_name((hw_facing)i), facing) == 0 ? (hw_facing)i : in.facing;
    }
    if (fold != NULL && strcmp(hw_fold_name(in.fold), fold) != 0) {
        example->broken = "fold";
    }
    if (facing != NULL && strcmp(hw_facing_name(in.facing), facing) != 0) {
        example->broken = "facing";
    }
    return in;
}

static void result_hem(hw_case *example, const hw_hem *hem)
{
    result(example, "facing_rows", hem->facing_rows);
    result(example, "fold_rows", hem->fold_rows);
    result(example, "below_rows", hem->below_rows);
    result(example, "band_rows", hem->band_rows);
    result(example, "above_rows", hem->above_rows);
    result(example, "face_rows", hem->face_rows);
    result(example, "total_rows", hem->total_rows);
    result(example, "face_cm", hem->face_cm);
    result(example, "facing_cm", hem->facing_cm);
    result(example, "raised", hem->raised);
    if (hem->has_dials) {
        result(example, "facing_dial", hem->facing_dial);
        result(example, "band_dial", hem->band_dial);
        result(example, "joining_dial", hem->joining_dial);
    }
}

/* depth or face_rows, fold, facing, band_rows, main dial and swatch -> rows and dials of the hem;
 * band and facing as they follow from the main fabric */
static hw_status call_hem(hw_case *example)
{
    hw_hem_input in = hem_of(example);
    hw_swatch swatch = swatch_of(example);
    double dial = number_of(example, "dial", -1);
    hw_gauge_input main = { .swatches = &swatch, .count = 1, .has_dial = dial >= 0, .dial = dial };
    const hw_gauge_input fabrics[HW_FABRIC_COUNT] = { [HW_MAIN] = main };
    hw_gauge gauges[HW_FABRIC_COUNT] = { { 0 } };
    hw_hem hem = { 0 };
    int band_rows = count_of(example, "band_rows", 0);
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_status status = hw_gauge_all(fabrics, &arena, gauges, NULL);
    hw_arena_release(&arena);
    if (status == HW_OK) {
        status = hw_hem_plan(&in, band_rows, gauges, &hem, NULL);
    }
    if (status == HW_OK) {
        result_hem(example, &hem);
    }
    return status;
}

/* motif, gap, card -> repeat, whether and how often it goes into the card */
static hw_status call_motif(hw_case *example)
{
    unsigned char cells[HW_MAX_CHART_COLUMNS] = { HW_CONTRAST };
    hw_chart chart = {
        .name = "one row",
        .width = count_of(example, "motif", 1),
        .rows = 1,
        .cells = cells,
    };
    int gap = count_of(example, "gap", 0);
    int card_columns = count_of(example, "card", 0);
    if (chart.width < 1 || chart.width > HW_MAX_CHART_COLUMNS) {
        example->broken = "motif";
        return HW_ERR_RANGE;
    }
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_motif motif = { .gap = 0 };
    hw_status status = hw_motif_analyse(&chart, gap, card_columns, &arena, &motif);
    if (status == HW_OK) {
        result(example, "repeat", motif.repeat);
        result(example, "fits_card", motif.fits_card);
        result(example, "repeats_on_card", motif.repeats_on_card);
        result(example, "card_gaps", motif.card_gap_count);
    }
    hw_arena_release(&arena);
    return status;
}

/* Body measurements `of` and, where it is given, `of_2`, in the one size of an example. */
static hw_status body_of(hw_case *example, hw_sizes *body, hw_arena *arena)
{
    static const char *const names[] = { "of", "of_2" };
    for (int i = 0; i < 2; i++) {
        double value_cm = cm_of(example, names[i], 0);
        hw_measure *measure = hw_sizes_add(body, names[i], arena);
        if (measure == NULL) {
            return HW_ERR_NOMEM;
        }
        measure->values_cm[0] = value_cm;
        measure->missing[0] = false;
    }
    return HW_OK;
}

static hw_ease ease_of(hw_case *example)
{
    const char *text = text_of(example, "ease");
    if (text == NULL || strchr(text, '%') == NULL) {
        return (hw_ease){ .cm = cm_of(example, "ease", 0) };
    }
    hw_ease ease = { 0 };
    if (hw_num_parse(text, strcspn(text, "%"), &ease.percent, NULL) != HW_OK) {
        example->broken = "ease";
    }
    return ease;
}

/* factor, of, factor_2, of_2, plus, ease -> the finished measurement; with a swatch its stitches */
static hw_status call_finish(hw_case *example)
{
    hw_measure room[2][HW_MAX_MEASURES];
    const char *names[] = { "one size" };
    hw_sizes body = { .count = 1, .names = names, .measures = room[0] };
    hw_sizes finished = { .count = 1, .names = names, .measures = room[1] };
    hw_finished what = { .name = "finished", .ease = ease_of(example) };
    what.rule.terms[0] = (hw_term){ number_of(example, "factor", 1), "of", false };
    what.rule.terms[1] = (hw_term){ number_of(example, "factor_2", 0), "of_2", false };
    what.rule.count = 2;
    what.rule.constant_cm = cm_of(example, "plus", 0);
    hw_garment garment = { .title = "rule", .finished = &what, .finished_count = 1 };
    hw_garment_task task = { .garment = &garment, .body = &body };
    hw_swatch swatch = swatch_of(example);
    hw_gauge_input in = { .swatches = &swatch, .count = 1 };
    hw_gauge gauge = { 0 };

    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_status status = body_of(example, &body, &arena);
    if (status == HW_OK) {
        status = hw_garment_finish(&task, &finished, &arena, NULL);
    }
    if (status == HW_OK) {
        double value_cm = finished.measures[0].values_cm[0];
        result(example, "cm", value_cm);
        result(example, "in", value_cm / hw_unit_cm(HW_UNIT_IN));
        result(example, "nearest_in", hw_num_nearest(value_cm / hw_unit_cm(HW_UNIT_IN)));
        if (swatch.sts > 0 && hw_gauge_measure(&in, &arena, &gauge, NULL) == HW_OK) {
            result_sts(example, &gauge, value_cm);
        }
    }
    hw_arena_release(&arena);
    return status;
}

static const struct {
    const char *name;
    hw_status (*call)(hw_case *example);
} calls[] = {
    { "length", call_length },
    { "gauge", call_gauge },
    { "near", call_near },
    { "visible", call_visible },
    { "spread", call_spread },
    { "hem", call_hem },
    { "motif", call_motif },
    { "finish", call_finish },
};

bool hw_case_run(hw_case *example)
{
    for (size_t i = 0; i < sizeof calls / sizeof calls[0]; i++) {
        if (strcmp(calls[i].name, example->call) == 0) {
            example->status = calls[i].call(example);
            return true;
        }
    }
    return false;
}
