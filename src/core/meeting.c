/* Each rule is one function; a table runs them in the order of the sheet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/meeting.h"

#include <math.h>
#include <stdlib.h>

#include "core/num.h"
#include "core/sidenotes.h"
#include "core/trimming.h"

#define SAME_CM    0.05 /* lengths that are told as one */
#define MOVED_ROWS 0.75 /* a band is off by up to half a row anyway, where rows begin */

static const hw_sizes *sizes_of(const hw_whole *whole)
{
    return &whole->plans[0].finished;
}

static const char *marked_sizes(const hw_whole *whole, hw_notes *notes, const bool *marked)
{
    return hw_notes_sizes(notes, sizes_of(whole)->names, marked, sizes_of(whole)->count);
}

/* Edges that are sewn together and are not equally long. */
static void open_joins(const hw_whole *whole, hw_notes *notes)
{
    const hw_garment *garment = &whole->project->garment;
    hw_show show = whole->project->show;
    for (int k = 0; k < garment->join_count; k++) {
        bool marked[HW_MAX_SIZES] = { false };
        double most_cm = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            const hw_join_lengths *join = &whole->joins[i * garment->join_count + k];
            double off_cm = join->cm[0] - join->cm[1];
            marked[i] = !join->closes;
            if (marked[i] && fabs(off_cm) > fabs(most_cm)) {
                most_cm = off_cm;
            }
        }
        if (fabs(most_cm) > 0) {
            hw_notes_of(notes, HW_NOTE_WARNING, garment->joins[k].text,
                ", in %s: the first is up to %s %s than the other, and %s can be eased in. Look "
                "at the finished measurements behind these edges, or change the corners in a copy "
                "of the garment file.",
                marked_sizes(whole, notes, marked), hw_notes_length(notes, fabs(most_cm), show),
                most_cm > 0 ? "longer" : "shorter",
                hw_notes_length(notes, garment->joins[k].within_cm, show));
        }
    }
}

static const hw_upper *upper_at(const hw_whole *whole, int band, int size, int piece)
{
    return &hw_plan_draft(whole, size, piece)->uppers[band];
}

/* What can be wrong with a band higher up on one piece in one size. */
typedef bool upper_test(const hw_upper *upper, const hw_motif *motif);

static bool no_motif(const hw_upper *upper, const hw_motif *motif)
{
    (void)motif;
    return upper->motifs == 0;
}

static bool wide_ends(const hw_upper *upper, const hw_motif *motif)
{
    const int *margin = upper->margin;
    return upper->motifs > 0 && (margin[HW_LEFT] > motif->gap || margin[HW_RIGHT] > motif->gap);
}

static bool off_centre(const hw_upper *upper, const hw_motif *motif)
{
    (void)motif;
    return upper->motifs > 0 && upper->margin[HW_LEFT] != upper->margin[HW_RIGHT];
}

static bool shaped(const hw_upper *upper, const hw_motif *motif)
{
    (void)motif;
    return upper->shaped;
}

static const struct {
    upper_test *test;
    hw_note_kind kind;
    const char *words;
} upper_rules[] = {
    { no_motif, HW_NOTE_WARNING,
        "not one whole motif has room there; choose a narrower one, or take the piece out of "
        "`on`" },
    { wide_ends, HW_NOTE_WARNING,
        "the plain ends are wider than the gap, so the card would begin another motif there: set "
        "those needles by hand, choose another gap, or move the band to where the piece is wider "
        "or narrower" },
    { shaped, HW_NOTE_WARNING,
        "the piece is shaped while the band is knitted, which eats into the plain ends or the "
        "outer motifs; move the band, or choose a lower one" },
    { off_centre, HW_NOTE_REMARK,
        "the motifs sit half a stitch beside the middle, because the plain stitches at the two "
        "ends differ by one" },
};

static void upper_notes(const hw_whole *whole, int band, int piece, hw_notes *notes)
{
    const hw_upper_band *upper = &whole->uppers[band];
    for (size_t r = 0; r < sizeof upper_rules / sizeof upper_rules[0]; r++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            marked[i] = upper_rules[r].test(upper_at(whole, band, i, piece), &upper->motif);
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, upper_rules[r].kind, whole->project->garment.pieces[piece].name,
                ", band %s, in %s: %s.", upper->input->name, marked_sizes(whole, notes, marked),
                upper_rules[r].words);
        }
    }
}

