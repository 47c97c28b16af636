"""A number of one unit in SI, and back."""

from typing import Any, TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward.checks import OutOfRange, UnknownName
from dryward.units.table import UNITS, Unit

Floats: TypeAlias = NDArray[np.float64]


def unit(name: str) -> Unit:
    """The unit of that name.

    Examples
    --------
    >>> unit("perm").quantity
    'permeance'
    """
    try:
        return UNITS[name]
    except KeyError:
        raise UnknownName("unit", name, UNITS) from None


def _number(value: ArrayLike, this: Unit) -> Any:  # a number or an array, as it came
    """Lists as arrays; a slider's plain number as it is."""
    if isinstance(value, (float, int, np.ndarray, np.number)):
        return value
    try:
        if value is None:  # which NumPy takes for nan
            raise TypeError
        return np.asarray(value, dtype=float)
    except (TypeError, ValueError):
        raise OutOfRange(f"The {this.quantity} must be a number, not {str(value)[:40]!r}.") from None


def _turned(scale: float, value: float | Floats) -> float | Floats:
    """What lets nothing through has no end of resistance, and the other way round."""
    if isinstance(value, np.ndarray):
        with np.errstate(divide="ignore"):
            return scale / value
    return scale / value if value else np.inf


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
