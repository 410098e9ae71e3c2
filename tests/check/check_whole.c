/* The tables and the JSON of what lies above the hems: the tank, cell by cell, by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/num.h"
#include "fixture.h"
#include "tables.h"
#include "tank_edits.h"
#include "write/cells.h"
#include "write/json.h"
#include "write/rowblocks.h"

#define YARN                                                                                       \
    {                                                                                              \
        "choices:", "yarn: {main: {ball: 50, metres: 100, unravelled stitches: 100, unravelled "   \
                    "metres: 2}, contrast: {ball: 50}}\nchoices:"                                  \
    }

static tank t;
static hw_tables tables;

static void make(const loading_edit *project, const loading_edit *garment)
{
    tank_open(&t, project, garment);
    ck_assert_int_eq(hw_cells_plan(&t.plan, &t.arena, &tables), HW_OK);
}

static const hw_table *table(const char *name)
{
    return tables_named(&tables, name);
}

/* The first size's cell in a row below a heading; the heading may be NULL. */
static const hw_cell *under(const char *name, const char *heading, const char *label)
{
    const hw_table *in = table(name);
    int from = heading != NULL ? tables_row(in, heading, 0) : 0;
    return hw_cells_at(in, tables_row(in, label, from), 1);
}

typedef struct {
    const char *table, *heading, *label;
    double number; /* of the cell, as it is shown */
} shown;

static void check_shown(const shown *list, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const hw_cell *c = under(list[i].table, list[i].heading, list[i].label);
        ck_assert_msg(c->kind == HW_CELL_COUNT || c->kind == HW_CELL_NUMBER, "%s", list[i].label);
        ck_assert_msg(c->number > list[i].number - 1e-9 && c->number < list[i].number + 1e-9,
            "%s, %s: %g", list[i].heading != NULL ? list[i].heading : list[i].table, list[i].label,
            c->number);
    }
}

#define CHECK_SHOWN(list) check_shown(list, sizeof(list) / sizeof((list)[0]))

/* By hand, from tank.c. */
START_TEST(outline)
{
    static const shown list[] = {
        { "Outline", "back", "rows above the hem", 138 },
        { "Outline", "back", "rows in all, facing and fold too", 158 },
        { "Outline", "back", "visible stitches above the hem", 80 },
        { "Outline", "back", "visible stitches of the last row", 20 },
        { "Outline", "back", "height from the fold, cm", 50 },
        { "Outline", "back", "length of left: side, cm", 30 },
        { "Outline", "back", "length of right: armhole, cm", 25 },
        { "Outline", "back", "length of right: shoulder, cm", 5 },
        { "Outline", "back", "length of neck right: neck, cm", 20 },
        { "Outline", "front", "width of the top, cm", 40 },
        { "Outline", "front", "length of left: side, cm", 33 },
        { "Outline", "sleeve", "rows above the hem", 108 },
        { "Outline", "sleeve", "visible stitches above the hem", 48 },
        { "Outline", "sleeve", "visible stitches of the last row", 64 },
        { "Outline", "sleeve", "length of right: side, cm", 40.2 },
        { "Outline", "back left side to front right side, within 1 cm", "  the first, cm", 30 },
        { "Outline", "back left side to front right side, within 1 cm", "  the other, cm", 33 },
        { "Outline", "back neck left to back neck right, within 1 cm", "  the other, cm", 20 },
    };
    make(NULL, NULL);
    CHECK_SHOWN(list);
    const hw_table *in = table("Outline");
    int open = tables_find(in, "back left side to front right side, within 1 cm", 0);
    int closed = tables_find(in, "back neck left to back neck right, within 1 cm", 0);
    ck_assert_int_eq(hw_cells_at(in, open, 0)->style, HW_STYLE_WARNING);
    ck_assert_int_eq(hw_cells_at(in, closed, 0)->style, HW_STYLE_PARAGRAPH);
    tank_close(&t);
}
END_TEST

