/* The table of rows: for each piece and size a block of runs, to be read line by line.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_SHEETROWS_H
#define HW_WRITE_SHEETROWS_H

#include "write/rowwords.h"
#include "write/sheets.h"

/*
 * Fill the table "Rows".
 *
 * Given:     sheet     plan (for its title), arena and grid are set
 *            blocks    count of them, at least one, all hand-knitted or all not
 * Note:      failures stay in the grid until hw_grid_finish; what does not come out in a block's
 *            sides stands above its rows. The columns of a bed and of hand knitting differ, and
 * where some piece is knitted in rounds there is one more.
 */
void hw_sheet_rows(const hw_sheet *sheet, const hw_row_block *blocks, int count);

#endif
