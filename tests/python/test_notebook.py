"""What a notebook and a screen show."""

from __future__ import annotations

import base64
import re
import xml.etree.ElementTree as xml
from html.parser import HTMLParser

import pytest
import tilepost


class Pictures(HTMLParser):
    """The pictures of a piece of HTML."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.maps: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        source = dict(attrs).get("src") or ""
        if tag == "img" and source.startswith("data:image/svg+xml;base64,"):
            self.maps.append(base64.b64decode(source.partition(",")[2]).decode())


def test_a_notebook_shows_summary_and_roof_maps(job: tilepost.Job) -> None:
    takeoff = job.takeoff()
    html = takeoff._repr_html_()
    assert "<pre>" in html
    assert Pictures(html).maps == [takeoff.to_svg(slope) for slope in takeoff.slopes]


def test_roof_maps_are_svg(job: tilepost.Job) -> None:
    takeoff = job.takeoff()
    for slope in takeoff.slopes:
        drawing = xml.fromstring(takeoff.to_svg(slope))
        assert drawing.tag == "{http://www.w3.org/2000/svg}svg"


def test_a_slope_that_is_not_there(gable: tilepost.Job) -> None:
    with pytest.raises(KeyError, match="`north`"):
        gable.takeoff().to_svg("north")


def test_the_summary_fits_a_screen(job: tilepost.Job) -> None:
    summary = job.takeoff().summary()
    assert max(len(line) for line in summary.splitlines()) <= 80


def test_markup_in_a_job_is_text(gable: tilepost.Job) -> None:
    job = tilepost.Job.from_text(gable.text.replace("Fernhill Lane 12", "<script>alert(1)</script>"), gable.files)
    html = job.takeoff()._repr_html_()
    assert "<script" not in html
    assert not any(re.search(r"<script", drawing) for drawing in Pictures(html).maps)
