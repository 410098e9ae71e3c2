/* Tables of a plan: what stands where, in which unit, and nothing that a sheet cannot hold.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "example_plan.h"
#include "fixture.h"
#include "tables.h"
#include "write/cells.h"
#include "write/grid.h"

static example e;

static void setup(void)
{
    example_plan(&e, &arena);
}

static const hw_table *table(const char *name)
{
    hw_tables tables = example_tables(&e, &arena);
    return tables_named(&tables, name);
}

static const hw_cell *cell(const hw_table *t, const char *label, int column)
{
    return hw_cells_at(t, tables_row(t, label, 0), column);
}

static void is_eighths(const hw_cell *c, double inches)
{
    ck_assert_int_eq(c->kind, HW_CELL_EIGHTHS);
    ck_assert_double_eq_tol(c->number, inches, 1e-12);
}

static void is_number(const hw_cell *c, double number, int decimals)
{
    ck_assert_int_eq(c->kind, HW_CELL_NUMBER);
    ck_assert_int_eq(c->decimals, decimals);
    ck_assert_double_eq_tol(c->number, number, 1e-12);
}

/* By hand, for the front of the first size: 14 motifs x 6 - 1 = 83 stitches, 85 with two edges;
 * 83 / 2.8 = 29.643 cm, 0.357 less than 30; 83 / 2.7 = 30.741 cm. */
START_TEST(counts_and_widths)
{
    const hw_table *t = table("Sizes");
    ck_assert_int_eq(t->columns, 1 + EXAMPLE_SIZES + 1);
    tables_text(hw_cells_at(t, 0, 0), "Skirt with hearts: sizes and stitches");
    tables_text(cell(t, "size", 1), "86");
    tables_text(cell(t, "size", 5), "in a pattern");
    tables_count(cell(t, "cast on", 1), 85);
    ck_assert_int_eq(cell(t, "cast on", 1)->style, HW_STYLE_KEY);
    tables_text(cell(t, "cast on", 5), "85 (91, 97, 103)");
    tables_count(cell(t, "visible stitches", 1), 83);
    tables_count(cell(t, "whole motifs", 4), 17);
    tables_count(cell(t, "edge stitches at the left, in the seam", 2), 1);
    tables_count(cell(t, "edge stitches at the right, in the seam", 2), 1);
    is_number(cell(t, "band width wanted, cm", 1), 30.0, 1);
    is_number(cell(t, "band width knitted, cm", 1), 29.6, 1);
    is_number(cell(t, "band width off by, cm", 1), -0.4, 1);
    is_number(cell(t, "plain width knitted, cm", 1), 30.7, 1);
    tables_text(cell(t, "inside the tolerance", 1), "yes");
    tables_text(cell(t, "inside the tolerance", 2), "no");
    ck_assert_int_eq(cell(t, "inside the tolerance", 2)->style, HW_STYLE_WARNING);
    int back = tables_find(t, "back", 0);
    ck_assert_int_ge(back, 0);
    tables_count(hw_cells_at(t, tables_find(t, "cast on", back), 1), 87);
    tables_count(hw_cells_at(t, tables_find(t, "plain stitches at the left edge", back), 1), 1);
}
END_TEST

START_TEST(measurements_and_marks)
{
    const hw_table *t = table("Sizes");
    is_number(cell(t, "finished chest, cm", 3), 66.5, 1);
    int row = tables_find(t, "finished chest, cm", 0) + 1;
    tables_text(hw_cells_at(t, row, 0), "  known by");
    tables_text(hw_cells_at(t, row, 1), "given");
    tables_text(hw_cells_at(t, row, 2), "interpolated");
    tables_text(hw_cells_at(t, row, 4), "from memory");
    row = tables_find(t, "band width wanted, cm", 0) + 1;
    tables_text(hw_cells_at(t, row, 0), "  known by");
    tables_text(hw_cells_at(t, row, 2), "interpolated");
    tables_text(cell(t, "length, cm", 0), "length, cm");
}
END_TEST

