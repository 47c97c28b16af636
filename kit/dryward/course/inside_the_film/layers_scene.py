"""The scene of a film with R on both sides: the vault, and a large lens on service cavity, film and fill."""

from __future__ import annotations

from typing import Any

from dryward import language, units
from dryward.course.the_film_that_changes.film_in_vault import DOTS, filled, gap, through_gaps
from dryward.panels.stage import Page
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.units import to_si

message = language.beside(__file__)

FILM, CAVITY = "inner membrane", "service cavity"
#: Where the lens stands, and its radius, in each shape of the scene [px].
_LENSES = {
    "wide": ((790.0, 468.0), 178.0),
    "tall": ((430.0, 470.0), 142.0),
    "post": ((430.0, 598.0), 156.0),
    "strip": ((748.0, 330.0), 140.0),
}
#: Across the lens: the drywall, and how thick the film is drawn.
_DRYWALL, _FILM = (0.05, 0.11), 0.09
#: The cavity takes so much of the lens when empty, and at the depth of a full batt [m].
_CAVITY, _DEEP = (0.27, 0.5), to_si(8.0, "in")
#: The deepest roof of the beats, of which the others are drawn to scale: the one whose batt lies outside [m].
_DEEPEST = to_si(22.5, "in")
#: Gauges on the room side of the film: how far from it each begins, and how wide it is.
_HUMIDITY, _WARMTH, _WIDE = 0.085, 0.18, 0.065
#: Along the lens: the film, a gauge, and a cable.
_ALONG, _GAUGE, _CABLES = (0.02, 0.98), (0.2, 0.82), (0.3, 0.72)
#: The ends of the gauge of temperature [degC].
_COLD, _WARM = to_si(32.0, "degF"), to_si(75.0, "degF")
_GAPS = 6


def film_at(state: Any) -> tuple[float, float]:
    """Where the film lies across the lens: the cavity is drawn the deeper the more R it has."""
    deep = state.roof.layer(CAVITY).drawn_thickness
    least, most = _CAVITY
    start = _DRYWALL[1] + least + (most - least) * min(1.0, max(0.0, deep - state.empty) / (_DEEP - state.empty))
    return start, start + _FILM


def draw(scene: Scene, state: Any) -> None:
    """The vault, and in the lens drywall, cavity with its cables, the outline of the film, and the fill."""
    scenery.vault(scene, state.roof, vault.season(state.outdoor.temperature), person_at=None, deepest=_DEEPEST)
    depth, _ = scenery.across(state.roof, FILM)
    middle, radius = _LENSES[scene.shape]
    start, end = film_at(state)
    inner, outer = _DRYWALL
    filling = "fibrous" if state.filled else "air"
    bands = [("air", inner), ("board", outer - inner), (filling, start - outer), ("film", _FILM), ("fibrous", 1 - end)]
    scenery.lens(scene, "lens", middle, radius, ("slope", 0.86, depth), bands)
    axes = scene.axes["lens"]
    for d in (start, end):
        scene.line([axes.at(0.01, d), axes.at(0.99, d)], "film-edge")
    for s in _CABLES:
        scenery.cable(scene, axes.at(s, outer + 0.065), 0.085 * radius)
    for away in (_HUMIDITY, _WARMTH):
        scene.shape_of(axes.corners(_GAUGE, (start - away, start - away + _WIDE)), "gauge")
    scene.circle(axes.at(_GAUGE[0] - 0.02, start - _WARMTH + _WIDE / 2), 0.085 * radius, "bulb")


def r_value(page: Page, resistance: float) -> str:
    """An R as the slider has it, without a tail of zeros."""
    unit = units.shown_unit("thermal resistance", page.unit_system).name
    number = round(units.from_si(resistance, unit), 1 if page.unit_system == "us" else 2)
    return units.with_unit(units.number(number), unit)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs, and how much R is on each side of the film."""
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("room", 0.42, 0.12), ("sky", 0.5, 0.05))
    inside, outside = (r_value(page, each) for each in (state.inside, state.outside))
    text = message("r-on-both-sides", inside=inside, outside=outside)
    found["tags"].append(scenery.tag(text, ("sky", 0.5, 0.19)))
    if not page.stage.shown:
        found["tags"] += _column(message("film-unknown"), message("face-unknown"))
    return found


def _column(film: str, humid: str, warm: str = "") -> list[dict[str, Any]]:
    """Words beside the lens: what the film does, how humid its room face is, how warm."""
    tags = [
        scenery.tag(film, ("lens", 0.03, 0.68), "permeance", "left"),
        scenery.tag(humid, ("lens", 0.0, 0.46), "relative humidity", "left"),
    ]
    return tags + ([scenery.tag(warm, ("lens", 0.03, 0.24), "temperature", "left")] if warm else [])


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The film with its gaps, how warm and humid its room face is, the vapor, and the water where some gathers."""
    start, end = film_at(state)
    permeance = state.profile.permeance[FILM]
    marks = scenery.sheet("permeance", "lens", _ALONG, (start, end), gap(permeance), _GAPS)
    share = min(1.0, max(0.0, (state.temperature - _COLD) / (_WARM - _COLD)))
    humid = (start - _HUMIDITY, start - _HUMIDITY + _WIDE)
    warm = (start - _WARMTH, start - _WARMTH + _WIDE)
    marks.append(filled("lens", _GAUGE, state.faces[0], humid))
    marks.append(scenery.band("temperature", "lens", (_GAUGE[0], _GAUGE[0] + share * (_GAUGE[1] - _GAUGE[0])), warm))
    words = _column(
        message("film-is", permeance=page.show(permeance, "permeance"), state=state.does),
        message("face-has", humidity=page.show(state.faces[0], "relative humidity")),
        message("face-at", temperature=page.show(state.temperature, "temperature", 0)),
    )
    ways = [(s, start - 0.12, 0.86) for s in scenery.gaps(_ALONG, _GAPS)[1:-1]]
    flows = through_gaps(state.profile, "lens", ways)
    parts = [{"marks": marks, "tags": words, "flows": flows}, vault.vapor(state.profile, state.roof, DOTS)]
    parts.append(vault.water(state.profile, state.roof, page.unit_system, lens=False, in_all=True))
    return scenery.together(parts)
