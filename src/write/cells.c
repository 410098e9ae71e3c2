/* A plan as tables: the sheets put together, and what they share.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/cells.h"

#include <assert.h>
#include <string.h>

#include "core/trimming.h"
#include "write/sheets.h"

typedef void sheet_maker(const hw_sheet *sheet);

/* The sheets in their order; those that go to a knitter bear the notes on safety as well. */
static const struct {
    sheet_maker *make;
    bool to_knitter;
} sheets[] = {
    { hw_sheet_sizes, true },
    { hw_sheet_hem, true },
    { hw_sheet_bands, true },
    { hw_sheet_outline, true },
    { hw_sheet_shaping, true },
    { hw_sheet_trims, true },
    { hw_sheet_making, true },
    { hw_sheet_yarn, true },
    { hw_sheet_rowplans, true },
    { hw_sheet_chart, true },
    { hw_sheet_card, true },
    { hw_sheet_gauge, false },
    { hw_sheet_tolerance, false },
    { hw_sheet_alternatives, false },
    { hw_sheet_notes, false },
    { hw_sheet_basis, false },
    { hw_sheet_costs, false },
    { hw_sheet_measured, true },
};
enum { SHEETS = sizeof sheets / sizeof sheets[0] };

/* What is shown for each choice of units: one entry for each row or column of lengths. */
static const struct {
    int count;
    hw_unit units[2];
} lengths_shown[] = {
    [HW_SHOW_CM] = { 1, { HW_UNIT_CM } },
    [HW_SHOW_IN] = { 1, { HW_UNIT_IN } },
    [HW_SHOW_BOTH] = { 2, { HW_UNIT_CM, HW_UNIT_IN } },
};
_Static_assert(
    sizeof lengths_shown / sizeof lengths_shown[0] == HW_SHOW_COUNT, "an entry for each choice");

enum { CM_DECIMALS = 1 };

enum { VIEWS = HW_MAX_BANDS + HW_MAX_TRIMS };

/* A band as a plan of its own for the sheets that show a figure and its card: the garment's plan
 * with that band's in place. */
typedef struct {
    hw_plan plan;
    hw_place_on_bed place;
    const char *name; /* of the band */
} view;

static void set_view(const hw_plan *plan, view *v, const hw_motif *motif, const hw_card *card)
{
    v->plan = *plan;
    v->plan.motif = *motif;
    v->plan.card = *card;
    v->plan.places = &v->place;
}

/* Whether two views show the same figure, on the same card. */
static bool same_view(const hw_plan *a, const hw_plan *b)
{
    const hw_chart *one = &a->motif.chart;
    const hw_chart *other = &b->motif.chart;
    bool same = one->width == other->width && one->rows == other->rows &&
                a->motif.gap == b->motif.gap && a->card.possible == b->card.possible &&
                a->places[0].card_start == b->places[0].card_start;
    return same && memcmp(one->cells, other->cells, (size_t)one->width * (size_t)one->rows) == 0;
}

/* A view more, or one band more to one that shows the same; *count grows with it. */
static hw_status add_view(view *views, int *count, hw_arena *arena)
{
    view *added = &views[*count];
    for (int i = 0; i < *count; i++) {
        if (same_view(&views[i].plan, &added->plan)) {
            views[i].name = hw_arena_format(arena, "%s, %s", views[i].name, added->name);
            return views[i].name == NULL ? HW_ERR_NOMEM : HW_OK;
        }
    }
    (*count)++;
    return HW_OK;
}

/* The bands beside that of the garment's own hem: other hems, higher up, trims. */
static hw_status gather_views(const hw_plan *plan, hw_arena *arena, view *views, int *count)
{
    const hw_whole *whole = plan->whole;
    hw_status status = HW_OK;
    for (int k = 1; whole != NULL && status == HW_OK && k < whole->parts.count; k++) {
        view *v = &views[*count];
        v->name = whole->parts.list[k].name;
        v->plan = whole->plans[k];
        v->plan.notes = plan->notes;
        v->plan.note_count = plan->note_count;
        status = add_view(views, count, arena);
    }
    for (int u = 0; whole != NULL && status == HW_OK && u < whole->upper_count; u++) {
        view *v = &views[*count];
        v->name = whole->uppers[u].input->name;
        v->place.card_start = whole->uppers[u].card_start;
        set_view(plan, v, &whole->uppers[u].motif, &whole->uppers[u].card);
        status = add_view(views, count, arena);
    }
    for (int t = 0; whole != NULL && status == HW_OK && t < whole->trims->count; t++) {
        const hw_trim_kind *kind = &whole->trims->kinds[t];
        view *v = &views[*count];
        if (kind->has_motif) {
            *v = (view){ .name = kind->trim->name };
            v->place.card_start = kind->card_start;
            set_view(plan, v, &kind->motif, &kind->card);
            memcpy(v->plan.gauge, kind->gauge, sizeof kind->gauge);
            status = add_view(views, count, arena);
        }
    }
    return status;
}

