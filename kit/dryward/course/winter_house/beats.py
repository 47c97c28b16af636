"""The beats of the winter house: damp cold air dries, tight is dry with a fan, the fan clears the glass, two heaters.

The house is a tub.  What people give off is its tap, the fan and the leaks
are its drain, and the humidity of the room is its level; the window marks how
high that may stand.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from dryward import air, language, units
from dryward.course.winter_house.questions import ROOM_TEMPERATURE
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics.airleak import LONG_SHARE, Leak, brought
from dryward.physics.house_air import HouseAir, balanced, with_fresh_air
from dryward.pictures import house, scenery, vault
from dryward.pictures.scenery import Scene
from dryward.units import DAY, amounts, to_si
from dryward.weather import Air
from dryward.weather.indoor import burner_water, steady_humidity

message = language.beside(__file__)

#: A house that was sealed with some care, and a drafty one: air changes an hour at 50 Pa, and flow at 1 Pa [m3/s].
SEALED_ACH, DRAFTY_ACH = 2.0, 8.0
SEALED, DRAFTY = (Leak.from_blower_door(each, house.VOLUME).coefficient for each in (SEALED_ACH, DRAFTY_ACH))
#: The fan that runs all day in the sealed house [m3/s].
FAN = to_si(60.0, "cfm")
#: Heat of both heaters [W], three electric ones of 1500 W or one burner; water of the job itself [kg/s].
HEAT, JOB = 3 * 1500.0, to_si(11.0, "pint/day")
#: The tap's arrow is widest at so much water [kg/s], the drops in the roof are most at so much in a winter [kg].
_WIDEST, _MUCH = to_si(40.0, "pint/day"), 100.0


# --- the house of a state ---------------------------------------------------------------


@cache
def _house(outdoors: float, fresh_air: float) -> HouseAir:
    return with_fresh_air(SEALED, house.PLACES, ROOM_TEMPERATURE, outdoors, fresh_air)


def house_air(state: Any) -> HouseAir:
    """The sealed house, with the fan that brings in the fresh air of a state."""
    return _house(state.outdoor.temperature, state.fresh_air)


def in_roof(found: HouseAir, humidity: float, outdoors: float) -> float:
    """What the air that leaves at the ridge would leave in the roof in a winter of 150 such days [kg]."""
    room = Air(ROOM_TEMPERATURE, min(humidity, 1.0))
    stays = brought(max(0.0, found.flows[-1]), room, outdoors, LONG_SHARE).stays
    return float(stays) * amounts.WINTER * DAY


def roof_of(state: Any) -> float:
    """The same of a state [kg]."""
    return in_roof(house_air(state), state.humidity, state.outdoor.temperature)


def drafty(state: Any) -> tuple[float, float]:
    """Of the same family in the drafty house: its humidity [-], and what its roof takes in [kg]."""
    outdoors = state.outdoor.temperature
    found = balanced(DRAFTY, house.PLACES, ROOM_TEMPERATURE, outdoors)
    humidity = float(steady_humidity(state.production, found.fresh_air, state.outdoor, ROOM_TEMPERATURE))
    return humidity, in_roof(found, humidity, outdoors)


# --- the scenes --------------------------------------------------------------------------


def _burns(state: Any) -> bool:
    """Whether the water of a burner is in what is given off."""
    return bool(state.production > JOB * 1.01)


def signature(state: Any) -> Any:
    """What of a state stands still: the season, and on the job which heater."""
    return vault.season(state.outdoor.temperature), _burns(state)


def draw(scene: Scene, state: Any) -> None:
    """A family in its house."""
    house.draw(scene, vault.season(state.outdoor.temperature))


def draw_job(scene: Scene, state: Any) -> None:
    """The same house while it is built, with a heater."""
    house.draw(scene, vault.season(state.outdoor.temperature), "burner" if _burns(state) else "electric")


def percent(page: Page, humidity: float) -> str:
    """A relative humidity; full air at most."""
    return page.show(min(humidity, 1.0), "relative humidity")


def degrees(page: Page, temperature: float) -> str:
    """A temperature, whole."""
    return page.show(temperature, "temperature", 0)


def a_day(page: Page, flow: float) -> str:
    """A flow of water, as whole pints or kilograms a day."""
    return page.show(flow, "mass flow", 0)


def water(page: Page, mass: float) -> str:
    """An amount of water [kg], in words."""
    return amounts.water(mass / units.WATER_DENSITY, page.unit_system)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The air outdoors."""
    outdoors = message(
        "stage-outdoors",
        temperature=degrees(page, state.outdoor.temperature),
        humidity=percent(page, state.outdoor.relative_humidity),
    )
    return {"tags": [scenery.tag(outdoors, ("outdoors", 0.3, 0.05))]}


