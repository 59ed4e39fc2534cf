"""What the checks of workbooks share. The first argument is their folder."""
import functools
import math
import pathlib
import subprocess
import sys
import warnings

import openpyxl

RELATIVE = 1e-9

root = pathlib.Path(sys.argv[1])
problems = []
warnings.filterwarnings("ignore", message="Workbook contains no default style")  # what gnumeric writes


def complain(book, text):
    problems.append(f"{book.relative_to(root)}: {text}")


@functools.cache
def cells(path, values):
    """All cells that hold anything, by sheet and place."""
    book = openpyxl.load_workbook(path, data_only=values)
    return {(s.title, c.coordinate): c for s in book for row in s.iter_rows() for c in row if c.value is not None}


def is_formula(cell):
    return cell.data_type == "f"


def is_input(cell):
    """A number or a choice that may be typed over."""
    return cell.value is not None and not cell.protection.locked


def gnumeric(books, folder):
    folder.mkdir()
    for b in books:
        run("ssconvert", "--recalc", "-T", "Gnumeric_Excel:xlsx", str(b), str(folder / b.name))


def libreoffice(books, folder, kind="xlsx"):
    run("soffice", f"-env:UserInstallation=file://{root}/profile", "--headless", "--convert-to", kind, "--outdir", str(folder), *map(str, books))


def run(*command):
    done = subprocess.run(command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, timeout=900)
    if done.returncode != 0:
        sys.exit(f"{' '.join(command[:4])} ...: exit status {done.returncode}\n{done.stdout}")


def same(a, b):
    if isinstance(a, (int, float)) and isinstance(b, (int, float)):
        return math.isclose(a, b, rel_tol=RELATIVE, abs_tol=1e-12)
    return a == b
