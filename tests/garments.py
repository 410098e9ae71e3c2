#!/usr/bin/python3
# The garment files: drawn edges, joins and sizes worked out a second time, from the files alone.
# SPDX-License-Identifier: GPL-3.0-or-later
"""garments.py: run where the build is; ./hemwright must be there, or HEMWRIGHT_PROGRAM names it.

Files are read, rules added up and edges measured here by code of its own. Straight edges are
measured with Pythagoras. Sources of the curves: monotone, M. Steffen's interpolation (Astronomy and
Astrophysics 239, 1990, p. 443; slopes at the ends by its simplest choice, from memory); natural,
the cubic spline with second derivatives of 0 at both ends, any textbook. Both are first checked
against properties of their own. Lengths: Simpson's rule.

Ends with 0 when all agrees, 1 when anything does not or when nothing was checked.
"""

import csv
import glob
import json
import math
import os
import re
import subprocess
import sys
import tempfile

SRCDIR = os.environ.get("srcdir") or os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
DATA = os.path.join(SRCDIR, "data")
PROGRAM = os.environ.get("HEMWRIGHT_PROGRAM") or os.path.join(".", "hemwright")
PROGRAM_SECONDS = 60

CM = {"cm": 1.0, "mm": 0.1, "in": 2.54}  # data/SOURCES.md, U1
USUAL_WITHIN_CM = 1.0  # the manual, `joins`
HAIR_CM = 1e-9
PRINTED_CM = 1e-6  # the document tells lengths to the last decimal
STEPS = 400  # of Simpson's rule in each part of a curve
# A cap is a little longer than its armhole, never shorter: common practice; the 2 cm
# are this project's own choice and stand in the garment file.
CAP_JOIN = "cap"
CAP_EASE_CM = (0.0, 2.0)
# data/SOURCES.md, W3: head at the median and two standard deviations.
HEAD_DEVIATIONS = 2
# The whole span of both arms is about the height (common knowledge, no source), so half of it less
# the hand, about a tenth of the height (from memory), is the most that a neck-to-wrist may be.
WRIST_AT_MOST = 0.5
# Chart D1 in straight lines: what comments in the garment files say.
CHART_LINES = {"cross back": (0.35, 4.0), "armhole depth": (0.25, -2.3)}
CHART_WITHIN_CM = 1.0
# What is left of one measurement when others are taken off may fall from a size to the next.
MAY_FALL = ["armhole inset"]


class Tally:
    """Counts what passed, and prints what did not."""

    def __init__(self):
        self.passed = 0
        self.failed = 0

    def check(self, good, *words):
        if good:
            self.passed += 1
        else:
            self.failed += 1
            print("FAILED:", *words)


def read(*parts):
    with open(os.path.join(*parts), encoding="utf-8") as file:
        return file.read()


# ---- The small part of YAML that the data files use ----


def split_top(text):
    """The parts of a flow list or group between commas that lie in no inner bracket."""
    parts, depth, start = [], 0, 0
    for i, letter in enumerate(text):
        depth += (letter in "[{") - (letter in "]}")
        if letter == "," and depth == 0:
            parts.append(text[start:i])
            start = i + 1
    parts.append(text[start:])
    return [part.strip() for part in parts if part.strip()]


def value_of(text):
    """A word, or a flow list, or a flow group."""
    text = text.strip()
    if text.startswith("["):
        return [value_of(part) for part in split_top(text[1:-1])]
    if text.startswith("{"):
        pairs = [part.split(":", 1) for part in split_top(text[1:-1])]
        return {key.strip(): value_of(value) for key, value in pairs}
    return text


def goes_on(last, line):
    """Does a line go on with the last one: an open bracket, or words further in than its own?"""
    indent, text = last
    if sum(text.count(c) for c in "[{") > sum(text.count(c) for c in "]}"):
        return True
    words = text.startswith("- ") or not text.endswith(":")
    return words and len(line) - len(line.lstrip()) > indent


def logical_lines(text):
    """(indent, text) without remarks; each part of a list and each key on one line."""
    lines = []
    for line in text.splitlines():
        line = re.sub(r"(^|\s)#.*", "", line).rstrip()
        if not line:
            continue
        if lines and goes_on(lines[-1], line):
            lines[-1] = (lines[-1][0], lines[-1][1] + " " + line.strip())
        else:
            lines.append((len(line) - len(line.lstrip()), line.strip()))
    return lines


