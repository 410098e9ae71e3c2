/* The punch card to punch from: both faces, the order of punching, and how to set it in the reader.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "write/sheets.h"

enum { CHECK_ROW = 10 }; /* of the strip that finds the reader offset: own choice */

/* Which face of the card is shown. */
typedef struct {
    const char *title;
    bool behind;
} face;

/* Where things stand beside the squares, which begin in column 1. */
typedef struct {
    int again; /* the row at the right */
    int holes;
    int columns;
} layout;

static layout lay_out(const hw_card *card)
{
    return (layout){ card->columns + 1, card->columns + 2, card->columns + 3 };
}

/* Without a label the words go on from the row above. */
static void text(const hw_sheet *sheet, const char *label, const char *words)
{
    hw_grid_row(sheet->grid);
    if (label != NULL) {
        hw_grid_text(sheet->grid, 0, HW_STYLE_LABEL, label);
    }
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, words);
}

static void count(const hw_sheet *sheet, const char *label, int number)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, label);
    hw_grid_count(sheet->grid, 1, HW_STYLE_PLAIN, number);
}

/* ---- Both faces ---- */

static void face_head(const hw_sheet *sheet, const face *f)
{
    const hw_card *card = &sheet->plan->card;
    layout at = lay_out(card);
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "row");
    for (int c = 0; c < card->columns; c++) {
        hw_grid_count(sheet->grid, 1 + c, HW_STYLE_HEAD, f->behind ? card->columns - c : c + 1);
    }
    hw_grid_text(sheet->grid, at.again, HW_STYLE_HEAD, "row");
    hw_grid_text(sheet->grid, at.holes, HW_STYLE_HEAD, "holes");
}

static void row_name(const hw_sheet *sheet, int column, const hw_card_row *row)
{
    if (row->number > 0) {
        hw_grid_count(sheet->grid, column, HW_STYLE_LABEL, row->number);
    } else {
        hw_grid_text(sheet->grid, column, HW_STYLE_LABEL, "joins");
    }
}

static void face_row(const hw_sheet *sheet, const face *f, int row)
{
    const hw_card *card = &sheet->plan->card;
    layout at = lay_out(card);
    hw_grid_row(sheet->grid);
    row_name(sheet, 0, &card->rows[row]);
    for (int c = 0; c < card->columns; c++) {
        bool hole = f->behind ? hw_card_hole_behind(card, row, c) : hw_card_hole(card, row, c);
        hw_grid_text(
            sheet->grid, 1 + c, hole ? HW_STYLE_CONTRAST : HW_STYLE_BACKGROUND, hole ? "o" : ".");
    }
    row_name(sheet, at.again, &card->rows[row]);
    hw_grid_count(sheet->grid, at.holes, HW_STYLE_PLAIN, card->rows[row].holes);
}

/* Blank by blank, each from its top down. */
static void face_rows(const hw_sheet *sheet, const face *f)
{
    const hw_card *card = &sheet->plan->card;
    for (int b = 0; b < card->blanks; b++) {
        if (card->blanks > 1) {
            hw_grid_section(sheet->grid,
                hw_arena_format(sheet->arena, "%s, blank %d of %d", f->title, b + 1, card->blanks));
            face_head(sheet, f);
        }
        for (int row = card->row_count - 1; row >= 0; row--) {
            if (card->rows[row].blank == b) {
                face_row(sheet, f, row);
            }
        }
    }
}

/* ---- The facts ---- */

static const char *const read_first[HW_CARRIAGE_COUNT] = {
    [HW_CARRIAGE_NONE] = "with the first row of the band",
    [HW_CARRIAGE_PRESELECTING] = "one row ahead, in the row before the band",
    [HW_CARRIAGE_DIRECT] = "in the first row of the band itself",
};

