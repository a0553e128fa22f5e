"""The cuts of 100 000 posts as one would write them today: every tile a Shapely box, an STRtree over the
boxes, vectorised intersection. The same field and posts as `benches/benches/cuts.rs`.

    .venv/bin/python benches/python/shapely_cuts.py
"""

from __future__ import annotations

import time

import numpy as np
import shapely

INCH = 25.4
COURSES = COLUMNS = 1000
POSTS = 100_000
LENGTH, WIDTH, COVER, EXPOSURE = 16.5 * INCH, 13 * INCH, 12 * INCH, 13.25 * INCH
RADIUS = 1.0 * INCH


def tiles() -> np.ndarray:
    """Footprints: half bond, left side laps under the neighbour."""
    course, column = np.divmod(np.arange(COURSES * COLUMNS), COLUMNS)
    joint = column * COVER + (course % 2) * COVER / 2
    nose = course * EXPOSURE
    return shapely.box(joint - (WIDTH - COVER), nose, joint + COVER, nose + LENGTH)


def posts() -> np.ndarray:
    """Points spread over the field by a lattice of whole nanometres, a tile away from its edges."""
    number = np.arange(POSTS, dtype=np.int64)
    width, height = round((COLUMNS - 4) * COVER * 1e6), round((COURSES - 4) * EXPOSURE * 1e6)
    u = 2 * COVER + (number * 7_919_000_003 % width) / 1e6
    v = 2 * EXPOSURE + (number * 10_472_900_081 % height) / 1e6
    return shapely.points(u, v)


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
