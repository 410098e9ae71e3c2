/* The fabric: every stitch in its place, the purl side a mirror image, floats as long as by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "core/num.h"
#include "drawn.h"
#include "fixture.h"
#include "write/draw.h"

enum { WIDTH = 5, ROWS = 4, GAP = 2, REPEAT = WIDTH + GAP, REPEATS = 3 };

static hw_motif motif;
static hw_gauge gauge;

/* Drawn for this suite, not symmetrical; row 1 at the bottom has one colour. */
static const char *const lines[ROWS] = { "oo..o", "o....", ".oooo", "....." };

static void setup(void)
{
    unsigned char *cells = hw_arena_get(&arena, WIDTH * ROWS, 1);
    ck_assert_ptr_nonnull(cells);
    for (int i = 0; i < WIDTH * ROWS; i++) {
        cells[i] = lines[i / WIDTH][i % WIDTH] == 'o' ? HW_CONTRAST : HW_BACKGROUND;
    }
    hw_chart chart = { "Test", WIDTH, ROWS, cells };
    ck_assert_int_eq(hw_motif_analyse(&chart, GAP, 0, &arena, &motif), HW_OK);
    gauge = (hw_gauge){ .sts_per_10cm = 25, .rows_per_10cm = 40 };
}

static hw_draw_motif_task task(void)
{
    return (hw_draw_motif_task){
        .title = "Test", .motif = &motif, .band = &gauge, .repeats = REPEATS, .room = { 190, 277 }
    };
}

static bool is_stitch(const hw_drawn *drawn, bool purl)
{
    hw_look first = purl ? HW_LOOK_BACKGROUND_BUMP : HW_LOOK_BACKGROUND_STITCH;
    hw_look second = purl ? HW_LOOK_CONTRAST_BUMP : HW_LOOK_CONTRAST_STITCH;
    return drawn->look == first || drawn->look == second;
}

/* Where the drawing's panel of fabric lies. */
static const hw_drawn *panel(const hw_drawing *d, bool purl)
{
    return drawn_at(d, HW_DRAWN_RECT, HW_LOOK_FABRIC, purl ? 1 : 0);
}

static double sts_mm(const hw_drawing *d)
{
    const hw_drawn *p = panel(d, false);
    return (p->to.x_mm - p->at.x_mm) / (REPEAT * REPEATS);
}

/* Marks each stitch of a face by where it lies: 0 background, 1 contrast; each once. */
static void read_face(const hw_drawing *d, bool purl, int colours[ROWS][REPEAT * REPEATS])
{
    const hw_drawn *p = panel(d, purl);
    double row_mm = sts_mm(d) * 25 / 40;
    int found = 0;
    memset(colours, -1, sizeof(int) * ROWS * REPEAT * REPEATS);
    for (int i = 0; i < d->count; i++) {
        const hw_drawn *s = &d->list[i];
        if (!is_stitch(s, purl)) {
            continue;
        }
        const hw_point *middle = &s->points[s->count / 2];
        int column = hw_num_down((middle->x_mm - p->at.x_mm) / sts_mm(d));
        int row = hw_num_down((middle->y_mm - p->at.y_mm) / row_mm - 0.1);
        ck_assert(column >= 0 && column < REPEAT * REPEATS && row >= 0 && row < ROWS);
        ck_assert_int_eq(colours[row][column], -1);
        colours[row][column] =
            s->look == (purl ? HW_LOOK_CONTRAST_BUMP : HW_LOOK_CONTRAST_STITCH) ? 1 : 0;
        found++;
    }
    ck_assert_int_eq(found, ROWS * REPEAT * REPEATS);
}

/* By hand: 21 columns by 4 rows; contrast 3 + 1 + 4 of each repeat; right side as the lines stand,
 * purl side turned over. */
START_TEST(stitches_and_their_mirror)
{
    hw_draw_motif_task t = task();
    hw_drawing d;
    ck_assert_int_eq(hw_draw_fabric(&t, &arena, &d, NULL), HW_OK);
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_POLYLINE, HW_LOOK_CONTRAST_STITCH), 24);
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_POLYLINE, HW_LOOK_BACKGROUND_STITCH), 84 - 24);
    int right[ROWS][REPEAT * REPEATS];
    int purl[ROWS][REPEAT * REPEATS];
    read_face(&d, false, right);
    read_face(&d, true, purl);
    for (int row = 0; row < ROWS; row++) {
        for (int c = 0; c < REPEAT * REPEATS; c++) {
            int wanted = c % REPEAT < WIDTH && lines[row][c % REPEAT] == 'o' ? 1 : 0;
            ck_assert_int_eq(right[row][c], wanted);
            ck_assert_int_eq(purl[row][REPEAT * REPEATS - 1 - c], right[row][c]);
        }
    }
    drawn_parses(&d);
    drawn_apart(&d);
}
END_TEST

