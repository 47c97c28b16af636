"""A roof at night on the stage: stars or clouds, thermometers for its covering and for the air, snow and ice."""

from __future__ import annotations

import math
from typing import Any

from dryward.pictures import instruments, scenery, vents
from dryward.pictures.scenery import Axes, Scene
from dryward.units import to_si

#: The ends of the thermometers [degC].
ENDS = to_si(-20.0, "degF"), to_si(40.0, "degF")
#: Where the thermometers stand, as shares of the width, and their upper and lower ends, of the height.
_THERMOMETERS = {
    "wide": (0.19, 0.31, 0.06, 0.44),
    "tall": (0.22, 0.4, 0.06, 0.44),
    "post": (0.24, 0.44, 0.07, 0.43),
    "strip": (0.19, 0.3, 0.05, 0.45),
}
#: How deep snow is drawn [px].
_DEEP = {"wide": 74.0, "tall": 56.0, "post": 70.0, "strip": 44.0}


def sky(scene: Scene, clear: bool) -> None:
    """Stars, or clouds that cover the sky, right of where thermometers stand."""
    wide, high = scene.size
    if clear:
        for k in range(26):
            across, down = scenery.scattered(k)
            _star(scene, wide * (0.5 + 0.48 * across), high * (0.03 + 0.3 * down), 4.0 + 4.0 * ((k * 0.37) % 1))
        return
    for k, (across, down) in enumerate(
        ((0.1, 0.12), (0.46, 0.1), (0.64, 0.06), (0.84, 0.1), (0.56, 0.21), (0.76, 0.22), (0.96, 0.2))
    ):
        size = (1.7 + 0.4 * (k % 2)) * math.sqrt(wide * high) / 700
        scenery.cloud(scene, (wide * across - 44 * size, high * down + 34 * size), size)


def _star(scene: Scene, x: float, y: float, size: float) -> None:
    points = []
    for k in range(8):
        far = size if k % 2 == 0 else 0.38 * size
        points.append((x + far * math.sin(k * math.pi / 4), y - far * math.cos(k * math.pi / 4)))
    scene.shape_of(points, "star")


def thermometers(scene: Scene) -> None:
    """One in the air, one whose bulb is wired to the covering: axes "air" and "metal", up from `ENDS` to `ENDS`."""
    wide, high = scene.size
    first, second, top, bottom = _THERMOMETERS[scene.shape]
    instruments.thermometer(scene, "air", wide * first, high * top, high * bottom)
    foot = (wide * second, high * bottom)
    space = scene.axes["gap"]
    s = (foot[0] - space.origin[0]) / space.along[0] + 0.06
    scene.line([foot, space.at(s, vents.skin(scene))], "thin")
    scene.circle(space.at(s, vents.skin(scene)), 5, "lens-spot")
    instruments.thermometer(scene, "metal", wide * second, high * top, high * bottom)


def column(name: str, temperature: float) -> dict[str, Any]:
    """How high one of the thermometers stands."""
    return instruments.column(name, temperature, ENDS)


def high(temperature: float) -> float:
    """A temperature as a share of their scale."""
    return (temperature - ENDS[0]) / (ENDS[1] - ENDS[0])


def heat_up(share: float) -> list[dict[str, Any]]:
    """Heat that goes from the covering up to the sky; `share` 0 to 1 is how much."""
    return [scenery.arrow("temperature", ("upward", s, 0.0), ("upward", s, 0.3 + 0.7 * share), share) for s in _UP]


#: Where heat goes up, along the slope.
_UP = (0.5, 0.68, 0.86)


def upward(scene: Scene) -> None:
    """Axes "upward" from the covering straight to the sky."""
    space = scene.axes["gap"]
    tall = 0.2 * scene.size[1]
    scene.axes["upward"] = Axes(space.at(0.0, vents.skin(scene) + 0.15), space.along, (0.0, -tall))


def gutter(scene: Scene) -> None:
    """A gutter at the eave; axes "eave" hang down from the edge of the covering."""
    space = scene.axes["gap"]
    x, y = space.at(-0.09, 1.0)
    size = 0.055 * scene.size[1]
    scene.line(
        [(x + 4, y + 2), (x + 4, y + size), (x - 1.1 * size, y + size), (x - 1.1 * size, y + 0.1 * size)], "roofing"
    )
    scene.axes["eave"] = Axes((x + 4, y), (-1.1 * size - 4, 0.0), (0.0, size))


def snow(scene: Scene) -> None:
    """Snow on the covering, over its whole length; axes "snow" across from the covering (0) to its top (1)."""
    space, deep = scene.axes["gap"], _DEEP[scene.shape]
    tall = math.hypot(*space.across)
    out = (space.across[0] / tall * deep, space.across[1] / tall * deep)
    axes = scene.axes["snow"] = Axes(space.at(0.0, vents.skin(scene)), space.along, out)
    top = [axes.at(-0.08 + k * 0.1075, 1.0 + 0.05 * math.sin(2.4 * k)) for k in range(11)]
    scene.shape_of([axes.at(-0.095, 0.0), axes.at(-0.1, 0.7), *top, axes.at(1.0, 0.6), axes.at(0.99, 0.0)], "snow")


def ice(amount: float) -> list[dict[str, Any]]:
    """A dam of ice at the eave, with icicles; `amount` 0 to 1 is how much."""
    high = 0.35 + 0.5 * amount
    dam = scenery.area(
        "ice", ("snow", -0.105, 0.0), ("snow", -0.1, 0.8 * high), ("snow", -0.03, high), ("snow", 0.13, 0.0)
    )
    full = scenery.area("ice", ("eave", 0.05, 0.95), ("eave", 0.95, 0.95), ("eave", 1.0, 0.05), ("eave", 0.0, 0.0))
    hang = [
        scenery.area("ice", ("eave", s - 0.09, 0.95), ("eave", s + 0.09, 0.95), ("eave", s, 0.95 + amount * long))
        for s, long in ((0.15, 1.9), (0.4, 2.7), (0.64, 1.6), (0.88, 2.2))
    ]
    return [dam, full, *hang]


def melt(amount: float) -> list[dict[str, Any]]:
    """Meltwater that runs down under the snow."""
    return [scenery.arrow("wet", ("snow", 0.92, 0.14), ("snow", 0.15, 0.14), 0.3 * amount)]


def heat_from_below(share: float) -> list[dict[str, Any]]:
    """Heat of the house on its way up to the covering."""
    return [scenery.arrow("temperature", ("roof", s, -0.35), ("gap", s, 0.9), share) for s in (0.3, 0.55, 0.8)]
