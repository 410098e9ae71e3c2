/* A garment of round numbers: 2 stitches and 3 rows to the cm, 2 rows to the cm in bands.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tank.h"

/* Arithmetic by hand, and the numbers of the suites that use it.
 *
 * Hem: 10 rows of face, of which 4 are the band: 6 plain rows of 1/3 cm and 4 of 1/2 cm are 4 cm.
 * The 6 are 2 below and 4 above. 10 rows of facing and no fold row: the hem is 20 rows, and row 0
 * above it begins where row 1 did: with the carriage at the right of the bed, which is the piece's
 * left edge, because the purl side faces the knitter.
 *
 * Back and front: 40 cm are 80 stitches, 20 repeats of 4 with half a gap, 1 stitch, at each edge.
 * From 4 cm to the top at 50 cm are 138 rows.
 *
 *   back     side up to 30 cm: 26 cm, 78 rows. There 5 cm, 10 stitches, at each edge go.
 *            Neck from 40 cm: 36 cm, so in row 108; 20 cm, 40 stitches, go in the middle; 60 - 40
 *            leave 10 for each half, of which 30 rows are knitted.
 *            Area 40 x 30 + 30 x 20 - 20 x 10 = 1600 cm2.
 *            Edges: side 30, armhole 5 + 20 = 25, shoulder 5, neck 10 + 10 = 20 cm on each side.
 *   front    straight: side 33 cm, armhole 17 cm. Area 40 x 50 = 2000 cm2.
 *   sleeve   24 cm are 48 stitches, 12 repeats. From the hem at 4 cm to 36 cm, 96 rows, it widens
 * by 4 cm, 8 stitches, at each edge: one in every 12 rows; then 4 cm more, 12 rows. Area 24 x 4 +
 * (24 + 32) / 2 x 32 + 32 x 4 = 96 + 896 + 128 = 1120 cm2. Its side is 4 + root of (32^2 + 4^2) + 4
 * = 8 + 32.2490 = 40.2490 cm long. */
const char tank_garment[] =
    "title: Tank\n"
    "finished:\n"
    "  chest: {is: 80 cm}\n"
    "  length: {is: 50 cm}\n"
    "  armhole: {is: 20 cm}\n"
    "  wrist: {is: 24 cm}\n"
    "pieces:\n"
    "  back:\n"
    "    band width: 0.5 x finished chest\n"
    "    outline:\n"
    "      right:\n"
    "        - {across: 0.25 x chest, up: length - armhole}\n"
    "        - {stretch: armhole, across: 0.25 x chest - 5 cm,\n"
    "           up: length - armhole}\n"
    "        - {across: 0.25 x chest - 5 cm, up: length}\n"
    "        - {stretch: shoulder, across: 10 cm, up: length}\n"
    "      neck:\n"
    "        - {across: 10 cm, up: length - 10 cm}\n"
    "        - {across: 10 cm, up: length}\n"
    "  front:\n"
    "    band width: 0.5 x finished chest\n"
    "    outline:\n"
    "      right:\n"
    "        - {across: 0.25 x chest, up: 33 cm}\n"
    "        - {stretch: armhole, across: 0.25 x chest, up: length}\n"
    "  sleeve:\n"
    "    band width: finished wrist\n"
    "    outline:\n"
    "      right:\n"
    "        - {across: 0.5 x wrist + 4 cm, up: 36 cm}\n"
    "        - {across: 0.5 x wrist + 4 cm, up: 40 cm}\n"
    "seams: [front right to back left, front left to back right]\n"
    "joins:\n"
    "  - back left side to front right side\n"
    "  - back left armhole and back right armhole to sleeve top, within 18 cm\n"
    "  - back neck left to back neck right\n"
    "trims:\n"
    "  neckband: {along: back neck, round: yes}\n"
    "  armband:\n"
    "    along: [back right armhole, front left armhole]\n"
    "    depth: 0.1 x armhole\n"
    "  placket: {along: [front left]}\n";

const char tank_project[] = "title: Tank in round numbers\n"
                            "machine: standard\n"
                            "garment: tank\n"
                            "gauge:\n"
                            "  main: {stitches: 20, rows: 30}\n"
                            "  band: {stitches: 20, rows: 20}\n"
                            "  facing: {stitches: 20, rows: 30}\n"
                            "motif:\n"
                            "  chart: |\n"
                            "    oo\n"
                            "    oo\n"
                            "    oo\n"
                            "    oo\n"
                            "  gap: 2\n"
                            "hem: {face rows: 10, fold: none}\n"
                            "sizes:\n"
                            "  names: [one]\n"
                            "  finished: {chest: [80]}\n"
                            "choices: {edge stitches: 1}\n";

hw_status tank_try(tank *t, const loading_edit *project, const loading_edit *garment, hw_err *err)
{
    planned_begin(t);
    loading from = { .text = tank_project, .data = { [HW_DATA_GARMENT] = tank_garment } };
    for (int i = 0; project != NULL && i < LOADING_EDITS && project[i].old != NULL; i++) {
        from.edits[i] = project[i];
    }
    const char *text = tank_garment;
    for (int i = 0; garment != NULL && garment[i].old != NULL; i++) {
        text = loading_edited(text, &garment[i], &t->arena);
    }
    from.data[HW_DATA_GARMENT] = text;
    return planned_try(t, &from, err);
}

void tank_open(tank *t, const loading_edit *project, const loading_edit *garment)
{
    hw_err err = { 0 };
    hw_status status = tank_try(t, project, garment, &err);
    ck_assert_msg(status == HW_OK, "line %d: %s", err.line, err.text);
}

void tank_close(tank *t)
{
    planned_close(t);
}

int tank_notes(const hw_plan *plan, const char *words)
{
    return planned_notes(plan, words, NULL, NULL);
}
