"""The beats of your readings: 90 % in the cold and in spring, two wet roofs, one dial in warm and in cold wood."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

import numpy as np

from dryward import language, units
from dryward.building import material
from dryward.course.your_readings import stage_scene
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics import mold
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Place, Scene
from dryward.units import to_si
from dryward.verdict.findings import criterion
from dryward.verdict.judgment import moisture
from dryward.weather import loggers

message = language.beside(__file__)

#: The lumber of the roof.
WOOD = material("spruce")
#: What the logger shows in the first two beats [-].
NINETY = 0.90
#: The reading of the meter, and the two woods it stands in [mass %, degC].
DIAL, WARM, COLD = 17.0, to_si(70.0, "degF"), to_si(20.0, "degF")
#: Where care with wood begins [mass %].
CARE = criterion("wood-moisture").caution
#: The ends of the strips: humidity [-], wood moisture [mass %], vapor pressure [Pa].
_HUMID, _WOOD, _VAPOR = (0.5, 1.0), (12.0, 20.0), (0.0, 1300.0)
#: Top of the strip of rises [Pa].
_RISE = 110.0
#: The air of the room rises by so much when someone showers; the roof's has jumped when it rises by a third of that in
#: the same hour [Pa].
SHOWER, SHOWN = 150.0, 50.0


# --- the states ------------------------------------------------------------------------------


@dataclass(frozen=True, eq=False)
class House:
    """A house with its three loggers."""

    cause: str
    indoors: loggers.Record
    cavity: loggers.Record
    outdoors: loggers.Record
    season: str = "winter"

    def mean(self, place: str) -> tuple[float, float]:
        """What a logger shows on average: temperature [degC] and humidity over water, as sensors do [-]."""
        record = getattr(self, place)
        return float(record.temperature.mean()), float(record.logged_humidity.mean())

    @property
    def wood(self) -> Any:
        """The moisture of the wood [mass %]."""
        dial = self.cavity.moisture_content
        assert dial is not None  # every sample of the kit has a meter in the deck
        return loggers.moisture_content(dial, self.cavity.temperature)

    @property
    def ends(self) -> tuple[float, float]:
        """The wood in the first and in the last day."""
        return float(self.wood[:24].mean()), float(self.wood[-24:].mean())

    @cached_property
    def rises(self) -> Any:
        """How far the roof's vapor rose in the hour of each shower [Pa]."""
        room, roof = (np.diff(each.vapor_pressure) for each in (self.indoors, self.cavity))
        return roof[room > SHOWER]

    @property
    def showers(self) -> tuple[int, int]:
        """How many showers there were, and with how many the roof's vapor rose."""
        return len(self.rises), int(np.sum(self.rises > SHOWN))


@cache
def house(name: str) -> House:
    """A house of the kit's own files."""
    with loggers.sample(f"cause-{name}") as path:
        read = loggers.read(path)
    return House(loggers.diagnose(read).cause, read["indoors"], read["cavity"], read["outdoors"])


@dataclass(frozen=True)
class Logger:
    """One logger under the deck, in air that lasts."""

    temperature: float
    humidity: float = NINETY

    @property
    def season(self) -> str:
        """What the house is drawn in."""
        return vault.season(self.temperature) if self.temperature < 0 else "mild"

    @property
    def wood(self) -> float:
        """Where wood in this air ends [mass %]: it goes by the humidity."""
        return float(moisture(WOOD, self.humidity))

    @property
    def weeks(self) -> float | None:
        """Weeks until mold can start on it; None where it is too cold or too dry for any."""
        if self.temperature <= 0 or mold.critical_humidity(self.temperature) > self.humidity:
            return None
        return float(mold.weeks_to_start(self.temperature, self.humidity))


@dataclass(frozen=True)
class Pins:
    """A reading of a pin meter in wood of a temperature."""

    temperature: float
    dial: float = DIAL

    @property
    def true(self) -> float:
        """What the wood holds [mass %]."""
        return float(loggers.moisture_content(self.dial, self.temperature))


# --- the scene of each -------------------------------------------------------------------------


def signature(state: Any) -> Any:
    """What of a state stands still."""
    return (type(state), state.temperature < 0) if isinstance(state, Pins) else (type(state), state.season)


