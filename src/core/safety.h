/* Notes on the safety of what children wear: floats, buttons, cords, sleepwear.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_SAFETY_H
#define HW_CORE_SAFETY_H

#include "core/note.h"

enum {
    HW_SAFETY_INFANT_MONTHS = 24, /* below this age fingers catch easily: [F2] */
    HW_SAFETY_INFANT_FLOAT = 3,   /* stitches: common practice, no source [F2] */
    HW_SAFETY_BUTTON_MONTHS = 36, /* below this age small parts are kept from toys: [N5] */
    HW_SAFETY_NECK_MONTHS = 84,   /* to 7 years no cord at the neck: [N2] [N6] */
    HW_SAFETY_CHILD_MONTHS = 179, /* to 14 years, the fifteenth not yet reached: [N2] [N6] */
    HW_SAFETY_WAIST_MONTHS = 203  /* to size 16: [N4] [N6] */
};
#define HW_SAFETY_NECK_CM 134.0 /* or as tall as this: [N2] */

/* Where cords and drawstrings sit. */
typedef enum {
    HW_CORD_NECK,  /* hood, head and neck */
    HW_CORD_WAIST, /* waist and lower edge */
    HW_CORD_ELSEWHERE,
    HW_CORD_PLACES
} hw_cord_place;

typedef struct {
    bool cord;       /* one that is sewn on or tied, without a channel */
    bool drawstring; /* one that draws a channel in, with free ends */
} hw_cord;

/* A band in two colours, for its strands. */
typedef struct {
    const char *where; /* in words that follow "inside": "the hem", "the cuffs" */
    int longest_float; /* stitches */
    bool open;         /* higher up: no facing covers it */
} hw_safety_band;

/* What is known of a garment. A zeroed flag means that there is none. */
typedef struct {
    const char *const *names; /* [count] of the sizes */
    const int *ages_months;   /* [count]; -1 where unknown */
    const double *heights_cm; /* [count], 0 where unknown; NULL: none is known */
    int count;                /* [1, HW_MAX_SIZES] */
    const hw_safety_band *bands;
    int band_count;
    bool buttons;
    hw_cord cords[HW_CORD_PLACES];
    bool sleepwear;
    bool bodiless; /* it fits no body, such as a purse: ages are not asked for */
} hw_safety_task;

/*
 * Add the notes on safety that apply; none that does not. Last a remark, where an age is missing.
 *
 * Given:     task      what is known; texts are copied into the notes
 *            notes     initialised
 * Note:      a size of unknown age is passed over, but for cords at the neck where it is known to
 *            be no taller than HW_SAFETY_NECK_CM and not known to be older than 14. Buttons: only
 *            below HW_SAFETY_BUTTON_MONTHS. A remark asks for ages on which something would
 *            depend; floats and buttons do not in a size taller than HW_SAFETY_NECK_CM. Each note
 *            names the sizes, what to do and what it rests on [F2] [N1] to [N6] in data/SOURCES.md,
 *            and leaves the last word to the rules of the place
 */
void hw_safety_add(const hw_safety_task *task, hw_notes *notes);

#endif
