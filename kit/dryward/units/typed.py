"""Numbers as a builder types them: ``3/4 in``, ``R-20``, ``0.7 perm``, ``sd 2.5 m``."""

import math
import re
from fractions import Fraction

from dryward.checks import NotUnderstood, OutOfRange, UnknownName
from dryward.units.convert import to_si
from dryward.units.table import UNITS

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
    "area": '"600 ft2", "2 in2" or "56 m2"',
    "volume": '"20000 ft3" or "566 m3"',
    "air flow": '"1000 cfm" or "1700 m3/h"',
}


def read(text: str | float, quantity: str, default: str | None = None) -> float:
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
    OutOfRange
        For a number too large to work with.
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
    if not math.isfinite(value):
        raise OutOfRange(f"The {quantity} {typed} is too large a number to work with.")
    words = " ".join(part for part in (before, after) if part)
    if not words and default is not None:
        return to_si(value, default)
    for pattern, name in _WORDS[quantity]:
        if re.fullmatch(pattern, words):
            if UNITS[name].reciprocal and value == 0:
                break
            return to_si(value, name)
    raise NotUnderstood(quantity, typed, _ASK[quantity])


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
