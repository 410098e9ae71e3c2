/* Pieces on paper: true to scale, every measure by hand, words apart, curves followed.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "core/num.h"
#include "drawn.h"
#include "fixture.h"
#include "write/draw.h"
#include "write/trace.h"

enum { POINTS = 6 };

/* A piece whose left edge mirrors its right one, and a neck likewise. */
typedef struct {
    hw_outline_point right[POINTS], left[POINTS], neck[POINTS], neck_left[POINTS];
    hw_outline outline;
    hw_draw_piece piece;
    hw_draw_band band;
    hw_draw_trim trim;
} symmetrical;

static void mirror(const hw_outline_point *from, int count, hw_outline_point *to)
{
    for (int i = 0; i < count; i++) {
        to[i] = from[i];
        to[i].across_cm = -from[i].across_cm;
    }
}

/* Finish what has its right edge, and its neck, drawn. */
static void close_piece(symmetrical *s, const char *name, int points, int neck_points)
{
    mirror(s->right, points, s->left);
    mirror(s->neck, neck_points, s->neck_left);
    s->outline = (hw_outline){ .edges = { [HW_EDGE_LEFT] = { s->left, points },
                                   [HW_EDGE_RIGHT] = { s->right, points },
                                   [HW_EDGE_NECK_LEFT] = { s->neck_left, neck_points },
                                   [HW_EDGE_NECK_RIGHT] = { s->neck, neck_points } },
        .top_cm = s->right[points - 1].up_cm };
    s->piece = (hw_draw_piece){ .name = name, .outline = &s->outline };
}

/* Straight up: width by height. */
static void oblong(symmetrical *s, const char *name, double width_cm, double height_cm)
{
    *s =
        (symmetrical){ .right = { { .across_cm = width_cm / 2, .stretch = "" },
                           { .across_cm = width_cm / 2, .up_cm = height_cm, .stretch = "side" } } };
    close_piece(s, name, 2, 0);
}

/* Side, a step, armhole, shoulder and neck: 40 cm wide, 45 cm high, the neck 14 cm wide and 6 cm
 * deep. */
static void bodice(symmetrical *s)
{
    *s = (symmetrical){
        .right = { { .across_cm = 20, .stretch = "" },
            { .across_cm = 20, .up_cm = 25, .stretch = "side" },
            { .across_cm = 17, .up_cm = 25, .stretch = "armhole" },
            { .across_cm = 16, .up_cm = 42, .stretch = "armhole" },
            { .across_cm = 7, .up_cm = 45, .stretch = "shoulder" } },
        .neck = { { .across_cm = 3, .up_cm = 39, .stretch = "" },
            { .across_cm = 7, .up_cm = 45, .stretch = "neck" } },
    };
    close_piece(s, "back", 5, 2);
    s->piece.face_cm = 4;
    s->piece.hem_sts = 119;
    s->piece.top_sts = 41;
}

static hw_draw_pieces_task task(const hw_draw_piece *pieces, int count)
{
    return (hw_draw_pieces_task){ .title = "Cardigan, size 4",
        .pieces = pieces,
        .count = count,
        .room = { 190, 277 },
        .show = HW_SHOW_CM };
}

static double width_of(const hw_drawn *polygon)
{
    double low = polygon->points[0].x_mm;
    double high = low;
    for (int i = 0; i < polygon->count; i++) {
        low = polygon->points[i].x_mm < low ? polygon->points[i].x_mm : low;
        high = polygon->points[i].x_mm > high ? polygon->points[i].x_mm : high;
    }
    return high - low;
}

static double height_of(const hw_drawn *polygon)
{
    double low = polygon->points[0].y_mm;
    double high = low;
    for (int i = 0; i < polygon->count; i++) {
        low = polygon->points[i].y_mm < low ? polygon->points[i].y_mm : low;
        high = polygon->points[i].y_mm > high ? polygon->points[i].y_mm : high;
    }
    return high - low;
}

