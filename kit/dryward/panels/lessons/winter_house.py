"""Winter house: people fill it with water, fresh air empties it."""

from dataclasses import dataclass

import numpy as np

from dryward import air, units
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.panels.standard import standard
from dryward.pictures.tank import Tank, TankState
from dryward.teaching.arithmetic import Step
from dryward.units import to_si
from dryward.weather import Air, indoor

ROOM_TEMPERATURE = to_si(70.0, "degF")
#: The window of this lesson, middle of the glass, and the film of its room side (ASHRAE, still air).
WINDOW, FILM = to_si(3.0, "R"), to_si(0.68, "R")
#: Curves of the picture: small, usual and large production [kg/s].
PRODUCTIONS = tuple(to_si(each, "kg/day") for each in (5.0, 10.0, 15.0))


@dataclass(frozen=True)
class State:
    """A house in balance: room humidity, and the humidity at which its windows sweat."""

    outdoor: Air
    production: float
    fresh_air: float
    humidity: float
    limit: float

    def carried(self, pressure):
        """Water that the fresh air moves at a vapor pressure [kg/s]."""
        return self.fresh_air * air.vapor_density(ROOM_TEMPERATURE, pressure)


def window_limit(outdoor_temperature):
    """The humidity at which the middle of the glass gets wet [-]."""
    glass = ROOM_TEMPERATURE - (ROOM_TEMPERATURE - outdoor_temperature) * FILM / WINDOW
    return np.minimum(1.0, air.saturation_vapor_pressure(glass) / air.saturation_vapor_pressure(ROOM_TEMPERATURE))


class WinterHouse(Page):
    """A tank, and room humidity against fresh air."""

    id = "winter-house"
    handles = ("T_out", standard("RH_out").starting(80, 80), "Water", "Fresh_air")
    draws = Tank

    def compute(self, at):
        """The balance of what is made and what is carried out."""
        outdoor = Air(at.T_out, at.RH_out)
        humidity = float(indoor.steady_humidity(at.Water, at.Fresh_air, outdoor, ROOM_TEMPERATURE))
        return State(outdoor, at.Water, at.Fresh_air, humidity, float(window_limit(at.T_out)))

    def views(self, state):
        """Bars in and out, and three curves."""
        flows = np.linspace(to_si(15.0, "cfm"), to_si(150.0, "cfm"), 60)
        curves = tuple(
            (made, indoor.steady_humidity(made, flows, state.outdoor, ROOM_TEMPERATURE)) for made in PRODUCTIONS
        )
        inflow = state.carried(state.outdoor.vapor_pressure)
        return TankState(
            state.production,
            inflow,
            state.production + inflow,
            state.humidity,
            state.fresh_air,
            state.limit,
            curves,
            flows,
        )

    def numbers(self, state):
        """Room humidity, its dew point, the window's limit, and outdoor air once warmed."""
        pressure = min(state.humidity, 1.0) * air.saturation_vapor_pressure(ROOM_TEMPERATURE)
        alone = float(air.relative_humidity(ROOM_TEMPERATURE, state.outdoor.vapor_pressure))
        over, warm = state.humidity > 1, state.outdoor.temperature >= ROOM_TEMPERATURE
        return [
            Readout(
                "relative_humidity",
                "Indoor humidity",
                min(state.humidity, 1.0),
                "relative humidity",
                note="" if not over else "more than the air can hold" if warm else "the rest runs down the walls",
            ),
            Readout("dew_point", "Dew point indoors", float(air.dew_point(pressure)), "temperature", both=True),
            Readout(
                "limit",
                "Window gets wet at",
                state.limit,
                "relative humidity",
                note=f"middle of the glass, {self.say('{3 R}')}",
            ),
            Readout("outdoor_warmed", self.say("Outdoor air at {70 degF}"), min(alone, 1.0), "relative humidity"),
            Readout("from_outside", "Water from outdoors", state.carried(state.outdoor.vapor_pressure), "mass flow"),
        ]

    def says(self, state):
        """Where the water comes from, and whether the window sweats."""
        inflow = state.carried(state.outdoor.vapor_pressure)
        share = inflow / (inflow + state.production)
        if state.humidity > 1:
            if state.outdoor.temperature < ROOM_TEMPERATURE:
                return "More water comes in than the fresh air can carry out: it runs down windows and walls."
            if state.outdoor.vapor_pressure >= air.saturation_vapor_pressure(ROOM_TEMPERATURE):
                return "Outdoor air this damp would have to be dried by the air conditioning. This page is for winter."
            return (
                "More water comes in than the fresh air can carry out, but no glass is cold. This page is for winter."
            )
        room = f"{state.humidity * 100:.0f} %"
        glass = "the windows get wet" if state.humidity > state.limit else "the middle of the glass stays dry"
        source = "most of that water is made indoors" if share < 0.5 else "most of that water comes in from outdoors"
        return f"The house settles at {room}, and {glass}: {source}."

    def strips(self, at, state):
        """Where the window stays dry."""

        def dry(production=at.Water, fresh_air=at.Fresh_air, temperature=at.T_out, humidity=at.RH_out):
            there = Air(np.asarray(temperature, dtype=float), np.asarray(humidity, dtype=float))
            rooms = indoor.steady_humidity(np.asarray(production), np.asarray(fresh_air), there, ROOM_TEMPERATURE)
            return tuple(np.broadcast_to(rooms <= window_limit(there.temperature), (len(self.along("T_out")),)))

        return {
            "T_out": Strip(dry(temperature=self.along("T_out")), "dry glass"),
            "RH_out": Strip(dry(humidity=self.along("RH_out")), "dry glass"),
            "Water": Strip(dry(production=self.along("Water")), "dry glass"),
            "Fresh_air": Strip(dry(fresh_air=self.along("Fresh_air")), "dry glass"),
        }

    def steps(self, state):
        """What is made over what carries it, added to the outdoor pressure."""
        show = self.show
        outside = state.outdoor.vapor_pressure
        excess = float(indoor.vapor_excess(state.production, state.fresh_air, ROOM_TEMPERATURE))
        most = air.saturation_vapor_pressure(ROOM_TEMPERATURE)
        if self.unit_system == "us":
            one = units.from_si(
                indoor.vapor_excess(to_si(1.0, "pint/day"), to_si(1.0, "cfm"), ROOM_TEMPERATURE), "inHg"
            )
        else:
            one = indoor.vapor_excess(to_si(1.0, "kg/day"), to_si(1.0, "m3/h"), ROOM_TEMPERATURE)
        formula = f"{one:.4g} × {show(state.production, 'mass flow')} / {show(state.fresh_air, 'air flow')}"
        turns = self.say(f"{one:.4g} turns these units into pressure at {{70 degF}}.")
        return [
            Step("Vapor pressure of the outdoor air.", "", show(outside, "pressure")),
            Step(
                f"What the people add: water made, over the fresh air that carries it. {turns}",
                formula,
                show(excess, "pressure"),
            ),
            Step(
                "Indoor humidity: both together, over the most at room temperature.",
                f"({show(outside, 'pressure')} + {show(excess, 'pressure')}) / {show(most, 'pressure')}",
                f"{(outside + excess) / most * 100:.0f} %",
            ),
        ]


PAGE = WinterHouse
