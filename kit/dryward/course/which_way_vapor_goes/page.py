"""Which way vapor goes: by the two vapor pressures, whatever RH and warmth say."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace

from dryward.course.which_way_vapor_goes.scene import AirsBesideCeiling, Rooms
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.teaching.words import Step
from dryward.weather import Air

#: Pushes below this say "almost none" [Pa].
ALMOST_NONE = 50.0


@dataclass(frozen=True)
class State:
    """The air on both sides of a board."""

    inside: Air
    outside: Air

    @property
    def push(self):
        """Vapor pressure inside minus outside [Pa]."""
        return self.inside.vapor_pressure - self.outside.vapor_pressure


class WhichWayVaporGoes(Page):
    """Four sliders, two rooms and an arrow."""

    id = "which-way-vapor-goes"
    handles = (
        "T_out",
        standard("RH_out").starting(50, 50),
        "T_in",
        standard("RH_in").starting(50, 50),
    )
    draws = Rooms

    def compute(self, at: SimpleNamespace) -> State:
        """Two airs; nothing more is needed for the direction."""
        return State(Air(at.T_in, at.RH_in), Air(at.T_out, at.RH_out))

    def views(self, state):
        """Two rooms."""
        return AirsBesideCeiling(state.inside, state.outside)

    def numbers(self, state: State) -> list[Readout]:
        """Both pressures, the push, and what RH and warmth alone would say."""
        return [
            Readout("inside", "Vapor pressure inside", state.inside.vapor_pressure, "pressure", both=True),
            Readout("outside", "Vapor pressure outside", state.outside.vapor_pressure, "pressure", both=True),
            Readout("push", "Push, inside to outside", state.push, "pressure", both=True, note=""),
            Readout("way", "Vapor goes", None, text=_way(state.push)),
            Readout("folk", "The RH rule would say", None, text=_folk(state)),
        ]

    def says(self, state: State) -> str:
        """The way it goes, and whether RH and warmth agree."""
        push = state.push
        if abs(push) < ALMOST_NONE:
            return f"Almost no push: {self.show(abs(push), 'pressure')} either way, whatever the two RH numbers say."
        way = "out" if push > 0 else "in"
        high, low = (state.inside, state.outside) if push > 0 else (state.outside, state.inside)
        sides = ("outdoor air", "room air") if push > 0 else ("room air", "outdoor air")
        against = []
        if high.relative_humidity < low.relative_humidity:
            against.append("from low RH to high RH")
        if high.temperature < low.temperature:
            against.append("from cold to warm")
        tail = f", {' and '.join(against)}" if against else ""
        return (
            f"Vapor goes {way}{tail}: the {sides[0]} has {self.show(abs(push), 'pressure')} less than the {sides[1]}."
        )

    def steps(self, state: State) -> list[Step]:
        """Two products and a difference."""
        lines = [
            hand.pressure(
                f"Vapor pressure {words}.", air.temperature, air.relative_humidity,
                air.vapor_pressure / air.relative_humidity, self.unit_system,
            )
            for words, air in (("inside", state.inside), ("outside", state.outside))
        ]  # fmt: skip
        show = self.show
        inside, outside = (show(each.vapor_pressure, "pressure") for each in (state.inside, state.outside))
        return [*lines, Step("The push: inside minus outside.", f"{inside} − {outside}", show(state.push, "pressure"))]


def _way(push):
    if abs(push) < ALMOST_NONE:
        return "hardly at all"
    return "out" if push > 0 else "in"


def _folk(state):
    gap = state.inside.relative_humidity - state.outside.relative_humidity
    if abs(gap) < 0.005:
        return "neither way"
    return "out" if gap > 0 else "in"


PAGE = WhichWayVaporGoes
