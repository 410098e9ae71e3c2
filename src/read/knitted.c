/* The head of the table first: it says which column holds what. Then row by row.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/knitted.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"

enum { QUOTED = 40, VALUE_ROOM = 64, HEADS_ENOUGH = 3 };

typedef enum { SIZE, PIECE, FABRIC, STS, ROWS, WIDTH, LENGTH, REMARK, HEADS } head;

static const struct {
    const char *word;
    bool length; /* may be followed by a unit: `width, cm` */
} heads[] = {
    [SIZE] = { "size", false },
    [PIECE] = { "piece", false },
    [FABRIC] = { "fabric", false },
    [STS] = { "stitches", false },
    [ROWS] = { "rows", false },
    [WIDTH] = { "width", true },
    [LENGTH] = { "length", true },
    [REMARK] = { "remark", false },
};
_Static_assert(sizeof heads / sizeof heads[0] == HEADS, "a word for each head");

/* How heads may be written, for the nearest to a mistyped one. */
static const char *const written[] = { "size", "piece", "fabric", "stitches", "rows", "width, cm",
    "width, in", "width", "length, cm", "length, in", "length", "remark" };
enum { WRITTEN = sizeof written / sizeof written[0] };

/* Some bytes of a cell, without the blanks around them. */
typedef struct {
    const char *text;
    size_t len;
} span;

typedef struct {
    const hw_rows *rows;
    const hw_knitted_context *context;
    hw_arena *arena;
    hw_err *err;
    int head_row;
    int column[HEADS]; /* -1: not in the table */
    hw_unit unit[HEADS];
} reader;

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool alike(span a, const char *word)
{
    size_t i = 0;
    while (i < a.len && word[i] != '\0' && lower(a.text[i]) == lower(word[i])) {
        i++;
    }
    return i == a.len && word[i] == '\0';
}

static bool same(span a, const char *word)
{
    return strlen(word) == a.len && memcmp(a.text, word, a.len) == 0;
}

/* Bytes of a blank at a place: spreadsheets also have one that keeps two words on a line. */
static size_t blank(const char *text, size_t len)
{
    if (len >= 2 && memcmp(text, "\xC2\xA0", 2) == 0) {
        return 2;
    }
    return len >= 1 && text[0] != '\0' && strchr(" \t\r\n", text[0]) != NULL ? 1 : 0;
}

static span trimmed(const char *text, size_t len)
{
    for (size_t n = blank(text, len); n > 0; n = blank(text, len)) {
        text += n;
        len -= n;
    }
    while (
        len > 0 && (blank(text + len - 1, 1) > 0 || (len >= 2 && blank(text + len - 2, 2) == 2))) {
        len -= blank(text + len - 1, 1) > 0 ? 1 : 2;
    }
    return (span){ .text = text, .len = len };
}

static span cell(const reader *r, int row, int column)
{
    const char *text = hw_rows_at(r->rows, row, column);
    return text != NULL ? trimmed(text, strlen(text)) : (span){ .text = "", .len = 0 };
}

static span value(const reader *r, int row, head what)
{
    return cell(r, row, r->column[what]);
}

/* A cell's text for `%.*s`: cut, and on one line. */
static int cut(span s)
{
    int most = hw_words_cut(s.text, QUOTED);
    return (size_t)most < s.len ? most : (int)s.len;
}

static hw_status at_cell(const reader *r, hw_status status, int row, int column)
{
    return hw_err_place(r->err, status, row + 1, column + 1);
}

static hw_status at_value(const reader *r, hw_status status, int row, head what)
{
    return at_cell(r, status, row, r->column[what] < 0 ? 0 : r->column[what]);
}

static hw_status no_memory(const reader *r)
{
    return hw_err_set(
        r->err, HW_ERR_NOMEM, "%s", "there is not enough memory to read what was measured");
}

