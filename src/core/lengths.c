/* Breaks of a long trim, one after the other from the end where counting begins.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lengths.h"

#include <assert.h>
#include <stdlib.h>

#include "core/num.h"

/* Whether two lengths may meet behind so many stitches. */
static bool may_break(const hw_lengths_task *task, int at)
{
    for (int h = 0; h < task->holes->count; h++) {
        int below = task->holes->holes[h].below_sts;
        if (at >= below && at <= below + task->holes->hole_sts) {
            return false;
        }
    }
    if (task->repeat == 0) {
        return true;
    }
    int figure = task->repeat - task->gap;
    int behind = at - task->first_sts - figure - task->gap / 2; /* the middle of the first gap */
    return behind >= 0 && behind % task->repeat == 0 && behind / task->repeat + 1 < task->motifs;
}

static bool at_seam(const hw_lengths_task *task, int at)
{
    bool found = false;
    for (int i = 0; i < task->seam_count; i++) {
        found = found || 2 * abs(task->seams[i] - at) <= task->repeat;
    }
    return found;
}

/* Stitches of a trim that the bed holds of a length with so many seams. */
static int room_of(const hw_lengths_task *task, int seams)
{
    return task->needles - seams * HW_LENGTHS_SEAM_STS;
}

/* Where a length ends that begins behind so many stitches, `left` lengths with it; 0: nowhere. */
static int next_break(const hw_lengths_task *task, int from, int left)
{
    int rest = room_of(task, 1) + (left - 2) * room_of(task, 2);
    int low = task->sts - rest > from ? task->sts - rest : from + 1;
    int high = from + room_of(task, from == 0 ? 1 : 2);
    int even = hw_num_nearest((double)(task->sts - from) / left);
    int found = 0;
    bool found_seam = false;
    for (int at = low; at <= high && at < task->sts; at++) {
        int off = abs(at - from - even);
        bool seam = 2 * off <= even && at_seam(task, at);
        bool nearer = found == 0 || off < abs(found - from - even);
        if (may_break(task, at) && (seam == found_seam ? nearer : seam)) {
            found = at;
            found_seam = seam;
        }
    }
    return found;
}

/* So many lengths; false where they cannot be. */
static bool try_count(const hw_lengths_task *task, int count, int *sts)
{
    int from = 0;
    for (int i = 0; i + 1 < count; i++) {
        int at = next_break(task, from, count - i);
        if (at == 0) {
            return false;
        }
        sts[i] = at - from + (i == 0 ? 1 : 2) * HW_LENGTHS_SEAM_STS;
        from = at;
    }
    sts[count - 1] = task->sts - from + HW_LENGTHS_SEAM_STS;
    return sts[count - 1] <= task->needles;
}

hw_status hw_lengths_find(const hw_lengths_task *task, hw_arena *arena, hw_lengths *out)
{
    assert(task->sts > task->needles && task->needles > 0 && task->sts <= HW_MAX_STS);
    int most = 2 * task->sts / task->needles + 2; /* more are shorter than half a bed */
    int *sts = hw_arena_get(arena, (size_t)most, sizeof *sts);
    int *first = hw_arena_get(arena, (size_t)most, sizeof *first);
    if (sts == NULL || first == NULL) {
        return HW_ERR_NOMEM;
    }
    *out = (hw_lengths){ .sts = sts, .first = first };
    for (int count = 2; count <= most && out->count == 0; count++) {
        out->count = try_count(task, count, sts) ? count : 0;
    }
    return HW_OK;
}
