/* Seams that lie across trims, found by the points at which edges meet; then all the others.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/makingup.h"

#include <math.h>
#include <string.h>

#include "core/buf.h"
#include "core/rounds.h"
#include "core/rowing.h"

#define SAME_CM 0.05 /* lengths and heights that are told as one */

typedef struct {
    const hw_whole *whole;
    hw_arena *arena;
    bool sewn[HW_MAX_SEAMS]; /* joins */
    bool rest[HW_MAX_SEAMS]; /* joins whose lower ends rounds have joined */
    hw_making_up list;
    bool refused;
} making;

static int sizes_of(const making *m)
{
    return m->whole->plans[0].finished.count;
}

/* The join between two parts of a trim on two pieces, or -1. */
static int join_between(const making *m, int trim, int from, int to)
{
    const hw_trimway *way = &m->whole->trims->way;
    const hw_edge_part *parts = way->trims[trim].along.parts;
    const hw_trimway_pair pair = { trim, from, to };
    int join = -1;
    bool joined = hw_trimway_between(way, &pair, &join) == HW_TRIMWAY_JOINED;
    return joined && parts[from].piece != parts[to].piece ? join : -1;
}

static void add(making *m, const char *text)
{
    m->refused = m->refused || text == NULL;
    if (!m->refused) {
        m->list.steps[m->list.count++] = text;
    }
}

/* Add what a buffer holds, and give it back. */
static void add_kept(making *m, hw_buf *buf)
{
    add(m, hw_buf_keep(buf, m->arena));
    hw_buf_release(buf);
}

/* "0.5 cm", or "0.5 cm to 1.6 cm" where sizes differ. */
static void say_range(const making *m, double least_cm, double most_cm, hw_buf *buf)
{
    hw_show show = m->whole->project->show;
    if (most_cm - least_cm >= SAME_CM) {
        hw_length_show(buf, least_cm, show);
        hw_buf_text(buf, " to ");
    }
    hw_length_show(buf, most_cm, show);
}

/* ---- Joins. ---- */

/* Whether all edges of a run begin, or end, at the threads that mark the underarm. */
static bool at_marks(const making *m, const hw_edge_run *run, bool begins)
{
    const hw_trimway *way = &m->whole->trims->way;
    for (int i = 0; i < run->count; i++) {
        const hw_edge_part *part = &run->parts[i];
        hw_trimway_reach r;
        if (part->piece < 0 || part->stretch == NULL || part->edge > HW_EDGE_RIGHT ||
            !hw_trimway_find_reach(way, part, &r)) {
            return false;
        }
        const hw_draft *draft = hw_plan_draft(m->whole, 0, part->piece);
        double up_cm = r.points[begins ? r.first : r.last].up_cm;
        double underarm_cm = hw_outline_height(&draft->outline, "side");
        if (hw_rowing_underarm(draft) < 0 || fabs(up_cm - underarm_cm) >= SAME_CM) {
            return false;
        }
    }
    return true;
}

static const char *mark_words(const making *m, const hw_joint_edges *join)
{
    if (at_marks(m, &join->ends[0], true) || at_marks(m, &join->ends[1], true)) {
        return ", between the threads that mark the underarm";
    }
    if (at_marks(m, &join->ends[0], false) || at_marks(m, &join->ends[1], false)) {
        return ", up to the threads that mark the underarm";
    }
    return "";
}

/* "; the first is 0.5 cm to 1.6 cm longer: ease it in", in words for all sizes together. */
static void say_ease(const making *m, int join, hw_buf *buf)
{
    double least_cm = HW_MAX_CM;
    double most_cm = 0;
    bool longer[2] = { false, false };
    for (int i = 0; i < sizes_of(m); i++) {
        int joins = m->whole->project->garment.join_count;
        const double *cm = m->whole->joins[i * joins + join].cm;
        double off_cm = fabs(cm[0] - cm[1]);
        least_cm = fmin(least_cm, off_cm);
        most_cm = fmax(most_cm, off_cm);
        if (off_cm >= HW_MAKING_UP_EASE_CM) {
            longer[cm[0] > cm[1] ? 0 : 1] = true;
        }
    }
    if (!longer[0] && !longer[1]) {
        return;
    }
    bool both = longer[0] && longer[1];
    bool all = !both && least_cm >= HW_MAKING_UP_EASE_CM;
    hw_buf_format(buf, "; the %s is %s",
        both        ? "one"
        : longer[0] ? "first"
                    : "second",
        all ? "" : "up to ");
    say_range(m, all ? least_cm : most_cm, most_cm, buf);
    hw_buf_text(buf, both ? " longer than the other: ease it in" : " longer: ease it in");
}

/* "Sew left front right shoulder to back left shoulder." */
static void sew(making *m, int join, const char *behind)
{
    const hw_joint_edges *edges = &m->whole->project->garment.joins[join];
    hw_buf buf;
    hw_buf_init(&buf, &m->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "Sew %s%s", edges->text, mark_words(m, edges));
    hw_buf_format(&buf, "%s%s", m->rest[join] ? ", from where the rounds end" : "", behind);
    say_ease(m, join, &buf);
    hw_buf_text(&buf, ".");
    add_kept(m, &buf);
    m->sewn[join] = true;
}

