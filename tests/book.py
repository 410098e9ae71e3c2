#!/usr/bin/python3
# The workbook against the JSON, cell by cell: as written, and as an office program reads it.
# SPDX-License-Identifier: GPL-3.0-or-later
"""book.py BOOK.xlsx PLAN.json SCHEMA.json

Both documents are views of the same tables, so that each cell of one must be in the other. The
JSON must also be what its schema says, with the one of the rows beside it. Ends with 0 when all agrees, 77 when a tool is missing.
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile

try:
    import jsonschema
    import openpyxl
except ImportError as missing:
    print("skipped: %s is not here" % missing.name)
    sys.exit(77)

TOLERANCE = 1e-9  # absolute; the tables hold at most four decimals
CONVERT_SECONDS = 120
ROWS = "rows.schema.json"  # to which the schema of the plan points

# Calculate again on loading, always: else only the values stored in the file would be read.
PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode"
 oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


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


def same(wanted, found):
    """Whether a cell of the workbook holds what the JSON says: nothing, words or a number."""
    if wanted is None or isinstance(wanted, str):
        return found == wanted and type(found) is type(wanted)
    if isinstance(found, bool) or not isinstance(found, (int, float)):
        return False
    return abs(found - wanted) <= TOLERANCE


def compare(tally, path, tables, who):
    """Every cell of every sheet, and nothing beyond them."""
    book = openpyxl.load_workbook(path)
    names = [table["name"] for table in tables]
    tally.check(book.sheetnames == names, who, "sheets", book.sheetnames, "wanted", names)
    for table in tables:
        if table["name"] not in book.sheetnames:
            continue
        sheet = book[table["name"]]
        rows = max(table["rows"], sheet.max_row)
        columns = max(table["columns"], sheet.max_column)
        tally.check(
            len(table["cells"]) == table["rows"]
            and all(len(row) == table["columns"] for row in table["cells"]),
            table["name"], "rows and columns are not as said")
        for r in range(rows):
            for c in range(columns):
                inside = r < table["rows"] and c < table["columns"]
                wanted = table["cells"][r][c] if inside else None
                cell = sheet.cell(r + 1, c + 1)
                tally.check(same(wanted, cell.value), who, table["name"], cell.coordinate,
                            repr(cell.value), "wanted", repr(wanted))


def through_office(tally, path, tables):
    """The same after another program has read the workbook and written it again."""
    office = shutil.which("soffice")
    if office is None:
        print("soffice is not here: the workbook was not read by an office program")
        return
    with tempfile.TemporaryDirectory() as room:
        user = os.path.join(room, "profile", "user")
        os.makedirs(user)
        with open(os.path.join(user, "registrymodifications.xcu"), "w", encoding="utf-8") as out:
            out.write(PROFILE)
        subprocess.run(
            [office, "-env:UserInstallation=file://" + os.path.join(room, "profile"), "--headless",
             "--convert-to", "xlsx", "--outdir", os.path.join(room, "out"), path],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=CONVERT_SECONDS,
            check=False)
        again = os.path.join(room, "out", os.path.basename(path))
        tally.check(os.path.exists(again), "the office program wrote no workbook")
        if os.path.exists(again):
            compare(tally, again, tables, "office:")


def follow_schema(tally, plan, schema, folder):
    """The JSON is what its schema says, and the schema is one."""
    with open(os.path.join(folder, ROWS), encoding="utf-8") as source:
        rows = json.load(source)
    resolver = jsonschema.RefResolver("", schema, {ROWS: rows})  # older releases have no other
    for each in (schema, rows):
        jsonschema.Draft202012Validator.check_schema(each)
    faults = list(jsonschema.Draft202012Validator(schema, resolver=resolver).iter_errors(plan))
    tally.check(not faults, "schema:", *["%s: %s" % (fault.json_path, fault.message[:200])
                                         for fault in faults[:5]])


def main():
    if len(sys.argv) != 4:
        print("usage: book.py BOOK.xlsx PLAN.json SCHEMA.json")
        return 2
    book, plan_path, schema_path = sys.argv[1:]
    with open(plan_path, encoding="utf-8") as source:
        plan = json.load(source)
    with open(schema_path, encoding="utf-8") as source:
        schema = json.load(source)
    tally = Tally()
    follow_schema(tally, plan, schema, os.path.dirname(schema_path))
    tables = plan.get("tables", [])
    before = tally.passed + tally.failed
    compare(tally, book, tables, "book:")
    compared = tally.passed + tally.failed - before
    through_office(tally, book, tables)
    print("%d passed, %d failed" % (tally.passed, tally.failed))
    return 1 if tally.failed or compared < 2 or not any(t["cells"] for t in tables) else 0


if __name__ == "__main__":
    sys.exit(main())
