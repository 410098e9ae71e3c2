/* The commands that draw: a project's pieces, bands and card, and a garment file by itself.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_DRAW_H
#define HW_SHELL_DRAW_H

#include "core/trimway.h"
#include "shell/docs.h"
#include "shell/opts.h"
#include "write/draw.h"

/* A4 less margins of 1 cm: own choice [V1]. */
extern const hw_draw_room hw_draw_paper;

/* A garment's trims in one size. */
typedef struct {
    const hw_trimway *way;
    double depth_cm[HW_MAX_TRIMS];       /* of each face */
    int sts[HW_MAX_TRIMS][HW_MAX_PARTS]; /* along each part; 0: not said; -1: it has no length */
} hw_draw_trims;

/* The trims along a piece's edges as they are drawn, up to HW_DRAW_MAX_TRIMS; returns how many. */
int hw_draw_find_trims(const hw_draw_trims *all, int piece, hw_draw_trim *out);

/* Put a picture into a file. HW_OK, or any failure, told in the files' hw_err. */
hw_status hw_draw_save(hw_docs *docs, const hw_drawing *picture, const char *path) HW_MUST_USE;

/* Each: Given the command's options, arena for the run; Returned buf, what is printed; Result
 * HW_OK or any failure, with a message. Files are written whole, and none that is there already
 * unless it was asked for. */

/* `draw FILE`: the pieces of a size, and for each band its fabric, its chart and its card. */
hw_status hw_draw_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

/* `garment NAME`: check a garment file in every size of a table; draw one of them. */
hw_status hw_draw_garment(
    const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
