"""A closed jar with some water in it, with air over the water or with none: how high the vapor pressure stands."""

from __future__ import annotations

from typing import Any

from dryward import air, language
from dryward.panels.stage import Page
from dryward.pictures import instruments, scenery
from dryward.pictures.instruments import Box
from dryward.pictures.scenery import Scene
from dryward.units import to_si

message = language.beside(__file__)

#: The warmth at which both jars are bet on [degC].
ROOM = to_si(70.0, "degF")
#: Vapor pressure at the top of the gauge [Pa], and of one dot of vapor, by unit system.
FULL = 7000.0
DOT = {"us": to_si(0.05, "inHg"), "si": 200.0}
#: Jar, gauge, thermometer (x, top, bottom), and pump, in each shape [px].
_PLACES: dict[str, tuple[Box, Box, tuple[float, float, float], Box]] = {
    "wide": ((340, 150, 640, 630), (720, 150, 770, 630), (200, 390, 644), (90, 60, 190, 150)),
    "tall": ((190, 150, 430, 580), (500, 150, 548, 580), (90, 330, 594), (40, 64, 130, 140)),
    "post": ((165, 190, 405, 740), (462, 190, 510, 740), (72, 452, 752), (28, 84, 118, 168)),
    "strip": ((270, 74, 500, 436), (600, 50, 640, 436), (212, 130, 444), (30, 40, 110, 108)),
}
#: Of the jar's height: the water, and where vapor may be.
_WATER, _OVER = 0.2, 0.24


def pressure(state: Any) -> float:
    """The vapor pressure over the water [Pa]: that of the water's warmth, and no number of the air is in it."""
    return float(air.saturation_vapor_pressure(state.first.temperature))


def without_air(state: Any) -> bool:
    """Whether the air was pumped out; the lesson has no other control for it than the second air, which is then dry."""
    return bool(state.second.relative_humidity < 0.5)


def frozen(state: Any) -> bool:
    """Whether the water in the jar is ice."""
    return bool(state.first.temperature < 0.0)


def draw(scene: Scene, state: Any) -> None:
    """The jar under its lid, the water, rings for the air; or a pump and no rings."""
    wide, high = scene.size
    (left, top, right, bottom), gauge, thermometer, pump = _PLACES[scene.shape]
    scene.shape_of([(0, 0), (wide, 0), (wide, bottom + 6), (0, bottom + 6)], "room")
    scene.filled([(0, bottom + 6), (wide, bottom + 6), (wide, high), (0, high)], "floor", "ground")
    scene.path(f"M{left} {top}V{bottom}H{right}V{top}z", "glass")
    inside = bottom - 2
    water = inside - _WATER * (bottom - top)
    scene.shape_of(
        [(left + 2, water), (right - 2, water), (right - 2, inside), (left + 2, inside)],
        "frozen" if frozen(state) else "water",
    )
    if without_air(state):
        a, b, c, d = pump
        scene.shape_of([(a, b), (c, b), (c, d), (a, d)], "machine")
        scene.circle(((a + c) / 2, (b + d) / 2), 0.3 * (d - b), "face")
        middle = (left + right) / 2
        scene.line([(c, (b + d) / 2), (middle, (b + d) / 2), (middle, top - 16)], "frame")
    else:
        for k in range(34):
            across, down = scenery.scattered(k + 7)
            scene.circle((left + 14 + (right - left - 28) * across, top + 22 + (water - top - 40) * down), 6, "ring")
    scene.shape_of([(left - 10, top - 18), (right + 10, top - 18), (right + 10, top + 2), (left - 10, top + 2)], "lid")
    scene.box("jar", left + 2, top + 12, right - 2, inside)
    scene.box("lid", left, top - 18, right, top)
    instruments.thermometer(scene, "a-thermometer", *thermometer)
    a, b, c, d = gauge
    scene.shape_of([(a, b), (c, b), (c, d), (a, d)], "gauge")
    scene.box("column", a, b, c, d)


def given(page: Page, state: Any) -> dict[str, Any]:
    """How warm it is, what is in the jar, and the mark of the most vapor there can be at the warmth of the bet."""
    mark = float(air.saturation_vapor_pressure(ROOM))
    warm = page.show(state.first.temperature, "temperature", 0 if page.unit_system == "us" else 1)
    inside = message("jar-without-air" if without_air(state) else "jar-with-air", frozen=frozen(state))
    return {
        "marks": [
            instruments.column("a-thermometer", state.first.temperature),
            scenery.line("before", ("column", -0.35, mark / FULL), ("column", 1.35, mark / FULL)),
        ],
        "tags": [
            scenery.tag(warm, ("a-thermometer", 0.5, 1.0), "temperature", "over"),
            scenery.tag(inside, ("lid", 0.5, 1.0), "", "over"),
            scenery.tag(message("jar-mark"), ("column", -0.35, mark / FULL), "", "left", minor=True),
        ],
    }


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The gauge filled to the vapor pressure, and as many dots of vapor over the water."""
    stands = pressure(state)
    text = page.show(stands, "pressure")
    count = round(stands / DOT[page.unit_system])
    return {
        "marks": [
            scenery.band("vapor pressure", "column", (0.0, 1.0), (0.0, min(1.0, stands / FULL))),
            scenery.dots(count, ("jar", 0.06, _OVER), ("jar", 0.94, 0.97)),
        ],
        "tags": [scenery.tag(text, ("column", 0.5, min(1.0, stands / FULL)), "vapor pressure", "over")],
    }


def scale(page: Page) -> str:
    """What a dot stands for."""
    return message("jar-scale", dot=page.show(DOT[page.unit_system], "pressure"))
