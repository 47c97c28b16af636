"""The beats of temperature through the layers: a board outside, two boards of one R, foam, and the studs."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from dryward import language, units
from dryward.building import material
from dryward.course.temperature_through_layers.wall import BAYS, ROOM, face_layer, wall_of, wall_with
from dryward.panels.stage import LESSON, Beat, Bet, Page, Play, Spot, States, of_scene
from dryward.physics import steady
from dryward.pictures import scenery, vault, wall
from dryward.pictures.scenery import Place, Scene
from dryward.units import amounts, to_si

message = language.beside(__file__)

#: Dots a minute for a fluid ounce of water a day.
DOTS = 10
#: The R of the added board of the first beat, and of the two boards of the second.
BOARD, THIN = to_si(10.0, "R"), to_si(3.0, "R")
#: Foam in the rafters: an inch, and enough of it [m].
INCH, ENOUGH = to_si(1.0, "in"), to_si(4.75, "in")


def view(state: Any) -> str:
    """What a state is drawn as: a roof where foam is in the bay, from above where R is counted, else a wall bay."""
    if face_layer(state.wall) == "foam":
        return "roof"
    return "above" if state.axis == "resistance" else "bay"


def signature(state: Any) -> Any:
    """What of a state stands still."""
    return state.wall.layers, state.whole.share, view(state)


def draw(scene: Scene, state: Any) -> None:
    """The wall bay, the wall from above, or the roof with a lens on the foam's inner face."""
    seen = view(state)
    if seen == "roof":
        vault.draw(scene, state.wall, "winter", "foam")
    elif seen == "above":
        wall.from_above(scene, state.wall, state.whole)
    else:
        wall.bay(scene, state.wall, state.layer)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs; in a wall bay their thermometers, and in the bare one that of the sheathing too."""
    system = page.unit_system
    if view(state) == "roof":
        return vault.airs(ROOM, state.outdoor, system)
    if view(state) == "above":
        label = message("batt", label=_label(page, BAYS["2x6"][1]))
        tags = [scenery.tag(label, ("slope", 0.5, 0.5))]
        return scenery.together(
            [vault.airs(ROOM, state.outdoor, system, ("room", 0.5, 0.3), ("sky", 0.5, 0.75)), {"tags": tags}]
        )
    known = list(wall.BESIDE)
    if _bare(state):
        known.append(_face(state))
    parts = [
        vault.airs(ROOM, state.outdoor, system, ("room", 0.42, 0.97), ("sky", 0.6, 0.985)),
        wall.readings(state.profile, state.wall, state.layer, known),
    ]
    if _bare(state):
        parts.append(_reads(page, state))
    return scenery.together(parts)


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The line through the layers and the water; from above, the heat through the fill and through the wood."""
    system = page.unit_system
    if view(state) == "above":
        return _heat(page, state)
    roof = view(state) == "roof"
    parts = [
        vault.water(state.profile, state.wall, system, roof, in_all=True, before=0.0 if roof else 0.055),
        vault.vapor(state.profile, state.wall, DOTS),
    ]
    if roof:
        parts.append(vault.face(state.profile, "foam", system))
    else:
        parts.append(wall.readings(state.profile, state.wall, state.layer))
        if not _bare(state):
            parts.append(_reads(page, state))
    return scenery.together(parts)


def _bare(state: Any) -> bool:
    return state.wall.layers[-1].name == "sheathing"


def _face(state: Any) -> float:
    """Where the face that is asked about lies, across."""
    return wall.face_at(state.wall, state.layer)


def _reads(page: Page, state: Any) -> dict[str, Any]:
    """The thermometer at the sheathing, in words at its head."""
    text = message("sheathing-at", temperature=_degrees(page, state))
    at = ("slope", wall.height(state.temperature), _face(state) - 0.03)
    return {"tags": [scenery.tag(text, at, "temperature", "left")]}


def _heat(page: Page, state: Any) -> dict[str, Any]:
    whole = state.whole
    between = message("through-fill", r=page.show(whole.cavity, "thermal resistance"))
    tags = [scenery.tag(between, ("slope", 0.5, 0.24), "temperature")]
    if whole.share:
        wood = message("through-wood", r=page.show(whole.through_framing, "thermal resistance"))
        tags.append(scenery.tag(wood, ("slope", 0.75, 1.1), "temperature", "over"))
    return scenery.together([wall.heat(whole), {"tags": tags}])


