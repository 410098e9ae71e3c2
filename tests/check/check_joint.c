/* Groups of pieces, and their joint choices in one size against every joint choice there is.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/joint.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "counting.h"
#include "support.h"

/* By hand: a cardigan's back, two fronts that mirror each other, and a belt that nothing ties to
 * them: the back and one front decide, the other front follows. */
START_TEST(cardigan)
{
    counting c;
    counting_open(&c, 1, 4); /* a the back, b and c the fronts, d the belt */
    c.pieces[2].mirror_of = 1;
    counting_sew(&c, (hw_seam){ .piece = { 1, 0 }, .side = { HW_RIGHT, HW_LEFT } });
    counting_sew(&c, (hw_seam){ .piece = { 2, 0 }, .side = { HW_LEFT, HW_RIGHT } });
    hw_group groups[HW_MAX_PIECES];
    ck_assert_int_eq(hw_joint_groups(&c.garment, groups), 2);
    ck_assert_int_eq(groups[0].count, 2);
    ck_assert_int_eq(groups[0].pieces[0], 0);
    ck_assert_int_eq(groups[0].pieces[1], 1);
    ck_assert_int_eq(groups[0].mirror_counts[0], 0);
    ck_assert_int_eq(groups[0].mirror_counts[1], 1);
    ck_assert_int_eq(groups[0].mirrors[1][0], 2);
    ck_assert_int_eq(groups[0].seam_count, 2);
    ck_assert_int_eq(groups[0].seams[1], 1);
    ck_assert_int_eq(groups[1].count, 1);
    ck_assert_int_eq(groups[1].pieces[0], 3);
    ck_assert_int_eq(groups[1].seam_count, 0);
}
END_TEST

/* By hand: a chain of ties from the last piece to the first, in an order that takes labels several
 * rounds to follow, is one group; a mirror alone is a tie as well. */
START_TEST(chains)
{
    counting c;
    counting_open(&c, 1, 6);
    static const int chain[][2] = { { 0, 5 }, { 3, 4 }, { 4, 5 }, { 2, 3 } };
    for (size_t i = 0; i < sizeof chain / sizeof chain[0]; i++) {
        counting_sew(&c, (hw_seam){ .piece = { chain[i][0], chain[i][1] } });
    }
    hw_group groups[HW_MAX_PIECES];
    ck_assert_int_eq(hw_joint_groups(&c.garment, groups), 2);
    ck_assert_int_eq(groups[0].count, 5);
    ck_assert_int_eq(groups[0].seam_count, 4);
    ck_assert_int_eq(groups[1].pieces[0], 1);
    c.pieces[1].mirror_of = 2;
    ck_assert_int_eq(hw_joint_groups(&c.garment, groups), 1);
    ck_assert_int_eq(groups[0].count, 5);
    /* a decides for a group though its mirror has the lower number */
    counting_open(&c, 1, 2);
    c.pieces[0].mirror_of = 1;
    ck_assert_int_eq(hw_joint_groups(&c.garment, groups), 1);
    ck_assert_int_eq(groups[0].count, 1);
    ck_assert_int_eq(groups[0].pieces[0], 1);
    ck_assert_int_eq(groups[0].mirrors[0][0], 0);
}
END_TEST

/* By hand: 0.5 x 3^2, and a gap too narrow costs as much as one too wide. */
START_TEST(seam_cost)
{
    counting c;
    counting_open(&c, 1, 1);
    ck_assert_double_eq_tol(hw_joint_seam_cost(&c.task, 3), 4.5, 1e-12);
    ck_assert_double_eq_tol(hw_joint_seam_cost(&c.task, -3), 4.5, 1e-12);
    c.task.choices.seam_weight = 0;
    ck_assert_double_eq_tol(hw_joint_seam_cost(&c.task, 3), 0, 1e-12);
}
END_TEST

enum { PIECES = 3, MOST_SETS = 4000 };

/* The group of pieces 0 to count - 1 with their candidates, and every joint choice of them. */
typedef struct {
    counting c;
    hw_group groups[HW_MAX_PIECES];
    hw_joint_task in;
    hw_joint sets[MOST_SETS]; /* the best for each set of stitches */
    int set_count;
} trial;

