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

/* Rows that were read of [B5, B6] where the file says none; no lengths were. */
enum { USUAL_CARD_ROWS = 60, USUAL_LOOP_ROWS = 36, USUAL_JOINING_ROWS = 2 };

static hw_blank blank_of(const hw_node *root)
{
    return (hw_blank){ .rows = number_of(root, "card rows", USUAL_CARD_ROWS),
        .least_loop_rows = number_of(root, "least loop rows", USUAL_LOOP_ROWS),
        .joining_rows = number_of(root, "joining rows", USUAL_JOINING_ROWS),
        .hole_pitch_cm = hw_node_number(root, "hole pitch", 0),
        .row_pitch_cm = hw_node_number(root, "row pitch", 0),
        .width_cm = hw_node_number(root, "card width", 0),
        .hole_cm = hw_node_number(root, "hole width", 0) };
}

static hw_status blame(
    const hw_node *root, const char *first, const char *otherwise, hw_status status, hw_err *err)
{
    const hw_node *node = hw_node_find(root, first);
    node = node != NULL ? node : hw_node_find(root, otherwise);
    return hw_err_place(err, status, node->line, node->column);
}

/* What the lines about the card must be to each other. */
static hw_status check_blank(const hw_node *root, const hw_machine *machine, hw_err *err)
{
    const hw_blank *blank = &machine->blank;
    double across_cm = blank->hole_pitch_cm * (machine->card_columns - 1) + blank->hole_cm;
    double pitch_cm = blank->row_pitch_cm > 0 && blank->row_pitch_cm < blank->hole_pitch_cm
                          ? blank->row_pitch_cm
                          : blank->hole_pitch_cm;
    if (blank->rows <= 2 * blank->joining_rows) {
        (void)hw_err_set(err, HW_ERR_RANGE,
            "%d joining rows at both ends leave no row for a design on a card of %d rows; "
            "`card rows` counts them too",
            blank->joining_rows, blank->rows);
        return blame(root, "joining rows", "card rows", HW_ERR_RANGE, err);
    }
    if (pitch_cm > 0 && blank->hole_cm >= pitch_cm) {
        (void)hw_err_set(err, HW_ERR_RANGE, "%s",
            "such holes would run into each other: `hole pitch` and `row pitch` go from the "
            "middle of a hole to the middle of the next, and `hole width` is less");
        return blame(root, "hole width", "hole pitch", HW_ERR_RANGE, err);
    }
    if (machine->card_columns > 0 && blank->width_cm > 0 && across_cm >= blank->width_cm) {
        (void)hw_err_set(err, HW_ERR_RANGE,
            "%d columns of holes do not lie on such a card: measure `hole pitch` over ten holes "
            "and divide by ten",
            machine->card_columns);
        return blame(root, "card width", "hole pitch", HW_ERR_RANGE, err);
    }
    return HW_OK;
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
        .blank = blank_of(root),
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
    status = check_blank(root, &machine, err);
    if (status == HW_OK) {
        *out = machine;
    }
    return status;
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
