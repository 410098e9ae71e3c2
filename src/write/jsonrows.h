/* The rows of pieces as JSON, for other programs.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#ifndef HW_WRITE_JSONROWS_H
#define HW_WRITE_JSONROWS_H

#include "write/jsonparts.h"
#include "write/rowwords.h"

/*
 * The items of the list that data/rows.schema.json describes, one object for each block.
 *
 * Given:     w         within hw_json_list; its plan is not looked at
 *            blocks    count of them
 *
 * The format. An object has:
 *   piece, size      names; of a trim that is picked up, piece is the trim's
 *   trim             true for a trim: its rows are, from the edge, face, band, face, fold, facing
 *   work             "pre-selecting", "direct", "needles by hand" (a bed without a card that
 *                    serves), "hand" (hand knitting); of the hem's band: the rows of a further
 *                    band that the card does not take are "two colours, by hand" all the same
 *   start_side       "left", "right": of the bed, where the carriage is before row 1; of hand
 *                    knitting the edge, as seen on the right side, at which row 1 begins
 *   cast_on          "open" (waste yarn), "wrapped"; of a trim that is sewn down, how its last row
 *                    is left: open, or bound off
 *   closing          "hung", "sewn"
 *   in_rounds        true or false: some rows are rounds; true in hand knitting alone
 *   round_rows       rows 1 to this one are rounds, knitted together with the pieces of the tube,
 *                    or of a trim that is a ring; 0 where none are. The row after them is the first
 * of those that turn round_pieces     names of the tube's pieces in the order of a round, from
 * where it begins: the left edge of each meets the right edge of the next; empty where none are
 *   hem_rows         row number of the hem's last row; row n above the hem, from 0, has the number
 *                    hem_rows + n + 1
 *   rows             in knitting order, as below
 *   findings         sides that do not come out: kind ("band start", "band end", "shape start",
 *                    "band parted"), row, text
 *
 * A row has:
 *   number           on the row counter once the row is knitted, from 1. Numbers
 *                    follow each other, but for the second half of a piece that a neck parts: it
 *                    begins again with the number at which the first half began
 *   part             "whole", "left half", "right half" (as seen on the right side)
 *   kind             "facing", "fold", "plain below", "set-up", "band", "plain above", "joining",
 *                    "main"; "face" in trims alone: plain, before the band and behind it
 *   fabric           "facing", "main", "band"
 *   carriage_before, carriage_after   "left", "right" of the bed; null in hand knitting
 *   begins_at        the edge, as seen on the right side, at which the row begins
 *   right_side       hand knitting: the right side faces; null on a bed
 *   dial             number, "loosest", or null where it is not known
 *   setting          "plain", "plain, selecting", "two colours, selecting", "two colours, not
 *                    selecting", "two colours, direct", "two colours, by hand", "none" (in hand
 *                    knitting). "selecting": needles for the row AFTER this one are brought out by
 *                    the card row that this row reads. "two colours": needles that stand out take
 *                    the contrast, the others the main yarn; "direct": so does the card row that
 *                    this row reads, in this row
 *   card             "not read"; "held": reads card_row and does not move on; "moving"
 *   card_row         card row read in this row, from 1; null where none is
 *   card_row_in_view null where not known
 *   band             0 the hem's band, n the n-th further one; null outside bands
 *   chart_row        of that band, from 1 at the bottom; null outside bands
 *   figures          what such a row is made of: motifs, gap, and left_sts and right_sts, the
 *                    stitches outside the motifs at the left and the right edge, edge stitches
 *                    too; null outside bands, in halves, and where no whole motif has room
 *   feeders          [first, second]: "main", "contrast", "none"
 *   first_needle, last_needle   needles in work, from the left of the bed: ... -2 is L2, -1 is L1,
 *                    0 is R1, 1 is R2 ...; null in hand knitting, and in a trim that is longer than
 *                    the bed. The piece's right edge is at
 *                    the left of the bed. What was shaped before the row is already out of work
 *   stitches         in this row, edge stitches included; of this piece alone
 *   round_stitches   in the whole round; null in rows that turn
 *   hand             what is done by hand, in order, as below
 *
 * Hand work has:
 *   what             "cast on", "weights", "counter", "picot", "purl", "move", "card in",
 *                    "card go", "second yarn in", "second yarn out", "re-hang", "hang hem", "into
 * rows", "mark", "shape", "hold half", "half back", "sew hem"; of trims "pick up", "buttonhole" (so
 * many stitches bound off and cast on again in this row), "take off" (stitches stay open), "bind
 * off"; "hang hem" is then the row that was picked up when             "before" or "after" the row
 *   stitches         cast on, picked up, taken off, bound off, of one buttonhole, kept after
 *                    re-hanging, hung, put on hold, back in work, of the piece that is worked in
 *                    rows from here on, or of one working of a shaping step; else null
 *   number           "cast on": rows of waste yarn; "counter": what it is set to; "move": the piece
 *                    so many needles to the right on the bed, below 0 to the left; "card in": the
 *                    card row that is read first; "re-hang": stitches fewer than before, below 0
 *                    where they are more; "buttonhole": stitches of the row before it, from
 *                    the left of the bed, in hand knitting from where the row begins; else null
 *   step             "shape" alone, else null: kind ("decrease", "increase", "bind off", "cast
 *                    on", "hold", "back", "divide", "end") and place ("left", "right", "both",
 *                    "neck left", "neck right", "neck both", "middle"), both as seen on the right
 *                    side; in a half, "both" is that half's own edge
 */
void hw_json_rows(hw_json_writer *w, const hw_row_block *blocks, int count);

#endif
