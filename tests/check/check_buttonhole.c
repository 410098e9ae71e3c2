/* Buttonholes: a published spacing, places by hand, and the best gaps against all others.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/buttonhole.h"

#include <math.h>
#include <stdlib.h>

#include "core/num.h"
#include "fixture.h"

static hw_holes plan_of(const hw_holes_task *task, hw_arena *room)
{
    hw_holes plan = { 0 };
    ck_assert_int_eq(hw_holes_plan(task, room, &plan, NULL), HW_OK);
    ck_assert_int_eq(plan.count, task->holes);
    ck_assert_int_eq(plan.side, task->side);
    for (int k = 0; k < plan.count; k++) {
        ck_assert_int_eq(
            plan.holes[k].below_sts + task->hole_sts + plan.holes[k].above_sts, task->sts);
    }
    return plan;
}

/* 100 sts, 7 buttonholes of 4, 3 at each end: 66 over 6 gaps of 11;
 * https://knittingrobin.blogspot.com/2012/08/knitting-math-how-to-calculate.html */
START_TEST(published_spacing)
{
    const hw_holes_task task = {
        .sts = 100, .holes = 7, .hole_sts = 4, .end_sts = 3, .sts_per_10cm = 25, .side = HW_RIGHT
    };
    hw_holes plan = plan_of(&task, &arena);
    for (int k = 0; k < 7; k++) {
        ck_assert_int_eq(plan.holes[k].below_sts, 3 + k * 15);
        ck_assert_int_eq(plan.holes[k].off_sts, 0);
        ck_assert_int_eq(plan.holes[k].gap_after, 0);
    }
    ck_assert_int_eq(plan.holes[6].above_sts, 3);
    ck_assert_int_eq(plan.least_between, 11);
    ck_assert_int_eq(plan.most_between, 11);
    ck_assert_int_eq(plan.cut_sts, 0);
}
END_TEST

/* The same page: a remainder goes one stitch at a time into gaps. By hand: 4 stitches more are four
 * gaps of 12 and two of 11. Ends of 1.5 cm at 25 in 10 cm are 3.75, so 4 stitches (1.5 cm:
 * https://www.knittingmagic.biz/guide-8/buttonholes.html). */
START_TEST(remainders)
{
    for (int more = 0; more <= 6; more++) {
        const hw_holes_task task = { .sts = 102 + more,
            .holes = 7,
            .hole_sts = 4,
            .end_sts = -1,
            .end_cm = HW_HOLES_END_CM,
            .sts_per_10cm = 25 };
        hw_holes plan = plan_of(&task, &arena);
        ck_assert_int_eq(plan.end_sts, 4);
        ck_assert_int_eq(plan.holes[0].below_sts, 4);
        ck_assert_int_eq(plan.holes[6].above_sts, 4);
        int longer = 0;
        for (int k = 1; k < 7; k++) {
            int between = plan.holes[k].below_sts - plan.holes[k - 1].below_sts - 4;
            ck_assert(between == 11 || between == 12);
            longer += between - 11;
        }
        ck_assert_int_eq(longer, more);
        ck_assert_int_eq(plan.least_between, more == 6 ? 12 : 11);
        ck_assert_int_eq(plan.most_between, more == 0 ? 11 : 12);
    }
    /* one alone is in the middle: 48 below and 48 above, or 48 and 49 */
    for (int sts = 100; sts <= 101; sts++) {
        const hw_holes_task one = {
            .sts = sts, .holes = 1, .hole_sts = 4, .end_sts = 3, .sts_per_10cm = 25
        };
        hw_holes plan = plan_of(&one, &arena);
        ck_assert_int_eq(plan.holes[0].below_sts, 48);
        ck_assert_int_eq(plan.least_between, 0);
        ck_assert_int_eq(plan.most_between, 0);
    }
}
END_TEST

