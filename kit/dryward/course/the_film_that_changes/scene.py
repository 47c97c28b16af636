"""A film that changes: its curve, its faces and its year; a film of two sheets, both ways round."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from dryward import language, units
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Box, Judged, LivePicture, ceiling, letters_every, month_letters, sentences
from dryward.pictures.section import draw_layer

message = language.beside(__file__)

#: Ends of the permeance axis [kg/(s m2 Pa)]: 0.05 and 100 perm.
LOWEST, HIGHEST = 2.8607e-12, 5.7213e-9


@dataclass(frozen=True)
class FilmBetweenFaces(Judged):
    """A film between two faces."""

    #: Its curve: mean relative humidity [-] and permeance [kg/(s m2 Pa)].
    humidity: Floats
    permeance: Floats
    #: Relative humidity on the room side and on the other side [-].
    inside: float
    outside: float
    #: Its permeance now [kg/(s m2 Pa)].
    now: float
    #: Month by month in a town with a humid summer, and in one with a dry one [kg/(s m2 Pa)]; no third part when empty.
    months: tuple[float, ...] = ()
    dry_months: tuple[float, ...] = ()
    #: The month that is shown, 0 to 11.
    month: int | None = None

    @property
    def mean(self) -> float:
        """Of the two faces [-]."""
        return 0.5 * (self.inside + self.outside)


class Film(LivePicture[FilmBetweenFaces]):
    """The curve with a dot; the film with its faces; twelve bars, and twelve dots over the same months."""

    size = (860, 400)

    def signature(self, state: FilmBetweenFaces) -> Hashable:
        return bool(state.months)

    def draw_static(self, state: FilmBetweenFaces) -> None:
        three, two = (0.37, 0.29, 0.34), (0.58, 0.42)
        boxes = self.columns(0.44, 0.22, 0.34, rows=three) if state.months else self.columns(0.68, 0.32, rows=two)
        self._curve(boxes[0])
        self._faces(boxes[1])
        self.bars = self._months(boxes[2]) if state.months else []

    def _permeance_axis(self, ax: Axes) -> None:
        # In SI the number is an air layer, which falls as the film opens: up is open in both.
        self.logarithmic(ax.yaxis, float(self.shown(LOWEST, "permeance")), float(self.shown(HIGHEST, "permeance")))

    def _curve(self, box: Box) -> None:
        unit = self.symbol("permeance")
        self.ax = ax = self.graph(box, message("axis-mean"), message("axis-permeance", unit=unit))
        ax.set_xlim(0, 100)
        self._permeance_axis(ax)
        guide = self.stroke("relative humidity", linewidth=1.6 * self.type.thick)
        self.guide = self.moving(ax.plot([], [], **guide)[0])
        self.curve = self.moving(ax.plot([], [], **self.stroke("permeance"))[0])
        self.here = self.dot(ax, "here", "o", 1.3)

    def _faces(self, box: Box) -> None:
        left, bottom, right, top = box
        left, right = left + 4, right - 4
        sides = [message("room-side"), message("other-side")]
        if self.narrow:  # the faces are wide: one line
            sides = [each.replace("\n", " ") for each in sides]
        under = 1.6 + max(each.count("\n") + 1 for each in sides)
        floor, roof, middle = bottom + under * self.line, top - 1.8 * self.line, (left + right) / 2
        self.floor, self.roof = floor, roof
        half = 0.5 * self.type.words
        color, self.fills = self.color("relative humidity"), []
        for words, (a, b) in zip(sides, ((left, middle - half), (middle + half, right)), strict=True):
            fill = Rectangle((a, floor), b - a, 0, facecolor=color, alpha=0.5, edgecolor="none")
            self.fills.append(self.moving(self.put(fill)))
            frame = Rectangle((a, floor), b - a, roof - floor, facecolor="none", edgecolor=style.INK)
            self.put(frame)
            self.words((a + b) / 2, floor - 0.25 * self.line, words, small=True, ha="center", va="top")
        self.words(middle, roof + 0.5 * self.line, self.fitted(message("faces"), right - left), ha="center")
        gaps = self.fitted(message("gaps-open"), right - left, small=True)
        self.words(middle, bottom + 0.35 * self.line, gaps, small=True, ha="center")
        membrane: dict[str, Any] = {"color": style.INK, "solid_capstyle": "butt"}
        self.film = self.moving(self.put(Line2D([], [], linewidth=0.8 * self.type.words, **membrane)))
        self.middle = middle

    def _months(self, box: Box) -> list[Rectangle]:
        ax = self.graph(box, message("axis-month"), message("axis-by-month", unit=self.symbol("permeance")), "y")
        ax.set_xlim(-0.7, 11.7)
        every = letters_every(self, ax, 12)
        ax.set_xticks(range(0, 12, every), month_letters()[::every])
        self._permeance_axis(ax)
        bottom = float(self.shown(LOWEST, "permeance"))
        self.base = bottom
        color = self.color("permeance")
        bars = [
            Rectangle((m - 0.38, bottom), 0.76, 0, facecolor=color, edgecolor=style.INK, linewidth=0) for m in range(12)
        ]
        made = [self.patch(ax, bar) for bar in bars]
        self.desert = self.dot(ax, "here", "o", 0.6)
        place = ax.get_position()
        left, wide, top = self.width * place.x0, self.width * place.width, self.height * (place.y0 + place.height)
        for line, words in enumerate((message("year-bars"), message("year-dots"))):
            fitted = self.fitted(words, wide - 0.4 * self.line, small=True)
            self.words(left + 0.4 * self.line, top - (1.0 + line) * self.line, fitted, small=True)
        return made

    def draw_moving(self, state: FilmBetweenFaces) -> None:
        self.curve.set_data(100 * np.asarray(state.humidity), self.shown(np.asarray(state.permeance), "permeance"))
        now, mean = float(self.shown(state.now, "permeance")), 100 * state.mean
        self.guide.set_data([mean, mean, 0], [self.ax.get_ylim()[0], now, now])
        self.here.set_data([mean], [now])
        for fill, humidity in zip(self.fills, (state.inside, state.outside), strict=True):
            fill.set_height((self.roof - self.floor) * humidity)
        # The film is a dashed line: the gaps grow as it opens.
        share = np.log(state.now / LOWEST) / np.log(HIGHEST / LOWEST)
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
        if state.months:
            self.desert.set_data(range(12), self.shown(np.asarray(state.dry_months), "permeance"))

    def alt(self, state: FilmBetweenFaces) -> str:
        faces = [self.show(h, "relative humidity") for h in (state.inside, state.outside, state.mean)]
        year = ""
        if state.months:
            lowest, highest = (self.show(f(state.months), "permeance") for f in (min, max))
            least, most = (self.show(f(state.dry_months), "permeance") for f in (min, max))
            year = message("alt-year", lowest=lowest, highest=highest, least=least, most=most)
        return sentences(
            message("alt-curve"),
            message(
                "alt-now",
                inside=faces[0],
                outside=faces[1],
                mean=faces[2],
                now=self.show(state.now, "permeance"),
            ),
            year,
        )


#: Tops of the bars of a film of two sheets: in perm, and in SI [kg/(s m2 Pa)].
_TOPS = {"us": (1.0, 2.0, 4.0, 8.0, 16.0, 40.0), "si": (2e-10, 5e-10, 1e-9, 2e-9, 5e-9, 2e-8)}


@dataclass(frozen=True)
class LaminateFaces(Judged):
    """Humidities at the room face, between the sheets and at the far face; and the permeance."""

    #: With the sensitive sheet to the room [-].
    facing: tuple[float, float, float]
    #: With the sensitive sheet outward, the backing to the room [-].
    flipped: tuple[float, float, float]
    #: [kg/(s m2 Pa)].
    permeance: float
    permeance_flipped: float


class Sandwich(LivePicture):
    """Two sandwiches with their humidity line, and a bar for each."""

    size = (860, 380)

    def _bar(self, permeance):
        # An equivalent air layer falls as a film opens, so SI bars are in ng/(s m2 Pa).
        return self.shown(permeance, "permeance") if self.unit_system == "us" else permeance * 1e12

    def signature(self, state: LaminateFaces) -> Any:
        return self._top(state)

    def _top(self, state):
        most = max(state.permeance, state.permeance_flipped)
        if self.unit_system == "us":
            return ceiling(self.shown(most, "permeance"), _TOPS["us"])
        return ceiling(most, _TOPS["si"])

    def draw_static(self, state: LaminateFaces) -> None:
        one, other, bars = self.columns(0.385, 0.385, 0.23, gap=1.2, rows=(0.37, 0.37, 0.26))
        names = (("sensitive", "backing"), ("backing", "sensitive"))
        titles = (message("facing"), message("turned"))
        self.sheets = [
            self._sheet(box, title, pair) for box, title, pair in zip((one, other), titles, names, strict=True)
        ]
        unit = self.symbol("permeance") if self.unit_system == "us" else units.unit("ng/(s m2 Pa)").symbol
        ax = self.graph(bars, "", unit, "y")
        ax.set_xlim(-0.6, 1.6)
        ax.set_xticks(
            [0, 1],
            [message("bar-facing"), message("bar-turned")]
            if not self.projector
            else [message("bar-facing-short"), message("bar-turned-short")],
        )
        top = self._top(state)
        ax.set_ylim(0, top if self.unit_system == "us" else top * 1e12)
        color = self.color("permeance")
        shape: dict[str, Any] = {"facecolor": color, "edgecolor": self.background}
        self.pair = [
            self.patch(ax, Rectangle((x - 0.33, 0), 0.66, 0, hatch=h, **shape))
            for x, h in ((0, ""), (1, "///"))
        ]  # fmt: skip

    def _sheet(self, box, title, names):
        box = self.title(box, title)
        left, bottom, right, top = box
        ax = self.graph((left, bottom + 1.2 * self.line, right, top), "", message("axis-humidity"), "y")
        ax.set_ylim(0, 100)
        ax.set_xlim(-0.25, 2.25)
        ax.set_xticks([])
        place = ax.get_position()
        x0, wide = self.width * place.x0, self.width * place.width
        floor, roof = self.height * place.y0, self.height * place.y1
        for index, name in enumerate(names):
            a, b = x0 + (index + 0.25) / 2.5 * wide, x0 + (index + 1.25) / 2.5 * wide
            draw_layer(self, "fibrous" if name == "sensitive" else "board", a, b, floor, roof)
            self.words(
                (a + b) / 2,
                floor - 1.2 * self.line,
                self.fitted(message(f"sheet-{name}"), b - a, small=True),
                small=True,
                ha="center",
            )
        self.words(x0, bottom + 0.4 * self.line, message("room"), small=True, color=self.quiet)
        self.words(x0 + wide, bottom + 0.4 * self.line, message("far-side"), small=True, color=self.quiet, ha="right")
        line = self.moving(ax.plot([], [], **self.stroke("relative humidity"))[0])
        return line, self.dot(ax, "relative humidity", "o", 0.9)

    def draw_moving(self, state: LaminateFaces) -> None:
        for (line, dots), humidities in zip(self.sheets, (state.facing, state.flipped), strict=True):
            near, middle, far = (100 * h for h in humidities)
            line.set_data([-0.25, 0, 1, 2, 2.25], [near, near, middle, far, far])
            dots.set_data([0, 1, 2], [near, middle, far])
        for bar, permeance in zip(self.pair, (state.permeance, state.permeance_flipped), strict=True):
            bar.set_height(self._bar(permeance))

    def alt(self, state: LaminateFaces) -> str:
        parts = []
        ways = ((False, state.facing, state.permeance), (True, state.flipped, state.permeance_flipped))
        for turned, humidities, permeance in ways:
            near, middle, far = (self.show(h, "relative humidity") for h in humidities)
            shown = self.show(permeance, "permeance")
            parts.append(message("alt-both-ways", turned=turned, near=near, middle=middle, far=far, permeance=shown))
        return sentences(message("alt-two-sheets"), *parts)


class FilmSides(Film, Sandwich):
    """A film between its faces, or both ways round when its two faces differ.

    Draws a `FilmBetweenFaces` as `Film` does, and a `LaminateFaces` as `Sandwich` does.
    """

    size = Film.size
    narrow_size = Film.narrow_size

    def _kind(self, state: Any) -> type[Film] | type[Sandwich]:
        return Sandwich if isinstance(state, LaminateFaces) else Film

    def signature(self, state: Any) -> Any:
        kind = self._kind(state)
        return kind.__name__, kind.signature(self, state)

    def draw_static(self, state: Any) -> None:
        self._kind(state).draw_static(self, state)

    def draw_moving(self, state: Any) -> None:
        self._kind(state).draw_moving(self, state)

    def alt(self, state: Any) -> str:
        return self._kind(state).alt(self, state)
