/* The folded hem: common practice, a published dial setting, and depths to the row.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>

#include "core/hem.h"
#include "core/num.h"
#include "support.h"

static void set_gauges(hw_gauge *gauge, double main_rows, double band_rows, double facing_rows)
{
    gauge[HW_MAIN] = (hw_gauge){ .sts_per_10cm = 30, .rows_per_10cm = main_rows };
    gauge[HW_BAND] = (hw_gauge){ .sts_per_10cm = 30, .rows_per_10cm = band_rows };
    gauge[HW_FACING] = (hw_gauge){ .sts_per_10cm = 30, .rows_per_10cm = facing_rows };
}

/* Common practice, no source: 6 band rows on a 10-row face are 2 + 6 + 2, facing 10, 20 in all. */
START_TEST(ten_row_face)
{
    hw_gauge gauge[HW_FABRIC_COUNT];
    set_gauges(gauge, 40, 40, 40);
    hw_hem_input in = { .face_rows = 10, .fold = HW_FOLD_NONE };
    hw_hem hem = { 0 };
    ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, NULL), HW_OK);
    ck_assert_int_eq(hem.below_rows, 2);
    ck_assert_int_eq(hem.band_rows, 6);
    ck_assert_int_eq(hem.above_rows, 2);
    ck_assert_int_eq(hem.face_rows, 10);
    ck_assert_int_eq(hem.facing_rows, 10);
    ck_assert_int_eq(hem.fold_rows, 0);
    ck_assert_int_eq(hem.total_rows, 20);
    /* by hand: 10 rows at 40 in 10 cm */
    ck_assert_double_eq_tol(hem.face_cm, 2.5, 1e-12);
    ck_assert_double_eq_tol(hem.facing_cm, 2.5, 1e-12);
    ck_assert(!hem.facing_deep && !hem.raised && !hem.odd_band && !hem.has_dials);
    ck_assert_double_eq_tol(hem.wanted_cm, 0, 1e-12);
}
END_TEST

/* A loose or a purl row turns the hem with a row of its own (common practice, no source). H2: a
 * picot is made by transfers between 8 and 8 rows, H1: no fold row between 16 rows; both
 * https://clearwaterknits.com/hems */
START_TEST(folds)
{
    static const struct {
        hw_fold fold;
        int rows;
        const char *name;
    } rows[] = {
        { HW_FOLD_NONE, 0, "no fold row" },
        { HW_FOLD_LOOSE, 1, "one loose row" },
        { HW_FOLD_PURL, 1, "one purl row" },
        { HW_FOLD_PICOT, 0, "picot" },
    };
    hw_gauge gauge[HW_FABRIC_COUNT];
    set_gauges(gauge, 40, 40, 40);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        hw_hem_input in = { .face_rows = 10, .fold = rows[i].fold };
        hw_hem hem = { 0 };
        ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, NULL), HW_OK);
        ck_assert_int_eq(hem.fold, rows[i].fold);
        ck_assert_int_eq(hem.fold_rows, rows[i].rows);
        /* facing and fold together are as many as the face */
        ck_assert_int_eq(hem.facing_rows, 10 - rows[i].rows);
        ck_assert_int_eq(hem.total_rows, 20);
        ck_assert_str_eq(hw_fold_name(rows[i].fold), rows[i].name);
    }
    ck_assert_str_eq(hw_facing_name(HW_FACING_ROWS), "same rows");
    ck_assert_str_eq(hw_facing_name(HW_FACING_DEPTH), "same depth");
}
END_TEST

/* H1: main at 5, hem rows at 4, joining row at 6; https://clearwaterknits.com/hems . The band one
 * number looser than main: https://alessandrina.com/category/hints-and-tips/page/11 */
START_TEST(dials)
{
    hw_swatch swatch = { .sts = 30, .width_cm = 10, .rows = 40, .length_cm = 10 };
    hw_gauge_input fabrics[HW_FABRIC_COUNT] = {
        [HW_MAIN] = { .swatches = &swatch, .count = 1, .has_dial = true, .dial = 5 }
    };
    hw_gauge gauge[HW_FABRIC_COUNT] = { 0 };
    hw_arena arena;
    hw_check_heap heap = { 0 };
    hw_check_open(&arena, &heap, 0, false);
    ck_assert_int_eq(hw_gauge_all(fabrics, &arena, gauge, NULL), HW_OK);
    hw_check_close(&arena, &heap);
    hw_hem_input in = { .face_rows = 16, .fold = HW_FOLD_NONE };
    hw_hem hem = { 0 };
    ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, NULL), HW_OK);
    ck_assert(hem.has_dials);
    ck_assert_double_eq_tol(hem.facing_dial, 4, 1e-12);
    ck_assert_double_eq_tol(hem.joining_dial, 6, 1e-12);
    ck_assert_double_eq_tol(hem.band_dial, 6, 1e-12);
    gauge[HW_BAND].has_dial = false;
    ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, NULL), HW_OK);
    ck_assert(!hem.has_dials);
}
END_TEST

