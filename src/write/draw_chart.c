/* The chart in squares as wide to their height as the stitches, with numbers and floats.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "core/num.h"
#include "write/drawparts.h"

/* The chart as it is laid on the page. */
typedef struct {
    hw_drawing *drawing;
    hw_arena *arena;
    const hw_motif *motif;
    int columns;
    double left_mm, top_mm; /* of the squares */
    double sts_mm, row_mm;
} chart;

/* How wide a square may be. */
static const double widths_mm[] = { 8, 7, 6, 5, 4.5, 4, 3.5, 3, 2.5, 2, 1.5, 1, 0.8, 0.6, 0.4 };
static const double numbers_mm = 9; /* beside the squares, for the row numbers */
static const double floats_mm = 32; /* right of them, for both columns of floats */
static const double background_mm = 16, contrast_mm = 29; /* where those two end */
static const double heads_mm = 9;   /* above the squares, for the heads of the floats */
static const double foot_mm = 19;   /* below them: column numbers, bracket, words */
static const double apart_mm = 3.2; /* numbers stand no closer than this */
static const double number_gap_mm = 1.5;
static const double lower_mm = 0.95; /* from a small number's middle down to its foot */
static const double heavy_mm = 0.45;

static hw_point place(const chart *c, double column, double row)
{
    return (hw_point){ c->left_mm + column * c->sts_mm, c->top_mm + row * c->row_mm };
}

static void squares(const chart *c)
{
    static const hw_look looks[] = {
        [HW_BACKGROUND] = HW_LOOK_BACKGROUND_SQUARE, [HW_CONTRAST] = HW_LOOK_CONTRAST_SQUARE
    };
    for (int row = 0; row < c->motif->chart.rows; row++) {
        for (int column = 0; column < c->columns; column++) {
            hw_drawing_rect(c->drawing, looks[hw_motif_at(c->motif, row, column)],
                place(c, column, row), place(c, column + 1, row + 1));
        }
    }
}

/* The frame, and a line between two repeats. */
static void frame(const chart *c)
{
    int rows = c->motif->chart.rows;
    hw_drawing_pen(c->drawing, heavy_mm);
    for (int column = 0; column <= c->columns; column += c->motif->repeat) {
        hw_drawing_line(c->drawing, HW_LOOK_OUTLINE, place(c, column, 0), place(c, column, rows));
    }
    hw_drawing_line(c->drawing, HW_LOOK_OUTLINE, place(c, 0, 0), place(c, c->columns, 0));
    hw_drawing_line(c->drawing, HW_LOOK_OUTLINE, place(c, 0, rows), place(c, c->columns, rows));
    hw_drawing_pen(c->drawing, 0);
}

/* Every how many squares a number has room that takes so much; 1 stands beside the first. */
static int every(double square_mm, double number_mm)
{
    static const int steps[] = { 5, 10, 20, 50 };
    if (square_mm >= number_mm) {
        return 1;
    }
    size_t i = 0;
    while (i + 1 < sizeof steps / sizeof steps[0] && (steps[i] - 1) * square_mm < number_mm) {
        i++;
    }
    return steps[i];
}

static bool numbered(int number, int step)
{
    return number == 1 || number % step == 0;
}

static void number(const chart *c, hw_point at, hw_align align, int count)
{
    hw_drawing_words(c->drawing, HW_LOOK_SMALL, at, align, hw_arena_format(c->arena, "%d", count));
}

/* Row 1 is knitted first and lies at the bottom. */
static void row_numbers(const chart *c)
{
    int rows = c->motif->chart.rows;
    int step = every(c->row_mm, apart_mm);
    for (int row = 0; row < rows; row++) {
        if (!numbered(rows - row, step)) {
            continue;
        }
        hw_point left = place(c, 0, row + 0.5);
        hw_point right = place(c, c->columns, row + 0.5);
        left.x_mm -= number_gap_mm;
        right.x_mm += number_gap_mm;
        left.y_mm += lower_mm;
        right.y_mm += lower_mm;
        number(c, left, HW_ALIGN_END, rows - row);
        number(c, right, HW_ALIGN_START, rows - row);
    }
}

static void column_numbers(const chart *c)
{
    const char *last = hw_arena_format(c->arena, "%d", c->columns);
    if (last == NULL) {
        hw_drawing_refuse(c->drawing);
        return;
    }
    double wide_mm = hw_look_width_mm(HW_LOOK_SMALL, last);
    int step = every(c->sts_mm, wide_mm > apart_mm ? wide_mm : apart_mm);
    for (int column = 0; column < c->columns; column++) {
        if (numbered(column + 1, step)) {
            hw_point at = place(c, column + 0.5, c->motif->chart.rows);
            at.y_mm += apart_mm;
            number(c, at, HW_ALIGN_MIDDLE, column + 1);
        }
    }
}

