/* Sizes: names, room, and values between two given ones.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_spline.h>
#include <string.h>

#include "core/sizes.h"
#include "support.h"

/* The linker sends these two calls of the library here (-Wl,--wrap=gsl_spline_alloc and
 * -Wl,--wrap=gsl_spline_init), so that a failure inside GSL can be tried. The names are the
 * linker's. */
gsl_spline *__real_gsl_spline_alloc(const gsl_interp_type *type, size_t size);
gsl_spline *__wrap_gsl_spline_alloc(const gsl_interp_type *type, size_t size);

int __real_gsl_spline_init(gsl_spline *spline, const double *x, const double *y, size_t size);
int __wrap_gsl_spline_init(gsl_spline *spline, const double *x, const double *y, size_t size);

static bool refuse_spline = false;
static bool fail_spline = false;

gsl_spline *__wrap_gsl_spline_alloc(const gsl_interp_type *type, size_t size)
{
    return refuse_spline ? NULL : __real_gsl_spline_alloc(type, size);
}

int __wrap_gsl_spline_init(gsl_spline *spline, const double *x, const double *y, size_t size)
{
    return fail_spline ? GSL_EFAILED : __real_gsl_spline_init(spline, x, y, size);
}

enum { MOST = HW_MAX_SIZES };

/* A measurement on the stack. */
typedef struct {
    double values_cm[MOST];
    bool missing[MOST];
    hw_mark marks[MOST];
    const char *sources[MOST];
} row;

/* Values, 0 for a missing one. */
static hw_measure measure_from(row *room, const double *values_cm, int count)
{
    for (int i = 0; i < count; i++) {
        room->missing[i] = !(values_cm[i] > 0);
        room->values_cm[i] = room->missing[i] ? -99 : values_cm[i];
        room->marks[i] = HW_MARK_GIVEN;
        room->sources[i] = room->missing[i] ? "none" : "S";
    }
    return (hw_measure){ .name = "chest",
        .values_cm = room->values_cm,
        .missing = room->missing,
        .marks = room->marks,
        .sources = room->sources,
        .line = 14 };
}

static hw_status completed(hw_measure *measure, int count, hw_err *err)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_status status = hw_measure_complete(measure, count, &arena, err);
    hw_check_close(&arena, &heap);
    return status;
}

/* By hand, from the method's formulas (Steffen's, from memory): 50, 53, ?, 63 at 0, 1, 2, 3 has
 * slopes 3 and 5 over 1 and 2 sizes; at the middle value 2 min(3, 5, (3*2 + 5*1)/3/2) = 11/3, at
 * the last 5; the cubic between them is -1/3 + 4/3 + 11/3 above 53 after one size. */
START_TEST(between_by_hand)
{
    static const double values_cm[] = { 50, 53, 0, 63 };
    row room;
    hw_measure measure = measure_from(&room, values_cm, 4);
    ck_assert_int_eq(completed(&measure, 4, NULL), HW_OK);
    ck_assert_double_eq_tol(measure.values_cm[2], 53 + 14.0 / 3, 1e-12);
    ck_assert(!measure.missing[2]);
    ck_assert_int_eq(measure.marks[2], HW_MARK_INTERPOLATED);
    ck_assert_str_eq(measure.sources[2], "");
    ck_assert_int_eq(measure.marks[1], HW_MARK_GIVEN);
    ck_assert_str_eq(measure.sources[1], "S");
}
END_TEST

/* By hand: a straight line between two values, and along a straight row of values. */
START_TEST(straight)
{
    static const double two_cm[] = { 50, 0, 0, 0, 60 };
    static const double three_cm[] = { 50, 0, 55, 0, 60 };
    static const double *const rows[] = { two_cm, three_cm };
    for (size_t i = 0; i < 2; i++) {
        row room;
        hw_measure measure = measure_from(&room, rows[i], 5);
        ck_assert_int_eq(completed(&measure, 5, NULL), HW_OK);
        for (int size = 0; size < 5; size++) {
            ck_assert_double_eq_tol(measure.values_cm[size], 50 + 2.5 * size, 1e-12);
        }
    }
}
END_TEST

