"""A film that changes: its curve, the humidity on its two faces, and its year."""

from collections.abc import Hashable
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from dryward.pictures import style
from dryward.pictures.drawing import MONTHS, Box, Floats, letters_every, sentences
from dryward.pictures.live import LivePicture

#: Ends of the permeance axis [kg/(s m2 Pa)]: 0.05 and 100 perm.
_LOW, _HIGH = 2.8607e-12, 5.7213e-9


@dataclass(frozen=True)
class FilmBetweenFaces:
    """A film between two faces."""

    #: Its curve: mean relative humidity [-] and permeance [kg/(s m2 Pa)].
    humidity: Floats
    permeance: Floats
    #: Relative humidity on the room side and on the other side [-].
    inside: float
    outside: float
    #: Its permeance now [kg/(s m2 Pa)].
    now: float
    #: Month by month [kg/(s m2 Pa)]; no third part when empty.
    months: tuple[float, ...] = ()
    #: The month that is shown, 0 to 11.
    month: int | None = None
    #: The state that the page gives what is drawn; empty where it gives none.
    verdict: str = field(default="", kw_only=True)

    @property
    def mean(self) -> float:
        """Of the two faces [-]."""
        return 0.5 * (self.inside + self.outside)


class Film(LivePicture[FilmBetweenFaces]):
    """The curve with a dot; the film with its faces; twelve bars."""

    size = (860, 400)
    projector_size = (1180, 640)

    def signature(self, state: FilmBetweenFaces) -> Hashable:
        return bool(state.months)

    def draw_static(self, state: FilmBetweenFaces) -> None:
        boxes = self.columns(0.44, 0.22, 0.34) if state.months else self.columns(0.68, 0.32)
        self._curve(boxes[0])
        self._faces(boxes[1])
        self.bars = self._months(boxes[2]) if state.months else []

    def _permeance_axis(self, ax: Axes) -> None:
        # In SI the number is an air layer, which falls as the film opens: up is open in both.
        self.logarithmic(ax.yaxis, float(self.shown(_LOW, "permeance")), float(self.shown(_HIGH, "permeance")))

    def _curve(self, box: Box) -> None:
        unit = self.symbol("permeance")
        self.ax = ax = self.graph(box, "mean RH of its two faces, %", f"{unit}; up is more open")
        ax.set_xlim(0, 100)
        self._permeance_axis(ax)
        guide = self.stroke("relative humidity", linewidth=1.6 * self.type.thick)
        self.guide = self.moving(ax.plot([], [], **guide)[0])
        self.curve = self.moving(ax.plot([], [], **self.stroke("permeance"))[0])
        self.here = self.dot(ax, "here", "o", 1.3)

    def _faces(self, box: Box) -> None:
        left, bottom, right, top = box
        left, right = left + 4, right - 4
        floor, roof, middle = bottom + 3.6 * self.line, top - 1.8 * self.line, (left + right) / 2
        self.floor, self.roof = floor, roof
        half = 0.5 * self.type.words
        color, self.fills = self.color("relative humidity"), []
        sides = (("room side", left, middle - half), ("other side", middle + half, right))
        for words, a, b in sides:
            fill = Rectangle((a, floor), b - a, 0, facecolor=color, alpha=0.5, edgecolor="none")
            self.fills.append(self.moving(self.put(fill)))
            frame = Rectangle((a, floor), b - a, roof - floor, facecolor="none", edgecolor=style.INK)
            self.put(frame)
            for row, word in enumerate(words.split()):
                self.words((a + b) / 2, floor - (row + 1) * self.line, word, small=True, ha="center")
        self.words(middle, roof + 0.5 * self.line, self.fitted("RH at its faces", right - left), ha="center")
        self.words(middle, bottom + 0.35 * self.line, self.fitted("gaps = open", right - left, small=True), small=True,
                   ha="center")  # fmt: skip
        membrane: dict[str, Any] = {"color": style.INK, "solid_capstyle": "butt"}
        self.film = self.moving(self.put(Line2D([], [], linewidth=0.8 * self.type.words, **membrane)))
        self.middle = middle

    def _months(self, box: Box) -> list[Rectangle]:
        ax = self.graph(box, "month", f"{self.symbol('permeance')} by month", "y")
        ax.set_xlim(-0.7, 11.7)
        every = letters_every(self, ax, 12)
        ax.set_xticks(range(0, 12, every), MONTHS[::every])
        self._permeance_axis(ax)
        bottom = float(self.shown(_LOW, "permeance"))
        self.base = bottom
        color = self.color("permeance")
        bars = [
            Rectangle((m - 0.38, bottom), 0.76, 0, facecolor=color, edgecolor=style.INK, linewidth=0) for m in range(12)
        ]
        return [self.patch(ax, bar) for bar in bars]

    def draw_moving(self, state: FilmBetweenFaces) -> None:
        self.curve.set_data(100 * np.asarray(state.humidity), self.shown(np.asarray(state.permeance), "permeance"))
        now, mean = float(self.shown(state.now, "permeance")), 100 * state.mean
        self.guide.set_data([mean, mean, 0], [self.ax.get_ylim()[0], now, now])
        self.here.set_data([mean], [now])
        for fill, humidity in zip(self.fills, (state.inside, state.outside), strict=True):
            fill.set_height((self.roof - self.floor) * humidity)
        # The film is a dashed line: the gaps grow as it opens.
        share = np.log(state.now / _LOW) / np.log(_HIGH / _LOW)
        gap = 6 * min(max(float(share), 0.0), 1.0) ** 2
        high, size = self.roof - self.floor, 1.0 * self.line
        starts = np.arange(self.floor, self.roof, size)
        solid = size / (1 + gap)
        ends = np.minimum(starts + solid, self.floor + high)
        x = np.full(3 * len(starts), self.middle)
        y = np.column_stack([starts, ends, np.full(len(starts), np.nan)]).ravel()
        self.film.set_data(x, y)
        for place, (bar, permeance) in enumerate(zip(self.bars, state.months, strict=True)):
            bar.set_height(float(self.shown(permeance, "permeance")) - self.base)
            bar.set_linewidth(2.2 * self.type.thick if place == state.month else 0)

    def alt(self, state: FilmBetweenFaces) -> str:
        faces = [self.show(h, "relative humidity") for h in (state.inside, state.outside, state.mean)]
        year = ""
        if state.months:
            lowest, highest = (self.show(f(state.months), "permeance") for f in (min, max))
            year = f"Over the year it goes from {lowest} to {highest}."
        return sentences(
            "Curve of the permeance of a film over the mean relative humidity of its two faces.",
            f"Now its faces are at {faces[0]} on the room side and {faces[1]} on the other side, mean {faces[2]}: "
            f"it has {self.show(state.now, 'permeance')}.",
            year,
        )
