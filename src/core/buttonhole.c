/* Even places by division with remainder, what holes cut into, and the rows of both layers.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/buttonhole.h"

#include <assert.h>

#include "core/holegaps.h"
#include "core/num.h"

static int end_sts_of(const hw_holes_task *task)
{
    return task->end_sts >= 0 ? task->end_sts
                              : hw_num_nearest(task->end_cm * task->sts_per_10cm / 10);
}

/* Gaps between holes take the rest one stitch at a time: the k-th boundary is k / (n - 1) of the
 * way, to the nearest stitch, so that longer gaps are spread evenly. */
static void even_places(const hw_holes_task *task, int end_sts, int *even)
{
    int free_sts = task->sts - 2 * end_sts - task->holes * task->hole_sts;
    int gaps = task->holes - 1;
    if (gaps == 0) {
        even[0] = (task->sts - task->hole_sts) / 2;
        return;
    }
    for (int k = 0; k <= gaps; k++) {
        int plain = (2 * k * free_sts + gaps) / (2 * gaps);
        even[k] = end_sts + k * task->hole_sts + plain;
    }
}

static hw_status check_room(const hw_holes_task *task, int end_sts, hw_err *err)
{
    int least = task->holes * task->hole_sts + 2 * end_sts + task->holes - 1;
    if (task->sts >= least) {
        return HW_OK;
    }
    return hw_err_set(err, HW_ERR_RANGE,
        "%d buttonholes of %d stitches, with %d at each end and one between them, need a band of "
        "%d stitches, and this one has %d: ask for fewer or smaller ones",
        task->holes, task->hole_sts, end_sts, least, task->sts);
}

static int figure_sts(const hw_holes_task *task)
{
    return task->repeat - task->gap;
}

/* Stitches below the gap that has `after` + 1 figures below it. */
static int gap_start(const hw_holes_task *task, int after)
{
    return task->first_sts + after * task->repeat + figure_sts(task);
}

/* Stitches of figures among those from one to another; the last is not counted. */
static int figure_sts_in(const hw_holes_task *task, int from, int to)
{
    int end = task->first_sts + task->motifs * task->repeat - task->gap;
    int count = 0;
    for (int st = from < task->first_sts ? task->first_sts : from; st < to && st < end; st++) {
        count += (st - task->first_sts) % task->repeat < figure_sts(task) ? 1 : 0;
    }
    return count;
}

/* What a hole takes of the motif below its gap and above it. */
static void measure_cuts(const hw_holes_task *task, hw_hole *hole)
{
    int start = gap_start(task, hole->gap_after - 1);
    int top = hole->below_sts + task->hole_sts;
    hole->cut_below = figure_sts_in(task, hole->below_sts, start < top ? start : top);
    hole->cut_above = figure_sts_in(task, start + task->gap, top);
}

static int larger(int a, int b)
{
    return a > b ? a : b;
}

static void complete(const hw_holes_task *task, int even_sts, hw_hole *hole)
{
    hole->above_sts = task->sts - hole->below_sts - task->hole_sts;
    hole->even_sts = even_sts;
    hole->off_sts = hole->below_sts - hole->even_sts;
    hole->off_cm = hole->off_sts / (task->sts_per_10cm / 10);
    if (task->repeat > 0) {
        measure_cuts(task, hole);
    }
}

static void sum_up(const hw_holes_task *task, const int *even, hw_holes *found)
{
    for (int k = 0; k < found->count; k++) {
        hw_hole *hole = &found->holes[k];
        complete(task, even[k], hole);
        int off = hole->off_sts < 0 ? -hole->off_sts : hole->off_sts;
        found->cut_sts = larger(found->cut_sts, hole->cut_below + hole->cut_above);
        found->most_off_sts = larger(found->most_off_sts, off);
        if (k > 0) {
            int between = hole->below_sts - found->holes[k - 1].below_sts - found->hole_sts;
            bool least = k == 1 || between < found->least_between;
            found->least_between = least ? between : found->least_between;
            found->most_between = larger(found->most_between, between);
        }
    }
    found->even = found->most_between - found->least_between <= 1;
    found->most_off_cm = found->most_off_sts / (task->sts_per_10cm / 10);
}

hw_status hw_holes_plan(const hw_holes_task *task, hw_arena *arena, hw_holes *out, hw_err *err)
{
    assert(task->holes > 0 && task->holes <= HW_MAX_HOLES && task->hole_sts > 0);
    assert(task->sts > 0 && task->sts <= HW_MAX_STS && task->sts_per_10cm > 0);
    assert(task->repeat == 0 || (task->gap >= 0 && task->gap < task->repeat));
    hw_holes found = {
        .side = task->side,
        .count = task->holes,
        .hole_sts = task->hole_sts,
        .end_sts = end_sts_of(task),
        .whole_sts = task->repeat > 0 ? task->gap : 0,
    };
    int even[HW_MAX_HOLES]; /* stitches below each hole at its even place */
    hw_status status = check_room(task, found.end_sts, err);
    if (status != HW_OK) {
        return status;
    }
    found.holes = hw_arena_get(arena, (size_t)task->holes, sizeof *found.holes);
    if (found.holes == NULL) {
        return HW_ERR_NOMEM;
    }
    even_places(task, found.end_sts, even);
    if (task->repeat > 0) {
        status = hw_holegaps_choose(task, even, arena, found.holes, err);
    } else {
        for (int k = 0; k < task->holes; k++) {
            found.holes[k].below_sts = even[k];
        }
    }
    if (status == HW_OK) {
        sum_up(task, even, &found);
        *out = found;
    }
    return status;
}

/* From the fold to behind so many rows of the face, cm: plain, band and plain again. */
static double face_distance_cm(const hw_hem *hem, const hw_gauge *gauge, int rows)
{
    int below = rows < hem->below_rows ? rows : hem->below_rows;
    int band = rows - below < hem->band_rows ? rows - below : hem->band_rows;
    int above = rows - below - band;
    return hw_gauge_length_cm(&gauge[HW_MAIN], below + above) +
           hw_gauge_length_cm(&gauge[HW_BAND], band);
}

/* How high a row of the facing lies: held at the fold and where the band is joined, a facing that
 * is less deep than the face is stretched, and gives the face a bow. Half-way between its own
 * height and that of rows stretched evenly to the face's depth it is least wrong. */
static double facing_row_cm(const hw_hem *hem)
{
    return (hem->facing_cm + hem->face_cm) / 2 / hem->facing_rows;
}

hw_hole_rows hw_holes_rows(const hw_hem *hem, const hw_gauge *gauge)
{
    assert(hem->face_rows > 0 && hem->facing_rows > 0);
    int face = (hem->face_rows + 1) / 2;
    double face_cm = face_distance_cm(hem, gauge, face);
    int most = larger(hem->facing_rows - 1, 0);
    int nearest = larger(hw_num_nearest(face_cm / facing_row_cm(hem)), 1);
    int facing = nearest < most ? nearest : most;
    return (hw_hole_rows){
        .face_to_fold = face,
        .facing_to_fold = facing,
        .face_row = hem->face_rows - face + 1,
        .facing_row = hem->face_rows + hem->fold_rows + facing + 1,
        .face_cm = face_cm,
        .facing_cm = facing * facing_row_cm(hem),
    };
}
