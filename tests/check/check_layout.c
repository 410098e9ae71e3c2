/* A garment in parts by the band in its hems: which pieces, seams and measured rows go where.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/layout.h"

#include <string.h>

#include "support.h"

/* Six pieces by hand, no numbers in them: front and back sewn to each other, a sleeve and one that
 * mirrors it, a hood, and a pocket that mirrors the sleeve too. */
enum { FRONT, BACK, LEFT_SLEEVE, RIGHT_SLEEVE, HOOD, POCKET, PIECES };
static const hw_piece pieces[PIECES] = {
    { .name = "front", .mirror_of = -1 },
    { .name = "back", .mirror_of = -1 },
    { .name = "left sleeve", .mirror_of = -1 },
    { .name = "right sleeve", .mirror_of = LEFT_SLEEVE },
    { .name = "hood", .mirror_of = -1 },
    { .name = "pocket", .mirror_of = LEFT_SLEEVE },
};
static const hw_seam seams[] = {
    { { FRONT, BACK }, { HW_RIGHT, HW_LEFT } },
    { { LEFT_SLEEVE, LEFT_SLEEVE }, { HW_LEFT, HW_RIGHT } },
    { { BACK, FRONT }, { HW_RIGHT, HW_LEFT } },
};
static const hw_trim trims[] = { { .name = "neckband" } };

typedef struct {
    hw_arena arena;
    hw_check_heap heap;
    hw_project project;
    hw_parts parts;
    hw_err err;
} sorting;

static void open_sorting(sorting *s)
{
    memset(s, 0, sizeof *s);
    hw_check_open(&s->arena, &s->heap, 0, false);
    s->project.garment = (hw_garment){ .pieces = pieces,
        .piece_count = PIECES,
        .seams = seams,
        .seam_count = 3,
        .trims = trims,
        .trim_count = 1 };
    s->project.has_chart = true;
    s->parts.count = -1;
}

static hw_status sort(sorting *s)
{
    return hw_layout_parts(&s->project, &s->arena, &s->parts, &s->err);
}

static void close_sorting(sorting *s)
{
    hw_check_close(&s->arena, &s->heap);
}

/* Without bands the one part is the project itself. A band higher up makes no part. */
START_TEST(one_part)
{
    const char *on[] = { "front" };
    hw_band_input yoke = { .name = "yoke", .on = on, .on_count = 1, .above_fold_cm = 20 };
    for (int bands = 0; bands < 2; bands++) {
        sorting s;
        open_sorting(&s);
        s.project.bands = &yoke;
        s.project.band_count = bands;
        ck_assert_int_eq(sort(&s), HW_OK);
        ck_assert_int_eq(s.parts.count, 1);
        ck_assert_ptr_eq(s.parts.list[0].project, &s.project);
        ck_assert_str_eq(s.parts.list[0].name, "");
        for (int p = 0; p < PIECES; p++) {
            ck_assert_int_eq(s.parts.list[0].pieces[p], p);
        }
        close_sorting(&s);
    }
}
END_TEST

/* The pocket is named, and whatever mirrors the sleeve, or is mirrored, goes with it. */
START_TEST(mirrors_go_along)
{
    static const char *const names[] = { "left sleeve", "right sleeve", "pocket" };
    for (size_t i = 0; i < 3; i++) {
        const char *on[] = { names[i] };
        hw_band_input cuff = { .name = "cuff", .on = on, .on_count = 1 };
        bool found[HW_MAX_PIECES] = { false };
        hw_garment garment = { .pieces = pieces, .piece_count = PIECES };
        ck_assert_int_eq(hw_layout_on(&garment, &cuff, found, NULL), HW_OK);
        for (int p = 0; p < PIECES; p++) {
            bool sleeve = p == LEFT_SLEEVE || p == RIGHT_SLEEVE || p == POCKET;
            ck_assert_msg(found[p] == sleeve, "%s named, %s", names[i], pieces[p].name);
        }
    }
}
END_TEST

/* By hand: what is left of the list once the sleeves and the hood are taken out, and the other way
 * round; seams and mirrors follow the new numbers. */
