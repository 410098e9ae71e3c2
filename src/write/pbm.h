/* A chart as a plain portable bitmap, for drawing programs.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_PBM_H
#define HW_WRITE_PBM_H

#include "core/buf.h"
#include "core/motif.h"

/*
 * Write a chart as a plain bitmap (P1) [V2]: contrast is black, one pixel to a stitch.
 *
 * Given:     chart     within the limits of charts
 *            buf       initialised
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_LIMIT
 * Note:      no line is longer than 70 characters, as the format asks; the gap has no place in it
 */
hw_status hw_pbm_write(const hw_chart *chart, hw_buf *buf) HW_MUST_USE;

#endif
