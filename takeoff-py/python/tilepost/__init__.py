"""Takeoff of posts through an existing tile roof.

Which tiles get a hole or a notch, which are taken up, how the underlayment is flashed at each post, and
what to bring. Lengths in a job are strings with their unit; a number's unit is in its name.
"""

import json as _json
from collections.abc import Iterable
from typing import Any

from . import _tilepost
from ._tilepost import Table
from .errors import JobError, Problem
from .job import Job, Layout
from .takeoff import Takeoff

__all__ = ["Job", "JobError", "Layout", "Problem", "Table", "Takeoff", "order", "schema"]


def order(jobs: Iterable[Job]) -> dict[str, Any]:
    """One order for several jobs: needs added up before they are rounded to packs, spares pooled by tile.

    The order has `jobs`, `service_level`, `materials`, `spares` and, where there are prices, `purchase`. Raises
    ``JobError`` if a job has problems or the jobs do not go together.

    >>> order([])
    Traceback (most recent call last):
    tilepost.errors.JobError: /: an order needs a job (name a job file)
    """
    answer = _json.loads(_tilepost.order_json([(job.text, job.files) for job in jobs]))
    if not answer["ok"]:
        raise JobError(answer["problems"])
    return answer["order"]


def schema() -> dict[str, Any]:
    """The JSON Schema of the job file.

    >>> schema()["properties"]["format"]["const"]
    'tilepost-job/1'
    """
    return _json.loads(_tilepost.schema_json())