static hw_drawing drawing_of(const hw_draw_pieces_task *t)
{
    hw_drawing d;
    ck_assert_int_eq(hw_draw_pieces(t, &arena, &d, NULL), HW_OK);
    return d;
}

static void expect_words(const hw_drawing *d, const char *const *words, int count)
{
    for (int i = 0; i < count; i++) {
        ck_assert_msg(drawn_words(d, words[i]) != NULL, "%s", words[i]);
    }
}

/* By hand: 10 cm by 7.5 cm at 1 : 1 are 100 mm by 75 mm, at 1 : 4 a quarter of that. */
START_TEST(true_to_scale)
{
    static const double given[] = { 1, 4 };
    for (size_t i = 0; i < sizeof given / sizeof given[0]; i++) {
        symmetrical s;
        oblong(&s, "pocket", 10, 7.5);
        hw_draw_pieces_task t = task(&s.piece, 1);
        t.scale = given[i];
        hw_drawing d = drawing_of(&t);
        const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(width_of(outline), 100 / given[i], 1e-9);
        ck_assert_double_eq_tol(height_of(outline), 75 / given[i], 1e-9);
        static const char *const words[] = { "10 cm", "7.5 cm", "pocket" };
        expect_words(&d, words, 3);
        /* the line to check the print by is 5 cm at any scale, or 2 in */
        const hw_drawn *line = drawn_at(&d, HW_DRAWN_LINE, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(line->to.x_mm - line->at.x_mm, 50, 1e-9);
        t.show = HW_SHOW_IN;
        ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
        line = drawn_at(&d, HW_DRAWN_LINE, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(line->to.x_mm - line->at.x_mm, 2 * 25.4, 1e-9);
    }
}
END_TEST

/* Own choice: notes on safety, and they alone, stand on the page below the line that checks the
 * print. By hand: 182 mm hold fewer than the 159 letters of the note. A page with a millimetre to
 * spare without it has no room for it at that scale. */
START_TEST(cautions)
{
    char text[] = "sew it on sew it on sew it on sew it on sew it on sew it on sew it on sew it on "
                  "sew it on sew it on sew it on sew it on sew it on sew it on sew it on sew it on";
    const hw_note notes[] = { { HW_NOTE_REMARK, "nothing to fear" }, { HW_NOTE_SAFETY, text } };
    symmetrical s;
    oblong(&s, "pocket", 12, 21);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = drawing_of(&t);
    t.notes = notes, t.note_count = 2;
    t.room.height_mm = d.height_mm + 1;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    ck_assert_ptr_nonnull(
        drawn_words(&d, "scale 1 : 2; right side facing, hem down; heights from the fold"));
    static const char ruler[] = "5 cm on paper; if it is not, print without fitting to the page";
    const hw_drawn *line = drawn_words(&d, ruler);
    char told[400] = "";
    for (const hw_drawn *w = line + 1; w < d.list + d.count; w++) {
        ck_assert(w->at.y_mm > line->at.y_mm && w->at.y_mm < d.height_mm - 1);
        ck_assert_double_le(hw_look_width_mm(w->look, w->text), 182);
        size_t len = strlen(told);
        (void)snprintf(told + len, sizeof told - len, "%s%s", len > 0 ? " " : "", w->text);
    }
    ck_assert_str_eq(told, text);
    drawn_apart(&d);
}
END_TEST

/* By hand: 182 mm are left of 190. A piece 40 cm by 50 cm is 160 mm wide at 1 : 2.5 and 200 mm at
 * 1 : 2; one of 80 cm is 200 mm at 1 : 4 and 160 mm at 1 : 5; one of 10 cm by 20 cm is 100 mm by
 * 200 mm at 1 : 1. */
START_TEST(round_scales)
{
    static const struct {
        double width_cm, height_cm, width_mm;
        const char *words;
    } rows[] = { { 40, 50, 160, "scale 1 : 2.5; " }, { 80, 50, 160, "scale 1 : 5; " },
        { 10, 20, 100, "scale 1 : 1; " } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        symmetrical s;
        oblong(&s, "back", rows[i].width_cm, rows[i].height_cm);
        hw_draw_pieces_task t = task(&s.piece, 1);
        hw_drawing d = drawing_of(&t);
        const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(width_of(outline), rows[i].width_mm, 1e-9);
        bool found = false;
        for (int k = 0; k < d.count; k++) {
            bool text = d.list[k].kind == HW_DRAWN_WORDS;
            found = found || (text && strstr(d.list[k].text, rows[i].words) == d.list[k].text);
        }
        ck_assert_msg(found, "%s", rows[i].words);
    }
}
END_TEST

/* By hand, from the drawing of the bodice above: widths 40 at hem and underarm, 32 where the
 * shoulders begin, 14 of the neck; heights 4, 25, 39, 42 and 45. */
START_TEST(measures)
{
    static const char *const words[] = { "4 cm", "25 cm", "39 cm", "42 cm", "45 cm", "40 cm",
        "32 cm", "14 cm", "side", "armhole", "shoulder", "back", "119 stitches at the hem",
        "41 stitches at the top", "Cardigan, size 4" };
    symmetrical s;
    bodice(&s);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = drawing_of(&t);
    expect_words(&d, words, (int)(sizeof words / sizeof words[0]));
    const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
    ck_assert_int_eq(outline->count, 5 + 2 + 2 + 5);
    double mm_per_cm = width_of(outline) / 40;
    const hw_drawn *shade = drawn_at(&d, HW_DRAWN_RECT, HW_LOOK_SHADE, 0);
    ck_assert_double_eq_tol(shade->to.x_mm - shade->at.x_mm, 40 * mm_per_cm, 1e-9);
    ck_assert_double_eq_tol(shade->to.y_mm - shade->at.y_mm, 4 * mm_per_cm, 1e-9);
    ck_assert_double_eq_tol(outline->points[6].y_mm - outline->points[4].y_mm, 6 * mm_per_cm, 1e-9);
    drawn_parses(&d);
    drawn_apart(&d);
}
END_TEST

/* U1: an inch is 2.54 cm; 40 cm are 15.748 in, to the nearest eighth 15 3/4. */
START_TEST(inches)
{
    symmetrical s;
    bodice(&s);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d;
    t.show = HW_SHOW_IN;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    ck_assert_ptr_nonnull(drawn_words(&d, "15 3/4 in"));
    t.show = HW_SHOW_BOTH;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    ck_assert_ptr_nonnull(drawn_words(&d, "40 cm (15 3/4 in)"));
    /* the neck leaves no room for both on one line */
    const hw_drawn *cm = drawn_words(&d, "32 cm");
    const hw_drawn *in = drawn_words(&d, "12 5/8 in");
    ck_assert(cm != NULL && in != NULL && cm->at.y_mm < in->at.y_mm);
    drawn_apart(&d);
    /* By hand: 4 cm are 1.575 in, to the nearest eighth 1 5/8. Inside 4 mm there is no room for any
     * width, so it stands below. */
    s.right[2].across_cm = s.right[3].across_cm = s.right[4].across_cm = 2;
    close_piece(&s, "back", 5, 0);
    t.scale = 10;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    ck_assert_ptr_nonnull(drawn_words(&d, "4 cm (1 5/8 in) wide at 42 cm (16 1/2 in)"));
    drawn_apart(&d);
}
END_TEST

/* A monotone curve between points never swings past them (Steffen 1990, from memory), is mirrored
 * like its points, and runs through each. */
START_TEST(true_curves)
{
    symmetrical s;
    bodice(&s);
    s.right[2].curve = HW_CURVE_STRAIGHT;
    s.right[3].curve = HW_CURVE_MONOTONE;
    s.right[4].curve = HW_CURVE_MONOTONE;
    close_piece(&s, "back", 5, 2);
    hw_trace right = { 0 };
    hw_trace left = { 0 };
    ck_assert_int_eq(hw_trace_edge(&s.outline.edges[HW_EDGE_RIGHT], &arena, &right), HW_OK);
    ck_assert_int_eq(hw_trace_edge(&s.outline.edges[HW_EDGE_LEFT], &arena, &left), HW_OK);
    ck_assert(hw_trace_mirrors(&left, &right));
    int found = 0;
    for (int i = 1; i < right.count; i++) {
        const hw_trace_spot *spot = &right.spots[i];
        ck_assert_double_le(spot->across_cm, (spot - 1)->across_cm + 1e-9);
        found += fabs(spot->across_cm - 16) < 1e-9 && fabs(spot->up_cm - 42) < 1e-9 ? 1 : 0;
    }
    ck_assert_int_eq(found, 1);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = drawing_of(&t);
    const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
    ck_assert_int_eq(outline->count, right.count + left.count + 4);
    drawn_apart(&d);
}
END_TEST

/* XML 1.0: these must be escaped; expat gives them back as they were. */
START_TEST(names_with_signs)
{
    symmetrical s;
    oblong(&s, "front & \"back\" <left>", 30, 30);
    s.right[1].stretch = "a < b > c & \"d\"";
    s.left[1].stretch = s.right[1].stretch;
    hw_draw_pieces_task t = task(&s.piece, 1);
    t.title = "<Tom> & \"Jo\"";
    hw_drawing d = drawing_of(&t);
    ck_assert_ptr_nonnull(drawn_words(&d, "front & \"back\" <left>"));
    ck_assert_ptr_nonnull(drawn_words(&d, "a < b > c & \"d\""));
    drawn_parses(&d);
}
END_TEST

/* No word lies on an outline: each way of each polygon is walked in steps of a tenth of a mm. */
static void off_outlines(const hw_drawing *d)
{
    int outlines = drawn_count(d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE);
    for (int n = 0; n < outlines; n++) {
        const hw_drawn *p = drawn_at(d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, n);
        for (int i = 0; i < p->count; i++) {
            const hw_point *from = &p->points[i];
            const hw_point *to = &p->points[(i + 1) % p->count];
            double x_mm = to->x_mm - from->x_mm;
            double y_mm = to->y_mm - from->y_mm;
            int steps = 1 + hw_num_up(10 * (fabs(x_mm) + fabs(y_mm)));
            for (int k = 0; k <= steps; k++) {
                const char *text = drawn_under(
                    d, (hw_point){ from->x_mm + x_mm * k / steps, from->y_mm + y_mm * k / steps });
                ck_assert_msg(text == NULL, "'%s' lies on an outline", text);
            }
        }
    }
}

/* By hand: 2500 cm at 1 to 100 are 250 mm, wider than the paper; 40 cm at 1 to 1 as well. Twelve
 * pieces of 90 cm, two to a row, would be 1080 mm high at 1 to 5. */
START_TEST(no_room)
{
    symmetrical s;
    oblong(&s, "sail", 2500, 50);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = { .count = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(
        hw_check_says(&err, HW_ERR_RANGE, "`sail` is too wide for the paper at 1 to 100: draw"));
    oblong(&s, "back", 40, 50);
    t.scale = 1;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "`back` is too wide for the paper at 1 to 1:"));
    hw_draw_piece pieces[HW_MAX_PIECES];
    for (int i = 0; i < HW_MAX_PIECES; i++) {
        oblong(&s, "back", 40, 90);
        pieces[i] = s.piece;
    }
    t = task(pieces, HW_MAX_PIECES);
    t.scale = 5;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "the 12 pieces do not fit one page at 1 to 5"));
    ck_assert_int_eq(d.count, 77);
}
END_TEST

