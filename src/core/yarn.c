/* Yarn by length: stitches and strands, weighed by swatches and balls.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/yarn.h"

#include <assert.h>

#include "core/num.h"

/* A knitted stitch takes at least its width there and back, and hardly more than twice what is
 * assumed: outside this, mass and metres do not belong together [Y4]. In widths of a stitch. */
static const double least_widths = 2;
static const double most_widths = 8;

hw_yarn_counts hw_yarn_band(const hw_motif *motif, hw_yarn_width width)
{
    int all = width.before_sts + width.after_sts +
              (width.motifs > 0 ? width.motifs * motif->repeat - motif->gap : 0);
    hw_yarn_counts counts = { 0 };
    for (int row = 0; row < motif->chart.rows; row++) {
        int contrast = width.motifs * motif->rows[row].contrast_sts;
        int background = all - contrast;
        counts.sts[HW_CONTRAST] += contrast;
        counts.sts[HW_BACKGROUND] += background;
        if (contrast > 0 && background > 0) {
            counts.passed[HW_CONTRAST] += background;
            counts.passed[HW_BACKGROUND] += contrast;
        }
    }
    return counts;
}

hw_yarn_counts hw_yarn_repeat(const hw_motif *motif)
{
    return hw_yarn_band(motif, (hw_yarn_width){ .motifs = 1, .after_sts = motif->gap });
}

static double width_cm(const hw_yarn_fabric *fabric)
{
    return 10 / fabric->sts_per_10cm;
}

/* Grams in one stitch of the weighed swatch, strands included. */
static double g_per_stitch(const hw_yarn_fabric *fabric)
{
    return fabric->g_per_m2 / 1e4 / (fabric->sts_per_10cm / 10 * fabric->rows_per_10cm / 10);
}

static bool two_colours(const hw_yarn_fabric *fabric)
{
    return fabric->swatch.sts[HW_CONTRAST] > 0;
}

/* The swatch's proportions: stitches and passed stitches of each colour, for one stitch of all. */
typedef struct {
    double sts[HW_COLOUR_COUNT], passed[HW_COLOUR_COUNT];
} mix;

static mix mix_of(const hw_yarn_fabric *fabric)
{
    const hw_yarn_counts *swatch = &fabric->swatch;
    double all = (double)swatch->sts[HW_BACKGROUND] + swatch->sts[HW_CONTRAST];
    mix found = { .sts = { [HW_BACKGROUND] = 1 } };
    for (int c = 0; all > 0 && c < HW_COLOUR_COUNT; c++) {
        found.sts[c] = swatch->sts[c] / all;
        found.passed[c] = swatch->passed[c] / all;
    }
    return found;
}

/* Sums over the colours of a swatch's stitches and passed stitches, each weighted by its yarn. */
typedef struct {
    double sts, passed;
} weighted;

static weighted weigh(const hw_yarn_fabric *fabric, const double *g_per_m)
{
    mix part = mix_of(fabric);
    weighted sum = { 0 };
    for (int c = 0; c < HW_COLOUR_COUNT; c++) {
        double weight = g_per_m != NULL ? g_per_m[fabric->yarn[c]] / 100 : 1;
        sum.sts += weight * part.sts[c];
        sum.passed += weight * part.passed[c];
    }
    return sum;
}

/* What unravelling says of a stitch: all that came off, less the strands. */
static void unravel(const hw_yarn_fabric *fabric, hw_yarn_fabric_rate *rate)
{
    if (fabric->unravelled_sts > 0) {
        weighted all = weigh(fabric, NULL);
        double each_cm = fabric->unravelled_m * 100 / fabric->unravelled_sts;
        rate->stitch_cm = each_cm - all.passed * rate->float_cm;
        rate->stitch_mark = HW_MARK_MEASURED;
        rate->has_length = true;
        rate->doubtful = !(rate->stitch_cm > 0);
    }
}

/* So many widths, until something better is known. */
static hw_yarn_fabric_rate first_guess(const hw_yarn_fabric *fabric)
{
    hw_yarn_fabric_rate rate = { .float_cm = width_cm(fabric), .scale = 1 };
    unravel(fabric, &rate);
    if (!rate.has_length || rate.doubtful) {
        rate.has_length = false;
        rate.stitch_cm = HW_YARN_STITCH_WIDTHS * rate.float_cm;
        rate.stitch_mark = HW_MARK_ASSUMED;
    }
    return rate;
}

