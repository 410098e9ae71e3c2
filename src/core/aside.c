/* A piece moved along the bed, so that the figures of a band higher up stand on its card.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/aside.h"

#include "core/num.h"
#include "core/rowing.h"

int hw_aside_order(const hw_plan *plan, int at, int order[HW_MAX_BANDS])
{
    const hw_whole *whole = plan->whole;
    const hw_upper *uppers = plan->drafts[at].uppers;
    int piece = whole->parts.list[plan->part].pieces[at % plan->project->garment.piece_count];
    int count = 0;
    for (int u = 0; u < whole->upper_count; u++) {
        if (!whole->uppers[u].on[piece]) {
            continue;
        }
        int k = count++;
        for (; k > 0 && uppers[order[k - 1]].first_row > uppers[u].first_row; k--) {
            order[k] = order[k - 1];
        }
        order[k] = u;
    }
    return count;
}

/* A piece above its hem, on the bed. */
typedef struct {
    const hw_plan *plan;
    const hw_draft *draft;
    hw_row_work work;
    int first, last; /* its needles, were nothing shaped or moved */
    int half;        /* needles on either side of the bed's middle */
} bench;

static bench bench_of(const hw_plan *plan, int at)
{
    const hw_fit *fit = &plan->grading.fits[at];
    int piece = at % plan->project->garment.piece_count;
    bool mirrored = plan->project->garment.pieces[piece].mirror_of >= 0;
    hw_rowplan_task task = hw_rowing_task(plan, at);
    int sts = fit->main_sts + fit->edge_sts[HW_LEFT] + fit->edge_sts[HW_RIGHT];
    int first = hw_bed_rehung_first(&plan->places[at], fit->cast_on_sts - sts, mirrored);
    return (bench){ .plan = plan,
        .draft = &plan->drafts[at],
        .work = hw_rowplan_work(&task),
        .first = first,
        .last = first + sts - 1,
        .half = plan->project->machine.needles / 2 };
}

/* Whether a card brings out the needles of a band. */
static bool has_card(const bench *b, int upper)
{
    bool card = b->work == HW_WORK_DIRECT || b->work == HW_WORK_PRESELECT;
    return card && b->draft->uppers[upper].card_column >= 0;
}

/* The row that reads a band's card first. */
static int first_read(const bench *b, int upper)
{
    return b->draft->uppers[upper].first_row - (b->work == HW_WORK_PRESELECT ? 1 : 0);
}

/* Whether some rows lie on the bed where they are moved so far to the right. */
static bool has_room(const bench *b, int from, int to, int aside)
{
    const hw_shape *shape = &b->draft->shape;
    bool room = true;
    for (int r = from; r < to && room; r++) {
        int first = b->first + shape->inset_sts[HW_RIGHT][r] + aside;
        int last = b->last - shape->inset_sts[HW_LEFT][r] + aside;
        room = first >= -b->half && last < b->half;
    }
    return room;
}

/* The place nearest to another at which a band's figures stand on the card, and there is room. */
static bool nearest(const bench *b, int upper, int end, int near, int *aside)
{
    const hw_upper_band *band = &b->plan->whole->uppers[upper];
    int wanted = band->card_start - b->draft->uppers[upper].card_column;
    int from = first_read(b, upper);
    int right = near + hw_num_mod(wanted - near, band->motif.repeat);
    int left = right - band->motif.repeat;
    while (right - near <= 2 * b->half || near - left <= 2 * b->half) {
        int *next = right - near <= near - left ? &right : &left;
        if (has_room(b, from, end, *next)) {
            *aside = *next;
            return true;
        }
        *next += next == &right ? band->motif.repeat : -band->motif.repeat;
    }
    return false;
}

void hw_aside_find(const hw_plan *plan, int at)
{
    bench b = bench_of(plan, at);
    int order[HW_MAX_BANDS];
    int count = b.draft->drawn ? hw_aside_order(plan, at, order) : 0;
    int now = 0;
    for (int i = 0; i < count; i++) {
        hw_upper *upper = &b.draft->uppers[order[i]];
        upper->aside = now;
        if (!has_card(&b, order[i])) {
            continue;
        }
        int end = b.draft->shape.rows; /* of the rows that stay where this band is knitted */
        for (int k = count - 1; k > i; k--) {
            end = has_card(&b, order[k]) ? first_read(&b, order[k]) : end;
        }
        int own_end = upper->first_row + upper->rows;
        bool stays = nearest(&b, order[i], end, now, &upper->aside);
        upper->back = !stays && nearest(&b, order[i], own_end, now, &upper->aside);
        upper->own_card = !stays && !upper->back;
        upper->aside = upper->own_card ? 0 : upper->aside;
        now = stays ? upper->aside : 0;
    }
}
