/* Sides that do not come out: faults by hand and by chance, and whether the ways out mend them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "core/rowplan.h"
#include "example_rows.h"
#include "fixture.h"

static rows_example e;

static void setup(void)
{
    example_rows(&e);
}

static const hw_row_remedy *remedy(const hw_row_finding *f, hw_remedy_kind kind)
{
    for (int i = 0; i < f->remedy_count; i++) {
        if (f->remedies[i].kind == kind) {
            return &f->remedies[i];
        }
    }
    ck_abort_msg("no remedy %d", kind);
}

/* What a knitter reads has all three; wording is this project's own. */
static void says(const hw_row_finding *f, const char *what, const char *where, const char *way)
{
    const char *text = hw_row_finding_text(f, &arena);
    ck_assert_ptr_nonnull(text);
    ck_assert_msg(
        strstr(text, what) == text && strstr(text, where) != NULL && strstr(text, way) != NULL,
        "%s", text);
}

/* By hand: 10 facing and one loose row are 11, so rows 12, 13 are plain and the band begins in row
 * 14, an even row: at the left. A facing of 9 or 11 mends it, and so do 3 plain rows below (1 is
 * less than two), or no fold row. */
START_TEST(loose_fold_row)
{
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_LOOSE;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert(plan.rows[10].loosest && !plan.rows[10].has_dial);
    ck_assert_int_eq(plan.rows[12].kind, HW_ROW_SETUP);
    ck_assert_int_eq(plan.finding_count, 1);
    const hw_row_finding *f = &plan.findings[0];
    ck_assert_int_eq(f->kind, HW_FINDING_BAND_START);
    ck_assert_int_eq(f->number, 14);
    ck_assert_int_eq(f->side, HW_LEFT);
    ck_assert_int_eq(remedy(f, HW_REMEDY_FACING)->fewer, 9);
    ck_assert_int_eq(remedy(f, HW_REMEDY_FACING)->more, 11);
    ck_assert_int_eq(remedy(f, HW_REMEDY_BELOW)->fewer, -1);
    ck_assert_int_eq(remedy(f, HW_REMEDY_BELOW)->more, 3);
    ck_assert_int_eq(remedy(f, HW_REMEDY_FOLD)->fewer, 0);
    const char *text = hw_row_finding_text(f, &arena);
    ck_assert_ptr_nonnull(strstr(text, "Row 14"));
    ck_assert_ptr_nonnull(strstr(text, "at the left"));
    ck_assert_ptr_nonnull(strstr(text, "knit 9 or 11 facing rows in place of 10"));
    ck_assert_ptr_nonnull(strstr(text, "knit 3 plain rows below the band in place of 2"));
    text = hw_row_finding_note(f, &arena); /* it may be of a mirrored piece as well */
    ck_assert_ptr_nonnull(text);
    ck_assert(strstr(text, "Row 14") == NULL && strstr(text, "left") == NULL);
    ck_assert_ptr_nonnull(strstr(text, "knit 9 or 11 facing rows in place of 10"));
    e.task.either_side = true;
    ck_assert_int_eq(example_rows_plan(&e, &arena).finding_count, 0);
    e.task.either_side = false; /* no fold row, but 3 plain rows: 2 or 4 would do */
    hem.fold = HW_FOLD_NONE;
    hem.fold_rows = 0;
    hem.below_rows = 3;
    example_rows_hem(&e, &hem);
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 1);
    ck_assert_int_eq(plan.findings[0].remedy_count, 2);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BELOW)->fewer, 2);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BELOW)->more, 4);
}
END_TEST

/* By hand: 5 band rows are 13 to 17; row 17 begins at the right and ends at the left. Row 20 is
 * then the first above the hem and begins at the left of the bed: the piece's right edge. */
