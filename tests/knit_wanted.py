# The fabric that a plan promises, and the comparison of what was knitted with it.
# SPDX-License-Identifier: GPL-3.0-or-later
"""knit_wanted.py: knits every piece of a plan's document and compares the fabric with the charts.

Everything is compared as seen from the right side. What is wanted comes from the document's counts
(fits, hem, motif, uppers, drafts); of bands higher up, whose figures the document does not hold,
from the project. Curves of outlines are evaluated here: monotone, M. Steffen's interpolation
(Astronomy and Astrophysics 239, 1990, p. 443; at the ends the slope of a parabola through three
points, limited); natural, the cubic spline with second derivatives of 0 at both ends, any textbook.
"""

from knit_bed import Card, Piece, Wrong, need, needle
from knit_tube import check_tubes

HAIR = 1e-7
MIRROR = {"left": "right", "right": "left"}
FOLD_NAMES = {"no fold row": "none", "one loose row": "loose", "one purl row": "purl",
              "picot": "picot"}


# ---- Outlines ----


def steffen(xs, ys):
    """Slopes at the points of a monotone curve."""
    n = len(xs)
    if n == 2:
        return [(ys[1] - ys[0]) / (xs[1] - xs[0])] * 2
    h = [xs[i + 1] - xs[i] for i in range(n - 1)]
    s = [(ys[i + 1] - ys[i]) / h[i] for i in range(n - 1)]

    def sign(v):
        return (v > 0) - (v < 0)

    slopes = [s[0]]
    for i in range(1, n - 1):
        p = (s[i - 1] * h[i] + s[i] * h[i - 1]) / (h[i - 1] + h[i])
        least = min(abs(s[i - 1]), abs(s[i]), 0.5 * abs(p))
        slopes.append((sign(s[i - 1]) + sign(s[i])) * least)
    return slopes + [s[-1]]


def natural(xs, ys):
    """Second derivatives at the points of a natural cubic spline, by elimination."""
    n = len(xs)
    second = [0.0] * n
    if n < 3:
        return second
    diag, right = [0.0] * n, [0.0] * n
    for i in range(1, n - 1):
        a, b = xs[i] - xs[i - 1], xs[i + 1] - xs[i]
        diag[i] = 2 * (a + b)
        right[i] = 6 * ((ys[i + 1] - ys[i]) / b - (ys[i] - ys[i - 1]) / a)
        if i > 1:
            factor = a / diag[i - 1]
            diag[i] -= factor * a
            right[i] -= factor * right[i - 1]
    for i in range(n - 2, 0, -1):
        above = (xs[i + 1] - xs[i]) * second[i + 1] if i < n - 2 else 0.0
        second[i] = (right[i] - above) / diag[i]
    return second


class Edge:
    """An edge: parts that rise, each a function of height, and steps across between them."""

    def __init__(self, points):
        self.parts, self.steps = [], []
        i = 0
        while i + 1 < len(points):
            curve, j = points[i + 1]["curve"], i + 1
            if points[j]["up_cm"] - points[i]["up_cm"] < 1e-9:
                self.steps.append((points[i]["up_cm"], points[i]["across_cm"],
                                   points[j]["across_cm"]))
                i = j
                continue
            while (curve != "straight" and j + 1 < len(points) and points[j + 1]["curve"] == curve
                   and points[j + 1]["up_cm"] - points[j]["up_cm"] >= 1e-9):
                j += 1
            self.parts.append((curve, [p["up_cm"] for p in points[i : j + 1]],
                               [p["across_cm"] for p in points[i : j + 1]]))
            i = j
        self.bottom, self.top = points[0]["up_cm"], points[-1]["up_cm"]

    @staticmethod
    def at(part, up):
        curve, xs, ys = part
        k = max(i for i in range(len(xs) - 1) if up >= xs[i] or i == 0)
        h, t = xs[k + 1] - xs[k], up - xs[k]
        if curve == "natural":
            m = natural(xs, ys)
            a, b = xs[k + 1] - up, t
            return ((m[k] * a**3 + m[k + 1] * b**3) / (6 * h) + (ys[k] / h - m[k] * h / 6) * a
                    + (ys[k + 1] / h - m[k + 1] * h / 6) * b)
        s = (ys[k + 1] - ys[k]) / h
        if curve == "straight":
            return ys[k] + s * t
        d = steffen(xs, ys)
        a = (d[k] + d[k + 1] - 2 * s) / h**2
        b = (3 * s - 2 * d[k] - d[k + 1]) / h
        return ((a * t + b) * t + d[k]) * t + ys[k]

    def span(self, low, high):
        """The least and the greatest distance across between two heights."""
        low = min(max(low, self.bottom), self.top)
        high = max(min(high, self.top), self.bottom)
        found = []
        for part in self.parts:
            a, b = max(low, part[1][0]), min(high, part[1][-1])
            if a <= b + 1e-12:
                steps = 1 if part[0] == "straight" else 16
                found += [self.at(part, a + (b - a) * i / steps) for i in range(steps + 1)]
        for up, first, last in self.steps:
            if low - 1e-9 <= up <= high + 1e-9:
                found += [first, last]
        return min(found), max(found)


