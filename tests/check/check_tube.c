/* Tubes: rings of pieces found by hand, and how far up their edges are sewn.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/tube.h"

#include <string.h>

#include "support.h"

/* All garments here are made up; what is a ring is seen by drawing them on paper. */
enum { A, B, C, D };
static const hw_piece pieces[] = { { .name = "a", .mirror_of = -1, .edge_sts = { -1, -1 } },
    { .name = "b", .mirror_of = -1, .edge_sts = { 2, 3 } },
    { .name = "c", .mirror_of = -1, .edge_sts = { -1, -1 } },
    { .name = "d", .mirror_of = -1, .edge_sts = { 1, 1 } } };

static hw_garment garment_of(const hw_seam *seams, int count)
{
    return (hw_garment){ .pieces = pieces, .piece_count = 4, .seams = seams, .seam_count = count };
}

/* Seen from outside a goes on at its left edge with c, c with b, b with a again, whichever way
 * round the seams are written; d is sewn to itself. */
START_TEST(rings)
{
    static const hw_seam seams[] = { { { A, C }, { HW_LEFT, HW_RIGHT } },
        { { D, D }, { HW_RIGHT, HW_LEFT } }, { { B, C }, { HW_RIGHT, HW_LEFT } },
        { { A, B }, { HW_RIGHT, HW_LEFT } } };
    hw_garment garment = garment_of(seams, 4);
    hw_tubes tubes = hw_tubes_of(&garment);
    ck_assert_int_eq(tubes.count, 2);
    ck_assert_int_eq(tubes.list[0].count, 3);
    ck_assert_int_eq(tubes.list[0].pieces[0], A);
    ck_assert_int_eq(tubes.list[0].pieces[1], C);
    ck_assert_int_eq(tubes.list[0].pieces[2], B);
    ck_assert_int_eq(tubes.list[1].count, 1);
    ck_assert_int_eq(tubes.list[1].pieces[0], D);
    ck_assert_ptr_eq(hw_tubes_at(&tubes, B), &tubes.list[0]);
    ck_assert_ptr_eq(hw_tubes_at(&tubes, D), &tubes.list[1]);
}
END_TEST

/* A front opening: the way to the left from c goes over b to a, whose left edge is free. Two left
 * edges that meet, b's and d's, are worked in opposite directions, so no round goes over them. */
START_TEST(no_rings)
{
    static const hw_seam open[] = { { { A, B }, { HW_RIGHT, HW_LEFT } },
        { { B, C }, { HW_RIGHT, HW_LEFT } } };
    hw_garment garment = garment_of(open, 2);
    ck_assert_int_eq(hw_tubes_of(&garment).count, 0);
    hw_tube_gap gap = hw_tubes_gap(&garment, C);
    ck_assert_int_eq(gap.piece, A);
    ck_assert(!gap.sewn);
    static const hw_seam facing[] = { { { B, D }, { HW_RIGHT, HW_RIGHT } },
        { { B, D }, { HW_LEFT, HW_LEFT } } };
    garment = garment_of(facing, 2);
    ck_assert_int_eq(hw_tubes_of(&garment).count, 0);
    gap = hw_tubes_gap(&garment, B);
    ck_assert_int_eq(gap.piece, B);
    ck_assert(gap.sewn);
    hw_tubes none = { .count = 0 };
    ck_assert_ptr_null(hw_tubes_at(&none, A));
}
END_TEST

/* ---- Drawn edges ---- */

static const hw_corner side_corners[] = { { .stretch = "side" }, { .stretch = "armhole" } };
static const hw_outline_rule outline = { .sides = { [HW_RIGHT] = {
                                                        side_corners,
                                                        2,
                                                    } } };
static const hw_piece drawn[] = {
    { .name = "front", .mirror_of = -1, .edge_sts = { -1, 2 }, .outline = &outline },
    { .name = "back", .mirror_of = -1, .edge_sts = { -1, -1 }, .outline = &outline },
    { .name = "flap", .mirror_of = -1, .edge_sts = { -1, 1 }, .outline = &outline },
};

#define PART(piece_, edge_, stretch_)                                                              \
    {                                                                                              \
        .parts = { { .piece = (piece_), .edge = (edge_), .stretch = (stretch_) } }, .count = 1     \
    }

static hw_project project_of(const hw_joint_edges *joins, int count)
{
    static const hw_seam seams[] = { { { 0, 1 }, { HW_RIGHT, HW_LEFT } } };
    return (hw_project){ .in_rounds = true,
        .in_rounds_line = 7,
        .garment = { .pieces = drawn,
            .piece_count = 3,
            .seams = seams,
            .seam_count = 1,
            .joins = joins,
            .join_count = count } };
}

/* The second seam stands among the joins alone: it closes the ring, and becomes a seam. Edge
 * stitches go from front and back and stay on the flap. The project that was given stays. */
