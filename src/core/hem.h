/* The folded hem: facing, fold, plain, band, plain; all rows whole, depth in cm.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_HEM_H
#define HW_CORE_HEM_H

#include "core/gauge.h"

typedef enum { HW_FOLD_NONE, HW_FOLD_LOOSE, HW_FOLD_PURL, HW_FOLD_PICOT, HW_FOLD_COUNT } hw_fold;
typedef enum { HW_FACING_ROWS, HW_FACING_DEPTH, HW_FACING_COUNT } hw_facing;

/* How a hem is begun: with waste yarn and open loops, or with a wrapped edge. */
typedef enum { HW_CAST_ON_OPEN, HW_CAST_ON_WRAPPED, HW_CAST_ON_COUNT } hw_cast_on;

/* How it is closed: the cast-on edge hung on the needles and knitted in, or sewn down later. */
typedef enum { HW_CLOSING_HUNG, HW_CLOSING_SEWN, HW_CLOSING_COUNT } hw_closing;

typedef struct {
    double depth_cm; /* wanted, (0, HW_MAX_CM]; 0: face_rows says it */
    int face_rows;   /* wanted rows of the face; 0: depth_cm says it */
    hw_fold fold;
    hw_facing facing; /* as many rows as the face, or as deep as the face */
    int facing_rows;  /* rows of the facing, asked for outright; 0: as `facing` says */
    bool picked_up;   /* the facing comes last, so its rows need not be even */
    hw_cast_on cast_on;
    hw_closing closing;
    int line;
} hw_hem_input;

typedef struct {
    int facing_rows, fold_rows, below_rows, band_rows, above_rows, face_rows, total_rows;
    double wanted_cm; /* 0 where rows were asked for */
    double face_cm, facing_cm;
    hw_fold fold;
    bool raised;      /* the wanted depth was too small: a and b are at their least, 2 each */
    bool facing_deep; /* the facing comes out deeper than the face: it will peep out */
    bool odd_band;    /* the carriage ends the band on the other side */
    bool has_dials;   /* the next three are known */
    double facing_dial, band_dial, joining_dial;
} hw_hem;

/* The fold in words: "no fold row", "one loose row", "one purl row", "picot". */
const char *hw_fold_name(hw_fold fold);

/* The facing rule in words: "same rows", "same depth". */
const char *hw_facing_name(hw_facing facing);

/*
 * The rows of a folded hem around a band.
 *
 * Given:     in        one of depth_cm and face_rows is set
 *            band_rows two-colour rows, [1, HW_MAX_CHART_ROWS]
 *            gauge     HW_FABRIC_COUNT gauges
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_RANGE (more than HW_MAX_ROWS rows, or face rows that leave an odd number
 *            of plain rows or fewer than four)
 * Note:      plain rows a + b = 2 nearest((D - h/Rband) Rmain / 2), ties up; a and b even, at least
 *            2, a = b or b = a + 2; a picot and no fold have no row of their own [H1] [H2]; facing
 *            and fold as many rows as the face [common practice, no source], or the facing as deep
 *            as the face, and the two even, so that the band begins where row 1 began [H4]; dials:
 * facing main - 1, joining row facing + 2 [H1], band main + 1 [G4], and a dial that was given stays
 */
hw_status hw_hem_plan(const hw_hem_input *in, int band_rows, const hw_gauge *gauge, hw_hem *out,
    hw_err *err) HW_MUST_USE;

#endif
