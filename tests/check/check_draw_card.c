/* The punch card drawn: laid out with a ruler by hand, and every hole found on the page.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source: arithmetic by hand on invented measures. To 1e-9 mm. */
#include <math.h>
#include <string.h>

#include "fixture.h"
#include "write/draw.h"

static const double near_mm = 1e-9;
static hw_machine machine;
static hw_motif motif;
static hw_card card;
static hw_draw_card_task task;

/* `oo.` over `o..` with a gap of 1 on 8 columns, the first figure from column 2: twice for a loop
 * of 3 rows, with one joining row at both ends, is oooooooo / ..oo..oo / ...o...o / ..oo..oo /
 * ...o...o / oooooooo from the top down: 28 holes. A card 100 mm wide, holes 10 mm apart, rows 6
 * mm. */
static void setup(void)
{
    static const unsigned char cells[] = { 1, 1, 0, 1, 0, 0 };
    hw_chart chart = { .name = "hook", .width = 3, .rows = 2, .cells = cells };
    machine = (hw_machine){ .card_columns = 8,
        .longest_float = 5,
        .blank = { .rows = 12,
            .least_loop_rows = 3,
            .joining_rows = 1,
            .hole_pitch_cm = 1,
            .row_pitch_cm = 0.6,
            .width_cm = 10 } };
    ck_assert_int_eq(hw_motif_analyse(&chart, 1, 8, &arena, &motif), HW_OK);
    ck_assert_int_eq(hw_card_make(&(hw_card_task){ &motif, &machine, 1 }, &arena, &card), HW_OK);
    task = (hw_draw_card_task){ .title = "hook",
        .card = &card,
        .blank = &machine.blank,
        .first = 0,
        .last = 5,
        .room = { 190, 277 } };
}

static hw_drawing drawn(void)
{
    hw_drawing d;
    ck_assert_int_eq(hw_draw_card(&task, &arena, &d, NULL), HW_OK);
    return d;
}

static int shapes(const hw_drawing *d, hw_drawn_kind kind, hw_look look)
{
    int count = 0;
    for (int i = 0; i < d->count; i++) {
        count += d->list[i].kind == kind && d->list[i].look == look;
    }
    return count;
}

/* The left (0) or right (1) edge of the card: its upper end. */
static hw_point edge(const hw_drawing *d, int which)
{
    for (int i = 0; i < d->count; i++) {
        if (d->list[i].kind == HW_DRAWN_LINE && d->list[i].look == HW_LOOK_OUTLINE &&
            which-- == 0) {
            return d->list[i].at;
        }
    }
    ck_abort_msg("no edge");
    return (hw_point){ 0, 0 };
}

/* The hole whose middle lies so far from the card's upper left corner; its radius, or 0. */
static double hole_at(const hw_drawing *d, double x_mm, double y_mm)
{
    hw_point corner = edge(d, 0);
    for (int i = 0; i < d->count; i++) {
        const hw_drawn *s = &d->list[i];
        if (s->kind == HW_DRAWN_DISC && fabs(s->at.x_mm - corner.x_mm - x_mm) < near_mm &&
            fabs(s->at.y_mm - corner.y_mm - y_mm) < near_mm) {
            return s->radius_mm;
        }
    }
    return 0;
}

/* Columns lie at 15, 25, ... 85 mm, rows at 3, 9, ... 33 mm. A hole is half of 6 mm wide. */
START_TEST(to_the_ruler)
{
    static const char *const rows[] = { "oooooooo", "..oo..oo", "...o...o", "..oo..oo", "...o...o",
        "oooooooo" };
    hw_drawing d = drawn();
    ck_assert_double_eq_tol(edge(&d, 1).x_mm - edge(&d, 0).x_mm, 100, near_mm);
    ck_assert_int_eq(shapes(&d, HW_DRAWN_DISC, HW_LOOK_SOLID), 28);
    for (int behind = 0; behind < 2; behind++) {
        task.behind = behind == 1;
        d = drawn();
        for (int r = 0; r < 6; r++) {
            for (int c = 0; c < 8; c++) {
                char sign = rows[r][behind == 1 ? 7 - c : c];
                double radius_mm = hole_at(&d, 15 + 10 * c, 3 + 6 * r);
                ck_assert_double_eq_tol(radius_mm, sign == 'o' ? 1.5 : 0, near_mm);
            }
        }
    }
    ck_assert_int_eq(shapes(&d, HW_DRAWN_RECT, HW_LOOK_SHADE), 2); /* both joining rows */
    ck_assert_int_eq(shapes(&d, HW_DRAWN_LINE, HW_LOOK_CUT), 2);
    ck_assert_int_eq(shapes(&d, HW_DRAWN_LINE, HW_LOOK_DASHED), 1); /* the middle */
    machine.blank.hole_cm = 0.35;
    d = drawn();
    ck_assert_double_eq_tol(hole_at(&d, 15, 3), 1.75, near_mm);
}
END_TEST

static const hw_drawn *words(const hw_drawing *d, const char *text)
{
    for (int i = 0; i < d->count; i++) {
        if (d->list[i].kind == HW_DRAWN_WORDS && strcmp(d->list[i].text, text) == 0) {
            return &d->list[i];
        }
    }
    return NULL;
}

