/* One piece of a garment on paper: its outline, and what a knitter measures on it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/pieceview.h"

#include <math.h>

#include "core/num.h"

enum { MOST_MOVES = 60 }; /* of a name, outwards */

static const double close_cm = 0.3;  /* heights nearer than that are one */
static const double apart_mm = 3.4;  /* from one line of small words to the next */
static const double gap_mm = 1.5;    /* between a line and its words */
static const double tick_mm = 1;     /* half of one */
static const double ruler_mm = 3;    /* from a piece, or the names at its left, to its heights */
static const double lead_mm = 2.5;   /* from a tick to the words that belong to it */
static const double tiny_mm = 1e-9;  /* a way so short has no slope */
static const double near_mm = 0.7;   /* words come no nearer to an outline */
static const double lower_mm = 0.95; /* from a small word's middle down to its foot */

static const char *length_text(hw_arena *arena, hw_show show, double cm)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_length_show(&buf, cm, show);
    const char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}

static double larger(double a, double b)
{
    return a > b ? a : b;
}

static double smaller(double a, double b)
{
    return a < b ? a : b;
}

/* Put a height into its place among the marks; one that is there already only gains a guide. */
static void add_mark(hw_pieceview *v, double up_cm, bool guide)
{
    int at = 0;
    while (at < v->mark_count && v->marks[at].up_cm < up_cm - close_cm) {
        at++;
    }
    if (at < v->mark_count && fabs(v->marks[at].up_cm - up_cm) <= close_cm) {
        v->marks[at].guide = v->marks[at].guide || guide;
        return;
    }
    if (v->mark_count == HW_PIECEVIEW_MARKS || up_cm <= close_cm) {
        return;
    }
    for (int i = v->mark_count; i > at; i--) {
        v->marks[i] = v->marks[i - 1];
    }
    v->marks[at] = (hw_pieceview_mark){ .up_cm = up_cm, .guide = guide };
    v->mark_count++;
}

/* The top first: it must not be left out, nor moved to a height near it. */
static void find_marks(hw_pieceview *v)
{
    add_mark(v, v->top_cm, false);
    add_mark(v, v->piece->face_cm, false);
    for (int e = HW_EDGE_LEFT; e <= HW_EDGE_RIGHT; e++) {
        for (int i = 1; i < v->edges[e].count; i++) {
            double up_cm = v->edges[e].spots[i].up_cm;
            if (hw_trace_ends(&v->edges[e], i) && up_cm < v->top_cm - close_cm) {
                add_mark(v, up_cm, up_cm > v->piece->face_cm + close_cm);
            }
        }
    }
    if (v->edges[HW_EDGE_NECK_RIGHT].count > 0) {
        add_mark(v, v->edges[HW_EDGE_NECK_RIGHT].spots[0].up_cm, false);
    }
}

static double widest_name_mm(const hw_trace *trace)
{
    double widest_mm = 0;
    for (int i = 1; i < trace->count; i++) {
        widest_mm = larger(widest_mm, hw_look_width_mm(HW_LOOK_SMALL, trace->spots[i].stretch));
    }
    return widest_mm;
}

static hw_status measure_words(hw_show show, hw_arena *arena, hw_pieceview *v)
{
    double heights_mm = 0;
    for (int i = 0; i < v->mark_count; i++) {
        v->marks[i].text = length_text(arena, show, v->marks[i].up_cm);
        if (v->marks[i].text == NULL) {
            return HW_ERR_NOMEM;
        }
        heights_mm = larger(heights_mm, hw_look_width_mm(HW_LOOK_SMALL, v->marks[i].text));
    }
    const hw_trace *left = &v->edges[HW_EDGE_LEFT];
    const hw_trace *right = &v->edges[HW_EDGE_RIGHT];
    v->names_left = !hw_trace_mirrors(left, right);
    v->left_mm =
        heights_mm + lead_mm + ruler_mm + (v->names_left ? widest_name_mm(left) + gap_mm : 0);
    v->right_mm = widest_name_mm(right) + gap_mm;
    v->foot_mm = larger(hw_look_width_mm(HW_LOOK_NAME, v->piece->name),
        hw_look_width_mm(HW_LOOK_SMALL, "2000 stitches at the hem"));
    return HW_OK;
}

hw_status hw_pieceview_make(
    const hw_draw_piece *piece, hw_show show, hw_arena *arena, hw_pieceview *out)
{
    hw_pieceview v = { .piece = piece };
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        hw_status status = hw_trace_edge(&piece->outline->edges[e], arena, &v.edges[e]);
        if (status != HW_OK) {
            return status;
        }
        for (int i = 0; i < v.edges[e].count; i++) {
            const hw_trace_spot *spot = &v.edges[e].spots[i];
            v.from_cm = -larger(-v.from_cm, -spot->across_cm);
            v.to_cm = larger(v.to_cm, spot->across_cm);
            v.top_cm = larger(v.top_cm, spot->up_cm);
        }
    }
    find_marks(&v);
    hw_status status = measure_words(show, arena, &v);
    if (status == HW_OK) {
        *out = v;
    }
    return status;
}

