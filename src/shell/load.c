/* Where data files are looked for, and one table of how each kind is read.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/load.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/words.h"
#include "read/bands.h"
#include "read/datafile.h"
#include "read/garmentfile.h"
#include "read/pbm.h"
#include "read/project.h"
#include "read/table.h"
#include "read/yaml.h"
#include "shell/bookrows.h"
#include "shell/io.h"

static hw_status read_machine(const hw_io_text *t, hw_arena *a, hw_project *p, hw_err *e)
{
    return hw_machine_read(t->text, t->len, a, &p->machine, e);
}

static hw_status read_garment(const hw_io_text *t, hw_arena *a, hw_project *p, hw_err *e)
{
    return hw_garment_read(t->text, t->len, a, &p->garment, e);
}

static hw_status read_sizes(const hw_io_text *t, hw_arena *a, hw_project *p, hw_err *e)
{
    return hw_table_read(t->text, t->len, a, &p->table, e);
}

static hw_status read_motif(const hw_io_text *t, hw_arena *a, hw_project *p, hw_err *e)
{
    return hw_motif_read(t->text, t->len, a, &p->drawn, e);
}

static const struct {
    const char *folder, *one;
    hw_status (*read)(const hw_io_text *text, hw_arena *arena, hw_project *project, hw_err *err);
} kinds[] = {
    [HW_DATA_MACHINE] = { "machines", "machine", read_machine },
    [HW_DATA_GARMENT] = { "garments", "garment", read_garment },
    [HW_DATA_SIZES] = { "sizes", "size table", read_sizes },
    [HW_DATA_MOTIF] = { "motifs", "motif", read_motif },
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_DATA_COUNT, "a row for each kind of data");

static hw_status no_memory(hw_err *err)
{
    return hw_err_set(err, HW_ERR_NOMEM, "%s", "there is not enough memory to read this");
}

static bool is_folder(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

/* The folder that holds this program, or NULL. */
static const char *program_folder(hw_arena *arena)
{
    char room[HW_IO_PATH_ROOM];
    ssize_t len = readlink("/proc/self/exe", room, sizeof room - 1);
    if (len <= 0) {
        return NULL;
    }
    room[len] = '\0';
    char *slash = strrchr(room, '/');
    return slash == NULL ? NULL : hw_arena_text(arena, room, (size_t)(slash - room));
}

const char *hw_load_folder(hw_arena *arena)
{
    const char *told = getenv("HEMWRIGHT_DATA");
    if (told != NULL && told[0] != '\0') {
        return told;
    }
    static const char *const beside[] = { "/../share/hemwright", "/share/hemwright" };
    const char *program = program_folder(arena);
    for (size_t i = 0; program != NULL && i < sizeof beside / sizeof beside[0]; i++) {
        const char *path = hw_arena_format(arena, "%s%s", program, beside[i]);
        if (path == NULL || is_folder(path)) {
            return path;
        }
    }
    return PKGDATADIR;
}

const char *hw_load_kind(hw_data kind)
{
    return kinds[kind].folder;
}

hw_status hw_load_lost(const char *path, hw_err *err)
{
    hw_err_where(err, path);
    return hw_err_set(err, HW_ERR_IO, "%s",
        "the data folder, with machines, garments, sizes and motifs, is not here; install "
        "hemwright again, or set HEMWRIGHT_DATA to the folder that holds them");
}

static int by_name(const void *a, const void *b)
{
    const char *const *x = a;
    const char *const *y = b;
    return strcmp(*x, *y);
}

/* One name more; the room for names doubles when it is used up. */
static hw_status keep_name(
    const struct dirent *entry, int *room, hw_arena *arena, hw_load_names *found)
{
    const char *dot = strrchr(entry->d_name, '.');
    if (dot == NULL || strcmp(dot, ".yaml") != 0) {
        return HW_OK;
    }
    if (found->count == *room) {
        *room = *room == 0 ? 64 : 2 * *room;
        const char **names = hw_arena_get(arena, (size_t)*room, sizeof *names);
        if (names == NULL) {
            return HW_ERR_NOMEM;
        }
        for (int i = 0; i < found->count; i++) {
            names[i] = found->names[i];
        }
        found->names = names;
    }
    const char *name = hw_arena_text(arena, entry->d_name, (size_t)(dot - entry->d_name));
    found->names[found->count] = name;
    found->count += name != NULL;
    return name == NULL ? HW_ERR_NOMEM : HW_OK;
}