typedef struct {
    hw_arena *arena;
    hw_table *tables;
    int count;
} filling;

/* The notes on safety, below what goes to a knitter. Behind an empty row, so that what was measured
 * is read back without them. */
static void put_safety(const hw_sheet *sheet)
{
    bool any = false;
    for (int i = 0; i < sheet->plan->note_count; i++) {
        if (sheet->plan->notes[i].kind != HW_NOTE_SAFETY) {
            continue;
        }
        if (!any) {
            hw_grid_section(sheet->grid, "safety");
        }
        any = true;
        hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH, sheet->plan->notes[i].text);
    }
}

static hw_status fill(filling *f, const hw_plan *plan, const char *about, int number)
{
    hw_grid grid;
    hw_sheet sheet = { .plan = plan, .about = about, .arena = f->arena, .grid = &grid };
    sheets[number].make(&sheet);
    if (sheets[number].to_knitter) {
        put_safety(&sheet);
    }
    hw_status status = hw_grid_finish(&grid, &f->tables[f->count]);
    f->count += status == HW_OK;
    return status;
}

/* Charts and cards of the other bands, each behind the first of its kind: "Chart 2". */
static hw_status fill_views(filling *f, const view *views, int count, int number)
{
    hw_status status = HW_OK;
    for (int i = 0; i < count && status == HW_OK; i++) {
        status = fill(f, &views[i].plan, views[i].name, number);
        hw_table *table = &f->tables[f->count - 1];
        table->name = hw_arena_format(f->arena, "%s %d", table->name, i + 2);
        status = status == HW_OK && table->name == NULL ? HW_ERR_NOMEM : status;
    }
    return status;
}

hw_status hw_cells_plan(const hw_plan *plan, hw_arena *arena, hw_tables *out)
{
    filling f = { .arena = arena,
        .tables = hw_arena_get(arena, SHEETS + 2 * VIEWS, sizeof *f.tables) };
    view *views = hw_arena_get(arena, VIEWS, sizeof *views);
    hw_status status = f.tables == NULL || views == NULL ? HW_ERR_NOMEM : HW_OK;
    int count = 0;
    if (status == HW_OK) {
        status = gather_views(plan, arena, views, &count);
    }
    for (int i = 0; i < SHEETS && status == HW_OK; i++) {
        status = fill(&f, plan, NULL, i);
        bool figure = sheets[i].make == hw_sheet_chart || sheets[i].make == hw_sheet_card;
        if (status == HW_OK && figure) {
            status = fill_views(&f, views, count, i);
        }
    }
    if (status == HW_OK) {
        *out = (hw_tables){ .tables = f.tables, .count = f.count };
    }
    return status;
}

const hw_cell *hw_cells_at(const hw_table *table, int row, int column)
{
    assert(row >= 0 && row < table->rows && column >= 0 && column < table->columns);
    return &table->cells[row * table->columns + column];
}

void hw_sheet_title(const hw_sheet *sheet, const char *what)
{
    const hw_project *project = sheet->plan->project;
    const char *name = project->title;
    if (name == NULL || name[0] == '\0') {
        name = project->garment.title;
    }
    bool named = sheet->about != NULL;
    hw_grid_line(sheet->grid, HW_STYLE_TITLE,
        hw_arena_format(
            sheet->arena, "%s%s%s: %s", name, named ? ", " : "", named ? sheet->about : "", what));
}

void hw_sheet_size_heads(const hw_sheet *sheet)
{
    const hw_sizes *sizes = &sheet->plan->finished;
    hw_grid_line(sheet->grid, HW_STYLE_HEAD, "size");
    for (int i = 0; i < sizes->count; i++) {
        hw_grid_text(sheet->grid, 1 + i, HW_STYLE_HEAD, sizes->names[i]);
    }
}

void hw_sheet_by_size(const hw_sheet *sheet, const char *name, const char *what)
{
    hw_grid_begin(sheet->grid, sheet->arena, name, 1 + sheet->plan->finished.count);
    sheet->grid->table.head_rows = 2;
    sheet->grid->table.head_columns = 1;
    hw_sheet_title(sheet, what);
    hw_sheet_size_heads(sheet);
}

