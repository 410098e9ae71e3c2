/* Each rule of caution is one function; a table runs them in the order of the sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/caution.h"

#include "core/outside.h"
#include "core/safety.h"
#include "core/trimming.h"
#include "core/tubenotes.h"
#include "core/unsure.h"

static const char *const *size_names(const hw_plan *plan)
{
    return plan->finished.names;
}

/* Where to punch a card that is not punched yet. */
static void punching(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    const hw_bed_punch *punch = &plan->punch;
    if (!plan->has_punch) {
        return;
    }
    if (punch->centres_all) {
        hw_notes_say(notes, HW_NOTE_REMARK,
            "Punch the card so that its first figure starts in column %d (column 1 works needle "
            "%s): then every piece of every size stands centred on the bed. Once it is punched, "
            "write `card start: %d` under motif, so that later plans keep to it.",
            punch->column + 1, hw_notes_needle(notes, -plan->project->machine.card_columns / 2),
            punch->column + 1);
        return;
    }
    hw_notes_say(notes, HW_NOTE_REMARK,
        "No one card lets every piece stand in the middle of the bed. That does no harm: the "
        "motifs "
        "sit on each piece as they should, and only the needles move. Punch the card with the "
        "first "
        "figure in column %d (column 1 works needle %s); the furthest off, %s in size %s, then "
        "stands %s off the middle. Hang each piece on the needles that the rows from needle and "
        "to needle give, and once the card is punched write `card start: %d` under motif, so that "
        "later plans keep to it.",
        punch->column + 1, hw_notes_needle(notes, -plan->project->machine.card_columns / 2),
        garment->pieces[punch->worst % garment->piece_count].name,
        size_names(plan)[punch->worst / garment->piece_count],
        hw_notes_halves(notes, punch->worst_halves, "needle", "needles"), punch->column + 1);
}

/* What the machine cannot do with the motif; the words stand in card.c. */
static void card_findings(const hw_plan *plan, hw_notes *notes)
{
    hw_card_task task = hw_plan_card(plan);
    for (int i = 0; i < plan->card.finding_count; i++) {
        const char *words = hw_card_finding_words(&plan->card.findings[i], &task, notes->arena);
        if (words == NULL) {
            notes->refused = true;
            return;
        }
        hw_notes_say(notes, HW_NOTE_WARNING, "%s", words);
    }
}

enum { MOST_BANDS = HW_MAX_BANDS + HW_MAX_TRIMS };

static hw_safety_band band_of(hw_notes *notes, const char *name, const hw_motif *motif)
{
    return (hw_safety_band){ .where = hw_notes_words(
                                 notes, hw_arena_format(notes->arena, "the %s", name)),
        .longest_float = hw_motif_longest(motif) };
}

/* Every band of the garment: in hems, higher up, in trims. */
static int gather_bands(const hw_plan *plan, hw_safety_band *bands, hw_notes *notes)
{
    const hw_whole *whole = plan->whole;
    int count = 0;
    bands[count++] =
        (hw_safety_band){ .where = "the hem", .longest_float = hw_motif_longest(&plan->motif) };
    if (whole == NULL) {
        return count;
    }
    for (int k = 1; k < whole->parts.count; k++) {
        bands[count++] = band_of(notes, whole->parts.list[k].name, &whole->plans[k].motif);
    }
    for (int u = 0; u < whole->upper_count; u++) {
        bands[count] = band_of(notes, whole->uppers[u].input->name, &whole->uppers[u].motif);
        bands[count++].open = true;
    }
    for (int t = 0; t < whole->trims->count; t++) {
        const hw_trim_kind *kind = &whole->trims->kinds[t];
        if (kind->has_motif) {
            bands[count++] = band_of(notes, kind->trim->name, &kind->motif);
        }
    }
    return count;
}

static bool has_holes(const hw_plan *plan)
{
    bool any = false;
    for (int t = 0; t < plan->project->trim_count; t++) {
        any = any || plan->project->trims[t].buttonholes > 0;
    }
    return any;
}

/* A slit is closed with a button: the notes say so. */
static bool has_slit(const hw_plan *plan)
{
    bool any = false;
    for (int p = 0; p < plan->whole->project->garment.piece_count; p++) {
        any = any || hw_plan_draft(plan->whole, 0, p)->outline.slit_cm > 0;
    }
    return any;
}

/* Whether no finished measurement follows from the body. */
static bool fits_no_body(const hw_garment *garment)
{
    bool none = true;
    for (int i = 0; i < garment->finished_count; i++) {
        const hw_rule *rule = &garment->finished[i].rule;
        for (int k = 0; k < rule->count; k++) {
            none = none && rule->terms[k].finished;
        }
    }
    return none;
}

