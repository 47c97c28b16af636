"""Temperature through layers: it falls where the R is."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, building, language
from dryward.building import AirSpace, Assembly, Layer, Material
from dryward.course.temperature_through_layers.scene import Ladder, LayerTemperatures, from_profile
from dryward.panels import hand
from dryward.panels.controls import Choice, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import steady
from dryward.teaching.words import Step
from dryward.units import to_si, written
from dryward.verdict import DRY, WET, Verdict, of_face, states_of_faces
from dryward.verdict.words import told
from dryward.weather import Air

message = language.beside(__file__)

ROOM, OUTDOOR_HUMIDITY = Air(to_si(70.0, "degF"), 0.4), 0.8
#: A layer with less than this counts as not there [m2 K/W].
NOTHING = 1e-3
#: R of each inch of the outer board, for its thickness in the drawing.
BOARD = to_si(4.0, "R") / to_si(1.0, "in")

AXIS = Choice(
    "Axis",
    "temperature_through_layers.draw-against",
    (("depth", "temperature_through_layers.inches"), ("resistance", "temperature_through_layers.r-value")),
)


@dataclass(frozen=True)
class WallInCold:
    """A wall, its temperatures, and the axis they are drawn on."""

    wall: Assembly
    profile: steady.Profile
    outdoor: Air
    axis: str

    @property
    def node(self) -> int:
        """The inner face of the sheathing."""
        return self.profile.face("sheathing", 0)

    @property
    def temperature(self) -> float:
        """Of that face [degC]."""
        return float(self.profile.temperature[self.node])

    @property
    def full(self) -> float:
        """The most vapor pressure there [Pa]."""
        return float(self.profile.saturation_vapor_pressure[self.node])

    @property
    def share(self) -> float:
        """Of the R that stands outside that face [-]."""
        resistance = self.profile.thermal_resistance
        return float(1 - resistance[self.node] / resistance[-1])


def wall_with(fill: float, outside: float) -> Assembly:
    """A 2x6 wall with the R of its bay and of a board outside the sheathing [m2 K/W]."""
    inch = to_si(1.0, "in")
    gypsum = building.material("gypsum-board")
    gypsum = dataclasses.replace(gypsum, conductivity=0.5 * inch / to_si(0.45, "R"))
    osb = dataclasses.replace(building.material("teaching-osb"), conductivity=7 / 16 * inch / to_si(0.62, "R"))
    filled: Material | AirSpace
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
    return Assembly("wall", tuple(layers), to_si(0.68, "R"), to_si(0.17, "R"), slope=90)


class TemperatureThroughLayers(Page):
    """The line through a wall, against inches or against R."""

    id = "temperature-through-layers"
    handles = ("T_out", standard("R_ins").starting(20, 3.5), "R_out", AXIS)
    draws = Ladder

    def compute(self, at: SimpleNamespace) -> WallInCold:
        """One steady state of the wall."""
        wall, outdoor = wall_with(at.R_ins, at.R_out), Air(at.T_out, OUTDOOR_HUMIDITY)
        return WallInCold(wall, steady.profile(wall, ROOM, outdoor), outdoor, at.Axis)

    def views(self, state: WallInCold) -> LayerTemperatures:
        """Pointing at the room side of the sheathing."""
        return from_profile(state.wall, state.profile, "sheathing", state.axis)

    def given(self, state: WallInCold) -> str:
        """What no control moves."""
        humidity = self.held(OUTDOOR_HUMIDITY, "relative humidity")
        return message("given", room=self.air_held(ROOM), humidity=humidity)

    def numbers(self, state: WallInCold) -> list[Readout]:
        """The plane, the drywall, the total R, how much stands outside, and the room air that wets that plane."""
        profile = state.profile
        limit = state.full / (ROOM.vapor_pressure / ROOM.relative_humidity)
        humidity = self.show(ROOM.relative_humidity, "relative humidity")
        dew = self.show(ROOM.dew_point, "temperature")
        return [
            Readout("sheathing", message("sheathing"), state.temperature, "temperature", both=True),
            Readout("drywall", message("drywall"), float(profile.temperature[1]), "temperature", both=True),
            Readout("total", message("total"), state.wall.thermal_resistance, "thermal resistance"),
            Readout("share", message("share"), state.share, "relative humidity"),
            Readout(
                "humidity_limit", message("humidity-limit"), min(limit, 1.0), "relative humidity",
                text="" if limit < 1 else message("humidity-limit-none"),
                note=message("humidity-limit-note", humidity=humidity, dew=dew)
                if limit < 1 else message("humidity-limit-warm"),
            ),
            Readout("there", "", ROOM.vapor_pressure / state.full, "relative humidity", hidden=True),
        ]  # fmt: skip

    def judge(self, state: WallInCold) -> Verdict:
        """The face of the sheathing, if room air gets there and stays."""
        sheathing = state.wall.layer("sheathing").substance
        return of_face(state.temperature, ROOM.vapor_pressure, state.full, sheathing, "sheathing")

    def says(self, state: WallInCold) -> str:
        """The share of R outside is the share of the way up; and what room air would do there."""
        share = self.show(state.share, "relative humidity")
        return message(
            "stands",
            share=share,
            temperature=self.show(state.temperature, "temperature"),
            leak=self._room_air(self.judge(state)),
        )

    def _room_air(self, judged: Verdict) -> str:
        """What room air would do that leaks to the face, from the verdict of it."""
        face, wood = judged.finding("face-humidity"), judged.finding("wood-moisture")
        assert face is not None
        if face.state == WET:
            over = bool(face.value >= 1.005)
            return message("leak-wets", over=over, times=written(face.value, ".3g"), frost=bool(face.frost))
        there = self.show(face.value, "relative humidity")
        assert wood is not None  # air that stays as it is settles in the wood
        settles = told(wood, judged.method)
        return message("leak-stays", humidity=there, settles=settles, mold=face.state != DRY)

    def strips(self, at: SimpleNamespace, state: WallInCold) -> dict[str, Any]:
        """What room air would do to the sheathing, along each slider."""
        sheathing = state.wall.layer("sheathing").substance

        def states(**one):
            values = {"fill": at.R_ins, "outside": at.R_out, "cold": at.T_out} | one
            fill, outside, cold = (np.asarray(values[key], dtype=float) for key in ("fill", "outside", "cold"))
            before, after = to_si(0.68 + 0.45, "R") + fill, to_si(0.62 + 0.17, "R") + outside
            face = ROOM.temperature - (ROOM.temperature - cold) * before / (before + after)
            found = states_of_faces(face, ROOM.vapor_pressure, air.saturation_vapor_pressure(face), sheathing)
            return Strip(tuple(found))

        return {
            "T_out": states(cold=self.along("T_out")),
            "R_ins": states(fill=self.along("R_ins")),
            "R_out": states(outside=self.along("R_out")),
        }

    def steps(self, state: WallInCold) -> list[Step]:
        """Add up R from the room, take that share of the difference, and bring room air there."""
        profile, show, node = state.profile, self.show, state.node
        return [
            Step(
                message("step-before"),
                "",
                show(profile.thermal_resistance[node], "thermal resistance"),
            ),
            Step(message("step-total"), "", show(profile.thermal_resistance[-1], "thermal resistance")),
            hand.plane(
                message("step-plane"),
                ROOM.temperature,
                state.outdoor.temperature,
                profile.thermal_resistance[node],
                profile.thermal_resistance[-1],
                self.unit_system,
            ),
            hand.pressure(
                message("step-pressure"),
                ROOM.temperature,
                ROOM.relative_humidity,
                ROOM.vapor_pressure / ROOM.relative_humidity,
                self.unit_system,
            ),
            Step(message("step-most"), "", show(state.full, "pressure")),
            Step(
                message("step-there", over=bool(ROOM.vapor_pressure > state.full)),
                f"{show(ROOM.vapor_pressure, 'pressure')} / {show(state.full, 'pressure')}",
                show(ROOM.vapor_pressure / state.full, "relative humidity"),
            ),
        ]


PAGE = TemperatureThroughLayers
