/* Alternatives: each against the choice made directly, the ranking, and what would mend a count.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/alternative.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "counting.h"
#include "fixture.h"

enum { MOTIFS = 10000 };

static const unsigned char figure[HW_MAX_CHART_COLUMNS] = { HW_CONTRAST };

typedef struct {
    counting c;
    hw_grading chosen;
    hw_motif motif;
    int card_gaps[8];
    hw_alternatives_task task;
} trial;

static hw_status choose(const hw_counts_task *task, hw_arena *room, hw_grading *out)
{
    return hw_grade_choose(task, room, out, NULL);
}

/* A front and a back in four sizes, a figure of 5 columns on a card of 24. */
static void open(trial *t, hw_arena *room)
{
    memset(t, 0, sizeof *t);
    unsigned state = 21;
    counting_open(&t->c, 4, 2);
    counting_grow(&t->c, &state, 3);
    counting_ring(&t->c, 0, 1);
    ck_assert_int_eq(choose(&t->c.task, room, &t->chosen), HW_OK);
    static const int gaps[] = { 1, 3, 7, 19 };
    memcpy(t->card_gaps, gaps, sizeof gaps);
    t->motif = (hw_motif){ .chart = { "heart", 5, 1, figure },
        .gap = 1,
        .repeat = 6,
        .fits_card = true,
        .card_columns = 24,
        .card_gaps = t->card_gaps,
        .card_gap_count = 4 };
    t->task = (hw_alternatives_task){
        .counts = &t->c.task, .chosen = &t->chosen, .motif = &t->motif, .ease_cm = 1
    };
}

static const hw_alternative *find(const hw_alternatives *all, const char *what)
{
    for (int i = 0; i < all->count; i++) {
        if (strcmp(all->list[i].what, what) == 0) {
            return &all->list[i];
        }
    }
    ck_abort_msg("no alternative `%s`", what);
    return NULL;
}

static double further(double a, double b)
{
    return fabs(b) > fabs(a) ? b : a;
}

/* Everything that an alternative says, added up again from a choice. */
static void check_same(const hw_alternative *a, const hw_counts_task *task, const hw_grading *g)
{
    ck_assert(a->possible);
    ck_assert_double_eq_tol(a->total_cost, g->total_cost, 1e-9 * (1 + g->total_cost));
    int inside = 0;
    int halves = 0;
    int broken = 0;
    double worst_cm = 0;
    for (int i = 0; i < task->sizes; i++) {
        double off_cm = 0;
        for (int p = 0; p < task->pieces; p++) {
            const hw_fit *fit = &g->fits[i * task->pieces + p];
            off_cm = further(further(off_cm, fit->band_off_cm), fit->main_off_cm);
            inside += fit->inside;
            int off = abs(fit->margin[HW_LEFT] - fit->margin[HW_RIGHT]);
            halves = off > halves ? off : halves;
        }
        ck_assert_double_eq_tol(a->off_cm[i], off_cm, 1e-12);
        worst_cm = fmax(worst_cm, fabs(off_cm));
        for (int s = 0; s < task->garment->seam_count; s++) {
            int off = abs(g->seam_breaks[i * task->garment->seam_count + s]);
            broken = off > broken ? off : broken;
        }
    }
    ck_assert_int_eq(a->inside, inside);
    ck_assert_int_eq(a->most_off_centre_halves, halves);
    ck_assert_int_eq(a->most_break_sts, broken);
    ck_assert_double_eq_tol(a->worst_cm, worst_cm, 1e-12);
}

/* The order: possible first, then those that fit the card, then by cost in millionths, then in the
 * order in which they were thought of. */
static void check_ranked(const hw_alternatives *all)
{
    for (int i = 1; i < all->count; i++) {
        const hw_alternative *a = &all->list[i - 1];
        const hw_alternative *b = &all->list[i];
        int order = (int)b->possible - (int)a->possible;
        order = order != 0 ? order : (int)b->fits_card - (int)a->fits_card;
        long long more = hw_cost_whole(a->total_cost) - hw_cost_whole(b->total_cost);
        order = order != 0 ? order : (more > 0) - (more < 0);
        order = order != 0 ? order : a->order - b->order;
        ck_assert_int_lt(order, 0);
    }
}

