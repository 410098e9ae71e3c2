#!/usr/bin/env python3
"""The choice of counts against an integer-programming solver: the same least cost.

SPDX-License-Identifier: GPL-3.0-or-later

The model is written from the definition of the cost, apart from the program's own code: one binary
for each choice of a piece in a size, one for each break that a seam can have, one for each step
that a count can take. Solver: GLPK (glpsol), a general-purpose library. The projects are made by
chance from a fixed seed. Prints `N passed, N failed`; ends with 77 where glpsol is missing.
"""
import json
import os
import random
import shutil
import subprocess
import sys
import tempfile

PROGRAM = os.environ.get("HEMWRIGHT_PROGRAM", "./hemwright")
CASES = 24
SECONDS = 60

GARMENTS = [
    # Front and back, sewn at both sides.
    (["front", "back"], ["front right to back left", "front left to back right"], {}),
    # A cardigan: fronts that mirror each other, with a free edge each.
    (["back", "left front", "right front"],
     ["left front right to back left", "right front left to back right"],
     {"right front": "left front"}),
    # Pieces apart.
    (["panel", "strip"], [], {}),
    # One piece sewn to itself.
    (["ring"], ["ring left to ring right"], {}),
]


def make_case(rng, folder):
    """A project and its garment as files; returns what the model needs."""
    names, seams, mirrors = rng.choice(GARMENTS)
    own = [n for n in names if n not in mirrors]
    sizes = rng.randint(5, 12)
    width = rng.randint(2, 9)
    gap = rng.randint(0, 4)
    band = rng.uniform(22, 36)
    main = band * rng.uniform(0.96, 1.04)
    weights = [round(rng.uniform(0.1, 1.5), 3) for _ in range(3)]
    tolerance = round(rng.uniform(0.5, 1.5), 2)
    wanted = {}
    for name in own:
        cm = rng.uniform(20, 30)
        row = []
        for _ in range(sizes):
            row.append(round(cm, 2))
            cm += rng.uniform(-0.4, 3.2)
        wanted[name] = row
    rows = ["o" * width, "o" + "." * (width - 1)]
    with open(os.path.join(folder, "garment.yaml"), "w", encoding="utf-8") as out:
        out.write("title: random\nfinished:\n")
        for name in own:
            out.write(f"  {name} width:\n    is: 40 cm\n")
        out.write("pieces:\n")
        for name in names:
            line = f"mirrors: {mirrors[name]}" if name in mirrors else f"band width: {name} width"
            out.write(f"  {name}:\n    {line}\n")
        if seams:
            out.write("seams: [" + ", ".join(seams) + "]\n")
    with open(os.path.join(folder, "case.yaml"), "w", encoding="utf-8") as out:
        out.write("title: random\nmachine: standard\ngarment: garment.yaml\ngauge:\n")
        out.write(f"  main:\n    stitches: {main:.6f}\n    rows: 40\n")
        out.write(f"  band:\n    stitches: {band:.6f}\n    rows: 40\n")
        out.write("motif:\n  chart: |\n" + "".join(f"    {r}\n" for r in rows))
        out.write(f"  gap: {gap}\nhem:\n  depth: 4\nsizes:\n")
        out.write("  names: [" + ", ".join(f"size {i}" for i in range(sizes)) + "]\n  finished:\n")
        for name in own:
            out.write(f"    {name} width: [" + ", ".join(str(v) for v in wanted[name]) + "]\n")
        out.write(f"choices:\n  tolerance: {tolerance}\n  centre weight: {weights[0]}\n")
        out.write(f"  seam weight: {weights[1]}\n  step weight: {weights[2]}\n")
    return {
        "names": names, "seams": seams, "mirrors": mirrors, "sizes": sizes,
        "repeat": width + gap, "gap": gap, "band": round(band, 6) / 10,
        "main": round(main, 6) / 10, "weights": weights, "tolerance": tolerance,
        "wanted": {n: wanted[mirrors.get(n, n)] for n in names},
    }


def options(case, wanted_cm):
    """Every (left, right, stitches) within a window far wider than any least cost reaches."""
    found = set()
    far = 2.5 * case["repeat"] / case["band"] + 3 * case["tolerance"]
    for motifs in range(1, 200):
        for left in range(case["gap"] + 1):
            for right in range(case["gap"] + 1):
                sts = motifs * case["repeat"] - case["gap"] + left + right
                if sts <= 196 and abs(sts / case["band"] - wanted_cm) <= far:
                    found.add((left, right, sts))
    return sorted(found)


class Model:
    """A linear program in the text format that glpsol reads, row by row."""

    def __init__(self):
        self.cost, self.rows, self.binaries = [], [], []

    def binary(self, name, cost):
        self.binaries.append(name)
        if abs(cost) > 1e-15:
            self.cost.append(f"+ {cost:.12f} {name}")
        return name

    def row(self, terms, relation, right):
        # `0 one` keeps a row without terms well formed.
        self.rows.append(" ".join(terms) + f" {relation} {right}")

    def write(self, path):
        with open(path, "w", encoding="utf-8") as out:
            out.write("Minimize\n obj:\n" + "\n".join(self.cost) + "\nSubject To\n")
            out.writelines(f" r{i}: {r}\n" for i, r in enumerate(self.rows))
            out.write("Binary\n" + "\n".join(self.binaries) + "\nEnd\n")