def block(lines, at, indent):
    """The list or group of lines at this indent from `at` on, and where it ends."""
    if lines[at][1].startswith("- "):
        made = []
        while at < len(lines) and lines[at][0] == indent:
            made.append(value_of(lines[at][1][2:]))
            at += 1
        return made, at
    made = {}
    while at < len(lines) and lines[at][0] == indent:
        key, rest = lines[at][1].split(":", 1)
        at += 1
        if rest.strip():
            made[key] = value_of(rest)
        else:
            made[key], at = block(lines, at, lines[at][0])
    return made, at


def parse(text):
    lines = logical_lines(text)
    made, at = block(lines, 0, 0)
    assert at == len(lines), lines[at]
    return made


def load(*parts):
    return parse(read(*parts))


# ---- Measurements ----


def length_cm(text, unit="cm"):
    number, _, given = text.partition(" ")
    return float(number) * CM[given.strip() or unit]


def add_up(rule, finished, body, all_finished=True):
    """The value of a sum; a bare name is a finished measurement, or the body's."""
    total, sign = 0.0, 1
    for part in re.split(r" ([+-]) ", " ".join(rule.split())):
        if part in "+-":
            sign = 1 if part == "+" else -1
            continue
        factor, _, name = part.rpartition(" x ")
        if not factor and re.fullmatch(r"-?[\d.]+( (cm|mm|in))?", part):
            total += sign * length_cm(part)
            continue
        number = float(factor) if factor else 1.0
        own = name.startswith("finished ")
        name = name[len("finished "):] if own else name
        total += sign * number * (finished if own or all_finished else body)[name]
    return total


def body_table(name):
    """Names of the sizes, and a dictionary of body measurements in cm for each."""
    table = load(DATA, "sizes", name + ".yaml")
    unit = table.get("units", "cm")
    sizes = [{key: length_cm(row["values"][i], unit) for key, row in table["body"].items()}
             for i in range(len(table["names"]))]
    return table["names"], sizes


def finish(garment, body):
    """Finished measurements of one size; None if the body lacks something."""
    finished = {}
    for name, rule in garment["finished"].items():
        try:
            value = add_up(rule["is"], finished, body, all_finished=False)
        except KeyError:
            return None
        ease = rule.get("ease", "0 cm")
        if ease.endswith("%"):
            value *= 1 + float(ease[:-1]) / 100
        else:
            value += length_cm(ease)
        finished[name] = value
    return finished


# ---- Curves: x over y ----


def steffen_slopes(y, x):
    h = [b - a for a, b in zip(y, y[1:])]
    s = [(b - a) / step for a, b, step in zip(x, x[1:], h)]
    slopes = [s[0]]
    for i in range(1, len(s)):
        p = (s[i - 1] * h[i] + s[i] * h[i - 1]) / (h[i - 1] + h[i])
        signs = math.copysign(1, s[i - 1]) + math.copysign(1, s[i])
        slopes.append(signs * min(abs(s[i - 1]), abs(s[i]), 0.5 * abs(p)))
    return slopes + [s[-1]]


def natural_slopes(y, x):
    """From second derivatives m, 0 at the ends: h0 m0 + 2 (h0 + h1) m1 + h1 m2 = 6 (s1 - s0)."""
    n = len(y)
    h = [b - a for a, b in zip(y, y[1:])]
    s = [(b - a) / step for a, b, step in zip(x, x[1:], h)]
    diagonal = [1.0] + [2 * (h[i - 1] + h[i]) for i in range(1, n - 1)] + [1.0]
    wanted = [0.0] + [6 * (s[i] - s[i - 1]) for i in range(1, n - 1)] + [0.0]
    for i in range(2, n - 1):
        factor = h[i - 1] / diagonal[i - 1]
        diagonal[i] -= factor * h[i - 1]
        wanted[i] -= factor * wanted[i - 1]
    m = [0.0] * n
    for i in range(n - 2, 0, -1):
        m[i] = (wanted[i] - h[i] * m[i + 1]) / diagonal[i]
    slopes = [s[i] - h[i] * (2 * m[i] + m[i + 1]) / 6 for i in range(n - 1)]
    return slopes + [s[-1] + h[-1] * (m[-2] + 2 * m[-1]) / 6]


SLOPES = {"monotone": steffen_slopes, "natural": natural_slopes}


