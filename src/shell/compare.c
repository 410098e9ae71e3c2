/* The plan made once more with motifs to try beside it; its table of alternatives printed.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/compare.h"

#include <string.h>

#include "core/calculate.h"
#include "core/num.h"
#include "shell/load.h"
#include "write/text.h"

enum { MOST_EASE_CM = 20 };

/* The options: how far ease is tried, how many rows are printed. */
static hw_status read_options(const hw_opts *opts, hw_project *project, int *most, hw_err *err)
{
    const char *ease = opts->values[HW_OPT_EASE];
    const char *rows = opts->values[HW_OPT_MOST];
    if (ease != NULL) {
        double cm = 0;
        hw_status status = hw_length_parse(ease, strlen(ease), HW_UNIT_CM, &cm);
        if (status != HW_OK || !(cm > 0 && cm <= MOST_EASE_CM)) {
            return hw_err_set(err, HW_ERR_USAGE,
                "`--ease %.40s`: give a length up to %d cm, such as 3cm", ease, MOST_EASE_CM);
        }
        project->ease_range_cm = cm;
    }
    *most = HW_MAX_STS;
    if (rows != NULL) {
        size_t used = 0;
        hw_status status = hw_num_parse_count(rows, strlen(rows), most, &used);
        if (status != HW_OK || used != strlen(rows) || *most < 1) {
            return hw_err_set(
                err, HW_ERR_USAGE, "`--most %.40s`: give a whole number from 1", rows);
        }
    }
    return HW_OK;
}

/* The row of the plan itself, among the rows of the table. */
static int planned_row(const hw_plan *plan, const hw_table *table)
{
    int row = table->head_rows;
    while (plan->alternatives.list[row - table->head_rows].kind != HW_ALTER_NOTHING) {
        row++;
    }
    return row;
}

/* So many rows from the top; the plan itself stays, as the last of them where it lies below. */
static void shorten(const hw_plan *plan, int most, hw_table *table)
{
    int rows = table->head_rows + most;
    if (rows >= table->rows) {
        return;
    }
    int planned = planned_row(plan, table);
    if (planned >= rows) {
        size_t row_size = (size_t)table->columns * sizeof *table->cells;
        memcpy(table->cells + rows * table->columns, table->cells + planned * table->columns,
            row_size);
        rows++;
    }
    table->rows = rows;
}

static hw_status print(const hw_plan *plan, int most, hw_arena *arena, hw_buf *buf)
{
    hw_tables all;
    hw_status status = hw_cells_plan(plan, arena, &all);
    for (int i = 0; status == HW_OK && i < all.count; i++) {
        hw_table *table = &all.tables[i];
        if (strcmp(table->name, "Alternatives") == 0) {
            shorten(plan, most, table);
            status = hw_text_tables(&(hw_tables){ .tables = table, .count = 1 }, NULL, buf);
        }
    }
    return status;
}

hw_status hw_compare_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    hw_project project;
    hw_plan plan;
    hw_load_motif_list motifs = { 0 };
    int most = 0;
    hw_status status = hw_load_project(opts->args[0], arena, &project, err);
    if (status == HW_OK) {
        status = read_options(opts, &project, &most, err);
    }
    if (status == HW_OK) {
        status = hw_load_motifs(opts->values[HW_OPT_MOTIFS], arena, &motifs, err);
    }
    if (status != HW_OK) {
        return status;
    }
    project.others = motifs.list;
    project.other_count = motifs.count;
    status = hw_calculate_plan(&project, arena, &plan, err);
    if (status != HW_OK) {
        hw_load_blame(&project, opts->args[0], err);
        return status;
    }
    status = print(&plan, most, arena, buf);
    return status == HW_OK ? HW_OK
                           : hw_err_set(err, status, "%s", "there is not enough memory to compare");
}
