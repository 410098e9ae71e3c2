/* Two tables and the walk over argv.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/opts.h"

#include <string.h>

#include "core/words.h"

#define C(name) (1U << HW_COMMAND_##name)

static const struct {
    const char *name, *args, *help;
    int least, most; /* arguments */
} commands[] = {
    [HW_COMMAND_PLAN] = { "plan", "FILE",
        "work a project out: print its tables and write workbook, CSV and JSON", 1, 1 },
    [HW_COMMAND_COMPARE] = { "compare", "FILE",
        "rank other gaps, ease and motifs for all sizes of a project", 1, 1 },
    [HW_COMMAND_LEARN] = { "learn", "FILE MEASURED",
        "read what test knitters measured, and tell what it changes", 2, 2 },
    [HW_COMMAND_DRAW] = { "draw", "FILE",
        "draw a project: the pieces of a size, and each band's fabric, chart and card", 1, 1 },
    [HW_COMMAND_GARMENT] = { "garment", "NAME",
        "check a garment file by itself in every size of a table, and draw it", 1, 1 },
    [HW_COMMAND_NEW] = { "new", "NAME", "write NAME.yaml, a project with remarks to start from", 1,
        1 },
    [HW_COMMAND_STITCHES] = { "stitches", "",
        "stitches for a width, with whole motifs where a repeat is given", 0, 0 },
    [HW_COMMAND_HEM] = { "hem", "", "rows of a folded hem around a band", 0, 0 },
    [HW_COMMAND_SPREAD] = { "spread", "CHANGES OVER",
        "spread increases or decreases evenly over stitches or rows", 2, 2 },
    [HW_COMMAND_GAUGE] = { "gauge", "COUNT LENGTH ...",
        "gauge from what a number of stitches or rows measures", 2, HW_OPTS_MAX_ARGS },
    [HW_COMMAND_DIAL] = { "dial", "FILE",
        "which dial gives a gauge, from swatches at several dials", 1, 1 },
    [HW_COMMAND_MOTIF] = { "motif", "NAME",
        "look at a motif: repeat, floats, fit on the card; change it and save it", 1, 1 },
    [HW_COMMAND_LIST] = { "list", "[KIND]",
        "list machines, garments, sizes or motifs that a project can name", 0, 1 },
    [HW_COMMAND_KEYS] = { "keys", "", "list every key of a project or data file", 0, 0 },
    [HW_COMMAND_HELP] = { "help", "", "print this page; also --help", 0, 0 },
    [HW_COMMAND_VERSION] = { "version", "", "print the version; also --version", 0, 0 },
};
_Static_assert(sizeof commands / sizeof commands[0] == HW_COMMAND_COUNT, "a row for each command");

