/* Words into edges: the longest piece that fits, then the edge, then what is left is a stretch.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/edges.h"

#include <string.h>

#include "core/edge.h"
#include "core/words.h"
#include "read/datafile.h"

_Static_assert(HW_MAX_PARTS == 6, "a message below says six");

static const char end_word[] = "end"; /* behind the name of a trim */

#define USUAL_WITHIN_CM 1.0 /* as the usual tolerance [T1] */
#define USUAL_DEPTH_CM  2.0 /* of a trim: own choice [O1] */

typedef struct {
    const hw_corners_reading *with;
    const hw_node *node;         /* the text that is read, for its place */
    const hw_trim *trims;        /* all of the garment, by name */
    int trim_count, above;       /* and how many stand above what is read; -1: it is a join */
    const hw_joint_edges *joins; /* of a join: those above it, and behind them itself so far */
    int join_count;              /* above it */
    hw_err *err;
} reading;

/* Part of the node's text. */
typedef struct {
    const char *text;
    size_t len;
} span;

static hw_status no_memory(const reading *r)
{
    return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the garment");
}

/* Where in the file a part of the node's text stands. */
static int column_of(const reading *r, span at)
{
    return r->node->column + hw_words_letters(r->node->text, (size_t)(at.text - r->node->text));
}

static hw_status fail(const reading *r, hw_status code, span at, const char *why)
{
    int bytes = hw_words_cut(at.text, 60);
    bytes = (size_t)bytes > at.len ? (int)at.len : bytes;
    (void)hw_err_set(r->err, code, "`%.*s`: %s", bytes, at.text, why);
    return hw_err_place(r->err, code, r->node->line, column_of(r, at));
}

/* Does a span begin with a word that ends there or before a blank? Takes it off. */
static bool take(span *from, const char *word)
{
    size_t n = strlen(word);
    if (from->len < n || memcmp(from->text, word, n) != 0 ||
        (from->len > n && from->text[n] != ' ')) {
        return false;
    }
    from->text += n;
    from->len -= n;
    while (from->len > 0 && *from->text == ' ') {
        from->text++;
        from->len--;
    }
    return true;
}

static int take_piece(const hw_garment *garment, span *from)
{
    int found = -1;
    for (int i = 0; i < garment->piece_count; i++) {
        span rest = *from;
        const char *name = garment->pieces[i].name;
        bool longer = found < 0 || strlen(name) > strlen(garment->pieces[found].name);
        if (longer && take(&rest, name)) {
            found = i;
        }
    }
    if (found >= 0) {
        (void)take(from, garment->pieces[found].name);
    }
    return found;
}

/* The trim whose end the words name, or -1. */
static int find_end(const reading *r, span words)
{
    for (int i = 0; i < r->trim_count; i++) {
        span rest = words;
        if (take(&rest, r->trims[i].name) && take(&rest, end_word) && rest.len == 0) {
            return i;
        }
    }
    return -1;
}

/* Whether the last word says that a trim is meant. */
static bool says_end(span words)
{
    size_t n = strlen(end_word);
    return words.len > n && words.text[words.len - n - 1] == ' ' &&
           memcmp(words.text + words.len - n, end_word, n) == 0;
}

/* Whether two parts have some of an edge in common. */
static bool overlap(const hw_edge_part *a, const hw_edge_part *b)
{
    bool same = a->piece >= 0 && a->piece == b->piece && a->edge == b->edge;
    return same &&
           (a->stretch == NULL || b->stretch == NULL || strcmp(a->stretch, b->stretch) == 0);
}

static hw_status add_part(const reading *r, hw_edge_part part, span at, hw_edge_run *run)
{
    for (int i = 0; i < run->count && r->above >= 0; i++) {
        if (overlap(&run->parts[i], &part)) {
            return fail(r, HW_ERR_REPEATED, at,
                "stitches are picked up along this edge already; a trim names each edge once");
        }
    }
    part.line = r->node->line;
    part.column = column_of(r, at);
    if (run->count == HW_MAX_PARTS) {
        return fail(r, HW_ERR_LIMIT, at, "these are too many edges in a row; write at most six");
    }
    run->parts[run->count++] = part;
    return HW_OK;
}