static void start(const hw_sheet *sheet)
{
    const hw_machine *machine = &sheet->plan->project->machine;
    const hw_card *card = &sheet->plan->card;
    text(sheet, "row 1 is read", read_first[machine->carriage]);
    if (machine->reader_offset < 0) {
        text(sheet, "row in view then", "not known: find it once, as told at the foot");
        return;
    }
    text(sheet, "row in view then",
        hw_arena_format(sheet->arena, "row %d shows above the slot",
            hw_card_in_view(card, 1, machine->reader_offset)));
}

static void facts(const hw_sheet *sheet)
{
    const hw_card *card = &sheet->plan->card;
    hw_grid_section(sheet->grid, "the card");
    text(sheet, "how to read it", "o a hole, . none; row 1 is read first, from the bottom up");
    count(sheet, "first figure from column", sheet->plan->places[0].card_start + 1);
    count(sheet, "figures one above the other", card->times);
    count(sheet, "rows of the loop", card->design_rows);
    count(sheet, "rows to punch, joining rows too", card->row_count);
    count(sheet, "holes", card->total_holes);
    count(sheet, "blank cards", card->blanks);
    if (card->joining_rows > 0) {
        text(sheet, "joining rows", "punched full; lap the ends until those of each end lie over");
        text(sheet, NULL, "rows of the design at the other: these show through");
    }
    start(sheet);
    for (int i = 0; i < card->finding_count; i++) {
        text(sheet, i == 0 ? "look under Notes for" : NULL,
            hw_card_finding_name(card->findings[i].kind));
    }
}

/* ---- Order of punching ---- */

/* "1, 3-5, 9": the columns of a stroke. */
static char *columns_words(const hw_sheet *sheet, const hw_card_stroke *stroke)
{
    const hw_card *card = &sheet->plan->card;
    hw_buf buf;
    hw_buf_init(&buf, &sheet->arena->mem, HW_BUF_LIMIT);
    for (int c = stroke->first; c <= stroke->last; c++) {
        int from = c;
        while (c <= stroke->last && hw_card_hole(card, stroke->row, c)) {
            c++;
        }
        if (c > from) {
            hw_buf_text(&buf, buf.len > 0 ? ", " : "");
            hw_buf_format(&buf, c > from + 1 ? "%d-%d" : "%d", from + 1, c);
        }
    }
    char *words = hw_buf_keep(&buf, sheet->arena);
    hw_buf_release(&buf);
    return words;
}

/* The stroke in one half of a row; NULL where that has no hole. */
static const hw_card_stroke *stroke_at(const hw_card *card, int row, bool turned)
{
    const hw_card_stroke *found = NULL;
    for (int i = 0; i < card->stroke_count && found == NULL; i++) {
        const hw_card_stroke *s = &card->strokes[i];
        found = s->row == row && s->turned == turned ? s : NULL;
    }
    return found;
}

/* The second half stands beside the first, over the columns that it has in the picture. */
static void stroke_head(const hw_sheet *sheet, int blank)
{
    const hw_card *card = &sheet->plan->card;
    int half = card->columns / 2;
    hw_grid_section(sheet->grid,
        card->blanks > 1 ? hw_arena_format(sheet->arena, "order of punching: blank %d", blank + 1)
                         : "order of punching");
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "row");
    hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN,
        hw_arena_format(sheet->arena, "first, in all rows: columns 1 to %d", half));
    hw_grid_text(sheet->grid, 1 + half, HW_STYLE_PLAIN,
        hw_arena_format(sheet->arena, "then, turned once to its other edge: columns %d to %d",
            half + 1, card->columns));
}

static void stroke_row(const hw_sheet *sheet, int row)
{
    const hw_card *card = &sheet->plan->card;
    const hw_card_stroke *halves[] = { stroke_at(card, row, false), stroke_at(card, row, true) };
    if (halves[0] == NULL && halves[1] == NULL) {
        return;
    }
    hw_grid_row(sheet->grid);
    row_name(sheet, 0, &card->rows[row]);
    for (int k = 0; k < 2; k++) {
        if (halves[k] != NULL) {
            hw_grid_text(sheet->grid, 1 + k * (card->columns / 2), HW_STYLE_PLAIN,
                columns_words(sheet, halves[k]));
        }
    }
}

