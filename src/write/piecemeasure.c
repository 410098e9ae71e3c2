/* What is to be told of a piece on paper, before it is known where it goes and how large.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "core/num.h"
#include "write/pieceview.h"

static const double close_cm = 0.3; /* heights nearer than that are one */
static const double ruler_mm = 3;   /* from a piece, or the names at its left, to its heights */

const char *hw_pieceview_length(hw_arena *arena, hw_show show, double cm)
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
    for (int b = 0; b < v->piece->band_count; b++) {
        add_mark(v, v->piece->bands[b].from_cm, false);
        add_mark(v, v->piece->bands[b].to_cm, false);
    }
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
        v->marks[i].text = hw_pieceview_length(arena, show, v->marks[i].up_cm);
        if (v->marks[i].text == NULL) {
            return HW_ERR_NOMEM;
        }
        heights_mm = larger(heights_mm, hw_look_width_mm(HW_LOOK_SMALL, v->marks[i].text));
    }
    const hw_trace *left = &v->edges[HW_EDGE_LEFT];
    const hw_trace *right = &v->edges[HW_EDGE_RIGHT];
    v->names_left = !hw_trace_mirrors(left, right);
    v->ruler_mm = ruler_mm + (v->names_left ? widest_name_mm(left) + HW_PIECEVIEW_GAP_MM : 0);
    v->left_mm = heights_mm + HW_PIECEVIEW_LEAD_MM + v->ruler_mm;
    v->right_mm = widest_name_mm(right) + HW_PIECEVIEW_GAP_MM;
    return HW_OK;
}

static void add_line(hw_pieceview *v, const char *text)
{
    v->lines[v->line_count++] = text;
}

/* Whether a trim was met on an edge before. */
static bool told(const hw_draw_piece *piece, int trim)
{
    for (int t = 0; t < trim; t++) {
        if (strcmp(piece->trims[t].name, piece->trims[trim].name) == 0) {
            return true;
        }
    }
    return false;
}

/* The stitches of a trim along all edges of the piece. */
static int trim_sts(const hw_draw_piece *piece, int trim)
{
    int sts = 0;
    for (int t = trim; t < piece->trim_count; t++) {
        bool same = strcmp(piece->trims[t].name, piece->trims[trim].name) == 0;
        sts += same ? piece->trims[t].sts : 0;
    }
    return sts;
}

static const char *sts_word(int sts)
{
    return sts == 1 ? "stitch" : "stitches";
}

static hw_status find_lines(hw_arena *arena, hw_pieceview *v)
{
    const hw_draw_piece *piece = v->piece;
    const struct {
        int sts;
        const char *where;
    } ends[] = { { piece->hem_sts, "hem" }, { piece->top_sts, "top" } };
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        if (ends[i].sts > 0) {
            add_line(v, hw_arena_format(arena, "%d %s at the %s", ends[i].sts,
                            sts_word(ends[i].sts), ends[i].where));
        }
    }
    for (int t = 0; t < piece->trim_count; t++) {
        int sts = trim_sts(piece, t);
        if (!told(piece, t)) {
            add_line(v, sts > 0 ? hw_arena_format(
                                      arena, "%s: %d %s", piece->trims[t].name, sts, sts_word(sts))
                                : piece->trims[t].name);
        }
    }
    for (int i = 0; i < v->line_count; i++) {
        if (v->lines[i] == NULL) {
            return HW_ERR_NOMEM;
        }
    }
    return HW_OK;
}

/* Make room for what lies round the piece. */
static void take_up(hw_pieceview *v, const hw_trace *trace)
{
    for (int i = 0; i < trace->count; i++) {
        const hw_trace_spot *spot = &trace->spots[i];
        v->from_cm = -larger(-v->from_cm, -spot->across_cm);
        v->to_cm = larger(v->to_cm, spot->across_cm);
        v->high_cm = larger(v->high_cm, spot->up_cm);
    }
}

static hw_status follow_edges(hw_arena *arena, hw_pieceview *v)
{
    for (int e = 0; e < HW_EDGE_COUNT; e++) {
        hw_status status = hw_trace_edge(&v->piece->outline->edges[e], arena, &v->edges[e]);
        if (status != HW_OK) {
            return status;
        }
        take_up(v, &v->edges[e]);
    }
    v->top_cm = v->high_cm;
    return HW_OK;
}

/* Trims lie outside the piece: at the left of somebody who walks up its left edge. */
static hw_status follow_trims(hw_arena *arena, hw_pieceview *v)
{
    static const bool at_left[HW_EDGE_COUNT] = {
        [HW_EDGE_LEFT] = true, [HW_EDGE_NECK_RIGHT] = true, [HW_EDGE_TOP] = true
    };
    v->strips = hw_arena_get(arena, HW_PIECEVIEW_STRIPS, sizeof *v->strips);
    if (v->strips == NULL) {
        return HW_ERR_NOMEM;
    }
    for (int t = 0; t < v->piece->trim_count; t++) {
        const hw_draw_trim *trim = &v->piece->trims[t];
        hw_trace_strip strip = { .stretch = trim->stretch,
            .depth_cm = trim->depth_cm,
            .before_cm = trim->before_cm,
            .past_cm = trim->past_cm,
            .at_left = at_left[trim->edge] };
        hw_trace found = { .count = trim->depth_cm > 0 ? 1 : 0 };
        for (int next = 0; found.count > 0 && v->strip_count < HW_PIECEVIEW_STRIPS;) {
            hw_status status = hw_trace_along(&v->edges[trim->edge], &strip, &next, arena, &found);
            if (status != HW_OK) {
                return status;
            }
            if (found.count > 0) {
                take_up(v, &found);
                v->strips[v->strip_count++] = found;
            }
        }
    }
    return HW_OK;
}

hw_status hw_pieceview_make(
    const hw_draw_piece *piece, hw_show show, hw_arena *arena, hw_pieceview *out)
{
    hw_pieceview v = { .piece = piece };
    hw_status status = follow_edges(arena, &v);
    status = status == HW_OK ? follow_trims(arena, &v) : status;
    status = status == HW_OK ? find_lines(arena, &v) : status;
    if (status == HW_OK) {
        find_marks(&v);
        status = measure_words(show, arena, &v);
    }
    if (status == HW_OK) {
        *out = v;
    }
    return status;
}