/* What a plan knows of safety in some sizes in a row: floats, ages, heights, and what the project
 * says of fastenings. */
static void safety_of(const hw_plan *plan, int first, int count, hw_notes *notes)
{
    hw_safety_band bands[MOST_BANDS];
    int height = hw_sizes_find(&plan->body, "height");
    const hw_safety_task task = {
        .names = size_names(plan) + first,
        .ages_months = plan->body.ages_months + first,
        .heights_cm = height >= 0 ? plan->body.measures[height].values_cm + first : NULL,
        .count = count,
        .bands = bands,
        .band_count = gather_bands(plan, bands, notes),
        .buttons = plan->project->buttons || has_holes(plan) || has_slit(plan),
        .cords = { plan->project->cords[HW_CORD_NECK], plan->project->cords[HW_CORD_WAIST],
            plan->project->cords[HW_CORD_ELSEWHERE] },
        .sleepwear = plan->project->sleepwear,
        .bodiless = fits_no_body(&plan->project->garment),
    };
    hw_safety_add(&task, notes);
}

/* Told with the first part, for all of them together. */
static void safety(const hw_plan *plan, hw_notes *notes)
{
    if (plan->part == 0) {
        safety_of(plan, 0, plan->body.count, notes);
    }
}

void hw_caution_of_size(const hw_plan *plan, int size, hw_notes *notes)
{
    safety_of(plan, size, 1, notes);
}

static void hem_rows(const hw_plan *plan, hw_notes *notes)
{
    const hw_hem *hem = &plan->hem;
    hw_show show = plan->project->show;
    if (hem->raised) {
        hw_notes_say(notes, HW_NOTE_WARNING,
            "The band of %d rows with two plain rows on each side is %s deep already, more than "
            "the %s wanted. Choose a lower motif or a deeper hem.",
            hem->band_rows, hw_notes_length(notes, hem->face_cm, show),
            hw_notes_length(notes, hem->wanted_cm, show));
    }
    if (hem->facing_deep) {
        hw_notes_say(notes, HW_NOTE_WARNING,
            "The facing (%s) is deeper than the face (%s) and would peep out below. Knit it on a "
            "tighter dial, or %s.",
            hw_notes_length(notes, hem->facing_cm, show),
            hw_notes_length(notes, hem->face_cm, show),
            plan->project->hem.facing == HW_FACING_ROWS ? "write `facing: same depth` under hem"
                                                        : "take two rows off it");
    }
}

/* With needles set by hand a plain end may be wider than the gap: the card knows nothing of that.
 */
static void wide_ends(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    bool card = plan->project->machine.card_columns > 0 && plan->motif.fits_card;
    for (int p = 0; card && p < garment->piece_count; p++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < plan->finished.count; i++) {
            const hw_fit *fit = hw_plan_fit(plan, i, p);
            marked[i] =
                fit->margin[HW_LEFT] > plan->motif.gap || fit->margin[HW_RIGHT] > plan->motif.gap;
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, HW_NOTE_WARNING, garment->pieces[p].name,
                ", %s: the plain ends are wider than the gap, and the card would begin another "
                "motif there. Before each band row push the needles of the plain ends back by "
                "hand.",
                hw_notes_sizes(notes, size_names(plan), marked, plan->finished.count));
        }
    }
}

/* On a bed every other stitch is moved to its neighbour, and both ends stay plain: an odd count
 * [H2]. By hand eyelets are worked over any count. */
static void picot(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    bool moved = plan->hem.fold == HW_FOLD_PICOT && plan->project->machine.pitch_cm > 0;
    for (int p = 0; moved && p < garment->piece_count; p++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < plan->finished.count; i++) {
            bool round = hw_tubes_at(&plan->tubes, p) != NULL;
            marked[i] = !round && hw_plan_fit(plan, i, p)->cast_on_sts % 2 == 0;
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, HW_NOTE_REMARK, garment->pieces[p].name,
                ", %s: the count is even and a picot fold wants an odd one. Move the stitches "
                "from the second on and leave two plain stitches side by side at one edge, where "
                "the seam hides them.",
                hw_notes_sizes(notes, size_names(plan), marked, plan->finished.count));
        }
    }
}

/* Edges whose margins are equal make an even sum, which an odd gap never is: those of one piece
 * that has to be centred, and those of a piece and its mirror that meet. */
