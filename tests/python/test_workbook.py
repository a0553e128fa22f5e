"""The workbook against a spreadsheet program: LibreOffice calculates it anew, openpyxl reads and changes it."""

from __future__ import annotations

import csv
import io
import json
import math
import random
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import openpyxl
import pytest
import tilepost
from conftest import JOBS, ROOT
from openpyxl.workbook import Workbook
from spreadsheet import calculated, changed, formulas, named
from test_command import command

PRICES = (ROOT / "fixtures/plain-gable/prices.csv").read_text("utf-8")
Edit = Callable[[dict[str, Any]], None]


def written(takeoff: tilepost.Takeoff, path: Path) -> Path:
    """The workbook of a takeoff as a file."""
    takeoff.to_xlsx(path)
    return path


def gable_with(edit: Edit, prices: str = PRICES) -> tilepost.Takeoff:
    """The takeoff of the plain gable with its job file edited, and with a price list."""
    document = json.loads((ROOT / "fixtures/plain-gable/job.json").read_text("utf-8"))
    edit(document)
    return tilepost.Job.from_text(json.dumps(document), {"prices.csv": prices}).takeoff()


def alike(one: Any, other: Any) -> bool:
    """Whether two results are the same: numbers to the last digits of a sum."""
    if isinstance(one, int | float) and isinstance(other, int | float):
        return math.isclose(one, other, rel_tol=1e-12, abs_tol=1e-12)
    return bool(one == other)


def differences(stored: dict[tuple[str, str], Any], book: Workbook) -> dict[tuple[str, str], tuple[Any, Any]]:
    """Where the results of formulas are not those of a calculated workbook."""
    results = {place: (result, book[place[0]][place[1]].value) for place, result in stored.items()}
    return {place: pair for place, pair in results.items() if not alike(*pair)}


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Path, Workbook]]:
    """The workbook of each fixture, and what LibreOffice makes of it."""
    folder = tmp_path_factory.mktemp("fixtures")
    paths = [written(tilepost.Job.from_file(job).takeoff(), folder / f"{job.parent.name}.xlsx") for job in JOBS]
    return {path.stem: (path, book) for path, book in zip(paths, calculated(paths, folder), strict=True)}


@pytest.mark.parametrize("fixture", [job.parent.name for job in JOBS])
def test_every_stored_result_is_the_calculated_one(fixture: str, books: dict[str, tuple[Path, Workbook]]) -> None:
    path, book = books[fixture]
    stored = formulas(path)
    assert len(stored) > 10
    assert all(result is not None for result in stored.values())
    assert differences(stored, book) == {}


def test_the_price_is_that_of_the_takeoff(books: dict[str, tuple[Path, Workbook]]) -> None:
    _, book = books["plain-gable"]
    bid = json.loads(tilepost.Job.from_file(ROOT / "fixtures/plain-gable/job.json").takeoff().to_json())["bid"]
    for name in ("tax_amount", "direct_cost", "contingency_amount", "markup_amount", "price"):
        assert named(book, name).value == float(bid["totals"][name.removesuffix("_amount")]), name
    assert named(book, "materials_total").value == float(bid["totals"]["materials"])
    assert named(book, "labour_total").value == float(bid["totals"]["labour"])


def test_items_named_like_generated_lines_lead_to_the_right_rows(tmp_path: Path) -> None:
    """Saw blades and staples that an assembly brings are in the one line of that name, and so is the order."""

    def edit(job: dict[str, Any]) -> None:
        job["practice"]["blade_life"] = "25 m"
        items = [{"item": item, "count": 1} for item in ("saw blade", "staple", "fastener for flat-13")]
        job["assemblies"]["post-7"]["items"].extend(items)

    takeoff = gable_with(edit)
    path = written(takeoff, tmp_path / "items.xlsx")
    (book,) = calculated([path], tmp_path)
    assert differences(formulas(path), book) == {}
    assert named(book, "price").value == float(json.loads(takeoff.to_json())["bid"]["totals"]["price"])


