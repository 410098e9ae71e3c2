/* The buffer: its limit, its sticky error, and texts made by a format.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/buf.h"

#include <string.h>
#include <wchar.h>

#include "support.h"

/* The promises of buf.h: own choice; lengths counted by hand. */
START_TEST(what_is_added_stands_there)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_buf buf;
    hw_buf_init(&buf, &mem, 1000);
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    hw_buf_text(&buf, "hem ");
    hw_buf_bytes(&buf, "rows and more", 4);
    hw_buf_format(&buf, " %d%s", 12, " +");
    hw_buf_repeat(&buf, "ab", 3);
    hw_buf_repeat(&buf, "x", 0);
    hw_buf_repeat(&buf, "x", -1);
    hw_buf_bytes(&buf, NULL, 0);
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    ck_assert_str_eq(buf.text, "hem rows 12 +ababab");
    ck_assert_uint_eq(buf.len, 19);
    hw_buf_release(&buf);
    hw_buf_release(&buf);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(it_grows_and_keeps_what_it_has)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_buf buf;
    hw_buf_init(&buf, &mem, HW_BUF_LIMIT);
    for (int i = 0; i < 5000; i++) {
        hw_buf_format(&buf, "%04d", i);
    }
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    ck_assert_uint_eq(strlen(buf.text), 20000);
    ck_assert_int_eq(strncmp(buf.text, "000000010002", 12), 0);
    ck_assert_str_eq(buf.text + 19992, "49984999");
    ck_assert_int_eq(heap.live, 1);
    hw_buf_release(&buf);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(the_limit_is_reached_but_not_passed)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    hw_buf_init(&buf, &mem, 5);
    hw_buf_text(&buf, "abc");
    hw_buf_text(&buf, "de");
    hw_buf_text(&buf, "");
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    ck_assert_str_eq(buf.text, "abcde");
    hw_buf_text(&buf, "f");
    ck_assert_int_eq(hw_buf_status(&buf), HW_ERR_LIMIT);
    ck_assert_str_eq(buf.text, "abcde");
    hw_buf_release(&buf);
}
END_TEST

START_TEST(after_a_failure_nothing_is_added)
{
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_buf buf;
    hw_buf_init(&buf, &mem, 5);
    hw_buf_text(&buf, "abc");
    hw_buf_format(&buf, "%s", "too long for it");
    hw_buf_text(&buf, "d");
    hw_buf_bytes(&buf, "d", 1);
    hw_buf_format(&buf, "%d", 1);
    hw_buf_repeat(&buf, "d", 1);
    ck_assert_int_eq(hw_buf_status(&buf), HW_ERR_LIMIT);
    ck_assert_str_eq(buf.text, "abc");
    ck_assert_ptr_null(hw_buf_keep(&buf, &arena));
    hw_buf_release(&buf);
    hw_arena_release(&arena);
}
END_TEST

/* The first request, or the one with which it grows, is refused. */
START_TEST(refused_memory_is_a_status)
{
    hw_check_heap heap = { 0 };
    heap.refuse_at = _i + 1;
    hw_mem mem = hw_check_mem(&heap);
    hw_buf buf;
    hw_buf_init(&buf, &mem, 10000);
    hw_buf_repeat(&buf, "a", 200);
    ck_assert_int_eq(hw_buf_status(&buf), _i == 0 ? HW_ERR_NOMEM : HW_OK);
    hw_buf_repeat(&buf, "a", 200);
    ck_assert_int_eq(hw_buf_status(&buf), HW_ERR_NOMEM);
    size_t len = buf.len;
    hw_buf_text(&buf, "a");
    ck_assert_uint_eq(buf.len, len);
    ck_assert_int_eq(heap.grabs, _i + 1);
    hw_buf_release(&buf);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

/* C11 7.21.6.1: a wide character that the locale cannot write is an encoding error. */
START_TEST(a_format_that_fails_is_a_status)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    hw_buf_init(&buf, &mem, 100);
    hw_buf_text(&buf, "abc");
    hw_buf_format(&buf, "%lc", (wint_t)0x20AC);
    ck_assert_int_eq(hw_buf_status(&buf), HW_ERR_INTERNAL);
    hw_buf_text(&buf, "d");
    ck_assert_str_eq(buf.text, "abc");
    hw_buf_release(&buf);
}
END_TEST

