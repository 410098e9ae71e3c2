/* Any text as a project, through the whole pure part: read, calculated, written.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source of what must hold: own choice; a motif is never cut, a bed is never overrun, rows and
 * stitches add up. */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/calculate.h"
#include "core/trimming.h"
#include "core/yarnuse.h"
#include "fuzz.h"
#include "read/datafile.h"
#include "read/garmentfile.h"
#include "read/project.h"
#include "read/table.h"
#include "read/yaml.h"
#include "write/cells.h"
#include "write/csv.h"
#include "write/json.h"
#include "write/text.h"

const char hw_fuzz_corpus[] = "project";

/* What a project's names stand for here, whatever they are; all numbers are invented. The bed is
 * short, so that one input takes no longer than a blink. */
static const char machine_text[] = "title: Short bed\n"
                                   "pitch: 9 mm\n"
                                   "needles: 120\n"
                                   "card columns: 24\n"
                                   "longest float: 5\n"
                                   "carriage: pre-selecting\n";
static const char garment_text[] =
    "title: Jacket\n"
    "finished:\n"
    "  chest: {is: chest, ease: 6 cm}\n"
    "  hem: {is: 1.1 x finished chest + 2 cm}\n"
    "  length: {is: 0.5 x finished chest + 20 cm}\n"
    "pieces:\n"
    "  back:\n"
    "    band width: 0.5 x hem\n"
    "    main width: 0.5 x chest\n"
    "    outline:\n"
    "      right:\n"
    "        - {across: 0.25 x chest, up: 0.6 x length}\n"
    "        - {stretch: armhole, across: 0.23 x chest, up: 0.6 x length}\n"
    "        - {curve: monotone, across: 0.21 x chest, up: 0.7 x length}\n"
    "        - {across: 0.2 x chest, up: 0.95 x length}\n"
    "        - {stretch: shoulder, across: 0.1 x chest, up: length}\n"
    "      neck:\n"
    "        - {across: 0.05 x chest, up: 0.9 x length}\n"
    "        - {curve: natural, across: 0.08 x chest, up: 0.94 x length}\n"
    "        - {curve: natural, across: 0.1 x chest, up: length}\n"
    "  left front:\n"
    "    band width: 0.25 x hem\n"
    "    outline:\n"
    "      right: [{across: 0.125 x hem, up: 0.6 x length},\n"
    "        {stretch: armhole, across: 0.1 x hem, up: length}]\n"
    "      left: [{stretch: opening, across: -0.125 x hem, up: length}]\n"
    "  right front: {mirrors: left front}\n"
    "  hood: {band width: 0.25 x hem}\n"
    "seams: [left front right to back left, back right to right front left]\n"
    "joins: [left front right side to back left side]\n"
    "trims:\n"
    "  neckband: {along: [back neck, left front top]}\n"
    "  front band: {along: left front left opening, depth: 3 cm}\n";
static const char table_text[] = "title: Invented\n"
                                 "names: [a, b, c, d]\n"
                                 "ages: [0, 12, 24, 48]\n"
                                 "sources: {I: {mark: own choice, what: invented}}\n"
                                 "body:\n"
                                 "  chest: {values: [46, 50, between, 58], source: I}\n";
static const char motif_text[] = "title: Fish\n"
                                 "chart: |\n"
                                 "  .oo.o\n"
                                 "  oooo.\n"
                                 "  .oo.o\n"
                                 "gap: 1\n";

static void must_hold(bool held, const char *what)
{
    if (!held) {
        (void)fprintf(stderr, "does not hold: %s\n", what);
        abort();
    }
}

