"""What counts as dry, damp and wet, and what was found: limits with their sources, and facts held against them.

There is one meaning of these words in the kit.  ``wet``: a damage limit is
passed, or water grows from year to year.  ``damp``: a caution limit is
passed.  ``dry``: neither.  A fourth word, ``not known yet``, stands where
nothing was worked out.  Words are made from the facts at the last moment
(`words`).
"""

import csv
import math
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import cache
from importlib import resources
from typing import Any, Self, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, message, slug
from dryward.units import written

DRY, DAMP, WET, UNKNOWN = "dry", "damp", "wet", "not known yet"
#: From the best to the worst.
STATES = (DRY, DAMP, WET)


def worst_state(states: Iterable[str]) -> str:
    """The worst of some states; dry for none."""
    known = [each for each in states if each in STATES]
    return max(known, key=STATES.index, default=DRY)


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
        values = np.asarray(value, dtype=float)
        return (values >= self.caution).astype(int) + (values >= self.damage)

    def reach(self, value: float) -> float:
        """How far a value is on the way to damage [-]; what has no damage limit goes by caution."""
        return float(value) / (self.damage if math.isfinite(self.damage) else 2.0 * self.caution)


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
            layer, unit = called(self.worst.place.layer), called(self.worst.criterion.unit)
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
    ranked = sorted(findings, key=lambda each: each.rank, reverse=True)
    return Verdict(method, ranked[0].state if ranked else DRY, tuple(ranked), **more)


def unknown(method: str, **more: Any) -> Verdict:
    """A verdict of something that was not worked out."""
    return Verdict(method, UNKNOWN, (), **more)