/* Whether the table Shaping has these words in a row of that number. */
static bool told(int number, const char *words)
{
    const hw_table *in = table("Shaping");
    bool found = false;
    for (int r = 0; r < in->rows; r++) {
        const hw_cell *at = hw_cells_at(in, r, 1);
        const hw_cell *what = hw_cells_at(in, r, 2);
        found = found || (at->kind == HW_CELL_COUNT && at->number > number - 0.5 &&
                             at->number < number + 0.5 && strstr(what->text, words) != NULL);
    }
    return found;
}

/* Whether it tells so many visible stitches after that row. */
static bool left_after(int sts, int number)
{
    const hw_table *in = table("Shaping");
    bool found = false;
    for (int r = 2; r < in->rows; r++) {
        const hw_cell *left = hw_cells_at(in, r, 3);
        const hw_cell *after = hw_cells_at(in, r, 4);
        found = found || (left->kind == HW_CELL_COUNT && hw_num_nearest(left->number) == sts &&
                             hw_num_nearest(after->number) == number);
    }
    return found;
}

/* By hand: row 78 above the hem begins at the left and is number 99; the right edge goes in the row
 * before it or behind. The neck parts the piece in row 108, number 129. What is left ends after the
 * last row, 158. */
START_TEST(shaping)
{
    make(NULL, NULL);
    ck_assert(told(98, "bind off 10 stitches at the start of the next 2 rows") ||
              told(99, "bind off 10 stitches at the start of the next 2 rows"));
    ck_assert(left_after(60, 99) || left_after(60, 100)); /* of 80, once both are bound off */
    ck_assert(told(129, "bind off 40 stitches in the middle"));
    ck_assert(left_after(10, 129));
    ck_assert(told(159, "bind off the last 10 stitches of the left half"));
    ck_assert(told(159, "bind off the last 10 stitches of the right half"));
    ck_assert(told(129, "bind off the last 64 stitches")); /* the sleeve's 20 + 108 rows */
    ck_assert_int_gt(
        tables_find(table("Shaping"), "sleeve", 0), tables_find(table("Shaping"), "back", 0));
    tank_close(&t);
}
END_TEST

/* By hand, from the suites of drafts and of what lies above: numbers count the hem's 20 rows too.
 */
START_TEST(bands)
{
    static const shown list[] = {
        { "Bands", "back", "first row", 69 },
        { "Bands", "back", "last row", 72 },
        { "Bands", "back", "visible stitches there", 80 },
        { "Bands", "back", "whole motifs", 20 },
        { "Bands", "back", "plain stitches at the left edge", 1 },
        { "Bands", "back", "plain stitches at the right edge", 1 },
        { "Bands", "back", "card: first motif at column", 2 },
        { "Bands", "back", "width, cm", 40 },
        { "Bands", "front", "first row", 87 },
        { "Bands", "front", "plain rows from it to the underarm", 6 },
    };
    make(EDITS(BANDS(BAND("yoke", "back", "above fold: 20")
                 BAND("belt", "[back, front]", "below underarm: 2"))),
        EDITS({ "up: 33 cm", "up: 30 cm" }));
    CHECK_SHOWN(list);
    ck_assert_str_eq(under("Bands", "back", "first whole motif starts on needle")->text, "L39");
    ck_assert_int_ge(tables_find(table("Bands"), "yoke: your own motif, repeat 4", 0), 0);
    tank_close(&t);
    /* Needles are numbered on a bed alone, and a card is told of where there is one. */
    make(EDITS({ "machine: standard", "machine: hand" },
             BANDS(BAND("yoke", "back", "above fold: 20"))),
        NULL);
    ck_assert_int_lt(tables_find(table("Bands"), "first whole motif starts on needle", 0), 0);
    ck_assert_int_lt(tables_find(table("Bands"), "card: first motif at column", 0), 0);
    tank_close(&t);
}
END_TEST

