/* A drawing: a flat list of shapes in mm, y down, from which every kind of picture is written.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_DRAWING_H
#define HW_WRITE_DRAWING_H

#include "core/mem.h"

/* How a shape looks; line, fill, letters and colours are one table in drawing.c. */
typedef enum {
    HW_LOOK_OUTLINE,           /* the edge of a thing, not filled */
    HW_LOOK_PIECE,             /* the inside of a knitted piece, filled very lightly, no line */
    HW_LOOK_SHADE,             /* a part that is set off, filled lightly, no line */
    HW_LOOK_THIN,              /* measuring lines and ticks */
    HW_LOOK_DASHED,            /* folds, and what only helps to see */
    HW_LOOK_CUT,               /* where to cut */
    HW_LOOK_SOLID,             /* filled with the ink of the words, no line */
    HW_LOOK_BACKGROUND_SQUARE, /* of a chart */
    HW_LOOK_CONTRAST_SQUARE,
    HW_LOOK_FABRIC,            /* behind stitches: the shadow between them */
    HW_LOOK_BACKGROUND_STITCH, /* right side */
    HW_LOOK_CONTRAST_STITCH,
    HW_LOOK_BACKGROUND_BUMP, /* purl side */
    HW_LOOK_CONTRAST_BUMP,
    HW_LOOK_BACKGROUND_FLOAT,
    HW_LOOK_CONTRAST_FLOAT,
    HW_LOOK_TITLE, /* words, from here on */
    HW_LOOK_NAME,
    HW_LOOK_WORDS,
    HW_LOOK_SMALL,
    HW_LOOK_COUNT
} hw_look;

/* What a look comes to. */
typedef struct {
    const char *name; /* in small letters and hyphens */
    double line_mm;   /* 0: no line */
    bool dashed;      /* dashes of HW_DASH_LINES line widths, with gaps as long */
    bool filled;
    bool bold;           /* of words */
    double font_mm;      /* the letters' em; 0: a look of shapes */
    unsigned line, fill; /* 0xRRGGBB; words are filled */
} hw_look_style;

enum { HW_DASH_LINES = 5 };

/* Where a text lies about its place. */
typedef enum { HW_ALIGN_START, HW_ALIGN_MIDDLE, HW_ALIGN_END, HW_ALIGN_COUNT } hw_align;

typedef struct {
    double x_mm, y_mm;
} hw_point;

typedef enum {
    HW_DRAWN_RECT,     /* from `at`, its upper left corner, to `to`, its lower right one */
    HW_DRAWN_LINE,     /* from `at` to `to` */
    HW_DRAWN_POLYLINE, /* through `points`, round at ends and corners */
    HW_DRAWN_POLYGON,  /* the same, closed */
    HW_DRAWN_DISC,     /* about `at` */
    HW_DRAWN_WORDS,    /* `at` lies on the line that the letters stand on */
    HW_DRAWN_COUNT
} hw_drawn_kind;

typedef struct {
    hw_drawn_kind kind;
    hw_look look;
    double line_mm; /* above 0: in place of the look's */
    hw_point at, to;
    double radius_mm;
    const hw_point *points;
    int count;
    const char *text; /* UTF-8, one line */
    hw_align align;
} hw_drawn;

/* Private to drawing.c but for reading once hw_drawing_status says HW_OK. Later shapes lie above
 * earlier ones. */
typedef struct {
    hw_arena *arena;
    const char *title; /* never NULL */
    double width_mm, height_mm;
    hw_drawn *list;
    int count, room;
    double pen_mm;
    hw_status status;
} hw_drawing;

#define HW_DRAWING_MAX_MM 100000.0 /* farther out nothing is drawn */

/* The table's row for a look below HW_LOOK_COUNT. */
const hw_look_style *hw_look_of(hw_look look);

/* About how wide a text comes out, mm: 0.6 em for each character, which is on the safe side
 * (own choice [V1]); there are no fonts in here. */
double hw_look_width_mm(hw_look look, const char *text);

/*
 * Begin an empty drawing.
 *
 * Given:     drawing   the caller's
 *            arena     owner of the shapes
 *            title     what the picture shows, one line; NULL stands for refused memory
 */
void hw_drawing_begin(hw_drawing *drawing, hw_arena *arena, const char *title);

/* Set the size of the page; may be done once all is drawn. */
void hw_drawing_size(hw_drawing *drawing, double width_mm, double height_mm);

/* Lines drawn from here on are this thick; 0: as their looks say. */
void hw_drawing_pen(hw_drawing *drawing, double line_mm);

/* Add a shape. All coordinates are finite and within HW_DRAWING_MAX_MM, else the drawing ends as
 * HW_ERR_RANGE. Points are copied; a text lives as long as the drawing; NULL stands for
 * refused memory. After a failure all that follows does nothing. */
void hw_drawing_rect(hw_drawing *drawing, hw_look look, hw_point at, hw_point to);
void hw_drawing_line(hw_drawing *drawing, hw_look look, hw_point at, hw_point to);
void hw_drawing_polyline(hw_drawing *drawing, hw_look look, const hw_point *points, int count);
void hw_drawing_polygon(hw_drawing *drawing, hw_look look, const hw_point *points, int count);
void hw_drawing_disc(hw_drawing *drawing, hw_look look, hw_point at, double radius_mm);
void hw_drawing_words(
    hw_drawing *drawing, hw_look look, hw_point at, hw_align align, const char *text);

/* Memory was refused to what the shapes are made from: the drawing ends as HW_ERR_NOMEM. */
void hw_drawing_refuse(hw_drawing *drawing);

/* What became of it: HW_OK; HW_ERR_NOMEM; HW_ERR_RANGE; HW_ERR_LIMIT (too many shapes). */
hw_status hw_drawing_status(const hw_drawing *drawing) HW_MUST_USE;

#endif