static hw_point spot_at(const hw_pieceplace *pl, double across_cm, double up_cm)
{
    double mm_per_cm = pl->pen->mm_per_cm;
    return (hw_point){ pl->middle_mm + across_cm * mm_per_cm, pl->fold_mm - up_cm * mm_per_cm };
}

/* The spots of an edge behind those that are there; down: from its top. */
static int add_edge(const hw_pieceplace *pl, const hw_trace *trace, bool down, hw_point *points)
{
    for (int i = 0; i < trace->count; i++) {
        const hw_trace_spot *spot = &trace->spots[down ? trace->count - 1 - i : i];
        points[i] = spot_at(pl, spot->across_cm, spot->up_cm);
    }
    return trace->count;
}

/* Round the piece: up its left edge, down and up the neck, down its right edge. */
static void go_round(hw_pieceplace *pl)
{
    const hw_trace *edges = pl->view->edges;
    size_t most = 0;
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        most += (size_t)edges[e].count;
    }
    hw_point *points = hw_arena_get(pl->pen->arena, most, sizeof *points);
    if (points == NULL) {
        return;
    }
    int count = add_edge(pl, &edges[HW_EDGE_LEFT], false, points);
    count += add_edge(pl, &edges[HW_EDGE_NECK_LEFT], true, &points[count]);
    count += add_edge(pl, &edges[HW_EDGE_NECK_RIGHT], false, &points[count]);
    count += add_edge(pl, &edges[HW_EDGE_RIGHT], true, &points[count]);
    pl->round = points;
    pl->round_count = count;
}

static void outline(const hw_pieceplace *pl)
{
    const hw_trace *edges = pl->view->edges;
    hw_drawing *d = pl->pen->drawing;
    hw_drawing_polygon(d, HW_LOOK_PIECE, pl->round, pl->round_count);
    if (pl->view->piece->face_cm > 0) {
        double face_cm = pl->view->piece->face_cm;
        hw_point top = spot_at(pl, hw_trace_across_cm(&edges[HW_EDGE_LEFT], face_cm), face_cm);
        hw_point foot = spot_at(pl, hw_trace_across_cm(&edges[HW_EDGE_RIGHT], 0), 0);
        hw_drawing_rect(d, HW_LOOK_SHADE, top, foot);
        hw_drawing_line(d, HW_LOOK_DASHED, top, (hw_point){ foot.x_mm, top.y_mm });
    }
    hw_drawing_polygon(d, HW_LOOK_OUTLINE, pl->round, pl->round_count);
}

/* A width in words, in cm alone where both units would stand out beside the piece. */
static const char *width_text(const hw_pieceplace *pl, hw_point middle, double cm)
{
    const char *text = length_text(pl->pen->arena, pl->pen->show, cm);
    if (text == NULL || pl->pen->show != HW_SHOW_BOTH) {
        return text;
    }
    double half_mm = hw_look_width_mm(HW_LOOK_SMALL, text) / 2;
    bool within = middle.x_mm - half_mm >= spot_at(pl, pl->view->from_cm, 0).x_mm - gap_mm &&
                  middle.x_mm + half_mm <= spot_at(pl, pl->view->to_cm, 0).x_mm + gap_mm;
    return within ? text : length_text(pl->pen->arena, HW_SHOW_CM, cm);
}

static void tick(hw_drawing *d, hw_point at)
{
    hw_drawing_line(d, HW_LOOK_THIN, (hw_point){ at.x_mm, at.y_mm - tick_mm },
        (hw_point){ at.x_mm, at.y_mm + tick_mm });
}

/* A measuring line along the page between two points at one height, and its length above it, or
 * below it. */
static void measure(const hw_pieceplace *pl, hw_point from, hw_point to, double words_down_mm)
{
    hw_drawing *d = pl->pen->drawing;
    hw_point middle = { (from.x_mm + to.x_mm) / 2, from.y_mm + words_down_mm };
    hw_drawing_line(d, HW_LOOK_THIN, from, to);
    tick(d, from);
    tick(d, to);
    hw_drawing_words(d, HW_LOOK_SMALL, middle, HW_ALIGN_MIDDLE,
        width_text(pl, middle, (to.x_mm - from.x_mm) / pl->pen->mm_per_cm));
}

