/* The tables of statuses, marks, fabrics and sides.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/status.h"

#include <string.h>

#include "support.h"

/* Exit codes: this project's own choice, as the manual states them. */
static const struct {
    hw_status status;
    int exit_code;
} codes[] = {
    { HW_OK, 0 },
    { HW_ERR_NOFIT, 1 },
    { HW_ERR_SYNTAX, 2 },
    { HW_ERR_UNKNOWN, 2 },
    { HW_ERR_REPEATED, 2 },
    { HW_ERR_MISSING, 2 },
    { HW_ERR_KIND, 2 },
    { HW_ERR_RANGE, 2 },
    { HW_ERR_LIMIT, 2 },
    { HW_ERR_USAGE, 2 },
    { HW_ERR_IO, 3 },
    { HW_ERR_NOMEM, 4 },
    { HW_ERR_INTERNAL, 4 },
};
_Static_assert(sizeof codes / sizeof codes[0] == HW_STATUS_COUNT, "every status is checked");

START_TEST(each_status_has_its_exit_code)
{
    ck_assert_int_eq(hw_status_exit(codes[_i].status), codes[_i].exit_code);
}
END_TEST

/* Own choice: sentences tell apart, and stand inside other sentences. */
START_TEST(each_status_has_a_sentence_of_its_own)
{
    hw_status status = codes[_i].status;
    const char *sentence = hw_status_sentence(status);
    ck_assert_uint_gt(strlen(sentence), 0);
    ck_assert_int_ne(sentence[strlen(sentence) - 1], '.');
    for (int other = 0; other < HW_STATUS_COUNT; other++) {
        if (other != (int)status) {
            ck_assert_str_ne(hw_status_sentence((hw_status)other), sentence);
        }
    }
}
END_TEST

/* Own choice: the order of the marks in hw.h, best known first. */
START_TEST(marks_go_from_well_known_to_badly)
{
    ck_assert_str_eq(hw_mark_name(HW_MARK_GIVEN), "given");
    ck_assert_str_eq(hw_mark_name(HW_MARK_ASSUMED), "assumed");
    ck_assert_str_eq(hw_mark_name(HW_MARK_MEMORY), "from memory");
    for (int a = 0; a < HW_MARK_COUNT; a++) {
        for (int b = 0; b < HW_MARK_COUNT; b++) {
            hw_mark weaker = hw_mark_weaker((hw_mark)a, (hw_mark)b);
            ck_assert_int_eq(weaker, a > b ? a : b);
            if (a != b) {
                ck_assert_str_ne(hw_mark_name((hw_mark)a), hw_mark_name((hw_mark)b));
            }
        }
    }
    ck_assert_int_eq(hw_mark_weaker(HW_MARK_READ, HW_MARK_INTERPOLATED), HW_MARK_INTERPOLATED);
}
END_TEST

/* The words of a project file. */
START_TEST(fabrics_and_sides_have_names)
{
    ck_assert_str_eq(hw_fabric_name(HW_MAIN), "main");
    ck_assert_str_eq(hw_fabric_name(HW_BAND), "band");
    ck_assert_str_eq(hw_fabric_name(HW_FACING), "facing");
    ck_assert_str_eq(hw_side_name(HW_LEFT), "left");
    ck_assert_str_eq(hw_side_name(HW_RIGHT), "right");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("status");
    TCase *tables = tcase_create("tables");
    tcase_add_loop_test(tables, each_status_has_its_exit_code, 0, HW_STATUS_COUNT);
    tcase_add_loop_test(tables, each_status_has_a_sentence_of_its_own, 0, HW_STATUS_COUNT);
    tcase_add_test(tables, marks_go_from_well_known_to_badly);
    tcase_add_test(tables, fabrics_and_sides_have_names);
    suite_add_tcase(suite, tables);
    return hw_check_run(suite);
}
