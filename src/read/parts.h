/* Parts that stand in several places of a project: a fabric's gauge, a motif, a hem.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_PARTS_H
#define HW_READ_PARTS_H

#include "core/project.h"
#include "read/yaml.h"

/* A name that stands for a data file, or one without a name where the key is not there. */
hw_reference hw_parts_reference(const hw_node *node, const char *key);

/* Each: Given a checked mapping; Returned out, all it points to owned by the arena, not to be used
 * on failure; Result HW_OK, HW_ERR_NOMEM and what is named, with line and column. */

/* HW_ERR_MISSING, HW_ERR_REPEATED, HW_ERR_LIMIT. */
hw_status hw_parts_fabric(
    const hw_node *node, hw_arena *arena, hw_gauge_input *out, hw_err *err) HW_MUST_USE;

/* HW_ERR_MISSING, HW_ERR_REPEATED; what hw_motif_of can say. */
hw_status hw_parts_motif(
    const hw_node *node, hw_arena *arena, hw_motif_choice *out, hw_err *err) HW_MUST_USE;

/* HW_ERR_REPEATED (depth and rows); where it must be sized, HW_ERR_MISSING (neither). `usual`: the
 * hem whose cast-on and closing it has where it says nothing of them; NULL: open, and hung. */
hw_status hw_parts_hem(const hw_node *node, bool sized, const hw_hem_input *usual,
    hw_hem_input *out, hw_err *err) HW_MUST_USE;

#endif
