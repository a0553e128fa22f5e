"""Tables, as pyarrow, pandas and polars take them."""

from __future__ import annotations

import pandas
import polars
import pyarrow
import pytest
import tilepost

TABLES = ["materials", "posts", "cuts", "tiles", "patches", "spares", "screening", "bid", "labour"]


@pytest.mark.parametrize("name", TABLES)
def test_three_libraries_read_the_same(job: tilepost.Job, name: str) -> None:
    table = getattr(job.takeoff(), name)
    arrow = pyarrow.table(table)
    assert arrow.column_names == table.column_names
    assert arrow.num_rows == table.num_rows == len(table)
    assert polars.DataFrame(table).rows() == [tuple(row.values()) for row in arrow.to_pylist()]
    pandas.testing.assert_frame_equal(pandas.DataFrame.from_arrow(table), arrow.to_pandas())


def test_a_table_outlives_its_takeoff(gable: tilepost.Job) -> None:
    rows = pyarrow.table(gable.takeoff().posts).to_pylist()
    assert [row["post"] for row in rows] == [row["post"] for row in pyarrow.table(gable.takeoff().posts).to_pylist()]
    assert rows[0]["post"] == "A1"
