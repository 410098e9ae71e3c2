# The fabric that is promised of trims, and the comparison of what was knitted with it.
# SPDX-License-Identifier: GPL-3.0-or-later
"""knit_trims.py: knits every trim of a plan's document and compares it with its chart.

A trim is picked up along its edges with the garment's wrong side to the knitter, so that its right
end hangs at the left of the bed, or by hand knitted up from right to left with the right side
facing; then come face, fold and facing, and the row that was picked up is hung again and knitted in,
or the last row is sewn down (all common practice). Stitches of a trim on one upright edge are
counted from its lower end: on a left edge that is its left end, once it stands up. Buttonholes lie
in both layers over the same stitches, in the rows that the document's trims tell.
"""

from knit_bed import Piece, Wrong, need, needle
from knit_wanted import FOLD_NAMES, Band, Wanted

OTHER = {"left": "right", "right": "left"}


def first_end(trim, pieces, trims):
    """The end from which stitches are counted, where edges lie on one side of one piece, by that
    side; else the right one. Ends of other trims tell nothing more. (No garment here lists edges of
    one side from the top down.)"""
    found = set()
    for share in trim["shares"]:
        words = share["edge"]
        if words.endswith(" end") and words[:-len(" end")] in trims:
            continue
        piece = max((p for p in pieces if words.startswith(p + " ")), key=len)
        edge = words[len(piece) + 1 :]
        found.add((piece, edge.startswith(("left", "neck right"))))
    return "left" if len(found) == 1 and found.pop()[1] else "right"


