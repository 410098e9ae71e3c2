/* Every key that a file may hold: one table for parsing, range messages and the manual.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_READ_KEYS_H
#define HW_READ_KEYS_H

#include "core/buf.h"

/* A mapping of a file; HW_PART_PROJECT and those from HW_PART_MACHINE_FILE to HW_PART_GARMENT_FILE
 * are whole files. */
typedef enum {
    HW_PART_NONE,
    HW_PART_PROJECT,
    HW_PART_GAUGE,
    HW_PART_FABRIC,
    HW_PART_SWATCH,
    HW_PART_MOTIF,
    HW_PART_HEM,
    HW_PART_SIZES,
    HW_PART_LENGTHS,
    HW_PART_EASE,
    HW_PART_BANDS,
    HW_PART_BAND,
    HW_PART_TRIM_CHOICES,
    HW_PART_TRIM_CHOICE,
    HW_PART_YARN,
    HW_PART_YARN_COLOUR,
    HW_PART_SAFETY,
    HW_PART_CHOICES,
    HW_PART_MACHINE_FILE,
    HW_PART_MOTIF_FILE,
    HW_PART_SIZES_FILE,
    HW_PART_TABLE,
    HW_PART_TABLE_ROW,
    HW_PART_SOURCES,
    HW_PART_SOURCE,
    HW_PART_GARMENT_FILE,
    HW_PART_FINISHED,
    HW_PART_FINISHED_RULE,
    HW_PART_PIECES,
    HW_PART_PIECE,
    HW_PART_OUTLINE,
    HW_PART_CORNER,
    HW_PART_TRIMS,
    HW_PART_TRIM,
    HW_PART_COUNT
} hw_part;

typedef enum {
    HW_KIND_TEXT, /* words on one line */
    HW_KIND_WORD, /* one of `words` */
    HW_KIND_YES_NO,
    HW_KIND_COUNT,   /* a whole number in [least, most] */
    HW_KIND_NUMBER,  /* in [least, most] */
    HW_KIND_LENGTH,  /* in cm, [least, most] */
    HW_KIND_EASE,    /* a length, or a percentage in [-50, 200] */
    HW_KIND_RULE,    /* 0.5 x hem + 2 cm */
    HW_KIND_CHART,   /* a block of text */
    HW_KIND_TEXTS,   /* a list of words */
    HW_KIND_COUNTS,  /* a list of whole numbers in [least, most] */
    HW_KIND_LENGTHS, /* a list of lengths; `between` for one to be filled in */
    HW_KIND_PART,    /* a mapping: `part` */
    HW_KIND_PARTS,   /* a list of mappings: `part` */
    HW_KIND_COUNT_OF
} hw_kind;

typedef struct {
    hw_part in;
    const char *name; /* "*": any name */
    hw_kind kind;
    bool required;
    double least, most; /* for counts, numbers and lengths (cm) */
    hw_part part;       /* for HW_KIND_PART and HW_KIND_PARTS */
    const char *words;  /* for HW_KIND_WORD, parted by '|' */
    const char *help;   /* one line for the manual */
} hw_key;

/* The whole table, in the order of the manual. */
const hw_key *hw_keys_all(int *count);

/* The name of a part for messages and the manual: "hem", "a swatch". */
const char *hw_part_name(hw_part part);

/* The end of the first of several words parted by '|'. */
const char *hw_keys_word_end(const char *word);

/* The kind in words, with its range: "whole number, 1 to 400". Appended to buf. */
void hw_key_show_kind(hw_buf *buf, const hw_key *key);

#endif
