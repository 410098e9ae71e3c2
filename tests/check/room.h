/* A folder of its own for each test that writes files, and a look at what is in it.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_TESTS_ROOM_H
#define HW_TESTS_ROOM_H

#include <stdbool.h>
#include <stddef.h>

enum { ROOM_PATH = 512 };

/* Make a fresh folder; ends the test where it cannot. */
void room_open(void);

/* The same, and the data of the sources are those that the program finds by name. */
void room_data(void);

/* Take the folder away, with all that is in it. */
void room_close(void);

/* The path of a name in the folder, in room of ROOM_PATH bytes; returns it. */
const char *room_path(const char *name, char *path);

/* Write a small file in the folder. */
void room_put(const char *name, const char *text);

/* The same of bytes that may hold anything. */
void room_put_bytes(const char *name, const char *bytes, size_t len);

/* Whether a file in the folder holds exactly this. */
bool room_holds(const char *name, const char *text);

/* Things in the folder. */
int room_count(void);

#endif
