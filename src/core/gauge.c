/* Gauge from counts and lengths, and the stated rule for fabrics that nobody swatched.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/gauge.h"

#include <assert.h>
#include <math.h>

#define READING_SD_CM 0.029 /* of a reading to the millimetre: 1 mm / sqrt(12) */
#define LEAST_OFF_CM  0.2   /* a place nearer than this is never called far off: own choice */

static const struct {
    const char *counts, *length, *more;
} ways[] = {
    [HW_ACROSS] = { "stitches", "width", "wider" },
    [HW_UP] = { "rows", "length", "longer" },
};
_Static_assert(sizeof ways / sizeof ways[0] == HW_WAY_COUNT, "a row for each way");

/* Dial numbers looser than main: the band [G4], the facing [H1] in data/SOURCES.md. */
static const double dial_steps[] = {
    [HW_MAIN] = 0,
    [HW_BAND] = 1,
    [HW_FACING] = -1,
};
_Static_assert(sizeof dial_steps / sizeof dial_steps[0] == HW_FABRIC_COUNT, "one for each fabric");

#define WEIGHED_FROM 1.1 /* longest length over shortest: own choice */
#define SAME         1e-9
#define FOUR_DIGITS  9999.0
#define LEVEL        0.95
#define CM2_PER_M2   1e4

double hw_swatch_count(const hw_swatch *swatch, hw_way way)
{
    return way == HW_ACROSS ? swatch->sts : swatch->rows;
}

double hw_swatch_length_cm(const hw_swatch *swatch, hw_way way)
{
    return way == HW_ACROSS ? swatch->width_cm : swatch->length_cm;
}

/* One direction of one fabric. */
typedef struct {
    const hw_gauge_input *in;
    hw_way way;
    const char *whose;
    hw_arena *arena;
    hw_err *err;
} measuring;

static bool measured(const hw_gauge_input *in, int i, hw_way way)
{
    return hw_swatch_count(&in->swatches[i], way) > 0;
}

/* Places of a direction in one state. */
static int in_state(const hw_gauge_input *in, hw_way way, hw_state state, int *index)
{
    int count = 0;
    for (int i = 0; i < in->count; i++) {
        if (measured(in, i, way) && in->swatches[i].state == state) {
            index[count++] = i;
        }
    }
    return count;
}

/* Places of a direction at whatever dial; washed ones alone, and finished pieces, where there are
 * washed ones. */
static int at_any_dial(const hw_gauge_input *in, hw_way way, int *index)
{
    bool washed = in_state(in, way, HW_WASHED, index) > 0;
    int count = 0;
    for (int i = 0; i < in->count; i++) {
        hw_state state = in->swatches[i].state;
        if (measured(in, i, way) && (!washed || state == HW_WASHED || state == HW_KNITTED)) {
            index[count++] = i;
        }
    }
    return count;
}

static bool at_own_dial(const hw_gauge_input *in, int i)
{
    const hw_swatch *swatch = &in->swatches[i];
    return !swatch->has_dial || !in->has_dial || fabs(swatch->dial - in->dial) < SAME;
}

/* Keeps the places at the fabric's own dial; how many those are. */
static int keep_own_dial(const hw_gauge_input *in, int *index, int count)
{
    int kept = 0;
    for (int k = 0; k < count; k++) {
        if (at_own_dial(in, index[k])) {
            index[kept++] = index[k];
        }
    }
    return kept;
}

static int at_dial(const hw_gauge_input *in, hw_way way, int *index)
{
    return keep_own_dial(in, index, at_any_dial(in, way, index));
}

int hw_gauge_places(const hw_gauge_input *in, hw_way way, int *index)
{
    int own = at_dial(in, way, index);
    return own > 0 ? own : at_any_dial(in, way, index);
}

