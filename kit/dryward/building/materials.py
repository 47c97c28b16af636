"""Materials: what a layer with thickness is made of."""

from dataclasses import dataclass

import numpy as np

from dryward.checks import OutOfRange, rising, within
from dryward.results import one_line
from dryward.units import show

#: Least and largest conductivity [W/(m K)], and the largest vapor permeability [kg/(s m Pa)], of any material.
CONDUCTS, PASSES = (0.001, 500.0), 1e-9


def _curve(what, points, low, high, unit, first):
    """A property given as one number or as points ((x, value), ...)."""
    if isinstance(points, (int, float)):
        return within(what, points, low, high, unit)
    rows = tuple(tuple(float(v) for v in row) for row in points)
    if len(rows) < 2 or any(len(row) != 2 for row in rows):
        raise OutOfRange(f"{what} must be one number or at least two points ({first}, value).")
    rising(f"{what}, {first}", [x for x, _ in rows])
    for _, value in rows:
        within(what, value, low, high, unit)
    return rows


def _at(curve, x):
    if isinstance(curve, float):
        return curve if np.ndim(x) == 0 else np.full(np.shape(x), curve)
    xs, values = zip(*curve, strict=True)
    found = np.interp(x, xs, values)
    return float(found) if np.ndim(x) == 0 else found


@dataclass(frozen=True)
class Material:
    """One homogeneous material.

    Parameters
    ----------
    id : str
        Lower-case words with hyphens.
    name : str
        As it stands on a drawing.
    density : float
        Dry bulk density [kg/m3], above 0 to 25 000.
    specific_heat : float
        Of the dry material [J/(kg K)], 100 to 10 000.
    conductivity : float or ((water content [kg/m3], value), ...)
        Thermal conductivity [W/(m K)], 0.001 to 500, straight between points.
    vapor_permeability : float or ((relative humidity [-], value), ...)
        [kg/(s m Pa)], 0 to 1e-9, straight between points, constant beyond.
    sorption : ((relative humidity [-], water content [kg/m3]), ...)
        Rising in both; empty for a material that stores no vapor.  A last
        point at 1.0 is the free saturation.
    liquid_conductivity : None or ((water content, K), ...)
        K in s: liquid flux = K x gradient of capillary suction.
    wood : bool
        Whether a moisture content in mass % is meant for it.
    source, where, how_read : str
        Where the numbers stand, the place there, and how they were read.
    category : str
        The shelf of the library.
    ranges : ((property, low, high), ...)
        How far the true value may lie, for `physics.spread`.

    Raises
    ------
    OutOfRange
        One sentence naming the property, the value and the range.

    Examples
    --------
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> board.conductivity_at(0.0)
    0.16
    """

    id: str
    name: str
    density: float
    specific_heat: float
    conductivity: float | tuple
    vapor_permeability: float | tuple
    sorption: tuple = ()
    liquid_conductivity: tuple | None = None
    wood: bool = False
    source: str = ""
    where: str = ""
    how_read: str = ""
    category: str = ""
    ranges: tuple = ()

    def __post_init__(self):
        put = object.__setattr__
        name = self.name or self.id
        put(self, "density", within(f"Density of {name}", self.density, 0, 25000, "kg/m³", above=True))
        put(self, "specific_heat", within(f"Specific heat of {name}", self.specific_heat, 100, 10000, "J/(kg K)"))
        put(
            self,
            "conductivity",
            _curve(f"Conductivity of {name}", self.conductivity, *CONDUCTS, "W/(m K)", "water content"),
        )
        put(
            self,
            "vapor_permeability",
            _curve(
                f"Vapor permeability of {name}", self.vapor_permeability, 0, PASSES, "kg/(s m Pa)", "relative humidity"
            ),
        )
        put(self, "sorption", self._checked_sorption(name))
        if self.liquid_conductivity is not None:
            put(
                self,
                "liquid_conductivity",
                _curve(f"Liquid conductivity of {name}", self.liquid_conductivity, 0, 1, "s", "water content"),
            )

    def __repr__(self):
        named = f"{self.id}, {self.name}" if self.id != self.name else self.name
        conducts = show(self.conductivity_at(0.0), "conductivity", "si")
        passes = show(self.permeability_at(0.5), "permeability", "us")
        return one_line("Material", f"{named}, {self.density:.4g} kg/m³, {conducts}, {passes} at 50 %")

    def _checked_sorption(self, name):
        points = tuple((float(rh), float(w)) for rh, w in self.sorption)
        rising(f"Sorption of {name}, relative humidity", [rh for rh, _ in points])
        rising(f"Sorption of {name}, water content", [w for _, w in points])
        for rh, w in points:
            within(f"Sorption of {name}, relative humidity", rh, 0, 1, "%")
            within(f"Sorption of {name}, water content", w, 0, 1500, "kg/m³")
        return points

    def conductivity_at(self, water_content):
        """Thermal conductivity [W/(m K)] at a water content [kg/m3]."""
        return _at(self.conductivity, water_content)

    def permeability_at(self, relative_humidity):
        """Vapor permeability [kg/(s m Pa)] at a relative humidity [-]."""
        return _at(self.vapor_permeability, relative_humidity)

    def water_content(self, relative_humidity):
        """Water held [kg/m3] in balance with air of a relative humidity [-]."""
        if not self.sorption:
            return _at(0.0, relative_humidity)
        points = self.sorption if self.sorption[0][0] == 0 else ((0.0, 0.0), *self.sorption)
        return _at(points, relative_humidity)