def scale(page: Page, roof: bool = False) -> str:
    """What the dots stand for, and of what the amounts are: a wall, or the roof with foam."""
    amount, area = vault.a_day(vault.OUNCE, page.unit_system), amounts.roof_area(page.unit_system)
    return message("scale", number=DOTS, amount=amount, area=area, roof=roof)


def _label(page: Page, resistance: float) -> str:
    """An R as it is printed on what is sold."""
    return page.show(resistance, "thermal resistance", 0 if page.unit_system == "us" else 2)


def _degrees(page: Page, state: Any) -> str:
    """How warm the face is that is asked about."""
    return page.show(state.temperature, "temperature", 0)


def _a_day(page: Page, flux: float) -> str:
    return vault.a_day(flux, page.unit_system)


# --- first: a board outside ---------------------------------------------------------------

#: What the choices of the prediction say of the sheathing [degF]; the right one is worked out.
CHOICES = {"a": 16.0, "b": 27.0, "c": 37.0, "d": 50.0}


def first_right(states: States) -> str:
    """The choice that is nearest to the sheathing behind the board."""
    return min(CHOICES, key=lambda key: abs(to_si(CHOICES[key], "degF") - states[1].temperature))


def first_facts(page: Page, states: States) -> dict[str, Any]:
    """Both temperatures, the share outside, and what gathers without the board; with it none does."""
    before, boarded = states
    assert not boarded.profile.wet_planes
    return {
        "r": _label(page, BOARD),
        "before": _degrees(page, before),
        "after": _degrees(page, boarded),
        "share": page.show(boarded.share, "relative humidity"),
        "bare": _a_day(page, before.profile.gain),
        "flux": page.show(before.profile.gain, "vapor flux"),
    }


def _on_thermometer(key: str) -> Place:
    """Beside the thermometer at the sheathing, by turns on its left and its right."""
    boarded = wall_with("2x6", "open", BOARD)
    aside = 0.13 if key in "bd" else -0.13
    return "slope", wall.height(to_si(CHOICES[key], "degF")), wall.face_at(boarded, "sheathing") + aside


#: The cold of the question: the slider's own start is a round number in each unit system.
_ASKED = {"T_out": to_si(20.0, "degF")}

FIRST = Beat(
    "first",
    cases=(_ASKED, {**_ASKED, "R_out": BOARD}),
    bets=(
        Bet(
            LESSON,
            (
                Spot("a", _on_thermometer("a"), 1, "outside-insulation-makes-water"),
                Spot("b", _on_thermometer("b"), 1, "inches-not-r"),
                Spot("c", _on_thermometer("c"), 1),
                Spot("d", _on_thermometer("d"), 1, "counts-from-wrong-side"),
            ),
            first_right,
        ),
    ),
    facts=first_facts,
    beliefs=("outside-insulation-makes-water",),
)


# --- outside: two boards of the same R ------------------------------------------------------


def bare(state: Any) -> steady.Profile:
    """The wall of a state without any board, between the same airs."""
    return steady.profile(wall_with("2x6"), ROOM, state.outdoor)


def outside_right(state: Any) -> str:
    """Whether the wall with one of the boards gets more water than without it."""
    return "more" if state.profile.gain > bare(state).gain else "less"


def outside_facts(page: Page, states: States) -> dict[str, Any]:
    """How warm the sheathing is and what gathers, bare and behind each board."""
    without = bare(states[0])
    facts: dict[str, Any] = {
        "r": _label(page, THIN),
        "bare": _a_day(page, without.gain),
        "bare-at": page.show(float(without.temperature[without.face("sheathing", 0)]), "temperature", 0),
    }
    for name, state in zip(("open", "foil"), states, strict=True):
        facts |= {name: _a_day(page, state.profile.gain), f"{name}-at": _degrees(page, state)}
        facts[f"{name}-flux"] = page.show(state.profile.gain, "vapor flux")
    return facts


def _outside_bet(name: str, number: int) -> Bet:
    spots = (
        # Where it is so, the words are no belief.
        Spot("more", ("slope", 0.5, 0.62), number, "" if number else "outside-insulation-makes-water"),
        Spot("less", ("slope", 0.5, 0.25), number),
    )
    return Bet(name, spots, of_scene(number, outside_right))


