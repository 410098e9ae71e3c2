/* JSON: read back by its library, every result is there under its name, to the last digit.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "example_plan.h"
#include "fixture.h"
#include "write/json.h"

static example e;

static void setup(void)
{
    example_plan(&e, &arena);
}

/* The document of the example, parsed; the caller's to give back. */
static json_t *parsed(void)
{
    hw_tables tables = example_tables(&e, &arena);
    fixture_empty();
    ck_assert_int_eq(hw_json_plan(&e.plan, &tables, &arena, &buf), HW_OK);
    ck_assert_int_eq(buf.text[buf.len - 1], '\n');
    json_error_t error;
    json_t *top = json_loadb(buf.text, buf.len, JSON_REJECT_DUPLICATES, &error);
    ck_assert_msg(top != NULL, "%s", error.text);
    return top;
}

/* A value by a path such as "fits.0.cost.band". */
static json_t *at(json_t *value, const char *path)
{
    char key[64];
    while (*path != '\0') {
        size_t len = strcspn(path, ".");
        ck_assert_uint_lt(len, sizeof key);
        memcpy(key, path, len);
        key[len] = '\0';
        value = json_is_array(value) ? json_array_get(value, strtoul(key, NULL, 10))
                                     : json_object_get(value, key);
        ck_assert_msg(value != NULL, "no %s", key);
        path += len + (path[len] == '.');
    }
    return value;
}

static void is_text(json_t *top, const char *path, const char *text)
{
    ck_assert(json_is_string(at(top, path)));
    ck_assert_str_eq(json_string_value(at(top, path)), text);
}

static void is_count(json_t *top, const char *path, int count)
{
    ck_assert(json_is_integer(at(top, path)));
    ck_assert_int_eq(json_integer_value(at(top, path)), count);
}

/* The very number: 17 digits read back as the double that was written. */
static void is_exactly(json_t *top, const char *path, double number)
{
    ck_assert(json_is_real(at(top, path)));
    double found = json_real_value(at(top, path));
    ck_assert_msg(memcmp(&found, &number, sizeof found) == 0, "%s is %.17g", path, found);
}

START_TEST(keys_in_order)
{
    static const char *const keys[] = { "format", "version", "title", "garment", "units", "sizes",
        "body", "finished", "pieces", "tolerance_cm", "total_cost", "fits", "seams", "hem", "motif",
        "gauge", "tolerances", "punch", "alternatives", "parts", "upper_bands", "uppers", "drafts",
        "joins", "trims", "yarn", "rows", "notes", "basis", "tables" };
    json_t *top = parsed();
    const char *key = NULL;
    json_t *value = NULL;
    size_t n = 0;
    json_object_foreach(top, key, value)
    {
        ck_assert_uint_lt(n, sizeof keys / sizeof keys[0]);
        ck_assert_str_eq(key, keys[n++]);
    }
    ck_assert_uint_eq(n, sizeof keys / sizeof keys[0]);
    is_text(top, "format", "hemwright-plan");
    is_count(top, "version", 1);
    is_text(top, "units", "cm");
    json_decref(top);
}
END_TEST

START_TEST(fits)
{
    json_t *top = parsed();
    const hw_fit *fit = &e.plan.grading.fits[5];
    ck_assert_uint_eq(json_array_size(at(top, "fits")), EXAMPLE_SIZES * EXAMPLE_PIECES);
    is_text(top, "fits.5.size", "98");
    is_text(top, "fits.5.piece", "back");
    is_count(top, "fits.5.motifs", fit->motifs);
    is_count(top, "fits.5.left_margin_sts", 1);
    is_count(top, "fits.5.right_margin_sts", 1);
    is_count(top, "fits.5.visible_sts", fit->visible_sts);
    is_count(top, "fits.5.cast_on_sts", fit->visible_sts + 2);
    is_count(top, "fits.5.main_sts", fit->main_sts);
    is_exactly(top, "fits.5.wanted_band_cm", e.plan.targets[5].band_cm);
    is_exactly(top, "fits.5.band_cm", fit->band_cm);
    is_exactly(top, "fits.5.main_cm", fit->main_cm);
    is_exactly(top, "fits.5.band_off_cm", fit->band_off_cm);
    is_exactly(top, "fits.5.main_off_cm", fit->main_off_cm);
    is_exactly(top, "fits.5.cost.band", fit->cost.band);
    is_exactly(top, "fits.5.cost.main", fit->cost.main);
    is_exactly(top, "fits.5.cost.centre", fit->cost.centre);
    is_exactly(top, "fits.5.cost.step", fit->cost.grade);
    is_exactly(top, "total_cost", e.plan.grading.total_cost);
    is_text(top, "fits.5.wanted_mark", "given");
    ck_assert(json_is_false(at(top, "fits.5.inside_tolerance")));
    ck_assert(json_is_true(at(top, "fits.0.inside_tolerance")));
    is_text(top, "fits.0.place.first_needle", "L42");
    is_exactly(top, "fits.0.place.off_centre_needles", -1.5);
    is_count(top, "fits.0.place.card_start_column", 4);
    json_decref(top);
}
END_TEST

