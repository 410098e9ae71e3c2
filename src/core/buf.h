/* A growing text buffer with a limit and a sticky error: append freely, check once at the end.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_BUF_H
#define HW_CORE_BUF_H

#include <stdarg.h>

#include "core/mem.h"

enum { HW_BUF_LIMIT = 512 * 1024 * 1024 }; /* bytes; far above any document that is written */

/* Takes bytes off a buffer's hands. HW_OK, or what the buffer then fails with. */
typedef hw_status hw_buf_taker(void *context, const char *bytes, size_t len);

/* Private to buf.c but for reading `text` and `len` once hw_buf_status says HW_OK. */
typedef struct {
    hw_mem mem;
    char *text; /* NUL behind the last byte; NULL while nothing was added */
    size_t len, room, limit;
    hw_status status;
    hw_buf_taker *take; /* NULL: the buffer keeps all */
    void *context;      /* of take */
} hw_buf;

/*
 * Make a buffer ready; nothing is allocated yet.
 *
 * Given:     buf       the caller's
 *            mem       hooks, copied
 *            limit     bytes it may hold at most; past it the buffer fails with HW_ERR_LIMIT
 */
void hw_buf_init(hw_buf *buf, const hw_mem *mem, size_t limit);

/*
 * Let the buffer pass on what it holds from time to time, so that a long text needs little room.
 *
 * Given:     buf       initialised, nothing added yet
 *            take      is called in order; not after it has failed
 *            context   take's, the caller's
 * Note:      the limit is still that of the whole text; `text` and `len` tell nothing any more
 */
void hw_buf_pass_on(hw_buf *buf, hw_buf_taker *take, void *context);

/* Pass on what is left; hw_buf_status tells what came of it. */
void hw_buf_flush(hw_buf *buf);

/* Give back the buffer's memory; may be called twice. */
void hw_buf_release(hw_buf *buf);

/* Append len bytes. After the first failure this and all that follow do nothing. */
void hw_buf_bytes(hw_buf *buf, const char *bytes, size_t len);

/* Append a NUL-terminated text. */
void hw_buf_text(hw_buf *buf, const char *text);

/* Append by a printf format. */
void hw_buf_format(hw_buf *buf, const char *format, ...) HW_FORMAT(2, 3);

/* Append a text count times; a count below 1 appends nothing. */
void hw_buf_repeat(hw_buf *buf, const char *text, int count);

/*
 * What the buffer came to.
 *
 * Given:     buf       initialised
 * Returned:  HW_OK; HW_ERR_NOMEM; HW_ERR_LIMIT; HW_ERR_INTERNAL (a format that failed)
 */
hw_status hw_buf_status(const hw_buf *buf) HW_MUST_USE;

/*
 * The buffer's text as a value of the arena.
 *
 * Given:     buf       initialised, released by the caller as before
 *            arena     owner of the copy
 * Returned:  the copy, NUL-terminated; NULL when the buffer has failed or memory is refused
 */
char *hw_buf_keep(const hw_buf *buf, hw_arena *arena) HW_MUST_USE;

/*
 * Format into the caller's room; what does not fit is cut at a whole UTF-8 character.
 *
 * Given:     room      size bytes, size above 0
 *            format, args  as for vprintf
 */
void hw_buf_fixed(char *room, size_t size, const char *format, va_list args) HW_FORMAT(3, 0);

/*
 * A text of the arena, made by a printf format.
 *
 * Given:     arena     owner of the text
 *            format    printf format
 * Returned:  the text; NULL when memory is refused
 */
char *hw_arena_format(hw_arena *arena, const char *format, ...) HW_FORMAT(2, 3) HW_MUST_USE;

/* The same for a function that was given the format itself. */
char *hw_arena_format_args(hw_arena *arena, const char *format, va_list args)
    HW_FORMAT(2, 0) HW_MUST_USE;

#endif