/* Which edge the words name; HW_EDGE_COUNT for both edges of the neck. */
static bool take_edge(span *from, hw_edge *edge)
{
    static const hw_edge order[] = { HW_EDGE_NECK_LEFT, HW_EDGE_NECK_RIGHT, HW_EDGE_LEFT,
        HW_EDGE_RIGHT, HW_EDGE_TOP };
    for (size_t i = 0; i < sizeof order / sizeof order[0]; i++) {
        if (take(from, hw_edge_name(order[i]))) {
            *edge = order[i];
            return true;
        }
    }
    *edge = HW_EDGE_COUNT;
    return take(from, "neck");
}

/* Where a separator begins in a span, or its end. */
static size_t until(span in, const char *separator)
{
    size_t n = strlen(separator);
    for (size_t i = 0; i + n <= in.len; i++) {
        if (memcmp(in.text + i, separator, n) == 0) {
            return i;
        }
    }
    return in.len;
}

/* What is no edge and no stretch of one: in a join perhaps a length that is not written so. */
static hw_status no_edge(const reading *r, span at, const char *why)
{
    static const char *const before[] = { ",", " within " };
    for (size_t i = 0; i < sizeof before / sizeof before[0] && r->above < 0; i++) {
        span rest = at;
        size_t skip = until(at, before[i]);
        if (skip < at.len) {
            rest.text += skip + 1;
            rest.len -= skip + 1;
            (void)take(&rest, ""); /* blanks */
            return fail(r, HW_ERR_SYNTAX, rest,
                "how far edges may differ is written behind a comma, as `, within 2 cm`");
        }
    }
    return fail(r, HW_ERR_UNKNOWN, at, why);
}

static hw_status check_part(const reading *r, const hw_edge_part *part, span at)
{
    const hw_outline_rule *outline = r->with->garment->pieces[part->piece].outline;
    if (outline == NULL) {
        return fail(r, HW_ERR_UNKNOWN, at, "this piece has no outline; draw it first");
    }
    bool neck = part->edge == HW_EDGE_NECK_LEFT || part->edge == HW_EDGE_NECK_RIGHT;
    if (neck && outline->neck.count == 0) {
        return fail(r, HW_ERR_UNKNOWN, at, "this piece's outline has no `neck`; draw it first");
    }
    if (part->stretch != NULL && !hw_corners_has(outline, part->edge, part->stretch)) {
        return no_edge(r, at,
            "this edge has no stretch of that name; look at its corners, where each stretch is "
            "named");
    }
    return HW_OK;
}

/* What is sewn is sewn once: the line in which a join has that edge or some of it already, or 0. */
static int sewn_in(const reading *r, const hw_edge_part *part)
{
    for (int i = 0; r->above < 0 && i <= 2 * r->join_count + 1; i++) {
        const hw_edge_run *run = &r->joins[i / 2].ends[i % 2];
        for (int k = 0; k < run->count; k++) {
            if (overlap(&run->parts[k], part)) {
                return run->line;
            }
        }
    }
    return 0;
}

static hw_status check_sewn(const reading *r, const hw_edge_part *part, span at)
{
    int line = sewn_in(r, part);
    if (line == 0) {
        return HW_OK;
    }
    const char *why = hw_arena_format(r->with->arena,
        "the join in line %d sews this edge or some of it already; take it out in one of the two",
        line);
    return why == NULL ? no_memory(r) : fail(r, HW_ERR_REPEATED, at, why);
}

/* What keeps a trim from being picked up over the end of another; NULL: nothing. */
static const char *end_fault(const reading *r, int trim)
{
    if (r->above < 0) {
        return "a join sews edges of pieces; name this end under `along` of the trim that is "
               "picked "
               "up over it";
    }
    if (trim == r->above) {
        return "this is the trim's own end; take it out";
    }
    if (r->trims[trim].round) {
        return "this trim is `round`, so it has no end; take it out here, or `round` there";
    }
    return trim < r->above ? NULL
                           : "this trim stands further down, so it is not knitted yet; write it "
                             "above the trim that is picked up over its end";
}

static hw_status read_end(const reading *r, int trim, span words, hw_edge_run *run)
{
    const char *fault = end_fault(r, trim);
    if (fault != NULL) {
        return fail(r, HW_ERR_UNKNOWN, words, fault);
    }
    return add_part(r, (hw_edge_part){ .piece = -1, .trim = trim }, words, run);
}

