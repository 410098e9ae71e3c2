#!/usr/bin/python3
# Workbooks that other programs filled in and saved, read back by ours.
# SPDX-License-Identifier: GPL-3.0-or-later
"""measured.py: run where the build is; ./hemwright and tests/measured_dump must be there.

A workbook is filled in with one program, saved again as a workbook and as CSV by another, and
every value is compared with what was filled in. Source of the values: invented here; lengths in
inches are worked out with 2.54 cm (data/SOURCES.md, U1). Ends with 0 when all agrees, 77 when a
tool is missing.
"""

import csv
import os
import shutil
import subprocess
import sys
import tempfile
import zipfile

try:
    import openpyxl
except ImportError:
    print("skipped: openpyxl is not here")
    sys.exit(77)

DUMP = os.path.join(".", "tests", "measured_dump")
PROGRAM = os.path.join(".", "hemwright")
PROJECT = "meadow-dress"
TOLERANCE = 1e-9  # absolute, cm: a spreadsheet stores fifteen digits or more
CONVERT_SECONDS = 120
DUMP_SECONDS = 60
SIZES = ["2 years", "4 years", "98"]
PIECES = ["front", "left sleeve"]
HEADS = ["size", "piece", "fabric", "stitches", "rows", "width, cm", "length, cm", "remark"]

# What is filled in, row by row; None is left empty. Row 8 of the sheet holds the heads.
HEAD_ROW = 8
ROWS = [
    ["2 years", "front", "band", 101, None, 36.5, None, None],
    ["2 years", "front", "main", 101, 88, None, None, None],  # not filled in
    ["4 years", "left sleeve", "main", 53, 176, "12 3/8 in", 60, "washed; \"twice\", Grüße"],
    ["98", "front", "band", 119.5, 44, 0.1 + 0.2 + 40, 11.25, "two\nlines"],
    ["98", "left sleeve", "main", "=50+3", 40, "=10*3.15", "=40/3", None],
]
# The same as it must come back: row, size, piece, fabric, stitches, width, rows, length, remark.
WANTED = [
    (9, "2 years", "front", "band", 101, 36.5, 0, 0, ""),
    (11, "4 years", "left sleeve", "main", 53, 12.375 * 2.54, 176, 60,
     "washed; \"twice\", Grüße"),
    (12, "98", "front", "band", 119.5, 40.3, 44, 11.25, "two\nlines"),
    (13, "98", "left sleeve", "main", 53, 31.5, 40, 40 / 3, ""),
]
FORMULAS = 1  # rows at the end whose values only a spreadsheet program works out


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


def dump(path, sizes=None, pieces=None):
    """What the program under test reads: exit code, text, words to standard error."""
    words = [DUMP, path, "cm"] + (sizes or SIZES) + ["--"] + (pieces or PIECES)
    done = subprocess.run(words, stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE, timeout=DUMP_SECONDS, check=False)
    return done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")


def same(wanted, found):
    if isinstance(wanted, str):
        return wanted == found
    return abs(float(found) - wanted) <= TOLERANCE


def compare(tally, path, wanted, who, sizes=None, pieces=None):
    """Every value of every row, and no row more."""
    code, text, words = dump(path, sizes, pieces)
    tally.check(code == 0, who, "exit", code, words)
    # A remark may run over lines: each piece begins with its row's number and a tab.
    found = []
    for line in text.split("\n")[:-1]:
        values = line.split("\t")
        if len(values) == len(wanted[0]):
            found.append(values)
        elif found:
            found[-1][-1] += "\n" + line
    tally.check(len(found) == len(wanted), who, len(found), "rows, wanted", len(wanted))
    for row_wanted, row_found in zip(wanted, found):
        for value_wanted, value_found in zip(row_wanted, row_found):
            tally.check(same(value_wanted, value_found), who, "row", row_wanted[0],
                        repr(value_found), "wanted", repr(value_wanted))


