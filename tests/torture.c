/* The whole road from text to documents with memory refused: request n, for n = 1, 2, 3, ...
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "check/support.h"
#include "core/calculate.h"
#include "read/datafile.h"
#include "read/garmentfile.h"
#include "read/project.h"
#include "read/table.h"
#include "status_names.h"
#include "write/csv.h"
#include "write/json.h"
#include "write/jsonparts.h"
#include "write/text.h"

/* Own choice of what must hold: each refusal ends in HW_ERR_NOMEM, leaves no block behind and no
 * result touched; jansson's requests count as ours, because our code asks for them. */
enum { UNTOUCHED = 0x5A };

/* A small project that goes down every road: swatches at two dials, a size to be filled in, a size
 * table, ease, a card that the repeat does not divide, counts outside the tolerance, an assumed
 * fabric; outlines with a curve and a neck, joins, a hem of another band, a band higher up, trims
 * with motif, gauge and buttonholes, yarn, safety. All numbers are invented, and coarse, so that
 * there are few rows. */
static const char project_text[] =
    "title: Small\n"
    "units: both\n"
    "machine: bed\n"
    "garment: bag\n"
    "gauge:\n"
    "  main:\n"
    "    dial: 7\n"
    "    swatches:\n"
    "      - {stitches: 40, width: 40 cm, rows: 20, length: 50 cm}\n"
    "      - {stitches: 40, width: 40.1 cm, rows: 20, length: 50.1 cm}\n"
    "      - {stitches: 20, width: 20 cm, rows: 20, length: 50 cm, mass: 30}\n"
    "  band: {stitches: 10, rows: 3.5, per: 10 cm}\n"
    "motif:\n"
    "  use: comb\n"
    "  gap: 2\n"
    "hem: {depth: 8 cm, fold: picot}\n"
    "sizes:\n"
    "  names: [small, middle, large]\n"
    "  table: own\n"
    "  finished:\n"
    "    depth: [30 cm, between, 36 cm]\n"
    "ease: {width: 5 %}\n"
    "bands:\n"
    "  edge:\n"
    "    on: strap\n"
    "    motif:\n"
    "      chart: |\n"
    "        oo.oo\n"
    "        o...o\n"
    "    hem: {depth: 8 cm}\n"
    "  belt:\n"
    "    on: front\n"
    "    motif:\n"
    "      chart: |\n"
    "        o.o\n"
    "      gap: 1\n"
    "    below underarm: 1 cm\n"
    "trims:\n"
    "  rim:\n"
    "    motif:\n"
    "      chart: |\n"
    "        oo\n"
    "      gap: 1\n"
    "    gauge: {stitches: 10, rows: 4}\n"
    "    hem: {fold: none}\n"
    "  flap: {buttonholes: 2}\n"
    "yarn:\n"
    "  main: {ball: 50, metres: 100, unravelled stitches: 100, unravelled metres: 4}\n"
    "  contrast: {ball: 50}\n"
    "safety: {buttons: yes}\n"
    "choices: {tolerance: 1 cm, always centred: yes}\n";

static const char *const data_texts[] = {
    [HW_DATA_MACHINE] = "title: A bed\npitch: 4.5 mm\nneedles: 60\ncard columns: 6\n"
                        "card rows: 12\nleast loop rows: 4\njoining rows: 1\n"
                        "longest float: 2\ncarriage: direct\nsource: B1\n",
    [HW_DATA_GARMENT] = "title: A bag\n"
                        "finished:\n"
                        "  width: {is: hips - 2 cm, ease: 1 cm}\n"
                        "  depth: {is: 30 cm}\n"
                        "pieces:\n"
                        "  front:\n"
                        "    band width: 0.5 x finished width\n"
                        "    outline:\n"
                        "      right:\n"
                        "        - {across: 0.25 x width, up: depth - 6 cm}\n"
                        "        - {stretch: slope, curve: monotone, across: 0.25 x width - 1 cm,\n"
                        "           up: depth - 3 cm}\n"
                        "        - {curve: natural, across: 0.25 x width - 2 cm, up: depth}\n"
                        "      neck:\n"
                        "        - {across: 2 cm, up: depth - 3 cm}\n"
                        "        - {across: 3 cm, up: depth}\n"
                        "  back: {mirrors: front}\n"
                        "  strap:\n"
                        "    band width: 0.2 x width\n"
                        "    outline: {left: [{across: -0.1 x width, up: 24 cm}]}\n"
                        "seams: [front right to back left, front left to back right]\n"
                        "joins:\n"
                        "  - front right side to back left side\n"
                        "  - front right slope to strap left, within 1 cm\n"
                        "trims:\n"
                        "  rim: {along: [front neck, back neck], round: yes, depth: 5 cm}\n"
                        "  flap: {along: [strap left, strap top], depth: 5 cm}\n",
    [HW_DATA_SIZES] = "title: Own sizes\n"
                      "names: [small, large]\n"
                      "ages: [6, 30]\n"
                      "sources: {M1: {mark: from memory, what: a memory}}\n"
                      "body: {hips: {values: [50 cm, 60 cm], source: [M1]}}\n",
    [HW_DATA_MOTIF] = "title: Comb\nchart: |\n  oo..o\n  ooooo\n  .....\n",
};
_Static_assert(sizeof data_texts / sizeof data_texts[0] == HW_DATA_COUNT, "a text for each kind");

