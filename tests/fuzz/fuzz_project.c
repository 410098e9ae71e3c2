/* Any text as a project, through the whole pure part: read, calculated, written.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source of what must hold: own choice; a motif is never cut, a bed is never overrun, rows add up.
 */
#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/calculate.h"
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
static const char garment_text[] = "title: Jacket\n"
                                   "finished:\n"
                                   "  chest: {is: chest, ease: 6 cm}\n"
                                   "  hem: {is: 1.1 x finished chest + 2 cm}\n"
                                   "pieces:\n"
                                   "  back: {band width: 0.5 x hem, main width: 0.5 x chest}\n"
                                   "  left front: {band width: 0.25 x hem}\n"
                                   "  right front: {mirrors: left front}\n"
                                   "seams: [left front right to back left, "
                                   "back right to right front left]\n";
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

static void check_hem(const hw_hem *hem)
{
    must_hold(hem->face_rows == hem->below_rows + hem->band_rows + hem->above_rows,
        "the face is plain, band and plain");
    must_hold(hem->total_rows == hem->facing_rows + hem->fold_rows + hem->face_rows,
        "the hem is facing, fold and face");
    must_hold(hem->below_rows % 2 == 0 && hem->above_rows % 2 == 0 && hem->below_rows >= 2 &&
                  hem->above_rows >= hem->below_rows,
        "plain rows in twos, at least two");
    must_hold(hem->total_rows <= HW_MAX_ROWS && hem->face_cm > 0, "a hem that can be knitted");
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
        for (int i = 0; i < plan.finished.count * project.garment.piece_count; i++) {
            check_fit(&plan, i / project.garment.piece_count, i % project.garment.piece_count);
        }
        check_hem(&plan.hem);
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
