/* Ones and zeros, row by row.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/pbm.h"

enum { LONGEST_LINE = 70 };

hw_status hw_pbm_write(const hw_chart *chart, hw_buf *buf)
{
    hw_buf_format(buf, "P1\n%d %d\n", chart->width, chart->rows);
    for (int row = 0; row < chart->rows; row++) {
        for (int column = 0; column < chart->width; column++) {
            bool contrast = chart->cells[row * chart->width + column] == HW_CONTRAST;
            hw_buf_text(buf, column > 0 && column % LONGEST_LINE == 0 ? "\n" : "");
            hw_buf_text(buf, contrast ? "1" : "0");
        }
        hw_buf_text(buf, "\n");
    }
    return hw_buf_status(buf);
}
