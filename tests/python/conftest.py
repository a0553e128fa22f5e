"""What the tests share: the fixtures of the repository."""

from __future__ import annotations

from pathlib import Path

import pytest
import tilepost

ROOT = Path(__file__).resolve().parents[2]
JOBS = sorted(ROOT.glob("fixtures/*/job.json"))
assert JOBS, "there are no fixtures"


@pytest.fixture(params=JOBS, ids=lambda path: path.parent.name)
def job_path(request: pytest.FixtureRequest) -> Path:
    """The job file of each fixture in turn."""
    return request.param


@pytest.fixture
def job(job_path: Path) -> tilepost.Job:
    """The job of each fixture in turn."""
    return tilepost.Job.from_file(job_path)


@pytest.fixture
def gable() -> tilepost.Job:
    """The plainest job."""
    return tilepost.Job.from_file(ROOT / "fixtures/plain-gable/job.json")
