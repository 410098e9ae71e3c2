/* The pictures: pieces to scale, both faces of the band's fabric, the chart.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_DRAW_H
#define HW_WRITE_DRAW_H

#include "core/card.h"
#include "core/err.h"
#include "core/gauge.h"
#include "core/motif.h"
#include "core/note.h"
#include "core/outline.h"
#include "core/units.h"
#include "write/drawing.h"

/* The paper that a picture may fill, margins taken off. */
typedef struct {
    double width_mm, height_mm; /* above 0 */
} hw_draw_room;

/* A band higher up on a piece: its heights from the fold. */
typedef struct {
    const char *name;
    double from_cm, to_cm;
} hw_draw_band;

/* A trim along one of a piece's edges, outside the piece. */
typedef struct {
    const char *name;
    hw_edge edge;
    const char *stretch;       /* NULL: the whole edge */
    double depth_cm;           /* of its face */
    double before_cm, past_cm; /* it runs on over the ends of other trims: below the first point of
                                  the edge, and past its last */
    int sts;                   /* picked up there; 0: not said */
} hw_draw_trim;

enum { HW_DRAW_MAX_TRIMS = HW_MAX_TRIMS * HW_MAX_PARTS }; /* on one piece */

/* A piece in one size. */
typedef struct {
    const char *name;
    const hw_outline *outline; /* with left and right edges */
    double face_cm;            /* depth of the hem's face; 0: no hem */
    int hem_sts;               /* visible stitches at the hem; 0: not said */
    int top_sts;               /* stitches left at the top; 0: not said */
    const hw_draw_band *bands;
    int band_count;
    const hw_draw_trim *trims;
    int trim_count; /* up to HW_DRAW_MAX_TRIMS */
} hw_draw_piece;

typedef struct {
    const char *title; /* garment and size; never NULL */
    const hw_draw_piece *pieces;
    int count; /* [1, HW_MAX_PIECES] */
    hw_draw_room room;
    double scale; /* one cm is drawn as 1/scale cm; 0: the largest round scale that fits */
    hw_show show;
    const hw_note *notes; /* of which those on safety stand below the pieces */
    int note_count;
} hw_draw_pieces_task;

/*
 * The pieces of a garment side by side, in rows where one row is too narrow.
 *
 * Given:     task      scale 0 or above
 *            arena     owner of the shapes
 * Returned:  out       as wide as the room and as high as what is drawn; untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (not even the smallest scale fits, or not the one asked for);
 *            HW_ERR_NOMEM; HW_ERR_INTERNAL (GSL)
 * Note:      round scales are 1:1, 1:2, 1:2.5, 1:4, 1:5, 1:8, 1:10, 1:20 (own choice [V1]). Right
 *            side facing, hem down. Heights count from the fold. The hem's face is shaded.
 */
hw_status hw_draw_pieces(
    const hw_draw_pieces_task *task, hw_arena *arena, hw_drawing *out, hw_err *err) HW_MUST_USE;

typedef struct {
    const char *title; /* never NULL */
    const hw_motif *motif;
    const hw_gauge *band; /* stitches and rows above 0 */
    int repeats;          /* side by side; repeats * motif->repeat in [1, HW_MAX_STS] */
    hw_draw_room room;
} hw_draw_motif_task;

/*
 * The band as it will look: the right side with its stitches, and below it the purl side with
 * bumps and floats, as it faces the knitter on a machine.
 *
 * Given:     task
 *            arena     owner of the shapes
 * Returned:  out       as wide as the room and as high as what is drawn; untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (does not fit the room at any scale); HW_ERR_NOMEM
 * Note:      stitches are as wide to their height as the gauge makes them. The purl side is the
 *            right side turned over: left and right change places. A strand floats over every run
 *            of the other colour in a row of two colours, and none in a row of one; at the edges of
 *            the picture it runs on to its neighbour repeat.
 */
hw_status hw_draw_fabric(
    const hw_draw_motif_task *task, hw_arena *arena, hw_drawing *out, hw_err *err) HW_MUST_USE;

/*
 * The chart in squares of true proportion, right side, with row numbers from the bottom up, column
 * numbers and the longest floats of each row.
 *
 * Given, Returned, Result: as hw_draw_fabric
 */
hw_status hw_draw_chart(
    const hw_draw_motif_task *task, hw_arena *arena, hw_drawing *out, hw_err *err) HW_MUST_USE;

typedef struct {
    const char *title;   /* never NULL */
    const hw_card *card; /* possible */
    const hw_blank *blank;
    int first, last; /* rows of card->rows that are drawn, both included */
    bool behind;     /* seen from the back */
    hw_draw_room room;
} hw_draw_card_task;

/* Rows of a card that one picture has room for; 0 where the blank was not measured. */
int hw_draw_card_rows(const hw_blank *blank, const hw_draw_room *room);

/*
 * Rows of the punch card in true size: holes, joining rows, the middle where the card is turned,
 * where to cut, and a line of 5 cm by which the print is checked.
 *
 * Given:     task      rows of one blank; a card that is longer than the paper goes on in the next
 *            arena     owner of the shapes
 * Returned:  out       as wide as the room and as high as what is drawn; untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (hole pitch, row pitch or card width is not known);
 *            HW_ERR_RANGE (does not fit the room); HW_ERR_NOMEM
 * Note:      columns lie about the middle of the card, and a hole of unknown width is half as wide
 *            as the smaller pitch (own choice [B7]).
 */
hw_status hw_draw_card(
    const hw_draw_card_task *task, hw_arena *arena, hw_drawing *out, hw_err *err) HW_MUST_USE;

#endif
