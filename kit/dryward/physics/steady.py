"""The steady state: temperatures, the vapor line, and where it gets wet.

A forever-January: no storage, no air leak, no rain, no sun.  Temperatures
follow the thermal resistances; the vapor line is the lower convex hull under
saturation (see `nodes`); below 0 degC saturation is over ice.  A vented air
layer is outdoor air behind a film (ISO 6946, well ventilated).
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from dryward import air
from dryward.building import Assembly
from dryward.checks import Floats, Ints, Numeric, OutOfRange, UnknownName, seal, within
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, listing, message
from dryward.physics.nodes import (
    TIGHT,
    HumidityDependentLayer,
    Nodes,
    Saturation,
    Side,
    face,
    nodes_of,
    settle,
    settle_one,
    tight_line_through,
    tight_lines,
)
from dryward.units import show, written
from dryward.verdict import STATES, UNKNOWN, Verdict, of_steady, states_of_sweep
from dryward.weather import Air

__all__ = ["Profile", "WetPlane", "profile", "Sweep", "sweep"]


#: A rate below this is rounding, not water [kg/(s m2)]: 0.1 mg/m2 a day.
LEAST_RATE = 1e-12


@dataclass(frozen=True)
class WetPlane:
    """A plane where vapor becomes water.

    Attributes
    ----------
    depth : float [m] from the room-side face
    inner_layer, outer_layer : str
        What it lies between; the same name twice when inside a layer.
    rate : float [kg/(s m2)]
        inf when a surface with no film resistance is below the dew point.
    temperature : float [degC]
    node : int
        Its place in the arrays of the profile.
    """

    depth: float
    inner_layer: str
    outer_layer: str
    rate: float
    temperature: float
    node: int


@dataclass(frozen=True)
class Profile(Exhibit):
    """One steady state, from room air (first) to outdoor air (last).

    Attributes
    ----------
    depth : ndarray (nodes) [m] from the room-side face
    temperature : ndarray (nodes) [degC]
    vapor_pressure, saturation_vapor_pressure : ndarray (nodes) [Pa]
    relative_humidity : ndarray (nodes) [-]
    vapor_resistance, thermal_resistance : ndarray (nodes)
        From room air [s m2 Pa/kg] and [m2 K/W].
    heat_flux : float [W/m2], outward
    vapor_flux_in, vapor_flux_out : float [kg/(s m2)]
        Entering from the room and leaving to outdoors, both outward.
    wet_planes : tuple of WetPlane
    dew_point_depth : float or None [m]
        Where the temperature equals the dew point of the ROOM AIR: a line on
        a drawing, not the place of the water.
    permeance : dict
        Of each layer whose permeance answers to humidity [kg/(s m2 Pa)].
    place : ndarray of int (pieces)
        Layer of each piece; -1 and -2 the films.
    names : tuple of str
        Of the layers.
    assembly : Assembly
    """

    depth: Floats
    temperature: Floats
    vapor_pressure: Floats
    saturation_vapor_pressure: Floats
    relative_humidity: Floats
    vapor_resistance: Floats
    thermal_resistance: Floats
    heat_flux: float
    vapor_flux_in: float
    vapor_flux_out: float
    wet_planes: tuple[WetPlane, ...]
    dew_point_depth: float | None
    permeance: dict[str, float]
    place: Ints
    names: tuple[str, ...]
    assembly: Assembly = field(repr=False)

    def __post_init__(self) -> None:
        seal(self)

    def __repr__(self) -> str:
        first, last = (show(float(self.temperature[end]), "temperature", "us") for end in (0, -1))
        inner, outer = (called(each) for each in self.between(self.wettest))
        facts = {
            "name": called(self.assembly.name),
            "first": first,
            "last": last,
            "state": called(self.verdict.state),
            "most": written(float(self.relative_humidity[self.wettest]), ".0%"),
            "inner": inner,
            "outer": outer,
            "within": inner == outer,
        }
        return one_line("Profile", message("physics.profile-line", **facts))

    @cached_property
    def verdict(self) -> Verdict:
        """What it means: dry, damp or wet, see `verdict.of_steady`."""
        return of_steady(self)

    @property
    def gain(self) -> float:
        """Water gained at all wet planes [kg/(s m2)]."""
        return sum((plane.rate for plane in self.wet_planes), 0.0)

    @property
    def wettest(self) -> int:
        """Node of the highest relative humidity within the assembly."""
        return 1 + int(np.argmax(self.relative_humidity[1:-1]))

    @property
    def dampest(self) -> int:
        """Node of the highest relative humidity with a layer on both sides; of a single layer, the wettest.

        The face to the air outdoors has that air's humidity and no more: it says nothing of the roof.
        """
        within = [k for k in range(1, len(self.place)) if min(self.place[k - 1], self.place[k]) >= 0]
        return max(within, key=lambda k: float(self.relative_humidity[k])) if within else self.wettest

    def between(self, node: int) -> tuple[str, ...]:
        """Names of what lies inside and outside of a node."""
        name = {-1: "room air", -2: "outdoor air"}
        return tuple(
            name.get(int(self.place[k])) or self.names[self.place[k]]
            for k in (max(node - 1, 0), min(node, len(self.place) - 1))
        )

    def face(self, layer: str, side: Side) -> int:
        """Node at the inside face (0 or "inner") or the outside face (1 or "outer") of a layer."""
        return face(self.place, layer, side, self.names)


def profile(assembly: Assembly, indoor: Air, outdoor: Air, saturation: Saturation | None = None) -> Profile:
    """The steady state of one assembly between two airs.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : Air
        One state of air each.
    saturation : callable, optional
        Temperature [degC] -> saturation pressure [Pa]; otherwise
        `air.saturation_vapor_pressure`.  For checks against examples that
        were worked with another formula.

    Returns
    -------
    Profile

    Raises
    ------
    NotConverged
        When the permeances that answer to humidity find no steady state.

    Notes
    -----
    Layers with R above 0.25 m2 K/W are cut into equal pieces.  Leaves out
    storage, air movement, liquid flow and latent heat.

    References
    ----------
    ISO 13788:2012, clause 6 (read in secondary sources).

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> state = profile(Assembly("wall", [Layer(board, 0.016)]), Air(20, 0.3), Air(15, 0.5))
    >>> len(state.wet_planes)
    0
    """
    nodes = nodes_of(assembly)
    resistance_to = np.concatenate(((0.0,), np.cumsum(nodes.heat)))
    drop = (indoor.temperature - outdoor.temperature) / resistance_to[-1] if resistance_to[-1] > 0 else 0.0
    temperature = indoor.temperature - drop * resistance_to
    saturated = (saturation or air.saturation_vapor_pressure)(temperature)
    top = saturated.tolist()
    if saturation is None:
        start, end = indoor.vapor_pressure, outdoor.vapor_pressure
    else:
        start, end = top[0] * indoor.relative_humidity, top[-1] * outdoor.relative_humidity
    pieces, line = settled(nodes, top, start, end)
    z, p, vertices = line
    wet = []
    for node in vertices[1:-1]:
        rate = _rate(z, p, vertices, node)
        if rate > LEAST_RATE:
            wet.append(
                WetPlane(float(nodes.depth[node]), *nodes.beside(node), float(rate), float(temperature[node]), node)
            )
    pressure = np.array(p)
    permeance: dict[str, float] = {}
    for layer in nodes.humidity_dependent:
        # All of the layer: a laminate answers with one sheet and has two.
        resistance = sum(each for each, place in zip(pieces, nodes.place, strict=True) if place == layer.place)
        permeance[nodes.names[layer.place]] = 1.0 / resistance
    return Profile(
        depth=nodes.depth,
        temperature=temperature,
        vapor_pressure=pressure,
        saturation_vapor_pressure=saturated,
        relative_humidity=pressure / saturated,
        vapor_resistance=np.array(z),
        thermal_resistance=resistance_to,
        heat_flux=float(drop),
        vapor_flux_in=_slope(z, pressure, vertices[0], vertices[1]),
        vapor_flux_out=_slope(z, pressure, vertices[-2], vertices[-1]),
        wet_planes=tuple(wet),
        dew_point_depth=dew_point_depth(temperature, nodes.depth, start),
        permeance=permeance,
        place=nodes.place,
        names=nodes.names,
        assembly=assembly,
    )


#: Vapor resistance from the start and pressure at each node, and the nodes where the line bends.
Line = tuple[list[float], list[float], list[int]]


def settled(
    nodes: Nodes, saturated: list[float], start: float, end: float, held: Sequence[int] = ()
) -> tuple[list[float], Line]:
    """Vapor resistances of the pieces and the vapor line that agree; `held` nodes stay at saturation."""
    pieces = nodes.vapor.tolist()
    line: Line = ([], [], [])

    def solve(means: Sequence[float]) -> list[float]:
        nonlocal line
        for layer, rh in zip(nodes.humidity_dependent, means, strict=True):
            count = layer.last - layer.first
            each = 1.0 / (float(layer.permeance(rh)) * count)
            pieces[layer.first : layer.last] = [each] * count
        z, total = [0.0], 0.0
        for piece in pieces:
            total += piece
            z.append(total)
        line = (z, *tight_line_through(z, saturated, start, end, held))
        p = line[1]
        return [
            0.5 * (p[a.first] / saturated[a.first] + p[a.last] / saturated[a.last]) for a in nodes.humidity_dependent
        ]

    names = [nodes.names[layer.place] for layer in nodes.humidity_dependent]
    if len(names) == 1:
        settle_one(lambda mean: solve((mean,))[0], names[0])
    elif names:
        settle(lambda mean, _: np.array([solve(mean[0].tolist())]), len(names), names, np.full((1, len(names)), 0.5))
    else:
        solve(())
    return pieces, line


def _slope(z: Numeric, p: Numeric, a: int, b: int) -> float:
    """Flux between two nodes; through no resistance it is without limit."""
    if z[b] > z[a]:
        return float((p[a] - p[b]) / (z[b] - z[a]))
    return 0.0 if p[a] == p[b] else float(np.copysign(np.inf, p[a] - p[b]))


def _rate(z: Numeric, p: Numeric, vertices: list[int], node: int) -> float:
    k = vertices.index(node)
    arriving = _slope(z, p, vertices[k - 1], node)
    leaving = _slope(z, p, node, vertices[k + 1])
    return arriving - leaving


def dew_point_depth(temperature: Floats, depth: Floats, vapor_pressure: float) -> float | None:
    """Where the temperature falls to the room air's dew point: 0 if the surface is colder, None if all is warmer."""
    if vapor_pressure < 0.001:
        return None
    dew = air.dew_point(vapor_pressure)
    # Not "dew < temperature[0]": saturated room air is at its own dew point.
    if temperature[1] <= dew and temperature[1] < temperature[0]:
        return 0.0
    for k in range(1, len(depth) - 2):
        warm, cold = temperature[k], temperature[k + 1]
        if cold <= dew < warm:
            return float(depth[k] + (depth[k + 1] - depth[k]) * (warm - dew) / (warm - cold))
    return None


