"""Range checks, and the errors a person reads.

Every error of the kit is one plain sentence: what it is about, the value,
what is allowed, and the unit.  Panels show the sentence; nothing else.
"""

import difflib
import math
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Any, TypeVar, overload

import numpy as np

Thing = TypeVar("Thing")

#: Most letters of a list of all names that stands in a sentence.
_LISTED = 120


def ended(sentence: str) -> str:
    """A sentence with the mark at its end that it needs.

    >>> ended("There is no such file"), ended("There is no color; did you mean red")
    ('There is no such file.', 'There is no color; did you mean red?')
    """
    return f"{sentence.rstrip('.?')}{'?' if '; did you mean ' in sentence else '.'}"


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words as they stand in a sentence: "a", "a and b", "a, b and c".

    >>> listed(["batt"]), listed(["batt", "board"]), listed(["batt", "board", "film"], "or")
    ('batt', 'batt and board', 'batt, board or film')
    """
    return f"{', '.join(words[:-1])} {last} {words[-1]}" if len(words) > 1 else "".join(words)


class PlainError(Exception):
    """Anything the kit says to a person in one sentence."""


class OutOfRange(PlainError, ValueError):
    """A number outside what the kit can work with."""


class NotUnderstood(PlainError, ValueError):
    """Typed text that is not a number with a unit."""

    def __init__(self, quantity: str, text: str, example: str, why: str = "is not understood") -> None:
        self.quantity, self.text = quantity, text
        shown = text if len(text) <= 40 else text[:37] + "..."
        super().__init__(f'The {quantity} "{shown}" {why}; write it like {example}.')


class UnknownName(PlainError, KeyError):
    """A name the kit does not have, with the nearest ones it does, all of a few, or a rule for them."""

    def __init__(self, kind: str, name: object, known: Iterable[object], rule: str = "") -> None:
        self.kind, self.name = kind, name
        words = [str(each) for each in known]
        near = difflib.get_close_matches(str(name), words, n=3, cutoff=0.5)
        every = listed(words)
        hint = f"; there {'are' if len(words) > 1 else 'is'} {every}" if 0 < len(every) <= _LISTED else ""
        hint = f"; it must be {rule}" if rule else hint
        hint = f"; did you mean {' or '.join(near)}" if near else hint
        super().__init__(ended(f'There is no {kind} "{str(name)[:60]}"{hint}'))

    def __str__(self) -> str:  # KeyError would quote the sentence
        return str(self.args[0])


class BadFile(PlainError, ValueError):
    """A file that cannot be read, with the place and what is wrong there."""


class NotConverged(PlainError, ArithmeticError):
    """A calculation that found no answer: when, where and which layer."""


@overload
def within(what: str, value: float, low: float, high: float, unit: str = "", above: bool = False) -> float: ...
@overload
def within(what: str, value: object, low: float, high: float, unit: str = "", above: bool = False) -> Any: ...
def within(what: str, value: object, low: float, high: float, unit: str = "", above: bool = False) -> Any:
    """The value, when every number of it lies from `low` to `high`; with `above`, `low` itself is refused.

    A scalar stays a float, anything else becomes a float array.  `what` is
    the quantity as a person would say it, capitalized, and `unit` is shown
    after the numbers; "%" shows fractions as percent.  Raises OutOfRange:
    ``Relative humidity is 140 %; it must be 0 to 100 %.``

    >>> within("Relative humidity", 0.4, 0, 1, "%")
    0.4
    """
    if isinstance(value, (float, int)) and not isinstance(value, bool):
        number = float(value)
        if (low < number if above else low <= number) and number <= high:
            return number
        raise OutOfRange(_sentence(what, number, low, high, unit, above))
    try:
        array = np.asarray(value, dtype=float)
    except (TypeError, ValueError):
        raise OutOfRange(f"{what} must be a number, not {str(value)[:40]!r}.") from None
    fits = (array > low if above else array >= low) & (array <= high)
    if not fits.all():
        worst = float(array[~fits].flat[0])
        raise OutOfRange(_sentence(what, worst, low, high, unit, above))
    return float(array) if array.ndim == 0 else array


def single(what: str, value: Any, low: float, high: float, unit: str = "", above: bool = False) -> float:
    """The value, when it is one number in its range, as in `within`; OutOfRange for several numbers too."""
    if isinstance(value, (bool, np.bool_)) or np.ndim(np.asarray(value)):
        raise OutOfRange(f"{what} must be one number, not {str(value)[:40]!r}.")
    return float(within(what, value, low, high, unit, above))


def of_kind(what: str, value: Thing, kind: type | tuple[type, ...], called: str) -> Thing:
    """The value, when it is of a kind, which is `called` so with its article: "an air leak or an air flow".

    >>> of_kind("The name", "roof", str, "a text")
    'roof'
    """
    if not isinstance(value, kind):
        raise OutOfRange(f"{what} must be {called}, not {str(value)[:40]!r}.")
    return value


def _sentence(what: str, value: float, low: float, high: float, unit: str, above: bool) -> str:
    factor = 100.0 if unit == "%" else 1.0
    tail = f" {unit}" if unit else ""

    def shown(number: float) -> str:
        return f"{number * factor:.6g}"

    given = f"{shown(value)}{tail}"
    if not math.isfinite(value):
        given = "not a number" if math.isnan(value) else f"too {'large' if value > 0 else 'small'}"
    if math.isinf(high):
        rule = f"{'above' if above else 'at least'} {shown(low)}{tail}"
    elif above:
        rule = f"above {shown(low)} and at most {shown(high)}{tail}"
    else:
        rule = f"{shown(low)} to {shown(high)}{tail}"
    return f"{what} is {given}; it must be {rule.removesuffix('.')}."  # one full stop after "in."


def together(**values: object) -> None:
    """Refuse arrays that do not fit together in shape, by the names a person would use, with underscores.

    >>> together(temperature=20.0, relative_humidity=np.array([0.4, 0.5]))
    """
    if all(isinstance(value, (float, int)) for value in values.values()):
        return  # no shape to look at, and a slider asks often
    shapes = {name: np.shape(np.asarray(value)) for name, value in values.items()}
    try:
        np.broadcast_shapes(*shapes.values())
    except ValueError:
        named = [f"{name.replace('_', ' ')} ({' x '.join(map(str, shape))})" for name, shape in shapes.items() if shape]
        sentence = f"{listed(named)} do not fit together in shape."
        raise OutOfRange(sentence[0].upper() + sentence[1:]) from None


def rising(what: str, values: Iterable[float]) -> tuple[float, ...]:
    """The values as a tuple, when each is larger than the one before; `what` is the quantity, capitalized."""
    found = tuple(float(v) for v in values)
    for left, right in pairwise(found):
        if not right > left:
            raise OutOfRange(f"{what} must rise from point to point, but {right:.6g} follows {left:.6g}.")
    return found
