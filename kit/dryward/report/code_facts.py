"""What the code rows ask about an assembly: read off its layers."""

import math
from dataclasses import dataclass

from dryward.building.materials import Material
from dryward.building.membranes import DRY_CUP, HIGHEST, WET_CUP
from dryward.units import to_si

#: Depth of the studs the rows know, and how far a depth may lie from it [m].
_STUDS, _NEAR = {"2x4": to_si(3.5, "in"), "2x6": to_si(5.5, "in")}, to_si(0.25, "in")
#: Insulating sheathing: a core of R-2 or more, from memory, of what insulates [W/(m K)].
_LEAST_CORE, _INSULATES = to_si(2.0, "R"), 0.06
#: A responsive retarder lets more through than this in the wet cup.
_RESPONSIVE = to_si(1.0, "perm")
_FOAM = "foam insulation"
#: Foams that hold air back only from some density or thickness on; common practice, no source.
_AIR_NOT_KNOWN = ("spray-foam-open-cell", "cork-board")
#: Shelves of what the reader typed or a file brought along.
_OWN = ("own", "")


def _at(layer, humidity):
    """Permeance of a layer at the mean humidity of a cup test."""
    if isinstance(layer.substance, Material):
        return layer.substance.permeability_at(humidity) / layer.thickness
    if layer.is_membrane:
        # The dry cup has 0 and 50 % at its faces, the wet one 50 and 100 %; the damper face to the room.
        return layer.substance.permeance(humidity + 0.25, humidity - 0.25)
    return layer.permeance


def cavity(assembly):
    """The main insulation: the one between the framing, otherwise the thickest in R.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    Layer
    """
    framed = assembly.framing.layers if assembly.framing else ()
    between = [layer for layer in assembly.inner_layers if layer.name in framed] or assembly.inner_layers
    return max(between, key=lambda layer: layer.thermal_resistance)


def _room_side(assembly):
    return assembly.inner_layers[: assembly.inner_layers.index(cavity(assembly))]


def _outside(assembly):
    return assembly.inner_layers[assembly.inner_layers.index(cavity(assembly)) + 1 :]


def warm_side(assembly):
    """Permeance of the tightest layer on the room side, by dry cup [kg/(s m2 Pa)].

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    float
        Of the tightest of the layers before the main insulation, at a mean
        RH of 25 %; inf where there is none.
    """
    return min((_at(layer, DRY_CUP) for layer in _room_side(assembly)), default=math.inf)


def _insulates(layer):
    made = layer.substance
    return (
        isinstance(made, Material)
        and made.conductivity_at(0.0) < _INSULATES
        and layer.thermal_resistance >= _LEAST_CORE * (1 - 1e-9)
    )


def retarder(assembly):
    """What the row of the interior vapor retarder asks about a frame wall.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    dict
        Facts of `codes.judge`; the stud is told only where the framing is.
    """
    tightest = min(_room_side(assembly), key=lambda layer: _at(layer, DRY_CUP))
    outside = _outside(assembly)
    depth = cavity(assembly).thickness or 0.0
    studs = [name for name, size in _STUDS.items() if assembly.framing and abs(depth - size) <= _NEAR]
    level = min((_at(layer, DRY_CUP) for layer in outside), default=math.inf)
    return {
        "permeance": _at(tightest, DRY_CUP),
        "responsive": _at(tightest, WET_CUP) > _RESPONSIVE * (1 + 1e-9),
        "wall": studs[0] if studs else None,
        "exterior_insulation": sum(layer.thermal_resistance for layer in outside if _insulates(layer)),
        "vented_cladding_over": _under_cladding(assembly, outside),
        "outer_permeance": level if level <= HIGHEST else None,
    }


def _under_cladding(assembly, outside):
    """What a vented cladding hangs over: a word of the table, or "none"."""
    if not any(layer.vented for layer in assembly.layers):
        return "none"
    boards = [layer.substance for layer in outside if isinstance(layer.substance, Material)]
    if not boards:
        return "none"
    words = f"{boards[-1].id} {boards[-1].name}".lower()
    for kind in ("fiberboard", "gypsum"):
        if kind in words:
            return kind
    return "panel" if boards[-1].category == "wood panels and sheathing" else "none"


def _is_foam(layer):
    return isinstance(layer.substance, Material) and layer.substance.category == _FOAM


def _open_question(layer):
    """Whether it insulates and nobody here knows if air passes it."""
    return _insulates(layer) and (
        layer.substance.id in _AIR_NOT_KNOWN or (layer.substance.category in _OWN and not layer.is_membrane)
    )


@dataclass(frozen=True)
class AirImpermeable:
    """What is drawn of air-impermeable insulation at or above the deck.

    Attributes
    ----------
    known, doubtful : tuple of Layer
        Foam outside all other insulation, and what may be as tight to air but
        is not known here to be.
    inside : tuple of Layer
        Foam on the room side of other insulation, where it does not count.
    """

    known: tuple
    doubtful: tuple
    inside: tuple

    @property
    def resistance(self):
        """Of what is known to be air-impermeable [m2 K/W]; 0 where nothing is."""
        return sum(layer.thermal_resistance for layer in self.known)

    @property
    def at_most(self):
        """The same with what may be [m2 K/W]."""
        return self.resistance + sum(layer.thermal_resistance for layer in self.doubtful)


def air_impermeable(assembly):
    """The insulation that the rows of an unvented roof ask about.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    AirImpermeable
    """
    counts = [_is_foam(layer) or _open_question(layer) for layer in assembly.layers]
    others = [place for place, layer in enumerate(assembly.layers) if _insulates(layer) and not counts[place]]
    first = others[-1] + 1 if others else 0
    foam = [layer for layer, fits in zip(assembly.layers, counts, strict=True) if fits]
    outside = [layer for layer in assembly.layers[first:] if layer in foam]
    return AirImpermeable(
        tuple(layer for layer in outside if not _open_question(layer)),
        tuple(layer for layer in outside if _open_question(layer)),
        tuple(layer for layer in foam if layer not in outside),
    )


def unvented(assembly):
    """What the rows of an unvented rafter roof ask about it.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    dict
        Facts of `codes.unvented_roof`; without foam its R is 0 and its
        permeance is not asked.
    """
    foam, inside = air_impermeable(assembly), warm_side(assembly)
    tight = min((_at(layer, DRY_CUP) for layer in (*foam.known, *foam.doubtful)), default=None)
    ids = [layer.substance.id for layer in assembly.layers]
    return {
        # What may be air-impermeable is neither none nor known.
        "resistance": foam.resistance if foam.known or not foam.doubtful else None,
        "inner_permeance": min(inside, HIGHEST),
        "foam_permeance": tight if tight is None or tight <= HIGHEST else None,
        "shingle_gap": 0.0 if "wood-shingles" in ids else None,
        "tile": ids[-1] == "clay-tile",
    }
