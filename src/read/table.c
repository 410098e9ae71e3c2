/* Rows of values beside the names of sizes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/table.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"
#include "read/check.h"

/* The marks that a source may have, in the order of the words of its key. */
static const hw_mark marks[] = { HW_MARK_READ, HW_MARK_DERIVED, HW_MARK_CHOICE, HW_MARK_PRACTICE,
    HW_MARK_MEMORY };

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for the sizes");
}

/* The values of a list, or the one value that stands alone. */
static const hw_node *items(const hw_node *node)
{
    return node->kind == HW_NODE_LIST ? node->first : node;
}

static int item_count(const hw_node *node)
{
    return node->kind == HW_NODE_LIST ? node->count : 1;
}

static const hw_node *next_item(const hw_node *list, const hw_node *item)
{
    return list->kind == HW_NODE_LIST ? item->next : NULL;
}

static hw_status fail(
    hw_err *err, const hw_node *node, const char *what, int sizes, const char *way)
{
    int given = item_count(node);
    const char *more = given > sizes ? "; a comma parts two values: write 31.5, with a point" : "";
    (void)hw_err_set(err, HW_ERR_RANGE, "`%.*s` has %d value%s and there %s %d size%s; %s%s",
        hw_words_cut(what, 60), what, given, given == 1 ? "" : "s", sizes == 1 ? "is" : "are",
        sizes, sizes == 1 ? "" : "s", way, more);
    return hw_err_place(err, HW_ERR_RANGE, node->line, node->column);
}

static hw_status read_name(hw_sizes *sizes, int at, const hw_node *item, hw_err *err)
{
    if (!hw_words_name_fits(item->text, item->len)) {
        (void)hw_err_set(err, HW_ERR_LIMIT,
            "the size `%.*s` has a long name; write at most %d letters",
            hw_words_cut(item->text, 60), item->text, HW_WORDS_MAX_NAME);
        return hw_err_place(err, HW_ERR_LIMIT, item->line, item->column);
    }
    for (int i = 0; i < at; i++) {
        if (strcmp(sizes->names[i], item->text) == 0) {
            (void)hw_err_set(err, HW_ERR_REPEATED,
                "the size `%.*s` stands here twice; rename one of them",
                hw_words_cut(item->text, 60), item->text);
            return hw_err_place(err, HW_ERR_REPEATED, item->line, item->column);
        }
    }
    sizes->names[at] = item->text;
    return HW_OK;
}

hw_status hw_table_names(const hw_node *node, hw_arena *arena, hw_sizes *out, hw_err *err)
{
    const hw_node *names = hw_node_find(node, "names");
    const hw_node *ages = hw_node_find(node, "ages");
    hw_sizes sizes = { .title = "", .count = item_count(names), .line = names->line };
    if (sizes.count > HW_MAX_SIZES) {
        (void)hw_err_set(err, HW_ERR_LIMIT,
            "%d sizes are more than one project holds; write at most %d here and the others in a "
            "second project",
            sizes.count, HW_MAX_SIZES);
        return hw_err_place(err, HW_ERR_LIMIT, names->line, names->column);
    }
    size_t count = (size_t)sizes.count;
    sizes.names = hw_arena_get(arena, count, sizeof *sizes.names);
    sizes.ages_months = hw_arena_get(arena, count, sizeof *sizes.ages_months);
    sizes.measures = hw_arena_get(arena, HW_MAX_MEASURES, sizeof *sizes.measures);
    if (sizes.names == NULL || sizes.ages_months == NULL || sizes.measures == NULL) {
        return no_memory(err);
    }
    int at = 0;
    for (const hw_node *n = items(names); n != NULL; n = next_item(names, n), at++) {
        sizes.ages_months[at] = -1;
        hw_status status = read_name(&sizes, at, n, err);
        if (status != HW_OK) {
            return status;
        }
    }
    if (ages != NULL && item_count(ages) != sizes.count) {
        return fail(err, ages, "ages", sizes.count, "give one age in months for each size");
    }
    at = 0;
    for (const hw_node *n = ages != NULL ? items(ages) : NULL; n != NULL; n = next_item(ages, n)) {
        sizes.ages_months[at++] = hw_num_nearest(n->number);
    }
    *out = sizes;
    return HW_OK;
}

