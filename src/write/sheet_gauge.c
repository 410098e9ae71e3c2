/* The table of gauges: what the measured places say of each fabric, and how sure it is.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "write/sheets.h"

enum { COLUMNS = 9 };

/* Lengths here are in one unit: inches where they alone are shown. */
static double length_unit(const hw_sheet *sheet)
{
    return sheet->plan->project->show == HW_SHOW_IN ? HW_CM_PER_INCH : 1;
}

/* A head of two parts, the second depending on the units shown. */
static void put_head(const hw_sheet *sheet, int column, const char *before, const char *after)
{
    hw_grid_text(
        sheet->grid, column, HW_STYLE_HEAD, hw_arena_format(sheet->arena, "%s%s", before, after));
}

static const char *unit_word(const hw_sheet *sheet)
{
    return sheet->plan->project->show == HW_SHOW_IN ? "in" : "cm";
}

static const char *const heads[COLUMNS] = { "fabric", "counted", "", "19 in 20 from", "to",
    "places", "put together by", "", "change by washing, %" };

static const char *const ways[] = { [HW_ACROSS] = "stitches", [HW_UP] = "rows" };
_Static_assert(sizeof ways / sizeof ways[0] == HW_WAY_COUNT, "a word for each way");

static const char *const kinds[] = {
    [HW_LINE_RATIOS] = "mean of count over length",
    [HW_LINE_FREE] = "line with an edge's share",
    [HW_LINE_ZERO] = "line without an edge's share",
    [HW_LINE_ROBUST] = "robust line",
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_LINE_COUNT, "words for each kind");

static const char *kind_words(const hw_gauge *gauge, const hw_gauge_side *side)
{
    if (gauge->mark == HW_MARK_ASSUMED) {
        return "assumed as the main fabric";
    }
    return side->from_dials               ? "read off other dials"
           : gauge->mark == HW_MARK_GIVEN ? "given"
                                          : kinds[side->kind];
}

static void side_row(const hw_sheet *sheet, hw_fabric fabric, hw_way way)
{
    const hw_gauge *gauge = &sheet->plan->gauge[fabric];
    const hw_gauge_side *side = &gauge->sides[way];
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, hw_fabric_name(fabric));
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, ways[way]);
    hw_grid_number(sheet->grid, 2, HW_STYLE_KEY, side->per_10cm * hw_sheet_per_factor(sheet), 2);
    if (side->has_interval) {
        hw_grid_number(sheet->grid, 3, HW_STYLE_PLAIN, side->low * hw_sheet_per_factor(sheet), 2);
        hw_grid_number(sheet->grid, 4, HW_STYLE_PLAIN, side->high * hw_sheet_per_factor(sheet), 2);
    } else {
        hw_grid_text(sheet->grid, 3, HW_STYLE_PLAIN, "not known");
    }
    hw_grid_count(sheet->grid, 5, HW_STYLE_PLAIN, side->places);
    hw_grid_text(sheet->grid, 6, HW_STYLE_PLAIN, kind_words(gauge, side));
    if (side->kind == HW_LINE_FREE || side->kind == HW_LINE_ROBUST) {
        hw_grid_number(sheet->grid, 7, HW_STYLE_PLAIN, side->edge_cm / length_unit(sheet), 2);
    }
    if (side->has_wash) {
        hw_grid_number(sheet->grid, 8, HW_STYLE_PLAIN, side->wash_percent, 1);
    }
}

static const char *const states[] = {
    [HW_UNSTATED] = "",
    [HW_RESTED] = "rested",
    [HW_WASHED] = "washed",
    [HW_KNITTED] = "knitted piece",
};
_Static_assert(sizeof states / sizeof states[0] == HW_STATE_COUNT, "a word for each state");

/* Why a place is left out: others tell more. */
static const char *left_out(const hw_gauge_input *in, const hw_swatch *swatch)
{
    bool other_dial = swatch->has_dial && in->has_dial && fabs(swatch->dial - in->dial) > 1e-9;
    return other_dial ? "left out: another dial" : "left out: washed ones count";
}

/* How a place is told of: it counts, is far off, or is left out. */
static const char *role(const hw_sheet *sheet, hw_fabric fabric, int place, hw_way way)
{
    int index[HW_MAX_SWATCHES];
    const hw_gauge_input *in = &sheet->plan->places_measured[fabric];
    int count = hw_gauge_places(in, way, index);
    bool counts = false;
    for (int k = 0; k < count; k++) {
        counts = counts || index[k] == place;
    }
    if (!counts) {
        return left_out(in, &in->swatches[place]);
    }
    return sheet->plan->gauge[fabric].sides[way].outlier == place ? "far off: measure again"
                                                                  : "counts";
}