/* By hand, from the suite of trims. Ratios stand in lines that run on below their trim. */
START_TEST(trims)
{
    static const shown list[] = {
        { "Trims", "neckband: plain", "length of its edge, cm", 40 },
        { "Trims", "neckband: plain", "stitches to pick up", 80 },
        { "Trims", "neckband: plain", "  back neck left", 40 },
        { "Trims", "neckband: plain", "rows of the face", 6 },
        { "Trims", "neckband: plain", "rows of the fold", 1 },
        { "Trims", "neckband: plain", "rows of the facing, inside", 5 },
        { "Trims", "armband: your own motif", "whole motifs", 21 },
        { "Trims", "armband: your own motif", "plain stitches before the first motif", 1 },
        { "Trims", "armband: your own motif", "  band", 4 },
        { "Trims", "armband: your own motif", "  plain, up to the fold", 2 },
        { "Trims", "armband: your own motif", "  front left armhole", 34 },
        { "Trims", "placket: plain", "  hole 7: stitches below it", 93 },
        { "Trims", "placket: plain", "  stitches of each", 4 },
    };
    make(EDITS(TRIMS("  armband:\n" PAIRS "  placket: {buttonholes: 7, buttonhole stitches: 4}\n")),
        NULL);
    CHECK_SHOWN(list);
    const hw_table *in = table("Trims");
    int arm = tables_find(in,
        "one, back right armhole: 10 along the 10 stitches bound off, 40 along the straight (2 "
        "sts in every 3 rows)",
        0);
    /* 84 stitches centred; figures of 4 columns, the first on L41: column 20, or 4 (tank.c). */
    int left = tables_find(
        in, "leftmost needle of the bed", tables_find(in, "armband: your own motif", 0));
    ck_assert_str_eq(hw_cells_at(in, left, 1)->text, "L42");
    ck_assert_str_eq(hw_cells_at(in, left + 1, 1)->text, "R42");
    ck_assert_double_eq_tol(hw_cells_at(in, left + 2, 1)->number, 4, 1e-9);
    ck_assert_int_gt(arm, tables_find(in, "armband: your own motif", 0));
    ck_assert_int_lt(arm, tables_find(in, "placket: plain", 0));
    /* 100 over 10 + 138 rows: 49 x 3 rows are 147, and 49 x 2 stitches 98 */
    ck_assert_int_ge(
        tables_find(
            in, "one, front left: 2 sts in every 3 rows 49 times, and 2 more, spread evenly", 0),
        0);
    /* what both halves share stands once */
    ck_assert_int_ge(
        tables_find(in,
            "one, back neck left and back neck right: 20 along half of the 40 stitches bound "
            "off in the middle, 20 along the straight (2 sts in every 3 rows)",
            0),
        0);
    ck_assert_int_lt(tables_find(in, "  hole 8: stitches before it", 0), 0);
    ck_assert_int_lt(tables_find(in, "elastic, without its lap, cm", 0), 0);
    const hw_table *order = table("Making up");
    ck_assert_double_eq_tol(hw_cells_at(order, 3, 0)->number, 2, 1e-9);
    ck_assert_str_eq(hw_cells_at(order, 3, 1)->text, "Sew the ends of neckband together.");
    ck_assert_int_lt(tables_find(order, "left and right", 0), 0); /* no name has a side */
    tank_close(&t);
}
END_TEST

/* By hand, from the suite of yarn: 256.72 m and 128.36 g of the front; contrast of which the metres
 * in a ball are not said. A contrast without grams to the metre has the main yarn's. */
START_TEST(yarn)
{
    make(EDITS(YARN), NULL);
    static const shown list[] = {
        { "Yarn", NULL, "front: main yarn, g", 128 },
        { "Yarn", NULL, "front: main yarn, m", 257 },
        { "Yarn", NULL, "placket: main yarn, m", 26 },
    };
    CHECK_SHOWN(list);
    ck_assert_int_ge(tables_find(table("Yarn"), "with 10 % in reserve, g", 0), 0);
    ck_assert_int_ge(tables_find(table("Yarn"), "whole balls", 0), 0);
    ck_assert_int_lt(tables_find(table("Yarn"), "placket: contrast yarn, m", 0), 0);
    tank_close(&t);
    make(NULL, NULL);
    ck_assert_int_lt(tables_find(table("Yarn"), "whole balls", 0), 0);
    tank_close(&t);
}
END_TEST

/* What was not asked for is said to be none. */
/* By hand: the tank's neck of 40 cm is drawn in to half the armhole of 20 cm. Whose left and right
 * is told where a name begins with one, on both tables that have such names. */
