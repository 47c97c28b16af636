"""The vent space: what its air can carry off today, and what the ceiling brings."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, language, units
from dryward.course.vent_space.beats import PLAY
from dryward.course.vent_space.day import (
    ACH50,
    AREA,
    BATH,
    BAY,
    COLD,
    EAVES,
    FAN,
    LEAKY,
    LIMIT,
    PUSHES,
    RAFTER,
    RATIO,
    RIDGE,
    ROOF,
    ROOM,
    SHARE,
    SHOWER,
    SPACING,
    VOLUME,
    VentDay,
    by_air,
    by_fan,
    by_vapor,
    power,
    share,
)  # fmt: skip
from dryward.course.vent_space.scene import Channel, VentAir
from dryward.panels import hand
from dryward.panels.controls import Choice, standard
from dryward.panels.learner import Settings
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import steady
from dryward.physics.moving_air import density
from dryward.physics.ventspace import clear_area, net_free_area
from dryward.teaching.words import Step
from dryward.units import DAY, KELVIN, amounts
from dryward.verdict import Place, Verdict, of_amount
from dryward.weather import Air
from dryward.weather.places import demo_climate

message = language.beside(__file__)

LEAK = Choice(
    "Leak",
    "vent_space.bay",
    (
        ("leaky", "vent_space.leak-leaky"),
        ("leaky-and-pulled", "vent_space.leak-pulled"),
        ("airtight", "vent_space.leak-airtight"),
        ("bath-fan", "vent_space.leak-bath-fan"),
        ("cut", "vent_space.leak-cut"),
    ),
)
#: The months are those of an invented cold town.
TOWN = demo_climate("cold")
PLACES = np.linspace(0.0, RAFTER, 41)
#: What the sum of one such day does not count.
LEFT_OUT = ("time", "sun", "rain")


def meaning(state: VentDay) -> str:
    """What becomes of all that comes; the most is never reached, near it the air only may keep up."""
    if state.share < LIMIT.caution:
        return "keeps-up"
    if state.share < LIMIT.damage:
        return "at-best"
    if state.power <= 0:
        return "all-stays"
    return "part-stays" if state.share <= 2 else "most-stays"


class VentSpace(Page):
    """Outdoor humidity, leak, gap and air speed; the air on its way, and twelve months."""

    id = "vent-space"
    handles = ("RH_out", standard("Gap").starting(1.0, 25.4), standard("Air").starting(20.0, 0.1016), LEAK)
    draws = Channel
    play = PLAY

    def __init__(self, unit_system: str | None = None, settings: Settings | None = None) -> None:
        # By vapor the months do not hang on any control.
        airs = [TOWN.air(month) for month in range(1, 13)]
        self.months = airs, tuple(by_vapor(each.temperature, each.relative_humidity) for each in airs)
        super().__init__(unit_system, settings)

    def compute(self, at: SimpleNamespace) -> VentDay:
        """One cold day."""
        return VentDay(at.Gap, at.Air, Air(COLD, at.RH_out), at.Leak)

    def views(self, state: VentDay) -> VentAir:
        """How full the air gets on its way today; the months of a cold town with the same gap and speed."""
        full = air.vapor_density(COLD, air.saturation_vapor_pressure(COLD))
        start = full * state.outdoor.relative_humidity
        humidity = np.minimum((start + state.load * PLACES / (state.gap * state.speed)) / full, 1.0)
        speed = state.speed
        if not state.open:  # what comes stays, until the air that stands there is full
            speed, humidity = 0.0, np.full(PLACES.shape, 1.0 if state.load > 0 else state.outdoor.relative_humidity)
        airs, diffusion = self.months
        most = tuple(float(power(state.leak, state.gap, state.speed, each)) for each in airs)
        leak = tuple(by_air(state.leak, each.temperature) + by_fan(state.leak, each.temperature) for each in airs)
        return VentAir(PLACES, humidity, state.gap, speed, most, diffusion, leak)

    def given(self, state: VentDay) -> str:
        """What no control moves."""
        show, us = self.held, self.unit_system == "us"
        return message(
            "given", room=self.air_held(ROOM), cold=show(COLD, "temperature"), area=self.area_held(AREA),
            rafter=units.show_in(RAFTER, "ft" if us else "m"), volume=show(VOLUME, "volume"),
            changes=units.number(ACH50), share=show(SHARE, "relative humidity"),
            bath=self.air_held(BATH), minutes=units.number(SHOWER, 0), fan=self._fan(),
            bay=units.show_in(SPACING, "in" if us else "mm", 0),
        )  # fmt: skip

    def _fan(self) -> str:
        """What the bath fan moves."""
        return units.show_in(FAN, "cfm" if self.unit_system == "us" else "m3/h", 0)

    def numbers(self, state: VentDay) -> list[Readout]:
        """What it can carry, what comes, what is left; what a code asks for and what the gap gives."""
        need = net_free_area(AREA, RATIO, eave_length=EAVES, ridge_length=RIDGE)
        given = clear_area(state.gap, BAY, SPACING)
        rest = state.power - state.load
        vapor, leaked_air, below = (
            self.show(each, "vapor flux") for each in (state.diffusion, state.leaking, state.below)
        )
        by = "leaks" if state.leaking > 0 else "fan" if state.blown > 0 else "vapor"
        fan = self.show(state.blown, "vapor flux")
        parts = message("load-note", by=by, vapor=vapor, air=leaked_air, fan=fan, more=below)
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
                note="" if rest >= 0 else message("rest-too-little"),
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

    def _square(self, area: float) -> str:
        """An area of openings."""
        return units.show_in(area, "in2" if self.unit_system == "us" else "cm2", 0)

    def _opening(self, per_length: float) -> str:
        """Square meters on each meter, as people write it."""
        if self.unit_system == "us":
            per_foot = units.from_si(per_length * units.to_si(1, "ft"), "in2")
            return message("opening-us", opening=units.written(per_foot, ".3g"))
        return message("opening-si", opening=units.written(units.from_si(per_length, "cm2"), ".3g"))

    def judge(self, state: VentDay) -> Verdict:
        """What comes on this day, against what the vent air can carry."""
        return of_amount("vent", LIMIT.id, state.share, Place("vent space"), LEFT_OUT)

    def says(self, state: VentDay) -> str:
        """What comes against what can go on this day; a leak is named before the vent."""
        most, load, leaking, blown, below, vapor = (
            self.show(each, "vapor flux")
            for each in (state.power, state.load, state.leaking, state.blown, state.below, state.diffusion)
        )
        if not state.open:
            return message("cut-off", load=load)
        carries = message(
            "carries",
            begins="sentence" if state.leaking > 0 and state.share >= LIMIT.caution else "clause",
            cold=self.show(COLD, "temperature"),
            humidity=self.show(state.outdoor.relative_humidity, "relative humidity"),
            full=state.power <= 0,
            power=most,
            meaning=meaning(state),
            times=hand.times(state.share) if np.isfinite(state.share) else "",
        )
        if state.blown > 0:
            return message("bath-fan", blown=blown, carries=carries, vapor=vapor)
        if state.leaking <= 0:
            return message("airtight", load=load, carries=carries, little=state.share >= LIMIT.damage)
        winter = self.show(state.below * amounts.WINTER * DAY, "area density")
        seeps = message("seeps", below=below, below_winter=winter, days=amounts.WINTER)
        pulls = state.leak == "leaky-and-pulled"
        other = self.show(by_air("leaky" if pulls else "leaky-and-pulled", COLD), "vapor flux")
        pull = message("pull", pulls=pulls, leaking=leaking, other=other)
        if state.share < LIMIT.caution:
            return message("leaks", leaking=leaking, load=load, carries=carries, seeps=seeps, pull=pull, vapor=vapor)
        return message("leaks-first", leaking=leaking, load=load, carries=carries, seeps=seeps, pull=pull)

    def strips(self, at: SimpleNamespace, state: VentDay) -> dict[str, Any]:
        """The state along each control."""
        gaps, speeds, each = np.array(self.along("Gap")), np.array(self.along("Air")), state.outdoor
        humid: Any = np.array(self.along("RH_out"))
        layers = steady.sweep(ROOF, ROOM, each, outdoor_relative_humidity=humid).vapor_flux_out
        outdoor = Air(humid * 0.0 + COLD, humid)
        options = self.along("Leak")
        brings = np.array([by_air(option, COLD) + by_fan(option, COLD) for option in options])
        takes = np.array([power(option, state.gap, state.speed, each) for option in options])
        by_layers = np.maximum(layers, 0.0)
        shares = {
            "RH_out": share(
                by_layers + state.leaking + state.blown, power(state.leak, state.gap, state.speed, outdoor)
            ),
            "Gap": share(state.load, power(state.leak, gaps, state.speed, each)),
            "Air": share(state.load, power(state.leak, state.gap, speeds, each)),
            "Leak": share(state.diffusion + brings, takes),
        }
        return {name: Strip(tuple(LIMIT.state(found))) for name, found in shares.items()}

    def steps(self, state: VentDay) -> list[Step]:
        """From a table of saturated air to grams a day; the code's area."""
        full = air.vapor_density(COLD, air.saturation_vapor_pressure(COLD)) * 1e3
        here = full * state.outdoor.relative_humidity
        need = net_free_area(AREA, RATIO, eave_length=EAVES, ridge_length=RIDGE)
        us = self.unit_system == "us"
        lines = [
            Step(
                message("step-water"),
                f"{state.outdoor.relative_humidity * 100:.3g} % × {full:.3f} g",
                units.written(here, ".3f", "g"),
            ),
            Step(
                message("step-carried", open=state.open),
                f"{state.gap:.4g} × {state.speed:.4g} / {RAFTER:g} × ({full:.3f} − {here:.3f}) × 86 400"
                if state.open
                else "",
                self._rate(state.power),
            ),
        ]
        if us:
            area, each, divisor = message("step-area-us"), "in2", message("step-low-us")
            half = units.from_si(need.lower, "in2")
        else:
            area, each, divisor = (
                message("step-area-si", area=units.written(AREA, ".4g")),
                "cm2",
                message("step-low-si", eaves=units.written(EAVES, ".3g")),
            )
            half = units.from_si(need.lower, "cm2")
        return [
            *lines,
            *self._leak_steps(state),
            Step(message("step-area", ratio=RATIO), f"{area} / {RATIO}", self._square(need.total)),
            Step(
                message("step-low"),
                f"{half:.4g} {units.unit(each).symbol} / {divisor}",
                self._opening(need.lower_per_length),
            ),
        ]

    def _rate(self, flux: float) -> str:
        """A flux in the reader's unit, and in g/m2 day, as it was worked, where that is another."""
        rate = units.show(flux, "vapor flux", "si")
        return units.in_both(self.show(flux, "vapor flux"), rate) if self.unit_system == "us" else rate

    def _leak_steps(self, state: VentDay) -> list[Step]:
        """What the leaks bring, from the blower door, or a bath fan."""
        if state.blown > 0:
            return [self._fan_step(state)]
        if state.leaking <= 0:
            return []
        push = PUSHES[state.leak]
        assert push is not None  # of a leak there is one
        heavy = density(ROOM.temperature + KELVIN, air.STANDARD_PRESSURE - ROOM.vapor_pressure)
        full = air.saturation_vapor_pressure(COLD)
        inside, held = (1e3 * air.humidity_ratio(each) for each in (ROOM.vapor_pressure, full))
        most = units.from_si(state.leaking + state.below, "g/m2/day")
        return [
            Step(
                message("step-leaks", push=units.written(push, "g")),
                f"{LEAKY.airflow(push):.4g} / {AREA:.4g} × {heavy:.3f} × ({inside:.3f} − {held:.3f}) × 86 400",
                self._rate(state.leaking + state.below),
            ),
            Step(
                message("step-straight", share=self.show(LEAKY.long_share, "relative humidity")),
                f"(1 − {LEAKY.long_share:g}) × {most:.3g}",
                self._rate(state.leaking),
            ),
        ]

    def _fan_step(self, state: VentDay) -> Step:
        """What one shower blows in."""
        heavy = density(BATH.temperature + KELVIN, air.STANDARD_PRESSURE - BATH.vapor_pressure)
        inside, held = (
            1e3 * air.humidity_ratio(each) for each in (BATH.vapor_pressure, air.saturation_vapor_pressure(COLD))
        )
        return Step(
            message("step-fan", minutes=units.number(SHOWER, 0), fan=self._fan()),
            f"{FAN:.4g} × {SHOWER * 60:g} × {heavy:.3f} × ({inside:.3f} − {held:.3f}) / ({RAFTER:g} × {SPACING:.3g})",
            self._rate(state.blown),
        )


PAGE = VentSpace
