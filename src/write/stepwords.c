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

static const char *const kinds[] = {
    [HW_STEP_DECREASE] = "decrease",
    [HW_STEP_INCREASE] = "increase",
    [HW_STEP_BIND_OFF] = "bind off",
    [HW_STEP_CAST_ON] = "cast on",
    [HW_STEP_HOLD] = "leave unworked",
    [HW_STEP_DIVIDE] = "bind off",
    [HW_STEP_END] = "bind off, or keep for the seam,",
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_STEP_COUNT, "words for each kind");

const char *hw_step_ordinal(int n)
{
    bool teen = n % 100 >= 11 && n % 100 <= 13;
    return teen ? "th" : n % 10 == 1 ? "st" : n % 10 == 2 ? "nd" : n % 10 == 3 ? "rd" : "th";
}

char *hw_step_words(const hw_shape_step *step, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "%s %d %s %s", kinds[step->kind], step->sts,
        step->sts == 1 ? "stitch" : "stitches", places[step->place]);
    if (step->times > 1 && step->every == 1) {
        hw_buf_format(&buf, " in this row and each row after it, %d times in all", step->times);
    } else if (step->times > 1) {
        hw_buf_format(&buf, " in this row and every %d%s row after it, %d times in all",
            step->every, hw_step_ordinal(step->every), step->times);
    }
    if (step->kind == HW_STEP_DIVIDE) {
        hw_buf_text(&buf, "; from here on work each half by itself");
    }
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}
