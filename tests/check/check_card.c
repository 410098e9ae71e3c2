/* The punch card: drawn by hand, knitted off row by row, joined into a loop and read through.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Sources: 60 rows of a blank and 36 for a loop [B5], two joining rows punched full [B6], in
 * data/SOURCES.md; everything else is arithmetic by hand. */
#include <string.h>

#include "core/card.h"
#include "fixture.h"

enum { MOST_CELLS = 4000, MOST_COLUMNS = 48 };

/* A figure, and the machine that knits it. */
typedef struct {
    unsigned char cells[MOST_CELLS];
    hw_motif motif;
    hw_machine machine;
    hw_card_task task;
} setting;

static hw_machine usual_machine(int columns)
{
    return (hw_machine){ .needles = 200,
        .card_columns = columns,
        .longest_float = 5,
        .blank = { .rows = 60, .least_loop_rows = 36, .joining_rows = 2 } };
}

static void analyse(setting *s, int width, int rows, int gap)
{
    hw_chart chart = { .name = "drawn", .width = width, .rows = rows, .cells = s->cells };
    ck_assert_int_eq(
        hw_motif_analyse(&chart, gap, s->machine.card_columns, &arena, &s->motif), HW_OK);
    s->task.motif = &s->motif;
    s->task.machine = &s->machine;
}

/* A figure from its rows, the top one first. */
static void drawn(setting *s, const char *text, int width, int gap, int columns)
{
    int count = (int)strlen(text);
    *s = (setting){ .machine = usual_machine(columns) };
    for (int i = 0; i < count; i++) {
        s->cells[i] = text[i] == 'o' ? HW_CONTRAST : HW_BACKGROUND;
    }
    analyse(s, width, count / width, gap);
}

static hw_card made(const setting *s)
{
    hw_card card;
    ck_assert_int_eq(hw_card_make(&s->task, &arena, &card), HW_OK);
    return card;
}

/* A figure, card and machine by chance, whose repeat divides the columns. */
static void by_chance(setting *s, unsigned *state)
{
    *s = (setting){ .machine = usual_machine(0) };
    int width = 1 + hw_check_random(state, 6);
    int gap = hw_check_random(state, 4);
    int rows = 1 + hw_check_random(state, 70);
    s->machine.card_columns = (width + gap) * (1 + hw_check_random(state, 4));
    s->machine.blank = (hw_blank){ .least_loop_rows = 1 + hw_check_random(state, 60),
        .joining_rows = hw_check_random(state, 4) };
    s->machine.blank.rows = 2 * s->machine.blank.joining_rows + 1 + hw_check_random(state, 60);
    for (int i = 0; i < width * rows; i++) {
        s->cells[i] = (unsigned char)hw_check_random(state, HW_COLOUR_COUNT);
    }
    analyse(s, width, rows, gap);
    s->task.start = hw_check_random(state, s->machine.card_columns);
}

/* By hand: the figure on the right side is
 *     oo.
 *     o..
 * so that on the purl side it is `.oo` over `..o`; with a gap of 1, eight columns, the first figure
 * from column 2 on (1 of those counted from 0). The loop needs 3 rows and takes the figure twice;
 * one joining row at each end. */
START_TEST(by_hand)
{
    static const char *const rows[] = { "oooooooo", "...o...o", "..oo..oo", "...o...o", "..oo..oo",
        "oooooooo" };
    static const int numbers[] = { 0, 1, 2, 3, 4, 0 };
    static const int holes[] = { 8, 2, 4, 2, 4, 8 };
    setting s;
    drawn(&s, "oo.o..", 3, 1, 8);
    s.machine.blank = (hw_blank){ .rows = 12, .least_loop_rows = 3, .joining_rows = 1 };
    s.task.start = 1;
    hw_card card = made(&s);
    ck_assert(card.possible);
    ck_assert_int_eq(card.times, 2);
    ck_assert_int_eq(card.design_rows, 4);
    ck_assert_int_eq(card.row_count, 6);
    ck_assert_int_eq(card.blanks, 1);
    ck_assert_int_eq(card.total_holes, 28);
    for (int r = 0; r < 6; r++) {
        ck_assert_int_eq(card.rows[r].number, numbers[r]);
        ck_assert_int_eq(card.rows[r].holes, holes[r]);
        for (int c = 0; c < 8; c++) {
            ck_assert_int_eq(hw_card_hole(&card, r, c), rows[r][c] == 'o');
            ck_assert_int_eq(hw_card_hole_behind(&card, r, c), rows[r][7 - c] == 'o');
        }
    }
    /* The first half is columns 1 to 4, all rows; then the other half of the same rows. */
    ck_assert_int_eq(card.stroke_count, 12);
    ck_assert_int_eq(card.strokes[1].row, 1);
    ck_assert_int_eq(card.strokes[1].holes, 1);
    ck_assert_int_eq(card.strokes[5].last, 3);
    ck_assert(!card.strokes[5].turned);
    ck_assert_int_eq(card.strokes[6].first, 4);
    ck_assert(card.strokes[6].turned);
    ck_assert_int_eq(card.finding_count, 0);
}
END_TEST