/* By hand: one plan, three other gaps, eases of -1, -0.5, 0.5 and 1 cm, a motif more and one fewer
 * in each of two pieces. Each says what hw_grade_choose says of the same changed task. */
START_TEST(each_is_exact)
{
    static trial t;
    open(&t, &arena);
    hw_alternatives all = { 0 };
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    ck_assert_int_eq(all.count, 1 + 3 + 4 + 4);
    check_ranked(&all);
    check_same(find(&all, "as planned"), &t.c.task, &t.chosen);
    ck_assert_int_eq(find(&all, "as planned")->kind, HW_ALTER_NOTHING);
    for (int i = 1; i < 4; i++) {
        char what[16];
        (void)snprintf(what, sizeof what, "gap %d", t.card_gaps[i]);
        hw_counts_task changed = t.c.task;
        changed.gap = t.card_gaps[i];
        changed.repeat = 5 + changed.gap;
        hw_grading g = { 0 };
        ck_assert_int_eq(choose(&changed, &arena, &g), HW_OK);
        const hw_alternative *a = find(&all, what);
        check_same(a, &changed, &g);
        ck_assert_int_eq(a->kind, HW_ALTER_GAP);
        ck_assert_int_eq(a->gap, changed.gap);
        ck_assert_int_eq(a->repeat, changed.repeat);
        ck_assert(a->fits_card);
    }
}
END_TEST

/* By hand: the front's band is half the hem and its plain part a third of it, the back's is the hem
 * twice and 1 cm; 0.5 cm more round the hem is 0.25 and 0.1667 cm more, and 1 cm more. */
START_TEST(ease_follows_the_rules)
{
    static trial t;
    open(&t, &arena);
    t.c.pieces[0].band_width = (hw_rule){ .terms = { { 0.5, "hem", true } }, .count = 1 };
    t.c.pieces[0].main_width = (hw_rule){ .terms = { { 1 / 3.0, "hem", true } }, .count = 1 };
    t.c.pieces[1].band_width = (hw_rule){
        .terms = { { 1.5, "hem", true }, { 0.5, "waist", true } }, .count = 2, .constant_cm = 1
    };
    t.c.pieces[1].main_width = t.c.pieces[1].band_width;
    hw_alternatives all = { 0 };
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    static const struct {
        const char *what;
        double cm;
    } rows[] = { { "finished hem -1 cm", -1 }, { "finished hem -0.5 cm", -0.5 },
        { "finished hem +0.5 cm", 0.5 }, { "finished hem +1 cm", 1 } };
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        hw_target targets[8];
        for (int i = 0; i < 8; i++) {
            targets[i] = t.c.targets[i];
            targets[i].band_cm += (i % 2 == 0 ? 0.5 : 2) * rows[r].cm;
            targets[i].main_cm += (i % 2 == 0 ? 1 / 3.0 : 2) * rows[r].cm;
        }
        hw_counts_task changed = t.c.task;
        changed.targets = targets;
        hw_grading g = { 0 };
        ck_assert_int_eq(choose(&changed, &arena, &g), HW_OK);
        check_same(find(&all, rows[r].what), &changed, &g);
        ck_assert_int_eq(find(&all, rows[r].what)->kind, HW_ALTER_EASE);
    }
}
END_TEST

/* By hand: the widths shrink to nothing at -15 cm and are not tried; nothing is said of them. */
START_TEST(impossible)
{
    static trial t;
    open(&t, &arena);
    for (int p = 0; p < 2; p++) {
        t.c.pieces[p].band_width = (hw_rule){ .terms = { { 1, "hem", true } }, .count = 1 };
        t.c.pieces[p].main_width = t.c.pieces[p].band_width;
        for (int i = 0; i < 4; i++) {
            counting_want(&t.c, i, p, 15 + i);
        }
    }
    ck_assert_int_eq(choose(&t.c.task, &arena, &t.chosen), HW_OK);
    t.task.ease_cm = 15.2;
    t.c.task.bed = 199; /* one less than 198 stitches and two edges */
    hw_motif_input motifs[] = {
        { .chart = { "wider than the bed", 198, 1, figure }, .gap = 2 },
        { .chart = { "wider than a repeat may be", 198, 1, figure }, .gap = 3 },
    };
    t.task.motifs = motifs;
    t.task.motif_count = 2;
    hw_alternatives all = { 0 };
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    check_ranked(&all);
    ck_assert_int_eq(all.count, 1 + 3 + 60 + 4 + 2);
    ck_assert(!find(&all, "finished hem -15 cm")->possible);
    ck_assert(find(&all, "finished hem -14.5 cm")->possible);
    ck_assert(!find(&all, "wider than the bed")->possible);
    ck_assert(!find(&all, "wider than a repeat may be")->possible);
    int possible = 0;
    for (int i = 0; i < all.count; i++) {
        const hw_alternative *a = &all.list[i];
        possible += a->possible;
        if (!a->possible) {
            ck_assert_int_ge(i, possible); /* behind all that are */
            ck_assert_double_eq_tol(a->total_cost, 0, 1e-12);
            ck_assert_int_eq(a->inside, 0);
        }
    }
}
END_TEST

