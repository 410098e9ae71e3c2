/* Rounds end where the first of a tube's pieces wants more than single stitches.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rounds.h"

#include <limits.h>

#include "core/above.h"

/* Above a hem without an outline there is one row, as in rowing.h. */
enum { PLAIN_ROWS = 1 };

/* One tube in one size. */
typedef struct {
    const hw_plan *plan;
    const hw_tube *tube;
    int size;
    hw_arena *arena;
    hw_err *err;
} finding;

static int place_of(const finding *f, int slice)
{
    return f->size * f->plan->project->garment.piece_count + f->tube->pieces[slice];
}

static hw_draft *draft_of(const finding *f, int slice)
{
    return &f->plan->drafts[place_of(f, slice)];
}

static int least(int a, int b)
{
    return a < b ? a : b;
}

/* The number of a slice's piece in the whole garment. */
static int whole_piece(const finding *f, int slice)
{
    return f->plan->whole->parts.list[f->plan->part].pieces[f->tube->pieces[slice]];
}

/* Rows of which the middle lies no higher than where an edge is sewn to its neighbour. */
static int sewn_rows(const finding *f, int slice, hw_side side)
{
    const hw_draft *draft = draft_of(f, slice);
    int count = f->tube->count;
    int beside = side == HW_LEFT ? (slice + 1) % count : (slice + count - 1) % count;
    hw_tube_edge at = { .garment = &f->plan->whole->project->garment,
        .piece = whole_piece(f, slice),
        .side = side,
        .neighbour = whole_piece(f, beside) };
    double sewn_cm = hw_tube_sewn_cm(&at, &draft->outline.edges[side]);
    int rows = 0;
    while (
        rows < draft->shape.rows && draft->low_cm[rows] + draft->low_cm[rows + 1] <= 2 * sewn_cm) {
        rows++;
    }
    return rows;
}

static bool is_held(const hw_draft *draft, int row)
{
    return hw_shape_holds(&draft->task, HW_LEFT, row) ||
           hw_shape_holds(&draft->task, HW_RIGHT, row);
}

/* Rows below the neck, the top, a shoulder in short rows, and where a neighbour is missing. */
static int most_rounds(const finding *f, int slice)
{
    const hw_draft *draft = draft_of(f, slice);
    int most = least(draft->shape.neck_row, draft->shape.rows);
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        most = least(most, sewn_rows(f, slice, (hw_side)side));
    }
    int row = 0;
    while (row < most && !is_held(draft, row)) {
        row++;
    }
    return row;
}

/* Whether so many rounds keep to the outline. */
static hw_status try_rounds(const finding *f, int slice, int rounds, bool *good)
{
    hw_shape_task task = draft_of(f, slice)->task;
    hw_shape shape = { 0 };
    hw_arena room;
    hw_arena_init(&room, &f->arena->mem, f->arena->block_size);
    task.round_rows = rounds;
    hw_status status = hw_shape_make(&task, &room, &shape, NULL);
    hw_arena_release(&room);
    *good = status == HW_OK;
    return status == HW_ERR_NOMEM ? status : HW_OK;
}

/* The most rounds of one piece. Where n serve, fewer do: rounds are planned one by one from the
 * hem, so fewer are planned alike, and rows have a way from each of them on, as edgerows.c tells.
 * So the number can be found by halving. */
static hw_status find_most(const finding *f, int slice, int *out)
{
    if (!draft_of(f, slice)->drawn) {
        *out = PLAIN_ROWS;
        return HW_OK;
    }
    int serve = 0;
    int past = most_rounds(f, slice) + 1;
    int tried = past - 1;
    while (past - serve > 1) {
        bool good = false;
        hw_status status = try_rounds(f, slice, tried, &good);
        if (status != HW_OK) {
            return status;
        }
        serve = good ? tried : serve;
        past = good ? past : tried;
        tried = serve + (past - serve) / 2;
    }
    *out = serve;
    return HW_OK;
}

/* Draft all pieces with so many rounds; fewer where one of them comes to a point before. */
static hw_status draft_all(const finding *f, int *rounds)
{
    for (int k = 0; k < f->tube->count; k++) {
        hw_draft *draft = draft_of(f, k);
        draft->round_rows = *rounds;
        hw_status status = HW_OK;
        if (draft->drawn) {
            status = hw_above_draft(f->plan, place_of(f, k), f->arena, draft, f->err);
        }
        if (status != HW_OK) {
            return status;
        }
        if (draft->drawn && draft->shape.rows < *rounds) {
            *rounds = draft->shape.rows;
            k = -1; /* all of them again */
        }
    }
    return HW_OK;
}

static hw_status parted_band(const finding *f, const hw_upper_band *upper)
{
    hw_status status = hw_err_set(f->err, HW_ERR_RANGE,
        "size %s: the band `%.40s` has to lie in the same rounds on all pieces that are knitted "
        "together with `%.60s`; name them all under `on`, put the band higher than the rounds go, "
        "or take `in rounds` out",
        f->plan->finished.names[f->size], upper->input->name,
        f->plan->project->garment.pieces[f->tube->pieces[0]].name);
    return hw_err_place(f->err, status, upper->input->line, 0);
}

/* The second yarn has to come round with the first. */
static hw_status check_bands(const finding *f, int rounds)
{
    for (int u = 0; u < f->plan->whole->upper_count; u++) {
        const hw_upper_band *upper = &f->plan->whole->uppers[u];
        int lowest = INT_MAX;
        int highest = -1;
        for (int k = 0; k < f->tube->count; k++) {
            bool on = upper->on[whole_piece(f, k)];
            int row = on ? draft_of(f, k)->uppers[u].first_row : INT_MAX;
            lowest = least(lowest, row);
            highest = row > highest ? row : highest;
        }
        if (lowest < rounds && highest != lowest) {
            return parted_band(f, upper);
        }
    }
    return HW_OK;
}

static hw_status find_tube(const finding *f)
{
    int rounds = INT_MAX;
    hw_status status = HW_OK;
    for (int k = 0; k < f->tube->count && status == HW_OK; k++) {
        int most = 0;
        status = find_most(f, k, &most);
        rounds = least(rounds, most);
    }
    if (status != HW_OK) {
        return hw_err_set(f->err, status, "%s", "there is not enough memory for this plan");
    }
    status = draft_all(f, &rounds);
    return status == HW_OK ? check_bands(f, rounds) : status;
}

hw_status hw_rounds_find(const hw_plan *plan, hw_arena *arena, hw_err *err)
{
    hw_status status = HW_OK;
    int tubes = plan->tubes.count;
    for (int i = 0; i < plan->finished.count * tubes && status == HW_OK; i++) {
        finding f = { plan, &plan->tubes.list[i % tubes], i / tubes, arena, err };
        status = find_tube(&f);
    }
    return status;
}

bool hw_rounds_leave_seams(const hw_plan *plan, int size, const hw_tube *tube)
{
    finding f = { .plan = plan, .tube = tube, .size = size };
    bool left = false;
    for (int k = 0; k < tube->count; k++) {
        const hw_draft *draft = draft_of(&f, k);
        for (int side = 0; side < HW_SIDE_COUNT && draft->drawn; side++) {
            left = left || sewn_rows(&f, k, (hw_side)side) > draft->round_rows + 1;
        }
    }
    return left;
}
