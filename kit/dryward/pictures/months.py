"""Twelve months under the roof: what lies there, as a bar a month, and what came and left, below it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from dryward.building import Assembly
from dryward.language import message
from dryward.physics.monthly import Months
from dryward.pictures import scenery
from dryward.pictures.film import ORDER, month_at
from dryward.pictures.scenery import Scene

#: Where the board of the months is in each shape (left, top, right, bottom), as shares; the part of its width that
#: the names of its rows take; and where someone stands.
_BOARDS = {
    "wide": ((0.3, 0.675, 0.985, 0.988), 0.135, 0.215),
    "tall": ((0.02, 0.71, 0.98, 0.988), 0.185, 0.72),
    "post": ((0.02, 0.725, 0.98, 0.988), 0.23, 0.72),
    "strip": ((0.27, 0.645, 0.988, 0.985), 0.195, 0.2),
}
#: Of a month's column the part that its bar takes.
_WIDE = 0.7
#: What comes and leaves is drawn to this many times the scale of what lies there.
_FLOWS = 2.0


def draw(scene: Scene, assembly: Assembly, flows: bool = True) -> None:
    """The vault, and a board of twelve months from September on.

    Axes: "months" goes along the year, and across from nothing (0) to the top
    of the scale (1); "flows" is the same below it, from what leaves (-1) to
    what comes (1).
    """
    wide, high = scene.size
    scenery.vault(scene, assembly, "mild", person_at=None)
    (a, b, c, d), names, stands = _BOARDS[scene.shape]
    left, top, right, bottom = a * wide, b * high, c * wide, d * high
    floor = high - 26 if a > 0.1 else top - 2
    slope = scene.axes["slope"]
    roof = slope.at((stands * wide - slope.origin[0]) / slope.along[0], 0.0)[1]
    scenery.person(scene, (stands * wide, floor), 0.68 * (floor - roof))
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "board")
    tall = bottom - top
    letters = 0.13 * tall + 10
    low = bottom - letters
    zero = low - (0.38 * tall if flows else 0.0)
    start = left + names * (right - left)
    months = scene.box("months", start, top + 8, right - 8, zero)
    scene.line([months.at(0, 0), months.at(1, 0)], "thin")
    if flows:
        middle = 0.5 * (zero + low)
        scene.axes["flows"] = scenery.Axes((start, middle), months.along, (0.0, -(low - zero) / 2 + 3))
        scene.line([(start, middle), (right - 8, middle)], "thin")
    scene.axes["letters"] = scenery.Axes((start, bottom - 0.45 * letters), months.along, (0.0, -letters))


def letters() -> dict[str, Any]:
    """The first letter of each month."""
    names = [message("pictures.month-letter", number=number) for number in ORDER]
    return {"tags": [scenery.tag(name, ("letters", (k + 0.5) / 12, 0.0), "letter") for k, name in enumerate(names)]}


def _column(number: int, part: tuple[float, float] = (0.0, 1.0)) -> tuple[float, float]:
    start = month_at(number) - 0.5 * _WIDE / 12
    return start + part[0] * _WIDE / 12, start + part[1] * _WIDE / 12


def stack(heights: Mapping[int, float], look: str) -> dict[str, Any]:
    """A bar a month, by its number; heights 0 to 1 of the scale."""
    marks = [
        scenery.band(look, "months", _column(number), (0.0, min(1.0, height)))
        for number, height in heights.items()
        if height > 0.004
    ]
    return {"marks": marks}


def water(months: Months, top: float) -> dict[str, Any]:
    """What lies in the roof at the end of each month, and what came and left, to a scale that ends at `top` [kg/m2]."""
    held = held_by(months)
    marks = stack({number: mass / top for number, mass in held.items()}, "lies")["marks"]
    for amounts, look, sign in ((months.condensed, "comes", 1.0), (months.evaporated, "leaves", -1.0)):
        sums: Sequence[float] = amounts.sum(axis=1) if months.planes else [0.0] * 12
        for number, mass in zip(months.month, sums, strict=True):
            if mass > 0.004 * top:
                height = sign * min(1.0, _FLOWS * float(mass) / top)
                marks.append(scenery.band(look, "flows", _column(number), (min(0.0, height), max(0.0, height))))
    return {"marks": marks}


def rows() -> dict[str, Any]:
    """What the rows of bars are called."""
    tags = [
        scenery.tag(message("pictures.month-held"), ("months", 0.0, 0.4), "wet", "left", minor=True),
        scenery.tag(message("pictures.month-comes"), ("flows", 0.0, 0.55), "vapor pressure", "left", minor=True),
        scenery.tag(message("pictures.month-leaves"), ("flows", 0.0, -0.55), "drying", "left", minor=True),
    ]
    return {"tags": tags}


def held_by(months: Months) -> dict[int, float]:
    """What lies in the roof at the end of each month, by its number [kg/m2]."""
    sums: Sequence[float] = months.held.sum(axis=1) if months.planes else [0.0] * 12
    return {number: float(mass) for number, mass in zip(months.month, sums, strict=True)}


def over(text: str, number: int, height: float, look: str = "wet") -> dict[str, Any]:
    """Words over the bar of a month."""
    return {"tags": [scenery.tag(text, ("months", month_at(number), min(1.0, height)), look, "over")]}


def drops(months: Months, assembly: Assembly) -> dict[str, Any]:
    """Where the most is held: a wet strip in a board that takes it up, drops on a face that does not."""
    if not months.planes:
        return {}
    plane = months.planes[int(months.held.max(axis=0).argmax())]
    for layer, kind, start, end in scenery.layers_through(assembly):
        if kind == "board" and layer.name in (plane.inner_layer, plane.outer_layer):
            return {"marks": [scenery.band("lies", "slope", (0.012, 0.988), (start, end))]}
    d = scenery.through(assembly, plane.depth)
    return {"marks": [scenery.drops(("slope", 0.03, d), ("slope", 0.97, d), min(1.0, 0.4 + months.peak))]}
