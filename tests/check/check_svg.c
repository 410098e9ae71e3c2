/* SVG: well-formed by expat, true to scale, escaped, the same bytes for the same drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "drawn.h"
#include "fixture.h"
#include "write/svg.h"

static hw_drawing begin(const char *title)
{
    hw_drawing d;
    hw_drawing_begin(&d, &arena, title);
    hw_drawing_size(&d, 120.5, 40);
    return d;
}

static const char *written(const hw_drawing *d)
{
    ck_assert_int_eq(hw_drawing_status(d), HW_OK);
    fixture_empty();
    ck_assert_int_eq(hw_svg_write(d, &buf), HW_OK);
    drawn_parses(d);
    return buf.text;
}

/* SVG 1.1, section 7: with a viewBox of the size in mm a unit is 1 mm, so 10 cm are 100 units. */
START_TEST(true_to_scale)
{
    hw_drawing d = begin("scale");
    hw_drawing_line(&d, HW_LOOK_THIN, (hw_point){ 10, 5 }, (hw_point){ 110, 5 });
    const char *text = written(&d);
    ck_assert_ptr_nonnull(strstr(text, "width=\"120.5mm\" height=\"40mm\""));
    ck_assert_ptr_nonnull(strstr(text, "viewBox=\"0 0 120.5 40\""));
    ck_assert_ptr_nonnull(strstr(text, "<line x1=\"10\" y1=\"5\" x2=\"110\" y2=\"5\"/>"));
    ck_assert_ptr_nonnull(strstr(text, "xmlns=\"http://www.w3.org/2000/svg\""));
}
END_TEST

/* XML 1.0, section 2.4: & and < must be escaped; and 2.2: no control characters. */
START_TEST(escapes)
{
    static char title[] = "Tom & Jo's <\"band\"> ]]>";
    hw_drawing d = begin(title);
    hw_drawing_words(&d, HW_LOOK_NAME, (hw_point){ 1, 9 }, HW_ALIGN_START, "a&b<c>d\"e");
    const char *text = written(&d);
    ck_assert_ptr_nonnull(strstr(text, ">a&amp;b&lt;c&gt;d&quot;e</text>"));
    ck_assert_ptr_nonnull(
        strstr(text, "<title>Tom &amp; Jo's &lt;&quot;band&quot;&gt; ]]&gt;</title>"));
    d = begin("control");
    hw_drawing_words(&d, HW_LOOK_NAME, (hw_point){ 1, 9 }, HW_ALIGN_START, "a\x01\nb");
    hw_buf_release(&buf);
    ck_assert_int_eq(hw_svg_write(&d, &buf), HW_OK);
    ck_assert_ptr_nonnull(strstr(buf.text, ">a  b</text>"));
}
END_TEST

START_TEST(every_kind)
{
    hw_drawing d = begin("all kinds \xc3\xa9");
    const hw_point points[] = { { 1, 2 }, { 3.12345, 4 }, { -5, 0 } };
    for (int look = 0; look < HW_LOOK_TITLE; look++) {
        hw_drawing_rect(&d, (hw_look)look, (hw_point){ 1, 1 }, (hw_point){ 4, 6.5 });
        hw_drawing_line(&d, (hw_look)look, (hw_point){ 0, 0 }, (hw_point){ 9, 9 });
        hw_drawing_pen(&d, 0.75);
        hw_drawing_polyline(&d, (hw_look)look, points, 3);
        hw_drawing_polygon(&d, (hw_look)look, points, 3);
        hw_drawing_pen(&d, 0);
        hw_drawing_disc(&d, (hw_look)look, (hw_point){ 7, 8 }, 2.5);
    }
    for (int look = HW_LOOK_TITLE; look < HW_LOOK_COUNT; look++) {
        hw_drawing_words(&d, (hw_look)look, (hw_point){ 2, 9 }, HW_ALIGN_END, "caf\xc3\xa9");
        hw_drawing_words(&d, (hw_look)look, (hw_point){ 2, 9 }, HW_ALIGN_MIDDLE, "up");
    }
    const char *text = written(&d);
    ck_assert_ptr_nonnull(strstr(text, "<rect x=\"1\" y=\"1\" width=\"3\" height=\"5.5\"/>"));
    ck_assert_ptr_nonnull(strstr(text, "<polyline points=\"1,2 3.123,4 -5,0\"/>"));
    ck_assert_ptr_nonnull(strstr(text, "<polygon points=\"1,2 3.123,4 -5,0\"/>"));
    ck_assert_ptr_nonnull(strstr(text, "<circle cx=\"7\" cy=\"8\" r=\"2.5\"/>"));
    ck_assert_ptr_nonnull(strstr(text, "text-anchor=\"end\">caf\xc3\xa9</text>"));
    ck_assert_ptr_nonnull(strstr(text, "text-anchor=\"middle\">up</text>"));
    ck_assert_ptr_nonnull(strstr(text, "stroke-width=\"0.75\""));
}
END_TEST

static int times(const char *text, const char *word)
{
    int count = 0;
    for (const char *at = strstr(text, word); at != NULL; at = strstr(at + 1, word)) {
        count++;
    }
    return count;
}

/* Two looks, and a pen, in turn: four groups; and an empty drawing is one too. */
START_TEST(groups)
{
    hw_drawing d = begin("groups");
    ck_assert_int_eq(times(written(&d), "<g "), 0);
    for (int i = 0; i < 3; i++) {
        hw_drawing_disc(&d, HW_LOOK_THIN, (hw_point){ i, 1 }, 1);
    }
    hw_drawing_pen(&d, 2);
    hw_drawing_disc(&d, HW_LOOK_THIN, (hw_point){ 3, 1 }, 1);
    hw_drawing_pen(&d, 0);
    hw_drawing_disc(&d, HW_LOOK_SOLID, (hw_point){ 4, 1 }, 1);
    hw_drawing_disc(&d, HW_LOOK_THIN, (hw_point){ 5, 1 }, 1);
    const char *text = written(&d);
    ck_assert_int_eq(times(text, "<g "), 4);
    ck_assert_int_eq(times(text, "</g>"), 4);
    ck_assert_int_eq(times(text, "<g class=\"thin\""), 3);
}
END_TEST

START_TEST(refusals)
{
    hw_drawing d = begin("refused");
    for (int i = 0; i < 40; i++) {
        hw_drawing_disc(&d, HW_LOOK_THIN, (hw_point){ i, 1 }, 1);
    }
    hw_buf small;
    hw_buf_init(&small, &mem, 300);
    ck_assert_int_eq(hw_svg_write(&d, &small), HW_ERR_LIMIT);
    hw_buf_release(&small);
    for (int at = 1; at <= 4; at++) {
        hw_check_heap poor = { .refuse_at = at };
        hw_mem refusing = hw_check_mem(&poor);
        hw_buf_init(&small, &refusing, HW_BUF_LIMIT);
        ck_assert_int_eq(hw_svg_write(&d, &small), HW_ERR_NOMEM);
        hw_buf_release(&small);
        ck_assert_int_eq(poor.live, 0);
    }
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { true_to_scale, escapes, every_kind, groups, refusals };
    return fixture_run("svg", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