/* Sizes of a piece that want another card in one column, told from the first of them on. */
static void own_cards(const hw_whole *whole, int band, int piece, hw_notes *notes)
{
    bool told[HW_MAX_SIZES] = { false };
    for (int i = 0; i < sizes_of(whole)->count; i++) {
        bool marked[HW_MAX_SIZES] = { false };
        const hw_upper *first = upper_at(whole, band, i, piece);
        for (int k = i; k < sizes_of(whole)->count; k++) {
            const hw_upper *upper = upper_at(whole, band, k, piece);
            marked[k] = !told[k] && upper->own_card && upper->card_column == first->card_column;
            told[k] = told[k] || marked[k];
        }
        if (marked[i]) {
            hw_notes_of(notes, HW_NOTE_WARNING, whole->project->garment.pieces[piece].name,
                ", band %s, in %s: the bed has no room to move the piece onto the card shown. "
                "Punch "
                "the card anew for it, with the first motif starting in column %d.",
                whole->uppers[band].input->name, marked_sizes(whole, notes, marked),
                first->card_column + 1);
        }
    }
}

static void uppers(const hw_whole *whole, hw_notes *notes)
{
    int pieces = whole->project->garment.piece_count;
    for (int i = 0; i < whole->upper_count * pieces; i++) {
        if (whole->uppers[i / pieces].on[i % pieces]) {
            upper_notes(whole, i / pieces, i % pieces, notes);
            own_cards(whole, i / pieces, i % pieces, notes);
        }
    }
}

/* One card serves all pieces and sizes only where all want its first figure in the same column. */
static void upper_cards(const hw_whole *whole, hw_notes *notes)
{
    int pieces = whole->project->garment.piece_count;
    for (int u = 0; u < whole->upper_count; u++) {
        bool differ = false;
        for (int i = 0; i < sizes_of(whole)->count * pieces; i++) {
            if (!whole->uppers[u].on[i % pieces]) {
                continue; /* such a piece may have no outline, and no bands at all */
            }
            const hw_upper *upper = upper_at(whole, u, i / pieces, i % pieces);
            bool counts = upper->card_column >= 0;
            differ = differ || (counts && upper->card_column != whole->uppers[u].card_start);
        }
        if (differ) {
            hw_notes_say(notes, HW_NOTE_REMARK,
                "Band %s: its card would have to start in different columns for different pieces "
                "or sizes. The card shown starts in column %d; Rows and Bands say by how many "
                "needles "
                "a piece is moved on the bed for it.",
                whole->uppers[u].input->name, whole->uppers[u].card_start + 1);
        }
    }
}

/* The rows below a band are even in number; its height gives way by a row for that. */
static void moved_bands(const hw_whole *whole, hw_notes *notes)
{
    int pieces = whole->project->garment.piece_count;
    bool hand = whole->project->machine.carriage == HW_CARRIAGE_NONE;
    double row_cm = hw_gauge_length_cm(&whole->plans[0].gauge[HW_MAIN], 1);
    for (int b = 0; b < whole->upper_count; b++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < sizes_of(whole)->count * pieces; i++) {
            bool on = whole->uppers[b].on[i % pieces];
            bool moved = on && fabs(upper_at(whole, b, i / pieces, i % pieces)->moved_cm) >=
                                   row_cm * MOVED_ROWS;
            marked[i / pieces] = marked[i / pieces] || moved;
            any = any || moved;
        }
        if (any) {
            hw_notes_say(notes, HW_NOTE_REMARK,
                "Band %s, in %s: on one piece or more it lies a row (%s mm) higher or lower than "
                "asked, so that an even number of rows lies below it: %s.",
                whole->uppers[b].input->name, marked_sizes(whole, notes, marked),
                hw_notes_number(notes, row_cm * 10, 0),
                hand ? "it then begins with a right-side row"
                     : "the carriage then comes to it from the side where the contrast yarn waits");
        }
    }
}

/* A slit is in no list of trims, and nobody else tells how its edges and its top are finished. */
static void slits(const hw_whole *whole, hw_notes *notes)
{
    for (int p = 0; p < whole->project->garment.piece_count; p++) {
        double least_cm = HW_MAX_CM;
        double most_cm = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            double slit_cm = hw_plan_draft(whole, i, p)->outline.slit_cm;
            least_cm = fmin(least_cm, slit_cm);
            most_cm = fmax(most_cm, slit_cm);
        }
        if (most_cm > 0) {
            bool same = most_cm - least_cm < SAME_CM;
            hw_notes_of(notes, HW_NOTE_REMARK, whole->project->garment.pieces[p].name,
                ": a slit of %s%s%s below the neck opens it in the middle, for the head. Its two "
                "halves are worked one by one from there on. Before it is worn, work a row of "
                "crochet or a narrow edging along the slit so that it lies flat, and close it at "
                "the top with a button and a small loop of yarn; no cord or ribbon.",
                same ? "" : hw_notes_length(notes, least_cm, whole->project->show),
                same ? "" : " to ", hw_notes_length(notes, most_cm, whole->project->show));
        }
    }
}

