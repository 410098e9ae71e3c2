/* The bed: the card drawn column by column, and the needles that it makes knit contrast.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bed.h"
#include "core/num.h"
#include "support.h"

enum { MOST_COLUMNS = 60, NOWHERE = 9999 };

/* A punched card: true where the first column of a motif is. */
typedef struct {
    bool first_column[MOST_COLUMNS];
    int columns;
} card;

/* Punch motifs side by side from a column on, all round where they come out even, else one. */
static card punch(int columns, int repeat, int start)
{
    card punched = { .columns = columns };
    int motifs = columns % repeat == 0 ? columns / repeat : 1;
    for (int i = 0; i < motifs; i++) {
        punched.first_column[(start + i * repeat) % columns] = true;
    }
    return punched;
}

/* Whether a needle gets a motif's first column. The card lies with its middle at 0: half its
 * columns belong to the needles left of it, L1 the last of them, and it begins again after the
 * last. */
static bool knits_first(const card *punched, int needle)
{
    int column = punched->columns / 2;
    for (int q = 0; q < needle; q++) {
        column = column + 1 == punched->columns ? 0 : column + 1;
    }
    for (int q = 0; q > needle; q--) {
        column = column == 0 ? punched->columns - 1 : column - 1;
    }
    return punched->first_column[column];
}

/* A card's repeat stands with 12 needles on each side of 0: https://alessandrina.com/2015/09/03/ */
START_TEST(card_column)
{
    ck_assert_int_eq(hw_bed_column(-12, 24), 0);
    ck_assert_int_eq(hw_bed_column(-1, 24), 11);
    ck_assert_int_eq(hw_bed_column(0, 24), 12);
    ck_assert_int_eq(hw_bed_column(11, 24), 23);
    ck_assert_int_eq(hw_bed_column(12, 24), 0);
    ck_assert_int_eq(hw_bed_column(-13, 24), 23);
    for (int needle = -100; needle < 100; needle++) {
        card one = { .columns = 24 };
        one.first_column[hw_bed_column(needle, 24)] = true;
        ck_assert(knits_first(&one, needle));
    }
}
END_TEST

/* Common practice, no source: a 5-column motif with gap 1 is four repeats on 24 columns. By hand:
 * 10 motifs are 59 stitches, with an edge stitch at each side 61; centred from L30 to R31; its
 * first motif on L29, column (-29 + 12) mod 24 = 7, so column 1 of a card with a motif every 6
 * columns. */
START_TEST(by_hand)
{
    hw_bed_task task = { .needles = 200,
        .card_columns = 24,
        .repeat = 6,
        .cast_on_sts = 61,
        .before_motif = 1,
        .motifs = 10,
        .free_start = true };
    hw_place_on_bed place = { 0 };
    ck_assert_int_eq(hw_bed_place(&task, &place, NULL), HW_OK);
    ck_assert_int_eq(place.first, -30);
    ck_assert_int_eq(place.last, 30);
    ck_assert_int_eq(place.off_centre_halves, 1);
    ck_assert_int_eq(place.first_motif, -29);
    ck_assert_int_eq(place.centre_motif, -29 + 4 * 6);
    ck_assert_int_eq(place.wanted_card_start, 1);
    ck_assert_int_eq(place.card_start, 1);
    /* punched from column 0 already: one needle further left */
    task.free_start = false;
    ck_assert_int_eq(hw_bed_place(&task, &place, NULL), HW_OK);
    ck_assert_int_eq(place.first, -31);
    ck_assert_int_eq(place.off_centre_halves, -1);
    ck_assert_int_eq(place.card_start, 0);
    ck_assert_int_eq(place.wanted_card_start, 1);
    /* three columns off either way: to the left */
    task.card_start = 4;
    ck_assert_int_eq(hw_bed_place(&task, &place, NULL), HW_OK);
    ck_assert_int_eq(place.first, -33);
}
END_TEST

/* What a piece at a needle would get from the card: all its motifs where they stand, and no other
 * first column before the last. One motif only where the card does not come out even. */
