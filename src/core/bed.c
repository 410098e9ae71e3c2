/* Needles and card columns: the place nearest the middle where a piece meets its card.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bed.h"

#include <assert.h>
#include <stdlib.h>

#include "core/buf.h"
#include "core/num.h"

static const char *const carriages[] = {
    [HW_CARRIAGE_NONE] = "no carriage",
    [HW_CARRIAGE_PRESELECTING] = "pre-selecting",
    [HW_CARRIAGE_DIRECT] = "direct",
};
_Static_assert(
    sizeof carriages / sizeof carriages[0] == HW_CARRIAGE_COUNT, "a name for each carriage");

const char *hw_carriage_name(hw_carriage carriage)
{
    assert(carriage < HW_CARRIAGE_COUNT);
    return carriages[carriage];
}

int hw_bed_column(int needle, int columns)
{
    return hw_num_mod(needle + columns / 2, columns);
}

int hw_bed_rehung_first(const hw_place_on_bed *place, int fewer_sts, bool mirrored)
{
    int half_sts = (fewer_sts - hw_num_mod(fewer_sts, 2)) / 2;
    int first = place->first + (mirrored ? fewer_sts - half_sts : half_sts);
    if (place->needles > 0) {
        int most = place->needles / 2 - (place->last - place->first + 1 - fewer_sts);
        first = first > most ? most : first;
        first = first < -place->needles / 2 ? -place->needles / 2 : first;
    }
    return first;
}

char *hw_bed_needle_name(int needle, hw_arena *arena)
{
    return needle < 0 ? hw_arena_format(arena, "L%d", -needle)
                      : hw_arena_format(arena, "R%d", needle + 1);
}

/* Columns after which the card has a motif again. */
static int card_step(const hw_bed_task *task)
{
    bool divides = task->card_columns % task->repeat == 0;
    return divides ? task->repeat : task->card_columns;
}

/* Whether a piece that begins at this needle lies on the bed with its motifs on the card's. */
static bool meets(const hw_bed_task *task, int first)
{
    int half = task->needles / 2;
    if (first < -half || first + task->cast_on_sts > half) {
        return false;
    }
    int column = hw_bed_column(first + task->before_motif, task->card_columns);
    return hw_num_mod(column - task->card_start, card_step(task)) == 0;
}

/* The nearest such needle, ties to the left. Counted from where a centred piece begins, which
 * for an odd piece is half a needle to the right, the nearest is also nearest to the middle. */
static bool nearest_first(const hw_bed_task *task, int centred, int *first)
{
    for (int away = 0; away < card_step(task); away++) {
        int left = centred - away;
        int right = centred + away;
        if (meets(task, left) || meets(task, right)) {
            *first = meets(task, left) ? left : right;
            return true;
        }
    }
    return false;
}

static hw_status check(const hw_bed_task *task, hw_err *err)
{
    bool needs_start = task->card_columns > 0 && !task->free_start;
    if (task->cast_on_sts > task->needles) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a piece of %d stitches does not fit on %d needles: make it narrower, or knit it in "
            "two parts",
            task->cast_on_sts, task->needles);
    }
    if (needs_start && (task->card_start < 0 || task->card_start >= task->card_columns)) {
        return hw_err_set(err, HW_ERR_RANGE, "the card has no column %d: its columns are 1 to %d",
            task->card_start + 1, task->card_columns);
    }
    return HW_OK;
}

static int wanted_start(const hw_bed_task *task, int centred)
{
    int column = hw_bed_column(centred + task->before_motif, task->card_columns);
    return hw_num_mod(column, card_step(task));
}

static hw_place_on_bed place_at(const hw_bed_task *task, int first)
{
    int first_motif = first + task->before_motif;
    return (hw_place_on_bed){
        .needles = task->needles,
        .first = first,
        .last = first + task->cast_on_sts - 1,
        .off_centre_halves = 2 * first + task->cast_on_sts,
        .first_motif = first_motif,
        .centre_motif = first_motif + (task->motifs - 1) / 2 * task->repeat,
    };
}

hw_status hw_bed_place(const hw_bed_task *task, hw_place_on_bed *out, hw_err *err)
{
    assert(task->cast_on_sts > 0 && task->repeat > 0 && task->needles % 2 == 0);
    hw_status status = check(task, err);
    if (status != HW_OK) {
        return status;
    }
    int centred = -(task->cast_on_sts / 2);
    if (task->card_columns == 0) {
        *out = place_at(task, centred);
        return HW_OK;
    }
    int first = centred;
    int wanted = wanted_start(task, centred);
    if (!task->free_start && !nearest_first(task, centred, &first)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a piece of %d stitches cannot stand on %d needles with its motif on the card: punch "
            "the first motif from column %d, or make the piece narrower",
            task->cast_on_sts, task->needles, wanted + 1);
    }
    hw_place_on_bed place = place_at(task, first);
    place.card_start = task->free_start ? wanted : task->card_start;
    place.wanted_card_start = wanted;
    *out = place;
    return HW_OK;
}

/* What one column would do to all pieces. */
static hw_bed_punch try_column(const hw_bed_task *tasks, int count, int column)
{
    hw_bed_punch punch = { .possible = true, .column = column, .centres_all = true };
    for (int i = 0; i < count && punch.possible; i++) {
        hw_bed_task task = tasks[i];
        task.card_start = column;
        task.free_start = false;
        hw_place_on_bed place;
        punch.possible = hw_bed_place(&task, &place, NULL) == HW_OK;
        int halves = punch.possible ? abs(place.off_centre_halves) : 0;
        punch.centres_all = punch.centres_all && halves <= task.cast_on_sts % 2;
        if (halves > punch.worst_halves) {
            punch.worst_halves = halves;
            punch.worst = i;
        }
    }
    return punch;
}

hw_bed_punch hw_bed_best_start(const hw_bed_task *tasks, int count)
{
    hw_bed_punch best = { .possible = false };
    for (int column = 0; column < card_step(&tasks[0]); column++) {
        hw_bed_punch punch = try_column(tasks, count, column);
        if (punch.possible && (!best.possible || punch.worst_halves < best.worst_halves)) {
            best = punch;
        }
    }
    return best;
}
