/* libyaml's events into a small tree, within limits and with a knitter's words for each fault.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/yaml.h"

#include <string.h>
#include <yaml.h>

#include "core/words.h"

_Static_assert(HW_WORDS_MAX_NAME == 40, "a message below says 40");

typedef struct {
    yaml_parser_t parser;
    const char *text;
    size_t len;
    hw_arena *arena;
    hw_err *err;
    int nodes;
    /* The open mappings and lists, outermost first, and the last child of each. */
    hw_node *open[HW_YAML_MAX_DEPTH];
    hw_node *last[HW_YAML_MAX_DEPTH];
    int depth;
    hw_node *root;
    char *pending; /* the key that waits for its value */
    int key_line, key_column;
} reader;

static const char backslash[] =
    "a backslash between double quotes begins a special sign; write two of them, or use single "
    "quotes";
static const char signs[] = "a value must not begin with & * or !; put it between quotes";

static const char percent[] = "a line must not begin with %; take it out, or put a # before it";

static const struct {
    const char *says;
    const char *means;
} faults[] = {
    { "mapping values are not allowed in this context",
        "there is a second `: ` in this line, or the line above it has no `:`, or this line stands "
        "further in than those around it; put text that holds `: ` between quotes" },
    { "did not find expected key",
        "this line does not stand under the ones above it; let all lines of one group begin in the "
        "same column" },
    { "could not find expected ':'", "here or in the line above a key has no `:` behind it" },
    { "found character that cannot start any token",
        "a line must not begin with a tab, nor a value with % @ or a backquote; indent with "
        "blanks, "
        "or put the value between quotes" },
    { "found a tab character", "a tab stands here; indent with blanks" },
    { "did not find expected ',' or ']'",
        "a list in [ ] is not closed, or a comma is missing between its values" },
    { "did not find expected ',' or '}'",
        "a group in { } is not closed, or a comma is missing between its parts" },
    { "found unexpected end of stream", "a quotation mark or bracket is not closed" },
    { "did not find expected node content",
        "a value is missing here, or a sign stands where a value belongs" },
    { "did not find expected comment or line break",
        "behind `|` the line must end; the rows of a chart begin on the next line" },
    { "found unknown escape character", backslash },
    { "did not find expected hexdecimal number", backslash },
    { "found invalid Unicode character escape code", backslash },
    { "did not find expected alphabetic or numeric character", signs },
    { "did not find expected whitespace or line break", signs },
    { "did not find expected tag URI", signs },
    { "found undefined tag handle", signs },
    { "found an indentation indicator", "behind `|` no 0 can stand; take it out" },
    { "found incompatible YAML document", percent },
    { "directive", percent },
    { "did not find expected <document start>",
        "a line above this one holds no `:`, or is `...`; write `key: value` there, or take it "
        "out" },
    { "found unexpected document indicator", "a quotation mark above this line is not closed" },
    { "found unexpected ':'", "a `:` stands inside a value here; put the value between quotes" },
    { "mapping keys are not allowed in this context",
        "a `?` cannot stand here; write `key: value`" },
    { "block sequence entries are not allowed in this context",
        "a `-` cannot stand here; begin the list on a line of its own" },
};

static hw_status fail_at(reader *r, hw_status code, const yaml_mark_t *mark, const char *sentence)
{
    (void)hw_err_set(r->err, code, "%s", sentence);
    return hw_err_place(r->err, code, (int)mark->line + 1, (int)mark->column + 1);
}

static hw_status no_memory(reader *r)
{
    return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory to read this file");
}

static hw_status scanner_fault(reader *r)
{
    const yaml_parser_t *p = &r->parser;
    if (p->error == YAML_MEMORY_ERROR) {
        return no_memory(r);
    }
    const char *means = "this line cannot be read; write `key: value`, one to a line, and indent "
                        "with blanks";
    const char *problem = p->problem != NULL ? p->problem : "";
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        if (strstr(problem, faults[i].says) != NULL) {
            means = faults[i].means;
        }
    }
    int began = (int)p->context_mark.line + 1;
    if (p->context != NULL && began < (int)p->problem_mark.line + 1) {
        (void)hw_err_set(
            r->err, HW_ERR_SYNTAX, "%s (what is read here began in line %d)", means, began);
    } else {
        (void)hw_err_set(r->err, HW_ERR_SYNTAX, "%s", means);
    }
    return hw_err_place(
        r->err, HW_ERR_SYNTAX, (int)p->problem_mark.line + 1, (int)p->problem_mark.column + 1);
}

