/* The table of rows, block by block.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "write/sheetrows.h"

enum { DIAL_DECIMALS = 1 };

/* A run with the rows that begin and end it. */
typedef struct {
    const hw_sheet *sheet;
    const hw_rowplan *plan;
    const hw_row_run *run;
    const hw_row *first, *last;
} line;

/* No words leave the cell empty; NULL stands for refused memory. */
static void put_text(const line *l, int column, const char *text)
{
    if (text == NULL || text[0] != '\0') {
        hw_grid_text(l->sheet->grid, column, HW_STYLE_PLAIN, text);
    }
}

/* "3", or "3 to 6" where a run begins and ends with different numbers. */
static void put_range(const line *l, int column, int from, int to)
{
    if (from == to) {
        hw_grid_count(l->sheet->grid, column, HW_STYLE_PLAIN, from);
    } else {
        put_text(l, column, hw_arena_format(l->sheet->arena, "%d to %d", from, to));
    }
}

static void from_cell(const line *l, int column)
{
    hw_grid_count(l->sheet->grid, column, HW_STYLE_KEY, l->first->number);
}

static void to_cell(const line *l, int column)
{
    hw_grid_count(l->sheet->grid, column, HW_STYLE_KEY, l->last->number);
}

static void before_cell(const line *l, int column)
{
    put_text(l, column, hw_side_name(l->first->before));
}

static void after_cell(const line *l, int column)
{
    put_text(l, column, hw_side_name(l->last->after));
}

static void fabric_cell(const line *l, int column)
{
    put_text(l, column, hw_fabric_name(l->first->fabric));
}

static void dial_cell(const line *l, int column)
{
    if (l->first->loosest) {
        put_text(l, column, "loosest");
    } else if (l->first->has_dial) {
        hw_grid_number(l->sheet->grid, column, HW_STYLE_KEY, l->first->dial, DIAL_DECIMALS);
    }
}

static void setting_cell(const line *l, int column)
{
    put_text(l, column, hw_rowwords_carriage(l->first->setting));
}

static void card_cell(const line *l, int column)
{
    put_text(l, column, l->plan->work == HW_WORK_PICKED ? "" : hw_rowwords_card(l->first->card));
}

static void read_cell(const line *l, int column)
{
    if (l->first->card_read > 0) {
        put_range(l, column, l->first->card_read, l->last->card_read);
    }
}

static void view_cell(const line *l, int column)
{
    if (l->first->card_view > 0) {
        put_range(l, column, l->first->card_view, l->last->card_view);
    }
}

static void chart_cell(const line *l, int column)
{
    if (l->first->chart_row > 0) {
        put_range(l, column, l->first->chart_row, l->last->chart_row);
    }
}

static void yarn_cell(const line *l, int column, hw_feeder feeder)
{
    hw_row_yarn yarn = l->first->feeders[feeder];
    put_text(l, column, yarn == HW_YARN_NONE ? "" : hw_rowwords_yarn(yarn));
}

static void first_feeder_cell(const line *l, int column)
{
    yarn_cell(l, column, HW_FEEDER_FIRST);
}

static void second_feeder_cell(const line *l, int column)
{
    yarn_cell(l, column, HW_FEEDER_SECOND);
}

/* Needles of the first row; where shaping changes them, the line's words and stitches say so. */
static void needles_cell(const line *l, int column)
{
    const char *from = hw_bed_needle_name(l->first->first, l->sheet->arena);
    const char *to = hw_bed_needle_name(l->first->last, l->sheet->arena);
    bool refused = from == NULL || to == NULL;
    put_text(l, column, refused ? NULL : hw_arena_format(l->sheet->arena, "%s to %s", from, to));
}

static void stitches_cell(const line *l, int column)
{
    put_range(l, column, l->first->sts, l->last->sts);
}

static void hand_cell(const line *l, int column)
{
    put_text(l, column, hw_rowwords_run(l->plan, l->run, l->sheet->arena));
}

static void facing_side_cell(const line *l, int column)
{
    put_text(l, column, l->first->right_side ? "right side" : "wrong side");
}

/* Facings are knitted on thinner needles [H3]; the loose row on thicker ones [P1]. */
static void thickness_cell(const line *l, int column)
{
    const char *words = l->first->fabric == HW_FACING ? "1 to 3 sizes thinner" : "as in the swatch";
    put_text(l, column, l->first->loosest ? "thicker, for this row" : words);
}

