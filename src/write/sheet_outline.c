/* The tables above the hem: what each piece measures, and how it is shaped row by row.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "write/sheets.h"
#include "write/stepwords.h"

static const hw_garment *whole_garment(const hw_sheet *sheet)
{
    return &sheet->plan->whole->project->garment;
}

static const hw_draft *draft_at(const hw_sheet *sheet, int size, int piece)
{
    return hw_plan_draft(sheet->plan->whole, size, piece);
}

static bool any_drawn(const hw_sheet *sheet)
{
    const hw_whole *whole = sheet->plan->whole;
    for (int p = 0; whole != NULL && p < whole->project->garment.piece_count; p++) {
        if (draft_at(sheet, 0, p)->drawn) {
            return true;
        }
    }
    return false;
}

static int rows_above(const hw_draft *draft, const hw_plan *plan)
{
    (void)plan;
    return hw_shape_most_rows(&draft->shape);
}

static int rows_in_all(const hw_draft *draft, const hw_plan *plan)
{
    return plan->hem.total_rows + hw_shape_most_rows(&draft->shape);
}

static int rounds_in_all(const hw_draft *draft, const hw_plan *plan)
{
    return plan->hem.total_rows + draft->round_rows;
}

static int hem_sts(const hw_draft *draft, const hw_plan *plan)
{
    (void)plan;
    return draft->shape.visible_sts;
}

static int last_sts(const hw_draft *draft, const hw_plan *plan)
{
    (void)plan;
    return hw_shape_top_sts(&draft->shape);
}

static const struct {
    const char *label;
    int (*of)(const hw_draft *draft, const hw_plan *plan);
    hw_cell_style style;
    bool of_tubes; /* of pieces that are knitted in rounds alone */
} count_rows[] = {
    { "rows above the hem", rows_above, HW_STYLE_PLAIN, false },
    { "rows in all, facing and fold too", rows_in_all, HW_STYLE_KEY, false },
    { "of these, in rounds", rounds_in_all, HW_STYLE_PLAIN, true },
    { "visible stitches above the hem", hem_sts, HW_STYLE_KEY, false },
    { "visible stitches of the last row", last_sts, HW_STYLE_PLAIN, false },
};

static void count_lines(const hw_sheet *sheet, int piece)
{
    hw_plan_piece at = hw_plan_find(sheet->plan->whole, piece);
    bool tube = hw_tubes_at(&at.plan->tubes, at.piece) != NULL;
    for (size_t k = 0; k < sizeof count_rows / sizeof count_rows[0]; k++) {
        if (count_rows[k].of_tubes && !tube) {
            continue;
        }
        hw_grid_line(sheet->grid, HW_STYLE_LABEL, count_rows[k].label);
        for (int i = 0; i < sheet->plan->finished.count; i++) {
            hw_grid_count(sheet->grid, 1 + i, count_rows[k].style,
                count_rows[k].of(draft_at(sheet, i, piece), at.plan));
        }
    }
}

/* The length of a stretch in one size; 0 where that size has none. */
static double length_of(const hw_draft *draft, const hw_draft_length *like)
{
    for (int k = 0; k < draft->length_count; k++) {
        const hw_draft_length *length = &draft->lengths[k];
        bool named = like->stretch != NULL && length->stretch != NULL;
        if (length->edge == like->edge && (!named || strcmp(length->stretch, like->stretch) == 0)) {
            return length->cm;
        }
    }
    return 0;
}

static void length_lines(const hw_sheet *sheet, int piece)
{
    const hw_draft *first = draft_at(sheet, 0, piece);
    for (int k = 0; k < first->length_count; k++) {
        const hw_draft_length *length = &first->lengths[k];
        double cm[HW_MAX_SIZES];
        for (int i = 0; i < sheet->plan->finished.count; i++) {
            cm[i] = length_of(draft_at(sheet, i, piece), length);
        }
        const char *label = length->edge == HW_EDGE_TOP
                                ? "width of the top"
                                : hw_arena_format(sheet->arena, "length of %s: %s",
                                      hw_edge_name(length->edge), length->stretch);
        hw_sheet_length_rows(
            sheet, &(hw_sheet_lengths){ label, cm, sheet->plan->finished.count, HW_STYLE_PLAIN });
    }
}

static void height_line(const hw_sheet *sheet, int piece)
{
    double cm[HW_MAX_SIZES];
    for (int i = 0; i < sheet->plan->finished.count; i++) {
        cm[i] = draft_at(sheet, i, piece)->outline.top_cm;
    }
    hw_sheet_length_rows(sheet, &(hw_sheet_lengths){ "height from the fold", cm,
                                    sheet->plan->finished.count, HW_STYLE_PLAIN });
}

