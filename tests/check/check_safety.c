/* Notes on safety: said to whom they apply, to nobody else, with what they rest on.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/safety.h"

#include <string.h>

#include "support.h"

enum { MOST = 6, MOST_NOTES = 8 };

/* One garment of up to six sizes "A", "B" ...; `said` are words of each note, in order. */
typedef struct {
    int ages[MOST];
    int count;
    double heights[MOST]; /* all 0: none known */
    int floats;           /* of one band, "the cuffs"; 0: no band */
    bool open;            /* it has no facing */
    bool buttons, sleepwear, bodiless;
    hw_cord cords[HW_CORD_PLACES];
    struct {
        const char *sizes; /* "In A, B:" */
        const char *words; /* what to do */
        const char *rests; /* on what */
    } said[MOST_NOTES];
    const char *unknown; /* "In C:", where a remark asks for ages; NULL: none does */
} row;

/* Letters of a note that is still short, own choice: little more than two lines of a terminal. */
enum { SHORT = 220 };

static const char *const names[] = { "A", "B", "C", "D", "E", "F" };

static void check_row(const row *r)
{
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_notes notes;
    ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
    const hw_safety_band band = {
        .where = "the cuffs", .longest_float = r->floats, .open = r->open
    };
    hw_safety_task task = {
        .names = names,
        .ages_months = r->ages,
        .heights_cm = r->heights,
        .count = r->count,
        .bands = &band,
        .band_count = r->floats > 0 ? 1 : 0,
        .buttons = r->buttons,
        .sleepwear = r->sleepwear,
        .bodiless = r->bodiless,
    };
    memcpy(task.cords, r->cords, sizeof task.cords);
    hw_safety_add(&task, &notes);
    ck_assert(!notes.refused);
    int expected = 0;
    while (expected < MOST_NOTES && r->said[expected].sizes != NULL) {
        expected++;
    }
    ck_assert_int_eq(notes.note_count, expected + (r->unknown != NULL));
    if (r->unknown != NULL) {
        const hw_note *last = &notes.notes[expected];
        ck_assert_int_eq(last->kind, HW_NOTE_REMARK);
        ck_assert_msg(strncmp(last->text, r->unknown, strlen(r->unknown)) == 0, "%s", last->text);
        ck_assert_ptr_nonnull(strstr(last->text, "Write `ages`"));
    }
    for (int i = 0; i < expected; i++) {
        const char *text = notes.notes[i].text;
        ck_assert_int_eq(notes.notes[i].kind, HW_NOTE_SAFETY);
        ck_assert_msg(strncmp(text, r->said[i].sizes, strlen(r->said[i].sizes)) == 0, "%s", text);
        ck_assert_msg(strstr(text, r->said[i].words) != NULL, "%s", text);
        ck_assert_msg(strstr(text, r->said[i].rests) != NULL, "%s", text);
        const char *end = "follow your local rules.";
        ck_assert_str_eq(text + strlen(text) - strlen(end), end);
        ck_assert_msg(strlen(text) <= SHORT, "not short: %s", text);
    }
    hw_check_close(&arena, &heap);
}

/* Floats: a shorter limit for babies, such as 3 stitches (common practice, no source); below 24
 * months is this project's own choice. CEN/TR 16792: the clothing of children, standards.iteh.ai.
 */
static const row floats[] = {
    { .count = 3,
        .ages = { 23, 24, -1 },
        .floats = 4,
        .said = { { "In A: floats of 4 stitches", "inside the cuffs", "CEN/TR 16792" } },
        .unknown = "In C: no age" },
    { .count = 2,
        .ages = { 0, 6 },
        .floats = 9,
        .said = { { "In all sizes: floats of 9", "sew the facing down", "(common practice;" } } },
    /* behind a band higher up lies no facing */
    { .count = 2,
        .ages = { 0, 6 },
        .floats = 9,
        .open = true,
        .said = { { "In all sizes: floats of 9",
            "sew each one down in its middle, or choose a motif "
            "with floats of at most 3",
            "(common practice;" } } },
    { .count = 2, .ages = { 0, 6 }, .floats = 3 },
    { .count = 2, .ages = { 24, 400 }, .floats = 30 },
    { .count = 2, .ages = { -1, -1 }, .floats = 30, .unknown = "In all sizes: no age" },
    { .count = 2, .ages = { -1, -1 }, .floats = 3 },
    { .count = 2, .ages = { -1, -1 }, .floats = 30, .bodiless = true },
    /* who is taller than 134 cm is no infant: own choice */
    { .count = 3,
        .ages = { -1, -1, -1 },
        .heights = { 134, 135, 0 },
        .floats = 4,
        .unknown = "In A, C: no age" },
};

