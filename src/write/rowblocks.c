/* Row plans looked up in the parts of a garment.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/rowblocks.h"

#include "write/sheetrows.h"

hw_row_block *hw_row_blocks(const hw_plan *plan, hw_arena *arena, int *count)
{
    const hw_whole *whole = plan->whole;
    int sizes = plan->finished.count;
    int pieces = whole != NULL ? whole->project->garment.piece_count : 0;
    hw_row_block *blocks = hw_arena_get(arena, (size_t)sizes * (size_t)pieces, sizeof *blocks);
    *count = 0;
    for (int i = 0; blocks != NULL && i < sizes * pieces; i++) {
        if (!hw_sheet_shows(plan, i % sizes)) {
            continue;
        }
        hw_plan_piece at = hw_plan_find(whole, i / sizes);
        int cell = i % sizes * at.plan->project->garment.piece_count + at.piece;
        blocks[(*count)++] =
            (hw_row_block){ .piece = whole->project->garment.pieces[i / sizes].name,
                .size = plan->finished.names[i % sizes],
                .plan = &at.plan->rows[cell] };
    }
    return blocks;
}

void hw_sheet_rowplans(const hw_sheet *sheet)
{
    int count = 0;
    hw_row_block *blocks = hw_row_blocks(sheet->plan, sheet->arena, &count);
    if (count > 0) {
        hw_sheet_rows(sheet, blocks, count);
        return;
    }
    hw_grid_begin(sheet->grid, sheet->arena, "Rows", 1);
    hw_sheet_title(sheet, "every row");
    hw_grid_line(sheet->grid, HW_STYLE_PLAIN, blocks == NULL ? NULL : "none");
}
