/* The command line: one table of commands and one of options for parsing, help and the manual.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_SHELL_OPTS_H
#define HW_SHELL_OPTS_H

#include "core/buf.h"
#include "core/err.h"

enum { HW_OPTS_MAX_ARGS = 80 };

typedef enum {
    HW_COMMAND_PLAN,
    HW_COMMAND_COMPARE,
    HW_COMMAND_LEARN,
    HW_COMMAND_DRAW,
    HW_COMMAND_GARMENT,
    HW_COMMAND_NEW,
    HW_COMMAND_STITCHES,
    HW_COMMAND_HEM,
    HW_COMMAND_SPREAD,
    HW_COMMAND_GAUGE,
    HW_COMMAND_DIAL,
    HW_COMMAND_MOTIF,
    HW_COMMAND_LIST,
    HW_COMMAND_KEYS,
    HW_COMMAND_HELP,
    HW_COMMAND_VERSION,
    HW_COMMAND_COUNT
} hw_command;

typedef enum {
    HW_OPT_INTO,
    HW_OPT_ONLY,
    HW_OPT_SHOW,
    HW_OPT_REPLACE,
    HW_OPT_SIZE,
    HW_OPT_TABLE,
    HW_OPT_MOTIFS,
    HW_OPT_EASE,
    HW_OPT_MOST,
    HW_OPT_WIDTH,
    HW_OPT_GAUGE,
    HW_OPT_PER,
    HW_OPT_FABRIC,
    HW_OPT_REPEAT,
    HW_OPT_GAP,
    HW_OPT_EDGE,
    HW_OPT_BED,
    HW_OPT_DEPTH,
    HW_OPT_BAND,
    HW_OPT_ROWS,
    HW_OPT_BAND_ROWS,
    HW_OPT_FOLD,
    HW_OPT_CARD,
    HW_OPT_MIRROR,
    HW_OPT_UPSIDE_DOWN,
    HW_OPT_SHIFT,
    HW_OPT_RAISE,
    HW_OPT_BESIDE,
    HW_OPT_ABOVE,
    HW_OPT_BELOW,
    HW_OPT_PLAIN_ROWS,
    HW_OPT_CATCH,
    HW_OPT_SAVE,
    HW_OPT_COUNT
} hw_opt;

typedef struct {
    hw_command command;
    const char *args[HW_OPTS_MAX_ARGS];
    int arg_count;
    const char *values[HW_OPT_COUNT]; /* NULL: not given; "" for an option without a value */
} hw_opts;

/*
 * Read the command line.
 *
 * Given:     argc, argv  as main has them
 * Returned:  out       untouched on failure; points into argv
 * Result:    HW_OK; HW_ERR_USAGE, with the nearest right word
 */
hw_status hw_opts_read(int argc, char **argv, hw_opts *out, hw_err *err) HW_MUST_USE;

/* Append the help page: every command and option. */
void hw_opts_help(hw_buf *buf);

/* The name of an option, such as "--into". */
const char *hw_opts_name(hw_opt opt);

#endif
