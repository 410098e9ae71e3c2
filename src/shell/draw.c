/* Plans and garment files into drawings, drawings into files.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/draw.h"

#include <ctype.h>

#include "core/calculate.h"
#include "core/caution.h"
#include "core/trimming.h"
#include "shell/load.h"
#include "write/svg.h"

const hw_draw_room hw_draw_paper = { .width_mm = 190, .height_mm = 277 };

typedef struct {
    const hw_opts *opts;
    hw_arena *arena;
    hw_project project;
    hw_plan plan;
    hw_docs docs;
    hw_buf *out; /* what is printed */
    hw_err *err;
} drawing;

static hw_status no_memory(const drawing *d)
{
    return hw_err_set(d->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the drawings");
}

hw_status hw_draw_save(hw_docs *docs, const hw_drawing *picture, const char *path)
{
    hw_buf buf;
    hw_status status = hw_docs_open(docs, path, &buf);
    status = status == HW_OK ? hw_svg_write(picture, &buf) : status;
    return hw_docs_close(docs, &buf, status);
}

/* What became of a picture goes into the file PROJECT-WHAT.svg. One that the paper has no room for
 * does not keep the others from being drawn: it is told what to do. */
static hw_status save(
    drawing *d, hw_status made, const hw_err *why, const hw_drawing *picture, const char *what)
{
    const char *ending = what == NULL ? NULL : hw_arena_format(d->arena, "-%s.svg", what);
    const char *path = ending == NULL ? NULL : hw_docs_path(&d->docs, ending);
    if (path == NULL) {
        return no_memory(d);
    }
    if (made == HW_ERR_RANGE) {
        hw_buf_format(d->out, "Not drawn: %s: %s.\n", path, why->text);
        return HW_OK;
    }
    if (made != HW_OK) {
        return hw_err_set(d->err, made, "%s", why->text);
    }
    return hw_draw_save(&d->docs, picture, path);
}

/* Bands higher up that lie on a piece. */
static int find_bands(const drawing *d, const hw_draft *draft, int piece, hw_draw_band *bands)
{
    const hw_whole *whole = d->plan.whole;
    int count = 0;
    for (int u = 0; u < whole->upper_count; u++) {
        const hw_upper *upper = &draft->uppers[u];
        if (whole->uppers[u].on[piece]) {
            bands[count++] = (hw_draw_band){ .name = whole->uppers[u].input->name,
                .from_cm = draft->low_cm[upper->first_row],
                .to_cm = draft->low_cm[upper->first_row + upper->rows] };
        }
    }
    return count;
}

/* What is picked up over the ends of other trims beside an edge belongs to that edge. */
static void run_on(const hw_draw_trims *all, int trim, int edge, hw_draw_trim *drawn)
{
    const hw_edge_run *along = &all->way->trims[trim].along;
    for (int k = 0; k < along->count; k++) {
        hw_trimway_meeting meeting;
        if (along->parts[k].piece < 0 && hw_trimway_meets(all->way, trim, k, &meeting) &&
            meeting.part == edge) {
            double *on_cm = meeting.at_last ? &drawn->past_cm : &drawn->before_cm;
            *on_cm += all->depth_cm[along->parts[k].trim];
            drawn->sts += all->sts[trim][k];
        }
    }
}

int hw_draw_find_trims(const hw_draw_trims *all, int piece, hw_draw_trim *out)
{
    const hw_garment *garment = all->way->garment;
    int count = 0;
    for (int t = 0; t < garment->trim_count; t++) {
        const hw_trim *trim = &all->way->trims[t];
        for (int k = 0; k < trim->along.count; k++) {
            const hw_edge_part *part = &trim->along.parts[k];
            if (part->piece == piece && all->sts[t][k] >= 0) {
                out[count] = (hw_draw_trim){ .name = trim->name,
                    .edge = part->edge,
                    .stretch = part->stretch,
                    .depth_cm = all->depth_cm[t],
                    .sts = all->sts[t][k] };
                run_on(all, t, k, &out[count++]);
            }
        }
    }
    return count;
}

/* Trims that are picked up along a piece's edges. */
static int find_trims(const drawing *d, int size, int piece, hw_draw_trim *trims)
{
    const hw_whole *whole = d->plan.whole;
    hw_draw_trims all = { .way = &whole->trims->way };
    for (int t = 0; t < whole->trims->count; t++) {
        const hw_trimmed *trimmed = hw_trimming_at(whole, size, t);
        all.depth_cm[t] = trimmed->hem.face_cm;
        for (int k = 0; k < whole->trims->kinds[t].trim->along.count; k++) {
            const hw_pickup_share *share = hw_trimming_share(trimmed, k);
            all.sts[t][k] = share != NULL ? share->sts : -1;
        }
    }
    return hw_draw_find_trims(&all, piece, trims);
}

static hw_status gather_pieces(const drawing *d, int size, hw_draw_pieces_task *task)
{
    const hw_whole *whole = d->plan.whole;
    const hw_garment *garment = &whole->project->garment;
    hw_draw_piece *pieces = hw_arena_get(d->arena, HW_MAX_PIECES, sizeof *pieces);
    task->pieces = pieces;
    for (int p = 0; p < garment->piece_count && pieces != NULL; p++) {
        const hw_draft *draft = hw_plan_draft(whole, size, p);
        if (!draft->drawn) {
            continue;
        }
        hw_draw_band *bands = hw_arena_get(d->arena, HW_MAX_BANDS, sizeof *bands);
        hw_draw_trim *trims = hw_arena_get(d->arena, HW_DRAW_MAX_TRIMS, sizeof *trims);
        if (bands == NULL || trims == NULL) {
            return no_memory(d);
        }
        pieces[task->count++] = (hw_draw_piece){ .name = garment->pieces[p].name,
            .outline = &draft->outline,
            .face_cm = hw_plan_find(whole, p).plan->hem.face_cm,
            .hem_sts = draft->shape.visible_sts,
            .top_sts = hw_shape_top_sts(&draft->shape),
            .bands = bands,
            .band_count = find_bands(d, draft, p, bands),
            .trims = trims,
            .trim_count = find_trims(d, size, p, trims) };
    }
    return pieces == NULL ? no_memory(d) : HW_OK;
}

static hw_status draw_pieces(drawing *d, int size)
{
    hw_notes cautions;
    if (hw_notes_init(&cautions, d->arena) != HW_OK) {
        return no_memory(d);
    }
    hw_caution_of_size(&d->plan, size, &cautions);
    hw_draw_pieces_task task = { .room = hw_draw_paper,
        .show = d->project.show,
        .notes = cautions.notes,
        .note_count = cautions.note_count };
    hw_status status = cautions.refused ? no_memory(d) : gather_pieces(d, size, &task);
    if (status != HW_OK) {
        return status;
    }
    if (task.count == 0) {
        hw_buf_text(d->out, "The garment file draws no outline, so there are no pieces to show.\n");
        return HW_OK;
    }
    task.title =
        hw_arena_format(d->arena, "%s, size %s", d->project.title, d->plan.finished.names[size]);
    if (task.title == NULL) {
        return no_memory(d);
    }
    hw_drawing picture;
    hw_err why = { 0 };
    status = hw_draw_pieces(&task, d->arena, &picture, &why);
    return save(d, status, &why, &picture, "pieces");
}

/* One band: what it is called, and what it is drawn from. */
typedef struct {
    const char *name; /* "" for the hem's */
    bool own;         /* its motif is drawn in the project and has no name */
    const hw_motif *motif;
    const hw_gauge *gauge;
    const hw_card *card;
    const char *title;  /* of its pictures */
    const char *ending; /* of its files: "", or "-cuffs" */
} band;

enum { FABRIC_COLUMNS = 30 }; /* a picture of so many columns, or of one repeat, shows enough */

static hw_status draw_motif(drawing *d, const band *b)
{
    int repeats = FABRIC_COLUMNS / b->motif->repeat;
    hw_draw_motif_task task = { .motif = b->motif,
        .band = b->gauge,
        .repeats = repeats > 0 ? repeats : 1,
        .room = hw_draw_paper,
        .title = b->title };
    hw_drawing picture;
    hw_err why = { 0 };
    hw_status status = hw_draw_fabric(&task, d->arena, &picture, &why);
    status = save(d, status, &why, &picture, hw_arena_format(d->arena, "fabric%s", b->ending));
    if (status == HW_OK) {
        why = (hw_err){ 0 };
        status = hw_draw_chart(&task, d->arena, &picture, &why);
        status = save(d, status, &why, &picture, hw_arena_format(d->arena, "chart%s", b->ending));
    }
    return status;
}

/* The card in true size, as many sheets as it takes; none where its measures are not known. */
static hw_status draw_card(drawing *d, const band *b)
{
    const hw_blank *blank = &d->project.machine.blank;
    int rows = hw_draw_card_rows(blank, &hw_draw_paper);
    if (!b->card->possible || rows <= 0) {
        return HW_OK;
    }
    hw_status status = HW_OK;
    int sheet = 0;
    for (int first = 0; first < b->card->row_count && status == HW_OK;) {
        int last = first;
        while (last + 1 < b->card->row_count && last + 1 - first < rows &&
               b->card->rows[last + 1].blank == b->card->rows[first].blank) {
            last++;
        }
        sheet++;
        hw_draw_card_task task = { .title = hw_arena_format(
                                       d->arena, "%s; card, sheet %d", b->title, sheet),
            .card = b->card,
            .blank = blank,
            .first = first,
            .last = last,
            .room = hw_draw_paper };
        hw_drawing picture;
        hw_err why = { 0 };
        if (task.title == NULL) {
            return no_memory(d);
        }
        status = hw_draw_card(&task, d->arena, &picture, &why);
        status = save(
            d, status, &why, &picture, hw_arena_format(d->arena, "card%s-%d", b->ending, sheet));
        first = last + 1;
    }
    return status;
}

enum { MOST_BANDS = HW_MAX_BANDS + HW_MAX_TRIMS };

static int gather_bands(const drawing *d, band *bands)
{
    const hw_whole *whole = d->plan.whole;
    const hw_gauge *gauge = &d->plan.gauge[HW_BAND];
    int count = 0;
    for (int k = 0; k < whole->parts.count; k++) {
        const hw_plan *part = &whole->plans[k];
        bands[count++] = (band){ .name = whole->parts.list[k].name,
            .own = part->project->has_chart,
            .motif = &part->motif,
            .gauge = gauge,
            .card = &part->card };
    }
    for (int u = 0; u < whole->upper_count; u++) {
        const hw_upper_band *upper = &whole->uppers[u];
        bands[count++] = (band){ .name = upper->input->name,
            .own = upper->input->motif.file.name == NULL,
            .motif = &upper->motif,
            .gauge = gauge,
            .card = &upper->card };
    }
    for (int t = 0; t < whole->trims->count; t++) {
        const hw_trim_kind *kind = &whole->trims->kinds[t];
        if (kind->has_motif) {
            bands[count++] = (band){ .name = kind->trim->name,
                .own = kind->input->motif.file.name == NULL,
                .motif = &kind->motif,
                .gauge = &kind->gauge[HW_BAND],
                .card = &kind->card };
        }
    }
    return count;
}

static const char *title_of(const drawing *d, const band *b)
{
    const char *project = d->project.title;
    const char *motif = b->motif->chart.name;
    if (b->own) {
        return hw_arena_format(
            d->arena, "%s: motif of %s", project, b->name[0] == '\0' ? "the hem" : b->name);
    }
    return b->name[0] == '\0' ? hw_arena_format(d->arena, "%s: %s", project, motif)
                              : hw_arena_format(d->arena, "%s, %s: %s", project, b->name, motif);
}

/* A band's name may hold blanks and what a path must not. */
static char *ending_of(const drawing *d, const char *name)
{
    char *ending = hw_arena_format(d->arena, "%s%s", name[0] == '\0' ? "" : "-", name);
    for (char *at = ending; at != NULL && *at != '\0'; at++) {
        *at = *at == ' ' || *at == '/' ? '-' : *at;
    }
    return ending;
}

/* On some disks large letters and small ones are the same. */
static bool same_ending(const char *a, const char *b)
{
    while (*a != '\0' && tolower((unsigned char)*a) == tolower((unsigned char)*b)) {
        a++;
        b++;
    }
    return *a == *b;
}

static bool taken(const band *bands, int count, const char *ending)
{
    for (int i = 0; i < count; i++) {
        if (same_ending(bands[i].ending, ending)) {
            return true;
        }
    }
    return false;
}

/* Titles, and endings that differ even where names differ by a blank alone. */
static hw_status name_bands(const drawing *d, band *bands, int count)
{
    for (int i = 0; i < count; i++) {
        const char *plain = ending_of(d, bands[i].name);
        bands[i].title = title_of(d, &bands[i]);
        bands[i].ending = plain;
        for (int more = 2; bands[i].ending != NULL && taken(bands, i, bands[i].ending); more++) {
            bands[i].ending = hw_arena_format(d->arena, "%s-%d", plain, more);
        }
        if (bands[i].title == NULL || bands[i].ending == NULL) {
            return no_memory(d);
        }
    }
    return HW_OK;
}

static hw_status draw_bands(drawing *d)
{
    band bands[MOST_BANDS];
    int count = gather_bands(d, bands);
    hw_status status = name_bands(d, bands, count);
    for (int i = 0; i < count && status == HW_OK; i++) {
        status = draw_motif(d, &bands[i]);
        status = status == HW_OK ? draw_card(d, &bands[i]) : status;
    }
    return status;
}

hw_status hw_draw_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    drawing d = { .opts = opts, .arena = arena, .out = buf, .err = err };
    const char *file = opts->args[0];
    int size = 0;
    hw_docs_begin(&d.docs, opts, arena, err);
    hw_status status = hw_load_project(file, arena, &d.project, err);
    if (status == HW_OK) {
        status = hw_calculate_plan(&d.project, arena, &d.plan, err);
        if (status == HW_OK && opts->values[HW_OPT_SIZE] != NULL) {
            status = hw_load_size(&d.plan.finished, opts->values[HW_OPT_SIZE], &size, err);
        }
        if (status != HW_OK) {
            hw_load_blame(&d.project, file, err);
        }
    }
    status = status == HW_OK ? hw_docs_folder(&d.docs) : status;
    status = status == HW_OK ? draw_pieces(&d, size) : status;
    status = status == HW_OK ? draw_bands(&d) : status;
    return hw_docs_end(&d.docs, status, buf);
}
