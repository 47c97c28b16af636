"""The beats of the vent space: 1/300 twice, the vent doubled, one shower, a bay that a skylight cuts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from dryward import language, units
from dryward.course.vent_space import day as lesson
from dryward.course.vent_space.day import COLD, RAFTER, SPACING, VentDay, share, shower
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics.ventspace import clear_area, net_free_area
from dryward.pictures import scenery, vault, vents
from dryward.pictures.scenery import Scene
from dryward.units import DAY, WATER_DENSITY, amounts, to_si

message = language.beside(__file__)

#: Dots a minute for a fluid ounce a day on the whole roof, and so many of them are told.
DOTS, TOLD = 1, 50
#: One bay [m2].
ONE_BAY = RAFTER * SPACING
#: So much on each part of the roof is drawn as much frost [kg/(s m2)].
_MUCH = to_si(110.0, "g/m2/day")
#: So much of the small vent space is then filled by it, as it is drawn.
_THICKEST = 0.34
#: How high the two vent spaces are [m].
SMALL, LARGE = to_si(1.0, "in"), to_si(2.0, "in")
#: Showers of a winter.
SHOWERS = amounts.WINTER


def signature(state: Any) -> Any:
    """What of a state stands still: the gap, and how the ceiling and the bay are made."""
    return state.gap, state.leak


def draw(scene: Scene, state: Any) -> None:
    """A plane of the roof in section, with air on its way through the vent space."""
    vents.plane(scene, state.gap, state.leak.startswith("leaky"))
    _breeze(scene)


def _breeze(scene: Scene) -> None:
    vents.breeze(scene, "gap", [(-0.13, 0.5), (0.08, 0.5), (0.52, 0.5), (0.93, 0.5)], 0.08)


def height(page: Page, gap: float) -> str:
    """How high a vent space is, in whole units."""
    return page.show(gap, "length", 0)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs, and how high the vent space is."""
    found = vault.airs(lesson.ROOM, state.outdoor, page.unit_system, ("room", 0.45, 0.15), ("sky", 0.3, 0.08))
    gap = message("stage-gap", gap=height(page, state.gap))
    return {"tags": [*found["tags"], scenery.tag(gap, ("gap", 0.3, 0.5), minor=True)]}


def by_bay(page: Page) -> bool:
    """Whether the beat tells of one bay and not of a whole roof."""
    return page.stage.beat in (SHOWER, BAYS)


def a_day(page: Page, flux: float) -> str:
    """A flux [kg/(s m2)] as the water of a day in words: in one bay or on the roof that amounts are for."""
    if by_bay(page):
        return amounts.water(flux * ONE_BAY * DAY / WATER_DENSITY, page.unit_system)
    return vault.a_day(flux, page.unit_system)


def carried(state: Any) -> float:
    """What the vent air does carry off [kg/(s m2)]: no more than comes."""
    return min(state.load, state.power)


def shows(page: Page, state: Any) -> dict[str, Any]:
    """What comes, what the air takes to the ridge, and frost where it is more than that."""
    reach = carried(state) / state.load
    flows = []
    for s in vents.CRACKS:
        # The air fills up on its way: what comes in behind that place stays.
        takes = s < reach or reach == 1.0
        end = [("gap", 1.04, 0.6), ("gap", 1.13, 0.9)] if takes else [("gap", min(s + 0.06, 0.97), 0.9)]
        alike = [each for each in vents.CRACKS if (each < reach or reach == 1.0) == takes]
        rate = (carried(state) if takes else state.left) / len(alike)
        flows.append(scenery.flow(vault.dots(rate, DOTS), ("roof", s, -0.9), ("gap", s, 0.3), *end))
    return {"marks": frost(state, reach), "flows": flows, "tags": [*told(page, state), stays(page, state)]}


def frost(state: Any, start: float) -> list[dict[str, Any]]:
    """Frost on the underside of the covering, as thick as much stays, from where the air is full up to the ridge."""
    if state.left <= 0:
        return []
    amount, first = min(1.0, state.left / _MUCH), max(start, 0.02)
    face = 1.0 - _THICKEST * amount * SMALL / state.gap
    crystals = scenery.drops(("gap", first, face), ("gap", 0.97, face), amount, COLD < 0)
    return [scenery.band("ice", "gap", (first, 0.98), (face, 1.0)), crystals]


