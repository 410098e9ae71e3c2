/* From a project's text to its plan, in a heap of its own; and what its notes say.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_PLANNED_H
#define HW_TESTS_PLANNED_H

#include "core/plan.h"
#include "loading.h"
#include "support.h"

typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    hw_project project;
    hw_plan plan;
} planned;

/* Open the heap, and nothing more. To be closed by planned_close. */
void planned_begin(planned *p);

/* Once it is open, read a project and work it out as far as it goes: what that says. */
hw_status planned_try(planned *p, const loading *from, hw_err *err);

/* All of this; a failure ends the test. To be closed by planned_close. */
void planned_open(planned *p, const loading *from);

/* Give all back, and check that no block is left. */
void planned_close(planned *p);

/* How many notes hold these words, and these too (NULL: any); the last of them into text, which
 * may be NULL and stays where there is none. */
int planned_notes(const hw_plan *plan, const char *words, const char *also, const char **text);

#endif
