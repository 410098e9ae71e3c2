/* Edges named in words: joins and trims of garment files, and what is said of wrong ones.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/edges.h"

#include <stdlib.h>
#include <string.h>

#include "read/datafile.h"
#include "read/garmentfile.h"
#include "reading.h"

static hw_status read_garment(const char *text, size_t len, hw_arena *arena, void *out, hw_err *err)
{
    return hw_garment_read(text, len, arena, out, err);
}

/* Invented; positions are counted by hand in this text. */
static const hw_check_reader reader = {
    .good = "title: Invented vest\n"                                                  /* 1 */
            "finished: {length: {is: 50 cm}}\n"                                       /* 2 */
            "pieces:\n"                                                               /* 3 */
            "  front:\n"                                                              /* 4 */
            "    band width: length\n"                                                /* 5 */
            "    outline:\n"                                                          /* 6 */
            "      right:\n"                                                          /* 7 */
            "        - {across: 20 cm, up: 30 cm}\n"                                  /* 8 */
            "        - {stretch: arm hole, across: 20 cm, up: length}\n"              /* 9 */
            "      neck: [{across: 4 cm, up: 40 cm}, {across: 4 cm, up: length}]\n"   /* 10 */
            "  front right:\n"                                                        /* 11 */
            "    band width: length\n"                                                /* 12 */
            "    outline: {right: [{across: 20 cm, up: length}]}\n"                   /* 13 */
            "  hood: {band width: length}\n"                                          /* 14 */
            "joins:\n"                                                                /* 15 */
            "  - front left side to front right left\n"                               /* 16 */
            "  - front left arm hole and front right top to front top, within 5 mm\n" /* 17 */
            "  - front right right to front neck, within 2\n"                         /* 18 */
            "trims:\n"                                                                /* 19 */
            "  collar: {along: [front neck right, front neck left], depth: 0.1 x length + 1 cm, "
            "round: yes, elastic: 0.3 x length}\n"            /* 20 */
            "  cuff: {along: front neck and front left}\n"    /* 21 */
            "  band: {along: [front left side, cuff end]}\n", /* 22 */
    .read = read_garment,
    .size = sizeof(hw_garment),
};

typedef struct {
    int piece;
    hw_edge edge;
    const char *stretch;
} part;

static void check_run(const hw_edge_run *run, const part *parts, int count)
{
    ck_assert_int_eq(run->count, count);
    for (int i = 0; i < count; i++) {
        ck_assert_int_eq(run->parts[i].piece, parts[i].piece);
        ck_assert_int_eq(run->parts[i].edge, parts[i].edge);
        if (parts[i].stretch == NULL) {
            ck_assert_ptr_null(run->parts[i].stretch);
        } else {
            ck_assert_str_eq(run->parts[i].stretch, parts[i].stretch);
        }
    }
}

/* By hand: what the text says. `front right left` is the left edge of the piece `front right`,
 * whose name is the longest that fits. */
START_TEST(joins)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_garment garment;
    hw_check_open(&arena, &heap, 0, false);
    hw_check_taken(&reader, reader.good, &arena, &garment);
    ck_assert_int_eq(garment.join_count, 3);
    const hw_joint_edges *join = garment.joins;
    check_run(&join[0].ends[0], (const part[]){ { 0, HW_EDGE_LEFT, "side" } }, 1);
    check_run(&join[0].ends[1], (const part[]){ { 1, HW_EDGE_LEFT, NULL } }, 1);
    ck_assert_double_eq_tol(join[0].within_cm, 1, 1e-12); /* usual, as the tolerance [T1] */
    ck_assert_str_eq(join[0].text, "front left side to front right left");
    check_run(&join[1].ends[0],
        (const part[]){ { 0, HW_EDGE_LEFT, "arm hole" }, { 1, HW_EDGE_TOP, NULL } }, 2);
    check_run(&join[1].ends[1], (const part[]){ { 0, HW_EDGE_TOP, NULL } }, 1);
    ck_assert_double_eq_tol(join[1].within_cm, 0.5, 1e-12);
    check_run(&join[2].ends[0], (const part[]){ { 1, HW_EDGE_RIGHT, NULL } }, 1);
    check_run(&join[2].ends[1],
        (const part[]){ { 0, HW_EDGE_NECK_LEFT, NULL }, { 0, HW_EDGE_NECK_RIGHT, NULL } }, 2);
    ck_assert_double_eq_tol(join[2].within_cm, 2, 1e-12);
    ck_assert_int_eq(join[2].ends[0].line, 18);
    hw_check_close(&arena, &heap);
}
END_TEST

