"""Quantities as people write them: ``3/4 in``, ``R-20``, ``4/12``, ``70 F``, ``a fifth``.

One table says of each quantity what a plain number means, the range it can
lie in, the units it is written in and how to write it.  Python, a file, a
page's field and the command line all come in through `quantity` and `checked`.
"""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import overload

from dryward import language
from dryward.checks import Floats, NotUnderstood, OutOfRange, UnknownName, within
from dryward.language import called, message
from dryward.units.table import UNITS, from_si, to_si

#: Longest text that is read as a number.
_LONGEST = 60

_NUMBER = re.compile(
    r"(?P<whole>\d+)[\s-]+(?P<top>\d+)\s*/\s*(?P<bottom>\d+)"  # 1-1/2
    r"|(?P<t>\d+)\s*/\s*(?P<b>\d+)"  # 3/4
    r"|(?P<plain>(?:(?<![A-Za-z])-)?(?:\d+[.,]?\d*|[.,]\d+)(?:[eE]-?\d+)?)"  # 0.75, 0,75, -7; no minus in R-20
)
#: A comma before three digits: thousands to some, a decimal to others.
_THOUSANDS = re.compile(r"(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?![\d,])")
_FEET_AND_INCHES = re.compile(r"(.+?)\s*(?:ft\.?|foot|feet|')[\s,-]*(.+?)\s*(?:in\.?|inch|inches|\")")
_RISE = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:/|:|-?in-?|to)\s*(\d+(?:[.,]\d+)?)")

_EIGHTHS = ("1/2", "1/3", "2/3", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8")
_SIGNS = str.maketrans({
    "’": "'", "′": "'", "‘": "'", "”": '"', "″": '"', "“": '"', "−": "-", "–": "-", "\xa0": " ", "\u202f": " ",
    "²": "2", "³": "3", "μ": "µ", "⁄": "/",
    **{sign: f" {part}" for sign, part in zip("½⅓⅔¼¾⅛⅜⅝⅞", _EIGHTHS, strict=True)},
})  # fmt: skip

#: How units are written besides their names and symbols.
_ALSO = {
    "degC": "c, deg c, degrees c, celsius",
    "degF": "f, deg f, degrees f, fahrenheit",
    "%": "percent",
    "degrees": "deg, degree, °",
    "m": "meter, meters, metre, metres",
    "in": 'inch, inches, "',
    "ft": "foot, feet, '",
    "ft2": "sq ft, square feet",
    "in2": "sq in, square inches",
    "m2": "sq m, square meters",
    "ft3": "cu ft, cubic feet",
    "m3": "cubic meters",
    "R": "r-value",
    "m2 K/W": "rsi",
    "perm": "perms",
    "sd m": "m sd, sd, s_d, s_d m, m",
    "perm in": "perms in, perm inch, perm inches, perms inches",
    "mu": "µ",
    "R per in": "r, r per inch",
    "lb/ft3": "pcf",
    "ACH50": "ach, air changes, 1/h",
    "in2/ft": "in2, in2 per foot, sq in, sq in per ft",
    "cm2/m": "cm2",
    "m2/m": "m2",
    "kg/day": "kg/d",
    "lb/day": "lb/d, lbs/day, pounds/day",
    "pint/day": "pints/day, pint/d, pints/d, pt/day",
    "s of suction": "s",
    "cfm": "ft3/min, cubic feet a minute",
    "m3/h": "m3/hr",
}
_PARTS = {"half": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
          "ninth": 9, "tenth": 10, "twentieth": 20}  # fmt: skip
_COUNTS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
           "nine": 9, "ten": 10, "twelve": 12, "twenty": 20, "hundred": 100}  # fmt: skip
_COMPASS = {"north": 0, "northeast": 45, "east": 90, "southeast": 135, "south": 180, "southwest": 225, "west": 270,
            "northwest": 315,
            "n": 0, "ne": 45, "e": 90, "se": 135, "s": 180, "sw": 225, "w": 270, "nw": 315}  # fmt: skip


def _key(words: str) -> str:
    """A unit without what its writers differ in: blanks, full stops, brackets, hyphens, "per" and "a"."""
    return re.sub(r"[\s.()·*°-]", "", re.sub(r"\b(?:per|an?)\b", "/", words.lower()))


