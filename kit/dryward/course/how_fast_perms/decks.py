"""The scene of a deck: the vault with a lens on the deck, bare or with a roll of underlayment on it."""

from __future__ import annotations

from typing import Any

from dryward import language
from dryward.course.how_fast_perms.row import DOTS
from dryward.course.how_fast_perms.shelf import ROOM, SHELF, InRoof, in_roof
from dryward.panels.stage import Page
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene

message = language.beside(__file__)

DECK = "outer layer"
#: Where the lens stands, and its radius, in each shape [px].
_LENSES = {
    "wide": ((800.0, 470.0), 150.0),
    "tall": ((440.0, 468.0), 130.0),
    "post": ((430.0, 618.0), 135.0),
    "strip": ((752.0, 348.0), 112.0),
}
_PERSON = {"wide": 0.36, "tall": None, "post": None, "strip": None}
#: What the lens shows from the room outward, with the shares of it; a roll has a share of its own.
_BANDS, _ROLL = (("fibrous", 0.44), ("board", 0.26)), 0.1
_FACE = 0.44


def of(state: Any) -> InRoof:
    """The roof that a state of the page stands for."""
    return in_roof(state.film, state.thing)


def draw(scene: Scene, state: Any) -> None:
    """The vault in winter; in the lens fill, deck, the roll where there is one, and the vent space."""
    found = of(state)
    scenery.vault(scene, found.roof, "winter", person_at=_PERSON[scene.shape])
    depth, _ = scenery.across(found.roof, DECK)
    bands = list(_BANDS) if SHELF[state.thing].panel else [*_BANDS, ("membrane", _ROLL)]
    bands.append(("vent", 1 - sum(share for _, share in bands)))
    middle, radius = _LENSES[scene.shape]
    scenery.lens(scene, "lens", middle, radius, ("slope", 0.86, depth), bands)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs; of a panel what is stamped on it."""
    found = vault.airs(ROOM, of(state).outdoor, page.unit_system, ("room", 0.42, 0.12), ("sky", 0.5, 0.06))
    if SHELF[state.thing].panel:
        stamped = message("stamped", permeance=vault.perms(SHELF[state.thing].permeance, page.unit_system))
        found["tags"].append(scenery.tag(stamped, ("lens", 0.5, 0.57), "permeance"))
    return found


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The water at the deck, or how humid its face is, the vapor, and the perms as damp as it is."""
    found, system = of(state), page.unit_system
    profile, panel = found.profile, SHELF[state.thing].panel
    parts = [vault.vapor(profile, found.roof, DOTS)]
    if profile.wet_planes:
        worst = max(profile.wet_planes, key=lambda plane: plane.rate)
        frost = bool(worst.temperature < 0)
        marks = vault.water(profile, found.roof, system, lens=False)["marks"]
        marks.append(scenery.drops(("lens", 0.06, _FACE), ("lens", 0.94, _FACE), vault.much(worst), frost))
        # At both faces of the deck together, as the answer tells it.
        text = language.message("pictures.gathers-here", frost=frost, amount=vault.a_day(profile.gain, system))
        parts.append({"marks": marks, "tags": [scenery.tag(text, ("slope", 0.45, 1.0), "wet", "over")]})
    else:
        humidity = float(profile.relative_humidity[profile.face(DECK, 0)])
        text = message("no-frost", humidity=page.show(humidity, "relative humidity"))
        parts.append({"tags": [scenery.tag(text, ("slope", 0.45, 1.0), "", "over")]})
    held = vault.perms(found.deck if panel else found.roll, page.unit_system)
    text = message("damp-perms" if panel else "roll-perms", permeance=held)
    parts.append({"tags": [scenery.tag(text, ("lens", 0.5, 0.88), "permeance")]})
    return scenery.together(parts)