/* 2.54 cm are an inch, exactly: 60 / 2.54 = 23.622, nearest to 23 5/8; 2.5 / 2.54 = 0.984. */
START_TEST(units)
{
    e.project.show = HW_SHOW_IN;
    const hw_table *t = table("Sizes");
    ck_assert_int_lt(tables_find(t, "finished chest, cm", 0), 0);
    is_eighths(cell(t, "finished chest, in", 1), 23.625);
    /* 4 in are 10.16 cm: 27 stitches in 10 cm are 27.432, and 38 rows 38.608. */
    t = table("Gauge");
    int places = tables_find(t, "measured places", 0) + 1;
    ck_assert_int_gt(places, 0);
    tables_text(hw_cells_at(t, places, 7), "state");
    ck_assert_int_eq(hw_cells_at(t, places, 8)->kind, HW_CELL_EMPTY); /* no place has a remark */
    tables_text(cell(t, "fabric", 2), "in 4 in");
    is_number(cell(t, "main", 2), 27.43, 2);
    /* By hand: 83 stitches over the wanted width and a centimetre. */
    t = table("Tolerance");
    double cm = e.plan.targets[0].band_cm + 1;
    double from = 83 * 10.16 / cm;
    ck_assert_double_eq_tol(
        cell(t, "band: gauge from, sts in 4 in", 1)->number, from, 0.005 + 1e-9);
    e.project.show = HW_SHOW_BOTH;
    t = table("Sizes");
    int row = tables_find(t, "finished chest, cm", 0);
    ck_assert_int_eq(tables_find(t, "finished chest, in", 0), row + 1);
    tables_text(hw_cells_at(t, row + 2, 0), "  known by");
    t = table("Hem");
    ck_assert_int_eq(t->columns, 5);
    tables_text(hw_cells_at(t, 1, 3), "depth, cm");
    tables_text(hw_cells_at(t, 1, 4), "depth, in");
    is_number(cell(t, "face wanted", 3), 2.5, 1);
    is_eighths(cell(t, "face wanted", 4), 1);
}
END_TEST

START_TEST(one_size)
{
    example_sizes(&e, 1);
    const hw_table *t = table("Sizes");
    ck_assert_int_eq(t->columns, 3);
    tables_text(cell(t, "cast on", 2), "85");
}
END_TEST

START_TEST(needles)
{
    const hw_table *t = table("Sizes");
    /* by hand: 85 stitches from needle -42 to 42, L1 being -1 and R1 being 0 */
    tables_text(cell(t, "from needle", 1), "L42");
    tables_text(cell(t, "to needle", 1), "R43");
    tables_text(cell(t, "first whole motif starts on needle", 1), "L41");
    tables_text(cell(t, "off the middle of the bed, needles", 1), "1.5 left");
    tables_text(cell(t, "off the middle of the bed, needles", 2), "0.5 right");
    tables_count(cell(t, "card: first motif at column", 1), 4);
    tables_count(cell(t, "card: column that would centre it", 1), 5);
    e.project.machine.card_columns = 0;
    t = table("Sizes");
    ck_assert_int_ge(tables_find(t, "from needle", 0), 0);
    ck_assert_int_lt(tables_find(t, "card: first motif at column", 0), 0);
    e.project.machine.pitch_cm = 0; /* by hand */
    t = table("Sizes");
    ck_assert_int_lt(tables_find(t, "from needle", 0), 0);
    ck_assert_int_lt(tables_find(t, "off the middle of the bed, needles", 0), 0);
}
END_TEST

START_TEST(re_hanging)
{
    const char *after = "visible stitches after re-hanging";
    const char *fewer = "decreases in the first plain row";
    const char *more = "increases in the first plain row";
    ck_assert_int_lt(tables_find(table("Sizes"), after, 0), 0);
    e.plan.grading.fits[0].main_sts = 80;
    const hw_table *t = table("Sizes");
    tables_count(cell(t, after, 1), 80);
    tables_count(cell(t, after, 2), 89);
    tables_text(cell(t, fewer, 5), "3 (0, 0, 0)");
    ck_assert_int_lt(tables_find(t, more, 0), 0);
    ck_assert_int_lt(
        tables_find(t, after, tables_find(t, after, 0) + 1), 0); /* the back is not re-hung */
    e.plan.grading.fits[2].main_sts = 91;
    tables_text(cell(table("Sizes"), more, 5), "0 (2, 0, 0)");
}
END_TEST

START_TEST(seams)
{
    e.plan.grading.seam_breaks[2 * EXAMPLE_SEAMS + 1] = -2;
    const hw_table *t = table("Sizes");
    tables_text(cell(t, "break at front right to back left", 5), "0 (0, 0, 0)");
    tables_count(cell(t, "break at back right to front left", 3), -2);
    e.project.garment.seam_count = 0;
    t = table("Sizes");
    ck_assert_int_lt(tables_find(t, "break at front right to back left", 0), 0);
}
END_TEST

