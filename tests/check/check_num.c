/* Reading, rounding and writing numbers.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/num.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* By hand: arithmetic. Eighths and decimals that end in 5 are exact in binary; else to 1e-12. */
static const struct {
    const char *text;
    double value;
} accepted[] = {
    { "0", 0 },
    { "31", 31 },
    { "31.5", 31.5 },
    { "+3", 3 },
    { "-3", -3 },
    { "  31.5  ", 31.5 },
    { "3/8", 0.375 },
    { "-3/8", -0.375 },
    { "12 3/8", 12.375 },
    { "-12 3/8", -12.375 },
    { "12   3/8", 12.375 },
    { "1/3", 1.0 / 3 },
    { "007", 7 },
    { "0.1", 0.1 },
    { "999999999", 999999999 },
    { "0.0000000000000000000000000001", 1e-28 },
};

START_TEST(numbers_are_read)
{
    const char *text = accepted[_i].text;
    double value = NAN;
    ck_assert_int_eq(hw_num_parse(text, strlen(text), &value, NULL), HW_OK);
    ck_assert_double_eq_tol(value, accepted[_i].value, 1e-12);
}
END_TEST

/* Own choice of what is too doubtful to read: a decimal comma, say, means two things. */
static const struct {
    const char *text;
    hw_status status;
} refused[] = {
    { "", HW_ERR_SYNTAX },
    { "   ", HW_ERR_SYNTAX },
    { "nan", HW_ERR_SYNTAX },
    { "NAN", HW_ERR_SYNTAX },
    { "inf", HW_ERR_SYNTAX },
    { "-inf", HW_ERR_SYNTAX },
    { "infinity", HW_ERR_SYNTAX },
    { "0x10", HW_ERR_SYNTAX },
    { "1e5", HW_ERR_SYNTAX },
    { "1E5", HW_ERR_SYNTAX },
    { "1,5", HW_ERR_SYNTAX },
    { "1.000,5", HW_ERR_SYNTAX },
    { "--1", HW_ERR_SYNTAX },
    { "+-1", HW_ERR_SYNTAX },
    { "- 1", HW_ERR_SYNTAX },
    { "1-", HW_ERR_SYNTAX },
    { "1/0", HW_ERR_SYNTAX },
    { "1/00", HW_ERR_SYNTAX },
    { "12 1/0", HW_ERR_SYNTAX },
    { "1/", HW_ERR_SYNTAX },
    { "/2", HW_ERR_SYNTAX },
    { "12 3/", HW_ERR_SYNTAX },
    { "1/1234567", HW_ERR_SYNTAX },
    { "1.5/2", HW_ERR_SYNTAX },
    { "1.5 1/2", HW_ERR_SYNTAX },
    { "1/2/3", HW_ERR_SYNTAX },
    { ".", HW_ERR_SYNTAX },
    { ".5", HW_ERR_SYNTAX },
    { "1.", HW_ERR_SYNTAX },
    { "1..2", HW_ERR_SYNTAX },
    { "1.2.3", HW_ERR_SYNTAX },
    { "31 5", HW_ERR_SYNTAX },
    { "31x", HW_ERR_SYNTAX },
    { "x31", HW_ERR_SYNTAX },
    { "1000000000", HW_ERR_RANGE },
    { "1234567890123456789012345678901", HW_ERR_RANGE },
};

START_TEST(doubtful_numbers_are_refused)
{
    const char *text = refused[_i].text;
    double value = 77;
    ck_assert_msg(hw_num_parse(text, strlen(text), &value, NULL) == refused[_i].status,
        "\"%s\" must be refused", text);
    ck_assert_double_eq_tol(value, 77, 1e-12);
}
END_TEST

/* By hand. What follows the number is the caller's, such as a unit; length rules, not a NUL. */
static const struct {
    const char *text;
    size_t len, used;
    double value;
} starts[] = {
    { "31.5 cm", 7, 4, 31.5 },
    { "31.5cm", 6, 4, 31.5 },
    { "12 3/8 in", 9, 6, 12.375 },
    { "12 in", 5, 2, 12 },
    { "5 %", 3, 1, 5 },
    { "1.", 2, 1, 1 },
    { "1234", 2, 2, 12 },
    { "12 3/8", 4, 2, 12 },
    { "1/2", 2, 0, 0 },
};

