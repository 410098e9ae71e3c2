/* Chance texts as tables, sheets and lists of sheets: never a crash, and what is taken makes sense.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source of what must hold: own choice; see the headers of what is read. */
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "read/bookxml.h"
#include "read/knitted.h"
#include "read/sheetxml.h"
#include "read/yaml.h"

const char hw_fuzz_corpus[] = "sheet";

/* The first byte says what the rest is; the parts of a workbook are parted by a byte of 0. */
enum { TABLE, SHEET, BOOK, KINDS };

static const char *names[] = { "4 years", "6 years", "98" };
static const hw_sizes sizes = { .title = "", .count = 3, .names = names };
static const hw_piece pieces[] = { { .name = "front", .mirror_of = -1 },
    { .name = "sleeve", .mirror_of = -1 } };
static const hw_garment garment = { .title = "", .pieces = pieces, .piece_count = 2 };
static const hw_knitted_context context = { &sizes, &garment, HW_UNIT_IN };

static void insist(bool good)
{
    if (!good) {
        abort();
    }
}

static void check_err(hw_status status, const hw_err *err)
{
    insist(err->code == status);
    insist(status == HW_OK || (err->text[0] != '\0' && strlen(err->text) < sizeof err->text - 1));
    insist(hw_yaml_is_text(err->text, strlen(err->text)) && strpbrk(err->text, "\r\n") == NULL);
    insist(err->line >= 0 && err->column >= 0);
}

/* A count and a length: both measured, or neither. */
static bool paired(double count, double length, double most)
{
    bool none = !(count > 0) && !(length > 0);
    return none || (count > 0 && count <= most && length > 0 && length <= HW_MAX_CM &&
                       count * 10 <= length * HW_MAX_PER_10CM);
}

static void check_list(const hw_rows *rows, const hw_knitted_list *list)
{
    insist(list->count > 0 && list->count <= HW_KNITTED_MOST);
    for (int i = 0; i < list->count; i++) {
        const hw_knitted *k = &list->list[i];
        insist(k->size >= 0 && k->size < sizes.count);
        insist(k->piece >= 0 && k->piece < garment.piece_count);
        insist(k->fabric == HW_MAIN || k->fabric == HW_BAND);
        insist(paired(k->sts, k->width_cm, HW_MAX_STS));
        insist(paired(k->rows, k->length_cm, HW_MAX_ROWS));
        insist(k->note == NULL || hw_yaml_is_text(k->note, strlen(k->note)));
        insist(k->width_cm > 0 || k->length_cm > 0);
        insist(k->row > 1 && k->row <= rows->rows);
        insist(i == 0 || k->row > list->list[i - 1].row);
    }
}

static void check_rows(const hw_rows *rows, hw_arena *arena)
{
    hw_knitted_list list = { NULL, 0 };
    hw_err err = { .code = HW_OK };
    insist(rows->rows <= HW_ROWS_MOST && rows->columns <= HW_ROWS_MOST_COLUMNS);
    hw_status status = hw_knitted_read(rows, &context, arena, &list, &err);
    check_err(status, &err);
    if (status == HW_OK) {
        check_list(rows, &list);
    }
}

static hw_status read_table(const char *text, size_t len, hw_arena *arena, hw_err *err)
{
    hw_rows rows = { .rows = 0 };
    hw_status status = hw_knitted_rows(text, len, arena, &rows, err);
    if (status == HW_OK) {
        check_rows(&rows, arena);
    }
    return status;
}

static hw_status read_sheet(const char *text, size_t len, hw_arena *arena, hw_err *err)
{
    const char *parted = memchr(text, '\0', len);
    size_t first = parted != NULL ? (size_t)(parted - text) : len;
    hw_rows rows = { .rows = 0 };
    hw_sheetxml in = { .sheet = text,
        .sheet_len = first,
        .texts = parted != NULL ? parted + 1 : NULL,
        .texts_len = parted != NULL ? len - first - 1 : 0 };
    hw_status status = hw_sheetxml_rows(&in, arena, &rows, err);
    if (status == HW_OK) {
        check_rows(&rows, arena);
    }
    return status;
}

static hw_status read_book(const char *text, size_t len, hw_arena *arena, hw_err *err)
{
    const char *parted = memchr(text, '\0', len);
    size_t first = parted != NULL ? (size_t)(parted - text) : len;
    hw_bookxml_parts parts = { NULL, NULL };
    hw_bookxml in = { .book = text,
        .book_len = first,
        .links = parted != NULL ? parted + 1 : text,
        .links_len = parted != NULL ? len - first - 1 : len,
        .sheet = HW_KNITTED_SHEET };
    hw_status status = hw_bookxml_find(&in, arena, &parts, err);
    insist((parts.sheet != NULL) == (status == HW_OK));
    return status;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static hw_status (*const readers[])(const char *, size_t, hw_arena *, hw_err *) = {
        [TABLE] = read_table,
        [SHEET] = read_sheet,
        [BOOK] = read_book,
    };
    if (size == 0) {
        return 0;
    }
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_err err = { .code = HW_OK };
    hw_arena_init(&arena, &mem, 0);
    check_err(readers[data[0] % KINDS]((const char *)data + 1, size - 1, &arena, &err), &err);
    hw_arena_release(&arena);
    return 0;
}
