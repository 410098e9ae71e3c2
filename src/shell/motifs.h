/* The command that looks at a motif, changes it as its options say, and saves what it becomes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_MOTIFS_H
#define HW_SHELL_MOTIFS_H

#include "shell/opts.h"

/*
 * Draw a motif, changed as the options say and in their fixed order, and tell about it.
 *
 * Given:     opts      of that command
 *            arena     for working room
 * Returned:  buf       the drawing and the facts appended; a file where --save names one
 * Result:    HW_OK; HW_ERR_USAGE; HW_ERR_IO (also where the file is there already); what reading
 *            and the changes themselves can say
 * Note:      the order is that of `changes` in motifs.c, and of the manual
 */
hw_status hw_motifs_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