/* Piece and edge; what is left of the words is a stretch. */
static hw_status take_names(const reading *r, span words, span *rest, hw_edge_part *part)
{
    static const char no_trim[] =
        "no trim of this garment is called so; before `end` write the name of one that stands "
        "above";
    bool end = r->above >= 0 && says_end(words);
    part->piece = take_piece(r->with->garment, rest);
    if (part->piece < 0) {
        return fail(
            r, HW_ERR_UNKNOWN, words, end ? no_trim : "no piece of this garment is called so");
    }
    if (!take_edge(rest, &part->edge)) {
        return no_edge(r, words,
            end ? no_trim
                : "behind the piece write `left`, `right`, `neck` or `top`, and perhaps a stretch");
    }
    return HW_OK;
}

static hw_status read_part(const reading *r, span words, hw_edge_run *run)
{
    span rest = words;
    hw_edge_part part = { .piece = -1 };
    int trim = find_end(r, words);
    if (trim >= 0) {
        return read_end(r, trim, words, run);
    }
    hw_status named = take_names(r, words, &rest, &part);
    if (named != HW_OK) {
        return named;
    }
    if (rest.len > 0) {
        part.stretch = hw_arena_text(r->with->arena, rest.text, rest.len);
        if (part.stretch == NULL) {
            return no_memory(r);
        }
    }
    bool both = part.edge == HW_EDGE_COUNT;
    part.edge = both ? HW_EDGE_NECK_LEFT : part.edge;
    part.with_next = both;
    hw_status status = check_part(r, &part, words);
    for (int i = 0; i < (both ? 2 : 1) && status == HW_OK; i++) {
        part.edge = i == 1 ? HW_EDGE_NECK_RIGHT : part.edge;
        part.with_next = both && i == 0;
        status = check_sewn(r, &part, words);
        status = status == HW_OK ? add_part(r, part, words, run) : status;
    }
    return status;
}

static hw_status read_run(const reading *r, span words, hw_edge_run *run)
{
    static const char and[] = " and ";
    run->line = r->node->line;
    for (;;) {
        size_t len = until(words, and);
        hw_status status = read_part(r, (span){ words.text, len }, run);
        if (status != HW_OK || len == words.len) {
            return status;
        }
        words.text += len + strlen(and);
        words.len -= len + strlen(and);
    }
}

static hw_status read_within(const reading *r, span *words, double *out_cm)
{
    static const char comma[] = ", within ";
    size_t at = until(*words, comma);
    *out_cm = USUAL_WITHIN_CM;
    if (at == words->len) {
        return HW_OK;
    }
    span length = { words->text + at + strlen(comma), words->len - at - strlen(comma) };
    words->len = at;
    bool sound =
        hw_length_parse(length.text, length.len, r->with->usual, out_cm) == HW_OK && *out_cm >= 0;
    return sound ? HW_OK
                 : fail(r, HW_ERR_SYNTAX, length, "write a length here, such as `within 2 cm`");
}

static hw_status read_join(const reading *r, hw_joint_edges *out)
{
    static const char to[] = " to ";
    span words = { r->node->text, r->node->len };
    hw_status status = read_within(r, &words, &out->within_cm);
    out->text = hw_arena_text(r->with->arena, words.text, words.len);
    if (status == HW_OK && out->text == NULL) {
        return no_memory(r);
    }
    size_t first = until(words, to);
    if (status == HW_OK && first == words.len) {
        status = fail(r, HW_ERR_SYNTAX, words, "write it as `front right side to back left side`");
    }
    if (status == HW_OK) {
        status = read_run(r, (span){ words.text, first }, &out->ends[0]);
    }
    size_t skip = first + strlen(to);
    return status == HW_OK
               ? read_run(r, (span){ words.text + skip, words.len - skip }, &out->ends[1])
               : status;
}

/* The words of a list, or the one word that stands in its place. */
static const hw_node *first_word(const hw_node *list)
{
    return list->kind == HW_NODE_WORD ? list : list->first;
}