class WantedTrim(Wanted):
    """One trim in one size; what it shares with a piece is the piece's."""

    def __init__(self, plan, block):  # pylint: disable=super-init-not-called
        self.plan, self.block = plan, block
        self.key = block["piece"], block["size"]
        found = [t for t in plan.doc["trims"] if (t["trim"], t["size"]) == self.key]
        need(len(found) == 1, "no trim", *self.key)
        self.trim = found[0]
        self.said = plan.project.get("trims", {}).get(self.key[0], {})
        self.hand = block["work"] == "hand"
        self.machine = plan.project["machine"]
        self.edges = (0, 0)
        self.first_seen = first_end(self.trim, plan.mirrors, {t["trim"] for t in plan.doc["trims"]})
        need(self.trim["counted_from"] == self.first_seen, "counted from",
             self.trim["counted_from"])
        place = self.trim["place"]
        long = not self.hand and self.trim["sts"] > self.machine["needles"]
        need(self.trim["longer_than_bed"] == long, "longer than the bed")
        need((place is None) == (self.hand or long), "place on the bed", place)
        # A trim that is longer than the bed is counted off from its right end.
        self.unplaced = place is None
        self.base = needle(place["first_needle"]) if place else 0
        need(place is None or needle(place["last_needle"]) - self.base + 1 == self.trim["sts"],
             "needles of the trim")
        self.bands, self.starts, self.cards = {}, {}, {}
        if self.trim["motif"] is not None:
            self.place_motif()

    def place_motif(self):
        trim = self.trim
        before, behind = trim["sts_before_first_motif"], trim["sts_behind_last_motif"]
        if trim["round"]:
            need((before, behind) == (0, trim["gap"]), "margins in a ring")
        ends = {self.first_seen: before, OTHER[self.first_seen]: behind}
        band = Band(trim["chart"], trim["gap"], trim["motifs"], ends["left"], ends["right"])
        chart, gap = self.said.get("motif") or (trim["chart"], trim["gap"])
        need((chart, gap) == (trim["chart"], trim["gap"]), "the chart of the trim")
        need(band.width() + before + behind == trim["sts"], "margins and motifs")
        need(max(before, behind) <= trim["gap"], "ends wider than the gap")
        self.bands, self.starts = {0: band}, {0: self.base + band.right}

    def how(self):
        machine = self.machine
        return {
            "first": self.base, "picked_up": self.trim["sts"], "edges": self.edges,
            "either_side": self.plan.project["either_side"],
            "needles": 10 ** 6 if self.unplaced else machine["needles"],
            "unplaced": self.unplaced, "bed": self.reach(), "offset": machine["offset"],
            "loop": 36, "card": self.card, "no_card": self.no_card, "reading": self.reading,
            "set_by_hand": self.set_by_hand,
        }

    def reach(self):
        half = self.machine["needles"] // 2
        return range(self.base, self.base + self.trim["sts"]) if self.unplaced else range(-half,
                                                                                          half)

    def card(self, row):
        if self.unplaced and 0 not in self.cards:
            # Wherever a length of it is hung, its figures stand on the card's.
            self.cards[0] = Aligned(self)
        return super().card(row)

    def card_start(self):
        return self.trim["place"]["card_start_column"]

    # ---- Comparison ----

    def check(self):
        self.check_frame()
        piece = Piece(self.block, self.how())
        fabric = piece.knit()
        self.check_rows(fabric, piece)
        self.check_colours(fabric)
        self.check_figures(fabric)
        self.check_holes(piece)
        self.check_ends()
        self.check_lengths()
        return fabric

    def check_lengths(self):
        """Longer than the bed: lengths that it holds, with a stitch for each seam; none parts a
        figure or comes beside a buttonhole, and figures of all stand on the card's columns."""
        lengths, sts = self.trim["lengths"], self.trim["sts"]
        need((lengths is None) <= (not self.trim["longer_than_bed"] or bool(self.bands)), "lengths")
        need(lengths is None or self.trim["longer_than_bed"], "lengths of what is short enough")
        if lengths is None:
            return
        half, behind = self.machine["needles"] // 2, 0
        for i, length in enumerate(lengths):
            first = needle(length["first_needle"])
            need(-half <= first and first + length["sts"] <= half, "length", i + 1, "off the bed")
            self.check_card_of(length, first - behind + (i > 0), behind)
            behind += length["sts"] - (i > 0) - (i + 1 < len(lengths))
            self.check_break(behind)
        need(behind == sts and len(lengths) > 1, "lengths of", behind, "stitches in all")

    def check_card_of(self, length, base, behind):
        """`base` is the needle on which the trim's right end would hang."""
        columns = self.machine["columns"]
        if self.bands and self.block["work"] in ("pre-selecting", "direct"):
            band = self.bands[0]
            start = length["card_start_column"] - 1
            need((base + band.right + columns // 2 - start) % band.repeat == 0, "length behind",
                 behind, "does not stand on the card")

    def check_break(self, behind):
        sts, holes = self.trim["sts"], self.trim["buttonholes"]
        if behind >= sts:
            return
        if self.bands:
            band = self.bands[0]
            within = (behind - band.right) % band.repeat
            need(within in (0, *range(band.repeat - self.trim["gap"], band.repeat)),
                 "a figure is parted behind", behind)
        for below in holes["sts_before"] if holes else []:
            wide = holes["sts_of_each"]
            right = below if self.first_seen == "right" else sts - below - wide
            need(not right <= behind <= right + wide, "a buttonhole is parted behind", behind)

    def check_ends(self):
        """Where it is picked up over the end of a trim, that trim's face has so many rows."""
        faces = {t["trim"]: t["hem"]["face_rows"] for t in self.plan.doc["trims"]
                 if t["size"] == self.key[1]}
        for share in self.trim["shares"]:
            need(sum(p["sts"] for p in share["parts"]) == share["sts"], "parts of", share)
            name = share["edge"][:-len(" end")]
            if share["edge"].endswith(" end") and name in faces and share["sts"] > 0:
                need((share["over"], share["over_what"]) == (faces[name], "rows"), "over the end",
                     share)

    def check_frame(self):
        block, project, trim = self.block, self.plan.project, self.trim
        rounds = self.hand and trim["round"]
        begins = ("right" if rounds else "left") if self.hand else project["begins"]
        need(block["trim"] is True, "is no trim")
        need(block["start_side"] == begins, "starts at the", block["start_side"])
        need(block["in_rounds"] == rounds and block["round_pieces"] == [], "in rounds")
        need(block["round_rows"] == (len(block["rows"]) if rounds else 0), "rounds, not all rows")
        for row in block["rows"]:
            need(row["round_stitches"] == (row["stitches"] if rounds else None), "row",
                 row["number"], "has", row["round_stitches"], "in the whole round")
        for key in ("cast_on", "closing"):
            need(block[key] == self.said.get(key, project[key]), key, block[key])
        work = self.machine["work"]
        if work in ("pre-selecting", "direct") and self.bands:
            fits = self.machine["columns"] % self.bands[0].repeat == 0
            work = work if fits else "needles by hand"
        need(block["work"] == work, "worked", block["work"], "not", work)
        if self.trim["place"] and self.bands and work in ("pre-selecting", "direct"):
            self.check_place()

    def check_place(self):
        """The needles nearest to the middle on which the figures stand on the card's."""
        columns, repeat = self.machine["columns"], self.bands[0].repeat
        first = self.starts[0] - self.base
        half, sts = self.machine["needles"] // 2, self.trim["sts"]
        fit = [q for q in range(-half, half - sts + 1)
               if (q + first + columns // 2 - (self.card_start() - 1)) % repeat == 0]
        need(self.base in fit, "its figures do not stand on the card's")
        off = min(abs(2 * q + sts) for q in fit)
        need(abs(2 * self.base + sts) <= off + 1, "stands", self.base, "further off than", fit)

    def check_rows(self, fabric, piece):
        hem = self.trim["hem"]
        need(hem["face_rows"] == hem["above_rows"] + hem["band_rows"] + hem["below_rows"], "face")
        kinds = (["face"] * hem["above_rows"] + ["band"] * hem["band_rows"]
                 + ["face"] * hem["below_rows"] + ["fold"] * hem["fold_rows"]
                 + ["facing"] * hem["facing_rows"])
        if self.block["work"] == "pre-selecting" and self.bands:
            kinds[hem["above_rows"] - 1] = "set-up"
        hung = self.block["closing"] == "hung"
        need(self.block["hem_rows"] == len(kinds), "rows of the hem", self.block["hem_rows"])
        need(kinds + ["joining"] * hung == [r.kind for r in fabric], "kinds of rows")
        fold = FOLD_NAMES[hem["fold"]]
        need(fold == self.said.get("fold", fold), "fold", fold)
        folded = hem["face_rows"] + 1
        need([r.number for r in fabric if r.purl] == [folded] * (fold == "purl"), "purl rows")
        need(piece.picots == [folded] * (fold == "picot"), "picots", piece.picots)
        self.check_dials(fabric, fold)
        for row, told in zip(fabric, self.block["rows"]):
            need(len(row.colours) == self.trim["sts"], "row", row.number, "stitches")
            need(not self.hand or told["right_side"] == (told["begins_at"] == "right"), "row",
                 row.number, "right side")
        left = "open" if self.block["cast_on"] == "open" and not hung else "bound off"
        need(piece.left == left, "its last row is left", piece.left, "not", left)

    def check_dials(self, fabric, fold):
        gauge = self.plan.doc["gauge"]
        dials = {f: gauge[f]["dial"] for f in ("main", "band", "facing")}
        own = self.said.get("dial")
        if own is not None and self.bands:
            dials["band"] = own
        elif own is not None:
            # One number tighter inside, as any facing [H1 in data/SOURCES.md].
            dials = {"main": own, "band": own, "facing": own - 1}
        known = None not in dials.values()
        wanted = {"face": dials["main"], "set-up": dials["main"], "fold": dials["main"],
                  "band": dials["band"] if known else None,
                  "facing": dials["facing"] if known else None,
                  "joining": dials["facing"] + 2 if known else None}  # [H1]
        for row in fabric:
            dial = "loosest" if row.kind == "fold" and fold == "loose" else wanted[row.kind]
            dial = None if self.hand and dial != "loosest" else dial
            need(row.dial == dial, "row", row.number, "dial", row.dial, "not", dial)

    def check_holes(self, piece):
        """In both layers, over the stitches that the document's trims tell."""
        holes = self.trim["buttonholes"]
        if holes is None:
            need(not piece.holes, "buttonholes that nobody asked for")
            return
        sts, wide, hem = self.trim["sts"], holes["sts_of_each"], self.trim["hem"]
        asked = self.said.get("holes", (len(holes["sts_before"]), wide))
        need((len(holes["sts_before"]), wide) == asked, "buttonholes", asked)
        from_right = [n if self.first_seen == "right" else sts - n - wide
                      for n in holes["sts_before"]]
        rows = {holes["face_row"], holes["facing_row"]}
        need(set(piece.holes) == rows, "buttonholes in rows", sorted(piece.holes))
        for row, found in piece.holes.items():
            need(sorted(found) == sorted((n, wide) for n in from_right), "buttonholes of row", row,
                 found)
        behind = hem["face_rows"] + hem["fold_rows"]
        need(1 <= holes["face_row"] <= hem["face_rows"], "the face's buttonholes in another layer")
        need(behind < holes["facing_row"] <= behind + hem["facing_rows"], "the facing's buttonholes "
             "in another layer")
        # Made as a row begins, a hole lies between it and the row before.
        self.check_folded(range(holes["face_row"], hem["face_rows"] + 1),
                          range(behind + 1, holes["facing_row"]))

    def check_folded(self, face, facing):
        """Once folded, one lies on the other: as far from the fold in cm, to half a row. The
        facing lies half-way between its own depth and the face's (own choice, no source)."""
        hem, gauge = self.trim["hem"], self.plan.doc["gauge"]
        height = {f: 10 / gauge[f]["rows_per_10cm"] for f in ("main", "band", "facing")}
        if "dial" in self.said or not all(height.values()):
            return  # a gauge of its own, which the document does not tell
        band = range(hem["above_rows"] + 1, hem["above_rows"] + hem["band_rows"] + 1)
        outside = sum(height["band" if r in band else "main"] for r in face)
        row = (hem["facing_rows"] * height["facing"] + hem["face_cm"]) / 2 / hem["facing_rows"]
        inside = len(facing) * row
        short = len(facing) == hem["facing_rows"] - 1 and inside < outside
        need(short or abs(outside - inside) <= row / 2 + 1e-6,
             "one layer's buttonholes do not lie on the other's:", outside, "and", inside, "cm")


class Aligned:
    """A card whose columns follow the trim, from whichever needle its figures are hung."""

    def __init__(self, trim):
        self.trim, self.rows = trim, len(trim.trim["chart"])

    def hole(self, row, q):
        line = self.trim.line({"band": 0, "chart_row": (row - 1) % self.rows + 1, "number": 0}, q, q)
        return line == "o"


def check_trims(plan):
    """All trims of a document; returns how many rows were knitted."""
    doc = plan.doc
    blocks = [b for b in doc["rows"] if b["trim"]]
    need(doc["rows"][len(doc["rows"]) - len(blocks):] == blocks, "trims stand before pieces")
    need(sorted((b["piece"], b["size"]) for b in blocks)
         == sorted((t["trim"], t["size"]) for t in doc["trims"]), "trims with rows")
    rows = 0
    for block in blocks:
        try:
            rows += len(WantedTrim(plan, block).check())
        except Wrong as wrong:
            raise Wrong(f"{block['piece']}, {block['size']}: {wrong}") from None
    return rows
