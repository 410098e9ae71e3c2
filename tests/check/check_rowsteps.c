/* Runs of rows, their words, the table of them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "example_plan.h"
#include "example_rows.h"
#include "fixture.h"
#include "tables.h"
#include "write/sheetrows.h"

static rows_example e;
static example document;

static void setup(void)
{
    example_rows(&e);
    example_plan(&document, &arena);
}

static hw_row_runs runs_of(const hw_rowplan *plan)
{
    hw_row_runs runs = { 0 };
    ck_assert_int_eq(hw_rowplan_runs(plan, &arena, &runs), HW_OK);
    return runs;
}

/* By hand, common practice, no source: 10 facing; plain row 11, set-up row 12, band rows 13 to 17,
 * the last of them, 18, with the selecting off; 19 and 20 plain; 21 joins; 22. */
START_TEST(runs_of_a_hem)
{
    static const int firsts[] = { 1, 11, 12, 13, 18, 19, 21, 22 };
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    ck_assert_int_eq(runs.count, (int)(sizeof firsts / sizeof firsts[0]));
    for (int i = 0; i < runs.count; i++) {
        int next = i + 1 < runs.count ? firsts[i + 1] : 23;
        ck_assert_int_eq(plan.rows[runs.list[i].first].number, firsts[i]);
        ck_assert_int_eq(runs.list[i].count, next - firsts[i]);
        ck_assert_int_eq(runs.list[i].shaping_count, 0);
    }
    e.machine.carriage = HW_CARRIAGE_DIRECT; /* 11 and 12 alike, 13 to 18 alike */
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(runs_of(&plan).count, 6);
}
END_TEST

/* By hand, from the shape of the example: rows 22, 23 to 26 (3 off in 23 and in 24), the left
 * half from 27 (4 off in the middle), from 29 (1 off), the right half from 27, from 29. */
START_TEST(runs_with_shaping)
{
    static const int firsts[] = { 1, 11, 12, 13, 18, 19, 21, 22, 23, 27, 29, 27, 29 };
    example_rows_shape(&e);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    ck_assert_int_eq(runs.count, (int)(sizeof firsts / sizeof firsts[0]));
    for (int i = 0; i < runs.count; i++) {
        ck_assert_int_eq(plan.rows[runs.list[i].first].number, firsts[i]);
    }
    const char *text = hw_rowwords_run(&plan, &runs.list[8], &arena);
    ck_assert_str_eq(
        text, "Bind off 3 stitches at the start of rows 23 and 24, on the side of the carriage.");
    text = hw_rowwords_run(&plan, &runs.list[9], &arena);
    ck_assert_str_eq(text, "Put the 6 stitches of the half at the left on hold. Bind off 4 "
                           "stitches in the middle in row 27 with a separate strand.");
    text = hw_rowwords_run(&plan, &runs.list[11], &arena);
    ck_assert_str_eq(text, "Cut the main yarn and take up the 6 stitches that were put on hold. "
                           "The carriage is at the right already: join the yarn again there. Set "
                           "the row counter to 026.");
    text = hw_rowwords_run(&plan, &runs.list[12], &arena);
    ck_assert_str_eq(text, "Decrease 1 stitch at the neck edge in row 29. After row 30 bind off "
                           "the stitches that are left, or keep them for a seam.");
    ck_assert_str_eq(hw_rowwords_run(&plan, &runs.list[5], &arena), "Carriage: plain.");
    ck_assert_str_eq(hw_rowwords_run(&plan, &runs.list[7], &arena), "");
}
END_TEST

/* By hand: of halves of three rows, 27 to 29, the first leaves the carriage at the left, and the
 * second begins at the right where the first did; a yarn that is bound off with starts anew
 * (common practice, no source). */
START_TEST(carriage_for_the_second_half)
{
    example_rows_shape(&e);
    e.shape.rows = ROWS_MAIN - 1;
    e.list[4].row = ROWS_MAIN - 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    ck_assert_int_eq(plan.rows[runs.list[11].first].number, 27);
    ck_assert_str_eq(hw_rowwords_run(&plan, &runs.list[11], &arena),
        "Cut the main yarn and take up the 6 stitches that were put on hold. Take the carriage to "
        "the right without knitting, and join the yarn again there. Set the row counter to 026.");
}
END_TEST

