# Projects made by chance, and plans with something wrong in them.
# SPDX-License-Identifier: GPL-3.0-or-later
"""knit_chance.py: random projects for `knit.py`, and the ways in which it spoils a plan.

What is chosen here is chosen by chance from a seed; `make` returns beside the files what the
comparison has to know of a project that its document does not say.
"""

import os
import random
import re

from knit_bed import needle

SRCDIR = os.environ.get("srcdir") or os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
DATA = os.path.join(SRCDIR, "data")

# Needles, card columns, reader offset and carriage: as in data/machines.
MACHINES = {
    "standard": {"needles": 200, "columns": 24, "offset": 7, "work": "pre-selecting"},
    "standard-direct": {"needles": 200, "columns": 24, "offset": 6, "work": "direct"},
    "mid": {"needles": 150, "columns": 24, "offset": None, "work": "pre-selecting"},
    "fine": {"needles": 250, "columns": 24, "offset": None, "work": "pre-selecting"},
    "bulky": {"needles": 110, "columns": 24, "offset": None, "work": "pre-selecting"},
    "hand": {"needles": 4000, "columns": 24, "offset": None, "work": "hand"},
}
GAUGES = {"standard": (24, 32), "standard-direct": (24, 32), "mid": (18, 24), "fine": (30, 40),
          "bulky": (12, 17), "hand": (18, 30)}
CHILDREN = ["3 months", "6 months", "12 months", "18 months", "2 years", "4 years", "6 years",
            "8 years", "10 years", "12 years", "14 years", "16 years"]

# Garments of data/garments: pieces for cuffs, pieces for a band below the underarm, and the edge
# stitches of each piece (left, right): 1 where a seam runs, as the garment file says elsewhere.
BOTH = (1, 1)
FRONTS = {"back": BOTH, "left front": BOTH, "right front": BOTH}
SLEEVES = {"left sleeve": BOTH, "right sleeve": BOTH}
GARMENTS = {
    "flared-dress": ([], ["front", "back"], {"front": BOTH, "back": BOTH}, "children"),
    "skirt": ([], ["front", "back"], {"front": BOTH, "back": BOTH}, "children"),
    "straight-cardigan": ([], ["back", "left front"],
                          {"back": BOTH, "left front": (0, 1), "right front": (1, 0)}, "children"),
    "drop-shoulder-cardigan": (["left sleeve"], ["back", "left front"], {**FRONTS, **SLEEVES},
                               "children"),
    "set-in-cardigan": (["left sleeve"], ["back", "left front"], {**FRONTS, **SLEEVES}, "children"),
    "pouch": ([], ["front", "back"], {"front": BOTH, "back": BOTH}, None),
    "blanket-edge": ([], ["edge"], {"edge": (0, 0)}, None),
}

FRONT_BANDS = ["left front band", "right front band"]
ARMHOLES = ["left armhole band", "right armhole band"]
TRIMS = {
    "flared-dress": ["neckband", *ARMHOLES],
    "skirt": ["waistband"],
    "straight-cardigan": ["neckband", *ARMHOLES],
    "drop-shoulder-cardigan": ["neckband", *FRONT_BANDS],
    "set-in-cardigan": ["neckband", *FRONT_BANDS],
}

# Pieces that a garment of data/garments sews together all round: the left edge of each to the right
# edge of the next. In rounds they have no edge stitches.
RINGS = {
    "flared-dress": [["front", "back"]],
    "skirt": [["front", "back"]],
    "pouch": [["front", "back"]],
    "drop-shoulder-cardigan": [["left sleeve"], ["right sleeve"]],
    "set-in-cardigan": [["left sleeve"], ["right sleeve"]],
}


def ring_edges(edges, rings):
    inside = {piece for ring in rings for piece in ring}
    return {piece: (0, 0) if piece in inside else own for piece, own in edges.items()}


def chart(rng, most_columns, most_rows):
    """A figure without an empty column at its sides or an empty row at its ends."""
    columns, rows = rng.randint(1, most_columns), rng.randint(1, most_rows)
    grid = [[rng.random() < 0.5 for _ in range(columns)] for _ in range(rows)]
    for row in (grid[0], grid[-1]):
        row[rng.randrange(columns)] = True
    for column in (0, columns - 1):
        grid[rng.randrange(rows)][column] = True
    return ["".join("o" if s else "." for s in row) for row in grid]