/* A motif more or fewer, added up by hand from the chosen counts: six stitches each, everywhere in
 * one piece and in the piece that mirrors it; a piece that mirrors has none of its own. */
START_TEST(motif_more_or_fewer)
{
    static trial t;
    open(&t, &arena);
    unsigned state = 4;
    counting_open(&t.c, 3, 3);
    counting_grow(&t.c, &state, 3);
    t.c.pieces[2].mirror_of = 0;
    for (int i = 0; i < 3; i++) {
        t.c.targets[i * 3 + 2] = t.c.targets[i * 3];
    }
    t.task.ease_cm = 0;
    ck_assert_int_eq(choose(&t.c.task, &arena, &t.chosen), HW_OK);
    hw_alternatives all = { 0 };
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    ck_assert_int_eq(all.count, 1 + 3 + 4);
    static const struct {
        const char *what;
        int piece, sts;
    } rows[] = { { "a: one motif fewer", 0, -6 }, { "a: one motif more", 0, 6 },
        { "b: one motif fewer", 1, -6 }, { "b: one motif more", 1, 6 } };
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        double cost = 0;
        int inside = 0;
        for (int i = 0; i < 9; i++) {
            const hw_fit *fit = &t.chosen.fits[i];
            int sts = fit->visible_sts + (i % 3 % 2 == rows[r].piece % 2 ? rows[r].sts : 0);
            double off_cm = sts / 2.5 - t.c.targets[i].band_cm;
            cost += 2 * off_cm * off_cm + fit->cost.centre + fit->cost.grade;
            inside += fabs(off_cm) <= 1;
        }
        const hw_alternative *a = find(&all, rows[r].what);
        ck_assert_int_eq(a->kind, HW_ALTER_COUNT);
        ck_assert_double_eq_tol(a->total_cost, cost, 1e-9 * cost);
        ck_assert_int_eq(a->inside, inside);
    }
}
END_TEST

/* Without a card: three gaps narrower, three wider, none below 0. */
START_TEST(gaps_without_card)
{
    static trial t;
    open(&t, &arena);
    t.motif.card_columns = 0;
    t.motif.card_gap_count = 0;
    t.task.ease_cm = 0;
    hw_alternatives all = { 0 };
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    ck_assert_int_eq(all.count, 1 + 4 + 4);
    static const char *const gaps[] = { "gap 0", "gap 2", "gap 3", "gap 4" };
    for (int i = 0; i < 4; i++) {
        const hw_alternative *a = find(&all, gaps[i]);
        ck_assert(a->fits_card);
        ck_assert_int_eq(a->order, i + 1);
    }
}
END_TEST

/* Motifs of one repeat and gap share an answer, whoever had it first, and stay in order; a repeat
 * that does not divide the card ranks behind all that do, however well it fits. */
