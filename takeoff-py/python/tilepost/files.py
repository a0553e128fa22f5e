"""Reads text files of a bounded size, and writes whole files."""

from __future__ import annotations

import os
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


def write_whole(path: Path, content: bytes) -> None:
    """Writes a file beside its place and moves it there, so that what was there stays whole if anything fails."""
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(content)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def _refused(path: Path, code: str, message: str, help: str) -> JobError:
    return JobError([{"code": code, "message": f"`{path.name}` {message}", "help": help, "path": "", "severity": "error"}])