/* Where a run keeps its results; all bytes are UNTOUCHED before it. */
typedef struct {
    hw_project project;
    hw_plan plan;
    hw_tables tables;
} Results;

/* The heap that jansson draws on; its hooks take no context. */
static hw_check_heap *json_heap;

static void *json_grab(size_t size)
{
    hw_mem mem = hw_check_mem(json_heap);
    return mem.grab(mem.context, size);
}

static void json_drop(void *block)
{
    hw_mem mem = hw_check_mem(json_heap);
    mem.drop(mem.context, block);
}

static bool untouched(const void *result, size_t size)
{
    const unsigned char *bytes = result;
    for (size_t i = 0; i < size; i++) {
        if (bytes[i] != UNTOUCHED) {
            return false;
        }
    }
    return true;
}

static hw_status read_named(hw_data kind, hw_arena *arena, hw_project *project)
{
    const char *text = data_texts[kind];
    size_t len = strlen(text);
    hw_status status = HW_ERR_INTERNAL;
    switch (kind) {
    case HW_DATA_MACHINE:
        status = hw_machine_read(text, len, arena, &project->machine, NULL);
        break;
    case HW_DATA_GARMENT:
        status = hw_garment_read(text, len, arena, &project->garment, NULL);
        break;
    case HW_DATA_SIZES:
        status = hw_table_read(text, len, arena, &project->table, NULL);
        break;
    case HW_DATA_MOTIF:
        status = hw_motif_read(text, len, arena, &project->drawn, NULL);
        break;
    case HW_DATA_COUNT:
        break;
    }
    return status;
}

/* The project, what it names, and a piece that a test knitter has measured. */
static hw_status read_all(hw_arena *arena, hw_project *out, bool *clean)
{
    static const hw_knitted measured[] = {
        { .size = 1, .piece = 0, .fabric = HW_BAND, .sts = 26, .width_cm = 26, .row = 1 },
    };
    hw_status status = hw_project_read(project_text, strlen(project_text), arena, out, NULL);
    *clean = status == HW_OK || untouched(out, sizeof *out);
    for (int kind = 0; kind < HW_DATA_COUNT && status == HW_OK; kind++) {
        status = read_named((hw_data)kind, arena, out);
    }
    if (status == HW_OK) {
        out->knitted = (hw_knitted_list){ measured, 1 };
        out->only_size = 2; /* rows of one size are as good as those of all */
        out->ease_range_cm = 0.5;
    }
    return status;
}

static hw_status write_text(const Results *made, hw_arena *arena, hw_buf *buf)
{
    (void)arena;
    return hw_text_tables(&made->tables, NULL, buf);
}

static hw_status write_csv(const Results *made, hw_arena *arena, hw_buf *buf)
{
    (void)arena;
    return hw_csv_tables(&made->tables, buf);
}

static hw_status write_json(const Results *made, hw_arena *arena, hw_buf *buf)
{
    return hw_json_plan(&made->plan, &made->tables, arena, buf);
}

