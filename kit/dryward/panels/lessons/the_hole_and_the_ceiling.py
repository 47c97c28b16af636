"""The hole and the ceiling: water by moving air and by vapor, in two buckets on one scale."""

from dataclasses import dataclass, replace

import numpy as np

from dryward import air, units
from dryward.panels import hand
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.panels.standard import standard
from dryward.physics.airleak import Leak, brought, orifice_flow, stack_pressure
from dryward.pictures.buckets import Buckets, BucketsState
from dryward.teaching.arithmetic import Step
from dryward.units import DAY, to_si
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


@dataclass(frozen=True)
class State:
    """A hole, a push, a ceiling and the room, for one winter."""

    hole: float
    push: float
    inner: float
    room: Air

    @property
    def airflow(self):
        """Through the hole [m3/s]."""
        return float(orifice_flow(self.push, self.hole))

    @property
    def by_air(self):
        """What the leak leaves at the cold face in the winter, about [kg]."""
        return float(leaked(self.hole, self.push, self.room))

    @property
    def by_vapor(self):
        """What goes through the ceiling to the cold face in the winter [kg]."""
        return float(passed(self.inner, self.room))


def leaked(hole, push, room):
    """What leaking air leaves at the cold face in the winter [kg], when all of it cools there; numbers or arrays.

    Each cubic meter of room air counts as a full one at the cold face.  It is
    no bound: counting that air shrinks gives some more.
    """
    return brought(orifice_flow(push, hole), room, COLD).deposit * WINTER


def drive(room):
    """Vapor pressure of the room over that of the wet cold face [Pa], at least none."""
    return np.maximum(room.vapor_pressure - air.saturation_vapor_pressure(COLD), 0.0)


def passed(inner, room):
    """Vapor that goes through the ceiling to the cold face in the winter [kg]; numbers or arrays."""
    return drive(room) * inner * CEILING * WINTER


