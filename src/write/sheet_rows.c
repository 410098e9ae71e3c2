/* The table of rows, block by block.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "write/rowshare.h"
#include "write/sheetrows.h"

enum { DIAL_DECIMALS = 1 };

/* A run with the rows that begin and end it. */
typedef struct {
    const hw_sheet *sheet;
    const hw_rowplan *plan;
    const hw_row_run *run;
    const hw_row *first, *last;
    const char *shared; /* words for all sizes, which have their own needles and stitches */
} line;

/* No words leave the cell empty; NULL stands for refused memory. */
static void put_text(const line *l, int column, const char *text)
{
    if (text == NULL || text[0] != '\0') {
        hw_grid_text(l->sheet->grid, column, HW_STYLE_PLAIN, text);
    }
}

/* "3", or "3 to 6" where a run begins and ends with different numbers. */
static const char *range_text(const line *l, int from, int to)
{
    return from == to ? hw_arena_format(l->sheet->arena, "%d", from)
                      : hw_arena_format(l->sheet->arena, "%d to %d", from, to);
}

static void rows_cell(const line *l, int column)
{
    const char *rows = range_text(l, l->first->number, l->last->number);
    hw_grid_text(l->sheet->grid, column, HW_STYLE_KEY, rows);
}

/* "band"; of a parted piece "right half", as nothing but main rows is knitted in halves. */
static void part_cell(const line *l, int column)
{
    const char *kind = hw_rowwords_kind(l->first->kind);
    const char *half = hw_rowwords_part(l->first->part);
    if (l->first->part == HW_PART_WHOLE) {
        put_text(l, column, kind);
    } else if (l->first->kind == HW_ROW_MAIN) {
        put_text(l, column, half);
    } else {
        put_text(l, column, hw_arena_format(l->sheet->arena, "%s, %s", kind, half));
    }
}

static void carriage_cell(const line *l, int column)
{
    put_text(l, column,
        hw_arena_format(l->sheet->arena, "%s to %s", hw_side_name(l->first->before),
            hw_side_name(l->last->after)));
}

static void dial_cell(const line *l, int column)
{
    if (l->first->loosest) {
        put_text(l, column, "loosest");
    } else if (l->first->has_dial) {
        hw_grid_number(l->sheet->grid, column, HW_STYLE_KEY, l->first->dial, DIAL_DECIMALS);
    }
}

/* Needles of the first row; where shaping changes them, the line's words and stitches say so. */
static void needles_cell(const line *l, int column)
{
    if (!l->plan->has_needles) {
        return; /* a trim that is longer than the bed */
    }
    const char *from = hw_bed_needle_name(l->first->first, l->sheet->arena);
    const char *to = hw_bed_needle_name(l->first->last, l->sheet->arena);
    bool refused = from == NULL || to == NULL;
    put_text(l, column, refused ? NULL : hw_arena_format(l->sheet->arena, "%s to %s", from, to));
}

static void stitches_cell(const line *l, int column)
{
    if (l->first->sts == l->last->sts) {
        hw_grid_count(l->sheet->grid, column, HW_STYLE_PLAIN, l->first->sts);
    } else {
        put_text(l, column, range_text(l, l->first->sts, l->last->sts));
    }
}

/* Of all pieces that are knitted together; empty in rows that turn. */
static void round_cell(const line *l, int column)
{
    const hw_row_tube *tube = l->plan->tube;
    if (tube == NULL || l->first->number > l->plan->round_rows) {
        return;
    }
    int from = tube->sts[l->first->number - 1];
    int to = tube->sts[l->last->number - 1];
    if (from == to) {
        hw_grid_count(l->sheet->grid, column, HW_STYLE_PLAIN, from);
    } else {
        put_text(l, column, range_text(l, from, to));
    }
}

static void words_cell(const line *l, int column)
{
    const char *words =
        l->shared != NULL ? l->shared : hw_rowwords_run(l->plan, l->run, l->sheet->arena);
    if (words == NULL || words[0] != '\0') {
        hw_grid_text(l->sheet->grid, column, HW_STYLE_NOTE, words);
    }
}

static void facing_side_cell(const line *l, int column)
{
    put_text(l, column, l->first->right_side ? "right side" : "wrong side");
}

