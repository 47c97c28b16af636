"""The hole and the ceiling: water by moving air and by vapor, in two buckets on one scale."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, language, units
from dryward.checks import Numeric
from dryward.course.the_hole_and_the_ceiling.beats import PLAY
from dryward.course.the_hole_and_the_ceiling.givens import (
    ACH50,
    CEILING,
    COLD,
    HEIGHT,
    HOUSE,
    ROOM,
    UP_THERE,
    VOLUME,
    WINTER,
)
from dryward.course.the_hole_and_the_ceiling.scene import Buckets, TwoPaths
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics.airleak import LONG_SHARE, LONG_SHARES, Brought, brought, orifice_flow, stack_pressure
from dryward.physics.moving_air import density
from dryward.teaching import words
from dryward.teaching.words import Step
from dryward.units import DAY, KELVIN, to_si
from dryward.verdict import Verdict, criterion, of_amount
from dryward.weather import Air

message = language.beside(__file__)

#: The graph's inner layers: 0.05 to 100 perm.
INNER = np.geomspace(to_si(0.05, "perm"), to_si(100.0, "perm"), 61)
#: What a roof can be expected to give back in a summer, as a caution limit.
LIMIT = criterion("winter-water")
#: What a plain sum of one winter does not count.
LEFT_OUT = ("storage", "sun", "rain")


@dataclass(frozen=True)
class Winter:
    """A hole, a push, a ceiling and the room, for one winter.

    The driest room of the slider has its dew point above the cold face: each
    of the waters is more than none at every setting.
    """

    hole: float
    push: float
    inner: float
    room: Air

    @property
    def airflow(self) -> float:
        """Through the hole [m3/s]."""
        return float(orifice_flow(self.push, self.hole))

    @property
    def carried(self) -> float:
        """What the air carries past the cold face and could not keep there: all of it, if all cooled there [kg]."""
        return float(leaked(self.hole, self.push, self.room).excess * WINTER)

    @property
    def stays(self) -> float:
        """What its seeping part leaves there, about [kg]."""
        return float(leaked(self.hole, self.push, self.room).stays * WINTER)

    @property
    def by_vapor(self) -> float:
        """What goes through the ceiling to the cold face in the winter [kg]."""
        return float(passed(self.inner, self.room))

    @property
    def together(self) -> float:
        """What both leave over the ceiling [kg/m2]."""
        return float(left(self.hole, self.push, self.inner, self.room))

    @property
    def times(self) -> float:
        """What stays of the hole's over what comes through the ceiling [-]."""
        return self.stays / self.by_vapor


def leaked(hole: Numeric, push: Numeric, room: Air) -> Brought:
    """Water that leaking air brings to the cold face, a `Brought` [kg/s]; numbers or arrays."""
    return brought(orifice_flow(push, hole), room, COLD, LONG_SHARE)


def drive(room: Air) -> Numeric:
    """Vapor pressure of the room over that of the wet cold face [Pa]."""
    return room.vapor_pressure - air.saturation_vapor_pressure(COLD)


def passed(inner: Numeric, room: Air) -> Numeric:
    """Vapor that goes through the ceiling to the cold face in the winter [kg]; numbers or arrays."""
    return drive(room) * inner * CEILING * WINTER


def left(hole: Numeric, push: Numeric, inner: Numeric, room: Air) -> Numeric:
    """What hole and ceiling leave together, over the ceiling [kg/m2]; numbers or arrays."""
    return (leaked(hole, push, room).stays * WINTER + passed(inner, room)) / CEILING


def leads(times: float) -> tuple[str, str]:
    """Which of the two leads and how many times, from what the hole leaves over what the ceiling does [-]."""
    many = hand.times(max(times, 1 / times))
    return ("both" if 0.8 < times < 1.25 else "hole" if times >= 1 else "ceiling"), many


def too_much(state: Winter) -> str:
    """Which brings more than a roof can give back: none, each alone, one of the two, or only both together."""
    if state.together < LIMIT.caution:
        return "none"
    hole, ceiling = (each / CEILING >= LIMIT.caution for each in (state.stays, state.by_vapor))
    return "each" if hole and ceiling else "hole" if hole else "ceiling" if ceiling else "together"


