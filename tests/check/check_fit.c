/* Whole motifs in a width: published answers, and every count against a search.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/fit.h"
#include "support.h"

static void expect_count(hw_fit_count count, int motifs, int sts)
{
    ck_assert_int_eq(count.motifs, motifs);
    ck_assert_int_eq(count.visible_sts, sts);
}

/* R1: 144 stitches are 12 repeats of 12, and repeats of 2, 3, 4, 6, 8, 12, 16, 18, 24, 36 fit too;
 * https://heleninhobart.blogspot.com/2022/05/design-fair-isle-w-alice-starmore.html */
START_TEST(whole_repeats)
{
    static const int repeats[] = { 2, 3, 4, 6, 8, 12, 16, 18, 24, 36 };
    for (size_t i = 0; i < sizeof repeats / sizeof repeats[0]; i++) {
        hw_fit_rules rules = { .repeat = repeats[i], .most_sts = 200 };
        hw_fit_near near = { 0 };
        ck_assert_int_eq(hw_fit_nearest(&rules, 18 * 8, &near, NULL), HW_OK);
        ck_assert(near.has_below && near.has_above);
        expect_count(near.below, 144 / repeats[i], 144);
        expect_count(near.above, 144 / repeats[i], 144);
    }
    /* R5: 36 in at 5 stitches to the inch are 180, ten repeats of 18;
     * http://samuraiknitter.blogspot.com/2007/01/steek-along-figuring-100-and-centering.html */
    hw_fit_rules rules = { .repeat = 18, .most_sts = 200 };
    hw_fit_near near = { 0 };
    ck_assert_int_eq(hw_fit_nearest(&rules, 36 * 5, &near, NULL), HW_OK);
    expect_count(near.below, 10, 180);
    expect_count(near.above, 10, 180);
}
END_TEST

/* R2: 40.5 in at 8 stitches to the inch are 324; a repeat of 20 gives 320 (16) or 340 (17); page of
 * R1. */
START_TEST(repeats_on_both_sides)
{
    hw_fit_rules rules = { .repeat = 20, .most_sts = 400 };
    hw_fit_near near = { 0 };
    ck_assert_int_eq(hw_fit_nearest(&rules, 40.5 * 8, &near, NULL), HW_OK);
    ck_assert(near.has_below && near.has_above);
    expect_count(near.below, 16, 320);
    expect_count(near.above, 17, 340);
}
END_TEST

/* R6: one purl, seven knit is a repeat of 8 and 9 more stitches balance it (8n + 9, and an edge
 * stitch at each side is not counted here): a background column outside each figure. A rib of 3 and
 * 3 is a multiple of 6, such as 66. https://ro.scribd.com/document/24524683/ */
START_TEST(border_multiples)
{
    hw_fit_rules rules = {
        .repeat = 8, .gap = 1, .least_margin = 1, .most_margin = 1, .most_sts = 200
    };
    for (int n = 0; n < 20; n++) {
        hw_fit_near near = { 0 };
        ck_assert_int_eq(hw_fit_nearest(&rules, 8 * n + 9, &near, NULL), HW_OK);
        ck_assert(near.has_below);
        expect_count(near.below, n + 1, 8 * n + 9);
        ck_assert_int_eq(near.below.margin[HW_LEFT], 1);
        ck_assert_int_eq(near.below.margin[HW_RIGHT], 1);
        ck_assert_int_eq(hw_fit_nearest(&rules, 8 * n + 12, &near, NULL), HW_OK);
        expect_count(near.below, n + 1, 8 * n + 9);
        expect_count(near.above, n + 2, 8 * n + 17);
    }
    hw_fit_rules rib = { .repeat = 6, .most_sts = 200 };
    hw_fit_near near = { 0 };
    ck_assert_int_eq(hw_fit_nearest(&rib, 66, &near, NULL), HW_OK);
    expect_count(near.below, 11, 66);
}
END_TEST

/* Which counts can be made: by trying every number of motifs with every pair of margins that are
 * equal or differ by one. out[v] is the most motifs with which v can be made, 0 where it cannot. */
static void try_all(const hw_fit_rules *rules, int *out)
{
    for (int motifs = 1; motifs <= rules->most_sts + rules->gap; motifs++) {
        for (int left = rules->least_margin; left <= rules->most_margin; left++) {
            for (int right = left; right <= left + 1 && right <= rules->most_margin; right++) {
                int sts = motifs * rules->repeat - rules->gap + left + right;
                if (sts <= rules->most_sts) {
                    out[sts] = motifs;
                }
            }
        }
    }
}

