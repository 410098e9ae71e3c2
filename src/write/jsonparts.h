/* What the parts of the JSON document share.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_JSONPARTS_H
#define HW_WRITE_JSONPARTS_H

#include <jansson.h>

#include "core/buf.h"
#include "core/plan.h"
#include "write/cells.h"

/* One document under construction; a refused allocation is remembered in status. */
typedef struct {
    const hw_plan *plan;
    const hw_tables *tables;
    hw_arena *arena;
    hw_buf *buf; /* where the document goes */
    int told;    /* members of the document, or items of the list under way */
    hw_status status;
} hw_json_writer;

/* Take over a value and write it as a member of the document; NULL is refused memory. */
void hw_json_member(hw_json_writer *w, const char *key, json_t *value);

/*
 * Write a long list as a member of the document.
 *
 * Given:     w
 *            key
 *            items     calls hw_json_item for each
 * Note:      each item is written and given back before the next is made, because a tree of all
 *            rows of a large garment takes some gigabytes
 */
void hw_json_list(hw_json_writer *w, const char *key, void (*items)(hw_json_writer *w));

/* Take over a value and write it as an item of the list under way; NULL is refused memory. */
void hw_json_item(hw_json_writer *w, json_t *value);

/* Take over a value under a key; NULL for either is refused memory. */
void hw_json_put(hw_json_writer *w, json_t *object, const char *key, json_t *value);

/* Take over a value at the end of an array; NULL for either is refused memory. */
void hw_json_add(hw_json_writer *w, json_t *array, json_t *value);

/* Parts, each a new value or NULL when memory is refused: the gauges, the tolerances of each piece
 * and size, where to punch, the alternatives. */
json_t *hw_json_gauges(hw_json_writer *w);
json_t *hw_json_tolerances(hw_json_writer *w);
json_t *hw_json_punch(hw_json_writer *w);
json_t *hw_json_alternatives(hw_json_writer *w);

/* Lists over sizes and pieces of the whole garment: what is drawn above the hems, and every row:
 * see jsonrows.h. */
void hw_json_drafts(hw_json_writer *w);
void hw_json_rowplans(hw_json_writer *w);

/* Trims in every size, a list. */
void hw_json_trims(hw_json_writer *w);

/* Arrays over sizes and pieces: the bands higher up, the lengths of edges that are sewn together.
 * The yarn, or null where nothing is known of it. */
json_t *hw_json_uppers(hw_json_writer *w);
json_t *hw_json_joins(hw_json_writer *w);
json_t *hw_json_yarn(hw_json_writer *w);

#endif
