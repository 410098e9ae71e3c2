# A knitter and a machine: rows of a plan carried out one by one, and what hangs on the needles.
# SPDX-License-Identifier: GPL-3.0-or-later
"""knit_bed.py: knits the rows of one piece and says where they cannot be knitted.

Written from the form of the document alone (src/write/jsonrows.h), apart from the planner. What a
carriage and a card do is common practice: a pre-selecting carriage brings needles out for the row
after the one that it knits; what stands out takes the second feeder; a card that is held is read
without moving on. `knit.py` uses it.

The bed: needle q, R1 is 0 and L1 is -1. The purl side faces the knitter, so the piece's right edge
hangs at the left of the bed. Hand knitting is worked on needles 0, 1, 2 ... from the right edge.

Rounds, common practice: every round shows its right side and is worked from the right, through all
pieces of a tube, which `knit_tube.py` puts together; a piece has no edge of its own there, so its
ends lose or gain single stitches beside a marker and nothing is bound off or cast on. Where rounds
end the piece is taken up by itself, for a right-side row, and turned after it.
"""

OTHER = {"left": "right", "right": "left"}
TWO = "two colours"


class Wrong(Exception):
    """What a knitter would stumble over."""


def need(good, *words):
    if not good:
        raise Wrong(" ".join(str(w) for w in words))


def needle(name):
    """L1 is -1, R1 is 0."""
    return -int(name[1:]) if name[0] == "L" else int(name[1:]) - 1


