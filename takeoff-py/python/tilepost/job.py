"""A job: the roof and what goes through it; and a job whose arrays are laid out."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from . import _tilepost
from .errors import Problem
from .files import read_text
from .notebook import shown
from .takeoff import Takeoff


class Job:
    """A job as it is written, with the texts of the files that it names.

    A job is read when it is checked or taken off, so one with problems can be held and looked at.

    >>> import tilepost
    >>> job = tilepost.Job.from_dict({"format": "tilepost-job/1", "naem": "Fernhill Lane 12"})
    >>> [problem["help"] for problem in job.check() if problem["code"] == "unknown-field"]
    ['did you mean `name`?']
    """

    __slots__ = ("_files", "_text")

    def __init__(self, text: str, files: Mapping[str, str] | None = None) -> None:
        self._text = text
        self._files = dict(files or {})

    @classmethod
    def from_text(cls, text: str, files: Mapping[str, str] | None = None) -> Job:
        """A job from the text of a job file, with the texts of the files that it names by their names."""
        return cls(text, files)

    @classmethod
    def from_dict(cls, document: Mapping[str, Any], files: Mapping[str, str] | None = None) -> Job:
        """A job from a dictionary of a job file's form. A quantity is a string with its unit."""
        return cls(json.dumps(document, ensure_ascii=False, indent=2), files)

    @classmethod
    def from_file(cls, path: str | os.PathLike[str]) -> Job:
        """A job from a job file (JSON), with the files beside it that it names.

        A file that is named and not there is a problem of the job, which ``check`` reports. Raises ``OSError``
        if the job file can't be read, and ``JobError`` if a file is no text or too large.
        """
        path = Path(path)
        text = read_text(path)
        named = [name for name in json.loads(_tilepost.files_named_json(text)) if (path.parent / name).exists()]
        return cls(text, {name: read_text(path.parent / name) for name in named})

    @property
    def text(self) -> str:
        """The text of the job file."""
        return self._text

    @property
    def files(self) -> dict[str, str]:
        """The texts of the files that the job names, by their names."""
        return dict(self._files)

    def check(self) -> list[Problem]:
        """Everything that is wrong with the job; if nothing is, what is odd about it."""
        return json.loads(_tilepost.check_json(self._text, self._files))["problems"]

    def takeoff(self) -> Takeoff:
        """The takeoff. Raises ``JobError`` if the job has problems."""
        return Takeoff(self._text, self._files)

    def layout(self) -> Layout:
        """Where the posts of the arrays go so that they cost least. Raises ``JobError`` if the job has problems, or no layout."""
        return Layout(self._text, self._files)

    def __reduce__(self) -> tuple[type[Job], tuple[str, dict[str, str]]]:
        return type(self), (self._text, self._files)


class Layout(_tilepost.Layout):
    __doc__ = _tilepost.Layout.__doc__

    __slots__ = ()

    @property
    def job(self) -> Job:
        """The job as laid out: arrays moved, posts set. It can be taken off, or laid out once more."""
        named = json.loads(_tilepost.files_named_json(self.job_text))
        return Job(self.job_text, {name: self.files[name] for name in named})

    def _repr_html_(self) -> str:
        maps = (
            (f"cost of array {array} on slope {slope} by its place", self.to_svg(slope, array))
            for slope, array in self.arrays
        )
        return shown(self.summary(), maps)
