/* Shapes added one by one to a list that doubles its room, and the table of their looks.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/drawing.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { FIRST_ROOM = 64, MOST_SHAPES = 2000000 };

enum {
    INK_BLACK = 0x1a1a1a,
    INK_GREY = 0x606060,
    INK_DARK = 0x2c3e68,
    INK_DARKER = 0x182446,
    INK_LIGHT = 0xf2ead8,
    INK_LESS_LIGHT = 0xe2d0ac,
    INK_SHADOW = 0x969088,
    INK_PALE = 0xf6f6f4,
    INK_SHADE = 0xd8dce2,
    INK_WHITE = 0xffffff
};

static const double character_ems = 0.6;

/* Own choice [V1]: dark on light, so that both print in grey. */
static const hw_look_style looks[] = {
    [HW_LOOK_OUTLINE] = { .name = "outline", .line_mm = 0.5, .line = INK_BLACK },
    [HW_LOOK_PIECE] = { .name = "piece", .filled = true, .fill = INK_PALE },
    [HW_LOOK_SHADE] = { .name = "shade", .filled = true, .fill = INK_SHADE },
    [HW_LOOK_THIN] = { .name = "thin", .line_mm = 0.18, .line = INK_GREY },
    [HW_LOOK_DASHED] = { .name = "dashed", .line_mm = 0.18, .dashed = true, .line = INK_GREY },
    [HW_LOOK_CUT] = { .name = "cut", .line_mm = 0.25, .dashed = true, .line = INK_BLACK },
    [HW_LOOK_SOLID] = { .name = "solid", .filled = true, .fill = INK_BLACK },
    [HW_LOOK_BACKGROUND_SQUARE] = { .name = "background-square",
        .line_mm = 0.12,
        .line = INK_GREY,
        .filled = true,
        .fill = INK_WHITE },
    [HW_LOOK_CONTRAST_SQUARE] = { .name = "contrast-square",
        .line_mm = 0.12,
        .line = INK_GREY,
        .filled = true,
        .fill = INK_DARK },
    [HW_LOOK_FABRIC] = { .name = "fabric", .filled = true, .fill = INK_SHADOW },
    [HW_LOOK_BACKGROUND_STITCH] = { .name = "background-stitch",
        .line_mm = 0.8,
        .line = INK_LIGHT },
    [HW_LOOK_CONTRAST_STITCH] = { .name = "contrast-stitch", .line_mm = 0.8, .line = INK_DARK },
    [HW_LOOK_BACKGROUND_BUMP] = { .name = "background-bump", .line_mm = 0.8, .line = INK_LIGHT },
    [HW_LOOK_CONTRAST_BUMP] = { .name = "contrast-bump", .line_mm = 0.8, .line = INK_DARK },
    [HW_LOOK_BACKGROUND_FLOAT] = { .name = "background-float",
        .line_mm = 0.5,
        .line = INK_LESS_LIGHT },
    [HW_LOOK_CONTRAST_FLOAT] = { .name = "contrast-float", .line_mm = 0.5, .line = INK_DARKER },
    [HW_LOOK_TITLE] = { .name = "title",
        .font_mm = 5,
        .bold = true,
        .filled = true,
        .fill = INK_BLACK },
    [HW_LOOK_NAME] = { .name = "name",
        .font_mm = 3.6,
        .bold = true,
        .filled = true,
        .fill = INK_BLACK },
    [HW_LOOK_WORDS] = { .name = "words", .font_mm = 3.2, .filled = true, .fill = INK_BLACK },
    [HW_LOOK_SMALL] = { .name = "small", .font_mm = 2.6, .filled = true, .fill = INK_BLACK },
};
_Static_assert(sizeof looks / sizeof looks[0] == HW_LOOK_COUNT, "a row for each look");

const hw_look_style *hw_look_of(hw_look look)
{
    assert(look < HW_LOOK_COUNT);
    return &looks[look];
}

/* Of UTF-8, bytes 10xxxxxx go on with a character. */
static int characters(const char *text)
{
    int count = 0;
    for (; *text != '\0'; text++) {
        count += ((unsigned char)*text & 0xC0U) != 0x80U ? 1 : 0;
    }
    return count;
}

double hw_look_width_mm(hw_look look, const char *text)
{
    return characters(text) * character_ems * hw_look_of(look)->font_mm;
}

void hw_drawing_begin(hw_drawing *drawing, hw_arena *arena, const char *title)
{
    *drawing = (hw_drawing){ .arena = arena, .title = title, .status = HW_OK };
    if (title == NULL) {
        drawing->title = "";
        drawing->status = HW_ERR_NOMEM;
    }
}

static void fail(hw_drawing *drawing, hw_status status)
{
    if (drawing->status == HW_OK) {
        drawing->status = status;
    }
}

