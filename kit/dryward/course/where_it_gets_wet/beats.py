"""The beats of where it gets wet: the line is not the water, no drops is not dry, one check does not decide."""

from __future__ import annotations

from typing import Any

from dryward import language, units
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics import monthly
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.teaching import words
from dryward.units import amounts, to_si
from dryward.verdict.words import amount
from dryward.weather import demo_climate

message = language.beside(__file__)

OUTER = "outer layer"
#: How far the dew-point line is to be moved [m].
FAR = to_si(2.0, "in")
#: A town with a winter so long that not every roof dries after it.
TOWN = demo_climate("very-cold")
#: Wood at or above this is over the caution of the verdict [mass %].
CAUTION = 20.0


def draw(scene: Scene, state: Any) -> None:
    """The vault, with a lens on the face at risk."""
    vault.draw(scene, state.roof, vault.season(state.outdoor.temperature), OUTER)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs."""
    return vault.airs(state.indoor, state.outdoor, page.unit_system)


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The line, the water, the vapor; where no water gathers, how humid the face is."""
    system = page.unit_system
    parts = [
        vault.water(state.profile, state.roof, system),
        vault.dew_line(state.profile, state.roof),
        vault.vapor(state.profile, state.roof),
    ]
    if not state.profile.wet_planes:
        parts.append(vault.face(state.profile, OUTER, system))
    return scenery.together(parts)


def _whole(mass: float, page: Page) -> str:
    """Water of each part of a face [kg/m2] as that of the whole roof, in words."""
    return amounts.whole_roof(mass, page.unit_system)


def wood(state: Any) -> float:
    """Where the wood of the outer layer would settle [mass %]; nothing where it is none."""
    found = [each.value for each in state.profile.verdict.findings if each.what == "wood-moisture"]
    return max(found, default=0.0)


# --- first: where is the first water? -------------------------------------------------


