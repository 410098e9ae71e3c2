/* Counts outside the tolerance: how they are told, and whether what would help does.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/calculate.h"
#include "core/outside.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "planned.h"

/* A pouch of two pieces: 2.5 stitches to the cm, a repeat of 12 without a gap, so 12 n stitches and
 * 4.8 n cm. Every number is invented. */
static const char pouch[] = "title: Pouch\n"
                            "machine: standard\n"
                            "garment: pouch\n"
                            "gauge:\n"
                            "  main: {stitches: 25, rows: 35}\n"
                            "  band: {stitches: 25, rows: 35}\n"
                            "motif:\n"
                            "  chart: |\n"
                            "    o...........\n"
                            "    o...........\n"
                            "  gap: 0\n"
                            "hem: {depth: 4}\n"
                            "sizes:\n"
                            "  names: [one, two]\n"
                            "  finished:\n"
                            "    width: [38.4, 43.2]\n"
                            "choices: {tolerance: 0.5}\n";

/* The project's own choice: four sizes of a piece have a note each, five share one. By hand: 2.4 cm
 * lie between every wanted width, 4.8 n + 2.4 cm, and the counts beside it. */
START_TEST(four_or_five)
{
    static const struct {
        const char *names, *widths;
        int singly, shared;
    } sets[] = {
        { "[1, 2, 3, 4]", "[31.2, 36, 40.8, 45.6]", 8, 0 },
        { "[1, 2, 3, 4, 5]", "[31.2, 36, 40.8, 45.6, 50.4]", 0, 1 }, /* of front and back */
        { "[1, 2, 3, 4, 5]", "[31.2, 36, 40.8, 45.6, 48]", 8, 0 },   /* 120 are right */
        { "[1, 2]", "[38.4, 43.2]", 0, 0 },
    };
    static planned t;
    for (size_t k = 0; k < sizeof sets / sizeof sets[0]; k++) {
        planned_open(&t,
            &(loading){ .text = pouch,
                .edits = { { "[one, two]", sets[k].names }, { "[38.4, 43.2]", sets[k].widths } } });
        const char *text = NULL;
        int singly = planned_notes(&t.plan, "Size ", "is outside the tolerance of 0.5 cm", &text);
        ck_assert_int_eq(singly, sets[k].singly);
        int shared =
            planned_notes(&t.plan, ": 5 sizes are outside the tolerance of 0.5 cm", "", &text);
        ck_assert_int_eq(shared, sets[k].shared);
        planned_close(&t);
    }
}
END_TEST

/* By property: of six sizes outside, the one that a note calls furthest off is, band and plain
 * fabric alike looked at, whichever is finer. By hand: 68 stitches are the most that 70 needles
 * hold with two edges, five times 12 the most motifs, and the count has none wider beside it. */
START_TEST(furthest_off)
{
    static const char *const finer[] = { "main: {stitches: 28.5,", "main: {stitches: 21," };
    static planned t;
    loading from = { .text = pouch,
        .edits = { { "[one, two]", "[1, 2, 3, 4, 5, 6]" },
            { "[38.4, 43.2]", "[17.5, 18, 21.5, 22.5, 23.5, 26]" },
            { "main: {stitches: 25,", finer[_i] }, { "tolerance: 0.5", "tolerance: 0.1" } } };
    from.data[HW_DATA_MACHINE] = "title: Short\npitch: 4.5 mm\nneedles: 70\ncard columns: 24\n"
                                 "longest float: 11\ncarriage: direct\n";
    planned_open(&t, &from);
    double worst_cm = 0;
    int worst = 0;
    for (int i = 0; i < 6; i++) {
        const hw_fit *fit = hw_plan_fit(&t.plan, i, 0);
        double off_cm = fmax(fabs(fit->band_off_cm), fabs(fit->main_off_cm));
        worst = off_cm > worst_cm ? i : worst;
        worst_cm = fmax(off_cm, worst_cm);
    }
    char words[64];
    (void)snprintf(words, sizeof words, "Furthest off is %d, by %.1f cm", worst + 1, worst_cm);
    const char *text = NULL;
    ck_assert_int_eq(
        planned_notes(&t.plan, "Front and back: 6 sizes are outside", words, &text), 1);
    ck_assert_int_eq(planned_notes(&t.plan, "back: 6 sizes are outside", "; 6 60 (60).", &text), 1);
    planned_close(&t);
}
END_TEST

