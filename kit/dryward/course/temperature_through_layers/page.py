"""Temperature through layers: it falls where the R is, and where it is low enough water gathers."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

from dryward import language, units
from dryward.building import Assembly
from dryward.building.framing import WholeAssembly, with_framing
from dryward.course.temperature_through_layers.beats import PLAY
from dryward.course.temperature_through_layers.scene import Ladder, LayerTemperatures, from_profile
from dryward.course.temperature_through_layers.wall import FILM, ROOM, SHEATHING, WALLS, face_layer, wall_of
from dryward.panels import hand, readouts
from dryward.panels.controls import Choice, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import limits, steady
from dryward.teaching.words import Step
from dryward.verdict import Verdict
from dryward.weather import Air

message = language.beside(__file__)

OUTDOOR_HUMIDITY = 0.8

WALL = Choice(
    "Wall",
    "temperature_through_layers.wall",
    tuple(
        (each, f"temperature_through_layers.wall-{each}-us", f"temperature_through_layers.wall-{each}-si")
        for each in WALLS
    ),
)
AXIS = Choice(
    "Axis",
    "temperature_through_layers.draw-against",
    (("depth", "temperature_through_layers.inches"), ("resistance", "temperature_through_layers.r-value")),
)


@dataclass(frozen=True)
class WallInCold:
    """A wall, what the physics say of it between its studs and with them, and the axis it is drawn on."""

    wall: Assembly
    profile: steady.Profile
    outdoor: Air
    whole: WholeAssembly
    axis: str

    @property
    def layer(self) -> str:
        """The layer whose inner face is asked about."""
        return face_layer(self.wall)

    @property
    def node(self) -> int:
        """The place of that face."""
        return self.profile.face(self.layer, 0)

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

    @property
    def where(self) -> str:
        """Which end of the bay that face is: the coldest in winter, the warmest when it is hot outdoors."""
        if self.outdoor.temperature == ROOM.temperature:
            return "even"
        return "coldest" if self.outdoor.temperature < ROOM.temperature else "warmest"

    @property
    def gathers(self) -> str:
        """Whether water gathers at that face, only elsewhere, or nowhere."""
        nodes = [plane.node for plane in self.profile.wet_planes]
        return "there" if self.node in nodes else "elsewhere" if nodes else "nowhere"


class TemperatureThroughLayers(Page):
    """The line through a framed wall, against inches or against R, and the water at its coldest face."""

    id = "temperature-through-layers"
    handles = (
        standard("T_out"),
        WALL,
        replace(standard("R_out"), words="temperature_through_layers.board-r"),
        AXIS,
    )
    draws = Ladder
    play = PLAY

    def compute(self, at: SimpleNamespace) -> WallInCold:
        """One steady state of the wall, between the studs; and its R with them."""
        wall = wall_of(at.Wall, at.R_out)
        outdoor = Air(at.T_out, OUTDOOR_HUMIDITY)
        return WallInCold(wall, steady.profile(wall, ROOM, outdoor), outdoor, with_framing(wall), at.Axis)

    def views(self, state: WallInCold) -> LayerTemperatures:
        """Pointing at the face that is asked about."""
        return from_profile(state.wall, state.profile, state.layer, state.axis)

    def given(self, state: WallInCold) -> str:
        """What no control moves."""
        humidity = self.held(OUTDOOR_HUMIDITY, "relative humidity")
        film, sheathing = (self.held(each, "permeance") for each in (FILM, SHEATHING))
        return message("given", room=self.air_held(ROOM), humidity=humidity, film=film, sheathing=sheathing)

    def numbers(self, state: WallInCold) -> list[Readout]:
        """The face, the share outside it, what gathers, the R of the whole wall, and the room air that wets it."""
        whole, layer = state.whole, language.called(state.layer)
        limit = state.full / (ROOM.vapor_pressure / ROOM.relative_humidity)
        humidity = self.show(ROOM.relative_humidity, "relative humidity")
        dew = self.show(ROOM.dew_point, "temperature")
        between = self.show(whole.cavity, "thermal resistance")
        return [
            Readout(
                "face",
                message("face"),
                state.temperature,
                "temperature",
                note=message("face-note", layer=layer, where=state.where),
            ),
            Readout("share", message("share"), state.share, "relative humidity", text=self._share(state)),
            readouts.gained(message("gain"), state.profile, self.judge(state), self.unit_system),
            Readout(
                "whole",
                message("whole"),
                whole.parallel,
                "thermal resistance",
                note=message(
                    "whole-note",
                    wood=bool(whole.share),
                    between=between,
                    share=self.held(whole.share, "relative humidity"),
                ),
            ),
            Readout(
                "humidity_limit",
                message("humidity-limit"),
                min(limit, 1.0),
                "relative humidity",
                text="" if limit < 1 else message("humidity-limit-none"),
                note=message("humidity-limit-note", humidity=humidity, dew=dew)
                if limit < 1
                else message("humidity-limit-warm"),
            ),
            Readout("total", "", whole.cavity, "thermal resistance", hidden=True),
        ]

    def judge(self, state: WallInCold) -> Verdict:
        """The wall in a winter that never ends."""
        return state.profile.verdict

    def says(self, state: WallInCold) -> str:
        """The share of R outside is the share of the way up; and what gathers."""
        judged, system = self.judge(state), self.unit_system
        return message(
            "stands",
            layer=language.called(state.layer),
            share=self._share(state),
            temperature=self.show(state.temperature, "temperature"),
            gathers=state.gathers,
            water=readouts.water(state.profile, judged, system),
        )

    def _share(self, state: WallInCold) -> str:
        """So many digits that the temperature can be worked out from it."""
        return self.show(state.share, "relative humidity", 1)

    def strips(self, at: SimpleNamespace, state: WallInCold) -> dict[str, Any]:
        """The state along each control that moves it."""
        found = limits.dry_ranges(state.wall, ROOM, state.outdoor, {"outdoor_temperature": self.along("T_out")})

        def judged(wall: str, resistance: float) -> str:
            return steady.profile(wall_of(wall, resistance), ROOM, state.outdoor).verdict.state

        return {
            "T_out": Strip(tuple(found["outdoor_temperature"].states)),
            "R_out": Strip(tuple(judged(at.Wall, each) for each in self.along("R_out", 16))),
            "Wall": Strip(tuple(judged(each, at.R_out) for each in WALLS)),
        }

    def steps(self, state: WallInCold) -> list[Step]:
        """Add up R from the room, take that share of the difference; the wood beside it; and what stays."""
        profile, show, node, whole = state.profile, self.show, state.node, state.whole
        layer = language.called(state.layer)
        lines = [
            Step(message("step-before", layer=layer), "", show(profile.thermal_resistance[node], "thermal resistance")),
            Step(message("step-total"), "", show(profile.thermal_resistance[-1], "thermal resistance")),
            hand.plane(
                message("step-plane"),
                ROOM.temperature,
                state.outdoor.temperature,
                profile.thermal_resistance[node],
                profile.thermal_resistance[-1],
                self.unit_system,
            ),
        ]
        if whole.share:
            unit = units.shown_unit("thermal resistance", self.unit_system).name
            between, through = (hand.plain(units.from_si(each, unit)) for each in (whole.cavity, whole.through_framing))
            wood, rest = (hand.plain(each) for each in (whole.share, 1.0 - whole.share))
            lines.append(
                Step(
                    message("step-whole"),
                    f"1 / ({rest} / {between} + {wood} / {through})",
                    show(whole.parallel, "thermal resistance"),
                )
            )
        return [*lines, *hand.stays(profile, ROOM, state.outdoor, node, self.unit_system)]


PAGE = TemperatureThroughLayers
