/* Pieces on paper: true to scale, every measure by hand, words apart, curves followed.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "core/num.h"
#include "drawn.h"
#include "support.h"
#include "write/draw.h"
#include "write/trace.h"

static hw_arena arena;
static hw_check_heap heap;

/* hw_edge_at itself, or in its place a curve that anybody can work out, or a failure. */
static bool edge_itself;
static hw_status edge_status;
static int edge_calls;

hw_status __real_hw_edge_at(
    const hw_edge_line *edge, const double *up_cm, int count, double *across_cm);

hw_status __wrap_hw_edge_at(
    const hw_edge_line *edge, const double *up_cm, int count, double *across_cm);

hw_status __wrap_hw_edge_at(
    const hw_edge_line *edge, const double *up_cm, int count, double *across_cm)
{
    edge_calls++;
    if (edge_itself) {
        return __real_hw_edge_at(edge, up_cm, count, across_cm);
    }
    for (int i = 0; i < count; i++) {
        across_cm[i] = up_cm[i] * up_cm[i] / 100;
    }
    return edge_status;
}

static void setup(void)
{
    edge_itself = false;
    edge_status = HW_OK;
    edge_calls = 0;
    hw_check_open(&arena, &heap, 0, false);
}

static void teardown(void)
{
    hw_check_close(&arena, &heap);
}

enum { POINTS = 6 };

/* A piece whose left edge mirrors its right one, and a neck likewise. */
typedef struct {
    hw_outline_point right[POINTS], left[POINTS], neck[POINTS], neck_left[POINTS];
    hw_outline outline;
    hw_draw_piece piece;
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

/* By hand: 10 cm by 7.5 cm at 1 : 1 are 100 mm by 75 mm, at 1 : 4 a quarter of that. */
START_TEST(true_to_scale)
{
    static const double given[] = { 1, 4 };
    for (size_t i = 0; i < sizeof given / sizeof given[0]; i++) {
        symmetrical s;
        oblong(&s, "pocket", 10, 7.5);
        hw_draw_pieces_task t = task(&s.piece, 1);
        t.scale = given[i];
        hw_drawing d;
        ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
        const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(width_of(outline), 100 / given[i], 1e-9);
        ck_assert_double_eq_tol(height_of(outline), 75 / given[i], 1e-9);
        ck_assert_ptr_nonnull(drawn_words(&d, "10 cm"));
        ck_assert_ptr_nonnull(drawn_words(&d, "7.5 cm"));
        ck_assert_ptr_nonnull(drawn_words(&d, "pocket"));
        /* the line to check the print by is 5 cm at any scale */
        const hw_drawn *line = drawn_at(&d, HW_DRAWN_LINE, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(line->to.x_mm - line->at.x_mm, 50, 1e-9);
    }
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
        hw_drawing d;
        ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
        const hw_drawn *outline = drawn_at(&d, HW_DRAWN_POLYGON, HW_LOOK_OUTLINE, 0);
        ck_assert_double_eq_tol(width_of(outline), rows[i].width_mm, 1e-9);
        bool found = false;
        for (int k = 0; k < d.count; k++) {
            found =
                found || (d.list[k].kind == HW_DRAWN_WORDS &&
                             strncmp(d.list[k].text, rows[i].words, strlen(rows[i].words)) == 0);
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
    hw_drawing d;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        ck_assert_msg(drawn_words(&d, words[i]) != NULL, "%s", words[i]);
    }
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
    drawn_apart(&d);
}
END_TEST

/* A curve is asked for between its points alone; where it lies is what was answered. */
START_TEST(curves)
{
    const hw_outline_point points[] = { { .across_cm = 1, .up_cm = 0, .stretch = "" },
        { .across_cm = 1, .up_cm = 10, .stretch = "a" },
        { .across_cm = 4, .up_cm = 20, .curve = HW_CURVE_MONOTONE, .stretch = "b" },
        { .across_cm = 5, .up_cm = 20, .curve = HW_CURVE_NATURAL, .stretch = "b" } };
    const hw_edge_line edge = { points, 4 };
    hw_trace trace = { 0 };
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_OK);
    ck_assert_int_eq(edge_calls, 1);
    ck_assert_int_gt(trace.count, 4 + 8);
    for (int i = 1; i < trace.count; i++) {
        const hw_trace_spot *spot = &trace.spots[i];
        ck_assert_double_ge(spot->up_cm, trace.spots[i - 1].up_cm);
        ck_assert_str_eq(spot->stretch, i == 1 ? "a" : "b");
        if (i > 1 && i < trace.count - 2) {
            ck_assert(spot->up_cm > 10 && spot->up_cm < 20);
            ck_assert_double_eq_tol(spot->across_cm, spot->up_cm * spot->up_cm / 100, 1e-9);
        }
        ck_assert_int_eq(hw_trace_ends(&trace, i), i == 1 || i == trace.count - 1);
    }
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, 5), 1, 1e-9);
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, 20), 4, 1e-9);
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, 99), 5, 1e-9);
    ck_assert_double_eq_tol(hw_trace_across_cm(&trace, -1), 1, 1e-9);
    edge_status = HW_ERR_INTERNAL;
    hw_trace same = trace;
    ck_assert_int_eq(hw_trace_edge(&edge, &arena, &trace), HW_ERR_INTERNAL);
    ck_assert(trace.spots == same.spots && trace.count == same.count);
}
END_TEST

