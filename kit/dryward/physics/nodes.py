"""The ladder of an assembly: its layers as resistances to heat and to vapor.

Every steady method works on the same ladder: room air, the film, the layers
cut into pieces, the film, outdoor air.  Nodes (nodes) lie between the
pieces.  A vented air layer ends it at outdoor air behind a film.
"""

import math
from dataclasses import dataclass

import numpy as np

from dryward.building import AirSpace, LaminateMembrane, Material, VariableMembrane
from dryward.checks import UnknownName

#: Thermal resistance a piece may have [m2 K/W]; ISO 13788:2012 clause 6
#: (from memory) cuts layers so that condensation inside one is found.
PIECE = 0.25
#: What a layer of permeance 0 resists [s m2 Pa/kg]: ten million times a
#: sheet of 1 perm, so that sums stay finite.
TIGHT = 1e17


#: Sides of a layer: 0 or "inner" toward the room, 1 or "outer" away from it.
SIDES = {0: 0, 1: 1, "inner": 0, "outer": 1}


def face(places, layer, side, names=None):
    """The node at one face of a layer.

    Parameters
    ----------
    places : ndarray of int (pieces)
        The layer of each piece.
    layer : int or str
        Its place, or its name when `names` are given.
    side : {0, 1, "inner", "outer"}
    names : sequence of str, optional

    Returns
    -------
    int

    Raises
    ------
    UnknownName
        For a layer or a side that is not there.

    Examples
    --------
    >>> face(np.array([0, 0, 1]), "batt", "outer", ("board", "batt"))
    3
    """
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
    """A layer whose permeance answers to the humidity of its two faces.

    Attributes
    ----------
    first, last : int
        Its first node and its last.
    place : int
        The layer of the assembly it belongs to.
    permeance : callable
        Mean RH [-] -> [kg/(s m2 Pa)], scalar or array.
    """

    first: int
    last: int
    place: int
    permeance: object


@dataclass(frozen=True)
class Nodes:
    """Pieces from room air to outdoor air, in order.

    Attributes
    ----------
    heat, vapor : ndarray (pieces)
        Thermal resistance [m2 K/W] and vapor resistance [s m2 Pa/kg] of
        each piece (those that answer to humidity at a mean RH of one half).
    place : ndarray of int (pieces)
        The layer each piece belongs to; -1 the inner film, -2 the outer.
    depth : ndarray (nodes)
        Distance from the room-side face [m].
    names : tuple of str
        Of the layers.
    humidity_dependent : tuple of HumidityDependentLayer
    """

    heat: np.ndarray
    vapor: np.ndarray
    place: np.ndarray
    depth: np.ndarray
    names: tuple
    humidity_dependent: tuple

    def face(self, place, side):
        """The node at the inside (0) or the outside (1) of a layer."""
        return face(self.place, place, side)

    def beside(self, node):
        """Names of the layers on the inside and the outside of a node."""
        inner = self.place[node - 1] if node > 0 else -1
        outer = self.place[node] if node < len(self.place) else -2
        return self._name(inner), self._name(outer)

    def _name(self, place):
        return {-1: "room air", -2: "outdoor air"}.get(int(place)) or self.names[place]


def _sheets(substance):
    return substance.sheets() if isinstance(substance, LaminateMembrane) else (substance,)


def _pieces(layer, least):
    """(heat, vapor, count, permeance of RH or None) of each part of a layer."""
    substance = layer.substance
    if isinstance(substance, Material):
        heat = layer.thermal_resistance
        count = max(1, math.ceil(max(heat, least) / PIECE - 1e-9))
        answer = None
        if not isinstance(substance.vapor_permeability, float):
            answer = _of_material(substance, layer.thickness)
        return [(heat, layer.vapor_resistance, count, answer)]
    if isinstance(substance, AirSpace):
        return [(layer.thermal_resistance, layer.vapor_resistance, 1, None)]
    return [
        (0.0, _resistance(sheet.permeance(0.5, 0.5)), 1, sheet.at_mean if isinstance(sheet, VariableMembrane) else None)
        for sheet in _sheets(substance)
    ]


def _of_material(material, thickness):
    return lambda rh: material.permeability_at(rh) / thickness


def _resistance(permeance):
    return 1.0 / permeance if permeance > 0 else TIGHT


def nodes_of(assembly, at_least=None):
    """The ladder of an assembly, worked out once for each assembly.

    Parameters
    ----------
    assembly : Assembly
    at_least : dict, optional
        Thermal resistance by layer name [m2 K/W] for which the pieces must
        be fine enough, when a sweep will make the layer thicker.

    Returns
    -------
    Nodes
    """
    # A frozen assembly cannot change, and hashing one costs more than the
    # ladder: so it is kept on the assembly itself.
    kept = assembly.__dict__
    if not at_least and "_nodes" in kept:
        return kept["_nodes"]
    heat = [assembly.interior_film]
    vapor = [1.0 / assembly.interior_vapor_film]
    place, depth, dependent = [-1], [0.0, 0.0], []
    for index, layer in enumerate(assembly.inner_layers):
        parts = _pieces(layer, (at_least or {}).get(layer.name, 0.0))
        for part_heat, part_vapor, count, answer in parts:
            first = len(heat)
            for piece in range(count):
                heat.append(part_heat / count)
                vapor.append(min(part_vapor, TIGHT) / count)
                place.append(index)
                step = (layer.thickness or 0.0) / len(parts) * (piece + 1) / count
                depth.append(depth[first] + step)
            if answer is not None:
                dependent.append(HumidityDependentLayer(first, len(heat), index, answer))
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
        kept["_nodes"] = found
    return found
