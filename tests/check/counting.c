/* A garment whose stitches are to be counted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "counting.h"

#include "support.h"

static const char *const letters[HW_MAX_PIECES] = { "a", "b", "c", "d", "e", "f", "g", "h", "i",
    "j", "k", "l" };

/* clang-format off */
static const char *const numbers[HW_MAX_SIZES] = {
    "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "14", "15",
    "16", "17", "18", "19", "20", "21", "22", "23", "24", "25", "26", "27", "28", "29", "30",
    "31", "32", "33", "34", "35", "36", "37", "38", "39", "40", "41", "42", "43", "44", "45",
    "46", "47", "48", "49", "50", "51", "52", "53", "54", "55", "56", "57", "58", "59", "60",
};
/* clang-format on */

void counting_open(counting *c, int sizes, int pieces)
{
    *c = (counting){ .garment = { .title = "", .piece_count = pieces } };
    for (int p = 0; p < pieces; p++) {
        c->pieces[p] = (hw_piece){ .name = letters[p], .mirror_of = -1, .edge_sts = { -1, -1 } };
    }
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        c->gauge[f].sts_per_10cm = 25;
        c->gauge[f].rows_per_10cm = 40;
    }
    c->garment.pieces = c->pieces;
    c->garment.seams = c->seams;
    c->task = (hw_counts_task){ .sizes = sizes,
        .pieces = pieces,
        .size_names = c->names,
        .garment = &c->garment,
        .targets = c->targets,
        .gauge = c->gauge,
        .repeat = 6,
        .gap = 1,
        .bed = 200,
        .choices = { .tolerance_cm = 1,
            .centre_weight = 0.5,
            .seam_weight = 0.5,
            .grade_weight = 0.5,
            .edge_sts = 1 } };
    for (int i = 0; i < sizes; i++) {
        c->names[i] = numbers[i];
        for (int p = 0; p < pieces; p++) {
            counting_want(c, i, p, 40);
        }
    }
}

void counting_sew(counting *c, hw_seam seam)
{
    c->seams[c->garment.seam_count++] = seam;
}

void counting_ring(counting *c, int first, int last)
{
    for (int p = first; p <= last; p++) {
        int next = p == last ? first : p + 1;
        counting_sew(c, (hw_seam){ .piece = { p, next }, .side = { HW_RIGHT, HW_LEFT } });
    }
}

void counting_want(counting *c, int size, int piece, double cm)
{
    c->targets[size * c->task.pieces + piece] = (hw_target){ .band_cm = cm, .main_cm = cm };
}

void counting_grow(counting *c, unsigned *state, double step_cm)
{
    for (int p = 0; p < c->task.pieces; p++) {
        double cm = 15 + hw_check_random(state, 1000) / 125.0;
        for (int i = 0; i < c->task.sizes; i++) {
            counting_want(c, i, p, cm);
            cm += step_cm + hw_check_random(state, 1000) * 3e-4 * step_cm;
        }
    }
}
