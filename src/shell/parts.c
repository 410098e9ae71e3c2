/* Inflating in small bites, with a limit on what comes out.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/parts.h"

enum { BITE = 16384, LOCKED = 1, NO_CASE = 2 };

bool hw_parts_inflate(unzFile file, hw_parts_see *see, void *context)
{
    char bite[BITE];
    if (unzOpenCurrentFile(file) != UNZ_OK) {
        return false;
    }
    int got = unzReadCurrentFile(file, bite, sizeof bite);
    while (got > 0 && see(context, bite, (size_t)got)) {
        got = unzReadCurrentFile(file, bite, sizeof bite);
    }
    return unzCloseCurrentFile(file) == UNZ_OK && got == 0;
}

bool hw_parts_find(unzFile file, const char *name)
{
    return unzLocateFile(file, name, NO_CASE) == UNZ_OK;
}

static bool keep(void *context, const char *bytes, size_t len)
{
    hw_buf *buf = context;
    hw_buf_bytes(buf, bytes, len);
    return hw_buf_status(buf) == HW_OK;
}

static hw_status keep_text(const hw_buf *buf, hw_arena *arena, hw_io_text *out)
{
    const char *text = hw_buf_keep(buf, arena);
    if (text == NULL) {
        return HW_ERR_NOMEM;
    }
    *out = (hw_io_text){ .text = text, .len = buf->len };
    return HW_OK;
}

hw_status hw_parts_read(unzFile file, const char *name, hw_arena *arena, hw_io_text *out)
{
    unz_file_info64 info;
    if (!hw_parts_find(file, name)) {
        return HW_ERR_MISSING;
    }
    if (unzGetCurrentFileInfo64(file, &info, NULL, 0, NULL, 0, NULL, 0) != UNZ_OK) {
        return HW_ERR_SYNTAX;
    }
    if ((info.flag & LOCKED) != 0) {
        return HW_ERR_USAGE;
    }
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_PARTS_MOST);
    bool whole = hw_parts_inflate(file, keep, &buf);
    hw_status status = hw_buf_status(&buf);
    if (status == HW_OK) {
        status = whole ? keep_text(&buf, arena, out) : HW_ERR_SYNTAX;
    }
    hw_buf_release(&buf);
    return status;
}
