/* What a knitter reads of trims' rows: whole sentences, at a bed and by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/trimwords.h"

#include <string.h>

#include "core/trimming.h"
#include "support.h"
#include "tank_edits.h"
#include "write/rowwords.h"

enum { NECKBAND, ARMBAND, PLACKET };

/* Whether the words of the run that holds a row have these among them. */
static void check_words(tank *t, int trim, int number, const char *words)
{
    const hw_rowplan *plan = &hw_trimming_at(t->plan.whole, 0, trim)->rows;
    hw_row_runs runs;
    ck_assert_int_eq(hw_rowplan_runs(plan, &t->arena, &runs), HW_OK);
    for (int i = 0; i < runs.count; i++) {
        const hw_row_run *run = &runs.list[i];
        if (number > run->first && number <= run->first + run->count) {
            const char *text = hw_rowwords_run(plan, run, &t->arena);
            ck_assert_ptr_nonnull(text);
            ck_assert_msg(strstr(text, words) != NULL, "row %d: %s", number, text);
            return;
        }
    }
    ck_abort_msg("no row %d", number);
}

/* The words are this project's own; what they say is common practice, no source. Numbers by hand:
 * 100 stitches, L50 to R50, two holes of 2; 3 stitches at each end, and 90 between the holes. So
 * the holes lie after 3 and 95 stitches: L47 and L46, R46 and R47. With row 4 of 6 begun, 3 rows of
 * the face lie between a hole and the fold, row 7; as many of the facing lie before row 11. */
START_TEST(on_a_bed)
{
    tank t;
    tank_open(&t, EDITS(TRIMS("  placket: {buttonholes: 2}\n")), NULL);
    check_words(&t, PLACKET, 1,
        "With the wrong side of the garment facing you, hang its edge onto 100 needles, from the "
        "left of the bed to the right: 100 down front left. At the folded hem go through both "
        "layers. Carriage at the right, main yarn. Hang the weights. Set the row counter to 000.");
    check_words(&t, PLACKET, 4,
        "Before row 4: buttonholes of 2 stitches, on L47 and L46; R46 and R47. For each: bind off "
        "the stitches with a length of the main yarn and wrap the same needles anew; leave each "
        "needle where it stood. Once the trim is folded, they lie on those of row 11.");
    check_words(&t, PLACKET, 11, "Before row 11: buttonholes of 2 stitches, on L47 and L46");
    check_words(&t, PLACKET, 13,
        "Fold the trim to the inside and hang the loops of the row that was picked up onto the "
        "needles, one to each. Move the weights up. Bind off all 100 stitches loosely.");
    tank_close(&t);
    tank_open(&t,
        EDITS({ "fold: none}", "fold: none, closing: sewn}" },
            TRIMS("  armband: {buttonholes: 1, buttonhole stitches: 1}\n"
                  "  placket: {hem: {depth: 2 cm, closing: sewn, cast-on: wrapped edge}}\n")),
        NULL);
    /* One of 84: after 41. L42 and 41 further on is L1. */
    check_words(&t, ARMBAND, 4,
        "Before row 4: a buttonhole of 1 stitch, on L1: move the stitch onto the needle beside it, "
        "and leave its own needle where it stood. Once the trim is folded, it lies on that of row "
        "11.");
    check_words(&t, ARMBAND, 12,
        "Knit a few rows with waste yarn, and take the trim off. Fold the trim to the inside and "
        "sew its open loops, one by one, down along the row that was picked up.");
    check_words(&t, PLACKET, 12,
        "Bind off all 100 stitches loosely. Fold the trim to the inside and sew its bound-off edge "
        "down along the row that was picked up.");
    tank_close(&t);
}
END_TEST

/* By hand: 33 cm of the front's side are 66 stitches, and 2 cm of the armband 4. At a left edge the
 * right end of the trim, with the fold up, is the upper one. */
START_TEST(over_an_end)
{
    static const loading_edit over = { "along: [front left]",
        "along: [front left side, armband end]" };
    tank t;
    tank_open(&t, NULL, EDITS(over));
    check_words(&t, PLACKET, 1,
        "hang its edge onto 70 needles, from the left of the bed to the right: 4 over the end of "
        "armband, 66 down front left side. At the folded hem and the end of armband go through "
        "both layers. Carriage at the right");
    tank_close(&t);
    tank_open(&t, EDITS({ "machine: standard", "machine: hand" }), EDITS(over));
    check_words(&t, PLACKET, 1,
        "pick up and knit 70 stitches from right to left: 4 over the end of armband, 66 down front "
        "left side. At the folded hem and the end of armband go through both layers.");
    tank_close(&t);
}
END_TEST

/* 250 stitches on 200 needles: two lengths of 125 and one for the seam, L63 to R63. Counted off in
 * place of needles: 8 at each end are 1.5 cm of 5 stitches each, rounded up, so the upper hole lies
 * after 240, 115 of the second length and the seam's stitch. */
START_TEST(longer_than_the_bed)
{
    tank t;
    tank_open(
        &t, EDITS(TRIMS("  placket: {gauge: {stitches: 50, rows: 75}, buttonholes: 2}\n")), NULL);
    check_words(&t, PLACKET, 1,
        "hang its edge onto the needles in 2 lengths: 126 stitches from L63 on, and then 126 from "
        "L63 on. Knit each by these rows. Each has a stitch more where it meets another, for the "
        "seam; without those, from the left of the bed to the right: 250 down front left.");
    const hw_row_trim *trim = &hw_trimming_at(t.plan.whole, 0, PLACKET)->row_trim;
    check_words(&t, PLACKET, trim->hole_rows[HW_LAYER_FACE],
        "buttonholes of 2 stitches, each after so many stitches: 8 of length 1; 116 of length 2, "
        "from the left of the bed. For each");
    check_words(&t, PLACKET, hw_trimming_at(t.plan.whole, 0, PLACKET)->rows.count,
        "Bind off all stitches loosely.");
    ck_assert_int_eq(tank_notes(&t.plan, "Placket, in one: it has up to 250 stitches and the bed "
                                         "200 needles. Knit it in lengths: the table Trims says"),
        1);
    tank_close(&t);
}
END_TEST

/* Row 4 shows the right side and is counted from the right; rows 11 and 13 the wrong. */
START_TEST(by_hand)
{
    tank t;
    tank_open(&t,
        EDITS({ "machine: standard", "machine: hand" },
            TRIMS("  placket: {buttonholes: 2}\n"
                  "  armband: {buttonholes: 1, buttonhole stitches: 1}\n")),
        NULL);
    check_words(&t, PLACKET, 1,
        "With the right side of the garment facing you, pick up and knit 100 stitches from right "
        "to "
        "left: 100 down front left. At the folded hem go through both layers.");
    check_words(&t, PLACKET, 4,
        "In row 4: buttonholes of 2 stitches, each after so many stitches: 3 and 95 from where the "
        "row begins. For each: bind off 2 stitches, cast on 2 in their place, and go on. Once the "
        "trim is folded, they lie on those of row 11.");
    check_words(&t, ARMBAND, 4,
        "In row 4: a buttonhole of 1 stitch, after 41 stitches from where the row begins: take the "
        "yarn over and work this stitch and the next one together.");
    check_words(&t, PLACKET, 13,
        "Fold the trim to the inside and purl each stitch together with the loop that it meets of "
        "the row that was picked up.");
    check_words(&t, NECKBAND, 1, "40 up back neck left. Join them into a round.");
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { on_a_bed, over_an_end, longer_than_the_bed, by_hand };
    return hw_check_run(hw_check_suite("trimwords", tests, sizeof tests / sizeof tests[0]));
}