/* The usual blank: a figure of 10 rows is punched four times, 40 rows, and with two joining rows at
 * both ends 44; one of 18 twice, one of 36 and one of 56 once, one of 57 on two blanks. */
START_TEST(usual_blank)
{
    static const struct {
        int rows, times, blanks, all;
    } cases[] = { { 10, 4, 1, 44 }, { 18, 2, 1, 40 }, { 35, 2, 2, 78 }, { 36, 1, 1, 40 },
        { 56, 1, 1, 60 }, { 57, 1, 2, 65 }, { 112, 1, 2, 120 }, { 113, 1, 3, 125 } };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        setting s = { .machine = usual_machine(24) };
        memset(s.cells, HW_CONTRAST, (size_t)cases[i].rows);
        analyse(&s, 1, cases[i].rows, 1);
        hw_card card = made(&s);
        ck_assert_int_eq(card.times, cases[i].times);
        ck_assert_int_eq(card.blanks, cases[i].blanks);
        ck_assert_int_eq(card.row_count, cases[i].all);
    }
}
END_TEST

/* Knit each row off the card: needle by needle where there is a hole, then turn the fabric to its
 * right side and look for the drawn figure, from the needle on which it starts. */
START_TEST(knitted_off)
{
    unsigned state = 7;
    for (int round = 0; round < 400; round++) {
        setting s;
        by_chance(&s, &state);
        hw_card card = made(&s);
        const hw_chart *chart = &s.motif.chart;
        int last_row = 0;
        for (int r = 0; r < card.row_count; r++) {
            bool knitted[MOST_COLUMNS];
            if (card.rows[r].number == 0) {
                continue;
            }
            ck_assert_int_eq(card.rows[r].number, ++last_row);
            for (int c = 0; c < card.columns; c++) {
                int needle = (s.task.start + c) % card.columns; /* from the figure's own start */
                knitted[card.columns - 1 - c] = hw_card_hole(&card, r, needle);
            }
            /* On the right side the figure now ends at the right, behind its gap to the left. */
            int drawn_row = chart->rows - 1 - (last_row - 1) % chart->rows;
            for (int c = 0; c < card.columns; c++) {
                int at = c % s.motif.repeat - s.motif.gap;
                bool contrast = at >= 0 && chart->cells[drawn_row * chart->width + at] == 1;
                ck_assert_int_eq(knitted[c], contrast);
            }
        }
        ck_assert_int_eq(last_row, card.design_rows);
    }
}
END_TEST

/* Light falls through a place of the joined card where every layer has a hole: it must be the
 * design alone, round the whole loop. */
START_TEST(loop_shows_the_design)
{
    unsigned state = 11;
    int joined = 0;
    for (int round = 0; round < 400; round++) {
        setting s;
        by_chance(&s, &state);
        hw_card card = made(&s);
        int at = 0; /* where the row lies in the loop: design row `number` is at number - 1 */
        for (int r = 0; r < card.row_count; r++) {
            bool begins = r == 0 || card.rows[r].blank != card.rows[r - 1].blank;
            if (begins) {
                ck_assert_int_eq(card.rows[r].number, card.joining_rows > 0 ? 0 : at + 1);
                at -= card.joining_rows;
            }
            int place = (at + 2 * card.design_rows) % card.design_rows;
            for (int c = 0; c < card.columns; c++) {
                int figure = s.motif.chart.rows;
                int drawn_row = figure - 1 - place % figure;
                bool lit = hw_card_at(&s.motif, drawn_row, c, s.task.start) == HW_CONTRAST;
                ck_assert(!lit || hw_card_hole(&card, r, c));
                ck_assert(card.rows[r].number == 0 || hw_card_hole(&card, r, c) == lit);
            }
            at++;
            bool ends = r + 1 == card.row_count || card.rows[r + 1].blank != card.rows[r].blank;
            at -= ends ? card.joining_rows : 0;
        }
        ck_assert_int_eq(at, card.design_rows);
        joined += card.blanks > 1;
    }
    ck_assert_int_gt(joined, 50);
    ck_assert_int_lt(joined, 350);
}
END_TEST

