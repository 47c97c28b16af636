"""The steady state: temperatures, the vapor line, and where it gets wet.

A forever-January: no storage, no air leak, no rain, no sun.  Temperatures
follow the thermal resistances; the vapor line is the lower convex hull under
saturation (see `hull`); below 0 degC saturation is over ice.  A vented air
layer is outdoor air behind a film (ISO 6946, well ventilated).
"""

from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from dryward import air
from dryward.physics.hull import tight_line_through
from dryward.physics.humidity_state import settle, settle_one
from dryward.physics.ladder import face, ladder
from dryward.physics.shape import seal
from dryward.physics.sweep import Sweep, sweep
from dryward.results import Result, one_line
from dryward.units import show
from dryward.verdict import Verdict, of_steady

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
    rung : int
        Its place in the arrays of the profile.
    """

    depth: float
    inner_layer: str
    outer_layer: str
    rate: float
    temperature: float
    rung: int


@dataclass(frozen=True)
class Profile(Result):
    """One steady state, from room air (first) to outdoor air (last).

    Attributes
    ----------
    depth : ndarray (rungs) [m] from the room-side face
    temperature : ndarray (rungs) [degC]
    vapor_pressure, saturation_vapor_pressure : ndarray (rungs) [Pa]
    relative_humidity : ndarray (rungs) [-]
    vapor_resistance, thermal_resistance : ndarray (rungs)
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

    depth: np.ndarray
    temperature: np.ndarray
    vapor_pressure: np.ndarray
    saturation_vapor_pressure: np.ndarray
    relative_humidity: np.ndarray
    vapor_resistance: np.ndarray
    thermal_resistance: np.ndarray
    heat_flux: float
    vapor_flux_in: float
    vapor_flux_out: float
    wet_planes: tuple
    dew_point_depth: float | None
    permeance: dict
    place: np.ndarray
    names: tuple
    assembly: object = field(repr=False)

    def __post_init__(self):
        seal(self)

    def __repr__(self):
        ends = " to ".join(show(float(self.temperature[end]), "temperature", "us") for end in (0, -1))
        inner, outer = self.between(self.wettest)
        where = f"in {inner}" if inner == outer else f"between {inner} and {outer}"
        wettest = f"{float(self.relative_humidity[self.wettest]):.0%} {where}"
        return one_line("Profile", f"{self.assembly.name}, {ends}: {self.verdict.state}, at most {wettest}")

    @cached_property
    def verdict(self) -> Verdict:
        """What it means: dry, damp or wet, see `verdict.of_steady`."""
        return of_steady(self)

    @property
    def gain(self):
        """Water gained at all wet planes [kg/(s m2)]."""
        return sum((plane.rate for plane in self.wet_planes), 0.0)

    @property
    def wettest(self):
        """Rung of the highest relative humidity within the assembly."""
        return 1 + int(np.argmax(self.relative_humidity[1:-1]))

    def between(self, rung):
        """Names of what lies inside and outside of a rung."""
        name = {-1: "room air", -2: "outdoor air"}
        return tuple(
            name.get(int(self.place[k])) or self.names[self.place[k]]
            for k in (max(rung - 1, 0), min(rung, len(self.place) - 1))
        )

    def face(self, layer, side):
        """Rung at the inside face (0 or "inner") or the outside face (1 or "outer") of a layer."""
        return face(self.place, layer, side, self.names)


