"""The parts that scenes are drawn of: slope, bay, room, sky, people, weather, water, lens.

A scene is the thing as a builder sees it, for the browser to draw: lines that
are sharp at any size, and no letters, which the page lays over it.  A part
that things happen in has axes of its own (`Axes`), so that what moves is said
once, "at nine tenths of the way through the slope", and fits each shape of
the scene (`SHAPES`).

Nothing here needs Matplotlib.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import accumulate
from typing import Any

from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.pictures import style
from dryward.units import to_si

#: Width and height of each shape of a scene, in its own px: alone beside its words, alone on a phone, and two of
#: them side by side or, on a phone, one over the other.
SHAPES = {"wide": (1000.0, 680.0), "tall": (600.0, 640.0), "post": (600.0, 800.0), "strip": (900.0, 480.0)}
#: A place: the name of axes, along and across.
Place = tuple[str, float, float]
Point = tuple[float, float]

#: Lighter than this [kg/m3] a material insulates; heavier, it is a board.
_LIGHT = 130.0


def layer_kind(assembly: Assembly, layer: Layer) -> str:
    """What a layer is drawn as: membrane, air, vent, fibrous, foam, covering or board."""
    if isinstance(layer.substance, AirSpace):
        return "vent" if layer.vented else "air"
    if not isinstance(layer.substance, Material):
        return "membrane"
    made = layer.substance
    words = f"{made.id} {made.category} {layer.name}".lower()
    if "foam" in made.category or "fibrous" in made.category:
        return "foam" if "foam" in made.category else "fibrous"
    outermost = assembly.layers[-1] is layer and len(assembly.layers) > 1
    if any(word in words for word in ("covering", "metal", "shingle", "tile", "cladding", "siding")) or (
        outermost and any(other.vented for other in assembly.layers)
    ):
        return "covering"
    if made.density < _LIGHT:
        # Closed cells let little vapor through: less than a tenth of air.
        return "foam" if made.permeability_at(0.5) < 2e-11 else "fibrous"
    return "board"


@dataclass(frozen=True)
class Axes:
    """Axes of a part of a scene: (0, 0) is `origin`, (1, 0) is `along` from it, (0, 1) `across` [px]."""

    origin: Point
    along: Point
    across: Point

    def at(self, s: float, d: float) -> Point:
        """A place on them, in px of the scene."""
        return (
            self.origin[0] + s * self.along[0] + d * self.across[0],
            self.origin[1] + s * self.along[1] + d * self.across[1],
        )

    def corners(self, along: tuple[float, float], across: tuple[float, float]) -> list[Point]:
        """Of a strip on them, in px of the scene."""
        (a, b), (c, d) = along, across
        return [self.at(a, c), self.at(b, c), self.at(b, d), self.at(a, d)]


@dataclass
class Scene:
    """A scene of one shape while it is drawn: its lines, and the axes that things happen on."""

    shape: str
    parts: list[str] = field(default_factory=list)
    axes: dict[str, Axes] = field(default_factory=dict)

    @property
    def size(self) -> Point:
        """Width and height [px]."""
        return SHAPES[self.shape]

    def still(self) -> dict[str, Any]:
        """What the browser needs of it; "@" in the drawing stands for a mark of its own."""
        return {
            "size": list(self.size),
            "svg": "".join(self.parts),
            "axes": {name: [*each.origin, *each.along, *each.across] for name, each in self.axes.items()},
        }

    def shape_of(self, points: Iterable[Point], kind: str = "", closed: bool = True) -> None:
        """A filled shape, or a line, of a kind that the style sheet knows."""
        tag = "polygon" if closed else "polyline"
        self.parts.append(f'<{tag} class="sc-{kind}" points="{_points(points)}"/>')

    def filled(self, points: Sequence[Point], kind: str, pattern: str) -> None:
        """A shape with its color, and over it the strokes of what it is made of."""
        self.shape_of(points, kind)
        if pattern in _PATTERNS:
            self.parts.append(f'<polygon fill="url(#@-{pattern})" points="{_points(points)}"/>')

    def line(self, points: Sequence[Point], kind: str) -> None:
        """A line of a kind."""
        self.shape_of(points, kind, closed=False)

    def circle(self, middle: Point, radius: float, kind: str) -> None:
        """A circle of a kind."""
        self.parts.append(f'<circle class="sc-{kind}" cx="{middle[0]:.1f}" cy="{middle[1]:.1f}" r="{radius:.1f}"/>')

    def path(self, d: str, kind: str) -> None:
        """A curve of a kind, as SVG writes it."""
        self.parts.append(f'<path class="sc-{kind}" d="{d}"/>')

    def box(self, name: str, left: float, top: float, right: float, bottom: float) -> Axes:
        """Axes of an upright box: along to the right, across upward from its lower edge."""
        self.axes[name] = Axes((left, bottom), (right - left, 0.0), (0.0, top - bottom))
        return self.axes[name]


def _points(points: Iterable[Point]) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in points)


#: Strokes of what things are made of; each is told from the others without color.
_PATTERNS = {
    "fibrous": (34, 20, '<path d="M0 6q8 -8 17 0t17 0M0 16q9 7 17 0t17 0" class="sc-stroke"/>'),
    "board": (14, 14, '<path d="M-2 9l9 -9M5 16l11 -11" class="sc-stroke"/>'),
    "foam": (14, 14, '<path d="M1 4a3 3 0 1 0 6 0a3 3 0 1 0-6 0M8 11a3 3 0 1 0 6 0a3 3 0 1 0-6 0" class="sc-stroke"/>'),
    "covering": (26, 12, '<path d="M0 10h24l-4 -6" class="sc-stroke"/>'),
    "membrane-open": (46, 46, '<path d="M4 23h26" class="sc-gaps"/>'),
    "ground": (12, 12, '<path d="M0 12l12 -12" class="sc-stroke"/>'),
}  # fmt: skip


def begin(shape: str) -> Scene:
    """An empty scene with the strokes that its parts are filled with."""
    scene = Scene(shape)
    made = "".join(
        f'<pattern id="@-{name}" width="{w}" height="{h}" patternUnits="userSpaceOnUse">{strokes}</pattern>'
        for name, (w, h, strokes) in _PATTERNS.items()
    )
    scene.parts.append(f"<defs>{made}</defs>")
    return scene


def colors() -> dict[str, str]:
    """The color of each quantity, by the name that the style sheet gives it."""
    return {f"--q-{name.replace(' ', '-')}": each.color for name, each in style.LOOKS.items()}


def scattered(number: int) -> Point:
    """A place in the unit square: those of 0, 1, 2 ... fill it evenly, the same each time.

    The R2 sequence, which is to the plane what the golden section is to a line: each step is a power of 1 over the
    number whose cube is itself and 1.
    """
    return (0.5 + number * 0.754878) % 1, (0.5 + number * 0.569840) % 1


# --- what stands outside ------------------------------------------------------------


def sky(scene: Scene, season: str) -> None:
    """The sky of a season: "winter" with snow, "summer" with sun, "night" with a moon, "mild" with a cloud.

    An "open" one is left to what moves behind the drawing.
    """
    wide, high = scene.size
    scene.axes["sky"] = Axes((0.0, 0.0), (wide, 0.0), (0.0, high))
    if season == "open":
        return
    scene.shape_of([(0, 0), (wide, 0), (wide, high), (0, high)], f"sky-{season}")
    x, y = wide * 0.1, high * 0.13
    if season == "summer":
        _sun(scene, (x, y))
    elif season == "winter":
        for k in range(14):
            across, down = scattered(k)
            _flake(scene, (wide * (0.04 + 0.93 * across), high * (0.05 + 0.27 * down)))
    elif season == "night":
        scene.path(f"M{x:.0f} {y - 30:.0f}a34 34 0 1 0 26 58a28 28 0 1 1 -26 -58z", "moon")
    else:
        _sun(scene, (x, y))
        cloud(scene, (x - 10, y + 34), 1.0)


def cloud(scene: Scene, corner: Point, size: float) -> None:
    """A cloud, 88 px wide at size 1; `corner` is its lower left."""
    x, y = corner
    steps = ((22, -6, -43), (32, -60, -3), (24, -22, 46))
    bows = "".join(f"a{r * size:.1f} {r * size:.1f} 0 0 0 {a * size:.1f} {b * size:.1f}" for r, a, b in steps)
    scene.path(f"M{x:.1f} {y:.1f}h{88 * size:.1f}{bows}z", "cloud")


def _sun(scene: Scene, middle: Point) -> None:
    x, y = middle
    scene.circle(middle, 24, "sun")
    for k in range(12):
        c, s = math.cos(k * math.pi / 6), math.sin(k * math.pi / 6)
        scene.line([(x + 31 * c, y + 31 * s), (x + 43 * c, y + 43 * s)], "ray")


def _flake(scene: Scene, middle: Point) -> None:
    x, y = middle
    for k in range(3):
        c, s = 6 * math.cos(k * math.pi / 3), 6 * math.sin(k * math.pi / 3)
        scene.line([(x - c, y - s), (x + c, y + s)], "flake")


def snow(scene: Scene, left: float, right: float, top: float, foot: float) -> None:
    """Snow that lies on the ground, in soft waves."""
    wave = (right - left) / 3
    scene.path(
        f"M{left:.1f} {top:.1f}" + f"q{wave / 2:.1f} -14 {wave:.1f} 0" * 3 + f"V{foot:.1f}H{left:.1f}Z",
        "snow",
    )


def fir(scene: Scene, foot: Point, high: float) -> None:
    """A fir in the yard, in lines."""
    x, y = foot
    scene.line([(x, y), (x, y - 0.2 * high)], "person")
    for k, (low, tip) in enumerate(((0.14, 0.52), (0.38, 0.78), (0.62, 1.0))):
        half = (0.27 - 0.065 * k) * high
        scene.shape_of([(x - half, y - low * high), (x, y - tip * high), (x + half, y - low * high)], "fir")


# --- the house ------------------------------------------------------------------------


def person(scene: Scene, foot: Point, high: float) -> None:
    """Someone who stands in the room, drawn in lines."""
    x, y = foot
    k = high / 100
    scene.circle((x, y - 90 * k), 8.5 * k, "person")
    scene.path(
        f"M{x - 17 * k:.1f} {y - 47 * k:.1f}q{2 * k:.1f} {-30 * k:.1f} {17 * k:.1f} {-31 * k:.1f}"
        f"q{15 * k:.1f} {k:.1f} {17 * k:.1f} {31 * k:.1f}"
        f"M{x - 9 * k:.1f} {y:.1f}v{-42 * k:.1f}h{18 * k:.1f}v{42 * k:.1f}",
        "person",
    )


def layers_through(assembly: Assembly) -> list[tuple[Layer, str, float, float]]:
    """Each layer with its kind, and where it begins and ends on the way through, 0 to 1, as it is drawn to scale."""
    total = sum(layer.drawn_thickness for layer in assembly.layers)
    found, depth = [], 0.0
    for layer in assembly.layers:
        after = depth + layer.drawn_thickness
        found.append((layer, layer_kind(assembly, layer), depth / total, after / total))
        depth = after
    return found


def across(assembly: Assembly, name: str) -> tuple[float, float]:
    """Where a layer begins and ends on the way through, 0 to 1, as it is drawn to scale."""
    return next((start, end) for layer, _, start, end in layers_through(assembly) if layer.name == name)


def bands(scene: Scene, axes: Axes, along: tuple[float, float], ends: Iterable[tuple[str, float]]) -> None:
    """Strips across axes, one after the other: what each is drawn as, and where it ends."""
    start = 0.0
    for kind, end in ends:
        scene.filled(axes.corners(along, (start, end)), "room" if kind == "room" else f"layer-{kind}", kind)
        start = end


#: From here on a sheet is drawn with gaps [kg/(s m2 Pa)]: beyond class III of the codes it holds back hardly any vapor.
OPEN_SHEET = to_si(10.0, "perm")


def membrane_kind(layer: Layer) -> str:
    """What a membrane is drawn as: with gaps where it lets much vapor through at half humidity."""
    made = layer.substance
    assert isinstance(made, (FixedMembrane, VariableMembrane, LaminateMembrane))
    return "membrane-open" if float(made.permeance(0.5, 0.5)) > OPEN_SHEET else "membrane"


def stack(scene: Scene, name: str, axes: Axes, assembly: Assembly) -> None:
    """The layers of an assembly on axes: along them, to scale across them, membranes as strong lines."""
    scene.axes[name] = axes
    drawn = layers_through(assembly)
    for _, kind, a, b in drawn:
        if kind != "membrane":
            scene.filled(axes.corners((0, 1), (a, b)), f"layer-{kind}", kind)
    for layer, kind, a, _ in drawn:
        if kind == "membrane" and layer.name != "paint":
            scene.line([axes.at(0, a), axes.at(1, a)], membrane_kind(layer))


#: Of the slope: its inner edge at the eave and at the ridge, and how thick it is drawn, in each shape [px].
_SLOPES = {
    "wide": ((150.0, 505.0), (905.0, 225.0), 170.0),
    "tall": ((82.0, 452.0), (548.0, 258.0), 150.0),
    "post": ((82.0, 560.0), (548.0, 366.0), 165.0),
    "strip": ((140.0, 352.0), (800.0, 168.0), 122.0),
}


def vault(
    scene: Scene, assembly: Assembly, season: str = "winter", person_at: float | None = 0.6, deepest: float = 0.0
) -> None:
    """A roof cut through one rafter bay, from eave to ridge, with the sky over it and the room under it.

    It is as thick in each lesson, whatever it has in it; where roofs of one
    lesson differ, `deepest` [m] is the one that is drawn so, and others to scale.

    Axes: "slope" goes from the eave to the ridge, and across from the room's
    face (0) to the roof covering (1); "room" and "sky" are boxes.
    """
    wide, high = scene.size
    sky(scene, season)
    low, ridge, thick = _SLOPES[scene.shape]
    if deepest:
        thick *= sum(layer.drawn_thickness for layer in assembly.layers) / deepest
    run, rise = ridge[0] - low[0], ridge[1] - low[1]
    length = math.hypot(run, rise)
    out = (rise / length * thick, -run / length * thick)
    axes = Axes(low, (run, rise), out)
    floor = high - 26
    # The room, the wall under the eave and the floor.
    room = [low, ridge, (wide, ridge[1] + 40), (wide, floor), (low[0], floor)]
    scene.shape_of(room, "room")
    scene.shape_of([(low[0] - 34, floor), (low[0], floor), low, (low[0] - 34, low[1] + 14)], "wall")
    scene.filled([(0, floor), (wide, floor), (wide, high), (0, high)], "floor", "ground")
    # The other slope falls away behind the ridge.
    peak = axes.at(1, 1)
    middle = axes.at(1, 0)
    scene.shape_of([peak, (wide, peak[1] + (wide - peak[0]) * 0.38), (wide, middle[1] + 40), middle], "far-slope")
    stack(scene, "slope", axes, assembly)
    # Eave board and ridge board close the bay.
    for s, kind in ((0.0, "eave"), (1.0, "ridge")):
        scene.line([axes.at(s, 0), axes.at(s, 1)], kind)
    scene.line([axes.at(-0.05, 1.0), axes.at(1, 1.0)], "roofing")
    if person_at is not None:
        stand = (wide * person_at, floor)
        person(scene, stand, (floor - axes.at((stand[0] - low[0]) / run, 0)[1]) * 0.62)
    left = low[0] + 12
    scene.box("room", left, low[1] + 30, wide * 0.52, floor - 8)


def crawlspace(scene: Scene, person_at: float | None = 0.76, vents: bool = False) -> None:
    """A room over a floor on joists, and under it a crawlspace with walls, piers and bare earth.

    Axes: "floor" goes from wall to wall, and across from the room's face (0)
    down to the underside of the boards (1); "room" and "crawlspace" are boxes,
    and with `vents` the openings in its two walls, "vent-left" and "vent-right".
    """
    wide, high = scene.size
    left, right = 0.085 * wide, 0.915 * wide
    floor, under, joist, grade, earth = (high * share for share in (0.45, 0.485, 0.555, 0.7, 0.83))
    wall = 0.03 * wide
    scene.shape_of([(0, 0), (wide, 0), (wide, high), (0, high)], "sky-mild")
    scene.filled([(0, grade), (wide, grade), (wide, high), (0, high)], "floor", "ground")
    scene.shape_of(_corners(left, 0, right, floor), "room")
    scene.shape_of(_corners(left, under, right, earth), "crawlspace")
    for x in (left, right - wall):
        scene.shape_of(_corners(x, 0, x + wall, floor), "wall")
        scene.shape_of(_corners(x, floor, x + wall, earth + 0.05 * high), "wall")
        if vents:
            top, sill = 0.58 * high, 0.67 * high
            scene.shape_of(_corners(x - 2, top, x + wall + 2, sill), "pane")
            for k in (1, 2, 3):
                y = top + k * (sill - top) / 4
                scene.line([(x - 2, y), (x + wall + 2, y)], "frame")
            scene.box("vent-left" if x == left else "vent-right", x, top, x + wall, sill)
    axes = scene.axes["floor"] = Axes((left, floor), (right - left, 0.0), (0.0, under - floor))
    for s in (0.1, 0.9):
        x = axes.at(s, 0)[0]
        scene.shape_of(_corners(x - 0.6 * wall, joist, x + 0.6 * wall, earth), "wall")
    for s in (0.1, 0.38, 0.66, 0.9):
        x = axes.at(s, 0)[0]
        scene.filled(_corners(x - 0.009 * wide, under, x + 0.009 * wide, joist), "layer-board", "board")
    scene.filled(_corners(left, floor, right, under), "layer-board", "board")
    # Bare earth, with stones in it.
    scene.filled(_corners(left + wall, earth, right - wall, high), "earth", "ground")
    for k in range(24):
        across, down = scattered(k)
        x, y = left + wall + (right - left - 2 * wall) * across, earth + 8 + (high - earth - 14) * down
        scene.circle((x, y), 2.5 + 2.5 * down, "stone")
    # A window, and someone beside it.
    x, y = left + 0.16 * (right - left), 0.36 * floor
    scene.shape_of(_corners(x - 0.06 * wide, y - 0.16 * floor, x + 0.06 * wide, y + 0.2 * floor), "pane")
    scene.line([(x, y - 0.16 * floor), (x, y + 0.2 * floor)], "frame")
    if person_at is not None:
        person(scene, (wide * person_at, floor), 0.72 * floor)
    scene.box("room", left + wall, 0.05 * high, right - wall, floor)
    scene.box("crawlspace", left + wall, joist, right - wall, earth)


def _corners(left: float, top: float, right: float, bottom: float) -> list[Point]:
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def air_conditioner(scene: Scene, corner: Point, wide: float) -> None:
    """One on a wall, which blows into the room; `corner` is its upper left."""
    x, y = corner
    high = 0.34 * wide
    scene.shape_of(_corners(x, y, x + wide, y + high), "machine")
    scene.line([(x + 0.1 * wide, y + 0.72 * high), (x + 0.9 * wide, y + 0.72 * high)], "frame")
    for k in range(3):
        start = x + (0.25 + 0.27 * k) * wide
        bow = 0.09 * wide
        scene.path(f"M{start:.1f} {y + 1.25 * high:.1f}q{bow:.1f} {bow:.1f} 0 {2 * bow:.1f}t0 {2 * bow:.1f}", "breath")


def thermometer(scene: Scene, foot: Point, top: float, half: float) -> None:
    """An empty thermometer, so wide to each side: its scale begins at `foot` and ends at the height `top`."""
    x, y = foot
    scene.path(
        f"M{x - half:.1f} {y:.1f}V{top:.1f}a{half} {half} 0 0 1 {2 * half} 0V{y:.1f}"
        f"a{1.5 * half:.1f} {1.5 * half:.1f} 0 1 1 {-2 * half} 0Z",
        "tube",
    )
    scene.circle((x, y + 1.1 * half), 0.95 * half, "bulb")


def cable(scene: Scene, middle: Point, radius: float) -> None:
    """A cable cut across: its sheath, and three wires in it."""
    x, y = middle
    scene.circle(middle, radius, "sheath")
    for k in range(3):
        angle = (0.5 + 4 * k / 3) * math.pi / 2
        at = x + 0.48 * radius * math.cos(angle), y + 0.48 * radius * math.sin(angle)
        scene.circle(at, 0.3 * radius, "wire")


def goes_on(scene: Scene, head: Point, foot: float) -> None:
    """The line with a kink at which a thing is cut off that goes on."""
    x, y = head
    third = (foot - y) / 3
    scene.path(f"M{x:.1f} {y:.1f}v{third:.1f}l-8 7l16 8l-8 7V{foot:.1f}", "thin")


def through(assembly: Assembly, depth: float) -> float:
    """A depth from the room's face [m] as the share of the way through."""
    return depth / sum(layer.drawn_thickness for layer in assembly.layers)


