/* The first error wins; each caller up the road adds what only it knows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/err.h"

#include <string.h>

#include "core/buf.h"

hw_status hw_err_set(hw_err *err, hw_status code, const char *format, ...)
{
    if (err != NULL && err->code == HW_OK) {
        err->code = code;
        va_list args;
        va_start(args, format);
        hw_buf_fixed(err->text, sizeof err->text, format, args);
        va_end(args);
    }
    return code;
}

hw_status hw_err_place(hw_err *err, hw_status code, int line, int column)
{
    if (err != NULL && err->line == 0 && err->where[0] == '\0') {
        err->line = line;
        err->column = column;
    }
    return code;
}

hw_status hw_err_place_in_garment(hw_err *err, hw_status code, int line, int column)
{
    if (err != NULL && err->line == 0 && err->where[0] == '\0') {
        err->of_garment = true;
    }
    return hw_err_place(err, code, line, column);
}

void hw_err_where(hw_err *err, const char *where)
{
    if (err == NULL || err->where[0] != '\0') {
        return;
    }
    size_t len = strlen(where);
    const char *start = where;
    /* The end of a path tells more than its beginning; never start inside a character. */
    while (len >= sizeof err->where || (start > where && ((unsigned char)*start & 0xC0) == 0x80)) {
        start++;
        len--;
    }
    memcpy(err->where, start, len + 1);
}
