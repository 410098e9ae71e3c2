/* One piece of a garment drawn: its outline, and round it what a knitter measures on it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/pieceview.h"

#include <math.h>

enum { MOST_MOVES = 60 }; /* of a name, outwards */

static const double apart_mm = 3.4; /* from one line of small words to the next */
static const double gap_mm = HW_PIECEVIEW_GAP_MM;
static const double lead_mm = HW_PIECEVIEW_LEAD_MM;
static const double tick_mm = 1;     /* half of one */
static const double tiny_mm = 1e-9;  /* a way so short has no slope */
static const double near_mm = 0.7;   /* words come no nearer to an outline */
static const double lower_mm = 0.95; /* from a small word's middle down to its foot */
static const double name_mm = 11.84; /* from the fold down to the piece's name */
static const double under_mm = 2.36; /* below the last line */
static const double narrow_cm = 0.3; /* a top so narrow is not measured */

static const char slit_word[] = "slit";
static const char usual_line[] = "2000 stitches at the hem"; /* pieces keep so far apart */

/* A closed line that words keep off. */
typedef struct {
    const hw_point *points;
    int count;
} ring;

/* What a text takes up. */
typedef struct {
    hw_point middle;
    double half_mm;
} box;

/* A piece while it is drawn. */
typedef struct {
    const hw_pieceplace *at;
    ring round; /* the piece */
    ring *strips;
} inking;

static double larger(double a, double b)
{
    return a > b ? a : b;
}

static double smaller(double a, double b)
{
    return a < b ? a : b;
}

static hw_point spot_at(const inking *ink, double across_cm, double up_cm)
{
    const hw_pieceplace *at = ink->at;
    double mm_per_cm = at->pen->mm_per_cm;
    return (hw_point){ at->middle_mm + across_cm * mm_per_cm, at->fold_mm - up_cm * mm_per_cm };
}

static const char *length_text(const inking *ink, double cm)
{
    return hw_pieceview_length(ink->at->pen->arena, ink->at->pen->show, cm);
}

/* ---- Lines ---- */

/* The spots of an edge behind those that are there; down: from its top. */
static int add_edge(const inking *ink, const hw_trace *trace, bool down, hw_point *points)
{
    for (int i = 0; i < trace->count; i++) {
        const hw_trace_spot *spot = &trace->spots[down ? trace->count - 1 - i : i];
        points[i] = spot_at(ink, spot->across_cm, spot->up_cm);
    }
    return trace->count;
}

/* Round the piece: up its left edge, down and up the neck, down its right edge; and round its
 * trims. Where memory is refused the drawing ends. */
static void go_round(inking *ink)
{
    const hw_pieceview *v = ink->at->view;
    hw_arena *arena = ink->at->pen->arena;
    const hw_trace *edges = v->edges;
    size_t most = 0;
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        most += (size_t)edges[e].count;
    }
    hw_point *points = hw_arena_get(arena, most, sizeof *points);
    ink->strips = hw_arena_get(arena, (size_t)v->strip_count, sizeof *ink->strips);
    if (points == NULL || ink->strips == NULL) {
        hw_drawing_refuse(ink->at->pen->drawing);
        return;
    }
    int count = add_edge(ink, &edges[HW_EDGE_LEFT], false, points);
    count += add_edge(ink, &edges[HW_EDGE_NECK_LEFT], true, &points[count]);
    count += add_edge(ink, &edges[HW_EDGE_NECK_RIGHT], false, &points[count]);
    count += add_edge(ink, &edges[HW_EDGE_RIGHT], true, &points[count]);
    ink->round = (ring){ points, count };
    for (int i = 0; i < v->strip_count; i++) {
        hw_point *strip = hw_arena_get(arena, (size_t)v->strips[i].count, sizeof *strip);
        if (strip == NULL) {
            hw_drawing_refuse(ink->at->pen->drawing);
            return;
        }
        ink->strips[i] = (ring){ strip, add_edge(ink, &v->strips[i], false, strip) };
    }
}

