/* The card's rows, holes and strokes, and each rule of what cannot be done, in one place.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/card.h"

#include <assert.h>

#include "core/buf.h"
#include "core/num.h"

enum { HALVES = 2 }; /* a hand punch reaches from one edge to the middle */

hw_colour hw_card_at(const hw_motif *motif, int row, int column, int start)
{
    int along = hw_num_mod(column - start, motif->repeat);
    return along < motif->chart.width ? hw_motif_at(motif, row, motif->chart.width - 1 - along)
                                      : HW_BACKGROUND;
}

bool hw_card_hole(const hw_card *card, int row, int column)
{
    assert(row >= 0 && row < card->row_count && column >= 0 && column < card->columns);
    return card->holes[row * card->columns + column] != 0;
}

bool hw_card_hole_behind(const hw_card *card, int row, int column)
{
    return hw_card_hole(card, row, card->columns - 1 - column);
}

int hw_card_in_view(const hw_card *card, int read, int offset)
{
    return hw_num_mod(read - 1 + offset, card->design_rows) + 1;
}

/* Design rows that a blank holds between its joining rows. */
static int room_on_blank(const hw_blank *blank)
{
    return blank->rows - 2 * blank->joining_rows;
}

static int divided_up(int a, int b)
{
    return (a + b - 1) / b;
}

/* ---- What cannot be done ---- */

static void find(hw_card *card, hw_card_finding_kind kind, int count, int limit)
{
    card->findings[card->finding_count++] = (hw_card_finding){ kind, count, limit };
}

/* In the order of hw_card_finding_kind. */
static void look_for_findings(const hw_card_task *task, hw_card *card)
{
    const hw_motif *motif = task->motif;
    int room = room_on_blank(&task->machine->blank);
    if (!motif->fits_card) {
        find(card, HW_CARD_NOT_ACROSS, motif->repeat, motif->card_columns);
    }
    if (card->possible && card->design_rows > room) {
        find(card, HW_CARD_TOO_LONG, card->design_rows, room);
    }
    if (motif->rows_without_contrast > 0) {
        find(card, HW_CARD_NO_CONTRAST, motif->rows_without_contrast, 0);
    }
    if (motif->rows_without_background > 0) {
        find(card, HW_CARD_NO_BACKGROUND, motif->rows_without_background, 0);
    }
    if (hw_motif_longest(motif) > task->machine->longest_float) {
        find(card, HW_CARD_LONG_FLOAT, hw_motif_longest(motif), task->machine->longest_float);
    }
    if (motif->chart.rows % 2 != 0) {
        find(card, HW_CARD_ODD_ROWS, motif->chart.rows, 0);
    }
}

static const char *const names[] = {
    [HW_CARD_NOT_ACROSS] = "the repeat does not divide the card's columns",
    [HW_CARD_TOO_LONG] = "more rows than one blank holds",
    [HW_CARD_NO_CONTRAST] = "rows without contrast",
    [HW_CARD_NO_BACKGROUND] = "rows without background",
    [HW_CARD_LONG_FLOAT] = "a float longer than is usual on this machine",
    [HW_CARD_ODD_ROWS] = "an odd number of rows",
};
_Static_assert(sizeof names / sizeof names[0] == HW_CARD_FINDING_COUNT, "a name for each kind");

const char *hw_card_finding_name(hw_card_finding_kind kind)
{
    assert(kind < HW_CARD_FINDING_COUNT);
    return names[kind];
}

