/* Pieces sorted by the band in their hem; each part is a project with a smaller garment.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/layout.h"

#include <string.h>

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

static int find_piece(const hw_garment *garment, const char *name)
{
    for (int i = 0; i < garment->piece_count; i++) {
        if (strcmp(garment->pieces[i].name, name) == 0) {
            return i;
        }
    }
    return -1;
}

static hw_status unknown(
    hw_err *err, int line, const char *format, const char *name, const char *first)
{
    hw_status status = hw_err_set(err, HW_ERR_UNKNOWN,
        "the garment has no %s called `%.60s`; its first is `%.60s`", format, name, first);
    return hw_err_place(err, status, line, 0);
}

hw_status hw_layout_on(
    const hw_garment *garment, const hw_band_input *band, bool on[HW_MAX_PIECES], hw_err *err)
{
    for (int i = 0; i < band->on_count; i++) {
        int piece = find_piece(garment, band->on[i]);
        if (piece < 0) {
            return unknown(err, band->line, "piece", band->on[i], garment->pieces[0].name);
        }
        on[piece] = true;
    }
    /* Once for the piece that is mirrored, and again for all that mirror it. */
    for (int i = 0; i < 2 * garment->piece_count; i++) {
        int piece = i % garment->piece_count;
        int other = garment->pieces[piece].mirror_of;
        if (other >= 0) {
            on[piece] = on[other] = on[piece] || on[other];
        }
    }
    return HW_OK;
}

const hw_trim_input *hw_layout_trim(const hw_project *project, const char *name)
{
    for (int i = 0; i < project->trim_count; i++) {
        if (strcmp(project->trims[i].name, name) == 0) {
            return &project->trims[i];
        }
    }
    return NULL;
}

static hw_status check_trims(const hw_project *project, hw_err *err)
{
    const hw_garment *garment = &project->garment;
    for (int i = 0; i < project->trim_count; i++) {
        bool found = false;
        for (int k = 0; k < garment->trim_count; k++) {
            found = found || strcmp(garment->trims[k].name, project->trims[i].name) == 0;
        }
        if (!found && garment->trim_count == 0) {
            hw_status status = hw_err_set(err, HW_ERR_UNKNOWN,
                "the garment has no trims, so `%.60s` means nothing; leave it out",
                project->trims[i].name);
            return hw_err_place(err, status, project->trims[i].line, 0);
        }
        if (!found) {
            return unknown(err, project->trims[i].line, "trim", project->trims[i].name,
                garment->trims[0].name);
        }
    }
    return HW_OK;
}

/* Which part each piece belongs to: 0 is the garment's own hem. */
static hw_status sort_pieces(
    const hw_project *project, hw_parts *parts, int of_piece[HW_MAX_PIECES], hw_err *err)
{
    const hw_garment *garment = &project->garment;
    parts->count = 1;
    for (int b = 0; b < project->band_count; b++) {
        bool on[HW_MAX_PIECES] = { false };
        const hw_band_input *band = &project->bands[b];
        hw_status status = hw_layout_on(garment, band, on, err);
        if (status != HW_OK) {
            return status;
        }
        if (!band->has_hem) {
            continue;
        }
        for (int p = 0; p < garment->piece_count; p++) {
            if (on[p] && of_piece[p] != 0) {
                status = hw_err_set(err, HW_ERR_REPEATED,
                    "`%.60s` has the hem of two bands, `%.60s` and `%.60s`; take it out of one",
                    garment->pieces[p].name, parts->list[of_piece[p]].name, band->name);
                return hw_err_place(err, status, band->line, 0);
            }
            of_piece[p] = on[p] ? parts->count : of_piece[p];
        }
        parts->list[parts->count++].name = band->name;
    }
    return HW_OK;
}

/* How the whole is parted. */
typedef struct {
    const hw_project *whole;
    int of_piece[HW_MAX_PIECES];
    hw_arena *arena;
} parting;

