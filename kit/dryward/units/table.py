"""The units: exact constants, the table made of them, a number from one to the other, and how people are shown it."""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any, overload

import numpy as np
from numpy.typing import ArrayLike

from dryward.checks import Floats, OutOfRange, UnknownName
from dryward.language import called, message, once, plain, sign, slug
from dryward.language import figures as _marked

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
GALLON = 231 * INCH**3  # US [m3]; NIST Handbook 44, appendix C, read in an excerpt
PINT = GALLON / 8  # US liquid pint [m3]
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
    ("mL", "volume", 1e-6),
    ("ft3", "volume", FOOT**3),
    ("fl oz", "volume", PINT / 16),
    ("pint", "volume", PINT),
    ("quart", "volume", 2 * PINT),
    ("gallon", "volume", GALLON),
    ("kg", "mass", 1.0),
    ("g", "mass", 1e-3),
    ("lb", "mass", POUND),
    ("gr", "mass", GRAIN),
    ("kg/m3", "density", 1.0),
    ("g/m3", "density", 1e-3),
    ("lb/ft3", "density", POUND / FOOT**3),
    ("gr/ft3", "density", GRAIN / FOOT**3),
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


#: The unit each quantity is shown in, by unit system.
SHOWN = {
    "us": {
        "temperature": "degF",
        "temperature difference": "degF difference",
        "relative humidity": "%",
        "length": "in",
        "area": "ft2",
        "volume": "ft3",
        "mass": "lb",
        "density": "lb/ft3",
        "area density": "gr/ft2",
        "pressure": "inHg",
        "humidity ratio": "gr/lb",
        "permeance": "perm",
        "permeability": "perm in",
        "thermal resistance": "R",
        "thermal transmittance": "Btu/(h ft2 F)",
        "conductivity": "R per in",
        "specific heat": "Btu/(lb F)",
        "enthalpy": "Btu/lb",
        "specific volume": "ft3/lb",
        "heat flux": "Btu/(h ft2)",
        "vapor flux": "gr/ft2/day",
        "mass flow": "pint/day",
        "air flow": "cfm",
        "speed": "ft/min",
        "air change": "1/h",
        "time": "day",
    },
    "si": {
        "temperature": "degC",
        "temperature difference": "K",
        "relative humidity": "%",
        "length": "mm",
        "area": "m2",
        "volume": "m3",
        "mass": "kg",
        "density": "kg/m3",
        "area density": "g/m2",
        "pressure": "Pa",
        "humidity ratio": "g/kg",
        "permeance": "sd m",
        "permeability": "ng/(s m Pa)",
        "thermal resistance": "m2 K/W",
        "thermal transmittance": "W/(m2 K)",
        "conductivity": "W/(m K)",
        "specific heat": "J/(kg K)",
        "enthalpy": "kJ/kg",
        "specific volume": "m3/kg",
        "heat flux": "W/m2",
        "vapor flux": "g/m2/day",
        "mass flow": "kg/day",
        "air flow": "m3/h",
        "speed": "m/s",
        "air change": "1/h",
        "time": "day",
    },
}


def shown_unit(quantity: str, system: str) -> Unit:
    """The unit in which a quantity (a key of `SHOWN`) is shown in a unit system.

    Examples
    --------
    >>> shown_unit("vapor flux", "us").symbol
    'gr/ft² day'
    """
    if system not in SHOWN:
        raise UnknownName("unit system", system, SHOWN)
    if quantity not in SHOWN[system]:
        raise UnknownName("quantity", quantity, SHOWN[system])
    return UNITS[SHOWN[system][quantity]]


#: Digits behind the point that are worth showing, by unit; others get three
#: significant figures.
_DIGITS = {"degF": 1, "degC": 1, "%": 0, "Pa": 0, "inHg": 3, "in": 1, "mm": 0, "gr/lb": 1, "g/kg": 1, "R": 1}
#: The most of those three that stand behind the point: no thermometer tells less.
_MOST = {"K": 1, "degF difference": 1}