def stays(page: Page, state: Any) -> dict[str, Any]:
    """What the air of the vent space leaves there, in words over the covering."""
    text = message("stage-stays", none=state.left <= 0, amount=a_day(page, state.left))
    return scenery.tag(text, ("gap", 0.74, 1.0 + 0.5 * SMALL / state.gap), "wet", "over")


def told(page: Page, state: Any) -> list[dict[str, Any]]:
    """What comes and what can go, in words at their places."""
    comes = message("stage-comes", amount=a_day(page, state.load))
    return [
        scenery.tag(comes, ("roof", 0.6, -0.5), "vapor pressure"),
        scenery.tag(can_go(page, state), ("gap", 0.34, 1.5), "drying", "over"),
    ]


def can_go(page: Page, state: Any) -> str:
    """What the air of a bay can take along, in words."""
    return message("stage-can-go", none=state.power <= 0, amount=a_day(page, state.power))


def _winter(page: Page, flux: float) -> str:
    return amounts.in_buckets(amounts.a_day(flux, page.unit_system) * amounts.WINTER, page.unit_system)


# --- first: two roofs with 1/300 ---------------------------------------------------------


def keeps_up(state: Any) -> bool:
    """Whether the air can carry off all that comes."""
    return bool(share(state.load, state.power) < 1.0)


def first_right(states: States) -> str:
    """Over which ceilings the vent keeps up."""
    found = {(True, True): "a", (True, False): "b", (False, False): "c", (False, True): "d"}
    return found[keeps_up(states[0]), keeps_up(states[1])]


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What is left over the leaky ceiling in a winter, and what the code asks for beside what there is."""
    leaky = states[1]
    need = net_free_area(lesson.AREA, lesson.RATIO, eave_length=lesson.EAVES, ridge_length=lesson.RIDGE)
    times = clear_area(leaky.gap, lesson.BAY, SPACING) / max(need.lower_per_length, need.upper_per_length)
    return {
        "ratio": lesson.RATIO,
        "times": units.number(times, 1),
        "comes": page.show(leaky.load, "vapor flux"),
        "can_go": page.show(leaky.power, "vapor flux"),
        "left": _winter(page, leaky.left),
        "area": amounts.roof_area(page.unit_system),
        "days": amounts.WINTER,
        "flux": page.show(leaky.left, "vapor flux"),
    }


FIRST = Beat(
    "first",
    cases=({"Leak": "airtight"}, {}),
    own=1,
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("gap", 1.05, 1.5), 1, "one-in-300-is-physics"),
                Spot("b", ("roof", 0.5, 0.0), 0),
                Spot("c", ("gap", 0.62, 0.5), 1, "more-vents-always-help"),
                Spot("d", ("roof", 0.5, 0.0), 1, "house-must-breathe"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("one-in-300-is-physics",),
)


# --- doubled: twice the vent, over both ceilings ------------------------------------------


def before(state: Any, pulled: bool = False) -> VentDay:
    """The same roof with the small vent; with `pulled` only the gap is as it was."""
    leak = "leaky" if state.leak == "leaky-and-pulled" and not pulled else state.leak
    return replace(state, gap=SMALL, leak=leak)


def doubled_right(state: Any) -> str:
    """What becomes of the water that is left when the vent is made twice as large."""
    now, then = state.left, before(state).left
    return "same" if abs(now - then) < 0.01 * _MUCH else "less" if now < then else "more"


def doubled_facts(page: Page, states: States) -> dict[str, Any]:
    """What the large vent adds over the leaky ceiling, what its pull draws in, and what is left."""
    tight, now = states
    then, still = before(now), replace(now, leak="leaky")
    return {
        "adds": a_day(page, now.power - then.power),
        "draws": a_day(page, now.load - then.load),
        "then": _winter(page, then.left),
        "now": _winter(page, now.left),
        "still": _winter(page, still.left),
        "tight": a_day(page, tight.load),
        "area": amounts.roof_area(page.unit_system),
        "flux_then": page.show(then.left, "vapor flux"),
        "flux": page.show(now.left, "vapor flux"),
    }


def _doubled_bet(name: str, number: int, *, belief: str) -> Bet:
    places = {"less": 0.3, "same": 0.55, "more": 0.8}
    spots = tuple(Spot(key, ("gap", s, 0.9), number, belief if key == "less" else "") for key, s in places.items())
    return Bet(name, spots, of_scene(number, doubled_right))


DOUBLED = Beat(
    "doubled",
    cases=({"Gap": LARGE, "Leak": "airtight"}, {"Gap": LARGE, "Leak": "leaky-and-pulled"}),
    own=1,
    bets=tuple(
        _doubled_bet(name, number, belief="more-vents-always-help") for number, name in enumerate(("tight", "leaky"))
    ),
    facts=doubled_facts,
    beliefs=("more-vents-always-help",),
)


# --- shower: where the duct ends ------------------------------------------------------------

_DUCT = 0.44


def draw_bath(scene: Scene, state: Any) -> None:
    """A bath under the roof, with the duct of its fan."""
    vents.plane(scene, state.gap, leaky=False, person_at=None)
    _breeze(scene)
    vents.bath(scene, outdoors=state.leak != "bath-fan", at=_DUCT)


def shower_right(state: Any) -> str:
    """Whether the bay keeps water of a shower."""
    return "none" if keeps_up(state) else "much"


def shower_facts(page: Page, states: States) -> dict[str, Any]:
    """What one shower blows in, what the bay's air carries in a day, and a winter of both."""
    into = states[1]
    winter = SHOWERS * into.left * ONE_BAY * DAY / WATER_DENSITY
    return {
        "shower": amounts.water(shower(COLD) / WATER_DENSITY, page.unit_system, 3),
        "carries": a_day(page, into.power),
        "by_vapor": a_day(page, states[0].load),
        "showers": SHOWERS,
        "winter": amounts.in_buckets(winter, page.unit_system),
        "flux": page.show(into.left, "vapor flux"),
    }