def fill(path, with_formulas):
    """A workbook as a knitter gets it, then opened again and filled in."""
    rows = ROWS if with_formulas else ROWS[:-FORMULAS]
    book = openpyxl.Workbook()
    book.active.title = "Measured"
    sheet = book.active
    sheet["A1"] = "what you measured"
    for column, head in enumerate(HEADS, 1):
        sheet.cell(HEAD_ROW, column, head)
    for at, row in enumerate(rows, HEAD_ROW + 1):
        for column, value in enumerate(row[:4], 1):
            sheet.cell(at, column, value)
    book.create_sheet("Notes")["A1"] = "size"
    book.save(path)
    book = openpyxl.load_workbook(path)
    for at, row in enumerate(rows, HEAD_ROW + 1):
        for column, value in enumerate(row[4:], 5):
            if value is not None:
                book["Measured"].cell(at, column, value)
    book.save(path)


def convert(office, room, path, kind):
    """The file saved again by an office program; None where it wrote none."""
    out = os.path.join(room, "out")
    subprocess.run(
        [office, "-env:UserInstallation=file://" + os.path.join(room, "profile"), "--headless",
         "--convert-to", kind, "--outdir", out, path],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=CONVERT_SECONDS, check=False)
    stem = os.path.splitext(os.path.basename(path))[0]
    saved = os.path.join(out, stem + "." + kind.split(":")[0])
    return saved if os.path.exists(saved) else None


def without_texts(tally, room, path):
    """A workbook whose sheets point to shared texts that are not in it."""
    lost = os.path.join(room, "lost.xlsx")
    texts = "xl/sharedStrings.xml"
    with zipfile.ZipFile(path) as source, zipfile.ZipFile(lost, "w") as target:
        tally.check(texts in source.namelist(), "the office program shares no texts")
        for name in source.namelist():
            if name != texts:
                target.writestr(name, source.read(name))
    not_taken(tally, lost, 2, "damaged or only a part of it is here")


def through_office(tally, office, room):
    path = os.path.join(room, "formulas.xlsx")
    fill(path, True)
    again = convert(office, room, path, "xlsx")
    tally.check(again is not None, "the office program wrote no workbook")
    if again is not None:
        compare(tally, again, WANTED, "office, xlsx:")
        without_texts(tally, room, again)
    # Separator 44 is a comma and 59 a semicolon, 34 the quotation mark, 76 UTF-8; cells as stored,
    # not as shown, but for the first line of each choice.
    for who, options in [("commas", "44,34,76,1,,0,false,false"),
                         ("semicolons", "59,34,76,1,,0,false,false"),
                         ("all quoted", "44,34,76,1,,0,true,false")]:
        saved = convert(office, room, path, "csv:Text - txt - csv (StarCalc):" + options)
        tally.check(saved is not None, "the office program wrote no CSV with", who)
        if saved is None:
            continue
        compare(tally, saved, WANTED, "office, CSV, %s:" % who)
        with open(saved, encoding="utf-8", newline="") as source:
            text = source.read()
        marked = os.path.join(room, "marked.csv")
        with open(marked, "w", encoding="utf-8-sig", newline="") as target:
            target.write(text.replace("\r\n", "\n").replace("\n", "\r\n"))
        wanted = [row[:8] + (row[8].replace("\n", "\r\n"),) for row in WANTED]
        compare(tally, marked, wanted, "marked, CR LF, %s:" % who)


def not_taken(tally, path, code_wanted, words_wanted):
    code, text, words = dump(path)
    tally.check(code == code_wanted, path, "exit", code, "wanted", code_wanted)
    tally.check(text == "" and words_wanted in words, path, repr(words), "wanted", words_wanted)


