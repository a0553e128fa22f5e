"""Cuts against Shapely: the rules of a cut written once more, over the polygons of GEOS.

Only the words of the rules are shared with the core. A circle is made of an ellipse by stretching `v`, so that what an
opening meets is a matter of distances. Removed areas are those of GEOS overlays of polygons inscribed in the ellipse,
whose area is within 7e-7 of its own. A corner of a piece that is not convex is compared by its kind only. Everything is in
whole nanometres, which a float holds exactly.
"""

from __future__ import annotations

import json
import math
import random
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import numpy as np
import shapely
import tilepost
from shapely.geometry import MultiPolygon, Point, Polygon, box
from shapely.geometry.polygon import orient

MM = 1_000_000
NEAR = 100  # nm: closer to a threshold than this, floats can't tell
FAR = 10_000 * MM
SIDES = 3072
ANGLES = np.linspace(0.0, 2.0 * np.pi, SIDES, endpoint=False)
JOBS = 21


@dataclass(frozen=True)
class Strip:
    """One kind of tile: from its joint to its left and right side, and what the cut list calls it."""

    piece: str
    left: int
    right: int


@dataclass(frozen=True)
class Roof:
    """What the rules need to know of a slope."""

    field: Polygon  # prepared
    noses: list[int]
    length: int
    cover: int
    first_joint: int
    offsets: list[int]
    strips: list[Strip]
    web: int