/* By how many rows the ends of a band differ from piece to piece in a size, below the underarm. */
static int rows_apart(const hw_whole *whole, int band, int size)
{
    int least = HW_MAX_ROWS;
    int most = 0;
    for (int p = 0; p < whole->project->garment.piece_count; p++) {
        if (whole->uppers[band].on[p]) {
            int rows = upper_at(whole, band, size, p)->underarm_rows;
            least = rows < least ? rows : least;
            most = rows > most ? rows : most;
        }
    }
    return most > least ? most - least : 0;
}

/* Bands of sewn pieces meet at the underarm where both have the same rows above them. */
static void meeting_heights(const hw_whole *whole, hw_notes *notes)
{
    for (int b = 0; b < whole->upper_count; b++) {
        const hw_upper_band *upper = &whole->uppers[b];
        bool marked[HW_MAX_SIZES] = { false };
        int most = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            int rows = rows_apart(whole, b, i);
            marked[i] = rows > 0;
            most = rows > most ? rows : most;
        }
        if (upper->input->below_underarm_cm < 0) {
            continue;
        }
        if (most == 0) {
            hw_notes_say(notes, HW_NOTE_REMARK,
                "Band %s: its last row lies the same number of rows below the underarm on every "
                "piece, so that it meets at the seams. For that, and for an even number of rows "
                "below it, a piece may be up to a row longer or shorter than drawn.",
                upper->input->name);
        } else {
            hw_notes_say(notes, HW_NOTE_REMARK,
                "Band %s, in %s: it ends up to %s nearer to the underarm on one piece than on "
                "another; the table Bands says how many lie between. Ease that in as you sew, so "
                "that the band meets at the seam.",
                upper->input->name, marked_sizes(whole, notes, marked),
                hw_notes_counted(notes, most, "row", "rows"));
        }
    }
}

/* The most stitches that an edge is ever wider by than at the hem. */
static int widened(const hw_shape *shape, hw_side side)
{
    int most = 0;
    for (int r = 0; r < shape->rows; r++) {
        most = -shape->inset_sts[side][r] > most ? -shape->inset_sts[side][r] : most;
    }
    return most;
}

/* In the hand there is no end of a bed to run off. */
static bool on_bed(const hw_whole *whole)
{
    return whole->project->machine.pitch_cm > 0;
}

/* Whether a piece that widens above its hem runs off the bed: its right edge hangs at the left. */
static bool runs_off(const hw_whole *whole, int size, int piece)
{
    hw_plan_piece at = hw_plan_find(whole, piece);
    int cell = size * at.plan->project->garment.piece_count + at.piece;
    const hw_draft *draft = &at.plan->drafts[cell];
    const hw_place_on_bed *place = &at.plan->places[cell];
    int half = whole->project->machine.needles / 2;
    return draft->drawn && (place->first - widened(&draft->shape, HW_RIGHT) < -half ||
                               place->last + widened(&draft->shape, HW_LEFT) >= half);
}

static void wide_pieces(const hw_whole *whole, hw_notes *notes)
{
    for (int p = 0; p < whole->project->garment.piece_count; p++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            marked[i] = on_bed(whole) && runs_off(whole, i, p);
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, HW_NOTE_WARNING, whole->project->garment.pieces[p].name,
                ", in %s: it widens past the end of the bed's %d needles. Knit it from the wide "
                "end "
                "down, in two widths with a seam, or on a bed with more needles.",
                marked_sizes(whole, notes, marked), whole->project->machine.needles);
        }
    }
}

/* What is to be done with a trim that the bed does not hold, in a few words. */
static const char *in_lengths(bool known)
{
    return known ? "Knit it in lengths: the table Trims says of how many stitches each, with one "
                   "more "
                   "at each end that meets another length. Sew those ends together, a stitch deep, "
                   "once each length is folded and closed: the outside first, then the inside."
                 : "Knit it in two or more lengths, and sew them together where a motif ends.";
}

