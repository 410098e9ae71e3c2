/* Two plans of one project, without and with what was measured; and gauges over dials.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/learn.h"

#include <string.h>

#include "core/calculate.h"
#include "core/num.h"
#include "core/unsure.h"
#include "shell/load.h"
#include "write/learned.h"
#include "write/text.h"

/* What the measured pieces make unsure: warnings alone. */
static hw_status show_warnings(const hw_plan *plan, hw_arena *arena, hw_buf *buf)
{
    hw_notes notes;
    hw_status status = hw_notes_init(&notes, arena);
    if (status != HW_OK) {
        return status;
    }
    hw_unsure_add(plan, &notes);
    for (int i = 0; i < notes.note_count; i++) {
        if (notes.notes[i].kind == HW_NOTE_WARNING) {
            hw_buf_format(buf, "\nWarning: %s\n", notes.notes[i].text);
        }
    }
    return notes.refused ? HW_ERR_NOMEM : HW_OK;
}

hw_status hw_learn_run(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    hw_project without;
    hw_plan plans[2];
    hw_status status = hw_load_project(opts->args[0], arena, &without, err);
    if (status != HW_OK) {
        return status;
    }
    without.knitted = (hw_knitted_list){ 0 };
    hw_project with = without;
    status = hw_load_pieces(opts->args[1], &with, arena, err);
    if (status == HW_OK) {
        status = hw_calculate_plan(&without, arena, &plans[0], err);
    }
    if (status == HW_OK) {
        status = hw_calculate_plan(&with, arena, &plans[1], err);
    }
    if (status != HW_OK) {
        hw_load_blame(&without, opts->args[0], err);
        return status;
    }
    hw_tables tables;
    status = hw_learned_tables(&plans[0], &plans[1], arena, &tables);
    if (status == HW_OK) {
        hw_buf_format(buf, "%d filled-in %s read.\n\n", with.knitted.count,
            with.knitted.count == 1 ? "row was" : "rows were");
        status = hw_text_tables(&tables, NULL, buf);
    }
    if (status == HW_OK) {
        status = show_warnings(&plans[1], arena, buf);
    }
    const char *slash = strrchr(opts->args[1], '/');
    const char *name = slash != NULL ? slash + 1 : opts->args[1];
    hw_buf_format(buf,
        "\nTo plan with them, put the file beside the project and add this line to it:\n"
        "  knitted: \"%s\"\nPieces that were knitted already then keep their counts.\n",
        name);
    return status == HW_OK ? HW_OK
                           : hw_err_set(err, status, "%s", "there is not enough memory for this");
}

typedef struct {
    hw_fabric fabric;
    double per_10cm;
} wanted;

static hw_status read_wanted(const hw_opts *opts, wanted *out, hw_err *err)
{
    const char *gauge = opts->values[HW_OPT_GAUGE];
    const char *per = opts->values[HW_OPT_PER];
    const char *fabric = opts->values[HW_OPT_FABRIC];
    double sts = 0;
    double cm = 10;
    out->fabric = HW_FABRIC_COUNT;
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        if (strcmp(hw_fabric_name((hw_fabric)f), fabric != NULL ? fabric : "main") == 0) {
            out->fabric = (hw_fabric)f;
        }
    }
    if (out->fabric == HW_FABRIC_COUNT) {
        return hw_err_set(
            err, HW_ERR_USAGE, "`--fabric %.40s` is not known; write main, band or facing", fabric);
    }
    bool good = hw_num_parse(gauge, strlen(gauge), &sts, NULL) == HW_OK && sts >= 1;
    good = good && (per == NULL || hw_length_parse(per, strlen(per), HW_UNIT_CM, &cm) == HW_OK);
    if (!good || !(cm >= 1 && cm <= HW_MAX_CM) || !(sts <= 2000)) {
        return hw_err_set(err, HW_ERR_USAGE, "%s",
            "give `--gauge` a number of stitches from 1 to 2000, and `--per` a length such as 10cm "
            "or 4in");
    }
    out->per_10cm = 10 * sts / cm;
    return HW_OK;
}

static void show_dial(const hw_dial_fit *fit, double dial, hw_buf *buf)
{
    hw_buf_text(buf, "Dial ");
    hw_num_show(buf, dial, 1);
    hw_buf_text(buf, " gives it, by a ");
    hw_buf_format(buf, "%s through %d measured places at dials ",
        fit->order == 1 ? "line" : "curve", fit->places);
    hw_num_show(buf, fit->low_dial, 2);
    hw_buf_text(buf, " to ");
    hw_num_show(buf, fit->high_dial, 2);
    bool beyond = dial < fit->low_dial || dial > fit->high_dial;
    hw_buf_text(buf, beyond ? "; that is beyond them, so only a guess: swatch it first.\n" : ".\n");
}

hw_status hw_learn_dial(const hw_opts *opts, hw_arena *arena, hw_buf *buf, hw_err *err)
{
    hw_project project;
    wanted want = { 0 };
    hw_status status = read_wanted(opts, &want, err);
    if (status == HW_OK) {
        status = hw_load_project(opts->args[0], arena, &project, err);
    }
    if (status != HW_OK) {
        return status;
    }
    hw_gauge gauges[HW_FABRIC_COUNT];
    status = hw_gauge_all(project.gauge, arena, gauges, err);
    if (status != HW_OK) {
        return status;
    }
    const hw_dial_fit *fit = &gauges[want.fabric].dial_fit;
    if (!gauges[want.fabric].has_dial_fit) {
        return hw_err_set(err, HW_ERR_MISSING,
            "the %s fabric has no swatches at two different dials; knit another, and write `dial` "
            "to each",
            hw_fabric_name(want.fabric));
    }
    double dial = 0;
    if (!hw_dial_for(fit, want.per_10cm, &dial)) {
        return hw_err_set(err, HW_ERR_NOFIT,
            "no dial from one below to one above those swatched gives %.2f stitches in 10 cm; "
            "they give %.2f to %.2f: take another yarn, or swatch further out",
            want.per_10cm, hw_dial_gauge(fit, fit->low_dial - 1),
            hw_dial_gauge(fit, fit->high_dial + 1));
    }
    show_dial(fit, dial, buf);
    return HW_OK;
}
