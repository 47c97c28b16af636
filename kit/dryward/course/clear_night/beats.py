"""The beats of the clear night: a clear and a clouded sky, clouds coming in, two roofs under snow, what mends one."""

from __future__ import annotations

from typing import Any

from dryward import language, units
from dryward.course.clear_night.night import HOURS, HOUSE, OUTDOORS, under_snow
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, no_dots, of_scene
from dryward.physics.sky import STEFAN_BOLTZMANN
from dryward.pictures import nights, scenery, vault, vents
from dryward.pictures.scenery import Scene
from dryward.units import DAY, HOUR, KELVIN, amounts, to_si

message = language.beside(__file__)

#: A dot a minute stands for so many fluid ounces a day on the roof that amounts are for, and so many dots are told.
OUNCES, TOLD = 5, 20
#: Frost of a night that is drawn as much [kg/m2], heat to the sky [W/m2], and meltwater of a day [kg/m2].
_MUCH, _HOT, _MELTED = 0.12, 80.0, 1.0
#: The vent space as it is drawn [m].
GAP = to_si(1.0, "in")
#: So near to the air the covering counts as being as cold [K], and beyond that it is as the sky.
NEAR, FAR = to_si(3.0, "degF difference"), to_si(18.0, "degF difference")
#: Clouds: the sky is so much colder than the air [K].
CLOUDS = to_si(7.0, "degF difference")


# --- the scenes -----------------------------------------------------------------------


def signature(state: Any) -> Any:
    """What of a state stands still: the sky, and the snow with the ceiling under it."""
    return state.snow if state.snowed else "", state.cooling > 2 * CLOUDS


def draw(scene: Scene, state: Any) -> None:
    """The roof under the night sky, with a thermometer in the air and one at its covering; or under snow."""
    if state.snowed:
        draw_snow(scene, state)
        return
    vents.plane(scene, GAP, leaky=False, season="night", person_at=None)
    nights.sky(scene, clear=state.cooling > 2 * CLOUDS)
    nights.upward(scene)
    nights.thermometers(scene)


def draw_snow(scene: Scene, state: Any) -> None:
    """The roof with a gutter, with snow on it where there is some."""
    vents.plane(scene, GAP, leaky=state.snow.startswith("leaky"), season="winter")
    nights.gutter(scene)
    nights.snow(scene)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The air outdoors: on its thermometer, or beside the room's."""
    if not state.snowed:
        text = message("stage-air", temperature=of_air(page))
        return {
            "marks": [nights.column("air", OUTDOORS)],
            "tags": [scenery.tag(text, ("air", 0.5, 1.0), "", "over")],
        }
    room, cold = (degrees(page, each) for each in (HOUSE["indoor_temperature"], OUTDOORS))
    places = {"room": (room, ("room", 0.34, 0.12)), "outdoors": (cold, ("sky", 0.3, 0.07))}
    return {
        "tags": [
            scenery.tag(message(f"stage-{name}", temperature=text), place) for name, (text, place) in places.items()
        ]
    }


def degrees(page: Page, temperature: float, digits: int = 0) -> str:
    """A temperature, whole where nothing else is asked."""
    return page.show(temperature, "temperature", digits)


def of_air(page: Page) -> str:
    """The outdoor air, so that differences to the metal's temperature come out as shown."""
    return degrees(page, OUTDOORS, 0 if page.unit_system == "us" else 1)


def to_the_sky(state: Any) -> float:
    """Heat that the covering loses to the sky over what it gets from there [W/m2]."""
    top = float(state.night.roof_temperature[-1]) + KELVIN
    return 0.9 * STEFAN_BOLTZMANN * float(top**4 - (OUTDOORS - state.cooling + KELVIN) ** 4)


def shows(page: Page, state: Any) -> dict[str, Any]:
    """How cold the covering is, heat on its way, frost under it; or what melts, and ice at the eave."""
    return snow_shown(page, state) if state.snowed else night_shown(page, state)