def damaged(tally, room, path):
    """Cut, with a sheet of another name, with nothing filled in."""
    with open(path, "rb") as source:
        whole = source.read()
    cut = os.path.join(room, "cut.xlsx")
    with open(cut, "wb") as target:
        target.write(whole[: len(whole) // 2])
    not_taken(tally, cut, 2, "damaged or only a part of it is here")
    book = openpyxl.load_workbook(path)
    book["Measured"].title = "Mine"
    other = os.path.join(room, "other.xlsx")
    book.save(other)
    not_taken(tally, other, 2, "no sheet `Measured`; its sheets: `Mine`, `Notes`")
    book["Mine"].title = "Measured"
    for row in book["Measured"].iter_rows(min_row=HEAD_ROW + 1, min_col=6, max_col=7):
        for cell in row:
            cell.value = None
    book.save(other)
    not_taken(tally, other, 2, "other.xlsx:%d:1: nothing was filled in" % HEAD_ROW)


def fill_own(rows):
    """Fill in the table among a document's rows: half the stitches, and a few more, as the width.

    Returns what must come back, and the names in it; a third of the rows are left as they are.
    """
    top = next(at for at, row in enumerate(rows) if row[:2] == ["size", "piece"])
    heads = rows[top]
    width, stitches, remark = (heads.index(h) for h in ("width, cm", "stitches", "remark"))
    wanted, sizes, pieces = [], [], []
    for at in range(top + 1, len(rows)):
        row = rows[at]
        if not any(row):
            break
        sizes += [row[0]] if row[0] not in sizes else []
        pieces += [row[1]] if row[1] not in pieces else []
        if at % 3:
            cm = float(row[stitches]) / 2 + at / 8
            row[width], row[remark] = cm, "row %d" % at
            wanted.append((at + 1,) + tuple(row[:3])
                          + (float(row[stitches]), cm, 0, 0, row[remark]))
    return wanted, sizes, pieces


def own_documents(tally, room):
    """The table as our own program writes it, filled in as a workbook and as CSV."""
    project = os.path.join(os.environ.get("srcdir", "."), "data", "demo", PROJECT + ".yaml")
    done = subprocess.run([PROGRAM, "plan", project, "--into", room], stdout=subprocess.DEVNULL,
                          timeout=DUMP_SECONDS, check=False)
    tally.check(done.returncode == 0, "the program made no documents")
    path = os.path.join(room, PROJECT + ".xlsx")
    book = openpyxl.load_workbook(path)
    sheet = book["Measured"]
    rows = [list(row) for row in sheet.iter_rows(values_only=True)]
    wanted, sizes, pieces = fill_own(rows)
    for r, row in enumerate(rows, 1):
        for c, value in enumerate(row, 1):
            if value is not None:  # a line that runs on takes its whole row
                sheet.cell(r, c).value = value
    book.save(path)
    tally.check(len(wanted) > 10, "the program's table is short:", len(wanted))
    compare(tally, path, wanted, "own workbook:", sizes, pieces)
    path = os.path.join(room, PROJECT + ".csv")
    for separator in ",;":
        with open(path, encoding="utf-8", newline="") as source:
            rows = list(csv.reader(source))
        wanted, sizes, pieces = fill_own(rows)
        point = "." if separator == "," else ","
        rows = [[str(v).replace(".", point) if isinstance(v, float) else v for v in row]
                for row in rows]
        saved = os.path.join(room, "own.csv")
        with open(saved, "w", encoding="utf-8", newline="") as target:
            csv.writer(target, delimiter=separator).writerows(rows)
        compare(tally, saved, wanted, "own CSV, %s:" % separator, sizes, pieces)


def main():
    office = shutil.which("soffice")
    if office is None:
        print("skipped: soffice is not here")
        return 77
    if not os.path.exists(DUMP) or not os.path.exists(PROGRAM):
        print("skipped: the program or tests/measured_dump is not built")
        return 77
    tally = Tally()
    with tempfile.TemporaryDirectory() as room:
        path = os.path.join(room, "filled.xlsx")
        fill(path, False)
        compare(tally, path, WANTED[:-FORMULAS], "filled in:")
        through_office(tally, office, room)
        damaged(tally, room, path)
        own_documents(tally, room)
    print("%d passed, %d failed" % (tally.passed, tally.failed))
    return 1 if tally.failed or tally.passed < 100 else 0


if __name__ == "__main__":
    sys.exit(main())
