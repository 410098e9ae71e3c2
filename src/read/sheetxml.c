/* Shared texts first, into a list; then each cell of the sheet, at the place that it names.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/sheetxml.h"

#include <string.h>

#include "core/num.h"
#include "read/xml.h"

enum { LETTERS = 26, LETTERS_MOST = 3, DIGITS_MOST = 20, EXPONENT_MOST = 40, NUMBER_ROOM = 80 };

typedef struct {
    const char **list;
    int count;
} shared;

/* Where in the tags of a text the walk is: `t` counts, but not inside `rPh`, its pronunciation. */
typedef struct {
    bool inside; /* the text's own tag */
    bool words;
    int spoken;
} text_place;

static void text_open(text_place *p, const char *name)
{
    p->spoken += strcmp(name, "rPh") == 0;
    p->words = p->inside && p->spoken == 0 && strcmp(name, "t") == 0;
}

static void text_close(text_place *p, const char *name)
{
    p->spoken -= strcmp(name, "rPh") == 0;
    p->words = false;
}

/* ---- Shared texts, a NUL behind each. ---- */

typedef struct {
    text_place place;
    hw_buf texts;
    int count;
} texts_reader;

static hw_status texts_open(void *context, const char *name, const char **attributes)
{
    texts_reader *r = context;
    (void)attributes;
    r->place.inside = r->place.inside || strcmp(name, "si") == 0;
    text_open(&r->place, name);
    return HW_OK;
}

static hw_status texts_close(void *context, const char *name)
{
    texts_reader *r = context;
    text_close(&r->place, name);
    if (strcmp(name, "si") == 0) {
        r->place.inside = false;
        r->count++;
        hw_buf_bytes(&r->texts, "", 1);
    }
    return hw_buf_status(&r->texts);
}

static hw_status texts_text(void *context, const char *text, size_t len)
{
    texts_reader *r = context;
    if (r->place.words) {
        hw_xml_plain(&r->texts, text, len);
    }
    return hw_buf_status(&r->texts);
}

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to read this workbook");
}

static hw_status keep_texts(const texts_reader *r, hw_arena *arena, shared *out, hw_err *err)
{
    const char *texts = hw_buf_keep(&r->texts, arena);
    const char **list = hw_arena_get(arena, (size_t)r->count, sizeof *list);
    if (texts == NULL || list == NULL) {
        return no_memory(err);
    }
    for (int i = 0; i < r->count; i++) {
        list[i] = texts;
        texts += strlen(texts) + 1;
    }
    *out = (shared){ .list = list, .count = r->count };
    return HW_OK;
}

static hw_status read_texts(const hw_sheetxml *in, hw_arena *arena, shared *out, hw_err *err)
{
    if (in->texts == NULL) {
        return HW_OK;
    }
    texts_reader r = { .count = 0 };
    hw_xml_seer seer = { &r, texts_open, texts_close, texts_text };
    hw_buf_init(&r.texts, &arena->mem, HW_XML_MOST_BYTES);
    hw_status status = hw_xml_read(in->texts, in->texts_len, &seer, err);
    if (status == HW_OK) {
        status = keep_texts(&r, arena, out, err);
    }
    hw_buf_release(&r.texts);
    return status;
}

/* ---- The sheet. ---- */

typedef struct {
    const shared *texts;
    hw_rows_gather gather;
    int row, column; /* where a cell stands that does not say */
    bool in_data;
    bool in_value;
    text_place place; /* inside a cell; `is` holds its own text */
    char kind;        /* of the cell: see cell_kind */
    hw_buf value;     /* of the cell */
} sheet_reader;

/* One letter for what a cell holds: s shared text, b yes or no, n a number, t a text as it is. */
static char cell_kind(const char *type)
{
    if (type == NULL || strcmp(type, "n") == 0) {
        return 'n';
    }
    bool one_letter = strcmp(type, "s") == 0 || strcmp(type, "b") == 0;
    return one_letter ? type[0] : 't';
}

/* A place such as B7, 0-based; it begins with at most LETTERS_MOST letters. */
static hw_status read_place(const char *text, sheet_reader *r)
{
    int column = 0;
    int letters = 0;
    while (letters < LETTERS_MOST && text[letters] >= 'A' && text[letters] <= 'Z') {
        column = column * LETTERS + (text[letters] - 'A' + 1);
        letters++;
    }
    int row = 0;
    size_t used = 0;
    size_t len = strlen(text + letters);
    if (letters == 0 || hw_num_parse_count(text + letters, len, &row, &used) != HW_OK ||
        used != len || row == 0) {
        return HW_ERR_SYNTAX;
    }
    r->row = row - 1;
    r->column = column - 1;
    return HW_OK;
}

/* A row that does not say its number follows the one before. */
static hw_status open_row(sheet_reader *r, const char **attributes)
{
    const char *number = hw_xml_attribute(attributes, "r");
    int row = r->row + 2;
    size_t used = 0;
    if (number != NULL && (hw_num_parse_count(number, strlen(number), &row, &used) != HW_OK ||
                              used != strlen(number) || row == 0)) {
        return HW_ERR_SYNTAX;
    }
    r->row = row - 1;
    r->column = -1;
    return HW_OK;
}

