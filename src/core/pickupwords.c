/* Ratios, and the parts of edges, as a knitter says them.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pickupwords.h"

#include "core/buf.h"

static const char *unit(const hw_pickup_share *share, int count)
{
    static const char *const words[2][2] = { { "row", "rows" }, { "stitch", "stitches" } };
    return words[share->of_sts ? 1 : 0][count == 1 ? 0 : 1];
}

static const char *sts_word(int count)
{
    return count == 1 ? "st" : "sts";
}

static void say_times(hw_buf *buf, int times)
{
    if (times == 1) {
        hw_buf_text(buf, " once");
    } else {
        hw_buf_format(buf, " %d times", times);
    }
}

/* "every row" and "every 4 rows" */
static void say_every(hw_buf *buf, const hw_pickup_share *share, const hw_pickup_group *group)
{
    hw_buf_format(buf, "%d %s in every ", group->sts, sts_word(group->sts));
    if (group->rows > 1) {
        hw_buf_format(buf, "%d ", group->rows);
    }
    hw_buf_text(buf, unit(share, group->rows));
}

static const char *keep(hw_buf *buf, hw_arena *arena)
{
    const char *text = hw_buf_keep(buf, arena);
    hw_buf_release(buf);
    return text;
}

/* What is to be done beside the simple ratio, so that the count comes out. */
static void say_rest(hw_buf *buf, const hw_pickup_share *share)
{
    const hw_pickup_ratio *ratio = &share->ratio;
    int extra = ratio->extra_sts;
    int left = ratio->rows_left;
    if (left > 0 && extra >= 0 && extra <= left) {
        hw_buf_text(buf, ", and ");
        if (extra > 0) {
            hw_buf_format(buf, "%d more", extra);
        } else {
            hw_buf_text(buf, "none");
        }
        hw_buf_format(buf, " in the %d %s left", left, unit(share, left));
    } else if (extra != 0) {
        bool one = extra == 1 || extra == -1;
        hw_buf_format(buf, ", and %d %s%s", extra < 0 ? -extra : extra,
            extra < 0 ? "fewer" : "more", one ? " in the middle" : ", spread evenly");
    }
}

/* "91 sts over 92 stitches: miss 1 in the middle", where one for one nearly comes out. */
static void say_nearly_all(hw_buf *buf, const hw_pickup_share *share)
{
    const hw_pickup_ratio *ratio = &share->ratio;
    int off = ratio->extra_sts < 0 ? -ratio->extra_sts : ratio->extra_sts;
    hw_buf_format(buf, "%d %s over %d %s: %s %d%s%s", ratio->sts, sts_word(ratio->sts), ratio->rows,
        unit(share, ratio->rows), ratio->extra_sts < 0 ? "miss" : "pick up", off,
        ratio->extra_sts < 0 ? "" : " more", off == 1 ? " in the middle" : ", spread evenly");
}

const char *hw_pickup_words(const hw_pickup_share *share, hw_arena *arena)
{
    const hw_pickup_ratio *ratio = &share->ratio;
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    if (ratio->simple.sts == 1 && ratio->simple.rows == 1 && ratio->extra_sts != 0) {
        say_nearly_all(&buf, share);
        return keep(&buf, arena);
    }
    say_every(&buf, share, &ratio->simple);
    if (ratio->rows_left > 0 || ratio->extra_sts != 0) {
        say_times(&buf, ratio->simple.times);
        say_rest(&buf, share);
    }
    return keep(&buf, arena);
}

const char *hw_pickup_even_words(const hw_pickup_share *share, hw_arena *arena)
{
    const hw_pickup_group *even = share->ratio.even;
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    if (even[1].times == 0) {
        say_every(&buf, share, &even[0]);
    } else {
        for (int i = 0; i < 2; i++) {
            hw_buf_format(&buf, "%s%d %s in %d %s", i == 0 ? "" : " and ", even[i].sts,
                sts_word(even[i].sts), even[i].rows, unit(share, even[i].rows));
            say_times(&buf, even[i].times);
        }
        hw_buf_text(&buf, ", mixed evenly");
    }
    return keep(&buf, arena);
}

const char *hw_pickup_best_words(const hw_pickup_share *share, hw_arena *arena)
{
    const hw_pickup_ratio *ratio = &share->ratio;
    bool small = ratio->simple.rows <= HW_PICKUP_SMALL_GROUP && ratio->simple.times > 0;
    return small ? hw_pickup_words(share, arena) : hw_pickup_even_words(share, arena);
}

/* ---- Parts of an edge ---- */

/* What a part is called, before and behind its stitches. */
static const struct {
    const char *before, *behind;
} level_words[HW_PICKUP_WAY_COUNT] = {
    [HW_PICKUP_BOUND_OFF] = { "the ", " bound off" },
    [HW_PICKUP_CAST_ON] = { "the ", " cast on" },
    [HW_PICKUP_MIDDLE] = { "half of the ", " bound off in the middle" },
};

/* "6 along the 6 stitches bound off"; "23 along the curve (evenly over 30 rows)" */
static void say_placed(hw_buf *buf, const hw_pickup_share *part)
{
    hw_buf_format(buf, "%d along ", part->sts);
    if (level_words[part->way].before != NULL) {
        hw_buf_format(buf, "%s%d %s%s", level_words[part->way].before, part->count,
            unit(part, part->count), level_words[part->way].behind);
        return;
    }
    static const char *const names[HW_PICKUP_WAY_COUNT] = { [HW_PICKUP_CURVE] = "the curve",
        [HW_PICKUP_SLOPE] = "the slope",
        [HW_PICKUP_STRAIGHT] = "the straight" };
    hw_buf_text(buf, names[part->way]);
    if (part->way == HW_PICKUP_CURVE && part->count > 0) {
        hw_buf_format(buf, " (evenly over %d %s)", part->count, unit(part, part->count));
    }
}

/* Whether a part's ratio is the same all along, and known. */
static bool is_steady(const hw_pickup_share *part)
{
    return part->has_ratio && (part->way == HW_PICKUP_PLAIN || part->way == HW_PICKUP_STRAIGHT ||
                                  part->way == HW_PICKUP_SLOPE);
}

/* Whether it is told by its ratio alone. */
static bool is_bare(const hw_pickup_share *part, bool alone)
{
    return part->way == HW_PICKUP_PLAIN || (alone && is_steady(part));
}

/* A part, behind those before it; false when memory is refused. */
static bool say_part(hw_buf *buf, const hw_pickup_share *part, bool alone, hw_arena *arena)
{
    bool bare = is_bare(part, alone);
    if (part->sts == 0 || (bare && !part->has_ratio)) {
        return true;
    }
    const char *ratio = is_steady(part) ? hw_pickup_best_words(part, arena) : "";
    hw_buf_text(buf, buf->len > 0 ? ", " : "");
    if (!bare) {
        say_placed(buf, part);
    }
    if (ratio != NULL && ratio[0] != '\0') {
        hw_buf_format(buf, bare ? "%s" : " (%s)", ratio);
    }
    return ratio != NULL;
}

const char *hw_pickup_edge_words(const hw_pickup *plan, int edge, hw_arena *arena)
{
    int count = plan->part_count[edge];
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    bool said = true;
    for (int k = 0; k < count && said; k++) {
        said = say_part(&buf, &plan->parts[edge][k], count == 1, arena);
    }
    const char *text = keep(&buf, arena);
    return said ? text : NULL;
}
