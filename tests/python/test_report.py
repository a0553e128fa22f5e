"""The report as a page: HTML as the standard has it, the same from every face."""

from __future__ import annotations

import subprocess
import xml.etree.ElementTree as xml
from pathlib import Path

import html5lib
import pytest
import tilepost
from conftest import ROOT
from test_sameness import node

NAMES = ["</style><script>alert(1)</script>", "]]> & <!-- \"'", "roo\u0301f / \u2116 7", "גג דרומי, سطح"]


def parsed(page: str) -> xml.Element:
    """The page as html5lib reads it, which follows the HTML standard and refuses every parse error of it."""
    return html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)


def test_it_is_html_and_xml_alike(job: tilepost.Job) -> None:
    page = job.takeoff().to_html()
    text = "".join(parsed(page).find("body").itertext())
    assert "".join(xml.fromstring(page).find("body").itertext()).split() == text.split()


@pytest.mark.parametrize("name", NAMES)
def test_names_are_text(gable: tilepost.Job, name: str) -> None:
    document = gable.text.replace("Fernhill Lane 12", name.replace('"', '\\"'))
    page = parsed(tilepost.Job.from_text(document, gable.files).takeoff().to_html())
    assert page.find(".//h1").text == name
    assert page.findall(".//script") == []


def test_every_face_gives_the_same_page(job_path: Path, job: tilepost.Job, tmp_path: Path) -> None:
    page = job.takeoff().to_html()
    subprocess.run(
        [ROOT / "target/release/tilepost", "takeoff", job_path, "--out", tmp_path], check=True, capture_output=True
    )
    assert (tmp_path / "report.html").read_bytes() == page.encode()
    assert node("report_html", job_path) == page
