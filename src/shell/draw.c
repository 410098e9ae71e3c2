/* Plans and garment files into drawings, drawings into files.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/draw.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>

#include "core/above.h"
#include "core/calculate.h"
#include "core/measuring.h"
#include "core/trimming.h"
#include "shell/io.h"
#include "shell/load.h"
#include "write/draw.h"
#include "write/svg.h"

/* A4 less margins of 1 cm: own choice [V1]. */
static const hw_draw_room paper = { .width_mm = 190, .height_mm = 277 };

typedef struct {
    const hw_opts *opts;
    hw_arena *arena;
    hw_project project;
    hw_plan plan;
    hw_buf *out; /* what is printed */
    hw_err *err;
} drawing;

static hw_status no_memory(const drawing *d)
{
    return hw_err_set(d->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the drawings");
}

static bool given(const drawing *d, hw_opt opt)
{
    return d->opts->values[opt] != NULL;
}

/* Put a picture into a file; what it is called is printed. */
static hw_status save(const drawing *d, const hw_drawing *picture, const char *path)
{
    if (path == NULL) {
        return no_memory(d);
    }
    hw_status status = hw_io_vacant(path, given(d, HW_OPT_REPLACE), d->err);
    if (status != HW_OK) {
        return status;
    }
    hw_buf buf;
    hw_buf_init(&buf, &d->arena->mem, HW_BUF_LIMIT);
    status = hw_svg_write(picture, &buf);
    status = status == HW_OK ? hw_io_write_text(path, &buf, d->err) : no_memory(d);
    hw_buf_release(&buf);
    if (status == HW_OK) {
        hw_buf_format(d->out, "Written: %s\n", path);
    } else {
        hw_err_where(d->err, path);
    }
    return status;
}

/* A file's path: the project's name without folder and ending, in the folder of `--into`. */
static const char *path_for(const drawing *d, const char *what)
{
    if (what == NULL) {
        return NULL;
    }
    const char *file = d->opts->args[0];
    const char *slash = strrchr(file, '/');
    const char *base = slash != NULL ? slash + 1 : file;
    const char *dot = strrchr(base, '.');
    int len = dot != NULL && dot != base ? (int)(dot - base) : (int)strlen(base);
    const char *into = d->opts->values[HW_OPT_INTO];
    char *path = hw_arena_format(d->arena, "%s%s%.*s-%s.svg", into != NULL ? into : "",
        into != NULL ? "/" : "", len, base, what);
    /* Names of bands may hold blanks and what a path must not; the folder stays as it is. */
    for (char *at = path == NULL ? NULL : path + strlen(path) - strlen(what) - strlen(".svg");
         at != NULL && *at != '\0'; at++) {
        *at = *at == ' ' || *at == '/' ? '-' : *at;
    }
    return path;
}

static hw_status make_folder(const drawing *d)
{
    const char *into = d->opts->values[HW_OPT_INTO];
    if (into != NULL && mkdir(into, 0777) != 0 && errno != EEXIST) {
        return hw_io_fail(d->err, into, HW_IO_WRITING, errno);
    }
    return HW_OK;
}

static hw_status draw_pieces(const drawing *d, int size)
{
    const hw_whole *whole = d->plan.whole;
    hw_draw_piece pieces[HW_MAX_PIECES];
    hw_draw_pieces_task task = { .pieces = pieces, .room = paper, .show = d->project.show };
    for (int p = 0; p < whole->project->garment.piece_count; p++) {
        const hw_draft *draft = hw_plan_draft(whole, size, p);
        if (draft->drawn) {
            pieces[task.count++] = (hw_draw_piece){ .name = whole->project->garment.pieces[p].name,
                .outline = &draft->outline,
                .face_cm = hw_plan_find(whole, p).plan->hem.face_cm,
                .hem_sts = draft->shape.visible_sts,
                .top_sts = hw_draft_sts(draft, draft->shape.rows - 1) };
        }
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
    hw_status status = hw_draw_pieces(&task, d->arena, &picture, d->err);
    return status == HW_OK ? save(d, &picture, path_for(d, "pieces")) : status;
}

/* One band: what it is called in file names and titles, and what it is drawn from. */
typedef struct {
    const char *name; /* "" for the hem's */
    const hw_motif *motif;
    const hw_gauge *gauge;
    const hw_card *card;
} band;

enum { FABRIC_COLUMNS = 30 }; /* a picture of so many columns, or of one repeat, shows enough */

static hw_status draw_motif(const drawing *d, const band *b)
{
    int repeats = FABRIC_COLUMNS / b->motif->repeat;
    hw_draw_motif_task task = { .motif = b->motif,
        .band = b->gauge,
        .repeats = repeats > 0 ? repeats : 1,
        .room = paper,
        .title = hw_arena_format(d->arena, "%s: %s", d->project.title, b->motif->chart.name) };
    const char *dash = b->name[0] == '\0' ? "" : "-";
    hw_drawing picture;
    if (task.title == NULL) {
        return no_memory(d);
    }
    hw_status status = hw_draw_fabric(&task, d->arena, &picture, d->err);
    if (status == HW_OK) {
        status =
            save(d, &picture, path_for(d, hw_arena_format(d->arena, "fabric%s%s", dash, b->name)));
    }
    if (status == HW_OK) {
        status = hw_draw_chart(&task, d->arena, &picture, d->err);
    }
    if (status == HW_OK) {
        status =
            save(d, &picture, path_for(d, hw_arena_format(d->arena, "chart%s%s", dash, b->name)));
    }
    return status;
}

/* The card in true size, as many sheets as it takes; none where its measures are not known. */
static hw_status draw_card(const drawing *d, const band *b)
{
    const hw_blank *blank = &d->project.machine.blank;
    int rows = hw_draw_card_rows(blank, &paper);
    if (!b->card->possible || rows <= 0) {
        return HW_OK;
    }
    const char *dash = b->name[0] == '\0' ? "" : "-";
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
                                       d->arena, "%s: card, sheet %d", b->motif->chart.name, sheet),
            .card = b->card,
            .blank = blank,
            .first = first,
            .last = last,
            .room = paper };
        hw_drawing picture;
        status =
            task.title == NULL ? no_memory(d) : hw_draw_card(&task, d->arena, &picture, d->err);
        if (status == HW_OK) {
            const char *what = hw_arena_format(d->arena, "card%s%s-%d", dash, b->name, sheet);
            status = what == NULL ? no_memory(d) : save(d, &picture, path_for(d, what));
        }
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
        bands[count++] = (band){ whole->parts.list[k].name, &whole->plans[k].motif, gauge,
            &whole->plans[k].card };
    }
    for (int u = 0; u < whole->upper_count; u++) {
        bands[count++] = (band){ whole->uppers[u].input->name, &whole->uppers[u].motif, gauge,
            &whole->uppers[u].card };
    }
    for (int t = 0; t < whole->trims->count; t++) {
        const hw_trim_kind *kind = &whole->trims->kinds[t];
        if (kind->has_motif) {
            bands[count++] =
                (band){ kind->trim->name, &kind->motif, &kind->gauge[HW_BAND], &kind->card };
        }
    }
    return count;
}

hw_status hw_draw_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    drawing d = { .opts = opts, .arena = arena, .out = buf, .err = err };
    const char *file = opts->args[0];
    int size = 0;
    hw_status status = hw_load_project(file, arena, &d.project, err);
    if (status == HW_OK) {
        status = hw_calculate_plan(&d.project, arena, &d.plan, err);
        if (status != HW_OK) {
            hw_load_blame(&d.project, file, err);
        }
    }
    if (status == HW_OK && given(&d, HW_OPT_SIZE)) {
        status = hw_load_size(&d.plan.finished, opts->values[HW_OPT_SIZE], &size, err);
        if (status != HW_OK) {
            hw_load_blame(&d.project, file, err);
        }
    }
    status = status == HW_OK ? make_folder(&d) : status;
    status = status == HW_OK ? draw_pieces(&d, size) : status;
    band bands[MOST_BANDS];
    int count = status == HW_OK ? gather_bands(&d, bands) : 0;
    for (int i = 0; i < count && status == HW_OK; i++) {
        status = draw_motif(&d, &bands[i]);
        status = status == HW_OK ? draw_card(&d, &bands[i]) : status;
    }
    return status;
}