static hw_status open_cell(sheet_reader *r, const char **attributes)
{
    const char *place = hw_xml_attribute(attributes, "r");
    r->kind = cell_kind(hw_xml_attribute(attributes, "t"));
    r->place = (text_place){ .inside = false };
    hw_buf_release(&r->value);
    r->column++;
    r->row = r->row < 0 ? 0 : r->row;
    return place != NULL ? read_place(place, r) : HW_OK;
}

static hw_status sheet_open(void *context, const char *name, const char **attributes)
{
    sheet_reader *r = context;
    if (strcmp(name, "sheetData") == 0) {
        r->in_data = true;
    }
    if (!r->in_data) {
        return HW_OK;
    }
    if (strcmp(name, "row") == 0) {
        return open_row(r, attributes);
    }
    if (strcmp(name, "c") == 0) {
        return open_cell(r, attributes);
    }
    r->place.inside = r->place.inside || strcmp(name, "is") == 0;
    text_open(&r->place, name);
    r->in_value = strcmp(name, "v") == 0;
    return HW_OK;
}

static hw_status sheet_text(void *context, const char *text, size_t len)
{
    sheet_reader *r = context;
    if (r->in_value || r->place.words) {
        hw_xml_plain(&r->value, text, len);
    }
    return hw_buf_status(&r->value);
}

/* The digits of a number with an exponent, and where its point stands among them. */
typedef struct {
    bool minus;
    char digits[DIGITS_MOST];
    int count, point;
} scientific;

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool add_digits(const char **text, scientific *s)
{
    for (; digit(**text); (*text)++) {
        if (s->count == DIGITS_MOST) {
            return false;
        }
        s->digits[s->count++] = **text;
    }
    return true;
}

static bool read_scientific(const char *text, scientific *s)
{
    s->minus = *text == '-';
    text += s->minus ? 1 : 0;
    if (!add_digits(&text, s)) {
        return false;
    }
    s->point = s->count;
    if (*text == '.') {
        text++;
        if (!add_digits(&text, s)) {
            return false;
        }
    }
    if (s->count == 0 || (*text != 'e' && *text != 'E')) {
        return false;
    }
    bool down = text[1] == '-';
    text += down || text[1] == '+' ? 2 : 1;
    int exponent = 0;
    size_t used = 0;
    if (hw_num_parse_count(text, strlen(text), &exponent, &used) != HW_OK || text[used] != '\0' ||
        exponent > EXPONENT_MOST) {
        return false;
    }
    s->point += down ? -exponent : exponent;
    return true;
}

/* 1.2E-3 as 0.0012, in full; false for what is no such number. */
static bool write_out(const char *text, char room[NUMBER_ROOM], size_t *len)
{
    scientific s = { .count = 0 };
    if (!read_scientific(text, &s)) {
        return false;
    }
    size_t at = 0;
    int from = s.point < 1 ? s.point - 1 : 0;
    int to = s.point > s.count ? s.point : s.count;
    room[at] = '-';
    at += s.minus ? 1 : 0;
    for (int i = from; i < to; i++) {
        if (i == s.point) {
            room[at++] = '.';
        }
        room[at++] = i >= 0 && i < s.count ? s.digits[i] : '0';
    }
    *len = at;
    return true;
}

static hw_status put(sheet_reader *r, const char *text, size_t len)
{
    hw_rows_put(&r->gather, r->row, r->column, text, len);
    return HW_OK;
}

static hw_status put_shared(sheet_reader *r)
{
    int index = 0;
    size_t used = 0;
    if (hw_num_parse_count(r->value.text, r->value.len, &index, &used) != HW_OK ||
        used != r->value.len || index >= r->texts->count) {
        return HW_ERR_SYNTAX;
    }
    const char *text = r->texts->list[index];
    return put(r, text, strlen(text));
}

static hw_status close_cell(sheet_reader *r)
{
    char room[NUMBER_ROOM];
    size_t len = 0;
    if (r->value.len == 0) {
        return HW_OK;
    }
    if (r->kind == 's') {
        return put_shared(r);
    }
    if (r->kind == 'b') {
        const char *said = r->value.text[0] == '1' ? "TRUE" : "FALSE";
        return put(r, said, strlen(said));
    }
    if (r->kind == 'n' && write_out(r->value.text, room, &len)) {
        return put(r, room, len);
    }
    return put(r, r->value.text, r->value.len);
}

static hw_status sheet_close(void *context, const char *name)
{
    sheet_reader *r = context;
    r->in_value = false;
    text_close(&r->place, name);
    if (strcmp(name, "sheetData") == 0) {
        r->in_data = false;
    }
    return r->in_data && strcmp(name, "c") == 0 ? close_cell(r) : HW_OK;
}

hw_status hw_sheetxml_rows(const hw_sheetxml *in, hw_arena *arena, hw_rows *out, hw_err *err)
{
    shared texts = { .count = 0 };
    hw_status status = read_texts(in, arena, &texts, err);
    if (status != HW_OK) {
        return status;
    }
    sheet_reader r = { .texts = &texts, .row = -1, .column = -1 };
    hw_xml_seer seer = { &r, sheet_open, sheet_close, sheet_text };
    hw_rows_begin(&r.gather, &arena->mem);
    hw_buf_init(&r.value, &arena->mem, HW_XML_MOST_BYTES);
    status = hw_xml_read(in->sheet, in->sheet_len, &seer, err);
    if (status == HW_OK) {
        status = hw_rows_end(&r.gather, arena, out, err);
    }
    hw_buf_release(&r.value);
    hw_rows_release(&r.gather);
    return status;
}
