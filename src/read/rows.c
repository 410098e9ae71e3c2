/* Cells are gathered as places and texts in two buffers, then laid out once their number is known.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/rows.h"

#include <string.h>

#include "read/yaml.h"

/* Where a gathered cell belongs, and where its text begins. */
typedef struct {
    int row, column;
    size_t at;
} place;

const char *hw_rows_at(const hw_rows *rows, int row, int column)
{
    bool inside = row >= 0 && row < rows->rows && column >= 0 && column < rows->columns;
    return inside ? rows->cells[(size_t)row * (size_t)rows->columns + (size_t)column] : NULL;
}

void hw_rows_begin(hw_rows_gather *gather, const hw_mem *mem)
{
    *gather = (hw_rows_gather){ .rows = 0 };
    hw_buf_init(&gather->places, mem, HW_BUF_LIMIT);
    hw_buf_init(&gather->texts, mem, HW_ROWS_MOST_BYTES);
}

void hw_rows_release(hw_rows_gather *gather)
{
    hw_buf_release(&gather->places);
    hw_buf_release(&gather->texts);
}

void hw_rows_put(hw_rows_gather *gather, int row, int column, const char *text, size_t len)
{
    if (len == 0) {
        return;
    }
    if (row >= HW_ROWS_MOST || column >= HW_ROWS_MOST_COLUMNS) {
        gather->too_far = true;
        return;
    }
    place p = { .row = row, .column = column, .at = gather->texts.len };
    char bytes[sizeof p];
    memcpy(bytes, &p, sizeof p);
    hw_buf_bytes(&gather->places, bytes, sizeof bytes);
    hw_buf_bytes(&gather->texts, text, len);
    hw_buf_bytes(&gather->texts, "", 1); /* the NUL behind it */
    gather->rows = row >= gather->rows ? row + 1 : gather->rows;
    gather->columns = column >= gather->columns ? column + 1 : gather->columns;
}

static hw_status too_large(hw_err *err)
{
    return hw_err_set(err, HW_ERR_LIMIT,
        "the table is too large: at most %d rows and %d columns are read; keep only the pieces "
        "that were measured",
        HW_ROWS_MOST, HW_ROWS_MOST_COLUMNS);
}

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to read this table");
}

static void lay_out(const hw_rows_gather *gather, const char *texts, hw_rows *rows)
{
    for (size_t at = 0; at < gather->places.len; at += sizeof(place)) {
        place p;
        memcpy(&p, gather->places.text + at, sizeof p);
        rows->cells[(size_t)p.row * (size_t)rows->columns + (size_t)p.column] = texts + p.at;
    }
}

hw_status hw_rows_end(const hw_rows_gather *gather, hw_arena *arena, hw_rows *out, hw_err *err)
{
    hw_status places = hw_buf_status(&gather->places);
    hw_status texts = hw_buf_status(&gather->texts);
    if (places == HW_ERR_NOMEM || texts == HW_ERR_NOMEM) {
        return no_memory(err);
    }
    if (gather->too_far || places != HW_OK || texts != HW_OK) {
        return too_large(err);
    }
    hw_rows rows = { .rows = gather->rows, .columns = gather->columns };
    const char *kept = hw_buf_keep(&gather->texts, arena);
    rows.cells = hw_arena_get(arena, (size_t)rows.rows * (size_t)rows.columns, sizeof *rows.cells);
    if (kept == NULL || rows.cells == NULL) {
        return no_memory(err);
    }
    lay_out(gather, kept, &rows);
    *out = rows;
    return HW_OK;
}

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Bytes of a word at a place, quoted or not, with blanks around it; 0 where it does not stand. */
static size_t word_at(const hw_rows_text *in, size_t at, const char *word)
{
    size_t start = at;
    size_t len = strlen(word);
    while (at < in->len && (in->text[at] == '"' || in->text[at] == ' ')) {
        at++;
    }
    for (size_t i = 0; i < len; i++, at++) {
        if (at >= in->len || lower(in->text[at]) != word[i]) {
            return 0;
        }
    }
    while (at < in->len && (in->text[at] == '"' || in->text[at] == ' ')) {
        at++;
    }
    return at - start;
}

static bool ends_cell(const hw_rows_text *in, size_t at)
{
    return at >= in->len || in->text[at] == in->separator || in->text[at] == '\n' ||
           in->text[at] == '\r';
}

static bool holds_heads(const hw_rows_text *in, const char *const heads[2])
{
    bool begins = true;
    for (size_t at = 0; at < in->len; at++) {
        size_t first = begins ? word_at(in, at, heads[0]) : 0;
        size_t next = at + first;
        if (first > 0 && next < in->len && in->text[next] == in->separator) {
            size_t second = word_at(in, next + 1, heads[1]);
            if (second > 0 && ends_cell(in, next + 1 + second)) {
                return true;
            }
        }
        begins = ends_cell(in, at);
    }
    return false;
}

