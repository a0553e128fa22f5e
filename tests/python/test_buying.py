"""Packs against an independent solver, and every sum of money against Python's decimals."""

from __future__ import annotations

import csv
import json
import random
import subprocess
from decimal import ROUND_HALF_UP, Decimal
from math import ceil
from pathlib import Path
from typing import Any

import numpy
import pytest
from conftest import ROOT
from scipy.optimize import Bounds, LinearConstraint, milp

COMMAND = ROOT / "target/release/tilepost"
INSTANCES = 500
HEADER = ["item", "unit", "pack", "price", "currency", "vendor_part", "minimum_order"]
Packs = list[dict[str, Any]]


def offers(dice: random.Random) -> Packs:
    """Two to six packs of one item; larger ones are mostly cheaper by the piece, some sold from a number up only."""
    each = dice.uniform(0.02, 9)
    return [
        {
            "pack": size,
            "price": Decimal(each * size * dice.uniform(0.85, 1.1) + 0.01).quantize(Decimal("0.0001")),
            "minimum": dice.randint(2, 6) if dice.random() < 0.2 else 1,
        }
        for size in dice.sample(range(1, 120), dice.randint(2, 6))
    ]


@pytest.fixture(scope="module")
def instances() -> dict[str, Packs]:
    """What is offered of each item."""
    dice = random.Random(20)
    return {f"item {number}": offers(dice) for number in range(INSTANCES)}


@pytest.fixture(scope="module")
def bid(instances: dict[str, Packs], tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """The command's bid for one post that takes some of every item, a third of them with waste."""
    dice = random.Random(21)
    folder = tmp_path_factory.mktemp("bid")
    job = json.loads((ROOT / "fixtures/plain-gable/job.json").read_text("utf-8"))
    slope = job["slopes"][0]
    slope["posts"] = slope["posts"][:1]
    assembly = job["assemblies"][slope["posts"][0]["assembly"]]
    assembly["items"] = [
        {"item": item, "count": dice.randint(1, 20_000 if dice.random() < 0.1 else 400)} for item in instances
    ]
    job["practice"]["waste"] = {item: dice.choice([0.03, 0.05, 0.1]) for item in instances if dice.random() < 1 / 3}
    with (folder / "prices.csv").open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file)
        writer.writerow(HEADER)
        for item, packs in instances.items():
            writer.writerows([item, "each", of["pack"], of["price"], "USD", "", of["minimum"]] for of in packs)
    (folder / "job.json").write_text(json.dumps(job), "utf-8")
    done = subprocess.run([COMMAND, "takeoff", folder / "job.json", "--json"], check=True, capture_output=True)
    return json.loads(done.stdout)["takeoff"]["bid"]


def solved(packs: Packs, need: int, costs: list[int], most: int | None = None) -> list[int]:
    """The numbers of packs that hold the need at the least cost (HiGHS, by way of SciPy); with `most`, the fewest
    packs that cost no more than it."""
    n = len(packs)
    sizes, minimums = ([of[key] for of in packs] for key in ("pack", "minimum"))
    limits = [max(ceil(need / size), minimum) for size, minimum in zip(sizes, minimums, strict=True)]
    eye, none = numpy.eye(n), numpy.zeros(n)
    constraints = [
        LinearConstraint(numpy.concatenate([sizes, none]), need, numpy.inf),
        LinearConstraint(numpy.hstack([eye, -numpy.diag(limits)]), -numpy.inf, 0),
        LinearConstraint(numpy.hstack([eye, -numpy.diag(minimums)]), 0, numpy.inf),
    ]
    objective = costs
    if most is not None:
        constraints.append(LinearConstraint(numpy.concatenate([costs, none]), -numpy.inf, most + 0.5))
        objective = [1] * n
    found = milp(
        numpy.concatenate([objective, none]), constraints=constraints, integrality=numpy.ones(2 * n),
        bounds=Bounds(0, numpy.concatenate([limits, numpy.ones(n)])), options={"mip_rel_gap": 0},
    )  # fmt: skip
    assert found.success, found.message
    return [round(count) for count in found.x[:n]]


def test_no_solver_finds_a_cheaper_mix_or_fewer_packs(bid: dict[str, Any], instances: dict[str, Packs]) -> None:
    lines = {line["item"]: line for line in bid["lines"] if line["item"] in instances}
    assert len(lines) == INSTANCES
    mixed = 0
    for item, packs in instances.items():
        line = lines[item]
        counts = [pack["packs"] for pack in line["packs"]]
        costs = [int(of["price"].scaleb(4)) for of in packs]
        # A need within a relative 1e-9 of whole pieces is that many.
        need = ceil(line["need_with_waste"] / (1 + 1e-9))
        assert sum(n * of["pack"] for n, of in zip(counts, packs, strict=True)) >= need
        assert all(n == 0 or n >= of["minimum"] for n, of in zip(counts, packs, strict=True))
        ours = sum(n * price for n, price in zip(counts, costs, strict=True))
        theirs = sum(n * price for n, price in zip(solved(packs, need, costs), costs, strict=True))
        assert ours == theirs, item
        assert sum(counts) == sum(solved(packs, need, costs, ours)), item
        mixed += sum(n > 0 for n in counts) > 1
    assert mixed > INSTANCES / 5, f"only {mixed} mixes of several packs"


def cents(amount: Decimal) -> Decimal:
    """Half away from zero, as amounts here are not below it."""
    return amount.quantize(Decimal("0.01"), ROUND_HALF_UP)


def check_totals(bid: dict[str, Any]) -> None:
    """Labour, and the way from the lines to the price."""
    labour = Decimal(0)
    for line in bid["labour"]:
        if line["cost"] is not None:
            minutes = line["count"] * Decimal(str(line["minutes_each"]))
            cost = cents(minutes * Decimal(bid["labour_rate_per_hour"]) / 60)
            assert Decimal(line["cost"]) == cost
            labour += cost
    totals = {name: Decimal(str(value)) for name, value in bid["totals"].items()}
    materials = sum((Decimal(line["cost"]) for line in bid["lines"]), Decimal(0))
    tax = cents(materials * totals["tax_share"])
    direct = materials + tax + labour
    contingency = cents(direct * totals["contingency_share"])
    markup = cents((direct + contingency) * totals["markup_share"])
    expected = {
        "materials": materials, "tax": tax, "labour": labour, "direct_cost": direct,
        "contingency": contingency, "markup": markup, "price": direct + contingency + markup,
    }  # fmt: skip
    assert {name: totals[name] for name in expected} == expected


def test_every_sum_is_that_of_pythons_decimals(bid: dict[str, Any]) -> None:
    halves = 0
    for line in bid["lines"]:
        exact = [pack["packs"] * Decimal(pack["unit_price"]) for pack in line["packs"]]
        assert [Decimal(pack["cost"]) for pack in line["packs"]] == [cents(amount) for amount in exact]
        assert Decimal(line["cost"]) == sum(map(cents, exact))
        halves += sum(amount * 100 % 1 == Decimal("0.5") for amount in exact)
    assert halves > 5, f"only {halves} halves of a cent"
    check_totals(bid)


def test_the_demo_adds_up(tmp_path: Path) -> None:
    path = ROOT / "fixtures/plain-gable/job.json"
    subprocess.run([COMMAND, "takeoff", path, "--out", tmp_path], check=True, capture_output=True)
    check_totals(json.loads((tmp_path / "takeoff.json").read_text("utf-8"))["bid"])
