/* A checked project tree into a project, section by section.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/project.h"

#include "core/num.h"
#include "read/check.h"
#include "read/datafile.h"
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

static hw_status fail(const reading *r, hw_status status, const hw_node *node, const char *sentence)
{
    (void)hw_err_set(r->err, status, "%s", sentence);
    return hw_err_place(r->err, status, node->line, node->column);
}

static hw_reference reference(const hw_node *node, const char *key)
{
    const hw_node *word = hw_node_find(node, key);
    return word == NULL
               ? (hw_reference){ 0 }
               : (hw_reference){ .name = word->text, .line = word->line, .column = word->column };
}

/* `stitches`, `rows` and `per` are one swatch that the maker vouches for. */
static hw_status read_outright(reading *r, const hw_node *node, hw_gauge_input *out)
{
    const hw_node *sts = hw_node_find(node, "stitches");
    const hw_node *rows = hw_node_find(node, "rows");
    if (sts == NULL || rows == NULL) {
        return fail(r, HW_ERR_MISSING, node,
            "a gauge needs both `stitches` and `rows`, or `swatches` with counts and lengths");
    }
    hw_swatch *swatch = hw_arena_get(r->arena, 1, sizeof *swatch);
    if (swatch == NULL) {
        return no_memory(r);
    }
    double per_cm = hw_node_number(node, "per", 10);
    *swatch = (hw_swatch){
        .sts = sts->number, .width_cm = per_cm, .rows = rows->number, .length_cm = per_cm
    };
    out->swatches = swatch;
    out->count = 1;
    out->outright = true;
    return HW_OK;
}

static hw_status read_swatch(const reading *r, const hw_node *node, hw_swatch *out)
{
    const hw_node *state = hw_node_find(node, "state");
    bool sts = hw_node_find(node, "stitches") != NULL;
    bool width = hw_node_find(node, "width") != NULL;
    bool rows = hw_node_find(node, "rows") != NULL;
    bool length = hw_node_find(node, "length") != NULL;
    if (sts != width || rows != length || (!sts && !rows)) {
        return fail(r, HW_ERR_MISSING, node,
            "a swatch needs `stitches` with `width`, or `rows` with `length`, or all four");
    }
    *out = (hw_swatch){ .sts = hw_node_number(node, "stitches", 0),
        .width_cm = hw_node_number(node, "width", 0),
        .rows = hw_node_number(node, "rows", 0),
        .length_cm = hw_node_number(node, "length", 0),
        .state = state == NULL ? HW_UNSTATED : (hw_state)(1 + hw_num_nearest(state->number)),
        .has_dial = hw_node_find(node, "dial") != NULL,
        .dial = hw_node_number(node, "dial", 0),
        .mass_g = hw_node_number(node, "mass", 0),
        .note = hw_node_text(node, "remark", NULL) };
    return HW_OK;
}

static hw_status read_swatches(reading *r, const hw_node *list, hw_gauge_input *out)
{
    if (list->count > HW_MAX_SWATCHES) {
        return fail(
            r, HW_ERR_LIMIT, list, "more than 200 measured places stand here; keep the best ones");
    }
    hw_swatch *swatches = hw_arena_get(r->arena, (size_t)list->count, sizeof *swatches);
    if (swatches == NULL) {
        return no_memory(r);
    }
    for (const hw_node *node = list->first; node != NULL; node = node->next) {
        hw_status status = read_swatch(r, node, &swatches[out->count++]);
        if (status != HW_OK) {
            return status;
        }
    }
    out->swatches = swatches;
    return HW_OK;
}

static hw_status read_fabric(reading *r, const hw_node *node, hw_gauge_input *out)
{
    const hw_node *dial = hw_node_find(node, "dial");
    const hw_node *swatches = hw_node_find(node, "swatches");
    out->line = node->line;
    out->has_dial = dial != NULL;
    out->dial = hw_node_number(node, "dial", 0);
    out->markers = hw_node_number(node, "between markers", 0) > 0;
    out->method = (hw_method)hw_num_nearest(hw_node_number(node, "fit", HW_METHOD_USUAL));
    bool outright = hw_node_find(node, "stitches") != NULL || hw_node_find(node, "rows") != NULL;
    if (outright && swatches != NULL) {
        return fail(r, HW_ERR_REPEATED, swatches,
            "give either `stitches` and `rows`, or `swatches`, not both");
    }
    if (swatches != NULL) {
        return read_swatches(r, swatches, out);
    }
    return outright ? read_outright(r, node, out) : HW_OK;
}

