/* What the pictures share: a scale that fits, and the lines at the head.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/drawparts.h"

#include "core/num.h"

static const double title_mm = 9;
static const double words_mm = 14.5;
static const double mm_per_10cm = 100;
static const double slack = 1e-9; /* a scale that fits exactly still fits */

double hw_drawparts_scale(const double *scales, int count, double most)
{
    for (int i = 0; i < count; i++) {
        if (scales[i] <= most * (1 + slack)) {
            return scales[i];
        }
    }
    return 0;
}

double hw_drawparts_sts_mm(const hw_gauge *gauge)
{
    return mm_per_10cm / gauge->sts_per_10cm;
}

double hw_drawparts_row_mm(const hw_gauge *gauge)
{
    return mm_per_10cm / gauge->rows_per_10cm;
}

hw_look hw_drawparts_title_look(const char *title, double width_mm)
{
    static const hw_look looks[] = { HW_LOOK_TITLE, HW_LOOK_NAME, HW_LOOK_WORDS };
    for (size_t i = 0; i < sizeof looks / sizeof looks[0]; i++) {
        if (hw_look_width_mm(looks[i], title) <= width_mm) {
            return looks[i];
        }
    }
    return HW_LOOK_SMALL;
}

void hw_drawparts_head(hw_drawing *drawing, double width_mm, const char *words)
{
    hw_drawing_words(drawing,
        hw_drawparts_title_look(drawing->title, width_mm - 2 * HW_DRAWPARTS_EDGE_MM),
        (hw_point){ HW_DRAWPARTS_EDGE_MM, title_mm }, HW_ALIGN_START, drawing->title);
    hw_drawing_words(drawing, HW_LOOK_WORDS, (hw_point){ HW_DRAWPARTS_EDGE_MM, words_mm },
        HW_ALIGN_START, words);
}

static const char *sts_words(int count)
{
    return count == 1 ? "stitch" : "stitches";
}

const char *hw_drawparts_floats(const hw_motif *motif, hw_arena *arena)
{
    int background = motif->longest_float[HW_BACKGROUND];
    int contrast = motif->longest_float[HW_CONTRAST];
    return hw_arena_format(arena, "Longest floats: background %d %s, contrast %d %s", background,
        sts_words(background), contrast, sts_words(contrast));
}

const char *hw_drawparts_gauge(const hw_gauge *gauge, hw_arena *arena)
{
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    hw_num_show(&buf, gauge->sts_per_10cm, 1);
    hw_buf_text(&buf, " stitches and ");
    hw_num_show(&buf, gauge->rows_per_10cm, 1);
    hw_buf_text(&buf, " rows in 10 cm");
    const char *words = hw_buf_keep(&buf, arena);
    hw_buf_release(&buf);
    return words;
}
