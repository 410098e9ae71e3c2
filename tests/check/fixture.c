/* What is open while a test runs.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "fixture.h"

hw_arena arena;
hw_check_heap heap;
hw_mem mem;
hw_buf buf;

static void open(void)
{
    hw_check_open(&arena, &heap, 0, false);
    mem = hw_check_mem(&heap);
    hw_buf_init(&buf, &mem, HW_BUF_LIMIT);
}

static void close(void)
{
    hw_buf_release(&buf);
    hw_check_close(&arena, &heap);
}

void fixture_empty(void)
{
    hw_buf_release(&buf);
    hw_buf_init(&buf, &mem, HW_BUF_LIMIT);
}

TCase *fixture_case(Suite *suite, const char *name, void (*setup)(void), void (*teardown)(void))
{
    TCase *tcase = tcase_create(name);
    tcase_set_timeout(tcase, 120); /* sanitizers on a busy machine */
    tcase_add_checked_fixture(tcase, open, close);
    tcase_add_checked_fixture(tcase, setup, teardown); /* torn down first: the last comes first */
    suite_add_tcase(suite, tcase);
    return tcase;
}

int fixture_run(const char *name, void (*setup)(void), void (*teardown)(void),
    const TTest *const *tests, size_t count)
{
    Suite *suite = suite_create(name);
    TCase *tcase = fixture_case(suite, name, setup, teardown);
    for (size_t i = 0; i < count; i++) {
        tcase_add_test(tcase, tests[i]);
    }
    return hw_check_run(suite);
}
