/* The table of trims: stitches to pick up along each edge, the rows of the fold, buttonholes.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "core/trimming.h"
#include "write/sheets.h"

static int stitches(const hw_trimmed *t)
{
    return t->pickup.chosen.sts;
}

static int motifs(const hw_trimmed *t)
{
    return t->pickup.chosen.motifs;
}

static int first_margin(const hw_trimmed *t)
{
    return t->pickup.chosen.margin[HW_LEFT];
}

static int last_margin(const hw_trimmed *t)
{
    return t->pickup.chosen.margin[HW_RIGHT];
}

static int face_rows(const hw_trimmed *t)
{
    return t->hem.face_rows;
}

static int plain_before(const hw_trimmed *t)
{
    return t->hem.above_rows;
}

static int band_rows(const hw_trimmed *t)
{
    return t->hem.band_rows;
}

static int plain_after(const hw_trimmed *t)
{
    return t->hem.below_rows;
}

static int fold_rows(const hw_trimmed *t)
{
    return t->hem.fold_rows;
}

static int facing_rows(const hw_trimmed *t)
{
    return t->hem.facing_rows;
}

typedef struct {
    const char *label;
    int (*of)(const hw_trimmed *t);
    hw_cell_style style;
    bool motif; /* only of trims with one */
} count_row;

static const count_row pickup_rows[] = {
    { "stitches to pick up", stitches, HW_STYLE_KEY, false },
    { "whole motifs", motifs, HW_STYLE_PLAIN, true },
    { "plain stitches before the first motif", first_margin, HW_STYLE_PLAIN, true },
    { "plain stitches behind the last", last_margin, HW_STYLE_PLAIN, true },
};

/* In the order of knitting: from the edge to the fold, and back inside. */
static const count_row fold_lines[] = {
    { "rows of the face", face_rows, HW_STYLE_KEY, false },
    { "  plain, from the edge", plain_before, HW_STYLE_PLAIN, true },
    { "  band", band_rows, HW_STYLE_PLAIN, true },
    { "  plain, up to the fold", plain_after, HW_STYLE_PLAIN, true },
    { "rows of the fold", fold_rows, HW_STYLE_PLAIN, false },
    { "rows of the facing, inside", facing_rows, HW_STYLE_PLAIN, false },
};

static int sizes_of(const hw_sheet *sheet)
{
    return sheet->plan->finished.count;
}

static const hw_trimmed *at(const hw_sheet *sheet, int size, int trim)
{
    return hw_trimming_at(sheet->plan->whole, size, trim);
}

static void count_lines(const hw_sheet *sheet, int trim, const count_row *list, size_t count)
{
    bool motif = sheet->plan->whole->trims->kinds[trim].has_motif;
    for (size_t k = 0; k < count; k++) {
        if (list[k].motif && !motif) {
            continue;
        }
        hw_grid_line(sheet->grid, HW_STYLE_LABEL, list[k].label);
        for (int i = 0; i < sizes_of(sheet); i++) {
            hw_grid_count(sheet->grid, 1 + i, list[k].style, list[k].of(at(sheet, i, trim)));
        }
    }
}

static void length_lines(const hw_sheet *sheet, int trim)
{
    double edge_cm[HW_MAX_SIZES];
    double off_cm[HW_MAX_SIZES];
    double elastic_cm[HW_MAX_SIZES];
    for (int i = 0; i < sizes_of(sheet); i++) {
        edge_cm[i] = at(sheet, i, trim)->length_cm;
        off_cm[i] = at(sheet, i, trim)->pickup.chosen.off_cm;
        elastic_cm[i] = at(sheet, i, trim)->elastic_cm;
    }
    hw_sheet_length_rows(sheet,
        &(hw_sheet_lengths){ "length of its edge", edge_cm, sizes_of(sheet), HW_STYLE_PLAIN });
    hw_sheet_length_rows(sheet,
        &(hw_sheet_lengths){ "the trim is off by", off_cm, sizes_of(sheet), HW_STYLE_PLAIN });
    if (sheet->plan->whole->trims->kinds[trim].trim->casing) {
        hw_sheet_length_rows(sheet, &(hw_sheet_lengths){ "elastic, without its lap", elastic_cm,
                                        sizes_of(sheet), HW_STYLE_KEY });
    }
}

/* One end's needle in every size; none where the bed is too short. */
static void end_line(const hw_sheet *sheet, int trim, hw_side end)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL,
        end == HW_LEFT ? "leftmost needle of the bed" : "rightmost needle of the bed");
    for (int i = 0; i < sizes_of(sheet); i++) {
        const hw_trimmed *t = at(sheet, i, trim);
        int q = end == HW_LEFT ? t->place.first : t->place.last;
        if (t->rows.has_needles) {
            hw_grid_text(sheet->grid, 1 + i, HW_STYLE_PLAIN, hw_bed_needle_name(q, sheet->arena));
        }
    }
}

