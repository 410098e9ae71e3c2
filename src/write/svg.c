/* Shapes as SVG elements, grouped by look.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/svg.h"

#include <assert.h>

#include "core/num.h"

enum { DECIMALS = 3 };

/* `before`, a number, `after`. */
static void number(hw_buf *buf, const char *before, double x, const char *after)
{
    hw_buf_text(buf, before);
    hw_num_show(buf, x, DECIMALS);
    hw_buf_text(buf, after);
}

/* Text as XML holds it; control characters, which it may not hold, as blanks. */
static void escaped(hw_buf *buf, const char *text)
{
    static const struct {
        char sign;
        const char *written;
    } table[] = { { '&', "&amp;" }, { '<', "&lt;" }, { '>', "&gt;" }, { '"', "&quot;" } };
    for (; *text != '\0'; text++) {
        const char *written = (unsigned char)*text < ' ' ? " " : NULL;
        for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
            written = table[i].sign == *text ? table[i].written : written;
        }
        if (written != NULL) {
            hw_buf_text(buf, written);
        } else {
            hw_buf_bytes(buf, text, 1);
        }
    }
}

static void colour(hw_buf *buf, const char *what, bool any, unsigned ink)
{
    if (any) {
        hw_buf_format(buf, " %s=\"#%06x\"", what, ink);
    } else {
        hw_buf_format(buf, " %s=\"none\"", what);
    }
}

static void group_begin(hw_buf *buf, const hw_drawn *drawn)
{
    const hw_look_style *look = hw_look_of(drawn->look);
    double line_mm = drawn->line_mm > 0 ? drawn->line_mm : look->line_mm;
    bool has_line = look->line_mm > 0;
    hw_buf_format(buf, "<g class=\"%s\"", look->name);
    colour(buf, "fill", look->filled, look->fill);
    if (has_line) {
        colour(buf, "stroke", true, look->line);
        number(buf, " stroke-width=\"", line_mm, "\"");
        hw_buf_text(buf, " stroke-linecap=\"round\" stroke-linejoin=\"round\"");
    }
    if (has_line && look->dashed) {
        number(buf, " stroke-dasharray=\"", HW_DASH_LINES * line_mm, "\"");
    }
    if (look->font_mm > 0) {
        number(buf, " font-size=\"", look->font_mm, "\"");
        hw_buf_text(buf, look->bold ? " font-weight=\"bold\"" : "");
    }
    hw_buf_text(buf, ">\n");
}

static void rect(hw_buf *buf, const hw_drawn *drawn)
{
    number(buf, "<rect x=\"", drawn->at.x_mm, "\"");
    number(buf, " y=\"", drawn->at.y_mm, "\"");
    number(buf, " width=\"", drawn->to.x_mm - drawn->at.x_mm, "\"");
    number(buf, " height=\"", drawn->to.y_mm - drawn->at.y_mm, "\"/>\n");
}

static void line(hw_buf *buf, const hw_drawn *drawn)
{
    number(buf, "<line x1=\"", drawn->at.x_mm, "\"");
    number(buf, " y1=\"", drawn->at.y_mm, "\"");
    number(buf, " x2=\"", drawn->to.x_mm, "\"");
    number(buf, " y2=\"", drawn->to.y_mm, "\"/>\n");
}

static void points(hw_buf *buf, const hw_drawn *drawn)
{
    for (int i = 0; i < drawn->count; i++) {
        number(buf, i > 0 ? " " : "", drawn->points[i].x_mm, ",");
        number(buf, "", drawn->points[i].y_mm, "");
    }
    hw_buf_text(buf, "\"/>\n");
}

static void polyline(hw_buf *buf, const hw_drawn *drawn)
{
    hw_buf_text(buf, "<polyline points=\"");
    points(buf, drawn);
}

static void polygon(hw_buf *buf, const hw_drawn *drawn)
{
    hw_buf_text(buf, "<polygon points=\"");
    points(buf, drawn);
}

static void disc(hw_buf *buf, const hw_drawn *drawn)
{
    number(buf, "<circle cx=\"", drawn->at.x_mm, "\"");
    number(buf, " cy=\"", drawn->at.y_mm, "\"");
    number(buf, " r=\"", drawn->radius_mm, "\"/>\n");
}

static void words(hw_buf *buf, const hw_drawn *drawn)
{
    static const char *const anchors[] = {
        [HW_ALIGN_START] = "",
        [HW_ALIGN_MIDDLE] = " text-anchor=\"middle\"",
        [HW_ALIGN_END] = " text-anchor=\"end\"",
    };
    _Static_assert(sizeof anchors / sizeof anchors[0] == HW_ALIGN_COUNT, "one for each");
    number(buf, "<text x=\"", drawn->at.x_mm, "\"");
    number(buf, " y=\"", drawn->at.y_mm, "\"");
    hw_buf_text(buf, anchors[drawn->align]);
    hw_buf_text(buf, ">");
    escaped(buf, drawn->text);
    hw_buf_text(buf, "</text>\n");
}

static void (*const shapes[])(hw_buf *buf, const hw_drawn *drawn) = {
    [HW_DRAWN_RECT] = rect,
    [HW_DRAWN_LINE] = line,
    [HW_DRAWN_POLYLINE] = polyline,
    [HW_DRAWN_POLYGON] = polygon,
    [HW_DRAWN_DISC] = disc,
    [HW_DRAWN_WORDS] = words,
};
_Static_assert(sizeof shapes / sizeof shapes[0] == HW_DRAWN_COUNT, "a writer for each kind");

static bool same_group(const hw_drawn *a, const hw_drawn *b)
{
    return a->look == b->look && !(a->line_mm < b->line_mm) && !(a->line_mm > b->line_mm);
}

static void head(hw_buf *buf, const hw_drawing *drawing)
{
    hw_buf_text(buf, "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
    number(buf, " width=\"", drawing->width_mm, "mm\"");
    number(buf, " height=\"", drawing->height_mm, "mm\"");
    number(buf, " viewBox=\"0 0 ", drawing->width_mm, " ");
    number(buf, "", drawing->height_mm, "\" font-family=\"sans-serif\">\n<title>");
    escaped(buf, drawing->title);
    hw_buf_text(buf, "</title>\n<rect class=\"paper\" width=\"100%\" height=\"100%\" "
                     "fill=\"#ffffff\"/>\n");
}

hw_status hw_svg_write(const hw_drawing *drawing, hw_buf *buf)
{
    assert(drawing->status == HW_OK && drawing->width_mm > 0 && drawing->height_mm > 0);
    head(buf, drawing);
    for (int i = 0; i < drawing->count; i++) {
        const hw_drawn *drawn = &drawing->list[i];
        if (i == 0 || !same_group(drawn, drawn - 1)) {
            hw_buf_text(buf, i > 0 ? "</g>\n" : "");
            group_begin(buf, drawn);
        }
        shapes[drawn->kind](buf, drawn);
    }
    hw_buf_text(buf, drawing->count > 0 ? "</g>\n</svg>\n" : "</svg>\n");
    return hw_buf_status(buf);
}