/* A text in small letters, with plain blanks. Its length; 0 for what is too long for a number. */
static size_t small(span s, char room[VALUE_ROOM])
{
    size_t len = 0;
    for (size_t at = 0; at < s.len && s.len < VALUE_ROOM;) {
        size_t n = blank(s.text + at, s.len - at);
        room[len++] = n > 0 ? ' ' : lower(s.text[at]);
        at += n > 0 ? n : 1;
    }
    return len;
}

/* ---- The head. ---- */

/* Whether a cell is this head; its unit, where it has one. */
static bool is_head(span s, head what, hw_unit *unit)
{
    const char *comma = memchr(s.text, ',', s.len);
    if (comma == NULL || !heads[what].length) {
        return alike(s, heads[what].word);
    }
    size_t before = (size_t)(comma - s.text);
    span word = trimmed(s.text, before);
    span behind = trimmed(comma + 1, s.len - before - 1);
    char sign[VALUE_ROOM];
    size_t len = small(behind, sign);
    return alike(word, heads[what].word) && hw_unit_parse(sign, len, unit) == HW_OK;
}

/* Which head a cell is, or HEADS. */
static head which(span s, hw_unit *unit)
{
    head what = SIZE;
    while (what < HEADS && !is_head(s, what, unit)) {
        what++;
    }
    return what;
}

static bool begins_table(const reader *r, int row, int column)
{
    return alike(cell(r, row, column), heads[SIZE].word) &&
           alike(cell(r, row, column + 1), heads[PIECE].word);
}

/* The first row with `size` and `piece` side by side, or -1. */
static int find_head(const reader *r)
{
    for (int row = 0; row < r->rows->rows; row++) {
        for (int column = 0; column + 1 < r->rows->columns; column++) {
            if (begins_table(r, row, column)) {
                return row;
            }
        }
    }
    return -1;
}

/* A row that would be the head but for a word or two, or -1. */
static int find_headlike(const reader *r)
{
    for (int row = 0; row < r->rows->rows; row++) {
        int known = 0;
        for (int column = 0; column < r->rows->columns; column++) {
            hw_unit unit = r->context->usual;
            known += which(cell(r, row, column), &unit) != HEADS;
        }
        if (known >= HEADS_ENOUGH) {
            return row;
        }
    }
    return -1;
}

static hw_status no_head(const reader *r)
{
    int row = find_headlike(r);
    if (row < 0) {
        return hw_err_set(r->err, HW_ERR_MISSING, "%s",
            "the table of measured pieces is not here: no row begins with `size` and `piece`; take "
            "the sheet `" HW_KNITTED_SHEET "` that was written for this project");
    }
    (void)hw_err_set(r->err, HW_ERR_MISSING, "%s",
        "the heads of this table must begin with `size` and `piece`, side by side; write them in");
    return at_cell(r, HW_ERR_MISSING, row, 0);
}

/* A head that is not known may be the knitter's own, or a known one with a slip in it. */
static hw_status strange_head(const reader *r, int column, span s)
{
    char typed[VALUE_ROOM] = { 0 };
    if (s.len == 0 || s.len >= sizeof typed) {
        return HW_OK;
    }
    memcpy(typed, s.text, s.len);
    const char *near = hw_words_nearest(typed, written, WRITTEN);
    if (near == NULL) {
        return HW_OK;
    }
    (void)hw_err_set(r->err, HW_ERR_UNKNOWN, "`%.*s` is no head of this table; did you mean `%s`?",
        cut(s), s.text, near);
    return at_cell(r, HW_ERR_UNKNOWN, r->head_row, column);
}

static hw_status read_head(reader *r, int column)
{
    span s = cell(r, r->head_row, column);
    hw_unit unit = r->context->usual;
    head what = which(s, &unit);
    if (what == HEADS) {
        return strange_head(r, column, s);
    }
    if (r->column[what] >= 0) {
        (void)hw_err_set(r->err, HW_ERR_REPEATED,
            "two columns have the head `%s`; keep one of them, or rename the other",
            heads[what].word);
        return at_cell(r, HW_ERR_REPEATED, r->head_row, column);
    }
    r->column[what] = column;
    r->unit[what] = unit;
    return HW_OK;
}

