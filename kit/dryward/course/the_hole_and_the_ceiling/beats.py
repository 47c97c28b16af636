"""The beats of the hole and the ceiling: no path does it all, in low and out high, two jobs of a layer, boards leak."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from dryward import language, units
from dryward.course.the_hole_and_the_ceiling import stage_scene
from dryward.course.the_hole_and_the_ceiling.givens import CEILING, COLD, HEIGHT, HOUSE, ROOM, WINTER
from dryward.course.the_hole_and_the_ceiling.stage_scene import (
    BOARDS,
    DRYWALL,
    FILM,
    INCH,
    JAR,
    MARK,
    PINHOLE,
    PLASTIC,
    as_hole,
    joints,
)
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics.airleak import LONG_SHARE
from dryward.physics.house_air import HouseAir, at_push, balanced
from dryward.pictures import house, instruments, scenery
from dryward.pictures.scenery import Scene
from dryward.units import DAY, amounts, to_si
from dryward.units.table import thickness

message = language.beside(__file__)

#: Dots a minute for a fluid ounce of water a day through the piece of ceiling.
DOTS = 20
OUNCE = 1000 * to_si(1.0, "fl oz") / DAY
#: Water in the roof is drawn as much at so much on the piece of ceiling [kg].
_MUCH = 9.0
#: A whole ceiling of boards, by unit system [m2].
WHOLE = {"us": to_si(600.0, "ft2"), "si": 56.0}


def quarts(page: Page, kilograms: float) -> str:
    """Water [kg] in quarts or liters, one measure on a screen; and what is little as told."""
    volume = kilograms / units.WATER_DENSITY
    shown = units.from_si(volume, "quart" if page.unit_system == "us" else "L")
    if shown < 0.095:
        return amounts.water(volume, page.unit_system)
    text = units.number(shown, figures=2, rounded=True)
    return message("so-many-quarts", number=text) if page.unit_system == "us" else _joined(text, "L")


def _joined(number: str, unit: str) -> str:
    return units.with_unit(number, unit)


def square(page: Page, area: float) -> str:
    """The area of a hole."""
    unit = "in2" if page.unit_system == "us" else "cm2"
    return _joined(units.number(units.from_si(area, unit), figures=2, rounded=True), unit)


# --- the scenes --------------------------------------------------------------------------


def signature(state: Any) -> Any:
    """What of a state stands still: whether there is a film."""
    return stage_scene.filmed(state)


def draw_house(scene: Scene, state: Any) -> None:
    """The house as a whole."""
    house.draw(scene)


def _degrees(page: Page, temperature: float) -> str:
    return page.show(temperature, "temperature", 0)


def airs(page: Page, state: Any) -> list[dict[str, Any]]:
    """How warm both sides are, and how humid the room."""
    humidity = page.show(state.room.relative_humidity, "relative humidity")
    room = message("stage-room", temperature=_degrees(page, ROOM), humidity=humidity)
    cold = message("stage-cold", temperature=_degrees(page, COLD))
    return [scenery.tag(room, ("room", 0.75, -0.08)), scenery.tag(cold, ("sky", 0.3, 0.06))]


def given(page: Page, state: Any) -> dict[str, Any]:
    """Both airs, the hole, and the marks of the jars."""
    tags = airs(page, state)
    marks = stage_scene.hole(state.hole, stage_scene.filmed(state))
    ticks = instruments.graduations(JAR, MARK[page.unit_system])
    marks += [scenery.ticks(ticks, name) for name in ("air-jar", "vapor-jar")]
    if state.hole > 2 * PINHOLE:
        text = message("stage-hole", area=square(page, state.hole))
        tags.append(scenery.tag(text, ("slope", stage_scene.HOLE, -0.04), "", "under", minor=True))
    return {"marks": marks, "tags": tags}


def shows(page: Page, state: Any) -> dict[str, Any]:
    """What the air leaves and what vapor brings, as dots on their way, as water at the cold face and in the jars."""
    face = stage_scene.through(stage_scene.filmed(state))["outer layer"][0]
    marks, tags, flows = [], [], []
    paths = (
        ("vapor-jar", "stage-by-vapor", state.by_vapor, (0.05, 0.64), 0.36, 0.56),
        ("air-jar", "stage-by-air", state.stays, (0.71, 0.81), stage_scene.HOLE, 0.02),
    )
    for jar, words, kilograms, (start, end), middle, spread in paths:
        marks.append(instruments.level(jar, kilograms / JAR))
        tags.append(scenery.tag(message(words, water=quarts(page, kilograms)), (jar, 0.5, 1.0), "wet", "over"))
        if kilograms > 0.2:
            marks.append(scenery.drops(("slope", start, face), ("slope", end, face), min(1.0, kilograms / _MUCH), True))
        flows.append(_dots(kilograms, ("slope", middle, -0.6), ("slope", middle, face), spread=spread))
    # Most of the air of the hole goes straight by.
    past = ("slope", stage_scene.HOLE, -0.6), ("slope", stage_scene.HOLE, 0.5), ("slope", stage_scene.HOLE, 1.4)
    flows.append(_dots(state.carried - state.stays, *past, spread=0.02))
    return {"marks": marks, "tags": tags, "flows": [each for each in flows if each["rate"] >= 0.1]}


def _dots(kilograms: float, *places: scenery.Place, spread: float) -> dict[str, Any]:
    """Dots of so much water in a winter."""
    return scenery.flow(kilograms / WINTER / OUNCE * DOTS, *places, spread=spread)


def darts(page: Page) -> str:
    """What a dart stands for."""
    return house.scale(page.unit_system)


def scale(page: Page) -> str:
    """What a dot and a mark of a jar stand for."""
    return message(
        "stage-scale",
        area=page.show(CEILING, "area", 0),
        number=DOTS,
        amount=amounts.water(OUNCE * DAY / units.WATER_DENSITY, page.unit_system),
        mark=quarts(page, MARK[page.unit_system]),
    )


# --- first: without a film and with one ---------------------------------------------------


def first_right(states: States) -> str:
    """Which leaves more of the first state, and about how many times as much."""
    times = states[0].times
    return "b" if times < 1 else "a" if times < 10 else "c" if times < 200 else "d"


def film_right(states: States) -> str:
    """Which leaves more in the second."""
    return "hole" if states[1].times > 1 else "ceiling"


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What both paths bring in both roofs, and what the hole carries past."""
    bare, film = states
    return {
        "carried": quarts(page, bare.carried),
        "hole": quarts(page, bare.stays),
        "bare": quarts(page, bare.by_vapor),
        "film": quarts(page, film.by_vapor),
        "bare_times": units.number(1 / bare.times, 1),
        "film_times": units.number(film.times, 1),
        "one": square(page, INCH),
        "share": page.show(bare.stays / (bare.stays + bare.by_vapor), "relative humidity"),
        "film_share": page.show(film.stays / (film.stays + film.by_vapor), "relative humidity"),
        "perm": page.show(FILM, "permeance", 0 if page.unit_system == "us" else 1),
    }