def figure(rng, most_columns=12, most_rows=14, fits=None):
    """A chart and a gap; more often than not the card takes it."""
    drawn = chart(rng, most_columns, most_rows)
    wide = len(drawn[0])
    fits = rng.random() < 0.75 if fits is None else fits
    gaps = [r - wide for r in (2, 3, 4, 6, 8, 12, 24) if 0 <= r - wide <= 8]
    return drawn, rng.choice(gaps) if fits and gaps else rng.randint(0, 4)


def motif_text(drawn, gap, indent, more=""):
    pad = " " * indent
    return (f"{pad}motif:\n{pad}  chart: |\n" + "".join(f"{pad}    {r}\n" for r in drawn)
            + f"{pad}  gap: {gap}\n{more}")


def hem_text(rng, indent, most=6.0):
    pad = " " * indent
    fold = rng.choice(["none", "loose row", "purl row", "picot"])
    return f"{pad}hem:\n{pad}  depth: {rng.uniform(2.0, most):.2f}\n{pad}  fold: {fold}\n"


# How two pieces of a garment by chance are sewn together: what the file says, the rings that come of
# it, and how far up edges are sewn. Seams alone leave it to the stretch `side`; joins tell it, and
# close a ring where they begin at the foot.
SEWN = [
    ("seams: [panel right to other left, panel left to other right]\n", [["panel", "other"]], "side"),
    ("seams: [panel left to panel right, other right to other left]\n",
     [["panel"], ["other"]], "side"),
    ("seams: [panel right to other left]\njoins: [panel left side to other right side]\n",
     [["panel", "other"]], "side"),
    ("joins: [panel right to other left, other right to panel left]\n", [["panel", "other"]],
     "whole"),
    ("joins: [panel right side to panel left side, other left side to other right side]\n",
     [["panel"], ["other"]], "side"),
    ("seams: [panel right to other left]\n", [], "side"),
    ("seams: [panel right to other right, panel left to other left]\n", [], "side"),
]


def of_trims(rng):
    """Chance of its own, so that a seed makes the same project but for its trims."""
    return random.Random(repr(rng.getstate()[1][:9]))


def own_trims(rng, kind):
    """Trims of a garment by chance: some edges of its panel, which is drawn."""
    trims = {"edging": ("[panel right]", False), "facing band": ("[panel left side]", False),
             "round": ("[panel right side, other left side]", True)}
    if kind == "neck":
        trims["collar"] = ("[panel neck right, panel neck left]", False)
        trims["half collar"] = ("[other neck left]", False)
    if kind == "front":
        trims["front edge"] = ("[panel left opening, panel left neck]", False)
        trims["half neckband"] = ("[panel left neck]", False)
    text = "trims:\n"
    names = rng.sample(sorted(trims), rng.randint(1, min(3, len(trims))))
    if "half neckband" in names:
        trims["front band"] = ("[panel left opening, half neckband end]", False)
        names.append("front band")
    for name in names:
        along, ring = trims[name]
        text += f"  {name}:\n    along: {along}\n    depth: {rng.uniform(1.5, 4):.2f} cm\n"
        text += "    round: yes\n" if ring else ""
    return text, names


def trims_text(rng, said, names):
    """What a project says of some trims, and what of that its document does not tell."""
    text = ""
    for name in names:
        if rng.random() < 0.3:
            continue
        mine = said["trims"][name] = {}
        text += f"  {name}:\n"
        text += f"    buttonhole stitches: {rng.randint(1, 4)}\n"
        if rng.random() < 0.7:
            drawn, gap = figure(rng, 8, 8)
            mine["motif"] = drawn, gap
            start = f"      card start: {rng.randint(1, 24)}\n"
            text += motif_text(drawn, gap, 4, start if rng.random() < 0.3 else "")
        if rng.random() < 0.4:
            mine["dial"] = rng.randint(4, 9)
            text += (f"    gauge: {{ dial: {mine['dial']}, stitches: {said['stitches']:.4f}, "
                     f"rows: {said['stitches'] * 1.35:.4f} }}\n")
        if rng.random() < 0.5:
            words, mine["fold"] = rng.choice([("none", "none"), ("loose row", "loose"),
                                              ("purl row", "purl"), ("picot", "picot")])
            text += f"    hem:\n      depth: {rng.uniform(1.5, 4):.2f}\n      fold: {words}\n"
            if rng.random() < 0.7:  # else both are those of the project's hem
                mine["cast_on"] = rng.choice(["open", "wrapped"])
                mine["closing"] = rng.choice(["hung", "sewn"])
                edge = "waste yarn" if mine["cast_on"] == "open" else "wrapped edge"
                text += f"      cast-on: {edge}\n      closing: {mine['closing']}\n"
        if rng.random() < 0.5:
            text += f"    buttonholes: {rng.randint(1, 3)}\n"
    return "trims:\n" + text if text else ""