static hw_status read_heads(reader *r)
{
    r->head_row = find_head(r);
    if (r->head_row < 0) {
        return no_head(r);
    }
    for (int i = 0; i < HEADS; i++) {
        r->column[i] = -1;
    }
    hw_status status = HW_OK;
    for (int column = 0; column < r->rows->columns && status == HW_OK; column++) {
        status = read_head(r, column);
    }
    if (status != HW_OK) {
        return status;
    }
    bool no_length = r->column[WIDTH] < 0 && r->column[LENGTH] < 0;
    if (!no_length && r->column[FABRIC] >= 0) {
        return HW_OK;
    }
    (void)hw_err_set(r->err, HW_ERR_MISSING,
        "this table has no column `%s`; add one with that head",
        no_length ? heads[WIDTH].word : heads[FABRIC].word);
    return at_cell(r, HW_ERR_MISSING, r->head_row, r->column[SIZE]);
}

/* ---- Names. ---- */

/* The index of a name, capitals counting as small letters where that leaves no doubt; or -1. */
static int find_name(span s, const char *const *names, int count)
{
    int near = -1;
    int nears = 0;
    for (int i = 0; i < count; i++) {
        if (same(s, names[i])) {
            return i;
        }
        if (alike(s, names[i])) {
            near = i;
            nears++;
        }
    }
    return nears == 1 ? near : -1;
}

/* What a row may name, and what it is called. */
typedef struct {
    head what;
    const char *const *names;
    int count;
} choice;

static hw_status unknown_name(const reader *r, int row, const choice *c, span s)
{
    char typed[VALUE_ROOM] = { 0 };
    memcpy(typed, s.text, s.len < sizeof typed ? s.len : 0);
    const char *near = hw_words_nearest(typed, c->names, c->count);
    const char *word = heads[c->what].word;
    const char *shown = near != NULL ? near : c->names[0];
    (void)hw_err_set(r->err, HW_ERR_UNKNOWN, "there is no %s `%.*s` in this project; %s `%.*s`%s",
        word, cut(s), s.text, near != NULL ? "did you mean" : "write one of its own, such as",
        hw_words_cut(shown, QUOTED), shown, near != NULL ? "?" : "");
    return at_value(r, HW_ERR_UNKNOWN, row, c->what);
}

static hw_status read_name(const reader *r, int row, const choice *c, int *out)
{
    span s = value(r, row, c->what);
    if (s.len == 0) {
        const char *word = heads[c->what].word;
        (void)hw_err_set(r->err, HW_ERR_MISSING,
            "this row does not say which %s was measured; write it in the column `%s`", word, word);
        return at_value(r, HW_ERR_MISSING, row, c->what);
    }
    int found = find_name(s, c->names, c->count);
    if (found < 0) {
        return unknown_name(r, row, c, s);
    }
    *out = found;
    return HW_OK;
}

static hw_status read_names(const reader *r, int row, hw_knitted *out)
{
    const hw_garment *garment = r->context->garment;
    const char *pieces[HW_MAX_PIECES] = { NULL };
    for (int i = 0; i < garment->piece_count; i++) {
        pieces[i] = garment->pieces[i].name;
    }
    choice size = { SIZE, r->context->sizes->names, r->context->sizes->count };
    choice piece = { PIECE, pieces, garment->piece_count };
    hw_status status = read_name(r, row, &size, &out->size);
    return status == HW_OK ? read_name(r, row, &piece, &out->piece) : status;
}

