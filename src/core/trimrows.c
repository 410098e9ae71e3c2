/* Rows of trims: where they are picked up, the needles, and the task for the row planner.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/trimrows.h"

#include <string.h>

#include "core/buf.h"
#include "core/num.h"

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
}

/* ---- Which way it runs ---- */

static const char *way_along(hw_edge edge)
{
    static const char *const ways[HW_EDGE_COUNT] = {
        [HW_EDGE_LEFT] = "down",
        [HW_EDGE_RIGHT] = "up",
        [HW_EDGE_NECK_LEFT] = "up",
        [HW_EDGE_NECK_RIGHT] = "down",
        [HW_EDGE_TOP] = "along",
    };
    return ways[edge];
}

/* "20 up right front right neck, 15 down back neck right", from the trim's right end; "9 over the
 * end of neckband". */
static char *along_words(const hw_whole *whole, int trim, const hw_trimmed *t, hw_arena *arena)
{
    const hw_trim_kind *kind = &whole->trims->kinds[trim];
    const hw_edge_run *along = &kind->trim->along;
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    bool refused = false;
    for (int i = 0; i < along->count; i++) {
        int p = kind->first == HW_RIGHT ? i : along->count - 1 - i;
        const hw_edge_part *part = &along->parts[p];
        const hw_pickup_share *share = hw_trimming_share(t, p);
        const char *name = hw_trimming_edge(whole, trim, p, arena);
        refused = refused || name == NULL;
        if (share == NULL || share->sts == 0 || refused) {
            continue;
        }
        hw_buf_format(&buf, "%s%d ", buf.len > 0 ? ", " : "", share->sts);
        if (part->piece < 0) {
            hw_buf_format(&buf, "over the end of %s", whole->trims->kinds[part->trim].trim->name);
        } else {
            hw_buf_format(&buf, "%s %s", way_along(part->edge), name);
        }
    }
    char *text = refused ? NULL : hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}

/* Whether an edge begins at its piece's folded hem. */
static bool at_hem(const hw_whole *whole, int size, const hw_edge_part *part)
{
    if (part->edge != HW_EDGE_LEFT && part->edge != HW_EDGE_RIGHT) {
        return false;
    }
    const hw_edge_line *edge = &hw_plan_draft(whole, size, part->piece)->outline.edges[part->edge];
    return part->stretch == NULL ||
           (edge->count > 1 && strcmp(edge->points[1].stretch, part->stretch) == 0);
}

/* What has two layers to be picked up through: "the folded hem", "the end of neckband"; "" where
 * nothing has. */
static char *through_words(
    const hw_whole *whole, int size, const hw_edge_run *along, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    bool hem = false;
    for (int i = 0; i < along->count; i++) {
        const hw_edge_part *part = &along->parts[i];
        hem = hem || (part->piece >= 0 && at_hem(whole, size, part));
    }
    hw_buf_text(&buf, hem ? "the folded hem" : "");
    for (int i = 0; i < along->count; i++) {
        if (along->parts[i].piece < 0) {
            hw_buf_format(&buf, "%sthe end of %s", buf.len > 0 ? " and " : "",
                whole->trims->kinds[along->parts[i].trim].trim->name);
        }
    }
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}

/* ---- Stitches and needles ---- */

static hw_fit fit_of(const hw_trim_kind *kind, const hw_pickup_count *chosen)
{
    hw_side first = kind->first;
    hw_side last = first == HW_LEFT ? HW_RIGHT : HW_LEFT;
    hw_fit fit = { .motifs = chosen->motifs,
        .visible_sts = chosen->sts,
        .cast_on_sts = chosen->sts,
        .main_sts = chosen->sts };
    fit.margin[first] = chosen->margin[HW_LEFT];
    fit.margin[last] = chosen->margin[HW_RIGHT];
    return fit;
}

static hw_bed_task bed_task(const hw_machine *machine, const hw_trim_kind *kind, const hw_fit *fit)
{
    bool card = kind->has_motif && kind->motif.fits_card;
    return (hw_bed_task){ .needles = machine->needles,
        .card_columns = card ? machine->card_columns : 0,
        .repeat = kind->has_motif ? kind->motif.repeat : 1,
        .card_start = kind->card_start,
        .cast_on_sts = fit->cast_on_sts,
        .before_motif = fit->margin[HW_RIGHT], /* the right end hangs at the left of the bed */
        .motifs = fit->motifs };
}

