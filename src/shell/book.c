/* The workbook: a plain walk over the cells of each table, and the looks that go with them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/book.h"

#include <assert.h>
#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <xlsxwriter.h>

#include "shell/reread.h"
#include "write/columns.h"

enum {
    PAPER_A4 = 9,
    FONT_SIZE = 10,
    PAGE_CHARACTERS = 105, /* across a landscape page at that size */
    BETWEEN = 2,           /* characters, as the widths of columns are worked out */
    SHOWN = 6,             /* a text, a whole number, one to four decimals */
    FIXED_TIME = 946684800 /* the first second of 2000 */
};

enum { ONE_PAGE_ROWS = 70 };

static const char font[] = "Arial";
static const double square_width = 2.6;    /* characters */
static const double large_by = 1.2;        /* letters, and all that is around them */
static const double square_height = 17.25; /* points, and so are the next three */
static const double title_height = 26;
static const double row_height = 15;
static const double line_height = 12.75;
static const double width_factor = 1.08; /* bold letters are wider than the digits that count */
static const double width_more = 1.4;

typedef enum { LEFT, INDENTED, CENTRE, RIGHT, ALIGNS } align;

/* Where words stand in their cell. */
typedef struct {
    align side;
    bool top; /* beside a cell of several lines; else in the middle */
    bool large;
} place;

/* How a style looks; sizes and colours left out are the usual ones. */
typedef struct {
    bool bold, wraps, boxed;
    int size;
    uint32_t colour, fill;
} look;

static const look looks[] = {
    [HW_STYLE_PLAIN] = { .bold = false },
    [HW_STYLE_TITLE] = { .bold = true, .size = 14 },
    [HW_STYLE_HEAD] = { .bold = true, .wraps = true, .fill = 0xE1E7EE },
    [HW_STYLE_SECTION] = { .bold = true, .fill = 0xF3EEE4 },
    [HW_STYLE_LABEL] = { .bold = false },
    [HW_STYLE_KEY] = { .bold = true },
    [HW_STYLE_WARNING] = { .bold = true, .colour = 0x9C0006 },
    [HW_STYLE_SAFETY] = { .bold = true, .colour = 0x9C0006 },
    [HW_STYLE_NOTE] = { .wraps = true },
    [HW_STYLE_FILL_IN] = { .boxed = true, .fill = 0xFFFDE7 },
    [HW_STYLE_BACKGROUND] = { .boxed = true, .colour = 0x8C8C8C, .fill = 0xFBF8F0 },
    [HW_STYLE_CONTRAST] = { .boxed = true, .colour = 0xFFFFFF, .fill = 0x24476B },
};
_Static_assert(sizeof looks / sizeof looks[0] == HW_STYLE_COUNT, "a look for each style");

static const char *const decimals_shown[] = { "0", "0.0", "0.00", "0.000", "0.0000" };
enum { MOST_DECIMALS = sizeof decimals_shown / sizeof decimals_shown[0] - 1 };

static const int aligns[] = {
    [LEFT] = LXW_ALIGN_LEFT,
    [INDENTED] = LXW_ALIGN_LEFT,
    [CENTRE] = LXW_ALIGN_CENTER,
    [RIGHT] = LXW_ALIGN_RIGHT,
};
_Static_assert(sizeof aligns / sizeof aligns[0] == ALIGNS, "an entry for each");

typedef struct {
    lxw_workbook *book;
    lxw_format *formats[HW_STYLE_COUNT][ALIGNS][2][2][SHOWN]; /* made when first used */
} maker;

/* One sheet under way. */
typedef struct {
    maker *m;
    const hw_table *table;
    lxw_worksheet *sheet;
    long cells; /* written */
    int lines;  /* of the row under way */
    int widths[HW_COLUMNS_MOST];
    bool squares[HW_COLUMNS_MOST], numbers[HW_COLUMNS_MOST];
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

/* 0 for texts, 1 for whole numbers, 1 + decimals for others. */
static int shown_of(const hw_cell *cell)
{
    assert(cell->decimals <= MOST_DECIMALS);
    return cell->kind == HW_CELL_COUNT || cell->kind == HW_CELL_NUMBER ? 1 + cell->decimals : 0;
}

static void dress(lxw_format *format, const look *l, place at, int shown)
{
    format_set_font_name(format, font);
    format_set_font_size(format, (l->size > 0 ? l->size : FONT_SIZE) * (at.large ? large_by : 1));
    format_set_align(format, (uint8_t)aligns[at.side]);
    if (at.side == INDENTED) {
        format_set_indent(format, 1);
    }
    format_set_align(format, at.top ? LXW_ALIGN_VERTICAL_TOP : LXW_ALIGN_VERTICAL_CENTER);
    if (l->bold) {
        format_set_bold(format);
    }
    if (l->wraps && shown == 0) {
        format_set_text_wrap(format);
    }
    if (l->boxed) {
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
        format_set_num_format(format, decimals_shown[shown - 1]);
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
            dress(*format, &looks[cell->style], at, shown);
        }
    }
    return *format;
}

