/* Errors: the first wins, and texts are cut at whole characters.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/err.h"

#include <string.h>

#include "support.h"

/* The promises of err.h: own choice. */
START_TEST(the_first_error_wins)
{
    hw_err err = { 0 };
    ck_assert_int_eq(hw_err_set(&err, HW_ERR_RANGE, "%d is too much", 12), HW_ERR_RANGE);
    ck_assert_int_eq(hw_err_set(&err, HW_ERR_KIND, "later"), HW_ERR_KIND);
    ck_assert_int_eq(err.code, HW_ERR_RANGE);
    ck_assert_str_eq(err.text, "12 is too much");
}
END_TEST

START_TEST(the_first_place_wins)
{
    hw_err err = { 0 };
    ck_assert_int_eq(hw_err_place(&err, HW_ERR_RANGE, 3, 7), HW_ERR_RANGE);
    ck_assert_int_eq(hw_err_place(&err, HW_ERR_RANGE, 9, 9), HW_ERR_RANGE);
    ck_assert_int_eq(err.line, 3);
    ck_assert_int_eq(err.column, 7);
    hw_err_where(&err, "first.yaml");
    hw_err_where(&err, "second.yaml");
    ck_assert_str_eq(err.where, "first.yaml");
}
END_TEST

START_TEST(a_place_in_another_file_is_left_alone)
{
    hw_err err = { 0 };
    hw_err_where(&err, "whole-file.yaml");
    ck_assert_int_eq(hw_err_place(&err, HW_ERR_IO, 3, 7), HW_ERR_IO);
    ck_assert_int_eq(err.line, 0);
}
END_TEST

START_TEST(nobody_has_to_listen)
{
    ck_assert_int_eq(hw_err_set(NULL, HW_ERR_RANGE, "%d", 1), HW_ERR_RANGE);
    ck_assert_int_eq(hw_err_place(NULL, HW_ERR_RANGE, 1, 1), HW_ERR_RANGE);
    hw_err_where(NULL, "a.yaml");
}
END_TEST

/* By hand: the room holds 319 bytes; characters of two, three and four bytes, moved along by
 * `before` single bytes, leave the number of whole characters that fit. */
static const struct {
    const char *character;
    size_t before, kept_bytes;
} cuts[] = {
    { "a", 0, 319 },
    { "\xc3\xa9", 0, 318 },
    { "\xc3\xa9", 1, 319 },
    { "\xe2\x82\xac", 0, 318 },
    { "\xe2\x82\xac", 1, 319 },
    { "\xe2\x82\xac", 2, 317 },
    { "\xf0\x9f\xa7\xb6", 0, 316 },
    { "\xf0\x9f\xa7\xb6", 1, 317 },
    { "\xf0\x9f\xa7\xb6", 2, 318 },
    { "\xf0\x9f\xa7\xb6", 3, 319 },
};

START_TEST(texts_are_cut_at_whole_characters)
{
    char text[2000] = { 0 };
    size_t size = strlen(cuts[_i].character);
    memset(text, '.', cuts[_i].before);
    for (size_t at = cuts[_i].before; at < 1000; at += size) {
        memcpy(text + at, cuts[_i].character, size);
    }
    hw_err err = { 0 };
    ck_assert_int_eq(sizeof err.text, 320);
    ck_assert_int_eq(hw_err_set(&err, HW_ERR_RANGE, "%s", text), HW_ERR_RANGE);
    ck_assert_uint_eq(strlen(err.text), cuts[_i].kept_bytes);
    ck_assert_int_eq(strncmp(err.text, text, cuts[_i].kept_bytes), 0);
}
END_TEST

START_TEST(a_text_that_just_fits_is_whole)
{
    char text[320] = { 0 };
    memset(text, 'a', 317);
    memcpy(text + 317, "\xc3\xa9", 2);
    hw_err err = { 0 };
    ck_assert_int_eq(hw_err_set(&err, HW_ERR_RANGE, "%s", text), HW_ERR_RANGE);
    ck_assert_str_eq(err.text, text);
}
END_TEST

/* By hand: 63 bytes are kept of a path, its end; never the second half of a character. */
START_TEST(the_end_of_a_long_path_is_kept)
{
    char path[200] = { 0 };
    for (size_t at = 0; at < 100; at += 2) {
        memcpy(path + at, "\xc3\xa9", 2);
    }
    memcpy(path + 100, "/a.yaml", 7);
    hw_err err = { 0 };
    hw_err_where(&err, path);
    ck_assert_uint_eq(strlen(err.where), 63);
    ck_assert_str_eq(err.where, path + 107 - 63);
    memcpy(path + 100, "/ab.yaml", 8);
    err = (hw_err){ 0 };
    hw_err_where(&err, path);
    ck_assert_uint_eq(strlen(err.where), 62);
    ck_assert_str_eq(err.where, path + 108 - 62);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("err");
    TCase *errors = tcase_create("errors");
    tcase_add_test(errors, the_first_error_wins);
    tcase_add_test(errors, the_first_place_wins);
    tcase_add_test(errors, a_place_in_another_file_is_left_alone);
    tcase_add_test(errors, nobody_has_to_listen);
    tcase_add_loop_test(
        errors, texts_are_cut_at_whole_characters, 0, (int)(sizeof cuts / sizeof cuts[0]));
    tcase_add_test(errors, a_text_that_just_fits_is_whole);
    tcase_add_test(errors, the_end_of_a_long_path_is_kept);
    suite_add_tcase(suite, errors);
    return hw_check_run(suite);
}
