/* A garment of round numbers with all that can lie above its hems, worked out by hand in tank.c.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_TANK_H
#define HW_TESTS_TANK_H

#include "planned.h"

enum { TANK_BACK, TANK_FRONT, TANK_SLEEVE, TANK_PIECES, TANK_TRIMS = 3 };

/* Texts to be edited: the project, and the garment that it names. */
extern const char tank_project[];
extern const char tank_garment[];

/* A project made of them and its plan, in a heap of their own. */
typedef planned tank;

/* Read and work out; a failure ends the test. The edits are made in the project's text, those
 * behind them in the garment's; either may be NULL. */
void tank_open(tank *t, const loading_edit *project, const loading_edit *garment);

/* The same as far as it goes: what calculating, or reading before it, says. */
hw_status tank_try(tank *t, const loading_edit *project, const loading_edit *garment, hw_err *err);

void tank_close(tank *t);

/* Words at which notes of a plan can be counted. */
int tank_notes(const hw_plan *plan, const char *words);

#endif