FIRST = Beat(
    "first",
    cases=({}, {"M_in": stage_scene.series(DRYWALL, FILM)}),
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("slope", 0.6, 0.45), 0, "forgets-what-goes-by"),
                Spot("b", ("slope", 0.28, 0.45), 0),
                Spot("c", ("slope", 0.76, 0.45), 0, "one-path-does-it-all"),
                Spot("d", ("slope", 0.92, 0.45), 0, "vapor-barrier-is-air-barrier"),
            ),
            first_right,
        ),
        Bet("film", (Spot("ceiling", ("slope", 0.28, 0.45), 1), Spot("hole", ("slope", 0.76, 0.45), 1)), film_right),
    ),
    facts=first_facts,
    beliefs=("one-path-does-it-all",),
)


# --- heights: in low, out high, and a fan that turns it -----------------------------------


def house_air(push: float) -> HouseAir:
    """The house at a push at its ridge, with the fan that makes it so."""
    return at_push(HOUSE.coefficient, house.PLACES, ROOM, COLD, push, HEIGHT)


#: Less than so much through the fan is none [m3/s].
_NO_FAN = to_si(0.5, "cfm")
#: Push at the ridge of the house without a fan [Pa].
ALONE = balanced(HOUSE.coefficient, house.PLACES, ROOM, COLD).pushes[-1]


