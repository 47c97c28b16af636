"""The assembly to scale, with what the temperature and the water do in it, and beside it the graph of vapor pressure.

The dew-point depth (where it is as cold as the dew point of the room air)
and the wet planes (where vapor really reaches saturation) are two marks, not
one: that they differ is the lesson.

Five kinds of layers are told apart without color: fibers as loose waves, boards
as a slanted grain, closed foam as pebbles, air as nothing but a few drifting
strokes, coverings as lapped scales, and membranes as one strong line.

In the graph, against depth the drawing is to scale; against vapor resistance
the vapor line is straight wherever nothing condenses, so that a bend is water.
"""

import math
from collections.abc import Hashable
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from matplotlib.collections import LineCollection
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle
from numpy.typing import NDArray

from dryward import units
from dryward.building import Assembly
from dryward.checks import Floats
from dryward.language import called, joined, message
from dryward.physics.drying import Drying
from dryward.physics.steady import Profile, WetPlane
from dryward.pictures import style
from dryward.pictures.drawing import Box, Entry, Judged, LivePicture, Made, Numbers, arrow, ceiling, sentences, stairs
from dryward.pictures.scenery import layer_kind
from dryward.weather import Air


def pattern(what: str, left: float, right: float, bottom: float, top: float, line: float) -> list[Floats]:
    """Pencil strokes of a kind of layer in a box of px, none outside it; a line of words is the measure."""
    draw = {"fibrous": _waves, "foam": _pebbles, "board": _grain, "covering": _scales, "air": _drift, "vent": _drift}
    strokes = draw[what](left, right, bottom, top, line) if what in draw else []
    return [s for s in (_clipped(stroke, left, right, bottom, top) for stroke in strokes) if len(s) > 1]


def _clipped(stroke: Floats, left: float, right: float, bottom: float, top: float) -> Floats:
    x, y = stroke[:, 0], stroke[:, 1]
    return stroke[(x >= left) & (x <= right) & (y >= bottom) & (y <= top)]


def _waves(left: float, right: float, bottom: float, top: float, line: float) -> list[Floats]:
    x = np.linspace(left, right, max(8, int((right - left) / 2)))
    strokes = []
    for row, base in enumerate(np.arange(bottom + 0.4 * line, top, 0.95 * line)):
        phase = 1.9 * row
        y = base + 0.22 * line * np.sin(2 * np.pi * (x - left) / (2.3 * line) + phase)
        y += 0.10 * line * np.sin(2 * np.pi * (x - left) / (0.87 * line) + 2.3 * phase)
        strokes.append(np.column_stack([x, y]))
    return strokes


def _grain(left: float, right: float, bottom: float, top: float, line: float) -> list[Floats]:
    # Short slanted strokes, a few px apart, in one direction.
    rise, wide = 0.55 * line, right - left
    step = np.linspace(0, 1, 24)
    return [
        np.column_stack([left + wide * step, base + rise * step])
        for base in np.arange(bottom - rise, top, 0.42 * line)
    ]  # fmt: skip


def _pebbles(left: float, right: float, bottom: float, top: float, line: float) -> list[Floats]:
    turn = np.linspace(0, 2 * np.pi, 14)
    radius, pitch = 0.17 * line, 0.66 * line
    strokes = []
    for row, y in enumerate(np.arange(bottom + 0.4 * line, top - radius, pitch)):
        for x in np.arange(left + radius + 2 + (row % 2) * pitch / 2, right - radius - 1, pitch):
            strokes.append(np.column_stack([x + radius * np.cos(turn), y + radius * np.sin(turn)]))
    return strokes


def _scales(left: float, right: float, bottom: float, top: float, line: float) -> list[Floats]:
    wide, strokes = right - left, []
    for base in np.arange(bottom, top, 1.1 * line):
        strokes.append(np.array([(left, base), (right, base + 0.9 * line), (left + 0.15 * wide, base + 1.02 * line)]))
    return strokes


