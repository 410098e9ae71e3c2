/* Notes on what has to meet: each where it applies, and none where all is well.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/meeting.h"

#include <stdio.h>
#include <string.h>

#include "support.h"
#include "tank_edits.h"

#define RING(rows, gap) "  ring:\n    on: sleeve\n    above fold: 20\n" CHART(rows, gap)
#define PAIR_ROW        "        oo\n"
#define SIX_ROWS        PAIR_ROW PAIR_ROW PAIR_ROW PAIR_ROW PAIR_ROW PAIR_ROW
#define TEN             "oooooooooo"
#define FIVE_ROWS       PAIR_ROW PAIR_ROW PAIR_ROW PAIR_ROW PAIR_ROW
#define ODD(name, on)   "  " name ":\n    on: " on "\n    below underarm: 2\n" CHART(FIVE_ROWS, "2")
#define ODD_BELT        ODD("belt", "[back, front]")

typedef struct {
    const char *bands, *trims; /* in the project; NULL: none */
    loading_edit project, garment;
    const char *words; /* of notes */
    int times;
} row;

#define FOUR_WIDE                                                                                  \
    "  belt:\n    on: back\n    above fold: 20\n" CHART("        oooo\n        oooo\n", "4")
#define FULL_BED                                                                                   \
    {                                                                                              \
        "names: [one]\n  finished: {chest: [80]}",                                                 \
            "names: [one, two]\n  finished: {chest: [80, 198]}"                                    \
    }

