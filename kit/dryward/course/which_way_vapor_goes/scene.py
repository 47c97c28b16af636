"""Two airs and a board between them: the vapor goes from high pressure to low."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle

from dryward import air, language, units
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Box, Entry, LivePicture, arrow, ceiling, sentences
from dryward.pictures.section import draw_layer
from dryward.weather import Air

message = language.beside(__file__)

#: A dot in a room stands for this much vapor pressure [Pa].
_PER_DOT = 20.0
#: An arrow of full width stands for this difference [Pa].
_FULL = 2500.0
#: Left end of the curve: the coldest night of the sliders [°C].
_COLDEST = -30.0
_WARMEST = (80 / 1.8 - 160 / 9, 100 / 1.8 - 160 / 9, 60.0)


@dataclass(frozen=True)
class AirsBesideCeiling:
    """The airs on both sides."""

    inside: Air
    outside: Air


def scattered(count: int) -> Floats:
    """Places in the unit square that fill it evenly, the same each time.

    The Halton sequence of bases 2 and 3.
    """
    return np.array([[_halton(number, base) for base in (2, 3)] for number in range(1, count + 1)])


def _halton(number: int, base: int) -> float:
    share, found = 1.0, 0.0
    while number:
        share /= base
        number, digit = divmod(number, base)
        found += share * digit
    return found


class Rooms(LivePicture[AirsBesideCeiling]):
    """Two rooms with dots of vapor, an arrow through the board, and the curve."""

    size = (860, 400)

    def _airs(self, state: AirsBesideCeiling) -> tuple[Air, Air]:
        return state.inside, state.outside

    def signature(self, state: AirsBesideCeiling) -> float:
        return ceiling(max(each.temperature for each in self._airs(state)), _WARMEST)

    def draw_static(self, state: AirsBesideCeiling) -> None:
        warmest = self.signature(state)
        left, right = self.columns(0.52, 0.48, rows=(0.48, 0.52))
        entries: list[Entry] = [("vapor pressure", message("key-vapor"), "arrow")]
        self._rooms(left, entries)
        self._curve(right, warmest)

    def _rooms(self, box: Box, entries: list[Entry]) -> None:
        left, bottom, right, top = box
        left, right = left + 4, right - 4
        foot = self.key(entries, left, bottom + self.line + 4, right)
        floor, roof = max(foot, bottom) + 1.5 * self.line, top - 1.4 * self.line
        board = 0.09 * (right - left)
        middle = (left + right) / 2
        self.cells = ((left, middle - board / 2), (middle + board / 2, right))
        names = message("room-inside"), message("room-outside")
        for name, (a, b), quantity in zip(names, self.cells, ("room air", "outdoor air"), strict=True):
            frame = Rectangle((a, floor), b - a, roof - floor, facecolor="none", edgecolor=style.INK)
            frame.set_linewidth(1.4 * self.type.thick)
            self.put(frame)
            self.words((a + b) / 2, roof + 0.3 * self.line, self.fitted(name, b - a), ha="center", weight="bold")
            self._mark(a + 0.9 * self.type.words, roof + 0.6 * self.line, quantity)
        draw_layer(self, "board", middle - board / 2, middle + board / 2, floor, roof)
        self.floor, self.roof, self.spots = floor, roof, scattered(600)
        size = 0.34 * self.type.words
        drawn: dict[str, Any] = {
            "linestyle": "none",
            "marker": "o",
            "markersize": size,
            "color": self.color("vapor pressure"),
        }
        self.vapor = [self.moving(self.put(Line2D([], [], **drawn))) for _ in names]
        shape = Polygon(np.zeros((3, 2)), closed=True, facecolor=self.color("vapor pressure"),
                        edgecolor=self.background, linewidth=1.5 * self.type.thick)  # fmt: skip
        self.arrow = self.moving(self.put(shape))

    def _mark(self, x: float, y: float, quantity: str) -> None:
        marker = "o" if quantity == "room air" else "s"
        self.put(Line2D([x], [y], marker=marker, color=self.color(quantity), markersize=0.8 * self.type.words))

    def _curve(self, box: Box, warmest: float) -> None:
        foot = self.key([("saturation", None)], box[0], box[3], box[2])
        self.ax = ax = self.graph(
            (box[0], box[1], box[2], foot - 2),
            message("axis-temperature", unit=self.symbol("temperature")),
            message("axis-vapor-pressure", unit=self.symbol("pressure")),
        )
        over = np.linspace(_COLDEST, warmest, 160)
        limit = self.shown(air.saturation_vapor_pressure(over), "pressure")
        ax.plot(self.shown(over, "temperature"), limit, **self.stroke("saturation"))
        ax.set_xlim(*(self.shown(t, "temperature") for t in (_COLDEST, warmest)))
        ax.set_ylim(0, 1.03 * limit[-1])
        self.levels = [self.moving(ax.plot([], [], **self.stroke(q, linewidth=1.4 * self.type.thick))[0])
                       for q in ("room air", "outdoor air")]  # fmt: skip
        height = self.stroke("vapor pressure", linewidth=4.5 * self.type.thick, solid_capstyle="butt")
        self.difference = self.moving(ax.plot([], [], **height)[0])
        self.dots = [self.dot(ax, "room air", "o", 1.0), self.dot(ax, "outdoor air", "s", 1.0)]

    def draw_moving(self, state: AirsBesideCeiling) -> None:
        airs = self._airs(state)
        for line, each, (a, b) in zip(self.vapor, airs, self.cells, strict=True):
            some = self.spots[: min(len(self.spots), round(each.vapor_pressure / _PER_DOT))]
            edge = 0.7 * self.type.words
            x = a + edge + some[:, 0] * (b - a - 2 * edge)
            y = self.floor + edge + some[:, 1] * (self.roof - self.floor - 2 * edge)
            line.set_data(x, y)
        drive = airs[0].vapor_pressure - airs[1].vapor_pressure
        wide = 0.5 * (self.roof - self.floor) * min(abs(drive) / _FULL, 1.0)
        self.arrow.set_visible(abs(drive) > 1.0)
        middle = (self.cells[0][1] + self.cells[1][0]) / 2
        reach = 0.36 * (self.cells[1][1] - self.cells[0][0])
        way = 1 if drive > 0 else -1
        at = (self.floor + self.roof) / 2
        self.arrow.set_xy(arrow(middle - way * reach, at, middle + way * reach, max(wide, 2), max(1.5 * wide, 12)))
        edge = self.ax.get_xlim()[1]
        warm = [self.shown(each.temperature, "temperature") for each in airs]
        high = [self.shown(each.vapor_pressure, "pressure") for each in airs]
        for line, dot, px, py in zip(self.levels, self.dots, warm, high, strict=True):
            line.set_data([px, edge], [py, py])
            dot.set_data([px], [py])
        left = self.ax.get_xlim()[0]
        self.difference.set_data([edge - 0.02 * (edge - left)] * 2, high)

    def alt(self, state: AirsBesideCeiling) -> str:
        inside, outside = self._airs(state)
        low, high = sorted((inside.vapor_pressure, outside.vapor_pressure))
        drive = inside.vapor_pressure - outside.vapor_pressure
        way = (
            message(
                "alt-arrow",
                way="out" if drive >= 0 else "in",
                push=units.difference(high, low, "pressure", self.unit_system),
            )
            if abs(drive) > 1.0
            else message("alt-no-arrow")
        )
        airs = [
            message(
                f"alt-{side}",
                temperature=self.show(each.temperature, "temperature"),
                humidity=self.show(each.relative_humidity, "relative humidity"),
                pressure=self.show(each.vapor_pressure, "pressure"),
            )
            for side, each in (("inside", inside), ("outside", outside))
        ]
        return sentences(message("alt-rooms"), *airs, way)