@dataclass(frozen=True)
class Quantity:
    """One quantity: the unit of a plain number, its range, and how it is written."""

    name: str
    #: Unit of a plain number, in Python and in a file.
    unit: str
    low: float
    high: float
    #: Writings that stand in a message, the US one first.
    examples: tuple[str, ...]
    #: More writings that are understood.
    more: tuple[str, ...] = ()
    #: Quantity of `UNITS` whose units it is written in, where that has another name.
    measured_as: str = ""
    #: Unit of a text that has none; where there is none such a text is refused.
    bare: str | None = None
    #: Whether `low` itself is refused.
    above: bool = False

    @property
    def unit_of_range(self) -> str:
        """The unit that its range is said in: fractions in percent."""
        return "%" if self.unit == "fraction" and self.name != "number" else self.unit

    @cached_property
    def units(self) -> dict[str, str]:
        """Every writing of a unit -> its name in `UNITS`."""
        found: dict[str, str] = {}
        for each in UNITS.values():
            if each.quantity == (self.measured_as or self.name):
                found[_key(each.name)] = each.name
        for name in tuple(found.values()):
            found |= {_key(words): name for words in _ALSO.get(name, "").split(", ") if words}
        return found

    def parse(self, text: str, bare: str | None = None) -> tuple[float, str]:
        """The number that was written, and the name of its unit."""
        typed = text.strip()
        if len(typed) > _LONGEST:
            raise self._not_understood(typed)
        plain = language.plain(typed).translate(_SIGNS).strip()
        special = _SPECIAL.get(self.name, lambda plain: None)(plain)
        if special is not None:
            return special
        if _THOUSANDS.search(plain) and not language.has_decimal_comma():
            raise self._not_understood(typed, "checks.comma-of-two-meanings")
        match = _NUMBER.search(plain)
        value = _number(match) if match else None
        if match is None or value is None:
            raise self._not_understood(typed)
        if not math.isfinite(value):
            raise OutOfRange(message("units.too-large", quantity=called(self.name), text=typed))
        before, after = plain[: match.start()].strip(" -=:"), plain[match.end() :].strip(" -")
        if not before and not after:
            name = bare or self.bare
            if name is None:
                raise self._not_understood(typed, "checks.no-unit")
            return value, name
        unit = self.units.get(_key(f"{before} {after}")) or self._in_the_language(before, after)
        if unit is None or (UNITS[unit].reciprocal and value == 0):
            raise self._not_understood(typed)
        return value, unit

    def _in_the_language(self, before: str, after: str) -> str | None:
        """The unit whose sign in the reader's language stands around a number: what is shown can be typed again."""
        if language.folder() is None:
            return None
        for name in dict.fromkeys(self.units.values()):
            around = message(f"units.amount-{language.slug(name)}", number="\0").translate(_SIGNS).partition("\0")
            alone = language.sign(name).translate(_SIGNS)
            if _key(f"{before} {after}") in (_key(f"{around[0].strip(' -=:')} {around[2].strip(' -')}"), _key(alone)):
                return name
        return None

    def _not_understood(self, typed: str, why: str = "checks.not-understood") -> NotUnderstood:
        return NotUnderstood(self.name, typed, self.examples, why)


def _number(match: re.Match[str]) -> float | None:
    part = match.groupdict()
    try:
        if part["whole"]:
            return float(int(part["whole"]) + Fraction(int(part["top"]), int(part["bottom"])))
        if part["t"]:
            return float(Fraction(int(part["t"]), int(part["b"])))
        return float(part["plain"].replace(",", "."))
    except (ZeroDivisionError, ValueError):
        return None
    except OverflowError:  # whole numbers of hundreds of digits
        return math.inf


def _whole_number(text: str) -> float | None:
    """The number, where there is nothing else."""
    match = _NUMBER.fullmatch(text.strip())
    return _number(match) if match else None


def _feet_and_inches(plain: str) -> tuple[float, str] | None:
    match = _FEET_AND_INCHES.fullmatch(plain)
    feet, inches = (_whole_number(each) for each in match.groups()) if match else (None, None)
    return None if feet is None or inches is None else (12 * feet + inches, "in")


