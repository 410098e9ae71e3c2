/* Keys and a drawn chart.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/motifyaml.h"

/* Between quotes, in which a quote stands twice. */
static void quoted(hw_buf *buf, const char *text)
{
    hw_buf_text(buf, "'");
    for (; *text != '\0'; text++) {
        hw_buf_text(buf, *text == '\'' ? "'" : "");
        hw_buf_bytes(buf, text, 1);
    }
    hw_buf_text(buf, "'");
}

hw_status hw_motifyaml_write(const hw_motif_input *motif, hw_buf *buf)
{
    const hw_chart *chart = &motif->chart;
    hw_buf_text(buf, "title: ");
    quoted(buf, chart->name);
    hw_buf_text(buf, "\nchart: |\n");
    for (int row = 0; row < chart->rows; row++) {
        hw_buf_text(buf, "  ");
        for (int column = 0; column < chart->width; column++) {
            bool contrast = chart->cells[row * chart->width + column] == HW_CONTRAST;
            hw_buf_text(buf, contrast ? "o" : ".");
        }
        hw_buf_text(buf, "\n");
    }
    hw_buf_format(buf, "gap: %d\nsource: own drawing\n", motif->gap);
    return hw_buf_status(buf);
}
