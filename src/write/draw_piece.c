/* Pieces of a garment to scale, side by side.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "core/num.h"
#include "write/drawparts.h"
#include "write/pieceview.h"
#include "write/wrap.h"

/* The pieces, and the paper that is left for them. */
typedef struct {
    const hw_pieceview *views;
    hw_piecewords *words; /* at the pen's scale */
    int count;
    double width_mm, height_mm;
} sheet;

/* How many pieces stand in a row, and how high it is above their folds and below. */
typedef struct {
    int taken;
    double high_mm, low_mm;
} row;

static const double scales[] = { 1, 2, 2.5, 4, 5, 8, 10, 20, 40, 100 };
static const double between_mm = 5;     /* two pieces */
static const double check_mm = 50;      /* the line that shows whether the paper is true */
static const double check_in_mm = 50.8; /* the same, of two inches */
static const double check_room_mm = 9;
static const double tick_mm = 1;
static const double gap_mm = 2;
static const double note_mm = 3.4;   /* from one line of small words to the next */
static const double lower_mm = 0.95; /* from a small word's middle down to its foot */
static const double mm_in_cm = 10;

/* A piece with what stands beside it and below it. */
typedef struct {
    double left_mm, piece_mm, right_mm;
} cell;

/* The words below a piece are centred, so half of them goes each way. */
static cell cell_of(const sheet *s, int number, double mm_per_cm)
{
    const hw_pieceview *view = &s->views[number];
    cell c = { .left_mm = view->left_mm,
        .piece_mm = (view->to_cm - view->from_cm) * mm_per_cm,
        .right_mm = view->right_mm };
    double half_mm = (s->words[number].wide_mm - c.piece_mm) / 2;
    c.left_mm = c.left_mm > half_mm ? c.left_mm : half_mm;
    c.right_mm = c.right_mm > half_mm ? c.right_mm : half_mm;
    return c;
}

/* As many pieces as fit, from `first` on. */
static row row_from(const sheet *s, int first, double mm_per_cm)
{
    row r = { 0 };
    double used_mm = 0;
    for (int i = first; i < s->count; i++) {
        cell c = cell_of(s, i, mm_per_cm);
        used_mm += c.left_mm + c.piece_mm + c.right_mm;
        if (used_mm > s->width_mm) {
            break;
        }
        used_mm += between_mm;
        double high_mm = HW_PIECEVIEW_ABOVE_MM + s->views[i].high_cm * mm_per_cm;
        r.high_mm = high_mm > r.high_mm ? high_mm : r.high_mm;
        r.low_mm = s->words[i].high_mm > r.low_mm ? s->words[i].high_mm : r.low_mm;
        r.taken++;
    }
    return r;
}

/* Whether all rows fit at the pen's scale; what stands below the pieces is found for it. Where they
 * do not, `wide` is the piece that is too wide by itself, or -1. */
static bool fits(const sheet *s, const hw_piecepen *pen, int *wide)
{
    double used_mm = 0;
    *wide = -1;
    for (int i = 0; i < s->count; i++) {
        hw_pieceview_words(&s->views[i], pen, &s->words[i]);
    }
    for (int first = 0; first < s->count;) {
        row r = row_from(s, first, pen->mm_per_cm);
        if (r.taken == 0) {
            *wide = first;
            return false;
        }
        used_mm += r.high_mm + r.low_mm;
        first += r.taken;
    }
    return used_mm <= s->height_mm;
}

/* The largest round scale that fits; 0 where none does. */
static double round_scale(const sheet *s, hw_piecepen *pen, int *wide)
{
    for (size_t i = 0; i < sizeof scales / sizeof scales[0]; i++) {
        pen->mm_per_cm = mm_in_cm / scales[i];
        if (fits(s, pen, wide)) {
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
            cell c = cell_of(s, i, pen->mm_per_cm);
            hw_pieceview_draw(&(hw_pieceplace){ .pen = pen,
                .view = view,
                .words = &s->words[i],
                .middle_mm = x_mm + c.left_mm - view->from_cm * pen->mm_per_cm,
                .fold_mm = down_mm + r.high_mm });
            x_mm += c.left_mm + c.piece_mm + c.right_mm + between_mm;
        }
        down_mm += r.high_mm + r.low_mm;
        first += r.taken;
    }
    return down_mm;
}

/* A line by which a reader sees whether the page was printed true. */
static void check_line(hw_drawing *drawing, hw_show show, double y_mm)
{
    bool inches = show == HW_SHOW_IN;
    hw_point from = { HW_DRAWPARTS_EDGE_MM, y_mm };
    hw_point to = { from.x_mm + (inches ? check_in_mm : check_mm), y_mm };
    hw_drawing_line(drawing, HW_LOOK_OUTLINE, from, to);
    hw_drawing_line(drawing, HW_LOOK_OUTLINE, (hw_point){ from.x_mm, y_mm - tick_mm },
        (hw_point){ from.x_mm, y_mm + tick_mm });
    hw_drawing_line(drawing, HW_LOOK_OUTLINE, (hw_point){ to.x_mm, y_mm - tick_mm },
        (hw_point){ to.x_mm, y_mm + tick_mm });
    hw_drawing_words(drawing, HW_LOOK_SMALL, (hw_point){ to.x_mm + gap_mm, y_mm + lower_mm },
        HW_ALIGN_START,
        inches ? "2 in on paper; if it is not, print without fitting to the page"
               : "5 cm on paper; if it is not, print without fitting to the page");
}

