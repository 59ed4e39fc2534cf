"""Compares workbooks with what other spreadsheet programs make of them.

    python3 check.py FOLDER

Every *.xlsx below FOLDER/line and FOLDER/broken is
  - opened by openpyxl: every formula has a stored value, no cell an error;
  - robbed of its stored values and recalculated by gnumeric and LibreOffice:
    every formula must come to what was stored;
  - changed in its inputs and recalculated by both: they must agree, and some
    formula must have changed;
  - printed to PDF by LibreOffice: no column may be too narrow for its numbers.
That a wrong stored value is noticed is tried on one workbook first.
"""
import functools
import re
import subprocess
import sys
import zipfile

import openpyxl

from books import cells, complain, gnumeric, is_formula, libreoffice, problems, root, same

ERRORS = ("#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!", "Err:5")

@functools.cache
def stored(path):
    """The value stored beside each formula."""
    formulas, values = cells(path, False), cells(path, True)
    found = {}
    for place, cell in formulas.items():
        if is_formula(cell):
            found[place] = values[place].value if place in values else None
    for place, cell in values.items():
        if isinstance(cell.value, str) and cell.value.startswith(ERRORS):
            complain(path, f"{place} holds {cell.value}")
    return found


def rewrite(source, target, change):
    """A copy with every sheet's XML changed."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            if name.startswith("xl/worksheets/sheet"):
                data = change(data.decode()).encode()
            new.writestr(name, data)
    return target


FORMULA = re.compile(r"<c ([^>]*)>(<f>[^<]*</f>)(<v>[^<]*</v>)?</c>")


def without_values(xml):
    """The sheet with no value beside a formula: it must be calculated."""
    return FORMULA.sub(lambda m: "<c %s>%s</c>" % (re.sub(r' t="[^"]*"', "", m[1]), m[2]), xml)


def inputs(path):
    """The places of the numbers that formulas refer to by name."""
    book = openpyxl.load_workbook(path)
    used = " ".join(c.value for c in cells(path, False).values() if is_formula(c))
    found = set()
    names = book.defined_names  # a mapping from openpyxl 3.1 on
    for name, defined in names.items() if hasattr(names, "items") else [(d.name, d) for d in names.definedName]:
        if name.startswith("_xlnm") or not re.search(r"\b%s\b" % re.escape(name), used):
            continue
        for sheet, at in defined.destinations:
            place = (sheet, at.replace("$", ""))
            if isinstance(book[sheet][place[1]].value, (int, float)):
                found.add(place)
    return found


def changed(path, target):
    """A copy with no stored values and with every input half as much again."""
    book = openpyxl.load_workbook(path)
    places = inputs(path)
    for sheet, at in places:
        cell = book[sheet][at]
        cell.value = cell.value * 1.5 if cell.value > 1 else cell.value * 1.1
    target.parent.mkdir(parents=True, exist_ok=True)
    book.save(target)  # openpyxl stores no values
    return len(places)


def compare(book, wanted, got, who):
    """How many formulas came out otherwise."""
    differ = [(p, v, got[p].value if p in got else None) for p, v in wanted.items() if not same(v, got[p].value if p in got else None)]
    for place, want, value in differ[:5]:
        complain(book, f"{who} makes {value!r} of {place}, stored is {want!r}")
    return len(differ)


def self_test(book):
    """A stored value that is off by a millionth must be noticed."""
    hit = []

    def spoil(xml):
        m = re.search(r"(</f><v>)([0-9.]+)(</v>)", xml)
        if m is None or hit:
            return xml
        hit.append(m[2])
        return xml[: m.start(2)] + repr(float(m[2]) * 1.000001) + xml[m.end(2):]

    spoilt = rewrite(book, root / "self" / "spoilt.xlsx", spoil)
    bare = rewrite(spoilt, root / "self" / "bare" / "spoilt.xlsx", without_values)
    gnumeric([bare], root / "self" / "gnumeric")
    libreoffice([bare], root / "self" / "libreoffice")
    for who in ("gnumeric", "libreoffice"):
        if compare(book, stored(spoilt), cells(root / "self" / who / "spoilt.xlsx", True), who) != 1:
            sys.exit(f"{who}: a wrong stored value was not noticed")
    problems.clear()


def main():
    books = sorted(root.glob("line/**/*.xlsx")) + sorted(root.glob("broken/**/*.xlsx"))
    by_name = {}
    for b in books:  # the programs write into one folder
        by_name[f"{b.relative_to(root).parts[0]}-{b.name}"] = b
    plans = [b for b in books if stored(b)]
    if len(books) < 20 or len(plans) < 6:
        sys.exit(f"only {len(books)} workbooks, {len(plans)} with formulas")
    self_test(plans[0])

    bare = [rewrite(b, root / "bare" / n, without_values) for n, b in by_name.items()]
    gnumeric(bare, root / "gnumeric")
    libreoffice(bare, root / "libreoffice")
    formulas = 0
    for name, book in by_name.items():
        wanted = stored(book)
        formulas += len(wanted)
        for place, value in wanted.items():
            if value is None:
                complain(book, f"no value is stored for {place}")
        for who in ("gnumeric", "libreoffice"):
            compare(book, wanted, cells(root / who / name, True), who)

    changes = {n: changed(b, root / "changed" / n) for n, b in by_name.items() if inputs(b)}
    moved = [root / "changed" / n for n in changes]
    gnumeric(moved, root / "changed-gnumeric")
    libreoffice(moved, root / "changed-libreoffice")
    followed = 0
    for name in changes:
        book = by_name[name]
        before = stored(book)
        one, other = cells(root / "changed-gnumeric" / name, True), cells(root / "changed-libreoffice" / name, True)
        after = {p: one[p].value if p in one else None for p in before}
        compare(book, after, other, "LibreOffice, after a change of inputs,")
        follows = sum(not same(before[p], after[p]) for p in before)
        followed += follows
        if follows == 0:
            complain(book, "nothing follows a change of its inputs")

    libreoffice([root / "bare" / n for n in by_name], root / "pdf", "pdf")
    pages = 0
    for name, book in by_name.items():
        text = subprocess.run(["pdftotext", "-layout", str(root / "pdf" / name.replace(".xlsx", ".pdf")), "-"], stdout=subprocess.PIPE, text=True, check=True).stdout
        pages += text.count("\f")
        if "##" in text or not text.strip():
            complain(book, "printed, a column is too narrow for its numbers, or the pages are empty")

    print(f"{len(books)} workbooks, {formulas} formulas, {sum(changes.values())} inputs changed and {followed} formulas followed, {pages} pages: {len(problems)} problems")
    for p in problems[:40]:
        print("  " + p)
    sys.exit(1 if problems else 0)


main()
