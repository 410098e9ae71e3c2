/* Checked groups into bands, trims, yarns and what the safety notes need.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/bands.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"
#include "read/datafile.h"
#include "read/parts.h"

_Static_assert(HW_MAX_BANDS == 6 && HW_MAX_TRIMS == 8, "messages below say five and eight");

#define USUAL_RESERVE    10 /* percent: own choice [O2] */
#define USUAL_BUTTONHOLE 2  /* stitches: own choice [O3] */

typedef struct {
    const hw_node *root;
    hw_arena *arena;
    hw_project *project;
    hw_err *err;
} reading;

static hw_status no_memory(const reading *r)
{
    return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the project");
}

static hw_status read_names(const reading *r, const hw_node *list, hw_band_input *out)
{
    bool alone = list->kind == HW_NODE_WORD;
    int count = alone ? 1 : list->count;
    if (count > HW_MAX_PIECES) {
        return hw_node_refuse(r->err, HW_ERR_LIMIT, list, "more than twelve pieces stand here");
    }
    out->on = hw_arena_get(r->arena, (size_t)count, sizeof *out->on);
    if (out->on == NULL) {
        return no_memory(r);
    }
    for (const hw_node *word = alone ? list : list->first; word != NULL; word = word->next) {
        out->on[out->on_count++] = word->text;
        if (alone) {
            break;
        }
    }
    return HW_OK;
}

/* A band is a hem, or lies so far above the fold, or so far below the underarm: one of the three.
 */
static hw_status read_height(const reading *r, const hw_node *node, hw_band_input *out)
{
    const hw_node *hem = hw_node_find(node, "hem");
    const hw_node *above = hw_node_find(node, "above fold");
    const hw_node *below = hw_node_find(node, "below underarm");
    int said = (hem != NULL) + (above != NULL) + (below != NULL);
    if (said != 1) {
        return hw_node_refuse(r->err, said == 0 ? HW_ERR_MISSING : HW_ERR_REPEATED, node,
            said == 0 ? "where this band lies is missing: write `hem:`, `above fold:` or `below "
                        "underarm:`"
                      : "`hem`, `above fold` and `below underarm` each say where the band lies; "
                        "keep one of them");
    }
    out->above_fold_cm = hw_node_number(node, "above fold", 0);
    out->below_underarm_cm = hw_node_number(node, "below underarm", -1);
    out->has_hem = hem != NULL;
    return hem != NULL ? hw_parts_hem(hem, true, &r->project->hem, &out->hem, r->err) : HW_OK;
}

static hw_status read_band(const reading *r, const hw_node *node, hw_band_input *out)
{
    out->name = node->key;
    out->line = node->key_line;
    hw_status status = read_names(r, hw_node_find(node, "on"), out);
    status = status == HW_OK ? read_height(r, node, out) : status;
    return status == HW_OK
               ? hw_parts_motif(hw_node_find(node, "motif"), r->arena, &out->motif, r->err)
               : status;
}

