/* A drawing as an SVG text that prints to true scale.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_SVG_H
#define HW_WRITE_SVG_H

#include "core/buf.h"
#include "write/drawing.h"

/*
 * Write a drawing as one svg element: a file of its own, or a part of a page.
 *
 * Given:     drawing   HW_OK by hw_drawing_status, its size above 0
 *            buf       initialised; appended to
 * Result:    HW_OK; HW_ERR_NOMEM; HW_ERR_LIMIT
 * Note:      by Scalable Vector Graphics 1.1 [V2]: width and height in mm and a viewBox in mm, so
 *            that one unit is one mm on paper. Numbers have at most 3 decimals. Words stay words.
 *            Shapes of one look that follow each other share a group, whose class is the look's
 *            name. Control characters, which XML does not allow, become blanks. The output depends
 *            on the drawing alone.
 */
hw_status hw_svg_write(const hw_drawing *drawing, hw_buf *buf) HW_MUST_USE;

#endif
