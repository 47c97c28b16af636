"""A number of one unit in SI, and back."""

from dryward.checks import UnknownName
from dryward.units.table import UNITS


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
