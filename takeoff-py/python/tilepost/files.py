"""Reads text files of a bounded size."""

from __future__ import annotations

from pathlib import Path

from .errors import JobError

MOST_BYTES = 64 << 20


def read_text(path: Path) -> str:
    """The text of a file. Raises ``JobError`` if it is too large or not UTF-8."""
    with path.open("rb") as file:
        read = file.read(MOST_BYTES + 1)
    if len(read) > MOST_BYTES:
        raise _refused(path, "too-large", "is too large", f"a file has at most {MOST_BYTES >> 20} MB: make several jobs of it")
    try:
        return read.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        message = f"is not UTF-8 text: byte {error.start + 1} fits no character"
        raise _refused(path, "not-utf8", message, "save the file as UTF-8") from None


def _refused(path: Path, code: str, message: str, help: str) -> JobError:
    return JobError([{"code": code, "message": f"`{path.name}` {message}", "help": help, "path": "", "severity": "error"}])
