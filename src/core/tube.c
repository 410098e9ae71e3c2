/* Rings of pieces: from each to the piece that is sewn to its left edge, until the first comes
 * again.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/tube.h"

#include <string.h>

static hw_side other(hw_side side)
{
    return side == HW_LEFT ? HW_RIGHT : HW_LEFT;
}

/* An edge of a piece; piece -1: none. */
typedef struct {
    int piece;
    hw_side side;
} end;

static const end no_end = { .piece = -1 };

/* ---- What is sewn to an edge at its foot ---- */

static end by_seam(const hw_garment *garment, end from)
{
    int number = hw_garment_seam_at(garment, from.piece, from.side);
    if (number < 0) {
        return no_end;
    }
    const hw_seam *seam = &garment->seams[number];
    int own = seam->piece[0] == from.piece && seam->side[0] == from.side ? 0 : 1;
    return (end){ seam->piece[1 - own], seam->side[1 - own] };
}

/* The stretch with which an edge begins; NULL where nothing is drawn. */
static const char *foot_of(const hw_garment *garment, end at)
{
    const hw_outline_rule *outline = garment->pieces[at.piece].outline;
    if (outline == NULL) {
        return NULL;
    }
    const hw_edge_rule *rule = &outline->sides[outline->mirrored ? other(at.side) : at.side];
    if (rule->count == 0) {
        rule = &outline->sides[outline->mirrored ? at.side : other(at.side)];
    }
    return rule->count > 0 ? rule->corners[0].stretch : NULL;
}

/* The edge of left and right from whose foot on a run goes; none where it lies elsewhere. */
static end foot_edge(const hw_garment *garment, const hw_edge_run *run)
{
    const hw_edge_part *part = &run->parts[0];
    if (run->count == 0 || (part->edge != HW_EDGE_LEFT && part->edge != HW_EDGE_RIGHT)) {
        return no_end;
    }
    end at = { part->piece, part->edge == HW_EDGE_LEFT ? HW_LEFT : HW_RIGHT };
    const char *foot = foot_of(garment, at);
    bool whole = part->stretch == NULL;
    return whole || (foot != NULL && strcmp(foot, part->stretch) == 0) ? at : no_end;
}

static bool same_end(end a, end b)
{
    return a.piece == b.piece && a.side == b.side;
}

static end by_join(const hw_garment *garment, end from)
{
    for (int k = 0; k < garment->join_count; k++) {
        for (int e = 0; e < 2; e++) {
            end to = foot_edge(garment, &garment->joins[k].ends[1 - e]);
            bool here = same_end(foot_edge(garment, &garment->joins[k].ends[e]), from);
            bool free = to.piece >= 0 && hw_garment_seam_at(garment, to.piece, to.side) < 0;
            if (here && free) {
                return to;
            }
        }
    }
    return no_end;
}

/* Joins are looked at only where no seam says anything. */
static end sewn_to(const hw_garment *garment, end from)
{
    end to = by_seam(garment, from);
    return to.piece >= 0 ? to : by_join(garment, from);
}

/* The piece behind another in a round, or -1. */
static int next_piece(const hw_garment *garment, int piece)
{
    end to = sewn_to(garment, (end){ piece, HW_LEFT });
    return to.piece >= 0 && to.side == HW_RIGHT ? to.piece : -1;
}

/* ---- Rings ---- */

/* The ring that begins with a piece, if it closes and no other piece of it comes earlier. */
static bool ring_from(const hw_garment *garment, int first, hw_tube *out)
{
    hw_tube tube = { 0 };
    int piece = first;
    do {
        tube.pieces[tube.count++] = piece;
        piece = next_piece(garment, piece);
    } while (piece > first && tube.count < garment->piece_count);
    *out = tube;
    return piece == first;
}

hw_tubes hw_tubes_of(const hw_garment *garment)
{
    hw_tubes tubes = { .count = 0 };
    for (int p = 0; p < garment->piece_count; p++) {
        tubes.count += ring_from(garment, p, &tubes.list[tubes.count]) ? 1 : 0;
    }
    return tubes;
}

const hw_tube *hw_tubes_at(const hw_tubes *tubes, int piece)
{
    for (int t = 0; t < tubes->count; t++) {
        for (int k = 0; k < tubes->list[t].count; k++) {
            if (tubes->list[t].pieces[k] == piece) {
                return &tubes->list[t];
            }
        }
    }
    return NULL;
}

hw_tube_gap hw_tubes_gap(const hw_garment *garment, int piece)
{
    int next = next_piece(garment, piece);
    for (int i = 0; i < garment->piece_count && next >= 0; i++) {
        piece = next;
        next = next_piece(garment, piece);
    }
    return (hw_tube_gap){ piece, sewn_to(garment, (end){ piece, HW_LEFT }).piece >= 0 };
}

/* ---- The project ---- */

