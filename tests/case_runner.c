/* Runs the worked examples under tests/cases: each names its source, or says that it has none.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glob.h>
#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "case_calls.h"
#include "core/num.h"
#include "status_names.h"

enum { LINE_BYTES = 1000 };
#define USUAL_TOLERANCE 1e-9 /* where a case has no `within` line */

/* What a run has come to, and the file that is being read. */
typedef struct {
    const char *path;
    int passed, failed;
    hw_case example;
    bool open; /* a case has begun and was not run yet */
} Run;

static bool complain(const Run *run, int line, const char *words, const char *about)
{
    printf("%s:%d: %s: %s\n", run->path, line, words, about);
    return false;
}

static const hw_case_line *line_for(const hw_case_line *lines, int count, const char *key)
{
    for (int i = 0; i < count; i++) {
        if (strcmp(lines[i].key, key) == 0) {
            return &lines[i];
        }
    }
    return NULL;
}

static const hw_case_result *result_for(const hw_case *example, const char *name)
{
    for (int i = 0; i < example->result_count; i++) {
        if (strcmp(example->results[i].name, name) == 0) {
            return &example->results[i];
        }
    }
    return NULL;
}

static bool number_in(const hw_case_line *line, double *out)
{
    return hw_num_parse(line->value, strlen(line->value), out, NULL) == HW_OK;
}

static bool as_expected(Run *run, const hw_case_line *expect)
{
    const hw_case *example = &run->example;
    const hw_case_result *result = result_for(example, expect->key);
    const hw_case_line *within = line_for(example->within, example->within_count, expect->key);
    double wanted = 0;
    double tolerance = USUAL_TOLERANCE;
    if (result == NULL) {
        return complain(run, expect->line, "the call gives nothing of this name", expect->key);
    }
    if (!number_in(expect, &wanted) || (within != NULL && !number_in(within, &tolerance))) {
        return complain(run, expect->line, "not a number", expect->value);
    }
    if (fabs(result->value - wanted) <= tolerance) {
        return true;
    }
    printf("%s:%d: %s is %.9g, not %.9g within %.3g\n", run->path, expect->line, expect->key,
        result->value, wanted, tolerance);
    return false;
}

/* Every line of a case has to count: none may be left over. */
static bool all_used(Run *run)
{
    const hw_case *example = &run->example;
    for (int i = 0; i < example->given_count; i++) {
        if (!example->given[i].used) {
            return complain(
                run, example->given[i].line, "the call does not use", example->given[i].key);
        }
    }
    for (int i = 0; i < example->within_count; i++) {
        const char *key = example->within[i].key;
        if (line_for(example->expect, example->expect_count, key) == NULL) {
            return complain(run, example->within[i].line, "nothing is expected of", key);
        }
    }
    return true;
}

static bool holds(Run *run)
{
    hw_case *example = &run->example;
    const hw_case_line *error = line_for(example->expect, example->expect_count, "error");
    if (example->source[0] == '\0') {
        return complain(run, example->line, "a case without a source", example->call);
    }
    if (example->expect_count == 0 || (error != NULL && example->expect_count > 1)) {
        return complain(run, example->line, "expect results, or one error", example->call);
    }
    if (!hw_case_run(example)) {
        return complain(run, example->line, "no such call", example->call);
    }
    if (example->broken != NULL) {
        return complain(run, example->line, "missing, or not readable", example->broken);
    }
    const char *wanted = error == NULL ? "ok" : error->value;
    if (strcmp(status_name(example->status), wanted) != 0) {
        return complain(run, example->line, "came to", status_name(example->status));
    }
    bool good = all_used(run);
    for (int i = 0; error == NULL && i < example->expect_count; i++) {
        good = as_expected(run, &example->expect[i]) && good;
    }
    return good;
}

static void finish_case(Run *run)
{
    if (run->open) {
        *(holds(run) ? &run->passed : &run->failed) += 1;
    }
    run->open = false;
    run->example = (hw_case){ .status = HW_OK };
}

