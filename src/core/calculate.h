/* The whole calculation: a project in, its plan out.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_CALCULATE_H
#define HW_CORE_CALCULATE_H

#include "core/plan.h"

/*
 * Calculate everything.
 *
 * Given:     project   read, its references filled in; must outlive the plan
 *            arena     owner of all that the plan points to
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING; HW_ERR_RANGE; HW_ERR_UNKNOWN; HW_ERR_NOFIT; HW_ERR_LIMIT;
 *            HW_ERR_NOMEM
 */
hw_status hw_calculate_plan(
    const hw_project *project, hw_arena *arena, hw_plan *out, hw_err *err) HW_MUST_USE;

#endif
