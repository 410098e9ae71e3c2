/* The words for what is done by hand in a trim's rows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_TRIMWORDS_H
#define HW_WRITE_TRIMWORDS_H

#include "core/buf.h"
#include "core/rowsteps.h"

/* One piece of hand work as it is said: the plan, the row, the work. */
typedef struct {
    const hw_rowplan *plan;
    const hw_row_run *run;
    const hw_row *row;
    const hw_handwork *work;
    hw_buf *buf;
} hw_saying;

/* Add the words for a kind of hand work of a trim to the buffer, as sentences; failures stay there.
 * Of buttonholes the first of a row speaks for all. */
void hw_trimwords_pick_up(const hw_saying *s);
void hw_trimwords_holes(const hw_saying *s);
void hw_trimwords_hang(const hw_saying *s);
void hw_trimwords_take_off(const hw_saying *s);
void hw_trimwords_bind_off(const hw_saying *s);
void hw_trimwords_sew(const hw_saying *s);

#endif