START_TEST(the_rest)
{
    e.plan.grading.seam_breaks[3] = -1;
    e.plan.grading.seam_costs[3] = 0.5;
    json_t *top = parsed();
    is_text(top, "seams.1.from.piece", "back");
    is_text(top, "seams.1.to.side", "left");
    is_count(top, "seams.1.breaks_sts.1", -1);
    is_exactly(top, "seams.1.costs.1", 0.5);
    is_text(top, "hem.fold", "one loose row");
    is_count(top, "hem.total_rows", 21);
    is_exactly(top, "hem.face_cm", e.plan.hem.face_cm);
    is_text(top, "motif.chart.0", ".o.o.");
    is_text(top, "motif.chart.5", "..o..");
    is_count(top, "motif.each_row.0.longest_float_sts.contrast", 3);
    is_exactly(top, "motif.contrast_share", 17 / 36.0);
    is_count(top, "motif.axes_half_columns.1", 11);
    is_count(top, "motif.card.fitting_gaps.3", 19);
    is_exactly(top, "gauge.band.sts_per_10cm", 28);
    is_text(top, "gauge.facing.mark", "assumed");
    is_text(top, "finished.0.marks.3", "from memory");
    is_exactly(top, "finished.1.values_cm.2", 28.5);
    is_text(top, "notes.2.kind", "safety");
    is_text(top, "notes.3.text", e.notes[3].text);
    is_text(top, "basis.2.source", "H1");
    json_decref(top);
}
END_TEST

START_TEST(unknown_is_null)
{
    e.project.title = NULL;
    e.project.machine.pitch_cm = 0;
    e.plan.hem.has_dials = false;
    e.plan.hem.wanted_cm = 0;
    e.plan.motif.card_columns = 0;
    json_t *top = parsed();
    ck_assert(json_is_null(at(top, "title")));
    ck_assert(json_is_null(at(top, "fits.0.place")));
    ck_assert(json_is_null(at(top, "hem.facing_dial")));
    ck_assert(json_is_null(at(top, "hem.wanted_cm")));
    ck_assert(json_is_null(at(top, "motif.card")));
    ck_assert(json_is_null(at(top, "pieces.0.mirror_of")));
    json_decref(top);
}
END_TEST

static void is_cell(const hw_cell *cell, json_t *value)
{
    ck_assert_ptr_nonnull(value);
    switch (cell->kind) {
    case HW_CELL_EMPTY:
        ck_assert(json_is_null(value));
        break;
    case HW_CELL_TEXT:
        ck_assert_str_eq(json_string_value(value), cell->text);
        break;
    case HW_CELL_COUNT:
        ck_assert(json_is_integer(value));
        ck_assert_double_eq_tol(json_number_value(value), cell->number, 1e-12);
        break;
    case HW_CELL_NUMBER:
    case HW_CELL_EIGHTHS:
        ck_assert(json_is_real(value));
        ck_assert_double_eq_tol(json_number_value(value), cell->number, 1e-12);
        break;
    }
}

START_TEST(tables_cell_by_cell)
{
    json_t *top = parsed();
    hw_tables tables = example_tables(&e, &arena);
    ck_assert_uint_eq(json_array_size(at(top, "tables")), (size_t)tables.count);
    for (int i = 0; i < tables.count; i++) {
        const hw_table *t = &tables.tables[i];
        json_t *found = json_array_get(at(top, "tables"), (size_t)i);
        is_text(found, "name", t->name);
        is_count(found, "rows", t->rows);
        is_count(found, "columns", t->columns);
        for (int k = 0; k < t->rows * t->columns; k++) {
            json_t *row = json_array_get(at(found, "cells"), (size_t)(k / t->columns));
            is_cell(&t->cells[k], json_array_get(row, (size_t)(k % t->columns)));
        }
    }
    json_decref(top);
}
END_TEST

