/* A motif changed step by step, in one order, whatever the order of the options.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/motifs.h"

#include <string.h>

#include "core/edit.h"
#include "core/num.h"
#include "core/status.h"
#include "core/words.h"
#include "shell/docs.h"
#include "shell/load.h"
#include "write/motifyaml.h"
#include "write/pbm.h"

enum { USUAL_COLUMNS = 24, DRAWN_REPEATS = 3, DRAWN_COLUMNS = 72 };

typedef struct {
    const hw_opts *opts;
    hw_arena *arena;
    hw_motif_input motif;
    int caught; /* stitches; -1: none were asked for */
    hw_err *err;
} making;

/* What a number stands for, and its range. */
typedef struct {
    hw_opt opt;
    const char *of; /* "columns" */
    int least, most;
} wanted;

/* A whole number that an option may hold; what out has stays where it holds none. */
static hw_status number(const making *m, const wanted *w, int *out)
{
    const char *text = m->opts->values[w->opt];
    if (text == NULL) {
        return HW_OK;
    }
    size_t used = 0;
    int count = 0;
    bool left = w->least < 0 && text[0] == '-';
    const char *digits = text + (left ? 1 : 0);
    hw_status status = hw_num_parse_count(digits, strlen(digits), &count, &used);
    bool good = status == HW_OK && used == strlen(digits);
    count = left ? -count : count;
    if (!good || count < w->least || count > w->most) {
        return hw_err_set(m->err, HW_ERR_USAGE, "`%s %.*s`: give a whole number of %s, %d to %d",
            hw_opts_name(w->opt), hw_words_cut(text, 40), text, w->of, w->least, w->most);
    }
    *out = count;
    return HW_OK;
}

static bool given(const making *m, hw_opt opt)
{
    return m->opts->values[opt] != NULL;
}

/* ---- The changes ---- */

static hw_status draw_gap(hw_motif_input *motif, hw_arena *arena, hw_err *err)
{
    int gap = motif->gap;
    motif->gap = 0;
    return hw_edit_space(&motif->chart, gap, arena, &motif->chart, err);
}

static hw_status set_gap(making *m)
{
    wanted w = { HW_OPT_GAP, "columns", 0, HW_MAX_CHART_COLUMNS - m->motif.chart.width };
    return number(m, &w, &m->motif.gap);
}

static hw_status mirror(making *m)
{
    return hw_edit_mirror(&m->motif.chart, m->arena, &m->motif.chart);
}

static hw_status upside_down(making *m)
{
    return hw_edit_upside_down(&m->motif.chart, m->arena, &m->motif.chart);
}

static hw_status shift(making *m)
{
    int columns = 0;
    wanted w = { HW_OPT_SHIFT, "columns", -HW_MAX_CHART_COLUMNS, HW_MAX_CHART_COLUMNS };
    hw_status status = number(m, &w, &columns);
    if (status == HW_OK) {
        status = draw_gap(&m->motif, m->arena, m->err);
    }
    return status == HW_OK ? hw_edit_shift(&m->motif.chart, columns, 0, m->arena, &m->motif.chart)
                           : status;
}

static hw_status raise_rows(making *m)
{
    int rows = 0;
    wanted w = { HW_OPT_RAISE, "rows", -HW_MAX_CHART_ROWS, HW_MAX_CHART_ROWS };
    hw_status status = number(m, &w, &rows);
    return status == HW_OK ? hw_edit_shift(&m->motif.chart, 0, rows, m->arena, &m->motif.chart)
                           : status;
}

/* The other motif that an option names; both gaps are drawn in. */
static hw_status load_other(making *m, hw_opt opt, hw_chart *out)
{
    hw_motif_input other;
    hw_status status = hw_load_motif(m->opts->values[opt], m->arena, &other, m->err);
    if (status == HW_OK) {
        status = draw_gap(&other, m->arena, m->err);
    }
    if (status == HW_OK) {
        status = draw_gap(&m->motif, m->arena, m->err);
    }
    if (status == HW_OK) {
        *out = other.chart;
    }
    return status;
}

static hw_status beside(making *m)
{
    hw_chart other;
    hw_status status = load_other(m, HW_OPT_BESIDE, &other);
    return status == HW_OK
               ? hw_edit_beside(&m->motif.chart, &other, m->arena, &m->motif.chart, m->err)
               : status;
}

