"""The beats of twelve months: the pile of a winter, wet rafters in two roofs, a January check in two towns."""

from __future__ import annotations

from typing import Any

from dryward import language
from dryward.course.twelve_months import lumber
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics.monthly import Months
from dryward.pictures import months, scenery
from dryward.pictures.film import ORDER, month_at
from dryward.pictures.scenery import Scene
from dryward.units import amounts, to_si
from dryward.verdict import criterion
from dryward.verdict.words import month

message = language.beside(__file__)

WOOD = criterion("wood-moisture")
#: Ends of the scales: of the first roof, of the two towns [kg/m2], and of the rafters [mass %].
TOP, TOP_OF_TOWNS, TOP_OF_RAFTERS = 0.5, 1.5, 32.0
#: Below it a roof holds little, above it much [kg/m2].
LITTLE = 0.2
#: Rafters that have come down to this are as dry as lumber is sold [mass %]: common practice, no source.
DRIED = 16.0
PLASTIC = to_si(0.06, "perm")


def signature(state: Any) -> Any:
    """What stands still: the layers."""
    return state.months.assembly.layers


def draw(scene: Scene, state: Any) -> None:
    """The vault and the board of the months."""
    months.draw(scene, state.months.assembly)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The letters of the months, and what the rows are called."""
    return scenery.together([months.letters(), months.rows()])


def given_rafters(page: Page, state: Any) -> dict[str, Any]:
    """The letters of the months, and to what lumber is to dry."""
    at = DRIED / TOP_OF_RAFTERS
    limit = scenery.tag(_percent(DRIED, page), ("months", 0.0, at), "", "left", minor=True)
    line = scenery.line("before", ("months", 0.0, at), ("months", 1.0, at))
    return scenery.together([months.letters(), {"marks": [line], "tags": [limit]}])


def _whole(mass: float, page: Page) -> str:
    return amounts.whole_roof(mass, page.unit_system)


def _percent(moisture: float, page: Page) -> str:
    return page.show(moisture / 100, "relative humidity", 0)


def peaks(page: Page, found: Months, top: float) -> dict[str, Any]:
    """The bars, the drops, and the highest bar in words."""
    parts = [months.water(found, top), months.drops(found, found.assembly)]
    if found.peak_month is not None:
        text = message("most-in", water=_whole(found.peak, page), month=month(found.peak_month))
        parts.append(months.over(text, found.peak_month, found.peak / top))
    return scenery.together(parts)


# --- first: in which month? ------------------------------------------------------------

#: The month of each choice that has one.
MONTHS = {"a": 1, "b": 11, "c": 3}


def first_right(states: States) -> str:
    """The choice whose month holds the most."""
    found = states[0].months
    assert found.dries_out
    return next(key for key, each in MONTHS.items() if each == found.peak_month)


def gone_in(found: Months) -> int:
    """The month in which the last of it leaves."""
    held = [float(each) for each in found.held.sum(axis=1)]
    top = held.index(max(held))
    return found.month[next(k for k in range(top, 12) if held[k] <= 0)]


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """The most held, what was there at the end of January, and when it is gone."""
    found = states[0].months
    held = months.held_by(found)
    assert found.peak_month is not None
    return {
        "month": month(found.peak_month),
        "most": _whole(found.peak, page),
        "coldest": month(MONTHS["a"]),
        "then": _whole(held[MONTHS["a"]], page),
        "area": amounts.roof_area(page.unit_system),
        "gone": month(gone_in(found)),
        "flux": page.show(found.peak, "area density"),
        "flux_then": page.show(held[MONTHS["a"]], "area density"),
    }


def _spot(key: str, belief: str = "") -> Spot:
    return Spot(key, ("months", month_at(MONTHS[key]), 0.45), 0, belief)


FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            (
                _spot("a"),
                _spot("b"),
                _spot("c"),
                Spot("d", ("months", month_at(ORDER[-1]), 0.8), 0, "one-check-decides"),
                Spot("e", ("slope", 0.4, 0.46), 0, "no-drops-no-problem"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("one-check-decides",),
    marks=lambda page, state: peaks(page, state.months, TOP),
)


# --- lumber: wet rafters between two tight sides, and with one side open -------------------


def rafters(state: Any) -> tuple[float, ...]:
    """Moisture of the rafters at the end of each month, from September on [mass %]."""
    return lumber.year(state.months.assembly, state.place, state.indoor)


def draw_rafter(scene: Scene, state: Any) -> None:
    """The vault with a rafter in the cut, and the board."""
    assembly = state.months.assembly
    months.draw(scene, assembly, flows=False)
    a, b = scenery.across(assembly, "insulation")
    scene.filled(scene.axes["slope"].corners((0.012, 0.988), (a + 0.01, b - 0.01)), "layer-board", "board")


def lumber_right(state: Any) -> str:
    """Where the rafters of a roof are after a year."""
    last = rafters(state)[-1]
    assert last < DRIED or last > WOOD.caution
    return "dried" if last < DRIED else "wet"


def lost(points: float) -> float:
    """What so many points of the rafters weigh [kg/m2 of roof]."""
    return points / 100 * lumber.RAFTERS


def lumber_facts(page: Page, states: States) -> dict[str, Any]:
    """Where both end, how long the open one took, and what left."""
    closed, opened = (rafters(state) for state in states)
    first = next(k for k, each in enumerate(opened) if each <= DRIED)
    return {
        "start": _percent(lumber.START, page),
        "dried": _percent(DRIED, page),
        "caution": _percent(WOOD.caution, page),
        "closed": _percent(closed[-1], page),
        "open": _percent(opened[first], page),
        "last": month(ORDER[-1]),
        "open_last": _percent(opened[-1], page),
        "open_most": _percent(max(opened[first:]), page),
        "open_month": month(ORDER[opened.index(max(opened[first:]))]),
        "month": month(ORDER[first]),
        "left": _whole(lost(lumber.START - closed[-1]), page),
        "gone": _whole(lost(lumber.START - opened[first]), page),
        "area": amounts.roof_area(page.unit_system),
        "flux": page.show(lost(lumber.START - closed[-1]), "area density"),
    }


def rafter_bars(page: Page, state: Any) -> dict[str, Any]:
    """A bar a month of the rafters' moisture, and where it ends."""
    found = rafters(state)
    bars = {number: each / TOP_OF_RAFTERS for number, each in zip(ORDER, found, strict=True)}
    ends = message("rafters-at", moisture=_percent(found[-1], page), month=month(ORDER[-1]))
    over = months.over(ends, ORDER[9], found[9] / TOP_OF_RAFTERS, "moisture content")
    return scenery.together([months.stack(bars, "moisture content"), over])


