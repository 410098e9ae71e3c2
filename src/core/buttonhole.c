/* Even places by division with remainder; the best gaps of a motif by dynamic programming.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/buttonhole.h"

#include <assert.h>

#include "core/num.h"

/* The gaps between figures, and the best ways to put the first holes into the first of them. */
typedef struct {
    const hw_holes_task *task;
    int gaps;
    int even[HW_MAX_HOLES]; /* stitches below each hole at its even place */
    long long *cost; /* [gaps]: of the holes so far, the last of them in this gap; -1: none */
    long long *next; /* [gaps]: the same with one hole more */
    int *before;     /* [holes * gaps]: the gap of the hole below */
} search;

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

/* Where a hole lies in a gap: as near to its even place as the gap allows, or centred on it. */
static int place_in(const hw_holes_task *task, int gap, int even)
{
    int start = gap_start(task, gap);
    int spare = task->gap - task->hole_sts;
    if (spare < 0) {
        int more_below = start - (-spare + 1) / 2; /* an odd stitch is cut below, or above */
        int more_above = start - -spare / 2;
        return even <= more_below ? more_below : more_above;
    }
    int nearest = even < start ? start : even;
    return nearest > start + spare ? start + spare : nearest;
}

/* The squared distance of a hole in a gap from its even place; -1: it would pass the band's end. */
static long long off_squared(const search *s, int hole, int gap)
{
    int place = place_in(s->task, gap, s->even[hole]);
    long long off = place - s->even[hole];
    bool inside = place >= 0 && place + s->task->hole_sts <= s->task->sts;
    return inside ? off * off : -1;
}

/* Put one more hole into each gap. Places rise with the gaps, so the gaps in which the hole below
 * leaves room for this one are the first so many, and the best of them is kept while walking. */
static void add_hole(search *s, int hole)
{
    int room = 0;
    int best = -1;
    for (int gap = 0; gap < s->gaps; gap++) {
        int place = place_in(s->task, gap, s->even[hole]);
        while (
            room < gap && place_in(s->task, room, s->even[hole - 1]) + s->task->hole_sts < place) {
            if (s->cost[room] >= 0 && (best < 0 || s->cost[room] < s->cost[best])) {
                best = room;
            }
            room++;
        }
        long long off = off_squared(s, hole, gap);
        s->next[gap] = best < 0 || off < 0 ? -1 : s->cost[best] + off;
        s->before[hole * s->gaps + gap] = best;
    }
    long long *spare = s->cost;
    s->cost = s->next;
    s->next = spare;
}

static hw_status too_few_gaps(const search *s, hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOFIT,
        "%d buttonholes of %d stitches do not find %d places between %d figures of a motif of %d "
        "stitches: ask for fewer, or leave the motif out of this band",
        s->task->holes, s->task->hole_sts, s->task->holes, s->task->motifs, s->task->repeat);
}

/* The gaps of the best way, from the last hole down. */
static hw_status choose_gaps(search *s, hw_hole *holes, hw_err *err)
{
    for (int gap = 0; gap < s->gaps; gap++) {
        s->cost[gap] = off_squared(s, 0, gap);
    }
    for (int hole = 1; hole < s->task->holes; hole++) {
        add_hole(s, hole);
    }
    int best = -1;
    for (int gap = 0; gap < s->gaps; gap++) {
        if (s->cost[gap] >= 0 && (best < 0 || s->cost[gap] < s->cost[best])) {
            best = gap;
        }
    }
    if (best < 0) {
        return too_few_gaps(s, err);
    }
    for (int hole = s->task->holes - 1; hole >= 0; hole--) {
        holes[hole].gap_after = best + 1;
        holes[hole].below_sts = place_in(s->task, best, s->even[hole]);
        best = hole > 0 ? s->before[hole * s->gaps + best] : 0;
    }
    return HW_OK;
}

static hw_status place_in_gaps(search *s, hw_arena *arena, hw_hole *holes, hw_err *err)
{
    s->gaps = s->task->motifs > 0 ? s->task->motifs - 1 : 0;
    size_t gaps = (size_t)s->gaps;
    s->cost = hw_arena_get(arena, gaps, sizeof *s->cost);
    s->next = hw_arena_get(arena, gaps, sizeof *s->next);
    s->before = hw_arena_get(arena, gaps * (size_t)s->task->holes, sizeof *s->before);
    if (s->cost == NULL || s->next == NULL || s->before == NULL) {
        return HW_ERR_NOMEM;
    }
    return choose_gaps(s, holes, err);
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

static void complete(const search *s, int k, hw_hole *hole)
{
    const hw_holes_task *task = s->task;
    hole->above_sts = task->sts - hole->below_sts - task->hole_sts;
    hole->even_sts = s->even[k];
    hole->off_sts = hole->below_sts - hole->even_sts;
    hole->off_cm = hole->off_sts / (task->sts_per_10cm / 10);
    if (task->repeat > 0) {
        measure_cuts(task, hole);
    }
}

static void sum_up(const search *s, hw_holes *found)
{
    for (int k = 0; k < found->count; k++) {
        hw_hole *hole = &found->holes[k];
        complete(s, k, hole);
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
    found->most_off_cm = found->most_off_sts / (s->task->sts_per_10cm / 10);
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
    search s = { .task = task };
    hw_status status = check_room(task, found.end_sts, err);
    if (status != HW_OK) {
        return status;
    }
    found.holes = hw_arena_get(arena, (size_t)task->holes, sizeof *found.holes);
    if (found.holes == NULL) {
        return HW_ERR_NOMEM;
    }
    even_places(task, found.end_sts, s.even);
    if (task->repeat > 0) {
        status = place_in_gaps(&s, arena, found.holes, err);
    } else {
        for (int k = 0; k < task->holes; k++) {
            found.holes[k].below_sts = s.even[k];
        }
    }
    if (status == HW_OK) {
        sum_up(&s, &found);
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
