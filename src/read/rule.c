/* A rule's text, term by term.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/rule.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"

_Static_assert(HW_MAX_TERMS == 8 && HW_WORDS_MAX_NAME == 40, "messages below say 8 and 40");

static const char how_to_write[] =
    "write `0.5 x hem` for a part of a measurement, or a length such as `2 cm`";

typedef struct {
    const hw_node *node;
    hw_rule_reading how;
    hw_arena *arena;
    hw_rule *rule;
    hw_err *err;
} reading;

static hw_status fail(const reading *r, hw_status status, size_t at, const char *sentence)
{
    const char *text = r->node->text;
    int column = r->node->column + hw_words_letters(text, at);
    (void)hw_err_set(r->err, status, "`%.*s`: %s", hw_words_cut(text, 60), text, sentence);
    return hw_err_place(r->err, status, r->node->line, column);
}

static size_t trim(const char *text, size_t from, size_t to)
{
    while (to > from && text[to - 1] == ' ') {
        to--;
    }
    return to;
}

/* Where the term that begins at `from` ends: before ` + ` or ` - `, or at the end. */
static size_t term_end(const char *text, size_t len, size_t from)
{
    for (size_t i = from + 1; i + 1 < len; i++) {
        if ((text[i] == '+' || text[i] == '-') && text[i - 1] == ' ' && text[i + 1] == ' ') {
            return i;
        }
    }
    return len;
}

static size_t skip_blanks(const char *text, size_t from, size_t to)
{
    while (from < to && text[from] == ' ') {
        from++;
    }
    return from;
}

static bool starts(const char *text, size_t len, const char *word)
{
    size_t n = strlen(word);
    return len > n && memcmp(text, word, n) == 0;
}

static hw_status add_name(const reading *r, double factor, size_t from, size_t to)
{
    const char *text = r->node->text;
    hw_term term = { .factor = factor, .finished = r->how.finished };
    from = skip_blanks(text, from, to);
    if (starts(text + from, to - from, "finished ")) {
        term.finished = true;
        from = skip_blanks(text, from + strlen("finished "), to);
    }
    if (r->rule->count == HW_MAX_TERMS) {
        return fail(r, HW_ERR_LIMIT, from,
            "there are more than 8 measurements in this sum; make two finished measurements of it");
    }
    if (memchr(text + from, '+', to - from) != NULL || text[to - 1] == '-') {
        return fail(r, HW_ERR_SYNTAX, from,
            "write + and - with a blank on both sides, and a measurement or a length behind them");
    }
    if (strchr("0123456789.-", text[from]) != NULL) {
        return fail(r, HW_ERR_SYNTAX, from, how_to_write);
    }
    if (memchr(text + from, '\n', to - from) != NULL) {
        return fail(r, HW_ERR_SYNTAX, from, "an empty line stands inside this sum; take it out");
    }
    if (!hw_words_name_fits(text + from, to - from)) {
        return fail(
            r, HW_ERR_LIMIT, from, "this measurement has a long name; write at most 40 letters");
    }
    char *name = hw_arena_text(r->arena, text + from, to - from);
    if (name == NULL) {
        return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory");
    }
    term.name = name;
    r->rule->terms[r->rule->count++] = term;
    return HW_OK;
}

static hw_status read_term(const reading *r, double sign, size_t from, size_t to)
{
    const char *text = r->node->text;
    from = skip_blanks(text, from, to);
    to = trim(text, from, to);
    if (from == to) {
        return fail(r, HW_ERR_SYNTAX, from,
            "a measurement or a length is missing here; write a sum such as `0.5 x hem + 2 cm`");
    }
    double value = 0;
    size_t used = 0;
    if (hw_num_parse(text + from, to - from, &value, &used) != HW_OK) {
        return add_name(r, sign, from, to);
    }
    size_t after = skip_blanks(text, from + used, to);
    if (starts(text + after, to - after, "x ")) {
        return add_name(r, sign * value, after + 2, to);
    }
    double length_cm = 0;
    if (hw_length_parse(text + from, to - from, r->how.usual, &length_cm) != HW_OK) {
        return fail(r, HW_ERR_SYNTAX, from, how_to_write);
    }
    r->rule->constant_cm += sign * length_cm;
    return HW_OK;
}

hw_status hw_rule_read(
    const hw_node *node, hw_rule_reading how, hw_arena *arena, hw_rule *out, hw_err *err)
{
    hw_rule rule = { .line = node->line };
    reading r = { .node = node, .how = how, .arena = arena, .rule = &rule, .err = err };
    double sign = 1;
    for (size_t from = 0;;) {
        size_t end = term_end(node->text, node->len, from);
        hw_status status = read_term(&r, sign, from, end);
        if (status != HW_OK) {
            return status;
        }
        if (end == node->len) {
            break;
        }
        sign = node->text[end] == '-' ? -1 : 1;
        from = end + 1;
    }
    *out = rule;
    return HW_OK;
}
