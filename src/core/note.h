/* Notes and the basis of the numbers: lists of texts, gathered with one check at the end.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_NOTE_H
#define HW_CORE_NOTE_H

#include "core/buf.h"
#include "core/units.h"

typedef enum { HW_NOTE_REMARK, HW_NOTE_WARNING, HW_NOTE_SAFETY, HW_NOTE_COUNT } hw_note_kind;

/* One thing to know, with what to do about it, in a knitter's words. */
typedef struct {
    hw_note_kind kind;
    const char *text;
} hw_note;

/* Whom a note is on, as long as notes are gathered: all but the last, the last, and what is said of
 * them; body NULL for a note on nobody. */
typedef struct {
    const char *about, *before, *last, *body;
} hw_note_subject;

/* A fact that the numbers rest on. */
typedef struct {
    const char *what;  /* "band gauge" */
    const char *value; /* "28 sts and 40 rows in 10 cm" */
    const char *rule;  /* how it was come by, one line; "" where the mark says it all */
    hw_mark mark;
    const char *source; /* key in data/SOURCES.md, or "" */
} hw_basis;

/* Both lists as they grow; once memory was refused they grow no more. */
typedef struct {
    hw_arena *arena;
    hw_note *notes;
    hw_note_subject *subjects; /* of each note, until they are sorted */
    int note_count, note_room;
    hw_basis *basis;
    int basis_count, basis_room;
    const char *about; /* the part of the garment that notes are on; NULL: all of it */
    bool refused;
} hw_notes;

/* Make the lists ready, as long as they need to be. HW_OK or HW_ERR_NOMEM. */
hw_status hw_notes_init(hw_notes *notes, hw_arena *arena) HW_MUST_USE;

/* Add a note by a printf format, with what it is about before it; none that is there already. */
void hw_notes_say(hw_notes *notes, hw_note_kind kind, const char *format, ...) HW_FORMAT(3, 4);

/*
 * Add a note on a piece, or on another subject: "Front, 4 years: ...". Subjects of which the very
 * same is to be said share one note: "Front and back, 4 years: ...".
 *
 * Given:     subject   lives as long as the notes
 *            format    what stands behind it, with its comma or colon
 */
void hw_notes_of(hw_notes *notes, hw_note_kind kind, const char *subject, const char *format, ...)
    HW_FORMAT(4, 5);

/* Put what concerns safety first, then warnings, then remarks; else the order stays. */
void hw_notes_sort(hw_notes *notes);

/* Add a fact; its texts are kept as they are. A NULL value counts as refused memory. */
void hw_notes_base(hw_notes *notes, hw_basis basis);

/* The text, or that of a buffer, which is given back; "" once memory was refused. NULL counts as
 * refused memory. */
const char *hw_notes_words(hw_notes *notes, const char *text);
const char *hw_notes_keep(hw_notes *notes, hw_buf *buf);

/* Texts of the arena for a length or a number; never NULL: "" once memory was refused. */
const char *hw_notes_length(hw_notes *notes, double cm, hw_show show);
const char *hw_notes_number(hw_notes *notes, double x, int decimals);

/* A gauge as it is shown, for the length that hw_show_per names. */
const char *hw_notes_gauge(hw_notes *notes, double per_10cm, int decimals, hw_show show);

/* "1 stitch", "3 stitches"; of a number of halves "0.5 stitch", "1 stitch", "1.5 stitches". */
const char *hw_notes_counted(hw_notes *notes, int n, const char *one, const char *more);
const char *hw_notes_halves(hw_notes *notes, int n, const char *one, const char *more);

/* The name of a needle, as hw_bed_needle_name. */
const char *hw_notes_needle(hw_notes *notes, int needle);

/* The names of the marked ones among a number of names: "4 years, 6 years", or "all sizes". */
const char *hw_notes_sizes(
    hw_notes *notes, const char *const *names, const bool *marked, int count);

#endif