START_TEST(trims)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_garment garment;
    hw_check_open(&arena, &heap, 0, false);
    hw_check_taken(&reader, reader.good, &arena, &garment);
    ck_assert_int_eq(garment.trim_count, 3);
    const hw_trim *collar = &garment.trims[0];
    const hw_trim *cuff = &garment.trims[1];
    ck_assert_str_eq(collar->name, "collar");
    check_run(&collar->along,
        (const part[]){ { 0, HW_EDGE_NECK_RIGHT, NULL }, { 0, HW_EDGE_NECK_LEFT, NULL } }, 2);
    ck_assert(collar->round);
    ck_assert(collar->casing);
    ck_assert_int_eq(collar->elastic.count, 1);
    ck_assert_double_eq_tol(collar->elastic.terms[0].factor, 0.3, 1e-12);
    ck_assert_double_eq_tol(collar->depth.terms[0].factor, 0.1, 1e-12);
    ck_assert_double_eq_tol(collar->depth.constant_cm, 1, 1e-12);
    ck_assert_int_eq(collar->line, 20);
    check_run(&cuff->along,
        (const part[]){ { 0, HW_EDGE_NECK_LEFT, NULL }, { 0, HW_EDGE_NECK_RIGHT, NULL },
            { 0, HW_EDGE_LEFT, NULL } },
        3);
    ck_assert(!cuff->round);
    ck_assert(!cuff->casing);
    ck_assert_int_eq(cuff->depth.count, 0);
    ck_assert_double_eq_tol(cuff->depth.constant_cm, 2, 1e-12); /* own choice [O1] */
    const hw_edge_run *band = &garment.trims[2].along;
    ck_assert_int_eq(band->count, 2);
    ck_assert_int_eq(band->parts[0].piece, 0);
    ck_assert_int_eq(band->parts[1].piece, -1);
    ck_assert_int_eq(band->parts[1].trim, 1);
    hw_check_close(&arena, &heap);
}
END_TEST

/* One join may stand alone; a garment may have neither. */
START_TEST(few)
{
    char *less = hw_check_edit(reader.good,
        "joins:\n  - front left side to front right left\n"
        "  - front left arm hole and front right top to front top, within 5 mm\n"
        "  - front right right to front neck, within 2\n",
        "joins: front top to front left side\n");
    hw_arena arena;
    hw_check_heap heap;
    hw_garment garment;
    hw_check_open(&arena, &heap, 0, false);
    hw_check_taken(&reader, less, &arena, &garment);
    ck_assert_int_eq(garment.join_count, 1);
    ck_assert_str_eq(garment.joins[0].ends[1].parts[0].stretch, "side");
    char *none = hw_check_edit(less, "joins: front top to front left side\n", "");
    hw_check_taken(&reader, none, &arena, &garment);
    ck_assert_int_eq(garment.join_count, 0);
    hw_check_close(&arena, &heap);
    free(none);
    free(less);
}
END_TEST

#define SIX                                                                                        \
    "[front left side, front left arm hole, front top, front neck left, front neck right, front "  \
    "right left"
#define LINE5                                                                                      \
    "  - front left to front left\n  - front left to front left\n  - front left to front left\n  " \
    "- front left to front left\n  - front left to front left\n"
#define JOINS LINE5 LINE5

