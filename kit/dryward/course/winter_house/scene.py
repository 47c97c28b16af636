"""The house as a tank: people and outdoor air bring water in, leaving air carries it out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle

from dryward import language
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Judged, LivePicture, arrow, sentences
from dryward.units import DAY
from dryward.units.table import NO_BREAK

message = language.beside(__file__)

#: The one scale of the arrows: so much water [kg/s], and all that is more, is drawn as wide as they get.
_MOST = 40.0 / DAY
#: Less than this runs down is not told [kg/s].
_LEAST = 0.01 / DAY
_DASHES = ((0, (1.2, 1.4)), "-", (0, (6, 2)), (0, (6, 2, 1, 2)))


@dataclass(frozen=True)
class HouseWater(Judged):
    """Water of a house in balance, and how its humidity follows the fresh air."""

    #: Water [kg/s].
    people: float
    from_outside: float
    carried_out: float
    #: Indoors [-].
    relative_humidity: float
    #: [m3/s].
    fresh_air: float
    #: Relative humidity from which the edge of the pane fogs, and the middle of the glass [-].
    edge: float
    glass: float
    #: Indoor relative humidity [-] at each of `flows`.
    curves: tuple[tuple[float, Floats], ...]
    #: Fresh air of the curves [m3/s].
    flows: Floats


class Tank(LivePicture):
    """The tank, and relative humidity over fresh air."""

    size = (860, 400)

    def signature(self, state: HouseWater) -> Any:
        made = tuple(round(production * 86400, 3) for production, _ in state.curves)
        return made, (float(state.flows[0]), float(state.flows[-1]))

    def draw_static(self, state: HouseWater) -> None:
        left, right = self.columns(0.46, 0.54, rows=(0.46, 0.54))
        self._tank(left)
        self._graph(right, state)

    def _tank(self, box):
        left, bottom, right, top = box
        most = self.show(_MOST, "mass flow", 0).replace(" ", NO_BREAK)
        entries = [("vapor pressure", message("key-water", most=most), "arrow")]
        wide = right - left
        foot = self.key(entries, left, bottom + self.line + 2, right) + 1.5 * self.line
        # A house with a pitched roof, open at no place but its three pipes.
        a, b, eave = left + 0.29 * wide, left + 0.75 * wide, top - 2.6 * self.line
        self.house = (a, b, foot, eave)
        outline = [(a, foot), (b, foot), (b, eave), ((a + b) / 2, top - 2), (a, eave)]
        self.level = self.moving(self.put(Rectangle((a, foot), b - a, 0, facecolor=self.color("vapor pressure"),
                                                    alpha=0.55, edgecolor="none")))  # fmt: skip
        self.frame = self.moving(self.put(Polygon(outline, closed=True, facecolor="none", edgecolor=style.INK,
                                                  linewidth=2.2 * self.type.thick)))  # fmt: skip
        self.fogs = [self.moving(self.put(Line2D([], [], **look))) for look in self._limits()]
        spots = ((message("people"), left, 0.68), (message("outdoors"), left, 0.22))
        self.inlets, self.amounts = [], []
        for words, x, share in spots:
            y = foot + share * (eave - foot)
            above = y + 0.17 * (eave - foot)
            self.words(x, above, self.fitted(words, a - x - 4, small=True), small=True)
            self.inlets.append((self._pipe(), x, a + 0.06 * wide, y))
            self.amounts.append(self._amount(x, y - 0.17 * (eave - foot), "left"))
        y = foot + 0.45 * (eave - foot)
        above = y + 0.17 * (eave - foot)
        self.words(right, above, self.fitted(message("leaving"), right - b - 4, small=True), small=True, ha="right")
        self.outlet = (self._pipe(), b - 0.06 * wide, right - 2, y)
        self.amounts.append(self._amount(right, y - 0.17 * (eave - foot), "right"))
        self.rest = self.moving(self.words((a + b) / 2, foot + 0.05 * (eave - foot), "", small=True, ha="center"))
        self.between = b - a - 8
        x = (a + b) / 2
        self.words(x, eave + 0.25 * self.line, message("full"), small=True, ha="center", va="bottom")

    def _pipe(self):
        shape = Polygon(np.zeros((3, 2)), closed=True, facecolor=self.color("vapor pressure"),
                        edgecolor=self.background, linewidth=1.2 * self.type.thick)  # fmt: skip
        return self.moving(self.put(shape))

    def _amount(self, x, y, side):
        """How much water an arrow stands for."""
        return self.moving(self.words(x, y, "", small=True, ha=side))

    def _limits(self):
        """Looks of the two limits: the edge of the pane, and the middle of the glass."""
        return self.stroke("limit"), self.stroke("limit", linestyle="-")

    def _graph(self, box, state):
        foot = self.key([("here", None)], box[0], box[3], box[2])
        foot = self.line_key(self._limits(), (message("key-edge"), message("key-glass")), box[0], foot, box[2])
        pairs = list(zip(state.curves, _DASHES, strict=False))
        looks = [self.stroke("relative humidity", linestyle=dash) for _, dash in pairs]
        names = [message("key-made", water=self.show(production, "mass flow", 0)) for (production, _), _ in pairs]
        foot = self.line_key(looks, names, box[0], foot, box[2])
        self.ax = ax = self.graph(
            (box[0], box[1], box[2], foot - 2),
            message("axis-fresh-air", unit=self.symbol("air flow")),
            message("axis-humidity"),
        )
        ax.set_ylim(0, 100)
        ax.set_xlim(*(self.shown(f, "air flow") for f in (state.flows[0], state.flows[-1])))
        self.curves = [self.moving(ax.plot([], [], **look)[0]) for look in looks]
        # Above the edge's limit hatched one way, above that of the glass both ways.
        hatched: dict[str, Any] = {"facecolor": "none", "edgecolor": self.color("limit"), "linewidth": 0, "alpha": 0.35}
        self.bands = [self.patch(ax, Rectangle((0, 0), 1, 1, hatch=hatch, **hatched)) for hatch in ("\\\\", "//")]
        self.lines = [self.moving(ax.plot([], [], **look)[0]) for look in self._limits()]
        self.here = self.dot(ax, "here", style.look("here").marker, 1.2)

    def draw_moving(self, state: HouseWater) -> None:
        a, b, floor, eave = self.house
        self.level.set_height((eave - floor) * min(state.relative_humidity, 1.0))
        limits = [min(each, 1.0) for each in (state.edge, state.glass)]
        for line, limit in zip(self.fogs, limits, strict=True):
            y = floor + (eave - floor) * limit
            line.set_data([a, b], [y, y])
        tallest = 0.2 * (eave - floor)
        flows = zip((*self.inlets, self.outlet), (state.people, state.from_outside, state.carried_out), strict=True)
        for ((shape, start, end, height), flow), amount in zip(flows, self.amounts, strict=True):
            amount.set_text(self.show(flow, "mass flow", 0))
            wide = tallest * min(flow / _MOST, 1.0)
            shape.set_visible(wide > 0.3)
            shape.set_xy(arrow(start, height, end, max(wide, 1.5), max(1.5 * wide, 8)))
        rest = state.people + state.from_outside - state.carried_out
        text = message("stays", water=self.show(rest, "mass flow")) if rest > _LEAST else ""
        self.rest.set_text(self.fitted(text, self.between, small=True) if text else "")
        x = self.shown(np.asarray(state.flows), "air flow")
        for line, (_, humidity) in zip(self.curves, state.curves, strict=True):
            line.set_data(x, 100 * np.asarray(humidity))
        for band, line, limit in zip(self.bands, self.lines, limits, strict=True):
            band.set_bounds(x[0], 100 * limit, x[-1] - x[0], 100 - 100 * limit)
            line.set_data([x[0], x[-1]], [100 * limit, 100 * limit])
        self.here.set_data([self.shown(state.fresh_air, "air flow")], [100 * min(state.relative_humidity, 1.0)])

    def alt(self, state: HouseWater) -> str:
        people, outside, away = (
            self.show(f, "mass flow") for f in (state.people, state.from_outside, state.carried_out)
        )  # fmt: skip
        humidity, edge, glass = (
            self.show(h, "relative humidity") for h in (state.relative_humidity, state.edge, state.glass)
        )
        # At a limit of 100 % the glass is as warm as the room: the air is at 100 % RH, not the glass cold.
        panes = (
            message("alt-clear")
            if state.relative_humidity < state.edge
            else message("alt-edge-fogs")
            if state.relative_humidity < state.glass
            else message("alt-runs")
            if state.glass < 1.0
            else message("alt-full")
        )
        rest = state.people + state.from_outside - state.carried_out
        return sentences(
            message("alt-tank", people=people, outside=outside, away=away),
            message("alt-stays", water=self.show(rest, "mass flow")) if rest > _LEAST else "",
            message(
                "alt-stands",
                fresh_air=self.show(state.fresh_air, "air flow"),
                humidity=humidity,
                edge=edge,
                glass=glass,
            ),
            panes,
        )