/* The width at the hem below, and that of the neck, or of a flat top, above. */
static void end_widths(const hw_pieceplace *pl)
{
    const hw_trace *edges = pl->view->edges;
    hw_point from = spot_at(pl, edges[HW_EDGE_LEFT].spots[0].across_cm, 0);
    hw_point to = spot_at(pl, edges[HW_EDGE_RIGHT].spots[0].across_cm, 0);
    from.y_mm += 2 * gap_mm;
    to.y_mm = from.y_mm;
    measure(pl, from, to, apart_mm);
    bool neck = edges[HW_EDGE_NECK_LEFT].count > 0 && edges[HW_EDGE_NECK_RIGHT].count > 0;
    const hw_trace *left = &edges[neck ? HW_EDGE_NECK_LEFT : HW_EDGE_LEFT];
    const hw_trace *right = &edges[neck ? HW_EDGE_NECK_RIGHT : HW_EDGE_RIGHT];
    double left_cm = left->spots[left->count - 1].across_cm;
    double right_cm = right->spots[right->count - 1].across_cm;
    if (right_cm - left_cm > close_cm) {
        from = spot_at(pl, left_cm, pl->view->top_cm);
        to = spot_at(pl, right_cm, pl->view->top_cm);
        from.y_mm -= 2 * gap_mm;
        to.y_mm = from.y_mm;
        measure(pl, from, to, -gap_mm);
    }
}

/* Narrow the part of a straight way, span[0] to span[1] of 0 to 1, to where it is within half of
 * a middle; false where nothing is left. */
static bool narrow(double from, double step, double middle, double half, double *span)
{
    if (fabs(step) < tiny_mm) {
        return fabs(from - middle) < half;
    }
    double enters = (middle - half - from) / step;
    double leaves = (middle + half - from) / step;
    span[0] = larger(span[0], smaller(enters, leaves));
    span[1] = smaller(span[1], larger(enters, leaves));
    return span[0] < span[1];
}

/* Whether a text would lie on the outline. */
static bool touches(const hw_pieceplace *pl, hw_point at, hw_align align, const char *text)
{
    static const double before[] = {
        [HW_ALIGN_START] = 0.5, [HW_ALIGN_MIDDLE] = 0, [HW_ALIGN_END] = -0.5
    };
    double width_mm = hw_look_width_mm(HW_LOOK_SMALL, text);
    hw_point middle = { at.x_mm + before[align] * width_mm, at.y_mm - lower_mm };
    for (int i = 0; i < pl->round_count; i++) {
        hw_point from = pl->round[i];
        hw_point to = pl->round[(i + 1) % pl->round_count];
        double span[] = { 0, 1 };
        if (narrow(from.x_mm, to.x_mm - from.x_mm, middle.x_mm, width_mm / 2 + near_mm, span) &&
            narrow(from.y_mm, to.y_mm - from.y_mm, middle.y_mm, apart_mm / 2, span)) {
            return true;
        }
    }
    return false;
}

/* A width on a line across the piece: above it, or below, where it touches nothing; in cm alone
 * where that is shorter. Where there is no such place, neither line nor width is drawn. */
static bool guide(const hw_pieceplace *pl, double up_cm)
{
    const hw_trace *edges = pl->view->edges;
    double left_cm = hw_trace_across_cm(&edges[HW_EDGE_LEFT], up_cm);
    double right_cm = hw_trace_across_cm(&edges[HW_EDGE_RIGHT], up_cm);
    hw_point from = spot_at(pl, left_cm, up_cm);
    hw_point to = spot_at(pl, right_cm, up_cm);
    const hw_show shows[] = { pl->pen->show,
        pl->pen->show == HW_SHOW_BOTH ? HW_SHOW_CM : pl->pen->show };
    const double downs_mm[] = { -gap_mm / 2, apart_mm - gap_mm / 2 };
    for (int i = 0; i < 4; i++) {
        const char *text = length_text(pl->pen->arena, shows[i / 2], right_cm - left_cm);
        hw_point at = { (from.x_mm + to.x_mm) / 2, from.y_mm + downs_mm[i % 2] };
        if (text == NULL || (hw_look_width_mm(HW_LOOK_SMALL, text) < to.x_mm - from.x_mm &&
                                !touches(pl, at, HW_ALIGN_MIDDLE, text))) {
            hw_drawing_line(pl->pen->drawing, HW_LOOK_DASHED, from, to);
            hw_drawing_words(pl->pen->drawing, HW_LOOK_SMALL, at, HW_ALIGN_MIDDLE, text);
            return true;
        }
    }
    return false;
}