static const struct {
    const char *name, *value, *help;
    unsigned commands; /* that know it */
} options[] = {
    [HW_OPT_INTO] = { "--into", "FOLDER", "write the files there; the folder is made if need be",
        C(PLAN) | C(NEW) | C(DRAW) },
    [HW_OPT_ONLY] = { "--only", "KINDS",
        "only some of xlsx,csv,json,table; table is the terminal's", C(PLAN) },
    [HW_OPT_SHOW] = { "--show", "TABLES",
        "what to print, parted by commas: some of sizes, hem, notes (the usual), bands, outline, "
        "shaping, trims, making, yarn, rows, chart, card, gauge, tolerance, alternatives, basis, "
        "costs, "
        "measured, or all",
        C(PLAN) },
    [HW_OPT_REPLACE] = { "--replace", NULL, "write over files of the same name",
        C(PLAN) | C(NEW) | C(MOTIF) | C(DRAW) | C(GARMENT) },
    [HW_OPT_SIZE] = { "--size", "SIZE",
        "rows and shaping of this size alone; of a drawing, the size of its pieces",
        C(PLAN) | C(DRAW) | C(GARMENT) },
    [HW_OPT_TABLE] = { "--table", "TABLE", "the size table; children if left out", C(GARMENT) },
    [HW_OPT_MOTIFS] = { "--motifs", "FOLDER",
        "motif files to try; those that come with the program if left out", C(COMPARE) },
    [HW_OPT_EASE] = { "--ease", "LENGTH",
        "try finished widths so much narrower to so much wider; 2 cm if left out", C(COMPARE) },
    [HW_OPT_MOST] = { "--most", "ROWS", "print at most so many rows", C(COMPARE) },
    [HW_OPT_WIDTH] = { "--width", "LENGTH", "wanted width, such as 40cm or '15 3/4 in'",
        C(STITCHES) },
    [HW_OPT_GAUGE] = { "--gauge", "STITCHES", "stitches in the length of --per",
        C(STITCHES) | C(DIAL) },
    [HW_OPT_PER] = { "--per", "LENGTH", "length that a gauge is for; 10 cm if left out",
        C(STITCHES) | C(HEM) | C(DIAL) },
    [HW_OPT_FABRIC] = { "--fabric", "FABRIC", "main, band or facing; main if left out", C(DIAL) },
    [HW_OPT_REPEAT] = { "--repeat", "COLUMNS", "figure and gap together", C(STITCHES) },
    [HW_OPT_GAP] = { "--gap", "COLUMNS", "background columns between two figures",
        C(STITCHES) | C(MOTIF) },
    [HW_OPT_EDGE] = { "--edge", "STITCHES",
        "stitches that a seam takes up at each edge; 0 if left out", C(STITCHES) },
    [HW_OPT_BED] = { "--bed", "NEEDLES", "needles of the bed", C(STITCHES) },
    [HW_OPT_DEPTH] = { "--depth", "LENGTH", "wanted depth of the hem's face", C(HEM) },
    [HW_OPT_BAND] = { "--band", "ROWS", "rows of the two-colour band", C(HEM) },
    [HW_OPT_ROWS] = { "--rows", "ROWS", "rows of plain fabric in the length of --per", C(HEM) },
    [HW_OPT_BAND_ROWS] = { "--band-rows", "ROWS", "rows of the band in the length of --per",
        C(HEM) },
    [HW_OPT_FOLD] = { "--fold", "FOLD", "none, loose, purl or picot; loose if left out", C(HEM) },
    [HW_OPT_CARD] = { "--card", "COLUMNS", "columns of the punch card; 24 if left out, 0 for none",
        C(MOTIF) },
    [HW_OPT_MIRROR] = { "--mirror", NULL, "left and right change places", C(MOTIF) },
    [HW_OPT_UPSIDE_DOWN] = { "--upside-down", NULL, "top and bottom change places", C(MOTIF) },
    [HW_OPT_SHIFT] = { "--shift", "COLUMNS",
        "move the repeat so many columns to the right; below 0 to the left", C(MOTIF) },
    [HW_OPT_RAISE] = { "--raise", "ROWS",
        "move it so many rows up; what goes out at the top comes in below", C(MOTIF) },
    [HW_OPT_BESIDE] = { "--beside", "OTHER", "put another motif at its right", C(MOTIF) },
    [HW_OPT_ABOVE] = { "--above", "OTHER", "put another motif above it", C(MOTIF) },
    [HW_OPT_BELOW] = { "--below", "OTHER", "put another motif below it", C(MOTIF) },
    [HW_OPT_PLAIN_ROWS] = { "--plain-rows", "ROWS",
        "rows of background between it and the one above or below; 0 if left out", C(MOTIF) },
    [HW_OPT_CATCH] = { "--catch", "STITCHES",
        "break longer floats by catching stitches; give the longest that may be", C(MOTIF) },
    [HW_OPT_SAVE] = { "--save", "FILE",
        "a file to write to: a motif (.yaml, .pbm), or a drawing of a garment (.svg)",
        C(MOTIF) | C(GARMENT) },
};
_Static_assert(sizeof options / sizeof options[0] == HW_OPT_COUNT, "a row for each option");

/* Commands that cannot do without an option. */
static const unsigned needed_by[HW_OPT_COUNT] = {
    [HW_OPT_WIDTH] = C(STITCHES),
    [HW_OPT_GAUGE] = C(STITCHES) | C(DIAL),
    [HW_OPT_DEPTH] = C(HEM),
    [HW_OPT_BAND] = C(HEM),
    [HW_OPT_ROWS] = C(HEM),
};

const char *hw_opts_name(hw_opt opt)
{
    return options[opt].name;
}

static bool asks_for_help(const char *word)
{
    return strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0;
}

