"""Which way vapor goes: by the two vapor pressures, whatever RH and warmth say."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace

from dryward import language, units
from dryward.course.which_way_vapor_goes.beats import PLAY
from dryward.course.which_way_vapor_goes.scene import AirsBesideCeiling, Rooms
from dryward.course.which_way_vapor_goes.stage_scene import under_floor, way
from dryward.panels import hand
from dryward.panels.controls import Scale, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.teaching.words import Step
from dryward.weather import Air

message = language.beside(__file__)


@dataclass(frozen=True)
class AirsApart:
    """The air on both sides of a board."""

    inside: Air
    outside: Air

    @property
    def push(self) -> float:
        """Vapor pressure inside minus outside [Pa]."""
        return self.inside.vapor_pressure - self.outside.vapor_pressure


#: As dry as a desert's.
OUTDOOR_HUMIDITY = replace(standard("RH_out"), us=Scale(10, 100, 90, 1), si=Scale(10, 100, 90, 1))


class WhichWayVaporGoes(Page):
    """Four sliders, two rooms and an arrow; it starts where its bet does."""

    id = "which-way-vapor-goes"
    handles = (
        "T_out",
        OUTDOOR_HUMIDITY,
        "T_in",
        standard("RH_in").starting(35),
    )
    draws = Rooms
    play = PLAY

    def compute(self, at: SimpleNamespace) -> AirsApart:
        """Two airs; nothing more is needed for the direction."""
        return AirsApart(Air(at.T_in, at.RH_in), Air(at.T_out, at.RH_out))

    def views(self, state: AirsApart) -> AirsBesideCeiling:
        """Two rooms."""
        return AirsBesideCeiling(state.inside, state.outside)

    def given(self, state: AirsApart) -> str:
        """What no control moves."""
        return message("given")

    def numbers(self, state: AirsApart) -> list[Readout]:
        """Both pressures, the push, and what RH and warmth alone would say."""
        shown, also = (
            self._push(state, system) for system in (self.unit_system, "si" if self.unit_system == "us" else "us")
        )
        return [
            Readout("inside", message("inside"), state.inside.vapor_pressure, "pressure", both=True),
            Readout("outside", message("outside"), state.outside.vapor_pressure, "pressure", both=True),
            Readout("push", message("push"), state.push, "pressure", text=shown, note=also),
            Readout("way", message("way"), None, text=message("way-said", way=way(state.push))),
            Readout(
                "folk",
                message("folk"),
                None,
                text=message("folk-said", way=_folk(state)),
                note=message("warmth-said", way=_by_warmth(state)),
            ),
        ]

    def _push(self, state: AirsApart, system: str) -> str:
        """The push as the difference of the two pressures that stand beside it."""
        return units.difference(state.inside.vapor_pressure, state.outside.vapor_pressure, "pressure", system)

    def says(self, state: AirsApart) -> str:
        """The way it goes, and whether RH and warmth agree."""
        push = state.push
        high, low = (state.inside, state.outside) if push > 0 else (state.outside, state.inside)
        apart = units.difference(high.vapor_pressure, low.vapor_pressure, "pressure", self.unit_system)
        if way(push) == "none":
            return message("almost-no-push", push=apart)
        rh = bool(high.relative_humidity < low.relative_humidity)
        warmth = bool(high.temperature < low.temperature)
        against = "both" if rh and warmth else "rh" if rh else "warmth" if warmth else "neither"
        return message(
            "goes",
            way=way(push),
            against=against,
            push=apart,
            floor=under_floor(self.stage),
        )

    def steps(self, state: AirsApart) -> list[Step]:
        """Two products and a difference."""
        lines = [
            hand.pressure(
                words, air.temperature, air.relative_humidity,
                air.vapor_pressure / air.relative_humidity, self.unit_system,
            )
            for words, air in ((message("step-inside"), state.inside), (message("step-outside"), state.outside))
        ]  # fmt: skip
        show = self.show
        inside, outside = (show(each.vapor_pressure, "pressure") for each in (state.inside, state.outside))
        return [
            *lines,
            Step(message("step-push"), f"{inside} − {outside}", self._push(state, self.unit_system)),
        ]


def _folk(state: AirsApart) -> str:
    """The way that the RH rule would say."""
    return _from_more(state.inside.relative_humidity - state.outside.relative_humidity, 0.005)


def _by_warmth(state: AirsApart) -> str:
    """The way from warm to cold."""
    return _from_more(state.inside.temperature - state.outside.temperature, 0.25)


def _from_more(gap: float, least: float) -> str:
    """The way from the side that has more of something, inside minus outside."""
    if abs(gap) < least:
        return "none"
    return "out" if gap > 0 else "in"


PAGE = WhichWayVaporGoes
