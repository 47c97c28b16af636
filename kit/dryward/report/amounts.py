"""Amounts in the sentences of a review: in both unit systems, since one review is printed in either."""

from fractions import Fraction

from dryward import units
from dryward.units import from_si, to_si
from dryward.units.table import WATER_DENSITY

#: Said once wherever amounts of water are printed.
GRAIN = "gr is a grain of water: 7000 gr = 1 lb, 1 gr = 0.065 g."


def liquid(mass, area=None):
    """Water that runs off a roof, as a bucket holds it.

    Parameters
    ----------
    mass : float
        [kg/m2]
    area : float, optional
        Of the roof [m2]; otherwise that of 100 square feet.

    Returns
    -------
    str

    Examples
    --------
    >>> liquid(0.05, 56.0), liquid(0.01)
    ('5.9 pints (2.8 L) from 603 ft² (56 m²)', '3.1 fl oz (0.093 L) from 100 ft² (9.3 m²)')
    """
    area = to_si(100.0, "ft2") if area is None else area
    volume = mass * area / WATER_DENSITY
    pints = from_si(volume, "pint")
    american = f"{_two(pints)} pints" if pints >= 1 else f"{_two(16 * pints)} fl oz"
    liters = f"{_two(volume * 1000)} L"
    return f"{american} ({liters}) from {from_si(area, 'ft2'):.0f} ft² ({_two(area)} m²)"


def opening(per_length, system=None):
    """Free area of vent openings for a length of eave or ridge.

    Parameters
    ----------
    per_length : float
        [m2/m]
    system : {"us", "si"}, optional
        Otherwise in both.

    Returns
    -------
    str

    Examples
    --------
    >>> opening(0.022)
    '10.4 in² per foot (220 cm² per meter)'
    """
    american = f"{_three(from_si(per_length * to_si(1.0, 'ft'), 'in2'))} in² per foot"
    metric = f"{_three(from_si(per_length, 'cm2'))} cm² per meter"
    return {"us": american, "si": metric}.get(system, f"{american} ({metric})")


def _three(number):
    return f"{number:.0f}" if number >= 100 else f"{number:.3g}"


#: How far a thickness may lie from a sixteenth of an inch and still be called one [in].
_NEAR = 0.005


def thickness(length, system):
    """A thickness as a builder says it: inches in sixteenths where they fit.

    Parameters
    ----------
    length : float
        [m]
    system : {"us", "si"}

    Returns
    -------
    str

    Examples
    --------
    >>> thickness(0.0111125, "us"), thickness(0.0381, "us"), thickness(0.3048, "us"), thickness(0.02, "us")
    ('7/16 in.', '1-1/2 in.', '12 in.', '0.79 in.')
    """
    if system != "us":
        return units.show(length, "length", system, None if length >= 0.001 else 2)
    inches = from_si(length, "in")
    near = Fraction(round(inches * 16), 16)
    if not near or abs(inches - near) > _NEAR:
        return f"{inches:.2f} in." if inches >= 0.1 else f"{inches:.2g} in."
    whole, part = divmod(near, 1)
    return f"{'-'.join(str(each) for each in (whole, part) if each)} in."


def _two(number):
    return f"{float(f'{number:.2g}'):g}"
