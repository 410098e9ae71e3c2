/* Seams that lie across trims, found by the points at which edges meet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/makingup.h"

#include <string.h>

#include "core/buf.h"

typedef struct {
    const hw_whole *whole;
    hw_arena *arena;
    bool sewn[HW_MAX_SEAMS]; /* joins */
    hw_making_up list;
    bool refused;
} making;

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

/* "Sew left front right shoulder to back left shoulder", without the file's `within`. */
static void sew(making *m, int join, const char *behind)
{
    const char *text = m->whole->project->garment.joins[join].text;
    char *words = hw_arena_text(m->arena, text, strcspn(text, ","));
    bool refused = words == NULL || behind == NULL;
    add(m, refused ? NULL : hw_arena_format(m->arena, "Sew %s%s.", words, behind));
    m->sewn[join] = true;
}

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

static void pick_up(making *m, int trim)
{
    const hw_trim_kind *kind = &m->whole->trims->kinds[trim];
    hw_buf buf;
    hw_buf_init(&buf, &m->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "Pick up %s", kind->trim->name);
    say_along(m, trim, &buf);
    hw_buf_text(
        &buf, kind->covered == 0 ? ", and knit it."
              : kind->covered == 1
                  ? ", knit it, and fold and close it: another trim is picked up over its end."
                  : ", knit it, and fold and close it: other trims are picked up over its ends.");
    add(m, hw_buf_keep(&buf, m->arena));
    hw_buf_release(&buf);
}

static void add_trim(making *m, int trim)
{
    const hw_trim_kind *kind = &m->whole->trims->kinds[trim];
    int count = kind->trim->along.count;
    bool flat_ring = kind->trim->round && m->whole->project->machine.pitch_cm > 0;
    int last = kind->trim->round ? join_between(m, trim, count - 1, 0) : -1;
    for (int i = 0; i + 1 < count; i++) {
        int join = join_between(m, trim, i, i + 1);
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