def _lumber_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("dried", ("months", month_at(ORDER[-1]), 0.1), number, "wet-lumber-dries-itself"),
        Spot("wet", ("months", month_at(ORDER[-1]), 0.92), number),
    )
    return Bet(name, spots, of_scene(number, lumber_right))


LUMBER = Beat(
    "lumber",
    cases=({"M_in": PLASTIC, "Outer": "closed-sheet"}, {"M_in": PLASTIC, "Outer": "open-sheet"}),
    bets=(_lumber_bet("closed", 0), _lumber_bet("open", 1)),
    facts=lumber_facts,
    beliefs=("wet-lumber-dries-itself",),
    marks=rafter_bars,
    draw=draw_rafter,
    given=given_rafters,
)


# --- check: one fails in January, one passes ---------------------------------------------


def january(found: Months) -> float:
    """What January adds [kg/m2]."""
    added = dict(zip(found.month, found.condensed.sum(axis=1), strict=True))
    return float(added[1])


def town_right(number: int) -> Any:
    """Whether a roof holds little or much at its worst."""

    def right(states: States) -> str:
        assert (january(states[number].months) > 0) == (number == 0), "what stands over the two"
        return "little" if states[number].months.peak < LITTLE else "much"

    return right


def town_facts(page: Page, states: States) -> dict[str, Any]:
    """The most that each holds, when, and when it is gone."""
    fails, passes = (state.months for state in states)
    assert fails.peak_month
    assert passes.peak_month
    return {
        "little": _whole(LITTLE, page),
        "limit": page.show(LITTLE, "area density"),
        "area": amounts.roof_area(page.unit_system),
        "fails": _whole(fails.peak, page),
        "passes": _whole(passes.peak, page),
        "fails_month": month(fails.peak_month),
        "passes_month": month(passes.peak_month),
        "gone": month(gone_in(fails)),
        "flux_fails": page.show(fails.peak, "area density"),
        "flux_passes": page.show(passes.peak, "area density"),
    }


def _town_bet(name: str, number: int, held: str) -> Bet:
    places = {"little": ("months", 0.24, 0.28), "much": ("months", 0.62, 0.76)}
    spots = tuple(Spot(key, at, number, "one-check-decides" if key == held else "") for key, at in places.items())
    return Bet(name, spots, town_right(number))


CHECK = Beat(
    "check",
    cases=(
        {"Place": "cold", "M_in": to_si(1.0, "perm"), "Outer": "osb"},
        {"Place": "hot-humid", "M_in": PLASTIC, "Outer": "open-sheet"},
    ),
    bets=(_town_bet("fails", 0, "much"), _town_bet("passes", 1, "little")),
    facts=town_facts,
    beliefs=("one-check-decides",),
    marks=lambda page, state: peaks(page, state.months, TOP_OF_TOWNS),
)

PLAY = Play((FIRST, LUMBER, CHECK), message, draw, signature, given, lambda page, state: {})
