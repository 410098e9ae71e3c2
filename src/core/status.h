/* What each status says, and how the program ends on it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_STATUS_H
#define HW_CORE_STATUS_H

#include "core/hw.h"

/*
 * One plain sentence for a status, used where no better message was made.
 *
 * Given:     status    any hw_status below HW_STATUS_COUNT
 * Returned:  a constant text without a full stop, never NULL
 */
const char *hw_status_sentence(hw_status status);

/*
 * The program's exit code for a status.
 *
 * Given:     status    any hw_status below HW_STATUS_COUNT
 * Returned:  0 done; 1 no fit exists; 2 usage or input; 3 input/output; 4 memory or internal
 */
int hw_status_exit(hw_status status);

#endif
