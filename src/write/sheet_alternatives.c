/* The table of alternatives: what else could be done, best first, and what it does to every size.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units.h"
#include "write/sheets.h"

static const char *const heads[] = { "alternative", "repeat", "gap", "fits the card",
    "longest float, sts", "cost", "pieces inside" };
enum { HEADS = sizeof heads / sizeof heads[0], FLOAT = 4, COST, INSIDE };

/* Columns of the widest width off, breaks and centring, behind the heads. */
static int column_worst(void)
{
    return HEADS;
}

static int column_break(const hw_sheet *sheet)
{
    return column_worst() + hw_sheet_units(sheet);
}

/* One size's widths are shown in the first unit alone: a column a size is enough. */
static int column_sizes(const hw_sheet *sheet)
{
    return column_break(sheet) + 2;
}

static void head_row(const hw_sheet *sheet)
{
    const hw_sizes *sizes = &sheet->plan->finished;
    hw_grid_row(sheet->grid);
    for (int c = 0; c < HEADS; c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, heads[c]);
    }
    hw_sheet_length_heads(sheet, column_worst(), "furthest off");
    hw_grid_text(sheet->grid, column_break(sheet), HW_STYLE_HEAD, "seam break, sts");
    hw_grid_text(sheet->grid, column_break(sheet) + 1, HW_STYLE_HEAD, "off centre, sts");
    for (int i = 0; i < sizes->count; i++) {
        hw_grid_text(sheet->grid, column_sizes(sheet) + i, HW_STYLE_HEAD, sizes->names[i]);
    }
}

static void result_cells(const hw_sheet *sheet, const hw_alternative *a)
{
    int pieces = sheet->plan->finished.count * sheet->plan->project->garment.piece_count;
    hw_grid_number(sheet->grid, COST, HW_STYLE_PLAIN, a->total_cost, 3);
    hw_grid_text(sheet->grid, INSIDE, HW_STYLE_PLAIN,
        hw_arena_format(sheet->arena, "%d of %d", a->inside, pieces));
    hw_sheet_length(sheet, column_worst(), HW_STYLE_PLAIN, a->worst_cm);
    hw_grid_count(sheet->grid, column_break(sheet), HW_STYLE_PLAIN, a->most_break_sts);
    hw_grid_number(
        sheet->grid, column_break(sheet) + 1, HW_STYLE_PLAIN, a->most_off_centre_halves / 2.0, 1);
    for (int i = 0; i < sheet->plan->finished.count; i++) {
        if (sheet->plan->project->show == HW_SHOW_IN) {
            hw_grid_eighths(sheet->grid, column_sizes(sheet) + i, HW_STYLE_PLAIN,
                a->off_cm[i] / HW_CM_PER_INCH);
        } else {
            hw_grid_number(sheet->grid, column_sizes(sheet) + i, HW_STYLE_PLAIN, a->off_cm[i], 1);
        }
    }
}

static void part_rows(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    for (int i = 0; i < plan->alternatives.count; i++) {
        const hw_alternative *a = &plan->alternatives.list[i];
        bool planned = a->kind == HW_ALTER_NOTHING;
        hw_grid_row(sheet->grid);
        hw_grid_text(sheet->grid, 0, planned ? HW_STYLE_KEY : HW_STYLE_LABEL, a->what);
        hw_grid_count(sheet->grid, 1, HW_STYLE_PLAIN, a->repeat);
        hw_grid_count(sheet->grid, 2, HW_STYLE_PLAIN, a->gap);
        hw_grid_text(sheet->grid, 3, HW_STYLE_PLAIN, a->fits_card ? "yes" : "no");
        bool long_float = a->longest_float > plan->project->machine.longest_float;
        hw_grid_count(
            sheet->grid, FLOAT, long_float ? HW_STYLE_WARNING : HW_STYLE_PLAIN, a->longest_float);
        if (a->possible) {
            result_cells(sheet, a);
        } else {
            hw_grid_text(sheet->grid, COST, HW_STYLE_PLAIN, "cannot be done");
        }
    }
}

void hw_sheet_alternatives(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    hw_grid_begin(
        sheet->grid, sheet->arena, "Alternatives", column_sizes(sheet) + plan->finished.count);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, plan->project->show == HW_SHOW_IN
                              ? "what else could be done, first what fits the card; under each "
                                "size the width furthest "
                                "off, in"
                              : "what else could be done, first what fits the card; under each "
                                "size the width furthest "
                                "off, cm");
    head_row(sheet);
    for (int k = 0; k < hw_sheet_parts(sheet); k++) {
        hw_sheet part = hw_sheet_part(sheet, k);
        if (k > 0) {
            hw_grid_section(sheet->grid, hw_sheet_part_name(sheet, k));
        }
        part_rows(&part);
    }
}
