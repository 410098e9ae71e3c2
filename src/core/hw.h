/* The words that every part of Hemwright shares: status codes, limits, marks, fabrics.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_HW_H
#define HW_CORE_HW_H

#include <stdbool.h>
#include <stddef.h>

#if defined(__GNUC__)
#define HW_MUST_USE     __attribute__((warn_unused_result))
#define HW_FORMAT(f, a) __attribute__((format(printf, f, a)))
#else
#define HW_MUST_USE
#define HW_FORMAT(f, a)
#endif

/* Every way in which a call can end; names, sentences and exit codes are in status.c. */
typedef enum {
    HW_OK = 0,
    HW_ERR_SYNTAX,   /* the text is not a project file, a number, a chart */
    HW_ERR_UNKNOWN,  /* a key, word or name that nobody knows */
    HW_ERR_REPEATED, /* the same key twice */
    HW_ERR_MISSING,  /* a required key or value is not there */
    HW_ERR_KIND,     /* a list where a number belongs, and the like */
    HW_ERR_RANGE,    /* a number outside what makes sense */
    HW_ERR_LIMIT,    /* too many, too deep, too long */
    HW_ERR_USAGE,    /* the command line */
    HW_ERR_NOFIT,    /* no stitch count meets the rules */
    HW_ERR_IO,       /* a file or the disk */
    HW_ERR_NOMEM,    /* memory refused */
    HW_ERR_INTERNAL, /* a library said what it should never say */
    HW_STATUS_COUNT
} hw_status;

/* Limits on what is read, so that no product of two counts can overflow an int. */
enum {
    HW_MAX_SIZES = 60,
    HW_MAX_PIECES = 12,
    HW_MAX_MEASURES = 40,
    HW_MAX_SWATCHES = 200, /* measured places of one fabric, knitted pieces included */
    HW_MAX_TERMS = 8,
    HW_MAX_SEAMS = 24,
    HW_MAX_TRIMS = 8,
    HW_MAX_BANDS = 6,           /* of one project, the hem included */
    HW_MAX_CORNERS = 24,        /* of one edge */
    HW_MAX_STS = 2000,          /* stitches across one piece */
    HW_MAX_ROWS = 5000,         /* rows of one piece */
    HW_MAX_CHART_COLUMNS = 200, /* also the widest repeat */
    HW_MAX_CHART_ROWS = 400,
    HW_MAX_TEXT = 200 /* characters in a title or name */
};

#define HW_MAX_CM       1000.0 /* the longest length that is accepted */
#define HW_MAX_PER_10CM 200.0  /* the finest gauge that is accepted */
#define HW_CM_PER_INCH  2.54   /* exact: [U1] in data/SOURCES.md */

/* How a value came to be known, best first. The order is used: the weakest of several marks is
 * the largest. */
typedef enum {
    HW_MARK_GIVEN,        /* the project file says so */
    HW_MARK_MEASURED,     /* from a swatch */
    HW_MARK_READ,         /* read in a published source */
    HW_MARK_DERIVED,      /* arithmetic on values that were read or given */
    HW_MARK_CHOICE,       /* this project's own choice */
    HW_MARK_PRACTICE,     /* common practice, no source */
    HW_MARK_INTERPOLATED, /* between two sizes that were given */
    HW_MARK_ASSUMED,      /* by a stated rule, because nothing was measured */
    HW_MARK_MEMORY,       /* from memory: nobody could read it in a source */
    HW_MARK_COUNT
} hw_mark;

/* The fabrics that have a gauge of their own. */
typedef enum { HW_MAIN, HW_BAND, HW_FACING, HW_FABRIC_COUNT } hw_fabric;

/* The edges of a piece, as seen on its right side with the hem down. */
typedef enum { HW_LEFT, HW_RIGHT, HW_SIDE_COUNT } hw_side;

/*
 * The mark in words, such as "from memory".
 *
 * Given:     mark      one of hw_mark, below HW_MARK_COUNT
 * Returned:  a constant text, never NULL
 */
const char *hw_mark_name(hw_mark mark);

/*
 * The weaker of two marks: what a value rests on when it rests on both.
 *
 * Given:     a, b      marks
 * Returned:  the one that is known less well
 */
hw_mark hw_mark_weaker(hw_mark a, hw_mark b);

/*
 * The fabric in the words of a project file: "main", "band", "facing".
 *
 * Given:     fabric    one of hw_fabric, below HW_FABRIC_COUNT
 * Returned:  a constant text, never NULL
 */
const char *hw_fabric_name(hw_fabric fabric);

/*
 * The side in words: "left" or "right".
 *
 * Given:     side      HW_LEFT or HW_RIGHT
 * Returned:  a constant text, never NULL
 */
const char *hw_side_name(hw_side side);

#endif
