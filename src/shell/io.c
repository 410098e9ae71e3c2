/* Files through the system's calls, so that each can be checked and made to fail.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifdef HAVE_CONFIG_H
#include "config.h"
#endif
#ifndef HW_FAULTS
#define HW_FAULTS 0
#endif

/* POSIX.1-2008 with its XSI part, for realpath. */
#define _XOPEN_SOURCE 700

#include "shell/io.h"

#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { CHUNK = 65536 };

static const char suffix[] = ".XXXXXX";

static const char *const undone[] = {
    [HW_IO_READING] = "cannot be read",
    [HW_IO_WRITING] = "cannot be written",
};
static const struct {
    int number;
    const char *name;     /* as a fault names it */
    const char *words[2]; /* for reading and writing; the same for both where one is NULL */
} causes[] = {
    { ENOENT, "ENOENT", { "there is no such file", "there is no such folder" } },
    { EACCES, "EACCES", { "you may not read it", "you may not write there" } },
    { EPERM, "EPERM", { "you may not read it", "you may not write there" } },
    { EISDIR, "EISDIR", { "this is a folder", NULL } },
    { ENOTDIR, "ENOTDIR", { "a part of its path is not a folder", NULL } },
    { ENOSPC, "ENOSPC", { "the disk is full", NULL } },
    { EDQUOT, "EDQUOT", { "your share of the disk is full", NULL } },
    { EFBIG, "EFBIG", { "the file would be larger than it may be", NULL } },
    { EROFS, "EROFS", { "that disk can only be read", NULL } },
    { EIO, "EIO", { "the disk reports a fault", NULL } },
    { EXDEV, "EXDEV", { "the file would have to move to another disk", NULL } },
    { ENAMETOOLONG, "ENAMETOOLONG", { "its name is too long", NULL } },
    { ELOOP, "ELOOP", { "its links lead in a circle", NULL } },
    { EMFILE, "EMFILE", { "too many files are open", NULL } },
    { ENFILE, "ENFILE", { "too many files are open", NULL } },
    { ENOMEM, "ENOMEM", { "the computer has no memory left for this", NULL } },
    { EBUSY, "EBUSY", { "another program is using it", NULL } },
    { ETXTBSY, "ETXTBSY", { "another program is using it", NULL } },
    { EPIPE, "EPIPE", { "the program that reads it has stopped", NULL } },
    { EBADF, "EBADF", { "it is closed", NULL } },
    { EINVAL, "EINVAL", { "this is no ordinary file", NULL } },
};
enum { CAUSES = sizeof causes / sizeof causes[0] };

/* A fault is named by one variable for the whole run; kept is how often its point was come to, and
 * whether it struck. */
static bool fault_hit = false;
static int fault_comes = 0;

static const char *fault_wanted(void)
{
    return HW_FAULTS ? getenv("HW_FAULT") : NULL;
}

int hw_io_fault(const char *point)
{
    const char *wanted = fault_wanted();
    size_t len = strlen(point);
    if (wanted == NULL || strncmp(wanted, point, len) != 0 || wanted[len] != ':') {
        return 0;
    }
    wanted += len + 1;
    len = strcspn(wanted, ":");
    fault_comes++;
    if (wanted[len] == ':' && strtol(wanted + len + 1, NULL, 10) != fault_comes) {
        return 0;
    }
    for (int i = 0; i < CAUSES; i++) {
        if (strlen(causes[i].name) == len && strncmp(causes[i].name, wanted, len) == 0) {
            fault_hit = true;
            return causes[i].number;
        }
    }
    return 0;
}

bool hw_io_fault_unhit(void)
{
    return fault_wanted() != NULL && !fault_hit;
}

/* True, with errno set, where a test wants the call to fail. */
static bool faulty(const char *point)
{
    int number = hw_io_fault(point);
    if (number != 0) {
        errno = number;
    }
    return number != 0;
}

static const char *words_for(hw_io_doing doing, int number)
{
    for (int i = 0; i < CAUSES; i++) {
        if (causes[i].number == number) {
            const char *own = causes[i].words[doing];
            return own != NULL ? own : causes[i].words[HW_IO_READING];
        }
    }
    return strerror(number); /* the system's own words are better than none */
}

hw_status hw_io_fail(hw_err *err, const char *path, hw_io_doing doing, int number)
{
    hw_err_where(err, path);
    return hw_err_set(err, HW_ERR_IO, "it %s: %s", undone[doing], words_for(doing, number));
}

/* Bytes read, 0 at the end, -1 on failure. */
static ssize_t read_some(int descriptor, char *room, size_t size)
{
    ssize_t got = -1;
    do {
        got = faulty("read") ? -1 : read(descriptor, room, size);
    } while (got < 0 && errno == EINTR);
    return got;
}