def shower_shown(page: Page, state: Any) -> dict[str, Any]:
    """The air of the fan on its way: outdoors, or into the bay, whose own air takes little of it along."""
    blown = vault.dots(shower(COLD) / (ONE_BAY * DAY), DOTS)
    text = message("stage-fan", amount=amounts.water(shower(COLD) / WATER_DENSITY, page.unit_system, 3))
    tags = [scenery.tag(text, ("room", 0.3, 0.86), "vapor pressure"), told(page, state)[1], stays(page, state)]
    fan = ("duct", -0.6, 0.0)
    if not state.blown:
        return {"flows": [scenery.flow(blown, fan, ("duct", 1.0, 0.0), ("duct", 1.7, 0.0))], "tags": tags}
    inside = [fan, ("gap", _DUCT, 0.4)]
    ends = [[("gap", s, 0.88)] for s in (0.2, 0.56, 0.7, 0.85)]
    flows = [scenery.flow(vault.dots(state.left, DOTS) / len(ends), *inside, *end) for end in ends]
    flows.append(scenery.flow(vault.dots(carried(state), DOTS), *inside, ("gap", 1.04, 0.6), ("gap", 1.13, 0.9)))
    return {"marks": frost(state, 0.05), "flows": flows, "tags": tags}


SHOWER = Beat(
    "shower",
    cases=({"Leak": "airtight"}, {"Leak": "bath-fan"}),
    own=1,
    bets=tuple(
        Bet(
            name,
            (
                Spot("none", ("gap", 0.62, 0.5), number, "bath-fan-into-vent"),
                Spot("much", ("gap", 0.84, 0.5), number),
            ),
            of_scene(number, shower_right),
        )
        for number, name in enumerate(("outdoors", "inside"))
    ),
    facts=shower_facts,
    beliefs=("bath-fan-into-vent",),
    draw=draw_bath,
    shows=shower_shown,
)


# --- bays: one ridge vent, two bays -----------------------------------------------------------


def draw_bays(scene: Scene, state: Any) -> None:
    """The roof from the yard, its bays open to see into."""
    vents.bays(scene)