static hw_status pile_up(making *m, hw_opt opt)
{
    hw_chart other;
    int plain = 0;
    const char *name = m->motif.chart.name;
    wanted w = { HW_OPT_PLAIN_ROWS, "rows", 0, HW_MAX_CHART_ROWS };
    hw_status status = number(m, &w, &plain);
    if (status == HW_OK) {
        status = load_other(m, opt, &other);
    }
    if (status != HW_OK) {
        return status;
    }
    hw_edit_pile pile = { &other, &m->motif.chart, plain };
    if (opt == HW_OPT_BELOW) {
        pile = (hw_edit_pile){ &m->motif.chart, &other, plain };
    }
    hw_chart made;
    status = hw_edit_stack(&pile, m->arena, &made, m->err);
    if (status == HW_OK) {
        made.name = name;
        m->motif.chart = made;
    }
    return status;
}

static hw_status above(making *m)
{
    return pile_up(m, HW_OPT_ABOVE);
}

static hw_status below(making *m)
{
    return pile_up(m, HW_OPT_BELOW);
}

static hw_status catch_floats(making *m)
{
    int longest = 0;
    wanted w = { HW_OPT_CATCH, "stitches", HW_EDIT_LEAST_FLOAT, HW_MAX_CHART_COLUMNS };
    hw_status status = number(m, &w, &longest);
    if (status == HW_OK) {
        status = draw_gap(&m->motif, m->arena, m->err);
    }
    hw_edit_catching task = { &m->motif.chart, longest };
    return status == HW_OK ? hw_edit_catch(&task, m->arena, &m->motif.chart, &m->caught, m->err)
                           : status;
}

/* The fixed order. */
static const struct {
    hw_opt opt;
    hw_status (*change)(making *m);
} changes[] = {
    { HW_OPT_GAP, set_gap },
    { HW_OPT_MIRROR, mirror },
    { HW_OPT_UPSIDE_DOWN, upside_down },
    { HW_OPT_SHIFT, shift },
    { HW_OPT_RAISE, raise_rows },
    { HW_OPT_BESIDE, beside },
    { HW_OPT_ABOVE, above },
    { HW_OPT_BELOW, below },
    { HW_OPT_CATCH, catch_floats },
};

static hw_status change(making *m)
{
    hw_status status = HW_OK;
    for (size_t i = 0; i < sizeof changes / sizeof changes[0] && status == HW_OK; i++) {
        status = given(m, changes[i].opt) ? changes[i].change(m) : HW_OK;
    }
    return status;
}

/* ---- What is told ---- */

static void draw(hw_buf *buf, const hw_motif *motif)
{
    for (int row = 0; row < motif->chart.rows; row++) {
        int columns = DRAWN_REPEATS * motif->repeat;
        int most = motif->repeat > DRAWN_COLUMNS ? motif->repeat : DRAWN_COLUMNS;
        for (int column = 0; column < columns && column < most; column++) {
            hw_buf_text(buf, hw_motif_at(motif, row, column) == HW_CONTRAST ? "o" : ".");
        }
        hw_buf_text(buf, "\n");
    }
}

static void tell(hw_buf *buf, const hw_motif *m)
{
    hw_buf_format(buf, "%s: figure %d columns, gap %d, repeat %d; %d rows.\n", m->chart.name,
        m->chart.width, m->gap, m->repeat, m->chart.rows);
    hw_buf_format(buf, "Longest float: background yarn %d stitches, contrast yarn %d.\n",
        m->longest_float[HW_BACKGROUND], m->longest_float[HW_CONTRAST]);
    hw_buf_text(buf, "Contrast: ");
    hw_num_show(buf, 100 * m->contrast_share, 1);
    hw_buf_text(buf, " % of the stitches.\n");
    hw_buf_text(buf, m->symmetrical ? "The figure is the same mirrored.\n"
                                    : "The figure is not the same mirrored.\n");
    if (m->rows_without_contrast > 0 || m->rows_without_background > 0) {
        hw_buf_format(buf, "Rows in one colour: %d without contrast, %d without background.\n",
            m->rows_without_contrast, m->rows_without_background);
    }
    if (m->card_columns > 0 && m->fits_card) {
        hw_buf_format(buf, "The card of %d columns holds %d whole repeats.\n", m->card_columns,
            m->repeats_on_card);
    } else if (m->card_columns > 0) {
        hw_buf_format(
            buf, "The card of %d columns does not hold whole repeats.\n", m->card_columns);
    }
    if (m->card_columns > 0) {
        hw_buf_text(buf, "Gaps that fit the card:");
        for (int i = 0; i < m->card_gap_count; i++) {
            hw_buf_format(buf, "%s %d", i == 0 ? "" : ",", m->card_gaps[i]);
        }
        hw_buf_text(buf, m->card_gap_count == 0 ? " none.\n" : ".\n");
    }
}