static void read_named(hw_arena *arena, hw_project *project)
{
    hw_status statuses[] = {
        hw_machine_read(machine_text, strlen(machine_text), arena, &project->machine, NULL),
        hw_garment_read(garment_text, strlen(garment_text), arena, &project->garment, NULL),
        hw_table_read(table_text, strlen(table_text), arena, &project->table, NULL),
        hw_motif_read(motif_text, strlen(motif_text), arena, &project->drawn, NULL),
    };
    for (size_t i = 0; i < sizeof statuses / sizeof statuses[0]; i++) {
        must_hold(statuses[i] == HW_OK, "the fixed files are read");
    }
    for (int b = 0; b < project->band_count; b++) {
        project->bands[b].motif.drawn = project->drawn;
    }
    for (int t = 0; t < project->trim_count; t++) {
        project->trims[t].motif.drawn = project->drawn;
    }
}

static void check_fit(const hw_plan *plan, int size, int piece)
{
    const hw_fit *fit = hw_plan_fit(plan, size, piece);
    const hw_place_on_bed *place = &plan->places[size * plan->project->garment.piece_count + piece];
    int margins = fit->margin[HW_LEFT] + fit->margin[HW_RIGHT];
    int edges = fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT];
    int needles = plan->project->machine.needles;
    must_hold(fit->motifs >= 1 && fit->margin[HW_LEFT] >= 0 && fit->margin[HW_RIGHT] >= 0,
        "one motif at least, and no margin below nothing");
    must_hold(fit->visible_sts - margins + plan->motif.gap == fit->motifs * plan->motif.repeat,
        "stitches less margins plus gap are whole repeats");
    must_hold(fit->cast_on_sts == fit->visible_sts + edges, "the cast-on has its edge stitches");
    must_hold(fit->cast_on_sts <= needles, "the cast-on fits on the bed");
    must_hold(place->last - place->first + 1 == fit->cast_on_sts, "a needle for each stitch");
    must_hold(place->first >= -needles / 2 && place->last < needles / 2, "needles that are there");
    must_hold(fit->band_cm > 0 && fit->main_cm > 0, "widths above nothing");
}

static void check_hem_rows(const hw_hem *hem)
{
    must_hold(hem->face_rows == hem->below_rows + hem->band_rows + hem->above_rows,
        "the face is plain, band and plain");
    must_hold(hem->total_rows == hem->facing_rows + hem->fold_rows + hem->face_rows,
        "the hem is facing, fold and face");
    must_hold(hem->total_rows <= HW_MAX_ROWS && hem->face_cm > 0, "a hem that can be knitted");
}

static void check_hem(const hw_hem *hem)
{
    check_hem_rows(hem);
    must_hold(hem->below_rows % 2 == 0 && hem->above_rows % 2 == 0 && hem->below_rows >= 2 &&
                  hem->above_rows >= hem->below_rows,
        "plain rows in twos, at least two");
}

/* Above the hem: rows with stitches, and bands of which no figure is cut. */
static void check_draft(const hw_plan *plan, int size, int piece)
{
    const hw_whole *whole = plan->whole;
    const hw_draft *draft = hw_plan_draft(whole, size, piece);
    if (whole->project->garment.pieces[piece].outline == NULL) {
        must_hold(!draft->drawn, "nothing is drawn of what has no outline");
        return;
    }
    must_hold(draft->drawn && draft->shape.rows >= 1 && draft->shape.rows <= draft->task.rows,
        "what the garment draws has rows");
    must_hold(draft->area_cm2 > 0 && isfinite(draft->area_cm2), "an area");
    for (int row = 0; row < draft->shape.rows; row++) {
        must_hold(hw_shape_sts(&draft->shape, row) >= 1, "a stitch in every row");
        must_hold(draft->low_cm[row + 1] > draft->low_cm[row], "rows above each other");
    }
    for (int u = 0; u < whole->upper_count; u++) {
        const hw_upper *upper = &draft->uppers[u];
        const hw_motif *motif = &whole->uppers[u].motif;
        if (upper->rows == 0 || upper->motifs == 0) {
            continue;
        }
        must_hold(upper->margin[HW_LEFT] >= 0 && upper->margin[HW_RIGHT] >= 0 &&
                      upper->margin[HW_LEFT] + upper->margin[HW_RIGHT] +
                              upper->motifs * motif->repeat - motif->gap ==
                          upper->sts,
            "whole motifs between margins");
        must_hold(upper->first_row + upper->rows <= draft->shape.rows, "a band below the top");
    }
}

