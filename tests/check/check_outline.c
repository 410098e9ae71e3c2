/* Outlines: points from rules, what is refused, and where edges lie, how long, how large an area.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_interp.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "core/outline.h"
#include "support.h"

/* The linker sends these calls of the library here (-Wl,--wrap=...), so that a failure inside GSL
 * can be tried. The names are the linker's. */
gsl_interp *__real_gsl_interp_alloc(const gsl_interp_type *type, size_t size);
gsl_interp *__wrap_gsl_interp_alloc(const gsl_interp_type *type, size_t size);
int __real_gsl_interp_init(gsl_interp *interp, const double *x, const double *y, size_t size);
int __wrap_gsl_interp_init(gsl_interp *interp, const double *x, const double *y, size_t size);
gsl_integration_workspace *__real_gsl_integration_workspace_alloc(size_t size);
gsl_integration_workspace *__wrap_gsl_integration_workspace_alloc(size_t size);

static bool refuse_spline = false;
static bool fail_spline = false;
static bool refuse_room = false;

gsl_interp *__wrap_gsl_interp_alloc(const gsl_interp_type *type, size_t size)
{
    return refuse_spline ? NULL : __real_gsl_interp_alloc(type, size);
}

int __wrap_gsl_interp_init(gsl_interp *interp, const double *x, const double *y, size_t size)
{
    return fail_spline ? GSL_EFAILED : __real_gsl_interp_init(interp, x, y, size);
}

gsl_integration_workspace *__wrap_gsl_integration_workspace_alloc(size_t size)
{
    return refuse_room ? NULL : __real_gsl_integration_workspace_alloc(size);
}

/* ---- Outlines of the tests: all numbers invented ---- */

#define CM(x)                                                                                      \
    {                                                                                              \
        .constant_cm = (x)                                                                         \
    }
#define TIMES(f, n)                                                                                \
    {                                                                                              \
        .terms = { { .factor = (f), .name = (n), .finished = true } }, .count = 1                  \
    }
#define WAY(name, x, y, c, l)                                                                      \
    {                                                                                              \
        .stretch = (name), .across = CM(x), .up = CM(y), .curve = (c), .line = (l)                 \
    }
#define LINE(name, x, y, l) WAY(name, x, y, HW_CURVE_STRAIGHT, l)

enum { SIZES = 2 };

typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    const char *names[SIZES];
    hw_measure rooms[HW_MAX_MEASURES];
    hw_sizes finished;
    hw_outline_rule rule;
    hw_piece piece;
    hw_outline_task task;
} studio;

static void give(studio *s, const char *name, double small_cm, double large_cm)
{
    hw_measure *measure = hw_sizes_add(&s->finished, name, &s->arena);
    ck_assert_ptr_nonnull(measure);
    measure->values_cm[0] = small_cm;
    measure->values_cm[1] = large_cm;
    measure->missing[0] = measure->missing[1] = false;
}

static void open_studio(studio *s)
{
    memset(s, 0, sizeof *s);
    hw_check_open(&s->arena, &s->heap, 0, false);
    s->names[0] = "92";
    s->names[1] = "98";
    s->finished = (hw_sizes){ .count = SIZES, .names = s->names, .measures = s->rooms };
    give(s, "chest", 60, 64);
    give(s, "length", 40, 44);
    s->piece = (hw_piece){ .name = "back", .mirror_of = -1, .outline = &s->rule };
    s->task = (hw_outline_task){ .piece = &s->piece,
        .finished = &s->finished,
        .size = 0,
        .band_cm = 30,
        .main_cm = 30,
        .width_cm = 30 };
}

static void close_studio(studio *s)
{
    hw_check_close(&s->arena, &s->heap);
}

static hw_edge_rule edge_of(const hw_corner *corners, size_t count)
{
    return (hw_edge_rule){ .corners = corners, .count = (int)count };
}

#define EDGE(corners) edge_of((corners), sizeof(corners) / sizeof *(corners))