def number(value: float, digits: int | None = None, *, figures: int = 3, most: int = 12, rounded: bool = False) -> str:
    """A bare number as people read it: nobody on a roof reads a power of ten, and zero has no sign.

    With `digits` it has so many behind the point.  Otherwise it has
    `figures` significant figures, at most `most` of them behind the point,
    without a tail of zeros that claims more than is known; what stands before
    the point is kept whole unless it is `rounded` too.

    Examples
    --------
    >>> number(2860.7), number(2860.7, rounded=True), number(0.000842), number(12.0), number(-0.01, 1)
    ('2861', '2860', '0.000842', '12', '0.0')
    """
    if digits is not None:
        if not math.isfinite(value):
            return _endless(value)
        text = f"{value:.{digits}f}"
    elif not math.isfinite(value) or 0 < abs(value) < 1e-9:  # what is left of a sum has no place on paper
        return written(value, f".{figures}g")
    else:
        # The place of the first figure, after rounding: 9.996 counts as 10.
        place = int(f"{value:.{figures - 1}e}".partition("e")[2])
        if rounded:
            value = float(f"{value:.{figures}g}")
        text = f"{value:.{min(max(figures - 1 - place, 0), most)}f}"
        if "." in text:
            text = text.rstrip("0").rstrip(".")
        if float(text) == 0 and value:
            return number(value, figures=2)
    return _marked(text.lstrip("-") if float(text) == 0 else text)


def _endless(value: float) -> str:
    """What no figure writes."""
    if math.isnan(value):
        return message("units.no-number")
    return f"{_marked('-') if value < 0 else ''}{message('units.infinite')}"


@once
def _around() -> dict[str, tuple[str, str]]:
    """What stands before and after a number, by the name of its unit: a slider asks for hundreds."""
    found = {}
    for name in UNITS:
        before, _, after = message(f"units.amount-{slug(name)}", number="\0").partition("\0")
        found[name] = before, after
    return found


def with_unit(number: str, name: str) -> str:
    """A number that is written already, with its unit.

    >>> with_unit("7", "perm"), with_unit("20", "R")
    ('7 perm', 'R-20')
    """
    before, after = _around()[name]
    return f"{before}{number}{after}"


#: Does not break at the end of a line.
NO_BREAK = "\N{NO-BREAK SPACE}"


@once
def signs() -> list[str]:
    """The signs of units that a blank parts from their number, long ones first: one may begin another."""
    after = {sign for _, sign in _around().values()}
    return sorted((sign.strip() for sign in after if sign.startswith(" ") and sign.strip()), key=len, reverse=True)


@once
def _numbers_with_units() -> re.Pattern[str]:
    """A figure, a blank and the sign of a unit."""
    return re.compile(rf"(?<=\d) (?:{'|'.join(map(re.escape, signs()))})(?!\w)")


def kept_together(text: str) -> str:
    """A text in which no number is parted from its unit at the end of a line.

    >>> kept_together("20 °F and 5 gr/ft² day").split(" ")
    ['20\\xa0°F', 'and', '5\\xa0gr/ft²\\xa0day']
    """
    return _numbers_with_units().sub(lambda found: found[0].replace(" ", NO_BREAK), text)


def written(value: float, form: str, name: str = "") -> str:
    """A number in a format of Python's with the reader's marks, and its unit where one is named.

    >>> written(0.0123456, ".3g"), written(57.2135, ".4g", "perm")
    ('0.0123', '57.21 perm')
    """
    text = _marked(format(value, form)) if math.isfinite(value) else _endless(value)
    return with_unit(text, name) if name else text


