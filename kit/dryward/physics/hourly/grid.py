"""Cells: thin at the faces of a layer, where things happen, thicker inside."""

from dataclasses import dataclass

import numpy as np

from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, VariableMembrane
from dryward.building.substances import Membrane
from dryward.checks import Floats, Ints, OutOfRange
from dryward.language import called, message

#: Cells at a face: parts of the layer, at least and at most [m].  Wood that is wetted from one face begins to wick
#: only when its first cell is nearly full, so that cell must be thin.
FACE_PART, THINNEST, THICKEST_AT_FACE = 250, 0.05e-3, 1e-3
#: The same where air seeps through: it leaves its water in the last cell before a tight layer, and so does frost, from
#: which vapor then has half a cell less to the face than in truth.
OPEN_FACE_PART, THICKEST_AT_OPEN_FACE = 2000, 0.125e-3
#: How cells grow away from a face, and the thickest [m].
GROWTH, THICKEST = 2.0, 30e-3
#: Depth of an air space whose drawing gives none [m]; only its small storage hangs on it.
AIR_DEPTH = 0.02


@dataclass(frozen=True)
class Grid:
    """Cells and faces of an assembly, from inside to outside."""

    width: Floats  # as simulated [m]
    depth: Floats  # of the middles, as drawn [m]
    layer: Ints  # place of the layer in the assembly
    membranes: tuple[tuple[Membrane, ...], ...]  # at each face, the membranes from inside to outside


def widths(thickness: float, refine: int = 1, seeps: bool = False) -> Floats:
    """Widths of the cells of one layer [m], symmetric, adding up to it; thinner at faces where air `seeps`."""
    part, most = (OPEN_FACE_PART, THICKEST_AT_OPEN_FACE) if seeps else (FACE_PART, THICKEST_AT_FACE)
    next_ = min(max(thickness / part, THINNEST), most)
    half, total = [], 0.0
    while total + 0.5 * next_ < 0.5 * thickness:
        half.append(next_)
        total += next_
        next_ = min(GROWTH * next_, THICKEST)
    if len(half) < 2:
        half = [0.2, 0.3]
    # The halves meet in the middle; all are stretched to the exact thickness.
    found = np.array(half + half[::-1])
    found *= thickness / found.sum()
    return np.repeat(found / refine, refine)


def cells(assembly: Assembly, refine: int = 1) -> Grid:
    """The grid of an assembly, every cell cut into `refine`."""
    if not isinstance(refine, (int, np.integer)) or not 1 <= refine <= 50:
        raise OutOfRange(message("physics.whole-refinement", given=str(refine)))
    width: list[float] = []
    depth: list[float] = []
    layer: list[int] = []
    faces: list[tuple[Membrane, ...]] = []
    waiting: list[Membrane] = []
    drawn = 0.0
    for place, each in enumerate(assembly.layers):
        if each.is_membrane:
            # Two that change with humidity need a plane of air between them.
            if not isinstance(each.substance, FixedMembrane) and any(not isinstance(m, FixedMembrane) for m in waiting):
                faces.append(tuple(waiting))
                waiting = []
                width.append(1e-3)
                depth.append(drawn)
                layer.append(-1)
            waiting.append(each.membrane)
            continue
        if isinstance(each.substance, AirSpace):
            found = np.array([each.thickness or AIR_DEPTH])
            span = each.drawn_thickness
        else:
            found = widths(each.drawn_thickness, refine, each.lets_air_through)
            span = each.drawn_thickness
        middles = np.cumsum(found) - 0.5 * found
        depth.extend(drawn + middles * (span / found.sum()))
        drawn += span
        for piece in found:
            faces.append(tuple(waiting))
            waiting = []
            width.append(piece)
            layer.append(place)
    faces.append(tuple(waiting))
    if not any(place >= 0 for place in layer):
        raise OutOfRange(message("physics.only-membranes", name=called(assembly.name)))
    return Grid(np.array(width), np.array(depth), np.array(layer), tuple(faces))


def parts(membrane: Membrane) -> tuple[VariableMembrane | None, float, float]:
    """A membrane as (curve of the sensitive sheet or None, fixed resistance inside it, outside it)."""
    if isinstance(membrane, FixedMembrane):
        return None, _resistance(membrane.level), 0.0
    if isinstance(membrane, LaminateMembrane):
        backing = _resistance(membrane.backing.level)
        return (membrane.sensitive, backing, 0.0) if membrane.turned else (membrane.sensitive, 0.0, backing)
    assert isinstance(membrane, VariableMembrane)
    return membrane, 0.0, 0.0


def _resistance(permeance: float) -> float:
    # 1e-24 kg/(s m2 Pa) passes a molecule or so: foil is that tight, and the solver stays regular.
    return 1.0 / max(permeance, 1e-24)
