/* The chart as it is knitted, a card's width of it, and what the figure means on the needles.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/sheets.h"

enum { USUAL_COLUMNS = 24 }; /* shown where there is no card */

/* Where things stand: row number, squares, row number, two columns of floats. */
typedef struct {
    int squares; /* columns of the chart, from column 1 on */
    int again;   /* the row number at the right */
    int floats;  /* the background's; the contrast's beside it */
    int columns;
} layout;

static const char *const colours[] = {
    [HW_BACKGROUND] = "background",
    [HW_CONTRAST] = "contrast",
};
_Static_assert(sizeof colours / sizeof colours[0] == HW_COLOUR_COUNT, "a word for each colour");

static layout lay_out(const hw_motif *motif)
{
    int wanted = motif->card_columns > 0 ? motif->card_columns : USUAL_COLUMNS;
    int repeats = wanted / motif->repeat;
    int squares = motif->repeat * (repeats > 0 ? repeats : 1);
    return (layout){ squares, squares + 1, squares + 2, squares + 2 + HW_COLOUR_COUNT };
}

static void head(const hw_sheet *sheet, const layout *at)
{
    hw_grid_begin(sheet->grid, sheet->arena, "Chart", at->columns);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    sheet->grid->table.square = true;
    hw_sheet_title(sheet, "the band as knitted, right side facing");
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "row");
    for (int c = 1; c <= at->squares; c++) {
        hw_grid_count(sheet->grid, c, HW_STYLE_HEAD, c);
    }
    hw_grid_text(sheet->grid, at->again, HW_STYLE_HEAD, "row");
    for (int k = 0; k < HW_COLOUR_COUNT; k++) {
        hw_grid_text(sheet->grid, at->floats + k, HW_STYLE_HEAD,
            hw_arena_format(sheet->arena, "%s float, sts", colours[k]));
    }
}

static void chart_row(const hw_sheet *sheet, const layout *at, int row)
{
    const hw_motif *motif = &sheet->plan->motif;
    int number = motif->chart.rows - row;
    hw_grid_row(sheet->grid);
    hw_grid_count(sheet->grid, 0, HW_STYLE_LABEL, number);
    for (int c = 1; c <= at->squares; c++) {
        bool contrast = hw_motif_at(motif, row, c - 1) == HW_CONTRAST;
        hw_grid_text(sheet->grid, c, contrast ? HW_STYLE_CONTRAST : HW_STYLE_BACKGROUND,
            contrast ? "o" : ".");
    }
    hw_grid_count(sheet->grid, at->again, HW_STYLE_LABEL, number);
    for (int k = 0; k < HW_COLOUR_COUNT; k++) {
        hw_grid_count(
            sheet->grid, at->floats + k, HW_STYLE_PLAIN, motif->rows[row].longest_float[k]);
    }
}

/* The other face: the card's columns with the needles that they work. */
static void purl_side(const hw_sheet *sheet)
{
    const hw_plan *plan = sheet->plan;
    const hw_motif *motif = &plan->motif;
    int columns = motif->card_columns;
    if (columns == 0 || !motif->fits_card) {
        return;
    }
    hw_grid_section(sheet->grid,
        "the same on the needles, purl side facing you: columns of the card, punched as shown");
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "row");
    for (int c = 0; c < columns; c++) {
        hw_grid_count(sheet->grid, 1 + c, HW_STYLE_HEAD, c + 1);
    }
    for (int row = 0; row < motif->chart.rows; row++) {
        hw_grid_row(sheet->grid);
        hw_grid_count(sheet->grid, 0, HW_STYLE_LABEL, motif->chart.rows - row);
        for (int c = 0; c < columns; c++) {
            bool hole = hw_card_at(motif, row, c, plan->places[0].card_start) == HW_CONTRAST;
            hw_grid_text(sheet->grid, 1 + c, hole ? HW_STYLE_CONTRAST : HW_STYLE_BACKGROUND,
                hole ? "o" : ".");
        }
    }
    hw_grid_section(sheet->grid, "the card");
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "how to read it");
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, "o a hole, . none; row 1 is knitted first");
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "needle of column 1");
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, hw_bed_needle_name(-columns / 2, sheet->arena));
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "which way a card faces");
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN,
        "differs from machine to machine: knit a few rows and look before you punch it all");
}

