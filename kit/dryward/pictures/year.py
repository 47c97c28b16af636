"""A year of water: wood moisture day by day, twelve months of wetting and drying, and two roofs side by side."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.ticker import FuncFormatter
from matplotlib.transforms import ScaledTranslation
from numpy.typing import NDArray

from dryward.checks import Floats
from dryward.language import called, joined, listed, message
from dryward.physics.monthly import Months
from dryward.pictures import style
from dryward.pictures.drawing import (
    Box,
    Entry,
    Judged,
    LivePicture,
    apart,
    ceiling,
    letters_every,
    month_letters,
    percent,
    sentences,
    thinned,
)
from dryward.units import number, written
from dryward.verdict.words import month, month_of, reading
from dryward.weather import DAYS

#: Days of a year, leap years and all, and hours of one that is run.
_YEAR, HOURS = 365.25, 8760
#: Tops of the moisture axis [%]: what is soaked leaves it, with words; and of the monthly bars in the unit shown.
_TOPS = (24, 32, 40, 60)
_MOST = (20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000)
#: Lines of the planes: the first is the one that counts.
DASHES: tuple[str | tuple[int, tuple[float, ...]], ...] = ("-", (0, (5, 1.8)), (0, (1.2, 1.3)))


@dataclass(frozen=True)
class MoistureYear(Judged):
    """Wood moisture over time, and twelve months a year of water in and out."""

    #: Since the start [days], rising.
    days: Floats
    #: Name and moisture [mass %] of one to three; the first is the one that counts.
    planes: tuple[tuple[str, Floats], ...]
    #: Moisture [mass %] and words of the lines to judge by, rising.
    bands: tuple[tuple[float, str], ...] = ()
    #: Water in and out in each month from the start, both positive [kg/m2].
    brought: Sequence[float] | Floats = ()
    carried: Sequence[float] | Floats = ()
    #: Of the start, 0 to 11.
    first_month: int = 0
    #: Where the cursor stands; the whole time when None.
    day: float | None = None
    #: Of the plane that counts [degC].
    temperature: Floats | None = None
    #: What the years are called, the last one the one that counts; empty for counting them.
    years: tuple[str, ...] = ()


class MoistureGraph:
    """Moisture lines, bands and a cursor on the axes of a picture."""

    def __init__(self, picture: LivePicture[Any], ax: Axes, state: MoistureYear, top: float) -> None:
        self.picture, self.ax = picture, ax
        p, far = picture, float(np.asarray(state.days)[-1])
        ax.set_xlim(0, far)
        ax.set_ylim(0, top)
        month_ticks(p, ax, far, state, letters=len(state.brought) > 0)
        scale = p.height * ax.get_position().height / top
        # Words stand right of the graph, where no line crosses them, and apart where the lines are close.
        bands = told_apart(state.bands, 0.5 * p.line / scale)
        places = apart([limit * scale for limit, _ in bands], p.line)
        for row, ((limit, words), place) in enumerate(zip(bands, places, strict=True)):
            ax.axhline(limit, **p.stroke("limit", linewidth=(1.2 + 0.5 * row) * p.type.thick))
            ax.annotate(
                _told(limit, words), (1, place / scale), (5, 0), xycoords=ax.get_yaxis_transform(), color=style.INK,
                textcoords="offset points", va="center_baseline", fontproperties=p.font(small=True),
            )  # fmt: skip
        self.faint = [
            p.moving(ax.plot([], [], color=p.pencil, linestyle=dash, linewidth=1.2 * p.type.thick)[0])
            for _, dash in zip(state.planes, DASHES, strict=False)
        ]
        keys = [p.stroke("moisture content", linestyle=dash) for _, dash in zip(state.planes, DASHES, strict=False)]
        self.bold = [p.moving(ax.plot([], [], **key)[0]) for key in keys]
        cursor = p.stroke("here", linewidth=1.4 * p.type.thick)
        self.cursor = p.moving(ax.plot([], [], **cursor)[0])
        self.dots = p.dot(ax, "moisture content", "o", 0.8)
        self.over = p.moving(ax.text(0, top - 0.5 * p.line / scale, "", color=style.INK, va="center_baseline",
                                     fontproperties=p.font(small=True)))  # fmt: skip

    def moving(self, state: MoistureYear) -> None:
        """Put the state into the lines."""
        days = np.asarray(state.days, dtype=float)
        columns = max(int(self.picture.width * self.ax.get_position().width), 50)
        day = days[-1] if state.day is None else min(max(state.day, days[0]), days[-1])
        now = []
        for faint, bold, (_, moisture) in zip(self.faint, self.bold, state.planes, strict=True):
            moisture = np.asarray(moisture, dtype=float)
            x, y = thinned(days, moisture, columns)
            faint.set_data(x, y)
            seen = x <= day
            now.append(float(np.interp(day, days, moisture)))
            bold.set_data([*x[seen], day], [*y[seen], now[-1]])
        for line in (*self.faint, self.cursor, self.dots):
            line.set_visible(state.day is not None)
        self._leaving(days, state.planes)
        self.cursor.set_data([day, day], self.ax.get_ylim())
        self.dots.set_data([day] * len(now), now)

    def _leaving(self, days: Floats, planes: Sequence[tuple[str, Floats]]) -> None:
        """Words where a line leaves the chart at the top."""
        (_, far), top = self.ax.get_xlim(), self.ax.get_ylim()[1]
        out = [int(np.argmax(np.asarray(m) > top)) for _, m in planes if np.max(m) > top]
        self.over.set_visible(bool(out))
        if out:
            day = float(days[min(out)])
            early = day < far / 2
            # A little beside the line.
            aside = ScaledTranslation((5 if early else -5) / 72, 0, self.picture.figure.dpi_scale_trans)
            self.over.set(
                x=day, ha="left" if early else "right", text=message("pictures.above-the-chart"),
                transform=self.ax.transData + aside,
            )  # fmt: skip


def told_apart(bands: Sequence[tuple[float, str]], least: float) -> list[tuple[float, str]]:
    """The lines to judge by, the lowest of those that would merge into one.

    Examples
    --------
    >>> told_apart(((20, "caution"), (28, "decay")), 10)
    [(20, 'caution')]
    """
    kept: list[tuple[float, str]] = []
    for band in bands:
        if not kept or band[0] - kept[-1][0] >= least:
            kept.append(band)
    return kept


def _told(limit: float, words: str) -> str:
    return message("pictures.limit-line", amount=percent(limit), words=words) if words else percent(limit)


def band_room(picture: LivePicture[Any], bands: Sequence[tuple[float, str]]) -> float:
    """Room right of a graph for the words of its bands [px]."""
    return 8 + max([0.0, *(picture.extent(_told(*band), small=True) for band in bands)])


def month_ticks(picture: LivePicture[Any], ax: Axes, far: float, state: MoistureYear, letters: bool = False) -> None:
    """Letters of months under a time axis in days; years where months are too many.

    With `letters` two years have their months too: another axis below names the years.
    """
    starts = np.arange(0, far - 1, _YEAR / 12)
    for start in np.arange(_YEAR, far - 1, _YEAR):
        ax.axvline(start, color=picture.pencil, linewidth=0.9 * picture.type.thick, zorder=0.5)
    if len(starts) <= (24 if letters else 14):
        middles = starts + _YEAR / 24
        every = letters_every(picture, ax, len(starts))
        names = month_letters(state.first_month, len(starts))
        ax.set_xticks(middles[::every], names[::every])
        ax.tick_params(axis="x", length=0)
        return
    years = np.arange(0, far - 1, _YEAR)
    named = state.years or [message("pictures.year-number", number=k + 1) for k in range(len(years))]
    ax.set_xticks(years + _YEAR / 2, named)
    ax.tick_params(axis="x", length=0)


def top_of(state: MoistureYear) -> float:
    """Top of the moisture axis [%]."""
    highest = max(float(np.max(m)) for _, m in state.planes)
    return ceiling(max(highest, *(1.12 * limit for limit, _ in state.bands), 20), _TOPS)


class YearGraph(LivePicture[MoistureYear]):
    """Moisture of the planes over the months, over bars of water in and out."""

    size = (860, 420)

    def signature(self, state: MoistureYear) -> tuple[Any, ...]:
        bars = ceiling(
            self.shown(max([0.0, *map(float, state.brought), *map(float, state.carried)]), "area density"), _MOST
        )
        names = tuple(name for name, _ in state.planes)
        far = float(np.asarray(state.days)[-1])
        return (
            top_of(state), bars, names, state.bands, far, state.first_month, state.years, len(state.brought),
            self._limits(state),
        )  # fmt: skip

    def draw_static(self, state: MoistureYear) -> None:
        top, bars = self.signature(state)[:2]
        warm = state.temperature is not None
        (box,) = self.columns(1)
        left, bottom, right, head = box
        right -= band_room(self, state.bands)
        high = head - bottom
        middle = bottom + 0.34 * high if len(state.brought) else bottom
        upper = middle + 0.26 * high if warm else middle
        foot = head
        if len(state.planes) > 1 or state.planes[0][0]:
            pairs = list(zip(state.planes, DASHES, strict=False))
            looks = [self.stroke("moisture content", linestyle=dash) for _, dash in pairs]
            foot = self.line_key(looks, [called(name) for (name, _), _ in pairs], left, head, right)
        ax = self.graph((left, upper, right, foot - 2), "", message("pictures.wood-moisture-axis"), "y")
        self.lines = MoistureGraph(self, ax, state, top)
        self.warm = self._warmth((left, middle, right, upper), state) if warm else None
        self.bars: list[list[Rectangle]] = []
        if len(state.brought):
            self._water((left, bottom, right, middle - 0.2 * self.line), state, bars)

    def _limits(self, state: MoistureYear) -> tuple[float, float] | None:
        """Of the temperature strip, rounded outward to 20 degF or 10 degC [degC]."""
        if state.temperature is None:
            return None
        step, zero = (20 / 1.8, -160 / 9) if self.unit_system == "us" else (10.0, 0.0)
        low, high = float(np.min(state.temperature)), float(np.max(state.temperature))
        return float(np.floor((low - zero) / step) * step + zero), float(np.ceil((high - zero) / step) * step + zero)

    def _warmth(self, box: Box, state: MoistureYear) -> Line2D:
        ax = self.graph(box, "", message("pictures.temperature-axis", unit=self.symbol("temperature")), "y")
        far = float(np.asarray(state.days)[-1])
        ax.set_xlim(0, far)
        month_ticks(self, ax, far, state)
        ax.set_ylim(*(self.shown(t, "temperature") for t in self._limits(state) or ()))
        return self.moving(ax.plot([], [], **self.stroke("temperature", linewidth=1.2 * self.type.thick))[0])

    def _water(self, box: Box, state: MoistureYear, most: float) -> None:
        entries = [
            ("vapor pressure", message("pictures.water-in"), "bar"),
            ("drying", message("pictures.water-out"), "bar"),
        ]
        left, bottom, right, top = box
        head = message("pictures.a-month", unit=self.symbol("area density"))
        self.words(left + 2, top - self.line, head)
        self.key(entries, left + self.extent(head) + 2.5 * self.type.words, top, right)
        ax = self.graph((left, bottom, right, top - self.line), "", "", "y")
        far = float(np.asarray(state.days)[-1])
        ax.set_xlim(0, far)
        month_ticks(self, ax, far, state)
        ax.set_ylim(-most, most)
        ax.set_yticks([-most, 0, most], [f"{most}", "0", f"{most}"])
        ax.axhline(0, color=style.INK, linewidth=1.0 * self.type.thick)
        wide = _YEAR / 12
        for place in range(len(state.brought)):
            pair = []
            for quantity in ("vapor pressure", "drying"):
                bar = Rectangle((place * wide + 0.12 * wide, 0), 0.76 * wide, 0, facecolor=self.color(quantity),
                                linewidth=0)  # fmt: skip
                pair.append(self.patch(ax, bar))
            self.bars.append(pair)

    def draw_moving(self, state: MoistureYear) -> None:
        self.lines.moving(state)
        if self.warm is not None and state.temperature is not None:
            x, y = thinned(state.days, state.temperature, int(0.8 * self.width))
            self.warm.set_data(x, self.shown(y, "temperature"))
        seen = np.inf if state.day is None else state.day
        for place, (bars, brought, carried) in enumerate(zip(self.bars, state.brought, state.carried, strict=True)):
            for bar, value, way in zip(bars, (brought, carried), (1, -1), strict=True):
                bar.set_height(way * self.shown(float(value), "area density"))
                bar.set_alpha(None if (place + 0.5) * _YEAR / 12 <= seen else 0.3)

    def alt(self, state: MoistureYear) -> str:
        days = np.asarray(state.days, dtype=float)
        planes = [
            (called(name) or message("pictures.the-wood"), np.asarray(moisture, dtype=float))
            for name, moisture in state.planes
        ]
        name, moisture = planes[0]
        # Where years have names the last is the one that counts.
        counts = days > days[-1] - _YEAR + 0.5 if state.years else np.full(days.shape, True)
        water = here = ""
        if len(state.brought):
            most = self.show(float(np.max(state.brought)), "area density")
            water = message("pictures.wettest-month-brings", amount=most)
        if state.day is not None:
            now = reading(float(np.interp(state.day, days, moisture)), 1)
            here = message("pictures.on-day", day=number(state.day, 0), moisture=now)
        return sentences(
            message(
                "pictures.moisture-year", plane=name, span=_span(days, state.years), named=bool(state.years),
                start=reading(moisture[0], 1), end=reading(moisture[-1], 1),
                **_peak(state, days, moisture, counts),
            ),
            self._over(state, days, moisture, counts),
            *(
                message("pictures.other-peaks", plane=other, **_peak(state, days, each, counts))
                for other, each in planes[1:]
            ),
            water,
            here,
        )  # fmt: skip

    def _over(self, state: MoistureYear, days: Floats, moisture: Floats, counts: NDArray[np.bool_]) -> str:
        """Which lines are crossed, and for how long; of years with names the page says that."""
        over = [
            _line_over(limit, words, None if state.years else _days_over(days, moisture, limit))
            for limit, words in state.bands
            if moisture[counts].max() > limit
        ]
        if over:
            lines = joined("pictures.line-after-line", over)
            return message("pictures.over-lines", lines=lines, named=bool(state.years))
        return message("pictures.below-lines", named=bool(state.years)) if state.bands else ""


def _span(days: Floats, years: Sequence[str]) -> str:
    """How long, and what its years are called one after the other."""
    span = message("pictures.span", days=number(days[-1], 0))
    for k, each in enumerate(years):
        span = message("pictures.span-then-year" if k else "pictures.span-and-year", span=span, year=each)
    return span


def _line_over(limit: float, words: str, days: float | None) -> str:
    """A line to judge by that is crossed, and for how many days, where that is told."""
    facts = {"words": words or message("pictures.the-limit"), "limit": percent(limit)}
    if days is None:
        return message("pictures.line-over", **facts)
    return message("pictures.line-over-for", time=_said(days), **facts)


def _peak(state: MoistureYear, days: Floats, moisture: Floats, counts: NDArray[np.bool_]) -> dict[str, str]:
    """The highest moisture of what counts, and its month."""
    at = int(np.argmax(np.where(counts, moisture, -np.inf)))
    hour = days[at] * 24 - 1 + 24 * DAYS[: state.first_month].sum()
    return {"peak": reading(moisture[at], 1), "month": month_of(max(hour, 0) % HOURS)}


def _said(days: float) -> str:
    count = max(1, int(f"{days:.0f}"))
    return message("pictures.less-than-a-day") if days < 0.5 else message("pictures.so-many-days", count=count)


def _days_over(days: Floats, moisture: Floats, limit: float) -> float:
    return float(np.trapezoid((moisture > limit).astype(float), days))


#: Ends of the axis, in the unit shown.
_ENDS = (50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 150_000)


@dataclass(frozen=True)
class MonthlyWater(Judged):
    """A year of one plane, or of the whole assembly."""

    #: Months as they are drawn, 0 to 11.
    order: tuple[int, ...]
    #: In each of them, both positive [kg/m2].
    condensed: tuple[float, ...]
    evaporated: tuple[float, ...]
    #: At the end of each [kg/m2].
    held: tuple[float, ...]
    #: What the layer can hold without harm [kg/m2].
    limit: float | None = None


def from_balance(months: Months, limit: float | None = None) -> MonthlyWater:
    """The state of all planes together, of a year that `physics` has worked out."""
    condensed, evaporated, held = (
        tuple(np.asarray(each).reshape(12, -1).sum(axis=1).tolist())
        for each in (months.condensed, months.evaporated, months.held)
    )
    return MonthlyWater(tuple(m - 1 for m in months.month), condensed, evaporated, held, limit)


class MonthBars(LivePicture[MonthlyWater]):
    """Bars up for wetting, bars down for drying, and the carry-over line."""

    size = (760, 400)
    narrow_size = (366, 360)

    def signature(self, state: MonthlyWater) -> tuple[Any, ...]:
        up = self.shown(max(*state.condensed, *state.held), "area density")
        down = self.shown(max(state.evaporated), "area density")
        return ceiling(up, _ENDS), ceiling(max(down, 0.2 * up), _ENDS), tuple(state.order)

    def draw_static(self, state: MonthlyWater) -> None:
        up, down, order = self.signature(state)
        (box,) = self.columns(1)
        entries: list[Entry] = [
            ("vapor pressure", message("pictures.wetting"), "bar"),
            ("drying", message("pictures.drying"), "bar"),
            ("wet", message("pictures.held"), "o"),
        ]
        if state.limit is not None:
            entries.append(("limit", None))
        foot = self.key(entries, box[0], box[3], box[2])
        upward = message("pictures.months-of-water-axis", unit=self.symbol("area density"))
        ax = self.graph((box[0], box[1], box[2], foot - 2), message("pictures.month"), upward, "y")
        ax.set_xlim(-0.7, 11.7)
        letters = month_letters()
        ax.set_xticks(range(12), [letters[m] for m in order])
        ax.set_ylim(-down, 1.04 * up)
        # Drying hangs down; its numbers need no sign.
        ax.yaxis.set_major_formatter(FuncFormatter(lambda value, _: written(abs(value), "g")))
        ax.axhline(0, color=style.INK, linewidth=1.2 * self.type.thick)
        looks = (("vapor pressure", ""), ("drying", "///"))
        self.bars = [
            [
                self.patch(ax, Rectangle((m - 0.36, 0), 0.72, 0, facecolor=self.color(q), hatch=h,
                                         edgecolor=self.background, linewidth=0))
                for m in range(12)
            ]
            for q, h in looks
        ]  # fmt: skip
        self.limit = self.moving(ax.plot([], [], **self.stroke("limit"))[0])
        size = 0.7 * self.type.words
        held = self.stroke("wet", marker="o", markersize=size, markeredgecolor=self.background)
        self.held = self.moving(ax.plot([], [], **held)[0])

    def draw_moving(self, state: MonthlyWater) -> None:
        for bars, values, way in zip(self.bars, (state.condensed, state.evaporated), (1, -1), strict=True):
            for bar, value in zip(bars, values, strict=True):
                bar.set_height(way * self.shown(value, "area density"))
        held = self.shown(np.asarray(state.held), "area density")
        # What the year starts with is what the last month left only when it came round; it starts at nothing.
        self.held.set_data(np.arange(12) + 0.5, held)
        self.limit.set_visible(state.limit is not None)
        if state.limit is not None:
            self.limit.set_data([-0.7, 11.7], [self.shown(state.limit, "area density")] * 2)

    def alt(self, state: MonthlyWater) -> str:
        peak = int(np.argmax(state.held))
        if max(state.held) <= 0:
            return sentences(message("pictures.twelve-months"), message("pictures.no-month-collects"))
        wetting = [month(m + 1) for m, c in zip(state.order, state.condensed, strict=True) if c > 0]
        end = message("pictures.all-dries-out")
        if state.held[-1] > 0:
            end = message("pictures.carried-over", amount=self.show(state.held[-1], "area density"))
        most = self.show(state.held[peak], "area density")
        months = joined("pictures.month-after-month", wetting) if wetting else ""
        return sentences(
            message("pictures.twelve-months"),
            message("pictures.collects-in", months=months) if wetting else "",
            message("pictures.most-is-held", month=month(state.order[peak] + 1), amount=most),
            end,
        )


@dataclass(frozen=True)
class TwoYears:
    """Two years of moisture with their names."""

    names: tuple[str, str]
    #: Over the same time, with as many planes and the same bands.
    years: tuple[MoistureYear, MoistureYear]


class TwoYearGraphs(LivePicture[TwoYears]):
    """The same graph twice, so that heights can be compared across."""

    size = (860, 360)

    def signature(self, state: TwoYears) -> tuple[Any, ...]:
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

    def draw_static(self, state: TwoYears) -> None:
        top = self.signature(state)[0]
        self.graphs = []
        for box, name, year in zip(self.columns(1, 1, gap=1.6), state.names, state.years, strict=True):
            left, bottom, right, head = self.title(box, name)
            box = (left, bottom, right - band_room(self, year.bands), head)
            ax = self.graph(box, "", message("pictures.wood-moisture-axis"), "y")
            self.graphs.append(MoistureGraph(self, ax, year, top))

    def draw_moving(self, state: TwoYears) -> None:
        for graph, year in zip(self.graphs, state.years, strict=True):
            graph.moving(year)

    def alt(self, state: TwoYears) -> str:
        parts = []
        for name, year in zip(state.names, state.years, strict=True):
            moisture = np.asarray(year.planes[0][1], dtype=float)
            over = [percent(limit) for limit, _ in year.bands if moisture.max() > limit]
            facts = {
                "name": name,
                "start": percent(moisture[0], 1),
                "peak": percent(moisture.max(), 1),
                "end": percent(moisture[-1], 1),
            }
            if over:
                parts.append(message("pictures.one-of-two-years-over", limits=listed(over), **facts))
            else:
                parts.append(message("pictures.one-of-two-years", **facts))
        return sentences(message("pictures.two-years"), *parts)
