/* Both ways of laying the paper are tried; the one with fewer pages is taken.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/paper.h"

#include "core/num.h"
#include "write/paging.h"

enum { BETWEEN = 2 }; /* characters, as the widths of columns are worked out */

/* A4 is 297 by 210 mm, a point the 72nd part of an inch (ISO 216, from memory). */
static const double long_side = 841.9;
static const double short_side = 595.3;
static const double points_in_inch = 72;

/* A column of w digits is 7 w + 5 dots wide, 96 dots to an inch, where a digit takes 7: so it is
 * in Arial of 10 points (from memory). */
static const double dots_in_inch = 96;
static const double digit_dots = 7;
static const double column_dots = 5;
static const double width_factor = 1.08; /* bold letters are wider than the digits that count */
static const double width_more = 1.4;

static const double square_width = 2.6;    /* digits */
static const double square_height = 17.25; /* points, and so are the next eight */
static const double least_square = 11;
static const double just_less = 0.999; /* so that their sum is not more by rounding */
static const double title_height = 26;
static const double title_line_height = 18;
static const double row_height = 13.5;
static const double line_height = 12.75;
static const double blank_height = 8;
static const double written_height = 20; /* with room for a hand's writing */

/* How much smaller letters may become (own choice). */
static const double least_one_page = 0.85; /* to save a page or two */
static const double least_chart = 0.6;     /* to keep a chart whole */
static const double least_portrait = 0.72;
static const double least_saving = 0.76; /* to save pages of several */
static const double least_across = 0.55; /* before a table takes several pages across */
static const double wanted_across = 0.7;
static const double smaller_step = 0.02;

/* Where Arial is missing, another typeface takes its place, with digits and so columns up to so
 * much wider (DejaVu Sans 0.636 of its size, Arial 0.556, rounded down to dots: from memory). A
 * page must hold them as well: programs put what it does not hold on a page of its own. */
static const double wider_by = 1.22;
static const double room_left = 0.98; /* programs differ by so much in what a page holds */

bool hw_paper_wraps(hw_cell_style style)
{
    return !hw_paper_boxed(style);
}

bool hw_paper_boxed(hw_cell_style style)
{
    return style == HW_STYLE_FILL_IN || style == HW_STYLE_BACKGROUND || style == HW_STYLE_CONTRAST;
}

int hw_paper_last(const hw_table *table, const hw_paper *paper, int row, int column)
{
    const hw_cell *cell = hw_cells_at(table, row, column);
    bool fact = paper->squares[column] && cell->kind != HW_CELL_EMPTY &&
                cell->style != HW_STYLE_HEAD && !hw_paper_boxed(cell->style);
    int last = column;
    while ((fact || (cell->kind == HW_CELL_TEXT && hw_columns_run_on(cell))) &&
           last + 1 < table->columns && hw_cells_at(table, row, last + 1)->kind == HW_CELL_EMPTY) {
        last++;
    }
    return last;
}

/* One way of laying the paper. */
typedef struct {
    const hw_table *table;
    hw_paper *paper;
    double across, down; /* what a page has room for, in points */
    int characters[HW_COLUMNS_MOST];
    double width;  /* of the whole table, in points, as wide as it may become */
    double height; /* of all rows but those that repeat */
    double head;   /* of those */
} laying;

static double points(double width)
{
    return (digit_dots * width + column_dots) * points_in_inch / dots_in_inch;
}

static void set_widths(laying *l)
{
    const hw_table *table = l->table;
    hw_paper *paper = l->paper;
    /* Digits that the page holds when each column takes its own width and BETWEEN more. */
    double page = (l->across / paper->letters) * dots_in_inch / points_in_inch;
    double digit = digit_dots * width_factor;
    int characters = hw_num_down((page - digit * BETWEEN) / digit);
    hw_columns_fit(
        &(hw_columns_range){ table, 0, table->rows, characters, BETWEEN, true }, l->characters);
    l->width = 0;
    for (int c = 0; c < table->columns; c++) {
        double width =
            paper->squares[c] ? square_width : width_factor * l->characters[c] + width_more;
        paper->widths[c] = width * paper->letters;
        l->width += points(paper->widths[c]) * wider_by;
    }
}

