/* What measured pieces and dials tell: `hemwright learn` and `hemwright dial`.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_LEARN_H
#define HW_SHELL_LEARN_H

#include "shell/opts.h"

/*
 * Read a project and a filled-in workbook or table, and append to buf what the pieces change.
 *
 * Given:     opts      of that command: the project, the measured pieces
 *            arena     the run's
 *            buf       initialised
 * Result:    HW_OK; what reading and hw_calculate_plan can say
 */
hw_status hw_learn_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

/*
 * Append which dial gives a wanted gauge, from a project's swatches at several dials.
 *
 * Given:     opts      of that command: the project, --gauge, perhaps --per and --fabric
 * Result:    HW_OK; HW_ERR_USAGE; HW_ERR_MISSING (swatches at one dial only); HW_ERR_NOFIT (no dial
 *            near those swatched gives it); what reading can say
 */
hw_status hw_learn_dial(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err) HW_MUST_USE;

#endif
