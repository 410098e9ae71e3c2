/* Texts measured in characters and wrapped to a width.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/wrap.h"

/* Ranges of characters that are not one column wide: the usual blocks, from memory. */
static const struct {
    unsigned first, last;
    int width;
} odd_widths[] = {
    { 0x0300, 0x036F, 0 },
    { 0x1AB0, 0x1AFF, 0 },
    { 0x1DC0, 0x1DFF, 0 },
    { 0x200B, 0x200F, 0 },
    { 0x20D0, 0x20FF, 0 },
    { 0xFE00, 0xFE0F, 0 },
    { 0xFE20, 0xFE2F, 0 },
    { 0x1100, 0x115F, 2 },
    { 0x2E80, 0xA4CF, 2 },
    { 0xAC00, 0xD7A3, 2 },
    { 0xF900, 0xFAFF, 2 },
    { 0xFE30, 0xFE6F, 2 },
    { 0xFF00, 0xFF60, 2 },
    { 0xFFE0, 0xFFE6, 2 },
    { 0x1F300, 0x1FAFF, 2 },
    { 0x20000, 0x3FFFD, 2 },
};

/* The character at a place; *used bytes, at least 1. Readers have made sure of valid UTF-8. */
static unsigned character(const unsigned char *at, size_t len, size_t *used)
{
    static const unsigned char masks[] = { 0, 0x7F, 0x1F, 0x0F, 0x07 };
    size_t want = *at >= 0xF0 ? 4 : *at >= 0xE0 ? 3 : *at >= 0xC0 ? 2 : 1;
    want = want > len ? len : want;
    unsigned value = *at & masks[want];
    for (size_t i = 1; i < want; i++) {
        value = value << 6 | (at[i] & 0x3Fu);
    }
    *used = want;
    return value;
}

static int character_width(unsigned value)
{
    for (size_t i = 0; i < sizeof odd_widths / sizeof odd_widths[0]; i++) {
        if (value >= odd_widths[i].first && value <= odd_widths[i].last) {
            return odd_widths[i].width;
        }
    }
    return 1;
}

int hw_wrap_width(const char *text, size_t len)
{
    int width = 0;
    size_t used = 0;
    for (size_t at = 0; at < len; at += used) {
        width += character_width(character((const unsigned char *)text + at, len - at, &used));
    }
    return width;
}

static size_t character_len(const char *text)
{
    size_t len = 1;
    while (((unsigned char)text[len] & 0xC0) == 0x80) {
        len++;
    }
    return len;
}

/* Bytes of the text up to its line's end that a width holds; at least one character. */
static size_t held(const char *text, int width)
{
    size_t end = 0;
    int used = 0;
    while (text[end] != '\0' && text[end] != '\n') {
        size_t len = character_len(text + end);
        used += hw_wrap_width(text + end, len);
        if (end > 0 && used > width) {
            break;
        }
        end += len;
    }
    return end;
}

/* Bytes of text that fill a line of the width: up to a blank where there is one. */
static size_t wrap(const char *text, int width)
{
    size_t end = held(text, width);
    if (text[end] == '\0' || text[end] == '\n' || text[end] == ' ') {
        return end;
    }
    size_t blank = end;
    while (blank > 0 && text[blank] != ' ') {
        blank--;
    }
    return blank > 0 ? blank : end;
}

const char *hw_wrap_line(const char *text, int width, int number, size_t *len)
{
    *len = wrap(text, width);
    for (int i = 0; i < number && *text != '\0'; i++) {
        text += *len;
        text += *text == ' ' || *text == '\n';
        *len = wrap(text, width);
    }
    return text;
}

int hw_wrap_lines(const char *text, int width)
{
    int count = 0;
    while (*text != '\0') {
        text += wrap(text, width);
        text += *text == ' ' || *text == '\n';
        count++;
    }
    return count;
}
