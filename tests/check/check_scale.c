/* The choice of counts for many sizes and pieces: what it must manage, and how it refuses.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/grade.h"
#include "counting.h"
#include "support.h"

static hw_status choose(const counting *c, hw_arena *arena, hw_grading *out, hw_err *err)
{
    hw_status status = hw_grade_choose(&c->task, arena, out, err);
    if (status == HW_OK) {
        ck_assert_int_ge(out->passes, 1);
        ck_assert_int_ge(out->states, c->task.sizes);
        printf("%d sizes, %d pieces, %d seams, repeat %d, gap %d: %ld states, %d passes\n",
            c->task.sizes, c->task.pieces, c->garment.seam_count, c->task.repeat, c->task.gap,
            out->states, out->passes);
    }
    return status;
}

static double square(double x)
{
    return x * x;
}

/* What every choice must be: whole motifs, margins within the gap, on the bed, no count that falls
 * where no width does, costs that add up. Source: the definition, added up anew. */
static void check_sound(const counting *c, const hw_grading *g)
{
    const hw_counts_task *t = &c->task;
    double total = 0;
    for (int i = 0; i < t->sizes * t->pieces; i++) {
        const hw_fit *fit = &g->fits[i];
        int left = fit->margin[HW_LEFT];
        int right = fit->margin[HW_RIGHT];
        ck_assert(left >= 0 && left <= t->gap && right >= 0 && right <= t->gap);
        ck_assert_int_ge(fit->motifs, 1);
        ck_assert_int_eq(fit->visible_sts, fit->motifs * t->repeat - t->gap + left + right);
        ck_assert_int_le(fit->cast_on_sts, t->bed);
        double cm = fit->visible_sts * 10 / t->gauge[HW_BAND].sts_per_10cm;
        total += square((cm - t->targets[i].band_cm) / t->choices.tolerance_cm);
        cm = fit->visible_sts * 10 / t->gauge[HW_MAIN].sts_per_10cm;
        total += square((cm - t->targets[i].main_cm) / t->choices.tolerance_cm);
        total += t->choices.centre_weight * square((left - right) / 2.0);
        if (i >= t->pieces) {
            int step = fit->visible_sts - g->fits[i - t->pieces].visible_sts;
            double wanted = t->targets[i].band_cm - t->targets[i - t->pieces].band_cm;
            ck_assert(step >= 0 || wanted < 0);
            total += t->choices.grade_weight *
                     square((step * 10 / t->gauge[HW_BAND].sts_per_10cm - wanted) /
                            t->choices.tolerance_cm);
        }
    }
    for (int s = 0; s < t->sizes * c->garment.seam_count; s++) {
        const hw_seam *seam = &c->seams[s % c->garment.seam_count];
        const hw_fit *fits = &g->fits[s / c->garment.seam_count * t->pieces];
        int off = fits[seam->piece[0]].margin[seam->side[0]] +
                  fits[seam->piece[1]].margin[seam->side[1]] - t->gap;
        ck_assert_int_eq(g->seam_breaks[s], off);
        total += t->choices.seam_weight * off * off;
    }
    ck_assert_double_eq_tol(g->total_cost, total, 1e-9 * (1 + total));
}

static void check_choice(const counting *c)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_grading g = { 0 };
    ck_assert_int_eq(choose(c, &arena, &g, NULL), HW_OK);
    check_sound(c, &g);
    hw_check_close(&arena, &heap);
}

/* Rings of so many pieces, until there are twelve. */
static void open(counting *c, int sizes, int in_ring, double step_cm)
{
    unsigned state = 3;
    counting_open(c, sizes, HW_MAX_PIECES);
    counting_grow(c, &state, step_cm);
    for (int p = 0; p + in_ring <= HW_MAX_PIECES; p += in_ring) {
        counting_ring(c, p, p + in_ring - 1);
    }
}

/* All that a project may hold: sixty sizes of twelve pieces, in pairs, in threes and in fours. */
START_TEST(largest)
{
    static counting c;
    for (int in_ring = 2; in_ring <= 4; in_ring++) {
        open(&c, HW_MAX_SIZES, in_ring, 0.6);
        c.task.gap = in_ring < 4 ? 4 : 1;
        c.task.repeat = 5 + c.task.gap;
        c.task.bed = 400;
        check_choice(&c);
    }
}
END_TEST

/* Hand knitting with a wide figure far from the next: many margins, and no bed to speak of. */
START_TEST(wide_gap)
{
    static counting c;
    for (int gap = 10; gap <= 100; gap += 45) {
        unsigned state = 9;
        counting_open(&c, 7, 2);
        counting_grow(&c, &state, 9);
        counting_ring(&c, 0, 1);
        c.task.gap = gap;
        c.task.repeat = 2 * gap;
        c.task.bed = HW_MAX_STS;
        check_choice(&c);
    }
}
END_TEST