/* Copy without the blanks at both ends; false where it does not fit. */
static bool copy_trimmed(char *room, size_t size, const char *text, size_t len)
{
    while (len > 0 && text[0] == ' ') {
        text++;
        len--;
    }
    while (len > 0 && text[len - 1] == ' ') {
        len--;
    }
    if (len == 0 || len >= size) {
        return false;
    }
    memcpy(room, text, len);
    room[len] = '\0';
    return true;
}

static bool add_line(hw_case_line *lines, int *count, const char *text, int number)
{
    const char *equals = strchr(text, '=');
    if (equals == NULL || *count == HW_CASE_LINES) {
        return false;
    }
    hw_case_line *line = &lines[*count];
    line->line = number;
    *count += 1;
    return copy_trimmed(line->key, sizeof line->key, text, (size_t)(equals - text)) &&
           copy_trimmed(line->value, sizeof line->value, equals + 1, strlen(equals + 1)) &&
           line_for(lines, *count - 1, line->key) == NULL;
}

static bool begin_call(Run *run, const char *text, int number)
{
    if (run->open) {
        return false; /* two calls, and no blank line between them */
    }
    run->open = true;
    run->example.line = number;
    return copy_trimmed(run->example.call, sizeof run->example.call, text, strlen(text));
}

/* One line of a case file; false where it cannot be read. */
static bool take(Run *run, const char *text, int number)
{
    hw_case *example = &run->example;
    if (text[0] == '\0') {
        finish_case(run);
        return true;
    }
    if (strncmp(text, "# source ", 9) == 0) {
        return copy_trimmed(example->source, sizeof example->source, text + 9, strlen(text + 9));
    }
    if (text[0] == '#') {
        return true;
    }
    if (strncmp(text, "call ", 5) == 0) {
        return begin_call(run, text + 5, number);
    }
    if (strncmp(text, "given ", 6) == 0) {
        return add_line(example->given, &example->given_count, text + 6, number);
    }
    if (strncmp(text, "expect ", 7) == 0) {
        return add_line(example->expect, &example->expect_count, text + 7, number);
    }
    return strncmp(text, "within ", 7) == 0 &&
           add_line(example->within, &example->within_count, text + 7, number);
}

static bool run_file(Run *run)
{
    FILE *file = fopen(run->path, "r");
    if (file == NULL) {
        return complain(run, 0, "cannot be opened", run->path);
    }
    char text[LINE_BYTES];
    bool good = true;
    for (int number = 1; fgets(text, sizeof text, file) != NULL; number++) {
        text[strcspn(text, "\n")] = '\0';
        if (!take(run, text, number)) {
            good = complain(run, number, "cannot be read", text);
            run->failed++;
        }
    }
    finish_case(run);
    good = ferror(file) == 0 && good;
    (void)fclose(file); /* it was only read */
    return good;
}

/* Usage: case_runner [FILE...]; without files, those of $srcdir/tests/cases. */
int main(int argc, char **argv)
{
    gsl_set_error_handler_off();
    const char *srcdir = getenv("srcdir");
    char pattern[LINE_BYTES];
    (void)snprintf(pattern, sizeof pattern, "%s/tests/cases/*.case", srcdir ? srcdir : ".");
    glob_t found = { 0 };
    if (argc < 2 && glob(pattern, 0, NULL, &found) != 0) {
        printf("no cases in %s\n", pattern);
        return 1;
    }
    static Run run;
    bool good = true;
    size_t count = argc < 2 ? found.gl_pathc : (size_t)argc - 1;
    for (size_t i = 0; i < count; i++) {
        run.path = argc < 2 ? found.gl_pathv[i] : argv[i + 1];
        good = run_file(&run) && good;
    }
    globfree(&found);
    printf("%d passed, %d failed\n", run.passed, run.failed);
    return good && run.failed == 0 && run.passed > 0 ? 0 : 1;
}
