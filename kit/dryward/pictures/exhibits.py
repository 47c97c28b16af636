"""One picture for each kind of result, as `plot` gives it: the lessons' own, standing still; and files of them."""

from __future__ import annotations

import io
import math
from collections.abc import Callable, Sequence
from functools import singledispatch
from pathlib import Path
from typing import Any

import matplotlib
import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.ticker import MaxNLocator
from PIL import Image

from dryward.building import Assembly
from dryward.checks import OutOfRange, UnknownName
from dryward.language import called, joined, message
from dryward.physics.drying import Drying
from dryward.physics.hourly import Hours
from dryward.physics.limits import Range
from dryward.physics.monthly import Months
from dryward.physics.steady import Profile, Sweep
from dryward.pictures.drawing import Grid, LivePicture, State, sentences, thinned
from dryward.pictures.section import SectionAndProfile, SectionPart, SteadyRoof, layers_in_words
from dryward.pictures.year import MoistureYear, MonthBars, YearGraph, from_balance
from dryward.units import SHOWN, number
from dryward.verdict import STATES, UNKNOWN, Verdict, criterion, states_of_sweep, words
from dryward.weather import Air
from dryward.weather.climate import YEAR

#: Hours between the points of a year that is drawn.
_EVERY = 6
#: Curves of wood in one picture.
_CURVES = 3
#: Rows of findings that are drawn.
_ROWS = 8


def figure(result: object, unit_system: str = "us") -> Figure:
    """The picture of a result as a Matplotlib figure."""
    return _drawn(result, unit_system)[0].figure


def png(result: object, unit_system: str = "us") -> tuple[bytes, str]:
    """The picture of a result as PNG, and what it shows in words."""
    picture, said = _drawn(result, unit_system)
    out = io.BytesIO()
    picture.figure.savefig(out, format="png", metadata={"Software": None})
    return out.getvalue(), said


def _drawn(result: object, unit_system: str) -> tuple[LivePicture, str]:
    if unit_system not in SHOWN:
        raise UnknownName("unit system", unit_system, SHOWN)
    kind, state = pictured(result)
    picture = kind(unit_system)
    picture.redraw(state)
    return picture, picture.alt(state)


@singledispatch
def pictured(result: object) -> tuple[Callable[[str], LivePicture], object]:
    """The kind of picture of a result, and the state that it draws."""
    raise OutOfRange(message("pictures.none-of", given=repr(str(result)[:40])))


# --- what the lessons draw too ---------------------------------------------------


@pictured.register
def _(profile: Profile) -> tuple[Callable[[str], LivePicture], object]:
    indoor, outdoor = (
        Air(float(profile.temperature[end]), min(float(profile.relative_humidity[end]), 1.0)) for end in (0, -1)
    )
    return SectionAndProfile, SteadyRoof(profile.assembly, profile, indoor, outdoor)


@pictured.register
def _(months: Months) -> tuple[Callable[[str], LivePicture], object]:
    return MonthBars, from_balance(months)


@pictured.register
def _(hours: Hours) -> tuple[Callable[[str], LivePicture], object]:
    judged = hours.verdict
    woods = [each for each in judged.findings if each.what == "wood-moisture"][:_CURVES]
    if not woods or hours.time.size < YEAR:
        return _Water, hours
    limit = criterion("wood-moisture")
    names = [each.place.layer for each in woods]
    brought, carried = hours.monthly().in_and_out
    return YearGraph, MoistureYear(
        days=hours.time[::_EVERY] / 24,
        planes=tuple((name, hours.layer(name).moisture_content[::_EVERY]) for name in names),
        bands=((limit.caution, message("pictures.caution")), (limit.damage, message("pictures.decay"))),
        brought=brought,
        carried=carried,
        temperature=hours.layer(names[0]).temperature[::_EVERY],
    )


# --- a roof as it is built -----------------------------------------------------------


class _Bare(SectionPart):
    """The layers and their names, without temperature or water."""

    def bare(self, assembly: Assembly, box: tuple[float, float, float, float]) -> None:
        """Layers and names in a box."""
        p = self.picture
        left, bottom, right, top = box
        self._scale(assembly, left, right)
        levels, rows = self._levels(assembly)
        self.floor, self.roof = bottom + 0.4 * p.line, top - rows * 1.1 * p.line - 0.25 * p.line
        self._layers(assembly)
        self._names(assembly, levels)


