/* The key table: whole, without contradictions, and each kind in words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/keys.h"

#include <string.h>

#include "support.h"

static const hw_key *key(int index)
{
    int count = 0;
    const hw_key *keys = hw_keys_all(&count);
    ck_assert_int_lt(index, count);
    return &keys[index];
}

static int key_count(void)
{
    int count = 0;
    (void)hw_keys_all(&count);
    return count;
}

static const hw_key *find(hw_part part, const char *name)
{
    for (int i = 0; i < key_count(); i++) {
        if (key(i)->in == part && strcmp(key(i)->name, name) == 0) {
            return key(i);
        }
    }
    ck_abort_msg("no key %s", name);
    return NULL;
}

static bool is_file(hw_part part)
{
    return part == HW_PART_PROJECT || part == HW_PART_MACHINE_FILE || part == HW_PART_MOTIF_FILE ||
           part == HW_PART_SIZES_FILE || part == HW_PART_GARMENT_FILE;
}

/* Own choice: what every row of the table must keep to. */
START_TEST(every_row_is_sound)
{
    for (int i = 0; i < key_count(); i++) {
        const hw_key *k = key(i);
        bool part = k->kind == HW_KIND_PART || k->kind == HW_KIND_PARTS;
        bool ranged = k->kind == HW_KIND_COUNT || k->kind == HW_KIND_NUMBER ||
                      k->kind == HW_KIND_LENGTH || k->kind == HW_KIND_EASE ||
                      k->kind == HW_KIND_COUNTS || k->kind == HW_KIND_LENGTHS;
        ck_assert(k->in > HW_PART_NONE && k->in < HW_PART_COUNT);
        ck_assert(k->name[0] != '\0' && k->kind < HW_KIND_COUNT_OF);
        ck_assert_msg(k->help != NULL && k->help[0] != '\0', "%s has no help", k->name);
        ck_assert_msg(strlen(k->help) <= 120, "%s: %s", k->name, k->help);
        ck_assert_msg(strpbrk(k->help, "!\n") == NULL, "%s: %s", k->name, k->help);
        ck_assert_msg(part == (k->part != HW_PART_NONE), "%s: a part, or none", k->name);
        ck_assert_msg((k->kind == HW_KIND_WORD) == (k->words != NULL), "%s: words", k->name);
        ck_assert_msg(ranged == (k->least < k->most), "%s: a range, or none", k->name);
        ck_assert(strcmp(k->name, "*") != 0 || !k->required);
        for (int j = 0; j < i; j++) {
            ck_assert_msg(k->in != key(j)->in || strcmp(k->name, key(j)->name) != 0,
                "%s stands twice in %s", k->name, hw_part_name(k->in));
        }
    }
}
END_TEST

/* Own choice: each part is reached by a key, but for whole files; rows of a part stand together; a
 * part of any names holds nothing else. */
START_TEST(every_part_is_reached)
{
    for (int p = HW_PART_NONE + 1; p < HW_PART_COUNT; p++) {
        int reached = 0;
        int rows = 0;
        int runs = 0;
        int any_name = 0;
        for (int i = 0; i < key_count(); i++) {
            bool in = key(i)->in == (hw_part)p;
            reached += key(i)->part == (hw_part)p ? 1 : 0;
            rows += in ? 1 : 0;
            runs += in && (i == 0 || key(i - 1)->in != (hw_part)p) ? 1 : 0;
            any_name += in && strcmp(key(i)->name, "*") == 0 ? 1 : 0;
        }
        const char *name = hw_part_name((hw_part)p);
        ck_assert_msg(
            is_file((hw_part)p) == (reached == 0), "%s is reached %d times", name, reached);
        ck_assert_msg(rows > 0 && runs == 1, "rows of %s", name);
        ck_assert_msg(any_name == 0 || rows == 1, "%s takes any name and others", name);
        ck_assert(name[0] != '\0');
    }
}
END_TEST

/* By hand, from the table. */
static const struct {
    hw_part part;
    const char *name, *shown;
} shown[] = {
    { HW_PART_PROJECT, "title", "words" },
    { HW_PART_PROJECT, "units", "one of cm, in, both" },
    { HW_PART_PROJECT, "gauge", "group" },
    { HW_PART_FABRIC, "dial", "number, 0 to 30" },
    { HW_PART_FABRIC, "per", "length, 1 to 100 cm" },
    { HW_PART_FABRIC, "swatches", "list of groups" },
    { HW_PART_MOTIF, "chart", "chart" },
    { HW_PART_MOTIF, "gap", "whole number, 0 to 199" },
    { HW_PART_HEM, "depth", "length, 0.5 to 100 cm" },
    { HW_PART_HEM, "fold", "one of none, loose row, purl row, picot" },
    { HW_PART_SIZES, "names", "list of words" },
    { HW_PART_SIZES, "ages", "list of whole numbers, 0 to 1200" },
    { HW_PART_LENGTHS, "*", "list of lengths, 0.1 to 1000 cm" },
    { HW_PART_EASE, "*", "length or percentage" },
    { HW_PART_CHOICES, "re-hang", "yes or no" },
    { HW_PART_PIECE, "band width", "sum of measurements" },
};

START_TEST(kinds_in_words)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    hw_buf_init(&buf, &mem, 200);
    hw_key_show_kind(&buf, find(shown[_i].part, shown[_i].name));
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    ck_assert_str_eq(buf.text, shown[_i].shown);
    hw_buf_release(&buf);
}
END_TEST

START_TEST(words_are_parted)
{
    const char *words = "none|loose row";
    ck_assert_ptr_eq(hw_keys_word_end(words), words + 4);
    ck_assert_ptr_eq(hw_keys_word_end(words + 5), words + strlen(words));
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("keys");
    TCase *tcase = tcase_create("keys");
    tcase_add_test(tcase, every_row_is_sound);
    tcase_add_test(tcase, every_part_is_reached);
    tcase_add_loop_test(tcase, kinds_in_words, 0, ROWS(shown));
    tcase_add_test(tcase, words_are_parted);
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