def house_given(page: Page, state: Any) -> dict[str, Any]:
    """How warm both sides are."""
    outdoors = scenery.tag(message("stage-outdoors", temperature=_degrees(page, COLD)), ("outdoors", 0.22, 0.05))
    inside = scenery.tag(message("stage-inside", temperature=_degrees(page, ROOM)), ("house", 0.5, 0.68))
    return {"tags": [outdoors, inside]}


def house_shows(page: Page, state: Any) -> dict[str, Any]:
    """The air at each height, and the neutral level across the house."""
    found, system = house_air(state.push), page.unit_system
    parts = [house.arrows(found), house.moving(found, system), house.named(found, system)]
    if found.fan < -_NO_FAN:
        words = message("stage-blows-in", under=found.flows[0] > 0)
        parts.append({"tags": [scenery.tag(words, ("house", 0.5, 0.6), "air flow", "under")]})
    return scenery.together([*parts, house.neutral(found, across=True)])


def height_right(place: int) -> Callable[[States], str]:
    """Which way air goes at a place of the house."""
    return lambda states: "out" if house_air(states[0].push).flows[place] > 0 else "in"


def heights_facts(page: Page, states: States) -> dict[str, Any]:
    """How much goes where with no fan, and where the neutral level stands now."""
    system = page.unit_system
    alone, found = house_air(ALONE), house_air(states[0].push)
    return {
        "floor": house.told(abs(alone.flows[0]), system),
        "ridge": house.told(abs(alone.flows[2]), system),
        "fan": house.told(abs(found.fan), system),
        "out": house.told(abs(found.flows[2]), system),
        "was": house.high(alone.neutral, system),
        "now": house.high(found.neutral, system),
        "high": house.high(HEIGHT, system),
        "top": units.with_unit(units.number(states[0].push, 1), "Pa"),
    }


def _height_bet(name: str, place: int, inner: scenery.Place, outer: scenery.Place, belief: str = "") -> Bet:
    return Bet(name, (Spot("in", inner, 0, belief), Spot("out", outer)), height_right(place))


HEIGHTS = Beat(
    "heights",
    cases=({"dP": ALONE},),
    bets=(
        _height_bet("floor", 0, ("house", 0.14, 0.17), ("house", -0.24, 0.17)),
        _height_bet("ridge", 2, ("house", 0.5, 0.8), ("house", 0.4, 1.18), "house-leaks-in-everywhere"),
    ),
    unlocks="dP",
    aim=lambda page, states: house_air(states[0].push).flows[1] < 0,
    stays=False,
    strip=False,  # of the water in the roof
    facts=heights_facts,
    beliefs=("house-leaks-in-everywhere",),
    draw=draw_house,
    given=house_given,
    shows=house_shows,
    scale=darts,
)


# --- barrier: tight to air and open to vapor, and the other way round ----------------------

#: Less than so much in a winter is hardly a thing on the piece of ceiling [kg].
_HARDLY = 0.5


def barrier_right(state: Any) -> str:
    """What still gets through a ceiling."""
    air, vapor = state.stays, state.by_vapor
    assert min(air, vapor) < _HARDLY
    return "little" if max(air, vapor) < _HARDLY else "air" if air > vapor else "vapor"


def barrier_facts(page: Page, states: States) -> dict[str, Any]:
    """What gets through each ceiling by both paths."""
    taped, plastic = states
    us = page.unit_system == "us"
    return {
        "taped_vapor": quarts(page, taped.by_vapor),
        "plastic_air": quarts(page, plastic.stays),
        "plastic_vapor": quarts(page, plastic.by_vapor),
        "taped_perm": page.show(taped.inner, "permeance", 0 if us else 2),
        "plastic_perm": page.show(PLASTIC, "permeance", 2 if us else 0),
        "hole": square(page, plastic.hole),
    }


def _barrier_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("vapor", ("slope", 0.28, 0.45), number),
        Spot("air", ("slope", 0.76, 0.45), number),
        Spot("little", ("slope", 0.5, -0.35), number, "vapor-barrier-is-air-barrier"),
    )
    return Bet(name, spots, of_scene(number, barrier_right))