START_TEST(elastic_and_sides)
{
    static const shown list[] = {
        { "Trims", "neckband: plain", "elastic, without its lap, cm", 10 },
    };
    make(NULL, EDITS({ "round: yes}", "round: yes, elastic: 0.5 x armhole}" },
                   { "  armband:\n", "  left armband:\n" }));
    CHECK_SHOWN(list);
    ck_assert_int_ge(tables_find(table("Trims"), "left and right", 0), 0);
    ck_assert_int_ge(tables_find(table("Making up"), "left and right", 0), 0);
    tank_close(&t);
}
END_TEST
START_TEST(nothing_there)
{
    static const char none[] = "title: Plain\nfinished: {chest: {is: 80 cm}}\n"
                               "pieces: {back: {band width: 0.5 x chest}}\n";
    make(NULL, EDITS({ tank_garment, none }));
    ck_assert_int_ge(tables_find(table("Bands"), "none", 0), 0);
    ck_assert_int_ge(tables_find(table("Trims"), "none", 0), 0);
    ck_assert_int_ge(tables_find(table("Making up"), "none", 0), 0);
    ck_assert_int_ge(tables_find(table("Outline"), "the garment file draws no outline", 0), 0);
    ck_assert_int_ge(tables_find(table("Shaping"), "the garment file draws no outline", 0), 0);
    tank_close(&t);
}
END_TEST

/* Rows and shaping of one size where that is asked for; the other tables have all. */
START_TEST(one_size_alone)
{
    make(EDITS({ "[one]", "[one, two]" }, { "[80]", "[80, 88]" }), NULL);
    int count = 0;
    hw_row_block *blocks = hw_row_blocks(&t.plan, &t.arena, &count);
    ck_assert_int_eq(count, 2 * (TANK_PIECES + TANK_TRIMS));
    ck_assert_str_eq(blocks[2 * TANK_PIECES + 1].piece, "neckband");
    ck_assert_str_eq(blocks[2 * TANK_PIECES + 1].size, "two");
    ck_assert_ptr_nonnull(blocks[2 * TANK_PIECES].plan->trim);
    ck_assert_str_eq(blocks[1].piece, "back");
    ck_assert_str_eq(blocks[1].size, "two");
    ck_assert_int_eq(blocks[1].plan->count, blocks[0].plan->count);
    ck_assert_int_ge(tables_find(table("Shaping"), "one", 0), 0);
    t.project.only_size = 2;
    blocks = hw_row_blocks(&t.plan, &t.arena, &count);
    ck_assert_int_eq(count, TANK_PIECES + TANK_TRIMS);
    ck_assert_str_eq(blocks[2].piece, "sleeve");
    ck_assert_str_eq(blocks[2].size, "two");
    ck_assert_int_eq(hw_cells_plan(&t.plan, &t.arena, &tables), HW_OK);
    ck_assert_int_lt(tables_find(table("Shaping"), "one", 0), 0);
    ck_assert_int_ge(tables_find(table("Shaping"), "two", 0), 0);
    tank_close(&t);
}
END_TEST

/* ---- JSON ---- */

static json_t *parsed(void)
{
    fixture_empty();
    ck_assert_int_eq(hw_json_plan(&t.plan, &tables, &t.arena, &buf), HW_OK);
    json_error_t error;
    json_t *top = json_loadb(buf.text, buf.len, JSON_REJECT_DUPLICATES, &error);
    ck_assert_msg(top != NULL, "%s", error.text);
    return top;
}

/* The object of an array in which these keys have these words; the second key may be NULL. */
static json_t *where(json_t *array, const char *const keys[2], const char *const words[2])
{
    for (size_t i = 0; i < json_array_size(array); i++) {
        json_t *object = json_array_get(array, i);
        bool fits = true;
        for (int k = 0; k < 2 && keys[k] != NULL; k++) {
            const char *word = json_string_value(json_object_get(object, keys[k]));
            fits = fits && word != NULL && strcmp(word, words[k]) == 0;
        }
        if (fits) {
            return object;
        }
    }
    ck_abort_msg("nothing with %s", words[0]);
}

