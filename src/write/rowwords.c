/* The words for rows; hand work is said differently at a bed and in the hand.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/rowwords.h"

#include "core/buf.h"
#include "write/shapewords.h"

const char *hw_rowwords_kind(hw_row_kind kind)
{
    static const char *const names[HW_ROW_KIND_COUNT] = {
        [HW_ROW_FACING] = "facing",
        [HW_ROW_FOLD] = "fold",
        [HW_ROW_BELOW] = "plain below",
        [HW_ROW_SETUP] = "set-up",
        [HW_ROW_BAND] = "band",
        [HW_ROW_ABOVE] = "plain above",
        [HW_ROW_JOINING] = "joining",
        [HW_ROW_MAIN] = "main",
    };
    return names[kind];
}

const char *hw_rowwords_part(hw_row_part part)
{
    static const char *const names[HW_PART_COUNT] = {
        [HW_PART_WHOLE] = "whole",
        [HW_PART_LEFT] = "left half",
        [HW_PART_RIGHT] = "right half",
    };
    return names[part];
}

const char *hw_rowwords_work(hw_row_work work)
{
    static const char *const names[HW_WORK_COUNT] = {
        [HW_WORK_HAND] = "hand",
        [HW_WORK_PICKED] = "needles by hand",
        [HW_WORK_DIRECT] = "direct",
        [HW_WORK_PRESELECT] = "pre-selecting",
    };
    return names[work];
}

const char *hw_rowwords_setting(hw_row_setting setting)
{
    static const char *const names[HW_SET_COUNT] = {
        [HW_SET_NONE] = "none",
        [HW_SET_PLAIN] = "plain",
        [HW_SET_SELECT] = "plain, selecting",
        [HW_SET_TWO_SELECT] = "two colours, selecting",
        [HW_SET_TWO_LAST] = "two colours, not selecting",
        [HW_SET_TWO_DIRECT] = "two colours, direct",
        [HW_SET_TWO_PICKED] = "two colours, by hand",
    };
    return names[setting];
}

/* In two-colour rows the end needles are brought out on purpose, so that both yarns hold [R3]. */
const char *hw_rowwords_carriage(hw_row_setting setting)
{
    static const char *const words[HW_SET_COUNT] = {
        [HW_SET_NONE] = "",
        [HW_SET_PLAIN] = "plain",
        [HW_SET_SELECT] = "plain; needles for the next row come out",
        [HW_SET_TWO_SELECT] =
            "two colours; needles for the next row come out; both end stitches caught",
        [HW_SET_TWO_LAST] =
            "two colours with the needles that are out; none come out; both end stitches caught",
        [HW_SET_TWO_DIRECT] = "two colours by the card; both end stitches caught",
        [HW_SET_TWO_PICKED] =
            "two colours; bring out the row's contrast needles by hand; both end stitches caught",
    };
    return words[setting];
}

const char *hw_rowwords_card(hw_row_card card)
{
    static const char *const names[HW_CARD_COUNT] = {
        [HW_CARD_UNREAD] = "not read",
        [HW_CARD_HELD] = "held",
        [HW_CARD_MOVING] = "moving",
    };
    return names[card];
}

const char *hw_rowwords_yarn(hw_row_yarn yarn)
{
    static const char *const names[HW_YARN_COUNT] = {
        [HW_YARN_NONE] = "none",
        [HW_YARN_MAIN] = "main",
        [HW_YARN_CONTRAST] = "contrast",
    };
    return names[yarn];
}

const char *hw_rowwords_hand(hw_hand_kind kind)
{
    static const char *const names[HW_HAND_KIND_COUNT] = {
        [HW_HAND_CAST_ON] = "cast on",
        [HW_HAND_WEIGHTS] = "weights",
        [HW_HAND_COUNTER] = "counter",
        [HW_HAND_PICOT] = "picot",
        [HW_HAND_PURL] = "purl",
        [HW_HAND_CARD_IN] = "card in",
        [HW_HAND_CARD_GO] = "card go",
        [HW_HAND_SECOND_IN] = "second yarn in",
        [HW_HAND_SECOND_OUT] = "second yarn out",
        [HW_HAND_REHANG] = "re-hang",
        [HW_HAND_HANG_HEM] = "hang hem",
        [HW_HAND_MARK] = "mark",
        [HW_HAND_SHAPE] = "shape",
        [HW_HAND_HOLD_HALF] = "hold half",
        [HW_HAND_BACK_HALF] = "half back",
        [HW_HAND_SEW_HEM] = "sew hem",
    };
    return names[kind];
}

const char *hw_rowwords_step(hw_step_kind kind)
{
    static const char *const names[HW_STEP_COUNT] = {
        [HW_STEP_DECREASE] = "decrease",
        [HW_STEP_INCREASE] = "increase",
        [HW_STEP_BIND_OFF] = "bind off",
        [HW_STEP_CAST_ON] = "cast on",
        [HW_STEP_HOLD] = "hold",
        [HW_STEP_DIVIDE] = "divide",
        [HW_STEP_END] = "end",
    };
    return names[kind];
}