/* What lies between two edges from one height to another, filled, a dashed line at each end. */
static void fill(const inking *ink, hw_edge left, hw_edge right, double from_cm, double to_cm)
{
    enum { STEPS = 8 }; /* an edge is nearly straight over so little */
    hw_point points[2 * (STEPS + 1)];
    const hw_trace *edges = ink->at->view->edges;
    hw_drawing *d = ink->at->pen->drawing;
    for (int i = 0; i <= STEPS; i++) {
        double up_cm = from_cm + (to_cm - from_cm) * i / STEPS;
        points[i] = spot_at(ink, hw_trace_across_cm(&edges[left], up_cm), up_cm);
        points[2 * STEPS + 1 - i] = spot_at(ink, hw_trace_across_cm(&edges[right], up_cm), up_cm);
    }
    hw_drawing_polygon(d, HW_LOOK_SHADE, points, 2 * (STEPS + 1));
    hw_drawing_line(d, HW_LOOK_DASHED, points[0], points[2 * STEPS + 1]);
    hw_drawing_line(d, HW_LOOK_DASHED, points[STEPS], points[STEPS + 1]);
}

/* A band higher up; above the beginning of a neck it lies on both halves. */
static void fill_band(const inking *ink, const hw_draw_band *band)
{
    const hw_trace *neck = &ink->at->view->edges[HW_EDGE_NECK_RIGHT];
    double parts_cm = neck->count > 0 ? neck->spots[0].up_cm : ink->at->view->top_cm;
    double whole_cm = smaller(band->to_cm, parts_cm);
    if (band->from_cm < whole_cm) {
        fill(ink, HW_EDGE_LEFT, HW_EDGE_RIGHT, band->from_cm, whole_cm);
    }
    if (band->to_cm > parts_cm && neck->count > 0) {
        double from_cm = larger(band->from_cm, parts_cm);
        fill(ink, HW_EDGE_LEFT, HW_EDGE_NECK_LEFT, from_cm, band->to_cm);
        fill(ink, HW_EDGE_NECK_RIGHT, HW_EDGE_RIGHT, from_cm, band->to_cm);
    }
}

static void outline(const inking *ink)
{
    const hw_pieceview *v = ink->at->view;
    hw_drawing *d = ink->at->pen->drawing;
    for (int i = 0; i < v->strip_count && ink->strips != NULL; i++) {
        hw_drawing_polygon(d, HW_LOOK_SHADE, ink->strips[i].points, ink->strips[i].count);
        hw_drawing_polygon(d, HW_LOOK_THIN, ink->strips[i].points, ink->strips[i].count);
    }
    hw_drawing_polygon(d, HW_LOOK_PIECE, ink->round.points, ink->round.count);
    if (v->piece->face_cm > 0) {
        double face_cm = v->piece->face_cm;
        double left_cm = hw_trace_across_cm(&v->edges[HW_EDGE_LEFT], face_cm);
        hw_point top = spot_at(ink, left_cm, face_cm);
        hw_point foot = spot_at(ink, hw_trace_across_cm(&v->edges[HW_EDGE_RIGHT], 0), 0);
        hw_drawing_rect(d, HW_LOOK_SHADE, top, foot);
        hw_drawing_line(d, HW_LOOK_DASHED, top, (hw_point){ foot.x_mm, top.y_mm });
    }
    for (int b = 0; b < v->piece->band_count; b++) {
        fill_band(ink, &v->piece->bands[b]);
    }
    hw_drawing_polygon(d, HW_LOOK_OUTLINE, ink->round.points, ink->round.count);
}

/* ---- Widths at the ends ---- */

static void tick(hw_drawing *d, hw_point at)
{
    hw_drawing_line(d, HW_LOOK_THIN, (hw_point){ at.x_mm, at.y_mm - tick_mm },
        (hw_point){ at.x_mm, at.y_mm + tick_mm });
}

/* A measuring line along the page between two points at one height, and its length above it, or
 * below it. */
static void measure(const inking *ink, hw_point from, hw_point to, double words_down_mm)
{
    hw_drawing *d = ink->at->pen->drawing;
    hw_point middle = { (from.x_mm + to.x_mm) / 2, from.y_mm + words_down_mm };
    hw_drawing_line(d, HW_LOOK_THIN, from, to);
    tick(d, from);
    tick(d, to);
    hw_drawing_words(d, HW_LOOK_SMALL, middle, HW_ALIGN_MIDDLE,
        length_text(ink, (to.x_mm - from.x_mm) / ink->at->pen->mm_per_cm));
}

