/* What the suites of drawings share: a picture's text parsed by expat, and its shapes counted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawn.h"

#include <expat.h>
#include <stdlib.h>
#include <string.h>

#include "support.h"
#include "write/svg.h"

enum { TEXT_ROOM = 512 };

int drawn_count(const hw_drawing *drawing, hw_drawn_kind kind, hw_look look)
{
    int count = 0;
    for (int i = 0; i < drawing->count; i++) {
        count += drawing->list[i].kind == kind && drawing->list[i].look == look ? 1 : 0;
    }
    return count;
}

const hw_drawn *drawn_at(const hw_drawing *drawing, hw_drawn_kind kind, hw_look look, int n)
{
    for (int i = 0; i < drawing->count; i++) {
        const hw_drawn *drawn = &drawing->list[i];
        if (drawn->kind == kind && drawn->look == look && n-- == 0) {
            return drawn;
        }
    }
    ck_abort_msg("too few shapes");
    return NULL;
}

const hw_drawn *drawn_words(const hw_drawing *drawing, const char *text)
{
    for (int i = 0; i < drawing->count; i++) {
        const hw_drawn *drawn = &drawing->list[i];
        if (drawn->kind == HW_DRAWN_WORDS && strcmp(drawn->text, text) == 0) {
            return drawn;
        }
    }
    return NULL;
}

/* What has been read so far. */
typedef struct {
    const hw_drawing *drawing;
    int next; /* the drawing's shape that must come next */
    int depth;
    bool in_text;
    char text[TEXT_ROOM];
    size_t len;
} reading;

static double attribute(const XML_Char **attributes, const char *name)
{
    for (int i = 0; attributes[i] != NULL; i += 2) {
        if (strcmp(attributes[i], name) == 0) {
            char *end = NULL;
            double x = strtod(attributes[i + 1], &end);
            ck_assert(end != attributes[i + 1]);
            return x;
        }
    }
    ck_abort_msg("no %s", name);
    return 0;
}

static void near(double found, double expected)
{
    ck_assert_double_eq_tol(found, expected, 0.0006); /* three decimals */
}

static void is_shape(reading *r, const char *name, const XML_Char **attributes)
{
    static const struct {
        const char *element, *x, *y;
    } kinds[] = {
        [HW_DRAWN_RECT] = { "rect", "x", "y" },
        [HW_DRAWN_LINE] = { "line", "x1", "y1" },
        [HW_DRAWN_POLYLINE] = { "polyline", NULL, NULL },
        [HW_DRAWN_POLYGON] = { "polygon", NULL, NULL },
        [HW_DRAWN_DISC] = { "circle", "cx", "cy" },
        [HW_DRAWN_WORDS] = { "text", "x", "y" },
    };
    ck_assert_int_lt(r->next, r->drawing->count);
    const hw_drawn *drawn = &r->drawing->list[r->next++];
    ck_assert_str_eq(name, kinds[drawn->kind].element);
    if (kinds[drawn->kind].x != NULL) {
        near(attribute(attributes, kinds[drawn->kind].x), drawn->at.x_mm);
        near(attribute(attributes, kinds[drawn->kind].y), drawn->at.y_mm);
    } else {
        ck_assert_str_eq(attributes[0], "points");
    }
    r->in_text = drawn->kind == HW_DRAWN_WORDS;
    r->len = 0;
}

static void XMLCALL starts(void *data, const XML_Char *name, const XML_Char **attributes)
{
    reading *r = data;
    r->depth++;
    if (r->depth == 1) {
        ck_assert_str_eq(name, "svg");
        near(attribute(attributes, "width"), r->drawing->width_mm);
        near(attribute(attributes, "height"), r->drawing->height_mm);
    } else if (r->depth == 2) {
        ck_assert(
            strcmp(name, "g") == 0 || strcmp(name, "title") == 0 || strcmp(name, "rect") == 0);
        r->in_text = strcmp(name, "title") == 0;
        r->len = 0;
    } else {
        ck_assert_int_eq(r->depth, 3);
        is_shape(r, name, attributes);
    }
}