def _rise_over_run(plain: str) -> tuple[float, str] | None:
    """The angle of 4/12, 4:12, "4 in 12" or 33 %."""
    if match := _RISE.fullmatch(plain):
        rise, run = (float(each.replace(",", ".")) for each in match.groups())
    else:
        percent = _whole_number(plain.removesuffix("%")) if plain.endswith("%") else None
        rise, run = (0.0, 0.0) if percent is None else (percent, 100.0)
    return (math.degrees(math.atan2(rise, run)), "degrees") if run else None


def _part_of_all(plain: str) -> tuple[float, str] | None:
    """The fraction of "a fifth", "two thirds", "half" or "one in ten"."""
    words = plain.lower().replace("-", " ").split()
    if len(words) == 3 and words[1] in ("in", "of"):
        part, whole = (_COUNTS.get(each) or _whole_number(each) for each in (words[0], words[2]))
        return (part / whole, "fraction") if part and whole else None
    if words and len(words) <= 2 and (words[-1].removesuffix("s") in _PARTS or words[-1] == "halves"):
        of = _PARTS[words[-1].removesuffix("s").replace("halve", "half")]
        part = _COUNTS.get(words[0]) if len(words) == 2 else 1
        return (part / of, "fraction") if part else None
    return None


def _way(plain: str) -> tuple[float, str] | None:
    """The angle of a point of the compass."""
    angle = _COMPASS.get(plain.lower().replace("-", "").replace(" ", ""))
    return None if angle is None else (float(angle), "degrees")


_SPECIAL = {"length": _feet_and_inches, "slope": _rise_over_run, "share": _part_of_all, "azimuth": _way}


def _table(*rows: Quantity) -> dict[str, Quantity]:
    return {row.name: row for row in rows}


#: Ranges are the kit's own: what its formulas were made for, wide enough for any building.
QUANTITIES = _table(
    Quantity("temperature", "degC", -100, 100, ("20 F", "-7 C"), ("70 F", "70 degF", "70 °F", "-7 degC")),
    Quantity("relative humidity", "fraction", 0, 1, ("40 %",), ("40%", "40 percent")),
    Quantity("number", "fraction", -math.inf, math.inf, ("0.7",), ("70 %",), "relative humidity", bare="fraction"),
    Quantity(
        "share", "fraction", 0, 1, ("20 %", "a fifth"), ("1/5", "0,2", "one fifth", "one in five", "1 in 5"),
        "relative humidity", bare="fraction",
    ),
    Quantity(
        "length", "m", 0, 1000, ("3/4 in", "19 mm"),
        ("12 in", '12"', "1/2 in", "1-1/2 in", "1 1/2 in", "1½ in", "5 ft 6 in", "5'6\"", "5' 6-1/2\"", "0,5 m"),
    ),
    Quantity("area", "m2", 0, 1e6, ("600 ft2", "2 in2", "56 m2"), ("10 in2", "600 sq ft", "600 ft²", "25 cm2")),
    Quantity("volume", "m3", 0, 1e6, ("20000 ft3", "566 m3"), ("20000 cu ft", "566 m³")),
    Quantity("density", "kg/m3", 0, 25000, ("40 lb/ft3", "640 kg/m3"), ("40 pcf",), above=True),
    Quantity("specific heat", "J/(kg K)", 100, 10000, ("0.26 Btu/(lb F)", "1090 J/(kg K)")),
    Quantity("permeance", "kg/(s m2 Pa)", 0, 6e-7, ("0.7 perm", "sd 2.5 m"), ("10 perms", "40 ng/(s m2 Pa)")),
    Quantity("permeability", "kg/(s m Pa)", 0, 1e-9, ("116 perm-in", "mu 5"), ("116 perm in.", "µ 5")),
    Quantity("thermal resistance", "m2 K/W", 0, 100, ("R-20", "RSI 3.5"), ("R-38", "R 38", "R38", "3.5 m2 K/W")),
    Quantity("conductivity", "W/(m K)", 0.001, 500, ("R-3.7 per in", "0.039 W/(m K)"), ("R-3.7/in", "0,039 W/(m K)")),
    Quantity("liquid conductivity", "s of suction", 0, 1, ("1e-12 s",)),
    Quantity("air flow", "m3/s", 0, 100, ("1000 cfm", "1700 m3/h"), ("20 cfm", "10 L/s")),
    Quantity("mass flow", "kg/s", 0, 1, ("10 pints/day", "10 kg/day"), ("12 lb/day", "10 pints a day", "400 g/h")),
    Quantity("air changes at 50 Pa", "ACH50", 0, 50, ("3 ACH50",), ("3", "3 ach", "0,6 ACH50"), bare="ACH50"),
    Quantity(
        "vent opening", "m2/m", 0, 0.5, ("10 in2", "200 cm2/m"), ("10 in2/ft", "10 in² per ft", "200 cm2"), above=True,
    ),
    Quantity(
        "slope", "degrees", 0, 90, ("4/12", "18 deg"), ("4:12", "1:12", "4 in 12", "18°", "18", "33 %"),
        "angle", bare="degrees",
    ),
    Quantity("azimuth", "degrees", 0, 360, ("south", "180"), ("180 deg", "southwest", "SW"), "angle", bare="degrees"),
)  # fmt: skip


