/* Yarn of a garment: the tank counted by hand, piece by piece, and a swatch that was weighed.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/yarnuse.h"

#include <stdio.h>
#include <string.h>

#include "support.h"
#include "tank_edits.h"

/* By hand: 100 stitches took 2 m, so 2 cm each; a strand that passes a stitch takes its width, 1/2
 * cm. 50 g are 100 m: 0.5 g to the metre. */
#define YARN(more)                                                                                 \
    {                                                                                              \
        "choices:",                                                                                \
            "yarn: {main: {ball: 50, metres: 100, unravelled stitches: 100, unravelled metres: "   \
            "2}, contrast: {ball: 50, metres: 100}" more "}\nchoices:"                             \
    }

static const double near_m = 1e-6;

static const hw_yarn_amount *of_piece(const tank *t, int piece, int yarn)
{
    const struct hw_yarnuse *use = t->plan.whole->yarn;
    ck_assert_ptr_nonnull(use);
    return &use->of_pieces[piece].of[yarn];
}

/* By hand, from tank.c. The front has 82 stitches in every row: 10 of facing, 6 plain ones in the
 * hem and 138 above it are 154 rows, 12628 stitches. Each of the band's 4 rows has 40 stitches of
 * contrast and 42 of the main yarn, behind which the other passes. Main: 12628 + 168 stitches and
 * 160 passed are 25592 + 80 = 25672 cm. Contrast: 160 and 168 passed are 320 + 84 = 404 cm. */
START_TEST(front_by_hand)
{
    tank t;
    tank_open(&t, EDITS(YARN("")), NULL);
    const hw_yarn_amount *main = of_piece(&t, TANK_FRONT, HW_USE_MAIN);
    const hw_yarn_amount *contrast = of_piece(&t, TANK_FRONT, HW_USE_CONTRAST);
    ck_assert(main->has_m && main->has_g && contrast->has_m && contrast->has_g);
    ck_assert_double_eq_tol(main->m, 256.72, near_m);
    ck_assert_double_eq_tol(main->g, 128.36, near_m);
    ck_assert_double_eq_tol(contrast->m, 4.04, near_m);
    ck_assert_double_eq_tol(contrast->g, 2.02, near_m);
    tank_close(&t);
}
END_TEST

/* By hand: from 4 to 36 cm are 96 rows, then 4 of the band up to 38 cm, and 12 cm or 36 rows: 136,
 * 132 of them plain. 10 + 6 + 132 rows of 82 are 12136 stitches; with 336 in the two bands 24944
 * cm, and 320 passed are 160 cm more: 25104. The contrast is twice that of one band. */
START_TEST(band_higher_up)
{
    tank t;
    tank_open(&t, EDITS(YARN(""), BANDS(BAND("yoke", "front", "above fold: 36"))), NULL);
    ck_assert_int_eq(hw_plan_draft(t.plan.whole, 0, TANK_FRONT)->task.rows, 136);
    ck_assert_double_eq_tol(of_piece(&t, TANK_FRONT, HW_USE_MAIN)->m, 251.04, near_m);
    ck_assert_double_eq_tol(of_piece(&t, TANK_FRONT, HW_USE_CONTRAST)->m, 8.08, near_m);
    tank_close(&t);
}
END_TEST

/* Rows of a band in which not one motif has room are knitted all the same, in plain: a figure of 90
 * columns on 80 stitches leaves the 136 rows above the hem in the main yarn. 10 + 6 + 136 are 152
 * rows of 82, 12464 stitches; with the hem's band 12632 and 160 passed, 25264 + 80 = 25344 cm. */
