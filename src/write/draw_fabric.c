/* Both faces of the band: stitches in true proportion, and behind them bumps and floats.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "core/num.h"
#include "write/drawparts.h"

/* One face as it is laid on the page. */
typedef struct {
    hw_drawing *drawing;
    const hw_motif *motif;
    int columns;
    bool purl; /* seen from behind: left and right change places */
    double left_mm, top_mm;
    double sts_mm, row_mm; /* as drawn */
} face;

/* A point of a stitch, in parts of its width and height from its upper left corner. */
typedef struct {
    double across, down;
} part;

static const double scales[] = { 5, 4, 3, 2.5, 2, 1.5, 1.25, 1, 0.8, 0.5, 0.4, 0.25, 0.2, 0.125,
    0.1, 0.05 };
static const double name_mm = 9;   /* the line above a face, and the room about it */
static const double legend_mm = 7; /* the line below both */
static const double letter_mm = 2.4;

/* How a stitch is drawn, in parts of its width and height. */
static const part stitch_path[] = { { 0.2, 0.12 }, { 0.5, 0.8 }, { 0.8, 0.12 } };
static const part bump_path[] = { { 0.16, 0.48 }, { 0.24, 0.38 }, { 0.36, 0.31 }, { 0.5, 0.29 },
    { 0.64, 0.31 }, { 0.76, 0.38 }, { 0.84, 0.48 } };
static const double leg_of_sts = 0.34, leg_of_row = 0.46; /* a leg is the thinner of the two */
static const double bump_of_row = 0.42;
static const double float_of_row = 0.17;
static const double float_reach = 0.2; /* how far a float goes into the stitches at its ends */
static const double float_from = 0.58, float_sag = 0.82; /* of a row's height */
static const double edge_part = 0.1; /* of the shadow above and below, and of a float cut off */

static hw_point place(const face *f, double column, double row)
{
    return (hw_point){ f->left_mm + column * f->sts_mm, f->top_mm + row * f->row_mm };
}

/* The colour at a column of this face, counted from its own left edge. */
static hw_colour colour_at(const face *f, int row, int column)
{
    return hw_motif_at(f->motif, row, f->purl ? f->columns - 1 - column : column);
}

static void stitch(const face *f, int row, int column)
{
    static const hw_look looks[2][HW_COLOUR_COUNT] = {
        { [HW_BACKGROUND] = HW_LOOK_BACKGROUND_STITCH, [HW_CONTRAST] = HW_LOOK_CONTRAST_STITCH },
        { [HW_BACKGROUND] = HW_LOOK_BACKGROUND_BUMP, [HW_CONTRAST] = HW_LOOK_CONTRAST_BUMP },
    };
    enum { MOST = sizeof bump_path / sizeof bump_path[0] };
    const part *path = f->purl ? bump_path : stitch_path;
    int count = f->purl ? MOST : (int)(sizeof stitch_path / sizeof stitch_path[0]);
    hw_point points[MOST];
    for (int i = 0; i < count; i++) {
        points[i] = place(f, column + path[i].across, row + path[i].down);
    }
    hw_drawing_polyline(f->drawing, looks[f->purl][colour_at(f, row, column)], points, count);
}

static void stitches(const face *f)
{
    double leg_mm = leg_of_sts * f->sts_mm;
    leg_mm = leg_mm < leg_of_row * f->row_mm ? leg_mm : leg_of_row * f->row_mm;
    hw_drawing_rect(f->drawing, HW_LOOK_FABRIC, place(f, 0, -edge_part),
        place(f, f->columns, f->motif->chart.rows + edge_part));
    hw_drawing_pen(f->drawing, f->purl ? bump_of_row * f->row_mm : leg_mm);
    for (int row = 0; row < f->motif->chart.rows; row++) {
        for (int column = 0; column < f->columns; column++) {
            stitch(f, row, column);
        }
    }
    hw_drawing_pen(f->drawing, 0);
}

/* A strand past the stitches from `first` to `last`; at the picture's edge it is cut off. */
static void strand(const face *f, int row, hw_colour colour, int first, int last)
{
    static const hw_look looks[] = {
        [HW_BACKGROUND] = HW_LOOK_BACKGROUND_FLOAT, [HW_CONTRAST] = HW_LOOK_CONTRAST_FLOAT
    };
    double from = first > 0 ? first - float_reach : edge_part;
    double to = last + 1 < f->columns ? last + 1 + float_reach : f->columns - edge_part;
    double bend = 2 * float_reach;
    const hw_point points[] = {
        place(f, from, row + (first > 0 ? float_from : float_sag)),
        place(f, from + bend, row + float_sag),
        place(f, to - bend, row + float_sag),
        place(f, to, row + (last + 1 < f->columns ? float_from : float_sag)),
    };
    hw_drawing_polyline(f->drawing, looks[colour], points, (int)(sizeof points / sizeof points[0]));
}

