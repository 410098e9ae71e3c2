/* Project files: every section, what stands for what is left out, and what is said of mistakes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/project.h"

#include <stdlib.h>
#include <string.h>

#include "fixture.h"
#include "reading.h"

static hw_status read_project(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    return hw_project_read(text, len, room, out, err);
}

static const hw_check_reader reader = {
    .good = "title: A hem\n"                      /* 1 */
            "units: both\n"                       /* 2 */
            "machine: standard\n"                 /* 3 */
            "garment: ./own.yaml\n"               /* 4 */
            "gauge:\n"                            /* 5 */
            "  main:\n"                           /* 6 */
            "    dial: 6\n"                       /* 7 */
            "    stitches: 28.5\n"                /* 8 */
            "    rows: 40\n"                      /* 9 */
            "    per: 4 in\n"                     /* 10 */
            "  band:\n"                           /* 11 */
            "    swatches:\n"                     /* 12 */
            "      - {stitches: 40, width: 14}\n" /* 13 */
            "      - {rows: 60, length: 15}\n"    /* 14 */
            "  facing:\n"                         /* 15 */
            "    dial: 5\n"                       /* 16 */
            "motif:\n"                            /* 17 */
            "  chart: |\n"                        /* 18 */
            "    .o.\n"                           /* 19 */
            "    ooo\n"                           /* 20 */
            "  gap: 2\n"                          /* 21 */
            "  card start: 3\n"                   /* 22 */
            "hem:\n"                              /* 23 */
            "  face rows: 20\n"                   /* 24 */
            "  fold: picot\n"                     /* 25 */
            "  facing: same depth\n"              /* 26 */
            "sizes:\n"                            /* 27 */
            "  names: [small, large]\n"           /* 28 */
            "  table: children\n"                 /* 29 */
            "  ages: [12, 24]\n"                  /* 30 */
            "  body:\n"                           /* 31 */
            "    chest: [56, 61]\n"               /* 32 */
            "  finished:\n"                       /* 33 */
            "    hem: [80, between]\n"            /* 34 */
            "ease:\n"                             /* 35 */
            "  chest: 5 cm\n"                     /* 36 */
            "  hem: 10 %\n"                       /* 37 */
            "choices:\n"                          /* 38 */
            "  tolerance: 5 mm\n"                 /* 39 */
            "  centre weight: 2\n"                /* 40 */
            "  seam weight: 3\n"                  /* 41 */
            "  step weight: 4\n"                  /* 42 */
            "  always centred: yes\n"             /* 43 */
            "  unbroken seams: no\n"              /* 44 */
            "  within tolerance: yes\n"           /* 45 */
            "  hand-set needles: yes\n"           /* 46 */
            "  re-hang: yes\n"                    /* 47 */
            "  edge stitches: 2\n",               /* 48 */
    .read = read_project,
    .size = sizeof(hw_project),
};

static void check_gauges(const hw_project *project)
{
    const hw_gauge_input *gauge = project->gauge;
    ck_assert_int_eq(gauge[HW_MAIN].count, 1);
    ck_assert(gauge[HW_MAIN].outright && gauge[HW_MAIN].has_dial);
    ck_assert_double_eq_tol(gauge[HW_MAIN].dial, 6, 1e-12);
    ck_assert_double_eq_tol(gauge[HW_MAIN].swatches[0].sts, 28.5, 1e-12);
    ck_assert_double_eq_tol(gauge[HW_MAIN].swatches[0].rows, 40, 1e-12);
    ck_assert_double_eq_tol(gauge[HW_MAIN].swatches[0].width_cm, 10.16, 1e-12);
    ck_assert_double_eq_tol(gauge[HW_MAIN].swatches[0].length_cm, 10.16, 1e-12);
    ck_assert_int_eq(gauge[HW_MAIN].line, 7);
    ck_assert_int_eq(gauge[HW_BAND].count, 2);
    ck_assert(!gauge[HW_BAND].outright && !gauge[HW_BAND].has_dial);
    ck_assert_double_eq_tol(gauge[HW_BAND].swatches[0].width_cm, 14, 1e-12);
    ck_assert_double_eq_tol(gauge[HW_BAND].swatches[0].rows, 0, 1e-12);
    ck_assert_double_eq_tol(gauge[HW_BAND].swatches[1].length_cm, 15, 1e-12);
    ck_assert_int_eq(gauge[HW_FACING].count, 0);
    ck_assert(gauge[HW_FACING].has_dial);
}

static void check_choices(const hw_choices *choices)
{
    ck_assert_double_eq_tol(choices->tolerance_cm, 0.5, 1e-12);
    ck_assert_double_eq_tol(choices->centre_weight, 2, 1e-12);
    ck_assert_double_eq_tol(choices->seam_weight, 3, 1e-12);
    ck_assert_double_eq_tol(choices->grade_weight, 4, 1e-12);
    ck_assert(choices->exact_centre && !choices->unbroken_seams && choices->keep_tolerance);
    ck_assert(choices->hand_set && choices->rehang);
    ck_assert_int_eq(choices->edge_sts, 2);
}

