# Tubes: the rounds of several pieces put together, as they lie on one needle.
# SPDX-License-Identifier: GPL-3.0-or-later
"""knit_tube.py: joins the slices of each round and says where they are no tube.

Written from what hand knitters do (common practice, no source), apart from the planner: the pieces
that a garment sews together all round are one tube as long as none of them wants stitches bound
off, cast on or left at its ends, a neck, or an opening where it is sewn to nothing. All of a tube
leave the rounds together. `knit_wanted.py` hands over what was knitted of each piece.
"""

import copy

from knit_bed import Piece, Wrong, need

GROUPS = ("bind off", "cast on", "hold", "divide")


class Slice:
    """One piece of a tube in one size."""

    def __init__(self, wanted, fabric, sewn):
        self.name, self.size = wanted.key
        self.block, self.draft, self.fabric = wanted.block, wanted.draft, fabric
        self.rounds, self.hem = self.block["round_rows"], self.block["hem_rows"]
        self.last = max(row["number"] for row in self.block["rows"])
        self.sewn_cm = self.top_sewn(sewn)

    def top_sewn(self, sewn):
        """Up to where both edges are sewn to their neighbours."""
        if self.draft is None:
            return float("inf")
        tops = []
        for side in ("left", "right"):
            points = self.draft["edges"][side]
            heights = [p["up_cm"] for p in points if sewn == "whole" or p["stretch"] == "side"]
            tops.append(max(heights, default=points[-1]["up_cm"]))
        return min(tops)

    def middle(self, row):
        """Of a row above the hem, counted from 0; None above the last and where nothing is drawn."""
        low = self.draft["low_cm"] if self.draft else []
        return (low[row] + low[row + 1]) / 2 if row + 1 < len(low) else None

    def rows_numbered(self, numbers):
        return [row for row in self.block["rows"] if row["number"] in numbers]

    def wants_rows(self):
        """Why the row after the rounds cannot be one."""
        if self.last <= self.rounds:
            return True
        above = self.rounds - self.hem
        middle = self.middle(above)
        if middle is not None and middle > self.sewn_cm - 1e-9:
            return True
        # The edge at the other end comes a row later, and a curve may hold out for one more.
        near = self.rows_numbered(range(self.rounds + 1, self.rounds + 4))
        return any(hand["step"] and hand["step"]["kind"] in GROUPS
                   for row in near for hand in row["hand"])

    def check(self):
        need(self.rounds >= self.hem, "rounds end within the hem")
        for row in self.block["rows"]:
            need((row["number"] <= self.rounds) == (row["round_stitches"] is not None),
                 "row", row["number"], "whole round", row["round_stitches"])
        middle = self.middle(self.rounds - self.hem - 1) if self.rounds > self.hem else None
        need(middle is None or middle <= self.sewn_cm + 1e-9, "round", self.rounds,
             "lies above where the piece is sewn to its neighbours")


def breaks_told(plan, before, behind):
    """What the document says of the gap between two pieces in the hem."""
    size = plan.doc["sizes"].index(before.size)
    ends = [{"piece": before.name, "side": "left"}, {"piece": behind.name, "side": "right"}]
    for part in [plan.doc] + plan.doc["parts"]:
        for seam in part["seams"]:
            if [seam["from"], seam["to"]] in (ends, ends[::-1]):
                return seam["breaks_sts"][size]
    need(False, "nothing is said of where", before.name, "meets", behind.name)
    return None


def check_motif(plan, slices):
    """Round the tube the hem's figure goes on without a break where none is told."""
    told = [breaks_told(plan, s, slices[(k + 1) % len(slices)]) for k, s in enumerate(slices)]
    part = next(p for p in [plan.doc] + plan.doc["parts"]
                if any(f["piece"] == slices[0].name for f in p["fits"]))
    motif = part["motif"]
    fits = [plan.fits[s.name, s.size] for s in slices]
    for k, fit in enumerate(fits):
        behind = fits[(k + 1) % len(fits)]
        gap = fit["left_margin_sts"] + behind["right_margin_sts"]
        need(gap - motif["gap"] == told[k], "a break of", gap - motif["gap"], "not", told[k])
    for number in range(1, slices[0].rounds + 1):
        rows = [next(r for r in s.fabric if r.number == number) for s in slices]
        if rows[0].band != 0:
            continue
        # From the right as it is knitted; each slice's colours run from its right edge.
        whole = "".join(row.colours for row in rows)
        repeat = motif["repeat"]
        turned = whole[repeat:] + whole[:repeat]
        need(any(told) or whole == turned, "round", number, "does not close:", whole)


