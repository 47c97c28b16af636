"""The scene of a gap: a ceiling cut through and laid flat, its film whole or with a strip missing."""

from __future__ import annotations

from typing import Any

from dryward import language
from dryward.course.how_fast_perms.row import DOTS
from dryward.panels.stage import Page
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Axes, Scene
from dryward.units import amounts

message = language.beside(__file__)

#: Across the cut, from the room (0) to the sky (1): what it is drawn as, and where it ends.
_BANDS = (("room", 0.22), ("board", 0.29), ("air", 0.42), ("fibrous", 0.82))
_FILM, _OUTER, _ENDS = (0.42, 0.465), 0.82, (0.06, 0.94)
_ALONG = (0.0, 1.0)


def draw(scene: Scene, state: Any) -> None:
    """Room, drywall, film, fill and the open outer sheet, under a winter sky."""
    wide, high = scene.size
    scenery.sky(scene, "winter")
    axes = scene.axes["cut"] = Axes((0.0, high), (wide, 0.0), (0.0, -0.86 * high))
    scenery.bands(scene, axes, _ALONG, _BANDS)
    scene.line([axes.at(0, _OUTER), axes.at(1, _OUTER)], "membrane-open")
    low, high_edge = 0.5 - 0.5 * state.gap, 0.5 + 0.5 * state.gap
    for start, end in ((0.0, low), (high_edge, 1.0)):
        scene.shape_of(axes.corners((start, end), _FILM), "layer-membrane")


def given(page: Page, state: Any) -> dict[str, Any]:
    """The layers with their perms."""
    places = ((0.255, state.permeances[0]), (_FILM[1] + 0.035, state.film), (_OUTER, state.outer))
    names = ("row-drywall", "row-film", "row-sheet")
    return {
        "tags": [
            scenery.tag(
                message(name, permeance=vault.perms(permeance, page.unit_system)),
                ("cut", 0.24, d),
                "permeance",
                minor=name != "row-film",
            )
            for name, (d, permeance) in zip(names, places, strict=True)
        ]
    }


def without_film(state: Any) -> float:
    """What would pass with no film at all [kg/(s m2)]."""
    return float(state.push / (1 / state.permeances[0] + 1 / state.outer))


def shows(page: Page, state: Any) -> dict[str, Any]:
    """Vapor through the film and through the gap, each at its own rate, and both together in words."""
    drywall = state.permeances[0]
    through_gap = state.flow * state.gap * drywall / state.inner
    start, end = _ENDS
    sides = [(0.25 - 0.25 * state.gap, 0.5 - 0.5 * state.gap), (0.75 + 0.25 * state.gap, 0.5 - 0.5 * state.gap)]
    flows = [
        scenery.flow(
            vault.dots((state.flow - through_gap) / 2, DOTS), ("cut", s, start), ("cut", s, end), spread=0.85 * wide
        )
        for s, wide in sides
    ]
    if state.gap:
        flows.append(
            scenery.flow(vault.dots(through_gap, DOTS), ("cut", 0.5, start), ("cut", 0.5, end), spread=0.8 * state.gap)
        )
    text = message("a-day", amount=amounts.ounces(amounts.a_day(state.flow, page.unit_system), page.unit_system))
    return {"tags": [scenery.tag(text, ("cut", 0.5, 1.0), "vapor pressure", "under")], "flows": flows}