def first_right(states: States) -> str:
    """Of an open outer layer and of OSB: where water shows up."""
    open_sheet, osb = (state.profile.wet_planes for state in states)
    assert not open_sheet
    assert osb[0].outer_layer == OUTER
    return "d"


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What gathers at the OSB, and how far apart the two lines are."""
    osb = states[1].profile
    lines = [page.show(float(each.profile.dew_point_depth), "length") for each in states]
    return {
        "winter": amounts.a_winter(osb.gain, page.unit_system),
        "flux": page.show(osb.gain, "vapor flux"),
        "open": words.number(50, "perm", page.unit_system),
        "deck": words.number(1.5, "perm", page.unit_system),
        "line": lines[0],
        "other": lines[1],
    }


_MIDDLE, _FILM, _FACE = ("slope", 0.5, 0.46), ("slope", 0.68, 0.118), ("slope", 0.38, 0.825)

#: The cold of the question: the slider's own start is a round number in each unit system.
_ASKED = {"T_out": to_si(20.0, "degF")}

FIRST = Beat(
    "first",
    cases=({**_ASKED, "Outer": "open-sheet"}, {**_ASKED, "Outer": "osb"}),
    own=1,
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", _MIDDLE, 1, "dew-point-is-a-place"),
                Spot("b", _FILM, 1, "wrong-side-of-the-film"),
                Spot("c", ("slope", 0.28, -0.1), 1, "no-drops-no-problem"),
                Spot("d", _FACE, 1),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("dew-point-is-a-place",),
)


# --- line: move it, and watch the water ----------------------------------------------


def line_moved(page: Page, states: States) -> float:
    """How far the line came toward the room [m]; below 0 where it went outward or is no more."""
    now, before = states[0].profile.dew_point_depth, page.stage.first[0].profile.dew_point_depth
    return -1.0 if now is None or before is None else float(before) - float(now)


def line_facts(page: Page, states: States) -> dict[str, Any]:
    """How far the line went, and what gathers at the outer layer all the same."""
    profile = states[0].profile
    assert all(plane.outer_layer == OUTER for plane in profile.wet_planes)
    return {
        "far": page.show(FAR, "length", 0),
        "moved": page.show(line_moved(page, states), "length"),
        "amount": amounts.on_a_roof(profile.gain, page.unit_system),
        "flux": page.show(profile.gain, "vapor flux"),
    }


LINE = Beat(
    "line",
    unlocks="RH_in",
    aim=lambda page, states: line_moved(page, states) >= FAR,
    stays=False,
    facts=line_facts,
    beliefs=("dew-point-is-a-place",),
)


# --- drops: two roofs without a drop ---------------------------------------------------


def wood_right(state: Any) -> str:
    """The reading of the meter in one of the scenes."""
    assert not state.profile.wet_planes
    return "over" if wood(state) >= CAUTION else "dry"


def wood_facts(page: Page, states: States) -> dict[str, Any]:
    """Both readings, and what lies between."""
    first, second = (wood(state) for state in states)
    layer = states[0].roof.layer(OUTER)
    mass = abs(first - second) / 100 * layer.substance.density * layer.thickness
    return {
        "first": amount(first, "% MC", page.unit_system, named=False),
        "second": amount(second, "% MC", page.unit_system, named=False),
        # Of the readings as they are shown, so that the sum on the screen is right.
        "points": units.number(abs(round(first) - round(second)), 0),
        "water": _whole(mass, page),
    }


def reading(page: Page, state: Any) -> dict[str, Any]:
    """The meter in the wood: where its hand stands."""
    percent = wood(state)
    text = message("meter-reads", moisture=amount(percent, "% MC", page.unit_system, named=False))
    return {"tags": [scenery.tag(text, ("lens", 0.5, 0.0), "moisture content", "under")]}


def _wood_bet(name: str, number: int) -> Bet:
    spots = (
        # Where it is so, the words are no belief.
        Spot("dry", ("slope", 0.3, 0.825), number, "" if number else "no-drops-no-problem"),
        Spot("over", ("slope", 0.6, 0.825), number),
    )
    return Bet(name, spots, of_scene(number, wood_right))


DROPS = Beat(
    "drops",
    cases=({"T_out": to_si(36.0, "degF")}, {"T_out": to_si(50.0, "degF")}),
    bets=(_wood_bet("colder", 0), _wood_bet("milder", 1)),
    facts=wood_facts,
    beliefs=("no-drops-no-problem",),
    marks=reading,
)


# --- check: two roofs that fail in January ---------------------------------------------


def year(state: Any) -> monthly.Months:
    """Twelve months of a roof in the town."""
    return monthly.balance(state.roof, TOWN, state.indoor)


def year_right(state: Any) -> str:
    """Whether the water of a roof is gone within the year."""
    assert state.profile.wet_planes
    return "gone" if year(state).dries_out else "stays"


def year_facts(page: Page, states: States) -> dict[str, Any]:
    """What each roof held at most, and what is left a year later."""
    osb, closed = (year(state) for state in states)
    assert osb.dries_out
    return {
        "most": _whole(osb.peak, page),
        "more": _whole(float(closed.growth), page),
        "flux": page.show(float(closed.growth), "area density"),
    }


def left_over(page: Page, state: Any) -> dict[str, Any]:
    """What a year leaves behind, in words at the face."""
    found = year(state)
    left = _whole(float(found.growth), page)
    text = message("left-after-a-year", dries=bool(found.dries_out), left=left)
    return {"tags": [scenery.tag(text, ("slope", 0.75, 1.0), "moisture content", "over")]}


def _year_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("gone", ("slope", 0.3, 0.825), number),
        Spot("stays", ("slope", 0.6, 0.825), number, "" if number else "one-check-decides"),
    )
    return Bet(name, spots, of_scene(number, year_right))


_JANUARY = {"T_out": float(min(TOWN.temperature)), "RH_in": 0.5}

CHECK = Beat(
    "check",
    cases=({**_JANUARY, "Outer": "osb"}, {**_JANUARY, "Outer": "closed-sheet"}),
    bets=(_year_bet("osb", 0), _year_bet("closed", 1)),
    facts=year_facts,
    beliefs=("one-check-decides",),
    marks=left_over,
)

PLAY = Play(
    (FIRST, LINE, DROPS, CHECK),
    message,
    draw,
    vault.signature,
    given,
    shows,
    scale=lambda page: vault.scale(page.unit_system),
)