def own_garment(rng, folder, rounds):
    """A garment file with an outline by chance; its edge stitches, trims, rings, and how far edges
    are sewn."""
    half = rng.uniform(9, 18)
    side = rng.uniform(14, 24)
    wide = half + rng.uniform(-3, 3)
    kind = rng.choice(["box", "waist", "armhole", "wing", "neck", "front"])
    lines, neck, left = [f"{{ stretch: side, across: {wide:.3f} cm, up: {side:.3f} cm }}"], [], []
    top = side + rng.uniform(6, 14)
    curve = rng.choice(["straight", "monotone", "natural"])
    if kind == "waist":
        lines = [f"{{ stretch: side, curve: {curve}, across: {half - d:.3f} cm, up: {u:.3f} cm }}"
                 for d, u in ((rng.uniform(0, 1), side * 0.5), (rng.uniform(0, 2.5), side * 0.75),
                              (rng.uniform(-1, 1), side))]
    elif kind == "wing":
        lines += [f"{{ stretch: wing, curve: {curve}, across: {wide + d:.3f} cm, up: {u:.3f} cm }}"
                  for d, u in ((rng.uniform(0.5, 2), side + 2), (rng.uniform(2.5, 8), side + 5))]
    if kind in ("armhole", "neck", "front"):
        shoulder = wide * rng.uniform(0.6, 0.8)
        gone = wide - shoulder
        lines += [
            f"{{ stretch: armhole, across: {wide - 0.4 * gone:.3f} cm, up: {side:.3f} cm }}",
            f"{{ curve: {rng.choice(['straight', 'monotone'])}, across: {wide - 0.8 * gone:.3f} cm, "
            f"up: {side + 1.5:.3f} cm }}",
            f"{{ curve: monotone, across: {shoulder:.3f} cm, up: {side + 4:.3f} cm }}",
            f"{{ across: {shoulder:.3f} cm, up: {top:.3f} cm }}"]
        lowest = shoulder * rng.uniform(0.3, 0.55)
        drop = rng.uniform(0.5, 3)
        lines += [f"{{ stretch: shoulder, across: {lowest:.3f} cm, up: {top + drop:.3f} cm }}"]
        deep = rng.uniform(1.5, 5)
        if kind == "neck":
            neck = [f"{{ across: {lowest * 0.4:.3f} cm, up: {top + drop - deep:.3f} cm }}",
                    f"{{ curve: monotone, across: {lowest * 0.8:.3f} cm, "
                    f"up: {top + drop - deep * 0.6:.3f} cm }}",
                    f"{{ curve: monotone, across: {lowest:.3f} cm, up: {top + drop:.3f} cm }}"]
            if rng.random() < 0.4:
                foot = top + drop - deep - rng.uniform(0.5, 8)
                neck = [f"{{ stretch: slit, across: 0 cm, up: {foot:.3f} cm }}",
                        f"{{ stretch: slit, across: 0 cm, up: {top + drop - deep:.3f} cm }}",
                        *neck]
        elif kind == "front":
            left = [f"{{ stretch: opening, across: -{half:.3f} cm, up: {top - deep:.3f} cm }}",
                    f"{{ stretch: neck, across: -{half * 0.5:.3f} cm, up: {top - deep:.3f} cm }}",
                    f"{{ curve: monotone, across: {lowest - 0.5:.3f} cm, up: {top + drop:.3f} cm }}"]
    else:
        lines.append(f"{{ across: {wide * rng.uniform(0.8, 1):.3f} cm, up: {top + 6:.3f} cm }}")
    main = half if rng.random() < 0.75 else half * rng.uniform(0.8, 1.2)
    edges = (rng.randint(0, 2), rng.randint(0, 2))
    text = (f"title: by chance\nfinished:\n  width:\n    is: {2 * half:.3f} cm\n  main:\n"
            f"    is: {2 * main:.3f} cm\npieces:\n  panel:\n    band width: finished width\n"
            f"    main width: finished main\n    left edge stitches: {edges[0]}\n"
            f"    right edge stitches: {edges[1]}\n")
    drawn = rng.random() < 0.93
    if drawn:
        text += "    outline:\n      right:\n" + "".join(f"        - {line}\n" for line in lines)
        for name, corners in (("neck", neck), ("left", left)):
            if corners:
                text += f"      {name}:\n" + "".join(f"        - {line}\n" for line in corners)
    text += "  other:\n    mirrors: panel\n"
    ends, rings, sewn = rng.choice(SEWN) if rounds else ("", [], "side")
    text += ends
    rng = of_trims(rng)
    trims, names = own_trims(rng, kind) if drawn and rng.random() < 0.6 else ("", [])
    text += trims
    with open(os.path.join(folder, "garment.yaml"), "w", encoding="utf-8") as out:
        out.write(text)
    return {"panel": edges, "other": edges[::-1]}, names, rings, sewn


