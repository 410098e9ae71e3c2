/* Trims along drawn edges: stitches, shares, rows, buttonholes: the tank by hand, and published.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimming.h"

#include <stdio.h>
#include <string.h>

#include "support.h"
#include "tank_edits.h"

enum { NECKBAND, ARMBAND, PLACKET };

static const double near_cm = 1e-6;

static const hw_trimmed *trimmed(const tank *t, int trim)
{
    return hw_trimming_at(t->plan.whole, 0, trim);
}

/* By hand, from tank.c: the neck is 40 cm, 80 stitches, 40 on each half; the armholes 25 and 17 cm,
 * 50 and 34 stitches, the latter over 17 cm, 51 rows; the placket 50 cm, 100 stitches over 148
 * rows, 10 of the face and 138 above it, about 2 of 3 as in P4, a front edge of 20 in and 16
 * stitches and 24 rows in 4 in, http://www.menwhoknit.com/community/?q=node/5359 : 80 of 120 rows,
 * 2 of every 3. Edges with a step bound off have a ratio for each part alone. */
START_TEST(stitches_by_hand)
{
    tank t;
    tank_open(&t, NULL, NULL);
    const hw_trimmed *neck = trimmed(&t, NECKBAND);
    ck_assert_double_eq_tol(neck->length_cm, 40, near_cm);
    ck_assert_int_eq(neck->pickup.chosen.sts, 80);
    ck_assert_int_eq(hw_trimming_share(neck, 0)->sts, 40);
    ck_assert_int_eq(hw_trimming_share(neck, 1)->sts, 40);
    ck_assert(!hw_trimming_share(neck, 0)->has_ratio);
    const hw_trimmed *arm = trimmed(&t, ARMBAND);
    ck_assert_double_eq_tol(arm->length_cm, 42, near_cm);
    ck_assert_int_eq(arm->pickup.chosen.sts, 84);
    ck_assert_int_eq(hw_trimming_share(arm, 0)->sts, 50);
    ck_assert(!hw_trimming_share(arm, 0)->has_ratio);
    ck_assert_int_eq(hw_trimming_share(arm, 1)->sts, 34);
    ck_assert_str_eq(
        hw_pickup_best_words(hw_trimming_share(arm, 1), &t.arena), "2 sts in every 3 rows");
    const hw_trimmed *placket = trimmed(&t, PLACKET);
    ck_assert_int_eq(placket->pickup.chosen.sts, 100);
    ck_assert_int_eq(hw_trimming_share(placket, 0)->ratio.rows, 148);
    ck_assert_str_eq(hw_pickup_best_words(hw_trimming_share(placket, 0), &t.arena),
        "2 sts in every 3 rows 49 times, and 2 more, spread evenly");
    ck_assert_str_eq(hw_trimming_edge(t.plan.whole, ARMBAND, 1, &t.arena), "front left armhole");
    ck_assert_str_eq(hw_trimming_edge(t.plan.whole, PLACKET, 0, &t.arena), "front left");
    ck_assert(!placket->too_long);
    tank_close(&t);
}
END_TEST

/* By hand: 2 cm of plain fabric are 6 rows, all plain, a tenth of 20 cm too; one loose row, which
 * with 5 rows of facing makes as many. H4: after the fold a row fewer than before it;
 * http://stringattack.blogspot.com/2008/03/ */
START_TEST(rows_of_a_plain_trim)
{
    tank t;
    tank_open(&t, NULL, NULL);
    for (int k = NECKBAND; k <= PLACKET; k++) {
        const hw_hem *hem = &trimmed(&t, k)->hem;
        ck_assert_int_eq(hem->face_rows, 6);
        ck_assert_int_eq(hem->band_rows, 0);
        ck_assert_int_eq(hem->below_rows + hem->above_rows, 6);
        ck_assert_int_eq(hem->fold_rows, 1);
        ck_assert_int_eq(hem->facing_rows, 5);
        ck_assert_double_eq_tol(hem->face_cm, 2, near_cm);
    }
    tank_close(&t);
}
END_TEST

/* By hand: repeat 4. The armband's 84 stitches are 21 figures and 20 gaps of 2, 82, and one plain
 * at each end; the ring's 80 are 20 whole repeats. 4 rows of 1/2 cm leave no room in 2 cm: 2 plain
 * rows at each side are the least. */
