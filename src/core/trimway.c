/* Ways of trims, found from the points at which edges meet.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimway.h"

#include <math.h>
#include <string.h>

static const double same_cm = 0.05; /* points that are nearer to each other are one */

static const hw_edge_run *along_of(const hw_trimway *way, int trim)
{
    return &way->trims[trim].along;
}

static bool is_end(const hw_edge_part *part)
{
    return part->piece < 0;
}

/* Whether an edge that is followed upwards runs from right to left, once its trim stands up. */
static bool climbs_leftwards(hw_edge edge)
{
    return edge == HW_EDGE_RIGHT || edge == HW_EDGE_NECK_LEFT;
}

bool hw_trimway_same(const hw_outline_point *a, const hw_outline_point *b)
{
    return fabs(a->across_cm - b->across_cm) < same_cm && fabs(a->up_cm - b->up_cm) < same_cm;
}

bool hw_trimway_find_reach(const hw_trimway *way, const hw_edge_part *part, hw_trimway_reach *out)
{
    *out = (hw_trimway_reach){ .first = -1 };
    if (is_end(part) || way->outlines[part->piece] == NULL) {
        return false;
    }
    const hw_edge_line *edge = &way->outlines[part->piece]->edges[part->edge];
    out->points = edge->points;
    for (int i = 1; i < edge->count; i++) {
        if (part->stretch == NULL || strcmp(edge->points[i].stretch, part->stretch) == 0) {
            out->first = out->first < 0 ? i - 1 : out->first;
            out->last = i;
        }
    }
    return out->first >= 0;
}

/* Followed from right to left, a part on a right edge goes up; a top begins at its right. */
bool hw_trimway_find_corner(
    const hw_trimway *way, const hw_trimway_spot *spot, hw_trimway_corner *out)
{
    const hw_edge_part *part = &along_of(way, spot->trim)->parts[spot->part];
    hw_trimway_reach r;
    if (!hw_trimway_find_reach(way, part, &r)) {
        return false;
    }
    bool ends_last = climbs_leftwards(part->edge) == (way->first[spot->trim] == HW_RIGHT);
    *out =
        (hw_trimway_corner){ part->piece, r.points[ends_last == spot->leaving ? r.last : r.first] };
    return true;
}

/* ---- Over the ends of other trims ---- */

/* Whether a trim begins or ends at an end of an edge, and at which. */
static bool lies_at(const hw_trimway *way, int trim, const hw_edge_part *edge, bool *at_last)
{
    const hw_trimway_spot ends[] = { { trim, 0, false },
        { trim, along_of(way, trim)->count - 1, true } };
    hw_trimway_reach r;
    bool found = false;
    for (int i = 0; i < 2 && !found && hw_trimway_find_reach(way, edge, &r); i++) {
        hw_trimway_corner c;
        if (hw_trimway_find_corner(way, &ends[i], &c) && c.piece == edge->piece) {
            *at_last = hw_trimway_same(&c.at, &r.points[r.last]);
            found = *at_last || hw_trimway_same(&c.at, &r.points[r.first]);
        }
    }
    return found;
}

bool hw_trimway_meets(const hw_trimway *way, int trim, int part, hw_trimway_meeting *out)
{
    const hw_edge_run *along = along_of(way, trim);
    for (int i = part - 1; i <= part + 1; i += 2) {
        bool at_last = false;
        if (i >= 0 && i < along->count &&
            lies_at(way, along->parts[part].trim, &along->parts[i], &at_last)) {
            *out = (hw_trimway_meeting){ i, at_last };
            return true;
        }
    }
    return false;
}

/* ---- From edge to edge ---- */

static bool same_part(const hw_edge_part *a, const hw_edge_part *b)
{
    bool same = a->piece == b->piece && a->edge == b->edge;
    return same &&
           (a->stretch == NULL || b->stretch == NULL || strcmp(a->stretch, b->stretch) == 0);
}

/* Whether edges in a row come to a corner. */
static bool touches(const hw_trimway *way, const hw_edge_run *run, const hw_trimway_corner *c)
{
    bool found = false;
    for (int i = 0; i < run->count; i++) {
        hw_trimway_reach r;
        if (run->parts[i].piece != c->piece || !hw_trimway_find_reach(way, &run->parts[i], &r)) {
            continue;
        }
        for (int k = r.first; k <= r.last; k++) {
            found = found || hw_trimway_same(&r.points[k], &c->at);
        }
    }
    return found;
}

static int find_join(const hw_trimway *way, const hw_trimway_corner *a, const hw_trimway_corner *b)
{
    for (int j = 0; j < way->garment->join_count; j++) {
        const hw_edge_run *ends = way->garment->joins[j].ends;
        if ((touches(way, &ends[0], a) && touches(way, &ends[1], b)) ||
            (touches(way, &ends[1], a) && touches(way, &ends[0], b))) {
            return j;
        }
    }
    return -1;
}