/* The longest parts of the document, each by itself. */
static hw_status write_parts(const Results *made, hw_arena *arena, hw_buf *buf)
{
    static void (*const lists[])(
        hw_json_writer *) = { hw_json_drafts, hw_json_rowplans, hw_json_trims };
    hw_json_writer w = { .plan = &made->plan, .tables = &made->tables, .arena = arena, .buf = buf };
    for (size_t i = 0; i < sizeof lists / sizeof lists[0] && w.status == HW_OK; i++) {
        hw_json_list(&w, "list", lists[i]);
    }
    hw_json_member(&w, "yarn", hw_json_yarn(&w));
    return w.status == HW_OK ? hw_buf_status(buf) : w.status;
}

/* From texts to tables; what was not reached, or failed, is as it was. */
static hw_status make_tables(hw_arena *arena, Results *out, bool *clean)
{
    memset(out, UNTOUCHED, sizeof *out);
    hw_status status = read_all(arena, &out->project, clean);
    if (status == HW_OK) {
        status = hw_calculate_plan(&out->project, arena, &out->plan, NULL);
        *clean = status == HW_OK || untouched(&out->plan, sizeof out->plan);
    }
    if (status == HW_OK) {
        status = hw_cells_plan(&out->plan, arena, &out->tables);
        *clean = status == HW_OK || untouched(&out->tables, sizeof out->tables);
    }
    return status;
}

/* A stretch of the road, on a heap of its own. */
typedef struct {
    const char *name;
    long least; /* requests that it must make at least, so that the test means something */
    hw_status (*write)(const Results *made, hw_arena *arena, hw_buf *buf); /* NULL: make tables */
    const Results *made;
    int stride; /* each so many-th request is refused */
} Stretch;

static hw_status run(const Stretch *stretch, hw_check_heap *heap, bool *clean)
{
    static Results results;
    hw_mem mem = hw_check_mem(heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    json_heap = heap;
    hw_buf buf;
    hw_buf_init(&buf, &mem, HW_BUF_LIMIT);
    hw_status status = stretch->write == NULL ? make_tables(&arena, &results, clean)
                                              : stretch->write(stretch->made, &arena, &buf);
    hw_buf_release(&buf);
    hw_arena_release(&arena);
    return status;
}

/* Refuse request n, and perhaps all that follow, until n is more than there are. */
static bool refuse_each(const Stretch *stretch, bool onwards)
{
    const char *mode = onwards ? "from then on" : "once";
    long n = 0;
    bool reached = true;
    while (reached) {
        n += stretch->stride;
        hw_check_heap heap = { .refuse_at = n, .refuse_onwards = onwards };
        bool clean = true;
        hw_status status = run(stretch, &heap, &clean);
        reached = heap.grabs >= n;
        if (status != (reached ? HW_ERR_NOMEM : HW_OK) || heap.live != 0 || !clean) {
            printf("%s: request %ld refused %s: came to \"%s\", %ld blocks left, results %s\n",
                stretch->name, n, mode, status_name(status), heap.live,
                clean ? "as they were" : "touched");
            return false;
        }
    }
    n -= stretch->stride;
    printf("%s: %ld requests, every %d. refused %s; at least %ld wanted\n", stretch->name, n,
        stretch->stride, mode, stretch->least);
    return n >= stretch->least;
}

int main(void)
{
    gsl_set_error_handler_off();
    json_set_alloc_funcs(json_grab, json_drop);
    hw_check_heap heap = { 0 };
    hw_mem mem = hw_check_mem(&heap);
    hw_arena arena;
    hw_arena_init(&arena, &mem, 0);
    static Results made;
    bool clean = true;
    bool good = make_tables(&arena, &made, &clean) == HW_OK;
    /* Two tables are as good as all: their cells are written by the same lines. The long parts of
     * the document are refused every request by themselves, and the whole of it each eleventh. */
    static Results document;
    document = made;
    document.tables.count = 2;
    const Stretch road[] = {
        { "from texts to tables", 1000, NULL, &made, 1 },
        { "tables as text", 5, write_text, &made, 1 },
        { "tables as CSV", 3, write_csv, &made, 1 },
        { "long parts of the plan as JSON", 5000, write_parts, &document, 1 },
        { "the plan as JSON", 10000, write_json, &document, 11 },
    };
    for (size_t i = 0; good && i < sizeof road / sizeof road[0]; i++) {
        good = refuse_each(&road[i], false) && refuse_each(&road[i], true);
    }
    hw_arena_release(&arena);
    good = good && heap.live == 0;
    printf("%s\n", good ? "every refusal came back in order" : "a refusal did not come back");
    return good ? 0 : 1;
}
