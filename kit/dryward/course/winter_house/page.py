"""Winter house: people fill it with water, fresh air empties it."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, units
from dryward.course.winter_house.questions import EDGE, FILM, GLASS, fogs_at
from dryward.course.winter_house.scene import HouseWater, Tank
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import DAMP, DRY, STATES, WET, Finding, Place, Verdict, criterion
from dryward.verdict.findings import verdict
from dryward.weather import Air, indoor

ROOM_TEMPERATURE = to_si(70.0, "degF")
#: Curves of the picture: small, usual and large production [kg/s].
PRODUCTIONS = tuple(to_si(each, "kg/day") for each in (5.0, 10.0, 15.0))


@dataclass(frozen=True)
class State:
    """A house in balance: room humidity, and the humidities from which two parts of its windows fog."""

    outdoor: Air
    production: float
    fresh_air: float
    humidity: float

    @property
    def edge(self):
        """From here on the edge of the pane fogs [-]; over 1 where it is warmer than the room."""
        return float(fogs_at(EDGE, self.outdoor.temperature, ROOM_TEMPERATURE))

    @property
    def glass(self):
        """The same of the middle of the glass [-]."""
        return float(fogs_at(GLASS, self.outdoor.temperature, ROOM_TEMPERATURE))

    def carried(self, pressure):
        """Water that the fresh air moves at a vapor pressure [kg/s]."""
        return self.fresh_air * air.vapor_density(ROOM_TEMPERATURE, pressure)


def humidities(room, edge, glass):
    """What is judged, each by its limit [-]: the air at both parts of the pane, and at a wall as warm as the room.

    Parameters are humidities: of the room, and those from which the parts fog; numbers or arrays.
    """
    return {"window-edge": room / edge, "window-glass": room / glass, "face-humidity": room}


#: Where each of them is.
PLACES = {"window-edge": Place("edge of the pane"), "window-glass": Place("middle of the glass"),
          "face-humidity": Place("walls")}  # fmt: skip


class WinterHouse(Page):
    """A tank, and room humidity against fresh air."""

    id = "winter-house"
    handles = ("T_out", standard("RH_out").starting(80, 80), "Water", "Fresh_air")
    draws = Tank

    def compute(self, at: SimpleNamespace) -> State:
        """The balance of what is made and what is carried out."""
        outdoor = Air(at.T_out, at.RH_out)
        humidity = float(indoor.steady_humidity(at.Water, at.Fresh_air, outdoor, ROOM_TEMPERATURE))
        return State(outdoor, at.Water, at.Fresh_air, humidity)

    def views(self, state):
        """Bars in and out, and three curves."""
        flows = np.linspace(to_si(15.0, "cfm"), to_si(150.0, "cfm"), 60)
        curves = tuple(
            (made, indoor.steady_humidity(made, flows, state.outdoor, ROOM_TEMPERATURE)) for made in PRODUCTIONS
        )
        inflow = state.carried(state.outdoor.vapor_pressure)
        return HouseWater(
            state.production,
            inflow,
            state.production + inflow,
            state.humidity,
            state.fresh_air,
            min(state.edge, 1.0),
            min(state.glass, 1.0),
            curves,
            flows,
        )

    def numbers(self, state: State) -> list[Readout]:
        """Room humidity, its dew point, what the window allows, and outdoor air once warmed."""
        pressure = min(state.humidity, 1.0) * air.saturation_vapor_pressure(ROOM_TEMPERATURE)
        alone = float(air.relative_humidity(ROOM_TEMPERATURE, state.outdoor.vapor_pressure))
        over, warm = state.humidity >= 1, state.outdoor.temperature >= ROOM_TEMPERATURE
        glass = self.show(min(state.glass, 1.0), "relative humidity")
        return [
            Readout(
                "relative_humidity",
                "Indoor humidity",
                min(state.humidity, 1.0),
                "relative humidity",
                note="" if not over else "more than can stay vapor" if warm else "the rest runs down the walls",
            ),
            Readout("dew_point", "Dew point indoors", float(air.dew_point(pressure)), "temperature", both=True),
            Readout(
                "limit",
                "Edge of the window fogs at",
                min(state.edge, 1.0),
                "relative humidity",
                note="no glass is colder than the room" if warm else f"the middle of the glass at {glass}",
            ),
            Readout("glass_limit", "", min(state.glass, 1.0), "relative humidity", hidden=True),
            Readout("outdoor_warmed", self.say("Outdoor air at {70 degF}"), min(alone, 1.0), "relative humidity"),
            Readout("from_outside", "Water from outdoors", state.carried(state.outdoor.vapor_pressure), "mass flow"),
        ]

    def judge(self, state: State) -> Verdict:
        """The windows, the edge before the middle; and the walls, which bound the room where no glass is cold."""
        found = []
        for id, value in humidities(state.humidity, state.edge, state.glass).items():
            limit = criterion(id)
            found.append(Finding(id, PLACES[id], value, limit, limit.state(value)))
        return verdict("window", found)

    def says(self, state: State) -> str:
        """Where the water comes from, and what the window shows of it."""
        inflow = state.carried(state.outdoor.vapor_pressure)
        share = inflow / (inflow + state.production)
        if state.humidity >= 1:
            if state.outdoor.temperature < ROOM_TEMPERATURE:
                return "More water comes in than the fresh air can carry out: it runs down windows and walls."
            if state.outdoor.vapor_pressure >= air.saturation_vapor_pressure(ROOM_TEMPERATURE):
                return (
                    "Outdoor air with that much vapor in it has to be dried by the air conditioning, or drops form in "
                    "the rooms. This page is for winter."
                )
            return (
                "More water comes in than the fresh air can carry out. No glass is cold, but drops form on all that is "
                "no warmer than the room. This page is for winter."
            )
        room = f"{state.humidity * 100:.0f} %"
        source = "most of that water is made indoors" if share < 0.5 else "most of that water comes in from outdoors"
        return f"The house settles at {room}, and {_shown(self.judge(state))}: {source}."

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
        """What the window shows, along each control."""
        limits = {id: criterion(id) for id in PLACES}

        def states(production=at.Water, fresh_air=at.Fresh_air, temperature=at.T_out, humidity=at.RH_out):
            there = Air(np.asarray(temperature, dtype=float), np.asarray(humidity, dtype=float))
            rooms = indoor.steady_humidity(np.asarray(production), np.asarray(fresh_air), there, ROOM_TEMPERATURE)
            parts = (fogs_at(each, there.temperature, ROOM_TEMPERATURE) for each in (EDGE, GLASS))
            ranks = [limits[id].rank(value) for id, value in humidities(rooms, *parts).items()]
            return Strip(tuple(np.asarray(STATES, dtype=object)[np.maximum.reduce(ranks)]))

        return {
            "T_out": states(temperature=self.along("T_out")),
            "RH_out": states(humidity=self.along("RH_out")),
            "Water": states(production=self.along("Water")),
            "Fresh_air": states(fresh_air=self.along("Fresh_air")),
        }

    def steps(self, state: State) -> list[Step]:
        """What is made over what carries it, added to the outdoor pressure; and what the edge of the pane allows."""
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
            hand.plane(
                "The edge of the pane: down from the room by the share of its air film.",
                ROOM_TEMPERATURE,
                state.outdoor.temperature,
                FILM,
                EDGE,
                self.unit_system,
            ),
            Step(
                "It fogs from here on: the most vapor pressure there, over the most at room temperature, from a table.",
                f"{show(state.edge * most, 'pressure')} / {show(most, 'pressure')}",
                f"{state.edge * 100:.0f} %",
            ),
        ]


def _shown(judged):
    """What the panes and the walls of a house show whose air is not full."""
    edge, glass, wall = (judged.finding(id).state for id in PLACES)
    if glass == WET:
        panes = "the whole pane runs with water"
    elif edge == DAMP:
        panes = "the edge of the pane fogs while the middle stays clear"
    else:
        panes = "the panes stay clear"
    if wall == DRY:
        return panes
    return f"{panes}, {'but' if edge == DRY else 'and'} mold can grow on any wall"


PAGE = WinterHouse
