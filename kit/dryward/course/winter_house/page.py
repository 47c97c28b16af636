"""Winter house: people fill it with water, fresh air empties it."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, language, units
from dryward.course.winter_house.beats import PLAY
from dryward.course.winter_house.questions import EDGE, FILM, GLASS, ROOM_TEMPERATURE, fogs_at
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

message = language.beside(__file__)

#: Curves of the picture: small, usual and large production [kg/s].
PRODUCTIONS = tuple(to_si(each, "kg/day") for each in (5.0, 10.0, 15.0))


@dataclass(frozen=True)
class HouseInBalance:
    """A house in balance: room humidity, and the humidities from which two parts of its windows fog."""

    outdoor: Air
    production: float
    fresh_air: float
    humidity: float

    @property
    def edge(self) -> float:
        """From here on the edge of the pane fogs [-]; over 1 where it is warmer than the room."""
        return float(fogs_at(EDGE, self.outdoor.temperature, ROOM_TEMPERATURE))

    @property
    def glass(self) -> float:
        """The same of the middle of the glass [-]."""
        return float(fogs_at(GLASS, self.outdoor.temperature, ROOM_TEMPERATURE))

    @property
    def leaving(self) -> float:
        """Water that goes out with the air, which carries no more than full air can [kg/s]; the rest runs down."""
        full = self.carried(float(air.saturation_vapor_pressure(ROOM_TEMPERATURE)))
        return min(self.production + self.carried(self.outdoor.vapor_pressure), full)

    def carried(self, pressure: float) -> float:
        """Water that the fresh air moves at a vapor pressure [kg/s]."""
        return self.fresh_air * air.vapor_density(ROOM_TEMPERATURE, pressure)


def humidities(room: Any, edge: Any, glass: Any) -> dict[str, Any]:
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
    handles = ("T_out", standard("RH_out").starting(90, 90), "Water", "Fresh_air")
    draws = Tank
    play = PLAY

    def compute(self, at: SimpleNamespace) -> HouseInBalance:
        """The balance of what is made and what is carried out."""
        outdoor = Air(at.T_out, at.RH_out)
        humidity = float(indoor.steady_humidity(at.Water, at.Fresh_air, outdoor, ROOM_TEMPERATURE))
        return HouseInBalance(outdoor, at.Water, at.Fresh_air, humidity)

    def views(self, state: HouseInBalance) -> HouseWater:
        """Bars in and out, and three curves."""
        flows = np.linspace(to_si(15.0, "cfm"), to_si(150.0, "cfm"), 60)
        curves = tuple(
            (made, indoor.steady_humidity(made, flows, state.outdoor, ROOM_TEMPERATURE)) for made in PRODUCTIONS
        )
        inflow = state.carried(state.outdoor.vapor_pressure)
        return HouseWater(
            state.production,
            inflow,
            state.leaving,
            state.humidity,
            state.fresh_air,
            min(state.edge, 1.0),
            min(state.glass, 1.0),
            curves,
            flows,
        )

    def given(self, state: HouseInBalance) -> str:
        """What no control moves."""
        edge, glass = (units.r_value(each, self.unit_system) for each in (EDGE, GLASS))
        return message("given", room=self.held(ROOM_TEMPERATURE, "temperature"), edge=edge, glass=glass)

    def numbers(self, state: HouseInBalance) -> list[Readout]:
        """Room humidity, its dew point, what the window allows, and outdoor air once warmed."""
        pressure = min(state.humidity, 1.0) * air.saturation_vapor_pressure(ROOM_TEMPERATURE)
        alone = float(air.relative_humidity(ROOM_TEMPERATURE, state.outdoor.vapor_pressure))
        over, warm = state.humidity >= 1, state.outdoor.temperature >= ROOM_TEMPERATURE
        glass = self.show(min(state.glass, 1.0), "relative humidity")
        return [
            Readout(
                "relative_humidity",
                message("indoor-humidity"),
                min(state.humidity, 1.0),
                "relative humidity",
                note=""
                if not over
                else message("indoor-humidity-over-warm")
                if warm
                else message("indoor-humidity-over"),
            ),
            Readout("dew_point", message("dew-point"), float(air.dew_point(pressure)), "temperature", both=True),
            Readout(
                "limit",
                message("edge-limit"),
                min(state.edge, 1.0),
                "relative humidity",
                note=message("edge-limit-warm") if warm else message("edge-limit-glass", glass=glass),
            ),
            Readout("glass_limit", "", min(state.glass, 1.0), "relative humidity", hidden=True),
            Readout(
                "outdoor_warmed",
                message("outdoor-warmed", room=self.say("{70 degF}")),
                min(alone, 1.0),
                "relative humidity",
            ),
            Readout("from_outside", message("from-outside"), state.carried(state.outdoor.vapor_pressure), "mass flow"),
        ]

    def judge(self, state: HouseInBalance) -> Verdict:
        """The windows, the edge before the middle; and the walls, which bound the room where no glass is cold."""
        found = []
        for id, value in humidities(state.humidity, state.edge, state.glass).items():
            limit = criterion(id)
            found.append(Finding(id, PLACES[id], value, limit, limit.state(value)))
        return verdict("window", found)

    def says(self, state: HouseInBalance) -> str:
        """Where the water comes from, and what the window shows of it."""
        inflow = state.carried(state.outdoor.vapor_pressure)
        share = inflow / (inflow + state.production)
        if state.humidity >= 1:
            if state.outdoor.temperature < ROOM_TEMPERATURE:
                return message("runs-down")
            if state.outdoor.vapor_pressure >= air.saturation_vapor_pressure(ROOM_TEMPERATURE):
                return message("too-damp-outdoors")
            return message("drops-all-over")
        return message(
            "settles",
            humidity=self.show(state.humidity, "relative humidity"),
            indoors=bool(share < 0.5),
            **_shown(self.judge(state)),
        )

    def strips(self, at: SimpleNamespace, state: HouseInBalance) -> dict[str, Any]:
        """What the window shows, along each control."""
        limits = {id: criterion(id) for id in PLACES}

        def states(production=at.Water, fresh_air=at.Fresh_air, temperature=at.T_out, humidity=at.RH_out):
            cold, damp = (_many(each) for each in (temperature, humidity))
            there = Air(cold, damp)
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

    def steps(self, state: HouseInBalance) -> list[Step]:
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
        room = self.say("{70 degF}")
        return [
            Step(message("step-outdoors"), "", show(outside, "pressure")),
            Step(
                message("step-people", one=units.written(one, ".4g"), room=room),
                f"{one:.4g} × {show(state.production, 'mass flow')} / {show(state.fresh_air, 'air flow')}",
                show(excess, "pressure"),
            ),
            Step(
                message("step-humidity"),
                f"({show(outside, 'pressure')} + {show(excess, 'pressure')}) / {show(most, 'pressure')}",
                show((outside + excess) / most, "relative humidity"),
            ),
            hand.plane(
                message("step-edge"),
                ROOM_TEMPERATURE,
                state.outdoor.temperature,
                FILM,
                EDGE,
                self.unit_system,
            ),
            Step(
                message("step-fogs"),
                f"{show(state.edge * most, 'pressure')} / {show(most, 'pressure')}",
                show(state.edge, "relative humidity"),
            ),
        ]


def _many(values: Any) -> Any:
    """The places along a slider, or one place, as an array."""
    return np.asarray(values, dtype=float)


def _shown(judged: Verdict) -> dict[str, str]:
    """What the panes and the walls of a house show whose air is below 100 % RH, as facts of its sentence."""
    edge, glass, wall = (found.state for id in PLACES if (found := judged.finding(id)))
    panes = "runs" if glass == WET else "fogs" if edge == DAMP else "clear"
    return {"panes": panes, "mold": "none" if wall == DRY else "alone" if edge == DRY else "too"}


PAGE = WinterHouse