/* The tube that has both sides of a join in its rounds, from the fold up; NULL: none. */
static const hw_tube *tube_of(const making *m, const hw_joint_edges *join, const hw_plan **plan)
{
    const hw_edge_part *a = &join->ends[0].parts[0];
    const hw_edge_part *b = &join->ends[1].parts[0];
    bool sides = join->ends[0].count == 1 && join->ends[1].count == 1 && a->edge <= HW_EDGE_RIGHT &&
                 b->edge <= HW_EDGE_RIGHT && a->edge != b->edge;
    if (!sides) {
        return NULL;
    }
    hw_plan_piece at = hw_plan_find(m->whole, a->piece);
    hw_plan_piece other = hw_plan_find(m->whole, b->piece);
    const hw_tube *tube = hw_tubes_at(&at.plan->tubes, at.piece);
    bool same = at.plan == other.plan && tube != NULL &&
                tube == hw_tubes_at(&other.plan->tubes, other.piece);
    hw_trimway_reach r;
    same = same && hw_trimway_find_reach(&m->whole->trims->way, a, &r) && r.first == 0;
    *plan = at.plan;
    return same ? tube : NULL;
}

/* What rounds have joined needs no seam; where they end sooner in a size, the rest does. */
static void leave_rounds(making *m)
{
    const hw_garment *garment = &m->whole->project->garment;
    for (int j = 0; j < garment->join_count; j++) {
        const hw_plan *plan = NULL;
        const hw_tube *tube = tube_of(m, &garment->joins[j], &plan);
        for (int i = 0; tube != NULL && i < sizes_of(m); i++) {
            m->rest[j] = m->rest[j] || hw_rounds_leave_seams(plan, i, tube);
        }
        m->sewn[j] = tube != NULL && !m->rest[j];
    }
}

/* ---- Trims. ---- */

/* What stands before a part, behind the one before it, or behind none. */
static const char *join_words(const hw_edge_part *before, const hw_edge_part *part)
{
    bool end = part->piece < 0;
    if (before == NULL) {
        return end ? " over the end of " : " along ";
    }
    if (end) {
        return ", then over the end of ";
    }
    return before->piece < 0 ? ", then along " : ", ";
}

/* "along left front left opening, then over the end of neckband through both layers" */
static void say_along(making *m, int trim, hw_buf *buf)
{
    const hw_trim_kind *kind = &m->whole->trims->kinds[trim];
    const hw_edge_part *before = NULL;
    for (int i = 0; i < kind->trim->along.count; i++) {
        int p = kind->first == HW_RIGHT ? i : kind->trim->along.count - 1 - i;
        const hw_edge_part *part = &kind->trim->along.parts[p];
        const char *name = part->piece < 0 ? m->whole->trims->kinds[part->trim].trim->name
                                           : hw_trimming_edge(m->whole, trim, p, m->arena);
        m->refused = m->refused || name == NULL;
        hw_buf_format(buf, "%s%s%s", join_words(before, part), name != NULL ? name : "",
            part->piece < 0 ? " through both layers" : "");
        before = part;
    }
}

/* On a bed a ring is knitted flat, and its ends are sewn together. */
static bool is_flat_ring(const making *m, const hw_trim *trim)
{
    return trim->round && m->whole->project->machine.pitch_cm > 0;
}

static void pick_up(making *m, int trim)
{
    const hw_trim_kind *kind = &m->whole->trims->kinds[trim];
    hw_buf buf;
    hw_buf_init(&buf, &m->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "Pick up %s", kind->trim->name);
    say_along(m, trim, &buf);
    if (at_marks(m, &kind->trim->along, true)) {
        hw_buf_text(&buf, ", from thread to thread");
    }
    if (kind->trim->casing && !is_flat_ring(m, kind->trim)) {
        hw_buf_text(&buf, ", and knit it, but leave ");
        hw_length_show(&buf, HW_TRIMROWS_OPEN_CM, m->whole->project->show);
        hw_buf_text(&buf, " of its facing open for an elastic.");
    } else {
        hw_buf_text(&buf, kind->covered == 0 ? ", and knit it."
                          : kind->covered == 1
                              ? ", knit it, and fold and close it: another trim is picked up "
                                "over its end."
                              : ", knit it, and fold and close it: other trims are picked up "
                                "over its ends.");
    }
    add_kept(m, &buf);
}

