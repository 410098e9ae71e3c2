/* Steps in words: what, where, and how often.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/stepwords.h"

#include "core/buf.h"

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

static void say_what(const hw_shape_step *step, bool more, hw_buf *buf)
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
    hw_buf_format(buf, "%s %d%s %s%s %s", verbs[step->kind], step->sts, more ? " more" : "",
        step->sts == 1 ? "stitch" : "stitches", held ? " unworked" : "", places[step->place]);
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
        say_what(step, false, buf);
    } else {
        hw_buf_text(buf, "part the piece in the middle");
    }
    hw_buf_text(buf, "; from here on work each half by itself");
}

/* Whether stitches are left unworked that come back with an end. */
static bool comes_back(const hw_shape_steps *steps, hw_step_place end)
{
    bool found = false;
    for (int i = 0; i < steps->count; i++) {
        hw_step_place place = steps->list[i].place;
        bool own = place == end || place == HW_AT_BOTH || end == HW_AT_BOTH || end == HW_AT_MIDDLE;
        found = found || (steps->list[i].kind == HW_STEP_HOLD && own);
    }
    return found;
}

static void say_end(const hw_shape_step *step, bool back, hw_buf *buf)
{
    const char *of = parts[step->place];
    if (back) {
        hw_buf_format(buf,
            "work one row over all %d stitches%s, those left unworked too; then bind them off, or "
            "keep them for the seam",
            step->sts, of);
    } else if (step->sts == 1) {
        hw_buf_format(buf, "bind off the last stitch%s, or keep it for the seam", of);
    } else {
        hw_buf_format(
            buf, "bind off the last %d stitches%s, or keep them for the seam", step->sts, of);
    }
}

char *hw_step_words(const hw_shape_steps *steps, int which, hw_arena *arena)
{
    const hw_shape_step *step = &steps->list[which];
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    if (step->kind == HW_STEP_END) {
        say_end(step, comes_back(steps, step->place), &buf);
    } else if (step->kind == HW_STEP_DIVIDE) {
        say_division(step, &buf);
    } else {
        bool more = step->times > 1 || more_held(steps, which);
        say_what(step, step->kind == HW_STEP_HOLD && more, &buf);
        say_when(step, &buf);
    }
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}