/* By hand: rows 2, 5, 8 above the hem are numbers 23, 26, 29; of 1 then every row 9 times, numbers
 * 22 to 30. */
START_TEST(steps_inside_a_run)
{
    example_rows_shape(&e);
    e.shape.neck_halves[HW_LEFT] = NULL;
    e.list[0] =
        (hw_shape_step){ HW_STEP_DECREASE, HW_AT_BOTH, .row = 2, .every = 3, .times = 3, .sts = 1 };
    e.steps.count = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    const hw_row_run *last = &runs.list[runs.count - 1];
    ck_assert_int_eq(plan.rows[last->first].number, 23);
    ck_assert_int_eq(last->count, 8);
    ck_assert_int_eq(last->shaping_count, 1);
    ck_assert_int_eq(last->shaping[0].times, 3);
    ck_assert_str_eq(hw_rowwords_run(&plan, last, &arena),
        "Decrease 1 stitch at each end in rows 23, 26 and 29.");
    e.list[0] =
        (hw_shape_step){ HW_STEP_INCREASE, HW_AT_LEFT, .row = 1, .every = 1, .times = 9, .sts = 1 };
    plan = example_rows_plan(&e, &arena);
    runs = runs_of(&plan);
    last = &runs.list[runs.count - 1];
    ck_assert_str_eq(hw_rowwords_run(&plan, last, &arena),
        "Increase 1 stitch at the right of the bed in row 22 and every row after it, 9 times in "
        "all, the last in row 30.");
}
END_TEST

/* Runs hold each row once, and rows of a run agree, whatever the hem. */
START_TEST(runs_by_chance)
{
    unsigned state = 3;
    for (int n = 0; n < 200; n++) {
        hw_hem hem = e.hem;
        hem.facing_rows = 1 + hw_check_random(&state, 20);
        hem.below_rows = 2 + hw_check_random(&state, 5);
        hem.band_rows = 1 + hw_check_random(&state, ROWS_MOST_BAND);
        example_rows_hem(&e, &hem);
        example_rows_shape(&e);
        hw_rowplan plan = example_rows_plan(&e, &arena);
        hw_row_runs runs = runs_of(&plan);
        int at = 0;
        for (int i = 0; i < runs.count; i++) {
            const hw_row *first = &plan.rows[at];
            ck_assert_int_eq(runs.list[i].first, at);
            ck_assert_int_gt(runs.list[i].count, 0);
            for (int k = 1; k < runs.list[i].count; k++) {
                ck_assert_int_eq(first[k].kind, first->kind);
                ck_assert_int_eq(first[k].setting, first->setting);
                ck_assert_int_eq(first[k].number, first->number + k);
                ck_assert_int_eq(first[k].part, first->part);
            }
            at += runs.list[i].count;
        }
        ck_assert_int_eq(at, plan.count);
    }
}
END_TEST

/* By hand: 3 off at one edge in row 2 above the hem, number 23, and at the other in row 3: as
 * patterns have it, "bind off at the start of the next 2 rows" (common practice, no source). Once
 * in 1, 4, 7 and once in 2, 5, 8 above the hem are numbers 22, 23, 25, 26, 28, 29. */
START_TEST(steps_told_together)
{
    example_rows_shape(&e);
    e.shape.neck_halves[HW_LEFT] = NULL;
    for (int i = 0; i < 2; i++) {
        e.list[i] = (hw_shape_step){ HW_STEP_BIND_OFF, i == 0 ? HW_AT_LEFT : HW_AT_RIGHT,
            .row = 2 + i, .times = 1, .sts = 3 };
    }
    e.steps.count = 2;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    const hw_row_run *last = &runs.list[runs.count - 1];
    ck_assert_int_eq(plan.rows[last->first].number, 23);
    ck_assert_int_eq(last->count, 8);
    ck_assert_str_eq(hw_rowwords_run(&plan, last, &arena),
        "Bind off 3 stitches at the start of rows 23 and 24, on the side of the carriage.");
    for (int i = 0; i < 2; i++) {
        e.list[i] = (hw_shape_step){ HW_STEP_DECREASE, HW_AT_BOTH, .row = 1 + i, .every = 3,
            .times = 3, .sts = 1 };
    }
    plan = example_rows_plan(&e, &arena);
    runs = runs_of(&plan);
    last = &runs.list[runs.count - 1];
    ck_assert_int_eq(plan.rows[last->first].number, 22);
    ck_assert_int_eq(last->count, 9);
    ck_assert_str_eq(hw_rowwords_run(&plan, last, &arena),
        "Decrease 1 stitch at each end in rows 22, 23, 25, 26, 28 and 29, 6 times in all.");
}
END_TEST