void hw_sheet_reading(const hw_sheet *sheet, const char *const *texts, int count)
{
    hw_grid_section(sheet->grid, "how to read this");
    for (int i = 0; i < count; i++) {
        hw_grid_line(sheet->grid, HW_STYLE_PARAGRAPH, texts[i]);
    }
}

bool hw_sheet_on_bed(const hw_sheet *sheet)
{
    const hw_machine *machine = &sheet->plan->project->machine;
    return machine->pitch_cm > 0 && machine->needles > 0;
}

bool hw_sheet_shows(const hw_plan *plan, int size)
{
    int only = plan->project->only_size;
    return only == 0 || only == size + 1;
}

int hw_sheet_parts(const hw_sheet *sheet)
{
    return sheet->plan->whole != NULL ? sheet->plan->whole->parts.count : 1;
}

hw_sheet hw_sheet_part(const hw_sheet *sheet, int part)
{
    hw_sheet one = *sheet;
    one.plan = sheet->plan->whole != NULL ? &sheet->plan->whole->plans[part] : sheet->plan;
    return one;
}

char *hw_sheet_part_name(const hw_sheet *sheet, int part)
{
    const hw_part *named = &sheet->plan->whole->parts.list[part];
    const hw_garment *garment = &named->project->garment;
    hw_buf buf;
    hw_buf_init(&buf, &sheet->arena->mem, HW_BUF_LIMIT);
    hw_buf_format(&buf, "%s:", part == 0 ? "the hem" : named->name);
    for (int p = 0; p < garment->piece_count; p++) {
        hw_buf_format(&buf, "%s %s", p == 0 ? "" : ",", garment->pieces[p].name);
    }
    char *text = hw_buf_keep(&buf, sheet->arena);
    hw_buf_release(&buf);
    return text;
}

int hw_sheet_units(const hw_sheet *sheet)
{
    return lengths_shown[sheet->plan->project->show].count;
}

static hw_unit unit_of(const hw_sheet *sheet, int i)
{
    return lengths_shown[sheet->plan->project->show].units[i];
}

static void put_length(const hw_sheet *sheet, int column, hw_cell cell, int i)
{
    double length = cell.number / hw_unit_cm(unit_of(sheet, i));
    if (unit_of(sheet, i) == HW_UNIT_IN) {
        hw_grid_eighths(sheet->grid, column, cell.style, length);
    } else {
        hw_grid_number(sheet->grid, column, cell.style, length, CM_DECIMALS);
    }
}

/* NULL for a label that memory was refused for. */
static const char *with_unit(const hw_sheet *sheet, const char *label, int i)
{
    return label == NULL
               ? NULL
               : hw_arena_format(sheet->arena, "%s, %s", label, hw_unit_name(unit_of(sheet, i)));
}

void hw_sheet_length_rows(const hw_sheet *sheet, const hw_sheet_lengths *lengths)
{
    for (int i = 0; i < hw_sheet_units(sheet); i++) {
        hw_grid_line(sheet->grid, HW_STYLE_LABEL, with_unit(sheet, lengths->label, i));
        for (int k = 0; k < lengths->count; k++) {
            hw_cell cell = { .style = lengths->style, .number = lengths->cm[k] };
            put_length(sheet, 1 + k, cell, i);
        }
    }
}

void hw_sheet_length_heads(const hw_sheet *sheet, int column, const char *label)
{
    for (int i = 0; i < hw_sheet_units(sheet); i++) {
        hw_grid_text(sheet->grid, column + i, HW_STYLE_HEAD, with_unit(sheet, label, i));
    }
}

void hw_sheet_length(const hw_sheet *sheet, int column, hw_cell_style style, double cm)
{
    for (int i = 0; i < hw_sheet_units(sheet); i++) {
        put_length(sheet, column + i, (hw_cell){ .style = style, .number = cm }, i);
    }
}

char *hw_sheet_seam_name(const hw_sheet *sheet, const char *before, int seam)
{
    const hw_garment *garment = &sheet->plan->project->garment;
    const hw_seam *s = &garment->seams[seam];
    return hw_arena_format(sheet->arena, "%s %s %s to %s %s", before,
        garment->pieces[s->piece[0]].name, hw_side_name(s->side[0]),
        garment->pieces[s->piece[1]].name, hw_side_name(s->side[1]));
}

const char *hw_sheet_per(const hw_sheet *sheet)
{
    return hw_show_per(sheet->plan->project->show);
}

double hw_sheet_per_factor(const hw_sheet *sheet)
{
    return hw_show_per_factor(sheet->plan->project->show);
}
