"""A map of roofs: how tight inside against how open outside, and the winter gain of each."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.colors import ListedColormap
from matplotlib.contour import QuadContourSet
from matplotlib.patches import Rectangle

from dryward import language
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import UNDER, Judged, LivePicture, sentences
from dryward.units import written

message = language.beside(__file__)

#: The folk rule: outside so many times as open as inside.
FOLK = 5.0
#: Bounds of the bands of gain, in the unit shown.
_BANDS = {"us": (0.0, 1.0, 3.0, 10.0, 30.0), "si": (0.0, 0.5, 2.0, 5.0, 20.0)}
#: From paper to deep blue, darker for more water; the same in gray.
_TINTS = ("#d9e8f2", "#9fc6de", "#5a9dc6", "#1f6ea3", "#0a3c60")
_GRAYS = ("#e6e6e6", "#c4c4c4", "#9a9a9a", "#6a6a6a", "#383838")
#: Below this gain it is none [kg/(s m2)]: 5 mg/m2 a day.
_NONE = 5e-6 / 86400


@dataclass(frozen=True)
class GainMap(Judged):
    """Gain over two permeances, worked out by whoever asks for the map."""

    #: Permeances of the axes, rising [kg/(s m2 Pa)].
    inner: Floats
    outer: Floats
    #: Winter gain [kg/(s m2)].
    gain: Floats
    #: Where you are.
    inner_now: float
    outer_now: float
    gain_now: float


class BalanceMap(LivePicture[GainMap]):
    """Filled bands of gain, a key of bands, and the mark of where you are."""

    size = (860, 420)

    def signature(self, state: GainMap) -> Hashable:
        return tuple(state.inner), tuple(state.outer)

    def _axis(self, axis, permeance):
        shown = self.shown(np.asarray(permeance), "permeance")
        # Open is always to the right and up, also where the number falls.
        self.logarithmic(axis, shown[0], shown[-1])
        return shown

    def draw_static(self, state: GainMap) -> None:
        left, right = self.columns(0.72, 0.28, rows=(0.74, 0.26))
        foot = self.key([("here", None)], left[0], left[3], left[2])
        unit = self.symbol("permeance")
        self.ax = ax = self.graph(
            (left[0], left[1], left[2], foot - 2),
            message("axis-inner", unit=unit),
            message("axis-outer", unit=unit),
            "",
        )
        self.at = self._axis(ax.xaxis, state.inner), self._axis(ax.yaxis, state.outer)
        self.bands: QuadContourSet | None = None
        self.edges: QuadContourSet | None = None
        self.gain: Floats | None = None
        for spine in ax.spines.values():  # over the bands
            self.moving(spine)
        folk = FOLK * np.asarray(state.inner)
        kept = folk <= state.outer[-1]
        line = self.shown(np.asarray(state.inner)[kept], "permeance"), self.shown(folk[kept], "permeance")
        dashes: dict[str, Any] = {"color": style.INK, "linewidth": 1.4 * self.type.thick, "linestyle": (0, (5, 3))}
        self.moving(ax.plot(*line, **dashes)[0])
        # Beside the line, on its upper side.
        k = int(0.6 * len(line[0]))
        words: dict[str, Any] = {"fontproperties": self.font(True), "color": style.INK, "ha": "right", "va": "bottom"}
        self.moving(ax.text(line[0][k - 1], line[1][k], message("map-folk"), **words))
        self.here = self.dot(ax, "here", style.look("here").marker, 1.6, markeredgewidth=2 * self.type.thick)
        self._key_of_bands(right)

    def _fill(self, state):
        """The bands of another map, under what else moves."""
        for old in (self.bands, self.edges):
            if old is not None:
                self._movers.remove(old)
                old.remove()
        self.bands = self.edges = None
        self.gain = np.asarray(state.gain)
        gain = self.shown(edged(state.inner, state.outer, state.gain), "vapor flux")
        least = float(self.shown(_NONE, "vapor flux"))
        if not (gain > least).any():
            return
        levels = [least, *_BANDS[self.unit_system][1:], max(1e6, 2 * gain.max())]
        self.bands = self.ax.contourf(*self.at, gain, levels=levels, cmap=ListedColormap(self._tints), vmin=0,
                                      antialiased=True, norm=_by_band(levels))  # fmt: skip
        self.edges = self.ax.contour(
            *self.at, gain, levels=levels[:-1], colors=style.INK, linewidths=0.8 * self.type.thick
        )  # fmt: skip
        for each in (self.bands, self.edges):
            each.set_animated(True)
            each.set_zorder(UNDER)
        self._movers[:0] = (self.bands, self.edges)

    @property
    def _tints(self) -> tuple[str, ...]:
        return _GRAYS if self.paper else _TINTS

    def _key_of_bands(self, box):
        bands, tints = _BANDS[self.unit_system], self._tints
        left, _, right, top = box
        step = 1.35 * self.line
        y = top - 1.2 * self.line
        self.words(left, y, self.fitted(message("key-gain"), right - left))
        self.words(left, y - self.line, self.fitted(self.symbol("vapor flux"), right - left))
        y -= 2.6 * self.line
        words = [message("key-over", most=written(bands[-1], "g"))]
        words += [
            message("key-band", low=written(low, "g"), high=written(high, "g"))
            for low, high in zip(bands[-2::-1], bands[:0:-1], strict=True)
        ]
        # Under the map they stand in two columns.
        columns = 2 if self.narrow else 1
        pairs = zip((*words, message("key-none")), (*tints[::-1], self.background), strict=True)
        for place, (text, tint) in enumerate(pairs):
            x = left + place % columns * (right - left) / columns
            swatch = Rectangle((x, y - 0.1 * self.line), 2.2 * self.type.words, 0.95 * self.line, facecolor=tint,
                               edgecolor=style.INK, linewidth=0.9 * self.type.thick)  # fmt: skip
            self.put(swatch)
            self.words(x + 3.0 * self.type.words, y + 0.1 * self.line, text, small=True)
            if place % columns == columns - 1:
                y -= step

    def draw_moving(self, state: GainMap) -> None:
        if self.gain is None or not np.array_equal(self.gain, state.gain):
            self._fill(state)
        self.here.set_data(
            [self.shown(state.inner_now, "permeance")], [self.shown(state.outer_now, "permeance")]
        )  # fmt: skip

    def alt(self, state: GainMap) -> str:
        gain = np.asarray(state.gain)
        share = float((gain > _NONE).mean())
        # No gain is not yet dry: the state is told by who knows it.
        return sentences(
            message("alt-map"),
            message(
                "alt-here",
                gains=bool(state.gain_now > 0),
                inner=self.show(state.inner_now, "permeance"),
                outer=self.show(state.outer_now, "permeance"),
                gain=self.show(state.gain_now, "vapor flux"),
            ),
            message("alt-share", share=self.show(share, "relative humidity")),
        )


def edged(inner: Floats, outer: Floats, gain: Floats) -> Floats:
    """The map with numbers below nothing where nothing is gained, so that its edge is smooth.

    The gain rises in a straight line with the permeance inside and falls in
    one with the permeance outside, close to the edge; so the nearest two
    gaining roofs of a row or a column say where it reaches nothing.
    """
    inner, outer, gain = (np.asarray(each, dtype=float) for each in (inner, outer, gain))
    along = np.array([_extended(inner, row) for row in gain])
    across = np.array([_extended(outer[::-1], column[::-1])[::-1] for column in gain.T]).T
    return np.where(gain > 0, gain, np.minimum(np.minimum(along, across), 0.0))


def _extended(x: Floats, y: Floats) -> Floats:
    """A row that starts with zeros, its first rise drawn on below zero."""
    rising = np.flatnonzero(y > 0)
    if not len(rising) or rising[0] == 0 or rising[0] + 1 >= len(y):
        return y
    first = rising[0]
    slope = (y[first + 1] - y[first]) / (x[first + 1] - x[first])
    found = y.copy()
    found[:first] = y[first] + slope * (x[:first] - x[first])
    return found


def _by_band(levels):
    from matplotlib.colors import BoundaryNorm

    return BoundaryNorm(levels, len(levels) - 1)