/* Columns by hand: where the words of the edge begin. */
static const hw_check_fault faults[] = {
    { "- front left side to front right left", "- front left side", HW_ERR_SYNTAX, 16, 5,
        "`front left side`", "write it as `front right side to back left side`" },
    { "- front left side to front right left", "- front left side to sleeve left", HW_ERR_UNKNOWN,
        16, 24, "`sleeve left`", "no piece of this garment" },
    { "- front left side to front right left", "- front left side to front side", HW_ERR_UNKNOWN,
        16, 24, "`front side`", "write `left`, `right`, `neck` or `top`" },
    { "- front left side to front right left", "- front left cap to front right left",
        HW_ERR_UNKNOWN, 16, 5, "`front left cap`", "no stretch of that name" },
    { "- front left side to front right left", "- hood left to front right left", HW_ERR_UNKNOWN,
        16, 5, "`hood left`", "draw it first" },
    { "- front left side to front right left", "- front left to front right neck", HW_ERR_UNKNOWN,
        16, 19, "`front right neck`", "has no `neck`" },
    { "- front right right to", "- front left side to", HW_ERR_REPEATED, 18, 5, "`front left side`",
        "the join in line 16 sews this edge or some of it already" },
    { "- front right right to front neck", "- front right right and front right left to front neck",
        HW_ERR_REPEATED, 18, 27, "`front right left`", "the join in line 16" },
    { "- front right right to front neck", "- front right right to front left", HW_ERR_REPEATED, 18,
        26, "`front left`", "the join in line 16 sews this edge or some of it already" },
    { "- front right right to front neck", "- front neck to front neck right", HW_ERR_REPEATED, 18,
        19, "`front neck right`", "the join in line 18 sews this edge" },
    { "within 5 mm", "within 5 miles", HW_ERR_SYNTAX, 17, 66, "`5 miles`",
        "such as `within 2 cm`" },
    { "within 5 mm", "with 5 mm", HW_ERR_SYNTAX, 17, 59, "`with 5 mm`", "as `, within 2 cm`" },
    { "- front left side to front right left", "- front right left to front left side within 2 cm",
        HW_ERR_SYNTAX, 16, 41, "`within 2 cm`", "behind a comma" },
    { "within 5 mm", "within -1 mm", HW_ERR_SYNTAX, 17, 66, "`-1 mm`", "write a length" },
    { "along: front neck and front left", "along: " SIX ", front right top]", HW_ERR_LIMIT, 21, 120,
        "`front right top`", "at most six" },
    { "along: front neck and front left", "along: " SIX " and front right right]", HW_ERR_LIMIT, 21,
        123, "`front right right`", "at most six" },
    /* an edge twice: as it stands, as a stretch of it, and as half of a neck */
    { "front neck and front left}", "front left and front left}", HW_ERR_REPEATED, 21, 32,
        "`front left`", "a trim names each edge once" },
    { "front neck and front left}", "front left side and front left}", HW_ERR_REPEATED, 21, 37,
        "`front left`", "a trim names each edge once" },
    { "front neck and front left}", "front neck and front neck right}", HW_ERR_REPEATED, 21, 32,
        "`front neck right`", "a trim names each edge once" },
    { "0.1 x length + 1 cm", "0.1 x lenght + 1 cm", HW_ERR_UNKNOWN, 20, 63, "`lenght`",
        "did you mean `length`" },
    { "joins:\n",
        "joins:\n" JOINS JOINS "  - front left to front left\n  - front left to front left\n",
        HW_ERR_LIMIT, 16, 3, "25 joins are too many", "at most 24" },
    { "  cuff: {along: front neck and front left}\n",
        "  a: {along: front left}\n  b: {along: front left}\n  c: {along: front left}\n"
        "  d: {along: front left}\n  e: {along: front left}\n  f: {along: front left}\n"
        "  g: {along: front left}\n",
        HW_ERR_LIMIT, 20, 3, "9 trims are too many", "at most 8" },
    { "round: yes, elastic: 0.3 x length", "elastic: 0.3 x length", HW_ERR_SYNTAX, 20, 84,
        "an elastic is drawn into a ring", "take `elastic` out" },
    { "elastic: 0.3 x length", "elastic: 0.3 x lenght", HW_ERR_UNKNOWN, 20, 105, "`lenght`",
        "did you mean `length`" },
    { "cuff end", "collar end", HW_ERR_UNKNOWN, 22, 35, "`collar end`", "is `round`" },
    { "cuff end", "band end", HW_ERR_UNKNOWN, 22, 35, "`band end`", "the trim's own end" },
    { "cuff end", "cufff end", HW_ERR_UNKNOWN, 22, 35, "`cufff end`",
        "before `end` write the name of one that stands above" },
    { "cuff end", "front end", HW_ERR_UNKNOWN, 22, 35, "`front end`", "no trim of this garment" },
    { "[front left side, cuff end]", "cuff end", HW_ERR_SYNTAX, 22, 17, "name the edge too", "" },
    { "front neck and front left}", "front left and band end}", HW_ERR_UNKNOWN, 21, 32,
        "`band end`", "write it above the trim that is picked up over its end" },
    { "- front left side to front right left", "- cuff end to front right left", HW_ERR_UNKNOWN, 16,
        5, "`cuff end`", "under `along` of the trim that is picked up over it" },
    { "- front left side to front right left", "- cufff end to front right left", HW_ERR_UNKNOWN,
        16, 5, "`cufff end`", "no piece of this garment" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 30);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("edges");
    TCase *tcase = tcase_create("edges");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, joins);
    tcase_add_test(tcase, trims);
    tcase_add_test(tcase, few);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, (int)(sizeof faults / sizeof faults[0]));
    tcase_add_test(tcase, memory_refused);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