def tap(page: Page, flow: float, job: bool = False) -> dict[str, Any]:
    """The water that people give off, or the work on a job site."""
    arrow = scenery.arrow("vapor pressure", ("house", 0.62, 0.83), ("house", 0.62, 0.64), flow / _WIDEST)
    if job and page.narrow and page.stage.shown:  # on a phone there is no room for the words beside what is so
        return {"marks": [arrow]}
    text = message("stage-tap", job=job, water=a_day(page, flow))
    return {
        "marks": [arrow],
        "tags": [scenery.tag(text, ("house", 0.62, 0.84), "vapor pressure", "over", minor=True)],
    }


def given_lived_in(page: Page, state: Any) -> dict[str, Any]:
    """The air outdoors, and what people give off."""
    return scenery.together([given(page, state), tap(page, state.production)])


def given_first(page: Page, state: Any) -> dict[str, Any]:
    """The same, and the level as it is with little fresh air."""
    level = page.stage.first[0].humidity
    line = {"marks": [scenery.line("before", ("house", 0.0, level), ("house", 1.0, level))]}
    tags = []
    if state is not page.stage.states[0]:
        text = message("stage-before", humidity=percent(page, level))
        tags.append(scenery.tag(text, ("house", 0.12, level), "relative humidity", "over", minor=True))
    return scenery.together([given_lived_in(page, state), line, {"tags": tags}])


