/* Picking up: published ratios, counts by hand, and shares and ratios that come out exactly.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pickupwords.h"

#include <math.h>

#include "core/num.h"
#include "support.h"

static hw_pickup plan_of(const hw_pickup_task *task)
{
    hw_pickup plan = { 0 };
    ck_assert_int_eq(hw_pickup_plan(task, &plan, NULL), HW_OK);
    return plan;
}

static void check_words(const hw_pickup_share *share, const char *words, const char *even)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    ck_assert_str_eq(hw_pickup_words(share, &arena), words);
    ck_assert_str_eq(hw_pickup_even_words(share, &arena), even);
    hw_check_close(&arena, &heap);
}

/* Front edge of 20 in, 16 sts and 24 rows in 4 in: 120 rows, 80 sts, 2 of every 3 rows;
 * http://www.menwhoknit.com/community/?q=node/5359 */
START_TEST(published_front_edge)
{
    const double inch_cm = 2.54; /* the agreement of 1959 */
    const hw_pickup_edge edge = { .length_cm = 20 * inch_cm, .count = 120 };
    const hw_pickup_task task = {
        .edges = &edge,
        .edge_count = 1,
        .sts_per_10cm = 16 / (4 * inch_cm) * 10,
        .tolerance_cm = 0.1,
    };
    hw_pickup plan = plan_of(&task);
    ck_assert_int_eq(plan.chosen.sts, 80);
    ck_assert_int_eq(plan.below.sts, 80);
    ck_assert_int_eq(plan.above.sts, 80);
    ck_assert_double_eq_tol(plan.chosen.off_cm, 0, 1e-9);
    ck_assert(plan.inside && plan.level);
    ck_assert_int_eq(plan.share_count, 1);
    ck_assert_int_eq(plan.shares[0].ratio.simple.sts, 2);
    ck_assert_int_eq(plan.shares[0].ratio.simple.rows, 3);
    ck_assert_int_eq(plan.shares[0].ratio.extra_sts, 0);
    check_words(&plan.shares[0], "2 sts in every 3 rows", "2 sts in every 3 rows");
}
END_TEST

/* 20 sts and 26 rows in 4 in are 10 for 13, worked as 3 of 4, 3 of 4, 4 of 5;
 * https://kelbournewoolens.com/blog/2015/04/perfectly-picked-up-stitches/ */
START_TEST(published_ten_of_thirteen)
{
    for (int times = 1; times <= 20; times++) {
        hw_pickup_ratio ratio = hw_pickup_ratio_of(10 * times, 13 * times);
        ck_assert_int_eq(ratio.even[0].sts, 3);
        ck_assert_int_eq(ratio.even[0].rows, 4);
        ck_assert_int_eq(ratio.even[0].times, 2 * times);
        ck_assert_int_eq(ratio.even[1].sts, 4);
        ck_assert_int_eq(ratio.even[1].rows, 5);
        ck_assert_int_eq(ratio.even[1].times, times);
    }
}
END_TEST

/* Words by hand. 3 of 4 (and 2 of 3) are the usual ratios:
 * https://knotions.com/tutorial-typical-stitch-ratios-in-knitting/ . 91 over 122: 30 x 3 in 120
 * rows, 1 st and 2 rows left; of 122 rows 31 are left out, 122 = 31 x 3 + 29: 2 groups of 3 and 29
 * of 4. 75 over 100 comes out. */
