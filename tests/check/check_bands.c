/* Bands, trims, yarn and safety of project files, and what is said of mistakes in them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/bands.h"

#include <stdlib.h>
#include <string.h>

#include "read/project.h"
#include "reading.h"

static hw_status read_project(const char *text, size_t len, hw_arena *arena, void *out, hw_err *err)
{
    return hw_project_read(text, len, arena, out, err);
}

/* Invented; positions are counted by hand in this text. */
static const hw_check_reader reader = {
    .good =
        "machine: standard\n"                                                     /* 1 */
        "garment: own\n"                                                          /* 2 */
        "gauge: {main: {stitches: 28, rows: 40}}\n"                               /* 3 */
        "motif: {use: tulip}\n"                                                   /* 4 */
        "hem: {depth: 4 cm}\n"                                                    /* 5 */
        "sizes: {names: [one], finished: {chest: [60]}}\n"                        /* 6 */
        "bands:\n"                                                                /* 7 */
        "  cuff:\n"                                                               /* 8 */
        "    on: [left sleeve, right sleeve]\n"                                   /* 9 */
        "    motif: {use: pebbles, gap: 3, card start: 2}\n"                      /* 10 */
        "    hem: {face rows: 8, fold: picot}\n"                                  /* 11 */
        "  yoke:\n"                                                               /* 12 */
        "    on: back\n"                                                          /* 13 */
        "    motif:\n"                                                            /* 14 */
        "      chart: |\n"                                                        /* 15 */
        "        .o\n"                                                            /* 16 */
        "    above fold: 20 cm\n"                                                 /* 17 */
        "  belt: {on: back, motif: {use: tulip}, below underarm: 0 cm}\n"         /* 18 */
        "trims:\n"                                                                /* 19 */
        "  neckband:\n"                                                           /* 20 */
        "    motif: {use: pebbles}\n"                                             /* 21 */
        "    gauge: {stitches: 30, rows: 42, per: 4 in}\n"                        /* 22 */
        "    hem: {fold: purl row}\n"                                             /* 23 */
        "  placket: {buttonholes: 6}\n"                                           /* 24 */
        "  other: {buttonholes: 3, buttonhole stitches: 5, hem: {depth: 3 cm}}\n" /* 25 */
        "yarn:\n"                                                                 /* 26 */
        "  reserve: 15\n"                                                         /* 27 */
        "  main: {ball: 50, metres: 180, unravelled stitches: 200, unravelled metres: 2.5}\n" /* 28
                                                                                               */
        "  contrast: {ball: 25}\n" /* 29 */
        "safety:\n"                /* 30 */
        "  buttons: yes\n"         /* 31 */
        "  cords: waist\n"         /* 32 */
        "  drawstrings: neck\n"    /* 33 */
        "  sleepwear: yes\n",      /* 34 */
    .read = read_project,
    .size = sizeof(hw_project),
};

typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    hw_project project;
} taken;

static void take(taken *t, const char *text)
{
    hw_check_open(&t->arena, &t->heap, 0, false);
    hw_check_taken(&reader, text, &t->arena, &t->project);
}

START_TEST(bands)
{
    taken t;
    take(&t, reader.good);
    ck_assert_int_eq(t.project.band_count, 3);
    const hw_band_input *cuff = &t.project.bands[0];
    const hw_band_input *yoke = &t.project.bands[1];
    const hw_band_input *belt = &t.project.bands[2];
    ck_assert_str_eq(cuff->name, "cuff");
    ck_assert_int_eq(cuff->on_count, 2);
    ck_assert_str_eq(cuff->on[1], "right sleeve");
    ck_assert_str_eq(cuff->motif.file.name, "pebbles");
    ck_assert(cuff->motif.own.has_gap);
    ck_assert_int_eq(cuff->motif.own.gap, 3);
    ck_assert_int_eq(cuff->motif.card_start, 2);
    ck_assert(cuff->has_hem);
    ck_assert_int_eq(cuff->hem.face_rows, 8);
    ck_assert_int_eq(cuff->hem.fold, HW_FOLD_PICOT);
    ck_assert_int_eq(cuff->line, 8);
    ck_assert_int_eq(yoke->on_count, 1);
    ck_assert_str_eq(yoke->on[0], "back");
    ck_assert_ptr_null(yoke->motif.file.name);
    ck_assert_int_eq(yoke->motif.own.chart.width, 2);
    ck_assert(!yoke->has_hem && !yoke->motif.own.has_gap);
    ck_assert_double_eq_tol(yoke->above_fold_cm, 20, 1e-12);
    ck_assert_double_eq_tol(yoke->below_underarm_cm, -1, 1e-12);
    ck_assert_int_eq(yoke->line, 12);
    ck_assert_double_eq_tol(belt->below_underarm_cm, 0, 1e-12);
    ck_assert_double_eq_tol(belt->above_fold_cm, 0, 1e-12);
    hw_check_close(&t.arena, &t.heap);
}
END_TEST

