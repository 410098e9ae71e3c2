/* Projects and the data files that they name, found on disk and read.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_LOAD_H
#define HW_SHELL_LOAD_H

#include "core/project.h"

/* Names of the data files of one kind, sorted, without `.yaml`. */
typedef struct {
    const char **names;
    int count;
} hw_load_names;

/* Motifs of a folder, in the order of their files' names. */
typedef struct {
    hw_motif_input *list;
    int count;
} hw_load_motif_list;

/*
 * The folder of the data files: $HEMWRIGHT_DATA, or beside the program, or where it was installed.
 *
 * Given:     arena     owner of the path
 * Returned:  the path; NULL when memory is refused
 */
const char *hw_load_folder(hw_arena *arena) HW_MUST_USE;

/*
 * Record that a file of the data folder cannot be read, and what to do about it.
 *
 * Given:     path      the file or folder that was looked for
 *            err       may be NULL
 * Returned:  HW_ERR_IO
 */
hw_status hw_load_lost(const char *path, hw_err *err);

/* The folder under the data folder that holds one kind: "machines". */
const char *hw_load_kind(hw_data kind);

/*
 * List the data files of a kind.
 *
 * Given:     kind      below HW_DATA_COUNT
 *            arena     owner of the names
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_IO; HW_ERR_NOMEM
 */
hw_status hw_load_list(hw_data kind, hw_arena *arena, hw_load_names *out, hw_err *err) HW_MUST_USE;

/*
 * Read a project and all that it names.
 *
 * Given:     path      the project file; names with `/` or `.yaml` in it are files beside it
 *            arena     owner of all that out points to
 * Returned:  out       untouched on failure
 * Result:    HW_OK; what the readers can say, with the file's name in err; HW_ERR_IO
 */
hw_status hw_load_project(
    const char *path, hw_arena *arena, hw_project *out, hw_err *err) HW_MUST_USE;

/*
 * Read every motif file of a folder.
 *
 * Given:     folder    NULL for the motifs that come with the program
 *            arena     owner of the list
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_IO; what hw_motif_read can say, with the file's name; HW_ERR_MISSING
 *            (no motif file there); HW_ERR_NOMEM
 */
hw_status hw_load_motifs(
    const char *folder, hw_arena *arena, hw_load_motif_list *out, hw_err *err) HW_MUST_USE;

/* Read measured pieces from a workbook or table into a project that is read already. Result: what
 * hw_knitted_load can say. */
hw_status hw_load_pieces(
    const char *path, hw_project *project, hw_arena *arena, hw_err *err) HW_MUST_USE;

/* Read one motif by name or file, as a project would. */
hw_status hw_load_motif(
    const char *name, hw_arena *arena, hw_motif_input *out, hw_err *err) HW_MUST_USE;

/*
 * Read one data file by its name, or a file of one's own.
 *
 * Given:     kind, name
 *            arena     owner of all that is read
 * Returned:  project   that kind's member is filled in
 * Result:    HW_OK; HW_ERR_UNKNOWN, with the nearest name; HW_ERR_IO; what its reader can say
 */
hw_status hw_load_one(
    hw_data kind, const char *name, hw_arena *arena, hw_project *project, hw_err *err) HW_MUST_USE;

/* Name the file that an error of a calculation lies in: the project, or its garment. */
void hw_load_blame(const hw_project *project, const char *file, hw_err *err);

/* The index of a size that an option names; HW_ERR_USAGE with the nearest name. */
hw_status hw_load_size(const hw_sizes *sizes, const char *name, int *out, hw_err *err) HW_MUST_USE;

#endif
