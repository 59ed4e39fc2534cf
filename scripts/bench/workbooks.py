"""Makes a workbook of each file of tables in a folder, in memory, and prints
the processor time that it took in seconds: workbooks.py WRITER FOLDER."""

import io
import json
import pathlib
import sys
import time


def cells(document):
    """Yields for each sheet its title and its rows of plain values."""
    for sheet in document["sheets"]:
        rows = []
        for table in sheet["tables"]:
            rows.append([table.get("heading", "")])
            rows.extend([line] for line in table.get("lead", []))
            rows.append([column["title"] for column in table["columns"]])
            for row in table["rows"]:
                rows.append([value(row["cells"].get(column["id"])) for column in table["columns"]])
            rows.extend([line] for line in table.get("foot", []))
        yield sheet["title"][:31], rows
    rows = []
    for work in document.get("workings", []):
        rows.append([work.get("what"), work.get("formula"), value(work.get("value"))])
        rows.extend([term.get("symbol"), term.get("says"), value(term.get("value"))] for term in work.get("terms", []))
    yield "Workings", rows


def value(cell):
    if not isinstance(cell, dict):
        return cell
    number = cell.get("decimal") or cell.get("about")
    return float(number) if number else cell["text"]


def by_xlsxwriter(document):
    import xlsxwriter

    with xlsxwriter.Workbook(io.BytesIO(), {"in_memory": True}) as book:
        bold = book.add_format({"bold": True})
        for title, rows in cells(document):
            page = book.add_worksheet(title)
            for r, row in enumerate(rows):
                for c, v in enumerate(row):
                    if v is not None:
                        page.write(r, c, v, bold if len(row) == 1 else None)


def by_openpyxl(document):
    import openpyxl
    from openpyxl.styles import Font

    book = openpyxl.Workbook()
    book.remove(book.active)
    bold = Font(bold=True)
    for title, rows in cells(document):
        page = book.create_sheet(title)
        for r, row in enumerate(rows, 1):
            for c, v in enumerate(row, 1):
                if v is not None:
                    cell = page.cell(r, c, v)
                    if len(row) == 1:
                        cell.font = bold
    book.save(io.BytesIO())


def main():
    make = {"xlsxwriter": by_xlsxwriter, "openpyxl": by_openpyxl}[sys.argv[1]]
    documents = [json.loads(p.read_text()) for p in sorted(pathlib.Path(sys.argv[2]).glob("*.json"))]
    make(documents[0])  # loads the writer
    begin = time.process_time()
    for document in documents:
        make(document)
    print(time.process_time() - begin)


main()
