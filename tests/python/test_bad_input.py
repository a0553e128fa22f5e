"""Whatever comes in, a takeoff or a `JobError` comes out: no panic, which would be no `Exception`."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest
import tilepost
from conftest import JOBS
from hypothesis import given
from hypothesis import strategies as st

DOCUMENTS = [json.loads(path.read_text("utf-8")) for path in JOBS]
FILES = [tilepost.Job.from_file(path).files for path in JOBS]

NASTY = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(),
    st.floats(),
    st.text(),
    st.sampled_from(["", "0", "-1 in", "1/0 in", "9999999 km", "0.0000001 mm", "1e400 mm", "90 deg", "\u0000", "1:0", "💥"]),
    st.just([]),
    st.just({}),
    st.lists(st.text(), max_size=3),
)


def places(value: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """The way to each value inside a document."""
    keys = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [path, *(place for key, inner in keys for place in places(inner, (*path, key)))]


PLACES = [places(document)[1:] for document in DOCUMENTS]


def outcome(text: str, files: dict[str, str]) -> list[tilepost.Problem]:
    """What is wrong with a job, after its takeoff was asked for."""
    try:
        takeoff = tilepost.Job.from_text(text, files).takeoff()
    except tilepost.JobError as error:
        assert error.problems
        for problem in error.problems:
            assert problem["code"] and problem["message"] and problem["help"]
            assert problem["path"] == "" or problem["path"].startswith("/")
        return error.problems
    for name in takeoff.slopes:
        takeoff.to_svg(name)
    assert "NaN" not in takeoff.to_json()
    return []


@given(st.text())
def test_any_text(text: str) -> None:
    assert outcome(text, {})


@given(st.data())
def test_a_job_with_one_value_replaced(data: st.DataObject) -> None:
    which = data.draw(st.integers(0, len(DOCUMENTS) - 1))
    path = data.draw(st.sampled_from(PLACES[which]))
    document = copy.deepcopy(DOCUMENTS[which])
    inside = document
    for key in path[:-1]:
        inside = inside[key]
    inside[path[-1]] = data.draw(NASTY)
    outcome(json.dumps(document), FILES[which])


@given(st.data())
def test_a_job_with_one_value_left_out(data: st.DataObject) -> None:
    which = data.draw(st.integers(0, len(DOCUMENTS) - 1))
    path = data.draw(st.sampled_from(PLACES[which]))
    document = copy.deepcopy(DOCUMENTS[which])
    inside = document
    for key in path[:-1]:
        inside = inside[key]
    del inside[path[-1]]
    outcome(json.dumps(document), FILES[which])


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "syntax"),
        ("[" * 10_000, "too-deep"),
        ('{"a":' * 10_000, "too-deep"),
        ('"' + "a" * (65 << 20) + '"', "too-large"),
        ('{"service": NaN}', "not-a-number"),
        ('{"name": "a", "name": "b"}', "duplicate-key"),
    ],
    ids=["nothing", "deep lists", "deep objects", "large", "nan", "twice"],
)
def test_texts_that_are_no_job(text: str, code: str) -> None:
    assert code in {problem["code"] for problem in outcome(text, {})}


def test_a_thousand_million_posts(gable: tilepost.Job) -> None:
    document = json.loads(gable.text)
    document["slopes"][0]["post_grids"] = [
        {"name": "G", "assembly": "post-7", "u": "1 ft", "v": "1 ft", "columns": 10**5, "rows": 10**4,
         "column_spacing": "1 in", "row_spacing": "1 in"}
    ]
    assert "too-many" in {problem["code"] for problem in outcome(json.dumps(document), {})}


@pytest.mark.parametrize(
    ("content", "code"), [(b"\xff\xfe\x00", "not-utf8"), (b" " * ((64 << 20) + 1), "too-large")], ids=["bytes", "large"]
)
def test_files_that_are_no_job(content: bytes, code: str, tmp_path: Path) -> None:
    (tmp_path / "job.json").write_bytes(content)
    with pytest.raises(tilepost.JobError, match="`job.json`") as caught:
        tilepost.Job.from_file(tmp_path / "job.json")
    assert [problem["code"] for problem in caught.value.problems] == [code]


def test_text_that_is_no_unicode_is_a_value_error() -> None:
    with pytest.raises(ValueError):
        tilepost.Job.from_text('{"name": "\udc80"}').takeoff()
