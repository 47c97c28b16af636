"""The hole and the ceiling: water by moving air and by vapor, in two buckets on one scale."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, units
from dryward.course.the_hole_and_the_ceiling.scene import Buckets, TwoPaths
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics.airleak import LONG_SHARE, LONG_SHARES, Leak, brought, orifice_flow, stack_pressure
from dryward.physics.moving_air import density
from dryward.teaching.words import Step
from dryward.units import DAY, KELVIN, to_si
from dryward.verdict import Verdict, criterion, of_amount
from dryward.weather import Air

#: The room, the cold face the water meets, the ceiling and the winter of this lesson.
ROOM, COLD = to_si(70.0, "degF"), to_si(20.0, "degF")
CEILING, WINTER = to_si(32.0, "ft2"), 150 * DAY
#: From the floor to the ceiling under the ridge.
HEIGHT = to_si(12.0, "ft")
#: A house to compare with: its blower-door number, its volume, the share of its leaks up there.
ACH50, VOLUME, UP_THERE = 3.0, to_si(20_000.0, "ft3"), 0.2
HOUSE = Leak.from_blower_door(ACH50, VOLUME)
#: The graph's inner layers: 0.05 to 100 perm.
INNER = np.geomspace(to_si(0.05, "perm"), to_si(100.0, "perm"), 61)
#: What a roof can be expected to give back in a summer, as a caution limit.
LIMIT = criterion("winter-water")
#: What a plain sum of one winter does not count.
LEFT_OUT = ("storage", "sun", "rain")


@dataclass(frozen=True)
class State:
    """A hole, a push, a ceiling and the room, for one winter.

    The driest room of the slider has its dew point above the cold face: each
    of the waters is more than none at every setting.
    """

    hole: float
    push: float
    inner: float
    room: Air

    @property
    def airflow(self):
        """Through the hole [m3/s]."""
        return float(orifice_flow(self.push, self.hole))

    @property
    def carried(self):
        """What the air carries past the cold face and could not keep there: all of it, if all cooled there [kg]."""
        return float(leaked(self.hole, self.push, self.room).excess * WINTER)

    @property
    def stays(self):
        """What its seeping part leaves there, about [kg]."""
        return float(leaked(self.hole, self.push, self.room).stays * WINTER)

    @property
    def by_vapor(self):
        """What goes through the ceiling to the cold face in the winter [kg]."""
        return float(passed(self.inner, self.room))

    @property
    def together(self):
        """What both leave over the ceiling [kg/m2]."""
        return float(left(self.hole, self.push, self.inner, self.room))

    @property
    def times(self):
        """What stays of the hole's over what comes through the ceiling [-]."""
        return self.stays / self.by_vapor


def leaked(hole, push, room):
    """Water that leaking air brings to the cold face, a `Brought` [kg/s]; numbers or arrays."""
    return brought(orifice_flow(push, hole), room, COLD, LONG_SHARE)


def drive(room):
    """Vapor pressure of the room over that of the wet cold face [Pa]."""
    return room.vapor_pressure - air.saturation_vapor_pressure(COLD)


def passed(inner, room):
    """Vapor that goes through the ceiling to the cold face in the winter [kg]; numbers or arrays."""
    return drive(room) * inner * CEILING * WINTER


def left(hole, push, inner, room):
    """What hole and ceiling leave together, over the ceiling [kg/m2]; numbers or arrays."""
    return (leaked(hole, push, room).stays * WINTER + passed(inner, room)) / CEILING


def leads(times):
    """Which of the two leads, and how many times, from what the hole leaves over what the ceiling does [-]."""
    return ("hole", hand.times(times)) if times >= 1 else ("ceiling", hand.times(1 / times))