/* By hand: where there are several cards, it is said whose goes in; row 12 sets up the hem's band.
 */
START_TEST(whose_card)
{
    e.task.name = "hem";
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    ck_assert_int_eq(plan.rows[runs.list[2].first].number, 12);
    ck_assert_ptr_nonnull(strstr(hw_rowwords_run(&plan, &runs.list[2], &arena),
        "Put the card of the hem in and lock it so that it reads row 1."));
}
END_TEST

static bool says(const hw_rowplan *plan, int run, const char *words)
{
    hw_row_runs runs = runs_of(plan);
    return strstr(hw_rowwords_run(plan, &runs.list[run], &arena), words) != NULL;
}

/* By hand: the set-up row of a band in row 1 above the hem is the joining row, which the seventh
 * line begins with; the ninth goes on after the band. */
START_TEST(moved_to_the_card)
{
    hw_row_band band = {
        .row = 1, .motif = &e.motif, .card_row = 1, .aside = 1, .back = true, .name = "belt"
    };
    e.task.bands = &band;
    e.task.band_count = 1;
    e.task.plain_rows = 9;
    hw_motif low = e.motif;
    low.chart.rows = 2;
    band.row = 2;
    band.motif = &low;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert(says(&plan, 7,
        "Move the whole piece 1 needle to the right on the bed, over waste "
        "yarn, so that the figures of the belt stand on the card. Put the card "
        "of the belt in and lock it so that it reads row 1."));
    ck_assert(says(&plan, 10,
        "Move the whole piece 1 needle to the left on the bed, over waste "
        "yarn, to where it hung before the band."));
    ck_assert(!says(&plan, 7, "column"));
    band.own_column = 4;
    band.aside = 0;
    band.back = false;
    plan = example_rows_plan(&e, &arena);
    ck_assert(says(&plan, 7, "with its first motif starting in column 4"));
    ck_assert(!says(&plan, 7, "Move the whole piece"));
}
END_TEST

/* By hand: of 6 stitches in each half and 4 in the middle, the half whose end the row reaches last
 * waits with the middle (common practice, no source). */
START_TEST(neck_by_hand)
{
    example_rows_shape(&e);
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    int said = 0;
    for (int i = 0; i < runs.count; i++) {
        const char *text = hw_rowwords_run(&plan, &runs.list[i], &arena);
        said += strstr(text, "Work to the middle and turn; put the 4 stitches in the middle and "
                             "the 6 of the left half on hold.") != NULL;
        said +=
            strstr(text, "Join the yarn at the neck for a right-side row and bind off the 4 "
                         "stitches in the middle; then work the 6 that were put on hold.") != NULL;
        ck_assert_ptr_null(strstr(text, "strand"));
    }
    ck_assert_int_eq(said, 2);
}
END_TEST

/* By hand: 3 of the left half are held in row 28, which ends at the left edge as row 30, the last,
 * does: that one works them again. 3 of the right half are held in row 29 and worked in row 31, one
 * more than are drawn. Each half has 10 less 3 bound off and the neck's 3, and an edge stitch. */
