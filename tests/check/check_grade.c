/* The choice of counts against every possible choice, for thousands of small random projects.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "core/grade.h"
#include "counting.h"
#include "support.h"

/* The cost below is written anew from its definition: squares of width errors in tolerances for
 * band and plain fabric, weighted squares of half the margins' difference, of the break at each
 * seam, and of the error of each step from size to size. Source of the definition: the project's
 * own choice; of the method: common practice in operations research, every case is tried. */

enum { PIECES = 3, SIZES = 4, MOST_CASES = 400000 };

typedef struct {
    int n, ml, mr, v;
} option;

typedef struct {
    hw_counts_task task;
    hw_garment garment;
    hw_piece pieces[PIECES];
    hw_seam seams[4];
    hw_target targets[PIECES * SIZES];
    hw_gauge gauge[HW_FABRIC_COUNT];
    const char *names[SIZES];
    option options[200];
    int option_count;
    unsigned long long seed;
} project;

static unsigned below(project *p, unsigned n)
{
    p->seed ^= p->seed << 13;
    p->seed ^= p->seed >> 7;
    p->seed ^= p->seed << 17;
    return (unsigned)((p->seed >> 11) % n);
}

static double between(project *p, double least, double most)
{
    return least + (most - least) * below(p, 10001) / 10000.0;
}

static void make_garment(project *p)
{
    static const char *const names[] = { "a", "b", "c" };
    p->garment.pieces = p->pieces;
    p->garment.seams = p->seams;
    for (int k = 0; k < p->task.pieces; k++) {
        p->pieces[k] = (hw_piece){ .name = names[k], .mirror_of = -1, .edge_sts = { -1, -1 } };
    }
    p->garment.piece_count = p->task.pieces;
    if (p->task.pieces > 1 && below(p, 4) > 0) {
        p->seams[p->garment.seam_count++] =
            (hw_seam){ .piece = { 0, 1 }, .side = { HW_RIGHT, HW_LEFT } };
        if (below(p, 2) > 0) {
            p->seams[p->garment.seam_count++] =
                (hw_seam){ .piece = { 1, 0 }, .side = { HW_RIGHT, HW_LEFT } };
        }
    }
    if (p->task.pieces == 3) {
        p->pieces[2].mirror_of = below(p, 2) > 0 ? 0 : -1;
        if (below(p, 2) > 0) {
            p->seams[p->garment.seam_count++] =
                (hw_seam){ .piece = { 2, 1 }, .side = { HW_LEFT, HW_RIGHT } };
        }
    }
    /* An edge can be in one seam only. */
    if (p->garment.seam_count == 3) {
        p->garment.seam_count = 2;
        p->seams[1] = p->seams[2];
    }
}

static void make_targets(project *p)
{
    double room_cm = p->task.bed * 10 / p->gauge[HW_BAND].sts_per_10cm;
    for (int k = 0; k < p->task.pieces; k++) {
        double cm = between(p, 0.3, 0.7) * room_cm;
        for (int i = 0; i < p->task.sizes; i++) {
            int at = i * p->task.pieces + k;
            p->targets[at].band_cm = fmax(0.1, fmin(cm, room_cm * 0.9));
            p->targets[at].main_cm = p->targets[at].band_cm * (below(p, 3) == 0 ? 1.05 : 1);
            int mirrored = p->pieces[k].mirror_of;
            if (mirrored >= 0) {
                p->targets[at] = p->targets[i * p->task.pieces + mirrored];
            }
            cm += between(p, -0.05, 0.2) * room_cm;
        }
    }
}

static void make_options(project *p)
{
    const hw_counts_task *t = &p->task;
    p->option_count = 0;
    for (int n = 1; n * t->repeat - t->gap <= t->bed; n++) {
        for (int ml = 0; ml <= t->gap; ml++) {
            for (int mr = 0; mr <= t->gap; mr++) {
                int v = n * t->repeat - t->gap + ml + mr;
                if (v <= t->bed) {
                    p->options[p->option_count++] = (option){ n, ml, mr, v };
                }
            }
        }
    }
}

/* Pieces that choose for themselves. */
static int choosers(const project *p)
{
    return p->task.pieces - (p->task.pieces == 3 && p->pieces[2].mirror_of >= 0);
}