/* Whether a join that does not run along the trim's own edge comes to a corner. */
static bool is_sewn(const hw_trimway *way, const hw_edge_part *own, const hw_trimway_corner *c)
{
    bool sewn = false;
    for (int at = 0; at < 2 * way->garment->join_count; at++) {
        const hw_edge_run *run = &way->garment->joins[at / 2].ends[at % 2];
        bool along = false;
        for (int i = 0; i < run->count; i++) {
            along = along || same_part(&run->parts[i], own);
        }
        sewn = sewn || (!along && touches(way, run, c));
    }
    return sewn;
}

hw_trimway_going hw_trimway_between(const hw_trimway *way, const hw_trimway_pair *pair, int *join)
{
    const hw_edge_part *parts = along_of(way, pair->trim)->parts;
    const hw_trimway_spot leaving = { pair->trim, pair->from, true };
    const hw_trimway_spot coming = { pair->trim, pair->to, false };
    hw_trimway_corner a;
    hw_trimway_corner b;
    if (!hw_trimway_find_corner(way, &leaving, &a) || !hw_trimway_find_corner(way, &coming, &b) ||
        (a.piece == b.piece && hw_trimway_same(&a.at, &b.at))) {
        return HW_TRIMWAY_MEETS;
    }
    int found = find_join(way, &a, &b);
    if (found >= 0) {
        if (join != NULL) {
            *join = found;
        }
        return HW_TRIMWAY_JOINED;
    }
    bool known = a.piece == b.piece || is_sewn(way, &parts[pair->from], &a) ||
                 is_sewn(way, &parts[pair->to], &b);
    return known ? HW_TRIMWAY_APART : HW_TRIMWAY_UNKNOWN;
}

/* ---- Checks ---- */

static hw_status check_end(const hw_trimway *way, int trim, int part, hw_err *err)
{
    const hw_edge_part *end = &along_of(way, trim)->parts[part];
    hw_trimway_meeting meeting;
    if (hw_trimway_meets(way, trim, part, &meeting)) {
        return HW_OK;
    }
    (void)hw_err_set(err, HW_ERR_RANGE,
        "`%.60s end` does not lie at an end of the edge beside it under `along`: write it next to "
        "the edge that it meets",
        way->trims[end->trim].name);
    return hw_err_place_in_garment(err, HW_ERR_RANGE, end->line, end->column);
}

static hw_status check_edge(const hw_trimway *way, int trim, int part, hw_err *err)
{
    const hw_edge_part *parts = along_of(way, trim)->parts;
    const hw_trimway_pair pair = { trim, part - 1, part };
    if (part == 0 || hw_trimway_between(way, &pair, NULL) != HW_TRIMWAY_APART) {
        return HW_OK;
    }
    (void)hw_err_set(err, HW_ERR_RANGE,
        "the %s edge of `%.60s` does not begin where the edge before it ends, the %s of `%.60s`: "
        "name the edges under `along` in the order in which they meet",
        hw_edge_name(parts[part].edge), way->garment->pieces[parts[part].piece].name,
        hw_edge_name(parts[part - 1].edge), way->garment->pieces[parts[part - 1].piece].name);
    return hw_err_place_in_garment(err, HW_ERR_RANGE, parts[part].line, parts[part].column);
}

hw_status hw_trimway_check(const hw_trimway *way, int trim, hw_err *err)
{
    const hw_edge_run *along = along_of(way, trim);
    hw_status status = HW_OK;
    for (int i = 0; i < along->count && status == HW_OK; i++) {
        status =
            is_end(&along->parts[i]) ? check_end(way, trim, i, err) : check_edge(way, trim, i, err);
    }
    return status;
}

/* ---- Which way ---- */

/* Where a part begins on its edge, as a number that grows with height. */
static int place_of(const hw_trimway *way, const hw_edge_part *part)
{
    hw_trimway_reach r;
    return hw_trimway_find_reach(way, part, &r) ? r.first : 0;
}

static hw_side first_of(hw_edge edge, bool rises)
{
    return rises == climbs_leftwards(edge) ? HW_RIGHT : HW_LEFT;
}

/* The same of an edge and the end of another trim beside it. */
static bool end_tells(const hw_trimway *way, const hw_edge_part *pair, hw_side *first)
{
    int end = is_end(&pair[0]) ? 0 : 1;
    const hw_edge_part *edge = &pair[1 - end];
    bool at_last = false;
    if (is_end(edge) || !lies_at(way, pair[end].trim, edge, &at_last)) {
        return false;
    }
    *first = first_of(edge->edge, at_last == (end == 1));
    return true;
}