START_TEST(short_rows)
{
    example_rows_shape(&e);
    e.shape.held_sts[HW_LEFT] = e.shape.held_sts[HW_RIGHT] = 3;
    e.shape.back_row[HW_LEFT] = 9;
    e.shape.back_row[HW_RIGHT] = 10;
    for (int row = 7; row < ROWS_MAIN; row++) {
        e.inset[HW_LEFT][row] += 3;
        e.inset[HW_RIGHT][row] += row > 7 ? 3 : 0;
    }
    const hw_shape_step list[] = {
        { HW_STEP_DIVIDE, HW_AT_MIDDLE, .row = 6, .times = 1, .sts = 4 },
        { HW_STEP_HOLD, HW_AT_LEFT, .row = 7, .times = 1, .sts = 3 },
        { HW_STEP_HOLD, HW_AT_RIGHT, .row = 8, .times = 1, .sts = 3 },
        { HW_STEP_BACK, HW_AT_LEFT, .row = 9, .times = 1, .sts = 3 },
        { HW_STEP_BACK, HW_AT_RIGHT, .row = 10, .times = 1, .sts = 3 },
        { HW_STEP_END, HW_AT_LEFT, .row = 10, .times = 1, .sts = 4 },
        { HW_STEP_END, HW_AT_RIGHT, .row = 11, .times = 1, .sts = 4 },
    };
    memcpy(e.list, list, sizeof list);
    e.steps.count = (int)(sizeof list / sizeof list[0]);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    int lasts[HW_PART_COUNT] = { 0 };
    for (int i = 0; i < plan.count; i++) {
        const hw_row *row = &plan.rows[i];
        lasts[row->part] = row->number;
        bool again = (row->part == HW_PART_LEFT && row->number == 30) ||
                     (row->part == HW_PART_RIGHT && row->number == 31);
        ck_assert(!again || (row->sts == 5 && row->last - row->first == 4));
    }
    ck_assert_int_eq(lasts[HW_PART_LEFT], 30);
    ck_assert_int_eq(lasts[HW_PART_RIGHT], 31);
    int said = 0;
    for (int i = 0; i < runs.count; i++) {
        const char *text = hw_rowwords_run(&plan, &runs.list[i], &arena);
        said += strstr(text, "set the carriage to leave needles that are pushed out") != NULL;
        said += strstr(text, " back, so that they knit in this row. After row 3") != NULL;
    }
    ck_assert_int_eq(said, 4); /* both once for each half */
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    plan = example_rows_plan(&e, &arena);
    runs = runs_of(&plan);
    said = 0;
    for (int i = 0; i < runs.count; i++) {
        const char *text = hw_rowwords_run(&plan, &runs.list[i], &arena);
        said += strstr(text, "; turn there with a wrap, or in your own way.") != NULL;
        said += strstr(text, " work the 3 stitches left unworked at the ") != NULL;
    }
    ck_assert_int_eq(said, 4);
}
END_TEST

/* By hand: of 20 visible stitches 10 figures of one column take 19 with the gaps of one between
 * them; the one that is left lies at the left edge. Outside the figures all is background, and a
 * wrong-side row comes to the same stitches from the left (common practice, no source). */
START_TEST(ends_by_hand)
{
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    e.fit.motifs = 10;
    e.fit.margin[HW_LEFT] = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_row_runs runs = runs_of(&plan);
    int said = 0;
    for (int i = 0; i < runs.count; i++) {
        const char *text = hw_rowwords_run(&plan, &runs.list[i], &arena);
        said +=
            strstr(text, " Right-side rows: 1 edge, 0 plain, the figure 10 times with 1 plain "
                         "between, 1 plain, 1 edge; wrong-side rows the other way round.") != NULL;
        ck_assert(i == 2 || strstr(text, "edge,") == NULL);
    }
    ck_assert_int_eq(said, 1);
    plan = example_rows_round(&e, &arena);
    runs = runs_of(&plan);
    ck_assert_ptr_nonnull(strstr(hw_rowwords_run(&plan, &runs.list[2], &arena),
        " Each round: 1 edge, 0 plain, the figure 10 times with 1 plain between, 1 plain, 1 "
        "edge."));
}
END_TEST

/* By hand: a further band of two rows from row 1 above the hem, 9 figures with 2 plain stitches at
 * the left and 1 at the right; in its second row 1 is taken off the left edge. */
