"""A vented roof on the stage: one plane in section with its vent space drawn large, and its bays side by side."""

from __future__ import annotations

import math

from dryward.pictures import scenery
from dryward.pictures.scenery import Axes, Point, Scene
from dryward.units import to_si

_INCH = to_si(1.0, "in")
#: Of the roof below the vent space, in each shape [px]: its inner edge at the eave and at the ridge, its thickness,
#: and how high an inch of the vent space is drawn.
_PLANES = {
    "wide": ((190.0, 520.0), (880.0, 306.0), 92.0, 54.0),
    "tall": ((132.0, 470.0), (545.0, 322.0), 66.0, 44.0),
    "post": ((140.0, 590.0), (550.0, 430.0), 90.0, 56.0),
    "strip": ((170.0, 366.0), (800.0, 226.0), 56.0, 33.0),
}
#: The covering [px].
_SKIN = 13.0
#: Where cracks in a leaky ceiling are, along the slope.
CRACKS = (0.1, 0.28, 0.46, 0.64, 0.82)
#: How wide a crack is drawn, along the slope.
_CRACK = 0.022


def plane(scene: Scene, gap: float, leaky: bool, season: str = "winter", person_at: float | None = 0.62) -> None:
    """A roof plane cut from eave to ridge; its vent space is drawn larger than the roof below, to a scale of its own.

    Axes, each along from the eave to the ridge: "roof" across from the room's
    face (0) to the sheet under the vent space (1), "gap" from there (0) to the
    covering (1); "room" and "sky" are boxes.
    """
    wide, high = scene.size
    scenery.sky(scene, season)
    low, ridge, thick, inch = _PLANES[scene.shape]
    run, rise = ridge[0] - low[0], ridge[1] - low[1]
    length = math.hypot(run, rise)
    out = (rise / length, -run / length)
    open_ = gap / _INCH * inch
    roof = scene.axes["roof"] = Axes(low, (run, rise), (out[0] * thick, out[1] * thick))
    space = scene.axes["gap"] = Axes(roof.at(0, 1), (run, rise), (out[0] * open_, out[1] * open_))
    floor = high - 24
    scene.shape_of([low, ridge, (wide, ridge[1] + 34), (wide, floor), (low[0], floor)], "room")
    scene.shape_of([(low[0] - 30, floor), (low[0], floor), low, (low[0] - 30, low[1] + 10)], "wall")
    scene.filled([(0, floor), (wide, floor), (wide, high), (0, high)], "floor", "ground")
    # The other slope falls away behind the ridge.
    peak, foot = roof.at(1, 1), roof.at(1, 0)
    scene.shape_of([peak, (wide, peak[1] + (wide - peak[0]) * 0.3), (wide, foot[1] + 34), foot], "far-slope")
    scene.filled(roof.corners((0, 1), (0, 1)), "layer-fibrous", "fibrous")
    _ceiling(scene, roof, leaky)
    scene.line([roof.at(0, 0), roof.at(0, 1)], "eave")
    scene.line([roof.at(1, 0), roof.at(1, 1)], "ridge")
    # The vent space is open low and high: a screen at the eave, a cap that stands off at the ridge.
    scene.shape_of(space.corners((-0.075, 1.0), (0, 1)), "layer-vent")
    scene.line([space.at(-0.075, 0), space.at(1, 0)], "membrane-open")
    scene.line([space.at(-0.075, 0), space.at(-0.075, 1)], "mesh")
    skin = 1 + _SKIN / open_
    scene.filled(space.corners((-0.09, 0.985), (1, skin)), "layer-covering", "covering")
    _cap(scene, space, open_)
    if person_at is not None:
        stand = (wide * person_at, floor)
        scenery.person(scene, stand, (floor - roof.at((stand[0] - low[0]) / run, 0)[1]) * 0.62)
    scene.box("room", low[0] + 10, low[1] + 20, wide * 0.56, floor - 6)


