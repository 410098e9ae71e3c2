/* Whole plans: what every plan must keep, the band drawn from the card, sizes filled in, refusals.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/calculate.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "planned.h"

static double square(double x)
{
    return x * x;
}

/* One piece in one size, from the definitions. Returns its cost, the step aside. */
static double check_fit(const hw_plan *plan, int size, int piece)
{
    const hw_choices *choices = &plan->project->choices;
    const hw_fit *fit = hw_plan_fit(plan, size, piece);
    const hw_target *target = &plan->targets[size * plan->project->garment.piece_count + piece];
    int left = fit->margin[HW_LEFT];
    int right = fit->margin[HW_RIGHT];
    int most = choices->hand_set ? plan->motif.repeat - 1 : plan->motif.gap;
    ck_assert(left >= 0 && left <= most && right >= 0 && right <= most);
    int motifs = fit->motifs * plan->motif.chart.width + (fit->motifs - 1) * plan->motif.gap;
    ck_assert_int_ge(fit->motifs, 1);
    ck_assert_int_eq(fit->visible_sts, motifs + left + right);
    ck_assert_int_eq(
        fit->cast_on_sts, fit->visible_sts + fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT]);
    ck_assert_int_le(fit->cast_on_sts, plan->project->machine.needles);
    double band_cm = fit->visible_sts * 10 / plan->gauge[HW_BAND].sts_per_10cm;
    double main_cm = fit->main_sts * 10 / plan->gauge[HW_MAIN].sts_per_10cm;
    ck_assert_double_eq_tol(fit->band_cm, band_cm, 1e-9);
    ck_assert_double_eq_tol(fit->main_cm, main_cm, 1e-9);
    ck_assert_double_eq_tol(fit->band_off_cm, band_cm - target->band_cm, 1e-9);
    ck_assert_double_eq_tol(fit->main_off_cm, main_cm - target->main_cm, 1e-9);
    bool inside = fmax(fabs(fit->band_off_cm), fabs(fit->main_off_cm)) <= choices->tolerance_cm;
    ck_assert_int_eq(fit->inside, inside);
    return square(fit->band_off_cm / choices->tolerance_cm) +
           square(fit->main_off_cm / choices->tolerance_cm) +
           choices->centre_weight * square((left - right) / 2.0);
}

static double check_step(const hw_plan *plan, int size, int piece)
{
    const hw_choices *choices = &plan->project->choices;
    int pieces = plan->project->garment.piece_count;
    const hw_target *now = &plan->targets[size * pieces + piece];
    const hw_target *before = now - pieces;
    const int *fixed = &plan->fixed_sts[size * pieces + piece];
    if (fixed[0] > 0 || fixed[-pieces] > 0) {
        return 0; /* knitted already: no step to or from it is asked for */
    }
    int step = hw_plan_fit(plan, size, piece)->visible_sts -
               hw_plan_fit(plan, size - 1, piece)->visible_sts;
    ck_assert(step >= 0 || now->band_cm < before->band_cm || now->main_cm < before->main_cm);
    double off_cm =
        step * 10 / plan->gauge[HW_BAND].sts_per_10cm - (now->band_cm - before->band_cm);
    return choices->grade_weight * square(off_cm / choices->tolerance_cm);
}

static double check_seams(const hw_plan *plan, int size)
{
    const hw_garment *garment = &plan->project->garment;
    double cost = 0;
    for (int s = 0; s < garment->seam_count; s++) {
        int sum = 0;
        for (int end = 0; end < 2; end++) {
            const hw_fit *fit = hw_plan_fit(plan, size, garment->seams[s].piece[end]);
            sum += fit->margin[garment->seams[s].side[end]];
        }
        int broken = sum - plan->motif.gap;
        ck_assert_int_eq(plan->grading.seam_breaks[size * garment->seam_count + s], broken);
        cost += plan->project->choices.seam_weight * broken * broken;
    }
    return cost;
}