bool hw_tubes_wanted(const hw_project *project)
{
    return project->in_rounds && !(project->machine.pitch_cm > 0);
}

static hw_status no_ring(const hw_project *project, hw_err *err)
{
    const hw_garment *garment = &project->garment;
    hw_tube_gap gap = hw_tubes_gap(garment, 0);
    hw_status status = hw_err_set(err, HW_ERR_RANGE,
        "no pieces of this garment close to a round, because the left edge of `%.60s` is sewn to "
        "%s; take `in rounds` out, or use a garment file whose seams lead from piece to piece and "
        "back to the first",
        garment->pieces[gap.piece].name, gap.sewn ? "another left edge" : "nothing");
    return hw_err_place(err, status, project->in_rounds_line, 0);
}

/* Seams where only joins tell of them, so that motifs meet there too. */
static int add_seams(const hw_garment *garment, const hw_tubes *tubes, hw_seam *seams)
{
    int count = garment->seam_count;
    for (int t = 0; t < tubes->count; t++) {
        const hw_tube *tube = &tubes->list[t];
        for (int k = 0; k < tube->count; k++) {
            int piece = tube->pieces[k];
            if (hw_garment_seam_at(garment, piece, HW_LEFT) < 0 && count < HW_MAX_SEAMS) {
                seams[count++] = (hw_seam){ { piece, tube->pieces[(k + 1) % tube->count] },
                    { HW_LEFT, HW_RIGHT } };
            }
        }
    }
    return count;
}

hw_status hw_tubes_prepare(
    const hw_project *project, hw_arena *arena, const hw_project **out, hw_err *err)
{
    const hw_garment *garment = &project->garment;
    hw_tubes tubes = hw_tubes_of(garment);
    if (!hw_tubes_wanted(project)) {
        *out = project;
        return HW_OK;
    }
    if (tubes.count == 0) {
        return no_ring(project, err);
    }
    hw_project *made = hw_arena_get(arena, 1, sizeof *made);
    hw_piece *pieces = hw_arena_get(arena, HW_MAX_PIECES, sizeof *pieces);
    hw_seam *seams = hw_arena_get(arena, HW_MAX_SEAMS, sizeof *seams);
    if (made == NULL || pieces == NULL || seams == NULL) {
        return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
    }
    for (int p = 0; p < garment->piece_count; p++) {
        pieces[p] = garment->pieces[p];
        if (hw_tubes_at(&tubes, p) != NULL) {
            pieces[p].edge_sts[HW_LEFT] = pieces[p].edge_sts[HW_RIGHT] = 0;
        }
    }
    for (int s = 0; s < garment->seam_count; s++) {
        seams[s] = garment->seams[s];
    }
    *made = *project;
    made->garment.pieces = pieces;
    made->garment.seams = seams;
    made->garment.seam_count = add_seams(garment, &tubes, seams);
    *out = made;
    return HW_OK;
}

/* ---- How far up edges are sewn ---- */

/* Whether a run has the stretch of an edge, or with NULL any of it. */
static bool has(const hw_edge_run *run, end at, const char *stretch)
{
    bool found = false;
    for (int i = 0; i < run->count; i++) {
        const hw_edge_part *part = &run->parts[i];
        bool here = part->piece == at.piece && part->edge == (hw_edge)at.side;
        bool all = stretch == NULL || part->stretch == NULL;
        found = found || (here && (all || strcmp(part->stretch, stretch) == 0));
    }
    return found;
}

/* Whether some join sews a stretch, or with NULL any, to the neighbour. */
static bool is_joined(const hw_tube_edge *at, const char *stretch)
{
    end own = { at->piece, at->side };
    end beyond = { at->neighbour, other(at->side) };
    bool found = false;
    for (int k = 0; k < at->garment->join_count; k++) {
        const hw_edge_run *ends = at->garment->joins[k].ends;
        found = found || (has(&ends[0], own, stretch) && has(&ends[1], beyond, NULL)) ||
                (has(&ends[1], own, stretch) && has(&ends[0], beyond, NULL));
    }
    return found;
}

static bool has_stretch(const hw_edge_line *edge, const char *stretch)
{
    bool found = false;
    for (int i = 1; i < edge->count; i++) {
        found = found || strcmp(edge->points[i].stretch, stretch) == 0;
    }
    return found;
}

double hw_tube_sewn_cm(const hw_tube_edge *at, const hw_edge_line *edge)
{
    static const char usual[] = "side";
    bool told = is_joined(at, NULL);
    bool sided = has_stretch(edge, usual);
    double sewn_cm = edge->points[0].up_cm;
    for (int i = 1; i < edge->count; i++) {
        const char *stretch = edge->points[i].stretch;
        bool sewn = told ? is_joined(at, stretch) : !sided || strcmp(stretch, usual) == 0;
        if (!sewn) {
            break;
        }
        sewn_cm = edge->points[i].up_cm;
    }
    return sewn_cm;
}
