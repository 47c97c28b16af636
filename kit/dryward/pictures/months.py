"""Twelve bars: what each month wets and dries, and the line of what is carried over."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.patches import Rectangle
from matplotlib.ticker import FuncFormatter

from dryward.pictures import style
from dryward.pictures.film import MONTHS
from dryward.pictures.live import LivePicture
from dryward.pictures.strokes import ceiling, sentences

#: Ends of the axis, in the unit shown.
_MOST = (50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 150_000)


@dataclass(frozen=True)
class MonthsState:
    """A year of one plane, or of the whole assembly.

    Attributes
    ----------
    order : tuple of 12
        Months as they are drawn, 0 to 11.
    condensed, evaporated : tuple of 12
        In each of them, both positive [kg/m2].
    held : tuple of 12
        At the end of each [kg/m2].
    limit : float or None
        What the layer can hold without harm [kg/m2].
    verdict : str
        The state that the page gives what is drawn; empty where it gives none.
    """

    order: tuple
    condensed: tuple
    evaporated: tuple
    held: tuple
    limit: float | None = None
    verdict: str = field(default="", kw_only=True)


def from_balance(months, limit=None):
    """The state of all planes together, of a year that `physics` has worked out.

    Parameters
    ----------
    months : Months
        Of `physics.monthly`.
    limit : float, optional
        [kg/m2].

    Returns
    -------
    MonthsState
    """
    condensed, evaporated, held = (
        tuple(np.asarray(each).reshape(12, -1).sum(axis=1).tolist())
        for each in (months.condensed, months.evaporated, months.held)
    )
    return MonthsState(tuple(m - 1 for m in months.month), condensed, evaporated, held, limit)


class Months(LivePicture):
    """Bars up for wetting, bars down for drying, and the carry-over line."""

    size = (760, 400)
    projector_size = (1180, 620)

    def signature(self, state):
        up = self.shown(max(*state.condensed, *state.held), "area density")
        down = self.shown(max(state.evaporated), "area density")
        return ceiling(up, _MOST), ceiling(max(down, 0.2 * up), _MOST), tuple(state.order)

    def draw_static(self, state):
        up, down, order = self.signature(state)
        (box,) = self.columns(1)
        entries = [
            ("vapor pressure", "wetting", "arrow"),
            ("drying", "drying", "arrow"),
            ("wet", "held, carried over", "o"),
        ]
        if state.limit is not None:
            entries.append(("limit", None))
        foot = self.key(entries, box[0], box[3], box[2])
        ax = self.graph(
            (box[0], box[1], box[2], foot - 2), "month", f"{self.symbol('area density')}; down is drying", "y"
        )
        ax.set_xlim(-0.7, 11.7)
        ax.set_xticks(range(12), [MONTHS[m] for m in order])
        ax.set_ylim(-down, 1.04 * up)
        # Drying hangs down; its numbers need no sign.
        ax.yaxis.set_major_formatter(FuncFormatter(lambda value, _: f"{abs(value):g}"))
        ax.axhline(0, color=style.INK, linewidth=1.2 * self.type.thick)
        looks = (("vapor pressure", ""), ("drying", "///"))
        self.bars = [
            [
                self.moving(ax.add_patch(Rectangle((m - 0.36, 0), 0.72, 0, facecolor=self.color(q), hatch=h,
                                                   edgecolor=self.background, linewidth=0)))
                for m in range(12)
            ]
            for q, h in looks
        ]  # fmt: skip
        self.limit = self.moving(ax.plot([], [], **self.stroke("limit"))[0])
        size = 0.7 * self.type.words
        held = self.stroke("wet", marker="o", markersize=size, markeredgecolor=self.background)
        self.held = self.moving(ax.plot([], [], **held)[0])

    def draw_moving(self, state):
        for bars, values, way in zip(self.bars, (state.condensed, state.evaporated), (1, -1), strict=True):
            for bar, value in zip(bars, values, strict=True):
                bar.set_height(way * self.shown(value, "area density"))
        held = self.shown(np.asarray(state.held), "area density")
        # What the year starts with is what the last month left only when it came round; it starts at nothing.
        self.held.set_data(np.arange(12) + 0.5, held)
        self.limit.set_visible(state.limit is not None)
        if state.limit is not None:
            self.limit.set_data([-0.7, 11.7], [self.shown(state.limit, "area density")] * 2)

    def alt(self, state):
        names = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
                 "November", "December")  # fmt: skip
        peak = int(np.argmax(state.held))
        if max(state.held) <= 0:
            return sentences("Twelve months of wetting and drying.", "No month collects water.")
        wetting = [names[m] for m, c in zip(state.order, state.condensed, strict=True) if c > 0]
        left = self.show(state.held[-1], "area density")
        end = (
            "All of it dries out within the year."
            if state.held[-1] <= 0
            else f"At the year's end {left} are carried over."
        )
        return sentences(
            "Twelve months of wetting and drying.",
            f"Water collects in {', '.join(wetting)}." if wetting else "",
            f"Most is held at the end of {names[state.order[peak]]}: {self.show(state.held[peak], 'area density')}.",
            end,
        )