_AIRS = ("indoor_temperature", "indoor_relative_humidity", "outdoor_temperature", "outdoor_relative_humidity")
_PROPERTIES = ("permeance", "thermal_resistance")


@dataclass(frozen=True)
class Sweep(Exhibit):
    """Summaries of many steady states; each array has the broadcast shape.

    Attributes
    ----------
    gain : ndarray [kg/(s m2)]
        Water gained at all wet planes.
    highest_relative_humidity : ndarray [-]
    highest_depth : ndarray [m]
        Where that is.
    wettest : ndarray of int
        Its node.
    wet_planes : ndarray of int
        How many planes are wet.
    dew_point_depth : ndarray [m]
        nan where there is none.
    heat_flux : ndarray [W/m2]
    vapor_flux_in, vapor_flux_out : ndarray [kg/(s m2)]
    temperature, vapor_pressure, relative_humidity : ndarray (..., nodes)
    depth : ndarray (nodes) [m]
    place : ndarray of int (pieces)
    names : tuple of str
    permeance : dict of ndarray
        Of the layers that depend on humidity [kg/(s m2 Pa)].
    assembly : Assembly
        That was swept.
    """

    gain: Floats
    highest_relative_humidity: Floats
    highest_depth: Floats
    wettest: Ints
    wet_planes: Ints
    dew_point_depth: Floats
    heat_flux: Floats
    vapor_flux_in: Floats
    vapor_flux_out: Floats
    temperature: Floats
    vapor_pressure: Floats
    relative_humidity: Floats
    depth: Floats
    place: Ints
    names: tuple[str, ...]
    permeance: dict[str, Floats]
    assembly: Assembly = field(repr=False)

    def __post_init__(self) -> None:
        seal(self)

    def __repr__(self) -> str:
        states = [str(each) for each in np.ravel(states_of_sweep(self))]
        counts = [
            message("physics.so-many", count=states.count(each), state=called(each))
            for each in (*STATES, UNKNOWN)
            if each in states
        ]
        facts = {"name": called(self.assembly.name), "count": len(states), "counts": listing(counts)}
        return one_line("Sweep", message("physics.sweep-line", **facts))

    def face(self, layer: str, side: Side) -> int:
        """Node at the inside face (0 or "inner") or the outside face (1 or "outer") of a layer."""
        return face(self.place, layer, side, self.names)


