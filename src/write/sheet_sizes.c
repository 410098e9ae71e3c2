/* The table of sizes: measurements, counts, widths, needles, seams.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/num.h"
#include "write/sheets.h"

/* One piece in one size, with all that its rows are made from. */
typedef struct {
    const hw_fit *fit;
    const hw_target *target;
    const hw_place_on_bed *place;
} spot;

static spot spot_at(const hw_plan *plan, int size, int piece)
{
    int at = size * plan->project->garment.piece_count + piece;
    return (spot){ hw_plan_fit(plan, size, piece), &plan->targets[at], &plan->places[at] };
}

static int sizes_of(const hw_sheet *sheet)
{
    return sheet->plan->finished.count;
}

static int greater(int a, int b)
{
    return a > b ? a : b;
}

static int cast_on(const spot *s)
{
    return s->fit->cast_on_sts;
}

static int visible(const spot *s)
{
    return s->fit->visible_sts;
}

static int motifs(const spot *s)
{
    return s->fit->motifs;
}

static int left_margin(const spot *s)
{
    return s->fit->margin[HW_LEFT];
}

static int right_margin(const spot *s)
{
    return s->fit->margin[HW_RIGHT];
}

static int left_edge(const spot *s)
{
    return s->fit->edge_sts[HW_LEFT];
}

static int right_edge(const spot *s)
{
    return s->fit->edge_sts[HW_RIGHT];
}

static int plain_sts(const spot *s)
{
    return s->fit->main_sts;
}

static int decreases(const spot *s)
{
    return greater(s->fit->visible_sts - s->fit->main_sts, 0);
}

static int increases(const spot *s)
{
    return greater(s->fit->main_sts - s->fit->visible_sts, 0);
}

static int card_start(const spot *s)
{
    return s->place->card_start + 1;
}

static int wanted_card_start(const spot *s)
{
    return s->place->wanted_card_start + 1;
}

typedef struct {
    const char *label;
    int (*value)(const spot *s);
    hw_cell_style style;
} count_row;

static const count_row count_rows[] = {
    { "cast on", cast_on, HW_STYLE_KEY },
    { "visible stitches", visible, HW_STYLE_PLAIN },
    { "whole motifs", motifs, HW_STYLE_PLAIN },
    { "plain stitches at the left edge", left_margin, HW_STYLE_PLAIN },
    { "plain stitches at the right edge", right_margin, HW_STYLE_PLAIN },
    { "edge stitches at the left, in the seam", left_edge, HW_STYLE_PLAIN },
    { "edge stitches at the right, in the seam", right_edge, HW_STYLE_PLAIN },
};

static const count_row plain_row = { "visible stitches after re-hanging", plain_sts, HW_STYLE_KEY };

/* Shown where any size has some. */
static const count_row change_rows[] = {
    { "decreases in the first plain row", decreases, HW_STYLE_PLAIN },
    { "increases in the first plain row", increases, HW_STYLE_PLAIN },
};

static const count_row card_rows[] = {
    { "card: first motif at column", card_start, HW_STYLE_PLAIN },
    { "card: column that would centre it", wanted_card_start, HW_STYLE_PLAIN },
};

/* As a pattern writes it, "60 (66, 72, 78)". */
static char *written(hw_arena *arena, const int *counts, int count)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "%d", counts[0]);
    for (int i = 1; i < count; i++) {
        hw_buf_format(&buf, "%s%d", i == 1 ? " (" : ", ", counts[i]);
    }
    hw_buf_text(&buf, count > 1 ? ")" : "");
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}

static void counts_line(
    const hw_sheet *sheet, const char *label, hw_cell_style style, const int *counts)
{
    int sizes = sizes_of(sheet);
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, label);
    for (int i = 0; i < sizes; i++) {
        hw_grid_count(sheet->grid, 1 + i, style, counts[i]);
    }
    hw_grid_text(sheet->grid, 1 + sizes, HW_STYLE_PLAIN, written(sheet->arena, counts, sizes));
}

static void count_line(const hw_sheet *sheet, int piece, const count_row *row)
{
    int counts[HW_MAX_SIZES];
    for (int i = 0; i < sizes_of(sheet); i++) {
        spot s = spot_at(sheet->plan, i, piece);
        counts[i] = row->value(&s);
    }
    counts_line(sheet, row->label, row->style, counts);
}

static bool any(const hw_sheet *sheet, int piece, const count_row *row)
{
    for (int i = 0; i < sizes_of(sheet); i++) {
        spot s = spot_at(sheet->plan, i, piece);
        if (row->value(&s) != 0) {
            return true;
        }
    }
    return false;
}

static double band_wanted(const spot *s)
{
    return s->target->band_cm;
}