/* By hand: figures of 5 and gaps of 3, 12 motifs after a plain stitch: 1 + 12 x 8 - 3 + 1 = 95.
 * Gaps begin below 6, 14, 22 ... 86. Three holes, 4 stitches at each end: even places 4, 46 (of 2
 * stitches: 95 - 8 - 6 = 81, 40.5 to the next, 41) and 89. */
START_TEST(in_gaps_by_hand)
{
    static const struct {
        int hole_sts;
        int even[3], below[3], after[3], cut_below, cut_above;
        double most_off_cm;
    } rows[] = {
        /* a gap of 3 leaves room to choose; 46 is a gap's beginning, and 87 the end of the last */
        { 2, { 4, 47, 89 }, { 6, 47, 87 }, { 1, 6, 11 }, 0, 0, 0.8 },
        /* as wide as the gap: 95 - 8 - 9 = 78, 39 between */
        { 3, { 4, 46, 88 }, { 6, 46, 86 }, { 1, 6, 11 }, 0, 0, 0.8 },
        /* two too wide, one on each side: 95 - 8 - 15 = 72, 36 between; 4, 45, 86 */
        { 5, { 4, 45, 86 }, { 5, 45, 85 }, { 1, 6, 11 }, 1, 1, 0.4 },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const hw_holes_task task = { .sts = 95,
            .holes = 3,
            .hole_sts = rows[i].hole_sts,
            .end_sts = 4,
            .sts_per_10cm = 25,
            .repeat = 8,
            .gap = 3,
            .motifs = 12,
            .first_sts = 1 };
        hw_holes plan = plan_of(&task, &arena);
        for (int k = 0; k < 3; k++) {
            ck_assert_int_eq(plan.holes[k].even_sts, rows[i].even[k]);
            ck_assert_int_eq(plan.holes[k].below_sts, rows[i].below[k]);
            ck_assert_int_eq(plan.holes[k].gap_after, rows[i].after[k]);
            ck_assert_int_eq(plan.holes[k].off_sts, rows[i].below[k] - rows[i].even[k]);
            ck_assert_int_eq(plan.holes[k].cut_below, rows[i].cut_below);
            ck_assert_int_eq(plan.holes[k].cut_above, rows[i].cut_above);
        }
        ck_assert_int_eq(plan.cut_sts, rows[i].cut_below + rows[i].cut_above);
        ck_assert_int_eq(plan.whole_sts, 3);
        ck_assert_double_eq_tol(plan.most_off_cm, rows[i].most_off_cm, 1e-9);
    }
}
END_TEST

/* The stitches that a hole at a place cuts off both figures around a gap: counted one by one. */
static int cut_of(const hw_holes_task *task, int place)
{
    int cut = 0;
    for (int st = place; st < place + task->hole_sts; st++) {
        int column = hw_num_mod(st - task->first_sts, task->repeat);
        bool margin = st < task->first_sts || st >= task->sts - task->first_sts;
        cut += !margin && column < task->repeat - task->gap ? 1 : 0;
    }
    return cut;
}

/* Whether the rule leaves a hole such a place in a gap. */
static bool may_lie(const hw_holes_task *task, int gap, int place)
{
    int start = task->first_sts + (gap + 1) * task->repeat - task->gap;
    int spare = task->gap - task->hole_sts;
    int from = spare >= 0 ? start : start - (-spare + 1) / 2;
    int to = spare >= 0 ? start + spare : start - -spare / 2;
    return place >= from && place <= to && place >= 0 && place + task->hole_sts <= task->sts;
}

/* What spaces and ends cost, times the square of one fewer than the holes: from the text of the
 * header, for places in order. */
static long long cost_of(const hw_holes_task *task, const int *even, const int *places)
{
    int last = task->holes - 1;
    long long parts = last > 0 ? last : 1;
    long long first_off = places[0] - even[0];
    long long last_off = places[last] - even[last];
    long long sum = parts * parts * (first_off * first_off + last_off * last_off);
    for (int k = 0; k < last; k++) {
        long long off = parts * (places[k + 1] - places[k]) - (even[last] - even[0]);
        sum += off * off;
    }
    return sum;
}

