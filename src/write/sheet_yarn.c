/* The table of yarn: grams, metres and balls of each colour, for each size and piece.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/yarnuse.h"
#include "write/sheets.h"

static const struct hw_yarnuse *use_of(const hw_sheet *sheet)
{
    return sheet->plan->whole != NULL ? sheet->plan->whole->yarn : NULL;
}

enum { FINE = 10 }; /* grams or metres below which a tenth is shown */

static void number(const hw_sheet *sheet, int column, bool known, double value)
{
    if (known) {
        hw_grid_number(sheet->grid, column, HW_STYLE_PLAIN, value, value < FINE ? 1 : 0);
    } else {
        hw_grid_text(sheet->grid, column, HW_STYLE_PLAIN, "not known");
    }
}

/* A row's label with its unit; NULL for a label that memory was refused for. */
static void unit_line(const hw_sheet *sheet, const char *label, const char *unit)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL,
        label == NULL ? NULL : hw_arena_format(sheet->arena, "%s, %s", label, unit));
}

/* Grams and metres of one yarn in all sizes; a row that nothing is known of is left out. */
static void amount_lines(const hw_sheet *sheet, const char *label, const hw_yarn_amount *amounts)
{
    int sizes = sheet->plan->finished.count;
    bool grams = false;
    bool metres = false;
    for (int i = 0; i < sizes; i++) {
        grams = grams || amounts[i].has_g;
        metres = metres || amounts[i].has_m;
    }
    if (grams) {
        unit_line(sheet, label, "g");
        for (int i = 0; i < sizes; i++) {
            number(sheet, 1 + i, amounts[i].has_g, amounts[i].g);
        }
    }
    if (metres) {
        unit_line(sheet, label, "m");
        for (int i = 0; i < sizes; i++) {
            number(sheet, 1 + i, amounts[i].has_m, amounts[i].m);
        }
    }
}

static void total_lines(const hw_sheet *sheet, int yarn)
{
    const struct hw_yarnuse *use = use_of(sheet);
    hw_yarn_amount used[HW_MAX_SIZES] = { { 0 } };
    hw_yarn_amount bought[HW_MAX_SIZES] = { { 0 } };
    hw_mark mark = HW_MARK_GIVEN;
    int sizes = sheet->plan->finished.count;
    bool balls = false;
    for (int i = 0; i < sizes; i++) {
        used[i] = use->totals[i].of[yarn].used;
        bought[i] = use->totals[i].of[yarn].to_buy;
        mark = hw_mark_weaker(mark, used[i].mark);
        balls = balls || use->totals[i].of[yarn].balls > 0;
    }
    hw_grid_section(sheet->grid, use->yarns[yarn].name);
    amount_lines(sheet, "in the garment", used);
    amount_lines(sheet,
        hw_arena_format(sheet->arena, "with %.0f %% in reserve", use->task.reserve_percent),
        bought);
    if (balls) {
        hw_grid_line(sheet->grid, HW_STYLE_LABEL, "whole balls");
        for (int i = 0; i < sizes; i++) {
            hw_grid_count(sheet->grid, 1 + i, HW_STYLE_KEY, use->totals[i].of[yarn].balls);
        }
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "  known by");
    hw_grid_text(sheet->grid, 1, HW_STYLE_NOTE, hw_mark_name(mark));
}

static void part_lines(
    const hw_sheet *sheet, const char *name, const hw_yarn_amounts *list, int step)
{
    const struct hw_yarnuse *use = use_of(sheet);
    for (int y = 0; y < HW_USE_YARNS; y++) {
        hw_yarn_amount amounts[HW_MAX_SIZES] = { { 0 } };
        double most = 0;
        for (int i = 0; i < sheet->plan->finished.count; i++) {
            amounts[i] = list[i * step].of[y];
            most = amounts[i].g + amounts[i].m > most ? amounts[i].g + amounts[i].m : most;
        }
        if (most > 0) {
            amount_lines(
                sheet, hw_arena_format(sheet->arena, "%s: %s", name, use->yarns[y].name), amounts);
        }
    }
}

static void parts(const hw_sheet *sheet)
{
    const struct hw_yarnuse *use = use_of(sheet);
    const hw_garment *garment = &sheet->plan->whole->project->garment;
    hw_grid_section(sheet->grid, "piece by piece, without the reserve");
    for (int p = 0; p < use->pieces; p++) {
        part_lines(sheet, garment->pieces[p].name, use->of_pieces + p, use->pieces);
    }
    for (int t = 0; t < use->trims; t++) {
        part_lines(sheet, garment->trims[t].name, use->of_trims + t, use->trims);
    }
}

void hw_sheet_yarn(const hw_sheet *sheet)
{
    hw_sheet_by_size(sheet, "Yarn", "yarn");
    if (use_of(sheet) == NULL) {
        hw_grid_line(sheet->grid, HW_STYLE_NOTE,
            "not reckoned: weigh a swatch (`mass`), or write what yarn there is under `yarn`");
        return;
    }
    for (int y = 0; y < HW_USE_YARNS; y++) {
        total_lines(sheet, y);
    }
    parts(sheet);
}
