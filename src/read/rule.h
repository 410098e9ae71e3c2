/* Sums of measurements, such as `1.3 x finished chest + 2 cm`.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_RULE_H
#define HW_READ_RULE_H

#include "core/garment.h"
#include "read/yaml.h"

/*
 * Read a sum: terms parted by ` + ` or ` - `, each a length, a name, or a factor x name.
 *
 * Given:     node      a word
 *            usual     unit of a length without one
 *            finished  true where every name means a finished measurement; else only a name behind
 *                      the word `finished` does
 *            arena     owner of the names
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_SYNTAX, HW_ERR_LIMIT, with line and column; HW_ERR_NOMEM
 */
typedef struct {
    hw_unit usual;
    bool finished;
} hw_rule_reading;
hw_status hw_rule_read(const hw_node *node, hw_rule_reading how, hw_arena *arena, hw_rule *out,
    hw_err *err) HW_MUST_USE;

#endif