/* The digits that the columns [from, to] hold together, without the room between cells. */
static int digits_in(const hw_paper *paper, int from, int to)
{
    double width = 0;
    for (int c = from; c <= to; c++) {
        width += points(paper->widths[c] / paper->letters);
    }
    double dots = width * dots_in_inch / points_in_inch;
    return hw_num_down(((dots - column_dots) / digit_dots - width_more) / width_factor);
}

/* Letters are narrower than the digits by which columns are measured, but not those of a title. */
static int letters_in(int digits, hw_cell_style style)
{
    return style == HW_STYLE_TITLE ? digits * HW_PAPER_FONT_SIZE / HW_PAPER_TITLE_SIZE
                                   : digits * HW_COLUMNS_LETTERS / HW_COLUMNS_DIGITS;
}

/* Lines that the words of a row are wrapped to. */
static int lines_of(const laying *l, int row)
{
    int most = 1;
    for (int c = 0; c < l->table->columns; c++) {
        const hw_cell *cell = hw_cells_at(l->table, row, c);
        if (cell->kind == HW_CELL_TEXT && hw_paper_wraps(cell->style)) {
            int digits = digits_in(l->paper, c, hw_paper_last(l->table, l->paper, row, c));
            int letters = letters_in(digits, cell->style);
            int lines = hw_wrap_lines(cell->text, letters > 1 ? letters : 1);
            most = lines > most ? lines : most;
        }
    }
    return most;
}

static bool is_blank(const hw_table *table, int row)
{
    for (int c = 0; c < table->columns; c++) {
        const hw_cell *cell = hw_cells_at(table, row, c);
        if (cell->kind != HW_CELL_EMPTY || cell->style != HW_STYLE_PLAIN) {
            return false;
        }
    }
    return true;
}

static bool is_filled_in(const hw_table *table, int row)
{
    bool any = false;
    for (int c = 0; c < table->columns; c++) {
        any = any || hw_cells_at(table, row, c)->style == HW_STYLE_FILL_IN;
    }
    return any;
}

static bool has_squares(const hw_table *table, int row)
{
    return table->columns > 1 && hw_paper_boxed(hw_cells_at(table, row, 1)->style);
}

/* Heights are said outright: programs differ in how they guess them. */
static double height_of(const laying *l, int row, double square)
{
    const hw_cell *first = hw_cells_at(l->table, row, 0);
    if (first->kind == HW_CELL_TEXT && first->style == HW_STYLE_TITLE) {
        return title_height + title_line_height * (l->paper->lines[row] - 1);
    }
    if (has_squares(l->table, row)) {
        return square;
    }
    if (is_filled_in(l->table, row)) {
        return written_height;
    }
    return is_blank(l->table, row) ? blank_height
                                   : row_height + line_height * (l->paper->lines[row] - 1);
}

static void set_heights(laying *l, double square)
{
    l->height = 0;
    l->head = 0;
    for (int r = 0; r < l->table->rows; r++) {
        l->paper->lines[r] = lines_of(l, r);
        double height = height_of(l, r, square) * l->paper->letters;
        l->paper->heights[r] = height;
        if (r < l->table->head_rows) {
            l->head += height;
        } else {
            l->height += height;
        }
    }
}

/* The points of the table itself that a page holds beside the rows that repeat. */
static double page_of(const laying *l)
{
    return l->down * room_left / l->paper->scale - l->head;
}