def show_in(value: float, name: str, digits: int | None = None) -> str:
    """A number of SI with its unit, in the unit of that name; R stands before its number, as the trade writes it.

    Examples
    --------
    >>> show_in(0.0143, "in2"), show_in(3.5222, "R", 0), show_in(0.0254, "in")
    ('22.2 in²', 'R-20', '1.0 in.')
    """
    return with_unit(_figures_in(value, name, digits), name)


def _figures_in(value: float, name: str, digits: int | None = None) -> str:
    """The figures of a number of SI in the unit of that name."""
    shown = from_si(value, name)
    if digits is None:
        digits = _DIGITS.get(name)
    # What is next to nothing is not known to three figures.
    return number(shown, digits, figures=2 if 1e-9 <= abs(shown) < 1e-3 else 3, most=_MOST.get(name, 12))


def show(value: float, quantity: str, system: str | None, digits: int | None = None) -> str:
    """A number of SI as it is shown: with its unit, in a unit system.

    Parameters
    ----------
    value : float
        In SI.
    quantity : str
        One of the quantities of `SHOWN`.
    system : {"us", "si"} or None
        None gives both, where no reader is known yet.
    digits : int, optional
        Digits behind the point, where the usual ones do not fit.

    Returns
    -------
    str

    Raises
    ------
    UnknownName
        For an unknown system or quantity.

    Examples
    --------
    >>> show(7.0, "temperature", "us")
    '44.6 °F'
    >>> show(2.0833e-8, "vapor flux", "si")
    '1.8 g/m² day'
    >>> show(7.75, "thermal resistance", "us")
    'R-44.0'
    >>> show(404.0, "pressure", None)
    '0.119 in. Hg (404 Pa)'
    """
    if system is None:
        return in_both(*(show(value, quantity, each, digits) for each in ("us", "si")))
    return show_in(value, shown_unit(quantity, system).name, digits)


def difference(more: float, less: float, quantity: str, system: str) -> str:
    """The difference of two numbers of SI as their reader works it out: of what is shown of both.

    >>> show(1252.0, "pressure", "us"), show(174.0, "pressure", "us"), difference(1252.0, 174.0, "pressure", "us")
    ('0.370 in. Hg', '0.051 in. Hg', '0.319 in. Hg')
    """
    name = shown_unit(quantity, system).name
    first, second = (Decimal(plain(_figures_in(each, name)).replace(",", ".")) for each in (more, less))
    return with_unit(_marked(f"{first - second:f}"), name)


def in_both(own: str, other: str) -> str:
    """An amount in both unit systems, the reader's own first.

    >>> in_both("21 gr/ft²", "14.7 g/m²")
    '21 gr/ft² (14.7 g/m²)'
    """
    return message("units.in-both", own=own, other=other)


class InBoth(str):
    """A text that is made before its reader is known: both unit systems stand in it, the US one first.

    `read_in` gives it for a reader of one of them.
    """

    alone: dict[str, str]

    @classmethod
    def of(cls, make: Callable[[str | None], str]) -> "InBoth":
        """Of a function that writes it in a unit system, or in both where it is told None."""
        made = cls(make(None))
        made.alone = {system: make(system) for system in SHOWN}
        return made


def read_in(text: str, system: str | None) -> str:
    """A text for a reader of a unit system; one that is the same for all, or for no known reader, as it is.

    >>> amount = InBoth.of(lambda system: opening(0.022, system))
    >>> amount, read_in(amount, "si"), read_in("dry", "si")
    ('10.4 in² per foot (220 cm² per meter)', '220 cm² per meter', 'dry')
    """
    return text.alone[system] if isinstance(text, InBoth) and system else text


def r_value(resistance: float, system: str | None, digits: int | None = None) -> str:
    """A thermal resistance the way the trade writes it: R-20, or RSI 3.5; both where no system is named.

    Examples
    --------
    >>> r_value(3.5222, "us", 0), r_value(3.5222, "si")
    ('R-20', 'RSI 3.52')
    """
    if system is None:
        return in_both(r_value(resistance, "us", digits), r_value(resistance, "si", digits))
    if system == "us":
        return show(resistance, "thermal resistance", system, digits)
    return message("units.rsi", number=number(resistance, digits))


