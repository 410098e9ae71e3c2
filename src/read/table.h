/* Sizes and measurements: the rows of a project, and a size table file.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_TABLE_H
#define HW_READ_TABLE_H

#include "core/sizes.h"
#include "read/yaml.h"

/*
 * Names and ages of the sizes, with room for measurements.
 *
 * Given:     node      checked mapping with `names` and perhaps `ages`
 *            arena     owner of all that out points to
 * Returned:  out       no measurement yet; untouched on failure
 * Result:    HW_OK; HW_ERR_LIMIT (above HW_MAX_SIZES), HW_ERR_REPEATED (a name), HW_ERR_RANGE (ages
 *            of another number than names), each with line and column; HW_ERR_NOMEM
 */
hw_status hw_table_names(
    const hw_node *node, hw_arena *arena, hw_sizes *out, hw_err *err) HW_MUST_USE;

/*
 * Rows of measurements as a project gives them, one value for each size.
 *
 * Given:     node      checked mapping of lists of lengths, or NULL for none
 *            sizes     names are set
 * Returned:  sizes     a measurement more for each row, marked given
 * Result:    HW_OK; HW_ERR_RANGE (another number of values than sizes), HW_ERR_LIMIT, with line and
 *            column; HW_ERR_NOMEM
 */
hw_status hw_table_rows(
    const hw_node *node, hw_sizes *sizes, hw_arena *arena, hw_err *err) HW_MUST_USE;

/*
 * Read a size table file.
 *
 * Given:     text      len bytes
 *            arena     owner of all that out points to
 * Returned:  out       every value with its mark and source; untouched on failure
 * Result:    HW_OK; what hw_yaml_read, hw_check_part and the two above can say; HW_ERR_UNKNOWN (a
 *            source that the file does not list)
 */
hw_status hw_table_read(
    const char *text, size_t len, hw_arena *arena, hw_sizes *out, hw_err *err) HW_MUST_USE;

#endif
