/* The motif: floats, mirrors and card against slow, plain searches over a drawn-out band.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "core/motif.h"
#include "support.h"

enum { MOST_CELLS = 400, COPIES = 6 };

/* A chart from its rows written one behind the other. */
static hw_chart drawn(const char *text, int width, unsigned char *cells)
{
    int count = (int)strlen(text);
    for (int i = 0; i < count; i++) {
        cells[i] = text[i] == 'o' ? HW_CONTRAST : HW_BACKGROUND;
    }
    return (hw_chart){ .name = "drawn", .width = width, .rows = count / width, .cells = cells };
}

/* One row of the band, figure and gap, several times over; the way a knitter would draw it. */
static int draw_row(const hw_motif *motif, int row, unsigned char *out)
{
    int sts = 0;
    for (int copy = 0; copy < COPIES; copy++) {
        for (int column = 0; column < motif->chart.width; column++) {
            out[sts++] = motif->chart.cells[row * motif->chart.width + column];
        }
        for (int column = 0; column < motif->gap; column++) {
            out[sts++] = HW_BACKGROUND;
        }
    }
    return sts;
}

/* The longest run of the other colour that has this colour at both of its ends. */
static int slow_float(const unsigned char *row, int sts, int colour)
{
    int longest = 0;
    for (int from = 0; from < sts; from++) {
        int to = from + 1;
        while (to < sts && row[to] != colour) {
            to++;
        }
        if (row[from] == colour && to < sts && to - from - 1 > longest) {
            longest = to - from - 1;
        }
    }
    return longest;
}

static void check_rows(const hw_motif *motif)
{
    int contrast_sts = 0;
    int longest[HW_COLOUR_COUNT] = { 0 };
    int without[HW_COLOUR_COUNT] = { 0 };
    for (int row = 0; row < motif->chart.rows; row++) {
        unsigned char band[MOST_CELLS];
        int sts = draw_row(motif, row, band);
        int count[HW_COLOUR_COUNT] = { 0 };
        for (int i = 0; i < motif->repeat; i++) {
            count[band[i]]++;
            ck_assert_int_eq(hw_motif_at(motif, row, i), band[i]);
            ck_assert_int_eq(hw_motif_at(motif, row, i - 3 * motif->repeat), band[i]);
        }
        ck_assert_int_eq(motif->rows[row].contrast_sts, count[HW_CONTRAST]);
        contrast_sts += count[HW_CONTRAST];
        for (int i = 0; i < HW_COLOUR_COUNT; i++) {
            int slow = slow_float(band, sts, i);
            ck_assert_int_eq(motif->rows[row].longest_float[i], slow);
            longest[i] = slow > longest[i] ? slow : longest[i];
            without[i] += count[i] == 0 ? 1 : 0;
        }
    }
    ck_assert_int_eq(motif->contrast_sts, contrast_sts);
    double share = (double)contrast_sts / motif->chart.rows / motif->repeat;
    ck_assert_double_eq_tol(motif->contrast_share, share, 1e-12);
    ck_assert_int_eq(motif->rows_without_contrast, without[HW_CONTRAST]);
    ck_assert_int_eq(motif->rows_without_background, without[HW_BACKGROUND]);
    for (int i = 0; i < HW_COLOUR_COUNT; i++) {
        ck_assert_int_eq(motif->longest_float[i], longest[i]);
    }
}

/* Fold the drawn band at a line so many half columns from its left edge: does each half stitch fall
 * on one of its own colour, for two repeats on each side? */
static bool folds(const hw_motif *motif, int halves)
{
    int line = 4 * motif->repeat + halves; /* two repeats in from the left edge of the drawing */
    for (int row = 0; row < motif->chart.rows; row++) {
        unsigned char band[MOST_CELLS];
        (void)draw_row(motif, row, band);
        for (int away = 0; away < 4 * motif->repeat; away++) {
            if (band[(line + away) / 2] != band[(line - 1 - away) / 2]) {
                return false;
            }
        }
    }
    return true;
}