/* Small parts, children under 3 (36 months), the buttons of clothing left out: 16 CFR 1501.3(d),
 * https://law.lawstack.com/cfr/16/1501.3/ . That nothing else is said where no age is known: own
 * choice. */
static const row buttons[] = {
    { .count = 3,
        .ages = { 12, 35, 36 },
        .buttons = true,
        .said = { { "In A, B: a button", "pull hard", "CEN/TR 16792" } } },
    { .count = 2, .ages = { 36, 480 }, .buttons = true },
    { .count = 2, .ages = { -1, 36 }, .buttons = true, .unknown = "In A: no age" },
    { .count = 2, .ages = { -1, -1 }, .heights = { 160, 170 }, .buttons = true },
    { .count = 2, .ages = { 12, 35 } },
};

/* EN 14682: none at hood, head or neck to age 7 or 134 cm, nor tied behind the neck; to 14 years no
 * drawstrings with free ends there; https://tukes.fi/en/products-and-services/general-consumer-
 * goods/textiles/cords-and-drawstrings-on-children-s-clothing . 16 CFR 1120: none at hood or neck
 * in sizes 2T to 12; at waist and bottom in 2T to 16 at most 3 in outside the channel; the
 * commission's page of questions. 7 years are 84 months, 14 years end with month 179, 16 with 203.
 */
static const row cords[] = {
    { .count = 4,
        .ages = { 24, 84, 85, -1 },
        .cords = { [HW_CORD_NECK] = { .cord = true } },
        .said = { { "In A, B: put no cord", "hood, head or neck", "EN 14682" } },
        .unknown = "In D: no age" },
    { .count = 5,
        .ages = { 24, 84, 85, 179, 180 },
        .cords = { [HW_CORD_NECK] = { .drawstring = true } },
        .said = { { "In A, B: put no cord", "7 years or 134 cm", "16 CFR 1120" },
            { "In C, D: leave no free ends", "up to 14 years", "EN 14682" } } },
    /* a height says it where no age is known, or where a child is small for its age */
    { .count = 4,
        .ages = { -1, -1, 100, 300 },
        .heights = { 134, 135, 130, 130 },
        .cords = { [HW_CORD_NECK] = { .drawstring = true } },
        .said = { { "In A, C: put no cord", "close it with buttons", "EN 14682" } },
        .unknown = "In A, B: no age" },
    { .count = 2,
        .ages = { -1, 180 },
        .cords = { [HW_CORD_NECK] = { true, true } },
        .unknown = "In A: no age" },
    { .count = 3,
        .ages = { 24, 203, 204 },
        .cords = { [HW_CORD_WAIST] = { .drawstring = true } },
        .said = { { "In A, B: let a drawstring", "by 3 in (7.5 cm) at most", "16 CFR 1120" } } },
    { .count = 3,
        .ages = { 24, 179, 180 },
        .cords = { [HW_CORD_WAIST] = { .cord = true } },
        .said = { { "In A, B: look up how long", "waist or lower edge", "EN 14682" } } },
    { .count = 3,
        .ages = { 24, 179, 180 },
        .cords = { [HW_CORD_ELSEWHERE] = { .cord = true } },
        .said = { { "In A, B: a cord or drawstring can catch", "look up", "EN 14682" } } },
    { .count = 3,
        .ages = { 180, 400, -1 },
        .cords = { [HW_CORD_ELSEWHERE] = { .cord = true, .drawstring = true } },
        .unknown = "In C: no age" },
    { .count = 2,
        .ages = { 204, -1 },
        .cords = { [HW_CORD_WAIST] = { true, true } },
        .unknown = "In B: no age" },
};