START_TEST(odd_band)
{
    hw_hem hem = e.hem;
    hem.band_rows = 5;
    example_rows_hem(&e, &hem);
    example_rows_shape(&e);
    hw_row_above above = hw_rowplan_above(&e.task);
    ck_assert_int_eq(above.number, 20);
    ck_assert_int_eq(above.edge, HW_RIGHT);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 2);
    ck_assert_int_eq(plan.findings[0].kind, HW_FINDING_BAND_END);
    ck_assert_int_eq(plan.findings[0].number, 17);
    ck_assert_int_eq(plan.findings[0].side, HW_LEFT);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BAND)->fewer, 4);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BAND)->more, 6);
    ck_assert_int_eq(plan.findings[1].kind, HW_FINDING_SHAPE_START);
    ck_assert_int_eq(plan.findings[1].number, 20);
    ck_assert_int_eq(remedy(&plan.findings[1], HW_REMEDY_ABOVE)->fewer, -1);
    ck_assert_int_eq(remedy(&plan.findings[1], HW_REMEDY_ABOVE)->more, 3);
    ck_assert_ptr_nonnull(
        strstr(hw_row_finding_text(&plan.findings[0], &arena), "4 or 6 rows high in place of 5"));
    says(&plan.findings[1], "Row 20: the shaping was made for rows that begin at the other side",
        "which begins at the left", "Way out: knit 3 plain rows above the band in place of 2.");
    e.shape.first_start = HW_RIGHT;
    ck_assert_int_eq(example_rows_plan(&e, &arena).finding_count, 1);
}
END_TEST

/* By hand: ten rows above the hem, the neck at row 6. A band of two rows from row 2 is numbers 23
 * and 24, its set-up row 22. From row 6 its set-up row, 5, lies below the neck and the band above:
 * the second half would have none. From row 4 or less, or from 7, it does come out. */
START_TEST(further_bands)
{
    example_rows_shape(&e);
    rows_example other;
    example_rows(&other);
    hw_hem two = { .facing_rows = 2, .below_rows = 2, .band_rows = 2, .above_rows = 2 };
    example_rows_hem(&other, &two);
    hw_row_band band = { .row = 2, .motif = &other.motif, .card_row = 7, .name = "belt" };
    e.task.bands = &band;
    e.task.band_count = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.rows[21].kind, HW_ROW_SETUP);
    ck_assert_int_eq(plan.rows[21].card_read, 7);
    ck_assert_int_eq(plan.rows[22].kind, HW_ROW_BAND);
    ck_assert_int_eq(plan.rows[22].band, 1);
    ck_assert_int_eq(plan.rows[22].card_read, 8);
    ck_assert_int_eq(plan.rows[23].setting, HW_SET_TWO_LAST);
    ck_assert_int_eq(plan.rows[24].kind, HW_ROW_MAIN);
    ck_assert_int_eq(plan.finding_count, 0);
    band.row = 6;
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 1);
    ck_assert_int_eq(plan.findings[0].kind, HW_FINDING_BAND_PARTED);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BAND_ROW)->fewer, 5);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BAND_ROW)->more, 8);
    says(&plan.findings[0], "Row 27: the neck parts the piece in the middle of",
        "the band belt, and the second half",
        "Way out: begin the band in row 5 or 8 above the hem in place of 7.");
    const char *note = hw_row_finding_note(&plan.findings[0], &arena);
    ck_assert_ptr_nonnull(note);
    ck_assert_ptr_null(strstr(note, "Row"));
    ck_assert_ptr_nonnull(strstr(note, "Way out: begin the band in row 5 or 8 above the hem"));
    band.row = 7; /* 27 is the set-up row, 28 and 29 the band: it begins at the left */
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 1);
    ck_assert_int_eq(plan.findings[0].kind, HW_FINDING_BAND_START);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BAND_ROW)->fewer, 7);
    ck_assert_int_eq(remedy(&plan.findings[0], HW_REMEDY_BAND_ROW)->more, 9);
    ck_assert_int_eq(plan.rows[30].kind, HW_ROW_SETUP);
    e.machine.carriage = HW_CARRIAGE_DIRECT;
    band.row = 6;
    ck_assert_int_eq(example_rows_plan(&e, &arena).finding_count, 0);
    band.row = 5; /* its second row is the first above the neck; 26 begins at the left as well */
    plan = example_rows_plan(&e, &arena);
    ck_assert_int_eq(plan.finding_count, 2);
    ck_assert_int_eq(plan.findings[1].kind, HW_FINDING_BAND_PARTED);
    ck_assert_int_eq(plan.findings[1].number, 27);
    ck_assert_int_eq(remedy(&plan.findings[1], HW_REMEDY_BAND_ROW)->fewer, 5);
    ck_assert_int_eq(remedy(&plan.findings[1], HW_REMEDY_BAND_ROW)->more, 7);
}
END_TEST

