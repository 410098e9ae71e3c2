/* `hemwright compare`: which gap, ease or motif suits a whole size range best.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_COMPARE_H
#define HW_SHELL_COMPARE_H

#include "shell/opts.h"

/*
 * Read a project and a folder of motifs, and append the ranked table to buf.
 *
 * Given:     opts      of that command
 *            arena     the run's
 *            buf       initialised
 * Result:    HW_OK; what reading and hw_calculate_plan can say; HW_ERR_USAGE
 */
hw_status hw_compare_run(
    const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