def make(rng, folder, name):
    """A project file in a folder, and what it says that its document does not."""
    machine = rng.choice(["standard"] * 4 + ["standard-direct"] * 3 + ["hand"] * 3
                         + ["mid", "fine", "bulky"])
    own = rng.random() < 0.75
    rounds = machine == "hand" and rng.random() < 0.5
    garment = rng.choice(sorted(GARMENTS))
    if own:
        edges, trims, rings, sewn = own_garment(rng, folder, rounds)
        cuffs, bodies, table = [], ["panel"], None
    else:
        cuffs, bodies, edges, table = GARMENTS[garment]
        trims = TRIMS.get(garment, [])
        rings, sewn = RINGS.get(garment, []), "side"
    least, most = GAUGES[machine]
    stitches = rng.uniform(least, most)
    rows = stitches * rng.uniform(1.2, 1.5)
    edges = ring_edges(edges, rings) if rounds else edges
    said = {"machine": MACHINES[machine], "edges": edges, "charts": {}, "below": {}, "above": {},
            "either_side": rng.random() < 0.3, "begins": rng.choice(["right", "right", "left"]),
            "rounds": rounds, "rings": rings, "sewn": sewn,
            "cast_on": rng.choice(["open", "wrapped"]), "closing": rng.choice(["hung", "sewn"]),
            "trims": {}, "stitches": stitches}
    drawn, gap = figure(rng)
    start = f"  card start: {rng.randint(1, 24)}\n" if rng.random() < 0.3 else ""
    if machine == "hand":
        start = ""
    text = f"title: by chance\nmachine: {machine}\n"
    text += f"garment: {'garment.yaml' if own else garment}\ngauge:\n"
    text += f"  main: {{ dial: 7, stitches: {stitches:.4f}, rows: {rows:.4f} }}\n"
    text += (f"  band: {{ dial: 8, stitches: {stitches * rng.uniform(0.96, 1.05):.4f}, "
             f"rows: {rows * rng.uniform(0.9, 1.0):.4f} }}\n")
    if rng.random() < 0.4:
        text += (f"  facing: {{ dial: 6, stitches: {stitches * 1.03:.4f}, "
                 f"rows: {rows * 1.04:.4f} }}\n")
    text += motif_text(drawn, gap, 0, start) + hem_text(rng, 0)
    text += f"  facing: {rng.choice(['same rows', 'same depth'])}\n"
    text += f"  cast-on: {'waste yarn' if said['cast_on'] == 'open' else 'wrapped edge'}\n"
    text += f"  closing: {said['closing']}\n"
    text += bands_text(rng, said, cuffs, bodies) + trims_text(of_trims(rng), said, trims)
    if table:
        first = rng.randrange(len(CHILDREN) - 1)
        names = CHILDREN[first : first + rng.choice([1, 2, 2, 3])]
        text += f"sizes:\n  names: [{', '.join(names)}]\n  table: {table}\n"
    else:
        text += "sizes:\n  names: [one]\n"
    text += "choices:\n  tolerance: 1.5\n"
    text += f"  shoulders: {rng.choice(['bind off', 'short rows'])}\n"
    text += f"  hand-set needles: {rng.choice(['yes', 'no'])}\n"
    text += f"  re-hang: {rng.choice(['yes', 'no'])}\n"
    if not said["rounds"]:
        text += f"  carriage begins: {said['begins']}\n" if machine != "hand" else ""
    text += "  in rounds: yes\n" if said["rounds"] else ""
    side = "either side" if said["either_side"] else "where the carriage begins"
    text += f"  second yarn: {side}\n" if machine != "hand" else ""
    with open(os.path.join(folder, name), "w", encoding="utf-8") as out:
        out.write(text)
    return said


