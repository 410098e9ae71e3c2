/* The order of making up: the tank's trims, with and without seams across them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/makingup.h"

#include <string.h>

#include "support.h"
#include "tank_edits.h"

static void check_steps(tank *t, const char *const *steps, int count)
{
    hw_making_up made = { .count = 0 };
    ck_assert_int_eq(hw_makingup_steps(t->plan.whole, &t->arena, &made), HW_OK);
    for (int i = 0; i < made.count && i < count; i++) {
        ck_assert_str_eq(made.steps[i], steps[i]);
    }
    ck_assert_int_eq(made.count, count);
}

/* The step that begins with these words, or NULL. */
static const char *step_of(tank *t, const char *words)
{
    hw_making_up made = { .count = 0 };
    ck_assert_int_eq(hw_makingup_steps(t->plan.whole, &t->arena, &made), HW_OK);
    for (int i = 0; i < made.count; i++) {
        if (strncmp(made.steps[i], words, strlen(words)) == 0) {
            return made.steps[i];
        }
    }
    return NULL;
}

/* clang-format off */
/* By hand: sides of 30 and 33 cm, of which the front's is marked, because no stitch goes at its
 * underarm; armholes of 25 cm against a sleeve of 32; 40 cm of neck against itself. */
#define LEFT_OVER                                                                                  \
    "Sew back left side to front right side, up to the threads that mark the underarm; the second "\
    "is 3 cm longer: ease it in.",                                                                 \
    "Sew back left armhole and back right armhole to sleeve top; the first is 18 cm longer: ease " \
    "it in.",                                                                                      \
    "Sew back neck left to back neck right."
/* clang-format on */

/* By hand, common practice, no source. None of the tank's joins lies across a trim; the neckband is
 * a ring, and on a bed it is knitted flat. */
START_TEST(without_seams)
{
    static const char *const steps[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Pick up placket along front left, and knit it.",
        LEFT_OVER,
    };
    tank t;
    tank_open(&t, NULL, NULL);
    check_steps(&t, steps, sizeof steps / sizeof steps[0]);
    tank_close(&t);
}
END_TEST

#define SIDE     "joins:\n  - back right side to front left side, within 4 cm\n"
#define SHOULDER "  - back right shoulder to front left shoulder, within 20 cm\n"
#define RING     "depth: 0.1 x armhole", "depth: 0.1 x armhole\n    round: yes"
#define FRONT                                                                                      \
    "- {stretch: armhole, across: 0.25 x chest, up: length}",                                      \
        "- {stretch: armhole, across: 0.25 x chest, up: length}\n"                                 \
        "        - {stretch: shoulder, across: 10 cm, up: length}"

/* By hand: the armband goes up the back's right armhole and down the front's left one. The shoulder
 * lies where it goes over, and the side where it ends: sewn before it, and on a bed after it. The
 * back's shoulder is 5 cm long and the front's 10. */
START_TEST(across_seams)
{
    static const char *const bed[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together.",
        "Sew back right shoulder to front left shoulder; the second is 5 cm longer: ease it in.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Sew back right side to front left side, up to the threads that mark the underarm, and the "
        "ends of armband with it; the second is 3 cm longer: ease it in.",
        "Pick up placket along front left, and knit it.",
        LEFT_OVER,
    };
    static const char *const hand[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew back right shoulder to front left shoulder; the second is 5 cm longer: ease it in.",
        "Sew back right side to front left side, up to the threads that mark the underarm; the "
        "second is 3 cm longer: ease it in.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Pick up placket along front left, and knit it.",
        LEFT_OVER,
    };
    tank t;
    const loading_edit *garment = EDITS({ "joins:\n", SIDE SHOULDER }, { RING }, { FRONT });
    tank_open(&t, NULL, garment);
    check_steps(&t, bed, sizeof bed / sizeof bed[0]);
    tank_close(&t);
    tank_open(&t, EDITS({ "machine: standard", "machine: hand" }), garment);
    check_steps(&t, hand, sizeof hand / sizeof hand[0]);
    tank_close(&t);
}
END_TEST