/* Anyone can add the terms up again: each is rounded by at most half of a ten-thousandth. */
START_TEST(costs_add_up)
{
    e.plan.grading.seam_costs[3] = 0.125;
    e.plan.grading.total_cost += 0.125;
    const hw_table *t = table("Costs");
    int first = tables_find(t, "front: band width", 0);
    int total = tables_find(t, "total of all sizes", 0);
    ck_assert_int_eq(total - first, 4 * EXAMPLE_PIECES + EXAMPLE_SEAMS);
    double sum = 0;
    int terms = 0;
    for (int r = first; r < total; r++) {
        for (int c = 1; c <= EXAMPLE_SIZES; c++) {
            ck_assert_int_eq(hw_cells_at(t, r, c)->kind, HW_CELL_NUMBER);
            ck_assert_int_eq(hw_cells_at(t, r, c)->decimals, 4);
            sum += hw_cells_at(t, r, c)->number;
            terms++;
        }
    }
    ck_assert_double_eq_tol(sum, hw_cells_at(t, total, 1)->number, 0.5e-4 * (terms + 1));
    is_number(cell(t, "seam back right to front left", 2), 0.125, 4);
}
END_TEST

/* By hand: 2 rows at 38 in 10 cm are 0.53 cm, 6 at 40 are 1.5 cm, the face 2.55 cm. */
START_TEST(hem_in_knitting_order)
{
    const hw_table *t = table("Hem");
    static const struct {
        const char *label;
        int rows;
    } wanted[] = { { "facing", 10 }, { "fold: one loose row", 1 }, { "plain below the band", 2 },
        { "band, two colours", 6 }, { "plain above the band", 2 },
        { "face: plain, band and plain", 10 }, { "all in all", 21 } };
    for (int i = 0; i < (int)(sizeof wanted / sizeof wanted[0]); i++) {
        tables_text(hw_cells_at(t, 2 + i, 0), wanted[i].label);
        tables_count(hw_cells_at(t, 2 + i, 1), wanted[i].rows);
    }
    is_number(cell(t, "facing", 2), 6, 1);
    is_number(cell(t, "plain above the band", 2), 7, 1);
    is_number(cell(t, "band, two colours", 3), 1.5, 1);
    is_number(cell(t, "plain below the band", 3), 0.5, 1);
    is_number(cell(t, "face off by", 3), 0.1, 1);
    is_number(cell(t, "the row that joins facing and face", 2), 8, 1);
    int facing = tables_find(t, "facing", tables_find(t, "facing", 0) + 1);
    ck_assert_int_eq(hw_cells_at(t, facing, 3)->style, HW_STYLE_WARNING);
    ck_assert_int_ge(tables_find(t, "the facing is deeper than the face", 0), 0);
}
END_TEST

START_TEST(hem_without_dials_or_depth)
{
    e.plan.hem.has_dials = false;
    e.plan.hem.facing_deep = false;
    e.plan.hem.wanted_cm = 0;
    e.plan.gauge[HW_MAIN].has_dial = false;
    const hw_table *t = table("Hem");
    ck_assert_int_eq(t->columns, 3);
    tables_text(hw_cells_at(t, 1, 2), "depth, cm");
    ck_assert_int_lt(tables_find(t, "face wanted", 0), 0);
    ck_assert_int_lt(tables_find(t, "the facing is deeper than the face", 0), 0);
    is_number(cell(t, "face knitted, from the rows asked for", 2), 2.6, 1);
}
END_TEST

static void squares_are(const hw_table *t, int columns)
{
    const hw_motif *motif = &e.plan.motif;
    ck_assert(t->square);
    ck_assert_int_eq(t->columns, columns + 4);
    for (int r = 0; r < motif->chart.rows; r++) {
        tables_count(hw_cells_at(t, 2 + r, 0), motif->chart.rows - r);
        tables_count(hw_cells_at(t, 2 + r, columns + 1), motif->chart.rows - r);
        for (int c = 0; c < columns; c++) {
            const hw_cell *square = hw_cells_at(t, 2 + r, 1 + c);
            int at = c % motif->repeat;
            bool contrast = at < motif->chart.width &&
                            motif->chart.cells[r * motif->chart.width + at] == HW_CONTRAST;
            tables_text(square, contrast ? "o" : ".");
            ck_assert_int_eq(square->style, contrast ? HW_STYLE_CONTRAST : HW_STYLE_BACKGROUND);
        }
        tables_count(hw_cells_at(t, 2 + r, columns + 2), motif->rows[r].longest_float[0]);
        tables_count(hw_cells_at(t, 2 + r, columns + 3), motif->rows[r].longest_float[1]);
    }
}

