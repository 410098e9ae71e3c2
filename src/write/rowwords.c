/* The words for rows; hand work is said differently at a bed and in the hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/rowwords.h"

#include "core/buf.h"
#include "write/shapewords.h"
#include "write/trimwords.h"

/* ---- sentences ---- */

static const char *opposite(hw_side side)
{
    return hw_side_name(side == HW_LEFT ? HW_RIGHT : HW_LEFT);
}

typedef hw_saying saying;

static bool in_hand(const saying *s)
{
    return s->plan->work == HW_WORK_HAND;
}

static bool in_round(const saying *s)
{
    return hw_rowwords_in_round(s->plan, s->row);
}

static bool has_others(const saying *s)
{
    return hw_rowwords_has_others(s->plan);
}

/* "back", "left panel and right panel": the others of a tube. */
static void say_others(const saying *s)
{
    const hw_row_tube *tube = s->plan->tube;
    for (int k = 1; k < tube->count; k++) {
        hw_buf_text(s->buf, k == 1 ? "" : k + 1 < tube->count ? ", " : " and ");
        hw_buf_text(s->buf, tube->names[(s->plan->slice + k) % tube->count]);
    }
}

static const char *over_thread(const saying *s)
{
    return s->plan->cast_on == HW_CAST_ON_OPEN
               ? " over a thread that is taken out later (provisionally)"
               : "";
}

/* Stitches of one piece alone: its own round, or rows. */
static void say_cast_on_alone(const saying *s)
{
    hw_buf_format(s->buf, "Cast on %d stitches%s%s.", s->work->sts, over_thread(s),
        in_round(s) ? " and join them into a round without twisting them, with a marker where it "
                      "begins"
                    : "");
}

static void say_cast_on_together(const saying *s)
{
    const hw_row_tube *tube = s->plan->tube;
    hw_buf_text(s->buf, "In rounds together with ");
    say_others(s);
    hw_buf_format(s->buf,
        ": cast on %d stitches in all%s, join them into a round without twisting them, and hang a "
        "marker where it begins and one behind each piece but the last: ",
        tube->sts[0], over_thread(s));
    for (int k = 0; k < tube->count; k++) {
        hw_buf_format(s->buf, "%s%s %d", k > 0 ? ", " : "", tube->names[k], tube->cast_on_sts[k]);
    }
    hw_buf_format(s->buf, ". These lines are for %s.", tube->names[s->plan->slice]);
}

static void say_cast_on(const saying *s)
{
    const hw_handwork *w = s->work;
    bool open = s->plan->cast_on == HW_CAST_ON_OPEN;
    if (in_hand(s) && in_round(s) && has_others(s)) {
        say_cast_on_together(s);
    } else if (in_hand(s)) {
        say_cast_on_alone(s);
    } else if (open) {
        hw_buf_format(s->buf,
            "Cast on %d stitches in waste yarn, knit about %d rows and one row with a smooth cord; "
            "carriage at the %s, main yarn.",
            w->sts, w->number, hw_side_name(w->side));
    } else {
        hw_buf_format(s->buf, "Wrap %d needles with the main yarn; carriage at the %s.", w->sts,
            hw_side_name(w->side));
    }
}

static void say_weights(const saying *s)
{
    hw_buf_text(s->buf, s->row->number == 1 ? "Hang the weights." : "Move the weights up.");
}

static void say_counter(const saying *s)
{
    hw_buf_format(s->buf, "Set the row counter to %03d.", s->work->number);
}

/* An odd count ends with a pair, an even one with a plain stitch. */
static void say_picot(const saying *s)
{
    const char *knit = s->row->right_side ? "knit" : "purl";
    if (in_hand(s)) {
        hw_buf_format(s->buf, "Work row %d as eyelets: %s 1, (yarn over, %s 2 together) ",
            s->row->number, knit, knit);
        if (s->row->sts % 2 != 0) {
            hw_buf_text(s->buf, "to the end.");
        } else {
            hw_buf_format(s->buf, "to the last stitch, %s 1.", knit);
        }
        return;
    }
    hw_buf_text(s->buf,
        "Move every other stitch onto the needle beside it; leave the empty needles "
        "in work.");
}