/* As few figures as close a loop, as few blanks as hold them, and none with too many rows. */
START_TEST(no_more_than_needed)
{
    unsigned state = 13;
    for (int round = 0; round < 400; round++) {
        setting s;
        by_chance(&s, &state);
        hw_card card = made(&s);
        const hw_blank *blank = &s.machine.blank;
        int figure = s.motif.chart.rows;
        int room = blank->rows - 2 * blank->joining_rows;
        ck_assert_int_eq(card.design_rows, figure * card.times);
        ck_assert_int_ge(card.design_rows, blank->least_loop_rows);
        ck_assert(card.times == 1 || card.design_rows - figure < blank->least_loop_rows);
        ck_assert_int_ge(card.blanks * room, card.design_rows);
        ck_assert_int_lt((card.blanks - 1) * room, card.design_rows);
        for (int b = 0; b < card.blanks; b++) {
            int rows = 0;
            for (int r = 0; r < card.row_count; r++) {
                rows += card.rows[r].blank == b;
            }
            ck_assert_int_le(rows, blank->rows);
            ck_assert_int_gt(rows, 2 * blank->joining_rows);
        }
    }
}
END_TEST

/* Each hole is punched once; rows rise, and each blank is turned once, at the middle. */
START_TEST(strokes_punch_every_hole)
{
    unsigned state = 17;
    for (int round = 0; round < 400; round++) {
        setting s;
        by_chance(&s, &state);
        hw_card card = made(&s);
        int *punched =
            hw_arena_get(&arena, (size_t)card.row_count * (size_t)card.columns, sizeof *punched);
        ck_assert_ptr_nonnull(punched);
        int holes = 0;
        for (int i = 0; i < card.stroke_count; i++) {
            const hw_card_stroke *k = &card.strokes[i];
            ck_assert_int_eq(k->first, k->turned ? card.columns / 2 : 0);
            ck_assert_int_eq(k->last, k->turned ? card.columns - 1 : card.columns / 2 - 1);
            int here = 0;
            for (int c = k->first; c <= k->last; c++) {
                punched[k->row * card.columns + c] += hw_card_hole(&card, k->row, c);
                here += hw_card_hole(&card, k->row, c);
            }
            ck_assert_int_eq(k->holes, here);
            ck_assert_int_gt(here, 0);
            holes += here;
            if (i > 0 && k->turned == k[-1].turned) {
                ck_assert_int_gt(k->row, k[-1].row);
            } else if (i > 0 && !k->turned) {
                ck_assert_int_gt(card.rows[k->row].blank, card.rows[k[-1].row].blank);
            } else if (i > 0) {
                ck_assert_int_eq(card.rows[k->row].blank, card.rows[k[-1].row].blank);
            }
        }
        ck_assert_int_eq(holes, card.total_holes);
        for (int i = 0; i < card.row_count * card.columns; i++) {
            ck_assert_int_eq(punched[i], card.holes[i]);
        }
    }
}
END_TEST

/* By hand, on a loop of 40 rows: with 6 rows between, row 7 shows while row 1 is read, and row 2
 * while row 36 is; with none the row itself. */
START_TEST(row_in_view)
{
    hw_card card = { .possible = true, .design_rows = 40 };
    ck_assert_int_eq(hw_card_in_view(&card, 1, 6), 7);
    ck_assert_int_eq(hw_card_in_view(&card, 36, 6), 2);
    ck_assert_int_eq(hw_card_in_view(&card, 34, 6), 40);
    ck_assert_int_eq(hw_card_in_view(&card, 35, 6), 1);
    ck_assert_int_eq(hw_card_in_view(&card, 40, 0), 40);
    card.design_rows = 4;
    ck_assert_int_eq(hw_card_in_view(&card, 2, 7), 1);
}
END_TEST

/* One finding, and words of it. */
static void found(const setting *s, int at, hw_card_finding wanted, const char *way_out)
{
    hw_card card = made(s);
    ck_assert_int_lt(at, card.finding_count);
    const hw_card_finding *f = &card.findings[at];
    ck_assert_int_eq(f->kind, wanted.kind);
    ck_assert_int_eq(f->count, wanted.count);
    ck_assert_int_eq(f->limit, wanted.limit);
    ck_assert_uint_gt(strlen(hw_card_finding_name(f->kind)), 5);
    const char *words = hw_card_finding_words(f, &s->task, &arena);
    ck_assert_ptr_nonnull(words);
    ck_assert_msg(strstr(words, way_out) != NULL, "%s", words);
}