/* The width at the hem below, and that of the neck, or of a flat top, above. */
static void end_widths(const inking *ink)
{
    const hw_trace *edges = ink->at->view->edges;
    hw_point from = spot_at(ink, edges[HW_EDGE_LEFT].spots[0].across_cm, 0);
    hw_point to = spot_at(ink, edges[HW_EDGE_RIGHT].spots[0].across_cm, 0);
    from.y_mm += 2 * gap_mm;
    to.y_mm = from.y_mm;
    measure(ink, from, to, apart_mm);
    bool neck = edges[HW_EDGE_NECK_LEFT].count > 0 && edges[HW_EDGE_NECK_RIGHT].count > 0;
    const hw_trace *left = &edges[neck ? HW_EDGE_NECK_LEFT : HW_EDGE_LEFT];
    const hw_trace *right = &edges[neck ? HW_EDGE_NECK_RIGHT : HW_EDGE_RIGHT];
    double left_cm = left->spots[left->count - 1].across_cm;
    double right_cm = right->spots[right->count - 1].across_cm;
    if (right_cm - left_cm > narrow_cm) {
        from = spot_at(ink, left_cm, ink->at->view->high_cm);
        to = spot_at(ink, right_cm, ink->at->view->high_cm);
        from.y_mm -= 2 * gap_mm;
        to.y_mm = from.y_mm;
        measure(ink, from, to, -gap_mm);
    }
}

/* ---- Room for words ---- */

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

static bool crosses(const ring *r, const box *b)
{
    for (int i = 0; i < r->count; i++) {
        hw_point from = r->points[i];
        hw_point to = r->points[(i + 1) % r->count];
        double span[] = { 0, 1 };
        if (narrow(from.x_mm, to.x_mm - from.x_mm, b->middle.x_mm, b->half_mm + near_mm, span) &&
            narrow(from.y_mm, to.y_mm - from.y_mm, b->middle.y_mm, apart_mm / 2, span)) {
            return true;
        }
    }
    return false;
}

static box box_of(hw_point at, hw_align align, const char *text)
{
    static const double before[] = {
        [HW_ALIGN_START] = 0.5, [HW_ALIGN_MIDDLE] = 0, [HW_ALIGN_END] = -0.5
    };
    double width_mm = hw_look_width_mm(HW_LOOK_SMALL, text);
    return (box){ { at.x_mm + before[align] * width_mm, at.y_mm - lower_mm }, width_mm / 2 };
}

/* Whether a text would lie on the outline or a trim. */
static bool touches(const inking *ink, const box *b)
{
    for (int i = 0; i < ink->at->view->strip_count && ink->strips != NULL; i++) {
        if (crosses(&ink->strips[i], b)) {
            return true;
        }
    }
    return crosses(&ink->round, b);
}

/* ---- Widths and bands inside ---- */

/* Words for a piece, on their way to their places. */
typedef struct {
    const inking *ink;
    hw_piecewords *out;
    double free_mm; /* below it there is a line across already */
} wording;

/* Whether a text would lie on a line at a height that runs across the piece. */
static bool lies_at(const wording *w, const box *b, double up_cm)
{
    double y_mm = spot_at(w->ink, 0, up_cm).y_mm;
    return fabs(y_mm - b->middle.y_mm) < apart_mm / 2 - tiny_mm;
}

/* Whether a text would lie on an end of the hem's face or of a band. */
static bool lies_on_band(const wording *w, const box *b)
{
    const hw_draw_piece *piece = w->ink->at->view->piece;
    bool lies = lies_at(w, b, piece->face_cm);
    for (int i = 0; i < piece->band_count; i++) {
        lies =
            lies || lies_at(w, b, piece->bands[i].from_cm) || lies_at(w, b, piece->bands[i].to_cm);
    }
    return lies;
}

/* Whether a text in the middle of a way across the piece would touch neither its ends nor anything
 * that stands there. */
static bool is_free(
    const wording *w, const hw_piecewords_line *across, double y_mm, const char *text)
{
    hw_point at = { (across->from.x_mm + across->to.x_mm) / 2, y_mm };
    box b = box_of(at, HW_ALIGN_MIDDLE, text);
    if (2 * b.half_mm >= across->to.x_mm - across->from.x_mm || touches(w->ink, &b) ||
        lies_on_band(w, &b)) {
        return false;
    }
    for (int i = 0; i < w->out->text_count; i++) {
        const hw_piecewords_text *there = &w->out->texts[i];
        box other = box_of(there->at, HW_ALIGN_MIDDLE, there->text);
        if (fabs(other.middle.x_mm - b.middle.x_mm) < other.half_mm + b.half_mm + near_mm &&
            fabs(other.middle.y_mm - b.middle.y_mm) < apart_mm - tiny_mm) {
            return false;
        }
    }
    return true;
}