static hw_outline made(studio *s)
{
    hw_outline outline = { 0 };
    hw_err err = { 0 };
    hw_status status = hw_outline_make(&s->task, &s->arena, &outline, &err);
    ck_assert_msg(status == HW_OK, "%s", err.text);
    return outline;
}

static void expect_points(const hw_edge_line *edge, const double (*points)[2], int count)
{
    ck_assert_int_eq(edge->count, count);
    for (int i = 0; i < count; i++) {
        ck_assert_double_eq_tol(edge->points[i].across_cm, points[i][0], 1e-12);
        ck_assert_double_eq_tol(edge->points[i].up_cm, points[i][1], 1e-12);
    }
}

/* A shaped back, as drawn by hand: chest 60, length 40; side up to 24, 3 cm bound off, shoulder
 * from 38 to a neck 12 cm wide. */
static const hw_corner shaped[] = {
    { .stretch = "side", .across = TIMES(0.25, "chest"), .up = CM(24), .line = 5 },
    { .stretch = "armhole", .across = CM(12), .up = CM(24), .line = 6 },
    { .stretch = "armhole", .across = CM(12), .up = CM(38), .line = 7 },
    { .stretch = "shoulder", .across = CM(6), .up = TIMES(1, "length"), .line = 8 },
};
static const hw_corner deep_neck[] = {
    LINE("neck", 4, 37, 10),
    LINE("neck", 6, 40, 11),
};

/* From the header: the hem's corner, moved with the side to the knitted width of 29.4 cm; all else
 * as drawn; left mirrors right; the neck from the middle. By hand. */
START_TEST(points_by_hand)
{
    studio s;
    open_studio(&s);
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(shaped) }, .neck = EDGE(deep_neck) };
    s.task.width_cm = 29.4;
    s.task.face_cm = 5;
    hw_outline outline = made(&s);
    static const double right[][2] = { { 14.7, 0 }, { 14.7, 24 }, { 12, 24 }, { 12, 38 },
        { 6, 40 } };
    static const double left[][2] = { { -14.7, 0 }, { -14.7, 24 }, { -12, 24 }, { -12, 38 },
        { -6, 40 } };
    static const double neck[][2] = { { 0, 37 }, { 4, 37 }, { 6, 40 } };
    static const double neck_left[][2] = { { 0, 37 }, { -4, 37 }, { -6, 40 } };
    expect_points(&outline.edges[HW_EDGE_RIGHT], right, 5);
    expect_points(&outline.edges[HW_EDGE_LEFT], left, 5);
    expect_points(&outline.edges[HW_EDGE_NECK_RIGHT], neck, 3);
    expect_points(&outline.edges[HW_EDGE_NECK_LEFT], neck_left, 3);
    ck_assert_int_eq(outline.edges[HW_EDGE_TOP].count, 0);
    ck_assert_double_eq_tol(outline.top_cm, 40, 1e-12);
    ck_assert_double_eq_tol(outline.neck_cm, 37, 1e-12);
    ck_assert_str_eq(outline.edges[HW_EDGE_RIGHT].points[0].stretch, "");
    ck_assert_str_eq(outline.edges[HW_EDGE_RIGHT].points[1].stretch, "side");
    ck_assert_int_eq(outline.edges[HW_EDGE_LEFT].points[4].line, 8);
    ck_assert_double_eq_tol(hw_outline_height(&outline, "side"), 24, 1e-12);
    ck_assert_double_eq_tol(hw_outline_height(&outline, "armhole"), 38, 1e-12);
    ck_assert_double_eq_tol(hw_outline_height(&outline, "waist"), -1, 1e-12);
    close_studio(&s);
}
END_TEST

/* From the header, by hand: a slanting side begins at the top of the hem's face, which bears its
 * stretch; other corners do not move, even one as wide as the hem. */