def bays_given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs, and what the roof has in it."""
    found = vault.airs(lesson.ROOM, state.outdoor, page.unit_system, ("house", 0.5, 0.5), ("sky", 0.3, 0.06))
    names = {"ridge-vent": ("next", 1.03, 0.5), "eave-vent": ("next", -0.03, 0.5), "skylight": ("cut", 0.53, 0.0)}
    words = [scenery.tag(message(f"stage-{name}"), at, minor=True) for name, at in names.items()]
    return {"tags": [*found["tags"], *words]}


def cut_off(state: Any) -> VentDay:
    """The bay with the skylight in it, of a roof whose other bays are open."""
    return replace(state, leak="cut")


def bay_right(state_of: Callable[[Any], Any]) -> Callable[[States], str]:
    """Whether the air of a bay carries off what comes."""
    return lambda states: "all" if keeps_up(state_of(states[0])) else "none"


def bays_facts(page: Page, states: States) -> dict[str, Any]:
    """What the air of both bays can carry, and what stays in a winter."""
    clear, cut = states[0], cut_off(states[0])
    leaky = replace(states[0], leak="leaky").load  # of it none can go

    def winter(flux: float) -> str:
        return amounts.in_buckets(flux * ONE_BAY * DAY * amounts.WINTER / WATER_DENSITY, page.unit_system)

    return {
        "comes": a_day(page, clear.load),
        "carries": a_day(page, clear.power),
        "left": winter(cut.left),
        "leaky": winter(leaky),
        "flux_leaky": page.show(leaky, "vapor flux"),
        "days": amounts.WINTER,
        "flux": page.show(cut.left, "vapor flux"),
    }


def bays_shown(page: Page, state: Any) -> dict[str, Any]:
    """Air up the open bays with what it takes along; none through the one that is cut, and frost there."""
    cut = cut_off(state)
    below, above = vents.SKYLIGHT[0] - 0.03, vents.SKYLIGHT[1] + 0.03
    parts = (0.04, below), (above, 0.97)
    marks = [scenery.arrow("air flow", (name, 0.06, 0.22), (name, 0.95, 0.22), 0.12) for name in vents.OPEN]
    marks += [scenery.drops(("cut", a, 0.0), ("cut", b, 0.0), 0.15, COLD < 0) for a, b in parts]
    rate = vault.dots(state.load, DOTS)
    flows = [
        scenery.flow(rate / 2, (name, start, -0.2), (name, 1.06, -0.2)) for name in vents.OPEN for start in (0.1, 0.5)
    ]
    flows += [scenery.flow(vault.dots(cut.left, DOTS) / 2, ("cut", a, 0.0), ("cut", b, 0.0)) for a, b in parts]
    tags = [
        scenery.tag(can_go(page, state), ("next", 0.42, -0.5), "drying"),
        scenery.tag(can_go(page, cut), ("cut", 0.3, 0.0), "wet"),
    ]
    return {"marks": marks, "flows": flows, "tags": tags}


BAYS = Beat(
    "bays",
    cases=({"Leak": "airtight"},),
    bets=tuple(
        Bet(
            name,
            (Spot("all", (name, 0.74, 0.0), 0, "ridge-vent-vents-every-bay"), Spot("none", (name, 0.16, 0.0))),
            bay_right(state_of),
        )
        for name, state_of in (("open", lambda state: state), ("cut", cut_off))
    ),
    facts=bays_facts,
    beliefs=("ridge-vent-vents-every-bay",),
    draw=draw_bays,
    given=bays_given,
    shows=bays_shown,
)


def scale(page: Page) -> str:
    """What the dots stand for, on the roof that amounts are for and in one bay."""
    ounces = TOLD / DOTS * vault.OUNCE
    bay = amounts.water(ounces * ONE_BAY * DAY / WATER_DENSITY, page.unit_system)
    return message("stage-scale", number=TOLD, roof=amounts.on_a_roof(ounces, page.unit_system), bay=bay)


PLAY = Play((FIRST, DOUBLED, SHOWER, BAYS), message, draw, signature, given, shows, scale)
