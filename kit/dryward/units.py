"""US and SI at the edge of the kit: everything inside is SI.

A unit is a name, the quantity it measures, and how it turns into SI.  There
is no global switch: whoever shows or reads a number names the unit.

Why not a general units library: the trade's own units (perm, R, the
equivalent air layer "sd") are exactly what such libraries lack, and the
kit needs a plain multiplication on every slider move.  The factors are
checked against one in the tests.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from dryward.checks import NotUnderstood, UnknownName

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
# Vapor permeability of still air [kg/(s m Pa)] that turns a permeance into an
# equivalent air layer; the round value of ISO 13788.
AIR_PERMEABILITY = 2.0e-10

_PERM = GRAIN / HOUR / FOOT**2 / INCH_OF_MERCURY
_R = FOOT**2 * (5 / 9) * HOUR / BTU


@dataclass(frozen=True)
class Unit:
    """One unit: SI value = ``value * scale + offset`` (or ``scale / value``).

    Parameters
    ----------
    name : str
        Its key in `UNITS`, in letters anyone can type.
    quantity : str
        What it measures.
    scale : float
        SI units in one of it [SI], above 0.
    symbol : str
        As it is printed.
    offset : float
        SI value at its zero [SI], any.
    reciprocal : bool
        Whether the SI value is ``scale / value`` (as for R per inch).
    """

    name: str
    quantity: str
    scale: float
    symbol: str
    offset: float = 0.0
    reciprocal: bool = False


def _table(*rows):
    return {row[0]: Unit(*row) for row in rows}


UNITS = _table(
    ("degC", "temperature", 1.0, "°C"),
    ("degF", "temperature", 5 / 9, "°F", -160 / 9),
    ("K", "temperature difference", 1.0, "K"),
    ("degF difference", "temperature difference", 5 / 9, "°F"),
    ("fraction", "relative humidity", 1.0, ""),
    ("%", "relative humidity", 0.01, "%"),
    ("m", "length", 1.0, "m"),
    ("cm", "length", 0.01, "cm"),
    ("mm", "length", 0.001, "mm"),
    ("ft", "length", FOOT, "ft"),
    ("in", "length", INCH, "in."),
    ("m2", "area", 1.0, "m²"),
    ("cm2", "area", 1e-4, "cm²"),
    ("ft2", "area", FOOT**2, "ft²"),
    ("in2", "area", INCH**2, "in²"),
    ("m3", "volume", 1.0, "m³"),
    ("L", "volume", 1e-3, "L"),
    ("ft3", "volume", FOOT**3, "ft³"),
    ("pint", "volume", PINT, "pint"),
    ("quart", "volume", 2 * PINT, "quart"),
    ("kg", "mass", 1.0, "kg"),
    ("g", "mass", 1e-3, "g"),
    ("lb", "mass", POUND, "lb"),
    ("gr", "mass", GRAIN, "gr"),
    ("kg/m3", "density", 1.0, "kg/m³"),
    ("g/m3", "density", 1e-3, "g/m³"),
    ("lb/ft3", "density", POUND / FOOT**3, "lb/ft³"),
    ("kg/m2", "area density", 1.0, "kg/m²"),
    ("g/m2", "area density", 1e-3, "g/m²"),
    ("lb/ft2", "area density", POUND / FOOT**2, "lb/ft²"),
    ("gr/ft2", "area density", GRAIN / FOOT**2, "gr/ft²"),
    ("Pa", "pressure", 1.0, "Pa"),
    ("hPa", "pressure", 100.0, "hPa"),
    ("kPa", "pressure", 1000.0, "kPa"),
    ("inHg", "pressure", INCH_OF_MERCURY, "in. Hg"),
    ("inH2O", "pressure", INCH_OF_WATER, "in. w.c."),
    ("psi", "pressure", POUND * GRAVITY / INCH**2, "psi"),
    ("kg/kg", "humidity ratio", 1.0, "kg/kg"),
    ("g/kg", "humidity ratio", 1e-3, "g/kg"),
    ("gr/lb", "humidity ratio", 1 / 7000, "gr/lb"),
    ("kg/(s m2 Pa)", "permeance", 1.0, "kg/(s m² Pa)"),
    ("ng/(s m2 Pa)", "permeance", 1e-12, "ng/(s m² Pa)"),
    ("perm", "permeance", _PERM, "perm"),
    ("sd m", "permeance", AIR_PERMEABILITY, "m sd", 0.0, True),
    ("kg/(s m Pa)", "permeability", 1.0, "kg/(s m Pa)"),
    ("ng/(s m Pa)", "permeability", 1e-12, "ng/(s m Pa)"),
    ("perm in", "permeability", _PERM * INCH, "perm-in."),
    ("mu", "permeability", AIR_PERMEABILITY, "µ", 0.0, True),
    ("m2 K/W", "thermal resistance", 1.0, "m² K/W"),
    ("R", "thermal resistance", _R, "R"),
    ("W/(m2 K)", "thermal transmittance", 1.0, "W/(m² K)"),
    ("Btu/(h ft2 F)", "thermal transmittance", 1 / _R, "Btu/(h ft² °F)"),
    ("W/(m K)", "conductivity", 1.0, "W/(m K)"),
    ("Btu in/(h ft2 F)", "conductivity", INCH / _R, "Btu in./(h ft² °F)"),
    ("R per in", "conductivity", INCH / _R, "R per in.", 0.0, True),
    ("J/(kg K)", "specific heat", 1.0, "J/(kg K)"),
    ("Btu/(lb F)", "specific heat", BTU / POUND * 1.8, "Btu/(lb °F)"),
    ("J/kg", "enthalpy", 1.0, "J/kg"),
    ("kJ/kg", "enthalpy", 1000.0, "kJ/kg"),
    ("Btu/lb", "enthalpy", BTU / POUND, "Btu/lb"),
    ("m3/kg", "specific volume", 1.0, "m³/kg"),
    ("ft3/lb", "specific volume", FOOT**3 / POUND, "ft³/lb"),
    ("W/m2", "heat flux", 1.0, "W/m²"),
    ("Btu/(h ft2)", "heat flux", BTU / HOUR / FOOT**2, "Btu/(h ft²)"),
    ("kg/(s m2)", "vapor flux", 1.0, "kg/(s m²)"),
    ("g/m2/day", "vapor flux", 1e-3 / DAY, "g/m² day"),
    ("gr/ft2/day", "vapor flux", GRAIN / FOOT**2 / DAY, "gr/ft² day"),
    ("gr/ft2/h", "vapor flux", GRAIN / FOOT**2 / HOUR, "gr/ft² h"),
    ("kg/s", "mass flow", 1.0, "kg/s"),
    ("kg/day", "mass flow", 1 / DAY, "kg/day"),
    ("g/h", "mass flow", 1e-3 / HOUR, "g/h"),
    ("lb/day", "mass flow", POUND / DAY, "lb/day"),
    ("pint/day", "mass flow", PINT * WATER_DENSITY / DAY, "pints/day"),
    ("m3/s", "air flow", 1.0, "m³/s"),
    ("m3/h", "air flow", 1 / HOUR, "m³/h"),
    ("L/s", "air flow", 1e-3, "L/s"),
    ("cfm", "air flow", FOOT**3 / 60, "cfm"),
    ("m/s", "speed", 1.0, "m/s"),
    ("ft/min", "speed", FOOT / 60, "ft/min"),
    ("mph", "speed", 5280 * FOOT / HOUR, "mph"),
    ("1/s", "air change", 1.0, "1/s"),
    ("1/h", "air change", 1 / HOUR, "1/h"),
    ("s", "time", 1.0, "s"),
    ("h", "time", HOUR, "h"),
    ("day", "time", DAY, "days"),
)

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


def unit(name):
    """The unit of that name.

    Parameters
    ----------
    name : str
        A key of `UNITS`, such as ``"perm"``.

    Returns
    -------
    Unit

    Raises
    ------
    UnknownName
        When there is no such unit.

    Examples
    --------
    >>> unit("perm").quantity
    'permeance'
    """
    try:
        return UNITS[name]
    except KeyError:
        raise UnknownName("unit", name, UNITS) from None


def to_si(value, name):
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
    if this.reciprocal:
        return this.scale / value
    return value * this.scale + this.offset if this.offset else value * this.scale


def from_si(value, name):
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

    Examples
    --------
    >>> round(from_si(20.0, "degF"), 9)
    68.0
    """
    this = unit(name)
    if this.reciprocal:
        return this.scale / value
    return (value - this.offset) / this.scale if this.offset else value / this.scale