START_TEST(three_parts)
{
    const char *sleeves[] = { "right sleeve" };
    const char *hood[] = { "hood" };
    hw_band_input bands[] = {
        { .name = "cuff",
            .on = sleeves,
            .on_count = 1,
            .has_hem = true,
            .hem = { .face_rows = 6 },
            .motif = { .own = { .gap = 3, .has_gap = true }, .card_start = 5 } },
        { .name = "brim",
            .on = hood,
            .on_count = 1,
            .has_hem = true,
            .motif = { .file = { .name = "tulip" }, .drawn = { .gap = 7 } } },
    };
    sorting s;
    open_sorting(&s);
    static const hw_knitted measured[] = { { .piece = BACK, .sts = 50 },
        { .piece = RIGHT_SLEEVE, .sts = 30 }, { .piece = HOOD, .sts = 40 } };
    s.project.knitted = (hw_knitted_list){ measured, 3 };
    s.project.bands = bands;
    s.project.band_count = 2;
    ck_assert_int_eq(sort(&s), HW_OK);
    ck_assert_int_eq(s.parts.count, 3);
    const hw_part *hem = &s.parts.list[0];
    const hw_part *cuff = &s.parts.list[1];
    const hw_part *brim = &s.parts.list[2];
    ck_assert_int_eq(hem->project->garment.piece_count, 2);
    ck_assert_int_eq(hem->pieces[0], FRONT);
    ck_assert_int_eq(hem->pieces[1], BACK);
    ck_assert_int_eq(hem->project->garment.seam_count, 2);
    ck_assert_int_eq(hem->project->garment.seams[1].piece[0], 1);
    ck_assert_int_eq(hem->project->garment.seams[1].piece[1], 0);
    ck_assert_int_eq(hem->project->garment.seams[1].side[0], HW_RIGHT);
    ck_assert_int_eq(hem->project->knitted.count, 1);
    ck_assert_int_eq(hem->project->knitted.list[0].piece, 1);
    ck_assert_int_eq(hem->project->garment.trim_count, 0);
    ck_assert_str_eq(cuff->name, "cuff");
    ck_assert_int_eq(cuff->project->garment.piece_count, 3);
    ck_assert_int_eq(cuff->pieces[2], POCKET);
    ck_assert_int_eq(cuff->project->garment.pieces[0].mirror_of, -1);
    ck_assert_int_eq(cuff->project->garment.pieces[1].mirror_of, 0);
    ck_assert_int_eq(cuff->project->garment.pieces[2].mirror_of, 0);
    ck_assert_int_eq(cuff->project->garment.seam_count, 1);
    ck_assert_int_eq(cuff->project->garment.seams[0].piece[0], 0);
    ck_assert_int_eq(cuff->project->garment.seams[0].piece[1], 0);
    ck_assert_int_eq(cuff->project->knitted.list[0].piece, 1);
    ck_assert_int_eq(cuff->project->hem.face_rows, 6);
    ck_assert_int_eq(cuff->project->motif.gap, 3);
    ck_assert_int_eq(cuff->project->card_start, 5);
    ck_assert(cuff->project->has_chart);
    ck_assert_int_eq(brim->project->garment.piece_count, 1);
    ck_assert(!brim->project->has_chart);
    ck_assert_int_eq(brim->project->drawn.gap, 7);
    ck_assert_str_eq(brim->project->references[HW_DATA_MOTIF].name, "tulip");
    ck_assert_double_eq_tol(brim->project->knitted.list[0].sts, 40, 1e-12);
    close_sorting(&s);
}
END_TEST

/* What is refused, with the line of the project; the parts stay as they were. */
START_TEST(refused)
{
    const char *sleeve[] = { "left sleeve" };
    const char *pocket[] = { "pocket" };
    const char *body[] = { "front", "back", "left sleeve", "hood" };
    const char *nobody[] = { "sleeve" };
    hw_band_input bands[] = {
        { .name = "one", .on = sleeve, .on_count = 1, .has_hem = true, .line = 11 },
        { .name = "two", .on = pocket, .on_count = 1, .has_hem = true, .line = 12 },
        { .name = "all", .on = body, .on_count = 4, .has_hem = true, .line = 13 },
        { .name = "lost", .on = nobody, .on_count = 1, .line = 14 },
        { .name = "half", .on = body, .on_count = 1, .has_hem = true, .line = 15 },
    };
    static const struct {
        int first, count;
        hw_status status;
        int line;
        const char *words;
    } rows[] = {
        { 0, 2, HW_ERR_REPEATED, 12, "`left sleeve` has the hem of two bands, `one` and `two`" },
        { 2, 1, HW_ERR_MISSING, 0, "every piece has its hem from `bands`" },
        { 3, 1, HW_ERR_UNKNOWN, 14, "no piece called `sleeve`; its first is `front`" },
        { 4, 1, HW_ERR_RANGE, 0, "`front` and `back` are sewn together at the hem" },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        sorting s;
        open_sorting(&s);
        s.project.bands = bands + rows[i].first;
        s.project.band_count = rows[i].count;
        ck_assert_int_eq(sort(&s), rows[i].status);
        ck_assert_msg(hw_check_says(&s.err, rows[i].status, rows[i].words), "%s", s.err.text);
        ck_assert_int_eq(s.err.line, rows[i].line);
        ck_assert_int_eq(s.parts.count, -1);
        close_sorting(&s);
    }
}
END_TEST

START_TEST(trims_by_name)
{
    hw_trim_input inputs[] = { { .name = "neckband", .line = 3 }, { .name = "cuffs", .line = 4 } };
    sorting s;
    open_sorting(&s);
    s.project.trims = inputs;
    s.project.trim_count = 1;
    ck_assert_int_eq(sort(&s), HW_OK);
    ck_assert_ptr_eq(hw_layout_trim(&s.project, "neckband"), &inputs[0]);
    ck_assert_ptr_null(hw_layout_trim(&s.project, "cuffs"));
    s.project.trim_count = 2;
    ck_assert_int_eq(sort(&s), HW_ERR_UNKNOWN);
    ck_assert(hw_check_says(&s.err, HW_ERR_UNKNOWN, "no trim called `cuffs`; its first is `neckb"));
    ck_assert_int_eq(s.err.line, 4);
    s.err = (hw_err){ 0 };
    s.project.garment.trim_count = 0;
    ck_assert_int_eq(sort(&s), HW_ERR_UNKNOWN);
    ck_assert(hw_check_says(&s.err, HW_ERR_UNKNOWN, "has no trims, so `neckband` means nothing"));
    close_sorting(&s);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { one_part, mirrors_go_along, three_parts, refused,
        trims_by_name };
    return hw_check_run(hw_check_suite("layout", tests, sizeof tests / sizeof tests[0]));
}
