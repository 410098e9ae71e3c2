/* Runs compared size by size, and their words put together.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/rowshare.h"

#include <string.h>

#include "core/buf.h"

enum { LEAST_SHARED = 2 }; /* runs; a single one is not worth a heading */

/* The texts of all sizes, read side by side. */
typedef struct {
    const char **at; /* [count] */
    int count;
} texts;

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

static size_t digits(const char *text)
{
    return strspn(text, "0123456789");
}

/* Whether all texts go on with the same number. */
static bool same_number(const texts *t)
{
    size_t len = digits(t->at[0]);
    bool same = true;
    for (int i = 1; i < t->count; i++) {
        same = same && digits(t->at[i]) == len && memcmp(t->at[i], t->at[0], len) == 0;
    }
    return same;
}

static void say_numbers(texts *t, hw_buf *buf)
{
    bool same = same_number(t);
    for (int i = 0; i < t->count; i++) {
        size_t len = digits(t->at[i]);
        hw_buf_text(buf, i == 0 || same ? "" : i == 1 ? " (" : ", ");
        hw_buf_bytes(buf, t->at[i], i == 0 || !same ? len : 0);
        t->at[i] += len;
    }
    hw_buf_text(buf, same ? "" : ")");
}

/* Whether all texts go on with a number, or all with the same character. */
static bool alike(const texts *t)
{
    bool same = true;
    for (int i = 1; i < t->count; i++) {
        bool numbers = digit(*t->at[0]) && digit(*t->at[i]);
        same = same && (numbers || *t->at[i] == *t->at[0]);
    }
    return same;
}

/* One text for all; false where they differ in more than numbers. */
static bool merge(texts *t, hw_buf *buf)
{
    while (alike(t)) {
        if (*t->at[0] == '\0') {
            return true;
        }
        if (digit(*t->at[0])) {
            say_numbers(t, buf);
            continue;
        }
        hw_buf_bytes(buf, t->at[0], 1);
        for (int i = 0; i < t->count; i++) {
            t->at[i]++;
        }
    }
    return false;
}

static const hw_row *row_of(const hw_row_sizes *sizes, int size, int run)
{
    return &sizes->blocks[size].plan->rows[sizes->runs[size].list[run].first];
}

static bool same_dial(const hw_row *a, const hw_row *b)
{
    bool same = !(a->dial < b->dial) && !(a->dial > b->dial);
    return a->loosest == b->loosest && a->has_dial == b->has_dial && (!a->has_dial || same);
}

/* Stitches of a row in all pieces of a tube; 0 where there are no rounds. */
static int whole_round(const hw_row_sizes *sizes, int size, const hw_row *row)
{
    const hw_rowplan *plan = sizes->blocks[size].plan;
    bool round = plan->tube != NULL && row->number <= plan->round_rows;
    return round ? plan->tube->sts[row->number - 1] : 0;
}

/* Whether a run has the needles and stitches that its size began with. */
static bool as_begun(const hw_row_sizes *sizes, int size, int run)
{
    const hw_row *begun = row_of(sizes, size, 0);
    const hw_row *from = row_of(sizes, size, run);
    const hw_row *to = from + sizes->runs[size].list[run].count - 1;
    return from->first == begun->first && from->last == begun->last && from->sts == begun->sts &&
           to->sts == begun->sts && whole_round(sizes, size, to) == whole_round(sizes, size, begun);
}

/* Whether a run is the same in a size as in the first, but for its words. */
static bool same_rows(const hw_row_sizes *sizes, int size, int run)
{
    const hw_row *a = row_of(sizes, 0, run);
    const hw_row *b = row_of(sizes, size, run);
    return sizes->runs[size].list[run].count == sizes->runs[0].list[run].count &&
           a->number == b->number && a->kind == b->kind && a->part == HW_PART_WHOLE &&
           b->part == HW_PART_WHOLE && a->before == b->before && a->right_side == b->right_side &&
           same_dial(a, b) && as_begun(sizes, size, run);
}