def night_shown(page: Page, state: Any) -> dict[str, Any]:
    """The covering's thermometer, heat that goes up, and frost with the vapor that it comes from."""
    metal = float(state.night.underside_temperature[-1])
    words = message("stage-metal", temperature=degrees(page, metal, 1))
    heat = to_the_sky(state)
    marks = [nights.column("metal", metal), *nights.heat_up(min(1.0, max(heat, 0.0) / _HOT))]
    tags = [
        scenery.tag(words, ("metal", 1.0, 1.0), "", "right"),
        scenery.tag(message("stage-heat", heat=page.show(heat, "heat flux")), ("upward", 0.68, 1.1), "", "over"),
    ]
    flows = []
    if state.frost > 0:
        marks.append(scenery.drops(("gap", 0.03, 0.88), ("gap", 0.97, 0.88), min(1.0, state.frost / _MUCH), frost=True))
        tags.append(
            scenery.tag(message("stage-frost", amount=night_water(page, state.frost)), ("roof", 0.55, 0.5), "wet")
        )
        rate = vault.dots(state.frost / (HOURS * HOUR), 1) / OUNCES
        flows = [
            scenery.flow(rate / 4, ("gap", -0.2, 0.4), ("gap", s - 0.05, 0.4), ("gap", s, 0.88))
            for s in (0.15, 0.4, 0.65, 0.9)
        ]
    return {"marks": marks, "tags": tags, "flows": flows}


def night_water(page: Page, mass: float) -> str:
    """Water of a night on each part of the roof [kg/m2] as that of the whole roof."""
    return amounts.whole_roof(mass, page.unit_system)


def melted(page: Page, state: Any) -> str:
    """What melts in a day on the roof that amounts are for."""
    return night_water(page, state.melt / (HOURS * HOUR) * DAY)


def snow_shown(page: Page, state: Any) -> dict[str, Any]:
    """How warm the covering is under the snow; where snow melts, the water that runs down and the ice it makes."""
    text = message("stage-covering", temperature=degrees(page, state.underside))
    tags = [scenery.tag(text, ("snow", 0.6, 0.5))]
    leaks = state.snow.startswith("leaky")
    marks = nights.heat_from_below(0.5 if leaks else 0.05)
    if state.melt > 0:
        amount = min(1.0, state.melt / (HOURS * HOUR) * DAY / _MELTED)
        marks += [*nights.melt(amount), *nights.ice(amount)]
        tags.append(scenery.tag(message("stage-melts", amount=melted(page, state)), ("snow", 0.5, 1.3), "wet", "over"))
    return {"marks": marks, "tags": tags}


def scale(page: Page) -> str:
    """What the dots stand for."""
    system = page.unit_system
    ounces = amounts.a_day(TOLD * OUNCES * vault.OUNCE, system)
    area = amounts.roof_area(system)
    return message("stage-scale", number=TOLD, amount=amounts.water(ounces, system), area=area)


# --- first: how cold is the metal? ----------------------------------------------------------


def how_cold(state: Any) -> str:
    """How cold the covering gets, in the words of the bets."""
    under = state.frosted
    return "warmer" if under < 0 else "like" if under < NEAR else "below" if under < FAR else "sky"


#: The lesson's keys of these.
_KEYS = {"like": "a", "below": "b", "warmer": "c", "sky": "d"}


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """Both coverings, and where the two skies are."""
    clear, cloudy = states
    return {
        "air": of_air(page),
        "clear": degrees(page, float(clear.night.underside_temperature[-1]), 1),
        "cloudy": degrees(page, float(cloudy.night.underside_temperature[-1]), 1),
        "below": page.show(clear.frosted, "temperature difference", 1),
        "near": page.show(cloudy.frosted, "temperature difference", 1),
        "sky": page.show(clear.cooling, "temperature difference", 0),
        "clouds": page.show(cloudy.cooling, "temperature difference", 0),
        "heat": page.show(to_the_sky(clear), "heat flux"),
        "less": page.show(to_the_sky(cloudy), "heat flux"),
    }


def _spots(scene: int, keys: dict[str, str], *names: str) -> tuple[Spot, ...]:
    """Places on the covering's thermometer."""
    ends = {"like": (-4.5, 20.0), "below": (5.5, 11.0), "warmer": (5.5, 37.0), "sky": (-4.5, -14.0)}
    belief = {"like": "roof-never-colder-than-air", "warmer": "house-warms-the-covering", "sky": "as-cold-as-the-sky"}
    return tuple(
        Spot(keys.get(name, name), ("metal", ends[name][0], nights.high(to_si(ends[name][1], "degF"))), scene,
             belief.get(name, ""))
        for name in names
    )  # fmt: skip


