/* Lists of notes and facts: they grow as far as they must, and remember refused memory.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/note.h"

#include <stdio.h>
#include <string.h>

#include "support.h"

/* As many as no project makes: each stays as it was said, in order. */
START_TEST(long_lists)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_notes notes;
    ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
    hw_notes_say(&notes, HW_NOTE_SAFETY, "%s first", "said");
    for (int i = 1; i < 3000; i++) {
        hw_notes_say(&notes, i % 2 == 0 ? HW_NOTE_REMARK : HW_NOTE_WARNING, "note %d", i);
        hw_notes_base(&notes, (hw_basis){ .what = "fact", .value = notes.notes[i].text });
    }
    ck_assert(!notes.refused);
    ck_assert_int_eq(notes.note_count, 3000);
    ck_assert_int_eq(notes.basis_count, 2999);
    ck_assert_str_eq(notes.notes[0].text, "Said first");
    ck_assert_int_eq(notes.notes[0].kind, HW_NOTE_SAFETY);
    for (int i = 1; i < 3000; i++) {
        char wanted[32];
        (void)snprintf(wanted, sizeof wanted, "Note %d", i);
        ck_assert_str_eq(notes.notes[i].text, wanted);
        ck_assert_int_eq(notes.notes[i].kind, i % 2 == 0 ? HW_NOTE_REMARK : HW_NOTE_WARNING);
        ck_assert_str_eq(notes.basis[i - 1].value, wanted);
    }
    hw_check_close(&arena, &heap);
}
END_TEST

/* Safety first, then warnings, then remarks; those of a kind stay as they were said. */
START_TEST(sorted)
{
    static const hw_note_kind kinds[] = { HW_NOTE_REMARK, HW_NOTE_WARNING, HW_NOTE_REMARK,
        HW_NOTE_SAFETY, HW_NOTE_WARNING, HW_NOTE_SAFETY };
    static const char *const wanted[] = { "3", "5", "1", "4", "0", "2" };
    for (long refuse_at = 0; refuse_at < 2; refuse_at++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_notes notes;
        ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
        for (int i = 0; i < 6; i++) {
            hw_notes_say(&notes, kinds[i], "%d", i);
        }
        heap.refuse_at = refuse_at == 0 ? 0 : heap.grabs + 1;
        hw_notes_sort(&notes);
        ck_assert_int_eq(notes.refused, refuse_at == 1);
        ck_assert_int_eq(notes.note_count, 6);
        for (int i = 0; i < 6 && refuse_at == 0; i++) {
            ck_assert_str_eq(notes.notes[i].text, wanted[i]);
        }
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* By hand: 31.5 / 2.54 is 12.4; to an eighth 12 3/8. */
START_TEST(words)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_notes notes;
    ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
    ck_assert_str_eq(hw_notes_length(&notes, 31.54, HW_SHOW_CM), "31.5 cm");
    ck_assert_str_eq(hw_notes_length(&notes, 31.5, HW_SHOW_IN), "12 3/8 in");
    ck_assert_str_eq(hw_notes_number(&notes, 28.456, 2), "28.46");
    ck_assert_str_eq(hw_notes_number(&notes, 28, 2), "28");
    ck_assert_str_eq(hw_notes_needle(&notes, -12), "L12");
    ck_assert_str_eq(hw_notes_needle(&notes, 0), "R1");
    ck_assert_str_eq(hw_notes_counted(&notes, 1, "row", "rows"), "1 row");
    ck_assert_str_eq(hw_notes_counted(&notes, 2, "row", "rows"), "2 rows");
    ck_assert_str_eq(hw_notes_halves(&notes, 1, "stitch", "stitches"), "0.5 stitch");
    ck_assert_str_eq(hw_notes_halves(&notes, 2, "stitch", "stitches"), "1 stitch");
    ck_assert_str_eq(hw_notes_halves(&notes, 3, "stitch", "stitches"), "1.5 stitches");
    static const char *const names[] = { "86", "92", "98" };
    static const struct {
        bool marked[3];
        int count;
        const char *text;
    } rows[] = {
        { { true, false, true }, 3, "86, 98" }, { { false, true, false }, 3, "92" },
        { { true, true, true }, 3, "all sizes" }, { { true, true, false }, 2, "all sizes" },
        { { true, false, false }, 1, "86" }, /* the only size goes by its name */
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_str_eq(
            hw_notes_sizes(&notes, names, rows[i].marked, rows[i].count), rows[i].text);
    }
    hw_check_close(&arena, &heap);
}
END_TEST

/* Whatever is asked for while memory is refused, a text comes back, and the refusal is kept. */
static void use_all(hw_notes *notes)
{
    static const char *const names[] = { "86" };
    static const bool marked[] = { true };
    ck_assert_ptr_nonnull(hw_notes_length(notes, 3, HW_SHOW_CM));
    ck_assert_ptr_nonnull(hw_notes_number(notes, 3, 1));
    ck_assert_ptr_nonnull(hw_notes_needle(notes, 3));
    ck_assert_ptr_nonnull(hw_notes_counted(notes, 3, "row", "rows"));
    ck_assert_ptr_nonnull(hw_notes_halves(notes, 3, "row", "rows"));
    ck_assert_ptr_nonnull(hw_notes_sizes(notes, names, marked, 1));
    hw_notes_of(notes, HW_NOTE_REMARK, "front", ": said");
    hw_notes_of(notes, HW_NOTE_REMARK, "back", ": said");
    hw_notes_of(notes, HW_NOTE_REMARK, "sleeve", ": said");
    for (int i = 0; i < 100; i++) { /* past the first room of both lists */
        hw_notes_say(notes, HW_NOTE_REMARK, "%d", i);
        hw_notes_base(notes, (hw_basis){ .what = "fact", .value = "value" });
    }
}

/* What is said of several pieces alike is said once, and what holds for all parts too; by the rule
 * of the header, common practice in lists. A note is a sentence and begins with a capital. */
START_TEST(shared)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_notes notes;
    ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
    hw_notes_of(&notes, HW_NOTE_REMARK, "front", ", %d years: a", 4);
    hw_notes_of(&notes, HW_NOTE_REMARK, "back", ", %d years: a", 4);
    hw_notes_of(&notes, HW_NOTE_REMARK, "front", ", %d years: b", 4);
    hw_notes_of(&notes, HW_NOTE_WARNING, "front", ", %d years: a", 4);
    hw_notes_of(&notes, HW_NOTE_REMARK, "sleeve", ", %d years: a", 4);
    hw_notes_say(&notes, HW_NOTE_REMARK, "all");
    notes.about = "cuff";
    hw_notes_say(&notes, HW_NOTE_REMARK, "all");
    hw_notes_of(&notes, HW_NOTE_REMARK, "back", ", %d years: a", 4);
    static const char *const wanted[] = { "Front, back and sleeve, 4 years: a", "Front, 4 years: b",
        "Front, 4 years: a", "All", "Cuff: back, 4 years: a" };
    ck_assert_int_eq(notes.note_count, 5);
    for (int i = 0; i < 5; i++) {
        ck_assert_str_eq(notes.notes[i].text, wanted[i]);
    }
    hw_check_close(&arena, &heap);
}
END_TEST