/* The method's promise, over rows by chance: given values stay as they were, and each filled one
 * lies between its given neighbours, so sizes that rise go on rising. */
START_TEST(never_beyond_neighbours)
{
    unsigned state = 5;
    for (int round = 0; round < 2000; round++) {
        int count = 2 + hw_check_random(&state, MOST - 1);
        double values_cm[MOST] = { 0 };
        for (int i = 0; i < count; i++) {
            bool given = i == 0 || i == count - 1 || hw_check_random(&state, 3) == 0;
            values_cm[i] = given ? 1 + hw_check_random(&state, 900) / 10.0 : 0;
        }
        row room;
        hw_measure measure = measure_from(&room, values_cm, count);
        ck_assert_int_eq(completed(&measure, count, NULL), HW_OK);
        int before = 0;
        for (int i = 0; i < count; i++) {
            int after = i;
            while (!(values_cm[after] > 0)) {
                after++;
            }
            before = after == i ? i : before;
            double low_cm =
                values_cm[before] < values_cm[after] ? values_cm[before] : values_cm[after];
            double high_cm = values_cm[before] + values_cm[after] - low_cm;
            double slack_cm = before == after ? 0 : 1e-9;
            ck_assert(measure.values_cm[i] >= low_cm - slack_cm);
            ck_assert(measure.values_cm[i] <= high_cm + slack_cm);
            ck_assert(!measure.missing[i]);
        }
    }
}
END_TEST

/* From the header: interpolated, or weaker where a neighbour is; a better neighbour lifts nothing.
 */
START_TEST(marks)
{
    static const double values_cm[] = { 50, 0, 54, 0, 58, 0, 0, 62 };
    row room;
    hw_measure measure = measure_from(&room, values_cm, 8);
    measure.marks[4] = HW_MARK_MEMORY;
    measure.marks[7] = HW_MARK_ASSUMED;
    ck_assert_int_eq(completed(&measure, 8, NULL), HW_OK);
    static const hw_mark want[] = { HW_MARK_GIVEN, HW_MARK_INTERPOLATED, HW_MARK_GIVEN,
        HW_MARK_MEMORY, HW_MARK_MEMORY, HW_MARK_MEMORY, HW_MARK_MEMORY, HW_MARK_ASSUMED };
    for (int i = 0; i < 8; i++) {
        ck_assert_int_eq(measure.marks[i], want[i]);
    }
}
END_TEST