START_TEST(slant_begins_above_face)
{
    studio s;
    open_studio(&s);
    static const hw_corner slant[] = { LINE("side", 12, 20, 3), LINE("", 15, 40, 4) };
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(slant) } };
    s.task.width_cm = 31;
    s.task.face_cm = 5;
    hw_outline outline = made(&s);
    static const double right[][2] = { { 15.5, 0 }, { 15.5, 5 }, { 12, 20 }, { 15, 40 } };
    expect_points(&outline.edges[HW_EDGE_RIGHT], right, 4);
    ck_assert_str_eq(outline.edges[HW_EDGE_RIGHT].points[1].stretch, "side");
    static const double top[][2] = { { -15, 40 }, { 15, 40 } };
    expect_points(&outline.edges[HW_EDGE_TOP], top, 2);
    ck_assert_double_eq_tol(outline.neck_cm, 0, 1e-12);
    s.task.face_cm = 0;
    outline = made(&s);
    static const double bare[][2] = { { 15.5, 0 }, { 12, 20 }, { 15, 40 } };
    expect_points(&outline.edges[HW_EDGE_RIGHT], bare, 3);
    close_studio(&s);
}
END_TEST

/* From the header, by hand: left and right drawn, then the piece that mirrors it; and a piece that
 * mirrors one of which only one side is drawn. */
START_TEST(mirrored)
{
    studio s;
    open_studio(&s);
    static const hw_corner left[] = { LINE("front", -15, 20, 3), LINE("front", -9, 40, 4) };
    static const hw_corner right[] = { LINE("side", 15, 30, 5), LINE("side", 11, 40, 6) };
    static const double slant[][2] = { { 15, 0 }, { 15, 20 }, { 9, 40 } };
    static const double side[][2] = { { -15, 0 }, { -15, 30 }, { -11, 40 } };
    static const double other[][2] = { { -15, 0 }, { -15, 20 }, { -9, 40 } };
    s.rule = (hw_outline_rule){ .sides = { EDGE(left), EDGE(right) }, .mirrored = true };
    hw_outline outline = made(&s);
    expect_points(&outline.edges[HW_EDGE_RIGHT], slant, 3);
    expect_points(&outline.edges[HW_EDGE_LEFT], side, 3);
    ck_assert_str_eq(outline.edges[HW_EDGE_LEFT].points[1].stretch, "side");
    s.rule.sides[HW_RIGHT].count = 0;
    outline = made(&s);
    expect_points(&outline.edges[HW_EDGE_RIGHT], slant, 3);
    expect_points(&outline.edges[HW_EDGE_LEFT], other, 3);
    s.rule.mirrored = false;
    outline = made(&s);
    expect_points(&outline.edges[HW_EDGE_RIGHT], slant, 3);
    expect_points(&outline.edges[HW_EDGE_LEFT], other, 3);
    close_studio(&s);
}
END_TEST

/* The top: by hand 2 x 9 = 18 cm across, less a neck 8 cm wide is 10; on one side alone 5. */
START_TEST(tops)
{
    static const hw_corner flat[] = { LINE("side", 15, 30, 3), LINE("", 9, 40, 4) };
    static const hw_corner to_neck[] = { LINE("side", -15, 30, 5), LINE("", -4, 40, 6) };
    static const hw_corner neck[] = { LINE("", 4, 35, 7), LINE("", 4, 40, 8) };
    studio s;
    open_studio(&s);
    double length_cm = 0;
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(flat) } };
    hw_outline outline = made(&s);
    ck_assert_int_eq(hw_edge_length(&outline.edges[HW_EDGE_TOP], NULL, &length_cm), HW_OK);
    ck_assert_double_eq_tol(length_cm, 18, 1e-12);
    s.rule.neck = EDGE(neck);
    outline = made(&s);
    static const double both[][2] = { { -9, 40 }, { -4, 40 }, { 4, 40 }, { 9, 40 } };
    expect_points(&outline.edges[HW_EDGE_TOP], both, 4);
    ck_assert(outline.edges[HW_EDGE_TOP].points[2].open);
    ck_assert_int_eq(hw_edge_length(&outline.edges[HW_EDGE_TOP], NULL, &length_cm), HW_OK);
    ck_assert_double_eq_tol(length_cm, 10, 1e-12);
    s.rule.sides[HW_LEFT] = EDGE(to_neck);
    outline = made(&s);
    static const double one[][2] = { { 4, 40 }, { 9, 40 } };
    expect_points(&outline.edges[HW_EDGE_TOP], one, 2);
    ck_assert(!outline.edges[HW_EDGE_TOP].points[0].open);
    ck_assert_int_eq(hw_edge_length(&outline.edges[HW_EDGE_TOP], NULL, &length_cm), HW_OK);
    ck_assert_double_eq_tol(length_cm, 5, 1e-12);
    close_studio(&s);
}
END_TEST

