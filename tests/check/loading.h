/* Projects read from texts, and from the data files that they name, without the program's shell.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_LOADING_H
#define HW_TESTS_LOADING_H

#include "core/project.h"

enum { LOADING_EDITS = 8 };

/* A piece of the project's text, which must stand in it once, and what takes its place. */
typedef struct {
    const char *old, *fresh;
} loading_edit;

/* A text with an edit made in it, which must be possible. */
const char *loading_edited(const char *text, const loading_edit *edit, hw_arena *arena);

typedef struct {
    const char *text;                  /* of the project */
    const char *demo;                  /* or, where text is NULL, a name under data/demo */
    const char *data[HW_DATA_COUNT];   /* texts in place of the files that it names; NULL: none */
    loading_edit edits[LOADING_EDITS]; /* made one after the other, until old is NULL */
} loading;

/*
 * Read a project and what it names, from the folder `data` under $srcdir.
 *
 * Given:     from      what to read
 *            arena     owner of all that out points to
 * Returned:  out       untouched on failure
 * Result:    what the readers say; a file that is not there, or a piece of text, ends the test
 */
hw_status loading_read(const loading *from, hw_arena *arena, hw_project *out, hw_err *err);

/* The same, and a failure ends the test. */
void loading_open(const loading *from, hw_arena *arena, hw_project *out);

#endif