START_TEST(joins_close_a_ring)
{
    static const hw_joint_edges joins[] = {
        { { PART(1, HW_EDGE_RIGHT, "side"), PART(0, HW_EDGE_LEFT, "side") }, 0.5, "" },
    };
    hw_arena arena;
    hw_check_heap heap;
    hw_check_open(&arena, &heap, 0, false);
    hw_project project = project_of(joins, 1);
    const hw_project *made = NULL;
    ck_assert_int_eq(hw_tubes_prepare(&project, &arena, &made, NULL), HW_OK);
    ck_assert_ptr_ne(made, &project);
    ck_assert_int_eq(made->garment.seam_count, 2);
    ck_assert_int_eq(made->garment.seams[1].piece[0], 0);
    ck_assert_int_eq(made->garment.seams[1].side[0], HW_LEFT);
    ck_assert_int_eq(made->garment.seams[1].piece[1], 1);
    ck_assert_int_eq(made->garment.seams[1].side[1], HW_RIGHT);
    for (int p = 0; p < 2; p++) {
        ck_assert_int_eq(made->garment.pieces[p].edge_sts[HW_LEFT], 0);
        ck_assert_int_eq(made->garment.pieces[p].edge_sts[HW_RIGHT], 0);
    }
    ck_assert_int_eq(made->garment.pieces[2].edge_sts[HW_RIGHT], 1);
    ck_assert_int_eq(drawn[0].edge_sts[HW_RIGHT], 2);
    project.machine.pitch_cm = 0.45; /* a bed: nothing is worked in rounds */
    ck_assert_int_eq(hw_tubes_prepare(&project, &arena, &made, NULL), HW_OK);
    ck_assert_ptr_eq(made, &project);
    hw_check_close(&arena, &heap);
}
END_TEST

/* Joins higher up, or of an edge that a seam holds, close nothing. */
START_TEST(joins_that_close_none)
{
    static const hw_joint_edges joins[] = {
        { { PART(1, HW_EDGE_RIGHT, "armhole"), PART(0, HW_EDGE_LEFT, "side") }, 0.5, "" },
        { { PART(0, HW_EDGE_LEFT, NULL), PART(2, HW_EDGE_TOP, NULL) }, 0.5, "" },
        { { PART(0, HW_EDGE_LEFT, NULL), PART(0, HW_EDGE_RIGHT, NULL) }, 0.5, "" },
    };
    hw_project project = project_of(joins, 3);
    const hw_project *made = NULL;
    hw_err err = { 0 };
    ck_assert_int_eq(hw_tubes_prepare(&project, NULL, &made, &err), HW_ERR_RANGE);
    ck_assert_ptr_null(made);
    ck_assert_int_eq(err.line, 7);
    ck_assert_ptr_nonnull(strstr(err.text, "the left edge of `front` is sewn to nothing"));
}
END_TEST

START_TEST(no_memory)
{
    static const hw_joint_edges joins[] = {
        { { PART(1, HW_EDGE_RIGHT, NULL), PART(0, HW_EDGE_LEFT, NULL) }, 0.5, "" },
    };
    for (int n = 1; n <= 3; n++) {
        hw_arena arena;
        hw_check_heap heap;
        hw_check_open(&arena, &heap, n, false);
        hw_project project = project_of(joins, 1);
        const hw_project *made = NULL;
        ck_assert_int_eq(hw_tubes_prepare(&project, &arena, &made, NULL), HW_ERR_NOMEM);
        ck_assert_ptr_null(made);
        hw_check_close(&arena, &heap);
    }
}
END_TEST

/* ---- How far up ---- */

static const hw_outline_point points[] = { { 20, 0, HW_CURVE_STRAIGHT, "", false, 0 },
    { 20, 4, HW_CURVE_STRAIGHT, "slit", false, 0 }, { 20, 30, HW_CURVE_STRAIGHT, "side", false, 0 },
    { 20, 45, HW_CURVE_STRAIGHT, "armhole", false, 0 },
    { 5, 50, HW_CURVE_STRAIGHT, "shoulder", false, 0 } };

static double sewn(const hw_joint_edges *joins, int count, int first, int points_used)
{
    hw_garment garment = { .joins = joins, .join_count = count };
    hw_tube_edge at = { &garment, .piece = 0, .side = HW_RIGHT, .neighbour = 1 };
    hw_edge_line edge = { points + first, points_used };
    return hw_tube_sewn_cm(&at, &edge);
}

/* Read off the points above. */
START_TEST(sewn_heights)
{
    static const hw_joint_edges sides[] = {
        { { PART(1, HW_EDGE_LEFT, "side"), PART(0, HW_EDGE_RIGHT, "side") }, 0.5, "" },
        { { PART(0, HW_EDGE_RIGHT, "shoulder"), PART(1, HW_EDGE_LEFT, "shoulder") }, 0.5, "" },
        { { PART(0, HW_EDGE_RIGHT, "armhole"), PART(2, HW_EDGE_TOP, NULL) }, 0.5, "" },
    };
    static const hw_joint_edges whole[] = {
        { { PART(0, HW_EDGE_RIGHT, NULL), PART(1, HW_EDGE_LEFT, NULL) }, 0.5, "" },
    };
    ck_assert_double_eq_tol(sewn(sides, 3, 1, 4), 30, 1e-12); /* the armhole is another's */
    ck_assert_double_eq_tol(sewn(sides, 3, 0, 5), 0, 1e-12);  /* the slit comes first */
    ck_assert_double_eq_tol(sewn(whole, 1, 0, 5), 50, 1e-12);
    ck_assert_double_eq_tol(sewn(sides + 2, 1, 1, 4), 30, 1e-12); /* not told: up to the side */
    ck_assert_double_eq_tol(sewn(NULL, 0, 2, 3), 50, 1e-12);      /* no side: up to the top */
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { rings, no_rings, joins_close_a_ring, joins_that_close_none,
        no_memory, sewn_heights };
    return hw_check_run(hw_check_suite("tubes", tests, sizeof tests / sizeof tests[0]));
}
