/* One table for every status: sentence, exit code; and the names of marks and fabrics.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/status.h"

#include <assert.h>

static const struct {
    const char *sentence;
    int exit_code;
} statuses[] = {
    [HW_OK] = { "done", 0 },
    [HW_ERR_SYNTAX] = { "the text cannot be read", 2 },
    [HW_ERR_UNKNOWN] = { "a word that is not known here", 2 },
    [HW_ERR_REPEATED] = { "the same key stands here twice", 2 },
    [HW_ERR_MISSING] = { "something that is needed is not there", 2 },
    [HW_ERR_KIND] = { "something of another kind belongs here", 2 },
    [HW_ERR_RANGE] = { "a number outside what makes sense", 2 },
    [HW_ERR_LIMIT] = { "too much of something", 2 },
    [HW_ERR_USAGE] = { "the command cannot be read", 2 },
    [HW_ERR_NOFIT] = { "no stitch count meets the rules", 1 },
    [HW_ERR_IO] = { "a file could not be read or written", 3 },
    [HW_ERR_NOMEM] = { "the computer has no memory left for this", 4 },
    [HW_ERR_INTERNAL] = { "a fault in the program itself", 4 },
};
_Static_assert(sizeof statuses / sizeof statuses[0] == HW_STATUS_COUNT, "a row for each status");

static const char *const marks[] = {
    [HW_MARK_GIVEN] = "given",
    [HW_MARK_MEASURED] = "measured",
    [HW_MARK_READ] = "read in a source",
    [HW_MARK_DERIVED] = "derived",
    [HW_MARK_CHOICE] = "own choice",
    [HW_MARK_PRACTICE] = "common practice, no source",
    [HW_MARK_INTERPOLATED] = "interpolated",
    [HW_MARK_ASSUMED] = "assumed",
    [HW_MARK_MEMORY] = "from memory",
};
_Static_assert(sizeof marks / sizeof marks[0] == HW_MARK_COUNT, "a name for each mark");

static const char *const fabrics[] = {
    [HW_MAIN] = "main",
    [HW_BAND] = "band",
    [HW_FACING] = "facing",
};
_Static_assert(sizeof fabrics / sizeof fabrics[0] == HW_FABRIC_COUNT, "a name for each fabric");

const char *hw_status_sentence(hw_status status)
{
    assert(status < HW_STATUS_COUNT);
    return statuses[status].sentence;
}

int hw_status_exit(hw_status status)
{
    assert(status < HW_STATUS_COUNT);
    return statuses[status].exit_code;
}

const char *hw_mark_name(hw_mark mark)
{
    assert(mark < HW_MARK_COUNT);
    return marks[mark];
}

hw_mark hw_mark_weaker(hw_mark a, hw_mark b)
{
    return a > b ? a : b;
}

const char *hw_fabric_name(hw_fabric fabric)
{
    assert(fabric < HW_FABRIC_COUNT);
    return fabrics[fabric];
}

const char *hw_side_name(hw_side side)
{
    return side == HW_LEFT ? "left" : "right";
}
