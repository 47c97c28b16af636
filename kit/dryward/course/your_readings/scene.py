"""What loggers wrote down: as read, as vapor pressures, and against the model."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes

from dryward import language
from dryward.checks import Floats
from dryward.pictures import style
from dryward.pictures.drawing import Box, LivePicture, ceiling, sentences, thinned

message = language.beside(__file__)

#: Tops of the pressure axis [Pa] and of the moisture axis [mass %].
_TOPS = {"us": (0.3, 0.6, 0.9, 1.2, 1.8, 2.4, 4.0, 8.0), "si": (1000, 2000, 3000, 4000, 6000, 8000, 14000, 30000)}
_WET = (20, 30, 40, 60, 100, 200)
#: The top of the axis of humidity [-]: room for a sensor that reads too high; what is over it is drawn there.
MOST_HUMID = 1.15
#: Looks of the places a logger can be in.
_PLACES = ("room air", "cavity air", "outdoor air", "air flow")


@dataclass(frozen=True)
class Trace:
    """One line."""

    name: str
    #: Since the start [days], rising.
    days: Floats
    #: SI of the view: degC and 0 to 1, Pa, or mass %.
    values: Floats


@dataclass(frozen=True)
class LoggerTraces:
    """Lines of one view."""

    #: Temperature over relative humidity; vapor pressures of places; wood moisture as measured and as modeled.
    view: str
    #: Temperatures; vapor pressures; or moisture, the measured one first.
    upper: tuple[Trace, ...]
    #: Relative humidities, for the first view.
    lower: tuple[Trace, ...] = ()
    #: Words for the first day.
    start: str = ""


class Traces(LivePicture[LoggerTraces]):
    """Long lines on one time axis."""

    size = (860, 420)

    def _top(self, state: LoggerTraces) -> Any:
        """The top of the upper axis, or both its ends."""
        highest = max((float(np.nanmax(t.values)) for t in _known(state.upper)), default=0.0)
        if state.view == "vapor":
            return ceiling(self.shown(highest, "pressure"), _TOPS[self.unit_system])
        if state.view == "model":
            return ceiling(highest, _WET)
        lowest = min((float(np.nanmin(t.values)) for t in _known(state.upper)), default=0.0)
        step, zero = (20 / 1.8, -160 / 9) if self.unit_system == "us" else (10.0, 0.0)
        return (np.floor((lowest - zero) / step) * step + zero, np.ceil((highest - zero) / step + 0.01) * step + zero)

    def signature(self, state: LoggerTraces) -> Any:
        names = tuple(t.name for t in state.upper)
        ends = (float(state.upper[0].days[0]), float(state.upper[0].days[-1]))
        return state.view, names, len(state.lower), self._top(state), ends, state.start

    def draw_static(self, state: LoggerTraces) -> None:
        (box,) = self.columns(1)
        left, bottom, right, top = box
        looks = self._looks(state)
        top = self.line_key(looks, [t.name for t in state.upper], left, top, right)
        when = message("axis-days-from", start=state.start) if state.start else message("axis-days")
        if state.view == "readings":
            middle = (bottom + self.line + top) / 2
            upper = self._axes(
                state, (left, middle, right, top - 2), "", message("axis-temperature", unit=self.symbol("temperature"))
            )
            upper.tick_params(labelbottom=False)
            upper.set_ylim(*(self.shown(t, "temperature") for t in self._top(state)))
            lower = self._axes(state, (left, bottom, right, middle), when, message("axis-humidity"))
            lower.set_ylim(0, 100 * MOST_HUMID + 1)
            lower.axhline(100, **self.stroke("limit", linewidth=0.8 * self.type.thick))
        else:
            vapor = state.view == "vapor"
            label = message("axis-pressure", unit=self.symbol("pressure")) if vapor else message("axis-wood")
            upper, lower = self._axes(state, (left, bottom, right, top - 2), when, label), None
            upper.set_ylim(0, self._top(state))
        self.upper = [self.moving(upper.plot([], [], **look)[0]) for look in looks]
        self.lower = [self.moving(lower.plot([], [], **look)[0]) for look in looks[: len(state.lower)]] if lower else []
        self.columns_shown = max(int(self.width * upper.get_position().width), 50)

    def _axes(self, state: LoggerTraces, box: Box, xlabel: str, ylabel: str) -> Axes:
        """A graph over the days of the readings."""
        ax = self.graph(box, xlabel, ylabel)
        ax.set_xlim(float(state.upper[0].days[0]), float(state.upper[0].days[-1]))
        return ax

    def _looks(self, state: LoggerTraces) -> list[dict[str, Any]]:
        """How each line is drawn."""
        thin = 1.7 * self.type.thick
        if state.view == "model":
            measured = self.stroke("moisture content", linewidth=thin)
            modeled = self.stroke("saturation", color=style.INK, linewidth=thin)
            return [measured, modeled, self.stroke("limit", linewidth=thin)][: len(state.upper)]
        return [self.stroke(quantity, linewidth=thin) for _, quantity in zip(state.upper, _PLACES, strict=False)]

    def draw_moving(self, state: LoggerTraces) -> None:
        quantity = {"readings": "temperature", "vapor": "pressure"}.get(state.view)
        for line, trace in zip(self.upper, state.upper, strict=True):
            x, y = thinned(trace.days, trace.values, self.columns_shown)
            line.set_data(x, self.shown(y, quantity) if quantity else y)
        for line, trace in zip(self.lower, state.lower, strict=True):
            x, y = thinned(trace.days, trace.values, self.columns_shown)
            line.set_data(x, 100 * y)

    def alt(self, state: LoggerTraces) -> str:
        days = state.upper[0].days
        quantity = {"readings": "temperature", "vapor": "pressure"}.get(state.view, "")
        count = round(float(days[-1]) - float(days[0]))
        first = message(f"alt-{state.view}", days=count, lines=self._lines(state.upper, quantity))
        if not state.lower:
            return sentences(first)
        return sentences(first, message("alt-humidities", lines=self._lines(state.lower, "relative humidity")))

    def _lines(self, traces: tuple[Trace, ...], quantity: str) -> str:
        """The ends and the mean of each line; without a quantity they are wood moistures."""
        lines = []
        for trace in _known(traces):
            found = (float(f(trace.values)) for f in (np.nanmin, np.nanmean, np.nanmax))
            low, mean, high = (
                self.show(each, quantity) if quantity else self.show(each / 100, "relative humidity", 1)
                for each in found
            )
            lines.append(message("alt-line", place=trace.name, low=low, mean=mean, high=high))
        return _in_a_row(lines) or message("alt-nothing")


def _known(traces: tuple[Trace, ...]) -> list[Trace]:
    """Those with any number: a column read wrongly has none."""
    return [trace for trace in traces if np.isfinite(trace.values).any()]


def _in_a_row(lines: list[str]) -> str:
    """What is said of each line, one after another."""
    found = "".join(lines[:1])
    for each in lines[1:]:
        found = message("alt-next", first=found, next=each)
    return found