static bool counts_differ(const measuring *m, const int *index, int count)
{
    bool differ = false;
    for (int k = 1; k < count; k++) {
        double first = hw_swatch_count(&m->in->swatches[index[0]], m->way);
        double this = hw_swatch_count(&m->in->swatches[index[k]], m->way);
        differ = differ || fabs(this - first) > SAME;
    }
    return differ;
}

/* Finished pieces are measured without their edges. */
static int pieces_among(const hw_gauge_input *in, const int *index, int count)
{
    int pieces = 0;
    for (int k = 0; k < count; k++) {
        pieces += in->swatches[index[k]].state == HW_KNITTED;
    }
    return pieces;
}

static hw_line_kind kind_for(const measuring *m, const int *index, int count)
{
    static const hw_line_kind asked[] = {
        [HW_METHOD_USUAL] = HW_LINE_RATIOS,
        [HW_METHOD_LINE] = HW_LINE_FREE,
        [HW_METHOD_ZERO] = HW_LINE_ZERO,
        [HW_METHOD_RATIOS] = HW_LINE_RATIOS,
        [HW_METHOD_ROBUST] = HW_LINE_ROBUST,
    };
    bool usual = m->in->method == HW_METHOD_USUAL;
    bool edges = !m->in->markers && pieces_among(m->in, index, count) < count;
    bool line = usual && edges && counts_differ(m, index, count);
    return line ? HW_LINE_FREE : asked[m->in->method];
}

/* Lengths on counts for lines; counts on lengths for ratios, which are gauges then. */
static hw_status fit(
    const measuring *m, hw_line_kind kind, const int *index, int count, hw_line *out)
{
    double counts[HW_MAX_SWATCHES];
    double lengths_cm[HW_MAX_SWATCHES];
    double shares[HW_MAX_SWATCHES];
    double least_cm = HW_MAX_CM;
    double most_cm = 0;
    int pieces = pieces_among(m->in, index, count);
    for (int k = 0; k < count; k++) {
        const hw_swatch *swatch = &m->in->swatches[index[k]];
        shares[k] = swatch->state == HW_KNITTED ? 0 : 1;
        counts[k] = hw_swatch_count(swatch, m->way);
        lengths_cm[k] = hw_swatch_length_cm(swatch, m->way);
        least_cm = fmin(least_cm, lengths_cm[k]);
        most_cm = fmax(most_cm, lengths_cm[k]);
    }
    bool ratios = kind == HW_LINE_RATIOS;
    hw_points points = { .x = ratios ? lengths_cm : counts,
        .y = ratios ? counts : lengths_cm,
        .count = count,
        .share = pieces > 0 ? shares : NULL,
        .reading_sd = READING_SD_CM,
        .least_off = LEAST_OFF_CM,
        .weighed = most_cm >= WEIGHED_FROM * least_cm * (1 - SAME) };
    return hw_line_fit(&points, kind, m->arena, out, m->err);
}

/* A line's slope is cm for one count, and a gauge is its inverse; of ratios it is the gauge. */
static hw_gauge_side side_of(const hw_line *line, const int *index, int count)
{
    hw_gauge_side side = { .places = count,
        .kind = line->kind,
        .freedom = line->freedom,
        .edge_cm = line->intercept,
        .residual_sd = line->residual_sd,
        .outlier = line->outlier >= 0 ? index[line->outlier] : -1,
        .outlier_size = line->outlier_size };
    bool ratios = line->kind == HW_LINE_RATIOS;
    side.per_10cm = ratios ? 10 * line->slope : 10 / line->slope;
    if (!line->has_error) {
        return side;
    }
    hw_interval slopes = hw_line_interval(line->slope, line->slope_error, LEVEL, line->freedom);
    side.has_interval = slopes.low > 0;
    if (side.has_interval) {
        side.error =
            ratios ? 10 * line->slope_error : 10 * line->slope_error / (line->slope * line->slope);
        side.low = ratios ? 10 * slopes.low : 10 / slopes.high;
        side.high = ratios ? 10 * slopes.high : 10 / slopes.low;
    }
    return side;
}