static void piece_lines(const hw_sheet *sheet, int piece)
{
    hw_grid_section(sheet->grid, whole_garment(sheet)->pieces[piece].name);
    count_lines(sheet, piece);
    height_line(sheet, piece);
    length_lines(sheet, piece);
}

/* "front right side to back left side, within 0.5 cm"; NULL for refused memory. */
static char *join_words(const hw_sheet *sheet, const hw_joint_edges *join)
{
    hw_buf buf;
    hw_buf_init(&buf, &sheet->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "%s, within ", join->text);
    hw_length_show(&buf, join->within_cm, sheet->plan->project->show);
    char *text = hw_buf_keep(&buf, sheet->arena);
    hw_buf_release(&buf);
    return text;
}

static void join_lines(const hw_sheet *sheet)
{
    const hw_garment *garment = whole_garment(sheet);
    int sizes = sheet->plan->finished.count;
    if (garment->join_count > 0) {
        hw_grid_section(sheet->grid, "edges that are sewn together");
    }
    for (int k = 0; k < garment->join_count; k++) {
        double cm[2][HW_MAX_SIZES];
        bool closes = true;
        for (int i = 0; i < sizes; i++) {
            const hw_join_lengths *join = &sheet->plan->whole->joins[i * garment->join_count + k];
            cm[0][i] = join->cm[0];
            cm[1][i] = join->cm[1];
            closes = closes && join->closes;
        }
        hw_grid_line(sheet->grid, closes ? HW_STYLE_PARAGRAPH : HW_STYLE_WARNING,
            join_words(sheet, &garment->joins[k]));
        hw_sheet_length_rows(
            sheet, &(hw_sheet_lengths){ "  the first", cm[0], sizes, HW_STYLE_PLAIN });
        hw_sheet_length_rows(
            sheet, &(hw_sheet_lengths){ "  the other", cm[1], sizes, HW_STYLE_PLAIN });
    }
}

void hw_sheet_outline(const hw_sheet *sheet)
{
    hw_sheet_by_size(sheet, "Outline", "the pieces above their hems");
    if (!any_drawn(sheet)) {
        hw_grid_line(sheet->grid, HW_STYLE_PLAIN, "the garment file draws no outline");
        return;
    }
    for (int p = 0; p < whole_garment(sheet)->piece_count; p++) {
        if (draft_at(sheet, 0, p)->drawn) {
            piece_lines(sheet, p);
        }
    }
    join_lines(sheet);
}

enum { SIZE, ROW, WORDS, LEFT, AFTER, COLUMNS };

/* Steps of a size or a half, one line each; those that are told together share one. */
static void put_steps(
    const hw_sheet *sheet, const char *label, const hw_shape_steps *steps, int rows_before)
{
    for (int k = 0; k < steps->count; k++) {
        if (hw_step_lead(steps, k) != k) {
            continue;
        }
        hw_grid_row(sheet->grid);
        if (k == 0) {
            hw_grid_text(sheet->grid, SIZE, HW_STYLE_LABEL, label);
        }
        hw_grid_count(sheet->grid, ROW, HW_STYLE_KEY, rows_before + steps->list[k].row);
        hw_grid_text(
            sheet->grid, WORDS, HW_STYLE_NOTE, hw_step_words(steps, k, rows_before, sheet->arena));
        hw_step_count left = hw_step_left(steps, k);
        if (steps->list[k].kind != HW_STEP_END) {
            hw_grid_count(sheet->grid, LEFT, HW_STYLE_PLAIN, left.sts);
            hw_grid_count(sheet->grid, AFTER, HW_STYLE_PLAIN, rows_before + left.row);
        }
    }
}

/* The places of each half's own steps once the neck has parted a piece; those at both ends are
 * told with each half. */
static bool of_half(hw_shape_step *step, hw_side half)
{
    static const hw_step_place own[HW_SIDE_COUNT][2] = { { HW_AT_LEFT, HW_AT_NECK_LEFT },
        { HW_AT_RIGHT, HW_AT_NECK_RIGHT } };
    if (step->place == HW_AT_BOTH || step->place == HW_AT_NECK_BOTH) {
        step->place = own[half][step->place == HW_AT_NECK_BOTH];
    }
    return step->place == own[half][0] || step->place == own[half][1];
}

/* Steps that are told together. */
typedef enum { IN_ROUNDS, IN_ROWS, LEFT_HALF, RIGHT_HALF, GROUP_COUNT } group;

/* The end of a piece that is knitted in rounds to its top comes with the last of them. */
static group group_of(const hw_draft *draft, const hw_shape_step *step)
{
    bool to_top = draft->round_rows == draft->shape.rows;
    return step->row < draft->round_rows || to_top ? IN_ROUNDS : IN_ROWS;
}

