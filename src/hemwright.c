/* The program: options, the command, its output, its exit code.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <config.h>

#include <gsl/gsl_errno.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

#include "core/status.h"
#include "shell/compare.h"
#include "shell/draw.h"
#include "shell/io.h"
#include "shell/learn.h"
#include "shell/make.h"
#include "shell/motifs.h"
#include "shell/opts.h"
#include "shell/quick.h"
#include "shell/tell.h"

static hw_status run_help(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    (void)opts;
    (void)arena;
    (void)err;
    hw_opts_help(buf);
    return HW_OK;
}

static hw_status run_version(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    (void)opts;
    (void)arena;
    (void)err;
    hw_buf_text(buf, PACKAGE_NAME " " PACKAGE_VERSION "\n");
    return HW_OK;
}

static hw_status (*const commands[])(const hw_opts *, hw_arena *, hw_buf *, hw_err *) = {
    [HW_COMMAND_PLAN] = hw_make_plan,
    [HW_COMMAND_COMPARE] = hw_compare_run,
    [HW_COMMAND_LEARN] = hw_learn_run,
    [HW_COMMAND_DRAW] = hw_draw_run,
    [HW_COMMAND_GARMENT] = hw_draw_garment,
    [HW_COMMAND_NEW] = hw_make_new,
    [HW_COMMAND_STITCHES] = hw_quick_stitches,
    [HW_COMMAND_HEM] = hw_quick_hem,
    [HW_COMMAND_SPREAD] = hw_tell_spread,
    [HW_COMMAND_GAUGE] = hw_tell_gauge,
    [HW_COMMAND_DIAL] = hw_learn_dial,
    [HW_COMMAND_MOTIF] = hw_motifs_run,
    [HW_COMMAND_LIST] = hw_tell_list,
    [HW_COMMAND_KEYS] = hw_tell_keys,
    [HW_COMMAND_HELP] = run_help,
    [HW_COMMAND_VERSION] = run_version,
};
_Static_assert(sizeof commands / sizeof commands[0] == HW_COMMAND_COUNT, "each command runs");

static void report(const hw_err *err, hw_status status)
{
    (void)fputs("hemwright: ", stderr); /* nothing could be done about a failure here */
    if (err->where[0] != '\0') {
        (void)fprintf(stderr, "%s:", err->where);
        if (err->line > 0) {
            (void)fprintf(stderr, "%d:", err->line);
        }
        if (err->line > 0 && err->column > 0) {
            (void)fprintf(stderr, "%d:", err->column);
        }
        (void)fputc(' ', stderr);
    }
    (void)fprintf(stderr, "%s\n", err->text[0] != '\0' ? err->text : hw_status_sentence(status));
}

int main(int argc, char **argv)
{
    gsl_set_error_handler_off();
    (void)signal(SIGPIPE, SIG_IGN); /* a closed pipe is then a write that fails, and is told */
#ifdef SIGXFSZ
    (void)signal(SIGXFSZ, SIG_IGN); /* so is a file past its size limit */
#endif
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_buf out;
    hw_err err = { 0 };
    hw_opts opts;
    hw_arena_init(&arena, &mem, HW_ARENA_BLOCK);
    hw_buf_init(&out, &mem, HW_BUF_LIMIT);

    hw_status status = hw_opts_read(argc, argv, &opts, &err);
    if (status == HW_OK) {
        status = commands[opts.command](&opts, &arena, &out, &err);
    }
    if (status == HW_OK) {
        status = hw_buf_status(&out);
    }
    if (status == HW_OK) {
        status = hw_io_stdout(&out, &err);
    }
    hw_status closed = hw_io_stdout_close(&err);
    status = status == HW_OK ? closed : status;
    if (status != HW_OK) {
        report(&err, status);
    }
    if (hw_io_fault_unhit()) {
        (void)fputs("hemwright: the fault that HW_FAULT names was never come to\n", stderr);
        status = HW_ERR_INTERNAL;
    }
    hw_buf_release(&out);
    hw_arena_release(&arena);
    return hw_status_exit(status);
}
