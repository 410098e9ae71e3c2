/* Widths outside the tolerance: the nearest counts, and the smallest change that would help.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/outside.h"

#include <math.h>
#include <string.h>

#include "core/num.h"

/* A count and its width in the band, "97 sts (34.2 cm)". */
static const char *count_words(const hw_plan *plan, hw_notes *notes, int sts)
{
    double cm = hw_gauge_width_cm(&plan->gauge[HW_BAND], sts);
    const char *length = hw_notes_length(notes, cm, plan->project->show);
    return hw_notes_words(notes, hw_arena_format(notes->arena, "%d sts (%s)", sts, length));
}

/* The smaller change of the two that make the count below or the count above measure right. */
static hw_mend least_mend(const hw_plan *plan, int i)
{
    const hw_fit_near *near = &plan->near[i];
    int pieces = plan->project->garment.piece_count;
    hw_counts_task task = hw_plan_counts(plan);
    hw_mend best = { 0 };
    const hw_fit_count *counts[] = { near->has_below ? &near->below : NULL,
        near->has_above ? &near->above : NULL };
    double gauge = plan->gauge[HW_BAND].sts_per_10cm;
    for (int k = 0; k < 2; k++) {
        if (counts[k] == NULL) {
            continue;
        }
        hw_mend mend = hw_alternative_mend(&task, i / pieces, i % pieces, counts[k]->visible_sts);
        if (mend.by_width && (!best.by_width || fabs(mend.width_cm) < fabs(best.width_cm))) {
            best.by_width = true;
            best.width_cm = mend.width_cm;
        }
        double change = fabs(mend.band_sts_per_10cm - gauge);
        if (mend.by_gauge && (!best.by_gauge || change < fabs(best.band_sts_per_10cm - gauge))) {
            best.by_gauge = true;
            best.band_sts_per_10cm = mend.band_sts_per_10cm;
        }
    }
    return best;
}

/* Another gap that brings every piece of every size inside without floats that are too long, best
 * first; NULL where none does. */
static const hw_alternative *mending_gap(const hw_plan *plan)
{
    int all = plan->finished.count * plan->project->garment.piece_count;
    int most = plan->project->machine.longest_float;
    for (int i = 0; i < plan->alternatives.count; i++) {
        const hw_alternative *a = &plan->alternatives.list[i];
        if (a->kind == HW_ALTER_GAP && a->possible && a->fits_card && a->inside == all &&
            a->longest_float <= most) {
            return a;
        }
    }
    return NULL;
}

#define HAIR_CM 1e-6 /* far below what is shown, far above what arithmetic adds */

/* A change of a width as it will be shown, not a hair less than is needed. */
static double enough_cm(double needed_cm, hw_show show)
{
    int tenths = hw_num_up((needed_cm - HAIR_CM) * 10);
    while (show != HW_SHOW_CM &&
           hw_num_nearest(tenths / 10.0 / HW_CM_PER_INCH * 8) / 8.0 * HW_CM_PER_INCH <
               needed_cm - HAIR_CM) {
        tenths++;
    }
    return tenths / 10.0;
}

/* A gauge as it will be shown, on the side of the one needed that is further from the one now. */
static double enough_sts(double needed_sts, double now_sts)
{
    int hundredths =
        needed_sts > now_sts ? hw_num_up(needed_sts * 100) : hw_num_down(needed_sts * 100);
    return hundredths / 100.0;
}