def bands_text(rng, said, cuffs, bodies):
    """Cuffs with a hem of their own, and a band higher up."""
    text = ""
    hem = (f"      cast-on: {'waste yarn' if said['cast_on'] == 'open' else 'wrapped edge'}\n"
           f"      closing: {said['closing']}\n")
    if cuffs and rng.random() < 0.5:
        drawn, gap = figure(rng, 6, 8)
        text += f"  cuff:\n    on: [{', '.join(cuffs)}]\n" + motif_text(drawn, gap, 4)
        text += hem_text(rng, 4, 4.0) + (hem if rng.random() < 0.5 else "")
    if rng.random() < 0.4:
        drawn, gap = figure(rng, 8, 8)
        said["charts"]["chest"] = drawn, gap
        where = rng.choice(["below underarm", "above fold"])
        cm = round(rng.uniform(1, 4) if where == "below underarm" else rng.uniform(8, 13), 2)
        said["below" if where == "below underarm" else "above"]["chest"] = cm
        text += f"  chest:\n    on: [{', '.join(bodies)}]\n" + motif_text(drawn, gap, 4)
        text += f"    {where}: {cm}\n"
    return "bands:\n" + text if text else ""


# ---- Ways to spoil a plan: each changes the document, or returns False where it cannot ----


def rows_of(doc, rng):
    return rng.choice(doc["rows"])["rows"]


def some(rows, rng, good):
    found = [i for i, row in enumerate(rows) if good(row)]
    return rng.choice(found) if found else None


def renumber(rows, start):
    for row in rows[start:]:
        row["number"] += 1


def change(key, new, good):
    """Another value in one row."""
    def spoil(doc, rng):
        rows = rows_of(doc, rng)
        i = some(rows, rng, good)
        if i is None:
            return False
        rows[i][key] = new(rows[i][key])
        return True
    return spoil


def hands(what, spoil_hand):
    """Hand work changed or left out."""
    def spoil(doc, rng):
        rows = rows_of(doc, rng)
        i = some(rows, rng, lambda r: any(h["what"] == what for h in r["hand"]))
        if i is None:
            return False
        hand = [h for h in rows[i]["hand"] if h["what"] == what][0]
        return spoil_hand(rows[i], hand) is not False
    return spoil


def leave_out(row, hand):
    row["hand"].remove(hand)


def not_let_go(row, hand):
    """A band of one row on a pre-selecting bed reads its card once, held."""
    if row["card"] != "moving":
        return False
    row["hand"].remove(hand)
    return True


def count_up(key):
    def up(_, hand):
        if hand[key] is None:
            return False
        hand[key] += 1
        return True
    return up


def drop_row(doc, rng):
    rows = rows_of(doc, rng)
    del rows[rng.randrange(1, len(rows))]
    return True


def drop_two_rows_counted_on(doc, rng):
    """Two plain rows less, so that sides and numbers follow each other still."""
    rows = rows_of(doc, rng)
    i = some(rows[:-2], rng, lambda r: r["kind"] == "facing" and not r["hand"])
    if i is None or rows[i + 1]["kind"] != "facing" or rows[i + 1]["hand"]:
        return False
    del rows[i : i + 2]
    for row in rows[i:]:
        row["number"] -= 2
    return True