static hw_status missing(const measuring *m)
{
    const char *counts = ways[m->way].counts;
    if (m->in->outright) {
        return hw_err_set(
            m->err, HW_ERR_MISSING, "%s has no %s: add `%s`", m->whose, counts, counts);
    }
    return hw_err_set(m->err, HW_ERR_MISSING, "%s has no %s: add `%s` and `%s` to a swatch",
        m->whose, counts, counts, ways[m->way].length);
}

/* Read off places at other dials, where none has the fabric's own. */
static hw_status off_other_dials(
    const measuring *m, const int *index, int count, hw_gauge_side *out)
{
    double dials[HW_MAX_SWATCHES];
    double per_10cm[HW_MAX_SWATCHES];
    for (int k = 0; k < count; k++) {
        const hw_swatch *swatch = &m->in->swatches[index[k]];
        dials[k] = swatch->dial;
        per_10cm[k] = 10 * hw_swatch_count(swatch, m->way) / hw_swatch_length_cm(swatch, m->way);
    }
    hw_dial_fit fitted;
    hw_status status = hw_dial_fit_gauges(dials, per_10cm, count, &fitted, m->err);
    if (status != HW_OK) {
        return status;
    }
    *out = (hw_gauge_side){ .per_10cm = hw_dial_gauge(&fitted, m->in->dial),
        .places = count,
        .kind = HW_LINE_RATIOS,
        .from_dials = true,
        .outlier = -1 };
    return HW_OK;
}

/* Whether places of several dials stand together because the fabric's own is not known. */
static bool dials_mixed(const hw_gauge_input *in)
{
    bool mixed = false;
    for (int i = 1; i < in->count && !in->has_dial; i++) {
        const hw_swatch *a = &in->swatches[i - 1];
        const hw_swatch *b = &in->swatches[i];
        mixed = mixed || (a->has_dial && b->has_dial && fabs(a->dial - b->dial) >= SAME);
    }
    return mixed;
}

static hw_status in_sense(const measuring *m, const hw_gauge_side *side)
{
    double per_10cm = side->per_10cm;
    if (per_10cm >= 1 && per_10cm <= HW_MAX_PER_10CM) {
        return HW_OK;
    }
    /* A line that hardly rises, or falls, comes to no number that is worth telling. */
    bool sloped = side->kind == HW_LINE_FREE || side->kind == HW_LINE_ROBUST;
    if (sloped && !(per_10cm > 0 && per_10cm < FOUR_DIGITS)) {
        return hw_err_set(m->err, HW_ERR_RANGE, "%s: places with more %s do not measure %s; %s",
            m->whose, ways[m->way].counts, ways[m->way].more,
            dials_mixed(m->in) ? "they were knitted at different dials: write the fabric's own "
                                 "`dial`, beside `swatches`"
                               : "check the counts and the lengths");
    }
    return hw_err_set(m->err, HW_ERR_RANGE,
        "%s comes to %.*g %s in 10 cm, which no yarn knits: check the counts and the lengths",
        m->whose, per_10cm < FOUR_DIGITS ? 4 : 12, per_10cm, ways[m->way].counts);
}

/* The mean of ratios of the fabric's own places in one state; 0 where there are none. */
static hw_status mean_in_state(const measuring *m, hw_state state, double *per_10cm)
{
    int index[HW_MAX_SWATCHES];
    int count = keep_own_dial(m->in, index, in_state(m->in, m->way, state, index));
    hw_line line = { .slope = 0 };
    hw_status status = count > 0 ? fit(m, HW_LINE_RATIOS, index, count, &line) : HW_OK;
    *per_10cm = 10 * line.slope;
    return status;
}

/* The change from rested to washed. Lines through few places are too unsteady to compare, and one
 * state may have too few for a line. */
