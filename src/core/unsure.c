/* What a plan's numbers are unsure of: few places, other dials, assumptions, values from memory.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/unsure.h"

/* A knitted piece keeps its count, and never silently. */
static void knitted_already(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    for (int i = 0; plan->has_free && i < plan->finished.count * garment->piece_count; i++) {
        int now = plan->free_grading.fits[i].visible_sts;
        if (plan->fixed_sts[i] == 0 || plan->fixed_sts[i] == now) {
            continue;
        }
        hw_notes_say(notes, HW_NOTE_WARNING,
            "Size %s, %s was knitted with %d stitches and keeps them. With the gauge as it is now "
            "%d stitches (%s) would be chosen.",
            plan->finished.names[i / garment->piece_count],
            garment->pieces[i % garment->piece_count].name, plan->fixed_sts[i], now,
            hw_notes_length(
                notes, hw_gauge_width_cm(&plan->gauge[HW_BAND], now), plan->project->show));
    }
}

/* Pieces are knitted, so the card must be punched; only the project does not say where. */
static void card_unknown(const hw_plan *plan, hw_notes *notes)
{
    if (plan->has_free && plan->has_punch) {
        hw_notes_say(notes, HW_NOTE_WARNING, "%s",
            "Pieces are knitted already, so the card is punched; write `card start` under motif "
            "with the column in which its first figure starts. Until then the needles here are for "
            "a card that is still to be punched.");
    }
}

/* Places of one gauge that cannot both be right: own choice, far past what knitting varies by. */
#define MOST_APART 1.3

static void apart(const hw_plan *plan, hw_notes *notes, hw_fabric fabric, hw_way way)
{
    int index[HW_MAX_SWATCHES];
    const hw_gauge_input *in = &plan->places_measured[fabric];
    int count = in->count > 0 ? hw_gauge_places(in, way, index) : 0;
    hw_show show = plan->project->show;
    double least = 0;
    double most = 0;
    for (int k = 0; k < count; k++) {
        const hw_swatch *swatch = &in->swatches[index[k]];
        double per_10cm = 10 * hw_swatch_count(swatch, way) / hw_swatch_length_cm(swatch, way);
        least = k == 0 || per_10cm < least ? per_10cm : least;
        most = k == 0 || per_10cm > most ? per_10cm : most;
    }
    if (most > least * MOST_APART && !plan->gauge[fabric].has_dial_fit) {
        hw_notes_say(notes, HW_NOTE_WARNING,
            "Gauge of the %s fabric: one place comes to %s %s %s and another to %s. That is "
            "further "
            "apart than knitting is: look for a slip in a count, a length or its unit.",
            hw_fabric_name(fabric), hw_notes_gauge(notes, least, 1, show),
            way == HW_ACROSS ? "stitches" : "rows", hw_show_per(show),
            hw_notes_gauge(notes, most, 1, show));
    }
}

static void slips(const hw_plan *plan, hw_notes *notes)
{
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        for (int way = 0; way < HW_WAY_COUNT; way++) {
            apart(plan, notes, (hw_fabric)f, (hw_way)way);
        }
    }
}

/* One measured place that does not agree with the others is pointed out and still counts. */
static void outliers(const hw_plan *plan, hw_notes *notes)
{
    static const char *const what[] = { [HW_ACROSS] = "stitches", [HW_UP] = "rows" };
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        for (int way = 0; way < HW_WAY_COUNT; way++) {
            const hw_gauge_side *side = &plan->gauge[f].sides[way];
            if (plan->gauge[f].mark == HW_MARK_ASSUMED || side->outlier < 0) {
                continue;
            }
            const hw_swatch *swatch = &plan->places_measured[f].swatches[side->outlier];
            hw_notes_say(notes, HW_NOTE_WARNING,
                "Gauge of the %s fabric: the place with %s %s over %s lies far off the others, "
                "more than chance explains. It still counts: measure it again, or take it out.",
                hw_fabric_name((hw_fabric)f),
                hw_notes_number(notes, hw_swatch_count(swatch, (hw_way)way), 1), what[way],
                hw_notes_length(
                    notes, hw_swatch_length_cm(swatch, (hw_way)way), plan->project->show));
        }
    }
}