/* Lines end with LF, CR LF, or CR alone. */
static bool ends_line(const reader *r, size_t at)
{
    char c = r->text[at];
    return c == '\n' || (c == '\r' && (at + 1 == r->len || r->text[at + 1] != '\n'));
}

/* Blanks before the first row of a block of text that begins behind a line. */
static int indent_below(const reader *r, size_t line)
{
    size_t at = 0;
    for (size_t n = 0; n <= line && at < r->len; at++) {
        n += ends_line(r, at);
    }
    int blanks = 0;
    while (at < r->len && r->text[at] == ' ') {
        at++;
        blanks++;
    }
    return blanks;
}

static hw_node *new_node(reader *r, hw_node_kind kind, const yaml_mark_t *mark)
{
    hw_node *node = hw_arena_get(r->arena, 1, sizeof *node);
    if (node == NULL) {
        return NULL;
    }
    node->kind = kind;
    node->line = (int)mark->line + 1;
    node->column = (int)mark->column + 1;
    node->key = r->pending;
    node->key_line = r->pending != NULL ? r->key_line : node->line;
    node->key_column = r->pending != NULL ? r->key_column : node->column;
    r->pending = NULL;
    r->nodes++;
    return node;
}

static hw_status hang(reader *r, hw_node *node, const yaml_mark_t *mark)
{
    if (node == NULL) {
        return no_memory(r);
    }
    if (r->nodes > HW_YAML_MAX_NODES) {
        return fail_at(r, HW_ERR_LIMIT, mark, "this file holds more values than any project needs");
    }
    if (r->depth == 0) {
        r->root = node;
        return HW_OK;
    }
    hw_node *parent = r->open[r->depth - 1];
    if (r->last[r->depth - 1] == NULL) {
        parent->first = node;
    } else {
        r->last[r->depth - 1]->next = node;
    }
    r->last[r->depth - 1] = node;
    parent->count++;
    return HW_OK;
}

/* Bytes of the UTF-8 character at text; 0 where it is not one, or is a control character. */
static size_t character(const unsigned char *text, size_t len)
{
    unsigned char c = text[0];
    if (c < 0x80) {
        return (c >= 0x20 && c != 0x7F) || c == '\n' || c == '\r' || c == '\t' ? 1 : 0;
    }
    size_t want = c >= 0xF0 ? 4 : c >= 0xE0 ? 3 : 2;
    if (c < 0xC2 || c > 0xF4 || want > len) {
        return 0;
    }
    for (size_t i = 1; i < want; i++) {
        if ((text[i] & 0xC0) != 0x80) {
            return 0;
        }
    }
    bool overlong = (c == 0xE0 && text[1] < 0xA0) || (c == 0xF0 && text[1] < 0x90);
    bool outside = (c == 0xED && text[1] > 0x9F) || (c == 0xF4 && text[1] > 0x8F);
    bool control = c == 0xC2 && text[1] < 0xA0;
    /* U+2028 and U+2029 part lines, U+FFFE and U+FFFF are no characters. */
    bool hidden = (c == 0xE2 && text[1] == 0x80 && (text[2] == 0xA8 || text[2] == 0xA9)) ||
                  (c == 0xEF && text[1] == 0xBF && text[2] >= 0xBE);
    return overlong || outside || control || hidden ? 0 : want;
}

bool hw_yaml_is_text(const char *text, size_t len)
{
    size_t at = 0;
    for (size_t n = 1; at < len && n > 0; at += n) {
        n = character((const unsigned char *)text + at, len - at);
    }
    return at == len;
}

