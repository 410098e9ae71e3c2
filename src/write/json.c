/* A plan as JSON. Every part is handed to a function that takes it over or remembers that it could
 * not be made, so that no return goes unseen.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/json.h"

#include "core/num.h"
#include "write/jsonparts.h"
#include "write/sheets.h"

/* A text, or null where there is none. */
static json_t *text_or_null(const char *text)
{
    return text == NULL ? json_null() : json_string(text);
}

static json_t *colours(hw_json_writer *w, const int *counts)
{
    json_t *object = json_object();
    hw_json_put(w, object, "background", json_integer(counts[HW_BACKGROUND]));
    hw_json_put(w, object, "contrast", json_integer(counts[HW_CONTRAST]));
    return object;
}

static json_t *counts(hw_json_writer *w, const int *values, int count)
{
    json_t *array = json_array();
    for (int i = 0; i < count; i++) {
        hw_json_add(w, array, json_integer(values[i]));
    }
    return array;
}

static json_t *size_names(hw_json_writer *w)
{
    json_t *array = json_array();
    for (int i = 0; i < w->plan->finished.count; i++) {
        hw_json_add(w, array, json_string(w->plan->finished.names[i]));
    }
    return array;
}

static json_t *measure(hw_json_writer *w, const hw_measure *m, int count)
{
    json_t *object = json_object();
    json_t *values = json_array();
    json_t *marks = json_array();
    json_t *sources = json_array();
    for (int i = 0; i < count; i++) {
        hw_json_add(w, values, json_real(m->values_cm[i]));
        hw_json_add(w, marks, json_string(hw_mark_name(m->marks[i])));
        hw_json_add(w, sources, json_string(m->sources[i] == NULL ? "" : m->sources[i]));
    }
    hw_json_put(w, object, "name", json_string(m->name));
    hw_json_put(w, object, "values_cm", values);
    hw_json_put(w, object, "marks", marks);
    hw_json_put(w, object, "sources", sources);
    return object;
}

static json_t *measures(hw_json_writer *w, const hw_sizes *sizes)
{
    json_t *array = json_array();
    for (int i = 0; i < sizes->measure_count; i++) {
        hw_json_add(w, array, measure(w, &sizes->measures[i], sizes->count));
    }
    return array;
}

static json_t *body(hw_json_writer *w)
{
    return measures(w, &w->plan->body);
}

static json_t *finished(hw_json_writer *w)
{
    return measures(w, &w->plan->finished);
}

static json_t *tolerance(hw_json_writer *w)
{
    return json_real(w->plan->project->choices.tolerance_cm);
}

static json_t *total_cost(hw_json_writer *w)
{
    return json_real(w->plan->grading.total_cost);
}

static json_t *pieces(hw_json_writer *w)
{
    const hw_garment *garment = &w->plan->project->garment;
    json_t *array = json_array();
    for (int i = 0; i < garment->piece_count; i++) {
        int mirrored = garment->pieces[i].mirror_of;
        json_t *object = json_object();
        hw_json_put(w, object, "name", json_string(garment->pieces[i].name));
        hw_json_put(w, object, "mirror_of",
            text_or_null(mirrored < 0 ? NULL : garment->pieces[mirrored].name));
        hw_json_add(w, array, object);
    }
    return array;
}

json_t *hw_json_needle(hw_json_writer *w, int number)
{
    const char *name = hw_bed_needle_name(number, w->arena);
    return name == NULL ? NULL : json_string(name);
}

static json_t *place(hw_json_writer *w, const hw_place_on_bed *p)
{
    const hw_machine *machine = &w->plan->project->machine;
    if (!(machine->pitch_cm > 0) || machine->needles <= 0) {
        return json_null();
    }
    bool card = machine->card_columns > 0;
    json_t *object = json_object();
    hw_json_put(w, object, "first_needle", hw_json_needle(w, p->first));
    hw_json_put(w, object, "last_needle", hw_json_needle(w, p->last));
    hw_json_put(w, object, "first_motif_needle", hw_json_needle(w, p->first_motif));
    hw_json_put(w, object, "centre_motif_needle", hw_json_needle(w, p->centre_motif));
    hw_json_put(w, object, "off_centre_needles", json_real(p->off_centre_halves / 2.0));
    hw_json_put(
        w, object, "card_start_column", card ? json_integer(p->card_start + 1) : json_null());
    hw_json_put(w, object, "centred_card_start_column",
        card ? json_integer(p->wanted_card_start + 1) : json_null());
    return object;
}

