/* Files: read whole, replaced whole, and every failure told in plain words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_IO_H
#define HW_SHELL_IO_H

#include "core/buf.h"
#include "core/err.h"

enum { HW_IO_PATH_ROOM = 4096 }; /* bytes of a path, its NUL included */

typedef struct {
    const char *text;
    size_t len;
} hw_io_text;

/*
 * Read a whole file.
 *
 * Given:     path      a file, or anything else that can be read to its end but a folder
 *            arena     owner of the text
 *            limit     bytes, above 0
 * Returned:  out       the text, a NUL behind it; untouched on failure
 * Result:    HW_OK; HW_ERR_IO; HW_ERR_LIMIT (more bytes than limit); HW_ERR_NOMEM
 */
hw_status hw_io_read(
    const char *path, hw_arena *arena, size_t limit, hw_io_text *out, hw_err *err) HW_MUST_USE;

/* A file that is being replaced. Until hw_io_place the old one, if any, stays as it was. */
typedef struct {
    const char *told;                /* as it was given, for messages; lives as long as this */
    char path[HW_IO_PATH_ROOM];      /* what will be replaced, links followed */
    char temporary[HW_IO_PATH_ROOM]; /* beside it: write here; "" when there is none */
    char kept[HW_IO_PATH_ROOM];      /* the old file's second name, or "" */
    int descriptor;                  /* of the temporary file until it is finished, else -1 */
    bool fresh;                      /* to be placed where nothing is */
} hw_io_target;

/*
 * Begin to replace a file: an empty temporary file is made beside it.
 *
 * Given:     target    the caller's, not in use
 *            path      the file to write; it need not exist, its folder must
 * Returned:  target    to be ended by hw_io_place or hw_io_abort (once kept, by hw_io_settle or
 *                      hw_io_undo after hw_io_place); on failure there is nothing to end
 * Result:    HW_OK; HW_ERR_IO (also where the path is a folder or no ordinary file)
 */
hw_status hw_io_begin(hw_io_target *target, const char *path, hw_err *err) HW_MUST_USE;

/* Write len bytes to the temporary file. HW_OK; HW_ERR_IO. */
hw_status hw_io_put(hw_io_target *target, const char *bytes, size_t len, hw_err *err) HW_MUST_USE;

/* The temporary file is written: see it onto the disk, and close it. HW_OK; HW_ERR_IO. */
hw_status hw_io_finish(hw_io_target *target, hw_err *err) HW_MUST_USE;

/*
 * Give the old file a second name, NAME.hemwright-old, so that hw_io_undo can bring it back.
 *
 * Given:     target    finished; not needed where nothing can fail once it is placed
 * Note:      nothing happens where there is no old file, or the disk knows no second names. Should
 *            the computer stop before hw_io_settle, the name stays until the file is next kept.
 */
void hw_io_keep(hw_io_target *target);

/*
 * Put the temporary file in the old one's place.
 *
 * Given:     target    finished
 * Result:    HW_OK; HW_ERR_IO: then the temporary file is gone and the old file as it was
 */
hw_status hw_io_place(hw_io_target *target, hw_err *err) HW_MUST_USE;

/* After hw_io_place: the new file stays, and the old one that was kept goes. */
void hw_io_settle(hw_io_target *target);

/* After hw_io_keep and hw_io_place: the old file comes back, or none where none was. */
void hw_io_undo(hw_io_target *target);

/* Before hw_io_place: take the temporary file away. Nothing happens where there is none. */
void hw_io_abort(hw_io_target *target);

/*
 * Write a document to standard output and see it out of the program's hands.
 *
 * Given:     buf       its status is HW_OK
 * Result:    HW_OK; HW_ERR_IO
 */
hw_status hw_io_stdout(const hw_buf *buf, hw_err *err) HW_MUST_USE;

/* Close standard output, once, at the program's end: some disks only then say that they are full.
 * HW_OK; HW_ERR_IO. */
hw_status hw_io_stdout_close(hw_err *err) HW_MUST_USE;

/*
 * Whether a file may be written: nothing that is there already is written over unasked.
 *
 * Given:     path
 *            replace   it was asked for
 * Result:    HW_OK; HW_ERR_IO, with the file's name and the way out
 */
hw_status hw_io_vacant(const char *path, bool replace, hw_err *err) HW_MUST_USE;

typedef enum { HW_IO_READING, HW_IO_WRITING } hw_io_doing;

/*
 * Record a failure of the system in plain words.
 *
 * Given:     err       may be NULL
 *            path      the file
 *            doing     what could not be done
 *            number    errno
 * Returned:  HW_ERR_IO
 */
hw_status hw_io_fail(hw_err *err, const char *path, hw_io_doing doing, int number);

/*
 * A fault that a test asked for, in a program configured with --enable-faults.
 *
 * Given:     point     read, open, write, fsync, close, rename, book-close, book-reopen or stdout
 * Returned:  the errno named by HW_FAULT=point:ERRNO in the environment, else 0; with a number
 *            behind it, as in rename:EIO:3, at the third such point alone
 */
int hw_io_fault(const char *point);

/* Whether HW_FAULT names a fault that was never come to. */
bool hw_io_fault_unhit(void);

#endif
