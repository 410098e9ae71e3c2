/* Sums of measurements: what is read, and what is said of those that cannot be.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/rule.h"

#include <string.h>

#include "core/units.h"
#include "fixture.h"
#include "reading.h"

/* A rule by itself, as the word behind `is: ` in line 3. */
static hw_status read_rule(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    hw_node word = { .kind = HW_NODE_WORD, .text = text, .len = len, .line = 3, .column = 5 };
    return hw_rule_read(&word, (hw_rule_reading){ .usual = HW_UNIT_CM }, room, out, err);
}

static const hw_check_reader reader = {
    .good = "1.3 x finished chest + height - 2 cm",
    .read = read_rule,
    .size = sizeof(hw_rule),
};

/* By hand: each term with its factor, and what the lengths add up to in cm (1 in = 2.54 cm). */
static const struct {
    const char *text;
    hw_rule_reading how;
    int count;
    hw_term terms[3];
    double constant_cm;
} rules[] = {
    { "chest", { HW_UNIT_CM, false }, 1, { { 1, "chest", false } }, 0 },
    { "chest", { HW_UNIT_CM, true }, 1, { { 1, "chest", true } }, 0 },
    { "finished chest", { HW_UNIT_CM, false }, 1, { { 1, "chest", true } }, 0 },
    { "finished", { HW_UNIT_CM, false }, 1, { { 1, "finished", false } }, 0 },
    { "0.5 x hem", { HW_UNIT_CM, false }, 1, { { 0.5, "hem", false } }, 0 },
    { "1/2 x finished  hem", { HW_UNIT_CM, false }, 1, { { 0.5, "hem", true } }, 0 },
    { "0.5   x   hem", { HW_UNIT_CM, false }, 1, { { 0.5, "hem", false } }, 0 },
    { "1 1/2 x back neck", { HW_UNIT_CM, false }, 1, { { 1.5, "back neck", false } }, 0 },
    { "60 cm", { HW_UNIT_IN, false }, 0, { { 0, NULL, false } }, 60 },
    { "60", { HW_UNIT_IN, false }, 0, { { 0, NULL, false } }, 152.4 },
    { "60", { HW_UNIT_CM, false }, 0, { { 0, NULL, false } }, 60 },
    { "2 cm + chest", { HW_UNIT_CM, false }, 1, { { 1, "chest", false } }, 2 },
    { "chest - hips - 1 in", { HW_UNIT_CM, false }, 2,
        { { 1, "chest", false }, { -1, "hips", false } }, -2.54 },
    { "half-back - 0.25 x cuff + 1 cm - 3 cm", { HW_UNIT_CM, false }, 2,
        { { 1, "half-back", false }, { -0.25, "cuff", false } }, -2 },
    { "-0.5 x hem", { HW_UNIT_CM, false }, 1, { { -0.5, "hem", false } }, 0 },
    { "1.3 x finished chest + height - 2 cm", { HW_UNIT_CM, false }, 2,
        { { 1.3, "chest", true }, { 1, "height", false } }, -2 },
};

START_TEST(rules_are_read)
{
    hw_rule rule;
    hw_err err = { 0 };
    hw_node word = { .kind = HW_NODE_WORD, .text = rules[_i].text, .line = 7, .column = 9 };
    word.len = strlen(word.text);
    ck_assert_msg(hw_rule_read(&word, rules[_i].how, &arena, &rule, &err) == HW_OK, "%s: %s",
        rules[_i].text, err.text);
    ck_assert_int_eq(rule.count, rules[_i].count);
    ck_assert_int_eq(rule.line, 7);
    ck_assert_double_eq_tol(rule.constant_cm, rules[_i].constant_cm, 1e-12);
    for (int t = 0; t < rule.count; t++) {
        ck_assert_str_eq(rule.terms[t].name, rules[_i].terms[t].name);
        ck_assert_double_eq_tol(rule.terms[t].factor, rules[_i].terms[t].factor, 1e-12);
        ck_assert(rule.terms[t].finished == rules[_i].terms[t].finished);
    }
}
END_TEST

/* Columns by hand: the text begins in column 5. */
static const hw_check_fault faults[] = {
    { NULL, "chest + ", HW_ERR_SYNTAX, 3, 13, "missing here", "write a sum" },
    { NULL, " + chest", HW_ERR_SYNTAX, 3, 6, "missing here", "write a sum" },
    { NULL, "chest +  + hem", HW_ERR_SYNTAX, 3, 14, "missing here", "write a sum" },
    { NULL, "   ", HW_ERR_SYNTAX, 3, 8, "missing here", "write a sum" },
    { NULL, "chest +", HW_ERR_SYNTAX, 3, 5, "`chest +`", "a blank on both sides" },
    { NULL, "chest+2 cm", HW_ERR_SYNTAX, 3, 5, "`chest+2 cm`", "a blank on both sides" },
    { NULL, "hem -", HW_ERR_SYNTAX, 3, 5, "`hem -`", "a blank on both sides" },
    { NULL, "0.5 hem", HW_ERR_SYNTAX, 3, 5, "`0.5 hem`", "write `0.5 x hem`" },
    { NULL, "0.5xhem", HW_ERR_SYNTAX, 3, 5, "`0.5xhem`", "write `0.5 x hem`" },
    { NULL, "0.5 x ", HW_ERR_SYNTAX, 3, 5, "`0.5 x `", "write `0.5 x hem`" },
    { NULL, "chest + 0,5 x hem", HW_ERR_SYNTAX, 3, 13, "`chest + 0,5 x hem`", "write `0.5 x hem`" },
    { NULL, "2 x 0.5 x hem", HW_ERR_SYNTAX, 3, 9, "`2 x 0.5 x hem`", "write `0.5 x hem`" },
    { NULL, ".5 x hem", HW_ERR_SYNTAX, 3, 5, "`.5 x hem`", "write `0.5 x hem`" },
    { NULL, "hem - -chest", HW_ERR_SYNTAX, 3, 11, "`hem - -chest`", "write `0.5 x hem`" },
    { NULL, "2 ft", HW_ERR_SYNTAX, 3, 5, "`2 ft`", "a length such as `2 cm`" },
    { NULL, "\xC3\x84rmel + 2 ft", HW_ERR_SYNTAX, 3, 13, "rmel", "`2 cm`" },
    { NULL, "hem + 2 x a measurement with far more than 40 letters", HW_ERR_LIMIT, 3, 15,
        "a long name", "at most 40 letters" },
    { NULL, "1 x a + b + c + d + e + f + g + h + 2 cm + i", HW_ERR_LIMIT, 3, 48,
        "more than 8 measurements", "two finished measurements" },
};

START_TEST(every_fault_is_told)
{
    hw_check_told(&reader, &faults[_i]);
}
END_TEST

START_TEST(eight_terms_fit)
{
    hw_rule rule;
    hw_check_taken(&reader, "a + b + c + d + e + f + g + h - 2 cm - 1", &arena, &rule);
    ck_assert_int_eq(rule.count, HW_MAX_TERMS);
    ck_assert_double_eq_tol(rule.constant_cm, -3, 1e-12);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&reader, 1);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("rule");
    TCase *tcase = fixture_case(suite, "rule", NULL, NULL);
    tcase_add_loop_test(tcase, rules_are_read, 0, ROWS(rules));
    tcase_add_loop_test(tcase, every_fault_is_told, 0, ROWS(faults));
    tcase_add_test(tcase, eight_terms_fit);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
