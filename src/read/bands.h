/* What a project says beside its hem: other bands, trims, yarn and safety.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_BANDS_H
#define HW_READ_BANDS_H

#include "core/project.h"
#include "read/yaml.h"

/*
 * Read `bands`, `trims`, `yarn` and `safety`.
 *
 * Given:     root      the checked tree of a project
 *            project   its hem is read: others are begun and closed as that is
 *            arena     owner of all that is read
 * Returned:  project   with these added; not to be used on failure
 * Result:    HW_OK; what hw_parts_fabric, hw_parts_motif and hw_parts_hem can say; HW_ERR_MISSING
 *            or HW_ERR_REPEATED (where a band lies); HW_ERR_LIMIT, with line and column;
 *            HW_ERR_NOMEM
 * Note:      whether pieces and trims of those names are there is known once the garment is read:
 *            hw_bands_check
 */
hw_status hw_bands_read(
    const hw_node *root, hw_arena *arena, hw_project *project, hw_err *err) HW_MUST_USE;

/*
 * Whether the pieces, trims and measurements that a project names are those of its garment.
 *
 * Given:     project   its garment is read
 * Result:    HW_OK; HW_ERR_UNKNOWN, with the line and the nearest right name
 */
hw_status hw_bands_check(const hw_project *project, hw_err *err) HW_MUST_USE;

#endif