def variables(assembly: Assembly) -> dict[str, tuple[str | None, str]]:
    """What a sweep of this assembly can vary: keyword -> (layer name, property), or (None, keyword) for an air."""
    found: dict[str, tuple[str | None, str]] = {name: (None, name) for name in _AIRS}
    for layer in assembly.inner_layers:
        for what in _PROPERTIES:
            found[f"{layer.name.replace(' ', '_').replace('-', '_')}_{what}"] = (layer.name, what)
    return found


def sweep(
    assembly: Assembly, indoor: Air, outdoor: Air, saturation: Saturation | None = None, **arrays: ArrayLike
) -> Sweep:
    """Many steady states at once.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : Air
        May hold arrays.
    saturation : callable, optional
        As in `profile`.
    **arrays : array
        Any of ``indoor_temperature`` [degC], ``indoor_relative_humidity``
        [-], the same outdoors, and for each layer, by its name with
        underscores, ``..._permeance`` [kg/(s m2 Pa)] (a membrane that
        answers to humidity then counts as fixed) and
        ``..._thermal_resistance`` [m2 K/W].  All broadcast together.

    Returns
    -------
    Sweep

    Raises
    ------
    UnknownName
        For a keyword that is none of these.
    OutOfRange
        For a value out of range.
    NotConverged
        When permeances that answer to humidity find no steady state.

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016, "board")])
    >>> sweep(wall, Air(20, 0.3), Air(0, 0.8), board_permeance=[1e-10, 1e-9]).gain.shape
    (2,)
    """
    known = variables(assembly)
    for name in arrays:
        if name not in known:
            raise UnknownName("thing to vary", name, known)
    given: dict[str, Any] = {
        "indoor_temperature": indoor.temperature,
        "indoor_relative_humidity": indoor.relative_humidity,
        "outdoor_temperature": outdoor.temperature,
        "outdoor_relative_humidity": outdoor.relative_humidity,
    }
    given.update({name: np.asarray(value, dtype=float) for name, value in arrays.items()})
    try:
        shape = np.broadcast_shapes(*(np.shape(value) for value in given.values()))
    except ValueError:
        raise OutOfRange(message("physics.sweep-shapes")) from None
    if 0 in shape:
        raise OutOfRange(message("physics.sweep-empty"))
    flat = {name: np.broadcast_to(value, shape).reshape(-1) for name, value in given.items()}
    _check_airs(flat)
    nodes, heat, vapor, dependent = _pieces(assembly, known, flat)
    # Where only airs vary, one row of resistances serves all cases.
    cases = max(1, int(np.prod(shape)))
    resistance_to = np.concatenate((np.zeros((heat.shape[0], 1)), np.cumsum(heat, axis=1)), axis=1)
    indoors, outdoors = flat["indoor_temperature"][:, None], flat["outdoor_temperature"][:, None]
    drop = (indoors - outdoors) / np.where(resistance_to[:, -1:] > 0, resistance_to[:, -1:], np.inf)
    temperature = indoors - drop * resistance_to
    saturated = (saturation or air.saturation_vapor_pressure)(temperature)
    start = flat["indoor_relative_humidity"] * saturated[:, 0]
    end = flat["outdoor_relative_humidity"] * saturated[:, -1]
    z, pressure = _settled(nodes, dependent, vapor, saturated, start, end, cases)
    return _summary(assembly, shape, nodes, dependent, temperature, saturated, z, pressure, drop[:, 0])


