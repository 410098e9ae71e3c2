/* Trims parted into lengths: by hand, and by chance against what must hold.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lengths.h"

#include <stdlib.h>

#include "support.h"

static hw_arena arena;
static hw_check_heap heap;

static void setup(void)
{
    hw_check_open(&arena, &heap, 0, false);
}

static void teardown(void)
{
    hw_check_close(&arena, &heap);
}

enum { MOST = 3 };

/* One stitch for the seam at each end that meets another length. */
static const struct {
    int sts, needles;
    int repeat, gap, motifs, first_sts;
    int seam; /* 0: none */
    int hole; /* stitches below it, of 2; 0: none */
    int lengths[MOST];
} rows[] = {
    /* Twice 125; at a garment's seam behind 100; one behind 60 is further off than half of 125. */
    { 250, 200, 0, 0, 0, 0, 0, 0, { 126, 126 } },
    { 250, 200, 0, 0, 0, 0, 100, 0, { 101, 151 } },
    { 250, 200, 0, 0, 0, 0, 60, 0, { 126, 126 } },
    /* A hole behind 124 takes two stitches, and what is beside it is as bad: 123 or 127. */
    { 250, 200, 0, 0, 0, 0, 0, 124, { 124, 128 } },
    /* Three times 167; twice 199 is the most for two, a stitch more makes three. */
    { 501, 200, 0, 0, 0, 0, 0, 0, { 168, 169, 168 } },
    { 398, 200, 0, 0, 0, 0, 0, 0, { 200, 200 } },
    { 399, 200, 0, 0, 0, 0, 0, 0, { 134, 135, 134 } },
    /* Behind one stitch 25 figures of 7 and gaps of 3: their middles, a stitch further, are behind
     * 9, 19, ... 119, 129. 129 is nearest to 125, and 119 to a seam behind 117. */
    { 250, 200, 10, 3, 25, 1, 0, 0, { 130, 122 } },
    { 250, 200, 10, 3, 25, 1, 117, 0, { 120, 132 } },
    /* Without a gap where a figure ends. */
    { 250, 200, 10, 0, 25, 0, 0, 0, { 121, 131 } },
    /* Five figures of 58 and gaps of 2 on 40 needles cannot be parted. */
    { 298, 40, 60, 2, 5, 0, 0, 0, { 0 } },
};

START_TEST(by_hand)
{
    hw_hole hole = { .below_sts = rows[_i].hole };
    hw_holes holes = { .count = rows[_i].hole > 0, .holes = &hole, .hole_sts = 2 };
    const hw_lengths_task task = { .sts = rows[_i].sts,
        .needles = rows[_i].needles,
        .repeat = rows[_i].repeat,
        .gap = rows[_i].gap,
        .motifs = rows[_i].motifs,
        .first_sts = rows[_i].first_sts,
        .seams = &rows[_i].seam,
        .seam_count = rows[_i].seam > 0,
        .holes = &holes };
    hw_lengths made = { .count = 77 };
    int count = 0;
    ck_assert_int_eq(hw_lengths_find(&task, &arena, &made), HW_OK);
    for (; count < MOST && rows[_i].lengths[count] > 0; count++) {
        ck_assert_int_lt(count, made.count);
        ck_assert_msg(made.sts[count] == rows[_i].lengths[count], "length %d: %d", count + 1,
            made.sts[count]);
    }
    ck_assert_int_eq(made.count, count);
}
END_TEST

/* By chance: lengths are as long as the trim and the seams between them, the bed holds each, and
 * none parts a figure. */
START_TEST(by_chance)
{
    unsigned state = 5;
    int parted = 0;
    for (int round = 0; round < 2000; round++) {
        hw_holes holes = { .count = 0 };
        hw_lengths_task task = { .needles = 20 + 2 * hw_check_random(&state, 120),
            .repeat = hw_check_random(&state, 2) * (2 + hw_check_random(&state, 23)),
            .holes = &holes };
        task.gap = task.repeat > 0 ? hw_check_random(&state, task.repeat) : 0;
        task.sts = task.needles + 1 + hw_check_random(&state, 900);
        task.motifs = task.repeat > 0 ? (task.sts + task.gap) / task.repeat : 0;
        hw_lengths made = { .count = 77 };
        ck_assert_int_eq(hw_lengths_find(&task, &arena, &made), HW_OK);
        int sts = 0;
        for (int i = 0; i < made.count; i++) {
            ck_assert_int_le(made.sts[i], task.needles);
            sts += made.sts[i] - (i > 0) - (i + 1 < made.count);
            int in_figure = task.repeat > 0 ? sts % task.repeat : 0;
            ck_assert(i + 1 == made.count || in_figure == 0 || in_figure >= task.repeat - task.gap);
        }
        ck_assert(made.count == 0 || (made.count > 1 && sts == task.sts));
        ck_assert(made.count > 0 || task.repeat > 0); /* plain, it can always be parted */
        parted += made.count > 0;
    }
    ck_assert_int_gt(parted, 1500);
}
END_TEST

START_TEST(no_memory)
{
    const hw_holes holes = { .count = 0 };
    const hw_lengths_task task = { .sts = 250, .needles = 200, .holes = &holes };
    for (long n = 1; n <= 2; n++) {
        hw_arena room;
        hw_check_heap small;
        hw_check_open(&room, &small, n, false);
        hw_lengths made = { .count = 77 };
        ck_assert_int_eq(hw_lengths_find(&task, &room, &made), HW_ERR_NOMEM);
        ck_assert_int_eq(made.count, 77);
        hw_check_close(&room, &small);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("lengths");
    TCase *tcase = tcase_create("lengths");
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_add_loop_test(tcase, by_hand, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(tcase, by_chance);
    tcase_add_test(tcase, no_memory);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