#: How far a thickness may lie from a sixteenth of an inch and still be called one [in].
_NEAR = 0.005


def thickness(length: float, system: str) -> str:
    """A thickness as a builder says it: inches in sixteenths where they fit.

    Examples
    --------
    >>> thickness(0.0111125, "us"), thickness(0.0381, "us"), thickness(0.3048, "us"), thickness(0.02, "us")
    ('7/16 in.', '1-1/2 in.', '12 in.', '0.79 in.')
    """
    if system != "us":
        return show(length, "length", system, None if length >= 0.001 else 2)
    inches = from_si(length, "in")
    near = Fraction(round(inches * 16), 16)
    if not near or abs(inches - near) > _NEAR:
        return with_unit(number(inches, 2) if inches >= 0.1 else number(inches, figures=2), "in")
    whole, part = divmod(near, 1)
    return with_unit("-".join(str(each) for each in (whole, part) if each), "in")


def pitch(angle: float) -> float | None:
    """The rise of a slope [degrees] in a run of 12, whole or a half; None where it is none.

    >>> pitch(18.434948822922), pitch(26.0)
    (4.0, None)
    """
    halves = 24.0 * math.tan(math.radians(angle)) if angle < 85.0 else 0.0
    near = round(halves)
    return near / 2 if near and abs(halves - near) < 1e-6 else None


def slope(angle: float, system: str | None = None) -> str:
    """A slope [degrees] as it is said: 4/12 where it is one, else in degrees; in SI whole degrees stay degrees.

    Examples
    --------
    >>> slope(18.434948822922), slope(45.0), slope(45.0, "si"), slope(33.33, "us"), slope(90.0)
    ('4/12', '12/12', '45°', '33.3°', '90°')
    """
    rise = pitch(angle)
    if rise is None or (system == "si" and float(angle).is_integer()):
        return message("units.slope", degrees=number(angle, most=1))
    return message("units.pitch", rise=number(rise))


def opening(per_length: float, system: str | None = None) -> str:
    """Free area of vent openings for a length of eave or ridge [m2/m]; in both unit systems where none is named.

    Examples
    --------
    >>> opening(0.022)
    '10.4 in² per foot (220 cm² per meter)'
    """
    if system is None:
        return in_both(opening(per_length, "us"), opening(per_length, "si"))
    if system == "us":
        return message("units.opening-us", area=show_in(per_length * FOOT, "in2"))
    return message("units.opening-si", area=show_in(per_length, "cm2"))


def liquid(mass: float, area: float | None = None, system: str | None = None) -> str:
    """Water that runs off a roof [kg/m2], as a bucket holds it; of 100 square feet where no area [m2] is given.

    In both unit systems where none is named.

    Examples
    --------
    >>> liquid(0.05, 56.0), liquid(0.01, system="us")
    ('5.9 pints (2.8 L) from 603 ft² (56 m²)', '3.1 fl oz from 100 ft²')
    """
    area = to_si(100.0, "ft2") if area is None else area
    volume = mass * area / WATER_DENSITY
    pints = from_si(volume, "pint")
    many = message("units.pints", number=_two(pints))
    bucket = many if pints >= 1 else message("units.fluid-ounces", number=_two(16 * pints))
    water = {"us": bucket, "si": with_unit(_two(volume * 1000), "L")}
    roof = {"us": show_in(area, "ft2", 0), "si": with_unit(_two(area), "m2")}
    both = (in_both(*each.values()) if system is None else each[system] for each in (water, roof))
    return message("units.liquid", **dict(zip(("water", "area"), both, strict=True)))


def _two(value: float) -> str:
    return number(value, figures=2, rounded=True)


def grain_of_water() -> str:
    """What a grain is: said once wherever amounts of water are printed."""
    return message("units.grain-of-water")
