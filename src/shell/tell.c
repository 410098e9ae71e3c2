/* The calculators that take plain words: spread, gauge, list, keys.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/tell.h"

#include <string.h>

#include "core/gauge.h"
#include "core/num.h"
#include "core/spread.h"
#include "core/status.h"
#include "core/units.h"
#include "core/words.h"
#include "read/keys.h"
#include "shell/load.h"

static hw_status count_word(const char *text, const char *what, int most, int *out, hw_err *err)
{
    size_t used = 0;
    int count = 0;
    hw_status status = hw_num_parse_count(text, strlen(text), &count, &used);
    if (status != HW_OK || used != strlen(text) || count < 1 || count > most) {
        return hw_err_set(err, HW_ERR_USAGE, "`%.*s`: give the %s as a whole number from 1 to %d",
            hw_words_cut(text, 40), text, what, most);
    }
    *out = count;
    return HW_OK;
}

static const char *ordinal(int n)
{
    static const char *const endings[] = { "th", "st", "nd", "rd" };
    int tens = n / 10 % 10;
    int ones = n % 10;
    return tens == 1 || ones > 3 ? endings[0] : endings[ones];
}

static void show_steps(hw_buf *buf, const hw_spread *s)
{
    if (s->more_times > 0 && s->times > 0) {
        hw_buf_format(buf, "Every %d%s %d time%s, every %d%s %d time%s.\n", s->every,
            ordinal(s->every), s->times, s->times == 1 ? "" : "s", s->every + 1,
            ordinal(s->every + 1), s->more_times, s->more_times == 1 ? "" : "s");
        return;
    }
    int every = s->times > 0 ? s->every : s->every + 1;
    hw_buf_format(
        buf, "Every %d%s, %d time%s.\n", every, ordinal(every), s->count, s->count == 1 ? "" : "s");
}

/* `k7, make 1, (k14, make 1) 3 times, k7`: runs of equal gaps between the changes. */
static void show_row(hw_buf *buf, const hw_spread *plain, const int *at, const char *change)
{
    int stands = 0;
    int again = 0;
    for (int i = 0; i < plain->count; i++) {
        int gap = at[i] - stands;
        stands = at[i];
        again++;
        if (i + 1 < plain->count && at[i + 1] - at[i] == gap) {
            continue;
        }
        hw_buf_text(buf, again > 1 ? "(" : "");
        if (gap > 0) {
            hw_buf_format(buf, "k%d, ", gap);
        }
        hw_buf_text(buf, change);
        if (again > 1) {
            hw_buf_format(buf, ") %d times", again);
        }
        hw_buf_text(buf, i + 1 < plain->count ? ", " : "");
        again = 0;
    }
    if (plain->over > stands) {
        hw_buf_format(buf, ", k%d", plain->over - stands);
    }
    hw_buf_text(buf, ".\n");
}

/* A row of increases, and one of decreases where there are two stitches for each. */
static hw_status show_rows(hw_buf *buf, const hw_spread *spread, hw_arena *arena)
{
    hw_spread plain = *spread;
    int *at = NULL;
    hw_status status = hw_spread_positions(&plain, arena, &at);
    if (status != HW_OK) {
        return status;
    }
    hw_buf_format(buf, "Increase to %d stitches: ", spread->over + spread->count);
    show_row(buf, &plain, at, "make 1");
    plain.over = spread->over - 2 * spread->count;
    if (plain.over < 0) {
        return HW_OK;
    }
    status = hw_spread_positions(&plain, arena, &at);
    if (status == HW_OK) {
        hw_buf_format(buf, "Decrease to %d stitches: ", spread->over - spread->count);
        show_row(buf, &plain, at, "k2tog");
    }
    return status;
}

hw_status hw_tell_spread(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    int count = 0;
    int over = 0;
    hw_spread spread;
    hw_status status = count_word(opts->args[0], "changes", HW_MAX_STS, &count, err);
    if (status == HW_OK) {
        status = count_word(opts->args[1], "stitches or rows", HW_MAX_STS, &over, err);
    }
    if (status == HW_OK) {
        status = hw_spread_steps(count, over, &spread, err);
    }
    if (status == HW_OK) {
        show_steps(buf, &spread);
        status = show_rows(buf, &spread, arena);
    }
    return status == HW_OK ? HW_OK : hw_err_set(err, status, "%s", hw_status_sentence(status));
}

