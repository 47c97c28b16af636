"""Twelve months: what gathers in winter, what leaves in summer, what is left.

The balance of ISO 13788: each month is one steady state; water gathers where
the vapor line touches saturation, and a plane that holds water stays at
saturation until it has given it back.  It starts, dry, with the first month
that wets: of several, with the one before which least is held.  Left out:
storage in the materials, air leaks, liquid flow, sun.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from dryward import air
from dryward.building import Assembly
from dryward.checks import Floats, Ints, NotConverged, seal
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, message
from dryward.physics.nodes import Nodes, Saturation, Side, face, nodes_of
from dryward.physics.steady import LEAST_RATE, settled
from dryward.units import DAY, show
from dryward.verdict import Verdict, of_months
from dryward.weather import DAYS, Air, MonthlyClimate
from dryward.weather.indoor import Room


@dataclass(frozen=True)
class Plane:
    """A plane that is wet in some month."""

    depth: float  # from the room-side face
    inner_layer: str  # what it lies between
    outer_layer: str
    node: int = 0  # its place in the states of the months


@dataclass(frozen=True)
class Months(Exhibit):
    """A year of wetting and drying, month by month in the order counted.

    Attributes
    ----------
    month : tuple of int (12)
        1 to 12, starting with the first month that wets.
    planes : tuple of Plane
    condensed, evaporated : ndarray (12, planes) [kg/m2]
        Both 0 or more.
    held : ndarray (12, planes) [kg/m2]
        At the end of each month.
    dried_within : ndarray of bool (12, planes)
        Planes that lost their last water before the month's end.
    peak : float [kg/m2]
        The most held at all planes together.
    peak_month : int or None
    dries_out : bool
        Whether nothing is held at the year's end.
    growth : float [kg/m2]
        Held at the end of a second year, minus the first.
    assembly : Assembly
    temperature, relative_humidity : ndarray (12, nodes) [degC] and [-]
        The steady state with which each month begins, from room air to
        outdoor air, what is held by then with it.
    place : ndarray of int (pieces)
        Layer of each piece; -1 and -2 the films.
    names : tuple of str
        Of the layers.
    """

    month: tuple[int, ...]
    planes: tuple[Plane, ...]
    condensed: Floats
    evaporated: Floats
    held: Floats
    dried_within: NDArray[np.bool_]
    peak: float
    peak_month: int | None
    dries_out: bool
    growth: float
    assembly: Assembly = field(repr=False)
    temperature: Floats = field(repr=False)
    relative_humidity: Floats = field(repr=False)
    place: Ints = field(repr=False)
    names: tuple[str, ...] = field(repr=False)

    def __post_init__(self) -> None:
        seal(self)

    def __repr__(self) -> str:
        facts = {
            "name": called(self.assembly.name),
            "state": called(self.verdict.state),
            "ending": called(self.ending),
            "most": show(self.peak, "area density", "us"),
            "wetted": bool(self.planes),
        }
        return one_line("Months", message("physics.months-line", **facts))

    @cached_property
    def verdict(self) -> Verdict:
        """What it means: dry, damp or wet, see `verdict.of_months`."""
        return of_months(self)

    def face(self, layer: str, side: Side) -> int:
        """Node at the inside face (0 or "inner") or the outside face (1 or "outer") of a layer."""
        return face(self.place, layer, side, self.names)

    @property
    def left(self) -> float:
        """Held at all planes at the end of the first year [kg/m2]."""
        return float(self.held[-1].sum()) if self.planes else 0.0

    @property
    def ending(self) -> str:
        """How the year ends: one of "no wetting", "dries", "holds" and "grows"."""
        if not self.planes:
            return "no wetting"
        if self.dries_out:
            return "dries"
        return "grows" if self.growth > 1e-3 * self.left else "holds"


def balance(assembly: Assembly, climate: MonthlyClimate, indoor: Room, saturation: Saturation | None = None) -> Months:
    """Wetting and drying over twelve months.

    Parameters
    ----------
    assembly : Assembly
    climate : MonthlyClimate
    indoor : Air or an indoor rule
        The same room air all year, or one of `weather.indoor`.
    saturation : callable, optional
        As in `steady.profile`.

    Returns
    -------
    Months

    Raises
    ------
    NotConverged
        When a membrane finds no steady permeance in some month.

    Notes
    -----
    Months have 31, 28, 31 ... days.  A month is cut where a plane dries, so
    that what arrives elsewhere is only what left.  A surface that sweats with
    no film of vapor before it gathers without limit in the steady state: it
    is left out here, and `steady.profile` names it.

    References
    ----------
    ISO 13788:2012, clause 6 (read in secondary sources).

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air, MonthlyClimate
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016)])
    >>> balance(wall, MonthlyClimate([15.0] * 12, [0.7] * 12), Air(20, 0.4)).ending
    'no wetting'
    """
    months = _Year(assembly, climate, indoor, saturation or air.saturation_vapor_pressure, saturation is not None)
    order = months.order()
    if order is None:
        nothing = np.zeros((12, 0))
        return Months(
            tuple(range(1, 13)), (), nothing, nothing, nothing, nothing.astype(bool), 0.0, None, True, 0.0,
            *months.begins(range(12), [{}] * 12),
        )  # fmt: skip
    first = months.run(order, {})
    growth = 0.0
    if sum(first[-1].held.values()) > 0:
        second = months.run(order, first[-1].held)
        growth = sum(second[-1].held.values()) - sum(first[-1].held.values())
    held: list[dict[int, float]] = [{}, *(month.held for month in first[:-1])]
    return _months(months.nodes, order, first, growth, months.begins(order, held))


#: Assembly; temperature and relative humidity at its nodes (12, nodes); place and names of its layers.
_Beginnings = tuple[Assembly, Floats, Floats, Ints, tuple[str, ...]]
#: Cuts of a month; each ends with a plane that dried.
_CUTS = 400


@dataclass
class _Month:
    """What happened at each wet node in one month [kg/m2]."""

    condensed: dict[int, float]
    evaporated: dict[int, float]
    held: dict[int, float]
    dried: set[int]


class _Year:
    """The twelve steady states of one assembly; `worked_otherwise`: by a saturation formula of the caller's."""

    def __init__(
        self, assembly: Assembly, climate: MonthlyClimate, indoor: Room, saturation: Saturation, worked_otherwise: bool
    ) -> None:
        self.assembly, self.nodes = assembly, nodes_of(assembly)
        outdoors = np.asarray(climate.temperature, dtype=float)
        if isinstance(indoor, Air):
            indoors = np.full(12, float(indoor.temperature))
            start = saturation(indoors) * indoor.relative_humidity
        else:
            indoors, start = indoor.at(climate)
        resistance_to = np.concatenate(((0.0,), np.cumsum(self.nodes.heat)))
        temperature = indoors[:, None] - np.outer(indoors - outdoors, resistance_to / (resistance_to[-1] or 1.0))
        self.temperature, self.saturated = temperature, saturation(temperature)
        self.start = np.asarray(start, dtype=float)
        self.end = self.saturated[:, -1] * climate.relative_humidity if worked_otherwise else climate.vapor_pressure

    def rates(self, month: int, held: Mapping[int, float]) -> dict[int, float]:
        """Rate at each wet node [kg/(s m2)], negative where held water leaves."""
        wet = sorted(held)
        _, (z, p, vertices) = settled(
            self.nodes, self.saturated[month].tolist(), float(self.start[month]), float(self.end[month]), wet
        )
        found: dict[int, float] = {}
        for a, k, b in zip(vertices, vertices[1:], vertices[2:], strict=False):
            if z[k] > z[a] and z[b] > z[k]:
                rate = (p[a] - p[k]) / (z[k] - z[a]) - (p[k] - p[b]) / (z[b] - z[k])
                if rate > LEAST_RATE or k in held:
                    found[k] = rate
        return found

    def begins(self, order: Sequence[int], held: Sequence[Mapping[int, float]]) -> _Beginnings:
        """What `Months` says of the state that each month begins with, by what is held then."""
        lines = [
            settled(
                self.nodes,
                self.saturated[month].tolist(),
                float(self.start[month]),
                float(self.end[month]),
                sorted(there),
            )[1][1]
            for month, there in zip(order, held, strict=True)
        ]
        rows = list(order)
        nodes = self.nodes
        return self.assembly, self.temperature[rows], np.array(lines) / self.saturated[rows], nodes.place, nodes.names

    def order(self) -> tuple[int, ...] | None:
        """Months from the first that wets after a dry one; None when none wets."""
        wets = [any(rate > 0 for rate in self.rates(month, {}).values()) for month in range(12)]
        if not any(wets):
            return None
        if all(wets):  # no dry start to be had: begin after the month with the least drive
            first = (int(np.argmin(self.start - self.end)) + 1) % 12
        else:
            first = self._driest_start([m for m in range(12) if wets[m] and not wets[m - 1]])
        return _year_from(first)

    def _driest_start(self, starts: list[int]) -> int:
        """Of the months that wet after one that does not, that with the least held before it.

        A mild month in the middle of a winter wets nothing, but what gathered
        before it is still there.
        """
        if len(starts) == 1:
            return starts[0]
        order = _year_from(starts[0])
        before = self.run(order, self.run(order, {})[-1].held)
        held = {month: sum(now.held.values()) for month, now in zip(order, before, strict=True)}
        return min(starts, key=lambda month: held[(month - 1) % 12])

    def run(self, order: Sequence[int], held: Mapping[int, float]) -> list[_Month]:
        """One year from what is held at its start: node -> kg/m2."""
        year: list[_Month] = []
        for month in order:
            now = _Month({}, {}, dict(held), set())
            self._pass(month, now)
            held = now.held
            year.append(now)
        return year

    def _pass(self, month: int, now: _Month) -> None:
        """One month, cut where a plane gives its last water.

        Without the cut, what a plane no longer has would still arrive at the
        next one, and a wet zone would make water from nothing.
        """
        left = float(DAYS[month]) * DAY
        for _ in range(_CUTS):
            rates = self.rates(month, now.held)
            lasts = {k: now.held[k] / -rate for k, rate in rates.items() if rate < 0}
            span = min([left, *lasts.values()])
            for node, rate in rates.items():
                change = rate * span
                side = now.condensed if change > 0 else now.evaporated
                side[node] = side.get(node, 0.0) + abs(change)
                now.held[node] = now.held.get(node, 0.0) + change
            for node in [k for k, last in lasts.items() if last <= span * (1 + 1e-12)]:
                now.dried.add(node)
                del now.held[node]
            left -= span
            if left <= 0:
                return
        names = self.nodes.beside(min(now.dried))
        raise NotConverged(message("physics.months-do-not-settle", month=str(month + 1), layer=called(names[0])))


def _year_from(first: int) -> tuple[int, ...]:
    """The twelve months, 0 to 11, in the order that begins with one of them."""
    return tuple((first + k) % 12 for k in range(12))


def _months(nodes: Nodes, order: Sequence[int], year: list[_Month], growth: float, begins: _Beginnings) -> Months:
    wet = sorted({node for month in year for node in (*month.condensed, *month.evaporated)})

    def table(what: str) -> Floats:
        return np.array([[getattr(month, what).get(node, 0.0) for node in wet] for month in year])

    held = table("held")
    total = held.sum(axis=1)
    top = int(np.argmax(total))
    return Months(
        month=tuple(month + 1 for month in order),
        planes=tuple(Plane(float(nodes.depth[node]), *nodes.beside(node), node) for node in wet),
        condensed=table("condensed"),
        evaporated=table("evaporated"),
        held=held,
        dried_within=np.array([[node in month.dried for node in wet] for month in year]),
        peak=float(total[top]),
        peak_month=order[top] + 1,
        dries_out=bool(total[-1] <= 0),
        growth=float(growth),
        assembly=begins[0],
        temperature=begins[1],
        relative_humidity=begins[2],
        place=begins[3],
        names=begins[4],
    )
