/* Lengths: factors, reading and showing.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units.h"

#include <math.h>
#include <string.h>

#include "core/num.h"
#include "support.h"

/* Exact by definition: 1 yd = 0.9144 m, international yard and pound agreement of 1 July 1959,
 * https://en.m.wikipedia.org/wiki/International_yard ; so 1 in = 91.44 / 36 = 2.54 cm. */
static const struct {
    hw_unit unit;
    const char *name;
    double cm;
} factors[] = {
    { HW_UNIT_CM, "cm", 1 },
    { HW_UNIT_MM, "mm", 0.1 },
    { HW_UNIT_IN, "in", 2.54 },
    { HW_UNIT_M, "m", 100 },
    { HW_UNIT_YD, "yd", 91.44 },
};
_Static_assert(sizeof factors / sizeof factors[0] == HW_UNIT_COUNT, "every unit is checked");

START_TEST(factors_are_exact)
{
    ck_assert_double_eq_tol(hw_unit_cm(factors[_i].unit), factors[_i].cm, 1e-14);
    ck_assert_str_eq(hw_unit_name(factors[_i].unit), factors[_i].name);
    hw_unit unit = HW_UNIT_COUNT;
    const char *name = factors[_i].name;
    ck_assert_int_eq(hw_unit_parse(name, strlen(name), &unit), HW_OK);
    ck_assert_int_eq(unit, factors[_i].unit);
}
END_TEST

/* The same agreement, by hand: 4 in are 10.16 cm, not 10 cm. To 1e-12. */
static const struct {
    const char *text;
    hw_unit usual;
    double cm;
} lengths[] = {
    { "31.5 cm", HW_UNIT_IN, 31.5 },
    { "31.5cm", HW_UNIT_IN, 31.5 },
    { "315 mm", HW_UNIT_IN, 31.5 },
    { "4 in", HW_UNIT_CM, 10.16 },
    { "12.4 in", HW_UNIT_CM, 31.496 },
    { "12 3/8 in", HW_UNIT_CM, 31.4325 },
    { "3/8 inch", HW_UNIT_CM, 0.9525 },
    { "2 inches", HW_UNIT_CM, 5.08 },
    { "2\"", HW_UNIT_CM, 5.08 },
    { "1 yd", HW_UNIT_CM, 91.44 },
    { "1.5 m", HW_UNIT_CM, 150 },
    { "7", HW_UNIT_CM, 7 },
    { "7", HW_UNIT_IN, 17.78 },
    { "7", HW_UNIT_MM, 0.7 },
    { " 7  cm ", HW_UNIT_IN, 7 },
    { "-2 cm", HW_UNIT_IN, -2 },
};

START_TEST(lengths_are_read)
{
    const char *text = lengths[_i].text;
    double length_cm = NAN;
    ck_assert_int_eq(hw_length_parse(text, strlen(text), lengths[_i].usual, &length_cm), HW_OK);
    ck_assert_double_eq_tol(length_cm, lengths[_i].cm, 1e-12);
}
END_TEST

/* Own choice of what is too doubtful to read. */
static const struct {
    const char *text;
    hw_status status;
} refused[] = {
    { "", HW_ERR_SYNTAX },
    { "cm", HW_ERR_SYNTAX },
    { "nan cm", HW_ERR_SYNTAX },
    { "1/0 in", HW_ERR_SYNTAX },
    { "12 ft", HW_ERR_UNKNOWN },
    { "12 CM", HW_ERR_UNKNOWN },
    { "12 in in", HW_ERR_UNKNOWN },
    { "1e5 cm", HW_ERR_UNKNOWN },
    { "0x10 cm", HW_ERR_UNKNOWN },
    { "1,5 cm", HW_ERR_UNKNOWN },
    { "12 inche", HW_ERR_UNKNOWN },
    { "12 3 in", HW_ERR_UNKNOWN },
    { "9999999999 cm", HW_ERR_RANGE },
};

START_TEST(doubtful_lengths_are_refused)
{
    const char *text = refused[_i].text;
    double length_cm = 77;
    ck_assert_msg(hw_length_parse(text, strlen(text), HW_UNIT_CM, &length_cm) == refused[_i].status,
        "\"%s\" must be refused", text);
    ck_assert_double_eq_tol(length_cm, 77, 1e-12);
}
END_TEST

