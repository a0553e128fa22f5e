"""Takeoff of posts through an existing tile roof.

Which tiles get a hole or a notch, which are taken up, how the underlayment is flashed at each post, and
what to bring. Lengths in a job are strings with their unit; a number's unit is in its name.
"""

import json as _json
from typing import Any

from . import _tilepost
from ._tilepost import Table
from .errors import JobError, Problem
from .job import Job
from .takeoff import Takeoff

__all__ = ["Job", "JobError", "Problem", "Table", "Takeoff", "schema"]


def schema() -> dict[str, Any]:
    """The JSON Schema of the job file.

    >>> schema()["properties"]["format"]["const"]
    'tilepost-job/1'
    """
    return _json.loads(_tilepost.schema_json())