static json_t *cost(hw_json_writer *w, const hw_cost *c)
{
    json_t *object = json_object();
    hw_json_put(w, object, "band", json_real(c->band));
    hw_json_put(w, object, "main", json_real(c->main));
    hw_json_put(w, object, "centre", json_real(c->centre));
    hw_json_put(w, object, "step", json_real(c->grade));
    return object;
}

static void fit_counts(hw_json_writer *w, json_t *object, const hw_fit *f)
{
    hw_json_put(w, object, "motifs", json_integer(f->motifs));
    hw_json_put(w, object, "left_margin_sts", json_integer(f->margin[HW_LEFT]));
    hw_json_put(w, object, "right_margin_sts", json_integer(f->margin[HW_RIGHT]));
    hw_json_put(w, object, "visible_sts", json_integer(f->visible_sts));
    hw_json_put(w, object, "cast_on_sts", json_integer(f->cast_on_sts));
    hw_json_put(w, object, "main_sts", json_integer(f->main_sts));
}

static json_t *change_every(hw_json_writer *w, const hw_spread *spread)
{
    if (spread->count == 0) {
        return json_null();
    }
    json_t *object = json_object();
    hw_json_put(w, object, "times", json_integer(spread->times));
    hw_json_put(w, object, "stitches", json_integer(spread->every));
    hw_json_put(w, object, "more_times", json_integer(spread->more_times));
    return object;
}

static json_t *fit(hw_json_writer *w, int size, int piece)
{
    const hw_plan *plan = w->plan;
    int at = size * plan->project->garment.piece_count + piece;
    const hw_fit *f = hw_plan_fit(plan, size, piece);
    json_t *object = json_object();
    hw_json_put(w, object, "size", json_string(plan->finished.names[size]));
    hw_json_put(w, object, "piece", json_string(plan->project->garment.pieces[piece].name));
    fit_counts(w, object, f);
    hw_json_put(w, object, "change_every", change_every(w, &w->plan->changes[at]));
    int knitted_sts = w->plan->fixed_sts[at];
    hw_json_put(
        w, object, "knitted_sts", knitted_sts > 0 ? json_integer(knitted_sts) : json_null());
    hw_json_put(w, object, "wanted_band_cm", json_real(plan->targets[at].band_cm));
    hw_json_put(w, object, "wanted_main_cm", json_real(plan->targets[at].main_cm));
    hw_json_put(w, object, "wanted_mark", json_string(hw_mark_name(plan->target_marks[at])));
    hw_json_put(w, object, "band_cm", json_real(f->band_cm));
    hw_json_put(w, object, "main_cm", json_real(f->main_cm));
    hw_json_put(w, object, "band_off_cm", json_real(f->band_off_cm));
    hw_json_put(w, object, "main_off_cm", json_real(f->main_off_cm));
    hw_json_put(w, object, "inside_tolerance", json_boolean(f->inside));
    hw_json_put(w, object, "cost", cost(w, &f->cost));
    hw_json_put(w, object, "place", place(w, &plan->places[at]));
    return object;
}

static json_t *fits(hw_json_writer *w)
{
    int pieces_each = w->plan->project->garment.piece_count;
    json_t *array = json_array();
    for (int at = 0; at < w->plan->finished.count * pieces_each; at++) {
        hw_json_add(w, array, fit(w, at / pieces_each, at % pieces_each));
    }
    return array;
}

static json_t *seam_edge(hw_json_writer *w, const hw_seam *s, int end)
{
    const hw_garment *garment = &w->plan->project->garment;
    json_t *object = json_object();
    hw_json_put(w, object, "piece", json_string(garment->pieces[s->piece[end]].name));
    hw_json_put(w, object, "side", json_string(hw_side_name(s->side[end])));
    return object;
}

