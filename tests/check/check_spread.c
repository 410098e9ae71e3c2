/* Even spreads: published answers, and the promise of the header over many counts.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/spread.h"
#include "support.h"

typedef struct {
    int count, over;
    int every, times, more_times;
} answer;

static const answer answers[] = {
    /* S2: 42 increases over 176 rows, every 4th row 34 times then every 5th 8 times;
     * http://designyourownsweater.blogspot.com/2007/01/sleeve.html */
    { 42, 176, 4, 34, 8 },
    /* E2: 17 decreases over 55 stitches, every 4th 4 times and every 3rd 13 times;
     * https://papermoonknits.com/musings/math-monday-decreasing-across-a-rowround */
    { 17, 55, 3, 13, 4 },
    /* E4: 16 increases over 112 stitches, every 7th; the page of E2's part on increases */
    { 16, 112, 7, 16, 0 },
    /* E5: 39 decreases over 131 stitches, threes would use 117 and leave 14 to spread;
     * http://spincraftpatterns.com/content/decrease-evenly-across-row */
    { 39, 131, 3, 25, 14 },
    /* E6: 10 decreases over 30 stitches, every 3rd;
     * https://issuhub.com/view/index/4587?pageIndex=76 */
    { 10, 30, 3, 10, 0 },
    /* E7: 6 increases over 60 stitches, every 10th;
     * https://neasesneedlework.com/embroider/how-do-you-reduce-stitches-evenly-in-a-row.html */
    { 6, 60, 10, 6, 0 },
    /* E8: 16 decreases over 100 stitches, 100/16 = 6.25 (page of E7): a quarter of them wait for
     * the 7th, by hand: 12 * 6 + 4 * 7 = 100 */
    { 16, 100, 6, 12, 4 },
    /* E9: 16 decreases over 56 stitches, 3.5 for each, 8 left over from 16 * 3;
     * http://knittingwithkarma.blogspot.com/2011/06/knitting-math-5-increases-and-decreases.html */
    { 16, 56, 3, 8, 8 },
    /* S7: 44 stitches in fours are 11 shaping rows, every 12th row over the first 132 of 136;
     * https://vickieshouse1.wordpress.com/2013/07/ */
    { 11, 132, 12, 11, 0 },
};
enum { ANSWERS = sizeof answers / sizeof answers[0] };

START_TEST(published_answers)
{
    for (int i = 0; i < ANSWERS; i++) {
        const answer *want = &answers[i];
        hw_spread spread = { 0 };
        ck_assert_int_eq(hw_spread_steps(want->count, want->over, &spread, NULL), HW_OK);
        ck_assert_int_eq(spread.count, want->count);
        ck_assert_int_eq(spread.over, want->over);
        ck_assert_int_eq(spread.every, want->every);
        ck_assert_int_eq(spread.times, want->times);
        ck_assert_int_eq(spread.more_times, want->more_times);
    }
}
END_TEST

/* E4: the first of 16 increases over 112 stitches falls at 3.5, so behind 3 plain stitches, and the
 * others follow every 7th (the published page; that 3.5 goes down to 3 is the header's rule). */
START_TEST(published_first_place)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_spread spread = { 0 };
    int *positions = NULL;
    ck_assert_int_eq(hw_spread_steps(16, 112, &spread, NULL), HW_OK);
    ck_assert_int_eq(hw_spread_positions(&spread, &arena, &positions), HW_OK);
    for (int k = 0; k < 16; k++) {
        ck_assert_int_eq(positions[k], 3 + 7 * k);
    }
    hw_check_close(&arena, &heap);
}
END_TEST

/* The promise: the steps use up the row; gaps, the one round the row's ends too, differ by at most
 * one, and are the steps' two lengths, so many times each. Every count over 1 to 120 stitches. */
START_TEST(gaps_differ_by_at_most_one)
{
    for (int over = 1; over <= 120; over++) {
        for (int count = 1; count <= over; count++) {
            hw_arena arena;
            hw_check_heap heap;
            hw_check_open(&arena, &heap, 0, false);
            hw_spread spread = { 0 };
            int *at = NULL;
            ck_assert_int_eq(hw_spread_steps(count, over, &spread, NULL), HW_OK);
            ck_assert_int_eq(spread.times + spread.more_times, count);
            ck_assert_int_gt(spread.times, 0);
            int used = spread.times * spread.every + spread.more_times * (spread.every + 1);
            ck_assert_int_eq(used, over);
            ck_assert_int_eq(hw_spread_positions(&spread, &arena, &at), HW_OK);
            int longer = 0;
            for (int k = 0; k < count; k++) {
                int next = k + 1 < count ? at[k + 1] : at[0] + over;
                int gap = next - at[k];
                ck_assert(gap == spread.every || gap == spread.every + 1);
                longer += gap == spread.every + 1 ? 1 : 0;
                ck_assert(at[k] >= 0 && at[k] < over);
            }
            ck_assert_int_eq(longer, spread.more_times);
            /* half a gap at each end, to a stitch: the changes themselves stand between stitches */
            int ends = at[0] - (over - at[count - 1]);
            ck_assert(ends >= -2 && ends <= 1);
            hw_check_close(&arena, &heap);
        }
    }
}
END_TEST

START_TEST(refusals)
{
    static const int bad[][2] = { { 0, 10 }, { 11, 10 }, { -1, 10 }, { 1, 0 },
        { 1, HW_MAX_STS + HW_MAX_ROWS + 1 } };
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        hw_err err = { 0 };
        hw_spread spread = { .count = 77 };
        ck_assert_int_eq(hw_spread_steps(bad[i][0], bad[i][1], &spread, &err), HW_ERR_RANGE);
        ck_assert(hw_check_says(&err, HW_ERR_RANGE, "spread over"));
        ck_assert_int_eq(spread.count, 77);
    }
    hw_err err = { 0 };
    hw_spread none = { 0 };
    ck_assert_int_eq(hw_spread_steps(1, 7001, &none, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "between 1 and 7000"));
    /* the widest that is allowed: no product overflows */
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    int most = HW_MAX_STS + HW_MAX_ROWS;
    hw_spread spread = { 0 };
    int *at = NULL;
    ck_assert_int_eq(hw_spread_steps(most, most, &spread, NULL), HW_OK);
    ck_assert_int_eq(hw_spread_positions(&spread, &arena, &at), HW_OK);
    ck_assert_int_eq(at[most - 1], most - 1);
    hw_check_close(&arena, &heap);
}
END_TEST

START_TEST(no_memory)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 1, false);
    hw_spread spread = { 0 };
    int kept = 5;
    int *at = &kept;
    ck_assert_int_eq(hw_spread_steps(3, 10, &spread, NULL), HW_OK);
    ck_assert_int_eq(hw_spread_positions(&spread, &arena, &at), HW_ERR_NOMEM);
    ck_assert_ptr_eq(at, &kept);
    ck_assert_int_eq(heap.grabs, 1);
    hw_check_close(&arena, &heap);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { published_answers, published_first_place,
        gaps_differ_by_at_most_one, refusals, no_memory };
    return hw_check_run(hw_check_suite("spread", tests, sizeof tests / sizeof tests[0]));
}
