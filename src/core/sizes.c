/* Sizes by name, and the values that lie between two given ones.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sizes.h"

#include <assert.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_spline.h>
#include <string.h>

int hw_sizes_find(const hw_sizes *sizes, const char *name)
{
    for (int i = 0; i < sizes->measure_count; i++) {
        if (strcmp(sizes->measures[i].name, name) == 0) {
            return i;
        }
    }
    return -1;
}

int hw_sizes_find_size(const hw_sizes *sizes, const char *name)
{
    for (int i = 0; i < sizes->count; i++) {
        if (strcmp(sizes->names[i], name) == 0) {
            return i;
        }
    }
    return -1;
}

hw_measure *hw_sizes_add(hw_sizes *sizes, const char *name, hw_arena *arena)
{
    if (sizes->measure_count >= HW_MAX_MEASURES) {
        return NULL;
    }
    size_t count = (size_t)sizes->count;
    hw_measure measure = {
        .name = name,
        .values_cm = hw_arena_get(arena, count, sizeof *measure.values_cm),
        .missing = hw_arena_get(arena, count, sizeof *measure.missing),
        .marks = hw_arena_get(arena, count, sizeof *measure.marks),
        .sources = hw_arena_get(arena, count, sizeof *measure.sources),
    };
    if (measure.values_cm == NULL || measure.missing == NULL || measure.marks == NULL ||
        measure.sources == NULL) {
        return NULL;
    }
    for (size_t i = 0; i < count; i++) {
        measure.missing[i] = true;
        measure.sources[i] = "";
    }
    hw_measure *room = &sizes->measures[sizes->measure_count++];
    *room = measure;
    return room;
}

/* The given values, each at the index of its size. */
typedef struct {
    double *at, *values_cm;
    size_t count;
} known;

static hw_status gather(const hw_measure *measure, int count, hw_arena *arena, known *out)
{
    known given = {
        .at = hw_arena_get(arena, (size_t)count, sizeof *given.at),
        .values_cm = hw_arena_get(arena, (size_t)count, sizeof *given.values_cm),
    };
    if (given.at == NULL || given.values_cm == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int i = 0; i < count; i++) {
        if (!measure->missing[i]) {
            given.at[given.count] = i;
            given.values_cm[given.count++] = measure->values_cm[i];
        }
    }
    *out = given;
    return HW_OK;
}

/* The only call through which GSL takes memory. */
static hw_status new_spline(const known *given, gsl_spline **out)
{
    bool bends = given->count >= gsl_interp_type_min_size(gsl_interp_steffen);
    gsl_spline *spline =
        gsl_spline_alloc(bends ? gsl_interp_steffen : gsl_interp_linear, given->count);
    if (spline == NULL) {
        return HW_ERR_NOMEM;
    }
    if (gsl_spline_init(spline, given->at, given->values_cm, given->count) != GSL_SUCCESS) {
        gsl_spline_free(spline);
        return HW_ERR_INTERNAL;
    }
    *out = spline;
    return HW_OK;
}

/* The weaker mark of the given values on both sides of a missing one. */
static hw_mark mark_between(const hw_measure *measure, int size)
{
    int before = size;
    int after = size;
    while (measure->missing[before]) {
        before--;
    }
    while (measure->missing[after]) {
        after++;
    }
    hw_mark weaker = hw_mark_weaker(measure->marks[before], measure->marks[after]);
    return hw_mark_weaker(weaker, HW_MARK_INTERPOLATED);
}

static hw_status fill(hw_measure *measure, int count, const gsl_spline *spline)
{
    double filled_cm[HW_MAX_SIZES] = { 0 };
    hw_mark marks[HW_MAX_SIZES] = { HW_MARK_GIVEN };
    for (int i = 0; i < count; i++) {
        if (!measure->missing[i]) {
            continue;
        }
        if (gsl_spline_eval_e(spline, i, NULL, &filled_cm[i]) != GSL_SUCCESS) {
            return HW_ERR_INTERNAL;
        }
        marks[i] = mark_between(measure, i);
    }
    for (int i = 0; i < count; i++) {
        if (measure->missing[i]) {
            measure->values_cm[i] = filled_cm[i];
            measure->marks[i] = marks[i];
            measure->sources[i] = "";
            measure->missing[i] = false;
        }
    }
    return HW_OK;
}

static hw_status check_ends(const hw_measure *measure, int count, hw_err *err)
{
    bool first = measure->missing[0];
    if (!first && !measure->missing[count - 1]) {
        return HW_OK;
    }
    hw_status status = hw_err_set(err, HW_ERR_MISSING,
        "`%s` has no value in the %s size: give one there; only values between two given sizes "
        "can be filled in",
        measure->name, first ? "first" : "last");
    return hw_err_place(err, status, measure->line, 0);
}

static bool complete(const hw_measure *measure, int count)
{
    for (int i = 0; i < count; i++) {
        if (measure->missing[i]) {
            return false;
        }
    }
    return true;
}

hw_status hw_measure_complete(hw_measure *measure, int count, hw_arena *arena, hw_err *err)
{
    assert(count > 0 && count <= HW_MAX_SIZES);
    if (complete(measure, count)) {
        return HW_OK;
    }
    known given = { 0 };
    gsl_spline *spline = NULL;
    hw_status status = check_ends(measure, count, err);
    if (status == HW_OK) {
        status = gather(measure, count, arena, &given);
    }
    if (status == HW_OK) {
        status = new_spline(&given, &spline);
    }
    if (status == HW_OK) {
        status = fill(measure, count, spline);
    }
    gsl_spline_free(spline); /* NULL is allowed */
    if (status != HW_OK) {
        return hw_err_set(err, status, "`%s` could not be filled in", measure->name);
    }
    return HW_OK;
}
