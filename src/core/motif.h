/* The motif: a two-colour figure, the gap behind it, and what the pair does on needles and card.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_MOTIF_H
#define HW_CORE_MOTIF_H

#include "core/err.h"
#include "core/mem.h"

typedef enum { HW_BACKGROUND, HW_CONTRAST, HW_COLOUR_COUNT } hw_colour;

/* A drawn figure. Cells are row by row from the top down, the right side facing. */
typedef struct {
    const char *name;           /* as the knitter calls it; never NULL */
    int width, rows;            /* [1, HW_MAX_CHART_COLUMNS], [1, HW_MAX_CHART_ROWS] */
    const unsigned char *cells; /* width * rows of hw_colour */
} hw_chart;

/* One row of the repeat, floats taken across the join from repeat to repeat. */
typedef struct {
    int contrast_sts;                   /* of one repeat */
    int longest_float[HW_COLOUR_COUNT]; /* of each colour's strand, in stitches; 0: no float, or a
                                           row in which that colour is not knitted at all */
} hw_motif_row;

typedef struct {
    hw_chart chart;
    int gap;            /* background columns between two figures */
    int repeat;         /* chart.width + gap */
    hw_motif_row *rows; /* chart.rows of them, top row first */
    int longest_float[HW_COLOUR_COUNT];
    int contrast_sts;      /* in one repeat, all rows */
    double contrast_share; /* of all stitches of the band, 0 to 1 */
    int rows_without_contrast, rows_without_background;
    bool symmetrical; /* the figure mirrors about its own centre line */
    int *axes;        /* mirror axes of the repeat, in half columns from the left edge of column 1:
                         odd on a column's middle, even between two columns; [0, 2 repeat) */
    int axis_count;
    bool fits_card;      /* the repeat divides card_columns; true where there is no card */
    int card_columns;    /* 0: no card */
    int repeats_on_card; /* whole ones side by side; 0 without a card */
    int *card_gaps;      /* gaps, rising, with which the repeat divides the card */
    int card_gap_count;
} hw_motif;

/*
 * The colour at a column of the repeat, gap included.
 *
 * Given:     motif     analysed, or with chart, gap and repeat set
 *            row       [0, chart.rows), 0 the top row
 *            column    any; taken modulo the repeat
 */
hw_colour hw_motif_at(const hw_motif *motif, int row, int column);

/* The longer of the longest floats of both yarns. */
int hw_motif_longest(const hw_motif *motif);

/*
 * Everything that a figure and a gap decide.
 *
 * Given:     chart     checked by its reader
 *            gap       [0, HW_MAX_CHART_COLUMNS - chart->width]
 *            card_columns  columns of the punch card; 0 for none
 *            arena     owner of the rows and lists
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_NOMEM
 */
hw_status hw_motif_analyse(
    const hw_chart *chart, int gap, int card_columns, hw_arena *arena, hw_motif *out) HW_MUST_USE;

#endif