/* A ruler at the left: heights from the fold, their words pushed up where they would touch. */
static void heights(const hw_pieceplace *pl)
{
    const hw_pieceview *v = pl->view;
    hw_drawing *d = pl->pen->drawing;
    hw_point foot = spot_at(pl, v->from_cm, 0);
    foot.x_mm -= ruler_mm + (v->names_left ? widest_name_mm(&v->edges[HW_EDGE_LEFT]) + gap_mm : 0);
    double free_mm = foot.y_mm;
    double guide_mm = foot.y_mm;
    hw_drawing_line(d, HW_LOOK_THIN, foot, (hw_point){ foot.x_mm, spot_at(pl, 0, v->top_cm).y_mm });
    hw_drawing_line(d, HW_LOOK_THIN, (hw_point){ foot.x_mm - tick_mm, foot.y_mm },
        (hw_point){ foot.x_mm + tick_mm, foot.y_mm });
    for (int i = 0; i < v->mark_count; i++) {
        hw_point at = { foot.x_mm, spot_at(pl, 0, v->marks[i].up_cm).y_mm };
        double words_mm = smaller(at.y_mm, free_mm);
        free_mm = words_mm - apart_mm;
        hw_drawing_line(d, HW_LOOK_THIN, (hw_point){ at.x_mm + tick_mm, at.y_mm }, at);
        hw_drawing_line(
            d, HW_LOOK_THIN, at, (hw_point){ at.x_mm - lead_mm + gap_mm / 2, words_mm });
        hw_drawing_words(d, HW_LOOK_SMALL, (hw_point){ at.x_mm - lead_mm, words_mm + lower_mm },
            HW_ALIGN_END, v->marks[i].text);
        if (v->marks[i].guide && guide_mm - at.y_mm >= 2 * apart_mm &&
            guide(pl, v->marks[i].up_cm)) {
            guide_mm = at.y_mm;
        }
    }
}

/* A name outside its place on the edge, moved out until it touches nothing. */
static void name(const hw_pieceplace *pl, hw_point at, hw_side side, const char *text)
{
    double out_mm = side == HW_LEFT ? -gap_mm : gap_mm;
    hw_align align = side == HW_LEFT ? HW_ALIGN_END : HW_ALIGN_START;
    at.x_mm += out_mm;
    for (int i = 0; i < MOST_MOVES && touches(pl, at, align, text); i++) {
        at.x_mm += out_mm / 2;
    }
    hw_drawing_words(pl->pen->drawing, HW_LOOK_SMALL, at, align, text);
}

/* The name of each stretch beside its middle, no two on one line. */
static void names(const hw_pieceplace *pl, hw_side side)
{
    const hw_trace *trace = &pl->view->edges[side == HW_LEFT ? HW_EDGE_LEFT : HW_EDGE_RIGHT];
    double from_cm = trace->spots[0].up_cm;
    double free_mm = pl->fold_mm;
    for (int i = 1; i < trace->count; i++) {
        if (!hw_trace_ends(trace, i)) {
            continue;
        }
        double up_cm = (from_cm + trace->spots[i].up_cm) / 2;
        from_cm = trace->spots[i].up_cm;
        if (trace->spots[i].stretch[0] != '\0') {
            hw_point at = spot_at(pl, hw_trace_across_cm(trace, up_cm), up_cm);
            at.y_mm = smaller(at.y_mm + lower_mm, free_mm);
            free_mm = at.y_mm - apart_mm;
            name(pl, at, side, trace->spots[i].stretch);
        }
    }
}

/* What stands in the middle below a piece: its name, and stitches where they are said. */
static void foot(const hw_pieceplace *pl)
{
    const hw_draw_piece *piece = pl->view->piece;
    double middle_cm = (pl->view->from_cm + pl->view->to_cm) / 2;
    hw_point at = spot_at(pl, middle_cm, 0);
    hw_drawing *d = pl->pen->drawing;
    at.y_mm += 2 * gap_mm + 2.6 * apart_mm;
    hw_drawing_words(d, HW_LOOK_NAME, at, HW_ALIGN_MIDDLE, piece->name);
    const struct {
        int sts;
        const char *where;
    } lines[] = { { piece->hem_sts, "hem" }, { piece->top_sts, "top" } };
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
        if (lines[i].sts > 0) {
            at.y_mm += apart_mm;
            hw_drawing_words(d, HW_LOOK_SMALL, at, HW_ALIGN_MIDDLE,
                hw_arena_format(pl->pen->arena, "%d %s at the %s", lines[i].sts,
                    lines[i].sts == 1 ? "stitch" : "stitches", lines[i].where));
        }
    }
}

void hw_pieceview_draw(const hw_pieceplace *at)
{
    hw_pieceplace pl = *at;
    go_round(&pl);
    outline(&pl);
    end_widths(&pl);
    heights(&pl);
    if (pl.view->names_left) {
        names(&pl, HW_LEFT);
    }
    names(&pl, HW_RIGHT);
    foot(&pl);
}