/* All ways are tried, and the best kept; so many of them are mirror images of themselves. */
typedef struct {
    const hw_holes_task *task;
    int even[HW_MAX_HOLES], places[HW_MAX_HOLES];
    long long least, least_mirrored; /* -1: none */
} trying;

static void try_all(trying *t, int hole, int gap)
{
    const hw_holes_task *task = t->task;
    if (hole == task->holes) {
        long long cost = cost_of(task, t->even, t->places);
        bool mirrored = true;
        for (int k = 0; k < hole; k++) {
            mirrored = mirrored &&
                       t->places[k] + t->places[hole - 1 - k] == t->places[0] + t->places[hole - 1];
        }
        t->least = t->least < 0 || cost < t->least ? cost : t->least;
        bool better = mirrored && (t->least_mirrored < 0 || cost < t->least_mirrored);
        t->least_mirrored = better ? cost : t->least_mirrored;
        return;
    }
    for (; gap < task->motifs - 1; gap++) {
        for (int place = 0; place < task->sts; place++) {
            bool room = hole == 0 || place > t->places[hole - 1] + task->hole_sts;
            if (room && may_lie(task, gap, place)) {
                t->places[hole] = place;
                try_all(t, hole + 1, gap + 1);
            }
        }
    }
}

/* Chance bands: no other places are more even; of places as even those that are the same from both
 * ends; holes in order, a stitch between, and what they cut of the motif is what is said. */
START_TEST(best_of_all_places)
{
    unsigned state = 3;
    int found = 0;
    int cutting = 0;
    int turned = 0;
    for (int round = 0; round < 1500; round++) {
        hw_holes_task task = { .hole_sts = 1 + hw_check_random(&state, 7),
            .sts_per_10cm = 30,
            .repeat = 2 + hw_check_random(&state, 8) };
        task.gap = 1 + hw_check_random(&state, task.repeat - 1);
        task.gap = task.gap > task.hole_sts + 2 ? task.hole_sts + 2 : task.gap;
        task.motifs = 2 + hw_check_random(&state, 9);
        task.first_sts = hw_check_random(&state, task.gap + 2);
        task.sts = 2 * task.first_sts + task.motifs * task.repeat - task.gap;
        task.holes = 1 + hw_check_random(&state, 5);
        task.end_sts = hw_check_random(&state, 6);
        hw_holes plan = { 0 };
        hw_holes_task plain = task;
        plain.repeat = 0;
        bool has_even = hw_holes_plan(&plain, &arena, &plan, NULL) == HW_OK;
        trying t = { .task = &task, .least = -1, .least_mirrored = -1 };
        for (int k = 0; has_even && k < plan.count; k++) {
            t.even[k] = plan.holes[k].even_sts;
        }
        if (has_even) {
            try_all(&t, 0, 0);
        }
        hw_status status = hw_holes_plan(&task, &arena, &plan, NULL);
        ck_assert_int_eq(status, !has_even ? HW_ERR_RANGE : t.least < 0 ? HW_ERR_NOFIT : HW_OK);
        if (status != HW_OK) {
            continue;
        }
        bool mirrored = true;
        for (int k = 0; k < plan.count; k++) {
            const hw_hole *hole = &plan.holes[k];
            t.places[k] = hole->below_sts;
            mirrored =
                mirrored && hole->below_sts + plan.holes[plan.count - 1 - k].below_sts ==
                                plan.holes[0].below_sts + plan.holes[plan.count - 1].below_sts;
            ck_assert_int_eq(hole->cut_below + hole->cut_above, cut_of(&task, hole->below_sts));
            ck_assert(may_lie(&task, hole->gap_after - 1, hole->below_sts));
            ck_assert(k == 0 || hole->below_sts > plan.holes[k - 1].below_sts + task.hole_sts);
            ck_assert(k == 0 || hole->gap_after > plan.holes[k - 1].gap_after);
            cutting += hole->cut_below + hole->cut_above > 0 ? 1 : 0;
        }
        ck_assert_int_eq(cost_of(&task, t.even, t.places), t.least);
        ck_assert(mirrored || t.least_mirrored != t.least);
        ck_assert_int_eq(plan.even, plan.most_between - plan.least_between <= 1);
        turned += plan.count > 2 && mirrored ? 1 : 0;
        found++;
    }
    ck_assert_int_gt(found, 500);
    ck_assert_int_gt(cutting, 500);
    ck_assert_int_gt(turned, 100);
}
END_TEST

