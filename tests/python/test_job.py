"""Jobs: where they come from, what is wrong with them."""

from __future__ import annotations

import json
import pickle
from pathlib import Path

import jsonschema
import pytest
import tilepost
from conftest import ROOT


def test_three_ways_in_give_one_takeoff(gable: tilepost.Job) -> None:
    from_text = tilepost.Job.from_text(gable.text, gable.files)
    from_dict = tilepost.Job.from_dict(json.loads(gable.text), gable.files)
    assert from_text.takeoff().to_json() == from_dict.takeoff().to_json() == gable.takeoff().to_json()


def test_fixtures_fit_the_schema(job: tilepost.Job) -> None:
    jsonschema.Draft202012Validator.check_schema(tilepost.schema())
    jsonschema.validate(json.loads(job.text), tilepost.schema())


def test_the_schema_refuses_an_unknown_field(gable: tilepost.Job) -> None:
    document = json.loads(gable.text) | {"naem": "x"}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, tilepost.schema())


def test_files_beside_the_job_are_read(gable: tilepost.Job, tmp_path: Path) -> None:
    document = json.loads(gable.text)
    del document["prices"], document["bid"]
    slope = document["slopes"][0]
    rows = [[post[key] for key in ("name", "assembly", "u", "v")] for post in slope["posts"]]
    slope["posts"] = {"csv": "posts.csv"}
    (tmp_path / "job.json").write_text(json.dumps(document))

    problems = tilepost.Job.from_file(tmp_path / "job.json").check()
    assert [problem["path"] for problem in problems] == ["/slopes/0/posts/csv"]

    lines = ["name,assembly,u,v", *(",".join(row) for row in rows)]
    (tmp_path / "posts.csv").write_text("\n".join(lines))
    job = tilepost.Job.from_file(tmp_path / "job.json")
    assert list(job.files) == ["posts.csv"]
    assert job.takeoff().posts.num_rows == len(rows)


def test_a_job_error_has_every_problem(gable: tilepost.Job) -> None:
    document = json.loads(gable.text)
    document["dispaly"] = "metric"
    document["slopes"][0]["posts"][2]["u"] = "12"
    with pytest.raises(tilepost.JobError) as caught:
        tilepost.Job.from_dict(document).takeoff()
    problems = caught.value.problems
    assert {problem["path"] for problem in problems} >= {"/dispaly", "/slopes/0/posts/2/u"}
    assert all(problem["severity"] == "error" for problem in problems)
    assert isinstance(caught.value, ValueError)
    for problem in problems:
        assert problem["message"] in str(caught.value)
    assert problems == [p for p in tilepost.Job.from_dict(document).check()]


def test_jobs_takeoffs_and_errors_pickle(gable: tilepost.Job) -> None:
    job = pickle.loads(pickle.dumps(gable))
    assert (job.text, job.files) == (gable.text, gable.files)
    takeoff = pickle.loads(pickle.dumps(gable.takeoff()))
    assert isinstance(takeoff, tilepost.Takeoff)
    assert takeoff.to_json() == gable.takeoff().to_json()
    with pytest.raises(tilepost.JobError) as caught:
        tilepost.Job.from_text("{}").takeoff()
    assert pickle.loads(pickle.dumps(caught.value)).problems == caught.value.problems


def test_a_missing_job_file_is_an_os_error() -> None:
    with pytest.raises(FileNotFoundError):
        tilepost.Job.from_file(ROOT / "fixtures/no-such/job.json")


def test_takeoffs_are_compared(gable: tilepost.Job) -> None:
    bid = gable.takeoff()
    assert bid.compare(bid)["changed"] is False
    document = json.loads(gable.text)
    moved = document["slopes"][0]["posts"][0]
    moved["v"] = "3 ft 2 in"
    comparison = bid.compare(tilepost.Job.from_dict(document, gable.files).takeoff())
    assert [(post["post"], post["moved_mm"]) for post in comparison["posts"]] == [("A1", [0.0, 25.4])]