class TheHoleAndTheCeiling(Page):
    """Room humidity, ceiling, hole and push; two buckets."""

    id = "the-hole-and-the-ceiling"
    handles = (
        "RH_in",
        replace(standard("M_in"), words="the_hole_and_the_ceiling.ceiling").starting(5.96, 0.5868),
        standard("Hole").starting(1, 6.4516),
        "dP",
    )
    draws = Buckets
    play = PLAY

    def compute(self, at: SimpleNamespace) -> Winter:
        """What one winter brings by two ways."""
        return Winter(at.Hole, at.dP, at.M_in, Air(ROOM, at.RH_in))

    def views(self, state: Winter) -> TwoPaths:
        """Two buckets, and the push on the house from floor to ceiling."""
        stack = float(stack_pressure(HEIGHT, ROOM, COLD))
        through = passed(INNER, state.room)
        return TwoPaths(
            state.carried, state.stays, state.by_vapor, INNER, through, state.inner, state.push, state.push - stack
        )

    def given(self, state: Winter) -> str:
        """What no control moves."""
        show, us = self.held, self.unit_system == "us"
        return message(
            "given", room=show(ROOM, "temperature"), cold=show(COLD, "temperature"), area=show(CEILING, "area"),
            height=units.show_in(HEIGHT, "ft" if us else "m"), days=round(WINTER / DAY), volume=show(VOLUME, "volume"),
            changes=units.number(ACH50), share=show(UP_THERE, "relative humidity"),
            seeps=show(LONG_SHARE, "relative humidity"),
        )  # fmt: skip

    def numbers(self, state: Winter) -> list[Readout]:
        """What the air carries past and what stays, what the ceiling lets through, both beside a blower-door number."""
        stack = float(stack_pressure(HEIGHT, ROOM, COLD))
        area = HOUSE.leakage_area()
        holes = UP_THERE * area / state.hole
        square = "in2" if self.unit_system == "us" else "cm2"
        few, much = (share / LONG_SHARE * state.times for share in LONG_SHARES)
        low, high = (self.show(share, "relative humidity") for share in LONG_SHARES)
        return [
            Readout(
                "carried",
                message("carried"),
                state.carried,
                "mass",
                note=message("carried-note", carried=self._quarts(state.carried)),
            ),
            Readout(
                "stays",
                message("stays"),
                state.stays,
                "mass",
                note=message("stays-note", low=units.number(LONG_SHARES[0] * 100), high=high),
            ),
            Readout(
                "by_vapor",
                message("by-vapor"),
                state.by_vapor,
                "mass",
                note=message("by-vapor-note", by_vapor=self._quarts(state.by_vapor)),
            ),
            Readout(
                "times",
                message("times"),
                state.times,
                text=_leader(state.times),
                note=message("times-note", low=low, few=_leader(few), high=high, much=_leader(much)),
            ),
            Readout(
                "holes",
                message("holes", ach50=units.written(ACH50, "g")),
                holes,
                text=message("holes-text", holes=units.number(holes)),
                note=message(
                    "holes-note",
                    share=self.show(UP_THERE, "relative humidity"),
                    size=units.show_in(area, square, 0),
                    height=words.number(12, "ft", self.unit_system),
                    stack=units.number(stack, 1),
                ),
            ),
            Readout("together", "", state.together, "area density", hidden=True),
            Readout("air_flow", "", state.airflow, "air flow", hidden=True),
            Readout("stack", "", stack, hidden=True),
            Readout("leakage_area", "", area, "area", hidden=True),
            Readout("flow_at_50", "", float(HOUSE.airflow(50.0)), "air flow", hidden=True),
        ]

    def _quarts(self, kilograms: float) -> str:
        """Water as a volume: a liter has a kilogram."""
        return (
            message("quarts", amount=units.written(units.from_si(kilograms / 1000, "quart"), ".3g"))
            if self.unit_system == "us"
            else (message("liters", amount=units.written(kilograms, ".3g")))
        )

    def judge(self, state: Winter) -> Verdict:
        """What both leave over the ceiling, against what a roof can give back."""
        return of_amount("winter", LIMIT.id, state.together, left_out=LEFT_OUT)

    def says(self, state: Winter) -> str:
        """What is carried past, what stays, what comes through; which leads, and whether one alone is too much."""
        carried, stays, vapor = (self.show(each, "mass") for each in (state.carried, state.stays, state.by_vapor))
        first, times = leads(state.times)
        reserve = self.show(LIMIT.caution * CEILING, "mass")
        compared = message("compared", first=first, times=times, much=too_much(state), reserve=reserve)
        return message("winter", carried=carried, stays=stays, vapor=vapor, compared=compared)

    def strips(self, at: SimpleNamespace, state: Winter) -> dict[str, Any]:
        """The state of the whole along each control."""
        now = {"hole": at.Hole, "push": at.dP, "inner": at.M_in, "room": state.room}

        def along(name: str, what: str) -> Strip:
            values: Any = np.array(self.along(name))
            there = Air(values * 0.0 + ROOM, values) if what == "room" else values
            return Strip(tuple(LIMIT.state(left(**{**now, what: there}))))

        names = {"RH_in": "room", "M_in": "inner", "Hole": "hole", "dP": "push"}
        return {name: along(name, what) for name, what in names.items()}

    def steps(self, state: Winter) -> list[Step]:
        """From the hole to the kilograms, what stays of them, and the ceiling beside it."""
        show = self.show
        cold, flow, room = air.saturation_vapor_pressure(COLD), state.airflow, state.room
        inside, held = (1e3 * air.humidity_ratio(each) for each in (room.vapor_pressure, cold))
        heavy = density(ROOM + KELVIN, air.STANDARD_PRESSURE - room.vapor_pressure)
        vapor, through = state.by_vapor, float(drive(room)) * state.inner
        centimeters, liters = (units.from_si(each, to) for each, to in ((state.hole, "cm2"), (flow, "L/s")))

        def both(value: float, quantity: str, worked: str) -> str:
            """What a sum in SI gives: in the reader's unit, and where that is another as it was worked."""
            sum_ = units.written(units.from_si(value, worked), ".3g", worked)
            return units.in_both(show(value, quantity), sum_) if self.unit_system == "us" else sum_

        return [
            Step(
                message("step-air", hole=both(state.hole, "area", "cm2")),
                f"0.6 × {centimeters:.3g} × √(2 × {state.push:.3g} / 1.2) / 10",
                units.written(liters, ".4g", "L/s"),
            ),
            Step(
                message("step-waters"),
                "",
                message("step-waters-both", inside=units.written(inside, ".3f"), held=units.written(held, ".3f")),
            ),
            Step(
                message("step-carried", heavy=units.written(heavy, ".3f")),
                f"{liters:.4g} × {heavy:.3f} × ({inside:.3f} − {held:.3f}) × 150 × 86 400 / 1 000 000",
                both(state.carried, "mass", "kg"),
            ),
            Step(
                message("step-stays", share=self.show(LONG_SHARE, "relative humidity")),
                f"{LONG_SHARE:g} × {state.carried:.3g}",
                both(state.stays, "mass", "kg"),
            ),
            hand.pressure(
                message("step-pressure"),
                ROOM,
                room.relative_humidity,
                room.vapor_pressure / room.relative_humidity,
                self.unit_system,
            ),
            hand.flow(message("step-vapor"), room.vapor_pressure, cold, state.inner, self.unit_system),
            Step(
                message("step-season"),
                message(
                    "step-season-sum",
                    through=units.written(units.from_si(through, "g/m2/day"), ".3g"),
                    ceiling=units.written(CEILING, ".3g"),
                ),
                both(vapor, "mass", "kg"),
            ),
            Step(
                message(
                    "step-together",
                    caution=both(LIMIT.caution, "area density", "kg/m2"),
                    damage=both(LIMIT.damage, "area density", "kg/m2"),
                ),
                f"({state.stays:.3g} + {vapor:.3g}) / {CEILING:.3g}",
                both(state.together, "area density", "kg/m2"),
            ),
        ]


def _leader(times: float) -> str:
    """Which leads, in short."""
    first, many = leads(times)
    return message("leads", first=first, times=many)


PAGE = TheHoleAndTheCeiling
