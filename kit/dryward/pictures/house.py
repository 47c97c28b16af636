"""A whole house in section, and the air that goes through it: in low, out high, the neutral level between.

The house stands for one of `HEIGHT` that leaks at `PLACES`.  Its axes "house"
go from wall to wall, and across from the floor (0) to the ridge (1), so that
the neutral level is a line across them.
"""

from __future__ import annotations

import math
from typing import Any

from dryward.language import message
from dryward.physics.house_air import HouseAir
from dryward.pictures import scenery
from dryward.pictures.scenery import Axes, Place, Point, Scene
from dryward.units import FOOT, show, show_in, to_si

#: From the floor to the ridge of a house of one story under a vault [m].
HEIGHT = to_si(12.0, "ft")
#: Where it leaks: at the floor, half way up and at the ridge, each with its part of all leaks.  The kit's own.
PLACES = ((0.0, 0.4), (HEIGHT / 2, 0.4), (HEIGHT, 0.2))
#: Its volume [m3].
VOLUME = to_si(20_000.0, "ft3")
#: Air that one dart stands for, by unit system [m3]; they go by in real time.
DART = {"us": 0.5 * FOOT**3, "si": 0.014}

#: Of the room: its left and right face, the floor and the ridge, and how thick roof and walls are, in each shape [px].
_FRAMES = {
    "wide": (245.0, 755.0, 572.0, 142.0, 34.0),
    "tall": (126.0, 474.0, 540.0, 188.0, 26.0),
    "post": (116.0, 484.0, 690.0, 282.0, 28.0),
    "strip": (260.0, 640.0, 414.0, 104.0, 24.0),
}
#: The top of the walls, as a share of the height of the room.
EAVE = 0.58
#: The window in the far wall, on the axes of the house: along, across.
_PANE = (0.07, 0.29), (0.2, 0.52)
#: The fan in the right wall.
_FAN = 0.36
#: Beside it, where its flow is told.
AT_FAN: Place = ("house", 1.21, _FAN - 0.05)
#: Lines along the underside of both slopes.
UNDER_ROOF: tuple[tuple[Place, Place], ...] = (
    (("house", 0.04, EAVE + 0.055), ("house", 0.49, 1.01)),
    (("house", 0.51, 1.01), ("house", 0.96, EAVE + 0.055)),
)
#: The arrow of a leak is widest at the first, and less than the second is not drawn [m3/s].
_WIDEST, LEAST = to_si(100.0, "cfm"), to_si(0.5, "cfm")
#: Water of this share of the pane's limit over it is drawn as much.
_STREAMS = 0.5


def draw(scene: Scene, season: str = "winter", inside: str = "family") -> None:
    """The house in its season: a family with pots on the stove, or a job site with an "electric" heater or a "burner".

    Axes: "house"; "pane", the window in the far wall; "fan"; and "outdoors", all of the scene from its upper left.
    """
    wide, high = scene.size
    left, right, floor, ridge, thick = _FRAMES[scene.shape]
    axes = Axes((left, floor), (right - left, 0.0), (0.0, ridge - floor))
    eave, peak = axes.at(0, EAVE)[1], axes.at(0.5, 1)
    scenery.sky(scene, season)
    _ground(scene, axes, thick)
    # Walls with their fill, then the room, the roof over both.
    for x, out in ((left, -thick), (right, thick)):
        wall = [(x, floor), (x + out, floor), (x + out, eave), (x, eave)]
        scene.filled(wall, "layer-fibrous", "fibrous")
        scene.line([wall[0], wall[3]], "house")
        scene.line([wall[1], wall[2]], "house")
    scene.shape_of([(left, floor), (left, eave), peak, (right, eave), (right, floor)], "room")
    scene.axes["house"] = axes
    pane = scene.box("pane", axes.at(_PANE[0][0], 0)[0], axes.at(0, _PANE[1][1])[1],
                     axes.at(_PANE[0][1], 0)[0], axes.at(0, _PANE[1][0])[1])  # fmt: skip
    scene.shape_of(pane.corners((0, 1), (0, 1)), "pane")
    scene.line([pane.at(0.5, 0), pane.at(0.5, 1)], "frame")
    _roof(scene, axes, thick)
    _floor(scene, axes, thick)
    high_up = axes.across[1] * -1
    if inside == "family":
        _stove(scene, axes.at(0.88, 0), 0.24 * high_up)
        scenery.person(scene, axes.at(0.62, 0), 0.44 * high_up)
        scenery.person(scene, axes.at(0.43, 0), 0.3 * high_up)
    else:
        scenery.person(scene, axes.at(0.48, 0), 0.44 * high_up)
        _heater(scene, axes.at(0.76, 0), 0.26 * high_up, flame=inside == "burner")
    _fan(scene, axes, thick)
    scene.axes["outdoors"] = Axes((0.0, 0.0), (wide, 0.0), (0.0, high))