hw_status hw_edges_joins(
    const hw_corners_reading *with, const hw_node *list, hw_garment *garment, hw_err *err)
{
    reading r = { .with = with,
        .node = list,
        .trims = garment->trims,
        .trim_count = garment->trim_count,
        .above = -1,
        .err = err };
    if (list == NULL) {
        return HW_OK;
    }
    if (list->count > HW_MAX_SEAMS) {
        (void)hw_err_set(err, HW_ERR_LIMIT, "%d joins are too many; a garment has at most %d",
            list->count, HW_MAX_SEAMS);
        return hw_err_place(err, HW_ERR_LIMIT, list->line, list->column);
    }
    hw_joint_edges *joins = hw_arena_get(with->arena, HW_MAX_SEAMS, sizeof *joins);
    if (joins == NULL) {
        return no_memory(&r);
    }
    r.joins = joins;
    for (r.node = first_word(list); r.node != NULL; r.node = r.node->next) {
        hw_status status = read_join(&r, &joins[r.join_count]);
        r.join_count++;
        if (status != HW_OK) {
            return status;
        }
        if (r.node == list) {
            break;
        }
    }
    garment->joins = joins;
    garment->join_count = r.join_count;
    return HW_OK;
}

/* What a trim says beside its edges and its depth. */
static hw_trim begin_trim(const hw_node *node)
{
    return (hw_trim){ .name = node->key,
        .depth = { .constant_cm = USUAL_DEPTH_CM },
        .round = hw_node_number(node, "round", 0) > 0,
        .casing = hw_node_find(node, "elastic") != NULL,
        .line = node->key_line };
}

/* A trim is nothing without an edge of a piece. */
static hw_status check_edges(const reading *r, const hw_node *along, const hw_edge_run *run)
{
    for (int i = 0; i < run->count; i++) {
        if (run->parts[i].piece >= 0) {
            return HW_OK;
        }
    }
    (void)hw_err_set(r->err, HW_ERR_SYNTAX, "%s",
        "a trim runs along an edge of a piece; name the edge too, beside the end of the other "
        "trim");
    return hw_err_place(r->err, HW_ERR_SYNTAX, along->line, along->column);
}

/* Only a ring holds what is drawn into it. */
static hw_status read_elastic(const reading *r, const hw_node *node, hw_trim *out)
{
    if (node == NULL) {
        return HW_OK;
    }
    if (!out->round) {
        (void)hw_err_set(r->err, HW_ERR_SYNTAX, "%s",
            "an elastic is drawn into a ring; write `round: yes` as well, or take `elastic` out");
        return hw_err_place(r->err, HW_ERR_SYNTAX, node->key_line, node->key_column);
    }
    return hw_corners_rule(r->with, node, &out->elastic, r->err);
}

static hw_status read_trim(const reading *from, const hw_node *node, hw_trim *out)
{
    reading r = *from;
    const hw_node *along = hw_node_find(node, "along");
    const hw_node *depth = hw_node_find(node, "depth");
    hw_status status = HW_OK;
    for (r.node = first_word(along); r.node != NULL && status == HW_OK; r.node = r.node->next) {
        status = read_run(&r, (span){ r.node->text, r.node->len }, &out->along);
        if (r.node == along) {
            break;
        }
    }
    status = status == HW_OK ? check_edges(&r, along, &out->along) : status;
    if (status == HW_OK && depth != NULL) {
        status = hw_corners_rule(r.with, depth, &out->depth, r.err);
    }
    return status == HW_OK ? read_elastic(&r, hw_node_find(node, "elastic"), out) : status;
}

hw_status hw_edges_trims(
    const hw_corners_reading *with, const hw_node *trims, hw_garment *garment, hw_err *err)
{
    reading r = { .with = with, .node = trims, .err = err };
    if (trims == NULL) {
        return HW_OK;
    }
    if (trims->count > HW_MAX_TRIMS) {
        (void)hw_err_set(err, HW_ERR_LIMIT, "%d trims are too many; a garment has at most %d",
            trims->count, HW_MAX_TRIMS);
        return hw_err_place(err, HW_ERR_LIMIT, trims->line, trims->column);
    }
    hw_trim *list = hw_arena_get(with->arena, (size_t)trims->count, sizeof *list);
    if (list == NULL) {
        return no_memory(&r);
    }
    r.trims = list;
    for (const hw_node *node = trims->first; node != NULL; node = node->next) {
        list[r.trim_count++] = begin_trim(node);
    }
    for (const hw_node *node = trims->first; node != NULL; node = node->next, r.above++) {
        hw_status status = read_trim(&r, node, &list[r.above]);
        if (status != HW_OK) {
            return status;
        }
    }
    garment->trims = list;
    garment->trim_count = r.trim_count;
    return HW_OK;
}
