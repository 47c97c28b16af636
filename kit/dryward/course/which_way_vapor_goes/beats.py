"""The beats of which way vapor goes: the same RH both ways, the same heat, the same floor, an arrow that is turned."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from dryward.course.which_way_vapor_goes.stage_scene import (
    BARE,
    draw,
    draw_bet_floor,
    draw_floor,
    flux,
    given,
    is_covered,
    message,
    pressure,
    said,
    scale,
    shows,
    signature,
    way,
)
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States
from dryward.pictures import vault
from dryward.units import amounts, to_si

# --- what is told ---------------------------------------------------------------------


def _right(number: int) -> Any:
    """The way vapor goes in one of the scenes."""

    def right(states: States) -> str:
        return way(states[number].push)

    return right


def _amount(page: Page, state: Any) -> str:
    return vault.a_day(flux(page, state), page.unit_system)


def _flux(page: Page, state: Any) -> str:
    return page.show(abs(flux(page, state)), "vapor flux")


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
    room, low = said(page, mild.inside)
    warm, high = said(page, mild.outside)
    return {
        "room": room,
        "low": low,
        "warm": warm,
        "cold": said(page, winter.outside)[0],
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
    cool, indoor = said(page, desert.inside)
    hot, low = said(page, desert.outside)
    return {
        "cool": cool,
        "indoor": indoor,
        "hot": hot,
        "low": low,
        "high": said(page, coast.outside)[1],
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


# --- floor: two crawlspaces, as cool as each other ---------------------------------------


def floor_facts(page: Page, states: States) -> dict[str, Any]:
    """The airs under the floor and over it, and what goes through it."""
    bare, covered = states
    warm, indoor = said(page, bare.inside)
    cool, wet = said(page, bare.outside)
    return {
        "warm": warm,
        "indoor": indoor,
        "cool": cool,
        "wet": wet,
        "dry": said(page, covered.outside)[1],
        "inside": pressure(page, bare.inside),
        "bare": pressure(page, bare.outside),
        "covered": pressure(page, covered.outside),
        **_passing(page, bare, covered),
    }


#: Up into the room or down; the arrows as they stand on the screen.
_ARROWS = {"up": (-1.0, "out"), "down": (1.0, "in"), "none": (0.0, "none")}


def _floor_spots(scene: int, **beliefs: str) -> tuple[Spot, ...]:
    return tuple(
        Spot(key, ("bets", 0.0, at), scene, beliefs.get(key, ""), glyph) for key, (at, glyph) in _ARROWS.items()
    )


def _through_floor(number: int) -> Any:
    """The way through the floor in one of the scenes."""
    return lambda states: {"in": "up", "out": "down", "none": "none"}[way(states[number].push)]


_FLOOR = {"T_in": to_si(72.0, "degF"), "RH_in": 0.45, "T_out": to_si(62.0, "degF")}

FLOOR = Beat(
    "floor",
    cases=({**_FLOOR, "RH_out": BARE}, {**_FLOOR, "RH_out": 0.5}),
    bets=(
        Bet("bare", _floor_spots(0, down="warm-to-cold"), _through_floor(0)),
        Bet("covered", _floor_spots(1, up="rh-drives-vapor"), _through_floor(1)),
    ),
    facts=floor_facts,
    beliefs=("warm-to-cold", "rh-drives-vapor"),
    draw=draw_bet_floor,
)


# --- crawlspace: turn the arrow ----------------------------------------------------------


def crawlspace_facts(page: Page, states: States) -> dict[str, Any]:
    """What goes through the floor now, and the RH at which the arrow turns."""
    state = states[0]
    full = state.outside.vapor_pressure / state.outside.relative_humidity
    return {
        "way": way(state.push),
        "covered": is_covered(state),
        "amount": _amount(page, state),
        "area": amounts.roof_area(page.unit_system),
        "turn": page.show(state.inside.vapor_pressure / full, "relative humidity"),
        "indoor": said(page, state.inside)[1],
        "flux": _flux(page, state),
    }


CRAWLSPACE = Beat(
    "crawlspace",
    cases=({**_FLOOR, "RH_out": BARE},),
    unlocks="RH_out",
    aim=lambda page, states: way(states[0].push) == "out",
    facts=crawlspace_facts,
    beliefs=("warm-to-cold", "rh-drives-vapor"),
    draw=draw_floor,
)

PLAY = Play((FIRST, HEAT, FLOOR, CRAWLSPACE), message, draw, signature, given, shows, scale)