def cubic(y, x, slopes, i):
    """Part i as (a, b, c, d) of a + b t + c t^2 + d t^3, t from y[i]."""
    h = y[i + 1] - y[i]
    s = (x[i + 1] - x[i]) / h
    return (x[i], slopes[i], (3 * s - 2 * slopes[i] - slopes[i + 1]) / h,
            (slopes[i] + slopes[i + 1] - 2 * s) / h ** 2)


def arc(coefficients, h):
    """Length of a cubic over [0, h] by Simpson's rule."""
    _, b, c, d = coefficients
    total = 0.0
    for k in range(STEPS + 1):
        t = h * k / STEPS
        weight = 1 if k in (0, STEPS) else 4 if k % 2 else 2
        total += weight * math.hypot(1, b + 2 * c * t + 3 * d * t * t)
    return total * h / STEPS / 3


# ---- Edges ----


class Edge:
    """Points (x, y, stretch, curve); ways lead from each point to the next."""

    def __init__(self, points):
        self.points = points

    def mirrored(self):
        return Edge([(-x, y, stretch, curve) for x, y, stretch, curve in self.points])

    def ways(self):
        """(stretch, length, list of points on the way) of each way."""
        made, at = [], 0
        points = self.points
        while at + 1 < len(points):
            curve = points[at + 1][3]
            to = at + 1
            while curve != "straight" and to + 1 < len(points) and points[to + 1][3] == curve:
                to += 1
            x = [p[0] for p in points[at:to + 1]]
            y = [p[1] for p in points[at:to + 1]]
            slopes = SLOPES[curve](y, x) if curve != "straight" else None
            for i in range(to - at):
                if slopes is None:
                    length = math.hypot(x[1] - x[0], y[1] - y[0])
                    drawn = [(x[0], y[0]), (x[1], y[1])]
                else:
                    h = y[i + 1] - y[i]
                    a, b, c, d = cubic(y, x, slopes, i)
                    length = arc((a, b, c, d), h)
                    drawn = [(a + b * t + c * t * t + d * t ** 3, y[i] + t)
                             for t in (h * k / 20 for k in range(21))]
                made.append((points[at + i + 1][2], length, drawn))
            at = to
        return made

    def length(self, stretch=None):
        return sum(length for name, length, _ in self.ways() if stretch in (None, name))

    def across(self, up):
        """Where the edge lies at a height; above a step across."""
        found = self.points[0][0]
        for _, _, drawn in self.ways():
            for (x0, y0), (x1, y1) in zip(drawn, drawn[1:]):
                if y0 <= up and y1 > y0:
                    found = x0 + (x1 - x0) * min(1.0, (up - y0) / (y1 - y0))
                elif y0 <= up:
                    found = x1
        return found


def corners(given, first, stretch, finished):
    points = [first + ("", "straight")]
    for corner in given:
        stretch = corner.get("stretch", stretch)
        points.append((add_up(corner["across"], finished, None),
                       add_up(corner["up"], finished, None), stretch,
                       corner.get("curve", "straight")))
    return Edge(points)


def draw(piece, finished):
    """All edges of a piece in one size, by their names."""
    outline = piece["outline"]
    half = add_up(piece["band width"], finished, None) / 2
    edges = {}
    for side, sign in (("left", -1), ("right", 1)):
        if side in outline:
            edges[side] = corners(outline[side], (sign * half, 0.0), "side", finished)
    for side, other in (("left", "right"), ("right", "left")):
        if side not in edges:
            edges[side] = edges[other].mirrored()
    if "neck" in outline:
        low = add_up(outline["neck"][0]["up"], finished, None)
        edges["neck right"] = corners(outline["neck"], (0.0, low), "neck", finished)
        edges["neck left"] = edges["neck right"].mirrored()
    left, right = edges["left"].points[-1], edges["right"].points[-1]
    if "neck" not in outline and right[0] - left[0] > HAIR_CM:
        edges["top"] = Edge([left[:2] + ("", "straight"), right[:2] + ("", "straight")])
    return edges


def draw_all(garment, finished):
    drawn = {}
    swap = {"left": "right", "right": "left", "neck left": "neck right",
            "neck right": "neck left"}
    for name, piece in garment["pieces"].items():
        if "mirrors" in piece:
            other = drawn[piece["mirrors"]]
            drawn[name] = {swap.get(edge, edge): line.mirrored() for edge, line in other.items()}
        elif "outline" in piece:
            drawn[name] = draw(piece, finished)
    return drawn


