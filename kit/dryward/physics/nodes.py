"""The nodes of an assembly, the resistances between them, and the vapor line through them.

Every steady method works on the same row: room air, the film, the layers cut
into pieces, the film, outdoor air.  Nodes lie between the pieces.  A vented
air layer ends it at outdoor air behind a film.

The vapor line is a string pulled tight under the saturation pressures: in the
plane of vapor resistance and pressure, the line from the room's vapor
pressure to the outdoor one may nowhere pass above saturation.  The steady
line is the lower convex hull of the two ends and the saturation pressures
(ISO 13788:2012 clause 6): where it touches, vapor becomes water, and the
change of slope is the rate.

The one-case form walks the points once; the form for many cases at once
looks, from each vertex, for the next one by the smallest slope.  They are two
different algorithms and the tests hold them against each other.

A membrane whose permeance depends on humidity has that of the mean RH of its
faces, and that RH depends on its permeance.  For one such layer the answer
lies between two ends and is closed in on (regula falsi, Illinois form), so it
is found for any curve that rises, from any start.  For several, each steps
toward its own answer and halves its step whenever it overshoots.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.checks import Floats, Ints, NotConverged, Numeric, UnknownName
from dryward.language import called, message

#: Temperature [degC] -> saturation pressure [Pa].
Saturation: TypeAlias = Callable[[Floats], Floats]
#: Side of a layer: 0 or "inner" toward the room, 1 or "outer" away from it.
Side: TypeAlias = int | str
#: Thermal resistance a piece may have [m2 K/W]; ISO 13788:2012 clause 6
#: (from memory) cuts layers so that condensation inside one is found.
PIECE = 0.25
#: What a layer of permeance 0 resists [s m2 Pa/kg]: ten million times a
#: sheet of 1 perm, so that sums stay finite.
TIGHT = 1e17
#: Sides of a layer: 0 or "inner" toward the room, 1 or "outer" away from it.
SIDES = {0: 0, 1: 1, "inner": 0, "outer": 1}
#: Mean relative humidity of the two faces -> permeance.
Permeance = Callable[[Numeric], Numeric]


def face(places: Ints, layer: int | str, side: Side, names: Sequence[str] | None = None) -> int:
    """The node at one face of a layer: by its place, or by its name where `names` are given."""
    if side not in SIDES:
        raise UnknownName("side of a layer", side, SIDES)
    if names is not None:
        if layer not in names:
            raise UnknownName("layer", layer, names)
        layer = names.index(layer)
    row = places.tolist()
    # The pieces of a layer lie beside each other.
    return int(row.index(layer) + (row.count(layer) if SIDES[side] else 0))


@dataclass(frozen=True)
class HumidityDependentLayer:
    """A layer whose permeance depends on the humidity of its two faces."""

    first: int  # its first node
    last: int  # and its last
    place: int  # the layer of the assembly it belongs to
    permeance: Permeance


@dataclass(frozen=True)
class Nodes:
    """Pieces from room air to outdoor air, in order."""

    heat: Floats  # thermal resistance of each piece
    vapor: Floats  # vapor resistance; where it depends on humidity, at a mean RH of one half
    place: Ints  # the layer each piece belongs to; -1 the inner film, -2 the outer
    depth: Floats  # distance from the room-side face [m]
    names: tuple[str, ...]  # of the layers
    humidity_dependent: tuple[HumidityDependentLayer, ...]

    def face(self, place: int, side: Side) -> int:
        """The node at the inside (0) or the outside (1) of a layer."""
        return face(self.place, place, side)

    def beside(self, node: int) -> tuple[str, str]:
        """Names of the layers on the inside and the outside of a node."""
        inner = self.place[node - 1] if node > 0 else -1
        outer = self.place[node] if node < len(self.place) else -2
        return self._name(inner), self._name(outer)

    def _name(self, place: int) -> str:
        return {-1: "room air", -2: "outdoor air"}.get(int(place)) or self.names[place]


def _sheets(
    substance: FixedMembrane | VariableMembrane | LaminateMembrane,
) -> tuple[FixedMembrane | VariableMembrane, ...]:
    return substance.sheets() if isinstance(substance, LaminateMembrane) else (substance,)


def _pieces(layer: Layer, least: float) -> list[tuple[float, float, int, Permeance | None]]:
    """(heat, vapor, count, permeance of RH or None) of each part of a layer."""
    substance = layer.substance
    if isinstance(substance, Material):
        heat = layer.thermal_resistance
        count = max(1, math.ceil(max(heat, least) / PIECE - 1e-9))
        permeance = None
        if not isinstance(substance.vapor_permeability, float):
            permeance = partial(
                _through, substance, layer.thickness or 0.0
            )  # no lambda: a roof goes to other processes
        return [(heat, layer.vapor_resistance, count, permeance)]
    if isinstance(substance, AirSpace):
        return [(layer.thermal_resistance, layer.vapor_resistance, 1, None)]
    return [
        (0.0, _resistance(sheet.permeance(0.5, 0.5)), 1, sheet.at_mean if isinstance(sheet, VariableMembrane) else None)
        for sheet in _sheets(substance)
    ]


def _kept_parts(layer: Layer) -> list[tuple[float, float, int, Permeance | None]]:
    """The parts of a layer, which cannot change: they stay on it, and a slider asks for those of the same layers."""
    layer.__dict__["_parts"] = found = _pieces(layer, 0.0)
    return found


def _through(material: Material, thickness: float, relative_humidity: Numeric) -> Numeric:
    """Permeance of so much of a material [kg/(s m2 Pa)]."""
    return material.permeability_at(relative_humidity) / thickness


def _resistance(permeance: float) -> float:
    return 1.0 / permeance if permeance > 0 else TIGHT


def nodes_of(assembly: Assembly, at_least: Mapping[str, float] | None = None) -> Nodes:
    """The nodes of an assembly, worked out once for each assembly.

    `at_least`: thermal resistance by layer name for which the pieces must be
    fine enough, when a sweep will make the layer thicker.
    """
    # A frozen assembly cannot change, and hashing one costs more than its
    # nodes: so they stay on the assembly itself.
    cache = assembly.__dict__
    if not at_least and "_nodes" in cache:
        return cache["_nodes"]
    heat = [assembly.interior_film]
    vapor = [1.0 / assembly.interior_vapor_film]
    place, depth = [-1], [0.0, 0.0]
    dependent: list[HumidityDependentLayer] = []
    for index, layer in enumerate(assembly.inner_layers):
        least = (at_least or {}).get(layer.name, 0.0)
        parts = _pieces(layer, least) if least else layer.__dict__.get("_parts") or _kept_parts(layer)
        for part_heat, part_vapor, count, permeance in parts:
            first = len(heat)
            for piece in range(count):
                heat.append(part_heat / count)
                vapor.append(min(part_vapor, TIGHT) / count)
                place.append(index)
                step = (layer.thickness or 0.0) / len(parts) * (piece + 1) / count
                depth.append(depth[first] + step)
            if permeance is not None:
                dependent.append(HumidityDependentLayer(first, len(heat), index, permeance))
    heat.append(assembly.outer_film)
    vapor.append(1.0 / assembly.exterior_vapor_film)
    place.append(-2)
    depth.append(depth[-1])
    found = Nodes(
        np.array(heat),
        np.array(vapor),
        np.array(place),
        np.array(depth),
        tuple(layer.name for layer in assembly.inner_layers),
        tuple(dependent),
    )
    if not at_least:
        cache["_nodes"] = found
    return found


def tight_line(
    resistance: list[float], saturated: list[float], start: float, end: float
) -> tuple[list[float], list[int]]:
    """The pressures at the nodes and the nodes where the line bends, both ends included, for one case.

    `resistance` rises from the start; `saturated` is the saturation pressure at each node.
    """
    last = len(resistance) - 1
    z, p = resistance, list(saturated)
    # A surface with no resistance to the air beside it cannot carry more
    # than its own saturation pressure: that end is held there.
    first, final = start, end
    low, high = 0, last
    for k in range(1, last):
        if z[k] > z[0]:
            break
        if p[k] < first:
            first, low = p[k], k
    for k in range(last - 1, 0, -1):
        if z[k] < z[last]:
            break
        if p[k] < final:
            final, high = p[k], k
    p[low], p[high] = first, final
    chain = [low]
    for k in range(low + 1, high + 1):
        if z[k] <= z[low] and k != high:
            continue
        zk, pk = z[k], p[k]
        if k != high and z[k] >= z[high]:
            continue
        while len(chain) > 1:
            a, b = chain[-2], chain[-1]
            if (p[b] - p[a]) * (zk - z[a]) >= (pk - p[a]) * (z[b] - z[a]):
                chain.pop()
            else:
                break
        chain.append(k)
    pressure = [start] + [first] * low if low else [first]
    for a, b in pairwise(chain):
        slope = (p[b] - p[a]) / (z[b] - z[a]) if z[b] > z[a] else 0.0
        pressure += [p[a] + slope * (z[k] - z[a]) for k in range(a + 1, b)] + [p[b]]
    if high < last:
        pressure += [final] * (last - high - 1) + [end]
    vertices = ([0] if low else []) + chain + ([last] if high < last else [])
    return pressure, vertices


def tight_line_through(
    resistance: list[float], saturated: list[float], start: float, end: float, held: Sequence[int] = ()
) -> tuple[list[float], list[int]]:
    """The same line when some nodes hold water and so stay at saturation: each of them a vertex."""
    if not held:
        return tight_line(resistance, saturated, start, end)
    stops = [0, *held, len(resistance) - 1]
    pressure, vertices = [start], [0]
    for a, b in pairwise(stops):
        p, bends = tight_line(
            resistance[a : b + 1],
            saturated[a : b + 1],
            start if a == 0 else saturated[a],
            end if b == stops[-1] else saturated[b],
        )
        pressure += p[1:]
        vertices += [a + k for k in bends[1:]]
    return pressure, vertices


def tight_lines(resistance: Floats, saturated: Floats, start: Floats, end: Floats) -> Floats:
    """The pressures along many lines at once (cases, nodes)."""
    top = saturated.copy()
    at_start = resistance <= resistance[:, :1]
    at_end = resistance >= resistance[:, -1:]
    top[:, 0], top[:, -1] = start, end
    first = np.where(at_start, top, np.inf).min(axis=1)
    final = np.where(at_end, top, np.inf).min(axis=1)
    # Most cases are dry: the straight line stays under saturation.
    span = resistance[:, -1] - resistance[:, 0]
    slope = (final - first) / np.where(span > 0, span, 1.0)
    pressure = first[:, None] + slope[:, None] * (resistance - resistance[:, :1])
    inside = ~(at_start | at_end)
    wet = np.flatnonzero(((pressure > top * (1 + 1e-12)) & inside).any(axis=1))
    if wet.size:
        pressure[wet] = _bent(resistance[wet], top[wet], first[wet], final[wet], at_start[wet], at_end[wet])
    pressure[at_end] = np.broadcast_to(final[:, None], pressure.shape)[at_end]
    pressure[:, 0], pressure[:, -1] = start, end
    return pressure


def _bent(
    z: Floats, top: Floats, first: Floats, final: Floats, at_start: NDArray[np.bool_], at_end: NDArray[np.bool_]
) -> Floats:
    cases, nodes = z.shape
    pressure = np.broadcast_to(first[:, None], z.shape).copy()
    top = np.where(at_end, final[:, None], top)
    active = np.arange(cases)
    from_z, from_p = z[:, 0].copy(), first.copy()
    end_z = z[:, -1]
    while active.size:
        za, pa = from_z[active, None], from_p[active, None]
        away = z[active] - za
        with np.errstate(divide="ignore", invalid="ignore"):
            slopes = np.where(away > 0, (top[active] - pa) / away, np.inf)
        best = slopes.min(axis=1)
        # Of points on one line the farthest is the next vertex.
        ahead = slopes <= best[:, None] + 1e-13 * np.abs(best[:, None])
        new = nodes - 1 - np.argmax(ahead[:, ::-1], axis=1)
        # By resistance, not by place: nodes with none between them share a pressure.
        reach = (away > 0) & (z[active] <= z[active, new][:, None])
        line = pa + best[:, None] * away
        pressure[active] = np.where(reach, line, pressure[active])
        rows = np.arange(active.size)
        from_z[active] = z[active, new]
        from_p[active] = line[rows, new]
        active = active[from_z[active] < end_z[active]]
    return pressure


_NEAR = 1e-10  # of the mean relative humidity
_ROUNDS = 200


def settle(solve: Callable[[Floats, Ints], Floats], count: int, names: Sequence[str], start: Floats) -> Floats:
    """Mean humidities of `count` layers that reproduce themselves (cases, layers).

    ``solve(x, rows)`` gives for mean RH x of the cases `rows` the mean RH that follows.
    """
    return _close_in(solve, start, names) if count == 1 else _step(solve, start, names)


def settle_one(solve: Callable[[float], float], name: str) -> float:
    """The same for one layer of one case, in plain floats: ten times quicker."""
    low, high, off_low, off_high, side = 0.0, 1.0, 1.0, -1.0, 0
    x, found = 0.5, solve(0.5)
    for turn in range(_ROUNDS):
        off = found - x
        if abs(off) <= _NEAR or high - low <= _NEAR:
            return x
        if off > 0:
            low, off_low = x, off
            off_high = 0.5 * off_high if side > 0 else off_high
            side = 1
        else:
            high, off_high = x, off
            off_low = 0.5 * off_low if side < 0 else off_low
            side = -1
        x = min(max(found, 0.0), 1.0) if turn == 0 else (low * off_high - high * off_low) / (off_high - off_low)
        found = solve(x)
    raise NotConverged(_sentence([name], 0))


def _close_in(solve: Callable[[Floats, Ints], Floats], start: Floats, names: Sequence[str]) -> Floats:
    every = np.arange(len(start))
    answer, x, found = start.copy(), start, solve(start, every)
    low, high = np.zeros_like(x), np.ones_like(x)
    # How far the ends overshoot is unknown at first: at most their distance.
    off_low, off_high = np.ones_like(x), -np.ones_like(x)
    side = np.zeros_like(x)
    for turn in range(_ROUNDS):
        off = found - x
        open_still = ((np.abs(off) > _NEAR) & (high - low > _NEAR)).any(axis=1)
        answer[every] = x
        if not open_still.any():
            return answer
        if not open_still.all():  # go on with the cases that are not settled
            every, x, found, off = every[open_still], x[open_still], found[open_still], off[open_still]
            low, high, side = low[open_still], high[open_still], side[open_still]
            off_low, off_high = off_low[open_still], off_high[open_still]
        rising = off > 0
        # Illinois: an end that stays twice is trusted half as much.
        off_high = np.where(rising & (side > 0), 0.5 * off_high, off_high)
        off_low = np.where(~rising & (side < 0), 0.5 * off_low, off_low)
        low, off_low = np.where(rising, x, low), np.where(rising, off, off_low)
        high, off_high = np.where(rising, high, x), np.where(rising, off_high, off)
        side = np.where(rising, 1.0, -1.0)
        # The humidity that follows is the answer at once where the curve is
        # flat, so it is tried first.
        x = np.clip(found, 0.0, 1.0) if turn == 0 else (low * off_high - high * off_low) / (off_high - off_low)
        found = solve(x, every)
    raise NotConverged(_sentence(names, 0))


def _step(solve: Callable[[Floats, Ints], Floats], start: Floats, names: Sequence[str]) -> Floats:
    every = np.arange(len(start))
    x = start
    off = solve(x, every) - x
    weight = np.ones_like(x)
    for _ in range(_ROUNDS):
        if np.all(np.abs(off) <= _NEAR):
            return x
        x = np.clip(x + weight * off, 0.0, 1.0)
        new = solve(x, every) - x
        weight = np.where(new * off < 0, 0.5 * weight, np.minimum(1.0, 1.15 * weight))
        off = new
    raise NotConverged(_sentence(names, int(np.argmax(np.abs(off).max(axis=0)))))


def _sentence(names: Sequence[str], worst: int) -> str:
    return message("physics.no-steady-permeance", layer=called(names[worst]), rounds=_ROUNDS)
