"""Which way a wet layer dries, and how fast."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from dryward import air
from dryward.building import Assembly, FixedMembrane, Layer
from dryward.checks import Floats, Ints, OutOfRange, within
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, message
from dryward.physics.nodes import Nodes, nodes_of, settle, tight_line
from dryward.units import show, to_si
from dryward.weather import Air


@dataclass(frozen=True)
class Drying(Exhibit):
    """How fast a wet layer loses water to each side.

    Attributes
    ----------
    inward, outward : float [kg/(s m2)]
        Positive leaves the layer that way; negative brings water from there.
        inf where nothing stands between a face and drier air, no film either.
    temperature : float [degC]
        Of the layer's middle.
    """

    inward: float
    outward: float
    temperature: float

    def __repr__(self) -> str:
        told = [show(each, "vapor flux", "us") if np.isfinite(each) else message("physics.no-limit") for each in (
            self.inward, self.outward)]  # fmt: skip
        at = show(self.temperature, "temperature", "us")
        return one_line("Drying", message("physics.drying-line", inward=told[0], outward=told[1], at=at))

    @property
    def total(self) -> float:
        """Both ways together [kg/(s m2)]."""
        return self.inward + self.outward

    @property
    def share_outward(self) -> float:
        """Part of the drying that goes outward [-]; nan when nothing dries."""
        gone_in, gone_out = max(self.inward, 0.0), max(self.outward, 0.0)
        if np.isinf(gone_in) != np.isinf(gone_out):
            return 1.0 if np.isinf(gone_out) else 0.0
        return gone_out / (gone_in + gone_out) if gone_in + gone_out > 0 else float("nan")


def rates(assembly: Assembly, wet_layer: str, indoor: Air, outdoor: Air, relative_humidity: float = 1.0) -> Drying:
    """Drying of one layer held at a relative humidity, to each side.

    Parameters
    ----------
    assembly : Assembly
    wet_layer : str
        Its name; a layer inside any vent space.
    indoor, outdoor : Air
    relative_humidity : float, optional
        At both faces of the wet layer [-], above 0 to 1.

    Returns
    -------
    Drying

    Raises
    ------
    UnknownName
        When there is no such layer.
    OutOfRange
        For a humidity out of range, or a layer beyond a vent space.
    NotConverged
        When a membrane on the way finds no steady permeance.

    Notes
    -----
    Temperatures of the dry steady state.  Vapor leaves each face of the wet
    layer through what lies between it and the air on that side; what would
    condense on the way there does not count as dried.

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016, "in"), Layer(board, 0.016, "out")])
    >>> rates(wall, "out", Air(20, 0.4), Air(0, 0.8)).inward > 0
    True
    """
    wetness = within("Relative humidity of the wet layer", relative_humidity, 0.0, 1.0, "%", above=True)
    nodes = nodes_of(assembly)
    names = [layer.name for layer in assembly.inner_layers]
    if wet_layer not in names:
        assembly.layer(wet_layer)  # a plain sentence for a name that is not there
        raise OutOfRange(message("physics.beyond-the-vent-space", layer=called(wet_layer)))
    place = names.index(wet_layer)
    resistance_to = np.concatenate(((0.0,), np.cumsum(nodes.heat)))
    span = indoor.temperature - outdoor.temperature
    temperature = indoor.temperature - span * resistance_to / (resistance_to[-1] or 1.0)
    saturated = air.saturation_vapor_pressure(temperature).tolist()
    inner, outer = nodes.face(place, 0), nodes.face(place, 1)
    inward = _leaving(nodes, saturated, range(inner, -1, -1), wetness * saturated[inner], indoor.vapor_pressure)
    outward = _leaving(
        nodes, saturated, range(outer, len(saturated)), wetness * saturated[outer], outdoor.vapor_pressure
    )
    return Drying(inward, outward, float(0.5 * (temperature[inner] + temperature[outer])))


#: Permeance of a sheet that is there only to be wet [kg/(s m2 Pa)].
_WIDE_OPEN = to_si(10_000.0, "perm")


def of_a_wet_face(assembly: Assembly, layer: str, indoor: Air, outdoor: Air, relative_humidity: float = 1.0) -> Drying:
    """Drying of a wet inner face of a layer: through the layer one way, through what is before it the other.

    The face stands at a relative humidity [-], of damp wood there, say.

    Examples
    --------
    By hand: a sheet between two equal airs lets as much out each way as the other.

    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016, "in"), Layer(board, 0.016, "out")])
    >>> round(of_a_wet_face(wall, "out", Air(20, 0.5), Air(20, 0.5)).share_outward, 2)
    0.5
    """
    place = assembly.index(layer)
    face = Layer(FixedMembrane(_WIDE_OPEN), None, "wet face")
    wet = replace(assembly, layers=(*assembly.layers[:place], face, *assembly.layers[place:]))
    return rates(wet, "wet face", indoor, outdoor, relative_humidity)


def _leaving(nodes: Nodes, saturated: list[float], way: Sequence[int], start: float, end: float) -> float:
    """Flux that reaches the air at the end of a way over the nodes."""
    ahead = 1 if way[-1] >= way[0] else -1
    pieces = {k: nodes.vapor[min(k, k + ahead)] for k in way[:-1]}
    top = [saturated[k] for k in way]
    dependent = [a for a in nodes.humidity_dependent if min(way) <= a.first and a.last <= max(way)]
    z: list[float] = []
    p: list[float] = []
    vertices: list[int] = []

    def line() -> None:
        nonlocal z, p, vertices
        z = [0.0]
        for k in way[:-1]:
            z.append(z[-1] + pieces[k])
        p, vertices = tight_line(z, top, start, end)

    def solve(mean: Floats, _: Ints) -> Floats:
        for layer, rh in zip(dependent, mean[0], strict=True):
            each = 1.0 / (float(layer.permeance(float(rh))) * (layer.last - layer.first))
            for node in range(layer.first, layer.last):
                pieces[node if ahead == 1 else node + 1] = each
        line()
        at = dict(zip(way, p, strict=True))
        return np.array(
            [[0.5 * (at[a.first] / saturated[a.first] + at[a.last] / saturated[a.last]) for a in dependent]]
        )

    if dependent:
        settle(solve, len(dependent), [nodes.names[a.place] for a in dependent], np.full((1, len(dependent)), 0.5))
    else:
        line()
    a, b = vertices[-2], vertices[-1]
    if z[b] <= z[a]:
        return float("inf") if p[a] > p[b] else (0.0 if p[a] == p[b] else float("-inf"))
    return float((p[a] - p[b]) / (z[b] - z[a]))
