/* A sheet of a workbook into a grid of text cells.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_SHEETXML_H
#define HW_READ_SHEETXML_H

#include "read/rows.h"

/* The inflated parts of a workbook that hold one sheet. */
typedef struct {
    const char *sheet;
    size_t sheet_len;
    const char *texts; /* the texts that all sheets share; NULL where there are none */
    size_t texts_len;
} hw_sheetxml;

/*
 * Read a sheet.
 *
 * Given:     in        at most HW_XML_MOST_BYTES each
 *            arena     owner of the grid
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what hw_xml_read and hw_rows_end can say; HW_ERR_SYNTAX (a place or a shared
 *            text that cannot be)
 * Note:      a number with an exponent is written out; yes-or-no cells read TRUE and FALSE; a
 *            formula counts by the value that was stored with it
 */
hw_status hw_sheetxml_rows(
    const hw_sheetxml *in, hw_arena *arena, hw_rows *out, hw_err *err) HW_MUST_USE;

#endif