/* Into buf until the end or until it is full; 0 or an errno. */
static int read_all(int descriptor, hw_buf *buf)
{
    char chunk[CHUNK];
    ssize_t got = 1;
    while (got > 0 && hw_buf_status(buf) == HW_OK) {
        got = read_some(descriptor, chunk, sizeof chunk);
        if (got < 0) {
            return errno;
        }
        hw_buf_bytes(buf, chunk, (size_t)got);
    }
    return 0;
}

static int open_for_reading(const char *path, int *descriptor)
{
    struct stat facts;
    *descriptor = faulty("open") ? -1 : open(path, O_RDONLY | O_CLOEXEC);
    if (*descriptor < 0) {
        return errno;
    }
    if (fstat(*descriptor, &facts) == 0 && S_ISDIR(facts.st_mode)) {
        (void)close(*descriptor); /* nothing was written */
        return EISDIR;
    }
    return 0;
}

static hw_status keep_text(const hw_buf *buf, hw_arena *arena, hw_io_text *out)
{
    if (hw_buf_status(buf) != HW_OK) {
        return hw_buf_status(buf);
    }
    const char *text = hw_buf_keep(buf, arena);
    if (text == NULL) {
        return HW_ERR_NOMEM;
    }
    *out = (hw_io_text){ .text = text, .len = buf->len };
    return HW_OK;
}

hw_status hw_io_read(const char *path, hw_arena *arena, size_t limit, hw_io_text *out, hw_err *err)
{
    int descriptor = -1;
    int number = open_for_reading(path, &descriptor);
    if (number != 0) {
        return hw_io_fail(err, path, HW_IO_READING, number);
    }
    hw_buf buf;
    hw_buf_init(&buf, &arena->mem, limit);
    number = read_all(descriptor, &buf);
    (void)close(descriptor); /* nothing was written */
    hw_status status =
        number != 0 ? hw_io_fail(err, path, HW_IO_READING, number) : keep_text(&buf, arena, out);
    hw_buf_release(&buf);
    if (status == HW_ERR_LIMIT) {
        hw_err_where(err, path);
        return hw_err_set(err, status,
            "the file is too large: at most %zu bytes are read. Is it the right file?", limit);
    }
    if (status == HW_ERR_NOMEM) {
        hw_err_where(err, path);
        return hw_err_set(err, status, "the computer has no memory left to read this file");
    }
    return status;
}

/* Where a path leads, and the rights that its file has or would get; 0 or an errno. */
static int resolve(const char *path, char *resolved, mode_t *mode)
{
    struct stat facts;
    mode_t mask = umask(0);
    (void)umask(mask); /* always succeeds */
    *mode = 0666 & ~mask;
    if (stat(path, &facts) != 0) {
        if (errno != ENOENT) {
            return errno;
        }
        if (strlen(path) >= HW_IO_PATH_ROOM) {
            return ENAMETOOLONG;
        }
        memcpy(resolved, path, strlen(path) + 1);
        return 0;
    }
    if (!S_ISREG(facts.st_mode)) {
        return S_ISDIR(facts.st_mode) ? EISDIR : EINVAL;
    }
    if (access(path, W_OK) != 0) {
        return errno;
    }
    *mode = facts.st_mode & 0777;
    char *found = realpath(path, NULL);
    if (found == NULL) {
        return errno;
    }
    size_t len = strlen(found);
    if (len < HW_IO_PATH_ROOM) {
        memcpy(resolved, found, len + 1);
    }
    free(found);
    return len < HW_IO_PATH_ROOM ? 0 : ENAMETOOLONG;
}

/* The temporary file; 0 or an errno. */
static int open_temporary(hw_io_target *target, mode_t mode)
{
    size_t len = strlen(target->path);
    if (len + sizeof suffix > sizeof target->temporary) {
        return ENAMETOOLONG;
    }
    memcpy(target->temporary, target->path, len);
    memcpy(target->temporary + len, suffix, sizeof suffix);
    target->descriptor = faulty("open") ? -1 : mkstemp(target->temporary);
    if (target->descriptor < 0) {
        target->temporary[0] = '\0';
        return errno;
    }
    return fchmod(target->descriptor, mode) == 0 ? 0 : errno;
}

hw_status hw_io_begin(hw_io_target *target, const char *path, hw_err *err)
{
    mode_t mode = 0;
    target->told = path;
    target->path[0] = target->temporary[0] = target->kept[0] = '\0';
    target->fresh = false;
    target->descriptor = -1;
    int number = resolve(path, target->path, &mode);
    if (number == 0) {
        number = open_temporary(target, mode);
    }
    if (number != 0) {
        hw_io_abort(target);
        return hw_io_fail(err, path, HW_IO_WRITING, number);
    }
    return HW_OK;
}

