"""Lines of a hand calculation that several lessons need, in either unit system.

Each gives a `Step` whose formula, typed into a calculator as it stands,
gives its result.  `plain` and `times` write numbers without powers of ten.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from dryward import units
from dryward.language import message, typed
from dryward.panels.readouts import between_layers
from dryward.teaching.words import Step

if TYPE_CHECKING:
    from dryward.physics.steady import Profile
    from dryward.weather import Air


def plain(number: float) -> str:
    """Three figures and no power of ten: 2860, not 2.86e+03."""
    return units.number(number, rounded=True)


def times(ratio: float) -> str:
    """How many times one thing is another, in two figures."""
    return message("panels.times", number=units.number(ratio, figures=2, rounded=True))


def taken_off(value: float, quantity: str, system: str, digits: int | None = None) -> str:
    """What is taken off in a sum: in brackets where it is below zero.

    >>> taken_off(-7.0, "temperature", "si"), taken_off(7.0, "temperature", "si")
    ('(−7.0 °C)', '7.0 °C')
    """
    shown = units.show(value, quantity, system, digits)
    return message("panels.in-brackets", amount=shown) if typed(shown).startswith("-") else shown


def pressure(words: str, temperature: float, relative_humidity: float, saturation: float, system: str) -> Step:
    """The vapor pressure of an air: its relative humidity of the most it can have."""
    show = units.show
    most = show(saturation, "pressure", system)
    at = show(temperature, "temperature", system)
    return Step(
        message("panels.most-at", words=words, temperature=at, most=most),
        message("panels.share-of-most", share=units.with_unit(plain(relative_humidity * 100), "%"), most=most),
        show(saturation * relative_humidity, "pressure", system),
    )


def plane(words: str, indoor: float, outdoor: float, before: float, total: float, system: str) -> Step:
    """The temperature of a plane, by the share of R between the room and it.

    `before` and `total` are thermal resistances from the room [m2 K/W].
    """
    show = units.show
    room, yard = show(indoor, "temperature", system), taken_off(outdoor, "temperature", system)
    part, whole = (plain(units.from_si(each, _R[system])) for each in (before, total))
    return Step(
        words,
        message("panels.plane-formula", system=system, room=room, outside=yard, before=part, total=whole),
        show(indoor - (indoor - outdoor) * before / total, "temperature", system),
    )


def flow(words: str, high: float, low: float, permeance: float, system: str) -> Step:
    """The vapor that a pressure step drives through a permeance in a day."""
    show = units.show
    much = plain(units.from_si(permeance, "perm" if system == "us" else "ng/(s m2 Pa)"))
    ends = {"high": show(high, "pressure", system), "low": show(low, "pressure", system)}
    return Step(
        words,
        message("panels.flow-formula", system=system, much=much, **ends),
        show((high - low) * permeance, "vapor flux", system),
    )


def at_risk(profile: Profile) -> int:
    """The more humid of two faces: of the outer layer, where it gets wet in winter, or of the film's back in summer."""
    faces = profile.face("outer layer", "inner"), profile.face("inner membrane", "outer")
    return max(faces, key=lambda node: profile.relative_humidity[node])


def stays(profile: Profile, indoor: Air, outdoor: Air, node: int, system: str) -> list[Step]:
    """What arrives at the wet planes and what leaves them; where there is none, the same for a node, and its humidity.

    Water that gathers over a stretch of a layer is worked from both its ends.
    """
    show = units.show
    wet = [plane.node for plane in profile.wet_planes] or [node]
    ends = dict.fromkeys((wet[0], wet[-1]))
    most = profile.saturation_vapor_pressure
    lines = []
    for place in ends:
        there = between_layers(*profile.between(place))
        first = place == wet[0]
        lines += [
            plane(
                message("panels.temperature-there" if first else "panels.temperature-at-another", place=there),
                indoor.temperature,
                outdoor.temperature,
                profile.thermal_resistance[place],
                profile.thermal_resistance[-1],
                system,
            ),
            Step(message("panels.most-there"), "", show(most[place], "pressure", system)),
        ]
    before, after = profile.vapor_resistance[wet[0]], profile.vapor_resistance[-1] - profile.vapor_resistance[wet[-1]]
    room = (indoor.vapor_pressure - most[wet[0]]) / before
    yard = (outdoor.vapor_pressure - most[wet[-1]]) / after
    sides = (
        ("panels.vapor-of-the-room", indoor.vapor_pressure, most[wet[0]], before, room),
        ("panels.vapor-of-outdoors", outdoor.vapor_pressure, most[wet[-1]], after, yard),
    )
    for side, air, limit, resistance, comes in sides:
        high, low = (air, limit) if comes >= 0 else (limit, air)
        lines.append(flow(message(side, arrives=bool(comes >= 0)), high, low, 1 / resistance, system))
    if profile.wet_planes:
        # From one side it arrives and to the other it leaves: no plane is colder than both airs.
        arrives, leaves = (show(each, "vapor flux", system) for each in (max(room, yard), -min(room, yard)))
        rest = message("panels.less", more=arrives, less=leaves)
        return [*lines, Step(message("panels.rest-stays"), rest, show(room + yard, "vapor flux", system))]
    limit, held = (show(each[node], "pressure", system) for each in (most, profile.vapor_pressure))
    return [
        *lines,
        Step(message("panels.no-water-stays"), "",
             show(0.0, "vapor flux", system)),
        Step(
            message("panels.how-far-below", pressure=held),
            message("panels.share-formula", held=held, limit=limit),
            show(profile.relative_humidity[node], "relative humidity", system),
        ),
    ]  # fmt: skip


_R = {"us": "R", "si": "m2 K/W"}