static void expect_like_search(const hw_fit_rules *rules, double wanted_sts, const int *motifs)
{
    int below = 0;
    int above = 0;
    for (int sts = rules->most_sts; sts > 0; sts--) {
        below = motifs[sts] > 0 && below == 0 && sts <= wanted_sts ? sts : below;
        above = motifs[sts] > 0 && sts >= wanted_sts ? sts : above;
    }
    hw_fit_near near = { 0 };
    ck_assert_int_eq(hw_fit_nearest(rules, wanted_sts, &near, NULL), HW_OK);
    ck_assert_int_eq(near.has_below, below > 0);
    ck_assert_int_eq(near.has_above, above > 0);
    const hw_fit_count *counts[] = { &near.below, &near.above };
    const int sought[] = { below, above };
    for (int i = 0; i < 2; i++) {
        int left = counts[i]->margin[HW_LEFT];
        int right = counts[i]->margin[HW_RIGHT];
        ck_assert_int_eq(counts[i]->visible_sts, sought[i]);
        ck_assert_int_eq(counts[i]->motifs, motifs[sought[i]]);
        if (sought[i] > 0) {
            ck_assert_int_eq(hw_fit_visible(rules, counts[i]->motifs, left, right), sought[i]);
            ck_assert(left >= rules->least_margin && right <= rules->most_margin);
            ck_assert(right == left || right == left + 1);
        }
    }
}

/* By search: 400 sets of rules by chance, each at every half stitch. */
START_TEST(every_count_by_search)
{
    unsigned state = 1;
    for (int round = 0; round < 400; round++) {
        int repeat = 1 + hw_check_random(&state, 14);
        int least = hw_check_random(&state, 3);
        hw_fit_rules rules = {
            .repeat = repeat,
            .gap = hw_check_random(&state, repeat),
            .least_margin = least,
            .most_margin = least + hw_check_random(&state, 9),
            .most_sts = hw_check_random(&state, 70),
        };
        int motifs[71] = { 0 };
        try_all(&rules, motifs);
        for (int halves = 1; halves <= 160; halves++) {
            expect_like_search(&rules, halves / 2.0, motifs);
        }
    }
}
END_TEST

/* By hand: a wider target never holds fewer motifs, gap 1 as in the design's own example. */
START_TEST(never_fewer_for_more)
{
    hw_fit_rules rules = { .repeat = 6, .gap = 1, .most_margin = 1, .most_sts = HW_MAX_STS };
    int last = 0;
    for (int tenths = 1; tenths <= 10 * HW_MAX_STS; tenths += 7) {
        hw_fit_near near = { 0 };
        ck_assert_int_eq(hw_fit_nearest(&rules, tenths / 10.0, &near, NULL), HW_OK);
        ck_assert_int_ge(near.below.motifs, last);
        last = near.below.motifs;
    }
    ck_assert_int_eq(last, 333); /* 333 * 6 - 1 + 2 = 1999 */
}
END_TEST

START_TEST(refusals)
{
    static const hw_fit_rules good = { .repeat = 6, .gap = 1, .most_margin = 1, .most_sts = 100 };
    hw_fit_rules bad[] = { good, good, good, good, good, good };
    bad[0].repeat = 0;
    bad[1].gap = 6;
    bad[2].most_margin = -1;
    bad[3].repeat = HW_MAX_CHART_COLUMNS + 1;
    bad[4].least_margin = 2;
    bad[5].most_sts = HW_MAX_STS + 1;
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        hw_err err = { 0 };
        hw_fit_near near = { .has_below = true };
        ck_assert_int_eq(hw_fit_nearest(&bad[i], 50, &near, &err), HW_ERR_RANGE);
        ck_assert(hw_check_says(&err, HW_ERR_RANGE, "repeat of"));
        ck_assert(near.has_below);
    }
    hw_fit_rules widest = {
        .repeat = HW_MAX_CHART_COLUMNS, .most_margin = HW_MAX_STS, .most_sts = HW_MAX_STS
    };
    hw_fit_near found = { 0 };
    ck_assert_int_eq(hw_fit_nearest(&widest, HW_MAX_STS, &found, NULL), HW_OK);
    ck_assert_int_eq(found.below.motifs, HW_MAX_STS / HW_MAX_CHART_COLUMNS);
    static const double widths[] = { 0, -3, HW_MAX_STS + 1, 0.0 / 0.0, 1.0 / 0.0 };
    for (size_t i = 0; i < sizeof widths / sizeof widths[0]; i++) {
        hw_err err = { 0 };
        hw_fit_near near = { .has_below = true };
        ck_assert_int_eq(hw_fit_nearest(&good, widths[i], &near, &err), HW_ERR_RANGE);
        ck_assert(hw_check_says(&err, HW_ERR_RANGE, "outside 0 to"));
        ck_assert(near.has_below);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { whole_repeats, repeats_on_both_sides, border_multiples,
        every_count_by_search, never_fewer_for_more, refusals };
    return hw_check_run(hw_check_suite("fit", tests, sizeof tests / sizeof tests[0]));
}
