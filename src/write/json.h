/* A plan as JSON: every result by name, and the tables as the workbook holds them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_JSON_H
#define HW_WRITE_JSON_H

#include "core/buf.h"
#include "core/plan.h"
#include "write/cells.h"

enum { HW_JSON_VERSION = 1 };

/*
 * Write a plan as data/plan.schema.json describes it.
 *
 * Given:     plan      from hw_calculate_plan
 *            tables    from hw_cells_plan of the same plan
 *            arena     working room
 *            buf       initialised; the text is appended, with a line's end behind it
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_LIMIT
 * Note:      keys stand in the order of the schema; lengths are in cm and not rounded, with as many
 *            digits as it takes to read the same number again
 */
hw_status hw_json_plan(
    const hw_plan *plan, const hw_tables *tables, hw_arena *arena, hw_buf *buf) HW_MUST_USE;

#endif