/* Names of the .yaml files of an open folder, sorted. */
static hw_status list_folder(DIR *dir, hw_arena *arena, hw_load_names *out, hw_err *err)
{
    hw_load_names found = { .count = 0 };
    int room = 0;
    hw_status status = HW_OK;
    for (struct dirent *entry = readdir(dir); entry != NULL && status == HW_OK;
         entry = readdir(dir)) {
        status = keep_name(entry, &room, arena, &found);
    }
    if (status != HW_OK) {
        return no_memory(err);
    }
    if (found.count > 1) {
        qsort(found.names, (size_t)found.count, sizeof found.names[0], by_name);
    }
    *out = found;
    return HW_OK;
}

static const char *kind_path(hw_data kind, hw_arena *arena)
{
    const char *folder = hw_load_folder(arena);
    return folder == NULL ? NULL : hw_arena_format(arena, "%s/%s", folder, kinds[kind].folder);
}

hw_status hw_load_list(hw_data kind, hw_arena *arena, hw_load_names *out, hw_err *err)
{
    const char *path = kind_path(kind, arena);
    if (path == NULL) {
        return no_memory(err);
    }
    DIR *dir = opendir(path);
    if (dir == NULL) {
        return errno == ENOENT || errno == ENOTDIR ? hw_load_lost(path, err)
                                                   : hw_io_fail(err, path, HW_IO_READING, errno);
    }
    hw_status status = list_folder(dir, arena, out, err);
    (void)closedir(dir); /* it was only read */
    return status;
}

static hw_status read_motif_file(
    const char *path, hw_arena *arena, hw_motif_input *out, hw_err *err)
{
    hw_io_text text;
    hw_status status = hw_io_read(path, arena, HW_YAML_MAX_BYTES, &text, err);
    if (status == HW_OK) {
        status = hw_motif_read(text.text, text.len, arena, out, err);
    }
    if (status != HW_OK) {
        hw_err_where(err, path);
    }
    return status;
}

hw_status hw_load_motifs(const char *folder, hw_arena *arena, hw_load_motif_list *out, hw_err *err)
{
    hw_load_names names = { .count = 0 };
    const char *path = folder != NULL ? folder : kind_path(HW_DATA_MOTIF, arena);
    if (path == NULL) {
        return no_memory(err);
    }
    DIR *dir = opendir(path);
    if (dir == NULL) {
        return hw_io_fail(err, path, HW_IO_READING, errno);
    }
    hw_status status = list_folder(dir, arena, &names, err);
    (void)closedir(dir); /* it was only read */
    if (status == HW_OK && names.count == 0) {
        hw_err_where(err, path);
        status = hw_err_set(
            err, HW_ERR_MISSING, "%s", "no motif file, with a name that ends in .yaml, is here");
    }
    hw_load_motif_list found = { .list =
                                     hw_arena_get(arena, (size_t)names.count, sizeof *found.list) };
    if (status == HW_OK && found.list == NULL) {
        status = no_memory(err);
    }
    for (int i = 0; i < names.count && status == HW_OK; i++) {
        const char *file = hw_arena_format(arena, "%s/%s.yaml", path, names.names[i]);
        status = file == NULL ? no_memory(err)
                              : read_motif_file(file, arena, &found.list[found.count++], err);
    }
    if (status == HW_OK) {
        *out = found;
    }
    return status;
}

static hw_status unknown_name(hw_data kind, const char *name, hw_arena *arena, hw_err *err)
{
    hw_load_names names;
    hw_status status = hw_load_list(kind, arena, &names, err);
    if (status != HW_OK) {
        return status;
    }
    const char *near = hw_words_nearest(name, names.names, names.count);
    int bytes = hw_words_cut(name, 60);
    return near != NULL ? hw_err_set(err, HW_ERR_UNKNOWN,
                              "there is no %s called `%.*s`; did you mean `%.60s`?",
                              kinds[kind].one, bytes, name, near)
                        : hw_err_set(err, HW_ERR_UNKNOWN,
                              "there is no %s called `%.*s`; `hemwright list %s` names them all",
                              kinds[kind].one, bytes, name, kinds[kind].folder);
}

static bool ends_in(const char *name, const char *ending)
{
    size_t len = strlen(name);
    size_t of = strlen(ending);
    return len > of && strcmp(name + len - of, ending) == 0;
}

/* A name with a folder or an ending is a file of the user's own. */
static bool is_own_file(const char *name)
{
    return strchr(name, '/') != NULL || ends_in(name, ".yaml") || ends_in(name, ".pbm");
}