/* Whether two trims can be knitted from one card that is not punched yet. */
static bool same_card(const hw_trim_kind *a, const hw_trim_kind *b)
{
    const hw_chart *x = &a->motif.chart;
    const hw_chart *y = &b->motif.chart;
    return a->has_motif && b->has_motif && a->input->motif.card_start == 0 &&
           b->input->motif.card_start == 0 && a->motif.gap == b->motif.gap &&
           x->width == y->width && x->rows == y->rows &&
           memcmp(x->cells, y->cells, (size_t)x->width * (size_t)x->rows) == 0;
}

/* Where to punch, when the card is not punched yet: one column for all sizes that fit the bed, and
 * for all trims that have the same figure and gap. Lengths can be hung by any column. */
static bool find_punch(const hw_whole *whole, hw_trim_kind *kind)
{
    hw_bed_task tasks[HW_MAX_SIZES * HW_MAX_TRIMS];
    int count = 0;
    int trims = whole->trims->count;
    for (int at = 0; at < whole->plans[0].finished.count * trims; at++) {
        const hw_trim_kind *other = &whole->trims->kinds[at % trims];
        if (!whole->trims->sizes[at].too_long && same_card(kind, other)) {
            tasks[count++] =
                bed_task(&whole->project->machine, other, &whole->trims->sizes[at].fit);
        }
    }
    bool card = count > 0 && tasks[0].card_columns > 0;
    hw_bed_punch punch = card ? hw_bed_best_start(tasks, count) : (hw_bed_punch){ 0 };
    kind->card_start = punch.possible ? punch.column : 0;
    return punch.possible || (kind->has_motif && count == 0);
}

void hw_trimrows_stitches(hw_whole *whole, int trim)
{
    const hw_trim_kind *kind = &whole->trims->kinds[trim];
    for (int i = 0; i < whole->plans[0].finished.count; i++) {
        hw_trimmed *t = &whole->trims->sizes[i * whole->trims->count + trim];
        t->fit = fit_of(kind, &t->pickup.chosen);
    }
}

hw_status hw_trimrows_card(hw_whole *whole, int trim, hw_arena *arena, hw_err *err)
{
    const hw_machine *machine = &whole->project->machine;
    hw_trim_kind *kind = &whole->trims->kinds[trim];
    int punched = kind->has_motif ? kind->input->motif.card_start : 0;
    kind->card_start = punched > 0 ? punched - 1 : 0;
    kind->free_start = punched == 0 && !find_punch(whole, kind);
    hw_card_task task = { &kind->motif, machine, kind->card_start };
    if (kind->has_motif && hw_card_make(&task, arena, &kind->card) != HW_OK) {
        return no_memory(err);
    }
    return HW_OK;
}

/* ---- Rows ---- */

static bool put_holes(const hw_trim_kind *kind, hw_trimmed *t, hw_arena *arena)
{
    int count = t->holes.count;
    int *right_sts = hw_arena_get(arena, (size_t)count, sizeof *right_sts);
    for (int h = 0; h < count && right_sts != NULL; h++) {
        const hw_hole *hole = &t->holes.holes[kind->first == HW_RIGHT ? h : count - 1 - h];
        right_sts[h] = kind->first == HW_RIGHT ? hole->below_sts : hole->above_sts;
    }
    t->row_trim.holes = right_sts;
    t->row_trim.hole_count = count;
    t->row_trim.hole_sts = t->holes.hole_sts;
    t->row_trim.hole_rows[HW_LAYER_FACE] = count > 0 ? t->hole_rows.face_row : 0;
    t->row_trim.hole_rows[HW_LAYER_FACING] = count > 0 ? t->hole_rows.facing_row : 0;
    return right_sts != NULL;
}

