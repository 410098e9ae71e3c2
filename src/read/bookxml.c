/* The list of sheets names links; the links name parts.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/bookxml.h"

#include <string.h>

#include "core/buf.h"
#include "core/words.h"
#include "read/xml.h"

enum { TOLD = 4, QUOTED = 40 };

static const char folder[] = "xl/";
static const char texts_kind[] = "/sharedStrings";

/* ---- The list of sheets. ---- */

typedef struct {
    const char *wanted;
    hw_arena *arena;
    const char *link; /* of the sheet; NULL while it is not found */
    bool same;        /* its name is the very same */
    const char *names[TOLD];
    int count; /* of all sheets */
} book_reader;

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool alike(const char *a, const char *b)
{
    while (*a != '\0' && lower(*a) == lower(*b)) {
        a++;
        b++;
    }
    return *a == *b;
}

static const char *keep(hw_arena *arena, const char *text)
{
    return hw_arena_text(arena, text, strlen(text));
}

static hw_status book_open(void *context, const char *name, const char **attributes)
{
    book_reader *r = context;
    const char *title = hw_xml_attribute(attributes, "name");
    const char *link = hw_xml_attribute(attributes, "id");
    if (strcmp(name, "sheet") != 0 || title == NULL || link == NULL) {
        return HW_OK;
    }
    if (r->count < TOLD) {
        r->names[r->count] = keep(r->arena, title);
        if (r->names[r->count] == NULL) {
            return HW_ERR_NOMEM;
        }
    }
    r->count++;
    bool same = strcmp(title, r->wanted) == 0;
    if (r->same || !(same || (r->link == NULL && alike(title, r->wanted)))) {
        return HW_OK;
    }
    r->same = same;
    r->link = keep(r->arena, link);
    return r->link == NULL ? HW_ERR_NOMEM : HW_OK;
}

static hw_status pass_close(void *context, const char *name)
{
    (void)context;
    (void)name;
    return HW_OK;
}

static hw_status pass_text(void *context, const char *text, size_t len)
{
    (void)context;
    (void)text;
    (void)len;
    return HW_OK;
}

/* The names that were met, in a sentence: `a`, `b` and others. */
static const char *told(const book_reader *r)
{
    hw_buf buf;
    hw_buf_init(&buf, &r->arena->mem, HW_BUF_LIMIT);
    for (int i = 0; i < r->count && i < TOLD; i++) {
        hw_buf_text(&buf, i > 0 ? ", `" : "`");
        hw_xml_plain(&buf, r->names[i], (size_t)hw_words_cut(r->names[i], QUOTED));
        hw_buf_text(&buf, "`");
    }
    hw_buf_text(&buf, r->count == 0 ? "none" : r->count > TOLD ? " and others" : "");
    const char *text = hw_buf_keep(&buf, r->arena);
    hw_buf_release(&buf);
    return text;
}

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to read this workbook");
}

static hw_status find_link(const hw_bookxml *in, hw_arena *arena, const char **out, hw_err *err)
{
    book_reader r = { .wanted = in->sheet, .arena = arena };
    hw_xml_seer seer = { &r, book_open, pass_close, pass_text };
    hw_status status = hw_xml_read(in->book, in->book_len, &seer, err);
    if (status != HW_OK) {
        return status;
    }
    if (r.link == NULL) {
        const char *names = told(&r);
        return names == NULL ? no_memory(err)
                             : hw_err_set(err, HW_ERR_MISSING,
                                   "this workbook has no sheet `%.*s`; its sheets: %s. Take the "
                                   "workbook that was written for this project",
                                   hw_words_cut(in->sheet, QUOTED), in->sheet, names);
    }
    *out = r.link;
    return HW_OK;
}

/* ---- The links. ---- */

typedef struct {
    const char *link;
    hw_arena *arena;
    hw_bookxml_parts parts;
} links_reader;

static bool ends_with(const char *text, const char *end)
{
    size_t len = strlen(text);
    return len >= strlen(end) && strcmp(text + len - strlen(end), end) == 0;
}

/* A link leads on from the folder of the workbook's own list, unless it begins with a slash. */
static const char *part_name(hw_arena *arena, const char *target)
{
    return target[0] == '/' ? keep(arena, target + 1)
                            : hw_arena_format(arena, "%s%s", folder, target);
}

static hw_status links_open(void *context, const char *name, const char **attributes)
{
    links_reader *r = context;
    const char *link = hw_xml_attribute(attributes, "Id");
    const char *kind = hw_xml_attribute(attributes, "Type");
    const char *target = hw_xml_attribute(attributes, "Target");
    if (strcmp(name, "Relationship") != 0 || link == NULL || kind == NULL || target == NULL) {
        return HW_OK;
    }
    bool sheet = strcmp(link, r->link) == 0;
    if (!sheet && !ends_with(kind, texts_kind)) {
        return HW_OK;
    }
    const char *part = part_name(r->arena, target);
    if (part == NULL) {
        return HW_ERR_NOMEM;
    }
    *(sheet ? &r->parts.sheet : &r->parts.texts) = part;
    return HW_OK;
}

hw_status hw_bookxml_find(const hw_bookxml *in, hw_arena *arena, hw_bookxml_parts *out, hw_err *err)
{
    links_reader r = { .arena = arena };
    hw_status status = find_link(in, arena, &r.link, err);
    if (status == HW_OK) {
        hw_xml_seer seer = { &r, links_open, pass_close, pass_text };
        status = hw_xml_read(in->links, in->links_len, &seer, err);
    }
    if (status == HW_OK && r.parts.sheet == NULL) {
        status = hw_xml_damaged(err);
    }
    if (status == HW_OK) {
        *out = r.parts;
    }
    return status;
}