/* By hand: figures of 4, gaps of 2, holes of 2, 16 motifs after 2 stitches: gaps begin after 6, 12,
 * ..., 90 of 98. Ends of 4 leave even places 4 and 92; 6 and 90 are the nearest, 14 repeats apart.
 * Four spaces of 3 and 4 repeats are as good in any order: 3, 4, 4, 3 are the same from both ends.
 */
START_TEST(same_from_both_ends)
{
    hw_holes_task task = { .sts = 98,
        .holes = 5,
        .hole_sts = 2,
        .end_sts = 4,
        .sts_per_10cm = 28.9,
        .repeat = 6,
        .gap = 2,
        .motifs = 16,
        .first_sts = 2 };
    static const int places[] = { 6, 24, 48, 72, 90 };
    hw_holes plan = plan_of(&task, &arena);
    for (int k = 0; k < 5; k++) {
        ck_assert_int_eq(plan.holes[k].below_sts, places[k]);
    }
    ck_assert(!plan.even);
    ck_assert_int_eq(plan.least_between, 16);
    ck_assert_int_eq(plan.most_between, 22);
    /* eight: 84 are seven spaces of 12 */
    task.holes = 8;
    plan = plan_of(&task, &arena);
    ck_assert(plan.even);
    ck_assert_int_eq(plan.most_between, 10);
    ck_assert_int_eq(plan.holes[0].below_sts, 6);
    ck_assert_int_eq(plan.holes[7].below_sts, 90);
}
END_TEST

/* By hand. The hole is made as a row begins, so it lies between that row and the one before: in
 * row 6 of 10 five rows lie between it and the fold. Across the fold the same cm are counted off in
 * rows of the facing; the row of the fold is half each layer's. Held at both ends, those rows are
 * half-way between their own height and as many of the face's depth (own choice, no source). */
