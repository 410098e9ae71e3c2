/* A project as its maker wrote it down, with the data files that it names read in.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_PROJECT_H
#define HW_CORE_PROJECT_H

#include "core/bed.h"
#include "core/garment.h"
#include "core/gauge.h"
#include "core/grade.h"
#include "core/hem.h"
#include "core/knitted.h"
#include "core/motif.h"
#include "core/units.h"

/* Kinds of data file that a project can name, in the order of the folders under data/. */
typedef enum {
    HW_DATA_MACHINE,
    HW_DATA_GARMENT,
    HW_DATA_SIZES,
    HW_DATA_MOTIF,
    HW_DATA_COUNT
} hw_data;

/* A name in the project that stands for a data file. */
typedef struct {
    const char *name; /* NULL: none is named */
    int line, column;
} hw_reference;

/* A motif as a file or a project gives it. */
typedef struct {
    hw_chart chart;
    int gap;
    bool has_gap;
} hw_motif_input;

typedef struct {
    const char *title;
    hw_show show;
    hw_reference references[HW_DATA_COUNT];
    hw_gauge_input gauge[HW_FABRIC_COUNT];
    bool has_chart;       /* the project draws its own */
    hw_motif_input motif; /* the project's gap wins over the motif file's */
    hw_hem_input hem;
    hw_sizes body;     /* names, ages, body measurements given here */
    hw_sizes finished; /* the same names; finished measurements given here */
    const hw_ease_change *ease;
    int ease_count;
    hw_choices choices;
    int card_start; /* 1-based column at which the card's first motif starts; 0: not punched yet */

    hw_reference knitted_file; /* measured pieces: a workbook or a table */

    /* What the references name; filled in by the shell. */
    hw_knitted_list knitted;  /* count 0: none */
    const char *knitted_path; /* where they were read, as seen from here; NULL: nowhere */
    hw_machine machine;
    hw_garment garment;
    hw_sizes table; /* count 0: none */
    hw_motif_input drawn;

    /* What the command line asks for beside it; filled in by the shell. */
    const hw_motif_input *others; /* motifs to try instead */
    int other_count;
    double ease_range_cm; /* how far to try other ease; 0: the usual range */
} hw_project;

#endif