/* Seams by chance between free edges. */
static void sew(counting *c, unsigned *state)
{
    bool sewn[PIECES][HW_SIDE_COUNT] = { { false } };
    for (int tries = 0; tries < 6; tries++) {
        int a = hw_check_random(state, c->task.pieces);
        int b = hw_check_random(state, c->task.pieces);
        int x = hw_check_random(state, HW_SIDE_COUNT);
        int y = hw_check_random(state, HW_SIDE_COUNT);
        if (!sewn[a][x] && !sewn[b][y] && (a != b || x != y)) {
            sewn[a][x] = sewn[b][y] = true;
            counting_sew(c, (hw_seam){ { a, b }, { (hw_side)x, (hw_side)y } });
        }
    }
}

static void make(trial *t, unsigned *state)
{
    counting *c = &t->c;
    counting_open(c, 1, 1 + hw_check_random(state, PIECES));
    c->task.gap = hw_check_random(state, 4);
    c->task.repeat = c->task.gap + 1 + hw_check_random(state, 4);
    c->task.bed = c->task.repeat * (1 + hw_check_random(state, 2)) + 4;
    c->task.choices.edge_sts = 0;
    c->task.choices.hand_set = c->task.repeat < 4 && hw_check_random(state, 3) == 0;
    c->task.choices.exact_centre = hw_check_random(state, 5) == 0;
    c->task.choices.unbroken_seams = hw_check_random(state, 5) == 0;
    c->task.choices.centre_weight = hw_check_random(state, 5) / 4.0;
    c->task.choices.seam_weight = hw_check_random(state, 5) / 4.0;
    for (int p = 0; p < c->task.pieces; p++) {
        counting_want(c, 0, p, 1 + hw_check_random(state, 40) / 10.0);
        if (p > 0 && hw_check_random(state, 4) == 0 && c->pieces[0].mirror_of < 0) {
            c->pieces[p].mirror_of = 0;
            c->targets[p] = c->targets[0];
        }
    }
    sew(c, state);
    (void)hw_joint_groups(&c->garment, t->groups);
    t->in = (hw_joint_task){ .task = &c->task, .group = &t->groups[0] };
}

static int margin(const trial *t, const hw_candidate *const *at, int piece, hw_side side)
{
    bool mirrored = t->c.pieces[piece].mirror_of == 0;
    int wanted = mirrored ? 0 : piece;
    int k = 0;
    while (t->groups[0].pieces[k] != wanted) {
        k++;
    }
    return at[k]->margin[mirrored ? 1 - (int)side : (int)side];
}

/* The cost of one joint choice, from the definition; -1 where the seams break and must not. */
static hw_cost_units price(const trial *t, const hw_candidate *const *at)
{
    const hw_counts_task *task = &t->c.task;
    hw_cost_units sum = 0;
    for (int k = 0; k < t->groups[0].count; k++) {
        sum += at[k]->cost * (1 + t->groups[0].mirror_counts[k]);
    }
    for (int s = 0; s < t->groups[0].seam_count; s++) {
        const hw_seam *seam = &t->c.seams[t->groups[0].seams[s]];
        int off = margin(t, at, seam->piece[0], seam->side[0]) +
                  margin(t, at, seam->piece[1], seam->side[1]) - task->gap;
        if (off != 0 && task->choices.unbroken_seams) {
            return -1;
        }
        sum += hw_cost_whole(task->choices.seam_weight * off * off);
    }
    return sum;
}

/* Count one joint choice among the best for its stitches. */
static void note(trial *t, const hw_candidate *const *at, hw_cost_units cost)
{
    hw_joint joint = { .cost = cost };
    for (int k = 0; k < t->groups[0].count; k++) {
        int mirrors = t->groups[0].mirror_counts[k];
        joint.visible_sts[k] = at[k]->visible_sts;
        joint.cast_on_sts += at[k]->visible_sts * (1 + mirrors);
        joint.left_margins += at[k]->margin[HW_LEFT] + mirrors * at[k]->margin[HW_RIGHT];
    }
    for (int i = 0; i < t->set_count; i++) {
        hw_joint *other = &t->sets[i];
        if (memcmp(other->visible_sts, joint.visible_sts, sizeof joint.visible_sts) == 0) {
            bool tie = other->cost == cost && joint.left_margins < other->left_margins;
            *other = cost < other->cost || tie ? joint : *other;
            return;
        }
    }
    ck_assert_int_lt(t->set_count, MOST_SETS);
    t->sets[t->set_count++] = joint;
}