/* Where the card's first figure has to start for those needles. */
static void card_line(const hw_sheet *sheet, int trim)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "card: first motif in column");
    for (int i = 0; i < sizes_of(sheet); i++) {
        const hw_trimmed *t = at(sheet, i, trim);
        int start =
            t->too_long ? sheet->plan->whole->trims->kinds[trim].card_start : t->place.card_start;
        if (t->rows.has_needles || t->lengths.count > 0) {
            hw_grid_count(sheet->grid, 1 + i, HW_STYLE_PLAIN, start + 1);
        }
    }
}

static void needle_lines(const hw_sheet *sheet, int trim)
{
    if (sheet->plan->project->machine.pitch_cm > 0) {
        end_line(sheet, trim, HW_LEFT);
        end_line(sheet, trim, HW_RIGHT);
        if (sheet->plan->whole->trims->kinds[trim].card.possible) {
            card_line(sheet, trim);
        }
    }
}

/* One length of a trim that is longer than the bed: what is hung at a time, and from where on. */
static void length_lines_of(const hw_sheet *sheet, int trim, int number)
{
    hw_grid_line(sheet->grid, HW_STYLE_LABEL,
        hw_arena_format(sheet->arena, "length %d%s: stitches", number + 1,
            number == 0 ? ", at its right" : ""));
    for (int i = 0; i < sizes_of(sheet); i++) {
        const hw_lengths *lengths = &at(sheet, i, trim)->lengths;
        if (number < lengths->count) {
            hw_grid_count(sheet->grid, 1 + i, HW_STYLE_KEY, lengths->sts[number]);
        }
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "  its leftmost needle");
    for (int i = 0; i < sizes_of(sheet); i++) {
        const hw_lengths *lengths = &at(sheet, i, trim)->lengths;
        if (number < lengths->count) {
            hw_grid_text(sheet->grid, 1 + i, HW_STYLE_PLAIN,
                hw_bed_needle_name(lengths->first[number], sheet->arena));
        }
    }
}

static void part_lines(const hw_sheet *sheet, int trim)
{
    int most = 0;
    for (int i = 0; i < sizes_of(sheet); i++) {
        int count = at(sheet, i, trim)->lengths.count;
        most = count > most ? count : most;
    }
    for (int k = 0; k < most; k++) {
        length_lines_of(sheet, trim, k);
    }
}

static const hw_edge_run *edges_of(const hw_sheet *sheet, int trim)
{
    return &sheet->plan->whole->trims->kinds[trim].trim->along;
}

/* Along each edge: how many. */
static void share_lines(const hw_sheet *sheet, int trim)
{
    const hw_edge_run *along = edges_of(sheet, trim);
    for (int p = 0; p < along->count; p++) {
        const char *name = hw_trimming_edge(sheet->plan->whole, trim, p, sheet->arena);
        hw_grid_line(sheet->grid, HW_STYLE_LABEL,
            name == NULL ? NULL : hw_arena_format(sheet->arena, "  %s", name));
        for (int i = 0; i < sizes_of(sheet); i++) {
            const hw_pickup_share *share = hw_trimming_share(at(sheet, i, trim), p);
            hw_grid_count(sheet->grid, 1 + i, HW_STYLE_PLAIN, share != NULL ? share->sts : 0);
        }
    }
}

/* What is said of each edge in each size, and whether it was. */
typedef struct {
    const char *words[HW_MAX_PARTS][HW_MAX_SIZES]; /* "": nothing */
    bool told[HW_MAX_PARTS][HW_MAX_SIZES];
    int edges;
} spreads;

/* Which edges have the same words as one of them in a size, as bits. */
static unsigned alike(const spreads *all, int edge, int size)
{
    unsigned set = 0;
    for (int p = 0; p < all->edges; p++) {
        bool same = strcmp(all->words[p][size], all->words[edge][size]) == 0;
        set |= same ? 1U << p : 0;
    }
    return set;
}

/* "4 years to 6 years, front right armhole and back left armhole: 3 sts in every 4 rows" */
static void spread_line(const hw_sheet *sheet, int trim, spreads *all, int edge, int size)
{
    unsigned set = alike(all, edge, size);
    int last = size;
    while (last + 1 < sizes_of(sheet) &&
           strcmp(all->words[edge][last + 1], all->words[edge][size]) == 0 &&
           alike(all, edge, last + 1) == set) {
        last++;
    }
    const char *const *sizes = sheet->plan->finished.names;
    hw_buf buf;
    hw_buf_init(&buf, &sheet->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(
        &buf, "%s%s%s, ", sizes[size], last > size ? " to " : "", last > size ? sizes[last] : "");
    bool refused = false;
    for (int p = edge; p < all->edges; p++) {
        if ((set & 1U << p) == 0) {
            continue;
        }
        const char *name = hw_trimming_edge(sheet->plan->whole, trim, p, sheet->arena);
        refused = refused || name == NULL;
        hw_buf_format(&buf, "%s%s", p > edge ? " and " : "", refused ? "" : name);
        for (int i = size; i <= last; i++) {
            all->told[p][i] = true;
        }
    }
    hw_buf_format(&buf, ": %s", all->words[edge][size]);
    const char *text = hw_buf_keep(&buf, sheet->arena);
    hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH, refused ? NULL : text);
    hw_buf_release(&buf);
}

