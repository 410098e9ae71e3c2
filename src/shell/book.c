/* The workbook: a plain walk over the cells of each table, and the looks that go with them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/book.h"

#include <assert.h>
#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <xlsxwriter.h>

#include "core/num.h"
#include "shell/reread.h"
#include "write/paper.h"

enum {
    PAPER_A4 = 9,
    ARENA_BLOCK = 65536,   /* bytes */
    MOST_BREAKS = 1023,    /* that a sheet may have */
    SHOWN = 7,             /* a text, a whole number, one to four decimals, eighths */
    FIXED_TIME = 946684800 /* the first second of 2000 */
};

static const char font[] = "Arial";

typedef enum { LEFT, INDENTED, CENTRE, RIGHT, ALIGNS } align;

/* Where words stand in their cell. */
typedef struct {
    align side;
    bool top;   /* beside a cell of several lines; else in the middle */
    bool large; /* letters, and all that is around them */
} place;

/* How a style looks; sizes and colours left out are the usual ones. */
typedef struct {
    bool bold;
    int size;
    uint32_t colour, fill;
} look;

static const look looks[] = {
    [HW_STYLE_PLAIN] = { .bold = false },
    [HW_STYLE_TITLE] = { .bold = true, .size = HW_PAPER_TITLE_SIZE },
    [HW_STYLE_HEAD] = { .bold = true, .fill = 0xE1E7EE },
    [HW_STYLE_SECTION] = { .bold = true, .fill = 0xF3EEE4 },
    [HW_STYLE_LABEL] = { .bold = false },
    [HW_STYLE_KEY] = { .bold = true },
    [HW_STYLE_WARNING] = { .bold = true, .colour = 0x9C0006 },
    [HW_STYLE_SAFETY] = { .bold = true, .colour = 0x9C0006 },
    [HW_STYLE_PIECE] = { .bold = true, .fill = 0xF3EEE4 },
    [HW_STYLE_NOTE] = { .bold = false },
    [HW_STYLE_PARAGRAPH] = { .fill = 0xF3EEE4 },
    [HW_STYLE_FILL_IN] = { .fill = 0xFFFDE7 },
    [HW_STYLE_BACKGROUND] = { .colour = 0x8C8C8C, .fill = 0xFBF8F0 },
    [HW_STYLE_CONTRAST] = { .colour = 0xFFFFFF, .fill = 0x24476B },
};
_Static_assert(sizeof looks / sizeof looks[0] == HW_STYLE_COUNT, "a look for each style");

/* By decimals; last a mixed number, whose denominator of one digit holds eighths. */
static const char *const shown_as[] = { "0", "0.0", "0.00", "0.000", "0.0000", "# ?/?" };
enum { EIGHTHS = sizeof shown_as / sizeof shown_as[0] - 1, MOST_DECIMALS = EIGHTHS - 1 };

static const int aligns[] = {
    [LEFT] = LXW_ALIGN_LEFT,
    [INDENTED] = LXW_ALIGN_LEFT,
    [CENTRE] = LXW_ALIGN_CENTER,
    [RIGHT] = LXW_ALIGN_RIGHT,
};
_Static_assert(sizeof aligns / sizeof aligns[0] == ALIGNS, "an entry for each");

typedef struct {
    lxw_workbook *book;
    hw_arena arena;                                           /* for how the sheets lie on paper */
    lxw_format *formats[HW_STYLE_COUNT][ALIGNS][2][2][SHOWN]; /* made when first used */
} maker;

/* One sheet under way. */
typedef struct {
    maker *m;
    const hw_table *table;
    lxw_worksheet *sheet;
    long cells; /* written */
    hw_paper paper;
} page;

static hw_status status_of(lxw_error error)
{
    if (error == LXW_NO_ERROR) {
        return HW_OK;
    }
    if (error == LXW_ERROR_MEMORY_MALLOC_FAILED) {
        return HW_ERR_NOMEM;
    }
    return error == LXW_ERROR_MAX_STRING_LENGTH_EXCEEDED ? HW_ERR_RANGE : HW_ERR_INTERNAL;
}

/* 0 for texts; else how a number is shown. */
static int shown_of(const hw_cell *cell)
{
    assert(cell->decimals <= MOST_DECIMALS);
    if (cell->kind == HW_CELL_EIGHTHS) {
        return 1 + EIGHTHS;
    }
    return cell->kind == HW_CELL_COUNT || cell->kind == HW_CELL_NUMBER ? 1 + cell->decimals : 0;
}

