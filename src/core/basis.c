/* Where each number comes from, in the order of the calculation.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/basis.h"

#include <math.h>
#include <string.h>

#include "core/num.h"
#include "core/trimming.h"

static const char *gauge_rule(const hw_gauge *g)
{
    if (g->mark == HW_MARK_ASSUMED) {
        return "as the main fabric: it was not swatched";
    }
    if (g->mark == HW_MARK_DERIVED) {
        return "read off swatches at other dials";
    }
    return g->mark == HW_MARK_MEASURED ? "from the measured places: see the sheet Gauge" : "";
}

static void gauge(const hw_gauge *g, hw_fabric fabric, hw_show show, hw_notes *notes)
{
    hw_notes_base(notes,
        (hw_basis){ .what = hw_arena_format(notes->arena, "gauge, %s", hw_fabric_name(fabric)),
            .value = hw_arena_format(notes->arena, "%s sts and %s rows %s",
                hw_notes_gauge(notes, g->sts_per_10cm, 2, show),
                hw_notes_gauge(notes, g->rows_per_10cm, 2, show), hw_show_per(show)),
            .rule = gauge_rule(g),
            .mark = g->mark,
            .source = "" });
}

static void dial(const hw_gauge *g, hw_fabric fabric, hw_notes *notes)
{
    static const struct {
        const char *rule, *source;
    } assumed[] = {
        [HW_MAIN] = { "", "" },
        [HW_BAND] = { "one number looser than main", "G4" },
        [HW_FACING] = { "one number tighter than main", "H1" },
    };
    if (!g->has_dial) {
        return;
    }
    hw_notes_base(notes,
        (hw_basis){ .what = hw_arena_format(notes->arena, "dial, %s", hw_fabric_name(fabric)),
            .value = hw_notes_number(notes, g->dial, 2),
            .rule = g->dial_assumed ? assumed[fabric].rule : "",
            .mark = g->dial_assumed ? HW_MARK_ASSUMED : HW_MARK_GIVEN,
            .source = g->dial_assumed ? assumed[fabric].source : "" });
}

static void gauges(const hw_plan *plan, hw_notes *notes)
{
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        gauge(&plan->gauge[f], (hw_fabric)f, plan->project->show, notes);
        dial(&plan->gauge[f], (hw_fabric)f, notes);
    }
}

static const char *ease_words(hw_notes *notes, const hw_ease *ease, hw_show show)
{
    if (fabs(ease->percent) > 0) {
        return hw_arena_format(notes->arena, "%s %%", hw_notes_number(notes, ease->percent, 2));
    }
    return hw_notes_length(notes, ease->cm, show);
}

static bool changes_ease(const hw_project *project, const char *name)
{
    bool found = false;
    for (int i = 0; i < project->ease_count; i++) {
        found = found || strcmp(project->ease[i].name, name) == 0;
    }
    return found;
}

static void eases(const hw_plan *plan, hw_notes *notes)
{
    const hw_project *project = plan->project;
    hw_garment_task task = {
        .garment = &project->garment, .changes = project->ease, .change_count = project->ease_count
    };
    for (int i = 0; i < project->garment.finished_count; i++) {
        const hw_finished *finished = &project->garment.finished[i];
        bool given = hw_sizes_find(&project->finished, finished->name) >= 0;
        bool changed = changes_ease(project, finished->name);
        hw_ease ease = hw_garment_ease(&task, finished);
        hw_notes_base(
            notes, (hw_basis){ .what = hw_arena_format(notes->arena, "ease, %s", finished->name),
                       .value = given ? "none: the finished measurement is given"
                                      : ease_words(notes, &ease, project->show),
                       .rule = given || changed ? "" : "from the garment file",
                       .mark = given || changed ? HW_MARK_GIVEN : HW_MARK_CHOICE,
                       .source = "" });
    }
}

/* The sizes in which a body measurement has one mark, with the first source among them. */
static void body_mark(const hw_plan *plan, const hw_measure *measure, hw_mark mark, hw_notes *notes)
{
    bool marked[HW_MAX_SIZES] = { false };
    const char *source = "";
    bool any = false;
    for (int i = 0; i < plan->body.count; i++) {
        marked[i] = measure->marks[i] == mark;
        source = marked[i] && source[0] == '\0' ? measure->sources[i] : source;
        any = any || marked[i];
    }
    if (any) {
        hw_notes_base(
            notes, (hw_basis){ .what = hw_arena_format(notes->arena, "body, %s", measure->name),
                       .value = hw_notes_sizes(notes, plan->body.names, marked, plan->body.count),
                       .rule = measure->line > 0 ? "" : plan->project->table.title,
                       .mark = mark,
                       .source = source });
    }
}

