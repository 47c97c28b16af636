"""Materials: what a layer with thickness is made of, the water that wood holds, and how fast liquid moves."""

import math
from dataclasses import dataclass
from typing import Any, TypeAlias

import numpy as np

from dryward import air, units
from dryward.checks import OutOfRange, rising, subject, within
from dryward.exhibit import one_line
from dryward.language import called, listing, message
from dryward.units import QUANTITIES, checked, show
from dryward.units.table import Numeric

#: Least and largest conductivity [W/(m K)], and the largest vapor permeability [kg/(s m Pa)], of any material.
CONDUCTS = (QUANTITIES["conductivity"].low, QUANTITIES["conductivity"].high)
PASSES = QUANTITIES["permeability"].high


#: Points of a curve, and a property that is one number or such a curve.
Points: TypeAlias = tuple[tuple[float, float], ...]
Curve: TypeAlias = float | Points


def _curve(what: str, of: str, points: object, name: str, first: str) -> Curve:
    """A property given as one number or text, or as points ((x, value), ...)."""
    if isinstance(points, (int, float, str)):
        return checked(what, points, name, of=of)
    rows: Any = tuple(tuple(float(v) for v in row) for row in points)  # type: ignore[attr-defined] # refused where it fails
    facts = {"what": subject(what, of), "first": called(first)}
    if len(rows) < 2 or any(len(row) != 2 for row in rows):
        raise OutOfRange(message("building.one-number-or-points", **facts))
    rising(message("building.along", **facts), [x for x, _ in rows])
    for _, value in rows:
        checked(what, value, name, of=of)
    return rows


def _at(curve: Curve, x: Numeric) -> Any:
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
        Category in the library.
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
    conductivity: Curve
    vapor_permeability: Curve
    sorption: Points = ()
    liquid_conductivity: Points | None = None
    wood: bool = False
    source: str = ""
    where: str = ""
    how_read: str = ""
    category: str = ""
    ranges: tuple = ()

    def __post_init__(self) -> None:
        put = object.__setattr__
        name = self.name or self.id
        put(self, "density", checked("Density", self.density, "density", of=name))
        put(self, "specific_heat", checked("Specific heat", self.specific_heat, "specific heat", of=name))
        put(
            self,
            "conductivity",
            _curve("Conductivity", name, self.conductivity, "conductivity", "water content"),
        )
        put(
            self,
            "vapor_permeability",
            _curve("Vapor permeability", name, self.vapor_permeability, "permeability", "relative humidity"),
        )
        put(self, "sorption", self._checked_sorption(name))
        if self.liquid_conductivity is not None:
            put(
                self,
                "liquid_conductivity",
                _curve("Liquid conductivity", name, self.liquid_conductivity, "liquid conductivity", "water content"),
            )

    def __repr__(self) -> str:
        facts = {
            "name": called(self.name),
            "density": units.written(self.density, ".4g", "kg/m3"),
            "conducts": show(self.conductivity_at(0.0), "conductivity", "si"),
            "passes": show(self.permeability_at(0.5), "permeability", "us"),
        }
        said = message("building.material-line", **facts)
        return one_line("Material", said if self.id == self.name else f"{self.id}, {said}")

    def _checked_sorption(self, name: str) -> Points:
        points = tuple((float(rh), float(w)) for rh, w in self.sorption)
        what = subject("Sorption", name)
        humidity, water = (
            message("building.along", what=what, first=called(first))
            for first in ("relative humidity", "water content")
        )
        rising(humidity, [rh for rh, _ in points])
        rising(water, [w for _, w in points])
        for rh, w in points:
            within(humidity, rh, 0, 1, "%")
            within(water, w, 0, 1500, "kg/m3")
        return points

    def conductivity_at(self, water_content: Numeric) -> Any:
        """Thermal conductivity [W/(m K)] at a water content [kg/m3]."""
        return _at(self.conductivity, water_content)

    def permeability_at(self, relative_humidity: Numeric) -> Any:
        """Vapor permeability [kg/(s m Pa)] at a relative humidity [-]."""
        return _at(self.vapor_permeability, relative_humidity)

    def water_content(self, relative_humidity: Numeric) -> Any:
        """Water held [kg/m3] in balance with air of a relative humidity [-]."""
        if not self.sorption:
            return _at(0.0, relative_humidity)
        points = self.sorption if self.sorption[0][0] == 0 else ((0.0, 0.0), *self.sorption)
        return _at(points, relative_humidity)