static double number(json_t *object, const char *key)
{
    json_t *value = json_object_get(object, key);
    ck_assert_msg(json_is_number(value), "%s is no number", key);
    return json_number_value(value);
}

static json_t *named(json_t *top, const char *list, const char *key, const char *name)
{
    return where(json_object_get(top, list), (const char *const[]){ key, NULL },
        (const char *const[]){ name, NULL });
}

/* By hand, as the tables above. */
START_TEST(json)
{
    make(EDITS(YARN, BANDS(BAND("yoke", "back", "above fold: 20")),
             TRIMS("  armband:\n" PAIRS "  placket: {buttonholes: 7, buttonhole stitches: 4}\n")),
        NULL);
    json_t *top = parsed();
    json_t *front = named(top, "drafts", "piece", "front");
    ck_assert_double_eq_tol(number(front, "rows"), 138, 1e-9);
    ck_assert_double_eq_tol(number(front, "area_cm2"), 2000, 1e-6);
    ck_assert(json_is_null(json_object_get(front, "neck_row")));
    ck_assert(json_is_null(json_object_get(front, "neck_left_halves")));
    ck_assert_uint_eq(json_array_size(json_object_get(front, "low_cm")), 139);
    json_t *back = named(top, "drafts", "piece", "back");
    ck_assert_str_eq(json_string_value(json_object_get(back, "first_start")), "left");
    ck_assert_double_eq_tol(number(back, "neck_row"), 48 + 4 + (40 - 22) * 3, 1e-9);
    json_t *right = json_object_get(json_object_get(back, "edges"), "right");
    json_t *corner = json_array_get(right, json_array_size(right) - 1);
    ck_assert_double_eq_tol(number(corner, "across_cm"), 10, 1e-9);
    ck_assert_str_eq(json_string_value(json_object_get(corner, "stretch")), "shoulder");
    ck_assert_str_eq(json_string_value(json_object_get(corner, "curve")), "straight");
    json_t *yoke = named(top, "uppers", "band", "yoke");
    ck_assert_double_eq_tol(number(yoke, "first_row"), 48, 1e-9);
    ck_assert_double_eq_tol(number(yoke, "motifs"), 20, 1e-9);
    ck_assert(json_is_null(json_object_get(yoke, "underarm_rows")));
    json_t *join = named(top, "joins", "edges", "back left side to front right side");
    ck_assert_double_eq_tol(number(join, "first_cm"), 30, 1e-9);
    ck_assert_double_eq_tol(number(join, "other_cm"), 33, 1e-9);
    ck_assert_double_eq_tol(number(join, "within_cm"), 1, 1e-9);
    ck_assert(json_is_false(json_object_get(join, "closes")));
    ck_assert_uint_eq(json_array_size(json_object_get(top, "rows")), TANK_PIECES + TANK_TRIMS);
    json_decref(top);
    tank_close(&t);
}
END_TEST