static void put(wording *w, const hw_piecewords_line *across, double y_mm, const char *text)
{
    w->out->texts[w->out->text_count++] =
        (hw_piecewords_text){ { (across->from.x_mm + across->to.x_mm) / 2, y_mm }, text };
}

static hw_piecewords_line across_at(const inking *ink, double up_cm)
{
    const hw_trace *edges = ink->at->view->edges;
    return (
        hw_piecewords_line){ spot_at(ink, hw_trace_across_cm(&edges[HW_EDGE_LEFT], up_cm), up_cm),
        spot_at(ink, hw_trace_across_cm(&edges[HW_EDGE_RIGHT], up_cm), up_cm) };
}

/* A width on a line across the piece: above it, or below; or cm above and inches below. False
 * where it finds no room. */
static bool put_width(wording *w, const hw_piecewords_line *line, double cm)
{
    const hw_piecepen *pen = w->ink->at->pen;
    const char *text = length_text(w->ink, cm);
    const char *in_cm = hw_pieceview_length(pen->arena, HW_SHOW_CM, cm);
    const char *in_in = hw_pieceview_length(pen->arena, HW_SHOW_IN, cm);
    double above_mm = line->from.y_mm - gap_mm / 2;
    double below_mm = above_mm + apart_mm;
    if (text == NULL || in_cm == NULL || in_in == NULL) {
        hw_drawing_refuse(pen->drawing);
        return false;
    }
    if (is_free(w, line, above_mm, text)) {
        put(w, line, above_mm, text);
    } else if (is_free(w, line, below_mm, text)) {
        put(w, line, below_mm, text);
    } else if (pen->show == HW_SHOW_BOTH && is_free(w, line, above_mm, in_cm) &&
               is_free(w, line, below_mm, in_in)) {
        put(w, line, above_mm, in_cm);
        put(w, line, below_mm, in_in);
    } else {
        return false;
    }
    return true;
}

/* The width at a mark, on a line; or below the piece, where lines would nearly touch too. */
static void width_at(wording *w, const hw_pieceview_mark *mark)
{
    const hw_piecepen *pen = w->ink->at->pen;
    hw_piecewords *out = w->out;
    hw_piecewords_line line = across_at(w->ink, mark->up_cm);
    double cm = (line.to.x_mm - line.from.x_mm) / pen->mm_per_cm;
    if (w->free_mm - line.from.y_mm >= 2 * apart_mm && put_width(w, &line, cm)) {
        w->free_mm = line.from.y_mm;
        out->guides[out->guide_count++] = line;
        return;
    }
    const char *wide = length_text(w->ink, cm);
    out->below[out->below_count++] =
        wide == NULL ? NULL : hw_arena_format(pen->arena, "%s wide at %s", wide, mark->text);
}

/* The name of a band in its middle, or as near below or above it as there is room inside; else
 * below the piece. */
static void name_band(wording *w, const hw_draw_band *band)
{
    const hw_piecepen *pen = w->ink->at->pen;
    hw_piecewords_line line = across_at(w->ink, (band->from_cm + band->to_cm) / 2);
    double half_mm = (band->to_cm - band->from_cm) * pen->mm_per_cm / 2;
    double outside_mm = half_mm + apart_mm / 2;
    double middle_mm = line.from.y_mm + lower_mm;
    const double places_mm[] = { middle_mm, middle_mm + outside_mm, middle_mm - outside_mm };
    enum { PLACES = sizeof places_mm / sizeof places_mm[0] };
    for (int i = half_mm >= apart_mm / 2 ? 0 : 1; i < PLACES; i++) {
        if (is_free(w, &line, places_mm[i], band->name)) {
            put(w, &line, places_mm[i], band->name);
            return;
        }
    }
    const char *from = length_text(w->ink, band->from_cm);
    w->out->below[w->out->below_count++] =
        from == NULL ? NULL : hw_arena_format(pen->arena, "%s: from %s up", band->name, from);
}

/* Whether a text would lie on a width's line. */
static bool lies_on_guide(const wording *w, double y_mm)
{
    bool lies = false;
    for (int i = 0; i < w->out->guide_count; i++) {
        double away_mm = fabs(w->out->guides[i].from.y_mm - (y_mm - lower_mm));
        lies = lies || away_mm < apart_mm / 2 - tiny_mm;
    }
    return lies;
}

