/* The data files of machines and motifs, and what all readers take from a tree.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_DATAFILE_H
#define HW_READ_DATAFILE_H

#include "core/project.h"
#include "read/yaml.h"

/* Each: Given text, len bytes; Returned out, untouched on failure, all it points to owned by the
 * arena; Result what hw_yaml_read and hw_check_part can say, and what is named below. */

/* Also HW_ERR_RANGE: an odd number of needles; a carriage that reads a card, without columns; a
 * card whose measures do not go together. */
hw_status hw_machine_read(
    const char *text, size_t len, hw_arena *arena, hw_machine *out, hw_err *err) HW_MUST_USE;

/* Also what hw_chart_read can say. */
hw_status hw_motif_read(
    const char *text, size_t len, hw_arena *arena, hw_motif_input *out, hw_err *err) HW_MUST_USE;

/* A chart with its gap, from a mapping that holds `chart` and perhaps `gap`. */
hw_status hw_motif_of(const hw_node *node, const char *name, hw_arena *arena, hw_motif_input *out,
    hw_err *err) HW_MUST_USE;

/* Ease from a checked word: a length or a percentage. */
hw_ease hw_ease_of(const hw_node *word);

/* The text or number of a child, or what stands for it where there is none. */
const char *hw_node_text(const hw_node *node, const char *key, const char *otherwise);
double hw_node_number(const hw_node *node, const char *key, double otherwise);

#endif
