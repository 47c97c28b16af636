"""What counts as dry, damp and wet, and what was found: limits with their sources, and facts held against them.

There is one meaning of these words in the kit.  ``wet``: a damage limit is
passed, or water grows from year to year.  ``damp``: a caution limit is
passed.  ``dry``: neither.  A fourth word, ``not known yet``, stands where
nothing was worked out.  The limit of a surface that can mold hangs on what it
is made of and on how warm it is.  Words are made from the facts at the last
moment (`words`).
"""

import csv
import math
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import cache
from importlib import resources
from operator import attrgetter
from typing import Any, Self, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward.building import Material
from dryward.checks import BadFile, Floats, OutOfRange, UnknownName, within
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, message, slug
from dryward.units import written

DRY, DAMP, WET, UNKNOWN = "dry", "damp", "wet", "not known yet"
#: From the best to the worst.
STATES = (DRY, DAMP, WET)
#: Share of a limit within which a value stands at it [-]: more than sums lose, less than anything that is measured.
_SAME = 1e-9


@dataclass(frozen=True)
class Criterion:
    """One limit that is judged by: a row of the table.

    Attributes
    ----------
    id : str
    what : str
        The quantity, in words.
    unit : str
        Of the limits; empty for a plain share.
    caution, damage : float
        From the first on a value is damp, from the second on wet.
    source, where, how_read, note : str
    """

    id: str
    what: str
    unit: str
    caution: float
    damage: float
    source: str
    where: str
    how_read: str
    note: str = ""

    @overload
    def state(self, value: float) -> str: ...
    @overload
    def state(self, value: NDArray[Any] | list[float]) -> NDArray[np.object_]: ...
    def state(self, value: float | NDArray[Any] | list[float]) -> str | NDArray[np.object_]:
        """Dry, damp or wet."""
        found = np.asarray(STATES, dtype=object)[self.rank(value)]
        return found if np.ndim(value) else str(found)

    def rank(self, value: ArrayLike) -> NDArray[np.int_]:
        """The same as a number: 0 dry, 1 damp, 2 wet."""
        return self.over(value).astype(int) + _reached(value, self.damage)

    def over(self, value: ArrayLike) -> NDArray[np.bool_]:
        """Whether it is at or above the caution limit."""
        return _reached(value, self.caution)

    def reach(self, value: float) -> float:
        """How far a value is on the way to damage [-]; what has no damage limit goes by caution."""
        return float(value) / (self.damage if math.isfinite(self.damage) else 2.0 * self.caution)


def _reached(value: ArrayLike, limit: float) -> NDArray[np.bool_]:
    """Whether values are at or above a limit.

    What stands at it stays there, whatever the last bits of a sum are: a face
    that drips holds for weeks just the amount that it is judged by.
    """
    return np.asarray(np.asarray(value, dtype=float) >= (limit if math.isinf(limit) else limit * (1.0 - _SAME)))


def criterion(id: str) -> Criterion:
    """The limit of that id, a row of the table."""
    rows = criteria()
    if id not in rows:
        raise UnknownName("criterion", id, rows)
    return rows[id]


@cache
def criteria() -> dict[str, Criterion]:
    """All limits by their ids; a row without its source is refused."""
    text = resources.files("dryward.verdict").joinpath("data/criteria.csv").read_text(encoding="utf-8")
    found: dict[str, Criterion] = {}
    for row in csv.DictReader(text.splitlines()):
        if not all(row[key] for key in ("id", "what", "source", "where", "how_read")):
            raise BadFile(message("verdict.criterion-without-source", id=row["id"] or "?"))
        try:
            limits = float(row["caution"]), float(row["damage"])
        except ValueError:
            raise BadFile(message("verdict.criterion-no-number", id=row["id"])) from None
        origin = row["source"], row["where"], row["how_read"], row["note"]
        found[row["id"]] = Criterion(row["id"], row["what"], row["unit"], *limits, *origin)
    return found


#: What the fibers of wood can bind; more is water or frost in its pores [mass %].  About 30: USDA Forest Products
#: Laboratory, Wood Handbook, from memory.
FIBERS = 30.0
#: Wood above this is told as soaked, with the water in its pores; the gauge of a film ends here [mass %].
SOAKED = 45.0
#: How a water that gathered leaves: within the judged year, later, or not.
WITHIN, LATER, NEVER = "within the year", "later", "not"


@dataclass(frozen=True)
class Place:
    """Where something was found."""

    layer: str = ""  # its name; empty for the whole assembly
    side: str = ""  # "inner" or "outer" for a face of it; empty for all of the layer
    beside: str = ""  # what lies behind that face: a layer, "room air" or "outdoor air"