START_TEST(with_a_motif)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  armband:\n" PAIRS "  neckband:\n" PAIRS)), NULL);
    const hw_trimmed *arm = trimmed(&t, ARMBAND);
    ck_assert_int_eq(arm->pickup.chosen.sts, 84);
    ck_assert_int_eq(arm->pickup.chosen.motifs, 21);
    ck_assert_int_eq(arm->pickup.chosen.margin[HW_LEFT], 1);
    ck_assert_int_eq(arm->pickup.chosen.margin[HW_RIGHT], 1);
    ck_assert_int_eq(arm->hem.band_rows, 4);
    ck_assert_int_eq(arm->hem.below_rows, 2);
    ck_assert_int_eq(arm->hem.above_rows, 2);
    ck_assert_double_eq_tol(arm->hem.face_cm, 4 / 3.0 + 4 / 2.0, near_cm);
    const hw_trimmed *neck = trimmed(&t, NECKBAND);
    ck_assert_int_eq(neck->pickup.chosen.motifs, 20);
    ck_assert_int_eq(neck->pickup.chosen.margin[HW_LEFT], 0);
    const hw_trim_kind *kind = &t.plan.whole->trims->kinds[ARMBAND];
    ck_assert(kind->has_motif && kind->card.possible);
    ck_assert(!t.plan.whole->trims->kinds[PLACKET].has_motif);
    tank_close(&t);
}
END_TEST

/* B1, worked example of buttonholes,
 * https://knittingrobin.blogspot.com/2012/08/knitting-math-how-to-calculate.html : 100 stitches, 7
 * holes of 4, 3 at each end: 66 are left for 6 gaps of 11. 3 stitches are the 1.5 cm of [P6]. The
 * holes lie 3, 18, 33, ... stitches up. Usual is a width of 2. */
START_TEST(buttonholes_published)
{
    tank t;
    tank_open(&t,
        EDITS(TRIMS("  placket: {buttonholes: 7, buttonhole stitches: 4}\n"
                    "  armband: {buttonholes: 1}\n")),
        NULL);
    const hw_holes *holes = &trimmed(&t, PLACKET)->holes;
    ck_assert_int_eq(holes->count, 7);
    for (int h = 0; h < 7; h++) {
        ck_assert_int_eq(holes->holes[h].below_sts, 3 + 15 * h);
    }
    ck_assert_int_eq(holes->least_between, 11);
    ck_assert_int_eq(holes->most_between, 11);
    /* One hole of 2 in the middle of 84. */
    ck_assert_int_eq(trimmed(&t, ARMBAND)->holes.holes[0].below_sts, 41);
    ck_assert_int_eq(trimmed(&t, NECKBAND)->holes.count, 0);
    tank_close(&t);
}
END_TEST

/* By hand: a picot wants an odd number; 99 and 101 are as near to 100, and fewer are taken. A ring
 * takes any number. Face rows that are given win over the garment's depth. */
START_TEST(folds)
{
    tank t;
    tank_open(&t,
        EDITS(TRIMS("  placket: {hem: {fold: picot, face rows: 8}}\n"
                    "  neckband: {hem: {fold: picot}}\n")),
        NULL);
    ck_assert_int_eq(trimmed(&t, PLACKET)->pickup.chosen.sts, 99);
    ck_assert_int_eq(trimmed(&t, PLACKET)->hem.face_rows, 8);
    ck_assert_int_eq(trimmed(&t, PLACKET)->hem.fold_rows, 0);
    ck_assert_int_eq(trimmed(&t, NECKBAND)->pickup.chosen.sts, 80);
    ck_assert_int_eq(trimmed(&t, NECKBAND)->hem.face_rows, 6);
    tank_close(&t);
}
END_TEST

/* By hand: a trim knitted with 10 stitches in 10 cm has half as many, 50; with 50 it has 250, more
 * than 200 needles. */