static double band_knitted(const spot *s)
{
    return s->fit->band_cm;
}

static double band_off(const spot *s)
{
    return s->fit->band_off_cm;
}

static double main_wanted(const spot *s)
{
    return s->target->main_cm;
}

static double main_knitted(const spot *s)
{
    return s->fit->main_cm;
}

static double main_off(const spot *s)
{
    return s->fit->main_off_cm;
}

typedef struct {
    const char *label;
    double (*cm)(const spot *s);
} length_row;

static const length_row wanted_row = { "band width wanted", band_wanted };
static const length_row width_rows[] = {
    { "band width knitted", band_knitted },
    { "band width off by", band_off },
    { "plain width wanted", main_wanted },
    { "plain width knitted", main_knitted },
    { "plain width off by", main_off },
};

static void length_line(const hw_sheet *sheet, int piece, const length_row *row)
{
    double cm[HW_MAX_SIZES];
    for (int i = 0; i < sizes_of(sheet); i++) {
        spot s = spot_at(sheet->plan, i, piece);
        cm[i] = row->cm(&s);
    }
    hw_sheet_length_rows(
        sheet, &(hw_sheet_lengths){ row->label, cm, sizes_of(sheet), HW_STYLE_PLAIN });
}

static void mark_line(const hw_sheet *sheet, const hw_mark *marks, int step)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "  known by");
    for (int i = 0; i < sizes_of(sheet); i++) {
        hw_grid_text(sheet->grid, 1 + i, HW_STYLE_NOTE, hw_mark_name(marks[i * step]));
    }
}

static void head(const hw_sheet *sheet)
{
    const hw_sizes *finished = &sheet->plan->finished;
    hw_grid_begin(sheet->grid, sheet->arena, "Sizes", finished->count + 2);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, "sizes and stitches");
    hw_sheet_size_heads(sheet);
    hw_grid_text(sheet->grid, 1 + finished->count, HW_STYLE_HEAD, "in a pattern");
}

static void measurements(const hw_sheet *sheet)
{
    const hw_sizes *finished = &sheet->plan->finished;
    hw_grid_section(sheet->grid, "finished measurements");
    for (int m = 0; m < finished->measure_count; m++) {
        const hw_measure *measure = &finished->measures[m];
        hw_sheet_length_rows(sheet, &(hw_sheet_lengths){ measure->name, measure->values_cm,
                                        finished->count, HW_STYLE_PLAIN });
        mark_line(sheet, measure->marks, 1);
    }
}

/* A needle, or one that a piece's row names. */
typedef struct {
    const char *label;
    size_t member;
} needle_row;

static const needle_row needle_rows[] = {
    { "from needle", offsetof(hw_place_on_bed, first) },
    { "to needle", offsetof(hw_place_on_bed, last) },
    { "first whole motif starts on needle", offsetof(hw_place_on_bed, first_motif) },
    { "middle motif starts on needle", offsetof(hw_place_on_bed, centre_motif) },
};

static void needle_line(const hw_sheet *sheet, int piece, const needle_row *row)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, row->label);
    for (int i = 0; i < sizes_of(sheet); i++) {
        const char *place = (const char *)spot_at(sheet->plan, i, piece).place;
        int needle = *(const int *)(const void *)(place + row->member);
        hw_grid_text(sheet->grid, 1 + i, HW_STYLE_KEY, hw_bed_needle_name(needle, sheet->arena));
    }
}

/* "2.5 left", "1 right", "0"; NULL for refused memory. */
static char *off_middle(hw_arena *arena, int halves)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_num_show(&buf, (halves < 0 ? -halves : halves) / 2.0, 1);
    hw_buf_text(&buf, halves < 0 ? " left" : halves > 0 ? " right" : "");
    char *text = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return text;
}

static void bed_rows(const hw_sheet *sheet, int piece)
{
    const hw_machine *machine = &sheet->plan->project->machine;
    if (!hw_sheet_on_bed(sheet)) {
        return;
    }
    for (size_t i = 0; i < sizeof needle_rows / sizeof needle_rows[0]; i++) {
        needle_line(sheet, piece, &needle_rows[i]);
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "off the middle of the bed, needles");
    for (int i = 0; i < sizes_of(sheet); i++) {
        int halves = spot_at(sheet->plan, i, piece).place->off_centre_halves;
        hw_grid_text(sheet->grid, 1 + i, HW_STYLE_PLAIN, off_middle(sheet->arena, halves));
    }
    for (size_t i = 0; i < sizeof card_rows / sizeof card_rows[0]; i++) {
        if (machine->card_columns > 0 && sheet->plan->motif.fits_card) {
            count_line(sheet, piece, &card_rows[i]);
        }
    }
}