static void XMLCALL ends(void *data, const XML_Char *name)
{
    reading *r = data;
    (void)name;
    if (r->in_text) {
        r->text[r->len] = '\0';
        ck_assert_str_eq(
            r->text, r->depth == 2 ? r->drawing->title : r->drawing->list[r->next - 1].text);
    }
    r->in_text = false;
    r->depth--;
}

static void XMLCALL says(void *data, const XML_Char *text, int len)
{
    reading *r = data;
    if (r->in_text) {
        ck_assert(r->len + (size_t)len < TEXT_ROOM);
        memcpy(&r->text[r->len], text, (size_t)len);
        r->len += (size_t)len;
    }
}

void drawn_parses(const hw_drawing *drawing)
{
    hw_mem mem = hw_mem_system();
    hw_buf buf;
    hw_buf_init(&buf, &mem, HW_BUF_LIMIT);
    ck_assert_int_eq(hw_svg_write(drawing, &buf), HW_OK);
    reading r = { .drawing = drawing };
    XML_Parser parser = XML_ParserCreate(NULL);
    ck_assert_ptr_nonnull(parser);
    XML_SetUserData(parser, &r);
    XML_SetElementHandler(parser, starts, ends);
    XML_SetCharacterDataHandler(parser, says);
    enum XML_Status status = XML_Parse(parser, buf.text, (int)buf.len, 1);
    ck_assert_msg(status == XML_STATUS_OK, "line %d: %s", (int)XML_GetCurrentLineNumber(parser),
        XML_ErrorString(XML_GetErrorCode(parser)));
    ck_assert_int_eq(r.next, drawing->count);
    XML_ParserFree(parser);
    hw_buf_release(&buf);
}

/* The paper that words take: from left to right, and from top to foot. */
typedef struct {
    double left_mm, right_mm, top_mm, foot_mm;
} box;

static box box_of(const hw_drawn *words)
{
    static const double before[] = {
        [HW_ALIGN_START] = 0, [HW_ALIGN_MIDDLE] = 0.5, [HW_ALIGN_END] = 1
    };
    double width_mm = hw_look_width_mm(words->look, words->text);
    double left_mm = words->at.x_mm - before[words->align] * width_mm;
    double font_mm = hw_look_of(words->look)->font_mm;
    return (box){ left_mm, left_mm + width_mm, words->at.y_mm - 0.75 * font_mm,
        words->at.y_mm + 0.2 * font_mm };
}

const char *drawn_under(const hw_drawing *drawing, hw_point at)
{
    for (int i = 0; i < drawing->count; i++) {
        if (drawing->list[i].kind != HW_DRAWN_WORDS) {
            continue;
        }
        box b = box_of(&drawing->list[i]);
        if (at.x_mm > b.left_mm && at.x_mm < b.right_mm && at.y_mm > b.top_mm &&
            at.y_mm < b.foot_mm) {
            return drawing->list[i].text;
        }
    }
    return NULL;
}

void drawn_apart(const hw_drawing *drawing)
{
    for (int i = 0; i < drawing->count; i++) {
        if (drawing->list[i].kind != HW_DRAWN_WORDS) {
            continue;
        }
        box a = box_of(&drawing->list[i]);
        ck_assert_msg(a.left_mm >= 0 && a.right_mm <= drawing->width_mm && a.top_mm >= 0 &&
                          a.foot_mm <= drawing->height_mm,
            "off the page: %s", drawing->list[i].text);
        for (int j = 0; j < i; j++) {
            if (drawing->list[j].kind != HW_DRAWN_WORDS) {
                continue;
            }
            box b = box_of(&drawing->list[j]);
            ck_assert_msg(a.right_mm <= b.left_mm || b.right_mm <= a.left_mm ||
                              a.foot_mm <= b.top_mm || b.foot_mm <= a.top_mm,
                "'%s' lies on '%s'", drawing->list[i].text, drawing->list[j].text);
        }
    }
}