/* The polygon of a trim: its outer corners lie so far, across and up in cm, from a spot of the
 * piece. Scale 1 : 5, so a cm is 2 mm. */
static void corner_is(const hw_drawn *strip, int corner, hw_point from, double across, double up)
{
    ck_assert_int_lt(corner, strip->count);
    ck_assert_double_eq_tol(strip->points[corner].x_mm, from.x_mm + 2 * across, 1e-9);
    ck_assert_double_eq_tol(strip->points[corner].y_mm, from.y_mm - 2 * up, 1e-9);
}

/* By hand: along the side of a bodice, 25 cm straight up, a trim 3 cm deep is an oblong outside it.
 * Along its neck, which goes 4 across and 6 up, one of 2 cm lies 2 x 6 / root of 52 to the middle
 * and 2 x 4 / root of 52 up. Along a step of 3 cm and a way of 1 across and 17 up the corner lies
 * on both outer sides. */
START_TEST(trims)
{
    const hw_draw_trim list[] = {
        { .name = "rim", .edge = HW_EDGE_RIGHT, .stretch = "side", .depth_cm = 3, .sts = 70 },
        { .name = "neckband", .edge = HW_EDGE_NECK_RIGHT, .depth_cm = 2, .sts = 20 },
        { .name = "neckband", .edge = HW_EDGE_NECK_LEFT, .depth_cm = 2, .sts = 21 },
        { .name = "armband", .edge = HW_EDGE_RIGHT, .stretch = "armhole", .depth_cm = 1 },
    };
    symmetrical s;
    bodice(&s);
    s.piece.trims = list;
    s.piece.trim_count = 4;
    hw_draw_pieces_task t = task(&s.piece, 1);
    t.scale = 5;
    hw_drawing d = drawing_of(&t);
    static const char *const told[] = { "rim: 70 stitches", "neckband: 41 stitches", "armband" };
    expect_words(&d, told, 3);
    const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
    hw_point foot = outline->points[outline->count - 1];
    const hw_drawn *rim = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_THIN, 0);
    ck_assert_int_eq(rim->count, 4);
    corner_is(rim, 0, foot, 0, 0);
    corner_is(rim, 1, foot, 0, 25);
    corner_is(rim, 2, foot, 3, 25);
    corner_is(rim, 3, foot, 3, 0);
    double long_cm = sqrt(52);
    const hw_drawn *neck = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_THIN, 1);
    ck_assert_int_eq(neck->count, 4);
    corner_is(neck, 2, foot, 7 - 20 - 2 * 6 / long_cm, 45 + 2 * 4 / long_cm);
    corner_is(neck, 3, foot, 3 - 20 - 2 * 6 / long_cm, 39 + 2 * 4 / long_cm);
    const hw_drawn *arm = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_THIN, 3);
    ck_assert_int_eq(arm->count, 6);
    double up_cm = sqrt(290); /* 1 across and 17 up: how far to the right the outer side lies */
    corner_is(arm, 4, foot, -3 + (up_cm - 1) / 17, 25 + 1);
    drawn_apart(&d);
    off_outlines(&d);
}
END_TEST

