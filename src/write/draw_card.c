/* The punch card in its true size, row by row, as far as the paper goes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "core/num.h"
#include "write/drawparts.h"

/* The rows as they are laid on the page. */
typedef struct {
    const hw_draw_card_task *task;
    hw_drawing *drawing;
    hw_arena *arena;
    double left_mm, top_mm; /* of the card */
    double pitch_mm, row_mm, width_mm, hole_mm;
    int rows;
} strip;

static const double mm_per_cm = 10;
static const double numbers_mm = 12; /* beside the card, for the row numbers */
static const double foot_mm = 19;    /* below it: column numbers, the measuring line */
static const double number_gap_mm = 1.5;
static const double lower_mm = 0.95; /* from a small number's middle down to its foot */
static const double apart_mm = 4;    /* column numbers stand no closer than this */
static const double test_mm = 50;    /* the line by which the print is checked */
static const double tick_mm = 1.5;

static bool measured(const hw_blank *blank)
{
    return blank->hole_pitch_cm > 0 && blank->row_pitch_cm > 0 && blank->width_cm > 0;
}

/* Half the smaller pitch where no width is known: own choice [B7]. */
static double hole_cm(const hw_blank *blank)
{
    double pitch_cm =
        blank->hole_pitch_cm < blank->row_pitch_cm ? blank->hole_pitch_cm : blank->row_pitch_cm;
    return blank->hole_cm > 0 ? blank->hole_cm : pitch_cm / 2;
}

int hw_draw_card_rows(const hw_blank *blank, const hw_draw_room *room)
{
    double free_mm = room->height_mm - HW_DRAWPARTS_HEAD_MM - foot_mm - HW_DRAWPARTS_EDGE_MM;
    return measured(blank) && free_mm > 0 ? hw_num_down(free_mm / (blank->row_pitch_cm * mm_per_cm))
                                          : 0;
}

/* The middle of a place; columns lie about the middle of the card. */
static hw_point place(const strip *s, int row, double column)
{
    double middle = (s->task->card->columns - 1) / 2.0;
    return (hw_point){ s->left_mm + s->width_mm / 2 + (column - middle) * s->pitch_mm,
        s->top_mm + (s->task->last - row + 0.5) * s->row_mm };
}

static double right_mm(const strip *s)
{
    return s->left_mm + s->width_mm;
}

static double bottom_mm(const strip *s)
{
    return s->top_mm + s->rows * s->row_mm;
}

static void joining(const strip *s)
{
    for (int row = s->task->first; row <= s->task->last; row++) {
        double y_mm = place(s, row, 0).y_mm;
        if (s->task->card->rows[row].number == 0) {
            hw_drawing_rect(s->drawing, HW_LOOK_SHADE,
                (hw_point){ s->left_mm, y_mm - s->row_mm / 2 },
                (hw_point){ right_mm(s), y_mm + s->row_mm / 2 });
        }
    }
}

/* Whether the blank ends beyond this row, which is the last of those above or below. */
static bool ends(const strip *s, int row, int next)
{
    const hw_card *card = s->task->card;
    return next < 0 || next >= card->row_count || card->rows[next].blank != card->rows[row].blank;
}

/* Edges, cut at the blank's ends and dashed where it goes on, and the middle. */
static void edges(const strip *s)
{
    double middle_mm = s->left_mm + s->width_mm / 2;
    bool top = ends(s, s->task->last, s->task->last + 1);
    bool bottom = ends(s, s->task->first, s->task->first - 1);
    hw_drawing_line(s->drawing, HW_LOOK_OUTLINE, (hw_point){ s->left_mm, s->top_mm },
        (hw_point){ s->left_mm, bottom_mm(s) });
    hw_drawing_line(s->drawing, HW_LOOK_OUTLINE, (hw_point){ right_mm(s), s->top_mm },
        (hw_point){ right_mm(s), bottom_mm(s) });
    hw_drawing_line(s->drawing, top ? HW_LOOK_CUT : HW_LOOK_DASHED,
        (hw_point){ s->left_mm, s->top_mm }, (hw_point){ right_mm(s), s->top_mm });
    hw_drawing_line(s->drawing, bottom ? HW_LOOK_CUT : HW_LOOK_DASHED,
        (hw_point){ s->left_mm, bottom_mm(s) }, (hw_point){ right_mm(s), bottom_mm(s) });
    hw_drawing_line(s->drawing, HW_LOOK_DASHED, (hw_point){ middle_mm, s->top_mm },
        (hw_point){ middle_mm, bottom_mm(s) });
}

static void holes(const strip *s)
{
    const hw_card *card = s->task->card;
    for (int row = s->task->first; row <= s->task->last; row++) {
        for (int c = 0; c < card->columns; c++) {
            bool hole =
                s->task->behind ? hw_card_hole_behind(card, row, c) : hw_card_hole(card, row, c);
            if (hole) {
                hw_drawing_disc(s->drawing, HW_LOOK_SOLID, place(s, row, c), s->hole_mm / 2);
            }
        }
    }
}

