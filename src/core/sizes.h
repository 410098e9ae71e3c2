/* Sizes and their measurements, and the values between two given ones.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_SIZES_H
#define HW_CORE_SIZES_H

#include "core/err.h"
#include "core/mem.h"

/* One measurement in every size. */
typedef struct {
    const char *name;
    double *values_cm;    /* [sizes]; meaningless where missing */
    bool *missing;        /* [sizes]; none after hw_measure_complete */
    hw_mark *marks;       /* [sizes] */
    const char **sources; /* [sizes]; key in data/SOURCES.md, or "" */
    int line;             /* where a file gives it; 0 where no file does */
} hw_measure;

typedef struct {
    const char *title; /* of a size table; "" for a project's own */
    int count;         /* sizes, [1, HW_MAX_SIZES] */
    const char **names;
    int *ages_months; /* [sizes]; -1 where unknown */
    hw_measure *measures;
    int measure_count;
    int line;
} hw_sizes;

/* The index of a measurement by name, or -1. */
int hw_sizes_find(const hw_sizes *sizes, const char *name);

/* The index of a size by name, or -1. */
int hw_sizes_find_size(const hw_sizes *sizes, const char *name);

/*
 * Room for one more measurement with all values missing.
 *
 * Given:     sizes     count is set; measures has room for HW_MAX_MEASURES
 *            name      lives as long as the arena
 * Returned:  the measurement; NULL when memory is refused or there are HW_MAX_MEASURES already
 */
hw_measure *hw_sizes_add(hw_sizes *sizes, const char *name, hw_arena *arena) HW_MUST_USE;

/*
 * Fill missing values between given ones by a monotone spline over the list of sizes.
 *
 * Given:     measure   count values, some missing
 *            count     sizes, [1, HW_MAX_SIZES]
 *            arena     working room
 * Returned:  measure   none missing, the given values as they were; untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (the first or last value: nothing is extrapolated);
 *            HW_ERR_NOMEM; HW_ERR_INTERNAL
 * Note:      GSL's Steffen spline; a straight line where only two values are given; each filled
 *            value is marked HW_MARK_INTERPOLATED, or weaker where a neighbour is, and has the
 *            source ""
 */
hw_status hw_measure_complete(
    hw_measure *measure, int count, hw_arena *arena, hw_err *err) HW_MUST_USE;

#endif