static hw_status compare_wash(const measuring *m, hw_gauge_side *side)
{
    double rested = 0;
    double washed = 0;
    hw_status status = mean_in_state(m, HW_RESTED, &rested);
    if (status == HW_OK) {
        status = mean_in_state(m, HW_WASHED, &washed);
    }
    if (status == HW_OK && rested > 0 && washed > 0) {
        side->has_wash = true;
        side->wash_percent = 100 * (washed / rested - 1);
    }
    return status;
}

static hw_status measure_side(const measuring *m, hw_gauge_side *out)
{
    int index[HW_MAX_SWATCHES];
    int own = at_dial(m->in, m->way, index);
    hw_gauge_side side = { .outlier = -1 };
    hw_status status = HW_OK;
    if (own > 0) {
        hw_line line;
        status = fit(m, kind_for(m, index, own), index, own, &line);
        side = status == HW_OK ? side_of(&line, index, own) : side;
    } else {
        int count = at_any_dial(m->in, m->way, index);
        status = count > 0 ? off_other_dials(m, index, count, &side) : missing(m);
    }
    if (status == HW_OK) {
        status = in_sense(m, &side);
    }
    if (status == HW_OK) {
        status = compare_wash(m, &side);
    }
    if (status == HW_OK) {
        *out = side;
    }
    return status;
}

/* Mean mass of what was weighed, over its area as it was measured; 0 where nothing was. */
static double mass_over(const hw_gauge_input *in, const int *index, int count)
{
    double mass_g = 0;
    double area_cm2 = 0;
    for (int k = 0; k < count; k++) {
        const hw_swatch *swatch = &in->swatches[index[k]];
        if (swatch->mass_g > 0 && swatch->width_cm > 0 && swatch->length_cm > 0) {
            mass_g += swatch->mass_g;
            area_cm2 += swatch->width_cm * swatch->length_cm;
        }
    }
    return area_cm2 > 0 ? CM2_PER_M2 * mass_g / area_cm2 : 0;
}

/* Of the places that count for the gauge, or else of those that were weighed. */
static double mass_of(const hw_gauge_input *in)
{
    int index[HW_MAX_SWATCHES];
    int own = hw_gauge_places(in, HW_ACROSS, index);
    double g_per_m2 = mass_over(in, index, own);
    for (int i = 0; i < in->count; i++) {
        index[i] = i;
    }
    return g_per_m2 > 0 ? g_per_m2 : mass_over(in, index, in->count);
}

/* The gauge over the dial, where swatches at two or more dials are known; else it stays unknown. */
static void fit_dials(const hw_gauge_input *in, hw_gauge *gauge)
{
    int index[HW_MAX_SWATCHES];
    double dials[HW_MAX_SWATCHES];
    double per_10cm[HW_MAX_SWATCHES];
    int count = at_any_dial(in, HW_ACROSS, index);
    int known = 0;
    for (int k = 0; k < count; k++) {
        const hw_swatch *swatch = &in->swatches[index[k]];
        if (swatch->has_dial || in->has_dial) {
            dials[known] = swatch->has_dial ? swatch->dial : in->dial;
            per_10cm[known++] = 10 * swatch->sts / swatch->width_cm;
        }
    }
    gauge->has_dial_fit =
        known > 1 && hw_dial_fit_gauges(dials, per_10cm, known, &gauge->dial_fit, NULL) == HW_OK;
}

