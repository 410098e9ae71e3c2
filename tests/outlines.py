# Garment files read and their edges measured, by code that shares nothing with the program's.
# SPDX-License-Identifier: GPL-3.0-or-later
"""outlines.py: files of the data folder, sums of measurements, curves, edges and their lengths.

Straight edges are measured with Pythagoras. Sources of the curves: monotone, M. Steffen's
interpolation (Astronomy and Astrophysics 239, 1990, p. 443; slopes at the ends by its simplest
choice, from memory); natural, the cubic spline with second derivatives of 0 at both ends, any
textbook. Lengths of curves: Simpson's rule. `garments.py` checks them before it uses them.
"""

import math
import os
import re

SRCDIR = os.environ.get("srcdir") or os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
DATA = os.path.join(SRCDIR, "data")
CM = {"cm": 1.0, "mm": 0.1, "in": 2.54}  # data/SOURCES.md, U1
HAIR_CM = 1e-9
STEPS = 200  # of Simpson's rule in each part of a curve


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
        self.known = None  # its ways, once they were worked out

    def mirrored(self):
        return Edge([(-x, y, stretch, curve) for x, y, stretch, curve in self.points])

    def ways(self):
        """(stretch, length, list of points on the way) of each way."""
        if self.known is None:
            self.known = self.find_ways()
        return self.known

    def find_ways(self):
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

    def area(self):
        """Between the edge and the middle, right of it above 0: x over y, each cubic exactly."""
        total, at, points = 0.0, 0, self.points
        while at + 1 < len(points):
            to = at + 1
            while points[at + 1][3] != "straight" and to + 1 < len(points) and (
                    points[to + 1][3] == points[at + 1][3]):
                to += 1
            x = [p[0] for p in points[at:to + 1]]
            y = [p[1] for p in points[at:to + 1]]
            if points[at + 1][3] == "straight":
                total += (x[0] + x[1]) / 2 * (y[1] - y[0])
            else:
                slopes = SLOPES[points[at + 1][3]](y, x)
                for i in range(to - at):
                    h = y[i + 1] - y[i]
                    total += sum(k * h ** (n + 1) / (n + 1)
                                 for n, k in enumerate(cubic(y, x, slopes, i)))
            at = to
        return total

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
