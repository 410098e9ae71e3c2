/* What went wrong, where in the text, and what to do: one value that the caller owns.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_ERR_H
#define HW_CORE_ERR_H

#include "core/hw.h"

typedef struct {
    hw_status code;
    int line;        /* 1-based; 0 where there is none */
    int column;      /* 1-based, in characters; 0 where there is none */
    bool of_garment; /* the line is the garment file's, not the project's */
    char where[64];  /* the file, added by the outermost caller; may be cut */
    char text[320];  /* one or two sentences: the fault and the way out */
} hw_err;

/*
 * Record an error, unless one is recorded already: the first wins.
 *
 * Given:     err       may be NULL, then only the code is passed on
 *            code      not HW_OK
 *            format    printf format for the text, at most 319 bytes of it are kept
 * Returned:  code, so that a function can end with `return hw_err_set(...)`
 */
hw_status hw_err_set(hw_err *err, hw_status code, const char *format, ...) HW_FORMAT(3, 4);

/*
 * Record where in the text the error lies, unless a place is recorded already.
 *
 * Given:     err       may be NULL
 *            code      the code that is being passed on
 *            line, column  1-based; 0 for none
 * Returned:  code
 */
hw_status hw_err_place(hw_err *err, hw_status code, int line, int column);

/* The same for a place in the garment file, which an outermost caller then names. */
hw_status hw_err_place_in_garment(hw_err *err, hw_status code, int line, int column);

/*
 * Record in which file the error lies, unless that is recorded already.
 *
 * Given:     err       may be NULL
 *            where     file name; cut to 63 bytes at a whole character, its end is kept
 */
void hw_err_where(hw_err *err, const char *where);

#endif
