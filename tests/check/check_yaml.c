/* The strict part of YAML: trees, places, limits, and what is said of everything that is refused.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/yaml.h"

#include <stdlib.h>
#include <string.h>

#include "core/words.h"
#include "fixture.h"
#include "reading.h"

static hw_status read_tree(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status = hw_yaml_read(text, len, room, &root, err);
    if (status == HW_OK) {
        *(hw_node **)out = root;
    }
    return status;
}

static const hw_check_reader reader = {
    .good = "title: Hem # a remark\n"
            "names: [small, 'two words', \"three\"]\n"
            "hem:\n"
            "  depth: 4.5 cm\n"
            "  chart: |\n"
            "    .o.\n"
            "    ooo\n"
            "list:\n"
            "  - stitches: 40\n"
            "    rows: 60\n"
            "  - {stitches: 41, rows: 61}\n",
    .read = read_tree,
    .size = sizeof(hw_node *),
};

static const hw_node *item(const hw_node *list, int index)
{
    const hw_node *node = list->first;
    while (index-- > 0) {
        node = node->next;
    }
    return node;
}

static void check_word(const hw_node *word, const char *text, int line, int column)
{
    ck_assert_ptr_nonnull(word);
    ck_assert_int_eq(word->kind, HW_NODE_WORD);
    ck_assert_str_eq(word->text, text);
    ck_assert_uint_eq(word->len, strlen(text));
    ck_assert_int_eq(word->line, line);
    ck_assert_int_eq(word->column, column);
}

/* By hand: lines and columns counted in the text above. */
START_TEST(a_tree_with_places)
{
    hw_node *root = NULL;
    hw_check_taken(&reader, reader.good, &arena, &root);
    ck_assert_int_eq(root->kind, HW_NODE_MAP);
    ck_assert_int_eq(root->count, 4);
    check_word(hw_node_find(root, "title"), "Hem", 1, 8);
    const hw_node *names = hw_node_find(root, "names");
    ck_assert_int_eq(names->kind, HW_NODE_LIST);
    ck_assert_int_eq(names->count, 3);
    check_word(item(names, 0), "small", 2, 9);
    check_word(item(names, 1), "two words", 2, 16);
    check_word(item(names, 2), "three", 2, 29);
    ck_assert_ptr_null(item(names, 0)->key);
    const hw_node *hem = hw_node_find(root, "hem");
    ck_assert_int_eq(hem->key_line, 3);
    ck_assert_int_eq(hem->key_column, 1);
    ck_assert_int_eq(hem->line, 4);
    check_word(hw_node_find(hem, "depth"), "4.5 cm", 4, 10);
    ck_assert(!hw_node_find(hem, "depth")->block);
    const hw_node *chart = hw_node_find(hem, "chart");
    check_word(chart, ".o.\nooo\n", 5, 10);
    ck_assert(chart->block);
    ck_assert_int_eq(chart->block_indent, 4);
    const hw_node *list = hw_node_find(root, "list");
    ck_assert_int_eq(list->count, 2);
    check_word(hw_node_find(item(list, 0), "rows"), "60", 10, 11);
    check_word(hw_node_find(item(list, 1), "rows"), "61", 11, 26);
    ck_assert_ptr_null(hw_node_find(root, "depth"));
    ck_assert_ptr_null(hw_node_find(names, "small"));
    ck_assert_ptr_null(hw_node_find(NULL, "title"));
}
END_TEST

/* Own choice: a mark of the encoding, and all three ways to end a line, change nothing. */
static const struct {
    const char *before, *line_end;
} dresses[] = { { "\xEF\xBB\xBF", "\n" }, { "", "\r\n" }, { "", "\r" }, { "\xEF\xBB\xBF", "\r\n" },
    { "---\n", "\n" } };

START_TEST(dressed_otherwise)
{
    size_t ends = strlen(dresses[_i].line_end);
    char *text = calloc(strlen(reader.good) * 2 + 8, 1);
    ck_assert_ptr_nonnull(text);
    size_t len = strlen(dresses[_i].before);
    memcpy(text, dresses[_i].before, len);
    for (const char *at = reader.good; *at != '\0'; at++) {
        bool end = *at == '\n';
        memcpy(text + len, end ? dresses[_i].line_end : at, end ? ends : 1);
        len += end ? ends : 1;
    }
    hw_node *root = NULL;
    hw_check_taken(&reader, text, &arena, &root);
    int more = dresses[_i].before[0] == '-' ? 1 : 0;
    check_word(hw_node_find(root, "title"), "Hem", 1 + more, 8);
    const hw_node *chart = hw_node_find(hw_node_find(root, "hem"), "chart");
    check_word(chart, ".o.\nooo\n", 5 + more, 10);
    ck_assert_int_eq(chart->block_indent, 4);
    check_word(hw_node_find(item(hw_node_find(root, "list"), 0), "rows"), "60", 10 + more, 11);
    free(text);
}
END_TEST