static void row_numbers(const strip *s)
{
    for (int row = s->task->first; row <= s->task->last; row++) {
        int number = s->task->card->rows[row].number;
        const char *name = number > 0 ? hw_arena_format(s->arena, "%d", number) : "joins";
        double y_mm = place(s, row, 0).y_mm + lower_mm;
        hw_drawing_words(s->drawing, HW_LOOK_SMALL, (hw_point){ s->left_mm - number_gap_mm, y_mm },
            HW_ALIGN_END, name);
        hw_drawing_words(s->drawing, HW_LOOK_SMALL, (hw_point){ right_mm(s) + number_gap_mm, y_mm },
            HW_ALIGN_START, name);
    }
}

static void column_numbers(const strip *s)
{
    int columns = s->task->card->columns;
    int step = hw_num_up(apart_mm / s->pitch_mm);
    for (int c = 0; c < columns; c += step) {
        hw_point at = place(s, s->task->first, s->task->behind ? columns - 1 - c : c);
        at.y_mm = bottom_mm(s) + apart_mm;
        hw_drawing_words(
            s->drawing, HW_LOOK_SMALL, at, HW_ALIGN_MIDDLE, hw_arena_format(s->arena, "%d", c + 1));
    }
}

static void test_line(const strip *s)
{
    double y_mm = bottom_mm(s) + foot_mm / 2;
    hw_point from = { s->left_mm, y_mm };
    hw_point to = { s->left_mm + test_mm, y_mm };
    hw_drawing_line(s->drawing, HW_LOOK_THIN, from, to);
    hw_drawing_line(s->drawing, HW_LOOK_THIN, (hw_point){ from.x_mm, y_mm - tick_mm },
        (hw_point){ from.x_mm, y_mm + tick_mm });
    hw_drawing_line(s->drawing, HW_LOOK_THIN, (hw_point){ to.x_mm, y_mm - tick_mm },
        (hw_point){ to.x_mm, y_mm + tick_mm });
    hw_drawing_words(s->drawing, HW_LOOK_SMALL, (hw_point){ from.x_mm, y_mm + apart_mm },
        HW_ALIGN_START, "5 cm: if it is not, print at 100 %");
    hw_drawing_words(s->drawing, HW_LOOK_SMALL, (hw_point){ from.x_mm, y_mm + 2 * apart_mm },
        HW_ALIGN_START, "the columns are taken to lie in the middle of the card");
}

static hw_status check(const hw_draw_card_task *task, hw_err *err)
{
    int rows = task->last - task->first + 1;
    int most = hw_draw_card_rows(task->blank, &task->room);
    double width_mm = task->blank->width_cm * mm_per_cm;
    if (!measured(task->blank)) {
        return hw_err_set(err, HW_ERR_MISSING, "%s",
            "a card is drawn to its true size only: measure yours and write `hole pitch`, `row "
            "pitch` and `card width` into the machine file");
    }
    if (width_mm + 2 * (numbers_mm + HW_DRAWPARTS_EDGE_MM) > task->room.width_mm) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a card %d mm wide with its row numbers does not fit across the paper: take wider "
            "paper",
            hw_num_up(width_mm));
    }
    if (rows > most) {
        return hw_err_set(err, HW_ERR_RANGE,
            "%d rows of the card are too high for the paper, which holds %d", rows, most);
    }
    return HW_OK;
}

static strip lay_out(const hw_draw_card_task *task, hw_arena *arena, hw_drawing *drawing)
{
    const hw_blank *blank = task->blank;
    return (strip){ .task = task,
        .drawing = drawing,
        .arena = arena,
        .left_mm = HW_DRAWPARTS_EDGE_MM + numbers_mm,
        .top_mm = HW_DRAWPARTS_HEAD_MM,
        .pitch_mm = blank->hole_pitch_cm * mm_per_cm,
        .row_mm = blank->row_pitch_cm * mm_per_cm,
        .width_mm = blank->width_cm * mm_per_cm,
        .hole_mm = hole_cm(blank) * mm_per_cm,
        .rows = task->last - task->first + 1 };
}

hw_status hw_draw_card(const hw_draw_card_task *task, hw_arena *arena, hw_drawing *out, hw_err *err)
{
    assert(task->card->possible && task->first >= 0 && task->first <= task->last);
    assert(task->last < task->card->row_count);
    hw_status status = check(task, err);
    if (status != HW_OK) {
        return status;
    }
    hw_drawing drawing;
    hw_drawing_begin(&drawing, arena, task->title);
    hw_drawparts_head(&drawing, task->room.width_mm,
        task->behind ? "true size, seen from the back: left and right change places"
                     : "true size, as it is punched: purl side facing, row 1 at the bottom");
    strip s = lay_out(task, arena, &drawing);
    joining(&s);
    edges(&s);
    holes(&s);
    row_numbers(&s);
    column_numbers(&s);
    test_line(&s);
    hw_drawing_size(&drawing, task->room.width_mm, bottom_mm(&s) + foot_mm + HW_DRAWPARTS_EDGE_MM);
    status = hw_drawing_status(&drawing);
    if (status == HW_OK) {
        *out = drawing;
    }
    return status;
}