class _Construction(LivePicture[Assembly]):
    """A roof or a wall to scale, from the room at the left to outdoors at the right."""

    size = (620, 320)

    def draw_static(self, state: Assembly) -> None:
        self.part = _Bare(self)
        self.part.bare(state, (6, 6, self.width - 6, self.height - 4))

    def draw_moving(self, state: Assembly) -> None:
        pass  # nothing moves in it

    def alt(self, state: Assembly) -> str:
        facts = {"name": called(state.name), "thick": self.show(state.thickness, "length")}
        return sentences(message("pictures.construction", layers=layers_in_words(state), **facts))


@pictured.register
def _(assembly: Assembly) -> tuple[Callable[[str], LivePicture], object]:
    return _Construction, assembly


# --- plain graphs ------------------------------------------------------------------------


class _Graph(LivePicture):
    """One graph of a result that no lesson draws; nothing in it moves."""

    size = (620, 360)

    def axes(self, across: str, upward: str, grid: Grid = "both", names: Sequence[str] = ("00000",)) -> Axes:
        """Axes over the whole picture, with room at the left for the names or numbers that stand there."""
        widest = max((self.extent(name, small=True) for name in names), default=0.0)
        room = "0" * (1 + int(widest / self.extent("0", small=True)))
        (box,) = self.columns(1)
        return self.graph(box, across, upward, grid, room)

    def draw_moving(self, state: object) -> None:
        pass  # drawn once, whole


class _Water(_Graph):
    """Water in all layers through a run that is shorter than a year, or has no wood."""

    def draw_static(self, state: Hours) -> None:
        ax = self.axes(
            message("pictures.days"), message("pictures.water-in-layers-axis", unit=self.symbol("area density"))
        )
        days, water = thinned(state.time / 24, self.shown(state.water, "area density"), int(0.8 * self.width))
        ax.plot(days, water, **self.stroke("moisture content"))
        ax.set_xlim(0, max(float(days[-1]), 1e-9))
        ax.set_ylim(0, None)

    def alt(self, state: Hours) -> str:
        least, most, end = (
            self.show(float(each), "area density") for each in (state.water.min(), state.water.max(), state.water[-1])
        )
        return message("pictures.water-in-layers", least=least, most=most, end=end)


@pictured.register
def _(cases: Sweep) -> tuple[Callable[[str], LivePicture], object]:
    return _Cases, cases


class _Cases(_Graph):
    """Water gained in each case of a sweep, in their order."""

    def draw_static(self, state: Sweep) -> None:
        ax = self.axes(message("pictures.case"), message("pictures.water-gained-axis", unit=self.symbol("vapor flux")))
        gain = self.shown(np.ravel(state.gain), "vapor flux")
        finite = np.isfinite(gain)
        count = np.arange(1, gain.size + 1)
        ax.plot(count[finite], gain[finite], **self.stroke("wet", marker="o", markersize=0.4 * self.type.words))
        ax.set_xlim(0.5, gain.size + 0.5)
        ax.set_ylim(0, max(float(gain[finite].max(initial=0.0)) * 1.08, 1.0))
        ax.xaxis.set_major_locator(MaxNLocator(8, integer=True))

    def alt(self, state: Sweep) -> str:
        states = [str(each) for each in np.ravel(states_of_sweep(state))]
        counts = [
            message("pictures.so-many-of-a-state", count=states.count(name), state=message("verdict.state", state=name))
            for name in (*STATES, UNKNOWN)
            if name in states
        ]
        told = joined("pictures.state-after-state", counts)
        return message("pictures.cases", count=len(states), states=told)


@pictured.register
def _(states: Range) -> tuple[Callable[[str], LivePicture], object]:
    return _Along, states