START_TEST(gauges)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  placket: {gauge: {stitches: 10, rows: 15}}\n")), NULL);
    ck_assert_int_eq(trimmed(&t, PLACKET)->pickup.chosen.sts, 50);
    ck_assert_int_eq(trimmed(&t, ARMBAND)->pickup.chosen.sts, 84);
    tank_close(&t);
    tank_open(&t, EDITS(TRIMS("  placket: {gauge: {stitches: 50, rows: 75}}\n")), NULL);
    ck_assert_int_eq(trimmed(&t, PLACKET)->pickup.chosen.sts, 250);
    ck_assert(trimmed(&t, PLACKET)->too_long);
    tank_close(&t);
}
END_TEST

/* An edge that has no length in a size gets nothing, and the next one keeps its own share. By hand:
 * the top of the sleeve is 64 stitches, each of them picked up. */
START_TEST(edges_without_length)
{
    tank t;
    tank_open(&t, NULL,
        EDITS(
            { "along: [front left]", "along: [front left notch, front left armhole, sleeve top]" },
            { "- {stretch: armhole, across: 0.25 x chest, up: length}",
                "- {stretch: notch, across: 0.25 x chest, up: 33 cm}\n"
                "        - {stretch: armhole, across: 0.25 x chest, up: length}" }));
    const hw_trimmed *placket = trimmed(&t, PLACKET);
    ck_assert_ptr_null(hw_trimming_share(placket, 0));
    ck_assert_int_eq(hw_trimming_share(placket, 1)->sts, 34);
    ck_assert_int_eq(hw_trimming_share(placket, 1)->ratio.rows, 51);
    const hw_pickup_share *top = hw_trimming_share(placket, 2);
    ck_assert_int_eq(top->sts, 64);
    ck_assert(top->of_sts);
    ck_assert_str_eq(hw_pickup_best_words(top, &t.arena), "1 st in every stitch");
    tank_close(&t);
}
END_TEST

#define OVER                                                                                       \
    {                                                                                              \
        "along: [front left]", "along: [front left side, armband end]"                             \
    }

/* By hand: the armband's face is a tenth of 20 cm deep, 6 rows. The front's side is 33 cm; with the
 * band's end 35 cm, 70 stitches: 66 over 99 rows and 4 over 6. With a motif of 4 rows of 1/2 cm
 * between 4 plain ones of 1/3 cm the face is 10/3 cm deep: 36 1/3 cm are 72 2/3, 73 stitches, of
 * which the end takes 6.7 and the side 66.3. Two holes of 2 have 3 stitches, 1.5 cm, at each end:
 * the upper lies beside the armband, as a neckband's button does (common practice, no source). */
START_TEST(over_the_end_of_a_trim)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  placket: {buttonholes: 2}\n")), EDITS(OVER));
    const hw_trimmed *placket = trimmed(&t, PLACKET);
    ck_assert_double_eq_tol(placket->length_cm, 35, near_cm);
    ck_assert_int_eq(placket->pickup.chosen.sts, 70);
    ck_assert_int_eq(hw_trimming_share(placket, 0)->sts, 66);
    ck_assert_int_eq(hw_trimming_share(placket, 1)->sts, 4);
    ck_assert_int_eq(hw_trimming_share(placket, 1)->ratio.rows, 6);
    ck_assert_str_eq(
        hw_pickup_best_words(hw_trimming_share(placket, 1), &t.arena), "2 sts in every 3 rows");
    ck_assert_str_eq(hw_trimming_edge(t.plan.whole, PLACKET, 1, &t.arena), "armband end");
    ck_assert_int_eq(placket->holes.holes[0].below_sts, 3);
    ck_assert_int_eq(placket->holes.holes[1].above_sts, 3);
    ck_assert_int_eq(t.plan.whole->trims->kinds[ARMBAND].covered, 1);
    ck_assert_int_eq(t.plan.whole->trims->kinds[PLACKET].covered, 0);
    tank_close(&t);
    tank_open(&t, EDITS(TRIMS("  armband:\n" PAIRS)), EDITS(OVER));
    placket = trimmed(&t, PLACKET);
    ck_assert_double_eq_tol(placket->length_cm, 33 + 10 / 3.0, near_cm);
    ck_assert_int_eq(hw_trimming_share(placket, 0)->sts, 66);
    ck_assert_int_eq(hw_trimming_share(placket, 1)->sts, 7);
    ck_assert_int_eq(hw_trimming_share(placket, 1)->ratio.rows, 8);
    tank_close(&t);
}
END_TEST

