"""The vent space: what its air can carry off today, and what the ceiling brings."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, building, language, units
from dryward.building import codes
from dryward.course.vent_space.scene import Channel, VentAir
from dryward.panels import hand
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import steady
from dryward.physics.airleak import Leak
from dryward.physics.moving_air import density
from dryward.physics.ventspace import carrying_limit, clear_area, net_free_area
from dryward.teaching.words import Step
from dryward.units import KELVIN, to_si
from dryward.verdict import Place, Verdict, criterion, of_amount
from dryward.verdict.words import capital
from dryward.weather import Air
from dryward.weather.places import demo_climate

message = language.beside(__file__)

#: The day, the room and the roof of this lesson.
ROOM, COLD = Air(to_si(70.0, "degF"), 0.4), to_si(20.0, "degF")
ROOF = building.preset("vented-vault-variable")
RAFTER, AREA = 5.0, to_si(600.0, "ft2")
EAVES, RIDGE = to_si(60.0, "ft"), to_si(30.0, "ft")
BAY, SPACING = to_si(14.5, "in"), to_si(16.0, "in")
#: Roof for each opening, where the conditions of the code hold [-].
RATIO = round(1 / codes.required("vent-area-reduced"))
#: A fifth of the leaks of a house at 3 ACH50 goes into this roof, part of it straight, part of it seeping.
LEAKY = Leak.from_blower_door(3.0, to_si(20_000.0, "ft3"), 0.2, area=AREA)
#: Option -> outward pressure on the leaks [Pa]; None without leaks.
PUSHES = {"leaky": 4.0, "leaky-and-pulled": 6.0, "airtight": None}
LEAK = Choice(
    message("leak"),
    message("ceiling"),
    (
        ("leaky", message("leaky-4-pa-on")),
        ("leaky-and-pulled", message("leaky-vent-pulls-2")),
        ("airtight", "airtight"),
    ),
)
#: The months are those of an invented cold town.
TOWN = demo_climate("cold")
PLACES = np.linspace(0.0, RAFTER, 41)
#: What comes over what the vent air can carry at most.
LIMIT = criterion("vent-share")
#: What the sum of one such day does not count.
LEFT_OUT = ("time", "sun", "rain")


@dataclass(frozen=True)
class State:
    """A gap, its air, the day outside, and what comes through the ceiling."""

    gap: float
    speed: float
    outdoor: Air
    leak: str

    @cached_property
    def power(self):
        """The most the air can carry off [kg/(s m2)]."""
        return float(carrying_limit(self.gap, self.speed, RAFTER, self.outdoor))

    @cached_property
    def diffusion(self):
        """What comes through the layers [kg/(s m2)]."""
        return by_vapor(self.outdoor.temperature, self.outdoor.relative_humidity)

    @cached_property
    def leaking(self):
        """What straight air of the leaks brings over what air that cold can have [kg/(s m2)]."""
        return by_air(self.leak, self.outdoor.temperature)

    @property
    def below(self):
        """What seeping air leaves in the roof below, before it gets here [kg/(s m2)]."""
        return leaked(self.leak, self.outdoor.temperature).stays

    @property
    def load(self):
        """By vapor and by straight air [kg/(s m2)]."""
        return self.diffusion + self.leaking

    @property
    def share(self):
        """The load over what the air can carry at most [-]; infinite where it can carry nothing."""
        return float(share(self.load, self.power))


def by_vapor(temperature, relative_humidity):
    """Vapor that the layers let into the vent space [kg/(s m2)]; none when it goes inward."""
    found = steady.profile(ROOF, ROOM, Air(temperature, relative_humidity))
    return max(found.vapor_flux_out, 0.0)


def leaked(leak, temperature):
    """Water of the leaks where it is that cold, a `Brought` [kg/(s m2)]."""
    return LEAKY.moisture(PUSHES[leak] or 0.0, ROOM, temperature)


def by_air(leak, temperature):
    """What straight air brings over what air of that temperature can have [kg/(s m2)]."""
    found = leaked(leak, temperature)
    return float(found.excess - found.stays)


def share(load, power):
    """What comes over what can go [-], numbers or arrays; where nothing can go, any load is beyond all measure."""
    load, power = np.broadcast_arrays(np.asarray(load, dtype=float), np.asarray(power, dtype=float))
    return np.divide(load, power, out=np.where(load > 0.0, np.inf, 0.0), where=power > 0.0)


class VentSpace(Page):
    """Outdoor humidity, leak, gap and air speed; the air on its way, and twelve months."""

    id = "vent-space"
    handles = ("RH_out", message("gap"), message("air"), LEAK)
    draws = Channel

    def __init__(self, *args, **keys):
        # By vapor the months do not hang on any control.
        airs = [TOWN.air(month) for month in range(1, 13)]
        self.months = airs, tuple(by_vapor(each.temperature, each.relative_humidity) for each in airs)
        super().__init__(*args, **keys)

    def compute(self, at: SimpleNamespace) -> State:
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
        return VentAir(PLACES, humidity, state.gap, state.speed, power, diffusion, leak)

    def numbers(self, state: State) -> list[Readout]:
        """What it can carry, what comes, what is left; what a code asks for and what the gap gives."""
        need = net_free_area(AREA, RATIO, eave_length=EAVES, ridge_length=RIDGE)
        given = clear_area(state.gap, BAY, SPACING)
        rest = state.power - state.load
        parts = message("by-vapor", diffusion=self.show(state.diffusion, "vapor flux"))
        if state.leaking > 0:
            blown, below = (self.show(each, "vapor flux") for each in (state.leaking, state.below))
            parts = message("by-air-more-stay", blown=blown, parts=parts, below=below)
        low, high = (self._opening(each) for each in (need.lower_per_length, need.upper_per_length))
        return [
            Readout("power", message("power"), state.power, "vapor flux", both=True),
            Readout("load", message("load"), state.load, "vapor flux", note=parts),
            Readout(
                "rest",
                message("rest"),
                rest,
                "vapor flux",
                both=True,
                note="" if rest >= 0 else message("rest-note-else"),
            ),
            Readout(
                "needed",
                message("needed", ratio=RATIO),
                need.total,
                "area",
                text=self._square(need.total),
                note=message("needed-note", low=low, high=high),
            ),
            Readout("provided", message("provided"), given, text=self._opening(given), note=message("provided-note")),
            Readout("leak", "", state.leaking, "vapor flux", hidden=True),
            Readout("below", "", state.below, "vapor flux", hidden=True),
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

    def judge(self, state: State) -> Verdict:
        """What comes on this day, against what the vent air can carry."""
        return of_amount("vent", LIMIT.id, state.share, Place("vent space"), LEFT_OUT)

    def says(self, state: State) -> str:
        """What comes against what can go on this day; a leak is named before the vent."""
        power, load, leaking, below, vapor = (
            self.show(each, "vapor flux")
            for each in (state.power, state.load, state.leaking, state.below, state.diffusion)
        )
        humidity = self.show(state.outdoor.relative_humidity, "relative humidity")
        day = message("at-and", cold=self.show(COLD, "temperature"), humidity=humidity)
        carries = (
            message("the-vent-air-can", day=day, power=power)
            if state.power > 0
            else message("the-outdoor-air-is", day=day)
        )
        carries += _meaning(state)
        if state.leaking <= 0:
            little = message("the-ceiling-is-airtight") if state.share >= LIMIT.damage else ""
            return message("by-vapor-come", load=load, carries=carries, little=little)
        if state.share < LIMIT.caution:
            return message("leaks-bring-of-the", leaking=leaking, load=load, carries=carries, below=below, vapor=vapor)
        return message("the-ceiling-leaks-of", leaking=leaking, load=load, carries=capital(carries))

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
        """The state along each control."""
        gaps, speeds, each = np.array(self.along(message("gap"))), np.array(self.along(message("air"))), state.outdoor
        humid = np.array(self.along("RH_out"))
        layers = steady.sweep(ROOF, ROOM, each, outdoor_relative_humidity=humid).vapor_flux_out
        outdoor = Air(np.full(humid.shape, COLD), humid)
        leaks = np.array([by_air(option, COLD) for option in self.along(message("leak"))])
        shares = {
            "RH_out": share(
                np.maximum(layers, 0.0) + state.leaking, carrying_limit(state.gap, state.speed, RAFTER, outdoor)
            ),
            message("gap"): share(state.load, carrying_limit(gaps, state.speed, RAFTER, each)),
            message("air"): share(state.load, carrying_limit(state.gap, speeds, RAFTER, each)),
            message("leak"): share(state.diffusion + leaks, state.power),
        }
        return {name: Strip(tuple(LIMIT.state(found))) for name, found in shares.items()}

    def steps(self, state: State) -> list[Step]:
        """From a table of saturated air to grams a day; the code's area."""
        full = air.vapor_density(COLD, air.saturation_vapor_pressure(COLD)) * 1e3
        here = full * state.outdoor.relative_humidity
        need = net_free_area(AREA, RATIO, eave_length=EAVES, ridge_length=RIDGE)
        us = self.unit_system == "us"
        power = units.from_si(state.power, "g/m2/day")
        lines = [
            Step(
                message("step-most-water-in-each"),
                f"{state.outdoor.relative_humidity * 100:.3g} % × {full:.3f} g",
                f"{here:.3f} g",
            ),
            Step(
                message("step-for-each-m-of"),
                f"{state.gap:.4g} × {state.speed:.4g} / {RAFTER:g} × ({full:.3f} − {here:.3f}) × 86 400",
                message("g-m-day", power=f"{power:.3g}") + (f" = {self.show(state.power, 'vapor flux')}" if us else ""),
            ),
        ]
        if us:
            area, each, divisor = message("x-600-ft-144"), "in²", message("x-60-ft")
            half = units.from_si(need.lower, "in2")
        else:
            area, each, divisor = f"{AREA:.4g} m² × 10 000", "cm²", f"{EAVES:.3g} m"
            half = units.from_si(need.lower, "cm2")
        return [
            *lines,
            *self._leak_steps(state),
            Step(message("step-net-free-area-by", ratio=RATIO), f"{area} / {RATIO}", self._square(need.total)),
            Step(
                message("step-half-of-it-low"),
                f"{half:.4g} {each} / {divisor}",
                self._opening(need.lower_per_length),
            ),
        ]

    def _leak_steps(self, state):
        """What the leaks bring, from the blower door."""
        if state.leaking <= 0:
            return []
        push = PUSHES[state.leak]
        heavy = density(ROOM.temperature + KELVIN, air.STANDARD_PRESSURE - ROOM.vapor_pressure)
        full = air.saturation_vapor_pressure(COLD)
        inside, held = (1e3 * air.humidity_ratio(each) for each in (ROOM.vapor_pressure, full))
        most, straight = (units.from_si(each, "g/m2/day") for each in (state.leaking + state.below, state.leaking))
        return [
            Step(
                message("step-air-through-the-leaks", push=f"{push:g}"),
                f"{LEAKY.airflow(push):.4g} / {AREA:.4g} × {heavy:.3f} × ({inside:.3f} − {held:.3f}) × 86 400",
                message("g-m-day-2", most=f"{most:.3g}"),
            ),
            Step(
                message("step-of-that-air-is", long_share=f"{LEAKY.long_share * 100:.0f}"),
                f"(1 − {LEAKY.long_share:g}) × {most:.3g}",
                message("g-m-day-3", straight=f"{straight:.3g}")
                + (f" = {self.show(state.leaking, 'vapor flux')}" if self.unit_system == "us" else ""),
            ),
        ]


def _meaning(state):
    """Whether it can keep up, and what stays if not; the most is never reached, near it the air only may keep up."""
    if state.share < LIMIT.caution:
        return message("on-such-a-day")
    if state.share < LIMIT.damage:
        return message("at-best-it-keeps")
    if state.power <= 0:
        return message("all-of-it-stays")
    if state.share <= 2:
        return message("part-of-it-stays")
    return message("and-as-much-comes", share=hand.times(state.share))


PAGE = VentSpace
