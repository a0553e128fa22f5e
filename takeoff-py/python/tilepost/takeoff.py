"""A takeoff as a notebook shows it, and as a workbook."""

from __future__ import annotations

import json
from base64 import b64encode
from html import escape
from pathlib import Path
from typing import Any

from . import _tilepost
from .files import write_whole


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
        # A picture of its own, so that the names inside one drawing do not meet those of another.
        maps = "".join(
            f'<img alt="roof map of slope {escape(slope)}" style="max-width: 100%; background: white" '
            f'src="data:image/svg+xml;base64,{b64encode(self.to_svg(slope).encode()).decode()}">'
            for slope in self.slopes
        )
        return f"<pre>{escape(self.summary())}</pre>{maps}"
