/* What is done by hand before and after rows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_HANDWORK_H
#define HW_CORE_HANDWORK_H

#include "core/shape.h"

typedef enum {
    HW_HAND_CAST_ON, /* sts stitches, as the task says; number: rows of waste yarn, or 0 */
    HW_HAND_WEIGHTS, /* hang them, or move them up */
    HW_HAND_COUNTER, /* set the row counter to number */
    HW_HAND_PICOT,   /* every other stitch to its neighbour */
    HW_HAND_PURL, /* the row shows purl stitches on the right side: turned after it, by hand worked
                     so */
    HW_HAND_MOVE, /* the piece number needles to the right on the bed; below 0: left */
    HW_HAND_CARD_IN,    /* lock the card at row number */
    HW_HAND_CARD_GO,    /* let the card move */
    HW_HAND_SECOND_IN,  /* the contrast yarn into the second feeder */
    HW_HAND_SECOND_OUT, /* and out of it */
    HW_HAND_REHANG,     /* off the needles and on again: sts stitches, number fewer than before */
    HW_HAND_HANG_HEM,   /* the cast-on edge, or the row that was picked up, onto the needles */
    HW_HAND_INTO_ROWS,  /* no more rounds: sts stitches of the piece by itself */
    HW_HAND_MARK,       /* both edges */
    HW_HAND_SHAPE,      /* one working of `step` */
    HW_HAND_HOLD_HALF,  /* sts stitches of the other half out of work */
    HW_HAND_BACK_HALF,  /* sts stitches back in work, carriage at side */
    HW_HAND_SEW_HEM,    /* the cast-on edge, or a trim's last row, with a needle */
    HW_HAND_PICK_UP,    /* sts stitches along the trim's edges */
    HW_HAND_HOLE,       /* a buttonhole of sts; number: stitches of the row before it, from the left
                           of the bed; hand knitting: from where the row begins */
    HW_HAND_TAKE_OFF,   /* sts stitches, open */
    HW_HAND_BIND_OFF,   /* sts stitches, loosely */
    HW_HAND_KIND_COUNT
} hw_hand_kind;

typedef struct {
    hw_hand_kind kind;
    bool after; /* after the row; else before it */
    int sts, number;
    hw_side side;              /* of the bed; hand knitting: the edge, as seen on the right side */
    const hw_shape_step *step; /* HW_HAND_SHAPE alone */
    const char *band;          /* HW_HAND_CARD_IN: whose card, NULL where there is one;
                                  HW_HAND_MOVE: for which band, NULL: back */
    int column;                /* HW_HAND_CARD_IN: from 1, where a card of its own starts, or 0 */
} hw_handwork;

#endif