static void check_axes(const hw_motif *motif)
{
    int found = 0;
    for (int halves = 0; halves < 2 * motif->repeat; halves++) {
        if (folds(motif, halves)) {
            ck_assert_int_lt(found, motif->axis_count);
            ck_assert_int_eq(motif->axes[found], halves);
            found++;
        }
    }
    ck_assert_int_eq(motif->axis_count, found);
}

static void check_card(const hw_motif *motif, int card_columns)
{
    int found = 0;
    for (int gap = 0; gap <= card_columns; gap++) {
        int columns = 0;
        while (columns < card_columns) {
            columns += motif->chart.width + gap;
        }
        if (columns == card_columns && card_columns > 0) {
            ck_assert_int_lt(found, motif->card_gap_count);
            ck_assert_int_eq(motif->card_gaps[found], gap);
            found++;
        }
    }
    ck_assert_int_eq(motif->card_gap_count, found);
    int columns = 0;
    int repeats = 0;
    for (; columns + motif->repeat <= card_columns; repeats++) {
        columns += motif->repeat;
    }
    ck_assert_int_eq(motif->repeats_on_card, repeats);
    ck_assert_int_eq(motif->fits_card, columns == card_columns);
    ck_assert_int_eq(motif->card_columns, card_columns);
}

/* By search: 3000 figures by chance, small ones, so that mirrors and full rows come up often. */
START_TEST(every_property_by_search)
{
    unsigned state = 3;
    int mirrored = 0;
    for (int round = 0; round < 3000; round++) {
        unsigned char cells[MOST_CELLS] = { 0 };
        hw_chart chart = { .name = "chance", .cells = cells };
        chart.width = 1 + hw_check_random(&state, 8);
        chart.rows = 1 + hw_check_random(&state, 3);
        int holes = hw_check_random(&state, 4);
        for (int i = 0; i < chart.width * chart.rows; i++) {
            cells[i] = hw_check_random(&state, 3) < holes ? HW_CONTRAST : HW_BACKGROUND;
        }
        int card_columns = hw_check_random(&state, 2) == 0 ? 24 : hw_check_random(&state, 31);
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_motif motif = { 0 };
        int gap = hw_check_random(&state, 5);
        ck_assert_int_eq(hw_motif_analyse(&chart, gap, card_columns, &arena, &motif), HW_OK);
        ck_assert_int_eq(motif.repeat, chart.width + gap);
        check_rows(&motif);
        check_axes(&motif);
        check_card(&motif, card_columns);
        if (motif.symmetrical) {
            ck_assert(folds(&motif, chart.width));
            mirrored++;
        }
        hw_check_close(&arena, &heap);
    }
    ck_assert_int_gt(mirrored, 300);
    ck_assert_int_lt(mirrored, 2700);
}
END_TEST

/* Common practice, no source: 5 columns with gap 1 are four repeats on 24 columns. Repeats that fit
 * 24 whole are 1, 2, 3, 4, 6, 8, 12, 24 (by hand: its divisors), so the gaps are 1, 3, 7 and 19. */
