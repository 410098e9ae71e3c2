/* Drawings: shapes come out as they went in, failures are kept, looks print in grey.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "drawn.h"
#include "support.h"

static hw_arena arena;
static hw_check_heap heap;

START_TEST(shapes_in_order)
{
    hw_check_open(&arena, &heap, 0, false);
    hw_drawing d;
    hw_drawing_begin(&d, &arena, "shapes");
    const hw_point points[] = { { 1, 2 }, { 3, 4 }, { 5, 0 } };
    hw_drawing_rect(&d, HW_LOOK_SHADE, (hw_point){ 1, 1 }, (hw_point){ 4, 6 });
    hw_drawing_line(&d, HW_LOOK_THIN, (hw_point){ 0, 0 }, (hw_point){ 9, 9 });
    hw_drawing_pen(&d, 0.7);
    hw_drawing_polyline(&d, HW_LOOK_OUTLINE, points, 3);
    hw_drawing_polygon(&d, HW_LOOK_PIECE, points, 3);
    hw_drawing_pen(&d, 0);
    hw_drawing_disc(&d, HW_LOOK_SOLID, (hw_point){ 7, 8 }, 2.5);
    hw_drawing_words(&d, HW_LOOK_NAME, (hw_point){ 1, 9 }, HW_ALIGN_END, "back");
    hw_drawing_size(&d, 20, 30);
    ck_assert_int_eq(hw_drawing_status(&d), HW_OK);
    ck_assert_int_eq(d.count, 6);
    for (int i = 0; i <= HW_DRAWN_DISC; i++) {
        ck_assert_int_eq(d.list[i].kind, i); /* they were added in the order of the kinds */
    }
    ck_assert_double_eq_tol(d.list[1].line_mm, 0, 1e-12);
    ck_assert_double_eq_tol(d.list[2].line_mm, 0.7, 1e-12);
    ck_assert_double_eq_tol(d.list[3].line_mm, 0.7, 1e-12);
    ck_assert_double_eq_tol(d.list[4].line_mm, 0, 1e-12);
    ck_assert(d.list[2].points != points && d.list[2].count == 3);
    ck_assert_double_eq_tol(d.list[2].points[2].x_mm, 5, 1e-12);
    ck_assert_double_eq_tol(d.list[4].radius_mm, 2.5, 1e-12);
    ck_assert_str_eq(d.list[5].text, "back");
    ck_assert_int_eq(d.list[5].align, HW_ALIGN_END);
    hw_check_close(&arena, &heap);
}
END_TEST

/* More shapes than any first room holds stay as they were. */
START_TEST(many_shapes)
{
    hw_check_open(&arena, &heap, 0, false);
    hw_drawing d;
    hw_drawing_begin(&d, &arena, "many");
    for (int i = 0; i < 5000; i++) {
        hw_drawing_disc(&d, HW_LOOK_SOLID, (hw_point){ i, -i }, 1);
    }
    ck_assert_int_eq(hw_drawing_status(&d), HW_OK);
    ck_assert_int_eq(d.count, 5000);
    for (int i = 0; i < 5000; i++) {
        ck_assert_double_eq_tol(d.list[i].at.x_mm, i, 1e-12);
    }
    hw_check_close(&arena, &heap);
}
END_TEST

