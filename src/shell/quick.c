/* Options into numbers, one call of the core each, and its answer in words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/quick.h"

#include <string.h>

#include "core/card.h"
#include "core/fit.h"
#include "core/gauge.h"
#include "core/hem.h"
#include "core/num.h"
#include "core/spread.h"
#include "core/units.h"
#include "core/words.h"
#include "shell/load.h"

/* A number that an option must hold: its range, and what stands for it where it is not given.
 * Options that a command cannot do without are asked for by opts.c. */
typedef struct {
    hw_opt opt;
    double least, most;
    bool whole;
    double otherwise;
} wanted;

static hw_status not_good(const hw_opts *opts, const wanted *w, hw_err *err)
{
    const char *text = opts->values[w->opt];
    return hw_err_set(err, HW_ERR_USAGE, "`%s %.*s`: give a %snumber from %g to %g",
        hw_opts_name(w->opt), hw_words_cut(text, 40), text, w->whole ? "whole " : "", w->least,
        w->most);
}

static hw_status number_of(const hw_opts *opts, const wanted *w, double *out, hw_err *err)
{
    const char *text = opts->values[w->opt];
    if (text == NULL) {
        *out = w->otherwise;
        return HW_OK;
    }
    double value = 0;
    hw_status status = hw_num_parse(text, strlen(text), &value, NULL);
    if (status == HW_OK && w->whole) {
        int count = 0;
        size_t used = 0;
        status = hw_num_parse_count(text, strlen(text), &count, &used);
        status = used == strlen(text) ? status : HW_ERR_USAGE;
    }
    if (status != HW_OK || !(value >= w->least && value <= w->most)) {
        return not_good(opts, w, err);
    }
    *out = value;
    return HW_OK;
}

static hw_status count_of(const hw_opts *opts, const wanted *w, int *out, hw_err *err)
{
    double value = 0;
    hw_status status = number_of(opts, w, &value, err);
    *out = status == HW_OK ? hw_num_nearest(value) : *out;
    return status;
}

static hw_status length_text(const char *text, const char *what, double *out_cm, hw_err *err)
{
    double cm = 0;
    hw_status status = hw_length_parse(text, strlen(text), HW_UNIT_CM, &cm);
    if (status != HW_OK || !(cm > 0 && cm <= HW_MAX_CM)) {
        return hw_err_set(err, HW_ERR_USAGE,
            "`%s %.*s`: give a length such as 40cm, 400mm or '15 3/4 in'", what,
            hw_words_cut(text, 40), text);
    }
    *out_cm = cm;
    return HW_OK;
}

static hw_status length_of(
    const hw_opts *opts, hw_opt opt, double otherwise_cm, double *out_cm, hw_err *err)
{
    if (opts->values[opt] != NULL) {
        return length_text(opts->values[opt], hw_opts_name(opt), out_cm, err);
    }
    *out_cm = otherwise_cm;
    return HW_OK;
}

/* A count in a length as a gauge, within what a plan takes too. */
static hw_status per_10cm(double count, double per_cm, double *out, hw_err *err)
{
    double gauge = count * 10 / per_cm;
    if (!(gauge >= 1 && gauge <= HW_MAX_PER_10CM)) {
        return hw_err_set(err, HW_ERR_USAGE,
            "that gauge is %.4g in 10 cm, and fabric has 1 to %.0f; look at the count and at "
            "`--per` again",
            gauge, HW_MAX_PER_10CM);
    }
    *out = gauge;
    return HW_OK;
}

/* Options that mean nothing without a repeat. */
static hw_status check_beside(const hw_opts *opts, hw_err *err)
{
    static const hw_opt beside[] = { HW_OPT_GAP, HW_OPT_BED };
    for (size_t i = 0; i < sizeof beside / sizeof beside[0]; i++) {
        if (opts->values[beside[i]] != NULL && opts->values[HW_OPT_REPEAT] == NULL) {
            return hw_err_set(err, HW_ERR_USAGE,
                "`%s` means nothing without `--repeat`; add `--repeat COLUMNS`, or leave it out",
                hw_opts_name(beside[i]));
        }
    }
    return HW_OK;
}

/* Inches where the user wrote inches, else centimetres. */
static hw_show shown_as(const char *text)
{
    bool inches = text != NULL && (strstr(text, "in") != NULL || strchr(text, '"') != NULL);
    return inches ? HW_SHOW_BOTH : HW_SHOW_CM;
}

typedef struct {
    const hw_gauge *gauge;
    double width_cm;
    int edge_sts;
    hw_show show;
} fitting;

