/* The table of bands higher up: where they lie, and how whole motifs sit in what is there.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/num.h"
#include "write/sheets.h"

/* What a row shows of a band on one piece in one size. */
typedef struct {
    const hw_upper *upper;
    const hw_place_on_bed *place;
    const hw_fit *fit;
    int hem_rows;
    int repeat;
} spot;

static spot spot_at(const hw_sheet *sheet, int band, int size, int piece)
{
    const hw_whole *whole = sheet->plan->whole;
    hw_plan_piece at = hw_plan_find(whole, piece);
    int cell = size * at.plan->project->garment.piece_count + at.piece;
    return (spot){ .upper = &at.plan->drafts[cell].uppers[band],
        .place = &at.plan->places[cell],
        .fit = &at.plan->grading.fits[cell],
        .hem_rows = at.plan->hem.total_rows,
        .repeat = whole->uppers[band].motif.repeat };
}

static int first_row(const spot *s)
{
    return s->hem_rows + 1 + s->upper->first_row;
}

static int last_row(const spot *s)
{
    return s->hem_rows + s->upper->first_row + s->upper->rows;
}

static int visible(const spot *s)
{
    return s->upper->sts;
}

static int motifs(const spot *s)
{
    return s->upper->motifs;
}

static int left_margin(const spot *s)
{
    return s->upper->margin[HW_LEFT];
}

static int right_margin(const spot *s)
{
    return s->upper->margin[HW_RIGHT];
}

static int underarm_rows(const spot *s)
{
    return s->upper->underarm_rows;
}

static int card_column(const spot *s)
{
    return s->upper->card_column + 1;
}

/* Where the piece hangs once it is moved. */
static int card_start(const spot *s)
{
    return hw_num_mod(s->upper->card_column + s->upper->aside, s->repeat) + 1;
}

static int aside(const spot *s)
{
    return s->upper->aside;
}

static const struct {
    const char *label;
    int (*of)(const spot *s);
    hw_cell_style style;
} rows[] = {
    { "first row", first_row, HW_STYLE_KEY },
    { "last row", last_row, HW_STYLE_PLAIN },
    { "visible stitches there", visible, HW_STYLE_PLAIN },
    { "whole motifs", motifs, HW_STYLE_PLAIN },
    { "plain stitches at the left edge", left_margin, HW_STYLE_PLAIN },
    { "plain stitches at the right edge", right_margin, HW_STYLE_PLAIN },
    { "card: first motif at column", card_start, HW_STYLE_PLAIN },
    { "moved right of the hem, needles", aside, HW_STYLE_PLAIN },
    { "card: column if it is not moved", card_column, HW_STYLE_PLAIN },
};

/* What stands only where some size of a piece has something to tell. */
static bool is_shown(const hw_sheet *sheet, int band, int piece, size_t row)
{
    bool card = false;
    bool moved = false;
    for (int i = 0; i < sheet->plan->finished.count; i++) {
        spot s = spot_at(sheet, band, i, piece);
        card = card || s.upper->card_column >= 0;
        moved = moved || s.upper->aside != 0;
    }
    bool of_moving = rows[row].of == aside || rows[row].of == card_column;
    return of_moving ? moved : card || rows[row].of != card_start;
}

static void count_line(const hw_sheet *sheet, int band, int piece, size_t row)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, rows[row].label);
    for (int i = 0; i < sheet->plan->finished.count; i++) {
        spot s = spot_at(sheet, band, i, piece);
        hw_grid_count(sheet->grid, 1 + i, rows[row].style, rows[row].of(&s));
    }
}

/* On the bed the right edge hangs at the left. */
static void needle_line(const hw_sheet *sheet, int band, int piece)
{
    if (!(sheet->plan->project->machine.pitch_cm > 0)) {
        return;
    }
    bool mirrored = sheet->plan->whole->project->garment.pieces[piece].mirror_of >= 0;
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "first whole motif starts on needle");
    for (int i = 0; i < sheet->plan->finished.count; i++) {
        spot s = spot_at(sheet, band, i, piece);
        int needle = hw_upper_needle(s.upper, s.place, s.fit, mirrored);
        hw_grid_text(sheet->grid, 1 + i, HW_STYLE_KEY, hw_bed_needle_name(needle, sheet->arena));
    }
}

static void piece_lines(const hw_sheet *sheet, int band, int piece)
{
    int sizes = sheet->plan->finished.count;
    double cm[HW_MAX_SIZES];
    hw_grid_line(
        sheet->grid, HW_STYLE_SECTION, sheet->plan->whole->project->garment.pieces[piece].name);
    for (size_t k = 0; k < sizeof rows / sizeof rows[0]; k++) {
        if (is_shown(sheet, band, piece, k)) {
            count_line(sheet, band, piece, k);
        }
    }
    for (int i = 0; i < sizes; i++) {
        cm[i] = spot_at(sheet, band, i, piece).upper->width_cm;
    }
    hw_sheet_length_rows(sheet, &(hw_sheet_lengths){ "width", cm, sizes, HW_STYLE_PLAIN });
    needle_line(sheet, band, piece);
    if (sheet->plan->whole->uppers[band].input->below_underarm_cm >= 0) {
        hw_grid_line(sheet->grid, HW_STYLE_LABEL, "plain rows from it to the underarm");
        for (int i = 0; i < sizes; i++) {
            spot s = spot_at(sheet, band, i, piece);
            hw_grid_count(sheet->grid, 1 + i, HW_STYLE_PLAIN, underarm_rows(&s));
        }
    }
}

void hw_sheet_bands(const hw_sheet *sheet)
{
    const hw_whole *whole = sheet->plan->whole;
    hw_sheet_by_size(sheet, "Bands", "bands higher up");
    for (int b = 0; whole != NULL && b < whole->upper_count; b++) {
        const hw_upper_band *upper = &whole->uppers[b];
        hw_grid_section(
            sheet->grid, hw_arena_format(sheet->arena, "%s: %s, repeat %d", upper->input->name,
                             upper->motif.chart.name, upper->motif.repeat));
        for (int p = 0; p < whole->project->garment.piece_count; p++) {
            if (upper->on[p]) {
                piece_lines(sheet, b, p);
            }
        }
    }
    if (whole == NULL || whole->upper_count == 0) {
        hw_grid_line(sheet->grid, HW_STYLE_PLAIN, "none");
    }
}
