/* Memory: the hooks through which all of it comes, and the arena that a run lives in.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_MEM_H
#define HW_CORE_MEM_H

#include "core/hw.h"

/* Where memory comes from. Tests count and refuse; the program uses hw_mem_system(). */
typedef struct {
    void *(*grab)(void *context, size_t size);
    void (*drop)(void *context, void *block);
    void *context;
} hw_mem;

struct hw_block;

/* A run's memory, released all at once. Its members are private to mem.c. */
typedef struct {
    hw_mem mem;
    struct hw_block *blocks;
    size_t block_size;
} hw_arena;

/*
 * The hooks that call the system's allocator.
 *
 * Returned:  hooks with no context
 */
hw_mem hw_mem_system(void);

/*
 * Make an arena ready; nothing is allocated yet.
 *
 * Given:     arena       the caller's, not yet in use
 *            mem         hooks, copied
 *            block_size  bytes asked for at a time; 0 gives every request a block of its own, so
 *                        that overruns show and each request can be refused by a test
 */
void hw_arena_init(hw_arena *arena, const hw_mem *mem, size_t block_size);

/*
 * Give back everything that came from the arena.
 *
 * Given:     arena     initialised; may be released twice
 */
void hw_arena_release(hw_arena *arena);

/*
 * Room for an array, zeroed.
 *
 * Given:     arena     initialised
 *            count     elements; 0 is taken as 1
 *            size      bytes of one element, above 0
 * Returned:  the room, owned by the arena; NULL when memory is refused or count * size overflows
 */
void *hw_arena_get(hw_arena *arena, size_t count, size_t size) HW_MUST_USE;

/*
 * A copy of a text, with a NUL behind it.
 *
 * Given:     arena     initialised
 *            text      len bytes, without NUL
 * Returned:  the copy, owned by the arena; NULL when memory is refused
 */
char *hw_arena_text(hw_arena *arena, const char *text, size_t len) HW_MUST_USE;

#endif