/* Everything that every plan must keep, whatever was chosen. */
static void check_plan(const hw_plan *plan)
{
    const hw_garment *garment = &plan->project->garment;
    double total = 0;
    for (int i = 0; i < plan->finished.count; i++) {
        for (int p = 0; p < garment->piece_count; p++) {
            total += check_fit(plan, i, p);
            total += i > 0 ? check_step(plan, i, p) : 0;
            int other = garment->pieces[p].mirror_of;
            const hw_fit *fit = hw_plan_fit(plan, i, p);
            const hw_fit *mirrored = hw_plan_fit(plan, i, other >= 0 ? other : p);
            ck_assert_int_eq(fit->visible_sts, mirrored->visible_sts);
            hw_side left = other >= 0 ? HW_RIGHT : HW_LEFT;
            hw_side right = other >= 0 ? HW_LEFT : HW_RIGHT;
            ck_assert_int_eq(fit->margin[HW_LEFT], mirrored->margin[left]);
            ck_assert_int_eq(fit->margin[HW_RIGHT], mirrored->margin[right]);
        }
        total += check_seams(plan, i);
    }
    ck_assert_double_eq_tol(plan->grading.total_cost, total, 1e-9 * (1 + total));
}

enum { MOST_COLUMNS = 200 };

/* One row of a card. */
typedef struct {
    bool hole[MOST_COLUMNS];
} card_row;

/* Punch a row of the figure as the purl side shows it, which faces the knitter: its last column
 * first, from the card's start on, all round with a gap after each. */
static card_row punch(const hw_plan *plan, int row, int start)
{
    const hw_chart *chart = &plan->motif.chart;
    int columns = plan->motif.card_columns;
    card_row card = { { false } };
    for (int motif = 0; motif < columns / plan->motif.repeat; motif++) {
        for (int k = 0; k < chart->width; k++) {
            int column = start + motif * plan->motif.repeat + k;
            int seen = chart->width - 1 - k;
            card.hole[column % columns] = chart->cells[row * chart->width + seen] == HW_CONTRAST;
        }
    }
    return card;
}

/* What the right side must show at a stitch between the edges, counted from its left. */
static bool wanted(const hw_plan *plan, const hw_fit *fit, int row, int stitch)
{
    const hw_chart *chart = &plan->motif.chart;
    int at = stitch - fit->margin[HW_LEFT];
    if (at < 0 || at >= fit->motifs * plan->motif.repeat - plan->motif.gap) {
        return false; /* a margin */
    }
    int column = at % plan->motif.repeat;
    return column < chart->width && chart->cells[row * chart->width + column] == HW_CONTRAST;
}

/* Knit every row of a piece where it stands: needle q reads column (q + C/2) mod C of the card, and
 * the stitch on the last needle is the right side's first. */
static void check_knitted(const hw_plan *plan, int at)
{
    const hw_fit *fit = &plan->grading.fits[at];
    const hw_place_on_bed *place = &plan->places[at];
    int columns = plan->motif.card_columns;
    ck_assert_int_eq(place->last - place->first + 1, fit->cast_on_sts);
    ck_assert_int_ge(place->first, -plan->project->machine.needles / 2);
    ck_assert_int_lt(place->last, plan->project->machine.needles / 2);
    for (int row = 0; row < plan->motif.chart.rows; row++) {
        card_row card = punch(plan, row, place->card_start);
        for (int stitch = 0; stitch < fit->visible_sts; stitch++) {
            int needle = place->last - fit->edge_sts[HW_LEFT] - stitch;
            int column = (needle + columns / 2) % columns;
            column += column < 0 ? columns : 0;
            ck_assert_int_eq(card.hole[column], wanted(plan, fit, row, stitch));
        }
    }
}

/* All pieces from the one card; a card that is punched has its own start. */
static void check_bed(const hw_plan *plan)
{
    int count = plan->finished.count * plan->project->garment.piece_count;
    for (int i = 0; i < count && plan->motif.card_columns > 0 && plan->motif.fits_card; i++) {
        check_knitted(plan, i);
        if (plan->project->card_start > 0) {
            ck_assert_int_eq(plan->places[i].card_start, plan->project->card_start - 1);
        } else if (plan->has_punch) {
            ck_assert_int_eq(plan->places[i].card_start, plan->punch.column);
        }
    }
}