def _drift(left: float, right: float, bottom: float, top: float, line: float) -> list[Floats]:
    # A few strokes along the space: air that stands or wanders.
    step = np.linspace(0, 1, 30)
    strokes = []
    for column, base in enumerate(np.arange(bottom + 0.8 * line, top - 1.2 * line, 2.6 * line)):
        middle = left + (right - left) * (0.36 + 0.28 * (column % 2))
        bend = 0.12 * (right - left) * np.sin(2 * np.pi * step)
        strokes.append(np.column_stack([middle + bend, base + 1.2 * line * step]))
    return strokes


def draw_layer(picture: LivePicture[Any], what: str, left: float, right: float, bottom: float, top: float) -> None:
    """Draw one layer into a picture, box in px, membranes as a line at `left`."""
    # Below all axes, so that a graph may stand on layers.
    figure, thick = picture.figure, picture.type.thick
    if what == "membrane":
        strokes = [np.array([(left, bottom), (left, top)])]
        figure.add_artist(
            LineCollection(strokes, colors=style.INK, linewidths=2.6 * thick, transform=picture.px, zorder=-1)
        )
        return
    strokes = pattern(what, left, right, bottom, top, picture.line)
    figure.add_artist(
        LineCollection(strokes, colors=picture.pencil, linewidths=0.9 * thick, transform=picture.px, zorder=-3)
    )
    edge = "none" if what in ("air", "vent") else style.INK
    figure.add_artist(
        Rectangle(
            (left, bottom), right - left, top - bottom,
            facecolor="none", edgecolor=edge, linewidth=0.9 * thick, transform=picture.px, zorder=-2,
        )
    )  # fmt: skip


#: Planes closer than this are one [m].
_SAME_PLACE = 1e-6
#: A drying arrow of full width stands for this much [kg/(s m2)]: 20 g/m2 day.
FULL_ARROW = 20e-3 / 86400


@dataclass(frozen=True)
class SteadyRoof(Judged):
    """An assembly in a winter or a summer that stands still, as section and graph draw it."""

    assembly: Assembly
    #: In the present airs.
    profile: Profile
    indoor: Air
    outdoor: Air
    #: No arrows without it.
    drying: Drying | None = None
    #: Where the arrows start [m]; the wettest plane when None.
    drying_depth: float | None = None
    #: The axis of the graph: "depth" or "resistance".
    against: str = "depth"


def wettest_depth(state: SteadyRoof) -> float:
    """Depth of the first wet plane, or of the highest humidity [m]."""
    planes = state.profile.wet_planes
    if planes:
        return max(planes, key=lambda plane: plane.rate).depth
    return float(state.profile.depth[state.profile.wettest])


def dried_depth(state: SteadyRoof) -> float:
    """Where the drying arrows start [m]."""
    return wettest_depth(state) if state.drying_depth is None else state.drying_depth


def layers_in_words(assembly: Assembly) -> str:
    """The names of all layers, from inside to outside."""
    return joined("pictures.layer-after-layer", [called(layer.name) for layer in assembly.layers])


def spans(assembly: Assembly) -> list[tuple[float, float]]:
    """Where each layer starts and ends [m], membranes with no thickness."""
    edges = np.concatenate([[0.0], np.cumsum([0.0 if y.is_membrane else y.thickness or 0.0 for y in assembly.layers])])
    return list(pairwise(edges))