const char *hw_rowwords_place(hw_step_place place)
{
    static const char *const names[HW_AT_COUNT] = {
        [HW_AT_LEFT] = "left",
        [HW_AT_RIGHT] = "right",
        [HW_AT_BOTH] = "both",
        [HW_AT_NECK_LEFT] = "neck left",
        [HW_AT_NECK_RIGHT] = "neck right",
        [HW_AT_NECK_BOTH] = "neck both",
        [HW_AT_MIDDLE] = "middle",
    };
    return names[place];
}

const char *hw_rowwords_finding(hw_finding_kind kind)
{
    static const char *const names[HW_FINDING_COUNT] = {
        [HW_FINDING_BAND_START] = "band start",
        [HW_FINDING_BAND_END] = "band end",
        [HW_FINDING_SHAPE_START] = "shape start",
        [HW_FINDING_BAND_PARTED] = "band parted",
    };
    return names[kind];
}

/* ---- sentences ---- */

static const char *opposite(hw_side side)
{
    return hw_side_name(side == HW_LEFT ? HW_RIGHT : HW_LEFT);
}

/* One piece of hand work as it is said: the plan, the row, the work. */
typedef struct {
    const hw_rowplan *plan;
    const hw_row_run *run;
    const hw_row *row;
    const hw_handwork *work;
    hw_buf *buf;
} saying;

static bool in_hand(const saying *s)
{
    return s->plan->work == HW_WORK_HAND;
}

static void say_cast_on(const saying *s)
{
    const hw_handwork *w = s->work;
    const char *round = s->plan->in_rounds ? " and join them into a round" : "";
    bool open = s->plan->cast_on == HW_CAST_ON_OPEN;
    if (in_hand(s)) {
        hw_buf_format(s->buf, "Cast on %d stitches%s%s.", w->sts,
            open ? " over a thread that is taken out later (provisionally)" : "", round);
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

static void say_mark(const saying *s)
{
    hw_buf_text(s->buf, "Mark the side edges with a thread: here is the underarm.");
}

/* Stitches in the middle that are bound off where a neck parts the piece. */
static int middle_sts(const hw_rowplan *plan)
{
    int sts = 0;
    for (int i = 0; i < plan->hand_count; i++) {
        const hw_handwork *work = &plan->hands[i];
        bool parts = work->kind == HW_HAND_SHAPE && work->step->kind == HW_STEP_DIVIDE;
        sts = parts ? work->step->sts : sts;
    }
    return sts;
}

static void say_hold_half(const saying *s)
{
    int middle = middle_sts(s->plan);
    if (!in_hand(s)) {
        hw_buf_format(s->buf, "Put the %d stitches of the half at the %s on hold.", s->work->sts,
            opposite(s->row->before));
        return;
    }
    hw_buf_text(s->buf, "Work to the middle and turn; put ");
    if (middle > 0) {
        hw_buf_format(s->buf, "the %d stitches in the middle and ", middle);
    }
    hw_buf_format(s->buf, "the %d of the %s half on hold.", s->work->sts,
        s->row->part == HW_PART_LEFT ? "right" : "left");
}

static void say_back_half(const saying *s)
{
    int middle = middle_sts(s->plan);
    if (!in_hand(s)) {
        hw_buf_format(s->buf,
            "Take up the %d stitches that were put on hold; take the carriage to the %s without "
            "knitting.",
            s->work->sts, hw_side_name(s->work->side));
        return;
    }
    hw_buf_format(s->buf, "Join the yarn at the neck for a %s row",
        s->row->right_side ? "right-side" : "wrong-side");
    if (middle > 0) {
        hw_buf_format(s->buf, " and bind off the %d stitches in the middle", middle);
    }
    hw_buf_format(s->buf, "; then work the %d that were put on hold.", s->work->sts);
}

static void say_sew_hem(const saying *s)
{
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
    [HW_HAND_CARD_IN] = say_card_in,
    [HW_HAND_CARD_GO] = say_card_go,
    [HW_HAND_SECOND_IN] = say_second_in,
    [HW_HAND_SECOND_OUT] = say_second_out,
    [HW_HAND_REHANG] = say_rehang,
    [HW_HAND_HANG_HEM] = say_hang_hem,
    [HW_HAND_MARK] = say_mark,
    [HW_HAND_SHAPE] = say_nothing,
    [HW_HAND_HOLD_HALF] = say_hold_half,
    [HW_HAND_BACK_HALF] = say_back_half,
    [HW_HAND_SEW_HEM] = say_sew_hem,
};
_Static_assert(sizeof says / sizeof says[0] == HW_HAND_KIND_COUNT, "words for each hand work");

static void say_rows_hands(const saying *run, const hw_row *row, bool after)
{
    for (int k = 0; k < row->hand_count; k++) {
        const hw_handwork *work = &run->plan->hands[row->first_hand + k];
        saying s = { run->plan, run->run, row, work, run->buf };
        if (work->after == after && work->kind != HW_HAND_SHAPE) {
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
    } else if (s->plan->in_rounds || (s->run->count == 1 && s->row->right_side)) {
        hw_buf_text(s->buf, ", read from right to left.");
    } else if (s->run->count == 1) {
        hw_buf_text(s->buf, ", read from left to right.");
    } else {
        hw_buf_text(s->buf, ": right-side rows are read from right to left, wrong-side rows from "
                            "left to right.");
    }
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