/* The demonstration projects as they come, and the first on a card that is not punched. */
START_TEST(demonstrations)
{
    static const loading rows[] = {
        { .demo = "meadow-dress" },
        { .demo = "meadow-dress", .edits = { { "\n  card start: 1", "" } } },
        { .demo = "meadow-dress", .edits = { { "card start: 1\n", "card start: 18\n" } } },
        { .demo = "harbour-purse" },
        { .demo = "starter" },
    };
    static planned t;
    planned_open(&t, &rows[_i]);
    check_plan(&t.plan);
    check_bed(&t.plan);
    ck_assert_int_gt(t.plan.finished.count, 2);
    ck_assert_int_gt(t.plan.alternatives.count, 5);
    ck_assert_int_gt(t.plan.basis_count, 10);
    planned_close(&t);
}
END_TEST

/* A row of a figure by chance, with a stitch of contrast in it. */
static void draw_row(unsigned *state, int width, char *row)
{
    for (int k = 0; k < width; k++) {
        row[k] = hw_check_random(state, 2) == 0 ? '.' : 'o';
    }
    row[hw_check_random(state, width)] = 'o';
    row[width] = '\0';
}

/* A figure by chance whose repeat divides 24 columns, with its gap and the card's start. */
static const char *draw(unsigned *state, hw_arena *arena)
{
    static const int repeats[] = { 2, 3, 4, 6, 8, 12, 24 };
    int repeat = repeats[hw_check_random(state, 7)];
    int gap = hw_check_random(state, repeat < 6 ? repeat : 6);
    int start = hw_check_random(state, 25);
    char first[32];
    char second[32];
    draw_row(state, repeat - gap, first);
    draw_row(state, repeat - gap, second);
    const char *motif =
        hw_arena_format(arena, "chart: |\n    %s\n    %s\n  gap: %d\n", first, second, gap);
    return start == 0 ? motif : hw_arena_format(arena, "%s  card start: %d\n", motif, start);
}

/* Many figures, gaps and cards by chance: whatever is planned, the card knits it in its place. */
START_TEST(knitted_from_the_card)
{
    static const char *const garments[] = { "flared-dress", "straight-cardigan", "pouch" };
    static planned t;
    unsigned state = 77 + (unsigned)_i;
    int punched = 0;
    for (int run = 0; run < 12; run++) {
        hw_arena texts;
        hw_mem mem = hw_mem_system();
        hw_arena_init(&texts, &mem, 4096);
        const char *garment = garments[hw_check_random(&state, 3)];
        loading from = { .demo = "starter",
            .edits = { { "chart: |\n    ..o..\n    .ooo.\n    oo.oo\n    .ooo.\n    ..o..\n    "
                         "..o..\n  gap: 1                       # background columns between two "
                         "figures\n",
                           draw(&state, &texts) },
                { "garment: flared-dress          #",
                    hw_arena_format(&texts, "garment: %s #", garment) },
                { "tolerance: 1 cm ",
                    hw_arena_format(&texts, "edge stitches: %d\n  tolerance: 1 cm ",
                        hw_check_random(&state, 4)) } } };
        planned_open(&t, &from);
        ck_assert(t.plan.motif.fits_card);
        check_plan(&t.plan);
        check_bed(&t.plan);
        punched += t.plan.has_punch;
        planned_close(&t);
        hw_arena_release(&texts);
    }
    ck_assert_int_lt(punched, 12);
}
END_TEST

/* A dress of two sizes; each test changes it. By hand: 2.5 stitches to the cm. */
static const char dress[] = "title: Dress\n"
                            "machine: standard\n"
                            "garment: dress\n"
                            "gauge:\n"
                            "  main: {stitches: 25, rows: 40}\n"
                            "motif:\n"
                            "  chart: |\n"
                            "    o\n"
                            "  gap: 2\n"
                            "hem:\n"
                            "  depth: 4\n"
                            "sizes:\n"
                            "  names: [a, b, c]\n"
                            "  table: own\n";

static const char table[] = "title: Own table\n"
                            "names: [a, b, c, d]\n"
                            "ages: [3, 12, 24, 36]\n"
                            "sources:\n"
                            "  M1: {mark: from memory, what: a memory}\n"
                            "  L1: {mark: read, what: a book}\n"
                            "body:\n"
                            "  chest: {values: [40, 50, 70, 80], source: [M1, L1, L1, L1]}\n"
                            "  waist: {values: [30, 32, 34, 36], source: [L1]}\n";

