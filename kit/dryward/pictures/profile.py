"""Vapor pressure and its saturation, through the assembly.

Against depth the drawing is to scale; against vapor resistance the vapor
line is straight wherever nothing condenses, so that a bend is water.
"""

from collections.abc import Hashable
from typing import Any

import numpy as np
from matplotlib.patches import Rectangle
from numpy.typing import NDArray

from dryward.language import message
from dryward.pictures import style
from dryward.pictures.drawing import Box, Floats, ceiling, sentences
from dryward.pictures.live import LivePicture
from dryward.pictures.section import SectionPart, SteadyRoof, spans

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
    projector_size = (1180, 680)

    def __init__(self, *args: Any, **keys: Any) -> None:
        super().__init__(*args, **keys)
        self.section, self.graph_part = SectionPart(self), ProfilePart(self)

    def signature(self, state: SteadyRoof) -> Hashable:
        return self.section.signature(state), self.graph_part.signature(state)

    def draw_static(self, state: SteadyRoof) -> None:
        middle = 0.52 * self.width
        self.section.static(state, (6, 6, middle - 10, self.height - 4))
        self.graph_part.static(state, (middle + 6, 4, self.width - 6, self.height - 4))

    def draw_moving(self, state: SteadyRoof) -> None:
        self.section.moving(state)
        self.graph_part.moving(state)

    def alt(self, state: SteadyRoof) -> str:
        return f"{self.section.alt(state)} {self.graph_part.alt(state)}"