static hw_status read_gauge(reading *r)
{
    const hw_node *gauge = hw_node_find(r->root, "gauge");
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        const hw_node *node = hw_node_find(gauge, hw_fabric_name((hw_fabric)f));
        hw_status status = node != NULL ? read_fabric(r, node, &r->project.gauge[f]) : HW_OK;
        if (status != HW_OK) {
            return status;
        }
    }
    if (r->project.gauge[HW_MAIN].count == 0) {
        return fail(r, HW_ERR_MISSING, hw_node_find(gauge, "main"),
            "the main fabric needs a gauge: write `stitches` and `rows`, or `swatches`");
    }
    return HW_OK;
}

static hw_status read_motif(reading *r)
{
    const hw_node *motif = hw_node_find(r->root, "motif");
    bool drawn = hw_node_find(motif, "chart") != NULL;
    bool named = hw_node_find(motif, "use") != NULL;
    if (drawn == named) {
        return fail(r, drawn ? HW_ERR_REPEATED : HW_ERR_MISSING, motif,
            drawn ? "both `chart` and `use` stand here; keep one of them"
                  : "the motif is missing: draw it behind `chart`, or name one behind `use`");
    }
    r->project.references[HW_DATA_MOTIF] = reference(motif, "use");
    r->project.has_chart = drawn;
    r->project.card_start = hw_num_nearest(hw_node_number(motif, "card start", 0));
    if (drawn) {
        return hw_motif_of(motif, "your own motif", r->arena, &r->project.motif, r->err);
    }
    r->project.motif.has_gap = hw_node_find(motif, "gap") != NULL;
    r->project.motif.gap = hw_num_nearest(hw_node_number(motif, "gap", 0));
    return HW_OK;
}

static hw_status read_hem(reading *r)
{
    const hw_node *hem = hw_node_find(r->root, "hem");
    bool depth = hw_node_find(hem, "depth") != NULL;
    bool rows = hw_node_find(hem, "face rows") != NULL;
    if (depth == rows) {
        return fail(r, depth ? HW_ERR_REPEATED : HW_ERR_MISSING, hem,
            depth ? "both `depth` and `face rows` stand here; keep one of them"
                  : "the hem's size is missing: write `depth`, or `face rows`");
    }
    r->project.hem = (hw_hem_input){ .depth_cm = hw_node_number(hem, "depth", 0),
        .face_rows = hw_num_nearest(hw_node_number(hem, "face rows", 0)),
        .fold = (hw_fold)hw_num_nearest(hw_node_number(hem, "fold", HW_FOLD_LOOSE)),
        .facing = (hw_facing)hw_num_nearest(hw_node_number(hem, "facing", HW_FACING_ROWS)),
        .line = hem->line };
    return HW_OK;
}

static hw_status read_sizes(reading *r)
{
    const hw_node *sizes = hw_node_find(r->root, "sizes");
    r->project.references[HW_DATA_SIZES] = reference(sizes, "table");
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
    r.project.references[HW_DATA_MACHINE] = reference(root, "machine");
    r.project.references[HW_DATA_GARMENT] = reference(root, "garment");
    r.project.knitted_file = reference(root, "knitted");
    r.project.choices = choices_of(hw_node_find(root, "choices"));
    static hw_status (*const sections[])(
        reading *) = { read_gauge, read_motif, read_hem, read_sizes, read_ease };
    for (size_t i = 0; i < sizeof sections / sizeof sections[0] && status == HW_OK; i++) {
        status = sections[i](&r);
    }
    if (status == HW_OK) {
        *out = r.project;
    }
    return status;
}
