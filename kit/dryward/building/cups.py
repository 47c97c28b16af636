"""Dry cup and wet cup: from two label values to a curve.

A label gives one or two permeances.  In the dry cup the air is at 0 % on
one face and 50 % on the other, a mean of 25 %.  In the wet cup it is 50 %
and 100 %, a mean of 75 %.  Many products let more vapor through in the wet
cup: that is the same sheet at another mean humidity.

The kit reads a curve at the MEAN humidity of the two faces.  The two label
values are two points of that curve.  Between them it is straight on a log
scale; outside them it stays level, because nothing was measured there.
"""

import math

from dryward.building.membranes import HIGHEST, FixedMembrane, VariableMembrane
from dryward.checks import OutOfRange, within
from dryward.units import from_si

#: Mean humidity of the two faces in each test [-].
#: ASTM E96 desiccant method (0 and 50 %) and water method (100 and 50 %).
DRY_CUP, WET_CUP = 0.25, 0.75
#: Points that draw the log-straight part of a material curve.
_BETWEEN = 5


def _checked(dry, wet, highest, unit):
    dry = within("Dry-cup value", dry, 0.0, highest, unit, above=True)
    wet = within("Wet-cup value", wet, 0.0, highest, unit, above=True)
    if wet < dry:
        raise OutOfRange(
            f"The wet-cup value {wet:.4g} {unit} is below the dry-cup value {dry:.4g} {unit}; "
            f"it must be at least as large."
        )
    return dry, wet


def curve(dry, wet):
    """Vapor permeability of a material against humidity, from its two cup values.

    Parameters
    ----------
    dry, wet : float
        Dry-cup and wet-cup permeability [kg/(s m Pa)], above 0 to 1e-9; the
        wet one at least as large.

    Returns
    -------
    float or ((relative humidity, permeability), ...)
        One number when the two agree.

    Raises
    ------
    OutOfRange
        Out of range, or the wet cup below the dry one.

    Notes
    -----
    Assumes that the value belongs to the mean humidity of the test, 25 % and
    75 %.

    Examples
    --------
    >>> points = curve(1e-12, 1e-11)
    >>> points[0], points[-1]
    ((0.25, 1e-12), (0.75, 1e-11))
    """
    dry, wet = _checked(dry, wet, 1e-9, "kg/(s m Pa)")
    if wet == dry:
        return dry
    last = _BETWEEN - 1
    inner = tuple(
        (DRY_CUP + (WET_CUP - DRY_CUP) * i / last, dry * math.exp(math.log(wet / dry) * i / last))
        for i in range(1, last)
    )
    return ((DRY_CUP, dry), *inner, (WET_CUP, wet))


def membrane(dry, wet, origin=None):
    """A membrane from its dry-cup and wet-cup permeance.

    Parameters
    ----------
    dry, wet : float
        [kg/(s m2 Pa)], above 0 to 6e-7; the wet one at least as large.
    origin : Origin, optional

    Returns
    -------
    FixedMembrane or VariableMembrane
        A fixed one when the two values agree.

    Raises
    ------
    OutOfRange
        Out of range, or the wet cup below the dry one.

    Examples
    --------
    >>> round(membrane(5e-11, 5e-10).permeance(0.5, 0.5) * 1e10, 3)
    1.581
    """
    dry, wet = _checked(dry, wet, HIGHEST, "kg/(s m² Pa)")
    if wet == dry:
        return FixedMembrane(dry, origin)
    return VariableMembrane((DRY_CUP, WET_CUP), (dry, wet), origin)


def reading(film, rh_inside_face, rh_outside_face):
    """How a membrane is read, in words.

    Parameters
    ----------
    film : FixedMembrane, VariableMembrane or LaminateMembrane
    rh_inside_face, rh_outside_face : float
        Relative humidity of the two faces [-], 0 to 1.

    Returns
    -------
    str
        One sentence, permeance in perm.

    Raises
    ------
    OutOfRange
        For a humidity out of range.

    Examples
    --------
    >>> reading(FixedMembrane(5.721349e-11), 0.4, 0.2)
    'The faces are at 40 % and 20 %, a mean of 30 %: the membrane reads 1 perm.'
    """
    level = from_si(film.permeance(rh_inside_face, rh_outside_face), "perm")
    mean = 0.5 * (rh_inside_face + rh_outside_face)
    return (
        f"The faces are at {rh_inside_face * 100:.3g} % and {rh_outside_face * 100:.3g} %, "
        f"a mean of {mean * 100:.3g} %: the membrane reads {level:.3g} perm."
    )
