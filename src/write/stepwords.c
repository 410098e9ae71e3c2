/* Steps in words: what, where, and how often.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/stepwords.h"

#include <stdlib.h>

#include "core/steptogether.h"

enum {
    LISTED = 4,    /* rows that are listed one by one; more are told by their distance */
    MOST_TURN = 4, /* distances that begin again; more are hard to keep count of (own choice) */
};

static const char *const places[] = {
    [HW_AT_LEFT] = "at the left edge",
    [HW_AT_RIGHT] = "at the right edge",
    [HW_AT_BOTH] = "at each end",
    [HW_AT_NECK_LEFT] = "at the left half's neck edge",
    [HW_AT_NECK_RIGHT] = "at the right half's neck edge",
    [HW_AT_NECK_BOTH] = "at the neck edge of each half",
    [HW_AT_MIDDLE] = "in the middle",
};
_Static_assert(sizeof places / sizeof places[0] == HW_AT_COUNT, "words for each place");

/* What ends at a place. */
static const char *const parts[HW_AT_COUNT] = {
    [HW_AT_LEFT] = " of the left half",
    [HW_AT_RIGHT] = " of the right half",
    [HW_AT_BOTH] = " of each half",
    [HW_AT_NECK_LEFT] = "",
    [HW_AT_NECK_RIGHT] = "",
    [HW_AT_NECK_BOTH] = "",
    [HW_AT_MIDDLE] = "",
};

const char *hw_step_ordinal(int n)
{
    bool teen = n % 100 >= 11 && n % 100 <= 13;
    return teen ? "th" : n % 10 == 1 ? "st" : n % 10 == 2 ? "nd" : n % 10 == 3 ? "rd" : "th";
}

/* ---- Rows ---- */

static int by_number(const void *a, const void *b)
{
    return *(const int *)a - *(const int *)b;
}

void hw_step_sort_rows(int *rows, int count)
{
    qsort(rows, (size_t)count, sizeof *rows, by_number);
}

static int distance(const int *rows, int i)
{
    return rows[i + 1] - rows[i];
}

/* After how many distances between rows they begin again, as at least once they do; 0: they do not.
 * Two rows beside each other, then some that are left out, are better listed. */
static int turn_of(const int *rows, int count)
{
    for (int turn = 1; turn <= MOST_TURN && 2 * turn < count; turn++) {
        bool so = true;
        for (int i = 0; i + 1 < count; i++) {
            so = so && (turn == 1 || distance(rows, i) > 1) &&
                 (i < turn || distance(rows, i) == distance(rows, i - turn));
        }
        if (so) {
            return turn;
        }
    }
    return 0;
}

static void say_every(int every, hw_buf *buf)
{
    hw_buf_text(buf, "every ");
    if (every > 1) {
        hw_buf_format(buf, "%d%s ", every, hw_step_ordinal(every));
    }
    hw_buf_text(buf, "row");
}

static void say_times(int times, hw_buf *buf)
{
    if (times > 2) {
        hw_buf_format(buf, " %d times", times);
    } else {
        hw_buf_text(buf, times == 2 ? " twice" : " once");
    }
}

/* "every 6th row after it", "then alternately every 5th row and every 6th row", "then again and
 * again every 5th row twice and every 6th row once" */
static void say_distances(const int *rows, int turn, hw_buf *buf)
{
    hw_buf_text(buf, turn == 1 ? "" : turn == 2 ? "then alternately " : "then again and again ");
    for (int i = 0, times = 0; i < turn; i += times) {
        times = 1;
        while (i + times < turn && distance(rows, i + times) == distance(rows, i)) {
            times++;
        }
        hw_buf_text(buf, i == 0 ? "" : i + times < turn ? ", " : " and ");
        say_every(distance(rows, i), buf);
        if (turn > 2) {
            say_times(times, buf);
        }
    }
    hw_buf_text(buf, turn == 1 ? " after it" : "");
}

static void say_list(const int *rows, int count, hw_buf *buf)
{
    hw_buf_text(buf, count == 1 ? "row " : "rows ");
    for (int i = 0; i < count; i++) {
        hw_buf_format(buf, "%s%d", i == 0 ? "" : i + 1 == count ? " and " : ", ", rows[i]);
    }
}

static bool beside_each_other(const int *rows, int count)
{
    return rows[count - 1] - rows[0] + 1 == count;
}

void hw_step_say_rows(const int *rows, int count, hw_buf *buf)
{
    int turn = count > LISTED ? turn_of(rows, count) : 0;
    if (turn > 0) {
        hw_buf_format(buf, " in row %d and ", rows[0]);
        say_distances(rows, turn, buf);
        hw_buf_format(buf, ", %d times in all, the last in row %d", count, rows[count - 1]);
        return;
    }
    hw_buf_text(buf, " in ");
    say_list(rows, count, buf);
    if (count > LISTED) {
        hw_buf_format(buf, ", %d times in all", count);
    }
}

void hw_step_say_starts(const int *rows, int count, hw_buf *buf)
{
    hw_buf_text(buf, " at the start of ");
    if (count > LISTED && beside_each_other(rows, count)) {
        hw_buf_format(buf, "each row from %d to %d", rows[0], rows[count - 1]);
    } else {
        say_list(rows, count, buf);
    }
}

/* ---- Steps ---- */

/* Whether stitches are left unworked at an edge already. */
static bool more_held(const hw_shape_steps *steps, int which)
{
    bool found = false;
    for (int i = 0; i < which; i++) {
        bool held = steps->list[i].kind == HW_STEP_HOLD;
        found = found || (held && steps->list[i].place == steps->list[which].place);
    }
    return found;
}