def two_rows_more(doc, rng):
    rows = rows_of(doc, rng)
    i = some(rows[:-2], rng, lambda r: r["kind"] == "main" and not r["hand"])
    if i is None or rows[i + 1]["kind"] != "main" or rows[i + 1]["hand"]:
        return False
    if rows[i]["part"] != "whole" or rows[i + 1]["part"] != "whole":
        return False
    if any(r["part"] != "whole" for r in rows):
        return False
    rows[i + 2 : i + 2] = [dict(rows[i]), dict(rows[i + 1])]
    for row in rows[i + 2:]:
        row["number"] += 2
    return True


def swap_chart_rows(doc, rng):
    rows = rows_of(doc, rng)
    i = some(rows[:-1], rng, lambda r: r["band"] == 0)
    if i is None or rows[i + 1]["band"] != 0:
        return False
    a, b = rows[i], rows[i + 1]
    a["chart_row"], b["chart_row"] = b["chart_row"], a["chart_row"]
    return True


def shift_needles(doc, rng):
    rows = rows_of(doc, rng)
    i = some(rows, rng, lambda r: r["first_needle"] is not None)
    if i is None:
        return False
    rows[i]["first_needle"] += 1
    rows[i]["last_needle"] += 1
    return True


def mirror_step(row, hand):
    swap = {"left": "right", "right": "left", "neck left": "neck right", "neck right": "neck left"}
    place = hand["step"]["place"]
    if place not in swap or hand["step"]["kind"] == "end":
        return False
    hand["step"]["place"] = swap[place]
    return True


def step_out(row, hand):
    if hand["step"]["kind"] == "end":
        return False
    row["hand"].remove(hand)
    return True


def one_more_in_step(row, hand):
    hand["stitches"] += 1


def first_figure(doc, rng):
    """The card punched one column further."""
    if not any(r["card"] != "not read" and (r["band"] or 0) == 0 for b in doc["rows"]
               if not b["trim"] for r in b["rows"]) or all("o" * doc["motif"]["repeat"] == row or "o" not in row
                                          for row in doc["motif"]["chart"]):
        return False
    if doc["parts"]:
        return False
    if doc["punch"]:
        doc["punch"]["column"] += 1
    for fit in doc["fits"]:
        fit["place"]["card_start_column"] += 1
    return True


def margins(doc, rng):
    fit = rng.choice(doc["fits"])
    fit["left_margin_sts"] += 1
    fit["right_margin_sts"] -= 1
    return True


def hem_rows(key):
    def spoil(doc, rng):
        doc["hem"][key] += 1
        return True
    return spoil


def inset(doc, rng):
    drafts = [d for d in doc["drafts"]]
    if not drafts:
        return False
    draft = rng.choice(drafts)
    side = rng.choice(["inset_left_sts", "inset_right_sts"])
    draft[side][rng.randrange(draft["rows"])] += 1
    return True


def outline(doc, rng):
    """A corner drawn two stitches further out."""
    drafts = [d for d in doc["drafts"]]
    if not drafts:
        return False
    draft = rng.choice(drafts)
    points = draft["edges"][rng.choice(["left", "right"])]
    away = 2 / draft["sts_per_cm"]
    for point in points:
        point["across_cm"] += away
    return True


def trim_of(doc, rng, good):
    """A trim and its rows."""
    found = [t for t in doc["trims"] if good(t)]
    if not found:
        return None, None
    trim = rng.choice(found)
    return trim, next(b for b in doc["rows"] if b["trim"] and b["piece"] == trim["trim"]
                      and b["size"] == trim["size"])


def fold_first(doc, rng):
    """The facing's rows called the face's and the other way round: a trim that begins inside."""
    _, block = trim_of(doc, rng, lambda t: True)
    if block is None:
        return False
    swap = {"face": "facing", "facing": "face"}
    for row in block["rows"]:
        row["kind"] = swap.get(row["kind"], row["kind"])
    return True


def hole_row(key):
    def spoil(doc, rng):
        trim, _ = trim_of(doc, rng, lambda t: t["buttonholes"])
        if trim is None:
            return False
        trim["buttonholes"][key] += 1
        return True
    return spoil


def holes_of_one_layer(doc, rng):
    """The facing's buttonholes left out."""
    trim, block = trim_of(doc, rng, lambda t: t["buttonholes"])
    if trim is None:
        return False
    row = block["rows"][trim["buttonholes"]["facing_row"] - 1]
    row["hand"] = [h for h in row["hand"] if h["what"] != "buttonhole"]
    return True


