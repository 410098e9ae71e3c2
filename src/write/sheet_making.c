/* The table of making up: what is sewn and picked up, one step after the other.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "core/makingup.h"
#include "write/sheets.h"

enum { COLUMNS = 2 };

/* Whether a side is a word of a name that begins with it: "left front". */
static bool of_a_side(const char *name)
{
    return strncmp(name, "left ", strlen("left ")) == 0 ||
           strncmp(name, "right ", strlen("right ")) == 0;
}

void hw_sheet_whose_side(const hw_sheet *sheet)
{
    const hw_garment *garment = &sheet->plan->whole->project->garment;
    bool any = false;
    for (int p = 0; p < garment->piece_count; p++) {
        any = any || of_a_side(garment->pieces[p].name);
    }
    for (int t = 0; t < garment->trim_count; t++) {
        any = any || of_a_side(garment->trims[t].name);
    }
    if (any) {
        hw_grid_section(sheet->grid, "left and right");
        hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH,
            "Where the name of a piece or trim begins with `left` or `right`, that is the "
            "wearer's. "
            "Behind the name of a piece they are its edges, as you see them from outside with the "
            "hem down.");
    }
}

void hw_sheet_making(const hw_sheet *sheet)
{
    hw_making_up list = { .count = 0 };
    hw_grid_begin(sheet->grid, sheet->arena, "Making up", COLUMNS);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "order of making up: common practice, no source");
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "step");
    hw_grid_text(sheet->grid, 1, HW_STYLE_HEAD, "what is done");
    if (sheet->plan->whole == NULL) {
        return;
    }
    if (hw_makingup_steps(sheet->plan->whole, sheet->arena, &list) != HW_OK) {
        hw_grid_section(sheet->grid, NULL); /* refused memory */
        return;
    }
    for (int i = 0; i < list.count; i++) {
        hw_grid_row(sheet->grid);
        hw_grid_count(sheet->grid, 0, HW_STYLE_PLAIN, i + 1);
        hw_grid_text(sheet->grid, 1, HW_STYLE_NOTE, list.steps[i]);
    }
    if (list.count == 0) {
        hw_grid_line(sheet->grid, HW_STYLE_PLAIN, "none");
        hw_grid_text(
            sheet->grid, 1, HW_STYLE_NOTE, "Nothing is sewn together; only the hem is closed.");
    }
    hw_sheet_whose_side(sheet);
}
