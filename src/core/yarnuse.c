/* Rows into stitches, stitches into yarn.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/yarnuse.h"

#include "core/trimming.h"

enum { PARTS = HW_FABRIC_COUNT + 2 * HW_MAX_BANDS }; /* of one piece at most */

/* What one piece or trim is made of. */
typedef struct {
    hw_yarn_part parts[PARTS];
    int count;
} list;

static void add_plain(list *of, int fabric, int sts)
{
    of->parts[of->count++] =
        (hw_yarn_part){ .fabric = fabric, .counts = { .sts = { [HW_BACKGROUND] = sts } } };
}

static void add_band(list *of, int fabric, const hw_motif *motif, hw_yarn_width width)
{
    of->parts[of->count++] =
        (hw_yarn_part){ .fabric = fabric, .counts = hw_yarn_band(motif, width) };
}

static bool in_upper(const hw_draft *draft, int bands, int row)
{
    bool found = false;
    for (int u = 0; u < bands; u++) {
        const hw_upper *upper = &draft->uppers[u];
        found = found || (row >= upper->first_row && row < upper->first_row + upper->rows);
    }
    return found;
}

/* Stitches of a band's rows beside its motifs: of a piece that is shaped there, those that it has
 * more than in its narrowest row; where not one motif has room, all of them. */
static int beside(const hw_draft *draft, const hw_upper *upper, int edges)
{
    int sts = 0;
    for (int r = upper->first_row; r < upper->first_row + upper->rows; r++) {
        sts += hw_shape_sts(&draft->shape, r) + edges;
        sts -= upper->motifs > 0 ? upper->sts + edges : 0;
    }
    return sts;
}

static void add_uppers(const hw_whole *whole, const hw_draft *draft, int edges, list *of)
{
    for (int u = 0; u < whole->upper_count; u++) {
        const hw_upper *upper = &draft->uppers[u];
        if (upper->rows > 0) {
            add_plain(of, HW_BAND, beside(draft, upper, edges));
        }
        if (upper->rows > 0 && upper->motifs > 0) {
            add_band(of, HW_BAND, &whole->uppers[u].motif,
                (hw_yarn_width){ .before_sts = upper->margin[HW_LEFT] + edges,
                    .motifs = upper->motifs,
                    .after_sts = upper->margin[HW_RIGHT] });
        }
    }
}

static void gather_piece(const hw_whole *whole, int size, int piece, list *of)
{
    hw_plan_piece at = hw_plan_find(whole, piece);
    int cell = size * at.plan->project->garment.piece_count + at.piece;
    const hw_fit *fit = &at.plan->grading.fits[cell];
    const hw_hem *hem = &at.plan->hem;
    const hw_draft *draft = &at.plan->drafts[cell];
    int edges = fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT];
    add_plain(of, HW_FACING, fit->cast_on_sts * hem->facing_rows);
    int plain = fit->cast_on_sts * (hem->fold_rows + hem->below_rows + hem->above_rows);
    for (int r = 0; draft->drawn && r < draft->shape.rows; r++) {
        plain +=
            in_upper(draft, whole->upper_count, r) ? 0 : hw_shape_sts(&draft->shape, r) + edges;
    }
    plain += draft->drawn ? hw_shape_more_sts(&draft->shape, fit->edge_sts) : 0;
    add_plain(of, HW_MAIN, plain);
    add_band(of, HW_BAND, &at.plan->motif,
        (hw_yarn_width){ .before_sts = fit->margin[HW_LEFT] + fit->edge_sts[HW_LEFT],
            .motifs = fit->motifs,
            .after_sts = fit->margin[HW_RIGHT] + fit->edge_sts[HW_RIGHT] });
    if (draft->drawn) {
        add_uppers(whole, draft, edges, of);
    }
}

/* A trim's own gauge is that of its band, or of all that a plain trim has. */
static int trim_fabric(const struct hw_yarnuse *use, const hw_whole *whole, int trim, hw_fabric of)
{
    bool own = (of == HW_BAND) == whole->trims->kinds[trim].has_motif;
    return own && use->of_trim[trim] > 0 ? use->of_trim[trim] : (int)of;
}

/* Where a trim is hung, its last row joins it. */
static void gather_trim(const hw_whole *whole, const struct hw_yarnuse *use, int at, list *of)
{
    int trim = at % use->trims;
    const hw_trim_kind *kind = &whole->trims->kinds[trim];
    const hw_trimmed *t = &whole->trims->sizes[at];
    const hw_pickup_count *chosen = &t->pickup.chosen;
    int plain_rows = t->rows.count - t->hem.facing_rows - t->hem.band_rows;
    add_plain(of, trim_fabric(use, whole, trim, HW_FACING), chosen->sts * t->hem.facing_rows);
    add_plain(of, trim_fabric(use, whole, trim, HW_MAIN), chosen->sts * plain_rows);
    if (kind->has_motif) {
        add_band(of, trim_fabric(use, whole, trim, HW_BAND), &kind->motif,
            (hw_yarn_width){ .before_sts = chosen->margin[HW_LEFT],
                .motifs = chosen->motifs,
                .after_sts = chosen->margin[HW_RIGHT] });
    }
}

