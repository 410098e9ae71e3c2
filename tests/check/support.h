/* What the suites share: the run, memory that counts and refuses, numbers by chance.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CHECK_SUPPORT_H
#define HW_CHECK_SUPPORT_H

#include <check.h>

#include "core/err.h"
#include "core/mem.h"

/* A heap that counts its blocks and can refuse. Zeroed, it refuses nothing. */
typedef struct {
    long live;           /* blocks handed out and not given back */
    long grabs;          /* requests so far, refused ones too */
    long refuse_at;      /* the request to refuse, counted from 1; 0: none */
    bool refuse_onwards; /* and all requests after that one */
} hw_check_heap;

/* Hooks onto a heap, which must outlive them. */
hw_mem hw_check_mem(hw_check_heap *heap);

/* An arena on a fresh heap, a block for each request, so that a sanitizer sees an overrun. The
 * n-th request is refused (from then on, or once); 0: none is. */
void hw_check_open(hw_arena *arena, hw_check_heap *heap, long refuse_at, bool onwards);

/* Release the arena and check that no block is left. */
void hw_check_close(hw_arena *arena, const hw_check_heap *heap);

/* A suite with one case of all these tests. */
Suite *hw_check_suite(const char *name, const TTest *const *tests, size_t count);

/*
 * Do something again and again, each time with one more request granted, until it succeeds.
 *
 * Given:     once      does it, checks that what failed left no trace, and returns what came of it
 *            onwards   all requests behind the refused one are refused too
 * Returned:  how often it was done: one more than requests were refused
 * Note:      another failure than HW_ERR_NOMEM, or a block that is left, ends the test
 */
long hw_check_refusals(hw_status (*once)(hw_arena *arena), bool onwards);

/* A number in [0, below), the same in every run; state starts as any number. */
int hw_check_random(unsigned *state, int below);

/* Whether an error's code is this one and its text holds these words. */
bool hw_check_says(const hw_err *err, hw_status code, const char *words);

/*
 * Run a suite: GSL's own error handler off, each test in a process of its own.
 *
 * Given:     suite     freed here
 * Returned:  what main returns: 0 when at least one check ran and all passed, else 1
 */
int hw_check_run(Suite *suite);

#endif
