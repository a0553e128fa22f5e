"""The command's CSV files, as the standard library and pandas read them."""

from __future__ import annotations

import csv
import json
import subprocess
from decimal import Decimal
from pathlib import Path
from typing import Any

import pandas
import pytest
from conftest import ROOT

COMMAND = ROOT / "target/release/tilepost"
TABLES = ["materials", "posts", "cuts", "tiles", "patches", "spares"]
PLAN_TABLES = ["cutting"]
BID_TABLES = ["bid", "labour"]


@pytest.fixture
def written(job_path: Path, tmp_path: Path) -> Path:
    """The folder that a takeoff was written to."""
    subprocess.run([COMMAND, "takeoff", job_path, "--out", tmp_path], check=True, capture_output=True)
    return tmp_path


@pytest.mark.parametrize("engine", ["c", "python", "pyarrow"])
def test_pandas_reads_the_same_numbers(written: Path, engine: str) -> None:
    compared = 0
    there = [name for name in BID_TABLES if (written / f"{name}.csv").exists()]
    for name in TABLES + PLAN_TABLES + there:
        path = written / f"{name}.csv"
        with path.open(newline="", encoding="utf-8") as file:
            rows = list(csv.DictReader(file))
        frame = pandas.read_csv(path, engine=engine)
        assert len(frame) == len(rows)
        for column in frame.select_dtypes("number"):
            for value, row in zip(frame[column], rows, strict=True):
                assert value == float(row[column]) if row[column] else pandas.isna(value)
                compared += 1
    assert compared > 100


# What a column shows, where it is not called as in the document: the way to it.
POSTS = {
    "post": "name", "east_mm": "world_mm 0", "north_mm": "world_mm 1", "up_mm": "world_mm 2",
    "opening_half_width_mm": "opening half_width_mm", "opening_half_height_mm": "opening half_height_mm",
    "least_clearance_mm": "opening least_clearance_mm", "margin_left_mm": "margin left_mm", "margin_right_mm": "margin right_mm",
    "margin_down_mm": "margin down_mm", "margin_up_mm": "margin up_mm", "nearest_up_mm": "nearest up_mm",
    "nearest_v_mm": "nearest v_mm", "deck_method": "deck method", "lap_line_mm": "deck lap_line_mm",
    "cut_around_cone": "deck cut_around_cone", "patch": "deck patch", "top_course": "top course",
    "top_trimmed_mm": "top trimmed_mm", "top_tuck_mm": "top tuck_mm", "top_side_cover_mm": "top side_cover_mm",
    "top_passes": "top passes", "batten_top_mm": "height batten_mm", "tile_layers": "height layers",
    "tile_top_mm": "height tile_mm", "cone_top_mm": "height cone_mm", "post_top_mm": "height post_mm",
    "free_post_mm": "height free_post_mm", "rafter": "support rafter", "off_rafter_centre_mm": "support off_centre_mm",
    "on_rafter": "support on_rafter", "blocked": "support blocked",
}  # fmt: skip
BOUNDS = {"left_mm": "bounds_mm 0", "lower_mm": "bounds_mm 1", "right_mm": "bounds_mm 2", "upper_mm": "bounds_mm 3"}
FACE = {"face_left_mm": "face_mm 0", "face_nose_mm": "face_mm 1", "face_right_mm": "face_mm 2", "face_top_mm": "face_mm 3"}
WAYS = {"posts": POSTS, "cuts": {}, "tiles": FACE, "patches": {"patch": "name"} | BOUNDS, "materials": {"waste_share": "waste"}}
WAYS["spares"] = {name: f"handled {name}" for name in ["severed", "cut", "removed", "loosened", "walked"]}
WAYS |= {"cutting": {}, "bid": {"waste_share": "waste"}, "labour": {"each_min": "minutes_each", "total_min": "minutes"}}
WAYS["spares"] |= {"expected_tiles": "expected", "chance_short_share": "chance_short"}
WAYS["spares"] |= {"least_cost_spares": "least_cost spares", "cost_ratio_share": "least_cost cost_ratio"}
ACTIONS = {
    "lift": "a tile removed and reset", "loosen": "a tile raised", "harvest": "a tile salvaged from under an array", "cut_hole": "a hole cut",
    "cut_notch": "a notch or a corner notch cut", "make_up": "a tile replaced that can't be cut in one piece", "patch": "a felt patch",
    "three_course": "a flashing in three courses", "block": "a piece of blocking", "batten": "a batten piece reset",
    "set": "a post set",
}  # fmt: skip
# For people: what stands beside it as a number, in words or in the units of the job.
SHOWN = {
    "posts": {"slope", "u", "v", "situation", "tiles_cut", "nearest_v", "nearest_situation"},
    "cuts": {"slope", "from_left", "from_left_developed", "from_nose", "width", "height"},
    "tiles": {"slope", "class"},
    "patches": {"slope", "width", "height"},
    "materials": {"bring_shown", "basis"},
    "spares": {"service_level_share"},
    "cutting": {"start", "edge", "length", "width"},
    "bid": {"basis"},
    "labour": {"action"},
}


