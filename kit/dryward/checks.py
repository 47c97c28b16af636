"""What a number may be: the types of numbers and arrays, range checks, and the errors a person reads.

Every error of the kit is one plain sentence: what it is about, the value,
what is allowed, and the unit.  Panels show the sentence; nothing else.

What it is about is named in the kit's own words ("Surface temperature"; names.ftl
says them in the reader's language), and so is the unit ("kg/m3").  A noun that needs
the name of a thing takes it as `of`.
"""

import difflib
import math
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Any, TypeAlias, TypeVar, overload

import numpy as np
from numpy.typing import NDArray

from dryward.language import called, figures, listed, message, sign

Thing = TypeVar("Thing")
Floats: TypeAlias = NDArray[np.float64]
Ints: TypeAlias = NDArray[np.int64]
#: One number or an array of them, by what was given; typed as NumPy types the results of its own functions.
Numeric: TypeAlias = Any

#: Most letters of a list of all names that stands in a sentence.
_LISTED = 120


class PlainError(Exception):
    """Anything the kit says to a person in one sentence."""


class OutOfRange(PlainError, ValueError):
    """A number outside what the kit can work with."""


class NotUnderstood(PlainError, ValueError):
    """Typed text that is not a number with a unit."""

    def __init__(self, quantity: str, text: str, examples: Sequence[str], why: str = "checks.not-understood") -> None:
        self.quantity, self.text = quantity, text
        shown = text if len(text) <= 40 else text[:37] + "..."
        written = listed([message("checks.quoted", text=each) for each in examples], "or")
        super().__init__(message(why, quantity=called(quantity), text=shown, examples=written))


class UnknownName(PlainError, KeyError):
    """A name the kit does not have, with the nearest ones it does, all of a few, or a rule for them."""

    def __init__(self, kind: str, name: object, known: Iterable[object], rule: str = "") -> None:
        self.kind, self.name = kind, name
        words = [str(each) for each in known]
        near = difflib.get_close_matches(str(name), words, n=3, cutoff=0.5)
        facts = {"kind": called(kind), "name": str(name)[:60]}
        if near:
            sentence = message("checks.did-you-mean", near=listed(near, "or"), **facts)
        elif rule:
            sentence = message("checks.it-must-be", rule=rule, **facts)
        elif 0 < len(every := listed(words)) <= _LISTED:
            sentence = message("checks.there-is", every=every, count=len(words), **facts)
        else:
            sentence = message("checks.there-is-no", **facts)
        super().__init__(sentence)

    def __str__(self) -> str:  # KeyError would quote the sentence
        return str(self.args[0])


class BadFile(PlainError, ValueError):
    """A file that cannot be read, with the place and what is wrong there."""


class NotConverged(PlainError, ArithmeticError):
    """A calculation that found no answer: when, where and which layer."""


@overload
def within(
    what: str, value: float, low: float, high: float, unit: str = "", above: bool = False, of: str = ""
) -> float: ...
@overload
def within(
    what: str, value: object, low: float, high: float, unit: str = "", above: bool = False, of: str = ""
) -> Any: ...
def within(what: str, value: object, low: float, high: float, unit: str = "", above: bool = False, of: str = "") -> Any:
    """The value, when every number of it lies from `low` to `high`; with `above`, `low` itself is refused.

    A scalar stays a float, anything else becomes a float array.  `what` is
    the quantity as a person would say it, `of` the thing that has it, and the
    sign of `unit` is shown after the numbers; "%" shows fractions as percent.
    Raises OutOfRange:
    ``Relative humidity is 140 %; it must be 0 to 100 %.``

    >>> within("Relative humidity", 0.4, 0, 1, "%")
    0.4
    """
    if isinstance(value, (float, int)) and not isinstance(value, bool):
        number = float(value)
        if (low < number if above else low <= number) and number <= high:
            return number
        raise OutOfRange(_sentence(subject(what, of), number, low, high, unit, above))
    try:
        array = np.asarray(value, dtype=float)
    except (TypeError, ValueError):
        raise OutOfRange(message("checks.a-number", what=subject(what, of), given=repr(str(value)[:40]))) from None
    fits = (array > low if above else array >= low) & (array <= high)
    if not fits.all():
        worst = float(array[~fits].flat[0])
        raise OutOfRange(_sentence(subject(what, of), worst, low, high, unit, above))
    return float(array) if array.ndim == 0 else array