static void say_what(const hw_shape_step *step, bool more, const char *where, hw_buf *buf)
{
    static const char *const verbs[HW_STEP_COUNT] = {
        [HW_STEP_DECREASE] = "decrease",
        [HW_STEP_INCREASE] = "increase",
        [HW_STEP_BIND_OFF] = "bind off",
        [HW_STEP_CAST_ON] = "cast on",
        [HW_STEP_HOLD] = "leave",
        [HW_STEP_DIVIDE] = "bind off",
        [HW_STEP_END] = "bind off",
    };
    bool held = step->kind == HW_STEP_HOLD;
    hw_buf_format(buf, "%s %d%s %s%s%s%s", verbs[step->kind], step->sts, more ? " more" : "",
        step->sts == 1 ? "stitch" : "stitches", held ? " unworked" : "",
        where[0] == '\0' ? "" : " ", where);
}

static void say_when(const hw_shape_step *step, hw_buf *buf)
{
    if (step->times == 2 && step->every == 1) {
        hw_buf_text(buf, " twice: in this row and the next");
    } else if (step->times == 2) {
        hw_buf_format(buf, " twice: in this row and %d rows later", step->every);
    } else if (step->times > 2 && step->every == 1) {
        hw_buf_format(buf, " in this row and each row after it, %d times in all", step->times);
    } else if (step->times > 2) {
        hw_buf_format(buf, " in this row and every %d%s row after it, %d times in all", step->every,
            hw_step_ordinal(step->every), step->times);
    }
}

static void say_division(const hw_shape_step *step, hw_buf *buf)
{
    if (step->sts > 0) {
        say_what(step, false, places[step->place], buf);
    } else {
        hw_buf_text(buf, "part the piece in the middle");
    }
    hw_buf_text(buf, step->slit ? ", where the slit begins" : "");
    hw_buf_text(buf, "; from here on work each half by itself");
}

static void say_back(const hw_shape_step *step, hw_buf *buf)
{
    hw_buf_format(buf,
        step->sts == 1 ? "work to the end of this row, over the %d stitch left unworked %s too"
                       : "work to the end of this row, over the %d stitches left unworked %s too",
        step->sts, places[step->place]);
}

static void say_end(const hw_shape_step *step, hw_buf *buf)
{
    const char *of = parts[step->place];
    if (step->sts == 1) {
        hw_buf_format(buf, "bind off the last stitch%s, or keep it for the seam", of);
    } else {
        hw_buf_format(
            buf, "bind off the last %d stitches%s, or keep them for the seam", step->sts, of);
    }
}

static int last_row(const hw_shape_step *step)
{
    return step->row + (step->times - 1) * step->every;
}

hw_step_count hw_step_left(const hw_shape_steps *steps, int which)
{
    const hw_shape_step *last = &steps->list[which];
    for (int i = which + 1; i < steps->count; i++) {
        const hw_shape_step *step = &steps->list[i];
        last = hw_step_lead(steps, i) == which && last_row(step) > last_row(last) ? step : last;
    }
    return (hw_step_count){ last->left_sts, last_row(last) };
}

int hw_step_lead(const hw_shape_steps *steps, int which)
{
    for (int i = 0; i < which; i++) {
        if (hw_step_joins(&steps->list[i], &steps->list[which])) {
            return hw_step_lead(steps, i);
        }
    }
    return which;
}

/* A step and those that it leads, in their rows. */
typedef struct {
    int *rows;
    int count;
    bool pairs;
} together;

static bool gather(
    const hw_shape_steps *steps, int which, int before, hw_arena *arena, together *out)
{
    int room = 0;
    for (int i = which; i < steps->count; i++) {
        room += steps->list[i].times;
    }
    *out = (together){ .rows = hw_arena_get(arena, (size_t)room, sizeof *out->rows) };
    for (int i = which; i < steps->count && out->rows != NULL; i++) {
        const hw_shape_step *step = &steps->list[i];
        bool told = hw_step_lead(steps, i) == which;
        out->pairs = out->pairs || (told && hw_step_pairs(&steps->list[which], step));
        for (int k = 0; told && k < step->times; k++) {
            out->rows[out->count++] = before + step->row + k * step->every;
        }
    }
    return out->rows != NULL;
}

/* Several steps in one sentence. */
static void say_together(const hw_shape_step *step, const together *all, hw_buf *buf)
{
    say_what(step, false, all->pairs ? "" : places[step->place], buf);
    if (all->pairs && beside_each_other(all->rows, all->count)) {
        hw_buf_format(buf, " at the start of the next %d rows", all->count);
    } else if (all->pairs) {
        hw_step_say_starts(all->rows, all->count, buf);
    } else {
        hw_step_say_rows(all->rows, all->count, buf);
    }
}

char *hw_step_words(const hw_shape_steps *steps, int which, int before, hw_arena *arena)
{
    const hw_shape_step *step = &steps->list[which];
    hw_buf buf;
    together all;
    if (!gather(steps, which, before, arena, &all)) {
        return NULL;
    }
    hw_step_sort_rows(all.rows, all.count);
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    if (step->kind == HW_STEP_END) {
        say_end(step, &buf);
    } else if (step->kind == HW_STEP_BACK) {
        say_back(step, &buf);
    } else if (step->kind == HW_STEP_DIVIDE) {
        say_division(step, &buf);
    } else if (all.count > step->times) {
        say_together(step, &all, &buf);
    } else {
        bool more = step->times > 1 || more_held(steps, which);
        say_what(step, step->kind == HW_STEP_HOLD && more, places[step->place], &buf);
        say_when(step, &buf);
    }
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}
