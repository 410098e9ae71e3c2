/* Every value of a tree against its row of the key table.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/check.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"

#define K(name) HW_KIND_##name

enum { MOST_KEYS = 24 }; /* in one part */

enum { QUOTED_NAME = 60, QUOTED_VALUE = 40 }; /* bytes of each in a message */

/* One check: the unit in use, and the key whose value is looked at. */
typedef struct {
    hw_unit usual;
    const char *name;
    hw_err *err;
} check;

/* What a value should have been, as a fixed text. */
typedef struct {
    char text[256]; /* what a buffer asks for first */
} sentence;

static void *sentence_grab(void *context, size_t size)
{
    sentence *room = context;
    return size <= sizeof room->text ? room->text : NULL;
}

static void sentence_drop(void *context, void *block)
{
    (void)context;
    (void)block;
}

/* The kind's words without an allocation that could be refused: "a whole number, 1 to 400". */
static const char *kind_words(const hw_key *key, sentence *room)
{
    hw_mem mem = { .grab = sentence_grab, .drop = sentence_drop, .context = room };
    hw_buf buf;
    hw_buf_init(&buf, &mem, sizeof room->text - 1);
    room->text[0] = '\0';
    bool bare = key->kind == K(TEXT) || key->kind == K(WORD) || key->kind == K(YES_NO);
    hw_buf_text(&buf, bare ? "" : "a ");
    hw_key_show_kind(&buf, key);
    return room->text;
}

static hw_status at_node(const check *c, hw_status status, const hw_node *node)
{
    return hw_err_place(c->err, status, node->line, node->column);
}

/* How a value of a kind is written. */
static const char *way_to_write(hw_kind kind)
{
    switch (kind) {
    case K(PART):
        return "write its lines below it, indented";
    case K(PARTS):
        return "begin each group below it with `- `";
    case K(TEXTS):
    case K(COUNTS):
    case K(LENGTHS):
        return "write it as [a, b, c]";
    case K(CHART):
        return "write `chart: |` and the rows on the lines below it, indented";
    case K(TEXT):
    case K(WORD):
    case K(YES_NO):
    case K(COUNT):
    case K(NUMBER):
    case K(LENGTH):
    case K(EASE):
    case K(RULE):
    case K(COUNT_OF):
        break;
    }
    return "write one value on the same line";
}

static const char *found_words(const hw_node *node)
{
    switch (node->kind) {
    case HW_NODE_LIST:
        return "a list stands";
    case HW_NODE_MAP:
        return "a group stands";
    case HW_NODE_WORD:
        break;
    }
    if (node->len == 0) {
        return "nothing stands";
    }
    return memchr(node->text, '\n', node->len) != NULL ? "several lines stand" : "one value stands";
}

static hw_status wrong_kind(const check *c, const hw_key *key, const hw_node *node)
{
    sentence room;
    (void)hw_err_set(c->err, HW_ERR_KIND, "`%.*s` wants %s, and %s here; %s",
        hw_words_cut(c->name, QUOTED_NAME), c->name, kind_words(key, &room), found_words(node),
        way_to_write(key->kind));
    return at_node(c, HW_ERR_KIND, node);
}

static hw_status wrong_value(
    const check *c, hw_status status, const hw_key *key, const hw_node *node)
{
    sentence room;
    int name_bytes = hw_words_cut(c->name, QUOTED_NAME);
    int value_bytes = hw_words_cut(node->text, QUOTED_VALUE);
    if (memchr(node->text, ',', node->len) != NULL && key->kind != K(WORD)) {
        (void)hw_err_set(c->err, status,
            "`%.*s`: `%.*s` cannot be read; write numbers with a point and no comma, such as 31.5",
            name_bytes, c->name, value_bytes, node->text);
    } else {
        (void)hw_err_set(c->err, status, "`%.*s`: `%.*s` does not fit here; write %s", name_bytes,
            c->name, value_bytes, node->text, kind_words(key, &room));
    }
    return at_node(c, status, node);
}