/* How places became a gauge, and how sure it is. */
static void show_method(hw_buf *buf, const hw_gauge_side *side)
{
    if (side->kind == HW_LINE_FREE) {
        hw_buf_format(buf, ": by a line through %d places, in which the edges take ", side->places);
        hw_num_show(buf, side->edge_cm, 2);
        hw_buf_text(buf, " cm of each length");
    } else if (side->places > 1) {
        hw_buf_format(buf, ": the mean of %d places", side->places);
    }
    if (side->has_interval) {
        hw_buf_text(buf, "; 19 times in 20 between ");
        hw_num_show(buf, side->low, 2);
        hw_buf_text(buf, " and ");
        hw_num_show(buf, side->high, 2);
    }
    hw_buf_text(buf, ".\n");
}

hw_status hw_tell_gauge(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    hw_swatch swatches[HW_OPTS_MAX_ARGS / 2];
    if (opts->arg_count % 2 != 0) {
        return hw_err_set(err, HW_ERR_USAGE, "%s",
            "give a count and a length, and again a count and a length: hemwright gauge 50 16cm");
    }
    for (int i = 0; i < opts->arg_count / 2; i++) {
        int count = 0;
        double cm = 0;
        const char *text = opts->args[2 * i + 1];
        hw_status status =
            count_word(opts->args[2 * i], "stitches or rows", HW_MAX_STS, &count, err);
        if (status != HW_OK) {
            return status;
        }
        status = hw_length_parse(text, strlen(text), HW_UNIT_CM, &cm);
        if (status != HW_OK || !(cm > 0 && cm <= HW_MAX_CM)) {
            return hw_err_set(err, HW_ERR_USAGE,
                "`%.*s`: give a length such as 16cm, 160mm or '6 1/4 in'", hw_words_cut(text, 40),
                text);
        }
        swatches[i] = (hw_swatch){ .sts = count, .width_cm = cm, .rows = count, .length_cm = cm };
    }
    hw_gauge_input in = { .swatches = swatches, .count = opts->arg_count / 2 };
    hw_gauge gauge;
    hw_status status = hw_gauge_measure(&in, arena, &gauge, err);
    if (status != HW_OK) {
        return status;
    }
    hw_num_show(buf, gauge.sts_per_10cm, 2);
    hw_buf_text(buf, " in 10 cm, ");
    hw_num_show(buf, gauge.sts_per_10cm * 0.4 * HW_CM_PER_INCH, 2);
    hw_buf_text(buf, " in 4 in");
    show_method(buf, &gauge.sides[HW_ACROSS]);
    return HW_OK;
}

static hw_status list_kind(hw_data kind, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    hw_load_names names;
    hw_status status = hw_load_list(kind, arena, &names, err);
    if (status != HW_OK) {
        return status;
    }
    hw_buf_format(buf, "%s:\n", hw_load_kind(kind));
    for (int i = 0; i < names.count; i++) {
        hw_buf_format(buf, "  %s\n", names.names[i]);
    }
    return HW_OK;
}

hw_status hw_tell_list(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    const char *folders[HW_DATA_COUNT];
    bool known = opts->arg_count == 0;
    for (int k = 0; k < HW_DATA_COUNT; k++) {
        folders[k] = hw_load_kind((hw_data)k);
        known = known || strcmp(folders[k], opts->args[0]) == 0;
    }
    if (!known) {
        const char *typed = opts->args[0];
        const char *near = hw_words_nearest(typed, folders, HW_DATA_COUNT);
        int bytes = hw_words_cut(typed, 40);
        if (near != NULL) {
            return hw_err_set(err, HW_ERR_USAGE, "`%.*s` cannot be listed; did you mean `%s`?",
                bytes, typed, near);
        }
        return hw_err_set(err, HW_ERR_USAGE,
            "`%.*s` cannot be listed; write machines, garments, sizes or motifs", bytes, typed);
    }
    hw_status status = HW_OK;
    for (int k = 0; k < HW_DATA_COUNT && status == HW_OK; k++) {
        if (opts->arg_count == 0 || strcmp(folders[k], opts->args[0]) == 0) {
            status = list_kind((hw_data)k, arena, buf, err);
        }
    }
    return status;
}

hw_status hw_tell_keys(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    (void)opts;
    (void)arena;
    (void)err;
    int count = 0;
    const hw_key *keys = hw_keys_all(&count);
    hw_part part = HW_PART_NONE;
    for (int i = 0; i < count; i++) {
        if (keys[i].in != part) {
            part = keys[i].in;
            hw_buf_format(buf, "%sIn %s:\n", i == 0 ? "" : "\n", hw_part_name(part));
        }
        hw_buf_format(buf, "  %s: ", strcmp(keys[i].name, "*") == 0 ? "NAME" : keys[i].name);
        hw_key_show_kind(buf, &keys[i]);
        hw_buf_format(buf, "%s\n      %s\n", keys[i].required ? " (needed)" : "", keys[i].help);
    }
    return HW_OK;
}
