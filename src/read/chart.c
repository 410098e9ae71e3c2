/* Rows of letters into cells.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/chart.h"

#include <string.h>

typedef struct {
    const hw_node *node;
    hw_err *err;
} reading;

/* Row and column from 0, in the chart; the block begins on the line below its key. */
static hw_status fail(const reading *r, hw_status status, int row, int column)
{
    return hw_err_place(
        r->err, status, r->node->line + 1 + row, r->node->block_indent + 1 + column);
}

static hw_status other_sign(const reading *r, int row, int column, const char *sign)
{
    bool blank = *sign == ' ' || *sign == '\t';
    size_t bytes = 1;
    while (((unsigned char)sign[bytes] & 0xC0) == 0x80) {
        bytes++;
    }
    (void)hw_err_set(r->err, HW_ERR_SYNTAX,
        "row %d of the chart: %s%.*s%s stands here; write `o` for contrast and `.` for background, "
        "with no blanks between or behind them",
        row + 1, blank ? "" : "`", blank ? 7 : (int)bytes, blank ? "a blank" : sign,
        blank ? "" : "`");
    return fail(r, HW_ERR_SYNTAX, row, column);
}

static hw_status check_shape(const reading *r, const char *text, int *width, int *rows)
{
    *width = (int)strcspn(text, "\n");
    *rows = 0;
    for (const char *line = text; *line != '\0'; (*rows)++) {
        int len = (int)strcspn(line, "\n");
        int good = (int)strspn(line, "o.");
        if (good < len) {
            return other_sign(r, *rows, good, line + good);
        }
        if (len == 0) {
            (void)hw_err_set(r->err, HW_ERR_SYNTAX,
                "row %d of the chart is an empty line; take it out, or draw a row of background "
                "with `.`",
                *rows + 1);
            return fail(r, HW_ERR_SYNTAX, *rows, 0);
        }
        if (len != *width) {
            (void)hw_err_set(r->err, HW_ERR_SYNTAX,
                "row %d of the chart has %d columns and row 1 has %d; make all rows equally long",
                *rows + 1, len, *width);
            return fail(r, HW_ERR_SYNTAX, *rows, len < *width ? len : *width);
        }
        if (*rows + 1 > HW_MAX_CHART_ROWS || *width > HW_MAX_CHART_COLUMNS) {
            (void)hw_err_set(r->err, HW_ERR_LIMIT,
                "the chart is too large; draw at most %d columns and %d rows", HW_MAX_CHART_COLUMNS,
                HW_MAX_CHART_ROWS);
            return fail(r, HW_ERR_LIMIT, *rows, 0);
        }
        line += len + (line[len] == '\n');
    }
    return HW_OK;
}

hw_status hw_chart_read(
    const hw_node *node, const char *name, hw_arena *arena, hw_chart *out, hw_err *err)
{
    reading r = { .node = node, .err = err };
    if (!node->block) {
        (void)hw_err_set(err, HW_ERR_KIND, "%s",
            "write `chart: |` and the rows on the lines below it, indented");
        return hw_err_place(err, HW_ERR_KIND, node->line, node->column);
    }
    if (strspn(node->text, "\n") == node->len) {
        (void)hw_err_set(err, HW_ERR_SYNTAX, "%s",
            "the chart is empty; draw it with `o` and `.` on the lines below, indented");
        return hw_err_place(err, HW_ERR_SYNTAX, node->line, node->column);
    }
    int width = 0;
    int rows = 0;
    hw_status status = check_shape(&r, node->text, &width, &rows);
    if (status != HW_OK) {
        return status;
    }
    if (strchr(node->text, 'o') == NULL) {
        (void)hw_err_set(
            err, HW_ERR_SYNTAX, "%s", "the chart has no contrast stitch; draw the figure with `o`");
        return fail(&r, HW_ERR_SYNTAX, 0, 0);
    }
    unsigned char *cells = hw_arena_get(arena, (size_t)width * (size_t)rows, 1);
    if (cells == NULL) {
        return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for the chart");
    }
    const char *text = node->text;
    for (int i = 0; i < width * rows; text++) {
        if (*text != '\n') {
            cells[i++] = *text == 'o' ? HW_CONTRAST : HW_BACKGROUND;
        }
    }
    *out = (hw_chart){ .name = name, .width = width, .rows = rows, .cells = cells };
    return HW_OK;
}
