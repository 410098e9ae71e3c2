/* Plain and packed bitmaps into cells; every byte is looked at once, from the left.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/pbm.h"

#include <string.h>

enum { MOST_DIGITS = 5, BITS = 8 }; /* of a size; of a byte */

typedef struct {
    const hw_pbm_file *file;
    size_t at;
    int line, column; /* of at */
    int width, rows;
    hw_err *err;
} reading;

static bool more(const reading *r)
{
    return r->at < r->file->len;
}

static char here(const reading *r)
{
    return r->file->bytes[r->at];
}

static void step(reading *r)
{
    bool ended = here(r) == '\n';
    bool inside = ((unsigned char)here(r) & 0xC0) == 0x80; /* goes on with a character */
    r->at++;
    r->line += ended ? 1 : 0;
    r->column = ended ? 1 : r->column + (inside ? 0 : 1);
}

static bool blank(char sign)
{
    return sign == ' ' || (sign >= '\t' && sign <= '\r');
}

static void skip_remark(reading *r)
{
    while (more(r) && here(r) != '\n') {
        step(r);
    }
}

/* Blanks, line ends and remarks. */
static void skip(reading *r)
{
    while (more(r) && (blank(here(r)) || here(r) == '#')) {
        if (here(r) == '#') {
            skip_remark(r);
        } else {
            step(r);
        }
    }
}

static hw_status place(const reading *r, hw_status status)
{
    return hw_err_place(r->err, status, r->line, r->column);
}

static hw_status no_picture(const reading *r)
{
    (void)hw_err_set(r->err, HW_ERR_SYNTAX, "%s",
        "this is no portable bitmap: one begins with `P1` or `P4`; save the picture in black and "
        "white as PBM");
    return place(r, HW_ERR_SYNTAX);
}

/* A size of the picture, behind blanks. */
static hw_status read_size(reading *r, const char *what, int most, int *out)
{
    skip(r);
    int size = 0;
    int digits = 0;
    int line = r->line;
    int column = r->column;
    while (more(r) && here(r) >= '0' && here(r) <= '9' && digits <= MOST_DIGITS) {
        size = 10 * size + (here(r) - '0');
        digits++;
        step(r);
    }
    bool parted = !more(r) || blank(here(r)) || here(r) == '#' || digits > MOST_DIGITS;
    if (digits == 0 || !parted || size == 0) {
        (void)hw_err_set(r->err, HW_ERR_SYNTAX,
            "the %s of the picture belong here, a whole number from 1 to %d", what, most);
        return hw_err_place(r->err, HW_ERR_SYNTAX, line, column);
    }
    if (size > most) {
        (void)hw_err_set(r->err, HW_ERR_LIMIT,
            "the picture has too many %s; a chart has at most %d: draw one stitch as one pixel, "
            "and one repeat alone",
            what, most);
        return hw_err_place(r->err, HW_ERR_LIMIT, line, column);
    }
    *out = size;
    return HW_OK;
}

static hw_status read_plain(reading *r, unsigned char *cells)
{
    int count = r->width * r->rows;
    for (int i = 0; i < count; i++) {
        skip(r);
        if (!more(r)) {
            (void)hw_err_set(r->err, HW_ERR_SYNTAX,
                "the picture ends after %d of its %d pixels; are its columns and rows right?", i,
                count);
            return place(r, HW_ERR_SYNTAX);
        }
        if (here(r) != '0' && here(r) != '1') {
            (void)hw_err_set(r->err, HW_ERR_SYNTAX, "%s",
                "a sign that is no pixel stands here: write 1 for contrast and 0 for background");
            return place(r, HW_ERR_SYNTAX);
        }
        cells[i] = here(r) == '1' ? HW_CONTRAST : HW_BACKGROUND;
        step(r);
    }
    skip(r);
    if (more(r)) {
        (void)hw_err_set(r->err, HW_ERR_SYNTAX,
            "more stands here than the %d columns and %d rows of the picture; are those right?",
            r->width, r->rows);
        return place(r, HW_ERR_SYNTAX);
    }
    return HW_OK;
}

/* Rows of whole bytes, the leftmost pixel the highest bit, behind one blank. */
static hw_status read_packed(reading *r, unsigned char *cells)
{
    size_t row_bytes = ((size_t)r->width + BITS - 1) / BITS;
    size_t wanted = row_bytes * (size_t)r->rows;
    size_t from = r->at + 1;
    size_t found = from < r->file->len ? r->file->len - from : 0;
    if (found != wanted) {
        return hw_err_set(r->err, HW_ERR_SYNTAX,
            "from byte %zu on the picture has %zu bytes, and %d columns in %d rows are %zu: save "
            "it again, one picture to a file",
            from + 1, found, r->width, r->rows, wanted);
    }
    for (int row = 0; row < r->rows; row++) {
        const char *bytes = r->file->bytes + from + (size_t)row * row_bytes;
        for (int column = 0; column < r->width; column++) {
            int bit = (unsigned char)bytes[column / BITS] >> (BITS - 1 - column % BITS) & 1;
            cells[row * r->width + column] = bit == 1 ? HW_CONTRAST : HW_BACKGROUND;
        }
    }
    return HW_OK;
}

static hw_status read_head(reading *r, bool *packed)
{
    const char *bytes = r->file->bytes;
    bool known = r->file->len > 2 && bytes[0] == 'P' && (bytes[1] == '1' || bytes[1] == '4') &&
                 (blank(bytes[2]) || bytes[2] == '#');
    if (!known) {
        return no_picture(r);
    }
    *packed = bytes[1] == '4';
    step(r);
    step(r);
    hw_status status = read_size(r, "columns", HW_MAX_CHART_COLUMNS, &r->width);
    return status == HW_OK ? read_size(r, "rows", HW_MAX_CHART_ROWS, &r->rows) : status;
}

hw_status hw_pbm_read(const hw_pbm_file *file, hw_arena *arena, hw_chart *out, hw_err *err)
{
    reading r = { .file = file, .line = 1, .column = 1, .err = err };
    bool packed = false;
    hw_status status = read_head(&r, &packed);
    if (status != HW_OK) {
        return status;
    }
    size_t count = (size_t)r.width * (size_t)r.rows;
    unsigned char *cells = hw_arena_get(arena, count, 1);
    if (cells == NULL) {
        return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for the chart");
    }
    status = packed ? read_packed(&r, cells) : read_plain(&r, cells);
    if (status == HW_OK && memchr(cells, HW_CONTRAST, count) == NULL) {
        status = hw_err_set(err, HW_ERR_SYNTAX, "%s",
            "the picture has no black pixel; draw the figure in black on white");
    }
    if (status == HW_OK) {
        *out = (hw_chart){ .name = file->name, .width = r.width, .rows = r.rows, .cells = cells };
    }
    return status;
}
