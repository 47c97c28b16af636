"""The beats of open out, tight in: four roofs, five to one in the cold, two barriers twice, one humidity twice."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np

from dryward import building, language, units
from dryward.building import FixedMembrane
from dryward.course.open_out_tight_in import roof_map
from dryward.course.open_out_tight_in.scene import FOLK
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics import drying, steady
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.units import DAY, amounts, to_si
from dryward.weather import Air

message = language.beside(__file__)

OUTER = "outer layer"
#: A dry spring day, indoors and outdoors, and what a leak left at the outer layer before it [kg/m2].
SPRING = Air(to_si(70.0, "degF"), 0.45), Air(to_si(60.0, "degF"), 0.6)
LEAKED = to_si(500.0, "g/m2")
#: Drying that is drawn as a full arrow [kg/(s m2)].
_WIDEST = to_si(8.0, "g/m2/day")


def draw(scene: Scene, state: Any) -> None:
    """One roof, with a lens on its outer face."""
    vault.draw(scene, state.roof, vault.season(state.outdoor.temperature), OUTER)


#: The small roof of spring, under the one of January: left, top, right, bottom, in the shapes of two scenes [px].
_SPRING = {"post": (318.0, 528.0, 588.0, 756.0), "strip": (590.0, 272.0, 884.0, 444.0)}


def draw_seasons(scene: Scene, state: Any) -> None:
    """One roof in January, and the same in spring, small, under its own sky; only two scenes are side by side."""
    vault.draw(scene, state.roof, vault.season(state.outdoor.temperature), "")
    if scene.shape not in _SPRING:
        return
    january, box = dict(scene.axes), _SPRING[scene.shape]
    vault.small(scene, state.roof, vault.season(SPRING[1].temperature), box)
    left, top, right, bottom = box
    # What of its slope stands out of the box is behind the room again.
    scene.shape_of([(right, top), (right + 40, top), (right + 40, bottom), (right, bottom)], "room")
    scene.line([(left, top), (right, top), (right, bottom), (left, bottom), (left, top)], "thin")
    spring = {"spring": scene.axes["slope"], "spring-sky": scene.axes["sky"]}
    scene.axes.update(january | spring)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs, and the perms of both sides."""
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("room", 0.42, 0.15))
    found["tags"] += [
        scenery.tag(
            message("film-has", permeance=_perms(page, state.inner)), ("slope", 0.3, 0.06), "permeance", "under"
        ),
        scenery.tag(
            message("outer-has", permeance=_perms(page, state.outer)), ("slope", 0.34, 1.0), "permeance", "over"
        ),
    ]
    return found


def given_seasons(page: Page, state: Any) -> dict[str, Any]:
    """The same, and how mild it is in spring."""
    text = message("in-spring", mild=_degrees(page, SPRING[1]))
    return scenery.together([given(page, state), {"tags": [scenery.tag(text, ("spring-sky", 0.5, 0.0), "", "over")]}])


def shows(page: Page, state: Any) -> dict[str, Any]:
    """Water where it gathers, the vapor, and else how humid the outer face is."""
    parts = [vault.water(state.profile, state.roof, page.unit_system), vault.vapor(state.profile, state.roof)]
    if not state.profile.wet_planes:
        parts.append(vault.face(state.profile, OUTER, page.unit_system))
    return scenery.together(parts)


def shows_seasons(page: Page, state: Any) -> dict[str, Any]:
    """Water and vapor of January; spring has marks of its own."""
    water = vault.water(state.profile, state.roof, page.unit_system, lens=False)
    return scenery.together([water, vault.vapor(state.profile, state.roof)])


def _perms(page: Page, value: float) -> str:
    return vault.perms(value, page.unit_system)


def _degrees(page: Page, air: Air) -> str:
    return page.show(air.temperature, "temperature", 0)


# --- first: four roofs on the map ---------------------------------------------------------

#: Inside and outside of the four roofs [perm]; the page starts as "c".
ROOFS = {"a": (1.0, 50.0), "b": (0.1, 50.0), "c": (1.0, 1.5), "d": (0.1, 0.1)}


def roof_of(state: Any, inner: float, outer: float) -> building.Assembly:
    """The roof of a state with other permeances [kg/(s m2 Pa)]."""
    return state.roof.replace("inner membrane", FixedMembrane(inner)).replace(OUTER, FixedMembrane(outer))


