"""Writes a copy of a line with other prices, rates, targets and runs.

    python3 vary.py LINE COPY SEED

Only numbers that a workbook has an input for are changed: the prices of the
price list, the labour rate, the target margin and, of an even seed, the kits
planned.
"""
import csv
import decimal
import json
import pathlib
import random
import shutil
import sys

line, copy, seed = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), int(sys.argv[3])
chance = random.Random(seed)
shutil.copytree(line, copy)


def money(amount, least, most):
    """A factor times the amount, to the minor unit."""
    factor = decimal.Decimal(chance.randint(least, most)) / 100
    return str((decimal.Decimal(amount) * factor).quantize(decimal.Decimal("0.01")))


settings = json.loads((copy / "yardproof.json").read_text())
settings["labour_rate"] = money(settings["labour_rate"], 70, 160)
settings["margin"] = f"{chance.randint(30, 60)}%"
if seed % 2 == 0:
    settings["run"] = chance.randint(1, 60)
(copy / "yardproof.json").write_text(json.dumps(settings))

prices = copy / settings["prices"]
rows = list(csv.DictReader(prices.open(newline="")))
for row in rows:
    row["price"] = money(row["price"], 60, 150)
with prices.open("w", newline="") as out:
    writer = csv.DictWriter(out, rows[0].keys())
    writer.writeheader()
    writer.writerows(rows)
