/* One table of the documents that a plan becomes, and the project that a knitter begins with.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/make.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "core/calculate.h"
#include "core/words.h"
#include "read/yaml.h"
#include "shell/book.h"
#include "shell/docs.h"
#include "shell/load.h"
#include "write/csv.h"
#include "write/json.h"
#include "write/text.h"

typedef struct {
    const hw_opts *opts;
    hw_arena *arena;
    hw_project project;
    hw_plan plan;
    hw_tables tables;
    hw_docs docs;
    hw_buf *out; /* what is printed */
    hw_err *err;
} making;

static hw_status no_memory(const making *m)
{
    return hw_err_set(m->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the documents");
}

static hw_status write_csv(making *m, hw_buf *buf)
{
    return hw_csv_tables(&m->tables, buf);
}

static hw_status write_json(making *m, hw_buf *buf)
{
    return hw_json_plan(&m->plan, &m->tables, m->arena, buf);
}

/* The moment that the workbook bears: a fixed one, unless the environment names another. */
static time_t book_moment(void)
{
    const char *told = getenv("SOURCE_DATE_EPOCH");
    long long seconds = 0;
    for (; told != NULL && *told >= '0' && *told <= '9' && seconds < 4000000000LL; told++) {
        seconds = seconds * 10 + (*told - '0');
    }
    return (time_t)seconds;
}

/* The library that makes workbooks writes files alone. */
static hw_status write_xlsx(making *m, hw_buf *buf)
{
    (void)buf;
    hw_book_options options = { .title = m->project.title, .created = book_moment() };
    return hw_book_write(&m->tables, hw_docs_target(&m->docs), &options, m->err);
}

/* `table` is the terminal's: it has no file. */
static const struct {
    const char *kind;
    const char *ending;
    hw_status (*write)(making *m, hw_buf *buf);
} documents[] = { { "xlsx", ".xlsx", write_xlsx }, { "csv", ".csv", write_csv },
    { "json", ".json", write_json }, { "table", NULL, NULL } };
enum { DOCUMENTS = sizeof documents / sizeof documents[0] };

/* Is `word` one of the words parted by commas? */
static bool among(const char *list, const char *word)
{
    for (const char *at = list; at != NULL;) {
        size_t len = strcspn(at, ",");
        if (strlen(word) == len && memcmp(at, word, len) == 0) {
            return true;
        }
        at = at[len] == ',' ? at + len + 1 : NULL;
    }
    return false;
}

static hw_status check_word(
    const making *m, hw_opt opt, const char *word, const char *const *known, int count)
{
    for (int i = 0; i < count; i++) {
        if (strcmp(known[i], word) == 0) {
            return HW_OK;
        }
    }
    const char *near = hw_words_nearest(word, known, count);
    int bytes = hw_words_cut(word, 40);
    if (near != NULL) {
        return hw_err_set(m->err, HW_ERR_USAGE, "`%s %.*s` is not known; did you mean `%s`?",
            hw_opts_name(opt), bytes, word, near);
    }
    return hw_err_set(m->err, HW_ERR_USAGE,
        "`%s %.*s` is not known; `hemwright help` lists the words, which are parted by commas "
        "without blanks",
        hw_opts_name(opt), bytes, word);
}

/* Each word of an option must be one that is known. */
static hw_status check_words(const making *m, hw_opt opt, const char *const *known, int count)
{
    for (const char *at = m->opts->values[opt]; at != NULL;) {
        size_t len = strcspn(at, ",");
        char *word = hw_arena_text(m->arena, at, len);
        if (word == NULL) {
            return no_memory(m);
        }
        hw_status status = check_word(m, opt, word, known, count);
        if (status != HW_OK) {
            return status;
        }
        at = at[len] == ',' ? at + len + 1 : NULL;
    }
    return HW_OK;
}

static const char *const tables_known[] = { "sizes", "hem", "bands", "outline", "shaping", "trims",
    "making", "yarn", "rows", "chart", "card", "alternatives", "notes", "basis", "costs", "gauge",
    "tolerance", "measured", "all" };

static hw_status check_choices(const making *m)
{
    const char *kinds[DOCUMENTS];
    for (int i = 0; i < DOCUMENTS; i++) {
        kinds[i] = documents[i].kind;
    }
    hw_status status = check_words(m, HW_OPT_ONLY, kinds, DOCUMENTS);
    if (status == HW_OK) {
        status = check_words(
            m, HW_OPT_SHOW, tables_known, (int)(sizeof tables_known / sizeof tables_known[0]));
    }
    return status;
}

static bool wants(const making *m, const char *kind)
{
    const char *only = m->opts->values[HW_OPT_ONLY];
    return only == NULL || among(only, kind);
}

static bool same_file(const char *a, const char *b)
{
    struct stat one;
    struct stat other;
    return stat(a, &one) == 0 && stat(b, &other) == 0 && one.st_dev == other.st_dev &&
           one.st_ino == other.st_ino;
}

/* What the plan is made from is never written over, not even where that is asked for. */
static hw_status check_free(const making *m, const char *path)
{
    const char *why = NULL;
    if (same_file(path, m->opts->args[0])) {
        why = "this is the project itself, which stays as it is; rename it to end in .yaml, or "
              "write elsewhere with `--into FOLDER`";
    } else if (m->project.knitted_path != NULL && same_file(path, m->project.knitted_path)) {
        why = "this file holds the measured pieces of the project and stays as it is; write "
              "elsewhere with `--into FOLDER`, or give it another name";
    }
    if (why == NULL) {
        return HW_OK;
    }
    hw_err_where(m->err, path);
    return hw_err_set(m->err, HW_ERR_IO, "%s", why);
}

static hw_status calculate(making *m)
{
    const char *file = m->opts->args[0];
    hw_status status = hw_load_project(file, m->arena, &m->project, m->err);
    if (status != HW_OK) {
        return status;
    }
    const char *size = m->opts->values[HW_OPT_SIZE];
    if (size != NULL) {
        status = hw_load_size(&m->project.body, size, &m->project.only_size, m->err);
        m->project.only_size++;
    }
    if (status == HW_OK) {
        status = hw_calculate_plan(&m->project, m->arena, &m->plan, m->err);
    }
    if (status == HW_OK) {
        status = hw_cells_plan(&m->plan, m->arena, &m->tables);
        status = status == HW_OK ? HW_OK : no_memory(m);
    }
    if (status != HW_OK) {
        hw_load_blame(&m->project, file, m->err);
    }
    return status;
}

/* The tables that are asked for, in the order of the plan. */
static hw_status print_tables(making *m)
{
    const char *show = m->opts->values[HW_OPT_SHOW];
    show = show != NULL ? show : "sizes,hem,notes";
    hw_tables shown = { .tables =
                            hw_arena_get(m->arena, (size_t)m->tables.count, sizeof *shown.tables) };
    if (shown.tables == NULL) {
        return no_memory(m);
    }
    for (int i = 0; i < m->tables.count; i++) {
        const char *name = m->tables.tables[i].name;
        char first = (char)(name[0] - 'A' + 'a'); /* the sheets' names begin with a capital */
        int len = (int)strcspn(name, " ");        /* "Chart 2" goes with "chart" */
        char *word = hw_arena_format(m->arena, "%c%.*s", first, len - 1, name + 1);
        if (word == NULL) {
            return no_memory(m);
        }
        if (among(show, "all") || among(show, word)) {
            shown.tables[shown.count++] = m->tables.tables[i];
        }
    }
    hw_status status = hw_text_tables(&shown, NULL, m->out);
    return status == HW_OK ? HW_OK : no_memory(m);
}

static hw_status write_document(making *m, int number)
{
    hw_buf buf;
    const char *path = hw_docs_path(&m->docs, documents[number].ending);
    hw_status status = path == NULL ? HW_OK : check_free(m, path);
    if (status != HW_OK) {
        return status;
    }
    status = hw_docs_open(&m->docs, path, &buf);
    status = status == HW_OK ? documents[number].write(m, &buf) : status;
    return hw_docs_close(&m->docs, &buf, status);
}

static hw_status write_documents(making *m)
{
    hw_status status = HW_OK;
    bool any = false;
    for (int i = 0; i < DOCUMENTS && status == HW_OK; i++) {
        if (documents[i].write == NULL || !wants(m, documents[i].kind)) {
            continue;
        }
        status = any ? HW_OK : hw_docs_folder(&m->docs);
        status = status == HW_OK ? write_document(m, i) : status;
        any = true;
    }
    return hw_docs_end(&m->docs, status, m->out);
}

hw_status hw_make_plan(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    making m = { .opts = opts, .arena = arena, .out = buf, .err = err };
    hw_docs_begin(&m.docs, opts, arena, err);
    hw_status status = check_choices(&m);
    status = status == HW_OK ? calculate(&m) : status;
    if (status == HW_OK && wants(&m, "table")) {
        status = print_tables(&m);
        hw_buf_text(buf, "\n");
    }
    return status == HW_OK ? write_documents(&m) : status;
}

/* The title line of the starter becomes the name, between quotes. */
static void retitle(const hw_io_text *text, const char *name, hw_buf *buf)
{
    const char *line = strstr(text->text, "title:");
    if (line == NULL || strpbrk(name, "\"\\") != NULL) {
        hw_buf_bytes(buf, text->text, text->len);
        return;
    }
    const char *rest = line + strcspn(line, "\n");
    hw_buf_bytes(buf, text->text, (size_t)(line - text->text));
    hw_buf_format(buf, "title: \"%s\"", name);
    hw_buf_text(buf, rest);
}

static hw_status read_starter(const making *m, hw_io_text *text)
{
    const char *folder = hw_load_folder(m->arena);
    const char *from =
        folder == NULL ? NULL : hw_arena_format(m->arena, "%s/demo/starter.yaml", folder);
    if (from == NULL) {
        return no_memory(m);
    }
    struct stat about;
    if (stat(from, &about) != 0) {
        return hw_load_lost(from, m->err);
    }
    hw_status status = hw_io_read(from, m->arena, HW_BUF_LIMIT, text, m->err);
    hw_err_where(status == HW_OK ? NULL : m->err, from);
    return status;
}

static hw_status write_starter(making *m, const char *name, const char *path)
{
    hw_io_text text = { 0 };
    hw_buf buf;
    hw_status status = read_starter(m, &text);
    status = status == HW_OK ? hw_docs_folder(&m->docs) : status;
    if (status == HW_OK) {
        status = hw_docs_open(&m->docs, path, &buf);
        if (status == HW_OK) {
            retitle(&text, name, &buf);
        }
        status = hw_docs_close(&m->docs, &buf, status);
    }
    return hw_docs_end(&m->docs, status, m->out);
}

/* Whether a name can be a file's on every disk, and does not look like an option. */
static bool is_plain(const char *name, size_t len)
{
    return len <= 100 && hw_yaml_is_text(name, len) && strpbrk(name, "/\t\r\n") == NULL &&
           strspn(name, " ") < len && name[0] != '.' && name[0] != '-';
}

/* What a path needs around it in a command. */
static const char *quotes_for(const char *path)
{
    bool plain = strpbrk(path, " &();'\"$*?!<>|") == NULL;
    return plain ? "" : strchr(path, '\'') == NULL ? "'" : "\"";
}

hw_status hw_make_new(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    making m = { .opts = opts, .arena = arena, .out = buf, .err = err };
    const char *name = opts->args[0];
    size_t len = strlen(name);
    if (len > 5 && strcmp(name + len - 5, ".yaml") == 0) {
        len -= 5;
    }
    if (!is_plain(name, len)) {
        return hw_err_set(err, HW_ERR_USAGE,
            "`%.*s` cannot be a file's name here; give a plain name such as meadow-dress, and a "
            "folder behind `--into`",
            hw_words_cut(name, 60), name);
    }
    const char *title = hw_arena_text(arena, name, len);
    const char *into = opts->values[HW_OPT_INTO];
    const char *path = hw_arena_format(
        arena, "%s%s%.*s.yaml", into != NULL ? into : "", into != NULL ? "/" : "", (int)len, name);
    if (title == NULL || path == NULL) {
        return no_memory(&m);
    }
    hw_docs_begin(&m.docs, opts, arena, err);
    hw_status status = write_starter(&m, title, path);
    if (status == HW_OK) {
        const char *quote = quotes_for(path);
        hw_buf_format(buf, "Work it out with: hemwright plan %s%s%s\n", quote, path, quote);
    }
    return status;
}
