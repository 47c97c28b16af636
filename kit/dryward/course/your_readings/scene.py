"""What loggers wrote down: as read, as vapor pressures, and against the model."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from dryward import language
from dryward.pictures import style
from dryward.pictures.drawing import ceiling, sentences, thinned
from dryward.pictures.live import LivePicture

message = language.beside(__file__)

#: Tops of the pressure axis [Pa] and of the moisture axis [mass %].
_TOPS = {"us": (0.3, 0.6, 0.9, 1.2, 1.8, 2.4, 4.0, 8.0), "si": (1000, 2000, 3000, 4000, 6000, 8000, 14000, 30000)}
_WET = (20, 30, 40, 60, 100, 200)
#: Looks of the places a logger can be in.
_PLACES = (message("room-air"), message("cavity-air"), message("outdoor-air"), "air flow")


@dataclass(frozen=True)
class Trace:
    """One line."""

    name: str
    #: Since the start [days], rising.
    days: Any
    #: SI of the view: degC and 0 to 1, Pa, or mass %.
    values: Any


@dataclass(frozen=True)
class LoggerTraces:
    """Lines of one view."""

    #: Temperature over relative humidity; vapor pressures of places; wood moisture as measured and as modeled.
    view: str
    #: Temperatures; vapor pressures; or moisture, the measured one first.
    upper: tuple[Any, ...]
    #: Relative humidities, for the first view.
    lower: tuple[Any, ...] = ()
    #: Words for the first day.
    start: str = ""


class Traces(LivePicture):
    """Long lines on one time axis."""

    size = (860, 420)
    projector_size = (1180, 660)

    def _top(self, state):
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
        when = message("days-from", start=state.start) if state.start else message("days-from-the-start")
        if state.view == "readings":
            middle = (bottom + self.line + top) / 2
            upper = self._axes(state, (left, middle, right, top - 2), "", f"temperature, {self.symbol('temperature')}")
            upper.tick_params(labelbottom=False)
            upper.set_ylim(*(self.shown(t, "temperature") for t in self._top(state)))
            lower = self._axes(state, (left, bottom, right, middle), when, message("relative-humidity"))
            lower.set_ylim(0, 105)
        else:
            vapor = state.view == "vapor"
            label = (
                message("vapor-pressure", symbol=self.symbol("pressure")) if vapor else message("wood-moisture-mass")
            )
            upper, lower = self._axes(state, (left, bottom, right, top - 2), when, label), None
            upper.set_ylim(0, self._top(state))
        self.upper = [self.moving(upper.plot([], [], **look)[0]) for look in looks]
        self.lower = [self.moving(lower.plot([], [], **look)[0]) for look in looks[: len(state.lower)]] if lower else []
        self.columns_shown = max(int(self.width * upper.get_position().width), 50)

    def _axes(self, state, box, xlabel, ylabel):
        ax = self.graph(box, xlabel, ylabel)
        ax.set_xlim(float(state.upper[0].days[0]), float(state.upper[0].days[-1]))
        return ax

    def _looks(self, state):
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
        def told(traces, quantity):
            words = []
            for trace in _known(traces):
                low, mean, high = (float(f(trace.values)) for f in (np.nanmin, np.nanmean, np.nanmax))
                if quantity:
                    low, mean, high = (self.show(v, quantity) for v in (low, mean, high))
                else:
                    low, mean, high = (f"{v:.1f} %" for v in (low, mean, high))
                words.append(message("lowest-mean-highest", name=trace.name, low=low, mean=mean, high=high))
            return ("; ".join(words) or message("nothing-that-can-be")) + "."

        days = state.upper[0].days
        first = {
            "readings": message("alt-temperatures"),
            "vapor": message("alt-vapor-pressures"),
            "model": message("alt-wood-moisture"),
        }[state.view]
        quantity = {"readings": "temperature", "vapor": "pressure"}.get(state.view)
        rest = message("alt-relative-humidity", lower=told(state.lower, "relative humidity")) if state.lower else ""
        return sentences(
            message(
                "alt-over-days",
                first=first,
                days=f"{float(days[-1]) - float(days[0]):.0f}",
                quantity=told(state.upper, quantity),
            ),
            rest,
        )


def _known(traces):
    """Those with any number: a column read wrongly has none."""
    return [trace for trace in traces if np.isfinite(trace.values).any()]