@dataclass(frozen=True)
class Finding:
    """One quantity at one place against one limit.

    Attributes
    ----------
    what : str
        Id of the limit.
    place : Place
    value : float
        At its worst, in the unit of the limit.
    criterion : Criterion
    state : str
    lasted : float or None
        Hours at or above the caution limit in the judged year, or months of
        twelve; None where there is no time.
    when : int or None
        Hour of the judged year at its worst (0 to 8759), or month (1 to 12).
    frost : bool
        Whether that water is frozen at its worst.
    full : bool
        Whether the material holds all it can.
    ran_off : float
        Of a water: what ran off in the judged year [kg/m2].
    if_it_lasted : bool
        Of a month: what it would bring if it lasted, not what the year held.
    unbound : float
        Of wood at its worst: the water or frost in its pores, beyond what its
        fibers bind [kg/m2].
    """

    what: str
    place: Place
    value: float
    criterion: Criterion = field(repr=False)
    state: str
    lasted: float | None = None
    when: int | None = None
    frost: bool = False
    full: bool = False
    ran_off: float = 0.0
    if_it_lasted: bool = False
    unbound: float = 0.0

    @property
    def soaked(self) -> bool:
        """Whether it is wood above what a moisture content still tells of: its water is then told."""
        return self.unbound > 0.0 and self.value > SOAKED

    @property
    def quantity(self) -> str:
        """The quantity in words."""
        return self.criterion.what

    @property
    def rank(self) -> tuple[int, bool, bool, float]:
        """What makes it the worst of several: its state; what is there before what might be; how near the limit."""
        there = self.state == DRY or not self.if_it_lasted
        return STATES.index(self.state), self.what != "face-humidity", there, self.criterion.reach(self.value)


@dataclass(frozen=True)
class Decides:
    """The uncertain input that moves the answer most."""

    layer: str  # empty for the leak
    what: str  # as in `physics.spread.Uncertain`
    low: float  # the worst quantity at the low end of its range, in the unit of its limit
    high: float
    states: tuple[str, ...]  # at both ends


@dataclass(frozen=True)
class Verdict(Exhibit):
    """The one answer: how wet at worst, how long, and whether it dries.

    Attributes
    ----------
    method : {"year", "months", "steady", "face", "winter", "night", "vent", "window"}
    state : {"dry", "damp", "wet", "not known yet"}
    findings : tuple of Finding
        The worst first.
    dries : str or None
        "within the year", "later" or "not"; None where the method cannot say.
    toward : str or None
        "inward", "outward" or "both ways": where the water of the drying season goes.
    decides : Decides or None
        Where the ranges of the inputs were worked out.
    left_out : tuple of str
        What was not counted: "rain", "framing", "leak", "storage", "sun".
    years : int
        That were run; the last is judged.
    repeats : bool
        Whether the last year ended as it began.
    start : float or None
        Relative humidity of all layers at the start [-], where it was one.
    """

    method: str
    state: str
    findings: tuple[Finding, ...]
    dries: str | None = None
    toward: str | None = None
    decides: Decides | None = None
    left_out: tuple[str, ...] = ()
    years: int = 0
    repeats: bool = False
    start: float | None = None

    def __repr__(self) -> str:
        told = message("verdict.line", state=called(self.state), method=self.method)
        if self.worst:
            layer, sign = called(self.worst.place.layer), self.worst.criterion.unit
            unit = message("verdict.line-unit", unit=slug(sign), sign=sign)
            facts = {"quantity": message(f"verdict.limit-{self.worst.what}"), "of": bool(layer), "layer": layer}
            worst = message("verdict.line-worst", **facts, value=written(self.worst.value, ".3g"), unit=unit)
            told = message("verdict.line-after-line", first=told, next=worst.strip())
        if self.dries:
            dries = message("verdict.line-dries", dries=slug(self.dries))
            told = message("verdict.line-after-line", first=told, next=dries)
        return one_line("Verdict", told)

    @property
    def worst(self) -> Finding | None:
        """The finding that the state hangs on, or comes nearest to a limit; None for no finding at all."""
        return self.findings[0] if self.findings else None

    @property
    def lasted(self) -> float | None:
        """How long the worst was at or above its caution limit, as in `Finding`."""
        return self.worst.lasted if self.worst else None

    def finding(self, what: str) -> Finding | None:
        """The worst finding against the limit of that id, or None."""
        return next((each for each in self.findings if each.what == what), None)

    def deciding(self, decides: Decides | None) -> Self:
        """The same with what decides."""
        return replace(self, decides=decides)


def given(what: str, value: object, *attributes: str) -> None:
    """Refuse what is no such result, of hours, months or a profile; this room knows it by what can be read off it."""
    if not all(hasattr(value, each) for each in attributes):
        raise OutOfRange(message("verdict.not-given", what=what, value=repr(str(value)[:40])))


def verdict(method: str, findings: Iterable[Finding], **more: Any) -> Verdict:
    """A verdict from its findings: the state is that of the worst; more: other attributes of `Verdict`."""
    ranked = sorted(findings, key=attrgetter("rank"), reverse=True)
    return Verdict(method, ranked[0].state if ranked else DRY, tuple(ranked), **more)


def unknown(method: str, **more: Any) -> Verdict:
    """A verdict of something that was not worked out."""
    return Verdict(method, UNKNOWN, (), **more)