/* Body measurements that were used, with the marks that occur in them. */
static void bodies(const hw_plan *plan, hw_notes *notes)
{
    for (int m = 0; m < plan->body.measure_count; m++) {
        for (int mark = 0; mark < HW_MARK_COUNT; mark++) {
            body_mark(plan, &plan->body.measures[m], (hw_mark)mark, notes);
        }
    }
}

static void choices(const hw_plan *plan, hw_notes *notes)
{
    const hw_choices *c = &plan->project->choices;
    bool usual = fabs(c->tolerance_cm - 1) < 1e-9;
    hw_notes_base(notes, (hw_basis){ .what = "tolerance of a width",
                             .value = hw_notes_length(notes, c->tolerance_cm, plan->project->show),
                             .rule = "",
                             .mark = usual ? HW_MARK_PRACTICE : HW_MARK_GIVEN,
                             .source = usual ? "T1" : "" });
    const struct {
        const char *what, *rule;
        double weight;
    } weights[] = {
        { "weight of centring", "times the square of half the difference of the margins",
            c->centre_weight },
        { "weight of seams", "times the square of the stitches that the band breaks by",
            c->seam_weight },
        { "weight of even steps",
            "times the square of how far a step between sizes is off, in tolerances",
            c->grade_weight },
    };
    for (size_t i = 0; i < sizeof weights / sizeof weights[0]; i++) {
        hw_notes_base(notes,
            (hw_basis){ .what = weights[i].what,
                .value = hw_notes_number(notes, weights[i].weight, 4),
                .rule = weights[i].rule,
                .mark = fabs(weights[i].weight - 0.5) < 1e-9 ? HW_MARK_CHOICE : HW_MARK_GIVEN,
                .source = "" });
    }
    hw_notes_base(notes, (hw_basis){ .what = "counts that fall from size to size",
                             .value = "only where a width falls",
                             .rule = "",
                             .mark = HW_MARK_CHOICE,
                             .source = "" });
}

static void machine(const hw_plan *plan, hw_notes *notes)
{
    const hw_machine *m = &plan->project->machine;
    const char *value =
        m->pitch_cm > 0 ? hw_arena_format(notes->arena, "%s: %d needles, %s mm apart; %s carriage",
                              m->title, m->needles, hw_notes_number(notes, m->pitch_cm * 10, 1),
                              hw_carriage_name(m->carriage))
                        : m->title;
    /* A knitter's own file names no source: then the knitter has said it. */
    bool own = m->source[0] == '\0';
    bool said = own || !(m->pitch_cm > 0);
    hw_notes_base(notes, (hw_basis){ .what = "machine",
                             .value = value,
                             .rule = said ? "" : "count the needles of your own bed",
                             .mark = said ? HW_MARK_GIVEN : HW_MARK_MEMORY,
                             .source = m->source });
    /* Read of a standard bed alone: [F1]. */
    bool standard = !own && fabs(m->pitch_cm - 0.45) < 1e-9 && m->longest_float == 5;
    hw_notes_base(
        notes, (hw_basis){ .what = "longest float",
                   .value = hw_arena_format(notes->arena, "%d stitches", m->longest_float),
                   .rule = standard ? "" : "from the machine file",
                   .mark = own        ? HW_MARK_GIVEN
                           : standard ? HW_MARK_READ
                                      : HW_MARK_CHOICE,
                   .source = standard ? "F1" : m->source });
}

static void card(const hw_plan *plan, hw_notes *notes)
{
    const hw_machine *m = &plan->project->machine;
    bool own = m->source[0] == '\0';
    if (plan->card.possible) {
        hw_notes_base(notes,
            (hw_basis){ .what = "punch card",
                .value = hw_arena_format(notes->arena, "%d rows, %d of a design for a loop, %d %s",
                    m->blank.rows, m->blank.least_loop_rows, m->blank.joining_rows,
                    "joining rows at each end"),
                .rule = "joining rows are punched full and lie over the design at the other end",
                .mark = own ? HW_MARK_GIVEN : HW_MARK_CHOICE,
                .source = own ? "" : "B5, B6, B7" });
    }
    if (m->reader_offset >= 0) {
        hw_notes_base(notes, (hw_basis){ .what = "card row in view",
                                 .value = hw_arena_format(notes->arena,
                                     "%d rows above the row that is read", m->reader_offset),
                                 .rule = "find it on your own machine",
                                 .mark = own ? HW_MARK_GIVEN : HW_MARK_READ,
                                 .source = own ? "" : "B3" });
    }
}

