/* Trims in sentences: picking up, buttonholes, closing; all common practice [P9].
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "write/trimwords.h"

static bool in_hand(const hw_saying *s)
{
    return s->plan->work == HW_WORK_HAND;
}

static void say_needle(const hw_saying *s, int q)
{
    hw_buf_format(s->buf, "%s%d", q < 0 ? "L" : "R", q < 0 ? -q : q + 1);
}

/* "100 needles, "; of a trim that is longer than the bed "the needles in 2 lengths: 127 stitches
 * from L63 on, and then 125 from L62 on. ..." */
static void say_onto(const hw_saying *s)
{
    const hw_lengths *lengths = &s->plan->trim->lengths;
    if (lengths->count == 0) {
        hw_buf_format(s->buf, "%d needles%s, ", s->work->sts,
            s->plan->has_needles ? "" : " in two or more lengths, as Notes says");
        return;
    }
    hw_buf_format(s->buf, "the needles in %d lengths: ", lengths->count);
    for (int i = 0; i < lengths->count; i++) {
        const char *join = i + 1 == lengths->count ? ", and then " : ", then ";
        hw_buf_format(
            s->buf, "%s%d%s from ", i == 0 ? "" : join, lengths->sts[i], i == 0 ? " stitches" : "");
        say_needle(s, lengths->first[i]);
        hw_buf_text(s->buf, " on");
    }
    hw_buf_text(s->buf,
        ". Knit each by these rows. Each has a stitch more where it meets another, for the seam; "
        "without those, ");
}

/* The piece's right edge hangs at the left of the bed, so both ways begin at the same end. */
void hw_trimwords_pick_up(const hw_saying *s)
{
    const hw_row_trim *trim = s->plan->trim;
    if (in_hand(s)) {
        hw_buf_format(s->buf,
            "With the right side of the garment facing you, pick up and knit %d stitches from "
            "right to left: %s.%s",
            s->work->sts, trim->along, s->plan->round_rows > 0 ? " Join them into a round." : "");
    } else {
        hw_buf_text(s->buf, "With the wrong side of the garment facing you, hang its edge onto ");
        say_onto(s);
        hw_buf_format(s->buf, "from the left of the bed to the right: %s.", trim->along);
    }
    if (trim->through[0] != '\0') {
        hw_buf_format(s->buf, " At %s go through both layers.", trim->through);
    }
    if (!in_hand(s)) {
        hw_buf_format(s->buf, " Carriage at the %s, main yarn.", hw_side_name(s->row->before));
    }
}

/* ---- Buttonholes ---- */

/* "L9 and L8"; of a hole of one stitch "L9". */
static void say_needles(const hw_saying *s, const hw_handwork *hole)
{
    int first = s->row->first + hole->number;
    say_needle(s, first);
    if (hole->sts > 1) {
        hw_buf_text(s->buf, hole->sts == 2 ? " and " : " to ");
        say_needle(s, first + hole->sts - 1);
    }
}

/* "on L9 and L8; R12 and R13" */
static void say_on_needles(const hw_saying *s)
{
    hw_buf_text(s->buf, "on ");
    for (int i = 0; i < s->plan->trim->hole_count; i++) {
        hw_buf_text(s->buf, i == 0 ? "" : "; ");
        say_needles(s, s->work + i);
    }
}

/* The length in which a stitch of a trim lies, from 1; 0 where the trim is knitted in one. `sts`
 * stitches lie before it, counted from the left of the bed, of that length in the end. */
static int find_length(const hw_lengths *lengths, int *sts)
{
    int seam_sts = 0; /* at the left of a length */
    for (int i = 0; i < lengths->count; i++) {
        int more = i + 1 < lengths->count ? HW_LENGTHS_SEAM_STS : 0;
        if (*sts + seam_sts < lengths->sts[i] - more) {
            *sts += seam_sts;
            return i + 1;
        }
        *sts -= lengths->sts[i] - more - seam_sts;
        seam_sts = HW_LENGTHS_SEAM_STS;
    }
    return 0;
}

/* Whether a buttonhole is the last one of its length, or of all. */
static bool is_last(const hw_saying *s, int hole)
{
    const hw_lengths *lengths = &s->plan->trim->lengths;
    if (hole + 1 >= s->plan->trim->hole_count) {
        return true;
    }
    int sts = s->work[hole].number;
    int next_sts = s->work[hole + 1].number;
    return find_length(lengths, &sts) != find_length(lengths, &next_sts);
}