static void say_across(const hw_card_finding *f, const hw_card_task *task, hw_buf *buf)
{
    const hw_motif *motif = task->motif;
    hw_buf_format(buf,
        "A repeat of %d columns (figure %d, gap %d) does not divide the %d columns of the card, so "
        "the card cannot repeat it across; the places on the bed here are for needles chosen by "
        "hand. ",
        f->count, motif->chart.width, motif->gap, f->limit);
    if (motif->card_gap_count == 0) {
        hw_buf_text(buf, "No gap makes it fit; draw a narrower figure.");
        return;
    }
    for (int i = 0; i < motif->card_gap_count; i++) {
        hw_buf_text(buf, i == 0 ? "A gap of " : i + 1 < motif->card_gap_count ? ", " : " or ");
        hw_buf_format(buf, "%d", motif->card_gaps[i]);
    }
    hw_buf_text(buf, " makes it fit.");
}

static void say_long(const hw_card_finding *f, const hw_card_task *task, hw_buf *buf)
{
    const hw_blank *blank = &task->machine->blank;
    int figure = task->motif->chart.rows;
    int blanks = divided_up(f->count, f->limit);
    hw_buf_format(buf,
        "The card needs %d rows and one blank holds %d beside its joining rows: join %d blanks "
        "into one loop",
        f->count, f->limit, blanks);
    if (figure < blank->least_loop_rows && blank->least_loop_rows <= f->limit) {
        hw_buf_format(buf,
            ", or add %d plain %s to the motif, which then closes with one blank, or leave the "
            "card open and turn it back to row 1 for each piece.",
            blank->least_loop_rows - figure, blank->least_loop_rows - figure == 1 ? "row" : "rows");
    } else {
        hw_buf_text(buf, ", or choose a lower motif.");
    }
}

static void counted_rows(hw_buf *buf, int rows)
{
    hw_buf_format(buf, "%d row%s", rows, rows == 1 ? "" : "s");
}

static void say_no_contrast(const hw_card_finding *f, const hw_card_task *task, hw_buf *buf)
{
    (void)task;
    hw_buf_text(buf, "Without a contrast stitch: ");
    counted_rows(buf, f->count);
    hw_buf_text(buf, " of the motif. The second yarn is not knitted there and lies along the whole "
                     "row: take it out of the feeder, or draw a stitch.");
}

static void say_no_background(const hw_card_finding *f, const hw_card_task *task, hw_buf *buf)
{
    (void)task;
    hw_buf_text(buf, "Contrast throughout: ");
    counted_rows(buf, f->count);
    hw_buf_text(buf, " of the motif. The main yarn lies along the whole row there: knit it as a "
                     "plain row in the second yarn.");
}

static void say_float(const hw_card_finding *f, const hw_card_task *task, hw_buf *buf)
{
    (void)task;
    hw_buf_format(buf,
        "The longest float is %d stitches; up to %d is usual here. Draw a catching stitch into "
        "the long stretch, or hook the strand up behind it by hand.",
        f->count, f->limit);
}

static void say_odd(const hw_card_finding *f, const hw_card_task *task, hw_buf *buf)
{
    bool hand = task->machine->carriage == HW_CARRIAGE_NONE;
    hw_buf_format(buf,
        "The band has %d rows, an odd number: after it %s. Add a border row to the motif, or cut "
        "the second yarn there.",
        f->count,
        hand ? "the second yarn is at the other edge"
             : "the carriage and the second yarn are on the other side");
}

char *hw_card_finding_words(
    const hw_card_finding *finding, const hw_card_task *task, hw_arena *arena)
{
    static void (*const say[])(const hw_card_finding *, const hw_card_task *, hw_buf *) = {
        [HW_CARD_NOT_ACROSS] = say_across,
        [HW_CARD_TOO_LONG] = say_long,
        [HW_CARD_NO_CONTRAST] = say_no_contrast,
        [HW_CARD_NO_BACKGROUND] = say_no_background,
        [HW_CARD_LONG_FLOAT] = say_float,
        [HW_CARD_ODD_ROWS] = say_odd,
    };
    _Static_assert(sizeof say / sizeof say[0] == HW_CARD_FINDING_COUNT, "words for each kind");
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    say[finding->kind](finding, task, &buf);
    char *words = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return words;
}

/* ---- The card ---- */