/* 16 CFR 1615 (sizes 0 to 6X) and 1616 (7 to 14): https://cpsc.gov/FAQ/Infant-Tightfitting-Garments
 * and http://edocket.access.gpo.gov/cfr_2007/janqtr/16cfr1616.2.htm */
static const row sleepwear[] = {
    { .count = 3,
        .ages = { 3, 179, 180 },
        .sleepwear = true,
        .said = { { "In A, B: look up how garments", "up to 9 months have rules of their own",
            "16 CFR 1615" } } },
    { .count = 2, .ages = { 180, -1 }, .sleepwear = true, .unknown = "In B: no age" },
    /* one of everything, in the order of the rules */
    { .count = 1,
        .ages = { 9 },
        .floats = 5,
        .buttons = true,
        .sleepwear = true,
        .cords = { { true, true }, { true, true }, { true, true } },
        .said = { { "In A: floats", "small fingers", "CEN/TR" },
            { "In A: a button", "pull", "16792" }, { "In A: put no cord", "neck", "1120" },
            { "In A: let a drawstring", "3 in", "1120" }, { "In A: a cord or", "catch", "14682" },
            { "In A: look up how garments", "burn", "1616" } } },
    { .count = 1, .ages = { 9 } },
};

START_TEST(about_floats)
{
    check_row(&floats[_i]);
}
END_TEST
START_TEST(about_buttons)
{
    check_row(&buttons[_i]);
}
END_TEST
START_TEST(about_cords)
{
    check_row(&cords[_i]);
}
END_TEST
START_TEST(about_sleepwear)
{
    check_row(&sleepwear[_i]);
}
END_TEST

/* Each band speaks for itself, and one with short floats does not. */
START_TEST(several_bands)
{
    static const hw_safety_band bands[] = { { "the hem", 3, false }, { "the cuffs", 5, false },
        { "the neckband", 4, false } };
    static const int ages[] = { 6, 60 };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_notes notes;
    ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
    const hw_safety_task task = {
        .names = names, .ages_months = ages, .count = 2, .bands = bands, .band_count = 3
    };
    hw_safety_add(&task, &notes);
    ck_assert_int_eq(notes.note_count, 2);
    ck_assert(strstr(notes.notes[0].text, "In A: floats of 5 stitches inside the cuffs") != NULL);
    ck_assert(strstr(notes.notes[1].text, "floats of 4 stitches inside the neckband") != NULL);
    hw_check_close(&arena, &heap);
}
END_TEST

/* Memory refused at each request in turn: remembered, and nothing is lost. */
START_TEST(no_memory)
{
    static const hw_safety_band band = { "the hem", 9, false };
    static const int ages[] = { 6, -1, 12 };
    const hw_safety_task task = { .names = names,
        .ages_months = ages,
        .count = 3,
        .bands = &band,
        .band_count = 1,
        .buttons = true,
        .sleepwear = true,
        .cords = { { true, true }, { true, true }, { true, true } } };
    bool refused = true;
    long n = 0;
    while (refused) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, 0, false);
        hw_notes notes;
        ck_assert_int_eq(hw_notes_init(&notes, &arena), HW_OK);
        heap.refuse_at = heap.grabs + ++n;
        hw_safety_add(&task, &notes);
        refused = heap.grabs >= heap.refuse_at;
        ck_assert_int_eq(notes.refused, refused);
        hw_check_close(&arena, &heap);
    }
    ck_assert_int_gt(n, 12); /* a text and its sizes for each of seven notes */
}
END_TEST

#define COUNT(rows) ((int)(sizeof(rows) / sizeof(rows)[0]))

int main(void)
{
    Suite *suite = suite_create("safety");
    TCase *each = tcase_create("each");
    tcase_add_loop_test(each, about_floats, 0, COUNT(floats));
    tcase_add_loop_test(each, about_buttons, 0, COUNT(buttons));
    tcase_add_loop_test(each, about_cords, 0, COUNT(cords));
    tcase_add_loop_test(each, about_sleepwear, 0, COUNT(sleepwear));
    tcase_add_test(each, several_bands);
    tcase_add_test(each, no_memory);
    suite_add_tcase(suite, each);
    return hw_check_run(suite);
}
