/* Arena over the allocation hooks; the only place that names malloc and free.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/mem.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

struct hw_block {
    struct hw_block *next;
    size_t used, size;
    max_align_t start[];
};

static void *system_grab(void *context, size_t size)
{
    (void)context;
    return malloc(size);
}

static void system_drop(void *context, void *block)
{
    (void)context;
    free(block);
}

hw_mem hw_mem_system(void)
{
    return (hw_mem){ .grab = system_grab, .drop = system_drop, .context = NULL };
}

void hw_arena_init(hw_arena *arena, const hw_mem *mem, size_t block_size)
{
    *arena = (hw_arena){ .mem = *mem, .blocks = NULL, .block_size = block_size };
}

void hw_arena_release(hw_arena *arena)
{
    struct hw_block *block = arena->blocks;
    while (block != NULL) {
        struct hw_block *next = block->next;
        arena->mem.drop(arena->mem.context, block);
        block = next;
    }
    arena->blocks = NULL;
}

static struct hw_block *add_block(hw_arena *arena, size_t need)
{
    size_t size = need > arena->block_size ? need : arena->block_size;
    if (size > SIZE_MAX - sizeof(struct hw_block)) {
        return NULL;
    }
    struct hw_block *block = arena->mem.grab(arena->mem.context, sizeof *block + size);
    if (block == NULL) {
        return NULL;
    }
    block->next = arena->blocks;
    block->used = 0;
    block->size = size;
    arena->blocks = block;
    return block;
}

void *hw_arena_get(hw_arena *arena, size_t count, size_t size)
{
    const size_t step = sizeof(max_align_t);
    count = count == 0 ? 1 : count;
    if (count > (SIZE_MAX - step) / size) {
        return NULL;
    }
    size_t need = (count * size + step - 1) / step * step;
    /* A block for each request holds exactly what was asked for: a sanitizer sees an overrun. */
    if (arena->block_size == 0) {
        need = count * size;
    }
    struct hw_block *block = arena->blocks;
    if (block == NULL || arena->block_size == 0 || block->size - block->used < need) {
        block = add_block(arena, need);
    }
    if (block == NULL) {
        return NULL;
    }
    void *room = (char *)block->start + block->used;
    block->used += need;
    return memset(room, 0, count * size);
}

char *hw_arena_text(hw_arena *arena, const char *text, size_t len)
{
    char *copy = len < SIZE_MAX ? hw_arena_get(arena, len + 1, 1) : NULL;
    if (copy != NULL && len > 0) {
        memcpy(copy, text, len);
    }
    return copy;
}
