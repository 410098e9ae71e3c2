/* Steps of shaping in words: every kind and place, once, twice and more often.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/stepwords.h"

#include "support.h"

/* A step without what its words do not need. */
#define STEP(kind_, place_, every_, times_, sts_)                                                  \
    {                                                                                              \
        .kind = (kind_), .place = (place_), .every = (every_), .times = (times_), .sts = (sts_)    \
    }

/* The same, in a row. */
#define AT(row_, kind_, place_, every_, times_, sts_, left_)                                       \
    {                                                                                              \
        .row = (row_), .kind = (kind_), .place = (place_), .every = (every_), .times = (times_),   \
        .sts = (sts_), .left_sts = (left_)                                                         \
    }

typedef struct {
    hw_shape_step step;
    const char *words;
} spoken;

static void expect_words(const spoken *list, int count)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_shape_step steps[10];
    ck_assert_int_le(count, 10);
    for (int i = 0; i < count; i++) {
        steps[i] = list[i].step;
    }
    hw_shape_steps all = { .list = steps, .count = count };
    for (int i = 0; i < count; i++) {
        ck_assert_str_eq(hw_step_words(&all, i, 1, &arena), list[i].words);
    }
    hw_check_close(&arena, &heap);
}

/* Wording: own choice. */
START_TEST(changes)
{
    static const spoken list[] = {
        { STEP(HW_STEP_DECREASE, HW_AT_BOTH, 6, 5, 1),
            "decrease 1 stitch at each end in this row and every 6th row after it, 5 times in "
            "all" },
        { STEP(HW_STEP_INCREASE, HW_AT_LEFT, 1, 3, 1),
            "increase 1 stitch at the left edge in this row and each row after it, 3 times in "
            "all" },
        { STEP(HW_STEP_BIND_OFF, HW_AT_RIGHT, 2, 2, 4),
            "bind off 4 stitches at the right edge twice: in this row and 2 rows later" },
        { STEP(HW_STEP_DECREASE, HW_AT_NECK_BOTH, 1, 2, 1),
            "decrease 1 stitch at the neck edge of each half twice: in this row and the next" },
        { STEP(HW_STEP_CAST_ON, HW_AT_LEFT, 0, 1, 7), "cast on 7 stitches at the left edge" },
        { STEP(HW_STEP_DIVIDE, HW_AT_MIDDLE, 0, 1, 21),
            "bind off 21 stitches in the middle; from here on work each half by itself" },
        { STEP(HW_STEP_DIVIDE, HW_AT_MIDDLE, 0, 1, 0),
            "part the piece in the middle; from here on work each half by itself" },
        { { .kind = HW_STEP_DIVIDE, .place = HW_AT_MIDDLE, .times = 1, .sts = 1, .slit = true },
            "bind off 1 stitch in the middle, where the slit begins; from here on work each half "
            "by itself" },
        { STEP(HW_STEP_END, HW_AT_BOTH, 0, 1, 8),
            "bind off the last 8 stitches of each half, or keep them for the seam" },
    };
    expect_words(list, 9);
}
END_TEST

/* Wording: own choice. Stitches that were left unworked come back at their own edge alone. */
START_TEST(short_rows)
{
    static const spoken list[] = {
        { STEP(HW_STEP_HOLD, HW_AT_LEFT, 0, 1, 1), "leave 1 stitch unworked at the left edge" },
        { STEP(HW_STEP_HOLD, HW_AT_LEFT, 2, 2, 4),
            "leave 4 more stitches unworked at the left edge twice: in this row and 2 rows "
            "later" },
        { STEP(HW_STEP_BACK, HW_AT_LEFT, 0, 1, 9),
            "work to the end of this row, over the 9 stitches left unworked at the left edge too" },
        { STEP(HW_STEP_BACK, HW_AT_RIGHT, 0, 1, 1),
            "work to the end of this row, over the 1 stitch left unworked at the right edge too" },
        { STEP(HW_STEP_END, HW_AT_LEFT, 0, 1, 13),
            "bind off the last 13 stitches of the left half, or keep them for the seam" },
        { STEP(HW_STEP_END, HW_AT_RIGHT, 0, 1, 1),
            "bind off the last stitch of the right half, or keep it for the seam" },
    };
    expect_words(list, 6);
}
END_TEST

