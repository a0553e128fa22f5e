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
SHEET = 36.0
EXAMPLE = json.loads((ROOT / "takeoff-core/src/job/example.json").read_text())


def job(rng: random.Random) -> tilepost.Job:
    """A roof with two to seven patches of their own sizes, too far apart to be linked."""
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


def least_in_shelves(along: np.ndarray, across: np.ndarray) -> float:
    """The least length in sections that are cut once lengthwise, piece beside piece.

    A section is as long as the piece that begins it (Lodi, Martello and Vigo's model of level packing).
    """
    n = len(along)
    pairs = [(i, j) for i in range(n) for j in range(n) if i != j and (along[j], j) < (along[i], i)]
    cost = np.concatenate([along, np.zeros(len(pairs))])
    once, room = np.zeros((n, len(cost))), np.zeros((n, len(cost)))
    for j in range(n):
        once[j, j] = 1
        room[j, j] = across[j] - SHEET
    for column, (i, j) in enumerate(pairs, start=n):
        once[j, column] = 1
        room[i, column] = across[j]
    rules = [LinearConstraint(once, 1, 1), LinearConstraint(room, -np.inf, 0)]
    solved = milp(cost, constraints=rules, integrality=np.ones(len(cost)), bounds=(0, 1))
    assert solved.success
    return solved.fun


def least_of_lines(along: np.ndarray, across: np.ndarray) -> float:
    """A length below which no plan goes: lines across the sheet, each meeting pieces that fit beside each other."""
    n = len(along)
    sets = (subset for size in range(1, n + 1) for subset in itertools.combinations(range(n), size))
    fitting = [subset for subset in sets if across[list(subset)].sum() <= SHEET + 1e-9]
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
        shelves, lines = least_in_shelves(along, across), least_of_lines(along, across)
        assert lines - 1e-6 <= used <= shelves + 1e-6, "few pieces are planned at least as well as in shelves"
        assert bound <= min(used, shelves) + 1e-6, "what can be cut disproves no bound"
        gaps.append(used / bound - 1)
        better += shelves < along.sum() - 1e-6
    assert better > INSTANCES / 10, f"in {better} plans pieces lie side by side"
    assert np.mean(gaps) < 0.01, "the bound is near what is used"
