/* A checked project tree into a project, section by section.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/project.h"

#include "core/num.h"
#include "read/bands.h"
#include "read/check.h"
#include "read/datafile.h"
#include "read/parts.h"
#include "read/table.h"

typedef struct {
    const hw_node *root;
    hw_arena *arena;
    hw_project project;
    hw_err *err;
} reading;

static hw_status no_memory(const reading *r)
{
    return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the project");
}

static hw_status read_gauge(reading *r)
{
    const hw_node *gauge = hw_node_find(r->root, "gauge");
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        const hw_node *node = hw_node_find(gauge, hw_fabric_name((hw_fabric)f));
        hw_status status =
            node != NULL ? hw_parts_fabric(node, r->arena, &r->project.gauge[f], r->err) : HW_OK;
        if (status != HW_OK) {
            return status;
        }
    }
    if (r->project.gauge[HW_MAIN].count == 0) {
        return hw_node_refuse(r->err, HW_ERR_MISSING, hw_node_find(gauge, "main"),
            "the main fabric needs a gauge: write `stitches` and `rows`, or `swatches`");
    }
    return HW_OK;
}

static hw_status read_motif(reading *r)
{
    hw_motif_choice choice = { 0 };
    hw_status status = hw_parts_motif(hw_node_find(r->root, "motif"), r->arena, &choice, r->err);
    r->project.references[HW_DATA_MOTIF] = choice.file;
    r->project.has_chart = choice.file.name == NULL;
    r->project.card_start = choice.card_start;
    r->project.motif = choice.own;
    return status;
}

static hw_status read_hem(reading *r)
{
    return hw_parts_hem(hw_node_find(r->root, "hem"), true, NULL, &r->project.hem, r->err);
}

static hw_status read_sizes(reading *r)
{
    const hw_node *sizes = hw_node_find(r->root, "sizes");
    r->project.references[HW_DATA_SIZES] = hw_parts_reference(sizes, "table");
    hw_status status = hw_table_names(sizes, r->arena, &r->project.body, r->err);
    if (status == HW_OK) {
        status = hw_table_names(sizes, r->arena, &r->project.finished, r->err);
    }
    if (status == HW_OK) {
        status = hw_table_rows(hw_node_find(sizes, "body"), &r->project.body, r->arena, r->err);
    }
    if (status == HW_OK) {
        status =
            hw_table_rows(hw_node_find(sizes, "finished"), &r->project.finished, r->arena, r->err);
    }
    return status;
}

static hw_status read_ease(reading *r)
{
    const hw_node *ease = hw_node_find(r->root, "ease");
    int count = ease != NULL ? ease->count : 0;
    hw_ease_change *changes = hw_arena_get(r->arena, (size_t)count, sizeof *changes);
    if (changes == NULL) {
        return no_memory(r);
    }
    for (const hw_node *word = count > 0 ? ease->first : NULL; word != NULL; word = word->next) {
        changes[r->project.ease_count++] =
            (hw_ease_change){ .name = word->key, .ease = hw_ease_of(word), .line = word->key_line };
    }
    r->project.ease = changes;
    return HW_OK;
}

static hw_choices choices_of(const hw_node *node)
{
    return (hw_choices){ .tolerance_cm = hw_node_number(node, "tolerance", 1),
        .centre_weight = hw_node_number(node, "centre weight", 0.5),
        .seam_weight = hw_node_number(node, "seam weight", 0.5),
        .grade_weight = hw_node_number(node, "step weight", 0.5),
        .exact_centre = hw_node_number(node, "always centred", 0) > 0,
        .unbroken_seams = hw_node_number(node, "unbroken seams", 0) > 0,
        .keep_tolerance = hw_node_number(node, "within tolerance", 0) > 0,
        .hand_set = hw_node_number(node, "hand-set needles", 0) > 0,
        .rehang = hw_node_number(node, "re-hang", 0) > 0,
        .edge_sts = hw_num_nearest(hw_node_number(node, "edge stitches", 1)) };
}

static hw_status read_rest(reading *r)
{
    return hw_bands_read(r->root, r->arena, &r->project, r->err);
}

hw_status hw_project_read(
    const char *text, size_t len, hw_arena *arena, hw_project *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status = hw_check_file(
        &(hw_check_task){ .text = text, .len = len, .part = HW_PART_PROJECT }, arena, &root, err);
    if (status != HW_OK) {
        return status;
    }
    reading r = { .root = root, .arena = arena, .err = err };
    r.project.title = hw_node_text(root, "title", "untitled");
    r.project.show = (hw_show)hw_num_nearest(hw_node_number(root, "units", HW_SHOW_CM));
    r.project.references[HW_DATA_MACHINE] = hw_parts_reference(root, "machine");
    r.project.references[HW_DATA_GARMENT] = hw_parts_reference(root, "garment");
    r.project.knitted_file = hw_parts_reference(root, "knitted");
    r.project.choices = choices_of(hw_node_find(root, "choices"));
    const hw_node *choices = hw_node_find(root, "choices");
    r.project.start = hw_node_number(choices, "carriage begins", 0) > 0 ? HW_LEFT : HW_RIGHT;
    r.project.either_side = hw_node_number(choices, "second yarn", 0) > 0;
    const hw_node *rounds = hw_node_find(choices, "in rounds");
    r.project.in_rounds = hw_node_number(choices, "in rounds", 0) > 0;
    r.project.in_rounds_line = rounds != NULL ? rounds->line : 0;
    r.project.short_rows = hw_node_number(hw_node_find(root, "choices"), "shoulders", 0) > 0;
    static hw_status (*const sections[])(
        reading *) = { read_gauge, read_motif, read_hem, read_sizes, read_ease, read_rest };
    for (size_t i = 0; i < sizeof sections / sizeof sections[0] && status == HW_OK; i++) {
        status = sections[i](&r);
    }
    if (status == HW_OK) {
        *out = r.project;
    }
    return status;
}
