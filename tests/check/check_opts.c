/* The command line: what is read, what is said of slips, and that help shows all there is.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/opts.h"

#include <string.h>

#include "reading.h"

enum { WORDS = 8, UNTOUCHED = 0x5A };

/* The words of a command line, the program's name first. */
static hw_status read_words(const char *const *words, hw_opts *out, hw_err *err)
{
    static char room[WORDS + 1][100];
    char *argv[WORDS + 2] = { room[0], NULL };
    int argc = 1;
    memcpy(room[0], "hemwright", sizeof "hemwright");
    for (int i = 0; i < WORDS && words[i] != NULL; i++) {
        memcpy(room[argc], words[i], strlen(words[i]) + 1);
        argv[argc] = room[argc];
        argc++;
    }
    argv[argc] = NULL;
    return hw_opts_read(argc, argv, out, err);
}

/* By hand. */
static const struct {
    const char *words[WORDS];
    hw_command command;
    int arg_count;
    const char *first_arg;
    hw_opt opt;
    const char *value;
} lines[] = {
    { { NULL }, HW_COMMAND_HELP, 0, NULL, HW_OPT_INTO, NULL },
    { { "help" }, HW_COMMAND_HELP, 0, NULL, HW_OPT_INTO, NULL },
    { { "--help" }, HW_COMMAND_HELP, 0, NULL, HW_OPT_INTO, NULL },
    { { "-h" }, HW_COMMAND_HELP, 0, NULL, HW_OPT_INTO, NULL },
    { { "plan", "--help" }, HW_COMMAND_HELP, 0, NULL, HW_OPT_INTO, NULL },
    { { "plan", "a", "b", "-h" }, HW_COMMAND_HELP, 0, NULL, HW_OPT_INTO, NULL },
    { { "version" }, HW_COMMAND_VERSION, 0, NULL, HW_OPT_INTO, NULL },
    { { "--version" }, HW_COMMAND_VERSION, 0, NULL, HW_OPT_INTO, NULL },
    { { "-V" }, HW_COMMAND_VERSION, 0, NULL, HW_OPT_INTO, NULL },
    { { "plan", "a.yaml" }, HW_COMMAND_PLAN, 1, "a.yaml", HW_OPT_INTO, NULL },
    { { "plan", "a", "--into", "b c" }, HW_COMMAND_PLAN, 1, "a", HW_OPT_INTO, "b c" },
    { { "plan", "--into", "b", "a" }, HW_COMMAND_PLAN, 1, "a", HW_OPT_INTO, "b" },
    { { "plan", "--into=b=c", "a" }, HW_COMMAND_PLAN, 1, "a", HW_OPT_INTO, "b=c" },
    { { "plan", "--into=--b", "a" }, HW_COMMAND_PLAN, 1, "a", HW_OPT_INTO, "--b" },
    { { "plan", "a", "--replace" }, HW_COMMAND_PLAN, 1, "a", HW_OPT_REPLACE, "" },
    { { "plan", "--", "--help" }, HW_COMMAND_PLAN, 1, "--help", HW_OPT_INTO, NULL },
    { { "plan", "-" }, HW_COMMAND_PLAN, 1, "-", HW_OPT_INTO, NULL },
    { { "spread", "7", "100" }, HW_COMMAND_SPREAD, 2, "7", HW_OPT_INTO, NULL },
    { { "gauge", "50", "16cm", "40", "13" }, HW_COMMAND_GAUGE, 4, "50", HW_OPT_INTO, NULL },
    { { "list" }, HW_COMMAND_LIST, 0, NULL, HW_OPT_INTO, NULL },
    { { "list", "motifs" }, HW_COMMAND_LIST, 1, "motifs", HW_OPT_INTO, NULL },
    { { "motif", "tulip", "--gap", "-5" }, HW_COMMAND_MOTIF, 1, "tulip", HW_OPT_GAP, "-5" },
    { { "motif", "tulip", "--card", "0" }, HW_COMMAND_MOTIF, 1, "tulip", HW_OPT_CARD, "0" },
};

START_TEST(lines_are_read)
{
    hw_opts opts;
    hw_err err = { 0 };
    ck_assert_msg(read_words(lines[_i].words, &opts, &err) == HW_OK, "%s", err.text);
    ck_assert_int_eq(opts.command, lines[_i].command);
    ck_assert_int_eq(opts.arg_count, lines[_i].arg_count);
    if (lines[_i].first_arg != NULL) {
        ck_assert_str_eq(opts.args[0], lines[_i].first_arg);
    }
    for (int o = 0; o < HW_OPT_COUNT; o++) {
        if ((hw_opt)o == lines[_i].opt && lines[_i].value != NULL) {
            ck_assert_str_eq(opts.values[o], lines[_i].value);
        } else {
            ck_assert_ptr_null(opts.values[o]);
        }
    }
}
END_TEST

