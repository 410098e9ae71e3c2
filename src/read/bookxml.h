/* Which parts of a workbook hold a sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_BOOKXML_H
#define HW_READ_BOOKXML_H

#include "core/err.h"
#include "core/mem.h"

/* The inflated parts that list a workbook's sheets, and where each is. */
typedef struct {
    const char *book;
    size_t book_len;
    const char *links;
    size_t links_len;
    const char *sheet; /* the name of the sheet that is wanted */
} hw_bookxml;

typedef struct {
    const char *sheet; /* names of parts of the file */
    const char *texts; /* NULL where the workbook has no shared texts */
} hw_bookxml_parts;

/*
 * Find a sheet by its name; capitals count as small letters where no name is the very same.
 *
 * Given:     in        at most HW_XML_MOST_BYTES each
 *            arena     owner of the names
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what hw_xml_read can say; HW_ERR_MISSING (no such sheet: says which there are);
 *            HW_ERR_SYNTAX (a sheet that is nowhere); HW_ERR_NOMEM
 */
hw_status hw_bookxml_find(
    const hw_bookxml *in, hw_arena *arena, hw_bookxml_parts *out, hw_err *err) HW_MUST_USE;

#endif