def lens(scene: Scene, name: str, middle: Point, radius: float, of: Place, shares: Sequence[tuple[str, float]]) -> None:
    """A round glass over a place, which shows thin layers large: kinds from the room outward with their shares of it.

    Its axes lie as those it looks at: across from the room's side (0) to the other (1).
    """
    seen = scene.axes[of[0]]
    ways = []
    for x, y in (seen.along, seen.across):
        long = math.hypot(x, y)
        ways.append((2 * radius * x / long, 2 * radius * y / long))
    (ax, ay), (cx, cy) = ways
    axes = scene.axes[name] = Axes((middle[0] - (ax + cx) / 2, middle[1] - (ay + cy) / 2), ways[0], ways[1])
    spot = seen.at(of[1], of[2])
    away = math.hypot(spot[0] - middle[0], spot[1] - middle[1])
    rim = tuple(m + (p - m) * radius / away for m, p in zip(middle, spot, strict=True))
    scene.line([(rim[0], rim[1]), spot], "lens-line")
    scene.circle(spot, 12, "lens-spot")
    scene.parts.append(
        f'<clipPath id="@-{name}"><circle cx="{middle[0]:.1f}" cy="{middle[1]:.1f}" r="{radius:.1f}"/></clipPath>'
        f'<g clip-path="url(#@-{name})">'
    )
    total = sum(share for _, share in shares)
    ends = accumulate(share / total for _, share in shares)
    bands(scene, axes, (0.0, 1.0), zip((kind for kind, _ in shares), ends, strict=True))
    scene.parts.append("</g>")
    scene.circle(middle, radius, "lens-rim")