static void say_purl(const saying *s)
{
    const char *words = s->row->right_side ? "Purl this row, so that it shows purl stitches."
                                           : "Knit this row, so that purl stitches show on the "
                                             "right side.";
    hw_buf_text(s->buf,
        in_hand(s) ? words : "Turn each stitch of this row into a purl stitch with a latch tool.");
}

static void say_card_in(const saying *s)
{
    const char *band = s->work->band;
    hw_buf_format(s->buf, "Put the card%s%s in and lock it so that it reads row %d.",
        band != NULL ? " of the " : "", band != NULL ? band : "", s->work->number);
    if (s->work->column > 0) {
        hw_buf_format(s->buf,
            " It is a card of its own, punched with its first motif starting in column %d: the bed "
            "has no room to move the piece onto the other.",
            s->work->column);
    }
}

/* By way of waste yarn; a half may come upon the one that waits. */
static void say_move(const saying *s)
{
    bool half = s->row->part != HW_PART_WHOLE;
    int by = s->work->number;
    int count = by > 0 ? by : -by;
    hw_buf_format(s->buf, "Move the %s %d %s to the %s on the bed, over waste yarn,",
        half ? "stitches of this half" : "whole piece", count, count == 1 ? "needle" : "needles",
        by > 0 ? "right" : "left");
    if (s->work->band != NULL) {
        hw_buf_format(s->buf, " so that the figures of the %s stand on the card.", s->work->band);
    } else {
        hw_buf_text(s->buf, " to where it hung before the band.");
    }
    hw_buf_text(
        s->buf, half ? " If the other half is in the way, take it off on waste yarn too." : "");
}

static void say_card_go(const saying *s)
{
    hw_buf_text(s->buf, "Let the card move.");
}

static void say_second_in(const saying *s)
{
    hw_buf_text(s->buf, "Thread the contrast yarn into the second feeder.");
}

static void say_second_out(const saying *s)
{
    hw_buf_format(s->buf, "After row %d take the contrast yarn out at the %s.", s->row->number,
        hw_side_name(s->work->side));
}

static void say_rehang(const saying *s)
{
    const hw_handwork *w = s->work;
    bool fewer = w->number > 0;
    int changes = fewer ? w->number : -w->number;
    hw_buf_format(s->buf,
        in_hand(s) ? "Work %d %s spread evenly: %d stitches."
                   : "Take the piece off on waste yarn and hang it again with %d %s spread "
                     "evenly: %d stitches.",
        changes, fewer ? "decreases" : "increases", w->sts);
}

static void say_hang_hem(const saying *s)
{
    bool open = s->plan->cast_on == HW_CAST_ON_OPEN;
    if (s->plan->trim != NULL) {
        hw_trimwords_hang(s);
        return;
    }
    if (in_hand(s)) {
        hw_buf_format(s->buf,
            "Fold the hem and %s each stitch together with its loop of the cast-on edge.",
            s->row->right_side ? "knit" : "purl");
        return;
    }
    hw_buf_text(s->buf,
        open ? "Fold the hem and hang the open loops of its first row onto the needles; take the "
               "waste yarn out once this row is knitted."
             : "Fold the hem and hang its cast-on edge onto the needles, loop by loop.");
}

/* A tube's pieces part here: each is worked in rows, and those that wait stay open. */
static void say_into_rows(const saying *s)
{
    if (has_others(s)) {
        hw_buf_text(s->buf, "From here in rows, this piece by itself: leave the stitches of ");
        say_others(s);
        hw_buf_format(s->buf,
            " on hold, and join the yarn at the %s edge of these %d for a right-side row.",
            hw_side_name(s->work->side), s->work->sts);
    } else {
        hw_buf_format(s->buf,
            "From here in rows: turn at the end of this row, a right-side row over %d stitches, "
            "and of each row after it.",
            s->work->sts);
    }
}

