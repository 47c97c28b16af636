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
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.pictures import vault
from dryward.units import amounts, to_si

# --- what is told ---------------------------------------------------------------------


def _right(state: Any) -> str:
    """The way vapor goes in one of the scenes."""
    return way(state.push)


def _amount(page: Page, state: Any) -> str:
    return vault.a_day(flux(page, state), page.unit_system)


def _flux(page: Page, state: Any) -> str:
    return page.show(abs(flux(page, state)), "vapor flux")


def pair_facts(page: Page, states: States) -> dict[str, Any]:
    """The room and the air on its other side in both scenes, and what goes through."""
    one, other = states
    room, indoor = said(page, one.inside)
    facts = {
        "room": room,
        "indoor": indoor,
        "inside": pressure(page, one.inside),
        "amount": _amount(page, one),
        "area": amounts.roof_area(page.unit_system),
        "flux": _flux(page, one),
        "other": _flux(page, other),
    }
    for name, state in zip(("first", "second"), states, strict=True):
        temperature, humidity = said(page, state.outside)
        facts |= {
            f"{name}_at": temperature,
            f"{name}_rh": humidity,
            f"{name}_pressure": pressure(page, state.outside),
        }
    return facts


#: Each way through, with its place on the line of the bets and its arrow: in and out, and of a floor up and down.
_WAYS = {"in": (-1.0, "in"), "out": (1.0, "out"), "none": (0.0, "none")}
_THROUGH_FLOOR = {"up": (-1.0, "out"), "down": (1.0, "in"), "none": (0.0, "none")}


def _spots(scene: int, beliefs: dict[str, str], ways: dict[str, tuple[float, str]] = _WAYS) -> tuple[Spot, ...]:
    """A spot for each way, on the line through."""
    return tuple(Spot(key, ("bets", 0.0, at), scene, beliefs.get(key, ""), glyph) for key, (at, glyph) in ways.items())


# --- first: the same two RH numbers, on two days ----------------------------------------

#: The lesson's keys of the three ways.
_KEYS = {"in": "a", "out": "b", "none": "c"}
_FIRST = {"T_in": to_si(70.0, "degF"), "RH_in": 0.35, "RH_out": 0.9}

FIRST = Beat(
    "first",
    cases=({**_FIRST, "T_out": to_si(20.0, "degF")}, {**_FIRST, "T_out": to_si(60.0, "degF")}),
    bets=(
        Bet(
            LESSON,
            tuple(replace(spot, key=_KEYS[spot.key]) for spot in _spots(0, {"in": "rh-drives-vapor"})),
            lambda states: _KEYS[way(states[0].push)],
        ),
        Bet("mild", _spots(1, {"out": "warm-to-cold"}), of_scene(1, _right)),
    ),
    facts=pair_facts,
    beliefs=("rh-drives-vapor",),
)


# --- heat: the same heat over the same cooled room --------------------------------------

_HOT = {"T_in": to_si(75.0, "degF"), "RH_in": 0.5, "T_out": to_si(95.0, "degF")}

HEAT = Beat(
    "heat",
    cases=({**_HOT, "RH_out": 0.15}, {**_HOT, "RH_out": 0.45}),
    bets=(
        Bet("desert", _spots(0, {"in": "warm-to-cold"}), of_scene(0, _right)),
        Bet("coast", _spots(1, {"out": "rh-drives-vapor"}), of_scene(1, _right)),
    ),
    facts=pair_facts,
    beliefs=("warm-to-cold", "rh-drives-vapor"),
)


# --- floor: two crawlspaces, as cool as each other ---------------------------------------


def _through_floor(state: Any) -> str:
    """The way through the floor in one of the scenes."""
    return {"in": "up", "out": "down", "none": "none"}[way(state.push)]


_FLOOR = {"T_in": to_si(72.0, "degF"), "RH_in": 0.45, "T_out": to_si(62.0, "degF")}

FLOOR = Beat(
    "floor",
    cases=({**_FLOOR, "RH_out": BARE}, {**_FLOOR, "RH_out": 0.5}),
    bets=(
        Bet("bare", _spots(0, {"down": "warm-to-cold"}, _THROUGH_FLOOR), of_scene(0, _through_floor)),
        Bet("covered", _spots(1, {"up": "rh-drives-vapor"}, _THROUGH_FLOOR), of_scene(1, _through_floor)),
    ),
    facts=pair_facts,
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
