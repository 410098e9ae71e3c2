/* The marked-up parts of a workbook, walked through tag by tag.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_XML_H
#define HW_READ_XML_H

#include "core/buf.h"
#include "core/err.h"

enum { HW_XML_MOST_BYTES = 20 * 1024 * 1024, HW_XML_MOST_DEPTH = 64 };

/* Who is told of what comes by. Names come without their prefix. What is not HW_OK ends the walk.
 */
typedef struct {
    void *context;
    hw_status (*open)(void *context, const char *name, const char **attributes);
    hw_status (*close)(void *context, const char *name);
    hw_status (*text)(void *context, const char *text, size_t len); /* may come in bites */
} hw_xml_seer;

/* The value of an attribute by its name without a prefix, or NULL; given what `open` was given. */
const char *hw_xml_attribute(const char **attributes, const char *name);

/* Append a text of the walk, with a blank for each sign that no document could show. */
void hw_xml_plain(hw_buf *buf, const char *text, size_t len);

/* Record that a workbook is damaged, and what to do about it. Returned: HW_ERR_SYNTAX. */
hw_status hw_xml_damaged(hw_err *err);

/*
 * Walk through a part from its first tag to its last.
 *
 * Given:     text      len bytes
 *            seer      its members are none NULL
 * Result:    HW_OK; HW_ERR_SYNTAX (not well formed, or it declares a document type or entities);
 *            HW_ERR_LIMIT (too long, too deep); HW_ERR_NOMEM; what the seer says, for which a text
 *            is made only where it is one of these
 * Note:      the walker's own working memory comes from its library, not from the hooks
 */
hw_status hw_xml_read(
    const char *text, size_t len, const hw_xml_seer *seer, hw_err *err) HW_MUST_USE;

#endif
