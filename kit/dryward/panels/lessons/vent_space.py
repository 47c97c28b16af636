"""The vent space: what its air can carry off today, and what the ceiling brings."""

from dataclasses import dataclass

import numpy as np

from dryward import air, building, units
from dryward.building import codes
from dryward.panels import hand
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import steady
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import carrying_limit, clear_area, net_free_area
from dryward.pictures.channel import Channel, ChannelState
from dryward.teaching.arithmetic import Step
from dryward.units import to_si
from dryward.weather import Air
from dryward.weather.places import demo_climate

#: The day, the room and the roof of this lesson.
ROOM, COLD = Air(to_si(70.0, "degF"), 0.4), to_si(20.0, "degF")
ROOF = building.preset("vented-vault-variable")
RAFTER, AREA = 5.0, to_si(600.0, "ft2")
EAVES, RIDGE = to_si(60.0, "ft"), to_si(30.0, "ft")
BAY, SPACING = to_si(14.5, "in"), to_si(16.0, "in")
#: Roof for each opening, where the conditions of the code hold [-].
RATIO = round(1 / codes.required("vent-area-reduced"))
#: A fifth of the leaks of a house at 3 ACH50 goes into this roof.
LEAKY = Leak.from_blower_door(3.0, to_si(20_000.0, "ft3"), 0.2, area=AREA)
#: Option -> outward pressure on the leaks [Pa]; None without leaks.
PUSHES = {"leaky": 4.0, "leaky-and-pulled": 6.0, "airtight": None}
LEAK = Choice(
    "Leak",
    "Ceiling",
    (
        ("leaky", "leaky, 4 Pa on it"),
        ("leaky-and-pulled", "leaky, vent pulls 2 Pa more"),
        ("airtight", "airtight"),
    ),
)
#: The months are those of an invented cold town.
TOWN = demo_climate("cold")
PLACES = np.linspace(0.0, RAFTER, 41)


@dataclass(frozen=True)
class State:
    """A gap, its air, the day outside, and what comes through the ceiling."""

    gap: float
    speed: float
    outdoor: Air
    leak: str

    @property
    def power(self):
        """The most the air can carry off [kg/(s m2)]."""
        return float(carrying_limit(self.gap, self.speed, RAFTER, self.outdoor))

    @property
    def diffusion(self):
        """What comes through the layers [kg/(s m2)]."""
        return by_vapor(self.outdoor.temperature, self.outdoor.relative_humidity)

    @property
    def leaking(self):
        """What leaking air leaves when all of it cools there [kg/(s m2)]."""
        return by_air(self.leak, self.outdoor.temperature)

    @property
    def load(self):
        """Both [kg/(s m2)]."""
        return self.diffusion + self.leaking


def by_vapor(temperature, relative_humidity):
    """Vapor that the layers let into the vent space [kg/(s m2)]; none when it goes inward."""
    found = steady.profile(ROOF, ROOM, Air(temperature, relative_humidity))
    return max(found.vapor_flux_out, 0.0)


def by_air(leak, temperature):
    """What the leaks leave in a vent space that cold [kg/(s m2)]."""
    push = PUSHES[leak]
    return 0.0 if push is None else float(LEAKY.moisture(push, ROOM, temperature).deposit)