/* By hand: above a joining row and a set-up row a band begins in the third row at the earliest; of
 * ten rows, two high, in the ninth at the latest. */
START_TEST(bands_without_room)
{
    example_rows_shape(&e);
    rows_example other;
    example_rows(&other);
    hw_hem two = { .facing_rows = 2, .below_rows = 2, .band_rows = 2, .above_rows = 2 };
    example_rows_hem(&other, &two);
    hw_row_band bands[] = { { .row = 1, .motif = &other.motif },
        { .row = 5, .motif = &other.motif } };
    e.task.bands = bands;
    e.task.band_count = 1;
    hw_rowplan plan = { .count = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "one of the rows 3 to 9"));
    ck_assert_int_eq(plan.count, 77);
    bands[0].row = 9;
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, NULL), HW_ERR_RANGE);
    bands[0].row = 8;
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, NULL), HW_OK);
    /* Two rows, a set-up row, two rows: 2, 3, then 4 sets up for 5. */
    e.task.band_count = 2;
    bands[0].row = 2;
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, NULL), HW_OK);
    bands[1].row = 4;
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, NULL), HW_ERR_RANGE);
    e.machine.carriage = HW_CARRIAGE_DIRECT;
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, NULL), HW_OK);
    e.task.band_count = 1;
    bands[0] = (hw_row_band){ .row = 1, .motif = &e.motif };
    e.task.shape = NULL;
    e.task.plain_rows = 6;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_rowplan_make(&e.task, &arena, &plan, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "no room in the 6 rows"));
}
END_TEST

static bool finds(hw_finding_kind kind)
{
    hw_rowplan plan = example_rows_plan(&e, &arena);
    for (int i = 0; i < plan.finding_count; i++) {
        if (plan.findings[i].kind == kind) {
            return true;
        }
    }
    return false;
}

/* The hem with another number of rows in one part. */
static void try_rows(const hw_hem *hem, hw_finding_kind kind, hw_remedy_kind part, int rows)
{
    if (rows < 0) {
        return;
    }
    hw_hem other = *hem;
    int *parts[HW_REMEDY_COUNT] = {
        [HW_REMEDY_FACING] = &other.facing_rows,
        [HW_REMEDY_FOLD] = &other.fold_rows,
        [HW_REMEDY_BELOW] = &other.below_rows,
        [HW_REMEDY_BAND] = &other.band_rows,
        [HW_REMEDY_ABOVE] = &other.above_rows,
    };
    ck_assert_ptr_nonnull(parts[part]);
    *parts[part] = rows;
    example_rows_hem(&e, &other);
    ck_assert(!finds(kind));
    example_rows_hem(&e, hem);
}

/* Rules 2, 3 and 5 by parity alone, and each way out that is told does mend the fault. */
START_TEST(remedies_by_chance)
{
    unsigned state = 7;
    example_rows_shape(&e);
    for (int n = 0; n < 200; n++) {
        hw_hem hem = example_rows_chance(&state);
        if (hem.band_rows == ROWS_MOST_BAND) {
            hem.band_rows--; /* leave room for one more */
        }
        example_rows_hem(&e, &hem);
        bool away = (hem.facing_rows + hem.fold_rows + hem.below_rows) % 2 != 0;
        ck_assert_int_eq(finds(HW_FINDING_BAND_START), away);
        ck_assert_int_eq(finds(HW_FINDING_BAND_END), hem.band_rows % 2 != 0);
        ck_assert_int_eq(finds(HW_FINDING_SHAPE_START), e.hem.total_rows % 2 != 0);
        hw_rowplan plan = example_rows_plan(&e, &arena);
        for (int i = 0; i < plan.finding_count; i++) {
            const hw_row_finding *f = &plan.findings[i];
            ck_assert_int_gt(f->remedy_count, 0);
            for (int k = 0; k < f->remedy_count; k++) {
                try_rows(&hem, f->kind, f->remedies[k].kind, f->remedies[k].fewer);
                try_rows(&hem, f->kind, f->remedies[k].kind, f->remedies[k].more);
            }
        }
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { loose_fold_row, odd_band, further_bands, bands_without_room,
        remedies_by_chance };
    return fixture_run("row findings", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