class TheHoleAndTheCeiling(Page):
    """Room humidity, ceiling, hole and push; two buckets."""

    id = "the-hole-and-the-ceiling"
    handles = ("RH_in", replace(standard("M_in"), words="Ceiling with its film").starting(5.96), "Hole", "dP")
    draws = Buckets

    def compute(self, at):
        """What one winter brings by two ways."""
        return State(at.Hole, at.dP, at.M_in, Air(ROOM, at.RH_in))

    def views(self, state):
        """Two buckets, and the push on the house from floor to ceiling."""
        stack = float(stack_pressure(HEIGHT, ROOM, COLD))
        bottom = state.push - stack
        through = passed(INNER, state.room)
        return BucketsState(state.by_air, state.by_vapor, INNER, through, state.inner, state.push, bottom)

    def numbers(self, state):
        """Both waters, how many times, the warm air's own push, and the hole beside a blower-door number."""
        vapor = state.by_vapor
        times = state.by_air / vapor if vapor > 0 else None
        stack = float(stack_pressure(HEIGHT, ROOM, COLD))
        area = HOUSE.leakage_area()
        holes = UP_THERE * area / state.hole
        square = "in2" if self.unit_system == "us" else "cm2"
        size = f"{units.from_si(area, square):.0f} {units.unit(square).symbol}"
        return [
            Readout(
                "by_air", "By air, about", state.by_air, "mass", note=f"{self._quarts(state.by_air)} through the hole"
            ),
            Readout("by_vapor", "By vapor", vapor, "mass", note=f"{self._quarts(vapor)} through the ceiling"),
            Readout(
                "times",
                "Air over vapor",
                times,
                text="no vapor at all" if times is None else hand.times(times),
                note=f"{self.show(state.airflow, 'air flow')} of air leaks",
            ),
            Readout(
                "stack",
                "Warm air's own push",
                stack,
                text=f"{stack:.1f} Pa",
                note=self.say("{12 ft} up, {20 degF} outside"),
            ),
            Readout(
                "holes",
                f"A house at {ACH50:g} ACH50",
                holes,
                text=f"{holes:.3g} such holes" if holes < 1000 else f"{holes:.0f} such holes",
                note=f"{UP_THERE * 100:.0f} % of its {size}, in the roof",
            ),
            Readout("air_flow", "", state.airflow, "air flow", hidden=True),
            Readout("leakage_area", "", area, "area", hidden=True),
            Readout("flow_at_50", "", float(HOUSE.airflow(50.0)), "air flow", hidden=True),
        ]

    def _quarts(self, kilograms):
        if self.unit_system == "us":
            return f"{units.from_si(kilograms / 1000, 'quart'):.3g} quarts"
        return f"{kilograms:.3g} L"

    def says(self, state):
        """Which bucket is fuller, and by how much."""
        by_air, vapor = state.by_air, state.by_vapor
        if vapor <= 0:
            return "The room air is so dry that nothing of it stays at the cold face, by hole or by ceiling."
        hole, ceiling = self.show(by_air, "mass"), self.show(vapor, "mass")
        if by_air <= 0:
            return (
                f"The dew point of the room is just above the cold face: {ceiling} go through the ceiling, "
                "and by this count nothing stays from the hole."
            )
        start = f"In one winter the hole brings about {hole}, the ceiling {ceiling}"
        times = by_air / vapor
        if 0.8 < times < 1.25:
            return f"{start}: about the same. Both count."
        if times > 1:
            return f"{start}: the hole leads, {hand.times(times)}. Seal first."
        return f"{start}: here the ceiling leads, {hand.times(1 / times)}. Both count."

    def strips(self, at, state):
        """Where the hole brings less than the ceiling does."""
        now = {"RH_in": at.RH_in, "M_in": at.M_in, "Hole": at.Hole, "dP": at.dP}

        def less(name):
            values = np.array(self.along(name))
            there = {**now, name: values}
            # RH_in makes an air of many states, the others leave it one.
            room = Air(np.full(values.shape, ROOM), values) if name == "RH_in" else state.room
            return leaked(there["Hole"], there["dP"], room) <= passed(there["M_in"], room)

        return {name: Strip(tuple(less(name)), "less by air than by vapor") for name in now}

    def steps(self, state):
        """From the hole to the kilograms, and the ceiling beside it."""
        show, square = self.show, "cm2" if self.unit_system == "si" else "in2"
        inside = air.vapor_density(ROOM, state.room.vapor_pressure) * 1e3
        held = air.vapor_density(COLD, air.saturation_vapor_pressure(COLD)) * 1e3
        cold, flow = air.saturation_vapor_pressure(COLD), state.airflow
        vapor, through = state.by_vapor, float(drive(state.room)) * state.inner
        hole = f"{units.from_si(state.hole, square):.3g} {units.unit(square).symbol}"
        return [
            Step(
                f"Air through the hole of {hole}: 0.6 of its area in m², times the speed that the push gives.",
                f"0.6 × {state.hole:.3g} × √(2 × {state.push:.3g} / 1.2)",
                f"{flow:.3g} m³/s",
            ),
            Step(
                "Water in each m³ of room air, and what stays vapor at the cold face: tables.",
                "",
                f"{inside:.2f} and {held:.2f} g",
            ),
            Step(
                "The rest can stay. Each m³ counts as a full one. Cold air shrinks, so some more could stay.",
                f"{flow:.3g} × max({inside:.2f} − {held:.2f}, 0) × 150 × 86 400 / 1000",
                f"{state.by_air:.3g} kg",
            ),
            hand.pressure(
                "Vapor pressure of the room.",
                ROOM,
                state.room.relative_humidity,
                state.room.vapor_pressure / state.room.relative_humidity,
                self.unit_system,
            ),
            hand.flow(
                "Vapor through the ceiling.", max(state.room.vapor_pressure, cold), cold, state.inner, self.unit_system
            ),
            Step(
                "Over the ceiling, for the winter.",
                f"{units.from_si(through, 'g/m2/day'):.3g} g/m² day × {CEILING:.3g} m² × 150 days / 1000",
                f"{vapor:.3g} kg" if self.unit_system == "si" else f"{vapor:.3g} kg = {show(vapor, 'mass')}",
            ),
        ]


PAGE = TheHoleAndTheCeiling