/* Small letters that a line has room for. */
static int letters_of(const sheet *s)
{
    return hw_num_down(s->width_mm / hw_look_width_mm(HW_LOOK_SMALL, "m"));
}

/* What the notes on safety take below the line. */
static double notes_height_mm(const hw_draw_pieces_task *task, const sheet *s)
{
    int lines = 0;
    for (int i = 0; i < task->note_count; i++) {
        bool safety = task->notes[i].kind == HW_NOTE_SAFETY;
        lines += safety ? hw_wrap_lines(task->notes[i].text, letters_of(s)) : 0;
    }
    return lines * note_mm;
}

/* A note, wrapped; where the next begins. */
static double draw_note(const hw_piecepen *pen, const char *text, int letters, double y_mm)
{
    size_t len = 0;
    const char *line = hw_wrap_line(text, letters, 0, &len);
    for (int n = 1; len > 0; n++) {
        y_mm += note_mm;
        hw_drawing_words(pen->drawing, HW_LOOK_SMALL, (hw_point){ HW_DRAWPARTS_EDGE_MM, y_mm },
            HW_ALIGN_START, hw_arena_text(pen->arena, line, len));
        line = hw_wrap_line(text, letters, n, &len);
    }
    return y_mm;
}

static void draw_notes(
    const hw_draw_pieces_task *task, const sheet *s, const hw_piecepen *pen, double y_mm)
{
    for (int i = 0; i < task->note_count; i++) {
        if (task->notes[i].kind == HW_NOTE_SAFETY) {
            y_mm = draw_note(pen, task->notes[i].text, letters_of(s), y_mm);
        }
    }
}

static hw_status refuse(const sheet *s, double smallest, int wide, hw_err *err)
{
    if (wide >= 0) {
        return hw_err_set(err, HW_ERR_RANGE,
            "`%.40s` is too wide for the paper at 1 to %g: draw it in two pieces in the garment "
            "file",
            s->views[wide].piece->name, smallest);
    }
    return hw_err_set(err, HW_ERR_RANGE,
        "the %d pieces do not fit one page at 1 to %g: draw some of them in a garment file of "
        "their own",
        s->count, smallest);
}

static hw_status draw_all(
    const hw_draw_pieces_task *task, const sheet *s, const hw_piecepen *pen, hw_drawing *out)
{
    hw_drawing *drawing = pen->drawing;
    hw_drawparts_head(
        drawing, task->room.width_mm, scale_words(mm_in_cm / pen->mm_per_cm, pen->arena));
    double end_mm = draw_rows(s, pen);
    check_line(drawing, task->show, end_mm + check_room_mm / 2);
    end_mm += check_room_mm;
    draw_notes(task, s, pen, end_mm - note_mm + lower_mm);
    hw_drawing_size(
        drawing, task->room.width_mm, end_mm + notes_height_mm(task, s) + HW_DRAWPARTS_EDGE_MM);
    hw_status status = hw_drawing_status(drawing);
    if (status == HW_OK) {
        *out = *drawing;
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
    hw_piecewords *words = hw_arena_get(arena, (size_t)task->count, sizeof *words);
    if (words == NULL) {
        return HW_ERR_NOMEM;
    }
    sheet s = { .views = views,
        .words = words,
        .count = task->count,
        .width_mm = task->room.width_mm - 2 * HW_DRAWPARTS_EDGE_MM,
        .height_mm =
            task->room.height_mm - HW_DRAWPARTS_HEAD_MM - check_room_mm - HW_DRAWPARTS_EDGE_MM };
    s.height_mm -= notes_height_mm(task, &s);
    hw_drawing drawing;
    hw_drawing_begin(&drawing, arena, task->title);
    hw_piecepen pen = { .drawing = &drawing, .arena = arena, .show = task->show };
    double scale = task->scale > 0 ? task->scale : scales[sizeof scales / sizeof scales[0] - 1];
    int wide = -1;
    pen.mm_per_cm = mm_in_cm / scale;
    bool found = task->scale > 0 ? fits(&s, &pen, &wide) : round_scale(&s, &pen, &wide) > 0;
    if (hw_drawing_status(&drawing) != HW_OK) {
        return hw_drawing_status(&drawing); /* memory was refused to what is measured */
    }
    return found ? draw_all(task, &s, &pen, out) : refuse(&s, scale, wide, err);
}
