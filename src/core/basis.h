/* The facts that a plan rests on: each gauge, ease, rule and assumption, with its mark.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_CORE_BASIS_H
#define HW_CORE_BASIS_H

#include "core/plan.h"

/*
 * Add every fact behind a plan's numbers.
 *
 * Given:     plan      all results are in it but notes and basis
 *            notes     initialised
 */
void hw_basis_add(const hw_plan *plan, hw_notes *notes);

#endif
