"""The command's CSV files, as the standard library and pandas read them."""

from __future__ import annotations

import csv
import json
import subprocess
from pathlib import Path

import pandas
import pytest
from conftest import ROOT

COMMAND = ROOT / "target/release/tilepost"
TABLES = ["materials", "posts", "cuts", "tiles", "patches"]


@pytest.fixture
def written(job_path: Path, tmp_path: Path) -> Path:
    """The folder that a takeoff was written to."""
    subprocess.run([COMMAND, "takeoff", job_path, "--out", tmp_path], check=True, capture_output=True)
    return tmp_path


@pytest.mark.parametrize("engine", ["c", "python", "pyarrow"])
def test_pandas_reads_the_same_numbers(written: Path, engine: str) -> None:
    compared = 0
    for name in TABLES:
        path = written / f"{name}.csv"
        with path.open(newline="", encoding="utf-8") as file:
            rows = list(csv.DictReader(file))
        frame = pandas.read_csv(path, engine=engine)
        assert len(frame) == len(rows)
        for column in frame.select_dtypes("number"):
            for value, row in zip(frame[column], rows, strict=True):
                assert value == float(row[column]) if row[column] else pandas.isna(value)
                compared += 1
    assert compared > 100


def test_posts_are_those_of_the_document(written: Path) -> None:
    document = json.loads((written / "takeoff.json").read_text(encoding="utf-8"))
    posts = [(slope["name"], post) for slope in document["slopes"] for post in slope["posts"]]
    frame = pandas.read_csv(written / "posts.csv", dtype={"slope": str, "post": str})
    assert len(frame) == len(posts) > 0
    for row, (slope, post) in zip(frame.itertuples(), posts, strict=True):
        assert (row.slope, row.post) == (slope, post["name"])
        assert (row.u_mm, row.v_mm) == (post["u_mm"], post["v_mm"])
        assert row.tiles_cut == len(post["cuts"])
        assert row.top_passes == post["top"]["passes"]