/* Places and lengths by hand: a step counts as what lies above it; 3-4-5 triangles. */
START_TEST(straight_by_hand)
{
    static const hw_outline_point points[] = {
        { .across_cm = 10, .up_cm = 0, .stretch = "" },
        { .across_cm = 13, .up_cm = 4, .stretch = "flare" },
        { .across_cm = 9, .up_cm = 4, .stretch = "step" },
        { .across_cm = 9, .up_cm = 10, .stretch = "side" },
        { .across_cm = 5, .up_cm = 13, .stretch = "flare" },
        { .across_cm = 2, .up_cm = 13, .stretch = "step" },
    };
    hw_edge_line edge = { .points = points, .count = 6 };
    static const double up_cm[] = { 13, 0, 2, 4, 7, 10, 11.5, 3.999999 };
    static const double want_cm[] = { 2, 10, 11.5, 9, 9, 9, 7, 12.99999925 };
    double across_cm[8];
    ck_assert_int_eq(hw_edge_at(&edge, up_cm, 8, across_cm), HW_OK);
    for (int i = 0; i < 8; i++) {
        ck_assert_double_eq_tol(across_cm[i], want_cm[i], 1e-9);
    }
    static const struct {
        const char *stretch;
        double length_cm;
    } rows[] = { { NULL, 5 + 4 + 6 + 5 + 3 }, { "flare", 10 }, { "step", 7 }, { "side", 6 },
        { "neck", 0 }, { "", 0 } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double length_cm = -1;
        ck_assert_int_eq(hw_edge_length(&edge, rows[i].stretch, &length_cm), HW_OK);
        ck_assert_double_eq_tol(length_cm, rows[i].length_cm, 1e-12);
    }
}
END_TEST

/* By hand, from the methods' definitions (from memory): the natural cubic spline through (0, 0),
 * (1, 1), (2, 0) has second derivatives 0, -3, 0, so 11/16 at one half; Steffen's, of equal steps,
 * has the secant's slope 1 at the end, by the simplest of its rules, and 0 at the peak: at one half
 * 1/2 + (1 - 0)/8 = 5/8. */
START_TEST(curves_by_hand)
{
    static const struct {
        hw_curve curve;
        double half;
    } rows[] = { { HW_CURVE_NATURAL, 11.0 / 16 }, { HW_CURVE_MONOTONE, 5.0 / 8 } };
    for (size_t i = 0; i < 2; i++) {
        hw_outline_point points[] = {
            { .across_cm = 0, .up_cm = 0, .stretch = "" },
            { .across_cm = 1, .up_cm = 1, .curve = rows[i].curve, .stretch = "a" },
            { .across_cm = 0, .up_cm = 2, .curve = rows[i].curve, .stretch = "a" },
        };
        hw_edge_line edge = { .points = points, .count = 3 };
        static const double up_cm[] = { 0, 0.5, 1, 1.5, 2 };
        double across_cm[5];
        ck_assert_int_eq(hw_edge_at(&edge, up_cm, 5, across_cm), HW_OK);
        ck_assert_double_eq_tol(across_cm[0], 0, 1e-12);
        ck_assert_double_eq_tol(across_cm[1], rows[i].half, 1e-12);
        ck_assert_double_eq_tol(across_cm[2], 1, 1e-12);
        ck_assert_double_eq_tol(across_cm[3], rows[i].half, 1e-12);
        ck_assert_double_eq_tol(across_cm[4], 0, 1e-12);
        /* a spline of two points is a line */
        edge.count = 2;
        ck_assert_int_eq(hw_edge_at(&edge, up_cm, 2, across_cm), HW_OK);
        ck_assert_double_eq_tol(across_cm[1], 0.5, 1e-12);
    }
}
END_TEST

