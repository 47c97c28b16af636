"""How much of the insulation lies inside the film: its temperature, and how far it opens."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from dryward import language
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Judged, LivePicture, sentences
from dryward.units import to_si

message = language.beside(__file__)

#: Ends of the permeance axis [kg/(s m2 Pa)]: 0.05 and 100 perm.
_ENDS = (to_si(0.05, "perm"), to_si(100.0, "perm"))


@dataclass(frozen=True)
class FilmInLayers(Judged):
    """The film at every share of R inside it, and where you are."""

    #: Of the thermal resistance inside the film [-], rising.
    share: Floats
    #: Of the film [degC].
    temperature: Floats
    #: Relative humidity on its room side [-].
    humidity: Floats
    #: Of the film [kg/(s m2 Pa)].
    permeance: Floats
    #: The share now [-].
    now: float


class Inside(LivePicture[FilmInLayers]):
    """Three small graphs over the share of R inside, with one moving dot each."""

    size = (860, 400)

    def signature(self, state: FilmInLayers) -> Any:
        low, high = float(np.min(state.temperature)), float(np.max(state.temperature))
        step, zero = (10 / 1.8, -160 / 9) if self.unit_system == "us" else (5.0, 0.0)
        return (
            np.floor((low - zero) / step) * step + zero,
            np.ceil((high - zero) / step) * step + zero,
            float(state.share[-1]),
        )

    def draw_static(self, state: FilmInLayers) -> None:
        low, high, far = self.signature(state)
        boxes = self.columns(1, 1, 1, gap=1.4)
        x, y = (boxes[0][0] + boxes[-1][2]) / 2, boxes[-1][1] + 0.3 * self.line
        self.words(x, y, message("graph-share"), ha="center")
        labels = (
            message("graph-temperature", unit=self.symbol("temperature")),
            message("graph-humidity"),
            message("graph-permeance", unit=self.symbol("permeance")),
        )
        quantities = ("temperature", "relative humidity", "permeance")
        self.graphs = []
        for (left, bottom, right, top), label, quantity in zip(boxes, labels, quantities, strict=True):
            words = 1.2 * self.line if bottom == boxes[-1][1] else 0.0
            ax = self.graph((left, bottom + words, right, top), "", label)
            ax.set_xlim(0, 100 * far)
            line = self.moving(ax.plot([], [], **self.stroke(quantity))[0])
            look = self.stroke("here", linestyle=(0, (2, 2)), linewidth=1.3 * self.type.thick)
            cursor = self.moving(ax.plot([], [], **look)[0])
            self.graphs.append((ax, line, cursor, self.dot(ax, "here", style.look("here").marker, 1.3)))
        self.graphs[0][0].set_ylim(*(self.shown(t, "temperature") for t in (low, high)))
        self.graphs[1][0].set_ylim(0, 105)
        permeances = [float(self.shown(p, "permeance")) for p in _ENDS]
        self.logarithmic(self.graphs[2][0].yaxis, *permeances)

    def draw_moving(self, state: FilmInLayers) -> None:
        x = 100 * np.asarray(state.share, dtype=float)
        values = (
            self.shown(np.asarray(state.temperature, dtype=float), "temperature"),
            100 * np.asarray(state.humidity, dtype=float),
            self.shown(np.asarray(state.permeance, dtype=float), "permeance"),
        )
        for (ax, line, cursor, here), y in zip(self.graphs, values, strict=True):
            line.set_data(x, y)
            now = float(np.interp(100 * state.now, x, y))
            here.set_data([100 * state.now], [now])
            cursor.set_data([100 * state.now] * 2, [ax.get_ylim()[0], now])

    def alt(self, state: FilmInLayers) -> str:
        share = np.asarray(state.share, dtype=float)
        warm, damp, open_ = (
            self.show(float(np.interp(state.now, share, np.asarray(v, dtype=float))), quantity)
            for v, quantity in (
                (state.temperature, "temperature"),
                (state.humidity, "relative humidity"),
                (state.permeance, "permeance"),
            )
        )
        return sentences(
            message("alt-graphs"),
            message("alt-now", now=self.show(state.now, "relative humidity"), warm=warm, damp=damp, open=open_),
        )
