"""The beats of which way vapor goes: the same RH both ways, the same heat both ways, an arrow that is turned."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from dryward import building, language, units
from dryward.course.which_way_vapor_goes.questions import ALMOST_NONE
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Axes, Point, Scene
from dryward.units import amounts, kept_together, to_si
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
    between = scene.axes["through"]
    share, far = _BETS[scene.shape]
    x, y = between.across
    grown = 0.5 + far / math.hypot(x, y)
    bets = scene.axes["bets"] = Axes(between.at(share, 0.5), between.along, (grown * x, grown * y))
    scene.line((bets.at(0, -1.15), bets.at(0, 1.15)), "lens-line")


def draw_floor(scene: Scene, state: Any) -> None:
    """A warm room over a crawlspace."""
    scenery.crawlspace(scene)
    _sides(scene, "floor", (0.5, 0.78))


def _under_floor(page: Page) -> bool:
    """Whether the other side is the crawlspace."""
    return page.stage.on and page.stage.beat is CRAWLSPACE


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs."""
    room, other = (each["text"] for each in vault.airs(state.inside, state.outside, page.unit_system)["tags"])
    if _under_floor(page):
        temperature, humidity = _said(page, state.outside)
        other = message("air-of-crawlspace", temperature=temperature, humidity=humidity)
    return {"tags": [scenery.tag(room, ("room-words", 0, 0)), scenery.tag(other, ("other-words", 0, 0))]}


def _said(page: Page, air: Air) -> tuple[str, str]:
    """How warm an air is, and its RH."""
    return vault.told(air.temperature, air.relative_humidity, page.unit_system)


def pressure(page: Page, air: Air) -> str:
    """The vapor pressure of an air, in words."""
    return kept_together(page.show(air.vapor_pressure, "pressure"))


def push(page: Page, state: Any) -> str:
    """The push in words, as the difference of the two pressures that stand beside it."""
    low, high = sorted(each.vapor_pressure for each in (state.inside, state.outside))
    return kept_together(units.difference(high, low, "pressure", page.unit_system))


def flux(page: Page, state: Any) -> float:
    """Vapor through the ceiling or the floor, positive outward [kg/(s m2)]."""
    return (SUBFLOOR if _under_floor(page) else DRYWALL) * float(state.push)


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
    reach = _REACH["floor" if _under_floor(page) else "slope"]
    path = [("through", 0.5, -reach), ("through", 0.5, 1.0 + reach)]
    rate = vault.dots(moves, DOTS)
    flows = [scenery.flow(rate, *(path if moves > 0 else path[::-1]), spread=0.9)] if rate > 0.01 else []
    return {"marks": marks, "tags": tags, "flows": flows}


def scale(page: Page) -> str:
    """What the dots stand for, and what alone holds them back."""
    floor = _under_floor(page)
    digits = 0 if page.unit_system == "us" and not floor else 1
    permeance = page.show(SUBFLOOR if floor else DRYWALL, "permeance", digits)
    ounce = vault.a_day(vault.OUNCE, page.unit_system)
    return message(
        "dots-stand-for",
        floor=floor,
        permeance=kept_together(permeance),
        number=DOTS,
        amount=ounce,
        area=amounts.roof_area(page.unit_system),
    )


# --- what is told ---------------------------------------------------------------------


def _right(number: int) -> Any:
    """The way vapor goes in one of the scenes."""

    def right(states: States) -> str:
        return way(states[number].push)

    return right


def _amount(page: Page, state: Any) -> str:
    return vault.a_day(flux(page, state), page.unit_system)


def _flux(page: Page, state: Any) -> str:
    return kept_together(page.show(abs(flux(page, state)), "vapor flux"))


def _passing(page: Page, state: Any, other: Any) -> dict[str, str]:
    """What goes through the ceiling in one of two scenes, and the flux in both."""
    return {
        "amount": _amount(page, state),
        "area": amounts.roof_area(page.unit_system),
        "flux": _flux(page, state),
        "other": _flux(page, other),
    }


def _spots(scene: int, **beliefs: str) -> tuple[Spot, ...]:
    """In, out and neither, on the line through the ceiling."""
    places = {"in": -1.0, "out": 1.0, "none": 0.0}
    return tuple(Spot(key, ("bets", 0.0, at), scene, beliefs.get(key, ""), key) for key, at in places.items())


