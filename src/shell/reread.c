/* Reading a workbook's file again: each part is inflated and looked through once, in small bites.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/reread.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "shell/parts.h"

enum { NAME_ROOM = 64, TAG_ROOM = 64, HEAD_ROOM = 512 };

static const char cell_tag[] = "<c ";
static const char text_tag[] = "<si>";
static const char text_part[] = "xl/sharedStrings.xml";
static const char text_count[] = " uniqueCount=\"";

/* What has been seen of one part. */
typedef struct {
    char root[TAG_ROOM]; /* the name of its outermost tag */
    size_t root_len;
    bool in_root, has_root;
    char tail[TAG_ROOM]; /* its last bytes */
    size_t tail_len;
    char head[HEAD_ROOM]; /* its first bytes, a NUL behind them */
    size_t head_len;
    const char *tag; /* the tag that is counted */
    size_t matched;  /* bytes of it seen in a row */
    long count;
} part;

/* The outermost tag begins at the first `<` before a letter. */
static void see_root(part *p, char byte)
{
    bool letter = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
    if (p->has_root) {
        return;
    }
    if (p->in_root && (letter || byte == ':') && p->root_len < sizeof p->root) {
        p->root[p->root_len++] = byte;
        return;
    }
    p->has_root = p->in_root && p->root_len > 0;
    p->in_root = byte == '<';
}

static void see_tag(part *p, char byte)
{
    if (byte != p->tag[p->matched]) {
        p->matched = 0;
    }
    p->matched += byte == p->tag[p->matched];
    if (p->tag[p->matched] == '\0') {
        p->count++;
        p->matched = 0;
    }
}

static void see(part *p, const char *bytes, size_t len)
{
    for (size_t i = 0; i < len; i++) {
        see_root(p, bytes[i]);
        see_tag(p, bytes[i]);
        if (p->head_len < sizeof p->head - 1) {
            p->head[p->head_len++] = bytes[i];
        }
    }
    size_t keep = len < sizeof p->tail ? len : sizeof p->tail;
    size_t old = p->tail_len + keep > sizeof p->tail ? sizeof p->tail - keep : p->tail_len;
    memmove(p->tail, p->tail + (p->tail_len - old), old);
    memcpy(p->tail + old, bytes + (len - keep), keep);
    p->tail_len = old + keep;
}

static bool closed(const part *p)
{
    size_t len = p->tail_len;
    while (len > 0 && (p->tail[len - 1] == '\n' || p->tail[len - 1] == '\r')) {
        len--;
    }
    if (!p->has_root || len < p->root_len + 3) {
        return false;
    }
    const char *end = p->tail + len - p->root_len - 3;
    return memcmp(end, "</", 2) == 0 && memcmp(end + 2, p->root, p->root_len) == 0 &&
           p->tail[len - 1] == '>';
}

static bool see_bite(void *context, const char *bytes, size_t len)
{
    see(context, bytes, len);
    return true;
}

/* Look through the part that the file stands at. */
static bool look_through(unzFile file, part *p)
{
    return hw_parts_inflate(file, see_bite, p);
}

/* Every part of a workbook without pictures is XML. */
static bool all_closed(unzFile file)
{
    int at = unzGoToFirstFile(file);
    while (at == UNZ_OK) {
        part p = { .tag = cell_tag };
        if (!look_through(file, &p) || !closed(&p)) {
            return false;
        }
        at = unzGoToNextFile(file);
    }
    return at == UNZ_END_OF_LIST_OF_FILE;
}

static bool sheet_whole(unzFile file, int number, long cells)
{
    char name[NAME_ROOM];
    int len = snprintf(name, sizeof name, "xl/worksheets/sheet%d.xml", number);
    part p = { .tag = cell_tag };
    return len > 0 && (size_t)len < sizeof name && unzLocateFile(file, name, 1) == UNZ_OK &&
           look_through(file, &p) && p.count == cells;
}

/* The texts that the sheets' cells point to: as many as their part says itself. */
static bool texts_whole(unzFile file)
{
    part p = { .tag = text_tag };
    if (unzLocateFile(file, text_part, 1) != UNZ_OK) {
        return true; /* a workbook without texts has no such part */
    }
    const char *said = look_through(file, &p) ? strstr(p.head, text_count) : NULL;
    return said != NULL && strtol(said + strlen(text_count), NULL, 10) == p.count;
}

hw_status hw_reread_book(const char *path, const long *cells, int count)
{
    unzFile file = unzOpen64(path);
    if (file == NULL) {
        return HW_ERR_IO;
    }
    bool whole = all_closed(file) && texts_whole(file);
    for (int i = 0; i < count && whole; i++) {
        whole = sheet_whole(file, i + 1, cells[i]);
    }
    (void)unzClose(file); /* nothing was written */
    return whole ? HW_OK : HW_ERR_IO;
}
