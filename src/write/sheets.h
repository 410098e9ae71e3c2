/* The tables of a plan, one function each; cells.c puts them together.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_SHEETS_H
#define HW_WRITE_SHEETS_H

#include "write/grid.h"

/* What every sheet is made from. */
typedef struct {
    const hw_plan *plan;
    const char *about; /* the band that it shows, for the title; NULL: the hem or all of them */
    hw_arena *arena;
    hw_grid *grid;
} hw_sheet;

/*
 * Fill one table.
 *
 * Given:     sheet     plan and arena are set, grid is the caller's and not yet begun
 * Note:      failures stay in the grid until hw_grid_finish
 */
void hw_sheet_sizes(const hw_sheet *sheet);
void hw_sheet_hem(const hw_sheet *sheet);
void hw_sheet_bands(const hw_sheet *sheet);
void hw_sheet_outline(const hw_sheet *sheet);
void hw_sheet_shaping(const hw_sheet *sheet);
void hw_sheet_trims(const hw_sheet *sheet);
void hw_sheet_making(const hw_sheet *sheet);
void hw_sheet_yarn(const hw_sheet *sheet);
void hw_sheet_rowplans(const hw_sheet *sheet);
void hw_sheet_chart(const hw_sheet *sheet);
void hw_sheet_card(const hw_sheet *sheet);
void hw_sheet_alternatives(const hw_sheet *sheet);
void hw_sheet_costs(const hw_sheet *sheet);
void hw_sheet_gauge(const hw_sheet *sheet);
void hw_sheet_tolerance(const hw_sheet *sheet);
void hw_sheet_measured(const hw_sheet *sheet);
void hw_sheet_notes(const hw_sheet *sheet);
void hw_sheet_basis(const hw_sheet *sheet);

/* Whether pieces stand on the needles of a bed, and are not knitted in the hand. */
bool hw_sheet_on_bed(const hw_sheet *sheet);

/* Whether rows and shaping of a size are shown: of all, or of the one that was asked for. */
bool hw_sheet_shows(const hw_plan *plan, int size);

/* Parts of the garment that have a band in their hems each, at least 1; and the same sheet of one
 * of them, counted from 0: its plan is that part's. */
int hw_sheet_parts(const hw_sheet *sheet);
hw_sheet hw_sheet_part(const hw_sheet *sheet, int part);

/* What a part is called, above its rows: "cuff: left sleeve, right sleeve"; NULL for refused
 * memory. */
char *hw_sheet_part_name(const hw_sheet *sheet, int part);

/* Add a section that says how a table is read, a paragraph to each text. */
void hw_sheet_reading(const hw_sheet *sheet, const char *const *texts, int count);

/* Add a section that tells whose left and right a name's are; none where no name has one. */
void hw_sheet_whose_side(const hw_sheet *sheet);

/* The first line of a table: the garment's name, and what the table holds. */
void hw_sheet_title(const hw_sheet *sheet, const char *what);

/* The line of heads above numbers that differ from size to size, from the second column on. */
void hw_sheet_size_heads(const hw_sheet *sheet);

/* Begin a table with a column for labels and one for each size: title and heads. */
void hw_sheet_by_size(const hw_sheet *sheet, const char *name, const char *what);

/* "seam front right to back left", with other words before it; NULL when memory is refused. */
char *hw_sheet_seam_name(const hw_sheet *sheet, const char *before, int seam);

/* One row of lengths, or two of them where both units are shown. */
typedef struct {
    const char *label; /* without the unit */
    const double *cm;  /* [count] */
    int count;         /* [1, HW_MAX_SIZES] */
    hw_cell_style style;
} hw_sheet_lengths;

/* Add rows for lengths; the unit stands in the label: cm to a tenth, inches to an eighth. */
void hw_sheet_length_rows(const hw_sheet *sheet, const hw_sheet_lengths *lengths);

/* How a gauge is shown: "in 10 cm", or "in 4 in" where inches alone are, and the factor from the
 * one to the other. */
const char *hw_sheet_per(const hw_sheet *sheet);
double hw_sheet_per_factor(const hw_sheet *sheet);

/* The kind of a note in words: "remark", "warning", "safety". */
const char *hw_sheet_note_kind(hw_note_kind kind);

/* Columns that a length takes where units stand beside each other: 1 or 2. */
int hw_sheet_units(const hw_sheet *sheet);

/* Put the heads of such columns: "depth, cm" and "depth, in". */
void hw_sheet_length_heads(const hw_sheet *sheet, int column, const char *label);

/* Put one length into such columns. */
void hw_sheet_length(const hw_sheet *sheet, int column, hw_cell_style style, double cm);

#endif