class TheHoleAndTheCeiling(Page):
    """Room humidity, ceiling, hole and push; two buckets."""

    id = "the-hole-and-the-ceiling"
    handles = (
        "RH_in",
        replace(standard("M_in"), words="Ceiling with its film").starting(5.96, 0.5868),
        standard("Hole").starting(1, 6.4516),
        "dP",
    )
    draws = Buckets

    def compute(self, at: SimpleNamespace) -> State:
        """What one winter brings by two ways."""
        return State(at.Hole, at.dP, at.M_in, Air(ROOM, at.RH_in))

    def views(self, state):
        """Two buckets, and the push on the house from floor to ceiling."""
        stack = float(stack_pressure(HEIGHT, ROOM, COLD))
        through = passed(INNER, state.room)
        return TwoPaths(
            state.carried, state.stays, state.by_vapor, INNER, through, state.inner, state.push, state.push - stack
        )

    def numbers(self, state: State) -> list[Readout]:
        """What the air carries past and what stays, what the ceiling lets through, both beside a blower-door number."""
        stack = float(stack_pressure(HEIGHT, ROOM, COLD))
        area = HOUSE.leakage_area()
        holes = UP_THERE * area / state.hole
        square = "in2" if self.unit_system == "us" else "cm2"
        size = f"{units.from_si(area, square):.0f} {units.unit(square).symbol}"
        few, much = (share / LONG_SHARE * state.times for share in LONG_SHARES)
        low, high = (f"{share * 100:.0f} %" for share in LONG_SHARES)
        return [
            Readout(
                "carried",
                "Its air carries past",
                state.carried,
                "mass",
                note=f"{self._quarts(state.carried)}, if all of it cooled there",
            ),
            Readout(
                "stays",
                "Of that stays, about",
                state.stays,
                "mass",
                note=f"{low[:-2]} to {high} of it; all where the air seeps through the fill",
            ),
            Readout(
                "by_vapor",
                "By vapor",
                state.by_vapor,
                "mass",
                note=f"{self._quarts(state.by_vapor)} through the ceiling",
            ),
            Readout(
                "times",
                "Which leads",
                state.times,
                text=_leader(state.times),
                note=f"at {low}: {_leader(few)}; at {high}: {_leader(much)}",
            ),
            Readout(
                "holes",
                f"A house at {ACH50:g} ACH50",
                holes,
                text=f"{holes:.3g} such holes" if holes < 1000 else f"{holes:.0f} such holes",
                note=self.say(
                    f"{UP_THERE * 100:.0f} % of its {size}, in the roof; {{12 ft}} of warm air push {stack:.1f} Pa"
                ),
            ),
            Readout("together", "", state.together, "area density", hidden=True),
            Readout("air_flow", "", state.airflow, "air flow", hidden=True),
            Readout("stack", "", stack, hidden=True),
            Readout("leakage_area", "", area, "area", hidden=True),
            Readout("flow_at_50", "", float(HOUSE.airflow(50.0)), "air flow", hidden=True),
        ]

    def _quarts(self, kilograms):
        if self.unit_system == "us":
            return f"{units.from_si(kilograms / 1000, 'quart'):.3g} quarts"
        return f"{kilograms:.3g} L"

    def judge(self, state: State) -> Verdict:
        """What both leave over the ceiling, against what a roof can give back."""
        return of_amount("winter", LIMIT.id, state.together, left_out=LEFT_OUT)

    def says(self, state: State) -> str:
        """What is carried past, what stays, what comes through; which leads, and whether one alone is too much."""
        carried, stays, vapor = (self.show(each, "mass") for each in (state.carried, state.stays, state.by_vapor))
        first, times = leads(state.times)
        lead = "Both are about the same" if _even(state.times) else f"The {first} leads, {times}"
        reserve = self.show(LIMIT.caution * CEILING, "mass")
        much = f"more than the {reserve} that this piece of roof can give back in summer"
        return (
            f"In one winter the hole's air carries {carried} past the cold face and about {stays} of it stay; "
            f"{vapor} come through the ceiling. {lead}, and {_alone(state, much)}."
        )

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
        """The state of the whole along each control."""
        now = {"hole": at.Hole, "push": at.dP, "inner": at.M_in, "room": state.room}

        def along(name, what):
            values = np.array(self.along(name))
            there = Air(np.full(values.shape, ROOM), values) if what == "room" else values
            return Strip(tuple(LIMIT.state(left(**{**now, what: there}))))

        names = {"RH_in": "room", "M_in": "inner", "Hole": "hole", "dP": "push"}
        return {name: along(name, what) for name, what in names.items()}

    def steps(self, state: State) -> list[Step]:
        """From the hole to the kilograms, what stays of them, and the ceiling beside it."""
        show, us = self.show, self.unit_system == "us"
        cold, flow, room = air.saturation_vapor_pressure(COLD), state.airflow, state.room
        inside, held = (1e3 * air.humidity_ratio(each) for each in (room.vapor_pressure, cold))
        heavy = density(ROOM + KELVIN, air.STANDARD_PRESSURE - room.vapor_pressure)
        vapor, through = state.by_vapor, float(drive(room)) * state.inner
        square = "in2" if us else "cm2"
        hole = f"{units.from_si(state.hole, square):.3g} {units.unit(square).symbol}"

        def both(kilograms):
            return f"{kilograms:.3g} kg = {show(kilograms, 'mass')}" if us else f"{kilograms:.3g} kg"

        return [
            Step(
                f"Air through the hole of {hole}: 0.6 of its area in m², times the speed that the push gives.",
                f"0.6 × {state.hole:.3g} × √(2 × {state.push:.3g} / 1.2)",
                f"{flow:.4g} m³/s",
            ),
            Step(
                "Water to each kg of dry air, in the room and at the most at the cold face: tables.",
                "",
                f"{inside:.3f} and {held:.3f} g",
            ),
            Step(
                f"A m³ of room air has {heavy:.3f} kg of dry air. It carries past what it could not keep at the cold "
                "face.",
                f"{flow:.4g} × {heavy:.3f} × ({inside:.3f} − {held:.3f}) × 150 × 86 400 / 1000",
                both(state.carried),
            ),
            Step(
                f"About {LONG_SHARE * 100:.0f} % of the air seeps, cools on its way and leaves its part. This is "
                "assumed.",
                f"{LONG_SHARE:g} × {state.carried:.3g}",
                both(state.stays),
            ),
            hand.pressure(
                "Vapor pressure of the room.",
                ROOM,
                room.relative_humidity,
                room.vapor_pressure / room.relative_humidity,
                self.unit_system,
            ),
            hand.flow("Vapor through the ceiling.", room.vapor_pressure, cold, state.inner, self.unit_system),
            Step(
                "Over the ceiling, for the winter.",
                f"{units.from_si(through, 'g/m2/day'):.3g} g/m² day × {CEILING:.3g} m² × 150 days / 1000",
                both(vapor),
            ),
            Step(
                f"What stays of both, over the ceiling. From {LIMIT.caution:g} kg/m² on it is damp, from "
                f"{LIMIT.damage:g} kg/m² on wet.",
                f"({state.stays:.3g} + {vapor:.3g}) / {CEILING:.3g}",
                f"{state.together:.3g} kg/m²" + (f" = {show(state.together, 'area density')}" if us else ""),
            ),
        ]


def _even(times):
    return 0.8 < times < 1.25


def _leader(times):
    first, many = leads(times)
    return "about the same" if _even(times) else f"the {first}, {many}"


def _alone(state, much):
    """Whether each alone is too much, or only both."""
    if state.together < LIMIT.caution:
        return f"together they are not {much}"
    hole, ceiling = (each / CEILING >= LIMIT.caution for each in (state.stays, state.by_vapor))
    if hole and ceiling:
        return f"each alone is {much}"
    if hole:
        return f"the hole alone is {much}, however tight the rest is"
    if ceiling:
        return f"the ceiling alone is {much}, however small the hole is"
    return f"only together are they {much}"


PAGE = TheHoleAndTheCeiling
