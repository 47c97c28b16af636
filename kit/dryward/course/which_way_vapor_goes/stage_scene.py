"""The scenes of which way vapor goes: two airs with a ceiling or a floor between, their pressures and the push."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from dryward import building, language, units
from dryward.course.which_way_vapor_goes.questions import ALMOST_NONE
from dryward.panels.stage import Page, Stage
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Axes, Point, Scene
from dryward.units import amounts, to_si
from dryward.weather import Air

message = language.beside(__file__)

_ROOF = building.preset("vented-vault")
#: The ceiling as it is drawn: nothing over the drywall that holds vapor back.
CEILING = replace(
    _ROOF,
    layers=tuple(
        layer for layer in _ROOF.layers if layer.name not in ("service cavity", "inner membrane", "outer layer")
    ),
)
#: What alone is counted of it: the painted drywall, of the library's rows [kg/(s m2 Pa)].
DRYWALL = 1.0 / sum(_ROOF.layer(name).vapor_resistance for name in ("paint", "gypsum board"))
#: And of the floor: a subfloor of 23/32 in. (common practice, no source) of the library's OSB for teaching.
SUBFLOOR = building.material("teaching-osb").permeability_at(0.5) / to_si(23 / 32, "in")

#: Dots a minute for a fluid ounce a day.
DOTS = 15
#: A column of vapor pressure this high is drawn as long as `_LONG` [Pa].
FULL = 2500.0
#: An arrow of full width stands for this push [Pa].
_WIDEST = 1200.0
#: In each shape of the scene [px].
_LONG = {"wide": 170.0, "tall": 150.0, "post": 165.0, "strip": 110.0}
#: Along the face: the columns and the arrow.
_COLUMNS, _ARROW = 0.16, 0.54
#: The line on which a bet is drawn: where it crosses the ceiling, and how far from a face its ends are [px].
_BETS = {"wide": (0.74, 85.0), "tall": (0.74, 75.0), "post": (0.74, 82.0), "strip": (0.94, 34.0)}
_HALF = 0.04
#: How far from the floor the ends of its line are [px].
_FLOOR_BETS = {"wide": 85.0, "tall": 75.0, "post": 82.0, "strip": 60.0}
#: The RH over bare earth; where it is lower, the earth is covered [-].
BARE = 0.95


def way(push: float) -> str:
    """The way vapor goes at a push, inside minus outside [Pa]."""
    if abs(push) < ALMOST_NONE:
        return "none"
    return "out" if push > 0 else "in"


# --- the scenes -----------------------------------------------------------------------


def _cooled(state: Any) -> bool:
    """Whether an air conditioner runs."""
    return bool(
        vault.season(state.outside.temperature) == "summer" and state.inside.temperature < state.outside.temperature
    )


def signature(state: Any) -> Any:
    """What of a state stands still: the season, and the air conditioner."""
    return vault.season(state.outside.temperature), _cooled(state)


def _sides(scene: Scene, face: str, outdoors: Point) -> None:
    """Axes for what lies between the two airs ("through"), away from both of its faces, and where an air is named."""
    between = scene.axes["through"] = scene.axes[face]
    share = _LONG[scene.shape] / math.hypot(*between.across)
    x, y = (share * each for each in between.across)
    scene.axes["inside"] = Axes(between.origin, between.along, (-x, -y))
    scene.axes["outside"] = Axes(between.at(0, 1), between.along, (x, y))
    wide, high = scene.size
    for name, (across, down) in (("room-words", _ROOM[face]), ("other-words", outdoors)):
        scene.axes[name] = Axes((across * wide, down * high), (1.0, 0.0), (0.0, 1.0))


#: Where someone stands under the ceiling, as a share of the width.
_PERSON = {"wide": 0.88, "tall": 0.86, "post": 0.86, "strip": 0.86}
#: Where the room is named, and the outdoors, as shares of width and height.
_ROOM = {"slope": (0.33, 0.92), "floor": (0.5, 0.16)}
_OUTDOORS = {"wide": (0.4, 0.06), "tall": (0.45, 0.05), "post": (0.5, 0.05), "strip": (0.29, 0.06)}
#: How far dots go on both sides, in thicknesses of what lies between.
_REACH = {"slope": 0.85, "floor": 6.0}


def draw(scene: Scene, state: Any) -> None:
    """The room under its ceiling, the sky over it, and the line on which a bet is drawn."""
    scenery.vault(scene, CEILING, vault.season(state.outside.temperature), person_at=_PERSON[scene.shape])
    if _cooled(state):
        wide, high = scene.size
        scenery.air_conditioner(scene, (0.62 * wide, 0.74 * high), 0.12 * wide)
    _sides(scene, "slope", _OUTDOORS[scene.shape])
    _bets(scene, *_BETS[scene.shape])


def _bets(scene: Scene, share: float, far: float) -> None:
    """The line on which a bet is drawn: how far along, and how far from a face its ends are [px]."""
    between = scene.axes["through"]
    x, y = between.across
    grown = 0.5 + far / math.hypot(x, y)
    bets = scene.axes["bets"] = Axes(between.at(share, 0.5), between.along, (grown * x, grown * y))
    scene.line((bets.at(0, -1.15), bets.at(0, 1.15)), "lens-line")


def draw_floor(scene: Scene, state: Any) -> None:
    """A warm room over a crawlspace."""
    scenery.crawlspace(scene)
    _sides(scene, "floor", (0.5, 0.78))


def draw_bet_floor(scene: Scene, state: Any) -> None:
    """The same with the line on which a bet is drawn."""
    scenery.crawlspace(scene, person_at=0.77)
    _sides(scene, "floor", (0.5, 0.78))
    _bets(scene, 0.93, _FLOOR_BETS[scene.shape])


def under_floor(stage: Stage) -> bool:
    """Whether the other side is the crawlspace."""
    return stage.on and stage.beat.draw in (draw_floor, draw_bet_floor)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs."""
    room, other = (each["text"] for each in vault.airs(state.inside, state.outside, page.unit_system)["tags"])
    covered: dict[str, Any] = {}
    if under_floor(page.stage):
        temperature, humidity = said(page, state.outside)
        other = message("air-of-crawlspace", temperature=temperature, humidity=humidity)
        covered = cover(state)
    words = [scenery.tag(room, ("room-words", 0, 0)), scenery.tag(other, ("other-words", 0, 0))]
    return scenery.together([{"tags": words}, covered])