static void place_row(const hw_sheet *sheet, hw_fabric fabric, int place, hw_way way)
{
    const hw_swatch *swatch = &sheet->plan->places_measured[fabric].swatches[place];
    double count = hw_swatch_count(swatch, way);
    if (!(count > 0)) {
        return;
    }
    double per_10cm = 10 * count / hw_swatch_length_cm(swatch, way);
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, hw_fabric_name(fabric));
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, ways[way]);
    hw_grid_number(sheet->grid, 2, HW_STYLE_PLAIN, per_10cm * hw_sheet_per_factor(sheet), 2);
    hw_grid_number(sheet->grid, 3, HW_STYLE_PLAIN, count, 1);
    hw_grid_number(
        sheet->grid, 4, HW_STYLE_PLAIN, hw_swatch_length_cm(swatch, way) / length_unit(sheet), 2);
    if (swatch->has_dial) {
        hw_grid_number(sheet->grid, 5, HW_STYLE_PLAIN, swatch->dial, 1);
    }
    hw_grid_text(sheet->grid, 6, HW_STYLE_PLAIN, role(sheet, fabric, place, way));
    if (swatch->state != HW_UNSTATED) {
        hw_grid_text(sheet->grid, 7, HW_STYLE_PLAIN, states[swatch->state]);
    }
    if (swatch->note != NULL) {
        hw_grid_text(sheet->grid, 8, HW_STYLE_PLAIN, swatch->note);
    }
}

static bool any_note(const hw_plan *plan)
{
    bool any = false;
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        for (int i = 0; i < plan->places_measured[f].count; i++) {
            any = any || plan->places_measured[f].swatches[i].note != NULL;
        }
    }
    return any;
}

static void place_rows(const hw_sheet *sheet)
{
    static const char *const place_heads[COLUMNS] = { "fabric", "counted", "", "count", "", "dial",
        "what it does", "state", "remark" };
    hw_grid_section(sheet->grid, "measured places");
    hw_grid_row(sheet->grid);
    for (int c = 0; c < COLUMNS - !any_note(sheet->plan); c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, place_heads[c]);
    }
    put_head(sheet, 2, hw_sheet_per(sheet), " by itself");
    put_head(sheet, 4, "over, ", unit_word(sheet));
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        for (int way = 0; way < HW_WAY_COUNT; way++) {
            for (int i = 0; i < sheet->plan->places_measured[f].count; i++) {
                place_row(sheet, (hw_fabric)f, i, (hw_way)way);
            }
        }
    }
}

/* Gauges over the dials that were swatched, and one number beyond, where there are two or more. */
static void dial_rows(const hw_sheet *sheet, hw_fabric fabric)
{
    const hw_dial_fit *fit = &sheet->plan->gauge[fabric].dial_fit;
    if (!sheet->plan->gauge[fabric].has_dial_fit) {
        return;
    }
    hw_grid_section(sheet->grid,
        hw_arena_format(sheet->arena, "%s fabric by dial, from swatches at several dials",
            hw_fabric_name(fabric)));
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "dial");
    hw_grid_text(sheet->grid, 1, HW_STYLE_HEAD,
        hw_arena_format(sheet->arena, "sts %s", hw_sheet_per(sheet)));
    hw_grid_text(sheet->grid, 6, HW_STYLE_HEAD, "put together by");
    for (double dial = fit->low_dial - 1; hw_dial_in_range(fit, dial); dial += 1) {
        bool beyond = dial < fit->low_dial - 1e-9 || dial > fit->high_dial + 1e-9;
        if (dial < 0) {
            continue;
        }
        hw_grid_row(sheet->grid);
        hw_grid_number(sheet->grid, 0, HW_STYLE_LABEL, dial, 1);
        hw_grid_number(sheet->grid, 1, HW_STYLE_PLAIN,
            hw_dial_gauge(fit, dial) * hw_sheet_per_factor(sheet), 2);
        hw_grid_text(sheet->grid, 6, HW_STYLE_PLAIN,
            beyond            ? "a guess beyond the swatches"
            : fit->order == 1 ? "a line"
                              : "a curve");
    }
}

void hw_sheet_gauge(const hw_sheet *sheet)
{
    hw_grid_begin(sheet->grid, sheet->arena, "Gauge", COLUMNS);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 2;
    hw_sheet_title(sheet, "gauge, and how sure it is");
    hw_grid_row(sheet->grid);
    for (int c = 0; c < COLUMNS; c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, heads[c]);
    }
    put_head(sheet, 2, "", hw_sheet_per(sheet));
    put_head(sheet, 7, "edge, ", unit_word(sheet));
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        for (int way = 0; way < HW_WAY_COUNT; way++) {
            side_row(sheet, (hw_fabric)f, (hw_way)way);
        }
        if (sheet->plan->gauge[f].g_per_m2 > 0) {
            hw_grid_line(sheet->grid, HW_STYLE_LABEL, hw_fabric_name((hw_fabric)f));
            hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, "g in a square metre");
            hw_grid_number(sheet->grid, 2, HW_STYLE_PLAIN, sheet->plan->gauge[f].g_per_m2, 0);
        }
    }
    place_rows(sheet);
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        dial_rows(sheet, (hw_fabric)f);
    }
}