START_TEST(chart)
{
    const hw_table *t = table("Chart");
    squares_are(t, 24);
    tables_count(hw_cells_at(t, 1, 24), 24);
    tables_text(cell(t, "mirror axes", 1), "on column 3 and on column 6");
    tables_text(cell(t, "punch card", 1), "24 columns hold the repeat 4 times");
    is_number(cell(t, "share of the contrast, %", 1), 47.2, 1); /* by hand: 17 of 36 */
    tables_count(cell(t, "longest float, background, sts", 1), 5);
    tables_text(cell(t, "figure is symmetrical", 1), "yes");
    example_no_card_fit(&e);
    t = table("Chart");
    squares_are(t, 21); /* three repeats of 7 are all that 24 columns hold */
    tables_text(cell(t, "punch card", 1),
        "7 columns do not divide the card's 24; they would with a gap of 1, 3, 7 or 19");
    e.plan.motif.card_gap_count = 0;
    tables_text(cell(table("Chart"), "punch card", 1),
        "7 columns do not divide the card's 24; no gap makes them fit");
}
END_TEST

START_TEST(chart_wider_than_a_card)
{
    e.plan.motif.gap = 25;
    e.plan.motif.repeat = 30;
    squares_are(table("Chart"), 30);
    e.plan.motif.gap = 1;
    e.plan.motif.repeat = 6;
    e.plan.motif.card_columns = 0;
    squares_are(table("Chart"), 24);
    tables_text(cell(table("Chart"), "punch card", 1), "none");
}
END_TEST

/* By hand: the heart of 6 rows is punched 6 times, 36 rows; 17 holes in one, four beside each
 * other, are 408, and four joining rows of 24 holes 96. Its lowest row has its one stitch in the
 * figure's middle: the first figure starts in column 4, so in columns 6, 12, 18 and 24. */
START_TEST(card)
{
    const hw_table *t = table("Card");
    ck_assert(t->square);
    ck_assert_int_eq(t->columns, 24 + 3);
    for (int r = 0; r < 40; r++) {
        bool joins = r < 2 || r >= 38;
        int at = 0;
        for (int c = 1; c <= 24; c++) {
            bool hole = strcmp(hw_cells_at(t, 2 + r, c)->text, "o") == 0;
            at += hole ? 1 : 0;
            ck_assert(!joins || hole);
            ck_assert(r != 37 || hole == (c % 6 == 0));
        }
        tables_count(hw_cells_at(t, 2 + r, 26), at);
        if (joins) {
            tables_text(hw_cells_at(t, 2 + r, 0), "joins");
        } else {
            tables_count(hw_cells_at(t, 2 + r, 0), 38 - r);
            tables_count(hw_cells_at(t, 2 + r, 25), 38 - r);
        }
    }
    tables_count(cell(t, "holes", 1), 408 + 96);
    tables_count(cell(t, "first figure from column", 1), 4);
    tables_count(cell(t, "figures one above the other", 1), 6);
    tables_count(cell(t, "rows of the loop", 1), 36);
    tables_count(cell(t, "rows to punch, joining rows too", 1), 40);
    int order = tables_find(t, "order of punching", 0);
    tables_text(hw_cells_at(t, order + 1, 1), "first, in all rows: columns 1 to 12");
    tables_text(
        hw_cells_at(t, order + 1, 13), "then, turned once to its other edge: columns 13 to 24");
    tables_text(hw_cells_at(t, order + 2, 1), "1-12");
    tables_text(hw_cells_at(t, order + 4, 1), "6, 12");
    tables_text(hw_cells_at(t, order + 4, 13), "18, 24");
    int back = tables_find(t, "the same from the back: left and right change places", order);
    tables_count(hw_cells_at(t, back + 1, 1), 24);
    tables_text(hw_cells_at(t, back + 2 + 37, 1), "o");
    tables_text(hw_cells_at(t, back + 2 + 37, 2), ".");
}
END_TEST