START_TEST(rows_of_both_layers)
{
    static const struct {
        double band_rows, facing_rows; /* in 10 cm; plain has 40 */
        int face, band;
        hw_facing facing;
        int rows, face_row, facing_row;
        double face_cm, facing_cm;
    } rows[] = {
        /* 1.25 cm; 9 rows of 2.5 mm for 25 mm: 47.5 / 2 / 9 = 2.639 mm; 4.74 of them, 5: rows 12 to
         * 16 lie before row 17 */
        { 40, 40, 10, 6, HW_FACING_ROWS, 9, 6, 17, 1.25, 5 * 4.75 / 18 },
        /* tighter, rows of 2 mm, 18 for 25: 2.389 mm; 5.23, 5 */
        { 40, 50, 10, 6, HW_FACING_ROWS, 9, 6, 17, 1.25, 5 * 4.3 / 18 },
        /* as deep as 2.5 cm at 50: 12.5 rows, 13, 26 mm for 25: 1.962 mm; 6.37, 6 */
        { 40, 50, 10, 6, HW_FACING_DEPTH, 13, 6, 18, 1.25, 6 * 5.1 / 26 },
        /* looser, rows of 1/3 cm: 2.5 cm are 7.5, 8, 8/3 cm for 2.5: 3.229 mm; 3.87, 4 */
        { 40, 30, 10, 6, HW_FACING_DEPTH, 8, 6, 16, 1.25, 4 * (8 / 3.0 + 2.5) / 16 },
        /* a loose band, rows of 4 mm: 2 x 2.5 + 3 x 4 = 17 mm of 34; at 40 these are 13.6 rows, 14,
         * 35 mm for 34: 2.464 mm; 6.9, 7 */
        { 25, 40, 10, 6, HW_FACING_DEPTH, 14, 6, 19, 1.7, 7 * 6.9 / 28 },
        /* 9 rows: 5 to the fold, 12.5 mm of 22.5; 8 of 20: 2.656 mm; 4.71, 5 behind row 10 */
        { 40, 40, 9, 5, HW_FACING_ROWS, 8, 5, 16, 1.25, 5 * 4.25 / 16 },
        /* 13 rows: 7 to the fold, 17.5 mm of 32.5; 12 of 30: 2.604 mm; 6.72, 7 behind row 14 */
        { 40, 40, 13, 5, HW_FACING_ROWS, 12, 7, 22, 1.75, 7 * 6.25 / 24 },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const hw_gauge gauge[HW_FABRIC_COUNT] = {
            [HW_MAIN] = { .sts_per_10cm = 30, .rows_per_10cm = 40 },
            [HW_BAND] = { .sts_per_10cm = 30, .rows_per_10cm = rows[i].band_rows },
            [HW_FACING] = { .sts_per_10cm = 30, .rows_per_10cm = rows[i].facing_rows },
        };
        const hw_hem_input in = { .face_rows = rows[i].face,
            .fold = HW_FOLD_LOOSE,
            .facing = rows[i].facing,
            .picked_up = true };
        hw_hem hem = { 0 };
        ck_assert_int_eq(hw_hem_plan(&in, rows[i].band, gauge, &hem, NULL), HW_OK);
        ck_assert_int_eq(hem.facing_rows, rows[i].rows);
        hw_hole_rows found = hw_holes_rows(&hem, gauge);
        ck_assert_int_eq(found.face_row, rows[i].face_row);
        ck_assert_int_eq(found.facing_row, rows[i].facing_row);
        ck_assert_double_eq_tol(found.face_cm, rows[i].face_cm, 1e-9);
        ck_assert_double_eq_tol(found.facing_cm, rows[i].facing_cm, 1e-9);
    }
}
END_TEST

/* Rows knitted one by one: the height of each. What lies between the slit and the fold is summed on
 * both sides, the facing as it is knitted, and as it lies when it is stretched to the face's depth:
 * the face's slit lies no further than half a row from the middle of the two. */
static double distance_cm(const double *heights, int from, int to)
{
    double sum_cm = 0;
    for (int i = from; i < to; i++) {
        sum_cm += heights[i];
    }
    return sum_cm;
}