def _ground(scene: Scene, axes: Axes, thick: float) -> None:
    """The lot, and the crawlspace under the floor."""
    wide, high = scene.size
    (left, floor), right = axes.at(0, 0), axes.at(1, 0)[0]
    grade, deep = floor + 0.42 * (high - floor), floor + 0.86 * (high - floor)
    scene.filled([(0, grade), (wide, grade), (wide, high), (0, high)], "floor", "ground")
    scene.line([(0, grade), (wide, grade)], "grade")
    scene.shape_of([(left, floor), (right, floor), (right, deep), (left, deep)], "crawlspace")
    for x, out in ((left, -thick), (right, thick)):
        scene.shape_of([(x, floor), (x + out, floor), (x + out, deep + 8), (x, deep + 8)], "wall")
    scene.filled([(left, deep - 6), (right, deep - 6), (right, deep + 8), (left, deep + 8)], "earth", "ground")


def _floor(scene: Scene, axes: Axes, thick: float) -> None:
    """Boards on joists."""
    (left, floor), right = axes.at(0, 0), axes.at(1, 0)[0]
    for k in range(9):
        x = left + (k + 0.5) / 9 * (right - left)
        scene.filled([(x - 4, floor), (x + 4, floor), (x + 4, floor + 17), (x - 4, floor + 17)], "layer-board", "")
    boards = [(left - thick, floor), (right + thick, floor), (right + thick, floor + 8), (left - thick, floor + 8)]
    scene.filled(boards, "layer-board", "board")


def _roof(scene: Scene, axes: Axes, thick: float) -> None:
    """Both slopes: fill between the ceiling and the roofing, with eaves."""
    (px, py) = axes.at(0.5, 1)
    for side in (0.0, 1.0):
        ex, ey = axes.at(side, EAVE)
        run, rise = px - ex, py - ey
        long = math.hypot(run, rise)
        turn = 1.0 if side == 0.0 else -1.0
        nx, ny = turn * rise / long * thick, -turn * run / long * thick
        # Past the wall, to the edge of the roof; the two slopes meet over the ridge.
        over = 1.15 * thick / abs(run)
        foot = (ex - over * run, ey - over * rise)
        top = (px, py + ny - nx * rise / run)
        slope = [foot, (px, py), top, (foot[0] + nx, foot[1] + ny)]
        scene.filled(slope, "layer-fibrous", "fibrous")
        scene.line([(ex, ey), (px, py)], "house")
        scene.line([slope[3], top], "roofing")
        scene.line([slope[0], slope[3]], "eave")


def _stove(scene: Scene, foot: Point, high: float) -> None:
    """A stove with a pot that steams."""
    x, y = foot
    w = 0.36 * high
    scene.shape_of([(x - w, y), (x - w, y - 0.8 * high), (x + w, y - 0.8 * high), (x + w, y)], "machine")
    scene.shape_of([(x - 0.5 * w, y - 0.8 * high), (x - 0.55 * w, y - 1.1 * high), (x + 0.55 * w, y - 1.1 * high),
                    (x + 0.5 * w, y - 0.8 * high)], "pot")  # fmt: skip
    for side in (-0.3, 0.3):
        bow = 0.1 * high
        steam = f"q{bow:.1f} {-bow:.1f} 0 {-2 * bow:.1f}t0 {-2 * bow:.1f}"
        scene.path(f"M{x + side * w:.1f} {y - 1.2 * high:.1f}{steam}", "breath")