START_TEST(json_of_trims_and_yarn)
{
    make(EDITS(YARN,
             TRIMS("  armband:\n" PAIRS "  placket: {buttonholes: 7, buttonhole stitches: 4}\n")),
        NULL);
    json_t *top = parsed();
    json_t *arm = named(top, "trims", "trim", "armband");
    ck_assert_double_eq_tol(number(arm, "length_cm"), 42, 1e-9);
    ck_assert_double_eq_tol(number(arm, "sts"), 84, 1e-9);
    ck_assert_double_eq_tol(number(arm, "motifs"), 21, 1e-9);
    ck_assert_double_eq_tol(number(arm, "sts_before_first_motif"), 1, 1e-9);
    ck_assert_double_eq_tol(number(arm, "sts_behind_last_motif"), 1, 1e-9);
    ck_assert(json_is_null(json_object_get(arm, "buttonholes")));
    ck_assert_double_eq_tol(number(json_object_get(arm, "hem"), "band_rows"), 4, 1e-9);
    json_t *share = json_array_get(json_object_get(arm, "shares"), 1);
    ck_assert_str_eq(json_string_value(json_object_get(share, "edge")), "front left armhole");
    ck_assert_str_eq(json_string_value(json_object_get(share, "ratio")), "2 sts in every 3 rows");
    ck_assert_double_eq_tol(number(share, "sts"), 34, 1e-9);
    ck_assert_double_eq_tol(number(share, "over"), 51, 1e-9);
    json_t *neck = named(top, "trims", "trim", "neckband");
    ck_assert(json_is_true(json_object_get(neck, "round")));
    ck_assert(json_is_null(json_object_get(neck, "motif")));
    share = json_array_get(json_object_get(neck, "shares"), 0);
    ck_assert_str_eq(json_string_value(json_object_get(share, "ratio")),
        "20 along half of the 40 stitches bound off in the middle, 20 along the straight (2 sts in "
        "every 3 rows)");
    ck_assert(json_is_null(json_object_get(share, "over")));
    json_t *parts = json_object_get(share, "parts");
    ck_assert_uint_eq(json_array_size(parts), 2);
    ck_assert_str_eq(
        json_string_value(json_object_get(json_array_get(parts, 1), "way")), "straight");
    ck_assert_double_eq_tol(number(json_array_get(parts, 1), "sts"), 20, 1e-9);
    ck_assert_double_eq_tol(number(json_array_get(parts, 1), "over"), 30, 1e-9);
    json_t *holes = json_object_get(named(top, "trims", "trim", "placket"), "buttonholes");
    json_t *before = json_object_get(holes, "sts_before");
    ck_assert_uint_eq(json_array_size(before), 7);
    ck_assert_int_eq(json_integer_value(json_array_get(before, 6)), 93);
    json_t *used = json_object_get(top, "yarn");
    ck_assert_double_eq_tol(number(used, "reserve_percent"), 10, 1e-12);
    json_t *front = where(json_object_get(used, "pieces"), (const char *const[]){ "piece", "yarn" },
        (const char *const[]){ "front", "main yarn" });
    ck_assert_double_eq_tol(number(front, "m"), 256.72, 1e-6);
    ck_assert_double_eq_tol(number(front, "g"), 128.36, 1e-6);
    json_t *placket = where(json_object_get(used, "trims"), (const char *const[]){ "trim", "yarn" },
        (const char *const[]){ "placket", "main yarn" });
    ck_assert_double_eq_tol(number(placket, "m"), 26, 1e-6);
    json_t *total = named(used, "totals", "yarn", "main yarn");
    ck_assert_double_eq_tol(number(total, "to_buy_m"), 1.1 * number(total, "used_m"), 1e-6);
    ck_assert_double_ge(number(total, "balls") * 50, number(total, "to_buy_g"));
    json_decref(top);
    tank_close(&t);
    make(NULL, NULL);
    top = parsed();
    ck_assert(json_is_null(json_object_get(top, "yarn")));
    ck_assert_uint_eq(json_array_size(json_object_get(top, "uppers")), 0);
    json_decref(top);
    tank_close(&t);
}
END_TEST

/* The parts of a garment whose cuffs have a hem of their own. By hand: 48 stitches, a face of 8
 * rows with 4 of the band. */
START_TEST(json_of_parts)
{
    make(
        EDITS(BANDS("  cuff:\n    on: sleeve\n    hem: {face rows: 8, fold: none}\n" PAIRS)), NULL);
    json_t *top = parsed();
    json_t *cuff = named(top, "parts", "name", "cuff");
    ck_assert_double_eq_tol(number(json_object_get(cuff, "hem"), "total_rows"), 16, 1e-9);
    json_t *fit = json_array_get(json_object_get(cuff, "fits"), 0);
    ck_assert_str_eq(json_string_value(json_object_get(fit, "piece")), "sleeve");
    ck_assert_double_eq_tol(number(fit, "visible_sts"), 48, 1e-9);
    ck_assert_uint_eq(json_array_size(json_object_get(top, "pieces")), 2);
    json_t *sleeve = named(top, "drafts", "piece", "sleeve");
    ck_assert_double_eq_tol(number(sleeve, "hem_rows"), 16, 1e-9);
    json_decref(top);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { outline, shaping, bands, trims, yarn, elastic_and_sides,
        nothing_there, one_size_alone, json, json_of_trims_and_yarn, json_of_parts };
    return fixture_run("whole", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
