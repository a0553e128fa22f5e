"""Cuts and deck work against the rules written once more, in Python's whole numbers, on rectangular slopes.

Which tiles are cut and how, which flashings are tucked, patched or three-course, which posts share a patch, which tiles come up or are loosened, battens, trim, wood
and tile flashings: each is worked out here from the rules' words alone, over every tile of the field, and compared with the
takeoff one by one. Lengths are whole half-nanometres.
"""

from __future__ import annotations

import json
import math
import random
from collections import Counter
from dataclasses import dataclass, field
from itertools import combinations
from typing import Any, NamedTuple

import pytest
import tilepost

NM, MM = 2, 2_000_000
JOBS = 200


class Rect(NamedTuple):
    left: int
    lower: int
    right: int
    upper: int

    def meets(self, other: Rect) -> bool:
        """Whether interiors meet; touching is not meeting."""
        left, lower, right, upper = other
        return (
            max(self.left, left) < min(self.right, right)
            and max(self.lower, lower) < min(self.upper, upper)
        )

    def within(self, other: Rect) -> Rect:
        return Rect(*(max(pair) for pair in zip(self[:2], other[:2])), *(min(pair) for pair in zip(self[2:], other[2:])))

    def around(self, other: Rect) -> Rect:
        return Rect(*(min(pair) for pair in zip(self[:2], other[:2])), *(max(pair) for pair in zip(self[2:], other[2:])))

    def grown(self, by: int) -> Rect:
        return Rect(self.left - by, self.lower - by, self.right + by, self.upper + by)

    def reaches(self, edge: Rect) -> bool:
        """Whether its interior has a point of a closed edge, which is a rectangle without breadth."""
        return (
            self.left < edge.right and edge.left < self.right
            and self.lower < edge.upper and edge.lower < self.upper
        )  # fmt: skip

    @property
    def edges(self) -> list[Rect]:
        """Left, nose, right and head, each as a rectangle without breadth."""
        left, lower, right, upper = self
        return [
            Rect(left, lower, left, upper), Rect(left, lower, right, lower),
            Rect(right, lower, right, upper), Rect(left, upper, right, upper),
        ]  # fmt: skip


class Ellipse(NamedTuple):
    u: int
    v: int
    a: int
    b: int

    @property
    def bounds(self) -> Rect:
        return Rect(self.u - self.a, self.v - self.b, self.u + self.a, self.v + self.b)

    def grown(self, by: int) -> Ellipse:
        return Ellipse(self.u, self.v, self.a + by, self.b + by)

    def reaches(self, rect: Rect) -> bool:
        """Whether its interior has a point of a closed rectangle."""
        du = max(rect.left - self.u, 0, self.u - rect.right)
        dv = max(rect.lower - self.v, 0, self.v - rect.upper)
        return (du * self.b) ** 2 + (dv * self.a) ** 2 < (self.a * self.b) ** 2

    def holds(self, rect: Rect) -> bool:
        a, b = self.a, self.b
        if rect.right - rect.left > 2 * a or rect.upper - rect.lower > 2 * b:
            return False
        corners = [(u, v) for u in rect[::2] for v in rect[1::2]]
        return all(((u - self.u) * b) ** 2 + ((v - self.v) * a) ** 2 <= (a * b) ** 2 for u, v in corners)


class Tile(NamedTuple):
    course: int
    piece: str
    column: int
    whole: Rect
    rect: Rect
    face: Rect


@dataclass
class Post:
    name: str
    u: int
    v: int
    assembly: dict[str, Any]
    opening: Ellipse
    window: tuple[int, int] = (0, 0)
    method: str = ""
    line: int | None = None
    cone_cut: bool = False
    flashing: Rect = Rect(0, 0, 0, 0)
    patch: Rect | None = None
    bands: list[Rect] = field(default_factory=list)
    zone: Rect = Rect(0, 0, 0, 0)

    @property
    def cone(self) -> Ellipse:
        radius = self.assembly["cone"] // 2
        return Ellipse(self.u, self.v, radius, radius)

    @property
    def deck(self) -> Rect:
        deck = self.flashing
        for over in [self.patch, *self.bands]:
            deck = deck.around(over) if over else deck
        return deck


