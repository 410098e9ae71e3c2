/* A tree checked against the key table: kinds, ranges, unknown and missing keys.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_CHECK_H
#define HW_READ_CHECK_H

#include "read/keys.h"
#include "read/yaml.h"

/*
 * Check a mapping and all below it against the table, and read its scalars.
 *
 * Given:     node      a mapping
 *            part      which part it is
 *            usual     unit of lengths without one
 * Returned:  each scalar node's `number` holds its value: a count, number, cm, a word's index, 1 or
 *            0 for yes or no; its `percent` and `between` are set where they apply
 * Result:    HW_OK; HW_ERR_UNKNOWN, HW_ERR_REPEATED, HW_ERR_MISSING, HW_ERR_KIND, HW_ERR_RANGE,
 *            HW_ERR_SYNTAX, HW_ERR_LIMIT, each with line and column and a way out
 */
hw_status hw_check_part(hw_node *node, hw_part part, hw_unit usual, hw_err *err) HW_MUST_USE;

/*
 * Read a whole file as a tree and check it; its `units` line is the unit of bare lengths.
 *
 * Given:     task      the text and which file it is
 *            arena     owner of the tree
 * Returned:  out       the checked tree; untouched on failure
 * Result:    what hw_yaml_read and hw_check_part can say
 */
typedef struct {
    const char *text;
    size_t len;
    hw_part part;
} hw_check_task;
hw_status hw_check_file(
    const hw_check_task *task, hw_arena *arena, hw_node **out, hw_err *err) HW_MUST_USE;

/* The unit of bare lengths in a file: inches after `units: in`, else centimetres. */
hw_unit hw_check_usual_unit(const hw_node *root);

#endif
