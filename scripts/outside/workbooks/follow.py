"""Compares workbooks whose inputs were changed with workbooks that were made
from the changed inputs.

    python3 follow.py FOLDER

Every workbook of FOLDER/line gets the inputs of its namesake in FOLDER/varied-N,
is recalculated by gnumeric and by LibreOffice, and must then hold the numbers
that are stored in that namesake, to a billionth, and show the same text. The
bolt plan and what is ordered by it are no formulas: for another run of kits
they must say so. Rows that Monday's sheet has only with the other inputs, or
only without them, have nothing to be compared with. What openpyxl reads of
charts, input rules and protection is counted as well.
"""
import csv
import re
import pathlib
import subprocess
import sys

import openpyxl

from books import complain, gnumeric, is_input, libreoffice, problems, root, same, cells, is_formula


def inputs(path):
    book = openpyxl.load_workbook(path)
    return {(s.title, c.coordinate): c.value for s in book for row in s.iter_rows() for c in row if is_input(c)}


def with_inputs(path, values, target):
    """A copy with other inputs, and no stored values."""
    book = openpyxl.load_workbook(path)
    for (sheet, at), value in values.items():
        book[sheet][at].value = value
    target.parent.mkdir(parents=True, exist_ok=True)
    book.save(target)


def show(books, folder):
    """Writes what every cell of some workbooks shows."""
    libreoffice(books, folder, "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true,false,false,-1")


def shown(path, folder):
    """That of one workbook, by sheet and place."""
    texts = {}
    for s in openpyxl.load_workbook(path, read_only=True).sheetnames:
        with open(folder / f"{path.stem}-{s}.csv", newline="") as file:
            for i, row in enumerate(csv.reader(file), 1):
                for j, text in enumerate(row, 1):
                    texts[s, f"{openpyxl.utils.get_column_letter(j)}{i}"] = text
    return texts


def compare(book, want, got, who):
    differ = [(p, v, got.get(p)) for p, v in want.items() if not same(v, got.get(p))]
    for place, wanted, value in differ[:5]:
        complain(book, f"after a change of inputs {who} makes {value!r} of {place}, wanted is {wanted!r}")
    return len(differ)


# Sheets on which quantities of the bolt plan stand.
BY_PLAN = {"Monday", "Orders", "Bolt plan"}


# Sheets whose lines and columns move where the words beside them become more.
OF_WORDS = {"Proof sheet", "For shops"}


def only_moved(ours, theirs, sheet):
    """Whether a sheet of words has the same formulas, perhaps in other places."""
    texts = [sorted(re.sub(r"\$[A-Z]+\$\d+", "$", c.value) for p, c in cells.items() if p[0] == sheet and is_formula(c)) for cells in (ours, theirs)]
    return sheet in OF_WORDS and texts[0] == texts[1]


def comparable(book, wanted):
    """The places of formulas that the same inputs must make the same."""
    ours, theirs = cells(book, False), cells(wanted, False)
    there = {p for p, c in theirs.items() if is_formula(c)}
    alike = {p for p in there if p in ours and ours[p].value == theirs[p].value}
    # Quantities of an order, and by how many kits a run is another than it was worked out for.
    ordered = {p for p in there - alike if "run again" in str(theirs[p].value) or str(theirs[p].value).startswith("=MAX(kits_planned")}
    if other_run := ordered or any(p[0] == "Orders" for p in there - alike):
        alike = {p for p in alike if p[0] not in BY_PLAN}
    unlike = {s for s in {p[0] for p in there - alike - ordered} if not only_moved(ours, theirs, s)}
    if unlike - (BY_PLAN | {"Run"} if other_run else {"Monday"}):
        complain(book, f"made from other inputs it has other formulas on {sorted(unlike)}")
    return alike, bool(other_run)


def abilities(path, line):
    """Charts, rules and protection as openpyxl reads them."""
    book = openpyxl.load_workbook(path)
    charts = sum(len(s._charts) for s in book)
    for s in book:
        unguarded = [c.coordinate for row in s.iter_rows() for c in row if is_input(c) and not any(c.coordinate in r.sqref for r in s.data_validations.dataValidation)]
        open_formulas = [c.coordinate for row in s.iter_rows() for c in row if is_formula(c) and not (c.protection.locked and s.protection.sheet)]
        if unguarded or open_formulas:
            complain(path, f"{s.title}: inputs without a rule {unguarded[:3]}, formulas without protection {open_formulas[:3]}")
        if s.protection.sheet and (s.protection.password or s.protection.selectUnlockedCells or s.protection.selectLockedCells):
            complain(path, f"{s.title}: a password, or cells that cannot be chosen")
    if line and (charts < 2 or not any(s.conditional_formatting for s in book)):
        complain(path, f"{charts} charts, or nothing that stands out")
    return charts


def main():
    compared = moved = charts = outdated = 0
    books = {b.name: b for b in sorted(root.glob("line/**/*.xlsx")) if inputs(b)}
    if "line.xlsx" not in books or len(books) < 10:
        sys.exit(f"only {len(books)} workbooks with inputs")
    for name, book in books.items():
        charts += abilities(book, name == "line.xlsx")
    for varied in sorted(root.glob("varied-*")):
        work = root / ("follow-" + varied.name)
        wanted = {b.name: b for b in varied.glob("**/*.xlsx")}
        for name, book in books.items():
            if inputs(book).keys() != inputs(wanted[name]).keys():
                complain(book, "made from other inputs it has its inputs elsewhere")
            with_inputs(book, inputs(wanted[name]), work / "in" / name)
        changed = [work / "in" / n for n in books]
        gnumeric(changed, work / "gnumeric")
        libreoffice(changed, work / "libreoffice")
        show([work / "libreoffice" / n for n in books], work / "shown")
        show([wanted[n] for n in books], work / "wanted")
        for name, book in books.items():
            values, before = cells(wanted[name], True), cells(book, True)
            places, other_run = comparable(book, wanted[name])
            want = {p: values[p].value for p in places}
            compared += len(want)
            moved += sum(not same(v, before[p].value) for p, v in want.items())
            for who in ("gnumeric", "libreoffice"):
                got = {p: c.value for p, c in cells(work / who / name, True).items()}
                again = {p for p, v in got.items() if str(v).endswith("run again")}
                want = {p: v for p, v in want.items() if p not in again}
                compare(book, want, got, who)
                late = len(again)
                if (late > 0) != other_run:
                    complain(book, f"{who}: {late} cells ask for another run of the program, which is {'' if other_run else 'not '}needed")
                outdated += late
            text = shown(work / "libreoffice" / name, work / "shown")
            compare(book, {p: t for p, t in shown(wanted[name], work / "wanted").items() if p in want}, text, "LibreOffice")
    if moved < compared / 4:
        complain(books["line.xlsx"], f"only {moved} of {compared} formulas changed")
    if not outdated:
        complain(books["line.xlsx"], "no change of inputs made its bolt plan outdated")
    print(f"{len(books)} workbooks with other inputs: {compared} formulas, of which {moved} changed, {outdated} cells ask for a new bolt plan, {charts} charts: {len(problems)} problems")
    for p in problems[:40]:
        print("  " + p)
    sys.exit(1 if problems else 0)


main()