OUTSIDE = Beat(
    "outside",
    cases=({**_ASKED, "R_out": THIN}, {**_ASKED, "R_out": THIN, "Wall": "2x6-foil"}),
    bets=(_outside_bet("open", 0), _outside_bet("foil", 1)),
    facts=outside_facts,
    beliefs=("outside-insulation-makes-water",),
)


# --- inch: foam in the rafters, against the deck ----------------------------------------------


def inch_right(state: Any) -> str:
    """Whether the foam's inner face gets wet in one of the roofs."""
    return "wet" if any(plane.node == state.node for plane in state.profile.wet_planes) else "none"


def inch_facts(page: Page, states: States) -> dict[str, Any]:
    """How thick the foam is and its share of the R, how warm its face is, what gathers there, and what would do."""
    cold = states[0].outdoor.temperature
    need = (ROOM.dew_point - cold) / (ROOM.temperature - cold)
    facts: dict[str, Any] = {
        "need": page.show(need, "relative humidity"),
        "dew": page.show(ROOM.dew_point, "temperature", 0),
    }
    for name, state, thick in zip(("inch", "enough"), states, (INCH, ENOUGH), strict=True):
        facts |= {
            f"{name}-thick": units.thickness(thick, page.unit_system),
            f"{name}-share": page.show(state.share, "relative humidity"),
            f"{name}-at": _degrees(page, state),
            f"{name}-amount": _a_day(page, state.profile.gain),
        }
    facts["enough-humid"] = page.show(float(states[1].profile.relative_humidity[states[1].node]), "relative humidity")
    return facts


def foam(thick: float) -> dict[str, Any]:
    """The case of rafters with foam of a thickness [m] against the deck."""
    return {**_ASKED, "Wall": "2x12-foam", "R_out": thick / material("polyiso-foil-faced").conductivity_at(0.0)}


def _inch_bet(name: str, number: int, thick: float) -> Bet:
    case = foam(thick)
    d = wall.face_at(wall_of(case["Wall"], case["R_out"]), "foam")
    spots = (
        Spot("none", ("slope", 0.3, d), number, "" if number else "inch-of-foam-is-enough"),
        Spot("wet", ("slope", 0.6, d), number),
    )
    return Bet(name, spots, of_scene(number, inch_right))


FOAM = Beat(
    "inch",
    cases=(foam(INCH), foam(ENOUGH)),
    bets=(_inch_bet("inch", 0, INCH), _inch_bet("enough", 1, ENOUGH)),
    facts=inch_facts,
    beliefs=("inch-of-foam-is-enough",),
    scale=partial(scale, roof=True),
)


# --- label: between the studs, and the whole wall ----------------------------------------------


def label_values(states: States) -> dict[str, float]:
    """What each choice says the R is [m2 K/W]: the label, that between the studs, that with them."""
    return {"label": BAYS["2x6"][1], "more": states[1].whole.cavity, "less": states[1].whole.parallel}


def label_right(number: int) -> Callable[[States], str]:
    """The choice that is nearest to the R of one of the walls."""

    def right(states: States) -> str:
        found = label_values(states)
        return min(found, key=lambda key: abs(found[key] - states[number].whole.parallel))

    return right


def label_facts(page: Page, states: States) -> dict[str, Any]:
    """The R that each choice says, that of the wood, and how much less the whole is than between the studs."""
    whole = states[1].whole
    values = {name: page.show(value, "thermal resistance") for name, value in label_values(states).items()}
    return {
        **values,
        "label": _label(page, BAYS["2x6"][1]),
        "wood": page.show(whole.through_framing, "thermal resistance"),
        "part": page.show(whole.share, "relative humidity"),
        "heat": page.show(whole.cavity / whole.parallel - 1.0, "relative humidity"),
    }


def _label_bet(name: str, number: int) -> Bet:
    spots = (
        Spot("label", ("room", 0.25, 0.75), number, "label-r-is-wall-r"),
        Spot("more", ("room", 0.5, 0.75), number),
        Spot("less", ("room", 0.75, 0.75), number),
    )
    return Bet(name, spots, label_right(number))


LABEL = Beat(
    "label",
    # Counted by R, and so drawn from above.
    cases=({"Axis": "resistance"}, {"Axis": "resistance", "Wall": "2x6-usual"}),
    bets=(_label_bet("between", 0), _label_bet("whole", 1)),
    facts=label_facts,
    beliefs=("label-r-is-wall-r",),
)


PLAY = Play((FIRST, OUTSIDE, FOAM, LABEL), message, draw, signature, given, shows, scale)
