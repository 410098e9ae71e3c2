/* Body and finished measurements of every size of a project.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_MEASURING_H
#define HW_CORE_MEASURING_H

#include "core/project.h"

/*
 * Complete the measurements of a project.
 *
 * Given:     project   its garment and table are read
 *            arena     owner of what is made
 * Returned:  body      the project's own rows first, then those of the table that rules use, ages
 *                      too; none missing
 *            finished  those given, and one for each rule of the garment; none missing
 *            both untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING; HW_ERR_RANGE; HW_ERR_UNKNOWN; HW_ERR_LIMIT; HW_ERR_NOMEM
 */
hw_status hw_measuring_make(const hw_project *project, hw_arena *arena, hw_sizes *body,
    hw_sizes *finished, hw_err *err) HW_MUST_USE;

/*
 * The line of the project on which a width rests: of a measurement or ease that it gives.
 *
 * Given:     project, body, finished  as hw_measuring_make left them
 *            rule      of the width
 * Returned:  the first that is found, term by term; 0 where the project gives none of them
 */
int hw_measuring_line(
    const hw_project *project, const hw_sizes *body, const hw_sizes *finished, const hw_rule *rule);

#endif
