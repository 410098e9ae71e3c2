/* Prints the measured pieces of a filled-in file, for a script to compare.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>
#include <string.h>

#include "core/status.h"
#include "shell/bookrows.h"

/* measured_dump FILE UNIT SIZE... -- PIECE...: a line for each piece, its values parted by tabs;
 * or, to standard error, FILE:ROW:COLUMN: and what is wrong. Ends with the program's exit code. */

enum { FIRST_SIZE = 3 };

/* The index of the word `--`, or count. */
static int find_dashes(int count, char **words)
{
    int at = FIRST_SIZE;
    while (at < count && strcmp(words[at], "--") != 0) {
        at++;
    }
    return at;
}

static void print(const hw_knitted *k, const char *size, const char *piece)
{
    (void)printf("%d\t%s\t%s\t%s\t%.17g\t%.17g\t%.17g\t%.17g\t%s\n", k->row, size, piece,
        hw_fabric_name(k->fabric), k->sts, k->width_cm, k->rows, k->length_cm,
        k->note != NULL ? k->note : "");
}

static hw_status dump(const char *path, const hw_knitted_context *context, hw_arena *arena)
{
    hw_err err = { .code = HW_OK };
    hw_knitted_list list = { NULL, 0 };
    hw_status status = hw_knitted_load(path, context, arena, &list, &err);
    for (int i = 0; i < list.count; i++) {
        const hw_knitted *k = &list.list[i];
        print(k, context->sizes->names[k->size], context->garment->pieces[k->piece].name);
    }
    if (status != HW_OK) {
        (void)fprintf(stderr, "%s:%d:%d: %s\n", err.where, err.line, err.column, err.text);
    }
    return status;
}

int main(int count, char **words)
{
    const char *names[HW_MAX_SIZES] = { NULL };
    hw_piece pieces[HW_MAX_PIECES] = { { .name = NULL } };
    int dashes = find_dashes(count, words);
    hw_sizes sizes = { .title = "", .count = dashes - FIRST_SIZE, .names = names };
    hw_garment garment = { .pieces = pieces, .piece_count = count - dashes - 1 };
    hw_unit unit = HW_UNIT_CM;
    if (sizes.count < 1 || sizes.count > HW_MAX_SIZES || garment.piece_count < 1 ||
        garment.piece_count > HW_MAX_PIECES ||
        hw_unit_parse(words[2], strlen(words[2]), &unit) != HW_OK) {
        (void)fputs("usage: measured_dump FILE UNIT SIZE... -- PIECE...\n", stderr);
        return hw_status_exit(HW_ERR_USAGE);
    }
    for (int i = 0; i < sizes.count; i++) {
        names[i] = words[FIRST_SIZE + i];
    }
    for (int i = 0; i < garment.piece_count; i++) {
        pieces[i].name = words[dashes + 1 + i];
    }
    hw_knitted_context context = { .sizes = &sizes, .garment = &garment, .usual = unit };
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    hw_status status = dump(words[1], &context, &arena);
    hw_arena_release(&arena);
    return hw_status_exit(status);
}