enum { CHORDS = 10000 };

/* The length of an edge by chords between very many places of each way. */
static double chord_sum(const hw_edge_line *edge)
{
    double sum_cm = 0;
    for (int way = 1; way < edge->count; way++) {
        double up_cm[CHORDS + 1];
        double across_cm[CHORDS + 1];
        double low_cm = edge->points[way - 1].up_cm;
        double high_cm = edge->points[way].up_cm;
        for (int i = 0; i <= CHORDS; i++) {
            up_cm[i] = i == CHORDS ? high_cm : low_cm + (high_cm - low_cm) * i / CHORDS;
        }
        ck_assert_int_eq(hw_edge_at(edge, up_cm, CHORDS + 1, across_cm), HW_OK);
        for (int i = 0; i < CHORDS; i++) {
            sum_cm += hypot(across_cm[i + 1] - across_cm[i], up_cm[i + 1] - up_cm[i]);
        }
    }
    return sum_cm;
}

/* The area right of the middle by Simpson's rule between neighbouring points: exact for cubics. */
static double simpson(const hw_edge_line *edge)
{
    double sum_cm2 = 0;
    for (int i = 1; i < edge->count; i++) {
        double low_cm = edge->points[i - 1].up_cm;
        double high_cm = edge->points[i].up_cm;
        double up_cm = (low_cm + high_cm) / 2;
        double middle_cm = 0;
        ck_assert_int_eq(hw_edge_at(edge, &up_cm, 1, &middle_cm), HW_OK);
        sum_cm2 += (high_cm - low_cm) / 6 *
                   (edge->points[i - 1].across_cm + 4 * middle_cm + edge->points[i].across_cm);
    }
    return sum_cm2;
}

/* Chance edges of straight and curved ways without steps, which chords cannot see. */
static hw_edge_line chance_edge(unsigned *state, hw_outline_point *points)
{
    int count = 3 + hw_check_random(state, 8);
    for (int i = 0; i < count; i++) {
        points[i] = (hw_outline_point){
            .across_cm = 20 + hw_check_random(state, 1000) / 100.0,
            .up_cm = i == 0 ? 0 : points[i - 1].up_cm + 1 + hw_check_random(state, 1000) / 100.0,
            .curve = (hw_curve)hw_check_random(state, HW_CURVE_COUNT),
            .stretch = i == 0       ? ""
                       : i % 2 == 0 ? "even"
                                    : "odd",
        };
    }
    return (hw_edge_line){ .points = points, .count = count };
}

/* Lengths against chord sums, areas against Simpson's rule, stretches against the whole. */
START_TEST(against_other_methods)
{
    unsigned state = 11;
    for (int round = 0; round < 60; round++) {
        hw_outline_point points[12];
        hw_edge_line edge = chance_edge(&state, points);
        double length_cm = 0;
        double even_cm = 0;
        double odd_cm = 0;
        ck_assert_int_eq(hw_edge_length(&edge, NULL, &length_cm), HW_OK);
        ck_assert_int_eq(hw_edge_length(&edge, "even", &even_cm), HW_OK);
        ck_assert_int_eq(hw_edge_length(&edge, "odd", &odd_cm), HW_OK);
        ck_assert_double_eq_tol(even_cm + odd_cm, length_cm, 1e-9);
        ck_assert_double_eq_tol(chord_sum(&edge), length_cm, 1e-6 * length_cm);
        hw_outline_point other[12];
        memcpy(other, points, sizeof other);
        for (int i = 0; i < edge.count; i++) {
            other[i].across_cm = -points[i].across_cm;
        }
        hw_outline outline = { .edges = { { .points = other, .count = edge.count }, edge } };
        double cm2 = 0;
        ck_assert_int_eq(hw_outline_area(&outline, &cm2), HW_OK);
        ck_assert_double_eq_tol(cm2, 2 * simpson(&edge), 1e-9 * cm2);
    }
}
END_TEST