def check_tube(plan, slices):
    names = [s.name for s in slices]
    rounds = slices[0].rounds
    for s in slices:
        s.check()
        need(s.rounds == rounds, s.name, "leaves after round", s.rounds, "not", rounds)
    for number in range(1, rounds + 1):
        rows = [s.rows_numbered([number]) for s in slices]
        need(all(len(r) == 1 for r in rows), "round", number, "is not one row of each of", names)
        whole = sum(r[0]["stitches"] for r in rows)
        need(all(r[0]["round_stitches"] == whole for r in rows), "round", number, "has", whole,
             "stitches, not", [r[0]["round_stitches"] for r in rows])
        kinds = {(r[0]["kind"], r[0]["band"], r[0]["chart_row"]) for r in rows}
        need(len(kinds) == 1, "round", number, "is not the same all round:", kinds)
    need(any(s.wants_rows() for s in slices), "rounds end after", rounds, "without need")
    check_motif(plan, slices)


def check_tubes(plan, done):
    """All tubes of a document; `done` is what was knitted of each piece."""
    if not plan.project["rounds"]:
        return
    for size in plan.doc["sizes"]:
        for ring in plan.project["rings"]:
            slices = [Slice(done[name, size][0], done[name, size][1], plan.project["sewn"])
                      for name in ring]
            check_tube(plan, slices)


# ---- A small tube by hand ----


def hand(what, stitches, kind=None, place=None):
    step = None if kind is None else {"kind": kind, "place": place}
    when = "after" if kind == "end" or what == "sew hem" else "before"
    return {"what": what, "when": when, "stitches": stitches, "number": None, "step": step}


def row(number, begins, stitches, whole, hands):
    return {"number": number, "part": "whole", "kind": "main", "begins_at": begins,
            "right_side": begins == "right", "carriage_before": None, "carriage_after": None,
            "dial": None, "setting": "none", "card": "not read", "card_row": None,
            "card_row_in_view": None, "band": None, "chart_row": None, "feeders": ["main", "none"],
            "first_needle": None, "last_needle": None, "stitches": stitches,
            "round_stitches": whole, "hand": hands}


def small_block():
    """Eight stitches of sixteen in a round: 2 rounds, 2 decreases, then 2 bound off at each edge."""
    rows = [row(1, "right", 8, 16, [hand("cast on", 8)]),
            row(2, "right", 6, 12, [hand("shape", 1, "decrease", "both")]),
            row(3, "right", 4, None, [hand("into rows", 6), hand("shape", 2, "bind off", "right")]),
            row(4, "left", 2, None, [hand("shape", 2, "bind off", "left")]),
            row(5, "right", 2, None, [hand("shape", 2, "end", "middle"), hand("sew hem", None)])]
    return {"work": "hand", "start_side": "right", "cast_on": "wrapped", "closing": "sewn",
            "in_rounds": True, "round_rows": 2, "round_pieces": ["front", "back"], "hem_rows": 1,
            "rows": rows, "findings": []}


# One thing wrong in each; common practice, no source, that none of it can be knitted.
SMALL = {
    "a stitch bound off in a round":
        lambda b: b["rows"][1]["hand"][0]["step"].update(kind="bind off"),
    "stitches cast on in a round": lambda b: b["rows"][1]["hand"][0]["step"].update(kind="cast on"),
    "two stitches at an end of a round": lambda b: b["rows"][1]["hand"].append(
        hand("shape", 1, "decrease", "both")) or b["rows"][1].update(stitches=4),
    "a round from the left": lambda b: b["rows"][1].update(begins_at="left", right_side=False),
    "a wrong side in a round": lambda b: b["rows"][1].update(right_side=False),
    "rows that turn not told": lambda b: b["rows"][2]["hand"].pop(0),
    "a first row on the wrong side": lambda b: b["rows"][2].update(
        begins_at="left", right_side=False),
    "a group at the wrong end": lambda b: b["rows"][2]["hand"][1]["step"].update(place="left"),
    "other stitches taken up": lambda b: b["rows"][2]["hand"][0].update(stitches=5),
    "rows that turn told again": lambda b: b["rows"][3]["hand"].insert(0, hand("into rows", 4)),
    "a round too many": lambda b: b.update(round_rows=3),
    "no rounds at all": lambda b: b.update(in_rounds=False, round_rows=0),
}


def by_hand():
    """What of the small tube was judged wrongly."""
    how = {"first": 0, "cast_on": 8, "rehung": 8, "edges": (0, 0), "either_side": False,
           "needles": 100}
    faults = []
    try:
        knitted = Piece(small_block(), how).knit()
        need([len(r.colours) for r in knitted] == [8, 6, 4, 2, 2], "stitches of the small tube")
    except Wrong as wrong:
        faults.append(f"the small tube: {wrong}")
    for name, spoil in SMALL.items():
        block = copy.deepcopy(small_block())
        spoil(block)
        try:
            Piece(block, how).knit()
            faults.append(f"the small tube, not noticed: {name}")
        except Wrong:
            pass
    return len(SMALL) + 1, faults