def edge(case, text):
    piece, side = text.rsplit(" ", 1)
    return case["names"].index(piece), 0 if side == "left" else 1


def build(case):
    model = Model()
    wc, ws, wg = case["weights"]
    tol, gap = case["tolerance"], case["gap"]
    chosen = {}
    for p, name in enumerate(case["names"]):
        for i in range(case["sizes"]):
            want = case["wanted"][name][i]
            terms = []
            for k, (left, right, sts) in enumerate(options(case, want)):
                cost = ((sts / case["band"] - want) / tol) ** 2
                cost += ((sts / case["main"] - want) / tol) ** 2
                cost += wc * ((left - right) / 2) ** 2
                terms.append((model.binary(f"x{p}_{i}_{k}", cost), left, right, sts))
            chosen[p, i] = terms
            model.row([f"+ {t[0]}" for t in terms], "=", 1)
    for name, other in case["mirrors"].items():
        p, q = case["names"].index(name), case["names"].index(other)
        for i in range(case["sizes"]):
            mine = {(l, r, s): x for x, l, r, s in chosen[p, i]}
            for x, left, right, sts in chosen[q, i]:
                model.row([f"+ {x}", f"- {mine[right, left, sts]}"], "=", 0)
    for s, seam in enumerate(case["seams"]):
        ends = [edge(case, e) for e in seam.split(" to ")]
        for i in range(case["sizes"]):
            breaks = [(model.binary(f"z{s}_{i}_{b + gap}", ws * b * b), b)
                      for b in range(-gap, gap + 1)]
            model.row([f"+ {z}" for z, _ in breaks], "=", 1)
            sums = {}
            for p, side in ends:
                for t in chosen[p, i]:
                    sums[t[0]] = sums.get(t[0], 0) + t[1 + side]
            terms = [f"+ {v} {x}" for x, v in sums.items() if v]
            terms += [f"{'-' if b > 0 else '+'} {abs(b)} {z}" for z, b in breaks if b]
            if terms:
                model.row(terms, "=", gap)
    for p, name in enumerate(case["names"]):
        for i in range(1, case["sizes"]):
            rise = case["wanted"][name][i] - case["wanted"][name][i - 1]
            least = min(t[3] for t in chosen[p, i]) - max(t[3] for t in chosen[p, i - 1])
            most = max(t[3] for t in chosen[p, i]) - min(t[3] for t in chosen[p, i - 1])
            least = max(least, 0) if rise >= 0 else least
            steps = [(model.binary(f"w{p}_{i}_{d - least}",
                                   wg * ((d / case["band"] - rise) / tol) ** 2), d)
                     for d in range(least, most + 1)]
            model.row([f"+ {w}" for w, _ in steps], "=", 1)
            terms = [f"+ {t[3]} {t[0]}" for t in chosen[p, i]]
            terms += [f"- {t[3]} {t[0]}" for t in chosen[p, i - 1]]
            terms += [f"{'-' if d > 0 else '+'} {abs(d)} {w}" for w, d in steps if d]
            model.row(terms, "=", 0)
    return model


def solve(model, folder):
    """The least cost, or None where the solver did not prove one in time."""
    lp, out = os.path.join(folder, "case.lp"), os.path.join(folder, "case.out")
    model.write(lp)
    subprocess.run(["glpsol", "--lp", lp, "--cuts", "--mipgap", "0", "--tmlim", str(SECONDS),
                    "--write", out], stdout=subprocess.DEVNULL, check=True)
    with open(out, encoding="utf-8") as text:
        for line in text:
            words = line.split()
            if words[:2] == ["s", "mip"]:
                return float(words[-1]) if words[4] == "o" else None
    return None


def planned(folder):
    subprocess.run([PROGRAM, "plan", os.path.join(folder, "case.yaml"), "--only", "json",
                    "--into", folder, "--replace"], stdout=subprocess.DEVNULL, check=True)
    with open(os.path.join(folder, "case.json"), encoding="utf-8") as text:
        return json.load(text)


def added_up(plan):
    """The cost added up again from its reported terms."""
    terms = [v for fit in plan["fits"] for v in fit["cost"].values()]
    return sum(terms) + sum(v for seam in plan["seams"] for v in seam["costs"])


def main():
    if shutil.which("glpsol") is None:
        print("glpsol is missing: on Debian, apt-get install glpk-utils")
        return 77
    rng = random.Random(20240229)
    passed = failed = 0
    for number in range(CASES):
        with tempfile.TemporaryDirectory() as folder:
            case = make_case(rng, folder)
            plan = planned(folder)
            least = solve(build(case), folder)
            total = plan["total_cost"]
            # Costs are compared in millionths by the program, of at most 60 terms a size.
            good = least is not None and abs(total - least) <= 1e-4
            good = good and abs(added_up(plan) - total) <= 1e-9 * (1 + total)
            passed += good
            failed += not good
            if not good:
                print(f"case {number}: {len(case['names'])} pieces, {case['sizes']} sizes: "
                      f"program {total}, solver {least}, added up {added_up(plan)}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