static hw_status read_fabric(const reader *r, int row, hw_fabric *out)
{
    span s = value(r, row, FABRIC);
    bool band = alike(s, hw_fabric_name(HW_BAND));
    if (!band && !alike(s, hw_fabric_name(HW_MAIN))) {
        hw_status status = s.len == 0 ? HW_ERR_MISSING : HW_ERR_UNKNOWN;
        (void)hw_err_set(r->err, status,
            "the fabric is %s%.*s%s; write `main` for the plain fabric, or `band`",
            s.len > 0 ? "`" : "", s.len > 0 ? cut(s) : 7, s.len > 0 ? s.text : "missing",
            s.len > 0 ? "`" : "");
        return at_value(r, status, row, FABRIC);
    }
    *out = band ? HW_BAND : HW_MAIN;
    return HW_OK;
}

/* ---- Numbers. ---- */

/* A value with a point where a comma parts whole from broken. Its length. */
static size_t plain_value(const reader *r, span s, char room[VALUE_ROOM])
{
    size_t len = small(s, room);
    char *comma = r->rows->semicolons && len > 0 ? memchr(room, ',', len) : NULL;
    if (comma != NULL && memchr(room, '.', len) == NULL) {
        *comma = '.';
    }
    return len;
}

static const char *comma_words(span s)
{
    return memchr(s.text, ',', s.len) != NULL ? ", with a point" : "";
}

static hw_status bad_value(const reader *r, int row, head what, span s)
{
    (void)hw_err_set(r->err, HW_ERR_SYNTAX, "`%.*s` under `%s` is not %s%s", cut(s), s.text,
        heads[what].word,
        heads[what].length ? "a length; write it such as 31.5 cm or 12 3/8 in"
                           : "a number; write it such as 42 or 42.5",
        comma_words(s));
    return at_value(r, HW_ERR_SYNTAX, row, what);
}

static hw_status bad_range(const reader *r, int row, head what, double most)
{
    (void)hw_err_set(r->err, HW_ERR_RANGE,
        "the number under `%s` must be above 0 and at most %.0f%s; measure or count again",
        heads[what].word, most, heads[what].length ? " cm" : "");
    return at_value(r, HW_ERR_RANGE, row, what);
}

static hw_status read_number(const reader *r, int row, head what, double *out)
{
    span s = value(r, row, what);
    char room[VALUE_ROOM];
    size_t len = plain_value(r, s, room);
    double most = what == STS ? HW_MAX_STS : what == ROWS ? HW_MAX_ROWS : HW_MAX_CM;
    double number = 0;
    hw_status status = heads[what].length ? hw_length_parse(room, len, r->unit[what], &number)
                                          : hw_num_parse(room, len, &number, NULL);
    if (status == HW_ERR_RANGE || (status == HW_OK && !(number > 0 && number <= most))) {
        return bad_range(r, row, what, most);
    }
    if (status != HW_OK) {
        return bad_value(r, row, what, s);
    }
    *out = number;
    return HW_OK;
}

/* A count and what it measures: both, or neither. */
typedef struct {
    head count, length;
} pair;

static const pair across = { STS, WIDTH };
static const pair up = { ROWS, LENGTH };

static hw_status read_pair(const reader *r, int row, pair p, double numbers[2])
{
    const char *count = heads[p.count].word;
    const char *length = heads[p.length].word;
    if (value(r, row, p.length).len == 0) {
        return HW_OK;
    }
    if (value(r, row, p.count).len == 0) {
        (void)hw_err_set(r->err, HW_ERR_MISSING,
            "there is a %s here and no %s; write under `%s` how many %s it is the %s of", length,
            count, count, count, length);
        return at_value(r, HW_ERR_MISSING, row, r->column[p.count] < 0 ? p.length : p.count);
    }
    hw_status status = read_number(r, row, p.length, &numbers[1]);
    if (status == HW_OK) {
        status = read_number(r, row, p.count, &numbers[0]);
    }
    if (status == HW_OK && numbers[0] * 10 > numbers[1] * HW_MAX_PER_10CM) {
        (void)hw_err_set(r->err, HW_ERR_RANGE,
            "this is more than %.0f %s in 10 cm; look at the number under `%s` and at the unit of "
            "the %s",
            HW_MAX_PER_10CM, count, count, length);
        return at_value(r, HW_ERR_RANGE, row, p.length);
    }
    return status;
}