def _check_airs(flat: dict[str, Floats]) -> None:
    for side in ("indoor", "outdoor"):
        within("Air temperature", flat[f"{side}_temperature"], -60.0, 95.0, "degC")
        within("Relative humidity", flat[f"{side}_relative_humidity"], 0.0, 1.0, "%")


def _pieces(
    assembly: Assembly, known: dict[str, tuple[str | None, str]], flat: dict[str, Floats]
) -> tuple[Nodes, Floats, Floats, list[HumidityDependentLayer]]:
    """Resistances of the pieces by case, with what the sweep varies put in."""
    varied = {name: (layer, what) for name in flat for layer, what in [known[name]] if layer is not None}
    most: dict[str, float] = {}
    for name, (layer, what) in varied.items():
        if what == "thermal_resistance":
            within("Thermal resistance", flat[name], 0.0, 50.0, "m2 K/W", of=layer)
            most[layer] = float(flat[name].max())
    nodes = nodes_of(assembly, most)
    heat, vapor = nodes.heat[None, :], nodes.vapor[None, :]
    dependent = list(nodes.humidity_dependent)
    rows = len(next(iter(flat.values())))
    if varied:
        heat, vapor = np.repeat(heat, rows, axis=0), np.repeat(vapor, rows, axis=0)
    for name, (layer, what) in varied.items():
        place = nodes.names.index(layer)
        here = np.flatnonzero(nodes.place == place)
        if what == "thermal_resistance":
            heat[:, here] = flat[name][:, None] / len(here)
        else:
            level = within("Permeance", flat[name], 0.0, np.inf, "kg/(s m2 Pa)", of=layer)
            resistance = np.where(level > 0, 1.0 / np.where(level > 0, level, 1.0), TIGHT)
            vapor[:, here] = resistance[:, None] / len(here)
            dependent = [each for each in dependent if each.place != place]
    return nodes, heat, vapor, dependent


