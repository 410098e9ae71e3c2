/* The JSON of every row.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/jsonrows.h"

#include "core/rowsteps.h"
#include "example_rows.h"
#include "fixture.h"

static rows_example e;

static void setup(void)
{
    example_rows(&e);
}

static const hw_rowplan *written;

static void write_rows(hw_json_writer *w)
{
    hw_json_rows(w, &(hw_row_block){ "back", "92", written }, 1);
}

/* The blocks of a plan, written and read back; the caller's to give back. */
static json_t *json_of(const hw_rowplan *plan)
{
    fixture_empty();
    hw_json_writer w = { .arena = &arena, .buf = &buf, .status = HW_OK };
    written = plan;
    hw_buf_text(&buf, "{");
    hw_json_list(&w, "rows", write_rows);
    hw_buf_text(&buf, "}");
    ck_assert_int_eq(w.status, HW_OK);
    json_t *top = json_loadb(buf.text, buf.len, JSON_REJECT_DUPLICATES, NULL);
    ck_assert_ptr_nonnull(top);
    json_t *array = json_incref(json_object_get(top, "rows"));
    json_decref(top);
    ck_assert_int_eq((int)json_array_size(array), 1);
    return array;
}

static const char *word(const json_t *object, const char *key)
{
    const char *text = json_string_value(json_object_get(object, key));
    return text == NULL ? "not a text" : text;
}

static int number(const json_t *object, const char *key)
{
    const json_t *value = json_object_get(object, key);
    return json_is_integer(value) ? (int)json_integer_value(value) : -999;
}

/* The example's rows by hand, as in check_rowplan.c. */
START_TEST(json_for_a_bed)
{
    example_rows_shape(&e);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    json_t *array = json_of(&plan);
    const json_t *block = json_array_get(array, 0);
    ck_assert_str_eq(word(block, "piece"), "back");
    ck_assert_str_eq(word(block, "work"), "pre-selecting");
    ck_assert_str_eq(word(block, "start_side"), "right");
    ck_assert_str_eq(word(block, "cast_on"), "open");
    ck_assert_str_eq(word(block, "closing"), "hung");
    ck_assert_int_eq(number(block, "hem_rows"), 20);
    const json_t *rows = json_object_get(block, "rows");
    ck_assert_int_eq((int)json_array_size(rows), 34);
    const json_t *row = json_array_get(rows, 12);
    ck_assert_int_eq(number(row, "number"), 13);
    ck_assert_str_eq(word(row, "kind"), "band");
    ck_assert_str_eq(word(row, "carriage_before"), "right");
    ck_assert_str_eq(word(row, "begins_at"), "left");
    ck_assert(json_is_null(json_object_get(row, "right_side")));
    ck_assert_str_eq(word(row, "setting"), "two colours, selecting");
    ck_assert_str_eq(word(row, "card"), "moving");
    ck_assert_int_eq(number(row, "card_row"), 2);
    ck_assert_int_eq(number(row, "card_row_in_view"), 9);
    ck_assert_int_eq(number(row, "band"), 0);
    ck_assert_int_eq(number(row, "chart_row"), 1);
    ck_assert_int_eq(number(row, "first_needle"), -11);
    ck_assert_int_eq(number(row, "last_needle"), 10);
    ck_assert_int_eq(number(row, "stitches"), 22);
    ck_assert(json_is_null(json_object_get(row, "round_stitches")));
    const json_t *feeders = json_object_get(row, "feeders");
    ck_assert_str_eq(json_string_value(json_array_get(feeders, 1)), "contrast");
    row = json_array_get(rows, 30);
    ck_assert_int_eq(number(row, "number"), 27);
    ck_assert_str_eq(word(row, "part"), "right half");
    ck_assert_int_eq(number(row, "stitches"), (22 - 3 - 3 - 4) / 2);
    ck_assert(json_is_null(json_object_get(row, "band")));
    const json_t *hands = json_object_get(row, "hand");
    ck_assert_str_eq(word(json_array_get(hands, 1), "what"), "counter");
    ck_assert_int_eq(number(json_array_get(hands, 1), "number"), 26);
    hands = json_object_get(json_array_get(rows, 33), "hand");
    ck_assert_str_eq(word(json_array_get(hands, 0), "when"), "after");
    const json_t *step = json_object_get(json_array_get(hands, 0), "step");
    ck_assert_str_eq(word(step, "kind"), "end");
    ck_assert_str_eq(word(step, "place"), "both");
    json_decref(array);
}
END_TEST

/* By hand: 10 figures of one column and the gaps between them are 19 of 20 visible stitches; one
 * more lies at the left, and an edge stitch at each edge. */
START_TEST(json_of_figures)
{
    e.fit.motifs = 10;
    e.fit.margin[HW_LEFT] = 1;
    hw_rowplan plan = example_rows_plan(&e, &arena);
    json_t *array = json_of(&plan);
    const json_t *rows = json_object_get(json_array_get(array, 0), "rows");
    ck_assert(json_is_null(json_object_get(json_array_get(rows, 11), "figures")));
    const json_t *figures = json_object_get(json_array_get(rows, 12), "figures");
    ck_assert_int_eq(number(figures, "motifs"), 10);
    ck_assert_int_eq(number(figures, "gap"), 1);
    ck_assert_int_eq(number(figures, "left_sts"), 2);
    ck_assert_int_eq(number(figures, "right_sts"), 1);
    json_decref(array);
}
END_TEST

START_TEST(json_for_the_hand)
{
    e.machine = (hw_machine){ .title = "Hand", .needles = HW_MAX_STS };
    hw_hem hem = e.hem;
    hem.fold = HW_FOLD_LOOSE;
    hem.fold_rows = 1;
    example_rows_hem(&e, &hem);
    hw_rowplan plan = example_rows_plan(&e, &arena);
    json_t *array = json_of(&plan);
    const json_t *rows = json_object_get(json_array_get(array, 0), "rows");
    const json_t *row = json_array_get(rows, 10);
    ck_assert_str_eq(word(row, "dial"), "loosest");
    ck_assert_str_eq(word(row, "begins_at"), "right");
    ck_assert(json_is_true(json_object_get(row, "right_side")));
    ck_assert(json_is_null(json_object_get(row, "carriage_before")));
    ck_assert(json_is_null(json_object_get(row, "first_needle")));
    json_decref(array);
}
END_TEST

START_TEST(json_for_rounds)
{
    hw_rowplan plan = example_rows_round(&e, &arena);
    json_t *array = json_of(&plan);
    const json_t *block = json_array_get(array, 0);
    ck_assert(json_is_true(json_object_get(block, "in_rounds")));
    ck_assert_int_eq(number(block, "round_rows"), 22);
    const json_t *names = json_object_get(block, "round_pieces");
    ck_assert_int_eq((int)json_array_size(names), 2);
    ck_assert_str_eq(json_string_value(json_array_get(names, 1)), "back");
    const json_t *rows = json_object_get(block, "rows");
    ck_assert_int_eq(number(json_array_get(rows, 21), "round_stitches"), 48);
    const json_t *row = json_array_get(rows, 22);
    ck_assert(json_is_null(json_object_get(row, "round_stitches")));
    const json_t *hand = json_array_get(json_object_get(row, "hand"), 0);
    ck_assert_str_eq(word(hand, "what"), "into rows");
    ck_assert_int_eq(number(hand, "stitches"), 22);
    json_decref(array);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { json_for_a_bed, json_of_figures, json_for_the_hand,
        json_for_rounds };
    return fixture_run("rows in JSON", setup, NULL, tests, sizeof tests / sizeof tests[0]);
}