def draw(scene: Scene, state: Any) -> None:
    """The house, or the meter in a rafter."""
    if isinstance(state, Pins):
        stage_scene.meter(scene, state.temperature < 0)
    else:
        stage_scene.house(scene, state.season)
        (stage_scene.deck if isinstance(state, Logger) else stage_scene.paper)(scene)


def _percent(value: float, digits: int = 0) -> str:
    return units.with_unit(units.number(value, digits), "%")


def _at(name: str) -> Place:
    return (name, 0.5, 1.0)


def given(page: Page, state: Any) -> dict[str, Any]:
    """What stands on the loggers, or on the dial."""
    system = page.unit_system
    if isinstance(state, Pins):
        warmth = page.show(state.temperature, "temperature", 0)
        return {
            "tags": [
                scenery.tag(_percent(state.dial), ("meter", 0.5, 0.5)),
                scenery.tag(message("pins-wood", warmth=warmth), ("wood", 0.3, 0.5)),
            ]
        }
    if isinstance(state, Logger):
        warmth, humidity = vault.told(state.temperature, state.humidity, system)
        return {
            "tags": [scenery.tag(message("logger-shows", warmth=warmth, humidity=humidity), _at("cavity"), side="over")]
        }
    tags = []
    for place in loggers.PLACES if state.cause == "outdoor air" else ("cavity",):
        warm, humid = state.mean(place)
        warmth, humidity = vault.told(warm, humid, system)
        side = "over" if place == "cavity" else "under"
        at = _at(place) if side == "over" else (place, 0.5, 0.0)
        tags.append(scenery.tag(message("logger-of", place=place, warmth=warmth, humidity=humidity), at, side=side))
    if state.cause == "outdoor air":
        lines = (("outdoor air", state.outdoors), ("cavity air", state.cavity))
        marks = [stage_scene.trace(look, "upper", _by_day(each.logged_humidity, 6), *_HUMID) for look, each in lines]
        ends = [float(f(state.cavity.logged_humidity)) for f in (np.min, np.max)]
        head = message("paper-humidity", low=_percent(100 * ends[0]), high=_percent(100 * ends[1]))
    else:
        marks = [stage_scene.trace("moisture content", "upper", _by_day(state.wood, 24), *_WOOD)]
        start, end = state.ends
        head = message("paper-wood", start=_percent(start), end=_percent(end))
    tags.append(scenery.tag(head, ("upper", 0.5, 1.0), side="over"))
    return {"tags": tags, "marks": marks}