typedef struct {
    const char *head;
    void (*put)(const line *l, int column);
    bool of_size; /* differs from size to size where rows are shared */
} column;

static const column bed_columns[] = {
    { "rows", rows_cell, false },
    { "part", part_cell, false },
    { "carriage", carriage_cell, false },
    { "dial", dial_cell, false },
    { "needles", needles_cell, true },
    { "stitches", stitches_cell, true },
    { "what to do", words_cell, false },
};

static const char *const bed_lines[] = {
    "Left and right of the carriage, the needles and the shaping are those of the bed, as you sit "
    "at "
    "it. The purl side faces you: the piece's left edge and left half hang at the right of the "
    "bed.",
    "The carriage goes from where it stands before these rows to where it stands after them. Where "
    "a line says nothing of it, it stays set as it was.",
    "The needles are those in work in the first of these rows; the stitches go from the first row "
    "to the last, edge stitches too.",
};

static const column hand_columns[] = {
    { "rows", rows_cell, false },
    { "part", part_cell, false },
    { "begins on", facing_side_cell, false },
    { "stitches", stitches_cell, true },
    { "what to do", words_cell, false },
};

static const column round_columns[] = {
    { "rows", rows_cell, false },
    { "part", part_cell, false },
    { "begins on", facing_side_cell, false },
    { "stitches", stitches_cell, true },
    { "whole round", round_cell, true },
    { "what to do", words_cell, false },
};

static const char *const round_lines[] = {
    "All is in stocking stitch, but for what a line says: right-side rows are knitted, wrong-side "
    "rows purled; in rounds, all are knitted.",
    "Left and right are those of the right side. The stitches are this piece's and go from the "
    "first of these rows to the last; where rows are rounds, so do those of the whole round.",
    "A round goes through all the pieces that its first line names, from the right edge of each to "
    "its left edge. Knit each round by the lines of all of them.",
    "Of a chart's rows, `edge` are stitches that a seam takes up, `plain` those beside the figures "
    "and between them: all in the main yarn.",
    "Where a line says nothing of the needles, they stay as they were.",
};

static const char *const hand_lines[] = {
    "All is in stocking stitch, but for what a line says: right-side rows are knitted, wrong-side "
    "rows purled; in rounds, all are knitted.",
    "Left and right are those of the right side. The stitches go from the first of these rows to "
    "the last, edge stitches too.",
    "Of a chart's rows, `edge` are stitches that a seam takes up, `plain` those beside the figures "
    "and between them: all in the main yarn.",
    "Where a line says nothing of the needles, they stay as they were.",
};

/* What differs between a bed, hand knitting, and hand knitting in rounds. */
typedef struct {
    const column *list;
    int count;
    const char *const *lines; /* how the table is read */
    int line_count;
} columns;

static columns columns_of(const hw_row_block *blocks, int count)
{
    columns bed = { bed_columns, (int)(sizeof bed_columns / sizeof bed_columns[0]), bed_lines,
        (int)(sizeof bed_lines / sizeof bed_lines[0]) };
    columns hand = { hand_columns, (int)(sizeof hand_columns / sizeof hand_columns[0]), hand_lines,
        (int)(sizeof hand_lines / sizeof hand_lines[0]) };
    columns rounds = { round_columns, (int)(sizeof round_columns / sizeof round_columns[0]),
        round_lines, (int)(sizeof round_lines / sizeof round_lines[0]) };
    bool tubes = false;
    for (int i = 0; i < count; i++) {
        tubes = tubes || blocks[i].plan->tube != NULL;
    }
    return tubes ? rounds : blocks[0].plan->work == HW_WORK_HAND ? hand : bed;
}

static line line_of(const hw_sheet *sheet, const hw_row_sizes *sizes, int size, int run)
{
    const hw_rowplan *plan = sizes->blocks[size].plan;
    const hw_row_run *list = sizes->runs[size].list;
    const hw_row *first = &plan->rows[list[run].first];
    return (line){ sheet, plan, &list[run], first, first + list[run].count - 1, NULL };
}

static void put_line(const line *l, const columns *shown)
{
    hw_grid_row(l->sheet->grid);
    for (int c = 0; c < shown->count; c++) {
        if (l->shared == NULL || !shown->list[c].of_size) {
            shown->list[c].put(l, c);
        }
    }
}

