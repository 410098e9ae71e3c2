/* The commands that answer from plain words: spread, gauge, list, keys.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_TELL_H
#define HW_SHELL_TELL_H

#include "shell/opts.h"

/*
 * Each: Given opts of that command, arena for working room; Returned buf, the answer appended;
 * Result HW_OK; HW_ERR_USAGE (a word that cannot be read, with the way out); what reading and the
 * calculation itself can say.
 */
hw_status hw_tell_spread(
    const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;
hw_status hw_tell_gauge(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;
hw_status hw_tell_list(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;
hw_status hw_tell_keys(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