/* A monotone curve between points never swings past them (Steffen 1990, from memory), is mirrored
 * like its points, and runs through each. */
START_TEST(true_curves)
{
    edge_itself = true;
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
    hw_drawing d;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
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
    hw_drawing d;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    ck_assert_ptr_nonnull(drawn_words(&d, "front & \"back\" <left>"));
    ck_assert_ptr_nonnull(drawn_words(&d, "a < b > c & \"d\""));
    drawn_parses(&d);
}
END_TEST

/* By hand: 500 cm at 1 to 20 are 250 mm, wider than the paper; 40 cm at 1 to 1 as well, and 1 to
 * 2.5 is what fits (see above). */
START_TEST(no_room)
{
    symmetrical s;
    oblong(&s, "sail", 500, 50);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_drawing d = { .count = 77 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "not even at 1 to 20"));
    oblong(&s, "back", 40, 50);
    t.scale = 1;
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, &err), HW_ERR_RANGE);
    ck_assert(hw_check_says(&err, HW_ERR_RANGE, "1 to 2.5"));
    ck_assert_int_eq(d.count, 77);
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
    hw_drawing d;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
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
    hw_drawing d;
    ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
    const hw_drawn *lower = drawn_words(&d, "notch");
    const hw_drawn *upper = drawn_words(&d, "ledge");
    ck_assert(lower != NULL && upper != NULL);
    ck_assert_double_gt(lower->at.y_mm, upper->at.y_mm + 2.6); /* a line of small words */
    drawn_apart(&d);
    off_outlines(&d);
}
END_TEST

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
            pieces[i] = s[i].piece;
        }
        hw_draw_pieces_task t = task(pieces, count);
        t.show = (hw_show)(round % HW_SHOW_COUNT);
        hw_drawing d;
        ck_assert_int_eq(hw_draw_pieces(&t, &arena, &d, NULL), HW_OK);
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

START_TEST(refused_memory)
{
    symmetrical s;
    bodice(&s);
    hw_draw_pieces_task t = task(&s.piece, 1);
    hw_status status = HW_ERR_NOMEM;
    long at = 0;
    while (status != HW_OK) {
        hw_arena poor;
        hw_check_heap poor_heap = { 0 };
        hw_check_open(&poor, &poor_heap, ++at, false);
        hw_drawing d = { .count = 77 };
        status = hw_draw_pieces(&t, &poor, &d, NULL);
        ck_assert(status == HW_OK || (status == HW_ERR_NOMEM && d.count == 77));
        hw_check_close(&poor, &poor_heap);
    }
    ck_assert_int_gt(at, 20);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { true_to_scale, round_scales, measures, inches, curves,
        true_curves, true_curves, names_with_signs, no_room, uneven_piece, short_stretches,
        many_garments, refused_memory };
    Suite *suite = suite_create("draw_piece");
    TCase *tcase = tcase_create("draw_piece");
    tcase_set_timeout(tcase, 120); /* sanitizers on a busy machine */
    tcase_add_checked_fixture(tcase, setup, teardown);
    for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++) {
        tcase_add_test(tcase, tests[i]);
    }
    suite_add_tcase(suite, tcase);
    return hw_check_run(suite);
}