static json_t *seam(hw_json_writer *w, int number)
{
    const hw_garment *garment = &w->plan->project->garment;
    const hw_grading *grading = &w->plan->grading;
    json_t *object = json_object();
    json_t *breaks = json_array();
    json_t *costs = json_array();
    for (int i = 0; i < w->plan->finished.count; i++) {
        int at = i * garment->seam_count + number;
        hw_json_add(w, breaks, json_integer(grading->seam_breaks[at]));
        hw_json_add(w, costs, json_real(grading->seam_costs[at]));
    }
    hw_json_put(w, object, "from", seam_edge(w, &garment->seams[number], 0));
    hw_json_put(w, object, "to", seam_edge(w, &garment->seams[number], 1));
    hw_json_put(w, object, "breaks_sts", breaks);
    hw_json_put(w, object, "costs", costs);
    return object;
}

static json_t *seams(hw_json_writer *w)
{
    json_t *array = json_array();
    for (int i = 0; i < w->plan->project->garment.seam_count; i++) {
        hw_json_add(w, array, seam(w, i));
    }
    return array;
}

static json_t *dial(bool known, double number)
{
    return known ? json_real(number) : json_null();
}

static json_t *hem(hw_json_writer *w)
{
    const hw_hem *h = &w->plan->hem;
    json_t *object = json_object();
    hw_json_put(w, object, "facing_rows", json_integer(h->facing_rows));
    hw_json_put(w, object, "fold", json_string(hw_fold_name(h->fold)));
    hw_json_put(w, object, "fold_rows", json_integer(h->fold_rows));
    hw_json_put(w, object, "below_rows", json_integer(h->below_rows));
    hw_json_put(w, object, "band_rows", json_integer(h->band_rows));
    hw_json_put(w, object, "above_rows", json_integer(h->above_rows));
    hw_json_put(w, object, "face_rows", json_integer(h->face_rows));
    hw_json_put(w, object, "total_rows", json_integer(h->total_rows));
    hw_json_put(w, object, "wanted_cm", h->wanted_cm > 0 ? json_real(h->wanted_cm) : json_null());
    hw_json_put(w, object, "face_cm", json_real(h->face_cm));
    hw_json_put(w, object, "facing_cm", json_real(h->facing_cm));
    hw_json_put(w, object, "raised", json_boolean(h->raised));
    hw_json_put(w, object, "facing_deeper", json_boolean(h->facing_deep));
    hw_json_put(w, object, "odd_band", json_boolean(h->odd_band));
    hw_json_put(w, object, "facing_dial", dial(h->has_dials, h->facing_dial));
    hw_json_put(w, object, "band_dial", dial(h->has_dials, h->band_dial));
    hw_json_put(w, object, "joining_dial", dial(h->has_dials, h->joining_dial));
    return object;
}

json_t *hw_json_figure(hw_json_writer *w, const hw_chart *chart)
{
    json_t *array = json_array();
    for (int r = 0; r < chart->rows; r++) {
        char row[HW_MAX_CHART_COLUMNS + 1] = { 0 };
        for (int c = 0; c < chart->width; c++) {
            row[c] = chart->cells[r * chart->width + c] == HW_CONTRAST ? 'o' : '.';
        }
        hw_json_add(w, array, json_string(row));
    }
    return array;
}