/* By hand: a band from 10 to 12 cm of a bodice 40 cm wide; one from 40 to 41 lies on both sides of
 * the neck, which begins at 39. */
START_TEST(bands)
{
    const hw_draw_band list[] = { { "tulips", 10, 12 }, { "yoke", 40, 41 } };
    symmetrical s;
    bodice(&s);
    s.piece.bands = list;
    s.piece.band_count = 2;
    hw_draw_pieces_task t = task(&s.piece, 1);
    t.scale = 5;
    hw_drawing d = drawing_of(&t);
    ck_assert_int_eq(drawn_count(&d, HW_DRAWN_POLYGON, HW_LOOK_SHADE), 3);
    const hw_drawn *band = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_SHADE, 0);
    ck_assert_double_eq_tol(width_of(band), 80, 1e-9);
    ck_assert_double_eq_tol(height_of(band), 4, 1e-9);
    const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
    ck_assert_double_eq_tol(band->points[0].y_mm, outline->points[0].y_mm - 20, 1e-9);
    const hw_drawn *left = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_SHADE, 1);
    const hw_drawn *right = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_SHADE, 2);
    ck_assert_double_eq_tol(width_of(left), width_of(right), 1e-9);
    ck_assert_double_lt(width_of(left), 2 * 16); /* it ends at the neck, before the middle */
    static const char *const told[] = { "tulips", "10 cm", "12 cm" };
    expect_words(&d, told, 3);
    drawn_apart(&d);
    off_outlines(&d);
}
END_TEST