static hw_shape_steps select_steps(const hw_sheet *sheet, const hw_draft *draft, group which)
{
    hw_shape_step *list = hw_arena_get(sheet->arena, (size_t)draft->steps.count, sizeof *list);
    hw_shape_steps chosen = { .list = list };
    if (list == NULL) {
        hw_grid_text(sheet->grid, 0, HW_STYLE_LABEL, NULL);
        return chosen;
    }
    for (int k = 0; k < draft->steps.count; k++) {
        hw_shape_step step = draft->steps.list[k];
        bool halves = draft->shape.neck_row < draft->shape.rows;
        bool parted = halves && step.row >= draft->shape.neck_row && step.kind != HW_STEP_DIVIDE;
        hw_side half = which == LEFT_HALF ? HW_LEFT : HW_RIGHT;
        bool of_whole = which == IN_ROUNDS || which == IN_ROWS;
        bool due =
            of_whole ? !parted && group_of(draft, &step) == which : parted && of_half(&step, half);
        if (due) {
            list[chosen.count++] = step;
        }
    }
    return chosen;
}

/* The size, and in what the steps are worked, where that is not rows from hem to top. */
static const char *group_label(const hw_sheet *sheet, int size, int piece, group which)
{
    static const char *const words[GROUP_COUNT] = { [IN_ROUNDS] = "in rounds",
        [IN_ROWS] = "in rows",
        [LEFT_HALF] = "left half",
        [RIGHT_HALF] = "right half" };
    hw_plan_piece at = hw_plan_find(sheet->plan->whole, piece);
    const char *name = sheet->plan->finished.names[size];
    bool plain = which == IN_ROWS && hw_tubes_at(&at.plan->tubes, at.piece) == NULL;
    return plain ? name : hw_arena_format(sheet->arena, "%s, %s", name, words[which]);
}

/* What is worked across the whole piece, then one half after the other. */
static void step_lines(const hw_sheet *sheet, int size, int piece)
{
    const hw_draft *draft = draft_at(sheet, size, piece);
    int before = hw_plan_find(sheet->plan->whole, piece).plan->hem.total_rows + 1;
    bool parted = draft->shape.neck_row < draft->shape.rows;
    for (int g = 0; g < (parted ? GROUP_COUNT : LEFT_HALF); g++) {
        hw_shape_steps steps = select_steps(sheet, draft, (group)g);
        if (steps.count > 0) {
            put_steps(sheet, group_label(sheet, size, piece, (group)g), &steps, before);
        }
    }
}

void hw_sheet_shaping(const hw_sheet *sheet)
{
    static const char *const heads[COLUMNS] = { "size", "row", "what to do", "visible stitches",
        "after row" };
    static const char *const lines[] = {
        "On a machine the purl side faces you: the left edge hangs at the right of the bed.",
        "Rows are counted from the first row of the facing. Left and right: as seen on the right "
        "side.",
        "Stitches are bound off or cast on at the start of a row; single ones change at either "
        "end.",
        "Rounds count as rows; where rows follow them, the first is a right-side row from the "
        "right.",
        "The visible stitches are those after the row beside them, in which the step is worked "
        "last: with all that the lines above and below it change up to then. On the needles are "
        "the "
        "edge stitches too.",
        "Once the neck has parted a piece, they are those of one half; where it parts it, those of "
        "the right one.",
    };
    hw_grid_begin(sheet->grid, sheet->arena, "Shaping", COLUMNS);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "shaping, row by row");
    hw_grid_row(sheet->grid);
    for (int c = 0; c < COLUMNS; c++) {
        hw_grid_text(sheet->grid, c, HW_STYLE_HEAD, heads[c]);
    }
    if (!any_drawn(sheet)) {
        hw_grid_line(sheet->grid, HW_STYLE_PLAIN, "the garment file draws no outline");
        return;
    }
    for (int p = 0; p < whole_garment(sheet)->piece_count; p++) {
        if (draft_at(sheet, 0, p)->drawn) {
            hw_grid_section(sheet->grid, whole_garment(sheet)->pieces[p].name);
        }
        for (int i = 0; draft_at(sheet, 0, p)->drawn && i < sheet->plan->finished.count; i++) {
            if (hw_sheet_shows(sheet->plan, i)) {
                step_lines(sheet, i, p);
            }
        }
    }
    int skipped = hw_sheet_on_bed(sheet) ? 0 : 1; /* the first is on the bed */
    hw_sheet_reading(sheet, lines + skipped, (int)(sizeof lines / sizeof lines[0]) - skipped);
}