/* By hand: 7 rows above row 1 is row 8. */
START_TEST(card_in_the_reader)
{
    const hw_table *t = table("Card");
    tables_text(cell(t, "row in view then", 1), "not known: find it once, as told at the foot");
    int at =
        tables_find(t, "a first-time check with a pre-selecting carriage: the reader offset", 0);
    ck_assert_int_ge(at, 0);
    ck_assert_ptr_nonnull(strstr(hw_cells_at(t, at + 4, 1)->text, "needle comes forward"));
    e.project.machine.carriage = HW_CARRIAGE_DIRECT;
    t = table("Card");
    at = tables_find(t, "a first-time check with a direct carriage: the reader offset", 0);
    ck_assert_ptr_nonnull(strstr(hw_cells_at(t, at + 4, 1)->text, "second yarn"));
    e.project.machine.reader_offset = 7;
    t = table("Card");
    tables_text(cell(t, "row in view then", 1), "row 8 shows above the slot");
    ck_assert_int_lt(
        tables_find(t, "a first-time check with a direct carriage: the reader offset", 0), 0);
}
END_TEST

/* By hand: 12 rows to a blank are 8 beside the joining rows, and 36 rows take five of them. */
START_TEST(card_on_several_blanks)
{
    e.project.machine.blank.rows = 12;
    example_card(&e, &arena);
    const hw_table *t = table("Card");
    tables_count(cell(t, "blank cards", 1), 5);
    tables_count(cell(t, "rows to punch, joining rows too", 1), 36 + 5 * 4);
    ck_assert_int_ge(tables_find(t, "as it is punched, blank 5 of 5", 0), 0);
    tables_text(cell(t, "look under Notes for", 1), "more rows than one blank holds");
    int first = tables_find(t, "order of punching: blank 1", 0);
    ck_assert_int_ge(first, 0);
    ck_assert_int_ge(tables_find(t, "order of punching: blank 2", first), 0);
}
END_TEST

START_TEST(no_card)
{
    example_no_card_fit(&e);
    example_card(&e, &arena);
    tables_text(cell(table("Card"), "punch card", 1),
        "none: its columns do not hold the repeat; see Notes");
    e.plan.motif.card_columns = 0;
    example_card(&e, &arena);
    tables_text(cell(table("Card"), "punch card", 1), "none: the machine takes none");
}
END_TEST

START_TEST(mirror_axes)
{
    static int axes[] = { 0, 4, 7 };
    e.plan.motif.axes = axes;
    e.plan.motif.axis_count = 3;
    tables_text(cell(table("Chart"), "mirror axes", 1),
        "where two repeats meet, between columns 2 and 3 and on column 4");
    e.plan.motif.axis_count = 0;
    tables_text(cell(table("Chart"), "mirror axes", 1), "none");
}
END_TEST

/* Which tables go to a knitter: own choice. */
START_TEST(cautions_where_they_are_seen)
{
    static const char *const without[] = { "Gauge", "Tolerance", "Alternatives", "Notes", "Basis",
        "Costs" };
    hw_tables tables = example_tables(&e, &arena);
    for (int i = 0; i < tables.count; i++) {
        const hw_table *t = &tables.tables[i];
        bool wanted = true;
        for (size_t k = 0; k < sizeof without / sizeof without[0]; k++) {
            wanted = wanted && strcmp(t->name, without[k]) != 0;
        }
        int at = strcmp(t->name, "Notes") == 0 ? -1 : tables_find(t, "safety", 0);
        ck_assert_msg((at >= 0) == wanted, "%s", t->name);
        if (wanted) {
            tables_text(hw_cells_at(t, at + 1, 0), e.notes[2].text);
            ck_assert_int_eq(hw_cells_at(t, at - 1, 0)->kind, HW_CELL_EMPTY);
        }
    }
}
END_TEST

START_TEST(words)
{
    const hw_table *t = table("Notes");
    ck_assert_int_eq(t->rows, 2 + EXAMPLE_NOTES);
    tables_text(hw_cells_at(t, 3, 0), "warning");
    ck_assert_int_eq(hw_cells_at(t, 3, 0)->style, HW_STYLE_WARNING);
    tables_text(hw_cells_at(t, 4, 0), "safety");
    ck_assert_int_eq(hw_cells_at(t, 4, 0)->style, HW_STYLE_SAFETY);
    tables_text(hw_cells_at(t, 4, 1), e.notes[2].text);
    ck_assert_int_eq(hw_cells_at(t, 4, 1)->style, HW_STYLE_NOTE);
    e.plan.note_count = 0;
    tables_text(hw_cells_at(table("Notes"), 2, 0), "none");
    t = table("Basis");
    tables_text(cell(t, "facing gauge", 3), "assumed");
    tables_text(cell(t, "facing gauge", 4), "H1");
    ck_assert_int_eq(cell(t, "main gauge", 2)->kind, HW_CELL_EMPTY);
    tables_text(cell(t, "tolerance", 3), "common practice, no source");
}
END_TEST

