/* Tables as comma-separated values.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/csv.h"

#include <string.h>

#include "write/columns.h"

static void quoted(hw_buf *buf, const char *before, const char *text)
{
    hw_buf_text(buf, "\"");
    hw_buf_text(buf, before);
    for (size_t len = 0; *text != '\0'; text += len) {
        len = strcspn(text, "\"");
        hw_buf_bytes(buf, text, len);
        if (text[len] == '"') {
            hw_buf_text(buf, "\"\"");
            len++;
        }
    }
    hw_buf_text(buf, "\"");
}

static void field(hw_buf *buf, const char *text)
{
    const char *before = *text != '\0' && strchr("=+-@\t\r", *text) != NULL ? "'" : "";
    if (strpbrk(text, ",\"\r\n") != NULL) {
        quoted(buf, before, text);
        return;
    }
    hw_buf_text(buf, before);
    hw_buf_text(buf, text);
}

static void cell(hw_buf *buf, const hw_cell *c)
{
    char room[HW_COLUMNS_CELL_ROOM];
    const char *text = hw_columns_cell(c, room);
    if (c->kind == HW_CELL_TEXT) {
        field(buf, text);
    } else {
        hw_buf_text(buf, text);
    }
}

static void table_rows(hw_buf *buf, const hw_table *table)
{
    for (int r = 0; r < table->rows; r++) {
        for (int c = 0; c < table->columns; c++) {
            hw_buf_text(buf, c > 0 ? "," : "");
            cell(buf, hw_cells_at(table, r, c));
        }
        hw_buf_text(buf, "\r\n");
    }
}

hw_status hw_csv_tables(const hw_tables *tables, hw_buf *buf)
{
    for (int i = 0; i < tables->count; i++) {
        field(buf, tables->tables[i].name);
        hw_buf_text(buf, "\r\n");
        table_rows(buf, &tables->tables[i]);
        hw_buf_text(buf, "\r\n");
    }
    return hw_buf_status(buf);
}
