/* A figure as a motif file, which reads back the same.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_MOTIFYAML_H
#define HW_WRITE_MOTIFYAML_H

#include "core/project.h"

/*
 * Write a motif file: title, chart, gap, source.
 *
 * Given:     motif     its name in UTF-8, without control characters
 *            buf       initialised
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_LIMIT
 */
hw_status hw_motifyaml_write(const hw_motif_input *motif, hw_buf *buf) HW_MUST_USE;

#endif