static void strokes(const hw_sheet *sheet)
{
    const hw_card *card = &sheet->plan->card;
    for (int row = 0; row < card->row_count; row++) {
        if (row == 0 || card->rows[row].blank != card->rows[row - 1].blank) {
            stroke_head(sheet, card->rows[row].blank);
        }
        stroke_row(sheet, row);
    }
}

/* ---- The reader offset, found once ---- */

enum { CHECK_STEPS = 6 };

static const char *const check_steps[HW_CARRIAGE_COUNT][CHECK_STEPS] = {
    [HW_CARRIAGE_PRESELECTING] = {
        "Punch one row of a spare blank full, row 10, and nothing else. Put it in the reader.",
        "Lock it, so that it does not turn by itself. Take the yarn out of the carriage.",
        "Move the carriage across. If no needle comes forward, turn the card on by a row.",
        "Again, until every needle comes forward: then row 10 is the row that is read.",
        "Read the number of the row that shows above the slot, and take 10 off it.",
        "From row 16, say, write `reader offset: 6` into the machine file.",
    },
    [HW_CARRIAGE_DIRECT] = {
        "Punch one row of a spare blank full, row 10, and nothing else. Put it in the reader.",
        "Lock it, so that it does not turn by itself. Put two yarns into the carriage.",
        "Knit a row on waste knitting. If it is all in the main yarn, turn the card by a row.",
        "Again, until a row is all in the second yarn: then row 10 is the row that is read.",
        "Read the number of the row that shows above the slot, and take 10 off it.",
        "From row 16, say, write `reader offset: 6` into the machine file.",
    },
};
_Static_assert(CHECK_ROW == 10, "the steps name the row");

static void first_time(const hw_sheet *sheet)
{
    const hw_machine *machine = &sheet->plan->project->machine;
    if (machine->reader_offset >= 0 || machine->carriage == HW_CARRIAGE_NONE) {
        return;
    }
    hw_grid_section(sheet->grid,
        hw_arena_format(sheet->arena, "a first-time check with a %s carriage: the reader offset",
            hw_carriage_name(machine->carriage)));
    for (int i = 0; i < CHECK_STEPS; i++) {
        hw_grid_row(sheet->grid);
        hw_grid_count(sheet->grid, 0, HW_STYLE_LABEL, i + 1);
        hw_grid_text(sheet->grid, 1, HW_STYLE_PLAIN, check_steps[machine->carriage][i]);
    }
}

static void no_card(const hw_sheet *sheet)
{
    hw_grid_begin(sheet->grid, sheet->arena, "Card", 2);
    sheet->grid->table.head_rows = 1;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "the punch card");
    text(sheet, "punch card",
        sheet->plan->card.columns == 0 ? "none: the machine takes none"
                                       : "none: its columns do not hold the repeat; see Notes");
}

void hw_sheet_card(const hw_sheet *sheet)
{
    static const face faces[] = { { "as it is punched", false },
        { "the same from the back: left and right change places", true } };
    const hw_card *card = &sheet->plan->card;
    if (!card->possible) {
        no_card(sheet);
        return;
    }
    hw_grid_begin(sheet->grid, sheet->arena, "Card", lay_out(card).columns);
    sheet->grid->table.head_rows = 1; /* the two faces number their columns differently */
    sheet->grid->table.head_columns = 1;
    sheet->grid->table.square = true;
    hw_sheet_title(sheet, "the punch card, purl side facing, as it is punched");
    face_head(sheet, &faces[0]);
    face_rows(sheet, &faces[0]);
    facts(sheet);
    strokes(sheet);
    if (card->blanks == 1) {
        hw_grid_section(sheet->grid, faces[1].title);
        face_head(sheet, &faces[1]);
    }
    face_rows(sheet, &faces[1]);
    first_time(sheet);
}
