"""Surfaces that can mold: classes of sensitivity, where growth begins, and which materials belong to which."""

from dataclasses import dataclass
from typing import overload

import numpy as np

from dryward.air.saturation import Floats
from dryward.building import Material
from dryward.checks import UnknownName, within


@dataclass(frozen=True)
class Sensitivity:
    """How fast and how far mold grows on a kind of surface."""

    name: str
    speed: float  # growth below an index of 1, in parts of that of pine [-]
    visible_speed: float | None  # the same from an index of 1 on; None: from the times of the wood
    a: float  # the highest index is a + b x - c x^2 [-]
    b: float
    c: float
    lowest_humidity: float  # below it nothing grows [-]
    decline: float = 1.0  # in parts of that of pine [-]
    species: str = "pine"  # whose times to start and to sight are taken: pine or spruce
    kiln_dried: bool = False  # whether the surface is as it left the kiln

    def __post_init__(self) -> None:
        within("Growth speed", self.speed, 0.0, 10.0)
        if self.visible_speed is not None:
            within("Growth speed when visible", self.visible_speed, 0.0, 10.0)
        for each in (self.a, self.b, self.c):
            within("Term of the highest index", each, -10.0, 10.0)
        within("Lowest humidity of the class", self.lowest_humidity, 0.5, 1.0, "%")
        within("Share of the decline", self.decline, 0.0, 1.0)


#: The classes by name.  a, b, c: read in the source of an open-source climate
#: package; lowest humidity: in Austrian course notes; speeds: from memory.
#: The decline of every class is that of pine, the quickest: see `Sensitivity`
#: for another share (0.5, 0.25 and 0.1 are in use, from memory).
SENSITIVITIES = {
    each.name: each
    for each in (
        Sensitivity("very sensitive", 1.0, 2.0, 1.0, 7.0, 2.0, 0.80),
        Sensitivity("sensitive", 0.578, 0.386, 0.3, 6.0, 1.0, 0.80),
        Sensitivity("medium resistant", 0.072, 0.097, 0.0, 5.0, 1.5, 0.85),
        Sensitivity("resistant", 0.033, 0.014, 0.0, 3.0, 1.0, 0.85),
        # The model of 1999: sapwood, with the speed above 1 from its own two times.
        Sensitivity("pine", 1.0, None, 1.0, 7.0, 2.0, 0.80),
        Sensitivity("spruce", 1.0, None, 1.0, 7.0, 2.0, 0.80, species="spruce"),
    )
}


def sensitivity(name: str) -> Sensitivity:
    """The class of that name, a key of `SENSITIVITIES`."""
    if name not in SENSITIVITIES:
        raise UnknownName("sensitivity class", name, SENSITIVITIES)
    return SENSITIVITIES[name]


#: Mold grows between these temperatures [degC]; Hukka and Viitanen 1999.
COLDEST_GROWTH, WARMEST_GROWTH = 0.0, 50.0
#: The critical humidity is a cubic up to here [degC], then the lowest of the class.
_LEVEL_FROM = 20.0


@overload
def critical_humidity(temperature: float, lowest: float = 0.8) -> float: ...
@overload
def critical_humidity(temperature: Floats, lowest: float = 0.8) -> Floats: ...
def critical_humidity(temperature: float | Floats, lowest: float = 0.8) -> float | Floats:
    """Relative humidity below which mold does not grow.

    Hukka and Viitanen 1999, with the lowest humidity of Ojanen et al. 2010,
    as quoted in Austrian course notes.
    """
    t = within("Surface temperature", temperature, -60.0, 95.0, "degC")
    floor = within("Lowest humidity of the class", lowest, 0.0, 1.0, "%")
    cubic = ((-0.00267 * t + 0.160) * t - 3.13) * t + 100.0
    found = np.where(t > _LEVEL_FROM, floor, np.maximum(cubic / 100.0, floor))
    return float(found) if np.ndim(found) == 0 else found


@overload
def mold_limit(temperature: float, kind: str) -> float: ...
@overload
def mold_limit(temperature: Floats, kind: str) -> Floats: ...
def mold_limit(temperature: float | Floats, kind: str) -> float | Floats:
    """Humidity from which on mold grows on a surface of a class; no humidity is too much where it is too cold."""
    level = critical_humidity(temperature, sensitivity(kind).lowest_humidity)
    found = np.where(np.asarray(level) > 1.0, np.inf, level)
    return float(found) if np.ndim(found) == 0 else found


#: Class of a surface by the shelf of its material: wood and paper-faced boards grow mold soon, glass and stone wool
#: hardly; from memory of the tables of Ojanen et al. 2010, for kinds of material and not for products.
_CLASSES = {
    "wood and framing": "sensitive",
    "wood panels and sheathing": "sensitive",
    "boards": "medium resistant",
    "fibrous insulation": "medium resistant",
}


def class_of_surface(substance: object) -> str | None:
    """Sensitivity class of what a layer is made of.

    None for what is not judged: foam, stone, metal, coverings, membranes, air.
    """
    if not isinstance(substance, Material):
        return None
    if substance.category in _CLASSES:
        return _CLASSES[substance.category]
    return "sensitive" if substance.wood and not substance.category else None
