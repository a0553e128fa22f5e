"""The screening of lags against wind uplift, worked out once more with NumPy and the units of scipy.constants.

Areas are checked by points: each point of an array belongs to the row whose line is nearest, and in it to the nearest post.
"""

from __future__ import annotations

import csv
import json
import subprocess
from pathlib import Path
from typing import Any

import numpy
import pytest
from conftest import ROOT
from scipy import constants

COMMAND = ROOT / "target/release/tilepost"
JOB = ROOT / "fixtures/screened-arrays/job.json"
ROOFS = 25
PSF = constants.lbf / constants.foot**2


def taken_off(job: dict[str, Any], folder: Path) -> dict[str, Any]:
    """The takeoff of a job, as the command writes it."""
    (folder / "job.json").write_text(json.dumps(job), encoding="utf-8")
    subprocess.run([COMMAND, "takeoff", folder / "job.json", "--out", folder / "out"], check=True, capture_output=True)
    return json.loads((folder / "out/takeoff.json").read_text(encoding="utf-8"))


def inches(value: float) -> str:
    return f"{value:.4f} in"


def random_job(rng: numpy.random.Generator) -> dict[str, Any]:
    """The fixture's roof with one array on random posts, lags, wood and wind; all on the middle of a rafter."""
    job = json.loads(JOB.read_text(encoding="utf-8"))
    slope = job["slopes"][0]
    gravity = float(rng.choice([0.36, 0.42, 0.43, 0.50, 0.55, 0.67]))
    slope["rafters"] |= {"specific_gravity": gravity, "depth": inches(rng.choice([3.5, 5.5, 7.25]))}
    slope["deck_thickness"] = inches(rng.choice([0.375, 0.46875, 0.75, 1.5]))
    del slope["blocking"], slope["post_grids"]
    lags = {
        "count": int(rng.integers(1, 5)), "diameter": inches(rng.choice([0.25, 0.3125, 0.375, 0.5])),
        "length": inches(rng.choice([2, 2.5, 3, 3.5, 4, 5, 6, 8])), "shim": inches(rng.choice([0, 0.1875, 0.5])), "spacing": "2 in",
    }  # fmt: skip
    if rng.random() < 0.4:
        lags |= {"thread_length": inches(1.75), "tip": inches(0.25)}
    job["assemblies"] = {"foot": job["assemblies"]["foot"] | {"lags": lags}}
    rows = numpy.cumsum(rng.uniform(8, 45, size=rng.integers(1, 4))) + 30
    rafters = 12 + 24 * numpy.arange(1, 13)
    posts = [
        (float(u), float(v + jitter))
        for v in rows
        for u in numpy.sort(rng.choice(rafters, size=rng.integers(1, 6), replace=False))
        for jitter in [rng.choice([0, 0, rng.uniform(0, 1.9)])]
    ]
    slope["posts"] = [
        {"name": f"P{i}", "assembly": "foot", "u": inches(u), "v": inches(v)} for i, (u, v) in enumerate(posts)
    ]
    slope["arrays"] = [
        {
            "name": "one", "u": "20 in", "v": "25 in", "module_width": "66 in", "module_height": "44 in",
            "columns": 5, "rows": 3, "column_gap": "0.75 in", "row_gap": "0.5 in",
        }
    ]  # fmt: skip
    factors = {name: round(float(rng.uniform(0.7, 1.6)), 3) for name in ["c_d", "c_m", "c_t"] if rng.random() < 0.6}
    if rng.random() < 0.3:
        wind: dict[str, Any] = {"pressure": f"{rng.uniform(5, 60):.3f} psf"}
    else:
        equation = {
            "speed": f"{rng.uniform(80, 170):.2f} mph",
            "kz": round(float(rng.uniform(0.57, 1.2)), 3),
            "gcp": -round(float(rng.uniform(0.5, 3.2)), 3),
        }
        optional = {"kzt": (1, 1.4), "kd": (0.8, 0.95), "ke": (0.8, 1), "gamma_e": (1, 1.5), "gamma_a": (0.4, 0.8)}
        equation |= {name: round(float(rng.uniform(*ends)), 3) for name, ends in optional.items() if rng.random() < 0.4}
        wind = {"equation": equation}
    job["screening"] = factors | {"dead_load": f"{rng.uniform(0, 5):.3f} psf", "wind": wind}
    return job