static bool card_serves(const card *punched, const hw_bed_task *task, int first)
{
    int start = first + task->before_motif;
    if (task->card_columns % task->repeat != 0) {
        return knits_first(punched, start);
    }
    for (int i = 0; i < task->motifs * task->repeat; i++) {
        if (knits_first(punched, start + i) != (i % task->repeat == 0)) {
            return false;
        }
    }
    return true;
}

static int off_centre(int first, int sts)
{
    int last = first + sts - 1;
    int halves = first + last + 1;
    return halves < 0 ? -halves : halves;
}

/* The place nearest the middle by trying every needle; NOWHERE where there is none. */
static int search(const hw_bed_task *task, const card *punched)
{
    int best = NOWHERE;
    for (int first = -task->needles / 2; first < task->needles / 2; first++) {
        bool on_bed = first + task->cast_on_sts - 1 < task->needles / 2;
        if (!on_bed || !card_serves(punched, task, first)) {
            continue;
        }
        if (best == NOWHERE ||
            off_centre(first, task->cast_on_sts) < off_centre(best, task->cast_on_sts)) {
            best = first;
        }
    }
    return best;
}

static hw_bed_task random_task(unsigned *state)
{
    static const int columns[] = { 24, 24, 24, 12, 30, 7 };
    hw_bed_task task = { .needles = 2 * (15 + hw_check_random(state, 40)) };
    task.card_columns = columns[hw_check_random(state, 6)];
    task.repeat = 1 + hw_check_random(state, 24);
    task.card_start = hw_check_random(state, task.card_columns);
    task.motifs = 1 + hw_check_random(state, 4);
    task.before_motif = hw_check_random(state, 5);
    int after = hw_check_random(state, 5);
    task.cast_on_sts = task.before_motif + task.motifs * task.repeat + after;
    return task;
}

static void check_task(const hw_bed_task *task)
{
    hw_place_on_bed place = { .first = 12345 };
    hw_err err = { 0 };
    hw_status status = hw_bed_place(task, &place, &err);
    card punched = punch(task->card_columns, task->repeat, task->card_start);
    int found = task->cast_on_sts > task->needles ? NOWHERE : search(task, &punched);
    if (found == NOWHERE) {
        ck_assert_int_eq(status, HW_ERR_RANGE);
        ck_assert_int_eq(place.first, 12345);
        return;
    }
    ck_assert_int_eq(status, HW_OK);
    ck_assert(card_serves(&punched, task, place.first));
    ck_assert_int_eq(place.last - place.first + 1, task->cast_on_sts);
    ck_assert(place.first >= -task->needles / 2 && place.last < task->needles / 2);
    ck_assert_int_eq(
        off_centre(place.first, task->cast_on_sts), off_centre(found, task->cast_on_sts));
    if (task->cast_on_sts % 2 == 0) {
        ck_assert_int_eq(place.first, found); /* of two as near, the search keeps the left one */
    }
    ck_assert_int_eq(place.off_centre_halves, place.first + place.last + 1);
    ck_assert_int_eq(place.first_motif, place.first + task->before_motif);
    int middle = place.first_motif + (task->motifs - 1) / 2 * task->repeat;
    ck_assert_int_eq(place.centre_motif, middle);
    ck_assert_int_eq(place.card_start, task->card_start);
    /* another card, punched where it was wanted, stands the piece centred */
    card wanted = punch(task->card_columns, task->repeat, place.wanted_card_start);
    ck_assert(card_serves(&wanted, task, -(task->cast_on_sts / 2)));
    bool even = task->card_columns % task->repeat == 0;
    ck_assert_int_lt(place.wanted_card_start, even ? task->repeat : task->card_columns);
    ck_assert_int_ge(place.wanted_card_start, 0);
}

/* By search: 20000 pieces by chance against every needle of the drawn card. */
START_TEST(nearest_by_search)
{
    unsigned state = 7;
    int placed = 0;
    for (int i = 0; i < 20000; i++) {
        hw_bed_task task = random_task(&state);
        check_task(&task);
        hw_place_on_bed place = { 0 };
        placed += hw_bed_place(&task, &place, NULL) == HW_OK ? 1 : 0;
    }
    ck_assert_int_gt(placed, 5000); /* the search was not idle, and neither were the refusals */
    ck_assert_int_lt(placed, 19500);
}
END_TEST