START_TEST(a_number_at_the_start)
{
    double value = 77;
    size_t used = 77;
    hw_status status = hw_num_parse(starts[_i].text, starts[_i].len, &value, &used);
    if (starts[_i].used == 0) {
        ck_assert_int_eq(status, HW_ERR_SYNTAX);
        ck_assert_uint_eq(used, 77);
        return;
    }
    ck_assert_int_eq(status, HW_OK);
    ck_assert_double_eq_tol(value, starts[_i].value, 1e-12);
    ck_assert_uint_eq(used, starts[_i].used);
}
END_TEST

/* By hand. */
START_TEST(counts_are_read)
{
    int value = 77;
    size_t used = 77;
    ck_assert_int_eq(hw_num_parse_count("24x", 3, &value, &used), HW_OK);
    ck_assert_int_eq(value, 24);
    ck_assert_uint_eq(used, 2);
    ck_assert_int_eq(hw_num_parse_count("999999999", 9, &value, &used), HW_OK);
    ck_assert_int_eq(value, 999999999);
    value = 77;
    used = 77;
    static const char *const bad[] = { "", "-1", "+1", " 1", "x", "1234567890" };
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        ck_assert_int_eq(hw_num_parse_count(bad[i], strlen(bad[i]), &value, &used), HW_ERR_SYNTAX);
    }
    ck_assert_int_eq(value, 77);
    ck_assert_uint_eq(used, 77);
}
END_TEST

/* The tie rules of num.h, by hand. 49.5, 72.8 and 38.75 stitches to an even count are published:
 * 50 at https://knittingunplugged.com/2016/05/23/how-to-figure-out-decrease-and-increase-placement-
 * when-adjusting-sleeve-length-and-cap-shaping/ , 72 at
 * http://designyourownsweater.blogspot.com/2007/01/sleeve.html and 38 in worked example S5, how to
 * increase evenly along a set number of rows. */
static const struct {
    double x;
    int nearest, down, up, even;
} rounded[] = {
    { 0, 0, 0, 0, 0 },
    { 0.5, 1, 0, 1, 0 },
    { -0.5, 0, -1, 0, 0 },
    { 1, 1, 1, 1, 2 },
    { -1, -1, -1, -1, 0 },
    { 2.4, 2, 2, 3, 2 },
    { 2.5, 3, 2, 3, 2 },
    { -2.5, -2, -3, -2, -2 },
    { 3, 3, 3, 3, 4 },
    { 38.75, 39, 38, 39, 38 },
    { 49.5, 50, 49, 50, 50 },
    { 72.8, 73, 72, 73, 72 },
    { 38.99, 39, 38, 39, 38 },
    { 38.999999999999, 39, 39, 39, 40 },
    { 39.000000000001, 39, 39, 39, 40 },
    { 39.01, 39, 39, 40, 40 },
    { 0.1 * 3 * 10, 3, 3, 3, 4 },
    { 4.35 * 100, 435, 435, 435, 436 },
    { 99999.4, 99999, 99999, 100000, 100000 },
};

/* By hand: ties go away from zero, and millionths of a large cost are past an int. */
START_TEST(long_nearest)
{
    ck_assert(hw_num_nearest_long(2.5) == 3);
    ck_assert(hw_num_nearest_long(-2.5) == -3);
    ck_assert(hw_num_nearest_long(1e15 + 0.4) == 1000000000000000LL);
}
END_TEST

START_TEST(rounding_has_one_rule_each)
{
    ck_assert_int_eq(hw_num_nearest(rounded[_i].x), rounded[_i].nearest);
    ck_assert_int_eq(hw_num_down(rounded[_i].x), rounded[_i].down);
    ck_assert_int_eq(hw_num_up(rounded[_i].x), rounded[_i].up);
    ck_assert_int_eq(hw_num_nearest_even(rounded[_i].x), rounded[_i].even);
}
END_TEST