/* A band right below the underarm of a narrow piece: neither its name nor the width there lies on
 * a line across. */
START_TEST(crowded_bands)
{
    const hw_draw_band list[] = { { "blossom", 23, 24.4 } };
    for (double scale = 4; scale <= 10; scale += 1) {
        symmetrical s;
        bodice(&s);
        for (int i = 0; i < 5; i++) {
            s.right[i].across_cm *= 0.4;
        }
        close_piece(&s, "front", 5, 0);
        s.piece.face_cm = 3;
        s.piece.bands = list;
        s.piece.band_count = 1;
        hw_draw_pieces_task t = task(&s.piece, 1);
        t.show = HW_SHOW_BOTH;
        t.scale = scale;
        hw_drawing d = drawing_of(&t);
        int lines = drawn_count(&d, HW_DRAWN_LINE, HW_LOOK_DASHED);
        ck_assert_int_ge(lines, 3);
        for (int n = 0; n < lines; n++) {
            const hw_drawn *line = drawn_at(&d, HW_DRAWN_LINE, HW_LOOK_DASHED, n);
            for (double x_mm = line->at.x_mm; x_mm < line->to.x_mm; x_mm += 0.2) {
                const char *text = drawn_under(&d, (hw_point){ x_mm, line->at.y_mm });
                ck_assert_msg(text == NULL, "'%s' lies on a line", text);
            }
        }
        drawn_apart(&d);
    }
}
END_TEST

