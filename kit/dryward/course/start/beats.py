"""The beats of the way in: what keeps a roof dry, each thing tried, the room's share, and where one is."""

from __future__ import annotations

from typing import Any

from dryward import language
from dryward.course.start import first_water
from dryward.course.start.first_water import FirstWater
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.teaching import lessons
from dryward.teaching.vault import OUTER
from dryward.units import amounts, to_si

message = language.beside(__file__)

#: Dots a minute for a fluid ounce a day.
DOTS = 10
#: Water that gathers so fast is drawn as much [kg/(s m2)].
_MUCH = to_si(15.0, "g/m2/day")
#: Less than this is told as none, as the verdict does [kg/(s m2)].
NONE = to_si(0.1, "g/m2/day")


# --- what is seen ------------------------------------------------------------------------


def draw(scene: Scene, state: FirstWater) -> None:
    """The vault, with a glass on the deck."""
    vault.draw(scene, state.roof, vault.season(state.outdoor.temperature), OUTER)


def given(page: Page, state: FirstWater) -> dict[str, Any]:
    """The two airs."""
    return vault.airs(state.indoor, state.outdoor, page.unit_system)


def shows(page: Page, state: FirstWater) -> dict[str, Any]:
    """Water at the deck, vapor through the layers, and air through the leaks."""
    profile, roof = state.profile, state.roof
    node = profile.face(OUTER, 0)
    d, frost = scenery.through(roof, float(profile.depth[node])), bool(profile.temperature[node] < 0)
    parts: list[dict[str, Any]] = [vault.vapor(profile, roof, DOTS)]
    if state.water > NONE:
        much = min(1.0, state.water / _MUCH)
        marks = [
            scenery.drops(("slope", 0.03, d), ("slope", 0.97, d), much, frost),
            scenery.drops(("lens", 0.08, vault.LENS_FACE), ("lens", 0.92, vault.LENS_FACE), much, frost),
        ]
        text = message("gathers", frost=frost, amount=vault.a_day(state.water, page.unit_system))
        parts.append({"marks": marks, "tags": [scenery.tag(text, ("slope", 0.45, 1.0), "wet", "over")]})
    else:
        parts.append({"tags": [scenery.tag(message("none-gathers"), ("slope", 0.45, 1.0), "", "over")]})
    _, times, _ = first_water.DONE[state.done]
    if times:
        share = 0.25 * times
        arrows = [scenery.arrow("air flow", ("slope", s, -0.3), ("slope", s, 0.42), share) for s in (0.22, 0.74)]
        parts.append(
            {"marks": arrows, "tags": [scenery.tag(message("leak"), ("slope", 0.22, -0.3), "air flow", "under", True)]}
        )
    return scenery.together(parts)


def scale(page: Page) -> str:
    """What the dots stand for."""
    return vault.scale(page.unit_system, DOTS)


def _whole(page: Page, state: FirstWater) -> str:
    return vault.a_day(state.water, page.unit_system)


# --- first: what keeps a roof dry most of all? --------------------------------------------------

#: The lesson's keys of what may be done, and the room's humidity that goes with each; None as it is.
_KEYS: dict[str, tuple[str, float | None]] = {
    "a": ("vents", None),
    "b": ("plastic", None),
    "c": ("breathes", None),
    "d": ("sealed", 0.3),
}


def done_as(key: str, place: str, humidity: float) -> FirstWater:
    """The roof after what a choice of the lesson says."""
    done, room = _KEYS[key]
    return first_water.in_january(done, place, room or humidity)


def first_right(states: States) -> str:
    """What leaves the least water."""
    room = states[0].indoor.relative_humidity
    return min(_KEYS, key=lambda key: done_as(key, "cold", room).water)


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """The water of the roof as it is, and of the one where all three are done."""
    bare, sealed = states
    return {
        "bare": amounts.on_a_roof(bare.water, page.unit_system),
        "sealed": _whole(page, sealed),
        "flux": page.show(bare.water, "vapor flux"),
        "other": page.show(sealed.water, "vapor flux"),
    }


FIRST = Beat(
    "first",
    cases=({}, {"Done": "sealed", "RH_in": 0.3}),
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("slope", 0.07, 0.93), 0, "more-vents-always-help"),
                Spot("b", ("slope", 0.5, 0.118), 0, "barrier-always-inside"),
                Spot("c", ("slope", 0.22, -0.25), 0, "house-must-breathe"),
                Spot("d", ("room", 0.86, 0.1), 0),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
)


# --- try: each thing, on the same roof ------------------------------------------------------------

#: So much of the water may be left.
LEFT = 0.1


def nearly_none(page: Page, states: States) -> bool:
    """Whether most of the first water is gone."""
    return bool(states[0].water <= LEFT * page.stage.first[0].water)


def try_facts(page: Page, states: States) -> dict[str, Any]:
    """The water now and as it was, and how humid the room is."""
    return {
        "now": _whole(page, states[0]),
        "was": _whole(page, page.stage.first[0]),
        "flux": page.show(states[0].water, "vapor flux"),
    }


TRY = Beat("try", unlocks="Done", aim=nearly_none, stays=False, facts=try_facts)


# --- run: the humidity of the room -----------------------------------------------------------------


def run_facts(page: Page, states: States) -> dict[str, Any]:
    """The humidity at which it stops, and the water before."""
    return {
        "humidity": page.show(states[0].indoor.relative_humidity, "relative humidity"),
        "before": _whole(page, page.stage.first[0]),
        "damp": page.show(page.stage.first[0].indoor.relative_humidity, "relative humidity"),
    }


RUN = Beat(
    "run",
    cases=({"Done": "sealed", "RH_in": 0.6},),
    unlocks="RH_in",
    aim=lambda page, states: states[0].water <= NONE,
    stays=False,
    facts=run_facts,
)


# --- place: where are you? ----------------------------------------------------------------------------

#: Where it matters most, by town: the lesson that tells of it.
_FOR = {"cold": "where-it-gets-wet", "hot-humid": "july", "hot-dry": "clear-night"}


def place_facts(page: Page, states: States) -> dict[str, Any]:
    """The water of a January day there, the push of a July day, and the lesson that is about it."""
    place, state = page.controls["Place"].si, states[0]
    lesson = lessons.lesson(_FOR.get(place, "where-it-gets-wet" if state.water > NONE else "july"))
    return {
        "water": _whole(page, state),
        "some": state.water > NONE,
        "inward": first_water.push_in_july(place) > 0,
        "cold": page.show(state.outdoor.temperature, "temperature", 0),
        "number": lesson.number,
        "title": lesson.title,
    }


WHERE = Beat("place", unlocks="Place", facts=place_facts)

PLAY = Play((FIRST, TRY, RUN, WHERE), message, draw, vault.signature, given, shows, scale, may_leave=True)