class SectionPart:
    """The section in a box of a picture, so that it can stand beside a graph."""

    #: More entries of the key, by a picture that draws more into the section.
    extra: tuple[Entry, ...] = ()

    def __init__(self, picture: LivePicture[Any]) -> None:
        self.picture = picture

    # --- what stands -------------------------------------------------------

    def static(self, state: SteadyRoof, box: Box) -> None:
        """Layers, names, scale, key; and the artists that move."""
        p = self.picture
        left, bottom, right, top = box
        entries = self._key(state)
        floor = bottom + p.key_height(entries, left + 4, right) + 1.25 * p.line
        p.key(entries, left + 4, floor - 1.25 * p.line, right)
        self._scale(state.assembly, left, right)
        levels, rows = self._levels(state.assembly)
        self.floor, self.roof = floor, top - rows * 1.1 * p.line - 0.25 * p.line
        self._layers(state.assembly)
        self._names(state.assembly, levels)
        self._axis(state)
        self._make(state)

    def _key(self, state: SteadyRoof) -> list[Entry]:
        entries: list[Entry] = [
            ("temperature", None),
            ("dew point", message("pictures.dew-point-depth")),
            ("wet", None),
        ]
        if state.drying is not None:
            entries += [
                ("drying", message("pictures.leaves")),
                ("vapor pressure", message("pictures.comes-in"), "arrow"),
            ]
        return [*entries, *self.extra]

    def _scale(self, assembly: Assembly, left: float, right: float) -> None:
        p = self.picture
        self.left, self.right = left + p.extent("−00") + 12, right - 4
        room = max(0.12 * (self.right - self.left), p.extent(message("pictures.room"), small=True) + 10)
        yard = max(0.12 * (self.right - self.left), p.extent(message("pictures.outside"), small=True) + 10)
        self.inside, self.outside = self.left + room, self.right - yard
        self.per_meter = (self.outside - self.inside) / max(assembly.thickness, 1e-3)

    def x(self, depth: Numbers) -> Any:
        """Where a depth [m] stands [px]."""
        return self.inside + np.asarray(depth) * self.per_meter

    def y(self, temperature: Numbers) -> Any:
        """Where a temperature [degC] stands [px]."""
        low, high = self.limits
        return self.floor + (np.asarray(temperature) - low) / (high - low) * (self.roof - self.floor)

    def _layers(self, assembly: Assembly) -> None:
        p = self.picture
        for layer, (start, end) in zip(assembly.layers, spans(assembly), strict=True):
            # A sheet of metal to scale would vanish: never thinner than its edges.
            a, b = float(self.x(start)), float(self.x(end))
            if not layer.is_membrane:
                b = max(b, a + 2.5)
            draw_layer(p, layer_kind(assembly, layer), a, b, self.floor, self.roof)

    def _levels(self, assembly: Assembly) -> tuple[dict[int, int], int]:
        """Row of each name over the drawing, and how many rows there are.

        Row 0 holds what is named right over itself: the airs and the wide
        layers.
        """
        p, thin = self.picture, []
        for index, (layer, (start, end)) in enumerate(zip(assembly.layers, spans(assembly), strict=True)):
            wide = p.extent(called(layer.name), small=True)
            if (end - start) * self.per_meter < wide + 6:
                thin.append((index, float(self.x((start + end) / 2)), wide))
        levels, self._near, rows = stairs(thin, (self.inside + self.outside) / 2)
        return levels, rows

    def _names(self, assembly: Assembly, levels: dict[int, int]) -> None:
        p, pitch = self.picture, 1.1 * self.picture.line
        base = self.roof + 0.32 * p.line
        quiet: dict[str, Any] = {"small": True, "ha": "center", "color": p.quiet}
        p.words((self.left + self.inside) / 2, base, message("pictures.room"), **quiet)
        p.words((self.outside + self.right) / 2, base, message("pictures.outside"), **quiet)
        for index, (layer, span) in enumerate(zip(assembly.layers, spans(assembly), strict=True)):
            x, name = float(self.x(sum(span) / 2)), called(layer.name)
            if index not in levels:
                if (span[1] - span[0]) * self.per_meter >= p.extent(name, small=True) + 6:
                    p.words(x, base, name, small=True, ha="center")
                continue
            near, y = index in self._near, base + levels[index] * pitch
            words = p.fitted(name, (self.right - x if near else x - self.left) - 8, small=True)
            # On a patch of paper, so that a leader of another layer passes behind the name.
            patch = {"facecolor": p.background, "edgecolor": "none", "pad": 0.6}
            p.words(x + (5 if near else -5), y, words, small=True, ha="left" if near else "right", bbox=patch, zorder=4)
            leader = Line2D([x, x], [self.roof + 1, y + 0.62 * p.line], color=style.INK, linewidth=0.8 * p.type.thick)
            leader.set_transform(p.px)
            p.figure.add_artist(leader)

    def signature(self, state: SteadyRoof) -> Hashable:
        """Names and thicknesses, and the range of the temperature axis."""
        layers = tuple(
            (layer.name, layer.thickness, layer_kind(state.assembly, layer)) for layer in state.assembly.layers
        )
        return layers, self.temperature_limits(state), state.drying is None

    def temperature_limits(self, state: SteadyRoof) -> tuple[float, float]:
        """Rounded outward to 40 degF or 20 degC and at least two of them, so that the axis seldom jumps [degC]."""
        airs = (state.indoor.temperature, state.outdoor.temperature)
        step, zero = (40 / 1.8, -160 / 9) if self.picture.unit_system == "us" else (20.0, 0.0)
        high = math.ceil((max(airs) - zero + 1.0) / step)
        low = min(math.floor((min(airs) - zero - 1.0) / step), high - 2)
        return low * step + zero, high * step + zero

    def _axis(self, state: SteadyRoof) -> None:
        p = self.picture
        self.limits = self.temperature_limits(state)
        low, high = (p.shown(t, "temperature") for t in self.limits)
        step = 20 if p.unit_system == "us" else 10
        while (high - low) / step * 1.5 * p.line > self.roof - self.floor:
            step *= 2
        for number in np.arange(math.ceil(low / step - 1e-9) * step, high + 1e-6, step):
            share = (number - low) / (high - low)
            y = self.floor + share * (self.roof - self.floor)
            tick = Line2D([self.left - 4, self.left], [y, y], color=style.INK, linewidth=0.8 * p.type.thick)
            tick.set_transform(p.px)
            p.figure.add_artist(tick)
            p.words(self.left - 7, y, units.number(number, 0), small=True, ha="right", va="center_baseline")
        spine = Line2D([self.left] * 2, [self.floor, self.roof], color=style.INK, linewidth=p.type.thick)
        spine.set_transform(p.px)
        p.figure.add_artist(spine)
        p.words(self.left - 7, self.floor - 1.15 * p.line, p.symbol("temperature"), small=True, ha="right")

    # --- what moves ----------------------------------------------------------

    def _line(self, quantity: str, **keys: Any) -> Line2D:
        line = Line2D([], [], **self.picture.stroke(quantity, **keys))
        return self._moving(line)

    def _moving(self, artist: Made) -> Made:
        artist.set_transform(self.picture.px)
        self.picture.figure.add_artist(artist)
        return self.picture.moving(artist)

    def _shape(self, quantity: str, **keys: Any) -> Polygon:
        color = self.picture.color(quantity)
        shape = Polygon(np.zeros((3, 2)), closed=True, facecolor=color, edgecolor=self.picture.background, **keys)
        return self._moving(shape)

    def _make(self, state: SteadyRoof) -> None:
        self.arrows: list[Polygon] = []
        self.supplies: list[Polygon] = []
        if state.drying is not None:
            self.arrows = [self._shape("drying") for _ in range(2)]
            self.supplies = [self._shape("vapor pressure") for _ in range(2)]
        self.isotherm = self._line("dew point")
        self.temperature = self._line("temperature")
        wet = style.look("wet")
        size = self.picture.type.words * 0.62
        self.drops = self._line("wet", linestyle="none", marker=wet.marker, markersize=size, markeredgecolor="white")

    def moving(self, state: SteadyRoof) -> None:
        """Put the state into what moves."""
        profile, p = state.profile, self.picture
        # The first and the last node are the two airs: they stand off the faces by a film.
        depth, temperature = self.x(profile.depth), profile.temperature
        film = 0.5 * p.type.words
        x = np.concatenate([[self.left, self.inside - film], depth[1:-1], [depth[-1] + film, self.right]])
        t = np.concatenate([temperature[[0]], temperature, temperature[[-1]]])
        self.temperature.set_data(x, self.y(t))
        where = profile.dew_point_depth
        self.isotherm.set_visible(where is not None)
        if where is not None:
            spot = float(self.x(where))
            self.isotherm.set_data([spot, spot], [self.floor, self.roof])
        planes = profile.wet_planes
        self.drops.set_visible(bool(planes))
        if planes:
            heights = np.arange(self.floor + 0.9 * p.line, self.roof - 0.3 * p.line, 0.72 * p.line)
            spots = np.repeat([float(self.x(plane.depth)) for plane in planes], len(heights))
            self.drops.set_data(spots, np.tile(heights, len(planes)))
        if state.drying is not None:
            depth = dried_depth(state)
            self._drying(state.drying, depth, any(abs(plane.depth - depth) < _SAME_PLACE for plane in planes))

    def _drying(self, drying: Drying, depth: float, wet: bool) -> None:
        """What leaves a wet face, and what comes to it; nothing at a dry one."""
        spot, high = float(self.x(depth)), self.roof - self.floor
        tallest = 0.3 * high
        rates = (drying.inward, drying.outward)
        for leaves, comes, rate, way in zip(self.arrows, self.supplies, rates, (-1, 1), strict=True):
            width = tallest * min(abs(rate) / FULL_ARROW, 1.0)
            # A negative rate comes in from that side instead of leaving that way.
            shape, other = (leaves, comes) if rate > 0 else (comes, leaves)
            shape.set_visible(wet and width > 0.8)
            other.set_visible(False)
            reach = (self.left + self.inside) / 2 if way < 0 else (self.outside + self.right) / 2
            start, end = (spot, reach) if rate > 0 else (reach, spot)
            shape.set_xy(arrow(start, self.floor + 0.3 * high, end, max(width, 2.5), max(1.5 * width, 9)))

    def alt(self, state: SteadyRoof) -> str:
        """The section in words."""
        p, profile = self.picture, state.profile
        airs = {
            "room": p.show(state.indoor.temperature, "temperature"),
            "outside": p.show(state.outdoor.temperature, "temperature"),
        }
        falls = state.indoor.temperature >= state.outdoor.temperature
        words = [
            message("pictures.section", layers=layers_in_words(state.assembly)),
            message("pictures.temperature-falls" if falls else "pictures.temperature-rises", **airs),
        ]
        if profile.dew_point_depth is None:
            words.append(message("pictures.no-dew-point-depth"))
        else:
            words.append(message("pictures.dew-point-depth-is", depth=p.show(profile.dew_point_depth, "length")))
        words += [self._wet(plane) for plane in profile.wet_planes] or [message("pictures.no-water-collects")]
        if state.drying is not None:
            words.append(self._ways(state.drying, dried_depth(state)))
        return sentences(*words)

    def _wet(self, plane: WetPlane) -> str:
        """Where water collects, and how fast."""
        rate = message("pictures.without-limit")
        if math.isfinite(plane.rate):
            rate = self.picture.show(plane.rate, "vapor flux")
        inner, outer = called(plane.inner_layer), called(plane.outer_layer)
        if plane.inner_layer == plane.outer_layer:
            return message("pictures.water-collects-inside", layer=inner, rate=rate)
        return message("pictures.water-collects-between", inner=inner, outer=outer, rate=rate)

    def _ways(self, drying: Drying, depth: float) -> str:
        """What a wet layer does on each side; a negative rate comes in from there."""
        inward, outward = (self.picture.show(abs(rate), "vapor flux") for rate in (drying.inward, drying.outward))
        ways = "-".join("out" if rate >= 0 else "in" for rate in (drying.inward, drying.outward))
        shown = self.picture.show(depth, "length")
        return message("pictures.wet-layer-would", ways=ways, depth=shown, inward=inward, outward=outward)