START_TEST(a_text_can_be_kept)
{
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_buf buf;
    hw_buf_init(&buf, &mem, 100);
    ck_assert_str_eq(hw_buf_keep(&buf, &arena), "");
    hw_buf_text(&buf, "kept");
    const char *kept = hw_buf_keep(&buf, &arena);
    hw_buf_release(&buf);
    ck_assert_str_eq(kept, "kept");
    ck_assert_str_eq(hw_arena_format(&arena, "%s %d", kept, 3), "kept 3");
    ck_assert_str_eq(hw_arena_format(&arena, "%s", ""), "");
    hw_arena_release(&arena);
}
END_TEST

START_TEST(a_formatted_text_can_be_refused)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    for (int n = 0; n < 2; n++) {
        heap.refuse_at = heap.grabs + 1 + n;
        ck_assert_ptr_null(hw_arena_format(&arena, "%d rows", 12));
    }
    hw_arena_release(&arena);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

/* What was taken: how much, how often, the longest bite, and whether it is in order. */
typedef struct {
    size_t len, bites, longest;
    bool in_order;
    hw_status answer; /* to the second bite */
} Taken;

static hw_status take(void *context, const char *bytes, size_t len)
{
    Taken *taken = context;
    for (size_t i = 0; i < len; i++) {
        taken->in_order = taken->in_order && bytes[i] == (char)('a' + (taken->len + i) % 26);
    }
    taken->len += len;
    taken->longest = len > taken->longest ? len : taken->longest;
    return ++taken->bites == 2 ? taken->answer : HW_OK;
}

static void alphabets(hw_buf *buf, int count)
{
    hw_buf_repeat(buf, "abcdefghijklmnopqrstuvwxyz", count);
}

/* A long text needs the room of a short one; its limit is that of all. Lengths by hand. */
START_TEST(what_is_passed_on_takes_no_room)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_buf buf;
    Taken taken = { .in_order = true, .answer = HW_OK };
    hw_buf_init(&buf, &mem, 2600000);
    hw_buf_pass_on(&buf, take, &taken);
    alphabets(&buf, 100000);
    hw_buf_flush(&buf);
    hw_buf_flush(&buf);
    ck_assert_int_eq(hw_buf_status(&buf), HW_OK);
    ck_assert_uint_eq(taken.len, 2600000);
    ck_assert(taken.in_order);
    ck_assert_uint_lt(taken.longest, 100000);
    ck_assert_uint_lt(buf.room, 200000);
    hw_buf_text(&buf, "a");
    ck_assert_int_eq(hw_buf_status(&buf), HW_ERR_LIMIT);
    hw_buf_release(&buf);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(what_is_not_taken_ends_it)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    Taken taken = { .in_order = true, .answer = HW_ERR_IO };
    hw_buf_init(&buf, &mem, HW_BUF_LIMIT);
    hw_buf_pass_on(&buf, take, &taken);
    alphabets(&buf, 100000);
    hw_buf_flush(&buf);
    ck_assert_int_eq(hw_buf_status(&buf), HW_ERR_IO);
    ck_assert_uint_eq(taken.bites, 2);
    hw_buf_release(&buf);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("buf");
    TCase *buffers = tcase_create("buffer");
    tcase_add_test(buffers, what_is_added_stands_there);
    tcase_add_test(buffers, it_grows_and_keeps_what_it_has);
    tcase_add_test(buffers, the_limit_is_reached_but_not_passed);
    tcase_add_test(buffers, after_a_failure_nothing_is_added);
    tcase_add_loop_test(buffers, refused_memory_is_a_status, 0, 2);
    tcase_add_test(buffers, a_format_that_fails_is_a_status);
    tcase_add_test(buffers, a_text_can_be_kept);
    tcase_add_test(buffers, a_formatted_text_can_be_refused);
    tcase_add_test(buffers, what_is_passed_on_takes_no_room);
    tcase_add_test(buffers, what_is_not_taken_ends_it);
    suite_add_tcase(suite, buffers);
    return hw_check_run(suite);
}