static void long_trims(const hw_whole *whole, hw_notes *notes)
{
    for (int k = 0; k < whole->trims->count; k++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool known = true;
        int most = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            const hw_trimmed *trim = hw_trimming_at(whole, i, k);
            marked[i] = on_bed(whole) && trim->too_long;
            most = marked[i] && trim->pickup.chosen.sts > most ? trim->pickup.chosen.sts : most;
            known = known && (!marked[i] || trim->lengths.count > 0);
        }
        if (most > 0) {
            hw_notes_say(notes, HW_NOTE_WARNING,
                "%s, in %s: it has up to %d stitches and the bed %d needles. %s",
                whole->trims->kinds[k].trim->name, marked_sizes(whole, notes, marked), most,
                whole->project->machine.needles, in_lengths(known));
        }
    }
}

/* A plain trim is off by a stitch at most, and nothing can be done about it. */
static void far_trims(const hw_whole *whole, hw_notes *notes)
{
    for (int k = 0; k < whole->trims->count; k++) {
        bool marked[HW_MAX_SIZES] = { false };
        double most_cm = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            const hw_pickup *pickup = &hw_trimming_at(whole, i, k)->pickup;
            marked[i] = whole->trims->kinds[k].has_motif && !pickup->inside;
            if (marked[i] && fabs(pickup->chosen.off_cm) > fabs(most_cm)) {
                most_cm = pickup->chosen.off_cm;
            }
        }
        if (fabs(most_cm) > 0) {
            hw_notes_say(notes, HW_NOTE_WARNING,
                "%s, in %s: whole motifs make it up to %s %s than its edge. Choose another gap or "
                "motif for it, or stretch or ease it in as you pick up.",
                whole->trims->kinds[k].trim->name, marked_sizes(whole, notes, marked),
                hw_notes_length(notes, fabs(most_cm), whole->project->show),
                most_cm > 0 ? "longer" : "shorter");
        }
    }
}

static void cut_holes(const hw_whole *whole, hw_notes *notes)
{
    for (int k = 0; k < whole->trims->count; k++) {
        const hw_trim_kind *kind = &whole->trims->kinds[k];
        int most = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            const hw_holes *holes = &hw_trimming_at(whole, i, k)->holes;
            most = holes->count > 0 && holes->cut_sts > most ? holes->cut_sts : most;
        }
        if (most > 0) {
            hw_notes_say(notes, HW_NOTE_WARNING,
                "%s: buttonholes of %s are wider than the gap of %d and cut up to %s off a motif. "
                "Make them %d wide, or give this trim a wider gap.",
                kind->trim->name,
                hw_notes_counted(notes, kind->input->buttonhole_sts, "stitch", "stitches"),
                kind->motif.gap, hw_notes_counted(notes, most, "stitch", "stitches"),
                kind->motif.gap > 0 ? kind->motif.gap : 1);
        }
    }
}

/* How many fewer or more buttonholes would lie evenly in a size: the nearest number, of two as near
 * the larger, and not two, which always do; 0: none. */
static int better_holes(const hw_trimmed *t)
{
    for (int step = 1; step <= HW_TRIMMING_NEAR_HOLES; step++) {
        for (int off = step; off >= -step; off -= 2 * step) {
            if (t->holes_wanted + off > 2 && t->holes_even[off + HW_TRIMMING_NEAR_HOLES]) {
                return off;
            }
        }
    }
    return 0;
}

/* "4 would in 98 and 110. 6 would in 104." of the sizes in which those wanted do not. */
static const char *what_would_do(
    const hw_whole *whole, int trim, const bool *uneven, hw_notes *notes)
{
    const char *text = "";
    for (int off = -HW_TRIMMING_NEAR_HOLES; off <= HW_TRIMMING_NEAR_HOLES; off++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool some = false;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            marked[i] =
                uneven[i] && off != 0 && better_holes(hw_trimming_at(whole, i, trim)) == off;
            some = some || marked[i];
        }
        if (some) {
            text = hw_notes_words(notes, hw_arena_format(notes->arena, "%s %d would in %s.", text,
                                             hw_trimming_at(whole, 0, trim)->holes_wanted + off,
                                             marked_sizes(whole, notes, marked)));
        }
    }
    return text;
}

/* In which sizes buttonholes lie in gaps between figures, and so not evenly. */
static bool mark_uneven(const hw_whole *whole, int trim, bool *marked)
{
    bool some = false;
    for (int i = 0; i < sizes_of(whole)->count; i++) {
        const hw_holes *holes = &hw_trimming_at(whole, i, trim)->holes;
        marked[i] = whole->trims->kinds[trim].has_motif && holes->count > 1 && !holes->even;
        some = some || marked[i];
    }
    return some;
}