static void dress(lxw_format *format, hw_cell_style style, place at, int shown)
{
    const look *l = &looks[style];
    int size = l->size > 0 ? l->size : HW_PAPER_FONT_SIZE;
    format_set_font_name(format, font);
    format_set_font_size(format, size * (at.large ? HW_PAPER_LARGE : 1));
    format_set_align(format, (uint8_t)aligns[at.side]);
    if (at.side == INDENTED) {
        format_set_indent(format, 1);
    }
    format_set_align(format, at.top ? LXW_ALIGN_VERTICAL_TOP : LXW_ALIGN_VERTICAL_CENTER);
    if (l->bold) {
        format_set_bold(format);
    }
    if (hw_paper_wraps(style) && shown == 0) {
        format_set_text_wrap(format);
    }
    if (hw_paper_boxed(style)) {
        format_set_border(format, LXW_BORDER_THIN);
        format_set_border_color(format, 0xB8B8B8);
    }
    if (l->colour != 0) {
        format_set_font_color(format, l->colour);
    }
    if (l->fill != 0) {
        format_set_bg_color(format, l->fill);
    }
    if (shown > 0) {
        format_set_num_format(format, shown_as[shown - 1]);
    }
}

/* The format of a look, made once; NULL when memory is refused. */
static lxw_format *format_for(maker *m, const hw_cell *cell, place at)
{
    int shown = shown_of(cell);
    lxw_format **format = &m->formats[cell->style][at.side][at.top][at.large][shown];
    if (*format == NULL) {
        *format = workbook_add_format(m->book);
        if (*format != NULL) {
            dress(*format, cell->style, at, shown);
        }
    }
    return *format;
}

/* In a sheet with squares: facts run on from the left, a little off a row's number. */
static align side_by_squares(const page *p, int row, int column)
{
    const hw_cell *cell = hw_cells_at(p->table, row, column);
    if (cell->style == HW_STYLE_HEAD || hw_paper_boxed(cell->style) || !p->paper.squares[column]) {
        return CENTRE;
    }
    bool by_number = column == 1 && hw_cells_at(p->table, row, 0)->kind == HW_CELL_COUNT;
    return by_number ? INDENTED : LEFT;
}

static align side_of(const page *p, int row, int column)
{
    const hw_cell *cell = hw_cells_at(p->table, row, column);
    if (p->table->square && column > 0) {
        return side_by_squares(p, row, column);
    }
    if (p->table->square && cell->style == HW_STYLE_HEAD) {
        return RIGHT; /* as the row numbers below it */
    }
    if (cell->kind == HW_CELL_TEXT) {
        if (column >= p->table->head_columns && p->paper.numbers[column]) {
            return RIGHT;
        }
        return column > 0 && p->paper.numbers[column - 1] ? INDENTED : LEFT;
    }
    return cell->kind == HW_CELL_EMPTY ? LEFT : RIGHT;
}

static hw_status spread_over(page *p, int row, int column, lxw_format *format)
{
    int last = hw_paper_last(p->table, &p->paper, row, column);
    if (last == column) {
        return HW_OK;
    }
    p->cells += last - column; /* the cell itself is counted where it is written */
    return status_of(worksheet_merge_range(
        p->sheet, (lxw_row_t)row, (lxw_col_t)column, (lxw_row_t)row, (lxw_col_t)last, "", format));
}

static hw_status write_value(page *p, int row, int column, lxw_format *format)
{
    const hw_cell *cell = hw_cells_at(p->table, row, column);
    lxw_row_t r = (lxw_row_t)row;
    lxw_col_t c = (lxw_col_t)column;
    switch (cell->kind) {
    case HW_CELL_EMPTY:
        return status_of(worksheet_write_blank(p->sheet, r, c, format));
    case HW_CELL_TEXT:
        return status_of(worksheet_write_string(p->sheet, r, c, cell->text, format));
    case HW_CELL_COUNT:
    case HW_CELL_NUMBER:
    case HW_CELL_EIGHTHS:
        return isfinite(cell->number)
                   ? status_of(worksheet_write_number(p->sheet, r, c, cell->number, format))
                   : HW_ERR_RANGE;
    }
    return HW_ERR_INTERNAL;
}

static hw_status write_cell(page *p, int row, int column)
{
    const hw_cell *cell = hw_cells_at(p->table, row, column);
    if (cell->kind == HW_CELL_EMPTY && cell->style == HW_STYLE_PLAIN) {
        return HW_OK;
    }
    place at = { side_of(p, row, column), p->paper.lines[row] > 1, p->table->large };
    lxw_format *format = format_for(p->m, cell, at);
    if (format == NULL) {
        return HW_ERR_NOMEM;
    }
    hw_status status = spread_over(p, row, column, format);
    if (status == HW_OK) {
        status = write_value(p, row, column, format);
    }
    p->cells += status == HW_OK;
    return status;
}