static bool unavoidable(const hw_plan *plan, const hw_seam *seam)
{
    const hw_piece *pieces = plan->project->garment.pieces;
    int a = seam->piece[0];
    int b = seam->piece[1];
    bool mirrors =
        (pieces[a].mirror_of == b || pieces[b].mirror_of == a) && seam->side[0] != seam->side[1];
    bool centred = a == b && plan->project->choices.exact_centre;
    return plan->motif.gap % 2 != 0 && (mirrors || centred);
}

/* Whether two edges meet at a marker and no seam is sewn. */
static bool in_round(const hw_plan *plan, const hw_seam *seam)
{
    return hw_tubes_at(&plan->tubes, seam->piece[0]) != NULL;
}

static const char *seam_name(const hw_plan *plan, const hw_seam *seam, hw_notes *notes)
{
    const hw_piece *pieces = plan->project->garment.pieces;
    const char *name = hw_arena_format(notes->arena, "%s %s to %s %s", pieces[seam->piece[0]].name,
        hw_side_name(seam->side[0]), pieces[seam->piece[1]].name, hw_side_name(seam->side[1]));
    return hw_notes_words(notes, name);
}

static void seams(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    for (int s = 0; s < garment->seam_count; s++) {
        bool marked[HW_MAX_SIZES] = { false };
        int most = 0;
        for (int i = 0; i < plan->finished.count; i++) {
            int broken = plan->grading.seam_breaks[i * garment->seam_count + s];
            marked[i] = broken != 0;
            int size = broken < 0 ? -broken : broken;
            most = size > most ? size : most;
        }
        if (most == 0) {
            continue;
        }
        const hw_seam *seam = &garment->seams[s];
        double mm = hw_gauge_width_cm(&plan->gauge[HW_BAND], most) * 10;
        hw_notes_of(notes, HW_NOTE_REMARK, seam_name(plan, seam, notes),
            ", %s: at the %s the gap between the motifs is up to %s "
            "(%s mm) off; the row named break says how many in each size, more than the gap or "
            "(with a minus) fewer.%s",
            hw_notes_sizes(notes, size_names(plan), marked, plan->finished.count),
            in_round(plan, seam) ? "marker" : "seam",
            hw_notes_counted(notes, most, "stitch", "stitches"), hw_notes_number(notes, mm, 0),
            unavoidable(plan, seam) ? " An odd gap cannot be halved between edges that have equal "
                                      "plain ends, so this cannot be helped; an even gap can be."
                                    : "");
    }
}

/* A margin more on one side than on the other moves the motifs by half the difference. */
static void off_centre(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    for (int p = 0; p < garment->piece_count; p++) {
        bool marked[HW_MAX_SIZES] = { false };
        int most = 0;
        for (int i = 0; i < plan->finished.count; i++) {
            const hw_fit *fit = hw_plan_fit(plan, i, p);
            int difference = fit->margin[HW_LEFT] - fit->margin[HW_RIGHT];
            difference = difference < 0 ? -difference : difference;
            marked[i] = difference > 0;
            most = difference > most ? difference : most;
        }
        if (most == 0) {
            continue;
        }
        double mm = hw_gauge_width_cm(&plan->gauge[HW_BAND], most / 2.0) * 10;
        hw_notes_of(notes, HW_NOTE_REMARK, garment->pieces[p].name,
            ", %s: the motifs sit up to %s (%s mm) beside the middle, because the "
            "plain stitches at the two edges differ.%s",
            hw_notes_sizes(notes, size_names(plan), marked, plan->finished.count),
            hw_notes_halves(notes, most, "stitch", "stitches"), hw_notes_number(notes, mm, 0),
            plan->motif.gap % 2 != 0
                ? " A gap of an odd number of stitches cannot be halved; an even one can."
                : "");
    }
}

/* Ease has nothing to act on where the finished measurement itself is given. */
static void idle_ease(const hw_plan *plan, hw_notes *notes)
{
    for (int i = 0; i < plan->project->ease_count; i++) {
        const char *name = plan->project->ease[i].name;
        if (hw_sizes_find(&plan->project->finished, name) >= 0) {
            hw_notes_say(notes, HW_NOTE_WARNING,
                "The ease for `%s` changes nothing, because its finished measurement is given. "
                "Take one of the two out.",
                name);
        }
    }
}

void hw_caution_add(const hw_plan *plan, hw_notes *notes)
{
    static void (*const rules[])(const hw_plan *, hw_notes *) = { safety, hw_outside_add,
        card_findings, punching, hem_rows, wide_ends, hw_tubenotes_add, idle_ease, picot,
        off_centre, seams, hw_unsure_add };
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++) {
        rules[i](plan, notes);
    }
}