def trim_turned(doc, rng):
    """Counted from the other end, where that makes a difference."""
    trim, _ = trim_of(doc, rng, lambda t: True)
    if trim is None:
        return False
    trim["counted_from"] = {"left": "right", "right": "left"}[trim["counted_from"]]
    return True


def trim_moved(doc, rng):
    """A trim hung a needle further, with all that tells of it; its figures miss the card's."""
    trim, block = trim_of(doc, rng, lambda t: t["motif"] and t["place"] and (
        t["place"]["card_start_column"] is not None) and len(t["chart"][0]) + t["gap"] > 1)
    if trim is None or block["work"] not in ("pre-selecting", "direct"):
        return False
    for key in ("first_needle", "last_needle"):
        q = needle(trim["place"][key]) + 1
        trim["place"][key] = f"R{q + 1}" if q >= 0 else f"L{-q}"
    for row in block["rows"]:
        row["first_needle"] += 1
        row["last_needle"] += 1
    return True


def figure_mirrored(doc, rng):
    """The knitter's chart mirrored: the figure of the plan is another one than was knitted."""
    if doc["motif"]["symmetrical"] or doc["parts"]:
        return False
    first = [r for b in doc["rows"] for r in b["rows"] if r["band"] == 0]
    if not any(row != row[::-1] for row in doc["motif"]["chart"]) or not first:
        return False
    block = rng.choice(doc["rows"])
    if block["work"] != "hand":
        return False
    for row in block["rows"]:
        row["right_side"] = not row["right_side"]
    return True


def round_blocks(doc, rng, more=lambda block: True):
    blocks = [b for b in doc["rows"] if b["in_rounds"] and more(b)]
    return rng.choice(blocks) if blocks else None


def change_round(key, new):
    """Another value in one round."""
    def spoil(doc, rng):
        block = round_blocks(doc, rng)
        if block is None:
            return False
        row = block["rows"][rng.randrange(block["round_rows"])]
        row[key] = new(row[key])
        return True
    return spoil


def bind_off_in_round(doc, rng):
    """A single stitch bound off where it was decreased: as many are left."""
    found = [hand for b in doc["rows"] if b["in_rounds"]
             for row in b["rows"] if row["number"] <= b["round_rows"]
             for hand in row["hand"] if hand["step"] and hand["step"]["kind"] == "decrease"]
    if not found:
        return False
    rng.choice(found)["step"]["kind"] = "bind off"
    return True


def a_round_more(doc, rng):
    """Of all pieces: only that rows turn too soon then tells."""
    if round_blocks(doc, rng, lambda block: block["round_pieces"]) is None:
        return False
    for block in doc["rows"]:
        block["round_rows"] += block["in_rounds"]
    return True


def piece_out_of_round(doc, rng):
    block = round_blocks(doc, rng, lambda block: block["round_pieces"])
    if block is None:
        return False
    block["round_pieces"] = block["round_pieces"][1:]
    return True


def in_band(row):
    return row["band"] is not None