def subject(what: str, of: str = "") -> str:
    """What a sentence begins with: the kit's own noun in the reader's language, of the thing that has it.

    >>> subject("Thickness", "deck")
    'Thickness of deck'
    """
    inside = what[:1].lower() + what[1:]  # as it is called within a sentence
    noun = called(inside) if called(what) == what else called(what)
    noun = message("checks.of", what=noun, of=called(of)) if of else noun
    return begun(noun) if what[:1].isupper() else noun


def begun(text: str) -> str:
    """With the capital of a sentence."""
    return text[:1].upper() + text[1:]


def single(what: str, value: Any, low: float, high: float, unit: str = "", above: bool = False) -> float:
    """The value, when it is one number in its range, as in `within`; OutOfRange for several numbers too."""
    if isinstance(value, (bool, np.bool_)) or np.ndim(np.asarray(value)):
        raise OutOfRange(message("checks.one-number", what=subject(what), given=repr(str(value)[:40])))
    return float(within(what, value, low, high, unit, above))


def of_kind(what: str, value: Thing, kind: type | tuple[type, ...], kinds: str) -> Thing:
    """The value, when it is of a kind, which is called `kinds`, with the article: "an air leak or an air flow".

    >>> of_kind("The name", "roof", str, "a text")
    'roof'
    """
    if not isinstance(value, kind):
        facts = {"what": subject(what), "kinds": called(kinds), "given": repr(str(value)[:40])}
        raise OutOfRange(message("checks.of-a-kind", **facts))
    return value


def _sentence(what: str, value: float, low: float, high: float, unit: str, above: bool) -> str:
    tail = sign(unit)

    def shown(number: float) -> str:
        return figures(f"{number * 100 if unit == '%' else number:.6g}")

    def with_unit(number: float) -> str:
        return message("checks.amount", number=shown(number), unit=tail) if tail else shown(number)

    if math.isfinite(value):
        given = with_unit(value)
    elif math.isnan(value):
        given = message("checks.no-number")
    else:
        given = message("checks.too-far", large=value > 0)
    if math.isinf(high):
        rule = message("checks.at-least", low=with_unit(low), above=above)
    else:
        rule = message("checks.from-to", low=shown(low), high=with_unit(high), above=above)
    # One full stop after an abbreviated unit.
    return message("checks.out-of-range", what=what, given=given, rule=rule, stop=not rule.endswith("."))


def together(**values: object) -> None:
    """Refuse arrays that do not fit together in shape, by the names a person would use, with underscores.

    >>> together(temperature=20.0, relative_humidity=np.array([0.4, 0.5]))
    """
    for value in values.values():
        if not isinstance(value, (float, int)):
            break
    else:
        return  # no shape to look at, and a slider asks often
    shapes = {name: np.shape(np.asarray(value)) for name, value in values.items()}
    try:
        np.broadcast_shapes(*shapes.values())
    except ValueError:
        named = [
            message("checks.shape", name=called(name.replace("_", " ")), shape=" x ".join(map(str, shape)))
            for name, shape in shapes.items()
            if shape
        ]
        raise OutOfRange(message("checks.together", named=begun(listed(named)))) from None


def rising(what: str, values: Iterable[float], of: str = "") -> tuple[float, ...]:
    """The values as a tuple, when each is larger than the one before; `what` and `of` as in `within`."""
    found = tuple(float(v) for v in values)
    for left, right in pairwise(found):
        if not right > left:
            pair = {"left": figures(f"{left:.6g}"), "right": figures(f"{right:.6g}")}
            raise OutOfRange(message("checks.rising", what=subject(what, of), **pair))
    return found


def plain(value: Numeric) -> Numeric:
    """A float where there is only one number, otherwise the array."""
    return float(value) if np.ndim(value) == 0 else value


def seal(result: object) -> None:
    """Make the arrays of a frozen result as unchangeable as the rest of it."""
    for value in vars(result).values():
        if isinstance(value, np.ndarray):
            value.flags.writeable = False
