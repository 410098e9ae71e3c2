/* What a figure and a gap decide: floats, mirror axes, share of contrast, fit on the card.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/motif.h"

#include <assert.h>

#include "core/num.h"

hw_colour hw_motif_at(const hw_motif *motif, int row, int column)
{
    assert(row >= 0 && row < motif->chart.rows);
    int place = hw_num_mod(column, motif->repeat);
    if (place >= motif->chart.width) {
        return HW_BACKGROUND;
    }
    return motif->chart.cells[row * motif->chart.width + place] == HW_CONTRAST ? HW_CONTRAST
                                                                               : HW_BACKGROUND;
}

/* The longest run, over the join, of stitches that are not of this colour. Some stitch is. */
static int longest_float(const hw_motif *motif, int row, hw_colour colour)
{
    int start = 0;
    while (hw_motif_at(motif, row, start) != colour) {
        start++;
    }
    int longest = 0;
    int run = 0;
    for (int i = 1; i <= motif->repeat; i++) {
        run = hw_motif_at(motif, row, start + i) == colour ? 0 : run + 1;
        longest = run > longest ? run : longest;
    }
    return longest;
}

static hw_motif_row look_at_row(const hw_motif *motif, int row)
{
    hw_motif_row found = { 0 };
    for (int column = 0; column < motif->repeat; column++) {
        found.contrast_sts += hw_motif_at(motif, row, column) == HW_CONTRAST ? 1 : 0;
    }
    if (found.contrast_sts > 0 && found.contrast_sts < motif->repeat) {
        for (int i = 0; i < HW_COLOUR_COUNT; i++) {
            found.longest_float[i] = longest_float(motif, row, (hw_colour)i);
        }
    }
    return found;
}

static hw_status look_at_rows(hw_motif *motif, hw_arena *arena)
{
    motif->rows = hw_arena_get(arena, (size_t)motif->chart.rows, sizeof *motif->rows);
    if (motif->rows == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int row = 0; row < motif->chart.rows; row++) {
        hw_motif_row found = look_at_row(motif, row);
        motif->rows[row] = found;
        motif->contrast_sts += found.contrast_sts;
        motif->rows_without_contrast += found.contrast_sts == 0 ? 1 : 0;
        motif->rows_without_background += found.contrast_sts == motif->repeat ? 1 : 0;
        for (int i = 0; i < HW_COLOUR_COUNT; i++) {
            if (found.longest_float[i] > motif->longest_float[i]) {
                motif->longest_float[i] = found.longest_float[i];
            }
        }
    }
    motif->contrast_share = (double)motif->contrast_sts / (motif->repeat * motif->chart.rows);
    return HW_OK;
}

/* A mirror at `axis` half columns brings column c to axis - 1 - c: the middle of column c lies
 * 2c + 1 half columns from the left edge, its image 2 axis - (2c + 1). */
static bool mirrors(const hw_motif *motif, int axis)
{
    for (int row = 0; row < motif->chart.rows; row++) {
        for (int column = 0; column < motif->repeat; column++) {
            if (hw_motif_at(motif, row, column) != hw_motif_at(motif, row, axis - 1 - column)) {
                return false;
            }
        }
    }
    return true;
}

/* Each axis comes a second time one repeat of half columns further on, and no other does. */
static hw_status find_axes(hw_motif *motif, hw_arena *arena)
{
    motif->axes = hw_arena_get(arena, 2 * (size_t)motif->repeat, sizeof *motif->axes);
    if (motif->axes == NULL) {
        return HW_ERR_NOMEM;
    }
    int found = 0;
    for (int axis = 0; axis < motif->repeat; axis++) {
        if (mirrors(motif, axis)) {
            motif->axes[found++] = axis;
        }
    }
    for (int i = 0; i < found; i++) {
        motif->axes[found + i] = motif->axes[i] + motif->repeat;
    }
    motif->axis_count = 2 * found;
    return HW_OK;
}

static bool symmetrical(const hw_chart *chart)
{
    for (int row = 0; row < chart->rows; row++) {
        const unsigned char *cells = &chart->cells[row * chart->width];
        for (int column = 0; column < chart->width / 2; column++) {
            if (cells[column] != cells[chart->width - 1 - column]) {
                return false;
            }
        }
    }
    return true;
}

static hw_status lay_on_card(hw_motif *motif, int card_columns, hw_arena *arena)
{
    motif->card_columns = card_columns;
    motif->fits_card = card_columns == 0 || card_columns % motif->repeat == 0;
    motif->repeats_on_card = card_columns / motif->repeat;
    motif->card_gaps = hw_arena_get(arena, (size_t)card_columns, sizeof *motif->card_gaps);
    if (motif->card_gaps == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int repeat = motif->chart.width; repeat <= card_columns; repeat++) {
        if (card_columns % repeat == 0) {
            motif->card_gaps[motif->card_gap_count++] = repeat - motif->chart.width;
        }
    }
    return HW_OK;
}

hw_status hw_motif_analyse(
    const hw_chart *chart, int gap, int card_columns, hw_arena *arena, hw_motif *out)
{
    assert(chart->width > 0 && chart->rows > 0 && card_columns >= 0);
    assert(gap >= 0 && chart->width + gap <= HW_MAX_CHART_COLUMNS);
    hw_motif motif = {
        .chart = *chart,
        .gap = gap,
        .repeat = chart->width + gap,
        .symmetrical = symmetrical(chart),
    };
    hw_status status = look_at_rows(&motif, arena);
    if (status == HW_OK) {
        status = find_axes(&motif, arena);
    }
    if (status == HW_OK) {
        status = lay_on_card(&motif, card_columns, arena);
    }
    if (status == HW_OK) {
        *out = motif;
    }
    return status;
}

int hw_motif_longest(const hw_motif *motif)
{
    int background = motif->longest_float[HW_BACKGROUND];
    int contrast = motif->longest_float[HW_CONTRAST];
    return background > contrast ? background : contrast;
}