START_TEST(ends_that_are_shaped)
{
    example_rows_shape(&e);
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    hw_motif low = e.motif;
    low.chart.rows = 2;
    hw_row_band band = { .row = 1, .motif = &low, .motifs = 9, .plain_sts = { 2, 1 } };
    e.task.bands = &band;
    e.task.band_count = 1;
    e.inset[HW_LEFT][2] = 1;
    e.list[0] = (hw_shape_step){ HW_STEP_DECREASE, HW_AT_LEFT, .row = 2, .times = 1, .sts = 1 };
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[21].figures.plain_sts[HW_LEFT], 2);
    ck_assert_int_eq(plan.rows[22].figures.plain_sts[HW_LEFT], 1);
    ck_assert_int_eq(plan.rows[22].figures.plain_sts[HW_RIGHT], 1);
    hw_row_runs runs = runs_of(&plan);
    int said = 0;
    for (int i = 0; i < runs.count; i++) {
        const char *text = hw_rowwords_run(&plan, &runs.list[i], &arena);
        said += strstr(text, "1 edge, 1 plain, the figure 9 times with 1 plain between, 2 plain, "
                             "1 edge") != NULL;
        said += strstr(text, "1 edge, 1 plain, the figure 9 times with 1 plain between, 1 plain, "
                             "1 edge") != NULL;
    }
    ck_assert_int_eq(said, 2);
}
END_TEST

static hw_table table_of(const hw_rowplan *plan)
{
    hw_grid grid;
    hw_table table = { 0 };
    hw_sheet sheet = { .plan = &document.plan, .arena = &arena, .grid = &grid };
    hw_row_block block = { "back", "92", plan };
    hw_sheet_rows(&sheet, &block, 1);
    ck_assert_int_eq(hw_grid_finish(&grid, &table), HW_OK);
    return table;
}

/* The cell under a head, the first of two with the same words. */
static const hw_cell *under(const hw_table *t, int row, const char *head)
{
    for (int c = 0; c < t->columns; c++) {
        if (strcmp(hw_cells_at(t, 1, c)->text, head) == 0) {
            return hw_cells_at(t, row, c);
        }
    }
    ck_abort_msg("no column %s", head);
}

/* The runs of the hem by hand, as above; title, heads, an empty line and a section come first, and
 * an empty line and how the table is read last. */
START_TEST(table_for_a_bed)
{
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_table t = table_of(&plan);
    ck_assert_str_eq(t.name, "Rows");
    tables_text(hw_cells_at(&t, 3, 0), "back, size 92");
    tables_text(under(&t, 4, "part"), "facing");
    tables_text(under(&t, 4, "rows"), "1 to 10");
    tables_text(under(&t, 4, "carriage"), "right to right"); /* an even number of rows */
    tables_text(under(&t, 4, "needles"), "L11 to R11");
    tables_count(under(&t, 4, "stitches"), 22);
    ck_assert_double_eq_tol(under(&t, 4, "dial")->number, 4, 1e-12);
    tables_text(under(&t, 5, "rows"), "11");
    tables_text(under(&t, 6, "part"), "set-up");
    tables_text(under(&t, 6, "what to do"),
        "Put the card in and lock it so that it reads row 1. Carriage: plain; needles for the next "
        "row come out. Row 8 is in view.");
    tables_text(under(&t, 7, "part"), "band");
    tables_text(under(&t, 7, "what to do"),
        "Thread the contrast yarn into the second feeder. Let the card move. Carriage: two "
        "colours; needles for the next row come out; both end stitches caught. The card reads rows "
        "2 to 6. Rows 9 to 13 are in view. Rows 1 to 5 of the chart.");
    tables_text(under(&t, 8, "what to do"),
        "Carriage: two colours with the needles that are out; none come out; both end stitches "
        "caught. Row 6 of the chart. After row 18 take the contrast yarn out at the right.");
    tables_text(under(&t, 10, "part"), "joining");
    tables_text(under(&t, 11, "part"), "main");
    ck_assert_int_eq(under(&t, 11, "what to do")->kind, HW_CELL_EMPTY); /* set as before */
    tables_text(hw_cells_at(&t, 4 + 8 + 1, 0), "how to read this");
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_LOOSE;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    t = table_of(&plan);
    int row = 4; /* findings, each a paragraph, then the rows */
    for (; hw_cells_at(&t, row, 0)->style == HW_STYLE_PARAGRAPH; row++) {
        ck_assert_ptr_nonnull(hw_cells_at(&t, row, 0)->text);
    }
    ck_assert_int_gt(row, 4);
    tables_text(under(&t, row + 1, "dial"), "loosest");
}
END_TEST