static hw_status write_row(page *p, int row)
{
    hw_status status =
        status_of(worksheet_set_row(p->sheet, (lxw_row_t)row, p->paper.heights[row], NULL));
    for (int c = 0; c < p->table->columns && status == HW_OK; c++) {
        status = write_cell(p, row, c);
    }
    return status;
}

static hw_status write_cells(page *p)
{
    hw_status status = HW_OK;
    for (int r = 0; r < p->table->rows && status == HW_OK; r++) {
        status = write_row(p, r);
    }
    return status;
}

static hw_status set_widths(page *p)
{
    hw_status status = HW_OK;
    for (int c = 0; c < p->table->columns && status == HW_OK; c++) {
        status = status_of(
            worksheet_set_column(p->sheet, (lxw_col_t)c, (lxw_col_t)c, p->paper.widths[c], NULL));
    }
    return status;
}

/* Heads are repeated on each page, and so are labels where a table is wider than a page. */
static lxw_error repeat_heads(const page *p)
{
    const hw_table *table = p->table;
    lxw_error error = LXW_NO_ERROR;
    if (table->head_rows > 0) {
        error = worksheet_repeat_rows(p->sheet, 0, (lxw_row_t)table->head_rows - 1);
    }
    if (error == LXW_NO_ERROR && table->head_columns > 0 && p->paper.pages_across > 1) {
        error = worksheet_repeat_columns(p->sheet, 0, (lxw_col_t)table->head_columns - 1);
    }
    return error;
}

/* The library ends its list of rows at a 0, and copies it. */
static lxw_error set_breaks(const page *p)
{
    const hw_paper *paper = &p->paper;
    lxw_row_t *rows = hw_arena_get(&p->m->arena, (size_t)paper->break_count + 1, sizeof *rows);
    if (rows == NULL) {
        return LXW_ERROR_MEMORY_MALLOC_FAILED;
    }
    for (int i = 0; i < paper->break_count && i < MOST_BREAKS; i++) {
        rows[i] = (lxw_row_t)paper->breaks[i];
    }
    return paper->break_count > 0 ? worksheet_set_h_pagebreaks(p->sheet, rows) : LXW_NO_ERROR;
}

/* What stays in view, and how the sheet prints. */
static hw_status set_page(page *p)
{
    const hw_table *table = p->table;
    worksheet_freeze_panes(p->sheet, (lxw_row_t)table->head_rows, (lxw_col_t)table->head_columns);
    worksheet_set_paper(p->sheet, PAPER_A4);
    worksheet_set_margins(
        p->sheet, HW_PAPER_MARGIN, HW_PAPER_MARGIN, HW_PAPER_MARGIN, HW_PAPER_FOOT);
    if (p->paper.portrait) {
        worksheet_set_portrait(p->sheet);
    } else {
        worksheet_set_landscape(p->sheet);
    }
    worksheet_center_horizontally(p->sheet);
    if (p->paper.one_page) {
        worksheet_fit_to_pages(p->sheet, 1, 1);
    } else { /* to fit its width would be to lose where pages begin */
        worksheet_set_print_scale(p->sheet, (uint16_t)hw_num_down(100 * p->paper.scale));
    }
    lxw_error error = repeat_heads(p);
    if (error == LXW_NO_ERROR) {
        error = set_breaks(p);
    }
    if (error == LXW_NO_ERROR) {
        error = worksheet_set_footer(p->sheet, "&L&A&RPage &P of &N");
    }
    /* Size names such as 98 are names, not numbers that someone forgot to type as such. */
    if (error == LXW_NO_ERROR) {
        error = worksheet_ignore_errors(p->sheet, LXW_IGNORE_NUMBER_STORED_AS_TEXT, "A1:IV1000");
    }
    return status_of(error);
}

static hw_status write_sheet(maker *m, const hw_table *table, long *cells)
{
    if (workbook_validate_sheet_name(m->book, table->name) != LXW_NO_ERROR) {
        return HW_ERR_INTERNAL; /* the next call would say nothing and then crash */
    }
    page p = { .m = m, .table = table, .sheet = workbook_add_worksheet(m->book, table->name) };
    if (p.sheet == NULL) {
        return HW_ERR_NOMEM;
    }
    hw_status status = hw_paper_lay(table, &m->arena, &p.paper);
    if (status == HW_OK) {
        status = set_widths(&p);
    }
    if (status == HW_OK) {
        status = set_page(&p);
    }
    if (status == HW_OK) {
        status = write_cells(&p);
    }
    *cells = p.cells;
    return status;
}

