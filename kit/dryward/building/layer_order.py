"""Layers the wrong way round: what plainly lies on the side where it does not belong.

An assembly is listed from inside to outside, and a list typed the other way
round is worked out without a word.  So each layer that has a side of its own
is compared with the insulation.  Common practice, no source.  Only what is
plain is told; left alone are

- an old roof covering, a flat roof's sheet or a rain sheet on a deck, with the
  insulation over it;
- wood or metal cladding that lines a room that has cladding outside as well;
- gypsum board, plaster or paint with a wall or a sheathing over it;
- a partition: a wall with the same finishes on both faces.
"""

from dataclasses import dataclass

from dryward.building.assembly import WALL, Assembly
from dryward.building.layers import Layer
from dryward.building.library import category
from dryward.building.substances import Material
from dryward.checks import begun
from dryward.language import listed, message, slug

_CLADDING, _FINISHES, _BOARDS = "roof coverings and cladding", "finishes and paints", "boards"
_WOOD, _MASONRY = ("wood and framing", "wood panels and sheathing"), "masonry and concrete"
#: What carries something: a deck, a sheathing, a wall.
_SOLID = (*_WOOD, _MASONRY)
#: Below this conductivity a material of no known category insulates [W/(m K)].
_INSULATES = 0.065
#: Claddings that also line rooms, and sheets that also lie under the insulation.
_ALSO_INSIDE = ("wood-shingles", "bevel-siding", "metal-roofing", "aluminum-sheet", "bitumen-felt")
#: Coverings of flat roofs, which may lie on their deck under the insulation.
_FLAT = ("single-ply-roofing", "built-up-roofing", "bitumen-felt")
#: Sheets that keep rain off; felt, paper and self-adhered sheets are used on both sides.
_RAIN_SHEETS = (
    "synthetic-underlayment",
    "vapor-open-underlayment",
    "vapor-open-50-perm",
    "spun-polyolefin",
    "perforated-wrap",
)
_GYPSUM = ("gypsum-board", "gypsum-board-900")
#: Finishes of rooms that are no paint and no board.
_ROOM_ONLY = ("vinyl-wallpaper", "paper-wallpaper", "acoustic-tile", "gypsum-plaster")
#: Paints and coverings of the same category that are used outside as well.
_ALSO_OUTSIDE = ("exterior-acrylic-paint", "mineral-paint", "ceramic-tile")


@dataclass(frozen=True)
class Misplaced:
    """A layer that lies on the side of the insulation where it does not belong.

    Attributes
    ----------
    layer, substance : str
        Its name in the assembly, and the name of what it is made of.
    kind : {"roof covering or cladding", "rain sheet", "vent space", "interior finish"}
    side : {"room", "weather"}
        The side it lies on.
    """

    layer: str
    substance: str
    kind: str
    side: str

    @property
    def called(self) -> str:
        """The layer as a person would point at it."""
        alike = self.substance.lower() in self.layer.lower() or self.layer.lower() in self.substance.lower()
        return self.layer if alike else f"{self.layer} ({self.substance})"


def _category(layer: Layer) -> str:
    return category(layer.substance)


def _insulates(layer: Layer) -> bool:
    if not isinstance(layer.substance, Material):
        return False
    kind = _category(layer)
    return kind in ("fibrous insulation", "foam insulation") or (
        kind in ("", "own") and layer.substance.conductivity_at(0.0) < _INSULATES
    )


def _is_finish(layer: Layer) -> bool:
    """Whether it is made for the face of a room."""
    thing = layer.substance
    return thing.id in (*_GYPSUM, *_ROOM_ONLY) or (_category(layer) == _FINISHES and thing.id not in _ALSO_OUTSIDE)


def _carries(layer: Layer) -> bool:
    """Whether something can be fixed to it: wood, masonry, cladding, boards that are not of a room."""
    return _category(layer) in (*_SOLID, _CLADDING) or (_category(layer) == _BOARDS and not _is_finish(layer))