/* A gauge that no place at the fabric's own dial tells. */
static void other_dials(const hw_plan *plan, hw_notes *notes)
{
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        const hw_gauge *gauge = &plan->gauge[f];
        if (gauge->mark != HW_MARK_DERIVED) {
            continue;
        }
        bool beyond = gauge->has_dial_fit && !hw_dial_in_range(&gauge->dial_fit, gauge->dial);
        hw_notes_say(notes, HW_NOTE_WARNING,
            "Gauge of the %s fabric: no swatch has its dial, %s; the gauge is read off the "
            "swatches at other dials%s. Knit one at this dial before the first piece.",
            hw_fabric_name((hw_fabric)f), hw_notes_number(notes, gauge->dial, 2),
            beyond ? ", more than a number away, which is only a guess" : "");
    }
}

/* Swatches at several dials make one gauge where nobody says which dial the fabric has. */
static void mixed_dials(const hw_plan *plan, hw_notes *notes)
{
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        bool own = plan->places_measured[f].has_dial;
        if (plan->gauge[f].has_dial_fit && !own) {
            hw_notes_say(notes, HW_NOTE_WARNING,
                "Gauge of the %s fabric: its swatches were knitted at several dials and all count "
                "together. Write `dial` under the fabric itself, so that the right ones count.",
                hw_fabric_name((hw_fabric)f));
        }
    }
}

/* What too few places cannot tell. */
static void few_places(const hw_plan *plan, hw_notes *notes)
{
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        const hw_gauge *gauge = &plan->gauge[f];
        if (gauge->mark == HW_MARK_MEASURED && !gauge->sides[HW_ACROSS].has_interval) {
            int more = gauge->sides[HW_ACROSS].places > 1 ? 1 : 2;
            hw_notes_say(notes, HW_NOTE_REMARK,
                "Gauge of the %s fabric: with so few measured places nobody can tell how sure it "
                "is. Measure %s more, on other parts of the swatch.",
                hw_fabric_name((hw_fabric)f), hw_notes_counted(notes, more, "place", "places"));
        }
    }
}

/* A piece with its sizes: "front (2 years, 8 years)". */
static const char *subject_in(hw_notes *notes, const char *piece, const char *sizes)
{
    return hw_notes_words(notes, hw_arena_format(notes->arena, "%s (%s)", piece, sizes));
}

/* Widths that may leave the tolerance although the counts are right. */
static void unsure_widths(const hw_plan *plan, hw_notes *notes)
{
    const hw_garment *garment = &plan->project->garment;
    for (int p = 0; p < garment->piece_count; p++) {
        bool marked[HW_MAX_SIZES] = { false };
        bool any = false;
        for (int i = 0; i < plan->finished.count; i++) {
            const hw_tolerance *t = plan->tolerances[i * garment->piece_count + p];
            bool unsure = (t[HW_BAND].has_interval && !t[HW_BAND].always_inside) ||
                          (t[HW_MAIN].has_interval && !t[HW_MAIN].always_inside);
            marked[i] = unsure && hw_plan_fit(plan, i, p)->inside;
            any = any || marked[i];
        }
        if (any) {
            hw_notes_of(notes, HW_NOTE_REMARK,
                subject_in(notes, garment->pieces[p].name,
                    hw_notes_sizes(notes, plan->finished.names, marked, plan->finished.count)),
                ": the gauge is not sure enough to promise the tolerance. The sheet Tolerance says "
                "between which widths a piece will come out, 19 times in 20; more measured places "
                "narrow it.");
        }
    }
}

static void assumed(const hw_plan *plan, hw_notes *notes)
{
    bool hand = !(plan->project->machine.pitch_cm > 0);
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        if (plan->gauge[f].mark == HW_MARK_ASSUMED) {
            hw_notes_say(notes, HW_NOTE_WARNING,
                "The %s was not swatched; the gauge of the main fabric is assumed for it. %s",
                f == HW_BAND ? "two-colour band" : "facing",
                f == HW_BAND ? "Two-colour fabric is seldom the same: knit a swatch of the motif "
                               "before the first piece."
                : hand       ? "Knit a few rows on its needles to see that it comes out no deeper."
                             : "Knit a few rows on its dial to see that it comes out no deeper.");
        }
    }
}

