"""Spares, curved faces, blade paths and fitted planes against SciPy and NumPy."""

from __future__ import annotations

import json
import math
import random
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
    practice.pop("crew_record", None)  # The predictive of a record has its own test.
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
        free = spare["on_hand"] + spare["harvested"]
        assert spare["spares"] == max(used + for_severed - free, 0)
        assert spare["expected"] == pytest.approx(np.arange(len(chances)) @ chances, rel=1e-9)
        for choice in [spare, *spare["alternatives"]]:
            left = choice["spares"] + free - for_severed
            short = 1 - up_to[left] if left >= 0 else 1.0
            assert choice["chance_short"] == pytest.approx(short, abs=1e-10)


def sine(rise: float, wave: float, x: float) -> float:
    """Length of `z = rise/2 · (1 − cos kx)` from 0 to `x`, an elliptic integral of the second kind (DLMF 19.2.5).

    With `q = rise/2 · k`, `ds² = (1 + q² sin² kx) dx²`: `E(kx | −q²)/k`.
    """
    return wave / math.tau * special.ellipeinc(math.tau * x / wave, -((math.pi * rise / wave) ** 2))


def arcs(rise: float, wave: float, x: float) -> float:
    """Length of arcs of height `rise` over chords of `wave`, from 0 to `x`."""
    radius = (rise**2 + (wave / 2) ** 2) / (2 * rise)
    half = math.asin(wave / 2 / radius)
    whole, rest = divmod(x, wave)
    return radius * (2 * half * whole + half + math.asin((rest - wave / 2) / radius))


