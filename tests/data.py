#!/usr/bin/python3
# The data files: heights against growth tables, motifs against the card, keys against SOURCES.md.
# SPDX-License-Identifier: GPL-3.0-or-later
"""data.py: run where the build is; ./hemwright must be there, or HEMWRIGHT_PROGRAM names it.

Ends with 0 when all agrees, 1 when anything does not or when nothing was checked.
"""

import csv
import glob
import os
import re
import subprocess
import sys

SRCDIR = os.environ.get("srcdir") or os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
DATA = os.path.join(SRCDIR, "data")
PROGRAM = os.environ.get("HEMWRIGHT_PROGRAM") or os.path.join(".", "hemwright")
PROGRAM_SECONDS = 20

# Source of the medians: tests/heights.csv. The sizes are given to the millimetre, so that rounding
# takes 0.05 cm (by hand: 0.1 / 2); the rest is for decimals.
WHO_TOLERANCE_CM = 0.06
# The two tables describe other children: the tolerance is this project's own choice, no source.
CDC_TOLERANCE = 0.025  # of the CDC median
HALF_MONTH = 0.5
LAST_LYING_MONTHS = 24  # data/SOURCES.md, W1: lying to day 730
# data/SOURCES.md, E13: heights from 50 to 176 in 6 cm steps (EN 13402-3).
CLASSES_CM = list(range(50, 177, 6))
# data/SOURCES.md, B4: a card has 24 columns, and these repeats fit it whole. All but 1, which
# holds no figure, are to be among the motifs that come with the program.
CARD_COLUMNS = 24
REPEATS = [2, 3, 4, 6, 8, 12, 24]
LEAST_MOTIFS = 12  # own choice, no source
LONGEST_FLOAT = 5  # data/SOURCES.md, F1: at standard pitch
OWN_WORK = "own drawing"  # what a motif may give in place of a key


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


def name_of(path):
    return os.path.splitext(os.path.basename(path))[0]


def listed(text, key):
    """The items of `key: [a, b]`, which may run over several lines; none if it is not there."""
    found = re.search(r"^ *%s: *\[([^\]]*)\]" % key, text, re.M)
    return [item.strip() for item in found.group(1).split(",")] if found else []


def heights(text):
    """The values below `height:`, as they are written."""
    found = re.search(r"^  height:\n", text, re.M)
    return listed(text[found.end():], "values") if found else []


def medians():
    """The rows of tests/heights.csv, numbers made of what is one."""
    lines = read(SRCDIR, "tests", "heights.csv").splitlines()
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    for row in rows:
        row["age_months"] = float(row["age_months"])
        row["median_cm"] = float(row["median_cm"])
    return rows


def median_cm(rows, table, age_months):
    """Mean of both sexes and of all rows within half a month; None unless they are complete."""
    lying = age_months <= LAST_LYING_MONTHS
    near = [row for row in rows if row["table"] == table
            and row["measured"] == ("lying" if lying else "standing")
            and abs(row["age_months"] - age_months) <= HALF_MONTH]
    # CDC goes by half months: to 2 years one row on each side, later only the one after.
    each = 2 if table == "CDC" and lying else 1
    sexes = sorted(row["sex"] for row in near)
    if sexes != ["boys"] * each + ["girls"] * each:
        return None
    return sum(row["median_cm"] for row in near) / len(near)


def check_children(tally):
    text = read(DATA, "sizes", "children.yaml")
    names, ages, values = listed(text, "names"), listed(text, "ages"), heights(text)
    tally.check(names and len(names) == len(ages) == len(values),
                "children: names, ages and heights are not equally many:",
                len(names), len(ages), len(values))
    rows = medians()
    for name, age, value in zip(names, ages, values):
        if not re.fullmatch(r"\d+(\.\d+)? cm", value):
            tally.check(False, "children:", name, "has a height that is not in cm:", value)
            continue
        height_cm = float(value.split()[0])
        who_cm = median_cm(rows, "WHO", float(age))
        tally.check(who_cm is not None and abs(height_cm - who_cm) <= WHO_TOLERANCE_CM,
                    "children:", name, "has", height_cm, "cm, WHO", who_cm)
        cdc_cm = median_cm(rows, "CDC", float(age))
        tally.check(cdc_cm is not None and abs(height_cm - cdc_cm) <= CDC_TOLERANCE * cdc_cm,
                    "children:", name, "has", height_cm, "cm, CDC", cdc_cm)


def check_classes(tally):
    text = read(DATA, "sizes", "european-heights.yaml")
    wanted = [str(height) for height in CLASSES_CM]
    tally.check(re.search(r"^units: cm$", text, re.M), "European heights are not in cm")
    tally.check(listed(text, "names") == wanted, "European names:", listed(text, "names"))
    tally.check(heights(text) == wanted, "European heights:", heights(text))
    tally.check(len(listed(text, "ages")) == len(wanted), "European ages:", listed(text, "ages"))