enum { MOST_PUNCHED = 5, IMPOSSIBLE = -1 };

/* How far the furthest of some pieces stands off the middle with a card punched from a column, by
 * trying every needle for each; IMPOSSIBLE where one of them has no place. */
static int furthest(const hw_bed_task *tasks, int count, int column, bool *all_centred)
{
    int worst = 0;
    *all_centred = true;
    for (int i = 0; i < count; i++) {
        card punched = punch(tasks[i].card_columns, tasks[i].repeat, column);
        int first = search(&tasks[i], &punched);
        if (first == NOWHERE) {
            return IMPOSSIBLE;
        }
        int halves = off_centre(first, tasks[i].cast_on_sts);
        worst = halves > worst ? halves : worst;
        *all_centred = *all_centred && halves < 2;
    }
    return worst;
}

/* The chosen column against every column of the card: none is better, none before it as good. */
static void check_punch(const hw_bed_task *tasks, int count, hw_bed_punch found)
{
    bool centred = false;
    bool any = false;
    for (int column = 0; column < tasks[0].card_columns; column++) {
        int worst = furthest(tasks, count, column, &centred);
        any = any || worst != IMPOSSIBLE;
        if (!found.possible || worst == IMPOSSIBLE) {
            continue;
        }
        ck_assert_int_ge(worst, found.worst_halves);
        ck_assert(worst > found.worst_halves || column >= found.column);
    }
    ck_assert_int_eq(found.possible, any);
    if (!found.possible) {
        return;
    }
    ck_assert_int_eq(furthest(tasks, count, found.column, &centred), found.worst_halves);
    ck_assert_int_eq(found.centres_all, centred);
    card punched = punch(tasks[0].card_columns, tasks[0].repeat, found.column);
    const hw_bed_task *worst = &tasks[found.worst];
    ck_assert_int_eq(off_centre(search(worst, &punched), worst->cast_on_sts), found.worst_halves);
    for (int i = 0; i < found.worst; i++) { /* the first of those as far off */
        int halves = off_centre(search(&tasks[i], &punched), tasks[i].cast_on_sts);
        ck_assert_int_lt(halves, found.worst_halves);
    }
}

/* By search: 3000 sets of pieces by chance, every column of the card, every needle of the bed. */
START_TEST(best_start_by_search)
{
    unsigned state = 99;
    int possible = 0;
    int centred = 0;
    for (int run = 0; run < 3000; run++) {
        hw_bed_task tasks[MOST_PUNCHED];
        int count = 1 + hw_check_random(&state, MOST_PUNCHED);
        hw_bed_task first = random_task(&state);
        for (int i = 0; i < count; i++) {
            tasks[i] = first;
            tasks[i].motifs = 1 + hw_check_random(&state, 3);
            tasks[i].before_motif = hw_check_random(&state, 5);
            tasks[i].cast_on_sts =
                tasks[i].before_motif + tasks[i].motifs * first.repeat + hw_check_random(&state, 5);
            /* Neither is looked at. */
            tasks[i].card_start = hw_check_random(&state, 400) - 200;
            tasks[i].free_start = hw_check_random(&state, 2) == 0;
        }
        hw_bed_punch found = hw_bed_best_start(tasks, count);
        check_punch(tasks, count, found);
        possible += found.possible;
        centred += found.possible && found.centres_all;
    }
    ck_assert_int_gt(possible, 1500);
    ck_assert_int_lt(possible, 2900);
    ck_assert_int_gt(centred, 300);
    ck_assert_int_lt(centred, possible - 300);
}
END_TEST

