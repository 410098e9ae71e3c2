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
#include "core/safety.h"
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

/* The motif of a band or a trim: drawn in the project, or in a file that it names. */
typedef struct {
    hw_reference file;    /* name NULL: the project draws it */
    hw_motif_input own;   /* of the project: the chart, where it draws one, and the gap */
    hw_motif_input drawn; /* of the file; filled in by the shell */
    int card_start;       /* 1-based column of the card's first motif; 0: not punched yet */
} hw_motif_choice;

/* A band that is not the garment's hem: the hem of some pieces, or a band higher up. */
typedef struct {
    const char *name;
    const char **on; /* names of pieces */
    int on_count;
    hw_motif_choice motif;
    bool has_hem; /* it is these pieces' own folded hem */
    hw_hem_input hem;
    double above_fold_cm;     /* higher up: from the fold to its first row; 0: the next says it */
    double below_underarm_cm; /* from its last row up to the underarm; -1: not said */
    int line;
} hw_band_input;

/* What a project says of one of the garment's trims. */
typedef struct {
    const char *name;
    bool has_motif; /* else it is plain */
    hw_motif_choice motif;
    hw_gauge_input gauge; /* count 0: as the band, or as the plain fabric where it is plain */
    bool has_hem;
    hw_hem_input hem; /* neither depth nor rows: the garment's depth */
    int buttonholes;  /* 0: none */
    int buttonhole_sts;
    int line;
} hw_trim_input;

/* A yarn as it is bought. */
typedef struct {
    double ball_g; /* 0: not known */
    double ball_m; /* metres in a ball; 0: not known */
    int unravelled_sts;
    double unravelled_m; /* what so many stitches of plain fabric took; 0: not measured */
} hw_yarn_input;

typedef struct {
    const char *title;
    hw_show show;
    hw_reference references[HW_DATA_COUNT];
    hw_gauge_input gauge[HW_FABRIC_COUNT];
    bool has_chart;       /* the project draws its own */
    hw_motif_input motif; /* the project's gap wins over the motif file's */
    hw_hem_input hem;
    hw_band_input *bands; /* other bands */
    int band_count;
    hw_trim_input *trims;
    int trim_count;
    bool has_yarn;
    hw_yarn_input yarn[HW_COLOUR_COUNT]; /* main yarn: background; contrast */
    double reserve_percent;
    bool buttons, sleepwear;
    hw_cord cords[HW_CORD_PLACES];
    bool short_rows;  /* for shoulders, in place of binding off */
    hw_side start;    /* of the bed, where the carriage is before row 1 of a piece */
    bool either_side; /* the second yarn may be put in and taken out at either side */
    bool in_rounds;   /* hand knitting alone */
    int in_rounds_line;
    hw_sizes body;     /* names, ages, body measurements given here */
    hw_sizes finished; /* the same names; finished measurements given here */
    const hw_ease_change *ease;
    int ease_count;
    hw_choices choices;
    int card_start; /* 1-based column at which the card's first motif starts; 0: not punched yet */

    hw_reference knitted_file; /* measured pieces: a workbook or a table */

    /* What the references name; filled in by the shell. */
    hw_knitted_list knitted;  /* count 0: none */
    const char *garment_path; /* where the garment was read; NULL: nowhere */
    const char *knitted_path; /* where they were read, as seen from here; NULL: nowhere */
    hw_machine machine;
    hw_garment garment;
    hw_sizes table; /* count 0: none */
    hw_motif_input drawn;

    /* What the command line asks for beside it; filled in by the shell. */
    const hw_motif_input *others; /* motifs to try instead */
    int other_count;
    int only_size;        /* rows and shaping of this size alone, from 1; 0: of all */
    double ease_range_cm; /* how far to try other ease; 0: the usual range */
} hw_project;

#endif
