/* Garments: finished measurements from rules and ease, and what is said when one is missing.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/garment.h"
#include "core/units.h"
#include "support.h"

enum { SIZES = 2 };

/* Body and finished measurements of two sizes, all in one arena. */
typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    const char *names[SIZES];
    hw_measure rooms[2][HW_MAX_MEASURES];
    hw_sizes body, finished;
} wardrobe;

static void open_wardrobe(wardrobe *all)
{
    hw_check_open(&all->arena, &all->heap, 0, false);
    all->names[0] = "92";
    all->names[1] = "98";
    all->body = (hw_sizes){ .count = SIZES, .names = all->names, .measures = all->rooms[0] };
    all->finished = (hw_sizes){ .count = SIZES, .names = all->names, .measures = all->rooms[1] };
}

static void add(
    wardrobe *all, hw_sizes *sizes, const char *name, const double *values_cm, hw_mark mark)
{
    hw_measure *measure = hw_sizes_add(sizes, name, &all->arena);
    ck_assert_ptr_nonnull(measure);
    for (int i = 0; i < SIZES; i++) {
        measure->values_cm[i] = values_cm[i];
        measure->missing[i] = false;
        measure->marks[i] = mark;
        measure->sources[i] = "W1";
    }
}

static hw_status finish(wardrobe *all, const hw_finished *finished, int count, hw_err *err)
{
    hw_garment garment = { .title = "dress", .finished = finished, .finished_count = count };
    hw_garment_task task = { .garment = &garment, .body = &all->body };
    return hw_garment_finish(&task, &all->finished, &all->arena, err);
}

static void expect(const wardrobe *all, const char *name, double first_cm, double second_cm)
{
    int found = hw_sizes_find(&all->finished, name);
    ck_assert_int_ge(found, 0);
    const hw_measure *measure = &all->finished.measures[found];
    ck_assert(!measure->missing[0] && !measure->missing[1]);
    ck_assert_double_eq_tol(measure->values_cm[0], first_cm, 1e-10);
    ck_assert_double_eq_tol(measure->values_cm[1], second_cm, 1e-10);
}

static hw_mark mark_of(const wardrobe *all, const char *name)
{
    return all->finished.measures[hw_sizes_find(&all->finished, name)].marks[0];
}

static const char *source_of(const wardrobe *all, const char *name)
{
    return all->finished.measures[hw_sizes_find(&all->finished, name)].sources[0];
}

#define BODY(f, n)                                                                                 \
    {                                                                                              \
        .factor = (f), .name = (n)                                                                 \
    }
#define FINISHED(f, n)                                                                             \
    {                                                                                              \
        .factor = (f), .name = (n), .finished = true                                               \
    }

/* Z1: a chest of 21 in with 10 % is 23 in (23.1 rounded), with 15 % 24 (24.15);
 * https://klccreations.wordpress.com/2010/05/04/step-away-from-the-sweater/
 * Z2: a chest of 40 in with 2 to 4 in is 42 to 44 in;
 * https://www.knittingmagic.biz/patterns-7/factoring-in-ease.html */
