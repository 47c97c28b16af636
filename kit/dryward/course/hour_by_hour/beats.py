"""The beats of hour by hour: a year as a film, a tight and a drafty house, and the air that keeps a drafty one dry."""

from __future__ import annotations

from typing import Any

from dryward import language, units
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.pictures import film, scenery
from dryward.pictures.scenery import Scene
from dryward.units import amounts, to_si
from dryward.verdict import DRY, criterion
from dryward.verdict.words import month

message = language.beside(__file__)

SHEATHING, DECK = "sheathing", "deck"
WOOD = criterion("wood-moisture")
#: A house built tight, with a fan, and an old one full of drafts.
TIGHT, DRAFTY = ({"ACH50": to_si(each, "1/h")} for each in (1.0, 10.0))


def signature(state: Any) -> Any:
    """The house stands; all else moves."""
    return "house"


def draw(scene: Scene, state: Any) -> None:
    """The vault with what a film needs."""
    film.draw(scene, state.run.assembly, SHEATHING)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The months, and the lines on the gauge."""
    return film.given(page.unit_system, message("gauge"))


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The year of the sheathing."""
    run = state.run
    return film.shows(run.film, page.unit_system, run.assembly, SHEATHING, message)


def peak(state: Any, layer: str = SHEATHING) -> float:
    """The most moisture of a wood layer in the year [mass %]."""
    return float(state.run.wood(layer).value)


def _as_shown(moisture: float) -> int:
    """A moisture as the browser rounds it: halves up."""
    return int(moisture + 0.5)


def _percent(moisture: float, page: Page) -> str:
    return page.show(moisture / 100, "relative humidity", 0)


def water(points: float, state: Any) -> float:
    """What so many points of its moisture weigh in the sheathing [kg/m2]."""
    layer = state.run.assembly.layer(SHEATHING)
    return points / 100 * layer.material.density * layer.drawn_thickness


def _whole(mass: float, page: Page) -> str:
    return amounts.whole_roof(mass, page.unit_system)


# --- first: in which month? ------------------------------------------------------------

#: The month of each choice.
MONTHS = {"a": 11, "b": 1, "c": 3, "d": 7}


def first_right(states: States) -> str:
    """The choice whose month has the highest day."""
    wettest = states[0].run.film.wettest
    return next(key for key, each in MONTHS.items() if each == wettest)


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """The highest day, what was taken up until then, and that no drop was there."""
    (state,) = states
    shown, low = round(peak(state)), _as_shown(state.run.film.lowest)
    assert not state.run.film.drips
    return {
        "month": month(state.run.film.wettest),
        "peak": _percent(shown, page),
        "points": units.number(shown - low, 0),
        "low": _percent(low, page),
        "water": _whole(water(shown - low, state), page),
        "area": amounts.roof_area(page.unit_system),
        "flux": page.show(water(shown - low, state), "area density"),
    }


def _spot(key: str, belief: str = "") -> Spot:
    return Spot(key, ("year", film.month_at(MONTHS[key]), 0.27), 0, belief)


FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            (
                _spot("a", ""),
                _spot("b", ""),
                _spot("c"),
                _spot("d", ""),
                Spot("e", ("slope", 0.4, 0.46), 0, "no-drops-no-problem"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("no-drops-no-problem",),
)


# --- houses: a tight one and a drafty one, in the same room air --------------------------


def house_right(state: Any) -> str:
    """Which side of both lines the sheathing of a house stays on."""
    highest = peak(state)
    assert highest < WOOD.caution or highest >= WOOD.damage
    return "under" if highest < WOOD.caution else "over"


def house_facts(page: Page, states: States) -> dict[str, Any]:
    """Both peaks, and the water between them."""
    tight, drafty = (round(peak(state)) for state in states)
    return {
        "tight": _percent(tight, page),
        "drafty": _percent(drafty, page),
        "caution": _percent(WOOD.caution, page),
        "damage": _percent(WOOD.damage, page),
        "room": _percent(100 * page.at.RH_in, page),
        "points": units.number(drafty - tight, 0),
        "water": _whole(water(drafty - tight, states[0]), page),
        "area": amounts.roof_area(page.unit_system),
        "flux": page.show(water(drafty - tight, states[0]), "area density"),
    }


def _house_bet(name: str, number: int, held: str) -> Bet:
    places = {"under": ("gauge", 0.5, 0.2), "over": ("gauge", 0.5, 0.85)}
    spots = tuple(
        Spot(key, place, number, "house-must-breathe" if key == held else "") for key, place in places.items()
    )
    return Bet(name, spots, of_scene(number, house_right))


HOUSES = Beat(
    "houses",
    cases=(TIGHT, DRAFTY),
    bets=(_house_bet("tight", 0, "over"), _house_bet("drafty", 1, "under")),
    facts=house_facts,
    beliefs=("house-must-breathe",),
)


# --- air: how dry the room of a drafty house has to be ----------------------------------


def air_facts(page: Page, states: States) -> dict[str, Any]:
    """The room's humidity at which all wood stays under the line, and what was enough in the tight house."""
    (state,) = states
    return {
        "room": _percent(100 * page.at.RH_in, page),
        "before": _percent(float(page.controls["RH_in"].start), page),
        "peak": _percent(peak(state), page),
        "deck": _percent(peak(state, DECK), page),
        "caution": _percent(WOOD.caution, page),
        "over": _over(state),
    }


def _over(state: Any) -> str:
    """Which of the two woods goes over the line: none, deck, sheathing or both."""
    wet = [name for name in (SHEATHING, DECK) if peak(state, name) >= WOOD.caution]
    return "both" if len(wet) == 2 else wet[0] if wet else "none"


def deck(page: Page, state: Any) -> dict[str, Any]:
    """The deck's own peak, at the deck, and its year beside that of the sheathing."""
    found, run = state.run.assembly, state.run
    depth = sum(scenery.across(found, DECK)) / 2
    highest = peak(state, DECK)
    text = message(
        "deck-peaks",
        moisture=_percent(highest, page),
        soaked=highest > film.TOP,
        water=film.soaked(found.layer(DECK), highest, page.unit_system),
        area=amounts.roof_area(page.unit_system),
    )
    # The second of the two years behind each other is the judged one.
    later = run.days > 365
    along = [film.along_year(float(day) - 365.5) for day in run.days[later]]
    year = sorted(zip(along, run.moisture[DECK][later], strict=True))
    places = [("year", round(float(at), 4), round(min(1.0, each / film.TOP), 3)) for at, each in year[::8]]
    at = places[len(places) * 5 // 12]
    return {
        "marks": [scenery.line("drying", *places)],
        "tags": [
            scenery.tag(text, ("slope", 0.42, depth), "drying", "over"),
            scenery.tag(message("deck"), at, "drying", "over"),
        ],
    }


AIR = Beat(
    "air",
    cases=(DRAFTY,),
    unlocks="RH_in",
    aim=lambda page, states: states[0].run.verdict.state == DRY,
    stays=False,
    facts=air_facts,
    beliefs=("house-must-breathe",),
    marks=deck,
)

PLAY = Play(
    (FIRST, HOUSES, AIR),
    message,
    draw,
    signature,
    given,
    shows,
    scale=lambda page: film.scale(page.unit_system),
)