/* By hand: a letter of two bytes is one column. */
START_TEST(columns_count_letters)
{
    hw_node *root = NULL;
    hw_check_taken(
        &reader, "Ärmelläng\xC3\xA9: [\xC3\xA9\xE2\x82\xAC, \xF0\x9F\xA7\xB6, x]\n", &arena, &root);
    const hw_node *list = hw_node_find(root, "Ärmelläng\xC3\xA9");
    ck_assert_ptr_nonnull(list);
    check_word(item(list, 1), "\xF0\x9F\xA7\xB6", 1, 18);
    check_word(item(list, 2), "x", 1, 21);
}
END_TEST

/* Places by hand. libyaml often points at the line behind the mistake; then the line where it
 * began is in the text. */
static const hw_check_fault faults[] = {
    { "title: Hem", "title: a: b", HW_ERR_SYNTAX, 1, 9, "a second `: `", "between quotes" },
    { "title: Hem #", "title #", HW_ERR_SYNTAX, 2, 1, "holds no `:`", "write `key: value` there" },
    { "hem:\n", " hem:\n", HW_ERR_SYNTAX, 3, 2, "does not stand under", "same column" },
    { "  depth: 4.5", "   depth: 4.5", HW_ERR_SYNTAX, 5, 3, "does not stand under", "same column" },
    { "  - stitches: 40\n", "  - stitches\n", HW_ERR_SYNTAX, 10, 9, "line above it has no `:`",
        "between quotes" },
    { "hem:\n", "hem:\n\tfold: x\n", HW_ERR_SYNTAX, 4, 1, "begin with a tab", "blanks" },
    { "title: Hem", "title: %a", HW_ERR_SYNTAX, 1, 8, "% @", "quotes" },
    { "title: Hem", "title: @a", HW_ERR_SYNTAX, 1, 8, "% @", "quotes" },
    { "title: Hem", "title: &a Hem", HW_ERR_SYNTAX, 1, 8, "begin with &", "quotes" },
    { "title: Hem", "title: !!str Hem", HW_ERR_SYNTAX, 1, 8, "!", "quotes" },
    { "title: Hem", "title: !x!y Hem", HW_ERR_SYNTAX, 1, 8, "!", "quotes" },
    { "title: Hem", "title: *a", HW_ERR_SYNTAX, 1, 8, "*", "quotes" },
    { "title: Hem", "title: & a", HW_ERR_SYNTAX, 1, 9, "&", "quotes" },
    { "[small", "&a [small", HW_ERR_SYNTAX, 2, 8, "&", "leave them out" },
    { "hem:\n", "hem: !x\n", HW_ERR_SYNTAX, 3, 6, "!", "leave them out" },
    { "'two words'", "'two words", HW_ERR_SYNTAX, 12, 1, "quotation mark", "began in line 2" },
    { "\"three\"]", "\"three\"", HW_ERR_SYNTAX, 3, 1, "comma is missing", "began in line 2" },
    { "rows: 61}", "rows: 61", HW_ERR_SYNTAX, 12, 1, "group in { } is not closed",
        "began in line 11" },
    { "title: Hem", "title: - Hem", HW_ERR_SYNTAX, 1, 8, "`-` cannot stand", "line of its own" },
    { "title: Hem", "title: ? Hem", HW_ERR_SYNTAX, 1, 8, "`?`", "write `key: value`" },
    { "\"three\"", "\"a\\qb\"", HW_ERR_SYNTAX, 2, 31, "backslash", "two of them" },
    { "\"three\"", "\"a\\xZZ\"", HW_ERR_SYNTAX, 2, 33, "backslash", "two of them" },
    { "\"three\"", "\"a\\ud800\"", HW_ERR_SYNTAX, 2, 33, "backslash", "two of them" },
    /* signs that the file does not hold, but a backslash makes */
    { "\"three\"", "\"a\\0b\"", HW_ERR_SYNTAX, 2, 29, "backslash", "single quotes" },
    { "\"three\"", "\"a\\x7f\"", HW_ERR_SYNTAX, 2, 29, "backslash", "single quotes" },
    { "\"three\"", "\"a\\uffff\"", HW_ERR_SYNTAX, 2, 29, "backslash", "single quotes" },
    { "title:", "\"ti\\etle\":", HW_ERR_SYNTAX, 1, 1, "backslash", "single quotes" },
    { "chart: |", "chart: | .o.", HW_ERR_SYNTAX, 5, 12, "behind `|`", "on the next line" },
    { "chart: |", "chart: |0", HW_ERR_SYNTAX, 5, 11, "behind `|`", "take it out" },
    { "title: Hem", "%YAML 1.5\n---\ntitle: Hem", HW_ERR_SYNTAX, 1, 1, "%", "take it out" },
    { "title: Hem", "%X\n---\ntitle: Hem", HW_ERR_SYNTAX, 1, 3, "%", "take it out" },
    { "list:\n", "---\nlist:\n", HW_ERR_SYNTAX, 8, 1, "second document", "take the `---` out" },
    { "list:\n", "...\nlist:\n", HW_ERR_SYNTAX, 9, 1, "or is `...`", "take it out" },
    { "title: Hem", "title: \"a\n---\nb\"", HW_ERR_SYNTAX, 2, 1, "quotation mark", "not closed" },
    { "title: Hem", "names: Hem", HW_ERR_REPEATED, 2, 1, "`names` stands here a second time",
        "the first is in line 1: keep one" },
    { "    rows: 60", "    stitches: 60", HW_ERR_REPEATED, 10, 5, "`stitches`",
        "in line 9: keep one" },
    { "title: Hem", "[a]: Hem", HW_ERR_SYNTAX, 1, 1, "not a list", "a key must be words" },
    { "title: Hem", "'': Hem", HW_ERR_SYNTAX, 1, 1, "a key belongs here", "before the `:`" },
    { NULL, "", HW_ERR_SYNTAX, 1, 1, "no `key: value` lines", "`hemwright new`" },
    { NULL, "# a remark\n", HW_ERR_SYNTAX, 1, 1, "no `key: value` lines", "`hemwright new`" },
    { NULL, "---\n", HW_ERR_SYNTAX, 1, 1, "no `key: value` lines", "`hemwright new`" },
    { NULL, "- a\n- b\n", HW_ERR_SYNTAX, 1, 1, "no `key: value` lines", "`hemwright new`" },
    { NULL, "hem\n", HW_ERR_SYNTAX, 1, 1, "no `key: value` lines", "`hemwright new`" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

/* By hand, from the definition of UTF-8 in RFC 3629 (https://www.rfc-editor.org/rfc/rfc3629): the
 * shortest and longest of each length are taken, all else is not. Then the signs that no editor
 * shows: own choice. */
static const struct {
    const char *bytes;
    bool good;
} signs[] = {
    { "\x7E", true },
    { "\xC2\xA0", true },
    { "\xDF\xBF", true },
    { "\xE0\xA0\x80", true },
    { "\xED\x9F\xBF", true },
    { "\xEE\x80\x80", true },
    { "\xEF\xBF\xBD", true },
    { "\xF0\x90\x80\x80", true },
    { "\xF4\x8F\xBF\xBF", true },
    { "\t", true },
    { "\n", true },
    { "\x80", false },
    { "\xBF", false },
    { "\xC0\xAF", false },
    { "\xC1\xBF", false },
    { "\xC3", false },
    { "\xC3z", false },
    { "\xE0\x9F\xBF", false },
    { "\xE2\x82", false },
    { "\xE2\x82z", false },
    { "\xED\xA0\x80", false },
    { "\xF0\x8F\xBF\xBF", false },
    { "\xF0\x9F\xA7", false },
    { "\xF4\x90\x80\x80", false },
    { "\xF5\x80\x80\x80", false },
    { "\xFE", false },
    { "\xFF", false },
    { "\x01", false },
    { "\x1B", false },
    { "\x7F", false },
    { "\xC2\x80", false },
    { "\xC2\x85", false },
    { "\xC2\x9F", false },
    { "\xE2\x80\xA8", false },
    { "\xE2\x80\xA9", false },
    { "\xEF\xBF\xBE", false },
    { "\xEF\xBF\xBF", false },
};

START_TEST(bytes_that_are_text)
{
    const char *bytes = signs[_i].bytes;
    ck_assert_msg(hw_yaml_is_text(bytes, strlen(bytes)) == signs[_i].good, "row %d", _i);
    if (signs[_i].good) {
        return;
    }
    char text[32] = "title: a\n# ab";
    memcpy(text + strlen(text), bytes, strlen(bytes) + 1);
    hw_check_fault fault = { NULL, text, HW_ERR_SYNTAX, 2, 5, "a sign that cannot be read",
        "UTF-8" };
    hw_check_told(&reader, &fault);
}
END_TEST

START_TEST(a_nul_is_refused)
{
    static const char text[] = "title: a\nb\0c: d\n";
    hw_err err = { 0 };
    hw_node *root = NULL;
    ck_assert(!hw_yaml_is_text(text, sizeof text - 1));
    ck_assert(hw_yaml_is_text(text, 9));
    ck_assert(hw_yaml_is_text(text, 0));
    ck_assert_int_eq(hw_yaml_read(text, sizeof text - 1, &arena, &root, &err), HW_ERR_SYNTAX);
    ck_assert_int_eq(err.line, 2);
    ck_assert_int_eq(err.column, 2);
    ck_assert_ptr_null(root);
}
END_TEST

/* A text of so many bytes: a head, and the same piece again and again. */
static char *long_text(const char *head, const char *piece, size_t times)
{
    size_t before = strlen(head);
    size_t len = strlen(piece);
    char *text = malloc(before + len * times + 1);
    ck_assert_ptr_nonnull(text);
    memcpy(text, head, before + 1);
    for (size_t i = 0; i < times; i++) {
        memcpy(text + before + i * len, piece, len + 1);
    }
    return text;
}

/* By hand: what the limits in yaml.h come to in each text. */
static const struct {
    const char *head, *piece;
    size_t times;
    int line, column;
    const char *found, *way;
} floods[] = {
    { "", "[\n", 450000, 9, 1, "deeper", "bracket" },
    { "", "[", 900000, 1, HW_YAML_MAX_LINE + 2, "too long", "break a list" },
    { "", "{a: ", 400, 1, 33, "deeper", "bracket" },
    { "a: [x", ",\nx", HW_YAML_MAX_NODES, HW_YAML_MAX_NODES - 1, 1, "more values",
        "project needs" },
    { "#", "x", HW_YAML_MAX_LINE, 1, HW_YAML_MAX_LINE + 2, "too long", "break" },
    { "", "kkkkkkkkkk", 21, 1, 1, "no `key: value` lines", "hemwright new" },
    { "#", "\xC3\xA9", HW_YAML_MAX_LINE, 1, HW_YAML_MAX_LINE + 2, "too long", "break" },
    { "", "#\n", HW_YAML_MAX_BYTES / 2 + 1, 0, 0, "larger", "is it the right one?" },
};

START_TEST(floods_are_stopped)
{
    char *text = long_text(floods[_i].head, floods[_i].piece, floods[_i].times);
    bool shapeless = strstr(floods[_i].found, "lines") != NULL;
    hw_check_fault fault = { NULL, text, shapeless ? HW_ERR_SYNTAX : HW_ERR_LIMIT, floods[_i].line,
        floods[_i].column, floods[_i].found, floods[_i].way };
    hw_check_told(&reader, &fault);
    free(text);
}
END_TEST

/* One less than each limit is taken. */
START_TEST(up_to_the_limits)
{
    static const struct {
        const char *head, *piece, *tail;
        size_t times;
    } most[] = {
        { "a: ", "[", "]]]]]]]", HW_YAML_MAX_DEPTH - 1 },
        { "a: ", "b", "", HW_YAML_MAX_LINE - 3 },
        { "a: [x", ",\nx", "]", HW_YAML_MAX_NODES - 3 },
        { "", "k", ": x", HW_WORDS_MAX_NAME },
        { "a: b\n", "#\n", "", HW_YAML_MAX_BYTES / 2 - 3 },
    };
    for (size_t i = 0; i < sizeof most / sizeof most[0]; i++) {
        char *text = long_text(most[i].head, most[i].piece, most[i].times);
        char *whole = hw_check_edit(most[i].tail, NULL, text);
        char *closed = malloc(strlen(whole) + strlen(most[i].tail) + 1);
        ck_assert_ptr_nonnull(closed);
        memcpy(closed, whole, strlen(whole));
        memcpy(closed + strlen(whole), most[i].tail, strlen(most[i].tail) + 1);
        hw_arena poor;
        hw_check_heap small;
        hw_node *root = NULL;
        hw_mem counted = hw_check_mem(&small);
        small = (hw_check_heap){ 0 };
        hw_arena_init(&poor, &counted, 65536);
        hw_check_taken(&reader, closed, &poor, &root);
        ck_assert_int_eq(root->count, 1);
        hw_check_close(&poor, &small);
        free(closed);
        free(whole);
        free(text);
    }
}
END_TEST

START_TEST(a_long_key_is_refused)
{
    char *key = long_text("a: b\n", "k", HW_WORDS_MAX_NAME + 1);
    char *text = long_text(key, ": x\n", 1);
    hw_check_fault fault = { NULL, text, HW_ERR_LIMIT, 2, 1, "key is too long",
        "at most 40 letters" };
    hw_check_told(&reader, &fault);
    free(text);
    free(key);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 30);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("yaml");
    TCase *tcase = fixture_case(suite, "yaml", NULL, NULL);
    tcase_add_test(tcase, a_tree_with_places);
    tcase_add_loop_test(tcase, dressed_otherwise, 0, ROWS(dresses));
    tcase_add_test(tcase, columns_count_letters);
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_loop_test(tcase, bytes_that_are_text, 0, ROWS(signs));
    tcase_add_test(tcase, a_nul_is_refused);
    tcase_add_loop_test(tcase, floods_are_stopped, 0, ROWS(floods));
    tcase_add_test(tcase, up_to_the_limits);
    tcase_add_test(tcase, a_long_key_is_refused);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
