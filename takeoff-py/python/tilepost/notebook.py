"""Text and drawings as a notebook shows them."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable
from html import escape


def shown(text: str, drawings: Iterable[tuple[str, str]]) -> str:
    """Text as it is, then drawings, each with what it is called."""
    # A picture of its own, so that the names inside one drawing do not meet those of another.
    pictures = "".join(
        f'<img alt="{escape(name)}" style="max-width: 100%; background: white" '
        f'src="data:image/svg+xml;base64,{b64encode(svg.encode()).decode()}">'
        for name, svg in drawings
    )
    return f"<pre>{escape(text)}</pre>{pictures}"