def given_on_the_job(page: Page, state: Any) -> dict[str, Any]:
    """The air outdoors, and the water of the work."""
    return scenery.together([given(page, state), tap(page, JOB, job=True)])


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The level and its limit, the wet window, and the air that moves."""
    level, limit = min(state.humidity, 1.0), min(state.edge, 1.0)
    found = house_air(state)
    marks = [
        scenery.area("level", *house.inside(level)),
        *(scenery.line(look, *house.across_room(share)) for look, share in (("surface", level), ("limit", limit))),
        *house.wet_pane((state.humidity - state.edge) / (state.glass - state.edge)),
    ]
    indoors = message("stage-level", humidity=percent(page, level))
    fogs = message("stage-limit", humidity=percent(page, limit))
    tags = [
        scenery.tag(indoors, ("house", 0.42, level), "relative humidity", "over"),
        scenery.tag(fogs, ("house", 0.8, limit), "limit", "over", minor=True),
    ]
    twin = len(page.stage.states) > 1
    parts = [
        {"marks": marks, "tags": tags},
        house.arrows(found),
        house.moving(found, page.unit_system),
        house.neutral(found, named=not twin),
    ]
    if not twin:
        parts.append(house.named(found, page.unit_system))
    return scenery.together(parts)


def scale(page: Page) -> str:
    """What a dart stands for."""
    return house.scale(page.unit_system)


# --- first: damp cold air comes in ---------------------------------------------------------


def first_right(states: States) -> str:
    """Where the humidity goes as more outdoor air comes in."""
    before, after = (round(100 * state.humidity) for state in states)
    return "b" if after < before else "a" if after > before else "c"


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """Both humidities; what the fresh air brings in and carries out, and what it would be at once it is warm."""
    before, after = states
    number = [units.from_si(each, units.shown_unit("mass flow", page.unit_system).name)
              for each in (after.carried(after.outdoor.vapor_pressure), after.production)]  # fmt: skip
    # The sum of the two as they are shown, so that the books on the screen are right.
    out = to_si(float(sum(round(each) for each in number)), units.shown_unit("mass flow", page.unit_system).name)
    alone = float(air.relative_humidity(ROOM_TEMPERATURE, after.outdoor.vapor_pressure))
    return {
        "slow": house.told(before.fresh_air, page.unit_system),
        "fast": house.told(after.fresh_air, page.unit_system),
        "before": percent(page, before.humidity),
        "after": percent(page, after.humidity),
        "brings": a_day(page, after.carried(after.outdoor.vapor_pressure)),
        "makes": a_day(page, after.production),
        "carries": a_day(page, out),
        "alone": percent(page, alone),
        "outdoors": percent(page, after.outdoor.relative_humidity),
    }


#: The cold and the fan of the question: the sliders' own starts are round numbers in each unit system.
_ASKED = {"T_out": to_si(20.0, "degF"), "Fresh_air": to_si(45.0, "cfm")}

FIRST = Beat(
    "first",
    cases=(_ASKED, {**_ASKED, "Fresh_air": to_si(90.0, "cfm")}),
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("house", 0.4, 0.62), 1, "winter-fog-is-wet-air", "out"),
                Spot("b", ("house", 0.4, 0.2), 1, glyph="in"),
                Spot("c", ("house", 0.4, 0.42), 1, "nothing-is-added-indoors", "none"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    given=given_first,
    beliefs=("winter-fog-is-wet-air",),
)


# --- breathe: a drafty house is sealed, without a fan and with one ---------------------------


def breathe_right(state: Any) -> str:
    """Whether the roof of a sealed house takes in more than that of the drafty one."""
    return "more" if roof_of(state) > drafty(state)[1] else "less"


def breathe_facts(page: Page, states: States) -> dict[str, Any]:
    """What the three roofs take in, and how humid the three houses are."""
    closed, fan = states
    humidity, leaves = drafty(closed)
    return {
        "drafty_roof": water(page, leaves),
        "closed_roof": water(page, roof_of(closed)),
        "fan_roof": water(page, roof_of(fan)),
        "drafty": percent(page, humidity),
        "closed": percent(page, closed.humidity),
        "with_fan": percent(page, fan.humidity),
        "edge": percent(page, fan.edge),
        "fan": house.told(FAN, page.unit_system),
        "volume": page.show(house.VOLUME, "volume"),
        "sealed_ach": units.number(SEALED_ACH),
        "drafty_ach": units.number(DRAFTY_ACH),
        "days": amounts.WINTER,
    }


def roof_takes(page: Page, state: Any) -> dict[str, Any]:
    """What stays in the roof, as drops under both slopes and in words."""
    mass = roof_of(state)
    tags = [scenery.tag(message("stage-roof", water=water(page, mass)), ("house", 0.5, 1.2), "wet", "over")]
    much, frost = min(1.0, mass / _MUCH), state.outdoor.temperature < 0
    marks = [scenery.drops(*ends, much, frost) for ends in house.UNDER_ROOF]
    return {"marks": marks, "tags": tags}


_COLD = {"T_out": to_si(20.0, "degF"), "RH_out": 0.8}
_CLOSED, _FANNED = (
    balanced(SEALED, house.PLACES, ROOM_TEMPERATURE, _COLD["T_out"], fan).fresh_air for fan in (0.0, FAN)
)


def _breathe_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (
        Spot("more", ("house", 0.3, 1.06), number, belief, "out"),
        Spot("less", ("house", 0.7, 1.06), number, glyph="in"),
    )
    return Bet(name, spots, of_scene(number, breathe_right))


BREATHE = Beat(
    "breathe",
    cases=({**_COLD, "Fresh_air": _CLOSED}, {**_COLD, "Fresh_air": _FANNED}),
    # Where it is so, the words are no belief.
    bets=(_breathe_bet("closed", 0), _breathe_bet("fan", 1, "house-must-breathe")),
    facts=breathe_facts,
    beliefs=("house-must-breathe",),
    marks=roof_takes,
)


# --- fan: the level comes down, and the neutral level goes up ---------------------------------


def fan_facts(page: Page, states: States) -> dict[str, Any]:
    """The level and its limit now; how high the neutral level stands."""
    state = states[0]
    found = house_air(state)
    return {
        "cold": degrees(page, state.outdoor.temperature),
        "fresh": house.told(state.fresh_air, page.unit_system),
        "fan": house.told(found.fan, page.unit_system),
        "before": percent(page, page.stage.first[0].humidity),
        "humidity": percent(page, state.humidity),
        "edge": percent(page, state.edge),
        "over": found.neutral > house.HEIGHT,
        "neutral": house.high(found.neutral, page.unit_system),
        "was": house.high(house_air(page.stage.first[0]).neutral, page.unit_system),
        "ridge": house.high(house.HEIGHT, page.unit_system),
    }


def fan_off(page: Page, state: Any) -> dict[str, Any]:
    """That the fan is off, where it is."""
    if house_air(state).fan >= house.LEAST:
        return {}
    return {"tags": [scenery.tag(message("stage-fan-off"), house.AT_FAN, "air flow", "under")]}


FAN_BEAT = Beat(
    "fan",
    cases=({"T_out": to_si(10.0, "degF"), "RH_out": 0.8, "Fresh_air": to_si(35.0, "cfm")},),
    unlocks="Fresh_air",
    aim=lambda page, states: states[0].humidity < states[0].edge,
    stays=False,
    facts=fan_facts,
    given=given_lived_in,
    marks=fan_off,
)


# --- heater: the same heat, without water and with it -------------------------------------------

#: Below the first the job is called dry air, above the second damp air [-].
LOW, HIGH = 0.4, 0.6


def heater_right(state: Any) -> str:
    """Where the humidity of a job site ends."""
    humidity = state.humidity
    assert not LOW <= humidity <= HIGH
    return "low" if humidity < LOW else "high"


def heater_facts(page: Page, states: States) -> dict[str, Any]:
    """Both humidities and dew points, and the water of the flame."""
    electric, burner = states
    most = air.saturation_vapor_pressure(ROOM_TEMPERATURE)
    dew = [float(air.dew_point(min(each.humidity, 1.0) * most)) for each in states]
    return {
        "electric": percent(page, electric.humidity),
        "burner": percent(page, burner.humidity),
        "electric_dew": degrees(page, dew[0]),
        "burner_dew": degrees(page, dew[1]),
        "adds": water(page, burner_water(HEAT) * DAY),
        "job": a_day(page, JOB),
        "edge": percent(page, electric.edge),
        "low": percent(page, LOW),
        "high": percent(page, HIGH),
    }


def dew_point(page: Page, state: Any) -> dict[str, Any]:
    """The dew point indoors, in words, and at the burner the water of its flame."""
    most = air.saturation_vapor_pressure(ROOM_TEMPERATURE)
    dew = degrees(page, float(air.dew_point(min(state.humidity, 1.0) * most)))
    tags = [scenery.tag(message("stage-dew-point", dew=dew), ("house", 0.34, 0.1), "dew point")]
    if not _burns(state):
        return {"tags": tags}
    flame = burner_water(HEAT)
    arrow = scenery.arrow("vapor pressure", ("house", 0.76, 0.22), ("house", 0.76, 0.42), flame / _WIDEST)
    text = message("stage-flame", water=a_day(page, flame))
    tags.append(scenery.tag(text, ("house", 0.76, 0.3), "vapor pressure", "left", minor=True))
    return {"marks": [arrow], "tags": tags}


def _heater_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (
        Spot("low", ("house", 0.3, 0.2), number, belief, "in"),
        Spot("high", ("house", 0.3, 0.72), number, glyph="out"),
    )
    return Bet(name, spots, of_scene(number, heater_right))


_JOB = {"T_out": to_si(30.0, "degF"), "RH_out": 0.8, "Fresh_air": to_si(45.0, "cfm")}

HEATER = Beat(
    "heater",
    cases=({**_JOB, "Water": JOB}, {**_JOB, "Water": JOB + burner_water(HEAT)}),
    bets=(_heater_bet("electric", 0), _heater_bet("burner", 1, "propane-heater-dries")),
    facts=heater_facts,
    beliefs=("propane-heater-dries",),
    marks=dew_point,
    draw=draw_job,
    given=given_on_the_job,
)

PLAY = Play((FIRST, BREATHE, FAN_BEAT, HEATER), message, draw, signature, given, shows, scale)