#: Tops of the pressure axis [Pa].
_TOPS = {"us": (0.5, 1.0, 2.0, 4.0, 8.0), "si": (1000, 2000, 4000, 8000, 20000)}
#: Closer to saturation than this share, the lines touch.
_TOUCH = 1e-3


class ProfilePart:
    """The graph in a box of a picture."""

    def __init__(self, picture: LivePicture[Any]) -> None:
        self.picture = picture

    def signature(self, state: SteadyRoof) -> Hashable:
        """Axis limits, and the layers where they stand still."""
        edges = tuple(spans(state.assembly)) if state.against == "depth" else ()
        return self._top(state), state.against, edges

    def _top(self, state: SteadyRoof) -> float:
        p = self.picture
        highest = max(float(state.profile.saturation_vapor_pressure.max()), float(state.profile.vapor_pressure.max()))
        return ceiling(p.shown(highest, "pressure"), _TOPS[p.unit_system])

    def static(self, state: SteadyRoof, box: Box) -> None:
        """Axes, layers, key; and the artists that move."""
        p = self.picture
        left, bottom, right, top = box
        foot = p.key(
            [
                ("vapor pressure", None),
                ("saturation", message("pictures.saturation")),
                ("wet", message("pictures.touching-is-wet")),
            ],
            left + 4,
            top,
            right,
        )
        depth = state.against == "depth"
        where = message("pictures.resistance-axis")
        if depth:
            where = message("pictures.depth-axis", unit=p.symbol("length"))
        upward = message("pictures.vapor-pressure-axis", unit=p.symbol("pressure"))
        ax = self.ax = p.graph((left, bottom, right, foot - 2), where, upward, "y")
        ax.set_ylim(0, self._top(state))
        if depth:
            total = p.shown(state.assembly.thickness, "length")
            ax.set_xlim(-0.06 * total, 1.06 * total)
            for edge in {round(e, 9) for span in spans(state.assembly) for e in span}:
                ax.axvline(p.shown(edge, "length"), color=p.pencil, linewidth=0.9 * p.type.thick, zorder=0.5)
            ax.set_xticks([t for t in ax.get_xticks() if 0 <= t <= total])
        else:
            ax.set_xlim(0, 1)
            ax.set_xticks([0, 0.25, 0.5, 0.75, 1], ["0", "¼", "½", "¾", "1"])
        hatched: dict[str, Any] = {
            "facecolor": "none",
            "edgecolor": p.color("wet"),
            "linewidth": 0,
            "hatch": style.look("wet").hatch,
        }
        self.touch = [p.patch(ax, Rectangle((0, 0), 0, 1, **hatched)) for _ in range(4)]
        pencil: dict[str, Any] = {"color": p.pencil, "linewidth": 0.9 * p.type.thick}
        self.edges = [] if depth else [p.moving(ax.axvline(0, **pencil)) for _ in state.assembly.inner_layers]
        self.saturation = p.moving(ax.plot([], [], **p.stroke("saturation"))[0])
        self.vapor = p.moving(ax.plot([], [], **p.stroke("vapor pressure"))[0])
        size = p.type.words * 0.62
        wet = p.stroke(
            "wet", linestyle="none", marker=style.look("wet").marker, markersize=size, markeredgecolor="white"
        )
        self.drops = p.moving(ax.plot([], [], **wet)[0])

    def _x(self, state: SteadyRoof) -> Floats:
        profile = state.profile
        if state.against == "resistance":
            return profile.vapor_resistance / profile.vapor_resistance[-1]
        # The first and the last node are the two airs: off the faces by a film.
        film = 0.015 * state.assembly.thickness
        x = profile.depth + film * np.concatenate([[-1], np.zeros(len(profile.depth) - 2), [1]])
        return self.picture.shown(x, "length")

    def moving(self, state: SteadyRoof) -> None:
        """Put the state into what moves."""
        p, profile = self.picture, state.profile
        x = self._x(state)
        vapor = p.shown(np.asarray(profile.vapor_pressure), "pressure")
        saturation = p.shown(np.asarray(profile.saturation_vapor_pressure), "pressure")
        low, high = self.ax.get_xlim()
        far = np.concatenate([[min(low, x[0])], x, [max(high, x[-1])]])
        self.vapor.set_data(far, np.concatenate([vapor[:1], vapor, vapor[-1:]]))
        self.saturation.set_data(far, np.concatenate([saturation[:1], saturation, saturation[-1:]]))
        wet = vapor >= saturation * (1 - _TOUCH)
        wet[[0, -1]] = False
        self.drops.set_data(x[wet], saturation[wet])
        self._shade(x, vapor, wet)
        if self.edges:
            for line, place in zip(self.edges, self._places(state, x), strict=True):
                line.set_xdata([place, place])

    def _places(self, state: SteadyRoof, x: Floats) -> list[float]:
        # Boundaries of layers on the moving axis, by their depth.
        return [x[state.profile.face(layer.name, 1)] for layer in state.assembly.inner_layers]

    def _shade(self, x: Floats, vapor: Floats, wet: NDArray[np.bool_]) -> None:
        """A hatched band round each stretch where the two lines touch."""
        marks = np.flatnonzero(np.diff(np.concatenate([[False], wet, [False]]).astype(int)))
        stretches = list(zip(marks[::2], marks[1::2] - 1, strict=True))
        left, right = self.ax.get_xlim()
        least = 0.02 * (right - left)
        for number, patch in enumerate(self.touch):
            patch.set_visible(number < len(stretches))
            if number < len(stretches):
                first, last = stretches[number]
                middle, wide = (x[first] + x[last]) / 2, max(x[last] - x[first], least)
                patch.set_bounds(middle - wide / 2, 0, wide, vapor[first : last + 1].max())

    def alt(self, state: SteadyRoof) -> str:
        """The graph in words."""
        p, profile = self.picture, state.profile
        ends = [p.show(a.vapor_pressure, "pressure") for a in (state.indoor, state.outdoor)]
        worst = profile.wettest
        humidity = p.show(profile.relative_humidity[worst], "relative humidity")
        place = p.show(profile.depth[worst], "length")
        return sentences(
            message("pictures.vapor-graph", room=ends[0], outside=ends[1]),
            message("pictures.highest-humidity", humidity=humidity, depth=place),
            message("pictures.lines-touch", wet=bool(profile.wet_planes)),
        )


class SectionAndProfile(LivePicture[SteadyRoof]):
    """Section and graph side by side in one figure."""

    size = (860, 400)
    narrow_size = (366, 470)

    def __init__(self, *args: Any, **keys: Any) -> None:
        super().__init__(*args, **keys)
        self.section, self.graph_part = SectionPart(self), ProfilePart(self)

    def signature(self, state: SteadyRoof) -> Hashable:
        return self.section.signature(state), self.graph_part.signature(state)

    def draw_static(self, state: SteadyRoof) -> None:
        middle = 0.52 * self.width
        section, graph = (
            (6.0, 6.0, middle - 10, self.height - 4.0),
            (middle + 6, 4.0, self.width - 6.0, self.height - 4.0),
        )
        if self.narrow:
            section, graph = self.columns(0.52, 0.48, rows=(0.57, 0.43))
        self.section.static(state, section)
        self.graph_part.static(state, graph)

    def draw_moving(self, state: SteadyRoof) -> None:
        self.section.moving(state)
        self.graph_part.moving(state)

    def alt(self, state: SteadyRoof) -> str:
        return f"{self.section.alt(state)} {self.graph_part.alt(state)}"
