/* Catching stitches: the fewest that break the long floats, set evenly and not above each other.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>
#include <string.h>

#include "core/edit.h"
#include "core/num.h"

/* Places are weighed by whole numbers: one stitch above another weighs more than any unevenness,
 * for the squares of all stretches of a run are less than the square of a row. */
enum {
    ABOVE_WEIGHT = HW_MAX_CHART_COLUMNS * HW_MAX_CHART_COLUMNS,
    NEVER = 1 << 30,
    MOST_PASSES = 8,                                                    /* over all rows */
    MOST_CATCHES = HW_MAX_CHART_COLUMNS / (HW_EDIT_LEAST_FLOAT + 1) + 1 /* in one run */
};

typedef struct {
    int width, rows, longest;
    const hw_chart *chart;  /* as it was */
    unsigned char *cells;   /* as it becomes */
    unsigned char *catches; /* where stitches were changed */
    int *cost;              /* [MOST_CATCHES * width]: the best with the n-th stitch at a place */
    int *before;            /* the same: where the one before it stands then */
} work;

/* A run of one colour in a row, taken round; between stitches of the other colour. */
typedef struct {
    int row, start, sts;
    unsigned char colour;
} run;

static int cell(const work *w, int row, int column)
{
    return row * w->width + hw_num_mod(column, w->width);
}

static bool is(const work *w, int row, int column, unsigned char colour)
{
    return w->chart->cells[cell(w, row, column)] == colour;
}

/* The fewest single stitches that leave no stretch longer: k stitches make k + 1 stretches, so that
 * sts <= k + (k + 1) longest. */
static int needed(int sts, int longest)
{
    return sts / (longest + 1);
}

/* What a stitch at a place of the run costs for the rows next to it. */
static int weight(const work *w, const run *r, int place)
{
    int column = r->start + place;
    int above = r->row > 0 ? w->catches[cell(w, r->row - 1, column)] : 0;
    int below = r->row + 1 < w->rows ? w->catches[cell(w, r->row + 1, column)] : 0;
    return (above + below) * ABOVE_WEIGHT;
}

/* The best place before this one for the stitch before, and what it comes to. */
static int reach(const work *w, int n, int place, int *from)
{
    int best = NEVER;
    for (int stretch = 1; stretch <= w->longest && stretch <= place; stretch++) {
        int last = place - stretch - 1;
        int so_far = n == 0 ? (last == -1 ? 0 : NEVER)
                            : (last >= 0 ? w->cost[(n - 1) * w->width + last] : NEVER);
        if (so_far < NEVER && so_far + stretch * stretch < best) {
            best = so_far + stretch * stretch;
            *from = last;
        }
    }
    return best;
}

/* The best end of the run for the last of `count` stitches. */
static int best_last(const work *w, const run *r, int count)
{
    int best = NEVER;
    int found = -1;
    for (int stretch = 1; stretch <= w->longest && stretch < r->sts; stretch++) {
        int place = r->sts - 1 - stretch;
        int so_far = w->cost[(count - 1) * w->width + place];
        if (so_far < NEVER && so_far + stretch * stretch < best) {
            best = so_far + stretch * stretch;
            found = place;
        }
    }
    return found;
}

static void weigh(work *w, const run *r, int count)
{
    for (int n = 0; n < count; n++) {
        for (int place = 0; place < r->sts; place++) {
            int i = n * w->width + place;
            int so_far = reach(w, n, place, &w->before[i]);
            w->cost[i] = so_far < NEVER ? so_far + weight(w, r, place) : NEVER;
        }
    }
}

/* Sets the stitches of a run anew; those that it had are taken out before. */
static int catch_run(work *w, const run *r)
{
    int count = needed(r->sts, w->longest);
    if (count == 0) {
        return 0;
    }
    for (int place = 0; place < r->sts; place++) {
        int i = cell(w, r->row, r->start + place);
        w->catches[i] = 0;
        w->cells[i] = r->colour;
    }
    weigh(w, r, count);
    int place = best_last(w, r, count);
    for (int n = count - 1; n >= 0; n--) {
        assert(place >= 0);
        int i = cell(w, r->row, r->start + place);
        w->catches[i] = 1;
        w->cells[i] = r->colour == HW_CONTRAST ? HW_BACKGROUND : HW_CONTRAST;
        place = w->before[n * w->width + place];
    }
    return count;
}

/* All runs of a row; a row of one colour has none. */
static int catch_row(work *w, int row)
{
    int added = 0;
    for (int column = 0; column < w->width; column++) {
        unsigned char colour = w->chart->cells[cell(w, row, column)];
        if (is(w, row, column - 1, colour)) {
            continue;
        }
        run r = { .row = row, .start = column, .sts = 1, .colour = colour };
        while (is(w, row, column + r.sts, colour)) {
            r.sts++;
        }
        added += catch_run(w, &r);
    }
    return added;
}

/* From the bottom row up, again and again until nothing moves. */
static hw_status catch_rows(work *w, hw_arena *arena, int *added)
{
    size_t all = (size_t)w->width * (size_t)w->rows;
    unsigned char *last = hw_arena_get(arena, all, 1);
    if (last == NULL) {
        return HW_ERR_NOMEM;
    }
    bool moved = true;
    for (int pass = 0; pass < MOST_PASSES && moved; pass++) {
        memcpy(last, w->catches, all);
        *added = 0;
        for (int row = w->rows - 1; row >= 0; row--) {
            *added += catch_row(w, row);
        }
        moved = memcmp(last, w->catches, all) != 0;
    }
    return HW_OK;
}

static hw_status make_room(work *w, hw_arena *arena, hw_arena *own)
{
    size_t all = (size_t)w->width * (size_t)w->rows;
    size_t places = (size_t)MOST_CATCHES * (size_t)w->width;
    w->cells = hw_arena_get(arena, all, 1);
    w->catches = hw_arena_get(own, all, 1);
    w->cost = hw_arena_get(own, places, sizeof *w->cost);
    w->before = hw_arena_get(own, places, sizeof *w->before);
    if (w->cells == NULL || w->catches == NULL || w->cost == NULL || w->before == NULL) {
        return HW_ERR_NOMEM;
    }
    memcpy(w->cells, w->chart->cells, all);
    return HW_OK;
}

hw_status hw_edit_catch(
    const hw_edit_catching *task, hw_arena *arena, hw_chart *out, int *added, hw_err *err)
{
    const hw_chart *chart = task->chart;
    if (task->longest < HW_EDIT_LEAST_FLOAT) {
        return hw_err_set(err, HW_ERR_RANGE,
            "floats of %d cannot be had by catching stitches: give %d stitches or more",
            task->longest, HW_EDIT_LEAST_FLOAT);
    }
    work w = { .width = chart->width,
        .rows = chart->rows,
        .longest = task->longest < HW_MAX_CHART_COLUMNS ? task->longest : HW_MAX_CHART_COLUMNS,
        .chart = chart };
    hw_arena own;
    int count = 0;
    hw_arena_init(&own, &arena->mem, arena->block_size);
    hw_status status = make_room(&w, arena, &own);
    if (status == HW_OK) {
        status = catch_rows(&w, &own, &count);
    }
    hw_arena_release(&own);
    if (status == HW_OK) {
        *out = (hw_chart){
            .name = chart->name, .width = chart->width, .rows = chart->rows, .cells = w.cells
        };
        if (added != NULL) {
            *added = count;
        }
    }
    return status;
}
