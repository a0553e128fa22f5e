"""A takeoff as a notebook shows it, and as a workbook."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from . import _tilepost
from .files import write_whole
from .notebook import shown


class Takeoff(_tilepost.Takeoff):
    __doc__ = _tilepost.Takeoff.__doc__

    __slots__ = ()

    def to_xlsx(self, path: str | Path) -> None:
        """Writes the workbook to a file: whole, or not at all."""
        write_whole(Path(path), self.xlsx())

    def compare(self, as_built: _tilepost.Takeoff) -> dict[str, Any]:
        """What changed between this takeoff, as bid, and another, as built.

        The comparison has `changed`, `counts`, `posts` and `materials`; two equal takeoffs have none.
        """
        return json.loads(self.compare_json(as_built))["comparison"]

    def _repr_html_(self) -> str:
        return shown(self.summary(), ((f"roof map of slope {slope}", self.to_svg(slope)) for slope in self.slopes))