/* A text at one side of a slit; false where it finds no room. */
static bool put_beside(wording *w, hw_point slit, hw_side side, const char *text)
{
    double way_mm = hw_look_width_mm(HW_LOOK_SMALL, text) + 2 * near_mm + tiny_mm;
    hw_point end = { slit.x_mm + (side == HW_LEFT ? -way_mm : way_mm), slit.y_mm };
    hw_piecewords_line beside = { side == HW_LEFT ? end : slit, side == HW_LEFT ? slit : end };
    bool free = !lies_on_guide(w, slit.y_mm) && is_free(w, &beside, slit.y_mm, text);
    if (free) {
        put(w, &beside, slit.y_mm, text);
    }
    return free;
}

/* A slit's length at a height of it: "slit 11 cm" at its right, or "slit" at its left and the rest
 * at its right. False where that finds no room. */
static bool put_slit(wording *w, hw_point at, const char *text, const char *length)
{
    int before = w->out->text_count;
    bool found = put_beside(w, at, HW_RIGHT, text) ||
                 (put_beside(w, at, HW_LEFT, slit_word) && put_beside(w, at, HW_RIGHT, length));
    w->out->text_count = found ? w->out->text_count : before;
    return found;
}

/* The length of a slit as near to its middle as there is room; else below the piece. */
static void name_slit(wording *w)
{
    const hw_pieceview *v = w->ink->at->view;
    hw_arena *arena = w->ink->at->pen->arena;
    double slit_cm = v->piece->outline->slit_cm;
    const char *length = length_text(w->ink, slit_cm);
    const char *text = length == NULL ? NULL : hw_arena_format(arena, "%s %s", slit_word, length);
    if (text == NULL) {
        hw_drawing_refuse(w->ink->at->pen->drawing);
        return;
    }
    const hw_trace_spot *foot = &v->edges[HW_EDGE_NECK_RIGHT].spots[0];
    hw_point at = spot_at(w->ink, foot->across_cm, foot->up_cm + slit_cm / 2);
    double half_mm = slit_cm * w->ink->at->pen->mm_per_cm / 2;
    at.y_mm += lower_mm;
    for (double away_mm = 0; away_mm < half_mm; away_mm += apart_mm / 2) {
        hw_point above = { at.x_mm, at.y_mm - away_mm };
        hw_point below = { at.x_mm, at.y_mm + away_mm };
        if (put_slit(w, above, text, length) || put_slit(w, below, text, length)) {
            return;
        }
    }
    w->out->below[w->out->below_count++] = text;
}

void hw_pieceview_words(const hw_pieceview *view, const hw_piecepen *pen, hw_piecewords *out)
{
    hw_pieceplace place = { .pen = pen, .view = view };
    inking ink = { .at = &place };
    wording w = { .ink = &ink, .out = out };
    *out = (hw_piecewords){ .wide_mm = hw_look_width_mm(HW_LOOK_NAME, view->piece->name) };
    go_round(&ink);
    for (int i = 0; i < view->line_count; i++) {
        out->below[out->below_count++] = view->lines[i];
    }
    for (int i = 0; i < view->mark_count; i++) {
        if (view->marks[i].guide) {
            width_at(&w, &view->marks[i]);
        }
    }
    for (int b = 0; b < view->piece->band_count; b++) {
        name_band(&w, &view->piece->bands[b]);
    }
    if (view->piece->outline->slit_cm > 0) {
        name_slit(&w);
    }
    out->wide_mm = larger(out->wide_mm, hw_look_width_mm(HW_LOOK_SMALL, usual_line));
    for (int i = 0; i < out->below_count; i++) {
        if (out->below[i] == NULL) {
            hw_drawing_refuse(pen->drawing);
            return;
        }
        out->wide_mm = larger(out->wide_mm, hw_look_width_mm(HW_LOOK_SMALL, out->below[i]));
    }
    out->high_mm = name_mm + out->below_count * apart_mm + under_mm;
}

static hw_point moved(const inking *ink, hw_point by)
{
    return (hw_point){ ink->at->middle_mm + by.x_mm, ink->at->fold_mm + by.y_mm };
}

static void write_inside(const inking *ink)
{
    const hw_piecewords *words = ink->at->words;
    hw_drawing *d = ink->at->pen->drawing;
    for (int i = 0; i < words->guide_count; i++) {
        hw_drawing_line(
            d, HW_LOOK_DASHED, moved(ink, words->guides[i].from), moved(ink, words->guides[i].to));
    }
    for (int i = 0; i < words->text_count; i++) {
        const hw_piecewords_text *text = &words->texts[i];
        hw_drawing_words(d, HW_LOOK_SMALL, moved(ink, text->at), HW_ALIGN_MIDDLE, text->text);
    }
}

