"""Temperature through layers: it falls where the R is."""

import dataclasses
from dataclasses import dataclass

import numpy as np

from dryward import building
from dryward.building import AirSpace, Assembly, Layer
from dryward.panels import hand
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.panels.standard import standard
from dryward.physics import steady
from dryward.pictures.ladder import Ladder, from_profile
from dryward.teaching.arithmetic import Step
from dryward.units import to_si
from dryward.weather import Air

ROOM = Air(to_si(70.0, "degF"), 0.4)
#: A layer with less than this counts as not there [m2 K/W].
NOTHING = 1e-3
#: R of each inch of the outer board, for its thickness in the drawing.
BOARD = to_si(4.0, "R") / to_si(1.0, "in")

AXIS = Choice("Axis", "Draw against", (("depth", "inches"), ("resistance", "R-value")))


@dataclass(frozen=True)
class State:
    """A wall, its temperatures, and the axis they are drawn on."""

    wall: Assembly
    profile: object
    outdoor: Air
    axis: str


def wall_with(fill, outside):
    """A 2x6 wall with the R of its bay and of a board outside the sheathing [m2 K/W]."""
    inch = to_si(1.0, "in")
    gypsum = building.material("gypsum-board")
    gypsum = dataclasses.replace(gypsum, conductivity=0.5 * inch / to_si(0.45, "R"))
    osb = dataclasses.replace(building.material("teaching-osb"), conductivity=7 / 16 * inch / to_si(0.62, "R"))
    if fill > NOTHING:
        batt = building.material("teaching-insulation")
        filled = dataclasses.replace(batt, conductivity=5.5 * inch / fill)
    else:
        filled = AirSpace(max(fill, 0.0), name="empty bay")
    layers = [
        Layer(gypsum, 0.5 * inch, "gypsum board"),
        Layer(filled, 5.5 * inch, "bay"),
        Layer(osb, 7 / 16 * inch, "sheathing"),
    ]
    if outside > NOTHING:
        board = dataclasses.replace(building.material("mineral-wool-board"), conductivity=1 / BOARD)
        layers.append(Layer(board, outside / BOARD, "outer board"))
    return Assembly("wall", layers, to_si(0.68, "R"), to_si(0.17, "R"), slope=90)


class TemperatureThroughLayers(Page):
    """The line through a wall, against inches or against R."""

    id = "temperature-through-layers"
    handles = ("T_out", standard("R_ins").starting(20, 3.5), "R_out", AXIS)
    draws = Ladder

    def compute(self, at):
        """One steady state of the wall."""
        wall, outdoor = wall_with(at.R_ins, at.R_out), Air(at.T_out, 0.8)
        return State(wall, steady.profile(wall, ROOM, outdoor), outdoor, at.Axis)

    def views(self, state):
        """Pointing at the room side of the sheathing."""
        return from_profile(state.wall, state.profile, "sheathing", state.axis)

    def _share(self, state):
        rung = state.profile.face("sheathing", 0)
        total = state.profile.thermal_resistance[-1]
        return rung, 1 - state.profile.thermal_resistance[rung] / total

    def numbers(self, state):
        """The plane, its humidity limit, the total R, and how much stands outside."""
        rung, share = self._share(state)
        profile = state.profile
        temperature = float(profile.temperature[rung])
        limit = float(profile.saturation_vapor_pressure[rung]) / (ROOM.vapor_pressure / ROOM.relative_humidity)
        return [
            Readout("sheathing", "Inner face of sheathing", temperature, "temperature", both=True),
            Readout("drywall", "Wall face in the room", float(profile.temperature[1]), "temperature", both=True),
            Readout("total", "R in all, with air films", state.wall.thermal_resistance, "thermal resistance"),
            Readout("share", "R outside the sheathing", share, "relative humidity"),
            Readout(
                "humidity_limit", "Air that gets wet there", min(limit, 1.0), "relative humidity",
                text="none" if limit >= 1 else "",
                note="" if limit >= 1 else f"or more, at {self.show(ROOM.temperature, 'temperature')}",
            ),
        ]  # fmt: skip

    def says(self, state):
        """The share of R outside is the share of the way up."""
        rung, share = self._share(state)
        there = self.show(state.profile.temperature[rung], "temperature")
        return (
            f"{share * 100:.0f} % of the R stands outside the inner face of the sheathing, so that face sits "
            f"{share * 100:.0f} % of the way from the outdoor to the room temperature: {there}."
        )

    def strips(self, at, state):
        """Where the sheathing stays above the dew point of the room."""
        dew = ROOM.dew_point

        def warm(**one):
            values = {"fill": at.R_ins, "outside": at.R_out, "cold": at.T_out} | one
            fill, outside, cold = (np.asarray(values[key], dtype=float) for key in ("fill", "outside", "cold"))
            before, after = to_si(0.68 + 0.45, "R") + fill, to_si(0.62 + 0.17, "R") + outside
            return tuple(ROOM.temperature - (ROOM.temperature - cold) * before / (before + after) > dew)

        return {
            "T_out": Strip(warm(cold=self.along("T_out")), "above the room's dew point"),
            "R_ins": Strip(warm(fill=self.along("R_ins")), "above the room's dew point"),
            "R_out": Strip(warm(outside=self.along("R_out")), "above the room's dew point"),
        }

    def steps(self, state):
        """Add up R from the room, then take that share of the difference."""
        rung, _ = self._share(state)
        profile, show = state.profile, self.show
        return [
            Step(
                "R from the room to the sheathing: film, gypsum board, bay.",
                "",
                show(profile.thermal_resistance[rung], "thermal resistance"),
            ),
            Step("R of everything.", "", show(profile.thermal_resistance[-1], "thermal resistance")),
            hand.plane(
                "Go down from the room by that share.",
                ROOM.temperature,
                state.outdoor.temperature,
                profile.thermal_resistance[rung],
                profile.thermal_resistance[-1],
                self.unit_system,
            ),
        ]


PAGE = TemperatureThroughLayers