/* Ease for a piece, and where its widths hang on one measurement alike, what that is to be. */
static void width_words(const hw_plan *plan, hw_notes *notes, int i, double width_cm, hw_buf *buf)
{
    const hw_garment *garment = &plan->project->garment;
    const hw_piece *piece = &garment->pieces[i % garment->piece_count];
    const hw_rule *band = &piece->band_width;
    const hw_rule *main = &piece->main_width;
    hw_show show = plan->project->show;
    double needed_cm = enough_cm(fabs(width_cm), show);
    hw_buf_format(buf, "a piece %s %s by `ease`", hw_notes_length(notes, needed_cm, show),
        width_cm < 0 ? "narrower" : "wider");
    bool alike = band->count == 1 && main->count == 1 && band->terms[0].factor > 0 &&
                 strcmp(band->terms[0].name, main->terms[0].name) == 0 &&
                 fabs(band->terms[0].factor - main->terms[0].factor) < 1e-9;
    if (alike) {
        double whole_cm = enough_cm(needed_cm / band->terms[0].factor, show);
        hw_buf_format(buf, " (a finished %s %s %s)", band->terms[0].name,
            hw_notes_length(notes, whole_cm, show), width_cm < 0 ? "smaller" : "larger");
    }
}

/* Both fabrics so much finer or coarser. */
static void gauge_words(const hw_plan *plan, hw_notes *notes, double band_sts, hw_buf *buf)
{
    double band_now = plan->gauge[HW_BAND].sts_per_10cm;
    double main_now = plan->gauge[HW_MAIN].sts_per_10cm;
    double main_sts = main_now * band_sts / band_now;
    hw_show show = plan->project->show;
    hw_buf_format(buf, "a band of %s and plain fabric of %s stitches %s, in place of %s and %s",
        hw_notes_gauge(notes, enough_sts(band_sts, band_now), 2, show),
        hw_notes_gauge(notes, enough_sts(main_sts, main_now), 2, show), hw_show_per(show),
        hw_notes_gauge(notes, band_now, 2, show), hw_notes_gauge(notes, main_now, 2, show));
}

static const char *mend_words(const hw_plan *plan, hw_notes *notes, int i)
{
    hw_mend mend = least_mend(plan, i);
    const hw_alternative *gap = mending_gap(plan);
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    bool inside = mend.by_width && fabs(mend.width_cm) < HAIR_CM;
    if (inside) {
        hw_buf_text(&buf, "`within tolerance: yes`, because one of these counts is inside");
    } else if (mend.by_width) {
        width_words(plan, notes, i, mend.width_cm, &buf);
    }
    if (mend.by_gauge && !inside) {
        hw_buf_text(&buf, mend.by_width ? "; or " : "");
        gauge_words(plan, notes, mend.band_sts_per_10cm, &buf);
    }
    if (gap != NULL) {
        hw_buf_format(&buf, "%s%s, which suits every size", buf.len > 0 ? "; or " : "", gap->what);
    }
    if (buf.len == 0) {
        hw_buf_text(&buf, "`re-hang: yes`, because band and plain fabric want different counts");
    }
    return hw_notes_keep(notes, &buf);
}

/* Which of the two fabrics is off, and by how much. */
static const char *off_words(const hw_plan *plan, hw_notes *notes, int i)
{
    const hw_fit *fit = &plan->grading.fits[i];
    hw_show show = plan->project->show;
    const struct {
        const char *name;
        double cm, off_cm;
    } fabrics[] = {
        { "the band", fit->band_cm, fit->band_off_cm },
        { "the plain fabric", fit->main_cm, fit->main_off_cm },
    };
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    for (size_t k = 0; k < sizeof fabrics / sizeof fabrics[0]; k++) {
        double off_cm = fabrics[k].off_cm;
        if (fabs(off_cm) <= plan->project->choices.tolerance_cm) {
            continue;
        }
        hw_buf_format(&buf, "%s%s comes out %s, %s too %s", buf.len > 0 ? "; " : "",
            fabrics[k].name, hw_notes_length(notes, fabrics[k].cm, show),
            hw_notes_length(notes, fabs(off_cm), show), off_cm < 0 ? "narrow" : "wide");
    }
    return hw_notes_keep(notes, &buf);
}

