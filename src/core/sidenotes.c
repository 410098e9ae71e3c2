/* Findings are gathered over pieces and sizes: rows and sides differ there, what to do does not.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sidenotes.h"

#include <string.h>

#include "core/trimming.h"

/* A finding, and the name of its band: NULL for the shaping, which is of no band. */
typedef struct {
    const hw_row_finding *of;
    const char *band;
} finding;

static const hw_sizes *sizes_of(const hw_whole *whole)
{
    return &whole->plans[0].finished;
}

/* The rows of a piece of the whole garment; NULL where none were made. */
static const hw_rowplan *rows_of(const hw_whole *whole, int size, int piece)
{
    hw_plan_piece at = hw_plan_find(whole, piece);
    const hw_rowplan *rows = at.plan->rows;
    return rows == NULL ? NULL : &rows[size * at.plan->project->garment.piece_count + at.piece];
}

static finding finding_at(const hw_whole *whole, int piece, const hw_row_finding *of)
{
    if (of->band != 0) {
        return (finding){ of, of->name };
    }
    int part = hw_plan_find(whole, piece).plan->part;
    return (finding){ of, part == 0 ? "hem" : whole->parts.list[part].name };
}

static bool same_band(const char *a, const char *b)
{
    return a == NULL || b == NULL ? a == b : strcmp(a, b) == 0;
}

/* Whether a knitter is told the same of both. */
static bool same(const finding *a, const finding *b)
{
    bool alike = a->of->kind == b->of->kind && same_band(a->band, b->band) &&
                 a->of->remedy_count == b->of->remedy_count;
    for (int i = 0; alike && i < a->of->remedy_count; i++) {
        const hw_row_remedy *x = &a->of->remedies[i];
        const hw_row_remedy *y = &b->of->remedies[i];
        alike =
            x->kind == y->kind && x->rows == y->rows && x->fewer == y->fewer && x->more == y->more;
    }
    return alike;
}

/* The sizes of a piece in which the same is found; whether there are any. */
static bool mark_sizes(const hw_whole *whole, int piece, const finding *what, bool *marked)
{
    bool any = false;
    for (int i = 0; i < sizes_of(whole)->count; i++) {
        const hw_rowplan *rows = rows_of(whole, i, piece);
        marked[i] = false;
        for (int f = 0; rows != NULL && f < rows->finding_count; f++) {
            const finding other = finding_at(whole, piece, &rows->findings[f]);
            marked[i] = marked[i] || same(what, &other);
        }
        any = any || marked[i];
    }
    return any;
}

/* Whether the same is found on a piece, in the very same sizes. */
static bool shares(const hw_whole *whole, int piece, const finding *what, const bool *marked)
{
    bool own[HW_MAX_SIZES];
    return mark_sizes(whole, piece, what, own) &&
           memcmp(own, marked, (size_t)sizes_of(whole)->count * sizeof *own) == 0;
}

/* "yoke on left sleeve and right sleeve": a piece, and those after it that share the finding. */
static const char *subject(
    const hw_whole *whole, int piece, const finding *what, const bool *marked, hw_notes *notes)
{
    const hw_garment *garment = &whole->project->garment;
    const char *last = garment->pieces[piece].name;
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    if (what->band != NULL) {
        hw_buf_format(&buf, "%s on ", what->band);
    }
    size_t start = buf.len;
    for (int p = piece + 1; p < garment->piece_count; p++) {
        if (shares(whole, p, what, marked)) {
            hw_buf_format(&buf, "%s%s", buf.len > start ? ", " : "", last);
            last = garment->pieces[p].name;
        }
    }
    hw_buf_format(&buf, "%s%s", buf.len > start ? " and " : "", last);
    return hw_notes_keep(notes, &buf);
}

static const char *marked_sizes(const hw_whole *whole, const bool *marked, hw_notes *notes)
{
    return hw_notes_sizes(notes, sizes_of(whole)->names, marked, sizes_of(whole)->count);
}

static const char *words_of(const hw_row_finding *of, hw_notes *notes)
{
    return hw_notes_words(notes, hw_row_finding_note(of, notes->arena));
}

/* Told with the first size of the first piece that has it in these sizes. */
static void tell(
    const hw_whole *whole, int size, int piece, const hw_row_finding *of, hw_notes *notes)
{
    const finding what = finding_at(whole, piece, of);
    bool marked[HW_MAX_SIZES] = { false };
    bool told = of->kind == HW_FINDING_BAND_END && of->band == 0; /* with the card */
    if (told || !mark_sizes(whole, piece, &what, marked)) {
        return;
    }
    for (int i = 0; i < size; i++) {
        told = told || marked[i];
    }
    for (int p = 0; p < piece && !told; p++) {
        told = shares(whole, p, &what, marked);
    }
    if (!told) {
        hw_notes_say(notes, HW_NOTE_REMARK, "%s, %s: %s",
            subject(whole, piece, &what, marked, notes), marked_sizes(whole, marked, notes),
            words_of(of, notes));
    }
}

static void pieces(const hw_whole *whole, hw_notes *notes)
{
    int count = sizes_of(whole)->count;
    for (int at = 0; at < count * whole->project->garment.piece_count; at++) {
        const hw_rowplan *rows = rows_of(whole, at % count, at / count);
        for (int f = 0; rows != NULL && f < rows->finding_count; f++) {
            tell(whole, at % count, at / count, &rows->findings[f], notes);
        }
    }
}

/* The sizes of a trim in which the same is found. */
static void mark_trim(const hw_whole *whole, int trim, const finding *what, bool *marked)
{
    for (int i = 0; i < sizes_of(whole)->count; i++) {
        const hw_rowplan *rows = &hw_trimming_at(whole, i, trim)->rows;
        for (int f = 0; f < rows->finding_count; f++) {
            const finding other = { &rows->findings[f], NULL };
            marked[i] = marked[i] || same(what, &other);
        }
    }
}

static void trims(const hw_whole *whole, hw_notes *notes)
{
    int count = sizes_of(whole)->count;
    for (int at = 0; at < count * whole->trims->count; at++) {
        int trim = at / count;
        const hw_rowplan *rows = &hw_trimming_at(whole, at % count, trim)->rows;
        for (int f = 0; f < rows->finding_count; f++) {
            const finding what = { &rows->findings[f], NULL };
            bool marked[HW_MAX_SIZES] = { false };
            bool told = false;
            mark_trim(whole, trim, &what, marked);
            for (int i = 0; i < at % count; i++) {
                told = told || marked[i];
            }
            if (!told) {
                hw_notes_of(notes, HW_NOTE_REMARK, whole->trims->kinds[trim].trim->name, ", %s: %s",
                    marked_sizes(whole, marked, notes), words_of(what.of, notes));
            }
        }
    }
}

void hw_sidenotes_add(const hw_whole *whole, hw_notes *notes)
{
    pieces(whole, notes);
    trims(whole, notes);
}
