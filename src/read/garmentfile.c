/* A checked garment file into rules, pieces and seams.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/garmentfile.h"

#include <string.h>

#include "core/num.h"
#include "core/words.h"
#include "read/check.h"
#include "read/corners.h"
#include "read/datafile.h"
#include "read/edges.h"
#include "read/rule.h"

typedef struct {
    const hw_node *root;
    hw_arena *arena;
    hw_garment garment;
    hw_finished *finished;
    hw_piece *pieces;
    hw_seam *seams;
    hw_err *err;
} reading;

static hw_status no_memory(const reading *r)
{
    return hw_err_set(r->err, HW_ERR_NOMEM, "%s", "there is not enough memory for the garment");
}

static hw_status too_many(const reading *r, const hw_node *node, const char *what, int most)
{
    (void)hw_err_set(r->err, HW_ERR_LIMIT, "%d %s are too many; a garment has at most %d",
        node->count, what, most);
    return hw_err_place(r->err, HW_ERR_LIMIT, node->line, node->column);
}

static hw_rule_reading how(const reading *r, bool finished)
{
    return (hw_rule_reading){ .usual = hw_check_usual_unit(r->root), .finished = finished };
}

static hw_status read_finished(reading *r)
{
    const hw_node *rules = hw_node_find(r->root, "finished");
    if (rules->count > HW_MAX_MEASURES) {
        return too_many(r, rules, "finished measurements", HW_MAX_MEASURES);
    }
    r->finished = hw_arena_get(r->arena, (size_t)rules->count, sizeof *r->finished);
    if (r->finished == NULL) {
        return no_memory(r);
    }
    r->garment.finished = r->finished;
    for (const hw_node *rule = rules->first; rule != NULL; rule = rule->next) {
        hw_finished *made = &r->finished[r->garment.finished_count++];
        made->name = rule->key;
        made->ease = hw_ease_of(hw_node_find(rule, "ease"));
        hw_status status =
            hw_rule_read(hw_node_find(rule, "is"), how(r, false), r->arena, &made->rule, r->err);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

static int find_piece(const reading *r, const char *name, size_t len)
{
    for (int i = 0; i < r->garment.piece_count; i++) {
        if (strlen(r->pieces[i].name) == len && memcmp(r->pieces[i].name, name, len) == 0) {
            return i;
        }
    }
    return -1;
}

static hw_status read_mirror(reading *r, const hw_node *word, hw_piece *piece)
{
    int other = find_piece(r, word->text, word->len);
    if (other < 0 || &r->pieces[other] == piece || r->pieces[other].mirror_of >= 0) {
        (void)hw_err_set(r->err, HW_ERR_UNKNOWN,
            "`%.*s` mirrors `%.*s`, which must be a piece written above it with widths of its own",
            hw_words_cut(piece->name, 60), piece->name, hw_words_cut(word->text, 60), word->text);
        return hw_err_place(r->err, HW_ERR_UNKNOWN, word->line, word->column);
    }
    piece->mirror_of = other;
    piece->band_width = r->pieces[other].band_width;
    piece->main_width = r->pieces[other].main_width;
    piece->edge_sts[HW_LEFT] = r->pieces[other].edge_sts[HW_RIGHT];
    piece->edge_sts[HW_RIGHT] = r->pieces[other].edge_sts[HW_LEFT];
    if (r->pieces[other].outline != NULL) {
        hw_outline_rule *outline = hw_arena_get(r->arena, 1, sizeof *outline);
        if (outline == NULL) {
            return no_memory(r);
        }
        *outline = *r->pieces[other].outline;
        outline->mirrored = true;
        piece->outline = outline;
    }
    return HW_OK;
}

static hw_corners_reading drawing(const reading *r)
{
    return (hw_corners_reading){
        .garment = &r->garment, .usual = hw_check_usual_unit(r->root), .arena = r->arena
    };
}

static hw_status read_outline(const reading *r, const hw_node *node, hw_piece *piece)
{
    hw_corners_reading with = drawing(r);
    hw_outline_rule *outline = NULL;
    hw_status status = hw_corners_read(&with, node, &outline, r->err);
    piece->outline = outline;
    return status;
}

static hw_status read_piece(reading *r, const hw_node *node, hw_piece *piece)
{
    const hw_node *band = hw_node_find(node, "band width");
    const hw_node *main = hw_node_find(node, "main width");
    const hw_node *mirrors = hw_node_find(node, "mirrors");
    piece->name = node->key;
    piece->mirror_of = -1;
    static const char *const edges[] = {
        [HW_LEFT] = "left edge stitches", [HW_RIGHT] = "right edge stitches"
    };
    for (int side = 0; side < HW_SIDE_COUNT; side++) {
        piece->edge_sts[side] = hw_num_nearest(hw_node_number(node, edges[side], -1));
    }
    if (mirrors != NULL && node->count > 1) {
        (void)hw_err_set(r->err, HW_ERR_REPEATED,
            "`%.*s` mirrors another piece, so it has no widths or edges of its own; take them out, "
            "or take `mirrors` out",
            hw_words_cut(node->key, 60), node->key);
        return hw_err_place(r->err, HW_ERR_REPEATED, node->key_line, node->key_column);
    }
    if (mirrors != NULL) {
        return read_mirror(r, mirrors, piece);
    }
    if (band == NULL) {
        (void)hw_err_set(r->err, HW_ERR_MISSING,
            "the piece `%.*s` needs a `band width`, such as `0.5 x hem`, or `mirrors`",
            hw_words_cut(node->key, 60), node->key);
        return hw_err_place(r->err, HW_ERR_MISSING, node->key_line, node->key_column);
    }
    hw_status status = hw_rule_read(band, how(r, true), r->arena, &piece->band_width, r->err);
    if (status == HW_OK) {
        status = hw_rule_read(
            main != NULL ? main : band, how(r, true), r->arena, &piece->main_width, r->err);
    }
    const hw_node *outline = hw_node_find(node, "outline");
    return status == HW_OK && outline != NULL ? read_outline(r, outline, piece) : status;
}

static hw_status read_pieces(reading *r)
{
    const hw_node *pieces = hw_node_find(r->root, "pieces");
    if (pieces->count == 0) {
        (void)hw_err_set(r->err, HW_ERR_MISSING, "%s",
            "no piece stands here; write at least one, with its `band width`");
        return hw_err_place(r->err, HW_ERR_MISSING, pieces->line, pieces->column);
    }
    if (pieces->count > HW_MAX_PIECES) {
        return too_many(r, pieces, "pieces", HW_MAX_PIECES);
    }
    r->pieces = hw_arena_get(r->arena, (size_t)pieces->count, sizeof *r->pieces);
    if (r->pieces == NULL) {
        return no_memory(r);
    }
    r->garment.pieces = r->pieces;
    for (const hw_node *node = pieces->first; node != NULL; node = node->next) {
        hw_piece *piece = &r->pieces[r->garment.piece_count];
        hw_status status = read_piece(r, node, piece);
        if (status != HW_OK) {
            return status;
        }
        r->garment.piece_count++;
    }
    return HW_OK;
}

static hw_status bad_seam(const reading *r, hw_status code, const hw_node *word, const char *why)
{
    (void)hw_err_set(
        r->err, code, "the seam `%.*s`: %s", hw_words_cut(word->text, 60), word->text, why);
    return hw_err_place(r->err, code, word->line, word->column);
}

/* `left front right` is the right edge of the piece `left front`. */
static bool read_edge(const reading *r, const char *text, size_t len, int *piece, hw_side *side)
{
    static const char *const words[] = { [HW_LEFT] = " left", [HW_RIGHT] = " right" };
    for (int s = 0; s < HW_SIDE_COUNT; s++) {
        size_t n = strlen(words[s]);
        if (len > n && memcmp(text + len - n, words[s], n) == 0) {
            *piece = find_piece(r, text, len - n);
            *side = (hw_side)s;
            return *piece >= 0;
        }
    }
    return false;
}

