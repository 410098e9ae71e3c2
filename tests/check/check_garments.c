/* The command `garment`: a garment file of one's own looked over and drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "room.h"
#include "shell/draw.h"
#include "write/drawing.h"

/* Invented: a back of 40 cm by 50 cm, with an edging up its left edge. */
static const char vest[] = "title: Vest\n"
                           "finished:\n"
                           "  chest: {is: 80 cm}\n"
                           "  length: {is: 50 cm}\n"
                           "pieces:\n"
                           "  back:\n"
                           "    band width: 0.5 x finished chest\n"
                           "    outline:\n"
                           "      right:\n"
                           "        - {across: 0.25 x chest, up: length}\n"
                           "  front:\n"
                           "    band width: 0.5 x finished chest\n"
                           "    outline:\n"
                           "      right:\n"
                           "        - {across: 0.25 x chest, up: length - 2 cm}\n"
                           "joins: [back left side to front right side]\n"
                           "trims:\n"
                           "  edging: {along: back left, depth: 3 cm}\n";

static hw_opts opts;
static hw_err err;
static char paths[2][ROOM_PATH];

static void setup(void)
{
    room_data();
    opts = (hw_opts){ .args = { room_path("own.yaml", paths[0]) } };
    opts.values[HW_OPT_SAVE] = room_path("own.svg", paths[1]);
    err = (hw_err){ 0 };
}

static hw_status look(const char *text)
{
    room_put("own.yaml", text);
    return hw_draw_garment(&opts, &arena, &buf, &err);
}

static const char *drawn(void)
{
    hw_io_text text = { .text = "" };
    ck_assert_int_eq(hw_io_read(paths[1], &arena, 1 << 20, &text, NULL), HW_OK);
    return text.text;
}

/* By hand: the edges are 2 cm apart where 1 cm is allowed, in each size alike. */
START_TEST(looked_over)
{
    ck_assert_int_eq(look(vest), HW_OK);
    ck_assert_ptr_nonnull(strstr(buf.text, "  chest: 80, 80, "));
    ck_assert_ptr_nonnull(strstr(buf.text,
        "  back left side to front right side, within 1 cm: does not close; furthest off 2 cm, in "
        "size "));
    ck_assert_ptr_nonnull(strstr(buf.text, "Some edges do not close"));
    ck_assert_ptr_nonnull(strstr(buf.text, "Written: "));
    const char *text = drawn();
    ck_assert_ptr_nonnull(strstr(text, ">40 cm<"));
    ck_assert_ptr_nonnull(strstr(text, ">50 cm<"));
    ck_assert_ptr_nonnull(strstr(text, ">48 cm<"));
    ck_assert_ptr_nonnull(strstr(text, ">edging<"));
}
END_TEST

/* How far the points of a polygon reach, in mm. */
static hw_point reach(const char *points)
{
    hw_point low = { HUGE_VAL, HUGE_VAL };
    hw_point high = { -HUGE_VAL, -HUGE_VAL };
    while (*points != '"') {
        char *end = NULL;
        double x_mm = strtod(points, &end);
        ck_assert(*end == ',');
        double y_mm = strtod(end + 1, &end);
        low = (hw_point){ fmin(low.x_mm, x_mm), fmin(low.y_mm, y_mm) };
        high = (hw_point){ fmax(high.x_mm, x_mm), fmax(high.y_mm, y_mm) };
        points = end + (*end == ' ');
    }
    return (hw_point){ high.x_mm - low.x_mm, high.y_mm - low.y_mm };
}

/* By hand: one strip, 3 cm wide and as long as the back's edge, 50 cm; the front's has 48. */
START_TEST(a_trim)
{
    static const char scale_words[] = ">scale 1 : ";
    static const char strip[] = "<g class=\"shade\"";
    static const char points[] = "<polygon points=\"";
    ck_assert_int_eq(look(vest), HW_OK);
    const char *text = drawn();
    const char *at = strstr(text, scale_words);
    ck_assert_ptr_nonnull(at);
    double mm_in_cm = 10 / strtod(at + strlen(scale_words), NULL);
    at = strstr(text, strip);
    ck_assert_ptr_nonnull(at);
    ck_assert_ptr_null(strstr(at + 1, strip));
    at = strstr(at, points);
    ck_assert_ptr_nonnull(at);
    hw_point size = reach(at + strlen(points));
    ck_assert_double_eq_tol(size.x_mm / mm_in_cm, 3, 0.01);
    ck_assert_double_eq_tol(size.y_mm / mm_in_cm, 50, 0.01);
}
END_TEST

/* A size that the table does not have, and one that it has (data/sizes/children.yaml). */
START_TEST(one_size)
{
    opts.values[HW_OPT_SIZE] = "4 years";
    ck_assert_int_eq(look(vest), HW_OK);
    ck_assert_ptr_nonnull(strstr(drawn(), "Vest, size 4 years<"));
    opts.values[HW_OPT_REPLACE] = "";
    opts.values[HW_OPT_SIZE] = "4 yeas";
    ck_assert_int_eq(look(vest), HW_ERR_USAGE);
    ck_assert(hw_check_says(&err, HW_ERR_USAGE, "did you mean `4 years`?"));
}
END_TEST

START_TEST(nothing_to_draw)
{
    ck_assert_int_eq(look("title: Plain\nfinished: {chest: {is: 80 cm}}\n"
                          "pieces: {back: {band width: 0.5 x chest}}\n"),
        HW_OK);
    ck_assert_ptr_nonnull(strstr(buf.text, "names no edges that are sewn together"));
    ck_assert_ptr_nonnull(strstr(buf.text, "draws no outline, so there is nothing to draw"));
    ck_assert_int_eq(room_count(), 1); /* the garment's own file */
}
END_TEST

/* A corner below the fold is told with the file and the line of the corner. Nothing is
 * written, nor under a name that is no drawing's. */
START_TEST(faults)
{
    char *low = hw_arena_text(&arena, vest, strlen(vest));
    ck_assert_ptr_nonnull(low);
    memcpy(strstr(low, "length - 2 cm"), "length - 52cm", 13);
    ck_assert_int_eq(look(low), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "leads below the fold"));
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "`front`"));
    ck_assert_ptr_nonnull(strstr(err.where, "own.yaml"));
    ck_assert_int_eq(err.line, 15);
    ck_assert_int_eq(room_count(), 1);
    opts.values[HW_OPT_SAVE] = "own.pdf";
    err = (hw_err){ 0 };
    ck_assert_int_eq(look(vest), HW_ERR_USAGE);
    ck_assert(hw_check_says(&err, HW_ERR_USAGE, "let the name end in .svg"));
    ck_assert_int_eq(room_count(), 1);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { looked_over, a_trim, one_size, nothing_to_draw, faults };
    return fixture_run("garments", setup, room_close, tests, sizeof tests / sizeof tests[0]);
}