START_TEST(motifs_share)
{
    static trial t;
    open(&t, &arena);
    t.task.ease_cm = 0;
    hw_motif_input motifs[] = {
        { .chart = { "as the plan", 5, 1, figure }, .gap = 1 },
        { .chart = { "as gap 3", 5, 1, figure }, .gap = 3 },
        { .chart = { "new", 4, 1, figure }, .gap = 0 },
        { .chart = { "as new", 4, 1, figure }, .gap = 0 },
        { .chart = { "not on the card", 4, 1, figure }, .gap = 3 },
        { .chart = { "same repeat, other gap", 4, 1, figure }, .gap = 2 },
    };
    t.task.motifs = motifs;
    t.task.motif_count = 6;
    hw_alternatives all = { 0 };
    long before = heap.grabs;
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    long with = heap.grabs - before;
    check_ranked(&all);
    check_same(find(&all, "as the plan"), &t.c.task, &t.chosen);
    ck_assert_double_eq_tol(
        find(&all, "as gap 3")->total_cost, find(&all, "gap 3")->total_cost, 1e-12);
    for (int m = 2; m < 6; m++) {
        hw_counts_task changed = t.c.task;
        changed.gap = motifs[m].gap;
        changed.repeat = motifs[m].chart.width + motifs[m].gap;
        hw_grading g = { 0 };
        ck_assert_int_eq(choose(&changed, &arena, &g), HW_OK);
        const hw_alternative *a = find(&all, motifs[m].chart.name);
        check_same(a, &changed, &g);
        ck_assert_int_eq(a->kind, HW_ALTER_MOTIF);
        ck_assert_int_eq(a->fits_card, 24 % changed.repeat == 0);
    }
    ck_assert_ptr_eq(find(&all, "as new")[-1].what, motifs[2].chart.name); /* next to each other */
    ck_assert_str_eq(all.list[all.count - 1].what, "not on the card");
    /* A shared one costs no more than its line and its words: a choice takes many requests. */
    t.task.motif_count = 1;
    before = heap.grabs;
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    t.task.motif_count = 0;
    long middle = heap.grabs;
    ck_assert_int_eq(hw_alternatives_find(&t.task, &arena, &all, NULL), HW_OK);
    ck_assert_int_lt(middle - before - (heap.grabs - middle), 10);
    ck_assert_int_gt(with, heap.grabs - middle + 20);
}
END_TEST

/* Many motifs by chance, in twenty sizes: they are all ranked, and those alike share an answer. */
START_TEST(many_motifs)
{
    static trial t;
    static hw_motif_input motifs[MOTIFS];
    hw_mem plain = hw_mem_system();
    hw_arena room;
    hw_arena_init(&room, &plain, 1 << 16);
    open(&t, &room);
    unsigned state = 2;
    counting_open(&t.c, 20, 2);
    counting_grow(&t.c, &state, 2.5);
    counting_ring(&t.c, 0, 1);
    ck_assert_int_eq(choose(&t.c.task, &room, &t.chosen), HW_OK);
    for (int i = 0; i < MOTIFS; i++) {
        motifs[i] =
            (hw_motif_input){ .chart = { "any", 1 + hw_check_random(&state, 23), 1, figure },
                .gap = hw_check_random(&state, 5) };
    }
    t.task.motifs = motifs;
    t.task.motif_count = MOTIFS;
    hw_alternatives all = { 0 };
    ck_assert_int_eq(hw_alternatives_find(&t.task, &room, &all, NULL), HW_OK);
    ck_assert_int_eq(all.count, 1 + 3 + 4 + 4 + MOTIFS);
    check_ranked(&all);
    const double *costs[24][5] = { { NULL } };
    for (int i = 0; i < all.count; i++) {
        const hw_alternative *a = &all.list[i];
        if (a->kind == HW_ALTER_MOTIF) {
            const double **cost = &costs[a->repeat - a->gap][a->gap];
            *cost = *cost == NULL ? &a->total_cost : *cost;
            ck_assert_double_eq_tol(**cost, a->total_cost, 1e-12);
        }
    }
    hw_arena_release(&room);
}
END_TEST

/* Whether a count is inside, with the wanted widths changed and both gauges scaled. */
static bool inside(const counting *c, int sts, double wider_cm, double finer)
{
    double off_band =
        sts * 10 / (c->gauge[HW_BAND].sts_per_10cm * finer) - (c->targets[0].band_cm + wider_cm);
    double off_main =
        sts * 10 / (c->gauge[HW_MAIN].sts_per_10cm * finer) - (c->targets[0].main_cm + wider_cm);
    double most = c->task.choices.tolerance_cm * (1 + 1e-9);
    return fabs(off_band) <= most && fabs(off_main) <= most;
}

/* By property: what is said to mend a count does, by the definition of the tolerance, and 1 % less
 * of it does not; where nothing is said, no change of a fine grid does. */