static void say_mark(const saying *s)
{
    hw_buf_format(s->buf, "Mark %s with a thread: here is the underarm.",
        in_round(s) ? "this round at both ends of the piece" : "each side edge");
}

/* Where a neck or a slit parts the piece: what is bound off in the middle, 0 or more. */
static hw_shape_step division_of(const hw_rowplan *plan)
{
    hw_shape_step found = { 0 };
    for (int i = 0; i < plan->hand_count; i++) {
        const hw_handwork *work = &plan->hands[i];
        bool parts = work->kind == HW_HAND_SHAPE && work->step->kind == HW_STEP_DIVIDE;
        found = parts ? *work->step : found;
    }
    return found;
}

/* "the stitch", "the 13 stitches" */
static void say_middle(const saying *s, int sts)
{
    if (sts == 1) {
        hw_buf_text(s->buf, "the stitch in the middle");
    } else {
        hw_buf_format(s->buf, "the %d stitches in the middle", sts);
    }
}

static void say_hold_half(const saying *s)
{
    hw_shape_step division = division_of(s->plan);
    hw_buf_text(s->buf, division.slit ? "Here the slit begins. " : "");
    if (!in_hand(s)) {
        hw_buf_format(s->buf, "Put the %d stitches of the half at the %s on hold.", s->work->sts,
            opposite(s->row->before));
        return;
    }
    hw_buf_text(s->buf, "Work to the middle and turn; put ");
    if (division.sts > 0) {
        say_middle(s, division.sts);
        hw_buf_text(s->buf, " and ");
    }
    hw_buf_format(s->buf, "the %d of the %s half on hold.", s->work->sts,
        s->row->part == HW_PART_LEFT ? "right" : "left");
}

static void say_back_half(const saying *s)
{
    hw_shape_step division = division_of(s->plan);
    if (!in_hand(s)) {
        bool there = s->row[-1].after == s->work->side; /* the first half's last row goes before */
        hw_buf_format(s->buf,
            "Cut the main yarn and take up the %d stitches that were put on hold. %s the %s%s join "
            "the yarn again there.",
            s->work->sts, there ? "The carriage is at" : "Take the carriage to",
            hw_side_name(s->work->side), there ? " already:" : " without knitting, and");
        return;
    }
    hw_buf_format(s->buf, "Join the yarn at the %s for a %s row", division.slit ? "slit" : "neck",
        s->row->right_side ? "right-side" : "wrong-side");
    if (division.sts > 0) {
        hw_buf_text(s->buf, " and bind off ");
        say_middle(s, division.sts);
    }
    hw_buf_format(s->buf, "; then work the %d that were put on hold.", s->work->sts);
}

static void say_sew_hem(const saying *s)
{
    if (s->plan->trim != NULL) {
        hw_trimwords_sew(s);
        return;
    }
    hw_buf_text(s->buf, s->plan->cast_on == HW_CAST_ON_OPEN
                            ? "Fold the hem and sew its open loops down one by one."
                            : "Fold the hem and sew its cast-on edge down.");
}

static void say_nothing(const saying *s)
{
    (void)s; /* shaping is told for a whole run */
}

static void (*const says[])(const saying *s) = {
    [HW_HAND_CAST_ON] = say_cast_on,
    [HW_HAND_WEIGHTS] = say_weights,
    [HW_HAND_COUNTER] = say_counter,
    [HW_HAND_PICOT] = say_picot,
    [HW_HAND_PURL] = say_purl,
    [HW_HAND_MOVE] = say_move,
    [HW_HAND_CARD_IN] = say_card_in,
    [HW_HAND_CARD_GO] = say_card_go,
    [HW_HAND_SECOND_IN] = say_second_in,
    [HW_HAND_SECOND_OUT] = say_second_out,
    [HW_HAND_REHANG] = say_rehang,
    [HW_HAND_HANG_HEM] = say_hang_hem,
    [HW_HAND_INTO_ROWS] = say_into_rows,
    [HW_HAND_MARK] = say_mark,
    [HW_HAND_SHAPE] = say_nothing,
    [HW_HAND_HOLD_HALF] = say_hold_half,
    [HW_HAND_BACK_HALF] = say_back_half,
    [HW_HAND_SEW_HEM] = say_sew_hem,
    [HW_HAND_PICK_UP] = hw_trimwords_pick_up,
    [HW_HAND_HOLE] = hw_trimwords_holes,
    [HW_HAND_TAKE_OFF] = hw_trimwords_take_off,
    [HW_HAND_BIND_OFF] = hw_trimwords_bind_off,
};
_Static_assert(sizeof says / sizeof says[0] == HW_HAND_KIND_COUNT, "words for each hand work");