@dataclass(frozen=True)
class AirSpace:
    """A layer of air: a service cavity, a still air space, or a vent space.

    Parameters
    ----------
    thermal_resistance : float
        Across a closed space; for a vented one, the film between the layer
        under it and the moving air [m2 K/W], 0 to 5.
    vapor_permeance : float
        Across a closed space [kg/(s m2 Pa)], above 0; inf for no resistance.
    vented : bool
        Whether outdoor air moves through it: the steady and the monthly
        methods then end the assembly here, at outdoor air behind the film
        (ISO 6946, well-ventilated air layer).
    id, name, source, where, how_read, category, ranges
        As in `Material`.

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Examples
    --------
    >>> AirSpace(0.18).thermal_resistance
    0.18
    """

    thermal_resistance: float
    vapor_permeance: float = math.inf
    vented: bool = False
    id: str = ""
    name: str = "air space"
    source: str = ""
    where: str = ""
    how_read: str = ""
    category: str = "air layers"
    ranges: tuple = ()

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(
            self,
            "thermal_resistance",
            checked("Thermal resistance", self.thermal_resistance, "thermal resistance", 0, 5, of=self.name),
        )
        put(
            self,
            "vapor_permeance",
            checked("Vapor permeance", self.vapor_permeance, "permeance", 0, math.inf, above=True, of=self.name),
        )

    def __repr__(self) -> str:
        resistance = show(self.thermal_resistance, "thermal resistance", "us")
        vented = [message("building.vented")] if self.vented else []
        return one_line("AirSpace", listing([called(self.name), resistance, *vented]))


# The water that wood holds: all wood rows of the library get their sorption points from
# this one curve (Hailwood-Horrobin), so that no wood can drift away from another.
# Wood Handbook coefficients, temperature in degC: each row c0 + c1 T + c2 T2.
_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)

#: Humidities at which the library tabulates a wood curve [-].
WOOD_HUMIDITIES = (0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.98, 0.99)


def wood_moisture(relative_humidity: Numeric, temperature: Numeric = 20.0) -> Any:
    """Moisture content of wood in balance with air.

    Notes
    -----
    One curve for all species; a species differs from it by 1 to 2 points of
    moisture content, and wood that is drying holds more than wood that is
    wetting.

    References
    ----------
    USDA Forest Products Laboratory, Wood Handbook (2010), chapter 4, equation
    of Table 4-2 (Hailwood and Horrobin); read in public files that quote it.
    """
    h = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    t = within("Wood temperature", temperature, -10.0, 130.0, "degC")
    w, k, k1, k2 = (a + b * t + c * t * t for a, b, c in (_W, _K, _K1, _K2))
    kh = k * h
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 18.0 / w * (kh / (1 - kh) + bound)


def humidity_of_wood(moisture: float, temperature: float = 20.0) -> float:
    """Relative humidity of air in balance with wood: the inverse of `wood_moisture`.

    Notes
    -----
    Above a quarter the wood is near fiber saturation and its moisture says
    little about the humidity.
    """
    wanted = within("Moisture content of wood", moisture, 0.0, 0.25, "%")
    low, high = 0.0, 1.0
    for _ in range(60):  # halvings; the curve rises all the way
        middle = 0.5 * (low + high)
        if wood_moisture(middle, temperature) < wanted:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def wood_points(density: float, free_saturation: float, share: float = 1.0, temperature: float = 20.0) -> Points:
    """Sorption points of a wood product.

    Notes
    -----
    Below 99 % the curve is bound water; the step from there to the free
    saturation at 100 % is water in the cell hollows.
    """
    within("Density", density, 0.0, 1500.0, "kg/m3", above=True)
    within("Share of the wood curve", share, 0.3, 1.2)
    held = tuple((rh, round(float(wood_moisture(rh, temperature)) * share * density, 4)) for rh in WOOD_HUMIDITIES)
    within("Free saturation", free_saturation, held[-1][1], 1500.0, "kg/m3", above=True)
    return (*held, (1.0, float(free_saturation)))