/* Nothing but the widths counts, and still there is one answer; ties are many. */
START_TEST(no_weights)
{
    static counting c;
    for (int in_ring = 2; in_ring <= 4; in_ring++) {
        open(&c, 20, in_ring, 1.1);
        c.task.gap = 3;
        c.task.repeat = 8;
        c.task.choices.centre_weight = 0;
        c.task.choices.seam_weight = 0;
        c.task.choices.grade_weight = 0;
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_grading g = { 0 };
        ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);
        check_sound(&c, &g);
        /* Every split of the plain stitches costs the same: the smallest left margin is taken. */
        for (int i = 0; i < c.task.sizes * c.task.pieces; i++) {
            const hw_fit *fit = &g.fits[i];
            ck_assert(fit->margin[HW_LEFT] == 0 || fit->margin[HW_RIGHT] == c.task.gap);
        }
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* Twelve pieces in one ring have more joint choices than anybody can look at: it says so, and what
 * to do. Without the seams each piece is chosen by itself. */
START_TEST(one_ring)
{
    static counting c;
    open(&c, 10, HW_MAX_PIECES, 0.6);
    c.task.gap = 4;
    c.task.repeat = 9;
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_grading g = { .passes = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(choose(&c, &arena, &g, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "too many pieces hang together by seams"));
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "leave out a seam"));
    ck_assert_int_eq(g.passes, 77);
    c.garment.seam_count = 0;
    ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);
    check_sound(&c, &g);
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: each row names what stands in the way and a way out of it. */
START_TEST(no_fit)
{
    static const struct {
        int gap, repeat, bed;
        double tolerance_cm, cm[2];
        bool centred, unbroken, within;
        const char *what, *way;
    } rows[] = {
        /* One motif of 30 stitches, a bed of 20. */
        { 0, 30, 20, 1, { 8, 8 }, false, false, false, "one motif of 30 stitches is wider",
            "use a narrower motif" },
        /* One motif fills the bed of 22 but for its edges: it fits, but is 1.1 cm too wide. */
        { 0, 20, 22, 1, { 6.9, 6.9 }, false, false, true, "size 1, a: no count of whole motifs",
            "make the tolerance larger" },
        /* 10 cm are 25 stitches; counts are multiples of 20. */
        { 0, 20, 200, 1, { 10, 10 }, false, false, true, "size 1, a: no count of whole motifs",
            "make the tolerance larger" },
        { 0, 20, 200, 1, { 10, 10 }, true, false, true, "always centred", "set the rule to `no`" },
        /* Both margins alike at every edge make an even number at each seam, never 1. */
        { 1, 6, 200, 1, { 40, 40 }, true, true, true, "size 1: no counts let the band run on",
            "set `unbroken seams` to `no`" },
        /* Counts are multiples of 12, 4.8 cm: 9.6 is within 0.5 of 9.7 and not of 10.2. */
        { 0, 12, 200, 0.5, { 9.7, 10.2 }, false, false, true, "size 2, a: no count", "tolerance" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        counting c;
        counting_open(&c, 2, 2);
        counting_ring(&c, 0, 1);
        c.task.gap = rows[i].gap;
        c.task.repeat = rows[i].repeat;
        c.task.bed = rows[i].bed;
        c.task.choices.tolerance_cm = rows[i].tolerance_cm;
        c.task.choices.exact_centre = rows[i].centred;
        c.task.choices.unbroken_seams = rows[i].unbroken;
        c.task.choices.keep_tolerance = rows[i].within;
        for (int k = 0; k < 4; k++) {
            counting_want(&c, k / 2, k % 2, rows[i].cm[k / 2]);
        }
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_grading g = { .passes = 77 };
        hw_err err = { 0 };
        ck_assert_int_eq(choose(&c, &arena, &g, &err), HW_ERR_NOFIT);
        ck_assert(hw_check_says(&err, HW_ERR_NOFIT, rows[i].what));
        ck_assert(hw_check_says(&err, HW_ERR_NOFIT, rows[i].way));
        ck_assert_int_eq(g.passes, 77);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* By hand: counts are 12 n stitches, 4.8 n cm of band, and the tolerance is 2.5 cm: each line below
 * leaves one count for each size. It may fall where the band's or the plain fabric's width does. */
START_TEST(may_fall)
{
    counting c;
    counting_open(&c, 2, 1);
    c.task.gap = 0;
    c.task.repeat = 12;
    c.task.choices.tolerance_cm = 2.5;
    c.task.choices.keep_tolerance = true;
    c.gauge[HW_MAIN].sts_per_10cm = 12.5;                          /* 9.6 n cm of plain fabric */
    c.targets[0] = (hw_target){ .band_cm = 7.2, .main_cm = 17.0 }; /* 24: 2.4 off, 2.2 off */
    c.targets[1] = (hw_target){ .band_cm = 7.2, .main_cm = 12.0 }; /* 12: 2.4 off, 2.4 off */
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_grading g = { 0 };
    ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);
    ck_assert_int_eq(g.fits[0].visible_sts, 24);
    ck_assert_int_eq(g.fits[1].visible_sts, 12);
    c.gauge[HW_MAIN].sts_per_10cm = 25;
    c.targets[0] = (hw_target){ .band_cm = 8, .main_cm = 8 };   /* 24: 1.6 off; 12: 3.2 off */
    c.targets[1] = (hw_target){ .band_cm = 6.5, .main_cm = 8 }; /* 24: 3.1 off; 12: 3.2 off */
    c.task.choices.tolerance_cm = 3.15;
    ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);        /* 24 in both */
    c.targets[1] = (hw_target){ .band_cm = 6.4, .main_cm = 7.9 }; /* 24: 3.2 off; 12: 3.1 off */
    ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);
    ck_assert_int_eq(g.fits[0].visible_sts, 24);
    ck_assert_int_eq(g.fits[1].visible_sts, 12);
    /* Knitted with 24 stitches already, a first size does not hold up the second. */
    int fixed[] = { 24, 0 };
    c.task.fixed_sts = fixed;
    counting_want(&c, 0, 0, 5);
    counting_want(&c, 1, 0, 5);
    ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);
    ck_assert_int_eq(g.fits[0].visible_sts, 24);
    ck_assert_int_eq(g.fits[1].visible_sts, 12);
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: repeat 6, gap 1, centred and unbroken, so of two pieces one has margins of 0 (6 n - 1)
 * and the other of 1 (6 n + 1). Within 0.85 cm: a of 40.0 can be 101 (40.4) alone, so b of 38.8 is
 * 97 (38.8). A size on, a of 41.9 can be 103 (41.2) alone, so b, as wide as before, is 95 (38.0):
 * it would fall although no width does. */
