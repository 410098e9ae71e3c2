/* Edges in parts, and what each part gets: the tank's by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/edgeparts.h"

#include <stdio.h>
#include <string.h>

#include "core/trimming.h"
#include "support.h"
#include "tank_edits.h"

enum { NECKBAND, ARMBAND, PLACKET };

/* Parts of an edge of a trim add up to its share; so many. */
static int parts_of(const tank *t, int trim, int edge, const hw_pickup_share **out)
{
    const hw_trimmed *trimmed = hw_trimming_at(t->plan.whole, 0, trim);
    int at = trimmed->share_of[edge];
    int sum = 0;
    for (int k = 0; k < trimmed->pickup.part_count[at]; k++) {
        sum += trimmed->pickup.parts[at][k].sts;
    }
    ck_assert_int_eq(sum, trimmed->pickup.shares[at].sts);
    *out = trimmed->pickup.parts[at];
    return trimmed->pickup.part_count[at];
}

static void check_words(tank *t, int trim, int edge, const char *words)
{
    const hw_trimmed *trimmed = hw_trimming_at(t->plan.whole, 0, trim);
    ck_assert_str_eq(hw_trimming_words(trimmed, edge, &t->arena), words);
}

/* By hand, from tank.c: the back's neck binds off 40 in the middle, 20 for each half, and runs up
 * 10 cm, 30 rows: 20 of the 40 stitches. The back's armhole binds off 5 cm, 10 stitches, and runs
 * up 20 cm, 60 rows: 40 stitches. The front's runs straight up, and so does its whole left edge,
 * hem and side and armhole: 100 stitches over 10 rows of the face and 138 above it, which are 49
 * times 3 and one. */
START_TEST(steps_and_straights)
{
    tank t;
    tank_open(&t, NULL, NULL);
    for (int half = 0; half < 2; half++) {
        check_words(&t, NECKBAND, half,
            "20 along half of the 40 stitches bound off in the middle, 20 along the straight (2 "
            "sts "
            "in every 3 rows)");
    }
    check_words(&t, ARMBAND, 0,
        "10 along the 10 stitches bound off, 40 along the straight (2 sts in every 3 rows)");
    check_words(&t, ARMBAND, 1, "2 sts in every 3 rows");
    check_words(&t, PLACKET, 0, "2 sts in every 3 rows 49 times, and 2 more, spread evenly");
    const hw_pickup_share *parts = NULL;
    ck_assert_int_eq(parts_of(&t, PLACKET, 0, &parts), 1);
    ck_assert_int_eq(parts[0].way, HW_PICKUP_STRAIGHT);
    ck_assert_int_eq(parts_of(&t, ARMBAND, 0, &parts), 2);
    ck_assert_int_eq(parts[0].way, HW_PICKUP_BOUND_OFF);
    ck_assert_int_eq(parts[1].count, 60);
    tank_close(&t);
}
END_TEST

#define ARMHOLE                                                                                    \
    "- {stretch: armhole, across: 0.25 x chest - 5 cm,\n"                                          \
    "           up: length - armhole}\n"                                                           \
    "        - {across: 0.25 x chest - 5 cm, up: length}\n"
#define BENT(curve)                                                                                \
    "- {stretch: armhole, across: 0.25 x chest - 2 cm,\n"                                          \
    "           up: length - armhole}\n"                                                           \
    "        - {" curve "across: 0.25 x chest - 5 cm, up: length - armhole + 4 cm}\n"              \
    "        - {across: 0.25 x chest - 5 cm, up: length}\n"

/* By hand: 2 cm level, 4 stitches; 3 cm in and 4 cm up, so 5 cm long (a curve of two points is a
 * straight line), 10 stitches and 12 rows; 16 cm up, 32 stitches and 48 rows: 46 in all. Where the
 * shaping binds off a stitch more or fewer at once, that part has as many stitches as are bound
 * off, and the next the rest (stitch for stitch along a bound-off edge: common practice, no
 * source). */