def run_length(words, drawn):
    """The length of edges in a row, such as `back neck and front left neck`."""
    total = 0.0
    for part in words.split(" and "):
        piece = max((name for name in drawn if part.startswith(name + " ")), key=len)
        rest = part[len(piece) + 1:]
        names = [name for name in ("neck left", "neck right", "left", "right", "top", "neck")
                 if rest == name or rest.startswith(name + " ")]
        stretch = rest[len(names[0]):].strip() or None
        ends = ["neck left", "neck right"] if names[0] == "neck" else names[:1]
        for end in ends:
            length = drawn[piece][end].length(stretch)
            assert length > 0, part
            total += length
    return total


def listed(value):
    return value if isinstance(value, list) else [value]


# ---- Checks ----


def check_curves(tally):
    """Curves before they are used: what their definitions promise, and values by hand."""
    # By hand: through (0,0), (1,1), (2,0) in y and x the natural spline has m1 = -3, so that its
    # slopes are 1.5, 0 and -1.5; Steffen's middle slope at a turn is 0, its end slopes 1 and -1.
    tally.check(all(abs(a - b) < HAIR_CM for a, b in
                    zip(natural_slopes([0, 1, 2], [0, 1, 0]), [1.5, 0, -1.5])), "natural slopes")
    tally.check(all(abs(a - b) < HAIR_CM for a, b in
                    zip(steffen_slopes([0, 1, 2], [0, 1, 0]), [1, 0, -1])), "Steffen's slopes")
    # By hand: s = 1 and 3, p = 2; twice min(1, 3, 1) is 2.
    tally.check(abs(steffen_slopes([0, 1, 2], [0, 1, 4])[1] - 2) < HAIR_CM, "Steffen's middle")
    # A straight line is one under both; Pythagoras: 3, 4, 5.
    for curve in SLOPES:
        line = Edge([(0, 0, "", "straight"), (1.5, 2, "a", curve), (3, 4, "b", curve)])
        tally.check(abs(line.length() - 5) < HAIR_CM, curve, "line is", line.length())
        tally.check(abs(line.length("b") - 2.5) < HAIR_CM, curve, "half is", line.length("b"))
    # The parabola t^2 from 0 to 1 is sqrt(5)/2 + asinh(2)/4 long (any table of integrals).
    wanted = math.sqrt(5) / 2 + math.asinh(2) / 4
    tally.check(abs(arc((0, 0, 1, 0), 1) - wanted) < HAIR_CM, "parabola", arc((0, 0, 1, 0), 1))


def check_outline(tally, where, edges):
    """No edge turns down, left stays left of right, the neck inside, ends on the same height."""
    for name, edge in edges.items():
        heights = [point[1] for point in edge.points]
        tally.check(all(a <= b + HAIR_CM for a, b in zip(heights, heights[1:])),
                    where, name, "turns down")
    left, right = edges["left"], edges["right"]
    top = right.points[-1][1]
    tally.check(abs(top - left.points[-1][1]) < HAIR_CM, where, "has two heights")
    heights = [top * k / 200 for k in range(200)]
    tally.check(all(left.across(up) < right.across(up) for up in heights), where, "crosses itself")
    if "neck right" in edges:
        neck = edges["neck right"]
        tally.check(all(neck.across(up) < right.across(up) for up in heights
                        if up >= neck.points[0][1]), where, "has its neck outside")
        tally.check(math.dist(neck.points[-1][:2], right.points[-1][:2]) < HAIR_CM,
                    where, "has a neck that does not end where the shoulder does")
        tally.check(all(a[0] <= b[0] + HAIR_CM for a, b in zip(neck.points, neck.points[1:])),
                    where, "has a neck that narrows")


def check_joins(tally, where, garment, drawn):
    for join in listed(garment.get("joins", [])):
        text, _, within = join.partition(", within ")
        first, second = text.split(" to ")
        longer = run_length(first, drawn) - run_length(second, drawn)
        least, most = -length_cm(within or "1 cm"), length_cm(within or "1 cm")
        if CAP_JOIN in first.split():
            tally.check(most <= CAP_EASE_CM[1], where, "eases in", most)
            least, most = CAP_EASE_CM
        tally.check(least - HAIR_CM <= longer <= most + HAIR_CM,
                    where, "%s: %.2f cm" % (join, longer))


def check_trims(tally, where, garment, drawn, finished):
    for name, trim in garment.get("trims", {}).items():
        length = sum(run_length(part, drawn) for part in listed(trim["along"]))
        depth = add_up(trim.get("depth", "2 cm"), finished, None)
        tally.check(length > depth > 0, where, name, "is", length, "long and", depth, "deep")


