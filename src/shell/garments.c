/* A garment file by itself: measured in every size of a table, its joins checked, one size drawn.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "core/measuring.h"
#include "core/num.h"
#include "core/outline.h"
#include "core/safety.h"
#include "core/words.h"
#include "shell/draw.h"
#include "shell/load.h"

#define LEAST_TOLD_CM 0.005 /* less is shown as 0 */

typedef struct {
    const hw_opts *opts;
    hw_arena *arena;
    hw_project project;
    hw_sizes body, finished;
    hw_outline *outlines; /* [sizes * pieces]; not set where a piece draws none */
    hw_buf *out;
    hw_err *err;
} checking;

static hw_status no_memory(const checking *c)
{
    return hw_err_set(c->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the garment");
}

/* The garment and the table, all of its sizes. */
static hw_status load(checking *c)
{
    const char *name = c->opts->args[0];
    const char *table = c->opts->values[HW_OPT_TABLE];
    hw_status status = hw_load_one(HW_DATA_GARMENT, name, c->arena, &c->project, c->err);
    if (status == HW_OK) {
        status = hw_load_one(
            HW_DATA_SIZES, table != NULL ? table : "children", c->arena, &c->project, c->err);
    }
    if (status == HW_OK) {
        c->project.body = c->project.table;
        c->project.body.measure_count = 0;
        c->project.finished = c->project.body;
        status = hw_measuring_make(&c->project, c->arena, &c->body, &c->finished, c->err);
    }
    if (status != HW_OK) {
        hw_err_where(c->err, name);
    }
    return status;
}

static hw_status make_outline(const checking *c, int size, int piece, hw_outline *out)
{
    const hw_piece *drawn = &c->project.garment.pieces[piece];
    hw_rule_place place = { .finished = &c->finished, .size = size };
    hw_outline_task task = { .piece = drawn, .finished = &c->finished, .size = size };
    hw_status status = hw_rule_value(&drawn->band_width, &place, &task.band_cm, NULL, c->err);
    if (status == HW_OK) {
        status = hw_rule_value(&drawn->main_width, &place, &task.main_cm, NULL, c->err);
    }
    task.width_cm = task.main_cm;
    return status == HW_OK ? hw_outline_make(&task, c->arena, out, c->err) : status;
}

static hw_status make_outlines(checking *c)
{
    int pieces = c->project.garment.piece_count;
    c->outlines =
        hw_arena_get(c->arena, (size_t)c->finished.count * (size_t)pieces, sizeof *c->outlines);
    if (c->outlines == NULL) {
        return no_memory(c);
    }
    hw_status status = HW_OK;
    for (int i = 0; i < c->finished.count * pieces && status == HW_OK; i++) {
        if (c->project.garment.pieces[i % pieces].outline != NULL) {
            status = make_outline(c, i / pieces, i % pieces, &c->outlines[i]);
        }
    }
    if (status != HW_OK) {
        hw_load_blame(&c->project, c->opts->args[0], c->err);
    }
    return status;
}

static void show_measures(const checking *c)
{
    hw_buf_format(c->out, "%s, in %s\n  sizes:", c->project.garment.title, c->project.table.title);
    for (int i = 0; i < c->finished.count; i++) {
        hw_buf_format(c->out, "%s%s", i == 0 ? " " : ", ", c->finished.names[i]);
    }
    hw_buf_text(c->out, "\n");
    for (int m = 0; m < c->finished.measure_count; m++) {
        const hw_measure *measure = &c->finished.measures[m];
        hw_buf_format(c->out, "  %s:", measure->name);
        for (int i = 0; i < c->finished.count; i++) {
            hw_buf_text(c->out, i == 0 ? " " : ", ");
            hw_num_show(c->out, measure->values_cm[i], 1);
        }
        hw_buf_text(c->out, " cm\n");
    }
}

/* How far a join is off at most, and in which size; `closes` ends as false where it does in any. */
static hw_status worst_of(
    const checking *c, const hw_joint_edges *join, int *size, double *out_cm, bool *closes)
{
    int count = c->project.garment.piece_count;
    *out_cm = 0;
    for (int i = 0; i < c->finished.count; i++) {
        const hw_outline *pieces[HW_MAX_PIECES] = { NULL };
        for (int p = 0; p < count; p++) {
            pieces[p] = &c->outlines[i * count + p]; /* without edges where it draws none */
        }
        hw_join_lengths lengths;
        hw_status status = hw_outline_join(pieces, join, &lengths);
        if (status != HW_OK) {
            return hw_edge_fault(status, c->err);
        }
        double off_cm = fabs(lengths.cm[0] - lengths.cm[1]);
        *closes = *closes && lengths.closes;
        if (off_cm > *out_cm) {
            *out_cm = off_cm;
            *size = i;
        }
    }
    return HW_OK;
}

static hw_status show_joins(const checking *c, bool *closed)
{
    const hw_garment *garment = &c->project.garment;
    for (int k = 0; k < garment->join_count; k++) {
        const hw_joint_edges *join = &garment->joins[k];
        double most_cm = 0;
        int size = 0;
        bool closes = true;
        hw_status status = worst_of(c, join, &size, &most_cm, &closes);
        if (status != HW_OK) {
            return status;
        }
        *closed = *closed && closes;
        hw_buf_format(c->out, "  %s, within ", join->text);
        hw_length_show(c->out, join->within_cm, HW_SHOW_CM);
        hw_buf_format(c->out, ": %s", closes ? "closes" : "does not close");
        if (most_cm >= LEAST_TOLD_CM) {
            hw_buf_text(c->out, "; furthest off ");
            hw_num_show(c->out, most_cm, 2);
            hw_buf_format(c->out, " cm, in size %s", c->finished.names[size]);
        }
        hw_buf_text(c->out, "\n");
    }
    return HW_OK;
}

/* How deep the garment makes its trims in a size; of others the project says it. */
static hw_status find_depths(const checking *c, int size, double *depth_cm)
{
    const hw_garment *garment = &c->project.garment;
    hw_rule_place place = { .finished = &c->finished, .size = size };
    hw_status status = HW_OK;
    for (int t = 0; t < garment->trim_count && status == HW_OK; t++) {
        status = hw_rule_value(&garment->trims[t].depth, &place, &depth_cm[t], NULL, c->err);
    }
    return status;
}

static hw_trimway find_ways(const checking *c, int size)
{
    const hw_garment *garment = &c->project.garment;
    hw_trimway way = { .garment = garment };
    for (int p = 0; p < garment->piece_count; p++) {
        way.outlines[p] = &c->outlines[size * garment->piece_count + p];
    }
    hw_trimway_find(&way);
    return way;
}

/* Whether trims that are picked up over the ends of others lie beside them. */
static hw_status check_trims(const checking *c)
{
    const hw_trimway way = find_ways(c, 0);
    hw_status status = HW_OK;
    for (int t = 0; t < c->project.garment.trim_count && status == HW_OK; t++) {
        status = hw_trimway_check(&way, t, c->err);
    }
    if (status != HW_OK) {
        hw_load_blame(&c->project, c->opts->args[0], c->err);
    }
    return status;
}

static hw_status gather_pieces(const checking *c, int size, hw_draw_piece *pieces, int *count)
{
    const hw_garment *garment = &c->project.garment;
    const hw_trimway way = find_ways(c, size);
    hw_draw_trims all = { .way = &way };
    hw_status status = find_depths(c, size, all.depth_cm);
    for (int p = 0; p < garment->piece_count && status == HW_OK; p++) {
        hw_draw_trim *trims = hw_arena_get(c->arena, HW_DRAW_MAX_TRIMS, sizeof *trims);
        if (trims == NULL) {
            return no_memory(c);
        }
        if (garment->pieces[p].outline != NULL) {
            pieces[(*count)++] = (hw_draw_piece){ .name = garment->pieces[p].name,
                .outline = way.outlines[p],
                .trims = trims,
                .trim_count = hw_draw_find_trims(&all, p, trims) };
        }
    }
    return status;
}

/* Without a project no band, buttons or cords are known; a slit is, and it takes a button. */
static hw_status find_cautions(const checking *c, int size, hw_notes *out)
{
    int pieces = c->project.garment.piece_count;
    hw_safety_task task = {
        .names = c->finished.names + size, .ages_months = c->body.ages_months + size, .count = 1
    };
    for (int p = 0; p < pieces; p++) {
        bool drawn = c->project.garment.pieces[p].outline != NULL;
        bool slit = drawn && c->outlines[size * pieces + p].slit_cm > 0;
        task.buttons = task.buttons || slit;
    }
    if (hw_notes_init(out, c->arena) != HW_OK) {
        return no_memory(c);
    }
    hw_safety_add(&task, out);
    return out->refused ? no_memory(c) : HW_OK;
}

static hw_status draw(const checking *c)
{
    const char *path = c->opts->values[HW_OPT_SAVE];
    const char *name = c->opts->values[HW_OPT_SIZE];
    int size = c->finished.count / 2;
    hw_status status = name == NULL ? HW_OK : hw_load_size(&c->finished, name, &size, c->err);
    if (status != HW_OK || path == NULL) {
        return status;
    }
    hw_notes cautions;
    status = find_cautions(c, size, &cautions);
    if (status != HW_OK) {
        return status;
    }
    hw_draw_piece pieces[HW_MAX_PIECES];
    hw_draw_pieces_task task = { .pieces = pieces,
        .room = hw_draw_paper,
        .notes = cautions.notes,
        .note_count = cautions.note_count,
        .title = hw_arena_format(
            c->arena, "%s, size %s", c->project.garment.title, c->finished.names[size]) };
    status = task.title == NULL ? no_memory(c) : gather_pieces(c, size, pieces, &task.count);
    if (status == HW_OK && task.count == 0) {
        hw_buf_text(c->out, "It draws no outline, so there is nothing to draw.\n");
        return HW_OK;
    }
    hw_docs docs;
    hw_drawing picture;
    status = status == HW_OK ? hw_draw_pieces(&task, c->arena, &picture, c->err) : status;
    if (status != HW_OK) {
        return status;
    }
    hw_docs_begin(&docs, c->opts, c->arena, c->err);
    return hw_docs_end(&docs, hw_draw_save(&docs, &picture, path), c->out);
}

/* Before anything is worked out: a drawing's name. */
static hw_status check_save(const hw_opts *opts, hw_err *err)
{
    static const char ending[] = ".svg";
    enum { OF = sizeof ending - 1 };
    const char *path = opts->values[HW_OPT_SAVE];
    if (path == NULL) {
        return HW_OK;
    }
    size_t len = strlen(path);
    if (len <= OF || strcmp(path + len - OF, ending) != 0) {
        return hw_err_set(err, HW_ERR_USAGE,
            "`--save %.*s`: let the name end in .svg, which is a drawing", hw_words_cut(path, 60),
            path);
    }
    return HW_OK;
}

hw_status hw_draw_garment(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    checking c = { .opts = opts, .arena = arena, .out = buf, .err = err };
    bool closed = true;
    hw_status status = check_save(opts, err);
    status = status == HW_OK ? load(&c) : status;
    status = status == HW_OK ? make_outlines(&c) : status;
    status = status == HW_OK ? check_trims(&c) : status;
    if (status != HW_OK) {
        return status;
    }
    show_measures(&c);
    status = show_joins(&c, &closed);
    if (status == HW_OK) {
        bool joins = c.project.garment.join_count > 0;
        hw_buf_text(buf, !joins   ? "The file names no edges that are sewn together.\n"
                         : closed ? "All edges that are sewn together close in every size.\n"
                                  : "Some edges do not close: change their corners or `within`.\n");
        status = draw(&c);
    }
    return status;
}