static double cases(const project *p)
{
    return pow(p->option_count, choosers(p) * p->task.sizes);
}

static void make_project(project *p, unsigned long long seed)
{
    *p = (project){ .seed = seed * 2654435761ULL + 88172645463325252ULL };
    do {
        unsigned long long at = p->seed;
        *p = (project){ .seed = at };
        hw_counts_task *t = &p->task;
        t->pieces = 1 + (int)below(p, PIECES);
        t->sizes = 1 + (int)below(p, SIZES);
        t->gap = (int)below(p, 3);
        t->repeat = t->gap + 1 + (int)below(p, 6);
        t->bed = t->repeat * (1 + (int)below(p, 4)) + (int)below(p, 4);
        p->gauge[HW_BAND].sts_per_10cm = between(p, 15, 40);
        p->gauge[HW_MAIN].sts_per_10cm = p->gauge[HW_BAND].sts_per_10cm * between(p, 0.9, 1.1);
        make_garment(p);
        make_targets(p);
        make_options(p);
        t->choices = (hw_choices){ .tolerance_cm = between(p, 0.2, 2),
            .centre_weight = below(p, 5) == 0 ? 0 : between(p, 0, 2),
            .seam_weight = below(p, 5) == 0 ? 0 : between(p, 0, 2),
            .grade_weight = below(p, 5) == 0 ? 0 : between(p, 0, 2),
            .exact_centre = below(p, 8) == 0,
            .unbroken_seams = below(p, 8) == 0,
            .keep_tolerance = below(p, 8) == 0 };
    } while (cases(p) > MOST_CASES || p->option_count == 0);
    for (int i = 0; i < p->task.sizes; i++) {
        p->names[i] = "size";
    }
    p->task.size_names = p->names;
    p->task.garment = &p->garment;
    p->task.targets = p->targets;
    p->task.gauge = p->gauge;
}

static double square(double x)
{
    return x * x;
}

/* One choice for all sizes: [size * pieces + piece]. */
typedef struct {
    option at[PIECES * SIZES];
} choice;

static bool fits_rules(const project *p, const choice *c)
{
    const hw_counts_task *t = &p->task;
    for (int i = 0; i < t->sizes * t->pieces; i++) {
        double band = c->at[i].v * 10 / t->gauge[HW_BAND].sts_per_10cm - t->targets[i].band_cm;
        double main = c->at[i].v * 10 / t->gauge[HW_MAIN].sts_per_10cm - t->targets[i].main_cm;
        double most = t->choices.tolerance_cm * (1 + 1e-9);
        if (t->choices.keep_tolerance && (fabs(band) > most || fabs(main) > most)) {
            return false;
        }
        if (t->choices.exact_centre && c->at[i].ml != c->at[i].mr) {
            return false;
        }
        if (i < t->pieces) {
            continue;
        }
        const hw_target *now = &t->targets[i];
        const hw_target *before = &t->targets[i - t->pieces];
        bool falls = now->band_cm < before->band_cm || now->main_cm < before->main_cm;
        if (!falls && c->at[i].v < c->at[i - t->pieces].v) {
            return false;
        }
    }
    return true;
}

static int break_of(const project *p, const choice *c, int size, int seam)
{
    int sum = -p->task.gap;
    for (int e = 0; e < 2; e++) {
        const option *o = &c->at[size * p->task.pieces + p->seams[seam].piece[e]];
        sum += p->seams[seam].side[e] == HW_LEFT ? o->ml : o->mr;
    }
    return sum;
}

/* Negative where a rule forbids the choice. */
static double cost_of(const project *p, const choice *c)
{
    const hw_counts_task *t = &p->task;
    if (!fits_rules(p, c)) {
        return -1;
    }
    double cost = 0;
    for (int i = 0; i < t->sizes * t->pieces; i++) {
        const option *o = &c->at[i];
        double per_cm = t->gauge[HW_BAND].sts_per_10cm / 10;
        cost += square((o->v / per_cm - t->targets[i].band_cm) / t->choices.tolerance_cm);
        cost += square((o->v * 10 / t->gauge[HW_MAIN].sts_per_10cm - t->targets[i].main_cm) /
                       t->choices.tolerance_cm);
        cost += t->choices.centre_weight * square((o->ml - o->mr) / 2.0);
        if (i >= t->pieces) {
            int step = o->v - c->at[i - t->pieces].v;
            double wanted = t->targets[i].band_cm - t->targets[i - t->pieces].band_cm;
            cost += t->choices.grade_weight *
                    square((step / per_cm - wanted) / t->choices.tolerance_cm);
        }
    }
    for (int i = 0; i < t->sizes; i++) {
        for (int s = 0; s < p->garment.seam_count; s++) {
            int broken = break_of(p, c, i, s);
            if (t->choices.unbroken_seams && broken != 0) {
                return -1;
            }
            cost += t->choices.seam_weight * square(broken);
        }
    }
    return cost;
}