/* By hand: two sizes of 22 and 26 stitches begin alike, up to the shaping; a third one of another
 * piece stands by itself. */
START_TEST(table_of_sizes)
{
    example_rows_shape(&e);
    hw_rowplan narrow = example_rows_plan(&e, &arena);
    e.fit.cast_on_sts += 4;
    e.fit.visible_sts += 4;
    e.fit.main_sts += 4;
    e.place.first -= 2;
    e.place.last += 2;
    e.task.shape = NULL;
    e.task.steps = NULL;
    e.task.plain_rows = 6;
    hw_rowplan wide = example_rows_plan(&e, &arena);
    hw_row_block blocks[] = { { "back", "92", &narrow }, { "back", "98", &wide },
        { "front", "92", &narrow } };
    hw_grid grid;
    hw_table t = { 0 };
    hw_sheet sheet = { .plan = &document.plan, .arena = &arena, .grid = &grid };
    hw_sheet_rows(&sheet, blocks, 3);
    ck_assert_int_eq(hw_grid_finish(&grid, &t), HW_OK);
    tables_text(hw_cells_at(&t, 3, 0), "back, all sizes: rows 1 to 21");
    ck_assert_int_eq(hw_cells_at(&t, 3, 0)->style, HW_STYLE_PIECE);
    tables_text(hw_cells_at(&t, 4, 0), "size 92");
    tables_text(under(&t, 4, "needles"), "L11 to R11");
    tables_count(under(&t, 4, "stitches"), 22);
    tables_text(under(&t, 5, "needles"), "L13 to R13");
    tables_count(under(&t, 5, "stitches"), 26);
    tables_text(under(&t, 6, "rows"), "1 to 10");
    ck_assert_int_eq(under(&t, 6, "stitches")->kind, HW_CELL_EMPTY);
    ck_assert_int_eq(
        strncmp(under(&t, 6, "what to do")->text, "Cast on 22 (26) stitches in ", 28), 0);
    int own = tables_row(&t, "back, size 92, from row 22 on", 0);
    ck_assert_int_eq(hw_cells_at(&t, own, 0)->style, HW_STYLE_SECTION);
    tables_text(under(&t, own + 1, "rows"), "22");
    ck_assert_int_gt(tables_row(&t, "back, size 98, from row 22 on", 0), own);
    ck_assert_int_eq(
        hw_cells_at(&t, tables_row(&t, "front, size 92", 0), 0)->style, HW_STYLE_PIECE);
    ck_assert(!t.large);
}
END_TEST

/* By hand: facing, plain below, band, plain above, joining, main: no set-up row. */
START_TEST(table_for_the_hand)
{
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_table t = table_of(&plan);
    tables_text(hw_cells_at(&t, 4 + 6 + 1, 0), "how to read this");
    ck_assert_ptr_nonnull(
        strstr(under(&t, 4, "what to do")->text, "Needles: 1 to 3 sizes thinner than"));
    tables_text(under(&t, 6, "begins on"), "right side");
    tables_text(under(&t, 6, "what to do"),
        "Knit with the main and the contrast yarn. Rows 1 to 6 of the chart: right-side rows are "
        "read from right to left, wrong-side rows from left to right.");
    tables_text(under(&t, 8, "what to do"),
        "Fold the hem and knit each stitch together with its loop of the cast-on edge.");
    e.task.round_rows = e.hem.total_rows + 2;
    plan = example_rows_plan(&e, &arena);
    t = table_of(&plan);
    tables_text(under(&t, 6, "what to do"),
        "Knit with the main and the contrast yarn. Rows 1 to 6 of the chart, read from right to "
        "left.");
}
END_TEST

