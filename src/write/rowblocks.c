/* Row plans looked up in the parts of a garment.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/rowblocks.h"

#include "core/trimming.h"
#include "write/sheetrows.h"

/* The i-th of a garment's pieces and then trims, in one size. */
static hw_row_block block_of(const hw_whole *whole, int i, int size)
{
    const hw_garment *garment = &whole->project->garment;
    hw_row_block block = { .size = whole->plans[0].finished.names[size] };
    if (i < garment->piece_count) {
        hw_plan_piece at = hw_plan_find(whole, i);
        block.piece = garment->pieces[i].name;
        block.plan = &at.plan->rows[size * at.plan->project->garment.piece_count + at.piece];
    } else {
        int trim = i - garment->piece_count;
        block.piece = garment->trims[trim].name;
        block.plan = &hw_trimming_at(whole, size, trim)->rows;
    }
    return block;
}

hw_row_block *hw_row_blocks(const hw_plan *plan, hw_arena *arena, int *count)
{
    const hw_whole *whole = plan->whole;
    int sizes = plan->finished.count;
    int all = whole != NULL ? whole->project->garment.piece_count + whole->trims->count : 0;
    hw_row_block *blocks = hw_arena_get(arena, (size_t)sizes * (size_t)all, sizeof *blocks);
    *count = 0;
    for (int i = 0; blocks != NULL && i < sizes * all; i++) {
        if (hw_sheet_shows(plan, i % sizes)) {
            blocks[(*count)++] = block_of(whole, i / sizes, i % sizes);
        }
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