static const char pair[] = "title: Pair\nchart: |\n  oo\n";

static const char garment[] = "title: A dress\n"
                              "finished:\n"
                              "  chest: {is: chest, ease: 5 cm}\n"
                              "  hem: {is: 1.5 x finished chest}\n"
                              "pieces:\n"
                              "  front: {band width: 0.5 x finished hem}\n";

/* clang-format off */
#define OWN .data = { [HW_DATA_GARMENT] = garment, [HW_DATA_SIZES] = table, [HW_DATA_MOTIF] = pair }
/* clang-format on */

static const hw_measure *measure(const hw_sizes *sizes, const char *name)
{
    int at = hw_sizes_find(sizes, name);
    ck_assert_msg(at >= 0, "no %s", name);
    return &sizes->measures[at];
}

/* By hand: chest 40, 50, 70 and 5 cm of ease; the hem 1.5 times that, half of it the front. Marks:
 * from memory in the first size, else derived. The waist, which no rule names, is left out. */
START_TEST(rules)
{
    static planned t;
    planned_open(&t, &(loading){ .text = dress, OWN });
    static const double chest_cm[] = { 45, 55, 75 };
    for (int i = 0; i < 3; i++) {
        ck_assert_double_eq_tol(
            measure(&t.plan.finished, "chest")->values_cm[i], chest_cm[i], 1e-9);
        ck_assert_double_eq_tol(t.plan.targets[i].band_cm, 0.75 * chest_cm[i], 1e-9);
        ck_assert_double_eq_tol(t.plan.targets[i].main_cm, 0.75 * chest_cm[i], 1e-9);
        ck_assert_int_eq(t.plan.target_marks[i], i == 0 ? HW_MARK_MEMORY : HW_MARK_DERIVED);
    }
    static const int ages[] = { 3, 12, 24 };
    for (int i = 0; i < 3; i++) {
        ck_assert_int_eq(t.plan.body.ages_months[i], ages[i]);
    }
    ck_assert_int_eq(hw_sizes_find(&t.plan.body, "waist"), -1);
    ck_assert_str_eq(measure(&t.plan.body, "chest")->sources[1], "L1");
    planned_close(&t);
}
END_TEST

/* By hand, what a change makes of the chest and of the front: percentages of what the rule gives;
 * finished measurements before rules; the project's own body before the table; a size that the
 * table lacks on the straight line between its neighbours, because only two are known. */
