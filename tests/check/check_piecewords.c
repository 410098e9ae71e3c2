/* Where the length of a slit goes on a drawing: beside it, parted by it, or below the piece.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "drawn.h"
#include "support.h"
#include "tank_edits.h"
#include "write/draw.h"

/* The tank's back, with a slit of 6 cm in its middle up to 40 cm from the fold; it is 30 cm wide
 * there. */
static void draw_back(tank *t, double scale, hw_show show, hw_drawing *out)
{
    tank_open(t, NULL, EDITS(SLIT));
    const hw_draw_piece piece = { .name = "back",
        .outline = &hw_plan_draft(t->plan.whole, 0, TANK_BACK)->outline };
    const hw_draw_pieces_task task = { .title = "Tank",
        .pieces = &piece,
        .count = 1,
        .room = { 190, 277 },
        .scale = scale,
        .show = show };
    hw_err err = { 0 };
    ck_assert_msg(hw_draw_pieces(&task, &t->arena, out, &err) == HW_OK, "%s", err.text);
    drawn_apart(out);
}

static const hw_drawn *words_of(const hw_drawing *d, const char *text)
{
    const hw_drawn *words = drawn_words(d, text);
    ck_assert_msg(words != NULL, "`%s` is not there", text);
    return words;
}

/* By hand: half the width is 37 mm at 1 : 4, 12 mm at 1 : 12 and 4 mm at 1 : 40. The nine letters
 * of `slit 6 cm` are 14 mm wide, where a letter is 0.6 of 2.6 mm [V1]; a word of four is 6 mm. */
START_TEST(slit)
{
    tank t;
    hw_drawing d;
    draw_back(&t, 4, HW_SHOW_CM, &d);
    double middle_mm = words_of(&d, "back")->at.x_mm;
    double name_mm = words_of(&d, "back")->at.y_mm;
    const hw_drawn *whole = words_of(&d, "slit 6 cm");
    ck_assert_double_ge(whole->at.x_mm - hw_look_width_mm(whole->look, whole->text) / 2, middle_mm);
    ck_assert_double_lt(whole->at.y_mm, name_mm);
    tank_close(&t);

    draw_back(&t, 12, HW_SHOW_CM, &d);
    middle_mm = words_of(&d, "back")->at.x_mm;
    ck_assert_ptr_null(drawn_words(&d, "slit 6 cm"));
    ck_assert_double_lt(words_of(&d, "slit")->at.x_mm, middle_mm);
    ck_assert_double_gt(words_of(&d, "6 cm")->at.x_mm, middle_mm);
    ck_assert_double_eq_tol(words_of(&d, "slit")->at.y_mm, words_of(&d, "6 cm")->at.y_mm, 1e-9);
    tank_close(&t);

    draw_back(&t, 40, HW_SHOW_CM, &d);
    ck_assert_double_gt(words_of(&d, "slit 6 cm")->at.y_mm, words_of(&d, "back")->at.y_mm);
    ck_assert_ptr_null(drawn_words(&d, "slit"));
    tank_close(&t);

    draw_back(&t, 12, HW_SHOW_BOTH, &d);
    ck_assert_double_gt(
        words_of(&d, "slit 6 cm (2 3/8 in)")->at.y_mm, words_of(&d, "back")->at.y_mm);
    tank_close(&t);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { slit };
    return hw_check_run(hw_check_suite("piecewords", tests, sizeof tests / sizeof tests[0]));
}