static json_t *motif_rows(hw_json_writer *w)
{
    const hw_motif *m = &w->plan->motif;
    json_t *array = json_array();
    for (int r = 0; r < m->chart.rows; r++) {
        json_t *object = json_object();
        hw_json_put(w, object, "contrast_sts", json_integer(m->rows[r].contrast_sts));
        hw_json_put(w, object, "longest_float_sts", colours(w, m->rows[r].longest_float));
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *card(hw_json_writer *w)
{
    const hw_motif *m = &w->plan->motif;
    if (m->card_columns == 0) {
        return json_null();
    }
    json_t *object = json_object();
    hw_json_put(w, object, "columns", json_integer(m->card_columns));
    hw_json_put(w, object, "fits", json_boolean(m->fits_card));
    hw_json_put(w, object, "repeats", json_integer(m->repeats_on_card));
    hw_json_put(w, object, "fitting_gaps", counts(w, m->card_gaps, m->card_gap_count));
    return object;
}

static json_t *motif(hw_json_writer *w)
{
    const hw_motif *m = &w->plan->motif;
    json_t *object = json_object();
    hw_json_put(w, object, "name", json_string(m->chart.name));
    hw_json_put(w, object, "chart", hw_json_figure(w, &m->chart));
    hw_json_put(w, object, "columns", json_integer(m->chart.width));
    hw_json_put(w, object, "rows", json_integer(m->chart.rows));
    hw_json_put(w, object, "gap", json_integer(m->gap));
    hw_json_put(w, object, "repeat", json_integer(m->repeat));
    hw_json_put(w, object, "each_row", motif_rows(w));
    hw_json_put(w, object, "longest_float_sts", colours(w, m->longest_float));
    hw_json_put(w, object, "contrast_sts", json_integer(m->contrast_sts));
    hw_json_put(w, object, "contrast_share", json_real(m->contrast_share));
    hw_json_put(w, object, "rows_without_contrast", json_integer(m->rows_without_contrast));
    hw_json_put(w, object, "rows_without_background", json_integer(m->rows_without_background));
    hw_json_put(w, object, "symmetrical", json_boolean(m->symmetrical));
    hw_json_put(w, object, "axes_half_columns", counts(w, m->axes, m->axis_count));
    hw_json_put(w, object, "card", card(w));
    return object;
}

static json_t *notes(hw_json_writer *w)
{
    json_t *array = json_array();
    for (int i = 0; i < w->plan->note_count; i++) {
        json_t *object = json_object();
        hw_json_put(w, object, "kind", json_string(hw_sheet_note_kind(w->plan->notes[i].kind)));
        hw_json_put(w, object, "text", json_string(w->plan->notes[i].text));
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *basis(hw_json_writer *w)
{
    json_t *array = json_array();
    for (int i = 0; i < w->plan->basis_count; i++) {
        const hw_basis *b = &w->plan->basis[i];
        json_t *object = json_object();
        hw_json_put(w, object, "what", json_string(b->what));
        hw_json_put(w, object, "value", json_string(b->value));
        hw_json_put(w, object, "rule", json_string(b->rule));
        hw_json_put(w, object, "mark", json_string(hw_mark_name(b->mark)));
        hw_json_put(w, object, "source", json_string(b->source));
        hw_json_add(w, array, object);
    }
    return array;
}

static json_t *cell(const hw_cell *c)
{
    switch (c->kind) {
    case HW_CELL_EMPTY:
        break;
    case HW_CELL_TEXT:
        return json_string(c->text);
    case HW_CELL_COUNT:
        return json_integer(hw_num_nearest(c->number));
    case HW_CELL_NUMBER:
    case HW_CELL_EIGHTHS:
        return json_real(c->number);
    }
    return json_null();
}

static json_t *table_cells(hw_json_writer *w, const hw_table *t)
{
    json_t *array = json_array();
    for (int r = 0; r < t->rows; r++) {
        json_t *row = json_array();
        for (int c = 0; c < t->columns; c++) {
            hw_json_add(w, row, cell(hw_cells_at(t, r, c)));
        }
        hw_json_add(w, array, row);
    }
    return array;
}

static void all_tables(hw_json_writer *w)
{
    for (int i = 0; i < w->tables->count; i++) {
        const hw_table *t = &w->tables->tables[i];
        json_t *object = json_object();
        hw_json_put(w, object, "name", json_string(t->name));
        hw_json_put(w, object, "rows", json_integer(t->rows));
        hw_json_put(w, object, "columns", json_integer(t->columns));
        hw_json_put(w, object, "cells", table_cells(w, t));
        hw_json_item(w, object);
    }
}

static const char *const units[] = {
    [HW_SHOW_CM] = "cm",
    [HW_SHOW_IN] = "in",
    [HW_SHOW_BOTH] = "both",
};
_Static_assert(sizeof units / sizeof units[0] == HW_SHOW_COUNT, "a word for each choice");

static json_t *other_parts(hw_json_writer *w);

/* The figures of bands higher up, by their names. */
static json_t *upper_bands(hw_json_writer *w)
{
    const hw_whole *whole = w->plan->whole;
    json_t *array = json_array();
    for (int u = 0; whole != NULL && u < whole->upper_count; u++) {
        hw_plan view = *w->plan;
        hw_json_writer band = *w;
        json_t *object = json_object();
        view.motif = whole->uppers[u].motif;
        band.plan = &view;
        hw_json_put(&band, object, "name", json_string(whole->uppers[u].input->name));
        hw_json_put(&band, object, "motif", motif(&band));
        w->status = band.status != HW_OK ? band.status : w->status;
        hw_json_add(w, array, object);
    }
    return array;
}

/* The keys of the document, in order: a value each, or a long list. What each part has is told of
 * the first part, with the garment's own hem, at the top, and of each other one under `parts`. */
static const struct {
    const char *key;
    json_t *(*make)(hw_json_writer *w);
    void (*items)(hw_json_writer *w);
    bool of_part; /* of values alone */
} members[] = {
    { "sizes", size_names, NULL, false },
    { "body", body, NULL, false },
    { "finished", finished, NULL, false },
    { "pieces", pieces, NULL, true },
    { "tolerance_cm", tolerance, NULL, false },
    { "total_cost", total_cost, NULL, true },
    { "fits", fits, NULL, true },
    { "seams", seams, NULL, true },
    { "hem", hem, NULL, true },
    { "motif", motif, NULL, true },
    { "gauge", hw_json_gauges, NULL, false },
    { "tolerances", hw_json_tolerances, NULL, true },
    { "punch", hw_json_punch, NULL, true },
    { "alternatives", hw_json_alternatives, NULL, true },
    { "parts", other_parts, NULL, false },
    { "upper_bands", upper_bands, NULL, false },
    { "uppers", hw_json_uppers, NULL, false },
    { "drafts", NULL, hw_json_drafts, false },
    { "joins", hw_json_joins, NULL, false },
    { "trims", NULL, hw_json_trims, false },
    { "yarn", hw_json_yarn, NULL, false },
    { "rows", NULL, hw_json_rowplans, false },
    { "notes", notes, NULL, false },
    { "basis", basis, NULL, false },
    { "tables", NULL, all_tables, false },
};
enum { MEMBERS = sizeof members / sizeof members[0] };

static json_t *other_parts(hw_json_writer *w)
{
    const hw_whole *whole = w->plan->whole;
    json_t *array = json_array();
    for (int k = 1; whole != NULL && k < whole->parts.count; k++) {
        hw_json_writer part = *w;
        part.plan = &whole->plans[k];
        json_t *object = json_object();
        hw_json_put(w, object, "name", json_string(whole->parts.list[k].name));
        for (int i = 0; i < MEMBERS; i++) {
            if (members[i].of_part) {
                hw_json_put(&part, object, members[i].key, members[i].make(&part));
            }
        }
        w->status = part.status != HW_OK ? part.status : w->status;
        hw_json_add(w, array, object);
    }
    return array;
}

hw_status hw_json_plan(const hw_plan *plan, const hw_tables *tables, hw_arena *arena, hw_buf *buf)
{
    hw_json_writer w = {
        .plan = plan, .tables = tables, .arena = arena, .buf = buf, .status = HW_OK
    };
    hw_buf_text(buf, "{");
    hw_json_member(&w, "format", json_string("hemwright-plan"));
    hw_json_member(&w, "version", json_integer(HW_JSON_VERSION));
    hw_json_member(&w, "title", text_or_null(plan->project->title));
    hw_json_member(&w, "garment", json_string(plan->project->garment.title));
    hw_json_member(&w, "units", json_string(units[plan->project->show]));
    for (int i = 0; i < MEMBERS && w.status == HW_OK; i++) {
        if (members[i].make != NULL) {
            hw_json_member(&w, members[i].key, members[i].make(&w));
        } else {
            hw_json_list(&w, members[i].key, members[i].items);
        }
    }
    hw_buf_text(buf, "\n}\n");
    return w.status == HW_OK ? hw_buf_status(buf) : w.status;
}