/* A front whose edges differ has the names of both. */
START_TEST(uneven_piece)
{
    symmetrical s;
    bodice(&s);
    hw_outline_point front[] = { { .across_cm = 0, .stretch = "" },
        { .across_cm = 0, .up_cm = 30, .stretch = "front edge" },
        { .across_cm = -7, .up_cm = 45, .stretch = "neckline" } };
    s.outline.edges[HW_EDGE_RIGHT] = (hw_edge_line){ front, 3 };
    s.outline.edges[HW_EDGE_NECK_LEFT].count = 0;
    s.outline.edges[HW_EDGE_NECK_RIGHT].count = 0;
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = drawing_of(&t);
    const hw_drawn *side = drawn_words(&d, "side");
    const hw_drawn *edge = drawn_words(&d, "front edge");
    ck_assert(side != NULL && edge != NULL && drawn_words(&d, "neckline") != NULL);
    ck_assert(side->align == HW_ALIGN_END && edge->align == HW_ALIGN_START);
    ck_assert_double_lt(side->at.x_mm, edge->at.x_mm);
    ck_assert_ptr_nonnull(drawn_words(&d, "20 cm"));
    drawn_apart(&d);
}
END_TEST

/* Stretches of 1 cm at 1 : 4 are 2.5 mm apart, less than a line of words: the upper one moves. */
START_TEST(short_stretches)
{
    symmetrical s = { .right = { { .across_cm = 20, .stretch = "" },
                          { .across_cm = 20, .up_cm = 20, .stretch = "side" },
                          { .across_cm = 19, .up_cm = 21, .stretch = "notch" },
                          { .across_cm = 18, .up_cm = 22, .stretch = "ledge" },
                          { .across_cm = 17, .up_cm = 23, .stretch = "rim" } } };
    close_piece(&s, "pouch", 5, 0);
    hw_draw_pieces_task t = task(&s.piece, 1);
    t.scale = 4;
    hw_drawing d = drawing_of(&t);
    const hw_drawn *lower = drawn_words(&d, "notch");
    const hw_drawn *upper = drawn_words(&d, "ledge");
    ck_assert(lower != NULL && upper != NULL);
    ck_assert_double_gt(lower->at.y_mm, upper->at.y_mm + 2.6); /* a line of small words */
    drawn_apart(&d);
    off_outlines(&d);
}
END_TEST