static void fact_count(const hw_sheet *sheet, const char *label, int count)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, label);
    hw_grid_count(sheet->grid, 1, HW_STYLE_PLAIN, count);
}

static void fact_text(const hw_sheet *sheet, const char *label, const char *text)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, label);
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, text);
}

/* An axis lies on a column where it is odd, else between two columns, or where repeats meet. */
static void axis_words(hw_buf *buf, int axis)
{
    if (axis % 2 != 0) {
        hw_buf_format(buf, "on column %d", (axis + 1) / 2);
    } else if (axis == 0) {
        hw_buf_text(buf, "where two repeats meet");
    } else {
        hw_buf_format(buf, "between columns %d and %d", axis / 2, axis / 2 + 1);
    }
}

static char *axes_words(const hw_sheet *sheet)
{
    const hw_motif *motif = &sheet->plan->motif;
    hw_buf buf;
    hw_buf_init(&buf, &sheet->arena->mem, HW_BUF_LIMIT);
    for (int i = 0; i < motif->axis_count; i++) {
        hw_buf_text(&buf, i == 0 ? "" : i + 1 < motif->axis_count ? ", " : " and ");
        axis_words(&buf, motif->axes[i]);
    }
    hw_buf_text(&buf, motif->axis_count == 0 ? "none" : "");
    char *words = hw_buf_keep(&buf, sheet->arena);
    hw_buf_release(&buf);
    return words;
}

static void gap_words(hw_buf *buf, const hw_motif *motif)
{
    hw_buf_format(
        buf, "%d columns do not divide the card's %d; ", motif->repeat, motif->card_columns);
    hw_buf_text(
        buf, motif->card_gap_count == 0 ? "no gap makes them fit" : "they would with a gap of ");
    for (int i = 0; i < motif->card_gap_count; i++) {
        hw_buf_text(buf, i == 0 ? "" : i + 1 < motif->card_gap_count ? ", " : " or ");
        hw_buf_format(buf, "%d", motif->card_gaps[i]);
    }
}

static char *card_words(const hw_sheet *sheet)
{
    const hw_motif *motif = &sheet->plan->motif;
    hw_buf buf;
    hw_buf_init(&buf, &sheet->arena->mem, HW_BUF_LIMIT);
    if (motif->card_columns == 0) {
        hw_buf_text(&buf, "none");
    } else if (motif->fits_card) {
        hw_buf_format(&buf, "%d columns hold the repeat %d %s", motif->card_columns,
            motif->repeats_on_card, motif->repeats_on_card == 1 ? "time" : "times");
    } else {
        gap_words(&buf, motif);
    }
    char *words = hw_buf_keep(&buf, sheet->arena);
    hw_buf_release(&buf);
    return words;
}

static void facts(const hw_sheet *sheet)
{
    const hw_motif *motif = &sheet->plan->motif;
    hw_grid_section(sheet->grid, "the figure");
    fact_text(sheet, "how to read it", "o contrast, . background; row 1 is knitted first");
    fact_text(sheet, "name", motif->chart.name);
    fact_count(sheet, "figure, columns", motif->chart.width);
    fact_count(sheet, "gap, columns", motif->gap);
    fact_count(sheet, "repeat, columns", motif->repeat);
    fact_count(sheet, "rows", motif->chart.rows);
    for (int k = 0; k < HW_COLOUR_COUNT; k++) {
        fact_count(sheet, hw_arena_format(sheet->arena, "longest float, %s, sts", colours[k]),
            motif->longest_float[k]);
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "share of the contrast, %");
    hw_grid_number(sheet->grid, 1, HW_STYLE_PLAIN, 100 * motif->contrast_share, 1);
    fact_text(sheet, "figure is symmetrical", motif->symmetrical ? "yes" : "no");
    fact_text(sheet, "mirror axes", axes_words(sheet));
    fact_text(sheet, "punch card", card_words(sheet));
}

void hw_sheet_chart(const hw_sheet *sheet)
{
    const hw_motif *motif = &sheet->plan->motif;
    layout at = lay_out(motif);
    head(sheet, &at);
    for (int row = 0; row < motif->chart.rows; row++) {
        chart_row(sheet, &at, row);
    }
    facts(sheet);
    purl_side(sheet);
}
