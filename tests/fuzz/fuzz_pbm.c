/* Any bytes as a portable bitmap: what is read is written both ways and reads back the same.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source of what must hold: own choice. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "read/datafile.h"
#include "read/pbm.h"
#include "write/motifyaml.h"
#include "write/pbm.h"

const char hw_fuzz_corpus[] = "pbm";

static void must_hold(bool held, const char *what)
{
    if (!held) {
        (void)fprintf(stderr, "does not hold: %s\n", what);
        abort();
    }
}

static bool same(const hw_chart *a, const hw_chart *b)
{
    return a->width == b->width && a->rows == b->rows &&
           memcmp(a->cells, b->cells, (size_t)a->width * (size_t)a->rows) == 0;
}

static void check_again(const hw_chart *chart, hw_arena *arena, const hw_mem *mem)
{
    hw_chart bitmap;
    hw_motif_input written = { .chart = *chart, .gap = chart->rows % 3 };
    hw_motif_input motif;
    hw_buf buf;
    must_hold(chart->width <= HW_MAX_CHART_COLUMNS && chart->rows <= HW_MAX_CHART_ROWS, "limits");
    hw_buf_init(&buf, mem, HW_YAML_MAX_BYTES);
    must_hold(hw_pbm_write(chart, &buf) == HW_OK, "a chart can be written");
    must_hold(
        hw_pbm_read(&(hw_pbm_file){ buf.text, buf.len, "again" }, arena, &bitmap, NULL) == HW_OK &&
            same(chart, &bitmap),
        "a written bitmap reads back the same");
    hw_buf_release(&buf);
    hw_buf_init(&buf, mem, HW_YAML_MAX_BYTES);
    must_hold(hw_motifyaml_write(&written, &buf) == HW_OK, "a motif file can be written");
    /* The widest charts leave no room for a gap. */
    bool fits = written.chart.width + written.gap <= HW_MAX_CHART_COLUMNS;
    hw_status status = hw_motif_read(buf.text, buf.len, arena, &motif, NULL);
    must_hold(fits == (status == HW_OK), "a motif file reads back");
    must_hold(!fits || (motif.gap == written.gap && same(chart, &motif.chart)),
        "a motif file reads back the same");
    hw_buf_release(&buf);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_chart chart;
    hw_err err = { 0 };
    hw_arena_init(&arena, &mem, 0);
    hw_pbm_file file = { (const char *)data, size, "it's a picture: #1" };
    if (hw_pbm_read(&file, &arena, &chart, &err) == HW_OK) {
        check_again(&chart, &arena, &mem);
    } else {
        must_hold(err.code != HW_OK && err.text[0] != '\0', "a failure is told");
        must_hold(hw_yaml_is_text(err.text, strlen(err.text)), "a message is text");
    }
    hw_arena_release(&arena);
    return 0;
}
