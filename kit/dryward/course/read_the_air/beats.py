"""The beats of read the air: RH is not the water, fog in January, what heat takes out, water with no air over it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from dryward import air, language, units
from dryward.course.read_the_air import closed_jar, places
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.pictures import instruments, scenery
from dryward.units import amounts, to_si
from dryward.weather import Air

message = language.beside(__file__)

#: The dry air whose water is poured out, by unit system [kg].  Air that is heated swells, so it is counted by weight:
#: the jar then has all of the same air's water, before and after.
AIR = {"us": to_si(75.0, "lb"), "si": 34.0}
#: The room that so much air about makes, by unit system [m3]: 28.6 m3 at 70 degF and 30 %.
ROOM = {"us": to_si(1000.0, "ft3"), "si": 29.0}
#: A jar to its brim [m3]; one mark of it and one dot of vapor, by unit system [m3].
JAR = to_si(24.0, "fl oz")
MARK = {"us": to_si(4.0, "fl oz"), "si": to_si(100.0, "mL")}
DOT = {"us": to_si(0.25, "fl oz"), "si": to_si(10.0, "mL")}
#: A can out of the fridge [degC]; common practice, no source.
CAN = to_si(40.0, "degF")


def water(state: Air, system: str) -> float:
    """The water of so much air, as liquid [m3]."""
    return float(air.humidity_ratio(state.vapor_pressure)) * AIR[system] / units.WATER_DENSITY


def told(state: Air, system: str) -> str:
    """The same in words."""
    return amounts.water(water(state, system), system)


def degrees(temperature: float, system: str, digits: int | None = None) -> str:
    """A temperature; those of the scenes are whole in degF, as the question has them."""
    found = (0 if system == "us" else 1) if digits is None else digits
    return units.show(temperature, "temperature", system, found)


def percent(humidity: float, system: str) -> str:
    """A relative humidity."""
    return units.show(humidity, "relative humidity", system)


# --- what stands in the scenes ----------------------------------------------------------


def _twin(page: Page) -> bool:
    return len(page.stage.states) > 1


def _gauges(page: Page, letter: str, state: Air) -> list[dict[str, Any]]:
    return [
        instruments.column(f"{letter}-thermometer", state.temperature),
        instruments.needle(f"{letter}-dial", state.relative_humidity),
        scenery.ticks(instruments.graduations(JAR, MARK[page.unit_system]), f"{letter}-jar"),
    ]


def _of_the_dial(letter: str) -> dict[str, Any]:
    """What the dial shows; left out where there is no room."""
    return scenery.tag(message("stage-dial"), (f"{letter}-dial", 0.0, 1.0), "", "over", minor=True)


def _is_so(page: Page, name: str, state: Air) -> str:
    system = page.unit_system
    return message(
        name, temperature=degrees(state.temperature, system), humidity=percent(state.relative_humidity, system)
    )


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs on their gauges; of air that was changed, what it was before and its water then."""
    if not _twin(page):
        airs = (("a", "stage-room", state.first), ("b", "stage-yard", state.second))
        return {
            "marks": [mark for letter, _, each in airs for mark in _gauges(page, letter, each)],
            "tags": [
                *(
                    scenery.tag(_is_so(page, name, each), (f"{letter}-box", 0.55, 1.15), "", "over")
                    for letter, name, each in airs
                ),
                *(_of_the_dial(letter) for letter, *_ in airs),
            ],
        }
    marks = _gauges(page, "a", state.first)
    if places.happens(state) == "yard":
        return {
            "marks": marks,
            "tags": [
                scenery.tag(_is_so(page, "stage-air", state.first), ("a-box", 0.55, 1.15), "", "over"),
                _of_the_dial("a"),
            ],
        }
    before = state.second
    share = water(before, page.unit_system) / JAR
    had = message("stage-had", water=told(before, page.unit_system))
    return {
        "marks": [
            *marks,
            instruments.needle("a-dial", before.relative_humidity, "before"),
            scenery.line("before", ("a-jar", -0.12, share), ("a-jar", 1.12, share)),
        ],
        "tags": [
            scenery.tag(_is_so(page, "stage-before", before), ("a-box", 0.55, 1.15), "", "over"),
            scenery.tag(_is_so(page, "stage-after", state.first), ("a-dial", 0.0, 0.0), "", "under"),
            scenery.tag(had, ("a-jar", 0.5, share), "", "over"),
            _of_the_dial("a"),
        ],
    }


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The vapor in each box as dots, and its water in the jar."""
    changed = _twin(page) and places.happens(state) != "yard"
    airs = (("a", state.first),) if _twin(page) else (("a", state.first), ("b", state.second))
    marks, tags = [], []
    for letter, each in airs:
        poured = water(each, page.unit_system)
        share = poured / JAR
        marks.append(instruments.vapor(f"{letter}-box", round(poured / DOT[page.unit_system])))
        marks.append(instruments.level(f"{letter}-jar", share))
        text, side = told(each, page.unit_system), "over"
        if changed:
            text, side = message("stage-has", water=text), "under"
        if changed and places.happens(state) == "dehumidifier":
            marks.append(scenery.drops(("bucket", 0.15, 0.3), ("bucket", 0.85, 0.3), 0.6))
        tags.append(scenery.tag(text, (f"{letter}-jar", 0.5, min(share, 1.0)), "wet", side))
    return {"marks": marks, "tags": tags}


def _weight(system: str) -> str:
    return units.show_in(AIR[system], "lb" if system == "us" else "kg", 0)


def _times(more: Air, less: Air, system: str) -> float:
    """How many times the water of another air, of the amounts as they are told."""
    unit = "fl oz" if system == "us" else "mL"
    shown = [float(f"{units.from_si(water(each, system), unit):.2g}") for each in (more, less)]
    return shown[0] / shown[1]


# --- first: which air has more water? -----------------------------------------------------


def first_right(states: States) -> str:
    """Of room and yard, the one with more water."""
    room, yard = (float(air.humidity_ratio(each.vapor_pressure)) for each in (states[0].first, states[0].second))
    if abs(room - yard) < 0.05 * room:
        return "c"
    return "a" if room > yard else "b"


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """Both waters, and where the yard's air would be in the room's warmth."""
    room, yard, system = states[0].first, states[0].second, page.unit_system
    return {
        "weight": _weight(system),
        "room": told(room, system),
        "yard": told(yard, system),
        "times": units.number(_times(room, yard, system), 1),
        "room_pressure": page.show(room.vapor_pressure, "pressure"),
        "yard_pressure": page.show(yard.vapor_pressure, "pressure"),
        "warm": degrees(room.temperature, system),
        "heated": percent(float(air.relative_humidity(room.temperature, yard.vapor_pressure)), system),
        "room_humidity": percent(room.relative_humidity, system),
    }


FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("a-jar", 0.5, 0.5)),
                Spot("b", ("b-jar", 0.5, 0.5)),
                Spot("c", ("b-box", -0.2, -0.55), glyph="none"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
)


# --- fog: one reading, two seasons --------------------------------------------------------

#: Where a level may be bet on, as a share of the jar's height.
_LEVELS = {"low": 0.15, "half": 0.5, "high": 0.85}


def level_right(state: Any) -> str:
    """The level that is nearest to a scene's own."""
    share = water(state.first, "us") / JAR
    return min(_LEVELS, key=lambda key: abs(_LEVELS[key] - share))


