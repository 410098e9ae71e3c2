/* Words for messages: the nearest right one to a wrong one, and how much of a text to quote.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_WORDS_H
#define HW_CORE_WORDS_H

#include "core/hw.h"

/*
 * The word that a mistyped one was probably meant to be.
 *
 * Given:     typed     NUL-terminated
 *            words     count words, none NULL
 * Returned:  one of words, or NULL where none is near: a third of its letters may be wrong, each
 *            letter added, left out, changed or swapped with the next counting as one; or else one
 * that holds all that was typed, from five letters on
 */
const char *hw_words_nearest(const char *typed, const char *const *words, int count);

/*
 * How much of a text to quote in a message.
 *
 * Given:     text      NUL-terminated
 *            most      bytes, above 0
 * Returned:  at most that many bytes, whole characters of its first line; for `%.*s`
 */
int hw_words_cut(const char *text, int most);

/* Letters of a name that a project or data file makes up; messages quote several at once. */
enum { HW_WORDS_MAX_NAME = 40, HW_WORDS_MAX_NAME_BYTES = 60 };

/* Letters in len bytes of UTF-8. */
int hw_words_letters(const char *text, size_t len);

/* Whether a name is at most as long as those two say. */
bool hw_words_name_fits(const char *text, size_t len);

#endif
