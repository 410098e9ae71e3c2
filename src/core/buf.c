/* The growing buffer, and all text that is made by a format.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/buf.h"

#include <stdio.h>
#include <string.h>

enum { CHUNK = 65536 }; /* bytes that a buffer gathers before it passes them on */

void hw_buf_init(hw_buf *buf, const hw_mem *mem, size_t limit)
{
    *buf = (hw_buf){ .mem = *mem, .limit = limit, .status = HW_OK };
}

void hw_buf_release(hw_buf *buf)
{
    if (buf->text != NULL) {
        buf->mem.drop(buf->mem.context, buf->text);
    }
    buf->text = NULL;
    buf->len = buf->room = 0;
}

void hw_buf_pass_on(hw_buf *buf, hw_buf_taker *take, void *context)
{
    buf->take = take;
    buf->context = context;
}

void hw_buf_flush(hw_buf *buf)
{
    if (buf->status != HW_OK || buf->take == NULL || buf->len == 0) {
        return;
    }
    buf->status = buf->take(buf->context, buf->text, buf->len);
    buf->limit -= buf->len;
    buf->len = 0;
}

/* Room for `more` bytes and the NUL. */
static bool grow(hw_buf *buf, size_t more)
{
    if (buf->take != NULL && buf->len >= CHUNK) {
        hw_buf_flush(buf);
    }
    if (buf->status != HW_OK) {
        return false;
    }
    if (more > buf->limit - buf->len) {
        buf->status = HW_ERR_LIMIT;
        return false;
    }
    size_t need = buf->len + more + 1;
    if (need <= buf->room) {
        return true;
    }
    size_t room = buf->room < 256 ? 256 : buf->room * 2;
    room = room < need ? need : room;
    char *text = buf->mem.grab(buf->mem.context, room);
    if (text == NULL) {
        buf->status = HW_ERR_NOMEM;
        return false;
    }
    if (buf->text != NULL) {
        memcpy(text, buf->text, buf->len);
        buf->mem.drop(buf->mem.context, buf->text);
    }
    text[buf->len] = '\0';
    buf->text = text;
    buf->room = room;
    return true;
}

void hw_buf_bytes(hw_buf *buf, const char *bytes, size_t len)
{
    if (!grow(buf, len)) {
        return;
    }
    if (len > 0) {
        memcpy(buf->text + buf->len, bytes, len);
    }
    buf->len += len;
    buf->text[buf->len] = '\0';
}

void hw_buf_text(hw_buf *buf, const char *text)
{
    hw_buf_bytes(buf, text, strlen(text));
}

static void HW_FORMAT(2, 0) append_args(hw_buf *buf, const char *format, va_list args)
{
    va_list again;
    va_copy(again, args);
    int len = vsnprintf(NULL, 0, format, again);
    va_end(again);
    if (len < 0) {
        buf->status = buf->status == HW_OK ? HW_ERR_INTERNAL : buf->status;
        return;
    }
    if (grow(buf, (size_t)len)) {
        (void)vsnprintf(buf->text + buf->len, (size_t)len + 1, format, args); /* len is known */
        buf->len += (size_t)len;
    }
}

void hw_buf_format(hw_buf *buf, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    append_args(buf, format, args);
    va_end(args);
}

void hw_buf_repeat(hw_buf *buf, const char *text, int count)
{
    for (int i = 0; i < count; i++) {
        hw_buf_text(buf, text);
    }
}

hw_status hw_buf_status(const hw_buf *buf)
{
    return buf->status;
}

char *hw_buf_keep(const hw_buf *buf, hw_arena *arena)
{
    return buf->status == HW_OK ? hw_arena_text(arena, buf->text, buf->len) : NULL;
}

void hw_buf_fixed(char *room, size_t size, const char *format, va_list args)
{
    int len = vsnprintf(room, size, format, args);
    if (len < 0) {
        room[0] = '\0';
        return;
    }
    if ((size_t)len < size) {
        return;
    }
    /* Cut before a character that lost its tail: step back over continuation bytes and the lead. */
    size_t end = size - 1;
    size_t lead = end;
    while (lead > 0 && ((unsigned char)room[lead - 1] & 0xC0) == 0x80) {
        lead--;
    }
    if (lead > 0 && ((unsigned char)room[lead - 1] & 0x80) != 0) {
        unsigned char first = (unsigned char)room[lead - 1];
        size_t want = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
        end = end - (lead - 1) < want ? lead - 1 : end;
    }
    room[end] = '\0';
}

char *hw_arena_format_args(hw_arena *arena, const char *format, va_list args)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    append_args(&buf, format, args);
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}

char *hw_arena_format(hw_arena *arena, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    char *text = hw_arena_format_args(arena, format, args);
    va_end(args);
    return text;
}
