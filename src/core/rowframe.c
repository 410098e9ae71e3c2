/* Numbers and sides of rows: one counter, and a carriage that turns at each end.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/rowframe.h"

#include <assert.h>

hw_side hw_row_frame_other(hw_side side)
{
    return side == HW_LEFT ? HW_RIGHT : HW_LEFT;
}

hw_row_part hw_row_frame_half(hw_side side)
{
    return side == HW_LEFT ? HW_PART_LEFT : HW_PART_RIGHT;
}

hw_row_work hw_rowplan_work(const hw_rowplan_task *task)
{
    static const hw_row_work works[] = {
        [HW_CARRIAGE_NONE] = HW_WORK_PICKED,
        [HW_CARRIAGE_PRESELECTING] = HW_WORK_PRESELECT,
        [HW_CARRIAGE_DIRECT] = HW_WORK_DIRECT,
    };
    _Static_assert(sizeof works / sizeof works[0] == HW_CARRIAGE_COUNT, "a way for each carriage");
    const hw_machine *machine = task->machine;
    if (!(machine->pitch_cm > 0)) {
        return HW_WORK_HAND;
    }
    bool card = machine->card_columns > 0 && (task->motif == NULL || task->motif->fits_card);
    return card ? works[machine->carriage] : HW_WORK_PICKED;
}

static hw_side home_of(const hw_rowplan_task *task, hw_row_work work)
{
    if (work == HW_WORK_HAND) {
        /* A right-side row is worked from the right to the left, and picking up makes one. */
        return task->trim != NULL && task->round_rows == 0 ? HW_LEFT : HW_RIGHT;
    }
    return task->mirrored ? hw_row_frame_other(task->start) : task->start;
}

/* A piece begins inside, at its cast-on edge; a trim outside, where it is picked up. */
static void lay_out_hem(hw_row_frame *frame)
{
    const hw_hem *hem = frame->task->hem;
    const hw_row_stretch piece[] = { { HW_ROW_FACING, hem->facing_rows },
        { HW_ROW_FOLD, hem->fold_rows }, { HW_ROW_BELOW, hem->below_rows },
        { HW_ROW_BAND, hem->band_rows }, { HW_ROW_ABOVE, hem->above_rows } };
    const hw_row_stretch trim[] = { { HW_ROW_FACE, hem->above_rows },
        { HW_ROW_BAND, hem->band_rows }, { HW_ROW_FACE, hem->below_rows },
        { HW_ROW_FOLD, hem->fold_rows }, { HW_ROW_FACING, hem->facing_rows } };
    _Static_assert(sizeof piece == sizeof frame->hem && sizeof trim == sizeof piece, "all of it");
    for (int i = 0; i < HW_ROW_STRETCHES; i++) {
        frame->hem[i] = frame->task->trim != NULL ? trim[i] : piece[i];
    }
}

hw_row_frame hw_row_frame_of(const hw_rowplan_task *task)
{
    const hw_shape *shape = task->shape;
    hw_row_work work = hw_rowplan_work(task);
    hw_row_frame frame = {
        .task = task,
        .work = work,
        .home = home_of(task, work),
        .main_rows = shape == NULL ? task->plain_rows : shape->rows,
    };
    lay_out_hem(&frame);
    bool parted = shape != NULL && hw_shape_parted(shape);
    frame.neck = parted ? shape->neck_row : frame.main_rows;
    frame.rows[HW_PART_WHOLE] = shape == NULL || parted ? frame.neck : hw_shape_most_rows(shape);
    for (int side = 0; side < HW_SIDE_COUNT && parted; side++) {
        frame.rows[hw_row_frame_half((hw_side)side)] = hw_shape_rows(shape, (hw_side)side);
    }
    return frame;
}

int hw_row_frame_rounds(const hw_row_frame *frame)
{
    return frame->work == HW_WORK_HAND ? frame->task->round_rows : 0;
}

hw_side hw_row_frame_before(const hw_row_frame *frame, int number)
{
    int rounds = hw_row_frame_rounds(frame);
    bool at_home = number <= rounds || (number - rounds) % 2 != 0;
    return at_home ? frame->home : hw_row_frame_other(frame->home);
}

hw_side hw_row_frame_edge(const hw_row_frame *frame, hw_side side)
{
    return frame->work == HW_WORK_HAND ? side : hw_row_frame_other(side);
}

int hw_row_frame_first(const hw_row_frame *frame, hw_row_kind kind)
{
    int number = 1;
    for (int i = 0; i < HW_ROW_STRETCHES && frame->hem[i].kind != kind; i++) {
        number += frame->hem[i].rows;
    }
    return number;
}

int hw_row_frame_band_first(const hw_row_frame *frame, int band)
{
    const hw_rowplan_task *task = frame->task;
    assert(band >= 0 && band <= task->band_count);
    return band == 0 ? hw_row_frame_first(frame, HW_ROW_BAND)
                     : task->hem->total_rows + task->bands[band - 1].row + 1;
}

int hw_row_frame_folded(const hw_row_frame *frame)
{
    return hw_row_frame_first(frame, HW_ROW_FOLD) + frame->task->hem->fold_rows;
}

int hw_row_frame_band_rows(const hw_row_frame *frame, int band)
{
    const hw_rowplan_task *task = frame->task;
    assert(band >= 0 && band <= task->band_count);
    return band == 0 ? task->hem->band_rows : task->bands[band - 1].motif->chart.rows;
}

hw_row_work hw_row_frame_work(const hw_row_frame *frame, int band)
{
    assert(band >= 0 && band <= frame->task->band_count);
    bool card = frame->work == HW_WORK_DIRECT || frame->work == HW_WORK_PRESELECT;
    bool fits = band == 0 || frame->task->bands[band - 1].motif->fits_card;
    return card && !fits ? HW_WORK_PICKED : frame->work;
}

int hw_row_frame_lead(const hw_row_frame *frame, int band)
{
    bool ahead = hw_row_frame_work(frame, band) == HW_WORK_PRESELECT;
    return ahead && hw_row_frame_band_rows(frame, band) > 0 ? 1 : 0;
}

int hw_row_frame_aside(const hw_row_frame *frame, int number)
{
    int aside = 0;
    for (int b = 1; b <= frame->task->band_count && frame->work != HW_WORK_HAND; b++) {
        const hw_row_band *band = &frame->task->bands[b - 1];
        int first = hw_row_frame_band_first(frame, b);
        aside = number >= first - hw_row_frame_lead(frame, b) ? band->aside : aside;
        aside = band->back && number >= first + hw_row_frame_band_rows(frame, b) ? 0 : aside;
    }
    return aside;
}

bool hw_row_frame_joins(const hw_row_frame *frame)
{
    return frame->task->closing == HW_CLOSING_HUNG;
}

int hw_row_frame_band_least(const hw_row_frame *frame, int band)
{
    int lead = hw_row_frame_lead(frame, band);
    int least = lead + (hw_row_frame_joins(frame) ? 1 : 0);
    if (band > 1) {
        int below = frame->task->bands[band - 2].row + hw_row_frame_band_rows(frame, band - 1);
        least = below + lead > least ? below + lead : least;
    }
    return least;
}

hw_row_above hw_rowplan_above(const hw_rowplan_task *task)
{
    hw_row_frame frame = hw_row_frame_of(task);
    int number = task->hem->total_rows + 1;
    return (hw_row_above){
        .number = number,
        .edge = hw_row_frame_edge(&frame, hw_row_frame_before(&frame, number)),
        .right_side = hw_row_frame_before(&frame, number) == frame.home,
    };
}