START_TEST(trims)
{
    taken t;
    take(&t, reader.good);
    ck_assert_int_eq(t.project.trim_count, 3);
    const hw_trim_input *neckband = &t.project.trims[0];
    const hw_trim_input *placket = &t.project.trims[1];
    const hw_trim_input *other = &t.project.trims[2];
    ck_assert_str_eq(neckband->name, "neckband");
    ck_assert(neckband->has_motif && neckband->has_hem);
    ck_assert_str_eq(neckband->motif.file.name, "pebbles");
    ck_assert_int_eq(neckband->gauge.count, 1);
    ck_assert_double_eq_tol(neckband->gauge.swatches[0].sts, 30, 1e-12);
    ck_assert_double_eq_tol(neckband->gauge.swatches[0].width_cm, 10.16, 1e-12);
    ck_assert_int_eq(neckband->hem.fold, HW_FOLD_PURL);
    ck_assert_int_eq(neckband->hem.face_rows, 0);
    ck_assert_int_eq(neckband->buttonholes, 0);
    ck_assert(!placket->has_motif && !placket->has_hem);
    ck_assert_int_eq(placket->buttonholes, 6);
    ck_assert_int_eq(placket->buttonhole_sts, 2); /* own choice [O3] */
    ck_assert_int_eq(placket->gauge.count, 0);
    ck_assert_int_eq(placket->line, 24);
    ck_assert_int_eq(other->buttonhole_sts, 5);
    ck_assert_double_eq_tol(other->hem.depth_cm, 3, 1e-12);
    hw_check_close(&t.arena, &t.heap);
}
END_TEST

/* The manual: the hems of bands and trims are begun and closed as the project's is, unless they say
 * otherwise; the fold stays their own. */
START_TEST(hems_like_the_first)
{
    char *sewn = hw_check_edit(reader.good, "hem: {depth: 4 cm}",
        "hem: {depth: 4 cm, fold: none, cast-on: wrapped edge, closing: sewn}");
    char *text =
        hw_check_edit(sewn, "hem: {fold: purl row}", "hem: {cast-on: waste yarn, closing: hung}");
    taken t;
    take(&t, text);
    const hw_hem_input *cuff = &t.project.bands[0].hem;
    const hw_hem_input *neckband = &t.project.trims[0].hem;
    const hw_hem_input *other = &t.project.trims[2].hem;
    ck_assert_int_eq(cuff->closing, HW_CLOSING_SEWN);
    ck_assert_int_eq(cuff->cast_on, HW_CAST_ON_WRAPPED);
    ck_assert_int_eq(other->closing, HW_CLOSING_SEWN);
    ck_assert_int_eq(other->cast_on, HW_CAST_ON_WRAPPED);
    ck_assert_int_eq(other->fold, HW_FOLD_LOOSE);
    ck_assert_int_eq(neckband->closing, HW_CLOSING_HUNG);
    ck_assert_int_eq(neckband->cast_on, HW_CAST_ON_OPEN);
    hw_check_close(&t.arena, &t.heap);
    free(text);
    free(sewn);
}
END_TEST

START_TEST(yarn_and_safety)
{
    taken t;
    take(&t, reader.good);
    const hw_project *p = &t.project;
    ck_assert(p->has_yarn);
    ck_assert_double_eq_tol(p->reserve_percent, 15, 1e-12);
    ck_assert_double_eq_tol(p->yarn[HW_BACKGROUND].ball_g, 50, 1e-12);
    ck_assert_double_eq_tol(p->yarn[HW_BACKGROUND].ball_m, 180, 1e-12);
    ck_assert_int_eq(p->yarn[HW_BACKGROUND].unravelled_sts, 200);
    ck_assert_double_eq_tol(p->yarn[HW_BACKGROUND].unravelled_m, 2.5, 1e-12);
    ck_assert_double_eq_tol(p->yarn[HW_CONTRAST].ball_g, 25, 1e-12);
    ck_assert_double_eq_tol(p->yarn[HW_CONTRAST].ball_m, 0, 1e-12);
    ck_assert(p->buttons && p->sleepwear);
    ck_assert(p->cords[HW_CORD_WAIST].cord && !p->cords[HW_CORD_NECK].cord);
    ck_assert(p->cords[HW_CORD_NECK].drawstring && !p->cords[HW_CORD_WAIST].drawstring);
    hw_check_close(&t.arena, &t.heap);
}
END_TEST

