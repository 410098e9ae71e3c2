/* Looking things up in a plan's tables.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tables.h"

#include <check.h>
#include <string.h>

const hw_table *tables_named(const hw_tables *tables, const char *name)
{
    for (int i = 0; i < tables->count; i++) {
        if (strcmp(tables->tables[i].name, name) == 0) {
            return &tables->tables[i];
        }
    }
    ck_abort_msg("no table %s", name);
}

int tables_find(const hw_table *table, const char *label, int from)
{
    for (int r = from; r < table->rows; r++) {
        const hw_cell *cell = hw_cells_at(table, r, 0);
        if (cell->kind == HW_CELL_TEXT && strcmp(cell->text, label) == 0) {
            return r;
        }
    }
    return -1;
}

int tables_row(const hw_table *table, const char *label, int from)
{
    int row = tables_find(table, label, from);
    ck_assert_msg(row >= 0, "%s: no row `%s`", table->name, label);
    return row;
}

void tables_text(const hw_cell *cell, const char *text)
{
    ck_assert_int_eq(cell->kind, HW_CELL_TEXT);
    ck_assert_str_eq(cell->text, text);
}

void tables_count(const hw_cell *cell, int count)
{
    ck_assert_int_eq(cell->kind, HW_CELL_COUNT);
    ck_assert_double_eq_tol(cell->number, count, 1e-12);
}