/* Every joint choice; returns the least cost, LLONG_MAX where none keeps the rules. */
static hw_cost_units try_all(trial *t)
{
    int at[PIECES] = { 0 };
    int count = t->groups[0].count;
    hw_cost_units least = LLONG_MAX;
    t->set_count = 0;
    for (int k = 0; k < count; k++) {
        if (t->in.candidates[k].count == 0) {
            return least;
        }
    }
    for (int k = 0; k < count;) {
        const hw_candidate *chosen[PIECES] = { NULL };
        for (int j = 0; j < count; j++) {
            chosen[j] = &t->in.candidates[j].list[at[j]];
        }
        hw_cost_units cost = price(t, chosen);
        if (cost >= 0) {
            note(t, chosen, cost);
            least = cost < least ? cost : least;
        }
        for (k = 0; k < count && ++at[k] == t->in.candidates[k].count; k++) {
            at[k] = 0;
        }
        k = k == count ? count : 0;
    }
    return least;
}

/* A list holds the best of every set within the limit, and says whether that is all there is. */
static void check_list(const trial *t, const hw_joints *found, hw_cost_units limit)
{
    int within = 0;
    for (int i = 0; i < t->set_count; i++) {
        const hw_joint *set = &t->sets[i];
        within += set->cost <= limit;
        for (int j = 0; j < found->count; j++) {
            const hw_joint *kept = &found->list[j];
            if (memcmp(kept->visible_sts, set->visible_sts, sizeof set->visible_sts) == 0) {
                ck_assert(kept->cost == set->cost);
                ck_assert_int_eq(kept->left_margins, set->left_margins);
                ck_assert_int_eq(kept->cast_on_sts, set->cast_on_sts);
            }
        }
    }
    ck_assert_int_eq(found->count, within);
    ck_assert(!found->all || within == t->set_count);
    for (int j = 1; j < found->count; j++) {
        const hw_joint *kept = &found->list[j];
        ck_assert(memcmp(kept->visible_sts, kept[-1].visible_sts, sizeof kept->visible_sts) != 0);
    }
    for (int j = 0; j < found->count; j++) {
        const hw_candidate *chosen[PIECES] = { NULL };
        for (int k = 0; k < t->groups[0].count; k++) {
            chosen[k] = &t->in.candidates[k].list[found->list[j].choices[k]];
            ck_assert_int_eq(chosen[k]->visible_sts, found->list[j].visible_sts[k]);
        }
        ck_assert(price(t, chosen) == found->list[j].cost);
    }
}

/* By search, every joint choice of 600 small groups. Source of the cost: the project's own choice;
 * of the method: common practice, every case is tried. */
START_TEST(every_choice)
{
    static trial t;
    unsigned state = 5;
    int impossible = 0;
    int shortened = 0;
    for (int run = 0; run < 600; run++) {
        make(&t, &state);
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        for (int k = 0; k < t.in.group->count; k++) {
            ck_assert_int_eq(hw_candidates_list(
                                 &t.c.task, 0, t.in.group->pieces[k], &arena, &t.in.candidates[k]),
                HW_OK);
        }
        ck_assert_int_eq(hw_joint_sort(&t.in, &arena), HW_OK);
        hw_cost_units wanted = try_all(&t);
        hw_cost_units least = -7;
        hw_status status = hw_joint_least(&t.in, &least);
        ck_assert_int_eq(status, wanted == LLONG_MAX ? HW_ERR_NOFIT : HW_OK);
        ck_assert(least == (wanted == LLONG_MAX ? -7 : wanted));
        impossible += wanted == LLONG_MAX;
        const hw_cost_units spares[] = { -1, 0, 300000, 5000000, LLONG_MAX / 4 };
        for (size_t i = 0; i < sizeof spares / sizeof spares[0]; i++) {
            hw_cost_units limit = (wanted == LLONG_MAX ? 0 : wanted) + spares[i];
            hw_joints found = { 0 };
            ck_assert_int_eq(hw_joint_list(&t.in, limit, &arena, &found), HW_OK);
            check_list(&t, &found, limit);
            shortened += !found.all;
        }
        hw_joints all = { 0 };
        ck_assert_int_eq(hw_joint_list(&t.in, LLONG_MAX / 2, &arena, &all), HW_OK);
        ck_assert(all.all);
        hw_check_close(&arena, &heap);
    }
    ck_assert_int_gt(impossible, 5);
    ck_assert_int_lt(impossible, 300);
    ck_assert_int_gt(shortened, 500);
}
END_TEST