START_TEST(five_columns_on_a_card)
{
    unsigned char cells[MOST_CELLS];
    hw_chart chart = drawn("..o.."
                           ".ooo."
                           "ooooo"
                           ".....",
        5, cells);
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_motif motif = { 0 };
    ck_assert_int_eq(hw_motif_analyse(&chart, 1, 24, &arena, &motif), HW_OK);
    ck_assert(motif.fits_card && motif.symmetrical);
    ck_assert_int_eq(motif.repeats_on_card, 4);
    static const int gaps[] = { 1, 3, 7, 19 };
    ck_assert_int_eq(motif.card_gap_count, 4);
    ck_assert_mem_eq(motif.card_gaps, gaps, sizeof gaps);
    /* by hand: top row .. o .. with the gap leaves five background stitches between two contrast
     * ones; the third row's background strand passes five. Mirrors on the middles of column 3 (five
     * half columns in) and of the gap (eleven). */
    ck_assert_int_eq(motif.rows[0].longest_float[HW_CONTRAST], 5);
    ck_assert_int_eq(motif.rows[0].longest_float[HW_BACKGROUND], 1);
    ck_assert_int_eq(motif.rows[2].longest_float[HW_BACKGROUND], 5);
    ck_assert_int_eq(motif.rows[3].longest_float[HW_CONTRAST], 0);
    ck_assert_int_eq(motif.rows[3].longest_float[HW_BACKGROUND], 0);
    ck_assert_int_eq(motif.longest_float[HW_CONTRAST], 5);
    ck_assert_int_eq(motif.contrast_sts, 9);
    ck_assert_double_eq_tol(motif.contrast_share, 9.0 / 24, 1e-12);
    ck_assert_int_eq(motif.rows_without_contrast, 1);
    ck_assert_int_eq(motif.axis_count, 2);
    ck_assert_int_eq(motif.axes[0], 5);
    ck_assert_int_eq(motif.axes[1], 11);
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: an even figure mirrors between two columns, after two of four and in the gap's middle;
 * without a card all gaps do, and none is listed. */
START_TEST(even_figure_without_card)
{
    unsigned char cells[MOST_CELLS];
    hw_chart chart = drawn("o..oo..o", 4, cells);
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_motif motif = { 0 };
    ck_assert_int_eq(hw_motif_analyse(&chart, 3, 0, &arena, &motif), HW_OK);
    ck_assert(motif.fits_card);
    ck_assert_int_eq(motif.card_gap_count, 0);
    ck_assert_int_eq(motif.axis_count, 2);
    ck_assert_int_eq(motif.axes[0], 4);
    ck_assert_int_eq(motif.axes[1], 11);
    hw_check_close(&arena, &heap);
}
END_TEST

/* The largest that the reader lets through: one figure as wide as the widest repeat. By hand: a
 * single contrast column leaves a float of 199. */
START_TEST(widest)
{
    static unsigned char cells[HW_MAX_CHART_COLUMNS * HW_MAX_CHART_ROWS];
    for (int row = 0; row < HW_MAX_CHART_ROWS; row++) {
        cells[row * HW_MAX_CHART_COLUMNS + 17] = HW_CONTRAST;
    }
    hw_chart chart = {
        .name = "wide", .width = HW_MAX_CHART_COLUMNS, .rows = HW_MAX_CHART_ROWS, .cells = cells
    };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_motif motif = { 0 };
    ck_assert_int_eq(hw_motif_analyse(&chart, 0, 24, &arena, &motif), HW_OK);
    ck_assert_int_eq(motif.longest_float[HW_CONTRAST], HW_MAX_CHART_COLUMNS - 1);
    ck_assert_int_eq(motif.contrast_sts, HW_MAX_CHART_ROWS);
    ck_assert_int_eq(motif.card_gap_count, 0);
    ck_assert(!motif.fits_card && !motif.symmetrical);
    ck_assert_int_eq(motif.axis_count, 2);
    ck_assert_int_eq(motif.axes[0], 35); /* the middle of column 18 */
    hw_check_close(&arena, &heap);
}
END_TEST

static hw_status analyse(hw_arena *arena)
{
    unsigned char cells[MOST_CELLS];
    hw_chart chart = drawn("o.oo", 2, cells);
    hw_motif motif = { .repeat = 77 };
    hw_status status = hw_motif_analyse(&chart, 1, 24, arena, &motif);
    ck_assert_int_eq(motif.repeat, status == HW_OK ? 3 : 77);
    return status;
}

START_TEST(no_memory)
{
    ck_assert_int_eq(hw_check_refusals(analyse, false), 4); /* rows, axes, gaps; then none */
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { every_property_by_search, five_columns_on_a_card,
        even_figure_without_card, widest, no_memory };
    return hw_check_run(hw_check_suite("motif", tests, sizeof tests / sizeof tests[0]));
}
