/* The rows of a folded hem, counted from the cast-on edge to the last plain row of its face.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/hem.h"

#include <assert.h>

#include "core/num.h"

enum { LEAST_PLAIN_ROWS = 4 }; /* two below the band and two above */

/* A hair: facings that are as deep as the face but for rounding are not deeper. */
static const double hair_cm = 1e-9;

static const struct {
    const char *name;
    int rows; /* a picot's transfers make no row [H2] */
} folds[] = {
    [HW_FOLD_NONE] = { "no fold row", 0 },
    [HW_FOLD_LOOSE] = { "one loose row", 1 },
    [HW_FOLD_PURL] = { "one purl row", 1 },
    [HW_FOLD_PICOT] = { "picot", 0 },
};
_Static_assert(sizeof folds / sizeof folds[0] == HW_FOLD_COUNT, "a row for each fold");

static const char *const facings[] = {
    [HW_FACING_ROWS] = "same rows",
    [HW_FACING_DEPTH] = "same depth",
};
_Static_assert(sizeof facings / sizeof facings[0] == HW_FACING_COUNT, "a name for each facing");

const char *hw_fold_name(hw_fold fold)
{
    assert(fold < HW_FOLD_COUNT);
    return folds[fold].name;
}

const char *hw_facing_name(hw_facing facing)
{
    assert(facing < HW_FACING_COUNT);
    return facings[facing];
}

/* Plain rows for a wanted depth: an even number, not yet held to the least. */
static int plain_rows_for(double depth_cm, int band_rows, const hw_gauge *gauge)
{
    double band_cm = hw_gauge_length_cm(&gauge[HW_BAND], band_rows);
    return hw_num_nearest_even(hw_gauge_rows(&gauge[HW_MAIN], depth_cm - band_cm));
}

static hw_status check_face_rows(const hw_hem_input *in, int band_rows, hw_err *err)
{
    int plain = in->face_rows - band_rows;
    hw_status status = HW_OK;
    if (plain < LEAST_PLAIN_ROWS) {
        status = hw_err_set(err, HW_ERR_RANGE,
            "a face of %d rows is too short for a band of %d rows with two plain rows below it and "
            "two above: ask for %d rows or more",
            in->face_rows, band_rows, band_rows + LEAST_PLAIN_ROWS);
    } else if (plain % 2 != 0) {
        status = hw_err_set(err, HW_ERR_RANGE,
            "a face of %d rows leaves %d plain rows beside a band of %d, and plain rows come in "
            "twos: ask for %d or %d rows",
            in->face_rows, plain, band_rows, in->face_rows - 1, in->face_rows + 1);
    }
    return status == HW_OK ? HW_OK : hw_err_place(err, status, in->line, 0);
}

/* Facing and fold together are even, so that the band begins where row 1 began: the second yarn
 * waits there, and in hand knitting it is a right-side row. */
static int facing_rows_for(const hw_hem_input *in, const hw_hem *hem, const hw_gauge *gauge)
{
    if (in->facing_rows > 0) {
        return in->facing_rows;
    }
    int both = hem->face_rows - (in->picked_up ? 0 : hw_num_mod(hem->face_rows, 2));
    if (in->facing == HW_FACING_DEPTH) {
        double rows = hw_gauge_rows(&gauge[HW_FACING], hem->face_cm) + hem->fold_rows;
        both = in->picked_up ? hw_num_nearest(rows) : hw_num_nearest_even(rows);
    }
    return both < 2 ? 2 - hem->fold_rows : both - hem->fold_rows;
}

static void split_face(hw_hem *hem, int plain_rows)
{
    int half = plain_rows / 2;
    hem->below_rows = half % 2 == 0 ? half : half - 1;
    hem->above_rows = plain_rows - hem->below_rows;
    hem->face_rows = plain_rows + hem->band_rows;
}

static double face_depth_cm(const hw_hem *hem, const hw_gauge *gauge)
{
    int plain_rows = hem->below_rows + hem->above_rows;
    return hw_gauge_length_cm(&gauge[HW_MAIN], plain_rows) +
           hw_gauge_length_cm(&gauge[HW_BAND], hem->band_rows);
}

static void set_dials(const hw_gauge *gauge, hw_hem *hem)
{
    hem->has_dials =
        gauge[HW_MAIN].has_dial && gauge[HW_BAND].has_dial && gauge[HW_FACING].has_dial;
    if (hem->has_dials) {
        hem->facing_dial = gauge[HW_FACING].dial;
        hem->band_dial = gauge[HW_BAND].dial;
        hem->joining_dial = hem->facing_dial + 2; /* [H1] */
    }
}

hw_status hw_hem_plan(
    const hw_hem_input *in, int band_rows, const hw_gauge *gauge, hw_hem *out, hw_err *err)
{
    assert(band_rows > 0 && (in->face_rows > 0) != (in->depth_cm > 0));
    hw_status status = in->face_rows > 0 ? check_face_rows(in, band_rows, err) : HW_OK;
    if (status != HW_OK) {
        return status;
    }
    int plain_rows = in->face_rows > 0 ? in->face_rows - band_rows
                                       : plain_rows_for(in->depth_cm, band_rows, gauge);
    hw_hem hem = {
        .band_rows = band_rows,
        .wanted_cm = in->face_rows > 0 ? 0 : in->depth_cm,
        .fold = in->fold,
        .fold_rows = folds[in->fold].rows,
        .raised = plain_rows < LEAST_PLAIN_ROWS,
        .odd_band = band_rows % 2 != 0,
    };
    split_face(&hem, hem.raised ? LEAST_PLAIN_ROWS : plain_rows);
    hem.face_cm = face_depth_cm(&hem, gauge);
    hem.facing_rows = facing_rows_for(in, &hem, gauge);
    hem.facing_cm = hw_gauge_length_cm(&gauge[HW_FACING], hem.facing_rows);
    hem.facing_deep = hem.facing_cm > hem.face_cm + hair_cm;
    hem.total_rows = hem.facing_rows + hem.fold_rows + hem.face_rows;
    if (hem.total_rows > HW_MAX_ROWS) {
        status = hw_err_set(err, HW_ERR_RANGE,
            "the hem comes to %d rows, and a piece can have %d: ask for a smaller depth",
            hem.total_rows, HW_MAX_ROWS);
        return hw_err_place(err, status, in->line, 0);
    }
    set_dials(gauge, &hem);
    *out = hem;
    return HW_OK;
}