static void show_count(hw_buf *buf, const char *label, const hw_fit_count *count, const fitting *in)
{
    double knitted_cm = hw_gauge_width_cm(in->gauge, count->visible_sts);
    hw_buf_format(buf, "%s %d motif%s", label, count->motifs, count->motifs == 1 ? "" : "s");
    hw_buf_format(buf, ", plain %d left and %d right: %d stitches", count->margin[HW_LEFT],
        count->margin[HW_RIGHT], count->visible_sts);
    if (in->edge_sts > 0) {
        hw_buf_format(buf, ", cast on %d", count->visible_sts + 2 * in->edge_sts);
    }
    hw_buf_text(buf, ", ");
    hw_length_show(buf, knitted_cm, in->show);
    double off_cm = hw_num_round(knitted_cm - in->width_cm, 2);
    if (off_cm > 0 || off_cm < 0) {
        hw_buf_text(buf, " (");
        hw_num_show(buf, off_cm > 0 ? off_cm : -off_cm, 2);
        hw_buf_format(buf, " cm %s)", off_cm > 0 ? "wider" : "narrower");
    }
    hw_buf_text(buf, "\n");
}

static hw_status show_fits(
    const hw_opts *opts, const fitting *in, double sts, hw_buf *buf, hw_err *err)
{
    hw_fit_rules rules = { 0 };
    int bed = HW_MAX_STS;
    hw_status status = count_of(opts,
        &(wanted){ .opt = HW_OPT_REPEAT, .least = 1, .most = HW_MAX_CHART_COLUMNS, .whole = true },
        &rules.repeat, err);
    if (status == HW_OK) {
        status = count_of(opts,
            &(wanted){ .opt = HW_OPT_GAP, .least = 0, .most = rules.repeat - 1, .whole = true },
            &rules.gap, err);
    }
    if (status == HW_OK) {
        status = count_of(opts,
            &(wanted){ .opt = HW_OPT_BED,
                .least = 2,
                .most = HW_MAX_STS,
                .whole = true,
                .otherwise = HW_MAX_STS },
            &bed, err);
    }
    rules.most_margin = rules.gap;
    rules.most_sts = bed - 2 * in->edge_sts;
    hw_fit_near near;
    if (status == HW_OK && rules.most_sts < 1) {
        status = hw_err_set(err, HW_ERR_NOFIT,
            "the edge stitches leave no needle free on a bed of %d; look at `--bed` and `--edge`",
            bed);
    }
    if (status == HW_OK) {
        status = hw_fit_nearest(&rules, sts, &near, err);
    }
    if (status != HW_OK) {
        return status;
    }
    bool exact =
        near.has_below && near.has_above && near.below.visible_sts == near.above.visible_sts;
    if (near.has_below) {
        show_count(buf, exact ? "Exactly: " : "Narrower:", &near.below, in);
    }
    if (near.has_above && !exact) {
        show_count(buf, "Wider:   ", &near.above, in);
    }
    if (!near.has_below && !near.has_above) {
        return hw_err_set(err, HW_ERR_NOFIT,
            "one motif of %d stitches does not fit on %d needles; choose a narrower one",
            rules.repeat - rules.gap, bed);
    }
    return HW_OK;
}

hw_status hw_quick_stitches(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    (void)arena;
    double gauge_sts = 0;
    double per_cm = 0;
    hw_gauge gauge = { 0 };
    fitting in = { .gauge = &gauge, .show = shown_as(opts->values[HW_OPT_WIDTH]) };
    hw_status status = length_of(opts, HW_OPT_WIDTH, 0, &in.width_cm, err);
    if (status == HW_OK) {
        status = number_of(
            opts, &(wanted){ .opt = HW_OPT_GAUGE, .least = 1, .most = 2000 }, &gauge_sts, err);
    }
    if (status == HW_OK) {
        status = length_of(opts, HW_OPT_PER, 10, &per_cm, err);
    }
    if (status == HW_OK) {
        status =
            count_of(opts, &(wanted){ .opt = HW_OPT_EDGE, .least = 0, .most = 10, .whole = true },
                &in.edge_sts, err);
    }
    if (status == HW_OK) {
        status = per_10cm(gauge_sts, per_cm, &gauge.sts_per_10cm, err);
    }
    if (status == HW_OK) {
        status = check_beside(opts, err);
    }
    if (status != HW_OK) {
        return status;
    }
    double sts = hw_gauge_sts(&gauge, in.width_cm);
    if (!(sts >= 1 && sts <= HW_MAX_STS)) {
        return hw_err_set(
            err, HW_ERR_RANGE, "that is %.1f stitches; look at `--width` and `--gauge` again", sts);
    }
    hw_length_show(buf, in.width_cm, in.show);
    hw_buf_text(buf, " is ");
    hw_num_show(buf, sts, 2);
    hw_buf_text(buf, " stitches");
    if (opts->values[HW_OPT_REPEAT] == NULL) {
        hw_buf_format(buf, "; the nearest whole number is %d", hw_num_nearest(sts));
        if (in.edge_sts > 0) {
            hw_buf_format(buf, ", cast on %d", hw_num_nearest(sts) + 2 * in.edge_sts);
        }
        hw_buf_text(buf, ".\n");
        return HW_OK;
    }
    hw_buf_text(buf, ".\n");
    return show_fits(opts, &in, sts, buf, err);
}

