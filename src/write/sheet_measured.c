/* The table that a test knitter fills in, and that is read back: see core/knitted.h.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/sheets.h"

enum { SIZE, PIECE, FABRIC, STITCHES, WIDTH, ROWS, LENGTH, REMARK, COLUMNS };

static void put_heads(const hw_sheet *sheet)
{
    bool inches = sheet->plan->project->show == HW_SHOW_IN;
    const char *const heads[COLUMNS] = { "size", "piece", "fabric", "stitches",
        inches ? "width, in" : "width, cm", "rows", inches ? "length, in" : "length, cm",
        "remark" };
    hw_grid_row(sheet->grid);
    for (int c = 0; c < COLUMNS; c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, heads[c]);
    }
}

static void put_piece(const hw_sheet *sheet, int size, int piece, hw_fabric fabric)
{
    const hw_plan *plan = sheet->plan;
    const hw_fit *fit = hw_plan_fit(plan, size, piece);
    bool band = fabric == HW_BAND;
    hw_grid_row(sheet->grid);
    hw_grid_text(sheet->grid, SIZE, HW_STYLE_LABEL, plan->finished.names[size]);
    hw_grid_text(sheet->grid, PIECE, HW_STYLE_LABEL, plan->project->garment.pieces[piece].name);
    hw_grid_text(sheet->grid, FABRIC, HW_STYLE_LABEL, hw_fabric_name(fabric));
    hw_grid_count(sheet->grid, STITCHES, HW_STYLE_PLAIN, band ? fit->visible_sts : fit->main_sts);
    hw_grid_fill_in(sheet->grid, WIDTH);
    if (band) {
        hw_grid_count(sheet->grid, ROWS, HW_STYLE_PLAIN, plan->motif.chart.rows);
    } else {
        hw_grid_fill_in(sheet->grid, ROWS);
    }
    hw_grid_fill_in(sheet->grid, LENGTH);
    hw_grid_fill_in(sheet->grid, REMARK);
}

void hw_sheet_measured(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    hw_grid_begin(sheet->grid, sheet->arena, "Measured", COLUMNS);
    sheet->grid->table.head_rows = 4;
    sheet->grid->table.head_columns = 2;
    hw_sheet_title(sheet, "measured by the test knitter, washed, dry and flat");
    hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH,
        "Width: across the stitches named, without those that a seam takes up.");
    hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH, "Length: over the rows named.");
    put_heads(sheet);
    for (int i = 0; i < plan->finished.count * hw_sheet_parts(sheet); i++) {
        hw_sheet part = hw_sheet_part(sheet, i % hw_sheet_parts(sheet));
        for (int p = 0; p < part.plan->project->garment.piece_count; p++) {
            put_piece(&part, i / hw_sheet_parts(sheet), p, HW_BAND);
            put_piece(&part, i / hw_sheet_parts(sheet), p, HW_MAIN);
        }
    }
}