static void row_floats(const face *f, int row, hw_colour colour)
{
    int first = 0; /* of the run of other stitches that is being walked */
    for (int column = 0; column <= f->columns; column++) {
        if (column < f->columns && colour_at(f, row, column) != colour) {
            continue;
        }
        if (column > first) {
            strand(f, row, colour, first, column - 1);
        }
        first = column + 1;
    }
}

static void floats(const face *f)
{
    hw_drawing_pen(f->drawing, float_of_row * f->row_mm);
    for (int row = 0; row < f->motif->chart.rows; row++) {
        int contrast_sts = f->motif->rows[row].contrast_sts;
        for (int k = 0; k < HW_COLOUR_COUNT && contrast_sts > 0; k++) {
            if (contrast_sts < f->motif->repeat) {
                row_floats(f, row, (hw_colour)k);
            }
        }
    }
    hw_drawing_pen(f->drawing, 0);
}

/* The name above a face, and the face; the height that both take. */
static double draw_face(face *f, const char *name)
{
    hw_drawing_words(f->drawing, HW_LOOK_NAME,
        (hw_point){ f->left_mm, f->top_mm + name_mm - letter_mm }, HW_ALIGN_START, name);
    f->top_mm += name_mm;
    stitches(f);
    if (f->purl) {
        floats(f);
    }
    return name_mm + f->motif->chart.rows * f->row_mm;
}

static const char *head_words(const hw_draw_motif_task *task, double scale, hw_arena *arena)
{
    const char *gauge = hw_drawparts_gauge(task->band, arena);
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    if (scale > 1) {
        hw_num_show(&buf, scale, 2);
        hw_buf_text(&buf, " times true size; ");
    } else if (scale < 1) {
        hw_buf_text(&buf, "1 cm stands for ");
        hw_num_show(&buf, 1 / scale, 2);
        hw_buf_text(&buf, " cm; ");
    } else {
        hw_buf_text(&buf, "true size; ");
    }
    hw_buf_text(&buf, gauge != NULL ? gauge : "");
    const char *words = gauge != NULL ? hw_buf_keep(&buf, arena) : NULL;
    hw_buf_release(&buf);
    return words;
}

/* The largest scale at which both faces fit. */
static double scale_of(const hw_draw_motif_task *task)
{
    int columns = task->repeats * task->motif->repeat;
    double fixed_mm = HW_DRAWPARTS_HEAD_MM + 2 * name_mm + legend_mm + HW_DRAWPARTS_EDGE_MM;
    double across = (task->room.width_mm - 2 * HW_DRAWPARTS_EDGE_MM) /
                    (columns * hw_drawparts_sts_mm(task->band));
    double up = (task->room.height_mm - fixed_mm) /
                (2 * task->motif->chart.rows * hw_drawparts_row_mm(task->band));
    return hw_drawparts_scale(scales, sizeof scales / sizeof scales[0], across < up ? across : up);
}

hw_status hw_draw_fabric(
    const hw_draw_motif_task *task, hw_arena *arena, hw_drawing *out, hw_err *err)
{
    assert(task->repeats > 0 && task->repeats * task->motif->repeat <= HW_MAX_STS);
    double scale = scale_of(task);
    if (!(scale > 0)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "%d repeats of the band do not fit the paper at any scale: ask for fewer repeats",
            task->repeats);
    }
    hw_drawing drawing;
    hw_drawing_begin(&drawing, arena, task->title);
    hw_drawparts_head(&drawing, task->room.width_mm, head_words(task, scale, arena));
    face right = { .drawing = &drawing,
        .motif = task->motif,
        .columns = task->repeats * task->motif->repeat,
        .left_mm = HW_DRAWPARTS_EDGE_MM,
        .top_mm = HW_DRAWPARTS_HEAD_MM,
        .sts_mm = scale * hw_drawparts_sts_mm(task->band),
        .row_mm = scale * hw_drawparts_row_mm(task->band) };
    face purl = right;
    purl.purl = true;
    purl.top_mm += draw_face(&right, "right side");
    double end_mm = purl.top_mm;
    end_mm += draw_face(&purl, "purl side (faces you on the machine)") + legend_mm;
    hw_drawing_words(&drawing, HW_LOOK_WORDS, (hw_point){ right.left_mm, end_mm - letter_mm / 2 },
        HW_ALIGN_START, hw_drawparts_floats(task->motif, arena));
    hw_drawing_size(&drawing, task->room.width_mm, end_mm + HW_DRAWPARTS_EDGE_MM);
    hw_status status = hw_drawing_status(&drawing);
    if (status == HW_OK) {
        *out = drawing;
    }
    return status;
}