static hw_status look(making *m, hw_buf *buf)
{
    int columns = USUAL_COLUMNS;
    hw_motif motif;
    wanted w = { HW_OPT_CARD, "columns", 0, HW_MAX_CHART_COLUMNS };
    hw_status status = number(m, &w, &columns);
    if (status == HW_OK) {
        status = hw_motif_analyse(&m->motif.chart, m->motif.gap, columns, m->arena, &motif);
    }
    if (status == HW_OK) {
        draw(buf, &motif);
        tell(buf, &motif);
        if (m->caught >= 0) {
            hw_buf_format(buf, "Catching stitches added to each repeat: %d.\n", m->caught);
        }
    }
    return status;
}

/* ---- The file ---- */

static hw_status write_yaml(const hw_motif_input *motif, hw_buf *buf)
{
    return hw_motifyaml_write(motif, buf);
}

static hw_status write_pbm(const hw_motif_input *motif, hw_buf *buf)
{
    return hw_pbm_write(&motif->chart, buf);
}

typedef hw_status writer(const hw_motif_input *motif, hw_buf *buf);

/* By the file's ending. */
static hw_status find_writer(const making *m, writer **out)
{
    static const struct {
        const char *ending;
        writer *write;
    } kinds[] = { { ".yaml", write_yaml }, { ".pbm", write_pbm } };
    const char *path = m->opts->values[HW_OPT_SAVE];
    size_t len = strlen(path);
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        size_t of = strlen(kinds[i].ending);
        if (len > of && strcmp(path + len - of, kinds[i].ending) == 0) {
            *out = kinds[i].write;
            return HW_OK;
        }
    }
    return hw_err_set(m->err, HW_ERR_USAGE,
        "`--save %.*s`: let the name end in .yaml for a motif file or in .pbm for a picture",
        hw_words_cut(path, 60), path);
}

static hw_status save(making *m, writer *write, hw_buf *out)
{
    hw_docs docs;
    hw_buf buf;
    hw_docs_begin(&docs, m->opts, m->arena, m->err);
    hw_status status = hw_docs_open(&docs, m->opts->values[HW_OPT_SAVE], &buf);
    status = status == HW_OK ? write(&m->motif, &buf) : status;
    return hw_docs_end(&docs, hw_docs_close(&docs, &buf, status), out);
}

static hw_status check_options(const making *m)
{
    if (given(m, HW_OPT_PLAIN_ROWS) && !given(m, HW_OPT_ABOVE) && !given(m, HW_OPT_BELOW)) {
        return hw_err_set(m->err, HW_ERR_USAGE, "%s",
            "`--plain-rows` lie between two motifs: name the other one behind `--above` or "
            "`--below`");
    }
    return HW_OK;
}

hw_status hw_motifs_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    making m = { .opts = opts, .arena = arena, .caught = -1, .err = err };
    writer *write = NULL;
    hw_status status = check_options(&m);
    if (status == HW_OK) {
        status = given(&m, HW_OPT_SAVE) ? find_writer(&m, &write) : HW_OK;
    }
    if (status == HW_OK) {
        status = hw_load_motif(opts->args[0], arena, &m.motif, err);
    }
    if (status == HW_OK) {
        status = change(&m);
    }
    if (status == HW_OK) {
        status = look(&m, buf);
    }
    if (status == HW_OK && write != NULL) {
        status = save(&m, write, buf);
    }
    return status == HW_OK ? HW_OK : hw_err_set(err, status, "%s", hw_status_sentence(status));
}