/* Whether a pair of neighbours has a corner in common, and at which end of the first that lies. */
static bool share_corner(const hw_trimway *way, const hw_edge_part *pair, bool *at_last)
{
    hw_trimway_reach a;
    hw_trimway_reach b;
    if (!hw_trimway_find_reach(way, &pair[0], &a) || !hw_trimway_find_reach(way, &pair[1], &b)) {
        return false;
    }
    const hw_outline_point *ends[] = { &b.points[b.first], &b.points[b.last] };
    bool found = false;
    for (int i = 0; i < 2 && !found; i++) {
        *at_last = hw_trimway_same(&a.points[a.last], ends[i]);
        found = *at_last || hw_trimway_same(&a.points[a.first], ends[i]);
    }
    return found;
}

/* The end at which a pair of neighbours on one piece begins; false where they do not tell. */
static bool pair_tells(const hw_trimway *way, const hw_edge_part *pair, hw_side *first)
{
    if (is_end(&pair[0]) || is_end(&pair[1])) {
        return end_tells(way, pair, first);
    }
    if (pair[0].piece != pair[1].piece) {
        return false;
    }
    if (pair[0].edge == pair[1].edge) {
        *first = first_of(pair[0].edge, place_of(way, &pair[0]) < place_of(way, &pair[1]));
        return true;
    }
    bool at_last = false;
    bool told = share_corner(way, pair, &at_last);
    *first = told ? first_of(pair[0].edge, at_last) : *first;
    return told;
}

/* The end of an upright edge that lies lower, once its trim stands up; a top has none. */
static hw_side lower_of(hw_edge edge)
{
    return edge == HW_EDGE_TOP ? HW_RIGHT : first_of(edge, true);
}

/* ---- Necks ---- */

/* Whether an edge beside a neck comes to the shoulder's end of one of its halves. */
static bool comes_to(const hw_trimway *way, const hw_edge_part *beside, const hw_edge_part *half)
{
    hw_trimway_reach own;
    hw_trimway_reach r;
    if (!hw_trimway_find_reach(way, half, &own) || !hw_trimway_find_reach(way, beside, &r)) {
        return false;
    }
    const hw_trimway_corner top = { half->piece, own.points[own.last] };
    const hw_trimway_corner ends[] = { { beside->piece, r.points[r.first] },
        { beside->piece, r.points[r.last] } };
    bool found = false;
    for (int i = 0; i < 2 && !found; i++) {
        found = beside->piece == half->piece ? hw_trimway_same(&ends[i].at, &top.at)
                                             : find_join(way, &ends[i], &top) >= 0;
    }
    return found;
}

/* Whether the halves of a neck have to change places: what stands beside them meets the other. */
static bool is_turned(const hw_trimway *way, const hw_edge_run *along, int left)
{
    const hw_edge_part *half = &along->parts[left];
    const hw_edge_part *before = left > 0 ? half - 1 : NULL;
    const hw_edge_part *behind = left + 2 < along->count ? half + 2 : NULL;
    if (before != NULL && comes_to(way, before, &half[0]) != comes_to(way, before, &half[1])) {
        return comes_to(way, before, &half[1]);
    }
    return behind != NULL && comes_to(way, behind, &half[0]) && !comes_to(way, behind, &half[1]);
}

static void order_necks(hw_trimway *way, hw_edge_run *along)
{
    for (int i = 0; i + 1 < along->count; i++) {
        if (along->parts[i].with_next && is_turned(way, along, i)) {
            hw_edge_part half = along->parts[i];
            along->parts[i] = along->parts[i + 1];
            along->parts[i + 1] = half;
            i++;
        }
    }
}

void hw_trimway_find(hw_trimway *way)
{
    for (int t = 0; t < way->garment->trim_count; t++) {
        way->trims[t] = way->garment->trims[t];
        order_necks(way, &way->trims[t].along);
    }
    for (int t = 0; t < way->garment->trim_count; t++) {
        const hw_edge_run *along = along_of(way, t);
        hw_side first = along->count == 1 ? lower_of(along->parts[0].edge) : HW_RIGHT;
        for (int i = 0; i + 1 < along->count && !pair_tells(way, &along->parts[i], &first); i++) {
        }
        way->first[t] = first;
    }
}

bool hw_trimway_from_below(const hw_trimway *way, int trim)
{
    const hw_edge_run *along = along_of(way, trim);
    const hw_edge_part *edge = NULL;
    int edges = 0;
    for (int i = 0; i < along->count; i++) {
        edge = is_end(&along->parts[i]) ? edge : &along->parts[i];
        edges += !is_end(&along->parts[i]);
    }
    return edges == 1 && edge->edge != HW_EDGE_TOP && way->first[trim] == lower_of(edge->edge);
}
