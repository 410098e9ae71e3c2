/* Checked parts of a project into what they say.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/parts.h"

#include "core/num.h"
#include "read/datafile.h"

typedef struct {
    hw_arena *arena;
    hw_err *err;
} reading;

static hw_status no_memory(const reading *r)
{
    return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the project");
}

hw_reference hw_parts_reference(const hw_node *node, const char *key)
{
    const hw_node *word = hw_node_find(node, key);
    return word == NULL
               ? (hw_reference){ 0 }
               : (hw_reference){ .name = word->text, .line = word->line, .column = word->column };
}

/* `stitches`, `rows` and `per` are one swatch that the maker vouches for. */
static hw_status read_outright(const reading *r, const hw_node *node, hw_gauge_input *out)
{
    const hw_node *sts = hw_node_find(node, "stitches");
    const hw_node *rows = hw_node_find(node, "rows");
    if (sts == NULL || rows == NULL) {
        return hw_node_refuse(r->err, HW_ERR_MISSING, node,
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
        return hw_node_refuse(r->err, HW_ERR_MISSING, node,
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

static hw_status read_swatches(const reading *r, const hw_node *list, hw_gauge_input *out)
{
    if (list->count > HW_MAX_SWATCHES) {
        return hw_node_refuse(r->err, HW_ERR_LIMIT, list,
            "more than 200 measured places stand here; keep the best ones");
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

hw_status hw_parts_fabric(const hw_node *node, hw_arena *arena, hw_gauge_input *out, hw_err *err)
{
    reading room = { .arena = arena, .err = err };
    reading *r = &room;
    const hw_node *dial = hw_node_find(node, "dial");
    const hw_node *swatches = hw_node_find(node, "swatches");
    out->line = node->line;
    out->has_dial = dial != NULL;
    out->dial = hw_node_number(node, "dial", 0);
    out->markers = hw_node_number(node, "between markers", 0) > 0;
    out->method = (hw_method)hw_num_nearest(hw_node_number(node, "fit", HW_METHOD_USUAL));
    bool outright = hw_node_find(node, "stitches") != NULL || hw_node_find(node, "rows") != NULL;
    if (outright && swatches != NULL) {
        return hw_node_refuse(r->err, HW_ERR_REPEATED, swatches,
            "give either `stitches` and `rows`, or `swatches`, not both");
    }
    if (swatches != NULL) {
        return read_swatches(r, swatches, out);
    }
    return outright ? read_outright(r, node, out) : HW_OK;
}

hw_status hw_parts_motif(const hw_node *node, hw_arena *arena, hw_motif_choice *out, hw_err *err)
{
    reading r = { .arena = arena, .err = err };
    bool drawn = hw_node_find(node, "chart") != NULL;
    bool named = hw_node_find(node, "use") != NULL;
    if (drawn == named) {
        return hw_node_refuse(r.err, drawn ? HW_ERR_REPEATED : HW_ERR_MISSING, node,
            drawn ? "both `chart` and `use` stand here; keep one of them"
                  : "the motif is missing: draw it behind `chart`, or name one behind `use`");
    }
    *out = (hw_motif_choice){ .file = hw_parts_reference(node, "use"),
        .own = { .has_gap = hw_node_find(node, "gap") != NULL,
            .gap = hw_num_nearest(hw_node_number(node, "gap", 0)) },
        .card_start = hw_num_nearest(hw_node_number(node, "card start", 0)) };
    return drawn ? hw_motif_of(node, "your own motif", arena, &out->own, err) : HW_OK;
}

hw_status hw_parts_hem(
    const hw_node *node, bool sized, const hw_hem_input *usual, hw_hem_input *out, hw_err *err)
{
    reading r = { .err = err };
    int cast_on = usual != NULL ? (int)usual->cast_on : HW_CAST_ON_OPEN;
    int closing = usual != NULL ? (int)usual->closing : HW_CLOSING_HUNG;
    bool depth = hw_node_find(node, "depth") != NULL;
    bool rows = hw_node_find(node, "face rows") != NULL;
    if (depth && rows) {
        return hw_node_refuse(r.err, HW_ERR_REPEATED, node,
            "both `depth` and `face rows` stand here; keep one of them");
    }
    if (sized && !depth && !rows) {
        return hw_node_refuse(r.err, HW_ERR_MISSING, node,
            "the hem's size is missing: write `depth`, or `face rows`");
    }
    *out = (hw_hem_input){ .depth_cm = hw_node_number(node, "depth", 0),
        .face_rows = hw_num_nearest(hw_node_number(node, "face rows", 0)),
        .fold = (hw_fold)hw_num_nearest(hw_node_number(node, "fold", HW_FOLD_LOOSE)),
        .facing = (hw_facing)hw_num_nearest(hw_node_number(node, "facing", HW_FACING_ROWS)),
        .facing_rows = hw_num_nearest(hw_node_number(node, "facing rows", 0)),
        .cast_on = (hw_cast_on)hw_num_nearest(hw_node_number(node, "cast-on", cast_on)),
        .closing = (hw_closing)hw_num_nearest(hw_node_number(node, "closing", closing)),
        .line = node->line };
    return HW_OK;
}