static const struct {
    const char *words[WORDS];
    const char *found, *way;
} slips[] = {
    { { "plna", "a" }, "`plna` is not a command", "did you mean `hemwright plan`?" },
    { { "Plan", "a" }, "`Plan` is not a command", "`hemwright plan`" },
    { { "zzzzzzzz" }, "`zzzzzzzz` is not a command", "`hemwright help` lists them" },
    { { "dress.yaml" }, "`dress.yaml` is not a command", "`hemwright plan FILE`" },
    { { "" }, "is not a command", "`hemwright help`" },
    { { "plan", "a", "--itno", "b" }, "`--itno` is not an option of `hemwright plan`",
        "did you mean `--into`?" },
    { { "plan", "a", "--itno=b" }, "`--itno` is not an option", "did you mean `--into`?" },
    { { "plan", "a", "--zzzzzz" }, "`--zzzzzz` is not an option", "`hemwright help` lists them" },
    { { "hem", "--width", "5" }, "`--width` is not an option of `hemwright hem`",
        "`hemwright help`" },
    { { "keys", "--into", "x" }, "`--into` is not an option of `hemwright keys`",
        "`hemwright help`" },
    { { "plan", "a", "--into", "b", "--into", "c" }, "`--into` stands here twice", "keep one" },
    { { "plan", "a", "--replace", "--replace" }, "`--replace` stands here twice", "keep one" },
    { { "plan", "a", "--replace=yes" }, "`--replace` takes no value", "by itself" },
    { { "hem" }, "`hemwright hem` needs --depth, --band and --rows too", "`hemwright help`" },
    { { "hem", "--band", "6" }, "needs --depth and --rows too", "`hemwright help`" },
    { { "dial", "a" }, "`hemwright dial` needs --gauge too", "`hemwright help`" },
    { { "plan", "a", "--into" }, "`--into` needs a value", "--into FOLDER" },
    { { "plan", "a", "--into", "--replace" }, "`--into` needs a value", "--into FOLDER" },
    { { "plan", "a", "--into=" }, "`--into` needs a value", "--into FOLDER" },
    { { "plan", "a", "--into", "" }, "`--into` needs a value", "--into FOLDER" },
    { { "plan" }, "something is missing", "write `hemwright plan FILE`" },
    { { "spread", "7" }, "something is missing", "write `hemwright spread CHANGES OVER`" },
    { { "plan", "a", "b" }, "`b` is one word too many", "between quotes" },
    { { "keys", "all" }, "`all` is one word too many", "write `hemwright keys`" },
    { { "list", "motifs", "sizes" }, "`sizes` is one word too many", "`hemwright list [KIND]`" },
    /* a letter of two bytes on the cut: 59 letters, then é */
    { { "plan", "a", "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa\xC3\xA9" },
        "aaa` is one word too many", "between quotes" },
    { { "plan", "a", "--aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa" },
        "is not an option of `hemwright plan`", "`hemwright help`" },
};

START_TEST(every_slip_is_told)
{
    hw_opts opts;
    hw_opts before;
    hw_err err = { 0 };
    memset(&before, UNTOUCHED, sizeof before);
    opts = before;
    ck_assert_int_eq(read_words(slips[_i].words, &opts, &err), HW_ERR_USAGE);
    ck_assert_int_eq(err.code, HW_ERR_USAGE);
    ck_assert_msg(strstr(err.text, slips[_i].found) != NULL, "%s", err.text);
    ck_assert_msg(strstr(err.text, slips[_i].way) != NULL, "%s", err.text);
    ck_assert_int_eq(err.line, 0);
    ck_assert_mem_eq(&opts, &before, sizeof before);
    if (slips[_i].words[0][0] != '\0') {
        hw_check_plain(&err);
    }
    ck_assert_int_eq(read_words(slips[_i].words, &opts, NULL), HW_ERR_USAGE);
}
END_TEST

/* Own choice of limit: HW_OPTS_MAX_ARGS words, then no more. */
START_TEST(many_words)
{
    char program[] = "hemwright";
    char command[] = "gauge";
    char word[] = "5";
    char *argv[HW_OPTS_MAX_ARGS + 4] = { program, command };
    for (int i = 2; i < HW_OPTS_MAX_ARGS + 3; i++) {
        argv[i] = word;
    }
    hw_opts opts;
    hw_err err = { 0 };
    ck_assert_int_eq(hw_opts_read(HW_OPTS_MAX_ARGS + 2, argv, &opts, &err), HW_OK);
    ck_assert_int_eq(opts.arg_count, HW_OPTS_MAX_ARGS);
    ck_assert_int_eq(hw_opts_read(HW_OPTS_MAX_ARGS + 3, argv, &opts, &err), HW_ERR_USAGE);
    ck_assert_msg(strstr(err.text, "too many words") != NULL, "%s", err.text);
    hw_check_plain(&err);
}
END_TEST

/* Own choice: the help page names every option, in lines that a terminal holds. */
START_TEST(help_is_whole)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    hw_buf_init(&buf, &mem, 20000);
    hw_opts_help(&buf);
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    for (int o = 0; o < HW_OPT_COUNT; o++) {
        const char *name = hw_opts_name((hw_opt)o);
        ck_assert_msg(strncmp(name, "--", 2) == 0, "%s", name);
        ck_assert_msg(strstr(buf.text, name) != NULL, "%s", name);
        for (int other = 0; other < o; other++) {
            ck_assert_str_ne(name, hw_opts_name((hw_opt)other));
        }
    }
    static const char *const commands[] = { "\n  plan FILE", "\n  new NAME", "\n  stitches",
        "\n  hem", "\n  spread CHANGES OVER", "\n  gauge COUNT", "\n  motif NAME",
        "\n  list [KIND]", "\n  keys", "\n  help", "\n  version" };
    for (size_t i = 0; i < sizeof commands / sizeof commands[0]; i++) {
        ck_assert_msg(strstr(buf.text, commands[i]) != NULL, "%s", commands[i]);
    }
    for (const char *line = buf.text; *line != '\0'; line += strcspn(line, "\n") + 1) {
        ck_assert_uint_le(strcspn(line, "\n"), 100);
    }
    hw_buf_release(&buf);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("opts");
    TCase *tcase = tcase_create("opts");
    tcase_add_loop_test(tcase, lines_are_read, 0, ROWS(lines));
    tcase_add_loop_test(tcase, every_slip_is_told, 0, ROWS(slips));
    tcase_add_test(tcase, many_words);
    tcase_add_test(tcase, help_is_whole);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