typedef struct {
    double cost; /* negative: none found */
    int stitches, left;
} best;

static void sums(const project *p, const choice *c, best *b)
{
    b->stitches = b->left = 0;
    for (int i = 0; i < p->task.sizes * p->task.pieces; i++) {
        b->stitches += c->at[i].v;
        b->left += c->at[i].ml;
    }
}

/* Every choice, by counting in base option_count; ties by stitches, then by left margins. */
static best try_all(const project *p)
{
    int pieces = choosers(p);
    int digits = pieces * p->task.sizes;
    int index[PIECES * SIZES] = { 0 };
    best found = { -1, 0, 0 };
    for (;;) {
        choice c;
        for (int d = 0; d < digits; d++) {
            c.at[d / pieces * p->task.pieces + d % pieces] = p->options[index[d]];
        }
        for (int i = 0; i < p->task.sizes && pieces < p->task.pieces; i++) {
            option o = c.at[i * p->task.pieces];
            c.at[i * p->task.pieces + 2] = (option){ o.n, o.mr, o.ml, o.v };
        }
        best now = { cost_of(p, &c), 0, 0 };
        sums(p, &c, &now);
        bool tie = fabs(now.cost - found.cost) <= 1e-12 * (1 + found.cost);
        bool fewer = now.stitches < found.stitches ||
                     (now.stitches == found.stitches && now.left < found.left);
        if (now.cost >= 0 && (found.cost < 0 || (tie ? fewer : now.cost < found.cost))) {
            found = now;
        }
        int d = 0;
        while (d < digits && ++index[d] == p->option_count) {
            index[d++] = 0;
        }
        if (d == digits) {
            return found;
        }
    }
}

static choice chosen(const project *p, const hw_grading *g)
{
    choice c = { 0 };
    for (int i = 0; i < p->task.sizes * p->task.pieces; i++) {
        const hw_fit *f = &g->fits[i];
        c.at[i] = (option){ f->motifs, f->margin[HW_LEFT], f->margin[HW_RIGHT], f->visible_sts };
        ck_assert_int_eq(
            f->visible_sts, f->motifs * p->task.repeat - p->task.gap + c.at[i].ml + c.at[i].mr);
        ck_assert_int_le(f->cast_on_sts, p->task.bed);
    }
    return c;
}

enum { RUNS = 40, EACH = 100 };

START_TEST(every_choice_is_tried)
{
    int fitted = 0;
    for (int k = 0; k < EACH; k++) {
        project *p = malloc(sizeof *p);
        ck_assert_ptr_nonnull(p);
        make_project(p, (unsigned long long)(_i * EACH + k + 1));
        hw_mem mem = hw_mem_system();
        hw_arena arena;
        hw_arena_init(&arena, &mem, 4096);
        hw_grading g;
        hw_status status = hw_grade_choose(&p->task, &arena, &g, NULL);
        best wanted = try_all(p);
        if (wanted.cost < 0) {
            ck_assert_int_eq(status, HW_ERR_NOFIT);
        } else {
            ck_assert_int_eq(status, HW_OK);
            choice c = chosen(p, &g);
            best got = { cost_of(p, &c), 0, 0 };
            sums(p, &c, &got);
            /* Costs are compared in millionths, of at most 60 terms. */
            ck_assert(got.cost >= 0 && got.cost <= wanted.cost + 60e-6);
            ck_assert_double_eq_tol(g.total_cost, got.cost, 1e-9 * (1 + got.cost));
            ck_assert_int_le(got.stitches, wanted.stitches);
            if (got.stitches == wanted.stitches) {
                ck_assert_int_le(got.left, wanted.left);
            }
            fitted++;
        }
        hw_arena_release(&arena);
        free(p);
    }
    ck_assert_int_gt(fitted, EACH / 2);
}
END_TEST