static bool wants_key(const reader *r)
{
    return r->depth > 0 && r->open[r->depth - 1]->kind == HW_NODE_MAP && r->pending == NULL;
}

static hw_status take_key(reader *r, const yaml_event_t *event)
{
    const char *text = (const char *)event->data.scalar.value;
    size_t len = event->data.scalar.length;
    if (len == 0) {
        return fail_at(r, HW_ERR_SYNTAX, &event->start_mark,
            "a key belongs here: a word or a few words before the `:`");
    }
    if (!hw_words_name_fits(text, len)) {
        return fail_at(r, HW_ERR_LIMIT, &event->start_mark,
            "this key is too long; write a few words before the `:`, at most 40 letters");
    }
    r->pending = hw_arena_text(r->arena, text, len);
    if (r->pending == NULL) {
        return no_memory(r);
    }
    r->key_line = (int)event->start_mark.line + 1;
    r->key_column = (int)event->start_mark.column + 1;
    const hw_node *other = hw_node_find(r->open[r->depth - 1], r->pending);
    if (other != NULL) {
        (void)hw_err_set(r->err, HW_ERR_REPEATED,
            "`%.*s` stands here a second time; the first is in line %d: keep one of them",
            hw_words_cut(r->pending, 60), r->pending, other->key_line);
        return hw_err_place(r->err, HW_ERR_REPEATED, r->key_line, r->key_column);
    }
    return HW_OK;
}

static hw_status take_word(reader *r, const yaml_event_t *event)
{
    if (event->data.scalar.anchor != NULL || event->data.scalar.tag != NULL) {
        return fail_at(r, HW_ERR_SYNTAX, &event->start_mark,
            "a value must not begin with & or !; put it between quotes");
    }
    /* Between double quotes a backslash can make a sign that the file itself does not hold. */
    if (!hw_yaml_is_text((const char *)event->data.scalar.value, event->data.scalar.length)) {
        return fail_at(r, HW_ERR_SYNTAX, &event->start_mark,
            "a backslash makes a sign here that cannot be shown; write single quotes, or two "
            "backslashes for one");
    }
    if (wants_key(r)) {
        return take_key(r, event);
    }
    hw_node *node = new_node(r, HW_NODE_WORD, &event->start_mark);
    if (node != NULL) {
        node->len = event->data.scalar.length;
        node->text = hw_arena_text(r->arena, (const char *)event->data.scalar.value, node->len);
        node->block = event->data.scalar.style == YAML_LITERAL_SCALAR_STYLE;
        node->block_indent = node->block ? indent_below(r, event->start_mark.line) : 0;
        if (node->text == NULL) {
            return no_memory(r);
        }
    }
    return hang(r, node, &event->start_mark);
}

static hw_status take_open(reader *r, const yaml_event_t *event, hw_node_kind kind)
{
    const yaml_char_t *anchor =
        kind == HW_NODE_MAP ? event->data.mapping_start.anchor : event->data.sequence_start.anchor;
    const yaml_char_t *tag =
        kind == HW_NODE_MAP ? event->data.mapping_start.tag : event->data.sequence_start.tag;
    if (anchor != NULL || tag != NULL) {
        return fail_at(
            r, HW_ERR_SYNTAX, &event->start_mark, "& and ! have no meaning here; leave them out");
    }
    if (wants_key(r)) {
        return fail_at(
            r, HW_ERR_SYNTAX, &event->start_mark, "a key must be words, not a list or a group");
    }
    if (r->depth == HW_YAML_MAX_DEPTH) {
        return fail_at(r, HW_ERR_LIMIT, &event->start_mark,
            "groups stand inside groups deeper here than any project needs; is a bracket or an "
            "indent too many?");
    }
    hw_node *node = new_node(r, kind, &event->start_mark);
    hw_status status = hang(r, node, &event->start_mark);
    if (status == HW_OK) {
        r->open[r->depth] = node;
        r->last[r->depth] = NULL;
        r->depth++;
    }
    return status;
}