def number(text: str) -> float:
    """The number of a quantity as written above."""
    return float(text.split(" ")[0])


def expected_uplift(job: dict[str, Any], area_m2: float) -> float:
    """Uplift on a post, N: ASCE 7-16, 26.10-1, 29.4-7 and 2.4.1."""
    screening = job["screening"]
    if "pressure" in screening["wind"]:
        pressure = number(screening["wind"]["pressure"]) * PSF
    else:
        e = {"kzt": 1.0, "kd": 0.85, "ke": 1.0, "gamma_e": 1.5} | screening["wind"]["equation"]
        q_h = 0.00256 * e["kz"] * e["kzt"] * e["kd"] * e["ke"] * number(e["speed"]) ** 2
        of_area = numpy.interp(numpy.log10(area_m2 / constants.foot**2), [1, 2], [0.8, 0.4])
        pressure = max(q_h * -e["gcp"] * e["gamma_e"] * e.get("gamma_a", of_area), 16) * PSF
    dead = number(screening["dead_load"]) * PSF
    return max(0.6 * pressure - 0.6 * dead, 0) * area_m2


def expected_resistance(job: dict[str, Any]) -> float:
    """What the lags of a post hold, N: NDS 2018, 12.2-1; thread is counted along the lag, hundredth by hundredth."""
    slope, lags = job["slopes"][0], job["assemblies"]["foot"]["lags"]
    length, diameter = number(lags["length"]), number(lags["diameter"])
    thread = number(lags.get("thread_length", inches(min(length / 2 + 0.5, 6))))
    tips = {0.25: 5 / 32, 0.3125: 3 / 16, 0.375: 7 / 32, 0.5: 5 / 16}
    tip = number(lags["tip"]) if "tip" in lags else tips[diameter]
    wood = number(lags["shim"]) + number(slope["deck_thickness"])
    steps = 32_000
    along = (numpy.arange(steps) + 0.5) * length / steps
    threaded = (along > length - thread) & (along < length - tip)
    in_wood = (along > wood) & (along < wood + number(slope["rafters"]["depth"]))
    bite = numpy.count_nonzero(threaded & in_wood) * length / steps
    factors = {"c_d": 1.6, "c_m": 1.0, "c_t": 1.0} | job["screening"]
    reference = 1800 * slope["rafters"]["specific_gravity"] ** 1.5 * diameter**0.75
    pounds = reference * factors["c_d"] * factors["c_m"] * factors["c_t"] * bite * lags["count"]
    return pounds * constants.lbf


def owners(points: numpy.ndarray, posts: numpy.ndarray) -> numpy.ndarray:
    """Of each point the post that carries it: in the row whose line is nearest, the nearest."""
    order = numpy.argsort(posts[:, 1])
    row_of = numpy.empty(len(posts), dtype=int)
    row_of[order] = numpy.cumsum(numpy.diff(posts[order, 1], prepend=posts[order[0], 1]) > 6)
    ends = [posts[row_of == row, 1] for row in range(row_of.max() + 1)]
    lines = numpy.array([(v.min() + v.max()) / 2 for v in ends])
    row = numpy.abs(points[:, 1, None] - lines).argmin(axis=1)
    beside = numpy.abs(points[:, 0, None] - posts[:, 0])
    beside[row[:, None] != row_of] = numpy.inf
    return beside.argmin(axis=1)