/* ---- Rows. ---- */

static bool is_filled(const reader *r, int row)
{
    return value(r, row, WIDTH).len > 0 || value(r, row, LENGTH).len > 0;
}

static bool is_empty(const reader *r, int row)
{
    int column = 0;
    while (column < r->rows->columns && cell(r, row, column).len == 0) {
        column++;
    }
    return column == r->rows->columns;
}

static hw_status read_row(const reader *r, int row, hw_knitted *out)
{
    hw_knitted k = { .row = row + 1 };
    double widths[2] = { 0, 0 };
    double lengths[2] = { 0, 0 };
    hw_status status = read_names(r, row, &k);
    if (status == HW_OK) {
        status = read_fabric(r, row, &k.fabric);
    }
    if (status == HW_OK) {
        status = read_pair(r, row, across, widths);
    }
    if (status == HW_OK) {
        status = read_pair(r, row, up, lengths);
    }
    span remark = value(r, row, REMARK);
    if (status == HW_OK && remark.len > 0) {
        k.note = hw_arena_text(r->arena, remark.text, remark.len);
        status = k.note == NULL ? no_memory(r) : HW_OK;
    }
    k.sts = widths[0];
    k.width_cm = widths[1];
    k.rows = lengths[0];
    k.length_cm = lengths[1];
    *out = k;
    return status;
}

/* Where the table ends; how many of its rows are filled in. */
static int count_filled(const reader *r, int *end)
{
    int filled = 0;
    int row = r->head_row + 1;
    for (; row < r->rows->rows && !is_empty(r, row); row++) {
        filled += is_filled(r, row) ? 1 : 0;
    }
    *end = row;
    return filled;
}

static hw_status read_pieces(const reader *r, hw_knitted_list *out)
{
    int end = 0;
    int filled = count_filled(r, &end);
    if (filled == 0) {
        (void)hw_err_set(r->err, HW_ERR_MISSING, "%s",
            "nothing was filled in; write under `width` or `length` what was measured");
        return at_cell(r, HW_ERR_MISSING, r->head_row, r->column[SIZE]);
    }
    if (filled > HW_KNITTED_MOST) {
        (void)hw_err_set(r->err, HW_ERR_LIMIT,
            "%d rows are filled in, and at most %d are read; part them into two tables", filled,
            HW_KNITTED_MOST);
        return at_cell(r, HW_ERR_LIMIT, r->head_row, r->column[SIZE]);
    }
    hw_knitted *list = hw_arena_get(r->arena, (size_t)filled, sizeof *list);
    if (list == NULL) {
        return no_memory(r);
    }
    hw_status status = HW_OK;
    int count = 0;
    for (int row = r->head_row + 1; row < end && status == HW_OK; row++) {
        if (is_filled(r, row)) {
            status = read_row(r, row, &list[count]);
            count++;
        }
    }
    if (status == HW_OK) {
        *out = (hw_knitted_list){ .list = list, .count = count };
    }
    return status;
}

hw_status hw_knitted_read(const hw_rows *rows, const hw_knitted_context *context, hw_arena *arena,
    hw_knitted_list *out, hw_err *err)
{
    reader r = { .rows = rows, .context = context, .arena = arena, .err = err };
    hw_status status = read_heads(&r);
    return status == HW_OK ? read_pieces(&r, out) : status;
}

hw_status hw_knitted_rows(const char *text, size_t len, hw_arena *arena, hw_rows *out, hw_err *err)
{
    const char *const pair_of_heads[] = { heads[SIZE].word, heads[PIECE].word };
    hw_rows_text in = { .text = text, .len = len };
    in.separator = hw_rows_separator(text, len, pair_of_heads);
    return hw_rows_csv(&in, arena, out, err);
}
