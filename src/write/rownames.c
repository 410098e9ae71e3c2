/* Short names of rows, settings and hand work.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/rowwords.h"

const char *hw_rowwords_kind(hw_row_kind kind)
{
    static const char *const names[HW_ROW_KIND_COUNT] = {
        [HW_ROW_FACING] = "facing",
        [HW_ROW_FOLD] = "fold",
        [HW_ROW_FACE] = "face",
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
        [HW_HAND_MOVE] = "move",
        [HW_HAND_CARD_IN] = "card in",
        [HW_HAND_CARD_GO] = "card go",
        [HW_HAND_SECOND_IN] = "second yarn in",
        [HW_HAND_SECOND_OUT] = "second yarn out",
        [HW_HAND_REHANG] = "re-hang",
        [HW_HAND_HANG_HEM] = "hang hem",
        [HW_HAND_INTO_ROWS] = "into rows",
        [HW_HAND_MARK] = "mark",
        [HW_HAND_SHAPE] = "shape",
        [HW_HAND_HOLD_HALF] = "hold half",
        [HW_HAND_BACK_HALF] = "half back",
        [HW_HAND_SEW_HEM] = "sew hem",
        [HW_HAND_PICK_UP] = "pick up",
        [HW_HAND_HOLE] = "buttonhole",
        [HW_HAND_TAKE_OFF] = "take off",
        [HW_HAND_BIND_OFF] = "bind off",
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
        [HW_STEP_BACK] = "back",
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

bool hw_rowwords_in_round(const hw_rowplan *plan, const hw_row *row)
{
    return row->number <= plan->round_rows;
}

bool hw_rowwords_has_others(const hw_rowplan *plan)
{
    return plan->tube != NULL && plan->tube->count > 1;
}
