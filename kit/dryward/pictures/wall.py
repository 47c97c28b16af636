"""An upright wall on the stage: its bay between plates or between studs, and a thermometer at each plane."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from dryward.building import Assembly
from dryward.building.framing import WholeAssembly
from dryward.physics.steady import Profile
from dryward.pictures import scenery
from dryward.pictures.scenery import Axes, Scene
from dryward.units import to_si

#: Of the cut wall in each shape [px]: its room face, the ceiling, the floor, and what a wall of `_RULER` takes across.
_WALLS = {
    "wide": (330.0, 96.0, 610.0, 440.0),
    "tall": (190.0, 90.0, 580.0, 290.0),
    "post": (190.0, 110.0, 725.0, 300.0),
    "strip": (330.0, 60.0, 436.0, 370.0),
}
#: Walls up to so thick are drawn on one scale [m].
_RULER = to_si(10.0, "in")
#: The foot and the head of each thermometer [degC], and where these stand, as a share of the wall's height.
_LOW, _HIGH = to_si(10.0, "degF"), to_si(80.0, "degF")
_FOOT, _HEAD = 0.14, 0.9
#: Plates take so much of the height each; so far beside the wall hang the thermometers of the two airs.
_PLATE, _BESIDE = 0.055, 0.26
#: Where these stand, across.
BESIDE = (-_BESIDE, 1.0 + _BESIDE)
#: Thermometers closer than this, as a share of the wall's thickness, would stand in one another.
_NEAR = 0.1
#: Heat through so little R is drawn as an arrow of full width [m2 K/W].
_MUCH_HEAT = to_si(8.0, "R")
#: Of the wall seen from above in each shape [px]: left, right, the room's face, the outer face.
_PLANS = {
    "wide": (70.0, 930.0, 500.0, 215.0),
    "tall": (36.0, 564.0, 470.0, 220.0),
    "post": (36.0, 564.0, 555.0, 275.0),
    "strip": (70.0, 830.0, 345.0, 160.0),
}


def bay(scene: Scene, assembly: Assembly, face: str) -> None:
    """A wall cut through one bay, with the room on its left and a winter yard on its right.

    Axes: "slope" goes up the wall and across it, from the room's face (0) to
    the outer one (1), as that of a roof does; "room" and "sky" are boxes.
    """
    wide, high = scene.size
    left, ceiling, floor, ruler = _WALLS[scene.shape]
    thick = sum(each.drawn_thickness for each in assembly.layers)
    right = left + ruler * min(1.0, thick / _RULER)
    scenery.sky(scene, "winter")
    scene.box("sky", right, high * 0.05, wide, floor)
    # The yard: snow that lies, and a fir.
    grade = floor + 6
    scenery.fir(scene, (right + 0.74 * (wide - right), grade), 0.5 * (floor - ceiling))
    scenery.snow(scene, right, wide, grade, high)
    # The room, its ceiling and its floor.
    scene.shape_of([(0, 0), (left, 0), (left, floor), (0, floor)], "room")
    scene.filled([(0, 0), (left, 0), (left, ceiling), (0, ceiling)], "layer-board", "board")
    scene.filled([(0, floor), (right, floor), (right, high), (0, high)], "floor", "ground")
    scene.box("room", 0, ceiling, left, floor)
    person = 0.5 * (floor - ceiling)
    scenery.person(scene, (left * 0.36, floor), person)
    axes = Axes((left, floor), (0.0, ceiling - floor), (right - left, 0.0))
    scenery.stack(scene, "slope", axes, assembly)
    inner, outer = _between(assembly)
    for a, b in ((0.0, _PLATE), (1 - 2 * _PLATE, 1 - _PLATE), (1 - _PLATE, 1.0)):
        _wood(scene, axes, (a, b), (inner, outer))
    # What stands on the wall: the roof's edge.
    scene.shape_of([(left, ceiling), (right, ceiling), (right, 0), (left, 0)], "wall")
    for d in _hung(assembly, face):
        _thermometer(scene, axes, d)


def _between(assembly: Assembly) -> tuple[float, float]:
    """Where the framing begins and ends, across."""
    found = [(a, b) for layer, _, a, b in scenery.layers_through(assembly) if layer.name in ("bay", "foam")]
    return found[0][0], found[-1][1]


def _wood(scene: Scene, axes: Axes, along: tuple[float, float], across: tuple[float, float]) -> None:
    """A piece of framing, cut across its grain."""
    corners = axes.corners(along, across)
    scene.shape_of(corners, "wood")
    for a, b in ((0, 2), (1, 3)):
        scene.line([corners[a], corners[b]], "grain")


def face_at(assembly: Assembly, layer: str) -> float:
    """Where the inner face of a layer lies, across."""
    return scenery.across(assembly, layer)[0]


def _hung(assembly: Assembly, face: str) -> list[float]:
    """Where thermometers hang, across: room, wall face, the face that is asked about, outer face, yard."""
    asked = face_at(assembly, face)
    outer = [1.0] if 1.0 - asked > _NEAR else []
    return [BESIDE[0], 0.0, asked, *outer, BESIDE[1]]


def height(temperature: float) -> float:
    """How high a temperature [degC] stands on every thermometer, along the wall."""
    share = min(1.0, max(0.0, (temperature - _LOW) / (_HIGH - _LOW)))
    return _FOOT + (_HEAD - _FOOT) * share


def _thermometer(scene: Scene, axes: Axes, d: float) -> None:
    """An empty one: its tube, and its bulb below the foot."""
    scenery.thermometer(scene, axes.at(_FOOT, d), axes.at(_HEAD + 0.02, d)[1], _half(scene.shape))


def _half(shape: str) -> int:
    """Half the width of a thermometer [px]."""
    return {"strip": 7}.get(shape, 9)


def readings(profile: Profile, assembly: Assembly, face: str, only: Iterable[float] = ()) -> dict[str, Any]:
    """What each thermometer stands at, and the line over their heads; or those at some places alone."""
    wanted = tuple(only)
    thick = sum(each.drawn_thickness for each in assembly.layers)
    marks: list[dict[str, Any]] = []
    for d in _hung(assembly, face):
        if wanted and not any(abs(d - each) < 1e-9 for each in wanted):
            continue
        h, half = height(_temperature(profile, assembly, d, thick)), 0.011
        marks.append(scenery.band("temperature", "slope", (_FOOT - 0.03, h), (d - half, d + half)))
    if wanted:
        return {"marks": marks}
    line = [(-_BESIDE, float(profile.temperature[0]))]
    for depth, temperature in zip(profile.depth[1:-1], profile.temperature[1:-1], strict=True):
        line.append((float(depth) / thick, float(temperature)))
    line.append((1.0 + _BESIDE, float(profile.temperature[-1])))
    # The air at a face is a little warmer or colder than the face: the film of air, drawn thin.
    line[1:1] = [(-0.05, line[0][1])]
    line[-1:-1] = [(1.05, line[-1][1])]
    marks.append(scenery.line("temperature", *(("slope", height(t), d) for d, t in line)))
    return {"marks": marks}


def _temperature(profile: Profile, assembly: Assembly, d: float, thick: float) -> float:
    """At a thermometer: of an air beside the wall, else of the plane there."""
    if d < 0 or d > 1:
        return float(profile.temperature[0 if d < 0 else -1])
    places = [abs(float(depth) / thick - d) for depth in profile.depth[1:-1]]
    return float(profile.temperature[1 + places.index(min(places))])


# --- seen from above -------------------------------------------------------------------


def from_above(scene: Scene, assembly: Assembly, whole: WholeAssembly) -> None:
    """A stretch of the wall from above: its wood takes the share of the width that it takes of the wall.

    Axes: "slope" goes along the wall and across it, from the room's face (0)
    to the outer one (1); "room" and "sky" are boxes.
    """
    wide, high = scene.size
    left, right, near, far = _PLANS[scene.shape]
    scenery.sky(scene, "winter")
    scene.shape_of([(0, near), (wide, near), (wide, high), (0, high)], "room")
    axes = Axes((left, near), (right - left, 0.0), (0.0, far - near))
    scenery.stack(scene, "slope", axes, assembly)
    for a, b in studs(whole.share):
        _wood(scene, axes, (a, b), _between(assembly))
    # The wall goes on at both sides.
    for s in (0.0, 1.0):
        scenery.goes_on(scene, axes.at(s, 1.05), axes.at(s, -0.05)[1])
    scene.box("room", 0, near, wide, high)
    scene.box("sky", 0, 0, wide, far)


def studs(share: float) -> list[tuple[float, float]]:
    """Where the wood stands along the wall that `from_above` draws."""
    half = share / 2
    return [(0.25 - half / 2, 0.25 + half / 2), (0.75 - half / 2, 0.75 + half / 2)] if share else []


def heat(whole: WholeAssembly) -> dict[str, Any]:
    """Arrows of heat through the fill and through the wood, as wide as so much goes through each."""
    places = [(s, whole.cavity) for s in (0.06, 0.37, 0.63, 0.94)]
    places += [((a + b) / 2, whole.through_framing) for a, b in studs(whole.share)]
    return {
        "marks": [
            scenery.arrow("temperature", ("slope", s, -0.28), ("slope", s, 1.3), _MUCH_HEAT / resistance)
            for s, resistance in places
        ]
    }