static align side_of(const page *p, const hw_cell *cell, int column)
{
    if (p->table->square && column > 0) {
        bool fact = cell->style != HW_STYLE_HEAD && !looks[cell->style].boxed;
        return fact && p->squares[column] ? LEFT : CENTRE;
    }
    if (p->table->square && cell->style == HW_STYLE_HEAD) {
        return RIGHT; /* as the row numbers below it */
    }
    if (cell->kind == HW_CELL_TEXT) {
        if (column >= p->table->head_columns && p->numbers[column]) {
            return RIGHT;
        }
        return column > 0 && p->numbers[column - 1] ? INDENTED : LEFT;
    }
    return cell->kind == HW_CELL_EMPTY ? LEFT : RIGHT;
}

/* A fact below a chart takes the rest of its row, because its own column is too narrow. */
static hw_status spread_over(page *p, int row, int column, lxw_format *format)
{
    int last = p->table->columns - 1;
    const hw_cell *cell = hw_cells_at(p->table, row, column);
    if (!p->squares[column] || cell->style == HW_STYLE_HEAD || cell->kind == HW_CELL_EMPTY ||
        looks[cell->style].boxed || last <= column) {
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
    lxw_format *format =
        format_for(p->m, cell, (place){ side_of(p, cell, column), p->lines > 1, p->table->large });
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

/* Lines that the words of a row are wrapped to. Letters are narrower than the digits by which
 * columns are measured, so that more of them go into a line. */
static int lines_of(const page *p, int row)
{
    int most = 1;
    for (int c = 0; c < p->table->columns; c++) {
        const hw_cell *cell = hw_cells_at(p->table, row, c);
        if (cell->kind == HW_CELL_TEXT && looks[cell->style].wraps && p->widths[c] > 0) {
            int lines =
                hw_wrap_lines(cell->text, p->widths[c] * HW_COLUMNS_LETTERS / HW_COLUMNS_DIGITS);
            most = lines > most ? lines : most;
        }
    }
    return most;
}

/* Heights are said outright: programs differ in how they guess them. */
static double height_of(const page *p, int row)
{
    const hw_cell *first = hw_cells_at(p->table, row, 0);
    if (first->kind == HW_CELL_TEXT && first->style == HW_STYLE_TITLE) {
        return title_height;
    }
    bool chart = p->table->columns > 1 && looks[hw_cells_at(p->table, row, 1)->style].boxed;
    return chart ? square_height : row_height + line_height * (p->lines - 1);
}

static hw_status write_row(page *p, int row)
{
    p->lines = lines_of(p, row);
    double height = height_of(p, row) * (p->table->large ? large_by : 1);
    hw_status status = status_of(worksheet_set_row(p->sheet, (lxw_row_t)row, height, NULL));
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
    const hw_table *table = p->table;
    hw_columns_fit(
        &(hw_columns_range){ table, 0, table->rows, PAGE_CHARACTERS, BETWEEN, true }, p->widths);
    hw_status status = HW_OK;
    for (int c = 0; c < table->columns && status == HW_OK; c++) {
        double width = p->squares[c] ? square_width : width_factor * p->widths[c] + width_more;
        width *= table->large ? large_by : 1;
        status = status_of(worksheet_set_column(p->sheet, (lxw_col_t)c, (lxw_col_t)c, width, NULL));
    }
    return status;
}

/* What stays in view, and how the sheet prints. */
static hw_status set_page(page *p)
{
    const hw_table *table = p->table;
    worksheet_freeze_panes(p->sheet, (lxw_row_t)table->head_rows, (lxw_col_t)table->head_columns);
    worksheet_set_landscape(p->sheet);
    worksheet_set_paper(p->sheet, PAPER_A4);
    /* A chart is read at a glance: on one page, while its squares stay large enough. */
    bool one_page = table->square && table->rows <= ONE_PAGE_ROWS;
    worksheet_fit_to_pages(p->sheet, 1, one_page ? 1 : 0);
    lxw_error error = LXW_NO_ERROR;
    if (table->head_rows > 0) {
        error = worksheet_repeat_rows(p->sheet, 0, (lxw_row_t)table->head_rows - 1);
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
    for (int c = 0; c < table->columns; c++) {
        p.squares[c] = hw_columns_squares(table, c);
        p.numbers[c] = hw_columns_numbers(table, c);
    }
    hw_status status = set_widths(&p);
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

static hw_status write_book(const hw_tables *tables, const char *temporary,
    const hw_book_options *options, long *cells, int *number)
{
    maker m = { .book = workbook_new(temporary) };
    if (m.book == NULL) {
        return HW_ERR_NOMEM;
    }
    hw_status status = fill(&m, tables, options, cells);
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
