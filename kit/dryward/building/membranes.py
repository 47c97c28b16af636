"""Membranes and sheets: layers that count by permeance, not by thickness.

A variable membrane is read at the mean relative humidity of its two faces
and OPENS as that mean rises.  It knows no calendar and no direction; only a
laminate, whose sensitive sheet faces one side, differs by direction.

A label gives one or two permeances.  In the dry cup the air is at 0 % on one
face and 50 % on the other, a mean of 25 %.  In the wet cup it is 50 % and
100 %, a mean of 75 %.  Many products let more vapor through in the wet cup:
that is the same sheet at another mean humidity.  So the two label values are
two points of the curve: between them it is straight on a log scale; outside
them it stays level, because nothing was measured there.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, ClassVar

import numpy as np

from dryward.checks import OutOfRange, rising, within
from dryward.exhibit import one_line
from dryward.language import called, listing, message
from dryward.units import QUANTITIES, checked, from_si, quantity, show, written
from dryward.units.table import Floats, Numeric

#: Permeance a membrane may have [kg/(s m2 Pa)]: nothing at all to 10 000 perm.
HIGHEST = QUANTITIES["permeance"].high


@dataclass(frozen=True)
class Origin:
    """Where the numbers of a library row come from, and what it is called.

    Attributes
    ----------
    id, name : str
        Library id and the words on a drawing.
    source, where, how_read : str
        Document, the place in it, and how it was read.
    category : str
        Category in the library.
    ranges : ((property, low, high), ...)
        How far the true value may lie, SI.
    """

    id: str = ""
    name: str = "membrane"
    source: str = ""
    where: str = ""
    how_read: str = ""
    category: str = ""
    ranges: tuple = ()


def _mean_humidity(inside: Numeric, outside: Numeric) -> Any:
    left = within("Relative humidity", inside, 0.0, 1.0, "%")
    right = within("Relative humidity", outside, 0.0, 1.0, "%")
    return 0.5 * (left + right)


class Membrane:
    """What the three kinds share: an origin, and being thin."""

    origin: Origin

    @property
    def id(self) -> str:
        """Library id, or an empty string."""
        return self.origin.id

    @property
    def name(self) -> str:
        """The words on a drawing."""
        return self.origin.name

    def permeance(self, rh_inside_face: Numeric, rh_outside_face: Numeric) -> Numeric:
        """Permeance [kg/(s m2 Pa)] at the humidities of its two faces [-]; each kind has its own."""
        raise NotImplementedError

    def flipped(self) -> Membrane:
        """The same membrane with its other face to the room."""
        return self

    def __repr__(self) -> str:
        dry, damp = (show(float(self.permeance(each, each)), "permeance", "us") for each in (0.25, 0.85))
        opens = dry if dry == damp else message("building.opens", dry=dry, damp=damp)
        return one_line(type(self).__name__, listing([*([self.id] if self.id else []), called(self.name), opens]))


@dataclass(frozen=True, init=False, repr=False)
class FixedMembrane(Membrane):
    """A sheet with one permeance, wet or dry.

    Parameters
    ----------
    permeance : float
        [kg/(s m2 Pa)], 0 to 6e-7.
    origin : Origin, optional

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> FixedMembrane(5.7e-11).permeance(0.3, 0.9)
    5.7e-11
    """

    level: float
    origin: Origin

    def __init__(self, permeance: float | str, origin: Origin | None = None) -> None:
        of = origin.name if origin else ""
        object.__setattr__(self, "level", checked("Permeance", permeance, "permeance", of=of))
        object.__setattr__(self, "origin", origin or Origin())

    def permeance(self, rh_inside_face: Numeric = 0.5, rh_outside_face: Numeric = 0.5) -> Any:
        """Permeance [kg/(s m2 Pa)] at the humidities of its two faces [-]."""
        return self.at_mean(_mean_humidity(rh_inside_face, rh_outside_face))

    def at_mean(self, relative_humidity: Numeric) -> Any:
        """Permeance [kg/(s m2 Pa)] at the mean humidity of the faces [-]."""
        if np.ndim(relative_humidity) == 0:
            return self.level
        return np.full(np.shape(relative_humidity), self.level)


@dataclass(frozen=True, init=False, repr=False)
class VariableMembrane(Membrane):
    """A humidity-variable membrane: it opens as the mean RH of its faces rises.

    Parameters
    ----------
    relative_humidity : sequence of float
        Mean RH of the two faces at each point [-], rising, at least two.
    permeance : sequence of float
        [kg/(s m2 Pa)] at each point, above 0 to 6e-7, nowhere falling;
        straight on a log scale between the points, constant beyond them.
    origin : Origin, optional

    Raises
    ------
    OutOfRange
        For fewer than two points, unequal lengths, a humidity that does not
        rise, or a permeance that falls.

    Examples
    --------
    >>> film = VariableMembrane((0.3, 0.8), (3e-11, 7e-10))
    >>> film.permeance(0.1, 0.3)
    3e-11
    """

    points: tuple[tuple[float, float], ...]
    _rh: ClassVar[Floats]  # of the points, for `at_mean`
    _log: ClassVar[Floats]
    origin: Origin

    def __init__(
        self, relative_humidity: Sequence[float | str], permeance: Sequence[float | str], origin: Origin | None = None
    ) -> None:
        humidity = rising(
            "Relative humidity of the curve", [quantity(rh, "relative humidity") for rh in relative_humidity]
        )
        levels = tuple(float(quantity(p, "permeance")) for p in permeance)
        if len(humidity) < 2 or len(humidity) != len(levels):
            facts = {"humidities": str(len(humidity)), "permeances": str(len(levels))}
            raise OutOfRange(message("building.curve-points", **facts))
        for rh in humidity:
            within("Relative humidity of the curve", rh, 0.0, 1.0, "%")
        for level in levels:
            within("Permeance of the curve", level, 0.0, HIGHEST, "kg/(s m2 Pa)", above=True)
        for (left, right), rh in zip(pairwise(levels), humidity[1:], strict=True):
            if right < left:
                at = written(rh * 100, ".4g", "%")
                drop = {"left": written(left, ".4g"), "right": written(right, ".4g", "kg/(s m2 Pa)")}
                raise OutOfRange(message("building.curve-falls", humidity=at, **drop))
        object.__setattr__(self, "points", tuple(zip(humidity, levels, strict=True)))
        object.__setattr__(self, "origin", origin or Origin(name="variable membrane"))
        rh, levels = np.array(self.points).T
        object.__setattr__(self, "_rh", rh)
        object.__setattr__(self, "_log", np.log(levels))

    def permeance(self, rh_inside_face: Numeric, rh_outside_face: Numeric) -> Any:
        """Permeance [kg/(s m2 Pa)] at the humidities of its two faces [-]."""
        return self.at_mean(_mean_humidity(rh_inside_face, rh_outside_face))

    def at_mean(self, relative_humidity: Numeric) -> Any:
        """Permeance [kg/(s m2 Pa)] at the mean humidity of the faces [-]."""
        if np.ndim(relative_humidity) == 0:
            if relative_humidity <= self._rh[0]:
                return self.points[0][1]
            if relative_humidity >= self._rh[-1]:
                return self.points[-1][1]
            return float(np.exp(np.interp(relative_humidity, self._rh, self._log)))
        return np.exp(np.interp(relative_humidity, self._rh, self._log))


@dataclass(frozen=True, init=False, repr=False)
class LaminateMembrane(Membrane):
    """Two sheets bonded: a sensitive one that faces the room, and a backing.

    Parameters
    ----------
    sensitive : VariableMembrane
        The sheet whose permeance follows its own two faces.
    backing : float or FixedMembrane
        Permeance of the other sheet [kg/(s m2 Pa)], above 0.
    turned : bool, optional
        Whether the backing faces the room instead.
    origin : Origin, optional

    Raises
    ------
    OutOfRange
        When `sensitive` is no variable membrane or the backing is out of range.

    Notes
    -----
    The plane between the sheets takes the humidity at which as much vapor
    arrives as leaves; both faces at one temperature.

    Examples
    --------
    >>> film = LaminateMembrane(VariableMembrane((0.3, 0.8), (3e-11, 1e-9)), 1e-10)
    >>> film.permeance(0.75, 0.25) > film.flipped().permeance(0.75, 0.25)
    True
    """

    sensitive: VariableMembrane
    backing: FixedMembrane
    turned: bool
    origin: Origin

    def __init__(
        self,
        sensitive: VariableMembrane,
        backing: float | str | FixedMembrane,
        turned: bool = False,
        origin: Origin | None = None,
    ) -> None:
        if not isinstance(sensitive, VariableMembrane):
            raise OutOfRange(message("building.sensitive-sheet"))
        if not isinstance(backing, FixedMembrane):
            backing = FixedMembrane(backing, Origin(name="backing"))
        within("Permeance of the backing", backing.level, 0.0, HIGHEST, "kg/(s m2 Pa)", above=True)
        put = object.__setattr__
        put(self, "sensitive", sensitive)
        put(self, "backing", backing)
        put(self, "turned", bool(turned))
        put(self, "origin", origin or Origin(name="laminate membrane"))

    def sheets(self) -> tuple[FixedMembrane | VariableMembrane, FixedMembrane | VariableMembrane]:
        """The two sheets from inside to outside."""
        return (self.backing, self.sensitive) if self.turned else (self.sensitive, self.backing)

    def flipped(self) -> LaminateMembrane:
        """The same laminate with its other face to the room."""
        return LaminateMembrane(self.sensitive, self.backing, not self.turned, self.origin)

    def permeance(self, rh_inside_face: Numeric, rh_outside_face: Numeric) -> Any:
        """Permeance [kg/(s m2 Pa)] at the humidities of its two faces [-]."""
        _mean_humidity(rh_inside_face, rh_outside_face)
        inside, outside = np.broadcast_arrays(
            np.asarray(rh_inside_face, dtype=float), np.asarray(rh_outside_face, dtype=float)
        )
        near, far = (outside, inside) if self.turned else (inside, outside)  # of the sensitive sheet
        low, high = np.minimum(near, far), np.maximum(near, far)
        # What arrives minus what leaves falls as the middle rises, so the
        # root stays bracketed; 50 halvings reach the last bit.
        for _ in range(50):
            middle = 0.5 * (low + high)
            arrives = self.sensitive.at_mean(0.5 * (near + middle)) * (near - middle)
            leaves = self.backing.level * (middle - far)
            more = arrives > leaves
            low, high = np.where(more, middle, low), np.where(more, high, middle)
        sheet = self.sensitive.at_mean(0.5 * (near + 0.5 * (low + high)))
        both = 1.0 / (1.0 / sheet + 1.0 / self.backing.level)
        return float(both) if inside.ndim == 0 else both


#: Mean humidity of the two faces in each test [-].
#: ASTM E96 desiccant method (0 and 50 %) and water method (100 and 50 %).
DRY_CUP, WET_CUP = 0.25, 0.75
#: Points that draw the log-straight part of a material curve.
_BETWEEN = 5


def _checked(dry: float, wet: float, highest: float, unit: str) -> tuple[float, float]:
    dry = within("Dry-cup value", dry, 0.0, highest, unit, above=True)
    wet = within("Wet-cup value", wet, 0.0, highest, unit, above=True)
    if wet < dry:
        values = {"wet": written(wet, ".4g", unit), "dry": written(dry, ".4g", unit)}
        raise OutOfRange(message("building.wet-cup-below", **values))
    return dry, wet


def cup_curve(dry: float, wet: float) -> float | tuple[tuple[float, float], ...]:
    """Vapor permeability of a material against humidity, from its two cup values.

    Notes
    -----
    Assumes that the value belongs to the mean humidity of the test, 25 % and
    75 %.
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


def cup_membrane(dry: float, wet: float, origin: Origin | None = None) -> FixedMembrane | VariableMembrane:
    """A membrane from its dry-cup and wet-cup permeance."""
    dry, wet = _checked(dry, wet, HIGHEST, "kg/(s m2 Pa)")
    if wet == dry:
        return FixedMembrane(dry, origin)
    return VariableMembrane((DRY_CUP, WET_CUP), (dry, wet), origin)


def membrane_reading(film: Membrane, rh_inside_face: Numeric, rh_outside_face: Numeric) -> str:
    """How a membrane is read, in words."""
    level = from_si(film.permeance(rh_inside_face, rh_outside_face), "perm")
    mean = 0.5 * (rh_inside_face + rh_outside_face)
    inside, outside, middle = (written(each * 100, ".3g", "%") for each in (rh_inside_face, rh_outside_face, mean))
    reads = written(level, ".3g", "perm")
    return message("building.membrane-reading", inside=inside, outside=outside, mean=middle, reads=reads)