static hw_status find_command(const char *word, hw_command *out, hw_err *err)
{
    if (asks_for_help(word) || strcmp(word, "--version") == 0 || strcmp(word, "-V") == 0) {
        *out = asks_for_help(word) ? HW_COMMAND_HELP : HW_COMMAND_VERSION;
        return HW_OK;
    }
    const char *names[HW_COMMAND_COUNT];
    for (int c = 0; c < HW_COMMAND_COUNT; c++) {
        names[c] = commands[c].name;
        if (strcmp(names[c], word) == 0) {
            *out = (hw_command)c;
            return HW_OK;
        }
    }
    const char *near = hw_words_nearest(word, names, HW_COMMAND_COUNT);
    if (near != NULL) {
        return hw_err_set(err, HW_ERR_USAGE,
            "`%.*s` is not a command; did you mean `hemwright %s`?", hw_words_cut(word, 60), word,
            near);
    }
    return hw_err_set(err, HW_ERR_USAGE,
        "`%.*s` is not a command; `hemwright help` lists them, and a project is worked out by "
        "`hemwright plan FILE`",
        hw_words_cut(word, 60), word);
}

/* `--name` or `--name=value` of this command; HW_OPT_COUNT where there is none. */
static hw_opt find_option(const char *word, hw_command command)
{
    size_t len = strcspn(word, "=");
    int found = HW_OPT_COUNT;
    for (int o = 0; o < HW_OPT_COUNT; o++) {
        bool same = strlen(options[o].name) == len && memcmp(options[o].name, word, len) == 0;
        if (same && (options[o].commands & (1U << command)) != 0) {
            found = o;
        }
    }
    return (hw_opt)found;
}

static hw_status unknown_option(const char *typed, hw_command command, hw_err *err)
{
    size_t len = strcspn(typed, "=");
    char word[64] = { 0 };
    memcpy(word, typed, len < sizeof word ? len : (size_t)hw_words_cut(typed, sizeof word - 1));
    const char *names[HW_OPT_COUNT];
    int count = 0;
    for (int o = 0; o < HW_OPT_COUNT; o++) {
        if ((options[o].commands & (1U << command)) != 0) {
            names[count++] = options[o].name;
        }
    }
    const char *near = hw_words_nearest(word, names, count);
    if (near != NULL) {
        return hw_err_set(err, HW_ERR_USAGE,
            "`%s` is not an option of `hemwright %s`; did you mean `%s`?", word,
            commands[command].name, near);
    }
    return hw_err_set(err, HW_ERR_USAGE,
        "`%s` is not an option of `hemwright %s`; `hemwright help` lists them", word,
        commands[command].name);
}

/* Takes an option at argv[*at], and its value behind it. */
static hw_status take_option(int argc, char **argv, int *at, hw_opts *opts, hw_err *err)
{
    const char *word = argv[*at];
    hw_opt opt = find_option(word, opts->command);
    if (opt == HW_OPT_COUNT) {
        return unknown_option(word, opts->command, err);
    }
    const char *name = options[opt].name;
    if (opts->values[opt] != NULL) {
        return hw_err_set(err, HW_ERR_USAGE, "`%s` stands here twice; keep one", name);
    }
    const char *equals = strchr(word, '=');
    if (options[opt].value == NULL) {
        opts->values[opt] = "";
        return equals == NULL
                   ? HW_OK
                   : hw_err_set(err, HW_ERR_USAGE, "`%s` takes no value; write it by itself", name);
    }
    const char *value = equals != NULL ? equals + 1 : NULL;
    bool follows = *at + 1 < argc && strncmp(argv[*at + 1], "--", 2) != 0;
    if (value == NULL && follows) {
        value = argv[++*at];
    }
    if (value == NULL || value[0] == '\0') {
        return hw_err_set(err, HW_ERR_USAGE, "`%s` needs a value behind it: %s %s", name, name,
            options[opt].value);
    }
    opts->values[opt] = value;
    return HW_OK;
}

static hw_status take_word(const char *word, hw_opts *opts, hw_err *err)
{
    if (opts->arg_count == HW_OPTS_MAX_ARGS) {
        return hw_err_set(err, HW_ERR_USAGE, "%s",
            "there are too many words in this command; `hemwright help` shows how each is "
            "written");
    }
    opts->args[opts->arg_count++] = word;
    return HW_OK;
}

static hw_status check_args(const hw_opts *opts, hw_err *err)
{
    const char *name = commands[opts->command].name;
    int most = commands[opts->command].most;
    if (opts->arg_count < commands[opts->command].least) {
        return hw_err_set(err, HW_ERR_USAGE, "something is missing; write `hemwright %s %s`", name,
            commands[opts->command].args);
    }
    if (opts->arg_count > most) {
        const char *extra = opts->args[most];
        return hw_err_set(err, HW_ERR_USAGE,
            "`%.*s` is one word too many; write `hemwright %s%s%s`, and put names that hold "
            "blanks between quotes",
            hw_words_cut(extra, 60), extra, name,
            commands[opts->command].args[0] == '\0' ? "" : " ", commands[opts->command].args);
    }
    return HW_OK;
}

