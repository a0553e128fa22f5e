"""The command writes what CPython gives."""

from __future__ import annotations

import csv
import subprocess
from pathlib import Path

import pyarrow
import pytest
import tilepost
from conftest import ROOT


def command(*words: str | Path) -> str:
    """What the command says on its standard output."""
    done = subprocess.run([ROOT / "target/release/tilepost", *words], check=True, capture_output=True)
    return done.stdout.decode()


def test_takeoffs(job_path: Path, job: tilepost.Job, tmp_path: Path) -> None:
    takeoff = job.takeoff()
    assert command("takeoff", job_path, "--out", tmp_path) == takeoff.summary()
    assert (tmp_path / "takeoff.json").read_text("utf-8") == takeoff.to_json()


def test_schemas() -> None:
    assert command("schema") == tilepost._tilepost.schema_json()


@pytest.mark.parametrize("name", ["materials", "posts", "cuts", "tiles"])
def test_tables_say_what_the_command_writes(job_path: Path, job: tilepost.Job, name: str, tmp_path: Path) -> None:
    command("takeoff", job_path, "--out", tmp_path)
    with (tmp_path / f"{name}.csv").open(newline="", encoding="utf-8") as file:
        head, *rows = csv.reader(file)
    arrow = pyarrow.table(getattr(job.takeoff(), name))
    assert head == arrow.column_names
    assert len(rows) == arrow.num_rows
    for column, values in zip(head, zip(*rows, strict=True), strict=False):
        kind = arrow.schema.field(column).type
        for written, value in zip(values, arrow[column].to_pylist(), strict=True):
            if value is None:
                assert written == ""
            elif pyarrow.types.is_floating(kind):
                assert float(written) == pytest.approx(value, rel=1e-14, abs=0)
            elif pyarrow.types.is_boolean(kind):
                assert written == ("true" if value else "false")
            else:
                assert written.removeprefix("'") == str(value).removeprefix("'")
