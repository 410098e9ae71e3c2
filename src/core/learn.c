/* Measured pieces as swatches, and as counts that are not to change any more.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/learn.h"

static int pieces_of(const hw_knitted_list *knitted, hw_fabric fabric)
{
    int count = 0;
    for (int i = 0; i < knitted->count; i++) {
        count += knitted->list[i].fabric == fabric;
    }
    return count;
}

static hw_swatch place_of(const hw_knitted *piece)
{
    bool across = piece->width_cm > 0;
    bool up = piece->length_cm > 0;
    return (hw_swatch){ .sts = across ? piece->sts : 0,
        .width_cm = across ? piece->width_cm : 0,
        .rows = up ? piece->rows : 0,
        .length_cm = up ? piece->length_cm : 0,
        .state = HW_KNITTED,
        .note = piece->note };
}

/* A gauge given outright, less what pieces have measured since. */
static hw_swatch unmeasured_part(
    const hw_swatch *given, hw_fabric fabric, const hw_knitted_list *knitted)
{
    hw_swatch rest = *given;
    for (int i = 0; i < knitted->count; i++) {
        const hw_knitted *piece = &knitted->list[i];
        if (piece->fabric == fabric && piece->width_cm > 0) {
            rest.sts = rest.width_cm = 0;
        }
        if (piece->fabric == fabric && piece->length_cm > 0) {
            rest.rows = rest.length_cm = 0;
        }
    }
    return rest;
}

static hw_status join(const hw_gauge_input *in, hw_fabric fabric, const hw_knitted_list *knitted,
    hw_arena *arena, hw_gauge_input *out)
{
    int more = pieces_of(knitted, fabric);
    if (more == 0) {
        *out = *in;
        return HW_OK;
    }
    int total = in->count + more;
    if (total > HW_MAX_SWATCHES) {
        return HW_ERR_LIMIT;
    }
    hw_swatch *places = hw_arena_get(arena, (size_t)total, sizeof *places);
    if (places == NULL) {
        return HW_ERR_NOMEM;
    }
    hw_gauge_input joined = *in;
    joined.count = 0;
    for (int i = 0; i < in->count; i++) {
        places[joined.count++] =
            in->outright ? unmeasured_part(&in->swatches[i], fabric, knitted) : in->swatches[i];
    }
    for (int i = 0; i < knitted->count; i++) {
        if (knitted->list[i].fabric == fabric) {
            places[joined.count++] = place_of(&knitted->list[i]);
        }
    }
    joined.swatches = places;
    joined.outright = false;
    *out = joined;
    return HW_OK;
}

hw_status hw_learn_join(const hw_gauge_input *in, const hw_knitted_list *knitted, hw_arena *arena,
    hw_gauge_input *out, hw_err *err)
{
    hw_gauge_input joined[HW_FABRIC_COUNT];
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        hw_status status = join(&in[f], (hw_fabric)f, knitted, arena, &joined[f]);
        if (status == HW_ERR_LIMIT) {
            return hw_err_set(err, status,
                "swatches and measured pieces of one fabric come to more than %d places; leave "
                "the oldest out",
                HW_MAX_SWATCHES);
        }
        if (status != HW_OK) {
            return hw_err_set(err, status, "%s", "there is not enough memory for the pieces");
        }
    }
    for (int f = 0; f < HW_FABRIC_COUNT; f++) {
        out[f] = joined[f];
    }
    return HW_OK;
}