static hw_status read_bands(const reading *r)
{
    const hw_node *bands = hw_node_find(r->root, "bands");
    if (bands == NULL) {
        return HW_OK;
    }
    if (bands->count >= HW_MAX_BANDS) {
        return hw_node_refuse(
            r->err, HW_ERR_LIMIT, bands, "these are too many bands; beside the hem five can be");
    }
    hw_band_input *list = hw_arena_get(r->arena, (size_t)bands->count, sizeof *list);
    if (list == NULL) {
        return no_memory(r);
    }
    r->project->bands = list;
    for (const hw_node *node = bands->first; node != NULL; node = node->next) {
        hw_status status = read_band(r, node, &list[r->project->band_count++]);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

static hw_status read_trim(const reading *r, const hw_node *node, hw_trim_input *out)
{
    const hw_node *motif = hw_node_find(node, "motif");
    const hw_node *gauge = hw_node_find(node, "gauge");
    const hw_node *hem = hw_node_find(node, "hem");
    *out = (hw_trim_input){ .name = node->key,
        .has_motif = motif != NULL,
        .has_hem = hem != NULL,
        .buttonholes = hw_num_nearest(hw_node_number(node, "buttonholes", 0)),
        .buttonhole_sts =
            hw_num_nearest(hw_node_number(node, "buttonhole stitches", USUAL_BUTTONHOLE)),
        .line = node->key_line };
    hw_status status = HW_OK;
    if (motif != NULL) {
        status = hw_parts_motif(motif, r->arena, &out->motif, r->err);
    }
    if (status == HW_OK && gauge != NULL) {
        status = hw_parts_fabric(gauge, r->arena, &out->gauge, r->err);
    }
    return status == HW_OK && hem != NULL
               ? hw_parts_hem(hem, false, &r->project->hem, &out->hem, r->err)
               : status;
}

static hw_status read_trims(const reading *r)
{
    const hw_node *trims = hw_node_find(r->root, "trims");
    if (trims == NULL) {
        return HW_OK;
    }
    if (trims->count > HW_MAX_TRIMS) {
        return hw_node_refuse(
            r->err, HW_ERR_LIMIT, trims, "these are too many trims; a garment has at most eight");
    }
    hw_trim_input *list = hw_arena_get(r->arena, (size_t)trims->count, sizeof *list);
    if (list == NULL) {
        return no_memory(r);
    }
    r->project->trims = list;
    for (const hw_node *node = trims->first; node != NULL; node = node->next) {
        hw_status status = read_trim(r, node, &list[r->project->trim_count++]);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

static hw_status read_colour(const reading *r, const hw_node *node, hw_yarn_input *out)
{
    bool sts = hw_node_find(node, "unravelled stitches") != NULL;
    bool metres = hw_node_find(node, "unravelled metres") != NULL;
    if ((sts || metres) && out != &r->project->yarn[HW_BACKGROUND]) {
        return hw_node_refuse(r->err, HW_ERR_UNKNOWN, node,
            "plain fabric is knitted in the main yarn: write what was unravelled under `main`");
    }
    if (sts != metres) {
        return hw_node_refuse(r->err, HW_ERR_MISSING, node,
            "`unravelled stitches` and `unravelled metres` belong together; write both");
    }
    *out = (hw_yarn_input){ .ball_g = hw_node_number(node, "ball", 0),
        .ball_m = hw_node_number(node, "metres", 0),
        .unravelled_sts = hw_num_nearest(hw_node_number(node, "unravelled stitches", 0)),
        .unravelled_m = hw_node_number(node, "unravelled metres", 0) };
    return HW_OK;
}

static hw_status read_yarn(const reading *r)
{
    static const char *const keys[] = { [HW_BACKGROUND] = "main", [HW_CONTRAST] = "contrast" };
    const hw_node *yarn = hw_node_find(r->root, "yarn");
    hw_status status = HW_OK;
    r->project->has_yarn = yarn != NULL;
    r->project->reserve_percent = hw_node_number(yarn, "reserve", USUAL_RESERVE);
    for (int c = 0; c < HW_COLOUR_COUNT && status == HW_OK; c++) {
        const hw_node *node = hw_node_find(yarn, keys[c]);
        status = node == NULL ? HW_OK : read_colour(r, node, &r->project->yarn[c]);
    }
    return status;
}

hw_status hw_bands_read(const hw_node *root, hw_arena *arena, hw_project *project, hw_err *err)
{
    const reading r = { .root = root, .arena = arena, .project = project, .err = err };
    const hw_node *safety = hw_node_find(root, "safety");
    project->buttons = hw_node_number(safety, "buttons", 0) > 0;
    project->sleepwear = hw_node_number(safety, "sleepwear", 0) > 0;
    /* The words behind both keys are `none` and then the places in their order. */
    int cords = hw_num_nearest(hw_node_number(safety, "cords", 0));
    int drawstrings = hw_num_nearest(hw_node_number(safety, "drawstrings", 0));
    for (int place = 0; place < HW_CORD_PLACES; place++) {
        project->cords[place].cord = cords == place + 1;
        project->cords[place].drawstring = drawstrings == place + 1;
    }
    hw_status status = read_bands(&r);
    status = status == HW_OK ? read_trims(&r) : status;
    return status == HW_OK ? read_yarn(&r) : status;
}

/* A name among those of the garment, or what was probably meant. */
static hw_status check_name(
    const char *what, const char *name, const char *const *known, int count, hw_err *err)
{
    for (int i = 0; i < count; i++) {
        if (strcmp(known[i], name) == 0) {
            return HW_OK;
        }
    }
    const char *near = hw_words_nearest(name, known, count);
    int bytes = hw_words_cut(name, 60);
    if (near != NULL) {
        return hw_err_set(err, HW_ERR_UNKNOWN,
            "the garment has no %s called `%.*s`; did you mean `%s`?", what, bytes, name, near);
    }
    return hw_err_set(err, HW_ERR_UNKNOWN, "the garment has no %s called `%.*s`; %s%s%s", what,
        bytes, name, count > 0 ? "its first is `" : "take it out", count > 0 ? known[0] : "",
        count > 0 ? "`" : "");
}

/* Names of measurements that the garment's rules use, or that it makes. */
static int used_names(const hw_garment *garment, bool finished, const char **names)
{
    int count = 0;
    for (int i = 0; i < garment->finished_count; i++) {
        const hw_rule *rule = &garment->finished[i].rule;
        if (finished) {
            names[count++] = garment->finished[i].name;
        }
        for (int t = 0; t < rule->count && !finished; t++) {
            if (!rule->terms[t].finished) {
                names[count++] = rule->terms[t].name;
            }
        }
    }
    return count;
}

/* A measurement that nothing uses is let be, unless it is nearly one that is used. */
static hw_status check_measures(const hw_project *project, bool finished, hw_err *err)
{
    const char *names[HW_MAX_MEASURES * HW_MAX_TERMS];
    const hw_sizes *own = finished ? &project->finished : &project->body;
    int count = used_names(&project->garment, finished, names);
    for (int m = 0; m < own->measure_count; m++) {
        const hw_measure *measure = &own->measures[m];
        bool used = false;
        for (int i = 0; i < count; i++) {
            used = used || strcmp(names[i], measure->name) == 0;
        }
        const char *near = used ? NULL : hw_words_nearest(measure->name, names, count);
        bool there = near != NULL && hw_sizes_find(own, near) >= 0;
        if (near != NULL && !there && hw_sizes_find(&project->table, measure->name) < 0) {
            hw_status status = hw_err_set(err, HW_ERR_UNKNOWN,
                "`%.*s` is used by nothing in this garment; did you mean `%s`?",
                hw_words_cut(measure->name, 60), measure->name, near);
            return hw_err_place(err, status, measure->line, 0);
        }
    }
    return HW_OK;
}

hw_status hw_bands_check(const hw_project *project, hw_err *err)
{
    hw_status measured = check_measures(project, false, err);
    measured = measured == HW_OK ? check_measures(project, true, err) : measured;
    if (measured != HW_OK) {
        return measured;
    }
    const hw_garment *garment = &project->garment;
    const char *pieces[HW_MAX_PIECES];
    const char *trims[HW_MAX_TRIMS];
    for (int p = 0; p < garment->piece_count; p++) {
        pieces[p] = garment->pieces[p].name;
    }
    for (int t = 0; t < garment->trim_count; t++) {
        trims[t] = garment->trims[t].name;
    }
    for (int b = 0; b < project->band_count; b++) {
        const hw_band_input *band = &project->bands[b];
        for (int k = 0; k < band->on_count; k++) {
            hw_status status = check_name("piece", band->on[k], pieces, garment->piece_count, err);
            if (status != HW_OK) {
                return hw_err_place(err, status, band->line, 0);
            }
        }
    }
    for (int t = 0; t < project->trim_count; t++) {
        hw_status status =
            check_name("trim", project->trims[t].name, trims, garment->trim_count, err);
        if (status != HW_OK) {
            return hw_err_place(err, status, project->trims[t].line, 0);
        }
    }
    return HW_OK;
}
