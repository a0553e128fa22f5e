"""What is wrong with a job, as an exception."""

from __future__ import annotations

from typing import Literal, TypedDict


class Problem(TypedDict):
    """What is wrong or odd, where, and what mends it."""

    code: str
    """A stable name of the kind of problem, such as ``unknown-field``."""
    message: str
    """What is wrong, with the user's input in backticks."""
    help: str
    """What mends it."""
    path: str
    """Where: a JSON Pointer (RFC 6901) into the job."""
    severity: Literal["error", "finding"]


class JobError(ValueError):
    """The job has problems; all of them are in ``problems``.

    >>> import tilepost
    >>> try:
    ...     tilepost.Job.from_text("{").takeoff()
    ... except tilepost.JobError as error:
    ...     print(error.problems[0]["severity"])
    error
    """

    problems: list[Problem]

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(_line(problem) for problem in problems))
        self.problems = problems

    def __reduce__(self) -> tuple[type[JobError], tuple[list[Problem]]]:
        return type(self), (self.problems,)


def _line(problem: Problem) -> str:
    return f"{problem['path'] or '/'}: {problem['message']} ({problem['help']})"
