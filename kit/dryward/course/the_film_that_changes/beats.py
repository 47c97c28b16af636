"""The beats of the film that changes: damp opens it, in any season; a film of two sheets has a better way round."""

from __future__ import annotations

import math
from typing import Any

from dryward import language, units
from dryward.course.the_film_that_changes import film_in_vault, two_sheets
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.pictures import vault
from dryward.pictures.scenery import Place
from dryward.units import amounts

message = language.beside(__file__)


# --- first: January and July ---------------------------------------------------------------


def first_right(states: States) -> str:
    """Of one film in January and in July: when it is open."""
    found = tuple(state.does for state in states)
    return {("tight", "open"): "a", ("open", "tight"): "b"}.get(found, "d")


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """How many times as open, and what passes."""
    january, july = states
    return {
        "times": units.number(july.permeance / january.permeance, 0),
        "january": vault.a_day(january.profile.vapor_flux_in, page.unit_system),
        "july": vault.a_day(july.profile.vapor_flux_in, page.unit_system),
        "flux": page.show(abs(july.profile.vapor_flux_in), "vapor flux"),
        "other": page.show(abs(january.profile.vapor_flux_in), "vapor flux"),
    }


def _at_film(along: float) -> Place:
    return ("slope", along, 0.12)


FIRST = Beat(
    "first",
    cases=({"Weather": "winter"}, {}),
    own=1,
    bets=(
        Bet(
            LESSON,
            (
                # A letter stands where the film would be open.
                Spot("a", _at_film(0.3), 1),
                Spot("b", _at_film(0.3), 0, "film-closes-when-humid"),
                Spot("c", _at_film(0.65), 1, "film-knows-the-season"),
                Spot("d", _at_film(0.65), 0, "label-perm-is-the-perm", glyph="none"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("film-closes-when-humid",),
)


# --- site: damp opens it, in January too ----------------------------------------------------


def opened(page: Page, states: States) -> bool:
    """Whether the film is twice as open as it can be tight."""
    return bool(states[0].permeance >= 2 * states[0].tight)


def site_facts(page: Page, states: States) -> dict[str, Any]:
    """What passes the film and gathers at the OSB now, and what gathered before."""
    now, before = states[0].profile, page.stage.first[0].profile
    return {
        "target": page.show(2 * states[0].tight, "permeance"),
        "open": opened(page, states),
        "wet": bool(now.wet_planes),
        "room": page.show(states[0].indoor.relative_humidity, "relative humidity"),
        "start": page.show(page.stage.first[0].indoor.relative_humidity, "relative humidity"),
        "passes": vault.a_day(now.vapor_flux_in, page.unit_system),
        "now": vault.a_day(now.gain, page.unit_system),
        "before": vault.a_day(before.gain, page.unit_system),
        "flux": page.show(now.gain, "vapor flux"),
    }


SITE = Beat(
    "site",
    cases=({"Weather": "winter", "Outer": "osb"},),
    unlocks="RH_in",
    aim=opened,
    facts=site_facts,
    beliefs=("film-closes-when-humid",),
)


# --- season: two Julys ------------------------------------------------------------------------


def season_right(state: Any) -> str:
    """Whether the film is open in one of the scenes."""
    return "open" if state.does == "open" else "tight"


def season_facts(page: Page, states: States) -> dict[str, Any]:
    """What the faces see, and what passes, in both places."""
    facts: dict[str, Any] = {}
    for name, state in zip(("town", "desert"), states, strict=True):
        inside, outside = (page.show(each, "relative humidity") for each in state.faces)
        facts |= {
            f"{name}-inside": inside,
            f"{name}-outside": outside,
            f"{name}-film": page.show(state.permeance, "permeance"),
            f"{name}-amount": vault.a_day(state.profile.vapor_flux_in, page.unit_system),
            f"{name}-flux": page.show(abs(state.profile.vapor_flux_in), "vapor flux"),
        }
    return facts


def _season_bet(name: str, number: int) -> Bet:
    spots = (
        # Where it is so, the words are no belief.
        Spot("open", _at_film(0.3), number, "film-knows-the-season" if number else ""),
        Spot("tight", _at_film(0.65), number),
    )
    return Bet(name, spots, of_scene(number, season_right))


SEASON = Beat(
    "season",
    cases=({"Weather": "summer"}, {"Weather": "desert"}),
    bets=(_season_bet("town", 0), _season_bet("desert", 1)),
    facts=season_facts,
    beliefs=("film-knows-the-season",),
)


# --- sides: a film of two sheets, each way round --------------------------------------------------


def sides_right(state: Any) -> str:
    """The better way round: less goes in where vapor goes out of the room, more comes out where it comes in."""
    flux = {side: float(profile.vapor_flux_in) for side, (_, profile) in two_sheets.ways(state).items()}
    # Outward is positive: in both seasons the smaller flux, with its sign, is the better one.
    if math.isclose(flux["in"], flux["out"], rel_tol=0.02):
        return "same"
    return min(flux, key=lambda side: flux[side])


def sides_facts(page: Page, states: States) -> dict[str, Any]:
    """What passes each way round in both months, the differences of these, and what the sensitive sheet sees."""
    system = page.unit_system
    facts: dict[str, Any] = {}
    for month, state in zip(("january", "july"), states, strict=True):
        volume = two_sheets.passes(state, system)
        for side, (_, profile) in two_sheets.ways(state).items():
            sees = two_sheets.sees(side, profile)
            facts |= {
                f"{month}-{side}": amounts.water(volume[side], system),
                f"{month}-{side}-sees": page.show(sees, "relative humidity"),
            }
        facts[f"{month}-apart"] = amounts.water(abs(volume["in"] - volume["out"]), system)
        inward, outward = (float(profile.vapor_flux_in) for _, profile in two_sheets.ways(state).values())
        facts[f"{month}-flux"] = page.show(abs(inward - outward), "vapor flux")
    return facts


def _sides_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("in", ("cut", 0.07, 0.47), number),
        Spot("out", ("cut", 0.93, 0.47), number),
        Spot("same", ("cut", 0.5, 0.47), number, "same-both-ways", glyph="none"),
    )
    return Bet(name, spots, of_scene(number, sides_right))


_LAMINATE = {"Film": "direction-dependent"}

SIDES = Beat(
    "sides",
    # A humid room in both months: in dry air one way round is little better than the other.
    cases=({**_LAMINATE, "Weather": "winter", "RH_in": 0.6}, {**_LAMINATE, "Weather": "summer", "RH_in": 0.5}),
    bets=(_sides_bet("january", 0), _sides_bet("july", 1)),
    facts=sides_facts,
    beliefs=("same-both-ways",),
    draw=two_sheets.draw,
    given=two_sheets.given,
    shows=two_sheets.shows,
)

PLAY = Play(
    (FIRST, SITE, SEASON, SIDES),
    message,
    film_in_vault.draw,
    vault.signature,
    film_in_vault.given,
    film_in_vault.shows,
    scale=lambda page: vault.scale(page.unit_system, film_in_vault.DOTS),
)