def _by_day(values: Any, hours: int) -> Any:
    """Means of so many hours."""
    return np.asarray(values)[: len(values) // hours * hours].reshape(-1, hours).mean(axis=1)


def shows(page: Page, state: Any) -> dict[str, Any]:
    """What is so."""
    if isinstance(state, Pins):
        return _of_pins(state)
    return _of_logger(state) if isinstance(state, Logger) else _of_house(page, state)


def _of_pins(state: Pins) -> dict[str, Any]:
    """Dial and wood on one scale, with the line where care begins."""
    most = 24.0
    marks = [
        scenery.band("moisture content", "bar", (0.0, 1.0), (0.0, state.true / most)),
        scenery.line("limit", ("bar", -0.2, CARE / most), ("bar", 1.2, CARE / most)),
        scenery.line("before", ("bar", -0.5, state.dial / most), ("bar", 1.2, state.dial / most)),
    ]
    tags = [
        scenery.tag(message("pins-true", percent=_percent(state.true)), ("bar", 0.5, 0.42), "moisture content"),
        scenery.tag(message("pins-care", percent=_percent(CARE)), ("bar", 1.2, CARE / most), "", "right"),
        scenery.tag(
            message("pins-dial", percent=_percent(state.dial)), ("bar", 1.2, state.dial / most), "", "right", minor=True
        ),
    ]
    return {"marks": marks, "tags": tags}


def _of_logger(state: Logger) -> dict[str, Any]:
    """Where the wood goes, and whether mold can start."""
    weeks = state.weeks
    marks = [] if weeks is None else stage_scene.patches("lower", np.linspace(0.08, 0.92, 14).tolist(), 0.68)
    marks.append(scenery.band("moisture content", "upper", (0.0, state.wood / 28.0), (0.0, 1.0)))
    marks.append(scenery.line("limit", ("upper", CARE / 28.0, -0.3), ("upper", CARE / 28.0, 1.3)))
    text = message("mold-sleeps") if weeks is None else message("mold-starts", weeks=units.number(weeks, 0))
    ends = message("wood-goes-to", percent=_percent(state.wood))
    return {
        "marks": marks,
        "tags": [
            scenery.tag(ends, ("upper", 0.4, 1.0), "moisture content", "over"),
            scenery.tag(message("pins-care", percent=_percent(CARE)), ("upper", CARE / 28.0, -0.3), "", "under"),
            scenery.tag(text, ("lower", 0.5, 0.2)),
        ],
    }


def _of_house(page: Page, state: House) -> dict[str, Any]:
    """What the air of the roof follows, and what is wrong with the roof."""
    if state.cause == "outdoor air":
        return _four_weeks(page, state)
    found = _at_each_shower(state)
    if state.cause == "air leak":
        found["marks"].append(scenery.arrow("vapor pressure", ("slope", 0.75, -1.9), ("slope", 0.75, 0.6), 0.8))
        found["tags"].append(scenery.tag(message("the-gap"), ("slope", 0.75, -1.9), "vapor pressure", "under"))
    else:
        found["marks"].append(scenery.band("limit", "slope", (-0.1, 0.16), (0.62, 0.8)))
        found["tags"].append(scenery.tag(message("the-plug"), ("slope", -0.05, 0.7), "", "under"))
    return found


def _four_weeks(page: Page, state: House) -> dict[str, Any]:
    """All three traces: the roof's lies on the yard's."""
    lines = {"room air": state.indoors, "outdoor air": state.outdoors, "cavity air": state.cavity}
    values = {look: _by_day(record.vapor_pressure, 12) for look, record in lines.items()}
    tags = [scenery.tag(message("paper-all"), ("lower", 0.5, 1.0), side="over")]
    for name, look, s in (("room", "room air", 0.32), ("both", "cavity air", 0.6)):
        y = float(values[look][int(s * (len(values[look]) - 1))]) / _VAPOR[1]
        mean = page.show(float(lines[look].vapor_pressure.mean()), "pressure")
        side = "over" if name == "room" else "under"
        tags.append(
            scenery.tag(message(f"trace-of-{name}", mean=mean), ("lower", s, y - (side == "under") * 0.04), look, side)
        )
    return {"marks": [stage_scene.trace(look, "lower", each, *_VAPOR) for look, each in values.items()], "tags": tags}


def _at_each_shower(state: House) -> dict[str, Any]:
    """How far the roof's vapor rose in the hour of each shower, a bar each."""
    rises = state.rises
    marks = []
    for k, rise in enumerate(rises):
        middle, half = (k + 0.5) / len(rises), 0.47 / len(rises)
        high = float(np.clip(rise / _RISE, 0.012, 1.0))
        look = "vapor pressure" if rise > SHOWN else "level"  # a jump, or none
        marks.append(scenery.band(look, "lower", (middle - half, middle + half), (0.0, high)))
    marks.append(scenery.line("before", ("lower", 0.0, SHOWN / _RISE), ("lower", 1.0, SHOWN / _RISE)))
    return {"marks": marks, "tags": [scenery.tag(message("paper-rises"), ("lower", 0.5, 1.0), side="over")]}


# --- first: 90 % in a foggy January --------------------------------------------------------------


def first_right(states: States) -> str:
    """Whether the readings show anything but the air outdoors."""
    return "b" if states[0].cause == "outdoor air" else "a"


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """The readings, and where wood in that air ends."""
    warm, humid = states[0].mean("cavity")
    warmth, humidity = vault.told(warm, humid, page.unit_system)
    start, end = states[0].ends
    return {
        "warmth": warmth,
        "humidity": humidity,
        "end": _percent(Logger(warm, humid).wood),
        "start": _percent(start),
        "now": _percent(end),
    }


FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("slope", 0.2, 0.3), 0, "logger-90-means-wet"),
                Spot("b", ("outdoors", 0.5, -1.6)),
                Spot("c", ("slope", 1.0, 1.0), 0, "wet-roof-needs-vents"),
                Spot("d", ("far", 0.5, 0.3), 0, "meter-reads-true"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("logger-90-means-wet",),
    states=lambda page: (house("outdoor-air"),),
)