/* Own choice: a slit is finished last, when the trims have given it its top. The folded ends of a
 * band that lie at the slit are open; one that runs over it has none there. By hand: half of the
 * neck has one end at the slit, and both halves with the front's top between them have two. */
START_TEST(with_slit)
{
    static const struct {
        const char *along, *words;
    } rows[] = {
        { "along: back neck round", "Edge the slit of back, and close it at the top with a button "
                                    "and a small loop." },
        { "along: back neck left round", "Edge the slit of back, and the open end of neckband with "
                                         "it through both layers, and close it" },
        { "along: [back neck left round, front top, back neck right round]",
            "Edge the slit of back, and the open ends of neckband with it through both layers, and "
            "close it" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        tank t;
        tank_open(
            &t, NULL, EDITS(SLIT, { ", round: yes}", "}" }, { "along: back neck", rows[i].along }));
        ck_assert_ptr_nonnull(step_of(&t, rows[i].words));
        hw_making_up made = { .count = 0 };
        ck_assert_int_eq(hw_makingup_steps(t.plan.whole, &t.arena, &made), HW_OK);
        ck_assert_ptr_eq(strstr(made.steps[made.count - 1], "Edge"), made.steps[made.count - 1]);
        tank_close(&t);
    }
}
END_TEST

/* By hand, common practice, no source: what is covered is closed first. The placket runs up the
 * front's side, at whose top the armband ends; one more trim covers the armband's other end, at the
 * top of the back's side. Both are followed from right to left: down a left edge, up a right one.
 */
START_TEST(over_ends)
{
    static const char *const one[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together.",
        "Pick up armband along back right armhole, front left armhole, knit it, and fold and close "
        "it: another trim is picked up over its end.",
        "Pick up placket over the end of armband through both layers, then along front left side, "
        "and knit it.",
        LEFT_OVER,
    };
    static const char *const both[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together.",
        "Pick up armband along back right armhole, front left armhole, knit it, and fold and close "
        "it: other trims are picked up over its ends.",
        "Pick up placket over the end of armband through both layers, then along front left side, "
        "and knit it.",
        "Pick up vent along back right side, then over the end of armband through both layers, and "
        "knit it.",
        LEFT_OVER,
    };
    tank t;
    tank_open(&t, NULL, EDITS({ "along: [front left]", "along: [front left side, armband end]" }));
    check_steps(&t, one, sizeof one / sizeof one[0]);
    tank_close(&t);
    tank_open(&t, NULL,
        EDITS({ "along: [front left]}", "along: [front left side, armband end]}\n"
                                        "  vent: {along: [back right side, armband end]}" }));
    check_steps(&t, both, sizeof both / sizeof both[0]);
    tank_close(&t);
}
END_TEST

/* Own choice: on a bed the ends of a ring of figures meet as its figures do, a gap behind the last.
 */
START_TEST(ring_of_figures)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  neckband:\n" PAIRS)), NULL);
    ck_assert_str_eq(step_of(&t, "Sew the ends of neckband"),
        "Sew the ends of neckband together, edge to edge without taking a stitch in, so that the "
        "figures meet.");
    const hw_pickup_count *ring = &hw_trimming_at(t.plan.whole, 0, 0)->pickup.chosen;
    ck_assert_int_eq(ring->margin[HW_LEFT], 0);
    ck_assert_int_eq(ring->margin[HW_RIGHT], 2);
    tank_close(&t);
}
END_TEST

#define ELASTIC(sum)                                                                               \
    {                                                                                              \
        "round: yes}", "round: yes, elastic: " sum "}"                                             \
    }

/* By hand, common practice, no source: a flat ring leaves its facing's ends open, one in rounds a
 * length of its facing. Half the armhole of 20 cm is 10; an eighth of the chest of 80 or 88 is 10
 * or 11. */
