/* The table of tolerances: the gauge to keep in each size, and what a test knitter lays a rule to.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/sheets.h"

/* What a row shows, taken from one piece in one size. */
typedef struct {
    hw_fabric fabric;
    const char *label;
    double (*of)(const hw_tolerance *t);
    bool length;   /* in cm or inches; else stitches in 10 cm */
    bool interval; /* only where the gauge's own interval is known */
    bool upper;    /* only where there is an upper bound of the gauge */
} row;

static double width_low(const hw_tolerance *t)
{
    return t->width_cm.low;
}

static double width_high(const hw_tolerance *t)
{
    return t->width_cm.high;
}

static double gauge_low(const hw_tolerance *t)
{
    return t->sts_per_10cm.low;
}

static double gauge_high(const hw_tolerance *t)
{
    return t->sts_per_10cm.high;
}

static double fifty_low(const hw_tolerance *t)
{
    return t->fifty_cm.low;
}

static double fifty_high(const hw_tolerance *t)
{
    return t->fifty_cm.high;
}

static const row rows[] = {
    { HW_BAND, "band: 50 sts measure from", fifty_low, true, false, true },
    { HW_BAND, "band: 50 sts measure to", fifty_high, true, false, false },
    { HW_BAND, "band: gauge from", gauge_low, false, false, false },
    { HW_BAND, "band: gauge to", gauge_high, false, false, true },
    { HW_BAND, "band: width, 19 in 20, from", width_low, true, true, false },
    { HW_BAND, "band: width, 19 in 20, to", width_high, true, true, false },
    { HW_MAIN, "plain: 50 sts measure from", fifty_low, true, false, true },
    { HW_MAIN, "plain: 50 sts measure to", fifty_high, true, false, false },
    { HW_MAIN, "plain: gauge from", gauge_low, false, false, false },
    { HW_MAIN, "plain: gauge to", gauge_high, false, false, true },
    { HW_MAIN, "plain: width, 19 in 20, from", width_low, true, true, false },
    { HW_MAIN, "plain: width, 19 in 20, to", width_high, true, true, false },
};
_Static_assert(HW_TOLERANCE_STS == 50, "the labels say 50");

static void put_row(const hw_sheet *sheet, int piece, const row *r)
{
    const hw_plan *plan = sheet->plan;
    int pieces = plan->project->garment.piece_count;
    bool inches = plan->project->show == HW_SHOW_IN;
    const char *unit = !r->length ? hw_sheet_per(sheet) : inches ? "in" : "cm";
    double factor = !r->length ? hw_sheet_per_factor(sheet) : inches ? 1 / HW_CM_PER_INCH : 1;
    if (r->interval && !plan->tolerances[piece][r->fabric].has_interval) {
        return;
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL,
        hw_arena_format(sheet->arena, "%s, %s%s", r->label, r->length ? "" : "sts ", unit));
    for (int i = 0; i < plan->finished.count; i++) {
        const hw_tolerance *t = &plan->tolerances[i * pieces + piece][r->fabric];
        double value = r->of(t) * factor;
        if (!r->upper || t->bounded) {
            hw_grid_number(sheet->grid, 1 + i, HW_STYLE_PLAIN, value, 2);
        } else {
            hw_grid_text(sheet->grid, 1 + i, HW_STYLE_PLAIN, "any");
        }
    }
}

static void put_piece(const hw_sheet *sheet, int piece)
{
    hw_grid_section(sheet->grid, sheet->plan->project->garment.pieces[piece].name);
    for (size_t k = 0; k < sizeof rows / sizeof rows[0]; k++) {
        put_row(sheet, piece, &rows[k]);
    }
}

void hw_sheet_tolerance(const hw_sheet *sheet)
{
    hw_sheet_by_size(
        sheet, "Tolerance", "the gauge to keep, so that each width stays within the tolerance");
    for (int k = 0; k < hw_sheet_parts(sheet); k++) {
        hw_sheet part = hw_sheet_part(sheet, k);
        for (int p = 0; p < part.plan->project->garment.piece_count; p++) {
            put_piece(&part, p);
        }
    }
}