/* Row 1 is the second from below: beside the place 27 mm down. The columns have their numbers. */
START_TEST(numbers)
{
    hw_drawing d = drawn();
    const hw_drawn *one = words(&d, "1");
    const hw_drawn *four = words(&d, "4");
    ck_assert(one != NULL && four != NULL && words(&d, "joins") != NULL);
    ck_assert_double_eq_tol(one->at.y_mm - four->at.y_mm, 18, near_mm);
    ck_assert_double_eq_tol(one->at.y_mm - edge(&d, 0).y_mm, 27, 1.5);
    ck_assert_double_lt(one->at.x_mm, edge(&d, 0).x_mm);
    const hw_drawn *eight = words(&d, "8");
    ck_assert_ptr_nonnull(eight);
    ck_assert_double_eq_tol(eight->at.x_mm - edge(&d, 0).x_mm, 85, near_mm);
    task.behind = true;
    d = drawn();
    eight = words(&d, "8");
    ck_assert_double_eq_tol(eight->at.x_mm - edge(&d, 0).x_mm, 15, near_mm);
}
END_TEST

/* The line by which the print is checked is as long as it says. */
START_TEST(five_centimetres)
{
    hw_drawing d = drawn();
    int found = 0;
    for (int i = 0; i < d.count; i++) {
        const hw_drawn *s = &d.list[i];
        if (s->kind == HW_DRAWN_LINE && s->look == HW_LOOK_THIN &&
            fabs(s->at.y_mm - s->to.y_mm) < near_mm) {
            ck_assert_double_eq_tol(s->to.x_mm - s->at.x_mm, 50, near_mm);
            found++;
        }
    }
    ck_assert_int_eq(found, 1);
    ck_assert_ptr_nonnull(words(&d, "5 cm: if it is not, print at 100 %"));
}
END_TEST

/* Rows 2 to 4 of 6 are cut nowhere: a dashed line above, one below, and the middle. */
START_TEST(part_of_a_card)
{
    task.first = 1;
    task.last = 3;
    hw_drawing d = drawn();
    ck_assert_int_eq(shapes(&d, HW_DRAWN_DISC, HW_LOOK_SOLID), 2 + 4 + 2);
    ck_assert_int_eq(shapes(&d, HW_DRAWN_LINE, HW_LOOK_CUT), 0);
    ck_assert_int_eq(shapes(&d, HW_DRAWN_LINE, HW_LOOK_DASHED), 3);
    ck_assert_double_gt(hole_at(&d, 45, 3), 0);
    task.first = 0;
    d = drawn();
    ck_assert_int_eq(shapes(&d, HW_DRAWN_LINE, HW_LOOK_CUT), 1);
}
END_TEST

/* What is drawn lies on the page, and a row more than there is room for is refused. */
START_TEST(room_on_the_paper)
{
    hw_err err = { 0 };
    int most = 0;
    for (double height_mm = 30; height_mm < 120; height_mm += 1.5) {
        task.room.height_mm = height_mm;
        most = hw_draw_card_rows(&machine.blank, &task.room);
        for (task.last = 0; task.last < 6; task.last++) {
            hw_drawing d = { .count = -7 };
            hw_status status = hw_draw_card(&task, &arena, &d, NULL);
            ck_assert_int_eq(status, task.last + 1 <= most ? HW_OK : HW_ERR_RANGE);
            ck_assert(status != HW_OK || d.height_mm <= height_mm + near_mm);
            ck_assert(status == HW_OK || d.count == -7);
        }
    }
    ck_assert_int_gt(most, 6);
    task.last = 5;
    task.room.height_mm = 40;
    hw_drawing d;
    ck_assert_int_eq(hw_draw_card(&task, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "6 rows of the card are too high"));
    task.room = (hw_draw_room){ 110, 277 };
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_draw_card(&task, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "a card 100 mm wide"));
}
END_TEST

/* None of the three was found in a source: none is guessed. */
START_TEST(not_measured)
{
    double *const measures[] = { &machine.blank.hole_pitch_cm, &machine.blank.row_pitch_cm,
        &machine.blank.width_cm };
    for (int i = 0; i < 3; i++) {
        double was = *measures[i];
        hw_err err = { 0 };
        hw_drawing d = { .count = -7 };
        *measures[i] = 0;
        ck_assert_int_eq(hw_draw_card(&task, &arena, &d, &err), HW_ERR_MISSING);
        ck_assert(hw_check_says(&err, HW_ERR_MISSING, "measure yours"));
        ck_assert_int_eq(d.count, -7);
        ck_assert_int_eq(hw_draw_card_rows(&machine.blank, &task.room), 0);
        *measures[i] = was;
    }
}
END_TEST

static hw_status draw(hw_arena *room)
{
    hw_drawing d = { .count = -7 };
    hw_status status = hw_draw_card(&task, room, &d, NULL);
    ck_assert(status == HW_OK || d.count == -7);
    return status;
}

START_TEST(memory_refused)
{
    ck_assert_int_gt(hw_check_refusals(draw, false), 9);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { to_the_ruler, numbers, five_centimetres, part_of_a_card,
        room_on_the_paper, not_measured, memory_refused };
    return fixture_run("draw_card", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
