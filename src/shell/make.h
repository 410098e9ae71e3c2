/* The main job: a project file worked out, its documents written.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_MAKE_H
#define HW_SHELL_MAKE_H

#include "shell/opts.h"

/*
 * `hemwright plan`: read, calculate, write, and append to buf what is printed.
 *
 * Given:     opts      of that command
 *            arena     the run's
 *            buf       initialised
 * Result:    HW_OK; what reading, hw_calculate_plan and writing can say; HW_ERR_USAGE (a word of
 * --only or --show); HW_ERR_IO (also where a file is there already and --replace is not given)
 */
hw_status hw_make_plan(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

/* `hemwright new`: write a project to start from. Result as above. */
hw_status hw_make_new(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