/* Left out, all of it: nothing is there, and the reserve is a tenth [O2]. */
START_TEST(none)
{
    char *text = hw_check_edit(reader.good, strstr(reader.good, "bands:\n"), "");
    taken t;
    take(&t, text);
    const hw_project *p = &t.project;
    ck_assert_int_eq(p->band_count + p->trim_count, 0);
    ck_assert(!p->has_yarn && !p->buttons && !p->sleepwear);
    ck_assert_double_eq_tol(p->reserve_percent, 10, 1e-12);
    for (int place = 0; place < HW_CORD_PLACES; place++) {
        ck_assert(!p->cords[place].cord && !p->cords[place].drawstring);
    }
    hw_check_close(&t.arena, &t.heap);
    free(text);
}
END_TEST

#define BELT        "  belt: {on: back, motif: {use: tulip}, below underarm: 0 cm}\n"
#define NUMBERED(n) "  b" n ": {on: back, motif: {use: tulip}, below underarm: 0 cm}\n"
#define TRIM(n)     "  t" n ": {buttonholes: 1}\n"

static const hw_check_fault faults[] = {
    { "    above fold: 20 cm\n", "", HW_ERR_MISSING, 13, 5, "where this band lies is missing",
        "write `hem:`, `above fold:` or `below underarm:`" },
    { "    above fold: 20 cm\n", "    above fold: 20 cm\n    below underarm: 2 cm\n",
        HW_ERR_REPEATED, 13, 5, "each say where the band lies", "keep one" },
    { "{face rows: 8, fold: picot}", "{fold: picot}", HW_ERR_MISSING, 11, 10,
        "the hem's size is missing", "write `depth`" },
    { "{face rows: 8, fold: picot}", "{face rows: 8, depth: 2 cm}", HW_ERR_REPEATED, 11, 10,
        "both `depth` and `face rows`", "keep one" },
    { "{use: pebbles, gap: 3, card start: 2}", "{gap: 3}", HW_ERR_MISSING, 10, 12,
        "the motif is missing", "behind `use`" },
    { "    motif:\n      chart", "    motif:\n      use: tulip\n      chart", HW_ERR_REPEATED, 15,
        7, "both `chart` and `use`", "keep one" },
    { "[left sleeve, right sleeve]", "[a, b, c, d, e, f, g, h, i, j, k, l, m]", HW_ERR_LIMIT, 9, 9,
        "more than twelve pieces", "" },
    { BELT, BELT NUMBERED("1") NUMBERED("2") NUMBERED("3"), HW_ERR_LIMIT, 8, 3, "too many bands",
        "beside the hem five can be" },
    { "  placket: {buttonholes: 6}\n",
        TRIM("1") TRIM("2") TRIM("3") TRIM("4") TRIM("5") TRIM("6") TRIM("7"), HW_ERR_LIMIT, 20, 3,
        "too many trims", "at most eight" },
    { "motif: {use: pebbles}\n", "motif: {gap: 1}\n", HW_ERR_MISSING, 21, 12,
        "the motif is missing", "`chart`" },
    { "{stitches: 30, rows: 42, per: 4 in}", "{stitches: 30}", HW_ERR_MISSING, 22, 12,
        "both `stitches` and `rows`", "`swatches`" },
    { "{fold: purl row}", "{depth: 2 cm, face rows: 8}", HW_ERR_REPEATED, 23, 10,
        "both `depth` and `face rows`", "keep one" },
    { ", unravelled metres: 2.5", "", HW_ERR_MISSING, 28, 9, "belong together", "write both" },
    { "contrast: {ball: 25}", "contrast: {ball: 25, unravelled metres: 2}", HW_ERR_UNKNOWN, 29, 13,
        "knitted in the main yarn", "under `main`" },
    { "cords: waist", "cords: wrist", HW_ERR_UNKNOWN, 32, 10, "`wrist`", "waist" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 50);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("bands");
    TCase *tcase = tcase_create("bands");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, bands);
    tcase_add_test(tcase, trims);
    tcase_add_test(tcase, hems_like_the_first);
    tcase_add_test(tcase, yarn_and_safety);
    tcase_add_test(tcase, none);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, (int)(sizeof faults / sizeof faults[0]));
    tcase_add_test(tcase, memory_refused);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