/* Rows are counted from 101 on. "Bind off so many at the start of the next rows" and "alternately
 * every 5th and 6th row": as patterns are worded, common practice, no source. */
START_TEST(steps_together)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_shape_step list[] = {
        AT(0, HW_STEP_BIND_OFF, HW_AT_LEFT, 0, 1, 7, 93),
        AT(1, HW_STEP_BIND_OFF, HW_AT_RIGHT, 0, 1, 7, 86),
        AT(2, HW_STEP_BIND_OFF, HW_AT_RIGHT, 4, 2, 3, 77),
        AT(3, HW_STEP_BIND_OFF, HW_AT_LEFT, 4, 2, 3, 74),
        AT(10, HW_STEP_DECREASE, HW_AT_BOTH, 11, 3, 1, 66),
        AT(15, HW_STEP_DECREASE, HW_AT_BOTH, 11, 3, 1, 62),
        AT(50, HW_STEP_BIND_OFF, HW_AT_LEFT, 0, 1, 2, 60),
        AT(51, HW_STEP_BIND_OFF, HW_AT_RIGHT, 0, 1, 3, 57),
    };
    hw_shape_steps steps = { .list = list, .count = 8 };
    static const int leads[] = { 0, 0, 2, 2, 4, 4, 6, 7 };
    for (int i = 0; i < steps.count; i++) {
        ck_assert_int_eq(hw_step_lead(&steps, i), leads[i]);
    }
    ck_assert_str_eq(hw_step_words(&steps, 0, 101, &arena),
        "bind off 7 stitches at the start of the next 2 rows");
    ck_assert_int_eq(hw_step_left(&steps, 0).sts, 86);
    ck_assert_int_eq(hw_step_left(&steps, 0).row, 1);
    ck_assert_str_eq(hw_step_words(&steps, 2, 101, &arena),
        "bind off 3 stitches at the start of rows 103, 104, 107 and 108");
    ck_assert_str_eq(hw_step_words(&steps, 4, 101, &arena),
        "decrease 1 stitch at each end in row 111 and then alternately every 5th row and every "
        "6th row, 6 times in all, the last in row 138");
    ck_assert_int_eq(hw_step_left(&steps, 4).sts, 62);
    ck_assert_int_eq(hw_step_left(&steps, 4).row, 15 + 2 * 11);
    ck_assert_str_eq(hw_step_words(&steps, 6, 101, &arena), "bind off 2 stitches at the left edge");
    hw_check_close(&arena, &heap);
}
END_TEST

/* Rows told by distances that begin again; by hand. */
START_TEST(distances_in_turn)
{
    static const struct {
        int rows[8], count;
        const char *words;
    } list[] = {
        { { 24, 29, 34, 40, 45, 50, 56 }, 7,
            " in row 24 and then again and again every 5th row twice and every 6th row once, 7 "
            "times in all, the last in row 56" },
        { { 10, 13, 17, 21, 25, 28, 32, 36 }, 8,
            " in rows 10, 13, 17, 21, 25, 28, 32 and 36, 8 times in all" },
        { { 3, 6, 8, 10, 13, 15, 17 }, 7,
            " in row 3 and then again and again every 3rd row once and every 2nd row twice, 7 "
            "times in all, the last in row 17" },
        { { 3, 4, 6, 7, 9 }, 5, " in rows 3, 4, 6, 7 and 9, 5 times in all" },
        { { 3, 5, 8, 10, 13 }, 5,
            " in row 3 and then alternately every 2nd row and every 3rd row, 5 times in all, the "
            "last in row 13" },
        { { 3, 5, 7, 9, 11 }, 5,
            " in row 3 and every 2nd row after it, 5 times in all, the last in row 11" },
    };
    for (size_t i = 0; i < sizeof list / sizeof list[0]; i++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_buf buf;
        hw_check_open(&arena, &heap, 0, false);
        hw_buf_init(&buf, &arena.mem, HW_BUF_LIMIT);
        hw_step_say_rows(list[i].rows, list[i].count, &buf);
        ck_assert_str_eq(hw_buf_keep(&buf, &arena), list[i].words);
        hw_buf_release(&buf);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { changes, short_rows, steps_together, distances_in_turn };
    return hw_check_run(hw_check_suite("stepwords", tests, sizeof tests / sizeof tests[0]));
}
