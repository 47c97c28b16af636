"""A bay of the vault with a hole in its ceiling, and under it two jars: what the air leaves, and what vapor brings."""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import Any

from dryward import building
from dryward.building import Assembly, FixedMembrane, Layer
from dryward.course.the_hole_and_the_ceiling.givens import CEILING
from dryward.physics.airleak import orifice_flow, slot_flow
from dryward.pictures import instruments, scenery
from dryward.pictures.scenery import Scene
from dryward.units import to_si

#: The boards of a ceiling: how thick they are, how wide each is laid, and how wide its joint is open [m].
THICK, WIDE, JOINT = to_si(0.75, "in"), to_si(5.25, "in"), to_si(1 / 64, "in")
#: The hole that others are measured by, and one that is next to none [m2].
INCH, PINHOLE = to_si(1.0, "in2"), to_si(0.01, "in2")
#: A ceiling that lets less through has a film behind it [kg/(s m2 Pa)].
FILMED = to_si(3.0, "perm")
#: Where the hole is along the slope, and half its drawn width for a square inch.
HOLE, _HALF = 0.76, 0.014
#: A jar to its brim, and one mark of it, by unit system [kg of water].
JAR = 14.0
MARK = {"us": 1000 * to_si(2.0, "quart"), "si": 2.0}
#: Of the two jars: left, top, width and height in each shape, as shares of the scene.
_JARS = {
    "wide": ((0.33, 0.69), (0.71, 0.69), 0.085, 0.25),
    "tall": ((0.3, 0.72), (0.7, 0.72), 0.12, 0.22),
    "post": ((0.27, 0.74), (0.7, 0.74), 0.13, 0.2),
    "strip": ((0.33, 0.7), (0.72, 0.7), 0.075, 0.22),
}
#: Boards that are drawn across the bay.
_BOARDS = 14


@cache
def roof(film: bool, boards: bool) -> Assembly:
    """The vault: drywall or boards, a film or none, fill and OSB."""
    built = building.preset("vented-vault-osb")
    dropped = {"service cavity"} | (set() if film else {"inner membrane"}) | ({"paint"} if boards else set())
    built = dataclasses.replace(built, layers=tuple(each for each in built.layers if each.name not in dropped))
    if not boards:
        return built
    laid = Layer(building.material("wood-boards"), THICK, "gypsum board")
    place = built.index("gypsum board")
    return dataclasses.replace(built, layers=(*built.layers[:place], laid, *built.layers[place + 1 :]))


def through(film: bool, boards: bool = False) -> dict[str, tuple[float, float]]:
    """Where each layer begins and ends on the way through, by its name."""
    return {layer.name: (a, b) for layer, _, a, b in scenery.layers_through(roof(film, boards))}


def filmed(state: Any) -> bool:
    """Whether a film is behind the ceiling of a state."""
    return bool(state.inner < FILMED)


def draw(scene: Scene, state: Any) -> None:
    """The bay with its jars, "air-jar" under the hole and "vapor-jar" under the ceiling."""
    scenery.vault(scene, roof(filmed(state), False), "winter", person_at=0.52)
    wide, high = scene.size
    under_ceiling, under_hole, width, height = _JARS[scene.shape]
    for name, (left, top) in (("vapor-jar", under_ceiling), ("air-jar", under_hole)):
        x, y = left * wide, top * high
        instruments.jar(scene, name, (x, y, x + width * wide, y + height * high))


def draw_boards(scene: Scene, state: Any) -> None:
    """The same bay under boards, each with its joint."""
    scenery.vault(scene, roof(filmed(state), True), "winter", person_at=0.62)
    first, last = through(filmed(state), True)["gypsum board"]
    slope = scene.axes["slope"]
    for k in range(1, _BOARDS):
        scene.line([slope.at(k / _BOARDS, first - 0.004), slope.at(k / _BOARDS, last + 0.004)], "joint")


def hole(area: float, film: bool) -> list[dict[str, Any]]:
    """The hole, as wide as its area has it; nothing of one too small to see."""
    half = _HALF * (area / INCH) ** 0.5
    if half < 0.2 * _HALF:
        return []
    layers = through(film)
    end = layers["inner membrane" if film else "gypsum board"][1]
    return [scenery.band("opening", "slope", (HOLE - half, HOLE + half), (-0.012, end + 0.012))]


def joints(area: float) -> float:
    """Length of all joints of so much ceiling of boards [m]."""
    return area / WIDE


def as_hole(push: float) -> float:
    """The one hole that leaks as much at a push as the joints of the lesson's piece of ceiling [m2]."""
    return float(slot_flow(push, JOINT, THICK, joints(CEILING)) / orifice_flow(push, 1.0))


def series(*permeances: float) -> float:
    """Layers in a row [kg/(s m2 Pa)]."""
    return 1.0 / sum(1.0 / each for each in permeances)


#: Paint and drywall of the lesson, and the film that may be behind it [kg/(s m2 Pa)].
DRYWALL, FILM = series(to_si(40.0, "perm"), to_si(7.0, "perm")), to_si(1.0, "perm")
BOARDS = building.material("wood-boards").permeability_at(0.5) / THICK
#: A sheet that lets next to no vapor through.
PLASTIC = FixedMembrane(to_si(0.06, "perm")).permeance(0.5, 0.5)
