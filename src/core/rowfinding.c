/* Sides that do not come out, with the nearest numbers of rows that do, and all that in words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <assert.h>

#include "core/buf.h"
#include "core/rowframe.h"

enum { LEAST_PLAIN = 2 }; /* plain rows below and above a band, as in hem.h */

/* One row fewer, unless that is below the least, or one more. */
static hw_row_remedy by_one(hw_remedy_kind kind, int rows, int least)
{
    return (hw_row_remedy){
        .kind = kind, .rows = rows, .fewer = rows - 1 >= least ? rows - 1 : -1, .more = rows + 1
    };
}

static void remedy(hw_row_finding *finding, hw_row_remedy what)
{
    assert(finding->remedy_count < HW_MOST_REMEDIES);
    finding->remedies[finding->remedy_count++] = what;
}

/* The last row above the hem at which it may begin: below the next band, or the last row. */
static int most_row(const hw_row_frame *f, int band)
{
    int end = band < f->task->band_count ? f->task->bands[band].row - hw_row_frame_lead(f, band + 1)
                                         : f->main_rows;
    return end - hw_row_frame_band_rows(f, band);
}

static hw_row_remedy move_band(const hw_row_frame *f, int band, int fewer, int more)
{
    bool down = fewer >= hw_row_frame_band_least(f, band);
    bool up = more <= most_row(f, band);
    return (hw_row_remedy){ .kind = HW_REMEDY_BAND_ROW,
        .rows = f->task->bands[band - 1].row + 1,
        .fewer = down ? fewer + 1 : -1,
        .more = up ? more + 1 : -1 };
}

static bool starts_away(const hw_row_frame *f, int band, hw_row_finding *out)
{
    const hw_hem *hem = f->task->hem;
    int number = hw_row_frame_band_first(f, band);
    hw_side side = hw_row_frame_before(f, number);
    if (side == f->home) {
        return false;
    }
    *out = (hw_row_finding){ HW_FINDING_BAND_START, .number = number, .band = band, .side = side };
    if (band > 0) {
        int row = f->task->bands[band - 1].row;
        remedy(out, move_band(f, band, row - 1, row + 1));
        return true;
    }
    if (f->task->trim != NULL) {
        remedy(out, by_one(HW_REMEDY_BEFORE, hem->above_rows, LEAST_PLAIN));
        return true;
    }
    remedy(out, by_one(HW_REMEDY_FACING, hem->facing_rows, 1));
    remedy(out, by_one(HW_REMEDY_BELOW, hem->below_rows, LEAST_PLAIN));
    if (hem->fold_rows == 1) {
        remedy(out, (hw_row_remedy){ HW_REMEDY_FOLD, .rows = 1, .fewer = 0, .more = -1 });
    }
    return true;
}

static bool ends_away(const hw_row_frame *f, int band, hw_row_finding *out)
{
    int rows = hw_row_frame_band_rows(f, band);
    if (rows % 2 == 0) {
        return false;
    }
    int number = hw_row_frame_band_first(f, band) + rows - 1;
    *out = (hw_row_finding){ HW_FINDING_BAND_END, .number = number, .band = band,
        .side = hw_row_frame_before(f, number + 1) };
    remedy(out, by_one(HW_REMEDY_BAND, rows, 1));
    return true;
}

/* The neck may part the piece below the row that first reads the band's card, or above the band. */
static bool is_parted(const hw_row_frame *f, int band, hw_row_finding *out)
{
    if (band == 0 || f->neck >= f->main_rows) {
        return false;
    }
    int row = f->task->bands[band - 1].row;
    int lead = hw_row_frame_lead(f, band);
    int rows = hw_row_frame_band_rows(f, band);
    if (f->neck <= row - lead || f->neck >= row + rows) {
        return false;
    }
    *out =
        (hw_row_finding){ HW_FINDING_BAND_PARTED, .number = f->task->hem->total_rows + f->neck + 1,
            .band = band, .side = hw_row_frame_before(f, f->task->hem->total_rows + f->neck + 1) };
    remedy(out, move_band(f, band, f->neck - rows, f->neck + lead));
    return true;
}

static bool shape_away(const hw_row_frame *f, hw_row_finding *out)
{
    const hw_rowplan_task *task = f->task;
    hw_row_above above = hw_rowplan_above(task);
    if (task->shape == NULL || above.edge == task->shape->first_start) {
        return false;
    }
    *out = (hw_row_finding){ HW_FINDING_SHAPE_START, .number = above.number, .band = -1,
        .side = hw_row_frame_before(f, above.number) };
    remedy(out, by_one(HW_REMEDY_ABOVE, task->hem->above_rows, LEAST_PLAIN));
    return true;
}