# --- first: the same two RH numbers, on two days ----------------------------------------

#: The lesson's keys of the three ways.
_KEYS = {"in": "a", "out": "b", "none": "c"}


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """Both outdoor airs and the room, and what goes through the ceiling."""
    winter, mild = states
    room, low = _said(page, mild.inside)
    warm, high = _said(page, mild.outside)
    return {
        "room": room,
        "low": low,
        "warm": warm,
        "cold": _said(page, winter.outside)[0],
        "high": high,
        "inside": pressure(page, mild.inside),
        "outside": pressure(page, mild.outside),
        **_passing(page, winter, mild),
    }


_FIRST = {"T_in": to_si(70.0, "degF"), "RH_in": 0.35, "RH_out": 0.9}

FIRST = Beat(
    "first",
    cases=({**_FIRST, "T_out": to_si(20.0, "degF")}, {**_FIRST, "T_out": to_si(60.0, "degF")}),
    bets=(
        Bet(
            LESSON,
            tuple(replace(spot, key=_KEYS[spot.key]) for spot in _spots(0, **{"in": "rh-drives-vapor"})),
            lambda states: _KEYS[way(states[0].push)],
        ),
        Bet("mild", _spots(1, out="warm-to-cold"), _right(1)),
    ),
    facts=first_facts,
    beliefs=("rh-drives-vapor",),
)


# --- heat: the same heat over the same cooled room --------------------------------------


def heat_facts(page: Page, states: States) -> dict[str, Any]:
    """The airs of the two hot days, and what goes through the ceiling."""
    desert, coast = states
    cool, indoor = _said(page, desert.inside)
    hot, low = _said(page, desert.outside)
    return {
        "cool": cool,
        "indoor": indoor,
        "hot": hot,
        "low": low,
        "high": _said(page, coast.outside)[1],
        "inside": pressure(page, desert.inside),
        "desert": pressure(page, desert.outside),
        "coast": pressure(page, coast.outside),
        **_passing(page, desert, coast),
    }


_HOT = {"T_in": to_si(75.0, "degF"), "RH_in": 0.5, "T_out": to_si(95.0, "degF")}

HEAT = Beat(
    "heat",
    cases=({**_HOT, "RH_out": 0.15}, {**_HOT, "RH_out": 0.45}),
    bets=(
        Bet("desert", _spots(0, **{"in": "warm-to-cold"}), _right(0)),
        Bet("coast", _spots(1, out="rh-drives-vapor"), _right(1)),
    ),
    facts=heat_facts,
    beliefs=("warm-to-cold", "rh-drives-vapor"),
)


# --- crawlspace: turn the arrow ----------------------------------------------------------


def crawlspace_facts(page: Page, states: States) -> dict[str, Any]:
    """What goes through the floor now, and the RH at which the arrow turns."""
    state = states[0]
    full = state.outside.vapor_pressure / state.outside.relative_humidity
    return {
        "way": way(state.push),
        "amount": _amount(page, state),
        "area": amounts.roof_area(page.unit_system),
        "turn": kept_together(page.show(state.inside.vapor_pressure / full, "relative humidity")),
        "indoor": _said(page, state.inside)[1],
        "flux": _flux(page, state),
    }


def cover(page: Page, state: Any) -> dict[str, Any]:
    """The sheet on the earth, as soon as the RH is lower than it was over bare earth."""
    if state.outside.relative_humidity >= page.stage.first[0].outside.relative_humidity:
        return {}
    return {
        "marks": [scenery.line("permeance", ("crawlspace", 0.0, 0.0), ("crawlspace", 1.0, 0.0))],
        "tags": [scenery.tag(message("ground-cover"), ("crawlspace", 0.5, 0.0), "", "under")],
    }


CRAWLSPACE = Beat(
    "crawlspace",
    cases=({"T_in": to_si(72.0, "degF"), "RH_in": 0.45, "T_out": to_si(62.0, "degF"), "RH_out": 0.95},),
    unlocks="RH_out",
    aim=lambda page, states: way(states[0].push) == "out",
    facts=crawlspace_facts,
    beliefs=("warm-to-cold", "rh-drives-vapor"),
    marks=cover,
    draw=draw_floor,
)

PLAY = Play((FIRST, HEAT, CRAWLSPACE), message, draw, signature, given, shows, scale)