def fog_facts(page: Page, states: States) -> dict[str, Any]:
    """Both waters; the winter air heated, and the summer air cooled."""
    january, august = (state.first for state in states)
    system, room = page.unit_system, to_si(70.0, "degF")
    return {
        "humidity": percent(january.relative_humidity, system),
        "cold": degrees(january.temperature, system),
        "warm": degrees(august.temperature, system),
        "january": told(january, system),
        "august": told(august, system),
        "times": units.number(_times(august, january, system), 0),
        "room": degrees(room, system),
        "heated": percent(float(air.relative_humidity(room, january.vapor_pressure)), system),
        "dew": degrees(august.dew_point, system),
    }


def _fog(fahrenheit: float) -> Mapping[str, float]:
    one = to_si(fahrenheit, "degF")
    return {"T": one, "RH": 0.95, "T_2": one, "RH_2": 0.95}


def _level_bet(name: str, number: int, beliefs: Mapping[str, str]) -> Bet:
    spots = tuple(
        Spot(key, ("a-jar", -0.3, share), number, beliefs.get(key, "")) for key, share in reversed(_LEVELS.items())
    )
    return Bet(name, spots, of_scene(number, level_right))


FOG = Beat(
    "fog",
    cases=(_fog(30.0), _fog(75.0)),
    bets=(_level_bet("january", 0, {"high": "winter-fog-is-wet-air"}), _level_bet("august", 1, {})),
    facts=fog_facts,
    beliefs=("winter-fog-is-wet-air",),
)


# --- heat: two meters that fall alike --------------------------------------------------------

_COOL, _WARM, _HUMID = to_si(55.0, "degF"), to_si(75.0, "degF"), 0.6
#: What the heater makes of the humidity: the same vapor, warmer.
_HEATED = float(air.relative_humidity(_WARM, Air(_COOL, _HUMID).vapor_pressure))


def heat_right(state: Any) -> str:
    """Whether the water of a scene is less than it was."""
    now, before = state.first, state.second
    return "lower" if now.vapor_pressure < 0.99 * before.vapor_pressure else "same"