/* By hand. */
START_TEST(multiples_and_remainders)
{
    ck_assert_int_eq(hw_num_nearest_multiple(8.9, 6), 6);
    ck_assert_int_eq(hw_num_nearest_multiple(9, 6), 12);
    ck_assert_int_eq(hw_num_nearest_multiple(-9, 6), -6);
    ck_assert_int_eq(hw_num_nearest_multiple(7, 1), 7);
    ck_assert_int_eq(hw_num_mod(-1, 24), 23);
    ck_assert_int_eq(hw_num_mod(-24, 24), 0);
    ck_assert_int_eq(hw_num_mod(25, 24), 1);
    ck_assert_int_eq(hw_num_gcd(12, 18), 6);
    ck_assert_int_eq(hw_num_gcd(-12, 18), 6);
    ck_assert_int_eq(hw_num_gcd(0, 5), 5);
    ck_assert_int_eq(hw_num_gcd(0, 0), 1);
}
END_TEST

/* By hand: ties go away from zero, no "-0", no zeros at the end of decimals. */
static const struct {
    double x;
    int decimals;
    double value;
    const char *shown;
} shown[] = {
    { 0, 0, 0, "0" },
    { 100, 0, 100, "100" },
    { 100, 2, 100, "100" },
    { 31.5, 1, 31.5, "31.5" },
    { 31.50, 3, 31.5, "31.5" },
    { 31.04, 1, 31, "31" },
    { 31.05, 1, 31.1, "31.1" },
    { 2.675, 2, 2.68, "2.68" },
    { -2.675, 2, -2.68, "-2.68" },
    { 0.125, 2, 0.13, "0.13" },
    { -0.125, 2, -0.13, "-0.13" },
    { -0.004, 2, 0, "0" },
    { 0.5, 0, 1, "1" },
    { 1.0 / 3, 6, 0.333333, "0.333333" },
    { 123456789.25, 1, 123456789.3, "123456789.3" },
};

START_TEST(numbers_are_shown)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    hw_buf_init(&buf, &mem, 100);
    double value = hw_num_round(shown[_i].x, shown[_i].decimals);
    ck_assert_double_eq_tol(value, shown[_i].value, 1e-9);
    ck_assert(!signbit(value) || value < 0);
    hw_num_show(&buf, shown[_i].x, shown[_i].decimals);
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    ck_assert_str_eq(buf.text, shown[_i].shown);
    hw_buf_release(&buf);
}
END_TEST

/* Own choice: what is written for a number of thousandths reads back as that number. */
START_TEST(what_is_shown_reads_back)
{
    hw_mem mem = hw_mem_system();
    for (int i = -3000; i <= 3000; i += 7) {
        hw_buf buf;
        hw_buf_init(&buf, &mem, 100);
        hw_num_show(&buf, i / 1000.0, 3);
        double value = NAN;
        ck_assert_int_eq(hw_num_parse(buf.text, buf.len, &value, NULL), HW_OK);
        ck_assert_double_eq_tol(value, i / 1000.0, 1e-15);
        hw_buf_release(&buf);
    }
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("num");
    TCase *reading = tcase_create("reading");
    tcase_add_loop_test(reading, numbers_are_read, 0, ROWS(accepted));
    tcase_add_loop_test(reading, doubtful_numbers_are_refused, 0, ROWS(refused));
    tcase_add_loop_test(reading, a_number_at_the_start, 0, ROWS(starts));
    tcase_add_test(reading, counts_are_read);
    suite_add_tcase(suite, reading);
    TCase *rounding = tcase_create("rounding");
    tcase_add_loop_test(rounding, rounding_has_one_rule_each, 0, ROWS(rounded));
    tcase_add_test(rounding, multiples_and_remainders);
    tcase_add_test(rounding, long_nearest);
    suite_add_tcase(suite, rounding);
    TCase *writing = tcase_create("writing");
    tcase_add_loop_test(writing, numbers_are_shown, 0, ROWS(shown));
    tcase_add_test(writing, what_is_shown_reads_back);
    suite_add_tcase(suite, writing);
    return hw_check_run(suite);
}