/* The pieces and seams of one part, renumbered. */
static hw_status take_pieces(const parting *from, int number, hw_part *part, hw_garment *smaller)
{
    const hw_garment *garment = &from->whole->garment;
    hw_piece *pieces = hw_arena_get(from->arena, HW_MAX_PIECES, sizeof *pieces);
    hw_seam *seams = hw_arena_get(from->arena, HW_MAX_SEAMS, sizeof *seams);
    if (pieces == NULL || seams == NULL) {
        return HW_ERR_NOMEM;
    }
    int now[HW_MAX_PIECES] = { 0 };
    *smaller = *garment;
    smaller->piece_count = smaller->seam_count = smaller->join_count = smaller->trim_count = 0;
    smaller->pieces = pieces;
    smaller->seams = seams;
    for (int p = 0; p < garment->piece_count; p++) {
        if (from->of_piece[p] == number) {
            now[p] = smaller->piece_count;
            part->pieces[smaller->piece_count] = p;
            pieces[smaller->piece_count] = garment->pieces[p];
            int mirrored = garment->pieces[p].mirror_of;
            pieces[smaller->piece_count++].mirror_of = mirrored < 0 ? -1 : now[mirrored];
        }
    }
    for (int s = 0; s < garment->seam_count; s++) {
        const hw_seam *seam = &garment->seams[s];
        if (from->of_piece[seam->piece[0]] == number) {
            seams[smaller->seam_count] = *seam;
            seams[smaller->seam_count].piece[0] = now[seam->piece[0]];
            seams[smaller->seam_count++].piece[1] = now[seam->piece[1]];
        }
    }
    return HW_OK;
}

/* Measured pieces of a part alone; the gauge was found from all of them before. */
static hw_status take_knitted(const hw_part *part, hw_project *project, hw_arena *arena)
{
    int count = project->knitted.count;
    hw_knitted *list = hw_arena_get(arena, (size_t)count, sizeof *list);
    if (list == NULL) {
        return HW_ERR_NOMEM;
    }
    hw_knitted_list kept = { .list = list };
    for (int i = 0; i < count; i++) {
        for (int p = 0; p < project->garment.piece_count; p++) {
            if (project->knitted.list[i].piece == part->pieces[p]) {
                list[kept.count] = project->knitted.list[i];
                list[kept.count++].piece = p;
            }
        }
    }
    project->knitted = kept;
    return HW_OK;
}

static void take_band(const hw_band_input *band, hw_project *project)
{
    project->has_chart = band->motif.file.name == NULL;
    project->references[HW_DATA_MOTIF] = band->motif.file;
    project->motif = band->motif.own;
    project->drawn = band->motif.drawn;
    project->card_start = band->motif.card_start;
    project->hem = band->hem;
}

static hw_status make_part(const parting *from, int number, hw_part *part)
{
    const hw_project *whole = from->whole;
    hw_project *project = hw_arena_get(from->arena, 1, sizeof *project);
    if (project == NULL) {
        return HW_ERR_NOMEM;
    }
    *project = *whole;
    for (int b = 0; b < whole->band_count; b++) {
        if (number > 0 && strcmp(whole->bands[b].name, part->name) == 0) {
            take_band(&whole->bands[b], project);
        }
    }
    hw_status status = take_pieces(from, number, part, &project->garment);
    part->project = project;
    return status == HW_OK ? take_knitted(part, project, from->arena) : status;
}

static hw_status check_seams(const hw_garment *garment, const int *of_piece, hw_err *err)
{
    for (int s = 0; s < garment->seam_count; s++) {
        const hw_seam *seam = &garment->seams[s];
        if (of_piece[seam->piece[0]] != of_piece[seam->piece[1]]) {
            return hw_err_set(err, HW_ERR_RANGE,
                "`%.60s` and `%.60s` are sewn together at the hem, but carry different bands; name "
                "both under `on`, or neither",
                garment->pieces[seam->piece[0]].name, garment->pieces[seam->piece[1]].name);
        }
    }
    return HW_OK;
}

hw_status hw_layout_parts(const hw_project *project, hw_arena *arena, hw_parts *out, hw_err *err)
{
    hw_parts parts = { .list = { { .name = "" } } };
    parting from = { .whole = project, .arena = arena };
    const hw_garment *garment = &project->garment;
    hw_status status = check_trims(project, err);
    status = status == HW_OK ? sort_pieces(project, &parts, from.of_piece, err) : status;
    status = status == HW_OK ? check_seams(garment, from.of_piece, err) : status;
    if (status != HW_OK) {
        return status;
    }
    bool own = false;
    for (int p = 0; p < garment->piece_count; p++) {
        own = own || from.of_piece[p] == 0;
        parts.list[0].pieces[p] = p;
    }
    if (!own) {
        return hw_err_set(err, HW_ERR_MISSING, "%s",
            "every piece has its hem from `bands`, so the motif and hem of the project have no "
            "piece; take one piece out of `on`");
    }
    parts.list[0].project = project;
    for (int i = 0; i < parts.count && parts.count > 1 && status == HW_OK; i++) {
        status = make_part(&from, i, &parts.list[i]);
    }
    if (status != HW_OK) {
        return status == HW_ERR_NOMEM ? no_memory(err) : status;
    }
    *out = parts;
    return HW_OK;
}
