"""What is measured with in a scene, and what water is caught in: thermometer, dial, jar, can; what heats, what dries.

Each part draws its still lines and leaves axes of its own; what moves in it is
a mark: the column, the needle, the level.
"""

from __future__ import annotations

import math
from typing import Any

from dryward.pictures import scenery
from dryward.pictures.scenery import Axes, Point, Scene
from dryward.units import to_si

#: Left, top, right and lower edge [px].
Box = tuple[float, float, float, float]

#: The ends of a thermometer [degC].
COLDEST, WARMEST = to_si(0.0, "degF"), to_si(100.0, "degF")


def air_box(scene: Scene, name: str, box: Box) -> None:
    """A box of air taken out of a place: its edges, seen a little from the side."""
    left, top, right, bottom = box
    deep = (right - left) * 0.12
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "air")
    scene.line([(left, top), (left + deep, top - deep), (right + deep, top - deep), (right, top)], "thin")
    scene.line([(right + deep, top - deep), (right + deep, bottom - deep), (right, bottom)], "thin")
    inset = (right - left) * 0.05
    scene.box(name, left + inset, top + inset, right - inset, bottom - inset)


def vapor(name: str, count: int) -> dict[str, Any]:
    """So many dots of vapor in a box of air."""
    return scenery.dots(count, (name, 0.0, 0.0), (name, 1.0, 1.0))


def thermometer(scene: Scene, name: str, x: float, top: float, bottom: float) -> None:
    """An upright tube with a bulb, from `COLDEST` to `WARMEST`."""
    wide, bulb = 7.0, 15.0
    low = bottom - 2 * bulb
    scene.shape_of([(x - wide, top), (x + wide, top), (x + wide, low + 6), (x - wide, low + 6)], "face")
    scene.circle((x, bottom - bulb), bulb, "face")
    for k in range(1, 10):
        y = low + (top - low) * k / 10
        scene.line([(x + wide, y), (x + wide + (11 if k == 5 else 6), y)], "thin")
    scene.box(name, x - wide + 3, top, x + wide - 3, low)


def column(name: str, temperature: float, ends: tuple[float, float] = (COLDEST, WARMEST)) -> dict[str, Any]:
    """How high the column of a thermometer stands; it begins in the bulb."""
    share = _high(temperature, ends)
    return scenery.area("temperature", (name, 0.0, -0.1), (name, 1.0, -0.1), (name, 1.0, share), (name, 0.0, share))


def pointer(name: str, dew_point: float) -> dict[str, Any]:
    """Where the dew point is on a thermometer."""
    return scenery.line("dew point", (name, -1.6, _high(dew_point)), (name, 3.4, _high(dew_point)))


def _high(temperature: float, ends: tuple[float, float] = (COLDEST, WARMEST)) -> float:
    coldest, warmest = ends
    return min(1.0, max(0.02, (temperature - coldest) / (warmest - coldest)))


def dial(scene: Scene, name: str, middle: Point, radius: float) -> None:
    """Half a dial, from 0 at its left to 100 % at its right."""
    x, y = middle
    scene.path(f"M{x - radius:.1f} {y:.1f}a{radius:.1f} {radius:.1f} 0 0 1 {2 * radius:.1f} 0z", "face")
    for k in range(11):
        c, s = math.cos(math.pi * k / 10), math.sin(math.pi * k / 10)
        inner = radius * (0.78 if k % 5 == 0 else 0.88)
        scene.line([(x + inner * c, y - inner * s), (x + radius * c, y - radius * s)], "thin")
    scene.axes[name] = Axes(middle, (radius, 0.0), (0.0, -radius))


def needle(name: str, humidity: float, look: str = "relative humidity") -> dict[str, Any]:
    """Where the needle of a dial stands."""
    turn = math.pi * (1.0 - min(1.0, humidity))
    return scenery.line(look, (name, 0.0, 0.03), (name, 0.8 * math.cos(turn), 0.03 + 0.8 * math.sin(turn)))


def jar(scene: Scene, name: str, box: Box) -> None:
    """A straight jar, open at the top; its axes are its inside."""
    left, top, right, bottom = box
    rim = (right - left) * 0.07
    scene.path(
        f"M{left - rim:.1f} {top:.1f}L{left:.1f} {top + rim:.1f}V{bottom:.1f}H{right:.1f}V{top + rim:.1f}"
        f"L{right + rim:.1f} {top:.1f}",
        "glass",
    )
    scene.box(name, left + 2, top + 2 * rim, right - 2, bottom - 2)


def graduations(full: float, step: float) -> list[float]:
    """The marks of a jar, a step apart and up to its brim, as shares of its height."""
    return [step * k / full for k in range(1, int(full / step + 0.01) + 1)]


def level(name: str, share: float) -> dict[str, Any]:
    """Water in a jar, to a share of its height."""
    high = min(1.0, share)
    return scenery.area("wet", (name, 0.0, 0.0), (name, 1.0, 0.0), (name, 1.0, high), (name, 0.0, high))


def can(name: str) -> list[dict[str, Any]]:
    """A can that stands where the axes of that name are."""
    body = [(0.0, 0.05), (0.12, 0.0), (0.88, 0.0), (1.0, 0.05), (1.0, 0.9), (0.85, 1.0), (0.15, 1.0), (0.0, 0.9)]
    return [
        scenery.area("can", *((name, s, d) for s, d in body)),
        scenery.line("tick", (name, 0.0, 0.9), (name, 1.0, 0.9)),
    ]


def sweat(name: str, amount: float) -> list[dict[str, Any]]:
    """Drops down the sides of a can."""
    return [scenery.drops((name, s, 0.06), (name, s, 0.86), amount) for s in (0.05, 0.5, 0.95)]


def heater(scene: Scene, box: Box) -> None:
    """An electric heater on its feet, with warm air over it."""
    left, top, right, bottom = box
    wide, high = right - left, bottom - top
    body = top + 0.32 * high
    scene.shape_of([(left, body), (right, body), (right, bottom - 8), (left, bottom - 8)], "face")
    coil = [
        (left + wide * (0.1 + 0.8 * k / 12), body + (bottom - 8 - body) * (0.3 if k % 2 else 0.7)) for k in range(13)
    ]
    scene.line(coil, "hot")
    for s in (0.15, 0.85):
        scene.line([(left + s * wide, bottom - 8), (left + s * wide, bottom)], "thin")
    for s in (0.25, 0.5, 0.75):
        x = left + s * wide
        scene.line([(x + (6 if k % 2 else -6), body - 10 - high * 0.055 * k) for k in range(6)], "hot")


def dehumidifier(scene: Scene, name: str, box: Box) -> None:
    """A dehumidifier: a grille, and the bucket under it, which axes of that name lie in."""
    left, top, right, bottom = box
    wide, high = right - left, bottom - top
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "face")
    for k in range(1, 6):
        y = top + 0.08 * high * k
        scene.line([(left + 0.15 * wide, y), (right - 0.15 * wide, y)], "thin")
    a, b, rim, low = left + 0.2 * wide, right - 0.2 * wide, top + 0.56 * high, bottom - 0.06 * high
    taper = 0.06 * wide
    scene.line([(a, rim), (a + taper, low), (b - taper, low), (b, rim)], "thin")
    scene.box(name, a + taper, rim, b - taper, low)