static hw_status set_properties(lxw_workbook *book, const hw_book_options *options)
{
    lxw_doc_properties properties = { .created = FIXED_TIME };
    if (options != NULL && options->created != 0) {
        properties.created = options->created;
    }
    /* The library copies the text and never writes to it. */
    union {
        const char *given;
        char *taken;
    } title = { options != NULL ? options->title : NULL };
    properties.title = title.taken;
    return status_of(workbook_set_properties(book, &properties));
}

static hw_status fill(
    maker *m, const hw_tables *tables, const hw_book_options *options, long *cells)
{
    hw_status status = set_properties(m->book, options);
    for (int i = 0; i < tables->count && status == HW_OK; i++) {
        status = tables->tables[i].columns > HW_COLUMNS_MOST
                     ? HW_ERR_LIMIT
                     : write_sheet(m, &tables->tables[i], &cells[i]);
    }
    return status;
}

/* Close the workbook, exactly once: that is when it is written; 0 or an errno. */
static int close_book(lxw_workbook *book)
{
    errno = 0;
    lxw_error error = workbook_close(book);
    int number = errno != 0 ? errno : EIO;
    int fault = hw_io_fault("book-close");
    number = fault != 0 ? fault : number;
    return fault != 0 || error != LXW_NO_ERROR ? number : 0;
}

/* Columns are as wide as so many digits of the format that the library makes first, for cells that
 * have none: so that must be in the same letters as all others. */
static void set_usual_font(lxw_workbook *book)
{
    lxw_format *usual = STAILQ_FIRST(book->formats);
    if (usual != NULL) {
        format_set_font_name(usual, font);
        format_set_font_size(usual, HW_PAPER_FONT_SIZE);
    }
}

static hw_status write_book(const hw_tables *tables, const char *temporary,
    const hw_book_options *options, long *cells, int *number)
{
    maker m = { .book = workbook_new(temporary) };
    hw_mem mem = hw_mem_system();
    if (m.book == NULL) {
        return HW_ERR_NOMEM;
    }
    hw_arena_init(&m.arena, &mem, ARENA_BLOCK);
    set_usual_font(m.book);
    hw_status status = fill(&m, tables, options, cells);
    hw_arena_release(&m.arena);
    if (status != HW_OK) {
        lxw_workbook_free(m.book);
        return status;
    }
    *number = close_book(m.book);
    return *number == 0 ? HW_OK : HW_ERR_IO;
}

/* Whether the file holds what was written; the library may have left some out without a word. */
static hw_status reread(const hw_io_target *target, const long *cells, int count, hw_err *err)
{
    int fault = hw_io_fault("book-reopen");
    if (fault != 0) {
        return hw_io_fail(err, target->told, HW_IO_WRITING, fault);
    }
    if (hw_reread_book(target->temporary, cells, count) == HW_OK) {
        return HW_OK;
    }
    hw_err_where(err, target->told);
    return hw_err_set(err, HW_ERR_IO,
        "it was not written whole: the disk, or the folder for temporary files, may be full");
}

static hw_status explain(hw_status status, const char *path, int number, hw_err *err)
{
    if (status == HW_ERR_IO) {
        return hw_io_fail(err, path, HW_IO_WRITING, number);
    }
    hw_err_where(err, path);
    return hw_err_set(err, status, "the workbook cannot be made: %s",
        status == HW_ERR_NOMEM   ? "the computer has no memory left for this"
        : status == HW_ERR_RANGE ? "a number or text in it is beyond what a sheet can hold"
        : status == HW_ERR_LIMIT ? "it has too many columns"
                                 : "a fault in the program itself");
}

hw_status hw_book_write(const hw_tables *tables, const hw_io_target *target,
    const hw_book_options *options, hw_err *err)
{
    int number = 0;
    long *cells = calloc((size_t)tables->count, sizeof *cells);
    hw_status status = cells == NULL
                           ? HW_ERR_NOMEM
                           : write_book(tables, target->temporary, options, cells, &number);
    if (status == HW_OK) {
        status = reread(target, cells, tables->count, err);
    } else {
        status = explain(status, target->told, number, err);
    }
    free(cells);
    return status;
}