static void say_rows_hands(const saying *run, const hw_row *row, bool after)
{
    for (int k = 0; k < row->hand_count; k++) {
        const hw_handwork *work = &run->plan->hands[row->first_hand + k];
        saying s = { run->plan, run->run, row, work, run->buf };
        bool again = work->kind == HW_HAND_HOLE && k > 0 && work[-1].kind == HW_HAND_HOLE;
        if (work->after == after && work->kind != HW_HAND_SHAPE && !again) {
            hw_buf_text(s.buf, s.buf->len > 0 ? " " : "");
            says[work->kind](&s);
        }
    }
}

/* ---- how the rows of a run are knitted ---- */

/* Another sentence, its first letters as they are. */
static void say_sentence(const saying *s, const char *before, const char *words)
{
    hw_buf_text(s->buf, s->buf->len > 0 ? " " : "");
    hw_buf_format(s->buf, "%s%s.", before, words);
}

/* "rows 2 to 10"; a card that is joined begins anew behind its last row. */
static void say_range(const saying *s, const char *things, int from, int to)
{
    const char *round = to == from + s->run->count - 1 ? "" : "round ";
    if (s->run->count == 1) {
        hw_buf_format(s->buf, "%s %d", things, from);
    } else {
        hw_buf_format(s->buf, "%s %d %sto %d", things, from, round, to);
    }
}

/* The carriage stays as it was set until the next line that speaks of it. */
static void say_setting(const saying *s)
{
    bool first = s->run->first == 0;
    if (first || s->row[-1].setting != s->row->setting) {
        say_sentence(s, "Carriage: ", hw_rowwords_carriage(s->row->setting));
    }
}

static void say_in_view(const saying *s, const hw_row *last)
{
    if (s->row->card_view > 0) {
        bool one = s->run->count == 1;
        say_range(s, one ? "Row" : "Rows", s->row->card_view, last->card_view);
        hw_buf_text(s->buf, one ? " is in view." : " are in view.");
    }
}

/* Where the card is put in, that line says at which row it is held. */
static void say_card(const saying *s)
{
    const hw_row *last = s->row + s->run->count - 1;
    if (s->plan->work == HW_WORK_PICKED || s->row->card_read == 0) {
        return;
    }
    if (s->row->card == HW_CARD_MOVING) {
        hw_buf_text(s->buf, s->buf->len > 0 ? " " : "");
        bool one = s->run->count == 1;
        hw_buf_text(s->buf, "The card reads ");
        say_range(s, one ? "row" : "rows", s->row->card_read, last->card_read);
        hw_buf_text(s->buf, ".");
    }
    hw_buf_text(s->buf, s->row->card_view > 0 && s->buf->len > 0 ? " " : "");
    say_in_view(s, last);
}

/* "1 edge, 3 plain" of an end as a row comes to it, or the other way round as it ends. Numbers are
 * told even where they are 0, so that all sizes have the same words. */
static void say_end(const saying *s, hw_side side, bool begins)
{
    const hw_row_figures *f = &s->row->figures;
    int edge = f->edge_sts[side];
    if (edge == 0) {
        hw_buf_format(s->buf, "%d plain", f->plain_sts[side]);
    } else if (begins) {
        hw_buf_format(s->buf, "%d edge, %d plain", edge, f->plain_sts[side]);
    } else {
        hw_buf_format(s->buf, "%d plain, %d edge", f->plain_sts[side], edge);
    }
}

