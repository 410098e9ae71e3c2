/* The files that one command writes: all are written before the first is put in its place, so that
 * a failure leaves the disk as it was.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_DOCS_H
#define HW_SHELL_DOCS_H

#include "shell/io.h"
#include "shell/opts.h"

struct hw_doc;

/* Private to docs.c. */
typedef struct {
    const hw_opts *opts; /* --into and --replace */
    hw_arena *arena;
    hw_err *err;
    struct hw_doc *first, *last; /* in the order in which they were opened */
    struct hw_doc *under_way;    /* opened and not closed, or NULL */
    bool folder_made;            /* the folder of --into was not there before */
} hw_docs;

/*
 * Make a run's list of files ready; nothing is written yet.
 *
 * Given:     docs      the caller's, to be ended by hw_docs_end
 *            opts      of the run
 *            arena     owner of what is kept of the files
 *            err       where all that fails is told
 */
void hw_docs_begin(hw_docs *docs, const hw_opts *opts, hw_arena *arena, hw_err *err);

/* The name of the run's first file without folder and ending, behind `between`: "sheets/plan.csv"
 * for --into sheets, plan.yaml and ".csv". NULL when memory is refused. */
const char *hw_docs_path(const hw_docs *docs, const char *ending) HW_MUST_USE;

/* Make the folder of --into where it is not there yet. HW_OK; HW_ERR_IO. */
hw_status hw_docs_folder(hw_docs *docs) HW_MUST_USE;

/*
 * Begin a file.
 *
 * Given:     docs      the file before it is closed
 *            path      NULL stands for refused memory; lives as long as the run
 *            buf       not in use
 * Returned:  buf       its text goes into the file; to be ended by hw_docs_close, on failure too
 * Result:    HW_OK; HW_ERR_IO (it is there already and --replace was not given; it cannot be
 *            written); HW_ERR_NOMEM
 */
hw_status hw_docs_open(hw_docs *docs, const char *path, hw_buf *buf) HW_MUST_USE;

/* The file that was opened and not closed, for what cannot be written through a buffer. */
const hw_io_target *hw_docs_target(const hw_docs *docs);

/*
 * End a file that was opened, or that could not be.
 *
 * Given:     buf       of hw_docs_open, released here
 *            status    what its writer came to
 * Result:    HW_OK: the file is whole, on the disk, and not yet in its place; else what failed
 */
hw_status hw_docs_close(hw_docs *docs, hw_buf *buf, hw_status status) HW_MUST_USE;

/*
 * Put all files in their places, and say so; or, after a failure, take all away again.
 *
 * Given:     docs      all of its files closed
 *            status    what the command came to
 *            out       "Written: PATH" is added for each
 * Result:    status; HW_ERR_IO where a file cannot be put in its place: then those before it are
 *            taken out again, and files that they replaced come back
 */
hw_status hw_docs_end(hw_docs *docs, hw_status status, hw_buf *out) HW_MUST_USE;

#endif
