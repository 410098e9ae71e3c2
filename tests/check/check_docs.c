/* The files of a run: all or none, whatever fails and when. Own choice of what must hold.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "fixture.h"
#include "room.h"
#include "shell/docs.h"

static hw_err err;
static hw_docs docs;
static hw_opts opts;
static char into[ROOM_PATH];

static void setup(void)
{
    room_open();
    room_path("sheets", into);
    opts = (hw_opts){ .args = { "some/folder/plan.v2.yaml" } };
    opts.values[HW_OPT_INTO] = into;
    err = (hw_err){ 0 };
    hw_docs_begin(&docs, &opts, &arena, &err);
}

static char *path_of(const char *name)
{
    char path[ROOM_PATH];
    room_path(name, path);
    char *kept = hw_arena_text(&arena, path, strlen(path));
    ck_assert_ptr_nonnull(kept);
    return kept;
}

/* Write a file of so many letters, ending as its writer did. */
static hw_status put(const char *name, int letters, hw_status writer)
{
    hw_buf file;
    hw_status status = hw_docs_open(&docs, path_of(name), &file);
    if (status == HW_OK) {
        hw_buf_repeat(&file, "x", letters);
        status = writer;
    }
    return hw_docs_close(&docs, &file, status);
}

START_TEST(names)
{
    char wanted[2 * ROOM_PATH];
    (void)snprintf(wanted, sizeof wanted, "%s/plan.v2-chart.svg", into);
    ck_assert_str_eq(hw_docs_path(&docs, "-chart.svg"), wanted);
    opts.values[HW_OPT_INTO] = NULL;
    ck_assert_str_eq(hw_docs_path(&docs, ".csv"), "plan.v2.csv");
    opts.args[0] = ".hidden";
    ck_assert_str_eq(hw_docs_path(&docs, ".csv"), ".hidden.csv");
}
END_TEST

START_TEST(all_at_once)
{
    char words[3 * ROOM_PATH];
    ck_assert_int_eq(put("a", 3, HW_OK), HW_OK);
    ck_assert_int_eq(put("b", 200000, HW_OK), HW_OK);
    struct stat about;
    ck_assert_int_ne(stat(path_of("a"), &about), 0); /* not before all are written */
    ck_assert_int_eq(hw_docs_end(&docs, HW_OK, &buf), HW_OK);
    ck_assert(room_holds("a", "xxx"));
    ck_assert_int_eq(stat(path_of("b"), &about), 0);
    ck_assert_int_eq(about.st_size, 200000);
    ck_assert_int_eq(room_count(), 2);
    (void)snprintf(words, sizeof words, "Written: %s\nWritten: %s\n", path_of("a"), path_of("b"));
    ck_assert_str_eq(buf.text, words);
}
END_TEST

/* The third fails: the first is not there, the second is as it was, and so is the folder. */
static void nothing_changed(hw_status status, const char *words)
{
    ck_assert_int_eq(hw_docs_end(&docs, status, &buf), status);
    ck_assert(hw_check_says(&err, status, words));
    ck_assert(room_holds("b", "old"));
    ck_assert_int_eq(room_count(), 1);
    ck_assert_uint_eq(buf.len, 0);
}

START_TEST(a_writer_fails)
{
    room_put("b", "old");
    opts.values[HW_OPT_REPLACE] = "";
    ck_assert_int_eq(hw_docs_folder(&docs), HW_OK);
    ck_assert_int_eq(put("a", 3, HW_OK), HW_OK);
    ck_assert_int_eq(put("b", 3, HW_OK), HW_OK);
    ck_assert_int_eq(put("c", 3, HW_ERR_NOMEM), HW_ERR_NOMEM);
    nothing_changed(HW_ERR_NOMEM, "not enough memory");
    ck_assert_ptr_nonnull(strstr(err.where, "c"));
}
END_TEST

/* A name that is a folder by the time the last file would take it; the two before it were in their
 * places already, and one of them had replaced an old one. */
START_TEST(no_place_for_the_last)
{
    char path[ROOM_PATH];
    room_put("b", "old");
    opts.values[HW_OPT_REPLACE] = "";
    ck_assert_int_eq(put("a", 3, HW_OK), HW_OK);
    ck_assert_int_eq(put("b", 3, HW_OK), HW_OK);
    ck_assert_int_eq(put("c", 3, HW_OK), HW_OK);
    ck_assert_int_eq(mkdir(room_path("c", path), 0777), 0);
    ck_assert_int_eq(hw_docs_end(&docs, HW_OK, &buf), HW_ERR_IO);
    ck_assert_int_eq(rmdir(path), 0);
    ck_assert(hw_check_says(&err, HW_ERR_IO, "this is a folder"));
    ck_assert_ptr_nonnull(strstr(err.where, "c"));
    ck_assert(room_holds("b", "old"));
    ck_assert_int_eq(room_count(), 1);
    ck_assert_uint_eq(buf.len, 0);
}
END_TEST

/* The computer stops when the first of two files is in its place and the second is not: played by
 * a run that is never ended. The old one is still there under a second name, and the next run that
 * replaces it leaves none, whether it succeeds or fails. */
