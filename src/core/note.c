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
        .subjects = hw_arena_get(arena, FIRST_ROOM, sizeof(hw_note_subject)),
        .basis_room = FIRST_ROOM,
        .basis = hw_arena_get(arena, FIRST_ROOM, sizeof(hw_basis)) };
    notes->refused = notes->notes == NULL || notes->subjects == NULL || notes->basis == NULL;
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
        const char *body = notes->subjects[i].body;
        found = found || (notes->subjects[i].last == NULL && strcmp(body, text) == 0);
    }
    return found;
}

/* Room for one note more, in both lists. */
static bool make_room(hw_notes *notes)
{
    if (notes->note_count < notes->note_room) {
        return true;
    }
    int room = notes->note_room;
    hw_note_subject *subjects = wider(notes, notes->subjects, &room, sizeof *subjects);
    hw_note *list = wider(notes, notes->notes, &notes->note_room, sizeof *list);
    if (subjects == NULL || list == NULL) {
        return false;
    }
    notes->subjects = subjects;
    notes->notes = list;
    return true;
}

/* "Hem: front, back and sleeve" and then what is said of them. It is a sentence, though the name
 * with which it may begin was written small. */
static const char *whole_text(hw_notes *notes, const hw_note_subject *s)
{
    const char *before = s->before != NULL ? s->before : "";
    char *text = hw_arena_format(notes->arena, "%s%s%s%s%s%s", s->about != NULL ? s->about : "",
        s->about != NULL ? ": " : "", before, s->before != NULL ? " and " : "",
        s->last != NULL ? s->last : "", s->body);
    if (text != NULL && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = (char)(text[0] - 'a' + 'A');
    }
    return text;
}

static void add(hw_notes *notes, hw_note_kind kind, hw_note_subject subject)
{
    subject.about = notes->about;
    const char *text = subject.body == NULL ? NULL : whole_text(notes, &subject);
    if (text == NULL || !make_room(notes)) {
        notes->refused = true;
        return;
    }
    notes->subjects[notes->note_count] = subject;
    notes->notes[notes->note_count++] = (hw_note){ .kind = kind, .text = text };
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
    if (text == NULL || !said(notes, text)) {
        add(notes, kind, (hw_note_subject){ .body = text });
    }
}

/* The note that says the same of other subjects, or -1. */
static int same(const hw_notes *notes, hw_note_kind kind, const char *body)
{
    for (int i = 0; i < notes->note_count; i++) {
        const hw_note_subject *s = &notes->subjects[i];
        if (s->last != NULL && s->about == notes->about && notes->notes[i].kind == kind &&
            strcmp(s->body, body) == 0) {
            return i;
        }
    }
    return -1;
}

void hw_notes_of(hw_notes *notes, hw_note_kind kind, const char *subject, const char *format, ...)
{
    if (notes->refused) {
        return;
    }
    va_list args;
    va_start(args, format);
    const char *body = hw_arena_format_args(notes->arena, format, args);
    va_end(args);
    int found = body == NULL ? -1 : same(notes, kind, body);
    if (found < 0) {
        add(notes, kind, (hw_note_subject){ .last = subject, .body = body });
        return;
    }
    hw_note_subject *s = &notes->subjects[found];
    s->before =
        s->before == NULL ? s->last : hw_arena_format(notes->arena, "%s, %s", s->before, s->last);
    s->last = subject;
    notes->notes[found].text = s->before == NULL ? NULL : whole_text(notes, s);
    notes->refused = notes->notes[found].text == NULL;
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

const char *hw_notes_words(hw_notes *notes, const char *text)
{
    notes->refused = notes->refused || text == NULL;
    return notes->refused ? "" : text;
}

const char *hw_notes_keep(hw_notes *notes, hw_buf *buf)
{
    const char *text = hw_buf_keep(buf, notes->arena);
    hw_buf_release(buf);
    return hw_notes_words(notes, text);
}

const char *hw_notes_length(hw_notes *notes, double cm, hw_show show)
{
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    hw_length_show(&buf, cm, show);
    return hw_notes_keep(notes, &buf);
}

const char *hw_notes_number(hw_notes *notes, double x, int decimals)
{
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    hw_num_show(&buf, x, decimals);
    return hw_notes_keep(notes, &buf);
}

const char *hw_notes_gauge(hw_notes *notes, double per_10cm, int decimals, hw_show show)
{
    return hw_notes_number(notes, per_10cm * hw_show_per_factor(show), decimals);
}

const char *hw_notes_needle(hw_notes *notes, int needle)
{
    return hw_notes_words(notes, hw_bed_needle_name(needle, notes->arena));
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
    return hw_notes_keep(notes, &buf);
}

const char *hw_notes_counted(hw_notes *notes, int n, const char *one, const char *more)
{
    return hw_notes_words(notes, hw_arena_format(notes->arena, "%d %s", n, n == 1 ? one : more));
}

const char *hw_notes_halves(hw_notes *notes, int n, const char *one, const char *more)
{
    const char *number = hw_notes_number(notes, n / 2.0, 1);
    return hw_notes_words(
        notes, hw_arena_format(notes->arena, "%s %s", number, n <= 2 ? one : more));
}
