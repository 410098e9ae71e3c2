/* Gauge: stitches and rows per 10 cm of each fabric, from counts and lengths.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_GAUGE_H
#define HW_CORE_GAUGE_H

#include "core/dial.h"
#include "core/line.h"

/* The two directions in which a swatch is measured. */
typedef enum { HW_ACROSS, HW_UP, HW_WAY_COUNT } hw_way;

/* When a swatch was measured. */
typedef enum {
    HW_UNSTATED,
    HW_RESTED,
    HW_WASHED,
    HW_KNITTED, /* a finished piece: counts beside washed swatches, and has no edge in its length */
    HW_STATE_COUNT
} hw_state;

/* One measured place: so many stitches in a width, so many rows in a length. */
typedef struct {
    double sts;       /* 0 where the width was not measured; not whole in an outright gauge */
    double width_cm;  /* 0 where the width was not measured */
    double rows;      /* as sts */
    double length_cm; /* 0 where the length was not measured */
    hw_state state;
    bool has_dial;
    double dial;      /* of this place, where it is not the fabric's */
    double mass_g;    /* of the piece sts by rows; 0 where it was not weighed */
    const char *note; /* a date or a remark; NULL for none */
} hw_swatch;

/* How places become a gauge. */
typedef enum {
    HW_METHOD_USUAL,  /* a line where counts differ, else the mean of ratios */
    HW_METHOD_LINE,   /* length on count, least squares with an edge's share */
    HW_METHOD_ZERO,   /* the same without an edge's share */
    HW_METHOD_RATIOS, /* mean of count over length */
    HW_METHOD_ROBUST, /* a line that a far-off place hardly moves */
    HW_METHOD_COUNT
} hw_method;

/* What a project says of one fabric. */
typedef struct {
    const hw_swatch *swatches;
    int count;     /* 0: nothing is known of this fabric */
    bool outright; /* stitches and rows per a length, not a measured swatch */
    bool markers;  /* counted between marked stitches: no edge has a share in a length */
    hw_method method;
    bool has_dial;
    double dial; /* the carriage's stitch size number; larger is looser */
    int line;    /* where the project says so; 0 where it does not */
} hw_gauge_input;

/* What the places say of one direction. */
typedef struct {
    double per_10cm;
    int places;          /* measured places that count */
    hw_line_kind kind;   /* how they were put together */
    bool from_dials;     /* no place has the fabric's dial: read off other dials */
    bool has_interval;   /* error, low and high are known */
    double error;        /* standard error of per_10cm */
    double low, high;    /* 95 % interval of per_10cm */
    int freedom;         /* degrees of freedom */
    double edge_cm;      /* what the edges take of a length; 0 but for lines */
    double residual_sd;  /* cm of a line, counts per cm of ratios */
    int outlier;         /* index of a swatch too far off to be chance, or -1 */
    double outlier_size; /* in standard deviations */
    bool has_wash;       /* places said to be rested and to be washed are both known */
    double wash_percent; /* change from rested to washed, of the mean of count over length */
} hw_gauge_side;

typedef struct {
    double sts_per_10cm, rows_per_10cm;
    hw_mark mark; /* given, measured, derived (from other dials) or assumed */
    hw_gauge_side sides[HW_WAY_COUNT];
    bool has_dial, dial_assumed;
    double dial;
    bool has_dial_fit;    /* swatches at several dials are known */
    hw_dial_fit dial_fit; /* stitches in 10 cm over the dial */
    double g_per_m2;      /* of the places that count, else of any; 0 where nothing was weighed */
} hw_gauge;

/*
 * The gauge of one fabric from its measured places.
 *
 * Given:     in        1 to HW_MAX_SWATCHES swatches; counts above 0, lengths in (0, HW_MAX_CM]
 *            arena     working room
 * Returned:  out       untouched on failure
 * Result:    HW_OK; HW_ERR_MISSING (no widths, or no lengths; a method that needs more places);
 *            HW_ERR_RANGE (above HW_MAX_PER_10CM, or less than one stitch or row in 10 cm);
 *            HW_ERR_INTERNAL; HW_ERR_NOMEM
 * Note:      washed places count alone where there are any; places at the fabric's own dial, or
 *            without one, count alone, and without any the gauge is read off the other dials
 *            (hw_dial_fit). Usual method: least squares of length on count where counts differ and
 *            no markers stood; else the mean of count over length, weighted by length where lengths
 *            differ by a tenth or more. Pieces that were knitted have no share in the edge.
 * Interval: Student's t, 95 %, with an error never below that of readings to the millimetre
 */
hw_status hw_gauge_measure(
    const hw_gauge_input *in, hw_arena *arena, hw_gauge *out, hw_err *err) HW_MUST_USE;

/*
 * The gauges of all fabrics; what is not swatched follows a rule and is marked assumed.
 *
 * Given:     in        HW_FABRIC_COUNT inputs, indexed by hw_fabric; main must be known
 *            arena     working room
 * Returned:  out       HW_FABRIC_COUNT gauges; untouched on failure
 * Result:    as hw_gauge_measure; HW_ERR_MISSING without the main fabric
 * Note:      the rule: a fabric without a swatch has the main fabric's gauge, the band one dial
 *            number looser [G4] and the facing one tighter [H1] than main (data/SOURCES.md); a dial
 *            that is given stays, and none below 0 is assumed
 */
hw_status hw_gauge_all(
    const hw_gauge_input *in, hw_arena *arena, hw_gauge *out, hw_err *err) HW_MUST_USE;

/*
 * The places of one direction that count for a gauge: washed ones where there are any, at the
 * fabric's own dial where there are any.
 *
 * Given:     in, way
 * Returned:  index     room for HW_MAX_SWATCHES: which swatches
 *            the number of them
 */
int hw_gauge_places(const hw_gauge_input *in, hw_way way, int *index);

/* A swatch's count and length in a direction; 0 where it was not measured. */
double hw_swatch_count(const hw_swatch *swatch, hw_way way);
double hw_swatch_length_cm(const hw_swatch *swatch, hw_way way);

/* Width in cm of a number of stitches, or stitches (not rounded) of a width; the same for rows. */
double hw_gauge_width_cm(const hw_gauge *gauge, double sts);
double hw_gauge_sts(const hw_gauge *gauge, double width_cm);
double hw_gauge_length_cm(const hw_gauge *gauge, double rows);
double hw_gauge_rows(const hw_gauge *gauge, double length_cm);

#endif