/* ---- Heights and names beside the piece ---- */

/* A ruler at the left: heights from the fold, their words pushed up where they would touch. */
static void heights(const inking *ink)
{
    const hw_pieceview *v = ink->at->view;
    hw_drawing *d = ink->at->pen->drawing;
    hw_point foot = spot_at(ink, v->from_cm, 0);
    foot.x_mm -= v->ruler_mm;
    double free_mm = foot.y_mm;
    hw_drawing_line(
        d, HW_LOOK_THIN, foot, (hw_point){ foot.x_mm, spot_at(ink, 0, v->top_cm).y_mm });
    hw_drawing_line(d, HW_LOOK_THIN, (hw_point){ foot.x_mm - tick_mm, foot.y_mm },
        (hw_point){ foot.x_mm + tick_mm, foot.y_mm });
    for (int i = 0; i < v->mark_count; i++) {
        hw_point at = { foot.x_mm, spot_at(ink, 0, v->marks[i].up_cm).y_mm };
        double words_mm = smaller(at.y_mm, free_mm);
        free_mm = words_mm - apart_mm;
        hw_drawing_line(d, HW_LOOK_THIN, (hw_point){ at.x_mm + tick_mm, at.y_mm }, at);
        hw_drawing_line(
            d, HW_LOOK_THIN, at, (hw_point){ at.x_mm - lead_mm + gap_mm / 2, words_mm });
        hw_drawing_words(d, HW_LOOK_SMALL, (hw_point){ at.x_mm - lead_mm, words_mm + lower_mm },
            HW_ALIGN_END, v->marks[i].text);
    }
}

/* A name outside its place on the edge, moved out until it touches nothing. */
static void name(const inking *ink, hw_point at, hw_side side, const char *text)
{
    double out_mm = side == HW_LEFT ? -gap_mm : gap_mm;
    hw_align align = side == HW_LEFT ? HW_ALIGN_END : HW_ALIGN_START;
    at.x_mm += out_mm;
    box b = box_of(at, align, text);
    for (int i = 0; i < MOST_MOVES && touches(ink, &b); i++) {
        at.x_mm += out_mm / 2;
        b = box_of(at, align, text);
    }
    hw_drawing_words(ink->at->pen->drawing, HW_LOOK_SMALL, at, align, text);
}

/* The name of each stretch beside its middle, no two on one line. */
static void names(const inking *ink, hw_side side)
{
    const hw_trace *trace = &ink->at->view->edges[side == HW_LEFT ? HW_EDGE_LEFT : HW_EDGE_RIGHT];
    double from_cm = trace->spots[0].up_cm;
    double free_mm = ink->at->fold_mm;
    for (int i = 1; i < trace->count; i++) {
        if (!hw_trace_ends(trace, i)) {
            continue;
        }
        double up_cm = (from_cm + trace->spots[i].up_cm) / 2;
        from_cm = trace->spots[i].up_cm;
        if (trace->spots[i].stretch[0] != '\0') {
            hw_point at = spot_at(ink, hw_trace_across_cm(trace, up_cm), up_cm);
            at.y_mm = smaller(at.y_mm + lower_mm, free_mm);
            free_mm = at.y_mm - apart_mm;
            name(ink, at, side, trace->spots[i].stretch);
        }
    }
}

/* What stands in the middle below a piece: its name, stitches where they are said, and so on. */
static void write_below(const inking *ink)
{
    const hw_pieceview *v = ink->at->view;
    const hw_piecewords *words = ink->at->words;
    hw_drawing *d = ink->at->pen->drawing;
    hw_point at = spot_at(ink, (v->from_cm + v->to_cm) / 2, 0);
    at.y_mm += name_mm;
    hw_drawing_words(d, HW_LOOK_NAME, at, HW_ALIGN_MIDDLE, v->piece->name);
    for (int i = 0; i < words->below_count; i++) {
        at.y_mm += apart_mm;
        hw_drawing_words(d, HW_LOOK_SMALL, at, HW_ALIGN_MIDDLE, words->below[i]);
    }
}

void hw_pieceview_draw(const hw_pieceplace *place)
{
    inking ink = { .at = place };
    go_round(&ink);
    outline(&ink);
    end_widths(&ink);
    heights(&ink);
    write_inside(&ink);
    if (place->view->names_left) {
        names(&ink, HW_LEFT);
    }
    names(&ink, HW_RIGHT);
    write_below(&ink);
}
