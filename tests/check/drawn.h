/* What the suites of drawings share: a picture's text parsed by expat, and its shapes counted.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_DRAWN_H
#define HW_TESTS_DRAWN_H

#include "write/drawing.h"

/* Shapes of a kind and look in a drawing. */
int drawn_count(const hw_drawing *drawing, hw_drawn_kind kind, hw_look look);

/* The n-th of them, from 0; ends the test where there are fewer. */
const hw_drawn *drawn_at(const hw_drawing *drawing, hw_drawn_kind kind, hw_look look, int n);

/* Words with exactly this text, of any look; NULL: none. */
const hw_drawn *drawn_words(const hw_drawing *drawing, const char *text);

/* Write the drawing as SVG and parse it with expat: it must be well-formed, its elements as many
 * as the drawing's shapes, and the texts of its words those of the drawing. */
void drawn_parses(const hw_drawing *drawing);

/* The words that lie at a point, by the widths of the drawing's own table; NULL: none. */
const char *drawn_under(const hw_drawing *drawing, hw_point at);

/* No two texts of a drawing lie on one another, by the widths of its own table, and none leaves
 * the page. */
void drawn_apart(const hw_drawing *drawing);

#endif
