/* Pieces of a garment to scale, side by side.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "core/num.h"
#include "write/drawparts.h"
#include "write/pieceview.h"

/* The pieces, and the paper that is left for them. */
typedef struct {
    const hw_pieceview *views;
    int count;
    double width_mm, height_mm;
} sheet;

/* How many pieces stand in a row, and how high it is above their folds. */
typedef struct {
    int taken;
    double high_mm;
} row;

static const double scales[] = { 1, 2, 2.5, 4, 5, 8, 10, 20 };
static const double between_mm = 5; /* two pieces */
static const double check_mm = 50;  /* the line that shows whether the paper is true */
static const double check_room_mm = 9;
static const double tick_mm = 1;
static const double gap_mm = 2;
static const double lower_mm = 0.95; /* from a small word's middle down to its foot */
static const double mm_in_cm = 10;

/* Beside a piece; the words below it are centred, so half of them goes each way. */
static double beside_mm(const hw_pieceview *view, double words_mm, double mm_per_cm)
{
    double half_mm = (view->foot_mm - (view->to_cm - view->from_cm) * mm_per_cm) / 2;
    return words_mm > half_mm ? words_mm : half_mm;
}

static double width_mm(const hw_pieceview *view, double mm_per_cm)
{
    return beside_mm(view, view->left_mm, mm_per_cm) + (view->to_cm - view->from_cm) * mm_per_cm +
           beside_mm(view, view->right_mm, mm_per_cm);
}

/* As many pieces as fit, from `first` on. */
static row row_from(const sheet *s, int first, double mm_per_cm)
{
    row r = { 0 };
    double used_mm = 0;
    for (int i = first; i < s->count; i++) {
        used_mm += width_mm(&s->views[i], mm_per_cm);
        if (used_mm > s->width_mm) {
            break;
        }
        used_mm += between_mm;
        double high_mm = HW_PIECEVIEW_ABOVE_MM + s->views[i].top_cm * mm_per_cm;
        r.high_mm = high_mm > r.high_mm ? high_mm : r.high_mm;
        r.taken++;
    }
    return r;
}

/* Whether all rows fit at a scale. */
static bool fits(const sheet *s, double scale)
{
    double mm_per_cm = mm_in_cm / scale;
    double used_mm = 0;
    for (int first = 0; first < s->count;) {
        row r = row_from(s, first, mm_per_cm);
        if (r.taken == 0) {
            return false;
        }
        used_mm += r.high_mm + HW_PIECEVIEW_BELOW_MM;
        first += r.taken;
    }
    return used_mm <= s->height_mm;
}

/* The largest round scale that fits; 0 where none does. */
static double round_scale(const sheet *s)
{
    for (size_t i = 0; i < sizeof scales / sizeof scales[0]; i++) {
        if (fits(s, scales[i])) {
            return scales[i];
        }
    }
    return 0;
}

static const char *scale_words(double scale, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_buf_text(&buf, "scale 1 : ");
    hw_num_show(&buf, scale, 2);
    hw_buf_text(&buf, "; right side facing, hem down; heights from the fold");
    const char *words = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return words;
}

/* All rows; where the last one ends. */
static double draw_rows(const sheet *s, const hw_piecepen *pen)
{
    double down_mm = HW_DRAWPARTS_HEAD_MM;
    for (int first = 0; first < s->count;) {
        row r = row_from(s, first, pen->mm_per_cm);
        double x_mm = HW_DRAWPARTS_EDGE_MM;
        for (int i = first; i < first + r.taken; i++) {
            const hw_pieceview *view = &s->views[i];
            hw_pieceplace at = { .pen = pen, .view = view, .fold_mm = down_mm + r.high_mm };
            at.middle_mm = x_mm + beside_mm(view, view->left_mm, pen->mm_per_cm) -
                           view->from_cm * pen->mm_per_cm;
            hw_pieceview_draw(&at);
            x_mm += width_mm(view, pen->mm_per_cm) + between_mm;
        }
        down_mm += r.high_mm + HW_PIECEVIEW_BELOW_MM;
        first += r.taken;
    }
    return down_mm;
}

/* A line by which a reader sees whether the page was printed true. */
static void check_line(hw_drawing *drawing, double y_mm)
{
    hw_point from = { HW_DRAWPARTS_EDGE_MM, y_mm };
    hw_point to = { from.x_mm + check_mm, y_mm };
    hw_drawing_line(drawing, HW_LOOK_OUTLINE, from, to);
    hw_drawing_line(drawing, HW_LOOK_OUTLINE, (hw_point){ from.x_mm, y_mm - tick_mm },
        (hw_point){ from.x_mm, y_mm + tick_mm });
    hw_drawing_line(drawing, HW_LOOK_OUTLINE, (hw_point){ to.x_mm, y_mm - tick_mm },
        (hw_point){ to.x_mm, y_mm + tick_mm });
    hw_drawing_words(drawing, HW_LOOK_SMALL, (hw_point){ to.x_mm + gap_mm, y_mm + lower_mm },
        HW_ALIGN_START, "5 cm on paper; if it is not, print without fitting to the page");
}

static hw_status refuse(const hw_draw_pieces_task *task, double best, hw_err *err)
{
    if (!(best > 0)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "the pieces do not fit the paper, not even at 1 to 20: draw fewer of them on one "
            "page, or take larger paper");
    }
    return hw_err_set(err, HW_ERR_RANGE,
        "the pieces do not fit the paper at 1 to %g: the largest scale that fits is 1 to %g",
        task->scale, best);
}

static hw_status draw_all(
    const hw_draw_pieces_task *task, const sheet *s, hw_piecepen *pen, hw_drawing *out)
{
    hw_drawing drawing;
    hw_drawing_begin(&drawing, pen->arena, task->title);
    pen->drawing = &drawing;
    hw_drawparts_head(
        &drawing, task->room.width_mm, scale_words(mm_in_cm / pen->mm_per_cm, pen->arena));
    double end_mm = draw_rows(s, pen);
    check_line(&drawing, end_mm + check_room_mm / 2);
    hw_drawing_size(&drawing, task->room.width_mm, end_mm + check_room_mm + HW_DRAWPARTS_EDGE_MM);
    hw_status status = hw_drawing_status(&drawing);
    if (status == HW_OK) {
        *out = drawing;
    }
    return status;
}

hw_status hw_draw_pieces(
    const hw_draw_pieces_task *task, hw_arena *arena, hw_drawing *out, hw_err *err)
{
    assert(task->count > 0 && task->count <= HW_MAX_PIECES);
    hw_pieceview views[HW_MAX_PIECES];
    for (int i = 0; i < task->count; i++) {
        hw_status status = hw_pieceview_make(&task->pieces[i], task->show, arena, &views[i]);
        if (status != HW_OK) {
            return status;
        }
    }
    sheet s = { .views = views,
        .count = task->count,
        .width_mm = task->room.width_mm - 2 * HW_DRAWPARTS_EDGE_MM,
        .height_mm =
            task->room.height_mm - HW_DRAWPARTS_HEAD_MM - check_room_mm - HW_DRAWPARTS_EDGE_MM };
    double scale = task->scale;
    if (!(scale > 0)) {
        scale = round_scale(&s);
    }
    if (!(scale > 0) || !fits(&s, scale)) {
        return refuse(task, round_scale(&s), err);
    }
    hw_piecepen pen = { .arena = arena, .show = task->show, .mm_per_cm = mm_in_cm / scale };
    return draw_all(task, &s, &pen, out);
}
