/* The calculators for use beside the machine: one line in, a few lines out.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_QUICK_H
#define HW_SHELL_QUICK_H

#include "shell/opts.h"

/*
 * Each: Given opts of that command, arena for working room; Returned buf, the answer appended;
 * Result HW_OK; HW_ERR_USAGE (an option missing or not a number, with the way out); what the
 * calculation itself can say.
 */
hw_status hw_quick_stitches(
    const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;
hw_status hw_quick_hem(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
