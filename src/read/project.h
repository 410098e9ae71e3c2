/* A project file into a project.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_PROJECT_H
#define HW_READ_PROJECT_H

#include "core/project.h"

/*
 * Read a project file. What it names (machine, garment, size table, motif) is left for the caller
 * to read and fill in.
 *
 * Given:     text      len bytes
 *            arena     owner of all that out points to
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what hw_yaml_read, hw_check_part, hw_chart_read and hw_table_rows can say
 */
hw_status hw_project_read(
    const char *text, size_t len, hw_arena *arena, hw_project *out, hw_err *err) HW_MUST_USE;

#endif