/* By hand: 25 stitches in 10 cm are 4 mm each, 40 rows 2.5 mm each. 21 stitches are 84 mm, so in
 * 182 mm they fit at 2 times, 168 mm, not at 2.5. */
START_TEST(proportion)
{
    hw_draw_motif_task t = task();
    hw_drawing d;
    ck_assert_int_eq(hw_draw_fabric(&t, &arena, &d, NULL), HW_OK);
    const hw_drawn *p = panel(&d, false);
    ck_assert_double_eq_tol(p->to.x_mm - p->at.x_mm, 168, 1e-9);
    const hw_drawn *first = drawn_at(&d, HW_DRAWN_POLYLINE, HW_LOOK_BACKGROUND_STITCH, 0);
    const hw_drawn *last = drawn_at(&d, HW_DRAWN_POLYLINE, HW_LOOK_BACKGROUND_STITCH, 59);
    /* from column 2 of the top row to column 20 of the bottom row */
    ck_assert_double_eq_tol(last->points[1].x_mm - first->points[1].x_mm, 18 * 8, 1e-9);
    ck_assert_double_eq_tol(last->points[1].y_mm - first->points[1].y_mm, 3 * 5, 1e-9);
    ck_assert_ptr_nonnull(drawn_words(&d, "2 times true size; 25 stitches and 40 rows in 10 cm"));
    ck_assert_ptr_nonnull(drawn_words(&d, "right side"));
    ck_assert_ptr_nonnull(drawn_words(&d, "purl side (faces you on the machine)"));
    ck_assert_int_eq(hw_drawing_status(&d), HW_OK);
}
END_TEST

/* Floats in one row of the purl side, by their lengths in stitches; at an edge cut off. */
static int floats_of(const hw_drawing *d, hw_look look, int row, int length)
{
    const hw_drawn *p = panel(d, true);
    double row_mm = sts_mm(d) * 25 / 40;
    int found = 0;
    for (int i = 0; i < d->count; i++) {
        const hw_drawn *s = &d->list[i];
        if (s->look == look &&
            hw_num_down((s->points[1].y_mm - p->at.y_mm) / row_mm - 0.1) == row) {
            double width_mm = s->points[s->count - 1].x_mm - s->points[0].x_mm;
            found += hw_num_nearest(width_mm / sts_mm(d)) == length ? 1 : 0;
        }
    }
    return found;
}

/* By hand, three repeats of row 4 "oo..o..": o o . . o . . | o o . . o . . | o o . . o . .
 * The contrast floats over 2 (six times, the last to the edge), the background over 2 at the
 * left edge, and over 1, 2, 1, 2, 1.
 * Row 3 "o......": contrast over 6 three times, the last to the edge; background over 1 three
 * times. Row 2 ".oooo..": contrast over 1 at the left edge, 3, 3 and 2 at the right edge;
 * background over 4 three times. Row 1 has one colour, so no float. */
START_TEST(floats_by_hand)
{
    static const struct {
        int row, length, background, contrast;
    } rows[] = { { 0, 1, 3, 0 }, { 0, 2, 3, 6 }, { 1, 1, 3, 0 }, { 1, 6, 0, 3 }, { 2, 1, 0, 1 },
        { 2, 2, 0, 1 }, { 2, 3, 0, 2 }, { 2, 4, 3, 0 }, { 3, 1, 0, 0 }, { 3, 2, 0, 0 } };
    hw_draw_motif_task t = task();
    hw_drawing d;
    ck_assert_int_eq(hw_draw_fabric(&t, &arena, &d, NULL), HW_OK);
    int background = 0;
    int contrast = 0;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_int_eq(floats_of(&d, HW_LOOK_BACKGROUND_FLOAT, rows[i].row, rows[i].length),
            rows[i].background);
        ck_assert_int_eq(
            floats_of(&d, HW_LOOK_CONTRAST_FLOAT, rows[i].row, rows[i].length), rows[i].contrast);
        background += rows[i].background;
        contrast += rows[i].contrast;
    }
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_POLYLINE, HW_LOOK_BACKGROUND_FLOAT), background);
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_POLYLINE, HW_LOOK_CONTRAST_FLOAT), contrast);
    ck_assert_ptr_nonnull(
        drawn_words(&d, "Longest floats: background 4 stitches, contrast 6 stitches"));
}
END_TEST

/* By hand: 2000 mm of band on 20 mm of paper would be 1 to 100, below the smallest scale. */
START_TEST(no_room)
{
    hw_draw_motif_task t = task();
    t.repeats = 80;
    t.room = (hw_draw_room){ 20, 277 };
    hw_drawing d = { .count = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_draw_fabric(&t, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "ask for fewer repeats"));
    t.room = (hw_draw_room){ 190, 10 };
    ck_assert_int_eq(hw_draw_fabric(&t, &arena, &d, NULL), HW_ERR_RANGE);
    ck_assert_int_eq(hw_draw_chart(&t, &arena, &d, NULL), HW_ERR_RANGE);
    ck_assert_int_eq(d.count, 77);
}
END_TEST