def gains_of(state: Any) -> dict[str, float]:
    """What each of the four gains on the day of a state [kg/(s m2)]."""
    return {
        key: float(steady.profile(roof_of(state, *to_si(pair, "perm")), state.indoor, state.outdoor).gain)
        for key, pair in ROOFS.items()
    }


def first_right(states: States) -> str:
    """The one that gains the most."""
    found = gains_of(states[0])
    return max(found, key=lambda key: found[key])


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What the two gain that gain at all."""
    found = gains_of(states[0])
    assert found["a"] == found["b"] == 0
    return {
        "most": amounts.on_a_roof(found["c"], page.unit_system),
        "other": vault.a_day(found["d"], page.unit_system),
        "flux": page.show(found["c"], "vapor flux"),
        "system": page.unit_system,
    }


def four(page: Page, state: Any) -> dict[str, Any]:
    """The four roofs on the map, those that gain with how much."""
    marks, tags = [], []
    for key, gain in gains_of(state).items():
        inner, outer = to_si(ROOFS[key], "perm")
        _, s, d = roof_map.place(float(inner), float(outer))
        if gain:
            text = message("gains-a-day", amount=vault.a_day(gain, page.unit_system))
            tags.append(scenery.tag(text, ("map", s + 0.03, d), "wet", "right"))
        marks.append(scenery.band("here", "map", (s - 0.016, s + 0.016), (d - 0.015, d + 0.015)))
    return {"marks": marks, "tags": tags}


_TAGS = {"a": "counts-only-what-comes", "b": "counts-only-what-leaves", "d": "counts-only-what-leaves"}

FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            tuple(
                Spot(key, roof_map.place(*(to_si(each, "perm") for each in pair)), 0, _TAGS.get(key, ""))
                for key, pair in ROOFS.items()
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    marks=four,
)


# --- five: five to one, until it is too cold for it -----------------------------------------


def five_facts(page: Page, states: States) -> dict[str, Any]:
    """How cold it is, what gathers then, and how many to one it would take."""
    (state,) = states
    balance = state.balance
    return {
        "cold": page.show(state.outdoor.temperature, "temperature", 0),
        "amount": amounts.on_a_roof(state.profile.gain, page.unit_system),
        "stops": balance is not None,
        "needed": units.number(balance / state.inner, figures=2, rounded=True) if balance else "",
        "flux": page.show(state.profile.gain, "vapor flux"),
    }


FIVE = Beat(
    "five",
    cases=({"T_out": to_si(35.0, "degF"), "M_out": to_si(FOLK, "perm")},),
    unlocks="T_out",
    aim=lambda page, states: bool(states[0].profile.gain > 0),
    stays=False,
    facts=five_facts,
)


# --- both: two barriers in January, and wet in spring ------------------------------------------


def days(roof: building.Assembly) -> float:
    """How long a roof needs in such a spring to lose what leaked in, at this day's rate [days]."""
    return float(LEAKED / drying.of_a_wet_face(roof, OUTER, *SPRING).total / DAY)


def gains_less(states: States) -> str:
    """Which of two roofs gains less in January."""
    tight, other = (float(state.profile.gain) for state in states)
    return "tight" if tight < other else "other"


def dries_first(states: States) -> str:
    """Which of two wet roofs is dry first."""
    tight, other = (days(state.roof) for state in states)
    return "tight" if tight < other else "other"


def told_days(roof: building.Assembly) -> str:
    """The same as it is shown."""
    return units.number(days(roof), figures=2, rounded=True)


def both_facts(page: Page, states: States) -> dict[str, Any]:
    """January's gain and spring's days of both roofs, and of one that is open outside."""
    tight, other = states
    system = page.unit_system
    third = to_si((1.0, 50.0), "perm")
    open_out = steady.profile(roof_of(tight, *third), tight.indoor, tight.outdoor)
    assert open_out.gain == 0
    rate = drying.of_a_wet_face(tight.roof, OUTER, *SPRING).total
    return {
        "tight-gain": vault.a_day(tight.profile.gain, system),
        "other-gain": vault.a_day(other.profile.gain, system),
        "tight-days": told_days(tight.roof),
        "other-days": told_days(other.roof),
        "open": _perms(page, float(third[1])),
        "open-days": told_days(roof_of(tight, float(third[0]), float(third[1]))),
        # With a digit more: on the screen it is divided by what leaves in a day.
        "leaked": amounts.whole_roof(LEAKED, system, 3),
        "mild": _degrees(page, SPRING[1]),
        "tight-a-day": vault.a_day(rate, system),
        "flux": page.show(rate, "vapor flux"),
    }


