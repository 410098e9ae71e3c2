/* Checked corners into edges, their measurements looked up while line and column are known.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/corners.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"
#include "read/datafile.h"

_Static_assert(HW_WORDS_MAX_NAME == 40, "a message below says 40");

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for the garment");
}

static bool is_finished(const hw_garment *garment, const char *name)
{
    bool found = false;
    for (int i = 0; i < garment->finished_count; i++) {
        found = found || strcmp(garment->finished[i].name, name) == 0;
    }
    return found;
}

/* Names of measurements are checked here, where the line is known, not when a size is worked out.
 */
static hw_status check_names(
    const hw_garment *garment, const hw_rule *rule, const hw_node *node, hw_err *err)
{
    const char *names[HW_MAX_MEASURES];
    for (int i = 0; i < garment->finished_count; i++) {
        names[i] = garment->finished[i].name;
    }
    for (int t = 0; t < rule->count; t++) {
        const char *name = rule->terms[t].name;
        if (is_finished(garment, name)) {
            continue;
        }
        const char *near = hw_words_nearest(name, names, garment->finished_count);
        (void)hw_err_set(err, HW_ERR_UNKNOWN,
            "`%s` is no finished measurement of this garment; %s%s%s", name,
            near != NULL ? "did you mean `" : "write it under `finished` first",
            near != NULL ? near : "", near != NULL ? "`?" : "");
        return hw_err_place(err, HW_ERR_UNKNOWN, node->line, node->column);
    }
    return HW_OK;
}

hw_status hw_corners_rule(
    const hw_corners_reading *reading, const hw_node *node, hw_rule *out, hw_err *err)
{
    hw_rule rule = { 0 };
    hw_rule_reading how = { .usual = reading->usual, .finished = true };
    hw_status status = hw_rule_read(node, how, reading->arena, &rule, err);
    status = status == HW_OK ? check_names(reading->garment, &rule, node, err) : status;
    if (status == HW_OK) {
        *out = rule;
    }
    return status;
}

static hw_status read_corner(
    const hw_corners_reading *reading, const hw_node *node, hw_corner *corner, hw_err *err)
{
    corner->line = node->line;
    corner->stretch = hw_node_text(node, "stretch", corner->stretch);
    corner->curve = (hw_curve)hw_num_nearest(hw_node_number(node, "curve", HW_CURVE_STRAIGHT));
    if (!hw_words_name_fits(corner->stretch, strlen(corner->stretch))) {
        const hw_node *word = hw_node_find(node, "stretch");
        (void)hw_err_set(
            err, HW_ERR_LIMIT, "%s", "this stretch has a long name; write at most 40 letters");
        return hw_err_place(err, HW_ERR_LIMIT, word->line, word->column);
    }
    hw_status status = hw_corners_rule(reading, hw_node_find(node, "across"), &corner->across, err);
    return status == HW_OK ? hw_corners_rule(reading, hw_node_find(node, "up"), &corner->up, err)
                           : status;
}

static hw_status read_edge(
    const hw_corners_reading *reading, const hw_node *list, hw_edge_rule *out, hw_err *err)
{
    if (list == NULL) {
        return HW_OK;
    }
    if (list->count > HW_MAX_CORNERS) {
        (void)hw_err_set(err, HW_ERR_LIMIT, "%d corners are too many; an edge has at most %d",
            list->count, HW_MAX_CORNERS);
        return hw_err_place(err, HW_ERR_LIMIT, list->line, list->column);
    }
    hw_corner *corners = hw_arena_get(reading->arena, (size_t)list->count, sizeof *corners);
    if (corners == NULL) {
        return no_memory(err);
    }
    const char *stretch = strcmp(list->key, "neck") == 0 ? "neck" : "side";
    int count = 0;
    for (const hw_node *node = list->first; node != NULL; node = node->next) {
        corners[count].stretch = stretch;
        hw_status status = read_corner(reading, node, &corners[count], err);
        if (status != HW_OK) {
            return status;
        }
        stretch = corners[count++].stretch;
    }
    *out = (hw_edge_rule){ .corners = corners, .count = count };
    return HW_OK;
}

hw_status hw_corners_read(
    const hw_corners_reading *reading, const hw_node *node, hw_outline_rule **out, hw_err *err)
{
    hw_outline_rule *outline = hw_arena_get(reading->arena, 1, sizeof *outline);
    if (outline == NULL) {
        return no_memory(err);
    }
    outline->line = node->line;
    struct {
        const char *key;
        hw_edge_rule *edge;
    } edges[] = { { "left", &outline->sides[HW_LEFT] }, { "right", &outline->sides[HW_RIGHT] },
        { "neck", &outline->neck } };
    for (size_t i = 0; i < sizeof edges / sizeof edges[0]; i++) {
        hw_status status = read_edge(reading, hw_node_find(node, edges[i].key), edges[i].edge, err);
        if (status != HW_OK) {
            return status;
        }
    }
    if (outline->sides[HW_LEFT].count == 0 && outline->sides[HW_RIGHT].count == 0) {
        (void)hw_err_set(err, HW_ERR_MISSING, "%s",
            "an outline needs its right edge, or its left one: write `right:` and a line for each "
            "corner, such as `- { across: 0.5 x chest, up: length }`");
        return hw_err_place(err, HW_ERR_MISSING, node->line, node->column);
    }
    *out = outline;
    return HW_OK;
}

static bool edge_has(const hw_edge_rule *edge, const char *stretch)
{
    bool found = false;
    for (int i = 0; i < edge->count; i++) {
        found = found || strcmp(edge->corners[i].stretch, stretch) == 0;
    }
    return found;
}

bool hw_corners_has(const hw_outline_rule *outline, hw_edge edge, const char *stretch)
{
    if (edge == HW_EDGE_TOP) {
        return false;
    }
    if (edge == HW_EDGE_NECK_LEFT || edge == HW_EDGE_NECK_RIGHT) {
        return edge_has(&outline->neck, stretch);
    }
    /* An edge that is not drawn mirrors the other; of a mirrored piece the sides change places. */
    hw_side side = (edge == HW_EDGE_LEFT) != outline->mirrored ? HW_LEFT : HW_RIGHT;
    hw_side other = side == HW_LEFT ? HW_RIGHT : HW_LEFT;
    bool drawn = outline->sides[side].count > 0;
    return edge_has(&outline->sides[drawn ? side : other], stretch);
}