static void inside_line(const hw_sheet *sheet, int piece)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "inside the tolerance");
    for (int i = 0; i < sizes_of(sheet); i++) {
        bool inside = hw_plan_fit(sheet->plan, i, piece)->inside;
        hw_grid_text(
            sheet->grid, 1 + i, inside ? HW_STYLE_PLAIN : HW_STYLE_WARNING, inside ? "yes" : "no");
    }
}

/* "25 sts 3 times, 26 sts 2 times": how many stitches there are to each change. */
static char *spread_words(hw_arena *arena, const hw_spread *spread)
{
    const char *more = spread->times > 0 ? ", " : "";
    char *first = spread->times == 0
                      ? hw_arena_text(arena, "", 0)
                      : hw_arena_format(arena, "%d sts %d times", spread->every, spread->times);
    if (first == NULL || spread->more_times == 0) {
        return first;
    }
    return hw_arena_format(
        arena, "%s%s%d sts %d times", first, more, spread->every + 1, spread->more_times);
}

static void spread_line(const hw_sheet *sheet, int piece)
{
    int pieces = sheet->plan->project->garment.piece_count;
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "one change in every");
    for (int i = 0; i < sizes_of(sheet); i++) {
        const hw_spread *spread = &sheet->plan->changes[i * pieces + piece];
        hw_grid_text(sheet->grid, 1 + i, HW_STYLE_PLAIN,
            spread->count == 0 ? "none" : spread_words(sheet->arena, spread));
    }
}

static void rehang_rows(const hw_sheet *sheet, int piece)
{
    bool changed = false;
    for (size_t i = 0; i < sizeof change_rows / sizeof change_rows[0]; i++) {
        changed = changed || any(sheet, piece, &change_rows[i]);
    }
    if (changed) {
        count_line(sheet, piece, &plain_row);
    }
    for (size_t i = 0; i < sizeof change_rows / sizeof change_rows[0]; i++) {
        if (any(sheet, piece, &change_rows[i])) {
            count_line(sheet, piece, &change_rows[i]);
        }
    }
    if (changed) {
        spread_line(sheet, piece);
    }
}

static void piece_rows(const hw_sheet *sheet, int piece)
{
    const hw_garment *garment = &sheet->plan->project->garment;
    hw_grid_section(sheet->grid, garment->pieces[piece].name);
    for (size_t i = 0; i < sizeof count_rows / sizeof count_rows[0]; i++) {
        count_line(sheet, piece, &count_rows[i]);
    }
    length_line(sheet, piece, &wanted_row);
    mark_line(sheet, sheet->plan->target_marks + piece, garment->piece_count);
    for (size_t i = 0; i < sizeof width_rows / sizeof width_rows[0]; i++) {
        length_line(sheet, piece, &width_rows[i]);
    }
    rehang_rows(sheet, piece);
    inside_line(sheet, piece);
    bed_rows(sheet, piece);
}

static void seam_rows(const hw_sheet *sheet)
{
    int seams = sheet->plan->project->garment.seam_count;
    if (seams == 0) {
        return;
    }
    hw_grid_section(sheet->grid, "seams, in stitches: 0 where the band runs on unbroken");
    for (int k = 0; k < seams; k++) {
        int breaks[HW_MAX_SIZES];
        for (int i = 0; i < sizes_of(sheet); i++) {
            breaks[i] = sheet->plan->grading.seam_breaks[i * seams + k];
        }
        counts_line(sheet, hw_sheet_seam_name(sheet, "break at", k), HW_STYLE_PLAIN, breaks);
    }
}

static void reading_lines(const hw_sheet *sheet)
{
    static const char *const lines[] = {
        "On a machine the purl side faces you: the right edge hangs on the left of the bed.",
        "Cast on: all stitches. Visible: without the edge stitches that a seam takes up.",
        "Left and right: as seen on the right side, the hem down.",
        "Break: stitches more (minus: fewer) than the gap between motifs across a seam.",
    };
    int skipped = hw_sheet_on_bed(sheet) ? 0 : 1; /* the first is on the bed */
    hw_sheet_reading(sheet, lines + skipped, (int)(sizeof lines / sizeof lines[0]) - skipped);
}

void hw_sheet_sizes(const hw_sheet *sheet)
{
    head(sheet);
    measurements(sheet);
    for (int k = 0; k < hw_sheet_parts(sheet); k++) {
        hw_sheet part = hw_sheet_part(sheet, k);
        for (int p = 0; p < part.plan->project->garment.piece_count; p++) {
            piece_rows(&part, p);
        }
        seam_rows(&part);
    }
    reading_lines(sheet);
}
