"""The loggers' house: cut through, with a logger in the room, one in the roof, one in the yard, and their paper."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from dryward.checks import Floats
from dryward.pictures import scenery
from dryward.pictures.scenery import Axes, Point, Scene

#: The house in each shape: left, right, ridge and ground [px].
_HOUSES = {
    "wide": (66.0, 562.0, 90.0, 610.0),
    "tall": (40.0, 430.0, 40.0, 360.0),
    "post": (40.0, 440.0, 60.0, 440.0),
    "strip": (40.0, 420.0, 40.0, 430.0),
}
#: The post with the logger of the yard: where it stands, and how high.
_POSTS = {"wide": (690.0, 190.0), "tall": (515.0, 130.0), "post": (520.0, 150.0), "strip": (490.0, 150.0)}
#: The paper in each shape: left, top, right, bottom [px]; its upper strip takes so much of the height.
_PAPERS = {
    "wide": (640.0, 30.0, 980.0, 350.0),
    "tall": (8.0, 388.0, 592.0, 632.0),
    "post": (8.0, 474.0, 592.0, 792.0),
    "strip": (545.0, 12.0, 888.0, 468.0),
}
_UPPER = 0.36
#: How thick the roof is drawn, as a share of the height of the house, and where its layers change across it.
_THICK, _DECK = 0.095, 0.62
_LAYERS = (
    (0.0, 0.07, "board"),
    (0.07, _DECK, "fibrous"),
    (_DECK, 0.8, "vent"),
    (0.8, 0.91, "board"),
    (0.91, 1.0, "covering"),
)


def house(scene: Scene, season: str) -> None:
    """The house and its yard.

    Axes: "slope" goes up the left roof and "far" up the right one, across from
    the room's face (0) to the covering (1); "indoors", "cavity" and "outdoors"
    are the loggers.
    """
    wide, high = scene.size
    left, right, ridge, ground = _HOUSES[scene.shape]
    scenery.sky(scene, season)
    scene.filled([(0, ground), (wide, ground), (wide, high), (0, high)], "floor", "ground")
    eave, middle, thick = ridge + 0.46 * (ground - ridge), 0.5 * (left + right), _THICK * (ground - ridge) + 14
    inside = ridge + 1.5 * thick
    scene.shape_of([(left, eave), (middle, inside), (right, eave), (right, ground), (left, ground)], "room")
    wall = 0.024 * (right - left) + 5
    for x in (left, right - wall):
        scene.shape_of([(x, eave - 4), (x + wall, eave - 4), (x + wall, ground), (x, ground)], "wall")
    for name, foot in (("far", right), ("slope", left)):
        run, rise = middle - foot, inside - eave
        long = math.hypot(run, rise)
        side = 1 if run > 0 else -1
        axes = Axes((foot, eave), (run, rise), (side * rise / long * thick, -side * run / long * thick))
        _roof(scene, name, axes, season)
    _inside(scene, left + wall, right - wall, eave, ground)
    slope = scene.axes["slope"]
    size = 0.032 * (ground - ridge) + 12
    x, y = slope.at(0.5, 0.5)
    logger(scene, "cavity", (x, y), size)
    room = (left + 0.3 * (right - left), eave + 0.42 * (ground - eave))
    logger(scene, "indoors", room, size)
    post, tall = _POSTS[scene.shape]
    scene.line([(post, ground), (post, ground - tall)], "eave")
    logger(scene, "outdoors", (post, ground - tall), size)
    # A little roof over it keeps the sun off.
    top = ground - tall - size
    scene.line([(post - 1.5 * size, top + 6), (post, top - 8), (post + 1.5 * size, top + 6)], "roofing")


def _roof(scene: Scene, name: str, axes: Axes, season: str) -> None:
    """One slope to the middle of the ridge: drywall, fill, vent, deck and covering; its eave closed by a board."""
    scene.axes[name] = axes
    run = axes.along[0]

    def band(start: float, low: float, high: float) -> list[Point]:
        """From a place along to the ridge, where both slopes meet upright."""
        ends = [1.0 - d * axes.across[0] / run for d in (low, high)]
        return [axes.at(start, low), axes.at(ends[0], low), axes.at(ends[1], high), axes.at(start, high)]

    for low, high, kind in _LAYERS:
        scene.filled(band(-0.1 if low >= _DECK else 0.0, low, high), f"layer-{kind}", kind)
    scene.line([axes.at(0, 0), axes.at(0, _DECK)], "eave")
    if season == "winter":
        scene.shape_of(band(-0.1, 1.0, 1.2), "snow")


def _inside(scene: Scene, left: float, right: float, eave: float, ground: float) -> None:
    """Someone in the room, a window, and a shower behind a thin wall."""
    span, tall = right - left, ground - eave
    scenery.person(scene, (left + 0.48 * span, ground), 0.62 * tall)
    x, y = left + 0.12 * span, eave + 0.42 * tall
    scene.shape_of([(x - 0.06 * span, y), (x + 0.06 * span, y), (x + 0.06 * span, y + 0.3 * tall),
                    (x - 0.06 * span, y + 0.3 * tall)], "pane")  # fmt: skip
    x = left + 0.68 * span
    scene.line([(x, ground), (x, eave + 0.18 * tall)], "frame")
    x, y = left + 0.9 * span, eave + 0.3 * tall
    scene.line([(right, y), (x, y), (x, y + 0.07 * tall)], "frame")
    half = 0.045 * span
    scene.line([(x - half, y + 0.07 * tall), (x + half, y + 0.07 * tall)], "eave")
    for k in range(4):
        at = x - 0.8 * half + 0.55 * half * k
        scene.line([(at, y + 0.16 * tall), (at - 0.2 * half, y + 0.5 * tall)], "breath")


def logger(scene: Scene, name: str, middle: Point, size: float) -> None:
    """A small logger with a screen; its axes have its name."""
    x, y = middle
    left, top, right, bottom = x - size, y - 0.72 * size, x + size, y + 0.72 * size
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "face")
    scene.shape_of([(left + 5, top + 5), (right - 5, top + 5), (right - 5, y + 2), (left + 5, y + 2)], "pane")
    scene.circle((x, bottom - 0.26 * size), 0.13 * size, "stone")
    scene.box(name, left, top, right, bottom)


def paper(scene: Scene) -> None:
    """The paper that the traces run on: two strips with a line at each quarter."""
    left, top, right, bottom = _PAPERS[scene.shape]
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "face")
    cut = top + _UPPER * (bottom - top)
    room = 30 if scene.shape == "wide" else 38
    for name, a, b in (("upper", top + room, cut - 6), ("lower", cut + room, bottom - 10)):
        axes = scene.box(name, left + 12, a, right - 12, b)
        for k in range(5):
            scene.line([axes.at(0, 0.25 * k), axes.at(1, 0.25 * k)], "grid")
    scene.line([(left, cut), (right, cut)], "thin")


def deck(scene: Scene) -> None:
    """In place of the paper the underside of the deck seen near: boards side by side, and over them a bar.

    Axes: "upper" is the bar, "lower" the boards.
    """
    left, top, right, bottom = _PAPERS[scene.shape]
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "face")
    cut = top + _UPPER * (bottom - top)
    low, high = cut - 34, cut - 10
    scene.box("upper", left + 14, low, right - 14, high)
    scene.shape_of([(left + 14, low), (right - 14, low), (right - 14, high), (left + 14, high)], "gauge")
    axes = scene.box("lower", left + 2, cut, right - 2, bottom - 2)
    for k in range(3):
        scene.filled(axes.corners((0.0, 1.0), (k / 3, (k + 1) / 3)), "layer-board", "board")


def trace(look: str, strip: str, values: Floats, low: float, high: float) -> dict[str, Any]:
    """A trace from the first to the last of its values, between the two ends of a strip."""
    shares = np.clip((np.asarray(values) - low) / (high - low), 0.0, 1.0)
    return scenery.line(look, *((strip, k / (len(shares) - 1), round(float(y), 4)) for k, y in enumerate(shares)))


def patches(axes: str, places: Sequence[float], across: float) -> list[dict[str, Any]]:
    """Specks of mold along a face."""
    made = []
    for k, s in enumerate(places):
        r = 0.016 + 0.008 * (k % 3)
        d = across + 0.13 * math.sin(2.4 * k)
        corners = ((axes, s + r * math.cos(a), d + 1.7 * r * math.sin(a)) for a in np.linspace(0, 5.5, 8).tolist())
        made.append(scenery.area("mold", *corners))
    return made


# --- a pin meter in a rafter ------------------------------------------------------------------

#: The meter in each shape: middle of its case, and half its width [px].
_METERS = {"wide": ((330.0, 250.0), 120.0), "tall": ((190.0, 200.0), 90.0), "post": ((200.0, 330.0), 125.0),
           "strip": ((300.0, 190.0), 95.0)}  # fmt: skip


def meter(scene: Scene, cold: bool) -> None:
    """A rafter cut off, with the two pins of a meter in it.

    Axes: "wood" is the rafter, "meter" the case, "bar" upright the scale of moisture beside it.
    """
    wide, high = scene.size
    scenery.sky(scene, "winter" if cold else "mild")
    (x, y), half = _METERS[scene.shape]
    top = y + 1.75 * half
    scene.filled([(0, top), (wide, top), (wide, high), (0, high)], "layer-board", "board")
    for k in range(5):
        d = top + (k + 1) * (high - top) / 6
        bow = 8 - 3 * k
        scene.line([(wide * s, d + bow * math.sin(2 * math.pi * s)) for s in np.linspace(0, 1, 25).tolist()], "stroke")
    if cold:
        for k in range(12):
            across, down = scenery.scattered(k)
            scene.line([(wide * across - 7, top - 3 - 5 * down), (wide * across + 7, top - 3 - 5 * down)], "snow")
    scene.box("wood", 0, top, wide, high)
    for side in (-0.35, 0.35):
        foot = x + side * half
        scene.line([(foot, y + 1.2 * half), (foot, top + 0.5 * half)], "roofing")
    scene.shape_of([(x - half, y - 1.2 * half), (x + half, y - 1.2 * half), (x + half, y + 0.9 * half),
                    (x + 0.6 * half, y + 1.25 * half), (x - 0.6 * half, y + 1.25 * half),
                    (x - half, y + 0.9 * half)], "face")  # fmt: skip
    scene.shape_of([(x - 0.78 * half, y - 0.95 * half), (x + 0.78 * half, y - 0.95 * half),
                    (x + 0.78 * half, y + 0.1 * half), (x - 0.78 * half, y + 0.1 * half)], "pane")  # fmt: skip
    for k in (-1, 0, 1):
        scene.circle((x + 0.4 * k * half, y + 0.55 * half), 0.13 * half, "stone")
    scene.box("meter", x - 0.78 * half, y - 0.95 * half, x + 0.78 * half, y + 0.1 * half)
    bar = x + 1.55 * half
    scene.shape_of([(bar, y - 1.5 * half), (bar + 0.45 * half, y - 1.5 * half), (bar + 0.45 * half, top - 10),
                    (bar, top - 10)], "gauge")  # fmt: skip
    scene.box("bar", bar, y - 1.5 * half, bar + 0.45 * half, top - 10)
