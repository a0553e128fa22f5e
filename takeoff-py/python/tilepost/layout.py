"""A layout as a notebook shows it, and the job that it lays out."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from . import _tilepost
from .notebook import shown

if TYPE_CHECKING:
    from .job import Job


class Layout(_tilepost.Layout):
    __doc__ = _tilepost.Layout.__doc__

    __slots__ = ()

    @property
    def job(self) -> Job:
        """The job as laid out: arrays moved, posts set. It can be taken off, or laid out once more."""
        from .job import Job

        named = json.loads(_tilepost.files_named_json(self.job_text))
        return Job(self.job_text, {name: self.files[name] for name in named})

    def _repr_html_(self) -> str:
        maps = (
            (f"cost of array {array} on slope {slope} by its place", self.to_svg(slope, array))
            for slope, array in self.arrays
        )
        return shown(self.summary(), maps)
