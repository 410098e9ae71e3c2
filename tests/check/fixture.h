/* What is open while a test runs, opened before each test of a suite and closed behind it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_FIXTURE_H
#define HW_TESTS_FIXTURE_H

#include "core/buf.h"
#include "support.h"

extern hw_arena arena;     /* a block for each request */
extern hw_check_heap heap; /* of all that is here; refuses nothing by itself */
extern hw_mem mem;         /* onto that heap */
extern hw_buf buf;         /* empty, of the usual limit */

/* Empty the buffer; what it held is given back. */
void fixture_empty(void);

/*
 * A case whose tests find all that open, to be filled with tests.
 *
 * Given:     suite     which the case is added to
 *            name      of the case
 *            setup     before each test, once the above is open; or NULL
 *            teardown  behind each test, before the above is closed; or NULL
 */
TCase *fixture_case(Suite *suite, const char *name, void (*setup)(void), void (*teardown)(void));

/*
 * Run tests that all find it open. Each must give back what it takes from the heap.
 *
 * Given:     name, setup, teardown  as above
 *            tests     so many
 * Returned:  what main returns
 */
int fixture_run(const char *name, void (*setup)(void), void (*teardown)(void),
    const TTest *const *tests, size_t count);

#endif
