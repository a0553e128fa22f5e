"""CPython and Node give the same bytes."""

from __future__ import annotations

import subprocess
from pathlib import Path

import tilepost
from conftest import ROOT


def node(entry: str, *jobs: Path) -> str:
    """What an entry of the web module gives for a job file, or for several."""
    command = ["node", ROOT / "tests/browser/print.mjs", entry, *jobs]
    return subprocess.run(command, check=True, capture_output=True).stdout.decode()


def test_takeoffs(job_path: Path, job: tilepost.Job) -> None:
    from_python = tilepost._tilepost.takeoff_json(job.text, job.files)
    assert '"ok": true' in from_python[:40]
    assert node("takeoff_json", job_path) == from_python


def test_problems(gable: tilepost.Job, tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    path.write_text(gable.text.replace('"12 in"', '"12 furlongs"').replace('"display"', '"dispaly"'))
    for name, text in gable.files.items():
        (tmp_path / name).write_text(text)
    from_python = tilepost._tilepost.takeoff_json(path.read_text(), gable.files)
    assert '"ok": false' in from_python[:40]
    assert node("takeoff_json", path) == from_python


def test_schemas(job_path: Path) -> None:
    assert node("schema_json", job_path) == tilepost._tilepost.schema_json()


def test_orders() -> None:
    paths = [ROOT / "fixtures" / name / "job.json" for name in ("plain-gable", "screened-arrays", "three-course-porch")]
    jobs = [tilepost.Job.from_file(path) for path in paths]
    from_python = tilepost._tilepost.order_json([(job.text, job.files) for job in jobs])
    assert '"ok": true' in from_python[:40]
    assert node("order_json", *paths) == from_python
    assert tilepost.order(jobs)["jobs"] == ["Fernhill Lane 12", "Quarry Walk 3", "Millpond Porch"]
