/* The facts behind a plan: each there, once, with its mark, and a source that is written down.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/basis.h"
#include "core/calculate.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "planned.h"

static const hw_basis *find(const hw_plan *plan, const char *what)
{
    const hw_basis *found = NULL;
    for (int i = 0; i < plan->basis_count; i++) {
        if (strcmp(plan->basis[i].what, what) == 0) {
            ck_assert_msg(found == NULL, "`%s` is there twice", what);
            found = &plan->basis[i];
        }
    }
    return found;
}

/* By hand, for a project that says as little as it can, and for changes to it. */
static const char least[] = "title: Least\n"
                            "machine: standard\n"
                            "garment: skirt\n"
                            "gauge:\n"
                            "  main: {stitches: 25, rows: 35.5}\n"
                            "motif:\n"
                            "  chart: |\n"
                            "    o\n"
                            "    o\n"
                            "  gap: 2\n"
                            "hem:\n"
                            "  depth: 4\n"
                            "sizes:\n"
                            "  names: [2 years, 4 years]\n"
                            "  body: {waist: [53, 55]}\n"
                            "  table: children\n";

typedef struct {
    loading_edit edit;
    const char *what, *value, *rule; /* value NULL: the fact must not be there */
    hw_mark mark;
    const char *source;
} row;

#define KEEP                                                                                       \
    {                                                                                              \
        NULL, NULL                                                                                 \
    }