@pytest.mark.parametrize("seed", range(ROOFS))
def test_random_roofs(seed: int, tmp_path: Path) -> None:
    rng = numpy.random.default_rng(seed)
    job = random_job(rng)
    takeoff = taken_off(job, tmp_path)
    screened = takeoff["screening"]["posts"]
    posts = numpy.array([[number(post["u"]), number(post["v"])] for post in job["slopes"][0]["posts"]])
    assert [post["post"] for post in screened] == [f"P{i}" for i in range(len(posts))]

    left, lower, right, upper = (side / 25.4 for side in takeoff["slopes"][0]["arrays"][0]["bounds_mm"])
    assert (right - left, upper - lower) == pytest.approx((5 * 66 + 4 * 0.75, 3 * 44 + 2 * 0.5))
    points = rng.uniform([left, lower], [right, upper], size=(2_000, 2))
    boxes = numpy.array([post["tributary_mm"] for post in screened]) / 25.4
    owner = boxes[owners(points, posts)]
    assert (owner[:, :2] <= points).all() and (points <= owner[:, 2:]).all()
    areas = numpy.array([post["tributary_mm2"] for post in screened])
    assert areas.sum() == pytest.approx((right - left) * (upper - lower) * 25.4**2, rel=1e-12)

    resistance = expected_resistance(job)
    for post, area in zip(screened, areas, strict=True):
        assert post["uplift_n"] == pytest.approx(expected_uplift(job, area / 1e6), rel=1e-9)
        # The thread is counted in steps of 1/4000 in and finer; as many as a handful may fall on the other side.
        assert post["resistance_n"] == pytest.approx(resistance, rel=2e-3, abs=2)
        if post["resistance_n"]:
            assert post["ratio"] == pytest.approx(post["uplift_n"] / post["resistance_n"], rel=1e-12)
    above = [post["post"] for post in screened if post["ratio"] is None or post["ratio"] > 1]
    found = [finding["message"] for finding in takeoff["findings"] if finding["code"] == "uplift-above-resistance"]
    assert len(found) == len(above)
    assert all(f"`{name}`" in message for name, message in zip(above, found, strict=True))


def test_the_table_says_what_the_document_says(tmp_path: Path) -> None:
    takeoff = taken_off(json.loads(JOB.read_text(encoding="utf-8")), tmp_path)
    with (tmp_path / "out/screening.csv").open(newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    posts = takeoff["screening"]["posts"]
    assert len(rows) == len(posts) == 11
    for row, post in zip(rows, posts, strict=True):
        for name in ["slope", "post", "array"]:
            assert row[name] == post[name]
        for name in ["tributary_mm2", "pressure_pa", "uplift_n", "thread_mm", "resistance_n", "ratio", "gamma_a"]:
            assert float(row[name]) == pytest.approx(post[name], rel=1e-14)
        for kind in ["edge", "end", "spacing"]:
            distance = post["distances"][kind]
            assert (row[f"{kind}_mm"] == "") == (distance is None)
            if distance:
                assert float(row[f"{kind}_asked_mm"]) == distance["asked_mm"]


def test_no_screening_no_table(tmp_path: Path) -> None:
    job = json.loads(JOB.read_text(encoding="utf-8"))
    del job["screening"]
    assert taken_off(job, tmp_path)["screening"] is None
    assert not (tmp_path / "out/screening.csv").exists()


def test_what_is_said_of_it(tmp_path: Path) -> None:
    """It is a screening, prints its inputs and what it leaves out, and defers; it never calls anything safe."""
    (tmp_path / "job.json").write_text(JOB.read_text(encoding="utf-8"), encoding="utf-8")
    done = subprocess.run([COMMAND, "takeoff", tmp_path / "job.json", "--out", tmp_path / "out"], check=True, capture_output=True)
    summary = " ".join(done.stdout.decode().split())
    for words in ["Screening of the lags", "licensed engineer", "local code", "Inputs: C_D 1.6", "GCp -2.3", "Not covered:", "snow"]:
        assert words in summary
    written = [summary, *(path.read_text(encoding="utf-8") for path in (tmp_path / "out").iterdir() if path.suffix in {".json", ".csv", ".svg"})]
    assert not any("safe" in text.lower() for text in written)