def heat_facts(page: Page, states: States) -> dict[str, Any]:
    """The water before and after, and the dew points."""
    system = page.unit_system
    before, heated, dried = states[0].second, states[0].first, states[1].first
    return {
        "cool": degrees(dried.temperature, system),
        "warm": degrees(heated.temperature, system),
        "from": percent(before.relative_humidity, system),
        "to": percent(heated.relative_humidity, system),
        "heated": told(heated, system),
        "dried": told(dried, system),
        "dew_before": degrees(before.dew_point, system),
        "dew_heated": degrees(heated.dew_point, system),
        "dew_dried": degrees(dried.dew_point, system),
        "can": degrees(CAN, system),
    }


def _heat_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = (Spot("same", ("a-jar", 0.2, 0.265), number), Spot("lower", ("a-jar", 0.8, 0.13), number, belief))
    return Bet(name, spots, of_scene(number, heat_right))


_BEFORE = {"T_2": _COOL, "RH_2": _HUMID, "RH": _HEATED}


def sweats(state: Any) -> bool:
    """Whether the can is no warmer than the dew point of the room."""
    return bool(state.first.dew_point >= CAN)


def can_in_the_room(page: Page, state: Any) -> dict[str, Any]:
    """The can, how cold it is, and drops on it if it sweats; the dew point on the room's thermometer."""
    dew = state.first.dew_point
    marks = [*instruments.can("can"), instruments.pointer("a-thermometer", dew)]
    if sweats(state):
        # All drops that fit from 20 K on.
        marks += instruments.sweat("can", 0.05 + (dew - CAN) / 20.0)
    can = message("stage-can", temperature=degrees(CAN, page.unit_system), sweats=sweats(state))
    return {"marks": marks, "tags": [scenery.tag(can, ("can", 0.5, 0.0), "", "under")]}


HEAT = Beat(
    "heat",
    cases=({**_BEFORE, "T": _WARM}, {**_BEFORE, "T": _COOL}),
    bets=(_heat_bet("heater", 0, "heating-dries-the-air"), _heat_bet("dehumidifier", 1)),
    facts=heat_facts,
    beliefs=("heating-dries-the-air",),
    marks=can_in_the_room,
)


# --- jar: with air and without ----------------------------------------------------------------

#: Where a level may be bet on, as a share of the gauge.
_STANDS = {"none": 0.05, "mark": float(air.saturation_vapor_pressure(closed_jar.ROOM)) / closed_jar.FULL, "over": 0.72}


def jar_right(state: Any) -> str:
    """The level that is nearest to where the vapor pressure of a jar stands."""
    share = closed_jar.pressure(state) / closed_jar.FULL
    return min(_STANDS, key=lambda key: abs(_STANDS[key] - share))


def doubled(page: Page, states: States) -> bool:
    """Whether the pressure is twice what it was when it was bet on."""
    return closed_jar.pressure(states[0]) >= 2 * float(air.saturation_vapor_pressure(closed_jar.ROOM))


def jar_facts(page: Page, states: States) -> dict[str, Any]:
    """The pressure in both jars now, and as it was bet on."""
    room = float(air.saturation_vapor_pressure(closed_jar.ROOM))
    return {
        "room": degrees(closed_jar.ROOM, page.unit_system),
        "stood": page.show(room, "pressure"),
        "warm": degrees(states[0].first.temperature, page.unit_system),
        "frozen": closed_jar.frozen(states[0]),
        "pressure": page.show(closed_jar.pressure(states[0]), "pressure"),
    }


def _jar_bet(name: str, number: int, belief: str = "") -> Bet:
    spots = tuple(
        Spot(key, ("column", 1.8, share), number, belief if key == "none" else "")
        for key, share in reversed(_STANDS.items())
    )
    return Bet(name, spots, of_scene(number, jar_right))


_JAR = {"T": closed_jar.ROOM, "RH": 1.0, "T_2": closed_jar.ROOM}

PUMPED = Beat(
    "jar",
    cases=({**_JAR, "RH_2": 1.0}, {**_JAR, "RH_2": 0.05}),
    bets=(_jar_bet("with", 0), _jar_bet("without", 1, "air-is-a-sponge")),
    unlocks="T",
    aim=doubled,
    facts=jar_facts,
    beliefs=("air-is-a-sponge",),
    draw=closed_jar.draw,
    given=closed_jar.given,
    shows=closed_jar.shows,
    scale=closed_jar.scale,
)


def scale(page: Page) -> str:
    """What a jar, its marks and a dot stand for."""
    system = page.unit_system
    return message(
        "stage-scale",
        air=_weight(system),
        room=units.show_in(ROOM[system], "ft3" if system == "us" else "m3", 0),
        mark=amounts.water(MARK[system], system),
        dot=amounts.water(DOT[system], system),
    )


PLAY = Play((FIRST, FOG, HEAT, PUMPED), message, places.draw, places.signature, given, shows, scale)