START_TEST(table_for_rounds)
{
    hw_rowplan plan = example_rows_round(&e, &arena);
    hw_table t = table_of(&plan);
    tables_text(under(&t, 4, "what to do"),
        "In rounds together with back: cast on 52 stitches in all over a thread that is taken out "
        "later (provisionally), join them into a round without twisting them, and hang a marker "
        "where it begins "
        "and one behind each piece but the last: front 22, back 30. These lines are for front. "
        "Needles: 1 to 3 sizes thinner than for the swatch.");
    ck_assert_int_eq((int)under(&t, 4, "whole round")->number, 52);
    tables_text(under(&t, 8, "rows"), "21");
    tables_text(under(&t, 9, "what to do"), "Decrease 1 stitch at each end beside the markers.");
    tables_text(under(&t, 10, "rows"), "23 to 26");
    tables_text(under(&t, 10, "what to do"),
        "From here in rows, this piece by itself: leave the stitches of back on hold, and join the "
        "yarn at the right edge of these 22 for a right-side row. Bind off 3 stitches at the right "
        "edge in row 23.");
    ck_assert_int_eq(under(&t, 10, "whole round")->kind, HW_CELL_EMPTY);
    plan.slice = 1;
    t = table_of(&plan);
    ck_assert_ptr_nonnull(strstr(under(&t, 4, "what to do")->text, "together with front: cast"));
    ck_assert_ptr_nonnull(strstr(under(&t, 4, "what to do")->text, "These lines are for back."));
}
END_TEST

/* A piece that is a round of its own has one marker, and nothing waits where its rows turn. */
START_TEST(words_for_one_piece)
{
    hw_rowplan plan = example_rows_round(&e, &arena);
    plan.tube = NULL;
    hw_row_runs runs = runs_of(&plan);
    ck_assert_ptr_nonnull(strstr(hw_rowwords_run(&plan, &runs.list[0], &arena),
        "Cast on 22 stitches over a thread that is taken out later (provisionally) and join them "
        "into a round without twisting them, with a marker where it begins."));
    ck_assert_str_eq(hw_rowwords_run(&plan, &runs.list[5], &arena),
        "Decrease 1 stitch on both sides of the marker.");
    ck_assert_str_eq(hw_rowwords_run(&plan, &runs.list[6], &arena),
        "From here in rows: turn at the end of this row, a right-side row over 22 stitches, and of "
        "each row after it. Bind off 3 stitches at the right edge in row 23.");
}
END_TEST

/* By hand: a band of one row is a right-side row, number 13 of 10 facing and 2 plain rows; and a
 * card of 4 rows that begins anew while six rows are read. */
START_TEST(rows_of_chart_and_card)
{
    hw_hem hem = e.hem;
    hem.band_rows = 1;
    e.task.card_rows = 4;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    hw_table t = table_of(&plan);
    ck_assert_ptr_nonnull(
        strstr(under(&t, 7, "what to do")->text, "The card reads rows 2 round to 2."));
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    t = table_of(&plan);
    ck_assert_ptr_nonnull(
        strstr(under(&t, 6, "what to do")->text, "Row 1 of the chart, read from right to left."));
}
END_TEST

static hw_status fill_sheet(hw_arena *room)
{
    hw_rowplan plan = example_rows_round(&e, &arena);
    hw_grid grid;
    hw_table table = { .rows = 77 };
    hw_sheet sheet = { .plan = &document.plan, .arena = room, .grid = &grid };
    hw_row_block block = { "back", "92", &plan };
    hw_sheet_rows(&sheet, &block, 1);
    hw_status status = hw_grid_finish(&grid, &table);
    ck_assert(status == HW_OK || table.rows == 77);
    return status;
}

/* Each request refused in turn. */
START_TEST(no_memory)
{
    ck_assert_int_gt(hw_check_refusals(fill_sheet, false), 19);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { runs_of_a_hem, runs_with_shaping, carriage_for_the_second_half,
        steps_inside_a_run, runs_by_chance, steps_told_together, whose_card, moved_to_the_card,
        neck_by_hand, ends_by_hand, short_rows, ends_that_are_shaped, table_for_a_bed,
        table_of_sizes, table_for_the_hand, table_for_rounds, words_for_one_piece,
        rows_of_chart_and_card, no_memory };
    return fixture_run("row runs", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
