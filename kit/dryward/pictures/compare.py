"""Two roofs side by side on the same axes."""

from dataclasses import dataclass

import numpy as np

from dryward.pictures.live import LivePicture
from dryward.pictures.strokes import sentences
from dryward.pictures.year import MoistureGraph, band_room, top_of


@dataclass(frozen=True)
class CompareState:
    """Two years of moisture with their names.

    Attributes
    ----------
    names : (str, str)
    years : (YearState, YearState)
        Over the same time, with as many planes and the same bands.
    """

    names: tuple
    years: tuple


class Compare(LivePicture):
    """The same graph twice, so that heights can be compared across."""

    size = (860, 360)
    projector_size = (1180, 600)

    def signature(self, state):
        one, other = state.years
        ends = tuple(float(np.asarray(y.days)[-1]) for y in state.years)
        return (
            max(top_of(one), top_of(other)),
            state.names,
            ends,
            one.bands,
            other.bands,
            len(one.planes),
            len(other.planes),
        )

    def draw_static(self, state):
        top = self.signature(state)[0]
        self.graphs = []
        for box, name, year in zip(self.columns(1, 1, gap=1.6), state.names, state.years, strict=True):
            left, bottom, right, head = self.title(box, name)
            box = (left, bottom, right - band_room(self, year.bands), head)
            ax = self.graph(box, "", "wood moisture, mass %", "y")
            self.graphs.append(MoistureGraph(self, ax, year, top))

    def draw_moving(self, state):
        for graph, year in zip(self.graphs, state.years, strict=True):
            graph.moving(year)

    def alt(self, state):
        parts = []
        for name, year in zip(state.names, state.years, strict=True):
            moisture = np.asarray(year.planes[0][1], dtype=float)
            over = [f"{limit:g} %" for limit, _ in year.bands if moisture.max() > limit]
            parts.append(
                f"{name}: starts at {moisture[0]:.1f} %, peaks at {moisture.max():.1f} %, ends at {moisture[-1]:.1f} %"
                + (f", over {' and '.join(over)}." if over else ".")
            )
        return sentences("Wood moisture of two roofs on the same axes.", *parts)
