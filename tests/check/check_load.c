/* Data files found by their names, files of one's own, and sizes that an option names.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/load.h"

#include <string.h>

#include "fixture.h"
#include "room.h"

/* Source: data/machines/standard.yaml, 4.5 mm [B1], 200 needles [B2], 24 columns [B4]; and the
 * titles that stand in the other files. */
START_TEST(by_name)
{
    hw_project project = { 0 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_load_one(HW_DATA_MACHINE, "standard", &arena, &project, &err), HW_OK);
    ck_assert_double_eq_tol(project.machine.pitch_cm, 0.45, 1e-12);
    ck_assert_int_eq(project.machine.needles, 200);
    ck_assert_int_eq(project.machine.card_columns, 24);
    ck_assert_int_eq(
        hw_load_one(HW_DATA_GARMENT, "set-in-cardigan", &arena, &project, &err), HW_OK);
    ck_assert_str_eq(project.garment.title, "Set-in cardigan");
    ck_assert_int_gt(project.garment.join_count, 0);
    ck_assert_int_eq(hw_load_one(HW_DATA_SIZES, "women", &arena, &project, &err), HW_OK);
    ck_assert_int_gt(project.table.count, 1);
    ck_assert_int_eq(hw_load_one(HW_DATA_MOTIF, "tulip", &arena, &project, &err), HW_OK);
    ck_assert_int_gt(project.drawn.chart.width, 1);
    ck_assert_int_eq(project.machine.needles, 200); /* each fills in its own */
}
END_TEST

START_TEST(by_path)
{
    char path[ROOM_PATH];
    room_put("own.yaml", "title: Own bed\npitch: 9 mm\nneedles: 100\nlongest float: 4\n"
                         "carriage: none\n");
    hw_project project = { 0 };
    ck_assert_int_eq(
        hw_load_one(HW_DATA_MACHINE, room_path("own.yaml", path), &arena, &project, NULL), HW_OK);
    ck_assert_int_eq(project.machine.needles, 100);
    room_put("bad.yaml", "title: Own bed\nneedels: 100\n");
    hw_err err = { 0 };
    ck_assert_int_eq(
        hw_load_one(HW_DATA_MACHINE, room_path("bad.yaml", path), &arena, &project, &err),
        HW_ERR_UNKNOWN);
    ck_assert_int_eq(err.line, 2);
    ck_assert(hw_check_says(&err, HW_ERR_UNKNOWN, "`needles`"));
    ck_assert_ptr_nonnull(strstr(err.where, "bad.yaml"));
    ck_assert_int_eq(project.machine.needles, 100);
}
END_TEST

START_TEST(lost)
{
    hw_project project = { 0 };
    hw_err err = { 0 };
    ck_assert_int_eq(
        hw_load_one(HW_DATA_MACHINE, "standart", &arena, &project, &err), HW_ERR_UNKNOWN);
    ck_assert(hw_check_says(&err, HW_ERR_UNKNOWN, "`standard`"));
    char path[ROOM_PATH];
    err = (hw_err){ 0 };
    ck_assert_int_eq(
        hw_load_one(HW_DATA_MACHINE, room_path("none.yaml", path), &arena, &project, &err),
        HW_ERR_IO);
}
END_TEST

/* Measured pieces lie beside the project that names them, wherever the program is started; a place
 * from the root of the disk stays as it is. */
START_TEST(knitted_beside)
{
    static const char text[] =
        "machine: standard\ngarment: pouch\ngauge: {main: {stitches: 25, rows: 38}}\n"
        "motif: {use: tulip}\nhem: {depth: 4}\nknitted: \"filled.csv\"\n"
        "sizes: {names: [small], finished: {width: [24], depth: [15]}}\n";
    char path[ROOM_PATH];
    hw_project project = { 0 };
    hw_err err = { 0 };
    room_put("purse.yaml", text);
    room_path("purse.yaml", path);
    ck_assert_int_eq(hw_load_project(path, &arena, &project, &err), HW_ERR_IO);
    ck_assert_ptr_nonnull(strstr(err.where, "filled.csv"));
    room_put("filled.csv", "size,piece,fabric,stitches,width\nsmall,front,band,59,23.6\n");
    ck_assert_int_eq(hw_load_project(path, &arena, &project, NULL), HW_OK);
    ck_assert_int_eq(project.knitted.count, 1);
    ck_assert_double_eq_tol(project.knitted.list[0].sts, 59, 1e-12);
    char whole[ROOM_PATH];
    char *from_root = hw_arena_format(&arena, "%.*s%s%s", (int)(strstr(text, "filled") - text),
        text, room_path("filled.csv", whole), strstr(text, "filled") + strlen("filled.csv"));
    ck_assert_ptr_nonnull(from_root);
    room_put("other.yaml", from_root);
    ck_assert_int_eq(hw_load_project(room_path("other.yaml", path), &arena, &project, NULL), HW_OK);
    ck_assert_str_eq(project.knitted_path, whole);
}
END_TEST

/* The nearest name, or where none is near the first. */
START_TEST(sizes)
{
    const char *names[] = { "small", "middle", "large" };
    const hw_sizes list = { .count = 3, .names = names };
    int size = -1;
    hw_err err = { 0 };
    ck_assert_int_eq(hw_load_size(&list, "large", &size, &err), HW_OK);
    ck_assert_int_eq(size, 2);
    ck_assert_int_eq(hw_load_size(&list, "midle", &size, &err), HW_ERR_USAGE);
    ck_assert(hw_check_says(&err, HW_ERR_USAGE, "`--size midle`"));
    ck_assert(hw_check_says(&err, HW_ERR_USAGE, "did you mean `middle`?"));
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_load_size(&list, "XXXL", &size, &err), HW_ERR_USAGE);
    ck_assert(hw_check_says(&err, HW_ERR_USAGE, "there are small, middle, large"));
    ck_assert_int_eq(size, 2);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { by_name, by_path, lost, knitted_beside, sizes };
    return fixture_run("load", room_data, room_close, tests, sizeof tests / sizeof tests[0]);
}
