/* The key table, and its rows in words.
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "read/keys.h"

#include <string.h>

#include "core/buttonhole.h"
#include "core/num.h"

#define P(name) HW_PART_##name
#define K(name) HW_KIND_##name

static const char *const parts[] = {
    [P(NONE)] = "nothing",
    [P(PROJECT)] = "the project",
    [P(GAUGE)] = "gauge",
    [P(FABRIC)] = "the gauge of one fabric",
    [P(SWATCH)] = "a swatch",
    [P(MOTIF)] = "motif",
    [P(HEM)] = "hem",
    [P(SIZES)] = "sizes",
    [P(LENGTHS)] = "a table of measurements",
    [P(EASE)] = "ease",
    [P(BANDS)] = "bands",
    [P(BAND)] = "a band",
    [P(TRIM_CHOICES)] = "trims",
    [P(TRIM_CHOICE)] = "what a project says of a trim",
    [P(YARN)] = "yarn",
    [P(YARN_COLOUR)] = "a yarn",
    [P(SAFETY)] = "safety",
    [P(CHOICES)] = "choices",
    [P(MACHINE_FILE)] = "a machine file",
    [P(MOTIF_FILE)] = "a motif file",
    [P(SIZES_FILE)] = "a size table file",
    [P(TABLE)] = "body",
    [P(TABLE_ROW)] = "a row of the size table",
    [P(SOURCES)] = "sources",
    [P(SOURCE)] = "a source",
    [P(GARMENT_FILE)] = "a garment file",
    [P(FINISHED)] = "finished",
    [P(FINISHED_RULE)] = "a finished measurement",
    [P(PIECES)] = "pieces",
    [P(PIECE)] = "a piece",
    [P(OUTLINE)] = "an outline",
    [P(CORNER)] = "a corner of an outline",
    [P(TRIMS)] = "trims of a garment file",
    [P(TRIM)] = "a trim of a garment file",
};
_Static_assert(sizeof parts / sizeof parts[0] == HW_PART_COUNT, "a name for each part");

static const hw_key keys[] = {
    { P(PROJECT), "title", K(TEXT), .help = "what the garment is called" },
    { P(PROJECT), "units", K(WORD), .words = "cm|in|both",
        .help =
            "what the sheets show; a length without a unit is in inches after `in`, else in cm" },
    { P(PROJECT), "machine", K(TEXT), .required = true,
        .help = "a machine under data/machines, or a file of your own; `hand` for hand knitting" },
    { P(PROJECT), "garment", K(TEXT), .required = true,
        .help = "a garment under data/garments, or a file of your own" },
    { P(PROJECT), "gauge", K(PART), .required = true, .part = P(GAUGE),
        .help = "one entry for each fabric that was swatched" },
    { P(PROJECT), "motif", K(PART), .required = true, .part = P(MOTIF),
        .help = "the figure that repeats along the band" },
    { P(PROJECT), "hem", K(PART), .required = true, .part = P(HEM), .help = "the folded hem" },
    { P(PROJECT), "sizes", K(PART), .required = true, .part = P(SIZES),
        .help = "names of the sizes and their measurements" },
    { P(PROJECT), "knitted", K(TEXT),
        .help = "a filled-in workbook or table of pieces that test knitters measured" },
    { P(PROJECT), "ease", K(PART), .part = P(EASE),
        .help = "room to move, in place of the garment's own" },
    { P(PROJECT), "bands", K(PART), .part = P(BANDS),
        .help = "bands beside that of the hem: of cuffs, or higher up" },
    { P(PROJECT), "trims", K(PART), .part = P(TRIM_CHOICES),
        .help = "motif, hem and buttonholes of the garment's trims, by their names" },
    { P(PROJECT), "yarn", K(PART), .part = P(YARN), .help = "what yarn there is, to say how much" },
    { P(PROJECT), "safety", K(PART), .part = P(SAFETY),
        .help = "what the safety notes have to know" },
    { P(PROJECT), "choices", K(PART), .part = P(CHOICES),
        .help = "tolerance, and what weighs how much" },

    { P(GAUGE), "main", K(PART), .required = true, .part = P(FABRIC), .help = "the plain fabric" },
    { P(GAUGE), "band", K(PART), .part = P(FABRIC), .help = "the two-colour fabric" },
    { P(GAUGE), "facing", K(PART), .part = P(FABRIC), .help = "the inside of the hem" },

    { P(FABRIC), "dial", K(NUMBER), .least = 0, .most = 30,
        .help = "the carriage's stitch size number" },
    { P(FABRIC), "stitches", K(NUMBER), .least = 1, .most = 2000,
        .help = "stitches in the length named by `per`" },
    { P(FABRIC), "rows", K(NUMBER), .least = 1, .most = 2000,
        .help = "rows in the length named by `per`" },
    { P(FABRIC), "per", K(LENGTH), .least = 1, .most = 100, .help = "10 cm if left out" },
    { P(FABRIC), "fit", K(WORD), .words = "usual|line|line through zero|ratios|robust",
        .help =
            "how swatches become a gauge; `usual` if left out: a line where counts differ, else "
            "the mean of count over length" },
    { P(FABRIC), "between markers", K(YES_NO),
        .help =
            "counted between marked stitches or rows, so that no edge has a share; `no` if left "
            "out" },
    { P(FABRIC), "swatches", K(PARTS), .part = P(SWATCH),
        .help = "measured places, instead of stitches and rows" },

    { P(SWATCH), "stitches", K(COUNT), .least = 1, .most = HW_MAX_STS,
        .help = "stitches counted across" },
    { P(SWATCH), "width", K(LENGTH), .least = 0.1, .most = HW_MAX_CM, .help = "what they measure" },
    { P(SWATCH), "rows", K(COUNT), .least = 1, .most = HW_MAX_ROWS, .help = "rows counted up" },
    { P(SWATCH), "length", K(LENGTH), .least = 0.1, .most = HW_MAX_CM,
        .help = "what they measure" },
    { P(SWATCH), "state", K(WORD), .words = "rested|washed",
        .help = "when it was measured; where there are washed ones, they alone count" },
    { P(SWATCH), "dial", K(NUMBER), .least = 0, .most = 30,
        .help = "the dial of this swatch, where it is not the fabric's" },
    { P(SWATCH), "mass", K(NUMBER), .least = 0.1, .most = 5000,
        .help = "what the measured piece weighs, in grams" },
    { P(SWATCH), "remark", K(TEXT), .help = "a date or a remark" },

    { P(MOTIF), "use", K(TEXT), .help = "a motif under data/motifs, or a file of your own" },
    { P(MOTIF), "chart", K(CHART),
        .help = "the figure: `o` contrast, `.` background, the top row first, right side facing" },
    { P(MOTIF), "gap", K(COUNT), .least = 0, .most = HW_MAX_CHART_COLUMNS - 1,
        .help = "background columns between two figures; 0 if left out" },
    { P(MOTIF), "card start", K(COUNT), .least = 1, .most = HW_MAX_CHART_COLUMNS,
        .help = "card column where the first figure is punched already; leave out if it is not "
                "punched yet" },

    { P(HEM), "depth", K(LENGTH), .least = 0.5, .most = 100, .help = "depth of the face" },
    { P(HEM), "face rows", K(COUNT), .least = 5, .most = HW_MAX_CHART_ROWS + 200,
        .help = "rows of the face, instead of a depth" },
    { P(HEM), "fold", K(WORD), .words = "none|loose row|purl row|picot",
        .help = "the turning row; `loose row` if left out" },
    { P(HEM), "facing", K(WORD), .words = "same rows|same depth",
        .help = "with the fold as many rows as the face, or as deep; `same rows` if left out" },
    { P(HEM), "facing rows", K(COUNT), .least = 1, .most = HW_MAX_CHART_ROWS + 200,
        .help = "so many rows, in place of `facing`" },
    { P(HEM), "cast-on", K(WORD), .words = "waste yarn|wrapped edge",
        .help = "how it is begun; `waste yarn`, for open loops, if left out in the project's hem" },
    { P(HEM), "closing", K(WORD), .words = "hung|sewn",
        .help = "how facing and face are joined; `hung` on the needles if left out in the "
                "project's hem" },

    { P(SIZES), "names", K(TEXTS), .required = true, .help = "the sizes, smallest first" },
    { P(SIZES), "table", K(TEXT),
        .help = "body measurements of those names under data/sizes, or a file of your own" },
    { P(SIZES), "ages", K(COUNTS), .least = 0, .most = 1200,
        .help = "age in months, one for each size; only for safety notes" },
    { P(SIZES), "body", K(PART), .part = P(LENGTHS),
        .help = "body measurements, a row for each, one value for each size" },
    { P(SIZES), "finished", K(PART), .part = P(LENGTHS),
        .help = "finished measurements, in place of what the garment's rules give" },
    { P(LENGTHS), "*", K(LENGTHS), .least = 0.1, .most = HW_MAX_CM,
        .help = "one length for each size; `between` for a value between its neighbours" },
    { P(EASE), "*", K(EASE), .least = -HW_MAX_CM, .most = HW_MAX_CM,
        .help = "a length, or a percentage of what the garment's rule gives" },

    { P(BANDS), "*", K(PART), .part = P(BAND), .help = "one band" },
    { P(BAND), "on", K(TEXTS), .required = true,
        .help = "the pieces that carry it; a piece that mirrors one of them does too" },
    { P(BAND), "motif", K(PART), .required = true, .part = P(MOTIF), .help = "its figure" },
    { P(BAND), "hem", K(PART), .part = P(HEM),
        .help = "it is the folded hem of these pieces, in place of the garment's" },
    { P(BAND), "above fold", K(LENGTH), .least = 0.5, .most = HW_MAX_CM,
        .help = "it lies higher up: from the fold to its first row" },
    { P(BAND), "below underarm", K(LENGTH), .least = 0, .most = HW_MAX_CM,
        .help = "it lies higher up: from its last row to the underarm, on all pieces alike" },

    { P(TRIM_CHOICES), "*", K(PART), .part = P(TRIM_CHOICE), .help = "one trim of the garment" },
    { P(TRIM_CHOICE), "motif", K(PART), .part = P(MOTIF), .help = "its figure; plain if left out" },
    { P(TRIM_CHOICE), "gauge", K(PART), .part = P(FABRIC),
        .help = "of its own fabric; that of the band, or of main where it is plain, if left out" },
    { P(TRIM_CHOICE), "hem", K(PART), .part = P(HEM),
        .help =
            "its depth, fold and closing; the garment's depth and the hem's closing if left out" },
    { P(TRIM_CHOICE), "buttonholes", K(COUNT), .least = 1, .most = HW_MAX_HOLES,
        .help = "how many are worked into it" },
    { P(TRIM_CHOICE), "buttonhole stitches", K(COUNT), .least = 1, .most = 20,
        .help = "width of each; 2 if left out" },

    { P(YARN), "reserve", K(NUMBER), .least = 0, .most = 100,
        .help = "percent that is added; 10 if left out" },
    { P(YARN), "main", K(PART), .part = P(YARN_COLOUR), .help = "the yarn of the background" },
    { P(YARN), "contrast", K(PART), .part = P(YARN_COLOUR), .help = "the yarn of the figures" },
    { P(YARN_COLOUR), "ball", K(NUMBER), .least = 1, .most = 5000, .help = "grams in a ball" },
    { P(YARN_COLOUR), "metres", K(NUMBER), .least = 1, .most = 20000, .help = "metres in a ball" },
    { P(YARN_COLOUR), "unravelled stitches", K(COUNT), .least = 20, .most = 100000,
        .help = "so many stitches of plain fabric were unravelled" },
    { P(YARN_COLOUR), "unravelled metres", K(NUMBER), .least = 0.1, .most = 1000,
        .help = "and so many metres of yarn were in them" },

    { P(SAFETY), "buttons", K(YES_NO), .help = "whether buttons are sewn on" },
    { P(SAFETY), "cords", K(WORD), .words = "none|neck|waist|elsewhere",
        .help = "where cords are sewn on or tied; `none` if left out" },
    { P(SAFETY), "drawstrings", K(WORD), .words = "none|neck|waist|elsewhere",
        .help = "where a cord draws a channel in; `none` if left out" },
    { P(SAFETY), "sleepwear", K(YES_NO), .help = "whether it is worn to bed" },

    { P(CHOICES), "tolerance", K(LENGTH), .least = 0.1, .most = 50,
        .help = "how far a width may be off; 1 cm if left out" },
    { P(CHOICES), "centre weight", K(NUMBER), .least = 0, .most = 1000,
        .help = "how much it matters that motifs sit centred; 0.5 if left out" },
    { P(CHOICES), "seam weight", K(NUMBER), .least = 0, .most = 1000,
        .help = "how much it matters that the band runs on round the seams; 0.5 if left out" },
    { P(CHOICES), "step weight", K(NUMBER), .least = 0, .most = 1000,
        .help = "how much it matters that sizes step evenly; 0.5 if left out" },
    { P(CHOICES), "always centred", K(YES_NO), .help = "refuse counts that are off centre" },
    { P(CHOICES), "unbroken seams", K(YES_NO),
        .help = "refuse counts with which the band breaks at a seam" },
    { P(CHOICES), "within tolerance", K(YES_NO), .help = "refuse counts outside the tolerance" },
    { P(CHOICES), "hand-set needles", K(YES_NO),
        .help = "allow plain ends wider than the gap, where needles are set by hand" },
    { P(CHOICES), "re-hang", K(YES_NO),
        .help = "allow another count above the band, changed evenly in one row" },
    { P(CHOICES), "edge stitches", K(COUNT), .least = 0, .most = 10,
        .help = "stitches that a seam takes up at each edge; 1 if left out" },
    { P(CHOICES), "shoulders", K(WORD), .words = "bind off|short rows",
        .help = "how sloping shoulders are worked; `bind off` if left out" },
    { P(CHOICES), "carriage begins", K(WORD), .words = "right|left",
        .help = "the side of the bed where it is before row 1; `right` if left out" },
    { P(CHOICES), "second yarn", K(WORD), .words = "where the carriage begins|either side",
        .help = "where it can be put in and taken out; `where the carriage begins` if left out" },
    { P(CHOICES), "in rounds", K(YES_NO),
        .help = "hand knitting alone: pieces sewn to a ring are one tube" },

    { P(MACHINE_FILE), "title", K(TEXT), .required = true, .help = "what the kind is called" },
    { P(MACHINE_FILE), "pitch", K(LENGTH), .least = 0.1, .most = 5,
        .help = "from needle to needle; left out for hand knitting" },
    { P(MACHINE_FILE), "needles", K(COUNT), .least = 2, .most = HW_MAX_STS,
        .help = "needles of the bed, an even number; left out for hand knitting" },
    { P(MACHINE_FILE), "card columns", K(COUNT), .least = 1, .most = HW_MAX_CHART_COLUMNS,
        .help = "columns of the punch card; left out where there is none" },
    { P(MACHINE_FILE), "reader offset", K(COUNT), .least = 0, .most = 40,
        .help = "rows from the row that is read up to the row in view; find it on your machine" },
    { P(MACHINE_FILE), "card rows", K(COUNT), .least = 1, .most = HW_MAX_CHART_ROWS,
        .help = "rows of a blank card in which holes can be punched; 60 if left out" },
    { P(MACHINE_FILE), "least loop rows", K(COUNT), .least = 1, .most = HW_MAX_CHART_ROWS,
        .help = "punched rows that it takes to join a card into a loop; 36 if left out" },
    { P(MACHINE_FILE), "joining rows", K(COUNT), .least = 0, .most = 20,
        .help = "rows at each end of a card that overlap when it is joined; 2 if left out" },
    { P(MACHINE_FILE), "hole pitch", K(LENGTH), .least = 0.1, .most = 5,
        .help = "from the middle of a hole to the middle of the one beside it" },
    { P(MACHINE_FILE), "row pitch", K(LENGTH), .least = 0.1, .most = 5,
        .help = "from the middle of a row of holes to the middle of the one above it" },
    { P(MACHINE_FILE), "card width", K(LENGTH), .least = 1, .most = 100,
        .help = "of the card, from edge to edge" },
    { P(MACHINE_FILE), "hole width", K(LENGTH), .least = 0.05, .most = 5,
        .help = "across one hole; half the smaller pitch is drawn if left out" },
    { P(MACHINE_FILE), "longest float", K(COUNT), .required = true, .least = 1, .most = 40,
        .help = "stitches that a strand may pass behind" },
    { P(MACHINE_FILE), "carriage", K(WORD), .required = true, .words = "none|pre-selecting|direct",
        .help = "brings needles out one row ahead, or reads the row that it knits" },
    { P(MACHINE_FILE), "source", K(TEXT), .help = "keys in data/SOURCES.md" },

    { P(MOTIF_FILE), "title", K(TEXT), .required = true, .help = "what the motif is called" },
    { P(MOTIF_FILE), "chart", K(CHART), .required = true, .help = "as in a project" },
    { P(MOTIF_FILE), "gap", K(COUNT), .least = 0, .most = HW_MAX_CHART_COLUMNS - 1,
        .help = "the gap that it was drawn for; 0 if left out" },
    { P(MOTIF_FILE), "source", K(TEXT), .help = "whose drawing it is" },

    { P(SIZES_FILE), "title", K(TEXT), .required = true, .help = "whose sizes these are" },
    { P(SIZES_FILE), "units", K(WORD), .words = "cm|in", .help = "of lengths without a unit" },
    { P(SIZES_FILE), "names", K(TEXTS), .required = true, .help = "the sizes, smallest first" },
    { P(SIZES_FILE), "ages", K(COUNTS), .least = 0, .most = 1200, .help = "age in months" },
    { P(SIZES_FILE), "sources", K(PART), .required = true, .part = P(SOURCES),
        .help = "where the values come from" },
    { P(SIZES_FILE), "body", K(PART), .required = true, .part = P(TABLE),
        .help = "a row for each body measurement" },
    { P(TABLE), "*", K(PART), .part = P(TABLE_ROW), .help = "one measurement" },
    { P(TABLE_ROW), "values", K(LENGTHS), .required = true, .least = 0.1, .most = HW_MAX_CM,
        .help = "one length for each size" },
    { P(TABLE_ROW), "source", K(TEXTS), .required = true,
        .help = "one key of `sources` for each value, or one for all" },
    { P(SOURCES), "*", K(PART), .part = P(SOURCE), .help = "one source, by its key" },
    { P(SOURCE), "mark", K(WORD), .required = true,
        .words = "read|derived|own choice|common practice|from memory",
        .help = "how well the value is known" },
    { P(SOURCE), "what", K(TEXT), .required = true, .help = "the source in one line" },

    { P(GARMENT_FILE), "title", K(TEXT), .required = true, .help = "what the garment is" },
    { P(GARMENT_FILE), "finished", K(PART), .required = true, .part = P(FINISHED),
        .help = "finished measurements, in an order in which each uses only those before it" },
    { P(GARMENT_FILE), "pieces", K(PART), .required = true, .part = P(PIECES),
        .help = "the pieces that carry the band" },
    { P(GARMENT_FILE), "seams", K(TEXTS),
        .help = "edges sewn together, such as `front right to back left`" },
    { P(GARMENT_FILE), "joins", K(TEXTS),
        .help = "drawn edges sewn together, such as `front right side to back left side`" },
    { P(GARMENT_FILE), "trims", K(PART), .part = P(TRIMS),
        .help = "bands that are picked up along drawn edges" },
    { P(FINISHED), "*", K(PART), .part = P(FINISHED_RULE), .help = "one finished measurement" },
    { P(FINISHED_RULE), "is", K(RULE), .required = true,
        .help = "a sum such as `1.3 x finished chest + 4 cm`; a bare name is a body measurement" },
    { P(FINISHED_RULE), "ease", K(EASE), .least = -HW_MAX_CM, .most = HW_MAX_CM,
        .help = "the usual room to move, a length or a percentage" },
    { P(PIECES), "*", K(PART), .part = P(PIECE), .help = "one piece" },
    { P(PIECE), "band width", K(RULE),
        .help = "width of the band, from finished measurements, without edge stitches" },
    { P(PIECE), "main width", K(RULE),
        .help = "width of the plain fabric above it; as the band if left out" },
    { P(PIECE), "mirrors", K(TEXT), .help = "the piece that this one mirrors, instead of widths" },
    { P(PIECE), "left edge stitches", K(COUNT), .least = 0, .most = 10,
        .help = "at the left edge, right side facing; 0 at a free edge if left out" },
    { P(PIECE), "right edge stitches", K(COUNT), .least = 0, .most = 10,
        .help = "at the right edge" },
    { P(PIECE), "outline", K(PART), .part = P(OUTLINE),
        .help = "the edges above the hem; a piece without it is planned to the top of its hem" },
    { P(OUTLINE), "left", K(PARTS), .part = P(CORNER),
        .help = "corners of the left edge from the hem up; mirrors `right` if left out" },
    { P(OUTLINE), "right", K(PARTS), .part = P(CORNER),
        .help = "corners of the right edge; mirrors `left` if left out" },
    { P(OUTLINE), "neck", K(PARTS), .part = P(CORNER),
        .help = "the neck right of the middle, from its lowest point up; mirrored to the left" },
    { P(CORNER), "stretch", K(TEXT),
        .help = "what the way to this corner is called; as at the corner before if left out" },
    { P(CORNER), "across", K(RULE), .required = true,
        .help = "from the piece's middle, to the left below 0" },
    { P(CORNER), "up", K(RULE), .required = true, .help = "from the fold" },
    { P(CORNER), "curve", K(WORD), .words = "straight|monotone|natural",
        .help = "the way to this corner; `straight` if left out" },
    { P(TRIMS), "*", K(PART), .part = P(TRIM), .help = "one trim" },
    { P(TRIM), "along", K(TEXTS), .required = true,
        .help =
            "edges in the order in which it is picked up, such as `back neck`; `TRIM end` is the "
            "end of a trim above it" },
    { P(TRIM), "depth", K(RULE), .help = "of its face; 2 cm if left out" },
    { P(TRIM), "round", K(YES_NO), .help = "whether it closes to a ring; `no` if left out" },
    { P(TRIM), "elastic", K(RULE),
        .help = "length of an elastic that is drawn into the ring, without its lap; none if left "
                "out" },
};
enum { KEY_COUNT = sizeof keys / sizeof keys[0] };

const hw_key *hw_keys_all(int *count)
{
    *count = KEY_COUNT;
    return keys;
}

const char *hw_part_name(hw_part part)
{
    return parts[part];
}

/* What a kind is called; a range or the words follow. */
static const char *const kinds[] = {
    [K(TEXT)] = "words",
    [K(WORD)] = "one of ",
    [K(YES_NO)] = "yes or no",
    [K(COUNT)] = "whole number, ",
    [K(NUMBER)] = "number, ",
    [K(LENGTH)] = "length, ",
    [K(EASE)] = "length or percentage",
    [K(RULE)] = "sum of measurements",
    [K(CHART)] = "chart",
    [K(TEXTS)] = "list of words",
    [K(COUNTS)] = "list of whole numbers, ",
    [K(LENGTHS)] = "list of lengths, ",
    [K(PART)] = "group",
    [K(PARTS)] = "list of groups",
};
_Static_assert(sizeof kinds / sizeof kinds[0] == HW_KIND_COUNT_OF, "words for each kind");

static bool ranged(hw_kind kind)
{
    return kind == K(COUNT) || kind == K(NUMBER) || kind == K(LENGTH) || kind == K(COUNTS) ||
           kind == K(LENGTHS);
}

const char *hw_keys_word_end(const char *word)
{
    return word + strcspn(word, "|");
}

void hw_key_show_kind(hw_buf *buf, const hw_key *key)
{
    hw_buf_text(buf, kinds[key->kind]);
    bool in_cm = key->kind == K(LENGTH) || key->kind == K(LENGTHS);
    if (ranged(key->kind)) {
        hw_num_show(buf, key->least, 2);
        hw_buf_text(buf, " to ");
        hw_num_show(buf, key->most, 2);
        hw_buf_text(buf, in_cm ? " cm" : "");
    }
    for (const char *w = key->kind == K(WORD) ? key->words : ""; *w != '\0';) {
        const char *end = hw_keys_word_end(w);
        hw_buf_bytes(buf, w, (size_t)(end - w));
        hw_buf_text(buf, *end == '|' ? ", " : "");
        w = *end == '|' ? end + 1 : end;
    }
}
