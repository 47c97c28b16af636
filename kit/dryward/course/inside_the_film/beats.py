"""The beats of inside the film: R on its room side opens it in January, R outside does not, and so does a damp room."""

from __future__ import annotations

from typing import Any

from dryward import language, units
from dryward.course.inside_the_film import layers_scene
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.pictures import vault
from dryward.pictures.scenery import Place
from dryward.units import to_si

message = language.beside(__file__)

FILM = layers_scene.FILM
#: R inside the film with an empty cavity, in the roof of the bet, and of a batt [m2 K/W].
EMPTY, MUCH, BATT = to_si(1.0, "R"), to_si(22.0, "R"), to_si(22.0, "R")
#: The same with wool in a cavity of 1-1/2 in.
WOOL = to_si(5.5, "R")


def signature(state: Any) -> Any:
    """What of a state stands still: the layers, the season, and how deep the cavity is."""
    return *vault.signature(state), layers_scene.film_at(state), state.filled


def told(page: Page, name: str, state: Any) -> dict[str, Any]:
    """Of one film: how warm it is, how humid its room face, how open it stands, and what gathers in the roof."""
    profile = state.profile
    return {
        f"{name}-at": page.show(state.temperature, "temperature", 0),
        f"{name}-humid": page.show(state.faces[0], "relative humidity"),
        f"{name}-film": page.show(profile.permeance[FILM], "permeance"),
        f"{name}-amount": vault.a_day(profile.gain, page.unit_system),
        f"{name}-flux": page.show(profile.gain, "vapor flux"),
        f"{name}-r": layers_scene.r_value(page, state.inside),
    }


#: Where the film lies across the roof, behind an empty cavity and behind a batt.
_SHALLOW, _DEEP = 0.12, 0.31


def _at_film(along: float, across: float = _SHALLOW) -> Place:
    return ("slope", along, across)


# --- first: more R inside ---------------------------------------------------------------------


def first_right(states: States) -> str:
    """What the film does when R is added inside it."""
    before, after = (state.profile.permeance[FILM] for state in states)
    return "b" if after > 1.5 * before else "c" if after < before / 1.5 else "a"


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """Both films, and how many times as open the second is."""
    before, after = (state.profile.permeance[FILM] for state in states)
    return {
        **told(page, "before", states[0]),
        **told(page, "after", states[1]),
        "times": units.number(after / before, figures=2, rounded=True),
    }


FIRST = Beat(
    "first",
    cases=({}, {"R_in": MUCH}),
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", _at_film(0.2, _DEEP), 1, "film-knows-the-season"),
                Spot("b", _at_film(0.36, _DEEP), 1),
                Spot("c", _at_film(0.52, _DEEP), 1, "film-closes-when-humid"),
                Spot("d", _at_film(0.68, _DEEP), 1, "r-anywhere", glyph="none"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("film-knows-the-season",),
)


# --- swap: the same batt inside the film and outside it ------------------------------------------


def film_right(state: Any) -> str:
    """Whether the film is tight in one of the scenes."""
    return "tight" if state.does == "tight" else "open"


def _film_bet(name: str, number: int, belief: str, across: float = _SHALLOW) -> Bet:
    spots = (
        Spot("tight", _at_film(0.28, across), number, belief),
        Spot("open", _at_film(0.56, across), number),
    )
    return Bet(name, spots, of_scene(number, film_right))


def swap_facts(page: Page, states: States) -> dict[str, Any]:
    """Both films; the R of both roofs is the same."""
    outside, inside = states
    totals = [each.inside + each.outside for each in states]
    assert abs(totals[0] - totals[1]) < 1e-6
    assert not outside.profile.wet_planes
    return {**told(page, "outside", outside), **told(page, "inside", inside), "batt": layers_scene.r_value(page, BATT)}


SWAP = Beat(
    "swap",
    cases=({"R_in": EMPTY, "Outer": "open-sheet-deep"}, {"R_in": EMPTY + BATT}),
    # Where it is so, the words are no belief.
    bets=(_film_bet("outside", 0, ""), _film_bet("inside", 1, "film-knows-the-season", _DEEP)),
    facts=swap_facts,
    beliefs=("film-knows-the-season",),
)


# --- bath: two rooms under one roof --------------------------------------------------------------


def bath_facts(page: Page, states: States) -> dict[str, Any]:
    """Both films, and how humid the rooms are."""
    bed, bath = states
    assert not bed.profile.wet_planes
    rooms = {
        f"{name}-room": page.show(state.indoor.relative_humidity, "relative humidity")
        for name, state in (("bed", bed), ("bath", bath))
    }
    return {**told(page, "bed", bed), **told(page, "bath", bath), **rooms}


BATH = Beat(
    "bath",
    cases=({"R_in": WOOL, "RH_in": 0.4}, {"R_in": WOOL, "RH_in": 0.7}),
    bets=(_film_bet("bed", 0, ""), _film_bet("bath", 1, "film-knows-the-season")),
    facts=bath_facts,
    beliefs=("film-knows-the-season",),
)


# --- fill: how much is too much --------------------------------------------------------------------


def fill_facts(page: Page, states: States) -> dict[str, Any]:
    """The film now, and its share of the R inside."""
    state = states[0]
    return {
        **told(page, "now", state),
        "share": page.show(state.share, "relative humidity"),
        "wet": bool(state.profile.wet_planes),
    }


FILL = Beat(
    "fill",
    unlocks="R_in",
    aim=lambda page, states: bool(states[0].profile.wet_planes),
    facts=fill_facts,
    beliefs=("film-knows-the-season",),
)

PLAY = Play(
    (FIRST, SWAP, BATH, FILL),
    message,
    layers_scene.draw,
    signature,
    layers_scene.given,
    layers_scene.shows,
    scale=lambda page: vault.scale(page.unit_system, layers_scene.DOTS),
)