/* A band and a trim, or none, where chance puts them. */
static void decorate(symmetrical *s, unsigned *state)
{
    static const char *const stretches[] = { "side", "armhole", "shoulder", NULL };
    double top_cm = s->outline.top_cm;
    s->band =
        (hw_draw_band){ "blossom", 0.2 * top_cm + hw_check_random(state, 60) * top_cm / 100, 0 };
    s->band.to_cm = s->band.from_cm + 0.1 * top_cm;
    s->trim = (hw_draw_trim){ .name = "edging",
        .edge = (hw_edge)hw_check_random(state, HW_EDGE_TOP),
        .stretch = stretches[hw_check_random(state, 4)],
        .depth_cm = hw_check_random(state, 40) / 10.0,
        .before_cm = hw_check_random(state, 2) * hw_check_random(state, 40) / 10.0,
        .past_cm = hw_check_random(state, 2) * hw_check_random(state, 40) / 10.0,
        .sts = hw_check_random(state, 300) };
    s->piece.bands = &s->band;
    s->piece.trims = &s->trim;
    s->piece.band_count = hw_check_random(state, 2);
    s->piece.trim_count = hw_check_random(state, 2);
}

/* By chance: pieces of many measures, several on a page, in all units: no word lies on another or
 * leaves the page, and each outline is as wide to its height as the piece. */
START_TEST(many_garments)
{
    unsigned state = 3;
    for (int round = 0; round < 120; round++) {
        symmetrical s[4];
        hw_draw_piece pieces[4];
        int count = 1 + hw_check_random(&state, 4);
        for (int i = 0; i < count; i++) {
            bodice(&s[i]);
            double wide = 0.4 + hw_check_random(&state, 100) / 100.0;
            double high = 0.4 + hw_check_random(&state, 100) / 100.0;
            for (int k = 0; k < POINTS; k++) {
                s[i].right[k].across_cm *= wide;
                s[i].neck[k].across_cm *= wide;
                s[i].right[k].up_cm *= high;
                s[i].neck[k].up_cm *= high;
            }
            close_piece(&s[i], "right front", 5, hw_check_random(&state, 2) * 2);
            s[i].piece.hem_sts = 1 + hw_check_random(&state, 2000);
            s[i].piece.top_sts = hw_check_random(&state, 3);
            s[i].piece.face_cm = hw_check_random(&state, 5);
            decorate(&s[i], &state);
            pieces[i] = s[i].piece;
        }
        hw_draw_pieces_task t = task(pieces, count);
        t.show = (hw_show)(round % HW_SHOW_COUNT);
        hw_drawing d = drawing_of(&t);
        ck_assert_int_eq(drawn_count(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE), count);
        for (int i = 0; i < count; i++) {
            const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, i);
            ck_assert_double_eq_tol(width_of(outline) / height_of(outline),
                2 * s[i].right[0].across_cm / s[i].right[4].up_cm, 1e-9);
        }
        drawn_apart(&d);
        off_outlines(&d);
        ck_assert(d.height_mm <= 277);
    }
}
END_TEST

static hw_status draw_bodice(hw_arena *room)
{
    symmetrical s;
    unsigned state = 1;
    bodice(&s);
    decorate(&s, &state);
    s.piece.band_count = s.piece.trim_count = 1;
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = { .count = 77 };
    hw_status status = hw_draw_pieces(&t, room, &d, NULL);
    ck_assert(status == HW_OK || d.count == 77);
    return status;
}

START_TEST(refused_memory)
{
    ck_assert_int_gt(hw_check_refusals(draw_bodice, false), 20);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { true_to_scale, cautions, round_scales, measures, inches,
        true_curves, names_with_signs, no_room, trims, bands, crowded_bands, uneven_piece,
        short_stretches, many_garments, refused_memory };
    return fixture_run("draw_piece", NULL, NULL, tests, sizeof tests / sizeof tests[0]);
}