@dataclass(frozen=True)
class Opening:
    """An ellipse in a slope."""

    u: int
    v: int
    a: int
    b: int

    def polygon(self) -> Polygon:
        """An inscribed polygon."""
        return Polygon(self.points(ANGLES))

    def points(self, angles: np.ndarray) -> np.ndarray:
        return np.column_stack([self.u + self.a * np.cos(angles), self.v + self.b * np.sin(angles)])

    def swept(self, first: np.ndarray, last: np.ndarray) -> Polygon:
        """What it sweeps on its way along all directions from `first` to `last`, counterclockwise from one to the other."""
        # Left as it is is the arc whose outward normals point backward as seen along both.
        start, end = (math.atan2(along[1] / self.b, along[0] / self.a) for along in (last, first))
        start, end = start + math.pi / 2, end + 3 * math.pi / 2
        end += math.tau * round((start - end + math.pi / 2) / math.tau)
        arc = self.points(np.linspace(start, end, SIDES // 2))
        far = [arc[-1] + FAR * first, arc[-1] + FAR * (first + last), arc[0] + FAR * (first + last), arc[0] + FAR * last]
        return Polygon(np.vstack([arc, far]))

    def distance(self, p: tuple[float, float], q: tuple[float, float], grown: int) -> float:
        """How far an edge is from the grown opening, `v` stretched so that it is a circle; negative where they meet."""
        a, stretch = self.a + grown, (self.a + grown) / (self.b + grown)
        x, y = p[0] - self.u, (p[1] - self.v) * stretch
        dx, dy = q[0] - p[0], (q[1] - p[1]) * stretch
        along = min(max(-(x * dx + y * dy) / (dx * dx + dy * dy), 0.0), 1.0)
        return math.hypot(x + along * dx, y + along * dy) - a


class TooNear(Exception):
    """Floats can't tell which side of a threshold this post is on."""


def half_away(x: Fraction | float) -> int:
    """The nearest whole number, halves away from zero."""
    return int(math.copysign(math.floor(abs(x) + Fraction(1, 2)), x))


def corners(ring: Any) -> list[tuple[float, float]]:
    """A ring's vertices, in whole nanometres, without those on a straight run."""
    points = [(float(round(x)), float(round(y))) for x, y in ring.coords[:-1]]
    points = [p for i, p in enumerate(points) if p != points[i - 1]]
    for _ in range(2):
        points = [p for i, p in enumerate(points) if bends(points[i - 1], p, points[(i + 1) % len(points)])]
    return points


def bends(p: tuple[float, float], q: tuple[float, float], r: tuple[float, float]) -> bool:
    """Whether `q` is more than 3 nm off the line from `p` to `r`."""
    (x, y), (dx, dy) = (q[0] - p[0], q[1] - p[1]), (r[0] - p[0], r[1] - p[1])
    return abs(x * dy - y * dx) > 3 * math.hypot(dx, dy)


def pieces(roof: Roof, footprint: Polygon) -> list[Polygon]:
    """What the field leaves of a footprint, each piece counterclockwise."""
    if shapely.contains_properly(roof.field, footprint):
        return [footprint]
    clipped = footprint.intersection(roof.field)
    parts = clipped.geoms if hasattr(clipped, "geoms") else [clipped]
    return [orient(part) for part in parts if isinstance(part, Polygon) and part.area > 0]


def shadow(shape: Any, along: np.ndarray) -> Any:
    """What lies behind a shape when it is lit along a direction."""
    polygons = [g for g in getattr(shape, "geoms", [shape]) if isinstance(g, Polygon) and g.area > 0]
    rings = [np.asarray(ring.coords) for polygon in polygons for ring in [polygon.exterior, *polygon.interiors]]
    if not rings:
        return MultiPolygon()
    p, q = np.vstack([ring[:-1] for ring in rings]), np.vstack([ring[1:] for ring in rings])
    slant = np.abs((q - p) @ np.array([-along[1], along[0]])) > 1e-3
    p, q = p[slant], q[slant]
    bands = shapely.polygons(np.stack([p, q, q + FAR * along, p + FAR * along], axis=1))
    return shapely.union_all([*polygons, *bands])


def judge(roof: Roof, opening: Opening, piece: Polygon) -> tuple[str, float | tuple[Polygon, Polygon] | None] | None:
    """How an opening cuts a piece of tile, and the area removed, or two shapes of which it is what they share."""
    edges: list[tuple[Any, Any, bool]] = []
    rings = [corners(piece.exterior), *map(corners, piece.interiors)]
    turns: list[float] = []
    for ring in rings:
        for i, q in enumerate(ring):
            p, r = ring[i - 1], ring[(i + 1) % len(ring)]
            turns.append((q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]))
            edges.append((p, q, turns[-1] > 0))
    reach = min(opening.distance(p, q, 0) for p, q, _ in edges)
    if abs(reach) < NEAR:
        raise TooNear
    if reach > 0 and not piece.contains(Point(opening.u, opening.v)):
        return None
    if piece.area < 10_000 * NEAR**2 or any(math.dist(p, q) < 10 * NEAR for p, q, _ in edges):
        raise TooNear
    if all(((x - opening.u) / opening.a) ** 2 + ((y - opening.v) / opening.b) ** 2 < 1 for p, _, _ in edges for x, y in [p]):
        return None
    breached = []
    for p, q, convex in edges:
        reach = opening.distance(p, q, roof.web)
        if abs(reach) < NEAR:
            raise TooNear
        if reach < 0:
            breached.append((p, q, convex))
    if not breached:
        return "hole", math.pi * opening.a * opening.b
    normals = [np.array([q[1] - p[1], p[0] - q[0]]) / math.dist(p, q) for p, q, _ in breached]
    whole = all(turn > 0 for turn in turns)
    if len(breached) == 1:
        swept = opening.swept(normals[0], normals[0])
        if whole:
            return "notch", (swept, piece)
        disc, along = opening.polygon(), normals[0]
        beyond = swept.difference(disc)
        lit = beyond.intersection(piece).difference(shadow(beyond.difference(piece), along))
        return "notch", disc.intersection(piece).area + lit.area
    if len(breached) == 2:
        (p0, q0, c0), (p1, q1, c1) = breached
        if (q0 == p1 and c0) or (q1 == p0 and c1):
            # The boundary runs counterclockwise, and so do the normals at a convex corner.
            first, last = normals if q0 == p1 else normals[::-1]
            return "corner", (opening.swept(first, last), piece) if whole else None
    return "severed", (opening.polygon(), piece)


def cuts(roof: Roof, opening: Opening) -> list[tuple[int, str, str, float | tuple[Polygon, Polygon] | None]]:
    """Every cut of an opening: course, piece, kind, area."""
    found = []
    for k, nose in enumerate(roof.noses):
        if nose > opening.v + opening.b + NEAR or nose + roof.length < opening.v - opening.b - NEAR:
            continue
        joint = roof.first_joint + roof.offsets[k % len(roof.offsets)]
        for strip in roof.strips:
            first = (opening.u - opening.a - joint - strip.right) // roof.cover
            last = (opening.u + opening.a - joint - strip.left) // roof.cover + 1
            for j in range(first, last + 1):
                x = joint + j * roof.cover
                if max(x + strip.left - opening.u, opening.u - x - strip.right) > opening.a + NEAR:
                    continue
                for piece in pieces(roof, box(x + strip.left, nose, x + strip.right, nose + roof.length)):
                    cut = judge(roof, opening, piece)
                    if cut:
                        found.append((k + 1, strip.piece, *cut))
    return sorted(found, key=lambda cut: cut[:3])


def text(nm: int) -> str:
    """A length as a job file has it."""
    sign, (whole, rest) = "-" if nm < 0 else "", divmod(abs(nm), MM)
    return f"{sign}{whole}.{rest:06d} mm"


def draw(seed: int) -> tuple[dict[str, Any], Roof, dict[str, Opening]]:
    """A random job, and the same said over in the terms of the rules."""
    rng = random.Random(seed)
    between = lambda low, high: rng.randrange(low * MM, high * MM, 2)  # noqa: E731
    pan_cover, double = seed % 4 == 3, seed % 4 == 2
    length, cover, web = between(280, 450), between(150, 330), between(5, 35)
    lap = 0 if seed % 5 == 0 else between(5, 40)
    exposure = length // 2 - between(25, 40) if double else length - between(60, 110)
    side = rng.choice(["left", "right"])
    tile: dict[str, Any] = {
        "length": text(length), "cover": text(cover), "least_head_lap": "40 mm",
        "thickness": "16 mm", "weight": "3 kg", "held": "hung",
    }  # fmt: skip
    if pan_cover:
        pan, top = cover // 2 * 2 - between(10, 40), between(90, 140)
        tile["pan_and_cover"] = {"pan_width": text(pan), "cover_width": text(top)}
        middle = cover // 2
        strips = [Strip("t, pan", middle - pan // 2, middle + pan // 2), Strip("t, cover", -top // 2, top // 2)]
    else:
        tile |= {"width": text(cover + lap), "lap_side": side}
        strips = [Strip("t", -lap, cover) if side == "left" else Strip("t", 0, cover + lap)]
    if double:
        tile["laps"] = "double"

    wide, high = between(9_000, 10_500), between(7_500, 9_000)
    left, right = rng.choice([(0, 0), (between(500, 4_000), 0), (0, between(500, 4_000))]), between(-2_000, 2_000)
    outline = [(left[0], 0), (wide, 0), (wide + right, high), (left[1], high)]
    x, y, w, h = between(4_000, 5_500), between(2_000, 5_000), between(300, 900), between(300, 900)
    hole = [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]
    overhang = between(0, 60)
    foot = lambda low, top: (half_away(low - Fraction(top - low, high) * overhang), -overhang)  # noqa: E731
    field = Polygon([foot(left[0], left[1]), foot(wide, wide + right), *outline[2:]], [hole])
    shapely.prepare(field)
    noses = list(range(-overhang, high, exposure))

    bond, offsets = rng.choice(
        [("straight", [0]), ("half", [0, half_away(Fraction(cover, 2))]),
         (["0", "1/3", "2/3"], [half_away(cover * Fraction(i, 3)) for i in range(3)])]
    )  # fmt: skip
    first_joint = between(-200, 200)
    rise, plumb = rng.choice([3, 5, 8, 12]), seed % 2 == 1
    radius, clearance, surface = between(15, 32), between(3, 12), between(20, 60)
    rho, tan = radius + clearance, rise / 12
    b = half_away(rho * math.hypot(1, tan) + 16 * MM * tan) if plumb else rho
    lift = half_away(surface * tan) if plumb else 0
    assembly: dict[str, Any] = {
        "post_diameter": text(2 * radius), "clearance": text(clearance), "axis": "plumb" if plumb else "normal",
        "post_height": "300 mm",
        "deck_flashing": {
            "width": "200 mm", "down": "80 mm", "up": "100 mm", "cone_diameter": text(2 * radius), "cone_height": "90 mm"
        },
        "top_flashing": {"width": "300 mm", "down": "100 mm", "up": "200 mm"},
    }  # fmt: skip
    if plumb:
        assembly["lap_surface_height"] = text(surface)

    inside = Polygon(outline, [hole])
    posts, openings = [], {}
    step = 2 * (b + web) // MM + 30
    for row in range(100, high // MM, step):
        for column in range(0, 14_000, step):
            u, v = column * MM + rng.randrange(-12 * MM, 12 * MM), row * MM + rng.randrange(-12 * MM, 12 * MM)
            if len(posts) < 1_000 and inside.contains(Point(u, v)):
                name = f"P{len(posts)}"
                posts.append({"name": name, "assembly": "a", "u": text(u), "v": text(v)})
                openings[name] = Opening(u, v + lift, rho, b)
    point = lambda p: [text(p[0]), text(p[1])]  # noqa: E731
    job = {
        "format": "tilepost-job/1", "name": f"draw {seed}", "display": "metric", "tiles": {"t": tile},
        "underlayments": {"felt": {"sheet_width": "1 m", "head_lap": "100 mm", "roll_length": "20 m"}},
        "assemblies": {"a": assembly},
        "slopes": [{
            "name": "s", "pitch": f"{rise}:12", "outline": [point(p) for p in outline],
            "edges": ["eave", "hip" if right < 0 else "valley", "ridge", "valley"],
            "holes": [{"name": "chimney", "outline": [point(p) for p in hole]}], "tile": "t",
            "courses": {"first_nose": text(-overhang), "exposure": text(exposure)},
            "columns": {"first_joint": text(first_joint), "bond": bond},
            "underlayment": {"kind": "felt", "first_lap_line": "900 mm"},
            "rafters": {"first": "0 mm", "spacing": "600 mm", "width": "50 mm"}, "posts": posts,
        }],
        "practice": {"least_web": text(web)},
    }  # fmt: skip
    return job, Roof(field, noses, length, cover, first_joint, offsets, strips, web), openings


def measured(expected: list[list[tuple[Any, ...]]]) -> list[list[tuple[Any, ...]]]:
    """Cuts with the areas of what two shapes share in place of these, in mm²."""
    shared = [cut[3] for cuts in expected for cut in cuts if isinstance(cut[3], tuple)]
    areas = iter(shapely.area(shapely.intersection(*zip(*shared, strict=True))) / MM**2 if shared else [])
    in_mm2 = lambda area: next(areas) if isinstance(area, tuple) else area and area / MM**2  # noqa: E731
    return [[(*cut[:3], in_mm2(cut[3])) for cut in cuts] for cuts in expected]


def test_random_posts_in_random_fields() -> None:
    seen: Counter[str] = Counter()
    for seed in range(JOBS):
        document, roof, openings = draw(seed)
        takeoff = json.loads(tilepost.Job.from_dict(document).takeoff().to_json())
        core: dict[str, list[tuple[int, str, str, float]]] = {name: [] for name in openings}
        for cut in takeoff["slopes"][0]["cuts"]:
            (post,) = cut["posts"]
            core[post].append((cut["course"], cut["piece"], cut["kind"], cut["area_mm2"]))
        judged = {}
        for name, opening in openings.items():
            try:
                judged[name] = cuts(roof, opening)
            except TooNear:
                seen["skipped"] += 1
        for name, expected in zip(judged, measured(list(judged.values())), strict=True):
            seen["posts"] += 1
            found, opening = sorted(core[name]), openings[name]
            where = f"seed {seed}, post {name}, {opening}: {found} instead of {expected}"
            assert [cut[:3] for cut in found] == [cut[:3] for cut in expected], where
            whole = math.pi * opening.a * opening.b / MM**2
            for *which, wanted in expected:
                seen[which[2]] += 1
                if wanted is None:
                    seen["kind only"] += 1
                    continue
                alike = [cut for cut in found if list(cut[:3]) == which]
                nearest = min(alike, key=lambda cut: abs(cut[3] - wanted))
                assert abs(nearest[3] - wanted) < 1e-6 * whole, where
                found.remove(nearest)
    print(dict(seen))
    assert seen["posts"] >= 20_000
    assert seen["skipped"] < 0.01 * seen["posts"]
    assert seen["kind only"] < 0.01 * seen["corner"]
    for kind in ["hole", "notch", "corner", "severed"]:
        assert seen[kind] > 200, f"too few of kind {kind}"
