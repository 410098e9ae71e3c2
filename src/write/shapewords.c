/* Where and how often, as it is seen at a bed or in the hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/shapewords.h"

#include "core/steptogether.h"
#include "write/rowwords.h"
#include "write/stepwords.h"

/* The shaping of a run as it is said. */
typedef struct {
    const hw_rowplan *plan;
    const hw_row_run *run;
    const hw_row *row; /* the run's first */
    hw_buf *buf;
} saying;

static bool in_hand(const saying *s)
{
    return s->plan->work == HW_WORK_HAND;
}

/* The piece's edge, or on a bed the side at which it hangs: the purl side faces the knitter. */
static void say_edge(const saying *s, hw_side edge)
{
    if (in_hand(s)) {
        bool round = hw_rowwords_in_round(s->plan, s->row);
        hw_buf_format(s->buf, round ? " at the %s end beside the marker" : " at the %s edge",
            hw_side_name(edge));
    } else {
        hw_buf_format(
            s->buf, " at the %s of the bed", hw_side_name(edge == HW_LEFT ? HW_RIGHT : HW_LEFT));
    }
}

static void say_ends(const saying *s)
{
    bool others = hw_rowwords_has_others(s->plan);
    bool round = hw_rowwords_in_round(s->plan, s->row);
    hw_buf_text(s->buf, !round   ? " at each end"
                        : others ? " at each end beside the markers"
                                 : " on both sides of the marker");
}

static void say_place(const saying *s, const hw_shape_step *step)
{
    bool whole = s->row->part == HW_PART_WHOLE;
    hw_side own = s->row->part == HW_PART_LEFT ? HW_LEFT : HW_RIGHT;
    switch (step->place) {
    case HW_AT_LEFT:
    case HW_AT_RIGHT:
        say_edge(s, step->place == HW_AT_LEFT ? HW_LEFT : HW_RIGHT);
        break;
    case HW_AT_BOTH:
        if (whole) {
            say_ends(s);
        } else {
            say_edge(s, own);
        }
        break;
    case HW_AT_NECK_LEFT:
    case HW_AT_NECK_RIGHT:
    case HW_AT_NECK_BOTH:
        hw_buf_text(s->buf, " at the neck edge");
        break;
    case HW_AT_MIDDLE:
        hw_buf_text(s->buf, step->kind == HW_STEP_END ? "" : " in the middle");
        break;
    case HW_AT_COUNT:
        break;
    }
}

/* Of the last stitches no number is told: those on the needles hold edge stitches as well. */
static void say_end(const saying *s, const hw_run_shaping *shaping)
{
    hw_buf_format(s->buf, "After row %d bind off the stitches that are left", shaping->number);
    if (s->row->part == HW_PART_WHOLE && shaping->step->place != HW_AT_BOTH) {
        say_place(s, shaping->step);
    }
    hw_buf_text(s->buf, ", or keep them for a seam");
}

/* Which shaping of the run one is told with: itself, or an earlier one that it joins. */
static int lead_of(const hw_row_run *run, int which)
{
    for (int i = 0; i < which; i++) {
        if (hw_step_joins(run->shaping[i].step, run->shaping[which].step)) {
            return lead_of(run, i);
        }
    }
    return which;
}

/* A change and those that are told with it, in their rows. */
typedef struct {
    int *rows;
    int count;
    bool pairs;
} together;

static bool gather(const hw_row_run *run, int which, hw_arena *arena, together *out)
{
    int room = 0;
    for (int i = which; i < run->shaping_count; i++) {
        room += run->shaping[i].times;
    }
    *out = (together){ .rows = hw_arena_get(arena, (size_t)room, sizeof *out->rows) };
    for (int i = which; i < run->shaping_count && out->rows != NULL; i++) {
        const hw_run_shaping *one = &run->shaping[i];
        bool told = lead_of(run, i) == which;
        out->pairs = out->pairs || (told && hw_step_pairs(run->shaping[which].step, one->step));
        for (int k = 0; told && k < one->times; k++) {
            out->rows[out->count++] = one->number + k * one->step->every;
        }
    }
    return out->rows != NULL;
}

/* Whether a hold is the first at its edge. */
static bool first_hold(const hw_rowplan *plan, const hw_shape_step *step)
{
    for (int i = 0; i < plan->hand_count; i++) {
        const hw_shape_step *first = plan->hands[i].step;
        if (first != NULL && first->kind == HW_STEP_HOLD && first->place == step->place) {
            return first == step;
        }
    }
    return false;
}

