/* Checked trees into machines and motifs, and what all readers take from a tree.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/datafile.h"

#include "core/num.h"
#include "read/chart.h"
#include "read/check.h"

const char *hw_node_text(const hw_node *node, const char *key, const char *otherwise)
{
    const hw_node *child = hw_node_find(node, key);
    return child != NULL ? child->text : otherwise;
}

double hw_node_number(const hw_node *node, const char *key, double otherwise)
{
    const hw_node *child = hw_node_find(node, key);
    return child != NULL ? child->number : otherwise;
}

static int number_of(const hw_node *node, const char *key, int otherwise)
{
    return hw_num_nearest(hw_node_number(node, key, otherwise));
}

hw_ease hw_ease_of(const hw_node *word)
{
    hw_ease ease = { 0 };
    if (word != NULL) {
        ease.percent = word->percent ? word->number : 0;
        ease.cm = word->percent ? 0 : word->number;
    }
    return ease;
}

hw_status hw_machine_read(
    const char *text, size_t len, hw_arena *arena, hw_machine *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status =
        hw_check_file(&(hw_check_task){ .text = text, .len = len, .part = HW_PART_MACHINE_FILE },
            arena, &root, err);
    if (status != HW_OK) {
        return status;
    }
    hw_machine machine = { .title = hw_node_text(root, "title", ""),
        .pitch_cm = hw_node_number(root, "pitch", 0),
        .needles = number_of(root, "needles", HW_MAX_STS),
        .card_columns = number_of(root, "card columns", 0),
        .reader_offset = number_of(root, "reader offset", -1),
        .longest_float = number_of(root, "longest float", 0),
        .carriage = (hw_carriage)number_of(root, "carriage", 0),
        .source = hw_node_text(root, "source", "") };
    const hw_node *blamed = hw_node_find(root, "carriage");
    if (machine.needles % 2 != 0) {
        blamed = hw_node_find(root, "needles");
        status = hw_err_set(err, HW_ERR_RANGE, "%s",
            "`needles` counts both halves of the bed, so write an even number");
    } else if (machine.carriage != HW_CARRIAGE_NONE && machine.card_columns == 0) {
        status = hw_err_set(err, HW_ERR_RANGE, "%s",
            "a carriage that reads a card needs `card columns`; without a card write `none`");
    }
    if (status != HW_OK) {
        return hw_err_place(err, status, blamed->line, blamed->column);
    }
    *out = machine;
    return HW_OK;
}

hw_status hw_motif_of(
    const hw_node *node, const char *name, hw_arena *arena, hw_motif_input *out, hw_err *err)
{
    const hw_node *gap = hw_node_find(node, "gap");
    const hw_node *drawn = hw_node_find(node, "chart");
    hw_motif_input motif = { .has_gap = gap != NULL, .gap = number_of(node, "gap", 0) };
    hw_status status = hw_chart_read(drawn, name, arena, &motif.chart, err);
    if (status != HW_OK) {
        return status;
    }
    if (motif.chart.width + motif.gap > HW_MAX_CHART_COLUMNS) {
        (void)hw_err_set(err, HW_ERR_LIMIT,
            "figure and gap are %d columns together; at most %d can repeat: write a smaller gap",
            motif.chart.width + motif.gap, HW_MAX_CHART_COLUMNS);
        return hw_err_place(err, HW_ERR_LIMIT, gap->line, gap->column);
    }
    *out = motif;
    return HW_OK;
}

hw_status hw_motif_read(
    const char *text, size_t len, hw_arena *arena, hw_motif_input *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status =
        hw_check_file(&(hw_check_task){ .text = text, .len = len, .part = HW_PART_MOTIF_FILE },
            arena, &root, err);
    if (status != HW_OK) {
        return status;
    }
    return hw_motif_of(root, hw_node_text(root, "title", ""), arena, out, err);
}