class _Stack:
    """Layers from inside to outside, and what lies on either side of each."""

    def __init__(self, layers: tuple[Layer, ...], wall: bool) -> None:
        self.layers, self.wall = layers, wall
        self.insulated = any(_insulates(layer) for layer in layers)
        self.resistance = [
            layer.thermal_resistance
            if _insulates(layer) or (not self.insulated and _category(layer) in _SOLID)
            else 0.0
            for layer in layers
        ]

    def room_side(self, place: int) -> bool:
        """Whether most of the insulation is outside of a layer."""
        return sum(self.resistance[:place]) < sum(self.resistance[place + 1 :])

    def covering(self, place: int) -> bool:
        """A roof covering or cladding in the room."""
        if _category(self.layers[place]) != _CLADDING or not self.room_side(place):
            return False
        id = self.layers[place].substance.id
        again = any(_category(layer) == _CLADDING and not self.room_side(k) for k, layer in enumerate(self.layers))
        carried = any(_category(layer) in _SOLID for layer in self.layers[:place])
        return not ((carried and (again or id in _FLAT)) or (again and id in _ALSO_INSIDE))

    def rain_sheet(self, place: int) -> bool:
        """An underlayment or weather barrier in the room, on no deck and on no sheathing."""
        inside = self.layers[:place]
        boards = sum(_category(layer) == _BOARDS for layer in inside)
        return (
            self.layers[place].substance.id in _RAIN_SHEETS
            and self.room_side(place)
            and not any(self.resistance[:place])
            and not any(_category(layer) in _SOLID for layer in inside)
            and boards < 2  # a second board is a sheathing
        )

    def vent_space(self, place: int) -> bool:
        """Moving outdoor air on the room side of the insulation."""
        return self.layers[place].vented and self.insulated and self.room_side(place)

    def finish(self, place: int) -> bool:
        """A finish of a room out in the weather."""
        layer = self.layers[place]
        if not _is_finish(layer) or not sum(self.resistance[:place]) > sum(self.resistance[place + 1 :]):
            return False
        outside = self.layers[place + 1 :]
        covered = any(_carries(each) for each in outside)
        if self._partition():
            return False
        if layer.substance.id in _GYPSUM:
            return not covered  # otherwise it is a sheathing
        beyond = next((each for each in outside if _category(each) != _FINISHES), None)
        old_face = covered and beyond is not None and _category(beyond) in (_BOARDS, _MASONRY)
        if layer.substance.id in _ROOM_ONLY:
            return not old_face
        painted = self.layers[place - 1 : place] + self.layers[place + 1 : place + 2]
        return not (old_face or any(_carries(each) for each in painted))

    def _partition(self) -> bool:
        """Whether both faces are a room's: finishes inside, and nothing but them and sheets outside."""
        counted = [k for k, each in enumerate(self.resistance) if each]
        inside, outside = self.layers[: counted[0]], self.layers[counted[-1] + 1 :]
        return self.wall and any(map(_is_finish, inside)) and not any(map(_carries, outside))

    def found(self) -> tuple[Misplaced, ...]:
        """Everything misplaced, in the order of the layers."""
        tests = (
            ("roof covering or cladding", "room", self.covering),
            ("rain sheet", "room", self.rain_sheet),
            ("vent space", "room", self.vent_space),
            ("interior finish", "weather", self.finish),
        )
        return tuple(
            Misplaced(layer.name, layer.substance.name, kind, side)
            for place, layer in enumerate(self.layers)
            for kind, side, holds in tests
            if holds(place)
        )


def misplaced(assembly: Assembly) -> tuple[Misplaced, ...]:
    """The layers that plainly lie on the wrong side of the insulation.

    Notes
    -----
    Most of the insulation must lie beyond the layer.  Where there is none,
    wood and masonry take its place.
    """
    return _Stack(assembly.layers, assembly.slope >= WALL).found()


def warnings(assembly: Assembly) -> tuple[str, ...]:
    """What to look at again in the order of the layers, in sentences."""
    found = misplaced(assembly)
    sides = {side: [each.called for each in found if each.side == side] for side in ("room", "weather")}
    if all(sides.values()) and not _Stack(assembly.layers[::-1], assembly.slope >= WALL).found():
        room, weather = (
            message(f"building.lies-{side}", names=listed(names), count=len(names)) for side, names in sides.items()
        )
        return (message("building.turned-round", room=room, weather=weather),)
    return tuple(
        message("building.misplaced", name=begun(each.called), side=each.side, kind=slug(each.kind)) for each in found
    )
