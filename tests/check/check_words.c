/* Nearest words against a slow search, and how much of a text is quoted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/words.h"

#include <string.h>

#include "support.h"

static const char *const keys[] = { "title", "units", "machine", "garment", "gauge", "motif", "hem",
    "sizes", "ease", "choices", "face rows", "card start", "Ärmel" };
enum { KEYS = sizeof keys / sizeof keys[0] };

/* By hand: each row is that many letters away from the key; a third of the longer word may be
 * wrong, at least one letter, and never all of the right word. */
static const struct {
    const char *typed, *nearest;
} near[] = {
    { "titel", "title" },                              /* two letters swapped */
    { "tite", "title" },                               /* one left out */
    { "tittle", "title" },                             /* one added */
    { "unitz", "units" },                              /* one changed */
    { "UNITS", "units" },                              /* capitals count as small letters */
    { "Machine", "machine" }, { "mashin", "machine" }, /* one changed, one left out: 2 of 7 */
    { "garmet", "garment" }, { "hen", "hem" }, { "facerows", "face rows" },
    { "face row", "face rows" }, { "card-start", "card start" },
    { "siezs", "sizes" },        /* one swapped pair within another word */
    { "Armel", "Ärmel" },        /* a letter of two bytes, one of them changed, one left out */
    { "zzzzz", NULL },           /* nothing like it */
    { "", NULL }, { "x", NULL }, /* as far from all as they are long */
    { "abc", NULL },
    { "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", NULL }, /* 41 letters: too long to compare */
};

START_TEST(the_nearest_word_is_found)
{
    const char *found = hw_words_nearest(near[_i].typed, keys, KEYS);
    if (near[_i].nearest == NULL) {
        ck_assert_msg(found == NULL, "%s: %s", near[_i].typed, found);
    } else {
        ck_assert_msg(found != NULL, "%s: nothing", near[_i].typed);
        ck_assert_str_eq(found, near[_i].nearest);
    }
}
END_TEST

/* Own choice: a word is nearest to itself, and of two as near the first is taken. */
START_TEST(itself_and_ties)
{
    for (int i = 0; i < KEYS; i++) {
        ck_assert_ptr_eq(hw_words_nearest(keys[i], keys, KEYS), keys[i]);
    }
    static const char *const alike[] = { "cat", "bat" };
    ck_assert_ptr_eq(hw_words_nearest("hat", alike, 2), alike[0]);
    ck_assert_ptr_null(hw_words_nearest("hat", alike, 0));
    /* A word that holds what was typed, from five letters on. */
    static const char *const longer[] = { "skirt", "straight-cardigan" };
    ck_assert_ptr_eq(hw_words_nearest("cardigan", longer, 2), longer[1]);
    ck_assert_ptr_eq(hw_words_nearest("cardi", longer, 2), longer[1]);
    ck_assert_ptr_null(hw_words_nearest("card", longer, 2));
}
END_TEST

/* Letters changed one by one, by its definition without a table: delete, insert, change, or swap
 * two that stand side by side. */
static int slow_distance(const char *a, const char *b)
{
    if (*a == '\0' || *b == '\0') {
        return (int)(strlen(a) + strlen(b));
    }
    int best = slow_distance(a + 1, b + 1) + (*a != *b);
    int left_out = 1 + slow_distance(a, b + 1);
    int added = 1 + slow_distance(a + 1, b);
    best = left_out < best ? left_out : best;
    best = added < best ? added : best;
    if (a[1] != '\0' && b[1] != '\0' && a[0] == b[1] && a[1] == b[0]) {
        int swapped = 1 + slow_distance(a + 2, b + 2);
        best = swapped < best ? swapped : best;
    }
    return best;
}

/* By search: words by chance of three letters, so that near ones come up often. */
START_TEST(distances_by_search)
{
    unsigned state = 11;
    int near_ones = 0;
    for (int round = 0; round < 3000; round++) {
        char words[2][8] = { { 0 }, { 0 } };
        for (int w = 0; w < 2; w++) {
            int len = 1 + hw_check_random(&state, 6);
            for (int i = 0; i < len; i++) {
                words[w][i] = (char)('a' + hw_check_random(&state, 3));
            }
        }
        const char *list[] = { words[1] };
        int len = (int)strlen(words[1]);
        int longer = len > (int)strlen(words[0]) ? len : (int)strlen(words[0]);
        int most = longer / 3 < 1 ? 1 : longer / 3;
        int wrong = slow_distance(words[0], words[1]);
        bool is_near = wrong <= most && wrong < len;
        near_ones += is_near ? 1 : 0;
        ck_assert_msg((hw_words_nearest(words[0], list, 1) != NULL) == is_near, "%s, %s: %d wrong",
            words[0], words[1], wrong);
    }
    ck_assert_int_gt(near_ones, 200);
    ck_assert_int_lt(near_ones, 2800);
}
END_TEST

/* By hand, from the bytes of UTF-8: é has two, € three. */
static const struct {
    const char *text;
    int most, bytes;
} cuts[] = {
    { "hem", 10, 3 },
    { "hem", 3, 3 },
    { "hem", 2, 2 },
    { "", 5, 0 },
    { "two\nlines", 20, 3 },
    { "two\r\nlines", 20, 3 },
    { "\n", 5, 0 },
    { "aé", 3, 3 },
    { "aé", 2, 1 },
    { "€€", 5, 3 },
    { "€€", 2, 0 },
};

START_TEST(quotations_end_at_a_whole_letter)
{
    ck_assert_int_eq(hw_words_cut(cuts[_i].text, cuts[_i].most), cuts[_i].bytes);
}
END_TEST

/* By hand, from the bytes of UTF-8; the limits are this project's own choice. */
START_TEST(letters_of_a_name)
{
    char name[100] = { 0 };
    ck_assert_int_eq(hw_words_letters("", 0), 0);
    ck_assert_int_eq(hw_words_letters("hem", 3), 3);
    ck_assert_int_eq(hw_words_letters("é€x", 6), 3);
    memset(name, 'n', sizeof name - 1);
    ck_assert(hw_words_name_fits(name, HW_WORDS_MAX_NAME));
    ck_assert(!hw_words_name_fits(name, HW_WORDS_MAX_NAME + 1));
    for (size_t i = 0; i + 2 < sizeof name; i += 3) {
        memcpy(name + i, "€", 3);
    }
    ck_assert(hw_words_name_fits(name, HW_WORDS_MAX_NAME_BYTES));
    ck_assert(!hw_words_name_fits(name, HW_WORDS_MAX_NAME_BYTES + 3));
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("words");
    TCase *tcase = tcase_create("words");
    tcase_set_timeout(tcase, 60);
    tcase_add_loop_test(tcase, the_nearest_word_is_found, 0, ROWS(near));
    tcase_add_test(tcase, itself_and_ties);
    tcase_add_test(tcase, distances_by_search);
    tcase_add_loop_test(tcase, quotations_end_at_a_whole_letter, 0, ROWS(cuts));
    tcase_add_test(tcase, letters_of_a_name);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
