/* Seams that lie across trims, found by the points at which edges meet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/makingup.h"

#include <math.h>
#include <string.h>

#include "core/buf.h"

static const double same_cm = 0.05; /* points that are nearer to each other are one */

typedef struct {
    const hw_whole *whole;
    hw_arena *arena;
    bool sewn[HW_MAX_SEAMS]; /* joins */
    hw_making_up list;
    bool refused;
} making;

/* The points of an edge between which a part lies; false where it has none. */
typedef struct {
    const hw_outline_point *points;
    int first, last;
} reach;

static bool find_reach(const making *m, const hw_edge_part *part, reach *out)
{
    const hw_edge_line *edge = &hw_plan_draft(m->whole, 0, part->piece)->outline.edges[part->edge];
    *out = (reach){ .points = edge->points, .first = -1 };
    for (int i = 1; i < edge->count; i++) {
        if (part->stretch == NULL || strcmp(edge->points[i].stretch, part->stretch) == 0) {
            out->first = out->first < 0 ? i - 1 : out->first;
            out->last = i;
        }
    }
    return out->first >= 0;
}

/* Where a trim comes to a part, or leaves it. */
typedef struct {
    int piece;
    hw_outline_point at;
} corner;

/* Followed from right to left, a part on a right edge goes up; a top begins at its right. */
static bool corner_of(
    const making *m, const hw_trim_kind *kind, int part, bool leaving, corner *out)
{
    const hw_edge_part *p = &kind->trim->along.parts[part];
    reach r;
    if (!find_reach(m, p, &r)) {
        return false;
    }
    bool rising = p->edge == HW_EDGE_RIGHT || p->edge == HW_EDGE_NECK_LEFT;
    bool ends_last = kind->first == HW_RIGHT ? rising : !rising;
    *out = (corner){ p->piece, r.points[ends_last == leaving ? r.last : r.first] };
    return true;
}

static bool touches(const making *m, const hw_edge_run *run, const corner *c)
{
    bool found = false;
    for (int i = 0; i < run->count; i++) {
        reach r;
        if (run->parts[i].piece != c->piece || !find_reach(m, &run->parts[i], &r)) {
            continue;
        }
        for (int k = r.first; k <= r.last; k++) {
            found = found || (fabs(r.points[k].across_cm - c->at.across_cm) < same_cm &&
                                 fabs(r.points[k].up_cm - c->at.up_cm) < same_cm);
        }
    }
    return found;
}

/* The join between two parts of a trim that follow each other, or -1. */
static int join_between(const making *m, const hw_trim_kind *kind, int from, int to)
{
    const hw_garment *garment = &m->whole->project->garment;
    corner a;
    corner b;
    if (!corner_of(m, kind, from, true, &a) || !corner_of(m, kind, to, false, &b)) {
        return -1;
    }
    for (int j = 0; a.piece != b.piece && j < garment->join_count; j++) {
        const hw_edge_run *ends = garment->joins[j].ends;
        if ((touches(m, &ends[0], &a) && touches(m, &ends[1], &b)) ||
            (touches(m, &ends[1], &a) && touches(m, &ends[0], &b))) {
            return j;
        }
    }
    return -1;
}

static void add(making *m, const char *text)
{
    m->refused = m->refused || text == NULL;
    if (!m->refused) {
        m->list.steps[m->list.count++] = text;
    }
}

/* "Sew left front right shoulder to back left shoulder", without the file's `within`. */
static void sew(making *m, int join, const char *behind)
{
    const char *text = m->whole->project->garment.joins[join].text;
    char *words = hw_arena_text(m->arena, text, strcspn(text, ","));
    bool refused = words == NULL || behind == NULL;
    add(m, refused ? NULL : hw_arena_format(m->arena, "Sew %s%s.", words, behind));
    m->sewn[join] = true;
}

static void pick_up(making *m, int trim)
{
    const hw_trim_kind *kind = &m->whole->trims->kinds[trim];
    int count = kind->trim->along.count;
    hw_buf buf;
    hw_buf_init(&buf, &m->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "Pick up %s along ", kind->trim->name);
    for (int i = 0; i < count; i++) {
        int p = kind->first == HW_RIGHT ? i : count - 1 - i;
        const char *name = hw_trimming_edge(m->whole, trim, p, m->arena);
        m->refused = m->refused || name == NULL;
        hw_buf_format(&buf, "%s%s", i == 0 ? "" : ", ", name != NULL ? name : "");
    }
    hw_buf_text(&buf, ", and knit it.");
    add(m, hw_buf_keep(&buf, m->arena));
    hw_buf_release(&buf);
}

static void add_trim(making *m, int trim)
{
    const hw_trim_kind *kind = &m->whole->trims->kinds[trim];
    int count = kind->trim->along.count;
    bool flat_ring = kind->trim->round && m->whole->project->machine.pitch_cm > 0;
    int last = kind->trim->round ? join_between(m, kind, count - 1, 0) : -1;
    for (int i = 0; i + 1 < count; i++) {
        int join = join_between(m, kind, i, i + 1);
        if (join >= 0 && !m->sewn[join]) {
            sew(m, join, "");
        }
    }
    bool after = flat_ring && last >= 0 && !m->sewn[last];
    if (last >= 0 && !m->sewn[last] && !after) {
        sew(m, last, "");
    }
    pick_up(m, trim);
    const char *ends = hw_arena_format(m->arena, "the ends of %s", kind->trim->name);
    m->refused = m->refused || ends == NULL;
    if (m->refused || !flat_ring) {
        return;
    }
    if (after) {
        sew(m, last, hw_arena_format(m->arena, ", and %s with it", ends));
    } else {
        add(m, hw_arena_format(m->arena, "Sew %s together.", ends));
    }
}

/* What no trim runs along is finished last, when the neck's band has given it its top. */
static void finish_slits(making *m)
{
    const hw_garment *garment = &m->whole->project->garment;
    for (int p = 0; p < garment->piece_count; p++) {
        if (hw_plan_draft(m->whole, 0, p)->outline.slit_cm > 0) {
            add(m, hw_arena_format(m->arena,
                       "Edge the slit of %s, and close it at the top with a button and a small "
                       "loop.",
                       garment->pieces[p].name));
        }
    }
}

hw_status hw_makingup_steps(const hw_whole *whole, hw_arena *arena, hw_making_up *out)
{
    making m = { .whole = whole, .arena = arena };
    int trims = whole->trims->count;
    for (int k = 0; k < trims; k++) {
        add_trim(&m, k);
    }
    bool left = false;
    for (int j = 0; j < whole->project->garment.join_count; j++) {
        left = left || !m.sewn[j];
    }
    if (trims > 0 && left) {
        add(&m, "Sew the other seams.");
    }
    if (trims > 0) {
        finish_slits(&m);
    }
    if (m.refused) {
        return HW_ERR_NOMEM;
    }
    *out = m.list;
    return HW_OK;
}