def _heater(scene: Scene, foot: Point, high: float, flame: bool) -> None:
    """A heater on the job: glowing bars, or a burner on a bottle of gas with its open flame."""
    x, y = foot
    w = 0.42 * high
    if not flame:
        scene.shape_of([(x - w, y - 0.1 * high), (x - w, y - 0.85 * high), (x + w, y - 0.85 * high),
                        (x + w, y - 0.1 * high)], "machine")  # fmt: skip
        for k in range(4):
            bar = y - (0.25 + 0.15 * k) * high
            scene.line([(x - 0.75 * w, bar), (x + 0.75 * w, bar)], "hot")
        for leg in (x - 0.7 * w, x + 0.7 * w):
            scene.line([(leg, y - 0.1 * high), (leg, y)], "frame")
        # Its cord.
        scene.path(f"M{x + w:.1f} {y - 0.3 * high:.1f}q{0.5 * w:.1f} 0 {0.6 * w:.1f} {0.3 * high:.1f}", "frame")
        return
    bottle = x + 1.15 * w
    scene.shape_of([(bottle - 0.36 * w, y), (bottle - 0.36 * w, y - 0.6 * high), (bottle - 0.15 * w, y - 0.72 * high),
                    (bottle + 0.15 * w, y - 0.72 * high), (bottle + 0.36 * w, y - 0.6 * high),
                    (bottle + 0.36 * w, y)], "machine")  # fmt: skip
    scene.path(f"M{bottle:.1f} {y - 0.72 * high:.1f}v{-0.1 * high:.1f}h{-0.95 * w:.1f}v{0.4 * high:.1f}", "frame")
    scene.shape_of([(x - 0.6 * w, y), (x - 0.45 * w, y - 0.3 * high), (x + 0.45 * w, y - 0.3 * high),
                    (x + 0.6 * w, y)], "machine")  # fmt: skip
    for aside, tall in ((-0.28, 0.42), (0.0, 0.62), (0.28, 0.42)):
        top, half = y - (0.3 + tall) * high, 0.2 * w
        fx, fy = x + aside * w, y - 0.3 * high
        scene.path(
            f"M{fx - half:.1f} {fy:.1f}C{fx - 1.4 * half:.1f} {fy - 0.4 * tall * high:.1f} {fx:.1f} "
            f"{fy - 0.5 * tall * high:.1f} {fx:.1f} {top:.1f}C{fx + 0.2 * half:.1f} {fy - 0.6 * tall * high:.1f} "
            f"{fx + 1.5 * half:.1f} {fy - 0.4 * tall * high:.1f} {fx + half:.1f} {fy:.1f}z",
            "flame",
        )


def _fan(scene: Scene, axes: Axes, thick: float) -> None:
    """A fan in the right wall."""
    x, y = axes.at(1, _FAN)
    radius = 0.85 * thick
    scene.box("fan", x, y - radius, x + thick, y + radius)
    a, b = x - 4, x + thick + 4
    scene.shape_of([(a, y - radius), (b, y - radius), (b, y + radius), (a, y + radius)], "machine")
    middle = (x + thick / 2, y)
    for k in range(4):
        angle = math.pi / 4 + k * math.pi / 2
        tip = (middle[0] + 0.62 * radius * math.cos(angle), middle[1] + 0.62 * radius * math.sin(angle))
        scene.line([middle, tip], "blade")
    scene.circle(middle, 3.5, "hub")


# --- what happens in it --------------------------------------------------------------------


def inside(share: float) -> list[Place]:
    """The room from the floor up to a share of its height, as a shape on the axes of the house."""
    share = min(share, 1.0)
    if share <= EAVE:
        return [("house", 0.0, 0.0), ("house", 1.0, 0.0), ("house", 1.0, share), ("house", 0.0, share)]
    half = 0.5 * (share - EAVE) / (1 - EAVE)
    return [("house", 0.0, 0.0), ("house", 1.0, 0.0), ("house", 1.0, EAVE), ("house", 1 - half, share),
            ("house", half, share), ("house", 0.0, EAVE)]  # fmt: skip


def across_room(share: float) -> tuple[Place, Place]:
    """The ends of a level line in the room at a share of its height."""
    half = 0.5 * max(0.0, share - EAVE) / (1 - EAVE)
    return ("house", half, share), ("house", 1 - half, share)


def wet_pane(share: float) -> list[dict[str, Any]]:
    """Drops on the window: along its edges from 0 on, all over it from 1 on."""
    if share < 0:
        return []
    rows = [((0.06, 0.04), (0.94, 0.04)), ((0.06, 0.96), (0.94, 0.96))]
    if share >= 1:
        rows += [((0.06, across), (0.94, across)) for across in (0.27, 0.5, 0.73)]
    return [scenery.drops(("pane", *a), ("pane", *b), min(1.0, 0.15 + _STREAMS * share)) for a, b in rows]


