"""Two places with air, on the stage: a room and the yard; out of each a box of air, and the jar its water goes into."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from dryward.pictures import instruments, scenery
from dryward.pictures.instruments import Box
from dryward.pictures.scenery import Point, Scene
from dryward.units import to_si


@dataclass(frozen=True)
class _Spread:
    """Where the things of one air stand in a scene [px]."""

    box: Box
    thermometer: tuple[float, float, float]
    dial: tuple[Point, float]
    jar: Box
    #: A heater or a dehumidifier.
    thing: Box
    #: Where a can stands.
    can: Box = (0, 0, 1, 1)


#: Each air's things, in each shape; two side by side show one air each.
_SPREADS = {
    "wide": (
        _Spread((40, 165, 220, 345), (62, 395, 640), ((168, 480), 66), (330, 90, 450, 640), (0, 0, 1, 1)),
        _Spread((612, 165, 792, 345), (634, 395, 640), ((740, 480), 66), (850, 90, 970, 640), (0, 0, 1, 1)),
    ),
    "tall": (
        _Spread((14, 120, 142, 248), (32, 290, 606), ((104, 370), 46), (196, 70, 288, 606), (0, 0, 1, 1)),
        _Spread((344, 120, 472, 248), (362, 290, 606), ((434, 370), 46), (498, 70, 590, 606), (0, 0, 1, 1)),
    ),
    "post": (
        _Spread((46, 200, 266, 420), (80, 462, 756), ((216, 548), 82), (390, 70, 540, 756),
                (122, 612, 276, 766), (306, 650, 366, 766)),
    ),
    "strip": (
        _Spread((26, 104, 256, 334), (336, 84, 440), ((524, 150), 84), (706, 30, 850, 446),
                (386, 262, 556, 452), (606, 346, 664, 452)),
    ),
}  # fmt: skip
#: The lower edge of things, and the outer face of the house's wall, in each shape [px].
_FLOORS = {"wide": 650.0, "tall": 614.0, "post": 768.0, "strip": 454.0}
_WALLS = {"wide": (540.0, 576.0), "tall": (306.0, 324.0)}
#: Colder than this [degC] there is snow in the yard; this humid [-] there is fog.
_SNOW, _FOG = to_si(45.0, "degF"), 0.9


def happens(state: Any) -> str:
    """What the two airs of one scene are: one air of the "yard", or before and after a "heater" or a "dehumidifier"."""
    if state.first == state.second:
        return "yard"
    return "heater" if state.first.temperature > state.second.temperature else "dehumidifier"


def signature(state: Any) -> Any:
    """What of a state stands still."""
    yard = state.second
    return happens(state), state.first.temperature < 0.0, yard.temperature < _SNOW, yard.relative_humidity >= _FOG


def draw(scene: Scene, state: Any) -> None:
    """Room and yard in one scene, or one place alone where two scenes stand side by side."""
    spreads = _SPREADS[scene.shape]
    if len(spreads) == 2:
        _outdoors(scene, state)
        _house(scene)
    elif happens(state) == "yard":
        _outdoors(scene, state)
    else:
        _room(scene, scene.size[0])
        if happens(state) == "heater":
            instruments.heater(scene, spreads[0].thing)
        else:
            instruments.dehumidifier(scene, "bucket", spreads[0].thing)
    for letter, spread in zip("ab", spreads, strict=False):
        instruments.air_box(scene, f"{letter}-box", spread.box)
        instruments.thermometer(scene, f"{letter}-thermometer", *spread.thermometer)
        instruments.dial(scene, f"{letter}-dial", *spread.dial)
        instruments.jar(scene, f"{letter}-jar", spread.jar)
    scene.box("can", *spreads[0].can)


def _outdoors(scene: Scene, state: Any) -> None:
    wide, high = scene.size
    cold = state.second.temperature < _SNOW
    scenery.sky(scene, "winter" if cold else "mild")
    floor = _FLOORS[scene.shape]
    if state.second.relative_humidity >= _FOG:
        for k in range(4):
            y = high * (0.08 + 0.25 * k)
            waves = [(x, y + 11 * math.sin(x / 29 + 2 * k)) for x in range(0, int(wide) + 1, 6)]
            scene.line(waves, "fog")
    ground = [(0.0, floor), (wide, floor), (wide, high), (0.0, high)]
    if cold:
        scene.shape_of(ground, "snow")
    else:
        scene.filled(ground, "floor", "ground")


def _room(scene: Scene, right: float) -> None:
    high, floor = scene.size[1], _FLOORS[scene.shape]
    scene.shape_of([(0, 0), (right, 0), (right, floor), (0, floor)], "room")
    scene.filled([(0, floor), (right, floor), (right, high), (0, high)], "floor", "ground")


def _house(scene: Scene) -> None:
    """The room, with a wall and the roof over it."""
    inner, outer = _WALLS[scene.shape]
    high = scene.size[1]
    _room(scene, inner)
    scene.shape_of([(inner, 40), (outer, 40), (outer, high), (inner, high)], "wall")
    scene.shape_of([(0, 0), (outer + 26, 36), (outer + 26, 54), (0, 22)], "layer-covering")