/* The number behind some words of a note; the test ends where they are not there. */
static double number_after(const char *text, const char *before)
{
    const char *at = strstr(text, before);
    ck_assert_msg(at != NULL, "no `%s` in %s", before, text);
    return strtod(at + strlen(before), NULL);
}

/* Both ways out that a note shows, applied as they are shown to the nearest counts: one of the two
 * comes inside, and with a hundredth less of the width none does before it is rounded. */
static void check_mend(const hw_plan *plan, int i, const char *text, double *shown_cm)
{
    const int counts[] = { plan->near[i].below.visible_sts, plan->near[i].above.visible_sts };
    double tolerance_cm = plan->project->choices.tolerance_cm + 1e-6;
    double wider_cm = number_after(text, "would help: a piece ");
    wider_cm *= strstr(text, " narrower") != NULL ? -1 : 1;
    double finer = number_after(text, "a band of ") / 25;
    double off_cm[2] = { 1000, 1000 };
    for (int k = 0; k < 2; k++) {
        double band_cm = counts[k] / 2.5;
        double main_cm = counts[k] / 2.51;
        double wanted_cm = plan->targets[i].band_cm + wider_cm;
        off_cm[0] = fmin(off_cm[0], fmax(fabs(band_cm - wanted_cm), fabs(main_cm - wanted_cm)));
        wanted_cm = plan->targets[i].band_cm;
        off_cm[1] = fmin(
            off_cm[1], fmax(fabs(band_cm / finer - wanted_cm), fabs(main_cm / finer - wanted_cm)));
    }
    ck_assert_double_le(off_cm[0], tolerance_cm);
    ck_assert_double_ge(off_cm[0], tolerance_cm - 0.1 - 1e-5); /* shown in tenths */
    ck_assert_double_le(off_cm[1], tolerance_cm);
    ck_assert_double_ge(off_cm[1], tolerance_cm - 0.0004 * plan->targets[i].band_cm);
    ck_assert_double_eq_tol(number_after(text, " in 10 cm, in place of "), 25, 1e-9);
    *shown_cm = wider_cm;
}

/* A gap is named where one suits every piece of every size on this card, without floats that are
 * too long, the first of them. */
static void check_gap(const hw_plan *plan, const char *text)
{
    int all = plan->finished.count * plan->project->garment.piece_count;
    const char *gap = NULL;
    for (int k = plan->alternatives.count; k-- > 0;) {
        const hw_alternative *a = &plan->alternatives.list[k];
        bool suits = a->kind == HW_ALTER_GAP && a->possible && a->fits_card &&
                     a->longest_float <= plan->project->machine.longest_float;
        gap = suits && a->inside == all ? a->what : gap;
    }
    const char *said = strstr(text, ", which suits every size");
    ck_assert_int_eq(said != NULL, gap != NULL);
    ck_assert(said == NULL || strncmp(said - strlen(gap), gap, strlen(gap)) == 0);
}