# ---- What is wanted of one piece ----


class Band:
    """A figure and where its whole motifs stand."""

    def __init__(self, chart, gap, motifs, left, right):
        self.chart, self.gap = chart, gap
        self.motifs, self.left, self.right = motifs, left, right
        self.columns = len(chart[0])
        self.repeat = self.columns + gap

    def width(self):
        return self.motifs * self.repeat - self.gap

    def stitch(self, chart_row, i):
        """Of column i from the left of the first motif; ? where a card may begin another one."""
        if i < -self.gap or i >= self.width() + self.gap:
            return "?"
        if i < 0 or i >= self.width() or i % self.repeat >= self.columns:
            return "."
        return self.chart[len(self.chart) - chart_row][i % self.repeat]


class Plan:
    """A document and what the project says besides."""

    def __init__(self, doc, project):
        self.doc, self.project = doc, project
        self.fits, self.parts = {}, {}
        for part in [doc] + doc["parts"]:
            for fit in part["fits"]:
                self.fits[fit["piece"], fit["size"]] = fit
                self.parts[fit["piece"], fit["size"]] = part
        self.mirrors = {p["name"]: p["mirror_of"] for part in [doc] + doc["parts"]
                        for p in part["pieces"]}
        self.drafts = {(d["piece"], d["size"]): d for d in doc["drafts"]}
        self.bands = list(dict.fromkeys(u["band"] for u in doc["uppers"]))
        self.uppers = {(u["piece"], u["size"], self.bands.index(u["band"]) + 1): u
                       for u in doc["uppers"]}
        self.needles = self.upper_needles()
        self.card_starts = {}  # of bands higher up: as the first piece of the first size needs it
        for (_, _, number), upper in self.uppers.items():
            if upper["card_column"] is not None:
                self.card_starts.setdefault(number, upper["card_column"])

    def ring_of(self, piece):
        """The pieces with which one is knitted in rounds, itself too."""
        rings = self.project["rings"] if self.project["rounds"] else []
        return next((ring for ring in rings if piece in ring), [])

    def upper_needles(self):
        """Where a band higher up has its first figure: in the table of the bands alone."""
        found, band, piece = {}, None, None
        table = [t for t in self.doc["tables"] if t["name"] == "Bands"]
        for cells in table[0]["cells"] if table else []:
            words = [c for c in cells if c is not None]
            if not words:
                continue
            if len(words) == 1 and ", repeat " in str(words[0]):
                band = words[0].split(":")[0]
            elif len(words) == 1:
                piece = words[0]
            elif words[0] == "first whole motif starts on needle":
                for size, name in zip(self.doc["sizes"], cells[-len(self.doc["sizes"]):]):
                    found[piece, size, self.bands.index(band) + 1] = name
        return found