class _Along(_Graph):
    """The state at each value of what was varied."""

    size = (620, 240)

    def draw_static(self, state: Range) -> None:
        levels = (*STATES, UNKNOWN) if UNKNOWN in state.states else STATES
        names = [message("verdict.state", state=each) for each in levels]
        ax = self.axes(self._variable(state), "", "x", names)
        height = [levels.index(str(each)) for each in state.states]
        ax.plot(self._values(state), height, **self.stroke("wet", marker="o", markersize=0.6 * self.type.words))
        ax.set_ylim(-0.5, len(levels) - 0.5)
        ax.set_yticks(range(len(levels)), names)

    def _values(self, state: Range) -> np.ndarray:
        quantity = state.quantity
        return np.asarray(self.shown(state.values, quantity) if quantity else state.values)

    def _variable(self, state: Range) -> str:
        what = called(state.variable.replace("_", " "))
        return message("pictures.with-unit", what=what, unit=self.symbol(state.quantity)) if state.quantity else what

    def alt(self, state: Range) -> str:
        pairs = zip(self._values(state), state.states, strict=True)
        told = [
            message(
                "pictures.value-and-state",
                value=number(float(value), figures=4),
                state=message("verdict.state", state=str(answer)),
            )
            for value, answer in pairs
        ]
        states_told = joined("pictures.state-after-state", told)
        return message("pictures.state-along", what=self._variable(state), states=states_told)


@pictured.register
def _(drying: Drying) -> tuple[Callable[[str], LivePicture], object]:
    return _BothWays, drying


class _BothWays(_Graph):
    """How fast a wet layer dries to each side."""

    size = (620, 220)

    def draw_static(self, state: Drying) -> None:
        ways = message("pictures.outward"), message("pictures.inward")
        ax = self.axes(message("pictures.drying-axis", unit=self.symbol("vapor flux")), "", "x", ways)
        rates = [self._rate(each) for each in (state.outward, state.inward)]
        ax.barh([0, 1], rates, height=0.6, color=self.color("drying"), hatch="///", edgecolor=self.background)
        ax.axvline(0, color=self.quiet, linewidth=self.type.thick)
        ax.set_yticks([0, 1], ways)
        ax.set_ylim(-0.6, 1.6)

    def _rate(self, rate: float) -> float:
        return float(self.shown(rate, "vapor flux")) if math.isfinite(rate) else 0.0

    def alt(self, state: Drying) -> str:
        told = [
            self.show(each, "vapor flux") if math.isfinite(each) else message("pictures.without-limit")
            for each in (state.inward, state.outward)
        ]
        return message("pictures.dries-both-ways", inward=told[0], outward=told[1])


@pictured.register
def _(verdict: Verdict) -> tuple[Callable[[str], LivePicture], object]:
    return _Findings, verdict


class _Findings(_Graph):
    """Each finding as a share of its damage limit, the worst on top."""

    size = (760, 300)

    def draw_static(self, state: Verdict) -> None:
        found = list(reversed(state.findings[:_ROWS]))
        heads = [
            message("pictures.finding", what=words.heading(each), state=message("verdict.state", state=each.state))
            for each in found
        ]
        ax = self.axes(message("pictures.share-of-limit-axis"), "", "x", heads)
        shares = [min(100 * each.criterion.reach(each.value), 200.0) for each in found]
        looks: dict[str, Any] = {"color": self.color("wet"), "hatch": "///", "edgecolor": self.background}
        ax.barh(range(len(found)), shares, height=0.6, **looks)
        ax.axvline(100, **self.stroke("limit"))
        ax.set_yticks(range(len(found)), heads)
        ax.set_xlim(0, max([110.0, *(1.05 * share for share in shares)]))

    def alt(self, state: Verdict) -> str:
        return words.sentence(state, self.unit_system)


# --- as files ----------------------------------------------------------------------


def font_files() -> dict[str, Path]:
    """The two faces of the letters in the pictures ("" and "B"), for a document that must match them."""
    folder = Path(matplotlib.get_data_path(), "fonts", "ttf")
    return {"": folder / "DejaVuSans.ttf", "B": folder / "DejaVuSans-Bold.ttf"}


def static(picture: LivePicture[State], state: State, form: str = "png", dpi: float = 192) -> bytes:
    """One state of a picture as a PNG (dpi 72 to 600) or SVG file: the same bytes for the same state."""
    out = io.BytesIO()
    picture.redraw(state)
    try:
        # Words stay words in an SVG, and the ids in it are the same each time.
        with matplotlib.rc_context({"svg.fonttype": "none", "svg.hashsalt": "dryward"}):
            if form == "svg":
                picture.figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
                return out.getvalue()
            picture.figure.savefig(out, format="png", dpi=dpi, metadata={"Software": None})
    finally:
        picture.forget()
    if not picture.paper:
        return out.getvalue()
    gray = io.BytesIO()
    Image.open(out).convert("L").save(gray, "PNG", dpi=(dpi, dpi), optimize=True)
    return gray.getvalue()
