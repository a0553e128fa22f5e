"""The cuts of 50 000 posts as one would write them today: every tile a Shapely box, an STRtree over the
boxes, vectorised intersection. The same field and the same posts as in `benches/benches/cuts.rs`.

    .venv/bin/python benches/python/shapely_cuts.py
"""

from __future__ import annotations

import time

import numpy as np
import shapely

INCH = 25.4
COURSES = COLUMNS = 1000
POSTS = 50_000
LENGTH, WIDTH, COVER, EXPOSURE = 16.5 * INCH, 13 * INCH, 12 * INCH, 13.25 * INCH
RADIUS = 1.0 * INCH


def tiles() -> np.ndarray:
    """Footprints: half bond, left side laps under the neighbour."""
    course, column = np.divmod(np.arange(COURSES * COLUMNS), COLUMNS)
    joint = column * COVER + (course % 2) * COVER / 2
    nose = course * EXPOSURE
    return shapely.box(joint - (WIDTH - COVER), nose, joint + COVER, nose + LENGTH)


def posts() -> np.ndarray:
    """The points that `gable` in `benches/src/lib.rs` spreads over the field, by SplitMix64."""
    golden = np.uint64(0x9E37_79B9_7F4A_7C15)
    z = golden * np.arange(2, 2 * POSTS + 2, dtype=np.uint64)
    z = (z ^ (z >> np.uint64(30))) * np.uint64(0xBF58_476D_1CE4_E5B9)
    z = (z ^ (z >> np.uint64(27))) * np.uint64(0x94D0_49BB_1331_11EB)
    z ^= z >> np.uint64(31)
    width, height = COLUMNS * 12_000, COURSES * 13_250
    u = 12_000 + z[0::2] % np.uint64(width - 24_000)
    v = 14_000 + z[1::2] % np.uint64(height - 28_000)
    return shapely.points(u / 1000 * INCH, v / 1000 * INCH)


def main() -> None:
    begun = time.perf_counter()
    boxes = tiles()
    tree = shapely.STRtree(boxes)
    built = time.perf_counter()
    openings = shapely.buffer(posts(), RADIUS, quad_segs=16)
    post, tile = tree.query(openings, predicate="intersects")
    area = shapely.area(shapely.intersection(openings[post], boxes[tile]))
    cut = area > 0
    done = time.perf_counter()
    print(f"{COURSES * COLUMNS} tiles, {POSTS} posts, {cut.sum()} cuts, {area.sum():.6e} mm2")
    print(f"tree {built - begun:.2f} s, cuts {done - built:.2f} s: {POSTS / (done - built):,.0f} posts/s")


if __name__ == "__main__":
    main()
