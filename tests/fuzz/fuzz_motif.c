/* Any text as a motif file: what is read is drawn again and read again, and its properties hold.
 * SPDX-License-Identifier: GPL-3.0-or-later
 * Source of what must hold: own choice; the definitions stand in core/motif.h. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "read/datafile.h"
#include "read/yaml.h"

const char hw_fuzz_corpus[] = "motif";

static void must_hold(bool held, const char *what)
{
    if (!held) {
        (void)fprintf(stderr, "does not hold: %s\n", what);
        abort();
    }
}

/* The chart as a motif file. */
static void draw(const hw_motif_input *motif, hw_buf *buf)
{
    hw_buf_text(buf, "title: again\nchart: |\n");
    for (int row = 0; row < motif->chart.rows; row++) {
        hw_buf_text(buf, "  ");
        for (int column = 0; column < motif->chart.width; column++) {
            bool contrast = motif->chart.cells[row * motif->chart.width + column] == HW_CONTRAST;
            hw_buf_text(buf, contrast ? "o" : ".");
        }
        hw_buf_text(buf, "\n");
    }
    hw_buf_format(buf, "gap: %d\n", motif->gap);
}

static void check_again(const hw_motif_input *motif, hw_arena *arena, const hw_mem *mem)
{
    hw_buf buf;
    hw_motif_input again;
    hw_buf_init(&buf, mem, HW_YAML_MAX_BYTES);
    draw(motif, &buf);
    must_hold(hw_buf_status(&buf) == HW_OK, "a chart can be drawn");
    must_hold(hw_motif_read(buf.text, buf.len, arena, &again, NULL) == HW_OK,
        "what was drawn can be read");
    size_t cells = (size_t)motif->chart.width * (size_t)motif->chart.rows;
    must_hold(again.chart.width == motif->chart.width && again.chart.rows == motif->chart.rows &&
                  again.gap == motif->gap &&
                  memcmp(again.chart.cells, motif->chart.cells, cells) == 0,
        "what was drawn reads back the same");
    hw_buf_release(&buf);
}

static void check_row(const hw_motif *motif, int row)
{
    int contrast_sts = 0;
    for (int column = 0; column < motif->repeat; column++) {
        contrast_sts += hw_motif_at(motif, row, column) == HW_CONTRAST ? 1 : 0;
    }
    must_hold(motif->rows[row].contrast_sts == contrast_sts, "contrast stitches of a row");
    for (int colour = 0; colour < HW_COLOUR_COUNT; colour++) {
        int longest = motif->rows[row].longest_float[colour];
        must_hold(longest >= 0 && longest < motif->repeat, "a float is shorter than the repeat");
        must_hold(longest <= motif->longest_float[colour], "the longest float is the longest");
    }
}

static void check_axes(const hw_motif *motif)
{
    for (int axis = 0; axis < motif->axis_count; axis++) {
        for (int row = 0; row < motif->chart.rows; row++) {
            for (int column = 0; column < motif->repeat; column++) {
                int mirrored = motif->axes[axis] - 1 - column;
                must_hold(hw_motif_at(motif, row, column) == hw_motif_at(motif, row, mirrored),
                    "a mirror line mirrors");
            }
        }
    }
}

static void check_motif(const hw_motif_input *input, int card_columns, hw_arena *arena)
{
    hw_motif motif;
    must_hold(hw_motif_analyse(&input->chart, input->gap, card_columns, arena, &motif) == HW_OK,
        "a motif that was read is looked at");
    must_hold(motif.repeat == input->chart.width + input->gap, "figure and gap are the repeat");
    for (int row = 0; row < motif.chart.rows; row++) {
        check_row(&motif, row);
    }
    check_axes(&motif);
    must_hold(motif.contrast_share > 0 && motif.contrast_share <= 1, "a share of contrast");
    for (int i = 0; i < motif.card_gap_count; i++) {
        must_hold(card_columns % (motif.chart.width + motif.card_gaps[i]) == 0,
            "a gap that fits the card fits it");
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    hw_mem mem = hw_mem_system();
    hw_arena arena;
    hw_motif_input motif;
    hw_err err = { 0 };
    hw_arena_init(&arena, &mem, 0);
    if (hw_motif_read((const char *)data, size, &arena, &motif, &err) == HW_OK) {
        check_again(&motif, &arena, &mem);
        check_motif(&motif, 24, &arena);
        check_motif(&motif, 0, &arena);
    } else {
        must_hold(err.code != HW_OK && err.text[0] != '\0', "a failure is told");
        must_hold(hw_yaml_is_text(err.text, strlen(err.text)), "a message is text");
    }
    hw_arena_release(&arena);
    return 0;
}
