"""A workbook as a spreadsheet program sees it: changed, and calculated anew."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import openpyxl
from openpyxl.cell import Cell
from openpyxl.workbook import Workbook

# By default LibreOffice shows the results that a file brings along; this asks for new ones, always.
CALCULATE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


def calculated(paths: Sequence[Path], folder: Path) -> list[Workbook]:
    """What LibreOffice makes of workbooks when it calculates every formula anew: values only."""
    office = shutil.which("soffice")
    assert office, "no `soffice`: install Debian's package libreoffice-calc"
    profile, out = folder / "profile", folder / "calculated"
    settings = profile / "user/registrymodifications.xcu"
    settings.parent.mkdir(parents=True, exist_ok=True)
    settings.write_text(CALCULATE)
    options = ["--headless", f"-env:UserInstallation={profile.as_uri()}", "--convert-to", "xlsx", "--outdir", out]
    done = subprocess.run([office, *options, *paths], capture_output=True, text=True, timeout=600)
    made = [out / path.name for path in paths]
    assert all(path.exists() for path in made), done.stdout + done.stderr
    return [openpyxl.load_workbook(path, data_only=True) for path in made]


def named(book: Workbook, name: str) -> Cell:
    """The cell of a name."""
    ((sheet, cell),) = book.defined_names[name].destinations
    found = book[sheet][cell]
    assert isinstance(found, Cell)
    return found


def changed(path: Path, inputs: Mapping[str, Any], to: Path) -> Path:
    """A copy of a workbook in which some named cells have other values; all formulas stay."""
    book = openpyxl.load_workbook(path)
    for name, value in inputs.items():
        cell = named(book, name)
        assert cell.data_type != "f", f"`{name}` is a formula, not an input"
        cell.value = value
    book.save(to)
    return to


def formulas(path: Path) -> dict[tuple[str, str], Any]:
    """Every formula's stored result, by sheet and cell."""
    with_formulas, with_results = openpyxl.load_workbook(path), openpyxl.load_workbook(path, data_only=True)
    return {
        (sheet.title, cell.coordinate): with_results[sheet.title][cell.coordinate].value
        for sheet in with_formulas
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }
