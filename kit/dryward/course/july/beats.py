"""The beats of July: the push turns round, one film for both months, a wet deck, a crawlspace that is aired."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from dryward import units
from dryward.course.july import stage_scene as scene
from dryward.course.july.stage_scene import message
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, no_dots, of_scene
from dryward.physics import steady
from dryward.pictures import vault
from dryward.units import amounts, to_si
from dryward.verdict import DRY
from dryward.weather import Air

#: The inner layer's outer face, the outer layer, and the room: across the slope.
_BACK, _DECK, _ROOM = 0.135, 0.825, ("room", 0.72, 0.06)


def _degrees(page: Page, value: float) -> str:
    return page.show(value, "temperature", 0)


def _flux(page: Page, value: float) -> str:
    return page.show(abs(value), "vapor flux")


# --- first: the plastic in July and in January ---------------------------------------------


#: The lesson's keys of the places where it may be wet.
_KEYS = {"deck": "a", "back": "b", "none": "d"}


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What gathers in July, and the two pushes."""
    july, january = states
    return {
        "amount": amounts.on_a_roof(july.profile.gain, page.unit_system),
        "flux": _flux(page, july.profile.gain),
        "inward": scene.pressure(page, july),
        "outward": scene.pressure(page, january),
        "most": page.show(scene.most_humid(january.profile), "relative humidity"),
    }


#: Both months differ in how warm it is outdoors, and in nothing else.
_JANUARY = {"T_out": to_si(20.0, "degF")}

FIRST = Beat(
    "first",
    cases=({}, _JANUARY),
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("slope", 0.3, 0.955), 0, "wet-where-winter-wets"),
                Spot("b", ("slope", 0.55, _BACK), 0),
                Spot("c", ("slope", 0.36, -0.16), 0, "wrong-side-of-the-film"),
                Spot("d", _ROOM, 0, "barrier-always-inside"),
            ),
            lambda states: _KEYS[scene.wet_at(states[0])],
        ),
        Bet(
            "january",
            (
                Spot("back", ("slope", 0.55, _BACK), 1),
                Spot("deck", ("slope", 0.3, _DECK), 1),
                Spot("none", _ROOM, 1),
            ),
            lambda states: scene.wet_at(states[1]),
        ),
    ),
    facts=first_facts,
    beliefs=("barrier-always-inside",),
)


# --- both: one inner layer for both months ---------------------------------------------------

#: The room of the step before [degC].
COOL = to_si(75.0, "degF")
#: The room a little warmer in July than before, and a house in January in a colder town.
_SUMMER = {"T_in": to_si(77.0, "degF")}
_COLD_TOWN = {"T_in": to_si(70.0, "degF"), "T_out": to_si(10.0, "degF")}


def fits_both(page: Page, states: States) -> bool:
    """Whether the roof is dry in both months, by the verdict that the free page gives too."""
    return all(state.profile.verdict.state == DRY for state in states)


def mold_limit(profile: steady.Profile) -> float:
    """The humidity from which mold can start at the face that comes nearest to it [-]."""
    found = profile.verdict.finding("face-humidity")
    assert found is not None
    return float(found.criterion.caution)


def both_facts(page: Page, states: States) -> dict[str, Any]:
    """The most humid face of each month and what it may be in July, before and now; what passes to the room then."""
    july, january = states
    inward = max(0.0, -float(july.profile.vapor_flux_in))
    cooler = page.compute(SimpleNamespace(**(vars(page.at) | {"T_in": COOL})))
    return {
        "warm": _degrees(page, july.indoor.temperature),
        "cold": _degrees(page, january.outdoor.temperature),
        "july": page.show(scene.most_humid(july.profile), "relative humidity"),
        "january": page.show(scene.most_humid(january.profile), "relative humidity"),
        "limit": page.show(mold_limit(july.profile), "relative humidity"),
        "cool": _degrees(page, cooler.indoor.temperature),
        "before": page.show(scene.most_humid(cooler.profile), "relative humidity"),
        "amount": amounts.on_a_roof(inward, page.unit_system),
        "flux": _flux(page, inward),
    }


BOTH = Beat(
    "both",
    cases=(_SUMMER, _COLD_TOWN),
    unlocks="Roof",
    aim=fits_both,
    stays=False,
    facts=both_facts,
    beliefs=("barrier-always-inside",),
)


# --- spring: a deck that got wet -----------------------------------------------------------------

#: The days of spring in which a deck should be dry again: two months.
SOON = 60
#: A January day, on which the same two roofs are compared: the room and the yard.
WINTER = Air(to_si(70.0, "degF"), 0.4), Air(to_si(20.0, "degF"), 0.8)


def dries_right(state: Any) -> str:
    """Whether the deck of a scene is dry again soon."""
    return "yes" if scene.days(state) <= SOON else "no"


def spring_facts(page: Page, states: States) -> dict[str, Any]:
    """Days to dry, and what leaves each way in a day."""
    plastic, film = states
    system = page.unit_system
    return {
        "days": SOON,
        "leak": _leak(page),
        "area": amounts.roof_area(system),
        "plastic": scene.days(plastic),
        "film": scene.days(film),
        "outward": vault.a_day(plastic.spring.outward, system),
        "plastic_inward": vault.a_day(plastic.spring.inward, system),
        "film_inward": vault.a_day(film.spring.inward, system),
        "winter": vault.a_day(steady.profile(scene.leaked(film), *WINTER).gain, system),
        "cold": units.show(WINTER[1].temperature, "temperature", system, 0),
        "damp": page.show(WINTER[0].relative_humidity, "relative humidity"),
    }


def _leak(page: Page) -> str:
    system = page.unit_system
    return amounts.whole_roof(scene.LEAK, system, 3)


def _dries_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (
        Spot("yes", ("slope", 0.3, _DECK), number, belief),
        Spot("no", ("slope", 0.6, _DECK), number),
    )
    return Bet(name, spots, of_scene(number, dries_right))


_SPRING = {"T_out": to_si(60.0, "degF"), "RH_out": 0.55, "T_in": to_si(70.0, "degF")}

SPRING = Beat(
    "spring",
    cases=({**_SPRING, "Roof": "plastic"}, {**_SPRING, "Roof": "variable"}),
    bets=(_dries_bet("plastic", 0, "barrier-always-inside"), _dries_bet("film", 1)),
    facts=spring_facts,
    beliefs=("barrier-always-inside",),
    draw=scene.draw_wet_deck,
    given=lambda page, state: scene.given_wet_deck(page, state, message("in-the-deck", water=_leak(page))),
    shows=scene.shows_wet_deck,
)


# --- air: one vent, two summer days ----------------------------------------------------------------


def air_right(state: Any) -> str:
    """What the air of a scene does to the ground under the house."""
    return "wetter" if scene.at_ground(state.outdoor) > 1.0 else "drier"


def air_facts(page: Page, states: States) -> dict[str, Any]:
    """Both dew points, and what the air leaves or takes up."""
    system = page.unit_system
    facts: dict[str, Any] = {
        "ground": units.show(scene.GROUND, "temperature", system, 0),
        "volume": units.show_in(scene.VOLUME[system], "ft3" if system == "us" else "m3", 0),
    }
    for name, state in zip(("humid", "dry"), states, strict=True):
        facts |= {
            name: page.show(state.outdoor.relative_humidity, "relative humidity"),
            f"{name}_dew": page.show(state.outdoor.dew_point, "temperature"),
            f"{name}_water": scene.so_much(state, system),
            f"{name}_there": page.show(scene.at_ground(state.outdoor), "relative humidity"),
        }
    return facts


def _air_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (
        Spot("drier", ("crawlspace", 0.35, 0.16), number, belief),
        Spot("wetter", ("crawlspace", 0.65, 0.16), number),
    )
    return Bet(name, spots, of_scene(number, air_right))


_HOT = to_si(80.0, "degF")

AIRED = Beat(
    "air",
    cases=({"T_out": _HOT, "RH_out": 0.75}, {"T_out": _HOT, "RH_out": 0.3}),
    bets=(_air_bet("humid", 0, "summer-air-dries"), _air_bet("dry", 1)),
    facts=air_facts,
    beliefs=("summer-air-dries",),
    draw=scene.draw_crawlspace,
    given=scene.given_crawlspace,
    shows=scene.shows_crawlspace,
    scale=no_dots,  # where air moves
)

PLAY = Play(
    (FIRST, BOTH, SPRING, AIRED),
    message,
    scene.draw,
    scene.signature,
    scene.given,
    scene.shows,
    scale=lambda page: vault.scale(page.unit_system, scene.DOTS),
)