static void put_heading(const hw_sheet *sheet, bool begins_piece, const char *words)
{
    hw_grid_row(sheet->grid);
    hw_grid_line(sheet->grid, begins_piece ? HW_STYLE_PIECE : HW_STYLE_SECTION, words);
}

/* What does not come out in the sides: on rows that all sizes share, or on a size's own. */
static void finding_lines(const hw_sheet *sheet, const hw_row_sizes *sizes, int size, bool shared)
{
    const hw_rowplan *plan = sizes->blocks[size].plan;
    for (int i = 0; i < plan->finding_count; i++) {
        if (hw_row_sizes_finding(sizes, &plan->findings[i]) == shared) {
            hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH,
                hw_row_finding_text(&plan->findings[i], sheet->arena));
        }
    }
}

/* Needles and stitches of each size, then the rows that are the same in all of them. */
static void shared_lines(const hw_sheet *sheet, const hw_row_sizes *sizes, const columns *shown)
{
    put_heading(sheet, true,
        hw_arena_format(sheet->arena, "%s, all sizes: rows 1 to %d", sizes->blocks[0].piece,
            hw_row_sizes_next(sizes) - 1));
    finding_lines(sheet, sizes, 0, true);
    for (int i = 0; i < sizes->count; i++) {
        line l = line_of(sheet, sizes, i, 0);
        hw_grid_line(sheet->grid, HW_STYLE_LABEL,
            hw_arena_format(sheet->arena, "size %s", sizes->blocks[i].size));
        for (int c = 0; c < shown->count; c++) {
            if (shown->list[c].of_size) {
                shown->list[c].put(&l, c);
            }
        }
    }
    for (int run = 0; run < sizes->shared; run++) {
        line l = line_of(sheet, sizes, 0, run);
        l.shared = sizes->words[run];
        put_line(&l, shown);
    }
}

static void size_lines(
    const hw_sheet *sheet, const hw_row_sizes *sizes, int size, const columns *shown)
{
    const hw_row_block *block = &sizes->blocks[size];
    const char *from = sizes->shared == 0 ? ""
                                          : hw_arena_format(sheet->arena, ", from row %d on",
                                                hw_row_sizes_next(sizes));
    put_heading(sheet, size == 0 && sizes->shared == 0,
        from == NULL
            ? NULL
            : hw_arena_format(sheet->arena, "%s, size %s%s", block->piece, block->size, from));
    finding_lines(sheet, sizes, size, false);
    for (int run = sizes->shared; run < sizes->runs[size].count; run++) {
        line l = line_of(sheet, sizes, size, run);
        put_line(&l, shown);
    }
}

static void piece_lines(const hw_sheet *sheet, const hw_row_sizes *sizes, const columns *shown)
{
    if (sizes->shared > 0) {
        shared_lines(sheet, sizes, shown);
    }
    for (int i = 0; i < sizes->count; i++) {
        if (sizes->shared < sizes->runs[i].count) {
            size_lines(sheet, sizes, i, shown);
        }
    }
}

void hw_sheet_rows(const hw_sheet *sheet, const hw_row_block *blocks, int count)
{
    assert(count > 0);
    columns shown = columns_of(blocks, count);
    hw_grid_begin(sheet->grid, sheet->arena, "Rows", shown.count);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    sheet->grid->table.large = true;
    hw_sheet_title(sheet, "every row, piece by piece");
    hw_grid_row(sheet->grid);
    for (int c = 0; c < shown.count; c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, shown.list[c].head);
    }
    for (int i = 0; i < count;) {
        hw_row_sizes sizes;
        assert((blocks[i].plan->work == HW_WORK_HAND) == (blocks[0].plan->work == HW_WORK_HAND));
        if (hw_row_sizes_of(&blocks[i], count - i, sheet->arena, &sizes) != HW_OK) {
            hw_grid_text(sheet->grid, 0, HW_STYLE_PLAIN, NULL);
            return;
        }
        sheet->grid->table.large = sheet->grid->table.large && sizes.count == 1;
        piece_lines(sheet, &sizes, &shown);
        i += sizes.count;
    }
    hw_sheet_reading(sheet, shown.lines, shown.line_count);
}