static void check_trims(const hw_whole *whole, int size)
{
    for (int k = 0; k < whole->trims->count; k++) {
        const hw_trimmed *t = hw_trimming_at(whole, size, k);
        int sum = 0;
        for (int i = 0; i < t->pickup.share_count; i++) {
            must_hold(t->pickup.shares[i].sts >= 0, "a share is no less than nothing");
            sum += t->pickup.shares[i].sts;
        }
        must_hold(sum == t->pickup.chosen.sts && sum >= 1, "shares add up to the trim");
        check_hem_rows(&t->hem);
        for (int h = 0; h < t->holes.count; h++) {
            must_hold(t->holes.holes[h].below_sts >= 0 &&
                          t->holes.holes[h].below_sts + t->holes.hole_sts <= sum,
                "a buttonhole inside the trim");
        }
    }
}

static void check_yarn(const hw_whole *whole, int size)
{
    for (int y = 0; whole->yarn != NULL && y < HW_USE_YARNS; y++) {
        const hw_yarn_total *total = &whole->yarn->totals[size].of[y];
        must_hold(isfinite(total->used.g) && isfinite(total->used.m) && total->used.g >= 0 &&
                      total->used.m >= 0 && total->balls >= 0,
            "yarn is no less than nothing");
        must_hold(total->to_buy.g >= total->used.g && total->to_buy.m >= total->used.m,
            "a reserve is not taken away");
    }
}

static void check_whole(const hw_plan *plan)
{
    const hw_whole *whole = plan->whole;
    int pieces = whole->project->garment.piece_count;
    for (int i = 0; i < plan->finished.count * pieces; i++) {
        hw_plan_piece at = hw_plan_find(whole, i % pieces);
        check_fit(at.plan, i / pieces, at.piece);
        check_draft(plan, i / pieces, i % pieces);
    }
    for (int k = 0; k < whole->parts.count; k++) {
        check_hem(&whole->plans[k].hem);
    }
    for (int i = 0; i < plan->finished.count; i++) {
        check_trims(whole, i);
        check_yarn(whole, i);
    }
}

static void write_all(const hw_plan *plan, hw_arena *arena, const hw_mem *mem)
{
    hw_tables tables;
    must_hold(hw_cells_plan(plan, arena, &tables) == HW_OK, "a plan becomes tables");
    hw_buf buf;
    hw_buf_init(&buf, mem, HW_BUF_LIMIT);
    must_hold(hw_text_tables(&tables, NULL, &buf) == HW_OK, "tables become text");
    must_hold(hw_csv_tables(&tables, &buf) == HW_OK, "tables become CSV");
    must_hold(hw_json_plan(plan, &tables, arena, &buf) == HW_OK, "a plan becomes JSON");
    must_hold(hw_yaml_is_text(buf.text, buf.len), "what is written is text");
    hw_buf_release(&buf);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    gsl_set_error_handler_off();
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_project project;
    hw_plan plan;
    hw_err err = { 0 };
    hw_arena_init(&arena, &mem, 0);
    hw_status status = hw_project_read((const char *)data, size, &arena, &project, &err);
    if (status == HW_OK) {
        read_named(&arena, &project);
        status = hw_calculate_plan(&project, &arena, &plan, &err);
    }
    if (status == HW_OK) {
        check_whole(&plan);
        write_all(&plan, &arena, &mem);
    } else {
        size_t len = strlen(err.text);
        must_hold(err.code == status, "a failure is told");
        must_hold(len > 0 && len < sizeof err.text - 1, "a message is whole");
        must_hold(hw_yaml_is_text(err.text, len), "a message is text");
        must_hold(strpbrk(err.text, "\r\n") == NULL, "a message is one line");
    }
    hw_arena_release(&arena);
    return 0;
}
