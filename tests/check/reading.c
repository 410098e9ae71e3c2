/* Good texts, mistakes in them, and what the readers say.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading.h"

#include <stdlib.h>
#include <string.h>

enum { UNTOUCHED = 0x5A, REFUSALS_MOST = 5000 };

char *hw_check_edit(const char *good, const char *old, const char *fresh)
{
    const char *at = old == NULL ? good : strstr(good, old);
    ck_assert_msg(at != NULL, "the good text does not hold \"%s\"", old);
    ck_assert_msg(
        old == NULL || strstr(at + 1, old) == NULL, "the good text holds \"%s\" twice", old);
    size_t before = (size_t)(at - good);
    size_t skipped = old == NULL ? strlen(good) : strlen(old);
    size_t behind = strlen(at + skipped);
    size_t added = strlen(fresh);
    char *text = malloc(before + added + behind + 1);
    ck_assert_ptr_nonnull(text);
    memcpy(text, good, before);
    memcpy(text + before, fresh, added);
    memcpy(text + before + added, at + skipped, behind + 1);
    return text;
}

void hw_check_plain(const hw_err *err)
{
    /* Own choice: words that a knitter does not use. */
    static const char *const foreign[] = { "NULL", "null", "pars", "token", "string", "integer",
        "invalid", "scalar", "node", "YAML", "mapping", "sequence", "boolean", "buffer", "syntax",
        "character", "a one of", "a words", "a yes" };
    size_t len = strlen(err->text);
    ck_assert_uint_gt(len, 0);
    ck_assert_msg(len < sizeof err->text - 1, "cut off: %s", err->text);
    ck_assert_msg(strpbrk(err->text, "\r\n") == NULL, "more than a line: %s", err->text);
    const char *loud = strchr(err->text, '!'); /* as a sign that a file holds it stands alone */
    ck_assert_msg(loud == NULL || loud[-1] == ' ', "loud: %s", err->text);
    ck_assert_msg(strchr(".; ", err->text[len - 1]) == NULL, "a loose end: %s", err->text);
    ck_assert_msg(strstr(err->text, "``") == NULL, "an empty quotation: %s", err->text);
    for (size_t i = 0; i < sizeof foreign / sizeof foreign[0]; i++) {
        ck_assert_msg(
            strstr(err->text, foreign[i]) == NULL, "\"%s\" in: %s", foreign[i], err->text);
    }
}

static bool untouched(const unsigned char *bytes, size_t size)
{
    for (size_t i = 0; i < size; i++) {
        if (bytes[i] != UNTOUCHED) {
            return false;
        }
    }
    return true;
}

void hw_check_told(const hw_check_reader *reader, const hw_check_fault *fault)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_err err = { 0 };
    char *text = hw_check_edit(reader->good, fault->old, fault->fresh);
    unsigned char *out = malloc(reader->size);
    ck_assert_ptr_nonnull(out);
    memset(out, UNTOUCHED, reader->size);
    hw_check_open(&arena, &heap, 0, false);
    hw_status status = reader->read(text, strlen(text), &arena, out, &err);
    ck_assert_msg(status == fault->status && err.code == status, "\"%.60s\": status %d, %d: %s",
        fault->fresh, (int)status, (int)err.code, err.text);
    ck_assert_msg(err.line == fault->line && err.column == fault->column, "\"%.60s\": at %d:%d: %s",
        fault->fresh, err.line, err.column, err.text);
    ck_assert_msg(strstr(err.text, fault->found) != NULL && strstr(err.text, fault->way) != NULL,
        "\"%.60s\": %s", fault->fresh, err.text);
    hw_check_plain(&err);
    ck_assert(untouched(out, reader->size));
    /* Nobody has to ask for the message. */
    ck_assert_int_eq(reader->read(text, strlen(text), &arena, out, NULL), status);
    hw_check_close(&arena, &heap);
    free(out);
    free(text);
}

void hw_check_taken(const hw_check_reader *reader, const char *text, hw_arena *arena, void *out)
{
    hw_err err = { 0 };
    hw_status status = reader->read(text, strlen(text), arena, out, &err);
    ck_assert_msg(status == HW_OK, "%d:%d: %s", err.line, err.column, err.text);
    ck_assert_int_eq(err.code, HW_OK);
}

void hw_check_refused(const hw_check_reader *reader, int at_least)
{
    unsigned char *out = malloc(reader->size);
    ck_assert_ptr_nonnull(out);
    int refused = 0;
    for (hw_status status = HW_ERR_NOMEM; status == HW_ERR_NOMEM; refused++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_err err = { 0 };
        ck_assert_int_lt(refused, REFUSALS_MOST);
        memset(out, UNTOUCHED, reader->size);
        hw_check_open(&arena, &heap, refused + 1, refused % 2 == 0);
        status = reader->read(reader->good, strlen(reader->good), &arena, out, &err);
        ck_assert_int_eq(err.code, status);
        ck_assert(status == HW_OK || untouched(out, reader->size));
        if (status != HW_OK) {
            hw_check_plain(&err);
        }
        hw_check_close(&arena, &heap);
    }
    free(out);
    ck_assert_int_gt(refused, at_least);
}