/* By hand: 30 x 24 below the armhole, 24 x 14 above it, a shoulder part from 24 to 12 wide over 2,
 * less the neck: from 8 to 12 wide over 3. And Y2: a sleeve from 8 to 15 in over 18 in is 207
 * square inches; https://lindysknitslaces.com/2020/08/24/knitting/how-to-knit-a-helpful-swatch-
 * part-4-swatching-to-estimate-yardage-needed */
START_TEST(areas_by_hand)
{
    studio s;
    open_studio(&s);
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(shaped) }, .neck = EDGE(deep_neck) };
    hw_outline outline = made(&s);
    double cm2 = 0;
    ck_assert_int_eq(hw_outline_area(&outline, &cm2), HW_OK);
    ck_assert_double_eq_tol(cm2, 30 * 24 + 24 * 14 + 36 - 30, 1e-9);
    static const hw_corner sleeve[] = { LINE("side", 7.5, 18, 2) };
    s.rule = (hw_outline_rule){ .sides = { EDGE(sleeve) } };
    s.rule.sides[HW_RIGHT] = s.rule.sides[HW_LEFT];
    s.rule.sides[HW_LEFT].count = 0;
    s.task.main_cm = s.task.width_cm = 8;
    outline = made(&s);
    ck_assert_int_eq(hw_outline_area(&outline, &cm2), HW_OK);
    ck_assert_double_eq_tol(cm2, 207, 1e-9);
    close_studio(&s);
}
END_TEST

/* Necks that are refused. */
static const hw_corner neck_left[] = { LINE("", -4, 35, 9), LINE("", -5, 40, 10) };
static const hw_corner low_neck[] = { LINE("", 4, 4, 9), LINE("", 5, 40, 10) };
static const hw_corner high_neck[] = { LINE("", 4, 40, 9) };
static const hw_corner short_neck[] = { LINE("", 4, 35, 9), LINE("", 5, 39, 10) };

