/* The parts that a workbook's file is made of, inflated.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_PARTS_H
#define HW_SHELL_PARTS_H

#include <unzip.h>

#include "core/err.h"
#include "shell/io.h"

/* Who is shown a part, bite by bite; false ends it. */
typedef bool hw_parts_see(void *context, const char *bytes, size_t len);

/*
 * Inflate the part that the file stands at.
 *
 * Given:     file      open
 *            see, context  who is shown it
 * Returned:  true when all of it was shown and its checksum is right
 */
bool hw_parts_inflate(unzFile file, hw_parts_see *see, void *context) HW_MUST_USE;

/* Put the file before a part; false where there is none of that name. */
bool hw_parts_find(unzFile file, const char *name);

/*
 * Inflate a part whole.
 *
 * Given:     file      open
 *            name      of the part; capitals count as small letters
 *            arena     owner of the text
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (no such part); HW_ERR_USAGE (locked with a password);
 *            HW_ERR_SYNTAX (damaged); HW_ERR_LIMIT (above HW_PARTS_MOST bytes); HW_ERR_NOMEM; all
 *            without a text
 */
enum { HW_PARTS_MOST = 20 * 1024 * 1024 };
hw_status hw_parts_read(
    unzFile file, const char *name, hw_arena *arena, hw_io_text *out) HW_MUST_USE;

#endif