START_TEST(ends_are_needed)
{
    static const struct {
        double values_cm[3];
        int count;
        const char *words;
    } rows[] = {
        { { 0, 50, 60 }, 3, "`chest` has no value in the first size: give one there" },
        { { 50, 60, 0 }, 3, "`chest` has no value in the last size: give one there" },
        { { 0, 0, 0 }, 3, "first size" },
        { { 0 }, 1, "first size" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        row room;
        hw_measure measure = measure_from(&room, rows[i].values_cm, rows[i].count);
        row before = room;
        hw_err err = { 0 };
        ck_assert_int_eq(completed(&measure, rows[i].count, &err), HW_ERR_MISSING);
        ck_assert(hw_check_says(&err, HW_ERR_MISSING, rows[i].words));
        ck_assert_int_eq(err.line, 14);
        for (int size = 0; size < rows[i].count; size++) {
            ck_assert_int_eq(room.missing[size], before.missing[size]);
        }
    }
    /* nothing missing: nothing asked for, nothing changed */
    static const double one_cm[] = { 50 };
    row room;
    hw_measure measure = measure_from(&room, one_cm, 1);
    ck_assert_int_eq(completed(&measure, 1, NULL), HW_OK);
}
END_TEST

START_TEST(failures_between)
{
    static const double values_cm[] = { 50, 0, 54, 60 };
    hw_status status = HW_ERR_NOMEM;
    long refused = 0;
    while (status == HW_ERR_NOMEM && refused < 50) {
        row room;
        hw_measure measure = measure_from(&room, values_cm, 4);
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, ++refused, false);
        hw_err err = { 0 };
        status = hw_measure_complete(&measure, 4, &arena, &err);
        ck_assert_int_eq(err.code, status);
        ck_assert_int_eq(room.missing[1], status != HW_OK);
        hw_check_close(&arena, &heap);
    }
    ck_assert_int_eq(status, HW_OK);
    ck_assert_int_eq(refused, 3); /* places and values; the third request never came */
    row room;
    hw_measure measure = measure_from(&room, values_cm, 4);
    hw_err err = { 0 };
    refuse_spline = true;
    ck_assert_int_eq(completed(&measure, 4, &err), HW_ERR_NOMEM);
    ck_assert_int_eq(err.code, HW_ERR_NOMEM);
    ck_assert(room.missing[1]);
    ck_assert_double_eq_tol(room.values_cm[1], -99, 1e-12);
    refuse_spline = false;
    fail_spline = true;
    err = (hw_err){ 0 };
    ck_assert_int_eq(completed(&measure, 4, &err), HW_ERR_INTERNAL);
    ck_assert(hw_check_says(&err, HW_ERR_INTERNAL, "`chest` could not be filled in"));
    ck_assert(room.missing[1]);
}
END_TEST

START_TEST(finding_and_adding)
{
    const char *names[] = { "92", "98", "104" };
    hw_measure measures[HW_MAX_MEASURES];
    hw_sizes sizes = { .title = "", .count = 3, .names = names, .measures = measures };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    static const char *const words[] = { "hem", "chest" };
    for (int i = 0; i < HW_MAX_MEASURES; i++) {
        hw_measure *added = hw_sizes_add(&sizes, i < 2 ? words[i] : "more", &arena);
        ck_assert_ptr_eq(added, &measures[i]);
        ck_assert_int_eq(sizes.measure_count, i + 1);
        for (int size = 0; size < 3; size++) {
            ck_assert(added->missing[size]);
            ck_assert_str_eq(added->sources[size], "");
        }
    }
    ck_assert_ptr_null(hw_sizes_add(&sizes, "one too many", &arena));
    ck_assert_int_eq(sizes.measure_count, HW_MAX_MEASURES);
    ck_assert_int_eq(hw_sizes_find(&sizes, "hem"), 0);
    ck_assert_int_eq(hw_sizes_find(&sizes, "chest"), 1);
    ck_assert_int_eq(hw_sizes_find(&sizes, "more"), 2);
    ck_assert_int_eq(hw_sizes_find(&sizes, "Chest"), -1);
    ck_assert_int_eq(hw_sizes_find_size(&sizes, "92"), 0);
    ck_assert_int_eq(hw_sizes_find_size(&sizes, "104"), 2);
    ck_assert_int_eq(hw_sizes_find_size(&sizes, "10"), -1);
    hw_check_close(&arena, &heap);
}
END_TEST

START_TEST(no_memory_to_add)
{
    hw_measure measures[HW_MAX_MEASURES];
    hw_measure *added = NULL;
    long refused = 0;
    while (added == NULL && refused < 50) {
        hw_sizes sizes = { .count = 3, .measures = measures };
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, ++refused, false);
        added = hw_sizes_add(&sizes, "hem", &arena);
        ck_assert_int_eq(sizes.measure_count, added != NULL);
        hw_check_close(&arena, &heap);
    }
    ck_assert_ptr_nonnull(added);
    ck_assert_int_eq(refused, 5); /* four arrays */
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { between_by_hand, straight, never_beyond_neighbours, marks,
        ends_are_needed, failures_between, finding_and_adding, no_memory_to_add };
    return hw_check_run(hw_check_suite("sizes", tests, sizeof tests / sizeof tests[0]));
}