START_TEST(title_of_the_garment)
{
    e.project.title = NULL;
    tables_text(hw_cells_at(table("Notes"), 0, 0), "skirt: notes");
    e.project.title = "";
    tables_text(hw_cells_at(table("Basis"), 0, 0), "skirt: what the numbers rest on");
}
END_TEST

static void check_cell(const hw_cell *c)
{
    ck_assert_int_lt(c->style, HW_STYLE_COUNT);
    ck_assert_int_ge(c->decimals, 0);
    ck_assert_int_le(c->decimals, 4);
    ck_assert(c->kind != HW_CELL_TEXT || (c->text != NULL && c->text[0] != '\0'));
    ck_assert(isfinite(c->number) && (c->number < 0 || !signbit(c->number)));
    double scaled = c->number * pow(10, c->decimals);
    ck_assert_double_eq_tol(scaled, nearbyint(scaled), 1e-6);
}

/* What a sheet's name may be: the rule of hw_table. */
START_TEST(tables_are_sound)
{
    hw_tables tables = example_tables(&e, &arena);
    static const char *const names[] = { "Sizes", "Hem", "Bands", "Outline", "Shaping", "Trims",
        "Making up", "Yarn", "Rows", "Chart", "Card", "Gauge", "Tolerance", "Alternatives", "Notes",
        "Basis", "Costs", "Measured" };
    ck_assert_int_eq(tables.count, (int)(sizeof names / sizeof names[0]));
    for (int i = 0; i < tables.count; i++) {
        const hw_table *t = &tables.tables[i];
        ck_assert_str_eq(t->name, names[i]);
        ck_assert_uint_le(strlen(t->name), 31);
        ck_assert_ptr_null(strpbrk(t->name, "[]:*?/\\"));
        ck_assert(t->head_rows <= t->rows && t->head_columns <= t->columns);
        for (int at = 0; at < t->rows * t->columns; at++) {
            check_cell(&t->cells[at]);
        }
    }
}
END_TEST

START_TEST(no_negative_nothing)
{
    e.plan.grading.fits[0].band_off_cm = -0.04;
    is_number(cell(table("Sizes"), "band width off by, cm", 1), 0, 1);
    ck_assert(!signbit(cell(table("Sizes"), "band width off by, cm", 1)->number));
}
END_TEST

static hw_status make_tables(hw_arena *room)
{
    hw_tables tables = { .count = -7 };
    hw_status status = hw_cells_plan(&e.plan, room, &tables);
    ck_assert(status == HW_OK || tables.count == -7);
    return status;
}

START_TEST(memory_refused)
{
    ck_assert_int_gt(hw_check_refusals(make_tables, false), 100);
    ck_assert_int_gt(hw_check_refusals(make_tables, true), 100);
}
END_TEST

/* Room is doubled: rows that were there before stay as they were. */
START_TEST(grid_grows)
{
    hw_grid grid;
    hw_grid_begin(&grid, &arena, "Grid", 3);
    for (int i = 0; i < 1000; i++) {
        hw_grid_row(&grid);
        hw_grid_count(&grid, 0, HW_STYLE_PLAIN, i);
        hw_grid_number(&grid, 2, HW_STYLE_KEY, i / 8.0, 2);
    }
    hw_table t = { 0 };
    ck_assert_int_eq(hw_grid_finish(&grid, &t), HW_OK);
    ck_assert_int_eq(t.rows, 1000);
    for (int i = 0; i < 1000; i++) {
        tables_count(hw_cells_at(&t, i, 0), i);
        ck_assert_int_eq(hw_cells_at(&t, i, 1)->kind, HW_CELL_EMPTY);
        ck_assert_double_eq_tol(hw_cells_at(&t, i, 2)->number, i / 8.0, 0.0051);
    }
    hw_grid_text(&grid, 1, HW_STYLE_PLAIN, NULL);
    ck_assert_int_eq(hw_grid_finish(&grid, &t), HW_ERR_NOMEM);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { counts_and_widths, measurements_and_marks, units, one_size,
        needles, re_hanging, seams, costs_add_up, hem_in_knitting_order, hem_without_dials_or_depth,
        chart, chart_wider_than_a_card, card, card_in_the_reader, card_on_several_blanks, no_card,
        mirror_axes, cautions_where_they_are_seen, words, title_of_the_garment, tables_are_sound,
        no_negative_nothing, memory_refused, grid_grows };
    return fixture_run("cells", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
