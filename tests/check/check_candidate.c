/* The choices of one piece in one size, and their cost, against the definition.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "core/candidate.h"
#include "counting.h"
#include "support.h"

/* By hand: 0.0000005 is half a millionth, and half goes up; a cost past 1e9 counts as 1e9. */
START_TEST(millionths)
{
    ck_assert(hw_cost_whole(0) == 0);
    ck_assert(hw_cost_whole(0.0000014) == 1);
    ck_assert(hw_cost_whole(0.0000016) == 2);
    ck_assert(hw_cost_whole(2.5) == 2500000);
    ck_assert(hw_cost_whole(1e9) == 1000000000000000LL);
    ck_assert(hw_cost_whole(1e12) == 1000000000000000LL);
}
END_TEST

/* By hand: 2.5 stitches to the cm in the band, 2.4 in plain fabric; 97 stitches are 38.8 cm and
 * 40.4167 cm. Wanted 40 and 41 with a tolerance of 0.5: (1.2 / 0.5)^2 = 5.76 and
 * (0.58333 / 0.5)^2 = 1.36111. Margins 3 and 0 sit 1.5 stitches beside the middle: 0.4 x 2.25. */
START_TEST(terms_by_hand)
{
    counting c;
    counting_open(&c, 1, 1);
    c.gauge[HW_MAIN].sts_per_10cm = 24;
    c.targets[0] = (hw_target){ .band_cm = 40, .main_cm = 41 };
    c.task.choices.tolerance_cm = 0.5;
    c.task.choices.centre_weight = 0.4;
    hw_candidate choice = { .margin = { 3, 0 }, .visible_sts = 97, .main_sts = 97 };
    hw_cost cost = hw_candidate_cost(&c.task, 0, 0, &choice);
    ck_assert_double_eq_tol(cost.band, 5.76, 1e-9);
    ck_assert_double_eq_tol(cost.main, 1.3611111111, 1e-9);
    ck_assert_double_eq_tol(cost.centre, 0.9, 1e-12);
    ck_assert_double_eq_tol(cost.grade, 0, 1e-12);
    /* Off centre to the other side costs as much; the plain fabric has its own count. */
    choice = (hw_candidate){ .margin = { 0, 3 }, .visible_sts = 97, .main_sts = 99 };
    cost = hw_candidate_cost(&c.task, 0, 0, &choice);
    ck_assert_double_eq_tol(cost.centre, 0.9, 1e-12);
    ck_assert_double_eq_tol(cost.main, 0.25, 1e-9); /* 41.25 cm: (0.25 / 0.5)^2 */
}
END_TEST

/* By hand: from 40 to 43 cm is a step of 3; 6 stitches are 2.4 cm: 0.7 x (0.6 / 1)^2 = 0.252; 9
 * are 3.6 cm, as far off. Only the band's widths count. */
START_TEST(step_by_hand)
{
    counting c;
    counting_open(&c, 2, 2);
    c.task.choices.grade_weight = 0.7;
    c.targets[2 + 1] = (hw_target){ .band_cm = 43, .main_cm = 77 };
    ck_assert_double_eq_tol(hw_counts_step_cost(&c.task, 1, 1, 6), 0.252, 1e-9);
    ck_assert_double_eq_tol(hw_counts_step_cost(&c.task, 1, 1, 9), 0.252, 1e-9);
    ck_assert_double_eq_tol(hw_counts_step_cost(&c.task, 1, 0, -5), 2.8, 1e-9); /* 0.7 x 4 */
    c.task.choices.tolerance_cm = 2;
    ck_assert_double_eq_tol(hw_counts_step_cost(&c.task, 1, 1, 6), 0.063, 1e-9);
}
END_TEST

/* By hand: 100 stitches of 2.5 to the cm are 40 cm, exactly a tolerance from 39 and from 41. */
START_TEST(inside_by_hand)
{
    static const struct {
        double band_cm, main_cm;
        bool inside;
    } rows[] = {
        { 40, 40, true },
        { 39, 41, true },
        { 41, 39, true },
        { 38.9999, 40, false },
        { 41.0001, 40, false },
        { 40, 38.9999, false },
        { 40, 41.0001, false },
    };
    counting c;
    counting_open(&c, 1, 1);
    hw_candidate choice = { .visible_sts = 100, .main_sts = 100 };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        c.targets[0] = (hw_target){ .band_cm = rows[i].band_cm, .main_cm = rows[i].main_cm };
        ck_assert_int_eq(hw_candidate_inside(&c.task, 0, 0, &choice), rows[i].inside);
    }
}
END_TEST

