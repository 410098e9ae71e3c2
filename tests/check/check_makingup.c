/* The order of making up: the tank's trims, with and without seams across them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/makingup.h"

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

/* By hand, common practice, no source. None of the tank's joins lies across a trim; the neckband is
 * a ring, and on a bed it is knitted flat. */
START_TEST(without_seams)
{
    static const char *const steps[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Pick up placket along front left, and knit it.",
        "Sew the other seams.",
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
 * lies where it goes over, and the side where it ends: sewn before it, and on a bed after it. */
START_TEST(across_seams)
{
    static const char *const bed[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew the ends of neckband together.",
        "Sew back right shoulder to front left shoulder.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Sew back right side to front left side, and the ends of armband with it.",
        "Pick up placket along front left, and knit it.",
        "Sew the other seams.",
    };
    static const char *const hand[] = {
        "Pick up neckband along back neck right, back neck left, and knit it.",
        "Sew back right shoulder to front left shoulder.",
        "Sew back right side to front left side.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Pick up placket along front left, and knit it.",
        "Sew the other seams.",
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

/* Own choice: a slit is finished last, when the trims have given it its top. */
START_TEST(with_slit)
{
    static const char *const steps[] = {
        "Pick up neckband along back neck right round, back neck left round, and knit it.",
        "Pick up armband along back right armhole, front left armhole, and knit it.",
        "Pick up placket along front left, and knit it.",
        "Sew the other seams.",
        "Edge the slit of back, and close it at the top with a button and a small loop.",
    };
    tank t;
    tank_open(
        &t, NULL, EDITS(SLIT, { "{along: back neck, round: yes}", "{along: back neck round}" }));
    check_steps(&t, steps, sizeof steps / sizeof steps[0]);
    tank_close(&t);
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
        "Sew the other seams.",
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
        "Sew the other seams.",
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
    const TTest *const tests[] = { without_seams, across_seams, with_slit, over_ends, no_memory };
    return hw_check_run(hw_check_suite("makingup", tests, sizeof tests / sizeof tests[0]));
}
