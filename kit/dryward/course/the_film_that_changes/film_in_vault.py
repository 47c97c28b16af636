"""The scene of one film: the vault, and a large lens on the film with its gaps and the humidity at its faces."""

from __future__ import annotations

import math
from typing import Any

from dryward import language
from dryward.panels.stage import Page
from dryward.physics import steady
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Place, Scene
from dryward.units import to_si

message = language.beside(__file__)

FILM = "inner membrane"
#: Dots a minute for a fluid ounce a day; fewer than elsewhere, since an open film lets so much pass.
DOTS = 10
#: Where the lens stands, and its radius, in each shape of the scene [px].
_LENSES = {
    "wide": ((800.0, 470.0), 172.0),
    "tall": ((440.0, 468.0), 140.0),
    "post": ((440.0, 600.0), 147.0),
    "strip": ((752.0, 332.0), 138.0),
}
#: Where someone stands, of the width; nobody where there are words.
_PERSON = {"wide": 0.36, "tall": None, "post": None, "strip": None}
#: Across the lens: the film, and the gauges of humidity at its inner and its outer face.
_FILM, _GAUGES = (0.40, 0.60), ((0.19, 0.29), (0.71, 0.81))
#: Along the lens: the film, and a gauge.
_ALONG, _GAUGE = (0.02, 0.98), (0.16, 0.84)
#: Gaps in the film as it is drawn.
_GAPS = 6
#: Gaps are drawn as this share of a sheet at these permeances [kg/(s m2 Pa)], evenly on a log scale between.
_DRAWN = ((to_si(0.4, "perm"), 0.05), (to_si(13.0, "perm"), 0.7))


def gap(permeance: float) -> float:
    """The share of a sheet that is drawn as gaps."""
    (low, least), (high, most) = _DRAWN
    share = math.log(permeance / low) / math.log(high / low)
    return min(0.9, max(0.02, least + share * (most - least)))


def season(state: Any) -> str:
    """Of the sky."""
    return vault.season(state.outdoor.temperature)


def draw(scene: Scene, state: Any) -> None:
    """The vault and the lens: the film as an outline, and an empty gauge at each face."""
    scenery.vault(scene, state.roof, season(state), person_at=_PERSON[scene.shape])
    depth, _ = scenery.across(state.roof, FILM)
    (begins, ends), (middle, radius) = _FILM, _LENSES[scene.shape]
    bands = [("air", begins), ("film", ends - begins), ("fibrous", 1 - ends)]
    scenery.lens(scene, "lens", middle, radius, ("slope", 0.86, depth), bands)
    axes = scene.axes["lens"]
    for d in _FILM:
        scene.line([axes.at(0.01, d), axes.at(0.99, d)], "film-edge")
    for across in _GAUGES:
        scene.shape_of(axes.corners(_GAUGE, across), "gauge")


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs; before the bet, what is asked."""
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("room", 0.42, 0.12), ("sky", 0.52, 0.06))
    if not page.stage.shown:
        found["tags"] += _column(message("face-unknown"), message("film-unknown"), message("face-unknown"))
    return found


def _column(outer: str, film: str, inner: str) -> list[dict[str, Any]]:
    """Words beside the lens: at the outer face, at the film, at the inner face."""
    humid = "relative humidity"
    return [
        scenery.tag(outer, ("lens", 0.07, 0.76), humid, "left"),
        scenery.tag(film, ("lens", 0.0, 0.5), "permeance", "left"),
        scenery.tag(inner, ("lens", 0.07, 0.24), humid, "left"),
    ]


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The film with its gaps, the humidity at its faces, the vapor, and the water where some gathers."""
    system, profile = page.unit_system, state.profile
    marks = scenery.sheet("permeance", "lens", _ALONG, _FILM, gap(state.permeance), _GAPS)
    marks += [filled("lens", _GAUGE, humidity, across) for humidity, across in zip(state.faces, _GAUGES, strict=True)]
    inner, outer = (message("face-has", humidity=page.show(each, "relative humidity")) for each in state.faces)
    film = message("film-is", permeance=page.show(state.permeance, "permeance"), state=state.does)
    flows = through_gaps(profile, "lens", [(s, *_chord(s)) for s in scenery.gaps(_ALONG, _GAPS)])
    parts = [{"marks": marks, "tags": _column(outer, film, inner), "flows": flows}]
    parts.append(vault.vapor(profile, state.roof, DOTS))
    if profile.wet_planes:
        parts.append(vault.water(profile, state.roof, system, lens=False))
    else:
        text = message("vapor-goes", **passes(page, profile))
        parts.append({"tags": [scenery.tag(text, ("slope", 0.4, 1.0), "vapor pressure", "over", minor=True)]})
    return scenery.together(parts)


def passes(page: Page, profile: steady.Profile) -> dict[str, Any]:
    """Which way vapor passes the film, and how much in a day."""
    flux = float(profile.vapor_flux_in)
    return {"outward": flux > 0, "amount": vault.a_day(flux, page.unit_system)}


def _chord(s: float) -> tuple[float, float]:
    """Where a way across the lens begins and ends."""
    far = 0.93 * math.sqrt(0.25 - (s - 0.5) ** 2)
    return 0.5 - far, 0.5 + far


def filled(axes: str, gauge: tuple[float, float], humidity: float, across: tuple[float, float]) -> dict[str, Any]:
    """A gauge, filled up to a humidity."""
    start, end = gauge
    return scenery.band("relative humidity", axes, (start, start + humidity * (end - start)), across)


def through_gaps(profile: steady.Profile, axes: str, ways: list[tuple[float, float, float]]) -> list[dict[str, Any]]:
    """Dots through the gaps of a film, which together are its flux: each way is where along, from where, to where."""
    flux = float(profile.vapor_flux_in)
    # Not each gap alike, or the dots would march in rows.
    shares = [0.5 + (0.5 + k * 0.618034) % 1 for k in range(len(ways))]
    flows = []
    for (s, inner, outer), share in zip(ways, shares, strict=True):
        ends: tuple[Place, Place] = ((axes, s, inner), (axes, s, outer))
        rate = vault.dots(flux, DOTS) * share / sum(shares)
        flows.append(scenery.flow(rate, *(ends if flux > 0 else ends[::-1])))
    return flows