static hw_status read_seam(reading *r, const hw_node *word)
{
    const char *to = strstr(word->text, " to ");
    if (to == NULL) {
        return bad_seam(r, HW_ERR_SYNTAX, word, "write it as `front right to back left`");
    }
    hw_seam seam = { 0 };
    const char *ends[2] = { word->text, to + strlen(" to ") };
    size_t lens[2] = { (size_t)(to - word->text), strlen(ends[1]) };
    for (int e = 0; e < 2; e++) {
        if (!read_edge(r, ends[e], lens[e], &seam.piece[e], &seam.side[e])) {
            return bad_seam(r, HW_ERR_UNKNOWN, word,
                "each end is a piece's name and `left` or `right`, as seen on the right side");
        }
        if (hw_garment_seam_at(&r->garment, seam.piece[e], seam.side[e]) >= 0) {
            return bad_seam(r, HW_ERR_REPEATED, word,
                "one of its edges is sewn to another edge already; name each edge once");
        }
    }
    if (seam.piece[0] == seam.piece[1] && seam.side[0] == seam.side[1]) {
        return bad_seam(
            r, HW_ERR_REPEATED, word, "an edge cannot be sewn to itself; name two edges");
    }
    r->seams[r->garment.seam_count++] = seam;
    return HW_OK;
}

static hw_status read_seams(reading *r)
{
    const hw_node *list = hw_node_find(r->root, "seams");
    if (list == NULL) {
        return HW_OK;
    }
    if (list->kind == HW_NODE_LIST && list->count > HW_MAX_SEAMS) {
        return too_many(r, list, "seams", HW_MAX_SEAMS);
    }
    r->seams = hw_arena_get(r->arena, HW_MAX_SEAMS, sizeof *r->seams);
    if (r->seams == NULL) {
        return no_memory(r);
    }
    r->garment.seams = r->seams;
    if (list->kind == HW_NODE_WORD) {
        return read_seam(r, list);
    }
    for (const hw_node *word = list->first; word != NULL; word = word->next) {
        hw_status status = read_seam(r, word);
        if (status != HW_OK) {
            return status;
        }
    }
    return HW_OK;
}

hw_status hw_garment_read(
    const char *text, size_t len, hw_arena *arena, hw_garment *out, hw_err *err)
{
    hw_node *root = NULL;
    hw_status status =
        hw_check_file(&(hw_check_task){ .text = text, .len = len, .part = HW_PART_GARMENT_FILE },
            arena, &root, err);
    if (status != HW_OK) {
        return status;
    }
    reading r = { .root = root, .arena = arena, .err = err };
    r.garment.title = hw_node_text(root, "title", "");
    status = read_finished(&r);
    status = status == HW_OK ? read_pieces(&r) : status;
    status = status == HW_OK ? read_seams(&r) : status;
    hw_corners_reading with = drawing(&r);
    if (status == HW_OK) {
        status = hw_edges_trims(&with, hw_node_find(root, "trims"), &r.garment, err);
    }
    if (status == HW_OK) {
        status = hw_edges_joins(&with, hw_node_find(root, "joins"), &r.garment, err);
    }
    if (status != HW_OK) {
        return status;
    }
    *out = r.garment;
    return HW_OK;
}