static void check_bent(const char *armhole, hw_pickup_way way, const char *words)
{
    tank t;
    tank_open(&t, NULL, EDITS({ ARMHOLE, armhole }));
    const hw_pickup_share *parts = NULL;
    ck_assert_int_eq(parts_of(&t, ARMBAND, 0, &parts), 3);
    ck_assert_int_eq(parts[0].way, HW_PICKUP_BOUND_OFF);
    ck_assert_int_eq(parts[0].sts, parts[0].count);
    ck_assert(parts[0].sts >= 3 && parts[0].sts <= 5);
    ck_assert_int_eq(parts[1].way, way);
    ck_assert_int_eq(parts[1].sts, 14 - parts[0].sts);
    ck_assert_int_eq(parts[1].count, 12);
    ck_assert_int_eq(parts[2].sts, 32);
    ck_assert_int_eq(parts[2].count, 48);
    const hw_trimmed *arm = hw_trimming_at(t.plan.whole, 0, ARMBAND);
    const char *told = hw_trimming_words(arm, 0, &t.arena);
    ck_assert_msg(strstr(told, words) != NULL, "%s", told);
    ck_assert(strstr(told, ", 32 along the straight (2 sts in every 3 rows)") != NULL);
    tank_close(&t);
}

START_TEST(curves_and_slopes)
{
    check_bent(BENT("curve: monotone, "), HW_PICKUP_CURVE, "along the curve (evenly over 12 rows)");
    check_bent(BENT(""), HW_PICKUP_SLOPE, "along the slope (");
}
END_TEST

/* By hand: 5 cm more at the underarm are cast on. */
START_TEST(cast_on)
{
    tank t;
    tank_open(&t, NULL,
        EDITS({ ARMHOLE, "- {stretch: armhole, across: 0.25 x chest + 5 cm,\n"
                         "           up: length - armhole}\n"
                         "        - {across: 0.25 x chest + 5 cm, up: length}\n" }));
    check_words(&t, ARMBAND, 0,
        "10 along the 10 stitches cast on, 40 along the straight (2 sts in every 3 rows)");
    tank_close(&t);
}
END_TEST

#define TOP                                                                                        \
    {                                                                                              \
        "placket: {along: [front left]}", "placket: {along: [front top]}"                          \
    }
#define FRONT "{stretch: armhole, across: 0.25 x chest, up: length}"

/* By hand: 5.2 cm, 10.4 stitches, go at each edge: 20 of 80 stitches in whole ones, and 29.6 cm of
 * the top want 59.2. What is level at the top is no part of it: 40 of 80 stitches are left. */
START_TEST(tops)
{
    static const struct {
        const char *front, *words;
    } rows[] = {
        { "{stretch: armhole, across: 0.25 x chest - 5.2 cm, up: length}",
            "59 sts over 60 stitches: miss 1 in the middle" },
        { FRONT "\n        - {across: 10 cm, up: length}", "1 st in every stitch" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        tank t;
        tank_open(&t, NULL, EDITS({ FRONT, rows[i].front }, TOP));
        check_words(&t, PLACKET, 0, rows[i].words);
        tank_close(&t);
    }
}
END_TEST

/* A zigzag of more parts than are told: all stitches and rows are still there. By hand: armhole and
 * 16 steps of 1 cm up; the first of them is a slope, the next a straight, and so on. */
START_TEST(many_parts)
{
    char armhole[2000] =
        "- {stretch: armhole, across: 0.25 x chest - 1 cm, up: length - armhole}\n";
    for (int i = 1; i <= 8; i++) {
        char line[200];
        (void)snprintf(line, sizeof line,
            "        - {across: 0.25 x chest - %d.5 cm, up: length - armhole + %d cm}\n"
            "        - {across: 0.25 x chest - %d.5 cm, up: length - armhole + %d cm}\n",
            i, 2 * i - 1, i, 2 * i);
        (void)strncat(armhole, line, sizeof armhole - strlen(armhole) - 1);
    }
    (void)strncat(armhole, "        - {across: 0.25 x chest - 8.5 cm, up: length}\n",
        sizeof armhole - strlen(armhole) - 1);
    tank t;
    tank_open(&t, NULL, EDITS({ ARMHOLE, armhole }));
    const hw_pickup_share *parts = NULL;
    int count = parts_of(&t, ARMBAND, 0, &parts);
    ck_assert_int_eq(count, HW_PICKUP_MOST_PARTS);
    ck_assert_int_eq(parts[count - 1].way, HW_PICKUP_CURVE);
    int rows = 0;
    for (int k = 1; k < count; k++) {
        rows += parts[k].count;
    }
    ck_assert_int_eq(rows, 60);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { steps_and_straights, curves_and_slopes, cast_on, tops,
        many_parts };
    return hw_check_run(hw_check_suite("edgeparts", tests, sizeof tests / sizeof tests[0]));
}
