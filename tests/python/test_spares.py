"""Spares with a crew's record, tiles from under an array and the least expected cost, against scipy.stats.

`betabinom` and `betanbinom` are the predictive distributions; `binom` and `nbinom` those of known rates.
"""

from __future__ import annotations

import json
import subprocess
from fractions import Fraction
from pathlib import Path
from typing import Any

import numpy
import pytest
from conftest import ROOT
from scipy import stats

COMMAND = ROOT / "target/release/tilepost"
FOLDER = ROOT / "fixtures/crew-record-harvest"
TILE = "slate-look-420"
CLASSES = ["cut", "removed", "loosened", "walked"]
JOBS = 60


def taken_off(job: dict[str, Any], folder: Path, prices: str | None = None) -> dict[str, Any]:
    """The takeoff of a job, as the command writes it."""
    (folder / "job.json").write_text(json.dumps(job), encoding="utf-8")
    (folder / "prices.csv").write_text(prices or (FOLDER / "prices.csv").read_text(encoding="utf-8"), encoding="utf-8")
    subprocess.run([COMMAND, "takeoff", folder / "job.json", "--out", folder / "out"], check=True, capture_output=True)
    return json.loads((folder / "out/takeoff.json").read_text(encoding="utf-8"))


def fixture() -> dict[str, Any]:
    return json.loads((FOLDER / "job.json").read_text(encoding="utf-8"))


def random_job(rng: numpy.random.Generator) -> dict[str, Any]:
    """The fixture's roof with random posts, rates, record, stock and level; now and then a record that says little."""
    job = fixture()
    slope, practice, tile = job["slopes"][0], job["practice"], job["tiles"][TILE]
    places = rng.uniform([0.7, 0.7], [8.3, 4.3], size=(int(rng.integers(0, 14)), 2))
    slope["posts"] = [
        {"name": f"P{i}", "assembly": "foot", "u": f"{u:.3f} m", "v": f"{v:.3f} m"} for i, (u, v) in enumerate(places)
    ]
    del slope["post_grids"]
    slope["walked"] = int(rng.integers(0, 200))
    tile |= {"on_hand": int(rng.integers(0, 6)), "harvest": int(rng.integers(0, 40))}
    practice["breakage"] = {name: round(float(rng.uniform(0.001, 0.2)), 4) for name in CLASSES}
    practice["breakage"]["recut"] = bool(rng.random() < 0.7)
    practice["service_level"] = round(float(rng.choice([0.5, 0.9, 0.95, 0.99, 0.995])), 4)
    practice["cost_of_short"] = f"{rng.uniform(1, 200):.2f}"
    practice["crew_record"] = record = {"weight": int(rng.choice([1, 2, 20, 50, 400]))}
    for name in CLASSES:
        if rng.random() < 0.7:
            handled = int(rng.integers(0, 500))
            record[name] = {"handled": handled, "broken": int(rng.binomial(handled, rng.uniform(0, 0.15)))}
    if rng.random() < 0.2:
        del practice["crew_record"]
    return job


def laws(job: dict[str, Any], handled: dict[str, int]) -> list[tuple[Any, float | None]]:
    """The distribution of each class, with its mean where there is one."""
    practice = job["practice"]
    record, rates = practice.get("crew_record"), practice["breakage"]
    of_classes = []
    for name in CLASSES:
        n, p = handled[name], rates[name]
        until_whole = name == "cut" and rates["recut"]
        if n == 0:
            continue
        if record is None:
            law = stats.nbinom(n, 1 - p) if until_whole else stats.binom(n, p)
            of_classes.append((law, float(law.mean())))
            continue
        seen = record.get(name, {"handled": 0, "broken": 0})
        alpha = record["weight"] * p + seen["broken"]
        beta = record["weight"] * (1 - p) + seen["handled"] - seen["broken"]
        # scipy's first parameter is that of the successes waited for.
        law = stats.betanbinom(n, beta, alpha) if until_whole else stats.betabinom(n, alpha, beta)
        mean = n * alpha / (beta - 1) if beta > 1 else None
        of_classes.append((law, mean if until_whole else n * alpha / (alpha + beta)))
    return of_classes


def hidden(job: dict[str, Any], takeoff: dict[str, Any]) -> int:
    """Faces of 300 by 340 mm, straight joints from 0, that lie below the array and belong to no tile handled."""
    slope = takeoff["slopes"][0]
    left, lower, right, upper = slope["arrays"][0]["bounds_mm"]
    handled = {(tile["course"], tile["face_mm"][0]) for tile in slope["tiles"]}
    faces = [
        (course, 300.0 * column)
        for course in range(1, len(slope["courses"]))
        for column in range(29)  # the thirtieth is 30 mm wider than what is left of the roof
        if left <= 300 * column and 300 * (column + 1) <= right
        and lower <= -40 + 340 * (course - 1) and -40 + 340 * course <= upper
    ]  # fmt: skip
    return len([face for face in faces if face not in handled])


