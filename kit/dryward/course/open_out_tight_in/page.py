"""Open out, tight in: the map of winter gain over two permeances, and where you are on it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import building, language
from dryward.building import FixedMembrane
from dryward.checks import Floats
from dryward.course.open_out_tight_in.beats import PLAY, SPRING, days, told_days
from dryward.course.open_out_tight_in.scene import BalanceMap, GainMap
from dryward.panels import hand, readouts
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import limits, steady
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import DAMP, DRY, Verdict
from dryward.weather import Air

message = language.beside(__file__)

ROOM_TEMPERATURE, OUTDOOR_HUMIDITY = to_si(70.0, "degF"), 0.8
_OUT = standard("T_out")
#: This balance is about winter: vapor from the room.
WINTER = replace(_OUT, us=replace(_OUT.us, right=50), si=replace(_OUT.si, right=10))
#: Axes of the map [kg/(s m2 Pa)].
AXIS = to_si(np.geomspace(0.05, 100.0, 27), "perm")


@dataclass(frozen=True)
class RoofOnMap:
    """One roof, the airs, its steady state, and the map around it."""

    roof: building.Assembly
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    gains: Floats
    inner: float
    outer: float

    #: Permeances that the map is worked out for [kg/(s m2 Pa)].
    inner_axis: Floats
    outer_axis: Floats

    @property
    def balance(self) -> float | None:
        """The least outer permeance with no gain at this inner one [kg/(s m2 Pa)]; None beyond the map."""
        column = steady_column(self.roof, self.indoor, self.outdoor)
        dry = np.flatnonzero(column <= 0)
        return float(FINE[dry[0]]) if dry.size else None


#: Outer permeances tried for the balance [kg/(s m2 Pa)].
FINE = to_si(np.geomspace(0.05, 1000.0, 300), "perm")


def steady_column(roof: building.Assembly, indoor: Air, outdoor: Air) -> Floats:
    """Gain at each of `FINE` for the outer layer, the inner one as it is [kg/(s m2)]."""
    return steady.sweep(roof, indoor, outdoor, outer_layer_permeance=FINE).gain


class OpenOutTightIn(Page):
    """A contour map and a point."""

    id = "open-out-tight-in"
    handles = (WINTER, "RH_in", "M_in", standard("M_out").starting(1.5, 2.3))
    draws = BalanceMap
    play = PLAY
    # A new map is a new drawing: while the weather moves, the point and the
    # numbers follow at once and the map when the slider rests.
    slow = True

    def preview(self, at: SimpleNamespace) -> RoofOnMap | None:
        """The roof here, on the map as it stands; the stage's map is quickly drawn and moves along."""
        return self._state(at, None if self.stage.on else self._kept[1])

    def compute(self, at: SimpleNamespace) -> RoofOnMap:
        """The roof here, and every other pair of permeances in the same weather."""
        return self._state(at, None)

    def _state(self, at, gains):
        roof = building.preset("vented-vault")
        roof = roof.replace("inner membrane", FixedMembrane(at.M_in)).replace("outer layer", FixedMembrane(at.M_out))
        indoor, outdoor = Air(ROOM_TEMPERATURE, at.RH_in), Air(at.T_out, OUTDOOR_HUMIDITY)
        gains = self._map(roof, indoor, outdoor) if gains is None else gains
        return RoofOnMap(
            roof, indoor, outdoor, steady.profile(roof, indoor, outdoor), gains, at.M_in, at.M_out, AXIS, AXIS
        )

    def _map(self, roof, indoor, outdoor):
        # The map follows the weather and the room only: moving on it costs nothing.
        key = (outdoor.temperature, indoor.relative_humidity)
        if getattr(self, "_kept", (None,))[0] != key:
            found = steady.sweep(
                roof, indoor, outdoor, inner_membrane_permeance=AXIS[None, :], outer_layer_permeance=AXIS[:, None]
            )
            self._kept = (key, found.gain)
        return self._kept[1]

    def views(self, state: RoofOnMap) -> GainMap:
        """The map and the point."""
        return GainMap(AXIS, AXIS, state.gains, state.inner, state.outer, state.profile.gain)

    def given(self, state: RoofOnMap) -> str:
        """What no control moves."""
        room, humidity = self.held(ROOM_TEMPERATURE, "temperature"), self.held(OUTDOOR_HUMIDITY, "relative humidity")
        return message("given", room=room, humidity=humidity, roof=self.roof_held(state.roof))

    def numbers(self, state: RoofOnMap) -> list[Readout]:
        """Gain, the outer face, how open outside it is and would have to be, and how long it dries once wet."""
        face = state.profile.face("outer layer", 0)
        balance = state.balance
        return [
            Readout("gain", message("gain"), state.profile.gain, "vapor flux", both=True),
            Readout(
                "face_humidity",
                message("face-humidity"),
                float(state.profile.relative_humidity[face]),
                "relative humidity",
                note=self.show(state.profile.temperature[face], "temperature"),
            ),
            Readout(
                "ratio",
                message("ratio"),
                state.outer / state.inner,
                text=_compared(state.outer / state.inner),
                note=message("ratio-note"),
            ),
            Readout(
                "needed",
                message("needed"),
                balance,
                "permeance",
                text=message("needed-any")
                if balance == FINE[0]
                else ""
                if balance
                else message("needed-over", most=self.show(FINE[-1], "permeance")),
                note=message("needed-any-note")
                if balance == FINE[0]
                else message("needed-note", compared=_compared(balance / state.inner))
                if balance
                else message("needed-over-note"),
            ),
            Readout(
                "dries",
                message("dries"),
                days(state.roof),
                text=message("days", days=told_days(state.roof)),
                note=message("dries-note", spring=self.show(SPRING[1].temperature, "temperature")),
            ),
        ]

    def judge(self, state: RoofOnMap) -> Verdict:
        """The roof in a winter that never ends."""
        return state.profile.verdict

    def says(self, state: RoofOnMap) -> str:
        """What the pair does in this weather."""
        balance, gain, judged = state.balance, state.profile.gain, self.judge(state)
        if gain > 0:
            stop = (
                message(
                    "stop-it",
                    balance=self.show(balance, "permeance"),
                    compared=_compared(balance / state.inner),
                )
                if balance
                else message("nothing-stops-it")
            )
            return message("gains", little=judged.state == DAMP, gain=self.show(gain, "vapor flux"), stop=stop)
        assert balance is not None  # this roof is one that gains nothing
        dry = judged.state == DRY
        settles = "" if dry else readouts.settles(judged, self.unit_system)
        if balance <= FINE[0]:
            return message("gains-nothing-ever", dry=dry, settles=settles)
        return message(
            "gains-nothing",
            compared=_compared(state.outer / state.inner),
            balance=self.show(balance, "permeance"),
            system=self.unit_system,
            dry=dry,
            settles=settles,
        )

    def strips(self, at: SimpleNamespace, state: RoofOnMap) -> dict[str, Any]:
        """The state along each slider."""
        keys = {
            "T_out": "outdoor_temperature",
            "RH_in": "indoor_relative_humidity",
            "M_in": "inner_membrane_permeance",
            "M_out": "outer_layer_permeance",
        }
        found = limits.dry_ranges(
            state.roof, state.indoor, state.outdoor, {key: self.along(name) for name, key in keys.items()}
        )
        return {name: Strip(tuple(found[key].states)) for name, key in keys.items()}

    def steps(self, state: RoofOnMap) -> list[Step]:
        """What arrives at the outer face, and what can leave."""
        profile = state.profile
        return hand.stays(profile, state.indoor, state.outdoor, profile.face("outer layer", "inner"), self.unit_system)


def _compared(ratio: float) -> str:
    if abs(ratio - 1) < 0.05:
        return message("just-as-open")
    return (
        message("as-open", ratio=hand.times(ratio)) if ratio > 1 else message("as-tight", ratio=hand.times(1 / ratio))
    )


PAGE = OpenOutTightIn