START_TEST(published_ease)
{
    static const hw_finished finished[] = {
        { "ten", { .terms = { BODY(1, "chest") }, .count = 1 }, { .percent = 10 } },
        { "fifteen", { .terms = { BODY(1, "chest") }, .count = 1 }, { .percent = 15 } },
        { "two", { .terms = { BODY(1, "chest") }, .count = 1 }, { .cm = 2 * HW_CM_PER_INCH } },
        { "four", { .terms = { BODY(1, "chest") }, .count = 1 }, { .cm = 4 * HW_CM_PER_INCH } },
    };
    static const double chest_cm[] = { 21 * HW_CM_PER_INCH, 40 * HW_CM_PER_INCH };
    wardrobe all;
    open_wardrobe(&all);
    add(&all, &all.body, "chest", chest_cm, HW_MARK_READ);
    ck_assert_int_eq(finish(&all, finished, 4, NULL), HW_OK);
    expect(&all, "ten", 23.1 * HW_CM_PER_INCH, 44 * HW_CM_PER_INCH);
    expect(&all, "fifteen", 24.15 * HW_CM_PER_INCH, 46 * HW_CM_PER_INCH);
    expect(&all, "two", 23 * HW_CM_PER_INCH, 42 * HW_CM_PER_INCH);
    expect(&all, "four", 25 * HW_CM_PER_INCH, 44 * HW_CM_PER_INCH);
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

/* By hand: a rule may use the body, what was given, and what came before it; percent counts on the
 * whole sum, constant included; what was given stays, whatever its rule says. */
START_TEST(sums_by_hand)
{
    static const hw_finished finished[] = {
        { "hem",
            { .terms = { BODY(1.2, "hips"), BODY(-0.5, "waist") }, .count = 2, .constant_cm = 4 },
            { .percent = 50 } },
        { "neck", { .terms = { BODY(9, "hips") }, .count = 1 }, { .cm = 3 } },
        { "front", { .terms = { FINISHED(0.5, "hem"), FINISHED(2, "neck") }, .count = 2 },
            { .cm = 0 } },
        { "tab", { .constant_cm = 7 }, { .cm = 0 } },
    };
    static const double hips_cm[] = { 50, 60 };
    static const double waist_cm[] = { 48, 52 };
    static const double neck_cm[] = { 30, 31 };
    wardrobe all;
    open_wardrobe(&all);
    add(&all, &all.body, "hips", hips_cm, HW_MARK_READ);
    add(&all, &all.body, "waist", waist_cm, HW_MARK_MEMORY);
    add(&all, &all.finished, "neck", neck_cm, HW_MARK_GIVEN);
    ck_assert_int_eq(finish(&all, finished, 4, NULL), HW_OK);
    expect(&all, "hem", 1.5 * (60 - 24 + 4), 1.5 * (72 - 26 + 4));
    expect(&all, "neck", 30, 31);
    expect(&all, "front", 30 + 60, 37.5 + 62);
    expect(&all, "tab", 7, 7);
    ck_assert_int_eq(all.finished.measure_count, 4);
    /* marks: the weakest term's, at best derived */
    ck_assert_int_eq(mark_of(&all, "hem"), HW_MARK_MEMORY);
    ck_assert_int_eq(mark_of(&all, "neck"), HW_MARK_GIVEN);
    ck_assert_int_eq(mark_of(&all, "front"), HW_MARK_MEMORY);
    ck_assert_int_eq(mark_of(&all, "tab"), HW_MARK_DERIVED);
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

/* From the header: only a bare measurement keeps its mark and source. */
START_TEST(marks)
{
    static const hw_finished finished[] = {
        { "bare", { .terms = { BODY(1, "hips") }, .count = 1 }, { .cm = 0 } },
        { "longer", { .terms = { BODY(1, "hips") }, .count = 1, .constant_cm = 1 }, { .cm = 0 } },
        { "eased", { .terms = { BODY(1, "hips") }, .count = 1 }, { .cm = 1 } },
        { "wider", { .terms = { BODY(1, "hips") }, .count = 1 }, { .percent = 1 } },
        { "half", { .terms = { BODY(0.5, "hips") }, .count = 1 }, { .cm = 0 } },
        { "twice", { .terms = { BODY(1, "hips"), BODY(1, "hips") }, .count = 2 }, { .cm = 0 } },
    };
    static const double hips_cm[] = { 50, 60 };
    wardrobe all;
    open_wardrobe(&all);
    add(&all, &all.body, "hips", hips_cm, HW_MARK_READ);
    ck_assert_int_eq(finish(&all, finished, 6, NULL), HW_OK);
    for (int i = 0; i < 6; i++) {
        bool kept = i == 0;
        ck_assert_int_eq(mark_of(&all, finished[i].name), kept ? HW_MARK_READ : HW_MARK_DERIVED);
        ck_assert_str_eq(source_of(&all, finished[i].name), kept ? "W1" : "");
    }
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

/* By hand: the project's ease stands in for the garment's, of the other kind too. */
START_TEST(changed_ease)
{
    static const hw_finished finished[] = {
        { "hem", { .terms = { BODY(1, "hips") }, .count = 1 }, { .cm = 4 } },
        { "cuff", { .terms = { BODY(0.5, "hips") }, .count = 1 }, { .cm = 4 } },
    };
    static const double hips_cm[] = { 50, 60 };
    hw_ease_change changes[] = { { .name = "hem", .ease = { .percent = 20 }, .line = 5 },
        { .name = "sleeve", .ease = { .cm = 1 }, .line = 6 } };
    hw_garment garment = { .finished = finished, .finished_count = 2 };
    wardrobe all;
    open_wardrobe(&all);
    add(&all, &all.body, "hips", hips_cm, HW_MARK_READ);
    hw_garment_task task = {
        .garment = &garment, .body = &all.body, .changes = changes, .change_count = 2
    };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_garment_finish(&task, &all.finished, &all.arena, &err), HW_ERR_UNKNOWN);
    ck_assert(hw_check_says(&err, HW_ERR_UNKNOWN, "ease is set on `sleeve`"));
    ck_assert_int_eq(err.line, 6);
    ck_assert_int_eq(all.finished.measure_count, 0);
    hw_garment_task first = task;
    first.changes = &changes[1];
    first.change_count = 1;
    ck_assert_int_eq(hw_garment_finish(&first, &all.finished, &all.arena, NULL), HW_ERR_UNKNOWN);
    task.change_count = 1;
    ck_assert_int_eq(hw_garment_finish(&task, &all.finished, &all.arena, NULL), HW_OK);
    expect(&all, "hem", 60, 72);
    expect(&all, "cuff", 29, 34);
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

START_TEST(what_nothing_gives)
{
    static const struct {
        hw_finished finished;
        hw_status status;
        const char *words;
    } rows[] = {
        { { "hem", { .terms = { BODY(1, "hips") }, .count = 1 }, { .cm = 0 } }, HW_ERR_MISSING,
            "`hem` follows from the body's `hips`, which nothing gives: give `hem` under finished, "
            "or `hips` under body" },
        { { "hem", { .terms = { BODY(1, "waist"), FINISHED(1, "chest") }, .count = 2 },
              { .cm = 0 } },
            HW_ERR_MISSING,
            "`hem` follows from the finished `chest`, which nothing gives: give `chest` or `hem` "
            "under finished" },
        { { "hem", { .terms = { BODY(1, "waist") }, .count = 1 }, { .cm = -50 } }, HW_ERR_RANGE,
            "`hem` comes to -2.0 cm in size 92" },
        { { "hem", { .terms = { BODY(20, "waist") }, .count = 1 }, { .cm = 0 } }, HW_ERR_RANGE,
            "`hem` comes to 1040.0 cm in size 98" },
        { { "hem", { .terms = { BODY(1, "waist") }, .count = 1 }, { .percent = -100 } },
            HW_ERR_RANGE, "in size 92" },
    };
    static const double waist_cm[] = { 48, 52 };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        wardrobe all;
        open_wardrobe(&all);
        add(&all, &all.body, "waist", waist_cm, HW_MARK_READ);
        hw_finished both[] = {
            { "easy", { .terms = { BODY(1, "waist") }, .count = 1 }, { .cm = 0 } }, rows[i].finished
        };
        hw_err err = { 0 };
        ck_assert_int_eq(finish(&all, both, 2, &err), rows[i].status);
        ck_assert(hw_check_says(&err, rows[i].status, rows[i].words));
        ck_assert_int_eq(all.finished.measure_count, 0); /* not even the one that could be had */
        hw_check_close(&all.arena, &all.heap);
    }
}
END_TEST

/* By hand: of these words the other right ones are two letters or a turn away, or stand lower in
 * the file; each is told with the line of its rule, 7. */
START_TEST(what_was_meant)
{
    static const struct {
        hw_term term;
        const char *words;
    } rows[] = {
        { BODY(0.3, "wiast"), "`hem` follows from the body's `wiast`, which nothing gives; did you "
                              "mean `waist`?" },
        { BODY(0.3, "hieght"), "did you mean `height`?" },
        { FINISHED(1, "esy"), "`hem` follows from the finished `esy`, which nothing gives; did you "
                              "mean `finished easy`?" },
        { BODY(1, "easy"), "did you mean `finished easy`?" },
        { BODY(1, "easy finished"), "`easy finished`, which nothing gives; did you mean `finished "
                                    "easy`?" },
        { BODY(1, "head"), "`head`, which nothing gives: give `hem` under finished, or" },
        { FINISHED(1, "low"), "`low`, which stands further down; a rule uses only those above it: "
                              "write `low` above `hem`" },
        { FINISHED(1, "hem"), "`hem` cannot follow from itself" },
        { BODY(-1, "waist"), "`hem` comes to -48.0 cm in size 92: check its rule" },
    };
    static const double waist_cm[] = { 48, 52 };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        wardrobe all;
        open_wardrobe(&all);
        add(&all, &all.body, "waist", waist_cm, HW_MARK_READ);
        hw_measure of_table = { .name = "height" };
        hw_sizes table = { .measures = &of_table, .measure_count = 1 };
        hw_finished three[] = { { "easy", { .terms = { BODY(1, "waist") }, .count = 1 },
                                    { .cm = 0 } },
            { "hem", { .terms = { rows[i].term }, .count = 1, .line = 7 }, { .cm = 0 } },
            { "low", { .constant_cm = 3 }, { .cm = 0 } } };
        hw_garment garment = { .finished = three, .finished_count = 3 };
        hw_garment_task task = { .garment = &garment, .body = &all.body, .table = &table };
        hw_err err = { 0 };
        hw_status status = hw_garment_finish(&task, &all.finished, &all.arena, &err);
        ck_assert_int_ne(status, HW_OK);
        ck_assert_msg(hw_check_says(&err, status, rows[i].words), "%s", err.text);
        ck_assert_int_eq(err.line, 7);
        ck_assert(err.of_garment);
        hw_check_close(&all.arena, &all.heap);
    }
}
END_TEST

/* The longest that is accepted, HW_MAX_CM itself, from the header. */
START_TEST(longest)
{
    static const hw_finished finished = { "train", { .constant_cm = HW_MAX_CM }, { .cm = 0 } };
    wardrobe all;
    open_wardrobe(&all);
    ck_assert_int_eq(finish(&all, &finished, 1, NULL), HW_OK);
    expect(&all, "train", HW_MAX_CM, HW_MAX_CM);
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

START_TEST(one_too_many)
{
    static const double cm[] = { 40, 44 };
    static const hw_finished finished = { "hem", { .constant_cm = 50 }, { .cm = 0 } };
    wardrobe all;
    open_wardrobe(&all);
    for (int i = 0; i < HW_MAX_MEASURES; i++) {
        add(&all, &all.finished, "other", cm, HW_MARK_GIVEN);
    }
    hw_err err = { 0 };
    ck_assert_int_eq(finish(&all, &finished, 1, &err), HW_ERR_LIMIT);
    ck_assert(hw_check_says(&err, HW_ERR_LIMIT, "no room for `hem`"));
    ck_assert_int_eq(all.finished.measure_count, HW_MAX_MEASURES);
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

/* By hand: 0.5 x 80 + 2; the weakest mark; outputs untouched where a name is missing. */
START_TEST(rule_values)
{
    static const double hem_cm[] = { 80, 84 };
    static const double hips_cm[] = { 50, 60 };
    wardrobe all;
    open_wardrobe(&all);
    add(&all, &all.finished, "hem", hem_cm, HW_MARK_MEMORY);
    add(&all, &all.body, "hips", hips_cm, HW_MARK_READ);
    hw_rule rule = { .terms = { FINISHED(0.5, "hem") }, .count = 1, .constant_cm = 2 };
    hw_rule_place place = { .finished = &all.finished, .size = 1 };
    double value_cm = 0;
    hw_mark mark = HW_MARK_GIVEN;
    ck_assert_int_eq(hw_rule_value(&rule, &place, &value_cm, &mark, NULL), HW_OK);
    ck_assert_double_eq_tol(value_cm, 44, 1e-12);
    ck_assert_int_eq(mark, HW_MARK_MEMORY);
    ck_assert_int_eq(hw_rule_value(&rule, &place, &value_cm, NULL, NULL), HW_OK);
    hw_rule two = { .terms = { FINISHED(0.5, "hem"), BODY(1, "hips") }, .count = 2 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_rule_value(&two, &place, &value_cm, &mark, &err), HW_ERR_MISSING);
    ck_assert(hw_check_says(&err, HW_ERR_MISSING, "give `hips` under body"));
    ck_assert_double_eq_tol(value_cm, 44, 1e-12);
    place.body = &all.body;
    ck_assert_int_eq(hw_rule_value(&two, &place, &value_cm, &mark, NULL), HW_OK);
    ck_assert_double_eq_tol(value_cm, 102, 1e-12);
    all.finished.measures[0].missing[1] = true;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_rule_value(&two, &place, &value_cm, &mark, &err), HW_ERR_MISSING);
    ck_assert(hw_check_says(&err, HW_ERR_MISSING, "give `hem` under finished"));
    hw_check_close(&all.arena, &all.heap);
}
END_TEST

START_TEST(no_memory)
{
    static const hw_finished finished[] = {
        { "tab", { .constant_cm = 7 }, { .cm = 0 } },
        { "half", { .terms = { FINISHED(0.5, "tab") }, .count = 1 }, { .cm = 0 } },
    };
    hw_status status = HW_ERR_NOMEM;
    long refused = 0;
    while (status == HW_ERR_NOMEM && refused < 50) {
        wardrobe all;
        open_wardrobe(&all);
        all.heap.refuse_at = ++refused;
        hw_err err = { 0 };
        status = finish(&all, finished, 2, &err);
        ck_assert_int_eq(err.code, status);
        ck_assert_int_eq(all.finished.measure_count, status == HW_OK ? 2 : 0);
        hw_check_close(&all.arena, &all.heap);
    }
    ck_assert_int_eq(status, HW_OK);
    ck_assert_int_eq(refused, 9); /* four arrays for each of the two */
}
END_TEST

/* By hand: side seams of a front and a back, a third piece with free edges. */
START_TEST(seams)
{
    static const hw_seam both[] = {
        { .piece = { 0, 1 }, .side = { HW_RIGHT, HW_LEFT } },
        { .piece = { 1, 0 }, .side = { HW_RIGHT, HW_LEFT } },
    };
    hw_garment garment = { .seams = both, .seam_count = 2, .piece_count = 3 };
    ck_assert_int_eq(hw_garment_seam_at(&garment, 0, HW_RIGHT), 0);
    ck_assert_int_eq(hw_garment_seam_at(&garment, 1, HW_LEFT), 0);
    ck_assert_int_eq(hw_garment_seam_at(&garment, 1, HW_RIGHT), 1);
    ck_assert_int_eq(hw_garment_seam_at(&garment, 0, HW_LEFT), 1);
    ck_assert_int_eq(hw_garment_seam_at(&garment, 2, HW_LEFT), -1);
    ck_assert_int_eq(hw_garment_seam_at(&garment, 2, HW_RIGHT), -1);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { published_ease, sums_by_hand, marks, changed_ease,
        what_nothing_gives, what_was_meant, longest, one_too_many, rule_values, no_memory, seams };
    return hw_check_run(hw_check_suite("garment", tests, sizeof tests / sizeof tests[0]));
}