def _settled(
    nodes: Nodes,
    dependent: Sequence[HumidityDependentLayer],
    vapor: Floats,
    saturated: Floats,
    start: Floats,
    end: Floats,
    cases: int,
) -> tuple[Floats, Floats]:
    def resistances_to(pieces: Floats) -> Floats:
        z = np.zeros((len(pieces), pieces.shape[1] + 1))
        np.cumsum(pieces, axis=1, out=z[:, 1:])
        return np.broadcast_to(z, (cases, z.shape[1]))

    if not dependent:
        z = resistances_to(vapor)
        return z, tight_lines(z, saturated, start, end)
    # Only what answers moves from round to round: the rest is summed once.
    fixed = np.array(vapor)
    for layer in dependent:
        fixed[:, layer.first : layer.last] = 0.0
    fixed = resistances_to(fixed)

    def stretched(mean: Floats, rows: Ints) -> Floats:
        z = fixed[rows]
        for k, layer in enumerate(dependent):
            whole = 1.0 / layer.permeance(mean[:, k])
            count = layer.last - layer.first
            for piece in range(1, count):
                z[:, layer.first + piece] += whole * piece / count
            z[:, layer.last :] += whole[:, None]
        return z

    def solve(mean: Floats, rows: Ints) -> Floats:
        top = saturated[rows] if len(rows) < cases else saturated
        p = tight_lines(stretched(mean, rows), top, start[rows], end[rows])
        return np.stack([0.5 * (p[:, a.first] / top[:, a.first] + p[:, a.last] / top[:, a.last]) for a in dependent], 1)

    names = [nodes.names[layer.place] for layer in dependent]
    mean = settle(solve, len(names), names, np.full((cases, len(names)), 0.5))
    z = stretched(mean, np.arange(cases))
    return z, tight_lines(z, saturated, start, end)