static const row rows[] = {
    { KEEP, "gauge, main", "25 sts and 35.5 rows in 10 cm", "", HW_MARK_GIVEN, "" },
    { KEEP, "gauge, band", "25 sts and 35.5 rows in 10 cm",
        "as the main fabric: it was not swatched", HW_MARK_ASSUMED, "" },
    { KEEP, "gauge, facing", "25 sts and 35.5 rows in 10 cm",
        "as the main fabric: it was not swatched", HW_MARK_ASSUMED, "" },
    { { "main: {stitches: 25, rows: 35.5}",
          "main: {swatches: [{stitches: 30, width: 12, rows: 40, length: 10}]}" },
        "gauge, main", "25 sts and 40 rows in 10 cm", NULL, HW_MARK_MEASURED, "" },
    { KEEP, "dial, main", NULL, NULL, HW_MARK_GIVEN, "" },
    { KEEP, "dial, joining row", NULL, NULL, HW_MARK_GIVEN, "" },
    { { "main: {", "main: {dial: 7, " }, "dial, main", "7", "", HW_MARK_GIVEN, "" },
    { { "main: {", "main: {dial: 7, " }, "dial, band", "8", "one number looser than main",
        HW_MARK_ASSUMED, "G4" },
    { { "main: {", "main: {dial: 7.5, " }, "dial, facing", "6.5", "one number tighter than main",
        HW_MARK_ASSUMED, "H1" },
    { { "main: {", "main: {dial: 7, " }, "dial, joining row", "8",
        "two numbers looser than the facing", HW_MARK_READ, "H1" },
    { KEEP, "ease, hips", "4 cm", "from the garment file", HW_MARK_CHOICE, "" },
    { KEEP, "ease, waist", "0 cm", "from the garment file", HW_MARK_CHOICE, "" },
    { { "hem:\n", "ease: {hips: 6 cm}\nhem:\n" }, "ease, hips", "6 cm", "", HW_MARK_GIVEN, "" },
    { { "hem:\n", "ease: {hips: 7.5 %}\nhem:\n" }, "ease, hips", "7.5 %", "", HW_MARK_GIVEN, "" },
    { { "hem:\n", "ease: {hips: 6 cm}\nhem:\n" }, "ease, waist", "0 cm", "from the garment file",
        HW_MARK_CHOICE, "" },
    { { "  table: ", "  finished: {hem: [90, 92]}\n  table: " }, "ease, hem",
        "none: the finished measurement is given", "", HW_MARK_GIVEN, "" },
    { KEEP, "body, waist", "all sizes", "", HW_MARK_GIVEN, "" },
    { KEEP, "body, hips", "all sizes", "Children, 3 months to 16 years", HW_MARK_MEMORY, "M1" },
    { KEEP, "body, chest", NULL, NULL, HW_MARK_GIVEN, "" },
    { KEEP, "tolerance of a width", "1 cm", "", HW_MARK_PRACTICE, "T1" },
    { { "hem:\n", "choices: {tolerance: 1.5}\nhem:\n" }, "tolerance of a width", "1.5 cm", "",
        HW_MARK_GIVEN, "" },
    { KEEP, "weight of centring", "0.5", NULL, HW_MARK_CHOICE, "" },
    { { "hem:\n", "choices: {centre weight: 0.125}\nhem:\n" }, "weight of centring", "0.125", NULL,
        HW_MARK_GIVEN, "" },
    { { "hem:\n", "choices: {seam weight: 2}\nhem:\n" }, "weight of seams", "2", NULL,
        HW_MARK_GIVEN, "" },
    { { "hem:\n", "choices: {seam weight: 2}\nhem:\n" }, "weight of even steps", "0.5", NULL,
        HW_MARK_CHOICE, "" },
    { { "hem:\n", "choices: {step weight: 0}\nhem:\n" }, "weight of even steps", "0", NULL,
        HW_MARK_GIVEN, "" },
    { KEEP, "counts that fall from size to size", "only where a width falls", "", HW_MARK_CHOICE,
        "" },
    { KEEP, "machine",
        "Standard machine, pre-selecting carriage: 200 needles, 4.5 mm apart; pre-selecting "
        "carriage",
        "count the needles of your own bed", HW_MARK_MEMORY, "B1, B2, B3, B4, F1" },
    { { "machine: standard", "machine: hand" }, "machine", "Hand knitting", "", HW_MARK_GIVEN,
        "F3" },
    { KEEP, "longest float", "5 stitches", "", HW_MARK_READ, "F1" },
    { { "machine: standard", "machine: hand" }, "longest float", "5 stitches",
        "from the machine file", HW_MARK_CHOICE, "F3" },
    { { "machine: standard", "machine: fine" }, "longest float", "4 stitches",
        "from the machine file", HW_MARK_CHOICE, "B1, B2, B4, F1" },
    { KEEP, "card row in view", "7 rows above the row that is read", NULL, HW_MARK_READ, "B3" },
    { KEEP, "rows of the hem", "4 cm deep asked for", NULL, HW_MARK_PRACTICE, "P1" },
    { { "depth: 4", "face rows: 12" }, "rows of the hem", "12 face rows asked for", NULL,
        HW_MARK_PRACTICE, "P1" },
    { KEEP, "facing", "same rows", "with the fold as many rows as the face, on a tighter dial",
        HW_MARK_PRACTICE, "P1" },
    { { "depth: 4\n", "depth: 4\n  facing: same depth\n" }, "facing", "same depth",
        "as deep as the face; with the fold an even number of rows", HW_MARK_PRACTICE, "P1" },
    { KEEP, "fold", "one loose row", "", HW_MARK_PRACTICE, "P1" },
    { { "depth: 4\n", "depth: 4\n  fold: picot\n" }, "fold", "picot",
        "an odd number of stitches; no row of its own", HW_MARK_READ, "H2" },
    { KEEP, "inch", NULL, NULL, HW_MARK_GIVEN, "" },
    { { "title: Least\n", "title: Least\nunits: both\n" }, "inch",
        "2.54 cm; 4 in is 10.16 cm, not 10", NULL, HW_MARK_DERIVED, "U1" },
    { { "title: Least\n", "title: Least\nunits: both\n" }, "rows of the hem",
        "4 cm (1 5/8 in) deep asked for", NULL, HW_MARK_PRACTICE, "P1" },
};

