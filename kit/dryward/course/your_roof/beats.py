"""The beats of your roof: what its winter brings by vapor and by house air, and which way its summer dries it."""

from __future__ import annotations

import math
from typing import Any

from dryward import language, units
from dryward.building import Material
from dryward.building.job import Tightness
from dryward.checks import PlainError
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States
from dryward.physics import drying
from dryward.physics.airleak import Leak, stack_pressure
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.units import amounts, to_si

message = language.beside(__file__)

#: The blower-door number that is taken where a job has none: a usual new house, common practice, no source.
USUAL = Tightness(3.0)
#: Less than so much is told as next to nothing [kg/(s m2)].
LITTLE = to_si(0.1, "g/m2/day")


# --- the roof as the page holds it ---------------------------------------------------------


def house_air(state: Any) -> float:
    """What leaking house air leaves at the wettest face of the roof, as a flux [kg/(s m2)]."""
    tightness = state.here.job.tightness or USUAL
    leak = Leak.from_blower_door(tightness.ach50, tightness.volume, tightness.share, area=tightness.area)
    push = max(float(stack_pressure(tightness.height, state.indoor.temperature, state.outdoor.temperature)), 0.0)
    profile = state.profile
    return float(leak.moisture(push, state.indoor, float(profile.temperature[profile.wettest])).stays)


def wet_layer(state: Any) -> str | None:
    """The layer that is taken to be wet: the outermost that can hold water and has a layer or a film on both sides."""
    for layer in reversed(state.here.job.assembly.layers):
        if isinstance(layer.substance, Material) and _rates(state, str(layer.name)) is not None:
            return str(layer.name)
    return None


def _rates(state: Any, name: str) -> tuple[float, float] | None:
    """What a layer gives off inward and outward [kg/(s m2)]; None where a vent or the sky takes all there is."""
    try:
        found = drying.rates(state.here.job.assembly, name, state.indoor, state.outdoor)
    except PlainError:  # it lies outside of a vent space
        return None
    ways = max(found.inward, 0.0), max(found.outward, 0.0)
    return None if math.inf in ways else ways


def dries(state: Any) -> tuple[float, float]:
    """What its wet layer gives off inward and outward [kg/(s m2)]; nothing where no layer can be wet."""
    name = wet_layer(state)
    return (name and _rates(state, name)) or (0.0, 0.0)


# --- the scene --------------------------------------------------------------------------------


def signature(state: Any) -> Any:
    """What of a state stands still: the layers and the season."""
    return state.here.job.assembly.layers, vault.season(state.outdoor.temperature)


def draw(scene: Scene, state: Any) -> None:
    """The learner's own roof."""
    vault.draw(scene, state.here.job.assembly, vault.season(state.outdoor.temperature), at="")


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs of the month."""
    return vault.airs(state.indoor, state.outdoor, page.unit_system)


def winter(page: Page, state: Any) -> dict[str, Any]:
    """What gathers by vapor, and what house air leaves."""
    roof, profile = state.here.job.assembly, state.profile
    by_vapor, by_air = (_amount(page, each) for each in (profile.gain, house_air(state)))
    arrow = scenery.arrow("air-flow", ("slope", 0.24, -0.75), ("slope", 0.24, 0.6), 0.7)
    return scenery.together(
        [
            {"marks": vault.water(profile, roof, page.unit_system, lens=False).get("marks", [])},
            vault.vapor(profile, roof),
            {
                "marks": [arrow] if house_air(state) > LITTLE else [],
                "tags": [
                    scenery.tag(message("by-vapor", amount=by_vapor), ("slope", 0.72, 1.0), "vapor pressure", "over"),
                    scenery.tag(message("by-air", amount=by_air), ("slope", 0.24, -0.75), "air flow", "under"),
                ],
            },
        ]
    )


def summer(page: Page, state: Any) -> dict[str, Any]:
    """What a wet layer gives off, both ways."""
    inward, outward = dries(state)
    roof, name = state.here.job.assembly, wet_layer(state)
    marks, tags = [], []
    for layer, _, _, end in scenery.layers_through(roof):
        if layer.name == name:
            marks.append(scenery.drops(("slope", 0.03, end), ("slope", 0.97, end), 0.6))
    for amount, key, ends, at, side in (
        (outward, "dries-out", (0.75, 1.55), 1.55, "over"),
        (inward, "dries-in", (0.45, -0.8), -0.8, "under"),
    ):
        if amount > LITTLE:
            share = amount / max(inward, outward)
            tail, head = (("slope", 0.5, each) for each in ends)
            marks.append(scenery.arrow("drying", tail, head, max(share, 0.15)))
        text = message(key, amount=_amount(page, amount))
        tags.append(scenery.tag(text, ("slope", 0.5, at), "drying", side))
    return {"marks": marks, "tags": tags}


def _amount(page: Page, flux: float) -> str:
    """A flux as the water of a day on a roof, in words."""
    return message("next-to-nothing") if flux < LITTLE else vault.a_day(flux, page.unit_system)


# --- first: vapor or house air --------------------------------------------------------------------


def more(state: Any) -> str:
    """What leaves more in the roof, vapor or house air; neither where both leave next to nothing."""
    by_vapor, by_air = state.profile.gain, house_air(state)
    if max(by_vapor, by_air) < LITTLE:
        return "neither"
    return "air" if by_air > by_vapor else "vapor"


def first_right(states: States) -> str:
    """Which of the two leaves more in this roof."""
    return {"vapor": "a", "air": "b", "neither": "c"}[more(states[0])]


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """What the coldest month brings, each way."""
    state = states[0]
    known = state.here.job.tightness
    return {
        "vapor": _amount(page, state.profile.gain),
        "air": _amount(page, house_air(state)),
        "more": more(state),
        "area": amounts.roof_area(page.unit_system),
        "ach": units.number((known or USUAL).ach50, figures=3),
        "known": known is not None,
    }


FIRST = Beat(
    "first",
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", ("slope", 0.72, 0.3), 0, "vapor-alone"),
                Spot("b", ("slope", 0.24, -0.45)),
                Spot("c", ("slope", 0.5, 0.05), 0, "vapor-barrier-is-air-barrier"),
                Spot("d", ("sky", 0.62, 0.14), 0, "one-check-decides"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    marks=winter,
)


# --- summer: which way it dries ---------------------------------------------------------------------


def summer_right(states: States) -> str:
    """The way on which the more leaves; neither where next to nothing does."""
    inward, outward = dries(states[0])
    if inward + outward < LITTLE:
        return "none"
    return "out" if outward >= inward else "in"


def summer_facts(page: Page, states: States) -> dict[str, Any]:
    """What leaves each way, and the layer that was taken to be wet."""
    inward, outward = dries(states[0])
    return {
        "layer": language.called(wet_layer(states[0]) or ""),
        "in": _amount(page, inward),
        "out": _amount(page, outward),
        "way": summer_right(states),
        "area": amounts.roof_area(page.unit_system),
    }


SUMMER = Beat(
    "summer",
    cases=({"Season": "summer"},),
    bets=(
        Bet(
            "way",
            (
                Spot("out", ("slope", 0.62, 1.2), glyph="out"),
                Spot("in", ("slope", 0.38, -0.35), glyph="in"),
                Spot("none", ("room", 0.95, 0.5), glyph="none"),
            ),
            summer_right,
        ),
    ),
    facts=summer_facts,
    marks=summer,
)

PLAY = Play(
    (FIRST, SUMMER),
    message,
    draw,
    signature,
    given,
    lambda page, state: {},
    scale=lambda page: vault.scale(page.unit_system),
)