/* By property, for many widths: what a note says would help does. */
START_TEST(mends_help)
{
    static planned t;
    int told = 0;
    int narrower = 0;
    int suited = 0;
    for (int mm = 0; mm < 48; mm++) {
        char widths[40];
        (void)snprintf(widths, sizeof widths, "[%.1f, 48]", 39.6 + mm / 10.0);
        planned_open(&t, &(loading){ .text = pouch,
                             .edits = { { "[38.4, 43.2]", widths },
                                 { "main: {stitches: 25,", "main: {stitches: 25.1," } } });
        const char *text = NULL;
        if (planned_notes(&t.plan, "Size one, front", "What would help", &text) == 1) {
            double shown_cm = 0;
            check_mend(&t.plan, 0, text, &shown_cm);
            check_gap(&t.plan, text);
            suited += strstr(text, "suits every size") != NULL;
            told++;
            narrower += shown_cm < 0;
        }
        planned_close(&t);
    }
    ck_assert_int_gt(told, 20);
    /* The one gap that fits the card is 12, which makes floats of 23 stitches. */
    ck_assert_int_eq(suited, 0);
    ck_assert_int_gt(narrower, 5);
    ck_assert_int_lt(narrower, told - 5);
}
END_TEST

/* By hand: 96 stitches are just right, eight repeats of 12, but with a gap of 1 a plain stitch more
 * at one edge than at the other; a weight on centring of a thousand prefers 95 or 97, and the note
 * says how to have the count that is inside, and nothing else. */
START_TEST(inside_but_not_chosen)
{
    static planned t;
    planned_open(&t, &(loading){ .text = pouch,
                         .edits = { { "    o...........\n    o...........\n  gap: 0",
                                        "    o..........\n    o..........\n  gap: 1" },
                             { "tolerance: 0.5", "tolerance: 0.25, centre weight: 1000" } } });
    const char *text = NULL;
    ck_assert_int_eq(planned_notes(&t.plan, "Size ", "`within tolerance: yes`", &text), 4);
    ck_assert_int_eq(planned_notes(&t.plan, "Size ", " 0 cm ", &text), 0);
    ck_assert_int_eq(planned_notes(&t.plan, "Size ", "a band of", &text), 0);
    planned_close(&t);
}
END_TEST

/* By hand: 4 stitches to the cm in plain fabric and 2.5 in the band: 96 stitches are 38.4 cm of
 * band and 24 cm plain, and no change of both widths or of both gauges brings the two within 0.5 cm
 * of 38.4. Another count above the band does, and the note says so. */
START_TEST(two_counts)
{
    static planned t;
    planned_open(&t, &(loading){ .text = pouch,
                         .edits = { { "main: {stitches: 25,", "main: {stitches: 40," } } });
    const char *text = NULL;
    ck_assert_int_eq(planned_notes(&t.plan, "Size ", "What would help: `re-hang: yes`", &text), 4);
    planned_close(&t);
}
END_TEST

/* By hand: both pieces want 36 cm and have 84 stitches (33.6 cm) or 96 (38.4); the one that was
 * knitted is not chosen any more, and only the other is told of. */
START_TEST(knitted)
{
    static const hw_knitted measured = { .fabric = HW_BAND, .sts = 84, .width_cm = 33.6, .row = 1 };
    static planned t;
    planned_open(&t, &(loading){ .text = pouch, .edits = { { "[38.4, 43.2]", "[36, 43.2]" } } });
    const char *text = NULL;
    ck_assert_int_eq(planned_notes(&t.plan, "Size one, ", "outside the tolerance", &text), 2);
    t.project.knitted = (hw_knitted_list){ &measured, 1 };
    ck_assert_int_eq(hw_calculate_plan(&t.project, &t.arena, &t.plan, NULL), HW_OK);
    ck_assert_int_eq(planned_notes(&t.plan, "Size one, ", "outside the tolerance", &text), 1);
    ck_assert_int_eq(planned_notes(&t.plan, "Size one, back", "outside the tolerance", &text), 1);
    planned_close(&t);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, four_or_five);
    tcase_add_loop_test(all, furthest_off, 0, 2);
    tcase_add_test(all, mends_help);
    tcase_add_test(all, inside_but_not_chosen);
    tcase_add_test(all, two_counts);
    tcase_add_test(all, knitted);
    suite_add_tcase(suite, all);
    return hw_check_run(suite);
}