static hw_status measure(const measuring *about, hw_gauge *out)
{
    const hw_gauge_input *in = about->in;
    assert(in->count > 0 && in->count <= HW_MAX_SWATCHES);
    hw_gauge gauge = { .mark = in->outright ? HW_MARK_GIVEN : HW_MARK_MEASURED,
        .has_dial = in->has_dial,
        .dial = in->has_dial ? in->dial : 0,
        .g_per_m2 = mass_of(in) };
    for (int way = 0; way < HW_WAY_COUNT; way++) {
        measuring m = *about;
        m.way = (hw_way)way;
        hw_status status = measure_side(&m, &gauge.sides[way]);
        if (status != HW_OK) {
            return hw_err_place(m.err, status, in->line, 0);
        }
        gauge.mark = gauge.sides[way].from_dials ? HW_MARK_DERIVED : gauge.mark;
    }
    fit_dials(in, &gauge);
    gauge.sts_per_10cm = gauge.sides[HW_ACROSS].per_10cm;
    gauge.rows_per_10cm = gauge.sides[HW_UP].per_10cm;
    *out = gauge;
    return HW_OK;
}

hw_status hw_gauge_measure(const hw_gauge_input *in, hw_arena *arena, hw_gauge *out, hw_err *err)
{
    measuring m = { .in = in, .whose = "the gauge", .arena = arena, .err = err };
    return measure(&m, out);
}

/* What an input without a swatch comes to. */
static hw_gauge assumed(const hw_gauge_input *in, const hw_gauge *main_gauge)
{
    return (hw_gauge){
        .sts_per_10cm = main_gauge->sts_per_10cm,
        .rows_per_10cm = main_gauge->rows_per_10cm,
        .mark = HW_MARK_ASSUMED,
        .sides = { { .per_10cm = main_gauge->sts_per_10cm, .outlier = -1 },
            { .per_10cm = main_gauge->rows_per_10cm, .outlier = -1 } },
        .has_dial = in->has_dial,
        .dial = in->has_dial ? in->dial : 0,
    };
}

static void assume_dial(hw_fabric fabric, const hw_gauge *main_gauge, hw_gauge *gauge)
{
    double dial = main_gauge->dial + dial_steps[fabric];
    if (!gauge->has_dial && main_gauge->has_dial && dial >= 0) {
        gauge->has_dial = true;
        gauge->dial_assumed = true;
        gauge->dial = dial;
    }
}

hw_status hw_gauge_all(const hw_gauge_input *in, hw_arena *arena, hw_gauge *out, hw_err *err)
{
    static const char *const whose[] = {
        [HW_MAIN] = "the gauge of the main fabric",
        [HW_BAND] = "the gauge of the band",
        [HW_FACING] = "the gauge of the facing",
    };
    hw_gauge gauges[HW_FABRIC_COUNT] = { 0 };
    if (in[HW_MAIN].count == 0) {
        hw_status status = hw_err_set(err, HW_ERR_MISSING,
            "the gauge of the main fabric is not known: give its `stitches` and `rows`, or "
            "`swatches`, under main");
        return hw_err_place(err, status, in[HW_MAIN].line, 0);
    }
    for (int i = 0; i < HW_FABRIC_COUNT; i++) {
        hw_status status = HW_OK;
        if (in[i].count > 0) {
            measuring m = { .in = &in[i], .whose = whose[i], .arena = arena, .err = err };
            status = measure(&m, &gauges[i]);
        } else {
            gauges[i] = assumed(&in[i], &gauges[HW_MAIN]);
        }
        if (status != HW_OK) {
            return status;
        }
        assume_dial((hw_fabric)i, &gauges[HW_MAIN], &gauges[i]);
    }
    for (int i = 0; i < HW_FABRIC_COUNT; i++) {
        out[i] = gauges[i];
    }
    return HW_OK;
}

double hw_gauge_width_cm(const hw_gauge *gauge, double sts)
{
    return 10 * sts / gauge->sts_per_10cm;
}

double hw_gauge_sts(const hw_gauge *gauge, double width_cm)
{
    return width_cm * gauge->sts_per_10cm / 10;
}

double hw_gauge_length_cm(const hw_gauge *gauge, double rows)
{
    return 10 * rows / gauge->rows_per_10cm;
}

double hw_gauge_rows(const hw_gauge *gauge, double length_cm)
{
    return length_cm * gauge->rows_per_10cm / 10;
}
