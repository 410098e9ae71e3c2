#!/usr/bin/python3
# The garment files: drawn edges, joins and sizes worked out a second time, from the files alone.
# SPDX-License-Identifier: GPL-3.0-or-later
"""garments.py: run where the build is; ./hemwright must be there, or HEMWRIGHT_PROGRAM names it.

Files are read, rules added up and edges measured by code of its own, in outlines.py. What the
program makes of the same files is compared with that.

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

sys.dont_write_bytecode = True  # the source folder may be one to read only

from outlines import (DATA, HAIR_CM, SLOPES, SRCDIR, Edge, add_up, arc, body_table, draw_all,
                      finish, length_cm, listed, load, natural_slopes, parse, read, run_length,
                      steffen_slopes)

PROGRAM = os.environ.get("HEMWRIGHT_PROGRAM") or os.path.join(".", "hemwright")
PROGRAM_SECONDS = 60

PRINTED_CM = 1e-6  # the document tells lengths to the last decimal
LENGTH_CM = 1e-4  # the program integrates to 1e-7 of a length, Simpson's rule to less
AREA_CM2 = 1e-3
# A cap is a little longer than its armhole, never shorter: common practice; the 2 cm
# are this project's own choice and stand in the garment file.
CAP_JOIN = "cap"
CAP_EASE_CM = (0.0, 2.0)
# data/SOURCES.md, W3: head at the median and two standard deviations.
HEAD_DEVIATIONS = 2
# The span of both arms is about the height (common knowledge, no source), so that half the height is
# more than from the neck to the wrist.
WRIST_AT_MOST = 0.5
# Chart D1 in straight lines: what comments in the garment files say.
CHART_LINES = {"cross back": (0.35, 4.0), "armhole depth": (0.25, -2.3)}
CHART_WITHIN_CM = 1.0
# Behind the name of a trim over whose end another is picked up.
TRIM_END = " end"
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


def trim_length(trim, drawn, depths):
    """Edges, and ends of trims, each as long as that trim is deep; `depths` has those above."""
    parts = [part for words in listed(trim["along"]) for part in words.split(" and ")]
    return sum(depths[part[:-len(TRIM_END)]] if part.endswith(TRIM_END) else run_length(part, drawn)
               for part in parts)


def trim_depths(garment, finished):
    return {name: add_up(trim.get("depth", "2 cm"), finished, None)
            for name, trim in garment.get("trims", {}).items()}


def check_trims(tally, where, garment, drawn, finished):
    depths, above = trim_depths(garment, finished), {}
    for name, trim in garment.get("trims", {}).items():
        length = trim_length(trim, drawn, above)
        above[name] = depths[name]
        tally.check(length > depths[name] > 0, where, name, "is", length, "long and",
                    depths[name], "deep")
    # A front band reaches as high as the outer side of the neckband beside it: common practice.
    for side in ("left", "right"):
        name = side + " front band"
        if name in depths:
            wanted = drawn[side + " front"][side].length("opening") + depths["neckband"]
            length = trim_length(garment["trims"][name], drawn, above)
            tally.check(abs(length - wanted) < HAIR_CM, where, name, "is", length, "not", wanted)


def check_neckband(tally, where, garment, finished):
    """A band deeper than the back of the neck has no room below the shoulders, and stands up."""
    depths = trim_depths(garment, finished)
    if "neckband" in depths:
        tally.check(depths["neckband"] <= finished["back neck depth"] + HAIR_CM, where,
                    "has a neckband of", depths["neckband"], "at a back neck of",
                    finished["back neck depth"])


def check_cuff(tally, where, finished):
    """A hand passes, and no more: 13 to 28 cm round with the thumb laid in, from memory."""
    tally.check(13 <= finished["wrist"] <= 28, where, "has a cuff of", finished["wrist"])


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
        check_neckband(tally, where, garment, finished)
        if "wrist" in finished:
            check_cuff(tally, where, finished)
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
        neck = run_length("front neck and back neck left neckline and back neck right neckline",
                          drawn)
        slit = drawn["back"]["neck right"].length("slit")
        head = known[int(age)][0] + HEAD_DEVIATIONS * known[int(age)][1]
        checked += 1
        tally.check(abs(slit - finished["opening"]) < HAIR_CM, "dress has a slit of", slit)
        tally.check(neck + 2 * slit >= head, "dress at", age, "months: neck", neck,
                    "and slit", slit, "for a head of", head)
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
    waistband = load(DATA, "garments", "skirt.yaml")["trims"]["waistband"]
    for size, body, finished in sized["skirt"]:
        tally.check(finished["top"] >= body["hips"], "skirt", size, "does not pass the hips")
        tally.check(finished["waist"] < finished["top"], "skirt", size, "slips down")
        # An elastic as long as the waist or longer holds nothing; common knowledge.
        elastic = add_up(waistband["elastic"], finished, None)
        tally.check(0.8 * body["waist"] <= elastic <= body["waist"],
                    "skirt", size, "has an elastic of", elastic)
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


ROWS_IN_CM = 4  # of the project below
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
    check_drafts(tally, name, garment, bodies, document)


def told_edges(draft):
    """The edges that the document tells, as they are drawn here."""
    return {name: Edge([(p["across_cm"], p["up_cm"], p["stretch"], p["curve"]) for p in points])
            for name, points in draft["edges"].items() if points}


def knitted_edge(edge, half_cm, face_cm):
    """A side edge as it is knitted: moved as far as it runs straight up, straight up the face."""
    points = list(edge.points)
    run = 1
    while run < len(points) and points[run][3] == "straight" and abs(
            points[run][0] - points[0][0]) < HAIR_CM:
        run += 1
    side = math.copysign(half_cm, points[0][0])
    points[:run] = [(side,) + point[1:] for point in points[:run]]
    if run < len(points) and points[run - 1][1] < face_cm - HAIR_CM:
        points.insert(run, (side, face_cm, points[run][2], "straight"))
    return Edge(points)


def check_draft(tally, where, draft, drawn):
    """The program draws the same edges, and finds the same area in them."""
    told = told_edges(draft)
    half_cm = draft["visible_sts"] / draft["sts_per_cm"] / 2
    for name, edge in drawn.items():
        if name == "top":
            continue
        wanted = edge
        if name in ("left", "right"):
            wanted = knitted_edge(edge, half_cm, draft["face_cm"])
        found = told[name].points if name in told else []
        tally.check(len(found) == len(wanted.points)
                    and all(abs(a[0] - b[0]) < PRINTED_CM and abs(a[1] - b[1]) < PRINTED_CM
                            and a[2:] == b[2:] for a, b in zip(found, wanted.points)),
                    where, name, found, "but by the file", wanted.points)
    area = sum(sign * told[name].area() for name, sign in
               (("right", 1), ("left", -1), ("neck right", -1), ("neck left", 1)) if name in told)
    neck = drawn["neck right"].points if "neck right" in drawn else []
    middle = [up for across, up in (point[:2] for point in neck) if abs(across) < HAIR_CM]
    slit = max(middle) - min(middle) if middle else 0
    tally.check(abs(slit - draft["slit_cm"]) < PRINTED_CM, where, "slit", slit, "and told as",
                draft["slit_cm"])
    tally.check(abs(area - draft["area_cm2"]) <= AREA_CM2, where, "area", area, "and told as",
                draft["area_cm2"])


def check_drafts(tally, name, garment, bodies, document):
    """Edges, areas and the lengths of joins, piece by piece and size by size."""
    told, sizes = {}, document["sizes"]
    for draft in document["drafts"]:
        finished = finish(garment, bodies[sizes.index(draft["size"])])
        where = "%s, %s, %s:" % (name, draft["size"], draft["piece"])
        check_draft(tally, where, draft, draw_all(garment, finished)[draft["piece"]])
        told.setdefault(draft["size"], {})[draft["piece"]] = told_edges(draft)
    tally.check(len(document["drafts"]) == len(sizes) * len(garment["pieces"]), name,
                "has", len(document["drafts"]), "drafts")
    joins = listed(garment.get("joins", []))
    tally.check(len(document["joins"]) == len(sizes) * len(joins), name, "tells",
                len(document["joins"]), "joins")
    for join in document["joins"]:
        ends = join["edges"].partition(", within ")[0].split(" to ")
        for end, key in zip(ends, ("first_cm", "other_cm")):
            length = run_length(end, told[join["size"]])
            tally.check(abs(length - join[key]) <= LENGTH_CM, name, join["size"], end, "is", length,
                        "and told as", join[key])
        tally.check(join["closes"], name, join["size"], join["edges"], "does not close")
    for at, size in enumerate(sizes):
        check_told_trims(tally, "%s, %s," % (name, size), (garment, finish(garment, bodies[at])),
                         told[size], [t for t in document["trims"] if t["size"] == size])
        check_shares(tally, "%s, %s," % (name, size), document, size)


def check_shares(tally, where, document, size):
    """Tops have the stitches of the last row, and the halves of a neck's middle add up to it, stitch
    for stitch (common practice, no source); openings have the rows of the face and above it."""
    drafts = {d["piece"]: d for d in document["drafts"] if d["size"] == size}
    for trim in (t for t in document["trims"] if t["size"] == size):
        shares = trim["shares"]
        for at, share in enumerate(shares):
            for piece, draft in drafts.items():
                edge = share["edge"]
                if edge == piece + " top" and share["sts"] > 0:
                    sts = (draft["visible_sts"] - draft["inset_left_sts"][-1]
                           - draft["inset_right_sts"][-1])
                    tally.check((share["over"], share["over_what"]) == (sts, "stitches"), where,
                                edge, "is over", share["over"], "stitches and not", sts)
                elif edge in (piece + " left opening", piece + " right opening"):
                    check_opening(tally, where, draft, (share, document["hem"]["face_rows"]))
                elif at > 0 and {edge, shares[at - 1]["edge"]} == {
                        piece + " neck left", piece + " neck right"}:
                    middle = draft["neck_left_halves"][draft["neck_row"]]
                    sts = [s["parts"][0]["sts"] for s in shares[at - 1 : at + 1]]
                    tally.check(sts == [middle - middle // 2, middle // 2], where, edge, "has",
                                sts, "of a middle of", middle)


def check_opening(tally, where, draft, told):
    """Rows that lie below the end of an opening by their middles, and all of the face."""
    share, face_rows = told
    low = draft["low_cm"]
    side = "right" if share["edge"].endswith("right opening") else "left"
    end = max(p["up_cm"] for p in draft["edges"][side] if p["stretch"] == "opening")
    rows = face_rows + sum((a + b) / 2 < end for a, b in zip(low, low[1:]))
    tally.check((share["over"], share["over_what"]) == (rows, "rows"), where, share["edge"],
                "is over", share["over"], "rows and not", rows)


def check_told_trims(tally, where, made, told, trims):
    """The lengths of trims, none of which has a motif here: whole even numbers of rows on the face,
    the nearest to its depth, and at the end of a trim the rows of its face."""
    garment, finished = made
    depths = {name: 2 * math.floor(depth * ROWS_IN_CM / 2 + 0.5) / ROWS_IN_CM
              for name, depth in trim_depths(garment, finished).items()}
    tally.check([t["trim"] for t in trims] == list(depths), where, "trims", trims)
    for trim in trims:
        name = trim["trim"]
        length = trim_length(garment["trims"][name], told, depths)
        tally.check(abs(trim["hem"]["face_cm"] - depths[name]) <= PRINTED_CM, where, name, "is",
                    trim["hem"]["face_cm"], "deep and not", depths[name])
        tally.check(abs(length - trim["length_cm"]) <= LENGTH_CM, where, name, "is", length,
                    "and told as", trim["length_cm"])
        check_elastic(tally, where + " " + name, garment["trims"][name], (trim, finished))


def check_elastic(tally, where, trim, told_of):
    """What is drawn in by the file's sum, and told as that."""
    told, finished = told_of
    wanted = add_up(trim["elastic"], finished, None) if "elastic" in trim else None
    tally.check((wanted is None) == (told["elastic_cm"] is None) and
                (wanted is None or abs(wanted - told["elastic_cm"]) <= PRINTED_CM),
                where, "has an elastic of", wanted, "told as", told["elastic_cm"])


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