static hw_yarn_fabric fabric_of(const hw_gauge *gauge)
{
    return (hw_yarn_fabric){ .yarn = { HW_USE_MAIN, HW_USE_MAIN },
        .sts_per_10cm = gauge->sts_per_10cm,
        .rows_per_10cm = gauge->rows_per_10cm,
        .g_per_m2 = gauge->g_per_m2 };
}

/* A fabric more for each trim that gives a gauge of its own. */
static int add_trims(const hw_whole *whole, struct hw_yarnuse *use, int count)
{
    for (int k = 0; k < whole->trims->count; k++) {
        const hw_trim_kind *kind = &whole->trims->kinds[k];
        if (kind->input == NULL || kind->input->gauge.count == 0) {
            continue;
        }
        use->fabrics[count] = fabric_of(&kind->gauge[HW_BAND]);
        if (kind->has_motif) {
            use->fabrics[count].yarn[HW_CONTRAST] = HW_USE_CONTRAST;
            use->fabrics[count].swatch = hw_yarn_repeat(&kind->motif);
        }
        use->of_trim[k] = count++;
    }
    return count;
}

static void set_task(const hw_whole *whole, struct hw_yarnuse *use)
{
    static const char *const names[HW_USE_YARNS] = { "main yarn", "contrast yarn" };
    const hw_project *project = whole->project;
    const hw_plan *plan = &whole->plans[0];
    for (int y = 0; y < HW_USE_YARNS; y++) {
        use->yarns[y] = (hw_yarn){
            .name = names[y], .ball_g = project->yarn[y].ball_g, .ball_m = project->yarn[y].ball_m
        };
    }
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        use->fabrics[f] = fabric_of(&plan->gauge[f]);
    }
    use->fabrics[HW_BAND].yarn[HW_CONTRAST] = HW_USE_CONTRAST;
    use->fabrics[HW_BAND].swatch = hw_yarn_repeat(&plan->motif);
    use->fabrics[HW_MAIN].unravelled_sts = project->yarn[HW_BACKGROUND].unravelled_sts;
    use->fabrics[HW_MAIN].unravelled_m = project->yarn[HW_BACKGROUND].unravelled_m;
    use->task = (hw_yarn_task){ .yarns = use->yarns,
        .yarn_count = HW_USE_YARNS,
        .fabrics = use->fabrics,
        .fabric_count = add_trims(whole, use, HW_FABRIC_COUNT),
        .reserve_percent = project->reserve_percent };
}

static void add_up(const struct hw_yarnuse *use, const list *of, hw_yarn_amounts *out)
{
    hw_yarn_totals sums = hw_yarn_of_parts(&use->task, &use->rates, of->parts, of->count);
    for (int y = 0; y < HW_USE_YARNS; y++) {
        out->of[y] = sums.of[y].used;
    }
}

static bool wanted(const hw_whole *whole)
{
    bool weighed = false;
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        weighed = weighed || whole->plans[0].gauge[f].g_per_m2 > 0;
    }
    for (int k = 0; k < whole->trims->count; k++) {
        weighed = weighed || whole->trims->kinds[k].gauge[HW_BAND].g_per_m2 > 0;
    }
    return whole->project->has_yarn || weighed;
}

/* Every part of a size, for the whole; piece by piece on the way. */
static void make_size(const hw_whole *whole, int size, hw_yarn_part *all, struct hw_yarnuse *use)
{
    int count = 0;
    for (int i = 0; i < use->pieces + use->trims; i++) {
        bool piece = i < use->pieces;
        int trim = i - use->pieces;
        list of = { .count = 0 };
        if (piece) {
            gather_piece(whole, size, i, &of);
        } else {
            gather_trim(whole, use, size * use->trims + trim, &of);
        }
        add_up(use, &of,
            piece ? &use->of_pieces[size * use->pieces + i]
                  : &use->of_trims[size * use->trims + trim]);
        for (int k = 0; k < of.count; k++) {
            all[count++] = of.parts[k];
        }
    }
    use->totals[size] = hw_yarn_of_parts(&use->task, &use->rates, all, count);
}

hw_status hw_yarnuse_make(hw_whole *whole, hw_arena *arena, hw_err *err)
{
    if (!wanted(whole)) {
        return HW_OK;
    }
    size_t sizes = (size_t)whole->plans[0].finished.count;
    size_t pieces = (size_t)whole->project->garment.piece_count;
    size_t trims = (size_t)whole->trims->count;
    struct hw_yarnuse *use = hw_arena_get(arena, 1, sizeof *use);
    hw_yarn_part *all = hw_arena_get(arena, PARTS * (pieces + trims), sizeof *all);
    if (use != NULL) {
        use->of_pieces = hw_arena_get(arena, sizes * pieces, sizeof *use->of_pieces);
        use->of_trims = hw_arena_get(arena, sizes * trims, sizeof *use->of_trims);
        use->totals = hw_arena_get(arena, sizes, sizeof *use->totals);
    }
    if (use == NULL || all == NULL || use->of_pieces == NULL || use->of_trims == NULL ||
        use->totals == NULL) {
        return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory for this plan");
    }
    use->pieces = whole->project->garment.piece_count;
    use->trims = whole->trims->count;
    set_task(whole, use);
    use->rates = hw_yarn_measure(&use->task);
    for (int i = 0; i < whole->plans[0].finished.count; i++) {
        make_size(whole, i, all, use);
    }
    whole->yarn = use;
    return HW_OK;
}
