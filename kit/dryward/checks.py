"""Range checks, and the errors a person reads.

Every error of the kit is one plain sentence: what it is about, the value,
what is allowed, and the unit.  Panels show the sentence; nothing else.
"""

import difflib
import math
from itertools import pairwise

import numpy as np

#: Most letters of a list of all names that stands in a sentence.
_LISTED = 120


def ended(sentence):
    """A sentence with the mark at its end that it needs.

    Parameters
    ----------
    sentence : str
        With or without a mark at its end.

    Returns
    -------
    str

    Examples
    --------
    >>> ended("There is no such file"), ended("There is no color; did you mean red")
    ('There is no such file.', 'There is no color; did you mean red?')
    """
    return f"{sentence.rstrip('.?')}{'?' if '; did you mean ' in sentence else '.'}"


def listed(words):
    """Words as they stand in a sentence: "a", "a and b", "a, b and c".

    Parameters
    ----------
    words : sequence of str

    Returns
    -------
    str

    Examples
    --------
    >>> listed(["batt"]), listed(["batt", "board"]), listed(["batt", "board", "film"])
    ('batt', 'batt and board', 'batt, board and film')
    """
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)


class PlainError(Exception):
    """Anything the kit says to a person in one sentence."""


class OutOfRange(PlainError, ValueError):
    """A number outside what the kit can work with."""


class NotUnderstood(PlainError, ValueError):
    """Typed text that is not a number with a unit."""

    def __init__(self, quantity, text, example):
        self.quantity, self.text = quantity, text
        shown = text if len(text) <= 40 else text[:37] + "..."
        super().__init__(f'The {quantity} "{shown}" is not understood; write it like {example}.')


class UnknownName(PlainError, KeyError):
    """A name the kit does not have, with the nearest ones it does, all of a few, or a rule for them."""

    def __init__(self, kind, name, known, rule=""):
        self.kind, self.name = kind, name
        words = [str(each) for each in known]
        near = difflib.get_close_matches(str(name), words, n=3, cutoff=0.5)
        every = listed(words)
        hint = f"; there {'are' if len(words) > 1 else 'is'} {every}" if 0 < len(every) <= _LISTED else ""
        hint = f"; it must be {rule}" if rule else hint
        hint = f"; did you mean {' or '.join(near)}" if near else hint
        super().__init__(ended(f'There is no {kind} "{str(name)[:60]}"{hint}'))

    def __str__(self):  # KeyError would quote the sentence
        return self.args[0]


class BadFile(PlainError, ValueError):
    """A file that cannot be read, with the place and what is wrong there."""


class NotConverged(PlainError, ArithmeticError):
    """A calculation that found no answer: when, where and which layer."""


def within(what, value, low, high, unit="", above=False):
    """The value, when every number of it lies in its range.

    Parameters
    ----------
    what : str
        The quantity as a person would say it, capitalized.
    value : float or array
        Any shape.
    low, high : float
        The allowed range, ends included (`low` excluded with `above`).
    unit : str, optional
        Shown after the numbers.  ``"%"`` shows fractions as percent.
    above : bool, optional
        Whether `low` itself is refused.

    Returns
    -------
    float or ndarray
        A scalar stays a float, anything else becomes a float array.

    Raises
    ------
    OutOfRange
        ``Relative humidity is 140 %; it must be 0 to 100 %.``

    Examples
    --------
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


def single(what, value, low, high, unit="", above=False):
    """The value, when it is one number in its range.

    Parameters
    ----------
    what, value, low, high, unit, above
        As in `within`.

    Returns
    -------
    float

    Raises
    ------
    OutOfRange
        As in `within`, and for several numbers.

    Examples
    --------
    >>> single("Share", 0.4, 0, 1, "%")
    0.4
    """
    if isinstance(value, (bool, np.bool_)) or np.ndim(value):
        raise OutOfRange(f"{what} must be one number, not {str(value)[:40]!r}.")
    return within(what, value, low, high, unit, above)


def of_kind(what, value, kind, called):
    """The value, when it is of a kind.

    Parameters
    ----------
    what : str
        What it is for, capitalized: "The weather".
    value : object
    kind : type or tuple of type
    called : str
        The kind in words, with its article: "an air leak or an air flow".

    Returns
    -------
    object

    Raises
    ------
    OutOfRange
        For anything else.

    Examples
    --------
    >>> of_kind("The name", "roof", str, "a text")
    'roof'
    """
    if not isinstance(value, kind):
        raise OutOfRange(f"{what} must be {called}, not {str(value)[:40]!r}.")
    return value


def _sentence(what, value, low, high, unit, above):
    factor = 100.0 if unit == "%" else 1.0
    tail = f" {unit}" if unit else ""

    def shown(number):
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


def together(**values):
    """Refuse arrays that do not fit together in shape.

    Parameters
    ----------
    **values : float or array
        By the names a person would use, with underscores.

    Raises
    ------
    OutOfRange
        ``Temperature (3) and relative humidity (4) do not fit together in shape.``

    Examples
    --------
    >>> together(temperature=20.0, relative_humidity=np.array([0.4, 0.5]))
    """
    if all(isinstance(value, (float, int)) for value in values.values()):
        return  # no shape to look at, and a slider asks often
    shapes = {name: np.shape(value) for name, value in values.items()}
    try:
        np.broadcast_shapes(*shapes.values())
    except ValueError:
        named = [f"{name.replace('_', ' ')} ({' x '.join(map(str, shape))})" for name, shape in shapes.items() if shape]
        sentence = f"{listed(named)} do not fit together in shape."
        raise OutOfRange(sentence[0].upper() + sentence[1:]) from None


def rising(what, values):
    """The values as a tuple, when each is larger than the one before.

    Parameters
    ----------
    what : str
        The quantity, capitalized.
    values : sequence of float

    Returns
    -------
    tuple of float

    Raises
    ------
    OutOfRange
        When a value is not above the one before it.
    """
    found = tuple(float(v) for v in values)
    for left, right in pairwise(found):
        if not right > left:
            raise OutOfRange(f"{what} must rise from point to point, but {right:.6g} follows {left:.6g}.")
    return found