/* 0 or an errno. */
static int write_all(int descriptor, const char *bytes, size_t len)
{
    while (len > 0) {
        ssize_t put = faulty("write") ? -1 : write(descriptor, bytes, len);
        if (put < 0 && errno != EINTR) {
            return errno;
        }
        if (put > 0) {
            bytes += put;
            len -= (size_t)put;
        }
    }
    return 0;
}

hw_status hw_io_put(hw_io_target *target, const char *bytes, size_t len, hw_err *err)
{
    int number = write_all(target->descriptor, bytes, len);
    return number == 0 ? HW_OK : hw_io_fail(err, target->told, HW_IO_WRITING, number);
}

/* Close exactly once, whatever it says. */
static int close_target(hw_io_target *target)
{
    int descriptor = target->descriptor;
    target->descriptor = -1;
    int result = close(descriptor);
    return faulty("close") || result != 0 ? errno : 0;
}

hw_status hw_io_finish(hw_io_target *target, hw_err *err)
{
    assert(target->descriptor >= 0);
    int number = faulty("fsync") || fsync(target->descriptor) != 0 ? errno : 0;
    int closed = close_target(target);
    number = number != 0 ? number : closed;
    return number == 0 ? HW_OK : hw_io_fail(err, target->told, HW_IO_WRITING, number);
}

void hw_io_keep(hw_io_target *target)
{
    /* No chance letters in it: what a run left behind when the computer stopped is in the way here,
     * and goes. A name of our own, so that it is nobody else's file. */
    static const char ending[] = ".hemwright-old";
    struct stat facts;
    size_t len = strlen(target->path);
    target->fresh = lstat(target->path, &facts) != 0;
    if (target->fresh || len + sizeof ending > sizeof target->kept) {
        return;
    }
    memcpy(target->kept, target->path, len);
    memcpy(target->kept + len, ending, sizeof ending);
    bool kept = link(target->path, target->kept) == 0;
    if (!kept && errno == EEXIST && unlink(target->kept) == 0) {
        kept = link(target->path, target->kept) == 0;
    }
    if (!kept) {
        target->kept[0] = '\0';
    }
}

hw_status hw_io_place(hw_io_target *target, hw_err *err)
{
    assert(target->descriptor < 0 && target->temporary[0] != '\0');
    if (faulty("rename") || rename(target->temporary, target->path) != 0) {
        int number = errno;
        hw_io_settle(target);
        hw_io_abort(target);
        return hw_io_fail(err, target->told, HW_IO_WRITING, number);
    }
    target->temporary[0] = '\0';
    return HW_OK;
}

void hw_io_settle(hw_io_target *target)
{
    if (target->kept[0] != '\0') {
        (void)unlink(target->kept); /* a second name that stays does no harm */
        target->kept[0] = '\0';
    }
}

void hw_io_undo(hw_io_target *target)
{
    if (target->kept[0] != '\0') {
        (void)rename(target->kept, target->path); /* an error is on its way already */
        target->kept[0] = '\0';
    } else if (target->fresh) {
        (void)unlink(target->path); /* as above */
    }
}

void hw_io_abort(hw_io_target *target)
{
    if (target->descriptor >= 0) {
        (void)close(target->descriptor); /* the file goes anyway */
        target->descriptor = -1;
    }
    if (target->temporary[0] != '\0') {
        (void)unlink(target->temporary); /* an error is on its way already */
        target->temporary[0] = '\0';
    }
}

hw_status hw_io_stdout(const hw_buf *buf, hw_err *err)
{
    bool failed = faulty("stdout");
    if (!failed && buf->len > 0) {
        failed = fwrite(buf->text, 1, buf->len, stdout) != buf->len;
    }
    if (failed || fflush(stdout) != 0) {
        return hw_io_fail(err, "output", HW_IO_WRITING, errno);
    }
    return HW_OK;
}

hw_status hw_io_stdout_close(hw_err *err)
{
    return fclose(stdout) == 0 ? HW_OK : hw_io_fail(err, "output", HW_IO_WRITING, errno);
}

hw_status hw_io_vacant(const char *path, bool replace, hw_err *err)
{
    struct stat about;
    if (replace || lstat(path, &about) != 0) {
        return HW_OK;
    }
    hw_err_where(err, path);
    return hw_err_set(err, HW_ERR_IO, "%s",
        "this file is there already and stays as it is; add `--replace` to write over it, or "
        "write under another name or into another folder");
}