static void uneven_holes(const hw_whole *whole, hw_notes *notes)
{
    for (int k = 0; k < whole->trims->count; k++) {
        bool marked[HW_MAX_SIZES] = { false };
        if (!mark_uneven(whole, k, marked)) {
            continue;
        }
        int least = HW_MAX_STS;
        int most = 0;
        for (int i = 0; i < sizes_of(whole)->count; i++) {
            const hw_holes *holes = &hw_trimming_at(whole, i, k)->holes;
            least = marked[i] && holes->least_between < least ? holes->least_between : least;
            most = marked[i] && holes->most_between > most ? holes->most_between : most;
        }
        hw_notes_say(notes, HW_NOTE_REMARK,
            "In %s: the buttonholes of %s, each in a gap of its motif, do not lie evenly, with %d "
            "to %d stitches from one to the next.%s",
            marked_sizes(whole, notes, marked), whole->trims->kinds[k].trim->name, least, most,
            what_would_do(whole, k, marked, notes));
    }
}

/* Edges of two pieces of which the garment does not say whether they are sewn. */
static void loose_edges(const hw_whole *whole, int trim, hw_notes *notes)
{
    const hw_trim *of = whole->trims->kinds[trim].trim;
    for (int k = 1; k < of->along.count; k++) {
        const hw_trimway_pair pair = { trim, k - 1, k };
        if (hw_trimway_between(&whole->trims->way, &pair, NULL) == HW_TRIMWAY_UNKNOWN) {
            const char *from = hw_trimming_edge(whole, trim, k - 1, notes->arena);
            const char *to = hw_trimming_edge(whole, trim, k, notes->arena);
            hw_notes_say(notes, HW_NOTE_REMARK,
                "%s: the garment file does not say what is sewn where it goes from %s to %s. Look "
                "whether they meet there, and write the seam under `joins`.",
                of->name, hw_notes_words(notes, from), hw_notes_words(notes, to));
        }
    }
}

/* A trim whose two ends lie at one point of an edge, where nothing is open. */
static void open_ring(const hw_whole *whole, int trim, hw_notes *notes)
{
    const hw_trim *of = whole->trims->kinds[trim].trim;
    const hw_trimway *way = &whole->trims->way;
    const hw_trimway_spot begin = { trim, 0, false };
    const hw_trimway_spot end = { trim, of->along.count - 1, true };
    hw_trimway_corner a;
    hw_trimway_corner b;
    if (!of->round && hw_trimway_find_corner(way, &begin, &a) &&
        hw_trimway_find_corner(way, &end, &b) && a.piece == b.piece &&
        hw_trimway_same(&a.at, &b.at) && !(way->outlines[a.piece]->slit_cm > 0)) {
        hw_notes_say(notes, HW_NOTE_WARNING,
            "%s: it begins and ends at one point in the edge of %s, where no seam and no slit "
            "lies. "
            "If it is a ring, write `round: yes` in the garment file; else begin it at a seam.",
            of->name, whole->project->garment.pieces[a.piece].name);
    }
}

static void trim_edges(const hw_whole *whole, hw_notes *notes)
{
    for (int k = 0; k < whole->trims->count; k++) {
        loose_edges(whole, k, notes);
        open_ring(whole, k, notes);
    }
}

static void trim_cards(const hw_whole *whole, hw_notes *notes)
{
    for (int k = 0; k < whole->trims->count; k++) {
        const hw_trim_kind *kind = &whole->trims->kinds[k];
        if (kind->free_start && kind->card.possible) {
            hw_notes_say(notes, HW_NOTE_REMARK,
                "%s: it nearly fills the bed, so its card would have to start in different columns "
                "for different sizes; the table Trims says which. The card shown starts in column "
                "%d.",
                kind->trim->name, kind->card_start + 1);
        }
    }
}

void hw_meeting_add(const hw_whole *whole, hw_notes *notes)
{
    static void (*const rules[])(const hw_whole *, hw_notes *) = { open_joins, uppers, upper_cards,
        slits, moved_bands, meeting_heights, wide_pieces, long_trims, far_trims, trim_edges,
        cut_holes, uneven_holes, trim_cards, hw_sidenotes_add };
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++) {
        rules[i](whole, notes);
    }
}
