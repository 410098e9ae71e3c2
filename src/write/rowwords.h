/* Rows, settings and hand work in words: short names for programs, sentences for knitters.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_ROWWORDS_H
#define HW_WRITE_ROWWORDS_H

#include "core/rowsteps.h"

/* The rows of one piece or trim in one size, as documents show them. */
typedef struct {
    const char *piece, *size; /* names; of a trim, its own */
    const hw_rowplan *plan;
} hw_row_block;

/* Short names, as jsonrows.h lists them; the first is also for people. */
const char *hw_rowwords_kind(hw_row_kind kind);
const char *hw_rowwords_part(hw_row_part part);
const char *hw_rowwords_work(hw_row_work work);
const char *hw_rowwords_setting(hw_row_setting setting);
const char *hw_rowwords_card(hw_row_card card);
const char *hw_rowwords_yarn(hw_row_yarn yarn);
const char *hw_rowwords_hand(hw_hand_kind kind);
const char *hw_rowwords_step(hw_step_kind kind);
const char *hw_rowwords_place(hw_step_place place);
const char *hw_rowwords_finding(hw_finding_kind kind);

/* The carriage's setting for a knitter, such as "plain; needles for the next row come out". */
const char *hw_rowwords_carriage(hw_row_setting setting);

/*
 * All that is done by hand in a run, as sentences.
 *
 * Given:     plan, run belong together
 *            arena     owner of the text
 * Returned:  the text, "" where nothing is done; NULL when memory is refused
 */
char *hw_rowwords_run(const hw_rowplan *plan, const hw_row_run *run, hw_arena *arena) HW_MUST_USE;

/* Whether a row is a round, and whether other pieces are worked in the same rounds. */
bool hw_rowwords_in_round(const hw_rowplan *plan, const hw_row *row);
bool hw_rowwords_has_others(const hw_rowplan *plan);

#endif