/* How a row is turned before the stitches that are held (common practice, no source): told once. */
static void say_turning(const saying *s, const hw_shape_step *step)
{
    if (in_hand(s)) {
        hw_buf_text(s->buf, "; turn there with a wrap, or in your own way");
    } else if (first_hold(s->plan, step)) {
        hw_buf_text(s->buf,
            ": set the carriage to leave needles that are pushed out, and before such a row push "
            "these needles all the way out, on the side away from the carriage; after the row lay "
            "the yarn under the innermost of them (a wrap), so that no hole is left");
    }
}

/* What was held is worked at the end of a row that comes from inside. */
static void say_back(const saying *s, const hw_shape_step *step)
{
    const char *things = step->sts == 1 ? "stitch" : "stitches";
    if (in_hand(s)) {
        hw_buf_format(
            s->buf, "At the end of this row work the %d %s left unworked", step->sts, things);
        say_place(s, step);
        hw_buf_text(s->buf, " too");
        return;
    }
    hw_buf_format(s->buf, "Push the needles of the %d %s on hold", step->sts, things);
    say_place(s, step);
    hw_buf_text(s->buf, " back, so that they knit in this row");
}

static void say_change(const saying *s, const hw_shape_step *step, const together *all)
{
    static const char *const verbs[HW_STEP_COUNT] = {
        [HW_STEP_DECREASE] = "Decrease",
        [HW_STEP_INCREASE] = "Increase",
        [HW_STEP_BIND_OFF] = "Bind off",
        [HW_STEP_CAST_ON] = "Cast on",
        [HW_STEP_HOLD] = "Leave unworked",
        [HW_STEP_DIVIDE] = "Bind off",
    };
    bool hold = step->kind == HW_STEP_HOLD;
    hw_buf_format(s->buf, "%s %d %s", hold && !in_hand(s) ? "Put on hold" : verbs[step->kind],
        step->sts, step->sts == 1 ? "stitch" : "stitches");
    if (all->pairs) {
        hw_step_say_starts(all->rows, all->count, s->buf);
        hw_buf_text(s->buf, in_hand(s) ? "" : ", on the side of the carriage");
        return;
    }
    say_place(s, step);
    if (s->run->count > 1) {
        hw_step_say_rows(all->rows, all->count, s->buf);
    }
    hw_buf_text(s->buf, step->kind == HW_STEP_DIVIDE ? " with a separate strand" : "");
    if (hold) {
        say_turning(s, step);
    }
}

/* By hand the middle waits with the half that comes later, whose first row binds it off; and on
 * the bed there may be none. */
static bool told_elsewhere(const saying *s, const hw_shape_step *step)
{
    return step->kind == HW_STEP_DIVIDE && (in_hand(s) || step->sts == 0);
}

/* What is done at the end of a row, or after it. */
static bool comes_last(const hw_shape_step *step)
{
    return step->kind == HW_STEP_HOLD || step->kind == HW_STEP_BACK || step->kind == HW_STEP_END;
}

static bool say_one(const saying *s, int which, hw_arena *arena)
{
    const hw_run_shaping *shaping = &s->run->shaping[which];
    together all;
    if (!gather(s->run, which, arena, &all)) {
        return false;
    }
    hw_step_sort_rows(all.rows, all.count);
    hw_buf_text(s->buf, s->buf->len > 0 ? " " : "");
    if (shaping->step->kind == HW_STEP_END) {
        say_end(s, shaping);
    } else if (shaping->step->kind == HW_STEP_BACK) {
        say_back(s, shaping->step);
    } else {
        say_change(s, shaping->step, &all);
    }
    hw_buf_text(s->buf, ".");
    return true;
}

bool hw_shapewords_run(const hw_rowplan *plan, const hw_row_run *run, hw_arena *arena, hw_buf *buf)
{
    saying s = { plan, run, &plan->rows[run->first], buf };
    bool good = true;
    for (int i = 0; i < 2 * run->shaping_count && good; i++) {
        int which = i % run->shaping_count;
        const hw_shape_step *step = run->shaping[which].step;
        bool told = comes_last(step) == (i >= run->shaping_count);
        if (told && lead_of(run, which) == which && !told_elsewhere(&s, step)) {
            good = say_one(&s, which, arena);
        }
    }
    return good;
}