BARRIER = Beat(
    "barrier",
    cases=({"Hole": PINHOLE}, {"Hole": 4 * INCH, "M_in": stage_scene.series(DRYWALL, PLASTIC)}),
    bets=(_barrier_bet("taped", 0), _barrier_bet("plastic", 1)),
    facts=barrier_facts,
    beliefs=("vapor-barrier-is-air-barrier",),
)


# --- boards: hair-wide joints added up ------------------------------------------------------

#: A ceiling that leaks like more such holes is no air barrier.
_MANY = 10


def holes(state: Any, system: str) -> float:
    """Holes of a square inch that leak as much as the whole ceiling."""
    return float(state.hole / INCH * WHOLE[system] / CEILING)


def boards_right(state: Any) -> str:
    """Whether a whole ceiling leaks like many holes."""
    return "leaks" if holes(state, "us") > _MANY else "tight"


def boards_facts(page: Page, states: States) -> dict[str, Any]:
    """How long the joints are, how many holes they are, and what their air carries."""
    system, whole = page.unit_system, WHOLE[page.unit_system]
    us, boards = system == "us", states[0]
    long = "ft" if us else "m"
    past = boards.carried * whole / CEILING / units.WATER_DENSITY
    return {
        "length": _joined(units.number(units.from_si(joints(whole), long), figures=3, rounded=True), long),
        "joint": message("joint-open", system=system, parts=64),
        "gaps": square(page, joints(whole) * stage_scene.JOINT),
        "deep": thickness(stage_scene.THICK, system),
        "wide": thickness(stage_scene.WIDE, system),
        "area": page.show(whole, "area", 0),
        "holes": units.number(round(holes(boards, system))),
        "many": units.number(_MANY),
        "one": square(page, INCH),
        "past": amounts.water(past, system),
        "tenth": amounts.water(LONG_SHARE * past, system),
        "air": house.told(boards.airflow * whole / CEILING, system),
    }


def boards_given(page: Page, state: Any) -> dict[str, Any]:
    """Both airs, and the film where there is one."""
    tags = airs(page, state)
    if stage_scene.filmed(state):
        tape = stage_scene.through(True, True)["inner membrane"][0]
        tags.append(scenery.tag(message("stage-taped"), ("slope", 0.2, tape), "", "under", minor=True))
    return {"tags": tags}


def boards_show(page: Page, state: Any) -> dict[str, Any]:
    """The air of the whole ceiling, as darts through its joints; how many holes it is, in words."""
    flow, many = state.airflow * WHOLE[page.unit_system] / CEILING, holes(state, page.unit_system)
    text = message("stage-holes", few=bool(many < 0.5), holes=units.number(round(many)), area=square(page, INCH))
    tags = [scenery.tag(text, ("slope", 0.45, 1.0), "air flow", "over")]
    path = ("slope", 0.5, -0.7), ("slope", 0.5, 0.3), ("slope", 0.5, 1.4)
    if not stage_scene.filmed(state):
        rate = 60 * flow / house.DART[page.unit_system]
        return {"tags": tags, "flows": [scenery.flow(rate, *path, spread=0.9, look="air flow")]}
    return {"tags": tags}


def _boards_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (
        Spot("tight", ("slope", 0.3, -0.25), number, belief),
        Spot("leaks", ("slope", 0.7, 0.5), number),
    )
    return Bet(name, spots, of_scene(number, boards_right))


BOARDS_BEAT = Beat(
    "boards",
    cases=({"Hole": as_hole(1.0), "M_in": BOARDS}, {"Hole": PINHOLE, "M_in": stage_scene.series(BOARDS, FILM)}),
    bets=(_boards_bet("bare", 0, "boards-are-a-ceiling"), _boards_bet("taped", 1)),
    facts=boards_facts,
    beliefs=("boards-are-a-ceiling",),
    draw=stage_scene.draw_boards,
    given=boards_given,
    shows=boards_show,
    scale=darts,
)

PLAY = Play((FIRST, HEIGHTS, BARRIER, BOARDS_BEAT), message, stage_scene.draw, signature, given, shows, scale)