def check_table(tally, name, garment, table):
    """All sizes of a table: nothing falls, outlines are sound, joins close."""
    names, bodies = body_table(table)
    every = [finish(garment, body) for body in bodies]
    if None in every:
        return []
    for key in [key for key in garment["finished"] if key not in MAY_FALL]:
        values = [finished[key] for finished in every]
        tally.check(all(a <= b + HAIR_CM for a, b in zip(values, values[1:])),
                    name, table, key, "falls:", values)
    for size, finished in zip(names, every):
        where = "%s, %s %s:" % (name, table, size)
        tally.check(all(value > 0 for value in finished.values()), where, finished)
        drawn = draw_all(garment, finished)
        for piece, edges in drawn.items():
            check_outline(tally, where + " " + piece, edges)
        check_joins(tally, where, garment, drawn)
        check_trims(tally, where, garment, drawn, finished)
    return list(zip(names, bodies, every))


def heads():
    """Age in months to the head's median and deviation, mean of both sexes."""
    lines = read(SRCDIR, "tests", "heads.csv").splitlines()
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    made = {}
    for age in {row["age_months"] for row in rows}:
        both = [row for row in rows if row["age_months"] == age]
        assert sorted(row["sex"] for row in both) == ["boys", "girls"]
        made[int(age)] = tuple(sum(float(row[key]) for row in both) / 2
                               for key in ("median_cm", "deviation_cm"))
    return made


def check_head(tally, garment):
    """The dress passes the head: its neck and both sides of its slit, nothing stretched."""
    table = load(DATA, "sizes", "children.yaml")
    known = heads()
    checked = 0
    for age, body in zip(table["ages"], body_table("children")[1]):
        if int(age) not in known:
            continue
        finished = finish(garment, body)
        drawn = draw_all(garment, finished)
        neck = run_length("front neck and back neck", drawn)
        head = known[int(age)][0] + HEAD_DEVIATIONS * known[int(age)][1]
        checked += 1
        tally.check(neck + 2 * finished["opening"] >= head, "dress at", age, "months: neck", neck,
                    "and slit", finished["opening"], "for a head of", head)
        tally.check(neck < head, "dress at", age, "months needs no slit")
    tally.check(checked >= 6, "heads compared in", checked, "sizes")


def check_chart(tally):
    """Cross back and armhole depth of the children's table by the lines that files tell."""
    for name, (factor, constant_cm) in CHART_LINES.items():
        for size, body in zip(*body_table("children")):
            line_cm = factor * body["chest"] + constant_cm
            tally.check(abs(line_cm - body[name]) <= CHART_WITHIN_CM,
                        size, name, body[name], "by the line", line_cm)


def check_bodies(tally, sized):
    """Finished garments against bodies of the same size."""
    for size, body, finished in sized["flared-dress"]:
        tally.check(0.4 <= finished["length"] / body["height"] <= 0.7,
                    "dress", size, "is", finished["length"], "of", body["height"])
        tally.check(finished["armhole"] > body["armhole depth"], "dress", size, "is tight")
        tally.check(2 * finished["edging"] + finished["shoulders"] <= 1.1 * body["cross back"],
                    "dress", size, "slips off the shoulders")
    for size, body, finished in sized["skirt"]:
        tally.check(finished["top"] >= body["hips"], "skirt", size, "does not pass the hips")
        tally.check(finished["waist"] < finished["top"], "skirt", size, "slips down")
    for size, body, finished in sized["drop-shoulder-cardigan"]:
        tally.check(finished["neck to wrist"] < WRIST_AT_MOST * body["height"],
                    "drop shoulder", size, "has long sleeves:", finished["neck to wrist"])
        tally.check(2 * finished["armhole"] > body["upper arm"] + 2, "drop shoulder", size, "arm")
        tally.check(finished["wrist"] < 2 * finished["armhole"], "drop shoulder", size, "cuff")
    for size, body, finished in sized["set-in-cardigan"]:
        ease = finished["sleeve width"] - body["upper arm"]
        tally.check(2 <= ease <= 8, "set-in", size, "has", ease, "cm of room round the arm")
        tally.check(finished["wrist"] < finished["sleeve width"], "set-in", size, "cuff")
        tally.check(0.5 <= finished["cap height"] / finished["armhole"] <= 0.9, "set-in", size,
                    "has a cap of", finished["cap height"], "for", finished["armhole"])


