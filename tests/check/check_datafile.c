/* Machine and motif files, and what the readers take from a tree.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/datafile.h"

#include <stdlib.h>

#include "fixture.h"
#include "reading.h"

static hw_status read_machine(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    return hw_machine_read(text, len, room, out, err);
}

static hw_status read_motif(const char *text, size_t len, hw_arena *room, void *out, hw_err *err)
{
    return hw_motif_read(text, len, room, out, err);
}

static const hw_check_reader machines = {
    .good = "title: Invented machine\n" /* 1 */
            "pitch: 4.5 mm\n"           /* 2 */
            "needles: 200\n"            /* 3 */
            "card columns: 24\n"        /* 4 */
            "reader offset: 7\n"        /* 5 */
            "longest float: 5\n"        /* 6 */
            "carriage: direct\n"        /* 7 */
            "source: none\n",           /* 8 */
    .read = read_machine,
    .size = sizeof(hw_machine),
};

static const hw_check_reader motifs = {
    .good = "title: Invented\n" /* 1 */
            "chart: |\n"        /* 2 */
            "  .oo\n"           /* 3 */
            "  oo.\n"           /* 4 */
            "gap: 2\n",         /* 5 */
    .read = read_motif,
    .size = sizeof(hw_motif_input),
};

/* By hand. To 1e-12. */
START_TEST(a_machine)
{
    hw_machine machine;
    hw_check_taken(&machines, machines.good, &arena, &machine);
    ck_assert_str_eq(machine.title, "Invented machine");
    ck_assert_double_eq_tol(machine.pitch_cm, 0.45, 1e-12);
    ck_assert_int_eq(machine.needles, 200);
    ck_assert_int_eq(machine.card_columns, 24);
    ck_assert_int_eq(machine.reader_offset, 7);
    ck_assert_int_eq(machine.longest_float, 5);
    ck_assert_int_eq(machine.carriage, HW_CARRIAGE_DIRECT);
    ck_assert_str_eq(machine.source, "none");
}
END_TEST

/* Own choice: what stands for all that is left out. */
START_TEST(by_hand)
{
    hw_machine machine;
    hw_check_taken(&machines, "title: t\nlongest float: 7\ncarriage: none\n", &arena, &machine);
    ck_assert_double_eq_tol(machine.pitch_cm, 0, 1e-12);
    ck_assert_int_eq(machine.needles, HW_MAX_STS);
    ck_assert_int_eq(machine.card_columns, 0);
    ck_assert_int_eq(machine.reader_offset, -1);
    ck_assert_int_eq(machine.carriage, HW_CARRIAGE_NONE);
    ck_assert_str_eq(machine.source, "");
}
END_TEST

#define CARD_LINES(lines) "source: none\n", "source: none\n" lines

/* 60 and 36 rows: read [B5]; two joining rows: read [B6]. Lengths: in no source. */
START_TEST(a_blank_card)
{
    hw_machine machine;
    hw_check_taken(&machines, machines.good, &arena, &machine);
    ck_assert_int_eq(machine.blank.rows, 60);
    ck_assert_int_eq(machine.blank.least_loop_rows, 36);
    ck_assert_int_eq(machine.blank.joining_rows, 2);
    ck_assert_double_eq_tol(machine.blank.hole_pitch_cm, 0, 1e-12);
    ck_assert_double_eq_tol(machine.blank.row_pitch_cm, 0, 1e-12);
    ck_assert_double_eq_tol(machine.blank.width_cm, 0, 1e-12);
    ck_assert_double_eq_tol(machine.blank.hole_cm, 0, 1e-12);
    char *text = hw_check_edit(machines.good,
        CARD_LINES("card rows: 44\nleast loop rows: 30\njoining rows: 0\nhole pitch: 4 mm\n"
                   "row pitch: 5 mm\ncard width: 14 cm\nhole width: 3 mm\n"));
    hw_check_taken(&machines, text, &arena, &machine);
    free(text);
    ck_assert_int_eq(machine.blank.rows, 44);
    ck_assert_int_eq(machine.blank.least_loop_rows, 30);
    ck_assert_int_eq(machine.blank.joining_rows, 0);
    ck_assert_double_eq_tol(machine.blank.hole_pitch_cm, 0.4, 1e-12);
    ck_assert_double_eq_tol(machine.blank.row_pitch_cm, 0.5, 1e-12);
    ck_assert_double_eq_tol(machine.blank.width_cm, 14, 1e-12);
    ck_assert_double_eq_tol(machine.blank.hole_cm, 0.3, 1e-12);
}
END_TEST

/* By hand: 23 pitches of 6 mm are 13.8 cm from the first hole to the last. */
static const hw_check_fault machine_faults[] = {
    { CARD_LINES("card rows: 4\n"), HW_ERR_RANGE, 9, 12, "on a card of 4 rows",
        "`card rows` counts them too" },
    { CARD_LINES("joining rows: 20\ncard rows: 40\n"), HW_ERR_RANGE, 9, 15, "20 joining rows",
        "`card rows` counts them too" },
    { CARD_LINES("hole pitch: 5 mm\nrow pitch: 4 mm\nhole width: 4 mm\n"), HW_ERR_RANGE, 11, 13,
        "run into each other", "`hole width` is less" },
    { CARD_LINES("hole pitch: 6 mm\ncard width: 13.8 cm\n"), HW_ERR_RANGE, 10, 13,
        "24 columns of holes", "over ten holes" },
    { "needles: 200", "needles: 201", HW_ERR_RANGE, 3, 10, "`needles` counts both halves",
        "write an even number" },
    { "needles: 200", "needles: 0", HW_ERR_RANGE, 3, 10, "`needles`: `0`", "2 to 2000" },
    { "card columns: 24\n", "", HW_ERR_RANGE, 6, 11, "needs `card columns`", "write `none`" },
    { "carriage: direct\n", "", HW_ERR_MISSING, 1, 1, "`carriage` is missing in a machine file",
        "one row ahead" },
    { "carriage: direct", "carriage: fast", HW_ERR_UNKNOWN, 7, 11, "`fast`",
        "none, pre-selecting, direct" },
    { "longest float: 5\n", "", HW_ERR_MISSING, 1, 1, "`longest float`", "strand" },
    { "pitch: 4.5 mm", "pitch: 45 cm", HW_ERR_RANGE, 2, 8, "`45 cm`", "0.1 to 5 cm" },
    { "reader offset: 7", "reader ofset: 7", HW_ERR_UNKNOWN, 5, 1, "`reader ofset`",
        "did you mean `reader offset`?" },
};

