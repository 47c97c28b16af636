"""What the code rows ask about an assembly: read off its layers."""

import math

from dryward.building.cups import DRY_CUP, WET_CUP
from dryward.building.materials import Material
from dryward.building.membranes import HIGHEST
from dryward.units import to_si

#: Depth of the studs the rows know, and how far a depth may lie from it [m].
_STUDS, _NEAR = {"2x4": to_si(3.5, "in"), "2x6": to_si(5.5, "in")}, to_si(0.25, "in")
#: Insulating sheathing: a core of R-2 or more, from memory, of what insulates [W/(m K)].
_LEAST_CORE, _INSULATES = to_si(2.0, "R"), 0.06
#: A responsive retarder lets more through than this in the wet cup.
_RESPONSIVE = to_si(1.0, "perm")
_FOAM = "foam insulation"


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


def foam(assembly):
    """The layers taken as air-impermeable insulation: foam outside all other insulation.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    tuple of Layer
    """
    others = [place for place, layer in enumerate(assembly.layers) if _insulates(layer) and not _is_foam(layer)]
    return tuple(layer for layer in assembly.layers[others[-1] + 1 if others else 0 :] if _is_foam(layer))


def unvented(assembly):
    """What the rows of an unvented rafter roof ask about it.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    dict
        Facts of `codes.unvented_roof`; without foam neither its R nor its
        permeance is known.
    """
    layers, inside = foam(assembly), warm_side(assembly)
    tight = min((_at(layer, DRY_CUP) for layer in layers), default=None)
    return {
        "resistance": sum(layer.thermal_resistance for layer in layers) if layers else None,
        "inner_permeance": min(inside, HIGHEST),
        "foam_permeance": tight if tight is None or tight <= HIGHEST else None,
        "shingle_gap": 0.0 if any(layer.substance.id == "wood-shingles" for layer in assembly.layers) else None,
    }