START_TEST(band_without_a_motif)
{
    char figure[500] = "  yoke:\n    on: front\n    above fold: 36\n    motif:\n      chart: |\n";
    for (int r = 0; r < 4; r++) {
        strncat(figure, "        ", sizeof figure - strlen(figure) - 1);
        for (int c = 0; c < 90; c++) {
            strncat(figure, "o", sizeof figure - strlen(figure) - 1);
        }
        strncat(figure, "\n", sizeof figure - strlen(figure) - 1);
    }
    char bands[700];
    (void)snprintf(bands, sizeof bands, "bands:\n%schoices:", figure);
    tank t;
    tank_open(&t, EDITS(YARN(""), { "choices:", bands }), NULL);
    ck_assert_int_eq(hw_plan_draft(t.plan.whole, 0, TANK_FRONT)->uppers[0].motifs, 0);
    ck_assert_double_eq_tol(of_piece(&t, TANK_FRONT, HW_USE_MAIN)->m, 253.44, near_m);
    ck_assert_double_eq_tol(of_piece(&t, TANK_FRONT, HW_USE_CONTRAST)->m, 4.04, near_m);
    tank_close(&t);
}
END_TEST

/* A band on a piece that widens: by hand each of its rows has what the piece has there, motifs as
 * in the narrowest row, and all that is beside them is knitted too. The sleeve's stitches in the
 * band are summed up from its rows. */
START_TEST(band_on_a_shaped_piece)
{
    tank t;
    tank_open(&t,
        EDITS(YARN(""),
            BANDS("  ring:\n    on: sleeve\n    above fold: 14\n" CHART(
                "        oo\n        oo\n        oo\n        oo\n        oo\n        oo\n"
                "        oo\n        oo\n        oo\n        oo\n        oo\n        oo\n"
                "        oo\n        oo\n        oo\n        oo\n        oo\n        oo\n",
                "2"))),
        NULL);
    const hw_draft *sleeve = hw_plan_draft(t.plan.whole, 0, TANK_SLEEVE);
    const hw_upper *ring = &sleeve->uppers[0];
    ck_assert(ring->shaped);
    /* Hem: 10 + 6 plain rows of 48, and 4 rows with 24 stitches of each yarn. */
    double main_sts = 16 * 48 + 4 * 24;
    double passed = 4 * 24;
    for (int r = 0; r < sleeve->task.rows; r++) {
        bool band = r >= ring->first_row && r < ring->first_row + ring->rows;
        main_sts += hw_shape_sts(&sleeve->shape, r) - (band ? 2 * ring->motifs : 0);
        passed += band ? 2 * ring->motifs : 0;
    }
    ck_assert_double_eq_tol(
        of_piece(&t, TANK_SLEEVE, HW_USE_MAIN)->m, (main_sts * 2 + passed / 2) / 100, near_m);
    tank_close(&t);
}
END_TEST

/* By hand: the placket's 100 stitches are knitted 6 rows of face, one of the fold and 5 of facing:
 * 1200 stitches, 24 m. The armband with a motif has 84, in 7 rows of facing, one of the fold and 4
 * plain ones beside the band, 1008; the band's 4 rows have 21 figures, 42 stitches of each yarn:
 * 168 of each, and 168 passed. Main 2 x 1176 + 84 = 2436 cm, contrast 336 + 84 = 420 cm. */
START_TEST(trims_by_hand)
{
    tank t;
    tank_open(&t, EDITS(YARN(""), TRIMS("  armband:\n" PAIRS)), NULL);
    const struct hw_yarnuse *use = t.plan.whole->yarn;
    ck_assert_int_eq(use->trims, 3);
    ck_assert_double_eq_tol(use->of_trims[2].of[HW_USE_MAIN].m, 24, near_m);
    ck_assert_double_eq_tol(use->of_trims[2].of[HW_USE_CONTRAST].m, 0, near_m);
    ck_assert_double_eq_tol(use->of_trims[1].of[HW_USE_MAIN].m, 24.36, near_m);
    ck_assert_double_eq_tol(use->of_trims[1].of[HW_USE_CONTRAST].m, 4.2, near_m);
    tank_close(&t);
}
END_TEST

