"""The framed bay of this lesson: its fill and its depth go together, with a board outside it or in it."""

from __future__ import annotations

import dataclasses
from functools import lru_cache

from dryward import building
from dryward.building import Assembly, FixedMembrane, Framing, Layer
from dryward.building.framing import DEEP_2X12
from dryward.units import to_si
from dryward.weather import Air

ROOM = Air(to_si(70.0, "degF"), 0.4)
#: The film between the drywall and the bay.
FILM = to_si(1.0, "perm")
#: The sheathing, as the teaching OSB has it at its thickness.
SHEATHING = to_si(1.5, "perm")
#: Depth and R of a filled bay, by the lumber: common practice, no source.
BAYS = {
    "2x6": (to_si(5.5, "in"), to_si(20.0, "R")),
    "2x12": (DEEP_2X12, to_si(40.0, "R")),
}
#: A board outside the sheathing that lets vapor through, foam with foil outside it, and such foam in the bay.
OPEN, FOIL, FOIL_INSIDE = "open", "foil", "foil-inside"
#: The walls to choose from: bay, board, and the share that is wood.  15 % is little for a wall and 25 % usual, with
#: plates and headers (common practice, no source).
WALLS = {
    "2x6": ("2x6", OPEN, 0.0),
    "2x6-some": ("2x6", OPEN, 0.15),
    "2x6-usual": ("2x6", OPEN, 0.25),
    "2x6-foil": ("2x6", FOIL, 0.0),
    "2x12": ("2x12", OPEN, 0.0),
    "2x12-foam": ("2x12", FOIL_INSIDE, 0.0),
}
#: The open board has so much R each inch (common practice, no source), the foam that of the library.
_OPEN_BOARD = to_si(4.0, "R") / to_si(1.0, "in")
#: A board with less than this counts as not there [m2 K/W].
_NOTHING = 1e-3


@lru_cache(maxsize=512)  # the places of a strip are asked for at every move
def wall_with(bay: str, board: str = OPEN, resistance: float = 0.0, framing: float = 0.0) -> Assembly:
    """A wall with a filled bay, and a board of an R [m2 K/W]; a board in the bay takes the place of fill."""
    inch = to_si(1.0, "in")
    deep, label = BAYS[bay]
    gypsum = dataclasses.replace(building.material("gypsum-board"), conductivity=0.5 * inch / to_si(0.45, "R"))
    osb = dataclasses.replace(building.material("teaching-osb"), conductivity=7 / 16 * inch / to_si(0.62, "R"))
    fill = dataclasses.replace(building.material("teaching-insulation"), conductivity=deep / label)
    sheet = _board(board, resistance)
    inside = board == FOIL_INSIDE
    if sheet and inside and sheet.drawn_thickness > deep:  # no thicker than the bay is deep
        sheet = dataclasses.replace(sheet, thickness=deep)
    left = deep - (sheet.drawn_thickness if sheet and inside else 0.0)
    layers = [Layer(gypsum, 0.5 * inch, "gypsum board"), Layer(FixedMembrane(FILM), None, "inner membrane")]
    if left > 1e-6:
        layers.append(Layer(fill, left, "bay"))
    if sheet and inside:
        layers.append(sheet)
    layers.append(Layer(osb, 7 / 16 * inch, "sheathing"))
    if sheet and not inside:
        layers.append(sheet)
    between = tuple(each.name for each in layers if each.name in ("bay", "foam"))
    studs = Framing(framing, building.material("spruce"), between) if framing else None
    return Assembly("wall", tuple(layers), to_si(0.68, "R"), to_si(0.17, "R"), slope=90, framing=studs)


def wall_of(wall: str, resistance: float) -> Assembly:
    """One of `WALLS` with a board of an R [m2 K/W]."""
    bay, board, framing = WALLS[wall]
    return wall_with(bay, board, resistance, framing)


def _board(board: str, resistance: float) -> Layer | None:
    """The board as a layer; None where it has no R to speak of."""
    if resistance <= _NOTHING:
        return None
    if board == OPEN:
        wool = dataclasses.replace(building.material("mineral-wool-board"), conductivity=1 / _OPEN_BOARD)
        return Layer(wool, resistance / _OPEN_BOARD, "outer board")
    foam = building.material("polyiso-foil-faced")
    return Layer(foam, resistance * foam.conductivity_at(0.0), "foam" if board == FOIL_INSIDE else "outer board")


def face_layer(wall: Assembly) -> str:
    """The layer whose inner face is asked about: the foam in the bay where there is one, else the sheathing."""
    return "foam" if any(each.name == "foam" for each in wall.layers) else "sheathing"
