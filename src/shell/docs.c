/* A list of files under way; each is on the disk under another name until all are.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "shell/docs.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/status.h"

struct hw_doc {
    struct hw_doc *next, *before;
    const char *path; /* as it is told */
    hw_io_target target;
    hw_err *err;
};

void hw_docs_begin(hw_docs *docs, const hw_opts *opts, hw_arena *arena, hw_err *err)
{
    *docs = (hw_docs){ .opts = opts, .arena = arena, .err = err };
}

const char *hw_docs_path(const hw_docs *docs, const char *ending)
{
    const char *file = docs->opts->args[0];
    const char *into = docs->opts->values[HW_OPT_INTO];
    const char *slash = strrchr(file, '/');
    const char *base = slash != NULL ? slash + 1 : file;
    const char *dot = strrchr(base, '.');
    int len = dot != NULL && dot != base ? (int)(dot - base) : (int)strlen(base);
    return hw_arena_format(docs->arena, "%s%s%.*s%s", into != NULL ? into : "",
        into != NULL ? "/" : "", len, base, ending);
}

hw_status hw_docs_folder(hw_docs *docs)
{
    const char *into = docs->opts->values[HW_OPT_INTO];
    if (into == NULL) {
        return HW_OK;
    }
    if (mkdir(into, 0777) == 0) {
        docs->folder_made = true;
        return HW_OK;
    }
    return errno == EEXIST ? HW_OK : hw_io_fail(docs->err, into, HW_IO_WRITING, errno);
}

static hw_status no_memory(const hw_docs *docs)
{
    return hw_err_set(
        docs->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the documents");
}

static hw_status take(void *context, const char *bytes, size_t len)
{
    struct hw_doc *doc = context;
    return hw_io_put(&doc->target, bytes, len, doc->err);
}

hw_status hw_docs_open(hw_docs *docs, const char *path, hw_buf *buf)
{
    hw_buf_init(buf, &docs->arena->mem, HW_BUF_LIMIT);
    docs->under_way = NULL;
    struct hw_doc *doc = path == NULL ? NULL : hw_arena_get(docs->arena, 1, sizeof *doc);
    if (doc == NULL) {
        return no_memory(docs);
    }
    *doc = (struct hw_doc){ .before = docs->last, .path = path, .err = docs->err };
    hw_status status = hw_io_vacant(path, docs->opts->values[HW_OPT_REPLACE] != NULL, docs->err);
    status = status == HW_OK ? hw_io_begin(&doc->target, path, docs->err) : status;
    if (status != HW_OK) {
        return status;
    }
    if (docs->last != NULL) {
        docs->last->next = doc;
    } else {
        docs->first = doc;
    }
    docs->last = docs->under_way = doc;
    hw_buf_pass_on(buf, take, doc);
    return HW_OK;
}

const hw_io_target *hw_docs_target(const hw_docs *docs)
{
    return &docs->under_way->target;
}

hw_status hw_docs_close(hw_docs *docs, hw_buf *buf, hw_status status)
{
    struct hw_doc *doc = docs->under_way;
    docs->under_way = NULL;
    if (status == HW_OK) {
        hw_buf_flush(buf);
        status = hw_buf_status(buf);
    }
    hw_buf_release(buf);
    if (status == HW_OK) {
        return hw_io_finish(&doc->target, docs->err);
    }
    if (doc != NULL) {
        hw_err_where(docs->err, doc->path);
    }
    if (status == HW_ERR_LIMIT) {
        return hw_err_set(docs->err, status,
            "it would be larger than %d MB: leave out sizes, or plan one alone with `--size`",
            HW_BUF_LIMIT >> 20);
    }
    return status == HW_ERR_NOMEM ? no_memory(docs)
                                  : hw_err_set(docs->err, status, "%s", hw_status_sentence(status));
}

/* Take away what is not in its place, and out again what is. */
static void give_up(const hw_docs *docs, struct hw_doc *placed)
{
    for (struct hw_doc *doc = docs->last; doc != NULL && doc != placed; doc = doc->before) {
        hw_io_abort(&doc->target);
    }
    for (; placed != NULL; placed = placed->before) {
        hw_io_undo(&placed->target);
    }
    if (docs->folder_made) {
        (void)rmdir(docs->opts->values[HW_OPT_INTO]); /* it stays where others use it */
    }
}

hw_status hw_docs_end(hw_docs *docs, hw_status status, hw_buf *out)
{
    struct hw_doc *placed = NULL;
    for (struct hw_doc *doc = docs->first; doc != NULL && status == HW_OK; doc = doc->next) {
        if (doc->next != NULL) { /* nothing can fail behind the last */
            hw_io_keep(&doc->target);
        }
        status = hw_io_place(&doc->target, docs->err);
        placed = status == HW_OK ? doc : placed;
    }
    if (status != HW_OK) {
        give_up(docs, placed);
        return status;
    }
    for (struct hw_doc *doc = docs->first; doc != NULL; doc = doc->next) {
        hw_io_settle(&doc->target);
        hw_buf_format(out, "Written: %s\n", doc->path);
    }
    return HW_OK;
}