# --- ninety: the same reading in January and in April ------------------------------------------


def mold_right(state: Any) -> str:
    """Whether mold can start in one of the scenes."""
    return "no" if state.weeks is None else "yes"


def ninety_facts(page: Page, states: States) -> dict[str, Any]:
    """The wood, the same in both, and the weeks to mold."""
    january, april = states
    assert january.weeks is None
    assert april.weeks is not None
    return {
        "humidity": _percent(100 * NINETY),
        "wood": _percent(january.wood),
        "other": _percent(april.wood),
        "weeks": units.number(april.weeks, 0),
        "cold": page.show(january.temperature, "temperature", 0),
        "mild": page.show(april.temperature, "temperature", 0),
        "freezing": page.show(0.0, "temperature", 0),
    }


def _mold_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("yes", ("slope", 0.25, 0.35), number, "logger-90-means-wet"),
        Spot("no", ("slope", 0.75, 0.35), number),
    )
    return Bet(name, spots, of_scene(number, mold_right))


APRIL = Beat(
    "ninety",
    cases=({}, {}),
    bets=(_mold_bet("january", 0), _mold_bet("april", 1)),
    facts=ninety_facts,
    beliefs=("logger-90-means-wet",),
    states=lambda page: (Logger(to_si(21.0, "degF")), Logger(to_si(45.0, "degF"))),
)


# --- vents: two roofs whose wood rises alike -----------------------------------------------------


def need_right(state: Any) -> str:
    """What the roof of one scene needs, by what its readings point to."""
    return {"blocked vents": "vents", "air leak": "seal"}[state.cause]


def vents_facts(page: Page, states: States) -> dict[str, Any]:
    """How often the roof jumped with the showers, and how far the wood went."""
    facts: dict[str, Any] = {"jump": page.show(SHOWN, "pressure")}
    for name, state in zip(("left", "right"), states, strict=True):
        count, jumps = state.showers
        start, end = state.ends
        facts |= {
            f"{name}-count": count,
            f"{name}-jumps": jumps,
            f"{name}-start": _percent(start),
            f"{name}-end": _percent(end),
        }
    return facts


def _need_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("vents", ("slope", 0.08, 0.72), number, "wet-roof-needs-vents"),
        Spot("seal", ("slope", 0.8, 0.0), number),
    )
    return Bet(name, spots, of_scene(number, need_right))


VENTS = Beat(
    "vents",
    cases=({}, {}),
    bets=(_need_bet("left", 0), _need_bet("right", 1)),
    facts=vents_facts,
    beliefs=("wet-roof-needs-vents",),
    states=lambda page: (house("air-leak"), house("blocked-vents")),
)


# --- meter: one reading in warm and in cold wood -------------------------------------------------


def meter_right(state: Any) -> str:
    """What the wood holds: what the dial says, or more."""
    return "same" if round(state.true) == round(state.dial) else "more"


def meter_facts(page: Page, states: States) -> dict[str, Any]:
    """Dial and wood, warm and cold."""
    warm, cold = states
    return {
        "dial": _percent(warm.dial),
        "warm": _percent(warm.true),
        "cold": _percent(cold.true),
        "points": units.number(round(cold.true) - round(cold.dial), 0),
        "temperature": page.show(cold.temperature, "temperature", 0),
        "room": page.show(warm.temperature, "temperature", 0),
    }


def _meter_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("same", ("wood", 0.3, 0.82), number, "meter-reads-true"),
        Spot("more", ("wood", 0.72, 0.82), number),
    )
    return Bet(name, spots, of_scene(number, meter_right))


METER = Beat(
    "meter",
    cases=({}, {}),
    bets=(_meter_bet("warm", 0), _meter_bet("cold", 1)),
    facts=meter_facts,
    beliefs=("meter-reads-true",),
    states=lambda page: (Pins(WARM), Pins(COLD)),
)

PLAY = Play((FIRST, APRIL, VENTS, METER), message, draw, signature, given, shows)
