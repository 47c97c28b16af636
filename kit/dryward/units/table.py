"""The units: constants that are exact by definition, the table made of them, and a number from one to the other."""

from dataclasses import dataclass
from typing import Any, TypeAlias, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward.checks import OutOfRange, UnknownName
from dryward.language import called, message, sign

Floats: TypeAlias = NDArray[np.float64]
#: A number or an array of numbers; what comes out has the shape of what went in.
Numeric: TypeAlias = Any

# Exact by definition: international foot (1959), pound, inch; the
# International Table Btu; standard gravity [m/s2].
FOOT = 0.3048
INCH = FOOT / 12
POUND = 0.45359237
GRAIN = POUND / 7000
BTU = 1055.05585262
GRAVITY = 9.80665
HOUR = 3600.0
DAY = 86400.0
# Conventional inch of mercury at 0 degC [Pa], NIST SP 811 appendix B.8.
INCH_OF_MERCURY = 3386.389
INCH_OF_WATER = 249.0889  # at 4 degC [Pa], NIST SP 811 appendix B.8
PINT = 0.473176473e-3  # US liquid pint [m3]
WATER_DENSITY = 1000.0  # kg/m3, for volumes of liquid water
KELVIN = 273.15  # 0 degC in K
STEFAN_BOLTZMANN = 5.6703744191844314e-8  # W/(m2 K4), exact since 2019: 2 pi^5 k^4 / (15 h^3 c^2)
# Vapor permeability of still air [kg/(s m Pa)] that turns a permeance into an
# equivalent air layer; the round value of ISO 13788.
AIR_PERMEABILITY = 2.0e-10

_PERM = GRAIN / HOUR / FOOT**2 / INCH_OF_MERCURY
_R = FOOT**2 * (5 / 9) * HOUR / BTU


@dataclass(frozen=True)
class Unit:
    """One unit: SI value = ``value * scale + offset``, or ``scale / value`` (as for R per inch)."""

    #: Its key in `UNITS`, in letters anyone can type.
    name: str
    #: What it measures.
    quantity: str
    #: SI units in one of it.
    scale: float
    #: SI value at its zero.
    offset: float = 0.0
    #: Whether the SI value is ``scale / value`` (as for R per inch).
    reciprocal: bool = False

    @property
    def symbol(self) -> str:
        """As it is printed, in the reader's language."""
        return sign(self.name)


def _table(
    *rows: tuple[str, str, float] | tuple[str, str, float, float] | tuple[str, str, float, float, bool],
) -> dict[str, Unit]:
    return {row[0]: Unit(*row) for row in rows}


UNITS = _table(
    ("degC", "temperature", 1.0),
    ("degF", "temperature", 5 / 9, -160 / 9),
    ("K", "temperature difference", 1.0),
    ("degF difference", "temperature difference", 5 / 9),
    ("fraction", "relative humidity", 1.0),
    ("%", "relative humidity", 0.01),
    ("m", "length", 1.0),
    ("cm", "length", 0.01),
    ("mm", "length", 0.001),
    ("ft", "length", FOOT),
    ("in", "length", INCH),
    ("degrees", "angle", 1.0),
    ("m2", "area", 1.0),
    ("cm2", "area", 1e-4),
    ("ft2", "area", FOOT**2),
    ("in2", "area", INCH**2),
    ("m3", "volume", 1.0),
    ("L", "volume", 1e-3),
    ("ft3", "volume", FOOT**3),
    ("pint", "volume", PINT),
    ("quart", "volume", 2 * PINT),
    ("kg", "mass", 1.0),
    ("g", "mass", 1e-3),
    ("lb", "mass", POUND),
    ("gr", "mass", GRAIN),
    ("kg/m3", "density", 1.0),
    ("g/m3", "density", 1e-3),
    ("lb/ft3", "density", POUND / FOOT**3),
    ("kg/m2", "area density", 1.0),
    ("g/m2", "area density", 1e-3),
    ("lb/ft2", "area density", POUND / FOOT**2),
    ("gr/ft2", "area density", GRAIN / FOOT**2),
    ("Pa", "pressure", 1.0),
    ("hPa", "pressure", 100.0),
    ("kPa", "pressure", 1000.0),
    ("inHg", "pressure", INCH_OF_MERCURY),
    ("inH2O", "pressure", INCH_OF_WATER),
    ("psi", "pressure", POUND * GRAVITY / INCH**2),
    ("kg/kg", "humidity ratio", 1.0),
    ("g/kg", "humidity ratio", 1e-3),
    ("gr/lb", "humidity ratio", 1 / 7000),
    ("kg/(s m2 Pa)", "permeance", 1.0),
    ("ng/(s m2 Pa)", "permeance", 1e-12),
    ("perm", "permeance", _PERM),
    ("sd m", "permeance", AIR_PERMEABILITY, 0.0, True),
    ("kg/(s m Pa)", "permeability", 1.0),
    ("ng/(s m Pa)", "permeability", 1e-12),
    ("perm in", "permeability", _PERM * INCH),
    ("mu", "permeability", AIR_PERMEABILITY, 0.0, True),
    ("m2 K/W", "thermal resistance", 1.0),
    ("R", "thermal resistance", _R),
    ("W/(m2 K)", "thermal transmittance", 1.0),
    ("Btu/(h ft2 F)", "thermal transmittance", 1 / _R),
    ("W/(m K)", "conductivity", 1.0),
    ("Btu in/(h ft2 F)", "conductivity", INCH / _R),
    ("R per in", "conductivity", INCH / _R, 0.0, True),
    ("s of suction", "liquid conductivity", 1.0),
    ("J/(kg K)", "specific heat", 1.0),
    ("Btu/(lb F)", "specific heat", BTU / POUND * 1.8),
    ("J/kg", "enthalpy", 1.0),
    ("kJ/kg", "enthalpy", 1000.0),
    ("Btu/lb", "enthalpy", BTU / POUND),
    ("m3/kg", "specific volume", 1.0),
    ("ft3/lb", "specific volume", FOOT**3 / POUND),
    ("W/m2", "heat flux", 1.0),
    ("Btu/(h ft2)", "heat flux", BTU / HOUR / FOOT**2),
    ("kg/(s m2)", "vapor flux", 1.0),
    ("g/m2/day", "vapor flux", 1e-3 / DAY),
    ("gr/ft2/day", "vapor flux", GRAIN / FOOT**2 / DAY),
    ("gr/ft2/h", "vapor flux", GRAIN / FOOT**2 / HOUR),
    ("kg/s", "mass flow", 1.0),
    ("kg/day", "mass flow", 1 / DAY),
    ("g/h", "mass flow", 1e-3 / HOUR),
    ("lb/day", "mass flow", POUND / DAY),
    ("pint/day", "mass flow", PINT * WATER_DENSITY / DAY),
    ("m3/s", "air flow", 1.0),
    ("m3/h", "air flow", 1 / HOUR),
    ("L/s", "air flow", 1e-3),
    ("cfm", "air flow", FOOT**3 / 60),
    ("m/s", "speed", 1.0),
    ("ft/min", "speed", FOOT / 60),
    ("mph", "speed", 5280 * FOOT / HOUR),
    ("ACH50", "air changes at 50 Pa", 1.0),
    ("m2/m", "vent opening", 1.0),
    ("cm2/m", "vent opening", 1e-4),
    ("in2/ft", "vent opening", INCH**2 / FOOT),
    ("1/s", "air change", 1.0),
    ("1/h", "air change", 1 / HOUR),
    ("s", "time", 1.0),
    ("h", "time", HOUR),
    ("day", "time", DAY),
)