START_TEST(findings)
{
    setting s;
    drawn(&s, "o.o.", 2, 3, 24); /* 24 = 2 + 1 times 8, and so on: gaps 0, 1, 2, 4, 6, 10, 22 */
    found(&s, 0, (hw_card_finding){ HW_CARD_NOT_ACROSS, 5, 24 },
        "A gap of 0, 1, 2, 4, 6, 10 or 22 makes it fit.");
    ck_assert(!made(&s).possible);
    ck_assert_int_eq(made(&s).finding_count, 1);
    drawn(&s, "ooooooooooooo.ooooooooooooo.", 14, 0, 13);
    found(&s, 0, (hw_card_finding){ HW_CARD_NOT_ACROSS, 14, 13 }, "draw a narrower figure");
    drawn(&s, "o.......", 4, 0, 24);
    found(&s, 0, (hw_card_finding){ HW_CARD_NO_CONTRAST, 1, 0 }, "1 row of the motif");
    drawn(&s, "oooooo", 1, 0, 24);
    found(&s, 0, (hw_card_finding){ HW_CARD_NO_BACKGROUND, 6, 0 }, "6 rows of the motif");
    drawn(&s, "o......o", 4, 2, 24); /* a repeat of 6: five stitches between contrast */
    ck_assert_int_eq(made(&s).finding_count, 0);
    s.machine.longest_float = 4;
    found(&s, 0, (hw_card_finding){ HW_CARD_LONG_FLOAT, 5, 4 }, "catching stitch");
    drawn(&s, "o.o.o.", 2, 0, 24);
    s.machine.carriage = HW_CARRIAGE_DIRECT;
    found(&s, 0, (hw_card_finding){ HW_CARD_ODD_ROWS, 3, 0 }, "the carriage and the second yarn");
    s.machine.carriage = HW_CARRIAGE_NONE;
    found(&s, 0, (hw_card_finding){ HW_CARD_ODD_ROWS, 3, 0 },
        "after it the second yarn is at the other edge. Add a border row");
}
END_TEST

/* By hand: 34 rows do not close, twice 34 are 68, more than the 56 between joining rows: two
 * blanks, or two more rows. 60 rows: two blanks, and no rows to add. */
START_TEST(too_long)
{
    setting s = { .machine = usual_machine(24) };
    memset(s.cells, HW_CONTRAST, 60);
    analyse(&s, 1, 34, 1);
    hw_card_finding twice = { HW_CARD_TOO_LONG, 68, 56 };
    found(&s, 0, twice, "join 2 blanks");
    found(&s, 0, twice, "add 2 plain rows");
    found(&s, 0, twice, "turn it back to row 1");
    analyse(&s, 1, 35, 1);
    found(&s, 0, (hw_card_finding){ HW_CARD_TOO_LONG, 70, 56 }, "add 1 plain row to");
    analyse(&s, 1, 60, 1);
    found(&s, 0, (hw_card_finding){ HW_CARD_TOO_LONG, 60, 56 }, "or choose a lower motif");
}
END_TEST

/* All at once, in their order, and without a card only what hand knitting minds too. */
START_TEST(findings_in_order)
{
    setting s;
    drawn(&s, "o.......oooooooo........", 8, 1, 24);
    hw_card card = made(&s);
    static const hw_card_finding_kind kinds[] = { HW_CARD_NOT_ACROSS, HW_CARD_NO_CONTRAST,
        HW_CARD_LONG_FLOAT, HW_CARD_ODD_ROWS };
    ck_assert_int_eq(card.finding_count, 4);
    for (int i = 0; i < 4; i++) {
        ck_assert_int_eq(card.findings[i].kind, kinds[i]);
    }
    drawn(&s, "o.......oooooooo........", 8, 1, 0);
    card = made(&s);
    ck_assert(!card.possible);
    ck_assert_int_eq(card.columns, 0);
    ck_assert_int_eq(card.finding_count, 3);
    ck_assert_int_eq(card.findings[0].kind, HW_CARD_NO_CONTRAST);
}
END_TEST

START_TEST(memory_refused)
{
    setting s;
    drawn(&s, "oo.o..", 3, 1, 8);
    for (long n = 1; n <= 3; n++) {
        hw_arena poor;
        hw_check_heap small;
        hw_card card = { .times = 77 };
        hw_check_open(&poor, &small, n, false);
        ck_assert_int_eq(hw_card_make(&s.task, &poor, &card), HW_ERR_NOMEM);
        ck_assert_int_eq(card.times, 77);
        hw_check_close(&poor, &small);
        hw_check_open(&poor, &small, n, true);
        hw_card_finding odd = { HW_CARD_ODD_ROWS, 3, 0 };
        ck_assert(n > 2 || hw_card_finding_words(&odd, &s.task, &poor) == NULL);
        hw_check_close(&poor, &small);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { by_hand, usual_blank, knitted_off, loop_shows_the_design,
        no_more_than_needed, strokes_punch_every_hole, row_in_view, findings, too_long,
        findings_in_order, memory_refused };
    return fixture_run("card", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