/* Without any ball: as heavy as makes the first weighed swatch weigh what it does. */
static void yarns_from_swatch(const hw_yarn_task *task, hw_yarn_rates *rates)
{
    for (int f = 0; f < task->fabric_count && !rates->has_g; f++) {
        const hw_yarn_fabric *fabric = &task->fabrics[f];
        if (!(fabric->g_per_m2 > 0)) {
            continue;
        }
        const hw_yarn_fabric_rate *rate = &rates->fabrics[f];
        weighted all = weigh(fabric, NULL);
        double cm = all.sts * rate->stitch_cm + all.passed * rate->float_cm;
        for (int y = 0; y < task->yarn_count; y++) {
            bool of_it = y == fabric->yarn[HW_BACKGROUND] && !two_colours(fabric);
            rates->g_per_m[y] = g_per_stitch(fabric) / cm * 100;
            rates->g_per_m_marks[y] = of_it && rate->has_length ? HW_MARK_DERIVED : HW_MARK_ASSUMED;
        }
        rates->has_g = true;
    }
}

static bool ball_known(const hw_yarn *yarn)
{
    return yarn->ball_g > 0 && yarn->ball_m > 0;
}

static void measure_yarns(const hw_yarn_task *task, hw_yarn_rates *rates)
{
    int known = 0;
    while (known < task->yarn_count && !ball_known(&task->yarns[known])) {
        known++;
    }
    if (known == task->yarn_count) {
        yarns_from_swatch(task, rates);
        return;
    }
    rates->has_g = true;
    for (int y = 0; y < task->yarn_count; y++) {
        bool own = ball_known(&task->yarns[y]);
        const hw_yarn *yarn = &task->yarns[own ? y : known];
        rates->g_per_m[y] = yarn->ball_g / yarn->ball_m;
        rates->g_per_m_marks[y] = own ? HW_MARK_GIVEN : HW_MARK_ASSUMED;
    }
}

/* The weakest mark of the grams in a metre of a fabric's yarns. */
static hw_mark yarn_mark(const hw_yarn_fabric *fabric, const hw_yarn_rates *rates)
{
    hw_mark first = rates->g_per_m_marks[fabric->yarn[HW_BACKGROUND]];
    hw_mark second = rates->g_per_m_marks[fabric->yarn[HW_CONTRAST]];
    return two_colours(fabric) ? hw_mark_weaker(first, second) : first;
}

/* A stitch from the swatch's mass: what is left of it when the strands are taken off. */
static void solve_stitch(
    const hw_yarn_fabric *fabric, const hw_yarn_rates *rates, hw_yarn_fabric_rate *rate)
{
    weighted all = weigh(fabric, rates->g_per_m);
    double cm = (g_per_stitch(fabric) - all.passed * rate->float_cm) / all.sts;
    double widths = cm / rate->float_cm;
    if (!(widths >= least_widths && widths <= most_widths)) {
        rate->doubtful = true;
        return;
    }
    hw_mark yarns = yarn_mark(fabric, rates);
    rate->stitch_cm = cm;
    rate->stitch_mark = hw_mark_weaker(HW_MARK_DERIVED, yarns);
    rate->has_length = yarns <= HW_MARK_DERIVED;
}

static void scale_to_swatch(
    const hw_yarn_fabric *fabric, const hw_yarn_rates *rates, hw_yarn_fabric_rate *rate)
{
    weighted all = weigh(fabric, rates->g_per_m);
    double g = all.sts * rate->stitch_cm + all.passed * rate->float_cm;
    rate->scale = g_per_stitch(fabric) / g;
}

/* Widths of the main fabric's stitch, for one that nothing is known of. */
static void follow_main(const hw_yarn_fabric_rate *main, hw_yarn_fabric_rate *rate)
{
    rate->stitch_cm = main->stitch_cm / main->float_cm * rate->float_cm;
    rate->has_length = main->has_length;
}

static void measure_fabric(const hw_yarn_task *task, int f, hw_yarn_rates *rates)
{
    const hw_yarn_fabric *fabric = &task->fabrics[f];
    hw_yarn_fabric_rate *rate = &rates->fabrics[f];
    bool weighed = fabric->g_per_m2 > 0;
    bool unravelled = rate->stitch_mark == HW_MARK_MEASURED;
    if (!unravelled && weighed) {
        solve_stitch(fabric, rates, rate);
    }
    if (f > 0 && !unravelled && (!weighed || rate->doubtful)) {
        follow_main(&rates->fabrics[0], rate);
    }
    if (weighed) {
        scale_to_swatch(fabric, rates, rate);
        rate->mark = two_colours(fabric) ? hw_mark_weaker(HW_MARK_DERIVED, rate->stitch_mark)
                                         : HW_MARK_MEASURED;
    } else {
        hw_mark parts = hw_mark_weaker(rate->stitch_mark, yarn_mark(fabric, rates));
        rate->mark = hw_mark_weaker(HW_MARK_DERIVED, parts);
    }
}