# --- what happens in a scene -----------------------------------------------------------
#
# Marks, words and flows are plain tables for the browser.  A place is (axes, along, across).


def line(look: str, *places: Place) -> dict[str, Any]:
    """A line through places, in the look of a quantity."""
    return {"kind": "line", "look": _look(look), "points": [list(each) for each in places]}


def area(look: str, *places: Place) -> dict[str, Any]:
    """A filled shape, in the look of a quantity."""
    return {"kind": "area", "look": _look(look), "points": [list(each) for each in places]}


def gaps(along: tuple[float, float], count: int) -> list[float]:
    """Where the gaps of a sheet are, evenly along axes."""
    start, end = along
    return [start + (k + 0.5) / count * (end - start) for k in range(count)]


def sheet(
    look: str, axes: str, along: tuple[float, float], across: tuple[float, float], open_share: float, count: int
) -> list[dict[str, Any]]:
    """A sheet drawn thick, with `count` gaps that take `open_share` of its length."""
    start, end = along
    half = 0.5 * open_share * (end - start) / count
    edges = [start, *(edge for s in gaps(along, count) for edge in (s - half, s + half)), end]
    return [band(look, axes, (a, b), across) for a, b in zip(edges[::2], edges[1::2], strict=True)]


def band(look: str, axes: str, along: tuple[float, float], across: tuple[float, float]) -> dict[str, Any]:
    """A filled strip on axes."""
    (a, b), (c, d) = along, across
    return area(look, (axes, a, c), (axes, b, c), (axes, b, d), (axes, a, d))