def spring(page: Page, state: Any) -> dict[str, Any]:
    """How the small roof dries in spring, and how long it takes, in words over it."""
    text = message("dries-in", days=told_days(state.roof))
    found = drying.of_a_wet_face(state.roof, OUTER, *SPRING)
    ways = (
        (found.outward, ("spring", 0.36, 0.76), ("spring", 0.36, 1.66)),
        (found.inward, ("spring", 0.62, 0.74), ("spring", 0.62, -0.2)),
    )
    arrows = [scenery.arrow("drying", start, end, abs(rate) / (2 * _WIDEST)) for rate, start, end in ways]
    return {"marks": arrows, "tags": [scenery.tag(text, ("spring-sky", 0.6, 0.88), "drying")]}


def _which(name: str, right: Callable[[States], str], along: float, belief: str = "") -> Bet:
    spots = (Spot("tight", ("slope", along, 0.47), 0, belief), Spot("other", ("slope", along, 0.47), 1))
    return Bet(name, spots, right)


_TENTH = to_si(0.1, "perm")

BOTH = Beat(
    "both",
    cases=({"M_in": _TENTH, "M_out": _TENTH}, {}),
    own=1,
    # In January the holder is right: there the words are no belief.
    bets=(_which("january", gains_less, 0.2), _which("spring", dries_first, 0.56, "two-barriers-twice-as-good")),
    facts=both_facts,
    beliefs=("two-barriers-twice-as-good",),
    marks=spring,
    draw=draw_seasons,
    given=given_seasons,
    shows=shows_seasons,
)


# --- humid: one humidity, two cold days ----------------------------------------------------------


#: Room humidities that are tried for the most that a roof can take [-].
_TRIED = np.arange(0.05, 0.901, 0.01)


def can_take(state: Any) -> float:
    """The highest room humidity, in whole percents, with which a roof gains nothing on its day [-]."""
    gains = np.array(
        [steady.profile(state.roof, Air(state.indoor.temperature, float(h)), state.outdoor).gain for h in _TRIED]
    )
    wet = np.flatnonzero(gains > 0)
    return float(_TRIED[wet[0] - 1 if wet.size else -1])


def frost_right(state: Any) -> str:
    """Whether frost gathers in one of the scenes."""
    return "frost" if state.profile.wet_planes else "none"


def humid_facts(page: Page, states: States) -> dict[str, Any]:
    """What gathers on both days, and how humid the house may be."""
    mild, deep = states
    return {
        "room": page.show(mild.indoor.relative_humidity, "relative humidity"),
        "amount": vault.a_day(deep.profile.gain, page.unit_system),
        "mild-limit": page.show(can_take(mild), "relative humidity"),
        "deep-limit": page.show(can_take(deep), "relative humidity"),
        "flux": page.show(deep.profile.gain, "vapor flux"),
    }


def limit(page: Page, state: Any) -> dict[str, Any]:
    """How humid the house may be that day, in words at the room."""
    text = message("takes", humidity=page.show(can_take(state), "relative humidity"))
    return {"tags": [scenery.tag(text, ("slope", 0.62, 0.0), "relative humidity", "under")]}


def _frost_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (Spot("none", ("slope", 0.42, 0.8), number, belief), Spot("frost", ("slope", 0.66, 0.8), number))
    return Bet(name, spots, of_scene(number, frost_right))


_TEN_TO_ONE = {"M_out": to_si(10.0, "perm")}

HUMID = Beat(
    "humid",
    cases=(_TEN_TO_ONE, {**_TEN_TO_ONE, "T_out": to_si(0.0, "degF")}),
    # Where it is so, the words are no belief.
    bets=(_frost_bet("mild", 0), _frost_bet("deep", 1, "same-humidity-all-winter")),
    facts=humid_facts,
    beliefs=("same-humidity-all-winter",),
    marks=limit,
    draw=draw,
    given=given,
    shows=shows,
)

PLAY = Play(
    (FIRST, FIVE, BOTH, HUMID),
    message,
    roof_map.draw,
    vault.signature,
    roof_map.given,
    roof_map.shows,
    scale=lambda page: vault.scale(page.unit_system),
)
