"""Layouts: where the posts go, the job as laid out, and what has none."""

from __future__ import annotations

import json
import pickle
import xml.etree.ElementTree as xml
from pathlib import Path

import pandas
import polars
import pyarrow
import pytest
import tilepost
from conftest import ROOT
from test_command import command
from test_notebook import Pictures
from test_sameness import node

FIXTURE = ROOT / "fixtures/least-cost-arrays"


@pytest.fixture(scope="module")
def job() -> tilepost.Job:
    """A job with two arrays to lay out."""
    return tilepost.Job.from_file(FIXTURE / "job.json")


@pytest.fixture(scope="module")
def layout(job: tilepost.Job) -> tilepost.Layout:
    """Its layout."""
    return job.layout()


def test_the_bytes_are_those_that_the_command_writes(layout: tilepost.Layout, tmp_path: Path) -> None:
    told = command("layout", FIXTURE / "job.json", "--out", tmp_path / "job.json", "--report", tmp_path)
    assert told == layout.summary()
    assert (tmp_path / "job.json").read_text("utf-8") == layout.job_text == layout.job.text
    assert (tmp_path / "layout.json").read_text("utf-8") == layout.to_json()
    for number, (slope, array) in enumerate(layout.arrays, 1):
        assert (tmp_path / f"shift-{number}-{array}.svg").read_text("utf-8") == layout.to_svg(slope, array)
    assert len((tmp_path / "layout.csv").read_text("utf-8").splitlines()) == 1 + len(layout.posts)


def test_the_bytes_are_those_of_node_and_of_the_fixture(job: tilepost.Job, layout: tilepost.Layout) -> None:
    answer = tilepost._tilepost.layout_json(job.text, job.files)
    assert node("layout_json", FIXTURE / "job.json") == answer == command("layout", FIXTURE / "job.json", "--json")
    both = {"ok": True, "layout": json.loads(layout.to_json()), "job": json.loads(layout.job_text)}
    assert json.loads(answer) == both
    assert layout.to_json() == (FIXTURE / "expected.layout.json").read_text("utf-8")
    assert layout.job_text == (FIXTURE / "expected.laid.json").read_text("utf-8")


def test_the_laid_job_is_a_job(job: tilepost.Job, layout: tilepost.Layout) -> None:
    after = json.loads(layout.to_json())["after"]
    counts = json.loads(layout.job.takeoff().to_json())["counts"]
    assert {name: counts[name] for name in ("posts", "holes", "notches", "patches", "removed")} == {
        name: after[name] for name in ("posts", "holes", "notches", "patches", "removed")
    }
    assert layout.job.files == job.files
    assert layout.job.layout().job_text == layout.job_text


def test_three_libraries_read_the_posts(layout: tilepost.Layout) -> None:
    arrow = pyarrow.table(layout.posts)
    assert arrow.column_names == layout.posts.column_names
    assert polars.DataFrame(layout.posts).rows() == [tuple(row.values()) for row in arrow.to_pylist()]
    pandas.testing.assert_frame_equal(pandas.DataFrame.from_arrow(layout.posts), arrow.to_pandas())
    posts = {(row["post"], row["u_mm"], row["v_mm"]) for row in arrow.to_pylist()}
    taken = pyarrow.table(layout.job.takeoff().posts).to_pylist()
    assert posts == {(row["post"], row["u_mm"], row["v_mm"]) for row in taken if row["post"] != "M1"}


def test_a_notebook_shows_it(layout: tilepost.Layout) -> None:
    maps = [layout.to_svg(*array) for array in layout.arrays]
    assert Pictures(layout._repr_html_()).maps == maps
    for drawing in maps:
        assert xml.fromstring(drawing).tag == "{http://www.w3.org/2000/svg}svg"
    assert max(len(line) for line in layout.summary().splitlines()) <= 80


def test_it_goes_to_another_process(layout: tilepost.Layout) -> None:
    assert pickle.loads(pickle.dumps(layout)).to_json() == layout.to_json()


def test_what_has_no_layout_is_told(job: tilepost.Job, layout: tilepost.Layout) -> None:
    with pytest.raises(KeyError, match="`south` has no array `west` with rails"):
        layout.to_svg("south", "west")
    document = json.loads(job.text)
    del document["prices"], document["bid"]
    with pytest.raises(tilepost.JobError) as caught:
        tilepost.Job.from_dict(document, job.files).layout()
    assert [problem["code"] for problem in caught.value.problems] == ["no-costs"]