def drops(start: Place, end: Place, amount: float, frost: bool = False) -> dict[str, Any]:
    """Water along a face, or frost; `amount` 0 to 1 is how much."""
    ends = [list(start), list(end)]
    return {"kind": "frost" if frost else "drops", "look": "wet", "points": ends, "amount": amount}


def arrow(look: str, start: Place, end: Place, share: float = 1.0) -> dict[str, Any]:
    """An arrow; `share` 0 to 1 is how wide."""
    return {"kind": "arrow", "look": _look(look), "points": [list(start), list(end)], "amount": share}


def dots(count: int, low: Place, high: Place) -> dict[str, Any]:
    """So many dots of vapor that stand, scattered evenly between two corners: an amount, where a `flow` is a rate."""
    return {"kind": "dots", "look": "vapor-pressure", "points": [list(low), list(high)], "count": count}


def ticks(shares: Iterable[float], name: str, width: float = 0.3) -> dict[str, Any]:
    """Short lines across axes, at shares of their height: the scale of what they measure."""
    points = [[name, s, each] for each in shares for s in (0.0, width)]
    return {"kind": "ticks", "look": "tick", "points": points}


def tag(text: str, at: Place, look: str = "", side: str = "middle", minor: bool = False) -> dict[str, Any]:
    """Words at a place; `side` is where they stand from it: left, right, over, under or middle.

    Minor ones are placed last, and left out of a small picture that has no room for them.
    """
    return {"text": text, "at": list(at), "look": _look(look), "side": side, "minor": minor}


def flow(rate: float, *places: Place, spread: float = 0.0, look: str = "vapor pressure") -> dict[str, Any]:
    """Dots of vapor that go from place to place, so many a minute; `spread` scatters them along the axes.

    Moving air, whose look is "air flow", is drawn as darts that point the way they go.
    """
    return {"rate": rate, "points": [list(each) for each in places], "spread": spread, "look": _look(look)}


def together(parts: Iterable[Mapping[str, Any]]) -> dict[str, Any]:
    """The marks, tags and flows of several parts, in their order; a film where one of them has it."""
    found = list(parts)
    films = [part["film"] for part in found if "film" in part]
    drawn = {name: [each for part in found for each in part.get(name, ())] for name in ("marks", "tags", "flows")}
    return {**drawn, "film": films[0]} if films else drawn


def _look(name: str) -> str:
    return name.replace(" ", "-")