/* By hand: 4 in are 10.16 cm. To 1e-12. */
START_TEST(a_project)
{
    hw_project project;
    hw_check_taken(&reader, reader.good, &arena, &project);
    ck_assert_str_eq(project.title, "A hem");
    ck_assert_int_eq(project.show, HW_SHOW_BOTH);
    ck_assert_str_eq(project.references[HW_DATA_MACHINE].name, "standard");
    ck_assert_str_eq(project.references[HW_DATA_GARMENT].name, "./own.yaml");
    ck_assert_int_eq(project.references[HW_DATA_GARMENT].line, 4);
    ck_assert_int_eq(project.references[HW_DATA_GARMENT].column, 10);
    ck_assert_str_eq(project.references[HW_DATA_SIZES].name, "children");
    ck_assert_ptr_null(project.references[HW_DATA_MOTIF].name);
    check_gauges(&project);
    ck_assert(project.has_chart && project.motif.has_gap);
    ck_assert_int_eq(project.motif.gap, 2);
    ck_assert_int_eq(project.motif.chart.width, 3);
    ck_assert_int_eq(project.card_start, 3);
    ck_assert_int_eq(project.hem.face_rows, 20);
    ck_assert_double_eq_tol(project.hem.depth_cm, 0, 1e-12);
    ck_assert_int_eq(project.hem.fold, HW_FOLD_PICOT);
    ck_assert_int_eq(project.hem.facing, HW_FACING_DEPTH);
    ck_assert_int_eq(project.body.count, 2);
    ck_assert_int_eq(project.body.ages_months[1], 24);
    ck_assert_int_eq(project.body.measure_count, 1);
    ck_assert_int_eq(project.finished.measure_count, 1);
    ck_assert(project.finished.measures[0].missing[1]);
    ck_assert_int_eq(project.ease_count, 2);
    ck_assert_double_eq_tol(project.ease[0].ease.cm, 5, 1e-12);
    ck_assert_double_eq_tol(project.ease[1].ease.percent, 10, 1e-12);
    ck_assert_int_eq(project.ease[1].line, 37);
    check_choices(&project.choices);
}
END_TEST

/* Own choice: what stands for all that is left out. */
START_TEST(the_least_project)
{
    static const char least[] = "machine: m\ngarment: g\n"
                                "gauge: {main: {stitches: 20, rows: 30}}\n"
                                "motif: {use: tulip}\nhem: {depth: 4}\nsizes: {names: one}\n";
    hw_project project;
    hw_check_taken(&reader, least, &arena, &project);
    ck_assert_str_eq(project.title, "untitled");
    ck_assert_int_eq(project.show, HW_SHOW_CM);
    ck_assert_double_eq_tol(project.gauge[HW_MAIN].swatches[0].width_cm, 10, 1e-12);
    ck_assert_int_eq(project.gauge[HW_BAND].count, 0);
    ck_assert(!project.has_chart && !project.motif.has_gap);
    ck_assert_str_eq(project.references[HW_DATA_MOTIF].name, "tulip");
    ck_assert_int_eq(project.card_start, 0);
    ck_assert_double_eq_tol(project.hem.depth_cm, 4, 1e-12);
    ck_assert_int_eq(project.hem.face_rows, 0);
    ck_assert_int_eq(project.hem.fold, HW_FOLD_LOOSE);
    ck_assert_int_eq(project.hem.facing, HW_FACING_ROWS);
    ck_assert_int_eq(project.body.ages_months[0], -1);
    ck_assert_int_eq(project.ease_count, 0);
    ck_assert_double_eq_tol(project.choices.tolerance_cm, 1, 1e-12);
    ck_assert_double_eq_tol(project.choices.centre_weight, 0.5, 1e-12);
    ck_assert_double_eq_tol(project.choices.seam_weight, 0.5, 1e-12);
    ck_assert_double_eq_tol(project.choices.grade_weight, 0.5, 1e-12);
    ck_assert(!project.choices.exact_centre && !project.choices.unbroken_seams);
    ck_assert(!project.choices.keep_tolerance && !project.choices.hand_set);
    ck_assert(!project.choices.rehang);
    ck_assert_int_eq(project.choices.edge_sts, 1);
}
END_TEST

/* By hand: each word of a list comes to the value of its name, in inches where they are usual. */
START_TEST(words_and_inches)
{
    static const struct {
        const char *word;
        hw_fold fold;
    } folds[] = { { "fold: none", HW_FOLD_NONE }, { "fold: loose row", HW_FOLD_LOOSE },
        { "fold: purl row", HW_FOLD_PURL }, { "fold: picot", HW_FOLD_PICOT } };
    hw_project project;
    for (size_t i = 0; i < sizeof folds / sizeof folds[0]; i++) {
        char *text = hw_check_edit(reader.good, "fold: picot", folds[i].word);
        hw_check_taken(&reader, text, &arena, &project);
        ck_assert_int_eq(project.hem.fold, folds[i].fold);
        free(text);
    }
    char *inches = hw_check_edit(reader.good, "units: both", "units: in");
    hw_check_taken(&reader, inches, &arena, &project);
    ck_assert_int_eq(project.show, HW_SHOW_IN);
    ck_assert_double_eq_tol(project.body.measures[0].values_cm[0], 142.24, 1e-12);
    ck_assert_double_eq_tol(project.ease[0].ease.cm, 5, 1e-12);
    free(inches);
}
END_TEST