hw_status hw_row_findings(const hw_row_frame *frame, hw_arena *arena, hw_rowplan *out)
{
    int bands = frame->task->band_count + 1;
    size_t most = (size_t)bands * 3 + 1;
    hw_row_finding *list = hw_arena_get(arena, most, sizeof *list);
    if (list == NULL) {
        return HW_ERR_NOMEM;
    }
    int count = 0;
    bool sides = frame->work != HW_WORK_HAND && !frame->task->either_side;
    for (int b = 0; b < bands; b++) {
        bool knitted = hw_row_frame_band_rows(frame, b) > 0;
        count += sides && knitted && starts_away(frame, b, &list[count]) ? 1 : 0;
        count += sides && knitted && ends_away(frame, b, &list[count]) ? 1 : 0;
        count += is_parted(frame, b, &list[count]) ? 1 : 0;
    }
    count += shape_away(frame, &list[count]) ? 1 : 0;
    for (int i = 0; i < count; i++) {
        list[i].of_trim = frame->task->trim != NULL;
        list[i].name = list[i].band > 0 ? frame->task->bands[list[i].band - 1].name : NULL;
    }
    out->findings = list;
    out->finding_count = count;
    return HW_OK;
}

/* ---- words ---- */

/* "knit 11 or 13 facing rows in place of 12" */
static void say_remedy(hw_buf *buf, const hw_row_remedy *r)
{
    static const struct {
        const char *before, *behind; /* the numbers */
    } words[] = {
        [HW_REMEDY_NONE] = { "", "" },
        [HW_REMEDY_FACING] = { "knit ", " facing rows in place of" },
        [HW_REMEDY_FOLD] = { "turn the hem with a picot or with no fold row", "" },
        [HW_REMEDY_BELOW] = { "knit ", " plain rows below the band in place of" },
        [HW_REMEDY_BAND] = { "make the band ", " rows high in place of" },
        [HW_REMEDY_ABOVE] = { "knit ", " plain rows above the band in place of" },
        [HW_REMEDY_BEFORE] = { "knit ", " plain rows before the band in place of" },
        [HW_REMEDY_BAND_ROW] = { "begin the band in row ", " above the hem in place of" },
    };
    _Static_assert(sizeof words / sizeof words[0] == HW_REMEDY_COUNT, "words for each remedy");
    hw_buf_text(buf, words[r->kind].before);
    if (words[r->kind].behind[0] == '\0') {
        return;
    }
    if (r->fewer >= 0 && r->more >= 0) {
        hw_buf_format(buf, "%d or %d", r->fewer, r->more);
    } else {
        hw_buf_format(buf, "%d", r->fewer >= 0 ? r->fewer : r->more);
    }
    hw_buf_format(buf, "%s %d", words[r->kind].behind, r->rows);
}

static void say_fault(hw_buf *buf, const hw_row_finding *f)
{
    const char *side = hw_side_name(f->side);
    const char *own = f->of_trim ? "the trim's band" : "the hem's band";
    const char *which = f->band == 0 ? own : "the band ";
    const char *name = f->name != NULL ? f->name : "";
    switch (f->kind) {
    case HW_FINDING_BAND_START:
        hw_buf_format(buf,
            "Row %d: %s%s begins with the carriage at the %s, and the second yarn waits at the "
            "other side.",
            f->number, which, name, side);
        break;
    case HW_FINDING_BAND_END:
        hw_buf_format(buf,
            "Row %d: %s%s has an odd number of rows, so the second yarn comes off at the %s and "
            "not "
            "where it went in.",
            f->number, which, name, side);
        break;
    case HW_FINDING_SHAPE_START:
        hw_buf_format(buf,
            "Row %d: the shaping was made for rows that begin at the other side than this one, "
            "which begins at the %s, so groups of stitches would come at the wrong end.",
            f->number, side);
        break;
    case HW_FINDING_BAND_PARTED:
        hw_buf_format(buf,
            "Row %d: the neck parts the piece in the middle of %s%s, and the second half has to "
            "begin in the middle of the motif.",
            f->number, which, name);
        break;
    case HW_FINDING_COUNT:
        break;
    }
}

/* What a note says of it, behind the name of the band. */
static const char *const noted[] = {
    [HW_FINDING_BAND_START] = "the band begins with the carriage at one side, and the second yarn "
                              "waits at the other side.",
    [HW_FINDING_BAND_END] = "the band has an odd number of rows, so the second yarn comes off at "
                            "the other side and not where it went in.",
    [HW_FINDING_SHAPE_START] = "the shaping was made for rows that begin at the other side, so "
                               "groups of stitches would come at the wrong end.",
    [HW_FINDING_BAND_PARTED] = "the neck parts the piece in the middle of the band, and the second "
                               "half has to begin in the middle of the motif.",
};
_Static_assert(sizeof noted / sizeof noted[0] == HW_FINDING_COUNT, "words for each finding");

/* Behind the fault the ways out; the buffer is given back. */
static char *with_remedies(hw_buf *buf, const hw_row_finding *finding, hw_arena *arena)
{
    int said = 0;
    for (int i = 0; i < finding->remedy_count; i++) {
        const hw_row_remedy *r = &finding->remedies[i];
        if (r->fewer >= 0 || r->more >= 0) {
            hw_buf_text(buf, said == 0 ? " Way out: " : ", or ");
            say_remedy(buf, r);
            said++;
        }
    }
    hw_buf_text(buf, said > 0 ? "." : "");
    char *text = hw_buf_keep(buf, arena);
    hw_buf_release(buf);
    return text;
}

char *hw_row_finding_text(const hw_row_finding *finding, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    say_fault(&buf, finding);
    return with_remedies(&buf, finding, arena);
}

char *hw_row_finding_note(const hw_row_finding *finding, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_buf_text(&buf, noted[finding->kind]);
    return with_remedies(&buf, finding, arena);
}