/* Every refusal names the trim, the size where there is one, and the line of the project, or of the
 * garment file where the project says nothing of the trim: counted in tank.c, a line more for the
 * notch. */
START_TEST(refused)
{
    enum { ARMBAND_LINE = 40, PLACKET_LINE = 43 };
    static const struct {
        const char *trims;       /* in the project */
        const char *old, *fresh; /* in the garment */
        hw_status status;
        int line;
        const char *words;
    } rows[] = {
        { NULL, "0.1 x armhole", "armhole - 30 cm", HW_ERR_RANGE, ARMBAND_LINE,
            "trim `armband`, size one: its depth comes to -10.0 cm" },
        { "  armband:\n    buttonholes: 1\n", "0.1 x armhole", "armhole - 30 cm", HW_ERR_RANGE, 20,
            "trim `armband`, size one: its depth comes to -10.0 cm" },
        /* 25 and 17 cm of edges */
        { NULL, "0.1 x armhole", "0.1 x armhole\n    round: yes\n    elastic: 42 cm", HW_ERR_RANGE,
            ARMBAND_LINE + 4, "its elastic comes to 42.0 cm and its edges to 42.0 cm" },
        { "  armband: {buttonholes: 1}\n", "0.1 x armhole",
            "0.1 x armhole\n    round: yes\n    elastic: armhole - 20 cm", HW_ERR_RANGE,
            ARMBAND_LINE + 4, "its elastic comes to 0.0 cm" },
        { "  armband:\n" CHART("        oo\n        oo\n", "199"), NULL, NULL, HW_ERR_LIMIT, 25,
            "figure and gap are 201 columns together" },
        { "  armband: {buttonholes: 40, buttonhole stitches: 4}\n", NULL, NULL, HW_ERR_RANGE, 20,
            "trim `armband`, size one: 40 buttonholes of 4 stitches" },
        { "  armband: {hem: {face rows: 7}}\n", NULL, NULL, HW_ERR_RANGE, 20,
            "trim `armband`, size one: a face of 7 rows" },
        { "  armband: {gauge: {stitches: 400, rows: 30}}\n", NULL, NULL, HW_ERR_RANGE, 20,
            "trim `armband`: the gauge comes to 400 stitches" },
        { NULL, "along: [front left]", "along: [front left notch]", HW_ERR_RANGE, PLACKET_LINE,
            "trim `placket`, size one: the edges along which it is picked up have no length" },
        { NULL, "along: [front left]", "along: [front left, armband end]", HW_ERR_RANGE,
            PLACKET_LINE, "trim `placket`: `armband end` does not lie at an end of the edge" },
        { "  placket: {buttonholes: 1}\n", "along: [front left]",
            "along: [front left, armband end]", HW_ERR_RANGE, PLACKET_LINE,
            "`armband end` does not lie" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char edit[400];
        (void)snprintf(edit, sizeof edit, "trims:\n%schoices:", rows[i].trims);
        if (rows[i].trims == NULL) {
            (void)snprintf(edit, sizeof edit, "choices:");
        }
        tank t;
        hw_err err = { 0 };
        hw_status status = tank_try(&t, EDITS({ "choices:", edit }),
            EDITS({ "- {stretch: armhole, across: 0.25 x chest, up: length}",
                      "- {stretch: notch, across: 0.25 x chest, up: 33 cm}\n"
                      "        - {stretch: armhole, across: 0.25 x chest, up: length}" },
                { rows[i].old, rows[i].fresh }),
            &err);
        ck_assert_msg(status == rows[i].status, "row %zu: %d %s", i, (int)status, err.text);
        ck_assert_msg(
            rows[i].words == NULL || strstr(err.text, rows[i].words) != NULL, "%s", err.text);
        ck_assert_int_eq(err.of_garment, rows[i].line >= ARMBAND_LINE); /* the project is shorter */
        ck_assert_msg(err.line == rows[i].line, "row %zu: line %d", i, err.line);
        tank_close(&t);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { stitches_by_hand, rows_of_a_plain_trim, with_a_motif,
        buttonholes_published, folds, gauges, edges_without_length, over_the_end_of_a_trim,
        refused };
    return hw_check_run(hw_check_suite("trimming", tests, sizeof tests / sizeof tests[0]));
}
