"""Spares, developed lengths, ellipses and fitted planes against SciPy and NumPy."""

from __future__ import annotations

import json
import math
from typing import Any

import numpy as np
import pytest
import tilepost
from conftest import ROOT
from scipy import special, stats

RATES = {"cut": 0.06, "removed": 0.02, "loosened": 0.01, "walked": 0.005}  # the documented defaults
INCH = 25.4


def takeoff_of(document: dict[str, Any], files: dict[str, str] | None = None) -> dict[str, Any]:
    """A takeoff as it is written."""
    return json.loads(tilepost.Job.from_dict(document, files).takeoff().to_json())


def spares_used(handled: dict[str, int], rates: dict[str, float], recut: bool) -> np.ndarray:
    """P(X = 0, 1, …) by `scipy.stats.nbinom` and `binom`, summed over the classes by `numpy.convolve`."""
    chances = np.ones(1)
    for name, rate in rates.items():
        n, k = handled[name], np.arange(max(handled[name], 200) + 1)
        if n == 0:
            continue
        law = stats.nbinom(n, 1 - rate) if name == "cut" and recut else stats.binom(n, rate)
        chances = np.convolve(chances, law.pmf(k))
    return chances


@pytest.mark.parametrize("recut", [True, False])
@pytest.mark.parametrize("level", [0.5, 0.9, 0.95, 0.999])
@pytest.mark.parametrize("rates", [{}, {"cut": 0.15, "removed": 0.04, "loosened": 0.003, "walked": 0.0}])
def test_spares(job: tilepost.Job, rates: dict[str, float], level: float, recut: bool) -> None:
    document = json.loads(job.text)
    practice = document.setdefault("practice", {})
    practice |= {"breakage": rates | {"recut": recut}, "service_level": level}
    takeoff = takeoff_of(document, job.files)
    assert takeoff["spares"]
    for spare in takeoff["spares"]:
        chances = spares_used(spare["handled"], RATES | rates, recut)
        up_to = np.cumsum(chances)
        used = int(np.argmax(up_to + 1e-12 >= level))
        for_severed = spare["handled"]["severed"] * practice.get("pieces_for_severed", 2)
        assert spare["used_at_level"] == used
        assert spare["for_severed"] == for_severed
        assert spare["spares"] == max(used + for_severed - spare["on_hand"], 0)
        assert spare["expected"] == pytest.approx(np.arange(len(chances)) @ chances, rel=1e-9)
        for choice in [spare, *spare["alternatives"]]:
            left = choice["spares"] + spare["on_hand"] - for_severed
            short = 1 - up_to[left] if left >= 0 else 1.0
            assert choice["chance_short"] == pytest.approx(short, abs=1e-10)


def test_developed_lengths_of_a_sine_wave() -> None:
    """The length of a sine is an elliptic integral of the second kind (DLMF 19.2.5, `scipy.special.ellipeinc`).

    Of `z = rise/2 · (1 − cos(kx))`, with `q = rise/2 · k`, `ds² = (1 + q² sin²(kx)) dx²`: `E(kx | −q²)/k`.
    """
    job = tilepost.Job.from_file(ROOT / "fixtures/hip-valley-chimney/job.json")
    takeoff = json.loads(job.takeoff().to_json())
    cuts = takeoff["slopes"][0]["cuts"]
    k = 2 * math.pi / (11 * INCH)
    m = -((1 * INCH * k) ** 2)
    assert len({cut["from_left_mm"] for cut in cuts}) > 10
    for cut in cuts:
        assert cut["from_left_developed_mm"] == pytest.approx(special.ellipeinc(k * cut["from_left_mm"], m) / k, rel=1e-12)


def test_a_flashing_over_whole_waves() -> None:
    """A wave is `4 E(m)/k` long (`scipy.special.ellipe`); a formed flashing covers by so much less, in whole nanometres."""
    job = tilepost.Job.from_file(ROOT / "fixtures/hip-valley-chimney/job.json")
    takeoff = json.loads(job.takeoff().to_json())
    k = 2 * math.pi / (11 * INCH)
    wave = 4 * special.ellipe(-((1 * INCH * k) ** 2)) / k
    for post in takeoff["slopes"][0]["posts"]:
        covered = 20 * INCH * 11 * INCH / wave
        assert post["top"]["side_cover_mm"] == pytest.approx(covered / 2 - post["opening"]["half_width_mm"], abs=1e-6)


def test_the_blade_path_of_a_plumb_posts_hole() -> None:
    """An ellipse is `4 b E(1 − a²/b²)` round (DLMF 19.30.5, `scipy.special.ellipe`)."""
    job = tilepost.Job.from_file(ROOT / "fixtures/pan-cover-plumb/job.json")
    holes = 0
    for rise in [2, 5, 8, 12, 18]:
        document = json.loads(job.text)
        document["slopes"][0]["pitch"] = f"{rise}:12"
        a = (15 / 16 + 3 / 8) * INCH
        b = a * math.hypot(1, rise / 12) + 5 / 8 * INCH * rise / 12
        for cut in takeoff_of(document)["slopes"][0]["cuts"]:
            if cut["kind"] == "hole":
                holes += 1
                assert cut["half_height_mm"] == pytest.approx(b, abs=1e-6)
                assert cut["blade_path_mm"] == pytest.approx(4 * b * special.ellipe(1 - (a / b) ** 2), rel=1e-7)
    assert holes > 20


@pytest.mark.parametrize("seed", range(40))
def test_a_plane_fitted_to_points(gable: tilepost.Job, seed: int) -> None:
    """Total least squares by `numpy.linalg.svd`: the normal is the last right singular vector."""
    rng = np.random.default_rng(seed)
    pitch, azimuth = math.atan(5 / 12) + rng.normal(0, 0.01), rng.uniform(0, 2 * math.pi)
    east, north = rng.uniform(-9_000, 9_000, (2, int(rng.integers(4, 40))))
    down = east * math.sin(azimuth) + north * math.cos(azimuth)
    points = np.column_stack([east, north, 6_000 - down * math.tan(pitch) + rng.normal(0, 4, len(east))]).round(6)

    document = json.loads(gable.text)
    document["slopes"][0]["place"] = {"points": [[f"{x:.6f} mm" for x in point] for point in points]}
    place = takeoff_of(document)["slopes"][0]["place"]

    _, singular, axes = np.linalg.svd(points - points.mean(axis=0))
    normal = axes[2] * np.sign(axes[2][2])
    assert place["rms_mm"] == pytest.approx(singular[2] / math.sqrt(len(points)), rel=1e-6)
    assert place["greatest_mm"] == pytest.approx(np.abs((points - points.mean(axis=0)) @ normal).max(), rel=1e-6)
    assert place["pitch_deg"] == pytest.approx(math.degrees(math.acos(normal[2])), abs=1e-8)
    turn = place["azimuth_deg"] - math.degrees(math.atan2(normal[0], normal[1]))
    assert (turn + 180) % 360 - 180 == pytest.approx(0, abs=1e-8)