@dataclass
class Roof:
    """A slope as it was drawn at random, all lengths in half-nanometres."""

    job: dict[str, Any]
    wide: int
    high: int
    overhang: int
    noses: list[int]
    offsets: list[int]
    first_joint: int
    tile: dict[str, Any]
    lines: list[int]
    never_tucked: bool
    sheet: tuple[int, int]
    rafters: list[int]
    rafter_width: int
    batten: tuple[int, int, int] | None
    strip: tuple[int, list[str]]
    practice: dict[str, int]
    coats: int
    posts: list[Post] = field(default_factory=list)

    @property
    def field(self) -> Rect:
        return Rect(0, -self.overhang, self.wide, self.high)

    def tiles(self) -> list[Tile]:
        """Every tile of the field, clipped to it, with its visible face."""
        tiles, t = [], self.tile
        for k, nose in enumerate(self.noses):
            top = self.noses[k + 1] if k + 1 < len(self.noses) else nose + t["length"]
            joint = self.first_joint + self.offsets[k % len(self.offsets)]
            for j in range(-joint // t["cover"] - 2, (self.wide - joint) // t["cover"] + 3):
                x = joint + j * t["cover"]
                for piece, sides, seen in t["parts"]:
                    whole = Rect(x + sides[0], nose, x + sides[1], nose + t["length"])
                    rect = whole.within(self.field)
                    face = Rect(x + seen[0], nose, x + seen[1], top).within(rect)
                    if rect.left < rect.right and rect.lower < rect.upper:
                        tiles.append(Tile(k + 1, piece, j, whole, rect, face))
        return [tile for tile in tiles if not any(post.opening.holds(tile.rect) for post in self.posts)]

    def on_top(self, upper: Tile, lower: Tile) -> bool:
        """Whether a tile lies directly on another."""
        if upper.course < lower.course or not upper.rect.meets(lower.rect):
            return False
        if upper.course != lower.course:
            return True
        if "cover" in upper.piece or "cover" in lower.piece:
            return "cover" in upper.piece and "pan" in lower.piece
        return upper.column - lower.column == {"left": -1, "right": 1}[self.tile["side"]]


SIDES = ["left", "nose", "right", "head"]


class Cut(NamedTuple):
    kind: str
    posts: frozenset[str]
    open_to: frozenset[str]
    shape: Ellipse | Rect

    def area(self, tile: Rect) -> float | None:
        """What is removed, where that is a rectangle or a whole opening."""
        if isinstance(self.shape, Ellipse):
            return math.pi * self.shape.a * self.shape.b if self.kind == "hole" else None
        away = self.shape
        if self.kind in ("notch", "corner"):
            # Out through the breached sides.
            away = Rect(*(edge if side in self.open_to else own for side, edge, own in zip(SIDES, tile, away, strict=True)))
        inside = away.within(tile)
        return (inside.right - inside.left) * (inside.upper - inside.lower)


def judge(tile: Rect, shape: Ellipse | Rect, posts: frozenset[str], web: int) -> Cut:
    breached = [side for side, edge in zip(SIDES, tile.edges, strict=True) if shape.grown(web).reaches(edge)]
    if len(breached) < 2:
        kind = ["hole", "notch"][len(breached)]
    else:
        kind = "corner" if len(breached) == 2 and len({"left", "right"} & {*breached}) == 1 else "severed"
    return Cut(kind, posts, frozenset(breached), shape)


def cuts(tile: Rect, posts: list[Post], web: int) -> list[Cut]:
    """The cuts in a tile; openings nearer than the web are judged as one, the rectangle round both."""
    shapes: list[tuple[Ellipse | Rect, frozenset[str]]] = [(post.opening, frozenset([post.name])) for post in posts]
    bounds = lambda shape: shape.bounds if isinstance(shape, Ellipse) else shape  # noqa: E731
    while True:
        for one, other in combinations(shapes, 2):
            p, q = bounds(one[0]), bounds(other[0])
            if max(p.left - q.right, q.left - p.right) < web and max(p.lower - q.upper, q.lower - p.upper) < web:
                shapes = [shape for shape in shapes if shape not in (one, other)] + [(p.around(q), one[1] | other[1])]
                break
        else:
            return [judge(tile, shape, names, web) for shape, names in shapes]


def text(length: int) -> str:
    """A length of whole nanometres as a job file has it."""
    nm, half = divmod(length, NM)
    assert half == 0
    sign, (whole, rest) = "-" if nm < 0 else "", divmod(abs(nm), 1_000_000)
    return f"{sign}{whole}.{rest:06d} mm"


def round_half_away(x: float) -> int:
    return int(math.copysign(math.floor(abs(x) + 0.5), x))


def draw(seed: int) -> Roof:
    """A random roof with its job file."""
    rng = random.Random(seed)
    mm = lambda low, high: rng.randrange(low, high) * MM + rng.randrange(0, 8) * MM // 8  # noqa: E731
    two_piece, double, held = seed % 4 == 0, seed % 5 == 0, ["nailed", "clipped", "mortar"][seed % 3]
    # Now and then tile so narrow that an opening severs it.
    length, cover = mm(300, 430), mm(90, 120) if seed % 6 == 1 and not two_piece else mm(180, 320)
    lap = 0 if seed % 7 == 0 else mm(10, 40)
    side = rng.choice(["left", "right"])
    tile: dict[str, Any] = {
        "length": text(length), "cover": text(cover), "least_head_lap": text(least := mm(50, 80)), "thickness": "20 mm",
        "held": held, "fasteners_each": 2, "laps": "double" if double else "single",
    }  # fmt: skip
    if two_piece:
        pan, top = cover - mm(10, 40), mm(120, 170)
        tile["pan_and_cover"] = {"pan_width": text(pan), "cover_width": text(top)}
        parts = [
            ("t, pan", ((cover - pan) // 2, (cover + pan) // 2), (top // 2, cover - top // 2)),
            ("t, cover", (-(top // 2), top // 2), (-(top // 2), top // 2)),
        ]
    else:
        tile |= {"width": text(cover + lap), "lap_side": side}
        parts = [("t", (-lap, cover) if side == "left" else (0, cover + lap), (0, cover))]
    exposure = (length - least) // (2 if double else 1) // MM * MM - rng.randrange(0, 20) * MM

    wide, high, overhang = mm(4_000, 6_000), mm(3_000, 4_500), rng.choice([0, mm(10, 60)])
    noses = list(range(-overhang, high, exposure))
    bond, offsets = rng.choice([("straight", [0]), ("half", [0, cover // 2]), (["0", "1/4", "3/4"], [0, cover // 4, 3 * cover // 4])])
    first_joint = mm(-150, 150)

    sheet, head = mm(700, 1_100), mm(50, 120)
    never, regular = rng.choice([False, False, True]), rng.random() < 0.6
    first_line = mm(300, 1_000)
    lines = list(range(first_line, high, sheet - head)) if regular else sorted(mm(100, 4_400) for _ in range(rng.randrange(6)))
    lines = sorted(set(lines)) or [first_line]
    underlayment = {"kind": "felt"} | (
        {"first_lap_line": text(first_line)} if regular else {"lap_lines": [text(line) for line in lines]}
    )
    lines = [line for line in lines if line < high]

    practice = {
        "least_web": mm(10, 35), "hand_clearance": mm(0, 70), "drain": mm(0, 40), "deck_tuck": mm(10, 70),
        "patch_underlap": mm(70, 110), "patch_side_margin": mm(20, 120), "least_top_tuck": mm(40, 90),
        "least_side_cover": mm(30, 90), "bead_inset": mm(5, 20), "staple_spacing": mm(60, 140), "least_margin": mm(1, 10),
        "mesh_width": mm(60, 140) // 4 * 4, "edge_extension": mm(10, 29), "cement_film": mm(1, 5), "mesh_roll": mm(2_000, 9_000),
    }  # fmt: skip
    coats = rng.randint(1, 3)
    rafter_width, spacing = mm(38, 80), mm(400, 700)
    rafters = list(range(mm(0, 300), wide, spacing))
    batten = (mm(18, 40), mm(30, 60), mm(0, 20)) if rng.random() < 0.7 else None
    strip = (mm(300, 1_000), rng.sample(["eave", "ridge", "rake"], rng.randint(1, 3)))

    assemblies, known = {}, {}
    for name in ["a", "b"]:
        r2, clearance, plumb = mm(28, 60) // 4 * 4, mm(2, 12), rng.random() < 0.4
        surface, edge = mm(20, 60), mm(5, 15)
        known[name] = known_here = {
            "name": name, "post": r2, "clearance": clearance, "plumb": plumb, "surface": surface, "edge": edge,
            "width": mm(150, 300) // 4 * 4, "down": mm(60, 140), "up": mm(100, 240), "cone": r2 + mm(2, 30) // 4 * 4,
            "top_width": mm(250, 460) // 4 * 4, "top_down": mm(80, 160), "top_up": mm(120, 330), "items": rng.randint(1, 5),
            "dried_in": rng.choice(["underlayment", "underlayment", "three_course"]),
        }  # fmt: skip
        w = {key: text(value) for key, value in known_here.items() if key not in ("name", "plumb", "items", "dried_in")}
        assemblies[name] = {
            "post_diameter": w["post"], "clearance": w["clearance"], "axis": "plumb" if plumb else "normal",
            "lap_surface_height": w["surface"], "lag_edge_distance": w["edge"], "post_height": "400 mm",
            "deck_flashing": {
                "width": w["width"], "down": w["down"], "up": w["up"], "cone_diameter": w["cone"], "dried_in": known_here["dried_in"],
            },
            "top_flashing": {"width": w["top_width"], "down": w["top_down"], "up": w["top_up"]},
            "beads": [{"where": "deck flange", "diameter": "8 mm"}, {"where": "collar", "diameter": "6 mm"}],
            "pilot_holes": [{"count": 2, "diameter": "5 mm", "depth": "60 mm"}], "dabs": [{"count": 3, "volume": "2 mL"}],
            "items": [{"item": f"lag {name}", "count": known_here["items"]}], "blocking_items": [{"item": "screw", "count": 4}],
        }  # fmt: skip

    rise = rng.choice([4, 6, 9, 12])
    tan = rise / 12
    # Clusters, so that patches, flashings and openings come near each other.
    centres = [(mm(200, 5_500), mm(200, 4_200)) for _ in range(rng.randint(1, 5))]
    posts, written = [], []
    for number in range(rng.randint(1, 16)):
        (cu, cv), name = rng.choice(centres), rng.choice(["a", "b"])
        u, v = cu + rng.choice([0, mm(-500, 500)]), cv + rng.choice([0, mm(-400, 400), mm(-40, 40)])
        a = known[name]
        # Now and then exactly at an end: of the window for a lap line, or of a tile.
        if rng.random() < 0.2 and lines:
            v = rng.choice(lines) + rng.choice([a["down"] - practice["drain"], practice["deck_tuck"] - a["up"]])
        if rng.random() < 0.2:
            reach = a["width"] // 2 + practice["hand_clearance"] + rng.choice([0, practice["patch_side_margin"]])
            u = first_joint + rng.randrange(1, 9) * cover + rng.choice([-reach, reach])
        if not (0 < u < wide and 0 < v < high) or any((u, v) == (post.u, post.v) for post in posts):
            continue
        rho, lift = a["post"] // 2 + a["clearance"], 0
        b = rho
        if a["plumb"]:
            # The doubled semi-axis and the move are rounded to the nanometre.
            b = round_half_away(rho * math.hypot(1, tan) + 20 * MM * tan)
            lift = NM * round_half_away(a["surface"] / NM * tan)
        posts.append(Post(f"P{number}", u, v, a, Ellipse(u, v + lift, rho, b)))
        written.append({"name": f"P{number}", "assembly": name, "u": text(u), "v": text(v)})

    slope: dict[str, Any] = {
        "name": "s", "pitch": f"{rise}:12", "edges": ["eave", "rake", "ridge", "rake"], "tile": "t",
        "outline": [["0", "0"], [text(wide), "0"], [text(wide), text(high)], ["0", text(high)]],
        "courses": {"first_nose": text(-overhang), "exposure": text(exposure)},
        "columns": {"first_joint": text(first_joint), "bond": bond}, "underlayment": underlayment,
        "rafters": {"at": [text(u) for u in rafters], "width": text(rafter_width)},
        "perimeter": {"width": text(strip[0]), "edges": strip[1]}, "posts": written,
    }  # fmt: skip
    if batten:
        slope["battens"] = dict(zip(["height", "width", "lug"], map(text, batten), strict=True))
    job = {
        "format": "tilepost-job/1", "name": f"draw {seed}", "tiles": {"t": tile}, "assemblies": assemblies, "slopes": [slope],
        "underlayments": {"felt": {"sheet_width": text(sheet), "head_lap": text(head), "brittle": never}},
        "practice": {name: text(value) for name, value in practice.items()} | {
            "pieces_for_severed": 3, "sealant_waste": 0, "three_course_allowed": True, "cement_coats": coats, "cement_container": "2 L",
            "cement_waste": 0.25, "mesh_waste": 0,
        },
    }  # fmt: skip
    known_tile = {"length": length, "cover": cover, "parts": parts, "side": side, "held": held, "lap": lap}
    return Roof(
        job, wide, high, overhang, noses, offsets, first_joint, known_tile, lines, never, (sheet, head), rafters,
        rafter_width, batten, strip, practice, coats, posts,
    )  # fmt: skip


def lay_out(roof: Roof) -> None:
    """How each deck flashing is dried in, and what it covers."""
    p = roof.practice
    for post in roof.posts:
        a = post.assembly
        half = a["width"] // 2
        post.flashing = Rect(post.u - half, post.v - a["down"], post.u + half, post.v + a["up"])
        low, high = post.flashing.lower + p["drain"], post.flashing.upper - p["deck_tuck"]
        tucking = [line for line in roof.lines if low <= line <= high and not roof.never_tucked]
        above = [line for line in roof.lines if line > high]
        if a["dried_in"] == "three_course":
            post.method, beside = "three_course", p["mesh_width"] // 2
            left, lower, right, upper = post.flashing
            post.bands = [
                Rect(left - beside, lower, left + beside, upper - beside),
                Rect(left - beside, upper - beside, right + beside, upper + beside),
                Rect(right - beside, lower, right + beside, upper - beside),
            ]
        elif tucking:
            post.method, post.line = "tucked", tucking[0]
            post.cone_cut = tucking[0] < post.v + a["cone"] // 2
        else:
            post.method, post.line = "patched", above[0] if above else None
            top = above[0] + p["patch_underlap"] if above else roof.high
            side = half + p["patch_side_margin"]
            post.patch = Rect(post.u - side, post.v, post.u + side, top)
        post.zone = post.deck.grown(p["hand_clearance"])


def chains(roof: Roof) -> list[list[Post]]:
    """Posts that share a patch."""
    groups = [[post] for post in roof.posts if post.patch]
    for one, other in combinations([post for post in roof.posts if post.patch], 2):
        reach = max(one.assembly["cone"], other.assembly["cone"]) // 2 + roof.practice["drain"]
        if one.line is not None and one.line == other.line and one.patch.meets(other.patch) and abs(one.v - other.v) <= reach:
            first, second = (next(group for group in groups if post in group) for post in (one, other))
            if first is not second:
                groups.remove(second)
                first.extend(second)
    return groups


def close(got: float, wanted: float) -> bool:
    return got == pytest.approx(wanted, rel=1e-9, abs=1e-7)


def rect_of(mm: list[float]) -> Rect:
    return Rect(*(round(x * MM) for x in mm))


def check_posts(roof: Roof, slope: dict[str, Any]) -> None:
    p, t = roof.practice, roof.tile
    for post, row in zip(roof.posts, slope["posts"], strict=True):
        a, deck, top = post.assembly, row["deck"], row["top"]
        assert (deck["method"], deck["cut_around_cone"]) == (post.method, post.cone_cut)
        assert deck["lap_line_mm"] == (None if post.line is None else post.line / MM)
        assert rect_of(deck["flashing_mm"]) == post.flashing
        assert rect_of(deck["zone_mm"]) == post.zone
        assert (row["opening"]["half_width_mm"], row["opening"]["half_height_mm"]) == (post.opening.a / MM, post.opening.b / MM)

        v = post.opening.v
        course = next((k for k in reversed(range(len(roof.noses))) if roof.noses[k] <= v), None)
        if course is not None and v < roof.noses[course] + t["length"]:
            head = roof.noses[course] + t["length"]
            trimmed = max(0, v + a["top_up"] - head)
            assert top["course"] == course + 1 and close(top["trimmed_mm"], trimmed / MM)
            if course + 1 < len(roof.noses):
                tuck = v + a["top_up"] - trimmed - roof.noses[course + 1]
                lap = head - roof.noses[course + 1]
                assert close(top["tuck_mm"], tuck / MM)
                assert close(top["tuck_short_mm"], max(0, min(p["least_top_tuck"], lap) - tuck) / MM)
            else:
                assert (top["tuck_mm"], top["tuck_short_mm"]) == (None, 0)
        cover = a["top_width"] // 2 - post.opening.a
        assert close(top["side_cover_mm"], cover / MM)
        assert close(top["side_short_mm"], max(0, p["least_side_cover"] - cover) / MM)
        assert top["passes"] == (top["tuck_short_mm"] == top["side_short_mm"] == 0)

        height = row["height"]
        layers = sum(nose <= v < nose + t["length"] for nose in roof.noses)
        batten = roof.batten[0] if roof.batten else 0
        assert height["layers"] == layers and close(height["tile_mm"], batten / MM + 20 * layers)
        assert close(height["free_post_mm"], 400 - height["tile_mm"])

        off = min((post.u - rafter for rafter in roof.rafters), key=abs)
        on = abs(off) <= roof.rafter_width // 2 - a["edge"]
        beside = any(u <= post.u for u in roof.rafters) and any(u > post.u for u in roof.rafters)
        assert row["support"]["on_rafter"] == on and close(abs(row["support"]["off_centre_mm"]), abs(off) / MM)
        assert row["support"]["blocked"] == (not on and beside)
    boards = {board["post"]: board["length_mm"] for board in slope["blocking"]}
    assert set(boards) == {row["name"] for row in slope["posts"] if row["support"]["blocked"]}
    for post in roof.posts:
        if post.name in boards:
            left, right = max(u for u in roof.rafters if u <= post.u), min(u for u in roof.rafters if u > post.u)
            assert close(boards[post.name], (right - left - roof.rafter_width) / MM)


def patched(roof: Roof) -> dict[frozenset[str], tuple[list[Post], Rect]]:
    """The posts of each patch, and what it covers."""
    expected = {}
    for group in chains(roof):
        bounds = group[0].patch
        for post in group:
            bounds = bounds.around(post.patch)
        expected[frozenset(post.name for post in group)] = (group, bounds)
    return expected


def check_three_course(roof: Roof, takeoff: dict[str, Any]) -> Counter[str]:
    """Bands, what they take, and which posts' bands meet something."""
    posts = [post for post in roof.posts if post.method == "three_course"]
    taken: Counter[str] = Counter()
    for post, row in zip(posts, takeoff["slopes"][0]["three_course"], strict=True):
        assert row["post"] == post.name and [rect_of(band) for band in row["bands_mm"]] == post.bands
        area = sum((band.right - band.left) * (band.upper - band.lower) for band in post.bands) / MM**2
        left, top, _ = post.bands
        mesh = (top.right - top.left + 2 * (top.upper - left.lower)) / MM
        cement = area * roof.practice["cement_film"] / MM * roof.coats
        assert close(row["area_mm2"], area) and close(row["mesh_mm"], mesh) and close(row["cement_mm3"], cement)
        taken += Counter({"cement": cement, "mesh": mesh})

    meet = set()
    for post in posts:
        others = [other for other in roof.posts if other is not post and not other.flashing.meets(post.flashing)]
        laid = [other.deck if other.bands else other.flashing for other in others] + [bounds for _, bounds in patched(roof).values()]
        if any(post.deck.meets(rect) for rect in laid):
            meet.add(f"/slopes/0/posts/{roof.posts.index(post)}")
    assert {finding["path"] for finding in takeoff["findings"] if finding["code"] == "bands-meet"} == meet
    taken["bands meet"] = len(meet)
    return taken


def check_patches(roof: Roof, slope: dict[str, Any]) -> float:
    sheet, lap = roof.sheet
    expected = patched(roof)
    assert {frozenset(row["posts"]) for row in slope["patches"]} == set(expected)
    named = {row["name"]: expected[frozenset(row["posts"])][1] for row in slope["patches"]}
    area = 0.0
    for row in slope["patches"]:
        group, bounds = expected[frozenset(row["posts"])]
        assert rect_of(row["bounds_mm"]) == bounds
        width, height = bounds.right - bounds.left, bounds.upper - bounds.lower
        pieces = 1 if height <= sheet else -(-(height - lap) // (sheet - lap))
        assert row["pieces"] == pieces
        assert close(row["area_mm2"], width / MM * (height + (pieces - 1) * lap) / MM)
        assert close(row["perimeter_mm"], 2 * (width + height) / MM)
        assert row["staples"] == -(-2 * (width + height) // roof.practice["staple_spacing"])
        inside = {post.name for post in group if post.cone.bounds.lower >= bounds.lower}
        assert set(row["round_at"]) == inside and set(row["half_round_at"]) == set(row["posts"]) - inside
        others = {post.name for post in roof.posts if post not in group and post.cone.reaches(bounds)}
        assert set(row["cut_round"]) == others
        meeting = {name for name, other in named.items() if name != row["name"] and other.meets(bounds)}
        lower = {name for name in meeting if named[name].lower < bounds.lower}
        level = {name for name in meeting if named[name].lower == bounds.lower}
        assert lower <= set(row["lies_over"]) <= lower | level
        area += row["area_mm2"]
    return area


def check_tiles(roof: Roof, slope: dict[str, Any]) -> Counter[str]:
    web = roof.practice["least_web"]
    tiles = roof.tiles()
    classes: dict[Tile, tuple[str, set[str]]] = {}
    of_tile: dict[Tile, list[Cut]] = {}
    for tile in tiles:
        cutting = [post for post in roof.posts if post.opening.reaches(tile.rect) and post.opening.bounds.meets(tile.rect)]
        zones = [post for post in roof.posts if post.zone.meets(tile.rect)]
        if cutting or zones:
            of_tile[tile] = cuts(tile.rect, cutting, web)
            which = "removed"
            if of_tile[tile]:
                which = "severed" if any(cut.kind == "severed" for cut in of_tile[tile]) else "cut"
            classes[tile] = which, {post.name for post in [*cutting, *zones]}
    removed = list(classes)
    for tile in tiles:
        under = [lower for lower in removed if roof.on_top(tile, lower)]
        if under and tile not in classes:
            classes[tile] = "loosened", set().union(*(classes[lower][1] for lower in under))

    width, edges = roof.strip
    lines = {
        "eave": [Rect(0, 0, roof.wide, 0)], "ridge": [Rect(0, roof.high, roof.wide, roof.high)],
        "rake": [Rect(0, 0, 0, roof.high), Rect(roof.wide, 0, roof.wide, roof.high)],
    }  # fmt: skip
    strip = [line for edge in edges for line in lines[edge]]

    def in_strip(face: Rect) -> bool:
        if face.left >= face.right or face.lower >= face.upper:
            return False
        apart = lambda low, high, other_low, other_high: max(other_low - high, low - other_high, 0)  # noqa: E731
        squares = [
            apart(face.left, face.right, edge.left, edge.right) ** 2 + apart(face.lower, face.upper, edge.lower, edge.upper) ** 2
            for edge in strip
        ]
        return min(squares) < width**2

    found = {}
    for row in slope["tiles"]:
        us, vs = zip(*row["footprint_mm"][0], strict=True)
        found[row["course"], row["piece"], rect_of([min(us), min(vs), max(us), max(vs)])] = row
    assert len(found) == len(slope["tiles"])
    expected = {(tile.course, tile.piece, tile.rect): (tile, *said) for tile, said in classes.items()}
    assert set(found) == set(expected)
    check_cuts(slope, {row["tile"]: (expected[key][0], of_tile.get(expected[key][0], [])) for key, row in found.items()})
    counted: Counter[str] = Counter()
    for key, row in found.items():
        tile, which, posts = expected[key]
        assert (row["class"], set(row["posts"])) == (which, posts), key
        assert row["excluded"] == (which == "loosened" and roof.tile["held"] == "mortar")
        assert row["refasten"] == (which != "loosened" and in_strip(tile.face)), key
        counted[which] += not row["excluded"]
        counted["refasten"] += row["refasten"]
    return counted


def check_cuts(slope: dict[str, Any], expected: dict[str, tuple[Tile, list[Cut]]]) -> None:
    rows = {(row["tile"], frozenset(row["posts"])): row for row in slope["cuts"]}
    assert len(rows) == len(slope["cuts"])
    assert set(rows) == {(name, cut.posts) for name, (_, found) in expected.items() for cut in found}
    for name, (tile, found) in expected.items():
        for cut in found:
            row = rows[name, cut.posts]
            assert (row["kind"], row["rectangle"]) == (cut.kind, isinstance(cut.shape, Rect))
            assert row["edge_tile"] == (tile.rect != tile.whole)
            if cut.kind in ("notch", "corner"):
                clipped = [a != b for a, b in zip(tile.rect, tile.whole, strict=True)]
                sides = {"field_edge" if cut_off else side for side, cut_off in zip(SIDES, clipped) if side in cut.open_to}
                assert set(row["open_to"]) == sides
            area = cut.area(tile.rect)
            assert area is None or row["area_mm2"] == pytest.approx(area / MM**2, rel=1e-9)
            bounds = cut.shape.bounds if isinstance(cut.shape, Ellipse) else cut.shape
            assert close(row["half_width_mm"], (bounds.right - bounds.left) / 2 / MM)
            assert close(row["half_height_mm"], (bounds.upper - bounds.lower) / 2 / MM)
            assert close(row["from_left_mm"], ((bounds.left + bounds.right) / 2 - tile.whole.left) / MM)
            assert close(row["from_nose_mm"], ((bounds.lower + bounds.upper) / 2 - tile.whole.lower) / MM)


def union(intervals: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Intervals that overlap or touch, as one."""
    whole: list[tuple[int, int]] = []
    for low, high in sorted(intervals):
        if whole and low <= whole[-1][1]:
            whole[-1] = whole[-1][0], max(whole[-1][1], high)
        else:
            whole.append((low, high))
    return whole


def check_wood_and_trim(roof: Roof, slope: dict[str, Any]) -> None:
    expected = []
    if roof.batten:
        _, width, lug = roof.batten
        for k, nose in enumerate(roof.noses):
            upper = nose + roof.tile["length"] - lug
            batten = Rect(0, upper - width, roof.wide, upper).within(roof.field)
            met = [post.deck.within(batten) for post in roof.posts if batten.lower < batten.upper and post.deck.meets(batten)]
            expected += [(k + 1, low / MM, high / MM, 4) for low, high in union([rect[::2] for rect in met])]
    assert [(row["course"], row["from_mm"], row["to_mm"], row["nails"]) for row in slope["battens"]] == expected

    field_ = roof.field
    along: dict[str, int] = {"ridge": 0, "rake": 0}
    zones = [post.zone for post in roof.posts]
    ridge = [zone.within(field_)[::2] for zone in zones if zone.lower < field_.upper < zone.upper and zone.meets(field_)]
    along["ridge"] += sum(high - low for low, high in union(ridge))
    for u in (field_.left, field_.right):
        rake = [zone.within(field_)[1::2] for zone in zones if zone.left < u < zone.right and zone.meets(field_)]
        along["rake"] += sum(high - low for low, high in union(rake))
    got = {row["edge"]: row["length_mm"] for row in slope["trim"]}
    assert got == pytest.approx({edge: length / MM for edge, length in along.items() if length}, rel=1e-9)


def check_materials(
    roof: Roof, takeoff: dict[str, Any], felt: float, three_course: Counter[str], tiles: Counter[str]
) -> None:
    slope = takeoff["slopes"][0]
    need = {line["item"]: line["need"] for line in takeoff["materials"]}
    bring = {line["item"]: line["bring"] for line in takeoff["materials"]}
    assert close(need.get("roof cement", 0), three_course["cement"])
    assert close(need.get("reinforcing mesh", 0), three_course["mesh"])
    assert bring.get("roof cement, containers", 0) == math.ceil(1.25 * three_course["cement"] / 2e6 * (1 - 1e-9))
    rolls = three_course["mesh"] * MM / roof.practice["mesh_roll"]
    assert bring.get("reinforcing mesh, rolls", 0) == math.ceil(rolls * (1 - 1e-9))
    expected: Counter[str] = Counter()
    inset, sealant = roof.practice["bead_inset"], 0.0
    for post in roof.posts:
        a = post.assembly
        u_shape = (2 * (a["down"] + a["up"] - inset) + a["width"] - 2 * inset) / MM
        sealant += math.pi / 4 * (8**2 * u_shape + 6**2 * math.pi * a["post"] / MM + 2 * 5**2 * 60) + 3 * 2_000
        expected[f"lag {a['name']}"] += a["items"]
    expected["screw"] = 4 * len(slope["blocking"])
    expected["staple"] = sum(row["staples"] for row in slope["patches"])
    expected["batten nail"] = 4 * len(slope["battens"])
    if roof.tile["held"] != "mortar":
        expected["fastener for t"] = 2 * (tiles["cut"] + tiles["removed"] + 3 * tiles["severed"])
    for item, count in expected.items():
        assert need.get(item, 0) == count, item
    assert close(need.get("sealant", 0), sealant)
    assert close(need.get("felt, patches", 0), felt)
    assert close(need.get("blocking board", 0), sum(row["length_mm"] for row in slope["blocking"]))


def test_random_roofs() -> None:
    seen: Counter[str] = Counter()
    for seed in range(JOBS):
        roof = draw(seed)
        lay_out(roof)
        takeoff = json.loads(tilepost.Job.from_dict(roof.job).takeoff().to_json())
        (slope,) = takeoff["slopes"]
        try:
            check_posts(roof, slope)
            felt = check_patches(roof, slope)
            three_course = check_three_course(roof, takeoff)
            tiles = check_tiles(roof, slope)
            check_wood_and_trim(roof, slope)
            check_materials(roof, takeoff, felt, three_course, tiles)
        except AssertionError as error:
            error.add_note(f"seed {seed}")
            raise
        seen += tiles
        seen.update(post.method for post in roof.posts)
        seen["bands meet"] += three_course["bands meet"]
        seen["linked"] += sum(len(group) > 1 for group in chains(roof))
        seen["to the edge"] += sum(post.method == "patched" and post.line is None for post in roof.posts)
        seen["rectangles"] += sum(row["rectangle"] for row in slope["cuts"])
        seen["excluded"] += sum(row["excluded"] for row in slope["tiles"])
        seen["taller than a sheet"] += sum(row["pieces"] > 1 for row in slope["patches"])
        for list_ in ["battens", "trim", "blocking"]:
            seen[list_] += len(slope[list_])
    kinds_of_work = [
        "tucked", "patched", "three_course", "bands meet", "to the edge", "linked", "taller than a sheet", "severed", "cut", "removed", "loosened",
        "rectangles", "excluded", "refasten", "battens", "trim", "blocking",
    ]  # fmt: skip
    assert all(seen[what] > 10 for what in kinds_of_work), seen
