"""The posts of rails whose heights are given, against integer programs of HiGHS (by way of SciPy's `milp`).

What a post costs at a place is summed up here from the takeoff of a job with that post alone; which posts carry a rail
is a shortest path, here the flow of one unit from the rail's left end to its right end.
"""

from __future__ import annotations

import json
import random
from fractions import Fraction
from typing import Any

import numpy
import tilepost
from conftest import ROOT
from scipy.optimize import Bounds, LinearConstraint, milp

JOBS = 100
FAILING = 1e5
"""What a failing post costs here: more than all else, so that as few as possible fail."""

Job = dict[str, Any]


def inches(sixteenths: int) -> str:
    return f"{sixteenths // 16} {sixteenths % 16}/16 in" if sixteenths >= 0 else f"-{inches(-sixteenths)}"


def random_job(dice: random.Random) -> Job:
    """One array of one row with two rails on a gable 40 ft wide; everything in whole sixteenths of an inch."""
    job = json.loads((ROOT / "fixtures/least-cost-arrays/job.json").read_text("utf-8"))
    slope = job["slopes"][0]
    slope["outline"] = [["0", "0"], ["40 ft", "0"], ["40 ft", "14 ft"], ["0", "14 ft"]]
    slope["courses"] = {"first_nose": "-1 1/2 in", "exposure": inches(dice.randint(180, 216))}
    slope["columns"] = {"first_joint": inches(dice.randint(0, 191)), "bond": dice.choice(["straight", "half", ["0", "1/3"]])}
    slope["underlayment"]["first_lap_line"] = inches(dice.randint(300, 560))
    slope["setbacks"] = {"ridge": "18 in"}
    for gone in ("holes", "posts", "post_grids"):
        del slope[gone]
    spacing = dice.choice([256, 307, 384])
    rafters, at = [], dice.randint(100, 200)
    while at < 40 * 192:
        # Now and then one is missing, or doubled.
        if dice.random() > 0.06:
            rafters.append(at)
        if dice.random() < 0.06:
            rafters.append(at + 24)
        at += spacing + dice.randint(-12, 12)
    slope["rafters"] = {"at": [inches(at) for at in rafters], "width": "1 1/2 in"}
    window = [dice.randint(100, 300), dice.randint(560, 900)]
    slope["arrays"] = [
        {
            "name": "west",
            "u": inches(dice.randint(300, 700)),
            "v": inches(dice.randint(400, 1100)),
            "module_width": "44 in",
            "module_height": "66 in",
            "columns": dice.randint(2, 8),
            "rows": 1,
            "column_gap": "1 in",
            "rails": {
                "assembly": "foot",
                "clamps": [[inches(clamp), inches(clamp)] for clamp in window],
                "greatest_span": inches(dice.randint(500, 1300)),
                "greatest_overhang": inches(dice.randint(160, 560)),
                "least_distance": inches(dice.choice([0, 100, 300])),
                "blocking": dice.random() < 0.4,
            },
        }
    ]
    minutes = job["bid"]["labour"]["minutes"]
    for action in minutes:
        minutes[action] = dice.randint(0, 40) / 2
    job["practice"] = {"least_margin": "0"}
    # Labour alone, so that a minute is all that has to be weighed.
    del job["prices"]
    job["bid"] = {"currency": "USD", "labour": {"rate_per_hour": "60.00", "minutes": minutes}}
    return job


def sixteenths(text: str) -> int:
    """Back from what `inches` wrote, or zero."""
    whole, _, part = text.removesuffix(" in").partition(" ")
    return int((Fraction(whole) + Fraction(part or 0)) * 16)


