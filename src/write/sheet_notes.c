/* The tables of words: what to know, and what the numbers rest on.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "write/sheets.h"

static const struct {
    const char *word;
    hw_cell_style style;
} kinds[] = {
    [HW_NOTE_REMARK] = { "remark", HW_STYLE_PLAIN },
    [HW_NOTE_WARNING] = { "warning", HW_STYLE_WARNING },
    [HW_NOTE_SAFETY] = { "safety", HW_STYLE_SAFETY },
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_NOTE_COUNT, "a word for each kind");

static const char *const basis_heads[] = { "what", "value", "how it was come by", "known by",
    "source" };
enum { BASIS_COLUMNS = sizeof basis_heads / sizeof basis_heads[0] };

const char *hw_sheet_note_kind(hw_note_kind kind)
{
    assert(kind < HW_NOTE_COUNT);
    return kinds[kind].word;
}

void hw_sheet_notes(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    hw_grid_begin(sheet->grid, sheet->arena, "Notes", 2);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "notes");
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "kind");
    hw_grid_text(sheet->grid, 1, HW_STYLE_HEAD, "note");
    for (int i = 0; i < plan->note_count; i++) {
        hw_note_kind kind = plan->notes[i].kind;
        hw_grid_line(sheet->grid, kinds[kind].style, hw_sheet_note_kind(kind));
        hw_grid_text(sheet->grid, 1, HW_STYLE_NOTE, plan->notes[i].text);
    }
    if (plan->note_count == 0) {
        hw_grid_line(sheet->grid, HW_STYLE_PLAIN, "none");
    }
}

void hw_sheet_basis(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    hw_grid_begin(sheet->grid, sheet->arena, "Basis", BASIS_COLUMNS);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "what the numbers rest on");
    hw_grid_row(sheet->grid);
    for (int c = 0; c < BASIS_COLUMNS; c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, basis_heads[c]);
    }
    for (int i = 0; i < plan->basis_count; i++) {
        const hw_basis *basis = &plan->basis[i];
        const char *const texts[BASIS_COLUMNS] = { basis->what, basis->value, basis->rule,
            hw_mark_name(basis->mark), basis->source };
        hw_grid_row(sheet->grid);
        for (int c = 0; c < BASIS_COLUMNS; c++) {
            if (texts[c][0] != '\0') {
                hw_grid_text(sheet->grid, c, HW_STYLE_NOTE, texts[c]);
            }
        }
    }
}
