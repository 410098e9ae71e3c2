/* A worked example, and the core function that it is put to.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_CASE_CALLS_H
#define HW_TESTS_CASE_CALLS_H

#include "core/err.h"

enum { HW_CASE_LINES = 24, HW_CASE_TEXT = 160 };

/* `key = value` of a `given`, `expect` or `within` line. */
typedef struct {
    char key[HW_CASE_TEXT], value[HW_CASE_TEXT];
    int line;
    bool used;
} hw_case_line;

typedef struct {
    const char *name;
    double value;
} hw_case_result;

/* One example. The runner fills it down to `within`, the call the rest. */
typedef struct {
    char source[HW_CASE_TEXT * 4];
    char call[HW_CASE_TEXT];
    int line; /* of the call */
    hw_case_line given[HW_CASE_LINES], expect[HW_CASE_LINES], within[HW_CASE_LINES];
    int given_count, expect_count, within_count;

    hw_status status;
    hw_case_result results[HW_CASE_LINES];
    int result_count;
    const char *broken; /* a key of `given` that cannot be read or is not there; else NULL */
} hw_case;

/*
 * Put an example to the core function that its `call` names.
 *
 * Given:     example   read by the runner
 * Returned:  whether there is such a call
 */
bool hw_case_run(hw_case *example);

#endif
