/* Files: whole or not at all, and each failure in words that a knitter knows.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "fixture.h"
#include "room.h"
#include "shell/io.h"

static char path[ROOM_PATH];

/* A file from its beginning to its end, as docs.c takes it there. */
static hw_status write_text(const char *name, hw_err *err)
{
    hw_io_target target;
    hw_status status = hw_io_begin(&target, name, err);
    if (status != HW_OK) {
        return status;
    }
    status = hw_io_put(&target, buf.text, buf.len, err);
    status = status == HW_OK ? hw_io_finish(&target, err) : status;
    if (status != HW_OK) {
        hw_io_abort(&target);
        return status;
    }
    return hw_io_place(&target, err);
}

static void cannot_read(const char *name, size_t limit, hw_status status, const char *words)
{
    hw_io_text text = { .len = 99 };
    hw_err err = { 0 };
    ck_assert_int_eq(hw_io_read(name, &arena, limit, &text, &err), status);
    ck_assert(hw_check_says(&err, status, words));
    ck_assert(err.where[0] != '\0');
    ck_assert_uint_eq(text.len, 99);
}

START_TEST(reading)
{
    hw_io_text text = { 0 };
    room_put("a", "four");
    ck_assert_int_eq(hw_io_read(room_path("a", path), &arena, 4, &text, NULL), HW_OK);
    ck_assert_str_eq(text.text, "four");
    ck_assert_uint_eq(text.len, 4);
    cannot_read(path, 3, HW_ERR_LIMIT, "too large");
    room_put("a", "");
    ck_assert_int_eq(hw_io_read(path, &arena, 4, &text, NULL), HW_OK);
    ck_assert_str_eq(text.text, "");
    ck_assert_uint_eq(text.len, 0);
    cannot_read(room_path("none", path), 4, HW_ERR_IO, "there is no such file");
    cannot_read(room_path("", path), 4, HW_ERR_IO, "this is a folder");
    cannot_read(room_path("a/b", path), 4, HW_ERR_IO, "not a folder");
}
END_TEST

/* A file of several bites, and one that never ends. */
START_TEST(reading_much)
{
    hw_io_text text = { 0 };
    hw_buf_repeat(&buf, "0123456789abcdef", 20000);
    ck_assert_int_eq(write_text(room_path("a", path), NULL), HW_OK);
    ck_assert_int_eq(hw_io_read(path, &arena, 320000, &text, NULL), HW_OK);
    ck_assert_uint_eq(text.len, 320000);
    ck_assert_int_eq(memcmp(text.text, buf.text, text.len), 0);
    cannot_read("/dev/zero", 1000000, HW_ERR_LIMIT, "1000000 bytes");
}
END_TEST

START_TEST(reading_without_memory)
{
    room_put("a", "four");
    room_path("a", path);
    for (long n = 1; n < 3; n++) {
        hw_arena poor;
        hw_check_heap small;
        hw_check_open(&poor, &small, n, false);
        hw_io_text text = { 0 };
        hw_err err = { 0 };
        ck_assert_int_eq(hw_io_read(path, &poor, 4, &text, &err), HW_ERR_NOMEM);
        ck_assert(hw_check_says(&err, HW_ERR_NOMEM, "no memory"));
        hw_check_close(&poor, &small);
    }
}
END_TEST

START_TEST(writing)
{
    hw_buf_text(&buf, "new");
    ck_assert_int_eq(write_text(room_path("a", path), NULL), HW_OK);
    ck_assert(room_holds("a", "new"));
    hw_buf_text(&buf, "er");
    ck_assert_int_eq(write_text(path, NULL), HW_OK);
    ck_assert(room_holds("a", "newer"));
    ck_assert_int_eq(room_count(), 1);
    hw_buf_release(&buf);
    ck_assert_int_eq(write_text(path, NULL), HW_OK); /* nothing, for a buffer unused */
    ck_assert(room_holds("a", ""));
}
END_TEST

static void cannot_write(const char *name, const char *words)
{
    hw_err err = { 0 };
    hw_buf_text(&buf, "new");
    int before = room_count();
    ck_assert_int_eq(write_text(name, &err), HW_ERR_IO);
    ck_assert(hw_check_says(&err, HW_ERR_IO, words));
    ck_assert_int_eq(room_count(), before);
}

START_TEST(not_writing)
{
    room_put("a", "old");
    cannot_write(room_path("", path), "this is a folder");
    cannot_write(room_path("none/a", path), "there is no such folder");
    cannot_write(room_path("a/b", path), "not a folder");
    cannot_write("/dev/null", "no ordinary file");
    char longer[HW_IO_PATH_ROOM + 10];
    memset(longer, 'a', sizeof longer - 1);
    longer[sizeof longer - 1] = '\0';
    cannot_write(longer, "its name is too long");
    ck_assert(room_holds("a", "old"));
}
END_TEST

START_TEST(rights_and_links_stay)
{
    char link_path[ROOM_PATH];
    struct stat facts;
    room_put("a", "old");
    ck_assert_int_eq(chmod(room_path("a", path), 0640), 0);
    ck_assert_int_eq(symlink(path, room_path("link", link_path)), 0);
    hw_buf_text(&buf, "new");
    ck_assert_int_eq(write_text(link_path, NULL), HW_OK);
    ck_assert_int_eq(lstat(link_path, &facts), 0);
    ck_assert(S_ISLNK(facts.st_mode));
    ck_assert(room_holds("a", "new"));
    ck_assert_int_eq(stat(path, &facts), 0);
    ck_assert_uint_eq(facts.st_mode & 0777, 0640);
    (void)umask(027);
    ck_assert_int_eq(write_text(room_path("b", path), NULL), HW_OK);
    ck_assert_int_eq(stat(path, &facts), 0);
    ck_assert_uint_eq(facts.st_mode & 0777, 0640);
}
END_TEST