/* Squares grow flatter where that keeps the first figure of a sheet on one page. */
static double square_for(const laying *l)
{
    int rows = l->table->head_rows;
    double other = 0;
    int squares = 0;
    for (; rows < l->table->rows && !is_blank(l->table, rows); rows++) {
        squares += has_squares(l->table, rows) ? 1 : 0;
        other += has_squares(l->table, rows) ? 0 : l->paper->heights[rows];
    }
    double room = squares > 0 ? (page_of(l) - other) / squares : square_height;
    room = room / l->paper->letters * just_less;
    return room > square_height ? square_height : room < least_square ? least_square : room;
}

/* How much larger the table would have to be, or smaller, to fill one page. */
static double filling(const laying *l)
{
    return l->height > 0 ? page_of(l) / l->height : 1;
}

static void break_pages(laying *l)
{
    hw_paging paging = { l->table, l->paper->heights, page_of(l) };
    l->paper->break_count = hw_paging_breaks(&paging, l->paper->breaks);
}

/* Letters that are a little smaller may save a page; among as many pages the largest are taken. */
static void save_pages(laying *l)
{
    double scale = l->paper->scale;
    double best = scale;
    break_pages(l);
    int fewest = l->paper->break_count;
    for (int i = 1; scale * (1 - i * smaller_step) >= least_saving; i++) {
        l->paper->scale = scale * (1 - i * smaller_step);
        break_pages(l);
        best = l->paper->break_count < fewest ? l->paper->scale : best;
        fewest = l->paper->break_count < fewest ? l->paper->break_count : fewest;
    }
    l->paper->scale = best;
    break_pages(l);
}

static void set_pages(laying *l)
{
    hw_paper *paper = l->paper;
    paper->pages_across = 1;
    paper->scale = l->width > l->across ? l->across / l->width : 1;
    if (paper->scale < least_across) {
        paper->pages_across = hw_num_up(wanted_across / paper->scale);
        paper->scale = wanted_across;
    }
    set_heights(l, square_height);
    double smaller = filling(l);
    double least = l->table->square ? least_chart : least_one_page;
    paper->one_page = smaller >= least && paper->pages_across == 1;
    paper->break_count = 0;
    if (paper->one_page) {
        paper->scale *= smaller < 1 ? smaller : 1;
        return;
    }
    if (l->table->square) {
        set_heights(l, square_for(l));
    }
    save_pages(l);
}

/* Lay the paper one way; how many pages, of which each may have more across. */
static int lay(laying *l, bool portrait)
{
    double margins = HW_PAPER_MARGIN * points_in_inch;
    double foot = HW_PAPER_FOOT * points_in_inch;
    l->paper->portrait = portrait;
    l->across = (portrait ? short_side : long_side) - 2 * margins;
    l->down = (portrait ? long_side : short_side) - margins - foot;
    set_widths(l);
    set_pages(l);
    return (l->paper->break_count + 1) * l->paper->pages_across;
}

hw_status hw_paper_lay(const hw_table *table, hw_arena *arena, hw_paper *out)
{
    laying l = { .table = table, .paper = out };
    *out = (hw_paper){ .letters = table->large ? HW_PAPER_LARGE : 1 };
    size_t rows = (size_t)table->rows;
    out->heights = hw_arena_get(arena, rows, sizeof *out->heights);
    out->lines = hw_arena_get(arena, rows, sizeof *out->lines);
    out->breaks = hw_arena_get(arena, rows, sizeof *out->breaks);
    if (out->heights == NULL || out->lines == NULL || out->breaks == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int c = 0; c < table->columns; c++) {
        out->squares[c] = hw_columns_squares(table, c);
        out->numbers[c] = hw_columns_numbers(table, c);
    }
    int wide_pages = lay(&l, false);
    double wide_scale = out->scale;
    int high_pages = lay(&l, true);
    bool larger = out->scale > wide_scale && high_pages <= wide_pages;
    bool fewer = high_pages < wide_pages && (table->square || out->scale >= least_portrait);
    if (!larger && !fewer) {
        (void)lay(&l, false);
    }
    return HW_OK;
}
