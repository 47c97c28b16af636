"""The scenes of July: the vault in two seasons, wet wood in spring, an aired crawlspace."""

from __future__ import annotations

from typing import Any

from dryward import air, building, language, units
from dryward.panels.stage import Page
from dryward.physics import steady
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.teaching.vault import OUTER
from dryward.units import amounts, to_si

message = language.beside(__file__)

#: Dots a minute for a fluid ounce a day: few, since an open roof lets so much pass in July.
DOTS = 10
#: An arrow of full width stands for this push [Pa].
_WIDEST = 1600.0
#: The glass: what it shows of an inner layer, from the room outward; the last but one ends at `vault.LENS_FACE`.
_SEEN = {"board": 0.4, "air": 0.55, "membrane": 0.35}
_BEYOND = 1.35
#: Where the glass stands, and its radius, in each shape [px]; where someone stands, of the width.
_LENSES = {
    "wide": ((846.0, 486.0), 118.0),
    "tall": ((478.0, 486.0), 96.0),
    "post": ((466.0, 634.0), 112.0),
    "strip": ((790.0, 362.0), 84.0),
}
_PERSON = {"wide": 0.5, "tall": 0.54, "post": 0.52, "strip": 0.56}
#: The air conditioner: its upper left as shares of width and height, and how wide it is.
_COOLER = {
    "wide": (0.17, 0.86, 0.11),
    "tall": (0.16, 0.86, 0.14),
    "post": (0.16, 0.88, 0.16),
    "strip": (0.655, 0.6, 0.11),
}


def cooled(state: Any) -> bool:
    """Whether an air conditioner runs."""
    return bool(
        vault.season(state.outdoor.temperature) == "summer" and state.indoor.temperature < state.outdoor.temperature
    )


def signature(state: Any) -> Any:
    """What of a state stands still."""
    return *vault.signature(state), cooled(state)


def inner_name(roof: building.Assembly) -> str:
    """The layer at whose outer face vapor from outdoors is stopped first: the film, or the drywall."""
    names = [layer.name for layer in roof.layers]
    return "inner membrane" if "inner membrane" in names else "gypsum board"


