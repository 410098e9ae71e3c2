/* A name for each status.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "status_names.h"

static const char *const names[] = {
    [HW_OK] = "ok",
    [HW_ERR_SYNTAX] = "syntax",
    [HW_ERR_UNKNOWN] = "unknown",
    [HW_ERR_REPEATED] = "repeated",
    [HW_ERR_MISSING] = "missing",
    [HW_ERR_KIND] = "kind",
    [HW_ERR_RANGE] = "range",
    [HW_ERR_LIMIT] = "limit",
    [HW_ERR_USAGE] = "usage",
    [HW_ERR_NOFIT] = "no fit",
    [HW_ERR_IO] = "file",
    [HW_ERR_NOMEM] = "memory",
    [HW_ERR_INTERNAL] = "internal",
};
_Static_assert(sizeof names / sizeof names[0] == HW_STATUS_COUNT, "a name for each status");

const char *status_name(hw_status status)
{
    return names[status];
}
