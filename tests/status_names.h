/* The names of statuses, for tests to tell and worked examples to ask for.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_STATUS_NAMES_H
#define HW_TESTS_STATUS_NAMES_H

#include "core/hw.h"

/* A short name; any status below HW_STATUS_COUNT. */
const char *status_name(hw_status status);

#endif