START_TEST(same_bytes)
{
    json_decref(parsed());
    char *first = hw_buf_keep(&buf, &arena);
    ck_assert_ptr_nonnull(first);
    json_decref(parsed());
    ck_assert_str_eq(first, buf.text);
}
END_TEST

/* The library's own memory, counted and refused. */
static long grabs, live, most, refuse_at;

static void *grab(size_t size)
{
    grabs++;
    void *block = grabs == refuse_at ? NULL : malloc(size);
    live += block != NULL;
    most = live > most ? live : most;
    return block;
}

static void drop(void *block)
{
    live -= block != NULL;
    free(block);
}

START_TEST(library_refused_memory)
{
    hw_tables tables = example_tables(&e, &arena);
    json_set_alloc_funcs(grab, drop);
    hw_status status = HW_ERR_NOMEM;
    for (refuse_at = 1; status != HW_OK; refuse_at++) {
        fixture_empty();
        grabs = 0;
        status = hw_json_plan(&e.plan, &tables, &arena, &buf);
        ck_assert_int_eq(live, 0);
        ck_assert(status == HW_OK || status == HW_ERR_NOMEM);
    }
    json_set_alloc_funcs(malloc, free);
    ck_assert_int_gt(refuse_at, 1000);
    ck_assert_int_lt(grabs, refuse_at); /* only the run that was refused nothing succeeded */
}
END_TEST

/* Ten times the tables take no more of the library's memory at one time. */
START_TEST(long_lists_take_little)
{
    hw_tables tables = example_tables(&e, &arena);
    hw_tables more = { hw_arena_get(&arena, 10 * (size_t)tables.count, sizeof *more.tables),
        10 * tables.count };
    ck_assert_ptr_nonnull(more.tables);
    for (int i = 0; i < more.count; i++) {
        more.tables[i] = tables.tables[i % tables.count];
    }
    json_set_alloc_funcs(grab, drop);
    refuse_at = 0;
    most = 0;
    ck_assert_int_eq(hw_json_plan(&e.plan, &tables, &arena, &buf), HW_OK);
    long once = most;
    most = 0;
    ck_assert_int_eq(hw_json_plan(&e.plan, &more, &arena, &buf), HW_OK);
    json_set_alloc_funcs(malloc, free);
    ck_assert_int_eq(live, 0);
    ck_assert_int_gt(once, 100);
    ck_assert_int_eq(most, once);
}
END_TEST

/* A row of a table is a line of the document, whatever stands in its texts: own choice. */
START_TEST(a_row_is_a_line)
{
    hw_cell cells[] = {
        { .kind = HW_CELL_TEXT, .text = "7\n  [ 8,\n]" },
        { .kind = HW_CELL_COUNT, .number = -3 },
        { .kind = HW_CELL_EMPTY },
        { .kind = HW_CELL_TEXT, .text = "{}" },
    };
    hw_table table = { .name = "-1", .rows = 2, .columns = 2, .cells = cells };
    hw_tables tables = { &table, 1 };
    ck_assert_int_eq(hw_json_plan(&e.plan, &tables, &arena, &buf), HW_OK);
    const char *found = strstr(buf.text, " \"tables\": [");
    ck_assert_ptr_nonnull(found);
    ck_assert_str_eq(found, " \"tables\": [\n"
                            "  {\n"
                            "   \"name\": \"-1\",\n"
                            "   \"rows\": 2,\n"
                            "   \"columns\": 2,\n"
                            "   \"cells\": [\n"
                            "    [\"7\\n  [ 8,\\n]\", -3],\n"
                            "    [null, \"{}\"]\n"
                            "   ]\n"
                            "  }\n"
                            " ]\n"
                            "}\n");
}
END_TEST

START_TEST(refusals)
{
    hw_tables tables = example_tables(&e, &arena);
    hw_buf small;
    hw_buf_init(&small, &mem, 2000);
    ck_assert_int_eq(hw_json_plan(&e.plan, &tables, &arena, &small), HW_ERR_LIMIT);
    hw_buf_release(&small);
    hw_arena poor;
    hw_check_heap none;
    hw_check_open(&poor, &none, 3, true); /* needles' names need room */
    hw_buf_init(&small, &mem, HW_BUF_LIMIT);
    ck_assert_int_eq(hw_json_plan(&e.plan, &tables, &poor, &small), HW_ERR_NOMEM);
    hw_buf_release(&small);
    hw_check_close(&poor, &none);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { keys_in_order, fits, the_rest, unknown_is_null,
        tables_cell_by_cell, same_bytes, library_refused_memory, long_lists_take_little,
        a_row_is_a_line, refusals };
    return fixture_run("json", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
