"""CPython and Node give the same bytes."""

from __future__ import annotations

import subprocess
from pathlib import Path

import tilepost
from conftest import ROOT


def node(entry: str, job: Path) -> str:
    """What an entry of the web module gives for a job file."""
    command = ["node", ROOT / "tests/browser/print.mjs", entry, job]
    return subprocess.run(command, check=True, capture_output=True).stdout.decode()


def test_takeoffs(job_path: Path, job: tilepost.Job) -> None:
    from_python = tilepost._tilepost.takeoff_json(job.text, job.files)
    assert '"ok": true' in from_python[:40]
    assert node("takeoff_json", job_path) == from_python


def test_problems(gable: tilepost.Job, tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    path.write_text(gable.text.replace('"12 in"', '"12 furlongs"').replace('"display"', '"dispaly"'))
    from_python = tilepost._tilepost.takeoff_json(path.read_text(), {})
    assert '"ok": false' in from_python[:40]
    assert node("takeoff_json", path) == from_python


def test_schemas(job_path: Path) -> None:
    assert node("schema_json", job_path) == tilepost._tilepost.schema_json()
