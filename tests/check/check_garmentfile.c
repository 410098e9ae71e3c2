/* Garment files: rules, pieces that mirror others, seams, and what is said of wrong ones.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "read/datafile.h"
#include "read/garmentfile.h"
#include "reading.h"

static hw_status read_garment(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    return hw_garment_read(text, len, room, out, err);
}

static const hw_check_reader reader = {
    .good = "title: Invented jacket\n"              /* 1 */
            "finished:\n"                           /* 2 */
            "  chest:\n"                            /* 3 */
            "    is: chest\n"                       /* 4 */
            "    ease: 6 cm\n"                      /* 5 */
            "  hem:\n"                              /* 6 */
            "    is: 1.2 x finished chest + 2 cm\n" /* 7 */
            "    ease: 10 %\n"                      /* 8 */
            "pieces:\n"                             /* 9 */
            "  back:\n"                             /* 10 */
            "    band width: 0.5 x hem\n"           /* 11 */
            "    main width: 0.5 x chest\n"         /* 12 */
            "  left front:\n"                       /* 13 */
            "    band width: 0.25 x hem\n"          /* 14 */
            "    left edge stitches: 2\n"           /* 15 */
            "    right edge stitches: 0\n"          /* 16 */
            "  right front:\n"                      /* 17 */
            "    mirrors: left front\n"             /* 18 */
            "seams:\n"                              /* 19 */
            "  - left front right to back left\n"   /* 20 */
            "  - back right to right front left\n", /* 21 */
    .read = read_garment,
    .size = sizeof(hw_garment),
};

/* By hand. To 1e-12. */
START_TEST(a_garment)
{
    hw_garment garment;
    hw_check_taken(&reader, reader.good, &arena, &garment);
    ck_assert_str_eq(garment.title, "Invented jacket");
    ck_assert_int_eq(garment.finished_count, 2);
    ck_assert_str_eq(garment.finished[1].name, "hem");
    ck_assert_double_eq_tol(garment.finished[0].ease.cm, 6, 1e-12);
    ck_assert_double_eq_tol(garment.finished[1].ease.percent, 10, 1e-12);
    ck_assert(!garment.finished[0].rule.terms[0].finished);
    ck_assert(garment.finished[1].rule.terms[0].finished);
    ck_assert_double_eq_tol(garment.finished[1].rule.constant_cm, 2, 1e-12);
    ck_assert_int_eq(garment.piece_count, 3);
    const hw_piece *back = &garment.pieces[0];
    ck_assert_str_eq(back->name, "back");
    ck_assert_int_eq(back->mirror_of, -1);
    ck_assert_str_eq(back->band_width.terms[0].name, "hem");
    ck_assert(back->band_width.terms[0].finished);
    ck_assert_str_eq(back->main_width.terms[0].name, "chest");
    ck_assert_int_eq(back->edge_sts[HW_LEFT], -1);
    const hw_piece *left = &garment.pieces[1];
    const hw_piece *right = &garment.pieces[2];
    ck_assert_double_eq_tol(left->main_width.terms[0].factor, 0.25, 1e-12);
    ck_assert_int_eq(left->edge_sts[HW_LEFT], 2);
    ck_assert_int_eq(left->edge_sts[HW_RIGHT], 0);
    ck_assert_int_eq(right->mirror_of, 1);
    ck_assert_int_eq(right->edge_sts[HW_LEFT], 0);
    ck_assert_int_eq(right->edge_sts[HW_RIGHT], 2);
    ck_assert_double_eq_tol(right->band_width.terms[0].factor, 0.25, 1e-12);
    ck_assert_int_eq(garment.seam_count, 2);
    ck_assert_int_eq(garment.seams[0].piece[0], 1);
    ck_assert_int_eq(garment.seams[0].side[0], HW_RIGHT);
    ck_assert_int_eq(garment.seams[0].piece[1], 0);
    ck_assert_int_eq(garment.seams[0].side[1], HW_LEFT);
    ck_assert_int_eq(garment.seams[1].piece[1], 2);
    ck_assert_int_eq(garment.seams[1].side[1], HW_LEFT);
}
END_TEST

/* By hand: no seams at all, and one that stands alone, not in a list. */
START_TEST(few_seams)
{
    static const char *const seams[] = { "", "seams: back left to back right\n" };
    for (int i = 0; i < 2; i++) {
        char *without = hw_check_edit(reader.good,
            "seams:\n  - left front right to back left\n  - back right to right front left\n",
            seams[i]);
        hw_garment garment;
        hw_check_taken(&reader, without, &arena, &garment);
        ck_assert_int_eq(garment.seam_count, i);
        free(without);
    }
}
END_TEST

