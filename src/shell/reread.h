/* Reading a workbook's file again, to see that all of it is there.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_REREAD_H
#define HW_SHELL_REREAD_H

#include "core/err.h"

/*
 * Look through a workbook: every part ends with the tag that closes it, every sheet has its cells.
 *
 * Given:     path      an .xlsx file
 *            cells     [count] cells written to each sheet, blank ones with a look included
 *            count     sheets, above 0
 * Result:    HW_OK; HW_ERR_IO, without a text, where anything is missing or unreadable
 */
hw_status hw_reread_book(const char *path, const long *cells, int count) HW_MUST_USE;

#endif