@pytest.mark.parametrize("seed", range(30))
@pytest.mark.parametrize(("shape", "length"), [("sine", sine), ("arcs", arcs)])
def test_faces_of_a_wave(gable: tilepost.Job, shape: str, length: Any, seed: int) -> None:
    document = json.loads(gable.text)
    rng = random.Random(seed)
    wave = rng.randint(60, 310)
    rise = rng.randint(1, wave // 2 if shape == "arcs" else 2 * wave)
    width = rng.randint(300, 600)
    document["tiles"]["flat-13"]["profile"] = {"shape": shape, "rise": f"{rise} mm", "wave": f"{wave} mm"}
    for assembly in document["assemblies"].values():
        assembly["top_flashing"] |= {"width": f"{width} mm", "formed": True}
    slope = takeoff_of(document, gable.files)["slopes"][0]

    covered = width * wave / length(rise, wave, wave)
    for post in slope["posts"]:
        side = covered / 2 - post["opening"]["half_width_mm"]
        # The width covered is rounded to the nanometre.
        assert post["top"]["side_cover_mm"] == pytest.approx(side, abs=0.5e-6)
    assert slope["cuts"]
    for cut in slope["cuts"]:
        developed = length(rise, wave, cut["from_left_mm"])
        assert cut["from_left_developed_mm"] == pytest.approx(developed, rel=1e-11)


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


def arc(a: float, b: float, above: float) -> float:
    """Length of an ellipse above the line that runs `above` over its centre; `a` lies along the line."""
    turn = math.asin(min(max(above / b, -1.0), 1.0))
    # From the end of `a` the arc to a turn t has the element sqrt(a² sin² t + b² cos² t).
    quarter = lambda t: b * special.ellipeinc(t, 1 - (a / b) ** 2)  # noqa: E731
    return 2 * (quarter(math.pi / 2) - quarter(turn))


def test_blade_paths_of_holes_and_notches(gable: tilepost.Job) -> None:
    document = json.loads(gable.text)
    slope = document["slopes"][0]
    for assembly in document["assemblies"].values():
        assembly |= {"axis": "plumb", "lap_surface_height": "1 in"}
    rng = random.Random(1)
    compared = {"hole": 0, "nose": 0, "head": 0, "left": 0, "right": 0}
    for pitch in ["0.5:12", "5:12", "12:12", "24:12"]:
        slope["pitch"] = pitch
        # Far enough apart that no two openings are judged as one.
        slope["posts"] = [
            {"name": f"{row}-{column}", "assembly": "post-7", "u": f"{u} mm", "v": f"{v} mm"}
            for row in range(9)
            for column in range(30)
            for u, v in [(700 + 350 * column + rng.randint(-90, 90), 500 + 450 * row + rng.randint(-90, 90))]
        ]
        for cut in takeoff_of(document, gable.files)["slopes"][0]["cuts"]:
            a, b = cut["half_width_mm"], cut["half_height_mm"]
            inside = {
                "nose": cut["from_nose_mm"],
                "head": 419.1 - cut["from_nose_mm"],
                "left": cut["from_left_mm"],
                "right": 330.2 - cut["from_left_mm"],
            }
            assert not cut["rectangle"]
            if cut["kind"] == "hole":
                which, path = "hole", 2 * arc(a, b, 0.0)
            elif cut["kind"] == "notch":
                (which,) = cut["open_to"]
                along, across = (a, b) if which in ("nose", "head") else (b, a)
                depth = inside[which]
                # Beyond the middle the sides run straight out; before it the arc ends at the edge.
                path = arc(along, across, 0.0) + 2 * depth if depth > 0 else arc(along, across, -depth)
            else:
                continue
            assert cut["blade_path_mm"] == pytest.approx(path, rel=1e-9), cut
            compared[which] += 1
    assert min(compared.values()) > 20, compared


@pytest.mark.parametrize("seed", range(40))
def test_a_plane_fitted_to_points(gable: tilepost.Job, seed: int) -> None:
    """Total least squares by `numpy.linalg.svd`: the normal is the last right singular vector.

    And by `numpy.linalg.lstsq`: as seen square to the fitted plane, the points neither rise nor fall on the whole.
    """
    rng = np.random.default_rng(seed)
    pitch, azimuth = math.atan(5 / 12) + rng.normal(0, 0.01), rng.uniform(0, 2 * math.pi)
    east, north = rng.uniform(-9_000, 9_000, (2, int(rng.integers(4, 40))))
    down = east * math.sin(azimuth) + north * math.cos(azimuth)
    points = np.column_stack([east, north, 6_000 - down * math.tan(pitch) + rng.normal(0, 4, len(east))]).round(6)

    document = json.loads(gable.text)
    document["slopes"][0]["place"] = {"points": [[f"{x:.6f} mm" for x in point] for point in points]}
    slope = takeoff_of(document, gable.files)["slopes"][0]
    place = slope["place"]

    _, singular, axes = np.linalg.svd(points - points.mean(axis=0))
    normal = axes[2] * np.sign(axes[2][2])
    assert place["rms_mm"] == pytest.approx(singular[2] / math.sqrt(len(points)), rel=1e-6)
    assert place["greatest_mm"] == pytest.approx(np.abs((points - points.mean(axis=0)) @ normal).max(), rel=1e-6)
    assert place["pitch_deg"] == pytest.approx(math.degrees(math.acos(normal[2])), abs=1e-8)
    turn = place["azimuth_deg"] - math.degrees(math.atan2(normal[0], normal[1]))
    assert (turn + 180) % 360 - 180 == pytest.approx(0, abs=1e-8)

    theta, phi = math.radians(place["pitch_deg"]), math.radians(place["azimuth_deg"])
    along = np.array([-math.cos(phi), math.sin(phi), 0])
    up = np.array([-math.sin(phi) * math.cos(theta), -math.cos(phi) * math.cos(theta), math.sin(theta)])
    origin = np.array(place["origin_mm"])
    u, v, w = np.array([along, up, np.cross(along, up)]) @ (points - origin).T
    slopes, *_ = np.linalg.lstsq(np.column_stack([u, v, np.ones_like(u)]), w, rcond=None)
    assert slopes == pytest.approx([0, 0, 0], abs=1e-8)
    assert slope["posts"]
    for post in slope["posts"]:
        assert post["world_mm"] == pytest.approx(origin + post["u_mm"] * along + post["v_mm"] * up, abs=1e-6)