# A change of inputs in the workbook, and the same change of the job.
CHANGES: dict[str, tuple[dict[str, Any], Edit, str]] = {
    "a price": (
        {"price_staple": 6.1275},
        lambda job: None,
        PRICES.replace("staple,each,1000,4.85", "staple,each,1000,6.1275"),
    ),
    "prices that turn the mix of two packs": (
        {"price_lag_5_16_x_3_1_2_in_1": 0.5, "price_sealant_2": 31.0},
        lambda job: None,
        PRICES.replace("in,each,1,0.94", "in,each,1,0.50").replace("28,17.90", "28,31.00"),
    ),
    "waste": (
        {"waste_staple": 6.5, "waste_sealant": 0.5},
        lambda job: job["practice"].update(sealant_waste=0.5) or job["practice"]["waste"].update({"staple": 6.5}),
        PRICES,
    ),
    "waste of a line that has packs and a quantity": (
        {"waste_felt_30_patches": 9.0},
        lambda job: job["practice"]["waste"].update({"felt-30, patches": 9.0}),
        PRICES,
    ),
    "a higher service level": (
        {"service_level": 0.9995},
        lambda job: job["practice"].update(service_level=0.9995),
        PRICES,
    ),
    "a lower service level": (
        {"service_level": 0.3},
        lambda job: job["practice"].update(service_level=0.3),
        PRICES,
    ),
    "markup, contingency and tax": (
        {"markup": 0.225, "contingency": 0.0, "tax": 0.0875},
        lambda job: job["bid"].update(markup=0.225, contingency=0.0, tax=0.0875),
        PRICES,
    ),
    "rate and minutes": (
        {"labour_rate": 71.35, "minutes_cut_hole": 4.75},
        lambda job: job["bid"]["labour"].update(rate_per_hour="71.35")
        or job["bid"]["labour"]["minutes"].update(cut_hole=4.75),
        PRICES,
    ),
    "tiles on hand": (
        {"on_hand_flat_13": 3},
        lambda job: job["tiles"]["flat-13"].update(on_hand=3),
        PRICES,
    ),
}


@pytest.fixture(scope="module")
def after_changes(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Workbook]:
    """The plain gable's workbook after each change, calculated anew."""
    folder = tmp_path_factory.mktemp("changes")
    plain = written(gable_with(lambda job: None), folder / "plain.xlsx")
    paths = [
        changed(plain, inputs, folder / f"{number}.xlsx") for number, (inputs, _, _) in enumerate(CHANGES.values())
    ]
    return dict(zip(CHANGES, calculated(paths, folder), strict=True))


@pytest.mark.parametrize("change", CHANGES)
def test_a_change_gives_what_the_changed_job_gives(
    change: str, after_changes: dict[str, Workbook], tmp_path: Path
) -> None:
    _, edit, prices = CHANGES[change]
    unchanged = formulas(written(gable_with(lambda job: None), tmp_path / "plain.xlsx"))
    stored = formulas(written(gable_with(edit, prices), tmp_path / "changed.xlsx"))
    assert stored != unchanged, "the change changes nothing"
    assert differences(stored, after_changes[change]) == {}