/* By hand: a seam's edge has the usual stitches, a free edge none, and what a piece says itself
 * goes before both; the bed of 200 holds what is left. */
START_TEST(edges)
{
    counting c;
    counting_open(&c, 1, 2);
    c.task.choices.edge_sts = 3;
    counting_sew(&c, (hw_seam){ .piece = { 0, 1 }, .side = { HW_RIGHT, HW_LEFT } });
    ck_assert_int_eq(hw_counts_edge_sts(&c.task, 0, HW_LEFT), 0);
    ck_assert_int_eq(hw_counts_edge_sts(&c.task, 0, HW_RIGHT), 3);
    ck_assert_int_eq(hw_counts_most_visible(&c.task, 0), 197);
    c.pieces[0].edge_sts[HW_LEFT] = 2;
    c.pieces[1].edge_sts[HW_LEFT] = 0;
    ck_assert_int_eq(hw_counts_edge_sts(&c.task, 0, HW_LEFT), 2);
    ck_assert_int_eq(hw_counts_edge_sts(&c.task, 1, HW_LEFT), 0);
    ck_assert_int_eq(hw_counts_most_visible(&c.task, 0), 195);
    ck_assert_int_eq(hw_counts_most_visible(&c.task, 1), 200);
}
END_TEST

/* By hand: 40 cm of plain fabric at 2 to the cm are 80 stitches. 82 are 41 cm, inside, so they
 * stay; 83 are 41.5 cm: 80 instead. Never re-hung without leave, and never to nothing. */
START_TEST(rehung)
{
    counting c;
    counting_open(&c, 1, 1);
    c.gauge[HW_MAIN].sts_per_10cm = 20;
    ck_assert_int_eq(hw_counts_main_sts(&c.task, 0, 0, 95), 95);
    c.task.choices.rehang = true;
    ck_assert_int_eq(hw_counts_main_sts(&c.task, 0, 0, 82), 82);
    ck_assert_int_eq(hw_counts_main_sts(&c.task, 0, 0, 78), 78);
    ck_assert_int_eq(hw_counts_main_sts(&c.task, 0, 0, 83), 80);
    ck_assert_int_eq(hw_counts_main_sts(&c.task, 0, 0, 77), 80);
    counting_want(&c, 0, 0, 0.1); /* 0.2 stitches */
    ck_assert_int_eq(hw_counts_main_sts(&c.task, 0, 0, 95), 1);
}
END_TEST

static bool listed(const hw_candidates *found, const hw_candidate *wanted)
{
    int times = 0;
    for (int i = 0; i < found->count; i++) {
        const hw_candidate *c = &found->list[i];
        if (c->motifs == wanted->motifs && c->margin[HW_LEFT] == wanted->margin[HW_LEFT] &&
            c->margin[HW_RIGHT] == wanted->margin[HW_RIGHT]) {
            times += c->visible_sts == wanted->visible_sts;
        }
    }
    return times == 1;
}

/* Ordered by cost, then stitches, then left margin. */
static void check_order(const hw_candidates *found)
{
    for (int i = 1; i < found->count; i++) {
        const hw_candidate *a = &found->list[i - 1];
        const hw_candidate *b = &found->list[i];
        ck_assert(a->cost <= b->cost);
        if (a->cost == b->cost) {
            ck_assert_int_le(a->visible_sts, b->visible_sts);
        }
        if (a->cost == b->cost && a->visible_sts == b->visible_sts) {
            ck_assert_int_le(a->margin[HW_LEFT], b->margin[HW_LEFT]);
        }
    }
}

/* Every way to make a count, from the drawing of the row: a margin, motifs with gaps between them,
 * a margin; each is listed once where it keeps the rules, and nothing else is. */
static void check_all(const counting *c, const hw_candidates *found)
{
    const hw_counts_task *t = &c->task;
    int most = t->choices.hand_set ? t->repeat - 1 : t->gap;
    int count = 0;
    for (int motifs = 1; motifs <= t->bed; motifs++) {
        for (int sides = 0; sides < (most + 1) * (most + 1); sides++) {
            hw_candidate choice = { .motifs = motifs,
                .margin = { sides / (most + 1), sides % (most + 1) } };
            int between = (motifs - 1) * t->gap;
            choice.visible_sts = motifs * (t->repeat - t->gap) + between + choice.margin[HW_LEFT] +
                                 choice.margin[HW_RIGHT];
            double off_cm = choice.visible_sts / 2.5 - c->targets[0].band_cm;
            bool allowed = choice.visible_sts <= t->bed;
            allowed = allowed && (!t->choices.exact_centre ||
                                     choice.margin[HW_LEFT] == choice.margin[HW_RIGHT]);
            allowed = allowed && (!t->choices.keep_tolerance || fabs(off_cm) <= 1 + 1e-9);
            count += allowed;
            ck_assert(!allowed || listed(found, &choice));
        }
    }
    ck_assert_int_eq(found->count, count);
}