FIRST = Beat(
    "first",
    cases=({}, {"Sky": CLOUDS}),
    bets=(
        Bet(LESSON, _spots(0, _KEYS, "like", "below", "warmer", "sky"), lambda states: _KEYS[how_cold(states[0])]),
        Bet("clouds", _spots(1, {}, "like", "below", "warmer"), lambda states: how_cold(states[1])),
    ),
    facts=first_facts,
    beliefs=("roof-never-colder-than-air",),
)


# --- clouds: until no frost forms ------------------------------------------------------------


def clouds_facts(page: Page, states: States) -> dict[str, Any]:
    """What the clear night leaves, and the sky under which nothing forms."""
    return {
        "frost": night_water(page, page.stage.first[0].frost),
        "area": amounts.roof_area(page.unit_system),
        "sky": page.show(states[0].cooling, "temperature difference", 0),
        "as-warm": round(states[0].cooling) <= 0,
        "margin": page.show(states[0].margin, "temperature difference"),
        "flux": page.show(page.stage.first[0].frost, "area density"),
    }


SKY = Beat(
    "clouds",
    unlocks="Sky",
    aim=lambda page, states: states[0].frost <= 0,
    stays=False,
    facts=clouds_facts,
    beliefs=("roof-never-colder-than-air",),
)


# --- dam: the same gutter, the same vents, the same snow ----------------------------------------


def dam_right(state: Any) -> str:
    """Whether a dam grows at the eave, and what makes it."""
    return "heat" if state.melt > 0 else "none"


def dam_facts(page: Page, states: States) -> dict[str, Any]:
    """What melts over the leaky ceiling, and both coverings."""
    leaky, tight = states
    return {
        "melts": melted(page, leaky),
        "area": amounts.roof_area(page.unit_system),
        "cold": degrees(page, tight.underside),
        "freezing": degrees(page, 0.0),
        "air": degrees(page, OUTDOORS),
        "flux": page.show(leaky.melt, "area density"),
        "hours": HOURS,
    }


def _dam_bet(name: str, number: int) -> Bet:
    places = {"gutter": ("eave", 0.5, 0.4), "heat": ("roof", 0.55, 0.5), "none": ("snow", 0.3, 0.5)}
    spots = tuple(
        Spot(key, at, number, "ice-dams-are-gutters" if key == "gutter" else "") for key, at in places.items()
    )
    return Bet(name, spots, of_scene(number, dam_right))


DAM = Beat(
    "dam",
    cases=({"Snow": "leaky"}, {"Snow": "tight"}),
    bets=(_dam_bet("leaky", 0), _dam_bet("tight", 1)),
    facts=dam_facts,
    beliefs=("ice-dams-are-gutters",),
    scale=no_dots,
)


# --- mend: what stops it ---------------------------------------------------------------------------


def mend_facts(page: Page, states: States) -> dict[str, Any]:
    """What melts as it was, with more R alone, and now."""

    def of(roof: str) -> str:
        return night_water(page, float(under_snow(roof).melting) * DAY)

    return {
        "before": of("leaky"),
        "thick": of("leaky-and-thick"),
        "area": amounts.roof_area(page.unit_system),
        "more": units.r_value(to_si(60.0, "R"), page.unit_system, 0),
        "r": units.r_value(1 / HOUSE["u_value"], page.unit_system, 0),
    }


def mend_marks(page: Page, state: Any) -> dict[str, Any]:
    """What is so of a roof that is not yet the answer: one with no snow, or whose snow still melts."""
    if not state.snowed:
        text = message("stage-no-snow", frost=state.frost > 0)
        return {"tags": [scenery.tag(text, ("room", 0.75, 0.5))]}
    if state.melt <= 0:
        return {}
    return {
        "tags": [scenery.tag(message("stage-still-melts", thick=state.snow == "leaky-and-thick"), ("room", 0.6, 0.4))]
    }


MEND = Beat(
    "mend",
    cases=({"Snow": "leaky"},),
    unlocks="Snow",
    aim=lambda page, states: states[0].snowed and states[0].melt <= 0,
    stays=False,
    facts=mend_facts,
    marks=mend_marks,
    scale=no_dots,
    beliefs=("ice-dams-are-gutters",),
)

PLAY = Play((FIRST, SKY, DAM, MEND), message, draw, signature, given, shows, scale)