#: Humidity up to which a material that does not soak up binds its water [-]: the openings between fibers are wider
#: than a hundredth of a millimeter, and water in those is in balance with 99.99 % and more (Kelvin equation).
NEARLY_FULL = 0.9995


def non_absorbing(points: Points) -> Points:
    """The curve of a material that takes up no liquid, with its last step as late as it is.

    Notes
    -----
    A straight line from the last measured point to the free saturation would
    let vapor fill a fleece that no water runs into.
    """
    (before, less), (last, held), full = points[-3:]
    most = min(held + (held - less) / (last - before) * (NEARLY_FULL - last), full[1])
    return (*points[:-1], (NEARLY_FULL, round(most, 4)), full) if held < most < full[1] else points


# Liquid conductivity of a porous material from how fast it sucks up water.  The hourly
# method needs K in ``flux = K x gradient of suction``.  Such curves are seldom published;
# what is published is the water absorption coefficient A of a one-day soaking test.  Here
# K follows from A, with the usual assumption that the liquid diffusivity rises
# exponentially with the water content.  Liquid moves only where pores are full: below the
# last point of the sorption curve before saturation K is nothing, for there the vapor
# permeability, dry cup and wet cup, already holds all that moves.

# Exponent of the diffusivity over the relative water content, the same for
# many stones, bricks and plasters: Hall and Hoff, Water Transport in Brick,
# Stone and Concrete (from memory).
_EXPONENT = 6.0
#: Parts of the way to free saturation at which K is given [-].
_FILLED = (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
_SOAKED_AT = 20.0  # of the soaking test [degC]


def lowest_diffusivity(absorption: float, free_saturation: float, beginning: float = 0.0) -> float:
    """Liquid diffusivity where liquid begins to move, the factor before the exponential.

    Notes
    -----
    From A2 = integral of (w_f + w) D(w) dw from w_0 to w_f for a slab that
    starts dry, with D = D0 exp(n u) and u = (w - w_0)/(w_f - w_0).

    References
    ----------
    Parlange's integral for the sorptivity; Lockington, Parlange and Dux
    (1999), Materials and Structures 32 (from memory).
    """
    a = within("Water absorption coefficient", absorption, 0.0, 2.0, "kg/(m2 s^0.5)", above=True)
    full = within("Free saturation", free_saturation, 0.0, 1500.0, "kg/m3", above=True)
    start = within("Water content where liquid begins to move", beginning, 0.0, 0.9 * full, "kg/m3")
    n, span = _EXPONENT, full - start
    grown = math.exp(n)
    integral = (full + start) * (grown - 1) / n + span * (grown * (n - 1) + 1) / n**2
    return a**2 / (span * integral)


def liquid_conductivity(absorption: float, sorption: Points) -> Points:
    """Liquid conductivity against water content.

    Notes
    -----
    K = D dw/ds, with the suction s = -rho R T ln(rh) at 20 degC and the slope
    of the last straight piece of the sorption curve.
    """
    (start_rh, start), (_, full) = sorption[-2:]
    base = lowest_diffusivity(absorption, full, start)
    pull = units.WATER_DENSITY * air.VAPOR_GAS_CONSTANT * (_SOAKED_AT + units.KELVIN)
    slope = (full - start) / (1.0 - start_rh)
    found = [(0.0, 0.0), (start, 0.0)]
    for u in _FILLED:
        humidity = start_rh + u * (1.0 - start_rh)
        found.append((start + u * (full - start), base * math.exp(_EXPONENT * u) * slope * humidity / pull))
    return tuple(found)
