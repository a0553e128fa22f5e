"""The workbook against a spreadsheet program: LibreOffice calculates it anew, openpyxl reads it."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import openpyxl
import pytest
import tilepost
from spreadsheet import calculated, changed, formulas, named


def alike(one: Any, other: Any) -> bool:
    """Whether two results are the same: numbers to the last digits of a sum."""
    if isinstance(one, int | float) and isinstance(other, int | float):
        return math.isclose(one, other, rel_tol=1e-12, abs_tol=1e-12)
    return bool(one == other)


@pytest.fixture
def bid(job: tilepost.Job, tmp_path: Path) -> Path:
    """The workbook of each fixture."""
    path = tmp_path / "bid.xlsx"
    job.takeoff().to_xlsx(path)
    return path


def test_every_stored_result_is_the_calculated_one(bid: Path, tmp_path: Path) -> None:
    stored, book = formulas(bid), calculated(bid, tmp_path)
    assert len(stored) > 10
    wrong = {
        place: (result, book[place[0]][place[1]].value)
        for place, result in stored.items()
        if not alike(result, book[place[0]][place[1]].value)
    }
    assert wrong == {}