static hw_status in_range(const check *c, const hw_key *key, const hw_node *node)
{
    bool inside = node->number >= key->least && node->number <= key->most;
    return inside ? HW_OK : wrong_value(c, HW_ERR_RANGE, key, node);
}

static hw_status check_count(const check *c, const hw_key *key, hw_node *node)
{
    int count = 0;
    size_t used = 0;
    hw_status status = hw_num_parse_count(node->text, node->len, &count, &used);
    if (status != HW_OK || used != node->len) {
        return wrong_value(c, HW_ERR_SYNTAX, key, node);
    }
    node->number = count;
    return in_range(c, key, node);
}

static hw_status check_number(const check *c, const hw_key *key, hw_node *node)
{
    hw_status status = hw_num_parse(node->text, node->len, &node->number, NULL);
    return status != HW_OK ? wrong_value(c, status, key, node) : in_range(c, key, node);
}

/* A decimal comma or an exponent, which is no unit. */
static bool number_goes_on(const char *text)
{
    return strpbrk(text + strcspn(text, ",eE"), "0123456789") != NULL;
}

static hw_status check_length(const check *c, const hw_key *key, hw_node *node)
{
    hw_status status = hw_length_parse(node->text, node->len, c->usual, &node->number);
    if (status == HW_ERR_UNKNOWN && number_goes_on(node->text)) {
        status = HW_ERR_SYNTAX;
    }
    if (status == HW_ERR_UNKNOWN) {
        (void)hw_err_set(c->err, status,
            "`%.*s`: the unit in `%.*s` is not known; use cm, mm, in, m or yd",
            hw_words_cut(c->name, QUOTED_NAME), c->name, hw_words_cut(node->text, QUOTED_VALUE),
            node->text);
        return at_node(c, status, node);
    }
    return status != HW_OK ? wrong_value(c, status, key, node) : in_range(c, key, node);
}

static hw_status check_ease(const check *c, const hw_key *key, hw_node *node)
{
    size_t used = 0;
    hw_status status = hw_num_parse(node->text, node->len, &node->number, &used);
    if (status != HW_OK) {
        return wrong_value(c, status, key, node);
    }
    const char *unit = node->text + used + strspn(node->text + used, " ");
    if (strcmp(unit, "%") != 0) {
        return check_length(c, key, node);
    }
    node->percent = true;
    if (!(node->number >= -50 && node->number <= 200)) {
        (void)hw_err_set(c->err, HW_ERR_RANGE,
            "`%.*s`: `%.*s` is too much; write a percentage from -50 %% to 200 %%, or a length",
            hw_words_cut(c->name, QUOTED_NAME), c->name, hw_words_cut(node->text, QUOTED_VALUE),
            node->text);
        return at_node(c, HW_ERR_RANGE, node);
    }
    return HW_OK;
}

static hw_status check_word(const check *c, const hw_key *key, hw_node *node)
{
    int index = 0;
    for (const char *w = key->words; *w != '\0'; index++) {
        const char *end = hw_keys_word_end(w);
        if ((size_t)(end - w) == node->len && memcmp(w, node->text, node->len) == 0) {
            node->number = index;
            return HW_OK;
        }
        w = *end == '|' ? end + 1 : end;
    }
    return wrong_value(c, HW_ERR_UNKNOWN, key, node);
}

static hw_status check_yes_no(const check *c, const hw_key *key, hw_node *node)
{
    bool yes = strcmp(node->text, "yes") == 0;
    if (!yes && strcmp(node->text, "no") != 0) {
        return wrong_value(c, HW_ERR_UNKNOWN, key, node);
    }
    node->number = yes;
    return HW_OK;
}

static hw_status check_text(const check *c, const hw_key *key, hw_node *node)
{
    if (memchr(node->text, '\n', node->len) != NULL) {
        return wrong_kind(c, key, node);
    }
    if (hw_words_letters(node->text, node->len) > HW_MAX_TEXT) {
        (void)hw_err_set(c->err, HW_ERR_LIMIT, "`%.*s`: this is too long; write at most %d letters",
            hw_words_cut(c->name, QUOTED_NAME), c->name, HW_MAX_TEXT);
        return at_node(c, HW_ERR_LIMIT, node);
    }
    return HW_OK;
}

/* The text of rules and charts is read where they are built. */
static hw_status check_later(const check *c, const hw_key *key, hw_node *node)
{
    (void)c;
    (void)key;
    (void)node;
    return HW_OK;
}

typedef hw_status word_check(const check *c, const hw_key *key, hw_node *node);

/* How a word of each kind is checked; of a list, how each of its words is. */
static word_check *const word_checks[] = {
    [K(TEXT)] = check_text,
    [K(WORD)] = check_word,
    [K(YES_NO)] = check_yes_no,
    [K(COUNT)] = check_count,
    [K(NUMBER)] = check_number,
    [K(LENGTH)] = check_length,
    [K(EASE)] = check_ease,
    [K(RULE)] = check_later,
    [K(CHART)] = check_later,
    [K(TEXTS)] = check_text,
    [K(COUNTS)] = check_count,
    [K(LENGTHS)] = check_length,
    [K(PART)] = NULL,
    [K(PARTS)] = NULL,
};

static hw_status check_one(const check *c, const hw_key *key, hw_node *node)
{
    if (node->kind != HW_NODE_WORD) {
        return wrong_kind(c, key, node);
    }
    if (node->len == 0 && key->kind != K(CHART)) {
        (void)hw_err_set(c->err, HW_ERR_MISSING,
            "a value is missing in `%.*s`; a # begins a remark: put a value that holds # between "
            "quotes",
            hw_words_cut(c->name, QUOTED_NAME), c->name);
        return at_node(c, HW_ERR_MISSING, node);
    }
    return word_checks[key->kind](c, key, node);
}

/* One value of a list, checked and spoken of as what it is by itself. */
static hw_status check_item(const check *c, const hw_key *list, hw_node *node)
{
    if (list->kind == K(LENGTHS) && node->kind == HW_NODE_WORD &&
        strcmp(node->text, "between") == 0) {
        node->between = true;
        return HW_OK;
    }
    hw_key key = *list;
    key.kind = list->kind == K(TEXTS) ? K(TEXT) : list->kind == K(COUNTS) ? K(COUNT) : K(LENGTH);
    return check_one(c, &key, node);
}

static hw_status check_list(const check *c, const hw_key *key, hw_node *node)
{
    /* One word where a list of words may stand: a list of one. */
    if (node->kind == HW_NODE_WORD && key->kind != K(PARTS)) {
        return check_item(c, key, node);
    }
    if (node->kind != HW_NODE_LIST) {
        return wrong_kind(c, key, node);
    }
    if (node->count == 0) {
        (void)hw_err_set(c->err, HW_ERR_MISSING,
            "`%.*s` is an empty list; write at least one value between the [ ], or leave the line "
            "out",
            hw_words_cut(c->name, QUOTED_NAME), c->name);
        return at_node(c, HW_ERR_MISSING, node);
    }
    hw_status status = HW_OK;
    for (hw_node *item = node->first; item != NULL && status == HW_OK; item = item->next) {
        status = key->kind == K(PARTS) ? hw_check_part(item, key->part, c->usual, c->err)
                                       : check_item(c, key, item);
    }
    return status;
}

static hw_status check_value(const check *c, const hw_key *key, hw_node *node)
{
    switch (key->kind) {
    case K(TEXTS):
    case K(COUNTS):
    case K(LENGTHS):
    case K(PARTS):
        return check_list(c, key, node);
    case K(PART):
        if (node->kind != HW_NODE_MAP) {
            return wrong_kind(c, key, node);
        }
        return hw_check_part(node, key->part, c->usual, c->err);
    case K(TEXT):
    case K(WORD):
    case K(YES_NO):
    case K(COUNT):
    case K(NUMBER):
    case K(LENGTH):
    case K(EASE):
    case K(RULE):
    case K(CHART):
    case K(COUNT_OF):
        break;
    }
    return check_one(c, key, node);
}