START_TEST(elastic)
{
    static const char *const bed[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together; leave the ends of its facing open for an elastic.",
        "Cut an elastic of 10 cm and 2 cm more for its lap. Draw it into neckband without twisting "
        "it, sew its ends one over the other, and sew the opening shut.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Pick up placket along front left, and knit it.",
        LEFT_OVER,
    };
    tank t;
    tank_open(&t, NULL, EDITS(ELASTIC("0.5 x armhole")));
    check_steps(&t, bed, sizeof bed / sizeof bed[0]);
    ck_assert_int_eq(hw_trimming_at(t.plan.whole, 0, 0)->row_trim.open_sts, 0);
    tank_close(&t);
    tank_open(&t,
        EDITS({ "machine: standard", "machine: hand" }, { "[one]", "[one, two]" },
            { "[80]", "[80, 88]" }),
        EDITS(ELASTIC("0.125 x chest")));
    /* 5 cm of 20 stitches in 10 cm */
    ck_assert_int_eq(hw_trimming_at(t.plan.whole, 1, 0)->row_trim.open_sts, 10);
    ck_assert_int_eq(hw_trimming_at(t.plan.whole, 1, 1)->row_trim.open_sts, 0);
    ck_assert_str_eq(step_of(&t, "Pick up neckband"),
        "Pick up neckband along back neck right, back neck left, and knit it, but leave 5 cm of "
        "its facing open for an elastic.");
    ck_assert_ptr_nonnull(step_of(
        &t, "Cut an elastic of 10 cm to 11 cm (Trims tells it for each size) and 2 cm more"));
    tank_close(&t);
}
END_TEST

/* By hand: the front's side is made as long as the chest of 80 or 84 cm less 48, 50 or 53, and the
 * back's is 30 cm: the front's is longer by 2 and 6 cm; by 0 and 4; by -3 and 1. */
START_TEST(eased_in)
{
    static const struct {
        const char *up, *words;
    } rows[] = {
        { "up: chest - 48 cm", "; the second is 2 cm to 6 cm longer: ease it in." },
        { "up: chest - 50 cm", "; the second is up to 4 cm longer: ease it in." },
        { "up: chest - 53 cm", "; the one is up to 3 cm longer than the other: ease it in." },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        tank t;
        tank_open(&t, EDITS({ "[one]", "[one, two]" }, { "[80]", "[80, 84]" }),
            EDITS({ "up: 33 cm", rows[i].up }));
        const char *step = step_of(&t, "Sew back left side");
        ck_assert_ptr_nonnull(step);
        ck_assert_msg(strstr(step, rows[i].words) != NULL, "%s", step);
        tank_close(&t);
    }
}
END_TEST

/* By hand: rounds join both sides up to the underarm, and no seam is left there. */
START_TEST(in_rounds)
{
    tank t;
    tank_open(&t,
        EDITS({ "machine: standard", "machine: hand" },
            { "choices: {edge stitches: 1}", "choices: {in rounds: yes}" }),
        EDITS({ "up: 33 cm", "up: 30 cm" }));
    ck_assert_ptr_null(step_of(&t, "Sew back left side"));
    ck_assert_ptr_nonnull(step_of(&t, "Sew back left armhole"));
    tank_close(&t);
}
END_TEST

/* Each request refused in turn: no steps. */
START_TEST(no_memory)
{
    tank t;
    tank_open(&t, NULL, NULL);
    hw_status status = HW_ERR_NOMEM;
    for (long n = 1; status != HW_OK; n++) {
        hw_arena room;
        hw_check_heap small;
        hw_check_open(&room, &small, n, false);
        hw_making_up made = { .count = 77 };
        status = hw_makingup_steps(t.plan.whole, &room, &made);
        ck_assert(status == HW_OK || (status == HW_ERR_NOMEM && made.count == 77));
        ck_assert(status != HW_OK || n > 10);
        hw_check_close(&room, &small);
    }
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { without_seams, across_seams, with_slit, over_ends,
        ring_of_figures, elastic, eased_in, in_rounds, no_memory };
    return hw_check_run(hw_check_suite("makingup", tests, sizeof tests / sizeof tests[0]));
}