def value_at(record: Any, way: str) -> Any:
    """What a way leads to in a record; nothing where a part of it is missing."""
    for step in way.split(" "):
        record = record and record[int(step) if step.isdigit() else step]
    return record


def bid_records(document: dict[str, Any], table: str) -> list[tuple[None, dict[str, Any]]]:
    """The rows that a table of the bid is to have."""
    bid = document["bid"]
    if table == "labour":
        return [(None, line | {"currency": bid["currency"], "rate_per_hour": bid["labour_rate_per_hour"]}) for line in bid["labour"]]
    bought = [line | pack for line in bid["lines"] for pack in line["packs"] if pack["packs"]]
    gaps = dict.fromkeys(["need", "waste", "pack", "pack_shown", "packs", "unit_price", "cost", "vendor_part", "price_line"])
    return [(None, row | {"currency": bid["currency"]}) for row in bought + [gaps | line for line in bid["unpriced"]]]


@pytest.mark.parametrize("table", TABLES + PLAN_TABLES + BID_TABLES)
def test_every_number_is_that_of_the_document(written: Path, table: str) -> None:
    document = json.loads((written / "takeoff.json").read_text(encoding="utf-8"))
    if table in BID_TABLES:
        rate = document["bid"] and (table == "bid" or document["bid"]["labour_rate_per_hour"])
        assert (written / f"{table}.csv").exists() == bool(rate)
        if not rate:
            return
        records = bid_records(document, table)
    elif table in PLAN_TABLES:
        records = [(None, {"underlayment": plan["underlayment"]} | piece) for plan in document["rolls"] for piece in plan["pieces"]]
    elif table in ["materials", "spares"]:
        records = [(None, line) for line in document[table]]
    else:
        records = [(slope["name"], record) for slope in document["slopes"] for record in slope[table]]
    frame = pandas.read_csv(written / f"{table}.csv", dtype=object, keep_default_na=False)
    assert len(frame) == len(records)
    if "slope" in frame:
        assert list(frame["slope"]) == [slope for slope, _ in records]
    for column in frame.columns.difference(SHOWN[table]):
        way = WAYS[table].get(column, column)
        for cell, (_, record) in zip(frame[column], records, strict=True):
            value = value_at(record, way)
            if value is None:
                assert cell == ""
            elif isinstance(value, bool):
                assert cell == str(value).lower()
            elif isinstance(value, list):
                assert cell == "; ".join(value).replace("field_edge", "roof edge")
            elif isinstance(value, str):
                assert cell == value.replace("three_course", "three-course")
            else:
                assert float(cell) == pytest.approx(value, rel=1e-14)
    if table == "spares":
        assert {float(cell) for cell in frame["service_level_share"]} == {document["service_level"]}
    if table == "labour":
        assert list(frame["action"]) == [ACTIONS[line["action"]] for _, line in records]
    if table == "posts":
        assert [int(cell) for cell in frame["tiles_cut"]] == [len(post["cuts"]) for _, post in records]


def test_amounts_of_money_are_read_back_and_add_up(tmp_path: Path) -> None:
    """The amounts of the tables add up to the totals, as pandas reads them and as decimals."""
    job = ROOT / "fixtures/plain-gable/job.json"
    subprocess.run([COMMAND, "takeoff", job, "--out", tmp_path], check=True, capture_output=True)
    totals = json.loads((tmp_path / "takeoff.json").read_text(encoding="utf-8"))["bid"]["totals"]
    for table, total in [("bid", "materials"), ("labour", "labour")]:
        path = tmp_path / f"{table}.csv"
        with path.open(newline="", encoding="utf-8") as file:
            rows = list(csv.DictReader(file))
        assert sum(Decimal(row["cost"]) for row in rows if row["cost"]) == Decimal(totals[total])
        frame = pandas.read_csv(path)
        assert frame["cost"].dtype == float
        assert frame["cost"].sum() == pytest.approx(float(totals[total]), abs=1e-9)
    unpriced = pandas.read_csv(tmp_path / "bid.csv").query("cost.isna()")
    assert list(unpriced["item"]) == ["blocking board"]
    assert unpriced["unit_price"].isna().all() and (unpriced["need_with_waste"] > 0).all()