def unit(name: str) -> Unit:
    """The unit of that name; UnknownName when there is none."""
    try:
        return UNITS[name]
    except KeyError:
        raise UnknownName("unit", name, UNITS) from None


def _number(value: object, this: Unit) -> float | Floats:
    """Lists as arrays; a slider's plain number as it is."""
    if isinstance(value, (float, int, np.ndarray)):
        return value
    if isinstance(value, np.number):
        return float(value)
    try:
        if value is None:  # which NumPy takes for nan
            raise TypeError
        return np.asarray(value, dtype=float)
    except (TypeError, ValueError):
        noun, given = called(this.quantity), repr(str(value)[:40])
        raise OutOfRange(message("units.must-be-a-number", quantity=noun, given=given)) from None


def _turned(scale: float, value: float | Floats) -> float | Floats:
    """What lets nothing through has no end of resistance, and the other way round."""
    if isinstance(value, np.ndarray):
        with np.errstate(divide="ignore"):
            return scale / value
    return scale / value if value else np.inf


@overload
def to_si(value: float, name: str) -> float: ...
@overload
def to_si(value: Floats, name: str) -> Floats: ...
@overload
def to_si(value: ArrayLike, name: str) -> Any: ...
def to_si(value: ArrayLike, name: str) -> Any:
    """A value in SI.

    Parameters
    ----------
    value : float or array
        The number in the unit `name`, any shape.
    name : str
        A key of `UNITS`.

    Returns
    -------
    float or array
        The same shape, in the SI unit of the quantity.

    Raises
    ------
    UnknownName
        When there is no such unit.
    OutOfRange
        For what is no number.

    References
    ----------
    NIST SP 811, appendix B (exact foot, pound, International Table Btu).

    Examples
    --------
    >>> round(to_si(70.0, "degF"), 4)
    21.1111
    >>> round(to_si(1.0, "perm") * 1e12, 4)
    57.2135
    """
    this = unit(name)
    number = _number(value, this)
    if this.reciprocal:
        return _turned(this.scale, number)
    return number * this.scale + this.offset if this.offset else number * this.scale


@overload
def from_si(value: float, name: str) -> float: ...
@overload
def from_si(value: Floats, name: str) -> Floats: ...
@overload
def from_si(value: ArrayLike, name: str) -> Any: ...
def from_si(value: ArrayLike, name: str) -> Any:
    """A value of SI in another unit: the inverse of `to_si`.

    Parameters
    ----------
    value : float or array
        The number in the SI unit of the quantity, any shape.
    name : str
        A key of `UNITS`.

    Returns
    -------
    float or array
        The same shape, in the unit `name`.

    Raises
    ------
    UnknownName
        When there is no such unit.
    OutOfRange
        For what is no number.

    Examples
    --------
    >>> round(from_si(20.0, "degF"), 9)
    68.0
    """
    this = unit(name)
    number = _number(value, this)
    if this.reciprocal:
        return _turned(this.scale, number)
    return (number - this.offset) / this.scale if this.offset else number / this.scale