/* A bitmap is called after its file. */
static hw_status read_bitmap(
    const char *path, const hw_io_text *text, hw_arena *arena, hw_chart *out, hw_err *err)
{
    const char *slash = strrchr(path, '/');
    const char *base = slash != NULL ? slash + 1 : path;
    const char *name = hw_arena_text(arena, base, strlen(base) - strlen(".pbm"));
    return name == NULL
               ? no_memory(err)
               : hw_pbm_read(&(hw_pbm_file){ text->text, text->len, name }, arena, out, err);
}

/* Path of a data file: one of the user's beside `from`, or one under the data folder. */
static const char *path_of(hw_data kind, const char *name, const char *from, hw_arena *arena)
{
    if (!is_own_file(name)) {
        const char *folder = hw_load_folder(arena);
        return folder == NULL
                   ? NULL
                   : hw_arena_format(arena, "%s/%s/%s.yaml", folder, kinds[kind].folder, name);
    }
    const char *slash = strrchr(from, '/');
    int beside = name[0] == '/' || slash == NULL ? 0 : (int)(slash + 1 - from);
    return hw_arena_format(arena, "%.*s%s", beside, from, name);
}

/* A data file as a project names it. */
typedef struct {
    hw_data kind;
    const char *name;
    const char *from; /* the file that names it, or "" */
} naming;

static hw_status no_file(const naming *named, hw_err *err)
{
    bool beside = named->from[0] != '\0' && named->name[0] != '/';
    return hw_err_set(err, HW_ERR_IO,
        "there is no file `%.*s`%s; `hemwright list %s` names what "
        "needs no file of your own",
        hw_words_cut(named->name, 100), named->name, beside ? " beside the project" : "",
        kinds[named->kind].folder);
}

static hw_status load_named(const naming *named, hw_arena *arena, hw_project *project, hw_err *err)
{
    hw_data kind = named->kind;
    const char *name = named->name;
    const char *path = path_of(kind, name, named->from, arena);
    if (path == NULL) {
        return no_memory(err);
    }
    struct stat about;
    if (stat(path, &about) != 0 && (errno == ENOENT || errno == ENOTDIR)) {
        return is_own_file(name) ? no_file(named, err) : unknown_name(kind, name, arena, err);
    }
    hw_io_text text;
    hw_status status = hw_io_read(path, arena, HW_YAML_MAX_BYTES, &text, err);
    if (status == HW_OK) {
        status = kind == HW_DATA_MOTIF && ends_in(path, ".pbm")
                     ? read_bitmap(path, &text, arena, &project->drawn.chart, err)
                     : kinds[kind].read(&text, arena, project, err);
    }
    if (status == HW_OK && kind == HW_DATA_GARMENT) {
        project->garment_path = path;
    }
    if (status != HW_OK) {
        hw_err_where(err, path);
    }
    return status;
}

hw_status hw_load_one(
    hw_data kind, const char *name, hw_arena *arena, hw_project *project, hw_err *err)
{
    return load_named(&(naming){ .kind = kind, .name = name, .from = "" }, arena, project, err);
}

hw_status hw_load_motif(const char *name, hw_arena *arena, hw_motif_input *out, hw_err *err)
{
    hw_project project = { 0 };
    hw_status status = load_named(
        &(naming){ .kind = HW_DATA_MOTIF, .name = name, .from = "" }, arena, &project, err);
    if (status == HW_OK) {
        *out = project.drawn;
    }
    return status;
}

/* Pieces that test knitters measured, in a file beside the project. */
static hw_status load_knitted(const char *path, hw_project *project, hw_arena *arena, hw_err *err)
{
    const hw_reference *named = &project->knitted_file;
    if (named->name == NULL) {
        return HW_OK;
    }
    const char *slash = strrchr(path, '/');
    int beside = named->name[0] == '/' || slash == NULL ? 0 : (int)(slash + 1 - path);
    const char *file = hw_arena_format(arena, "%.*s%s", beside, path, named->name);
    project->knitted_path = file;
    return file == NULL ? no_memory(err) : hw_load_pieces(file, project, arena, err);
}

hw_status hw_load_pieces(const char *path, hw_project *project, hw_arena *arena, hw_err *err)
{
    hw_knitted_context context = { .sizes = &project->body,
        .garment = &project->garment,
        .usual = project->show == HW_SHOW_IN ? HW_UNIT_IN : HW_UNIT_CM };
    return hw_knitted_load(path, &context, arena, &project->knitted, err);
}