/* What a chart row begins and ends with, told once for a band, and again where shaping has changed
 * it: the chart is of one figure. */
static void say_figures(const saying *s)
{
    const hw_row *last = s->row + s->run->count - 1;
    const hw_row_figures *f = &s->row->figures;
    bool changes = last->sts != s->row->sts;
    if (f->motifs == 0 || (s->row->chart_row > 1 && s->row[-1].sts == s->row->sts && !changes)) {
        return;
    }
    hw_buf_text(s->buf, in_round(s) ? " Each round: " : " Right-side rows: ");
    say_end(s, HW_RIGHT, true);
    hw_buf_format(s->buf, ", the figure %d times", f->motifs);
    if (f->gap > 0 && f->motifs > 1) {
        hw_buf_format(s->buf, " with %d plain between", f->gap);
    }
    hw_buf_text(s->buf, ", ");
    say_end(s, HW_LEFT, false);
    hw_buf_text(s->buf, in_round(s) ? "." : "; wrong-side rows the other way round.");
    if (changes) {
        hw_buf_format(s->buf, " This is row %d; then the shaping changes the plain stitches.",
            s->row->number);
    }
}

/* In rounds, and in right-side rows, a chart is read from the right. */
static void say_chart(const saying *s)
{
    const hw_row *last = s->row + s->run->count - 1;
    if (s->row->chart_row == 0) {
        return;
    }
    hw_buf_text(s->buf, s->buf->len > 0 ? " " : "");
    say_range(s, s->run->count == 1 ? "Row" : "Rows", s->row->chart_row, last->chart_row);
    hw_buf_text(s->buf, " of the chart");
    if (!in_hand(s)) {
        hw_buf_text(s->buf, ".");
        return;
    }
    if (in_round(s) || (s->run->count == 1 && s->row->right_side)) {
        hw_buf_text(s->buf, ", read from right to left.");
    } else if (s->run->count == 1) {
        hw_buf_text(s->buf, ", read from left to right.");
    } else {
        hw_buf_text(s->buf, ": right-side rows are read from right to left, wrong-side rows from "
                            "left to right.");
    }
    say_figures(s);
}

/* Facings are knitted on thinner needles [H3]; the loose row on thicker ones [P1]. */
static const char *needles_of(const hw_row *row)
{
    if (row->loosest) {
        return "thicker ones, for this row";
    }
    return row->fabric == HW_FACING ? "1 to 3 sizes thinner than for the swatch"
                                    : "as for the swatch";
}

static void say_needles(const saying *s)
{
    const char *needles = needles_of(s->row);
    if (s->run->first == 0 || needles_of(s->row - 1) != needles) {
        say_sentence(s, "Needles: ", needles);
    }
}

static void say_yarns(const saying *s)
{
    const hw_row_yarn *yarns = s->row->feeders;
    if (yarns[HW_FEEDER_SECOND] != HW_YARN_NONE) {
        hw_buf_text(s->buf, s->buf->len > 0 ? " " : "");
        hw_buf_format(s->buf, "Knit with the %s and the %s yarn.",
            hw_rowwords_yarn(yarns[HW_FEEDER_FIRST]), hw_rowwords_yarn(yarns[HW_FEEDER_SECOND]));
    }
}

static void say_knitting(const saying *s)
{
    if (in_hand(s)) {
        say_needles(s);
        say_yarns(s);
    } else {
        say_setting(s);
        say_card(s);
    }
    say_chart(s);
}

char *hw_rowwords_run(const hw_rowplan *plan, const hw_row_run *run, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    const hw_row *first = &plan->rows[run->first];
    const hw_row *last = first + run->count - 1;
    saying s = { plan, run, first, NULL, &buf };
    say_rows_hands(&s, first, false);
    say_knitting(&s);
    if (!hw_shapewords_run(plan, run, arena, &buf)) {
        hw_buf_release(&buf);
        return NULL;
    }
    say_rows_hands(&s, last, true);
    bool silent = buf.len == 0 && hw_buf_status(&buf) == HW_OK;
    char *text = silent ? hw_arena_text(arena, "", 0) : hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}