def draw(scene: Scene, state: Any) -> None:
    """The vault in its season, the air conditioner where one runs, and a glass on the inner layer."""
    scenery.vault(scene, state.roof, vault.season(state.outdoor.temperature), person_at=_PERSON[scene.shape])
    if cooled(state):
        across, down, wide = _COOLER[scene.shape]
        scenery.air_conditioner(scene, (across * scene.size[0], down * scene.size[1]), wide * scene.size[0])
    name, found = inner_name(state.roof), scenery.layers_through(state.roof)
    number = next(k for k, (layer, *_) in enumerate(found) if layer.name == name)
    kinds = [kind for layer, kind, *_ in found[: number + 1] if layer.name != "paint"]
    shares = [_SEEN[kind] for kind in kinds]
    # However many they are, the face stands where drops are drawn.
    fit = (2.65 - _BEYOND) / sum(shares)
    layer = found[number][0]
    drawn = [scenery.membrane_kind(layer) if kind == "membrane" else kind for kind in kinds]
    bands = [*((kind, share * fit) for kind, share in zip(drawn, shares, strict=True)), (found[number + 1][1], _BEYOND)]
    middle, radius = _LENSES[scene.shape]
    scenery.lens(scene, "lens", middle, radius, ("slope", 0.86, found[number][3]), bands)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs, and what the inner layer is."""
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("room", 0.44, 0.5), ("sky", 0.42, 0.08))
    name = message("inner-layer", inner=state.inner, system=page.unit_system)
    found["tags"].append(scenery.tag(name, ("lens", 0.5, 0.0), "", "under", minor=True))
    return found


def shows(page: Page, state: Any) -> dict[str, Any]:
    """Which way the push is, vapor on its way, water where some gathers, else the most humid face."""
    profile, system = state.profile, page.unit_system
    parts = [_push(page, state), vault.vapor(profile, state.roof, DOTS)]
    if profile.wet_planes:
        parts.append(_water(state, system))
    else:
        parts.append({"tags": [_most_humid(page, profile, state.roof)]})
    return scenery.together(parts)


def wet_at(state: Any) -> str:
    """Where most water gathers: at the back of the inner layer, elsewhere ("deck"), or nowhere ("none")."""
    worst = max(state.profile.wet_planes, key=lambda plane: plane.rate, default=None)
    if worst is None:
        return "none"
    return "back" if worst.inner_layer == inner_name(state.roof) else "deck"


def _water(state: Any, system: str) -> dict[str, Any]:
    """Water where it gathers, in the glass if it is there, and how much in words beside it."""
    at_back = wet_at(state) == "back"
    found = vault.water(state.profile, state.roof, system, lens=at_back)
    if at_back:
        worst = max(state.profile.wet_planes, key=lambda plane: plane.rate)
        d = scenery.through(state.roof, float(worst.depth))
        found["tags"] = [{**each, "at": ["slope", 0.28, d], "side": "under", "minor": False} for each in found["tags"]]
    return found


def pressure(page: Page, state: Any) -> str:
    """The push in words, whichever way it goes."""
    return page.show(abs(state.push), "pressure")


def _push(page: Page, state: Any) -> dict[str, Any]:
    """An arrow on the side where the vapor pressure is higher, toward the roof."""
    inward = state.push > 0
    ends = (("slope", 0.2, 1.85), ("slope", 0.2, 1.12)) if inward else (("slope", 0.2, -0.68), ("slope", 0.2, -0.08))
    # Below its arrow, beside the glass, where there is room.
    side = "right" if inward or page.narrow else "under"
    text = message("push-is", inward=inward, push=pressure(page, state))
    return {
        "marks": [scenery.arrow("vapor pressure", *ends, min(1.0, abs(state.push) / _WIDEST))],
        "tags": [scenery.tag(text, ends[0], "vapor pressure", side)],
    }


def most_humid(profile: steady.Profile) -> float:
    """The highest relative humidity within the roof [-]."""
    return float(profile.relative_humidity[profile.wettest])


def _most_humid(page: Page, profile: steady.Profile, roof: building.Assembly) -> dict[str, Any]:
    humidity = page.show(most_humid(profile), "relative humidity")
    text = message(
        "most-humid", humidity=humidity, state=language.message("verdict.state", state=profile.verdict.state)
    )
    at = ("slope", 0.62, scenery.through(roof, float(profile.depth[profile.wettest])))
    return scenery.tag(text, at, "relative humidity", "over")


# --- spring: a wet deck that dries ------------------------------------------------------


#: Water that a leak left in the deck [kg/m2]: 7 to 8 points of the moisture of 7/16 in. of OSB.
LEAK = 0.5


def leaked(state: Any) -> building.Assembly:
    """The roof whose deck got wet: the vented one with OSB over its insulation."""
    return state.roof.replace(OUTER, building.preset("vented-vault-osb").layer(OUTER))


def days(state: Any) -> int:
    """Days of spring until that water is gone, at the pace of a wet face."""
    return round(LEAK / (state.spring.total * units.DAY))


def draw_wet_deck(scene: Scene, state: Any) -> None:
    """The same vault with a deck of OSB, in spring, and a glass on the deck."""
    vault.draw(scene, leaked(state), "mild", OUTER)


def given_wet_deck(page: Page, state: Any, told: str) -> dict[str, Any]:
    """The two airs of spring, and the deck that is wet."""
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("room", 0.44, 0.55), ("sky", 0.42, 0.08))
    d, _ = scenery.across(leaked(state), OUTER)
    ends = (("slope", 0.03, d), ("slope", 0.97, d))
    lens = (("lens", 0.08, vault.LENS_FACE), ("lens", 0.92, vault.LENS_FACE))
    found["marks"] = [scenery.drops(*ends, 0.8), scenery.drops(*lens, 0.8)]
    found["tags"].append(scenery.tag(told, ("slope", 0.45, 1.0), "wet", "over", minor=True))
    return found


def shows_wet_deck(page: Page, state: Any) -> dict[str, Any]:
    """Vapor from the deck to both sides, and how many days that takes."""
    d, _ = scenery.across(leaked(state), OUTER)
    flows, tags = [], []
    ways = (("in", state.spring.inward, -0.45), ("out", state.spring.outward, 1.3))
    for way, flux, end in ways:
        rate = vault.dots(flux, DOTS)
        if flux > 0 and rate > 0.01:
            flows.append(scenery.flow(rate, ("slope", 0.5, d), ("slope", 0.5, end), spread=0.9))
        amount = vault.a_day(max(flux, 0.0), page.unit_system)
        at = ("slope", 0.14, -0.12) if way == "in" else ("slope", 0.1, 1.12)
        tags.append(
            scenery.tag(message("dries", way=way, amount=amount), at, "drying", "under" if way == "in" else "over")
        )
    tags.append(scenery.tag(message("dry-in", days=days(state)), ("lens", 0.5, 1.0), "drying", "over"))
    return {"flows": flows, "tags": tags}


# --- air: a crawlspace that is aired ---------------------------------------------------------

#: The ground under a house in summer [degC]; common practice, no source.
GROUND = to_si(62.0, "degF")
#: So much outdoor air, as dry air at the ground's warmth [m3], by unit system.
VOLUME = {"us": to_si(1000.0, "ft3"), "si": 30.0}
#: This much left behind, or taken up, is drawn as much [m3].
_MUCH = to_si(6.0, "fl oz")


def at_ground(outdoor: Any) -> float:
    """What the relative humidity of outdoor air would be at the ground [-]; over 1 water gathers."""
    return float(air.relative_humidity(GROUND, outdoor.vapor_pressure))


def leaves(outdoor: Any, system: str) -> float:
    """Water that so much outdoor air leaves at the ground [m3]; below 0 it can take up so much."""
    saturated = float(air.saturation_vapor_pressure(GROUND))
    share = float(air.humidity_ratio(saturated))
    weight = VOLUME[system] * float(air.vapor_density(GROUND, saturated)) / share
    apart = float(air.humidity_ratio(outdoor.vapor_pressure)) - share
    return weight * apart / units.WATER_DENSITY


def draw_crawlspace(scene: Scene, state: Any) -> None:
    """A room over a crawlspace whose vents are open."""
    scenery.crawlspace(scene, vents=True)


def given_crawlspace(page: Page, state: Any) -> dict[str, Any]:
    """The air that comes in, and the ground."""
    temperature, humidity = vault.told(state.outdoor.temperature, state.outdoor.relative_humidity, page.unit_system)
    ground = page.show(GROUND, "temperature", 0)
    return {
        "tags": [
            scenery.tag(
                message("air-comes-in", temperature=temperature, humidity=humidity),
                ("vent-left", 1.6, 0.5),
                "",
                "right",
            ),
            scenery.tag(message("ground-is", temperature=ground), ("crawlspace", 0.5, -0.5)),
        ]
    }


def shows_crawlspace(page: Page, state: Any) -> dict[str, Any]:
    """Drops on the ground, or vapor that leaves it, and how humid the air gets there."""
    left = leaves(state.outdoor, page.unit_system)
    share = min(1.0, abs(left) / _MUCH)
    arrows = [
        scenery.arrow("air flow", (name, a, 0.5), (name, b, 0.5), 0.35)
        for name, a, b in (("vent-left", -1.7, 1.5), ("vent-right", -0.5, 2.7))
    ]
    wet = left > 0
    if wet:
        arrows.append(scenery.band("wet", "crawlspace", (0.0, 1.0), (-0.07, 0.0)))
        arrows.append(scenery.drops(("crawlspace", 0.05, 0.06), ("crawlspace", 0.95, 0.06), share))
    else:
        arrows += [
            scenery.arrow("drying", ("crawlspace", s, 0.02), ("crawlspace", s, 0.5), 0.6 * share)
            for s in (0.2, 0.5, 0.8)
        ]
    text = message("at-the-ground", wet=wet, humidity=page.show(at_ground(state.outdoor), "relative humidity"))
    return {"marks": arrows, "tags": [scenery.tag(text, ("crawlspace", 0.5, 1.0), "wet" if wet else "drying", "over")]}


def so_much(state: Any, system: str) -> str:
    """What so much outdoor air leaves or takes up, in words."""
    return amounts.water(abs(leaves(state.outdoor, system)), system)