START_TEST(refused)
{
    long n = 0;
    for (bool reached = true; reached;) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, ++n, false);
        hw_notes notes;
        hw_status status = hw_notes_init(&notes, &arena);
        ck_assert_int_eq(status, n <= 3 ? HW_ERR_NOMEM : HW_OK);
        use_all(&notes);
        reached = heap.grabs >= n;
        ck_assert_int_eq(notes.refused, reached);
        ck_assert(!reached || notes.note_count < 100 || notes.basis_count < 100);
        hw_check_close(&arena, &heap);
    }
    ck_assert_int_gt(n, 100);
}
END_TEST

/* A fact whose text could not be made is a refusal, and nothing follows it. */
START_TEST(missing_text)
{
    static const hw_basis rows[] = { { .what = NULL, .value = "3" }, { .what = "a" } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_notes notes;
        ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
        hw_notes_base(&notes, rows[i]);
        ck_assert(notes.refused);
        hw_notes_base(&notes, (hw_basis){ .what = "fact", .value = "value" });
        hw_notes_say(&notes, HW_NOTE_REMARK, "a note");
        ck_assert_str_eq(hw_notes_number(&notes, 3, 1), "");
        ck_assert_str_eq(hw_notes_needle(&notes, 3), "");
        ck_assert_int_eq(notes.basis_count + notes.note_count, 0);
        ck_assert(notes.refused);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { long_lists, sorted, words, shared, refused, missing_text };
    return hw_check_run(hw_check_suite("note", tests, sizeof tests / sizeof tests[0]));
}
