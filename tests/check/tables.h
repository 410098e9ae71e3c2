/* Looking things up in a plan's tables.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_TABLES_H
#define HW_TESTS_TABLES_H

#include "write/cells.h"

/* The table of that name; ends the test where there is none. */
const hw_table *tables_named(const hw_tables *tables, const char *name);

/* The row whose first cell is this text, from a row on; -1 where there is none. */
int tables_find(const hw_table *table, const char *label, int from);

/* The same, and where there is none the test ends. */
int tables_row(const hw_table *table, const char *label, int from);

/* A cell that holds just this text, or just this count. */
void tables_text(const hw_cell *cell, const char *text);
void tables_count(const hw_cell *cell, int count);

#endif
