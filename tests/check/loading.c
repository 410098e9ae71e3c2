/* Projects read from texts, and from the data files that they name.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "loading.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "read/datafile.h"
#include "read/garmentfile.h"
#include "read/project.h"
#include "read/table.h"
#include "support.h"

static const char *const folders[] = {
    [HW_DATA_MACHINE] = "machines",
    [HW_DATA_GARMENT] = "garments",
    [HW_DATA_SIZES] = "sizes",
    [HW_DATA_MOTIF] = "motifs",
};
_Static_assert(sizeof folders / sizeof folders[0] == HW_DATA_COUNT, "a folder for each kind");

static const char *file_text(const char *folder, const char *name, hw_arena *arena)
{
    const char *srcdir = getenv("srcdir");
    const char *path =
        hw_arena_format(arena, "%s/data/%s/%s.yaml", srcdir == NULL ? "." : srcdir, folder, name);
    ck_assert_ptr_nonnull(path);
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s cannot be opened", path);
    const size_t room = 1 << 20;
    char *text = hw_arena_get(arena, room, 1);
    ck_assert_ptr_nonnull(text);
    ck_assert_uint_lt(fread(text, 1, room, file), room);
    ck_assert_int_eq(fclose(file), 0);
    return text;
}

const char *loading_edited(const char *text, const loading_edit *edit, hw_arena *arena)
{
    const char *at = strstr(text, edit->old);
    ck_assert_msg(at != NULL, "`%s` is not in the text", edit->old);
    ck_assert_msg(strstr(at + 1, edit->old) == NULL, "`%s` is there twice", edit->old);
    const char *made = hw_arena_format(
        arena, "%.*s%s%s", (int)(at - text), text, edit->fresh, at + strlen(edit->old));
    ck_assert_ptr_nonnull(made);
    return made;
}

static hw_status read_data(
    hw_data kind, const char *text, hw_arena *arena, hw_project *project, hw_err *err)
{
    size_t len = strlen(text);
    switch (kind) {
    case HW_DATA_MACHINE:
        return hw_machine_read(text, len, arena, &project->machine, err);
    case HW_DATA_GARMENT:
        return hw_garment_read(text, len, arena, &project->garment, err);
    case HW_DATA_SIZES:
        return hw_table_read(text, len, arena, &project->table, err);
    case HW_DATA_MOTIF:
        return hw_motif_read(text, len, arena, &project->drawn, err);
    case HW_DATA_COUNT:
        break;
    }
    return HW_ERR_INTERNAL;
}

hw_status loading_read(const loading *from, hw_arena *arena, hw_project *out, hw_err *err)
{
    const char *text = from->text != NULL ? from->text : file_text("demo", from->demo, arena);
    for (int i = 0; i < LOADING_EDITS && from->edits[i].old != NULL; i++) {
        text = loading_edited(text, &from->edits[i], arena);
    }
    hw_project project = { 0 };
    hw_status status = hw_project_read(text, strlen(text), arena, &project, err);
    for (int kind = 0; kind < HW_DATA_COUNT && status == HW_OK; kind++) {
        const char *name = project.references[kind].name;
        const char *data = from->data[kind];
        if (name != NULL) {
            data = data != NULL ? data : file_text(folders[kind], name, arena);
            status = read_data((hw_data)kind, data, arena, &project, err);
        }
    }
    if (status == HW_OK) {
        *out = project;
    }
    return status;
}

void loading_open(const loading *from, hw_arena *arena, hw_project *out)
{
    hw_err err = { 0 };
    hw_status status = loading_read(from, arena, out, &err);
    ck_assert_msg(status == HW_OK, "line %d: %s", err.line, err.text);
}