@pytest.fixture(params=range(JOBS))
def job(request: pytest.FixtureRequest) -> dict[str, Any]:
    return random_job(numpy.random.default_rng(request.param))


def test_against_scipy(job: dict[str, Any], tmp_path: Path) -> None:
    takeoff = taken_off(job, tmp_path)
    (spares,) = takeoff["spares"]
    practice, level = job["practice"], job["practice"]["service_level"]
    severed = spares["handled"]["severed"] * 2
    assert spares["hidden"] == hidden(job, takeoff)
    assert spares["harvested"] == min(job["tiles"][TILE]["harvest"], spares["hidden"])
    asked_too_much = job["tiles"][TILE]["harvest"] > spares["hidden"]
    assert ("harvest-beyond-arrays" in [finding["code"] for finding in takeoff["findings"]]) == asked_too_much
    assert any(text.startswith("Harvest:") for text in takeoff["cautions"]) == (spares["harvested"] > 0)

    of_classes = laws(job, spares["handled"])
    means = [mean for _, mean in of_classes]
    if None in means:
        assert spares["expected"] is None
    else:
        assert spares["expected"] == pytest.approx(sum(means), rel=1e-12, abs=1e-15)

    free = spares["on_hand"] + spares["harvested"]
    most = max(choice["spares"] for choice in spares["alternatives"]) + free + 2
    chances = numpy.ones(1)
    for law, _ in of_classes:
        chances = numpy.convolve(chances, law.pmf(numpy.arange(most + 1)))[: most + 1]
    up_to = numpy.zeros(most + 1)
    up_to[: len(chances)] = numpy.cumsum(chances)
    up_to[len(chances) :] = up_to[len(chances) - 1]

    def least(q: float) -> set[int]:
        """The least number that is enough with probability q: two where rounding decides."""
        return {int(numpy.argmax(up_to + slack >= q)) for slack in [1e-12 - 1e-10, 1e-12 + 1e-10]}

    assert spares["used_at_level"] in least(level)
    assert spares["for_severed"] == severed
    assert spares["spares"] == max(spares["used_at_level"] + severed - free, 0)
    for choice in [spares, *spares["alternatives"]]:
        left = choice["spares"] + free - severed
        short = 1 - up_to[left] if left >= 0 else 1.0
        assert choice["chance_short"] == pytest.approx(short, abs=1e-9)

    ratio = Fraction(228, 60) / Fraction(practice["cost_of_short"])  # six for 22.80 are cheaper than one for 4.20
    cheapest = spares["least_cost"]
    assert cheapest["unit_cost"] == "3.80" and cheapest["currency"] == "EUR"
    assert cheapest["cost_ratio"] == pytest.approx(float(min(ratio, Fraction(1))), rel=1e-15)
    best = {0} if ratio >= 1 else least(float(1 - ratio))
    assert cheapest["spares"] in {max(number + severed - free, 0) for number in best}


def test_what_a_wrong_record_says(tmp_path: Path) -> None:
    """Each mistake is named where it stands, all at once."""
    job = fixture()
    job["practice"]["service_level"] = 1
    job["practice"]["crew_record"] |= {"cut": {"handled": 12, "broken": 13}, "removed": {"handled": 5, "broken": -1}}
    job["practice"]["cost_of_short"] = "1.234,50"
    job["tiles"][TILE]["harvest"] = -1
    (tmp_path / "job.json").write_text(json.dumps(job), encoding="utf-8")
    (tmp_path / "prices.csv").write_text((FOLDER / "prices.csv").read_text(encoding="utf-8"), encoding="utf-8")
    done = subprocess.run([COMMAND, "takeoff", tmp_path / "job.json", "--out", tmp_path / "out"], capture_output=True, text=True)
    assert done.returncode == 1
    for place in ["crew_record", "broken", "service_level", "cost_of_short", "harvest"]:
        assert place in done.stderr, done.stderr
    assert "more tiles are broken than were handled" in done.stderr
    assert not (tmp_path / "out").exists()


def test_no_price_no_least_cost(tmp_path: Path) -> None:
    takeoff = taken_off(fixture(), tmp_path, "item,unit,pack,price,currency\nstaple,each,1000,4.85,EUR\n")
    assert takeoff["spares"][0]["least_cost"] is None
    assert "no-least-cost" in [finding["code"] for finding in takeoff["findings"]]


def test_a_record_that_says_next_to_nothing_refuses_a_level_that_nobody_can_keep(tmp_path: Path) -> None:
    job = fixture()
    job["practice"] |= {"crew_record": {"weight": 1}, "service_level": 0.999999}
    (tmp_path / "job.json").write_text(json.dumps(job), encoding="utf-8")
    (tmp_path / "prices.csv").write_text((FOLDER / "prices.csv").read_text(encoding="utf-8"), encoding="utf-8")
    done = subprocess.run([COMMAND, "takeoff", tmp_path / "job.json"], capture_output=True, text=True)
    assert done.returncode == 1
    assert "breakage-too-wide" in done.stderr and "crew_record" in done.stderr
