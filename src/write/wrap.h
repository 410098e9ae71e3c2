/* How wide a text is, in characters, and where it is wrapped.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_WRAP_H
#define HW_WRITE_WRAP_H

#include <stddef.h>

/*
 * Characters that a text takes: a combining mark none, a wide East Asian character two.
 *
 * Given:     text      len bytes, UTF-8
 */
int hw_wrap_width(const char *text, size_t len);

/*
 * One line of a text that is wrapped to a width: at blanks where there are any.
 *
 * Given:     text      UTF-8
 *            width     characters, above 0
 *            number    from 0
 * Returned:  where the line begins, and in len its bytes; past the last line an empty text
 */
const char *hw_wrap_line(const char *text, int width, int number, size_t *len);

/* Lines of a text that is wrapped to a width; none where it is empty. */
int hw_wrap_lines(const char *text, int width);

#endif
