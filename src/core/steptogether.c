/* Which steps belong into one sentence.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/steptogether.h"

static bool is_group(const hw_shape_step *step)
{
    return step->kind == HW_STEP_BIND_OFF || step->kind == HW_STEP_CAST_ON;
}

static bool is_single(const hw_shape_step *step)
{
    return step->kind == HW_STEP_DECREASE || step->kind == HW_STEP_INCREASE;
}

bool hw_step_pairs(const hw_shape_step *first, const hw_shape_step *later)
{
    bool across = (first->place == HW_AT_LEFT && later->place == HW_AT_RIGHT) ||
                  (first->place == HW_AT_RIGHT && later->place == HW_AT_LEFT);
    return is_group(first) && first->kind == later->kind && across && first->sts == later->sts &&
           first->times == later->times && first->every == later->every &&
           later->row == first->row + 1;
}

bool hw_step_weaves(const hw_shape_step *first, const hw_shape_step *later)
{
    return is_single(first) && first->kind == later->kind && first->place == later->place &&
           first->sts == later->sts && later->row > first->row &&
           later->row < first->row + (first->times - 1) * first->every;
}

bool hw_step_joins(const hw_shape_step *first, const hw_shape_step *later)
{
    return hw_step_pairs(first, later) || hw_step_weaves(first, later);
}