static const hw_check_fault faults[] = {
    { "is: chest\n", "is: chest +\n", HW_ERR_SYNTAX, 4, 9, "`chest +`", "a blank on both sides" },
    { "is: 1.2 x finished chest + 2 cm", "is: 1.2 finished chest", HW_ERR_SYNTAX, 7, 9,
        "`1.2 finished chest`", "write `0.5 x hem`" },
    { "0.5 x chest", "0.5 x chest + ", HW_ERR_SYNTAX, 12, 23, "`0.5 x chest +`", "blank" },
    { "    is: chest\n", "", HW_ERR_MISSING, 4, 5, "`is` is missing in a finished measurement",
        "a sum such as" },
    { "    band width: 0.5 x hem\n", "", HW_ERR_MISSING, 10, 3, "the piece `back` needs",
        "such as `0.5 x hem`" },
    { "    mirrors: left front\n", "    mirrors: left sleeve\n", HW_ERR_UNKNOWN, 18, 14,
        "`right front` mirrors `left sleeve`", "a piece written above it" },
    { "    mirrors: left front\n", "    mirrors: right front\n", HW_ERR_UNKNOWN, 18, 14,
        "`right front` mirrors `right front`", "a piece written above it" },
    { "    mirrors: left front\n", "    mirrors: left front\n  third:\n    mirrors: right front\n",
        HW_ERR_UNKNOWN, 20, 14, "`third` mirrors `right front`", "widths of its own" },
    { "    mirrors: left front\n", "    mirrors: left front\n    band width: hem\n",
        HW_ERR_REPEATED, 17, 3, "`right front` mirrors another piece", "take them out" },
    { "left front right to back left", "left front right and back left", HW_ERR_SYNTAX, 20, 5,
        "the seam `left front right and back left`", "write it as" },
    { "left front right to back left", "left front right to backs left", HW_ERR_UNKNOWN, 20, 5,
        "the seam", "a piece's name and `left` or `right`" },
    { "left front right to back left", "left front top to back left", HW_ERR_UNKNOWN, 20, 5,
        "the seam", "`left` or `right`" },
    { "left front right to back left", "left to back left", HW_ERR_UNKNOWN, 20, 5, "the seam",
        "`left` or `right`" },
    { "back right to right front left", "back left to right front left", HW_ERR_REPEATED, 21, 5,
        "is sewn to another edge already", "name each edge once" },
    { "back right to right front left", "back right to back right", HW_ERR_REPEATED, 21, 5,
        "sewn to itself", "name two edges" },
    { "title: Invented jacket\n", "", HW_ERR_MISSING, 1, 1, "`title` is missing in a garment file",
        "what the garment is" },
    { "    left edge stitches: 2", "    left edge stitches: 11", HW_ERR_RANGE, 15, 25, "`11`",
        "0 to 10" },
    { "    ease: 6 cm", "    ease: 6 cm of air", HW_ERR_UNKNOWN, 5, 11, "the unit in", "cm, mm" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* The head of a garment, and a line for each of so many numbers. */
static char *many(const char *head, const char *line, int count)
{
    enum { ROOM = 20000 };
    char *text = calloc(ROOM, 1);
    ck_assert_ptr_nonnull(text);
    size_t at = (size_t)snprintf(text, ROOM, "title: t\n%s", head);
    for (int i = 0; i < count; i++) {
        const char *sign = strchr(line, '#');
        at += (size_t)snprintf(
            text + at, ROOM - at, "%.*s%d%s", (int)(sign - line), line, i, sign + 1);
    }
    ck_assert_uint_lt(at, ROOM);
    return text;
}

/* Own choice of limits: as many as hw.h says are taken, one more is not, nor is no piece at all. */
static const struct {
    const char *head, *line;
    int most;
    hw_check_fault fault;
} limits[] = {
    { "finished: {a: {is: 5}}\npieces:\n", "  p#: {band width: a}\n", HW_MAX_PIECES,
        { NULL, NULL, HW_ERR_LIMIT, 4, 3, "13 pieces are too many", "at most 12" } },
    { "pieces: {p: {band width: a}}\nfinished:\n", "  m#: {is: 5}\n", HW_MAX_MEASURES,
        { NULL, NULL, HW_ERR_LIMIT, 4, 3, "41 finished measurements", "at most 40" } },
};

START_TEST(limits_are_kept)
{
    char *most = many(limits[_i].head, limits[_i].line, limits[_i].most);
    char *more = many(limits[_i].head, limits[_i].line, limits[_i].most + 1);
    hw_garment garment;
    hw_check_taken(&reader, most, &arena, &garment);
    hw_check_fault fault = limits[_i].fault;
    fault.fresh = more;
    hw_check_told(&reader, &fault);
    free(more);
    free(most);
}
END_TEST

START_TEST(seams_and_pieces_at_the_ends)
{
    char *seams = many("finished: {a: {is: 5}}\npieces: {p: {band width: a}}\nseams:\n",
        "  - p# left to p right\n", HW_MAX_SEAMS + 1);
    hw_check_fault too_many = { NULL, seams, HW_ERR_LIMIT, 5, 3, "25 seams are too many",
        "at most 24" };
    hw_check_told(&reader, &too_many);
    free(seams);
    hw_check_fault none = { NULL, "title: t\nfinished: {a: {is: 5}}\npieces: {}\n", HW_ERR_MISSING,
        3, 9, "no piece stands here", "write at least one" };
    hw_check_told(&reader, &none);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 60);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("garmentfile");
    TCase *tcase = fixture_case(suite, "garmentfile", NULL, NULL);
    tcase_add_test(tcase, a_garment);
    tcase_add_test(tcase, few_seams);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_loop_test(tcase, limits_are_kept, 0, ROWS(limits));
    tcase_add_test(tcase, seams_and_pieces_at_the_ends);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