START_TEST(layers_lie_on_each_other)
{
    unsigned state = 11;
    for (int round = 0; round < 2000; round++) {
        const hw_gauge gauge[HW_FABRIC_COUNT] = {
            [HW_MAIN] = { .sts_per_10cm = 30, .rows_per_10cm = 30 + hw_check_random(&state, 20) },
            [HW_BAND] = { .sts_per_10cm = 30, .rows_per_10cm = 30 + hw_check_random(&state, 20) },
            [HW_FACING] = { .sts_per_10cm = 30, .rows_per_10cm = 30 + hw_check_random(&state, 20) },
        };
        const hw_hem_input in = { .depth_cm = 1.5 + hw_check_random(&state, 30) / 10.0,
            .fold = hw_check_random(&state, 2) == 0 ? HW_FOLD_LOOSE : HW_FOLD_PICOT,
            .facing = hw_check_random(&state, 2) == 0 ? HW_FACING_ROWS : HW_FACING_DEPTH,
            .picked_up = true };
        int band = 1 + hw_check_random(&state, 8);
        hw_hem hem = { 0 };
        ck_assert_int_eq(hw_hem_plan(&in, band, gauge, &hem, NULL), HW_OK);
        hw_hole_rows found = hw_holes_rows(&hem, gauge);
        double heights[HW_MAX_ROWS] = { 0 };
        int fold = hem.face_rows + hem.fold_rows;
        for (int i = 0; i < hem.total_rows; i++) {
            bool in_band = i >= hem.above_rows && i < hem.above_rows + hem.band_rows;
            hw_fabric fabric = i >= fold ? HW_FACING : in_band ? HW_BAND : HW_MAIN;
            heights[i] = 10 / gauge[fabric].rows_per_10cm;
        }
        double face_cm = distance_cm(heights, found.face_row - 1, hem.face_rows);
        double facing_cm = distance_cm(heights, fold, found.facing_row - 1);
        double stretched_cm = facing_cm * hem.face_cm / hem.facing_cm;
        double middle_cm = (facing_cm + stretched_cm) / 2;
        double row_cm = (hem.facing_cm + hem.face_cm) / 2 / hem.facing_rows;
        bool at_end = found.facing_row == hem.total_rows && middle_cm < face_cm;
        ck_assert(at_end || fabs(face_cm - middle_cm) <= row_cm / 2 + 1e-9);
        ck_assert_double_eq_tol(found.face_cm, face_cm, 1e-9);
        ck_assert_double_eq_tol(found.facing_cm, middle_cm, 1e-9);
        ck_assert(found.face_row > 1 && found.face_row <= hem.face_rows);
        ck_assert(found.facing_row > fold + 1 && found.facing_row <= hem.total_rows);
    }
}
END_TEST

/* By hand: 7 holes of 4, 3 at each end and 6 between are 40 stitches. */
START_TEST(refusals)
{
    hw_holes_task task = { .sts = 39, .holes = 7, .hole_sts = 4, .end_sts = 3, .sts_per_10cm = 25 };
    hw_holes plan = { .count = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_holes_plan(&task, &arena, &plan, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "need a band of 40 stitches, and this one has 39"));
    task.sts = 40;
    ck_assert_int_eq(hw_holes_plan(&task, &arena, &plan, NULL), HW_OK);
    ck_assert_int_eq(plan.least_between, 1);
    /* 7 motifs have 6 gaps */
    task = (hw_holes_task){ .sts = 100,
        .holes = 7,
        .hole_sts = 2,
        .end_sts = 3,
        .sts_per_10cm = 25,
        .repeat = 14,
        .gap = 4,
        .motifs = 7,
        .first_sts = 3 };
    plan.count = 77;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_holes_plan(&task, &arena, &plan, &err), HW_ERR_NOFIT);
    ck_assert(hw_check_says(&err, HW_ERR_NOFIT, "do not find 7 places between 7 figures"));
    task.motifs = 0;
    ck_assert_int_eq(hw_holes_plan(&task, &arena, &plan, NULL), HW_ERR_NOFIT);
    ck_assert_int_eq(plan.count, 77);
}
END_TEST

static hw_status plan_three(hw_arena *room)
{
    const hw_holes_task task = { .sts = 95,
        .holes = 3,
        .hole_sts = 2,
        .end_sts = 4,
        .sts_per_10cm = 25,
        .repeat = 8,
        .gap = 3,
        .motifs = 12,
        .first_sts = 1 };
    hw_holes plan = { .count = 77 };
    hw_status status = hw_holes_plan(&task, room, &plan, NULL);
    ck_assert_int_eq(plan.count, status == HW_OK ? 3 : 77);
    return status;
}

START_TEST(no_memory)
{
    ck_assert_int_eq(hw_check_refusals(plan_three, false), 7);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { published_spacing, remainders, in_gaps_by_hand,
        best_of_all_places, same_from_both_ends, rows_of_both_layers, layers_lie_on_each_other,
        refusals, no_memory };
    return fixture_run("buttonhole", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