static hw_status (*drawer)(const hw_draw_motif_task *, hw_arena *, hw_drawing *, hw_err *);

static hw_status draw(hw_arena *room)
{
    hw_draw_motif_task t = task();
    hw_drawing d = { .count = 77 };
    hw_status status = drawer(&t, room, &d, NULL);
    ck_assert(status == HW_OK || d.count == 77);
    return status;
}

START_TEST(refused_memory)
{
    drawer = hw_draw_fabric;
    ck_assert_int_gt(hw_check_refusals(draw, false), 100); /* a request for each stitch */
    drawer = hw_draw_chart;
    ck_assert_int_gt(hw_check_refusals(draw, false), 10);
}
END_TEST

/* By hand: squares of the chart 21 by 4, as wide to their height as 4 to 2.5; the floats of row 4,
 * which is the top one, are 2 and 2 (see above), of row 3 they are 1 and 6. */
START_TEST(chart_squares)
{
    hw_draw_motif_task t = task();
    hw_drawing d;
    ck_assert_int_eq(hw_draw_chart(&t, &arena, &d, NULL), HW_OK);
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_RECT, HW_LOOK_CONTRAST_SQUARE), 24);
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_RECT, HW_LOOK_BACKGROUND_SQUARE), 84 - 24);
    const hw_drawn *first = drawn_at(&d, HW_DRAWN_RECT, HW_LOOK_CONTRAST_SQUARE, 0);
    double width_mm = first->to.x_mm - first->at.x_mm;
    ck_assert_double_eq_tol((first->to.y_mm - first->at.y_mm) / width_mm, 2.5 / 4, 1e-9);
    const hw_drawn *second = drawn_at(&d, HW_DRAWN_RECT, HW_LOOK_CONTRAST_SQUARE, 2);
    ck_assert_double_eq_tol(second->at.x_mm - first->at.x_mm, 4 * width_mm, 1e-9);
    const hw_drawn *six = drawn_words(&d, "6"); /* the first 6 is a column's, in the foot */
    ck_assert_ptr_nonnull(six);
    ck_assert_ptr_nonnull(drawn_words(&d, "one repeat: 7 columns, figure 5 and gap 2"));
    drawn_parses(&d);
    drawn_apart(&d);
}
END_TEST

/* The words of the chart's rows: numbers from the bottom up at both sides, and both floats. */
START_TEST(chart_rows)
{
    static const int floats[ROWS][2] = { { 2, 2 }, { 1, 6 }, { 4, 3 }, { 0, 0 } };
    hw_draw_motif_task t = task();
    hw_drawing d;
    ck_assert_int_eq(hw_draw_chart(&t, &arena, &d, NULL), HW_OK);
    double top_mm = drawn_at(&d, HW_DRAWN_RECT, HW_LOOK_CONTRAST_SQUARE, 0)->at.y_mm;
    double row_mm = drawn_at(&d, HW_DRAWN_RECT, HW_LOOK_CONTRAST_SQUARE, 0)->to.y_mm - top_mm;
    for (int row = 0; row < ROWS; row++) {
        int found[4] = { 0 };
        int count = 0;
        for (int i = 0; i < d.count; i++) {
            const hw_drawn *w = &d.list[i];
            if (w->kind == HW_DRAWN_WORDS && w->at.y_mm > top_mm + row * row_mm &&
                w->at.y_mm < top_mm + (row + 1) * row_mm) {
                ck_assert_int_lt(count, 4);
                size_t used = 0;
                ck_assert_int_eq(
                    hw_num_parse_count(w->text, strlen(w->text), &found[count++], &used), HW_OK);
            }
        }
        ck_assert_int_eq(count, 4);
        ck_assert_int_eq(found[0], ROWS - row);
        ck_assert_int_eq(found[1], ROWS - row);
        ck_assert_int_eq(found[2], floats[row][0]);
        ck_assert_int_eq(found[3], floats[row][1]);
    }
}
END_TEST

/* Charts and bands of many sizes: words never lie on one another, nor off the page. */
START_TEST(many_sizes)
{
    unsigned state = 5;
    for (int round = 0; round < 60; round++) {
        hw_draw_motif_task t = task();
        t.repeats = 1 + hw_check_random(&state, 12);
        gauge.sts_per_10cm = 10 + hw_check_random(&state, 35);
        gauge.rows_per_10cm = gauge.sts_per_10cm * (1 + hw_check_random(&state, 60) / 100.0);
        hw_drawing d;
        ck_assert_int_eq(hw_draw_fabric(&t, &arena, &d, NULL), HW_OK);
        drawn_apart(&d);
        ck_assert_int_eq(hw_draw_chart(&t, &arena, &d, NULL), HW_OK);
        drawn_apart(&d);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { stitches_and_their_mirror, proportion, floats_by_hand, no_room,
        refused_memory, chart_squares, chart_rows, many_sizes };
    return fixture_run("draw_fabric", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