/* The motif file that a band or a trim names. */
static hw_status load_choice(
    const char *path, hw_motif_choice *choice, hw_arena *arena, hw_err *err)
{
    if (choice->file.name == NULL) {
        return HW_OK;
    }
    hw_project project = { 0 };
    hw_status status =
        load_named(&(naming){ .kind = HW_DATA_MOTIF, .name = choice->file.name, .from = path },
            arena, &project, err);
    if (status != HW_OK) {
        return hw_err_place(err, status, choice->file.line, choice->file.column);
    }
    choice->drawn = project.drawn;
    return HW_OK;
}

static hw_status load_choices(const char *path, hw_project *project, hw_arena *arena, hw_err *err)
{
    hw_status status = HW_OK;
    for (int b = 0; b < project->band_count && status == HW_OK; b++) {
        status = load_choice(path, &project->bands[b].motif, arena, err);
    }
    for (int t = 0; t < project->trim_count && status == HW_OK; t++) {
        status = load_choice(path, &project->trims[t].motif, arena, err);
    }
    return status;
}

static hw_status load_all(const char *path, hw_arena *arena, hw_project *out, hw_err *err)
{
    hw_io_text text;
    hw_project project = { 0 };
    hw_status status = hw_io_read(path, arena, HW_YAML_MAX_BYTES, &text, err);
    if (status == HW_OK) {
        status = hw_project_read(text.text, text.len, arena, &project, err);
    }
    for (int kind = 0; kind < HW_DATA_COUNT && status == HW_OK; kind++) {
        const hw_reference *named = &project.references[kind];
        if (named->name == NULL) {
            continue;
        }
        status = load_named(&(naming){ .kind = (hw_data)kind, .name = named->name, .from = path },
            arena, &project, err);
        /* Once another file is named, a place in this one would mislead. */
        if (status != HW_OK && err != NULL && err->where[0] == '\0') {
            (void)hw_err_place(err, status, named->line, named->column);
        }
    }
    status = status == HW_OK ? hw_bands_check(&project, err) : status;
    status = status == HW_OK ? load_choices(path, &project, arena, err) : status;
    if (status == HW_OK) {
        status = load_knitted(path, &project, arena, err);
    }
    if (status == HW_OK) {
        *out = project;
    }
    return status;
}

hw_status hw_load_project(const char *path, hw_arena *arena, hw_project *out, hw_err *err)
{
    hw_status status = load_all(path, arena, out, err);
    if (status != HW_OK) {
        hw_err_where(err, path);
    }
    return status;
}

void hw_load_blame(const hw_project *project, const char *file, hw_err *err)
{
    bool garment = err != NULL && err->of_garment && project->garment_path != NULL;
    hw_err_where(err, garment ? project->garment_path : file);
}

enum { SIZES_LISTED = 160 }; /* bytes: what a message has room for */

/* "98, 104, 110", or as many from the first on as there is room for, and the last. */
static const char *listed(const hw_sizes *sizes, char *room)
{
    size_t used = 0;
    room[0] = '\0';
    for (int i = 0; i < sizes->count; i++) {
        const char *name = sizes->names[i];
        int last = sizes->count - 1;
        size_t rest = i < last ? strlen(sizes->names[last]) + strlen(", ... ") : 0;
        if (i < last && used + strlen(name) + rest + 2 >= SIZES_LISTED) {
            (void)snprintf(room + used, SIZES_LISTED - used, ", ... %s", sizes->names[last]);
            break;
        }
        int len = snprintf(room + used, SIZES_LISTED - used, "%s%s", i > 0 ? ", " : "", name);
        used += len > 0 ? (size_t)len : 0;
        used = used < SIZES_LISTED ? used : SIZES_LISTED - 1;
    }
    return room;
}

hw_status hw_load_size(const hw_sizes *sizes, const char *name, int *out, hw_err *err)
{
    int found = hw_sizes_find_size(sizes, name);
    if (found >= 0) {
        *out = found;
        return HW_OK;
    }
    const char *near = hw_words_nearest(name, sizes->names, sizes->count);
    if (near != NULL) {
        return hw_err_set(err, HW_ERR_USAGE, "`--size %.*s` is no size here; did you mean `%.40s`?",
            hw_words_cut(name, 40), name, near);
    }
    char room[SIZES_LISTED];
    return hw_err_set(err, HW_ERR_USAGE, "`--size %.*s` is no size here; there are %s",
        hw_words_cut(name, 40), name, listed(sizes, room));
}