START_TEST(every_machine_fault_is_told)
{
    hw_check_told(&machines, &machine_faults[_i]);
}
END_TEST

START_TEST(a_motif)
{
    static const unsigned char cells[] = { 0, 1, 1, 1, 1, 0 };
    hw_motif_input motif;
    hw_check_taken(&motifs, motifs.good, &arena, &motif);
    ck_assert_str_eq(motif.chart.name, "Invented");
    ck_assert_int_eq(motif.chart.width, 3);
    ck_assert_int_eq(motif.chart.rows, 2);
    ck_assert_mem_eq(motif.chart.cells, cells, sizeof cells);
    ck_assert(motif.has_gap);
    ck_assert_int_eq(motif.gap, 2);
    char *text = hw_check_edit(motifs.good, "gap: 2\n", "");
    hw_check_taken(&motifs, text, &arena, &motif);
    ck_assert(!motif.has_gap);
    ck_assert_int_eq(motif.gap, 0);
    free(text);
}
END_TEST

/* By hand: 3 columns and a gap of 197 are 200, the widest repeat. */
START_TEST(the_widest_gap)
{
    hw_motif_input motif;
    char *text = hw_check_edit(motifs.good, "gap: 2", "gap: 197");
    hw_check_taken(&motifs, text, &arena, &motif);
    ck_assert_int_eq(motif.gap, 197);
    free(text);
}
END_TEST

static const hw_check_fault motif_faults[] = {
    { "gap: 2", "gap: 198", HW_ERR_LIMIT, 5, 6, "201 columns together", "write a smaller gap" },
    { "gap: 2", "gap: -1", HW_ERR_SYNTAX, 5, 6, "`gap`: `-1`", "0 to 199" },
    { "  oo.\n", "  oo\n", HW_ERR_SYNTAX, 4, 5, "row 2 of the chart has 2", "equally long" },
    { "title: Invented\n", "", HW_ERR_MISSING, 1, 1, "`title` is missing in a motif file",
        "what the motif is called" },
    { "chart: |\n  .oo\n  oo.\n", "", HW_ERR_MISSING, 1, 1, "`chart` is missing", "project" },
    { "chart: |\n  .oo\n  oo.\n", "chart: |\n", HW_ERR_SYNTAX, 2, 8, "the chart is empty",
        "draw it" },
    { "gap: 2", "gaps: 2", HW_ERR_UNKNOWN, 5, 1, "`gaps` is not known in a motif file",
        "did you mean `gap`?" },
};

START_TEST(every_motif_fault_is_told)
{
    hw_check_told(&motifs, &motif_faults[_i]);
}
END_TEST

/* By hand. */
START_TEST(ease_from_a_word)
{
    ck_assert_double_eq_tol(hw_ease_of(NULL).cm, 0, 1e-12);
    ck_assert_double_eq_tol(hw_ease_of(NULL).percent, 0, 1e-12);
    hw_node word = { .number = 7 };
    ck_assert_double_eq_tol(hw_ease_of(&word).cm, 7, 1e-12);
    ck_assert_double_eq_tol(hw_ease_of(&word).percent, 0, 1e-12);
    word.percent = true;
    ck_assert_double_eq_tol(hw_ease_of(&word).cm, 0, 1e-12);
    ck_assert_double_eq_tol(hw_ease_of(&word).percent, 7, 1e-12);
    hw_node child = { .key = "a", .text = "b", .number = 3 };
    hw_node part = { .kind = HW_NODE_MAP, .first = &child, .count = 1 };
    ck_assert_str_eq(hw_node_text(&part, "a", "c"), "b");
    ck_assert_str_eq(hw_node_text(&part, "x", "c"), "c");
    ck_assert_double_eq_tol(hw_node_number(&part, "a", 4), 3, 1e-12);
    ck_assert_double_eq_tol(hw_node_number(&part, "x", 4), 4, 1e-12);
}
END_TEST

START_TEST(memory_refused)
{
    hw_check_refused(&machines, 15);
    hw_check_refused(&motifs, 8);
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof((table)[0])))

int main(void)
{
    Suite *suite = suite_create("datafile");
    TCase *tcase = fixture_case(suite, "datafile", NULL, NULL);
    tcase_add_test(tcase, a_machine);
    tcase_add_test(tcase, a_blank_card);
    tcase_add_test(tcase, by_hand);
    tcase_add_loop_test(tcase, every_machine_fault_is_told, 0, ROWS(machine_faults));
    tcase_add_test(tcase, a_motif);
    tcase_add_test(tcase, the_widest_gap);
    tcase_add_loop_test(tcase, every_motif_fault_is_told, 0, ROWS(motif_faults));
    tcase_add_test(tcase, ease_from_a_word);
    tcase_add_test(tcase, memory_refused);
    return hw_check_run(suite);
}