def cost(job: Job, u: float, v: float) -> float | None:
    """What a post costs by itself at a place, in sixteenths; none where it may not stand."""
    slope = job["slopes"][0]
    post = {"name": "P", "assembly": "foot", "u": f"{u / 16} in", "v": f"{v / 16} in"}
    alone = {**job, "slopes": [{**slope, "arrays": [], "posts": [post]}]}
    try:
        takeoff = json.loads(tilepost.Job.from_dict(alone).takeoff().to_json())
    except tilepost.JobError:
        return None
    if any(finding["code"] == "inside-setback" for finding in takeoff["findings"]):
        return None
    row, counts = takeoff["slopes"][0]["posts"][0], takeoff["counts"]
    if row["situation"] == "none":
        return None
    minutes = job["bid"]["labour"]["minutes"]
    done = {
        "lift": counts["removed"],
        "loosen": counts["loosened"],
        "cut_hole": counts["holes"],
        "cut_notch": counts["notches"] + counts["corners"],
        "make_up": counts["severed"],
        "patch": counts["patches"],
        "block": len(takeoff["slopes"][0]["blocking"]),
        "batten": len(takeoff["slopes"][0]["battens"]),
        "set": 1,
    }
    below = [row["height"][top] for top in ("cone_mm", "post_mm")]
    too_low = any(top is not None and top <= row["height"]["tile_mm"] for top in below)
    fails = row["severed"] or row["top"]["tuck_short_mm"] > 0 or row["top"]["side_short_mm"] > 0 or too_low
    return sum(minutes.get(action, 0) * count for action, count in done.items()) + (FAILING if fails else 0)


def least(job: Job, v: int) -> float | None:
    """The least cost of the rail at a height, by an integer program; none where it can't be carried."""
    slope = job["slopes"][0]
    array = slope["arrays"][0]
    rails = array["rails"]
    rafters = [sixteenths(at) for at in slope["rafters"]["at"]]
    left = sixteenths(array["u"])
    right = left + array["columns"] * 44 * 16 + (array["columns"] - 1) * 16
    feet: list[float] = [float(at) for at in rafters]
    if rails["blocking"]:
        # Out of both rafters' reach: half of 1 1/2 in; half a sixteenth is no whole nanometre off.
        bays = [(a + b) / 2 for a, b in zip(rafters, rafters[1:], strict=False) if (b - a) / 2 > 12]
        feet += bays
    feet = sorted(at for at in feet if left <= at <= right)
    priced = [(at, price) for at in feet if (price := cost(job, at, v)) is not None]
    span, overhang, distance = (sixteenths(rails[limit]) for limit in ("greatest_span", "greatest_overhang", "least_distance"))
    # Arcs: from the left end to a first post, from post to post, from a last post to the right end.
    arcs: list[tuple[int, int, float]] = []
    source, sink = len(priced), len(priced) + 1
    for i, (at, price) in enumerate(priced):
        if at - left <= overhang:
            arcs.append((source, i, price))
        if right - at <= overhang:
            arcs.append((i, sink, 0.0))
        for j, (other, other_price) in enumerate(priced[i + 1 :], i + 1):
            if distance <= other - at <= span:
                arcs.append((i, j, other_price))
    if not arcs:
        return None
    flow = numpy.zeros((sink + 1, len(arcs)))
    between = numpy.zeros(len(arcs))
    for arc, (start, end, _) in enumerate(arcs):
        flow[start, arc] += 1
        flow[end, arc] -= 1
        between[arc] = start != source and end != sink
    balance = numpy.zeros(sink + 1)
    balance[source], balance[sink] = 1, -1
    solved = milp(
        numpy.array([price for *_, price in arcs]),
        # Two posts at least: one arc from post to post.
        constraints=[LinearConstraint(flow, balance, balance), LinearConstraint(between, 1, numpy.inf)],
        integrality=numpy.ones(len(arcs)),
        bounds=Bounds(0, 1),
    )
    return float(solved.fun) if solved.success else None


def test_rails_are_carried_as_cheaply_as_highs_has_them() -> None:
    dice = random.Random(41)
    carried = refused = 0
    for number in range(JOBS):
        job = random_job(dice)
        array = job["slopes"][0]["arrays"][0]
        heights = [sixteenths(array["v"]) + sixteenths(window[0]) for window in array["rails"]["clamps"]]
        want = [least(job, v) for v in heights]
        try:
            laid = json.loads(tilepost.Job.from_dict(job).layout().to_json())["arrays"][0]
        except tilepost.JobError as error:
            assert {problem["code"] for problem in error.problems} == {"no-layout"}, (number, error)
            assert None in want, (number, want)
            refused += 1
            continue
        assert None not in want, (number, want)
        failing = sum(int(least // FAILING) for least in want)
        assert laid["failing"] == failing, number
        for rail, least_cost in zip(laid["rails"], want, strict=True):
            assert abs(float(rail["additive_cost"]) - least_cost % FAILING) < 0.006, (number, rail, want)
        carried += 1
    # Most jobs have a layout, some have none.
    assert carried > 50, carried
    assert refused > 5, refused