/* What is refused: code, line and words that name piece, size, edge, stretch and fault. */
START_TEST(refusals)
{
    static const hw_corner plain[] = { LINE("side", 15, 40, 3) };
    static const hw_corner falls[] = { LINE("side", 15, 30, 3), LINE("armhole", 12, 29, 4) };
    static const hw_corner falls_left[] = { LINE("side", -15, 30, 3), LINE("armhole", -12, 29, 4) };
    static const hw_corner ledge[] = { LINE("side", 15, 30, 3), LINE("ledge", 18, 30, 4),
        LINE("ledge", 12, 30, 5), LINE("side", 12, 40, 6) };
    static const hw_corner neck_back[] = { LINE("", 6, 35, 9), LINE("", 4, 35, 10),
        LINE("", 6, 40, 11) };
    static const hw_corner crosses[] = { LINE("side", 15, 30, 3), LINE("point", -16, 40, 5) };
    static const hw_corner lower[] = { LINE("side", -15, 39, 6) };
    static const hw_corner flat_curve[] = { LINE("side", 15, 30, 3),
        WAY("cap", 12, 30, HW_CURVE_MONOTONE, 4), LINE("cap", 10, 40, 5) };
    static const hw_corner in_hem[] = { LINE("vent", 12, 4, 7), LINE("side", 12, 40, 8) };
    static const hw_corner wide_neck[] = { LINE("", 4, 35, 9), LINE("", 15.1, 40, 10) };
    static const hw_corner huge[] = { LINE("side", 1001, 40, 3) };
    static const hw_corner below[] = { LINE("side", 15, -1, 3) };
    static const hw_corner swings[] = { WAY("side", -14.9, 25, HW_CURVE_NATURAL, 3),
        WAY("side", -14.9, 33, HW_CURVE_NATURAL, 4), WAY("side", 15, 40, HW_CURVE_NATURAL, 5) };
    static const hw_corner straight_left[] = { LINE("side", -15, 40, 2) };
    const struct {
        hw_edge_rule left, right, neck;
        int line;
        const char *words;
    } rows[] = {
        { { 0 }, EDGE(falls), { 0 }, 4, "`back`, size 92: the edge `right`, stretch `armhole`, " },
        { EDGE(falls_left), { 0 }, { 0 }, 4, "the edge `left`, stretch `armhole`, turns down" },
        { { 0 }, EDGE(ledge), { 0 }, 5,
            "the edge `right`, stretch `ledge`, leads back over the step before it: leave one of" },
        { { 0 }, EDGE(plain), EDGE(neck_back), 10, "the edge `neck` leads back" },
        { EDGE(straight_left), EDGE(falls), { 0 }, 4,
            "the edge `right`, stretch `armhole`, turns" },
        { EDGE(straight_left), EDGE(crosses), { 0 }, 5, "stretch `point`, crosses the other edge" },
        { EDGE(straight_left), EDGE(swings), { 0 }, 4, "crosses the other edge" },
        { EDGE(lower), EDGE(plain), { 0 }, 3, "the edge `right`, stretch `side`, ends at another" },
        { { 0 }, EDGE(flat_curve), { 0 }, 4, "a curve that begins and ends at one height" },
        { { 0 }, EDGE(in_hem), { 0 }, 7, "within the hem" },
        { { 0 }, EDGE(plain), EDGE(wide_neck), 10, "the edge `neck` leaves the piece" },
        { { 0 }, EDGE(plain), EDGE(neck_left), 9, "leaves the piece" },
        { { 0 }, EDGE(plain), EDGE(low_neck), 9, "begins within the hem" },
        { { 0 }, EDGE(plain), EDGE(high_neck), 9, "has no depth" },
        { { 0 }, EDGE(plain), EDGE(short_neck), 10, "the edge `neck` ends at another height" },
        { { 0 }, EDGE(huge), { 0 }, 3, "out of all measure" },
        { { 0 }, EDGE(below), { 0 }, 3, "below the fold" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        studio s;
        open_studio(&s);
        s.task.face_cm = 5;
        s.rule =
            (hw_outline_rule){ .sides = { rows[i].left, rows[i].right }, .neck = rows[i].neck };
        hw_outline outline = { .top_cm = 77 };
        hw_err err = { 0 };
        ck_assert_int_eq(hw_outline_make(&s.task, &s.arena, &outline, &err), HW_ERR_RANGE);
        ck_assert(hw_check_says(&err, HW_ERR_RANGE, rows[i].words));
        ck_assert_msg(err.line == rows[i].line, "row %zu: line %d", i, err.line);
        ck_assert_double_eq_tol(outline.top_cm, 77, 1e-12);
        close_studio(&s);
    }
}
END_TEST

/* Two steps the same way are as good as one, though the knitted width alone ends inside them. */
START_TEST(steps_one_way)
{
    static const hw_corner corners[] = { LINE("side", 15, 30, 3), LINE("ledge", 14.8, 30, 4),
        LINE("armhole", 12, 30, 5), LINE("armhole", 12, 40, 6) };
    static const double points[][2] = { { 14.7, 0 }, { 14.7, 30 }, { 14.8, 30 }, { 12, 30 },
        { 12, 40 } };
    studio s;
    open_studio(&s);
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(corners) } };
    s.task.width_cm = 29.4;
    hw_outline outline = made(&s);
    expect_points(&outline.edges[HW_EDGE_RIGHT], points, 5);
    close_studio(&s);
}
END_TEST