START_TEST(facts_by_hand)
{
    static planned t;
    const row *r = &rows[_i];
    planned_open(&t, &(loading){ .text = least, .edits = { r->edit } });
    const hw_basis *fact = find(&t.plan, r->what);
    ck_assert_int_eq(fact != NULL, r->value != NULL);
    if (fact != NULL) {
        ck_assert_str_eq(fact->value, r->value);
        ck_assert(r->rule == NULL || strcmp(fact->rule, r->rule) == 0);
        ck_assert_int_eq(fact->mark, r->mark);
        ck_assert_str_eq(fact->source, r->source);
    }
    planned_close(&t);
}
END_TEST

/* A body measurement with two marks is two facts, each with the sizes that it is true of. By hand,
 * from the table: the chest of 6 months is from memory [M1], of 2 and 4 years was read [L1]. */
START_TEST(body_by_marks)
{
    static planned t;
    planned_open(&t, &(loading){ .demo = "starter",
                         .edits = { { "[2 years, 4 years, 6 years, 8 years]",
                             "[6 months, 2 years, 4 years, 12 years]" } } });
    int read = 0;
    int memory = 0;
    for (int i = 0; i < t.plan.basis_count; i++) {
        const hw_basis *fact = &t.plan.basis[i];
        if (strcmp(fact->what, "body, chest") == 0) {
            bool is_read = fact->mark == HW_MARK_READ;
            read += is_read;
            memory += fact->mark == HW_MARK_MEMORY;
            ck_assert_str_eq(fact->value, is_read ? "2 years, 4 years" : "6 months, 12 years");
            ck_assert_str_eq(fact->source, is_read ? "L1" : "M1");
        }
    }
    ck_assert_int_eq(read, 1);
    ck_assert_int_eq(memory, 1);
    planned_close(&t);
}
END_TEST

/* The list of sources that comes with the data. */
static const char *sources(char *room, size_t size)
{
    const char *srcdir = getenv("srcdir");
    char path[400];
    (void)snprintf(path, sizeof path, "%s/data/SOURCES.md", srcdir == NULL ? "." : srcdir);
    FILE *file = fopen(path, "rb");
    ck_assert_ptr_nonnull(file);
    size_t len = fread(room, 1, size - 1, file);
    room[len] = '\0';
    ck_assert_int_eq(fclose(file), 0);
    return room;
}

/* Every key that a fact names stands in the list; every fact says what and how much. */
START_TEST(sources_stand_in_the_list)
{
    static const char *const demos[] = { "meadow-dress", "harbour-purse", "starter" };
    static planned t;
    static char room[1 << 16];
    const char *list = sources(room, sizeof room);
    planned_open(&t, &(loading){ .demo = demos[_i] });
    int named = 0;
    for (int i = 0; i < t.plan.basis_count; i++) {
        const hw_basis *fact = &t.plan.basis[i];
        ck_assert(fact->what[0] != '\0' && fact->value[0] != '\0');
        ck_assert_ptr_nonnull(fact->rule);
        ck_assert_int_lt(fact->mark, HW_MARK_COUNT);
        for (const char *key = fact->source; *key != '\0';) {
            size_t len = strcspn(key, ", ");
            char cell[32];
            (void)snprintf(cell, sizeof cell, "\n| %.*s |", (int)len, key);
            ck_assert_msg(strstr(list, cell) != NULL, "%s: no source %s", fact->what, key);
            named++;
            key += len + strspn(key + len, ", ");
        }
    }
    ck_assert_int_gt(named, 4);
    planned_close(&t);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("basis");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, facts_by_hand, 0, (int)(sizeof rows / sizeof rows[0]));
    tcase_add_test(all, body_by_marks);
    tcase_add_loop_test(all, sources_stand_in_the_list, 0, 3);
    suite_add_tcase(suite, all);
    return hw_check_run(suite);
}
