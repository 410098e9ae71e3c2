/* A strict part of YAML as a small tree: mappings, lists and words, with line and column on each.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_YAML_H
#define HW_READ_YAML_H

#include "core/err.h"
#include "core/mem.h"
#include "core/units.h"

enum {
    HW_YAML_MAX_BYTES = 1 << 20,
    HW_YAML_MAX_NODES = 50000,
    HW_YAML_MAX_DEPTH = 8,
    HW_YAML_MAX_LINE = 2000 /* characters */
};

typedef enum { HW_NODE_WORD, HW_NODE_LIST, HW_NODE_MAP } hw_node_kind;

/* A word (scalar), a list or a mapping. Children are linked in the order of the file. */
typedef struct hw_node {
    hw_node_kind kind;
    const char *key; /* in a mapping; else NULL */
    int key_line, key_column;
    int line, column; /* 1-based, of the value */
    const char *text; /* of a word */
    size_t len;
    bool block;       /* a word written as a block of lines, behind `|` */
    int block_indent; /* columns before its first line */
    struct hw_node *first, *next;
    int count; /* children */

    /* Set by hw_keys_check. */
    double number;
    bool percent, between;
} hw_node;

/*
 * Read a text as a tree.
 *
 * Given:     text      len bytes
 *            arena     owner of the tree
 * Returned:  out       a mapping; untouched on failure
 * Result:    HW_OK; HW_ERR_SYNTAX (not UTF-8, not this part of YAML, no mapping), HW_ERR_LIMIT (too
 *            long, too deep, too many), HW_ERR_REPEATED (a key), HW_ERR_NOMEM
 * Note:      anchors, aliases, tags and second documents are refused
 */
hw_status hw_yaml_read(
    const char *text, size_t len, hw_arena *arena, hw_node **out, hw_err *err) HW_MUST_USE;

/* Whether a text is UTF-8 throughout, without control characters but line ends and tabs. */
bool hw_yaml_is_text(const char *text, size_t len);

/* The child with a key, or NULL; node may be NULL. */
hw_node *hw_node_find(const hw_node *node, const char *key);

/* Record what is wrong at a node, with its line and column. Returned: status. */
hw_status hw_node_refuse(
    hw_err *err, hw_status status, const hw_node *node, const char *sentence) HW_MUST_USE;

#endif