def _ceiling(scene: Scene, roof: Axes, leaky: bool) -> None:
    """Drywall under the fill, whole or with cracks."""
    half = _CRACK / 2
    edges = [0.0, *(edge for s in CRACKS for edge in (s - half, s + half)), 1.0] if leaky else [0.0, 1.0]
    for a, b in zip(edges[::2], edges[1::2], strict=True):
        scene.filled(roof.corners((a, b), (0, 0.16)), "layer-board", "board")


def _cap(scene: Scene, space: Axes, high: float) -> None:
    """The cap over the ridge, a hand's breadth above the covering, with a screen under it."""
    lift = 1 + (_SKIN + 15) / high
    top = space.at(1.035, lift)
    left = space.at(0.9, lift)
    right = (top[0] + (top[0] - left[0]), top[1] + 0.75 * (left[1] - top[1]))
    scene.line([space.at(0.985, 1 + _SKIN / high), space.at(0.985, lift)], "mesh")
    scene.line([left, top, right], "roofing")


def skin(scene: Scene) -> float:
    """Where the upper face of the covering is on the axes "gap", across."""
    return 1 + _SKIN / math.hypot(*scene.axes["gap"].across)


def breeze(scene: Scene, name: str, places: list[tuple[float, float]], long: float) -> None:
    """Air on its way along axes, as arrows from their places."""
    axes = scene.axes[name]
    for s, d in places:
        a, b = axes.at(s, d), axes.at(s + long, d)
        x, y = (b[0] - a[0], b[1] - a[1])
        size = math.hypot(x, y)
        u, v = x / size, y / size
        wing = [(b[0] - 11 * u + side * 7 * v, b[1] - 11 * v - side * 7 * u) for side in (1, -1)]
        scene.line([a, b], "wind")
        scene.line([wing[0], b, wing[1]], "wind")


def bath(scene: Scene, outdoors: bool, at: float = 0.3) -> None:
    """A shower in the room under the slope, and the duct of its fan: through the covering, or into the vent space.

    Axes "duct": along it from the fan (0) to its end (1).
    """
    roof, space = scene.axes["roof"], scene.axes["gap"]
    start = roof.at(at, -0.1)
    tall = math.hypot(*space.across)
    end = space.at(at, 1 + (_SKIN + 34) / tall) if outdoors else space.at(at, 0.45)
    u = (space.across[0] / tall, space.across[1] / tall)
    v = (-u[1], u[0])
    half = 0.13 * math.hypot(*roof.across) + 4
    side = [(p[0] + k * half * v[0], p[1] + k * half * v[1]) for p in (start, end) for k in (-1, 1)]
    scene.shape_of([side[0], side[1], side[3], side[2]], "duct")
    if outdoors:
        hood = [(end[0] + a * half * v[0] + b * half * u[0], end[1] + a * half * v[1] + b * half * u[1])
                for a, b in ((-2.2, 0.9), (0, 1.9), (2.2, 0.9))]  # fmt: skip
        scene.line(hood, "roofing")
    fan = [(start[0] + a * half * v[0] + b * half * u[0], start[1] + a * half * v[1] + b * half * u[1])
           for a, b in ((-1.7, -0.9), (1.7, -0.9), (1.7, 0.5), (-1.7, 0.5))]  # fmt: skip
    scene.shape_of(fan, "duct")
    scene.axes["duct"] = Axes(start, (end[0] - start[0], end[1] - start[1]), (half * v[0], half * v[1]))
    _shower(scene, (start[0] + 3.4 * half, scene.size[1] - 24))


def _shower(scene: Scene, foot: Point) -> None:
    """Someone under a shower."""
    x, floor = foot
    ceiling = scene.axes["roof"]
    under = ceiling.at((x - ceiling.origin[0]) / ceiling.along[0], 0)[1]
    tall = (floor - under) * 0.62
    scenery.person(scene, (x, floor - 5), tall * 0.82)
    pipe, top = x + 0.42 * tall, floor - 1.06 * tall
    scene.line([(pipe, floor), (pipe, top), (x + 0.08 * tall, top)], "thin")
    head = floor - tall * 1.02
    scene.line([(x - 0.07 * tall, head), (x + 0.18 * tall, head)], "roofing")
    for k in range(4):
        start = x - 0.05 * tall + k * 0.07 * tall
        scene.line([(start, head + 5), (start - 0.02 * tall, head + 0.34 * tall)], "shower")
    scene.line([(x - 0.3 * tall, floor - 3), (x + 0.42 * tall, floor - 3)], "roofing")