def is_covered(state: Any) -> bool:
    """Whether a sheet lies on the earth: as soon as the RH is lower than over bare earth."""
    return bool(state.outside.relative_humidity < BARE - 1e-9)


def cover(state: Any) -> dict[str, Any]:
    """The sheet on the earth, where one lies."""
    if not is_covered(state):
        return {}
    return {
        "marks": [scenery.line("permeance", ("crawlspace", 0.0, 0.0), ("crawlspace", 1.0, 0.0))],
        "tags": [scenery.tag(message("ground-cover"), ("crawlspace", 0.5, 0.0), "", "under")],
    }


def said(page: Page, air: Air) -> tuple[str, str]:
    """How warm an air is, and its RH."""
    return vault.told(air.temperature, air.relative_humidity, page.unit_system)


def pressure(page: Page, air: Air) -> str:
    """The vapor pressure of an air, in words."""
    return page.show(air.vapor_pressure, "pressure")


def push(page: Page, state: Any) -> str:
    """The push in words, as the difference of the two pressures that stand beside it."""
    low, high = sorted(each.vapor_pressure for each in (state.inside, state.outside))
    return units.difference(high, low, "pressure", page.unit_system)


def flux(page: Page, state: Any) -> float:
    """Vapor through the ceiling or the floor, positive outward [kg/(s m2)]."""
    return (SUBFLOOR if under_floor(page.stage) else DRYWALL) * float(state.push)


def shows(page: Page, state: Any) -> dict[str, Any]:
    """A column of vapor pressure on each side, the arrow of the push, and dots that go with it."""
    marks, tags = [], []
    for side, air in (("inside", state.inside), ("outside", state.outside)):
        long = air.vapor_pressure / FULL
        marks.append(scenery.band("vapor pressure", side, (_COLUMNS - _HALF, _COLUMNS + _HALF), (0.0, long)))
        tags.append(scenery.tag(pressure(page, air), (side, _COLUMNS + _HALF, long / 2), "vapor pressure", "right"))
    goes = way(state.push)
    ends = [("inside", _ARROW, 0.5), ("outside", _ARROW, 0.5)]
    if goes != "none":
        start, end = ends if goes == "out" else ends[::-1]
        marks.append(scenery.arrow("vapor pressure", start, end, min(1.0, abs(state.push) / _WIDEST)))
    text = message("push-here", way=goes, push=push(page, state))
    tags.append(scenery.tag(text, ("through", _ARROW, 0.5), "vapor pressure", "right", minor=True))
    moves = flux(page, state)
    reach = _REACH["floor" if under_floor(page.stage) else "slope"]
    path = [("through", 0.5, -reach), ("through", 0.5, 1.0 + reach)]
    rate = vault.dots(moves, DOTS)
    flows = [scenery.flow(rate, *(path if moves > 0 else path[::-1]), spread=0.9)] if rate > 0.01 else []
    return {"marks": marks, "tags": tags, "flows": flows}


def scale(page: Page) -> str:
    """What the dots stand for, and what alone holds them back."""
    floor = under_floor(page.stage)
    digits = 0 if page.unit_system == "us" and not floor else 1
    permeance = page.show(SUBFLOOR if floor else DRYWALL, "permeance", digits)
    ounce = vault.a_day(vault.OUNCE, page.unit_system)
    return message(
        "dots-stand-for",
        floor=floor,
        permeance=permeance,
        number=DOTS,
        amount=ounce,
        area=amounts.roof_area(page.unit_system),
    )