def neutral(found: HouseAir, across: bool = False, named: bool = True) -> dict[str, Any]:
    """The neutral level: a line beside the house, or all `across` it, with its name; over the ridge only its name."""
    height = found.neutral / HEIGHT
    if not -0.1 <= height <= 1.12:
        text = message("pictures.neutral-over" if height > 0 else "pictures.neutral-under")
        return {"tags": [scenery.tag(text, ("house", -0.1, 1.1 if height > 0 else -0.2), "air flow", "left")]}
    ends = [(-0.34, 1.34)] if across else [(-0.34, -0.07), (1.07, 1.34)]
    marks = [scenery.line("neutral", ("house", a, height), ("house", b, height)) for a, b in ends]
    tag = scenery.tag(message("pictures.neutral-level"), ("house", -0.2, height), "air flow", "over", minor=not named)
    return {"marks": marks, "tags": [tag]}


def moving(found: HouseAir, system: str) -> dict[str, Any]:
    """Moving air at each place and at the fan, as darts in real time at the house's own flows."""
    low, middle, high = found.flows
    per_minute = 60.0 / DART[system]
    flows = []

    def path(flow: float, *outward: Place) -> None:
        if abs(flow) >= LEAST:
            places = outward if flow > 0 else outward[::-1]
            flows.append(scenery.flow(abs(flow) * per_minute, *places, spread=0.04, look="air flow"))

    for from_wall in (_same, _mirrored):
        path(low / 2, *(("house", from_wall(s), d) for s, d in ((0.3, 0.2), (0.03, 0.04), (-0.36, 0.04))))
        path(high / 2, *(("house", from_wall(s), d) for s, d in ((0.32, 0.55), (0.47, 0.92), (0.44, 1.28))))
    path(middle, *(("house", s, d) for s, d in ((0.34, 0.55), (0.0, 0.5), (-0.36, 0.5))))
    path(found.fan, *(("house", s, d) for s, d in ((0.66, _FAN), (1.0, _FAN), (1.36, _FAN))))
    return {"flows": flows}


def _same(along: float) -> float:
    return along


def _mirrored(along: float) -> float:
    return 1.0 - along


def arrows(found: HouseAir) -> dict[str, Any]:
    """An arrow at each place that leaks, as wide as its flow, which points the way it goes."""
    low, middle, high = found.flows
    leaks: tuple[tuple[float, Place, Place], ...] = (
        (low / 2, ("house", 0.07, 0.04), ("house", -0.15, 0.04)),
        (low / 2, ("house", 0.93, 0.04), ("house", 1.15, 0.04)),
        (middle, ("house", 0.07, 0.5), ("house", -0.15, 0.5)),
        (high, ("house", 0.5, 0.94), ("house", 0.5, 1.16)),
    )
    marks = []
    for flow, inner, outer in leaks:
        if abs(flow) >= LEAST:
            start, end = (inner, outer) if flow > 0 else (outer, inner)
            marks.append(scenery.arrow("air flow", start, end, min(1.0, abs(flow) / _WIDEST)))
    return {"marks": marks}


def named(found: HouseAir, system: str) -> dict[str, Any]:
    """How much goes each way at each place and at the fan, in words there."""
    tags = []
    spots: tuple[tuple[Place, str], ...] = (
        (("house", -0.22, 0.02), "under"), (("house", -0.22, 0.48), "under"), (("house", 0.54, 1.16), "right"),
    )  # fmt: skip
    for flow, (at, side) in zip(found.flows, spots, strict=True):
        if abs(flow) >= LEAST:
            text = message("pictures.air-in" if flow < 0 else "pictures.air-out", air=told(abs(flow), system))
            tags.append(scenery.tag(text, at, "air flow", side))
    if abs(found.fan) >= LEAST:
        text = message("pictures.air-of-fan", air=told(abs(found.fan), system), way="out" if found.fan > 0 else "in")
        tags.append(scenery.tag(text, AT_FAN, "air flow", "under"))
    return {"tags": tags}


def told(flow: float, system: str) -> str:
    """A flow of air."""
    return show(flow, "air flow", system, 0)


def high(height: float, system: str) -> str:
    """A height over the floor."""
    return show_in(height, "ft" if system == "us" else "m", 0 if system == "us" else 1)


def scale(system: str) -> str:
    """What a dart stands for, in words."""
    size = show_in(DART[system], "ft3", 1) if system == "us" else show_in(DART[system], "L", 0)
    return message("pictures.dart-stands-for", air=size)