static const hw_key *key_of(hw_part part, const char *name)
{
    int count = 0;
    const hw_key *keys = hw_keys_all(&count);
    for (int i = 0; i < count; i++) {
        bool named = strcmp(keys[i].name, name) == 0 || strcmp(keys[i].name, "*") == 0;
        if (keys[i].in == part && named) {
            return &keys[i];
        }
    }
    return NULL;
}

static hw_status unknown_key(const check *c, hw_part part, const hw_node *node)
{
    const char *names[MOST_KEYS];
    int count = 0;
    int known = 0;
    const hw_key *keys = hw_keys_all(&count);
    for (int i = 0; i < count; i++) {
        if (keys[i].in == part && known < MOST_KEYS) {
            names[known++] = keys[i].name;
        }
    }
    const char *near = hw_words_nearest(node->key, names, known);
    if (node->key[0] >= '0' && node->key[0] <= '9') {
        (void)hw_err_set(c->err, HW_ERR_UNKNOWN,
            "`%.*s` is not known in %s; if it belongs to a number, write it with a point and no "
            "comma, such as 31.5",
            hw_words_cut(node->key, QUOTED_NAME), node->key, hw_part_name(part));
    } else if (near != NULL) {
        (void)hw_err_set(c->err, HW_ERR_UNKNOWN, "`%.*s` is not known in %s; did you mean `%s`?",
            hw_words_cut(node->key, QUOTED_NAME), node->key, hw_part_name(part), near);
    } else {
        (void)hw_err_set(c->err, HW_ERR_UNKNOWN,
            "`%.*s` is not known in %s; `hemwright keys` lists what can stand there",
            hw_words_cut(node->key, QUOTED_NAME), node->key, hw_part_name(part));
    }
    return hw_err_place(c->err, HW_ERR_UNKNOWN, node->key_line, node->key_column);
}

static hw_status find_missing(const check *c, const hw_node *node, hw_part part)
{
    int count = 0;
    const hw_key *keys = hw_keys_all(&count);
    for (int i = 0; i < count; i++) {
        if (keys[i].in == part && keys[i].required && hw_node_find(node, keys[i].name) == NULL) {
            (void)hw_err_set(c->err, HW_ERR_MISSING, "`%s` is missing in %s: %s", keys[i].name,
                hw_part_name(part), keys[i].help);
            return at_node(c, HW_ERR_MISSING, node);
        }
    }
    return HW_OK;
}

hw_status hw_check_part(hw_node *node, hw_part part, hw_unit usual, hw_err *err)
{
    check c = { .usual = usual, .err = err };
    if (node->kind != HW_NODE_MAP) {
        (void)hw_err_set(err, HW_ERR_KIND, "%s wants lines of the form `key: value`, and %s here",
            hw_part_name(part), found_words(node));
        return at_node(&c, HW_ERR_KIND, node);
    }
    for (hw_node *child = node->first; child != NULL; child = child->next) {
        const hw_key *key = key_of(part, child->key);
        c.name = child->key;
        hw_status status = key == NULL ? unknown_key(&c, part, child) : check_value(&c, key, child);
        if (status != HW_OK) {
            return status;
        }
    }
    return find_missing(&c, node, part);
}

hw_unit hw_check_usual_unit(const hw_node *root)
{
    const hw_node *units = hw_node_find(root, "units");
    bool inches = units != NULL && units->kind == HW_NODE_WORD && strcmp(units->text, "in") == 0;
    return inches ? HW_UNIT_IN : HW_UNIT_CM;
}

hw_status hw_check_file(const hw_check_task *task, hw_arena *arena, hw_node **out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status = hw_yaml_read(task->text, task->len, arena, &root, err);
    if (status == HW_OK) {
        status = hw_check_part(root, task->part, hw_check_usual_unit(root), err);
    }
    if (status == HW_OK) {
        *out = root;
    }
    return status;
}