/* By hand: an odd piece has its odd stitch on the right: 5 stitches are L2 L1 R1 R2 R3. */
START_TEST(centred_without_card)
{
    for (int sts = 1; sts <= 200; sts++) {
        hw_bed_task task = {
            .needles = 200, .repeat = 6, .cast_on_sts = sts, .motifs = 1, .card_start = 99
        };
        hw_place_on_bed place = { 0 };
        ck_assert_int_eq(hw_bed_place(&task, &place, NULL), HW_OK);
        int left = -place.first;
        int right = place.last + 1;
        ck_assert_int_eq(right - left, sts % 2);
        ck_assert_int_eq(place.off_centre_halves, sts % 2);
        ck_assert_int_eq(place.card_start, 0);
        ck_assert_int_eq(place.wanted_card_start, 0);
        task.card_columns = 24;
        task.free_start = true;
        ck_assert_int_eq(hw_bed_place(&task, &place, NULL), HW_OK);
        ck_assert_int_eq(place.first, -left);
        card punched = punch(24, 6, place.card_start);
        ck_assert(knits_first(&punched, place.first_motif));
    }
}
END_TEST

/* By hand: 3 fewer of 9 from L4 leave 6, from L3 to R3 or from L2 to R4; 3 more reach two needles
 * further at one end and one at the other. */
START_TEST(rehung)
{
    hw_place_on_bed place = { .first = -4, .last = 3 };
    ck_assert_int_eq(hw_bed_rehung_first(&place, 0, false), -4);
    ck_assert_int_eq(hw_bed_rehung_first(&place, 4, true), -2);
    ck_assert_int_eq(hw_bed_rehung_first(&place, 3, false), -3);
    ck_assert_int_eq(hw_bed_rehung_first(&place, 3, true), -2);
    ck_assert_int_eq(hw_bed_rehung_first(&place, -3, false), -6);
    ck_assert_int_eq(hw_bed_rehung_first(&place, -3, true), -5);
    /* 8 stitches on L6 to R2 of 12 needles: 3 more would begin on L8 or L7, or end on R6 at most.
     */
    place = (hw_place_on_bed){ .needles = 12, .first = -6, .last = 1 };
    ck_assert_int_eq(hw_bed_rehung_first(&place, -3, false), -6);
    place = (hw_place_on_bed){ .needles = 12, .first = -2, .last = 5 };
    ck_assert_int_eq(hw_bed_rehung_first(&place, -3, false), -5);
}
END_TEST

START_TEST(refusals)
{
    hw_bed_task task = { .needles = 200,
        .card_columns = 24,
        .repeat = 24,
        .cast_on_sts = 201,
        .before_motif = 1,
        .motifs = 8 };
    hw_err err = { 0 };
    hw_place_on_bed place = { .first = 77 };
    ck_assert_int_eq(hw_bed_place(&task, &place, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "201 stitches does not fit on 200 needles"));
    /* 198 stitches leave three places, and column 0 meets none of them. By hand: centred from L99
     * its motif is on L98, column (-98 + 12) mod 24 = 10, which the card's maker counts as 11. */
    task.cast_on_sts = 198;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_bed_place(&task, &place, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "from column 11"));
    task.card_start = 24;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_bed_place(&task, &place, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "no column 25"));
    task.card_start = -1;
    ck_assert_int_eq(hw_bed_place(&task, &place, NULL), HW_ERR_RANGE);
    ck_assert_int_eq(place.first, 77);
}
END_TEST

START_TEST(names)
{
    static const struct {
        int needle;
        const char *name;
    } rows[] = { { 0, "R1" }, { -1, "L1" }, { 99, "R100" }, { -100, "L100" }, { 11, "R12" } };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_str_eq(hw_bed_needle_name(rows[i].needle, &arena), rows[i].name);
    }
    hw_check_close(&arena, &heap);
    hw_check_open(&arena, &heap, 1, true);
    ck_assert_ptr_null(hw_bed_needle_name(3, &arena));
    hw_check_close(&arena, &heap);
    ck_assert_str_eq(hw_carriage_name(HW_CARRIAGE_NONE), "no carriage");
    ck_assert_str_eq(hw_carriage_name(HW_CARRIAGE_PRESELECTING), "pre-selecting");
    ck_assert_str_eq(hw_carriage_name(HW_CARRIAGE_DIRECT), "direct");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { card_column, by_hand, nearest_by_search, best_start_by_search,
        centred_without_card, rehung, refusals, names };
    return hw_check_run(hw_check_suite("bed", tests, sizeof tests / sizeof tests[0]));
}