START_TEST(missing_measurement)
{
    static const hw_corner corners[] = {
        { .stretch = "side", .across = TIMES(0.5, "hips"), .up = CM(30), .line = 12 }
    };
    studio s;
    open_studio(&s);
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(corners) } };
    hw_outline outline = { 0 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_outline_make(&s.task, &s.arena, &outline, &err), HW_ERR_MISSING);
    ck_assert(hw_check_says(&err, HW_ERR_MISSING, "hips"));
    ck_assert_int_eq(err.line, 12);
    close_studio(&s);
}
END_TEST

/* Each request refused in turn: no memory, nothing touched. */
START_TEST(no_memory)
{
    hw_status status = HW_ERR_NOMEM;
    long refused = 0;
    while (status == HW_ERR_NOMEM && refused < 50) {
        studio s;
        open_studio(&s);
        s.rule =
            (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(shaped) }, .neck = EDGE(deep_neck) };
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, ++refused, false);
        hw_outline outline = { .top_cm = 77 };
        status = hw_outline_make(&s.task, &arena, &outline, NULL);
        ck_assert(status == HW_OK || outline.top_cm > 76);
        hw_check_close(&arena, &heap);
        close_studio(&s);
    }
    ck_assert_int_eq(status, HW_OK);
    ck_assert_int_eq(refused, 6); /* five edges, and then none is refused */
}
END_TEST

/* GSL refuses memory, or fails: said, and nothing touched. */
START_TEST(library_failures)
{
    hw_outline_point points[] = {
        { .across_cm = 0, .up_cm = 0, .stretch = "" },
        { .across_cm = 1, .up_cm = 1, .curve = HW_CURVE_NATURAL, .stretch = "a" },
        { .across_cm = 0, .up_cm = 2, .curve = HW_CURVE_NATURAL, .stretch = "a" },
    };
    hw_edge_line edge = { .points = points, .count = 3 };
    hw_outline outline = { .edges = { edge, edge } };
    bool *const faults[] = { &refuse_spline, &fail_spline, &refuse_room };
    static const hw_status want[] = { HW_ERR_NOMEM, HW_ERR_INTERNAL, HW_ERR_NOMEM };
    for (int i = 0; i < 3; i++) {
        double up_cm = 0.5;
        double cm = 77;
        *faults[i] = true;
        ck_assert_int_eq(hw_edge_length(&edge, NULL, &cm), want[i]);
        if (i < 2) {
            ck_assert_int_eq(hw_edge_at(&edge, &up_cm, 1, &cm), want[i]);
            ck_assert_int_eq(hw_outline_area(&outline, &cm), want[i]);
        }
        *faults[i] = false;
        ck_assert_double_eq_tol(cm, 77, 1e-12);
    }
    studio s;
    open_studio(&s);
    static const hw_corner curved[] = { WAY("side", 12, 20, HW_CURVE_NATURAL, 3),
        WAY("side", 15, 40, HW_CURVE_NATURAL, 4) };
    s.rule = (hw_outline_rule){ .sides = { [HW_RIGHT] = EDGE(curved) } };
    hw_outline none = { 0 };
    refuse_spline = true;
    ck_assert_int_eq(hw_outline_make(&s.task, &s.arena, &none, NULL), HW_ERR_NOMEM);
    refuse_spline = false;
    close_studio(&s);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { points_by_hand, slant_begins_above_face, mirrored, tops,
        straight_by_hand, curves_by_hand, against_other_methods, areas_by_hand, refusals,
        steps_one_way, missing_measurement, no_memory, library_failures };
    return hw_check_run(hw_check_suite("outline", tests, sizeof tests / sizeof tests[0]));
}
