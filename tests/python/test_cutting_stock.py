"""Cutting plans against HiGHS, an independent solver (through ``scipy.optimize``)."""

from __future__ import annotations

import itertools
import json
import random

import numpy as np
import tilepost
from conftest import ROOT
from scipy.optimize import LinearConstraint, linprog, milp

INSTANCES = 500
ROLL_WIDTH = 36.0
EXAMPLE = json.loads((ROOT / "takeoff-core/src/job/example.json").read_text())


def job(rng: random.Random) -> tilepost.Job:
    """A roof with two to seven patches, each of its own size, too far apart to merge."""
    document = json.loads(json.dumps(EXAMPLE))
    slope = document["slopes"][0]
    slope |= {"outline": [["0", "0"], ["60 ft", "0"], ["60 ft", "20 ft"], ["0", "20 ft"]], "edges": ["eave", "rake", "ridge", "rake"]}
    slope.pop("rafters", None)
    slope["underlayment"] = {"kind": "felt", "first_lap_line": "34 in"}
    document["underlayments"] = {"felt": {"sheet_width": "36 in", "head_lap": "2 in", "roll_length": "72 ft", "brittle": True}}
    [assembly] = document["assemblies"].values()
    document["assemblies"], slope["posts"] = {}, []
    for number in range(rng.randint(2, 7)):
        flange = assembly["deck_flashing"] | {"width": f"{rng.randint(8, 26)} in"}
        document["assemblies"][f"post {number}"] = assembly | {"deck_flashing": flange}
        place = {"u": f"{5 + 7 * number} ft", "v": f"{rng.randint(40, 120)} in"}
        slope["posts"].append({"name": f"A{number}", "assembly": f"post {number}"} | place)
    return tilepost.Job.from_dict(document)


def optimal_shelf_length(along: np.ndarray, across: np.ndarray) -> float:
    """Least length of shelves: sections with one row of pieces, side by side across the roll.

    The longest piece of a shelf sets its length (Lodi, Martello and Vigo's model of level packing).
    """
    n = len(along)
    pairs = [(i, j) for i in range(n) for j in range(n) if i != j and (along[j], j) < (along[i], i)]
    cost = np.concatenate([along, np.zeros(len(pairs))])
    once, room = np.zeros((n, len(cost))), np.zeros((n, len(cost)))
    for j in range(n):
        once[j, j] = 1
        room[j, j] = across[j] - ROLL_WIDTH
    for column, (i, j) in enumerate(pairs, start=n):
        once[j, column] = 1
        room[i, column] = across[j]
    rules = [LinearConstraint(once, 1, 1), LinearConstraint(room, -np.inf, 0)]
    solved = milp(cost, constraints=rules, integrality=np.ones(len(cost)), bounds=(0, 1))
    assert solved.success
    return solved.fun


def line_bound(along: np.ndarray, across: np.ndarray) -> float:
    """Lower bound on the length of any plan: a line across the roll meets only pieces that fit side by side."""
    n = len(along)
    sets = (subset for size in range(1, n + 1) for subset in itertools.combinations(range(n), size))
    fitting = [subset for subset in sets if across[list(subset)].sum() <= ROLL_WIDTH + 1e-9]
    meets = np.array([[piece in subset for subset in fitting] for piece in range(n)], float)
    solved = linprog(np.ones(len(fitting)), A_ub=-meets, b_ub=-along)
    assert solved.success
    return solved.fun


def test_plans_lie_between_a_bound_and_an_optimum_of_a_solver() -> None:
    rng = random.Random(20)
    better, gaps = 0, []
    for _ in range(INSTANCES):
        [plan] = json.loads(job(rng).takeoff().to_json())["rolls"]
        along = np.array([piece["length_mm"] for piece in plan["pieces"]]) / 25.4
        across = np.array([piece["width_mm"] for piece in plan["pieces"]]) / 25.4
        used, bound = plan["length_used_mm"] / 25.4, plan["length_bound_mm"] / 25.4
        shelves, lines = optimal_shelf_length(along, across), line_bound(along, across)
        assert lines - 1e-6 <= used <= shelves + 1e-6, "a plan of few pieces is no longer than shelves"
        assert bound <= min(used, shelves) + 1e-6, "the bound is not above a feasible length"
        gaps.append(used / bound - 1)
        better += shelves < along.sum() - 1e-6
    assert better > INSTANCES / 10, f"pieces lie side by side in {better} plans"
    assert np.mean(gaps) < 0.01, "the bound is close to the length used"
