"""A vent space: how full its air gets on the way up, and what it can carry month by month."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle

from dryward import language, units
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Box, Entry, Judged, LivePicture, arrow, ceiling, month_letters, sentences

message = language.beside(__file__)

#: Tops of the drying axis, in the unit shown.
_MOST = (50, 100, 200, 500, 1000, 2000, 5000, 10_000, 50_000)
#: The widest gap that is drawn [m], and the fastest air [m/s].
_WIDE, _FAST = 0.10, 0.5


@dataclass(frozen=True)
class VentAir(Judged):
    """Air on its way from eave to ridge, and twelve months."""

    #: Distance from the eave [m].
    along: Floats
    #: Relative humidity of the air there [-].
    humidity: Floats
    #: [m].
    gap: float
    #: [m/s]; negative when it runs down.
    speed: float
    #: What the space can carry away [kg/(s m2)].
    power: tuple[float, ...]
    #: What arrives by vapor and by air [kg/(s m2)].
    diffusion: tuple[float, ...]
    leak: tuple[float, ...]
    month: int | None = None


class Channel(LivePicture[VentAir]):
    """The channel over the humidity along it; months with power and loads."""

    size = (860, 400)
    narrow_size = (366, 400)

    @property
    def long(self) -> str:
        """Lengths of a roof are told in feet, not in inches."""
        return "ft" if self.unit_system == "us" else "m"

    def signature(self, state: VentAir) -> Any:
        most = ceiling(self.shown(max(*state.power, *state.diffusion, *state.leak), "vapor flux"), _MOST)
        return most, round(float(state.along[-1]), 3)

    def draw_static(self, state: VentAir) -> None:
        left, right = self.columns(0.44, 0.56, rows=(0.5, 0.5))
        self._channel(left, state)
        self._months(right, self.signature(state)[0])

    def _channel(self, box: Box, state: VentAir) -> None:
        """The air on its way from the eave to the ridge, in a section and on a graph."""
        left, bottom, right, top = box
        strip = top - 3.6 * self.line
        self.ax = ax = self.graph(
            (left, bottom, right, strip),
            message("graph-along", unit=units.unit(self.long).symbol),
            message("graph-humidity"),
        )
        ax.set_ylim(0, 105)
        far = units.from_si(float(state.along[-1]), self.long)
        ax.set_xlim(0, far)
        ax.axhline(100, **self.stroke("saturation"))
        color = self.color("relative humidity")
        self.fill = self.patch(ax, Polygon(np.zeros((3, 2)), closed=True, facecolor=color, alpha=0.25))
        self.curve = self.moving(ax.plot([], [], **self.stroke("relative humidity"))[0])
        place = ax.get_position()
        self.a, self.b = self.width * place.x0, self.width * place.x1
        self.strip = (strip + 0.9 * self.line, top - 1.2 * self.line)
        self.words(self.a, top - 0.95 * self.line, message("eave"), small=True, color=self.quiet)
        self.words(self.b, top - 0.95 * self.line, message("ridge"), small=True, color=self.quiet, ha="right")
        wall: dict[str, Any] = {"color": style.INK, "linewidth": 2.2 * self.type.thick, "solid_capstyle": "butt"}
        self.put(Line2D([self.a, self.b], [self.strip[0]] * 2, **wall))
        self.lid = self.moving(self.put(Line2D([], [], **wall)))
        shape: dict[str, Any] = {"closed": True, "facecolor": self.color("air flow"), "edgecolor": "none"}
        self.air = [self.moving(self.put(Polygon(np.zeros((3, 2)), **shape))) for _ in range(4)]

    def _months(self, box: Box, most: float) -> None:
        """Twelve months: what the air can carry, and what comes."""
        entries: list[Entry] = [
            ("drying", message("can-carry"), "bar"),
            ("air flow", message("air-line"), "s"),
            ("vapor pressure", message("vapor-line"), "o"),
        ]
        foot = self.key(entries, box[0], box[3], box[2])
        ax = self.graph((box[0], box[1], box[2], foot - 2), message("month"), self.symbol("vapor flux"), "y")
        ax.set_xlim(-0.7, 11.7)
        ax.set_xticks(range(12), month_letters())
        ax.set_ylim(0, most)
        color = self.color("drying")
        bars = [Rectangle((m - 0.38, 0), 0.76, 0, facecolor=color, edgecolor=style.INK, linewidth=0) for m in range(12)]
        self.bars = [self.patch(ax, bar) for bar in bars]
        self.lines = [
            self.moving(ax.plot([], [], marker=mark, markersize=0.55 * self.type.words, **self.stroke(quantity))[0])
            for quantity, mark in (("air flow", "s"), ("vapor pressure", "o"))
        ]

    def draw_moving(self, state: VentAir) -> None:
        x, y = units.from_si(np.asarray(state.along), self.long), 100 * np.asarray(state.humidity)
        self.curve.set_data(x, y)
        self.fill.set_xy(np.concatenate([[(x[0], 0)], np.column_stack([x, y]), [(x[-1], 0)]]))
        floor, roof = self.strip
        high = floor + max((roof - floor) * min(state.gap / _WIDE, 1.0), 4)
        self.lid.set_data([self.a, self.b], [high, high])
        pitch = (self.b - self.a) / len(self.air)
        long = 0.85 * pitch * min(abs(state.speed) / _FAST, 1.0)
        for place, shape in enumerate(self.air):
            middle = self.a + (place + 0.5) * pitch
            way = 1 if state.speed >= 0 else -1
            shape.set_visible(long > 2)
            thick = min(0.45 * (high - floor), 0.5 * self.line)
            ends = (middle - way * max(long, 10) / 2, middle + way * max(long, 10) / 2)
            shape.set_xy(arrow(ends[0], (floor + high) / 2, ends[1], thick, 1.7 * thick))
        for place, (bar, power) in enumerate(zip(self.bars, state.power, strict=True)):
            # Where the air brings water instead of taking it, the bar has no height.
            bar.set_height(max(self.shown(power, "vapor flux"), 0.0))
            bar.set_linewidth(2.2 * self.type.thick if place == state.month else 0)
        for line, load in zip(self.lines, (state.leak, state.diffusion), strict=True):
            line.set_data(range(12), self.shown(np.asarray(load), "vapor flux"))

    def alt(self, state: VentAir) -> str:
        start, end = (self.show(float(np.asarray(state.humidity)[k]), "relative humidity") for k in (0, -1))
        loads = np.asarray(state.diffusion) + np.asarray(state.leak)
        short = int((np.asarray(state.power) < loads).sum())
        way = "up" if state.speed > 0 else "down" if state.speed < 0 else "none"
        return sentences(
            message(
                "alt-air",
                way=way,
                gap=self.show(state.gap, "length"),
                speed=self.show(abs(state.speed), "speed"),
                start=start,
                end=end,
            ),
            message(
                "alt-months",
                short=short,
                power=self.show(min(state.power), "vapor flux"),
                loads=self.show(float(loads.max()), "vapor flux"),
            ),
        )