static void direction_cell(const line *l, int column)
{
    if (l->first->chart_row == 0) {
        return;
    }
    if (l->plan->in_rounds) {
        put_text(l, column, "right to left");
    } else if (l->run->count == 1) {
        put_text(l, column, l->first->right_side ? "right to left" : "left to right");
    } else {
        put_text(l, column, "right side: right to left; wrong side: left to right");
    }
}

typedef struct {
    const char *head;
    void (*put)(const line *l, int column);
} column;

static const column bed_columns[] = {
    { "row from", from_cell },
    { "to", to_cell },
    { "carriage from", before_cell },
    { "to", after_cell },
    { "fabric", fabric_cell },
    { "dial", dial_cell },
    { "carriage setting", setting_cell },
    { "card", card_cell },
    { "card reads row", read_cell },
    { "row in view", view_cell },
    { "chart row", chart_cell },
    { "first feeder", first_feeder_cell },
    { "second feeder", second_feeder_cell },
    { "needles in work", needles_cell },
    { "stitches", stitches_cell },
    { "by hand", hand_cell },
};

static const column hand_columns[] = {
    { "row from", from_cell },
    { "to", to_cell },
    { "begins on", facing_side_cell },
    { "fabric", fabric_cell },
    { "needles", thickness_cell },
    { "chart row", chart_cell },
    { "read the chart", direction_cell },
    { "yarn", first_feeder_cell },
    { "second yarn", second_feeder_cell },
    { "stitches", stitches_cell },
    { "to do", hand_cell },
};

typedef struct {
    const column *list;
    int count;
} columns;

static columns columns_of(const hw_row_block *block)
{
    columns bed = { bed_columns, (int)(sizeof bed_columns / sizeof bed_columns[0]) };
    columns hand = { hand_columns, (int)(sizeof hand_columns / sizeof hand_columns[0]) };
    return block->plan->work == HW_WORK_HAND ? hand : bed;
}

static const char *part_name(const hw_sheet *sheet, const hw_row *row)
{
    if (row->part == HW_PART_WHOLE) {
        return hw_rowwords_kind(row->kind);
    }
    return hw_arena_format(
        sheet->arena, "%s, %s", hw_rowwords_kind(row->kind), hw_rowwords_part(row->part));
}

static void run_line(const hw_sheet *sheet, const hw_rowplan *plan, const hw_row_run *run)
{
    hw_row_block block = { .plan = plan };
    columns shown = columns_of(&block);
    const hw_row *first = &plan->rows[run->first];
    line l = { sheet, plan, run, first, first + run->count - 1 };
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, part_name(sheet, first));
    for (int c = 0; c < shown.count; c++) {
        shown.list[c].put(&l, c + 1);
    }
}

static void block_lines(const hw_sheet *sheet, const hw_row_block *block)
{
    const hw_rowplan *plan = block->plan;
    hw_row_runs runs;
    if (hw_rowplan_runs(plan, sheet->arena, &runs) != HW_OK) {
        hw_grid_text(sheet->grid, 0, HW_STYLE_PLAIN, NULL);
        return;
    }
    hw_grid_section(
        sheet->grid, hw_arena_format(sheet->arena, "%s, size %s", block->piece, block->size));
    for (int i = 0; i < plan->finding_count; i++) {
        hw_grid_line(
            sheet->grid, HW_STYLE_WARNING, hw_row_finding_text(&plan->findings[i], sheet->arena));
    }
    for (int i = 0; i < runs.count; i++) {
        run_line(sheet, plan, &runs.list[i]);
    }
}

void hw_sheet_rows(const hw_sheet *sheet, const hw_row_block *blocks, int count)
{
    assert(count > 0);
    columns shown = columns_of(&blocks[0]);
    hw_grid_begin(sheet->grid, sheet->arena, "Rows", shown.count + 1);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    sheet->grid->table.first_width = 24;
    hw_sheet_title(sheet, "every row, piece by piece");
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "part");
    for (int c = 0; c < shown.count; c++) {
        hw_grid_text(sheet->grid, c + 1, HW_STYLE_HEAD, shown.list[c].head);
    }
    for (int i = 0; i < count; i++) {
        assert((blocks[i].plan->work == HW_WORK_HAND) == (blocks[0].plan->work == HW_WORK_HAND));
        block_lines(sheet, &blocks[i]);
    }
}
