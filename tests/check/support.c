/* What the suites share.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#include <gsl/gsl_errno.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void *grab(void *context, size_t size)
{
    hw_check_heap *heap = context;
    heap->grabs++;
    bool refused =
        heap->refuse_at > 0 &&
        (heap->grabs == heap->refuse_at || (heap->refuse_onwards && heap->grabs > heap->refuse_at));
    void *block = refused ? NULL : malloc(size);
    heap->live += block != NULL ? 1 : 0;
    return block;
}

static void drop(void *context, void *block)
{
    hw_check_heap *heap = context;
    heap->live -= block != NULL ? 1 : 0;
    free(block);
}

hw_mem hw_check_mem(hw_check_heap *heap)
{
    return (hw_mem){ .grab = grab, .drop = drop, .context = heap };
}

void hw_check_open(hw_arena *arena, hw_check_heap *heap, long refuse_at, bool onwards)
{
    *heap = (hw_check_heap){ .refuse_at = refuse_at, .refuse_onwards = onwards };
    hw_mem mem = hw_check_mem(heap);
    hw_arena_init(arena, &mem, 0);
}

void hw_check_close(hw_arena *arena, const hw_check_heap *heap)
{
    hw_arena_release(arena);
    ck_assert_int_eq(heap->live, 0);
}

long hw_check_refusals(hw_status (*once)(hw_arena *arena), bool onwards)
{
    hw_status status = HW_ERR_NOMEM;
    long times = 0;
    while (status != HW_OK) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, ++times, onwards);
        status = once(&arena);
        ck_assert(status == HW_OK || status == HW_ERR_NOMEM);
        ck_assert_int_eq(status == HW_ERR_NOMEM, heap.grabs >= times);
        hw_check_close(&arena, &heap);
    }
    return times;
}

Suite *hw_check_suite(const char *name, const TTest *const *tests, size_t count)
{
    Suite *suite = suite_create(name);
    TCase *tcase = tcase_create(name);
    tcase_set_timeout(tcase, 60); /* sanitizers on a busy machine */
    for (size_t i = 0; i < count; i++) {
        tcase_add_test(tcase, tests[i]);
    }
    suite_add_tcase(suite, tcase);
    return suite;
}

int hw_check_random(unsigned *state, int below)
{
    /* A linear congruence of period 2^32 (constants from memory); its high bits are the good ones.
     */
    uint32_t next = (uint32_t)*state * 1664525u + 1013904223u;
    *state = next;
    return (int)((uint64_t)next * (uint64_t)below >> 32);
}

bool hw_check_says(const hw_err *err, hw_status code, const char *words)
{
    bool said = err->code == code && strstr(err->text, words) != NULL;
    if (!said) {
        (void)fprintf(stderr, "code %d, text \"%s\"\n", (int)err->code, err->text);
    }
    return said;
}

int hw_check_run(Suite *suite)
{
    gsl_set_error_handler_off();
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int ran = srunner_ntests_run(runner);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    if (ran == 0) {
        (void)fputs("no check ran\n", stderr);
    }
    return ran == 0 || failed > 0 ? 1 : 0;
}