/* How stitches are spread along each edge; what edges or sizes share is told once. */
static void spread_lines(const hw_sheet *sheet, int trim)
{
    spreads all = { .edges = edges_of(sheet, trim)->count };
    for (int k = 0; k < all.edges * sizes_of(sheet); k++) {
        int p = k / sizes_of(sheet);
        int i = k % sizes_of(sheet);
        all.words[p][i] = hw_trimming_words(at(sheet, i, trim), p, sheet->arena);
        if (all.words[p][i] == NULL) {
            hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH, NULL);
            return;
        }
    }
    for (int i = 0; i < sizes_of(sheet); i++) {
        for (int p = 0; p < all.edges; p++) {
            if (!all.told[p][i] && all.words[p][i][0] != '\0') {
                spread_line(sheet, trim, &all, p, i);
            }
        }
    }
}

static void hole_lines(const hw_sheet *sheet, int trim)
{
    int count = at(sheet, 0, trim)->holes.count;
    if (count == 0) {
        return;
    }
    hw_grid_line(sheet->grid, HW_STYLE_SECTION, "buttonholes, through both layers");
    for (int h = 0; h < count; h++) {
        hw_grid_line(sheet->grid, HW_STYLE_LABEL,
            hw_arena_format(sheet->arena, "  hole %d: stitches below it", h + 1));
        for (int i = 0; i < sizes_of(sheet); i++) {
            hw_grid_count(
                sheet->grid, 1 + i, HW_STYLE_KEY, at(sheet, i, trim)->holes.holes[h].below_sts);
        }
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "  stitches of each");
    for (int i = 0; i < sizes_of(sheet); i++) {
        hw_grid_count(sheet->grid, 1 + i, HW_STYLE_PLAIN, at(sheet, i, trim)->holes.hole_sts);
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "  in the face, row from the edge");
    for (int i = 0; i < sizes_of(sheet); i++) {
        hw_grid_count(sheet->grid, 1 + i, HW_STYLE_PLAIN, at(sheet, i, trim)->hole_rows.face_row);
    }
    hw_grid_line(sheet->grid, HW_STYLE_LABEL, "  in the facing, row from the edge");
    for (int i = 0; i < sizes_of(sheet); i++) {
        hw_grid_count(sheet->grid, 1 + i, HW_STYLE_PLAIN, at(sheet, i, trim)->hole_rows.facing_row);
    }
}

/* From which end stitches are counted, in all that stands below. */
static void end_words(const hw_sheet *sheet, int trim)
{
    const hw_trim_kind *kind = &sheet->plan->whole->trims->kinds[trim];
    hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH,
        hw_arena_format(sheet->arena,
            "Stitches are counted from its %s end, as you see it with the fold up and the right "
            "side facing you%s.",
            hw_side_name(kind->first), kind->from_below ? "; that is its lower end" : ""));
}

static void trim_lines(const hw_sheet *sheet, int trim)
{
    const hw_trim_kind *kind = &sheet->plan->whole->trims->kinds[trim];
    hw_grid_section(sheet->grid, hw_arena_format(sheet->arena, "%s: %s", kind->trim->name,
                                     kind->has_motif ? kind->motif.chart.name : "plain"));
    end_words(sheet, trim);
    length_lines(sheet, trim);
    count_lines(sheet, trim, pickup_rows, sizeof pickup_rows / sizeof pickup_rows[0]);
    needle_lines(sheet, trim);
    part_lines(sheet, trim);
    share_lines(sheet, trim);
    count_lines(sheet, trim, fold_lines, sizeof fold_lines / sizeof fold_lines[0]);
    hole_lines(sheet, trim);
    spread_lines(sheet, trim);
}

void hw_sheet_trims(const hw_sheet *sheet)
{
    const hw_whole *whole = sheet->plan->whole;
    hw_sheet_by_size(sheet, "Trims", "trims that are picked up");
    for (int k = 0; whole != NULL && k < whole->trims->count; k++) {
        trim_lines(sheet, k);
    }
    if (whole == NULL || whole->trims->count == 0) {
        hw_grid_line(sheet->grid, HW_STYLE_PLAIN, "none");
    } else {
        hw_sheet_whose_side(sheet);
    }
}