enum { MOST_NEEDED = 3 }; /* options that one command cannot do without */

/* Names every option that is missing, not the first alone. */
static hw_status check_needed(const hw_opts *opts, hw_err *err)
{
    static const char *const parts[] = { "", ", ", " and " };
    const char *missing[MOST_NEEDED] = { "", "", "" };
    int count = 0;
    for (int o = 0; o < HW_OPT_COUNT; o++) {
        bool needed = (needed_by[o] & (1U << opts->command)) != 0;
        if (needed && opts->values[o] == NULL && count < MOST_NEEDED) {
            missing[count++] = options[o].name;
        }
    }
    if (count == 0) {
        return HW_OK;
    }
    return hw_err_set(err, HW_ERR_USAGE,
        "`hemwright %s` needs %s%s%s%s%s too; `hemwright help` shows what each one holds",
        commands[opts->command].name, missing[0],
        parts[count == 3   ? 1
              : count == 2 ? 2
                           : 0],
        missing[1], parts[count == 3 ? 2 : 0], missing[2]);
}

hw_status hw_opts_read(int argc, char **argv, hw_opts *out, hw_err *err)
{
    hw_opts opts = { .command = HW_COMMAND_HELP };
    if (argc < 2) {
        *out = opts;
        return HW_OK;
    }
    hw_status status = find_command(argv[1], &opts.command, err);
    bool plain = false; /* behind `--` nothing is an option */
    for (int at = 2; at < argc && status == HW_OK; at++) {
        if (!plain && strcmp(argv[at], "--") == 0) {
            plain = true;
        } else if (!plain && asks_for_help(argv[at])) {
            *out = (hw_opts){ .command = HW_COMMAND_HELP };
            return HW_OK;
        } else if (!plain && strncmp(argv[at], "--", 2) == 0) {
            status = take_option(argc, argv, &at, &opts, err);
        } else {
            status = take_word(argv[at], &opts, err);
        }
    }
    if (status == HW_OK) {
        status = check_args(&opts, err);
    }
    if (status == HW_OK) {
        status = check_needed(&opts, err);
    }
    if (status == HW_OK) {
        *out = opts;
    }
    return status;
}

enum { HELP_WIDTH = 100, COMMAND_COLUMN = 26, OPTION_COLUMN = 30 };

static void pad(hw_buf *buf, size_t from, int width)
{
    hw_buf_repeat(buf, " ", width - (int)(buf->len - from));
}

/* Words behind column `from`, and below it where the line would be longer than a terminal's. */
static void add_help(hw_buf *buf, const char *words, int from)
{
    int at = from;
    for (const char *word = words; *word != '\0';) {
        int len = (int)strcspn(word, " ");
        if (at > from && at + 1 + len > HELP_WIDTH) {
            hw_buf_text(buf, "\n");
            hw_buf_repeat(buf, " ", from);
            at = from;
        } else if (at > from) {
            hw_buf_text(buf, " ");
            at++;
        }
        hw_buf_bytes(buf, word, (size_t)len);
        at += len;
        word += len + (word[len] == ' ');
    }
    hw_buf_text(buf, "\n");
}

void hw_opts_help(hw_buf *buf)
{
    hw_buf_text(buf,
        "hemwright: whole motifs, folded hems and stitch counts for banded knitting\n\n"
        "Commands, each as `hemwright COMMAND`:\n\n");
    for (int c = 0; c < HW_COMMAND_COUNT; c++) {
        size_t from = buf->len;
        hw_buf_format(buf, "  %s %s", commands[c].name, commands[c].args);
        pad(buf, from, COMMAND_COLUMN);
        add_help(buf, commands[c].help, COMMAND_COLUMN);
        for (int o = 0; o < HW_OPT_COUNT; o++) {
            if ((options[o].commands & (1U << c)) == 0) {
                continue;
            }
            from = buf->len;
            hw_buf_format(buf, "      %s %s", options[o].name,
                options[o].value != NULL ? options[o].value : "");
            pad(buf, from, OPTION_COLUMN);
            add_help(buf, options[o].help, OPTION_COLUMN);
        }
    }
    hw_buf_text(buf,
        "\nEnds with 0 when done, 1 when no stitch count fits, 2 for a mistake in a command or a\n"
        "file, 3 when a file cannot be read or written, 4 when memory runs out, or the\nprogram "
        "itself is at fault.\n"
        "Manuals: man hemwright, man hemwright-project\n");
}
