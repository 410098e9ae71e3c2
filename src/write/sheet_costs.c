/* The table of costs: every term, so that anyone can add them up again.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/sheets.h"

enum { COST_DECIMALS = 4 };

static double band(const hw_cost *cost)
{
    return cost->band;
}

static double plain(const hw_cost *cost)
{
    return cost->main;
}

static double centre(const hw_cost *cost)
{
    return cost->centre;
}

static double step(const hw_cost *cost)
{
    return cost->grade;
}

static const struct {
    const char *label;
    double (*of)(const hw_cost *cost);
} terms[] = {
    { "band width", band },
    { "plain width", plain },
    { "off centre", centre },
    { "step from the size before", step },
};
enum { TERMS = sizeof terms / sizeof terms[0] };

static void head(const hw_sheet *sheet)
{
    hw_sheet_by_size(sheet, "Costs", "costs; the counts chosen are those of the least total");
}

static void term_line(const hw_sheet *sheet, int piece, int term)
{
    const hw_garment *garment = &sheet->plan->project->garment;
    hw_grid_line(sheet->grid, HW_STYLE_LABEL,
        hw_arena_format(sheet->arena, "%s: %s", garment->pieces[piece].name, terms[term].label));
    for (int i = 0; i < sheet->plan->finished.count; i++) {
        double value = terms[term].of(&hw_plan_fit(sheet->plan, i, piece)->cost);
        hw_grid_number(sheet->grid, 1 + i, HW_STYLE_PLAIN, value, COST_DECIMALS);
    }
}

static void part_lines(const hw_sheet *sheet)
{
    const hw_garment *garment = &sheet->plan->project->garment;
    const hw_grading *grading = &sheet->plan->grading;
    for (int at = 0; at < garment->piece_count * TERMS; at++) {
        term_line(sheet, at / TERMS, at % TERMS);
    }
    for (int k = 0; k < garment->seam_count; k++) {
        hw_grid_line(sheet->grid, HW_STYLE_LABEL, hw_sheet_seam_name(sheet, "seam", k));
        for (int i = 0; i < sheet->plan->finished.count; i++) {
            double value = grading->seam_costs[i * garment->seam_count + k];
            hw_grid_number(sheet->grid, 1 + i, HW_STYLE_PLAIN, value, COST_DECIMALS);
        }
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "total of all sizes");
    hw_grid_number(sheet->grid, 1, HW_STYLE_KEY, grading->total_cost, COST_DECIMALS);
}

void hw_sheet_costs(const hw_sheet *sheet)
{
    head(sheet);
    for (int k = 0; k < hw_sheet_parts(sheet); k++) {
        hw_sheet part = hw_sheet_part(sheet, k);
        if (k > 0) {
            hw_grid_section(sheet->grid, hw_sheet_part_name(sheet, k));
        }
        part_lines(&part);
    }
}