START_TEST(mends)
{
    unsigned state = 8;
    int by_width = 0;
    int by_gauge = 0;
    int already = 0;
    for (int run = 0; run < 3000; run++) {
        counting c;
        counting_open(&c, 1, 1);
        c.gauge[HW_BAND].sts_per_10cm = 15 + hw_check_random(&state, 2000) / 100.0;
        c.gauge[HW_MAIN].sts_per_10cm =
            c.gauge[HW_BAND].sts_per_10cm * (0.9 + hw_check_random(&state, 200) / 1000.0);
        c.task.choices.tolerance_cm = 0.2 + hw_check_random(&state, 20) / 10.0;
        double wanted = 4 + hw_check_random(&state, 4000) / 100.0;
        c.targets[0] = (hw_target){ .band_cm = wanted,
            .main_cm = wanted + hw_check_random(&state, 100) / 100.0 };
        int sts = 20 + hw_check_random(&state, 100);
        hw_mend mend = hw_alternative_mend(&c.task, 0, 0, sts);
        double finer = mend.band_sts_per_10cm / c.gauge[HW_BAND].sts_per_10cm;
        if (inside(&c, sts, 0, 1)) {
            already++;
            ck_assert(mend.by_width && mend.by_gauge);
            ck_assert_double_eq_tol(mend.width_cm, 0, 1e-9);
            ck_assert_double_eq_tol(finer, 1, 1e-9);
            continue;
        }
        if (mend.by_width) {
            by_width++;
            ck_assert(inside(&c, sts, mend.width_cm, 1));
            ck_assert(!inside(&c, sts, mend.width_cm * 0.99, 1));
        }
        if (mend.by_gauge) {
            by_gauge++;
            ck_assert(inside(&c, sts, 0, finer));
            ck_assert(!inside(&c, sts, 0, 1 + (finer - 1) * 0.99));
        }
        for (int k = -400; k <= 400 && !mend.by_width; k++) {
            ck_assert(!inside(&c, sts, k / 10.0, 1));
        }
        for (int k = 1; k <= 400 && !mend.by_gauge; k++) {
            ck_assert(!inside(&c, sts, 0, k / 100.0));
        }
    }
    ck_assert_int_gt(already, 50);
    ck_assert_int_gt(by_width, 1000);
    ck_assert_int_gt(by_gauge, 1000);
    ck_assert_int_lt(by_width + already, 3000);
    ck_assert_int_lt(by_gauge + already, 3000);
}
END_TEST

/* By hand: a piece of 0.9 cm with a tolerance of 1 can be as narrow as you like, so no gauge is too
 * fine for it, and none is proposed; 100 stitches at 2.5 to the cm are 40 cm, 38.1 cm too wide. */
START_TEST(mend_of_next_to_nothing)
{
    counting c;
    counting_open(&c, 1, 1);
    counting_want(&c, 0, 0, 0.9);
    hw_mend mend = hw_alternative_mend(&c.task, 0, 0, 100);
    ck_assert(mend.by_width);
    ck_assert_double_eq_tol(mend.width_cm, 38.1, 1e-9);
    ck_assert(!mend.by_gauge);
}
END_TEST

START_TEST(refused)
{
    static trial t;
    long n = 0;
    for (bool reached = true; reached;) {
        hw_arena poor;
        hw_check_heap small;
        hw_check_open(&poor, &small, 0, false);
        open(&t, &poor);
        t.task.ease_cm = 0.5;
        t.motif.card_gap_count = 2;
        small.grabs = 0;
        small.refuse_at = ++n;
        hw_alternatives all = { .count = 77 };
        hw_err err = { 0 };
        hw_status status = hw_alternatives_find(&t.task, &poor, &all, &err);
        reached = small.grabs >= n;
        ck_assert_int_eq(status, reached ? HW_ERR_NOMEM : HW_OK);
        ck_assert(!reached || all.count == 77);
        ck_assert(!reached || hw_check_says(&err, HW_ERR_NOMEM, "not enough memory"));
        hw_check_close(&poor, &small);
    }
    ck_assert_int_gt(n, 100);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { each_is_exact, ease_follows_the_rules, impossible,
        motif_more_or_fewer, gaps_without_card, motifs_share, many_motifs, mends,
        mend_of_next_to_nothing, refused };
    return fixture_run("alternative", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