START_TEST(sizes_filled_in)
{
    static const struct {
        loading_edit edit;
        double chest_cm[3], front_cm[3];
        hw_mark marks[3];
        int ages[3];
    } rows[] = {
        { { "hem:\n", "ease: {chest: 10 %}\nhem:\n" }, { 44, 55, 77 }, { 33, 41.25, 57.75 },
            { HW_MARK_MEMORY, HW_MARK_DERIVED, HW_MARK_DERIVED }, { 3, 12, 24 } },
        { { "hem:\n", "ease: {chest: -2 cm, hem: 6 cm}\nhem:\n" }, { 38, 48, 68 }, { 31.5, 39, 54 },
            { HW_MARK_MEMORY, HW_MARK_DERIVED, HW_MARK_DERIVED }, { 3, 12, 24 } },
        { { "  table: own\n", "  table: own\n  finished:\n    chest: [50, between, 60]\n" },
            { 50, 55, 60 }, { 37.5, 41.25, 45 },
            { HW_MARK_DERIVED, HW_MARK_INTERPOLATED, HW_MARK_DERIVED }, { 3, 12, 24 } },
        { { "  table: own\n", "  table: own\n  finished:\n    hem: [50, between, 60]\n" },
            { 45, 55, 75 }, { 25, 27.5, 30 },
            { HW_MARK_DERIVED, HW_MARK_INTERPOLATED, HW_MARK_DERIVED }, { 3, 12, 24 } },
        { { "  table: own\n", "  table: own\n  body:\n    chest: [44, between, 48]\n" },
            { 49, 51, 53 }, { 36.75, 38.25, 39.75 },
            { HW_MARK_DERIVED, HW_MARK_INTERPOLATED, HW_MARK_DERIVED }, { 3, 12, 24 } },
        { { "[a, b, c]", "[b, new, c]" }, { 55, 65, 75 }, { 41.25, 48.75, 56.25 },
            { HW_MARK_DERIVED, HW_MARK_INTERPOLATED, HW_MARK_DERIVED }, { 12, -1, 24 } },
        { { "[a, b, c]", "[a, new, c]" }, { 45, 60, 75 }, { 33.75, 45, 56.25 },
            { HW_MARK_MEMORY, HW_MARK_MEMORY, HW_MARK_DERIVED }, { 3, -1, 24 } },
        { { "[a, b, c]", "[b, c, d]\n  ages: [1, 2, 3]" }, { 55, 75, 85 }, { 41.25, 56.25, 63.75 },
            { HW_MARK_DERIVED, HW_MARK_DERIVED, HW_MARK_DERIVED }, { 1, 2, 3 } },
    };
    static planned t;
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        planned_open(&t, &(loading){ .text = dress, OWN, .edits = { rows[r].edit } });
        for (int i = 0; i < 3; i++) {
            double cm = measure(&t.plan.finished, "chest")->values_cm[i];
            ck_assert_double_eq_tol(cm, rows[r].chest_cm[i], 1e-9);
            ck_assert_double_eq_tol(t.plan.targets[i].band_cm, rows[r].front_cm[i], 1e-9);
            hw_mark mark = hw_mark_weaker(rows[r].marks[i], HW_MARK_GIVEN);
            bool bare = strstr(rows[r].edit.fresh, "hem: [") != NULL && i != 1;
            ck_assert_int_eq(t.plan.target_marks[i], bare ? HW_MARK_GIVEN : mark);
            ck_assert_int_eq(t.plan.body.ages_months[i], rows[r].ages[i]);
        }
        planned_close(&t);
    }
}
END_TEST

/* The project is only read: a value to be filled in is still open in it after a plan, and a second
 * plan comes out the same. */
START_TEST(project_stays)
{
    static planned t;
    planned_open(&t, &(loading){ .text = dress,
                         OWN,
                         .edits = { { "  table: own\n",
                             "  table: own\n  finished:\n    hem: [50, between, 60]\n  body:\n    "
                             "chest: [44, between, 48]\n" } } });
    ck_assert(measure(&t.project.finished, "hem")->missing[1]);
    ck_assert(measure(&t.project.body, "chest")->missing[1]);
    ck_assert(!measure(&t.plan.finished, "hem")->missing[1]);
    ck_assert_int_eq(
        measure(&t.plan.finished, "hem")->line, measure(&t.project.finished, "hem")->line);
    hw_plan again;
    ck_assert_int_eq(hw_calculate_plan(&t.project, &t.arena, &again, NULL), HW_OK);
    ck_assert_int_eq(again.note_count, t.plan.note_count);
    ck_assert_double_eq_tol(again.grading.total_cost, t.plan.grading.total_cost, 1e-12);
    planned_close(&t);
}
END_TEST

/* By hand: a width rests on the weaker of its two marks, whichever of band and plain fabric has
 * it: the chest of size a is from memory, of size b was read. */
START_TEST(weaker_mark)
{
    static const char *const widths[] = { "{band width: chest, main width: hem}",
        "{band width: hem, main width: chest}" };
    static planned t;
    for (int k = 0; k < 2; k++) {
        hw_arena texts;
        hw_mem mem = hw_mem_system();
        hw_arena_init(&texts, &mem, 4096);
        const char *own = hw_arena_format(&texts,
            "title: A dress\nfinished:\n  chest: {is: chest}\n  hem: {is: chest}\npieces:\n"
            "  front: %s\n",
            widths[k]);
        loading from = { .text = dress,
            .data = { [HW_DATA_GARMENT] = own, [HW_DATA_SIZES] = table },
            .edits = { { "  table: own\n", "  table: own\n  finished: {hem: [40, 50, 70]}\n" } } };
        planned_open(&t, &from);
        ck_assert_int_eq(t.plan.target_marks[0], HW_MARK_MEMORY);
        ck_assert_int_eq(t.plan.target_marks[1], HW_MARK_READ);
        planned_close(&t);
        hw_arena_release(&texts);
    }
}
END_TEST

