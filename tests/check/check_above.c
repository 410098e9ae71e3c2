/* What lies above the hems, seen together: bands looked up, their cards, lengths of sewn edges.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/above.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "support.h"
#include "tank_edits.h"

static const double near_cm = 1e-6;

/* By hand, from tank.c: 30 against 33 cm, 1 cm allowed where nothing is said; 25 + 25 against the
 * 32 cm of 64 stitches, which 18 cm just allow; 20 on both sides. */
START_TEST(joins_by_hand)
{
    static const struct {
        double first_cm, other_cm;
        bool closes;
    } joins[] = { { 30, 33, false }, { 50, 32, true }, { 20, 20, true } };
    tank t;
    tank_open(&t, NULL, NULL);
    ck_assert_int_eq(t.project.garment.join_count, 3);
    for (int k = 0; k < 3; k++) {
        const hw_join_lengths *join = &t.plan.whole->joins[k];
        ck_assert_double_eq_tol(join->cm[0], joins[k].first_cm, near_cm);
        ck_assert_double_eq_tol(join->cm[1], joins[k].other_cm, near_cm);
        ck_assert_int_eq(join->closes, joins[k].closes);
    }
    tank_close(&t);
}
END_TEST

/* By hand: 4 + root of (32^2 + 4^2) + 4 is the sleeve's side; a stretch alone and the whole edge.
 */
START_TEST(lengths_by_hand)
{
    const hw_edge_run runs[] = {
        { .parts = { { .piece = TANK_SLEEVE, .edge = HW_EDGE_LEFT } }, .count = 1 },
        { .parts = { { .piece = TANK_BACK, .edge = HW_EDGE_RIGHT } }, .count = 1 },
        { .parts = { { .piece = TANK_BACK, .edge = HW_EDGE_RIGHT, .stretch = "shoulder" },
              { .piece = TANK_FRONT, .edge = HW_EDGE_TOP } },
            .count = 2 },
        { .parts = { { .piece = TANK_FRONT, .edge = HW_EDGE_NECK_LEFT } }, .count = 1 },
    };
    const double wanted_cm[] = { 8 + sqrt(32.0 * 32 + 4 * 4), 30 + 25 + 5, 5 + 40, 0 };
    tank t;
    tank_open(&t, NULL, NULL);
    const hw_outline *pieces[HW_MAX_PIECES];
    hw_plan_outlines(t.plan.whole, 0, pieces);
    for (size_t i = 0; i < sizeof runs / sizeof runs[0]; i++) {
        hw_joint_edges join = { .ends = { runs[i], runs[0] } };
        hw_join_lengths lengths;
        ck_assert_int_eq(hw_outline_join(pieces, &join, &lengths), HW_OK);
        ck_assert_double_eq_tol(lengths.cm[0], wanted_cm[i], near_cm);
        ck_assert_double_eq_tol(lengths.cm[1], wanted_cm[0], near_cm);
        ck_assert_int_eq(lengths.closes, i == 0);
    }
    tank_close(&t);
}
END_TEST

/* By hand: 82 stitches from L41; one edge stitch and one plain one before the first motif, which
 * stands on L39, -39. Columns count from L12, -12, so this is (-39 + 12) mod 24 = 21 and, of a
 * repeat of 4, column 1 from 0. The sleeve has no seam at its hem, so no edge stitch: 48 stitches
 * from L24, and 4 added at each edge. The hem stands where it stood, -24 - 4 + 1 is L27, and (-27 +
 * 12) mod 24 = 9, column 1 again. */
START_TEST(columns_by_hand)
{
    tank t;
    tank_open(&t, EDITS(BANDS(BAND("yoke", "[back, sleeve]", "above fold: 20"))), NULL);
    const hw_plan *plan = &t.plan;
    ck_assert_int_eq(plan->places[TANK_BACK].first, -41);
    ck_assert_int_eq(hw_plan_draft(plan->whole, 0, TANK_BACK)->uppers[0].card_column, 1);
    ck_assert_int_eq(plan->places[TANK_SLEEVE].first, -24);
    ck_assert_int_eq(hw_plan_draft(plan->whole, 0, TANK_SLEEVE)->uppers[0].card_column, 1);
    ck_assert_int_eq(plan->whole->uppers[0].card_start, 1);
    ck_assert(plan->whole->uppers[0].card.possible);
    ck_assert(plan->whole->uppers[0].on[TANK_BACK] && !plan->whole->uppers[0].on[TANK_FRONT]);
    ck_assert_int_eq(tank_notes(plan, "different columns"), 0);
    tank_close(&t);
}
END_TEST

/* By hand: a figure of 3 and a gap of 2 fit (80 + 2) / 5 = 16 times, 78 stitches; but 5 does not
 * divide the card's 24 columns, so there is no card. */