hw_yarn_rates hw_yarn_measure(const hw_yarn_task *task)
{
    assert(task->yarn_count > 0 && task->yarn_count <= HW_MAX_YARNS);
    assert(task->fabric_count > 0 && task->fabric_count <= HW_MAX_YARN_FABRICS);
    hw_yarn_rates rates = { 0 };
    for (int f = 0; f < task->fabric_count; f++) {
        rates.fabrics[f] = first_guess(&task->fabrics[f]);
    }
    measure_yarns(task, &rates);
    for (int f = 0; f < task->fabric_count; f++) {
        measure_fabric(task, f, &rates);
    }
    return rates;
}

/* What a part is made of: as counted, or as its swatch over its area. */
static mix part_mix(const hw_yarn_fabric *fabric, const hw_yarn_part *part)
{
    const hw_yarn_counts *counts = &part->counts;
    bool counted = counts->sts[HW_BACKGROUND] > 0 || counts->sts[HW_CONTRAST] > 0;
    double all = part->area_cm2 * (fabric->sts_per_10cm / 10) * (fabric->rows_per_10cm / 10);
    mix found = mix_of(fabric);
    for (int c = 0; c < HW_COLOUR_COUNT; c++) {
        found.sts[c] = counted ? counts->sts[c] : all * found.sts[c];
        found.passed[c] = counted ? counts->passed[c] : all * found.passed[c];
    }
    return found;
}

hw_yarn_amounts hw_yarn_of_part(
    const hw_yarn_task *task, const hw_yarn_rates *rates, const hw_yarn_part *part)
{
    assert(part->fabric >= 0 && part->fabric < task->fabric_count);
    const hw_yarn_fabric *fabric = &task->fabrics[part->fabric];
    const hw_yarn_fabric_rate *rate = &rates->fabrics[part->fabric];
    mix made_of = part_mix(fabric, part);
    hw_yarn_amounts amounts = { 0 };
    for (int y = 0; y < task->yarn_count; y++) {
        amounts.of[y] = (hw_yarn_amount){ .has_g = true, .has_m = true, .mark = HW_MARK_GIVEN };
    }
    for (int c = 0; c < HW_COLOUR_COUNT; c++) {
        int y = fabric->yarn[c];
        double cm = made_of.sts[c] * rate->stitch_cm + made_of.passed[c] * rate->float_cm;
        if (!(cm > 0)) {
            continue;
        }
        hw_yarn_amount *amount = &amounts.of[y];
        bool unravelled = rate->stitch_mark == HW_MARK_MEASURED;
        amount->g += cm / 100 * rates->g_per_m[y] * rate->scale;
        amount->m += cm / 100 * (unravelled ? 1 : rate->scale);
        amount->has_g = rates->has_g;
        amount->has_m = rate->has_length || ball_known(&task->yarns[y]);
        amount->mark = rate->mark;
    }
    return amounts;
}

static void add(hw_yarn_amount *sum, const hw_yarn_amount *more)
{
    sum->g += more->g;
    sum->m += more->m;
    sum->has_g = sum->has_g && more->has_g;
    sum->has_m = sum->has_m && more->has_m;
    sum->mark = hw_mark_weaker(sum->mark, more->mark);
}

static int balls_of(const hw_yarn *yarn, const hw_yarn_amount *amount)
{
    int by_mass = amount->has_g && yarn->ball_g > 0 ? hw_num_up(amount->g / yarn->ball_g) : 0;
    int by_length = amount->has_m && yarn->ball_m > 0 ? hw_num_up(amount->m / yarn->ball_m) : 0;
    return by_mass > by_length ? by_mass : by_length;
}

hw_yarn_totals hw_yarn_of_parts(
    const hw_yarn_task *task, const hw_yarn_rates *rates, const hw_yarn_part *parts, int count)
{
    hw_yarn_totals totals = { 0 };
    double reserve = 1 + task->reserve_percent / 100;
    for (int y = 0; y < task->yarn_count; y++) {
        hw_yarn_total *total = &totals.of[y];
        total->used = (hw_yarn_amount){ .has_g = true, .has_m = true, .mark = HW_MARK_GIVEN };
    }
    for (int i = 0; i < count; i++) {
        hw_yarn_amounts amounts = hw_yarn_of_part(task, rates, &parts[i]);
        for (int y = 0; y < task->yarn_count; y++) {
            add(&totals.of[y].used, &amounts.of[y]);
        }
    }
    for (int y = 0; y < task->yarn_count; y++) {
        hw_yarn_total *total = &totals.of[y];
        total->to_buy = total->used;
        total->to_buy.g *= reserve;
        total->to_buy.m *= reserve;
        total->balls = balls_of(&task->yarns[y], &total->to_buy);
    }
    return totals;
}