/* By hand: 25 sts in 10 cm is 2.5 per cm; 40 cm is 100 sts; repeat 6 with gap 1 makes 6n - 1 and
 * both margins: a front of 16 motifs and 2 margins is 97, of 17 without margins 101. The front and
 * the back share a seam on both sides, so margins must add up to 1: front 17 motifs (101), back 16
 * motifs and a margin of 1 at both edges (97), each centred, seams unbroken: cost
 * (0.4^2 + 1.2^2) x 2 = 3.2; both 99 (16 motifs... 6 x 16 - 1 + 2 = 97) cannot be. Both 101 with
 * margins 0 break both seams by 1: (0.4^2 x 2) x 2 + 0.5 x 2 = 1.64, which is less. */
START_TEST(dress_by_hand)
{
    static counting c;
    counting_open(&c, 1, 2);
    counting_ring(&c, 0, 1);
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_grading g;
    ck_assert_int_eq(hw_grade_choose(&c.task, &arena, &g, NULL), HW_OK);
    ck_assert_int_eq(g.fits[0].visible_sts, 101);
    ck_assert_int_eq(g.fits[0].cast_on_sts, 103);
    ck_assert_int_eq(g.fits[1].visible_sts, 101);
    ck_assert_int_eq(g.seam_breaks[0], -1);
    ck_assert_double_eq_tol(g.total_cost, 1.64, 1e-9);

    c.task.choices.unbroken_seams = true;
    ck_assert_int_eq(hw_grade_choose(&c.task, &arena, &g, NULL), HW_OK);
    ck_assert_int_eq(g.seam_breaks[0], 0);
    ck_assert_int_eq(g.seam_breaks[1], 0);
    /* 102 and 102 with a margin at one edge each: (0.8^2 x 2) x 2 + 0.5 x 0.25 x 2 = 2.81. */
    ck_assert_double_eq_tol(g.total_cost, 2.81, 1e-9);
    ck_assert_int_eq(g.fits[0].visible_sts + g.fits[1].visible_sts, 204);

    /* Exactly centred and unbroken: a front of n r - 1 and a back of n r + 1. */
    c.task.choices.exact_centre = true;
    ck_assert_int_eq(hw_grade_choose(&c.task, &arena, &g, NULL), HW_OK);
    ck_assert_int_eq(g.fits[0].visible_sts + g.fits[1].visible_sts, 101 + 97);
    ck_assert_double_eq_tol(g.total_cost, 3.2, 1e-9);
    hw_arena_release(&arena);
}
END_TEST

START_TEST(wider_than_the_bed)
{
    hw_piece piece = { .name = "back", .mirror_of = -1, .edge_sts = { 1, 1 } };
    hw_garment garment = { .pieces = &piece, .piece_count = 1 };
    hw_gauge gauge[HW_FABRIC_COUNT] = {
        [HW_MAIN] = { .sts_per_10cm = 28 }, [HW_BAND] = { .sts_per_10cm = 28 }
    };
    hw_target target = { .band_cm = 75, .main_cm = 75 };
    const char *names[] = { "10 years" };
    hw_counts_task task = { .sizes = 1,
        .pieces = 1,
        .size_names = names,
        .garment = &garment,
        .targets = &target,
        .gauge = gauge,
        .repeat = 6,
        .gap = 1,
        .bed = 200,
        .choices = { .tolerance_cm = 1 } };
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_grading g;
    hw_err err = { 0 };
    ck_assert_int_eq(hw_grade_choose(&task, &arena, &g, &err), HW_ERR_NOFIT);
    /* 75 cm x 2.8 = 210 and two edge stitches. */
    ck_assert_ptr_nonnull(strstr(err.text, "212 stitches"));
    ck_assert_ptr_nonnull(strstr(err.text, "200 needles"));
    hw_arena_release(&arena);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("grade");
    TCase *by_hand = tcase_create("by hand");
    tcase_add_test(by_hand, dress_by_hand);
    tcase_add_test(by_hand, wider_than_the_bed);
    suite_add_tcase(suite, by_hand);
    TCase *all = tcase_create("every choice");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, every_choice_is_tried, 0, RUNS);
    suite_add_tcase(suite, all);
    return hw_check_run(suite);
}