/* False for NaN too. */
static bool within(double mm)
{
    return fabs(mm) <= HW_DRAWING_MAX_MM;
}

void hw_drawing_size(hw_drawing *drawing, double width_mm, double height_mm)
{
    if (!within(width_mm) || !within(height_mm)) {
        fail(drawing, HW_ERR_RANGE);
        return;
    }
    drawing->width_mm = width_mm;
    drawing->height_mm = height_mm;
}

void hw_drawing_pen(hw_drawing *drawing, double line_mm)
{
    if (!within(line_mm)) {
        fail(drawing, HW_ERR_RANGE);
        return;
    }
    drawing->pen_mm = line_mm;
}

void hw_drawing_refuse(hw_drawing *drawing)
{
    fail(drawing, HW_ERR_NOMEM);
}

static bool widen(hw_drawing *drawing)
{
    if (drawing->room >= MOST_SHAPES) {
        fail(drawing, HW_ERR_LIMIT);
        return false;
    }
    int room = drawing->room == 0 ? FIRST_ROOM : 2 * drawing->room;
    hw_drawn *list = hw_arena_get(drawing->arena, (size_t)room, sizeof *list);
    if (list == NULL) {
        hw_drawing_refuse(drawing);
        return false;
    }
    if (drawing->count > 0) {
        memcpy(list, drawing->list, (size_t)drawing->count * sizeof *list);
    }
    drawing->list = list;
    drawing->room = room;
    return true;
}

static void add(hw_drawing *drawing, hw_drawn drawn)
{
    if (!within(drawn.at.x_mm) || !within(drawn.at.y_mm) || !within(drawn.to.x_mm) ||
        !within(drawn.to.y_mm) || !within(drawn.radius_mm)) {
        fail(drawing, HW_ERR_RANGE);
    }
    if (drawing->status != HW_OK || (drawing->count == drawing->room && !widen(drawing))) {
        return;
    }
    drawn.line_mm = drawing->pen_mm;
    drawing->list[drawing->count++] = drawn;
}

void hw_drawing_rect(hw_drawing *drawing, hw_look look, hw_point at, hw_point to)
{
    add(drawing, (hw_drawn){ .kind = HW_DRAWN_RECT, .look = look, .at = at, .to = to });
}

void hw_drawing_line(hw_drawing *drawing, hw_look look, hw_point at, hw_point to)
{
    add(drawing, (hw_drawn){ .kind = HW_DRAWN_LINE, .look = look, .at = at, .to = to });
}

static void add_points(hw_drawing *drawing, hw_drawn drawn, const hw_point *points)
{
    if (points == NULL) {
        hw_drawing_refuse(drawing);
        return;
    }
    assert(drawn.count > 1);
    for (int i = 0; i < drawn.count; i++) {
        if (!within(points[i].x_mm) || !within(points[i].y_mm)) {
            fail(drawing, HW_ERR_RANGE);
        }
    }
    if (drawing->status != HW_OK) {
        return;
    }
    hw_point *copy = hw_arena_get(drawing->arena, (size_t)drawn.count, sizeof *copy);
    if (copy == NULL) {
        hw_drawing_refuse(drawing);
        return;
    }
    memcpy(copy, points, (size_t)drawn.count * sizeof *copy);
    drawn.points = copy;
    drawn.at = points[0];
    drawn.to = points[drawn.count - 1];
    add(drawing, drawn);
}

void hw_drawing_polyline(hw_drawing *drawing, hw_look look, const hw_point *points, int count)
{
    add_points(
        drawing, (hw_drawn){ .kind = HW_DRAWN_POLYLINE, .look = look, .count = count }, points);
}

void hw_drawing_polygon(hw_drawing *drawing, hw_look look, const hw_point *points, int count)
{
    add_points(
        drawing, (hw_drawn){ .kind = HW_DRAWN_POLYGON, .look = look, .count = count }, points);
}

void hw_drawing_disc(hw_drawing *drawing, hw_look look, hw_point at, double radius_mm)
{
    add(drawing,
        (hw_drawn){
            .kind = HW_DRAWN_DISC, .look = look, .at = at, .to = at, .radius_mm = radius_mm });
}

void hw_drawing_words(
    hw_drawing *drawing, hw_look look, hw_point at, hw_align align, const char *text)
{
    assert(hw_look_of(look)->font_mm > 0);
    if (text == NULL) {
        hw_drawing_refuse(drawing);
        return;
    }
    add(drawing, (hw_drawn){ .kind = HW_DRAWN_WORDS,
                     .look = look,
                     .at = at,
                     .to = at,
                     .align = align,
                     .text = text });
}

hw_status hw_drawing_status(const hw_drawing *drawing)
{
    return drawing->status;
}