/* The stitches of a length that begins behind so many of the trim's, from its right end. */
static hw_fit fit_of_length(const hw_trim_kind *kind, const hw_trimmed *t, int number, int from)
{
    int repeat = kind->has_motif ? kind->motif.repeat : 1;
    int seam_sts = number > 0 ? HW_LENGTHS_SEAM_STS : 0;
    int left = from - t->fit.margin[HW_RIGHT]; /* of the figures, what lies in lengths before it */
    int figures = left > 0 ? (left + repeat - 1) / repeat : 0;
    int before = t->fit.margin[HW_RIGHT] + figures * repeat - from + seam_sts;
    int gap = kind->has_motif ? kind->motif.gap : 0;
    int own = (t->lengths.sts[number] - before + gap) / repeat;
    int most = t->fit.motifs - figures;
    return (hw_fit){ .cast_on_sts = t->lengths.sts[number],
        .margin = { [HW_RIGHT] = before },
        .motifs = own < most ? own : most };
}

static hw_status place_lengths(
    const hw_machine *machine, const hw_trim_kind *kind, hw_trimmed *t, hw_err *err)
{
    int from = 0;
    for (int i = 0; i < t->lengths.count; i++) {
        hw_fit fit = fit_of_length(kind, t, i, from);
        hw_bed_task task = bed_task(machine, kind, &fit);
        hw_place_on_bed place;
        hw_status status = hw_bed_place(&task, &place, err);
        if (status != HW_OK) {
            return status;
        }
        t->lengths.first[i] = place.first;
        from += t->lengths.sts[i] - (i > 0 ? 2 : 1) * HW_LENGTHS_SEAM_STS;
    }
    return HW_OK;
}

static hw_rowplan_task task_of(const hw_whole *whole, const hw_trim_kind *kind, const hw_trimmed *t)
{
    const hw_project *project = whole->project;
    bool own = kind->input != NULL && kind->input->has_hem;
    const hw_hem_input *hem = own ? &kind->input->hem : &project->hem;
    int joins = hem->closing == HW_CLOSING_HUNG ? 1 : 0;
    return (hw_rowplan_task){ .machine = &project->machine,
        .gauge = kind->gauge,
        .hem = &t->hem,
        .motif = kind->has_motif ? &kind->motif : NULL,
        .fit = &t->fit,
        .place = t->too_long ? NULL : &t->place,
        .trim = &t->row_trim,
        .plain_rows = joins,
        .card_row = 1,
        .card_rows = kind->card.possible ? kind->card.design_rows : 0,
        .start = project->start,
        .round_rows = kind->trim->round ? t->hem.total_rows + joins : 0,
        .either_side = project->either_side,
        .cast_on = hem->cast_on,
        .closing = hem->closing };
}

/* On a bed a casing is open where the ends of its ring meet; in the hand it has no ends. */
static int open_sts(const hw_whole *whole, const hw_trim_kind *kind)
{
    bool hand = whole->project->machine.carriage == HW_CARRIAGE_NONE;
    double sts = hw_gauge_sts(&kind->gauge[HW_BAND], HW_TRIMROWS_OPEN_CM);
    return hand && kind->trim->casing ? hw_num_up(sts) : 0;
}

hw_status hw_trimrows_make(hw_whole *whole, int at, hw_arena *arena, hw_err *err)
{
    int count = whole->trims->count;
    const hw_trim_kind *kind = &whole->trims->kinds[at % count];
    hw_trimmed *t = &whole->trims->sizes[at];
    hw_bed_task bed = bed_task(&whole->project->machine, kind, &t->fit);
    bed.free_start = kind->free_start;
    hw_status status = t->too_long ? place_lengths(&whole->project->machine, kind, t, err)
                                   : hw_bed_place(&bed, &t->place, err);
    if (status != HW_OK) {
        return status;
    }
    t->row_trim.along = along_words(whole, at % count, t, arena);
    t->row_trim.lengths = t->lengths;
    t->row_trim.open_sts = open_sts(whole, kind);
    t->row_trim.through = through_words(whole, at / count, &kind->trim->along, arena);
    if (t->row_trim.along == NULL || t->row_trim.through == NULL || !put_holes(kind, t, arena)) {
        return no_memory(err);
    }
    hw_rowplan_task task = task_of(whole, kind, t);
    return hw_rowplan_make(&task, arena, &t->rows, err);
}