static const struct {
    const char *word;
    hw_fold fold;
} folds[] = { { "none", HW_FOLD_NONE }, { "loose", HW_FOLD_LOOSE }, { "purl", HW_FOLD_PURL },
    { "picot", HW_FOLD_PICOT } };

static hw_status fold_of(const hw_opts *opts, hw_fold *out, hw_err *err)
{
    const char *text = opts->values[HW_OPT_FOLD];
    *out = HW_FOLD_LOOSE;
    bool known = text == NULL;
    for (size_t i = 0; i < sizeof folds / sizeof folds[0] && text != NULL; i++) {
        if (strcmp(folds[i].word, text) == 0) {
            *out = folds[i].fold;
            known = true;
        }
    }
    return known ? HW_OK
                 : hw_err_set(err, HW_ERR_USAGE,
                       "`--fold %.*s` is not known; write none, loose, purl or picot",
                       hw_words_cut(text, 40), text);
}

static void show_hem(hw_buf *buf, const hw_hem *hem, hw_show show)
{
    hw_buf_format(buf, "Facing %d, %s, plain %d, band %d, plain %d: ", hem->facing_rows,
        hw_fold_name(hem->fold), hem->below_rows, hem->band_rows, hem->above_rows);
    hw_buf_format(buf, "%d rows of face, %d in all.\n", hem->face_rows, hem->total_rows);
    hw_buf_text(buf, "The face is ");
    hw_length_show(buf, hem->face_cm, show);
    hw_buf_text(buf, " deep.\n");
    if (hem->raised) {
        hw_buf_text(buf, "That is deeper than you wanted: band and two plain rows on each side "
                         "are the least.\n");
    }
}

/* In the words that a plan has for it. */
static hw_status show_odd_band(hw_buf *buf, int band_rows, hw_arena *arena)
{
    hw_card_finding odd = { .kind = HW_CARD_ODD_ROWS, .count = band_rows };
    const char *words = hw_card_finding_words(&odd, NULL, arena);
    hw_buf_format(buf, "%s\n", words != NULL ? words : "");
    return words != NULL ? HW_OK : HW_ERR_NOMEM;
}

hw_status hw_quick_hem(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    hw_hem_input in = { .facing = HW_FACING_ROWS };
    double per_cm = 0;
    double rows = 0;
    double band_rows = 0;
    int band = 0;
    hw_status status = length_of(opts, HW_OPT_DEPTH, 0, &in.depth_cm, err);
    if (status == HW_OK) {
        status = length_of(opts, HW_OPT_PER, 10, &per_cm, err);
    }
    wanted gauge_rows = { .opt = HW_OPT_ROWS, .least = 1, .most = 2000 };
    if (status == HW_OK) {
        status = number_of(opts, &gauge_rows, &rows, err);
    }
    gauge_rows = (wanted){ .opt = HW_OPT_BAND_ROWS, .least = 1, .most = 2000, .otherwise = rows };
    if (status == HW_OK) {
        status = number_of(opts, &gauge_rows, &band_rows, err);
    }
    if (status == HW_OK) {
        status = count_of(opts,
            &(wanted){ .opt = HW_OPT_BAND, .least = 1, .most = HW_MAX_CHART_ROWS, .whole = true },
            &band, err);
    }
    if (status == HW_OK) {
        status = fold_of(opts, &in.fold, err);
    }
    hw_gauge gauge[HW_FABRIC_COUNT] = { { 0 } };
    if (status == HW_OK) {
        status = per_10cm(rows, per_cm, &gauge[HW_MAIN].rows_per_10cm, err);
        gauge[HW_FACING] = gauge[HW_MAIN];
    }
    if (status == HW_OK) {
        status = per_10cm(band_rows, per_cm, &gauge[HW_BAND].rows_per_10cm, err);
    }
    hw_hem hem;
    if (status == HW_OK) {
        status = hw_hem_plan(&in, band, gauge, &hem, err);
    }
    if (status == HW_OK) {
        show_hem(buf, &hem, shown_as(opts->values[HW_OPT_DEPTH]));
        status = hem.odd_band ? show_odd_band(buf, band, arena) : HW_OK;
    }
    return status;
}
