/* What a fuzz target gives to whoever runs it: a fuzzer, or replay.c over a folder of inputs.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_FUZZ_H
#define HW_FUZZ_H

#include <stddef.h>
#include <stdint.h>

/* The folder under tests/fuzz/corpus that holds the target's inputs. */
extern const char hw_fuzz_corpus[];

/* One input: returns 0, or stops the program where a promise is broken. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

#endif
