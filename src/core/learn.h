/* Test knits come home: their measures join the swatches, and knitted pieces keep their counts.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_LEARN_H
#define HW_CORE_LEARN_H

#include "core/gauge.h"
#include "core/knitted.h"

/*
 * The gauge inputs with measured pieces as further places.
 *
 * Given:     in        HW_FABRIC_COUNT inputs
 *            knitted   may hold none
 *            arena     owner of the joined places
 * Returned:  out       HW_FABRIC_COUNT inputs; of a gauge given outright only that stays which no
 *                      piece has measured; untouched on failure
 * Result:    HW_OK; HW_ERR_LIMIT (above HW_MAX_SWATCHES places); HW_ERR_NOMEM
 * Note:      a piece counts beside washed swatches, and is no part of what washing changes
 */
hw_status hw_learn_join(const hw_gauge_input *in, const hw_knitted_list *knitted, hw_arena *arena,
    hw_gauge_input *out, hw_err *err) HW_MUST_USE;

#endif
