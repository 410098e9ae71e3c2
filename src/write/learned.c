/* Gauges before and after, and in which size which count would be another.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/learned.h"

#include "write/grid.h"

enum { GAUGE_COLUMNS = 8, TABLES = 2 };

static void gauge_row(hw_grid *grid, const hw_plan *before, const hw_plan *after, int at)
{
    static const char *const ways[] = { [HW_ACROSS] = "stitches", [HW_UP] = "rows" };
    hw_fabric fabric = (hw_fabric)(at / HW_WAY_COUNT);
    int way = at % HW_WAY_COUNT;
    const hw_gauge_side *sides[] = { &before->gauge[fabric].sides[way],
        &after->gauge[fabric].sides[way] };
    hw_grid_line(grid, HW_STYLE_LABEL, hw_fabric_name(fabric));
    hw_grid_text(grid, 1, HW_STYLE_PLAIN, ways[way]);
    for (int k = 0; k < 2; k++) {
        int column = 2 + 3 * k;
        hw_grid_number(grid, column, k == 0 ? HW_STYLE_PLAIN : HW_STYLE_KEY, sides[k]->per_10cm, 2);
        if (sides[k]->has_interval) {
            hw_grid_number(grid, column + 1, HW_STYLE_PLAIN, sides[k]->low, 2);
            hw_grid_number(grid, column + 2, HW_STYLE_PLAIN, sides[k]->high, 2);
        }
    }
}

static void gauges(hw_grid *grid, const hw_plan *before, const hw_plan *after)
{
    static const char *const heads[GAUGE_COLUMNS] = { "fabric", "counted", "in 10 cm by swatches",
        "19 in 20 from", "to", "with the pieces", "19 in 20 from", "to" };
    hw_grid_line(grid, HW_STYLE_TITLE, "what the measured pieces say of the gauge");
    hw_grid_row(grid);
    for (int c = 0; c < GAUGE_COLUMNS; c++) {
        hw_grid_text(grid, c, HW_STYLE_HEAD, heads[c]);
    }
    for (int at = 0; at < HW_FABRIC_COUNT * HW_WAY_COUNT; at++) {
        gauge_row(grid, before, after, at);
    }
}

/* What is told of one piece in one size. */
typedef struct {
    int planned_sts, chosen_sts, knitted_sts; /* knitted: 0 where it was not */
} change;

static change change_of(const hw_plan *before, const hw_plan *after, int at)
{
    int knitted_sts = after->fixed_sts[at];
    const hw_grading *now = knitted_sts > 0 ? &after->free_grading : &after->grading;
    return (change){ before->grading.fits[at].visible_sts, now->fits[at].visible_sts, knitted_sts };
}

static void put_planned(hw_grid *grid, int column, const change *c)
{
    hw_grid_count(grid, column, HW_STYLE_PLAIN, c->planned_sts);
}

static void put_chosen(hw_grid *grid, int column, const change *c)
{
    hw_grid_count(grid, column, HW_STYLE_PLAIN, c->chosen_sts);
}

static void put_advice(hw_grid *grid, int column, const change *c)
{
    bool knitted = c->knitted_sts > 0;
    if (c->chosen_sts == (knitted ? c->knitted_sts : c->planned_sts)) {
        hw_grid_text(grid, column, HW_STYLE_PLAIN, "nothing");
        return;
    }
    hw_grid_text(
        grid, column, HW_STYLE_WARNING, knitted ? "knitted: keeps its count" : "would change");
}

/* One piece: the count planned, the one that would be chosen now, and what that asks for. */
static void piece_rows(hw_grid *grid, const hw_plan *before, const hw_plan *after, int piece)
{
    static const struct {
        const char *label;
        void (*put)(hw_grid *grid, int column, const change *c);
    } rows[] = {
        { "planned stitches", put_planned },
        { "stitches chosen with the pieces", put_chosen },
        { "what to do", put_advice },
    };
    const hw_garment *garment = &after->project->garment;
    hw_grid_section(grid, garment->pieces[piece].name);
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        hw_grid_line(grid, HW_STYLE_LABEL, rows[r].label);
        for (int i = 0; i < after->finished.count; i++) {
            change c = change_of(before, after, i * garment->piece_count + piece);
            rows[r].put(grid, 1 + i, &c);
        }
    }
}

static void counts(hw_grid *grid, const hw_plan *before, const hw_plan *after)
{
    hw_grid_line(grid, HW_STYLE_TITLE, "what would change in which size");
    hw_grid_line(grid, HW_STYLE_HEAD, "size");
    for (int i = 0; i < after->finished.count; i++) {
        hw_grid_text(grid, 1 + i, HW_STYLE_HEAD, after->finished.names[i]);
    }
    for (int k = 0; k < after->whole->parts.count; k++) {
        const hw_plan *part = &after->whole->plans[k];
        for (int p = 0; p < part->project->garment.piece_count; p++) {
            piece_rows(grid, &before->whole->plans[k], part, p);
        }
    }
}

hw_status hw_learned_tables(
    const hw_plan *before, const hw_plan *after, hw_arena *arena, hw_tables *out)
{
    hw_table *tables = hw_arena_get(arena, TABLES, sizeof *tables);
    if (tables == NULL) {
        return HW_ERR_NOMEM;
    }
    static void (*const fills[TABLES])(
        hw_grid *, const hw_plan *, const hw_plan *) = { gauges, counts };
    static const char *const names[TABLES] = { "Gauge", "Counts" };
    for (int t = 0; t < TABLES; t++) {
        hw_grid grid;
        hw_grid_begin(&grid, arena, names[t], t == 0 ? GAUGE_COLUMNS : 1 + after->finished.count);
        grid.table.head_rows = 2;
        grid.table.head_columns = 1 + (t == 0);
        fills[t](&grid, before, after);
        hw_status status = hw_grid_finish(&grid, &tables[t]);
        if (status != HW_OK) {
            return status;
        }
    }
    *out = (hw_tables){ .tables = tables, .count = TABLES };
    return HW_OK;
}