def ask(*words):
    """What the program prints, from the data beside the build; nothing if it fails."""
    settings = {key: value for key, value in os.environ.items() if key != "HEMWRIGHT_DATA"}
    settings["LC_ALL"] = "C"
    run = subprocess.run([PROGRAM, *words], env=settings, timeout=PROGRAM_SECONDS, check=False,
                         stdout=subprocess.PIPE, stderr=subprocess.STDOUT, encoding="utf-8")
    if run.returncode != 0:
        print(" ".join(words), "ended with", run.returncode, run.stdout)
        return ""
    return run.stdout


def drawn(text):
    """The rows of a motif file, each one repeat wide: figure and gap."""
    chart = re.search(r"^chart: \|\n((?: +[.o]+\n)+)", text, re.M)
    gap = re.search(r"^gap: (\d+)$", text, re.M)
    gap_columns = int(gap.group(1)) if gap else 0
    return [row + "." * gap_columns for row in chart.group(1).split()] if chart else []


def longest_float(rows, knitted):
    """Most stitches in one colour on end, which the other yarn passes behind; repeats go round."""
    runs = re.findall(re.escape(knitted) + "+", " ".join(row * 2 for row in rows))
    return max((len(run) for run in runs), default=0)


def check_motif(tally, path):
    """Checks one motif against its own drawing and the limits; gives its repeat, or 0."""
    name, rows = name_of(path), drawn(read(path))
    told = ask("motif", name)
    size = re.search(r"repeat (\d+); (\d+) rows\.$", told, re.M)
    floats = re.search(r"^Longest float: background yarn (\d+) .*contrast yarn (\d+)\.$", told,
                       re.M)
    fit = re.search(r"^The card of (\d+) columns holds (\d+) whole repeats\.$", told, re.M)
    tally.check(rows and size and floats, name, "was not told, or has no chart:", told)
    if not (rows and size and floats):
        return 0
    repeat = int(size.group(1))
    tally.check((repeat, int(size.group(2))) == (len(rows[0]), len(rows)),
                name, "has another size than its drawing:", size.group(0))
    shown = [line for line in told.splitlines() if re.fullmatch("[.o]+", line)]
    tally.check([line[:repeat] for line in shown] == rows, name, "is not shown as it is drawn")
    # The background yarn floats behind contrast stitches, and the other way round.
    behind = [longest_float(rows, "o"), longest_float(rows, ".")]
    tally.check([int(count) for count in floats.groups()] == behind,
                name, "has floats of", behind, "and is told to have", floats.groups())
    tally.check(max(behind) <= LONGEST_FLOAT, name, "has floats of", behind)
    for number, row in enumerate(rows, 1):
        tally.check(len(set(row)) == 2, name, "has one colour in row", number)
    tally.check(fit and int(fit.group(1)) == CARD_COLUMNS
                and int(fit.group(2)) * repeat == CARD_COLUMNS,
                name, "does not fit the card whole, repeat", repeat)
    return repeat


def check_motifs(tally):
    paths = sorted(glob.glob(os.path.join(DATA, "motifs", "*.yaml")))
    tally.check(len(paths) >= LEAST_MOTIFS, "only", len(paths), "motifs")
    found = {check_motif(tally, path) for path in paths}
    for repeat in REPEATS:
        tally.check(repeat in found, "no motif has a repeat of", repeat)


def cited(text):
    """All keys that a data file cites."""
    keys = set(re.findall(r"\[([A-Z]{1,2}\d{1,2})\]", text))
    for given in re.findall(r"^ *source: *(\[[^\]]*\]|.*)", text, re.M):
        keys.update(part.strip() for part in given.strip("[] ").split(","))
    explained = re.search(r"^sources:\n((?:  .*\n)+)", text, re.M)
    if explained:
        keys.update(re.findall(r"^  (\w+):", explained.group(1), re.M))
    return keys - {OWN_WORK}


def check_keys(tally):
    known = set(re.findall(r"^\| ([A-Z]+\d+) \|", read(DATA, "SOURCES.md"), re.M))
    checked = 0
    for path in sorted(glob.glob(os.path.join(DATA, "**", "*.yaml"), recursive=True)):
        for key in sorted(cited(read(path))):
            checked += 1
            tally.check(key in known, path, "cites", repr(key), "which SOURCES.md does not have")
    tally.check(checked > 0, "no data file cites a source")


def main():
    tally = Tally()
    check_children(tally)
    check_classes(tally)
    check_motifs(tally)
    check_keys(tally)
    print("%d passed, %d failed" % (tally.passed, tally.failed))
    return 1 if tally.failed or not tally.passed else 0


if __name__ == "__main__":
    sys.exit(main())