#: Of the roof seen from the yard, in each shape: left, top (the ridge), right, bottom (the eave) [px].
_YARDS = {
    "wide": (70.0, 140.0, 930.0, 560.0),
    "tall": (40.0, 130.0, 560.0, 520.0),
    "post": (40.0, 160.0, 560.0, 640.0),
    "strip": (60.0, 90.0, 840.0, 390.0),
}
#: Its bays, by the names of their axes, from left to right; the one with the skylight is "cut".
_BAYS = ("left", "open", "next", "cut", "right")
#: The bays that are open to see into and that air goes through.
OPEN = ("open", "next")
#: Where the skylight begins and ends on the way up.
SKYLIGHT = (0.4, 0.66)


def bays(scene: Scene, season: str = "winter") -> None:
    """A roof from the yard, its covering taken off between its ends: bays between rafters, one cut by a skylight.

    Axes: one for each bay, up from the eave (0) to the ridge (1), across from
    its middle (-0.5 to 0.5); "house" is a box under the eave.
    """
    wide, high = scene.size
    scenery.sky(scene, season)
    left, top, right, bottom = _YARDS[scene.shape]
    axes = scene.box("plane", left, top, right, bottom)
    gutter, ground = bottom + 24, high - 16
    scene.shape_of([(left + 30, bottom), (right - 30, bottom), (right - 30, ground), (left + 30, ground)], "wall")
    scene.filled([(0, ground), (wide, ground), (wide, high), (0, high)], "floor", "ground")
    tall = ground - gutter
    for x, across in ((0.09, 0.05), (0.91, 0.05)):
        middle = left + x * (right - left)
        half = across * (right - left)
        corners = [(middle + i * half, gutter + j * tall) for i, j in ((-1, 0.24), (1, 0.24), (1, 0.74), (-1, 0.74))]
        scene.shape_of(corners, "pane")
    each, board = 1 / len(_BAYS), 0.013
    scene.filled(axes.corners((0, 1), (0, 1)), "layer-fibrous", "fibrous")
    for k, name in enumerate(_BAYS):
        scene.axes[name] = Axes(axes.at((k + 0.5) * each, 0), axes.across, (each * axes.along[0], 0.0))
    for k in range(1, len(_BAYS)):
        scene.filled(axes.corners((k * each - board, k * each + board), (0, 1)), "layer-board", "board")
    k = _BAYS.index("cut")
    a, b = k * each + board, (k + 1) * each - board
    for d in SKYLIGHT:
        scene.filled(axes.corners((a, b), (d - 0.022, d + 0.022)), "layer-board", "board")
    scene.shape_of(axes.corners((a + 0.006, b - 0.006), (SKYLIGHT[0] + 0.03, SKYLIGHT[1] - 0.03)), "pane")
    # Metal with its seams still lies on both ends.
    for start, end in ((-0.02, each - 0.3 * board), (1 - each + 0.3 * board, 1.02)):
        scene.shape_of(axes.corners((start, end), (-0.02, 1.0)), "layer-covering")
        for part in (0.25, 0.5, 0.75):
            x = start + part * (end - start)
            scene.line([axes.at(x, -0.02), axes.at(x, 1.0)], "thin")
    # One vent along the whole ridge, one along the eave.
    scene.shape_of(axes.corners((-0.02, 1.02), (1.0, 1.06)), "layer-covering")
    scene.line([axes.at(-0.01, 1.0), axes.at(1.01, 1.0)], "mesh")
    scene.shape_of([(left - 12, bottom), (right + 12, bottom), (right + 12, gutter), (left - 12, gutter)], "duct")
    scene.line([(left, bottom + 12), (right, bottom + 12)], "mesh")
    scene.box("house", left + 30, gutter, right - 30, ground)
