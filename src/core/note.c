/* Gathering notes: a refused allocation is remembered and reported once, by the plan.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/note.h"

#include <string.h>

#include "core/bed.h"
#include "core/num.h"

enum { FIRST_ROOM = 64 };

hw_status hw_notes_init(hw_notes *notes, hw_arena *arena)
{
    *notes = (hw_notes){ .arena = arena,
        .note_room = FIRST_ROOM,
        .notes = hw_arena_get(arena, FIRST_ROOM, sizeof(hw_note)),
        .basis_room = FIRST_ROOM,
        .basis = hw_arena_get(arena, FIRST_ROOM, sizeof(hw_basis)) };
    notes->refused = notes->notes == NULL || notes->basis == NULL;
    return notes->refused ? HW_ERR_NOMEM : HW_OK;
}

/* A full list moves to twice the room: nothing that a knitter must know is ever left out. */
static void *wider(hw_notes *notes, const void *list, int *room, size_t size)
{
    size_t count = (size_t)*room;
    void *copy = hw_arena_get(notes->arena, count * 2, size);
    if (copy == NULL) {
        notes->refused = true;
        return NULL;
    }
    *room *= 2;
    return memcpy(copy, list, count * size);
}

/* What holds for the whole garment comes up with each of its parts, and is told once. */
static bool said(const hw_notes *notes, const char *text)
{
    bool found = false;
    for (int i = 0; i < notes->note_count; i++) {
        found = found || strcmp(notes->notes[i].text, text) == 0;
    }
    return found;
}

void hw_notes_say(hw_notes *notes, hw_note_kind kind, const char *format, ...)
{
    if (notes->refused) {
        return;
    }
    va_list args;
    va_start(args, format);
    const char *text = hw_arena_format_args(notes->arena, format, args);
    va_end(args);
    if (text != NULL && said(notes, text)) {
        return;
    }
    if (text != NULL && notes->about != NULL) {
        text = hw_arena_format(notes->arena, "%s: %s", notes->about, text);
        if (text != NULL && said(notes, text)) {
            return;
        }
    }
    hw_note *list = notes->notes;
    if (text != NULL && notes->note_count == notes->note_room) {
        list = wider(notes, list, &notes->note_room, sizeof *list);
    }
    if (text == NULL || list == NULL) {
        notes->refused = true;
        return;
    }
    list[notes->note_count++] = (hw_note){ .kind = kind, .text = text };
    notes->notes = list;
}

void hw_notes_sort(hw_notes *notes)
{
    if (notes->refused) {
        return;
    }
    hw_note *sorted = hw_arena_get(notes->arena, (size_t)notes->note_room, sizeof *sorted);
    if (sorted == NULL) {
        notes->refused = true;
        return;
    }
    int count = 0;
    for (int kind = HW_NOTE_COUNT; kind-- > 0;) { /* safety is the last of the kinds */
        for (int i = 0; i < notes->note_count; i++) {
            if ((int)notes->notes[i].kind == kind) {
                sorted[count++] = notes->notes[i];
            }
        }
    }
    notes->notes = sorted;
}

void hw_notes_base(hw_notes *notes, hw_basis basis)
{
    if (notes->refused || basis.value == NULL || basis.what == NULL) {
        notes->refused = true;
        return;
    }
    hw_basis *list = notes->basis;
    if (notes->basis_count == notes->basis_room) {
        list = wider(notes, list, &notes->basis_room, sizeof *list);
    }
    if (list != NULL) {
        list[notes->basis_count++] = basis;
        notes->basis = list;
    }
}

/* The buffer's text, or "" and the refusal remembered. */
static const char *keep(hw_notes *notes, hw_buf *buf)
{
    const char *text = notes->refused ? NULL : hw_buf_keep(buf, notes->arena);
    hw_buf_release(buf);
    notes->refused = text == NULL;
    return text != NULL ? text : "";
}

const char *hw_notes_length(hw_notes *notes, double cm, hw_show show)
{
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    hw_length_show(&buf, cm, show);
    return keep(notes, &buf);
}

const char *hw_notes_number(hw_notes *notes, double x, int decimals)
{
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    hw_num_show(&buf, x, decimals);
    return keep(notes, &buf);
}

const char *hw_notes_needle(hw_notes *notes, int needle)
{
    const char *text = notes->refused ? NULL : hw_bed_needle_name(needle, notes->arena);
    notes->refused = text == NULL;
    return text != NULL ? text : "";
}

const char *hw_notes_sizes(hw_notes *notes, const char *const *names, const bool *marked, int count)
{
    int found = 0;
    for (int i = 0; i < count; i++) {
        found += marked[i] ? 1 : 0;
    }
    if (found == count && count > 1) {
        return "all sizes";
    }
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    for (int i = 0; i < count; i++) {
        if (marked[i]) {
            hw_buf_text(&buf, buf.len > 0 ? ", " : "");
            hw_buf_text(&buf, names[i]);
        }
    }
    return keep(notes, &buf);
}

const char *hw_notes_counted(hw_notes *notes, int n, const char *one, const char *more)
{
    const char *text = hw_arena_format(notes->arena, "%d %s", n, n == 1 ? one : more);
    notes->refused = notes->refused || text == NULL;
    return text != NULL ? text : "";
}

const char *hw_notes_halves(hw_notes *notes, int n, const char *one, const char *more)
{
    const char *text = hw_arena_format(
        notes->arena, "%s %s", hw_notes_number(notes, n / 2.0, 1), n <= 2 ? one : more);
    notes->refused = notes->refused || text == NULL;
    return text != NULL ? text : "";
}