START_TEST(an_unknown_unit_changes_nothing)
{
    hw_unit unit = HW_UNIT_YD;
    ck_assert_int_eq(hw_unit_parse("ft", 2, &unit), HW_ERR_UNKNOWN);
    ck_assert_int_eq(hw_unit_parse("cmm", 3, &unit), HW_ERR_UNKNOWN);
    ck_assert_int_eq(hw_unit_parse("cm", 0, &unit), HW_ERR_UNKNOWN);
    ck_assert_int_eq(unit, HW_UNIT_YD);
}
END_TEST

/* By hand: 31.5 / 2.54 = 12.40, the nearest eighth is 12 3/8; 99.9 cm = 39.33 in, 39 3/8. */
static const struct {
    double cm;
    const char *shown[HW_SHOW_COUNT];
} shown[] = {
    { 31.5, { "31.5 cm", "12 3/8 in", "31.5 cm (12 3/8 in)" } },
    { 10.16, { "10.2 cm", "4 in", "10.2 cm (4 in)" } },
    { 0, { "0 cm", "0 in", "0 cm (0 in)" } },
    { 0.3175, { "0.3 cm", "1/8 in", "0.3 cm (1/8 in)" } },
    { 1.27, { "1.3 cm", "1/2 in", "1.3 cm (1/2 in)" } },
    { 99.9, { "99.9 cm", "39 3/8 in", "99.9 cm (39 3/8 in)" } },
    { -1.27, { "-1.3 cm", "-1/2 in", "-1.3 cm (-1/2 in)" } },
    { -3.81, { "-3.8 cm", "-1 1/2 in", "-3.8 cm (-1 1/2 in)" } },
    { -0.04, { "0 cm", "0 in", "0 cm (0 in)" } },
    { 2.5, { "2.5 cm", "1 in", "2.5 cm (1 in)" } },
};

START_TEST(lengths_are_shown)
{
    hw_mem mem = hw_mem_system();
    for (int show = 0; show < HW_SHOW_COUNT; show++) {
        hw_buf buf;
        hw_buf_init(&buf, &mem, 100);
        hw_length_show(&buf, shown[_i].cm, (hw_show)show);
        ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
        ck_assert_str_eq(buf.text, shown[_i].shown[show]);
        hw_buf_release(&buf);
    }
}
END_TEST

/* Own choice: every eighth that is written reads back as itself. */
START_TEST(inches_read_back)
{
    hw_mem mem = hw_mem_system();
    for (int eighths = -100; eighths <= 100; eighths++) {
        hw_buf buf;
        hw_buf_init(&buf, &mem, 100);
        hw_inches_show(&buf, eighths / 8.0);
        double inches = NAN;
        ck_assert_int_eq(hw_num_parse(buf.text, buf.len, &inches, NULL), HW_OK);
        ck_assert_double_eq_tol(inches, eighths / 8.0, 1e-12);
        hw_buf_release(&buf);
    }
}
END_TEST

/* By hand: 23.622 lies between 23 4.976/8 and 23 5/8; a sixteenth is half an eighth, and ties go
 * up. */
START_TEST(inches_to_the_eighth)
{
    char room[HW_INCHES_ROOM];
    ck_assert_double_eq_tol(hw_inches_round(23.622), 23.625, 1e-12);
    ck_assert_double_eq_tol(hw_inches_round(0.0625), 0.125, 1e-12);
    ck_assert_double_eq_tol(hw_inches_round(-0.0625), 0, 1e-12);
    hw_inches_text(23.622, room);
    ck_assert_str_eq(room, "23 5/8");
    hw_inches_text(-0.375, room);
    ck_assert_str_eq(room, "-3/8");
    hw_inches_text(12, room);
    ck_assert_str_eq(room, "12");
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("units");
    TCase *lengths_case = tcase_create("lengths");
    tcase_add_loop_test(lengths_case, factors_are_exact, 0, ROWS(factors));
    tcase_add_loop_test(lengths_case, lengths_are_read, 0, ROWS(lengths));
    tcase_add_loop_test(lengths_case, doubtful_lengths_are_refused, 0, ROWS(refused));
    tcase_add_test(lengths_case, an_unknown_unit_changes_nothing);
    tcase_add_loop_test(lengths_case, lengths_are_shown, 0, ROWS(shown));
    tcase_add_test(lengths_case, inches_read_back);
    tcase_add_test(lengths_case, inches_to_the_eighth);
    suite_add_tcase(suite, lengths_case);
    return hw_check_run(suite);
}