def profile(assembly, indoor, outdoor, saturation=None):
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
    steps = ladder(assembly)
    rungs_r = np.concatenate(((0.0,), np.cumsum(steps.heat)))
    drop = (indoor.temperature - outdoor.temperature) / rungs_r[-1] if rungs_r[-1] > 0 else 0.0
    temperature = indoor.temperature - drop * rungs_r
    ceiling = (saturation or air.saturation_vapor_pressure)(temperature)
    top = ceiling.tolist()
    if saturation is None:
        start, end = indoor.vapor_pressure, outdoor.vapor_pressure
    else:
        start, end = top[0] * indoor.relative_humidity, top[-1] * outdoor.relative_humidity
    pieces, line = settled(steps, top, start, end)
    z, pressure, vertices = line
    wet = []
    for rung in vertices[1:-1]:
        rate = _rate(z, pressure, vertices, rung)
        if rate > LEAST_RATE:
            wet.append(
                WetPlane(float(steps.depth[rung]), *steps.beside(rung), float(rate), float(temperature[rung]), rung)
            )
    pressure = np.array(pressure)
    permeance = {}
    for answer in steps.answering:
        # All of the layer: a laminate answers with one sheet and has two.
        resistance = sum(each for each, place in zip(pieces, steps.place, strict=True) if place == answer.place)
        permeance[steps.names[answer.place]] = 1.0 / resistance
    return Profile(
        depth=steps.depth,
        temperature=temperature,
        vapor_pressure=pressure,
        saturation_vapor_pressure=ceiling,
        relative_humidity=pressure / ceiling,
        vapor_resistance=np.array(z),
        thermal_resistance=rungs_r,
        heat_flux=float(drop),
        vapor_flux_in=_slope(z, pressure, vertices[0], vertices[1]),
        vapor_flux_out=_slope(z, pressure, vertices[-2], vertices[-1]),
        wet_planes=tuple(wet),
        dew_point_depth=dew_point_depth(temperature, steps.depth, start),
        permeance=permeance,
        place=steps.place,
        names=steps.names,
        assembly=assembly,
    )


def settled(steps, ceiling, start, end, held=()):
    """Piece resistances and the vapor line that agree with each other.

    Parameters
    ----------
    steps : Ladder
    ceiling : list of float
        Saturation pressure at the rungs [Pa].
    start, end : float
        Vapor pressures of the two airs [Pa].
    held : sequence of int, optional
        Rungs that hold water, and so stay at saturation.

    Returns
    -------
    pieces : list of float
        Vapor resistance of each piece [s m2 Pa/kg].
    line : (resistance, pressure, vertices)
        Lists over the rungs, and the rungs where the line bends.

    Raises
    ------
    NotConverged
        When no steady permeance is found.
    """
    pieces = steps.vapor.tolist()
    line = None

    def solve(means):
        nonlocal line
        for answer, rh in zip(steps.answering, means, strict=True):
            count = answer.last - answer.first
            each = 1.0 / (float(answer.permeance(rh)) * count)
            pieces[answer.first : answer.last] = [each] * count
        z, total = [0.0], 0.0
        for piece in pieces:
            total += piece
            z.append(total)
        line = (z, *tight_line_through(z, ceiling, start, end, held))
        p = line[1]
        return [0.5 * (p[a.first] / ceiling[a.first] + p[a.last] / ceiling[a.last]) for a in steps.answering]

    names = [steps.names[answer.place] for answer in steps.answering]
    if len(names) == 1:
        settle_one(lambda mean: solve((mean,))[0], names[0])
    elif names:
        settle(lambda mean, _: np.array([solve(mean[0].tolist())]), len(names), names, np.full((1, len(names)), 0.5))
    else:
        solve(())
    return pieces, line


def _slope(z, p, a, b):
    """Flux between two rungs; through no resistance it is without limit."""
    if z[b] > z[a]:
        return float((p[a] - p[b]) / (z[b] - z[a]))
    return 0.0 if p[a] == p[b] else float(np.copysign(np.inf, p[a] - p[b]))


def _rate(z, p, vertices, rung):
    k = vertices.index(rung)
    arriving = _slope(z, p, vertices[k - 1], rung)
    leaving = _slope(z, p, rung, vertices[k + 1])
    return arriving - leaving


def dew_point_depth(temperature, depth, vapor_pressure):
    """Where the temperature falls to the dew point of air, if it does.

    Parameters
    ----------
    temperature, depth : ndarray (rungs)
        [degC] and [m].
    vapor_pressure : float
        Of the room air [Pa].

    Returns
    -------
    float or None
        [m]; None when every layer is warmer, or when the room surface
        already is colder (then the depth is 0).
    """
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