def shown_unit(quantity, system):
    """The unit in which a quantity is shown in a unit system.

    Parameters
    ----------
    quantity : str
        Such as ``"temperature"`` (the keys of `SHOWN`).
    system : {"us", "si"}

    Returns
    -------
    Unit

    Raises
    ------
    UnknownName
        For an unknown system or quantity.

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


def show(value, quantity, system, digits=None):
    """A number of SI as it is shown: with its unit, in a unit system.

    Parameters
    ----------
    value : float
        In SI.
    quantity : str
        One of the quantities of `SHOWN`.
    system : {"us", "si"}
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
    """
    this = shown_unit(quantity, system)
    number = from_si(value, this.name)
    if digits is None:
        digits = _DIGITS.get(this.name)
    if digits is not None:
        text = f"{number:.{digits}f}"
    elif number == 0 or not 1e-3 <= abs(number) < 1e5:
        text = f"{number:.3g}"
    else:
        # Three figures, but never a tail of zeros that claims more than is known.
        text = f"{number:.{max(0, 2 - int(f'{abs(number):.2e}'.split('e')[1]))}f}"
        text = text.rstrip("0").rstrip(".") if "." in text else text
    if float(text) == 0:
        text = text.lstrip("-")
    return f"{text} {this.symbol}".replace(" %", " %").strip()


# --- numbers as a builder types them -------------------------------------

_NUMBER = (
    r"(?P<whole>\d+)[\s-]+(?P<top>\d+)\s*/\s*(?P<bottom>\d+)"  # 1-1/2
    r"|(?P<t>\d+)\s*/\s*(?P<b>\d+)"  # 3/4
    r"|(?P<plain>(?<![A-Za-z])-?(?:\d+[.,]?\d*|[.,]\d+)(?:[eE]-?\d+)?)"  # 0.75, 0,75, -7; the hyphen of R-20 is none
)

# What may stand after (or before) the number, by quantity: first match wins.
_WORDS = {
    "length": (
        (r"(in\.?|inch|inches|\"|”)", "in"),
        (r"(ft\.?|foot|feet|'|’)", "ft"),
        (r"mm", "mm"),
        (r"cm", "cm"),
        (r"m", "m"),
    ),
    "thermal resistance": (
        (r"r|r-?value", "R"),
        (r"rsi|m2\s*k/w|m²\s*k/w", "m2 K/W"),
    ),
    "permeance": (
        (r"perms?", "perm"),
        (r"(sd|s_d)(\s*m)?|m sd|m", "sd m"),
        (r"ng/\(?s\s*m[2²]\s*pa\)?", "ng/(s m2 Pa)"),
        (r"kg/\(?s\s*m[2²]\s*pa\)?", "kg/(s m2 Pa)"),
    ),
    "permeability": (
        (r"perms?[\s-]*in\.?|perm[\s-]*inch(es)?", "perm in"),
        (r"mu|µ|μ", "mu"),
        (r"ng/\(?s\s*m\s*pa\)?", "ng/(s m Pa)"),
        (r"kg/\(?s\s*m\s*pa\)?", "kg/(s m Pa)"),
    ),
    "conductivity": (
        (r"r\s*(per|/)\s*in(ch)?\.?|r", "R per in"),
        (r"w/\(?m\s*k\)?", "W/(m K)"),
        (r"btu\s*in\.?/\(?h\s*ft[2²]\s*°?f\)?", "Btu in/(h ft2 F)"),
    ),
    "temperature": ((r"°?\s*f|degf", "degF"), (r"°?\s*c|degc", "degC")),
    "relative humidity": ((r"%", "%"),),
    "density": ((r"kg/m[3³]", "kg/m3"), (r"lb/ft[3³]|pcf", "lb/ft3")),
    "area": ((r"ft[2²]|sq\.? ?ft", "ft2"), (r"in[2²]|sq\.? ?in", "in2"), (r"cm[2²]", "cm2"), (r"m[2²]", "m2")),
    "volume": ((r"ft[3³]|cu\.? ?ft", "ft3"), (r"m[3³]", "m3")),
    "air flow": ((r"cfm", "cfm"), (r"m[3³]/h", "m3/h"), (r"l/s", "L/s")),
}  # fmt: skip

_ASK = {
    "length": '"3/4 in" or "19 mm"',
    "thermal resistance": '"R-20" or "RSI 3.5"',
    "permeance": '"0.7 perm" or "sd 2.5 m"',
    "permeability": '"116 perm-in" or "mu 5"',
    "conductivity": '"R-3.7 per in" or "0.039 W/(m K)"',
    "temperature": '"20 F" or "-7 C"',
    "relative humidity": '"40 %"',
    "density": '"40 lb/ft3" or "640 kg/m3"',
    "area": '"600 ft2" or "56 m2"',
    "volume": '"20000 ft3" or "566 m3"',
    "air flow": '"1000 cfm" or "1700 m3/h"',
}


def read(text, quantity, default=None):
    """A typed number with its unit, in SI.

    Understands what stands on a drawing or a data sheet: ``3/4 in``,
    ``1-1/2"``, ``R-20``, ``0.7 perm``, ``sd 2.5 m``, ``116 perm-in``,
    ``R-3.7 per in``, and a decimal comma.

    Parameters
    ----------
    text : str or float
        What was typed.  A number without a unit is taken in `default`.
    quantity : str
        What is meant, one of the keys in the message below.
    default : str, optional
        Unit of a bare number; without it a bare number is refused.

    Returns
    -------
    float
        The value in SI.

    Raises
    ------
    NotUnderstood
        With one sentence that shows how to write it.
    UnknownName
        For a quantity it has no units for.

    Examples
    --------
    >>> round(read("3/4 in", "length"), 5)
    0.01905
    >>> round(read("R-20", "thermal resistance"), 4)
    3.5222
    """
    if quantity not in _WORDS:
        raise UnknownName("quantity", quantity, _WORDS)
    typed = str(text).strip()
    match = re.search(_NUMBER, typed)
    if not match or len(typed) > 60:
        raise NotUnderstood(quantity, typed, _ASK[quantity])
    before = typed[: match.start()].strip(" -=:").lower()
    after = typed[match.end() :].strip(" -").lower()
    value = _number(match)
    if value is None:
        raise NotUnderstood(quantity, typed, _ASK[quantity])
    words = " ".join(part for part in (before, after) if part)
    if not words and default is not None:
        return to_si(value, default)
    for pattern, name in _WORDS[quantity]:
        if re.fullmatch(pattern, words):
            if UNITS[name].reciprocal and value == 0:
                break
            return to_si(value, name)
    raise NotUnderstood(quantity, typed, _ASK[quantity])


def _number(match):
    part = match.groupdict()
    try:
        if part["whole"]:
            return float(int(part["whole"]) + Fraction(int(part["top"]), int(part["bottom"])))
        if part["t"]:
            return float(Fraction(int(part["t"]), int(part["b"])))
        return float(part["plain"].replace(",", "."))
    except (ZeroDivisionError, ValueError):
        return None