static const hw_check_fault faults[] = {
    { "    rows: 40\n", "", HW_ERR_MISSING, 7, 5, "needs both `stitches` and `rows`",
        "or `swatches`" },
    { "    stitches: 28.5\n", "", HW_ERR_MISSING, 7, 5, "needs both `stitches` and `rows`",
        "or `swatches`" },
    { "    dial: 6\n    stitches: 28.5\n    rows: 40\n    per: 4 in\n", "    dial: 6\n",
        HW_ERR_MISSING, 7, 5, "the main fabric needs a gauge", "write `stitches`" },
    { "    swatches:\n", "    rows: 40\n    swatches:\n", HW_ERR_REPEATED, 14, 7,
        "either `stitches` and `rows`, or `swatches`", "not both" },
    { "{stitches: 40, width: 14}", "{stitches: 40}", HW_ERR_MISSING, 13, 9,
        "a swatch needs `stitches` with `width`", "or all four" },
    { "{rows: 60, length: 15}", "{stitches: 4, width: 1, length: 15}", HW_ERR_MISSING, 14, 9,
        "or `rows` with `length`", "or all four" },
    { "{rows: 60, length: 15}", "{}", HW_ERR_MISSING, 14, 9, "a swatch needs", "or all four" },
    { "  gap: 2\n", "  gap: 2\n  use: tulip\n", HW_ERR_REPEATED, 18, 3,
        "both `chart` and `use` stand here", "keep one" },
    { "  chart: |\n    .o.\n    ooo\n", "", HW_ERR_MISSING, 18, 3, "the motif is missing",
        "draw it behind `chart`" },
    { "    ooo\n", "    oo\n", HW_ERR_SYNTAX, 20, 7, "row 2 of the chart", "equally long" },
    { "  gap: 2\n", "  gap: 198\n", HW_ERR_LIMIT, 21, 8, "201 columns", "a smaller gap" },
    { "  face rows: 20\n", "", HW_ERR_MISSING, 24, 3, "the hem's size is missing",
        "write `depth`" },
    { "  face rows: 20\n", "  face rows: 20\n  depth: 4\n", HW_ERR_REPEATED, 24, 3,
        "both `depth` and `face rows`", "keep one" },
    { "  face rows: 20\n", "  face rows: 4\n", HW_ERR_RANGE, 24, 14, "`face rows`: `4`",
        "5 to 600" },
    { "[small, large]", "[small, small]", HW_ERR_REPEATED, 28, 18, "the size `small`", "rename" },
    { "[12, 24]", "[12]", HW_ERR_RANGE, 30, 9, "`ages` has 1 value", "one age in months" },
    { "[56, 61]", "[56]", HW_ERR_RANGE, 32, 12, "`chest` has 1 value and there are 2 sizes",
        "`between`" },
    { "[80, between]", "[80,5, 82]", HW_ERR_RANGE, 34, 10, "`hem` has 3 values",
        "write 31.5, with a point" },
    { "re-hang: yes", "rehang: yes", HW_ERR_UNKNOWN, 47, 3, "`rehang` is not known in choices",
        "did you mean `re-hang`?" },
    { "title: A hem", "tile: A hem", HW_ERR_UNKNOWN, 1, 1, "`tile` is not known in the project",
        "did you mean `title`?" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* Own choice of limit: HW_MAX_SWATCHES are taken, one more is not. */
START_TEST(most_swatches)
{
    for (int more = 0; more < 2; more++) {
        static const char line[] = "      - {rows: 6, length: 2}\n";
        char list[(HW_MAX_SWATCHES + 1) * sizeof line] = { 0 };
        for (int i = 0; i < HW_MAX_SWATCHES + more - 1; i++) {
            memcpy(list + (size_t)i * (sizeof line - 1), line, sizeof line);
        }
        char *text = hw_check_edit(reader.good, "      - {rows: 60, length: 15}\n", list);
        hw_project project;
        if (more == 0) {
            hw_check_taken(&reader, text, &arena, &project);
            ck_assert_int_eq(project.gauge[HW_BAND].count, HW_MAX_SWATCHES);
        } else {
            hw_check_fault fault = { NULL, text, HW_ERR_LIMIT, 13, 7, "measured places stand here",
                "keep the best" };
            hw_check_told(&reader, &fault);
        }
        free(text);
    }
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 100);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("project");
    TCase *tcase = fixture_case(suite, "project", NULL, NULL);
    tcase_add_test(tcase, a_project);
    tcase_add_test(tcase, the_least_project);
    tcase_add_test(tcase, words_and_inches);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_test(tcase, most_swatches);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