class Card:
    """Holes made from a figure: mirrored, since the purl side faces the knitter."""

    def __init__(self, chart, repeat, columns, start):
        self.columns, self.rows = columns, len(chart)
        self.holes = []
        for row in reversed(chart):
            punched = [False] * columns
            for first in range(0, columns, repeat):
                for i, stitch in enumerate(reversed(row)):
                    if stitch == "o":
                        punched[(start - 1 + first + i) % columns] = True
            self.holes.append(punched)

    def hole(self, row, q):
        return self.holes[(row - 1) % self.rows][(q + self.columns // 2) % self.columns]


class Row:
    """A row as it was knitted."""

    def __init__(self, row, first, colours, moved=0):
        self.number, self.part, self.kind = row["number"], row["part"], row["kind"]
        self.band, self.chart_row, self.dial = row["band"], row["chart_row"], row["dial"]
        self.begins_at, self.purl = row["begins_at"], False
        self.first, self.colours = first, colours  # from the left of the bed
        self.last = first + len(colours) - 1
        self.moved = moved  # needles to the right of where the hem hung
        self.sides = row["carriage_before"], row["carriage_after"]

    def seen(self):
        """From the left, the right side facing."""
        return self.colours[::-1]


class Piece:
    """What is on the needles, and what comes of it. `how` is knit.py's description of the piece."""

    def __init__(self, block, how):
        self.block, self.how = block, how
        self.hand_knitting = block["work"] == "hand"
        self.home = self.side = block["start_side"]
        self.counter = None if not self.hand_knitting else 0
        self.loops = {}  # on each needle in work
        self.kept = {}  # the half that waits
        self.short = {"low": 0, "high": 0}  # held in short rows
        self.cast_on = None  # open loops or a wrapped edge, until the hem is closed
        self.closed = False
        self.out = None  # needles brought out for the next row; None: nothing was selected
        self.card = self.card_row = None
        self.fresh = self.locked = False
        self.yarn = {"main": self.home, "contrast": None}
        self.findings = [(f["kind"], f["row"]) for f in block["findings"]]
        self.used = set()
        self.fabric, self.marks, self.picots, self.rehung = [], [], [], []
        self.ended, self.purling, self.loose_half = False, False, False
        self.moved = self.kept_moved = 0
        self.changed = {}
        self.waiting = None  # stitches of the half that is about to be held
        self.holes, self.left = {}, None  # of trims: buttonholes, how the last row is left
        self.went_in = None  # the carriage's side when the second yarn was put in
        self.round = block["in_rounds"]  # until its rows turn
        self.rounds = 0

    # ---- Needles ----

    def low(self):
        return min(self.loops)

    def high(self):
        return max(self.loops)

    def ends(self, row, place):
        """The ends of the bed's row of stitches at which a step happens."""
        left_half = row["part"] == "left half"
        if row["part"] == "whole":
            places = {"right": ["low"], "left": ["high"], "both": ["low", "high"]}
        else:
            own, neck = ("high", "low") if left_half else ("low", "high")
            name = "left" if left_half else "right"
            places = {name: [own], "both": [own], "neck " + name: [neck], "neck both": [neck]}
        need(place in places, "row", row["number"], "has no edge", place, "to shape")
        return places[place]

    @staticmethod
    def edge_at(end):
        """The piece's edge at an end: its right edge hangs at the left of the bed."""
        return "right" if end == "low" else "left"

    def take_off(self, end, sts, onto_next):
        for _ in range(sts):
            q = self.low() if end == "low" else self.high()
            loops = self.loops.pop(q)
            need(self.loops, "nothing is left on the needles")
            if onto_next:
                self.loops[self.low() if end == "low" else self.high()] += loops

    def put_on(self, end, sts, loops):
        for _ in range(sts):
            self.loops[self.low() - 1 if end == "low" else self.high() + 1] = loops

    def shape(self, row, hand):
        step, sts = hand["step"], hand["stitches"]
        kind, place = step["kind"], step["place"]
        if kind == "divide":
            return self.divide(row, sts)
        if kind == "end":
            return self.end(row, hand)
        need(hand["when"] == "before", "row", row["number"], kind, "after a row")
        for end in self.ends(row, place):
            edge = self.edge_at(end)
            self.changed[end] = self.changed.get(end, 0) + sts
            at_start = row["begins_at"] == edge
            need(not self.round or kind in ("decrease", "increase") and self.changed[end] == 1,
                 "row", row["number"], kind, sts, "stitches at the end of a piece in a round")
            if kind == "hold":
                need(not at_start, "row", row["number"], "holds where it begins")
                self.take_off(end, sts, False)
                self.short[end] += sts
                continue
            if kind == "back":
                # Worked from inside: from their own edge the yarn would lie across all of them.
                need(not at_start, "row", row["number"], "begins behind held stitches")
                need(sts == self.short[end], "row", row["number"], sts, "back of", self.short[end])
                self.put_on(end, sts, 1)
                self.short[end] = 0
                continue
            need(self.changed[end] == 1 or at_start, "row", row["number"], kind, sts,
                 "stitches where it does not begin")
            if kind in ("decrease", "increase"):
                need(sts == 1, "row", row["number"], kind, sts, "stitches at once")
            if kind in ("decrease", "bind off"):
                self.take_off(end, sts, kind == "decrease" or sts)
            else:
                self.put_on(end, sts, 0 if kind == "increase" else 1)

    def divide(self, row, middle):
        half = row["part"]
        need(not self.round, "row", row["number"], "parts a round")
        need(half in ("left half", "right half"), "row", row["number"], "divides and stays whole")
        need(self.waiting is not None, "row", row["number"], "divides and holds no half")
        count = len(self.loops)
        need(count > middle + self.waiting, "row", row["number"], "parts more than there is")
        order = sorted(self.loops, reverse=half == "right half")
        for q in order[: self.waiting]:
            self.kept[q] = self.loops.pop(q)
        self.kept_moved = self.moved
        for q in order[self.waiting : self.waiting + middle]:
            del self.loops[q]
        self.waiting = None

    def end(self, row, hand):
        need(hand["when"] == "after", "row", row["number"], "ends before it is knitted")
        place, edges = hand["step"]["place"], self.how["edges"]
        part = row["part"]
        if place == "middle":
            need(part == "whole", "row", row["number"], "ends the middle of a half")
            own = sum(edges)
        else:
            need(part != "whole" and place in ("both", part.split()[0]), "row", row["number"],
                 "ends", place, "of", part)
            own = edges[0] if part == "left half" else edges[1]
        left = len(self.loops)
        need(hand["stitches"] + own == left, "row", row["number"], "ends with", left,
             "stitches, not", hand["stitches"], "and", own, "at the edge")
        outer = {"left half": ("high",), "right half": ("low",), "whole": ("low", "high")}[part]
        need(not any(self.short[end] for end in outer), "row", row["number"],
             "ends while stitches are held")
        self.loops, self.ended = {}, True

    # ---- Hand work ----

    def by_hand(self, row, hand):
        what, sts, number = hand["what"], hand["stitches"], hand["number"]
        name = f"row {row['number']}: {what}"
        if self.trim_work(row, hand, name):
            return
        if what == "cast on":
            need(not self.loops and not self.fabric, name, "twice")
            first = self.how["first"]
            self.loops = {first + i: 1 for i in range(sts)}
            need(sts == self.how.get("cast_on"), name, sts, "stitches")
            self.cast_on = sts
            waste = self.block["cast_on"] == "open" and not self.hand_knitting
            need((number or 0) > 0 if waste else number is None, name, "waste rows", number)
        elif what == "counter":
            self.counter = number
        elif what == "picot":
            for q in range(self.low(), self.high(), 2):
                self.loops[q], self.loops[q + 1] = 0, 2
            self.picots.append(row["number"])
        elif what == "purl":
            # On a bed the row is knitted first, and its stitches are turned by hand.
            if hand["when"] == "after":
                self.fabric[-1].purl = True
            self.purling = hand["when"] == "before"
        elif what == "move":
            need(not self.hand_knitting and hand["when"] == "before" and number, name, number)
            self.loops = {q + number: loops for q, loops in self.loops.items()}
            self.moved += number
        elif what == "card in":
            need(self.block["work"] in ("pre-selecting", "direct"), name, "without a card")
            self.card = True
            self.card_row, self.fresh, self.locked = number, True, True
        elif what == "card go":
            need(self.card and self.locked, name, "of a card that is not held")
            self.locked = False
        elif what in ("second yarn in", "second yarn out"):
            self.second_yarn(row, what, name)
        elif what == "re-hang":
            need(len(self.loops) - sts == number, name, len(self.loops), "to", sts, "is not", number)
            need(sts == self.how["rehung"], name, "keeps", sts)
            # In the middle of where they were, or half a stitch beside it, but on the bed.
            away = (row["first_needle"] - self.low()) if not self.hand_knitting else number // 2
            half = self.how["needles"] // 2
            ends = (self.low() + away == -half, self.low() + away + sts == half)
            nearer = (2 * away - number > 1 and ends[0]) or (number - 2 * away > 1 and ends[1])
            need(abs(2 * away - number) <= 1 or nearer, name, away, "needles of", number)
            self.rehung.append((row["number"], away))
            self.loops = {self.low() + away + i: 1 for i in range(sts)}
        elif what == "hang hem":
            need(self.cast_on and not self.closed, name, "twice")
            need(sts == len(self.loops), name, sts, "loops on", len(self.loops), "needles")
            need(self.block["closing"] == "hung" and row["kind"] == "joining", name, "there")
            need(self.cast_on == sts or self.rehung, name, sts, "of", self.cast_on, "loops")
            for q in self.loops:
                self.loops[q] += 1
            self.closed = True
        elif what == "sew hem":
            need(self.block["closing"] == "sewn", name, "and hung")
            need("picked_up" not in self.how or self.left is not None, name, "on the needles")
            self.closed = True
        elif what == "into rows":
            need(self.round and hand["when"] == "before", name, "and no round goes before")
            need(sts == len(self.loops), name, sts, "of", len(self.loops))
            self.round, self.side = False, self.home
        elif what == "mark":
            need(hand["when"] == "before", name, "after a row")
            self.marks.append(row["number"])
        elif what == "shape":
            self.shape(row, hand)
        elif what == "hold half":
            self.waiting = sts
        elif what == "half back":
            need(self.ended and len(self.kept) == sts, name, sts, "of", len(self.kept))
            self.loops, self.kept, self.ended = self.kept, {}, False
            self.moved = self.kept_moved
            # The carriage is taken to where the half begins, and the yarn joined there.
            self.loose_half = True
            if self.hand_knitting:
                self.counter = None
        else:
            need(what == "weights", name, "is not known")

    def trim_work(self, row, hand, name):
        """What is done in trims alone; False for anything else."""
        what, sts, number = hand["what"], hand["stitches"], hand["number"]
        if what == "pick up":
            need(not self.loops and not self.fabric and hand["when"] == "before", name, "twice")
            need(sts == self.how.get("picked_up") and number is None, name, sts, "stitches")
            self.loops = {self.how["first"] + i: 1 for i in range(sts)}
            self.cast_on = sts
        elif what == "buttonhole":
            need(hand["when"] == "before" and number is not None, name, "when, or where")
            count = len(self.loops)
            need(0 < number and 0 < sts and number + sts < count, name, number, sts, "of", count)
            # By hand from where the row begins; the right end is at needle 0 and left of the bed.
            if self.hand_knitting and row["begins_at"] == "left":
                number = count - number - sts
            for q in range(self.low() + number, self.low() + number + sts):
                need(self.loops[q] == 1, name, "over stitches that are none")
                self.loops[q] = 2  # bound off, and cast on again
            self.holes.setdefault(row["number"], []).append((number, sts))
        elif what in ("take off", "bind off"):
            need(hand["when"] == "after" and "picked_up" in self.how, name, "of a piece")
            need(row is self.block["rows"][-1] and sts == len(self.loops), name, sts, "stitches")
            need(self.closed == (self.block["closing"] == "hung"), name, "before it is closed")
            self.loops, self.ended = {}, True
            self.left = "open" if what == "take off" else "bound off"
        else:
            return False
        return True

    def second_yarn(self, row, what, name):
        either = self.how["either_side"] or self.hand_knitting
        if what == "second yarn in":
            need(hand_first(row, what) and self.yarn["contrast"] is None, name)
            self.yarn["contrast"] = row["carriage_before"] if either else self.home
            self.went_in = row["carriage_before"]
            return
        need(self.yarn["contrast"] is not None, name)
        if not either and self.yarn["contrast"] != self.went_in:
            self.excuse("band end", row)
        self.yarn["contrast"] = None

    def excuse(self, kind, row):
        """A side that does not come out has to be told of."""
        need((kind, row["number"]) in self.findings, "row", row["number"], kind,
             "at the wrong side, and nobody says so")
        self.used.add((kind, row["number"]))

    # ---- A row ----

    def knit(self):
        for row in self.block["rows"]:
            self.changed = {}
            for hand in row["hand"]:
                need(hand["when"] in ("before", "after"), "row", row["number"], "hand work when")
                if hand["when"] == "before":
                    self.by_hand(row, hand)
            need(self.loops and not self.ended, "row", row["number"], "has nothing to knit")
            self.count(row)
            self.sides(row)
            self.needles(row)
            self.fabric.append(self.hand_row(row) if self.hand_knitting else self.bed_row(row))
            self.fabric[-1].purl, self.purling = self.purling, False
            self.loops = {q: 1 for q in self.loops}
            for hand in row["hand"]:
                if hand["when"] == "after":
                    self.by_hand(row, hand)
        self.finish()
        return self.fabric

    def count(self, row):
        if self.hand_knitting and self.counter is None:
            first = [r["number"] for r in self.block["rows"] if r["part"] != "whole"][0]
            self.counter = first - 1
        need(self.counter is not None, "row", row["number"], "with the counter not set")
        need(row["number"] == self.counter + 1, "row", row["number"], "after", self.counter)
        self.counter += 1

    def sides(self, row):
        name = f"row {row['number']}:"
        if self.loose_half:
            first = [r for r in self.block["rows"] if r["part"] != "whole"][0]
            need(row["begins_at"] == first["begins_at"], name, "the second half begins elsewhere")
            self.side = row["begins_at"] if self.hand_knitting else row["carriage_before"]
            self.yarn["main"], self.loose_half = self.side, False
        if self.hand_knitting:
            need(row["carriage_before"] is None and row["carriage_after"] is None, name, "carriage")
            need(row["begins_at"] == self.side, name, "begins at", row["begins_at"])
            need(row["right_side"] == (row["begins_at"] == "right"), name, "shows the wrong side")
            self.rounds += self.round
            need(not self.round or row["part"] == "whole", name, "half a piece in a round")
            self.side = self.side if self.round else OTHER[self.side]
            return
        need(row["right_side"] is None, name, "right side on a bed")
        need(row["carriage_before"] == self.side, name, "the carriage is at the", self.side)
        need(row["begins_at"] == OTHER[self.side], name, "begins at", row["begins_at"])
        need(row["carriage_after"] == OTHER[self.side], name, "ends at", row["carriage_after"])
        need(self.yarn["main"] == self.side, name, "the main yarn is at the", self.yarn["main"])
        self.side = OTHER[self.side]

    def needles(self, row):
        name = f"row {row['number']}:"
        need(row["stitches"] == len(self.loops), name, row["stitches"], "stitches,",
             len(self.loops), "on the needles")
        if self.hand_knitting or self.how.get("unplaced"):
            need(row["first_needle"] is None and row["last_needle"] is None, name, "needles")
            return
        need((row["first_needle"], row["last_needle"]) == (self.low(), self.high()), name,
             "needles", row["first_needle"], row["last_needle"], "not", self.low(), self.high())
        half = self.how["needles"] // 2
        need(-half <= self.low() and self.high() < half, name, "a needle outside the bed")

    def hand_row(self, row):
        """Stitch after stitch from where the row begins, as the chart is read from there."""
        name = f"row {row['number']}:"
        need(row["setting"] == "none" and row["card"] == "not read", name, row["setting"])
        need(not self.round or row["right_side"], name, "a wrong side in rounds")
        if row["band"] is None:
            need(row["feeders"] == ["main", "none"], name, "feeders")
            return Row(row, self.low(), "." * len(self.loops))
        chart, wide = self.how["reading"](row, self.low(), self.high())
        # A row without a contrast stitch leaves that yarn lying.
        need(row["feeders"][0] != row["feeders"][1] and "none" not in row["feeders"]
             or row["feeders"] == ["main", "none"] and "o" not in chart, name, "feeders")
        ink = {".": row["feeders"][0] == "contrast", "o": row["feeders"][1] == "contrast"}
        # Right-side rows are read from the right, wrong-side rows from the left.
        order = chart[::-1] if row["right_side"] else chart
        worked = "".join("o" if ink[stitch] else "." for stitch in order)
        need(len(worked) == wide, name, "the chart has another width")
        # Needle 0 is at the right edge.
        return Row(row, self.low(), worked if row["begins_at"] == "right" else worked[::-1])

    def bed_row(self, row):
        name, setting = f"row {row['number']}:", row["setting"]
        two = setting.startswith(TWO)
        need(two == (row["band"] is not None), name, setting, "in a row of another kind")
        found = self.read_card(row)
        out = self.brought_out(row, two, found)
        need(row["feeders"][1] == "none" or two, name, "a second yarn in a plain row")
        if not two:
            need(row["feeders"] == ["main", "none"], name, "feeders", row["feeders"])
        else:
            need("none" not in row["feeders"], name, "one yarn for two colours")
            need(self.yarn["contrast"] is not None, name, "the second yarn is not in")
            if self.yarn["contrast"] != row["carriage_before"]:
                self.excuse("band start", row)
            self.yarn["contrast"] = self.side
        self.yarn["main"] = self.side
        ink = {"main": ".", "contrast": "o"}
        colours = "".join(ink[row["feeders"][1 if q in out else 0]] for q in sorted(self.loops))
        return Row(row, self.low(), colours, self.moved)

    def brought_out(self, row, two, found):
        """Needles that stand out when the carriage sets off; of a direct one, that it brings out."""
        work, name = self.block["work"], f"row {row['number']}:"
        ready, self.out = self.out, found if row["setting"].endswith(", selecting") else None
        ends = {"pre-selecting": (", selecting", ", not selecting"), "direct": (", direct",),
                "needles by hand": (", by hand",)}[work]
        if not two:
            plain = ("plain", "plain, selecting") if work == "pre-selecting" else ("plain",)
            need(row["setting"] in plain, name, row["setting"])
            need(ready is None, name, "needles stand out in a plain row")
            return set()
        if self.how["no_card"](row):
            ends = (", by hand",)
        need(row["setting"] in [TWO + e for e in ends], name, row["setting"], "with", work)
        if ends == (", by hand",):
            need(ready is None, name, "needles stand out already")
            return {q for q in self.loops if self.how["set_by_hand"](row, q - self.moved)}
        if work == "pre-selecting":
            need(ready is not None, name, "no needles were selected")
            return {q for q in self.loops if q in ready}
        return found

    def read_card(self, row):
        """The needles whose holes the card shows, where the row reads it."""
        name, setting = f"row {row['number']}:", row["setting"]
        reads = setting.endswith(", selecting") or setting.endswith(", direct")
        need(reads == (row["card"] != "not read"), name, setting, "card", row["card"])
        if not reads:
            need(row["card_row"] is None and row["card_row_in_view"] is None, name, "card row")
            return None
        need(self.card, name, "no card is in")
        if row["card"] == "moving":
            need(not self.locked, name, "the card is held")
            self.card_row += not self.fresh
        else:
            need(self.locked, name, "the card is not held")
        self.fresh = False
        need(row["card_row"] == self.card_row, name, "card row", self.card_row)
        card = self.how["card"](row)
        # A joined card is as many whole figures high as make a loop.
        offset, loop = self.how["offset"], -(-self.how["loop"] // card.rows) * card.rows
        shown = None if offset is None else (self.card_row + offset - 1) % loop + 1
        need(row["card_row_in_view"] == shown, name, "card row in view", shown)
        return {q for q in self.how["bed"] if card.hole(self.card_row, q)}

    def finish(self):
        need(not self.kept and self.out is None, "the piece is left with needles out or a half kept")
        need(self.yarn["contrast"] is None or self.hand_knitting, "the second yarn stays in")
        need(self.closed, "the hem stays open")
        need("picked_up" not in self.how or self.left is not None, "the trim stays on the needles")
        need(self.rounds == self.block["round_rows"], self.rounds, "rounds, not",
             self.block["round_rows"])
        for kind, number in self.findings:
            need(kind not in ("band start", "band end") or (kind, number) in self.used
                 or self.hand_knitting, "row", number, kind, "is told of without need")


def hand_first(row, what):
    return any(h["what"] == what and h["when"] == "before" for h in row["hand"])
