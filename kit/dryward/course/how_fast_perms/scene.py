"""Layers as valves in a pipe: the tightest one takes the pressure and sets the flow."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.patches import Polygon, Rectangle

from dryward import language
from dryward.course.how_fast_perms.row import opening
from dryward.pictures import style
from dryward.pictures.drawing import Box, LivePicture, arrow, ceiling, sentences

message = language.beside(__file__)

#: Tops of the scales: pressure difference [Pa] and flow [kg/(s m2)].
_DROPS = {"us": (0.2, 0.4, 0.6, 1.0), "si": (700, 1400, 2000, 3400)}
_FLOWS = {"us": (10, 30, 100, 300, 1000, 3000, 10000, 40000), "si": (5, 20, 50, 200, 500, 2000, 5000, 20000)}


@dataclass(frozen=True)
class LayersInRow:
    """A row of sheets with a pressure difference over them."""

    names: tuple[str, ...]
    #: Of each, above 0 [kg/(s m2 Pa)].
    permeances: tuple[float, ...]
    #: Of the vapor pressures at the two ends [Pa].
    difference: float
    #: [kg/(s m2)].
    flow: float


class Pipe(LivePicture[LayersInRow]):
    """The pipe with its valves, over the steps of vapor pressure; a bar of flow."""

    size = (860, 400)

    def signature(self, state: LayersInRow) -> tuple[float, float, tuple[str, ...]]:
        drop = ceiling(self.shown(state.difference, "pressure") / 1.001, _DROPS[self.unit_system])
        flow = ceiling(self.shown(state.flow, "vapor flux") / 1.001, _FLOWS[self.unit_system])
        return drop, flow, state.names

    def draw_static(self, state: LayersInRow) -> None:
        drop, flow, names = self.signature(state)
        left, right = self.columns(0.78, 0.22, rows=(0.7, 0.3))
        middle = left[1] + 0.54 * (left[3] - left[1])
        self._steps((left[0], left[1], left[2], middle), drop, len(names))
        a, b = (self.ax.transAxes.transform([(0, 0), (1, 0)]) / self.scale)[:, 0]
        self._pipe(float(a), float(b), middle + 0.5 * self.line, left[3], names)
        ax = self.graph(right, message("axis-flow"), self.symbol("vapor flux"), "y")
        ax.set_xlim(0, 1)
        ax.set_xticks([])
        ax.set_ylim(0, flow)
        self.bar = self.patch(ax, Rectangle((0.2, 0), 0.6, 0, facecolor=self.color("vapor pressure")))

    def _steps(self, box: Box, drop: float, count: int) -> None:
        label = message("axis-pressure", unit=self.symbol("pressure"))
        self.ax = ax = self.graph(box, "", label, "y")
        ax.set_xlim(0, count)
        ax.set_xticks([])
        ax.set_ylim(0, drop)
        for place in range(1, count):
            ax.axvline(place, color=self.pencil, linewidth=0.9 * self.type.thick)
        self.curve = self.moving(ax.plot([], [], **self.stroke("vapor pressure"), clip_on=False)[0])
        self.dots = self.dot(ax, "vapor pressure", "o", 0.7)

    def _pipe(self, left: float, right: float, floor: float, top: float, names: tuple[str, ...]) -> None:
        wide = (right - left) / len(names)
        folded = [self.folded(name, wide - 6, small=True) for name in names]
        roof = top - (1.4 + max(map(len, folded))) * self.line
        self.floor, self.roof, self.left, self.right = floor, roof, left, right
        for place, lines in enumerate(folded):
            x = left + (place + 0.5) * wide
            for row, words in enumerate(reversed(lines)):
                self.words(x, roof + (1.35 + row) * self.line, words, small=True, ha="center")
        self.perms = [
            self.moving(self.words(left + (k + 0.5) * wide, roof + 0.35 * self.line, "", small=True, ha="center"))
            for k in range(len(names))
        ]
        wall: dict[str, Any] = {"facecolor": self.pencil, "edgecolor": style.INK, "linewidth": 1.2 * self.type.thick}
        self.gates = [
            [self.moving(self.put(Polygon(np.zeros((3, 2)), closed=True, **wall))) for _ in range(2)] for _ in names
        ]  # fmt: skip
        self.pipe = [self.put(Rectangle((left, y), right - left, 2.5 * self.type.thick, facecolor=style.INK))
                     for y in (floor, roof - 2.5 * self.type.thick)]  # fmt: skip
        water: dict[str, Any] = {"facecolor": self.color("vapor pressure"), "edgecolor": "none"}
        self.stream = self.moving(self.put(Polygon(np.zeros((3, 2)), closed=True, **water)))

    def draw_moving(self, state: LayersInRow) -> None:
        count = len(state.names)
        wide, high, middle = (self.right - self.left) / count, self.roof - self.floor, (self.roof + self.floor) / 2
        for place, (gates, permeance) in enumerate(zip(self.gates, state.permeances, strict=True)):
            self.perms[place].set_text(self.show(permeance, "permeance"))
            half = 0.5 * high * opening(permeance)
            a, b, x = (
                self.left + (place + 0.2) * wide,
                self.left + (place + 0.8) * wide,
                self.left + (place + 0.5) * wide,
            )
            for gate, way in zip(gates, (1, -1), strict=True):
                base = middle + way * high / 2
                gate.set_xy([(a, base), (x - 3, middle + way * half), (x + 3, middle + way * half), (b, base)])
        # The stream is as wide as the flow, and fits the narrowest gap.
        narrow = high * min(opening(p) for p in state.permeances)
        share = min(self.shown(state.flow, "vapor flux") / self.signature(state)[1], 1.0)
        self.stream.set_visible(share > 0)
        thick = max(narrow * share * 0.8, 1.5)
        self.stream.set_xy(arrow(self.left + 4, middle, self.right - 2, thick, min(max(1.8 * thick, 10), 0.94 * high)))
        resistance = np.concatenate([[0.0], np.cumsum(1.0 / np.asarray(state.permeances))])
        pressure = self.shown(state.difference * (1.0 - resistance / resistance[-1]), "pressure")
        self.curve.set_data(np.arange(count + 1), pressure)
        self.dots.set_data(np.arange(count + 1), pressure)
        self.bar.set_height(self.shown(state.flow, "vapor flux"))

    def alt(self, state: LayersInRow) -> str:
        each = [
            message("alt-sheet", name=name, permeance=self.show(p, "permeance"))
            for name, p in zip(state.names, state.permeances, strict=True)
        ]
        sheets = language.joined("how_fast_perms.alt-sheets", each)
        tightest = state.names[int(np.argmin(state.permeances))]
        taken = (1.0 / min(state.permeances)) / sum(1.0 / p for p in state.permeances)
        return sentences(
            message("alt-pipe", count=len(state.names), sheets=sheets),
            message(
                "alt-flow",
                difference=self.show(state.difference, "pressure"),
                flow=self.show(state.flow, "vapor flux"),
            ),
            message("alt-tightest", tightest=tightest, share=self.show(taken, "relative humidity")),
        )