class Wanted:
    """One piece in one size: what the knitter needs to know, and what has to come of it."""

    def __init__(self, plan, block):
        self.plan, self.block = plan, block
        self.key = block["piece"], block["size"]
        need(self.key in plan.fits, "no counts for", *self.key)
        self.fit, self.part = plan.fits[self.key], plan.parts[self.key]
        self.draft = plan.drafts.get(self.key)
        self.hand = block["work"] == "hand"
        self.machine = plan.project["machine"]
        self.edges = self.edge_stitches()
        self.base = self.first_needle() + self.edges[1]  # of the first visible stitch
        hem = self.part["motif"]
        fit = self.fit
        self.bands = {0: Band(hem["chart"], hem["gap"], fit["motifs"], fit["left_margin_sts"],
                              fit["right_margin_sts"])}
        for (piece, size, number), upper in plan.uppers.items():
            if (piece, size) == self.key:
                told = next(b["motif"] for b in plan.doc["upper_bands"]
                            if b["name"] == upper["band"])
                chart, gap = plan.project["charts"].get(
                    upper["band"], (told["chart"], told["gap"]))
                need(told["chart"] == chart and told["gap"] == gap, "the chart of", upper["band"])
                self.bands[number] = Band(chart, gap, upper["motifs"], upper["left_margin_sts"],
                                          upper["right_margin_sts"])
        self.starts = {}  # needle of each band's first figure from the left of the bed
        self.cards = {}
        self.place_bands()

    def first_needle(self):
        return 0 if self.hand else needle(self.fit["place"]["first_needle"])

    def edge_stitches(self):
        known = self.plan.project["edges"].get(self.key[0])
        fit = self.fit
        both = fit["cast_on_sts"] - fit["visible_sts"]
        if self.hand:
            need(known is not None and sum(known) == both, "edge stitches", both, known)
            return known
        place = fit["place"]
        right = (needle(place["first_motif_needle"]) - needle(place["first_needle"])
                 - fit["right_margin_sts"])
        need(0 <= right <= both, "the first motif's needle does not fit the margins")
        need(known is None or known == (both - right, right), "edge stitches", known, both, right)
        need(needle(place["last_needle"]) - needle(place["first_needle"]) + 1
             == fit["cast_on_sts"], "the needles are not as many as the stitches")
        return both - right, right

    def place_bands(self):
        hem = self.bands[0]
        need(hem.width() + hem.left + hem.right == self.fit["visible_sts"], "margins and motifs")
        self.starts[0] = self.base + hem.right
        if self.draft is None:
            return
        above = self.base_above()
        for number, band in self.bands.items():
            if number == 0:
                continue
            upper = self.plan.uppers[(*self.key, number)]
            rows = range(upper["first_row"], upper["first_row"] + upper["rows"])
            narrow = {s: max(self.draft[f"inset_{s}_sts"][n] for n in rows) for s in MIRROR}
            need(band.width() + band.left + band.right == upper["visible_sts"]
                 == self.draft["visible_sts"] - narrow["left"] - narrow["right"],
                 "band", upper["band"], "does not fill its rows")
            need(upper["rows"] == len(band.chart), "rows of band", upper["band"])
            self.starts[number] = above + narrow["right"] + band.right

    def base_above(self):
        """The first visible needle above the hem, were nothing shaped."""
        taken = self.fit["visible_sts"] - self.fit["main_sts"]
        if self.hand or taken == 0:
            return self.base + taken // 2
        # Of an odd number of stitches one half goes either way: the rows say which.
        first = self.block["rows"][self.block["hem_rows"]]["first_needle"]
        inset = self.draft["inset_right_sts"][0] if self.draft else 0
        return first + self.edges[1] - inset

    def how(self):
        machine = self.machine
        return {
            "first": self.first_needle(), "cast_on": self.fit["cast_on_sts"],
            "rehung": self.fit["main_sts"] + sum(self.edges), "edges": self.edges,
            "either_side": self.plan.project["either_side"], "needles": machine["needles"],
            "bed": range(-machine["needles"] // 2, machine["needles"] // 2),
            "offset": machine["offset"], "loop": 36, "card": self.card,
            "no_card": self.no_card, "reading": self.reading, "set_by_hand": self.set_by_hand,
        }

    def next_band(self, row):
        """The band of a row, or of the row that it gets ready."""
        if row["band"] is not None:
            return row["band"]
        after = [r for r in self.block["rows"] if r["number"] > row["number"]]
        need(after and after[0]["band"] is not None, "row", row["number"], "gets no band ready")
        return after[0]["band"]

    def no_card(self, row):
        """Whether the card does not take the repeat of a row's band."""
        need(row["band"] in self.bands, "row", row["number"], "is of an unknown band")
        return self.machine["columns"] % self.bands[row["band"]].repeat != 0

    def card(self, row):
        number = self.next_band(row)
        if number not in self.cards:
            need(number in self.bands, "row", row["number"], "is of an unknown band")
            band, columns = self.bands[number], self.machine["columns"]
            need(columns % band.repeat == 0, "row", row["number"], "reads a card of", columns,
                 "columns for a repeat of", band.repeat)
            if number == 0:
                start = self.card_start()
            else:
                upper = self.plan.uppers[(*self.key, number)]
                start = (upper["card_column"] if upper["own_card"]
                         else self.plan.card_starts[number])
            self.cards[number] = Card(band.chart, band.repeat, columns, start)
        return self.cards[number]

    def card_start(self):
        punch = self.part["punch"]
        return punch["column"] if punch else self.fit["place"]["card_start_column"]

    def line(self, row, low, high):
        """What a band row has to look like, from the left edge, the right side facing."""
        need(row["band"] in self.bands, "row", row["number"], "is of an unknown band")
        band = self.bands[row["band"]]
        need(1 <= (row["chart_row"] or 0) <= len(band.chart), "row", row["number"], "chart row")
        # From needle q the first motif's left column is so many stitches away.
        left = self.starts[row["band"]] + band.width() - 1
        return "".join(band.stitch(row["chart_row"], left - q) for q in range(high, low - 1, -1))

    def reading(self, row, low, high):
        return self.line(row, low, high).replace("?", "."), high - low + 1

    def set_by_hand(self, row, q):
        return self.line(row, q, q) == "o"

    def check_figures(self, fabric):
        """Motifs, and stitches at both edges, as each row of a band tells them."""
        for row, knitted in zip(self.block["rows"], fabric):
            name, told = f"row {row['number']}:", row["figures"]
            band = self.bands.get(row["band"])
            if band is None or row["part"] != "whole" or band.motifs == 0:
                need(told is None, name, "figures", told)
                continue
            right = self.starts[row["band"]] + knitted.moved - knitted.first
            left = len(knitted.colours) - right - band.width()
            need(told == {"motifs": band.motifs, "gap": band.gap, "left_sts": left,
                          "right_sts": right}, name, "figures", told, "not", left, right)

    def check_moves(self, fabric):
        """Bands higher up: where the piece hangs for each, and whether it could hang no better."""
        for number, band in self.bands.items():
            if number == 0 or self.hand:
                continue
            upper, rows = self.plan.uppers[(*self.key, number)], [r for r in fabric
                                                                  if r.band == number]
            name = f"band {upper['band']}:"
            need(all(r.moved == upper["needles_right"] for r in rows), name, "moved by",
                 rows[0].moved, "not", upper["needles_right"])
            start = needle(self.plan.needles[(*self.key, number)])
            need(start == self.starts[number] + rows[0].moved, name, "first figure on", start)
            card = upper["card_column"] is not None and self.block["work"] != "needles by hand"
            need(card or not upper["own_card"], name, "has no card")
            if not card or not upper["own_card"]:
                continue
            need(rows[0].moved == 0, name, "moved, for a card of its own")
            half = self.machine["needles"] // 2
            away = self.plan.card_starts[number] - upper["card_column"]
            for by in range(away % band.repeat - 4 * half // band.repeat * band.repeat, 4 * half,
                            band.repeat):
                need(any(not -half <= r.first + by <= r.last + by < half for r in
                         fabric[rows[0].number - 2 : rows[-1].number]), name, "has room at", by)

    # ---- Comparison ----

    def check(self):
        self.check_frame()
        piece = Piece(self.block, self.how())
        fabric = piece.knit()
        self.check_hem(fabric, piece)
        self.check_colours(fabric)
        self.check_figures(fabric)
        self.check_moves(fabric)
        self.check_above(fabric, piece)
        return fabric, piece

    def check_frame(self):
        block, project = self.block, self.plan.project
        mirrored = self.plan.mirrors[self.key[0]] is not None and not self.hand
        begins = "right" if self.hand else project["begins"]
        need(block["start_side"] == (MIRROR[begins] if mirrored else begins), "starts at the",
             block["start_side"])
        ring = self.plan.ring_of(self.key[0]) if self.hand else []
        need(block["round_pieces"] == ring, "in rounds with", block["round_pieces"], "not", ring)
        need(block["in_rounds"] == bool(ring) == (block["round_rows"] > 0), "in rounds")
        need(block["cast_on"] == project["cast_on"], "cast on", block["cast_on"])
        need(block["closing"] == project["closing"], "closing", block["closing"])
        work = self.machine["work"]
        if work in ("pre-selecting", "direct"):
            fits = self.machine["columns"] % self.bands[0].repeat == 0
            work = work if fits else "needles by hand"
        need(block["work"] == work, "worked", block["work"], "not", work)

    def check_hem(self, fabric, piece):
        hem = self.part["hem"]
        rows = fabric[: hem["total_rows"]]
        need(self.block["hem_rows"] == hem["total_rows"] == len(rows), "rows of the hem")
        kinds = (["facing"] * hem["facing_rows"] + ["fold"] * hem["fold_rows"]
                 + ["plain below"] * hem["below_rows"] + ["band"] * hem["band_rows"]
                 + ["plain above"] * hem["above_rows"])
        first = hem["facing_rows"] + hem["fold_rows"] + hem["below_rows"]
        if self.block["work"] == "pre-selecting":
            kinds[first - 1] = "set-up"
        need(kinds == [r.kind for r in rows], "kinds of the hem's rows",
             [(r.number, r.kind) for r, k in zip(rows, kinds) if r.kind != k][:3])
        dials = self.dials(hem)
        for row in fabric:
            wanted = dials.get(row.kind, dials["main"])
            if self.hand and wanted != "loosest":
                wanted = None
            need(row.dial == wanted, "row", row.number, "dial", row.dial, "not", wanted)
        fold = FOLD_NAMES[hem["fold"]]
        need([r.number for r in fabric if r.purl] == ([hem["facing_rows"] + 1] * (fold == "purl")),
             "purl rows")
        need(piece.picots == [hem["facing_rows"] + 1] * (fold == "picot"), "picots", piece.picots)
        rehung = [number for number, _ in piece.rehung]
        need(rehung == [first + hem["band_rows"] + 1] * (self.fit["main_sts"]
                                                         != self.fit["visible_sts"]),
             "re-hung before row", rehung)
        for row in rows:
            below = not rehung or row.number < rehung[0]
            sts = self.fit["visible_sts" if below else "main_sts"] + sum(self.edges)
            need(len(row.colours) == sts, "row", row.number, "of the hem")
        hung = self.block["closing"] == "hung"
        joined = [r.number for r in fabric if r.kind == "joining"]
        need(joined == [hem["total_rows"] + 1] * hung, "joining rows", joined)

    def dials(self, hem):
        main = self.plan.doc["gauge"]["main"]["dial"]
        fold = "loosest" if hem["fold"] == "one loose row" else main
        return {"facing": hem["facing_dial"], "band": hem["band_dial"], "main": main,
                "joining": hem["joining_dial"], "fold": fold}

    def check_colours(self, fabric):
        seen = {}
        for row in fabric:
            if row.band is None:
                need(row.kind != "band" and "o" not in row.colours, "row", row.number, "is not plain")
                continue
            need(row.kind == "band", "row", row.number, "of a band is", row.kind)
            seen.setdefault(row.band, []).append(row)
            wanted = self.line({"band": row.band, "chart_row": row.chart_row,
                                "number": row.number}, row.first - row.moved,
                               row.last - row.moved)
            left, right = self.edges if row.part == "whole" else (0, 0)
            width = len(wanted)
            for i, (got, want) in enumerate(zip(row.seen(), wanted)):
                hidden = i < left or i >= width - right
                need(hidden or want in (got, "?"), "row", row.number, "stitch", i + 1,
                     "from the left is", got, "not", want, "\n ", row.seen(), "\n ", wanted)
            if row.band == 0:
                bare = wanted[left : width - right]
                need(bare.count("?") == max(self.bands[0].left - self.bands[0].gap, 0)
                     + max(self.bands[0].right - self.bands[0].gap, 0), "row", row.number,
                     "margins")
        need(sorted(seen) == sorted(self.bands), "bands knitted:", *seen)
        for number, rows in seen.items():
            if rows[0].part == rows[-1].part:
                need([r.chart_row for r in rows] == list(range(1, len(self.bands[number].chart) + 1))
                     and [r.number for r in rows] == list(range(rows[0].number,
                                                                rows[0].number + len(rows))),
                     "chart rows of band", number)
            if number > 0:
                upper = self.plan.uppers[(*self.key, number)]
                need(rows[0].number == self.block["hem_rows"] + upper["first_row"] + 1,
                     "band", number, "begins in row", rows[0].number)

    # ---- Shaping ----

    def check_above(self, fabric, piece):
        rows = fabric[self.block["hem_rows"]:]
        if self.draft is None:
            need(not piece.marks and all(len(r.colours) == len(rows[0].colours) for r in rows),
                 "shaping without an outline")
            return
        draft, base = self.draft, self.base_above()
        need(draft["visible_sts"] == self.fit["main_sts"], "stitches above the hem")
        need(draft["hem_rows"] == self.block["hem_rows"], "the draft's hem")
        neck = draft["neck_row"] if draft["neck_row"] is not None else draft["rows"]
        above = self.block["hem_rows"] + 1
        numbers = self.numbers_above(neck)
        for part, wanted in numbers.items():
            got = [r.number - above for r in rows if r.part == part]
            need(got == list(wanted), "rows of", part, len(got), "not", len(wanted))
        need(draft["first_start"] == rows[0].begins_at, "the first row above the hem begins at",
             rows[0].begins_at)
        # The middle of the piece, in half needles: needle q reaches from 2q - 1 to 2q + 1.
        middle = 2 * base - 1 + draft["visible_sts"]
        held = self.held()
        for row in rows:
            n = row.number - above
            back = {edge: held[edge] if n >= self.worked_again(edge) else 0 for edge in held}
            n = min(n, draft["rows"] - 1)
            low = base - self.edges[1] + draft["inset_right_sts"][n] - back["right"]
            high = (base + draft["visible_sts"] - 1 + self.edges[0] - draft["inset_left_sts"][n]
                    + back["left"])
            if row.part == "left half":
                low = (middle + draft["neck_left_halves"][n] + 1) / 2
            elif row.part == "right half":
                high = (middle - draft["neck_right_halves"][n] - 1) / 2
            need((row.first - row.moved, row.last - row.moved) == (low, high), "row", row.number, row.part, "needles",
                 row.first, row.last, "not", low, high)
        self.check_outline(draft)
        self.check_marks(piece, fabric)

    def held(self):
        """Stitches that each edge holds behind the last row as drawn."""
        sums = {"left": 0, "right": 0}
        for step in self.draft["steps"]:
            if step["kind"] == "hold":
                sums[step["place"]] += step["sts"] * step["times"]
        return sums

    def worked_again(self, edge):
        """The last row as drawn if it ends at an edge and holds no more, or the first above that."""
        draft, inset = self.draft, self.draft[f"inset_{edge}_sts"]
        row = draft["rows"] - 1
        turned = (row - draft["round_rows"]) % 2 == 1 and row >= draft["round_rows"]
        if (draft["first_start"] == edge) != turned:
            return row + 1
        return row + 2 if row > 0 and inset[row] > inset[row - 1] else row

    def numbers_above(self, neck):
        """Rows above the hem of the whole piece and of each half, up to those that work what was
        held in short rows."""
        tops = {edge: self.worked_again(edge) + 1 if held else self.draft["rows"]
                for edge, held in self.held().items()}
        whole = neck if neck < self.draft["rows"] else max(tops.values())
        return {"whole": range(0, whole), "left half": range(neck, tops["left"] if whole == neck
                                                              else neck),
                "right half": range(neck, tops["right"] if whole == neck else neck)}

    def check_outline(self, draft):
        """Every row's edge, a line one row tall, against the outline as drawn: within half a stitch
        and half a row."""
        per_cm, low = draft["sts_per_cm"], draft["low_cm"]
        gauge = self.plan.doc["gauge"]
        hem = self.part["hem"]
        need(abs(per_cm - gauge["main"]["sts_per_10cm"] / 10) < 1e-9, "stitches in a cm")
        main, band = (10 / gauge[f]["rows_per_10cm"] for f in ("main", "band"))
        face = (hem["below_rows"] + hem["above_rows"]) * main + hem["band_rows"] * band
        need(abs(low[0] - face) < 1e-6 and len(low) == draft["rows"] + 1, "the first row's height")
        two = {u["first_row"] + i for (p, s, _), u in self.plan.uppers.items()
               if (p, s) == self.key for i in range(u["rows"])}
        for n in range(draft["rows"]):
            need(abs(low[n + 1] - low[n] - (band if n in two else main)) < 1e-6, "height of row", n)
        # Rows in which nothing would be left are not knitted, where a piece ends in a point.
        left_out = draft["top_cm"] - low[-1] - (low[-1] - low[-2]) / 2
        pointed = 0 < left_out <= 8 * main and self.pointed(draft, low[-1], main)
        need(abs(low[-1] - draft["top_cm"]) <= (low[-1] - low[-2]) / 2 + HAIR
             or draft["rows"] == 1 or pointed, "the top lies at", low[-1], "not", draft["top_cm"])
        half = draft["visible_sts"] / 2
        knitted = {"left": [-(half - i) for i in draft["inset_left_sts"]],
                   "right": [half - i for i in draft["inset_right_sts"]]}
        if draft["neck_row"] is not None:
            knitted["neck left"] = [-h / 2 for h in draft["neck_left_halves"]]
            knitted["neck right"] = [h / 2 for h in draft["neck_right_halves"]]
            # The first row with a neck lies where the neck begins.
            start = draft["edges"]["neck left"][0]["up_cm"]
            need(abs(low[draft["neck_row"]] - start) <= main + HAIR, "the neck begins at",
                 low[draft["neck_row"]], "not", start)
        for name, across in knitted.items():
            edge = Edge(draft["edges"][name])
            first = draft["neck_row"] if name.startswith("neck") else 0
            for n in range(first, draft["rows"]):
                below = (low[n] - low[n - 1]) / 2 if n > 0 else 0
                above = (low[min(n + 2, draft["rows"])] - low[min(n + 1, draft["rows"] - 1)]) / 2
                least, most = edge.span(low[n] - below, low[n + 1] + above)
                off = max(least - across[n] / per_cm, across[n] / per_cm - most)
                need(off * per_cm <= 0.5 + HAIR, "row", n, "above the hem,", name, "edge:",
                     f"{off * per_cm:.3f} stitches off")

    @staticmethod
    def pointed(draft, height, row):
        """Whether the drawing holds no more than a stitch above the row that comes next, whose
        stitches may be those of half a row above it."""
        edges = {name: Edge(draft["edges"][name]) for name in draft["edges"]
                 if name != "top" and draft["edges"][name]}
        place = height + 1.5 * row
        spans = {name: edge.span(place, place) for name, edge in edges.items()}
        if "neck left" in spans:
            widths = [spans["neck left"][1] - spans["left"][0],
                      spans["right"][1] - spans["neck right"][0]]
        else:
            widths = [spans["right"][1] - spans["left"][0]]
        return max(widths) * draft["sts_per_cm"] <= 1.5 + HAIR

    def check_marks(self, piece, fabric):
        """The underarm is where the stretch `side` ends."""
        draft = self.draft
        heights = [[p["up_cm"] for p in draft["edges"][s] if p["stretch"] == "side"]
                   for s in ("left", "right")]
        tops = [max(h) for h in heights if h]
        need(len(piece.marks) <= 1, "marks", piece.marks)
        if tops and max(tops) < draft["low_cm"][-2]:
            # Where stitches are bound off, the underarm shows by itself.
            place = sum(h < max(tops) for h in draft["low_cm"])
            stepped = any(abs(inset[r] - inset[r - 1]) > 1
                          for inset in (draft["inset_left_sts"], draft["inset_right_sts"])
                          for r in range(max(1, place - 4), min(place + 4, len(inset))))
            need(piece.marks or stepped, "no mark at the underarm")
        if piece.marks and tops:
            n = piece.marks[0] - self.block["hem_rows"] - 1
            main = 10 / self.plan.doc["gauge"]["main"]["rows_per_10cm"]
            need(abs(draft["low_cm"][n] - max(tops)) <= main / 2 + 1e-6,
                 "the mark in row", piece.marks[0], "is not at the underarm")


def check_shaping(plan, done):
    """The stitches that the table Shaping tells after a row are on the needles after that row."""
    labels = {}
    for size in plan.doc["sizes"]:
        labels[size] = size, "whole"
        for group, part in (("in rounds", "whole"), ("in rows", "whole"),
                            ("left half", "left half"), ("right half", "right half")):
            labels[f"{size}, {group}"] = size, part
    table = [t for t in plan.doc["tables"] if t["name"] == "Shaping"]
    told, piece, label = 0, None, None
    for cells in table[0]["cells"] if table else []:
        words = [c for c in cells if c is not None]
        if len(words) == 1 and words[0] in plan.mirrors:
            piece = words[0]
        label = cells[0] if len(words) > 1 and cells[0] in labels else label
        if len(words) < 4 or not isinstance(cells[4], (int, float)):
            continue
        size, part = labels[label]
        # Where the neck parts a piece, the half that is knitted last is as it was left.
        part = "right half" if "work each half by itself" in cells[2] else part
        wanted, fabric, _ = done[piece, size]
        edges = {"whole": sum(wanted.edges), "left half": wanted.edges[0],
                 "right half": wanted.edges[1]}[part]
        rows = [r for r in fabric if r.number == cells[4] and r.part == part]
        need(len(rows) == 1 and len(rows[0].colours) == cells[3] + edges, "shaping of", piece,
             label, "tells", cells[3], "stitches after row", cells[4])
        told += 1
    need(told > 0 or all(s["kind"] == "end" for d in plan.doc["drafts"] for s in d["steps"]),
         "the table Shaping tells no stitches")


def check_pieces(plan):
    """All pieces of a document; returns how many rows were knitted."""
    blocks = [b for b in plan.doc["rows"] if not b["trim"]]
    done, rows = {}, 0
    need(len({(b["piece"], b["size"]) for b in blocks}) == len(blocks) == len(plan.fits),
         "pieces with rows")
    for block in blocks:
        wanted = Wanted(plan, block)
        try:
            fabric, piece = wanted.check()
        except Wrong as wrong:
            raise Wrong(f"{block['piece']}, {block['size']}: {wrong}") from None
        done[wanted.key] = wanted, fabric, piece
        rows += len(fabric)
    for (name, size), (wanted, fabric, piece) in done.items():
        other = plan.mirrors[name]
        if other is not None:
            try:
                mirror(wanted, fabric, piece, *done[other, size])
            except Wrong as wrong:
                raise Wrong(f"{name} does not mirror {other}, {size}: {wrong}") from None
    underarms(plan, done)
    check_shaping(plan, done)
    check_tubes(plan, done)
    return rows


def follows(one, two):
    """Whether each row of the second has what the first has in that row, or in the one before."""
    return len(one) == len(two) and all(
        b in (one[n], one[n - 1] if n > 0 else 0) for n, b in enumerate(two))


def mirror(wanted, fabric, piece, other, other_fabric, other_piece):
    need(wanted.edges == other.edges[::-1], "edge stitches")
    need(wanted.hand or piece.marks == other_piece.marks, "marks")
    # By hand rows begin at the right edge of both, so held stitches may come back a row later.
    apart = 1 if wanted.hand and wanted.draft and any(wanted.held().values()) else 0
    need(abs(len(fabric) - len(other_fabric)) <= apart, "rows")
    fit, model = wanted.fit, other.fit
    need((fit["left_margin_sts"], fit["right_margin_sts"], fit["motifs"])
         == (model["right_margin_sts"], model["left_margin_sts"], model["motifs"]), "margins")
    for number in range(1, len(wanted.plan.bands) + 1):
        band = wanted.plan.uppers.get((*wanted.key, number))
        twin = wanted.plan.uppers.get((*other.key, number))
        # Beside groups edges shaped by hand differ by a row, and so may the band's stitches.
        if band and twin and band["visible_sts"] == twin["visible_sts"]:
            need((band["left_margin_sts"], band["right_margin_sts"])
                 == (twin["right_margin_sts"], twin["left_margin_sts"]), "margins of a band")
    if wanted.hand:
        # Right-side rows begin at the right edge of both, so groups lie a row apart.
        for name, turned in (("inset_left_sts", "inset_right_sts"),
                             ("inset_right_sts", "inset_left_sts"),
                             ("neck_left_halves", "neck_right_halves"),
                             ("neck_right_halves", "neck_left_halves")):
            if wanted.draft and wanted.draft[name]:
                one, two = wanted.draft[name], other.draft[turned]
                need(follows(one, two) or follows(two, one), name, one, "mirrored", two)
        return
    by_part = {}
    for row in other_fabric:
        by_part[row.number, row.part] = row
    swap = {"left half": "right half", "right half": "left half", "whole": "whole"}
    for row in fabric:
        model = by_part.get((row.number, swap[row.part]))
        need(model is not None, "row", row.number, row.part)
        need(row.begins_at != model.begins_at and row.kind == model.kind
             and row.sides == model.sides[::-1], "row", row.number)
        need(len(row.colours) == len(model.colours), "row", row.number, "stitches")
        need(row.first - row.moved - fabric[0].first
             == other_fabric[0].last - model.last + model.moved, "row", row.number,
             "needles")


def first_above_side(draft, end):
    """The number of the first row whose middle lies above the stretch `side`; end where none."""
    low = draft["low_cm"]
    top = max(p["up_cm"] for s in ("left", "right") for p in draft["edges"][s]
              if p["stretch"] == "side")
    for n in range(draft["rows"]):
        if (low[n] + low[n + 1]) / 2 > top:
            return draft["hem_rows"] + n + 1
    return end


def underarms(plan, done):
    """Bands placed below the underarm lie so many rows below it on all pieces."""
    main = plan.doc["gauge"]["main"]["rows_per_10cm"] / 10
    for band, cm in plan.project["below"].items():
        number = plan.bands.index(band) + 1 if band in plan.bands else None
        for size in plan.doc["sizes"]:
            between = set()
            for (name, at), (_, fabric, piece) in done.items():
                rows = [r.number for r in fabric if r.band == number] if at == size else []
                if rows:
                    # Where stitches are bound off, or the side goes up to the top, is no mark.
                    at_underarm = piece.marks[0] if piece.marks else first_above_side(
                        plan.drafts[name, at], fabric[-1].number + 1)
                    between.add(at_underarm - max(rows) - 1)
            need(len(between) <= 1, "band", band, size, "rows to the underarm", between)
            for count in between:
                need(abs(count - cm * main) <= 0.5 + HAIR, "band", band, size, count, "rows for", cm,
                     "cm")
    for band, cm in plan.project["above"].items():
        for (name, size, number), upper in plan.uppers.items():
            if plan.bands[number - 1] == band:
                low = plan.drafts[name, size]["low_cm"][upper["first_row"]]
                need(abs(low - cm) <= 1.5 / main, "band", band, name, size, low, "cm, not", cm)