/* One size: what is off, the two nearest counts, and the smallest change that helps. */
static void one_outside(const hw_plan *plan, hw_notes *notes, int i)
{
    const hw_garment *garment = &plan->project->garment;
    hw_show show = plan->project->show;
    const hw_fit_near *near = &plan->near[i];
    hw_notes_say(notes, HW_NOTE_WARNING,
        "Size %s, %s: %s is outside the tolerance of %s: %s. Wanted %s; the nearest counts are %s "
        "and %s. What would help: %s.",
        plan->finished.names[i / garment->piece_count],
        garment->pieces[i % garment->piece_count].name,
        count_words(plan, notes, plan->grading.fits[i].visible_sts),
        hw_notes_length(notes, plan->project->choices.tolerance_cm, show),
        off_words(plan, notes, i), hw_notes_length(notes, plan->targets[i].band_cm, show),
        near->has_below ? count_words(plan, notes, near->below.visible_sts) : "none narrower",
        near->has_above ? count_words(plan, notes, near->above.visible_sts) : "none wider",
        mend_words(plan, notes, i));
}

/* Appends "4 years 97 (95, 103)": the count, and behind it the nearest ones. */
static void outside_size(const hw_plan *plan, int i, hw_buf *buf)
{
    const hw_fit_near *near = &plan->near[i];
    hw_buf_format(buf, "%s%s %d (", buf->len > 0 ? "; " : "",
        plan->finished.names[i / plan->project->garment.piece_count],
        plan->grading.fits[i].visible_sts);
    if (near->has_below) {
        hw_buf_format(buf, "%d%s", near->below.visible_sts, near->has_above ? ", " : "");
    }
    if (near->has_above) {
        hw_buf_format(buf, "%d", near->above.visible_sts);
    }
    hw_buf_text(buf, ")");
}

static double off_cm(const hw_plan *plan, int i)
{
    const hw_fit *fit = &plan->grading.fits[i];
    return fmax(fabs(fit->band_off_cm), fabs(fit->main_off_cm));
}

/* Many sizes of one piece share a note. */
static void many_outside(const hw_plan *plan, hw_notes *notes, const int *outside, int count)
{
    int pieces = plan->project->garment.piece_count;
    hw_show show = plan->project->show;
    int worst = outside[0];
    hw_buf buf;
    hw_buf_init(&buf, &notes->arena->mem, HW_BUF_LIMIT);
    for (int k = 0; k < count; k++) {
        outside_size(plan, outside[k], &buf);
        worst = off_cm(plan, outside[k]) > off_cm(plan, worst) ? outside[k] : worst;
    }
    const char *list = hw_notes_keep(notes, &buf);
    hw_notes_of(notes, HW_NOTE_WARNING, plan->project->garment.pieces[worst % pieces].name,
        ": %d sizes are outside the tolerance of %s. For each the stitches chosen and, behind "
        "them, the nearest counts: %s. Furthest off is %s, by %s; what would help there: "
        "%s.",
        count, hw_notes_length(notes, plan->project->choices.tolerance_cm, show), list,
        plan->finished.names[worst / pieces], hw_notes_length(notes, off_cm(plan, worst), show),
        mend_words(plan, notes, worst));
}

enum { MOST_SINGLY = 4 }; /* sizes of a piece with a note each; more of them share one */

void hw_outside_add(const hw_plan *plan, hw_notes *notes)
{
    int pieces = plan->project->garment.piece_count;
    for (int p = 0; p < pieces; p++) {
        int outside[HW_MAX_SIZES];
        int count = 0;
        for (int i = p; i < plan->finished.count * pieces; i += pieces) {
            /* What is knitted is not chosen any more. */
            if (!plan->grading.fits[i].inside && plan->fixed_sts[i] == 0) {
                outside[count++] = i;
            }
        }
        if (count > MOST_SINGLY) {
            many_outside(plan, notes, outside, count);
            continue;
        }
        for (int k = 0; k < count; k++) {
            one_outside(plan, notes, outside[k]);
        }
    }
}