SPOILED = {
    "a row left out": drop_row,
    "two facing rows left out, numbers follow": drop_two_rows_counted_on,
    "two main rows more, numbers follow": two_rows_more,
    "a row's number": change("number", lambda n: n + 1, lambda r: True),
    "the side where a row begins": change("carriage_before", lambda s: {
        "left": "right", "right": "left"}[s], lambda r: r["carriage_before"]),
    "the side where a row ends": change("carriage_after", lambda s: {
        "left": "right", "right": "left"}[s], lambda r: r["carriage_after"]),
    "the edge where a row begins": change("begins_at", lambda s: {
        "left": "right", "right": "left"}[s], lambda r: True),
    "a card step": change("card_row", lambda n: n + 1, lambda r: r["card_row"] is not None),
    "a card that is held moves": change("card", lambda c: "moving", lambda r: r["card"] == "held"),
    "a card that moves is held": change("card", lambda c: "held", lambda r: r["card"] == "moving"),
    "a row that does not select": change("setting", lambda s: s.replace(
        ", selecting", ", not selecting").replace("plain, not selecting", "plain"),
        lambda r: r["setting"].endswith(", selecting")),
    "the last band row selects": change("setting", lambda s: "two colours, selecting",
                                        lambda r: r["setting"] == "two colours, not selecting"),
    "the colours change places": change("feeders", lambda f: f[::-1], in_band),
    "no second yarn": change("feeders", lambda f: ["main", "none"],
                               lambda r: r["feeders"][1] != "none"),
    "a second yarn in a plain row": change("feeders", lambda f: ["main", "contrast"],
                                           lambda r: r["band"] is None),
    "stitches of a row": change("stitches", lambda n: n + 1, lambda r: True),
    "the first needle": change("first_needle", lambda n: n + 1,
                               lambda r: r["first_needle"] is not None),
    "needles moved along the bed": shift_needles,
    "chart rows change places": swap_chart_rows,
    "a chart row": change("chart_row", lambda n: n + 1, in_band),
    "motifs of a row": change("figures", lambda f: {**f, "motifs": f["motifs"] + 1},
                              lambda r: r["figures"]),
    "figures a stitch further": change("figures", lambda f: {
        **f, "left_sts": f["left_sts"] - 1, "right_sts": f["right_sts"] + 1},
        lambda r: r["figures"]),
    "the dial": change("dial", lambda d: 1.0, lambda r: r["dial"] is not None),
    "the kind of a row": change("kind", lambda k: "main", lambda r: r["kind"] != "main"),
    "stitches cast on": hands("cast on", count_up("stitches")),
    "the counter set": hands("counter", count_up("number")),
    "a piece not moved onto the card": hands("move", leave_out),
    "a piece moved a needle further": hands("move", count_up("number")),
    "the card put in at another row": hands("card in", count_up("number")),
    "the card not let go": hands("card go", not_let_go),
    "the second yarn not put in": hands("second yarn in", leave_out),
    "the second yarn not taken out": hands("second yarn out", leave_out),
    "loops of the hem": hands("hang hem", count_up("stitches")),
    "the hem not hung": hands("hang hem", leave_out),
    "the hem not sewn": hands("sew hem", leave_out),
    "no picot": hands("picot", leave_out),
    "no purl row": hands("purl", leave_out),
    "a step at the other edge": hands("shape", mirror_step),
    "a step left out": hands("shape", step_out),
    "a stitch more in a step": hands("shape", one_more_in_step),
    "stitches of the half that waits": hands("hold half", count_up("stitches")),
    "stitches of the half taken back": hands("half back", count_up("stitches")),
    "re-hung stitches": hands("re-hang", count_up("stitches")),
    "the card punched a column further": first_figure,
    "the margins": margins,
    "rows of the band": hem_rows("band_rows"),
    "rows of the facing": hem_rows("facing_rows"),
    "rows above the band": hem_rows("above_rows"),
    "an inset": inset,
    "the outline": outline,
    "right and wrong side": figure_mirrored,
    "stitches picked up": hands("pick up", count_up("stitches")),
    "a trim that is not picked up": hands("pick up", leave_out),
    "a buttonhole a stitch further": hands("buttonhole", count_up("number")),
    "a buttonhole a stitch wider": hands("buttonhole", count_up("stitches")),
    "a buttonhole left out": hands("buttonhole", leave_out),
    "buttonholes in one layer": holes_of_one_layer,
    "the row of the face's buttonholes": hole_row("face_row"),
    "the row of the facing's buttonholes": hole_row("facing_row"),
    "a trim left on the needles": hands("bind off", leave_out),
    "stitches bound off": hands("bind off", count_up("stitches")),
    "open stitches not taken off": hands("take off", leave_out),
    "a trim that begins inside": fold_first,
    "a trim counted from its other end": trim_turned,
    "a trim hung a needle further": trim_moved,
    "a wrong side in a round": change_round("right_side", lambda side: not side),
    "stitches of a whole round": change_round("round_stitches", lambda n: n + 1),
    "a round that tells nothing of the others": change_round("round_stitches", lambda n: None),
    "a stitch bound off in a round": bind_off_in_round,
    "rows that turn not told": hands("into rows", leave_out),
    "stitches taken out of the rounds": hands("into rows", count_up("stitches")),
    "a round more": a_round_more,
    "a piece left out of the round": piece_out_of_round,
}


def spoil(doc, kind, rng):
    return SPOILED[kind](doc, rng)