/* What cannot be planned is refused in words that say what and what to do. */
START_TEST(refusals)
{
    static const struct {
        loading_edit edit;
        const char *garment;
        hw_status status;
        const char *what, *way;
    } rows[] = {
        { { "[a, b, c]", "[new, b, c]" }, NULL, HW_ERR_MISSING,
            "first or the last of your sizes is not in the table `Own table`",
            "use its names, such as `a` and `d`, or give `chest`" },
        { { "[a, b, c]", "[a, b, new]" }, NULL, HW_ERR_MISSING, "not in the table",
            "under `body`" },
        { { "  table: own\n", "  body:\n    chest: [40, 50, between]\n" }, NULL, HW_ERR_MISSING,
            "`chest` has no value in the last size", "give one there" },
        { { "  table: own\n", "  finished:\n    hem: [between, 50, 60]\n" }, NULL, HW_ERR_MISSING,
            "`hem` has no value in the first size", "give one there" },
        { { "  table: own\n", "" }, NULL, HW_ERR_MISSING, "`chest` follows from the body's `chest`",
            "under body" },
        { { "hem:\n", "ease: {bust: 3 cm}\nhem:\n" }, NULL, HW_ERR_UNKNOWN,
            "no finished measurement of that name", "correct the name" },
        { { "  chart: |\n    o\n  gap: 2", "  use: pair\n  gap: 199" }, NULL, HW_ERR_LIMIT,
            "figure and gap are 201 columns together; at most 200", "choose a smaller gap" },
        { { "stitches: 25", "stitches: 80" }, NULL, HW_ERR_NOFIT, "the bed has 200 needles",
            "choose a coarser gauge" },
        { { "gap: 2\n", "gap: 2\n  card start: 25\n" }, NULL, HW_ERR_RANGE,
            "the card has no column 25", "its columns are 1 to 24" },
        { { NULL, NULL },
            "title: A dress\nfinished:\n  hem: {is: chest}\npieces:\n  front: {band width: "
            "finished hem - 45 cm}\n",
            HW_ERR_RANGE, "size a, front: the width comes out at -5.0 cm", "look at the" },
        { { NULL, NULL },
            "title: A dress\nfinished:\n  hem: {is: chest}\npieces:\n  front: {band width: "
            "finished hem, main width: finished hem - 45 cm}\n",
            HW_ERR_RANGE, "size a, front: the width comes out at -5.0 cm", "and the ease" },
        { { "depth: 4", "face rows: 10" }, NULL, HW_ERR_RANGE, "plain rows come in twos",
            "ask for 9 or 11 rows" },
    };
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_project project = { 0 };
        loading from = { .text = dress, OWN, .edits = { rows[r].edit } };
        if (rows[r].garment != NULL) {
            from.data[HW_DATA_GARMENT] = rows[r].garment;
        }
        loading_open(&from, &arena, &project);
        hw_plan plan = { .note_count = 77 };
        hw_err err = { 0 };
        ck_assert_int_eq(hw_calculate_plan(&project, &arena, &plan, &err), rows[r].status);
        ck_assert(hw_check_says(&err, rows[r].status, rows[r].what));
        ck_assert(hw_check_says(&err, rows[r].status, rows[r].way));
        ck_assert_int_eq(plan.note_count, 77);
        ck_assert_int_eq(hw_calculate_plan(&project, &arena, &plan, NULL), rows[r].status);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* The counts beside a choice are the nearest centred ones; with needles set by hand the plain ends
 * may be wider. By hand: 1 and 2 columns of gap, margins 0 to 2: every count can be made; with a
 * repeat of 12 and no gap 84 and 96 lie round 33.75 x 2.5 = 84.375. */
START_TEST(near_counts)
{
    static planned t;
    static const loading_edit wide = { "    o\n  gap: 2", "    o...........\n  gap: 0" };
    planned_open(&t, &(loading){ .text = dress, OWN, .edits = { wide } });
    ck_assert(t.plan.near[0].has_below && t.plan.near[0].has_above);
    ck_assert_int_eq(t.plan.near[0].below.visible_sts, 84);
    ck_assert_int_eq(t.plan.near[0].above.visible_sts, 96);
    planned_close(&t);
    planned_open(
        &t, &(loading){ .text = dress,
                OWN,
                .edits = { wide, { "hem:\n", "choices: {hand-set needles: yes}\nhem:\n" } } });
    ck_assert_int_eq(t.plan.near[0].below.visible_sts, 84);
    ck_assert_int_eq(t.plan.near[0].above.visible_sts, 85);
    check_plan(&t.plan);
    planned_close(&t);
}
END_TEST

/* Band and plain fabric that want different counts. By hand: 2.5 and 2.75 stitches to the cm; 41.25
 * cm are 103 and 113.4 stitches; re-hung, the plain fabric has the nearest to its own width where
 * the band's count would be outside. */
START_TEST(rehung)
{
    static planned t;
    static const loading_edit gauges = { "main: {stitches: 25, rows: 40}",
        "main: {stitches: 27.5, rows: 40}\n  band: {stitches: 25, rows: 40}" };
    planned_open(&t, &(loading){ .text = dress,
                         OWN,
                         .edits = { gauges, { "hem:\n", "choices: {re-hang: yes}\nhem:\n" } } });
    check_plan(&t.plan);
    const hw_fit *fit = hw_plan_fit(&t.plan, 1, 0);
    ck_assert_int_eq(fit->main_sts, 113);
    ck_assert(fit->inside);
    ck_assert_int_eq(t.plan.changes[1].count, 113 - fit->visible_sts);
    planned_close(&t);
}
END_TEST

/* A piece that was knitted keeps its count, and so does the one that it mirrors. By hand: 84
 * stitches that measured 33.6 cm, 2.5 to the cm as before; of 33.75 cm wanted the plan alone would
 * take what is nearest. What that is stays known. */
START_TEST(knitted)
{
    static const char mirrored[] = "title: A dress\nfinished:\n  hem: {is: 1.5 x chest}\npieces:\n"
                                   "  front: {band width: 0.5 x finished hem}\n"
                                   "  back: {mirrors: front}\n";
    static const hw_knitted measured = {
        .piece = 1, .fabric = HW_BAND, .sts = 84, .width_cm = 33.6, .row = 1
    };
    static planned t;
    planned_open(
        &t, &(loading){ .text = dress,
                .data = { [HW_DATA_GARMENT] = mirrored, [HW_DATA_SIZES] = table },
                .edits = { { "gauge:\n", "gauge:\n  band: {stitches: 25, rows: 40}\n" } } });
    ck_assert(!t.plan.has_free);
    int first = hw_plan_fit(&t.plan, 0, 0)->visible_sts;
    ck_assert_int_ne(first, 84);
    t.project.knitted = (hw_knitted_list){ &measured, 1 };
    ck_assert_int_eq(hw_calculate_plan(&t.project, &t.arena, &t.plan, NULL), HW_OK);
    ck_assert(t.plan.has_free);
    for (int p = 0; p < 2; p++) {
        ck_assert_int_eq(hw_plan_fit(&t.plan, 0, p)->visible_sts, 84);
        ck_assert_int_eq(t.plan.fixed_sts[p], 84);
        ck_assert_int_eq(t.plan.fixed_sts[2 + p], 0);
        ck_assert_int_eq(t.plan.free_grading.fits[p].visible_sts, first);
    }
    check_plan(&t.plan);
    planned_close(&t);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("plan");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, demonstrations, 0, 5);
    tcase_add_loop_test(all, knitted_from_the_card, 0, 12);
    tcase_add_test(all, rules);
    tcase_add_test(all, sizes_filled_in);
    tcase_add_test(all, project_stays);
    tcase_add_test(all, weaker_mark);
    tcase_add_test(all, refusals);
    tcase_add_test(all, near_counts);
    tcase_add_test(all, rehung);
    tcase_add_test(all, knitted);
    suite_add_tcase(suite, all);
    return hw_check_run(suite);
}