/* "each after so many stitches: 10, 22 and 34 from the left of the bed"; in lengths "8 and 20 of
 * length 1; 12 of length 2, from the left of the bed" */
static void say_counted_off(const hw_saying *s)
{
    int count = s->plan->trim->hole_count;
    int length = 0;
    hw_buf_text(s->buf, count == 1 ? "after " : "each after so many stitches: ");
    for (int i = 0; i < count; i++) {
        int sts = s->work[i].number;
        length = find_length(&s->plan->trim->lengths, &sts);
        hw_buf_format(s->buf, "%d", sts);
        if (!is_last(s, i)) {
            hw_buf_text(s->buf, is_last(s, i + 1) ? " and " : ", ");
        } else if (length > 0) {
            hw_buf_format(s->buf, " of length %d%s", length, i + 1 < count ? "; " : ",");
        }
    }
    hw_buf_format(s->buf, "%s%s", count == 1 && length == 0 ? " stitches" : "",
        in_hand(s) ? " from where the row begins" : " from the left of the bed");
}

static void say_how(const hw_saying *s)
{
    int sts = s->work->sts;
    if (in_hand(s) && sts == 1) {
        hw_buf_text(s->buf, "take the yarn over and work this stitch and the next one together.");
    } else if (in_hand(s)) {
        hw_buf_format(
            s->buf, "bind off %d stitches, cast on %d in their place, and go on.", sts, sts);
    } else if (sts == 1) {
        hw_buf_text(s->buf,
            "move the stitch onto the needle beside it, and leave its own needle where it stood.");
    } else {
        hw_buf_text(s->buf,
            "bind off the stitches with a length of the main yarn and wrap the same needles anew; "
            "leave each needle where it stood.");
    }
}

void hw_trimwords_holes(const hw_saying *s)
{
    const hw_row_trim *trim = s->plan->trim;
    bool one = trim->hole_count == 1;
    bool face = s->row->number == trim->hole_rows[HW_LAYER_FACE];
    int sts = s->work->sts;
    hw_buf_format(s->buf, "%s row %d: %s of %d %s, ", in_hand(s) ? "In" : "Before", s->row->number,
        one ? "a buttonhole" : "buttonholes", sts, sts == 1 ? "stitch" : "stitches");
    if (s->plan->has_needles) {
        say_on_needles(s);
    } else {
        say_counted_off(s);
    }
    hw_buf_text(s->buf, one ? ": " : ". For each: ");
    say_how(s);
    hw_buf_format(s->buf, " Once the trim is folded, %s on %s of row %d.",
        one ? "it lies" : "they lie", one ? "that" : "those",
        trim->hole_rows[face ? HW_LAYER_FACING : HW_LAYER_FACE]);
}

/* ---- Closing ---- */

static void say_open(const hw_saying *s)
{
    int sts = s->plan->trim->open_sts;
    if (sts > 0) {
        hw_buf_format(s->buf,
            " Leave the last %d of the round open, for the elastic: do not join them to the "
            "inside.",
            sts);
    }
}

void hw_trimwords_hang(const hw_saying *s)
{
    if (in_hand(s)) {
        hw_buf_format(s->buf,
            "Fold the trim to the inside and %s each stitch together with the loop that it meets "
            "of the row that was picked up.",
            s->row->right_side ? "knit" : "purl");
        say_open(s);
        return;
    }
    hw_buf_text(s->buf,
        "Fold the trim to the inside and hang the loops of the row that was picked up onto the "
        "needles, one to each.");
}

void hw_trimwords_take_off(const hw_saying *s)
{
    hw_buf_text(s->buf, in_hand(s) ? "Put the stitches on a thread."
                                   : "Knit a few rows with waste yarn, and take the trim off.");
}

void hw_trimwords_bind_off(const hw_saying *s)
{
    if (s->plan->trim->lengths.count > 0) {
        hw_buf_text(s->buf, "Bind off all stitches loosely.");
        return;
    }
    hw_buf_format(s->buf, "Bind off all %d stitches loosely.", s->work->sts);
}

void hw_trimwords_sew(const hw_saying *s)
{
    hw_buf_format(s->buf,
        "Fold the trim to the inside and sew %s down along the row that was picked up.",
        s->plan->cast_on == HW_CAST_ON_OPEN ? "its open loops, one by one," : "its bound-off edge");
    say_open(s);
}