START_TEST(all_of_them)
{
    unsigned state = 11;
    int empty = 0;
    for (int run = 0; run < 400; run++) {
        counting c;
        counting_open(&c, 1, 1);
        c.task.gap = hw_check_random(&state, 4);
        c.task.repeat = c.task.gap + 1 + hw_check_random(&state, 6);
        c.task.bed = 1 + hw_check_random(&state, 40);
        counting_want(&c, 0, 0, 1 + hw_check_random(&state, 120) / 8.0);
        c.task.choices.hand_set = hw_check_random(&state, 3) == 0;
        c.task.choices.exact_centre = hw_check_random(&state, 3) == 0;
        c.task.choices.keep_tolerance = hw_check_random(&state, 3) == 0;
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_candidates found = { 0 };
        ck_assert_int_eq(hw_candidates_list(&c.task, 0, 0, &arena, &found), HW_OK);
        check_all(&c, &found);
        check_order(&found);
        empty += found.count == 0;
        for (int i = 0; i < found.count; i++) {
            hw_cost cost = hw_candidate_cost(&c.task, 0, 0, &found.list[i]);
            double whole = (double)found.list[i].cost / 1e6;
            /* Three terms, each rounded to a millionth. */
            ck_assert_double_eq_tol(whole, cost.band + cost.main + cost.centre, 1.5e-6 + 1e-9);
        }
        hw_check_close(&arena, &heap);
    }
    ck_assert_int_gt(empty, 5); /* some beds and rules leave nothing */
    ck_assert_int_lt(empty, 300);
}
END_TEST

/* By hand: gap 2, both margins alike; hand-set, a repeat of 6 less one. */
START_TEST(most_margin)
{
    counting c;
    counting_open(&c, 1, 1);
    c.task.gap = 2;
    ck_assert_int_eq(hw_counts_most_margin(&c.task), 2);
    c.task.choices.hand_set = true;
    ck_assert_int_eq(hw_counts_most_margin(&c.task), 5);
}
END_TEST

START_TEST(refused)
{
    counting c;
    counting_open(&c, 1, 1);
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 1, true);
    hw_candidates found = { .count = 77 };
    ck_assert_int_eq(hw_candidates_list(&c.task, 0, 0, &arena, &found), HW_ERR_NOMEM);
    ck_assert_int_eq(found.count, 77);
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: of two sizes of two pieces, the second size of the first piece is the third. A piece
 * knitted already has that count and no other, whatever the rules say. */
START_TEST(one_of_many)
{
    counting c;
    counting_open(&c, 2, 2);
    counting_want(&c, 1, 0, 33);
    ck_assert_double_eq_tol(hw_counts_target(&c.task, 1, 0)->band_cm, 33, 1e-12);
    ck_assert_ptr_eq(hw_counts_target(&c.task, 1, 0), &c.targets[2]);
    int fixed[4] = { 0, 0, 0, 60 };
    c.task.fixed_sts = fixed;
    c.task.choices.keep_tolerance = true;
    c.task.choices.exact_centre = true;
    ck_assert_int_eq(hw_counts_fixed(&c.task, 1, 1), 60);
    ck_assert_int_eq(hw_counts_fixed(&c.task, 0, 1), 0);
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_candidates found = { 0 };
    ck_assert_int_eq(hw_candidates_list(&c.task, 1, 1, &arena, &found), HW_OK);
    /* 60 = 10 x 6 - 1 + 1: the plain stitch at one edge or at the other. */
    ck_assert_int_eq(found.count, 2);
    ck_assert_int_eq(found.list[0].visible_sts, 60);
    ck_assert_int_eq(found.list[0].margin[HW_LEFT], 0);
    ck_assert_int_eq(found.list[1].margin[HW_LEFT], 1);
    hw_check_close(&arena, &heap);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { millionths, terms_by_hand, step_by_hand, inside_by_hand, edges,
        rehung, all_of_them, most_margin, refused, one_of_many };
    return hw_check_run(hw_check_suite("candidate", tests, sizeof tests / sizeof tests[0]));
}