static size_t times(const char *text, size_t len, char sign)
{
    size_t found = 0;
    for (size_t i = 0; i < len; i++) {
        found += text[i] == sign;
    }
    return found;
}

/* Bytes of the byte order mark that some programs put first. */
static size_t mark_bytes(const char *text, size_t len)
{
    return len >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}

char hw_rows_separator(const char *text, size_t len, const char *const heads[2])
{
    size_t mark = mark_bytes(text, len);
    hw_rows_text in = { .text = text + mark, .len = len - mark, .separator = ',' };
    if (holds_heads(&in, heads)) {
        return ',';
    }
    in.separator = ';';
    return holds_heads(&in, heads) || times(text, len, ';') > times(text, len, ',') ? ';' : ',';
}

/* Separated values as they are read. */
typedef struct {
    const hw_rows_text *in;
    size_t at;
    int row, column;
    hw_buf cell;
    hw_rows_gather *gather;
} reader;

static bool at_sign(const reader *r, char sign)
{
    return r->at < r->in->len && r->in->text[r->at] == sign;
}

/* The inside of a quotation; two quotation marks in it stand for one. */
static bool read_quoted(reader *r)
{
    const char *text = r->in->text;
    for (r->at++; r->at < r->in->len; r->at++) {
        const char *mark = memchr(text + r->at, '"', r->in->len - r->at);
        if (mark == NULL) {
            return false;
        }
        hw_buf_bytes(&r->cell, text + r->at, (size_t)(mark - (text + r->at)));
        r->at = (size_t)(mark - text) + 1;
        if (!at_sign(r, '"')) {
            return true;
        }
        hw_buf_bytes(&r->cell, "\"", 1);
    }
    return false;
}

/* Blanks before a quotation are no part of the cell. */
static void skip_to_quotation(reader *r)
{
    size_t at = r->at;
    while (at < r->in->len && r->in->text[at] == ' ') {
        at++;
    }
    if (at < r->in->len && r->in->text[at] == '"') {
        r->at = at;
    }
}

static void keep_cell(reader *r)
{
    const char *text = r->cell.text;
    size_t len = r->cell.len;
    if (len > 1 && text[0] == '\'' && strchr("=+-@\t\r", text[1]) != NULL) {
        text++;
        len--;
    }
    hw_rows_put(r->gather, r->row, r->column, text, len);
}

static hw_status read_cell(reader *r, hw_err *err)
{
    hw_buf_init(&r->cell, &r->gather->texts.mem, HW_ROWS_MOST_BYTES);
    skip_to_quotation(r);
    if (at_sign(r, '"') && !read_quoted(r)) {
        hw_buf_release(&r->cell);
        (void)hw_err_set(err, HW_ERR_SYNTAX, "%s",
            "a quotation mark opens here and none closes it; put a second one at the end of the "
            "cell");
        return hw_err_place(err, HW_ERR_SYNTAX, r->row + 1, r->column + 1);
    }
    size_t start = r->at;
    while (!ends_cell(r->in, r->at)) {
        r->at++;
    }
    hw_buf_bytes(&r->cell, r->in->text + start, r->at - start);
    hw_status status = hw_buf_status(&r->cell);
    if (status == HW_OK) {
        keep_cell(r);
    }
    hw_buf_release(&r->cell);
    return status == HW_OK ? HW_OK : status == HW_ERR_NOMEM ? no_memory(err) : too_large(err);
}

/* Past the end of a cell: to the next one, or to the next line. */
static void step(reader *r)
{
    if (at_sign(r, r->in->separator)) {
        r->at++;
        r->column++;
        return;
    }
    bool both = at_sign(r, '\r') && r->at + 1 < r->in->len && r->in->text[r->at + 1] == '\n';
    r->at += both ? 2 : 1;
    r->column = 0;
    r->row++;
}

static hw_status read_all(const hw_rows_text *in, hw_rows_gather *gather, hw_err *err)
{
    reader r = { .in = in, .at = mark_bytes(in->text, in->len), .gather = gather };
    hw_status status = HW_OK;
    while (r.at < in->len && status == HW_OK && !gather->too_far) {
        status = read_cell(&r, err);
        step(&r);
    }
    return status;
}

hw_status hw_rows_csv(const hw_rows_text *in, hw_arena *arena, hw_rows *out, hw_err *err)
{
    if (!hw_yaml_is_text(in->text, in->len)) {
        return hw_err_set(err, HW_ERR_SYNTAX, "%s",
            "this cannot be read as a table; in your spreadsheet program save the sheet as CSV "
            "(UTF-8), or the workbook as .xlsx");
    }
    hw_rows_gather gather;
    hw_rows_begin(&gather, &arena->mem);
    hw_rows rows = { .rows = 0 };
    hw_status status = read_all(in, &gather, err);
    if (status == HW_OK) {
        status = hw_rows_end(&gather, arena, &rows, err);
    }
    hw_rows_release(&gather);
    if (status == HW_OK) {
        rows.semicolons = in->separator == ';';
        *out = rows;
    }
    return status;
}