class VentSpace(Page):
    """Outdoor humidity, leak, gap and air speed; the air on its way, and twelve months."""

    id = "vent-space"
    handles = ("RH_out", "Gap", "Air", LEAK)
    draws = Channel

    def __init__(self, *args, **keys):
        # By vapor the months do not hang on any control.
        airs = [TOWN.air(month) for month in range(1, 13)]
        self.months = airs, tuple(by_vapor(each.temperature, each.relative_humidity) for each in airs)
        super().__init__(*args, **keys)

    def compute(self, at):
        """One cold day."""
        return State(at.Gap, at.Air, Air(COLD, at.RH_out), at.Leak)

    def views(self, state):
        """How full the air gets on its way today; the months of a cold town with the same gap and speed."""
        full = air.vapor_density(COLD, air.saturation_vapor_pressure(COLD))
        start = full * state.outdoor.relative_humidity
        humidity = np.minimum((start + state.load * PLACES / (state.gap * state.speed)) / full, 1.0)
        airs, diffusion = self.months
        power = tuple(float(carrying_limit(state.gap, state.speed, RAFTER, each)) for each in airs)
        leak = tuple(by_air(state.leak, each.temperature) for each in airs)
        return ChannelState(PLACES, humidity, state.gap, state.speed, power, diffusion, leak)

    def numbers(self, state):
        """What it can carry, what comes, what is left; what a code asks for and what the gap gives."""
        need = net_free_area(AREA, RATIO, eave_length=EAVES, ridge_length=RIDGE)
        given = clear_area(state.gap, BAY, SPACING)
        rest = state.power - state.load
        parts = f"{self.show(state.leaking, 'vapor flux')} by air, {self.show(state.diffusion, 'vapor flux')} by vapor"
        low, high = (self._opening(each) for each in (need.lower_per_length, need.upper_per_length))
        return [
            Readout("power", "Vent air can carry, at most", state.power, "vapor flux", both=True),
            Readout("load", "The ceiling brings", state.load, "vapor flux", note=parts),
            Readout(
                "rest",
                "Room to spare",
                rest,
                "vapor flux",
                both=True,
                note="" if rest >= 0 else "more comes than can go",
            ),
            Readout(
                "needed",
                f"1/{RATIO} asks for",
                need.total,
                "area",
                text=self._square(need.total),
                note=f"eaves {low}, ridge {high}",
            ),
            Readout(
                "provided", "The gap is open", given, text=self._opening(given), note="a code minimum is not physics"
            ),
            Readout("leak", "", state.leaking, "vapor flux", hidden=True),
            Readout("eave", "", need.lower_per_length, hidden=True),
            Readout("ridge", "", need.upper_per_length, hidden=True),
        ]

    def _square(self, area):
        unit = "in2" if self.unit_system == "us" else "cm2"
        return f"{units.from_si(area, unit):.0f} {units.unit(unit).symbol}"

    def _opening(self, per_length):
        """Square meters on each meter, as people write it."""
        if self.unit_system == "us":
            return f"{units.from_si(per_length * units.to_si(1, 'ft'), 'in2'):.3g} in²/ft"
        return f"{units.from_si(per_length, 'cm2'):.3g} cm²/m"

    def says(self, state):
        """What comes against what can go, on this day."""
        power, load = (self.show(each, "vapor flux") for each in (state.power, state.load))
        day = (
            f"At {self.show(COLD, 'temperature')} and {self.show(state.outdoor.relative_humidity, 'relative humidity')}"
        )
        if state.power <= 0:
            return f"{day} the outdoor air is full and carries nothing off, however wide the gap; {load} come."
        if state.load <= state.power:
            # The limit is never reached: near it the air only may keep up.
            keeps = "it can keep up" if 2 * state.load <= state.power else "at best it keeps up"
            return f"{day} the vent air can carry at most {power}, and {load} come: {keeps}."
        times = state.load / state.power
        start, stays = f"{day} the vent air can carry at most {power}, but {load} come", "part stays"
        if times > 2:
            start, stays = f"{start}, {hand.times(times)} that", "most of it stays"
        if state.leaking <= 0:
            return f"{start}: {stays}. The ceiling is airtight, so it is little."
        return f"{start}: {stays}, so seal the ceiling{' first' if times > 2 else ''}."

    def strips(self, at, state):
        """Where the air can carry all that comes."""
        good = "air can carry it"
        room = air.saturation_vapor_pressure(COLD)
        density = float(air.vapor_density(COLD, room))
        gaps, speeds = np.array(self.along("Gap")), np.array(self.along("Air"))
        each = state.outdoor
        humid = self.along("RH_out")
        layers = steady.sweep(ROOF, ROOM, each, outdoor_relative_humidity=humid).vapor_flux_out
        loads = np.maximum(layers, 0.0) + state.leaking
        dry = density * (1 - np.array(humid)) * state.gap * state.speed / RAFTER >= loads
        powers = {option: state.diffusion + by_air(option, COLD) <= state.power for option in PUSHES}
        return {
            "RH_out": Strip(tuple(dry), good),
            "Gap": Strip(tuple(carrying_limit(gaps, state.speed, RAFTER, each) >= state.load), good),
            "Air": Strip(tuple(carrying_limit(state.gap, speeds, RAFTER, each) >= state.load), good),
            "Leak": Strip(tuple(powers[option] for option in self.along("Leak")), good),
        }

    def steps(self, state):
        """From a table of saturated air to grams a day; the code's area."""
        full = air.vapor_density(COLD, air.saturation_vapor_pressure(COLD)) * 1e3
        here = full * state.outdoor.relative_humidity
        need = net_free_area(AREA, RATIO, eave_length=EAVES, ridge_length=RIDGE)
        us = self.unit_system == "us"
        power = units.from_si(state.power, "g/m2/day")
        lines = [
            Step(
                "Most water in each m³ of outdoor air, from a table; and what is in it now.",
                f"{state.outdoor.relative_humidity * 100:.3g} % × {full:.3f} g",
                f"{here:.3f} g",
            ),
            Step(
                "For each m² of roof: gap (m) × speed (m/s) / rafter (m) × the water it can still take × 86 400 s.",
                f"{state.gap:.4g} × {state.speed:.4g} / {RAFTER:g} × ({full:.3f} − {here:.3f}) × 86 400",
                f"{power:.3g} g/m² day" + (f" = {self.show(state.power, 'vapor flux')}" if us else ""),
            ),
        ]
        if us:
            area, each, divisor = "600 ft² × 144", "in²", "60 ft"
            half = units.from_si(need.lower, "in2")
        else:
            area, each, divisor = f"{AREA:.4g} m² × 10 000", "cm²", f"{EAVES:.3g} m"
            half = units.from_si(need.lower, "cm2")
        return [
            *lines,
            Step(f"Net free area by 1/{RATIO}.", f"{area} / {RATIO}", self._square(need.total)),
            Step(
                "Half of it low, over all eaves.",
                f"{half:.4g} {each} / {divisor}",
                self._opening(need.lower_per_length),
            ),
        ]


PAGE = VentSpace