/* Sizes that the size table does not have: a slip of the pen, perhaps. */
static void strange_sizes(const hw_plan *plan, hw_notes *notes)
{
    const hw_sizes *table = &plan->project->table;
    bool marked[HW_MAX_SIZES] = { false };
    bool any = false;
    for (int i = 0; i < plan->body.count && table->count > 0; i++) {
        marked[i] = hw_sizes_find_size(table, plan->body.names[i]) < 0;
        any = any || marked[i];
    }
    bool used = false;
    for (int m = 0; m < plan->body.measure_count; m++) {
        used = used || plan->body.measures[m].line == 0; /* it came from the table */
    }
    if (any && used) {
        hw_notes_say(notes, HW_NOTE_WARNING,
            "%s: not in the size table `%s`. What the table would tell is filled in halfway "
            "between "
            "the sizes beside it here; look at the names, or give these sizes under `body`.",
            hw_notes_sizes(notes, plan->body.names, marked, plan->body.count), table->title);
    }
}

/* Does a finished measurement bear a mark in the same sizes as another, and in any at all? */
static bool same_sizes(const hw_plan *plan, int one, int other, hw_mark mark)
{
    bool same = true;
    bool any = false;
    for (int i = 0; i < plan->finished.count; i++) {
        bool marked = plan->finished.measures[one].marks[i] == mark;
        same = same && marked == (plan->finished.measures[other].marks[i] == mark);
        any = any || marked;
    }
    return same && any;
}

static bool told_before(const hw_plan *plan, int measure, hw_mark mark)
{
    bool told = false;
    for (int m = 0; m < measure; m++) {
        told = told || same_sizes(plan, m, measure, mark);
    }
    return told;
}

/* A measurement and all after it that bear the mark in the same sizes: "chest, hem". */
static const char *names_from(const hw_plan *plan, int first, hw_mark mark, hw_notes *notes)
{
    const char *names = plan->finished.measures[first].name;
    for (int m = first + 1; m < plan->finished.measure_count && names != NULL; m++) {
        if (same_sizes(plan, first, m, mark)) {
            names = hw_arena_format(notes->arena, "%s, %s", names, plan->finished.measures[m].name);
        }
    }
    return hw_notes_words(notes, names);
}

/* Finished measurements that rest on values nobody could read in a source, or on neighbours; those
 * of the same sizes together. */
static void weak_measures(const hw_plan *plan, hw_notes *notes)
{
    static const struct {
        hw_mark mark;
        const char *text;
    } rows[] = {
        { HW_MARK_MEMORY,
            "body measurements from memory, which nobody could check. Measure the wearer, or "
            "compare a garment that fits." },
        { HW_MARK_INTERPOLATED, "values filled in between their neighbours, not measured." },
    };
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        for (int m = 0; m < plan->finished.measure_count; m++) {
            if (!same_sizes(plan, m, m, rows[r].mark) || told_before(plan, m, rows[r].mark)) {
                continue;
            }
            bool marked[HW_MAX_SIZES] = { false };
            for (int i = 0; i < plan->finished.count; i++) {
                marked[i] = plan->finished.measures[m].marks[i] == rows[r].mark;
            }
            const char *names = names_from(plan, m, rows[r].mark, notes);
            hw_notes_say(notes, HW_NOTE_REMARK, "Finished measurements in %s (%s) rest on %s",
                hw_notes_sizes(notes, plan->finished.names, marked, plan->finished.count), names,
                rows[r].text);
        }
    }
}

void hw_unsure_add(const hw_plan *plan, hw_notes *notes)
{
    static void (*const rules[])(const hw_plan *, hw_notes *) = { knitted_already, card_unknown,
        slips, assumed, other_dials, mixed_dials, outliers, few_places, unsure_widths,
        strange_sizes, weak_measures };
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++) {
        rules[i](plan, notes);
    }
}
