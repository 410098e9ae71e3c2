/* The table of the hem: its parts in the order in which they are knitted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/sheets.h"

enum { PART, ROWS, DIAL, DIAL_DECIMALS = 1 };

/* One part of the hem; a dial or depth that is not above 0 is not shown. */
typedef struct {
    const char *name;
    int rows;
    bool has_dial;
    double dial;
    double depth_cm;
    hw_cell_style style;
} part;

/* Dials have a column where any is known. */
static bool has_dials(const hw_sheet *sheet)
{
    return sheet->plan->hem.has_dials || sheet->plan->gauge[HW_MAIN].has_dial;
}

static int depth_column(const hw_sheet *sheet)
{
    return has_dials(sheet) ? DIAL + 1 : DIAL;
}

static void part_row(const hw_sheet *sheet, const part *p)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, p->name);
    hw_grid_count(sheet->grid, ROWS, p->style, p->rows);
    if (p->has_dial) {
        hw_grid_number(sheet->grid, DIAL, p->style, p->dial, DIAL_DECIMALS);
    }
    if (p->depth_cm > 0) {
        hw_sheet_length(sheet, depth_column(sheet), HW_STYLE_PLAIN, p->depth_cm);
    }
}

static void head(const hw_sheet *sheet)
{
    hw_grid_begin(sheet->grid, sheet->arena, "Hem", depth_column(sheet) + hw_sheet_units(sheet));
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "the folded hem, in knitting order");
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "part");
    hw_grid_text(sheet->grid, ROWS, HW_STYLE_HEAD, "rows");
    if (has_dials(sheet)) {
        hw_grid_text(sheet->grid, DIAL, HW_STYLE_HEAD, "dial");
    }
    hw_sheet_length_heads(sheet, depth_column(sheet), "depth");
}

static part plain_part(const hw_plan *plan, const char *name, int rows)
{
    const hw_gauge *gauge = &plan->gauge[HW_MAIN];
    return (part){ .name = name,
        .rows = rows,
        .has_dial = gauge->has_dial,
        .dial = gauge->dial,
        .depth_cm = hw_gauge_length_cm(gauge, rows),
        .style = HW_STYLE_PLAIN };
}

static void parts(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    const hw_hem *hem = &plan->hem;
    const part rows[] = {
        { "facing", hem->facing_rows, hem->has_dials, hem->facing_dial, hem->facing_cm,
            HW_STYLE_KEY },
        { hw_arena_format(sheet->arena, "fold: %s", hw_fold_name(hem->fold)), hem->fold_rows, false,
            0, 0, HW_STYLE_PLAIN },
        plain_part(plan, "plain below the band", hem->below_rows),
        { "band, two colours", hem->band_rows, hem->has_dials, hem->band_dial,
            hw_gauge_length_cm(&plan->gauge[HW_BAND], hem->band_rows), HW_STYLE_KEY },
        plain_part(plan, "plain above the band", hem->above_rows),
        { "face: plain, band and plain", hem->face_rows, false, 0, hem->face_cm, HW_STYLE_KEY },
        { "all in all", hem->total_rows, false, 0, 0, HW_STYLE_KEY },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        part_row(sheet, &rows[i]);
    }
}

static void depth_row(const hw_sheet *sheet, const char *label, double cm)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, label);
    hw_sheet_length(sheet, depth_column(sheet), HW_STYLE_PLAIN, cm);
}

static void one_hem(const hw_sheet *sheet)
{
    const hw_hem *hem = &sheet->plan->hem;
    parts(sheet);
    hw_grid_section(sheet->grid, "depth, folded");
    if (hem->wanted_cm > 0) {
        depth_row(sheet, "face wanted", hem->wanted_cm);
        depth_row(sheet, "face knitted", hem->face_cm);
        depth_row(sheet, "face off by", hem->face_cm - hem->wanted_cm);
    } else {
        depth_row(sheet, "face knitted, from the rows asked for", hem->face_cm);
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "facing");
    hw_sheet_length(sheet, depth_column(sheet),
        hem->facing_deep ? HW_STYLE_WARNING : HW_STYLE_PLAIN, hem->facing_cm);
    if (hem->facing_deep) {
        hw_grid_line(sheet->grid, HW_STYLE_WARNING, "the facing is deeper than the face");
    }
    hw_grid_section(sheet->grid, "joining");
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "the row that joins facing and face");
    hw_grid_count(sheet->grid, ROWS, HW_STYLE_PLAIN, 1);
    if (hem->has_dials) {
        hw_grid_number(sheet->grid, DIAL, HW_STYLE_KEY, hem->joining_dial, DIAL_DECIMALS);
    }
}

void hw_sheet_hem(const hw_sheet *sheet)
{
    head(sheet);
    for (int k = 0; k < hw_sheet_parts(sheet); k++) {
        hw_sheet one = hw_sheet_part(sheet, k);
        if (hw_sheet_parts(sheet) > 1) {
            hw_grid_section(sheet->grid, hw_sheet_part_name(sheet, k));
        }
        one_hem(&one);
    }
}