static hw_status take(reader *r, const yaml_event_t *event)
{
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        return take_word(r, event);
    case YAML_SEQUENCE_START_EVENT:
        return take_open(r, event, HW_NODE_LIST);
    case YAML_MAPPING_START_EVENT:
        return take_open(r, event, HW_NODE_MAP);
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        r->depth--;
        return HW_OK;
    case YAML_ALIAS_EVENT:
        return fail_at(r, HW_ERR_SYNTAX, &event->start_mark,
            "a value must not begin with *; put it between quotes, or write it out");
    case YAML_DOCUMENT_START_EVENT:
        if (r->root != NULL) {
            return fail_at(r, HW_ERR_SYNTAX, &event->start_mark,
                "a second document begins here; one file holds one project: take the `---` out");
        }
        return HW_OK;
    case YAML_NO_EVENT:
    case YAML_STREAM_START_EVENT:
    case YAML_STREAM_END_EVENT:
    case YAML_DOCUMENT_END_EVENT:
        return HW_OK;
    }
    return HW_OK;
}

/* UTF-8 throughout, no control characters, no line past the limit. */
static hw_status check_text(reader *r)
{
    yaml_mark_t mark = { 0 };
    for (size_t at = 0; at < r->len;) {
        size_t n = character((const unsigned char *)r->text + at, r->len - at);
        if (n == 0) {
            return fail_at(r, HW_ERR_SYNTAX, &mark,
                "a sign that cannot be read stands here; delete it, or save the file as plain "
                "text in UTF-8");
        }
        bool end = ends_line(r, at);
        mark.line += end;
        mark.column = end ? 0 : mark.column + 1;
        if (mark.column > HW_YAML_MAX_LINE) {
            return fail_at(
                r, HW_ERR_LIMIT, &mark, "this line is too long; break a list after a comma");
        }
        at += n;
    }
    return HW_OK;
}

static hw_status read_events(reader *r)
{
    hw_status status = HW_OK;
    for (bool done = false; status == HW_OK && !done;) {
        yaml_event_t event;
        if (!yaml_parser_parse(&r->parser, &event)) {
            return scanner_fault(r);
        }
        done = event.type == YAML_STREAM_END_EVENT;
        status = take(r, &event);
        yaml_event_delete(&event);
    }
    return status;
}

hw_status hw_yaml_read(const char *text, size_t len, hw_arena *arena, hw_node **out, hw_err *err)
{
    if (len > HW_YAML_MAX_BYTES) {
        return hw_err_set(err, HW_ERR_LIMIT, "%s",
            "this file is larger than a million bytes, which no project needs; is it the right "
            "one?");
    }
    /* Some editors begin a file with a mark of its encoding. */
    if (len >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0) {
        text += 3;
        len -= 3;
    }
    reader r = { .text = text, .len = len, .arena = arena, .err = err };
    hw_status status = check_text(&r);
    if (status != HW_OK) {
        return status;
    }
    if (!yaml_parser_initialize(&r.parser)) {
        return no_memory(&r);
    }
    yaml_parser_set_encoding(&r.parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&r.parser, (const unsigned char *)text, len);
    status = read_events(&r);
    yaml_parser_delete(&r.parser);
    if (status == HW_OK && (r.root == NULL || r.root->kind != HW_NODE_MAP)) {
        status = hw_err_set(err, HW_ERR_SYNTAX, "%s",
            "no `key: value` lines are in this file; `hemwright new` writes one to start from");
        (void)hw_err_place(err, status, 1, 1);
    }
    if (status == HW_OK) {
        *out = r.root;
    }
    return status;
}

hw_node *hw_node_find(const hw_node *node, const char *key)
{
    hw_node *child = node != NULL && node->kind == HW_NODE_MAP ? node->first : NULL;
    while (child != NULL && strcmp(child->key, key) != 0) {
        child = child->next;
    }
    return child;
}

hw_status hw_node_refuse(hw_err *err, hw_status status, const hw_node *node, const char *sentence)
{
    (void)hw_err_set(err, status, "%s", sentence);
    return hw_err_place(err, status, node->line, node->column);
}
