/* Counts that hold whole motifs: for each number of motifs a run of counts, by its margins.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/fit.h"

#include "core/num.h"

int hw_fit_visible(const hw_fit_rules *rules, int motifs, int left, int right)
{
    return motifs * rules->repeat - rules->gap + left + right;
}

/* The least and the most stitches around some motifs. */
static int least_sts(const hw_fit_rules *rules, int motifs)
{
    return hw_fit_visible(rules, motifs, rules->least_margin, rules->least_margin);
}

static int most_sts(const hw_fit_rules *rules, int motifs)
{
    return hw_fit_visible(rules, motifs, rules->most_margin, rules->most_margin);
}

/* The largest number of motifs that needs no more than so many stitches, 0 where one does. */
static int most_motifs(const hw_fit_rules *rules, int sts)
{
    int spare = sts - least_sts(rules, 0);
    return spare < 0 ? 0 : spare / rules->repeat;
}

/* The count of so many stitches; the caller knows that it can be made. */
static hw_fit_count count_of(const hw_fit_rules *rules, int sts)
{
    int motifs = most_motifs(rules, sts);
    int margins = sts - hw_fit_visible(rules, motifs, 0, 0);
    return (hw_fit_count){
        .motifs = motifs,
        .visible_sts = sts,
        .margin = { [HW_LEFT] = margins / 2, [HW_RIGHT] = margins - margins / 2 },
    };
}

static void look_below(const hw_fit_rules *rules, int sts, hw_fit_near *near)
{
    int limit = sts < rules->most_sts ? sts : rules->most_sts;
    int motifs = most_motifs(rules, limit);
    if (motifs > 0) {
        int most = most_sts(rules, motifs);
        near->has_below = true;
        near->below = count_of(rules, most < limit ? most : limit);
    }
}

static void look_above(const hw_fit_rules *rules, int sts, hw_fit_near *near)
{
    int motifs = most_motifs(rules, sts);
    if (motifs == 0 || most_sts(rules, motifs) < sts) {
        motifs++;
    }
    int least = least_sts(rules, motifs);
    int found = least > sts ? least : sts;
    if (found <= rules->most_sts) {
        near->has_above = true;
        near->above = count_of(rules, found);
    }
}

static bool sound(const hw_fit_rules *rules)
{
    return rules->repeat >= 1 && rules->repeat <= HW_MAX_CHART_COLUMNS && rules->gap >= 0 &&
           rules->gap < rules->repeat && rules->least_margin >= 0 &&
           rules->least_margin <= rules->most_margin && rules->most_margin <= HW_MAX_STS &&
           rules->most_sts >= 0 && rules->most_sts <= HW_MAX_STS;
}

hw_status hw_fit_nearest(
    const hw_fit_rules *rules, double wanted_sts, hw_fit_near *out, hw_err *err)
{
    if (!sound(rules)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a repeat of %d with a gap of %d and margins from %d to %d stitches cannot be knitted: "
            "check the motif and its gap",
            rules->repeat, rules->gap, rules->least_margin, rules->most_margin);
    }
    if (!(wanted_sts > 0 && wanted_sts <= HW_MAX_STS)) {
        return hw_err_set(err, HW_ERR_RANGE,
            "a width of %.1f stitches is outside 0 to %d: check the width and the gauge",
            wanted_sts, HW_MAX_STS);
    }
    hw_fit_near near = { 0 };
    look_below(rules, hw_num_down(wanted_sts), &near);
    look_above(rules, hw_num_up(wanted_sts), &near);
    *out = near;
    return HW_OK;
}
