/* A garment file into rules, pieces and seams.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_GARMENTFILE_H
#define HW_READ_GARMENTFILE_H

#include "core/garment.h"

/*
 * Read a garment file.
 *
 * Given:     text      len bytes
 *            arena     owner of all that out points to
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what hw_yaml_read, hw_check_part and hw_rule_read can say; HW_ERR_UNKNOWN (a
 *            piece or edge that is not there), HW_ERR_REPEATED (an edge sewn twice), HW_ERR_LIMIT
 */
hw_status hw_garment_read(
    const char *text, size_t len, hw_arena *arena, hw_garment *out, hw_err *err) HW_MUST_USE;

#endif