START_TEST(stopped_between_two)
{
    opts.values[HW_OPT_REPLACE] = "";
    for (int fails = 0; fails < 2; fails++) {
        hw_io_target target;
        room_put("b", "old");
        ck_assert_int_eq(hw_io_begin(&target, path_of("b"), NULL), HW_OK);
        ck_assert_int_eq(hw_io_put(&target, "new", 3, NULL), HW_OK);
        ck_assert_int_eq(hw_io_finish(&target, NULL), HW_OK);
        hw_io_keep(&target);
        ck_assert_int_eq(hw_io_place(&target, NULL), HW_OK);
        ck_assert(room_holds("b", "new"));
        ck_assert(room_holds("b.hemwright-old", "old"));
        hw_docs_begin(&docs, &opts, &arena, &err);
        ck_assert_int_eq(put("b", 4, HW_OK), HW_OK);
        ck_assert_int_eq(put("c", 3, HW_OK), HW_OK);
        if (fails == 1) {
            ck_assert_int_eq(unlink(path_of("c")), 0); /* of the first time round */
            ck_assert_int_eq(mkdir(path_of("c"), 0777), 0);
        }
        ck_assert_int_eq(hw_docs_end(&docs, HW_OK, &buf), fails == 1 ? HW_ERR_IO : HW_OK);
        ck_assert(room_holds("b", fails == 1 ? "new" : "xxxx"));
        ck_assert_int_eq(room_count(), 2); /* b and c */
    }
}
END_TEST

/* One file alone needs no second name: the old one goes as the new one comes, and a thing in the
 * way of the name is let alone. */
START_TEST(one_by_itself)
{
    room_put("b", "old");
    room_put("b.hemwright-old", "else");
    opts.values[HW_OPT_REPLACE] = "";
    ck_assert_int_eq(put("b", 3, HW_OK), HW_OK);
    ck_assert_int_eq(hw_docs_end(&docs, HW_OK, &buf), HW_OK);
    ck_assert(room_holds("b", "xxx"));
    ck_assert(room_holds("b.hemwright-old", "else"));
}
END_TEST

START_TEST(one_is_too_large)
{
    room_put("b", "old");
    ck_assert_int_eq(put("a", 3, HW_ERR_LIMIT), HW_ERR_LIMIT);
    nothing_changed(HW_ERR_LIMIT, "larger than 512 MB: leave out sizes");
}
END_TEST

START_TEST(one_is_there_already)
{
    room_put("b", "old");
    ck_assert_int_eq(put("a", 3, HW_OK), HW_OK);
    ck_assert_int_eq(put("b", 3, HW_OK), HW_ERR_IO);
    nothing_changed(HW_ERR_IO, "add `--replace`");
}
END_TEST

START_TEST(no_memory_to_begin)
{
    hw_buf file;
    room_put("b", "old");
    ck_assert_int_eq(hw_docs_open(&docs, NULL, &file), HW_ERR_NOMEM);
    ck_assert_int_eq(hw_docs_close(&docs, &file, HW_ERR_NOMEM), HW_ERR_NOMEM);
    nothing_changed(HW_ERR_NOMEM, "not enough memory");
}
END_TEST

/* A folder that was there, or in which something lies, stays. */
START_TEST(the_folder)
{
    struct stat about;
    ck_assert_int_eq(hw_docs_folder(&docs), HW_OK);
    ck_assert_int_eq(stat(into, &about), 0);
    ck_assert_int_eq(hw_docs_end(&docs, HW_ERR_NOFIT, &buf), HW_ERR_NOFIT);
    ck_assert_int_ne(stat(into, &about), 0);
    ck_assert_int_eq(mkdir(into, 0777), 0);
    hw_docs_begin(&docs, &opts, &arena, &err);
    ck_assert_int_eq(hw_docs_folder(&docs), HW_OK);
    ck_assert_int_eq(hw_docs_end(&docs, HW_ERR_NOFIT, &buf), HW_ERR_NOFIT);
    ck_assert_int_eq(stat(into, &about), 0);
    ck_assert_int_eq(rmdir(into), 0);
}
END_TEST

/* With faults compiled in, each point fails in the third file of three, one of which replaces an
 * old one; without, none does. */
START_TEST(faults)
{
    static const char *const points[] = { "open", "write", "fsync", "close", "rename" };
    ck_assert_int_eq(setenv("HW_FAULT", "nowhere:EIO", 1), 0);
    bool enabled = hw_io_fault_unhit();
    int comes = 0;
    opts.values[HW_OPT_REPLACE] = "";
    for (size_t i = 0; i < sizeof points / sizeof points[0]; i++) {
        char wanted[64];
        comes += enabled ? 3 : 0;
        (void)snprintf(wanted, sizeof wanted, "%s:ENOSPC:%d", points[i], comes);
        room_put("b", "old");
        err = (hw_err){ 0 };
        hw_docs_begin(&docs, &opts, &arena, &err);
        ck_assert_int_eq(setenv("HW_FAULT", wanted, 1), 0);
        hw_status status = put("a", 3, HW_OK);
        status = status == HW_OK ? put("b", 3, HW_OK) : status;
        status = status == HW_OK ? put("c", 3, HW_OK) : status;
        if (enabled && strcmp(points[i], "rename") != 0) {
            ck_assert_int_eq(status, HW_ERR_IO);
            nothing_changed(status, "the disk is full");
        } else if (enabled) {
            ck_assert_int_eq(status, HW_OK);
            ck_assert_int_eq(hw_docs_end(&docs, status, &buf), HW_ERR_IO);
            ck_assert(room_holds("b", "old"));
            ck_assert_int_eq(room_count(), 1);
        } else {
            ck_assert_int_eq(hw_docs_end(&docs, status, &buf), HW_OK);
            ck_assert_int_eq(room_count(), 3);
        }
        ck_assert(!hw_io_fault_unhit());
    }
    ck_assert_int_eq(unsetenv("HW_FAULT"), 0);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { names, all_at_once, a_writer_fails, no_place_for_the_last,
        stopped_between_two, one_by_itself, one_is_too_large, one_is_there_already,
        no_memory_to_begin, the_folder, faults };
    return fixture_run("docs", setup, room_close, tests, sizeof tests / sizeof tests[0]);
}