/* A ring of 80 stitches: 20 figures with a gap behind each, 40 stitches of each yarn in a row: by
 * hand 7 + 1 + 4 plain rows are 960, 160 of each yarn, 160 passed: 2240 + 80 and 320 + 80 cm. */
START_TEST(ring_by_hand)
{
    tank t;
    tank_open(&t, EDITS(YARN(""), TRIMS("  neckband:\n" PAIRS)), NULL);
    const hw_yarn_amounts *ring = &t.plan.whole->yarn->of_trims[0];
    ck_assert_double_eq_tol(ring->of[HW_USE_MAIN].m, 23.2, near_m);
    ck_assert_double_eq_tol(ring->of[HW_USE_CONTRAST].m, 4, near_m);
    tank_close(&t);
}
END_TEST

/* The whole is the sum of its pieces and trims; the reserve, 10 in 100 or what is said, is added,
 * and whole balls of 50 g are bought: rounded up by hand from the grams. */
START_TEST(totals)
{
    static const double reserves[] = { 10, 25 };
    for (int i = 0; i < 2; i++) {
        tank t;
        tank_open(&t, i == 0 ? EDITS(YARN("")) : EDITS(YARN(", reserve: 25")), NULL);
        const struct hw_yarnuse *use = t.plan.whole->yarn;
        for (int y = 0; y < HW_USE_YARNS; y++) {
            double sum_m = 0;
            for (int p = 0; p < use->pieces; p++) {
                sum_m += use->of_pieces[p].of[y].m;
            }
            for (int k = 0; k < use->trims; k++) {
                sum_m += use->of_trims[k].of[y].m;
            }
            const hw_yarn_total *total = &use->totals[0].of[y];
            ck_assert_double_eq_tol(total->used.m, sum_m, near_m);
            ck_assert_double_eq_tol(total->to_buy.m, sum_m * (1 + reserves[i] / 100), near_m);
            double balls = total->to_buy.g / 50;
            ck_assert_double_ge(total->balls, balls - 1e-9);
            ck_assert_double_lt(total->balls, balls + 1);
        }
        tank_close(&t);
    }
}
END_TEST

/* Nothing is reckoned where nothing is said; a swatch that was weighed says enough. */
START_TEST(known_or_not)
{
    tank t;
    tank_open(&t, NULL, NULL);
    ck_assert_ptr_null(t.plan.whole->yarn);
    tank_close(&t);
    tank_open(&t,
        EDITS({ "main: {stitches: 20, rows: 30}",
            "main: {swatches: [{stitches: 20, width: 10, rows: 30, length: 10, mass: 3}]}" }),
        NULL);
    ck_assert_ptr_nonnull(t.plan.whole->yarn);
    /* 20 x 30 = 600 stitches are 3 g, so a plain stitch is 5 mg; the placket has 1200. */
    ck_assert_double_eq_tol(t.plan.whole->yarn->of_trims[2].of[HW_USE_MAIN].g, 6, 1e-6);
    tank_close(&t);
}
END_TEST

START_TEST(piece_without_an_outline)
{
    tank t;
    tank_open(&t, EDITS(YARN("")),
        EDITS({ "    outline:\n      right:\n        - {across: 0.5 x wrist + 4 cm, up: 36 cm}\n"
                "        - {across: 0.5 x wrist + 4 cm, up: 40 cm}\n",
                  "" },
            { "  - back left armhole and back right armhole to sleeve top, within 18 cm\n", "" }));
    /* By hand: 16 rows of 48 and 4 of 24, 96 passed: 2 x 864 + 48 = 1776 cm. */
    ck_assert_double_eq_tol(of_piece(&t, TANK_SLEEVE, HW_USE_MAIN)->m, 17.76, near_m);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { front_by_hand, band_higher_up, band_without_a_motif,
        band_on_a_shaped_piece, trims_by_hand, ring_by_hand, totals, known_or_not,
        piece_without_an_outline };
    return hw_check_run(hw_check_suite("yarnuse", tests, sizeof tests / sizeof tests[0]));
}