def price_list(rows: list[tuple[str, int, float, int]]) -> str:
    """A price list of items by the piece: item, pack, price, least order."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(["item", "unit", "pack", "price", "currency", "minimum_order"])
    writer.writerows([item, "each", pack, f"{price:.2f}", "USD", least] for item, pack, price, least in rows)
    return text.getvalue()


def test_mixes_of_two_packs_are_those_of_the_takeoff(tmp_path: Path) -> None:
    """150 items in two packs each, at prices near the same a piece; then the same at other prices."""
    die = random.Random(20)
    items = {f"part {n}": die.randint(1, 40) for n in range(150)}

    def parts(job: dict[str, Any]) -> None:
        job["assemblies"]["post-7"]["items"] = [{"item": item, "count": count} for item, count in items.items()]

    def offers() -> list[tuple[str, int, float, int]]:
        return [
            (item, pack, round(pack * die.uniform(0.9, 1.1), die.choice([0, 1, 2])) + 0.01, least)
            for item, (one, other) in packs.items()
            for pack, least in (one, other)
        ]

    packs = {
        item: [(size, die.choice([1, 1, 1, 2, 5])) for size in die.sample(range(1, 60), 2)] for item in items
    }
    before, after = offers(), offers()
    first = written(gable_with(parts, price_list(before)), tmp_path / "before.xlsx")
    last = written(gable_with(parts, price_list(after)), tmp_path / "after.xlsx")
    key = [f"price_{item.replace(' ', '_')}_{n}" for item in items for n in (1, 2)]
    turned = changed(first, {name: price for name, (_, _, price, _) in zip(key, after, strict=True)}, tmp_path / "turned.xlsx")
    calculated_first, calculated_turned = calculated([first, turned], tmp_path)
    assert differences(formulas(first), calculated_first) == {}
    stored = formulas(last)
    assert differences(stored, calculated_turned) == {}
    mixes = sum(stored[place] != result for place, result in formulas(first).items() if place[1].startswith("I"))
    assert mixes > 50, f"only {mixes} numbers of packs changed"


def test_three_packs_are_those_of_the_takeoff_and_it_says_when_they_fall_short(tmp_path: Path) -> None:
    prices = PRICES + "".join(f"storm collar,each,{pack},{price},USD,,\n" for pack, price in [(5, 28.0), (12, 61.0)])
    plain = written(gable_with(lambda job: None, prices), tmp_path / "plain.xlsx")
    assert differences(formulas(plain), calculated([plain], tmp_path)[0]) == {}
    more = changed(plain, {"waste_storm_collar": 2.0}, tmp_path / "more.xlsx")
    (book,) = calculated([more], tmp_path)
    checks = {row[0].value: row[10].value for row in book["order"].iter_rows(min_row=4) if row[10].value}
    assert checks.pop("storm collar") == "SHORT OF THE NEED"
    assert set(checks.values()) == {"covers the need"}


def test_words_that_look_like_formulas_stay_words(tmp_path: Path) -> None:
    def hostile(job: dict[str, Any]) -> None:
        job["name"] = '=HYPERLINK("http://example.com","x")'
        job["slopes"][0]["name"] = "=1+1"
        job["slopes"][0]["posts"][0]["name"] = "@SUM(A1)"

    path = written(gable_with(hostile), tmp_path / "bid.xlsx")
    (book,) = calculated([path], tmp_path)
    for opened in (openpyxl.load_workbook(path), book):
        assert opened["summary"]["A1"].value == '=HYPERLINK("http://example.com","x")'
        assert opened["summary"]["A1"].data_type == "s"
        slope, post = opened["posts"]["A4"], opened["posts"]["B4"]
        assert (slope.value, slope.data_type, post.value) == ("=1+1", "s", "@SUM(A1)")


@pytest.mark.parametrize("fixture", [job.parent.name for job in JOBS])
def test_sheets_are_ready_to_print(fixture: str, books: dict[str, tuple[Path, Workbook]]) -> None:
    path, _ = books[fixture]
    metric = json.loads((ROOT / f"fixtures/{fixture}/job.json").read_text("utf-8"))["display"] == "metric"
    book = openpyxl.load_workbook(path)
    wanted = ["summary", "materials", "spares", "order", "labour", "posts", "cuts", "tiles", "assumptions"]
    assert book.sheetnames == wanted
    for sheet in book:
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.page_setup.paperSize == int(sheet.PAPERSIZE_A4 if metric else sheet.PAPERSIZE_LETTER)
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) in {(1, 0), (None, 0)}
        assert sheet.print_area.startswith(f"'{sheet.title}'!$A$1:")
        if sheet.title in {"materials", "spares", "posts", "cuts", "tiles", "assumptions"}:
            assert sheet.freeze_panes == "A4"
            assert sheet.print_title_rows == "$3:$3"


def test_inputs_are_marked(books: dict[str, tuple[Path, Workbook]]) -> None:
    book = openpyxl.load_workbook(books["plain-gable"][0])
    inputs = [
        name
        for name in book.defined_names
        if name.startswith(("price_", "waste_", "minutes_", "on_hand_"))
        or name in {"service_level", "markup", "contingency", "tax", "labour_rate"}
    ]
    assert len(inputs) > 30
    for name in inputs:
        cell = named(book, name)
        if cell.data_type != "f":
            assert cell.fill.start_color.rgb == "FFFFF2CC", name
            assert cell.border.left.style == "thin", name


def test_command_and_package_write_the_same_bytes(job_path: Path, job: tilepost.Job, tmp_path: Path) -> None:
    command("takeoff", job_path, "--out", tmp_path)
    assert (tmp_path / "bid.xlsx").read_bytes() == job.takeoff().xlsx()


def test_no_clock_is_read(gable: tilepost.Job) -> None:
    with zipfile.ZipFile(io.BytesIO(gable.takeoff().xlsx())) as archive:
        assert archive.read("docProps/core.xml").count(b"2000-01-01T00:00:00Z") == 2
        assert {part.date_time for part in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_a_workbook_is_written_whole_or_not_at_all(gable: tilepost.Job, tmp_path: Path) -> None:
    takeoff = gable.takeoff()
    with pytest.raises(OSError, match="nowhere"):
        takeoff.to_xlsx(tmp_path / "nowhere" / "bid.xlsx")
    (tmp_path / "bid.xlsx").mkdir()
    with pytest.raises(OSError):
        takeoff.to_xlsx(tmp_path / "bid.xlsx")
    assert [path.name for path in tmp_path.iterdir()] == ["bid.xlsx"]
