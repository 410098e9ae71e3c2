/* Each rule is one function; a table runs them in the order of the sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/tubenotes.h"

#include <stdlib.h>

#include "core/rounds.h"

static const char *piece_name(const hw_plan *plan, int piece)
{
    return plan->project->garment.pieces[piece].name;
}

static const char *marked_sizes(const hw_plan *plan, const bool *marked, hw_notes *notes)
{
    return hw_notes_sizes(notes, plan->finished.names, marked, plan->finished.count);
}

/* "front and back", "a, b and c". */
static const char *tube_name(const hw_plan *plan, const hw_tube *tube, hw_notes *notes)
{
    const char *name = piece_name(plan, tube->pieces[0]);
    for (int k = 1; k < tube->count && name != NULL; k++) {
        name = hw_arena_format(notes->arena, "%s%s%s", name, k + 1 < tube->count ? ", " : " and ",
            piece_name(plan, tube->pieces[k]));
    }
    return hw_notes_words(notes, name);
}

static void on_a_bed(const hw_plan *plan, hw_notes *notes)
{
    if (plan->part == 0 && plan->project->in_rounds && !hw_tubes_wanted(plan->project)) {
        hw_notes_say(notes, HW_NOTE_REMARK,
            "`in rounds` is for hand knitting; on a machine every piece is worked in rows.");
    }
}

static void together(const hw_plan *plan, hw_notes *notes)
{
    for (int t = 0; t < plan->tubes.count; t++) {
        const hw_tube *tube = &plan->tubes.list[t];
        hw_notes_of(notes, HW_NOTE_REMARK, tube_name(plan, tube, notes),
            ": worked in rounds%s, with no edge stitches. The table Rows says how many stitches a "
            "round has, and from which row on, if any, %s.",
            tube->count > 1 ? " together" : "",
            tube->count > 1 ? "each piece is worked in rows by itself" : "rows turn");
    }
}

/* Rounds that end below the end of a seam leave edges to be sewn. */
static void sewn_above(const hw_plan *plan, hw_notes *notes)
{
    for (int t = 0; t < plan->tubes.count; t++) {
        const hw_tube *tube = &plan->tubes.list[t];
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < plan->finished.count; i++) {
            marked[i] = hw_rounds_leave_seams(plan, i, tube);
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, HW_NOTE_REMARK, tube_name(plan, tube, notes),
                ", %s: rounds end below the top of the edges that are sewn together. Sew these "
                "from there on edge to edge, because they have no stitch that a seam may take up.",
                marked_sizes(plan, marked, notes));
        }
    }
}

static void by_themselves(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    for (int p = 0; p < garment->piece_count && hw_tubes_wanted(plan->project); p++) {
        if (hw_tubes_at(&plan->tubes, p) != NULL) {
            continue;
        }
        hw_tube_gap gap = hw_tubes_gap(garment, p);
        hw_notes_of(notes, HW_NOTE_REMARK, piece_name(plan, p),
            ": worked in rows, because the left edge of %s is sewn to %s, so that no round closes.",
            piece_name(plan, gap.piece), gap.sewn ? "another left edge" : "nothing");
    }
}

/* Eyelets are worked over two stitches each, all round. */
static void picot(const hw_plan *plan, hw_notes *notes)
{
    for (int t = 0; plan->hem.fold == HW_FOLD_PICOT && t < plan->tubes.count; t++) {
        const hw_tube *tube = &plan->tubes.list[t];
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < plan->finished.count; i++) {
            int sts = 0;
            for (int k = 0; k < tube->count; k++) {
                sts += hw_plan_fit(plan, i, tube->pieces[k])->cast_on_sts;
            }
            marked[i] = sts % 2 != 0;
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, HW_NOTE_REMARK, tube_name(plan, tube, notes),
                ", %s: the round has an odd number of stitches and a picot fold wants an even one. "
                "Leave one stitch plain beside the marker at the start of the round.",
                marked_sizes(plan, marked, notes));
        }
    }
}

/* Between a piece and the one behind it in the round. */
typedef struct {
    const hw_tube *tube;
    int slice;
} border;

static const hw_upper *upper_at(const hw_plan *plan, const border *at, int upper, int size, int on)
{
    int piece = at->tube->pieces[(at->slice + on) % at->tube->count];
    const hw_draft *draft = &plan->drafts[size * plan->project->garment.piece_count + piece];
    const hw_upper_band *band = &plan->whole->uppers[upper];
    bool carried = band->on[plan->whole->parts.list[plan->part].pieces[piece]];
    bool round = carried && draft->uppers[upper].first_row < draft->round_rows;
    return round && draft->uppers[upper].motifs > 0 ? &draft->uppers[upper] : NULL;
}

static void upper_break(const hw_plan *plan, const border *at, int upper, hw_notes *notes)
{
    const hw_upper_band *band = &plan->whole->uppers[upper];
    bool marked[HW_MAX_SIZES] = { false };
    int most = 0;
    for (int i = 0; i < plan->finished.count; i++) {
        const hw_upper *before = upper_at(plan, at, upper, i, 0);
        const hw_upper *behind = upper_at(plan, at, upper, i, 1);
        int broken = before == NULL || behind == NULL
                         ? 0
                         : before->margin[HW_LEFT] + behind->margin[HW_RIGHT] - band->motif.gap;
        marked[i] = broken != 0;
        most = abs(broken) > most ? abs(broken) : most;
    }
    if (most > 0) {
        const hw_tube *tube = at->tube;
        hw_notes_say(notes, HW_NOTE_REMARK,
            "Band %s, round from %s to %s, %s: the gap between the motifs is up to %s off at the "
            "marker.",
            band->input->name, piece_name(plan, tube->pieces[at->slice]),
            piece_name(plan, tube->pieces[(at->slice + 1) % tube->count]),
            marked_sizes(plan, marked, notes), hw_notes_counted(notes, most, "stitch", "stitches"));
    }
}

static void upper_breaks(const hw_plan *plan, hw_notes *notes)
{
    for (int t = 0; t < plan->tubes.count; t++) {
        const hw_tube *tube = &plan->tubes.list[t];
        for (int k = 0; k < tube->count * plan->whole->upper_count; k++) {
            border at = { tube, k % tube->count };
            upper_break(plan, &at, k / tube->count, notes);
        }
    }
}

void hw_tubenotes_add(const hw_plan *plan, hw_notes *notes)
{
    static void (*const rules[])(const hw_plan *, hw_notes *) = { on_a_bed, together, by_themselves,
        sewn_above, picot, upper_breaks };
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++) {
        rules[i](plan, notes);
    }
}
