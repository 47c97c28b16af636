"""Things off the shelf, each with what its label says by dry and by wet cup; and the roof that one of them lies in."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from dryward.building import Assembly, FixedMembrane, Layer, Material, library, preset
from dryward.building.library import DRY_CUP, WET_CUP
from dryward.physics import steady
from dryward.units import to_si
from dryward.weather import Air

#: A wood panel's thickness: 7/16 in.
PANEL = to_si(7 / 16, "in")
ROOM = Air(to_si(70.0, "degF"), 0.4)
#: Outdoors over a bare deck, and over one with a roll on it.
OVER_DECK, OVER_ROLL = Air(to_si(20.0, "degF"), 0.8), Air(to_si(30.0, "degF"), 0.8)
#: The deck that the rolls lie on.
DECK = "plywood"


@dataclass(frozen=True)
class Thing:
    """What lies outside: a row of the library, and the humidity that its perms are told for [-]."""

    row: str
    humidity: float = DRY_CUP

    @property
    def permeance(self) -> float:
        """By that cup [kg/(s m2 Pa)]."""
        return at_humidity(self.row, self.humidity)

    @property
    def panel(self) -> bool:
        """Whether it is a wood panel, and not a sheet."""
        return isinstance(library.substance(self.row), Material)


def at_humidity(row: str, humidity: float) -> float:
    """Permeance of a row of the library at a mean humidity [kg/(s m2 Pa)], of a panel by its thickness."""
    made = library.substance(row)
    if isinstance(made, Material):
        return float(made.permeability_at(humidity)) / PANEL
    return float(library.membrane(row).permeance(humidity, humidity))


#: Option -> thing; felt and panels by both cups, and what is alike by both once.
SHELF = {
    "one-perm": Thing("teaching-fixed-1-perm"),
    "open-sheet": Thing("vapor-open-50-perm"),
    "plywood-dry": Thing("plywood"),
    "plywood-wet": Thing("plywood", WET_CUP),
    "osb-dry": Thing("osb"),
    "osb-wet": Thing("osb", WET_CUP),
    "felt-dry": Thing("asphalt-felt-15"),
    "felt-wet": Thing("asphalt-felt-15", WET_CUP),
    "synthetic": Thing("synthetic-underlayment"),
    "self-adhered": Thing("self-adhered-underlayment"),
}


@dataclass(frozen=True)
class InRoof:
    """A roof with one of them on a winter day."""

    roof: Assembly
    outdoor: Air
    profile: steady.Profile

    @property
    def deck(self) -> float:
        """Permeance of the deck as damp as it is [kg/(s m2 Pa)]."""
        return at_humidity(self.roof.layer("outer layer").material.id, self._mean("outer layer"))

    @property
    def roll(self) -> float:
        """The same of what lies on it."""
        mean = self._mean("underlayment")
        return float(self.roof.layer("underlayment").membrane.permeance(mean, mean))

    def _mean(self, layer: str) -> float:
        faces = [self.profile.face(layer, side) for side in (0, 1)]
        return float(self.profile.relative_humidity[faces].mean())


@cache
def roof(film: float, deck: str, roll: str = "") -> Assembly:
    """The teaching vault with a film, a deck of the library under the vent space, and a roll on it."""
    built = preset("vented-vault-osb").replace("inner membrane", FixedMembrane(film))
    at, layers = built.index("outer layer"), list(built.layers)
    layers[at] = Layer(library.material(deck), PANEL, "outer layer")
    if roll:
        layers.insert(at + 1, Layer(library.membrane(roll), None, "underlayment"))
    return replace(built, layers=tuple(layers))


@cache
def on_a_day(film: float, deck: str, roll: str, outdoor: Air) -> InRoof:
    """Such a roof, and what a winter day makes of it."""
    built = roof(film, deck, roll)
    return InRoof(built, outdoor, steady.profile(built, ROOM, outdoor))


def in_roof(film: float, outer: str) -> InRoof:
    """A thing of the shelf in the roof: a panel as its deck, a sheet as a roll on the plywood deck."""
    thing = SHELF[outer]
    if thing.panel:
        return on_a_day(film, thing.row, "", OVER_DECK)
    return on_a_day(film, DECK, thing.row, OVER_ROLL)


def by_the_stamp(film: float, outer: str) -> steady.Profile:
    """The same deck if its dry-cup number held, wet or not."""
    fixed = replace(library.material(SHELF[outer].row), vapor_permeability=SHELF[outer].permeance * PANEL)
    built = roof(film, SHELF[outer].row).replace("outer layer", fixed)
    return steady.profile(built, ROOM, OVER_DECK)