/* Whole figures, until they are enough for a loop [B5, B6]. */
static void measure(const hw_card_task *task, hw_card *card)
{
    const hw_blank *blank = &task->machine->blank;
    int figure = task->motif->chart.rows;
    card->times = divided_up(blank->least_loop_rows, figure);
    card->times = card->times > 0 ? card->times : 1;
    card->design_rows = figure * card->times;
    card->joining_rows = blank->joining_rows;
    card->blanks = divided_up(card->design_rows, room_on_blank(blank));
    card->row_count = card->design_rows + 2 * card->joining_rows * card->blanks;
}

/* Punches one row: a row of the design, or with number 0 a full one. */
static void punch_row(const hw_card_task *task, hw_card *card, int row, int number)
{
    int figure = task->motif->chart.rows;
    int drawn = figure - 1 - hw_num_mod(number - 1, figure);
    hw_card_row *made = &card->rows[row];
    made->number = number;
    for (int column = 0; column < card->columns; column++) {
        bool hole =
            number == 0 || hw_card_at(task->motif, drawn, column, task->start) == HW_CONTRAST;
        card->holes[row * card->columns + column] = hole ? 1 : 0;
        made->holes += hole ? 1 : 0;
    }
    card->total_holes += made->holes;
}

/* Each blank: joining rows, its share of the design, joining rows. The shares differ by a row at
 * most. */
static void punch_rows(const hw_card_task *task, hw_card *card)
{
    int row = 0;
    for (int b = 0; b < card->blanks; b++) {
        int from = b * card->design_rows / card->blanks;
        int to = (b + 1) * card->design_rows / card->blanks;
        int rows = to - from + 2 * card->joining_rows;
        for (int i = 0; i < rows; i++, row++) {
            bool joins = i < card->joining_rows || i >= rows - card->joining_rows;
            card->rows[row].blank = b;
            punch_row(task, card, row, joins ? 0 : from + i - card->joining_rows + 1);
        }
    }
}

/* One half of the rows of one blank. */
static void stroke_half(hw_card *card, int blank, int half)
{
    int middle = card->columns / HALVES;
    int first = half == 0 ? 0 : middle;
    int last = half == 0 ? middle - 1 : card->columns - 1;
    for (int row = 0; row < card->row_count; row++) {
        int holes = 0;
        for (int column = first; column <= last; column++) {
            holes += hw_card_hole(card, row, column) ? 1 : 0;
        }
        if (card->rows[row].blank == blank && holes > 0) {
            card->strokes[card->stroke_count++] =
                (hw_card_stroke){ row, first, last, holes, half > 0 };
        }
    }
}

static hw_status punch(const hw_card_task *task, hw_arena *arena, hw_card *card)
{
    size_t rows = (size_t)card->row_count;
    card->rows = hw_arena_get(arena, rows, sizeof *card->rows);
    card->holes = hw_arena_get(arena, rows * (size_t)card->columns, 1);
    card->strokes = hw_arena_get(arena, rows * HALVES, sizeof *card->strokes);
    if (card->rows == NULL || card->holes == NULL || card->strokes == NULL) {
        return HW_ERR_NOMEM;
    }
    punch_rows(task, card);
    for (int b = 0; b < card->blanks; b++) {
        for (int half = 0; half < HALVES; half++) {
            stroke_half(card, b, half);
        }
    }
    return HW_OK;
}

hw_status hw_card_make(const hw_card_task *task, hw_arena *arena, hw_card *out)
{
    const hw_motif *motif = task->motif;
    hw_card card = { .columns = motif->card_columns };
    card.possible = card.columns > 0 && motif->fits_card;
    hw_status status = HW_OK;
    if (card.possible) {
        assert(room_on_blank(&task->machine->blank) > 0);
        measure(task, &card);
        status = punch(task, arena, &card);
    }
    if (status == HW_OK) {
        look_for_findings(task, &card);
        *out = card;
    }
    return status;
}
