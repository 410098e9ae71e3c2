/* Safety: each rule marks the sizes that it is for, and speaks only where it marked one.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/safety.h"

#include <assert.h>

typedef struct {
    bool of[HW_MAX_SIZES];
    bool any;
} marks;

/* Sizes whose age is known and lies between two ages, both included. */
static marks aged(const hw_safety_task *task, int from_months, int to_months)
{
    marks found = { 0 };
    for (int i = 0; i < task->count; i++) {
        int age = task->ages_months[i];
        found.of[i] = age >= 0 && age >= from_months && age <= to_months;
        found.any = found.any || found.of[i];
    }
    return found;
}

/* Up to 7 years or 134 cm [N2]: whichever is known and says so, but nobody who is past 14. */
static marks young_at_neck(const hw_safety_task *task)
{
    marks found = { 0 };
    for (int i = 0; i < task->count; i++) {
        int age = task->ages_months[i];
        double height_cm = task->heights_cm != NULL ? task->heights_cm[i] : 0;
        bool small = height_cm > 0 && height_cm <= HW_SAFETY_NECK_CM;
        bool child = age <= HW_SAFETY_CHILD_MONTHS;
        found.of[i] = (age >= 0 && age <= HW_SAFETY_NECK_MONTHS) || (small && child);
        found.any = found.any || found.of[i];
    }
    return found;
}

static const char *in_sizes(const hw_safety_task *task, const marks *found, hw_notes *notes)
{
    return hw_notes_sizes(notes, task->names, found->of, task->count);
}

static void floats(const hw_safety_task *task, hw_notes *notes)
{
    marks infants = aged(task, 0, HW_SAFETY_INFANT_MONTHS - 1);
    for (int b = 0; infants.any && b < task->band_count; b++) {
        const hw_safety_band *band = &task->bands[b];
        if (band->longest_float <= HW_SAFETY_INFANT_FLOAT) {
            continue;
        }
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: floats of %d stitches inside %s can catch small fingers; %s, or choose a motif "
            "with floats of at most %d (common practice; CEN/TR 16792); follow your local rules.",
            in_sizes(task, &infants, notes), band->longest_float, band->where,
            band->open ? "sew each one down in its middle" : "sew the facing down all round",
            HW_SAFETY_INFANT_FLOAT);
    }
}

static void buttons(const hw_safety_task *task, hw_notes *notes)
{
    marks small = aged(task, 0, HW_SAFETY_BUTTON_MONTHS - 1);
    if (task->buttons && small.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: a button that comes off can be swallowed; sew each one on through both layers, "
            "and pull hard at it before wear and after each wash (common practice; CEN/TR 16792); "
            "follow your local rules.",
            in_sizes(task, &small, notes));
    }
}

static void cords_at_neck(const hw_safety_task *task, hw_notes *notes)
{
    hw_cord neck = task->cords[HW_CORD_NECK];
    marks young = young_at_neck(task);
    if ((neck.cord || neck.drawstring) && young.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: put no cord or drawstring at hood, head or neck; close it with buttons (EN "
            "14682, "
            "up to 7 years or 134 cm; 16 CFR 1120, upper outerwear in sizes 2T to 12); follow your "
            "local rules.",
            in_sizes(task, &young, notes));
    }
    marks older = aged(task, HW_SAFETY_NECK_MONTHS + 1, HW_SAFETY_CHILD_MONTHS);
    older.any = false;
    for (int i = 0; i < task->count; i++) {
        older.of[i] = older.of[i] && !young.of[i];
        older.any = older.any || older.of[i];
    }
    if (neck.drawstring && older.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: leave no free ends on a drawstring at hood or neck, or do without it (EN "
            "14682, "
            "up to 14 years; 16 CFR 1120 allows none on upper outerwear in sizes 2T to 12); follow "
            "your local rules.",
            in_sizes(task, &older, notes));
    }
}

static void cords_at_waist(const hw_safety_task *task, hw_notes *notes)
{
    hw_cord waist = task->cords[HW_CORD_WAIST];
    marks drawn = aged(task, 0, HW_SAFETY_WAIST_MONTHS);
    marks tied = aged(task, 0, HW_SAFETY_CHILD_MONTHS);
    if (waist.drawstring && drawn.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: let a drawstring at waist or lower edge stick out by 3 in (7.5 cm) at most, "
            "without toggles or knots, and sew it down in the middle (16 CFR 1120, upper outerwear "
            "2T to 16; EN 14682); follow your local rules.",
            in_sizes(task, &drawn, notes));
    } else if (waist.cord && tied.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: look up how long a cord at waist or lower edge may be before you add one "
            "(EN 14682, up to 14 years); follow your local rules.",
            in_sizes(task, &tied, notes));
    }
}

static void cords_elsewhere(const hw_safety_task *task, hw_notes *notes)
{
    hw_cord cord = task->cords[HW_CORD_ELSEWHERE];
    marks children = aged(task, 0, HW_SAFETY_CHILD_MONTHS);
    if ((cord.cord || cord.drawstring) && children.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: a cord or drawstring can catch; look up whether it may be where you want it "
            "(EN 14682, up to 14 years); follow your local rules.",
            in_sizes(task, &children, notes));
    }
}

static void sleepwear(const hw_safety_task *task, hw_notes *notes)
{
    marks children = aged(task, 0, HW_SAFETY_CHILD_MONTHS);
    if (task->sleepwear && children.any) {
        hw_notes_say(notes, HW_NOTE_SAFETY,
            "In %s: look up how garments that children sleep in may burn before you choose yarn "
            "and "
            "fit (16 CFR 1615, 1616; close-fitting ones and those up to 9 months have rules of "
            "their own); follow your local rules.",
            in_sizes(task, &children, notes));
    }
}

/* What depends on an age: whether in any size, and whether only in those of small children. */
static bool goes_by_age(const hw_safety_task *task, bool small)
{
    bool any = small && task->buttons;
    for (int b = 0; small && b < task->band_count; b++) {
        any = any || task->bands[b].longest_float > HW_SAFETY_INFANT_FLOAT;
    }
    for (int place = 0; place < HW_CORD_PLACES; place++) {
        any = any || task->cords[place].cord || task->cords[place].drawstring;
    }
    return any || task->sleepwear;
}

static void ages_missing(const hw_safety_task *task, hw_notes *notes)
{
    marks found = { 0 };
    for (int i = 0; i < task->count; i++) {
        double height_cm = task->heights_cm != NULL ? task->heights_cm[i] : 0;
        found.of[i] = task->ages_months[i] < 0 && goes_by_age(task, height_cm <= HW_SAFETY_NECK_CM);
        found.any = found.any || found.of[i];
    }
    if (found.any && !task->bodiless) {
        hw_notes_say(notes, HW_NOTE_REMARK,
            "In %s: no age is known, so cautions that go by it are left out. Write `ages`, in "
            "months, under `sizes`, and the notes say in which sizes they apply.",
            in_sizes(task, &found, notes));
    }
}

void hw_safety_add(const hw_safety_task *task, hw_notes *notes)
{
    assert(task->count > 0 && task->count <= HW_MAX_SIZES);
    static void (*const rules[])(const hw_safety_task *, hw_notes *) = { floats, buttons,
        cords_at_neck, cords_at_waist, cords_elsewhere, sleepwear, ages_missing };
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++) {
        rules[i](task, notes);
    }
}