/* How exact a reading is taken to be. */
static void readings(const hw_plan *plan, hw_notes *notes)
{
    bool measured = false;
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        measured = measured || plan->gauge[f].mark == HW_MARK_MEASURED;
    }
    if (measured) {
        hw_notes_base(notes,
            (hw_basis){ .what = "reading of a length",
                .value = "to the millimetre, an error of 0.29 mm",
                .rule = "no interval is told narrower; no place nearer than 2 mm is called far off",
                .mark = HW_MARK_CHOICE,
                .source = "" });
    }
}

static void hem(const hw_plan *plan, hw_notes *notes)
{
    const hw_hem_input *in = &plan->project->hem;
    hw_notes_base(notes,
        (hw_basis){ .what = "rows of the hem",
            .value = in->face_rows > 0
                         ? hw_arena_format(notes->arena, "%d face rows asked for", in->face_rows)
                         : hw_arena_format(notes->arena, "%s deep asked for",
                               hw_notes_length(notes, in->depth_cm, plan->project->show)),
            .rule = "plain rows in even numbers, at least 2 on each side of the band",
            .mark = HW_MARK_PRACTICE,
            .source = "P1" });
    hw_notes_base(notes,
        (hw_basis){ .what = "facing",
            .value = in->facing_rows > 0
                         ? hw_arena_format(notes->arena, "%d rows asked for", in->facing_rows)
                         : hw_facing_name(in->facing),
            .rule = in->facing_rows > 0 ? ""
                    : in->facing != HW_FACING_ROWS
                        ? "as deep as the face; with the fold an even number of rows"
                    : plan->project->machine.pitch_cm > 0
                        ? "with the fold as many rows as the face, on a tighter dial"
                        : "with the fold as many rows as the face, on thinner needles",
            .mark = HW_MARK_PRACTICE,
            .source = "P1" });
    hw_notes_base(notes,
        (hw_basis){ .what = "fold",
            .value = hw_fold_name(in->fold),
            .rule = in->fold == HW_FOLD_PICOT ? "an odd number of stitches; no row of its own" : "",
            .mark = in->fold == HW_FOLD_PICOT ? HW_MARK_READ : HW_MARK_PRACTICE,
            .source = in->fold == HW_FOLD_PICOT ? "H2" : "P1" });
    if (plan->hem.has_dials) {
        hw_notes_base(notes, (hw_basis){ .what = "dial, joining row",
                                 .value = hw_notes_number(notes, plan->hem.joining_dial, 2),
                                 .rule = "two numbers looser than the facing",
                                 .mark = HW_MARK_READ,
                                 .source = "H1" });
    }
}

static void trims(const hw_plan *plan, hw_notes *notes)
{
    if (plan->whole != NULL && plan->whole->trims->count > 0) {
        hw_notes_base(notes, (hw_basis){ .what = "rows of trims",
                                 .value = "picked up, face, fold, facing, joined where picked up",
                                 .rule = "the garment's wrong side faces the knitter, by hand its "
                                         "right side; seams across a trim are sewn before it",
                                 .mark = HW_MARK_PRACTICE,
                                 .source = "P9" });
    }
}

static void units(const hw_plan *plan, hw_notes *notes)
{
    if (plan->project->show != HW_SHOW_CM) {
        hw_notes_base(notes,
            (hw_basis){ .what = "inch",
                .value = "2.54 cm; 4 in is 10.16 cm, not 10",
                .rule = "inches are shown to an eighth, what a ruler is laid to to a hundredth",
                .mark = HW_MARK_DERIVED,
                .source = "U1" });
    }
}

void hw_basis_add(const hw_plan *plan, hw_notes *notes)
{
    static void (*const facts[])(const hw_plan *, hw_notes *) = { gauges, readings, eases, bodies,
        choices, machine, card, hem, trims, units };
    for (size_t i = 0; i < sizeof facts / sizeof facts[0]; i++) {
        facts[i](plan, notes);
    }
}