def check_manual(tally):
    """The manual's own garment measures what the words above it say."""
    page = read(SRCDIR, "man", "hemwright-project.5")
    found = re.search(r"^A garment file of your own,\n(.*?)^\.Bd .*?\n(.*?)^\.Ed", page,
                      re.M | re.S)
    tally.check(found, "the manual has no garment file of your own")
    if not found:
        return
    words = " ".join(found.group(1).split())
    garment = parse(found.group(2))
    finished = finish(garment, {"chest": 60, "height": 110})
    drawn = draw_all(garment, finished)
    for piece, edges in drawn.items():
        check_outline(tally, "manual: " + piece, edges)
    check_joins(tally, "manual:", garment, drawn)
    check_trims(tally, "manual:", garment, drawn, finished)
    right = drawn["front"]["right"]
    neck = run_length("front neck and back neck", drawn)
    for text, value in [("it is %g cm round and", finished["chest"]),
                        ("round and %g cm long", right.points[-1][1]),
                        ("Each piece is %g cm wide", 2 * right.points[0][0]),
                        ("straight up for %g cm", right.length("side")),
                        ("which is %g cm wide", right.length("shoulder")),
                        ("The neck is %.0f cm round", neck)]:
        tally.check(text % value in words, "the manual does not say", text % value)


PROJECT = """title: Trial
machine: hand
garment: %s
gauge:
  main: { stitches: 28, rows: 40 }
motif:
  chart: |
    o
  gap: 1
hem:
  depth: 4
sizes:
  names: [%s]
%schoices:
  tolerance: 2 cm
"""


def plan(garment, names, table):
    """The document that the program makes of a garment file, or nothing."""
    with tempfile.TemporaryDirectory() as folder:
        project = os.path.join(folder, "trial.yaml")
        with open(project, "w", encoding="utf-8") as file:
            file.write(PROJECT % (garment, ", ".join(names), table))
        settings = {key: value for key, value in os.environ.items() if key != "HEMWRIGHT_DATA"}
        settings["LC_ALL"] = "C"
        run = subprocess.run([PROGRAM, "plan", project, "--only", "json", "--into", folder],
                             env=settings, timeout=PROGRAM_SECONDS, check=False,
                             stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8")
        if run.returncode != 0:
            print(garment, "ended with", run.returncode, run.stdout)
            return None
        with open(os.path.join(folder, "trial.json"), encoding="utf-8") as file:
            return json.load(file)


def check_program(tally, name, garment, table):
    """The program reads the file and finds the same finished measurements."""
    if table is None:
        names, bodies, words = ["one"], [{}], ""
    else:
        names, bodies = body_table(table)
        words = "  table: %s\n" % table
    document = plan(name, names, words)
    tally.check(document is not None, name, table, "was not planned")
    if document is None:
        return
    found = document_finished(document)
    for at, body in enumerate(bodies):
        for key, value in finish(garment, body).items():
            given = found.get((key, at))
            tally.check(given is not None and abs(given - value) <= PRINTED_CM,
                        name, names[at], key, "is", value, "and told as", given)


def document_finished(document):
    """(measurement, size) to cm, from the document."""
    made = {}
    for row in document["finished"]:
        for at, value in enumerate(row["values_cm"]):
            made[row["name"], at] = value
    return made


def main():
    tally = Tally()
    check_curves(tally)
    check_chart(tally)
    sized = {}
    tables = [os.path.splitext(os.path.basename(path))[0]
              for path in sorted(glob.glob(os.path.join(DATA, "sizes", "*.yaml")))]
    for path in sorted(glob.glob(os.path.join(DATA, "garments", "*.yaml"))):
        name = os.path.splitext(os.path.basename(path))[0]
        garment = load(path)
        tally.check(all("outline" in piece or "mirrors" in piece
                        for piece in garment["pieces"].values()), name, "has no outline")
        fits = {table: check_table(tally, name, garment, table) for table in tables}
        sized[name] = fits["children"]
        tally.check(fits["children"], name, "does not fit the children's table")
        check_program(tally, name, garment, "children")
        for table in ("women", "men"):
            if fits.get(table):
                check_program(tally, name, garment, table)
    check_head(tally, load(DATA, "garments", "flared-dress.yaml"))
    check_bodies(tally, sized)
    check_manual(tally)
    print("%d passed, %d failed" % (tally.passed, tally.failed))
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
