"""What a layer is made of: materials and air spaces, which have a thickness, and membranes, which count by permeance.

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
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any, ClassVar, Self, TypeAlias

import numpy as np

from dryward import units
from dryward.checks import Floats, Numeric, OutOfRange, rising, subject, within
from dryward.exhibit import one_line
from dryward.language import called, listing, message
from dryward.units import QUANTITIES, checked, quantity, show, written

#: Least and largest conductivity [W/(m K)], and the largest vapor permeability [kg/(s m Pa)], of any material.
CONDUCTS = (QUANTITIES["conductivity"].low, QUANTITIES["conductivity"].high)
PASSES = QUANTITIES["permeability"].high


#: Points of a curve, and a property that is one number or such a curve.
Points: TypeAlias = tuple[tuple[float, float], ...]
Curve: TypeAlias = float | Points


def _curve(what: str, of: str, points: object, name: str, first: str) -> Curve:
    """A property given as one number or text, or as points ((x, value), ...)."""
    if isinstance(points, (int, float, str)):
        return checked(what, points, name, of=of)
    rows: Any = tuple(tuple(float(v) for v in row) for row in points)  # type: ignore[attr-defined] # refused where it fails
    facts = {"what": subject(what, of), "first": called(first)}
    if len(rows) < 2 or any(len(row) != 2 for row in rows):
        raise OutOfRange(message("building.one-number-or-points", **facts))
    rising(message("building.along", **facts), [x for x, _ in rows])
    for _, value in rows:
        checked(what, value, name, of=of)
    return rows


def _at(curve: Curve, x: Numeric) -> Any:
    if isinstance(curve, float):
        return curve if np.ndim(x) == 0 else np.full(np.shape(x), curve)
    xs, values = zip(*curve, strict=True)
    found = np.interp(x, xs, values)
    return float(found) if np.ndim(x) == 0 else found


@dataclass(frozen=True, kw_only=True)
class Sourced:
    """What a row of the library says of where its numbers come from; given by name."""

    #: Document, the place in it, and how it was read.
    source: str = ""
    where: str = ""
    how_read: str = ""
    #: Category in the library.
    category: str = ""
    #: How far the true value may lie: (property, low, high), SI.
    ranges: tuple[tuple[str, float, float], ...] = ()


@dataclass(frozen=True)
class Material(Sourced):
    """One homogeneous material.

    Parameters
    ----------
    id : str
        Lower-case words with hyphens.
    name : str
        As it stands on a drawing.
    density : float
        Dry bulk density [kg/m3], above 0 to 25 000.
    specific_heat : float
        Of the dry material [J/(kg K)], 100 to 10 000.
    conductivity : float or ((water content [kg/m3], value), ...)
        Thermal conductivity [W/(m K)], 0.001 to 500, straight between points.
    vapor_permeability : float or ((relative humidity [-], value), ...)
        [kg/(s m Pa)], 0 to 1e-9, straight between points, constant beyond.
    sorption : ((relative humidity [-], water content [kg/m3]), ...)
        Rising in both; empty for a material that stores no vapor.  A last
        point at 1.0 is the free saturation.
    liquid_conductivity : None or ((water content, K), ...)
        K in s: liquid flux = K x gradient of capillary suction.
    wood : bool
        Whether a moisture content in mass % is meant for it.
    source, where, how_read : str
        Where the numbers stand, the place there, and how they were read.
    category : str
        Category in the library.
    ranges : ((property, low, high), ...)
        How far the true value may lie, for `physics.spread`.

    Raises
    ------
    OutOfRange
        One sentence naming the property, the value and the range.

    Examples
    --------
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> board.conductivity_at(0.0)
    0.16
    """

    id: str
    name: str
    density: float
    specific_heat: float
    conductivity: Curve
    vapor_permeability: Curve
    sorption: Points = ()
    liquid_conductivity: Points | None = None
    wood: bool = False

    def __post_init__(self) -> None:
        put = object.__setattr__
        name = self.name or self.id
        put(self, "density", checked("Density", self.density, "density", of=name))
        put(self, "specific_heat", checked("Specific heat", self.specific_heat, "specific heat", of=name))
        put(
            self,
            "conductivity",
            _curve("Conductivity", name, self.conductivity, "conductivity", "water content"),
        )
        put(
            self,
            "vapor_permeability",
            _curve("Vapor permeability", name, self.vapor_permeability, "permeability", "relative humidity"),
        )
        put(self, "sorption", self._checked_sorption(name))
        if self.liquid_conductivity is not None:
            put(
                self,
                "liquid_conductivity",
                _curve("Liquid conductivity", name, self.liquid_conductivity, "liquid conductivity", "water content"),
            )

    def __repr__(self) -> str:
        facts = {
            "name": called(self.name),
            "density": units.written(self.density, ".4g", "kg/m3"),
            "conducts": show(self.conductivity_at(0.0), "conductivity", "si"),
            "passes": show(self.permeability_at(0.5), "permeability", "us"),
        }
        said = message("building.material-line", **facts)
        return one_line("Material", said if self.id == self.name else f"{self.id}, {said}")

    def _checked_sorption(self, name: str) -> Points:
        points = tuple((float(rh), float(w)) for rh, w in self.sorption)
        what = subject("Sorption", name)
        humidity, water = (
            message("building.along", what=what, first=called(first))
            for first in ("relative humidity", "water content")
        )
        rising(humidity, [rh for rh, _ in points])
        rising(water, [w for _, w in points])
        for rh, w in points:
            within(humidity, rh, 0, 1, "%")
            within(water, w, 0, 1500, "kg/m3")
        return points

    def conductivity_at(self, water_content: Numeric) -> Any:
        """Thermal conductivity [W/(m K)] at a water content [kg/m3]."""
        return _at(self.conductivity, water_content)

    def permeability_at(self, relative_humidity: Numeric) -> Any:
        """Vapor permeability [kg/(s m Pa)] at a relative humidity [-]."""
        return _at(self.vapor_permeability, relative_humidity)

    def water_content(self, relative_humidity: Numeric) -> Any:
        """Water held [kg/m3] in balance with air of a relative humidity [-]."""
        if not self.sorption:
            return _at(0.0, relative_humidity)
        points = self.sorption if self.sorption[0][0] == 0 else ((0.0, 0.0), *self.sorption)
        return _at(points, relative_humidity)


@dataclass(frozen=True)
class AirSpace(Sourced):
    """A layer of air: a service cavity, a still air space, or a vent space.

    Parameters
    ----------
    thermal_resistance : float
        Across a closed space; for a vented one, the film between the layer
        under it and the moving air [m2 K/W], 0 to 5.
    vapor_permeance : float
        Across a closed space [kg/(s m2 Pa)], above 0; inf for no resistance.
    vented : bool
        Whether outdoor air moves through it: the steady and the monthly
        methods then end the assembly here, at outdoor air behind the film
        (ISO 6946, well-ventilated air layer).
    id, name, source, where, how_read, category, ranges
        As in `Material`.

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Examples
    --------
    >>> AirSpace(0.18).thermal_resistance
    0.18
    """

    thermal_resistance: float
    vapor_permeance: float = math.inf
    vented: bool = False
    id: str = ""
    name: str = "air space"
    category: str = field(default="air layers", kw_only=True)

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(
            self,
            "thermal_resistance",
            checked("Thermal resistance", self.thermal_resistance, "thermal resistance", 0, 5, of=self.name),
        )
        put(
            self,
            "vapor_permeance",
            checked("Vapor permeance", self.vapor_permeance, "permeance", 0, math.inf, above=True, of=self.name),
        )

    def __repr__(self) -> str:
        resistance = show(self.thermal_resistance, "thermal resistance", "us")
        vented = [message("building.vented")] if self.vented else []
        return one_line("AirSpace", listing([called(self.name), resistance, *vented]))


#: Permeance a membrane may have [kg/(s m2 Pa)]: nothing at all to 10 000 perm.
HIGHEST = QUANTITIES["permeance"].high


@dataclass(frozen=True)
class Origin(Sourced):
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

    def flipped(self) -> Self:
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

    def flipped(self) -> Self:
        """The same laminate with its other face to the room."""
        return type(self)(self.sensitive, self.backing, not self.turned, self.origin)

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


#: What a layer is made of.
Substance: TypeAlias = Material | FixedMembrane | VariableMembrane | LaminateMembrane | AirSpace