START_TEST(giving_up)
{
    hw_io_target target;
    room_put("a", "old");
    ck_assert_int_eq(hw_io_begin(&target, room_path("a", path), NULL), HW_OK);
    ck_assert_int_eq(room_count(), 2);
    hw_io_abort(&target);
    hw_io_abort(&target);
    ck_assert_int_eq(room_count(), 1);
    ck_assert(room_holds("a", "old"));
}
END_TEST

START_TEST(full_output)
{
    hw_err err = { 0 };
    hw_buf_text(&buf, "words");
    ck_assert_ptr_nonnull(freopen("/dev/full", "w", stdout));
    ck_assert_int_eq(hw_io_stdout(&buf, &err), HW_ERR_IO);
    ck_assert(hw_check_says(&err, HW_ERR_IO, "the disk is full"));
}
END_TEST

START_TEST(output)
{
    hw_buf_text(&buf, "words");
    ck_assert_ptr_nonnull(freopen(room_path("out", path), "w", stdout));
    ck_assert_int_eq(hw_io_stdout(&buf, NULL), HW_OK);
    ck_assert(room_holds("out", "words"));
    ck_assert_int_eq(hw_io_stdout_close(NULL), HW_OK);
}
END_TEST

START_TEST(plain_words)
{
    hw_err err = { 0 };
    ck_assert_int_eq(hw_io_fail(&err, "a.hem", HW_IO_READING, EACCES), HW_ERR_IO);
    ck_assert_str_eq(err.text, "it cannot be read: you may not read it");
    ck_assert_str_eq(err.where, "a.hem");
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_io_fail(&err, "a.hem", HW_IO_WRITING, EACCES), HW_ERR_IO);
    ck_assert_str_eq(err.text, "it cannot be written: you may not write there");
    err = (hw_err){ 0 };
    ck_assert_int_eq(hw_io_fail(&err, "a.hem", HW_IO_WRITING, ENOTTY), HW_ERR_IO);
    ck_assert(hw_check_says(&err, HW_ERR_IO, "it cannot be written: ")); /* the system's words */
}
END_TEST

/* With faults compiled in each point fails as asked and the old file stays; without, none does. */
START_TEST(faults)
{
    static const char *const points[] = { "open", "write", "fsync", "close", "rename" };
    ck_assert_int_eq(setenv("HW_FAULT", "nowhere:EIO", 1), 0);
    bool enabled = hw_io_fault_unhit();
    hw_buf_text(&buf, "new");
    for (size_t i = 0; i < sizeof points / sizeof points[0]; i++) {
        char wanted[64];
        hw_err err = { 0 };
        room_put("a", "old");
        (void)snprintf(wanted, sizeof wanted, "%s:ENOSPC", points[i]);
        ck_assert_int_eq(setenv("HW_FAULT", wanted, 1), 0);
        hw_status status = write_text(room_path("a", path), &err);
        ck_assert_int_eq(status, enabled ? HW_ERR_IO : HW_OK);
        ck_assert(!enabled || hw_check_says(&err, HW_ERR_IO, "the disk is full"));
        ck_assert(room_holds("a", enabled ? "old" : "new"));
        ck_assert_int_eq(room_count(), 1);
        ck_assert(!hw_io_fault_unhit());
    }
    ck_assert_int_eq(setenv("HW_FAULT", "rename:ENOSUCH", 1), 0);
    ck_assert_int_eq(hw_io_fault("rename"), 0);
    ck_assert_int_eq(setenv("HW_FAULT", "renamed:EIO", 1), 0);
    ck_assert_int_eq(hw_io_fault("rename"), 0);
    ck_assert_int_eq(unsetenv("HW_FAULT"), 0);
}
END_TEST

/* Nothing that is there is written over unasked, a link that leads nowhere neither; and a name that
 * is free, or one that may be replaced, is no mistake. */
START_TEST(vacant)
{
    room_put("a", "old");
    hw_err err = { 0 };
    ck_assert_int_eq(hw_io_vacant(room_path("b", path), false, &err), HW_OK);
    ck_assert_int_eq(hw_io_vacant(room_path("a", path), true, &err), HW_OK);
    ck_assert_int_eq(hw_io_vacant(path, false, &err), HW_ERR_IO);
    ck_assert(hw_check_says(&err, HW_ERR_IO, "there already and stays as it is; add `--replace`"));
    ck_assert_ptr_nonnull(strstr(err.where, "a")); /* it may be cut */
    ck_assert(room_holds("a", "old"));
    ck_assert_int_eq(symlink("nowhere", room_path("link", path)), 0);
    ck_assert_int_eq(hw_io_vacant(path, false, NULL), HW_ERR_IO);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = { reading, reading_much, reading_without_memory, writing,
        not_writing, rights_and_links_stay, giving_up, full_output, output, plain_words, faults,
        vacant };
    return fixture_run("io", room_open, room_close, tests, sizeof tests / sizeof tests[0]);
}
