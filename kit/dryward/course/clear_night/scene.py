"""A clear night: the covering cools below the air, and below its dew point."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.patches import Polygon, Rectangle

from dryward import language
from dryward.checks import Floats
from dryward.physics.sky import Night
from dryward.pictures import style
from dryward.pictures.drawing import Entry, Judged, LivePicture, ceiling, sentences
from dryward.units import written

message = language.beside(__file__)

#: Tops of the bar of frost, in the unit shown.
_MOST = (50, 100, 200, 500, 1000, 2000, 5000)


@dataclass(frozen=True)
class NightUnderSky(Judged):
    """One night."""

    #: Since sunset [h], rising.
    hours: Floats
    #: [degC]; of the covering its lower face, with the frost that is on it. The dew point is a frost point below
    #: 0 degC.
    covering: Floats
    air: Floats
    dew_point: Floats
    #: Water on the underside at the end of the night [kg/m2].
    frost: float


def from_night(night: Night) -> NightUnderSky:
    """The state of a night that `physics` has worked out."""
    return NightUnderSky(
        night.hour, night.underside_temperature, night.air_temperature, night.frost_point, float(night.frost[-1])
    )


class NightPicture(LivePicture[NightUnderSky]):
    """Three temperatures through a night, and a bar of frost."""

    size = (860, 400)

    def _limits(self, state: NightUnderSky) -> tuple[float, float]:
        """The ends of the temperature axis, in whole steps of the reader's unit [degC]."""
        every = np.concatenate([np.asarray(s, dtype=float) for s in (state.covering, state.air, state.dew_point)])
        step, zero = (10 / 1.8, -160 / 9) if self.unit_system == "us" else (5.0, 0.0)
        low = np.floor((every.min() - zero) / step) * step + zero
        high = np.ceil((every.max() - zero) / step + 0.01) * step + zero
        return float(low), float(high)

    def signature(self, state: NightUnderSky) -> Any:
        return (
            self._limits(state),
            ceiling(self.shown(state.frost, "area density"), _MOST),
            (float(state.hours[0]), float(state.hours[-1])),
        )

    def draw_static(self, state: NightUnderSky) -> None:
        limits, most, (start, end) = self.signature(state)
        left, right = self.columns(0.78, 0.22, rows=(0.7, 0.3))
        entries: list[Entry] = [("outdoor air", None), ("temperature", message("covering")),
                   ("dew point", message("dew-point")), ("frost", message("frosting"))]  # fmt: skip
        foot = self.key(entries, left[0], left[3], left[2])
        self.ax = ax = self.graph(
            (left[0], left[1], left[2], foot - 2),
            message("hours-after-sunset"),
            message("temperature-axis", unit=self.symbol("temperature")),
        )
        ax.set_xlim(start, end)
        ax.set_ylim(*(self.shown(t, "temperature") for t in limits))
        band: dict[str, Any] = {"closed": True, "facecolor": "none", "edgecolor": self.color("frost"), "linewidth": 0,
                "hatch": style.look("frost").hatch}  # fmt: skip
        self.band = self.patch(ax, Polygon(np.zeros((3, 2)), **band))
        self.lines = [
            self.moving(ax.plot([], [], **self.stroke(q))[0]) for q in ("outdoor air", "dew point", "temperature")
        ]  # fmt: skip
        bar = self.graph(right, message("frost-bar"), self.symbol("area density"), "y")
        bar.set_xlim(0, 1)
        bar.set_xticks([])
        bar.set_ylim(0, most)
        color = self.color("frost")
        look: dict[str, Any] = {"facecolor": self.background, "edgecolor": color, "linewidth": 1.6}
        self.frost = self.patch(bar, Rectangle((0.2, 0), 0.6, 0, hatch=style.look("frost").hatch, **look))

    def draw_moving(self, state: NightUnderSky) -> None:
        x = np.asarray(state.hours, dtype=float)
        covering, air, dew = (
            self.shown(np.asarray(s, dtype=float), "temperature") for s in (state.covering, state.air, state.dew_point)
        )  # fmt: skip
        for line, y in zip(self.lines, (air, dew, covering), strict=True):
            line.set_data(x, y)
        below = np.minimum(covering, dew)
        self.band.set_xy(np.concatenate([np.column_stack([x, dew]), np.column_stack([x, below])[::-1]]))
        self.band.set_visible(bool((covering < dew).any()))
        self.frost.set_height(self.shown(state.frost, "area density"))

    def alt(self, state: NightUnderSky) -> str:
        covering, air, dew = (np.asarray(s, dtype=float) for s in (state.covering, state.air, state.dew_point))
        coldest = int(np.argmin(covering))
        hours = np.asarray(state.hours, dtype=float)
        coldest_at = self.show(covering[coldest], "temperature")
        below = float(np.trapezoid((covering < dew).astype(float), hours))
        return sentences(
            message(
                "alt-night",
                steady=bool(np.ptp(self.shown(covering, "temperature")) < 0.05),
                hours=written(hours[-1] - hours[0], ".0f"),
                when=written(hours[coldest], ".0f"),
                coldest=coldest_at,
                air=self.show(air[coldest], "temperature"),
            ),
            message(
                "alt-water",
                wet=below > 0.5,
                below=round(below),
                frost=self.show(state.frost, "area density"),
            ),
        )