/* From the header: what is not finite, or far out, ends the drawing; nothing is added after. */
START_TEST(bad_numbers)
{
    const double bad[] = { NAN, INFINITY, -INFINITY, 100001 };
    for (size_t i = 0; i < 4 * sizeof bad / sizeof bad[0]; i++) {
        double x = bad[i / 4];
        hw_check_open(&arena, &heap, 0, false);
        hw_drawing d;
        hw_drawing_begin(&d, &arena, "bad");
        const hw_point points[] = { { 1, 2 }, { 3, x } };
        if (i % 4 == 0) {
            hw_drawing_line(&d, HW_LOOK_THIN, (hw_point){ 0, 0 }, (hw_point){ 1, x });
        } else if (i % 4 == 1) {
            hw_drawing_polyline(&d, HW_LOOK_THIN, points, 2);
        } else if (i % 4 == 2) {
            hw_drawing_disc(&d, HW_LOOK_THIN, (hw_point){ 0, 0 }, x);
        } else {
            hw_drawing_size(&d, 10, x);
        }
        ck_assert_int_eq(hw_drawing_status(&d), HW_ERR_RANGE);
        hw_drawing_disc(&d, HW_LOOK_THIN, (hw_point){ 0, 0 }, 1);
        ck_assert_int_eq(d.count, 0);
        ck_assert_int_eq(hw_drawing_status(&d), HW_ERR_RANGE);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

START_TEST(refused_memory)
{
    for (int at = 1; at <= 2; at++) {
        hw_check_open(&arena, &heap, at, true);
        hw_drawing d;
        hw_drawing_begin(&d, &arena, "poor");
        const hw_point points[] = { { 1, 2 }, { 3, 4 } };
        hw_drawing_polygon(&d, HW_LOOK_THIN, points, 2);
        ck_assert_int_eq(hw_drawing_status(&d), HW_ERR_NOMEM);
        ck_assert_int_eq(d.count, 0);
        hw_check_close(&arena, &heap);
    }
    hw_check_open(&arena, &heap, 0, false);
    hw_drawing d;
    hw_drawing_begin(&d, &arena, NULL);
    ck_assert_int_eq(hw_drawing_status(&d), HW_ERR_NOMEM);
    hw_drawing_begin(&d, &arena, "words");
    hw_drawing_words(&d, HW_LOOK_WORDS, (hw_point){ 0, 0 }, HW_ALIGN_START, NULL);
    ck_assert_int_eq(hw_drawing_status(&d), HW_ERR_NOMEM);
    hw_check_close(&arena, &heap);
}
END_TEST

/* Rec. ITU-R BT.601: grey is 0.299 red + 0.587 green + 0.114 blue (from memory). */
static double grey(unsigned ink)
{
    return 0.299 * (ink >> 16 & 255U) + 0.587 * (ink >> 8 & 255U) + 0.114 * (ink & 255U);
}

/* On a grey printer the colours must stay apart by half of the way from black to white, own
 * choice: contrast dark, background light. */
START_TEST(looks_print_in_grey)
{
    ck_assert_double_gt(grey(hw_look_of(HW_LOOK_BACKGROUND_STITCH)->line),
        grey(hw_look_of(HW_LOOK_CONTRAST_STITCH)->line) + 128);
    ck_assert_double_gt(grey(hw_look_of(HW_LOOK_BACKGROUND_BUMP)->line),
        grey(hw_look_of(HW_LOOK_CONTRAST_BUMP)->line) + 128);
    ck_assert_double_gt(grey(hw_look_of(HW_LOOK_BACKGROUND_FLOAT)->line),
        grey(hw_look_of(HW_LOOK_CONTRAST_FLOAT)->line) + 128);
    ck_assert_double_gt(grey(hw_look_of(HW_LOOK_BACKGROUND_SQUARE)->fill),
        grey(hw_look_of(HW_LOOK_CONTRAST_SQUARE)->fill) + 128);
}
END_TEST

/* Each look has a name of its own, and a line, a fill or letters. */
START_TEST(looks_are_whole)
{
    for (int i = 0; i < HW_LOOK_COUNT; i++) {
        const hw_look_style *look = hw_look_of((hw_look)i);
        ck_assert_ptr_nonnull(look->name);
        ck_assert(look->filled || look->line_mm > 0);
        ck_assert(look->font_mm > 0 ? look->filled : !look->bold);
        ck_assert_int_eq(look->font_mm > 0, i >= HW_LOOK_TITLE);
        for (int j = 0; j < i; j++) {
            ck_assert_str_ne(look->name, hw_look_of((hw_look)j)->name);
        }
    }
}
END_TEST

/* By hand: 5 letters of 0.6 x 2.6 mm, an umlaut being one. */
START_TEST(widths)
{
    ck_assert_double_eq_tol(hw_look_width_mm(HW_LOOK_SMALL, "sleev"), 7.8, 1e-9);
    ck_assert_double_eq_tol(hw_look_width_mm(HW_LOOK_SMALL, "\xc3\xa4rmel"), 7.8, 1e-9);
    ck_assert_double_eq_tol(hw_look_width_mm(HW_LOOK_SMALL, ""), 0, 1e-12);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { shapes_in_order, many_shapes, bad_numbers, refused_memory,
        looks_print_in_grey, looks_are_whole, widths };
    return hw_check_run(hw_check_suite("drawing", tests, sizeof tests / sizeof tests[0]));
}