/* The ends of a flat ring: with the join that lies there, or by themselves. */
static void close_ring(making *m, int trim, int join)
{
    const hw_trim *kind = m->whole->trims->kinds[trim].trim;
    const hw_trim_kind *made = &m->whole->trims->kinds[trim];
    const char *flat = made->has_motif
                           ? ", edge to edge without taking a stitch in, so that the figures meet"
                           : "";
    const char *casing = kind->casing ? "; leave the ends of its facing open for an elastic" : "";
    const char *open = hw_arena_format(m->arena, "%s%s", flat, casing);
    m->refused = m->refused || open == NULL;
    open = open != NULL ? open : "";
    if (join >= 0) {
        const char *ends =
            hw_arena_format(m->arena, ", and the ends of %s with it%s", kind->name, open);
        m->refused = m->refused || ends == NULL;
        sew(m, join, ends != NULL ? ends : "");
    } else {
        add(m, hw_arena_format(m->arena, "Sew the ends of %s together%s.", kind->name, open));
    }
}

static void draw_in(making *m, int trim)
{
    double least_cm = HW_MAX_CM;
    double most_cm = 0;
    for (int i = 0; i < sizes_of(m); i++) {
        double cm = hw_trimming_at(m->whole, i, trim)->elastic_cm;
        least_cm = fmin(least_cm, cm);
        most_cm = fmax(most_cm, cm);
    }
    hw_buf buf;
    hw_buf_init(&buf, &m->arena->mem, HW_BUF_LIMIT);
    hw_buf_text(&buf, "Cut an elastic of ");
    say_range(m, least_cm, most_cm, &buf);
    bool differ = most_cm - least_cm >= SAME_CM;
    hw_buf_format(&buf, "%s and ", differ ? " (Trims tells it for each size)" : "");
    hw_length_show(&buf, HW_MAKING_UP_LAP_CM, m->whole->project->show);
    hw_buf_format(&buf,
        " more for its lap. Draw it into %s without twisting it, sew its ends one over the other, "
        "and sew the opening shut.",
        m->whole->trims->kinds[trim].trim->name);
    add_kept(m, &buf);
}

static void add_trim(making *m, int trim)
{
    const hw_trim *kind = m->whole->trims->kinds[trim].trim;
    int count = kind->along.count;
    bool flat_ring = is_flat_ring(m, kind);
    int last = kind->round ? join_between(m, trim, count - 1, 0) : -1;
    for (int i = 0; i + 1 < count; i++) {
        int join = join_between(m, trim, i, i + 1);
        if (join >= 0 && !m->sewn[join]) {
            sew(m, join, "");
        }
    }
    bool open = last >= 0 && !m->sewn[last];
    if (open && !flat_ring) {
        sew(m, last, "");
    }
    pick_up(m, trim);
    if (flat_ring) {
        close_ring(m, trim, open ? last : -1);
    }
    if (kind->casing) {
        draw_in(m, trim);
    }
}

/* How many ends of a trim that is no ring lie at the top of a piece's slit. */
static int ends_at_slit(const making *m, int trim, int piece)
{
    const hw_trim *kind = m->whole->trims->kinds[trim].trim;
    const hw_outline *outline = &hw_plan_draft(m->whole, 0, piece)->outline;
    double top_cm = outline->edges[HW_EDGE_NECK_RIGHT].points[0].up_cm + outline->slit_cm;
    int found = 0;
    for (int e = 0; e < 2 && !kind->round; e++) {
        const hw_trimway_spot spot = { trim, e == 0 ? 0 : kind->along.count - 1, e > 0 };
        hw_trimway_corner c;
        found += hw_trimway_find_corner(&m->whole->trims->way, &spot, &c) && c.piece == piece &&
                 fabs(c.at.across_cm) < SAME_CM && fabs(c.at.up_cm - top_cm) < SAME_CM;
    }
    return found;
}

/* What no trim runs along is finished last, when the neck's band has given it its top: its edging
 * closes the open ends of that band. */
static void finish_slit(making *m, int piece)
{
    hw_buf buf;
    hw_buf_init(&buf, &m->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "Edge the slit of %s, ", m->whole->project->garment.pieces[piece].name);
    for (int t = 0; t < m->whole->trims->count; t++) {
        int ends = ends_at_slit(m, t, piece);
        if (ends > 0) {
            hw_buf_format(&buf, "and the open %s of %s with it through both layers, ",
                ends > 1 ? "ends" : "end", m->whole->trims->kinds[t].trim->name);
        }
    }
    hw_buf_text(&buf, "and close it at the top with a button and a small loop.");
    add_kept(m, &buf);
}

hw_status hw_makingup_steps(const hw_whole *whole, hw_arena *arena, hw_making_up *out)
{
    making m = { .whole = whole, .arena = arena };
    leave_rounds(&m);
    for (int k = 0; k < whole->trims->count; k++) {
        add_trim(&m, k);
    }
    for (int j = 0; j < whole->project->garment.join_count; j++) {
        if (!m.sewn[j]) {
            sew(&m, j, "");
        }
    }
    for (int p = 0; p < whole->project->garment.piece_count; p++) {
        if (hw_plan_draft(whole, 0, p)->outline.slit_cm > 0) {
            finish_slit(&m, p);
        }
    }
    if (m.refused) {
        return HW_ERR_NOMEM;
    }
    *out = m.list;
    return HW_OK;
}
