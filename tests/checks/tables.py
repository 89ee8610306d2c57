"""Reads the check tables of the computation library and compares them with what is recomputed here."""

import csv
import pathlib

FOLDER = pathlib.Path(__file__).resolve().parent.parent / "WeldTrace.Engineering.Tests" / "Checks"


def rows(name):
    """Rows of a table as dictionaries; lines that begin with # are comments."""
    with open(FOLDER / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def inputs(row):
    """Inputs of a row: name=value pairs parted by semicolons."""
    return dict(pair.split("=", 1) for pair in row["inputs"].split(";") if "=" in pair)


class Tally:
    """Counts the comparisons and says which ones differ."""

    def __init__(self):
        self.agree = 0
        self.differ = 0

    def compare(self, what, expected, got, relative, absolute):
        expected = float(expected)
        if got is None:
            self.fail(what, "is not recomputed")
        elif abs(got - expected) <= max(float(relative) * abs(expected), float(absolute)):
            self.agree += 1
        else:
            self.fail(what, f"the table says {expected!r}, recomputed {got!r}")

    def compare_row(self, row, got):
        what = f"{row['case_id']} {row['quantity']}"
        self.compare(what, row["expected"], got, row["tol_rel"], row["tol_abs"])

    def fail(self, what, why):
        self.differ += 1
        print(f"differs: {what}: {why}")

    def close(self):
        print(f"{self.agree} agree, {self.differ} differ")
        return 1 if self.differ or not self.agree else 0
