/* Outlines in cm: edges from rules, where they lie, how long they are.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/outline.h"

static const char *const edges[] = {
    [HW_EDGE_LEFT] = "left",
    [HW_EDGE_RIGHT] = "right",
    [HW_EDGE_NECK_LEFT] = "neck left",
    [HW_EDGE_NECK_RIGHT] = "neck right",
    [HW_EDGE_TOP] = "top",
};
_Static_assert(sizeof edges / sizeof edges[0] == HW_EDGE_COUNT, "a name for each edge");

const char *hw_edge_name(hw_edge edge)
{
    return edges[edge];
}
