/* What the suites of the readers share: a good text, and what is said once a piece of it is wrong.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CHECK_READING_H
#define HW_CHECK_READING_H

#include "support.h"

/* A reader under test, and a text that it takes. */
typedef struct {
    const char *good;
    hw_status (*read)(const char *text, size_t len, hw_arena *arena, void *out, hw_err *err);
    size_t size; /* of what out points to */
} hw_check_reader;

/* A mistake in the good text, and all that must be said of it. */
typedef struct {
    const char *old;   /* stands in the good text once; NULL: fresh is the whole text */
    const char *fresh; /* put in its place */
    hw_status status;
    int line, column;  /* 1-based */
    const char *found; /* words of the message that name what stands there, or is missing */
    const char *way;   /* words that say what to do */
} hw_check_fault;

/* The good text with a piece of it replaced; released with free. */
char *hw_check_edit(const char *good, const char *old, const char *fresh);

/* Check that a message is whole, on one line, and free of a programmer's words. */
void hw_check_plain(const hw_err *err);

/* Read the good text with the mistake in it: status, place, words, and the result untouched. */
void hw_check_told(const hw_check_reader *reader, const hw_check_fault *fault);

/* Read the good text, or an edit of it, into out, which must succeed. */
void hw_check_taken(const hw_check_reader *reader, const char *text, hw_arena *arena, void *out);

/* Read the good text with the n-th request for memory refused, for each n: HW_ERR_NOMEM, and the
 * result untouched. At least so many requests are met. */
void hw_check_refused(const hw_check_reader *reader, int at_least);

#endif
