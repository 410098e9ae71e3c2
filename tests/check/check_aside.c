/* Where on the bed a band higher up is knitted, so that its figures stand on the card.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/aside.h"

#include "support.h"
#include "tank_edits.h"

/* The plan with a bed of so many needles, and a card for a band that starts so many columns right
 * of where its piece would need it; the band on that piece afterwards. */
static hw_upper placed(const tank *t, int piece, int band, int columns, int needles)
{
    hw_project project = *t->plan.project;
    hw_plan plan = t->plan;
    hw_upper *upper = &plan.drafts[piece].uppers[band];
    hw_upper_band *belt = &plan.whole->uppers[band];
    project.machine.needles = needles;
    plan.project = &project;
    belt->card_start = (upper->card_column + columns) % belt->motif.repeat;
    *upper = (hw_upper){
        .first_row = upper->first_row, .rows = upper->rows, .card_column = upper->card_column
    };
    hw_aside_find(&plan, piece);
    return *upper;
}

/* By hand: a figure of two columns with a gap of two is on the card in every fourth column. The
 * back has 80 stitches and one edge stitch at each edge: centred, L41 to R41. So on 82 needles it
 * cannot be moved at all, on 84 by one to either side; as far as three to the right is one to the
 * left. */
START_TEST(one_band)
{
    tank t;
    tank_open(&t, EDITS(BANDS(BAND("belt", "back", "above fold: 20"))), NULL);
    static const struct {
        int columns, needles, aside;
        bool own_card;
    } list[] = { { 0, 200, 0, false }, { 1, 200, 1, false }, { 2, 200, 2, false },
        { 3, 200, -1, false }, { 0, 82, 0, false }, { 1, 82, 0, true }, { 3, 82, 0, true },
        { 1, 84, 1, false }, { 2, 84, 0, true }, { 3, 84, -1, false } };
    for (size_t i = 0; i < sizeof list / sizeof list[0]; i++) {
        hw_upper found = placed(&t, TANK_BACK, 0, list[i].columns, list[i].needles);
        ck_assert_int_eq(found.aside, list[i].aside);
        ck_assert_int_eq(found.own_card, list[i].own_card);
        ck_assert(!found.back);
    }
    tank_close(&t);
}
END_TEST

/* By hand: the sleeve, which no seam at the hem gives an edge stitch, has 48 stitches there and 8
 * more at each edge at its top: L32 to R32. On 64 needles a band near the hem can be moved, and the
 * piece has to go back after it; on 66 it may stay one needle aside, on 68 two. */
START_TEST(back_where_it_widens)
{
    tank t;
    tank_open(&t, EDITS(BANDS(BAND("belt", "sleeve", "above fold: 6"))), NULL);
    static const struct {
        int columns, needles, aside;
        bool back;
    } list[] = { { 1, 64, 1, true }, { 1, 66, 1, false }, { 3, 64, -1, true }, { 2, 66, 2, true },
        { 2, 68, 2, false }, { 0, 64, 0, false } };
    for (size_t i = 0; i < sizeof list / sizeof list[0]; i++) {
        hw_upper found = placed(&t, TANK_SLEEVE, 0, list[i].columns, list[i].needles);
        ck_assert_int_eq(found.aside, list[i].aside);
        ck_assert_int_eq(found.back, list[i].back);
        ck_assert(!found.own_card);
    }
    tank_close(&t);
}
END_TEST

/* By hand: the belt lies below the yoke, whatever their order. Moved by 1 for the belt, a yoke that
 * wants 2 is one needle on, and one that wants none goes back. A yoke without a card stays where
 * the belt was. */
START_TEST(two_bands)
{
    tank t;
    tank_open(&t,
        EDITS(BANDS(BAND("yoke", "back", "above fold: 20") BAND("belt", "back", "above fold: 10"))),
        NULL);
    int order[HW_MAX_BANDS];
    ck_assert_int_eq(hw_aside_order(&t.plan, TANK_BACK, order), 2);
    ck_assert(order[0] == 1 && order[1] == 0);
    hw_upper yoke = placed(&t, TANK_BACK, 1, 1, 200);
    ck_assert_int_eq(yoke.aside, 1);
    yoke = placed(&t, TANK_BACK, 0, 2, 200);
    ck_assert_int_eq(yoke.aside, 2);
    yoke = placed(&t, TANK_BACK, 0, 0, 200);
    ck_assert_int_eq(yoke.aside, 0);
    t.plan.drafts[TANK_BACK].uppers[0].card_column = -1;
    hw_aside_find(&t.plan, TANK_BACK);
    ck_assert_int_eq(t.plan.drafts[TANK_BACK].uppers[0].aside, 1);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { one_band, back_where_it_widens, two_bands };
    return hw_check_run(hw_check_suite("aside", tests, sizeof tests / sizeof tests[0]));
}
