/* Body and finished measurements: what a project gives, what its table has, what rules make of it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/measuring.h"

#include <string.h>

typedef struct {
    const hw_project *project;
    hw_arena *arena;
    hw_sizes body, finished;
    hw_err *err;
} measuring;

static hw_status no_memory(const measuring *m)
{
    return hw_err_set(m->err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

/* A size table's row for the project's sizes; sizes that it lacks are left to be filled in. */
static hw_status take_row(measuring *m, const hw_measure *row)
{
    hw_sizes *body = &m->body;
    hw_measure *measure = hw_sizes_add(body, row->name, m->arena);
    if (measure == NULL) {
        return no_memory(m);
    }
    for (int i = 0; i < body->count; i++) {
        int at = hw_sizes_find_size(&m->project->table, body->names[i]);
        measure->missing[i] = at < 0 || row->missing[at];
        if (!measure->missing[i]) {
            measure->values_cm[i] = row->values_cm[at];
            measure->marks[i] = row->marks[at];
            measure->sources[i] = row->sources[at];
        }
    }
    hw_status status = hw_measure_complete(measure, body->count, m->arena, m->err);
    if (status == HW_ERR_MISSING && m->err != NULL) {
        m->err->code = HW_OK;
        status = hw_err_set(m->err, HW_ERR_MISSING,
            "the first or the last of your sizes is not in the table `%.40s`; use its names, such "
            "as `%.30s` and `%.30s`, or give `%.40s` for every size under `body`",
            m->project->table.title, m->project->table.names[0],
            m->project->table.names[m->project->table.count - 1], row->name);
        return hw_err_place(m->err, status, m->project->body.line, 0);
    }
    return status;
}

/* The table's rows that a rule names and the project does not give itself. */
static hw_status take_rows(measuring *m, const hw_rule *rule)
{
    for (int t = 0; t < rule->count; t++) {
        const hw_term *term = &rule->terms[t];
        int row = hw_sizes_find(&m->project->table, term->name);
        if (term->finished || row < 0 || hw_sizes_find(&m->body, term->name) >= 0) {
            continue;
        }
        hw_status status = take_row(m, &m->project->table.measures[row]);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

/* Measurements of a project's own, copied and completed. */
static hw_status complete_own(measuring *m, const hw_sizes *own, hw_sizes *out)
{
    *out = *own;
    out->measures = hw_arena_get(m->arena, HW_MAX_MEASURES, sizeof *out->measures);
    if (out->measures == NULL) {
        return no_memory(m);
    }
    out->measure_count = 0;
    for (int k = 0; k < own->measure_count; k++) {
        const hw_measure *from = &own->measures[k];
        hw_measure *measure = hw_sizes_add(out, from->name, m->arena);
        if (measure == NULL) {
            return no_memory(m);
        }
        for (int i = 0; i < out->count; i++) {
            measure->values_cm[i] = from->values_cm[i];
            measure->missing[i] = from->missing[i];
            measure->marks[i] = from->marks[i];
            measure->sources[i] = from->sources[i];
        }
        measure->line = from->line;
        hw_status status = hw_measure_complete(measure, out->count, m->arena, m->err);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

static hw_status make_ages(measuring *m)
{
    hw_sizes *body = &m->body;
    body->ages_months = hw_arena_get(m->arena, (size_t)body->count, sizeof *body->ages_months);
    if (body->ages_months == NULL) {
        return no_memory(m);
    }
    for (int i = 0; i < body->count; i++) {
        int at = hw_sizes_find_size(&m->project->table, body->names[i]);
        int own = m->project->body.ages_months[i];
        body->ages_months[i] = own >= 0 || at < 0 ? own : m->project->table.ages_months[at];
    }
    return HW_OK;
}

/* Body measurements that the garment's rules use: the project's own first, then the table's. */
static hw_status make_body(measuring *m)
{
    hw_status status = complete_own(m, &m->project->body, &m->body);
    status = status == HW_OK ? make_ages(m) : status;
    for (int k = 0; k < m->project->garment.finished_count && status == HW_OK; k++) {
        const hw_finished *finished = &m->project->garment.finished[k];
        bool given = hw_sizes_find(&m->project->finished, finished->name) >= 0;
        status = given ? HW_OK : take_rows(m, &finished->rule);
    }
    return status;
}

static hw_status make_finished(measuring *m)
{
    hw_status status = complete_own(m, &m->project->finished, &m->finished);
    hw_garment_task task = { .garment = &m->project->garment,
        .body = &m->body,
        .table = &m->project->table,
        .changes = m->project->ease,
        .change_count = m->project->ease_count };
    return status == HW_OK ? hw_garment_finish(&task, &m->finished, m->arena, m->err) : status;
}

hw_status hw_measuring_make(
    const hw_project *project, hw_arena *arena, hw_sizes *body, hw_sizes *finished, hw_err *err)
{
    measuring m = { .project = project, .arena = arena, .err = err };
    hw_status status = make_body(&m);
    status = status == HW_OK ? make_finished(&m) : status;
    if (status == HW_OK) {
        *body = m.body;
        *finished = m.finished;
    }
    return status;
}

static int measure_line(const hw_sizes *sizes, const char *name)
{
    int at = hw_sizes_find(sizes, name);
    return at >= 0 ? sizes->measures[at].line : 0;
}

static int ease_line(const hw_project *project, const char *name)
{
    int line = 0;
    for (int k = 0; k < project->ease_count; k++) {
        line = strcmp(project->ease[k].name, name) == 0 ? project->ease[k].line : line;
    }
    return line;
}

/* A finished measurement that is not given follows from ease and from a rule of those before it. */
static int finished_line(
    const hw_project *project, const hw_sizes *body, const hw_sizes *finished, const char *name)
{
    int line = measure_line(finished, name);
    line = line > 0 ? line : ease_line(project, name);
    for (int k = 0; k < project->garment.finished_count && line == 0; k++) {
        const hw_finished *what = &project->garment.finished[k];
        if (strcmp(what->name, name) == 0) {
            return hw_measuring_line(project, body, finished, &what->rule);
        }
    }
    return line;
}

int hw_measuring_line(
    const hw_project *project, const hw_sizes *body, const hw_sizes *finished, const hw_rule *rule)
{
    int line = 0;
    for (int t = 0; t < rule->count && line == 0; t++) {
        const hw_term *term = &rule->terms[t];
        line = term->finished ? finished_line(project, body, finished, term->name)
                              : measure_line(body, term->name);
    }
    return line;
}