START_TEST(words)
{
    static const struct {
        int sts, rows;
        bool of_sts;
        const char *simple, *even;
    } rows[] = {
        { 75, 100, false, "3 sts in every 4 rows", "3 sts in every 4 rows" },
        { 91, 122, false, "3 sts in every 4 rows 30 times, and 1 more in the 2 rows left",
            "2 sts in 3 rows 2 times and 3 sts in 4 rows 29 times, mixed evenly" },
        /* in lowest terms, and along a bound-off edge */
        { 2, 4, true, "1 st in every 2 stitches", "1 st in every 2 stitches" },
        { 20, 20, true, "1 st in every stitch", "1 st in every stitch" },
        { 40, 20, false, "2 sts in every row", "2 sts in every row" },
        /* 5 in 2 rows ten times; every row 2 or 3 */
        { 50, 20, false, "5 sts in every 2 rows",
            "2 sts in 1 row 10 times and 3 sts in 1 row 10 times, mixed evenly" },
        /* 24/25: no b up to 12 comes nearer than 1 for 1 (by hand: 11/12 is 0.043 off, 1 is 0.04);
         * 25 for 25 is one too many, and one row of the 25 is left out */
        { 24, 25, false, "24 sts over 25 rows: miss 1 in the middle", "24 sts in every 25 rows" },
        /* 26/25, one too few; one row in 25 has two */
        { 26, 25, true, "26 sts over 25 stitches: pick up 1 more in the middle",
            "26 sts in every 25 stitches" },
        /* the same, three off */
        { 77, 80, true, "77 sts over 80 stitches: miss 3, spread evenly",
            "25 sts in 26 stitches once and 26 sts in 27 stitches 2 times, mixed evenly" },
        /* 61 over 80: 3 in 4 twenty times, one more */
        { 61, 80, false, "3 sts in every 4 rows 20 times, and 1 more in the middle",
            "3 sts in 4 rows 15 times and 4 sts in 5 rows 4 times, mixed evenly" },
        /* 7/25: 2/7 is 0.0057 off, 3/11 0.0073: 2 in 7 three times, 4 rows left, 1 more; 25 = 3 x 3
         * + 4 x 4 */
        { 7, 25, false, "2 sts in every 7 rows 3 times, and 1 more in the 4 rows left",
            "1 st in 3 rows 3 times and 1 st in 4 rows 4 times, mixed evenly" },
        /* 9/13: 9 of 13; nearest up to 12 is 7/10 (0.0077), 2/3 is 0.026; left 2 for 3 rows. 4 left
         * out: 13 = 3 x 3 + 1 x 4 */
        { 9, 13, false, "7 sts in every 10 rows once, and 2 more in the 3 rows left",
            "2 sts in 3 rows 3 times and 3 sts in 4 rows once, mixed evenly" },
        /* 1/13: 1 in 12, one row is left */
        { 1, 13, false, "1 st in every 12 rows once, and none in the 1 row left",
            "1 st in every 13 rows" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        hw_pickup_share share = { .sts = rows[i].sts,
            .has_ratio = true,
            .of_sts = rows[i].of_sts,
            .ratio = hw_pickup_ratio_of(rows[i].sts, rows[i].rows) };
        check_words(&share, rows[i].simple, rows[i].even);
    }
}
END_TEST

/* Nothing with so small a group comes nearer, nor as near with a smaller one. */
static void check_nearest(const hw_pickup_group *simple, int sts, int rows)
{
    double wanted = (double)sts / rows;
    double off = fabs((double)simple->sts / simple->rows - wanted);
    for (int b = 1; b <= 12 && b <= rows; b++) {
        int a = sts * b / rows;
        for (int near = a < 1 ? 1 : a; near <= a + 1; near++) {
            double other = fabs((double)near / b - wanted);
            ck_assert(other >= off - 1e-12);
            ck_assert(b >= simple->rows || other > off + 1e-12);
        }
    }
}

/* Both groups together use up the rows and give the stitches, and differ by no more than they must:
 * a row, and where a row is left out or used twice, a stitch. */
static void check_even(const hw_pickup_group *even, int sts, int rows)
{
    ck_assert_int_eq(even[0].times * even[0].rows + even[1].times * even[1].rows, rows);
    ck_assert_int_eq(even[0].times * even[0].sts + even[1].times * even[1].sts, sts);
    if (even[1].times > 0) {
        int differ = even[1].rows - even[0].rows + even[1].sts - even[0].sts;
        ck_assert_int_eq(differ, sts > 2 * rows || 2 * sts <= rows ? 1 : 2);
    }
}

/* The promises of the header for all counts. */
START_TEST(ratios_come_out)
{
    for (int rows = 1; rows <= 150; rows++) {
        for (int sts = 1; sts <= 330; sts++) {
            hw_pickup_ratio ratio = hw_pickup_ratio_of(sts, rows);
            const hw_pickup_group *simple = &ratio.simple;
            ck_assert(simple->sts >= 1 && simple->rows >= 1 && simple->rows <= 12);
            ck_assert_int_eq(simple->times * simple->sts + ratio.extra_sts, sts);
            ck_assert_int_eq(simple->times * simple->rows + ratio.rows_left, rows);
            ck_assert(ratio.rows_left >= 0 && ratio.rows_left < simple->rows);
            check_nearest(simple, sts, rows);
            check_even(ratio.even, sts, rows);
        }
    }
}
END_TEST

/* By hand: 50 cm at 30 in 10 cm are 150 stitches. */
START_TEST(counts_by_hand)
{
    static const struct {
        hw_pickup_task task;
        double length_cm;
        int below, above, sts, motifs, left, right;
        double off_cm;
        bool inside;
    } rows[] = {
        /* figures of 5, gaps of 3: 19 motifs are 149 to 155; the odd margin stitch goes right */
        { { .repeat = 8, .gap = 3 }, 50, 150, 150, 150, 19, 0, 1, 0, true },
        /* figures of 7, gaps of 1: 143 to 145, and 151 to 153; a stitch is a third of a cm */
        { { .repeat = 8, .gap = 1 }, 50, 145, 151, 151, 19, 0, 0, 1 / 3.0, true },
        /* and a stitch in a seam at each end */
        { { .repeat = 8, .gap = 1, .edge_sts = { 1, 2 } }, 50, 148, 154, 154, 19, 0, 0, 1 / 3.0,
            true },
        /* a ring: 18 or 19 times 8 */
        { { .repeat = 8, .gap = 3, .round = true }, 50, 144, 152, 152, 19, 0, 3, 2 / 3.0, false },
        /* 148 lies in the middle of them: fewer */
        { { .repeat = 8, .gap = 3, .round = true }, 148 / 3.0, 144, 152, 144, 18, 0, 3, -4 / 3.0,
            false },
        /* plain: the nearest, and of two as near the smaller */
        { { 0 }, 50.1, 150, 151, 150, 0, 0, 0, -0.1, true },
        { { 0 }, 150.5 / 3, 150, 151, 150, 0, 0, 0, -0.5 / 3, true },
        { { 0 }, 50.3, 150, 151, 151, 0, 0, 0, 0.1 / 3, true },
        { { .round = true }, 50.3, 150, 151, 151, 0, 0, 0, 0.1 / 3, true },
        /* a multiple of 4 and 2 more: 150; of 2 and 1: 149 and 151, as near */
        { { .multiple = 4, .multiple_plus = 2 }, 50, 150, 150, 150, 0, 0, 0, 0, true },
        { { .multiple = 2, .multiple_plus = 1 }, 50, 149, 151, 149, 0, 0, 0, -1 / 3.0, true },
        /* shorter than one repeat: one */
        { { .repeat = 8, .gap = 3, .round = true }, 2, 0, 8, 8, 1, 0, 3, 2 / 3.0, false },
        /* figures of 5: one motif; 1 cm is 3 stitches */
        { { .repeat = 8, .gap = 3 }, 1, 0, 5, 5, 1, 0, 0, 2 / 3.0, false },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const hw_pickup_edge edge = { .length_cm = rows[i].length_cm };
        hw_pickup_task task = rows[i].task;
        task.edges = &edge;
        task.edge_count = 1;
        task.sts_per_10cm = 30;
        task.tolerance_cm = 0.5;
        hw_pickup plan = plan_of(&task);
        ck_assert_int_eq(plan.has_below, rows[i].below > 0);
        if (plan.has_below) {
            ck_assert_int_eq(plan.below.sts, rows[i].below);
        }
        ck_assert(plan.has_above);
        ck_assert_int_eq(plan.above.sts, rows[i].above);
        ck_assert_int_eq(plan.chosen.sts, rows[i].sts);
        ck_assert_int_eq(plan.chosen.motifs, rows[i].motifs);
        ck_assert_int_eq(plan.chosen.margin[HW_LEFT], rows[i].left);
        ck_assert_int_eq(plan.chosen.margin[HW_RIGHT], rows[i].right);
        ck_assert_double_eq_tol(plan.chosen.off_cm, rows[i].off_cm, 1e-9);
        ck_assert_int_eq(plan.inside, rows[i].inside);
        ck_assert_int_eq(plan.shares[0].sts, rows[i].sts);
        ck_assert(!plan.shares[0].has_ratio);
    }
}
END_TEST

/* By hand: right front neck 12 cm, back neck 16, left front neck 12, at 25 in 10 cm: 100 stitches
 * are 30, 40, 30; of a repeat of 6 in a ring 102, exactly 30.6, 40.8, 30.6: 31, 40, 31 leaves the
 * two fronts alike, where the largest remainder alone would be 31, 41, 30. 101 plain: 30.3, 40.4,
 * 30.3: 30, 41, 30. */
START_TEST(neckband_by_hand)
{
    static const struct {
        double back_cm;
        int repeat, sts, front, back;
    } rows[] = { { 16, 0, 100, 30, 40 }, { 16, 6, 102, 31, 40 }, { 16.4, 0, 101, 30, 41 } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const hw_pickup_edge edges[] = { { .length_cm = 12, .count = 40 },
            { .length_cm = rows[i].back_cm, .count = 40, .of_sts = true },
            { .length_cm = 12, .count = 40 } };
        const hw_pickup_task task = { .edges = edges,
            .edge_count = 3,
            .sts_per_10cm = 25,
            .repeat = rows[i].repeat,
            .gap = rows[i].repeat / 2,
            .round = true,
            .tolerance_cm = 1 };
        hw_pickup plan = plan_of(&task);
        ck_assert_int_eq(plan.chosen.sts, rows[i].sts);
        ck_assert_int_eq(plan.shares[0].sts, rows[i].front);
        ck_assert_int_eq(plan.shares[1].sts, rows[i].back);
        ck_assert_int_eq(plan.shares[2].sts, rows[i].front);
        ck_assert(plan.level && plan.shares[1].of_sts && !plan.shares[0].of_sts);
        ck_assert_int_eq(plan.shares[0].ratio.sts, rows[i].front);
        ck_assert_int_eq(plan.shares[0].ratio.rows, 40);
    }
}
END_TEST

/* By hand: 30 in 10 cm; a neck of two halves of 29 stitches, 8.5 of each in a middle of 17: 9 and 8
 * of those, and 20 and 21 beside them. Edges that are no halves of one neck have 9 each. */
START_TEST(odd_middle)
{
    static const hw_pickup_edge parts[] = {
        { .length_cm = 8.5 / 3, .count = 17, .of_sts = true, .way = HW_PICKUP_MIDDLE },
        { .length_cm = 20.5 / 3, .count = 25, .way = HW_PICKUP_CURVE },
    };
    for (int halves = 0; halves < 2; halves++) {
        hw_pickup_edge edges[3] = { { .length_cm = 5, .count = 20, .way = HW_PICKUP_STRAIGHT } };
        for (int i = 1; i < 3; i++) {
            edges[i] = (hw_pickup_edge){ .length_cm = 29 / 3.0, .parts = parts, .part_count = 2 };
        }
        edges[2].other_half = halves == 1;
        const hw_pickup_task task = {
            .edges = edges, .edge_count = 3, .sts_per_10cm = 30, .tolerance_cm = 1
        };
        hw_pickup plan = plan_of(&task);
        ck_assert_int_eq(plan.parts[1][0].sts, 9);
        ck_assert_int_eq(plan.parts[1][1].sts, 20);
        ck_assert_int_eq(plan.parts[2][0].sts, halves == 1 ? 8 : 9);
        ck_assert_int_eq(plan.parts[2][1].sts, halves == 1 ? 21 : 20);
        ck_assert_int_eq(plan.shares[2].sts, 29);
    }
}
END_TEST

/* By hand: 20 in 10 cm; 3, 11.5 and 10 cm are 6, 23 and 20 of 49 stitches, which on the straight
 * are 5 in 7 rows: 8 of its 28 rows are left out. An edge as long beside it has 49 as well. */
START_TEST(parts_of_an_edge)
{
    static const hw_pickup_edge parts[] = {
        { .length_cm = 3, .count = 6, .of_sts = true, .way = HW_PICKUP_BOUND_OFF },
        { .length_cm = 11.5, .count = 30, .way = HW_PICKUP_CURVE },
        { .length_cm = 10, .count = 28, .way = HW_PICKUP_STRAIGHT },
    };
    static const hw_pickup_edge edges[] = { { .length_cm = 24.5, .parts = parts, .part_count = 3 },
        { .length_cm = 24.5, .count = 98, .way = HW_PICKUP_STRAIGHT },
        { .length_cm = 1, .way = HW_PICKUP_CURVE } };
    const hw_pickup_task task = {
        .edges = edges, .edge_count = 3, .sts_per_10cm = 20, .tolerance_cm = 1
    };
    hw_pickup plan = plan_of(&task);
    ck_assert_int_eq(plan.chosen.sts, 100);
    ck_assert_int_eq(plan.shares[0].sts, 49);
    ck_assert_int_eq(plan.shares[1].sts, 49);
    ck_assert(!plan.shares[0].has_ratio && plan.shares[1].has_ratio);
    static const int sts[] = { 6, 23, 20 };
    ck_assert_int_eq(plan.part_count[0], 3);
    for (int k = 0; k < 3; k++) {
        ck_assert_int_eq(plan.parts[0][k].sts, sts[k]);
    }
    static const char *const told[] = {
        ("6 along the 6 stitches bound off, 23 along the curve (evenly over 30 rows), 20 along the "
         "straight (2 sts in 3 rows 4 times and 3 sts in 4 rows 4 times, mixed evenly)"),
        "1 st in every 2 rows",
        "2 along the curve",
    };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    for (int i = 0; i < 3; i++) {
        ck_assert_str_eq(hw_pickup_edge_words(&plan, i, &arena), told[i]);
    }
    hw_check_close(&arena, &heap);
    for (long n = 1; n <= 4; n++) {
        hw_check_open(&arena, &heap, n, true);
        ck_assert_ptr_null(hw_pickup_edge_words(&plan, 0, &arena));
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* By hand: two edges alike cannot share 7 alike: the earlier gets the odd one. Edge stitches of
 * seams stand at the outer ends. */
START_TEST(odd_pairs)
{
    static const hw_pickup_edge edges[] = { { .length_cm = 10 }, { .length_cm = 10 } };
    int shares[2] = { 0 };
    ck_assert(!hw_pickup_divide(edges, 2, 7, shares));
    ck_assert_int_eq(shares[0], 4);
    ck_assert_int_eq(shares[1], 3);
    /* 0.5 and 1.5 of two stitches: the odd one goes to the earlier, whichever is longer */
    static const hw_pickup_edge uneven[] = { { .length_cm = 10 }, { .length_cm = 30 },
        { .length_cm = 10 } };
    ck_assert(hw_pickup_divide(uneven, 2, 2, shares));
    ck_assert_int_eq(shares[0], 1);
    ck_assert_int_eq(shares[1], 1);
    ck_assert(hw_pickup_divide(uneven + 1, 2, 2, shares));
    ck_assert_int_eq(shares[0], 2);
    ck_assert_int_eq(shares[1], 0);
    ck_assert(hw_pickup_divide(edges, 2, 8, shares));
    ck_assert_int_eq(shares[0], 4);
    ck_assert_int_eq(shares[1], 4);
    const hw_pickup_task task = {
        .edges = edges, .edge_count = 2, .sts_per_10cm = 30, .edge_sts = { 1, 2 }, .tolerance_cm = 1
    };
    hw_pickup plan = plan_of(&task);
    ck_assert_int_eq(plan.chosen.sts, 63);
    ck_assert_int_eq(plan.chosen.visible_sts, 60);
    ck_assert_int_eq(plan.shares[0].sts, 31);
    ck_assert_int_eq(plan.shares[1].sts, 32);
}
END_TEST

/* Edges of different lengths: the method of the largest remainder. Each share is the exact one
 * rounded down or up, and none that was rounded up had a smaller rest than one that was not. */
static void check_largest_remainder(const double *exact, const int *shares, int count)
{
    for (int i = 0; i < count; i++) {
        ck_assert(fabs(shares[i] - exact[i]) < 1 + 1e-9);
        for (int k = 0; k < count; k++) {
            bool i_up = shares[i] > exact[i] + 1e-6;
            bool k_down = shares[k] < exact[k] - 1e-6;
            double rest_i = exact[i] - floor(exact[i]);
            double rest_k = exact[k] - floor(exact[k]);
            ck_assert(!i_up || !k_down || rest_i >= rest_k - 1e-3);
        }
    }
}

START_TEST(shares_by_chance)
{
    unsigned state = 5;
    int level = 0;
    for (int round = 0; round < 3000; round++) {
        hw_pickup_edge edges[HW_MAX_PARTS] = { 0 };
        double exact[HW_MAX_PARTS] = { 0 };
        int shares[HW_MAX_PARTS] = { 0 };
        int count = 1 + hw_check_random(&state, HW_MAX_PARTS);
        bool pairs = round % 2 == 0;
        double sum_cm = 0;
        for (int i = 0; i < count; i++) {
            int mirror = count - 1 - i;
            edges[i].length_cm = pairs && mirror < i
                                     ? edges[mirror].length_cm
                                     : 5 + i + hw_check_random(&state, 90) / 100.0 + (i % 2) * 20;
            sum_cm += edges[i].length_cm;
        }
        int sts = 20 + hw_check_random(&state, 300);
        bool all_level = hw_pickup_divide(edges, count, sts, shares);
        int sum = 0;
        for (int i = 0; i < count; i++) {
            exact[i] = sts * edges[i].length_cm / sum_cm;
            sum += shares[i];
            ck_assert_int_ge(shares[i], 0);
            ck_assert(fabs(shares[i] - exact[i]) < 2 + 1e-9);
            int mirror = count - 1 - i;
            ck_assert(!all_level || !pairs || shares[i] == shares[mirror]);
        }
        ck_assert_int_eq(sum, sts);
        /* pairs with a middle, or an even number of stitches, can always be alike */
        ck_assert_int_eq(all_level, !pairs || count % 2 == 1 || sts % 2 == 0);
        if (!pairs) {
            check_largest_remainder(exact, shares, count);
        }
        level += all_level ? 1 : 0;
    }
    ck_assert_int_gt(level, 1500);
    ck_assert_int_lt(level, 3000);
}
END_TEST

START_TEST(refusals)
{
    hw_pickup_edge edge = { .length_cm = 900 };
    hw_pickup_task task = {
        .edges = &edge, .edge_count = 1, .sts_per_10cm = 30, .tolerance_cm = 1
    };
    hw_pickup plan = { .share_count = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_pickup_plan(&task, &plan, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "2700.0 stitches, and a trim can have 2000"));
    edge.length_cm = 10;
    task.repeat = 8;
    task.gap = 8;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_pickup_plan(&task, &plan, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "repeat of 8 with a gap of 8"));
    /* 30 stitches, multiples of 2001 */
    task = (hw_pickup_task){
        .edges = &edge, .edge_count = 1, .sts_per_10cm = 30, .multiple = 2001, .tolerance_cm = 1
    };
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_pickup_plan(&task, &plan, &err), HW_ERR_NOFIT);
    ck_assert(hw_check_says(&err, HW_ERR_NOFIT, "10.0 cm are 30.0 stitches"));
    ck_assert_int_eq(plan.share_count, 77);
}
END_TEST

START_TEST(no_memory)
{
    const hw_pickup_share share = { .sts = 91, .ratio = hw_pickup_ratio_of(91, 122) };
    for (long n = 1; n <= 2; n++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, n, true);
        ck_assert_ptr_null(hw_pickup_words(&share, &arena));
        ck_assert_ptr_null(hw_pickup_even_words(&share, &arena));
        hw_check_close(&arena, &heap);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { published_front_edge, published_ten_of_thirteen, words,
        ratios_come_out, counts_by_hand, neckband_by_hand, odd_middle, parts_of_an_edge, odd_pairs,
        shares_by_chance, refusals, no_memory };
    return hw_check_run(hw_check_suite("pickup", tests, sizeof tests / sizeof tests[0]));
}