/* A ring of so many pieces, sorted. */
static void ring(trial *t, int pieces, hw_arena *arena)
{
    counting_open(&t->c, 1, pieces);
    counting_ring(&t->c, 0, pieces - 1);
    ck_assert_int_eq(hw_joint_groups(&t->c.garment, t->groups), 1);
    t->in = (hw_joint_task){ .task = &t->c.task, .group = &t->groups[0] };
    for (int k = 0; k < pieces; k++) {
        ck_assert_int_eq(hw_candidates_list(&t->c.task, 0, k, arena, &t->in.candidates[k]), HW_OK);
    }
    ck_assert_int_eq(hw_joint_sort(&t->in, arena), HW_OK);
}

/* By hand: twelve pieces of which each has over 60 counts have more than 60^12 joint choices, which
 * nobody can list; the cheapest few can be. */
START_TEST(too_many)
{
    static trial t;
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    ring(&t, HW_MAX_PIECES, &arena);
    hw_joints found = { .count = 77 };
    ck_assert_int_eq(hw_joint_list(&t.in, LLONG_MAX / 4, &arena, &found), HW_ERR_LIMIT);
    ck_assert_int_eq(found.count, 77);
    hw_cost_units least = 0;
    ck_assert_int_eq(hw_joint_least(&t.in, &least), HW_OK);
    ck_assert_int_eq(hw_joint_list(&t.in, least, &arena, &found), HW_OK);
    ck_assert_int_gt(found.count, 0);
    hw_check_close(&arena, &heap);
}
END_TEST

/* The widest piece that a project may hold has its own line: 250 motifs of 8 are 2000 stitches. */
START_TEST(widest)
{
    static trial t;
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    counting_open(&t.c, 1, 1);
    t.c.task.bed = HW_MAX_STS;
    t.c.task.repeat = 8;
    t.c.task.gap = 0;
    counting_want(&t.c, 0, 0, 800);
    ck_assert_int_eq(hw_joint_groups(&t.c.garment, t.groups), 1);
    t.in = (hw_joint_task){ .task = &t.c.task, .group = &t.groups[0] };
    ck_assert_int_eq(hw_candidates_list(&t.c.task, 0, 0, &arena, &t.in.candidates[0]), HW_OK);
    ck_assert_int_eq(hw_joint_sort(&t.in, &arena), HW_OK);
    ck_assert_int_eq(t.in.line_counts[0], 250);
    ck_assert_int_eq(t.in.candidates[0].list[t.in.lines[0][0].first].visible_sts, HW_MAX_STS);
    hw_cost_units least = -1;
    ck_assert_int_eq(hw_joint_least(&t.in, &least), HW_OK);
    ck_assert(least == 0);
    hw_check_close(&arena, &heap);
}
END_TEST

START_TEST(refused)
{
    static trial t;
    for (long n = 1; n < 20; n++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        ring(&t, 2, &arena);
        hw_joint_task before = t.in;
        heap.grabs = 0;
        heap.refuse_at = n;
        hw_status status = hw_joint_sort(&t.in, &arena);
        ck_assert_int_eq(status, n <= 4 ? HW_ERR_NOMEM : HW_OK); /* lines and links of two pieces */
        ck_assert(status == HW_OK || memcmp(&before, &t.in, sizeof before) == 0);
        if (status == HW_OK) {
            hw_joints found = { .count = 77 };
            status = hw_joint_list(&t.in, LLONG_MAX / 4, &arena, &found);
            ck_assert_int_eq(status, heap.grabs >= n ? HW_ERR_NOMEM : HW_OK);
            ck_assert(status == HW_OK || found.count == 77);
        }
        hw_check_close(&arena, &heap);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { cardigan, chains, seam_cost, every_choice, too_many, widest,
        refused };
    return hw_check_run(hw_check_suite("joint", tests, sizeof tests / sizeof tests[0]));
}
