"""The beats of how fast: a row is tighter than its tightest, a gap costs its share, two cups, and two rolls."""

from __future__ import annotations

from typing import Any

from dryward import language, units
from dryward.course.how_fast_perms import ceiling, decks, row
from dryward.course.how_fast_perms.shelf import DECK, OVER_ROLL, SHELF, by_the_stamp, on_a_day
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.pictures import vault
from dryward.units import amounts, to_si

message = language.beside(__file__)


def signature(state: Any) -> Any:
    """What of a state stands still: what is in the row, and how much of the film is missing."""
    return state.film, state.thing, state.gap


def _permeance(page: Page, value: float) -> str:
    return vault.perms(value, page.unit_system)


def _ounces(page: Page, flux: float) -> str:
    """Of a day, in one unit for amounts that are compared."""
    return amounts.ounces(amounts.a_day(flux, page.unit_system), page.unit_system)


# --- first: three in a row ------------------------------------------------------------


def guesses(state: Any) -> dict[str, float]:
    """What each choice says that the row comes to [kg/(s m2 Pa)]."""
    perms = state.permeances
    return {"a": sum(perms), "b": min(perms), "c": state.together, "d": sum(perms) / len(perms)}


def first_right(states: States) -> str:
    """The choice that is nearest to what the row lets through, by ratio."""
    found = guesses(states[0])
    flux = states[0].flow / states[0].push
    return min(found, key=lambda key: abs(found[key] / flux - 1))


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What passes the row, and what one of its two tight sheets alone would let pass."""
    (state,) = states
    return {
        "whole": _permeance(page, state.together),
        "amount": row.passes(state, page),
        "alone": vault.a_day(state.push * min(state.permeances), page.unit_system),
        "flux": page.show(state.flow, "vapor flux"),
        "system": page.unit_system,
    }


#: The page starts with these in its row [kg/(s m2 Pa)]; spots stand on the scale at what a choice says of them.
_PERMS = {each: to_si(each, "perm") for each in (8.0, 1.0, 0.46, 2.65)}

FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", row.on_scale(_PERMS[8.0]), 0, "adds-perms"),
                Spot("b", row.on_scale(_PERMS[1.0]), 0, "tightest-is-all"),
                Spot("c", row.on_scale(_PERMS[0.46])),
                Spot("d", row.on_scale(_PERMS[2.65]), 0, "averages-layers"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    draw=row.draw,
    given=row.given,
    shows=row.shows,
)


# --- gap: a strip of the film is missing --------------------------------------------------


def held_back(state: Any) -> float:
    """Of what would pass with no film, the part that the film holds back [-]."""
    return 1.0 - float(state.flow) / ceiling.without_film(state)


def gap_right(states: States) -> str:
    """How much a film with a tenth missing still holds back."""
    held = held_back(states[1])
    assert held < held_back(states[0])
    return "none" if held < 0.25 else "half" if held < 0.6 else "most"


def gap_facts(page: Page, states: States) -> dict[str, Any]:
    """What passes with the film whole, with its gap, and with no film."""
    whole, cut = states
    return {
        "missing": page.show(cut.gap, "relative humidity"),
        "held": page.show(held_back(cut), "relative humidity"),
        "whole": _ounces(page, whole.flow),
        "gap": _ounces(page, cut.flow),
        "no-film": _ounces(page, ceiling.without_film(cut)),
        "flux": page.show(cut.flow, "vapor flux"),
    }


_OPEN = {"Outer": "open-sheet"}

GAP = Beat(
    "gap",
    cases=(_OPEN, {**_OPEN, "Gap_share": 0.1}),
    own=1,
    bets=(
        Bet(
            "film",
            (
                Spot("none", ("cut", 0.5, 0.36), 1, "vapor-barrier-is-air-barrier"),
                Spot("half", ("cut", 0.68, 0.36), 1),
                Spot("most", ("cut", 0.86, 0.36), 1),
            ),
            gap_right,
        ),
    ),
    facts=gap_facts,
    beliefs=("vapor-barrier-is-air-barrier",),
    draw=ceiling.draw,
    given=ceiling.given,
    shows=ceiling.shows,
)


# --- cup: two decks, both stamped under 1 perm ---------------------------------------------


def frost_right(state: Any) -> str:
    """Whether frost gathers in one of the scenes."""
    return "frost" if decks.of(state).profile.wet_planes else "none"


def cup_facts(page: Page, states: States) -> dict[str, Any]:
    """Of both panels: the stamp, the perms as damp as it is, the frost, and the frost if the stamp held."""
    facts: dict[str, Any] = {}
    for name, state in zip(("plywood", "osb"), states, strict=True):
        found = decks.of(state)
        face = found.profile.face(decks.DECK, 0)
        facts |= {
            f"{name}-stamp": _permeance(page, SHELF[state.thing].permeance),
            f"{name}-damp": _permeance(page, found.deck),
            f"{name}-frost": vault.a_day(found.profile.gain, page.unit_system),
            f"{name}-by-stamp": vault.a_day(by_the_stamp(state.film, state.thing).gain, page.unit_system),
            f"{name}-humid": page.show(float(found.profile.relative_humidity[face]), "relative humidity"),
            f"{name}-flux": page.show(found.profile.gain, "vapor flux"),
        }
    return facts


def _frost_bet(name: str, number: int, **beliefs: str) -> Bet:
    spots = (
        Spot("frost", ("slope", 0.3, 0.83), number, beliefs.get("frost", "")),
        Spot("none", ("slope", 0.56, 0.83), number, beliefs.get("none", "")),
    )
    return Bet(name, spots, of_scene(number, frost_right))


CUP = Beat(
    "cup",
    cases=({"Outer": "plywood-dry"}, {"Outer": "osb-dry"}),
    # Where it is so, the words are no belief.
    bets=(_frost_bet("plywood", 0, frost="label-perm-is-the-perm"), _frost_bet("osb", 1)),
    facts=cup_facts,
    beliefs=("label-perm-is-the-perm",),
)


# --- rolls: two that look alike --------------------------------------------------------------

#: The film under the rolls [kg/(s m2 Pa)].
_HALF_PERM = to_si(0.5, "perm")


def rolls_facts(page: Page, states: States) -> dict[str, Any]:
    """Of both rolls their perms and what gathers under them; of the self-adhered sheet too."""
    felt, synthetic = (decks.of(state) for state in states)
    film, row_of = states[1].film, SHELF["self-adhered"].row
    third = on_a_day(film, DECK, row_of, OVER_ROLL)
    return {
        "film": _permeance(page, film),
        "felt": _permeance(page, felt.roll),
        "felt-dry": _permeance(page, SHELF["felt-dry"].permeance),
        "felt-humid": page.show(
            float(felt.profile.relative_humidity[felt.profile.face(decks.DECK, 0)]), "relative humidity"
        ),
        "synthetic": _permeance(page, synthetic.roll),
        "times": units.number(felt.roll / synthetic.roll, figures=1, rounded=True),
        "adhered": _permeance(page, third.roll),
        "frost": vault.a_day(synthetic.profile.gain, page.unit_system),
        "adhered-frost": vault.a_day(third.profile.gain, page.unit_system),
        "flux": page.show(synthetic.profile.gain, "vapor flux"),
    }


ROLLS = Beat(
    "rolls",
    cases=({"Outer": "felt-dry", "M_in": _HALF_PERM}, {"Outer": "synthetic", "M_in": _HALF_PERM}),
    bets=(_frost_bet("felt", 0), _frost_bet("synthetic", 1, none="any-underlayment-breathes")),
    facts=rolls_facts,
    beliefs=("any-underlayment-breathes",),
)

PLAY = Play(
    (FIRST, GAP, CUP, ROLLS),
    message,
    decks.draw,
    signature,
    decks.given,
    decks.shows,
    scale=lambda page: vault.scale(page.unit_system, row.DOTS),
)
