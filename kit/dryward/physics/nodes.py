"""The nodes of an assembly, and the resistances to heat and to vapor between them.

Every steady method works on the same row: room air, the film, the layers cut
into pieces, the film, outdoor air.  Nodes lie between the pieces.  A vented
air layer ends it at outdoor air behind a film.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.checks import UnknownName
from dryward.physics.shape import Floats, Ints, Numeric, Side

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
    pieces = np.flatnonzero(places == layer)
    return int(pieces[-1]) + 1 if SIDES[side] else int(pieces[0])


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
            permeance = _of_material(substance, layer.thickness or 0.0)
        return [(heat, layer.vapor_resistance, count, permeance)]
    if isinstance(substance, AirSpace):
        return [(layer.thermal_resistance, layer.vapor_resistance, 1, None)]
    return [
        (0.0, _resistance(sheet.permeance(0.5, 0.5)), 1, sheet.at_mean if isinstance(sheet, VariableMembrane) else None)
        for sheet in _sheets(substance)
    ]


def _of_material(material: Material, thickness: float) -> Permeance:
    return lambda rh: material.permeability_at(rh) / thickness


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
        parts = _pieces(layer, (at_least or {}).get(layer.name, 0.0))
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
