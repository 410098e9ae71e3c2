/* From a project's text to its plan.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "planned.h"

#include <string.h>

#include "core/calculate.h"

void planned_begin(planned *p)
{
    memset(p, 0, sizeof *p);
    hw_check_open(&p->arena, &p->heap, 0, false);
}

hw_status planned_try(planned *p, const loading *from, hw_err *err)
{
    hw_status status = loading_read(from, &p->arena, &p->project, err);
    return status == HW_OK ? hw_calculate_plan(&p->project, &p->arena, &p->plan, err) : status;
}

void planned_open(planned *p, const loading *from)
{
    hw_err err = { 0 };
    planned_begin(p);
    hw_status status = planned_try(p, from, &err);
    ck_assert_msg(status == HW_OK, "line %d: %s", err.line, err.text);
}

void planned_close(planned *p)
{
    hw_check_close(&p->arena, &p->heap);
}

int planned_notes(const hw_plan *plan, const char *words, const char *also, const char **text)
{
    int count = 0;
    for (int i = 0; i < plan->note_count; i++) {
        const char *note = plan->notes[i].text;
        if (strstr(note, words) != NULL && (also == NULL || strstr(note, also) != NULL)) {
            count++;
            if (text != NULL) {
                *text = note;
            }
        }
    }
    return count;
}