/* By hand: 4 cm with 6 band rows at 30 (2 cm) leaves 2 cm of plain at 40, 8 rows, 4 + 6 + 4;
 * 3.5 cm leaves 6, so 2 + 6 + 4; 2.1 cm leaves 0.4 rows, too few: 2 + 6 + 2, raised. 3.25 cm leaves
 * 5 rows, a tie, which goes up to 6. */
START_TEST(depths_by_hand)
{
    static const struct {
        double depth_cm;
        int below, above;
        bool raised;
        double face_cm;
    } rows[] = { { 4, 4, 4, false, 4 }, { 3.5, 2, 4, false, 3.5 }, { 2.1, 2, 2, true, 3 },
        { 1, 2, 2, true, 3 }, { 3, 2, 2, false, 3 }, { 3.25, 2, 4, false, 3.5 },
        { 3.24, 2, 2, false, 3 } };
    hw_gauge gauge[HW_FABRIC_COUNT];
    set_gauges(gauge, 40, 30, 44);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        hw_hem_input in = { .depth_cm = rows[i].depth_cm, .fold = HW_FOLD_LOOSE };
        hw_hem hem = { 0 };
        ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, NULL), HW_OK);
        ck_assert_int_eq(hem.below_rows, rows[i].below);
        ck_assert_int_eq(hem.above_rows, rows[i].above);
        ck_assert_int_eq(hem.raised, rows[i].raised);
        ck_assert_double_eq_tol(hem.face_cm, rows[i].face_cm, 1e-12);
        ck_assert_double_eq_tol(hem.wanted_cm, rows[i].depth_cm, 1e-12);
        ck_assert_int_eq(hem.facing_rows, hem.face_rows - 1);
        ck_assert_double_eq_tol(hem.facing_cm, (hem.face_rows - 1) / 4.4, 1e-12);
        ck_assert_int_eq(hem.facing_deep, (hem.face_rows - 1) / 4.4 > rows[i].face_cm + 1e-6);
    }
}
END_TEST

static void check_shape(const hw_hem *hem, int band_rows)
{
    ck_assert_int_eq(hem->band_rows, band_rows);
    ck_assert(hem->below_rows >= 2 && hem->below_rows % 2 == 0);
    ck_assert(hem->above_rows == hem->below_rows || hem->above_rows == hem->below_rows + 2);
    ck_assert_int_eq(hem->face_rows, hem->below_rows + band_rows + hem->above_rows);
    ck_assert_int_eq(hem->total_rows, hem->facing_rows + hem->fold_rows + hem->face_rows);
    ck_assert_int_eq(hem->odd_band, band_rows % 2 == 1);
}

/* Over hems by chance: a face is never further from its depth than one plain row, since rows come
 * in twos, unless it is raised and then too deep; no other number of plain rows in twos comes
 * nearer; a matched facing is never further from the face than one facing row, unless it has its
 * least. */