@dataclass(frozen=True)
class Sensitivity:
    """How fast and how far mold grows on a kind of surface."""

    name: str
    speed: float  # growth below an index of 1, in parts of that of pine [-]
    visible_speed: float | None  # the same from an index of 1 on; None: from the times of the wood
    a: float  # the highest index is a + b x - c x^2 [-]
    b: float
    c: float
    lowest_humidity: float  # below it nothing grows [-]
    decline: float = 1.0  # in parts of that of pine [-]
    species: str = "pine"  # whose times to start and to sight are taken: pine or spruce
    kiln_dried: bool = False  # whether the surface is as it left the kiln

    def __post_init__(self) -> None:
        within("Growth speed", self.speed, 0.0, 10.0)
        if self.visible_speed is not None:
            within("Growth speed when visible", self.visible_speed, 0.0, 10.0)
        for each in (self.a, self.b, self.c):
            within("Term of the highest index", each, -10.0, 10.0)
        within("Lowest humidity of the class", self.lowest_humidity, 0.5, 1.0, "%")
        within("Share of the decline", self.decline, 0.0, 1.0)


#: The classes by name.  a, b, c: read in the source of an open-source climate
#: package; lowest humidity: in Austrian course notes; speeds: from memory.
#: The decline of every class is that of pine, the quickest: see `Sensitivity`
#: for another share (0.5, 0.25 and 0.1 are in use, from memory).
SENSITIVITIES = {
    each.name: each
    for each in (
        Sensitivity("very sensitive", 1.0, 2.0, 1.0, 7.0, 2.0, 0.80),
        Sensitivity("sensitive", 0.578, 0.386, 0.3, 6.0, 1.0, 0.80),
        Sensitivity("medium resistant", 0.072, 0.097, 0.0, 5.0, 1.5, 0.85),
        Sensitivity("resistant", 0.033, 0.014, 0.0, 3.0, 1.0, 0.85),
        # The model of 1999: sapwood, with the speed above 1 from its own two times.
        Sensitivity("pine", 1.0, None, 1.0, 7.0, 2.0, 0.80),
        Sensitivity("spruce", 1.0, None, 1.0, 7.0, 2.0, 0.80, species="spruce"),
    )
}


def sensitivity(name: str) -> Sensitivity:
    """The class of that name, a key of `SENSITIVITIES`."""
    if name not in SENSITIVITIES:
        raise UnknownName("sensitivity class", name, SENSITIVITIES)
    return SENSITIVITIES[name]


#: Mold grows between these temperatures [degC]; Hukka and Viitanen 1999.
COLDEST_GROWTH, WARMEST_GROWTH = 0.0, 50.0
#: The critical humidity is a cubic up to here [degC], then the lowest of the class.
_LEVEL_FROM = 20.0


@overload
def critical_humidity(temperature: float, lowest: float = 0.8) -> float: ...
@overload
def critical_humidity(temperature: Floats, lowest: float = 0.8) -> Floats: ...
def critical_humidity(temperature: float | Floats, lowest: float = 0.8) -> float | Floats:
    """Relative humidity below which mold does not grow.

    Hukka and Viitanen 1999, with the lowest humidity of Ojanen et al. 2010,
    as quoted in Austrian course notes.
    """
    t = within("Surface temperature", temperature, -60.0, 95.0, "degC")
    floor = within("Lowest humidity of the class", lowest, 0.0, 1.0, "%")
    cubic = ((-0.00267 * t + 0.160) * t - 3.13) * t + 100.0
    if isinstance(cubic, float):  # a slider asks for many, one by one
        return floor if t > _LEVEL_FROM else max(cubic / 100.0, floor)
    found = np.where(t > _LEVEL_FROM, floor, np.maximum(cubic / 100.0, floor))
    return float(found) if np.ndim(found) == 0 else found


@overload
def mold_limit(temperature: float, kind: str) -> float: ...
@overload
def mold_limit(temperature: Floats, kind: str) -> Floats: ...
def mold_limit(temperature: float | Floats, kind: str) -> float | Floats:
    """Humidity from which on mold grows on a surface of a class; no humidity is too much where it is too cold."""
    level = critical_humidity(temperature, sensitivity(kind).lowest_humidity)
    if isinstance(level, float):
        return math.inf if level > 1.0 else level
    return np.where(level > 1.0, np.inf, level)


#: Class of a surface by the shelf of its material: wood and paper-faced boards grow mold soon, glass and stone wool
#: hardly; from memory of the tables of Ojanen et al. 2010, for kinds of material and not for products.
_CLASSES = {
    "wood and framing": "sensitive",
    "wood panels and sheathing": "sensitive",
    "boards": "medium resistant",
    "fibrous insulation": "medium resistant",
}


def class_of_surface(substance: object) -> str | None:
    """Sensitivity class of what a layer is made of.

    None for what is not judged: foam, stone, metal, coverings, membranes, air.
    """
    if not isinstance(substance, Material):
        return None
    if substance.category in _CLASSES:
        return _CLASSES[substance.category]
    return "sensitive" if substance.wood and not substance.category else None