static hw_status add_row(
    const char *name, const hw_node *values, hw_sizes *sizes, hw_arena *arena, hw_err *err)
{
    if (item_count(values) != sizes->count) {
        return fail(err, values, name, sizes->count,
            "give one value for each size, or `between` where one is to be filled in");
    }
    if (sizes->measure_count == HW_MAX_MEASURES) {
        (void)hw_err_set(err, HW_ERR_LIMIT,
            "there are more than %d measurements; keep those that the garment needs",
            HW_MAX_MEASURES);
        return hw_err_place(err, HW_ERR_LIMIT, values->line, values->column);
    }
    hw_measure *measure = hw_sizes_add(sizes, name, arena);
    if (measure == NULL) {
        return no_memory(err);
    }
    measure->line = values->line;
    int at = 0;
    for (const hw_node *n = items(values); n != NULL; n = next_item(values, n), at++) {
        measure->missing[at] = n->between;
        measure->values_cm[at] = n->between ? 0.0 : n->number;
        measure->marks[at] = HW_MARK_GIVEN;
        measure->sources[at] = "";
    }
    return HW_OK;
}

hw_status hw_table_rows(const hw_node *node, hw_sizes *sizes, hw_arena *arena, hw_err *err)
{
    for (const hw_node *row = node != NULL ? node->first : NULL; row != NULL; row = row->next) {
        hw_status status = add_row(row->key, row, sizes, arena, err);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

/* Marks and sources of a row: one source for each value, or one for all. */
static hw_status cite(const hw_node *row, const hw_node *sources, hw_sizes *sizes, hw_err *err)
{
    hw_measure *measure = &sizes->measures[sizes->measure_count - 1];
    const hw_node *cited = hw_node_find(row, "source");
    bool one = item_count(cited) == 1;
    if (!one && item_count(cited) != sizes->count) {
        return fail(err, cited, "source", sizes->count,
            "give one source for each value, or one for the whole row");
    }
    const hw_node *n = items(cited);
    for (int i = 0; i < sizes->count; i++) {
        const hw_node *source = hw_node_find(sources, n->text);
        if (source == NULL) {
            (void)hw_err_set(err, HW_ERR_UNKNOWN,
                "`%.*s` is not listed under `sources` in this file; add it there",
                hw_words_cut(n->text, 60), n->text);
            return hw_err_place(err, HW_ERR_UNKNOWN, n->line, n->column);
        }
        measure->marks[i] = marks[hw_num_nearest(hw_node_find(source, "mark")->number)];
        measure->sources[i] = n->text;
        n = one ? n : n->next;
    }
    return HW_OK;
}

hw_status hw_table_read(const char *text, size_t len, hw_arena *arena, hw_sizes *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status =
        hw_check_file(&(hw_check_task){ .text = text, .len = len, .part = HW_PART_SIZES_FILE },
            arena, &root, err);
    hw_sizes sizes = { 0 };
    if (status == HW_OK) {
        status = hw_table_names(root, arena, &sizes, err);
    }
    if (status != HW_OK) {
        return status;
    }
    sizes.title = hw_node_find(root, "title")->text;
    const hw_node *sources = hw_node_find(root, "sources");
    for (const hw_node *row = hw_node_find(root, "body")->first; row != NULL; row = row->next) {
        status = add_row(row->key, hw_node_find(row, "values"), &sizes, arena, err);
        if (status == HW_OK) {
            status = cite(row, sources, &sizes, err);
        }
        if (status != HW_OK) {
            return status;
        }
    }
    *out = sizes;
    return HW_OK;
}