/* By hand, from tank.c and the suites of drafts and trims, beside each what the numbers are. */
static const row rows[] = {
    /* 30 against 33 cm, and 1 cm allowed; 50 against 32, and 18 allowed; 20 against 20. */
    { .words = "Back left side to front right side, in one: the first is up to 3 cm shorter "
               "than the other, and 1 cm can be eased in",
        .times = 1 },
    { .words = "can be eased in", .times = 1 },
    { .garment = { "within 18 cm", "within 17.9 cm" },
        .words = "the first is up to 18 cm longer",
        .times = 1 },
    { .garment = { "up: 33 cm", "up: 30.9 cm" }, .words = "can be eased in", .times = 0 },
    /* Up the middle line from 34 to 40 cm. */
    { .garment = SLIT,
        .words = "Back: a slit of 6 cm below the neck opens it in the middle, for the head.",
        .times = 1 },
    { .words = "a slit of", .times = 0 },
    /* Its button, and nobody's where there is no slit. */
    { .project = { "names: [one]", "names: [one]\n  ages: [24]" },
        .garment = SLIT,
        .words = "In one: a button that comes off can be swallowed",
        .times = 1 },
    { .project = { "names: [one]", "names: [one]\n  ages: [24]" },
        .words = "a button that comes off",
        .times = 0 },
    /* The tank's bands and trims are all in order. */
    { .words = "band ring", .times = 0 },
    { .words = "Knit it in lengths", .times = 0 },
    { .words = "whole motifs make it", .times = 0 },
    { .words = "wider than the gap", .times = 0 },
    /* The sleeve has 56 stitches at 20 cm: 60 columns have no room; 30 and a gap of 2 fit once,
     * with 13 plain stitches at each end. */
    { .bands = RING("        " TEN TEN TEN TEN TEN TEN "\n", "0"),
        .words = "Sleeve, band ring, in one: not one whole motif has room there",
        .times = 1 },
    { .bands = RING("        " TEN TEN TEN "\n        " TEN TEN TEN "\n", "2"),
        .words = "the plain ends are wider than the gap",
        .times = 1 },
    /* 31 leave 12 and 13, on a mirrored sleeve 13 and 12; the gap is 12. */
    { .bands = "  ring:\n    on: [sleeve, twin]\n    above fold: 20\n" CHART(
          "        " TEN TEN TEN "o\n        " TEN TEN TEN "o\n", "12"),
        .garment = { "seams:", "  twin:\n    mirrors: sleeve\nseams:" },
        .words = "Sleeve and twin, band ring, in one: the plain ends are wider than the gap",
        .times = 1 },
    /* 5 and a gap of 4: 50 and 3 at each end, fewer than 4. */
    { .bands = RING("        ooooo\n        ooooo\n", "4"),
        .words = "the plain ends are wider than the gap",
        .times = 0 },
    /* 12 rows of 1/2 cm are 6 cm, in which the sleeve widens by 3/4 cm, 1 or 2 stitches. */
    { .bands = RING(SIX_ROWS SIX_ROWS, "2"),
        .words = "the piece is shaped while the band is knitted",
        .times = 1 },
    /* 56 stitches: a figure of 3 and a gap of 1 are 14 times 4 less 1: 55, and one plain. */
    { .bands = RING("        ooo\n        ooo\n", "1"),
        .words = "the motifs sit half a stitch beside the middle",
        .times = 1 },
    /* 99 cm are 198 stitches and 2 at the edges: all 200 needles. 25 figures of 4 and the gaps of 4
     * between them are 196; the first stands on needle -100 + 1 + 1, the card's column -98 + 12 +
     * 24 x 4 = 10 of 24, 2 of 8: the third. In the smaller size it stands on -41 + 1 + 2, in column
     * -38
     * + 12 + 24 x 2 = 22 of 24, 6 of 8: the card shown starts in the seventh. */
    { .bands = FOUR_WIDE,
        .project = FULL_BED,
        .words = "Back, band belt, in two: the bed has no room to move the piece onto the card "
                 "shown. Punch the card anew for it, with the first motif starting in column 3",
        .times = 1 },
    { .bands = FOUR_WIDE,
        .project = FULL_BED,
        .words = "The card shown starts in column 7; Rows and Bands say by how many needles a "
                 "piece is moved on the bed for it",
        .times = 1 },
    { .bands = FOUR_WIDE, .words = "has no room to move", .times = 0 },
    { .bands = BAND("belt", "[back, sleeve]", "below underarm: 2"),
        .words = "Band belt: its last row lies the same number of rows below the underarm",
        .times = 1 },
    { .bands = BAND("yoke", "back", "above fold: 20"),
        .words = "the same number of rows below",
        .times = 0 },
    /* The sides are 30 and 33 cm: 66 rows of 1/3 cm below the one belt, an even number with the
     * hem's 20, and 75 below the other, which gets 76, and a side that is a row longer. */
    { .bands = BAND("belt", "[back, front]", "below underarm: 2"),
        .words = "Band belt: its last row lies the same number of rows below the underarm",
        .times = 1 },
    { .bands = BAND("belt", "[back, front]", "below underarm: 2"),
        .words = "higher or lower",
        .times = 0 },
    /* On one piece a sash below it has settled the side: 5 cm from it to the belt are 15 rows, for
     * which 14 or 16 are knitted. */
    { .bands = BAND("belt", "[back, front]", "below underarm: 2")
            BAND("sash", "back", "below underarm: 9"),
        .words = "Band belt, in one: it ends up to 1 row nearer to the underarm on one piece than "
                 "on another",
        .times = 1 },
    /* 15.7 cm above the hem are 47.1 rows, for which 48 are knitted; 16 cm are 48. */
    { .bands = BAND("yoke", "back", "above fold: 19.7"),
        .words = "Band yoke, in one: on one piece or more it lies a row (3 mm) higher or lower",
        .times = 1 },
    { .bands = BAND("yoke", "back", "above fold: 20"), .words = "higher or lower", .times = 0 },
    /* 250 stitches on 200 needles: see the suite of trims. */
    { .trims = "  placket: {gauge: {stitches: 50, rows: 75}}\n",
        .words = "Placket, in one: it has up to 250 stitches and the bed 200 needles",
        .times = 1 },
    /* A ring of 80 stitches and a repeat of 12: 6 are 72 and 7 are 84, 2 cm more than 40 cm. Where
     * a plain trim cannot meet its edge it is off by less than a stitch, of which nothing is said.
     */
    { .trims = "  neckband:\n" CHART("        oo\n        oo\n", "10"),
        .words = "Neckband, in one: whole motifs make it up to 2 cm longer than its edge",
        .times = 1 },
    { .project = { "edge stitches: 1", "edge stitches: 1, tolerance: 0.1" },
        .garment = { "up: length - 10 cm", "up: length - 10.1 cm" },
        .words = "whole motifs make it",
        .times = 0 },
    /* A gap of 2 and holes of 4: one stitch is cut off the motif on both sides. */
    { .trims = "  armband:\n    buttonholes: 3\n    buttonhole stitches: 4\n" PAIRS,
        .words = "Armband: buttonholes of 4 stitches are wider than the gap of 2 and cut up to 2 "
                 "stitches off a motif. Make them 2 wide",
        .times = 1 },
    { .trims = "  armband:\n    buttonholes: 3\n" PAIRS,
        .words = "wider than the gap",
        .times = 0 },
    /* 100 stitches are 20 figures of 2 and gaps of 3 after a stitch, so holes of 2 lie after 3 or
     * 4, 8 or 9, ..., 93 or 94; even ends are 3 and 95. Spaces are nearly fifths: of four 21 and 24
     * by turns come nearest to 23, and leave 19 and 22 between; three can be 30, 30 and 31. */
    { .trims = "  placket:\n    buttonholes: 5\n" CHART("        oo\n        oo\n", "3"),
        .words = "In one: the buttonholes of placket, each in a gap of its motif, do not lie "
                 "evenly, with 19 to 22 stitches from one to the next. 4 would in one.",
        .times = 1 },
    { .trims = "  placket:\n    buttonholes: 4\n" CHART("        oo\n        oo\n", "3"),
        .words = "do not lie evenly",
        .times = 0 },
    { .trims = "  placket: {buttonholes: 5}\n", .words = "do not lie evenly", .times = 0 },
    /* Five rows are one too many or too few. The belt lies in other rows on the back than on the
     * front, whose side is 3 cm higher: one note names both, and one the sash. */
    { .bands = ODD_BELT,
        .words = "Belt on back and front, one: the band has an odd number of rows",
        .times = 1 },
    { .bands = ODD_BELT, .words = "make the band 4 or 6 rows high in place of 5", .times = 1 },
    { .bands = ODD_BELT ODD("sash", "sleeve"),
        .words = "Sash on sleeve, one: the band has an odd number of rows",
        .times = 1 },
    /* 80 and 88 cm differ in stitches, and in no row. */
    { .bands = ODD_BELT,
        .project = { "names: [one]\n  finished: {chest: [80]}",
            "names: [one, two]\n  finished: {chest: [80, 88]}" },
        .words = "Belt on back and front, all sizes: the band has an odd number of rows",
        .times = 1 },
    /* A row finds its number in the table of rows, where the side is right too. */
    { .bands = ODD_BELT, .words = "Row ", .times = 0 },
    /* A hem of three rows: with its card, and not again. */
    { .project = { "    oo\n  gap: 2\nhem: {face rows: 10", "  gap: 2\nhem: {face rows: 9" },
        .words = "an odd number",
        .times = 1 },
};

START_TEST(notes_by_hand)
{
    const row *r = &rows[_i];
    char text[1200];
    (void)snprintf(text, sizeof text, "%s%s%s%schoices:", r->bands != NULL ? "bands:\n" : "",
        r->bands != NULL ? r->bands : "", r->trims != NULL ? "trims:\n" : "",
        r->trims != NULL ? r->trims : "");
    tank t;
    tank_open(&t, EDITS({ "choices:", text }, r->project), EDITS(r->garment));
    int found = tank_notes(&t.plan, r->words);
    for (int i = 0; i < t.plan.note_count && found != r->times; i++) {
        (void)fprintf(stderr, "%s\n", t.plan.notes[i].text);
    }
    ck_assert_msg(found == r->times, "%d notes with `%s`", found, r->words);
    tank_close(&t);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("meeting");
    TCase *each = tcase_create("each");
    tcase_set_timeout(each, 60);
    tcase_add_loop_test(each, notes_by_hand, 0, (int)(sizeof rows / sizeof rows[0]));
    suite_add_tcase(suite, each);
    return hw_check_run(suite);
}