static bool rows_shared(const hw_row_sizes *sizes, int run)
{
    bool shared = true;
    for (int i = 0; i < sizes->count && shared; i++) {
        shared = run < sizes->runs[i].count && same_rows(sizes, i, run);
    }
    return shared;
}

/* The words of a run in all sizes together; *shared tells whether they agree. */
static hw_status merged_words(const hw_row_sizes *sizes, int run, hw_arena *arena, bool *shared)
{
    hw_buf buf;
    texts t = { hw_arena_get(arena, (size_t)sizes->count, sizeof *t.at), sizes->count };
    bool refused = t.at == NULL;
    for (int i = 0; i < sizes->count && !refused; i++) {
        t.at[i] = hw_rowwords_run(sizes->blocks[i].plan, &sizes->runs[i].list[run], arena);
        refused = t.at[i] == NULL;
    }
    if (refused) {
        return HW_ERR_NOMEM;
    }
    hw_buf_init(&buf, &arena->mem, HW_BUF_LIMIT);
    *shared = merge(&t, &buf);
    hw_status status = hw_buf_status(&buf);
    if (status == HW_OK) {
        sizes->words[run] = buf.len > 0 ? hw_buf_keep(&buf, arena) : hw_arena_text(arena, "", 0);
        status = sizes->words[run] == NULL ? HW_ERR_NOMEM : HW_OK;
    }
    hw_buf_release(&buf);
    return status;
}

static int blocks_of_piece(const hw_row_block *blocks, int count)
{
    int same = 1;
    while (same < count && strcmp(blocks[same].piece, blocks[0].piece) == 0) {
        same++;
    }
    return same;
}

static hw_status find_shared(hw_row_sizes *sizes, hw_arena *arena)
{
    hw_status status = HW_OK;
    bool shared = sizes->count > 1;
    for (int run = 0; shared && status == HW_OK && rows_shared(sizes, run); run++) {
        status = merged_words(sizes, run, arena, &shared);
        sizes->shared += status == HW_OK && shared ? 1 : 0;
    }
    sizes->shared = sizes->shared < LEAST_SHARED ? 0 : sizes->shared;
    return status;
}

hw_status hw_row_sizes_of(const hw_row_block *blocks, int count, hw_arena *arena, hw_row_sizes *out)
{
    hw_row_sizes sizes = { .blocks = blocks, .count = blocks_of_piece(blocks, count) };
    hw_row_runs *runs = hw_arena_get(arena, (size_t)sizes.count, sizeof *runs);
    hw_status status = runs == NULL ? HW_ERR_NOMEM : HW_OK;
    for (int i = 0; i < sizes.count && status == HW_OK; i++) {
        status = hw_rowplan_runs(blocks[i].plan, arena, &runs[i]);
    }
    if (status == HW_OK) {
        sizes.runs = runs;
        sizes.words = hw_arena_get(arena, (size_t)runs[0].count, sizeof *sizes.words);
        status = sizes.words == NULL ? HW_ERR_NOMEM : find_shared(&sizes, arena);
    }
    if (status == HW_OK) {
        *out = sizes;
    }
    return status;
}

int hw_row_sizes_next(const hw_row_sizes *sizes)
{
    const hw_row_run *last = &sizes->runs[0].list[sizes->shared - 1];
    return sizes->blocks[0].plan->rows[last->first].number + last->count;
}

static bool same_finding(const hw_row_finding *a, const hw_row_finding *b)
{
    return a->kind == b->kind && a->number == b->number && a->band == b->band;
}

bool hw_row_sizes_finding(const hw_row_sizes *sizes, const hw_row_finding *finding)
{
    bool all = sizes->shared > 0 && finding->number < hw_row_sizes_next(sizes);
    for (int i = 0; i < sizes->count && all; i++) {
        const hw_rowplan *plan = sizes->blocks[i].plan;
        bool found = false;
        for (int k = 0; k < plan->finding_count; k++) {
            found = found || same_finding(&plan->findings[k], finding);
        }
        all = found;
    }
    return all;
}