def _of(name: str) -> Quantity:
    try:
        return QUANTITIES[name]
    except KeyError:
        raise UnknownName("quantity", name, QUANTITIES) from None


@overload
def quantity(value: float | str, name: str, bare: str | None = None) -> float: ...
@overload
def quantity(value: Floats, name: str, bare: str | None = None) -> Floats: ...
def quantity(value: float | str | Floats, name: str, bare: str | None = None) -> float | Floats:
    """A quantity in SI: a number is SI already, a text carries its unit.

    Understands what stands on a drawing or a data sheet: ``3/4 in``,
    ``5'6"``, ``R-20``, ``0.7 perm``, ``sd 2.5 m``, ``R-3.7 per in``, ``4/12``
    for a slope, ``a fifth`` for a share, and a decimal comma.

    Parameters
    ----------
    value : float, array or str
        A number or an array in SI [SI], any, is given back as it is.
    name : str
        One of `QUANTITIES`.
    bare : str, optional
        Unit of a text without one; otherwise such a text is refused, but
        for a slope in degrees, a share and air changes.

    Returns
    -------
    float or array
        In SI.

    Raises
    ------
    NotUnderstood
        With one sentence that shows how to write it.
    OutOfRange
        For a number too large to work with.
    UnknownName
        For a quantity that is not in the table.

    Examples
    --------
    >>> round(quantity("3/4 in", "length"), 5)
    0.01905
    >>> round(quantity("R-20", "thermal resistance"), 4)
    3.5222
    >>> round(quantity("4/12", "slope"), 2), quantity("a fifth", "share")
    (18.43, 0.2)
    """
    if isinstance(value, str):
        return to_si(*_of(name).parse(value, bare))
    return value


def checked(
    what: str,
    value: float | str | Floats | Sequence[float],
    name: str,
    low: float | None = None,
    high: float | None = None,
    *,
    above: bool = False,
    bare: str | None = None,
    of: str = "",
) -> float:
    """A quantity in SI, when it lies in its range: that of the table, or a narrower one.

    What was written in another unit is refused in that unit.  Raises
    NotUnderstood and OutOfRange, one sentence with `what` and `of` as in `checks.within`.
    """
    this = _of(name)
    above = above or (low is None and this.above)
    low, high = this.low if low is None else low, this.high if high is None else high
    if isinstance(value, float) and (low < value if above else low <= value) and value <= high:
        return float(value)  # the usual way: a slider makes many
    if not isinstance(value, str):
        return within(what, value, low, high, this.unit_of_range, above, of)
    number, unit = this.parse(value, bare)
    try:
        return within(what, to_si(number, unit), low, high, this.unit_of_range, above, of)
    except OutOfRange:
        if this.unit != "fraction" and not UNITS[unit].reciprocal:
            within(what, number, from_si(low, unit), from_si(high, unit), unit, above, of)
        raise