def _summary(
    assembly: Assembly,
    shape: tuple[int, ...],
    nodes: Nodes,
    dependent: Sequence[HumidityDependentLayer],
    temperature: Floats,
    saturated: Floats,
    z: Numeric,
    pressure: Floats,
    heat_flux: Floats,
) -> Sweep:
    rh = pressure / saturated
    gap, fall = np.diff(z, axis=1), -np.diff(pressure, axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        flux = fall / gap
    # A piece without resistance (a film left out) passes what its neighbor does.
    open_in, open_out = np.argmax(gap > 0, axis=1), gap.shape[1] - 1 - np.argmax(gap[:, ::-1] > 0, axis=1)
    rows = np.arange(len(flux))
    flux_in, flux_out = flux[rows, open_in], flux[rows, open_out]
    # Where nothing resists, vapor passes without limit, or not at all.
    free = (gap <= 0).all(axis=1)
    drive = pressure[:, 0] - pressure[:, -1]
    unlimited = np.where(drive == 0, 0.0, np.copysign(np.inf, drive))
    flux_in, flux_out = np.where(free, unlimited, flux_in), np.where(free, unlimited, flux_out)
    scale = np.maximum(np.abs(flux_in), np.abs(flux_out))
    touching = rh[:, 1:-1] >= 1 - 1e-9
    passed = np.where(gap > 0, flux, 0.0)
    bend = np.where(gap[:, 1:] > 0, passed[:, :-1] - passed[:, 1:], 0.0)
    wet = touching & (bend > np.maximum(1e-12, 1e-9 * scale[:, None]))
    # A surface below the dew point with no film resistance before it takes
    # vapor without limit.
    sweats_in = (gap[:, 0] <= 0) & (fall[:, 0] > 0) & ~free
    sweats_out = (gap[:, -1] <= 0) & (fall[:, -1] < 0) & ~free
    flux_in, flux_out = np.where(sweats_in, np.inf, flux_in), np.where(sweats_out, -np.inf, flux_out)
    gains = wet.any(axis=1) | sweats_in | sweats_out
    gain = np.where(gains, flux_in, 0.0) - np.where(gains, flux_out, 0.0)
    inner = rh[:, 1:-1]
    wettest = 1 + np.argmax(inner, axis=1)
    return Sweep(
        gain=gain.reshape(shape),
        highest_relative_humidity=inner.max(axis=1).reshape(shape),
        highest_depth=nodes.depth[wettest].reshape(shape),
        wettest=wettest.reshape(shape),
        wet_planes=(wet.sum(axis=1) + sweats_in + sweats_out).reshape(shape),
        dew_point_depth=_dew_point_depths(temperature, nodes.depth, pressure[:, 0]).reshape(shape),
        heat_flux=heat_flux.reshape(shape),
        vapor_flux_in=flux_in.reshape(shape),
        vapor_flux_out=flux_out.reshape(shape),
        temperature=temperature.reshape(*shape, -1),
        vapor_pressure=pressure.reshape(*shape, -1),
        relative_humidity=rh.reshape(*shape, -1),
        depth=nodes.depth,
        place=nodes.place,
        names=nodes.names,
        permeance={nodes.names[a.place]: _whole(nodes, z, a.place).reshape(shape) for a in dependent},
        assembly=assembly,
    )


def _whole(nodes: Nodes, z: Numeric, place: int) -> Floats:
    """Permeance of all of a layer: a laminate answers with one sheet and has two."""
    return 1.0 / (z[:, nodes.face(place, 1)] - z[:, nodes.face(place, 0)])


def _dew_point_depths(temperature: Floats, depth: Floats, vapor_pressure: Floats) -> Floats:
    found = np.full(len(vapor_pressure), np.nan)
    some = vapor_pressure >= 0.001
    dew = np.full_like(found, -np.inf)
    dew[some] = air.dew_point(vapor_pressure[some])
    warm, cold = temperature[:, 1:-2], temperature[:, 2:-1]
    crossed = (cold <= dew[:, None]) & (dew[:, None] < warm)
    hit = crossed.any(axis=1)
    k = np.argmax(crossed[hit], axis=1)
    rows = np.flatnonzero(hit)
    share = (warm[rows, k] - dew[rows]) / (warm[rows, k] - cold[rows, k])
    found[rows] = depth[k + 1] + (depth[k + 2] - depth[k + 1]) * share
    found[(temperature[:, 1] <= dew) & (temperature[:, 1] < temperature[:, 0])] = 0.0
    return found