START_TEST(depths_by_chance)
{
    unsigned state = 11;
    int raised = 0;
    for (int round = 0; round < 20000; round++) {
        hw_gauge gauge[HW_FABRIC_COUNT];
        double main_rows = 15 + hw_check_random(&state, 500) / 10.0;
        double facing_rows = 15 + hw_check_random(&state, 500) / 10.0;
        set_gauges(gauge, main_rows, 15 + hw_check_random(&state, 500) / 10.0, facing_rows);
        hw_hem_input in = { .depth_cm = 0.5 + hw_check_random(&state, 1200) / 100.0,
            .facing = HW_FACING_DEPTH };
        int band_rows = 1 + hw_check_random(&state, 24);
        hw_hem hem = { 0 };
        ck_assert_int_eq(hw_hem_plan(&in, band_rows, gauge, &hem, NULL), HW_OK);
        check_shape(&hem, band_rows);
        double off_cm = hem.face_cm - in.depth_cm;
        double row_cm = 10 / main_rows;
        ck_assert(off_cm >= -row_cm - 1e-9);
        ck_assert(hem.raised ? off_cm >= row_cm - 1e-6 : off_cm <= row_cm + 1e-9);
        raised += hem.raised ? 1 : 0;
        double facing_off_cm = hem.facing_cm - hem.face_cm;
        double facing_row_cm = 10 / facing_rows;
        ck_assert(hem.facing_rows >= 2 && hem.facing_rows % 2 == 0);
        ck_assert(facing_off_cm >= -facing_row_cm - 1e-9);
        ck_assert(facing_off_cm <= facing_row_cm + 1e-9 || hem.facing_rows == 2);
        if (facing_off_cm > 1e-6) {
            ck_assert(hem.facing_deep);
        } else if (facing_off_cm < 0) {
            ck_assert(!hem.facing_deep);
        }
    }
    ck_assert_int_gt(raised, 1000);
    ck_assert_int_lt(raised, 19000);
}
END_TEST

/* By hand: a fine face on a very open facing; 6 rows at 60 are 1 cm, 0.5 rows at 5: the least is 2,
 * 4 cm, which peeps out and is warned of. */
START_TEST(least_facing)
{
    hw_gauge gauge[HW_FABRIC_COUNT];
    set_gauges(gauge, 60, 60, 5);
    hw_hem_input in = { .face_rows = 6, .facing = HW_FACING_DEPTH };
    hw_hem hem = { 0 };
    ck_assert_int_eq(hw_hem_plan(&in, 2, gauge, &hem, NULL), HW_OK);
    ck_assert_int_eq(hem.facing_rows, 2);
    ck_assert_double_eq_tol(hem.facing_cm, 4, 1e-12);
    ck_assert(hem.facing_deep);
}
END_TEST

/* From the header: plain rows even and at least four; the message names what would do. */
START_TEST(face_rows_that_do_not_work)
{
    hw_gauge gauge[HW_FABRIC_COUNT];
    set_gauges(gauge, 40, 40, 40);
    for (int band_rows = 1; band_rows <= 20; band_rows++) {
        for (int face_rows = 5; face_rows <= 60; face_rows++) {
            int plain = face_rows - band_rows;
            hw_hem_input in = { .face_rows = face_rows, .line = 9 };
            hw_hem hem = { .total_rows = 77 };
            hw_err err = { 0 };
            hw_status status = hw_hem_plan(&in, band_rows, gauge, &hem, &err);
            if (plain >= 4 && plain % 2 == 0) {
                ck_assert_int_eq(status, HW_OK);
                check_shape(&hem, band_rows);
                ck_assert_int_eq(hem.face_rows, face_rows);
                continue;
            }
            ck_assert_int_eq(status, HW_ERR_RANGE);
            ck_assert_int_eq(hem.total_rows, 77);
            ck_assert_int_eq(err.line, 9);
            char words[40];
            int least = band_rows + 4;
            (void)snprintf(words, sizeof words,
                plain < 4 ? "ask for %d rows or more" : "ask for %d or %d rows",
                plain < 4 ? least : face_rows - 1, face_rows + 1);
            ck_assert(hw_check_says(&err, HW_ERR_RANGE, words));
        }
    }
}
END_TEST

/* By hand: 700 cm at 40 in 10 cm are 2800 rows, and as many again inside: above HW_MAX_ROWS. */
START_TEST(too_deep)
{
    hw_gauge gauge[HW_FABRIC_COUNT];
    set_gauges(gauge, 40, 40, 40);
    hw_hem_input in = { .depth_cm = 700, .line = 6 };
    hw_hem hem = { .total_rows = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "5600 rows"));
    ck_assert_int_eq(err.line, 6);
    ck_assert_int_eq(hem.total_rows, 77);
    in.depth_cm = 625;
    ck_assert_int_eq(hw_hem_plan(&in, 6, gauge, &hem, NULL), HW_OK);
    ck_assert_int_eq(hem.total_rows, HW_MAX_ROWS);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { ten_row_face, folds, dials, depths_by_hand, depths_by_chance,
        least_facing, face_rows_that_do_not_work, too_deep };
    return hw_check_run(hw_check_suite("hem", tests, sizeof tests / sizeof tests[0]));
}
