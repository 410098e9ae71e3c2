/* What the commands `learn` and `dial` say, from files of one's own.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/learn.h"

#include <stdio.h>
#include <string.h>

#include "fixture.h"
#include "room.h"

/* Invented. Main fabric: 30 stitches in 10 cm at dial 6 and 28 at dial 7, so 2 fewer a number. */
static const char project[] =
    "title: Purse\n"
    "machine: standard\n"
    "garment: pouch\n"
    "gauge:\n"
    "  main:\n"
    "    dial: 6\n"
    "    swatches:\n"
    "      - {dial: 6, stitches: 30, width: 10, rows: 40, length: 10}\n"
    "      - {dial: 7, stitches: 28, width: 10, rows: 38, length: 10}\n"
    "  band: {stitches: 25, rows: 38}\n"
    "motif:\n"
    "  gap: 1\n"
    "  chart: |\n"
    "    ooooo\n"
    "hem: {depth: 4}\n"
    "sizes: {names: [small, large], finished: {width: [24, 28.8], depth: [15, 18]}}\n"
    "choices: {re-hang: yes}\n";

#define HEADS "size,piece,fabric,stitches,rows,width,length,remark\n"

static hw_opts opts;
static hw_err err;
static char paths[2][ROOM_PATH];

static void setup(void)
{
    room_data();
    room_put("purse.yaml", project);
    opts = (hw_opts){ .args = {
                          room_path("purse.yaml", paths[0]), room_path("filled.csv", paths[1]) } };
    err = (hw_err){ 0 };
}

static hw_status dial(const char *gauge, const char *per, const char *fabric)
{
    opts.values[HW_OPT_GAUGE] = gauge;
    opts.values[HW_OPT_PER] = per;
    opts.values[HW_OPT_FABRIC] = fabric;
    err = (hw_err){ 0 };
    fixture_empty();
    return hw_learn_dial(&opts, &arena, &buf, &err);
}

/* By hand, from the line: 29 stitches at dial 6.5, 27 at 7.5, which is past those swatched. 4 in
 * are 10.16 cm, so 29.464 in 4 in are 29 in 10 cm. */
START_TEST(between_dials)
{
    ck_assert_int_eq(dial("29", NULL, NULL), HW_OK);
    ck_assert_str_eq(
        buf.text, "Dial 6.5 gives it, by a line through 2 measured places at dials 6 to 7.\n");
    ck_assert_int_eq(dial("29.464", "4in", "main"), HW_OK);
    ck_assert_ptr_nonnull(strstr(buf.text, "Dial 6.5 gives it"));
    ck_assert_int_eq(dial("27", NULL, NULL), HW_OK);
    ck_assert_ptr_nonnull(strstr(buf.text, "Dial 7.5 gives it"));
    ck_assert_ptr_nonnull(strstr(buf.text, "beyond them, so only a guess: swatch it first.\n"));
}
END_TEST

/* By hand: one number to either side are dials 5 and 8, 32 and 26 stitches. */
START_TEST(no_dial)
{
    ck_assert_int_eq(dial("33", NULL, NULL), HW_ERR_NOFIT);
    ck_assert(hw_check_says(&err, HW_ERR_NOFIT, "gives 33.00 stitches in 10 cm"));
    ck_assert(hw_check_says(&err, HW_ERR_NOFIT, "they give 32.00 to 26.00"));
    ck_assert_int_eq(dial("29", NULL, "band"), HW_ERR_MISSING);
    ck_assert(hw_check_says(&err, HW_ERR_MISSING, "the band fabric has no swatches at two"));
    ck_assert_int_eq(dial("29", NULL, "ribbing"), HW_ERR_USAGE);
    ck_assert(hw_check_says(&err, HW_ERR_USAGE, "`--fabric ribbing` is not known"));
    static const char *const bad[][2] = { { "many", NULL }, { "0", NULL }, { "2001", NULL },
        { "29", "long" }, { "29", "0" }, { "nan", NULL } };
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        ck_assert_int_eq(dial(bad[i][0], bad[i][1], NULL), HW_ERR_USAGE);
        ck_assert(hw_check_says(&err, HW_ERR_USAGE, "from 1 to 2000"));
    }
    opts.args[0] = room_path("lost.yaml", paths[0]);
    ck_assert_int_eq(dial("29", NULL, NULL), HW_ERR_IO);
    ck_assert_uint_eq(buf.len, 0);
}
END_TEST

/* By hand: 59 stitches that measured 23.6 cm, and 72 that measured 28.8 cm, are 2.5 to the cm as
 * planned. The line to add names the file without its folder. */
START_TEST(pieces_are_read)
{
    room_put("filled.csv", HEADS "small,front,band,59,,23.6,,\n");
    hw_status status = hw_learn_run(&opts, &arena, &buf, &err);
    ck_assert_msg(status == HW_OK, "%s", err.text);
    ck_assert_ptr_nonnull(strstr(buf.text, "1 filled-in row was read.\n"));
    ck_assert_ptr_nonnull(strstr(buf.text, "  knitted: \"filled.csv\"\n"));
    room_put("filled.csv", HEADS "small,front,band,59,,23.6,,\nlarge,front,band,72,,28.8,,\n");
    fixture_empty();
    ck_assert_int_eq(hw_learn_run(&opts, &arena, &buf, &err), HW_OK);
    ck_assert_ptr_nonnull(strstr(buf.text, "2 filled-in rows were read.\n"));
}
END_TEST

/* Nothing is told before all is known: a project that is not there, a table that is not, a project
 * that cannot be worked out once the rows are in it. Each names the file at fault. */
START_TEST(nothing_is_told)
{
    static const struct {
        const char *project, *filled;
        hw_status status;
        const char *where, *words;
    } rows[] = {
        { NULL, HEADS, HW_ERR_IO, "purse.yaml", "there is no such file" },
        { project, NULL, HW_ERR_IO, "filled.csv", "there is no such file" },
        { project, HEADS "small,front,band,59,,23.6,,\nsmall,front,band,66,,26.4,,\n", HW_ERR_RANGE,
            "purse.yaml", "59 stitches by one row and 66 by row 3" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        (void)remove(paths[0]);
        (void)remove(paths[1]);
        if (rows[i].project != NULL) {
            room_put("purse.yaml", rows[i].project);
        }
        if (rows[i].filled != NULL) {
            room_put("filled.csv", rows[i].filled);
        }
        err = (hw_err){ 0 };
        ck_assert_int_eq(hw_learn_run(&opts, &arena, &buf, &err), rows[i].status);
        ck_assert(hw_check_says(&err, rows[i].status, rows[i].words));
        ck_assert_msg(strstr(err.where, rows[i].where) != NULL, "%s", err.where);
        ck_assert_uint_eq(buf.len, 0);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { between_dials, no_dial, pieces_are_read, nothing_is_told };
    return fixture_run("learn", setup, room_close, tests, sizeof tests / sizeof tests[0]);
}
