/* The arena: room that is zeroed and aligned, refusals, and nothing left behind.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/mem.h"

#include <stdint.h>
#include <string.h>

#include "support.h"

/* The promises of mem.h: own choice. Block sizes: none, small, usual. */
static const size_t block_sizes[] = { 0, 64, 65536 };

START_TEST(room_is_zeroed_aligned_and_apart)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, block_sizes[_i]);
    unsigned char *rooms[50];
    for (size_t n = 0; n < 50; n++) {
        rooms[n] = hw_arena_get(&arena, n, 3);
        ck_assert_ptr_nonnull(rooms[n]);
        ck_assert_uint_eq((uintptr_t)rooms[n] % _Alignof(max_align_t), 0);
        for (size_t byte = 0; byte < 3 * n; byte++) {
            ck_assert_int_eq(rooms[n][byte], 0);
        }
        memset(rooms[n], (int)n, 3 * n);
    }
    for (size_t n = 0; n < 50; n++) {
        for (size_t byte = 0; byte < 3 * n; byte++) {
            ck_assert_int_eq(rooms[n][byte], (int)n);
        }
    }
    hw_arena_release(&arena);
    ck_assert_int_gt(heap.grabs, 0);
    ck_assert_int_eq(heap.live, 0);
    hw_arena_release(&arena);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(blocks_are_shared_unless_told_otherwise)
{
    static const int blocks[] = { 20, 20, 1 }; /* by hand: 20 requests of 60 bytes */
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, block_sizes[_i]);
    for (int n = 0; n < 20; n++) {
        ck_assert_ptr_nonnull(hw_arena_get(&arena, 60, 1));
    }
    ck_assert_int_eq(heap.grabs, blocks[_i]);
    hw_arena_release(&arena);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(more_than_a_block_is_granted)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, block_sizes[_i]);
    char *room = hw_arena_get(&arena, 1, 200000);
    ck_assert_ptr_nonnull(room);
    room[199999] = 1;
    hw_arena_release(&arena);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(products_that_overflow_are_refused)
{
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, block_sizes[_i]);
    ck_assert_ptr_null(hw_arena_get(&arena, SIZE_MAX, 1));
    ck_assert_ptr_null(hw_arena_get(&arena, 1, SIZE_MAX));
    ck_assert_ptr_null(hw_arena_get(&arena, SIZE_MAX / 2, 3));
    ck_assert_ptr_null(hw_arena_get(&arena, SIZE_MAX / 8 + 1, 8));
    ck_assert_ptr_null(hw_arena_get(&arena, SIZE_MAX - 20, 1));
    ck_assert_ptr_null(hw_arena_text(&arena, "a", SIZE_MAX));
    ck_assert_int_eq(heap.grabs, 0);
    ck_assert_ptr_nonnull(hw_arena_get(&arena, 8, 8));
    hw_arena_release(&arena);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(a_refusal_is_a_null)
{
    hw_check_heap heap = { 0 };
    heap.refuse_at = 2;
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    ck_assert_ptr_nonnull(hw_arena_get(&arena, 1, 1));
    ck_assert_ptr_null(hw_arena_get(&arena, 1, 1));
    ck_assert_ptr_nonnull(hw_arena_text(&arena, "abc", 3));
    heap.refuse_at = heap.grabs + 1;
    heap.refuse_onwards = true;
    ck_assert_ptr_null(hw_arena_text(&arena, "abc", 3));
    ck_assert_ptr_null(hw_arena_get(&arena, 1, 1));
    ck_assert_int_eq(heap.grabs, 5);
    ck_assert_int_eq(heap.live, 2);
    hw_arena_release(&arena);
    ck_assert_int_eq(heap.live, 0);
}
END_TEST

START_TEST(texts_are_copied_with_an_end)
{
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    const char text[] = "hem and band";
    char *copy = hw_arena_text(&arena, text, 3);
    ck_assert_str_eq(copy, "hem");
    ck_assert_ptr_ne(copy, text);
    ck_assert_str_eq(hw_arena_text(&arena, text, 0), "");
    ck_assert_str_eq(hw_arena_text(&arena, NULL, 0), "");
    hw_arena_release(&arena);
}
END_TEST

int main(void)
{
    const int sizes = (int)(sizeof block_sizes / sizeof block_sizes[0]);
    Suite *suite = suite_create("mem");
    TCase *arenas = tcase_create("arena");
    tcase_add_loop_test(arenas, room_is_zeroed_aligned_and_apart, 0, sizes);
    tcase_add_loop_test(arenas, blocks_are_shared_unless_told_otherwise, 0, sizes);
    tcase_add_loop_test(arenas, more_than_a_block_is_granted, 0, sizes);
    tcase_add_loop_test(arenas, products_that_overflow_are_refused, 0, sizes);
    tcase_add_test(arenas, a_refusal_is_a_null);
    tcase_add_test(arenas, texts_are_copied_with_an_end);
    suite_add_tcase(suite, arenas);
    return hw_check_run(suite);
}