/* A bracket below the first repeat, and what it holds. */
static void bracket(const chart *c)
{
    const hw_motif *motif = c->motif;
    hw_point from = place(c, 0, motif->chart.rows);
    hw_point to = place(c, motif->repeat, motif->chart.rows);
    from.y_mm += 2 * apart_mm;
    to.y_mm = from.y_mm;
    const hw_point points[] = { { from.x_mm + heavy_mm, from.y_mm - number_gap_mm },
        { from.x_mm + heavy_mm, from.y_mm }, { to.x_mm - heavy_mm, to.y_mm },
        { to.x_mm - heavy_mm, to.y_mm - number_gap_mm } };
    hw_drawing_polyline(c->drawing, HW_LOOK_THIN, points, (int)(sizeof points / sizeof points[0]));
    hw_drawing_words(c->drawing, HW_LOOK_SMALL, (hw_point){ from.x_mm, from.y_mm + apart_mm },
        HW_ALIGN_START,
        hw_arena_format(c->arena, "one repeat: %d columns, figure %d and gap %d", motif->repeat,
            motif->chart.width, motif->gap));
}

static void float_heads(const chart *c)
{
    double x_mm = place(c, c->columns, 0).x_mm + numbers_mm;
    double y_mm = c->top_mm - number_gap_mm;
    hw_drawing_words(c->drawing, HW_LOOK_SMALL, (hw_point){ x_mm + contrast_mm, y_mm - apart_mm },
        HW_ALIGN_END, "longest float, stitches");
    hw_drawing_words(c->drawing, HW_LOOK_SMALL, (hw_point){ x_mm + background_mm, y_mm },
        HW_ALIGN_END, "background");
    hw_drawing_words(c->drawing, HW_LOOK_SMALL, (hw_point){ x_mm + contrast_mm, y_mm },
        HW_ALIGN_END, "contrast");
}

/* Of each row that has a number; where rows are too low for that, the words below tell the
 * longest of all. */
static void row_floats(const chart *c)
{
    int rows = c->motif->chart.rows;
    if (every(c->row_mm, apart_mm) > 1) {
        return;
    }
    float_heads(c);
    double x_mm = place(c, c->columns, 0).x_mm + numbers_mm;
    for (int row = 0; row < rows; row++) {
        const int *longest = c->motif->rows[row].longest_float;
        double y_mm = place(c, 0, row + 0.5).y_mm + lower_mm;
        number(c, (hw_point){ x_mm + background_mm, y_mm }, HW_ALIGN_END, longest[HW_BACKGROUND]);
        number(c, (hw_point){ x_mm + contrast_mm, y_mm }, HW_ALIGN_END, longest[HW_CONTRAST]);
    }
}

/* The widest square with which the chart fits. */
static double square_mm(const hw_draw_motif_task *task)
{
    double shape = hw_drawparts_row_mm(task->band) / hw_drawparts_sts_mm(task->band);
    double width_mm = task->room.width_mm - 2 * HW_DRAWPARTS_EDGE_MM - 2 * numbers_mm - floats_mm;
    double height_mm =
        task->room.height_mm - HW_DRAWPARTS_HEAD_MM - heads_mm - foot_mm - HW_DRAWPARTS_EDGE_MM;
    double across_mm = width_mm / (task->repeats * task->motif->repeat);
    double up_mm = height_mm / (task->motif->chart.rows * shape);
    return hw_drawparts_scale(
        widths_mm, sizeof widths_mm / sizeof widths_mm[0], across_mm < up_mm ? across_mm : up_mm);
}

static void draw(const chart *c)
{
    squares(c);
    frame(c);
    row_numbers(c);
    column_numbers(c);
    bracket(c);
    row_floats(c);
}

hw_status hw_draw_chart(
    const hw_draw_motif_task *task, hw_arena *arena, hw_drawing *out, hw_err *err)
{
    assert(task->repeats > 0 && task->repeats * task->motif->repeat <= HW_MAX_STS);
    double sts_mm = square_mm(task);
    if (!(sts_mm > 0)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a chart of %d columns and %d rows does not fit the paper: ask for fewer repeats",
            task->repeats * task->motif->repeat, task->motif->chart.rows);
    }
    hw_drawing drawing;
    hw_drawing_begin(&drawing, arena, task->title);
    hw_drawparts_head(
        &drawing, task->room.width_mm, "right side; row 1 at the bottom is knitted first");
    chart c = { .drawing = &drawing,
        .arena = arena,
        .motif = task->motif,
        .columns = task->repeats * task->motif->repeat,
        .left_mm = HW_DRAWPARTS_EDGE_MM + numbers_mm,
        .top_mm = HW_DRAWPARTS_HEAD_MM + heads_mm,
        .sts_mm = sts_mm,
        .row_mm = sts_mm * hw_drawparts_row_mm(task->band) / hw_drawparts_sts_mm(task->band) };
    draw(&c);
    double end_mm = place(&c, 0, task->motif->chart.rows).y_mm + foot_mm;
    hw_drawing_words(&drawing, HW_LOOK_WORDS, (hw_point){ c.left_mm, end_mm - apart_mm },
        HW_ALIGN_START, hw_drawparts_floats(task->motif, arena));
    hw_drawing_size(&drawing, task->room.width_mm, end_mm + HW_DRAWPARTS_EDGE_MM);
    hw_status status = hw_drawing_status(&drawing);
    if (status == HW_OK) {
        *out = drawing;
    }
    return status;
}
