/* JSON values into text: the frame of the document by hand, what stands in it by the library, one
 * value at a time. Its lines are folded, so that what belongs together stands on one line.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "write/jsonparts.h"

enum {
    INDENT = 1,
    DIGITS = 17,      /* they read back as the same double */
    OF_MEMBER = 1,    /* blanks before a member of the document */
    OF_ITEM = 2,      /* and before an item of a list */
    DEEPEST_LINES = 4 /* what stands deeper, such as all that is told of one row, is one line */
};

/* A value on its way from the library, which breaks every line, into the document. */
typedef struct {
    hw_buf *buf;
    int shift;   /* blanks before the value itself */
    int blanks;  /* after a line's end, those that have come so far; below 0 within a line */
    char before; /* the last byte that was passed on */
} folding;

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* Whether a line that begins with a byte stays part of the line before it. */
static bool folds(const folding *f, char first)
{
    int depth = f->shift + f->blanks;
    if (first == ']' || first == '}') {
        return depth >= DEEPEST_LINES || (first == ']' && is_digit(f->before));
    }
    return depth > DEEPEST_LINES || is_digit(first) || first == '-';
}

static void begin_line(folding *f, char first)
{
    static const char blanks[] = "\n          ";
    if (!folds(f, first)) {
        hw_buf_bytes(f->buf, blanks, (size_t)(1 + f->shift + f->blanks));
    } else if (f->before == ',') {
        hw_buf_text(f->buf, " ");
    }
    f->blanks = -1;
}

/* A raw line's end never stands in a text of JSON: it is always a break between values. */
static int append(const char *bytes, size_t len, void *data)
{
    folding *f = data;
    for (size_t i = 0; i < len;) {
        if (bytes[i] == '\n') {
            f->blanks = 0;
            i++;
        } else if (f->blanks >= 0 && bytes[i] == ' ') {
            f->blanks++;
            i++;
        } else {
            if (f->blanks >= 0) {
                begin_line(f, bytes[i]);
            }
            const char *end = memchr(bytes + i, '\n', len - i);
            size_t run = end != NULL ? (size_t)(end - (bytes + i)) : len - i;
            hw_buf_bytes(f->buf, bytes + i, run);
            i += run;
            f->before = bytes[i - 1];
        }
    }
    return hw_buf_status(f->buf) == HW_OK ? 0 : -1;
}

/* Take over a value and write it, so many blanks in; NULL is refused memory. */
static void dump(hw_json_writer *w, json_t *value, int shift)
{
    folding f = { .buf = w->buf, .shift = shift, .blanks = -1 };
    const size_t flags =
        JSON_INDENT(INDENT) | JSON_PRESERVE_ORDER | JSON_REAL_PRECISION(DIGITS) | JSON_ENCODE_ANY;
    if (value == NULL) {
        w->status = HW_ERR_NOMEM;
    }
    if (w->status == HW_OK && json_dump_callback(value, append, &f, flags) != 0) {
        w->status = hw_buf_status(w->buf) == HW_OK ? HW_ERR_NOMEM : hw_buf_status(w->buf);
    }
    json_decref(value);
}

/* What parts a value from the one before it. */
static void begin(hw_json_writer *w, int shift)
{
    hw_buf_text(w->buf, w->told > 0 ? ",\n" : "\n");
    hw_buf_repeat(w->buf, " ", shift);
    w->told++;
}

void hw_json_member(hw_json_writer *w, const char *key, json_t *value)
{
    begin(w, OF_MEMBER);
    hw_buf_format(w->buf, "\"%s\": ", key);
    dump(w, value, OF_MEMBER);
}

void hw_json_item(hw_json_writer *w, json_t *value)
{
    begin(w, OF_ITEM);
    dump(w, value, OF_ITEM);
}

void hw_json_list(hw_json_writer *w, const char *key, void (*items)(hw_json_writer *w))
{
    begin(w, OF_MEMBER);
    hw_buf_format(w->buf, "\"%s\": [", key);
    int members = w->told;
    w->told = 0;
    items(w);
    hw_buf_text(w->buf, w->told > 0 ? "\n ]" : "]");
    w->told = members;
}
