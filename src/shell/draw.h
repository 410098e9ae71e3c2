/* The commands that draw: a project's pieces, bands and card, and a garment file by itself.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_DRAW_H
#define HW_SHELL_DRAW_H

#include "shell/opts.h"

/* Each: Given the command's options, arena for the run; Returned buf, what is printed; Result
 * HW_OK or any failure, with a message. Files are written whole, and none that is there already
 * unless it was asked for. */

/* `draw FILE`: the pieces of a size, and for each band its fabric, its chart and its card. */
hw_status hw_draw_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

/* `garment NAME`: check a garment file in every size of a table; draw one of them. */
hw_status hw_draw_garment(
    const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
