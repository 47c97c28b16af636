"""Two buckets on one scale: what a hole brings in a winter, and what goes through the ceiling."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from dryward import language, units
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Box, Entry, Judged, LivePicture, arrow, ceiling, sentences

message = language.beside(__file__)

#: Full buckets, in the unit shown.
_FULL = (2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 20_000)
#: Widest pressure of the house [Pa].
_WIDEST = 6.0


@dataclass(frozen=True)
class TwoPaths(Judged):
    """Water of one season by two ways, and the pressure that drives the air."""

    #: What the air carries past the cold face and could not keep there [kg].
    carried: float
    #: The part of it that is left there [kg].
    stays: float
    #: [kg].
    by_vapor: float
    #: Permeances of the inner layer, rising [kg/(s m2 Pa)].
    inner: Floats
    #: Water by vapor at each [kg].
    through: Floats
    #: [kg/(s m2 Pa)].
    inner_now: float
    #: Pressure indoors above outdoors at the ceiling and at the floor [Pa].
    top: float = 0.0
    bottom: float = 0.0


class Buckets(LivePicture[TwoPaths]):
    """Buckets, kilograms over permeance, and the house with its pressure triangle."""

    size = (860, 400)

    def signature(self, state: TwoPaths) -> Any:
        return ceiling(self.shown(max(state.carried, state.by_vapor), "mass"), _FULL), (
            float(state.inner[0]),
            float(state.inner[-1]),
        )

    def draw_static(self, state: TwoPaths) -> None:
        full = self.signature(state)[0]
        self.full = full
        one, two, three = self.columns(0.27, 0.44, 0.29, gap=1.4, rows=(0.27, 0.39, 0.34))
        self._buckets(one, full)
        self._graph(two, state, full)
        self._house(three)

    def _buckets(self, box: Box, full: float) -> None:
        """The two buckets with their walls and their words."""
        left, bottom, right, top = self.title(box, message("full", amount=str(full), unit=self.symbol("mass")))
        floor, roof = bottom + 1.5 * self.line, top - 0.5 * self.line
        wide = (right - left) / 2
        self.pails = []
        for place, (quantity, hatch) in enumerate((("air flow", "///"), ("vapor pressure", ""))):
            a, b = left + place * wide + 0.08 * wide, left + (place + 1) * wide - 0.08 * wide
            taper = 0.12 * (b - a)
            water = Polygon(np.zeros((4, 2)), closed=True, facecolor=self.color(quantity), hatch=hatch,
                            edgecolor=self.background, linewidth=0)  # fmt: skip
            self.put(water)
            wall = Line2D([a, a + taper, b - taper, b], [roof, floor, floor, roof], color=style.INK,
                          linewidth=2.4 * self.type.thick)  # fmt: skip
            self.put(wall)
            self.pails.append((self.moving(water), a, b, taper, floor, roof))
            by_air = quantity == "air flow"
            if by_air:
                self._mark(a, b)
            self.moving(wall)
            told = message("air-pail" if by_air else "vapor-pail")
            self.words((a + b) / 2, bottom + 0.3 * self.line, told, small=True, ha="center")

    def _mark(self, a: float, b: float) -> None:
        """The part of the air's water that stays: full color, with a line over it and a word."""
        part = Polygon(np.zeros((4, 2)), closed=True, facecolor=self.color("air flow"), linewidth=0)
        self.part = self.moving(self.put(part))
        self.top = self.moving(self.put(Line2D([], [], color=style.INK, linewidth=2.0 * self.type.thick)))
        backed: dict[str, Any] = {"facecolor": self.background, "edgecolor": "none", "pad": 1.0}
        self.word = self.moving(self.words((a + b) / 2, 0, message("stays-mark"), small=True, ha="center", bbox=backed))

    def _graph(self, box: Box, state: TwoPaths, full: float) -> None:
        """Kilograms over the permeance of the ceiling."""
        lines = (
            self.stroke("air flow", linestyle=(0, (6, 2))),
            self.stroke("air flow", linewidth=3.4 * self.type.thick),
            self.stroke("vapor pressure"),
        )
        foot = self.line_key(
            lines, (message("carried-line"), message("stays-mark"), message("vapor-line")), box[0], box[3], box[2]
        )
        self.ax = ax = self.graph(
            (box[0], box[1], box[2], foot - 2),
            message("graph-across", symbol=self.symbol('permeance')), message("graph-up", symbol=self.symbol('mass')),
        )  # fmt: skip
        low, high = (float(self.shown(p, "permeance")) for p in (state.inner[0], state.inner[-1]))
        self.logarithmic(ax.xaxis, low, high)
        ax.set_ylim(0, full)
        self.level, self.stay, self.through = (self.moving(ax.plot([], [], **each)[0]) for each in lines)
        self.here = self.dot(ax, "here", style.look("here").marker, 1.3)

    def _house(self, box: Box) -> None:
        """The house with the arrows of its pressure."""
        left, bottom, right, top = self.title(box, message("push-on-the-house"))
        entries: list[Entry] = [("air flow", message("push-arrow"), "arrow"), ("limit", message("no-push"))]
        foot = bottom + self.key_height(entries, left, right)
        self.key(entries, left, foot, right)
        floor, eave = foot + 1.6 * self.line, top - 2.2 * self.line
        a, b = left + 0.08 * (right - left), left + 0.52 * (right - left)
        outline = [(a, floor), (b, floor), (b, eave), ((a + b) / 2, top - 4), (a, eave)]
        house = Polygon(outline, closed=True, facecolor="none", edgecolor=style.INK, linewidth=2.2 * self.type.thick)
        self.put(house)
        self.wall, self.reach, self.floor, self.eave = b, right - b - 4, floor, eave
        shape: dict[str, Any] = {"facecolor": self.color("air flow"), "edgecolor": self.background}
        self.push = [self.moving(self.put(Polygon(np.zeros((3, 2)), closed=True, **shape))) for _ in range(8)]
        zero = Line2D([], [], **self.stroke("limit", linewidth=1.4 * self.type.thick))
        self.neutral = self.moving(self.put(zero))

    def draw_moving(self, state: TwoPaths) -> None:
        for (water, *pail), kilograms in zip(self.pails, (state.carried, state.by_vapor), strict=True):
            water.set_xy(self._filled(kilograms, *pail))
        a, b, taper, floor, roof = self.pails[0][1:]
        corners = self._filled(state.stays, a, b, taper, floor, roof)
        self.part.set_xy(corners)
        (right, level), (left, _) = corners[2:]
        self.top.set_data([left, right], [level, level])
        self.word.set_y(level + 0.3 * self.line)
        x = self.shown(np.asarray(state.inner), "permeance")
        self.through.set_data(x, self.shown(np.asarray(state.through), "mass"))
        for line, kilograms in ((self.level, state.carried), (self.stay, state.stays)):
            line.set_data([x[0], x[-1]], [self.shown(kilograms, "mass")] * 2)
        self.here.set_data([self.shown(state.inner_now, "permeance")], [self.shown(state.by_vapor, "mass")])
        count = len(self.push)
        for place, shape in enumerate(self.push):
            share = (place + 0.5) / count
            pressure = state.bottom + share * (state.top - state.bottom)
            long = self.reach * min(abs(pressure) / _WIDEST, 1.0)
            shape.set_visible(long > 2)
            y = self.floor + share * (self.eave - self.floor)
            start, end = (
                (self.wall + 3, self.wall + 3 + long) if pressure > 0 else (self.wall + 3 + long, self.wall + 3)
            )
            shape.set_xy(arrow(start, y, end, 0.28 * self.line, 0.7 * self.line))
        # Where no air is pushed: the neutral level.
        span = state.top - state.bottom
        share = -state.bottom / span if span else -1.0
        self.neutral.set_visible(0 < share < 1)
        y = self.floor + share * (self.eave - self.floor)
        self.neutral.set_data([self.wall - 0.4 * self.reach, self.wall + 0.5 * self.reach], [y, y])

    def _filled(
        self, kilograms: float, a: float, b: float, taper: float, floor: float, roof: float
    ) -> list[tuple[float, float]]:
        """Corners of the water in a bucket [px]: bottom left, bottom right, top right, top left."""
        share = min(max(self.shown(kilograms, "mass") / self.full, 0.0), 1.0)
        y, shift = floor + share * (roof - floor), taper * (1 - share)
        return [(a + taper, floor), (b - taper, floor), (b - shift, y), (a + shift, y)]

    def alt(self, state: TwoPaths) -> str:
        carried, stays, vapor = (self.show(each, "mass") for each in (state.carried, state.stays, state.by_vapor))
        push = ""
        if state.top or state.bottom:
            push = message("alt-push", top=units.number(state.top, 1), bottom=units.number(state.bottom, 1))
        return sentences(
            message("alt-buckets", carried=carried, stays=stays, vapor=vapor),
            message("alt-graph", inner_now=self.show(state.inner_now, "permeance")),
            push,
        )
