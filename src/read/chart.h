/* A drawn chart: a block of `o` and `.`, the top row first.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_CHART_H
#define HW_READ_CHART_H

#include "core/motif.h"
#include "read/yaml.h"

/*
 * Read a chart.
 *
 * Given:     node      a word
 *            name      what the motif is called; lives as long as the arena
 *            arena     owner of the cells
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_KIND (not behind `|`); HW_ERR_SYNTAX (other letters, ragged rows, an
 *            empty chart or row, no contrast at all); HW_ERR_LIMIT; each with line and column;
 *            HW_ERR_NOMEM
 */
hw_status hw_chart_read(
    const hw_node *node, const char *name, hw_arena *arena, hw_chart *out, hw_err *err) HW_MUST_USE;

#endif