START_TEST(no_card_where_the_repeat_does_not_fit)
{
    static const char figure[] =
        "  yoke:\n    on: back\n    above fold: 20\n" CHART("        ooo\n        ooo\n", "2");
    char edit[300];
    (void)snprintf(edit, sizeof edit, "bands:\n%schoices:", figure);
    tank t;
    tank_open(&t, EDITS({ "choices:", edit }), NULL);
    const hw_upper *yoke = &hw_plan_draft(t.plan.whole, 0, TANK_BACK)->uppers[0];
    ck_assert_int_eq(yoke->motifs, 16);
    ck_assert_int_eq(yoke->card_column, -1);
    ck_assert_int_eq(t.plan.whole->uppers[0].card_start, 0);
    ck_assert(!t.plan.whole->uppers[0].card.possible);
    tank_close(&t);
}
END_TEST

/* By hand: a figure of 2 and a gap of 6 fit (80 + 6) / 8 = 10 times, 74 stitches and 3 at each end:
 * -41 + 1 + 3 is L37, (-37 + 12) mod 24 = 23 and mod 8 is 7. The sleeve holds (56 + 6) / 8 = 7, 50
 * stitches and 3: -24 - 4 + 3 is L25, (-25 + 12) mod 24 = 11 and mod 8 is 3. They differ, and the
 * card is made for the back. */
START_TEST(cards_that_differ)
{
    tank t;
    tank_open(&t,
        EDITS(BANDS("  yoke:\n    on: [back, sleeve]\n    above fold: 20\n" CHART(
            "        oo\n        oo\n", "6"))),
        NULL);
    ck_assert_int_eq(hw_plan_draft(t.plan.whole, 0, TANK_BACK)->uppers[0].card_column, 7);
    ck_assert_int_eq(hw_plan_draft(t.plan.whole, 0, TANK_SLEEVE)->uppers[0].card_column, 3);
    ck_assert_int_eq(t.plan.whole->uppers[0].card_start, 7);
    ck_assert_int_eq(tank_notes(&t.plan, "different columns"), 1);
    ck_assert_int_eq(tank_notes(&t.plan, "starts in column 8"), 1);
    tank_close(&t);
}
END_TEST

/* What is refused of bands higher up, with the line of the band in the project. */
START_TEST(refused)
{
    static const loading_edit no_outline[] = {
        { "    outline:\n      right:\n        - {across: 0.5 x wrist + 4 cm, up: 36 cm}\n"
          "        - {across: 0.5 x wrist + 4 cm, up: 40 cm}\n",
            "" },
        { "  - back left armhole and back right armhole to sleeve top, within 18 cm\n", "" },
        { NULL, NULL },
    };
    static const struct {
        const char *bands;
        bool drawn;
        int line;
        hw_status status;
        const char *words;
    } rows[] = {
        { BAND("ring", "sleeve", "above fold: 20"), false, 20, HW_ERR_MISSING,
            "the garment draws no outline of `sleeve`" },
        { BAND("ring", "sleeves", "above fold: 20"), true, 20, HW_ERR_UNKNOWN,
            "no piece called `sleeves`; its first is `back`" },
        { "  ring:\n    on: back\n    above fold: 20\n" CHART("        oo\n        oo\n", "199"),
            true, 27, HW_ERR_LIMIT, "figure and gap are 201 columns together; at most 200" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char edit[400];
        (void)snprintf(edit, sizeof edit, "bands:\n%schoices:", rows[i].bands);
        tank t;
        hw_err err = { 0 };
        hw_status status =
            tank_try(&t, EDITS({ "choices:", edit }), rows[i].drawn ? NULL : no_outline, &err);
        ck_assert_int_eq(status, rows[i].status);
        ck_assert_msg(strstr(err.text, rows[i].words) != NULL, "%s", err.text);
        ck_assert_int_eq(err.line, rows[i].line);
        tank_close(&t);
    }
    /* Without bands a piece without an outline is no mistake, and its draft is not drawn. */
    tank t;
    tank_open(&t, NULL, no_outline);
    ck_assert(!hw_plan_draft(t.plan.whole, 0, TANK_SLEEVE)->drawn);
    tank_close(&t);
}
END_TEST

/* A file's figure with the band's own gap: 150 columns and 50 are 200, and 51 are one too many. */
START_TEST(motifs)
{
    static const unsigned char cells[150] = { 1 };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    for (int gap = 50; gap <= 51; gap++) {
        hw_motif_choice choice = { .file = { .name = "wide" },
            .own = { .gap = gap, .has_gap = true },
            .drawn = { .chart = { "wide", 150, 1, cells }, .gap = 3 } };
        hw_motif motif = { 0 };
        hw_err err = { 0 };
        hw_status status = hw_above_motif(&choice, 24, &arena, &motif, &err);
        ck_assert_int_eq(status, gap == 50 ? HW_OK : HW_ERR_LIMIT);
        ck_assert_int_eq(motif.repeat, gap == 50 ? 200 : 0);
        ck_assert(gap == 50 || hw_check_says(&err, HW_ERR_LIMIT, "are 201 columns together"));
    }
    hw_check_close(&arena, &heap);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { joins_by_hand, lengths_by_hand, columns_by_hand,
        no_card_where_the_repeat_does_not_fit, cards_that_differ, refused, motifs };
    return hw_check_run(hw_check_suite("above", tests, sizeof tests / sizeof tests[0]));
}
