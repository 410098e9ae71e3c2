/* Edits of the tank's texts that several suites make.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_TANK_EDITS_H
#define HW_TESTS_TANK_EDITS_H

#include "tank.h"

/* clang-format off */
#define EDITS(...) (const loading_edit[]){ __VA_ARGS__, { NULL, NULL } }
#define BANDS(text) { "choices:", "bands:\n" text "choices:" }
#define TRIMS(text) { "choices:", "trims:\n" text "choices:" }
#define CHART(rows, gap) "    motif:\n      chart: |\n" rows "      gap: " gap "\n"
#define PAIRS CHART("        oo\n        oo\n        oo\n        oo\n", "2")
#define BAND(name, on, where) "  " name ":\n    on: " on "\n    " where "\n" PAIRS
#define SLIT                                                                                       \
    { "- {across: 10 cm, up: length - 10 cm}\n",                                                   \
        "- {stretch: slit, across: 0 cm, up: length - 16 cm}\n"                                    \
        "        - {stretch: slit, across: 0 cm, up: length - 10 cm}\n"                            \
        "        - {stretch: round, across: 10 cm, up: length - 10 cm}\n" }
/* clang-format on */

#endif