START_TEST(must_not_fall)
{
    counting c;
    counting_open(&c, 2, 2);
    counting_ring(&c, 0, 1);
    c.task.choices.tolerance_cm = 0.85;
    c.task.choices.keep_tolerance = true;
    c.task.choices.exact_centre = true;
    c.task.choices.unbroken_seams = true;
    counting_want(&c, 0, 0, 40.0);
    counting_want(&c, 0, 1, 38.8);
    counting_want(&c, 1, 0, 41.9);
    counting_want(&c, 1, 1, 38.8);
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_grading g = { .passes = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(choose(&c, &arena, &g, &err), HW_ERR_NOFIT);
    ck_assert(hw_check_says(&err, HW_ERR_NOFIT, "without getting fewer"));
    ck_assert(hw_check_says(&err, HW_ERR_NOFIT, "make the tolerance larger"));
    ck_assert_int_eq(g.passes, 77);
    counting_want(&c, 1, 1, 38.7); /* a hair narrower, and it may */
    ck_assert_int_eq(choose(&c, &arena, &g, NULL), HW_OK);
    static const int sts[] = { 101, 97, 103, 95 };
    for (int i = 0; i < 4; i++) {
        ck_assert_int_eq(g.fits[i].visible_sts, sts[i]);
    }
    hw_check_close(&arena, &heap);
}
END_TEST

/* By hand: from 20 motifs of 6 with gap 1 (119 stitches), two more are 131, 12 x 0.4 = 4.8 cm. */
START_TEST(change)
{
    counting c;
    counting_open(&c, 2, 3);
    c.pieces[2].mirror_of = 0;
    for (int k = 0; k < 6; k++) {
        counting_want(&c, k / 3, k % 3, 47.6); /* 119 stitches */
    }
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_grading from = { 0 };
    ck_assert_int_eq(choose(&c, &arena, &from, NULL), HW_OK);
    ck_assert_int_eq(from.fits[0].visible_sts, 119);
    hw_grading to = { 0 };
    hw_grade_changing changing = { .task = &c.task, .from = &from, .piece = 0, .motifs = 2 };
    ck_assert_int_eq(hw_grade_change(&changing, &arena, &to), HW_OK);
    static const int sts[] = { 131, 119, 131 };
    for (int i = 0; i < 6; i++) {
        ck_assert_int_eq(to.fits[i].visible_sts, sts[i % 3]);
        ck_assert_int_eq(to.fits[i].motifs, sts[i % 3] / 6 + 1);
        ck_assert_double_eq_tol(to.fits[i].band_off_cm, sts[i % 3] == 131 ? 4.8 : 0, 1e-9);
        ck_assert_int_eq(to.fits[i].inside, sts[i % 3] == 119);
    }
    check_sound(&c, &to);
    changing.motifs = -20;
    ck_assert_int_eq(hw_grade_change(&changing, &arena, &to), HW_ERR_NOFIT);
    changing.motifs = -19; /* one is left */
    ck_assert_int_eq(hw_grade_change(&changing, &arena, &to), HW_OK);
    ck_assert_int_eq(to.fits[0].motifs, 1);
    changing.motifs = 13; /* 197 stitches; free edges take none, so 13 more fit on 200 */
    ck_assert_int_eq(hw_grade_change(&changing, &arena, &to), HW_OK);
    changing.motifs = 14;
    ck_assert_int_eq(hw_grade_change(&changing, &arena, &to), HW_ERR_NOFIT);
    ck_assert_int_eq(to.fits[0].visible_sts, 197);
    hw_check_close(&arena, &heap);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { largest, wide_gap, no_weights, one_ring, no_fit, may_fall,
        must_not_fall, change };
    return hw_check_run(hw_check_suite("scale", tests, sizeof tests / sizeof tests[0]));
}
